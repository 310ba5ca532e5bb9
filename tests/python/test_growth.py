"""Laws of expansion and built-in materials against the vectors of every host."""

import copy
import dataclasses
import math
import pickle
from fractions import Fraction

import gaugepoint
import pytest
from gaugepoint import growth
from vectors import growth as vectors

ROWS = vectors()
HELD = [row for row in ROWS if not row["expected"].startswith("error:")]
REFUSED = [row for row in ROWS if row["expected"].startswith("error:")]


def numbers(text):
    return [float(number) for number in text.split(";") if number]


def law(form, lists):
    if form == "built_in":
        return growth.BuiltIn(*lists)
    x = [numbers(text) for text in lists]
    if form == "mean_coefficient":
        return growth.MeanCoefficient(*x[0])
    if form == "mean_table":
        return growth.MeanTable(x[0][0], list(zip(*x[1:], strict=True)))
    if form == "instantaneous_table":
        return growth.InstantaneousTable(list(zip(*x, strict=True)))
    if form == "graphite_iron":
        return growth.GraphiteIron(*x[0])
    return {"instantaneous_polynomial": growth.InstantaneousPolynomial, "strain_polynomial": growth.StrainPolynomial}[form](x[0], *x[1])


def called(row):
    *lists, t = row["arguments"].split("|")
    return law(row["function"], lists).at(float(t))


@pytest.mark.parametrize("row", HELD, ids=lambda row: row["id"])
def test_value(row):
    result = called(row)
    assert row["source"]
    for part in row["expected"].split(";"):
        name, _, value = part.partition("=")
        ours = getattr(result, name)
        if value == "none":
            assert ours is None, name
        else:
            value, tolerance = value.split("~")
            assert abs(Fraction(ours) - Fraction(value)) <= Fraction(tolerance), name


@pytest.mark.parametrize("row", REFUSED, ids=lambda row: row["id"])
def test_refusal(row):
    with pytest.raises(gaugepoint.InputError) as refused:
        called(row)
    assert f"error:{refused.value.kind} {refused.value.field}" == row["expected"]


LAWS = [
    growth.MeanCoefficient(20, 11.5e-6, 0, 100),
    growth.MeanTable(20.0, [(20.0, 20e-6), (100.0, 20e-6), (200.0, 21e-6)]),
    growth.InstantaneousTable([[0, 10.9e-6], [60, 11.6e-6]]),
    growth.InstantaneousPolynomial([0.8651e-6, 2.3569e-8, -4.2277e-11, 2.5408e-14], 19, 390),
    growth.StrainPolynomial([-4.1277e-3, -3.0389e-6, 8.7696e-8, -9.9821e-11], -248.0, 26.0),
    growth.GraphiteIron(42.5, 6.5, 0.9),
    growth.BuiltIn("steel 4140"),
]


@pytest.mark.parametrize("law", LAWS, ids=lambda law: type(law).__name__)
def test_laws_are_values(law):
    assert eval(repr(law), vars(growth)) == law == pickle.loads(pickle.dumps(law)) == copy.deepcopy(law)
    assert hash(law) == hash(copy.copy(law))
    field = dataclasses.fields(law)[0].name
    with pytest.raises(dataclasses.FrozenInstanceError):
        setattr(law, field, 1)
    there = law.at(20.0)
    assert there.strain == 0.0 and there.mean_from_20_per_k is None and 4e-6 < there.instantaneous_per_k < 3e-5
    assert pickle.loads(pickle.dumps(there)) == there
    with pytest.raises(gaugepoint.InputError, match="outside the range"):
        law.at(1000.0)
    with pytest.raises(TypeError):
        law.at("20")


@pytest.mark.parametrize(
    "wrong",
    [lambda: growth.MeanTable(20, [(20.0, "20e-6")]), lambda: growth.BuiltIn(7), lambda: growth.MeanCoefficient(20, None, 0, 100)],
)
def test_wrong_types(wrong):
    with pytest.raises(TypeError):
        wrong()


def test_mean_and_instantaneous_are_different_classes():
    rows = ((20.0, 21.7e-6), (200.0, 26.4e-6))
    mean, instantaneous = growth.MeanTable(20.0, rows), growth.InstantaneousTable(rows)
    assert mean != instantaneous
    # by hand: 26.4e-6 180 against the mean of both 180
    assert math.isclose(mean.at(200.0).strain, 26.4e-6 * 180, rel_tol=1e-14)
    assert math.isclose(instantaneous.at(200.0).strain, 24.05e-6 * 180, rel_tol=1e-14)


def test_illustrative_duties_say_what_they_are():
    rows = gaugepoint.illustrative_duties()
    assert len({row.name for row in rows}) == len(rows) >= 7
    for row in rows:
        assert row.confidence == "unverified" and row.permissible_error_k == 25.0
        assert row.source.startswith("illustrative") and "from memory" in row.source
        for places in ([r.at for r in row.piston], [r.at for r in row.bore]):
            assert places[0] == 0 and all(a < b for a, b in zip(places, places[1:], strict=False))
        # the boss is hotter by 5 K to 25 K at the same height of the skirt; the crown is hottest, the wall at the deck too
        assert all(5 <= r.pin_c - r.thrust_c <= 25 for r in row.piston if r.at <= 1)
        assert all(a.thrust_c < b.thrust_c for a, b in zip(row.piston, row.piston[1:], strict=False))
        assert all(a.wall_c > b.wall_c for a, b in zip(row.bore, row.bore[1:], strict=False))
        assert pickle.loads(pickle.dumps(row)) == row


def test_built_in_materials_name_their_source():
    rows = gaugepoint.built_in_materials()
    assert len({row.name for row in rows}) == len(rows) >= 20
    for row in rows:
        assert row.source and row.cells and row.confidence in ("published", "maker", "unverified")
        assert ("memory" in row.source or "disagree" in row.source) == (row.confidence == "unverified")
        assert row.law.at(row.from_c).strain < 0 < row.law.at(row.to_c).strain
        assert row.law == growth.BuiltIn(row.name)
        with pytest.raises(gaugepoint.InputError):
            row.law.at(row.to_c + 0.5)
        with pytest.raises(dataclasses.FrozenInstanceError):
            row.source = ""
        assert pickle.loads(pickle.dumps(row)) == row
    with pytest.raises(gaugepoint.InputError) as refused:
        growth.BuiltIn("wrought aluminum 4032")
    assert (refused.value.kind, refused.value.field) == ("unknown_name", "name")
    assert refused.value.did_you_mean == "wrought aluminium 4032"
