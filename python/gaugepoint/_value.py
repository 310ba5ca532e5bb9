"""What the classes of the package have in common: they are frozen, compare by value, and can be shown, copied, pickled and written as JSON.

A class is declared as a frozen dataclass with slots, by `dataclass` from here and with `Value` as its base. A field that is a sequence is kept as a
tuple. The standard library would compile six
methods for each of the three hundred classes, which took most of the time of an import; here `Value` has five of them once, and only ``__init__`` is
compiled. For type checkers, `dataclasses.fields` and `dataclasses.replace` they are dataclasses like any other.
"""

import dataclasses
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import cache
from typing import TYPE_CHECKING, Any, ClassVar, NoReturn, TypeVar, cast, get_args, get_origin

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass

_A = TypeVar("_A")
_V = TypeVar("_V", bound="Value")

# of a longer sequence a repr shows the first few
_LONGEST = 8
_FIRST = 3
_LONGEST_TEXT = 200


class Value:
    """What is the same for every class of the package."""

    __slots__ = ()
    if TYPE_CHECKING:
        __dataclass_fields__: ClassVar[dict[str, dataclasses.Field[Any]]]

    def __setattr__(self, name: str, value: object) -> NoReturn:
        raise dataclasses.FrozenInstanceError(f"cannot assign to field {name!r}")

    def __delattr__(self, name: str) -> NoReturn:
        raise dataclasses.FrozenInstanceError(f"cannot delete field {name!r}")

    def __eq__(self, other: object) -> bool:
        if other.__class__ is not self.__class__:
            return NotImplemented
        return _values(self, _compared) == _values(other, _compared)

    def __hash__(self) -> int:
        return hash(_values(self, _hashed))

    def __repr__(self) -> str:
        shown = (f"{f.name}={brief(getattr(self, f.name))}" for f in dataclasses.fields(self) if f.repr)
        return f"{type(self).__qualname__}({', '.join(shown)})"

    def __reduce__(self) -> tuple[Any, ...]:
        """Copies and pickles are made anew from the fields, and refused where these would be."""
        return _again, (type(self), {f.name: getattr(self, f.name) for f in dataclasses.fields(self) if f.init})

    def to_json(self) -> str:
        """Give the fields as JSON on one line, under the names of the JSON of a report; what has its default is left out.

        Where a field may be of several classes, ``class`` says which.

        Returns
        -------
        str
            What `from_json` reads.

        Raises
        ------
        InputError
            When a number is not finite: JSON has no word for it.
        TypeError
            When a field is no data, as a callable is not.
        """
        from gaugepoint import _data

        return _data.written(self)

    @classmethod
    def from_json(cls: type[_V], text: str | bytes) -> _V:
        """Make the object from the JSON that `to_json` gave.

        Parameters
        ----------
        text : str or bytes
            The JSON.

        Returns
        -------
        Value
            An object of this class, equal to the one that was written.

        Raises
        ------
        InputError
            When the text is not JSON of this class, or its numbers are refused.
        """
        from gaugepoint import _data

        return _data.read_strictly(cls, text)

    def _repr_html_(self) -> str | None:
        """Give a table for notebooks."""
        from gaugepoint import _html

        return _html.of(self)


def brief(value: object) -> str:
    """Give a repr on one line, shortened where it is long: what is shortened has ``...`` and says how much there is.

    Parameters
    ----------
    value : object
        Any value.

    Returns
    -------
    str
        One line.
    """
    if isinstance(value, str):
        return repr(value) if len(value) <= _LONGEST_TEXT else f"{value[:_LONGEST_TEXT]!r}..."
    if type(value) in (tuple, list):
        return _brief_items(value)  # type: ignore[arg-type]
    if isinstance(value, dict):
        pairs = [f"{key!r}: {brief(item)}" for key, item in value.items()]
        return "{" + ", ".join(_some(pairs)) + "}"
    if hasattr(value, "dtype") and hasattr(value, "shape"):
        return f"<array of {value.dtype}, shape {value.shape}>"
    return repr(value)


def read_only(array: _A) -> _A:
    """Give the same array so that no one writes into it through what was given.

    Parameters
    ----------
    array : numpy.ndarray
        An array.

    Returns
    -------
    numpy.ndarray
        A view of it; what is no array is refused where it is used.
    """
    if not hasattr(array, "flags"):
        return array
    view: Any = cast(Any, array).view()
    view.flags.writeable = False
    return cast(_A, view)


def _brief_items(items: tuple[object, ...] | list[object]) -> str:
    shown = _some([brief(item) for item in items[:_LONGEST]], len(items))
    if isinstance(items, list):
        return "[" + ", ".join(shown) + "]"
    return "(" + ", ".join(shown) + ("," if len(items) == 1 else "") + ")"


def _some(shown: list[str], count: int | None = None) -> list[str]:
    count = len(shown) if count is None else count
    return shown if count <= _LONGEST else [*shown[:_FIRST], f"... {count} in all"]


def _values(owner: object, names_of: Callable[[Any], tuple[str, ...]]) -> tuple[object, ...]:
    return tuple(_by_value(owner, name) for name in names_of(type(owner)))


@cache
def _compared(kind: Any) -> tuple[str, ...]:
    return tuple(f.name for f in dataclasses.fields(kind) if f.compare)


@cache
def _hashed(kind: Any) -> tuple[str, ...]:
    return tuple(f.name for f in dataclasses.fields(kind) if (f.compare if f.hash is None else f.hash))


def _by_value(owner: object, name: str) -> object:
    """A field as it is compared: an array by its bits."""
    value = getattr(owner, name)
    if hasattr(value, "tobytes") and hasattr(value, "dtype"):
        return (str(value.dtype), value.shape, value.tobytes())
    return value


def _again(kind: type[_V], values: dict[str, Any]) -> _V:
    return kind(**values)


if not TYPE_CHECKING:

    def dataclass(*, frozen: bool, slots: bool, kw_only: bool = False) -> Callable[[type[_V]], type[_V]]:
        """Make a class as `dataclasses.dataclass` would: frozen and with slots, as every class of the package is."""
        if not (frozen and slots):
            raise TypeError("every class of the package is frozen and has slots")

        def made(kind: type[_V]) -> type[_V]:
            # a class below another must be declared frozen, or it is refused; it is frozen by `Value` all the same
            below = any(map(dataclasses.is_dataclass, kind.__bases__))
            kind = dataclasses.dataclass(init=False, repr=False, eq=False, frozen=below, slots=True, kw_only=kw_only)(kind)
            kind.__setattr__, kind.__delattr__ = Value.__setattr__, Value.__delattr__
            kind.__init__ = _initializer(kind)
            says = kind.__dataclass_params__
            says.init = says.repr = says.eq = says.frozen = True
            return kind

        return made


def _is_sequence(hint: Any) -> bool:
    if isinstance(hint, str):
        return hint.startswith("Sequence[")
    return any(get_origin(part) is Sequence for part in (hint, *get_args(hint)))


def _kept(given: Any) -> Any:
    """A sequence as a tuple, and those in it; what is none is refused where it is used."""
    if isinstance(given, str | bytes | Mapping | Value) or not isinstance(given, Iterable):
        return given
    return tuple(_kept(item) for item in (given.tolist() if hasattr(given, "tolist") else given))


def _initializer(kind: Any) -> Any:
    """``__init__`` of a class, from its fields: what `dataclasses` compiles for a frozen one."""
    known: dict[str, Any] = {"_set": object.__setattr__, "_kept": _kept}
    by_place, by_name, body = ["self"], list[str](), list[str]()
    for field in dataclasses.fields(kind):
        name, default = field.name, f"_default_{field.name}"
        has_default = field.default is not dataclasses.MISSING
        if has_default:
            known[default] = field.default
        if field.init:
            (by_name if field.kw_only else by_place).append(f"{name}={default}" if has_default else name)
            body.append(f"_set(self, {name!r}, {f'_kept({name})' if _is_sequence(field.type) else name})")
        elif has_default:
            body.append(f"_set(self, {name!r}, {default})")
    if hasattr(kind, "__post_init__"):
        body.append("self.__post_init__()")
    arguments = ", ".join([*by_place, *(["*", *by_name] if by_name else [])])
    exec(f"def __init__({arguments}):\n    " + "\n    ".join(body or ["pass"]), known)
    init = known["__init__"]
    init.__qualname__, init.__module__ = f"{kind.__qualname__}.__init__", kind.__module__
    init.__annotations__ = {f.name: f.type for f in dataclasses.fields(kind) if f.init} | {"return": None}
    return init
