"""Statistics of readings, and gauge studies: how much of what a gauge shows is the gauge, the hand, and the part."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal

from gaugepoint import _gaugepoint
from gaugepoint.error import at_door

__all__ = ["Component", "Line", "OneWay", "Sample", "Study", "Table", "gauge_study", "one_way", "sample"]

Method = Literal["variance", "ranges"]
"""How a gauge study is evaluated."""


@dataclass(frozen=True, slots=True)
class Sample:
    """Mean and spread of a sample."""

    count: int
    """Number of values."""
    mean: float
    """Arithmetic mean."""
    standard_deviation: float
    """Experimental standard deviation, ``count - 1`` degrees of freedom."""
    deviation_of_mean: float
    """Standard deviation of the mean."""
    lag_1_correlation: float
    """Correlation of each value with the next; 0 when all are equal."""


@dataclass(frozen=True, slots=True)
class OneWay:
    """One-way analysis of variance."""

    between: float
    """Sum of squares between groups."""
    between_dof: float
    """Degrees of freedom between groups."""
    within: float
    """Sum of squares within groups."""
    within_dof: float
    """Degrees of freedom within groups."""
    f: float | None
    """Ratio of the mean squares; None when nothing varies within the groups."""
    r_squared: float | None
    """Share of the variation that is between groups; None when nothing varies at all."""
    pooled_deviation: float
    """Pooled standard deviation within groups."""


@dataclass(frozen=True, slots=True)
class Component:
    """A standard deviation of a study, its share, and its confidence interval."""

    deviation: float
    """Standard deviation, in the unit of the readings."""
    of_total: float
    """Ratio to the total deviation. The ratios do not add to 1; their squares do."""
    interval: tuple[float, float] | None
    """95 % confidence interval of the deviation; None with the method by ranges, and for a deviation of 0."""


@dataclass(frozen=True, slots=True)
class Line:
    """A line of the analysis of variance."""

    squares: float
    """Sum of squares."""
    dof: float
    """Degrees of freedom."""
    mean: float
    """Mean square."""
    f: float | None
    """Ratio to the mean square of the equipment; None for the equipment itself, and when it does not vary."""
    p: float | None
    """Probability of a ratio as large by chance; None where `f` is."""


@dataclass(frozen=True, slots=True)
class Table:
    """Sums of squares of a crossed study."""

    appraiser: Line
    """Between appraisers."""
    part: Line
    """Between parts."""
    interaction: Line
    """Appraiser by part."""
    equipment: Line
    """Repeats."""
    total_squares: float
    """Sum of squares about the grand mean."""
    pooled: bool
    """Was the interaction counted as repeats?"""


@dataclass(frozen=True, slots=True)
class Study:
    """What a gauge study finds."""

    repeatability: Component
    """The same appraiser, the same part ("equipment variation")."""
    reproducibility: Component
    """Between appraisers, interaction included ("appraiser variation")."""
    gauge: Component
    """Both together ("gauge repeatability and reproducibility")."""
    part: Component
    """Between parts."""
    total: float
    """Deviation of everything together."""
    categories: float | None
    """``1.41 part / gauge``, not truncated; its whole part is the number of distinct categories. None when the gauge shows no
    variation: a resolution too coarse for the study looks like that, too."""
    table: Table | None = field(repr=False)
    """The table behind it; None with the method by ranges."""


def sample(values: Sequence[float]) -> Sample:
    """Give mean and spread of a sample.

    Sources: JCGM 100:2008, 4.2; NIST/SEMATECH e-Handbook, 1.3.5.12 (correlation).

    Parameters
    ----------
    values : sequence of float
        At least two values, in any one unit.

    Returns
    -------
    Sample
        Mean, standard deviation, standard deviation of the mean, and the correlation of each value with the next.

    Raises
    ------
    InputError
        When there are fewer than two values, or one is not finite; it names the place: ``values/3``.

    Examples
    --------
    >>> import gaugepoint
    >>> five = gaugepoint.sample([86.25, 86.5, 86.25, 86.0, 86.25])
    >>> five.count, five.mean
    (5, 86.25)
    >>> round(five.standard_deviation, 4)
    0.1768
    """
    return Sample(*_gaugepoint.sample(values))


def one_way(groups: Sequence[Sequence[float]]) -> OneWay:
    """Give the one-way analysis of variance of groups.

    Source: NIST/SEMATECH e-Handbook, 7.4.3.

    Parameters
    ----------
    groups : sequence of sequences of float
        At least two groups, none empty, and more values than groups.

    Returns
    -------
    OneWay
        Sums of squares with their degrees of freedom, their ratio, and the pooled standard deviation.

    Raises
    ------
    InputError
        When there is too little, or a value is not finite; it names the place: ``groups/1/4``.

    Examples
    --------
    Two groups whose means are 2 apart, each with a spread of 1 either side.

    >>> import gaugepoint
    >>> two = gaugepoint.one_way([[9.0, 10.0, 11.0], [11.0, 12.0, 13.0]])
    >>> two.between, two.within, two.f
    (6.0, 4.0, 6.0)
    """
    return OneWay(*_gaugepoint.one_way(groups))


def gauge_study(
    values: Sequence[Sequence[Sequence[float]]],
    method: Method = "variance",
    pooling: float | Literal["never", "always"] = 0.25,
) -> Study:
    """Give what a crossed gauge study finds: every appraiser reads every part equally often.

    Sources: the measurement systems analysis manual of the automotive industry, fourth edition; Satterthwaite, Biometrics
    Bulletin 2 (1946), for the intervals.

    Parameters
    ----------
    values : sequence of sequences of sequences of float
        The readings, ``values[appraiser][trial][part]``, in any one unit; at least two appraisers, trials and parts.
    method : {"variance", "ranges"}
        Analysis of variance; or averages and ranges, for up to 15 appraisers, trials and parts.
    pooling : float, "never" or "always"
        Count the interaction of appraiser and part as repeats when a ratio as large is more probable by chance than this; not used
        by the method by ranges.

    Returns
    -------
    Study
        Repeatability, reproducibility, both together, the parts, and the number of categories that the gauge can tell apart.

    Raises
    ------
    InputError
        When there is too little or too much, the study is not balanced, a value is not finite, or a choice is unknown; it names the
        parameter or the place: ``values/2/0/9``.

    Examples
    --------
    Two appraisers read two parts twice (invented).

    >>> import gaugepoint
    >>> study = gaugepoint.gauge_study([[[10, 20], [12, 22]], [[14, 24], [16, 26]]], pooling="always")
    >>> round(study.repeatability.deviation, 4), round(study.reproducibility.deviation, 4), round(study.part.deviation, 4)
    (1.2649, 2.7568, 7.0427)
    >>> int(study.categories)
    3
    """
    if method == "ranges":
        return _study(_gaugepoint.study_by_ranges(values))
    if method != "variance":
        raise at_door("unknown_choice", "method", str(method), "not one of the choices; accepted: variance, ranges")
    if not isinstance(pooling, str):
        return _study(_gaugepoint.study_by_variance(values, None, pooling))
    if pooling not in ("never", "always"):
        reason = "not one of the choices; accepted: never, always, or a probability"
        raise at_door("unknown_choice", "pooling", pooling, reason)
    return _study(_gaugepoint.study_by_variance(values, pooling == "always", 0.0))


def _study(found: "_gaugepoint._Study") -> Study:
    repeatability, reproducibility, gauge, part, total, categories, table = found
    return Study(
        Component(*repeatability),
        Component(*reproducibility),
        Component(*gauge),
        Component(*part),
        total,
        categories,
        table and _table(table),
    )


def _table(found: "_gaugepoint._Table") -> Table:
    appraiser, part, interaction, equipment, total_squares, pooled = found
    return Table(Line(*appraiser), Line(*part), Line(*interaction), Line(*equipment), total_squares, pooled)
