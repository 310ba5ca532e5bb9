"""Queries of DuckDB and Polars through arrays, as python/docs/sql.md has them: every row beside the functions of one row, NULL, and what is refused."""

import re

import duckdb
import gaugepoint
import numpy as np
import polars as pl
import pytest
from gaugepoint import frames
from vectors import REPOSITORY

IRON, ALLOY = gaugepoint.MeanExpansion(11.4e-6), gaugepoint.MeanExpansion(20.5e-6)
NAMES = ("bore_mm", "piston_mm", "parts_temperature_c")
LIMITS = frames.BenchLimits(0.030, 0.060, standard_uncertainty_mm=0.002)
# more than a vector of DuckDB and than a piece of a streamed query
ROWS = 20_000


@pytest.fixture(scope="module")
def recipes():
    """The functions of the page: that of DuckDB and that of Polars."""
    page = (REPOSITORY / "python" / "docs" / "sql.md").read_text(encoding="utf-8")
    functions = []
    for block in re.findall(r"^```python\n(.*?)^```$", page, re.M | re.S):
        if "def bench_mm" in block:
            # up to where the page begins to use it
            names = {}
            exec(re.split(r"^(?:shop|readings) = ", block, flags=re.M)[0], names)
            functions.append(names["bench_mm"])
    return functions


@pytest.fixture(scope="module")
def readings():
    """Invented rows on a grid of 1 um, a tenth of them with something that was not measured."""
    chance = np.random.default_rng(20261129)
    ranges = [(86.02, 86.06, 3), (85.96, 86.02, 3), (18, 28, 1)]
    columns = {name: chance.uniform(low, high, ROWS).round(digits).tolist() for name, (low, high, digits) in zip(NAMES, ranges, strict=True)}
    for row in np.flatnonzero(chance.uniform(size=ROWS) < 0.1):
        columns[NAMES[chance.integers(3)]][row] = None
    return columns


@pytest.fixture(scope="module")
def expected(readings):
    """The functions of one row, and nothing of arrays."""

    def alone(bore, piston, parts):
        bore = gaugepoint.size_at_20_mm(bore, 0.0, 20.0, 11.4e-6, parts, 11.4e-6)
        return gaugepoint.bench_clearance_mm(bore, gaugepoint.size_at_20_mm(piston, 0.0, 20.0, 20.5e-6, parts, 20.5e-6))

    found = [None if None in row else alone(*row) for row in zip(*readings.values(), strict=True)]
    assert 0 < found.count(None) < ROWS / 5
    return found


@pytest.fixture
def shop(recipes, readings):
    connection = duckdb.connect(config={"threads": 4})
    connection.create_function("bench_mm", recipes[0], ["DOUBLE"] * 3, "DOUBLE", type="arrow")
    given = pl.DataFrame({"place": range(ROWS), **readings}).to_arrow()
    connection.register("given", given)
    connection.execute("CREATE TABLE pair AS FROM given")
    yield connection
    connection.close()


def lazy(recipes, frame):
    return frame.select(pl.struct(*NAMES).map_batches(recipes[1], return_dtype=pl.Float64, is_elementwise=True).alias("bench_mm"))


def test_every_row_in_duckdb(shop, expected):
    rows = shop.execute("SELECT bench_mm(bore_mm, piston_mm, parts_temperature_c) FROM pair ORDER BY place").fetchall()
    assert [row[0] for row in rows] == expected


@pytest.mark.parametrize("engine", ["in-memory", "streaming"])
def test_every_row_in_polars(recipes, readings, expected, engine):
    assert lazy(recipes, pl.LazyFrame(readings)).collect(engine=engine)["bench_mm"].to_list() == expected


def test_decisions_of_a_query(shop, expected):
    rows = shop.sql("SELECT bore_mm, piston_mm, parts_temperature_c FROM pair ORDER BY place").to_arrow_table()
    same = {"bore_temperature_c": 110.0, "piston_temperature_c": 120.0}
    decided = frames.decide(rows, IRON, ALLOY, LIMITS, same=same).frame
    found = shop.execute("SELECT bench_mm, decision FROM decided").fetchall()
    one = [None if x is None else gaugepoint.decide_mm(x, 0.002, 0.030, 0.060).result for x in expected]
    assert found == list(zip(expected, one, strict=True)) and len(set(one)) == 4


@pytest.mark.parametrize("given, field", [((3.386, 86.0, 20.0), "bore_mm"), ((86.04, 86.0, 71.6), "parts_temperature_c"), ((float("nan"), 86.0, 20.0), "bore_mm")])
def test_a_refused_row_ends_the_query(shop, recipes, given, field):
    with pytest.raises(duckdb.Error, match=f"RowsRefused: .* {field}/0: "):
        shop.execute("SELECT bench_mm(?, ?, ?)", given).fetchall()
    shop.execute("UPDATE pair SET bore_mm = ?, piston_mm = ?, parts_temperature_c = ? WHERE place = 15000", given)
    with pytest.raises(duckdb.Error, match=f"{field}/"):
        shop.execute("SELECT bench_mm(bore_mm, piston_mm, parts_temperature_c) FROM pair").fetchall()
    for engine in ("in-memory", "streaming"):
        with pytest.raises(gaugepoint.RowsRefused, match=f"{field}/0: "):
            lazy(recipes, pl.LazyFrame([given], schema=NAMES, orient="row")).collect(engine=engine)


def test_texts_are_refused(shop, recipes):
    shop.execute("CREATE TABLE typed (bore_mm VARCHAR)")
    shop.execute("INSERT INTO typed VALUES ('96.017')")
    with pytest.raises(duckdb.BinderException):
        shop.execute("SELECT bench_mm(bore_mm, 95.95, 20) FROM typed").fetchall()
    with pytest.raises(TypeError, match="bore_mm"):
        lazy(recipes, pl.LazyFrame({"bore_mm": ["96.017"], "piston_mm": 95.95, "parts_temperature_c": 20.0})).collect()


def test_nothing_and_only_nulls(shop, recipes):
    assert shop.execute("SELECT bench_mm(bore_mm, piston_mm, parts_temperature_c) FROM pair WHERE place < 0").fetchall() == []
    assert shop.execute("SELECT bench_mm(NULL, NULL, NULL)").fetchall() == [(None,)]
    nulls = pl.LazyFrame({name: [None, None] for name in NAMES}, schema=dict.fromkeys(NAMES, pl.Float64))
    assert lazy(recipes, nulls).collect()["bench_mm"].to_list() == [None, None]
    assert lazy(recipes, nulls.head(0)).collect()["bench_mm"].to_list() == []
