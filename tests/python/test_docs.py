"""Every public docstring: its sections, its parameters, its examples; and the stub says the same as the module."""

import ast
import contextlib
import doctest
import inspect
import io
import re
from importlib import import_module
from pathlib import Path
from pkgutil import iter_modules

import gaugepoint
import pytest
from gaugepoint import _gaugepoint, frames, measuring, plot, report, sheet
from vectors import REPOSITORY

PACKAGE = Path(gaugepoint.__file__).parent
PUBLIC = {name: getattr(gaugepoint, name) for name in gaugepoint.__all__}
FUNCTIONS = {name: thing for name, thing in PUBLIC.items() if inspect.isroutine(thing)}
FUNCTIONS |= {f"Report.{name}": getattr(report.Report, name) for name in ("to_json", "to_text", "to_markdown")}
FUNCTIONS |= {"SheetReport.to_json": sheet.SheetReport.to_json}
FUNCTIONS |= {f"MeasurementReport.{name}": getattr(measuring.MeasurementReport, name) for name in ("to_json", "to_text")}
FUNCTIONS |= {f"StackReport.{name}": getattr(gaugepoint.StackReport, name) for name in ("to_json", "to_text", "to_markdown")}
FUNCTIONS |= {f"{kind.__name__}.{name}": getattr(kind, name) for kind in (gaugepoint.RevisitReport, gaugepoint.WhatIfReport) for name in ("to_json", "to_text", "to_markdown")}
FUNCTIONS |= {f"Budget.{name}": getattr(gaugepoint.Budget, name) for name in ("to_json", "to_text")}
FUNCTIONS |= {f"frames.{name}": getattr(frames, name) for name in frames.__all__ if inspect.isfunction(getattr(frames, name))}
FUNCTIONS |= {f"plot.{name}": getattr(plot, name) for name in plot.__all__}
FUNCTIONS |= {f"HotFit.{name}": thing for name, thing in vars(gaugepoint.HotFit).items() if inspect.isfunction(thing) and not name.startswith("_")}
INNER = {name: getattr(_gaugepoint, name) for name in _gaugepoint.__all__ if inspect.isroutine(getattr(_gaugepoint, name))}
STACK = {f"{of.__name__}.{name}": method for of in (_gaugepoint.Stack, _gaugepoint.Function) for name, method in vars(of).items() if not name.startswith("_")}
CLASSES = {name: getattr(_gaugepoint, name) for name in _gaugepoint.__all__ if inspect.isclass(getattr(_gaugepoint, name))}

WRITTEN = [REPOSITORY / "python" / "README.md", *sorted((REPOSITORY / "core" / "docs").glob("*.md")), *sorted((REPOSITORY / "python" / "docs").rglob("*.md"))]
PAGES = [page for page in WRITTEN if "```python\n" in page.read_text(encoding="utf-8")]


def sections(thing):
    """Sections of a numpydoc docstring: heading to its lines."""
    lines = inspect.getdoc(thing).splitlines()
    found, heading = {}, "Summary"
    for line, below in zip(lines, [*lines[1:], ""], strict=True):
        if below and set(below) == {"-"} and len(below) == len(line):
            heading = line
        elif not (line and set(line) == {"-"}):
            found.setdefault(heading, []).append(line)
    return found


def documented(lines):
    """Names in a section of parameters."""
    heads = [line.partition(" : ")[0] for line in lines if line and not line.startswith(" ")]
    return [name for head in heads for name in head.split(", ")]


@pytest.mark.parametrize("name, thing", {**FUNCTIONS, **INNER, **STACK}.items(), ids=lambda x: x if isinstance(x, str) else "")
def test_sections(name, thing):
    found = sections(thing)
    parameters = [p for p in inspect.signature(thing).parameters if p != "self"]
    assert found["Summary"][0].endswith(".") and found["Summary"][1:2] in ([], [""])
    assert any(line.startswith("    ") for line in found["Returns"])
    assert sorted(documented(found.get("Parameters", []))) == sorted(parameters)
    assert bool(parameters) <= ("Raises" in found)


UNIT = re.compile(r"\b(unit|k|mm|um|cm3|C|K|kelvin|degrees?|deg|mrad|MPa|GPa|N|Nm|g|min|h|inch|inches|thou)\b")
# pure numbers, and what is in the unit of the readings that stand beside it
WITHOUT_UNIT = {"alpha", "coverage", "friction", "least_zone", "parameter", "pin_poisson", "eye_poisson", "probability"}
OF_THE_READINGS = {"first_u", "second_u", "lower", "upper", "reference", "reference_uncertainty", "standard_uncertainty", "u", "x"}
PURE = re.compile(r"\b(share|ratio|factor|fraction|probability|number|per mille|pure)\b", re.I)


@pytest.mark.parametrize("name, thing", FUNCTIONS.items(), ids=lambda x: x if isinstance(x, str) else "")
def test_numbers_have_a_unit(name, thing):
    text = "\n".join(sections(thing).get("Parameters", []))
    for head, meaning in re.findall(r"^(\S.*?) : float.*\n((?:    .*\n?)+)", text, re.M):
        for parameter in head.split(", "):
            said = f"{parameter.replace('_', ' ')} {meaning}"
            assert UNIT.search(said) or PURE.search(said) or parameter in WITHOUT_UNIT | OF_THE_READINGS, (parameter, meaning)


def test_methods_have_a_docstring():
    modules = [gaugepoint, *(import_module(f"gaugepoint.{module.name}") for module in iter_modules(gaugepoint.__path__) if not module.name.startswith("_"))]
    classes = {thing for module in modules for name in module.__all__ if inspect.isclass(thing := vars(module)[name])}
    for of in classes:
        public = {name: getattr(thing, "__func__", getattr(thing, "fget", thing)) for name, thing in vars(of).items() if not name.startswith("_")}
        assert not [(of, name) for name, thing in public.items() if inspect.isroutine(thing) and not inspect.getdoc(thing)]


def test_attributes_of_the_error():
    declared = [name for name in gaugepoint.InputError.__annotations__]
    assert documented(sections(gaugepoint.InputError)["Attributes"]) == declared


def test_everything_public_has_a_docstring():
    modules = (gaugepoint, gaugepoint.batch, frames, plot, gaugepoint.before, gaugepoint.growth, gaugepoint.hot, report, sheet, measuring, gaugepoint.fitting, gaugepoint.comparing, gaugepoint.stacking, gaugepoint.job, gaugepoint.measurement, gaugepoint.shape, gaugepoint.stack, gaugepoint.plan, gaugepoint.function, gaugepoint.trials, gaugepoint.decision, gaugepoint.parts, gaugepoint.uncertainty, gaugepoint.error, _gaugepoint)
    for module in modules:
        assert module.__doc__, module
    for module in (frames, gaugepoint.growth, gaugepoint.hot, gaugepoint.stack, gaugepoint.plan, report, sheet, measuring, gaugepoint.fitting, gaugepoint.comparing, gaugepoint.stacking):
        for name in module.__all__:
            if inspect.isclass(getattr(module, name)):
                assert getattr(module, name).__doc__, name


def examples_hold(thing, name):
    example = doctest.DocTestParser().get_doctest(inspect.getdoc(thing), {}, name, None, None)
    assert example.examples, "no example"
    told = []
    failed = doctest.DocTestRunner().run(example, out=told.append).failed
    assert not failed, "".join(told)


@pytest.mark.parametrize(
    "name", [n for n, thing in {**FUNCTIONS, "InputError": gaugepoint.InputError}.items() if "." not in n]
)
def test_examples(name):
    examples_hold(PUBLIC[name], name)


@pytest.mark.parametrize("module, name", [(module, name) for module in (frames, plot) for name in module.__all__ if inspect.isfunction(getattr(module, name))])
def test_examples_of_frames_and_pictures(module, name):
    examples_hold(getattr(module, name), name)


@pytest.mark.parametrize("name", ["Stack", "Function", "Trials", "engine_stacks"])
def test_examples_of_stacks(name):
    examples_hold(getattr(gaugepoint.stack, name), name)


def test_stub_says_the_same():
    tree = ast.parse((PACKAGE / "_gaugepoint.pyi").read_text(encoding="utf-8"))
    stubbed = {node.name: ast.get_docstring(node) for node in tree.body if isinstance(node, ast.FunctionDef)}
    assert ast.get_docstring(tree) == _gaugepoint.__doc__.strip()
    assert stubbed == {name: inspect.getdoc(function) for name, function in INNER.items()}
    # what starts with an underscore only describes types
    stubbed = {node.name: node for node in tree.body if isinstance(node, ast.ClassDef) and not node.name.startswith("_")}
    assert set(stubbed) == set(CLASSES)
    for name, node in stubbed.items():
        assert ast.get_docstring(node) == inspect.getdoc(CLASSES[name])
        methods = {method: inspect.getdoc(thing) for method, thing in vars(CLASSES[name]).items() if not method.startswith("_")}
        assert {inner.name: ast.get_docstring(inner) for inner in node.body if isinstance(inner, ast.FunctionDef) and inner.name != "__new__"} == methods


def test_readme():
    readme = (REPOSITORY / "README.md").read_text(encoding="utf-8")
    blocks = re.findall(r"^```python\n(.*?)^```$", readme, re.M | re.S)
    assert blocks
    for block in blocks:
        with contextlib.redirect_stdout(io.StringIO()) as printed:
            exec(block, {})
        assert f"`{printed.getvalue().strip()}`" in readme


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_pages(page):
    page = page.read_text(encoding="utf-8")
    blocks = re.findall(r"^```python\n(.*?)^```$", page, re.M | re.S)
    for block in blocks:
        with contextlib.redirect_stdout(io.StringIO()) as printed:
            exec(block, {})
        assert printed.getvalue() and f"```text\n{printed.getvalue()}```" in page
