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
from vectors import EXAMPLES, FITS, HOT_FIT, REVISIT, STACK, THREE_WAYS, VECTORS, WHAT_IF

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
