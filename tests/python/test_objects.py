"""Every class of every public module: it cannot be changed, compares by value, can be shown, copied, pickled, and written as JSON and read again.

The classes are found, not listed: a class that is added is tested. What they must be is said by the standard library where it has a word: a class
behaves as a dataclass of it with the same fields, HTML is read by `html.parser`, formulas by the mathematical text of matplotlib.
"""

import copy
import dataclasses
import importlib
import inspect
import itertools
import json
import math
import pickle
import pkgutil
import re
import subprocess
import sys
import types
from collections.abc import Mapping, Sequence
from html.parser import HTMLParser
from typing import Literal, Union, get_args, get_origin, get_type_hints

import gaugepoint
import numpy as np
import pytest
from gaugepoint import _data, _latex, growth, hot, report, shape, stack, working
from gaugepoint._value import Value
from gaugepoint._written import Written
from matplotlib.mathtext import MathTextParser
from numpy.typing import NDArray
from vectors import EXAMPLES, HOT_FIT, REVISIT, STACK, THREE_WAYS, VECTORS, WHAT_IF

MODULES = [importlib.import_module(f"gaugepoint.{m.name}") for m in pkgutil.iter_modules(gaugepoint.__path__) if not m.name.startswith("_")]
# tuples that have names, exceptions, and what holds a frame of another library: they are shown, compared and copied as these are
OTHERS = {"Clearances", "Interval", "GapFactor", "InputError", "RowsRefused", "Decided"}
CLASSES = {
    f"{kind.__module__}.{kind.__qualname__}": kind
    for module in MODULES
    for name in getattr(module, "__all__", ())
    if inspect.isclass(kind := getattr(module, name)) and kind.__qualname__ not in OTHERS
}
HOSTILE = '<script>alert("1 & 2")</script>'
PROTOCOLS = range(2, pickle.HIGHEST_PROTOCOL + 1)


def every_class(names=tuple(CLASSES)):
    return pytest.mark.parametrize("kind", [CLASSES[name] for name in names], ids=names)


# ------------------------------------------------------------------------------------------------------------------- an object of each


def hot_fit():
    skirt = shape.SymmetricSurface(0.0, 50.0, [(0, 0.02), (12, 0), (50, 0.06)], [(0, 0.2)], counted="below")
    field = hot.PistonField([(0, 120, 125), (60, 180, 190)])
    aluminium, iron = growth.MeanCoefficient(20.0, 20.5e-6, 20.0, 300.0), growth.BuiltIn("grey cast iron")
    return hot.HotFit(86.0, shape.Piston(12.0, [skirt]), [hot.SurfaceGrowth(aluminium, 0.9)], field, shape.Bore(86.1), iron, hot.BoreField([(0, 90)]))


def worked():
    bore, piston = (report.Input(id=f"i{k}", symbol=name, value=86.0 + k / 8, unit="mm", path="", typed="") for k, name in enumerate(("a", "b")))
    arguments = {"a": "i0", "b": "i1"}
    step = report.Step(id="s0", of=HOSTILE, symbol="c", formula="a - b", arguments=arguments, value=-0.125, unit="mm", source="")
    return working.WorkedNumber(step, (bore, piston))


def contributors():
    return [stack.Contributor(name, 10.0, -0.1, 0.1, stack.Variation.normal(0.03)) for name in ("a", "b")]


# what only some numbers make is made of such; the rest of numbers that tell one field from another
SPECIAL = {
    hot.HotFit: hot_fit,
    stack.Stack: lambda: stack.Stack(contributors(), [stack.SharedCause("c", "normal", [0.01], [("a", 1.0)])]),
    stack.Function: lambda: stack.Function.from_formula(contributors(), "a * b"),
    working.WorkedNumber: worked,
    growth.MeanCoefficient: lambda: growth.MeanCoefficient(20.0, 19.8e-6, -40.0, 300.0),
    growth.MeanTable: lambda: growth.MeanTable(20.0, [(0.0, 19e-6), (200.0, 20e-6)]),
    growth.InstantaneousTable: lambda: growth.InstantaneousTable([(0.0, 19e-6), (200.0, 21e-6)]),
    growth.InstantaneousPolynomial: lambda: growth.InstantaneousPolynomial([1e-5, 1e-8], 0.0, 300.0),
    growth.StrainPolynomial: lambda: growth.StrainPolynomial([0.0, 1e-5, 1e-9], 0.0, 300.0),
    growth.GraphiteIron: lambda: growth.GraphiteIron(40.0, 5.0, 1.0),
    growth.BuiltIn: lambda: growth.BuiltIn("grey cast iron"),
}
NAMES_OF_TYPES = {"np": np, "NDArray": NDArray, "Chamber": gaugepoint.Chamber, "Contributor": stack.Contributor}


def made(kind, count=None):
    """An object with something in every field, each time the same."""
    count = count or itertools.count(1)
    if kind in SPECIAL:
        return SPECIAL[kind]()
    hints = get_type_hints(kind, localns=NAMES_OF_TYPES)
    return kind(**{f.name: value_of(hints[f.name], count) for f in dataclasses.fields(kind) if f.init})


def value_of(hint, count):
    origin, parts = get_origin(hint), get_args(hint)
    if dataclasses.is_dataclass(hint):
        return made(hint, count)
    if origin is Literal:
        return parts[next(count) % len(parts)]
    if origin in (types.UnionType, Union):
        return value_of(next(part for part in parts if part is not type(None)), count)
    if origin in (tuple, list, Sequence) and (origin is not tuple or parts[-1] is Ellipsis):
        return (list if origin is list else tuple)(value_of(parts[0], count) for _ in range(2))
    if origin is tuple:
        return tuple(value_of(part, count) for part in parts)
    if origin in (dict, Mapping):
        return {f"key {next(count)}": value_of(parts[1], count)}
    if origin is np.ndarray:
        return np.array([next(count) / 8, next(count) / 8])
    if hint is gaugepoint.RowsRefused:
        return None
    # eighths are exact; a name is one that no page may take for its own
    return {float: lambda k: k / 8, int: int, bool: lambda k: k % 2 == 1, str: lambda k: f"{HOSTILE}{k}"}[hint](next(count))


def objects(value):
    """An object and all objects below it."""
    if isinstance(value, Value):
        yield value
        for field in dataclasses.fields(value):
            yield from objects(getattr(value, field.name))
    elif isinstance(value, tuple | list):
        for item in value:
            yield from objects(item)


def reports():
    jobs = [*EXAMPLES, *sorted((VECTORS / "jobs").glob("*.json"))]
    yield from (gaugepoint.assess(path, working=True) for path in jobs[:4])
    yield gaugepoint.measure(THREE_WAYS, working=True)
    yield gaugepoint.fit(HOT_FIT, working=True)
    yield gaugepoint.evaluate_stack(STACK, working=True)
    yield gaugepoint.revisit(REVISIT)
    yield gaugepoint.what_if(WHAT_IF)
    yield gaugepoint.budget(VECTORS / "budgets" / "gum_h1.json")
    entry = {"id": HOSTILE, "what": "temperature_difference", "printed": "50 C", "also_printed": "122 F"}
    yield gaugepoint.check_sheet({"format": "gaugepoint-sheet", "version": 1, "sheet": {"id": HOSTILE}, "entries": [entry]})


@pytest.fixture(scope="module")
def found():
    return list(reports())


# ----------------------------------------------------------------------------------------------------------------------- every class


def test_every_public_class_is_tested():
    everywhere = {kind for module in MODULES for kind in vars(module).values() if inspect.isclass(kind) and kind.__module__ == module.__name__}
    public = {kind for kind in everywhere if not kind.__name__.startswith("_")}
    left = {kind for kind in public if kind not in CLASSES.values() and kind.__name__ not in OTHERS}
    # what `Stack` and `Function` share has no objects of its own
    assert {kind.__name__ for kind in left} == {"Runs"}
    assert len(CLASSES) > 250 and all(issubclass(kind, Value) for kind in CLASSES.values())


@every_class()
def test_is_made_as_a_dataclass(kind):
    own = {f.name: (f.name, f.type, dataclasses.field(default=f.default, init=f.init, kw_only=f.kw_only)) for f in dataclasses.fields(kind)}
    alike = dataclasses.make_dataclass(kind.__name__, own.values(), frozen=True)
    assert inspect.signature(kind) == inspect.signature(alike)
    assert kind.__match_args__ == alike.__match_args__
    said, its = kind.__dataclass_params__, alike.__dataclass_params__
    assert all(getattr(said, name) == getattr(its, name) for name in ("init", "repr", "eq", "order", "unsafe_hash", "frozen"))
    # a frozen class can stand below it, which the standard library refuses where the one above is not
    below = dataclasses.make_dataclass("Below", (), bases=(kind,), frozen=True)
    assert dataclasses.fields(below) == dataclasses.fields(kind)
    with pytest.raises(TypeError, match="unexpected keyword"):
        kind(no_such_field=1)


@every_class()
def test_cannot_be_changed(kind):
    one = made(kind)
    for name in [f.name for f in dataclasses.fields(one)] + ["new"]:
        with pytest.raises(dataclasses.FrozenInstanceError):
            setattr(one, name, 1)
        with pytest.raises(dataclasses.FrozenInstanceError):
            delattr(one, name)
    assert not hasattr(one, "__dict__")


@every_class()
def test_compares_by_value(kind):
    one, same = made(kind), made(kind)
    assert one == same and not one != same and hash(one) == hash(same) and {one: 1}[same] == 1
    assert one != tuple(getattr(one, f.name) for f in dataclasses.fields(one)) and one != None  # noqa: E711


@every_class([name for name, kind in CLASSES.items() if kind not in SPECIAL])
def test_every_field_counts(kind):
    one = made(kind)
    for field in dataclasses.fields(kind):
        if field.init and field.compare and kind.__name__ != "Summary":
            changed = dataclasses.replace(one, **{field.name: getattr(made(kind, itertools.count(900)), field.name)})
            assert changed != one or getattr(changed, field.name) == getattr(one, field.name), field.name


@every_class()
def test_copies_are_equal(kind):
    one = made(kind)
    copies = [copy.copy(one), copy.deepcopy(one), *(pickle.loads(pickle.dumps(one, protocol)) for protocol in PROTOCOLS)]
    for again in copies:
        assert type(again) is kind and again == one and hash(again) == hash(one) and repr(again) == repr(one)
    assert dataclasses.replace(one) == one


@every_class()
def test_repr_is_one_line_and_makes_the_object(kind):
    one = made(kind)
    shown = repr(one)
    assert "\n" not in shown and shown.startswith(kind.__name__ + "(") and shown.endswith(")")
    shown_whole = {f.name for f in dataclasses.fields(one) if f.repr}
    assert all(f"{name}=" in shown for name in shown_whole)
    if all(f.repr for each in objects(one) for f in dataclasses.fields(each) if f.init) and "<array" not in shown and "..." not in shown:
        names = {each.__name__: each for each in {type(each) for each in objects(one)}}
        assert eval(shown, names) == one


def test_long_reprs_are_shortened():
    values = [0.001 * k for k in range(1000)]
    shown = repr(stack.Variation.sample(values))
    assert shown == "Variation(kind='sample', numbers=(0.0, 0.001, 0.002, ... 1000 in all))"
    trials = stack.Trials(np.zeros(1000), 1)
    assert repr(trials).startswith("Trials(values=<array of float64, shape (1000,)>, seed=1")


@every_class()
def test_json_comes_back(kind):
    one = made(kind)
    text = _data.written(one)
    assert issubclass(kind, Written) or text == one.to_json()
    again = kind.from_json(text)
    assert again == one and type(again) is kind and "\n" not in text
    assert kind.from_json(text.encode()) == one
    with pytest.raises(gaugepoint.InputError) as refused:
        kind.from_json(json.dumps({**json.loads(text), "no such/field": 1}))
    assert (refused.value.kind, refused.value.field) == ("unknown_field", "/no such~1field")


@every_class()
def test_html_is_balanced_and_escaped(kind):
    one = made(kind)
    page = one._repr_html_()
    if page is None:
        assert one._repr_latex_()
        return
    read = Page(page)
    assert read.open == [] and read.tags <= {"div", "p", "strong", "table", "tr", "th", "td", "details", "summary", "span", "br"}
    assert all(name in ("class", "style", "scope", "open") for name in read.attributes)


class Page(HTMLParser):
    """What a browser would see of a page."""

    def __init__(self, page):
        super().__init__(convert_charrefs=True)
        self.open, self.tags, self.attributes, self.words, self.unfolded = [], set(), set(), [], []
        self.folded = []
        self.feed(page)
        self.close()

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        self.attributes |= {name for name, _ in attrs}
        if tag != "br":
            self.open.append(tag)
        if tag == "details":
            self.folded.append("open" not in dict(attrs))

    def handle_endtag(self, tag):
        assert self.open.pop() == tag
        if tag == "details":
            self.folded.pop()

    def handle_data(self, data):
        self.words.append(data)
        # the summary of what is folded is seen
        hidden = any(self.folded[:-1]) or (any(self.folded) and "summary" not in self.open)
        if not hidden:
            self.unfolded.append(data)


# ----------------------------------------------------------------------------------------------------------------------- the reports


def seen(page):
    """The words of a page that are seen before anything is unfolded, in order."""
    return " ".join(" ".join(Page(page).unfolded).split())


def parts_and_their_json(value, data):
    """Every structure of a report with its part of the JSON that the library wrote."""
    for field in dataclasses.fields(value):
        item, there = getattr(value, field.name), field.metadata.get("json", field.name)
        if isinstance(item, Value):
            yield item, data[there]
            yield from parts_and_their_json(item, data[there])
        elif isinstance(item, tuple) and item and isinstance(item[0], Value):
            for one, its in zip(item, data[there], strict=True):
                yield one, its
                yield from parts_and_their_json(one, its)


def test_json_of_every_part_is_that_of_the_library(found):
    count = 0
    for one in found:
        for part, data in parts_and_their_json(one, json.loads(one.to_json())):
            assert json.loads(_data.written(part)) == data
            count += 1
    assert count > 10_000


def test_reports_come_back_with_their_json_and_without_their_text(found):
    for one in found:
        again = type(one).from_json(one.to_json())
        assert again == one and again.to_json() == one.to_json()
        for write in ("to_text", "to_markdown"):
            if hasattr(one, write):
                with pytest.raises(TypeError, match="only a report made by"):
                    getattr(again, write)()


def test_markdown_in_notebooks_where_there_is_some(found):
    for one in found:
        if hasattr(one, "to_markdown"):
            assert one._repr_markdown_() == one.to_markdown()
            assert type(one).from_json(one.to_json())._repr_markdown_() is None
        else:
            assert not hasattr(one, "_repr_markdown_")


def test_verdicts_cautions_and_warnings_are_seen_first(found):
    for one in found:
        words = seen(one._repr_html_())
        told = [*getattr(one, "cautions", ()), *(warning.text for warning in getattr(one, "warnings", ()))]
        assert all(" ".join(text.split()) in words for text in told)
        if isinstance(one, gaugepoint.Report):
            verdict, cylinders = words.index(one.block.verdict.outcome), words.index("cylinders:")
            assert verdict < words.index(one.cautions[0]) < cylinders
            rows = words[cylinders:]
            assert all(f"{cylinder.number} {cylinder.verdict.outcome}" in rows for cylinder in one.cylinders)


def test_colour_only_repeats_a_word(found):
    for one in found:
        for colour, inner in re.findall(r"solid (#\w+);[^>]*>(.*?)</span>", one._repr_html_()):
            assert re.fullmatch(r"<strong>[a-z_0-9 ]+</strong>", inner), (colour, inner)


def test_names_of_a_job_cannot_become_markup():
    job = json.loads(EXAMPLES[0].read_text(encoding="utf-8"))
    job["job"]["id"] = job["engine"]["name"] = HOSTILE
    page = gaugepoint.assess(job)._repr_html_()
    assert "script" not in Page(page).tags and HOSTILE in "".join(Page(page).words)
    assert page.count("<script") == 0 and page.count("&lt;script&gt;") >= 2


def test_pages_stay_small(found):
    # a notebook keeps every page in its file
    assert max(len(one._repr_html_()) for one in found) < 400_000


# ------------------------------------------------------------------------------------------------------------------ refused JSON


MEAN = {"base_c": 20.0, "mean_per_k": 2e-5, "from_c": 0.0, "to_c": 300.0}


@pytest.mark.parametrize(
    "kind, text, refusal, field",
    [
        (growth.MeanCoefficient, "{", "syntax", ""),
        (growth.MeanCoefficient, b"\xff", "not_utf8", ""),
        (growth.MeanCoefficient, "[" * 100_000, "too_deep", ""),
        (growth.MeanCoefficient, "[]", "wrong_type", ""),
        (growth.MeanCoefficient, '{"base_c": 20, "base_c": 20}', "repeated_field", ""),
        (growth.MeanCoefficient, json.dumps(MEAN).replace("300.0", "NaN"), "not_finite", ""),
        (growth.MeanCoefficient, json.dumps(MEAN).replace("300.0", "1e999"), "not_finite", "/to_c"),
        (growth.MeanCoefficient, json.dumps(MEAN).replace("300.0", "9" * 400), "too_many_digits", "/to_c"),
        (growth.MeanCoefficient, json.dumps(MEAN).replace("300.0", "true"), "wrong_type", "/to_c"),
        (growth.MeanCoefficient, json.dumps(MEAN | {"to_c": "300 C"}), "wrong_type", "/to_c"),
        (growth.MeanCoefficient, json.dumps({k: MEAN[k] for k in ("base_c", "from_c", "to_c")}), "missing_field", "/mean_per_k"),
        # in JSON a law is refused as it is in Python
        (growth.MeanCoefficient, json.dumps(MEAN | {"mean_per_k": 2.0}), "out_of_range", "mean_per_k"),
        (growth.MeanTable, json.dumps({"base_c": 20, "rows": [[0.0, 1e-5], [100.0]]}), "wrong_type", "/rows/1"),
        (growth.MeanTable, json.dumps({"base_c": 20, "rows": [[0.0, 1e-5], [100.0, None]]}), "wrong_type", "/rows/1/1"),
        (hot.SurfaceGrowth, json.dumps({"law": MEAN}), "unknown_choice", "/law/class"),
        (hot.SurfaceGrowth, json.dumps({"law": {"class": "Growth", **MEAN}}), "unknown_choice", "/law/class"),
        (report.Verdict, json.dumps({"outcome": "fine", "reasons": []}), "unknown_choice", "/outcome"),
    ],
)
def test_json_that_is_refused(kind, text, refusal, field):
    with pytest.raises(gaugepoint.InputError) as refused:
        kind.from_json(text)
    assert (refused.value.kind, refused.value.field) == (refusal, field)


def test_what_json_cannot_say_is_refused():
    with pytest.raises(gaugepoint.InputError) as refused:
        hot.Crank(math.inf).to_json()
    assert (refused.value.kind, refused.value.field) == ("not_finite", "/crank_deg")
    with pytest.raises(TypeError, match="cannot be written as JSON"):
        stack.Function.of_callable(contributors(), np.add).to_json()


def test_of_which_class_a_law_is_stands_in_the_json():
    law = growth.MeanCoefficient(20.0, 2e-5, 0.0, 300.0)
    assert json.loads(hot.SurfaceGrowth(law).to_json()) == {"law": {"class": "MeanCoefficient", **MEAN}}


# -------------------------------------------------------------------------------------------------------- objects beside the others


def test_arrays_are_compared_by_their_bits_and_cannot_be_written():
    given = np.array([0.5, -0.0])
    one = stack.Trials(given, 1)
    assert one == stack.Trials(given.copy(), 1) != stack.Trials(np.array([0.5, 0.0]), 1)
    with pytest.raises(ValueError, match="read-only"):
        one.values[0] = 1.0
    assert given.flags.writeable


def test_sequences_are_kept_as_tuples():
    rows = [[0.0, 0.02], [50.0, 0.06]]
    surface = shape.SymmetricSurface(0.0, 50.0, np.array(rows), iter(rows))
    rows[0][1] = 9.0
    assert surface.barrel == ((0.0, 0.02), (50.0, 0.06)) and type(surface.barrel[0][1]) is float
    assert hash(surface) == hash(shape.SymmetricSurface(0.0, 50.0, surface.barrel, surface.ovality))


def test_errors_can_be_copied():
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.bench_clearance_mm(3.387, 86.0)
    for again in (copy.copy(refused.value), copy.deepcopy(refused.value), *(pickle.loads(pickle.dumps(refused.value, p)) for p in PROTOCOLS)):
        assert type(again) is gaugepoint.InputError and str(again) == str(refused.value) and vars(again) == vars(refused.value)


# ----------------------------------------------------------------------------------------------------------------------- formulas


@pytest.fixture(scope="module")
def steps(found):
    """One step of each formula that the reports have, with its working."""
    workings = [one.working for one in found if getattr(one, "working", None)]
    return list({step.formula: (working, step) for working in workings for step in working.steps}.values())


# by hand
WRITTEN = {
    "a - (b - c)": r"a - \left(b - c\right)",
    "a - b - c": "a - b - c",
    "(a + b) * c": r"\left(a + b\right) \cdot c",
    "a * (b * c)": r"a \cdot \left(b \cdot c\right)",
    "-(a + b)": r"-\left(a + b\right)",
    "a * -b": r"a \cdot \left(-b\right)",
    "(a / b) ** 2": r"\frac{a}{b}^{2}",
    "c * c / (u * u)": r"\frac{c^{2}}{u^{2}}",
    "sqrt(x1 + eps_bore)": r"\sqrt{x_{1} + \varepsilon_{\mathrm{bore}}}",
    "max(bore, 0.5)": r"\mathrm{max}\left(\mathrm{bore},\ 0.5\right)",
}


@pytest.mark.parametrize("text", WRITTEN)
def test_formulas_by_hand(text):
    assert _latex.formula(text) == WRITTEN[text]


def computed(tex, values):
    """What a formula of LaTeX comes to: braces and commands as the arithmetic that they show."""
    text = tex.replace(r"\left|", "abs(").replace(r"\right|", ")").replace(r"\left", "").replace(r"\right", "")
    text = text.replace(r"\cdot", "*").replace(r"\times", "*").replace(r"\pi", "pi").replace(r"\ ", " ")
    text = re.sub(r"\\mathrm\{(\w+)\}", r"\1", text)
    text = text.replace("^{", "**{").replace(r"\sqrt{", "sqrt{")
    # the numerator ends where its brace is closed
    while (start := text.find(r"\frac{")) >= 0:
        end, depth = start + len(r"\frac{"), 1
        while depth:
            depth += {"{": 1, "}": -1}.get(text[end], 0)
            end += 1
        closing, depth = end + 1, 1
        while depth:
            depth += {"{": 1, "}": -1}.get(text[closing], 0)
            closing += 1
        text = f"{text[:start]}({text[start + 5 : end]}/{text[end:closing]}){text[closing:]}"
    functions = {"sqrt": math.sqrt, "erfc": math.erfc, "pi": math.pi, "sum": lambda *x: sum(x)}
    return eval(text.replace("{", "(").replace("}", ")"), {**vars(math), **functions, "min": min, "max": max, "abs": abs}, values)


def test_formulas_mean_what_they_are_made_of(steps):
    known = {name for name in vars(math)} | {"sum", "min", "max", "abs", "sqrt"}
    count = 0
    for working, step in steps:
        functions = set(re.findall(r"(\w+)\(", step.formula))
        if not functions <= known:
            continue
        worked = working.number(step.id)
        put_in = {name: f"V{k}" for k, name in enumerate(step.arguments)}
        values = {f"V{k}": part.value for k, part in enumerate(worked.arguments)}
        value = computed(_latex.formula(step.formula, put_in), values)
        # differences of nearly equal numbers keep the rounding of these
        scale = max([1e-12, *(abs(part.value) for part in worked.arguments)])
        assert value == pytest.approx(step.value, rel=1e-12, abs=1e-13 * scale), step.formula
        count += 1
    assert count > 100


def test_formulas_can_be_typeset(steps):
    typesetter = MathTextParser("agg")
    for working, step in steps:
        lines = working.number(step.id)._repr_latex_().split("\n")
        assert len(lines) == 3 and all(line.startswith("$$") and line.endswith("$$") for line in lines)
        for line in lines:
            assert line.count("{") == line.count("}")
            typesetter.parse(line.replace("$$", "$"))


def test_a_number_is_found_by_its_place(found):
    one = next(one for one in found if isinstance(one, gaugepoint.Report) and one.cylinders[0].clearance.bench)
    worked = one.working.number("/cylinders/0/clearance/bench/value_mm")
    assert worked.step.value == one.cylinders[0].clearance.bench.value_mm
    assert worked.step.formula == "bore - piston"
    bore, piston = (part.value for part in worked.arguments)
    assert bore - piston == worked.step.value
    formula, numbers, result = worked.to_latex().split("\n")
    assert formula == r"$$\mathrm{clearance} = \mathrm{bore} - \mathrm{piston}$$"
    assert numbers == rf"$$= {bore:.9g}\,\mathrm{{mm}} - {piston:.9g}\,\mathrm{{mm}}$$"
    assert result == rf"$$= {worked.step.value:.9g}\,\mathrm{{mm}}$$"
    assert repr(worked.step.value) in worked.to_text() and "definition" in worked.to_text()
    with pytest.raises(gaugepoint.InputError) as refused:
        one.working.number("/nowhere")
    assert (refused.value.kind, refused.value.field) == ("unknown_name", "place")


# ------------------------------------------------------------------------------------------------------------------------- import


def loaded_by(statement):
    command = [sys.executable, "-c", f"import sys; before = set(sys.modules); {statement}; print(*(set(sys.modules) - before))"]
    return set(subprocess.run(command, capture_output=True, text=True, check=True).stdout.split())


def test_an_import_loads_nothing_before_it_is_asked_for():
    assert loaded_by("import gaugepoint") == {"gaugepoint"}
    assert "gaugepoint.report" not in loaded_by("import gaugepoint; gaugepoint.mm_to_inch; gaugepoint.growth.BuiltIn")


def test_every_name_can_be_asked_for_in_every_way():
    names = {}
    exec("from gaugepoint import *", names)
    assert set(gaugepoint.__all__) <= names.keys() and set(gaugepoint.__all__) <= set(dir(gaugepoint))
    for name in gaugepoint.__all__:
        assert getattr(gaugepoint, name) is names[name]
    with pytest.raises(AttributeError, match="no_such_name"):
        gaugepoint.no_such_name
    with pytest.raises(ImportError, match="no_such_name"):
        exec("from gaugepoint import no_such_name")
