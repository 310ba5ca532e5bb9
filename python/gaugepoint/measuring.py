"""Readings with their gauges, and differences of them: from a measurement document to its report; presets of gauges.

A name that ends in ``_mm`` or ``_c`` holds a number in that unit. ``None`` means not computed.
"""

import json
import os
from dataclasses import field
from typing import Any, ClassVar, Literal

from gaugepoint import _gaugepoint
from gaugepoint._progress import Progress, reported
from gaugepoint.job import document as bytes_of
from gaugepoint._data import read
from gaugepoint._value import Value, dataclass
from gaugepoint._written import WrittenText
from gaugepoint.report import BudgetLine, JobName, Warning, Working, written

__all__ = [
    "DifferenceReport",
    "EffectReport",
    "GaugeUsed",
    "IntervalReport",
    "MeasurementReport",
    "MonteCarloReport",
    "Preset",
    "Propagated",
    "ReadingReport",
    "SecondOrderReport",
    "ValidationReport",
    "measure",
    "measurement_report_schema",
    "measurement_schema",
    "presets",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Preset(Value):
    """One row of a published table, for a gauge whose own data sheet is not at hand."""

    name: str
    """Name, as a document refers to it."""
    kind: Literal["outside_micrometer", "caliper", "bore_gauge", "inside_micrometer", "setting_ring"]
    """What it is for."""
    from_mm: float
    """Smallest size it holds for."""
    to_mm: float
    """Largest size it holds for."""
    permissible_error_mm: float
    """Permissible error, to either side."""
    face_parallelism_mm: float | None = None
    """Parallelism of the measuring faces."""
    frame_deflection_mm: float | None = None
    """How far a force of 10 N opens the frame."""
    source: str
    """Where the row comes from."""
    confidence: Literal["published", "maker", "unverified"]
    """How far it can be trusted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EffectReport(Value):
    """An effect whose mean is not zero."""

    source: str
    """Its source in words."""
    mean_mm: float
    """Its mean in the value: indicated less true."""
    treatment: Literal["corrected", "stated"]
    """Whether the value is corrected by it."""
    path: str
    """Field of the document it comes from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SecondOrderReport(Value):
    """A value to second order. It takes every source for normal."""

    mean_mm: float
    """Value of the model with its second-order shift."""
    shift_of_mean_mm: float
    """That shift."""
    standard_uncertainty_mm: float | None = None
    """Standard uncertainty; absent where the terms leave a variance below zero."""


@dataclass(frozen=True, slots=True, kw_only=True)
class IntervalReport(Value):
    """An interval."""

    lower_mm: float
    """Lower end."""
    upper_mm: float
    """Upper end."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ValidationReport(Value):
    """The linear budget against the symmetric interval of the trials."""

    lower_difference_mm: float
    """Difference of the lower ends."""
    upper_difference_mm: float
    """Difference of the upper ends."""
    tolerance_mm: float
    """Numerical tolerance."""
    validated: bool
    """Whether both differences are within it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MonteCarloReport(Value):
    """A value by trials."""

    seed: int
    """Seed."""
    trials: int
    """Number of trials."""
    mean_mm: float
    """Mean of the trials."""
    standard_deviation_mm: float
    """Their standard deviation."""
    symmetric: IntervalReport
    """Interval with equal probabilities outside either end."""
    shortest: IntervalReport
    """The shortest interval."""
    validation: ValidationReport
    """Whether the linear budget stands, by JCGM 101:2008, clause 8."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Propagated(Value):
    """A value with its uncertainty: the linear budget, and what the second order and the trials say to it."""

    value_mm: float
    """Best estimate, with the effects that are corrected taken off."""
    standard_uncertainty_mm: float
    """Standard uncertainty of the linear budget."""
    dof: float | None = None
    """Its effective degrees of freedom, when they are not infinite."""
    coverage_factor: float
    """Coverage factor at the coverage probability."""
    expanded_uncertainty_mm: float
    """Expanded uncertainty."""
    budget: tuple[BudgetLine, ...] = field(repr=False)
    """Sources, largest share first."""
    effects: tuple[EffectReport, ...] = field(default=(), repr=False)
    """Effects whose mean is not zero."""
    stated_bias_mm: float | None = None
    """Sum of the effects that are stated and not corrected: by so much the value is too large."""
    second_order: SecondOrderReport
    """To second order."""
    monte_carlo: MonteCarloReport | None = None
    """By trials, when they were asked for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GaugeUsed(Value):
    """State of a gauge."""

    name: str
    """Name."""
    calibration: str
    """`in date` or `overdue`, on the day of the measurement."""
    preset: str | None = None
    """The row of a published table that stands for its data sheet, with the source of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingReport(Value):
    """One reading."""

    name: str
    """Its name."""
    gauge: str
    """Name of its gauge."""
    what: Literal["outside", "inside", "transferred", "clearance", "depth"]
    """What was read."""
    readings: tuple[str, ...]
    """What was read, as typed."""
    result: Propagated
    """Its value and uncertainty."""
    notes: tuple[str, ...] = ()
    """What a reader must know of the way it was read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DifferenceReport(Value):
    """One difference."""

    name: str
    """Its name."""
    larger: str
    """Name of the reading it is taken from."""
    smaller: str
    """Name of the reading that is taken off."""
    result: Propagated
    """Its value and uncertainty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasurementReport(WrittenText):
    """Every reading and difference with its uncertainty, by three ways side by side."""

    _made_by: ClassVar[str] = "measure"

    format: str
    """`gaugepoint-measurement-report`"""
    version: int
    """Version of the format."""
    library: str
    """Version of the library."""
    measurement: JobName
    """The measurement as named in the document."""
    reference_temperature_c: float
    """Temperature that sizes are given at."""
    probability: float
    """Coverage probability of the expanded uncertainties and the intervals."""
    gauges: tuple[GaugeUsed, ...] = field(repr=False)
    """State of the gauges that have a calibration."""
    readings: tuple[ReadingReport, ...]
    """The readings, in the order of the document."""
    differences: tuple[DifferenceReport, ...]
    """The differences, in the order of the document."""
    warnings: tuple[Warning, ...] = field(repr=False)
    """What is odd."""
    working: Working | None = field(default=None, repr=False)
    """The working of every number of the first order, when it was asked for."""


def measure(
    document: dict[str, Any] | str | bytes | os.PathLike[str] | os.PathLike[bytes], *, working: bool = False, progress: Progress = None
) -> MeasurementReport:
    """Evaluate readings and their differences: budgets to first and second order and by trials.

    Parameters
    ----------
    document : dict, str, bytes or os.PathLike
        The measurement document: as a dictionary; as JSON (a text that begins with ``{``, or bytes); or the path of a file with
        the JSON (any other text, or a path object).
    working : bool, default False
        Put the working of every number of the first order into the report.
    progress : callable or bool, optional
        A callable of what is done and of how much; True for a bar where tqdm is installed and standard error is a terminal.
        What it raises, and Ctrl-C, stop the work.

    Returns
    -------
    MeasurementReport
        The report, typed. Its JSON is the same to the byte in every host.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    OSError
        When the file cannot be read.
    TypeError
        When `document` or something in the dictionary is of another type.

    Examples
    --------
    >>> import gaugepoint
    >>> try:
    ...     gaugepoint.measure({"format": "gaugepoint-measurement", "version": 1})
    ... except gaugepoint.InputError as refused:
    ...     print(refused.kind, refused.field)
    missing_field /measurement
    """
    with reported(progress) as told:
        return written(MeasurementReport, *_gaugepoint.measure(bytes_of(document), working, told))


def presets() -> tuple[Preset, ...]:
    """Give the presets of gauges: rows of published tables, each with its source.

    Returns
    -------
    tuple of Preset
        The rows, kind by kind, in rising order of size.

    Examples
    --------
    >>> import gaugepoint
    >>> row = gaugepoint.presets()[3]
    >>> row.name, row.permissible_error_mm, row.confidence
    ('DIN 863 75-100 mm', 0.005, 'published')
    """
    rows: tuple[Preset, ...] = tuple(read(Preset, json.dumps(row)) for row in json.loads(_gaugepoint.presets()))
    return rows


def measurement_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a measurement document.

    Returns
    -------
    dict
        The schema. It says what fields there are; ranges and contradictions are checked by `measure`.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.measurement_schema()["title"]
    'MeasurementDocument'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.measurement_schema())
    return schema


def measurement_report_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a report on a measurement.

    Returns
    -------
    dict
        The schema.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.measurement_report_schema()["title"]
    'MeasurementReport'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.measurement_report_schema())
    return schema
