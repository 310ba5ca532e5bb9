"""What may be behind findings by eye: the vectors of every host, and findings of jobs."""

import copy
import json
import pickle
from typing import get_args

import gaugepoint
import pytest
from gaugepoint import report
from gaugepoint.decision import Explanation
from vectors import EXAMPLES, signs

ROWS = signs()
PUMP_SIX = next(path for path in EXAMPLES if path.stem == "pump_six")
TOLD = {True: "yes", False: "no"}


def explained(row):
    given = [item.split("=") for item in row["answers"].split(";") if item]
    return gaugepoint.explain(row["place"], row["what"], {question: answer == "yes" for question, answer in given})


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["id"])
def test_row(row):
    found = explained(row)
    assert ";".join(f"{c.cause}/{c.sign}/{TOLD[c.confirmed]}" for c in found.candidates) == row["candidates"]
    assert ";".join(asked.question for asked in found.ask) == row["ask"]
    assert found.cause_found == (row["cause"] or None)
    for candidate in found.candidates:
        assert candidate.cause in get_args(report.Cause) and candidate.group in get_args(report.Group)
        assert candidate.text.endswith(".") and candidate.check_next
        assert candidate.confirmed == (not candidate.open) and set(candidate.open) <= set(row["ask"].split(";"))


def test_explanation_is_data():
    found = gaugepoint.explain("skirt", "scuffing", {"both_faces": True})
    assert isinstance(found, Explanation)
    assert pickle.loads(pickle.dumps(found)) == found == copy.deepcopy(found)
    assert found != gaugepoint.explain("skirt", "scuffing", {})


@pytest.mark.parametrize(
    "arguments, field",
    [
        (("skirts", "scuffing", {}), "place"),
        (("skirt", "scuffed", {}), "what"),
        (("skirt", "scuffing", {"oily": True, "both faces": True}), "answers/1"),
    ],
)
def test_refusal(arguments, field):
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.explain(*arguments)
    assert (refused.value.kind, refused.value.field) == ("unknown_choice", field)
    assert refused.value.did_you_mean


def test_answers_of_a_job_settle_a_cause():
    job = json.loads(PUMP_SIX.read_text(encoding="utf-8"))
    job["engine"]["piston"]["record"] = {"make": "cast", "silicon": {"class": "eutectic", "evidence": "invented analysis"}}
    finding = {"place": "skirt", "what": "diagonal_wear", "severity": "marked"}
    job["cylinders"][0]["findings"] = [finding]
    made = gaugepoint.assess(job)
    (seen,) = made.cylinders[0].piston.findings
    assert made.cylinders[0].verdict.outcome == "find the cause first"
    assert [c.cause for c in seen.candidates] == ["rod_bent_or_twisted", "bore_not_square"]
    assert [asked.question for asked in seen.ask] == ["rod_bent"]
    assert (made.engine.piston_record.silicon.class_, made.engine.piston_record.pin) == ("eutectic", None)
    finding["answers"] = [{"question": "rod_bent", "answer": "no"}]
    made = gaugepoint.assess(job)
    assert made.cylinders[0].verdict.outcome == "reuse"
    assert made.cylinders[0].piston.findings[0].cause_found == "bore_not_square"
    finding["answers"] = [{"question": "forged", "answer": "yes"}]
    with pytest.raises(gaugepoint.InputError, match="/engine/piston/record/make"):
        gaugepoint.assess(job)
