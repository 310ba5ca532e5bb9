"""Statistics, gauge studies and risks against the vectors of every host."""

import dataclasses
import math
import pickle
from fractions import Fraction
from typing import get_args

import gaugepoint
import pytest
from gaugepoint import decision, measurement
from vectors import risk, study

ROWS = study() + risk()
HELD = [row for row in ROWS if not row["expected"].startswith("error:")]
REFUSED = [row for row in ROWS if row["expected"].startswith("error:")]
DISTRIBUTIONS = {kind.__name__.lower(): kind for kind in (gaugepoint.Normal, gaugepoint.Uniform, gaugepoint.Triangular, gaugepoint.Gamma)}


def numbers(text):
    return [float(number) for number in text.split(";")]


def groups(text):
    return [numbers(group) for group in text.split("/")]


def studied(row):
    values = row["values"]
    if row["function"] == "sample":
        return gaugepoint.sample(numbers(values))
    if row["function"] == "one_way":
        return gaugepoint.one_way(groups(values))
    function, given = row["function"], row["given"]
    if function == "bias":
        reference, u, coverage = numbers(given)
        return gaugepoint.bias(numbers(values), reference, reference_uncertainty=u, coverage=coverage)
    if function.startswith("linearity"):
        references, readings = zip(*((group[0], group[1:]) for group in groups(values)), strict=True)
        *x, coverage = numbers(given)
        return getattr(gaugepoint, function)(references, readings, *x, coverage=coverage)
    if not function.startswith("study_by_"):
        return gaugepoint.control_chart(groups(values), function)
    pooling = given if given in ("", "never", "always") else float(given)
    method = function.removeprefix("study_by_")
    return gaugepoint.gauge_study([groups(appraiser) for appraiser in values.split("|")], method, pooling)


def interval(text):
    return tuple(float(limit) if limit else None for limit in text.split(";"))


def risked(row):
    function, given, tolerance = row["function"], row["given"], interval(row["tolerance"])
    u = float(row["u"] or "nan")
    name, *rest = row["items"].split(";")
    items = DISTRIBUTIONS[name](*map(float, rest)) if name else None
    if function == "global_risks":
        return gaugepoint.global_risks(items, u, tolerance, accepted=interval(given))
    if function == "acceptance_for_risk":
        return gaugepoint.acceptance_for_risk(items, u, tolerance, float(given))
    if function == "capability":
        return gaugepoint.capability(items.mean, items.deviation, tolerance)
    guard, *amount = given.split(";")
    return gaugepoint.acceptance(tolerance, u, guard, *map(float, amount))


def called(row):
    return studied(row) if "values" in row else risked(row)


def found(result, name):
    """A result by the name that every host gives it."""
    for part in name.split("."):
        if isinstance(result, (measurement.Component, measurement.Bias, measurement.Band)) and part in ("lower", "upper"):
            return result.interval and result.interval[part == "upper"]
        if isinstance(result, measurement.Study) and part == "pooled":
            return result.table is not None and result.table.pooled
        if isinstance(result, measurement.Chart) and part == "count":
            return len(result.points)
        result = result and (result[int(part)] if part.isdigit() else getattr(result, part))
    return result


def expect(row, result, found):
    """Hold a result against the expected column of its row."""
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


def expect_refusal(row, called):
    """Hold the refusal of a row against its expected column."""
    with pytest.raises(gaugepoint.InputError) as refused:
        called(row)
    assert f"error:{refused.value.kind} {refused.value.field}" == row["expected"]


@pytest.mark.parametrize("row", HELD, ids=lambda row: row["id"])
def test_value(row):
    expect(row, called(row), found)


@pytest.mark.parametrize("row", REFUSED, ids=lambda row: row["id"])
def test_refusal(row):
    expect_refusal(row, called)


def test_every_function_has_rows():
    functions = {"sample", "one_way", "study_by_ranges", "study_by_variance", "bias", "linearity", "linearity_band", *get_args(measurement.Kind), "global_risks", "acceptance", "acceptance_for_risk", "capability"}
    assert {row["function"] for row in HELD} == {row["function"] for row in REFUSED} == functions


READINGS = [[[10, 20], [12, 22]], [[14, 24], [16, 26]]]


@pytest.mark.parametrize(
    "call, kind, field",
    [
        (lambda: gaugepoint.gauge_study(READINGS, "anova"), "unknown_choice", "method"),
        (lambda: gaugepoint.gauge_study(READINGS, pooling="sometimes"), "unknown_choice", "pooling"),
        (lambda: gaugepoint.gauge_study([]), "missing_field", "values"),
        (lambda: gaugepoint.control_chart([[1, 2], [3, 4]], "range"), "unknown_choice", "kind"),
        (lambda: gaugepoint.control_chart([[1, 2], [3]], "ranges"), "missing_field", "values"),
        (lambda: gaugepoint.control_chart([], "ranges"), "missing_field", "values"),
        (lambda: gaugepoint.linearity([1, 2], [[1, 1, 2]]), "contradiction", "readings"),
        (lambda: gaugepoint.linearity([], []), "missing_field", "readings"),
        (lambda: gaugepoint.gauge_study([[[1, 2], [3, 4]], [[5, 6], [7]]]), "missing_field", "values"),
        (lambda: gaugepoint.sample([]), "missing_field", "values"),
        (lambda: gaugepoint.one_way([]), "missing_field", "groups"),
        (lambda: gaugepoint.one_way([[1, 2], []]), "missing_field", "groups"),
        (lambda: gaugepoint.acceptance((None, 1.0), 0.1, "none"), "unknown_choice", "guard"),
        (lambda: gaugepoint.acceptance((None, 1.0), 0.1, "relaxed"), "missing_field", "amount"),
        (lambda: gaugepoint.acceptance((None, 1.0), 0.1, "proven", 1.0), "contradiction", "amount"),
    ],
)
def test_what_only_python_can_pass(call, kind, field):
    with pytest.raises(gaugepoint.InputError) as refused:
        call()
    assert (refused.value.kind, refused.value.field) == (kind, field)


@pytest.mark.parametrize(
    "call",
    [
        lambda: gaugepoint.sample("86"),
        lambda: gaugepoint.sample(86.0),
        lambda: gaugepoint.sample([86.0, None]),
        lambda: gaugepoint.one_way([1.0, 2.0]),
        lambda: gaugepoint.gauge_study([[1.0, 2.0]]),
        lambda: gaugepoint.gauge_study(READINGS, pooling=None),
        lambda: gaugepoint.global_risks("normal", 0.1, (None, 1.0)),
        lambda: gaugepoint.global_risks(gaugepoint.Normal("0", 1), 0.1, (None, 1.0)),
        lambda: gaugepoint.capability(0.0, 1.0, 1.0),
    ],
)
def test_what_is_no_number(call):
    with pytest.raises(TypeError):
        call()


@pytest.mark.parametrize("limits", [(), (1.0,), (1.0, 2.0, 3.0)])
def test_limits_are_two(limits):
    with pytest.raises(ValueError):
        gaugepoint.capability(0.0, 1.0, limits)


def test_defaults():
    items, limits = gaugepoint.Normal(0, 1), (-2, 2)
    assert gaugepoint.global_risks(items, 0.25, limits) == gaugepoint.global_risks(items, 0.25, limits, accepted=limits)
    assert gaugepoint.gauge_study(READINGS) == gaugepoint.gauge_study(READINGS, "variance", 0.25)
    assert gaugepoint.acceptance(limits, 0.25) == gaugepoint.acceptance(limits, 0.25, "proven")
    # an interval is the tolerance of the next call
    within = gaugepoint.acceptance(limits, 0.25, "stringent", 1.0)
    assert gaugepoint.global_risks(items, 0.25, limits, within).consumer < gaugepoint.global_risks(items, 0.25, limits).consumer


def test_results_are_data():
    study_of = gaugepoint.gauge_study(READINGS)
    assert pickle.loads(pickle.dumps(study_of)) == study_of
    assert hash(study_of) == hash(gaugepoint.gauge_study(READINGS))
    assert repr(study_of).startswith("Study(repeatability=Component(deviation=") and "table" not in repr(study_of)
    for module in (measurement, decision):
        for name in module.__all__:
            kind = getattr(module, name)
            if isinstance(kind, type) and not issubclass(kind, tuple):
                assert dataclasses.is_dataclass(kind) and kind.__dataclass_params__.frozen, name
                assert kind.__doc__


def test_strange_numbers():
    strange = [0.0, -0.0, 5e-324, 1e-50, 1e-9, 1.0, 86.0, 1e49, 1e99, 1e308, math.inf, math.nan]
    for first in strange:
        for second in strange:
            for kind in (gaugepoint.Normal, gaugepoint.Uniform, gaugepoint.Gamma):
                try:
                    risks = gaugepoint.global_risks(kind(first, second), 0.5, (first, 90.0), (None, second))
                except gaugepoint.InputError as error:
                    assert error.field in ("items", "tolerance", "accepted")
                    continue
                assert all(math.isfinite(share) for share in dataclasses.astuple(risks))
