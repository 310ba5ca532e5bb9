"""Printed sheets: the report as data, and what every host must find and refuse."""

import dataclasses
import json
import os
import pickle

import gaugepoint
import jsonschema
import pytest
from vectors import REPOSITORY, SHEETS, refused_sheets, sheets_expected

DOCUMENTS = sorted(SHEETS.glob("*.json"))
ROWS = sheets_expected()
COMMAND = """set GAUGEPOINT_REPORTS to a folder with the reports of the core, made with:
cargo run --release --example check_sheet -- json tests/vectors/sheets/*.json > FOLDER/sheets.jsonl"""


def test_every_document_has_its_row():
    assert {path.stem for path in DOCUMENTS} == {row["document"] for row in ROWS} and len(DOCUMENTS) >= 24


def test_same_bytes():
    folder = os.environ.get("GAUGEPOINT_REPORTS")
    # not skipped: a comparison that was not made is not a pass
    assert folder, COMMAND
    with open(os.path.join(folder, "sheets.jsonl"), "rb") as file:
        of_core = set(file.read().splitlines())
    ours = {gaugepoint.check_sheet(path).to_json().encode() for path in DOCUMENTS}
    assert ours == of_core and len(ours) == len(DOCUMENTS)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['document']}-{row['entry']}")
def test_row(row):
    report = gaugepoint.check_sheet(SHEETS / f"{row['document']}.json")
    if row["check"] == "none":
        assert report.contradictions == ()
        return
    named = [found for found in report.contradictions if row["entry"] in found.entries and found.check == row["check"]]
    assert named
    assert not row["suspected"] or any(row["suspected"] in suspicion.text for suspicion in named[0].suspected)


@pytest.mark.parametrize("row", refused_sheets(), ids=lambda row: row["id"])
def test_refusal(row):
    for document in (row["document"], row["document"].encode()):
        with pytest.raises(gaugepoint.InputError) as caught:
            gaugepoint.check_sheet(document)
        error = caught.value
        assert (error.kind, error.field) == (row["kind"], row["path"])
        assert row["refused"] in ("*", error.refused)
        assert row["did_you_mean_contains"] in (error.did_you_mean or "")
        assert (error.did_you_mean is None) == (row["did_you_mean_contains"] == "")


def test_what_python_can_say_and_json_cannot():
    for document, kind in [({"a": float("nan")}, "not_finite"), (b"\xff{}", "not_utf8"), ({"entries": None}, "wrong_type")]:
        with pytest.raises(gaugepoint.InputError) as caught:
            gaugepoint.check_sheet(document)
        assert caught.value.kind == kind


@pytest.mark.parametrize("path", DOCUMENTS, ids=lambda path: path.stem)
def test_schemas(path):
    document = json.loads(path.read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator(gaugepoint.sheet_schema()).validate(document)
    report = gaugepoint.check_sheet(document)
    jsonschema.Draft202012Validator(gaugepoint.sheet_report_schema()).validate(json.loads(report.to_json()))


@pytest.mark.parametrize("name, schema", [("sheet", gaugepoint.sheet_schema()), ("sheet-report", gaugepoint.sheet_report_schema())])
def test_schemas_are_the_published_ones(name, schema):
    published = REPOSITORY / "core" / "docs" / f"{name}.schema.json"
    assert schema == json.loads(published.read_text(encoding="utf-8"))


def test_report_is_data():
    report = gaugepoint.check_sheet(DOCUMENTS[0])
    assert pickle.loads(pickle.dumps(report)) == report
    assert hash(report) == hash(gaugepoint.check_sheet(DOCUMENTS[0]))
    with pytest.raises(dataclasses.FrozenInstanceError):
        report.sheet = "another"
    # what was changed has no text: the old one would tell of another sheet
    with pytest.raises(TypeError):
        dataclasses.replace(report, sheet="another").to_json()
