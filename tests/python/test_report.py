"""The typed report: the same data as its JSON, field for field."""

import ast
import copy
import dataclasses
import json
import pickle
import sys
import threading
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from types import UnionType
from typing import Literal, Union, get_args, get_origin, get_type_hints

import gaugepoint
import jsonschema
import pytest
from gaugepoint import _gaugepoint, report, sheet
from vectors import EXAMPLES, REPOSITORY, VECTORS

# each module of classes with the schema that its classes are declared by
SCHEMAS = {report: json.loads(_gaugepoint.report_schema()), sheet: json.loads(_gaugepoint.sheet_report_schema())}


def classes(module):
    return {name: kind for name in module.__all__ if dataclasses.is_dataclass(kind := getattr(module, name))}


CLASSES = {name: (kind, SCHEMAS[module]) for module in SCHEMAS for name, kind in classes(module).items()}
JOBS = [*EXAMPLES, *sorted((VECTORS / "jobs").glob("*.json"))]


def example(name):
    return next(path for path in EXAMPLES if path.stem == name)


@pytest.fixture(params=[(path, working) for path in JOBS for working in (False, True)], ids=lambda p: f"{p[0].stem}-{p[1]}")
def made(request):
    path, working = request.param
    return gaugepoint.assess(path, working=working)


# ------------------------------------------------------------------------------------------------- the classes and the JSON Schema


def structure(name, schema):
    return schema if name == schema["title"] else schema["$defs"][name]


def declared(kind):
    """Fields of a class by their name in JSON."""
    return {f.metadata.get("json", f.name): f for f in dataclasses.fields(kind) if not f.name.startswith("_")}


def as_type(schema, whole):
    """A JSON Schema in the terms of the classes; a choice is the set of its words."""
    schema = without_null(schema)
    if "$ref" in schema:
        name = schema["$ref"].rpartition("/")[2]
        inner = structure(name, whole)
        return CLASSES[name][0] if "properties" in inner else as_type(inner, whole)
    if "oneOf" in schema:
        return frozenset(choice["const"] for choice in schema["oneOf"])
    if schema["type"] == "array":
        return (tuple, as_type(schema["items"], whole))
    if schema["type"] == "object":
        return (dict, as_type(schema["additionalProperties"], whole))
    return {"string": str, "number": float, "integer": int, "boolean": bool}[schema["type"]]


def without_null(schema):
    if "anyOf" in schema:
        (schema,) = (part for part in schema["anyOf"] if part != {"type": "null"})
    elif isinstance(schema.get("type"), list):
        (kind,) = (kind for kind in schema["type"] if kind != "null")
        schema = {**schema, "type": kind}
    return schema


def as_declared(hint):
    """A type hint in the same terms, without its None."""
    if get_origin(hint) in (UnionType, Union):
        (hint,) = (part for part in get_args(hint) if part is not type(None))
    if get_origin(hint) is Literal:
        return frozenset(get_args(hint))
    if get_origin(hint) is tuple:
        item, ellipsis = get_args(hint)
        assert ellipsis is Ellipsis
        return (tuple, as_declared(item))
    if get_args(hint):
        key, item = get_args(hint)
        assert key is str
        return (dict, as_declared(item))
    return hint


@pytest.mark.parametrize("module", SCHEMAS, ids=lambda module: module.__name__)
def test_one_class_for_each_structure(module):
    whole = SCHEMAS[module]
    structures = {name for name, schema in whole["$defs"].items() if "properties" in schema}
    # a warning on a sheet is one on a job
    shared = structures & {"Warning"} if module is sheet else set()
    assert classes(module).keys() | shared == structures | {whole["title"]}
    assert all(whole["$defs"][name] == SCHEMAS[report]["$defs"][name] for name in shared)


@pytest.mark.parametrize("name", CLASSES)
def test_fields_are_those_of_the_schema(name):
    kind, whole = CLASSES[name]
    schema, fields = structure(name, whole), declared(kind)
    hints = get_type_hints(kind)
    assert fields.keys() == schema["properties"].keys()
    for key, field in fields.items():
        hint, told = as_declared(hints[field.name]), as_type(schema["properties"][key], whole)
        # a class may know the words of a text
        assert hint == told or (told is str and isinstance(hint, frozenset)), key
        assert (field.default is dataclasses.MISSING) == (key in schema.get("required", ())), key
        assert field.default in (dataclasses.MISSING, None, ()), key
        assert (field.default is None) == (type(None) in get_args(hints[field.name])), key


@pytest.mark.parametrize("module", SCHEMAS, ids=lambda module: module.__name__)
def test_descriptions_are_those_of_the_schema(module):
    whole = SCHEMAS[module]
    tree = ast.parse(Path(module.__file__).read_text(encoding="utf-8"))
    nodes = [node for node in tree.body if isinstance(node, ast.ClassDef)]
    assert {node.name for node in nodes} == classes(module).keys()
    for node in nodes:
        assert ast.get_docstring(node) == structure(node.name, whole)["description"]
        names = {f.name: key for key, f in declared(CLASSES[node.name][0]).items()}
        for field, text in zip(node.body, node.body[1:], strict=False):
            if isinstance(field, ast.AnnAssign) and field.target.id in names:
                described = structure(node.name, whole)["properties"][names.pop(field.target.id)]["description"]
                assert text.value.value == described
        assert not names


# --------------------------------------------------------------------------------------------------------------------- the values


def as_json(value):
    """A report as the data of its JSON, by its fields."""
    if dataclasses.is_dataclass(value):
        pairs = {key: getattr(value, f.name) for key, f in declared(type(value)).items()}
        # what is absent stands for nothing in the JSON; an empty list only where the class has it as its default
        kept = {k: v for k, v in pairs.items() if v is not None and (v != () or declared(type(value))[k].default != ())}
        return {key: as_json(item) for key, item in kept.items()}
    if isinstance(value, tuple):
        return [as_json(item) for item in value]
    return value


def test_every_value_of_the_json_is_in_the_classes(made):
    assert as_json(made) == json.loads(made.to_json())


def test_report_follows_its_schema(made):
    jsonschema.Draft202012Validator(gaugepoint.report_schema()).validate(json.loads(made.to_json()))


@pytest.mark.parametrize("name, schema", [("job", gaugepoint.job_schema()), ("report", gaugepoint.report_schema())])
def test_schemas_are_the_published_ones(name, schema):
    published = REPOSITORY / "core" / "docs" / f"{name}.schema.json"
    assert schema == json.loads(published.read_text(encoding="utf-8"))


@pytest.mark.parametrize("path", JOBS, ids=lambda p: p.stem)
def test_job_follows_its_schema(path):
    jsonschema.Draft202012Validator(gaugepoint.job_schema()).validate(json.loads(path.read_text(encoding="utf-8")))


def typed(value, hint):
    if get_origin(hint) in (UnionType, Union):
        return value is None or any(typed(value, part) for part in get_args(hint) if part is not type(None))
    if get_origin(hint) is Literal:
        return value in get_args(hint)
    if get_origin(hint) is tuple:
        return type(value) is tuple and all(typed(item, get_args(hint)[0]) for item in value)
    if get_args(hint):
        return all(typed(k, get_args(hint)[0]) and typed(v, get_args(hint)[1]) for k, v in value.items())
    if dataclasses.is_dataclass(hint):
        hints = get_type_hints(hint)
        return type(value) is hint and all(typed(getattr(value, f.name), hints[f.name]) for f in declared(hint).values())
    return type(value) is hint


def test_values_have_the_declared_types(made):
    assert typed(made, report.Report)


def test_equal_reports_are_equal_and_can_be_pickled(made):
    for protocol in range(2, pickle.HIGHEST_PROTOCOL + 1):
        again = pickle.loads(pickle.dumps(made, protocol))
        assert again == made and hash(again) == hash(made)
        assert again.to_json() == made.to_json()
        assert again.to_text() == made.to_text()
    assert copy.deepcopy(made) == made


def test_different_reports_are_not_equal():
    reports = [gaugepoint.assess(path, working=working) for path in JOBS for working in (False, True)]
    assert len(set(reports)) == len(reports)


def test_report_cannot_be_changed(made):
    with pytest.raises(dataclasses.FrozenInstanceError):
        made.library = ""
    with pytest.raises(dataclasses.FrozenInstanceError):
        made.block.verdict.outcome = "reuse"
    with pytest.raises((AttributeError, TypeError)):
        made.cylinders[0].verdict.added = 1


def test_report_put_together_by_hand_has_no_text(made):
    by_hand = dataclasses.replace(made, warnings=())
    for write in (by_hand.to_json, by_hand.to_text, by_hand.to_markdown):
        with pytest.raises(TypeError, match="assess"):
            write()


def test_repr_is_readable(made):
    shown = repr(made)
    assert shown.startswith("Report(format='gaugepoint-report'")
    assert made.job.id in shown and made.block.verdict.outcome in shown
    # the lists behind the result are left out
    assert "budget" not in shown and len(shown) < 5000
    assert all(len(repr(cylinder)) < 5000 for cylinder in made.cylinders)


def test_text_and_markdown_tell_the_verdicts(made):
    for written in (made.to_text(), made.to_markdown()):
        text = " ".join(written.split())  # the text is broken into lines
        assert made.job.id in text and made.engine.name in text
        assert all(reason in text for reason in made.block.verdict.reasons)
        assert all(caution in text for caution in made.cautions)
    assert made.to_markdown().startswith("# ")
    assert made.to_text() != made.to_markdown()


def test_working_only_on_request():
    path = example("air_twin")
    assert gaugepoint.assess(path).working is None
    working = gaugepoint.assess(path, working=True).working
    ids = {part.id for part in (*working.inputs, *working.constants, *working.steps)}
    assert all(set(step.arguments.values()) <= ids for step in working.steps)


def test_missing_readings_are_named():
    # the example says so itself: "The bore of cylinder 2 has not been read yet."
    second = gaugepoint.assess(example("air_twin")).cylinders[1]
    assert second.bore is None and second.piston is not None
    assert any("bore" in missing for missing in second.missing)
    assert second.verdict.outcome == "incomplete"


def test_plan_only_on_request():
    assert gaugepoint.assess(example("air_twin")).plan is None
    plan = gaugepoint.assess(VECTORS / "jobs" / "planned_block.json").plan
    # by hand: no wall of cylinder 3 is clean at 0.50 mm, which is asked for; four pistons of 58, four bores of 45, one sleeve of 140
    assert [cylinder.bore for cylinder in plan.cylinders] == ["bore", "bore", "sleeve", "bore"]
    assert plan.oversizes.choices[plan.oversizes.chosen].price == 4 * (58 + 45) + 140
    assert [target.piston for target in plan.targets] == ["P1", "P4", "P2", "P3"]
    assert [cylinder.result for cylinder in plan.finish.cylinders] == ["met", "hone on", "too large", "to be honed"]
    assert plan.finish.result == "not proven" and plan.finish.open


def test_work_order_follows_the_plan():
    made = gaugepoint.assess(example("launch_vee"))
    tasks = ["get_parts", "fit_sleeves", "bore", "hone", "clean", "check_finish", "file_rings", "even_masses", "fit_pistons", "close"]
    assert [step.task for step in made.work_order] == tasks
    hone = made.work_order[3].targets[0]
    assert (hone.cylinder, hone.value_mm, hone.dial_mm) == (3, made.plan.targets[0].finish.value_mm, made.plan.targets[0].dial.finish.value_mm)
    assert all(step.number == k for k, step in enumerate(made.work_order, 1))


def test_no_readings_at_all():
    job = json.loads(example("air_twin").read_text(encoding="utf-8"))
    job["cylinders"] = []
    made = gaugepoint.assess(job)
    assert [cylinder.number for cylinder in made.cylinders] == [1, 2]
    assert all(cylinder.missing and cylinder.verdict.outcome == "incomplete" for cylinder in made.cylinders)
    assert made.block.counts == {"incomplete": 2}


# --------------------------------------------------------------------------------------------------------------------- the inputs


class Named:
    """A path object of one's own, of bytes."""

    def __init__(self, path):
        self.path = path

    def __fspath__(self):
        return str(self.path).encode()


@pytest.mark.parametrize("path", JOBS, ids=lambda p: p.stem)
def test_every_form_of_a_job_gives_the_same_report(path):
    text = path.read_text(encoding="utf-8")
    job = json.loads(text)
    forms = [path, str(path), Named(path), text, "\n\t " + text, text.encode(), job, json.dumps(job)]
    assert len({gaugepoint.assess(form).to_json() for form in forms}) == 1
    assert job == json.loads(text)


def test_files_that_cannot_be_read(tmp_path):
    for missing in (tmp_path / "job.json", str(tmp_path / "job.json"), ""):
        with pytest.raises(FileNotFoundError):
            gaugepoint.assess(missing)
    with pytest.raises(IsADirectoryError):
        gaugepoint.assess(tmp_path)


@pytest.mark.parametrize("wrong", [None, 0, 1.5, [], ["{"], {"a": object()}, {"a": {1, 2}}, {(1,): 1}], ids=repr)
def test_what_is_no_job(wrong):
    with pytest.raises(TypeError):
        gaugepoint.assess(wrong)


def test_working_is_named():
    with pytest.raises(TypeError):
        gaugepoint.assess(EXAMPLES[0], True)


# -------------------------------------------------------------------------------------------------------------------- the threads


def test_threads_get_the_same_report():
    alone = gaugepoint.assess(EXAMPLES[0], working=True).to_json()
    with ThreadPoolExecutor(4) as pool:
        made = pool.map(lambda _: gaugepoint.assess(EXAMPLES[0], working=True).to_json(), range(8))
        assert set(made) == {alone}


def test_other_threads_run_during_an_assessment():
    job = EXAMPLES[0].read_bytes()
    started, finished, calls = threading.Event(), [], 50

    def work():
        started.set()
        for _ in range(calls):
            finished.append(_gaugepoint.assess(job, True, None))

    interval = sys.getswitchinterval()
    # no thread is interrupted: this one gets its turn only where the other gives it
    sys.setswitchinterval(1000)
    try:
        other = threading.Thread(target=work)
        other.start()
        started.wait()
        seen = len(finished)
    finally:
        sys.setswitchinterval(interval)
    other.join()
    assert seen < calls
