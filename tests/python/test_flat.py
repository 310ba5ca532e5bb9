"""The flat functions against the vectors of every host."""

import inspect
import re
from fractions import Fraction

import gaugepoint
import pytest
from vectors import REPOSITORY, flat

ROWS = flat()
SIGNATURES = {
    name: re.findall(r"\w+", parameters)
    for name, parameters in re.findall(
        r"^    fn (\w+)\(([^)]*)\) \{", (REPOSITORY / "core/src/flat.rs").read_text(encoding="utf-8"), re.M
    )
}


def called(row):
    function = getattr(gaugepoint, row["function"])
    return function, [float(argument) for argument in row["arguments"].split(";")]


@pytest.mark.parametrize("row", [r for r in ROWS if not r["expected"].startswith("error:")], ids=lambda r: r["id"])
def test_value(row):
    function, arguments = called(row)
    result = function(*arguments)
    assert row["source"]
    # exact arithmetic: the comparison must not add a rounding of its own
    assert abs(Fraction(result) - Fraction(row["expected"])) <= Fraction(row["tolerance"])
    by_name = function(**dict(zip(SIGNATURES[row["function"]], arguments, strict=True)))
    assert by_name.hex() == result.hex()


@pytest.mark.parametrize("row", [r for r in ROWS if r["expected"].startswith("error:")], ids=lambda r: r["id"])
def test_refusal(row):
    function, arguments = called(row)
    with pytest.raises(gaugepoint.InputError) as refused:
        function(*arguments)
    assert refused.value.kind == row["expected"].removeprefix("error:")
    assert refused.value.field in SIGNATURES[row["function"]]


def test_every_function_of_the_core_has_rows_and_its_names():
    assert SIGNATURES.keys() == {row["function"] for row in ROWS}
    for name, parameters in SIGNATURES.items():
        assert list(inspect.signature(getattr(gaugepoint, name)).parameters) == [*parameters, "out", "partial", "threads"]


@pytest.mark.parametrize("wrong", ["86", None, {86.0}, 1j])
def test_what_is_no_number(wrong):
    with pytest.raises(TypeError):
        gaugepoint.bench_clearance_mm(wrong, 86.0)
