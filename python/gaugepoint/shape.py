"""The shape itself, from full traces: harmonics of a section, circles, cylinders and planes, and what gauges read from them.

Coordinates are in mm; any sequence of floats will do, an array of numpy too.
"""

from collections.abc import Sequence
from typing import Literal

from gaugepoint import _gaugepoint
from gaugepoint._gaugepoint import v_block_factor
from gaugepoint._value import Value, dataclass

__all__ = [
    "AsymmetricSurface",
    "Bore",
    "BoreAxis",
    "BoreHarmonic",
    "Circle",
    "Cylinder",
    "Estimate",
    "FittedSurface",
    "Form",
    "FormWarning",
    "Harmonic",
    "Largest",
    "Piston",
    "Plane",
    "Port",
    "Section",
    "Station",
    "SymmetricSurface",
    "TraceFit",
    "Window",
    "bore_to_main_line",
    "fit_circle",
    "fit_circle_algebraic",
    "fit_cylinder",
    "fit_piston_surface",
    "fit_piston_trace",
    "fit_plane",
    "piston_diameter_mm",
    "piston_largest",
    "piston_ovality_mm",
    "piston_radius_mm",
    "piston_warnings",
    "section_from_diameters",
    "section_from_radii",
    "three_leg_mm",
    "two_point_mm",
    "v_block_factor",
]

Reference = Literal["least_squares", "minimum_zone", "minimum_circumscribed", "maximum_inscribed"]
"""What a shape is fitted by."""

Algebraic = Literal["unit_norm", "pratt", "taubin", "hyperaccurate"]
"""What the equation of a circle is held to."""


@dataclass(frozen=True, slots=True)
class Form(Value):
    """What the points leave over a reference: roundness, cylindricity or flatness.

    ISO 12181-1 and 12180-1 name these RONt and CYLt, RONp and CYLp, RONv and CYLv, RONq and CYLq, the last three about the
    least-squares reference only. A peak is there what stands out of the material: on a bore the inside, on a piston the outside.
    """

    total_mm: float
    """Outside and inside together."""
    outside_mm: float
    """Largest distance of a point beyond the reference, away from the centre; of a plane: above it."""
    inside_mm: float
    """Largest distance of a point within the reference; of a plane: below it."""
    rms_mm: float
    """Root of the mean square of all distances."""


@dataclass(frozen=True, slots=True)
class Circle(Value):
    """A circle that points were fitted by."""

    x_mm: float
    """Centre."""
    y_mm: float
    """Centre."""
    radius_mm: float
    """Radius; of a minimum zone the mean of its two."""
    form: Form
    """What the points leave: roundness."""


@dataclass(frozen=True, slots=True)
class Cylinder(Value):
    """A cylinder that points were fitted by."""

    x_mm: float
    """The axis at `z_mm`."""
    y_mm: float
    """The axis at `z_mm`."""
    z_mm: float
    """Depth of that point of the axis: in the middle of the first and the last point."""
    slope_x: float
    """How far the axis moves along x for each mm of depth."""
    slope_y: float
    """How far the axis moves along y for each mm of depth."""
    radius_mm: float
    """Radius; of a minimum zone the mean of its two."""
    form: Form
    """What the points leave: cylindricity."""


@dataclass(frozen=True, slots=True)
class Plane(Value):
    """A plane that points were fitted by."""

    x_mm: float
    """A point of the plane: the mean of the points along x and y."""
    y_mm: float
    """A point of the plane."""
    z_mm: float
    """A point of the plane; of a minimum zone in the middle of its two."""
    slope_x: float
    """Rise along z for each mm along x."""
    slope_y: float
    """Rise along z for each mm along y."""
    slope: float
    """Rise for each mm in the direction of steepest rise: the tilt."""
    direction_deg: float | None
    """Direction of steepest rise, from x toward y, -180 to 180 degrees; None for a plane without tilt."""
    form: Form
    """What the points leave: flatness."""


@dataclass(frozen=True, slots=True)
class BoreAxis(Value):
    """How a bore's axis stands to the main line."""

    offset_mm: float
    """Shortest distance between the two lines."""
    station_mm: float
    """Where along the main line that is, from its first point toward its last."""
    out_of_square_mrad: float
    """How far the angle between the lines is from a right one; positive when the bore, from its first point to its last, leans
    toward the last point of the main line."""
    length_mm: float
    """Length of the bore from its first point to its last, along its axis."""
    out_of_square_mm: float
    """The same as `out_of_square_mrad`, over `length_mm`."""
    bore_straightness_mm: float
    """Twice the largest distance of a point of the bore from its straight axis."""
    main_straightness_mm: float
    """Twice the largest distance of a point of the main line from its straight line."""


@dataclass(frozen=True, slots=True)
class Harmonic(Value):
    """One order of a section: ``cos_mm cos(n angle) + sin_mm sin(n angle)``."""

    order: int
    """Undulations in one turn, ``n``."""
    cos_mm: float | None
    """Cosine part; None when the cosine is zero at every angle that was read."""
    sin_mm: float | None
    """Sine part; None when the sine is zero at every angle that was read."""


@dataclass(frozen=True, slots=True)
class Section(Value):
    """A section of a bore or a piston: the radius at every angle, as mean and harmonics."""

    mean_radius_mm: float
    """Mean radius."""
    position_mm: tuple[float, float] | None
    """Order 1, which is the position of the axis along 0 and 90 degrees, to the first order; None from diameters."""
    harmonics: tuple[Harmonic, ...]
    """Orders from 2 up, rising; from diameters the even ones only."""
    residual_mm: float | None
    """Experimental standard deviation of a radius about the section; None when nothing is left to see it by."""
    least_share: float
    """How well the angles tell the orders apart: 1 when they are spread evenly. Noise of the readings is enlarged by about its
    inverse."""


def fit_circle(x_mm: Sequence[float], y_mm: Sequence[float], reference: Reference = "least_squares") -> Circle:
    """Fit a circle to points of a section, by the true distances.

    Minimum zone and maximum inscribed are the best near the least-squares circle. Source: ISO 12181-1, from memory.

    Parameters
    ----------
    x_mm, y_mm : sequence of float
        At least three points, in mm; all references but least squares need some in every half of the circle.
    reference : {"least_squares", "minimum_zone", "minimum_circumscribed", "maximum_inscribed"}
        Least squares; two circles with one centre that hold all points as narrowly as can be; the smallest that holds all points;
        the largest that all points are outside of.

    Returns
    -------
    Circle
        Centre, radius, and what the points leave.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``x_mm/3``), there are too few points, or they do not tell where the circle lies.

    Examples
    --------
    Four points of an oval, 0.02 mm out of round.

    >>> import gaugepoint
    >>> x, y = [43.01, 0.0, -43.01, 0.0], [0.0, 42.99, 0.0, -42.99]
    >>> zone = gaugepoint.fit_circle(x, y, "minimum_zone")
    >>> round(zone.radius_mm, 6), round(zone.form.total_mm, 6)
    (43.0, 0.02)
    >>> round(gaugepoint.fit_circle(x, y, "minimum_circumscribed").radius_mm, 6)
    43.01
    """
    return _circle(_gaugepoint.fit_circle(x_mm, y_mm, reference))


def fit_circle_algebraic(x_mm: Sequence[float], y_mm: Sequence[float], method: Algebraic = "taubin") -> Circle:
    """Fit the equation of a circle: no iteration, but biased on short arcs.

    Sources: Gander, Golub and Strebel, BIT 34 (1994); Pratt (1987), Taubin (1991), Al-Sharadqah and Chernov (2009), from memory.

    Parameters
    ----------
    x_mm, y_mm : sequence of float
        At least three points, in mm.
    method : {"unit_norm", "pratt", "taubin", "hyperaccurate"}
        What the equation is held to. The unit norm depends on the origin of the coordinates and is for comparison only.

    Returns
    -------
    Circle
        Centre, radius, and the distances that the points leave.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``x_mm/3``), there are too few points, or they do not tell a circle from a line.

    Examples
    --------
    >>> import gaugepoint
    >>> six = gaugepoint.fit_circle_algebraic([1, 2, 5, 7, 9, 3], [7, 6, 8, 7, 5, 7], "taubin")
    >>> round(six.x_mm, 6), round(six.y_mm, 6), round(six.radius_mm, 6)
    (4.613933, 2.795209, 4.879213)
    """
    return _circle(_gaugepoint.fit_circle_algebraic(x_mm, y_mm, method))


def fit_cylinder(
    x_mm: Sequence[float], y_mm: Sequence[float], z_mm: Sequence[float], reference: Reference = "least_squares"
) -> Cylinder:
    """Fit a cylinder to points of a bore or a piston, by the true distances.

    Source: ISO 12180-1, from memory.

    Parameters
    ----------
    x_mm, y_mm, z_mm : sequence of float
        At least five points, in mm, at two depths; z is the depth, and the axis leans from it by a tenth at most.
    reference : {"least_squares", "minimum_zone", "minimum_circumscribed", "maximum_inscribed"}
        As in `fit_circle`.

    Returns
    -------
    Cylinder
        Axis, radius, and what the points leave.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``x_mm/3``), there are too few points, or they do not tell where the cylinder lies.

    Examples
    --------
    A bore whose axis moves by 0.1 mm over 100 mm.

    >>> import gaugepoint
    >>> x, y = [43.0, 0.0, -43.0, 0.0], [0.0, 43.0, 0.0, -43.0]
    >>> bore = gaugepoint.fit_cylinder(x + [v + 0.1 for v in x], y + y, [0.0] * 4 + [100.0] * 4)
    >>> round(bore.slope_x, 6), round(bore.slope_y, 6)
    (0.001, 0.0)
    """
    x, y, z, slope_x, slope_y, radius_mm, form = _gaugepoint.fit_cylinder(x_mm, y_mm, z_mm, reference)
    return Cylinder(x, y, z, slope_x, slope_y, radius_mm, Form(*form))


def fit_plane(
    x_mm: Sequence[float],
    y_mm: Sequence[float],
    z_mm: Sequence[float],
    reference: Literal["least_squares", "minimum_zone"] = "least_squares",
) -> Plane:
    """Fit a plane to points of a deck, by the distances perpendicular to it.

    Source: ISO 12781-1, from memory.

    Parameters
    ----------
    x_mm, y_mm, z_mm : sequence of float
        At least three points that do not lie on a line, in mm; z is the height.
    reference : {"least_squares", "minimum_zone"}
        Least squares; two parallel planes that hold all points as narrowly as can be.

    Returns
    -------
    Plane
        Tilt, a point, and what the points leave.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``x_mm/3``), there are too few points, or they do not tell where the plane lies.

    Examples
    --------
    A deck that rises by 0.05 mm over 400 mm along the engine.

    >>> import gaugepoint
    >>> deck = gaugepoint.fit_plane([0.0, 400.0, 0.0, 400.0], [0.0, 0.0, 200.0, 200.0], [300.0, 300.05, 300.0, 300.05])
    >>> round(deck.slope * 400, 6), round(deck.direction_deg, 6)
    (0.05, 0.0)
    """
    x, y, z, slope_x, slope_y, slope, direction_deg, form = _gaugepoint.fit_plane(x_mm, y_mm, z_mm, reference)
    return Plane(x, y, z, slope_x, slope_y, slope, direction_deg, Form(*form))


def bore_to_main_line(bore_mm: Sequence[Sequence[float]], main_mm: Sequence[Sequence[float]]) -> BoreAxis:
    """Give squareness and position of a bore to the main line.

    Both lines are those of least squares of the distances. Source: geometry.

    Parameters
    ----------
    bore_mm, main_mm : sequence of sequences of float
        Points x, y, z in mm, in their order, at least two of each: centres of the bore's sections, centres of the main bearings.

    Returns
    -------
    BoreAxis
        Distance, place and angle of the two lines, and how straight they are.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``bore_mm/1/2``), there are too few points, or they do not lie along lines that are
        nearly square.

    Examples
    --------
    A bore that leans by 0.1 mm over its length of 100 mm.

    >>> import gaugepoint
    >>> axis = gaugepoint.bore_to_main_line([(50.0, 0.0, 100.0), (50.1, 0.0, 200.0)], [(0.0, 0.0, 0.0), (400.0, 0.0, 0.0)])
    >>> round(axis.out_of_square_mm, 4), round(axis.length_mm, 4), round(axis.out_of_square_mrad, 4)
    (0.1, 100.0, 1.0)
    """
    return BoreAxis(*_gaugepoint.bore_to_main_line(bore_mm, main_mm))


def section_from_radii(angles_deg: Sequence[float], radii_mm: Sequence[float], order: int) -> Section:
    """Give the harmonics of a section from radii, by least squares.

    Parameters
    ----------
    angles_deg, radii_mm : sequence of float
        Angles 0 to 360 degrees, and the radii there from any one centre near the axis, in mm.
    order : int
        Highest order.

    Returns
    -------
    Section
        Mean radius, position of the axis, harmonics.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``radii_mm/3``), or the angles do not resolve the order; it says which they do.

    Examples
    --------
    >>> import gaugepoint
    >>> section = gaugepoint.section_from_radii([0, 45, 90, 135, 180, 225, 270, 315], [43.02, 43.0, 42.98, 43.0] * 2, 2)
    >>> round(section.mean_radius_mm, 6), round(section.harmonics[0].cos_mm, 6)
    (43.0, 0.02)
    """
    return _section(_gaugepoint.section_from_radii(angles_deg, radii_mm, order))


def section_from_diameters(angles_deg: Sequence[float], diameters_mm: Sequence[float], order: int) -> Section:
    """Give the harmonics of a section from two-point diameters, by least squares; they never show an odd order.

    Two axes give the mean and one phase of order 2, four axes order 2 and one phase of order 4.

    Parameters
    ----------
    angles_deg, diameters_mm : sequence of float
        Angles of the axes, 0 to 360 degrees, and the diameters there, in mm.
    order : int
        Highest order; even.

    Returns
    -------
    Section
        Mean radius and harmonics; no position.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``diameters_mm/3``), or the angles do not resolve the order; it says which they do.

    Examples
    --------
    >>> import gaugepoint
    >>> section = gaugepoint.section_from_diameters([0, 90], [86.25, 86.0], 2)
    >>> oval = section.harmonics[0]
    >>> round(section.mean_radius_mm, 6), oval.order, round(oval.cos_mm, 6), oval.sin_mm
    (43.0625, 2, 0.0625, None)
    """
    return _section(_gaugepoint.section_from_diameters(angles_deg, diameters_mm, order))


def two_point_mm(section: Section, angle_deg: float) -> float:
    """Give the diameter that a two-point gauge reads across the axis; odd orders do not show.

    Parameters
    ----------
    section : Section
        Of a bore or a piston.
    angle_deg : float
        Where it is read, 0 to 360 degrees.

    Returns
    -------
    float
        The diameter, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or a part is needed that was not seen (``harmonics/0/sin_mm``).

    Examples
    --------
    >>> import gaugepoint
    >>> section = gaugepoint.section_from_diameters([0, 90], [86.25, 86.0], 2)
    >>> round(gaugepoint.two_point_mm(section, 90), 6)
    86.0
    """
    return _gaugepoint.two_point_mm(section.mean_radius_mm, _waves(section), angle_deg)


def three_leg_mm(section: Section, angle_deg: float, legs_deg: Sequence[float] = (0.0, 120.0, 240.0)) -> float:
    """Give the diameter that a gauge with three legs reads, which reach out equally from a centre that finds itself.

    To the first order; the second is the square of the form error over the radius.

    Parameters
    ----------
    section : Section
        Of a bore.
    angle_deg : float
        Where the first leg is turned to, 0 to 360 degrees.
    legs_deg : sequence of float
        Directions of the three legs, rising, neighbours less than half a turn apart.

    Returns
    -------
    float
        The diameter, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible, the legs do not centre the gauge, or a part is needed that was not seen.

    Examples
    --------
    Three lobes of 0.01 mm: a two-point gauge sees none of it.

    >>> import gaugepoint
    >>> radii = [43.01, 42.99] * 3
    >>> section = gaugepoint.section_from_radii([0, 60, 120, 180, 240, 300], radii, 3)
    >>> round(gaugepoint.three_leg_mm(section, 0), 6), round(gaugepoint.two_point_mm(section, 0), 6)
    (86.02, 86.0)
    """
    return _gaugepoint.three_leg_mm(section.mean_radius_mm, _waves(section), angle_deg, legs_deg)


def _circle(found: tuple[float, float, float, tuple[float, float, float, float]]) -> Circle:
    x_mm, y_mm, radius_mm, form = found
    return Circle(x_mm, y_mm, radius_mm, Form(*form))


def _section(
    found: tuple[float, tuple[float, float] | None, list[tuple[int, float | None, float | None]], float | None, float],
) -> Section:
    mean_radius_mm, position_mm, harmonics, residual_mm, least_share = found
    return Section(mean_radius_mm, position_mm, tuple(Harmonic(*h) for h in harmonics), residual_mm, least_share)


def _waves(section: Section) -> list[tuple[int, float | None, float | None]]:
    return [(h.order, h.cos_mm, h.sin_mm) for h in section.harmonics]


Rows = Sequence[tuple[float, float]]
"""A table over height: pairs of height and value, by rising height. One row holds at every height, two are a straight line (a taper),
more the monotone cubic."""

Counted = Literal["above", "below"]
"""How a table against the gauge diameter is counted: size there less the size at the gauge point, or the drop."""


@dataclass(frozen=True, slots=True)
class Window(Value):
    """A part of a surface that lacks something; its edge belongs to what is around."""

    kind: Literal["cut_out", "bare"]
    """No surface, or no coating."""
    from_deg: float
    """Angle at which it begins."""
    to_deg: float
    """Angle at which it ends, in the direction of rising angles: from 350 to 10 is 20 degrees wide."""
    from_mm: float
    """Height at which it begins."""
    to_mm: float
    """Height at which it ends."""


@dataclass(frozen=True, slots=True)
class SymmetricSurface(Value):
    """A skirt or a land with two equal sides; tables of diameters, in mm."""

    from_mm: float
    """Height at which it begins, up from the bottom edge of the skirt."""
    to_mm: float
    """Height at which it ends."""
    barrel: Rows
    """Diameter in the thrust direction against the gauge diameter."""
    ovality: Rows
    """Diameter in the thrust direction less that on the pin axis."""
    double_ovality: Rows | None = None
    """Diameter added at 45 degrees; None is a simple oval."""
    counted: Counted = "above"
    """How `barrel` is counted."""
    coating_mm: float | None = None
    """Coating, per side."""
    panel_deg: tuple[float, float] | None = None
    """Half-widths of the thrust panel and of the minor thrust panel; beside them there is no surface. None: all round."""
    windows: Sequence[Window] = ()
    """Where there is no metal or no coating."""


@dataclass(frozen=True, slots=True)
class AsymmetricSurface(Value):
    """A skirt or a land with two different sides; tables of radii against half the gauge diameter, in mm."""

    from_mm: float
    """Height at which it begins, up from the bottom edge of the skirt."""
    to_mm: float
    """Height at which it ends."""
    thrust: Rows
    """Radius on the major thrust side."""
    pin_axis: Rows
    """Radius on the pin axis, on which both sides meet."""
    minor_thrust: Rows
    """Radius on the minor thrust side."""
    thrust_fourth: Rows | None = None
    """Radius added at 45 degrees on the major thrust side; None is a simple oval."""
    minor_thrust_fourth: Rows | None = None
    """Radius added at 135 degrees on the minor thrust side; None is a simple oval."""
    counted: Counted = "above"
    """How the three radii are counted."""
    coating_mm: float | None = None
    """Coating, per side."""
    panel_deg: tuple[float, float] | None = None
    """Half-widths of the thrust panel and of the minor thrust panel; beside them there is no surface. None: all round."""
    windows: Sequence[Window] = ()
    """Where there is no metal or no coating."""


@dataclass(frozen=True, slots=True)
class Piston(Value):
    """Skirt and lands of a piston, but for its size: everything is counted from the diameter of bare metal at the gauge point."""

    gauge_height_mm: float
    """Height of the gauge point, on the skirt at angle 0."""
    surfaces: Sequence[SymmetricSurface | AsymmetricSurface]
    """The skirt first, then the lands upward."""


@dataclass(frozen=True, slots=True)
class BoreHarmonic(Value):
    """One order of the radius of a bore over depth."""

    order: int
    """Waves in one turn, 2 to 32; 1 is the position of the axis, which is no part of a clearance."""
    rows: Sequence[tuple[float, float, float]]
    """Depth, the part that is largest at 0 degrees, and the part that is largest a quarter wave further, in mm, by rising depth; one row
    holds at every depth. Kept as a tuple."""


@dataclass(frozen=True, slots=True)
class Port(Value):
    """Where a bore does not support the piston: a port, a relief; its edge belongs to the wall."""

    from_deg: float
    """Angle at which it begins."""
    to_deg: float
    """Angle at which it ends, in the direction of rising angles: from 350 to 10 is 20 degrees wide."""
    from_mm: float
    """Depth at which it begins."""
    to_mm: float
    """Depth at which it ends."""


@dataclass(frozen=True, slots=True)
class Bore(Value):
    """A bore, by depth down from the deck; without tables it is round and straight."""

    diameter_mm: float
    """Size at 20 C, over any plating."""
    deviation: Sequence[tuple[float, float]] | None = None
    """Depth and mean radius there less half the size, in mm, by rising depth; None is the same everywhere. Kept as a tuple."""
    harmonics: Sequence[BoreHarmonic] = ()
    """Orders of the radius. Kept as a tuple."""
    ports: Sequence[Port] = ()
    """Where the piston is not supported. Kept as a tuple."""
    end_mm: float | None = None
    """Depth of the lower end; None when the piston does not come out of it."""


@dataclass(frozen=True, slots=True)
class Largest(Value):
    """The largest diameter of a section."""

    angle_deg: float
    """Its angle, from 0 up to 180 degrees; of several the smallest."""
    diameter_mm: float
    """The diameter."""


@dataclass(frozen=True, slots=True)
class FormWarning(Value):
    """Something odd about the form of a piston, where it is worst."""

    kind: str
    """`larger_beside`, `smaller_beside`, `odd_ovality`, `odd_barrel`, `odd_slope` or `odd_coating`."""
    surface: int
    """Place of the surface, 0 the skirt."""
    height_mm: float
    """Height."""
    angle_deg: float | None
    """Angle of the diameter that is larger or smaller."""
    value: float
    """By how much it is larger or smaller, or what is odd, in mm; a slope in um/mm."""


@dataclass(frozen=True, slots=True)
class Estimate(Value):
    """What a fit found."""

    value: float
    """The number."""
    uncertainty: float | None
    """Its standard uncertainty; None when nothing is left to see it by and none was stated."""


@dataclass(frozen=True, slots=True)
class Station(Value):
    """What the points at one height say; diametral."""

    height_mm: float
    """The height."""
    points: int
    """Points there."""
    diameter_mm: Estimate
    """Diameter in the thrust direction."""
    ovality_mm: Estimate
    """That less the diameter on the pin axis."""
    double_ovality_mm: Estimate | None
    """Diameter added at 45 degrees; None when it was not asked for."""
    least_share: float
    """How well the angles tell them apart: 1 when they are spread evenly."""


@dataclass(frozen=True, slots=True)
class FittedSurface(Value):
    """A surface as points say it is."""

    stations: tuple[Station, ...]
    """By rising height."""
    deviation_mm: float | None
    """Standard deviation of a reading about the fit; None without degrees of freedom."""
    dof: int
    """Readings less unknowns."""
    residuals_mm: tuple[float, ...]
    """Reading less fit of each point."""


@dataclass(frozen=True, slots=True)
class TraceFit(Value):
    """How a piston lies and what is left, when it is held against a form."""

    size_mm: Estimate
    """Diameter of the piston less that of the form."""
    x_mm: Estimate | None
    """Position of the axis along 0 degrees, at `height_mm`; None where the points do not see it."""
    y_mm: Estimate | None
    """Position of the axis along 90 degrees, at `height_mm`; None where the points do not see it."""
    slope_x: Estimate | None
    """How far the axis moves along 0 degrees for each mm of height; None where the points do not see it."""
    slope_y: Estimate | None
    """How far the axis moves along 90 degrees for each mm of height; None where the points do not see it."""
    height_mm: float
    """Height of the position: in the middle of the lowest and the highest point."""
    residuals_mm: tuple[float, ...]
    """Reading less form of each point, once size and position are taken out; below zero material is missing."""
    rms_mm: float
    """Root of their mean square."""
    largest: int
    """Place of the largest of them, without sign."""
    deviation_mm: float | None
    """Standard deviation of a reading about the fit; None without degrees of freedom."""
    dof: int
    """Readings less unknowns."""
    least_share: float
    """How well the points tell the unknowns apart: 1 when they are spread evenly."""


def piston_radius_mm(piston: Piston, gauge_diameter_mm: float, height_mm: float, angle_deg: float) -> float:
    """Give the radius at a height and an angle, with the coating where there is one.

    Parameters
    ----------
    piston : Piston
        Its form.
    gauge_diameter_mm : float
        Diameter of the bare metal at the gauge point.
    height_mm : float
        Up from the bottom edge of the skirt.
    angle_deg : float
        0 on the major thrust side, 90 on the pin axis toward the front.

    Returns
    -------
    float
        The radius, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``surfaces/0/barrel/values_mm/2``), or there is no surface.

    Examples
    --------
    >>> from gaugepoint import shape
    >>> skirt = shape.SymmetricSurface(4.0, 48.0, [(4, 0.005), (12, 0), (48, 0.06)], [(4, 0.32), (48, 0.4)], [(4, 0.04)], "below")
    >>> piston = shape.Piston(12.0, [skirt])
    >>> round(shape.piston_radius_mm(piston, 86.0, 12.0, 0.0), 6)
    43.0
    """
    return _gaugepoint.piston_radius_mm(piston, gauge_diameter_mm, height_mm, angle_deg)


def piston_diameter_mm(piston: Piston, gauge_diameter_mm: float, height_mm: float, angle_deg: float) -> float:
    """Give the diameter that a micrometer reads: the radii at an angle and across, with the coating where there is one.

    Parameters
    ----------
    piston : Piston
        Its form.
    gauge_diameter_mm : float
        Diameter of the bare metal at the gauge point.
    height_mm : float
        Up from the bottom edge of the skirt.
    angle_deg : float
        0 on the major thrust side, 90 on the pin axis toward the front.

    Returns
    -------
    float
        The diameter, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``surfaces/0/barrel/values_mm/2``), or there is no surface.

    Examples
    --------
    >>> from gaugepoint import shape
    >>> skirt = shape.SymmetricSurface(4.0, 48.0, [(4, 0.005), (12, 0), (48, 0.06)], [(4, 0.32), (48, 0.4)], [(4, 0.04)], "below")
    >>> piston = shape.Piston(12.0, [skirt])
    >>> round(shape.piston_diameter_mm(piston, 86.0, 48.0, 90.0), 6)
    85.54
    """
    return _gaugepoint.piston_diameter_mm(piston, gauge_diameter_mm, height_mm, angle_deg)


def piston_ovality_mm(piston: Piston, height_mm: float) -> float:
    """Give the ovality that a micrometer reads: the diameter at 0 less that at 90 degrees.

    Parameters
    ----------
    piston : Piston
        Its form.
    height_mm : float
        Up from the bottom edge of the skirt.

    Returns
    -------
    float
        The ovality, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``surfaces/0/barrel/values_mm/2``), or there is no surface.

    Examples
    --------
    >>> from gaugepoint import shape
    >>> skirt = shape.SymmetricSurface(4.0, 48.0, [(4, 0.005), (12, 0), (48, 0.06)], [(4, 0.32), (48, 0.4)], [(4, 0.04)], "below")
    >>> piston = shape.Piston(12.0, [skirt])
    >>> round(shape.piston_ovality_mm(piston, 26.0), 6)
    0.36
    """
    return _gaugepoint.piston_ovality_mm(piston, height_mm)


def piston_largest(piston: Piston, gauge_diameter_mm: float, height_mm: float) -> Largest:
    """Give the largest diameter that a micrometer finds at a height, over all angles at which both ends have a surface.

    Parameters
    ----------
    piston : Piston
        Its form.
    gauge_diameter_mm : float
        Diameter of the bare metal at the gauge point.
    height_mm : float
        Up from the bottom edge of the skirt.

    Returns
    -------
    Largest
        Angle and diameter.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``surfaces/0/barrel/values_mm/2``), or there is no surface.

    Examples
    --------
    >>> from gaugepoint import shape
    >>> skirt = shape.SymmetricSurface(4.0, 48.0, [(4, 0.005), (12, 0), (48, 0.06)], [(4, 0.32), (48, 0.4)], [(4, 0.04)], "below")
    >>> piston = shape.Piston(12.0, [skirt])
    >>> shape.piston_largest(piston, 86.0, 12.0)
    Largest(angle_deg=0.0, diameter_mm=86.0)
    """
    return Largest(*_gaugepoint.piston_largest(piston, gauge_diameter_mm, height_mm))


def piston_warnings(piston: Piston) -> tuple[FormWarning, ...]:
    """Give what is odd about a form: of each kind and surface the worst. None of it is refused.

    Parameters
    ----------
    piston : Piston
        Its form.

    Returns
    -------
    tuple of FormWarning
        By surfaces; empty when nothing is odd.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``surfaces/0/barrel/values_mm/2``), or there is no surface.

    Examples
    --------
    >>> from gaugepoint import shape
    >>> skirt = shape.SymmetricSurface(4.0, 48.0, [(4, 0.005), (12, 0), (48, 0.06)], [(4, 0.32), (48, 0.4)], [(4, 0.04)], "below")
    >>> piston = shape.Piston(12.0, [skirt])
    >>> shape.piston_warnings(piston)
    ()
    """
    return tuple(FormWarning(*warning) for warning in _gaugepoint.piston_warnings(piston))


def fit_piston_surface(
    heights_mm: Sequence[float],
    angles_deg: Sequence[float],
    values_mm: Sequence[float],
    reading: Literal["diameters", "radii"] = "diameters",
    *,
    double_ovality: bool = False,
    uncertainty_mm: float | None = None,
) -> FittedSurface:
    """Fit a symmetric surface to points: at each height the diameter, the ovality and, when asked for, the double ovality.

    Parameters
    ----------
    heights_mm, angles_deg, values_mm : sequence of float
        Height, angle and radius or diameter of each point.
    reading : {"diameters", "radii"}
        What was read; radii may be counted from any axis near that of the piston.
    double_ovality : bool
        Whether it is fitted.
    uncertainty_mm : float, optional
        Standard uncertainty of one reading; it counts where no reading is left to see the scatter by.

    Returns
    -------
    FittedSurface
        Stations with their uncertainties, and what is left.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``values_mm/3``), or the points do not tell the unknowns apart.

    Examples
    --------
    >>> import gaugepoint
    >>> fit = gaugepoint.fit_piston_surface([8, 8], [0, 90], [86.25, 86.0], uncertainty_mm=0.001)
    >>> fit.stations[0].diameter_mm.value, round(fit.stations[0].ovality_mm.value, 9), fit.dof
    (86.25, 0.25, 0)
    """
    found, deviation, dof, residuals = _gaugepoint.fit_piston_surface(
        heights_mm, angles_deg, values_mm, reading, double_ovality, uncertainty_mm
    )
    stations = (
        Station(height, points, Estimate(*diameter), Estimate(*ovality), double and Estimate(*double), share)
        for height, points, diameter, ovality, double, share in found
    )
    return FittedSurface(tuple(stations), deviation, dof, tuple(residuals))


def fit_piston_trace(
    piston: Piston,
    gauge_diameter_mm: float,
    heights_mm: Sequence[float],
    angles_deg: Sequence[float],
    values_mm: Sequence[float],
    reading: Literal["diameters", "radii"] = "radii",
    *,
    uncertainty_mm: float | None = None,
) -> TraceFit:
    """Hold points against a form: the size, position and tilt that leave the least squares, and what is left.

    Parameters
    ----------
    piston : Piston
        Its form.
    gauge_diameter_mm : float
        Diameter of the bare metal at the gauge point.
    heights_mm, angles_deg, values_mm : sequence of float
        Height, angle and radius or diameter of each point.
    reading : {"diameters", "radii"}
        What was read; radii may be counted from any axis near that of the piston.
    uncertainty_mm : float, optional
        Standard uncertainty of one reading; it counts where no reading is left to see the scatter by.

    Returns
    -------
    TraceFit
        Size, position and tilt with their uncertainties, and what is left: the map of wear.

    Raises
    ------
    InputError
        When a number is not finite or impossible (``values_mm/3``), or the points do not tell the unknowns apart.

    Examples
    --------
    >>> import gaugepoint
    >>> from gaugepoint import shape
    >>> skirt = shape.SymmetricSurface(4.0, 48.0, [(4, 0.005), (12, 0), (48, 0.06)], [(4, 0.32), (48, 0.4)], [(4, 0.04)], "below")
    >>> piston = shape.Piston(12.0, [skirt])
    >>> fit = gaugepoint.fit_piston_trace(piston, 86.0, [12, 12], [0, 180], [85.98, 85.98], "diameters")
    >>> round(fit.size_mm.value, 6), fit.x_mm
    (-0.02, None)
    """
    size, placed, height, residuals, rms, largest, deviation, dof, share = _gaugepoint.fit_piston_trace(
        piston, gauge_diameter_mm, heights_mm, angles_deg, values_mm, reading, uncertainty_mm
    )
    x, y, slope_x, slope_y = (one and Estimate(*one) for one in placed)
    return TraceFit(
        Estimate(*size), x, y, slope_x, slope_y, height, tuple(residuals), rms, largest, deviation, dof, share
    )
