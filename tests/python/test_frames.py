"""Frames of pandas, polars and Arrow: every row beside the functions of one row, what is missing, what is refused, and what is left as it was."""

import inspect
import re
import subprocess
import sys
from fractions import Fraction

import gaugepoint
import numpy as np
import pandas as pd
import polars as pl
import pyarrow as pa
import pytest
from gaugepoint import _rows, frames
from vectors import REPOSITORY

IRON, ALLOY = gaugepoint.MeanExpansion(11.4e-6), gaugepoint.MeanExpansion(20.5e-6)
NAMES = ("bore_mm", "piston_mm", "parts_temperature_c", "bore_temperature_c", "piston_temperature_c")
LIMITS = frames.BenchLimits(0.030, 0.060, standard_uncertainty_mm=0.002)
KINDS = {"pandas": pd.DataFrame, "polars": pl.DataFrame, "arrow": pa.table}


def table(rows=500, seed=20261129):
    """Invented rows on a grid of 1 um, as a gauge reads them."""
    chance = np.random.default_rng(seed)
    ranges = [(86.02, 86.06, 3), (85.96, 86.02, 3), (18, 28, 1), (90, 130, 0), (100, 160, 0)]
    return {name: chance.uniform(low, high, rows).round(digits) for name, (low, high, digits) in zip(NAMES, ranges, strict=True)}


def columns(frame):
    """Any of the frames as lists, None for what is missing."""
    if isinstance(frame, pd.DataFrame):
        return {name: [None if pd.isna(x) else x for x in frame[name].tolist()] for name in frame.columns}
    return frame.to_dict(as_series=False) if isinstance(frame, pl.DataFrame) else frame.to_pydict()


def alone(row, limits):
    """The functions of one row, and nothing of frames."""
    bore, piston, parts, bore_c, piston_c = map(float, row)
    bore = gaugepoint.size_at_20_mm(bore, 0.0, 20.0, 11.4e-6, parts, 11.4e-6)
    piston = gaugepoint.size_at_20_mm(piston, 0.0, 20.0, 20.5e-6, parts, 20.5e-6)
    bench = gaugepoint.bench_clearance_mm(bore, piston)
    running = gaugepoint.running_clearance_mm(bore, bore_c, 11.4e-6, piston, piston_c, 20.5e-6)
    decision = gaugepoint.decide_mm(bench, limits.standard_uncertainty_mm, limits.lower_mm, limits.upper_mm, limits.rule, limits.at_least)
    return bench, running, decision.result


@pytest.mark.parametrize("kind", KINDS)
def test_every_row_is_that_of_one_row(kind):
    given = table()
    decided = frames.decide(KINDS[kind](given), IRON, ALLOY, LIMITS)
    found = columns(decided.frame)
    assert list(found) == [*NAMES, "bench_mm", "running_mm", "decision", "status", "reason"]
    expected = [alone(row, LIMITS) for row in zip(*given.values(), strict=True)]
    assert list(zip(found["bench_mm"], found["running_mm"], found["decision"], strict=True)) == expected
    assert set(found["status"]) == {0} and set(found["reason"]) == {None}
    summary = decided.summary
    assert (summary.rows, summary.judged, summary.refused, summary.missing, summary.error) == (500, 500, 0, 0, None)
    assert summary.decisions == {word: [e[2] for e in expected].count(word) for word in ("does not conform", "not proven", "conforms")}
    assert all(summary.decisions.values()) and not summary.missing_cells


@pytest.mark.parametrize(
    "limits",
    [
        frames.BenchLimits(0.030, 0.060, 0.0, "simple_acceptance"),
        frames.BenchLimits(None, 0.060, 0.002),
        frames.BenchLimits(0.030, None, 0.002),
        frames.BenchLimits(0.030, 0.060, 0.002, "conformance_probability", 0.95),
        frames.BenchLimits(0.0, 0.060, 0.002, "conformance_probability", 0.5),
        frames.BenchLimits(0.030, 0.060, 0.005, "expanded_guard_band"),
        frames.BenchLimits(0.030, 0.060, 0.001, "simple_acceptance_by_ratio", 4.0),
        frames.BenchLimits(0.030, 0.060, 0.009, "simple_acceptance_by_ratio", 4.0),
        frames.BenchLimits(0.040, 0.042, 0.01),
    ],
    ids=lambda limits: f"{limits.rule} {limits.lower_mm} {limits.upper_mm} {limits.standard_uncertainty_mm}",
)
def test_every_rule_decides_as_one_value(limits):
    # at 20 C the clearance is the difference: rows on a grid, and every number on both sides of each change
    edges = frames._edges(limits)
    around = [x for edge in (*edges.up, *edges.down) for x in (edge, np.nextafter(edge, -1), np.nextafter(edge, 1), edge - 2e-12, edge + 2e-12)]
    bench = np.array([*np.arange(-0.02, 0.1, 0.0005), *around])
    decided = [frames._DECISIONS[code] for code in frames._decisions(bench, limits, edges)]
    one = lambda x: gaugepoint.decide_mm(float(x), limits.standard_uncertainty_mm, limits.lower_mm, limits.upper_mm, limits.rule, limits.at_least)  # noqa: E731
    assert decided == [one(x).result for x in bench]


def test_limits_by_hand():
    # proven, ISO 14253-1:2017: 1.65 standard uncertainties inside; u = 0.002 mm, so 0.0333 mm to 0.0567 mm conform
    frame = pd.DataFrame({"bore_mm": [86.033, 86.034, 86.056, 86.057, 86.026, 86.064], "piston_mm": 86.0})
    same = {name: 20.0 for name in NAMES[2:]}
    decided = frames.decide(frame, IRON, ALLOY, LIMITS, same=same).frame["decision"].tolist()
    assert decided == ["not proven", "conforms", "conforms", "not proven", "does not conform", "does not conform"]


def test_pandas_keeps_index_columns_and_what_was_given():
    frame = pd.DataFrame(table(6), index=pd.MultiIndex.from_product([["left", "right"], [3, 1, 1]], names=["bank", "cylinder"]))
    frame.insert(1, "engine", pd.Categorical(["a", "b", "a", "b", "a", "b"], categories=["b", "a", "c"]))
    frame["note"] = ["", None, "chipped", "", "", ""]
    frame.attrs["shop"] = {"invented": True}
    frame.columns.name = "what"
    before = frame.copy(deep=True)
    found = frames.decide(frame, IRON, ALLOY, LIMITS).frame
    pd.testing.assert_frame_equal(frame, before)
    pd.testing.assert_frame_equal(found[before.columns], before)
    assert found.index.equals(before.index) and found.index.names == ["bank", "cylinder"]
    assert found.attrs == {"shop": {"invented": True}} and found.columns.name == "what"
    found.attrs["shop"]["invented"] = False
    assert frame.attrs["shop"]["invented"]
    assert found["decision"].dtype == pd.CategoricalDtype(frames._DECISIONS) and str(found["status"].dtype) == "Int32"
    found.loc[:, "bench_mm"] = 0.0
    pd.testing.assert_frame_equal(frame, before)


def test_polars_and_arrow_keep_columns():
    given = table(3)
    extra = {"engine": ["a", "b", "a"], "when": [1, None, 3]}
    frame = pl.DataFrame({**extra, **given}, schema_overrides={"engine": pl.Categorical})
    found = frames.decide(frame, IRON, ALLOY, LIMITS).frame
    assert found.select(frame.columns).equals(frame) and found.schema["engine"] == pl.Categorical
    assert found.schema["decision"] == pl.Enum(frames._DECISIONS)
    arrow = pa.table({**extra, **given}).replace_schema_metadata({"shop": "invented"})
    arrow = arrow.set_column(0, "engine", arrow["engine"].dictionary_encode())
    found = frames.decide(arrow, IRON, ALLOY, LIMITS).frame
    assert found.select(arrow.column_names).equals(arrow) and found.schema.metadata == {b"shop": b"invented"}


def nulls(kind, given, name, row):
    """A frame with one number missing, in each way that its library has."""
    missing = {**given, name: [None if k == row else x for k, x in enumerate(given[name].tolist())]}
    match kind:
        case "pandas NaN":
            return pd.DataFrame({n: pd.Series(x, dtype=float) for n, x in missing.items()})
        case "pandas NA":
            return pd.DataFrame({n: pd.array(x, dtype="Float64") for n, x in missing.items()})
        case "pandas Arrow":
            return pd.DataFrame({n: pd.Series(x, dtype=pd.ArrowDtype(pa.float64())) for n, x in missing.items()})
        case "polars null":
            return pl.DataFrame(missing)
        case "polars chunks":
            whole = pl.DataFrame(missing)
            return pl.concat([whole[:2], whole[2:]], rechunk=False)
        case "arrow null":
            return pa.table(missing)
        case "arrow chunks":
            whole = pa.table(missing)
            return pa.concat_tables([whole.slice(0, 2), whole.slice(2)])


MISSING = ["pandas NaN", "pandas NA", "pandas Arrow", "polars null", "polars chunks", "arrow null", "arrow chunks"]


@pytest.mark.parametrize("kind", MISSING)
@pytest.mark.parametrize("name", NAMES)
def test_missing_stays_missing(kind, name):
    given = table(5)
    decided = frames.decide(nulls(kind, given, name, 3), IRON, ALLOY, LIMITS)
    found = columns(decided.frame)
    for k, row in enumerate(zip(*given.values(), strict=True)):
        results = tuple(found[n][k] for n in ("bench_mm", "running_mm", "decision"))
        assert results == ((None, None, None) if k == 3 else alone(row, LIMITS))
    assert found["status"] == [0, 0, 0, None, 0] and found["reason"] == [None, None, None, f"missing: {name}", None]
    summary = decided.summary
    assert (summary.judged, summary.refused, summary.missing, summary.missing_cells) == (4, 0, 1, {name: 1})
    assert sum(summary.decisions.values()) == 4


@pytest.mark.parametrize("kind", ["pandas NA", "pandas NaN", "polars null", "arrow null"])
def test_rows_that_are_refused(kind):
    given = table(6)
    given["piston_mm"][1] = 3.386
    given["piston_temperature_c"][4] = 460.0
    given["bore_mm"][4] = 2.0
    frame = nulls(kind, given, "bore_mm", 4)
    with pytest.raises(gaugepoint.RowsRefused) as raised:
        frames.decide(frame, IRON, ALLOY, LIMITS)
    assert (raised.value.count, raised.value.rows) == (2, (1, 4))
    assert [error.field for error in raised.value.errors] == ["piston_mm/1", "piston_temperature_c/4"]
    decided = frames.decide(frame, IRON, ALLOY, LIMITS, partial=True)
    found = columns(decided.frame)
    assert found["status"] == [0, 301, 0, 0, 301, 0]
    assert found["decision"][1] == found["decision"][4] == "not judged"
    assert found["bench_mm"][1] is found["bench_mm"][4] is None and found["bench_mm"][2] == alone([c[2] for c in given.values()], LIMITS)[0]
    assert found["reason"][1].startswith('piston_mm: "3.386" is refused') and found["reason"][1].endswith("(inches entered as mm)?")
    assert found["reason"][4].startswith("piston_temperature_c: ") and found["reason"][0] is None
    summary = decided.summary
    assert (summary.rows, summary.judged, summary.refused, summary.missing) == (6, 4, 2, 0)
    assert str(summary.error) == str(raised.value) and summary.missing_cells == {"bore_mm": 1}


@pytest.mark.parametrize("kind", ["polars", "arrow"])
def test_nan_is_no_missing_value_where_there_are_nulls(kind):
    given = table(3)
    given["bore_mm"][0] = np.nan
    with pytest.raises(gaugepoint.RowsRefused) as raised:
        frames.decide(KINDS[kind](given), IRON, ALLOY, LIMITS)
    assert raised.value.kind == "not_finite"
    given["bore_mm"][0] = np.inf
    with pytest.raises(gaugepoint.RowsRefused):
        frames.decide(pd.DataFrame(given), IRON, ALLOY, LIMITS)


def test_two_numbers_missing_in_a_row():
    frame = pl.DataFrame({**table(2), "bore_mm": [None, 86.0], "piston_mm": [None, 85.96]})
    decided = frames.decide(frame, IRON, ALLOY, LIMITS)
    assert decided.frame["reason"].to_list() == ["missing: bore_mm, piston_mm", None]
    assert (decided.summary.missing, decided.summary.missing_cells) == (1, {"bore_mm": 1, "piston_mm": 1})


@pytest.mark.parametrize("kind", KINDS)
def test_empty(kind):
    for given in (table(0), readings("dialled", "read", rows=0), readings("given", "given", rows=0)):
        decided = frames.decide(KINDS[kind](given), IRON, ALLOY, LIMITS, partial=True)
        assert decided.summary.rows == decided.summary.judged == 0
        assert all(values == [] for values in columns(decided.frame).values())


@pytest.mark.parametrize("kind", KINDS)
def test_integers_names_and_one_number_for_all(kind):
    given = table(4)
    whole = {name: given[name].round().astype(np.int64) for name in NAMES[3:]}
    frame = KINDS[kind]({"Zylinder": given["bore_mm"], "Kolben_mm": given["piston_mm"], **whole})
    named = {"bore_mm": "Zylinder", "piston_mm": "Kolben_mm"}
    found = columns(frames.decide(frame, IRON, ALLOY, LIMITS, columns=named, same={"parts_temperature_c": 21.5}).frame)
    for k in range(4):
        row = [given["bore_mm"][k], given["piston_mm"][k], 21.5, whole[NAMES[3]][k], whole[NAMES[4]][k]]
        assert (found["bench_mm"][k], found["running_mm"][k], found["decision"][k]) == alone(row, LIMITS)


def refused(frame, **options):
    with pytest.raises(gaugepoint.InputError) as raised:
        frames.decide(frame, IRON, ALLOY, LIMITS, **options)
    return raised.value.kind, raised.value.refused


def test_names_are_refused():
    given = pd.DataFrame(table(2))
    assert refused(given.rename(columns={"bore_mm": "bore"})) == ("missing_unit", "bore")
    assert refused(given.rename(columns={"bore_mm": "bore_in"})) == ("wrong_unit", "bore_in")
    assert refused(given.rename(columns={"bore_mm": "bore_in"}), columns={"bore_mm": "bore_in"}) == ("wrong_unit", "bore_in")
    assert refused(given.rename(columns={"piston_temperature_c": "hot_F"}), columns={"piston_temperature_c": "hot_F"}) == ("wrong_unit", "hot_F")
    assert refused(given.drop(columns="piston_mm")) == ("missing_field", "piston_mm")
    assert refused(given, columns={"bore_mm": "Zylinder"}) == ("missing_field", "Zylinder")
    assert refused(given, columns={"bore": "bore_mm"}) == ("unknown_field", "bore")
    assert refused(given, same={"bore": 86.0}) == ("unknown_field", "bore")
    assert refused(given, columns={"bore_mm": "bore_mm"}, same={"bore_mm": 86.0}) == ("contradiction", "bore_mm")
    assert refused(given.assign(decision="")) == ("contradiction", "decision")
    assert refused(pd.concat([given, given[["bore_mm"]]], axis=1)) == ("repeated", "bore_mm")
    doubled = pa.table([[1.0], [2.0]], names=["note", "note"])
    assert refused(doubled) == ("repeated", "note")


@pytest.mark.parametrize("kind", KINDS)
def test_types_are_refused(kind):
    given = table(2)
    for wrong in (given["bore_mm"].astype(np.float32), given["bore_mm"].astype(str).tolist(), [True, False], given["bore_mm"].astype("datetime64[ms]")):
        with pytest.raises(TypeError, match="bore_mm: a column of float64 or of integers is needed"):
            frames.decide(KINDS[kind]({**given, "bore_mm": wrong}), IRON, ALLOY, LIMITS)
    with pytest.raises(TypeError, match="bore_mm"):
        frames.decide(pd.DataFrame({**given, "bore_mm": pd.Series([86.0, None], dtype=object)}), IRON, ALLOY, LIMITS)


def test_no_frame():
    for wrong in (table(1), [1.0], np.zeros((2, 5)), pl.LazyFrame(table(1)), pd.Series([1.0]), None):
        with pytest.raises(TypeError, match="frame: a pandas.DataFrame"):
            frames.decide(wrong, IRON, ALLOY, LIMITS)


def test_numbers_for_all_rows_are_numbers():
    frame = pl.DataFrame(table(2)).drop("parts_temperature_c")
    for wrong in ("20", None, True, [20.0], np.array(20.0)):
        with pytest.raises(TypeError, match="same: parts_temperature_c"):
            frames.decide(frame, IRON, ALLOY, LIMITS, same={"parts_temperature_c": wrong})
    for number in (float("nan"), 120.0):
        with pytest.raises(gaugepoint.RowsRefused) as refused:
            frames.decide(frame, IRON, ALLOY, LIMITS, same={"parts_temperature_c": number})
        assert refused.value.field == "parts_temperature_c/0"


def test_integers_with_gaps():
    given = {**table(3), "bore_temperature_c": [110, None, 120]}
    for frame in (pd.DataFrame({**given, "bore_temperature_c": pd.array(given["bore_temperature_c"], dtype="Int64")}), pl.DataFrame(given), pa.table(given)):
        found = frames.decide(frame, IRON, ALLOY, LIMITS)
        assert found.summary.missing_cells == {"bore_temperature_c": 1} and columns(found.frame)["status"] == [0, None, 0]


def test_limits_and_laws_are_refused():
    frame = pl.DataFrame(table(1))
    for limits, field in [
        (frames.BenchLimits(None, None, 0.001), "upper_mm"),
        (frames.BenchLimits(0.06, 0.03, 0.001), "upper_mm"),
        (frames.BenchLimits(float("nan"), 0.03, 0.001), "lower_mm"),
        (frames.BenchLimits(0.03, 0.06, -0.001), "standard_uncertainty_mm"),
        (frames.BenchLimits(0.03, 0.06, 0.001, "sure"), "rule"),
    ]:
        with pytest.raises(gaugepoint.InputError) as raised:
            frames.decide(frame, IRON, ALLOY, limits)
        assert raised.value.field == field
    for rows in (frame, frame.head(0)):
        with pytest.raises(gaugepoint.InputError):
            frames.decide(rows, IRON, gaugepoint.MeanExpansion(1.0), LIMITS)
    with pytest.raises(TypeError):
        frames.decide(frame, IRON, 20.5e-6, LIMITS)


class Own(pd.DataFrame):
    """A frame of somebody else."""

    @property
    def _constructor(self):
        return Own


def test_a_frame_derived_from_one_is_one():
    assert type(frames.decide(Own(table(2)), IRON, ALLOY, LIMITS).frame) is Own


# readings

READ = {"reading_mm": None, "zero_error_mm": (-0.004, 0.004, 3), "gauge_temperature_c": (18, 30, 1), "gauge_expansion_per_k": (11e-6, 12e-6, 8), "part_temperature_c": (18, 30, 1), "part_expansion_per_k": (10e-6, 21e-6, 8)}
DIALLED = {"deviation_mm": (0.02, 0.06, 3), "setting_mm": (85.99, 86.01, 4)} | {
    f"{of}_{what}": limits for of in ("ring", "set", "used", "block") for what, limits in [("temperature_c", (18, 30, 1)), ("expansion_per_k", (10e-6, 12e-6, 8))]
}
DIAMETERS = {"bore": (86.02, 86.06, 3), "piston": (85.96, 86.02, 3)}
HOT = dict(zip(NAMES[3:], [(90, 130, 0), (100, 160, 0)], strict=True))
FUNCTIONS = {"read": gaugepoint.size_at_20_mm, "dialled": gaugepoint.bore_size_at_20_mm, "given": lambda size: size}


def quantities(part, way):
    """Invented ranges of what a part is given by."""
    of = {"read": READ | {"reading_mm": DIAMETERS[part]}, "dialled": DIALLED, "given": {"size_at_20_mm": DIAMETERS[part]}}[way]
    return {f"{part}_{name}": limits for name, limits in of.items()}


def readings(bore, piston, rows=300, seed=20261130):
    chance = np.random.default_rng(seed)
    ranges = quantities("bore", bore) | quantities("piston", piston) | HOT
    return {name: chance.uniform(low, high, rows).round(digits) for name, (low, high, digits) in ranges.items()}


def sizes_alone(given, bore, piston, row):
    """The functions of one row, and nothing of frames."""
    ways = {"bore": bore, "piston": piston}
    return [FUNCTIONS[way](*(float(given[name][row]) for name in quantities(part, way))) for part, way in ways.items()]


def results_alone(given, bore, piston, row):
    sizes = sizes_alone(given, bore, piston, row)
    bore_c, piston_c = (float(given[name][row]) for name in HOT)
    running = gaugepoint.running_clearance_mm(sizes[0], bore_c, 11.4e-6, sizes[1], piston_c, 20.5e-6)
    bench = gaugepoint.bench_clearance_mm(*sizes)
    return *sizes, bench, running, gaugepoint.decide_mm(bench, 0.002, 0.030, 0.060).result


def results(found):
    """What stands in every row, with None for a size that is no column of its own."""
    none = [None] * len(found["bench_mm"])
    return list(zip(*(found.get(name, none) for name in ("bore_at_20_mm", "piston_at_20_mm", "bench_mm", "running_mm", "decision")), strict=True))


@pytest.mark.parametrize("piston", ["read", "given"])
@pytest.mark.parametrize("bore", ["read", "dialled", "given"])
@pytest.mark.parametrize("kind", KINDS)
def test_every_reading_is_that_of_one_row(kind, bore, piston):
    given = readings(bore, piston)
    decided = frames.decide(KINDS[kind](given), IRON, ALLOY, LIMITS)
    computed = [f"{part}_at_20_mm" for part, way in (("bore", bore), ("piston", piston)) if way != "given"]
    found = columns(decided.frame)
    assert list(found) == [*given, *computed, "bench_mm", "running_mm", "decision", "status", "reason"]
    expected = [results_alone(given, bore, piston, row) for row in range(300)]
    shown = [0 if bore != "given" else None, 1 if piston != "given" else None]
    assert results(found) == [(*(None if k is None else row[k] for k in shown), *row[2:]) for row in expected]
    assert decided.summary.judged == 300 and all(decided.summary.decisions.values())


def test_sizes_by_exact_arithmetic():
    # ISO 1 and the definition of strain, in fractions of the doubles that are given
    given = readings("dialled", "read", rows=50)
    found = frames.decide(pl.DataFrame(given), IRON, ALLOY, LIMITS).frame
    for row in range(50):
        x = {name: Fraction(float(values[row])) for name, values in given.items()}
        grown = {of: 1 + x[f"{of}_expansion_per_k"] * (x[f"{of}_temperature_c"] - 20) for of in ("bore_ring", "bore_set", "bore_used", "bore_block", "piston_gauge", "piston_part")}
        bore = (x["bore_setting_mm"] * grown["bore_ring"] * grown["bore_used"] / grown["bore_set"] + x["bore_deviation_mm"]) / grown["bore_block"]
        piston = (x["piston_reading_mm"] - x["piston_zero_error_mm"]) * grown["piston_gauge"] / grown["piston_part"]
        for name, exact in (("bore_at_20_mm", bore), ("piston_at_20_mm", piston), ("bench_mm", bore - piston)):
            assert abs(Fraction(found[name][row]) - exact) < Fraction(1, 10**13)


def test_ways_have_the_parameters_of_their_functions():
    for part, ways in _rows.WAYS.items():
        for way in ways:
            parameters = [p.name for p in inspect.signature(way.function).parameters.values() if p.kind is p.POSITIONAL_OR_KEYWORD]
            assert list(way.quantities) == [f"{part}_{name}" for name in parameters]


@pytest.mark.parametrize("kind", MISSING)
@pytest.mark.parametrize("name", [*quantities("bore", "dialled"), *quantities("piston", "read"), "bore_temperature_c"])
def test_a_reading_that_lacks_a_number(kind, name):
    given = readings("dialled", "read", rows=5)
    decided = frames.decide(nulls(kind, given, name, 3), IRON, ALLOY, LIMITS)
    found = columns(decided.frame)
    expected = [results_alone(given, "dialled", "read", row) for row in range(5)]
    # the size of the other part is there
    lacks = [None if name.startswith(part) and name not in HOT else expected[3][k] for k, part in enumerate(("bore", "piston"))]
    expected[3] = (*lacks, None, None, None)
    assert results(found) == expected
    assert found["status"] == [0, 0, 0, None, 0] and found["reason"][3] == f"missing: {name}"
    assert (decided.summary.judged, decided.summary.missing, decided.summary.missing_cells) == (4, 1, {name: 1})


@pytest.mark.parametrize("kind", ["pandas", "polars", "arrow"])
def test_rows_that_have_their_size_need_no_reading(kind):
    given = readings("dialled", "read", rows=8)
    cells = {name: values.tolist() for name, values in given.items()}
    # row 0 has its bore, row 1 its piston, row 2 both; of row 3 bore and reading are given, row 4 has neither, row 5 a size that is none
    cells["bore_size_at_20_mm"] = [86.05, None, 86.04, 86.05, None, 3.386, None, None]
    cells["piston_size_at_20_mm"] = [None, 86.0, 86.01, None, None, None, None, None]
    for row in (0, 2, 4, 5):
        cells["bore_deviation_mm"][row] = None
    cells["bore_ring_temperature_c"][2] = None
    for row in (1, 2):
        cells["piston_reading_mm"][row] = None
    frame = pd.DataFrame(cells, dtype=float) if kind == "pandas" else KINDS[kind](cells)
    with pytest.raises(gaugepoint.RowsRefused) as refused:
        frames.decide(frame, IRON, ALLOY, LIMITS)
    assert [(error.field, error.kind) for error in refused.value.errors] == [("bore_size_at_20_mm/3", "contradiction"), ("bore_size_at_20_mm/5", "out_of_range")]
    decided = frames.decide(frame, IRON, ALLOY, LIMITS, partial=True)
    found = columns(decided.frame)
    alone = [sizes_alone(given, "dialled", "read", row) for row in range(8)]
    bores, pistons = [86.05, alone[1][0], 86.04, None, None, None, *(alone[k][0] for k in (6, 7))], [alone[0][1], 86.0, 86.01, None, alone[4][1], None, *(alone[k][1] for k in (6, 7))]
    assert found["bore_at_20_mm"] == bores and found["piston_at_20_mm"] == pistons
    whole = (0, 1, 2, 6, 7)
    assert [found["bench_mm"][k] for k in whole] == [gaugepoint.bench_clearance_mm(bores[k], pistons[k]) for k in whole]
    header = (REPOSITORY / "ffi" / "include" / "gaugepoint.h").read_text(encoding="utf-8")
    contradiction = int(re.search(r"GAUGEPOINT_\w*CONTRADICTION = (\d+)", header)[1])
    assert found["status"] == [0, 0, 0, contradiction, None, 301, 0, 0]
    assert found["reason"][3] == 'bore_size_at_20_mm: "86.05" is refused: bore_deviation_mm is given, too' and found["reason"][4] == "missing: bore_deviation_mm"
    summary = decided.summary
    assert (summary.judged, summary.refused, summary.missing, summary.missing_cells) == (5, 2, 1, {"bore_deviation_mm": 1})


@pytest.mark.parametrize("kind", KINDS)
def test_a_size_and_a_reading_in_every_row(kind):
    given = readings("dialled", "read", rows=3)
    decided = frames.decide(KINDS[kind]({**given, "bore_size_at_20_mm": [86.05] * 3}), IRON, ALLOY, LIMITS, partial=True)
    assert decided.summary.refused == 3 and {error.field for error in decided.summary.error.errors} == {f"bore_size_at_20_mm/{row}" for row in range(3)}


@pytest.mark.parametrize("kind", KINDS)
def test_readings_that_are_refused(kind):
    given = readings("read", "read", rows=5)
    given["bore_reading_mm"][1] = 3.386
    given["piston_gauge_temperature_c"][2] = 71.6
    given["bore_temperature_c"][3] = 600.0
    frame = KINDS[kind](given)
    with pytest.raises(gaugepoint.RowsRefused) as raised:
        frames.decide(frame, IRON, ALLOY, LIMITS)
    fields = ["bore_reading_mm", "piston_gauge_temperature_c", "bore_temperature_c"]
    assert (raised.value.count, raised.value.rows, raised.value.field) == (3, (1, 2, 3), "bore_reading_mm/1")
    assert [error.field for error in raised.value.errors] == [f"{field}/{row}" for row, field in enumerate(fields, 1)]
    assert all(str(error).startswith(f"{error.field}: ") and str(error) in str(raised.value) for error in raised.value.errors)
    found = columns(frames.decide(frame, IRON, ALLOY, LIMITS, partial=True).frame)
    assert found["status"] == [0, 301, 301, 301, 0] and found["bore_at_20_mm"][1:4] == [None] * 3
    assert [reason and reason.partition(":")[0] for reason in found["reason"]] == [None, *fields, None]
    assert found["reason"][1].endswith("did you mean 86.004 mm (inches entered as mm)?")
    assert results(found)[4] == results_alone(given, "read", "read", 4)


def test_a_part_grows_by_its_law_unless_the_reading_says_by_what():
    given = readings("dialled", "read", rows=4)
    without = pl.DataFrame(given).drop("bore_block_expansion_per_k", "piston_part_expansion_per_k")
    found = frames.decide(without, IRON, ALLOY, LIMITS).frame
    expected = given | {"bore_block_expansion_per_k": [11.4e-6] * 4, "piston_part_expansion_per_k": [20.5e-6] * 4}
    assert results(columns(found)) == [results_alone(expected, "dialled", "read", row) for row in range(4)]
    cubic = gaugepoint.CubicStrain(19.8e-6, 8e-9, 2e-12, -40.0, 300.0)
    with pytest.raises(gaugepoint.InputError) as refused:
        frames.decide(without, IRON, cubic, LIMITS)
    assert (refused.value.kind, refused.value.refused) == ("missing_field", "piston_part_expansion_per_k")
    assert frames.decide(without, IRON, cubic, LIMITS, same={"piston_part_expansion_per_k": 20e-6}).summary.judged == 4


def test_parts_that_do_not_go_together_are_refused():
    given = pd.DataFrame(readings("dialled", "read", rows=2))
    assert refused(given.assign(bore_mm=86.0)) == ("contradiction", "bore_mm")
    assert refused(given.assign(bore_reading_mm=86.0)) == ("contradiction", "bore_deviation_mm")
    assert refused(given.assign(bore_size_at_20_mm=86.0, bore_mm=86.0)) == ("contradiction", "bore_mm")
    assert refused(given.drop(columns="piston_reading_mm").assign(piston_mm=86.0)) == ("contradiction", "piston_mm")
    assert refused(given.drop(columns="piston_reading_mm")) == ("missing_field", "piston_mm")
    assert refused(given.drop(columns="piston_zero_error_mm")) == ("missing_field", "piston_zero_error_mm")
    assert refused(given.assign(bore_at_20_mm=86.0)) == ("contradiction", "bore_at_20_mm")
    # what is named is read
    assert refused(given, same={"parts_temperature_c": 20.0}) == ("contradiction", "parts_temperature_c")
    assert refused(pd.DataFrame(table(2)), same={"bore_zero_error_mm": 0.0}) == ("contradiction", "bore_zero_error_mm")
    assert refused(pd.DataFrame(table(2)), columns={"piston_part_expansion_per_k": "bore_mm"}) == ("contradiction", "piston_part_expansion_per_k")


def test_a_frame_whose_readings_are_one_number():
    # nothing but the running bore is a column
    same = {name: low for name, (low, _, _) in (quantities("bore", "dialled") | quantities("piston", "read") | HOT).items() if name != "bore_temperature_c"}
    found = frames.decide(pl.DataFrame({"bore_temperature_c": [100.0, 110.0]}), IRON, ALLOY, LIMITS, same=same).frame
    given = {name: [number] * 2 for name, number in same.items()} | {"bore_temperature_c": [100.0, 110.0]}
    assert results(columns(found)) == [results_alone(given, "dialled", "read", row) for row in range(2)]


@pytest.mark.parametrize("kind", KINDS)
def test_many_readings_in_every_stretch(kind):
    rows = 2 * _rows._STRETCH + 1000
    given = readings("dialled", "read", rows)
    wrong, lacks = [5, _rows._STRETCH, rows - 1], [6, _rows._STRETCH - 1, 2 * _rows._STRETCH]
    given["piston_reading_mm"][wrong] = 3.386
    holes = {**given, "bore_setting_mm": given["bore_setting_mm"].copy()}
    holes["bore_setting_mm"][lacks] = np.nan
    frame = {"pandas": pd.DataFrame, "polars": lambda x: pl.DataFrame(x, nan_to_null=True), "arrow": lambda x: pa.Table.from_pandas(pd.DataFrame(x))}[kind](holes)
    with pytest.raises(gaugepoint.RowsRefused) as raised:
        frames.decide(frame, IRON, ALLOY, LIMITS)
    assert raised.value.rows == tuple(wrong)
    decided = frames.decide(frame, IRON, ALLOY, LIMITS, partial=True)
    bore = gaugepoint.bore_size_at_20_mm(*(given[name] for name in quantities("bore", "dialled")))
    piston, status = gaugepoint.size_at_20_mm(*(given[name] for name in quantities("piston", "read")), partial=True)
    bench = bore - piston
    bench[lacks] = bore[lacks] = bore[wrong] = np.nan
    for name, expected in (("bore_at_20_mm", bore), ("piston_at_20_mm", piston), ("bench_mm", bench)):
        assert np.array_equal(decided.frame[name].to_numpy(), expected, equal_nan=True)
    found = decided.frame["status"].to_numpy()
    assert np.flatnonzero(found == 301).tolist() == wrong and np.flatnonzero(status).tolist() == wrong
    assert (decided.summary.refused, decided.summary.missing, decided.summary.judged) == (3, 3, rows - 6)


@pytest.mark.parametrize("kind", KINDS)
def test_a_million_rows(kind):
    rows = 1_000_000
    given = table(rows)
    given["piston_mm"][::50_000] = 3.386
    decided = frames.decide(KINDS[kind](given), IRON, ALLOY, LIMITS, partial=True)
    raw = gaugepoint.clearances(IRON, ALLOY, *given.values(), partial=True)
    bench = decided.frame["bench_mm"].to_numpy()
    assert np.array_equal(bench, raw.bench_mm, equal_nan=True)
    assert (decided.summary.rows, decided.summary.refused) == (rows, 20)
    assert sum(decided.summary.decisions.values()) == decided.summary.judged == rows - 20


def test_the_package_brings_no_library_of_frames():
    check = "import sys, gaugepoint.frames; print({'numpy', 'pandas', 'polars', 'pyarrow'} & set(sys.modules))"
    assert subprocess.run([sys.executable, "-c", check], capture_output=True, text=True, check=True).stdout.strip() == "set()"
