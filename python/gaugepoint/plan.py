"""What is done with which part: worn bores and what they must be bored to, which oversize, what the machine is set to, measured
pistons matched to bores; rings filed, liners shimmed, a gasket chosen, masses matched, a finish checked.

``core/docs`` has the formulas, proofs and sources: ``clean-up.md``, ``oversize.md``, ``machining.md``, ``matching.md``, ``filing.md``,
``shims.md``, ``gasket.md``, ``weights.md`` and ``surface.md``.
"""

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Any, Literal, TypeAlias, cast

from gaugepoint import _gaugepoint
from gaugepoint._progress import Progress, reported
from gaugepoint._value import Value, dataclass

if TYPE_CHECKING:
    import numpy as np
    from gaugepoint.parts import Chamber
    from numpy.typing import NDArray

__all__ = [
    "Bar",
    "BestAxis",
    "Block",
    "BobWeight",
    "BoreAction",
    "BoreSizes",
    "CleanUp",
    "CleanUpRange",
    "Conditions",
    "Consequence",
    "Cut",
    "CutList",
    "Filing",
    "FinishCheck",
    "FinishFound",
    "FinishJudged",
    "FinishValue",
    "GapReading",
    "GasketGrade",
    "Held",
    "HotRing",
    "LinerSeat",
    "Matched",
    "Matching",
    "MeasuredBore",
    "MeasuredPiston",
    "MeasuredSizes",
    "Merit",
    "OversizeChoice",
    "OversizeRuledOut",
    "Oversizes",
    "Part",
    "Shim",
    "ShimPlan",
    "ShimRuledOut",
    "Shimmed",
    "Step",
    "WallPoint",
    "WantedClearance",
    "WantedGap",
    "WantedProtrusion",
    "WarmGauging",
    "WornBore",
    "bob_weight_g",
    "bore_sizes",
    "boring_order",
    "clean_up",
    "clean_up_from_diameters",
    "cut_list",
    "dial_reading_mm",
    "filing",
    "finish",
    "finish_check",
    "gasket_grade",
    "largest_bore_by_walls_mm",
    "match",
    "oversizes",
    "shim_plan",
    "walls_left",
]

Case: TypeAlias = Literal["sorted", "order_preserving", "pair_dependent"]
Outcome: TypeAlias = Literal["met", "hone_on", "too_large"]


@dataclass(frozen=True, slots=True)
class WantedClearance(Value):
    """A wanted clearance at 20 C, mm over the diameter: at least one limit, and a target within them."""

    lower_mm: float | None
    """Lower limit; None where there is none."""
    upper_mm: float | None
    """Upper limit; None where there is none."""
    target_mm: float | None = None
    """Target; None for the middle of both limits."""


@dataclass(frozen=True, slots=True)
class MeasuredBore(Value):
    """A measured bore."""

    size_mm: float
    """Size at 20 C."""
    standard_uncertainty_mm: float
    """Standard uncertainty of the size."""
    wanted: WantedClearance | None = None
    """The clearance that this bore wants; None for that of the set."""
    grade: str | None = None
    """Its grade; None where it has none."""


@dataclass(frozen=True, slots=True)
class MeasuredPiston(Value):
    """A measured piston."""

    size_mm: float
    """Size at its gauge point at 20 C."""
    standard_uncertainty_mm: float
    """Standard uncertainty of the size."""
    weight_g: float | None = None
    """Weight: of the assembly where pin, rings or rod stay with it. Needed with a weight band."""
    grade: str | None = None
    """Its grade; None where it has none."""


@dataclass(frozen=True, slots=True)
class MeasuredSizes(Value):
    """Many bores or pistons, without grades and weights."""

    size_mm: "NDArray[np.float64]"
    """Sizes at 20 C."""
    standard_uncertainty_mm: "NDArray[np.float64]"
    """Standard uncertainties of the sizes."""


@dataclass(frozen=True, slots=True)
class Conditions(Value):
    """What holds for a whole set, as `match` takes it."""

    wanted: WantedClearance | None
    """The clearance that bores without their own want."""
    shared_uncertainty_mm: float
    """The part of every standard uncertainty that is one and the same error: it cancels in a clearance."""
    common_uncertainty_mm: float
    """Standard uncertainty beside those of the parts that all bores have in common, or all pistons: it adds to every clearance."""
    forbidden: tuple[tuple[int, int], ...]
    """Pairs that may not be: place of the bore, place of the piston."""
    fixed: tuple[tuple[int, int], ...]
    """Pairs that must be."""
    weight_band_g: float | None
    """Largest difference of weight of the chosen pistons."""


@dataclass(frozen=True, slots=True)
class Matched(Value):
    """A piston in its bore."""

    bore: int
    """Place of the bore."""
    piston: int
    """Place of the piston."""
    clearance_mm: float
    """Clearance at 20 C over the diameter."""
    standard_uncertainty_mm: float
    """Its standard uncertainty."""
    deviation_mm: float
    """Clearance less its target."""
    probability_of_conformity: float
    """Probability that the clearance conforms to its limits."""
    probability_outside: float
    """One less that, with all its digits where it is small."""


@dataclass(frozen=True, slots=True)
class Merit(Value):
    """How good a pairing is as a whole."""

    worst_probability: float
    """Least probability of conformity of its pairs."""
    worst_outside: float
    """One less that, with all its digits where it is small."""
    worst_bore: int
    """Bore with that pair."""
    sum_of_squares_mm2: float
    """Sum of the squared deviations from the targets."""
    is_allowed: bool
    """Does it keep the forbidden and fixed pairs, the grades and the weight band?"""


@dataclass(frozen=True, slots=True)
class Matching(Value):
    """The best pairing."""

    case: Case
    """The case that the data are."""
    because: str
    """What in the data proves it."""
    pairs: tuple[Matched, ...]
    """One pair for each bore, in the order of the bores."""
    spare: tuple[int, ...]
    """Pistons without a bore."""
    merit: Merit
    """How good it is."""
    as_given: Merit
    """The parts as they were given: the first piston in the first bore, and so on."""
    by_grade: Merit | None
    """What the grades alone give: each bore in turn the first free piston that it may take. None where one finds none."""
    weight_spread_g: float | None
    """Largest difference of weight of the chosen pistons; None where one has no weight."""


def match(
    bores: Sequence[MeasuredBore] | MeasuredSizes,
    pistons: Sequence[MeasuredPiston] | MeasuredSizes,
    wanted: WantedClearance | None = None,
    *,
    shared_uncertainty_mm: float = 0.0,
    common_uncertainty_mm: float = 0.0,
    forbidden: Iterable[tuple[int, int]] = (),
    fixed: Iterable[tuple[int, int]] = (),
    weight_band_g: float | None = None,
    progress: Progress = None,
) -> Matching:
    """Match measured pistons to bores.

    The least probability of conformity is as large as it can be, and among such pairings the sum of squared deviations from the targets is
    as small as it can be. Sources: JCGM 106:2012, 7.2.2; Burkard, Dell'Amico, Martello, Assignment Problems (2009).

    Parameters
    ----------
    bores : sequence of MeasuredBore or MeasuredSizes
        The bores, at most 2000.
    pistons : sequence of MeasuredPiston or MeasuredSizes
        The pistons, at least as many, at most 4000; arrays where the bores are arrays.
    wanted : WantedClearance, optional
        The clearance that bores without their own want.
    shared_uncertainty_mm : float, optional
        The part of every standard uncertainty, of bores and of pistons, that is one and the same error: it cancels in a clearance.
    common_uncertainty_mm : float, optional
        Standard uncertainty beside those of the parts that all bores have in common, or all pistons: it adds to every clearance.
    forbidden, fixed : iterable of tuple, optional
        Pairs that may not be and pairs that must be: place of the bore, place of the piston.
    weight_band_g : float, optional
        Largest difference of weight of the chosen pistons.
    progress : callable or bool, optional
        A callable of what is done and of how much; True for a bar where tqdm is installed and standard error is a terminal.
        What it raises, and Ctrl-C, stop the work.

    Returns
    -------
    Matching
        The pairs, how good they are, and the case with its proof.

    Raises
    ------
    InputError
        When a number is refused, with its place (``bores/3/size_mm``), or no pairing exists: it names bores with too few pistons.
    TypeError
        When arrays are not of one dimension and float64, or only one side is arrays.
    ValueError
        When sizes and uncertainties are not of one length.

    Examples
    --------
    >>> from gaugepoint.plan import MeasuredBore, MeasuredPiston, WantedClearance, match
    >>> bores = [MeasuredBore(mm, 0.001) for mm in (86.012, 86.004, 86.009, 86.015)]
    >>> pistons = [MeasuredPiston(mm, 0.001) for mm in (85.958, 85.949, 85.961, 85.953)]
    >>> found = match(bores, pistons, WantedClearance(0.045, 0.065, 0.053))
    >>> found.case, [pair.piston for pair in found.pairs]
    ('sorted', [0, 1, 3, 2])
    """
    conditions = Conditions(wanted, shared_uncertainty_mm, common_uncertainty_mm, tuple(forbidden), tuple(fixed), weight_band_g)
    if isinstance(bores, MeasuredSizes) and isinstance(pistons, MeasuredSizes):
        sizes = (bores.size_mm, bores.standard_uncertainty_mm, pistons.size_mm, pistons.standard_uncertainty_mm)
        with reported(progress) as told:
            found = _gaugepoint.match_sizes(*sizes, conditions, told)
    elif isinstance(bores, MeasuredSizes) or isinstance(pistons, MeasuredSizes):
        raise TypeError("bores and pistons: both are arrays, or neither is")
    else:
        with reported(progress) as told:
            found = _gaugepoint.match_pistons(bores, pistons, conditions, told)
    case, because, pairs, spare, merit, as_given, by_grade, spread = found
    return Matching(
        case=cast(Case, case),
        because=because,
        pairs=tuple(Matched(*pair) for pair in pairs),
        spare=tuple(spare),
        merit=Merit(*merit),
        as_given=Merit(*as_given),
        by_grade=None if by_grade is None else Merit(*by_grade),
        weight_spread_g=spread,
    )


@dataclass(frozen=True, slots=True)
class BestAxis(Value):
    """A bar that stands where the bore comes out smallest."""

    shift_mm: float
    """Most that the axis may move at the middle of the depths."""
    tilt: float
    """Most that it may lean, as mm on each mm of depth."""


@dataclass(frozen=True, slots=True)
class Bar(Value):
    """The axis of a bar, from the original axis."""

    x_mm: float
    """Its place at the middle of the depths, toward 0 degrees."""
    y_mm: float
    """The same toward 90 degrees."""
    middle_mm: float
    """Middle of the depths."""
    slope_x: float
    """How far it moves toward 0 degrees for each mm of depth."""
    slope_y: float
    """The same toward 90 degrees."""


@dataclass(frozen=True, slots=True)
class Held(Value):
    """A point of the wall that holds the bore."""

    place: int
    """Place of the point among those given."""
    share: float
    """How far the radius of the bore moves with that of the point. The shares add up to 1."""


@dataclass(frozen=True, slots=True)
class CleanUp(Value):
    """A bore that removes all wear."""

    diameter_mm: float
    """Its diameter with every allowance."""
    standard_uncertainty_mm: float
    """Standard uncertainty of the diameter from that of the radii."""
    least_mm: float
    """No bar that may stand elsewhere needs less than this; that of a fixed axis is the diameter."""
    bar: Bar
    """The bar that cuts it."""
    held_by: tuple[Held, ...]
    """The points that hold it."""


@dataclass(frozen=True, slots=True)
class CleanUpRange(Value):
    """The clean-up about the original axis as far as diameters tell it."""

    lower_mm: float
    """When both sides are worn alike."""
    upper_mm: float
    """When one side alone is worn. This one is used, unless a radial trace or the unworn ridge shows how the wear is shared."""


@dataclass(frozen=True, slots=True)
class WallPoint(Value):
    """A wall as it was gauged, by ultrasound as a rule."""

    angle_deg: float
    """Angle, 0 to 360 degrees."""
    depth_mm: float
    """Depth from the deck."""
    radius_mm: float
    """Distance of the wall from the original axis when it was gauged."""
    wall_mm: float
    """Thickness."""


@dataclass(frozen=True, slots=True)
class BoreSizes(Value):
    """What a bore is machined to."""

    finish_mm: float
    """Size at 20 C when it is finished."""
    boring_mm: float
    """Size at 20 C after boring."""


@dataclass(frozen=True, slots=True)
class WarmGauging(Value):
    """A gauge that was set, and the bore that it goes into: temperatures in C, mean coefficients of expansion from 20 C per kelvin."""

    setting_mm: float
    """Size at 20 C of the ring that the gauge was set on."""
    ring_temperature_c: float
    """The ring, when the gauge was set."""
    ring_expansion_per_k: float
    """The ring."""
    set_temperature_c: float
    """The gauge, when it was set."""
    set_expansion_per_k: float
    """The gauge, when it was set."""
    used_temperature_c: float
    """The gauge in the bore."""
    used_expansion_per_k: float
    """The gauge in the bore."""
    block_temperature_c: float
    """The wall of the bore."""
    block_expansion_per_k: float
    """The wall of the bore."""


@dataclass(frozen=True, slots=True)
class FinishCheck(Value):
    """How a size found at a finish check stands to its target."""

    outcome: Outcome
    """Within the tolerance, stock still to be honed off, or too large: the next step, or another piston."""
    difference_mm: float | None
    """What is still to be honed off the diameter, to the middle of the tolerance, or by how much the bore is too large; None when the finish is met."""


def clean_up(
    angles_deg: "Sequence[float] | NDArray[np.float64]",
    depths_mm: "Sequence[float] | NDArray[np.float64]",
    radii_mm: "Sequence[float] | NDArray[np.float64]",
    axis: Literal["original", "worn"] | BestAxis = "original",
    *,
    centring_mm: float = 0.0,
    stock_mm: float = 0.0,
    each_mm: float = 0.0,
    common_mm: float = 0.0,
) -> CleanUp:
    """Give the smallest round, straight bore about an axis that removes all wear.

    ``2 (largest distance of the wall from the axis + centring) + stock``. The wall is a radial trace about the original axis. Source: definition; the best
    axis by tangent planes, with a bound that no axis goes below (Kelley 1960, from memory).

    Parameters
    ----------
    angles_deg : sequence of float
        Angles, 0 to 360 degrees. At least three points; five for the worn axis over several depths.
    depths_mm : sequence of float
        Depths from the deck.
    radii_mm : sequence of float
        Distances of the wall from the original axis.
    axis : str or BestAxis, optional
        Where the bar stands: ``"original"``, ``"worn"`` (by least squares), or where the bore comes out smallest.
    centring_mm : float, optional
        Largest error of the centre of the bar.
    stock_mm : float, optional
        What removes the marks of the tool, on the diameter.
    each_mm, common_mm : float, optional
        Standard uncertainties of one radius alone, and of all together, as that of a setting.

    Returns
    -------
    CleanUp
        The bore, the bar that cuts it, and the points that hold it.

    Raises
    ------
    InputError
        When a number is not finite or impossible, with its place (``radii_mm/3``), the columns are not of one length, or the points do not tell where
        the axis lies.

    Examples
    --------
    Worn by 0.1 mm on the thrust side alone; a bar that may stand aside takes less from the block.

    >>> from gaugepoint.plan import BestAxis, clean_up
    >>> angles = [0, 45, 90, 135, 180, 225, 270, 315]
    >>> radii = [43.1, 43.05, 43, 43, 43, 43, 43, 43.05]
    >>> round(clean_up(angles, [30] * 8, radii, stock_mm=0.04).diameter_mm, 3)
    86.24
    >>> clean_up(angles, [30] * 8, radii, BestAxis(0.1, 0), stock_mm=0.04).diameter_mm < 86.15
    True
    """
    diameter, u, least, bar, held = _gaugepoint.clean_up(
        angles_deg, depths_mm, radii_mm, axis, centring_mm, stock_mm, each_mm, common_mm
    )
    return CleanUp(diameter, u, least, Bar(*bar), tuple(Held(*point) for point in held))


def clean_up_from_diameters(unworn_mm: float, largest_mm: float, stock_mm: float = 0.0) -> CleanUpRange:
    """Give the clean-up about the original axis from diameters, which never show on which side a bore is worn.

    ``largest + stock`` to ``unworn + 2 (largest - unworn) + stock``. Source: definition; diameters hold no odd order.

    Parameters
    ----------
    unworn_mm, largest_mm : float
        The unworn and the largest diameter, in mm.
    stock_mm : float, optional
        What removes the marks of the tool, on the diameter.

    Returns
    -------
    CleanUpRange
        The clean-up when both sides are worn alike, and when one side alone is.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the largest diameter is below the unworn one.

    Examples
    --------
    >>> from gaugepoint.plan import clean_up_from_diameters
    >>> found = clean_up_from_diameters(86.0, 86.1)
    >>> round(found.lower_mm, 3), round(found.upper_mm, 3)
    (86.1, 86.2)
    """
    return CleanUpRange(*_gaugepoint.clean_up_from_diameters(unworn_mm, largest_mm, stock_mm))


def walls_left(bar: Bar, diameter_mm: float, walls: Sequence[WallPoint]) -> list[float]:
    """Give what is left of every wall when a bore is cut about the axis of a bar.

    ``radius + wall - reach of the bar`` at the angle of the wall; below zero the bar comes through. Where it does not reach the wall, that stays as it is.
    Source: plane geometry.

    Parameters
    ----------
    bar : Bar
        The axis of the bar, as a clean-up gives it.
    diameter_mm : float
        The bore.
    walls : sequence of WallPoint
        The walls as they were gauged.

    Returns
    -------
    list of float
        Thickness that is left of each, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible, with its place (``walls/2/wall_mm``), or the bar does not stand within the bore.

    Examples
    --------
    >>> from gaugepoint.plan import Bar, WallPoint, walls_left
    >>> walls_left(Bar(0, 0, 50, 0, 0), 86.5, [WallPoint(0, 50, 43, 5), WallPoint(90, 50, 43, 4)])
    [4.75, 3.75]
    """
    return _gaugepoint.walls_left(bar, diameter_mm, walls)


def largest_bore_by_walls_mm(bar: Bar, least_wall_mm: float, walls: Sequence[WallPoint]) -> float | None:
    """Give the largest bore about the axis of a bar that leaves at least a thickness of every wall.

    Source: plane geometry.

    Parameters
    ----------
    bar : Bar
        The axis of the bar, as a clean-up gives it.
    least_wall_mm : float
        What is to be left.
    walls : sequence of WallPoint
        The walls as they were gauged.

    Returns
    -------
    float or None
        The diameter, in mm; None without walls.

    Raises
    ------
    InputError
        When a number is not finite or impossible, with its place (``walls/2/wall_mm``), or the bar does not stand within the bore.

    Examples
    --------
    >>> from gaugepoint.plan import Bar, WallPoint, largest_bore_by_walls_mm
    >>> largest_bore_by_walls_mm(Bar(0, 0, 50, 0, 0), 4, [WallPoint(0, 50, 43, 5)])
    88.0
    """
    return _gaugepoint.largest_bore_by_walls_mm(bar, least_wall_mm, walls)


def bore_sizes(piston_mm: float, clearance_mm: float, honing_mm: float) -> BoreSizes:
    """Give finish size and boring size of the bore for a piston as it was measured, at 20 C.

    ``piston + clearance``, and the same less the honing allowance. Source: definition; published form of makers.

    Parameters
    ----------
    piston_mm : float
        The piston at its gauge point, at 20 C.
    clearance_mm : float
        Wanted clearance at 20 C, over the diameter.
    honing_mm : float
        What is left for the hone, on the diameter. Makers print 0.01 mm to 0.02 mm, shops leave 0.05 mm to 0.1 mm.

    Returns
    -------
    BoreSizes
        Both sizes.

    Raises
    ------
    InputError
        When a number is not finite or impossible.

    Examples
    --------
    >>> from gaugepoint.plan import bore_sizes
    >>> sizes = bore_sizes(85.96, 0.03, 0.02)
    >>> round(sizes.finish_mm, 3), round(sizes.boring_mm, 3)
    (85.99, 85.97)
    """
    return BoreSizes(*_gaugepoint.bore_sizes(piston_mm, clearance_mm, honing_mm))


def dial_reading_mm(size_mm: float, gauging: WarmGauging) -> float:
    """Give what the dial of a bore gauge must read when the bore has a size at 20 C and the block is warm.

    ``D (1 + eps_bore) - S (1 + eps_ring) (1 + eps_used) / (1 + eps_set)``. Source: comparison with a setting, each part at its temperature.

    Parameters
    ----------
    size_mm : float
        Size of the bore at 20 C.
    gauging : WarmGauging
        The gauge that was set, and the bore that it goes into.

    Returns
    -------
    float
        The reading, in mm above the setting.

    Raises
    ------
    InputError
        When a number is not finite or impossible; of the field ``setting_mm`` for a reading beyond the travel of a gauge.

    Examples
    --------
    The finish size is 0.01 mm below the ring, and the warm block 0.0094 mm wider.

    >>> from gaugepoint.plan import WarmGauging, dial_reading_mm
    >>> gauging = WarmGauging(86.0, 22, 11.5e-6, 22, 11.5e-6, 22, 11.5e-6, 32, 11e-6)
    >>> round(dial_reading_mm(85.99, gauging), 4)
    -0.0006
    """
    return _gaugepoint.dial_reading_mm(size_mm, gauging)


def finish_check(size_mm: float, finish_mm: float, tolerance_mm: float) -> FinishCheck:
    """Hold a bore as it was found, at 20 C, against its finish size.

    Source: definition.

    Parameters
    ----------
    size_mm, finish_mm : float
        The bore as it was found, and its finish size, at 20 C.
    tolerance_mm : float
        Half the width of the tolerance.

    Returns
    -------
    FinishCheck
        Whether it is met, and what is missing or too much.

    Raises
    ------
    InputError
        When a number is not finite or impossible.

    Examples
    --------
    >>> from gaugepoint.plan import finish_check
    >>> found = finish_check(85.98, 85.99, 0.005)
    >>> found.outcome, round(found.difference_mm, 3)
    ('hone_on', 0.01)
    """
    outcome, difference = _gaugepoint.finish_check(size_mm, finish_mm, tolerance_mm)
    return FinishCheck(cast(Outcome, outcome), difference)


def boring_order(cylinders: int) -> list[int]:
    """Give an order of boring in which no two neighbours follow each other, so that the heat spreads.

    The odd ones, then the even ones, or beginning with the second one for four. Of three or fewer no such order exists: the order along the block, and the
    block must cool between. Common practice, no source.

    Parameters
    ----------
    cylinders : int
        How many the bank has, 1 to 24.

    Returns
    -------
    list of int
        The cylinders, counted from 1 along the block.

    Raises
    ------
    InputError
        For no cylinder or more than 24.

    Examples
    --------
    >>> from gaugepoint.plan import boring_order
    >>> boring_order(4)
    [2, 4, 1, 3]
    """
    return _gaugepoint.boring_order(cylinders)


@dataclass(frozen=True, slots=True)
class Block(Value):
    """A block, and what is fitted to it."""

    nominal_mm: float
    """Nominal bore of the standard size."""
    boring_price: float
    """What boring and honing one bore costs."""
    guard: float
    """How many standard uncertainties a step must lie above the clean-up."""
    largest_by_gasket_mm: float | None = None
    """Largest bore that the opening of the gasket allows; None when it does not matter."""
    sleeve_price: float | None = None
    """What a sleeve costs, with the work; None when no sleeve is fitted."""
    chamber: "Chamber | None" = None
    """The chamber at the nominal bore, for the compression ratio of each step."""
    ring_gap_mm: float | None = None
    """End gap at the nominal bore of rings that are kept, for the gap in each step."""


@dataclass(frozen=True, slots=True)
class WornBore(Value):
    """What is known of a worn bore."""

    clean_up_mm: float
    """What it must be bored to at least to be clean."""
    standard_uncertainty_mm: float
    """Standard uncertainty of that."""
    largest_by_walls_mm: float | None = None
    """Largest bore that its walls allow; None when they were not gauged."""
    may_be_sleeved: bool = False
    """Whether it may take a sleeve."""
    goes_back: bool = False
    """Whether it may go back as it is."""


@dataclass(frozen=True, slots=True)
class Step(Value):
    """A size of piston that can be had."""

    oversize_mm: float
    """Over the nominal bore."""
    price: float
    """What one piston with its rings costs."""
    available: int | None = None
    """How many there are; None when it does not matter."""
    more_mass_g: float | None = None
    """Mass of a piston over that of the standard one; None when it is not known."""


@dataclass(frozen=True, slots=True)
class BoreAction(Value):
    """What is done to a bore."""

    action: Literal["bore", "sleeve", "leave"]
    """It is bored to a step, or takes a sleeve and is bored to it, or stays as it is with its piston."""
    step: int | None
    """Place of the step; None for a bore that stays."""


@dataclass(frozen=True, slots=True)
class OversizeRuledOut(Value):
    """What rules out a way to bring a block back."""

    reason: Literal["not_clean", "wall_too_thin", "gasket_too_small", "too_few_pistons", "no_sleeve"]
    """Why."""
    bore: int | None
    """Place of the bore, where it is one's."""
    step: int | None
    """Place of the step of which there are too few pistons."""
    value_mm: float | None
    """What the bore needs, or what the wall or the gasket allows."""
    needed: int | None
    """Pistons that are needed."""
    available: int | None
    """Pistons that there are."""


@dataclass(frozen=True, slots=True)
class OversizeChoice(Value):
    """One way to bring a block back."""

    way: Literal["one_step", "step_by_bore", "step_and_sleeves", "sleeves_alone"]
    """Which way."""
    price: float
    """Pistons, boring and sleeves together."""
    actions: tuple[BoreAction, ...]
    """What is done to each bore, in order."""
    ruled_out: tuple[OversizeRuledOut, ...]
    """What rules it out; empty for one that can be done."""


@dataclass(frozen=True, slots=True)
class Consequence(Value):
    """What a step does besides."""

    bore_mm: float
    """Bore of the step."""
    compression_ratio: float | None
    """Compression ratio with the same chamber."""
    ring_gap_mm: float | None
    """End gap of rings that are kept."""
    more_mass_g: float | None
    """Mass of a piston over that of the standard one."""


@dataclass(frozen=True, slots=True)
class Oversizes(Value):
    """The ways to bring a block back."""

    choices: tuple[OversizeChoice, ...]
    """Those that can be done, the cheapest first, and after them those that cannot."""
    consequences: tuple[Consequence, ...]
    """What each step does, in the order of the steps."""


@dataclass(frozen=True, slots=True)
class GapReading(Value):
    """An end gap as it was read."""

    gap_mm: float
    """The gap."""
    gauge_mm: float | None = None
    """Size of the ring gauge or bore that it was read in; None for the bore that the ring runs in."""
    gap_uncertainty_mm: float = 0.0
    """Standard uncertainty of the gap; 0 leaves it out."""
    gauge_uncertainty_mm: float = 0.0
    """The same of the size of the gauge; not used without one."""
    bore_uncertainty_mm: float = 0.0
    """The same of the size of the bore that the ring runs in; not used without a gauge."""


@dataclass(frozen=True, slots=True)
class HotRing(Value):
    """A gap that is to be left when ring and bore are hot."""

    least_hot_gap_mm: float
    """The least gap then; 0 lets the ends touch."""
    bore_temperature_c: float
    """Temperature of the bore at the ring."""
    bore_expansion_per_k: float
    """Its coefficient of expansion."""
    ring_temperature_c: float
    """Temperature of the ring."""
    ring_expansion_per_k: float
    """Its coefficient of expansion."""


@dataclass(frozen=True, slots=True)
class WantedGap(Value):
    """The gap that is wanted: a least one, or what heat asks for, or both."""

    least_mm: float | None
    """The least gap at 20 C; None where heat alone says it."""
    most_mm: float | None = None
    """The widest gap at 20 C; None when it is not limited."""
    allowance_mm: float = 0.0
    """How far above the least gap a ring is filed."""
    hot: HotRing | None = None
    """What heat asks for."""


@dataclass(frozen=True, slots=True)
class Filing(Value):
    """What is filed off a ring."""

    outcome: Literal["fits", "file", "too_wide"]
    """It has its gap, it is filed, or its gap is too wide: another ring."""
    gap_mm: float
    """Gap in the bore that the ring runs in; below zero the ends overlap."""
    standard_uncertainty_mm: float
    """Its standard uncertainty."""
    least_mm: float
    """The least gap in force: the wanted one or that of heat, whichever is larger."""
    target_mm: float
    """The gap that a short ring is filed to."""
    file_off_mm: float
    """What is filed off in all; 0 unless the ring is filed."""
    each_end_mm: float
    """What is filed off each end."""
    hot_gap_mm: float | None
    """Gap of the ring as it is then, hot; None when no temperatures were given."""
    caution: str
    """What to take care of."""


@dataclass(frozen=True, slots=True)
class LinerSeat(Value):
    """A liner and its counterbore."""

    flange_mm: float
    """Height of its flange."""
    depths_mm: tuple[float, float, float, float]
    """Depth of the counterbore toward the front of the row, at one side, toward the rear and at the other side."""
    cupping_mm: float | None = None
    """How much deeper the seat is at one edge of the ledge than at the other; None when it was not read."""


@dataclass(frozen=True, slots=True)
class Shim(Value):
    """A shim that can be had."""

    thickness_mm: float
    """Its thickness."""
    available: int | None = None
    """How many there are; None when it does not matter."""


@dataclass(frozen=True, slots=True)
class WantedProtrusion(Value):
    """What is wanted of a row of liners."""

    least_mm: float
    """Smallest protrusion at any place."""
    most_mm: float
    """Largest protrusion at any place."""
    unevenness_mm: float
    """Most that a seat may be uneven: the difference within one liner."""
    cupping_mm: float | None = None
    """Most that a seat may be cupped."""
    neighbours_mm: float | None = None
    """Most that two neighbours may differ by at their nearest points."""
    most_on_one: int = 1
    """Most shims on one liner, 1 to 3."""


@dataclass(frozen=True, slots=True)
class Shimmed(Value):
    """A liner in the plan."""

    mean_depth_mm: float
    """Mean depth of its counterbore."""
    unevenness_mm: float
    """Unevenness of its seat."""
    least_shims_mm: float
    """Thinnest stack that brings every place to the least protrusion; 0 or less when none is needed for that."""
    most_shims_mm: float
    """Thickest stack that leaves every place at the largest protrusion; below zero the liner stands too high without shims."""
    stack: tuple[int, ...] | None
    """Its shims by their places; empty is none. None where nothing serves the row."""
    lowest_mm: float | None
    """Smallest protrusion; None without a stack."""
    highest_mm: float | None
    """Largest protrusion; None without a stack."""


@dataclass(frozen=True, slots=True)
class ShimRuledOut(Value):
    """What rules out a row of liners."""

    reason: Literal["uneven", "cupped", "no_stack", "neighbours", "too_few_shims"]
    """Why: the first two are seats that are not fit to shim."""
    liner: int
    """Place of the liner."""


@dataclass(frozen=True, slots=True)
class ShimPlan(Value):
    """The shims of a row."""

    liners: tuple[Shimmed, ...]
    """One for each liner, in order."""
    largest_deviation_mm: float | None
    """Largest distance of a protrusion from the middle of the wanted ones; None where nothing serves."""
    largest_step_mm: float | None
    """Largest difference of neighbours at their nearest points; None where nothing serves or there is one liner."""
    shims_used: int | None
    """Shims that are used; None where nothing serves."""
    ruled_out: tuple[ShimRuledOut, ...]
    """What rules the row out; empty for one that can be done."""
    caution: str
    """What to take care of."""


@dataclass(frozen=True, slots=True)
class GasketGrade(Value):
    """The gasket for an engine."""

    protrusions_mm: tuple[float, ...]
    """Protrusion of every piston."""
    largest_piston: int
    """Place of the piston that decided, the first of equal ones."""
    largest_mm: float
    """Its protrusion."""
    spread_mm: float
    """Largest less smallest protrusion."""
    spread_is_met: bool | None
    """Whether the spread is within its limit; None without a limit."""
    band: int
    """Place of the line of the table."""
    thickness_mm: float
    """The gasket, compressed."""
    squish_mm: tuple[float, ...]
    """From the crown to the head, for every piston."""
    probability_below: float | None
    """Probability that the true largest protrusion lies below the band; None without an uncertainty."""
    probability_above: float | None
    """Probability that it lies above the band."""


@dataclass(frozen=True, slots=True)
class Part(Value):
    """A part of an assembly."""

    mass_g: float
    """Its mass."""
    removable_g: float = 0.0
    """What may be taken off it at most; 0 where nothing may."""


@dataclass(frozen=True, slots=True)
class Cut(Value):
    """What an assembly loses."""

    mass_g: float
    """Its mass as it was weighed."""
    cut_g: tuple[float, ...]
    """What each part loses."""
    left_g: float
    """Its mass then."""
    over_g: float
    """How far it is still over the heaviest allowed; 0 when it is within."""


@dataclass(frozen=True, slots=True)
class CutList(Value):
    """What all assemblies lose."""

    lightest: int
    """Place of the lightest assembly, the first of equal ones."""
    most_g: float
    """Heaviest mass that is allowed."""
    assemblies: tuple[Cut, ...]
    """One for each assembly, in order."""
    is_met: bool
    """Whether every one is within the band."""


@dataclass(frozen=True, slots=True)
class BobWeight(Value):
    """What moves with a crankpin."""

    rods: int
    """Rods on the pin, 1 to 4."""
    big_end_g: float
    """Big end of one rod as it is weighed with the rod level."""
    bearing_g: float
    """Bearing shells of one rod."""
    small_end_g: float
    """Small end of one rod."""
    piston_g: float
    """Piston with pin, rings and retainers."""
    share: float
    """Share of the reciprocating mass that is balanced: 0.5 for a right-angled V of two rods on a pin."""
    oil_g: float = 0.0
    """Oil in the pin; 0 leaves it out."""


@dataclass(frozen=True, slots=True)
class FinishValue(Value):
    """A parameter of a finish as it was measured and what is asked of it, in its unit; everything may be missing."""

    value: float | None = None
    """The value."""
    standard_uncertainty: float | None = None
    """Its standard uncertainty; without one the value alone is held against the limits."""
    lower: float | None = None
    """Lower limit."""
    upper: float | None = None
    """Upper limit."""


@dataclass(frozen=True, slots=True)
class FinishJudged(Value):
    """A parameter of a finish that was judged."""

    finding: Literal["in", "out", "not_proven", "not_given", "no_limit"]
    """What is found."""
    probability_of_conformity: float | None
    """Probability that it conforms; None without an uncertainty."""


@dataclass(frozen=True, slots=True)
class FinishFound(Value):
    """What is found of a finish."""

    rpk: FinishJudged
    """Reduced peak height."""
    rk: FinishJudged
    """Core height."""
    rvk: FinishJudged
    """Reduced valley depth."""
    mr1: FinishJudged
    """Material ratio where the peaks end."""
    mr2: FinishJudged
    """Material ratio where the valleys begin."""
    crosshatch: FinishJudged
    """Angle between the two directions of the marks."""
    is_met: bool
    """Whether there is a limit and every parameter with a limit lies within it."""


_NOTHING = FinishValue()


def oversizes(block: Block, bores: Sequence[WornBore], steps: Sequence[Step]) -> Oversizes:
    """Hold every way to bring a block back against what its bores need.

    A step serves a bore when it lies above the clean-up by the guard, and wall and gasket hold it. What is ruled out stays, with every
    reason. Source: definitions; one size for all bores is common practice.

    Parameters
    ----------
    block : Block
        The block, and what is fitted to it.
    bores : sequence of WornBore
        What is known of its bores.
    steps : sequence of Step
        The sizes of piston that can be had, rising.

    Returns
    -------
    Oversizes
        The ways, the cheapest first, and what each step does.

    Raises
    ------
    InputError
        When something is refused; it names the place (``bores/2/clean_up_mm``).

    Examples
    --------
    Invented bores and prices.

    >>> from gaugepoint.plan import Block, Step, WornBore, oversizes
    >>> bores = [WornBore(86.21, 0.005), WornBore(86.30, 0.005, largest_by_walls_mm=86.6)]
    >>> found = oversizes(Block(86.0, 30.0, 2.0), bores, [Step(0.25, 60.0), Step(0.5, 62.0)])
    >>> [(choice.way, choice.price, len(choice.ruled_out)) for choice in found.choices]
    [('step_by_bore', 182.0, 0), ('one_step', 184.0, 0), ('one_step', 180.0, 1)]
    """
    ways, does = _gaugepoint.oversizes(block, bores, steps)
    choices = (
        OversizeChoice(
            cast("Any", way),
            price,
            tuple(BoreAction(cast("Any", action), step) for action, step in actions),
            tuple(
                OversizeRuledOut(cast("Any", why), bore, step, value, needed, available)
                for why, bore, step, value, needed, available in reasons
            ),
        )
        for way, price, actions, reasons in ways
    )
    return Oversizes(tuple(choices), tuple(Consequence(*step) for step in does))


def filing(reading: GapReading, bore_mm: float, wanted: WantedGap) -> Filing:
    """Give what is filed off a ring for the bore that it runs in.

    The gap there is ``gap + pi (bore - gauge)``. A ring that has its least gap is left as it is; a short one is filed to the least gap and
    the allowance. Source: a closed ring keeps its length.

    Parameters
    ----------
    reading : GapReading
        The gap as it was read.
    bore_mm : float
        The bore that the ring runs in.
    wanted : WantedGap
        The gap that is wanted.

    Returns
    -------
    Filing
        What is done, and by how much.

    Raises
    ------
    InputError
        When a number is not finite or impossible, nothing is wanted, or the target lies above the widest gap.

    Examples
    --------
    >>> from gaugepoint.plan import GapReading, WantedGap, filing
    >>> found = filing(GapReading(0.30, gauge_mm=86.0), 86.02, WantedGap(0.40, 0.55, 0.02))
    >>> found.outcome, round(found.each_end_mm, 4)
    ('file', 0.0286)
    """
    outcome, *numbers = _gaugepoint.filing(reading, bore_mm, wanted)
    return Filing(cast("Any", outcome), *cast("Any", numbers))


def shim_plan(liners: Sequence[LinerSeat], shims: Sequence[Shim], wanted: WantedProtrusion) -> ShimPlan:
    """Choose the shims of a row of liners, exactly.

    The largest deviation from the middle of the wanted protrusions is as small as it can be, and among such choices the number of shims. An
    uneven or cupped seat is a finding and no error. Source: definition; the rule of neighbours is published.

    Parameters
    ----------
    liners : sequence of LinerSeat
        The row, from the front; 1 to 24.
    shims : sequence of Shim
        What can be had; up to 12 thicknesses.
    wanted : WantedProtrusion
        What is wanted of the row.

    Returns
    -------
    ShimPlan
        The shims of each liner, or what rules the row out.

    Raises
    ------
    InputError
        When a number is not finite or impossible, with its place (``liners/2/depths_mm/1``), or limited stocks leave more ways than are
        searched.

    Examples
    --------
    >>> from gaugepoint.plan import LinerSeat, Shim, WantedProtrusion, shim_plan
    >>> row = [LinerSeat(8.0, (7.97,) * 4), LinerSeat(8.0, (8.02,) * 4)]
    >>> plan = shim_plan(row, [Shim(0.05, 2), Shim(0.10)], WantedProtrusion(0.05, 0.12, 0.025, neighbours_mm=0.05))
    >>> [liner.stack for liner in plan.liners]
    [(0,), (1,)]
    """
    rows, deviation, step, used, reasons, caution = _gaugepoint.shim_plan(liners, shims, wanted)
    placed = (
        Shimmed(depth, uneven, least, most, None if stack is None else tuple(stack), low, high)
        for depth, uneven, least, most, stack, low, high in rows
    )
    ruled_out = tuple(ShimRuledOut(cast("Any", why), liner) for why, liner in reasons)
    return ShimPlan(tuple(placed), deviation, step, used, ruled_out, caution)


def gasket_grade(
    projections_mm: Sequence[tuple[float, float]],
    bands: Sequence[tuple[float, float, float]],
    step_mm: float = 0.001,
    *,
    largest_spread_mm: float | None = None,
    standard_uncertainty_mm: float | None = None,
) -> GasketGrade:
    """Give the gasket for the largest protrusion of an engine, and how near that is to an edge of its band.

    A protrusion is the mean of two readings in line with the pin. The probabilities are those of the largest of independent normal
    variables. Source: printed procedure of makers.

    Parameters
    ----------
    projections_mm : sequence of tuple of float
        Two readings for each piston.
    bands : sequence of tuple of float
        Lines of the table: smallest protrusion, largest protrusion, gasket.
    step_mm : float, optional
        Last digit that the table is printed to: lines that follow each other by no more leave no hole.
    largest_spread_mm : float, optional
        Most that protrusions may differ by.
    standard_uncertainty_mm : float, optional
        Standard uncertainty of one protrusion; 0 for exact ones.

    Returns
    -------
    GasketGrade
        The protrusions, the gasket, and the squish of every piston.

    Raises
    ------
    InputError
        When a number is not finite or impossible, the table has a hole or an overlap, or no line is for the largest.

    Examples
    --------
    >>> from gaugepoint.plan import gasket_grade
    >>> table = [(0.50, 0.599, 1.30), (0.60, 0.699, 1.40)]
    >>> grade = gasket_grade([(0.56, 0.58), (0.60, 0.59)], table, standard_uncertainty_mm=0.005)
    >>> grade.thickness_mm, round(grade.probability_above, 2)
    (1.3, 0.21)
    """
    protrusions, piston, largest, spread, is_met, band, thickness, squish, below, above = _gaugepoint.gasket_grade(
        projections_mm, bands, step_mm, largest_spread_mm, standard_uncertainty_mm
    )
    return GasketGrade(tuple(protrusions), piston, largest, spread, is_met, band, thickness, tuple(squish), below, above)


def cut_list(assemblies: Sequence[Sequence[Part]], band_g: float) -> CutList:
    """Give what each assembly loses so that all are within a band of the lightest.

    Nothing can be added, so each heavier one loses what it has above that, from its parts in order. Source: common practice, no source.

    Parameters
    ----------
    assemblies : sequence of sequence of Part
        The parts of each assembly.
    band_g : float
        Most that the assemblies may differ by.

    Returns
    -------
    CutList
        The cuts; what cannot be cut so far says how much it is over.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the place (``assemblies/2/0/mass_g``).

    Examples
    --------
    >>> from gaugepoint.plan import Part, cut_list
    >>> found = cut_list([[Part(412, 3), Part(118)], [Part(415.5, 3), Part(118)]], 2)
    >>> [cut.cut_g for cut in found.assemblies]
    [(0.0, 0.0), (1.5, 0.0)]
    """
    lightest, most, cuts, is_met = _gaugepoint.cut_list(assemblies, band_g)
    return CutList(lightest, most, tuple(Cut(mass, tuple(cut), left, over) for mass, cut, left, over in cuts), is_met)


def bob_weight_g(pin: BobWeight) -> float:
    """Give the bob weight of a crankpin: rods (rotating + share reciprocating) + oil.

    Source: primary forces of a slider crank; the share is common practice.

    Parameters
    ----------
    pin : BobWeight
        What moves with it.

    Returns
    -------
    float
        The bob weight.

    Raises
    ------
    InputError
        When a number is not finite or impossible.

    Examples
    --------
    >>> from gaugepoint.plan import BobWeight, bob_weight_g
    >>> bob_weight_g(BobWeight(2, 420, 45, 180, 620, 0.5, 4))
    1734.0
    """
    return _gaugepoint.bob_weight_g(pin)


def finish(
    *,
    rpk_um: FinishValue = _NOTHING,
    rk_um: FinishValue = _NOTHING,
    rvk_um: FinishValue = _NOTHING,
    mr1_percent: FinishValue = _NOTHING,
    mr2_percent: FinishValue = _NOTHING,
    crosshatch_deg: FinishValue = _NOTHING,
    rule: str = "proven",
    at_least: float = 0.95,
) -> FinishFound:
    """Hold the finish of a bore against its limits; nothing that is not given is assumed.

    The names are those of ISO 13565-2. Where an uncertainty is given the rule of decision holds, without one the value alone is held against
    its limits.

    Parameters
    ----------
    rpk_um, rk_um, rvk_um : FinishValue, optional
        Reduced peak height, core height, reduced valley depth.
    mr1_percent, mr2_percent : FinishValue, optional
        Material ratios where the peaks end and where the valleys begin.
    crosshatch_deg : FinishValue, optional
        Angle between the two directions of the marks.
    rule : str, optional
        Rule of decision, by its word in a job.
    at_least : float, optional
        What the rule asks for: a probability or a ratio; the others do not look at it.

    Returns
    -------
    FinishFound
        What is found of every parameter.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or limits are out of order; it names the place (``rpk_um/upper``).

    Examples
    --------
    >>> from gaugepoint.plan import FinishValue, finish
    >>> found = finish(rpk_um=FinishValue(0.22, upper=0.30), rvk_um=FinishValue(1.05, 0.1, lower=1.0, upper=2.5))
    >>> found.rpk.finding, found.rvk.finding, found.rk.finding, found.is_met
    ('in', 'not_proven', 'no_limit', False)
    """
    values = (rpk_um, rk_um, rvk_um, mr1_percent, mr2_percent, crosshatch_deg)
    judged, is_met = _gaugepoint.finish(values, rule, at_least)
    rpk, rk, rvk, mr1, mr2, crosshatch = (FinishJudged(cast("Any", finding), p) for finding, p in judged)
    return FinishFound(rpk, rk, rvk, mr1, mr2, crosshatch, is_met)
