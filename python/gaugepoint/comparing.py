"""Jobs compared: one engine at two visits, and one job with other values.

`revisit` tells what changed between two jobs, how fast, and when limits are reached; `what_if` assesses a job with every combination of values.
``None`` means not computed or not there.
"""

import json
import os
from dataclasses import field
from typing import Any, ClassVar

from gaugepoint import _gaugepoint
from gaugepoint._progress import Progress, reported
from gaugepoint._value import Value, dataclass
from gaugepoint._written import WrittenMarkdown
from gaugepoint.job import document as bytes_of
from gaugepoint.report import Datum, JobName, Of, Outcome, Surface, Warning, written

__all__ = [
    "BorePlaceChange",
    "Change",
    "CylinderChange",
    "Forecast",
    "HoursReport",
    "PistonPlaceChange",
    "RefusedRow",
    "RevisitReport",
    "WhatIfReport",
    "WhatIfRow",
    "revisit",
    "revisit_report_schema",
    "revisit_schema",
    "what_if",
    "what_if_report_schema",
    "what_if_schema",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class HoursReport(Value):
    """Hours an engine ran."""

    run_h: float
    """The hours."""
    standard_uncertainty_h: float
    """Their standard uncertainty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change(Value):
    """A value of both visits. A change is the value now less the one before: wear makes a bore and a clearance grow, a piston shrink."""

    previous_mm: float
    """The value of the earlier visit."""
    now_mm: float
    """The value of this visit."""
    change_mm: float
    """The one less the other."""
    standard_uncertainty_mm: float
    """Standard uncertainty of the change."""
    coverage_factor: float
    """Coverage factor: 2, or with few degrees of freedom that of Student's t at the same probability."""
    dof: float | None = None
    """Effective degrees of freedom; absent when they are infinite."""
    expanded_uncertainty_mm: float
    """Coverage factor times standard uncertainty."""
    significant: bool
    """Whether the change is larger than its expanded uncertainty."""
    shared: tuple[str, ...] = ()
    """Sources taken as the same error in both visits; all others were taken as independent."""
    rate_mm_per_h: float
    """The change over the hours."""
    rate_standard_uncertainty_mm_per_h: float
    """Standard uncertainty of that, with the error of the hours."""
    rate_mm_per_1000_h: float
    """The change in 1000 hours."""
    rate_expanded_uncertainty_mm_per_1000_h: float
    """Expanded uncertainty of that, by the same coverage factor."""
    rate_of_bore_per_1000_h: float
    """The change in 1000 hours as a share of the nominal bore."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BorePlaceChange(Value):
    """What changed at a place of a bore."""

    depth_mm: float
    """Depth from the deck."""
    axis_deg: float
    """Direction of the diameter."""
    change: Change
    """The change."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PistonPlaceChange(Value):
    """What changed at a place of a piston."""

    height_mm: float
    """Height of the place."""
    datum: Datum
    """What the height is counted from."""
    angle_deg: float
    """Direction of the diameter."""
    over: Surface
    """Surface that was touched."""
    gauge_point: bool
    """Whether the maker states the diameter here."""
    change: Change
    """The change."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Forecast(Value):
    """When a limit of this job is reached, if the value goes on changing as it did."""

    of: Of
    """What reaches its limit."""
    limit_mm: float | None = None
    """The upper limit."""
    room_mm: float | None = None
    """The limit less the value at the temperature of the limit."""
    hours: float | None = None
    """Hours from now."""
    lower_hours: float | None = None
    """Lower end of their interval; at 0 and below the limit may be reached already."""
    upper_hours: float | None = None
    """Upper end of their interval."""
    coverage_factor: float | None = None
    """Coverage factor of the interval."""
    reason: str | None = None
    """Why no limit can be told."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CylinderChange(Value):
    """What changed of a cylinder."""

    number: int
    """Its number."""
    bore_places: tuple[BorePlaceChange, ...]
    """The bore, place by place where the same depth and axis were read."""
    bore_size: Change | None = None
    """The bore by the size rule."""
    piston_places: tuple[PistonPlaceChange, ...]
    """The piston, place by place where the same height and direction were read over the same surface."""
    bench_clearance: Change | None = None
    """The clearance at 20 C."""
    forecasts: tuple[Forecast, ...]
    """When limits of this job are reached."""
    missing: tuple[str, ...] = ()
    """What could not be compared, and why."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RevisitReport(WrittenMarkdown):
    """What changed of an engine between two visits."""

    _made_by: ClassVar[str] = "revisit"

    format: str
    """`gaugepoint-revisit-report`"""
    version: int
    """Version of the format."""
    library: str
    """Version of the library."""
    engine: str
    """Name of the engine."""
    previous: JobName
    """The job of the earlier visit."""
    now: JobName
    """The job of this visit."""
    hours: HoursReport
    """Hours between them."""
    same_gauges: tuple[str, ...] = field(repr=False)
    """Gauges of one name and one calibration date in both jobs: their lasting errors count once in a change."""
    cylinders: tuple[CylinderChange, ...] = field(repr=False)
    """Every cylinder, in order of number."""
    suspicious: tuple[Warning, ...] = field(repr=False)
    """What does not fit two visits of one engine, or should be looked into."""
    warnings: tuple[Warning, ...] = field(repr=False)
    """What is odd in the hours and in both jobs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RefusedRow(Value):
    """A refusal of a row."""

    kind: str
    """Kind of the refusal."""
    field: str
    """JSON Pointer into the what-if document."""
    refused: str
    """What was refused."""
    reason: str
    """Why."""
    did_you_mean: str | None = None
    """What was probably meant."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WhatIfRow(Value):
    """The job with one combination of values."""

    values: tuple[str | None, ...]
    """The value of every varied field, as typed; `null` where the job as it is has none."""
    shown: tuple[bool | int | float | str | None, ...]
    """What is shown, in order; `null` where the report has none."""
    outcome: Outcome | None = None
    """What becomes of the engine."""
    cylinders: tuple[Outcome, ...] = ()
    """What becomes of every cylinder, in order of number."""
    refused: RefusedRow | None = None
    """Why the job with these values is refused."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WhatIfReport(WrittenMarkdown):
    """A job assessed with every combination of the values."""

    _made_by: ClassVar[str] = "what_if"

    format: str
    """`gaugepoint-what-if-report`"""
    version: int
    """Version of the format."""
    library: str
    """Version of the library."""
    engine: str
    """Name of the engine in the job as it is."""
    job: JobName
    """The job as named in it."""
    fields: tuple[str, ...] = field(repr=False)
    """JSON Pointers of the varied fields of the job, in order."""
    shown: tuple[str, ...] = field(repr=False)
    """JSON Pointers of what is shown of its report, in order."""
    base: WhatIfRow
    """The job as it is."""
    rows: tuple[WhatIfRow, ...] = field(repr=False)
    """Every combination; the first varied field varies slowest."""


def revisit(document: dict[str, Any] | str | bytes | os.PathLike[str] | os.PathLike[bytes]) -> RevisitReport:
    """Compare two jobs of one engine: what changed, how fast, when limits are reached, what is suspicious.

    Parameters
    ----------
    document : dict, str, bytes or os.PathLike
        The revisit document: as a dictionary; as JSON (a text that begins with ``{``, or bytes); or the path of a file with the JSON
        (any other text, or a path object).

    Returns
    -------
    RevisitReport
        The report, typed. Its JSON is the same to the byte in every host.

    Raises
    ------
    InputError
        When the document or a field of it is refused; what is refused in a job has its field below ``/previous`` or ``/now``.
    OSError
        When the file cannot be read.
    TypeError
        When `document` or something in the dictionary is of another type.

    Examples
    --------
    >>> import gaugepoint
    >>> try:
    ...     gaugepoint.revisit({"format": "gaugepoint-revisit", "version": 1, "hours": {"run": "1210 h", "permissible_error": "10"}})
    ... except gaugepoint.InputError as refused:
    ...     print(refused.field)
    /previous
    """
    return written(RevisitReport, *_gaugepoint.revisit(bytes_of(document)))


def revisit_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a revisit document.

    Returns
    -------
    dict
        The schema. It says what fields there are; ranges and contradictions are checked by `revisit`.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.revisit_schema()["title"]
    'RevisitDocument'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.revisit_schema())
    return schema


def revisit_report_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a report on a revisit.

    Returns
    -------
    dict
        The schema.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.revisit_report_schema()["title"]
    'RevisitReport'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.revisit_report_schema())
    return schema


def what_if(
    document: dict[str, Any] | str | bytes | os.PathLike[str] | os.PathLike[bytes], *, progress: Progress = None
) -> WhatIfReport:
    """Assess a job with every combination of values.

    Parameters
    ----------
    document : dict, str, bytes or os.PathLike
        The what-if document: as a dictionary; as JSON (a text that begins with ``{``, or bytes); or the path of a file with the JSON
        (any other text, or a path object).
    progress : callable or bool, optional
        A callable of what is done and of how much; True for a bar where tqdm is installed and standard error is a terminal.
        What it raises, and Ctrl-C, stop the work.

    Returns
    -------
    WhatIfReport
        The report, typed. Its JSON is the same to the byte in every host.

    Raises
    ------
    InputError
        When the document, the job as it is or a field is refused; what is refused in a combination stands in its row.
    OSError
        When the file cannot be read.
    TypeError
        When `document` or something in the dictionary is of another type.

    Examples
    --------
    >>> import gaugepoint
    >>> try:
    ...     gaugepoint.what_if({"format": "gaugepoint-what-if", "version": 1, "job": {}, "vary": []})
    ... except gaugepoint.InputError as refused:
    ...     print(refused.field)
    /job/format
    """
    with reported(progress) as told:
        return written(WhatIfReport, *_gaugepoint.what_if(bytes_of(document), told))


def what_if_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a what-if document.

    Returns
    -------
    dict
        The schema. It says what fields there are; ranges and contradictions are checked by `what_if`.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.what_if_schema()["title"]
    'WhatIfDocument'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.what_if_schema())
    return schema


def what_if_report_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a report on a what-if.

    Returns
    -------
    dict
        The schema.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.what_if_report_schema()["title"]
    'WhatIfReport'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.what_if_report_schema())
    return schema
