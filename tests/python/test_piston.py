"""Forms of pistons: the vectors of every host, and curves against SciPy on random tables."""

import random

import gaugepoint
import numpy as np
import piston as reference
import pytest
from gaugepoint import shape
from scipy.interpolate import PchipInterpolator
from test_measured import expect, expect_refusal
from vectors import VECTORS
from vectors import piston as rows

ROWS = rows()
HELD = [row for row in ROWS if not row["expected"].startswith("error:")]
REFUSED = [row for row in ROWS if row["expected"].startswith("error:")]
KINDS = ["larger_beside", "smaller_beside", "odd_ovality", "odd_barrel", "odd_slope", "odd_coating"]


def numbers(text):
    return [float(n) for n in text.split(";") if n]


def pairs(flat):
    return list(zip(flat[::2], flat[1::2], strict=True))


def surface_of(text):
    (form, counted, start, end, coating, *panels), *tables, windows = map(numbers, text.split("/"))
    more = {
        "counted": ["above", "below"][int(counted) - 1],
        "coating_mm": coating or None,
        "panel_deg": tuple(panels) if panels[0] else None,
        "windows": [shape.Window(["cut_out", "bare"][int(w[0]) - 1], *w[1:]) for w in (windows[k : k + 5] for k in range(0, len(windows), 5))],
    }
    kind, count = (shape.SymmetricSurface, 2) if form == 1 else (shape.AsymmetricSurface, 3)
    tables = [pairs(table) for table in tables]
    return kind(start, end, *tables[:count], *(table or None for table in tables[count : 3 if form == 1 else 5]), **more)


def piston_of(text):
    gauge, *surfaces = text.split("|")
    return shape.Piston(float(gauge), [surface_of(surface) for surface in surfaces])


def called(row):
    function, given = row["function"], row["given"]
    if function == "fit_piston_surface":
        double, given = given.split(";", 1)
        uncertainty, *points = map(numbers, given.split("/"))
        return gaugepoint.fit_piston_surface(*points, row["choice"], double_ovality=double == "1", uncertainty_mm=uncertainty[0] if uncertainty else None)
    if function == "piston_warnings":
        return gaugepoint.piston_warnings(piston_of(given))
    head, given = given.split("|", 1)
    if function == "fit_piston_trace":
        gauge, head = head.split(";", 1)
        uncertainty, *points = map(numbers, head.split("/"))
        return gaugepoint.fit_piston_trace(piston_of(given), float(gauge), *points, row["choice"], uncertainty_mm=uncertainty[0] if uncertainty else None)
    return getattr(gaugepoint, function)(piston_of(given), *numbers(head))


def found(result, name):
    """A result by the name that every host gives it."""
    if isinstance(result, float):
        return result
    if name.startswith("residuals."):
        return result.residuals_mm[int(name.partition(".")[2])]
    if isinstance(result, tuple):
        if name == "count":
            return len(result)
        place, _, name = name.partition(".")
        value = getattr(result[int(place)], name)
        return KINDS.index(value) + 1 if name == "kind" else value
    if isinstance(result, shape.FittedSurface):
        if name == "stations":
            return len(result.stations)
        place, _, part = name.partition(".")
        if not part:
            return getattr(result, name)
        value = getattr(result.stations[int(place)], part.replace("_uncertainty", ""))
        part_of = "uncertainty" if "uncertainty" in part else "value"
    else:
        value = getattr(result, name.removesuffix("_uncertainty"))
        part_of = "uncertainty" if name.endswith("_uncertainty") else "value"
    return getattr(value, part_of) if isinstance(value, shape.Estimate) else value


@pytest.mark.parametrize("row", HELD, ids=lambda row: row["id"])
def test_value(row):
    expect(row, called(row), found)


@pytest.mark.parametrize("row", REFUSED, ids=lambda row: row["id"])
def test_refusal(row):
    expect_refusal(row, called)


def test_vectors_are_those_of_the_evaluation():
    for name, content in reference.vectors().items():
        assert (VECTORS / name).read_text(encoding="utf-8") == content, name


@pytest.mark.parametrize("seed", range(200))
def test_curves_are_those_of_scipy(seed):
    chance = random.Random(seed)
    heights = np.cumsum([chance.uniform(0.5, 30) for _ in range(chance.choice([2, 2, 3, 3, 4, 7, 12]))])
    # flat stretches and slopes of both signs; within the slope of a skirt
    values = [chance.choice([0.3, 0.3, chance.uniform(0.29, 0.31)]) for _ in heights]
    form = shape.Piston(heights[0], [shape.SymmetricSurface(heights[0], heights[-1], [(0, 0)], list(zip(heights, values, strict=True)))])
    curve = PchipInterpolator(heights, values)
    for height in np.linspace(heights[0], heights[-1], 40):
        assert abs(gaugepoint.piston_ovality_mm(form, min(height, heights[-1])) - curve(height)) < 1e-13


@pytest.mark.parametrize(
    "call, kind, field",
    [
        (lambda: gaugepoint.piston_warnings(shape.Piston(5, [shape.SymmetricSurface(0, 9, [(0, 0)], [(0, 0.2)], counted="up")])), "unknown_choice", "surfaces/0"),
        (lambda: gaugepoint.fit_piston_surface([5], [0], [86.0], "radius"), "unknown_choice", "reading"),
    ],
)
def test_what_only_python_can_pass(call, kind, field):
    with pytest.raises(gaugepoint.InputError) as refused:
        call()
    assert (refused.value.kind, refused.value.field) == (kind, field)


def test_what_is_no_piston():
    for wrong in (None, 86.0, shape.Piston(5, None), shape.Piston(5, [None])):
        with pytest.raises((TypeError, AttributeError)):
            gaugepoint.piston_warnings(wrong)
