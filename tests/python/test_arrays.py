"""The flat functions over arrays and quantities: the vectors, NumPy's own broadcasting, refusals, memory, dtypes, units."""

import ast
import math
import pickle
import re
import subprocess
import sys
import threading
import time
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import gaugepoint
import numpy as np
import pandas
import pint
import polars
import pytest
from vectors import REPOSITORY, flat

ROWS = flat()
CORE = (REPOSITORY / "core/src/flat.rs").read_text(encoding="utf-8")
SIGNATURES = {name: re.findall(r"\w+", given) for name, given in re.findall(r"^    fn (\w+)\(([^)]*)\) \{", CORE, re.M)}
CODES = {name: int(code) for code, name in re.findall(r'^    \w+ = (\d+) "(\w+)";$', (REPOSITORY / "core/src/error.rs").read_text(encoding="utf-8"), re.M)}
UNITS = pint.UnitRegistry()
BORES, PISTONS = np.array([86.25, 86.5, 87.0]), np.array([86.125, 86.0, 85.5])


def of(name):
    """A function, its rows of the vectors, and their arguments as columns."""
    rows = [row for row in ROWS if row["function"] == name]
    return getattr(gaugepoint, name), rows, list(np.array([[float(x) for x in row["arguments"].split(";")] for row in rows]).T)


def accepted(name):
    function, rows, columns = of(name)
    good = np.array([not row["expected"].startswith("error:") for row in rows])
    return function, [row for row, its in zip(rows, good, strict=True) if its], [column[good] for column in columns]


def alone(function, *arguments, **options):
    """NumPy's own broadcast of calls of one number each."""
    together = np.broadcast(*arguments)
    return np.array([function(*map(float, each)) for each in together], float).reshape(together.shape)


def same(found, expected):
    return found.shape == expected.shape and found.dtype == expected.dtype == np.float64 and found.tobytes() == expected.tobytes()


@pytest.mark.parametrize("name", SIGNATURES)
def test_the_vectors_as_one_array(name):
    function, rows, columns = accepted(name)
    found = function(*columns)
    assert type(found) is np.ndarray and found.shape == (len(rows),)
    for result, row in zip(found.tolist(), rows, strict=True):
        assert abs(Fraction(result) - Fraction(row["expected"])) <= Fraction(row["tolerance"])
    assert same(found, alone(function, *columns))
    by_name = function(**dict(zip(SIGNATURES[name], columns, strict=True)))
    assert same(by_name, found)


@pytest.mark.parametrize("name", SIGNATURES)
def test_the_vectors_with_their_refusals(name):
    function, rows, columns = of(name)
    kinds = [row["expected"].removeprefix("error:") if row["expected"].startswith("error:") else None for row in rows]
    values, status = function(*columns, partial=True)
    assert status.dtype == np.int32 and status.tolist() == [CODES[kind] if kind else 0 for kind in kinds]
    assert np.isnan(values).tolist() == [bool(kind) for kind in kinds]
    _, _, good = accepted(name)
    assert same(values[status == 0], function(*good))
    refused = [index for index, kind in enumerate(kinds) if kind]
    if refused:
        with pytest.raises(gaugepoint.RowsRefused) as raised:
            function(*columns)
        assert (raised.value.count, raised.value.rows) == (len(refused), tuple(refused[:8]))
        assert raised.value.kind == kinds[refused[0]]
        parameter, index = raised.value.field.split("/")
        assert parameter in SIGNATURES[name] and index == str(refused[0])


@pytest.mark.parametrize("name", SIGNATURES)
def test_each_argument_as_an_array_beside_numbers(name):
    function, rows, columns = accepted(name)
    numbers = [float(column[0]) for column in columns]
    for place, number in enumerate(numbers):
        given = [*numbers[:place], np.array([number, number]), *numbers[place + 1 :]]
        assert same(function(*given), np.full(2, function(*numbers)))


SHAPES = [((3,), (3,)), ((), (3,)), ((2, 1), (3,)), ((2, 1), (1, 3)), ((4, 1, 3), (2, 1)), ((1,), (5,)), ((1,), (1, 1)), ((0,), ()), ((0,), (1,)), ((2, 0), (2, 1)), ((1, 3), (3,))]


@pytest.mark.parametrize("bores, pistons", [*SHAPES, *[(b, a) for a, b in SHAPES]])
def test_broadcasting(bores, pistons):
    chance = np.random.default_rng(20261129)
    given = chance.uniform(86.0, 86.5, bores), chance.uniform(85.5, 86.0, pistons)
    assert same(gaugepoint.bench_clearance_mm(*given), alone(gaugepoint.bench_clearance_mm, *given))


def test_many_arguments_of_many_shapes():
    chance = np.random.default_rng(20261129)
    given = [chance.uniform(86.0, 86.5, (5, 1, 1)), 110.0, np.full((4, 1), 11.4e-6), chance.uniform(85.9, 86.0, 3), chance.uniform(90.0, 130.0, (4, 3)), 20.5e-6]
    assert same(gaugepoint.running_clearance_mm(*given), alone(gaugepoint.running_clearance_mm, *given))


@pytest.mark.parametrize("bores, pistons", [((2,), (3,)), ((2, 2), (3, 1, 3)), ((0,), (2,))])
def test_shapes_that_do_not_fit(bores, pistons):
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.bench_clearance_mm(np.full(bores, 86.2), np.full(pistons, 86.0))
    assert (refused.value.kind, refused.value.field, refused.value.refused) == ("contradiction", "piston_mm", str(pistons))


def test_of_no_dimension():
    for bore in (np.array(86.25), np.float32(86.25), np.int64(87), np.float64(86.25)):
        found = gaugepoint.bench_clearance_mm(bore, 86.125)
        assert isinstance(found, float) and found == float(bore) - 86.125
    values, status = gaugepoint.bench_clearance_mm(np.array(3.4), 86.0, partial=True)
    assert math.isnan(values) and status == CODES["out_of_range"]
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.bench_clearance_mm(np.array(3.4), 86.0)
    assert refused.value.field == "bore_mm" and not isinstance(refused.value, gaugepoint.RowsRefused)


def test_numbers_stay_python_numbers():
    assert type(gaugepoint.bench_clearance_mm(86.25, 86.125)) is float
    assert type(gaugepoint.bench_clearance_mm(87, 86)) is float
    assert type(gaugepoint.bench_clearance_mm(Fraction(345, 4), 86.125)) is float
    assert gaugepoint.bench_clearance_mm(86.25, 86.125, partial=True) == (0.125, 0)
    value, status = gaugepoint.bench_clearance_mm(86.25, 3.4, partial=True)
    assert math.isnan(value) and status == CODES["out_of_range"]
    assert gaugepoint.bench_clearance_mm(86.25, 86.125, threads=2) == 0.125
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.bench_clearance_mm(86.25, 3.4, threads=2)
    assert refused.value.field == "piston_mm"


LIKE_ARRAYS = {
    "list": BORES.tolist(),
    "tuple": tuple(BORES),
    "nested": [BORES.tolist()],
    "range": range(86, 89),
    "pandas": pandas.Series(BORES, index=[5, 1, 7]),
    "pandas, nullable": pandas.Series(BORES, dtype="Float64"),
    "polars": polars.Series(BORES),
    "memory": memoryview(BORES),
    "float32": BORES.astype("f4"),
    "float16": BORES.astype("f2"),
    "long double": BORES.astype(np.longdouble),
    "big-endian": BORES.astype(">f8"),
    "integers": np.array([87, 88, 89]),
    "small integers": np.array([87, 88, 89], np.uint8),
    "big-endian integers": np.array([87, 88, 89], ">i4"),
    "every other": np.repeat(BORES, 2)[::2],
    "backwards": BORES[::-1],
    "by columns": np.array([BORES, BORES]).T[:, :1],
    "Fortran": np.asfortranarray(np.array([BORES, BORES + 0.125])),
    "stretched": np.broadcast_to(BORES, (2, 3)),
    "not aligned": np.frombuffer(b"." + BORES.tobytes(), "f8", offset=1),
    "field": np.array([(1, b) for b in BORES], "i1, f8")["f1"],
    "fixed": np.frombuffer(BORES.tobytes()),
}


@pytest.mark.parametrize("name", LIKE_ARRAYS)
def test_what_numpy_takes_for_an_array(name):
    given = LIKE_ARRAYS[name]
    plain = np.asarray(given, float)
    assert same(gaugepoint.bench_clearance_mm(given, 86.0), plain - 86.0)
    assert same(gaugepoint.bench_clearance_mm(87.0, given if name != "integers" else [86, 87]), 87.0 - (plain if name != "integers" else np.array([86.0, 87.0])))


def test_a_file_in_memory(tmp_path):
    (tmp_path / "bores").write_bytes(BORES.tobytes())
    given = np.memmap(tmp_path / "bores", float, "r")
    found = gaugepoint.bench_clearance_mm(given, PISTONS)
    assert type(found) is np.ndarray and same(found, BORES - PISTONS)


class Metres(np.ndarray):
    """Floats that mean something else."""


ITSELF = [86.25]
ITSELF.append(ITSELF)

WRONG = {
    "a list that holds itself": ITSELF,
    "text": np.array(["86.25"]),
    "bytes": np.array([b"86.25"]),
    "bool": np.array([True]),
    "complex": np.array([86.25 + 0j]),
    "objects": np.array([86.25, None], object),
    "dates": np.array(["2026-11-29"], "M8[D]"),
    "durations": np.array([86], "m8[s]"),
    "records": np.array([(86.25, 1)], "f8, i4"),
    "another meaning": BORES.view(Metres),
    "pandas, objects": pandas.Series(["86.25"]),
    "polars, text": polars.Series(["86.25"]),
    "polars, bool": polars.Series([True]),
    "list of text": ["86.25"],
    "list of None": [86.25, None],
    "ragged": [[86.25], [86.25, 86.5]],
    "one complex number": np.complex128(86.25),
    "a set": {86.25},
    "a text": "86.25",
    "None": None,
    "a complex number": 86.25 + 0j,
}


@pytest.mark.parametrize("name", WRONG)
def test_what_is_no_array_of_numbers(name):
    for given, parameter in ({"bore_mm": WRONG[name], "piston_mm": 86.0}, "bore_mm"), ({"bore_mm": BORES, "piston_mm": WRONG[name]}, "piston_mm"):
        with pytest.raises(TypeError, match=f"^{parameter}: "):
            gaugepoint.bench_clearance_mm(**given)
        with pytest.raises(TypeError, match=f"^{parameter}: "):
            gaugepoint.bench_clearance_mm(**given, partial=True)


MISSING = {
    "NaN": np.array([86.25, np.nan, 87.0]),
    "infinite": np.array([86.25, np.inf, 87.0]),
    "masked": np.ma.array(BORES, mask=[False, True, False]),
    "masked integers": np.ma.array([87, 88, 89], mask=[False, True, False]),
    "pandas": pandas.Series([86.25, None, 87.0], dtype="Float64"),
    "polars": polars.Series([86.25, None, 87.0]),
    "polars integers": polars.Series([87, None, 87]),
}


@pytest.mark.parametrize("name", MISSING)
def test_what_is_missing_is_refused(name):
    given = MISSING[name]
    values, status = gaugepoint.bench_clearance_mm(given, 86.0, partial=True)
    assert type(values) is type(status) is np.ndarray
    assert status.tolist() == [0, CODES["not_finite"], 0] and np.isnan(values).tolist() == [False, True, False]
    with pytest.raises(gaugepoint.RowsRefused) as refused:
        gaugepoint.bench_clearance_mm(given, 86.0)
    assert (refused.value.kind, refused.value.field, refused.value.count) == ("not_finite", "bore_mm/1", 1)


def test_refused_elements_are_named():
    bores = np.full((40, 50), 86.25)
    bores[0, 3], bores[2, 7] = 3.4, np.nan
    pistons = np.full(50, 86.0)
    with pytest.raises(gaugepoint.RowsRefused, match="^2 elements are refused: ") as raised:
        gaugepoint.bench_clearance_mm(bores, pistons)
    refused = raised.value
    assert (refused.count, refused.rows, refused.field, refused.kind) == (2, (3, 107), "bore_mm/0/3", "out_of_range")
    assert [error.field for error in refused.errors] == ["bore_mm/0/3", "bore_mm/2/7"] and np.isnan(bores.flat[refused.rows[1]])
    assert (refused.value, refused.lower, refused.unit) == (3.4, 10.0, "mm") and "inches entered as mm" in refused.did_you_mean
    assert all(str(error) in str(refused) for error in refused.errors)
    again = pickle.loads(pickle.dumps(refused))
    assert (str(again), again.rows, again.field) == (str(refused), refused.rows, refused.field)
    with pytest.raises(gaugepoint.RowsRefused, match="2000 elements are refused: .* and 1992 more") as many:
        gaugepoint.bench_clearance_mm(bores, 3.4)
    assert many.value.rows == tuple(range(8)) and many.value.errors[0].field == "piston_mm/0/0"


def test_out():
    out = np.full(3, 7.0)
    assert gaugepoint.bench_clearance_mm(BORES, PISTONS, out=out) is out and same(out, BORES - PISTONS)
    values, status = gaugepoint.bench_clearance_mm(BORES, [86.0, 3.4, 86.0], out=out, partial=True)
    assert values is out and np.isnan(out).tolist() == [False, True, False] and status.tolist() == [0, 301, 0]
    # the place takes part in the broadcast, as of ufuncs
    wide = np.full((2, 3), 7.0)
    assert gaugepoint.bench_clearance_mm(BORES, 86.0, out=wide) is wide and same(wide, np.array([BORES - 86.0] * 2))
    assert gaugepoint.bench_clearance_mm(86.25, 86.0, out=wide) is wide and (wide == 0.25).all()
    none = np.full((), 7.0)
    assert gaugepoint.bench_clearance_mm(86.25, 86.0, out=none) is none and none == 0.25
    empty = np.empty((0, 3))
    assert gaugepoint.bench_clearance_mm(BORES, 86.0, out=empty) is empty


@pytest.mark.parametrize("place", [lambda x: x[::2], lambda x: x[::-2], lambda x: np.frombuffer(bytearray(49), "f8", offset=1), lambda x: np.array([(0, 7.0)] * 6, "i1, f8")["f1"]])
def test_places_that_do_not_stand_side_by_side(place):
    whole = np.full(12, 7.0)
    out = place(whole)
    given = BORES[[0, 1, 2, 0, 1, 2]]
    assert not (out.flags.c_contiguous and out.flags.aligned)
    assert gaugepoint.bench_clearance_mm(given, 86.0, out=out) is out and np.array_equal(out, given - 86.0)
    assert np.shares_memory(out, whole) is False or np.count_nonzero(whole == 7.0) == 6
    with pytest.raises(gaugepoint.RowsRefused):
        gaugepoint.bench_clearance_mm(given, [86.0] * 5 + [3.4], out=out)
    assert np.isnan(out).all()


def test_a_place_that_is_read_from():
    for first, second, out in [
        (slice(0, 8), slice(1, 9), slice(0, 8)),
        (slice(0, 8), slice(1, 9), slice(1, 9)),
        (slice(0, 8), slice(1, 9), slice(2, 10)),
        (slice(0, 8), slice(8, 0, -1), slice(0, 8)),
        (slice(0, 16, 2), slice(1, 17, 2), slice(4, 12)),
    ]:
        memory = np.linspace(1.0, 1.25, 20)
        # another function, whose results are bores again
        expected = alone(gaugepoint.ring_side_clearance_mm, memory[first], memory[second])
        place = memory[out]
        assert gaugepoint.ring_side_clearance_mm(memory[first], memory[second], out=place) is place
        assert same(place.copy(), expected)
    sizes = BORES.copy()
    gaugepoint.size_at_temperature_mm(sizes, 120.0, 20e-6, out=sizes)
    assert same(sizes, alone(gaugepoint.size_at_temperature_mm, BORES, 120.0, 20e-6))


@pytest.mark.parametrize("read", [lambda x: x, lambda x: x[::-1], lambda x: x.reshape(3, 1)[:, 0], lambda x: np.ma.array(x)], ids=range(4))
def test_a_place_that_is_read_from_keeps_what_was_given(read):
    given = np.array([86.25, 3.4, 87.0])
    before = given.copy()
    with pytest.raises(gaugepoint.RowsRefused):
        gaugepoint.bench_clearance_mm(read(given), 86.0, out=given)
    assert same(given, before)
    _, status = gaugepoint.bench_clearance_mm(given, 86.0, out=given, partial=True)
    assert status.tolist() == [0, 301, 0] and given[0] == 0.25 and math.isnan(given[1])


def test_after_a_refusal_nothing_is_taken_for_a_result():
    out = np.full(3, 7.0)
    with pytest.raises(gaugepoint.RowsRefused):
        gaugepoint.bench_clearance_mm([86.25, 3.4, 87.0], 86.0, out=out)
    assert np.isnan(out).all()


FIXED = np.full(3, 7.0)
FIXED.flags.writeable = False


@pytest.mark.parametrize(
    "out, kind",
    [
        (np.full(2, 7.0), gaugepoint.InputError),
        (np.full(1, 7.0), gaugepoint.InputError),
        (np.full((3, 1), 7.0), gaugepoint.InputError),
        (np.full((), 7.0), gaugepoint.InputError),
        (np.full(3, 7.0, "f4"), TypeError),
        (np.full(3, 7), TypeError),
        (np.full(3, 7.0, ">f8"), TypeError),
        ([7.0] * 3, TypeError),
        (7.0, TypeError),
        (np.ma.array([7.0] * 3), TypeError),
        (FIXED, ValueError),
        (np.broadcast_to(np.full(1, 7.0), 3), ValueError),
    ],
    ids=lambda x: f"{type(x).__name__} {getattr(x, 'dtype', '')} {getattr(x, 'shape', '')}",
)
def test_places_that_are_wrong(out, kind):
    with pytest.raises(kind, match="^out: ") as refused:
        gaugepoint.bench_clearance_mm(BORES, PISTONS, out=out)
    assert (np.asarray(out) == 7.0).all()
    assert kind is not gaugepoint.InputError or (refused.value.kind, refused.value.field) == ("contradiction", "out")


@pytest.mark.parametrize("rows", [0, 1, 2, 7, 1024, 1025, 5000])
@pytest.mark.parametrize("threads", [1, 2, 3, 8, 1024])
def test_threads_give_the_same_bits(rows, threads):
    chance = np.random.default_rng(rows)
    bores = chance.uniform(86.0, 86.5, rows)
    bores[5::97] = np.nan
    given = bores, 110.0, 11.4e-6, chance.uniform(85.5, 86.0, rows), 150.0, 20.5e-6
    values, status = gaugepoint.running_clearance_mm(*given, partial=True, threads=threads)
    one, its = gaugepoint.running_clearance_mm(*given, partial=True)
    assert values.tobytes() == one.tobytes() and np.array_equal(status, its)
    assert np.flatnonzero(status).tolist() == list(range(5, rows, 97)) == np.flatnonzero(np.isnan(values)).tolist()
    if rows > 5:
        with pytest.raises(gaugepoint.RowsRefused) as refused:
            gaugepoint.running_clearance_mm(*given, threads=threads)
        assert refused.value.count == len(range(5, rows, 97)) and refused.value.rows == tuple(range(5, rows, 97))[:8]


@pytest.mark.parametrize("threads", [0, -1, 1025])
def test_threads_that_are_not(threads):
    for bores in (86.25, BORES):
        with pytest.raises(gaugepoint.InputError) as refused:
            gaugepoint.bench_clearance_mm(bores, 86.0, threads=threads)
        assert (refused.value.kind, refused.value.field) == ("out_of_range", "threads")


def test_the_interpreter_is_free_meanwhile():
    sizes = np.full(3_000_000, 86.25)
    counted, done = [0], threading.Event()

    def count():
        while not done.is_set():
            counted[0] += 1
            time.sleep(0.0005)  # lets go at once: it counts only while the other thread lets go, too

    switch = sys.getswitchinterval()
    sys.setswitchinterval(100)  # a thread that holds the interpreter keeps it
    try:
        other = threading.Thread(target=count)
        other.start()
        before = counted[0]
        gaugepoint.size_at_temperature_mm(sizes, 120.0, 20e-6, out=np.empty_like(sizes))
        assert counted[0] > before
    finally:
        done.set()
        sys.setswitchinterval(switch)
        other.join()


def test_numbers_need_no_numpy():
    said = "import gaugepoint, sys; gaugepoint.bench_clearance_mm(86.25, 86.0); gaugepoint.bench_clearance_mm(87, 86, partial=True); print('numpy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", said], capture_output=True, text=True, check=True).stdout.strip() == "False"


# unit, number in it, the number in the unit of the parameter: by the definitions of NIST SP 811 (2008), appendix B, exactly, rounded once
QUANTITIES = [
    ("length_mm", "inch", "3.4", Fraction("3.4") * Fraction("25.4")),
    ("clearance_mm", "thou", "1.7", Fraction("1.7") * Fraction("0.0254")),
    ("length_mm", "foot", "0.1", Fraction("0.1") * Fraction("304.8")),
    ("length_mm", "centimeter", "8.61", Fraction("86.1")),
    ("clearance_mm", "micrometer", "40.3", Fraction("0.0403")),
    ("length_mm", "meter", "0.0861", Fraction("86.1")),
    ("length_mm", "millimeter", "86.1", Fraction("86.1")),
    ("length_inch", "millimeter", "61.28004", Fraction("61.28004") / Fraction("25.4")),
    ("length_thou", "millimeter", "0.04318", Fraction("0.04318") / Fraction("0.0254")),
    ("temperature_c", "degree_Fahrenheit", "80.6", (Fraction("80.6") - 32) * 5 / 9),
    ("temperature_c", "kelvin", "300.15", Fraction("300.15") - Fraction("273.15")),
    ("temperature_c", "degree_Rankine", "540.27", Fraction("540.27") * 5 / 9 - Fraction("273.15")),
    ("temperature_fahrenheit", "degree_Celsius", "22.7", Fraction("22.7") * 9 / 5 + 32),
    ("expansion_per_k", "1 / delta_degree_Fahrenheit", "6.4e-6", Fraction("6.4e-6") * 9 / 5),
    ("expansion_per_k", "micrometer / meter / kelvin", "11.5", Fraction("11.5e-6")),
    ("expansion_per_k", "1 / delta_degree_Celsius", "11.5e-6", Fraction("11.5e-6")),
    ("expansion_per_fahrenheit", "1 / kelvin", "11.52e-6", Fraction("11.52e-6") * 5 / 9),
    ("head_cm3", "milliliter", "49.7", Fraction("49.7")),
    ("head_cm3", "inch ** 3", "3.03", Fraction("3.03") * Fraction("2.54") ** 3),
    ("pin_modulus_mpa", "gigapascal", "210.3", Fraction("210300")),
    ("pin_modulus_mpa", "newton / millimeter ** 2", "2.1e5", Fraction("210000")),
    ("crank_angle_deg", "turn", "0.1", Fraction(36)),
    ("angle_mrad", "radian", "0.0003", Fraction("0.3")),
    ("friction", "percent", "11.3", Fraction("0.113")),
    ("per_mille", "dimensionless", "0.0035", Fraction("3.5")),
    ("per_mille", "percent", "0.35", Fraction("3.5")),
]


@pytest.mark.parametrize("name, unit, number, expected", QUANTITIES, ids=lambda x: str(x) if isinstance(x, str) else "")
def test_quantities_are_converted_exactly(name, unit, number, expected):
    """By a function that has the parameter: of a quantity it gives the bits of the number."""
    function, _, columns = accepted(next(function for function, parameters in SIGNATURES.items() if name in parameters))
    place = SIGNATURES[function.__name__].index(name)
    given = [float(column[0]) for column in columns]

    def with_it(it, **options):
        return function(*given[:place], it, *given[place + 1 :], **options)

    value, status = with_it(float(expected), partial=True)
    assert status == 0, "a number that is refused shows nothing"
    found = with_it(UNITS.Quantity(float(number), unit))
    assert type(found) is float and found.hex() == value.hex()
    found = with_it(UNITS.Quantity(np.array([[float(number)]]), unit))
    assert type(found) is np.ndarray and found.shape == (1, 1) and found[0, 0].hex() == value.hex()


@pytest.mark.parametrize(
    "name, unit",
    [
        ("bore_mm", "kilogram"),
        ("bore_mm", "dimensionless"),
        ("bore_mm", "millimeter ** 2"),
        ("piston_mm", "radian"),
        ("bore_temperature_c", "millimeter"),
        ("bore_temperature_c", "delta_degree_Celsius"),
        ("bore_temperature_c", "delta_degree_Fahrenheit"),
        ("piston_expansion_per_k", "kelvin"),
        ("piston_expansion_per_k", "degree_Celsius"),
        ("piston_expansion_per_k", "dimensionless"),
    ],
)
def test_quantities_of_another_kind(name, unit):
    for number in (20.0, np.array([20.0, 21.0])):
        given = {"bore_mm": 86.25, "bore_temperature_c": 110.0, "bore_expansion_per_k": 11.4e-6, "piston_mm": 86.0, "piston_temperature_c": 150.0, "piston_expansion_per_k": 20.5e-6}
        with pytest.raises(gaugepoint.InputError) as refused:
            gaugepoint.running_clearance_mm(**given | {name: UNITS.Quantity(number, unit)})
        assert (refused.value.kind, refused.value.field) == ("wrong_unit", name)


@pytest.mark.parametrize("name, unit", [("friction", "radian"), ("eye_poisson", "millimeter")])
def test_pure_numbers_have_no_unit(name, unit):
    function, _, columns = accepted("press_fit_force_n")
    given = dict(zip(SIGNATURES["press_fit_force_n"], (float(column[0]) for column in columns), strict=True))
    with pytest.raises(gaugepoint.InputError) as refused:
        function(**given | {name: UNITS.Quantity(given[name], unit)})
    assert (refused.value.kind, refused.value.field) == ("wrong_unit", name)


def test_an_angle_is_not_a_pure_number():
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.piston_travel_mm(43.0, 143.0, 0.0, UNITS.Quantity(1.0, "dimensionless"))
    assert (refused.value.kind, refused.value.field) == ("wrong_unit", "crank_angle_deg")


def test_quantities_among_arrays():
    bores = UNITS.Quantity(np.array([3.4, 3.41]), "inch")
    found = gaugepoint.bench_clearance_mm(bores, 86.0)
    assert type(found) is np.ndarray and found.tolist() == [gaugepoint.bench_clearance_mm(gaugepoint.inch_to_mm(x), 86.0) for x in (3.4, 3.41)]
    gaps = UNITS.Quantity(np.ma.array([3.4, 3.41, 3.42], mask=[False, True, False]), "inch")
    _, status = gaugepoint.bench_clearance_mm(gaps, 86.0, partial=True)
    assert status.tolist() == [0, CODES["not_finite"], 0]
    with pytest.raises(gaugepoint.RowsRefused) as refused:
        gaugepoint.bench_clearance_mm(UNITS.Quantity(np.array([3.4, 340.0, math.nan]), "inch"), 86.0)
    assert [error.field for error in refused.value.errors] == ["bore_mm/1", "bore_mm/2"]
    for listed in ([UNITS.Quantity(3.4, "inch")], [[86.0, UNITS.Quantity(86.0, "mm")]]):
        with pytest.raises(TypeError, match="^bore_mm: .*units"):
            gaugepoint.bench_clearance_mm(listed, 86.0)
    with pytest.raises(TypeError, match="^bore_mm: "):
        gaugepoint.bench_clearance_mm(UNITS.Quantity(np.array([86.25], object), "mm"), 86.0)


@pytest.mark.parametrize("options", [{"non_int_type": Decimal}, {"non_int_type": Fraction}, {"force_ndarray": True}, {"default_as_delta": False}], ids=str)
def test_quantities_of_other_registries(options):
    units = pint.UnitRegistry(**options)
    units.formatter.default_format = "~P"
    kind = options.get("non_int_type", float)
    assert gaugepoint.bench_clearance_mm(units.Quantity(kind("3.4"), "inch"), 86.0) == gaugepoint.bench_clearance_mm(86.36, 86.0)
    assert gaugepoint.c_to_fahrenheit(units.Quantity(kind("300.15"), "kelvin")) == 80.6
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.c_to_fahrenheit(units.Quantity(kind("5"), "delta_degree_Celsius"))
    assert (refused.value.kind, refused.value.field) == ("wrong_unit", "temperature_c")


@pytest.mark.parametrize("wrong", [86.0 + 1j, np.array([86.0 + 1j]), np.array([86.0], object), np.array([True])], ids=repr)
@pytest.mark.parametrize("unit", ["millimeter", "inch"])
def test_quantities_of_what_is_no_number(wrong, unit):
    with pytest.raises(TypeError, match="^bore_mm: "):
        gaugepoint.bench_clearance_mm(UNITS.Quantity(wrong, unit), 86.0)


def test_quantities_are_known_without_their_library():
    said = "import gaugepoint, numpy, sys; gaugepoint.bench_clearance_mm(numpy.array([86.25]), 86.0); print('pint' in sys.modules, 'gaugepoint._quantities' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", said], capture_output=True, text=True, check=True).stdout.split() == ["False", "False"]


def test_the_stub_has_every_function_in_three_forms():
    tree = ast.parse((Path(gaugepoint.__file__).parent / "_gaugepoint.pyi").read_text(encoding="utf-8"))
    found = {}
    for node in tree.body:
        if isinstance(node, ast.FunctionDef) and node.name in SIGNATURES:
            kinds = {argument.annotation.id for argument in node.args.args}
            options = [argument.arg for argument in node.args.kwonlyargs]
            found.setdefault(node.name, []).append(([argument.arg for argument in node.args.args], kinds, options))
    options = ["out", "partial", "threads"]
    assert found == {name: [(its, {"float"}, []), (its, {"_Numbers"}, options), (its, {"_Numbers"}, options)] for name, its in SIGNATURES.items()}


CALLER = """
import gaugepoint
import numpy as np
from numpy.typing import NDArray

number: float = gaugepoint.bench_clearance_mm(86.25, 86.0)
whole: float = gaugepoint.bench_clearance_mm(bore_mm=87, piston_mm=86.0)
array: NDArray[np.float64] = gaugepoint.bench_clearance_mm(np.array([86.25]), [86.0, 86.1], out=np.empty(2), threads=2)
values, status = gaugepoint.bench_clearance_mm(np.array([86.25]), 86.0, partial=True)
"""


@pytest.mark.parametrize("added, wrong", [("", False), ("gaugepoint.bench_clearance_mm(['86'], 86.0)", True), ("gaugepoint.bench_clearance_mm(86.25, 86.0, out=86.0)", True), ("number = gaugepoint.bench_clearance_mm(86.25, 86.0, partial=True)", True)])
def test_types_reach_the_caller(added, wrong, tmp_path):
    (tmp_path / "caller.py").write_text(CALLER + added + "\n", encoding="utf-8")
    command = [sys.executable, "-m", "mypy", "--strict", "--cache-dir", "cache", "caller.py"]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert (done.returncode != 0) is wrong, done.stdout + done.stderr
