"""ctypes_binding.py LIBRARY REPORTS: reports of the examples byte by byte against those of Rust, refused documents by kind and field."""

import csv
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from urllib.parse import unquote, unquote_to_bytes

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "ffi/hosts/ctypes"))
from gaugepoint_ctypes import GaugepointError, Library  # noqa: E402

g, reports = Library(sys.argv[1]), Path(sys.argv[2])
WAYS = {"three_ways": g.measure, "sawmill_fit": g.fit, "deck_stack": g.stack_evaluate, "pump_revisit": g.revisit, "pump_what_if": g.what_if}


def same(example: Path) -> int:
    wanted = (reports / example.name).read_bytes().rstrip(b"\n")
    assert WAYS.get(example.stem, g.assess)(example.read_bytes()).encode().rstrip(b"\n") == wanted, example
    return 1


def refused(row: dict) -> int:
    vectors = ROOT / "tests/vectors/refused"
    part = {name: unquote_to_bytes(row[name]) for name in ("prefix", "unit", "suffix")}
    document = (vectors / unquote(row["file"])).read_bytes() if row["file"] else \
        part["prefix"] + part["unit"] * int(row["count"] or 0) + part["suffix"]
    try:
        g.assess(document)
    except GaugepointError as e:
        field = unquote(row["path"])
        assert e.name == row["kind"] and (e.field == field or len(e.field) > 250 and field.startswith(e.field)), (row["id"], e.name, e.field)
        return 1
    raise AssertionError(row["id"])


examples = sorted((ROOT / "core/examples").glob("*.json"))
with ThreadPoolExecutor(8) as pool:
    equal = sum(pool.map(same, examples * 2))
rows = list(csv.DictReader((ROOT / "tests/vectors/refused.csv").open(newline="")))
count = sum(map(refused, rows))
for wrong in (None, 3):
    try:
        g.assess(wrong)
        raise AssertionError(wrong)
    except TypeError:
        pass
try:
    Library("/missing/libgaugepoint_c.so")
    raise AssertionError("missing")
except OSError:
    pass
assert equal >= 16 and count > 100
print(f"ctypes: {equal} reports, {count} refused documents")
