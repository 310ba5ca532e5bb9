"""Rows of readings to sizes at 20 C and clearances, with what they lack and why they are refused; a stretch of rows at a time.

The numbers are those of the flat functions and of `gaugepoint.clearances`; here stands only what goes into which.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import islice
from typing import TYPE_CHECKING, Any, NamedTuple

from gaugepoint import _gaugepoint
from gaugepoint.batch import RowsRefused, rows_refused
from gaugepoint.error import DATA, InputError, at_door

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = ["QUANTITIES", "RUNNING", "WAYS", "Column", "Part", "Rows", "Way"]


class Way(NamedTuple):
    """How a size at 20 C comes from a reading."""

    function: Callable[..., Any]
    """The flat function."""
    quantities: tuple[str, ...]
    """What it is called with, in the order of its parameters: the reading first, the expansion of the part last."""


_READ = "reading_mm zero_error_mm gauge_temperature_c gauge_expansion_per_k part_temperature_c part_expansion_per_k"
_DIALLED = """
    deviation_mm setting_mm ring_temperature_c ring_expansion_per_k set_temperature_c set_expansion_per_k used_temperature_c used_expansion_per_k
    block_temperature_c block_expansion_per_k
"""


def _way(function: Callable[..., Any], part: str, parameters: str) -> Way:
    return Way(function, tuple(f"{part}_{parameter}" for parameter in parameters.split()))


WAYS = {
    "bore": (_way(_gaugepoint.size_at_20_mm, "bore", _READ), _way(_gaugepoint.bore_size_at_20_mm, "bore", _DIALLED)),
    "piston": (_way(_gaugepoint.size_at_20_mm, "piston", _READ),),
}
PARTS_C, *RUNNING = "parts_temperature_c", "bore_temperature_c", "piston_temperature_c"
# what a row may be made of
QUANTITIES = (
    "bore_mm",
    "piston_mm",
    PARTS_C,
    *RUNNING,
    *dict.fromkeys(name for part, ways in WAYS.items() for name in (f"{part}_size_at_20_mm", *(q for way in ways for q in way.quantities))),
)
# stands for a missing number while the others of its row are looked at: possible for its quantity, and within every law
_ANY, _ANY_EXPANSION, _ANY_ERROR = 20.0, 1e-5, 0.0
# the number that a row has which gives a size and a reading of one part
_CONTRADICTION = 305
# reasons that an error names
_NAMED = 8
# rows at a time: what is computed of them is still in a cache when it is decided, and a call costs nothing beside them
_STRETCH = 1 << 17


class Column(NamedTuple):
    """A column of numbers."""

    values: "NDArray[np.float64] | float"
    """The numbers, NaN for a missing one; or one that holds for every row."""
    missing: "Callable[[], NDArray[np.bool_]]"
    """Says which are missing."""
    lacks: bool | None
    """Whether one is missing; None when nobody knows without looking. A row that lacks a number is refused by the library: then it is looked at."""


class Part(NamedTuple):
    """Where the diameter of a bore or piston comes from: from one of both, or of every row from one of both."""

    name: str
    """Bore or piston."""
    given: str | None
    """The quantity that is a diameter as the clearances take it."""
    way: Way | None
    """How it comes from a reading."""

    @property
    def result(self) -> str:
        """Name of the sizes that are computed."""
        return f"{self.name}_at_20_mm"

    @property
    def quantities(self) -> tuple[str, ...]:
        """What is read for it."""
        return (*((self.given,) if self.given else ()), *(self.way.quantities if self.way else ()))

    @property
    def refused_as(self) -> str:
        """Quantity that is refused when the diameter is."""
        return self.given or self.result


class Rows:
    """The rows as the library computes them, with what it refuses and what is missing.

    Parameters
    ----------
    laws : tuple
        Numbers of the laws of bore and piston.
    parts : sequence of Part
        Bore and piston.
    columns : mapping
        What the rows are made of, by quantity.
    count : int
        How many rows there are.
    decide : callable
        Gives decisions for clearances on the bench.
    """

    def __init__(
        self,
        laws: tuple[list[float], list[float]],
        parts: Sequence[Part],
        columns: Mapping[str, Column],
        count: int,
        decide: "Callable[[NDArray[np.float64]], NDArray[np.int8]]",
    ) -> None:
        import numpy as np

        self.sizes = {part.result: np.empty(count) for part in parts if part.way}
        self.bench_mm, self.running_mm = np.empty(count), np.empty(count)
        self.status, self.decision = np.zeros(count, np.int32), np.empty(count, np.int8)
        self.refused = 0
        self.missing: dict[str, NDArray[np.bool_]] = {}
        self._laws, self._parts, self._count, self._decide = laws, parts, count, decide
        self._columns = columns
        # one number for every row, side by side as the clearances are computed from it
        self._spread = {name: np.full(min(count, _STRETCH), c.values) for name, c in columns.items() if isinstance(c.values, float)}
        self._there: dict[str, NDArray[np.bool_]] = {}
        self._twice: dict[str, NDArray[np.bool_]] = {}
        chosen = any(part.way and part.given for part in parts)
        if chosen or any(column.lacks for column in columns.values()) or not self._computed(False):
            self._look_for_missing()
            self._computed(True)

    def lacks(self, quantities: Sequence[str]) -> "NDArray[np.bool_]":
        """Which rows lack one of some quantities.

        Parameters
        ----------
        quantities : sequence of str
            Which; those of the columns.

        Returns
        -------
        numpy.ndarray
            Truth values.
        """
        import numpy as np

        missing = np.zeros(self._count, np.bool_)
        for name in quantities:
            if name in self.missing:
                missing |= self.missing[name]
        return missing

    def _look_for_missing(self) -> None:
        import numpy as np

        masks = {name: column.missing() for name, column in self._columns.items() if column.lacks is not False}
        for part in self._parts:
            if part.way and part.given:
                # a row that has its size needs no reading
                there = ~masks.pop(part.given, np.zeros(self._count, np.bool_))
                self._there[part.name] = there
                reading = part.way.quantities[0]
                self._twice[part.name] = there & ~masks.get(reading, np.zeros(self._count, np.bool_))
                masks |= {name: masks[name] & ~there for name in part.way.quantities if name in masks}
        self.missing = {name: mask for name, mask in masks.items() if mask.any()}

    def _computed(self, partial: bool) -> bool:
        """Compute all rows; without `partial` it gives up where one is refused."""
        # laws are refused of no rows, too
        for start in range(0, max(self._count, 1), _STRETCH):
            refused = self._stretch(slice(start, min(start + _STRETCH, self._count)), partial)
            if refused and not partial:
                return False
            self.refused += refused
        return True

    def _stretch(self, here: slice, partial: bool) -> int:
        import numpy as np

        out = self.bench_mm[here], self.running_mm[here]
        sizes = [self._size(part, here) for part in self._parts]
        status, refused, _ = self._clearances([size for size, _ in sizes], here, out, partial)
        if refused and partial:
            # a size that is refused is NaN, for which the row is refused again
            for _, before in reversed(sizes):
                if before is not None:
                    np.copyto(status, before, where=before != 0)
            self.status[here] = status
        self.decision[here] = self._decide(out[0])
        return int(refused)

    def _clearances(self, diameters: "Sequence[NDArray[np.float64]]", here: slice, out: Any, partial: bool) -> Any:
        (bore, piston), (bore_law, piston_law) = diameters, self._laws
        parts_c, bore_c, piston_c = (self._side_by_side(name, here) for name in (PARTS_C, *RUNNING))
        return _gaugepoint.clearances(bore_law, piston_law, bore, piston, parts_c, bore_c, piston_c, out, partial)[2:]

    def _size(self, part: Part, here: slice) -> "tuple[NDArray[np.float64], Any]":
        import numpy as np

        if part.way is None:
            return self._side_by_side(part.refused_as, here), None
        size = self.sizes[part.result][here]
        _, status = part.way.function(*(self._cut(name, here) for name in part.way.quantities), out=size, partial=True)
        if part.name in self._there and part.given:
            there, twice = self._there[part.name][here], self._twice[part.name][here]
            np.copyto(size, self._cut(part.given, here), where=there)
            status[there] = 0
            size[twice], status[twice] = np.nan, _CONTRADICTION
        return size, status

    def _side_by_side(self, name: str, here: slice) -> "NDArray[np.float64]":
        values = self._spread.get(name)
        cut: NDArray[np.float64] = self._cut(name, here) if values is None else values[: here.stop - here.start]
        return cut

    def _cut(self, name: str, here: slice) -> Any:
        import numpy as np

        values = self._columns[name].values
        if isinstance(values, float):
            return values
        mask = self.missing.get(name)
        return values[here] if mask is None else np.where(mask[here], _anything(name), values[here])

    def refusals(self) -> Iterator[tuple[int, InputError]]:
        """Give every refused row with why it is refused.

        Yields
        ------
        tuple
            The row, and the error, whose field is the quantity.
        """
        import numpy as np

        for row in np.flatnonzero(self.status).tolist():
            yield row, self._refusal(row)

    def error(self) -> RowsRefused | None:
        """Give what a call without results for the other rows raises.

        Returns
        -------
        RowsRefused or None
            The refusal of the rows; None when none is refused.
        """
        if not self.refused:
            return None
        first = [(row, _under(error, f"{error.field}/{row}")) for row, error in islice(self.refusals(), _NAMED)]
        return rows_refused(self.refused, first)

    def _refusal(self, row: int) -> InputError:
        here = slice(row, row + 1)
        for part in self._parts:
            if part.way is None:
                continue
            if part.name in self._there and self._there[part.name][row]:
                if self._twice[part.name][row]:
                    given = repr(float(self._side_by_side(part.refused_as, here)[0]))
                    return at_door("contradiction", part.refused_as, given, f"{part.way.quantities[0]} is given, too")
                continue
            try:
                part.way.function(*(float(self._side_by_side(name, here)[0]) for name in part.way.quantities))
            except InputError as error:
                return _under(error, f"{part.name}_{error.field}")
        _, _, reasons = self._clearances([self._size(part, here)[0] for part in self._parts], here, None, True)
        (_, refused), *_ = reasons
        field = refused.field.removesuffix("/0")
        return _under(refused, next((part.refused_as for part in self._parts if field == f"{part.name}_mm"), field))


def _under(error: InputError, field: str) -> InputError:
    """The same refusal of another field."""
    data = {name: getattr(error, name) for name in DATA} | {"field": field}
    return InputError(field + str(error).removeprefix(error.field), **data)


def _anything(quantity: str) -> float:
    if quantity.endswith("_per_k"):
        return _ANY_EXPANSION
    return _ANY_ERROR if quantity.endswith(("_zero_error_mm", "_deviation_mm")) else _ANY
