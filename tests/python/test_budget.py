"""Budgets of uncertainty against the vectors of every host."""

import dataclasses
import json
import math
import os
import pickle
from fractions import Fraction
from pathlib import Path

import gaugepoint
import pytest
from gaugepoint import uncertainty
from vectors import REPOSITORY, VECTORS, rows

FOLDER = VECTORS / "budgets"
NAMES = sorted(file.stem for file in FOLDER.glob("*.json"))
EXPECTED = rows("budgets/expected.csv", ["budget", "pointer", "expected", "tolerance", "source"])
REFUSED = rows("budgets/refused.csv", ["id", "kind", "path", "refused"])
FLAT = rows("uncertainty.csv", ["id", "function", "arguments", "expected", "tolerance", "source"])

COMMAND = """set GAUGEPOINT_BUDGETS to a folder with the reports of the core, made with:
for budget in tests/vectors/budgets/*.json; do cargo run --release --example budget -- $budget json > FOLDER/$(basename $budget); done"""


@pytest.fixture(scope="module")
def reports():
    return {name: gaugepoint.budget(FOLDER / f"{name}.json") for name in NAMES}


def at(report, pointer):
    """A value of the typed report by its JSON Pointer; None where there is none."""
    value = report
    for name in pointer.split("/")[1:]:
        if isinstance(value, tuple):
            value = value[int(name)] if int(name) < len(value) else None
        else:
            value = value and getattr(value, name)
    return value


def held(found, expected, tolerance):
    if expected == "absent":
        assert found is None
    elif isinstance(found, bool):
        assert found is (expected == "true")
    elif isinstance(found, str):
        assert found == expected
    elif expected == "inf":
        assert found == math.inf
    else:
        # exact arithmetic: the comparison must not add a rounding of its own
        assert abs(Fraction(found) - Fraction(expected)) <= Fraction(tolerance)


@pytest.mark.parametrize("row", EXPECTED, ids=lambda row: row["budget"] + row["pointer"])
def test_value(row, reports):
    assert row["source"]
    held(at(reports[row["budget"]], row["pointer"]), row["expected"], row["tolerance"])


def test_every_budget_has_rows():
    assert {row["budget"] for row in EXPECTED} == set(NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_same_bytes(name, reports):
    folder = os.environ.get("GAUGEPOINT_BUDGETS")
    # not skipped: a comparison that was not made is not a pass
    assert folder, COMMAND
    assert reports[name].to_json().encode() == (Path(folder) / f"{name}.json").read_bytes().removesuffix(b"\n")


@pytest.mark.parametrize("row", REFUSED, ids=lambda row: row["id"])
def test_refusal(row):
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.budget(FOLDER / "refused" / f"{row['id']}.json")
    error = refused.value
    assert (error.kind, error.field, error.refused.strip()) == (row["kind"], row["path"], row["refused"].replace("%2C", ",").strip())


def test_every_refused_document_has_its_row():
    assert sorted(file.stem for file in (FOLDER / "refused").glob("*.json")) == sorted(row["id"] for row in REFUSED)


def called(row):
    cells = [cell if cell.isalpha() or "_" in cell else [float(n) for n in cell.split("/")] for cell in row["arguments"].split(";")]
    arguments = cells if row["function"] == "effective_dof" else [c if isinstance(c, str) else c[0] for c in cells]
    if row["function"] == "numerical_tolerance":
        arguments[1] = int(arguments[1])
    return getattr(gaugepoint, row["function"])(*[math.inf if a == "inf" else math.nan if a == "nan" else a for a in arguments])


@pytest.mark.parametrize("row", FLAT, ids=lambda row: row["id"])
def test_flat(row):
    assert row["source"]
    if not row["expected"].startswith("error:"):
        held(called(row), row["expected"], row["tolerance"])
        return
    with pytest.raises(gaugepoint.InputError) as refused:
        called(row)
    assert f"error:{refused.value.kind} {refused.value.field}" == row["expected"]


@pytest.mark.parametrize(
    "call, kind, field",
    [
        (lambda: gaugepoint.effective_dof([1.0], [2.0, 3.0]), "contradiction", "dofs"),
        (lambda: gaugepoint.effective_dof([], []), "missing_field", "contributions"),
        (lambda: gaugepoint.standard_uncertainty("rectangle", 1.0), "unknown_choice", "shape"),
        (lambda: gaugepoint.standard_uncertainty("trapezoidal", 1.0), "missing_field", "parameter"),
        (lambda: gaugepoint.standard_uncertainty("arcsine", 1.0, 0.5), "contradiction", "parameter"),
        (lambda: gaugepoint.numerical_tolerance(1.0, -254), "out_of_range", "digits"),
        (lambda: gaugepoint.budget({"format": "gaugepoint-budget", "version": 1, "name": math.nan}), "not_finite", "/name"),
    ],
)
def test_what_only_python_can_pass(call, kind, field):
    with pytest.raises(gaugepoint.InputError) as refused:
        call()
    assert (refused.value.kind, refused.value.field) == (kind, field)


def test_a_document_may_come_from_anywhere(reports):
    text = (FOLDER / "gum_h1.json").read_text(encoding="utf-8")
    for given in (text, text.encode(), json.loads(text), str(FOLDER / "gum_h1.json")):
        assert gaugepoint.budget(given) == reports["gum_h1"]


def test_the_report_is_data(reports):
    for report in reports.values():
        assert pickle.loads(pickle.dumps(report)) == report
        assert hash(report) == hash(pickle.loads(pickle.dumps(report)))
        assert "contributions" not in repr(report)
        # what is absent in the JSON is None, and nothing else is dropped
        assert read_again(json.loads(report.to_json()), report)
    assert reports["gum_h1"].to_text().startswith("end gauge\nmodel: ls + d - ls * ")
    with pytest.raises(TypeError):
        dataclasses.replace(reports["gum_h1"], name="another").to_json()
    with pytest.raises(dataclasses.FrozenInstanceError):
        reports["gum_h1"].name = "another"


def read_again(value, ours):
    if isinstance(value, dict):
        public = {f.name for f in dataclasses.fields(ours) if f.init}
        absent = all(getattr(ours, name) is None for name in public - set(value))
        return absent and all(read_again(item, getattr(ours, name)) for name, item in value.items())
    if isinstance(value, list):
        return len(value) == len(ours) and all(map(read_again, value, ours))
    return value == ours


def test_schemas():
    documents = REPOSITORY / "core" / "docs"
    assert gaugepoint.budget_schema() == json.loads((documents / "budget.schema.json").read_text(encoding="utf-8"))
    assert gaugepoint.budget_report_schema() == json.loads((documents / "budget-report.schema.json").read_text(encoding="utf-8"))


def test_structures_are_those_of_the_schema():
    definitions = {**gaugepoint.budget_report_schema()["$defs"], "BudgetReport": gaugepoint.budget_report_schema()}
    for name in ("Expanded", "Contribution", "Product", "SecondOrder", "Interval", "Adaptive", "MonteCarlo", "Validation", "Budget"):
        kind, schema = getattr(uncertainty, name), definitions[f"{name}Report"]
        fields = {f.name: f for f in dataclasses.fields(kind) if f.init}
        assert set(fields) == set(schema["properties"])
        assert {n for n, f in fields.items() if f.default is dataclasses.MISSING} == set(schema["required"])
