"""Many rows at once, over arrays of numpy. The module is loaded without numpy; an array brings it."""

from typing import TYPE_CHECKING, Any, NamedTuple, TypeAlias

from gaugepoint import _gaugepoint
from gaugepoint._value import Value, dataclass
from gaugepoint.error import DATA, InputError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = ["Clearances", "CubicStrain", "MeanExpansion", "RowsRefused", "clearances"]


@dataclass(frozen=True, slots=True)
class MeanExpansion(Value):
    """Mean coefficient of linear expansion from 20 C."""

    per_k: float
    """The coefficient, 1e-7 to 1e-4 per kelvin."""


@dataclass(frozen=True, slots=True)
class CubicStrain(Value):
    """Strain from 20 C: ``per_k d + per_k2 d**2 + per_k3 d**3`` with ``d = T - 20 C``."""

    per_k: float
    """Coefficient of the first power, 1/K."""
    per_k2: float
    """Coefficient of the second power, 1/K2."""
    per_k3: float
    """Coefficient of the third power, 1/K3."""
    from_c: float
    """Lowest temperature at which it holds, at most 20 C."""
    to_c: float
    """Highest temperature at which it holds, at least 20 C."""


Law: TypeAlias = MeanExpansion | CubicStrain


class Clearances(NamedTuple):
    """Both clearances of every row, mm over the diameter."""

    bench_mm: "NDArray[np.float64]"
    """At 20 C; NaN where the row is refused."""
    running_mm: "NDArray[np.float64]"
    """Of the freely growing parts; NaN where the row is refused."""
    status: "NDArray[np.int32] | None"
    """With `partial`: 0, or the number of the kind of refusal, as the C interface has it."""


class RowsRefused(InputError):
    """Rows of a batch or elements of arrays were refused. The attributes of `InputError` are those of the first.

    Its field is column and place: ``bore_mm/3``; in arrays of two dimensions ``bore_mm/1/3``.

    Attributes
    ----------
    count : int
        How many rows are refused; 0 when the error was made anew from its text alone.
    rows : tuple of int
        The first of them, from 0; at most eight. In arrays of more dimensions they are counted in the order of C.
    errors : tuple of InputError
        Why, one for each of `rows`.
    """

    count: int
    rows: tuple[int, ...]
    errors: tuple[InputError, ...]

    def __init__(self, message: str, *, count: int = 0, rows: tuple[int, ...] = (), errors: tuple[InputError, ...] = (), **data: Any) -> None:
        super().__init__(message, **data)
        self.count = count
        self.rows = rows
        self.errors = errors

    def __reduce__(self) -> tuple[Any, ...]:
        again, (kind, message, data) = super().__reduce__()
        return again, (kind, message, data | {"count": self.count, "rows": self.rows, "errors": self.errors})


def clearances(
    bore_law: Law,
    piston_law: Law,
    bore_mm: "NDArray[np.float64]",
    piston_mm: "NDArray[np.float64]",
    parts_temperature_c: "NDArray[np.float64]",
    bore_temperature_c: "NDArray[np.float64]",
    piston_temperature_c: "NDArray[np.float64]",
    *,
    out: "tuple[NDArray[np.float64], NDArray[np.float64]] | None" = None,
    partial: bool = False,
) -> Clearances:
    """Give bench and running clearance of many rows.

    Each row has the bits of the functions of one row. Arrays that stand side by side are read where they are, others are copied. The
    interpreter is free for other threads meanwhile. Source: ISO 1:2022 and the definition of strain; core/docs/batch.md.

    Parameters
    ----------
    bore_law, piston_law : MeanExpansion or CubicStrain
        How the parts grow.
    bore_mm, piston_mm : numpy.ndarray
        Diameters as they were measured, at `parts_temperature_c`, in mm.
    parts_temperature_c : numpy.ndarray
        Temperature of both parts when they were measured, -5 C to 60 C.
    bore_temperature_c, piston_temperature_c : numpy.ndarray
        Temperatures of the running parts, -40 C to 450 C.
    out : tuple of numpy.ndarray, optional
        Two arrays for the results, which overlap nothing else; new memory costs more than the arithmetic. When a row is refused, unless
        `partial`, they are NaN throughout; when the call is refused for anything else, nothing is written.
    partial : bool, optional
        Gives refused rows NaN and a status, and the others their results.

    Returns
    -------
    Clearances
        Both clearances, and with `partial` the statuses.

    Raises
    ------
    RowsRefused
        When a row is refused, unless `partial`; it names the first rows and their reasons.
    InputError
        When a law is refused or the columns are not of one length.
    TypeError
        When a column is no `numpy.ndarray` of one dimension and float64; a subclass may have a mask or a unit, which would be lost.
    ValueError
        When an array of `out` overlaps another or cannot be written.

    Examples
    --------
    >>> import gaugepoint, numpy
    >>> bore, piston = gaugepoint.MeanExpansion(11.4e-6), gaugepoint.MeanExpansion(20.5e-6)
    >>> columns = [numpy.array(x) for x in ([86.25, 86.25], [86.125, 3.39], [20.0, 20.0], [110.0, 110.0], [20.0, 20.0])]
    >>> found = gaugepoint.clearances(bore, piston, *columns, partial=True)
    >>> float(found.bench_mm[0]), found.status.tolist()
    (0.125, [0, 301])
    >>> try:
    ...     gaugepoint.clearances(bore, piston, *columns)
    ... except gaugepoint.RowsRefused as refused:
    ...     print(refused.count, refused.rows, refused.field)
    1 (1,) piston_mm/1
    """
    columns = (bore_mm, piston_mm, parts_temperature_c, bore_temperature_c, piston_temperature_c)
    laws = numbers("bore_law", bore_law), numbers("piston_law", piston_law)
    bench, running, status, refused, reasons = _gaugepoint.clearances(*laws, *columns, out, partial)
    if refused and not partial:
        raise rows_refused(refused, reasons)
    return Clearances(bench, running, status)


def numbers(name: str, law: Law) -> list[float]:
    """Give the numbers of a law, as the library takes them.

    Parameters
    ----------
    name : str
        Parameter that it was given as.
    law : MeanExpansion or CubicStrain
        The law.

    Returns
    -------
    list
        Its numbers.

    Raises
    ------
    TypeError
        When it is something else.
    """
    if isinstance(law, MeanExpansion):
        return [law.per_k]
    if isinstance(law, CubicStrain):
        return [law.per_k, law.per_k2, law.per_k3, law.from_c, law.to_c]
    raise TypeError(f"{name}: a MeanExpansion or a CubicStrain is needed, not {type(law).__name__}")


def rows_refused(count: int, reasons: list[tuple[int, InputError]], what: str = "rows") -> RowsRefused:
    """Give the refusal of rows.

    Parameters
    ----------
    count : int
        How many are refused.
    reasons : list
        The first of them, with their errors.
    what : str
        What they are called.

    Returns
    -------
    RowsRefused
        The refusal, to be raised.
    """
    (_, first), *_ = reasons
    more = "" if count == len(reasons) else f"; and {count - len(reasons)} more"
    message = f"{count} {what} are refused: " + "; ".join(str(error) for _, error in reasons) + more
    data = {name: getattr(first, name) for name in DATA}
    rows, errors = tuple(row for row, _ in reasons), tuple(error for _, error in reasons)
    return RowsRefused(message, count=count, rows=rows, errors=errors, **data)
