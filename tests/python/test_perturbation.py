"""Each input of the examples is moved by a small step and to the other sign; the library and the independent
evaluation in ``tests/reference`` must then give the same numbers, and the same numbers must have moved.

Which results depend on an input is not listed here: the independent evaluation finds out by evaluating, the library by its
working, whose replay the Rust suite holds to the bit (``tests/working.rs``).
"""

import json
import sys
from pathlib import Path

import gaugepoint
import pytest
from vectors import put

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tests" / "reference"))
import assess as reference  # noqa: E402

JOBS = {
    "pump_six": ROOT / "core" / "examples" / "pump_six.json",
    "air_twin": ROOT / "core" / "examples" / "air_twin.json",
    "odd_bases": ROOT / "tests" / "vectors" / "jobs" / "odd_bases.json",
    "guard_bands": ROOT / "tests" / "vectors" / "jobs" / "guard_bands.json",
    "few_readings": ROOT / "tests" / "vectors" / "jobs" / "few_readings.json",
    "ratio": ROOT / "tests" / "vectors" / "jobs" / "ratio.json",
    "materials": ROOT / "tests" / "vectors" / "jobs" / "materials.json",
    "rear_cylinders": ROOT / "tests" / "vectors" / "jobs" / "rear_cylinders.json",
    "ported_barrel": ROOT / "tests" / "vectors" / "jobs" / "ported_barrel.json",
    "choked_barrel": ROOT / "tests" / "vectors" / "jobs" / "choked_barrel.json",
    "steel_crown": ROOT / "tests" / "vectors" / "jobs" / "steel_crown.json",
    "planned_block": ROOT / "tests" / "vectors" / "jobs" / "planned_block.json",
    "harvester_three": ROOT / "core" / "examples" / "harvester_three.json",
    "launch_vee": ROOT / "core" / "examples" / "launch_vee.json",
}
AGREE = 1e-10  # mm or probability; finite differences of the reference are good to about 1e-12
MOVED = 1e-9
SHARES = (1e-4, -2)  # a small step, and the other sign


def numbers(value, at=""):
    """Every number with its JSON Pointer; budgets as sorted columns, without sources that cancel to nothing."""
    if isinstance(value, dict):
        out = {}
        for key, inner in value.items():
            if key == "budget":
                for column in ("contribution_mm", "share"):
                    kept = sorted(line[column] for line in inner if abs(line["contribution_mm"]) > 1e-12)
                    out.update({f"{at}/budget {column} {k}": x for k, x in enumerate(kept)})
            elif key != "dominant":  # the first of the budget; equal shares may stand in another order
                out.update(numbers(inner, f"{at}/{key}"))
        return out
    if isinstance(value, list):
        return {k: v for i, inner in enumerate(value) for k, v in numbers(inner, f"{at}/{i}").items()}
    is_number = isinstance(value, (int, float)) and not isinstance(value, bool)
    if at.endswith("/dof"):  # by their reciprocal, which is what enters: those of a source that hardly counts are large
        return {at: 1 / value}
    return {at: value} if is_number else {}


def decisions(value, at=""):
    """Every ``result`` of a decision with its JSON Pointer."""
    if isinstance(value, dict):
        own = {at: value["result"]} if "result" in value else {}
        return own | {k: v for key, inner in value.items() for k, v in decisions(inner, f"{at}/{key}").items()}
    if isinstance(value, list):
        return {k: v for i, inner in enumerate(value) for k, v in decisions(inner, f"{at}/{i}").items()}
    return {}


def library(document, working=False):
    """The report of the library as a dict."""
    return json.loads(gaugepoint.assess(document, working=working).to_json())


def split(typed):
    """Number and the rest of a typed quantity."""
    for end in range(len(typed), 0, -1):
        try:
            return float(typed[:end]), typed[end:]
        except ValueError:
            continue
    raise ValueError(typed)


def moved(typed, share):
    """A typed quantity moved by a share of itself."""
    if " thou " in typed:  # the spoken form: another tenth
        return f"-{typed}" if share < -1 else typed.split(" thou ")[0] + " thou 1 tenth"
    number, unit = split(typed)
    new = number * (1 + share) if number or share < -1 else 0.001
    return f"{new:.8e}{unit}" if "e" in typed.split(" ")[0] or (not unit and abs(new) < 1) else f"{new:.9f}{unit}"


def accepted(document):
    """The report, or nothing when the library refuses."""
    try:
        return library(document)
    except gaugepoint.InputError as error:
        assert error.field.startswith("/") and error.reason
        return None


def compare(of, ours, theirs):
    """All numbers of the independent report stand in ours, equal within the arithmetic."""
    assert theirs, of
    for at, number in theirs.items():
        assert at in ours, f"{of}: {at} is missing"
        assert abs(ours[at] - number) <= AGREE, f"{of}: {at} is {ours[at]}, independently {number}"


@pytest.mark.parametrize("name", JOBS)
def test_every_input_moves_what_the_independent_evaluation_moves(name):
    document = json.loads(JOBS[name].read_text(encoding="utf-8"))
    start = library(document, working=True)
    inputs = start.pop("working")["inputs"]
    ours_before, theirs_before = numbers(start), numbers(reference.evaluate(document))
    compare(name, ours_before, theirs_before)
    assert len(inputs) > 50
    tried = sum(hold(name, document, given, share, ours_before, theirs_before) for given in inputs for share in SHARES)
    assert tried >= len(inputs)


def hold(name, document, given, share, ours_before, theirs_before):
    """Move one input by a share of itself in both; 1 when the library accepted it, else 0."""
    typed = moved(given["typed"], share)
    changed = put(document, given["path"], typed)
    report = accepted(changed)
    if report is None:
        return 0
    of = f"{name} {given['path']} {given['typed']} -> {typed}"
    independent = reference.evaluate(changed)
    ours, theirs = numbers(report), numbers(independent)
    compare(of, ours, theirs)
    decided, independently = decisions(report), decisions(independent)
    if "/plan/finish" not in independently:
        # with every cylinder met it rests on texts, too, which the independent evaluation does not have
        decided.pop("/plan/finish", None)
    assert decided == independently, of
    both = [at for at in theirs if at in theirs_before and at in ours_before]
    our_moves = {at for at in both if abs(ours[at] - ours_before[at]) > MOVED}
    their_moves = {at for at in both if abs(theirs[at] - theirs_before[at]) > MOVED}
    unclear = {at for at in our_moves ^ their_moves if abs(abs(ours[at] - ours_before[at]) - MOVED) < 2 * AGREE}
    assert our_moves ^ their_moves <= unclear, of
    return 1
