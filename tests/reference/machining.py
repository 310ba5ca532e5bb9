"""Machining by exact fractions, and by hand.

Run it to write ../vectors/machining.csv; with --check it only compares.
"""

import sys
from fractions import Fraction
from pathlib import Path

import compare

VECTORS = Path(__file__).parents[1] / "vectors"


def row(name, function, arguments, expected, source):
    return f"{name},{function},{arguments},{expected},{source}"


def sizes():
    yield row("printed_form", "bore_sizes", "85.96;0.03;0.02", "finish_mm=85.99~1e-12;boring_mm=85.97~1e-12", "by hand: piston + clearance; less the honing allowance")
    yield row("left_for_a_rough_bore", "bore_sizes", "101.93;0.07;0.1", "finish_mm=102~1e-12;boring_mm=101.9~1e-12", "by hand")
    yield row("interference", "bore_sizes", "86;-0.02;0", "finish_mm=85.98~1e-12;boring_mm=85.98~1e-12", "by hand")


def dial(name, numbers):
    """What the dial must read, from size, setting, and temperature and coefficient of ring, gauge when set, gauge when used, and block."""
    size, setting, *conditions = map(Fraction, numbers.split(";"))
    ring, set_, used, block = (1 + a * (t - 20) for t, a in zip(conditions[::2], conditions[1::2], strict=True))
    reading = size * block - setting * ring * used / set_
    return row(name, "dial_reading_mm", numbers, f"dial_mm={float(reading)!r}~1e-12", "exact fractions: the size of the bore as it is less what the gauge holds as it is")


def dials():
    steel, iron, aluminium = "1.15e-5", "1.1e-5", "2.1e-5"
    yield dial("warm_block", f"85.99;86;22;{steel};22;{steel};22;{steel};32;{iron}")
    yield dial("all_at_20", f"100.02;100;20;{steel};20;{steel};20;{steel};20;{iron}")
    yield dial("gauge_warmed_too", f"96.01;96;18;{steel};18;{steel};27;{steel};41;{aluminium}")
    yield dial("cold_shop", f"75.5;75.4;8;{steel};9;{steel};6;{steel};5;{iron}")


def checks():
    yield row("met", "finish_check", "86.252;86.25;0.005", "outcome=1~0;difference_mm=none", "by hand: 0.002 within 0.005")
    yield row("still_to_hone", "finish_check", "86.23;86.25;0.005", "outcome=2~0;difference_mm=0.02~1e-12", "by hand")
    yield row("too_large", "finish_check", "86.26;86.25;0.005", "outcome=3~0;difference_mm=0.01~1e-12", "by hand")
    yield row("at_the_limit", "finish_check", "86.25;86.375;0.125", "outcome=1~0;difference_mm=none", "by hand: exact in binary; the limit is within")


def orders():
    for name, order in (("one", (1,)), ("three", (1, 2, 3)), ("four", (2, 4, 1, 3)), ("five", (1, 3, 5, 2, 4)), ("six", (1, 3, 5, 2, 4, 6))):
        yield row(f"order_of_{name}", "boring_order", len(order), ";".join(f"{k}={n}~0" for k, n in enumerate(order)), "by hand: no neighbours one after the other from four on")


def refusals():
    def bad(name, function, arguments, error):
        return row(name, function, arguments, f"error:{error}", "refused")

    ring = "22;1.15e-5;22;1.15e-5;22;1.15e-5;32;1.1e-5"
    yield bad("no_piston", "bore_sizes", "nan;0.03;0.02", "not_finite piston_mm")
    yield bad("clearance_of_a_bore", "bore_sizes", "85.96;86;0.02", "out_of_range clearance_mm")
    yield bad("honing_below_zero", "bore_sizes", "85.96;0.03;-0.02", "out_of_range honing_mm")
    yield bad("no_size", "dial_reading_mm", f"nan;86;{ring}", "not_finite size_mm")
    yield bad("wrong_ring", "dial_reading_mm", f"85.99;80;{ring}", "out_of_range setting_mm")
    yield bad("ring_too_hot", "dial_reading_mm", "85.99;86;95;1.15e-5;22;1.15e-5;22;1.15e-5;32;1.1e-5", "out_of_range ring_temperature_c")
    yield bad("set_coefficient", "dial_reading_mm", "85.99;86;22;1.15e-5;22;11.5;22;1.15e-5;32;1.1e-5", "out_of_range set_expansion_per_k")
    yield bad("used_nan", "dial_reading_mm", "85.99;86;22;1.15e-5;22;1.15e-5;nan;1.15e-5;32;1.1e-5", "not_finite used_temperature_c")
    yield bad("block_coefficient", "dial_reading_mm", "85.99;86;22;1.15e-5;22;1.15e-5;22;1.15e-5;32;0", "out_of_range block_expansion_per_k")
    yield bad("finish_inf", "finish_check", "86.25;inf;0.005", "not_finite finish_mm")
    yield bad("tolerance_below_zero", "finish_check", "86.25;86.25;-0.005", "out_of_range tolerance_mm")
    yield bad("no_cylinders", "boring_order", "0", "out_of_range cylinders")
    yield bad("too_many_cylinders", "boring_order", "25", "out_of_range cylinders")


HEAD = """# Machining. Columns and rules: README.md beside this file. Written by reference/machining.py.
id,function,arguments,expected,source
"""

if __name__ == "__main__":
    rows = [*sizes(), *dials(), *checks(), *orders(), *refusals()]
    content = HEAD + "".join(f"{r}\n" for r in rows)
    file = VECTORS / "machining.csv"
    if "--check" in sys.argv:
        compare.check(file, content)
    else:
        file.write_text(content, encoding="utf-8")
