"""Matching of pistons to bores: the vectors of every host, arrays, and refusals."""

import copy
import dataclasses
import pickle

import gaugepoint
import numpy as np
import pytest
from gaugepoint.plan import MeasuredBore, MeasuredPiston, MeasuredSizes, WantedClearance, match
from vectors import matching as rows


def number(text):
    return float(text) if text else None


def wanted(cells):
    return WantedClearance(*map(number, cells)) if any(cells) else None


def pairs(text):
    return [tuple(map(int, pair.split("-"))) for pair in text.split()]


def matched(row):
    bores = [cells.split("/") for cells in row["bores"].split(";")]
    pistons = [cells.split("/") for cells in row["pistons"].split(";")]
    set_, shared, common, band, forbidden, fixed = row["conditions"].split("|")
    return match(
        [MeasuredBore(float(c[0]), float(c[1]), wanted(c[2:5]), c[5] or None) for c in bores],
        [MeasuredPiston(float(c[0]), float(c[1]), number(c[2]), c[3] or None) for c in pistons],
        wanted(set_.split("/")),
        shared_uncertainty_mm=float(shared),
        common_uncertainty_mm=float(common),
        forbidden=pairs(forbidden),
        fixed=pairs(fixed),
        weight_band_g=number(band),
    )


@pytest.mark.parametrize("row", rows(), ids=lambda row: row["id"])
def test_row(row):
    if row["case"] == "error":
        with pytest.raises(gaugepoint.InputError) as refused:
            matched(row)
        assert f"{refused.value.kind} {refused.value.field}" == row["pairs"]
        return
    found = matched(row)
    assert found.case == row["case"] and found.because
    assert " ".join(str(pair.piston) for pair in found.pairs) == row["pairs"]
    assert [pair.bore for pair in found.pairs] == list(range(len(found.pairs)))
    held = [(found.merit, "worst_outside", "sum_of_squares_mm2"), (found.as_given, "given_outside", "given_sum_mm2")]
    for merit, outside, total in held:
        assert merit.worst_outside == pytest.approx(float(row[outside]), rel=1e-11, abs=0)
        assert merit.sum_of_squares_mm2 == pytest.approx(float(row[total]), rel=1e-11, abs=0)
    used = {pair.piston for pair in found.pairs}
    assert sorted(used | set(found.spare)) == list(range(row["pistons"].count(";") + 1)) and not used & set(found.spare)


FOUR = [86.012, 86.004, 86.009, 86.015], [85.958, 85.949, 85.961, 85.953]
WANTED = WantedClearance(0.045, 0.065, 0.053)


def test_arrays_give_what_lists_give():
    bores, pistons = FOUR
    of_lists = match([MeasuredBore(mm, 0.001) for mm in bores], [MeasuredPiston(mm, 0.002) for mm in pistons], WANTED)
    spread = np.array([pistons, pistons]).T[:, 1]  # its numbers do not stand side by side
    of_arrays = match(MeasuredSizes(np.array(bores), np.full(4, 0.001)), MeasuredSizes(spread, np.full(4, 0.002)), WANTED)
    assert of_lists == of_arrays


def test_what_is_no_array_is_refused():
    bores, pistons = (MeasuredSizes(np.array(mm), np.full(4, 0.001)) for mm in FOUR)
    with pytest.raises(TypeError, match="bores: a numpy.ndarray"):
        match(MeasuredSizes(FOUR[0], bores.standard_uncertainty_mm), pistons, WANTED)
    with pytest.raises(TypeError, match="both are arrays, or neither"):
        match(bores, [MeasuredPiston(85.95, 0.001)] * 4, WANTED)
    with pytest.raises(ValueError, match="pistons: sizes and uncertainties"):
        match(bores, MeasuredSizes(pistons.size_mm, np.full(3, 0.001)), WANTED)


def test_a_place_below_zero_is_no_place():
    parts = [MeasuredBore(86.0, 0.001)], [MeasuredPiston(85.95, 0.001)]
    with pytest.raises(gaugepoint.InputError) as refused:
        match(*parts, WANTED, forbidden=[(-1, 0)])
    assert (refused.value.kind, refused.value.field) == ("unknown_name", "forbidden/0")


def test_a_matching_is_a_value():
    found = match([MeasuredBore(86.0, 0.001)], [MeasuredPiston(85.95, 0.001, weight_g=500)], WANTED)
    assert found.weight_spread_g == 0 and found.by_grade == found.as_given == found.merit
    assert copy.deepcopy(found) == found == pickle.loads(pickle.dumps(found))
    with pytest.raises(dataclasses.FrozenInstanceError):
        found.case = "sorted"
