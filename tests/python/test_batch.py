"""Batches over arrays of numpy: the vectors, one row at a time, refusals, and what happens to memory."""

import pickle
import subprocess
import sys
import threading
import time

import gaugepoint
import numpy as np
import pytest
from vectors import batch

ROWS = batch()
IRON, ALUMINIUM = gaugepoint.MeanExpansion(11.4e-6), gaugepoint.MeanExpansion(20.5e-6)


def numbers(cell):
    return [float(x) for x in cell.split(";")]


def called(row, **options):
    laws = [gaugepoint.CubicStrain(*numbers(row[name])) for name in ("bore_law", "piston_law")]
    return gaugepoint.clearances(*laws, *(np.array([x]) for x in numbers(row["row"])), **options)


def by_hand(law, piston_law, row):
    """The formulas of core/docs/batch.md in their order, one operation after the other: the same bits."""

    def grown(law, t):
        c1, c2, c3 = law[:3]
        return 1.0 + ((c3 * (t - 20.0) + c2) * (t - 20.0) + c1) * (t - 20.0)

    bore, piston, parts, bore_c, piston_c = row
    bore, piston = bore / grown(law, parts), piston / grown(piston_law, parts)
    return bore - piston, bore * grown(law, bore_c) - piston * grown(piston_law, piston_c)


@pytest.mark.parametrize("row", [r for r in ROWS if not r["expected"].startswith("error:")], ids=lambda r: r["id"])
def test_value(row):
    found = called(row)
    results = found.bench_mm[0], found.running_mm[0]
    for result, expected in zip(results, numbers(row["expected"]), strict=True):
        assert abs(result - expected) <= float(row["tolerance"])
    assert results == by_hand(numbers(row["bore_law"]), numbers(row["piston_law"]), numbers(row["row"]))
    assert found.status is None


@pytest.mark.parametrize("row", [r for r in ROWS if r["expected"].startswith("error:")], ids=lambda r: r["id"])
def test_refusal(row):
    with pytest.raises(gaugepoint.InputError) as refused:
        called(row)
    assert refused.value.kind == row["expected"].removeprefix("error:")
    assert "/" in refused.value.field


def table(rows):
    chance = np.random.default_rng(20261125)
    ranges = [(86.02, 86.06), (85.96, 86.0), (18, 28), (90, 130), (100, 160)]
    return [chance.uniform(low, high, rows) for low, high in ranges]


def alone(row):
    bore, piston, parts, bore_c, piston_c = map(float, row)
    bore = gaugepoint.size_at_20_mm(bore, 0.0, 20.0, 11.4e-6, parts, 11.4e-6)
    piston = gaugepoint.size_at_20_mm(piston, 0.0, 20.0, 20.5e-6, parts, 20.5e-6)
    return gaugepoint.bench_clearance_mm(bore, piston), gaugepoint.running_clearance_mm(bore, bore_c, 11.4e-6, piston, piston_c, 20.5e-6)


def test_rows_have_the_bits_of_one_row():
    columns = table(1001)
    found = gaugepoint.clearances(IRON, ALUMINIUM, *columns)
    assert list(zip(found.bench_mm, found.running_mm, strict=True)) == [alone(row) for row in zip(*columns, strict=True)]


def test_arrays_that_do_not_stand_side_by_side():
    columns = table(600)
    expected = gaugepoint.clearances(IRON, ALUMINIUM, *columns)
    records = np.core.records if not hasattr(np, "rec") else np.rec
    fields = records.fromarrays(columns, names="a,b,c,d,e").view(np.ndarray)
    for others in ([np.ascontiguousarray(c[::-1])[::-1] for c in columns], [fields[name] for name in "abcde"], list(np.array(columns).T.copy().T)):
        assert not others[0].flags.c_contiguous
        found = gaugepoint.clearances(IRON, ALUMINIUM, *others)
        assert all(np.array_equal(a, b) for a, b in zip(found[:2], expected[:2], strict=True))


def spoilt():
    columns = table(900)
    columns[0][7] = np.nan
    columns[1][400] = 3.386
    columns[4][899] = 460.0
    return columns


def test_partial():
    columns = spoilt()
    out = np.full(900, 7.0), np.full(900, 7.0)
    for found in (gaugepoint.clearances(IRON, ALUMINIUM, *columns, partial=True), gaugepoint.clearances(IRON, ALUMINIUM, *columns, out=out, partial=True)):
        assert np.flatnonzero(found.status).tolist() == [7, 400, 899]
        assert found.status[[7, 400, 899]].tolist() == [207, 301, 301]
        for results in found[:2]:
            assert np.flatnonzero(np.isnan(results)).tolist() == [7, 400, 899]
        assert (found.bench_mm[8], found.running_mm[8]) == alone([c[8] for c in columns])
    assert found.bench_mm is out[0] and found.running_mm is out[1]
    good = gaugepoint.clearances(IRON, ALUMINIUM, *table(900), partial=True)
    assert not good.status.any() and good.status.dtype == np.int32


def test_refused_rows_are_named():
    columns = spoilt()
    out = np.full(900, 7.0), np.full(900, 7.0)
    for options in ({}, {"out": out}):
        with pytest.raises(gaugepoint.RowsRefused) as raised:
            gaugepoint.clearances(IRON, ALUMINIUM, *columns, **options)
        refused = raised.value
        assert (refused.count, refused.rows) == (3, (7, 400, 899))
        assert (refused.kind, refused.field) == ("not_finite", "bore_mm/7")
        assert [error.field for error in refused.errors] == ["bore_mm/7", "piston_mm/400", "piston_temperature_c/899"]
        assert "inches entered as mm" in refused.errors[1].did_you_mean and str(refused.errors[1]) in str(refused)
        again = pickle.loads(pickle.dumps(refused))
        assert (str(again), again.rows, again.count, again.field) == (str(refused), refused.rows, 3, refused.field)
        # none of the rows that were computed may be taken for a result of the call
        assert "out" not in options or np.isnan(out).all()
    columns[2][:] = 80.6
    with pytest.raises(gaugepoint.RowsRefused, match="900 rows are refused: .* and 892 more") as many:
        gaugepoint.clearances(IRON, ALUMINIUM, *columns)
    assert many.value.rows == tuple(range(8))


@pytest.mark.parametrize(
    "wrong",
    [
        [86.0] * 4,
        86.0,
        None,
        np.full(4, 86.0, "f4"),
        np.full(4, 86),
        np.full((2, 2), 86.0),
        np.full(4, 86.0, ">f8"),
        np.ma.array([86.0] * 4, mask=[0, 1, 0, 0]),
        np.array([86.0] * 4, object),
    ],
    ids=lambda x: f"{type(x).__name__} {getattr(x, 'dtype', '')}",
)
def test_what_is_no_column(wrong):
    columns = table(4)
    for k in range(5):
        with pytest.raises(TypeError, match="float64"):
            gaugepoint.clearances(IRON, ALUMINIUM, *columns[:k], wrong, *columns[k + 1 :])
    with pytest.raises(TypeError):
        gaugepoint.clearances(IRON, ALUMINIUM, *columns, out=(np.empty(4), wrong))


def test_places_that_are_wrong():
    columns = table(4)
    whole = np.full(10, 7.0)
    fixed = np.full(4, 7.0)
    fixed.flags.writeable = False
    for out in [(whole[:4], whole[:4]), (whole[:4], whole[3:7]), (columns[0], whole[:4]), (whole[:8:2], whole[1:9:2]), (fixed, whole[:4])]:
        with pytest.raises(ValueError, match="out"):
            gaugepoint.clearances(IRON, ALUMINIUM, *columns, out=out)
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.clearances(IRON, ALUMINIUM, *columns, out=(np.empty(4), np.empty(5)))
    assert (refused.value.kind, refused.value.field) == ("contradiction", "running_mm")
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.clearances(IRON, ALUMINIUM, *columns[:4], np.empty(3))
    assert (refused.value.kind, refused.value.field) == ("contradiction", "piston_temperature_c")
    assert (whole == 7.0).all()
    with pytest.raises(TypeError, match="piston_law"):
        gaugepoint.clearances(IRON, 20.5e-6, *columns)


def test_no_rows():
    found = gaugepoint.clearances(IRON, ALUMINIUM, *(np.empty(0) for _ in range(5)))
    assert found.bench_mm.shape == found.running_mm.shape == (0,)


def test_the_interpreter_is_free_meanwhile():
    columns = table(2_000_000)
    out = np.empty(2_000_000), np.empty(2_000_000)
    counted, done = [0], threading.Event()

    def count():
        while not done.is_set():
            counted[0] += 1
            time.sleep(0.0005)  # lets go at once: it counts only while the other thread lets go, too

    switch = sys.getswitchinterval()
    sys.setswitchinterval(100)  # a thread that holds the interpreter keeps it
    try:
        other = threading.Thread(target=count)
        # without a switch the other thread runs only while this one lets go
        other.start()
        before = counted[0]
        gaugepoint.clearances(IRON, ALUMINIUM, *columns, out=out, partial=True)
        assert counted[0] > before
    finally:
        done.set()
        sys.setswitchinterval(switch)
        other.join()


def test_numpy_is_not_loaded_without_an_array():
    code = """
import sys, gaugepoint
law = gaugepoint.MeanExpansion(1e-5)
try:
    gaugepoint.clearances(law, law, [86.0], [86.0], [20.0], [20.0], [20.0])
except TypeError:
    print("numpy" in sys.modules)
"""
    assert subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout == "False\n"
