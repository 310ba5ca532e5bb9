"""The compiled part of gaugepoint. Private: the package re-exports what is public."""

from collections.abc import Sequence
from typing import Final, TypeAlias

from gaugepoint.decision import Distribution

__all__ = [
    "ERROR_KINDS",
    "__version__",
    "size_at_20_mm",
    "bench_clearance_mm",
    "running_clearance_mm",
    "sample",
    "one_way",
    "study_by_ranges",
    "study_by_variance",
    "bias",
    "linearity",
    "linearity_band",
    "control_chart",
    "decide_mm",
    "global_risks",
    "acceptance_proven",
    "acceptance_stringent",
    "acceptance_relaxed",
    "acceptance_ratio",
    "acceptance_for_risk",
    "capability",
    "assess",
    "job_schema",
    "report_schema",
    "check_sheet",
    "sheet_schema",
    "sheet_report_schema",
    "measure",
    "presets",
    "measurement_schema",
    "measurement_report_schema",
]

_Limits: TypeAlias = tuple[float | None, float | None]
_Component: TypeAlias = tuple[float, float, tuple[float, float] | None]
_Line: TypeAlias = tuple[float, float, float, float | None, float | None]
_Pair: TypeAlias = tuple[float, float] | None
_Table: TypeAlias = tuple[_Line, _Line, _Line, _Line, float, bool, _Pair, _Pair]
_Study: TypeAlias = tuple[_Component, _Component, _Component, _Component, float, float | None, _Table | None]

ERROR_KINDS: Final[tuple[str, ...]]
"""Name of every kind of refusal, in order of its stable number."""

__version__: Final[str]
"""Version of the library."""

def size_at_20_mm(
    reading_mm: float,
    zero_error_mm: float,
    gauge_temperature_c: float,
    gauge_expansion_per_k: float,
    part_temperature_c: float,
    part_expansion_per_k: float,
) -> float:
    """Give the size at 20 C from the reading of a micrometer or caliper.

    ``(reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20))``. Source: ISO 1:2022 and the definition
    of strain.

    Parameters
    ----------
    reading_mm : float
        What the gauge reads, in mm.
    zero_error_mm : float
        What it reads too much at its zero, in mm.
    gauge_temperature_c, part_temperature_c : float
        Temperatures of gauge and part at the reading, -5 C to 60 C.
    gauge_expansion_per_k, part_expansion_per_k : float
        Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.

    Returns
    -------
    float
        The size at 20 C, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    At 20 C nothing grows: the reading less the zero error.

    >>> import gaugepoint
    >>> gaugepoint.size_at_20_mm(86.5, 0.125, 20.0, 11.5e-6, 20.0, 20.5e-6)
    86.375
    """

def bench_clearance_mm(bore_mm: float, piston_mm: float) -> float:
    """Give the clearance at 20 C, over the diameter.

    ``bore - piston``, both at 20 C.

    Parameters
    ----------
    bore_mm, piston_mm : float
        Diameters at 20 C, in mm.

    Returns
    -------
    float
        The diametral clearance, in mm; negative is interference.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.bench_clearance_mm(86.25, 86.125)
    0.125
    """

def running_clearance_mm(
    bore_mm: float,
    bore_temperature_c: float,
    bore_expansion_per_k: float,
    piston_mm: float,
    piston_temperature_c: float,
    piston_expansion_per_k: float,
) -> float:
    """Give the clearance of freely growing parts, over the diameter.

    ``bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20))``. It is not a verdict: skirts are elastic, and
    engines run for years with a free clearance below zero. Source: definition of strain.

    Parameters
    ----------
    bore_mm, piston_mm : float
        Diameters at 20 C, in mm.
    bore_temperature_c, piston_temperature_c : float
        Temperatures of the running parts, -40 C to 450 C.
    bore_expansion_per_k, piston_expansion_per_k : float
        Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.

    Returns
    -------
    float
        The diametral clearance, in mm; negative is interference of the free shapes.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    An aluminium piston 100 K above a cold iron bore has used up its clearance.

    >>> import gaugepoint
    >>> gaugepoint.running_clearance_mm(86.25, 20.0, 11.5e-6, 86.125, 120.0, 20.5e-6) < 0
    True
    """

def sample(values: Sequence[float]) -> tuple[int, float, float, float, float]:
    """Give mean and spread of a sample.

    Parameters
    ----------
    values : sequence of float
        At least two values, in any one unit.

    Returns
    -------
    tuple
        Count, mean, standard deviation, standard deviation of the mean, correlation of each value with the next.

    Raises
    ------
    InputError
        When there are fewer than two values, or one is not finite; it names the place.
    """

def one_way(groups: Sequence[Sequence[float]]) -> tuple[float, float, float, float, float | None, float | None, float]:
    """Give the one-way analysis of variance of groups.

    Parameters
    ----------
    groups : sequence of sequences of float
        At least two groups, none empty, and more values than groups.

    Returns
    -------
    tuple
        Between, its degrees of freedom, within, its degrees of freedom, F, R squared, pooled deviation.

    Raises
    ------
    InputError
        When there is too little, or a value is not finite; it names the place.
    """

def study_by_ranges(values: Sequence[Sequence[Sequence[float]]]) -> _Study:
    """Give what a crossed gauge study finds by averages and ranges.

    Parameters
    ----------
    values : sequence of sequences of sequences of float
        The readings, ``values[appraiser][trial][part]``.

    Returns
    -------
    tuple
        Repeatability, reproducibility, gauge, part, total, categories, None.

    Raises
    ------
    InputError
        When there is too little or too much, it is not balanced, or a value is not finite; it names the place.
    """

def study_by_variance(values: Sequence[Sequence[Sequence[float]]], pooled: bool | None, above: float) -> _Study:
    """Give what a crossed gauge study finds by analysis of variance.

    Parameters
    ----------
    values : sequence of sequences of sequences of float
        The readings, ``values[appraiser][trial][part]``.
    pooled : bool or None
        Count the interaction as repeats; None: when it is probable by chance.
    above : float
        How probable, when `pooled` is None.

    Returns
    -------
    tuple
        Repeatability, reproducibility, gauge, part, total, categories, table.

    Raises
    ------
    InputError
        When there is too little, it is not balanced, a value is not finite, or the probability is none; it names the place.
    """

def bias(
    values: Sequence[float], reference: float, reference_uncertainty: float, coverage: float
) -> tuple[float, float, float, float | None, _Pair, tuple[float, float], bool]:
    """Give the bias of a gauge at one size.

    Parameters
    ----------
    values : sequence of float
        At least two readings of one part, in any one unit.
    reference, reference_uncertainty : float
        Value of the part and its standard uncertainty.
    coverage : float
        Coverage of the confidence interval.

    Returns
    -------
    tuple
        Bias, deviation of the readings, uncertainty, degrees of freedom, test, interval, zero within.

    Raises
    ------
    InputError
        When there are fewer than two readings, or a number is not finite or impossible; it names the parameter or the place.
    """

def linearity(
    references: Sequence[float], readings: Sequence[Sequence[float]], coverage: float
) -> tuple[float, float, _Pair, float, float, _Pair, float, float, float | None, bool]:
    """Give how the bias of a gauge depends on the size.

    Parameters
    ----------
    references : sequence of float
        Values of the parts, in any one unit.
    readings : sequence of sequences of float
        The readings of each part.
    coverage : float
        Coverage of the confidence band.

    Returns
    -------
    tuple
        Intercept, its uncertainty and test, slope, its uncertainty and test, residual deviation, degrees of freedom, R squared,
        zero within.

    Raises
    ------
    InputError
        When there is too little, the sizes do not differ, or a number is not finite or impossible; it names the parameter or the
        place.
    """

def linearity_band(
    references: Sequence[float], readings: Sequence[Sequence[float]], x: float, coverage: float
) -> tuple[float, float, tuple[float, float]]:
    """Give the mean bias of a gauge at a size, by the line of a linearity study.

    Parameters
    ----------
    references : sequence of float
        Values of the parts, in any one unit.
    readings : sequence of sequences of float
        The readings of each part.
    x : float
        The size.
    coverage : float
        Coverage of the confidence band.

    Returns
    -------
    tuple
        Bias, uncertainty, interval.

    Raises
    ------
    InputError
        When there is too little, the sizes do not differ, or a number is not finite or impossible; it names the parameter or the
        place.
    """

def control_chart(
    values: Sequence[Sequence[float]], kind: str
) -> tuple[float, float, float, float, list[tuple[float, bool, bool]]]:
    """Give a control chart.

    Parameters
    ----------
    values : sequence of sequences of float
        Subgroups of equal size in order of time, in any one unit; single readings are subgroups of one.
    kind : str
        What the chart shows.

    Returns
    -------
    tuple
        Centre, lower limit, upper limit, deviation, points.

    Raises
    ------
    InputError
        When there is too little, the subgroups are of a wrong size, a value is not finite, or the kind is unknown; it names the
        parameter or the place.
    """

def decide_mm(
    value_mm: float,
    standard_uncertainty_mm: float,
    lower_mm: float | None,
    upper_mm: float | None,
    rule: str,
    at_least: float,
) -> str:
    """Judge one value with its standard uncertainty.

    Parameters
    ----------
    value_mm, standard_uncertainty_mm : float
        The value and its standard uncertainty, in mm.
    lower_mm, upper_mm : float or None
        The limits, in mm; at least one.
    rule : str
        Rule of decision.
    at_least : float
        Probability asked for by the rule ``conformance_probability``.

    Returns
    -------
    str
        The decision, as JSON.

    Raises
    ------
    InputError
        When a number is not finite or impossible, the limits are out of order or missing, or the rule is unknown.
    """

def global_risks(items: Distribution, u: float, tolerance: _Limits, accepted: _Limits) -> tuple[float, float, float]:
    """Give the global risks of accepting by one interval what should conform to another.

    Parameters
    ----------
    items : Normal, Uniform, Triangular or Gamma
        Distribution of the items.
    u : float
        Standard uncertainty of a measurement.
    tolerance, accepted : tuple of float or None
        Lower and upper limit of what conforms and of what is accepted.

    Returns
    -------
    tuple of float
        Conforming, consumer's risk, producer's risk.

    Raises
    ------
    InputError
        When a number is not finite, or a distribution or an interval is impossible.
    """

def acceptance_proven(tolerance: _Limits, u: float) -> _Limits:
    """Give the acceptance interval of a tolerance by ``g = 1.65 u``.

    Parameters
    ----------
    tolerance : tuple of float or None
        Lower and upper limit.
    u : float
        Standard uncertainty of a measurement.

    Returns
    -------
    tuple of float or None
        Lower and upper limit of what is accepted.

    Raises
    ------
    InputError
        When a number is not finite, the interval is impossible, or the guard bands leave nothing.
    """

def acceptance_stringent(tolerance: _Limits, u: float, amount: float) -> _Limits:
    """Give the acceptance interval of a tolerance inside by a share of ``U = 2 u``.

    Parameters
    ----------
    tolerance : tuple of float or None
        Lower and upper limit.
    u : float
        Standard uncertainty of a measurement.
    amount : float
        The share.

    Returns
    -------
    tuple of float or None
        Lower and upper limit of what is accepted.

    Raises
    ------
    InputError
        When a number is not finite, the interval is impossible, or the guard bands leave nothing.
    """

def acceptance_relaxed(tolerance: _Limits, u: float, amount: float) -> _Limits:
    """Give the acceptance interval of a tolerance outside by a share of ``U = 2 u``.

    Parameters
    ----------
    tolerance : tuple of float or None
        Lower and upper limit.
    u : float
        Standard uncertainty of a measurement.
    amount : float
        The share.

    Returns
    -------
    tuple of float or None
        Lower and upper limit of what is accepted.

    Raises
    ------
    InputError
        When a number is not finite, or the interval is impossible.
    """

def acceptance_ratio(tolerance: _Limits, u: float, amount: float) -> _Limits:
    """Give the tolerance itself, when it is at least so many times ``2 U`` wide.

    Parameters
    ----------
    tolerance : tuple of float or None
        Lower and upper limit.
    u : float
        Standard uncertainty of a measurement.
    amount : float
        The ratio.

    Returns
    -------
    tuple of float or None
        Lower and upper limit of what is accepted.

    Raises
    ------
    InputError
        When a number is not finite, the interval is impossible, or the ratio is not reached.
    """

def acceptance_for_risk(items: Distribution, u: float, tolerance: _Limits, wanted: float) -> _Limits:
    """Give the acceptance interval with a wanted consumer's risk.

    Parameters
    ----------
    items : Normal, Uniform, Triangular or Gamma
        Distribution of the items.
    u : float
        Standard uncertainty of a measurement.
    tolerance : tuple of float or None
        Lower and upper limit of what conforms.
    wanted : float
        The global consumer's risk.

    Returns
    -------
    tuple of float or None
        Lower and upper limit of what is accepted.

    Raises
    ------
    InputError
        When no guard band gives that risk, or a number, a distribution or an interval is impossible.
    """

def capability(mean: float, deviation: float, tolerance: _Limits) -> tuple[float, float]:
    """Give the capability of a normal process.

    Parameters
    ----------
    mean, deviation : float
        Mean and standard deviation of the process.
    tolerance : tuple of float or None
        Lower and upper limit.

    Returns
    -------
    tuple of float
        Cpk, share outside the limits.

    Raises
    ------
    InputError
        When a number is not finite, the deviation is not above 0, or the interval is impossible.
    """

def assess(job: bytes, working: bool) -> tuple[str, str, str]:
    """Assess a job given as JSON. Other threads run meanwhile.

    Parameters
    ----------
    job : bytes
        The job document, JSON in UTF-8.
    working : bool
        Put the working of every number into the report.

    Returns
    -------
    tuple of str
        The report as JSON, as text and as Markdown.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    """

def job_schema() -> str:
    """Give the JSON Schema of a job document.

    Returns
    -------
    str
        The schema, as JSON.
    """

def report_schema() -> str:
    """Give the JSON Schema of a report.

    Returns
    -------
    str
        The schema, as JSON.
    """

def check_sheet(sheet: bytes) -> str:
    """Hold the limits of a printed sheet against themselves. Other threads run meanwhile.

    Parameters
    ----------
    sheet : bytes
        The sheet document, JSON in UTF-8.

    Returns
    -------
    str
        The report as JSON.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    """

def sheet_schema() -> str:
    """Give the JSON Schema of a sheet document.

    Returns
    -------
    str
        The schema, as JSON.
    """

def sheet_report_schema() -> str:
    """Give the JSON Schema of the report on a sheet.

    Returns
    -------
    str
        The schema, as JSON.
    """

def measure(document: bytes, working: bool) -> tuple[str, str]:
    """Evaluate a measurement given as JSON. Other threads run meanwhile.

    Parameters
    ----------
    document : bytes
        The measurement document, JSON in UTF-8.
    working : bool
        Put the working of every number of the first order into the report.

    Returns
    -------
    tuple of str
        The report as JSON and as text.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    """

def presets() -> str:
    """Give the presets of gauges as JSON.

    Returns
    -------
    str
        A list of rows of published tables, as JSON.
    """

def measurement_schema() -> str:
    """Give the JSON Schema of a measurement document.

    Returns
    -------
    str
        The schema, as JSON.
    """

def measurement_report_schema() -> str:
    """Give the JSON Schema of a report on a measurement.

    Returns
    -------
    str
        The schema, as JSON.
    """
