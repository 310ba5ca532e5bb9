"""Worn bores and machining: the vectors of every host, arrays, and what only Python can pass."""

import dataclasses
import pickle

import gaugepoint
import numpy as np
import pytest
from gaugepoint import plan
from gaugepoint.plan import Bar, BestAxis, WallPoint, WarmGauging, clean_up
from test_measured import expect, expect_refusal, numbers
from vectors import clean_up as worn_rows
from vectors import machining as machining_rows

ROWS = worn_rows() + machining_rows()
HELD = [row for row in ROWS if not row["expected"].startswith("error:")]
REFUSED = [row for row in ROWS if row["expected"].startswith("error:")]
OUTCOMES = ["met", "hone_on", "too_large"]


def worn(row):
    head, *rest = map(numbers, row["given"].split("/"))
    if row["function"] == "from_diameters":
        return gaugepoint.clean_up_from_diameters(*head)
    if row["function"] == "clean_up":
        word, *reach = row["choice"].split(";")
        axis = BestAxis(*map(float, reach)) if word == "best" else word
        return clean_up(*rest, axis, **dict(zip(("centring_mm", "stock_mm", "each_mm", "common_mm"), head, strict=True)))
    size, *bar = head
    walls = [WallPoint(*wall) for wall in rest]
    if row["function"] == "walls_left":
        return gaugepoint.walls_left(Bar(*bar), size, walls)
    return {"diameter_mm": gaugepoint.largest_bore_by_walls_mm(Bar(*bar), size, walls)}


def machined(row):
    arguments = numbers(row["arguments"])
    if row["function"] == "boring_order":
        return gaugepoint.boring_order(int(row["arguments"]))
    if row["function"] == "dial_reading_mm":
        return {"dial_mm": gaugepoint.dial_reading_mm(arguments[0], WarmGauging(*arguments[1:]))}
    found = getattr(gaugepoint, row["function"])(*arguments)
    if row["function"] == "finish_check":
        return {"outcome": 1 + OUTCOMES.index(found.outcome), "difference_mm": found.difference_mm}
    return found


def called(row):
    return worn(row) if "choice" in row else machined(row)


def found(result, name):
    """A result by the name that every host gives it."""
    if isinstance(result, dict):
        return result[name]
    if isinstance(result, list):
        return result[int(name)]
    if name.startswith("held."):
        (share,) = (held.share for held in result.held_by if held.place == int(name[5:]))
        return share
    return getattr(result if hasattr(result, name) else result.bar, name)


@pytest.mark.parametrize("row", HELD, ids=lambda row: row["id"])
def test_value(row):
    expect(row, called(row), found)


@pytest.mark.parametrize("row", REFUSED, ids=lambda row: row["id"])
def test_refusal(row):
    expect_refusal(row, called)


def test_every_function_has_rows():
    functions = {"clean_up", "from_diameters", "walls_left", "largest_by_walls", "bore_sizes", "dial_reading_mm", "finish_check", "boring_order"}
    assert {row["function"] for row in HELD} == {row["function"] for row in REFUSED} == functions


ANGLES, DEPTHS, RADII = [0.0, 90.0, 180.0, 270.0], [30.0] * 4, [43.1, 43.0, 43.0, 43.0]


def test_arrays_give_what_lists_give():
    spread = np.array([RADII, RADII]).T[:, 1]  # its numbers do not stand side by side
    assert clean_up(np.array(ANGLES), np.array(DEPTHS), spread, BestAxis(0.1, 0)) == clean_up(ANGLES, DEPTHS, RADII, BestAxis(0.1, 0))


def test_without_walls_no_bore_is_too_large():
    assert plan.largest_bore_by_walls_mm(Bar(0, 0, 50, 0, 0), 4, []) is None and plan.walls_left(Bar(0, 0, 50, 0, 0), 86, []) == []


@pytest.mark.parametrize(
    "call, kind, field",
    [
        (lambda: clean_up(ANGLES, DEPTHS[1:], RADII), "contradiction", "depths_mm"),
        (lambda: clean_up(ANGLES, DEPTHS, [*RADII, 43.0]), "contradiction", "radii_mm"),
        (lambda: clean_up(ANGLES, DEPTHS, RADII, "best"), "unknown_choice", "axis"),
    ],
)
def test_what_only_python_can_pass(call, kind, field):
    with pytest.raises(gaugepoint.InputError) as refused:
        call()
    assert (refused.value.kind, refused.value.field) == (kind, field)


@pytest.mark.parametrize(
    "call, raised",
    [
        (lambda: clean_up(ANGLES, DEPTHS, "radii"), TypeError),
        (lambda: clean_up(ANGLES, DEPTHS, RADII, None), TypeError),
        (lambda: plan.walls_left((0, 0, 50, 0, 0), 86, []), AttributeError),
        (lambda: plan.dial_reading_mm(86, 86), AttributeError),
    ],
)
def test_what_is_none_of_the_types(call, raised):
    with pytest.raises(raised):
        call()


def test_results_are_data():
    result = clean_up(ANGLES, DEPTHS, RADII)
    assert pickle.loads(pickle.dumps(result)) == result and hash(result) == hash(clean_up(ANGLES, DEPTHS, RADII))
    for name in plan.__all__:
        if isinstance(getattr(plan, name), type):
            assert dataclasses.is_dataclass(getattr(plan, name)) and getattr(plan, name).__dataclass_params__.frozen, name
