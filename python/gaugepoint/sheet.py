"""Limits from a printed sheet: whatever it says twice is held against itself, before any part is judged by it."""

import json
import os
from dataclasses import field
from typing import Any, ClassVar, Literal

from gaugepoint import _gaugepoint
from gaugepoint.job import document
from gaugepoint._value import Value, dataclass
from gaugepoint._written import Written
from gaugepoint.report import Warning, written

__all__ = [
    "Check",
    "Checked",
    "Contradiction",
    "SheetReport",
    "Slip",
    "Suspicion",
    "What",
    "WouldBe",
    "check_sheet",
    "sheet_report_schema",
    "sheet_schema",
]

Check = Literal[
    "dual_unit",
    "min_max",
    "order_of_magnitude",
    "ladder",
    "oversize",
    "clearance",
    "copied_row",
    "ratio_base",
    "temperature_scale",
    "two_sources",
    "readable",
]
"""A check of a sheet."""

Slip = Literal[
    "decimal_point",
    "digit",
    "digits_exchanged",
    "digit_left_out",
    "digit_too_many",
    "degree_sign",
    "decimal_comma",
    "unit",
    "sign",
    "min_max_exchanged",
    "difference_as_temperature",
    "temperature_as_difference",
    "ratio_converted",
    "other_base",
    "rounded_twice",
    "exact_factor",
    "copied_row",
    "mixed_units",
    "text",
]
"""What a contradiction is suspected to come from."""

What = Literal[
    "bore",
    "piston_diameter",
    "clearance",
    "oversize_step",
    "grade",
    "pin_diameter",
    "pin_bore",
    "pin_clearance",
    "ring_gap",
    "ring_width",
    "groove_width",
    "ring_side_clearance",
    "taper",
    "out_of_round",
    "hone_stock",
    "measuring_place",
    "pin_offset",
    "stroke",
    "rod_length",
    "length",
    "temperature",
    "measuring_temperature",
    "heating_temperature",
    "temperature_difference",
    "bend",
    "clearance_per_bore",
    "ring_gap_per_bore",
    "ring_gap_growth",
    "ratio",
    "force",
]
"""What an entry is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WouldBe(Value):
    """A printed number, and what it would be by the others."""

    path: str
    """JSON Pointer of the text."""
    printed: str
    """The number in it."""
    would_be: str
    """What it would be by the others, to as many digits."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspicion(Value):
    """One thing that would explain a contradiction. Often there is more than one, in either text."""

    slip: Slip
    """The slip."""
    path: str
    """JSON Pointer of the text it is suspected in."""
    text: str
    """The same in words, with the number that would agree."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Contradiction(Value):
    """Entries that cannot all be right."""

    check: Check
    """The check that found it."""
    entries: tuple[str, ...]
    """Ids of the entries."""
    paths: tuple[str, ...]
    """JSON Pointers of the texts."""
    printed: tuple[str, ...]
    """The texts, as printed."""
    text: str
    """What does not agree, in words."""
    suspected: tuple[Suspicion, ...]
    """What is suspected; empty when no single slip explains it."""
    letter: str | None = None
    """Letter of the check."""
    would_be: tuple[WouldBe, ...] = ()
    """What the numbers would be by the others."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked(Value):
    """An entry, and what it was held against."""

    id: str
    """Its id."""
    what: What
    """What it is."""
    checks: tuple[Check, ...]
    """The checks that could be made. Only `readable` means: nothing on the sheet says the same thing twice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetReport(Written):
    """What was found on a sheet. Nothing of the sheet is changed."""

    _made_by: ClassVar[str] = "check_sheet"

    format: str
    """`gaugepoint-sheet-report`"""
    version: int
    """Version of the format."""
    library: str
    """Version of the library."""
    sheet: str
    """Name of the sheet."""
    entries: tuple[Checked, ...] = field(repr=False)
    """Every entry, in the order of the sheet."""
    contradictions: tuple[Contradiction, ...]
    """What cannot all be right: entry by entry, link by link, copied rows, lost degree signs."""
    warnings: tuple[Warning, ...] = field(repr=False)
    """What is possible but odd."""


def check_sheet(sheet: dict[str, Any] | str | bytes | os.PathLike[str] | os.PathLike[bytes]) -> SheetReport:
    """Hold the limits of a printed sheet against themselves.

    Nothing of the sheet is changed: the report names the entries that cannot all be right, and which single slips would explain it.

    Parameters
    ----------
    sheet : dict, str, bytes or os.PathLike
        The sheet document: as a dictionary; as JSON (a text that begins with ``{``, or bytes); or the path of a file with the
        JSON (any other text, or a path object).

    Returns
    -------
    SheetReport
        The report, typed. Its JSON is the same to the byte in every host.

    Raises
    ------
    InputError
        When the document or a field of it is refused. A printed text that cannot be read is no error but a contradiction.
    OSError
        When the file cannot be read.
    TypeError
        When `sheet` or something in the dictionary is of another type.

    Examples
    --------
    A temperature difference that was converted as a temperature (invented).

    >>> import gaugepoint
    >>> cooler = {"id": "cooler", "what": "temperature_difference", "printed": "50 C", "also_printed": "122 F"}
    >>> report = gaugepoint.check_sheet(
    ...     {"format": "gaugepoint-sheet", "version": 1, "sheet": {"id": "demo"}, "entries": [cooler]}
    ... )
    >>> report.contradictions[0].check, report.contradictions[0].suspected[0].slip
    ('temperature_scale', 'difference_as_temperature')
    """
    return written(SheetReport, _gaugepoint.check_sheet(document(sheet)))


def sheet_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a sheet document.

    Returns
    -------
    dict
        The schema. It says what fields there are; names and links are checked by `check_sheet`.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.sheet_schema()["title"]
    'SheetDocument'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.sheet_schema())
    return schema


def sheet_report_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of the report on a sheet.

    Returns
    -------
    dict
        The schema.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.sheet_report_schema()["title"]
    'SheetReport'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.sheet_report_schema())
    return schema
