"""Write the expected numbers in tests/vectors from the independent evaluation beside this file.

Nothing here reads the library: the numbers come from ``assess.py`` and ``flat.py`` (mpmath, 40 digits).
``python tests/reference/make_vectors.py`` writes the files; with ``--check`` it only compares and fails on a difference.
"""

import json
import sys
from pathlib import Path

import assess
import batch
import compare
import flat
import growth
import parts
import measure
import special

TESTS = Path(__file__).resolve().parent.parent
VECTORS = TESTS / "vectors"
EXAMPLES = TESTS.parent / "core" / "examples"
HOT_JOBS = {"sawmill_twin.json"}

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
    return FLAT_HEADING + "\n".join(rows + list(of_parts())) + "\n"


def of_parts():
    """The rows of rings, pins and the deck whose one result is a double: flat functions too."""
    rows = [line.split(",") for line in parts.parts_csv().splitlines()[3:]]
    held = [r for r in rows if r[3].startswith("result=")]
    flat_functions = {r[1] for r in held} - {"ring_conformable_amplitude_mm"}
    for name, function, arguments, expected, source in rows:
        if function in flat_functions and expected.startswith("result="):
            value, tolerance = expected.removeprefix("result=").split("~")
            yield f"{name},{function},{arguments},{value},{tolerance},{source}"
        elif function in flat_functions:
            yield f"{name},{function},{arguments},{expected.split()[0]},,{source}"


SPECIAL_HEADING = """\
# Special functions of statistics (core/src/special.rs). Arguments separated by ; expected to 20 digits; tolerance relative.
# Source of every row: mpmath at 40 digits, reference/special.py, written by reference/make_vectors.py.
function,arguments,expected,tolerance
"""

# function, relative tolerance (the accuracy the library states), argument lists
SPECIAL = [
    ("normal_cdf", 2e-13, [[x] for x in (-37.5, -20)]),
    ("normal_cdf", 5e-15, [[x] for x in (-8, -3.3, -1.645, -0.7, -1e-8, 0.3, 1.65, 5)]),
    ("normal_quantile", 5e-15, [[p] for p in (1e-300, 1e-40, 1e-12, 0.001, 0.025, 0.0751, 0.3, 0.43, 0.93, 0.975, 0.9999)]),
    ("gamma_p", 5e-13, [(a, x) for a in (0.01, 0.5, 2, 17.5, 300, 1e3) for x in (0.001 * a, 0.9 * a, 1.1 * a)]),
    ("gamma_q", 5e-13, [(a, x) for a in (0.5, 4, 17.5, 300, 1e3) for x in (0.5 * a, a, a + 5 * a**0.5 + 3)]),
    ("beta_i", 5e-12, [(a, b, x) for a, b in ((0.1, 0.5), (0.5, 3), (2, 5), (40, 7.5), (300, 900), (1e3, 0.5)) for x in (0.01, 0.3, 0.97)]),
    ("t_cdf", 2e-11, [(t, n) for n in (0.5, 1, 2, 5.5, 16.7411, 50, 1e3) for t in (-30.0, -2.0, -0.01, 0.7, 3.0)]),
    ("t_cdf", 2e-11, [(-2.0, 1e5), (-2.0, 1e6)]),
    ("t_quantile", 2e-11, [(p, n) for n in (0.5, 1, 2, 8, 16.7411, 50, 1e3) for p in (1e-6, 0.025, 0.4, 0.95, 0.995)]),
    ("t_cdf", 2e-11, [(t, n) for n in (120.0, 2e4, 1e6, 3e7) for t in (-4.0, -1.65, -0.001, 0.7)]),
    ("t_factor", 2e-11, [(k, n) for k in (1, 1.65, 2, 3) for n in (0.5, 1, 2, 3.7, 16, 150.5, 2e4, 1e6, 3e7)]),
    ("f_cdf", 2e-11, [(f, m, n) for m, n in ((1, 4), (4, 20), (9, 60), (1000, 30)) for f in (0.05, 1.18, 7)]),
    ("f_upper", 2e-11, [(f, m, n) for m, n in ((1, 4), (4, 20), (9, 60), (1000, 30)) for f in (0.05, 1.18, 7, 213.5)]),
    ("f_quantile", 2e-11, [(p, m, n) for m, n in ((1, 4), (4, 20), (9, 60), (1000, 30)) for p in (0.001, 0.5, 0.975)]),
    ("chi2_quantile", 2e-11, [(p, n) for n in (1, 2, 9, 60, 1000) for p in (0.001, 0.05, 0.5, 0.975)]),
]


def special_csv():
    """The file of the special functions."""
    rows = []
    for name, tolerance, calls in SPECIAL:
        for call in calls:
            arguments = [float(a) for a in call]
            exact = getattr(special, name)(*arguments)
            if exact < 1e-305:
                continue  # below the smallest normal double there are no digits to compare
            rows.append(f"{name},{';'.join(repr(a) for a in arguments)},{special.mp.nstr(exact, 20)},{tolerance}")
    return SPECIAL_HEADING + "\n".join(rows) + "\n"


EVALUATE = {"gaugepoint-job": assess.evaluate, "gaugepoint-measurement": measure.evaluate}


def report_json(path):
    """The numbers of the report of one job or measurement."""
    document = json.loads(path.read_text(encoding="utf-8"))
    numbers = EVALUATE[document["format"]](document)
    return json.dumps(numbers, ensure_ascii=False, separators=(",", ":")) + "\n"


def files():
    """Every file with its text."""
    # a hot fit is searched anew in every run of its tests: its numbers are not stored; a stack and a revisit have their own scripts, and what if is jobs
    folders = (EXAMPLES, VECTORS / "jobs", VECTORS / "measurements")
    jobs = [path for folder in folders for path in sorted(folder.glob("*.json")) if not path.stem.endswith(("_fit", "_stack", "_revisit", "_what_if"))]
    out = {VECTORS / "reports" / job.name: report_json(job) for job in jobs}
    out[VECTORS / "flat.csv"] = flat_csv()
    out[VECTORS / "special.csv"] = special_csv()
    out[VECTORS / "parts.csv"] = parts.parts_csv()
    out[VECTORS / "growth.csv"] = growth.growth_csv()
    out[VECTORS / "batch.csv"] = batch.batch_csv()
    return out


def differs(path, text):
    """Is the file another text? Hot fits are searched with NumPy, the last digits of which depend on the processor."""
    told = path.read_text(encoding="utf-8")
    return compare.difference(told, text) is not None if path.name in HOT_JOBS else told != text


def main(words):
    """Write or check every file; the exit status."""
    check = words == ["--check"]
    texts = files()
    stale = [p for p, text in texts.items() if not p.exists() or differs(p, text)]
    for path in stale:
        print(("differs: " if check else "written: ") + path.relative_to(TESTS).as_posix())
        if not check:
            path.parent.mkdir(exist_ok=True)
            path.write_text(texts[path], encoding="utf-8")
    return 1 if check and stale else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
