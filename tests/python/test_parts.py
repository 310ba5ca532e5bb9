"""Rings, pins, liners and the deck against the vectors of every host."""

import dataclasses
import inspect
import math
import pickle
from fractions import Fraction

import gaugepoint
import pytest
from gaugepoint import parts
from vectors import parts as vectors

ROWS = vectors()
HELD = [row for row in ROWS if not row["expected"].startswith("error:")]
REFUSED = [row for row in ROWS if row["expected"].startswith("error:")]
OF_PARTS = {
    "press_fit": gaugepoint.PressFitParts,
    "liner_in_block": gaugepoint.LinerParts,
    "compression_ratio": gaugepoint.Chamber,
}
COLOURS = ("none", "straw", "purple", "blue")


def numbers(text):
    return [float(number) for number in text.split(";") if number]


def called(row):
    function = getattr(gaugepoint, row["function"])
    if row["function"] == "gasket_band":
        projections, bands, step = row["arguments"].split("|")
        return function(numbers(projections), [tuple(numbers(band)) for band in bands.split("/") if band], float(step))
    if row["function"] == "least_clearance_of_section":
        mean, cos, sin = row["arguments"].split("|")
        return function(float(mean), numbers(cos), numbers(sin))
    arguments = numbers(row["arguments"])
    if row["function"] == "ring_conformable_amplitude_mm":
        arguments[0] = int(arguments[0])
    if row["function"] == "liner_in_block":
        arguments[1] = bool(arguments[1])
    if row["function"] in OF_PARTS:
        return function(OF_PARTS[row["function"]](*arguments))
    return function(*arguments)


def found(result, name):
    """A result by the name that every host gives it."""
    if name == "result":
        return result
    value = getattr(result, name)
    return COLOURS.index(value) + 1 if name == "temper_colour" else value


@pytest.mark.parametrize("row", HELD, ids=lambda row: row["id"])
def test_value(row):
    result = called(row)
    assert row["source"]
    for part in row["expected"].split(";"):
        name, _, value = part.partition("=")
        ours = found(result, name)
        if value == "none":
            assert ours is None, name
            continue
        value, tolerance = value.split("~")
        # exact arithmetic: the comparison must not add a rounding of its own
        assert abs(Fraction(ours) - Fraction(value)) <= Fraction(tolerance), name


@pytest.mark.parametrize("row", REFUSED, ids=lambda row: row["id"])
def test_refusal(row):
    with pytest.raises(gaugepoint.InputError) as refused:
        called(row)
    assert f"error:{refused.value.kind} {refused.value.field}" == row["expected"]


def test_every_function_has_rows():
    flat = {"keystone_groove_width_mm", "rod_angle_mrad", "rod_skew_mm", "top_land_crevice_cm3", "depth_in_bore_mm"}
    flat |= {name for name in gaugepoint.__all__ if name.startswith("ring_") and name not in ("ring_gap_factors", "ring_hot_gap_mm")}
    of_module = {name for name in parts.__all__ if inspect.isfunction(getattr(parts, name))} - {"ring_gap_factors"}
    assert {row["function"] for row in HELD} == {row["function"] for row in REFUSED} == flat | of_module


def test_results_are_data():
    choice = gaugepoint.gasket_band([0.5], [(0.4, 0.6, 1.3)])
    assert pickle.loads(pickle.dumps(choice)) == choice
    for name in parts.__all__:
        kind = getattr(parts, name)
        if isinstance(kind, type) and not issubclass(kind, tuple):
            assert dataclasses.is_dataclass(kind) and kind.__dataclass_params__.frozen, name
            assert kind.__doc__


def test_cautions():
    cool, hot = (gaugepoint.assembly_temperature(22.0, 0.03, clearance, 12e-6) for clearance in (0.02, 0.06))
    assert "tongs" in cool.caution and "overheated" not in cool.caution
    assert "tongs" in hot.caution and "overheated" in hot.caution and hot.temper_colour == "blue"
    for row in HELD:
        if row["function"] in ("press_fit", "liner_in_block"):
            assert {"press_fit": "Press work", "liner_in_block": "ventilate"}[row["function"]] in called(row).caution


def test_factors():
    factors = gaugepoint.ring_gap_factors()
    # 3 to 6.5 per mille are printed; never per inch
    assert len(factors) == 15 and all(3 <= f.per_mille <= 6.5 and "common practice" in f.source for f in factors)


@pytest.mark.parametrize(
    "call",
    [
        lambda: gaugepoint.rod_angle_mrad("0.05", 100.0),
        lambda: gaugepoint.ring_conformable_amplitude_mm(2.5, 20.0, 86.0, 3.3, 1.5, 16e4),
        lambda: gaugepoint.gasket_band(0.5, [(0.4, 0.6, 1.3)]),
        lambda: gaugepoint.gasket_band([0.5], [(0.4, "0.6", 1.3)]),
        lambda: gaugepoint.compression_ratio(gaugepoint.Chamber("86", 86, 50, 87, 1, 0, 0, 0)),
    ],
)
def test_what_is_no_number(call):
    with pytest.raises(TypeError):
        call()


def test_a_line_has_three_numbers():
    with pytest.raises(ValueError):
        gaugepoint.gasket_band([0.5], [(0.4, 0.6)])


def test_what_is_no_part():
    with pytest.raises(AttributeError):
        gaugepoint.press_fit(86.0)


STRANGE = [math.nan, math.inf, -math.inf, 0.0, -0.0, 5e-324, 1e-300, 1e-5, 0.3, 20.0, 86.0, 1e9, 1e308, -1e308]


@pytest.mark.parametrize("function", sorted({row["function"] for row in HELD} - {"gasket_band", "least_clearance_of_section"}))
def test_strange_numbers(function):
    row = next(row for row in HELD if row["function"] == function)
    cells = row["arguments"].split(";")
    for place in range(len(cells)):
        if function == "ring_conformable_amplitude_mm" and place == 0:
            continue
        for strange in STRANGE:
            arguments = ";".join([*cells[:place], repr(strange), *cells[place + 1 :]])
            try:
                result = called({**row, "arguments": arguments})
            except gaugepoint.InputError as error:
                assert error.kind in ("not_finite", "out_of_range", "out_of_order", "contradiction")
                continue
            values = dataclasses.astuple(result) if dataclasses.is_dataclass(result) else (result,)
            assert all(math.isfinite(value) for value in values if isinstance(value, float))


@pytest.mark.parametrize("order", [-(2**40), -1, 0, 1, 51, 2**40])
def test_orders(order):
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.ring_conformable_amplitude_mm(order, 20.0, 86.0, 3.3, 1.5, 16e4)
    assert (refused.value.kind, refused.value.field) == ("out_of_range", "order")
