"""Objects of the package as JSON and back, by the types of their fields: the declarations of the classes are the only description of it."""

import json
import types
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import MISSING, fields, is_dataclass
from functools import cache
from itertools import repeat
from math import isfinite
from typing import Any, Literal, NamedTuple, TypeVar, Union, get_args, get_origin, get_type_hints

from gaugepoint.error import at_door

_T = TypeVar("_T")

# says of which class an object is, where a field may be of several
_CLASS = "class"


def read(kind: type[_T], text: str) -> _T:
    """Read one structure that the library wrote.

    Parameters
    ----------
    kind : type
        Its class.
    text : str
        The structure as JSON.

    Returns
    -------
    kind
        The structure.

    Raises
    ------
    InputError
        When a field is unknown, missing or of another type: nothing is dropped in silence.
    """
    structure: _T = _read(kind, json.loads(text))
    return structure


def read_strictly(kind: type[_T], text: str | bytes) -> _T:
    """Read one structure that anyone may have written.

    Parameters
    ----------
    kind : type
        Its class.
    text : str or bytes
        The structure as JSON.

    Returns
    -------
    kind
        The structure.

    Raises
    ------
    InputError
        When it is not JSON, a field stands twice, or as with `read`.
    """
    try:
        text = text.decode("utf-8") if isinstance(text, bytes) else text
        value = json.loads(text, object_pairs_hook=_once, parse_constant=_no_constant)
    except UnicodeDecodeError as error:
        raise at_door("not_utf8", "", "", str(error)) from None
    except json.JSONDecodeError as error:
        raise at_door("syntax", "", "", str(error)) from None
    except RecursionError:
        raise at_door("too_deep", "", "", "nested too deeply") from None
    except _Refused as refused:
        raise refused.at_door() from None
    structure: _T = _read(kind, value)
    return structure


def written(value: object) -> str:
    """Write an object of the package as JSON on one line.

    Parameters
    ----------
    value : object
        An object of a class of the package.

    Returns
    -------
    str
        The JSON.

    Raises
    ------
    InputError
        When a number is not finite.
    TypeError
        When a field is no data.
    """
    kind: Any = type(value)
    try:
        return json.dumps(_form(kind).write(value), ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    except _Refused as refused:
        raise refused.at_door() from None


class _Refused(Exception):
    """A refusal on its way out of a structure: each level adds its name."""

    def __init__(self, kind: str, refused: object, reason: str) -> None:
        self.kind, self.refused, self.reason = kind, refused, reason
        self.inward: list[str] = []

    def at_door(self) -> Exception:
        path = "".join("/" + name.replace("~", "~0").replace("/", "~1") for name in reversed(self.inward))
        return at_door(self.kind, path, str(self.refused), self.reason)


class _Form(NamedTuple):
    """How values of a type are read from the data of JSON, and written as such."""

    read: Callable[[Any], Any]
    write: Callable[[Any], Any]


def _read(kind: Any, value: object) -> Any:
    try:
        return _form(kind).read(value)
    except _Refused as refused:
        raise refused.at_door() from None


def _once(pairs: list[tuple[str, object]]) -> dict[str, object]:
    found = dict(pairs)
    if len(found) != len(pairs):
        names = [name for name, _ in pairs]
        raise _Refused("repeated_field", next(n for n in names if names.count(n) > 1), "this field stands twice")
    return found


def _no_constant(word: str) -> object:
    raise _Refused("not_finite", word, "a finite number is needed")


@cache
def _form(hint: Any) -> _Form:
    origin, parts = get_origin(hint), get_args(hint)
    if is_dataclass(hint):
        return _structure(hint)
    if hint in _PLAIN:
        return _PLAIN[hint]
    if origin is Literal:
        return _choice(parts)
    if origin in (types.UnionType, Union):
        return _either(tuple(part for part in parts if part is not types.NoneType), types.NoneType in parts)
    if origin is tuple and parts[-1] is not Ellipsis:
        return _fixed([_form(part) for part in parts])
    if origin in (tuple, list, Sequence):
        return _items(_form(parts[0]), list if origin is list else tuple)
    if origin in (dict, Mapping):
        return _mapping(_form(parts[1]))
    if hint is _Array:
        return _Form(_read_array, lambda array: _items(_PLAIN[float], tuple).write(array.tolist()))
    return _Form(_no_data, _no_data)


def _structure(kind: Any) -> _Form:
    hints = get_type_hints(kind, localns=_only_for_type_checkers())
    given = [(f.metadata.get("json", f.name), f, _form(hints[f.name])) for f in fields(kind) if f.init]
    known = {name: (field.name, form) for name, field, form in given}
    needed = {name for name, field, _ in given if field.default is MISSING}

    def read(value: Any) -> Any:
        if value.__class__ is not dict:
            raise _Refused("wrong_type", value, "an object is needed")
        made = {}
        for name, item in value.items():
            if name not in known:
                raise _below(name, _Refused("unknown_field", name, f"{kind.__name__} has no such field"))
            attribute, form = known[name]
            try:
                made[attribute] = form.read(item)
            except _Refused as refused:
                raise _below(name, refused) from None
        if len(made) < len(known) and (missing := sorted(needed - value.keys())):
            raise _below(missing[0], _Refused("missing_field", "", f"{kind.__name__} needs this field"))
        return kind(**made)

    def write(value: Any) -> dict[str, Any]:
        found = {}
        for name, field, form in given:
            item = getattr(value, field.name)
            if field.default is not MISSING and (item is field.default or item == field.default):
                continue
            try:
                found[name] = form.write(item)
            except _Refused as refused:
                raise _below(name, refused) from None
        return found

    return _Form(read, write)


def _below(name: str, refused: _Refused) -> _Refused:
    refused.inward.append(name)
    return refused


def _float(value: Any) -> float:
    if value.__class__ is float:
        return _finite(value)
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise _Refused("wrong_type", value, "a number is needed")
    try:
        return _finite(float(value))
    except OverflowError:
        raise _Refused("too_many_digits", "", "a number with more digits than a double has room for") from None


def _finite(value: float) -> float:
    if not isfinite(value):
        raise _Refused("not_finite", value, "a finite number is needed")
    return value


def _of(kind: type, words: str) -> _Form:
    def checked(value: Any) -> Any:
        if value.__class__ is not kind:
            raise _Refused("wrong_type", value, f"{words} is needed")
        return value

    return _Form(checked, checked)


_PLAIN: dict[Any, _Form] = {
    float: _Form(_float, _float),
    int: _of(int, "a whole number"),
    bool: _of(bool, "true or false"),
    str: _of(str, "a text"),
}


def _choice(words: tuple[Any, ...]) -> _Form:
    def checked(value: Any) -> Any:
        if value not in words:
            raise _Refused("unknown_choice", value, f"one of {', '.join(map(str, words))} is needed")
        return value

    return _Form(checked, checked)


def _either(parts: tuple[Any, ...], or_none: bool) -> _Form:
    if len(parts) == 1:
        form = _form(parts[0])
    elif all(map(is_dataclass, parts)):
        form = _tagged({part.__name__: _form(part) for part in parts})
    else:
        form = _any_of(parts)
    if not or_none:
        return form
    reading, writing = form
    return _Form(lambda v: None if v is None else reading(v), lambda v: None if v is None else writing(v))


def _tagged(forms: dict[str, _Form]) -> _Form:
    def read(value: Any) -> Any:
        name = value.get(_CLASS) if isinstance(value, dict) else None
        if name not in forms:
            raise _below(_CLASS, _Refused("unknown_choice", name, f"one of {', '.join(forms)} is needed"))
        return forms[name].read({key: item for key, item in value.items() if key != _CLASS})

    def write(value: Any) -> dict[str, Any]:
        name = type(value).__name__
        return {_CLASS: name, **forms[name].write(value)}

    return _Form(read, write)


def _any_of(kinds: tuple[type, ...]) -> _Form:
    def checked(value: Any) -> Any:
        if type(value) not in kinds:
            raise _Refused("wrong_type", value, f"one of {', '.join(kind.__name__ for kind in kinds)} is needed")
        return _finite(value) if isinstance(value, float) else value

    return _Form(checked, checked)


def _items(form: _Form, made: Callable[[Any], Any]) -> _Form:
    return _Form(lambda values: made(_each(repeat(form), 0, _listed(values))), lambda values: _each(repeat(form), 1, values))


def _each(forms: Iterable[_Form], way: int, values: Any) -> list[Any]:
    """Every item by its form, in the way of `_Form`: 0 reads, 1 writes."""
    found: list[Any] = []
    try:
        for form, value in zip(forms, values, strict=False):
            found.append(form[way](value))
    except _Refused as refused:
        raise _below(str(len(found)), refused) from None
    return found


def _fixed(forms: list[_Form]) -> _Form:
    def read(values: Any) -> tuple[Any, ...]:
        if len(_listed(values)) != len(forms):
            raise _Refused("wrong_type", values, f"{len(forms)} items are needed")
        return tuple(_each(forms, 0, values))

    return _Form(read, lambda values: _each(forms, 1, values))


def _listed(values: Any) -> list[Any]:
    if not isinstance(values, list):
        raise _Refused("wrong_type", values, "a list is needed")
    return values


def _mapping(form: _Form) -> _Form:
    def read(value: Any) -> dict[str, Any]:
        if value.__class__ is not dict:
            raise _Refused("wrong_type", value, "an object is needed")
        return {name: form.read(item) for name, item in value.items()}

    return _Form(read, lambda value: {name: form.write(item) for name, item in value.items()})


def _no_data(value: Any) -> Any:
    raise TypeError(f"{type(value).__name__} cannot be written as JSON or read from it")


class _Array:
    """Stands for an array of float64, so that types can be resolved without numpy."""

    def __class_getitem__(cls, _: object) -> type["_Array"]:
        return cls


def _read_array(values: Any) -> Any:
    import numpy as np

    return np.array([_float(value) for value in _listed(values)], dtype=np.float64)


def _only_for_type_checkers() -> dict[str, Any]:
    """What some annotations name that their modules import for type checkers alone."""
    from gaugepoint.parts import Chamber
    from gaugepoint.stack import Contributor

    return {"np": types.SimpleNamespace(float64=float), "NDArray": _Array, "Chamber": Chamber, "Contributor": Contributor}
