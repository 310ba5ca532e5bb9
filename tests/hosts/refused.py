"""refused.py WORK: the refused documents of refused.csv as files of WORK/refused, their names in WORK/refused.txt."""

import csv
import sys
from pathlib import Path
from urllib.parse import unquote, unquote_to_bytes

vectors, work = Path(__file__).resolve().parents[1] / "vectors", Path(sys.argv[1])
(work / "refused").mkdir()
names = []
for row in csv.DictReader((vectors / "refused.csv").open(newline="", encoding="utf-8")):
    part = {name: unquote_to_bytes(row[name]) for name in ("prefix", "unit", "suffix")}
    document = part["prefix"] + part["unit"] * int(row["count"] or 0) + part["suffix"]
    if row["file"]:
        document = (vectors / "refused" / unquote(row["file"])).read_bytes()
    (work / "refused" / row["id"]).write_bytes(document)
    names.append(row["id"])
assert len(names) > 100, names
(work / "refused.txt").write_text("\n".join(names) + "\n", encoding="utf-8")
