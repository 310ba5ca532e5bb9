"""Questions before measuring and the table of plausible values, against the vectors of every host."""

import dataclasses
import pickle

import gaugepoint
import pytest
from gaugepoint import before
from test_measured import expect, expect_refusal
from test_measured import found as plain
from vectors import before as rows

HELD = [row for row in rows() if not row["expected"].startswith("error:")]
REFUSED = [row for row in rows() if row["expected"].startswith("error:")]
FUNCTIONS = {"soak", "adequacy", "drift", "agreement", "readers", "outliers", "judge"}


def called(row):
    function, choice = row["function"], row["choice"]
    first, *rest = [[float(number) for number in group.split(";")] for group in row["numbers"].split("/")]
    if function == "adequacy":
        lower, upper, u, least_zone = first
        guard, *amount = choice.split(";")
        return gaugepoint.adequacy((lower, upper), u, guard, *map(float, amount), least_zone=least_zone)
    if function == "readers":
        return gaugepoint.readers(first, rest[0], rest[1][0])
    if function == "outliers":
        return gaugepoint.outliers([tuple(point) for point in rest], choice, first[0])
    if function == "judge":
        return gaugepoint.judge(choice, *first)
    return getattr(gaugepoint, function)(*first)


def found(result, name):
    """A result by the name that every host gives it."""
    if name == "beyond":
        return len(result.beyond)
    if name == "advice":
        return ["measure", "wait or correct", "wait"].index(result.advice) + 1
    if name == "verdict":
        return ["usual", "odd"].index(result) + 1
    return plain(result, name)


@pytest.mark.parametrize("row", HELD, ids=lambda row: row["id"])
def test_value(row):
    expect(row, called(row), found)


@pytest.mark.parametrize("row", REFUSED, ids=lambda row: row["id"])
def test_refusal(row):
    expect_refusal(row, called)


def test_every_function_has_rows():
    assert {row["function"] for row in HELD} == {row["function"] for row in REFUSED} == FUNCTIONS


@pytest.mark.parametrize(
    "call, kind, field",
    [
        (lambda: gaugepoint.adequacy((0.0, 1.0), 0.1, "none"), "unknown_choice", "guard"),
        (lambda: gaugepoint.adequacy((0.0, 1.0), 0.1, "stringent"), "missing_field", "amount"),
        (lambda: gaugepoint.adequacy((0.0, 1.0), 0.1, "proven", 1.0), "contradiction", "amount"),
        (lambda: gaugepoint.adequacy((None, 1.0), 0.1), "missing_field", "tolerance"),
        (lambda: gaugepoint.outliers([(0, 0, 1)] * 4, "round"), "unknown_choice", "pattern"),
        (lambda: gaugepoint.outliers([]), "missing_field", "points"),
        (lambda: gaugepoint.readers([], [1.0, 2.0], 0.1), "missing_field", "first"),
    ],
)
def test_what_only_python_can_pass(call, kind, field):
    with pytest.raises(gaugepoint.InputError) as refused:
        call()
    assert (refused.value.kind, refused.value.field) == (kind, field)


def test_results_are_data():
    drift = gaugepoint.drift(0.0, 0.003, 0.003)
    assert pickle.loads(pickle.dumps(drift)) == drift and hash(drift) == hash(gaugepoint.drift(0.0, 0.003, 0.003))
    for name in before.__all__:
        kind = getattr(before, name)
        if isinstance(kind, type):
            assert dataclasses.is_dataclass(kind) and kind.__dataclass_params__.frozen and kind.__doc__, name


def test_the_table_is_data():
    table = gaugepoint.plausibility_table()
    assert len(table) >= 40
    for row in table:
        assert row.name and row.label and row.unit and row.reason and row.slips and row.of in (None, "bore", "pin")
        assert row.possible[0] <= row.usual[0] <= row.usual[1] <= row.possible[1], row
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.judge("bore", 3.386)
    assert refused.value.did_you_mean == "86.004 mm (inches entered as mm)"
    assert (refused.value.lower, refused.value.upper, refused.value.unit) == (10.0, 1100.0, "mm")
