"""The hot fit: one piston in one bore at its temperatures, made once and asked often.

Heights are up from the bottom edge of the skirt, depths down from the deck; angle 0 is the major thrust side, 90 the pin axis toward the front. Everything
is on one side of a centred piston unless it says "over the diameter". ``core/docs/hot-fit.md`` has the formulas. `gaugepoint.fit` gives the same as a
report, from a document.
"""

from collections.abc import Sequence
from dataclasses import field
from typing import TYPE_CHECKING, Literal, TypeAlias

from gaugepoint import _gaugepoint
from gaugepoint._value import Value, dataclass
from gaugepoint.growth import (
    BuiltIn,
    GraphiteIron,
    InstantaneousPolynomial,
    InstantaneousTable,
    MeanCoefficient,
    MeanTable,
    StrainPolynomial,
)
from gaugepoint.shape import Bore, Piston

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = [
    "Answer",
    "Anywhere",
    "Band",
    "BestPlaced",
    "BoreField",
    "Contact",
    "Crank",
    "GaugeDepth",
    "HotFit",
    "Motion",
    "Onset",
    "Ovality",
    "PistonField",
    "Place",
    "Profile",
    "SectionPicture",
    "Smallest",
    "SurfaceGrowth",
    "TopDeadCentre",
]

Law: TypeAlias = (
    MeanCoefficient
    | MeanTable
    | InstantaneousTable
    | InstantaneousPolynomial
    | StrainPolynomial
    | GraphiteIron
    | BuiltIn
)
"""A law of expansion."""

Scenario = Literal["piston_alone", "piston_and_bore", "piston_with_cold_bore"]
"""What rises on the way to first contact: the piston, the bore staying as given; both in proportion; the piston, the bore staying at 20 C."""


@dataclass(frozen=True, slots=True)
class Crank(Value):
    """The piston stands by a crank angle."""

    crank_deg: float
    """-360 to 720: 0 is the throw in line with the cylinder, on the way down after it."""


@dataclass(frozen=True, slots=True)
class TopDeadCentre(Value):
    """The piston stands at top dead centre."""


@dataclass(frozen=True, slots=True)
class GaugeDepth(Value):
    """The piston stands with its gauge point at a depth."""

    gauge_depth_mm: float
    """The depth."""


@dataclass(frozen=True, slots=True)
class Anywhere(Value):
    """Where the piston stands does not matter, because the bore is the same at every depth."""


Position: TypeAlias = Crank | TopDeadCentre | GaugeDepth | Anywhere
"""Where the piston stands."""


@dataclass(frozen=True, slots=True)
class SurfaceGrowth(Value):
    """How a surface of the piston grows."""

    law: Law
    """Law of its material."""
    ratio_thrust: float = 1.0
    """Growth on the thrust axis over that of the material; 1 without controlled expansion."""
    ratio_pin: float = 1.0
    """Growth on the pin axis over that of the material."""


@dataclass(frozen=True, slots=True)
class PistonField(Value):
    """Temperatures of a piston over height."""

    rows: Sequence[tuple[float, float, float]]
    """Height in mm, and the temperature in C on the thrust axis and on the pin axis there, by rising height; one row holds at every height. Kept as a
    tuple."""


@dataclass(frozen=True, slots=True)
class BoreField(Value):
    """Temperatures of the wall of a bore over depth: means over its section."""

    rows: Sequence[tuple[float, float]]
    """Depth in mm and temperature in C, by rising depth; one row holds at every depth. Kept as a tuple."""


@dataclass(frozen=True, slots=True)
class Motion(Value):
    """How a piston moves in its bore."""

    crank_radius_mm: float
    """Crank radius."""
    rod_mm: float
    """Length of the rod."""
    pin_offset_mm: float
    """Pin offset, positive toward the major thrust side."""
    deck_clearance_mm: float
    """Crown below the deck at top dead centre, negative where it stands out."""
    crown_height_mm: float
    """From the bottom edge of the skirt to the plane of the crown that is counted against the deck."""


@dataclass(frozen=True, slots=True)
class Place(Value):
    """A place on the piston and in the bore."""

    surface: int
    """Index of the surface: 0 is the skirt."""
    angle_deg: float
    """Angle, from 0 up to 360."""
    height_mm: float
    """Height above the bottom edge of the skirt."""
    depth_mm: float | None
    """Depth in the bore; None when it does not matter."""
    crank_deg: float | None
    """Crank angle on the way down; None when it does not matter, or is not known."""


@dataclass(frozen=True, slots=True)
class Smallest(Value):
    """The smallest clearance of a surface."""

    clearance_mm: float
    """On one side; negative for an overlap."""
    certified_within_mm: float
    """The smallest clearance is certainly not below that by more than this."""
    place: Place
    """Where it is."""


@dataclass(frozen=True, slots=True)
class Band(Value):
    """Angles at one height."""

    height_mm: float
    """The height."""
    from_deg: float
    """First angle, from 0 up to 360."""
    to_deg: float
    """Last angle; above 360 when the band goes over the thrust axis."""


@dataclass(frozen=True, slots=True)
class Contact(Value):
    """Where a surface is below a clearance."""

    area_mm2: float
    """Area of the surface there."""
    bands: tuple[Band, ...] = field(repr=False)
    """Angles, height by height."""


@dataclass(frozen=True, slots=True)
class BestPlaced(Value):
    """A piston moved sideways, without tilting, to where it has most room."""

    clearance_mm: float
    """Smallest clearance on one side there."""
    thrust_mm: float
    """Moved toward the major thrust side."""
    pin_mm: float
    """Moved along the pin, toward the front."""
    certified_within_mm: float
    """The most room of any place sideways is certainly within this of the clearance."""


@dataclass(frozen=True, slots=True)
class Onset(Value):
    """How far the temperatures can rise until something touches."""

    outcome: Literal["touches", "touches_at_20_c", "no_contact"]
    """What was found."""
    factor: float | None
    """Factor on the rise of the temperatures from 20 C; without contact the largest that was looked at. None when it touches at 20 C already."""
    thrust_c: float | None
    """Temperature of the thrust side at the gauge point with it."""
    place: Place | None
    """Where it touches."""
    slope_mm: float | None
    """Change of the clearance there with the factor; negative."""
    stopped_by: str | None
    """Why no more was looked at, without contact."""
    proven: bool
    """Whether every smaller factor was excluded."""


@dataclass(frozen=True, slots=True)
class Answer(Value):
    """What was looked for."""

    value: float | None
    """The size in mm, or the temperature in C; None when there is none."""
    no_solution: str | None
    """Why there is none."""


@dataclass(frozen=True, slots=True)
class Ovality(Value):
    """Ovality at one height, over the diameter."""

    cold_mm: float
    """At 20 C."""
    running_mm: float
    """In the running engine."""
    round_running_mm: float
    """At 20 C, of a piston that runs round."""


@dataclass(frozen=True, slots=True)
class Profile(Value):
    """Radii of a surface over height, less half the gauge diameter at 20 C, in mm."""

    heights_mm: tuple[float, ...]
    """Heights."""
    cold_thrust_mm: tuple[float, ...] = field(repr=False)
    """Thrust axis at 20 C."""
    cold_pin_mm: tuple[float, ...] = field(repr=False)
    """Pin axis at 20 C."""
    hot_thrust_mm: tuple[float, ...] = field(repr=False)
    """Thrust axis in the running engine."""
    hot_pin_mm: tuple[float, ...] = field(repr=False)
    """Pin axis in the running engine."""


@dataclass(frozen=True, slots=True)
class SectionPicture(Value):
    """Radii of piston and bore over angle at one height, in mm."""

    angles_deg: tuple[float, ...]
    """Angles."""
    piston_cold_mm: tuple[float, ...] = field(repr=False)
    """Piston at 20 C."""
    piston_hot_mm: tuple[float, ...] = field(repr=False)
    """Running piston."""
    bore_cold_mm: tuple[float, ...] = field(repr=False)
    """Bore at 20 C."""
    bore_hot_mm: tuple[float, ...] = field(repr=False)
    """Running bore."""


@dataclass(frozen=True, slots=True)
class HotFit(Value):
    """One piston in one bore at its temperatures, checked: every table reaches every place that the piston comes to.

    It is made once, keeps what it was made of, and never changes; any number of threads may ask it at once. `InputError` names what is refused by its
    place: ``growth/0/ratio_pin``, ``bore/harmonics/1/cos_mm/2``, ``surfaces/0/barrel/values_mm/2`` of the piston.
    """

    piston_diameter_mm: float
    """Diameter of the bare piston at its gauge point, at 20 C."""
    piston: Piston
    """Its shape."""
    growth: Sequence[SurfaceGrowth]
    """How its surfaces grow, one for each. Kept as a tuple."""
    piston_field: PistonField
    """Its temperatures."""
    bore: Bore
    """The bore."""
    bore_law: Law
    """Law of the wall that carries it."""
    bore_field: BoreField
    """Its temperatures."""
    motion: Motion | None = None
    """How the piston moves; None when its place in the bore does not matter, or is always said as a depth."""
    _fit: _gaugepoint.HotFit = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        growth = [(g.law._made(), g.ratio_thrust, g.ratio_pin) for g in self.growth]
        m = self.motion
        motion = (m.crank_radius_mm, m.rod_mm, m.pin_offset_mm, m.deck_clearance_mm, m.crown_height_mm) if m else None
        made = _gaugepoint.hot_fit(
            self.piston_diameter_mm,
            self.piston,
            growth,
            self.piston_field.rows,
            self.bore,
            self.bore_law._made(),
            self.bore_field.rows,
            motion,
        )
        object.__setattr__(self, "_fit", made)

    def clearance_mm(self, angle_deg: float, height_mm: float, position: Position = Anywhere()) -> float:
        """Give the clearance on one side at an angle and a height, negative for an overlap.

        In a window or a port it is that of the surfaces around.

        Parameters
        ----------
        angle_deg : float
            0 to 360 degrees.
        height_mm : float
            Up from the bottom edge of the skirt.
        position : Crank, TopDeadCentre, GaugeDepth or Anywhere
            Where the piston stands.

        Returns
        -------
        float
            The clearance, in mm.

        Raises
        ------
        InputError
            Where the piston has no surface or there is no bore, and when the position cannot be known.
        """
        return self._fit.clearance_mm(angle_deg, height_mm, _told(position))

    def diametral_mm(self, angle_deg: float, height_mm: float, position: Position = Anywhere()) -> float:
        """Give the clearance over the diameter, at an angle and the opposite one.

        Parameters
        ----------
        angle_deg : float
            0 to 360 degrees.
        height_mm : float
            Up from the bottom edge of the skirt.
        position : Crank, TopDeadCentre, GaugeDepth or Anywhere
            Where the piston stands.

        Returns
        -------
        float
            The clearance, in mm.

        Raises
        ------
        InputError
            As `clearance_mm`.
        """
        return self._fit.diametral_mm(angle_deg, height_mm, _told(position))

    def running_mm(self, position: Position = Anywhere()) -> float:
        """Give the running clearance at the gauge point, over the diameter.

        Parameters
        ----------
        position : Crank, TopDeadCentre, GaugeDepth or Anywhere
            Where the piston stands.

        Returns
        -------
        float
            The clearance, in mm.

        Raises
        ------
        InputError
            As `clearance_mm`.
        """
        return self._fit.running_mm(_told(position))

    def map(
        self,
        angles_deg: Sequence[float],
        heights_mm: Sequence[float],
        position: Position = Anywhere(),
        *,
        out: "NDArray[np.float64] | None" = None,
    ) -> "NDArray[np.float64]":
        """Give the clearance on one side over angles and heights, as an array of numpy.

        Parameters
        ----------
        angles_deg : sequence of float
            Angles, 0 to 360 degrees; an array of numpy will do.
        heights_mm : sequence of float
            Heights on the piston.
        position : Crank, TopDeadCentre, GaugeDepth or Anywhere
            Where the piston stands.
        out : numpy.ndarray, optional
            Where it goes: float64, of shape ``(heights, angles)``, its numbers side by side, row by row. New memory otherwise.

        Returns
        -------
        numpy.ndarray
            A row for every height, a number in mm for every angle: `out`, when it is given. NaN where the piston has a window, the bore a port, or no bore is
            around the piston: above the deck, or below its end.

        Raises
        ------
        InputError
            For what is not on the piston at all (``heights_mm/3``), and as `clearance_mm`; then nothing is written.
        TypeError
            When `out` is no `numpy.ndarray` of two dimensions and float64.
        ValueError
            When `out` is of another shape or cannot be written.
        """
        import numpy as np

        if out is None:
            out = np.empty((len(heights_mm), len(angles_deg)))
        self._fit.map_into(angles_deg, heights_mm, _told(position), out)
        return out

    def smallest(self, surface: int = 0, position: Position | None = None) -> Smallest:
        """Give the smallest clearance of a surface over angle and height, with a proof of how much smaller it could be.

        Parameters
        ----------
        surface : int
            Index of the surface: 0 is the skirt.
        position : Crank, TopDeadCentre, GaugeDepth or Anywhere, optional
            Where the piston stands; without, every crank angle counts.

        Returns
        -------
        Smallest
            The clearance, its place, and how far it is certain.

        Raises
        ------
        InputError
            When there is no such surface, or its place in the bore matters and is not known.
        """
        clearance, within, place = self._fit.smallest(surface, None if position is None else _told(position))
        return Smallest(clearance, within, Place(*place))

    def contact(self, surface: int = 0, position: Position = Anywhere(), below_mm: float = 0.0) -> Contact:
        """Give where a surface has less than a clearance on one side, at one position.

        Parameters
        ----------
        surface : int
            Index of the surface: 0 is the skirt.
        position : Crank, TopDeadCentre, GaugeDepth or Anywhere
            Where the piston stands.
        below_mm : float
            The clearance on one side; 0, or less the overlap that an elastic skirt may take.

        Returns
        -------
        Contact
            Area and angles.

        Raises
        ------
        InputError
            As `smallest`.
        """
        area, bands = self._fit.contact(surface, _told(position), below_mm)
        return Contact(area, tuple(Band(*band) for band in bands))

    def best_placed(self, surface: int = 0, position: Position = Anywhere()) -> BestPlaced:
        """Give where a surface has most room at one position, moved sideways without tilting.

        Parameters
        ----------
        surface : int
            Index of the surface: 0 is the skirt.
        position : Crank, TopDeadCentre, GaugeDepth or Anywhere
            Where the piston stands.

        Returns
        -------
        BestPlaced
            Smallest clearance there, how far the most of it is certainly within, and how far the piston is moved.

        Raises
        ------
        InputError
            As `smallest`, and when no part of the surface is in the bore.
        """
        return BestPlaced(*self._fit.best_placed(surface, _told(position)))

    def onset(self, scenario: Scenario, touching_mm: float = 0.0) -> Onset:
        """Give the first contact on the way up from 20 C, of all surfaces.

        Parameters
        ----------
        scenario : {"piston_alone", "piston_and_bore", "piston_with_cold_bore"}
            What rises.
        touching_mm : float
            Clearance on one side that counts as touching; 0, or less the overlap that an elastic skirt may take.

        Returns
        -------
        Onset
            The factor on the rise, and where it touches.

        Raises
        ------
        InputError
            As `smallest`.
        """
        outcome, factor, thrust, place, slope, stopped_by, proven = self._fit.onset(scenario, touching_mm)
        return Onset(outcome, factor, thrust, Place(*place) if place else None, slope, stopped_by, proven)

    def bore_for_running_mm(self, wanted_mm: float, position: Position = Anywhere()) -> Answer:
        """Give the size of the bore at 20 C for a running clearance at the gauge point, over the diameter.

        Parameters
        ----------
        wanted_mm : float
            The running clearance.
        position : Crank, TopDeadCentre, GaugeDepth or Anywhere
            Where the piston stands.

        Returns
        -------
        Answer
            The size in mm, or why there is none.

        Raises
        ------
        InputError
            As `clearance_mm`.
        """
        return Answer(*self._fit.bore_for_running_mm(wanted_mm, _told(position)))

    def bore_for_smallest_mm(self, wanted_mm: float) -> Answer:
        """Give the size of the bore at 20 C for a smallest clearance of the skirt, on one side.

        Parameters
        ----------
        wanted_mm : float
            The smallest clearance.

        Returns
        -------
        Answer
            The size in mm, or why there is none.

        Raises
        ------
        InputError
            As `smallest`.
        """
        return Answer(*self._fit.bore_for_smallest_mm(wanted_mm))

    def temperature_for_bench_c(self, bench_mm: float, scenario: Scenario, touching_mm: float = 0.0) -> Answer:
        """Give the temperature at which the piston first touches in a bore that leaves it a clearance on the bench, over the diameter.

        Parameters
        ----------
        bench_mm : float
            Clearance at 20 C.
        scenario : {"piston_alone", "piston_and_bore", "piston_with_cold_bore"}
            What rises.
        touching_mm : float
            Clearance on one side that counts as touching.

        Returns
        -------
        Answer
            The temperature of the thrust side at the gauge point in C, or why there is none.

        Raises
        ------
        InputError
            As `onset`.
        """
        return Answer(*self._fit.temperature_for_bench_c(bench_mm, scenario, touching_mm))

    def ovality(self, surface: int, height_mm: float) -> Ovality:
        """Give the ovality of a surface at a height: cold, running, and that of a piston that would run round.

        Parameters
        ----------
        surface : int
            Index of the surface: 0 is the skirt.
        height_mm : float
            Up from the bottom edge of the skirt.

        Returns
        -------
        Ovality
            The three, over the diameter.

        Raises
        ------
        InputError
            When there is no such surface, or it does not reach the height.
        """
        return Ovality(*self._fit.ovality(surface, height_mm))

    def profile(self, surface: int = 0, count: int = 101) -> Profile:
        """Give the radii of a surface over evenly spaced heights, to draw.

        Parameters
        ----------
        surface : int
            Index of the surface: 0 is the skirt.
        count : int
            How many heights, 2 to 65536, both ends among them.

        Returns
        -------
        Profile
            Both axes, cold and running.

        Raises
        ------
        InputError
            When there is no such surface, or the count is not possible.
        """
        return Profile(*map(tuple, self._fit.profile(surface, count)))

    def section(self, height_mm: float, position: Position = Anywhere(), count: int = 361) -> SectionPicture:
        """Give the radii of piston and bore at a height over evenly spaced angles, to draw.

        Parameters
        ----------
        height_mm : float
            Up from the bottom edge of the skirt.
        position : Crank, TopDeadCentre, GaugeDepth or Anywhere
            Where the piston stands.
        count : int
            How many angles from 0 to 360 degrees, 2 to 65536.

        Returns
        -------
        SectionPicture
            Piston and bore, cold and running.

        Raises
        ------
        InputError
            As `clearance_mm`, and when the count is not possible.
        """
        return SectionPicture(*map(tuple, self._fit.section(height_mm, _told(position), count)))


def _told(position: Position) -> tuple[str, float]:
    """The word of a position, and its number where it has one."""
    match position:
        case Crank(crank_deg):
            return "crank", crank_deg
        case TopDeadCentre():
            return "top_dead_centre", 0.0
        case GaugeDepth(gauge_depth_mm):
            return "gauge_depth", gauge_depth_mm
        case Anywhere():
            return "anywhere", 0.0
    raise TypeError(f"position: a Crank, TopDeadCentre, GaugeDepth or Anywhere is needed, not {type(position).__name__}")
