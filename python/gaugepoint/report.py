"""The report as data: one frozen class for each of its structures, field for field as in the JSON.

A name that ends in ``_mm``, ``_c`` or ``_deg`` holds a number in that unit. ``None`` means not computed, and ``missing`` or a
reason says why. Every object is immutable, compares by value and can be pickled; the two mappings (`Block.counts`,
`Step.arguments`) are dictionaries and left out of the hash. A ``repr`` shows the result and leaves out the long lists behind it.
"""

from collections.abc import Mapping
from dataclasses import field
from typing import TYPE_CHECKING, ClassVar, Literal, TypeVar

from gaugepoint._data import read
from gaugepoint._value import Value, dataclass
from gaugepoint._written import Written, WrittenMarkdown, with_forms
from gaugepoint.error import at_door
from gaugepoint.plan import Case

if TYPE_CHECKING:
    from gaugepoint.working import WorkedNumber

__all__ = [
    "ActionReport",
    "AgainstPicture",
    "Asked",
    "Band",
    "BestPlaced",
    "Block",
    "BoreNeed",
    "BorePlaceReport",
    "BoreReport",
    "BoreWork",
    "BudgetLine",
    "Candidate",
    "Cause",
    "ChoiceReport",
    "Clamping",
    "ClearanceReport",
    "Closing",
    "Conformity",
    "Constant",
    "Conventions",
    "CountsReport",
    "CurveReport",
    "CutReport",
    "CylinderReport",
    "Datum",
    "Decision",
    "DialReport",
    "Disposition",
    "Dominant",
    "EngineName",
    "EstimateReport",
    "ExactReport",
    "Finding",
    "FinishReport",
    "FinishResult",
    "FinishTarget",
    "FinishedReport",
    "FoundReport",
    "GapOutcome",
    "GapReport",
    "GasketReport",
    "GaugePointTemperatures",
    "GaugeReport",
    "Group",
    "HistogramReport",
    "HotReport",
    "Input",
    "JobName",
    "KelvinLine",
    "LimitsReport",
    "LinerReport",
    "LinersReport",
    "Make",
    "MapPicture",
    "MassReport",
    "MassesReport",
    "MatchingReport",
    "MeasuredValue",
    "Method",
    "NewPistonReport",
    "Of",
    "OnsetReport",
    "Outcome",
    "OvalityReport",
    "OverlapReport",
    "OversizesReport",
    "PairReport",
    "Parameter",
    "PicturesReport",
    "PinHeld",
    "PistonRecord",
    "PistonReport",
    "PistonSizeReport",
    "PistonWork",
    "Place",
    "PlaceReport",
    "PlanReport",
    "PlannedCylinder",
    "Points",
    "ProfilePicture",
    "ProfileState",
    "PropagationReport",
    "PublishedReport",
    "Question",
    "ReferenceReport",
    "Report",
    "RingReport",
    "Rule",
    "RunningCase",
    "RunningReport",
    "SectionPicture",
    "SensitivityReport",
    "SettledReport",
    "Severity",
    "ShareReport",
    "Silicon",
    "SiliconClass",
    "SkirtType",
    "SleeveReport",
    "SpanReport",
    "StackReport",
    "Stage",
    "StandingReport",
    "Step",
    "StepReport",
    "Surface",
    "SurfacePlace",
    "SurfaceReport",
    "TargetReport",
    "Task",
    "TrialsReport",
    "Verdict",
    "WallFinding",
    "WallFinishReport",
    "WantedReport",
    "Warning",
    "Way",
    "WorkStep",
    "WorkTarget",
    "What",
    "WindowReport",
    "Working",
    "WorstCaseReport",
]

Rule = Literal[
    "simple_acceptance", "proven", "conformance_probability", "expanded_guard_band", "simple_acceptance_by_ratio"
]
"""Rule of decision."""

Conformity = Literal["conforms", "does not conform", "not proven", "not judged"]
"""What a decision says."""

Of = Literal[
    "piston_size",
    "bore_size",
    "bore_taper",
    "bore_out_of_round",
    "bench_clearance",
    "smallest_clearance",
    "running_margin_tight",
    "running_margin_loose",
    "matched_clearance",
    "finished_clearance",
    "finished_size",
    "ring_gap",
    "value",
]
"""What a decision is of."""

Outcome = Literal["reuse", "incomplete", "not proven", "find the cause first", "do not reuse"]
"""What a verdict says, from the best to the worst."""

Datum = Literal["skirt_bottom", "crown_top", "pin_axis"]
"""What a height on a piston is counted from."""

ProfileState = Literal["cold", "running"]
"""When a bore has its target profile."""

Clamping = Literal["bare", "caps_torqued", "plate_fitted", "liner_clamped"]
"""State of the block or liner while a bore is measured."""
Surface = Literal["bare_metal", "coating"]
"""Surface of a skirt."""

Place = Literal[
    "crown",
    "top_land",
    "ring_land",
    "ring_groove",
    "skirt",
    "pin_boss",
    "pin_bore",
    "pin_retention",
    "bore_wall",
    "crown_underside",
    "ring",
    "ports",
    "liner_outside",
    "liner_flange",
    "rod",
]
"""Where a finding was made."""

What = Literal[
    "carbon",
    "scuffing",
    "scoring",
    "seizure",
    "crack",
    "diagonal_wear",
    "coating_worn",
    "coating_flaking",
    "erosion",
    "impact",
    "groove_wear",
    "retaining_ring_loose",
    "ring_stuck",
    "matt_wear",
    "fracture",
    "hole",
    "polish",
    "pitting",
    "discolouration",
    "bend",
]
"""What was seen."""

BoreWork = Literal["leave", "bore", "sleeve", "replace", "undecided"]
"""What is done to a bore."""

PistonWork = Literal["reuse", "replace", "undecided"]
"""What is done about a piston."""

FinishResult = Literal["met", "to be honed", "hone on", "too large", "not proven"]
"""What was found of a bore after the work."""

Closing = Literal["proven", "not proven"]
"""Is a job closed?"""

Task = Literal[
    "find_cause",
    "read_again",
    "replace_bore",
    "get_parts",
    "measure_pistons",
    "fit_sleeves",
    "bore",
    "hone",
    "clean",
    "check_finish",
    "fit_liners",
    "file_rings",
    "even_masses",
    "fit_pistons",
    "fit_gasket",
    "close",
]
"""What is done."""

Stage = Literal["bored", "honed", "as_it_was"]
"""What was done to a bore last."""

GapOutcome = Literal["fits", "file", "too_wide"]
"""What is done to a ring."""

Way = Literal["one_step", "step_by_bore", "step_and_sleeves", "sleeves_alone"]
"""How the block is brought back."""

Parameter = Literal["rpk", "rk", "rvk", "mr1", "mr2", "crosshatch"]
"""A parameter of a finish. The names are those of ISO 13565-2."""

WallFinding = Literal["in", "out", "not_proven", "not_given", "no_limit"]
"""What is found of a parameter."""

Severity = Literal["light", "marked", "severe"]
"""How bad it is."""

Disposition = Literal["clean", "measure", "find_cause", "reject"]
"""What a finding asks for, from the least to the most."""

Make = Literal["cast", "forged", "steel"]
"""How a piston was made."""

SiliconClass = Literal["hypoeutectic", "eutectic", "hypereutectic"]
"""Silicon in the alloy of a piston."""

SkirtType = Literal["full", "slipper", "strutted"]
"""Form of a skirt."""

PinHeld = Literal["retaining_rings", "pressed_in_rod", "clamped", "buttons"]
"""How a pin is held."""

Question = Literal[
    "both_faces",
    "ring_zone_clean",
    "soon_after_rebuild",
    "dark_and_torn",
    "at_45_degrees",
    "from_the_crown",
    "lower_edge_alone",
    "loaded_cold",
    "pin_turns_freely",
    "oily",
    "one_sided",
    "coating_in_the_lows",
    "coolant_short",
    "oil_short",
    "grit_found",
    "fuel_in_oil",
    "pitted_edge",
    "smooth_melt",
    "overloaded",
    "shape_of_valve",
    "shape_by_clamping",
    "stands_low",
    "ring_used_again",
    "rod_bent",
    "forged",
    "pin_pressed",
    "pin_in_retaining_rings",
    "skirt_strutted",
    "hypereutectic",
]
"""What is asked about a finding; each has the answer yes or no. Those on the piston itself are answered by its record."""

Group = Literal[
    "normal",
    "clearance",
    "lubrication",
    "heat",
    "combustion",
    "dirt",
    "alignment",
    "assembly",
    "load",
    "wear",
    "corrosion",
]
"""What a cause is about."""

Cause = Literal[
    "normal_running",
    "running_in",
    "coating_wears_to_shape",
    "oil_past_rings_or_guides",
    "one_ring_or_guide",
    "blow_by",
    "piston_too_hot",
    "idling_or_oil",
    "coating_worn",
    "coating_not_bonded",
    "bore_too_small",
    "bore_pulled_by_clamping",
    "bore_tight_below",
    "wrong_ovality",
    "loaded_before_warm",
    "skirt_held_by_struts",
    "pin_tight",
    "pin_dry",
    "press_fit_too_tight",
    "boss_too_hot",
    "oil_film_lost",
    "oil_lost",
    "fuel_wash",
    "local_cooling",
    "coolant_lost",
    "crown_too_hot",
    "knock",
    "pre_ignition",
    "injection_fault",
    "grit_in_oil",
    "pieces_or_dust",
    "rod_bent_or_twisted",
    "bore_not_square",
    "force_along_pin",
    "wrong_retaining_ring",
    "met_valve_or_head",
    "overload",
    "thermal_fatigue",
    "load_fatigue",
    "brittle_alloy",
    "loose_rings",
    "cavitation",
    "liner_seat",
    "jet_missing",
    "bridge_not_relieved",
    "liquid_lock",
]
"""A cause of damage."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Dominant(Value):
    """The source with the largest share."""

    source: str
    """The source in words."""
    share: float
    """Share of the variance, 0 to 1."""
    path: str
    """Field of the document it comes from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BudgetLine(Value):
    """Share of one source."""

    source: str
    """The source in words."""
    contribution_mm: float
    """Sensitivity times standard uncertainty, with its sign."""
    share: float
    """Share of the variance, 0 to 1."""
    path: str
    """Field of the document it comes from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredValue(Value):
    """A value with its uncertainty."""

    value_mm: float
    """Best estimate."""
    standard_uncertainty_mm: float
    """Standard uncertainty."""
    expanded_uncertainty_mm: float
    """Expanded uncertainty at about 95 %: coverage factor times standard uncertainty."""
    coverage_factor: float
    """Coverage factor: 2, or with few degrees of freedom that of Student's t at the same probability."""
    dof: float | None = None
    """Effective degrees of freedom of the standard uncertainty; absent when they are infinite."""
    budget: tuple[BudgetLine, ...] = field(repr=False)
    """Sources, largest share first."""
    dominant: Dominant | None = None
    """The largest share."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JobName(Value):
    """The job as named in the document."""

    id: str
    """Name."""
    date: str
    """Date."""
    note: str | None = None
    """Note."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TargetReport(Value):
    """The shape the bores should have, as named in the document."""

    state: ProfileState
    """When they have it."""
    origin: str
    """Where it is printed, as given."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WindowReport(Value):
    """An opening in the wall of a bore."""

    what: str
    """What it is, as given."""
    from_depth_mm: float
    """Depth of its upper edge."""
    to_depth_mm: float
    """Depth of its lower edge."""
    from_angle_deg: float
    """Angle it begins at."""
    to_angle_deg: float
    """Angle it ends at, counted onward from its beginning."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Silicon(Value):
    """Silicon in the alloy of a piston."""

    class_: SiliconClass = field(metadata={"json": "class"})
    """Its class."""
    evidence: str
    """What shows it, such as a mark or an analysis; looks do not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PistonRecord(Value):
    """What is known of a piston besides its sizes. What was not seen is left out."""

    make: Make | None = None
    """How it was made."""
    silicon: Silicon | None = None
    """Silicon in its alloy."""
    skirt: SkirtType | None = None
    """Form of the skirt."""
    pin: PinHeld | None = None
    """How its pin is held."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EngineName(Value):
    """The engine as named in the document."""

    name: str
    """Name."""
    target_profile: TargetReport | None = None
    """The shape its bores should have, where that is not straight."""
    windows: tuple[WindowReport, ...] = ()
    """Openings in the walls of its bores, where shape was not examined."""
    may_not_be_machined: str | None = None
    """Why its bores may be neither honed nor bored, when they may not."""
    piston_record: PistonRecord | None = None
    """What is known of its pistons besides their sizes, as given."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Conventions(Value):
    """What the numbers mean and how they were judged."""

    reference_temperature_c: float
    """Temperature that sizes are given at."""
    clearance: str
    """`diametral`"""
    rule: Rule
    """Rule of decision."""
    at_least: float
    """Probability asked for by the rule `conformance_probability`."""
    ratio_at_least: float | None = None
    """Tolerance over the uncertainty interval asked for by the rule `simple_acceptance_by_ratio`."""
    acceptance_guard: float | None = None
    """Share of the expanded uncertainty that a value must lie inside the limits to conform, with the rule `expanded_guard_band`."""
    rejection_guard: float | None = None
    """Share of the expanded uncertainty that a value must lie outside the limits to not conform, with the rule `expanded_guard_band`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GaugeReport(Value):
    """State of a gauge."""

    name: str
    """Name."""
    calibration: str
    """`in date` or `overdue`, on the day of the job."""
    preset: str | None = None
    """The row of a published table that stands for its data sheet, with the source of it."""
    zero_error: MeasuredValue | None = None
    """Error of the zero, where it was checked."""
    recheck: str | None = None
    """`within its limit` or `beyond its limit`: the drift on its master, where it was checked after the work."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision(Value):
    """A decision with everything it rests on. Names that end in `_mm` are in mm."""

    of: Of
    """What it is of."""
    value_mm: float | None = None
    """The value at the reference temperature of its limit."""
    standard_uncertainty_mm: float | None = None
    """Its standard uncertainty."""
    dof: float | None = None
    """Its effective degrees of freedom; absent when they are infinite."""
    reference_temperature_c: float | None = None
    """Reference temperature of the limit."""
    lower_mm: float | None = None
    """Lower limit."""
    upper_mm: float | None = None
    """Upper limit."""
    origin: str | None = None
    """Where the limits come from."""
    for_cylinders: tuple[int, ...] = ()
    """Cylinders that the limits are printed for; absent when they are for all."""
    guard_band_mm: float | None = None
    """What a value must lie inside the limits to conform, with the rules `proven` and `expanded_guard_band`; below 0 it may lie outside."""
    rejection_guard_band_mm: float | None = None
    """What a value must lie outside the limits to not conform, with the rule `expanded_guard_band`; below 0 it may lie inside."""
    uncertainty_ratio: float | None = None
    """Tolerance over the uncertainty interval 2 U, with the rule `simple_acceptance_by_ratio`."""
    probability_of_conformity: float | None = None
    """Probability that the true value conforms."""
    result: Conformity
    """What it says."""
    reason: str
    """Why, in words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate(Value):
    """A cause that agrees with what was seen and answered."""

    cause: Cause
    """The cause."""
    text: str
    """The cause in words."""
    group: Group
    """What the cause is about."""
    sign: str
    """Word of the sign it comes from."""
    confirmed: bool
    """Whether every answer that it needs was given."""
    open: tuple[Question, ...]
    """Questions whose answers it still needs."""
    check_next: str
    """What to look at next."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked(Value):
    """A question that is open."""

    question: Question
    """The question."""
    text: str
    """The question in words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding(Value):
    """A finding and what it asks for."""

    place: Place
    """Where."""
    what: What
    """What."""
    severity: Severity
    """How bad."""
    note: str | None = None
    """As given."""
    cause: str | None = None
    """The cause, as given."""
    cause_found: Cause | None = None
    """The cause as the catalogue of signs has it: given by its word, or the one that the answers leave and confirm."""
    candidates: tuple[Candidate, ...] = field(repr=False)
    """Causes that agree with it and with the answers, those that are confirmed first."""
    ask: tuple[Asked, ...] = field(repr=False)
    """What to ask, first the question on which most candidates depend."""
    disposition: Disposition
    """What it asks for."""
    check_next: str
    """What to look at next."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict(Value):
    """A verdict with its reasons."""

    outcome: Outcome
    """What it says."""
    reasons: tuple[str, ...]
    """Why, the weightiest first."""
    decided_by: Of | None = None
    """The value that decided: of those with this outcome, the one least sure to conform."""
    dominant: Dominant | None = None
    """What dominates the uncertainty of that value."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PistonSizeReport(Value):
    """A size of a piston."""

    height_mm: float
    """Height of the place."""
    datum: Datum
    """What the height is counted from."""
    angle_deg: float
    """Direction of the diameter."""
    over: Surface
    """Surface that was touched."""
    material: str | None = None
    """Material at this height, where the piston is of several."""
    readings: tuple[str, ...]
    """Readings as typed."""
    size: MeasuredValue
    """Size at 20 C over that surface."""
    bare_size: MeasuredValue | None = None
    """Size at 20 C of the metal under a coating of stated thickness."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PistonReport(Value):
    """A piston."""

    record: PistonRecord | None = None
    """What is known of it besides its sizes, as given, where that is not what is known of the engine's pistons."""
    sizes: tuple[PistonSizeReport, ...] = field(repr=False)
    """Its sizes, in the order of the document."""
    ovality: MeasuredValue | None = None
    """Thrust diameter less pin-axis diameter at the height of the gauge point."""
    decisions: tuple[Decision, ...]
    """Decisions."""
    findings: tuple[Finding, ...]
    """Findings by eye."""
    verdict: Verdict
    """Does it go back."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BorePlaceReport(Value):
    """A diameter of a bore."""

    depth_mm: float
    """Depth from the deck."""
    axis_deg: float
    """Direction of the diameter."""
    readings: tuple[str, ...]
    """Readings as typed."""
    size: MeasuredValue
    """Size at 20 C."""
    intended_mm: float | None = None
    """Deviation from the nominal size that a cold target profile intends at this depth."""
    from_target: MeasuredValue | None = None
    """How far the size is from that target; above 0 it is too wide."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoreReport(Value):
    """A bore."""

    places: tuple[BorePlaceReport, ...] = field(repr=False)
    """Its diameters, in the order of the document."""
    size: MeasuredValue | None = None
    """Size by the size rule."""
    taper: MeasuredValue | None = None
    """Taper by the taper rule."""
    out_of_round: MeasuredValue | None = None
    """Out-of-round by its rule, as a difference of diameters."""
    decisions: tuple[Decision, ...]
    """Decisions."""
    findings: tuple[Finding, ...]
    """Findings by eye."""
    verdict: Verdict
    """Does it go back."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RunningCase(Value):
    """Clearance at one pair of temperatures."""

    piston_temperature_c: float
    """Temperature of the piston."""
    bore_temperature_c: float
    """Temperature of the bore."""
    clearance: MeasuredValue
    """Clearance of freely growing parts."""
    reference: MeasuredValue | None = None
    """That of the original piston at the maker's least bench clearance."""
    margin: MeasuredValue | None = None
    """The one less the other."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RunningReport(Value):
    """Clearance at the stated temperatures."""

    tight: RunningCase
    """Hottest piston in the coldest bore."""
    loose: RunningCase
    """Coldest piston in the hottest bore."""
    origin: str
    """Where the temperatures come from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClearanceReport(Value):
    """Piston in bore."""

    bench: MeasuredValue | None = None
    """Clearance at 20 C."""
    smallest: MeasuredValue | None = None
    """Clearance at 20 C at the smallest place of the bore that was read."""
    smallest_from_target: MeasuredValue | None = None
    """The same at the place that is smallest against a cold target profile, less the deviation intended there."""
    running: RunningReport | None = None
    """Clearance at the stated temperatures."""
    note: str | None = None
    """What the numbers do not say."""
    decisions: tuple[Decision, ...]
    """Decisions."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GaugePointTemperatures(Value):
    """Temperatures at the gauge point."""

    thrust_c: float
    """Thrust side of the piston."""
    pin_c: float
    """Pin side of the piston."""
    bore_c: float
    """Wall of the bore at the same place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceReport(Value):
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
class BestPlaced(Value):
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
class Band(Value):
    """Angles that touch at one height."""

    height_mm: float
    """Height above the bottom edge of the skirt."""
    from_deg: float
    """First angle."""
    to_deg: float
    """Last angle; above 360 when the band crosses the thrust axis."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OverlapReport(Value):
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
class OvalityReport(Value):
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
class SurfaceReport(Value):
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
class ReferenceReport(Value):
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
class KelvinLine(Value):
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
class SurfacePlace(Value):
    """A place with its surface."""

    surface: str
    """Skirt or land."""
    place: PlaceReport
    """The place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OnsetReport(Value):
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
class FoundReport(Value):
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
class ProfilePicture(Value):
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
class SectionPicture(Value):
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
class MapPicture(Value):
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
class AgainstPicture(Value):
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
class PicturesReport(Value):
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
class HotReport(Value):
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
class CylinderReport(Value):
    """One cylinder."""

    number: int
    """Its number."""
    piston: PistonReport | None = field(default=None, repr=False)
    """Its piston."""
    bore: BoreReport | None = field(default=None, repr=False)
    """Its bore."""
    clearance: ClearanceReport | None = field(default=None, repr=False)
    """Piston in bore."""
    hot: HotReport | None = field(default=None, repr=False)
    """Piston in bore everywhere and at temperature, when the shape of the pistons is known."""
    findings: tuple[Finding, ...] = ()
    """Findings by eye on a part of which nothing was read."""
    missing: tuple[str, ...] = ()
    """What was not read."""
    verdict: Verdict
    """Does it go back together."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Block(Value):
    """The engine as a whole."""

    verdict: Verdict
    """Its verdict: the worst of its cylinders."""
    counts: Mapping[str, int] = field(hash=False)
    """Number of cylinders of each outcome."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Warning(Value):
    """Something that is possible but odd, or that a reader of the report must know."""

    kind: str
    """Kind: `odd_value`, `calibration_overdue`, `cannot_compare`, ..."""
    path: str
    """JSON Pointer of the field."""
    text: str
    """What to know."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Input(Value):
    """A number given by the user."""

    id: str
    """Name within the working: `i0`, `i1`, ..."""
    symbol: str
    """Symbol."""
    value: float
    """The number in `unit`."""
    unit: str
    """Unit."""
    path: str
    """JSON Pointer of the field."""
    typed: str
    """The field as it was typed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Constant(Value):
    """A constant with its source."""

    id: str
    """Name within the working: `k0`, `k1`, ..."""
    symbol: str
    """Symbol."""
    value: float
    """The number in `unit`."""
    unit: str
    """Unit."""
    source: str
    """Where it comes from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step(Value):
    """One step."""

    id: str
    """Name within the working: `s0`, `s1`, ..."""
    of: str
    """What the step belongs to, in words."""
    symbol: str
    """Symbol of the result."""
    formula: str
    """The formula, in the symbols of `in`."""
    arguments: Mapping[str, str] = field(hash=False, metadata={"json": "in"})
    """The id behind each symbol."""
    value: float
    """The result in `unit`."""
    unit: str
    """Unit."""
    source: str
    """Where the formula comes from."""
    results: tuple[str, ...] = ()
    """JSON Pointers into the report of the places where this number stands."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Working(Value):
    """The working of a calculation."""

    inputs: tuple[Input, ...]
    """Numbers given by the user."""
    constants: tuple[Constant, ...]
    """Constants and where they come from."""
    steps: tuple[Step, ...]
    """The steps, each after those it needs."""

    def number(self, place: str) -> "WorkedNumber":
        """Tell how one number was made.

        Parameters
        ----------
        place : str
            A JSON Pointer into the report, as `Step.results` has it, or the id of a step.

        Returns
        -------
        WorkedNumber
            The step with what goes into it; a notebook shows the formula with the numbers put in.

        Raises
        ------
        InputError
            When no step has that id or result.
        """
        from gaugepoint.working import WorkedNumber

        step = next((s for s in self.steps if place == s.id or place in s.results), None)
        if step is None:
            raise at_door("unknown_name", "place", place, "no step of this working has that id or result")
        parts: tuple[Input | Constant | Step, ...] = (*self.inputs, *self.constants, *self.steps)
        known = {part.id: part for part in parts}
        return WorkedNumber(step, tuple(known[of] for of in step.arguments.values()))


Method = Literal["closed_form", "line_integral", "convolution", "enumeration", "one_contributor", "beyond_reach"]
"""How a probability of a linear stack was computed."""

Points = Literal["random", "latin_hypercube", "sobol"]
"""How the points of trials lie."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorstCaseReport(Value):
    """Smallest and largest value within the limits of all contributors."""

    lower: float
    """Smallest value."""
    upper: float
    """Largest value."""
    proof: Literal["linear", "monotone", "subdivision"]
    """`linear`, `monotone` (two corners, by the signs of the slopes) or `subdivision` (bounds by intervals)."""
    lower_bound: float
    """Nothing lies below this; of a linear stack it is the smallest value."""
    upper_bound: float
    """Nothing lies above this."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SpanReport(Value):
    """An interval of sizes."""

    lower: float
    """Lower end."""
    upper: float
    """Upper end."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PublishedReport(Value):
    """Published forms of a linear stack."""

    root_sum_square: SpanReport
    """Root-sum-square."""
    bender: SpanReport
    """With Bender's factor 1.5."""
    modified: SpanReport
    """Modified root-sum-square."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PropagationReport(Value):
    """A function by its derivatives at the means of the contributors."""

    first_order_mean: float
    """Mean to first order: the function at the means."""
    first_order_standard_deviation: float
    """Standard deviation to first order."""
    shift_of_mean: float
    """Mean to second order less that to first."""
    skewness: float | None = None
    """Skewness to second order."""
    excess_kurtosis: float | None = None
    """Excess kurtosis to second order."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ShareReport(Value):
    """What a contributor or shared cause does."""

    name: str
    """Its name."""
    sensitivity: float | None = None
    """Derivative of a function by it."""
    standard_deviation: float
    """Standard deviation that it alone gives, of a function to first order."""
    share: float
    """Its share of the variance, of a function to first order."""
    together: float | None = None
    """Share to second order of its products with others."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitsReport(Value):
    """Limits of the result; one that is absent is no limit."""

    lower: float | None = None
    """Lower limit."""
    upper: float | None = None
    """Upper limit."""
    worst_case_within: bool
    """Whether the worst case is within them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SensitivityReport(Value):
    """Change of the probabilities outside the limits for a change of one tolerance, its capability kept."""

    name: str
    """Name of the contributor."""
    tolerance: float
    """Its tolerance: half the distance of its limits."""
    below: float
    """Derivative of the probability below the lower limit by it."""
    above: float
    """Derivative of the probability above the upper limit by it."""
    ppm: float
    """Derivative of the parts per million outside by it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ExactReport(Value):
    """A linear stack against its limits."""

    below: float
    """Probability below the lower limit."""
    below_method: Method | None = None
    """How it was computed; absent without that limit."""
    above: float
    """Probability above the upper limit."""
    above_method: Method | None = None
    """How it was computed; absent without that limit."""
    ppm: float
    """Parts per million outside."""
    relative_error: float
    """Bound of the relative error of both."""
    cp: float | None = None
    """`Cp`; of two limits only."""
    cpk: float | None = None
    """`Cpk`; of two limits only."""
    sensitivities: tuple[SensitivityReport, ...] = field(default=(), repr=False)
    """What each tolerance does to the probabilities, in the order of the contributors, when it was asked for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CurveReport(Value):
    """A density to draw."""

    sizes: tuple[float, ...] = field(repr=False)
    """Sizes, rising in equal steps between the two that leave 1e-6 outside on their side."""
    densities: tuple[float, ...] = field(repr=False)
    """Density at each, per unit of the stack."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HistogramReport(Value):
    """A histogram to draw. A size at an edge belongs to the bin below it."""

    edges: tuple[float, ...] = field(repr=False)
    """Edges of the bins, fixed before the trials."""
    probabilities: tuple[float, ...] = field(default=(), repr=False)
    """Exact probability of each bin of a linear stack."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledReport(Value):
    """How an adaptive run ended. Source: JCGM 101:2008, 7.9.4."""

    digits: int
    """Significant digits of the standard deviation that are meant."""
    most_trials: int
    """Trials at which it stops unsettled."""
    sequences: int
    """Number of sequences."""
    tolerance: float
    """Numerical tolerance at the end."""
    settled: bool
    """Whether mean, deviation and both ends of the interval are stable to it; if not, the trials ran out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CountsReport(Value):
    """Trials in the bins of a histogram."""

    below: int
    """Not above the first edge."""
    counts: tuple[int, ...] = field(repr=False)
    """In each bin."""
    above: int
    """Above the last edge."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EstimateReport(Value):
    """An estimate with its interval."""

    value: float
    """The estimate."""
    lower: float
    """Lower end of its interval."""
    upper: float
    """Upper end."""
    effective: float | None = None
    """Effective trials behind an importance sample."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialsReport(Value):
    """What the trials say."""

    seed: int
    """Seed of the first run."""
    trials: int
    """Trials of a run."""
    settled: SettledReport | None = None
    """Whether the trials have settled, when that was to end them."""
    points: Points
    """How their points lie."""
    runs: int
    """Independent runs, each with the next seed."""
    mean: EstimateReport
    """Mean, with the interval of that mean."""
    standard_deviation: float
    """Standard deviation of the trials of the first run."""
    probability: float
    """Probability within the interval of the stack."""
    interval: SpanReport
    """Interval with equal shares of the trials of the first run beyond either end."""
    confidence: float
    """Confidence of all intervals of estimates."""
    below: EstimateReport | None = None
    """Probability below the lower limit."""
    above: EstimateReport | None = None
    """Probability above the upper limit."""
    rare_below: EstimateReport | None = None
    """The same by importance sampling."""
    rare_above: EstimateReport | None = None
    """The same by importance sampling."""
    histogram: CountsReport | None = field(default=None, repr=False)
    """Trials of the first run in each bin of the histogram, when it was asked for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StackReport(WrittenMarkdown):
    """A stack: worst case, moments, what each contributor does, and what lies outside the limits."""

    _made_by: ClassVar[str] = "evaluate_stack"

    format: str
    """`gaugepoint-stack-report`"""
    version: int
    """Version of the format."""
    library: str
    """Version of the library."""
    name: str
    """Name of the stack."""
    note: str | None = None
    """Note of the document."""
    unit: str | None = None
    """Unit of the result."""
    kind: str
    """`linear`, `formula` or the word of a ready-made stack."""
    formula: str | None = None
    """The formula, as the document has it."""
    nominal: float
    """Size at nominal."""
    mean: float
    """Mean: of a linear stack exact, of a function to second order."""
    standard_deviation: float
    """Standard deviation: of a linear stack exact, of a function to second order."""
    worst_case: WorstCaseReport
    """All contributors anywhere within their limits."""
    published: PublishedReport | None = None
    """Published forms of a linear stack."""
    propagation: PropagationReport | None = None
    """A function by its derivatives."""
    shares: tuple[ShareReport, ...] = field(repr=False)
    """What each contributor and shared cause does, the largest share first."""
    limits: LimitsReport | None = None
    """Limits of the result."""
    exact: ExactReport | None = None
    """A linear stack against the limits, from its exact distribution."""
    curve: CurveReport | None = field(default=None, repr=False)
    """Density of a linear stack to draw, when it was asked for."""
    histogram: HistogramReport | None = field(default=None, repr=False)
    """Histogram to draw, when it was asked for."""
    monte_carlo: TrialsReport | None = None
    """What the trials say."""
    working: Working | None = field(default=None, repr=False)
    """The working, when it was asked for; within a job it stands with that of the job."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WantedReport(Value):
    """Clearance that is wanted at 20 C, over the diameter."""

    min_mm: float
    """Lower limit."""
    max_mm: float
    """Upper limit."""
    target_mm: float
    """What is aimed at."""
    clamping: tuple[Clamping, ...]
    """States of the block that it is meant for."""
    origin: str
    """Where it comes from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedCylinder(Value):
    """What is done to a cylinder."""

    number: int
    """Its number."""
    bore: BoreWork
    """What is done to its bore."""
    oversize_mm: float | None = None
    """Oversize that it is machined to."""
    piston: PistonWork
    """What is done about its piston."""
    new_piston: str | None = None
    """Name of the piston that is fitted, where it is known."""
    reasons: tuple[str, ...]
    """Why."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoreNeed(Value):
    """What a bore needs."""

    cylinder: int
    """Number of the cylinder."""
    clean_up_least: MeasuredValue
    """Smallest clean bore when both sides are worn alike."""
    clean_up: MeasuredValue
    """The same when one side alone is worn: diameters do not tell, so this one is used."""
    needed_mm: float
    """What the bore of a step must at least be, with the guard of the rule."""
    largest_by_walls_mm: float | None = None
    """Largest bore that its walls allow, where they were gauged."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepReport(Value):
    """What a step brings with it."""

    oversize_mm: float
    """Over the nominal bore."""
    bore_mm: float
    """Its bore."""
    compression_ratio: float | None = None
    """Compression ratio with the same chamber."""
    kept_ring_gap_mm: float | None = None
    """End gap of rings that are kept."""
    more_mass_g: float | None = None
    """Mass of a piston over that of a standard one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ActionReport(Value):
    """What is done to a bore."""

    cylinder: int
    """Number of the cylinder."""
    work: BoreWork
    """`bore`, `sleeve` or `leave`."""
    oversize_mm: float | None = None
    """Oversize that it is bored to; absent for a bore that is left."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceReport(Value):
    """A way to bring the block back."""

    way: Way
    """Which way."""
    price: float
    """Pistons, boring and sleeves together."""
    actions: tuple[ActionReport, ...]
    """What is done to each bore that was read."""
    ruled_out: tuple[str, ...] = ()
    """What rules it out; absent for one that can be done."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OversizesReport(Value):
    """To which sizes the bores can be machined."""

    needs: tuple[BoreNeed, ...] = field(repr=False)
    """What every bore that was read needs."""
    steps: tuple[StepReport, ...] = field(repr=False)
    """What each step brings with it, rising."""
    choices: tuple[ChoiceReport, ...] = field(repr=False)
    """Every way, those that can be done first, the cheapest first."""
    chosen: int | None = None
    """Place of the way that is taken; absent when none can be."""
    order: tuple[int, ...]
    """Order in which the bores are machined, so that the heat spreads."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewPistonReport(Value):
    """A piston to hand."""

    name: str
    """Its name."""
    oversize_mm: float | None = None
    """Over the nominal size."""
    sizes: tuple[PistonSizeReport, ...] = field(repr=False)
    """Its sizes."""
    mass_g: float | None = None
    """Mass."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PairReport(Value):
    """A piston in a bore."""

    cylinder: int
    """Number of the cylinder."""
    piston: str
    """Name of the piston."""
    clearance: MeasuredValue
    """Their clearance at 20 C."""
    deviation_mm: float
    """Clearance less its target."""
    decision: Decision
    """The clearance against what is wanted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchingReport(Value):
    """Which piston goes into which bore."""

    case: Case
    """The case that the data are."""
    because: str
    """What in the data proves it."""
    pairs: tuple[PairReport, ...] = field(repr=False)
    """The pairs, in order of cylinder."""
    spare: tuple[str, ...]
    """Pistons without a bore."""
    worst_probability: float
    """Least probability of conformity of its pairs, by the sizes and their uncertainties alone."""
    worst_probability_as_listed: float
    """The same of the pistons as they are listed: the first in the first bore, and so on."""
    worst_probability_by_grade: float | None = None
    """The same of what the grades alone give."""
    sum_of_squares_mm2: float
    """Sum of the squared deviations from the target."""
    sum_of_squares_as_listed_mm2: float
    """The same of the pistons as they are listed."""
    mass_spread_g: float | None = None
    """Largest difference of mass of the pistons that are fitted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DialReport(Value):
    """What the dial of a bore gauge must read."""

    gauge: str
    """Name of the gauge."""
    block_temperature_c: float
    """Temperature of the block."""
    gauge_temperature_c: float
    """Temperature of the gauge."""
    boring: MeasuredValue
    """At the size after boring."""
    finish: MeasuredValue
    """At the finish size."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishTarget(Value):
    """Size that a bore is machined to."""

    cylinder: int
    """Number of the cylinder."""
    piston: str
    """Name of its piston."""
    finish: MeasuredValue
    """Size after honing, at 20 C."""
    boring: MeasuredValue
    """Size after boring, at 20 C."""
    tolerance_mm: float
    """Half of the tolerance of the finish size."""
    dial: DialReport | None = None
    """What the dial must read on the machine."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SleeveReport(Value):
    """A sleeve that is pressed in."""

    cylinder: int
    """Number of its cylinder."""
    outside: MeasuredValue
    """Its outside diameter at 20 C."""
    hole: MeasuredValue
    """Hole that it takes, at 20 C."""
    hole_least_mm: float
    """Smallest hole: with the largest interference."""
    hole_most_mm: float
    """Largest hole: with the least interference."""
    assembly_clearance: MeasuredValue
    """Clearance when it goes in, the block heated and the sleeve chilled as stated."""
    slides_in: bool
    """Does it slide in?"""
    running_interference_mm: tuple[float, ...] = ()
    """Interference that is left at the coldest and at the hottest of the wall in the running engine; below 0 the sleeve has lost contact."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LinerReport(Value):
    """A liner on its shims."""

    cylinder: int
    """Number of its cylinder."""
    unevenness_mm: float
    """Most less least depth of its counterbore."""
    shims_mm: tuple[float, ...] | None = None
    """Its shims; empty is none, absent where nothing serves the row."""
    lowest_mm: float | None = None
    """Smallest protrusion round its flange."""
    highest_mm: float | None = None
    """Largest protrusion round its flange."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LinersReport(Value):
    """Shims below the liners of a row."""

    each: tuple[LinerReport, ...] = field(repr=False)
    """The liners along the row."""
    largest_step_mm: float | None = None
    """Largest difference of neighbours at their nearest points."""
    ruled_out: tuple[str, ...] = ()
    """What rules the row out; absent when it can be done."""
    origin: str
    """Where the limits come from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RingReport(Value):
    """A ring and its gap."""

    cylinder: int
    """Number of its cylinder."""
    ring: str
    """Which ring."""
    outcome: GapOutcome | None = None
    """What is done; absent where the bore it runs in is not known."""
    gap: MeasuredValue | None = None
    """Its gap in the bore it runs in."""
    target_mm: float
    """Gap that it is filed to."""
    file_off_mm: float | None = None
    """What is filed off in all."""
    each_end_mm: float | None = None
    """What is filed off each end."""
    origin: str
    """Where the limits come from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StandingReport(Value):
    """How a piston stands."""

    cylinder: int
    """Number of its cylinder."""
    protrusion_mm: float
    """Above the deck."""
    squish_mm: float
    """From its crown to the head, with that gasket."""
    squish_is_met: bool | None = None
    """Is that at least what is asked for?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class GasketReport(Value):
    """Which head gasket."""

    grade: str
    """Mark of the grade."""
    thickness_mm: float
    """Its thickness, compressed."""
    decided_by: int
    """The cylinder that decided."""
    pistons: tuple[StandingReport, ...] = field(repr=False)
    """The pistons, in the order of the document."""
    spread_mm: float
    """Largest less smallest protrusion."""
    spread_is_met: bool | None = None
    """Is that within its limit?"""
    probability_below: float
    """Probability that the true largest protrusion lies in a grade below."""
    probability_above: float
    """Probability that it lies in a grade above."""
    origin: str
    """Where the table is printed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutReport(Value):
    """What is taken off a part."""

    part: str
    """Which part."""
    off_g: float
    """How much."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MassReport(Value):
    """The mass of what goes into a cylinder."""

    cylinder: int
    """Number of the cylinder."""
    mass_g: float
    """As it was weighed."""
    cuts: tuple[CutReport, ...] = ()
    """What is taken off each part, in order."""
    left_g: float
    """Then."""
    over_g: float
    """What it is then still over."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MassesReport(Value):
    """What is taken off the masses."""

    most_g: float
    """Heaviest mass that is allowed."""
    each: tuple[MassReport, ...] = field(repr=False)
    """The cylinders, in the order of the document."""
    is_met: bool
    """Are all within the band then?"""
    origin: str
    """Where the band comes from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GapReport(Value):
    """An end gap after filing."""

    ring: str
    """Which ring."""
    gap: MeasuredValue
    """Its gap."""
    decision: Decision
    """The gap against its limits."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WallFinishReport(Value):
    """A parameter of a finish."""

    parameter: Parameter
    """Which one."""
    value: float | None = None
    """As it was read, in um, % or degrees."""
    finding: WallFinding
    """What is found."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedReport(Value):
    """A cylinder after the work."""

    number: int
    """Its number."""
    stage: Stage
    """What was done to it last."""
    piston: str | None = None
    """Name of its piston; absent for the one that was in it."""
    bore: BoreReport = field(repr=False)
    """Its bore."""
    stock: MeasuredValue | None = None
    """Finish size less the size that was found."""
    clearance: MeasuredValue | None = None
    """Clearance at 20 C."""
    decisions: tuple[Decision, ...] = field(repr=False)
    """The clearance against what is wanted, and the size against its target."""
    gaps: tuple[GapReport, ...] = field(default=(), repr=False)
    """End gaps, as they are now."""
    surface: tuple[WallFinishReport, ...] = field(default=(), repr=False)
    """Finish of its wall."""
    result: FinishResult
    """What that makes."""
    next: str
    """What to do next."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishReport(Value):
    """What was found after the work."""

    by: str
    """Who read it, as given."""
    date: str
    """When, as given."""
    cylinders: tuple[FinishedReport, ...] = field(repr=False)
    """Cylinder by cylinder, in the order of the document."""
    matching: MatchingReport | None = None
    """The pistons to hand matched to the bores as they are now."""
    result: Closing
    """Is the job closed?"""
    open: tuple[str, ...] = ()
    """What is not proven, not met or not read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanReport(Value):
    """What is to be done to the engine."""

    wanted: WantedReport | None = None
    """Clearance that is wanted."""
    cylinders: tuple[PlannedCylinder, ...] = field(repr=False)
    """What is done to every cylinder, in order of number."""
    oversizes: OversizesReport | None = None
    """To which sizes the bores can be machined."""
    pistons: tuple[NewPistonReport, ...] = field(default=(), repr=False)
    """Pistons to hand, in the order of the document."""
    matching: MatchingReport | None = None
    """Which of them goes into which bore that is left as it is."""
    targets: tuple[FinishTarget, ...] = field(default=(), repr=False)
    """Sizes that bores are machined to, each for its piston."""
    sleeves: tuple[SleeveReport, ...] = field(default=(), repr=False)
    """Sleeves that are pressed in."""
    liners: LinersReport | None = None
    """Shims below the liners."""
    rings: tuple[RingReport, ...] = field(default=(), repr=False)
    """Rings, in the order of the document."""
    gasket: GasketReport | None = None
    """Which head gasket."""
    masses: MassesReport | None = None
    """What is taken off the masses."""
    finish: FinishReport | None = None
    """What was found after the work."""
    open: tuple[str, ...] = ()
    """What is not settled."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkTarget(Value):
    """What is to come out of a step."""

    cylinder: int
    """Number of the cylinder."""
    of: str
    """What of it."""
    value_mm: float
    """Size at 20 C."""
    lower_mm: float | None = None
    """Smallest that is accepted."""
    upper_mm: float | None = None
    """Largest that is accepted."""
    dial_mm: float | None = None
    """What the dial of the bore gauge reads there, on the machine as it was stated."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkStep(Value):
    """A step of the work."""

    number: int
    """Its place in the order, from 1."""
    task: Task
    """What is done."""
    what: str
    """The same in words."""
    cylinders: tuple[int, ...] = ()
    """Cylinders, in the order in which they are worked on."""
    before: tuple[str, ...] = ()
    """What must be so before."""
    tools: tuple[str, ...] = ()
    """What it takes."""
    targets: tuple[WorkTarget, ...] = ()
    """What is to come out."""
    care: tuple[str, ...] = ()
    """What to take care of."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Report(WrittenMarkdown):
    """Everything that was found out about one engine."""

    _made_by: ClassVar[str] = "assess"

    format: str
    """`gaugepoint-report`"""
    version: int
    """Version of the format."""
    library: str
    """Version of the library."""
    job: JobName
    """The job as named in the document."""
    engine: EngineName
    """The engine as named in the document."""
    conventions: Conventions
    """What the numbers mean and how they were judged."""
    gauges: tuple[GaugeReport, ...] = field(repr=False)
    """State of the gauges."""
    cylinders: tuple[CylinderReport, ...] = field(repr=False)
    """Every cylinder, in order of number."""
    block: Block
    """The engine as a whole."""
    plan: PlanReport | None = field(default=None, repr=False)
    """What is to be done, when the document asks for a plan."""
    work_order: tuple[WorkStep, ...] = field(default=(), repr=False)
    """The plan in the order of the work."""
    stacks: tuple[StackReport, ...] = field(default=(), repr=False)
    """The stacks of the job, each as the report on a stack."""
    warnings: tuple[Warning, ...] = field(repr=False)
    """What is odd."""
    cautions: tuple[str, ...] = field(repr=False)
    """What to take care of."""
    working: Working | None = field(default=None, repr=False)
    """The working of every number, when it was asked for."""


_W = TypeVar("_W", bound=Written)


def written(kind: type[_W], *forms: str) -> _W:
    """Read a report from what the library wrote.

    Parameters
    ----------
    kind : type
        Class of the report.
    *forms : str
        The report as JSON and in its other forms.

    Returns
    -------
    kind
        The report with its forms.
    """
    return with_forms(read(kind, forms[0]), *forms)
