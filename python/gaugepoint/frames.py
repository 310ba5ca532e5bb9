"""Many rows at once, in a frame of pandas or polars or a table of Arrow. The module is loaded without any of them; a frame brings its own.

`decide` gives every row its clearances and judges the one on the bench. What comes back is of the kind that was given, with every column and the
index that it had. ``python/docs/frames.md`` shows it.
"""

import importlib
from collections import Counter
from collections.abc import Callable, Hashable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import TYPE_CHECKING, Any, Generic, NamedTuple, Protocol, TypeVar

from gaugepoint import _gaugepoint, _value
from gaugepoint.batch import Law, RowsRefused, numbers, rows_refused
from gaugepoint.decision import decide_mm
from gaugepoint.error import InputError, at_door
from gaugepoint.report import Conformity, Rule

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = ["BenchLimits", "Decided", "Summary", "decide"]

_Frame = TypeVar("_Frame")

# what a row is made of, in the order of `gaugepoint.clearances`
_QUANTITIES = ("bore_mm", "piston_mm", "parts_temperature_c", "bore_temperature_c", "piston_temperature_c")
_ADDED = ("bench_mm", "running_mm", "decision", "status", "reason")
# endings of names that say a unit
_UNITS = {"mm", "um", "cm", "m", "in", "inch", "inches", "thou", "tenth", "tenths", "c", "f", "k"}
# from the worst upward: a clearance that comes nearer to the middle of its limits never goes down
_DECISIONS: tuple[Conformity, ...] = ("does not conform", "not proven", "conforms", "not judged")
_NOT_JUDGED = _DECISIONS.index("not judged")
# stands for a missing number while the others of its row are looked at: possible for every quantity, and within every law
_ANY = 20.0
# no clearance is larger: the largest bore that is accepted
_LARGEST_MM = 1100.0
# a clearance so near to where the decision changes is asked for itself where the decision rests on a probability, which need not rise with every
# last digit
_NEAR_MM = 1e-12
# rows at a time, where intermediate columns stay in a cache
_CHUNK = 1 << 15


@_value.dataclass(frozen=True, slots=True)
class BenchLimits(_value.Value):
    """What the clearance on the bench of every row is judged by, as `gaugepoint.decide_mm` judges one value."""

    lower_mm: float | None
    """Lower limit over the diameter; None where there is none."""
    upper_mm: float | None
    """Upper limit; None where there is none, at least one."""
    standard_uncertainty_mm: float
    """Standard uncertainty of the clearance, the same for every row."""
    rule: Rule = "proven"
    """Rule of decision."""
    at_least: float = 0.95
    """What the rule asks for, as in `gaugepoint.decide_mm`."""


@_value.dataclass(frozen=True, slots=True)
class Summary(_value.Value):
    """What became of the rows: each is judged, refused or missing."""

    rows: int
    """How many there are."""
    judged: int
    """Rows with a decision."""
    refused: int
    """Rows that are refused."""
    missing: int
    """Rows that lack a number, and are not refused for another."""
    decisions: dict[str, int] = field(hash=False)
    """Judged rows by what the decision says."""
    missing_cells: dict[str, int] = field(hash=False)
    """Missing cells by quantity, of those that have some."""
    error: RowsRefused | None = field(default=None, repr=False)
    """What a call without `partial` raises; None when no row is refused."""


@dataclass(frozen=True, slots=True)
class Decided(Generic[_Frame]):
    """A frame with its decisions, and what became of its rows."""

    frame: _Frame = field(repr=False)
    """The frame that was given with five more columns: ``bench_mm``, ``running_mm``, ``decision``, ``status`` and ``reason``."""
    summary: Summary
    """What became of the rows."""


def decide(
    frame: _Frame,
    bore_law: Law,
    piston_law: Law,
    bench: BenchLimits,
    *,
    columns: Mapping[str, Hashable] | None = None,
    same: Mapping[str, float] | None = None,
    partial: bool = False,
) -> Decided[_Frame]:
    """Give every row of a frame its clearances, and judge the one on the bench.

    Each row has the bits of `gaugepoint.clearances` and the decision of `gaugepoint.decide_mm`. A row that lacks a number has no results, and is
    counted; it is refused only for a number that it has. What the library of the frame calls missing is missing; any other number that is not finite
    is refused. The running clearance is of freely growing parts and not judged: engines run for years with one below zero.

    Parameters
    ----------
    frame : pandas.DataFrame, polars.DataFrame or pyarrow.Table
        The rows; it is not changed. The columns that are read hold float64 or integers.
    bore_law, piston_law : MeanExpansion or CubicStrain
        How the parts grow.
    bench : BenchLimits
        What the clearance on the bench is judged by.
    columns : mapping, optional
        Names of the columns of ``bore_mm``, ``piston_mm``, ``parts_temperature_c``, ``bore_temperature_c`` and ``piston_temperature_c``, where they
        have others. A name that ends in another unit is refused.
    same : mapping, optional
        For any of the five a number that holds for every row, in place of a column.
    partial : bool, optional
        Gives refused rows their status and reason, and the others their results.

    Returns
    -------
    Decided
        The frame with its results, and what became of the rows. ``decision`` is ``conforms``, ``does not conform``, ``not proven``, or ``not judged``
        for a refused row; ``status`` is 0, or the number of the kind of refusal as the C interface has it; ``reason`` says why a row is refused or
        what it lacks.

    Raises
    ------
    RowsRefused
        When a row is refused, unless `partial`; it names the first rows, counted from 0, and their reasons.
    InputError
        When a column is not there or there twice, or has the name of another unit or of a result; when a law or a limit is refused.
    TypeError
        When it is no such frame, or a column holds something else, as text or float32.

    Examples
    --------
    >>> import gaugepoint
    >>> from gaugepoint import frames
    >>> iron, alloy = gaugepoint.MeanExpansion(11.4e-6), gaugepoint.MeanExpansion(20.5e-6)
    >>> limits = frames.BenchLimits(0.03, 0.05, standard_uncertainty_mm=0.002)
    >>> try:
    ...     frames.decide([86.041, 86.006], iron, alloy, limits)
    ... except TypeError as refused:
    ...     print(refused)
    frame: a pandas.DataFrame, polars.DataFrame or pyarrow.Table is needed, not list
    """
    return decided(_library(frame), bore_law, piston_law, bench, columns or {}, same or {}, partial)


def decided(
    library: "_Library", bore_law: Law, piston_law: Law, bench: BenchLimits, columns: Mapping[str, Hashable], same: Mapping[str, float], partial: bool
) -> Decided[Any]:
    """Decide the rows of whatever has columns.

    Parameters
    ----------
    library : _Library
        The rows.
    bore_law, piston_law, bench, columns, same, partial
        As in `decide`.

    Returns
    -------
    Decided
        The rows as they are joined with their results, and what became of them.

    Raises
    ------
    RowsRefused, InputError, TypeError
        As in `decide`.
    """
    given = _columns(library, columns, same)
    edges = _edges(bench)
    rows = _Rows(numbers("bore_law", bore_law), numbers("piston_law", piston_law), given)
    if rows.error and not partial:
        raise rows.error
    results = _results(rows, bench, edges)
    return Decided(library.joined(results), _summary(results, rows))


class _Column(NamedTuple):
    """A column of numbers."""

    values: "NDArray[np.float64]"
    """The numbers, NaN for a missing one."""
    missing: "Callable[[], NDArray[np.bool_]]"
    """Says which are missing."""
    lacks: bool | None
    """Whether one is missing; None when nobody knows without looking. A row that lacks a number is refused by the library: then it is looked at."""


@dataclass(slots=True)
class _Results:
    """Results of all rows, column by column. A negative code is no text."""

    bench_mm: "NDArray[np.float64]"
    running_mm: "NDArray[np.float64]"
    decision: "NDArray[np.int8]"
    status: "NDArray[np.int32]"
    reason: "NDArray[np.integer[Any]]"
    reasons: list[str]
    missing: "NDArray[np.bool_]"

    @property
    def whole(self) -> bool:
        """Whether every row has its results."""
        return not self.reasons


class _Rows:
    """The rows as the library computes them, with what it refuses and what is missing."""

    def __init__(self, bore_law: list[float], piston_law: list[float], given: dict[str, _Column]) -> None:
        import numpy as np

        self.laws = bore_law, piston_law
        self.values = [column.values for column in given.values()]
        self.missing: dict[str, NDArray[np.bool_]] = {}
        self.error: RowsRefused | None = None
        rows = len(self.values[0])
        self.bench_mm, self.running_mm, self.status = np.empty(rows), np.empty(rows), np.zeros(rows, np.int32)
        if any(column.lacks for column in given.values()) or self._computed(False)[1]:
            self._with_statuses(given)

    def _with_statuses(self, given: dict[str, _Column]) -> None:
        import numpy as np

        masks = {name: column.missing() for name, column in given.items() if column.lacks is not False}
        self.missing = {name: mask for name, mask in masks.items() if mask.any()}
        for k, name in enumerate(given):
            if name in self.missing:
                self.values[k] = np.where(self.missing[name], _ANY, self.values[k])
        status, refused, reasons = self._computed(True)
        if refused:
            self.status, self.error = status, rows_refused(refused, reasons)

    def _computed(self, partial: bool) -> Any:
        bore, piston, parts_c, bore_c, piston_c = self.values
        out = self.bench_mm, self.running_mm
        return _gaugepoint.clearances(*self.laws, bore, piston, parts_c, bore_c, piston_c, out, partial)[2:]

    def refusal(self, row: int) -> str:
        """Why a row is refused, in words."""
        bore, piston, parts_c, bore_c, piston_c = (column[row : row + 1] for column in self.values)
        reasons = _gaugepoint.clearances(*self.laws, bore, piston, parts_c, bore_c, piston_c, None, True)[4]
        field, message = reasons[0][1].field, str(reasons[0][1])
        return field.removesuffix("/0") + message.removeprefix(field)


def _results(rows: _Rows, bench: BenchLimits, edges: "_Edges") -> _Results:
    import numpy as np

    count = len(rows.bench_mm)
    decision = _decisions(rows.bench_mm, bench, edges)
    missing = np.zeros(count, np.bool_)
    texts: dict[int, str] = {}
    for name, mask in rows.missing.items():
        missing |= mask
        texts |= {row: f"{texts[row]}, {name}" if row in texts else f"missing: {name}" for row in np.flatnonzero(mask).tolist()}
    if rows.error:
        refused = np.flatnonzero(rows.status)
        texts |= {row: rows.refusal(row) for row in refused.tolist()}
        decision[refused] = _NOT_JUDGED
        missing[refused] = False
    if rows.missing:
        decision[missing] = -1
        rows.bench_mm[missing] = rows.running_mm[missing] = np.nan
    reasons = {text: code for code, text in enumerate(dict.fromkeys(texts.values()))}
    reason = np.full(count, -1, np.min_scalar_type(-len(reasons) - 1))
    reason[list(texts)] = [reasons[text] for text in texts.values()]
    return _Results(rows.bench_mm, rows.running_mm, decision, rows.status, reason, list(reasons), missing)


def _summary(results: _Results, rows: _Rows) -> Summary:
    import numpy as np

    parts = np.split(results.decision, range(_CHUNK, len(results.decision), _CHUNK))
    counted: dict[str, int] = {
        name: sum(int(np.count_nonzero(part == code)) for part in parts) for code, name in enumerate(_DECISIONS)
    }
    refused = counted.pop("not judged")
    missing = int(np.count_nonzero(results.missing))
    cells = {name: int(np.count_nonzero(mask)) for name, mask in rows.missing.items()}
    count = len(results.decision)
    return Summary(count, count - refused - missing, refused, missing, counted, cells, rows.error)


class _Edges(NamedTuple):
    """Where the decision on a clearance changes."""

    first: int
    """Decision on the smallest clearance."""
    up: list[float]
    """Clearances from which on it is one better."""
    down: list[float]
    """Clearances from which on it is one worse."""


@lru_cache(maxsize=64)
def _edges(bench: BenchLimits) -> _Edges:
    """Found by asking for decisions alone: no rule stands here again."""
    # refuses the limits, before a middle is made of them
    _decision(0.0, bench)
    low, high = bench.lower_mm, bench.upper_mm
    middle = -_LARGEST_MM if low is None else _LARGEST_MM if high is None else low + (high - low) / 2.0
    first, best, last = (_decision(value, bench) for value in (-_LARGEST_MM, middle, _LARGEST_MM))
    up = [_change(-_LARGEST_MM, middle, lambda x: _decision(x, bench) >= better) for better in range(first + 1, best + 1)]
    down = [_change(middle, _LARGEST_MM, lambda x: _decision(x, bench) < better) for better in range(last + 1, best + 1)]
    return _Edges(first, up, down)


def _decision(bench_mm: float, bench: BenchLimits) -> int:
    decision = decide_mm(bench_mm, bench.standard_uncertainty_mm, bench.lower_mm, bench.upper_mm, bench.rule, bench.at_least)
    return _DECISIONS.index(decision.result)


def _change(low: float, high: float, holds: Callable[[float], bool]) -> float:
    """The first number above `low` for which it holds, as it does for `high`."""
    while low < (middle := low + (high - low) / 2.0) < high:
        low, high = (low, middle) if holds(middle) else (middle, high)
    return high


def _decisions(bench_mm: "NDArray[np.float64]", bench: BenchLimits, edges: _Edges) -> "NDArray[np.int8]":
    import numpy as np

    near_mm = _NEAR_MM if bench.rule == "conformance_probability" else 0.0
    changes = [*((edge, np.add) for edge in edges.up), *((edge, np.subtract) for edge in edges.down)]
    codes = np.full(len(bench_mm), edges.first, np.int8)
    for start in range(0, len(bench_mm), _CHUNK):
        values, code = bench_mm[start : start + _CHUNK], codes[start : start + _CHUNK]
        for edge, change in changes:
            change(code, (values >= edge).view(np.int8), out=code)
        for edge, _ in changes if near_mm else ():
            for row in np.flatnonzero(np.abs(values - edge) <= near_mm):
                code[row] = _decision(float(values[row]), bench)
    return codes


class _Library(Protocol):
    """What is asked of a frame, whichever library it is of."""

    @property
    def frame(self) -> Any:
        """The frame itself."""

    def names(self) -> list[Hashable]:
        """Names of its columns."""

    def column(self, name: Hashable) -> _Column | str:
        """A column; its type in words when it is neither float64 nor integer."""

    def joined(self, results: _Results) -> Any:
        """The frame with its results."""


@dataclass(frozen=True, slots=True)
class _Pandas:
    frame: Any

    def names(self) -> list[Hashable]:
        return list(self.frame.columns)

    def column(self, name: Hashable) -> _Column | str:
        import numpy as np

        series = self.frame[name]
        # types with a mask, and types of Arrow, say what their numbers are
        kind = getattr(series.dtype, "numpy_dtype", series.dtype)
        if not isinstance(kind, np.dtype) or not (kind == np.float64 or kind.kind in "iu"):
            return str(series.dtype)
        plain = isinstance(series.dtype, np.dtype)
        values = series.to_numpy() if plain else series.to_numpy(dtype=np.float64, na_value=np.nan)
        return _Column(values.astype(np.float64, copy=False), lambda: series.isna().to_numpy(), None)

    def joined(self, results: _Results) -> Any:
        pandas = importlib.import_module("pandas")

        def series(values: Any) -> Any:
            # a series is taken as it is, an array is copied
            return pandas.Series(values, index=self.frame.index, copy=False)

        return self.frame.assign(
            bench_mm=series(results.bench_mm),
            running_mm=series(results.running_mm),
            decision=series(pandas.Categorical.from_codes(results.decision, _DECISIONS)),
            status=series(pandas.arrays.IntegerArray(results.status, results.missing)),
            reason=series(pandas.Categorical.from_codes(results.reason, results.reasons)),
        )


@dataclass(frozen=True, slots=True)
class _Polars:
    frame: Any

    def names(self) -> list[Hashable]:
        return list(self.frame.columns)

    def column(self, name: Hashable) -> _Column | str:
        import numpy as np

        polars = importlib.import_module("polars")
        series = self.frame[name]
        if series.dtype != polars.Float64 and not series.dtype.is_integer():
            return str(series.dtype)
        return _Column(series.to_numpy().astype(np.float64, copy=False), lambda: series.is_null().to_numpy(), series.null_count() > 0)

    def joined(self, results: _Results) -> Any:
        polars = importlib.import_module("polars")
        series = polars.Series

        def words(codes: Any, texts: Sequence[str], dtype: Any) -> Any:
            if not texts:
                return polars.repeat(None, len(codes), dtype=dtype, eager=True)
            places = series(codes)
            return series(texts, dtype=dtype).gather(places if results.whole else places.set(places < 0, None))

        status = series(results.status)
        return self.frame.with_columns(
            bench_mm=series(results.bench_mm, nan_to_null=not results.whole),
            running_mm=series(results.running_mm, nan_to_null=not results.whole),
            decision=words(results.decision, _DECISIONS, polars.Enum(_DECISIONS)),
            status=status if results.whole else status.set(series(results.missing), None),
            reason=words(results.reason, results.reasons, polars.String),
        )


@dataclass(frozen=True, slots=True)
class _Arrow:
    frame: Any

    def names(self) -> list[Hashable]:
        return list(self.frame.column_names)

    def column(self, name: Hashable) -> _Column | str:
        import numpy as np

        types = importlib.import_module("pyarrow.types")
        column = self.frame[name]
        if not types.is_float64(column.type) and not types.is_integer(column.type):
            return str(column.type)
        return _Column(column.to_numpy().astype(np.float64, copy=False), lambda: column.is_null().to_numpy(), column.null_count > 0)

    def joined(self, results: _Results) -> Any:
        arrow = importlib.import_module("pyarrow")

        def codes(values: Any) -> Any:
            return arrow.array(values, mask=None if results.whole else values < 0)

        added = (
            arrow.array(results.bench_mm, from_pandas=not results.whole),
            arrow.array(results.running_mm, from_pandas=not results.whole),
            arrow.DictionaryArray.from_arrays(codes(results.decision), list(_DECISIONS)),
            arrow.array(results.status, mask=None if results.whole else results.missing),
            arrow.nulls(len(results.reason), arrow.string()) if results.whole else arrow.array(results.reasons).take(codes(results.reason)),
        )
        frame = self.frame
        for name, column in zip(_ADDED, added, strict=True):
            frame = frame.append_column(name, column)
        return frame


_LIBRARIES: dict[tuple[str, str], Callable[[Any], _Library]] = {
    ("pandas", "DataFrame"): _Pandas,
    ("polars", "DataFrame"): _Polars,
    ("pyarrow", "Table"): _Arrow,
}


def _library(frame: object) -> _Library:
    for of in type(frame).__mro__:
        made = _LIBRARIES.get((of.__module__.partition(".")[0], of.__name__))
        if made:
            return made(frame)
    raise TypeError(f"frame: a pandas.DataFrame, polars.DataFrame or pyarrow.Table is needed, not {type(frame).__name__}")


def _columns(library: _Library, named: Mapping[str, Hashable], same: Mapping[str, float]) -> dict[str, _Column]:
    """The columns of the five quantities, in their order."""
    names = Counter(library.names())
    for name, count in names.items():
        if count > 1:
            raise at_door("repeated", "frame", str(name), "two columns have this name")
        if name in _ADDED:
            raise at_door("contradiction", "frame", str(name), "it is the name of a result: rename the column")
    for parameter, given in (("columns", named), ("same", same)):
        for quantity in given:
            if quantity not in _QUANTITIES:
                raise at_door("unknown_field", parameter, str(quantity), f"accepted: {', '.join(_QUANTITIES)}")
    for quantity in named:
        if quantity in same:
            raise at_door("contradiction", "same", quantity, "it is a column, too")
    for quantity, number in same.items():
        if isinstance(number, bool) or not isinstance(number, float | int):
            raise TypeError(f"same: {quantity}: a number is needed, not {type(number).__name__}")
    return {q: _constant(len(library.frame), same[q]) if q in same else _column(library, names, q, named) for q in _QUANTITIES}


def _constant(rows: int, number: float) -> _Column:
    import numpy as np

    return _Column(np.full(rows, number, np.float64), lambda: np.zeros(rows, np.bool_), False)


def _column(library: _Library, names: Counter[Hashable], quantity: str, named: Mapping[str, Hashable]) -> _Column:
    name = named.get(quantity, quantity)
    what, _, unit = quantity.rpartition("_")
    _, _, ending = str(name).lower().rpartition("_")
    if ending != unit and ending in _UNITS:
        raise at_door("wrong_unit", f"columns/{quantity}", str(name), f"its name has another unit; {unit} is needed")
    if name not in names:
        raise _not_there(names, what, unit, str(name))
    column = library.column(name)
    if isinstance(column, str):
        raise TypeError(f"{name}: a column of float64 or of integers is needed, not of {column}")
    return column


def _not_there(names: Counter[Hashable], what: str, unit: str, name: str) -> InputError:
    if what in names:
        reason = f"the name of the column says no unit: if it is in {unit}, name it in columns"
        return at_door("missing_unit", "frame", what, reason)
    for other in _UNITS - {unit}:
        if f"{what}_{other}" in names:
            return at_door("wrong_unit", "frame", f"{what}_{other}", f"{name} is needed: convert the column")
    return at_door("missing_field", "frame", name, "there is no such column; name it in columns, or give one number for all rows in same")
