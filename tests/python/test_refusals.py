"""What is refused, with everything the error says."""

import copy
import math
import pickle

import gaugepoint
import pytest
from vectors import VECTORS, flat, refused, rows

ROWS = refused()


def refusal(job):
    with pytest.raises(gaugepoint.InputError) as caught:
        gaugepoint.assess(job)
    return caught.value


def forms(document):
    """The document in every form that Python has for it."""
    yield document
    try:
        text = document.decode()
    except UnicodeDecodeError:
        return
    if text.lstrip("\ufeff \t\r\n").startswith("{"):  # any other text would be a path
        yield text


def number(text):
    return pytest.approx(float(text), rel=1e-9) if text else None


@pytest.mark.parametrize("row", ROWS, ids=lambda r: r["id"])
def test_row(row):
    for job in forms(row["document"]):
        error = refusal(job)
        assert (error.kind, error.field, error.refused) == (row["kind"], row["path"], row["refused"])
        assert error.value == number(row["value"])
        assert (error.lower, error.upper) == (number(row["lower"]), number(row["upper"]))
        assert (error.unit or "") == row["limits_unit"]
        if row["did_you_mean_contains"]:
            assert row["did_you_mean_contains"] in error.did_you_mean
        else:
            assert error.did_you_mean is None
        assert error.reason and error.reason in str(error)


def test_the_base_of_the_rows_is_accepted():
    assert gaugepoint.assess(VECTORS / "refused" / "base.json").cylinders


def test_every_kind_is_refused_somewhere():
    of_flat = {row["expected"].removeprefix("error:") for row in flat() if row["expected"].startswith("error:")}
    of_budgets = {row["kind"] for row in rows("budgets/refused.csv", ["id", "kind", "path", "refused"])}
    # a stop refuses nothing that was given: test_progress.py has it
    assert {row["kind"] for row in ROWS} | of_flat | of_budgets | {"stopped"} == set(gaugepoint.ERROR_KINDS)


@pytest.mark.parametrize("kind", [gaugepoint.InputError, gaugepoint.RowsRefused])
def test_an_error_is_made_anew_from_its_text(kind):
    # as a library does that carries errors through another language
    made = kind("piston_mm/1: it is refused")
    for error in (made, copy.copy(made), pickle.loads(pickle.dumps(made))):
        assert type(error) is kind and str(error) == "piston_mm/1: it is refused" and error.args == (str(error),)
        assert (error.kind, error.field, error.refused, error.reason) == ("",) * 4
        assert error.value is error.lower is error.upper is error.unit is error.did_you_mean is None
        if kind is gaugepoint.RowsRefused:
            assert (error.count, error.rows, error.errors) == (0, (), ())


def test_error_is_a_value_error_and_can_be_pickled():
    with pytest.raises(ValueError, match="bore_mm") as caught:
        gaugepoint.bench_clearance_mm(3.386, 86.0)
    again = pickle.loads(pickle.dumps(caught.value))
    assert type(again) is gaugepoint.InputError
    assert (str(again), vars(again)) == (str(caught.value), vars(caught.value))
    # 3.386 in x 25.4, rounded to five digits
    assert "86.004 mm" in again.did_you_mean


ITSELF = {}
ITSELF["again"] = [ITSELF]
DEEP = {}
for _ in range(100_000):
    DEEP = {"a": DEEP}


@pytest.mark.parametrize(
    "job, kind, field",
    [
        ({"a": math.nan}, "not_finite", "/a"),
        ({"a": [0, {"b/c~": -math.inf}]}, "not_finite", "/a/1/b~1c~0"),
        ({"a": (math.inf,)}, "not_finite", "/a/0"),
        ({math.nan: 1}, "not_finite", "/nan"),
        ({"a": 10**5000}, "too_many_digits", "/a"),
        (ITSELF, "too_deep", None),
        (DEEP, "too_deep", None),
        ({"format": "\udcff"}, "not_utf8", ""),
        ('{"format": "\ud800"}', "not_utf8", ""),
        ('{"format": NaN}', "syntax", ""),
        ("\ufeff{}", "syntax", ""),
        ({"format": None}, "wrong_type", "/format"),
        ({1: 2}, "unknown_field", "/1"),
        (b"", "syntax", ""),
        (b"null", "wrong_type", None),
    ],
)
def test_what_python_can_say_and_json_cannot(job, kind, field):
    error = refusal(job)
    assert error.kind == kind
    assert field in (None, error.field)


@pytest.mark.parametrize("job", [{"a\x1b[2J\n": math.nan}, {"a\x1b[2J\n": 1}], ids=["of python", "of the core"])
def test_the_sentence_can_be_printed(job):
    error = refusal(job)
    assert "\x1b" in error.field
    assert str(error).isprintable()
