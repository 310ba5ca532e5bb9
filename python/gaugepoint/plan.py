"""What is done with which part: measured pistons matched to bores. ``core/docs/matching.md`` has the cases, their proofs and sources."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, TypeAlias, cast

from gaugepoint import _gaugepoint

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = [
    "Conditions",
    "Matched",
    "Matching",
    "MeasuredBore",
    "MeasuredPiston",
    "MeasuredSizes",
    "Merit",
    "WantedClearance",
    "match",
]

Case: TypeAlias = Literal["sorted", "order_preserving", "pair_dependent"]


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
