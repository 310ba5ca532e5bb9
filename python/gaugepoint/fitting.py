"""One piston in one bore at temperature: from a fit document to its report.

A name that ends in ``_mm``, ``_c``, ``_k``, ``_deg`` or ``_mm2`` holds a number in that unit. ``None`` means not computed, or not there.
"""

import json
import os
from dataclasses import field
from typing import Any, ClassVar

from gaugepoint import _gaugepoint
from gaugepoint.job import document as bytes_of
from gaugepoint._value import dataclass
from gaugepoint._written import WrittenText
from gaugepoint.report import (
    AgainstPicture,
    Band,
    BestPlaced,
    FoundReport,
    GaugePointTemperatures,
    HotReport,
    JobName,
    KelvinLine,
    MapPicture,
    OnsetReport,
    OvalityReport,
    OverlapReport,
    PicturesReport,
    PlaceReport,
    ProfilePicture,
    ReferenceReport,
    SectionPicture,
    SurfacePlace,
    SurfaceReport,
    Warning,
    Working,
    written,
)

__all__ = [
    "AgainstPicture",
    "Band",
    "BestPlaced",
    "FitReport",
    "FoundReport",
    "GaugePointTemperatures",
    "HotReport",
    "KelvinLine",
    "MapPicture",
    "OnsetReport",
    "OvalityReport",
    "OverlapReport",
    "PicturesReport",
    "PlaceReport",
    "ProfilePicture",
    "ReferenceReport",
    "SectionPicture",
    "SurfacePlace",
    "SurfaceReport",
    "fit",
    "fit_report_schema",
    "fit_schema",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class FitReport(WrittenText):
    """The clearance of one piston in one bore, everywhere and at temperature."""

    _made_by: ClassVar[str] = "fit"

    format: str
    """`gaugepoint-fit-report`"""
    version: int
    """Version of the format."""
    library: str
    """Version of the library."""
    fit: JobName
    """The fit as named in the document."""
    hot: HotReport
    """What was found out."""
    warnings: tuple[Warning, ...] = field(repr=False)
    """What is odd."""
    cautions: tuple[str, ...] = field(repr=False)
    """What to take care of."""
    working: Working | None = field(default=None, repr=False)
    """The working of every measured value, when it was asked for."""


def fit(
    document: dict[str, Any] | str | bytes | os.PathLike[str] | os.PathLike[bytes], *, working: bool = False
) -> FitReport:
    """Compute a hot fit: the clearance everywhere and at temperature, its smallest value, margin and first contact.

    Parameters
    ----------
    document : dict, str, bytes or os.PathLike
        The fit document: as a dictionary; as JSON (a text that begins with ``{``, or bytes); or the path of a file with the JSON
        (any other text, or a path object).
    working : bool, default False
        Put the working of every measured value into the report.

    Returns
    -------
    FitReport
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
    ...     gaugepoint.fit({"format": "gaugepoint-fit", "version": 1})
    ... except gaugepoint.InputError as refused:
    ...     print(refused.kind, refused.field)
    missing_field /fit
    """
    return written(FitReport, *_gaugepoint.fit(bytes_of(document), working))


def fit_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a fit document.

    Returns
    -------
    dict
        The schema. It says what fields there are; ranges and contradictions are checked by `fit`.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.fit_schema()["title"]
    'FitDocument'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.fit_schema())
    return schema


def fit_report_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a report on a hot fit.

    Returns
    -------
    dict
        The schema.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.fit_report_schema()["title"]
    'FitReport'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.fit_report_schema())
    return schema
