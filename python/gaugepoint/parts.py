"""Rings, pins, press fits, liners and the deck: what a rebuild asks besides the clearance of its pistons."""

from collections.abc import Sequence
from typing import Literal, NamedTuple

from gaugepoint import _gaugepoint
from gaugepoint._value import Value, dataclass

__all__ = [
    "Assembly",
    "Chamber",
    "Compression",
    "CrankAngles",
    "DeadCentres",
    "Deck",
    "GapFactor",
    "GasketChoice",
    "HotGap",
    "LeastClearance",
    "LinerFit",
    "LinerParts",
    "PinClearance",
    "PistonTravel",
    "PressFit",
    "PressFitParts",
    "assembly_temperature",
    "compression_ratio",
    "crank_angles_at",
    "dead_centres",
    "deck",
    "gasket_band",
    "least_clearance_of_section",
    "liner_in_block",
    "pin_clearance",
    "piston_travel",
    "press_fit",
    "ring_gap_factors",
    "ring_hot_gap",
]

TemperColour = Literal["none", "straw", "purple", "blue"]
"""Colour that clean steel takes at a temperature: from 480 F, 520 F and 575 F."""

_COLOURS: tuple[TemperColour, ...] = ("none", "straw", "purple", "blue")


class GapFactor(NamedTuple):
    """A published factor for the end gap: data, not a rule of this library."""

    duty: str
    """Which ring, for which duty."""
    per_mille: float
    """Gap in per mille of the bore."""
    source: str
    """Where it is printed."""


@dataclass(frozen=True, slots=True)
class HotGap(Value):
    """End gap of a hot ring."""

    gap_mm: float
    """The gap, in mm. Below zero the ends butt, and the ring breaks the land or scores the bore."""
    first_order_mm: float
    """The same to the first order, as it is worked by hand: the difference is the growth of the cold gap."""
    butts: bool
    """Do the ends butt? A fault of the fit, and no error of the call."""


@dataclass(frozen=True, slots=True)
class PinClearance(Value):
    """Clearance of a pin, diametral, in mm; negative is interference."""

    cold_mm: float
    """At 20 C."""
    hot_mm: float
    """Free growth at the temperatures given."""


@dataclass(frozen=True, slots=True)
class PressFitParts(Value):
    """A pin and the eye it is pressed into. All sizes are diameters in mm at 20 C."""

    pin_mm: float
    """Joint: outside of the pin."""
    pin_hole_mm: float
    """Hole of the pin; 0 is a solid pin."""
    eye_mm: float
    """Outside of the eye."""
    width_mm: float
    """Length of the joint along the axis, in mm."""
    interference_least_mm: float
    """Measured interference, least of its range."""
    interference_most_mm: float
    """Measured interference, most of its range."""
    smoothing_mm: float
    """Interference that is lost because roughness is pressed flat."""
    friction_least: float
    """Coefficient of friction, least of its range."""
    friction_most: float
    """Coefficient of friction, most of its range."""
    pin_modulus_mpa: float
    """Modulus of elasticity of the pin, in MPa."""
    pin_poisson: float
    """Poisson's ratio of the pin."""
    eye_modulus_mpa: float
    """Modulus of elasticity of the eye, in MPa."""
    eye_poisson: float
    """Poisson's ratio of the eye."""


@dataclass(frozen=True, slots=True)
class PressFit(Value):
    """What a press fit holds, and what it does to its parts."""

    pressure_least_mpa: float
    """Pressure at the least interference, in MPa; 0 when the smoothing takes all of it."""
    pressure_most_mpa: float
    """Pressure at the most interference, in MPa."""
    eye_hoop_inside_mpa: float
    """Hoop stress of the eye at the joint, at the most interference, in MPa; tension is positive."""
    eye_hoop_outside_mpa: float
    """Hoop stress of the eye at its outside."""
    pin_hoop_outside_mpa: float
    """Hoop stress of the pin at the joint."""
    pin_hoop_inside_mpa: float
    """Hoop stress of the pin at its hole; of a solid pin the same as at the joint."""
    force_least_n: float
    """Axial force at which it slips, least interference and least friction, in N."""
    force_most_n: float
    """The same at the most of both."""
    torque_least_nm: float
    """Torque at which it slips, least interference and least friction, in N m."""
    torque_most_nm: float
    """The same at the most of both."""
    caution: str
    """What to take care of."""


@dataclass(frozen=True, slots=True)
class Assembly(Value):
    """Heat that lets a part be slipped on."""

    rise_k: float
    """Rise of temperature, in K."""
    temperature_c: float
    """Temperature of the heated part, from 20 C."""
    temper_colour: TemperColour
    """Colour of clean steel at that temperature: any is a sign of too much heat. It says nothing of aluminium."""
    caution: str
    """What to take care of."""


@dataclass(frozen=True, slots=True)
class LinerParts(Value):
    """A liner and its block. All sizes are diameters in mm at 20 C."""

    bore_mm: float
    """Bore of the liner."""
    measured_in_block: bool
    """Was the bore measured in the block? It then already holds what the cold pressure takes. False: measured before the liner
    was pressed in."""
    seat_mm: float
    """Joint: outside of the liner, bore of the block."""
    block_mm: float
    """Outside of the wall that holds the liner; of a block that is no tube, of the tube that stands for it."""
    interference_mm: float
    """Measured interference, 0 to 0.3."""
    smoothing_mm: float
    """Interference that is lost because roughness is pressed flat."""
    liner_modulus_mpa: float
    """Modulus of elasticity of the liner, in MPa."""
    liner_poisson: float
    """Poisson's ratio of the liner."""
    liner_expansion_per_k: float
    """Mean coefficient of expansion of the liner from 20 C, per kelvin."""
    liner_temperature_c: float
    """Temperature of the liner, -40 C to 450 C."""
    block_modulus_mpa: float
    """Modulus of elasticity of the block, in MPa."""
    block_poisson: float
    """Poisson's ratio of the block."""
    block_expansion_per_k: float
    """Mean coefficient of expansion of the block from 20 C, per kelvin."""
    block_temperature_c: float
    """Temperature of the block, -40 C to 450 C."""


@dataclass(frozen=True, slots=True)
class LinerFit(Value):
    """What becomes of a liner in its block."""

    pressure_20_mpa: float
    """Pressure in the joint at 20 C, in MPa."""
    pressure_mpa: float
    """Pressure in the joint at the temperatures given, in MPa; 0 when contact is lost."""
    interference_mm: float
    """Interference at the temperatures given, in mm; negative is the gap of a liner that lost contact."""
    bore_20_mm: float
    """Bore of the liner in the block at 20 C, in mm."""
    bore_mm: float
    """Bore of the liner in the block at the temperatures given, in mm."""
    contact_lost_at_c: float | None
    """Temperature of both parts, soaked, at which contact is lost; None when it is not lost between -40 C and 450 C."""
    caution: str
    """What to take care of."""


@dataclass(frozen=True, slots=True)
class Deck(Value):
    """Where the piston stops at top dead centre."""

    deck_clearance_mm: float
    """From the deck down to the crown, in mm; negative when the crown stands above the deck."""
    protrusion_mm: float
    """The same the other way: from the deck up to the crown."""
    squish_mm: float
    """From the crown to the head, in mm. Below zero they meet: a fault of the parts, and no error of the call."""


@dataclass(frozen=True, slots=True)
class Chamber(Value):
    """What encloses the gas at top dead centre."""

    bore_mm: float
    """Bore, in mm."""
    stroke_mm: float
    """Stroke, in mm."""
    head_cm3: float
    """Chamber in the head, valves and plug in place, in cm3; 0 is a flat head."""
    gasket_bore_mm: float
    """Opening of the gasket, as a diameter in mm."""
    gasket_mm: float
    """Gasket, compressed, in mm."""
    deck_clearance_mm: float
    """From the deck down to the crown, in mm; negative for a protrusion."""
    crown_cm3: float
    """Dish, bowl and valve pockets in the crown, in cm3; negative for a dome."""
    crevice_cm3: float
    """Crevice at the top land, in cm3; 0 leaves it out, as is usual."""


@dataclass(frozen=True, slots=True)
class Compression(Value):
    """Compression ratio and the volumes behind it."""

    swept_cm3: float
    """Swept volume of the cylinder, in cm3."""
    gasket_cm3: float
    """Volume within the gasket, in cm3."""
    deck_cm3: float
    """Volume between deck and crown, in cm3; negative for a protrusion."""
    clearance_cm3: float
    """Everything above the piston at top dead centre, in cm3."""
    ratio: float
    """Swept and clearance volume over the clearance volume."""


@dataclass(frozen=True, slots=True)
class GasketChoice(Value):
    """The gasket that a table asks for."""

    band: int
    """Place of its line in the table, from 0."""
    largest_mm: float
    """The protrusion that decided, in mm: the largest."""
    thickness_mm: float
    """The gasket, in mm."""
    squish_mm: float
    """From that crown to the head, in mm."""


def ring_gap_factors() -> tuple[GapFactor, ...]:
    """Give the published factors for the end gap, by duty.

    They contradict each other: the maker's figure comes before all of them.

    Returns
    -------
    tuple of GapFactor
        Duty, per mille of the bore, source.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.ring_gap_factors()[1][:2]
    ('first ring, street performance', 4.5)
    """
    return tuple(GapFactor(*factor) for factor in _gaugepoint.ring_gap_factors())


def ring_hot_gap(
    gap_mm: float,
    bore_mm: float,
    bore_temperature_c: float,
    bore_expansion_per_k: float,
    ring_temperature_c: float,
    ring_expansion_per_k: float,
) -> HotGap:
    """Give the end gap with bore and ring at their temperatures.

    ``gap (1 + eps_ring) + pi bore (eps_bore - eps_ring)``. Two cases are worth a call: steady running, and a sudden load on a
    cold bore, where the ring is hot first. Source: definition of strain; a closed ring keeps its length.

    Parameters
    ----------
    gap_mm, bore_mm : float
        Gap and bore at 20 C, in mm.
    bore_temperature_c : float
        Temperature of the bore, -40 C to 450 C.
    bore_expansion_per_k : float
        Mean coefficient of linear expansion of the bore from 20 C, per kelvin.
    ring_temperature_c : float
        Temperature of the ring, -40 C to 450 C.
    ring_expansion_per_k : float
        Mean coefficient of linear expansion of the ring from 20 C, per kelvin.

    Returns
    -------
    HotGap
        The gap, exact and to the first order, and whether the ends butt: a fault of the fit, and no error.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    A bore of 100 mm, all of iron: steady, then a sudden load on a cold bore.

    >>> import gaugepoint
    >>> round(gaugepoint.ring_hot_gap(0.4, 100.0, 160.0, 11.4e-6, 200.0, 11.4e-6).gap_mm, 2)
    0.26
    >>> gaugepoint.ring_hot_gap(0.4, 100.0, 90.0, 11.4e-6, 230.0, 11.4e-6).butts
    True
    """
    return HotGap(
        *_gaugepoint.ring_hot_gap(
            gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k
        )
    )


@dataclass(frozen=True, slots=True)
class DeadCentres(Value):
    """The two dead centres of a crank with an offset pin."""

    stroke_mm: float
    """From one to the other, in mm. With an offset it is more than twice the crank radius."""
    top_deg: float
    """Crank angle of top dead centre: 0 without an offset, below 0 for a pin offset to the major thrust side."""
    bottom_deg: float
    """Crank angle of bottom dead centre: 180 without an offset."""


@dataclass(frozen=True, slots=True)
class PistonTravel(Value):
    """How far the piston is down, and how fast it goes down."""

    travel_mm: float
    """From top dead centre down, in mm."""
    per_degree_mm: float
    """More travel for each degree of the crank, in mm; negative on the way up."""


@dataclass(frozen=True, slots=True)
class CrankAngles(Value):
    """The two crank angles at which a piston is down by a given travel."""

    before_deg: float
    """On the way up, before top dead centre."""
    after_deg: float
    """On the way down, after it."""


@dataclass(frozen=True, slots=True)
class LeastClearance(Value):
    """The least clearance of a section, and where it is."""

    least_mm: float
    """The clearance, in mm."""
    angle_deg: float
    """Its angle, from 0 up to 360; of angles whose values rounding cannot tell apart, the smallest."""
    within_mm: float
    """The true least value is between ``least_mm - within_mm`` and ``least_mm``."""


def pin_clearance(
    hole_mm: float,
    hole_temperature_c: float,
    hole_expansion_per_k: float,
    pin_mm: float,
    pin_temperature_c: float,
    pin_expansion_per_k: float,
) -> PinClearance:
    """Give the clearance of a pin in a boss or in a bush, cold and hot.

    ``hole (1 + eps_hole) - pin (1 + eps_pin)``. A pressed bush grows by the coefficient of what holds it, not by its own. Source:
    definition of strain.

    Parameters
    ----------
    hole_mm, pin_mm : float
        Diameters at 20 C, in mm.
    hole_temperature_c : float
        Temperature of the hole, -40 C to 450 C.
    hole_expansion_per_k : float
        Mean coefficient of linear expansion of the hole from 20 C, per kelvin.
    pin_temperature_c : float
        Temperature of the pin, -40 C to 450 C.
    pin_expansion_per_k : float
        Mean coefficient of linear expansion of the pin from 20 C, per kelvin.

    Returns
    -------
    PinClearance
        Diametral clearances; negative is interference.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the cold clearance is that of another pin; it
        names the parameter, the value and the range.

    Examples
    --------
    An aluminium piston heated to 80 C lets in a pin of its own size.

    >>> import gaugepoint
    >>> round(gaugepoint.pin_clearance(22.0, 80.0, 20.5e-6, 22.0, 20.0, 11.7e-6).hot_mm, 3)
    0.027
    """
    return PinClearance(
        *_gaugepoint.pin_clearance(
            hole_mm, hole_temperature_c, hole_expansion_per_k, pin_mm, pin_temperature_c, pin_expansion_per_k
        )
    )


def press_fit(parts: PressFitParts) -> PressFit:
    """Give what a press fit holds over the range of its interference and friction, and what it does to its parts.

    Thick elastic tubes, no yielding. Source: Lame.

    Parameters
    ----------
    parts : PressFitParts
        The pin and the eye.

    Returns
    -------
    PressFit
        Pressures, hoop stresses, axial forces and torques at which it slips, and what to take care of.

    Raises
    ------
    InputError
        When a number is not finite or impossible, the diameters are out of order, or a least is above its most; it
        names the field, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> fit = gaugepoint.press_fit(
    ...     gaugepoint.PressFitParts(
    ...         pin_mm=22.0, pin_hole_mm=12.0, eye_mm=30.0, width_mm=24.0,
    ...         interference_least_mm=0.03, interference_most_mm=0.03, smoothing_mm=0.0,
    ...         friction_least=0.12, friction_most=0.12,
    ...         pin_modulus_mpa=205e3, pin_poisson=0.29, eye_modulus_mpa=205e3, eye_poisson=0.29,
    ...     )
    ... )
    >>> round(fit.pressure_least_mpa, 2), round(fit.force_least_n), round(fit.torque_least_nm, 1)
    (54.03, 10755, 118.3)
    """
    pressure, hoop, force, torque, caution = _gaugepoint.press_fit(parts)
    return PressFit(*pressure, *hoop, *force, *torque, caution)


def assembly_temperature(
    diameter_mm: float, interference_mm: float, clearance_mm: float, expansion_per_k: float
) -> Assembly:
    """Give the temperature to which the outer part is heated, so that its hole opens by the interference and a clearance.

    ``20 + (interference + clearance) / (a d)``, the pin at 20 C. A result that no part survives is a fault of the fit, and no
    error. Source: definition of strain; temper colours are common practice.

    Parameters
    ----------
    diameter_mm : float
        Joint, in mm.
    interference_mm, clearance_mm : float
        Interference, and clearance that is wanted while it is slipped on, in mm.
    expansion_per_k : float
        Mean coefficient of linear expansion of the heated part from 20 C, per kelvin.

    Returns
    -------
    Assembly
        Rise, temperature, temper colour of clean steel, and what to take care of.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> heat = gaugepoint.assembly_temperature(22.0, 0.03, 0.02, 11.7e-6)
    >>> round(heat.temperature_c, 1), heat.temper_colour
    (214.3, 'none')
    """
    rise, temperature, colour, caution = _gaugepoint.assembly_temperature(
        diameter_mm, interference_mm, clearance_mm, expansion_per_k
    )
    return Assembly(rise, temperature, _COLOURS[colour], caution)


def liner_in_block(parts: LinerParts) -> LinerFit:
    """Give what becomes of a liner in its block: pressure over temperature, loss of contact, and the bore that is left.

    Thick elastic tubes that grow freely until they touch. Source: Lame; definition of strain.

    Parameters
    ----------
    parts : LinerParts
        The liner and its block.

    Returns
    -------
    LinerFit
        Pressures, interference, bores, the temperature at which contact is lost, and what to take care of.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the diameters are out of order; it
        names the field, the value and the range.

    Examples
    --------
    An iron liner in an aluminium block.

    >>> import gaugepoint
    >>> fit = gaugepoint.liner_in_block(
    ...     gaugepoint.LinerParts(
    ...         bore_mm=86.0, measured_in_block=True, seat_mm=91.0, block_mm=104.0,
    ...         interference_mm=0.04, smoothing_mm=0.005,
    ...         liner_modulus_mpa=110e3, liner_poisson=0.26, liner_expansion_per_k=11.4e-6, liner_temperature_c=110.0,
    ...         block_modulus_mpa=72e3, block_poisson=0.33, block_expansion_per_k=20.5e-6, block_temperature_c=110.0,
    ...     )
    ... )
    >>> fit.pressure_mpa, round(fit.contact_lost_at_c, 1)
    (0.0, 62.3)
    """
    return LinerFit(*_gaugepoint.liner_in_block(parts))


def deck(
    block_height_mm: float, stroke_mm: float, rod_mm: float, compression_height_mm: float, gasket_mm: float
) -> Deck:
    """Give where the piston stops at top dead centre, by both of its names, and the squish that is left.

    ``block - (stroke / 2 + rod + compression height)``, and the gasket.

    Parameters
    ----------
    block_height_mm, stroke_mm, rod_mm, compression_height_mm : float
        Crank centre to deck, stroke, rod from centre to centre, pin axis to crown, in mm.
    gasket_mm : float
        Gasket, compressed, in mm.

    Returns
    -------
    Deck
        Deck clearance, protrusion, squish.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.deck(216.5, 86.0, 143.0, 31.0, 1.25)
    Deck(deck_clearance_mm=-0.5, protrusion_mm=0.5, squish_mm=0.75)
    """
    return Deck(*_gaugepoint.deck(block_height_mm, stroke_mm, rod_mm, compression_height_mm, gasket_mm))


def compression_ratio(chamber: Chamber) -> Compression:
    """Give the compression ratio and the volumes behind it.

    ``(V_swept + V_clear) / V_clear``.

    Parameters
    ----------
    chamber : Chamber
        What encloses the gas.

    Returns
    -------
    Compression
        Swept, gasket, deck and clearance volume, and the ratio.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or nothing is left above the piston; it
        names the field, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> stock = gaugepoint.Chamber(
    ...     bore_mm=86.0, stroke_mm=86.0, head_cm3=49.697791, gasket_bore_mm=86.0, gasket_mm=1.0,
    ...     deck_clearance_mm=0.0, crown_cm3=0.0, crevice_cm3=0.0,
    ... )
    >>> round(gaugepoint.compression_ratio(stock).ratio, 2)
    10.0
    """
    return Compression(*_gaugepoint.compression_ratio(chamber))


def gasket_band(
    projections_mm: Sequence[float], bands: Sequence[tuple[float, float, float]], step_mm: float = 0.001
) -> GasketChoice:
    """Give the gasket for the largest of several protrusions, from a table.

    Between what two lines print, and where they share an end, the later line counts: the thicker gasket.

    Parameters
    ----------
    projections_mm : sequence of float
        Protrusions, in mm; up to 1000.
    bands : sequence of tuples of float
        Lines of the table: smallest protrusion, largest protrusion, gasket, in mm.
    step_mm : float
        Last digit that the table is printed to, in mm: lines that follow each other by no more leave no hole.

    Returns
    -------
    GasketChoice
        Place of the line, the protrusion that decided, the gasket, and the squish.

    Raises
    ------
    InputError
        When there is nothing to choose from, a number is not finite or impossible, lines overlap, leave a hole or do not rise, or
        the largest protrusion lies outside the table; it names the place: ``bands/1/from_mm``.

    Examples
    --------
    >>> import gaugepoint
    >>> table = [(0.470, 0.604, 1.30), (0.605, 0.654, 1.35), (0.655, 0.704, 1.40)]
    >>> gaugepoint.gasket_band([0.48, 0.662, 0.60], table).thickness_mm
    1.4
    """
    return GasketChoice(*_gaugepoint.gasket_band(projections_mm, bands, step_mm))


def dead_centres(crank_radius_mm: float, rod_mm: float, pin_offset_mm: float) -> DeadCentres:
    """Give the stroke and the dead centres of a crank with an offset pin.

    ``sqrt((l + r)^2 - o^2) - sqrt((l - r)^2 - o^2)``, at ``-asin(o / (l + r))`` and ``180 - asin(o / (l - r))``. The crank angle is 0
    with the throw in line with the cylinder, and grows as the crank turns. Source: Pythagoras.

    Parameters
    ----------
    crank_radius_mm, rod_mm : float
        Half of the stroke of an engine without offset, rod from centre to centre, in mm.
    pin_offset_mm : float
        Pin beside the piston's middle, positive toward the major thrust side, in mm. Seen from where the crankshaft turns
        clockwise, that side is on the left.

    Returns
    -------
    DeadCentres
        Stroke, crank angles of top and bottom dead centre.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the rod is too short for the crank to turn; it
        names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.dead_centres(43.0, 143.0, 0.0)
    DeadCentres(stroke_mm=86.0, top_deg=0.0, bottom_deg=180.0)
    """
    return DeadCentres(*_gaugepoint.dead_centres(crank_radius_mm, rod_mm, pin_offset_mm))


def piston_travel(
    crank_radius_mm: float, rod_mm: float, pin_offset_mm: float, crank_angle_deg: float
) -> PistonTravel:
    """Give how far the piston is down from top dead centre at a crank angle, and how fast it goes down.

    ``sqrt((l + r)^2 - o^2) - r cos f - sqrt(l^2 - (r sin f + o)^2)``. Source: slider-crank geometry.

    Parameters
    ----------
    crank_radius_mm, rod_mm : float
        Half of the stroke of an engine without offset, rod from centre to centre, in mm.
    pin_offset_mm : float
        Pin beside the piston's middle, positive toward the major thrust side, in mm. Seen from where the crankshaft turns
        clockwise, that side is on the left.
    crank_angle_deg : float
        Crank angle, -720 to 720 degrees; 0 with the throw in line with the cylinder.

    Returns
    -------
    PistonTravel
        Travel, and more of it for each degree.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the rod is too short for the crank to turn; it
        names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.piston_travel(43.0, 143.0, 1.0, 90.0).travel_mm, 3)
    49.935
    """
    return PistonTravel(*_gaugepoint.piston_travel(crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg))


def crank_angles_at(
    crank_radius_mm: float, rod_mm: float, pin_offset_mm: float, travel_mm: float
) -> CrankAngles:
    """Give the two crank angles at which the piston is down by a travel.

    The triangle of crank, rod and the line from the crankshaft's centre to the pin. Source: law of cosines.

    Parameters
    ----------
    crank_radius_mm, rod_mm : float
        Half of the stroke of an engine without offset, rod from centre to centre, in mm.
    pin_offset_mm : float
        Pin beside the piston's middle, positive toward the major thrust side, in mm. Seen from where the crankshaft turns
        clockwise, that side is on the left.
    travel_mm : float
        From top dead centre down, in mm, up to the stroke.

    Returns
    -------
    CrankAngles
        Crank angles on the way up and on the way down.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the rod is too short for the crank to turn; it
        names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.crank_angles_at(43.0, 143.0, 0.0, 10.0).after_deg, 2)
    35.15
    """
    return CrankAngles(*_gaugepoint.crank_angles_at(crank_radius_mm, rod_mm, pin_offset_mm, travel_mm))


def least_clearance_of_section(
    mean_mm: float, cos_mm: Sequence[float], sin_mm: Sequence[float]
) -> LeastClearance:
    """Give the least value over every angle of a section, of a clearance or of any other.

    The section is ``mean + sum of cos_n cos(n angle) + sin_n sin(n angle)``. Found without a grid to miss it between, with a bound on
    its error. Source: Taylor's theorem.

    Parameters
    ----------
    mean_mm : float
        Mean of the section, in mm.
    cos_mm, sin_mm : sequence of float
        Coefficients in mm, the first of order 1; up to 32. One may be shorter than the other.

    Returns
    -------
    LeastClearance
        The least value, its angle, how far the true one can lie below.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or there are more than 32 orders; it
        names the parameter, the value and the range.

    Examples
    --------
    An oval piston is tightest along the thrust axis.

    >>> import gaugepoint
    >>> least = gaugepoint.least_clearance_of_section(0.0625, [0.0, -0.03125], [])
    >>> least.least_mm, least.angle_deg
    (0.03125, 0.0)
    """
    return LeastClearance(*_gaugepoint.least_clearance_of_section(mean_mm, cos_mm, sin_mm))
