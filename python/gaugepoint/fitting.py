"""One piston in one bore at temperature: from a fit document to its report.

A name that ends in ``_mm``, ``_c``, ``_k``, ``_deg`` or ``_mm2`` holds a number in that unit. ``None`` means not computed, or not there.
"""

import json
import os
from dataclasses import dataclass, field
from typing import Any, ClassVar, Literal

from gaugepoint import _gaugepoint
from gaugepoint.job import document as bytes_of
from gaugepoint._written import WrittenText
from gaugepoint.report import BudgetLine, JobName, MeasuredValue, Warning, Working, written

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
class GaugePointTemperatures:
    """Temperatures at the gauge point."""

    thrust_c: float
    """Thrust side of the piston."""
    pin_c: float
    """Pin side of the piston."""
    bore_c: float
    """Wall of the bore at the same place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceReport:
    """A place in the running engine."""

    angle_deg: float
    """Angle around the piston: 0 the major thrust side."""
    height_mm: float
    """Height above the bottom edge of the skirt."""
    depth_mm: float | None = None
    """Depth in the bore, when the piston moves in it."""
    crank_deg: float | None = None
    """Crank angle; absent when it does not matter."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BestPlaced:
    """A piston moved sideways to where it has most room."""

    clearance_mm: float
    """Smallest clearance on one side there."""
    thrust_mm: float
    """Moved towards the major thrust side."""
    pin_mm: float
    """Moved along the pin, towards the front."""
    certified_within_mm: float
    """The most room of any place sideways is certainly within this of the clearance."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """Angles that touch at one height."""

    height_mm: float
    """Height above the bottom edge of the skirt."""
    from_deg: float
    """First angle."""
    to_deg: float
    """Last angle; above 360 when the band crosses the thrust axis."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OverlapReport:
    """Where a surface overlaps the bore."""

    area_mm2: float
    """Area of the surface below zero clearance."""
    beyond_allowed_mm2: float | None = None
    """Area that overlaps by more than is allowed; absent when nothing is allowed."""
    largest_mm: float
    """Largest overlap on one side."""
    bands: tuple[Band, ...] = field(repr=False)
    """Angles that touch, height by height."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OvalityReport:
    """Ovality at one height."""

    height_mm: float
    """Height above the bottom edge of the skirt."""
    cold_mm: float
    """At 20 C."""
    running_mm: float
    """In the running engine."""
    round_running_mm: float
    """Ovality at 20 C that would run round."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceReport:
    """A skirt or a land in the running engine."""

    name: str
    """What it is called."""
    smallest: MeasuredValue
    """Its smallest clearance on one side, the piston centred."""
    place: PlaceReport
    """Where that is."""
    certified_within_mm: float
    """The smallest clearance is certainly not below the value by more than this."""
    best_placed: BestPlaced
    """Smallest clearance with the piston moved sideways to where it has most room, at the crank angle of the smallest one."""
    overlap: OverlapReport | None = None
    """Where it overlaps, and by how much."""
    ovality: tuple[OvalityReport, ...] = field(repr=False)
    """Ovality at the heights of its rows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReferenceReport:
    """A piston against the original one at the maker's least clearance, in the same bore at the same temperatures."""

    running: MeasuredValue
    """Running clearance of the original at the gauge point."""
    margin: MeasuredValue
    """Running clearance less that of the original."""
    smallest_mm: float
    """Smallest clearance of the skirt of the original, on one side."""
    smallest_margin: MeasuredValue
    """Smallest clearance of the skirt less that of the original, on one side."""
    origin: str
    """Where the least clearance is printed."""
    note: str
    """What the comparison can say."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KelvinLine:
    """Share of one source in a temperature."""

    source: str
    """The source in words."""
    contribution_k: float
    """Sensitivity times standard uncertainty, with its sign."""
    share: float
    """Share of the variance, 0 to 1."""
    path: str
    """Field of the document it comes from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfacePlace:
    """A place with its surface."""

    surface: str
    """Skirt or land."""
    place: PlaceReport
    """The place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OnsetReport:
    """How far the temperatures can rise until something touches."""

    scenario: Literal["piston_alone", "piston_and_bore", "piston_with_cold_bore"]
    """`piston_alone`, `piston_and_bore` or `piston_with_cold_bore`"""
    outcome: Literal["touches", "touches_at_20_c", "no_contact"]
    """`touches`, `touches_at_20_c`, `no_contact`"""
    touching_at_mm: float
    """Clearance on one side that counts as touching: 0, or less the overlap that is allowed."""
    factor: float
    """Temperature rise over that of the document; of `no_contact` the largest that was looked at."""
    thrust_c: float
    """Temperature of the thrust side at the gauge point with it."""
    standard_uncertainty_k: float | None = None
    """Standard uncertainty of that temperature."""
    budget: tuple[KelvinLine, ...] = field(default=(), repr=False)
    """Sources, largest share first; contributions in kelvin."""
    place: SurfacePlace | None = None
    """Where it touches."""
    stopped_by: str | None = None
    """Why no more was looked at."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundReport:
    """What was looked for."""

    what: Literal["bore_for_running_clearance", "bore_for_smallest_clearance", "skirt_temperature_for_bench_clearance"]
    """The field of `find`."""
    wanted: str
    """What was wanted, as typed."""
    size_mm: float | None = None
    """The size, when it exists."""
    temperature_c: float | None = None
    """The temperature, when it exists."""
    no_solution: str | None = None
    """Why there is none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ProfilePicture:
    """Radii of a surface over height, less half the gauge diameter at 20 C."""

    surface: str
    """Skirt or land."""
    heights_mm: tuple[float, ...] = field(repr=False)
    """Heights."""
    cold_thrust_mm: tuple[float, ...] = field(repr=False)
    """Thrust axis at 20 C."""
    cold_pin_mm: tuple[float, ...] = field(repr=False)
    """Pin axis at 20 C."""
    hot_thrust_mm: tuple[float, ...] = field(repr=False)
    """Thrust axis in the running engine."""
    hot_pin_mm: tuple[float, ...] = field(repr=False)
    """Pin axis in the running engine."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionPicture:
    """A section of a surface."""

    surface: str
    """Skirt or land."""
    height_mm: float
    """Its height."""
    angles_deg: tuple[float, ...] = field(repr=False)
    """Angles."""
    piston_cold_mm: tuple[float, ...] = field(repr=False)
    """Radius of the piston at 20 C."""
    piston_hot_mm: tuple[float, ...] = field(repr=False)
    """Radius of the running piston."""
    bore_cold_mm: tuple[float, ...] = field(repr=False)
    """Radius of the bore at 20 C."""
    bore_hot_mm: tuple[float, ...] = field(repr=False)
    """Radius of the running bore."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MapPicture:
    """Clearance on one side over a surface at one crank angle."""

    surface: str
    """Skirt or land."""
    crank_deg: float | None = None
    """Crank angle, when the piston moves."""
    angles_deg: tuple[float, ...] = field(repr=False)
    """Angles."""
    heights_mm: tuple[float, ...] = field(repr=False)
    """Heights."""
    clearance_mm: tuple[tuple[float | None, ...], ...] = field(repr=False)
    """A row for every height, an entry for every angle; absent where there is no surface or the bore has a window."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AgainstPicture:
    """Smallest clearance against the temperature rise."""

    factors: tuple[float, ...] = field(repr=False)
    """Temperature rise of piston and bore over that of the document."""
    thrust_c: tuple[float, ...] = field(repr=False)
    """Temperature of the thrust side at the gauge point."""
    clearance_mm: tuple[float, ...] = field(repr=False)
    """Smallest clearance of the skirt on one side."""
    reference_mm: tuple[float, ...] = field(default=(), repr=False)
    """The same of the original piston at the maker's least clearance."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PicturesReport:
    """Data to draw."""

    profile: tuple[ProfilePicture, ...] = field(repr=False)
    """Radii over height."""
    sections: tuple[SectionPicture, ...] = field(repr=False)
    """A section of every surface at its smallest clearance."""
    maps: tuple[MapPicture, ...] = field(repr=False)
    """Clearance on one side over the skirt and the lands."""
    against_temperature: AgainstPicture
    """Smallest clearance of the skirt against the temperature rise."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HotReport:
    """A hot fit."""

    bench: MeasuredValue
    """Clearance at 20 C at the gauge point, over the diameter."""
    running: MeasuredValue
    """Clearance of the running engine at the gauge point, over the diameter."""
    running_crank_deg: float | None = None
    """Where that is: crank angle of top dead centre when the piston moves in the bore."""
    gauge_point: GaugePointTemperatures
    """Temperatures there."""
    origin: str
    """Where the temperatures come from."""
    surfaces: tuple[SurfaceReport, ...] = field(repr=False)
    """Skirt and lands, each by itself."""
    reference: ReferenceReport | None = None
    """The piston against the original one at the maker's least clearance."""
    onset: tuple[OnsetReport, ...] = field(repr=False)
    """How much hotter until something touches."""
    found: tuple[FoundReport, ...] = field(default=(), repr=False)
    """What was looked for."""
    pictures: PicturesReport | None = field(default=None, repr=False)
    """Data to draw."""
    notes: tuple[str, ...] = field(repr=False)
    """What a reader must know."""


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
