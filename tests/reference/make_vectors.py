"""Write the expected numbers in tests/vectors from the independent evaluation beside this file.

Nothing here reads the library: the numbers come from ``assess.py`` and ``flat.py`` (mpmath, 40 digits).
``python tests/reference/make_vectors.py`` writes the files; with ``--check`` it only compares and fails on a difference.
"""

import json
import sys
from pathlib import Path

import assess
import flat

TESTS = Path(__file__).resolve().parent.parent
VECTORS = TESTS / "vectors"
EXAMPLES = TESTS.parent / "core" / "examples"

FLAT_HEADING = """\
# Flat functions. Columns and rules: README.md beside this file. Expected numbers: reference/flat.py, 40 digits,
# written by reference/make_vectors.py; rows with another source are checked against it.
id,function,arguments,expected,tolerance,source
"""

CLOSED = "closed form at 40 digits by reference/flat.py"

# id, function, arguments, and a published value with its tolerance and source where there is one
FLAT = [
    ("size_warm_part", "size_at_20_mm", "86 0 20 11.5e-6 30 21e-6", "85.98194379 5e-9 L20 = L / (1 + a (T - 20)) evaluated by hand"),
    ("size_at_reference", "size_at_20_mm", "95.93 0.002 20 11.5e-6 20 20.5e-6", "95.928 2e-14 at 20 C nothing grows: the reading less its zero error"),
    ("size_warm_shop", "size_at_20_mm", "95.9478 0.0023 27 11.5e-6 27 19.4e-6", None),
    ("size_cold_shop", "size_at_20_mm", "101.6 -0.004 12 11.5e-6 9.5 22.8e-6", None),
    ("size_steel_piston", "size_at_20_mm", "129.86 0.001 24 11.5e-6 31 12e-6", None),
    ("size_small", "size_at_20_mm", "39.93 0 35 10e-6 35 23e-6", None),
    ("size_large", "size_at_20_mm", "959.1 0.01 18 11.5e-6 15 11.4e-6", None),
    ("bench_plain", "bench_clearance_mm", "86.035 86", "0.035 2e-14 difference by hand"),
    ("bench_negative", "bench_clearance_mm", "91 91.016", "-0.016 2e-14 difference by hand"),
    ("bench_inch", "bench_clearance_mm", "101.676 101.6", "0.076 2e-14 difference by hand"),
    ("running_reference", "running_clearance_mm", "86.035 20 11.4e-6 86 20 20.5e-6", "0.035 2e-14 at 20 C nothing grows"),
    ("running_equal_alloy", "running_clearance_mm", "86.1 120 20e-6 86 120 20e-6", "0.1002 2e-14 equal growth: 0.1 (1 + 20e-6 100)"),
    ("running_cast_in_iron", "running_clearance_mm", "86.035 110 11.4e-6 86 120 20.5e-6", None),
    ("running_strutted", "running_clearance_mm", "86.035 110 11.4e-6 86 120 14e-6", None),
    ("running_steel_in_iron", "running_clearance_mm", "130.1 105 11.4e-6 130 130 12e-6", None),
    ("running_steel_in_aluminium", "running_clearance_mm", "82.045 110 20e-6 82 130 12e-6", None),
    ("running_cold_start", "running_clearance_mm", "86.035 -20 11.4e-6 86 -20 20.5e-6", None),
]

# id, function, arguments, kind: what each must refuse
REFUSED = [
    ("refuse_nan", "size_at_20_mm", "nan 0 20 11.5e-6 20 20e-6", "not_finite"),
    ("refuse_infinite", "bench_clearance_mm", "inf 86", "not_finite"),
    ("refuse_minus_infinite", "running_clearance_mm", "86.035 20 11.4e-6 86 -inf 20.5e-6", "not_finite"),
    ("refuse_zero_bore", "bench_clearance_mm", "0 86", "out_of_range"),
    ("refuse_zero_reading", "size_at_20_mm", "0 0 20 11.5e-6 20 20e-6", "out_of_range"),
    ("refuse_inch_as_mm", "size_at_20_mm", "3.7777 0 20 11.5e-6 20 20e-6", "out_of_range"),
    ("refuse_fahrenheit", "size_at_20_mm", "95.93 0 80.6 11.5e-6 27 20e-6", "out_of_range"),
    ("refuse_bare_coefficient", "running_clearance_mm", "86.035 110 11.4 86 120 20.5e-6", "out_of_range"),
    ("refuse_huge", "bench_clearance_mm", "1e308 86", "out_of_range"),
    ("refuse_tiny_coefficient", "size_at_20_mm", "95.93 0 20 1e-300 20 20e-6", "out_of_range"),
    ("refuse_zero_error", "size_at_20_mm", "95.93 2.54 20 11.5e-6 20 20e-6", "out_of_range"),
    ("refuse_negative_piston", "bench_clearance_mm", "86 -86", "out_of_range"),
]


def flat_row(name, function, arguments, published):
    """One row of flat.csv, with the published value held against the closed form."""
    numbers = [float(a) for a in arguments.split()]
    exact = float(getattr(flat, function)(*numbers))
    cells = arguments.replace(" ", ";")
    if published is None:
        # five operations in double precision on a size of this order
        return f"{name},{function},{cells},{exact!r},{4 * 2.3e-16 * max(numbers[0], 1):.1e},{CLOSED}"
    value, tolerance, source = published.split(" ", 2)
    assert abs(exact - float(value)) <= max(float(tolerance), 2e-14), (name, exact, value)
    return f"{name},{function},{cells},{value},{tolerance},{source}"


def flat_csv():
    """The file of the flat functions."""
    rows = [flat_row(*row) for row in FLAT]
    rows += [f"{n},{f},{a.replace(' ', ';')},error:{k},,ranges and reasons in core/src/bounds.rs" for n, f, a, k in REFUSED]
    return FLAT_HEADING + "\n".join(rows) + "\n"


def report_json(path):
    """The numbers of the report of one job."""
    numbers = assess.evaluate(json.loads(path.read_text(encoding="utf-8")))
    return json.dumps(numbers, ensure_ascii=False, separators=(",", ":")) + "\n"


def files():
    """Every file with its text."""
    jobs = sorted(EXAMPLES.glob("*.json")) + sorted((VECTORS / "jobs").glob("*.json"))
    out = {VECTORS / "reports" / job.name: report_json(job) for job in jobs}
    out[VECTORS / "flat.csv"] = flat_csv()
    return out


def main(words):
    """Write or check every file; the exit status."""
    check = words == ["--check"]
    stale = [p for p, text in files().items() if not p.exists() or p.read_text(encoding="utf-8") != text]
    for path in stale:
        print(("differs: " if check else "written: ") + path.relative_to(TESTS).as_posix())
        if not check:
            path.parent.mkdir(exist_ok=True)
            path.write_text(files()[path], encoding="utf-8")
    return 1 if check and stale else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
