"""Statistics of readings, gauge studies, bias, and control charts: how much of what a gauge shows is the gauge, the hand, and the part."""

from collections.abc import Sequence
from dataclasses import field
from typing import Literal

from gaugepoint import _gaugepoint
from gaugepoint._value import Value, dataclass
from gaugepoint.error import at_door

__all__ = [
    "Band",
    "Bias",
    "Chart",
    "Component",
    "Line",
    "Linearity",
    "OneWay",
    "Point",
    "Ratio",
    "Sample",
    "Study",
    "Table",
    "Test",
    "bias",
    "control_chart",
    "gauge_study",
    "linearity",
    "linearity_band",
    "one_way",
    "sample",
]

Method = Literal["variance", "ranges"]
"""How a gauge study is evaluated."""

Kind = Literal["means_by_ranges", "ranges", "means_by_deviations", "deviations", "individuals", "moving_ranges"]
"""What a control chart shows, and what its limits rest on."""


@dataclass(frozen=True, slots=True)
class Sample(Value):
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
class OneWay(Value):
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
class Component(Value):
    """A standard deviation of a study, its share, and its confidence interval."""

    deviation: float
    """Standard deviation, in the unit of the readings."""
    of_total: float
    """Ratio to the total deviation. The ratios do not add to 1; their squares do."""
    interval: tuple[float, float] | None
    """95 % confidence interval of the deviation; None with the method by ranges, and for a deviation of 0."""


@dataclass(frozen=True, slots=True)
class Line(Value):
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
class Ratio(Value):
    """A ratio of mean squares."""

    f: float
    """The ratio."""
    p: float
    """Probability of a ratio as large by chance."""


@dataclass(frozen=True, slots=True)
class Table(Value):
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
    appraiser_residual: Ratio | None
    """Appraisers against what their component is formed with: interaction and repeats together when pooled, the interaction when
    kept. None when that is 0."""
    part_residual: Ratio | None
    """Parts against the same."""


@dataclass(frozen=True, slots=True)
class Study(Value):
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


@dataclass(frozen=True, slots=True)
class Test(Value):
    """Two-sided t test of a value against zero."""

    __test__ = False  # not one for pytest

    t: float
    """Ratio of the value to its standard uncertainty."""
    p: float
    """Probability of a ratio as far from zero by chance."""


@dataclass(frozen=True, slots=True)
class Bias(Value):
    """Bias of a gauge at one size."""

    bias: float
    """Mean of the readings less the reference."""
    standard_deviation: float
    """Standard deviation of the readings."""
    standard_uncertainty: float
    """Standard uncertainty of the bias: deviation of the mean and uncertainty of the reference."""
    dof: float | None
    """Its degrees of freedom; None when above a million, taken as infinite."""
    test: Test | None
    """Test of the bias; None when its uncertainty is 0: a resolution too coarse for the study looks like that."""
    interval: tuple[float, float]
    """Confidence interval of the bias."""
    zero_within: bool
    """Does zero lie in it? Then no bias is shown."""


@dataclass(frozen=True, slots=True)
class Linearity(Value):
    """How the bias of a gauge depends on the size: a line by least squares."""

    intercept: float
    """Bias at size 0, by the line."""
    intercept_uncertainty: float
    """Its standard uncertainty."""
    intercept_test: Test | None
    """Test of the intercept; None when the line leaves no residuals."""
    slope: float
    """Bias per size."""
    slope_uncertainty: float
    """Its standard uncertainty."""
    slope_test: Test | None
    """Test of the slope; None when the line leaves no residuals."""
    residual_deviation: float
    """Standard deviation of the residuals."""
    dof: float
    """Degrees of freedom, two fewer than the readings."""
    r_squared: float | None
    """Share of the variation of the bias that the line explains; None when the bias does not vary."""
    zero_within: bool
    """Does zero lie in the confidence band at every reference value? Then no bias is shown at any of them."""


@dataclass(frozen=True, slots=True)
class Band(Value):
    """Mean bias at a size, by the line of a linearity study."""

    bias: float
    """Mean bias."""
    standard_uncertainty: float
    """Its standard uncertainty, without the scatter of a new reading."""
    interval: tuple[float, float]
    """Confidence interval of the mean bias."""


@dataclass(frozen=True, slots=True)
class Point(Value):
    """A point of a control chart."""

    value: float
    """What is shown."""
    beyond: bool
    """Is it beyond a control limit?"""
    run: bool
    """Is it the ninth in a row, or a later one, on one side of the centre line? Never for ranges and deviations."""


@dataclass(frozen=True, slots=True)
class Chart(Value):
    """A control chart with limits three standard deviations from its centre."""

    centre: float
    """Centre line: the mean of what is shown."""
    lower: float
    """Lower control limit; 0 for a range or a deviation that could be nothing."""
    upper: float
    """Upper control limit."""
    deviation: float
    """Standard deviation of a reading within a subgroup, which the limits rest on."""
    points: tuple[Point, ...] = field(repr=False)
    """The points, in order of time; moving ranges are one fewer than the readings."""


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
        Analysis of variance; or averages and ranges, for up to 25 appraisers, trials and parts.
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


def bias(values: Sequence[float], reference: float, *, reference_uncertainty: float = 0.0, coverage: float = 0.95) -> Bias:
    """Give the bias of a gauge at one size, from readings of a part of known value.

    Sources: NIST/SEMATECH e-Handbook, 7.2.2 (one-sample t test); JCGM 100:2008, G.4.1, for the degrees of freedom with an
    uncertain reference.

    Parameters
    ----------
    values : sequence of float
        At least two readings of the part, in any one unit.
    reference : float
        Value of the part.
    reference_uncertainty : float, default 0
        Its standard uncertainty; 0: it is exact.
    coverage : float, default 0.95
        Coverage of the confidence interval, between 0 and 1.

    Returns
    -------
    Bias
        Bias, its standard uncertainty, its test and its interval.

    Raises
    ------
    InputError
        When there are fewer than two readings, or a number is not finite or impossible; it names the parameter or the place:
        ``values/3``.

    Examples
    --------
    Four readings of a part of 10 (invented).

    >>> import gaugepoint
    >>> found = gaugepoint.bias([10.0, 10.5, 10.5, 11.0], 10.0)
    >>> found.bias, round(found.standard_uncertainty, 4), found.zero_within
    (0.5, 0.2041, True)
    """
    value, deviation, u, dof, test, interval, zero_within = _gaugepoint.bias(values, reference, reference_uncertainty, coverage)
    return Bias(value, deviation, u, dof, _test(test), interval, zero_within)


def linearity(references: Sequence[float], readings: Sequence[Sequence[float]], *, coverage: float = 0.95) -> Linearity:
    """Give how the bias of a gauge depends on the size, from readings of several parts of known value.

    Sources: the measurement systems analysis manual of the automotive industry, fourth edition; NIST/SEMATECH e-Handbook, 4.1.4.1.

    Parameters
    ----------
    references : sequence of float
        Values of the parts, taken as exact, in any one unit; at least two that differ.
    readings : sequence of sequences of float
        The readings of each part; at least three in all.
    coverage : float, default 0.95
        Coverage of the confidence band, between 0 and 1.

    Returns
    -------
    Linearity
        Line of the bias on the reference value, with its tests.

    Raises
    ------
    InputError
        When there is too little, the sizes do not differ, or a number is not finite or impossible; it names the parameter or the
        place: ``readings/2/0``.

    Examples
    --------
    A gauge that reads more and more, by one in a hundred (invented).

    >>> import gaugepoint
    >>> found = gaugepoint.linearity([25.0, 50.0, 75.0], [[25.25, 25.25], [50.5, 50.5], [75.75, 75.75]])
    >>> found.slope, found.zero_within
    (0.01, False)
    """
    found = _gaugepoint.linearity(references, readings, coverage)
    intercept, of_intercept, first, slope, of_slope, second, residual, dof, r_squared, zero_within = found
    return Linearity(
        intercept, of_intercept, _test(first), slope, of_slope, _test(second), residual, dof, r_squared, zero_within
    )


def linearity_band(
    references: Sequence[float], readings: Sequence[Sequence[float]], x: float, *, coverage: float = 0.95
) -> Band:
    """Give the mean bias of a gauge at a size, by the line of `linearity`, with its confidence interval.

    Source: NIST/SEMATECH e-Handbook, 4.5.1.1.

    Parameters
    ----------
    references : sequence of float
        Values of the parts, taken as exact, in any one unit; at least two that differ.
    readings : sequence of sequences of float
        The readings of each part; at least three in all.
    x : float
        The size.
    coverage : float, default 0.95
        Coverage of the confidence interval, between 0 and 1.

    Returns
    -------
    Band
        Mean bias at the size, with its standard uncertainty and its interval.

    Raises
    ------
    InputError
        When there is too little, the sizes do not differ, or a number is not finite or impossible; it names the parameter or the
        place: ``readings/2/0``.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.linearity_band([25.0, 50.0, 75.0], [[25.25], [50.5], [75.75]], 60.0).bias
    0.6
    """
    return Band(*_gaugepoint.linearity_band(references, readings, x, coverage))


def control_chart(values: Sequence[Sequence[float]], kind: Kind) -> Chart:
    """Give a control chart: centre line, control limits, and the points that are out of control.

    Sources: ISO 7870-2:2013; ASTM MNL 7; Nelson, Journal of Quality Technology 16 (1984), for the run of nine.

    Parameters
    ----------
    values : sequence of sequences of float
        At least two subgroups of equal size in order of time, in any one unit: of 2 to 25 readings; of one for the last two kinds.
    kind : {"means_by_ranges", "ranges", "means_by_deviations", "deviations", "individuals", "moving_ranges"}
        What the chart shows, and what its limits rest on.

    Returns
    -------
    Chart
        Lines and points. The limits rest on these readings themselves.

    Raises
    ------
    InputError
        When there is too little, the subgroups are of a wrong size, a value is not finite, or the kind is unknown; it names the
        parameter or the place: ``values/4/0``.

    Examples
    --------
    >>> import gaugepoint
    >>> chart = gaugepoint.control_chart([[10.0, 10.5], [10.5, 10.0], [10.0, 10.5], [12.0, 12.5]], "means_by_ranges")
    >>> chart.centre, [point.beyond for point in chart.points]
    (10.75, [False, False, False, True])
    """
    centre, lower, upper, deviation, points = _gaugepoint.control_chart(values, kind)
    return Chart(centre, lower, upper, deviation, tuple(Point(*point) for point in points))


def _test(found: tuple[float, float] | None) -> Test | None:
    return found and Test(*found)


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
    appraiser, part, interaction, equipment, total_squares, pooled, of_appraiser, of_part = found
    return Table(
        Line(*appraiser),
        Line(*part),
        Line(*interaction),
        Line(*equipment),
        total_squares,
        pooled,
        of_appraiser and Ratio(*of_appraiser),
        of_part and Ratio(*of_part),
    )
