"""Before measuring, and before believing: soak, gauge for a limit, drift, two readers, outliers, and what is possible at all."""

from collections.abc import Sequence
from typing import Literal

from gaugepoint import _gaugepoint
from gaugepoint._value import Value, dataclass
from gaugepoint.decision import Guard, Limits
from gaugepoint.error import at_door

__all__ = [
    "Adequacy",
    "Agreement",
    "Drift",
    "Outlier",
    "Outliers",
    "PlausibilityRow",
    "Soak",
    "adequacy",
    "agreement",
    "drift",
    "judge",
    "outliers",
    "plausibility_table",
    "readers",
    "soak",
]

Pattern = Literal["mean", "common_oval", "oval_by_depth"]
"""What a station list should look like, apart from its scatter."""


@dataclass(frozen=True, slots=True)
class Soak(Value):
    """What a warm part means for its size."""

    advice: str
    """``measure``, ``wait or correct``, or ``wait``: then the correction is too uncertain."""
    error_mm: float
    """Error of the size when it is measured now, in mm: positive when it reads too large."""
    wait_min: float
    """Time until the error is what is allowed, in minutes; 0 when it already is."""
    correction_mm: float
    """What to add to the reading when it is measured now, in mm."""
    correction_uncertainty_mm: float
    """Standard uncertainty of that correction, in mm."""


@dataclass(frozen=True, slots=True)
class Adequacy(Value):
    """Is a gauge good enough for a tolerance?"""

    adequate: bool
    """Does the uncertainty reach what is asked?"""
    largest_u: float
    """Target uncertainty: the largest standard uncertainty that does."""
    ratio: float
    """Tolerance divided by ``2 U``, ``U = 2 u``, with the uncertainty given."""
    zone: float
    """Share of the tolerance that is left to accept in; below 0 when the guard bands overlap."""


@dataclass(frozen=True, slots=True)
class Drift(Value):
    """What a gauge moved by between two checks on its master."""

    drift_mm: float
    """Reading after less reading before, in mm."""
    uncertainty_mm: float
    """Standard uncertainty that it adds to one reading in between: rectangular, half-width the drift."""
    shared_mm: float
    """The part of it that all readings in between share; it cancels from their differences."""
    own_mm: float
    """The part that each has for itself."""


@dataclass(frozen=True, slots=True)
class Agreement(Value):
    """How two results for one quantity stand to each other."""

    e_n: float
    """``|difference| / sqrt(U1^2 + U2^2)``."""
    difference: float
    """First value less the second."""
    first_expanded: float
    """Expanded uncertainty of the first."""
    second_expanded: float
    """Expanded uncertainty of the second."""
    agree: bool
    """Is `e_n` at most 1? If not, look again."""


@dataclass(frozen=True, slots=True)
class Outlier(Value):
    """A point that is unlike the others."""

    index: int
    """Its place in the list, from 0."""
    g: float
    """Its distance from the pattern in standard deviations."""


@dataclass(frozen=True, slots=True)
class Outliers(Value):
    """Points of a station list against their pattern. A point that stands out is named, never removed."""

    deviation: float
    """Standard deviation about the pattern."""
    dof: int
    """Degrees of freedom of it."""
    farthest: Outlier | None
    """The point farthest off; None when nothing scatters."""
    critical: float
    """Distance that no point of as many reaches by chance, except with the probability asked for."""
    beyond: tuple[Outlier, ...]
    """All points beyond it, in the order of the list."""


@dataclass(frozen=True, slots=True)
class PlausibilityRow(Value):
    """A row of the table of plausible values. Several rows may have one name."""

    name: str
    """Name of the quantity."""
    label: str
    """What it is called."""
    unit: str
    """Unit of a value."""
    of: str | None
    """What the ranges are multiples of, ``bore`` or ``pin``; None when they stand in the unit themselves."""
    possible: tuple[float, float]
    """Smallest and largest possible value."""
    usual: tuple[float, float]
    """Smallest and largest usual value."""
    reason: str
    """Where the ranges come from."""
    slips: str
    """What usually happened when a value is impossible."""


def soak(
    excess_k: float,
    time_constant_min: float,
    size_mm: float,
    expansion_per_k: float,
    allowed_mm: float,
    excess_error_k: float,
    expansion_error_per_k: float,
) -> Soak:
    """Say whether a part is soaked; if not, how long to wait, and what correcting instead would cost.

    First-order cooling (Newton); the gauge is at the temperature of the shop. Sources: definition of strain; JCGM 100:2008, 4.3.7.

    Parameters
    ----------
    excess_k : float
        Temperature of the part less that of the gauge, in K, -100 to 300.
    time_constant_min : float
        Time in which it falls to 37 %, in minutes, 0.1 to 10000: a bare piston 10 to 20, a liner 20 to 40, an iron block 120 to 240
        (unverified).
    size_mm : float
        Size of the part, in mm, 1 to 1100; the nominal size will do.
    expansion_per_k : float
        Coefficient of linear expansion of the part, per kelvin.
    allowed_mm : float
        Error of the size that is allowed, in mm.
    excess_error_k, expansion_error_per_k : float
        Half-widths of the errors of excess and coefficient.

    Returns
    -------
    Soak
        What to do, the error now, the time to wait, and the correction with its standard uncertainty.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter.

    Examples
    --------
    An aluminium piston of 86 mm, 10 K warm.

    >>> import gaugepoint
    >>> warm = gaugepoint.soak(10.0, 15.0, 86.0, 20.5e-6, allowed_mm=0.001, excess_error_k=1.0, expansion_error_per_k=1e-6)
    >>> print(f"{warm.error_mm:.4f} mm, {warm.wait_min:.0f} min: {warm.advice}")
    0.0176 mm, 43 min: wait
    """
    return Soak(
        *_gaugepoint.soak(
            excess_k, time_constant_min, size_mm, expansion_per_k, allowed_mm, excess_error_k, expansion_error_per_k
        )
    )


def adequacy(
    tolerance: Limits, u: float, guard: Guard = "proven", amount: float | None = None, least_zone: float = 0.0
) -> Adequacy:
    """Hold a standard uncertainty against a tolerance, before anything is measured with it.

    Sources: JCGM 106:2012, 8.3.2; ISO 14253-1:2017; ASME B89.7.3.1.

    Parameters
    ----------
    tolerance : tuple of float
        Lower and upper limit, both given.
    u : float
        Standard uncertainty of a measurement, above 0, in the unit of the tolerance.
    guard : {"proven", "stringent", "ratio_at_least"}
        Rule of acceptance, as in `acceptance`. ``relaxed`` asks nothing of a gauge and is refused.
    amount : float, optional
        The number of the rule: given with all but ``proven``.
    least_zone : float
        Share of the tolerance that must be left between the guard bands, 0 to below 1; asks nothing with ``ratio_at_least``.

    Returns
    -------
    Adequacy
        Is it good enough, the largest uncertainty that is, the ratio, and the share that is left.

    Raises
    ------
    InputError
        When a number is not finite, missing or impossible, or the rule is unknown; it names the parameter.

    Examples
    --------
    A tolerance of 0.020 mm, four times as wide as the span of the uncertainty.

    >>> import gaugepoint
    >>> gaugepoint.adequacy((0.0, 0.020), 0.003, "ratio_at_least", 4.0).largest_u
    0.00125
    """
    if guard == "proven":
        if amount is not None:
            raise at_door("contradiction", "amount", repr(amount), "this choice does not use the number")
        return Adequacy(*_gaugepoint.adequacy_proven(tolerance, u, least_zone))
    rule = _RULES.get(guard)
    if rule is None:
        accepted = ", ".join(["proven", *_RULES])
        raise at_door("unknown_choice", "guard", str(guard), f"not one of the choices; accepted: {accepted}")
    if amount is None:
        raise at_door("missing_field", "amount", "", "this choice needs its number")
    return Adequacy(*rule(tolerance, u, amount, least_zone))


_RULES = {
    "stringent": _gaugepoint.adequacy_stringent,
    "relaxed": _gaugepoint.adequacy_relaxed,
    "ratio_at_least": _gaugepoint.adequacy_ratio,
}


def drift(before_mm: float, after_mm: float, limit_mm: float) -> Drift:
    """Give the drift of a gauge on its master as a source of uncertainty of what was read in between.

    Source: JCGM 100:2008, 4.3.7; half of the drift is shared by all readings, the rest is each one's own.

    Parameters
    ----------
    before_mm, after_mm : float
        Readings of the master before and after, in mm.
    limit_mm : float
        Largest drift that is accepted, in mm, not negative.

    Returns
    -------
    Drift
        The drift, and the standard uncertainty that it adds, with its two parts.

    Raises
    ------
    InputError
        When a number is not finite; with the field ``after_mm`` and the drift as value when it is beyond the limit: the set is refused.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.drift(0.0, 0.003, limit_mm=0.004).shared_mm
    0.0015
    """
    return Drift(*_gaugepoint.drift(before_mm, after_mm, limit_mm))


def agreement(first: float, first_u: float, second: float, second_u: float) -> Agreement:
    """Hold two values with their standard uncertainties against each other: the number E_n.

    What both share (one master, one thermometer) belongs into neither uncertainty. Source: ISO/IEC 17043:2010, B.3.1.3, ``U = 2 u``.

    Parameters
    ----------
    first, second : float
        The values, in any one unit.
    first_u, second_u : float
        Their standard uncertainties, above 0.

    Returns
    -------
    Agreement
        E_n, the difference, both expanded uncertainties, and whether they agree.

    Raises
    ------
    InputError
        When a number is not finite, or an uncertainty is not above 0; it names the parameter.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.agreement(15.0, 1.5, 10.0, 2.0).e_n
    1.0
    """
    return Agreement(*_gaugepoint.agreement(first, first_u, second, second_u))


def readers(first: Sequence[float], second: Sequence[float], resolution: float) -> Agreement:
    """Say whether two readers agree, from what each read at one place with one gauge.

    E_n with 95 % expanded uncertainties of the two means. Sources: ISO/IEC 17043:2010, B.3.1.3; JCGM 100:2008, G.4.

    Parameters
    ----------
    first, second : sequence of float
        At least two readings of each, in any one unit.
    resolution : float
        Resolution of the gauge, above 0, in the same unit.

    Returns
    -------
    Agreement
        E_n, the difference of the means, both expanded uncertainties, and whether they agree.

    Raises
    ------
    InputError
        When a list is too short, a number is not finite, or the resolution is not above 0; it names the place: ``first/1``.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.readers([86.012, 86.013, 86.012], [86.018, 86.017, 86.018], 0.001).agree
    False
    """
    return Agreement(*_gaugepoint.readers(first, second, resolution))


def outliers(points: Sequence[tuple[float, float, float]], pattern: Pattern = "mean", alpha: float = 0.05) -> Outliers:
    """Test a station list for outliers: points that are unlike the others, apart from the pattern of the part.

    Sources: ISO 5725-2 and NIST/SEMATECH e-Handbook, 1.3.5.17.1 (Grubbs, two-sided, with ``mean``); Stefansky, Technometrics 14 (1972).

    Parameters
    ----------
    points : sequence of tuples of float
        Depth in mm, angle in degrees and value in any one unit of each point; at most 1000.
    pattern : {"mean", "common_oval", "oval_by_depth"}
        What is taken off first: one mean; a mean for each depth and one oval for all; a mean and an oval for each depth.
    alpha : float
        Probability of a false alarm on the whole list, 1e-6 to 0.5.

    Returns
    -------
    Outliers
        The point farthest off, what chance allows for, and all points beyond that.

    Raises
    ------
    InputError
        When there are too few points for the pattern or too many, a number is not finite (``points/3``), the pattern is unknown, or the
        probability is impossible.

    Examples
    --------
    The published example of NIST/SEMATECH e-Handbook, 1.3.5.17.1.

    >>> import gaugepoint
    >>> published = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]
    >>> found = gaugepoint.outliers([(0.0, 0.0, value) for value in published])
    >>> found.farthest.index, round(found.farthest.g, 3), len(found.beyond)
    (7, 2.469, 1)
    """
    test = _FORMS.get(pattern)
    if test is None:
        raise at_door("unknown_choice", "pattern", str(pattern), f"not one of the choices; accepted: {', '.join(_FORMS)}")
    deviation, dof, farthest, critical, beyond = test(points, alpha)
    return Outliers(
        deviation, dof, farthest and Outlier(*farthest), critical, tuple(Outlier(*point) for point in beyond)
    )


_FORMS = {
    "mean": _gaugepoint.outliers_mean,
    "common_oval": _gaugepoint.outliers_common_oval,
    "oval_by_depth": _gaugepoint.outliers_oval_by_depth,
}


def judge(name: str, value: float, diameter_mm: float | None = None) -> str:
    """Hold one value against the table of plausible values.

    The ranges are common practice with a margin, and no maker's data.

    Parameters
    ----------
    name : str
        Name of a row of `plausibility_table`.
    value : float
        The value, in the unit of the row.
    diameter_mm : float, optional
        What relative rows refer to, in mm: the bore; for a pressed pin, the pin. Without it only the other rows are used; a quantity
        that has relative rows only needs it.

    Returns
    -------
    str
        ``usual`` or ``odd``.

    Raises
    ------
    InputError
        When the value is impossible (with what was probably meant, where a slip explains it), not finite, or there is no such row.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.judge("clearance", 0.04, diameter_mm=86.0), gaugepoint.judge("clearance", 0.21, diameter_mm=86.0)
    ('usual', 'odd')
    """
    return _gaugepoint.judge(name, value, diameter_mm)


def plausibility_table() -> tuple[PlausibilityRow, ...]:
    """Give the table of plausible values.

    The ranges are common practice with a margin, and no maker's data.

    Returns
    -------
    tuple of PlausibilityRow
        Every row, in the order of the work.

    Examples
    --------
    >>> import gaugepoint
    >>> bore = gaugepoint.plausibility_table()[0]
    >>> bore.name, bore.usual, bore.unit
    ('bore', (30.0, 200.0), 'mm')
    """
    return tuple(PlausibilityRow(*row) for row in _gaugepoint.plausibility_table())
