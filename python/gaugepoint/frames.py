"""Many rows at once, in a frame of pandas or polars or a table of Arrow. The module is loaded without any of them; a frame brings its own.

`decide` gives every row its sizes at 20 C where it has readings, its clearances, and judges the one on the bench. What comes back is of the kind that
was given, with every column and the index that it had. ``python/docs/frames.md`` shows it.
"""

import copy
import importlib
from collections import Counter
from collections.abc import Callable, Hashable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import TYPE_CHECKING, Any, Generic, NamedTuple, Protocol, TypeVar

from gaugepoint import _gaugepoint, _value
from gaugepoint._rows import PARTS_C, QUANTITIES, RUNNING, WAYS, Column, Part, Rows
from gaugepoint.batch import Law, RowsRefused, numbers
from gaugepoint.decision import decide_mm
from gaugepoint.error import InputError, at_door
from gaugepoint.report import Conformity, Rule

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = ["BenchLimits", "Decided", "Summary", "decide"]

_Frame = TypeVar("_Frame")

# what is added to a row behind its numbers
_WORDS = ("decision", "status", "reason")
# endings of names that say a unit
_UNITS = {"mm", "um", "cm", "m", "in", "inch", "inches", "thou", "tenth", "tenths", "c", "f", "k"}
# from the worst upward: a clearance that comes nearer to the middle of its limits never goes down
_DECISIONS: tuple[Conformity, ...] = ("does not conform", "not proven", "conforms", "not judged")
_NOT_JUDGED = _DECISIONS.index("not judged")
# no clearance is larger: the largest bore that is accepted
_LARGEST_MM = 1100.0
# a clearance so near to where the decision changes is asked for itself where the decision rests on a probability, which need not rise with every
# last digit
_NEAR_MM = 1e-12


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
    """The frame that was given with its results: ``bore_at_20_mm`` and ``piston_at_20_mm`` where readings are given, then ``bench_mm``,
    ``running_mm``, ``decision``, ``status`` and ``reason``."""
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
    """Give every row of a frame its sizes at 20 C and its clearances, and judge the one on the bench.

    A bore or piston is given as ``bore_mm``, its diameter at ``parts_temperature_c``; as a reading, by the parameters of `gaugepoint.size_at_20_mm`
    or `gaugepoint.bore_size_at_20_mm` (of bores) with the part before each, as ``bore_deviation_mm``; or as ``bore_size_at_20_mm``. Rows with a size
    at 20 C may stand among rows with readings; a row that has both of one part is refused.

    Each row has the bits of these functions and of `gaugepoint.clearances`, and the decision of `gaugepoint.decide_mm`. A row that lacks a number has
    no clearances, and is counted; it is refused only for a number that it has. What the library of the frame calls missing is missing; any other
    number that is not finite is refused. The running clearance is of freely growing parts and not judged: engines run for years with one below zero.

    Parameters
    ----------
    frame : pandas.DataFrame, polars.DataFrame or pyarrow.Table
        The rows; it is not changed. The columns that are read hold float64 or integers.
    bore_law, piston_law : MeanExpansion or CubicStrain
        How the parts grow.
    bench : BenchLimits
        What the clearance on the bench is judged by.
    columns : mapping, optional
        Names of the columns of what the parts are given by, of ``bore_temperature_c`` and of ``piston_temperature_c``, the running parts, where they
        have others. A name that ends in another unit is refused, and so is one that nothing is computed from.
    same : mapping, optional
        For any of them a number that holds for every row, in place of a column. The expansion of a part that is read is that of its law where that
        is a `gaugepoint.MeanExpansion` and nothing else is said.
    partial : bool, optional
        Gives refused rows their status and reason, and the others their results.

    Returns
    -------
    Decided
        The frame with its results, and what became of the rows. ``bore_at_20_mm`` and ``piston_at_20_mm`` are added where there are readings.
        ``decision`` is ``conforms``, ``does not conform``, ``not proven``, or ``not judged`` for a refused row; ``status`` is 0, or the number of the
        kind of refusal as the C interface has it; ``reason`` says why a row is refused or what it lacks.

    Raises
    ------
    RowsRefused
        When a row is refused, unless `partial`; it names the first rows, counted from 0, and their reasons.
    InputError
        When a column is not there or there twice, or has the name of another unit or of a result; when a part is given in two ways, or one part at
        the temperature of the parts and the other at 20 C; when a law or a limit is refused.
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
    edges = _edges(bench)
    laws = numbers("bore_law", bore_law), numbers("piston_law", piston_law)
    parts, given = _given(library, columns, same, laws)
    rows = Rows(laws, parts, given, len(library.frame), lambda bench_mm: _decisions(bench_mm, bench, edges))
    error = rows.error()
    if error and not partial:
        raise error
    results = _results(rows, parts)
    return Decided(library.joined(results), _summary(results, rows, error))


@dataclass(slots=True)
class _Results:
    """Results of all rows, column by column. A negative code is no text."""

    numbers: "dict[str, NDArray[np.float64]]"
    decision: "NDArray[np.int8]"
    status: "NDArray[np.int32]"
    reason: "NDArray[np.integer[Any]]"
    reasons: list[str]
    missing: "NDArray[np.bool_]"

    @property
    def whole(self) -> bool:
        """Whether every row has its results."""
        return not self.reasons


def _results(rows: Rows, parts: Sequence[Part]) -> _Results:
    import numpy as np

    missing = rows.lacks(list(rows.missing))
    texts: dict[int, str] = {}
    for name, mask in rows.missing.items():
        texts |= {row: f"{texts[row]}, {name}" if row in texts else f"missing: {name}" for row in np.flatnonzero(mask).tolist()}
    clearances = {"bench_mm": rows.bench_mm, "running_mm": rows.running_mm}
    if rows.refused:
        texts |= {row: str(error) for row, error in rows.refusals()}
        refused = rows.status != 0
        rows.decision[refused] = _NOT_JUDGED
        missing[refused] = False
        for values in (*rows.sizes.values(), *clearances.values()):
            values[refused] = np.nan
    if rows.missing:
        rows.decision[missing] = -1
        for part in parts:
            if part.way:
                rows.sizes[part.result][rows.lacks(part.way.quantities)] = np.nan
        for values in clearances.values():
            values[missing] = np.nan
    reasons = {text: code for code, text in enumerate(dict.fromkeys(texts.values()))}
    reason = np.full(len(missing), -1, np.min_scalar_type(-len(reasons) - 1))
    reason[list(texts)] = [reasons[text] for text in texts.values()]
    return _Results(rows.sizes | clearances, rows.decision, rows.status, reason, list(reasons), missing)


def _summary(results: _Results, rows: Rows, error: RowsRefused | None) -> Summary:
    import numpy as np

    counted: dict[str, int] = dict(zip(_DECISIONS, _gaugepoint.counted(results.decision, _NOT_JUDGED), strict=False))
    missing = int(np.count_nonzero(results.missing)) if rows.missing else 0
    cells = {name: int(np.count_nonzero(mask)) for name, mask in rows.missing.items()}
    return Summary(len(results.decision), sum(counted.values()), rows.refused, missing, counted, cells, error)


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
    codes = _gaugepoint.steps(bench_mm, edges.first, edges.up, edges.down)
    for edge in (*edges.up, *edges.down) if near_mm else ():
        for row in np.flatnonzero(np.abs(bench_mm - edge) <= near_mm):
            codes[row] = _decision(float(bench_mm[row]), bench)
    return codes


class _Library(Protocol):
    """What is asked of a frame, whichever library it is of."""

    @property
    def frame(self) -> Any:
        """The frame itself."""

    def names(self) -> list[Hashable]:
        """Names of its columns."""

    def column(self, name: Hashable) -> Column | str:
        """A column; its type in words when it is neither float64 nor integer."""

    def joined(self, results: _Results) -> Any:
        """The frame with its results."""


@dataclass(frozen=True, slots=True)
class _Pandas:
    frame: Any

    def names(self) -> list[Hashable]:
        return list(self.frame.columns)

    def column(self, name: Hashable) -> Column | str:
        import numpy as np

        series = self.frame[name]
        # types with a mask, and types of Arrow, say what their numbers are
        kind = getattr(series.dtype, "numpy_dtype", series.dtype)
        if not isinstance(kind, np.dtype) or not (kind == np.float64 or kind.kind in "iu"):
            return str(series.dtype)
        if isinstance(series.dtype, np.dtype):
            values = series.to_numpy().astype(np.float64, copy=False)
            return Column(values, lambda: np.isnan(values), None if kind.kind == "f" else False)
        return Column(series.to_numpy(dtype=np.float64, na_value=np.nan), lambda: series.isna().to_numpy(), None)

    def joined(self, results: _Results) -> Any:
        pandas = importlib.import_module("pandas")

        added = {
            **results.numbers,
            "decision": pandas.Categorical.from_codes(results.decision, dtype=_categories(), validate=False),
            "status": pandas.arrays.IntegerArray(results.status, results.missing),
            "reason": pandas.Categorical.from_codes(results.reason, results.reasons, validate=False),
        }
        beside = pandas.DataFrame(added, index=self.frame.index, copy=False)
        # columns that are assigned one after the other take twice the time
        frame = pandas.concat([self.frame, beside.rename_axis(columns=self.frame.columns.name)], axis=1)
        frame.attrs = copy.deepcopy(self.frame.attrs)
        return frame


@lru_cache(maxsize=1)
def _categories() -> Any:
    """The words of decisions; making them takes as long as a column of codes."""
    return importlib.import_module("pandas").CategoricalDtype(_DECISIONS)


@dataclass(frozen=True, slots=True)
class _Polars:
    frame: Any

    def names(self) -> list[Hashable]:
        return list(self.frame.columns)

    def column(self, name: Hashable) -> Column | str:
        import numpy as np

        polars = importlib.import_module("polars")
        series = self.frame[name]
        if series.dtype != polars.Float64 and not series.dtype.is_integer():
            return str(series.dtype)
        lacks = series.null_count() > 0
        # a column without gaps is not copied
        whole = series.cast(polars.Float64).fill_null(float("nan")) if lacks else series
        return Column(whole.to_numpy().astype(np.float64, copy=False), lambda: series.is_null().to_numpy(), lacks)

    def joined(self, results: _Results) -> Any:
        import numpy as np

        polars = importlib.import_module("polars")
        series = polars.Series
        words, status = series(_DECISIONS, dtype=polars.Enum(_DECISIONS)), series(results.status)
        decision = words.new_from_index(0, len(results.decision))
        # one word after the other takes half the time of gathering them
        for code in range(1, _NOT_JUDGED if results.whole else len(_DECISIONS)):
            decision = words[code : code + 1].zip_with(series(results.decision == code), decision)
        # most rows have no reason
        reason = polars.repeat(None, len(results.reason), dtype=polars.String, eager=True)
        if not results.whole:
            missing, rows = series(results.missing), np.flatnonzero(results.reason >= 0)
            decision, status = decision.set(missing, None), status.set(missing, None)
            reason = reason.scatter(series(rows), series(results.reasons).gather(series(results.reason[rows])))
        return self.frame.with_columns(
            **{name: series(values, nan_to_null=not results.whole) for name, values in results.numbers.items()},
            decision=decision,
            status=status,
            reason=reason,
        )


@dataclass(frozen=True, slots=True)
class _Arrow:
    frame: Any

    def names(self) -> list[Hashable]:
        return list(self.frame.column_names)

    def column(self, name: Hashable) -> Column | str:
        import numpy as np

        types = importlib.import_module("pyarrow.types")
        column = self.frame[name]
        if not types.is_float64(column.type) and not types.is_integer(column.type):
            return str(column.type)
        return Column(column.to_numpy().astype(np.float64, copy=False), lambda: column.is_null().to_numpy(), column.null_count > 0)

    def joined(self, results: _Results) -> Any:
        import numpy as np

        arrow = importlib.import_module("pyarrow")

        def codes(values: Any) -> Any:
            return arrow.array(values, mask=None if results.whole else values < 0)

        added = {
            **{name: arrow.array(values, mask=None if results.whole else np.isnan(values)) for name, values in results.numbers.items()},
            "decision": arrow.DictionaryArray.from_arrays(codes(results.decision), list(_DECISIONS), safe=False),
            "status": arrow.array(results.status, mask=None if results.whole else results.missing),
            "reason": arrow.nulls(len(results.reason), arrow.string()) if results.whole else arrow.array(results.reasons).take(codes(results.reason)),
        }
        frame = self.frame
        for name, column in added.items():
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


def _given(
    library: _Library, named: Mapping[str, Hashable], same: Mapping[str, float], laws: Sequence[list[float]]
) -> tuple[list[Part], dict[str, Column]]:
    """Where the diameters come from, and the columns that are read for them."""
    names = Counter(library.names())
    for name, count in names.items():
        if count > 1:
            raise at_door("repeated", "frame", str(name), "two columns have this name")
    for parameter, given in (("columns", named), ("same", same)):
        for quantity in given:
            if quantity not in QUANTITIES:
                raise at_door("unknown_field", parameter, str(quantity), f"accepted: {', '.join(QUANTITIES)}")
    for quantity in named:
        if quantity in same:
            raise at_door("contradiction", "same", quantity, "it is a column, too")
    for quantity, number in same.items():
        if isinstance(number, bool) or not isinstance(number, float | int):
            raise TypeError(f"same: {quantity}: a number is needed, not {type(number).__name__}")
    parts, constants = _parts({*names, *named, *same}, laws)
    for name in ("bench_mm", "running_mm", *_WORDS, *(part.result for part in parts if part.way)):
        if name in names:
            raise at_door("contradiction", "frame", name, "it is the name of a result: rename the column")
    of_parts = [quantity for part in parts for quantity in part.quantities]
    read = dict.fromkeys((*of_parts, PARTS_C, *RUNNING))
    for parameter, given in (("columns", named), ("same", same)):
        for quantity in given:
            if quantity not in read or quantity in constants:
                raise at_door("contradiction", parameter, str(quantity), "nothing is computed from it, as the parts are given")
    constants |= same
    return parts, {q: _constant(len(library.frame), constants[q]) if q in constants else _column(library, names, q, named) for q in read}


def _parts(given: set[Hashable], laws: Sequence[list[float]]) -> tuple[list[Part], dict[str, float]]:
    """Bore and piston by what is given of them, and the numbers that follow from that."""
    parts, constants = [], {}
    for part, law in zip(WAYS, laws, strict=True):
        ways = [way for way in WAYS[part] if way.quantities[0] in given]
        measured, size = f"{part}_mm", f"{part}_size_at_20_mm"
        heads = [*(way.quantities[0] for way in ways), *(name for name in (measured, size) if name in given)]
        if len(ways) > 1 or (measured in given and len(heads) > 1):
            raise at_door("contradiction", "frame", heads[1], f"{heads[0]} is given, too: one of them is needed")
        parts.append(Part(part, size if size in given else None if ways else measured, ways[0] if ways else None))
        # a part grows by its law, unless a reading says by what
        expansion = ways[0].quantities[-1] if ways else None
        if expansion and expansion not in given and len(law) == 1:
            constants[expansion] = law[0]
    at_20 = [part for part in parts if part.given != f"{part.name}_mm"]
    other = next((part for part in parts if part not in at_20), None)
    if at_20 and other and other.given in given:
        reason = f"it is a diameter at {PARTS_C}, and of the {at_20[0].name} there is a reading or a size at 20 C: give both parts so"
        raise at_door("contradiction", "frame", f"{other.name}_mm", reason)
    if at_20:
        constants[PARTS_C] = 20.0
    return parts, constants


def _constant(rows: int, number: float) -> Column:
    import numpy as np

    return Column(float(number), lambda: np.zeros(rows, np.bool_), False)


def _column(library: _Library, names: Counter[Hashable], quantity: str, named: Mapping[str, Hashable]) -> Column:
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
