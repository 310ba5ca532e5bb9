"""Reader of the vectors that every host runs; tests/vectors/README.md explains the files."""

import copy
from pathlib import Path
from urllib.parse import unquote, unquote_to_bytes

REPOSITORY = Path(__file__).parents[2]
VECTORS = REPOSITORY / "tests" / "vectors"
SHEETS = VECTORS / "sheets"
THREE_WAYS = REPOSITORY / "core" / "examples" / "three_ways.json"
HOT_FIT = REPOSITORY / "core" / "examples" / "sawmill_fit.json"
STACK = REPOSITORY / "core" / "examples" / "deck_stack.json"
REVISIT = REPOSITORY / "core" / "examples" / "pump_revisit.json"
WHAT_IF = REPOSITORY / "core" / "examples" / "pump_what_if.json"
FITS = sorted((VECTORS / "fits").glob("*.json"))
EXAMPLES = sorted(set((REPOSITORY / "core" / "examples").glob("*.json")) - {THREE_WAYS, HOT_FIT, STACK, REVISIT, WHAT_IF})
MEASUREMENTS = [THREE_WAYS, VECTORS / "measurements" / "every_kind.json"]


def flat():
    """Rows of flat.csv, as texts."""
    return _commented("flat.csv", ["id", "function", "arguments", "expected", "tolerance", "source"])


def study():
    """Rows of study.csv, as texts."""
    return _commented("study.csv", ["id", "function", "given", "values", "expected", "source"])


def risk():
    """Rows of risk.csv, as texts."""
    return _commented("risk.csv", ["id", "function", "items", "u", "tolerance", "given", "expected", "source"])


def sheets_expected():
    """Rows of sheets/expected.csv, as texts."""
    lines = (SHEETS / "expected.csv").read_text(encoding="utf-8").splitlines()
    head, *rest = [line.split(",", 4) for line in lines if line and not line.startswith("#")]
    assert head == ["document", "check", "entry", "suspected", "corrections"]
    return [dict(zip(head, cells, strict=True)) for cells in rest]


def refused_sheets():
    """Rows of sheets/refused.csv, as texts."""
    lines = (SHEETS / "refused.csv").read_text(encoding="utf-8").splitlines()
    head, *rest = [line.split(",", 5) for line in lines if line and not line.startswith("#")]
    assert head == ["id", "kind", "path", "refused", "did_you_mean_contains", "document"]
    return [dict(zip(head, cells, strict=True)) for cells in rest]


def shape():
    """Rows of shape.csv, as texts."""
    return _commented("shape.csv", ["id", "function", "choice", "given", "expected", "source"])


def signs():
    """Rows of signs.csv, as texts."""
    return _commented("signs.csv", ["id", "place", "what", "answers", "candidates", "ask", "cause"])


def clean_up():
    """Rows of clean_up.csv, as texts."""
    return _commented("clean_up.csv", ["id", "function", "choice", "given", "expected", "source"])


def machining():
    """Rows of machining.csv, as texts."""
    return _commented("machining.csv", ["id", "function", "arguments", "expected", "source"])


def assembly():
    """Rows of assembly.csv, as texts."""
    return _commented("assembly.csv", ["id", "function", "given", "expected", "source"])


def piston():
    """Rows of piston.csv, as texts."""
    return _commented("piston.csv", ["id", "function", "choice", "given", "expected", "source"])


def hot_fit():
    """Rows of hot_fit.csv, as texts."""
    return _commented("hot_fit.csv", ["id", "fit", "expected", "source"])


def parts():
    """Rows of parts.csv, as texts."""
    return _commented("parts.csv", ["id", "function", "arguments", "expected", "source"])


def growth():
    """Rows of growth.csv, as texts."""
    return _commented("growth.csv", ["id", "function", "arguments", "expected", "source"])


def before():
    """Rows of before.csv, as texts."""
    return _commented("before.csv", ["id", "function", "choice", "numbers", "expected", "source"])


def matching():
    """Rows of matching.csv, as texts."""
    names = "id bores pistons conditions case pairs worst_outside sum_of_squares_mm2 given_outside given_sum_mm2 source"
    return _commented("matching.csv", names.split())


def stack():
    """Rows of stack.csv, as texts; the last column takes the rest."""
    lines = (VECTORS / "stack.csv").read_text(encoding="utf-8").splitlines()
    head, *rest = [line.split(",", 6) for line in lines if line and not line.startswith("#")]
    assert head == ["id", "stack", "function", "x", "expected", "tolerance", "source"] and len(rest) > 500
    return [dict(zip(head, cells, strict=True)) for cells in rest]


def function():
    """Rows of function.csv, as texts."""
    return _commented("function.csv", ["id", "function", "contributors", "law", "given", "expected", "source"])


def batch():
    """Rows of batch.csv, as texts."""
    return _commented("batch.csv", ["id", "bore_law", "piston_law", "row", "expected", "tolerance", "source"])


def _commented(name, names):
    lines = (VECTORS / name).read_text(encoding="utf-8").splitlines()
    return _rows([line for line in lines if line and not line.startswith("#")], names)


def refused():
    """Rows of refused.csv, as texts; `document` holds the bytes of the job."""
    lines = (VECTORS / "refused.csv").read_text(encoding="utf-8").removesuffix("\n").split("\n")
    names = ["id", "file", "prefix", "unit", "count", "suffix", "kind", "path", "refused", "value", "lower", "upper"]
    rows = _rows(lines, [*names, "limits_unit", "did_you_mean_contains"])
    for row in rows:
        row["document"] = _document(row)
        for name in ("path", "refused", "did_you_mean_contains"):
            row[name] = unquote(row[name], errors="strict")
    return rows


def _document(row):
    if row["file"]:
        return (VECTORS / "refused" / row["file"]).read_bytes()
    prefix, unit, suffix = (unquote_to_bytes(row[name]) for name in ("prefix", "unit", "suffix"))
    return prefix + unit * int(row["count"] or 0) + suffix


def _rows(lines, names):
    head, *rest = (line.split(",") for line in lines)
    assert head == names
    assert rest and all(len(cells) == len(names) for cells in rest)
    rows = [dict(zip(names, cells, strict=True)) for cells in rest]
    assert len({row["id"] for row in rows}) == len(rows), "an id stands twice"
    return rows


def rows(name, names):
    """Rows of a file of budgets, as texts."""
    lines = (VECTORS / name).read_text(encoding="utf-8").splitlines()
    head, *rest = [line.split(",") for line in lines if line and not line.startswith("#")]
    assert head == names and rest
    return [dict(zip(head, cells, strict=True)) for cells in rest]


def put(document, pointer, value):
    """A copy of a document with the field at a JSON Pointer replaced."""
    document = copy.deepcopy(document)
    at = document
    *path, last = [int(p) if p.isdigit() else p for p in pointer.split("/")[1:]]
    for step in path:
        at = at[step]
    at[last] = value
    return document
