"""Write the expected numbers in tests/vectors from the independent evaluation beside this file.

Nothing here reads the library: the numbers come from ``assess.py`` and ``flat.py`` (mpmath, 40 digits).
``python tests/reference/make_vectors.py`` writes the files; with ``--check`` it only compares and fails on a difference.
"""

import json
import math
import sys
from fractions import Fraction
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

STEEL = "205000 0.29 205000 0.29"
EXACTLY = "exact fractions of the decimals; nearest double: NIST SP 811 (2008) appendix B"

# id, function, argument: exact where it has up to 15 digits, else within the roundings of doubles
CONVERTED = [
    ("inch_one", "inch_to_mm", "1"),
    ("inch_bore", "inch_to_mm", "2.4126"),
    ("inch_tenths", "inch_to_mm", "3.7799"),
    ("inch_negative", "inch_to_mm", "-0.0012"),
    ("inch_none", "inch_to_mm", "0"),
    ("inch_minus_none", "inch_to_mm", "-0"),
    ("inch_fifteen_digits", "inch_to_mm", "3.77993456789012"),
    ("inch_most", "inch_to_mm", "400"),
    ("inch_computed", "inch_to_mm", "0.30000000000000004"),
    ("inch_small", "inch_to_mm", "1e-300"),
    ("to_inch", "mm_to_inch", "61.28004"),
    ("to_inch_one", "mm_to_inch", "25.4"),
    ("to_inch_bore", "mm_to_inch", "86.035"),
    ("to_inch_negative", "mm_to_inch", "-0.03"),
    ("to_inch_none", "mm_to_inch", "0"),
    ("to_inch_fifteen_digits", "mm_to_inch", "86.0351234567891"),
    ("to_inch_computed", "mm_to_inch", "86.035123456789121"),
    ("thou_one", "thou_to_mm", "1"),
    ("thou_clearance", "thou_to_mm", "1.7"),
    ("thou_negative", "thou_to_mm", "-0.3"),
    ("thou_computed", "thou_to_mm", "0.30000000000000004"),
    ("fahrenheit_shop", "fahrenheit_to_c", "80.6"),
    ("fahrenheit_ice", "fahrenheit_to_c", "32"),
    ("fahrenheit_same", "fahrenheit_to_c", "-40"),
    ("fahrenheit_reference", "fahrenheit_to_c", "68"),
    ("fahrenheit_third", "fahrenheit_to_c", "71.3"),
    ("fahrenheit_computed", "fahrenheit_to_c", "80.600000000000009"),
    ("celsius_shop", "c_to_fahrenheit", "27"),
    ("celsius_tenth", "c_to_fahrenheit", "22.7"),
    ("celsius_ice", "c_to_fahrenheit", "0"),
    ("celsius_same", "c_to_fahrenheit", "-40"),
    ("celsius_computed", "c_to_fahrenheit", "22.700000000000003"),
    ("per_fahrenheit", "per_fahrenheit_to_per_k", "6.4e-6"),
    ("per_fahrenheit_aluminium", "per_fahrenheit_to_per_k", "11.61e-6"),
    ("per_fahrenheit_computed", "per_fahrenheit_to_per_k", "6.3888888888888889e-6"),
]

# id, function, arguments, and a published value with its tolerance and source where there is one
FLAT_ALONE = [
    ("pressure_thick", "press_fit_pressure_mpa", "22 12 30 0.03 0 " + STEEL, None),
    ("pressure_solid", "press_fit_pressure_mpa", "20 0 40 0.02 0 200000 0.3 200000 0.3", "75 1e-12 one material and a solid pin by hand: E delta (D2 - d2) / (2 d D2) = 200000 0.02 0.75 / 40"),
    ("pressure_smoothed", "press_fit_pressure_mpa", "22 12 30 0.03 0.008 " + STEEL, None),
    ("pressure_smoothed_away", "press_fit_pressure_mpa", "22 12 30 0.01 0.02 " + STEEL, "0 0 nothing is left of the interference"),
    ("pressure_aluminium", "press_fit_pressure_mpa", "22 14 34 0.025 0.004 205000 0.29 71000 0.33", None),
    ("force_solid", "press_fit_force_n", "20 0 40 25 0.02 0 0.1 200000 0.3 200000 0.3", "11780.972 5e-4 by hand: pi 20 25 0.1 times 75"),
    ("force_steel", "press_fit_force_n", f"22 12 30 24 0.03 0.005 0.12 {STEEL}", None),
    ("torque_solid", "press_fit_torque_nm", "20 0 40 25 0.02 0 0.1 200000 0.3 200000 0.3", "117.80972 5e-6 by hand: 11780.972 0.010"),
    ("torque_steel", "press_fit_torque_nm", f"22 12 30 24 0.03 0.005 0.12 {STEEL}", None),
    ("finish", "finish_size_mm", "85.96 0.03", "85.99 2e-14 sum by hand"),
    ("finish_interference", "finish_size_mm", "86 -0.02", "85.98 2e-14 sum by hand"),
    ("boring", "boring_size_mm", "85.96 0.03 0.02", "85.97 3e-14 by hand: piston + clearance; less the honing allowance"),
    ("boring_rough", "boring_size_mm", "101.93 0.07 0.1", "101.9 3e-14 by hand"),
    ("gauged_at_20", "bore_size_at_20_mm", "0.02 100 20 1.15e-5 20 1.15e-5 20 1.15e-5 20 1.1e-5", "100.02 3e-14 at 20 C nothing grows"),
    ("gauged_all_warm", "bore_size_at_20_mm", "0 86 30 1.1e-5 25 1.2e-5 25 1.2e-5 30 1.1e-5", "86 3e-14 ring and block alike and the gauge as it was set: the size of the ring"),
    ("gauged_warm_block", "bore_size_at_20_mm", "0.012 86 22 1.15e-5 22 1.15e-5 22 1.15e-5 32 1.1e-5", None),
    ("gauged_warm_gauge", "bore_size_at_20_mm", "-0.031 96 18 1.15e-5 18 1.15e-5 27 1.15e-5 41 2.1e-5", None),
    ("grown_piston", "size_at_temperature_mm", "86 120 20e-6", "86.172 3e-14 by hand: 86 (1 + 0.002)"),
    ("grown_at_reference", "size_at_temperature_mm", "86.035 20 11.4e-6", "86.035 2e-14 at 20 C nothing grows"),
    ("grown_cold", "size_at_temperature_mm", "101.6 -25 11.4e-6", None),
    ("conforms_one_sided", "probability_of_conformity", "86.01 0.01 80 86.02", "0.8413447 5e-8 normal distribution to one standard deviation; from memory"),
    ("conforms_two_sided", "probability_of_conformity", "86.01 0.005 86 86.02", "0.9544997 5e-8 normal distribution within two standard deviations; from memory"),
    ("conforms_at_limit", "probability_of_conformity", "0.125 0.001 0.125 0.5", "0.5 1e-15 half of a normal distribution lies above its mean"),
    ("conforms_hardly", "probability_of_conformity", "0.05 0.004 0.02 0.04", None),
    ("conforms_exact", "probability_of_conformity", "86.01 0 86 86.02", "1 0 a value without uncertainty within its limits"),
    ("conforms_exact_outside", "probability_of_conformity", "86.03 0 86 86.02", "0 0 a value without uncertainty outside its limits"),
    ("coverage_normal", "coverage_factor", "0.95 inf", "1.960 5e-4 JCGM 100:2008 table G.2"),
    ("coverage_one", "coverage_factor", "0.95 1", "12.71 5e-3 JCGM 100:2008 table G.2"),
    ("coverage_five", "coverage_factor", "0.9973 5", "5.51 5e-3 JCGM 100:2008 table G.2"),
    ("coverage_twenty", "coverage_factor", "0.99 20", "2.85 5e-3 JCGM 100:2008 table G.2"),
    ("coverage_broken", "coverage_factor", "0.95 16.7411", None),
]

GAUGING = "22 1.15e-5 22 1.15e-5 22 1.15e-5 32 1.1e-5"
REFUSED_ALONE = [
    ("refuse_inch_nan", "inch_to_mm", "nan", "not_finite"),
    ("refuse_inch_long", "inch_to_mm", "400.001", "out_of_range"),
    ("refuse_to_inch_infinite", "mm_to_inch", "-inf", "not_finite"),
    ("refuse_to_inch_long", "mm_to_inch", "10161", "out_of_range"),
    ("refuse_thou_long", "thou_to_mm", "-400001", "out_of_range"),
    ("refuse_fahrenheit_below_nothing", "fahrenheit_to_c", "-460", "out_of_range"),
    ("refuse_celsius_hot", "c_to_fahrenheit", "1201", "out_of_range"),
    ("refuse_per_fahrenheit_bare", "per_fahrenheit_to_per_k", "6.4", "out_of_range"),
    ("refuse_pressure_eye", "press_fit_pressure_mpa", "22 12 20 0.03 0 " + STEEL, "out_of_order"),
    ("refuse_pressure_interference", "press_fit_pressure_mpa", "22 12 30 0 0 " + STEEL, "out_of_range"),
    ("refuse_pressure_smoothing", "press_fit_pressure_mpa", "22 12 30 0.03 nan " + STEEL, "not_finite"),
    ("refuse_pressure_gpa", "press_fit_pressure_mpa", "22 12 30 0.03 0 205 0.29 205000 0.29", "out_of_range"),
    ("refuse_force_interference", "press_fit_force_n", "22 12 30 24 0 0 0.12 " + STEEL, "out_of_range"),
    ("refuse_force_friction", "press_fit_force_n", "22 12 30 24 0.03 0 12 " + STEEL, "out_of_range"),
    ("refuse_force_width", "press_fit_force_n", "22 12 30 0 0.03 0 0.12 " + STEEL, "out_of_range"),
    ("refuse_torque_hole", "press_fit_torque_nm", "22 22 30 24 0.03 0 0.12 " + STEEL, "out_of_order"),
    ("refuse_torque_friction", "press_fit_torque_nm", "22 12 30 24 0.03 0 nan " + STEEL, "not_finite"),
    ("refuse_finish_clearance", "finish_size_mm", "85.96 86", "out_of_range"),
    ("refuse_boring_honing", "boring_size_mm", "85.96 0.03 -0.02", "out_of_range"),
    ("refuse_gauged_setting", "bore_size_at_20_mm", "0.01 0 " + GAUGING, "out_of_range"),
    ("refuse_gauged_deviation", "bore_size_at_20_mm", "86 86 " + GAUGING, "out_of_range"),
    ("refuse_gauged_block", "bore_size_at_20_mm", "0.01 86 22 1.15e-5 22 1.15e-5 22 1.15e-5 nan 1.1e-5", "not_finite"),
    ("refuse_grown_hot", "size_at_temperature_mm", "86 500 11.4e-6", "out_of_range"),
    ("refuse_grown_bare", "size_at_temperature_mm", "86 120 20", "out_of_range"),
    ("refuse_conforms_nan", "probability_of_conformity", "nan 0.005 86 86.02", "not_finite"),
    ("refuse_conforms_negative", "probability_of_conformity", "86.01 -0.005 86 86.02", "out_of_range"),
    ("refuse_conforms_order", "probability_of_conformity", "86.01 0.005 86.02 86", "out_of_order"),
    ("refuse_conforms_no_limit", "probability_of_conformity", "86.01 0.005 86 nan", "not_finite"),
    ("refuse_coverage_percent", "coverage_factor", "95 20", "out_of_range"),
    ("refuse_coverage_one", "coverage_factor", "1 20", "out_of_range"),
    ("refuse_coverage_dof", "coverage_factor", "0.95 0", "out_of_range"),
]

# flat function: the function of several results it is of, its result, and the parameters that it needs where it does not need all
PICKED = {
    "ring_hot_gap_mm": ("ring_hot_gap", "gap_mm", None),
    "pin_cold_clearance_mm": ("pin_clearance", "cold_mm", {"hole_mm": 0, "pin_mm": 3}),
    "pin_hot_clearance_mm": ("pin_clearance", "hot_mm", None),
    "assembly_temperature_c": ("assembly_temperature", "temperature_c", None),
    "piston_deck_clearance_mm": ("deck", "deck_clearance_mm", {"block_height_mm": 0, "stroke_mm": 1, "rod_mm": 2, "compression_height_mm": 3}),
    "swept_volume_cm3": ("compression_ratio", "swept_cm3", {"bore_mm": 0, "stroke_mm": 1}),
    "static_compression_ratio": ("compression_ratio", "ratio", None),
    "piston_travel_mm": ("piston_travel", "travel_mm", None),
}


def converted_row(name, function, argument):
    """Exact from the decimal that is typed: within half a unit in the last place there is one double. Of a computed double within six of them."""
    typed = len(argument.lstrip("-0.").replace(".", "").split("e")[0]) <= 15 and "e-300" not in argument
    exact = flat.EXACT[function](Fraction(argument) if typed else Fraction(float(argument)))
    tolerance = math.ulp(float(exact)) / 2 * (1 if typed else 6)
    return f"{name},{function},{argument},{float(exact)!r},{tolerance!r},{EXACTLY if typed else 'exact fractions of the double'}"


def alone_row(name, function, arguments, published):
    """One row of a flat function of which no other file has the result."""
    exact, scale = getattr(flat, function)(*[float(a) for a in arguments.split()])
    # eight roundings of what counts
    value, tolerance, source = f"{float(exact)!r}", f"{float(8 * 2.3e-16 * scale):.1e}", CLOSED
    if published is not None:
        value, tolerance, source = published.split(" ", 2)
        assert abs(exact - float(value)) <= max(float(tolerance), 3e-14), (name, exact, value)
    return f"{name},{function},{arguments.replace(' ', ';')},{value},{tolerance},{source}"


def picked_rows(held):
    """Rows of functions of several results, of which a flat function gives one."""
    for flat_function, (of, result, parameters) in PICKED.items():
        for name, function, arguments, expected, source in held:
            field = expected.split(" ")[-1] if expected.startswith("error:") else None
            if function != of or (field and parameters and field not in parameters):
                continue
            cells = arguments.split(";")
            needed = ";".join(cells[k] for k in parameters.values()) if parameters else arguments
            value, tolerance = (expected.split(" ")[0], "") if field else dict(part.split("=") for part in expected.split(";"))[result].split("~")
            yield f"{name}_{result},{flat_function},{needed},{value},{tolerance},{source}"


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
    rows += of_parts()
    rows += [converted_row(*row) for row in CONVERTED]
    rows += picked_rows([line.split(",") for line in parts.parts_csv().splitlines()[3:]])
    rows += [alone_row(*row) for row in FLAT_ALONE]
    rows += [f"{n},{f},{a.replace(' ', ';')},error:{k},,ranges and reasons in core/src/bounds.rs" for n, f, a, k in REFUSED_ALONE]
    return FLAT_HEADING + "\n".join(rows) + "\n"


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
