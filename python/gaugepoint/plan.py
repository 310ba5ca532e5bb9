"""What is done with which part: worn bores and what they must be bored to, what the machine is set to, measured pistons matched to bores.

``core/docs/clean-up.md``, ``core/docs/machining.md`` and ``core/docs/matching.md`` have the formulas, proofs and sources.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, TypeAlias, cast

from gaugepoint import _gaugepoint

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = [
    "Bar",
    "BestAxis",
    "BoreSizes",
    "CleanUp",
    "CleanUpRange",
    "Conditions",
    "FinishCheck",
    "Held",
    "Matched",
    "Matching",
    "MeasuredBore",
    "MeasuredPiston",
    "MeasuredSizes",
    "Merit",
    "WallPoint",
    "WantedClearance",
    "WarmGauging",
    "bore_sizes",
    "boring_order",
    "clean_up",
    "clean_up_from_diameters",
    "dial_reading_mm",
    "finish_check",
    "largest_bore_by_walls_mm",
    "match",
    "walls_left",
]

Case: TypeAlias = Literal["sorted", "order_preserving", "pair_dependent"]
Outcome: TypeAlias = Literal["met", "hone_on", "too_large"]


@dataclass(frozen=True, slots=True)
class WantedClearance:
    """A wanted clearance at 20 C, mm over the diameter: at least one limit, and a target within them."""

    lower_mm: float | None
    """Lower limit; None where there is none."""
    upper_mm: float | None
    """Upper limit; None where there is none."""
    target_mm: float | None = None
    """Target; None for the middle of both limits."""


@dataclass(frozen=True, slots=True)
class MeasuredBore:
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
class MeasuredPiston:
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
class MeasuredSizes:
    """Many bores or pistons, without grades and weights."""

    size_mm: "NDArray[np.float64]"
    """Sizes at 20 C."""
    standard_uncertainty_mm: "NDArray[np.float64]"
    """Standard uncertainties of the sizes."""


@dataclass(frozen=True, slots=True)
class Conditions:
    """What holds for a whole set, as `match` takes it."""

    wanted: WantedClearance | None
    """The clearance that bores without their own want."""
    shared_uncertainty_mm: float
    """The part of every standard uncertainty that is one and the same error: it cancels in a clearance."""
    common_uncertainty_mm: float
    """Standard uncertainty beside those of the parts that all bores have in common, or all pistons: it adds to every clearance."""
    forbidden: list[tuple[int, int]]
    """Pairs that may not be: place of the bore, place of the piston."""
    fixed: list[tuple[int, int]]
    """Pairs that must be."""
    weight_band_g: float | None
    """Largest difference of weight of the chosen pistons."""


@dataclass(frozen=True, slots=True)
class Matched:
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
class Merit:
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
class Matching:
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
    conditions = Conditions(wanted, shared_uncertainty_mm, common_uncertainty_mm, list(forbidden), list(fixed), weight_band_g)
    if isinstance(bores, MeasuredSizes) and isinstance(pistons, MeasuredSizes):
        sizes = (bores.size_mm, bores.standard_uncertainty_mm, pistons.size_mm, pistons.standard_uncertainty_mm)
        found = _gaugepoint.match_sizes(*sizes, conditions)
    elif isinstance(bores, MeasuredSizes) or isinstance(pistons, MeasuredSizes):
        raise TypeError("bores and pistons: both are arrays, or neither is")
    else:
        found = _gaugepoint.match_pistons(bores, pistons, conditions)
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
class BestAxis:
    """A bar that stands where the bore comes out smallest."""

    shift_mm: float
    """Most that the axis may move at the middle of the depths."""
    tilt: float
    """Most that it may lean, as mm on each mm of depth."""


@dataclass(frozen=True, slots=True)
class Bar:
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
class Held:
    """A point of the wall that holds the bore."""

    place: int
    """Place of the point among those given."""
    share: float
    """How far the radius of the bore moves with that of the point. The shares add up to 1."""


@dataclass(frozen=True, slots=True)
class CleanUp:
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
class CleanUpRange:
    """The clean-up about the original axis as far as diameters tell it."""

    lower_mm: float
    """When both sides are worn alike."""
    upper_mm: float
    """When one side alone is worn. This one is used, unless a radial trace or the unworn ridge shows how the wear is shared."""


@dataclass(frozen=True, slots=True)
class WallPoint:
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
class BoreSizes:
    """What a bore is machined to."""

    finish_mm: float
    """Size at 20 C when it is finished."""
    boring_mm: float
    """Size at 20 C after boring."""


@dataclass(frozen=True, slots=True)
class WarmGauging:
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
class FinishCheck:
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
