//! Shapes from full traces.

use crate::error::{Fault, guarded};
use gaugepoint::shape::circle::{self, Algebraic, Circle, Form, Reference};
use gaugepoint::shape::section::{self, Harmonic, Section};
use gaugepoint::shape::{cylinder, plane};
use pyo3::prelude::*;

/// Total, outside, inside, root mean square.
type Left = (f64, f64, f64, f64);
/// Centre, radius, form.
type Round = (f64, f64, f64, Left);
/// Point of the axis, slopes, radius, form.
type Bore = (f64, f64, f64, f64, f64, f64, Left);
/// Point of the plane, slopes, slope, direction, form.
type Deck = (f64, f64, f64, f64, f64, f64, Option<f64>, Left);
/// Offset, station, out of square in mrad, length, out of square in mm, straightness of the bore and of the main line.
type Square = (f64, f64, f64, f64, f64, f64, f64);
/// Order, cosine, sine.
type Wave = (usize, Option<f64>, Option<f64>);
/// Mean radius, position, harmonics, residual, least share.
type Shape = (f64, Option<(f64, f64)>, Vec<Wave>, Option<f64>, f64);

/// Fit a circle to points of a section.
///
/// Parameters
/// ----------
/// x_mm, y_mm : sequence of float
///     The points, in mm.
/// reference : str
///     What it is fitted by.
///
/// Returns
/// -------
/// tuple
///     Centre x and y, radius, form.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the points do not tell where the circle lies; it names the place.
#[pyfunction]
pub(crate) fn fit_circle(x_mm: Vec<f64>, y_mm: Vec<f64>, reference: &str) -> Result<Round, Fault> {
    guarded(|| circle::fit(&x_mm, &y_mm, referred(reference)?)).map(round)
}

/// Fit the equation of a circle to points of a section.
///
/// Parameters
/// ----------
/// x_mm, y_mm : sequence of float
///     The points, in mm.
/// method : str
///     What the equation is held to.
///
/// Returns
/// -------
/// tuple
///     Centre x and y, radius, form.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the points do not tell where the circle lies; it names the place.
#[pyfunction]
pub(crate) fn fit_circle_algebraic(x_mm: Vec<f64>, y_mm: Vec<f64>, method: &str) -> Result<Round, Fault> {
    guarded(|| {
        let method = Algebraic::from_word(method).map_err(|e| e.named("method"))?;
        circle::fit_algebraic(&x_mm, &y_mm, method)
    })
    .map(round)
}

/// Fit a cylinder to points of a bore or a piston.
///
/// Parameters
/// ----------
/// x_mm, y_mm, z_mm : sequence of float
///     The points, in mm; z along the axis.
/// reference : str
///     What it is fitted by.
///
/// Returns
/// -------
/// tuple
///     Point of the axis x, y, z, slopes along x and y, radius, form.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the points do not tell where the cylinder lies; it names the place.
#[pyfunction]
pub(crate) fn fit_cylinder(
    x_mm: Vec<f64>,
    y_mm: Vec<f64>,
    z_mm: Vec<f64>,
    reference: &str,
) -> Result<Bore, Fault> {
    let c = guarded(|| cylinder::fit(&x_mm, &y_mm, &z_mm, referred(reference)?))?;
    Ok((c.x_mm, c.y_mm, c.z_mm, c.slope_x, c.slope_y, c.radius_mm, left(c.form)))
}

/// Fit a plane to points of a deck.
///
/// Parameters
/// ----------
/// x_mm, y_mm, z_mm : sequence of float
///     The points, in mm; z is the height.
/// reference : str
///     What it is fitted by.
///
/// Returns
/// -------
/// tuple
///     Point of the plane x, y, z, slopes along x and y, slope, direction, form.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the points do not tell where the plane lies; it names the place.
#[pyfunction]
pub(crate) fn fit_plane(
    x_mm: Vec<f64>,
    y_mm: Vec<f64>,
    z_mm: Vec<f64>,
    reference: &str,
) -> Result<Deck, Fault> {
    let p = guarded(|| plane::fit(&x_mm, &y_mm, &z_mm, referred(reference)?))?;
    Ok((p.x_mm, p.y_mm, p.z_mm, p.slope_x, p.slope_y, p.slope, p.direction_deg, left(p.form)))
}

/// Give squareness and position of a bore to the main line.
///
/// Parameters
/// ----------
/// bore_mm, main_mm : sequence of sequences of float
///     Points x, y, z of both, in mm, in their order.
///
/// Returns
/// -------
/// tuple
///     Offset, station, out of square in mrad, length, out of square in mm, straightness of the bore and of the main line.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the points do not lie along lines; it names the place.
#[pyfunction]
pub(crate) fn bore_to_main_line(bore_mm: Vec<[f64; 3]>, main_mm: Vec<[f64; 3]>) -> Result<Square, Fault> {
    let b = guarded(|| plane::bore_to_main_line(&bore_mm, &main_mm))?;
    Ok((
        b.offset_mm,
        b.station_mm,
        b.out_of_square_mrad,
        b.length_mm,
        b.out_of_square_mm,
        b.bore_straightness_mm,
        b.main_straightness_mm,
    ))
}

/// Give the harmonics of a section from radii.
///
/// Parameters
/// ----------
/// angles_deg, radii_mm : sequence of float
///     Angles 0 to 360 degrees, and the radii there, in mm.
/// order : int
///     Highest order.
///
/// Returns
/// -------
/// tuple
///     Mean radius, position, harmonics, residual, least share.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the angles do not resolve the order; it names the place.
#[pyfunction]
pub(crate) fn section_from_radii(
    angles_deg: Vec<f64>,
    radii_mm: Vec<f64>,
    order: usize,
) -> Result<Shape, Fault> {
    guarded(|| section::from_radii(&angles_deg, &radii_mm, order)).map(shape)
}

/// Give the harmonics of a section from diameters.
///
/// Parameters
/// ----------
/// angles_deg, diameters_mm : sequence of float
///     Angles of the axes, and the diameters there, in mm.
/// order : int
///     Highest order; even.
///
/// Returns
/// -------
/// tuple
///     Mean radius, None, harmonics, residual, least share.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the angles do not resolve the order; it names the place.
#[pyfunction]
pub(crate) fn section_from_diameters(
    angles_deg: Vec<f64>,
    diameters_mm: Vec<f64>,
    order: usize,
) -> Result<Shape, Fault> {
    guarded(|| section::from_diameters(&angles_deg, &diameters_mm, order)).map(shape)
}

/// Give the diameter that a two-point gauge reads.
///
/// Parameters
/// ----------
/// mean_radius_mm : float
///     Mean radius of the section.
/// harmonics : sequence of tuple
///     Order, cosine part and sine part in mm; None for a part that was not seen.
/// angle_deg : float
///     Where it is read.
///
/// Returns
/// -------
/// float
///     The diameter, in mm.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or a part is needed that was not seen; it names the place.
#[pyfunction]
pub(crate) fn two_point_mm(mean_radius_mm: f64, harmonics: Vec<Wave>, angle_deg: f64) -> Result<f64, Fault> {
    guarded(|| section::two_point_mm(mean_radius_mm, &waves(harmonics), angle_deg))
}

/// Give the diameter that a gauge with three legs reads.
///
/// Parameters
/// ----------
/// mean_radius_mm : float
///     Mean radius of the section.
/// harmonics : sequence of tuple
///     Order, cosine part and sine part in mm; None for a part that was not seen.
/// angle_deg : float
///     Where it is read.
/// legs_deg : sequence of float
///     Directions of the three legs.
///
/// Returns
/// -------
/// float
///     The diameter, in mm.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, the legs do not centre, or a part is needed that was not seen.
#[pyfunction]
pub(crate) fn three_leg_mm(
    mean_radius_mm: f64,
    harmonics: Vec<Wave>,
    angle_deg: f64,
    legs_deg: [f64; 3],
) -> Result<f64, Fault> {
    guarded(|| section::three_leg_mm(mean_radius_mm, &waves(harmonics), angle_deg, legs_deg))
}

/// Give how much of the amplitude of an order a probe shows over a V-block in which the part is turned.
///
/// The probe is ``probe_deg`` from the direction opposite the V; there it is ``abs(1 + cos(n (90 + a)) / sin(a))`` with ``a`` half the
/// included angle. To the first order. Source: ISO 4292, from memory.
///
/// Parameters
/// ----------
/// order : int
///     Undulations in one turn.
/// included_deg : float
///     Angle between the faces, 10 to 170 degrees.
/// probe_deg : float
///     Direction of the probe, 0 opposite the V.
///
/// Returns
/// -------
/// float
///     The factor.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter.
///
/// Examples
/// --------
/// Three lobes show three times as large over a V of 60 degrees, and an oval not at all.
///
/// >>> import gaugepoint
/// >>> round(gaugepoint.v_block_factor(3, 60.0), 6), round(gaugepoint.v_block_factor(2, 60.0), 6)
/// (3.0, 0.0)
#[pyfunction]
#[pyo3(signature = (order, included_deg, probe_deg = 0.0))]
pub(crate) fn v_block_factor(order: usize, included_deg: f64, probe_deg: f64) -> Result<f64, Fault> {
    guarded(|| section::v_block_factor(order, included_deg, probe_deg))
}

fn referred(word: &str) -> Result<Reference, gaugepoint::Error> {
    Reference::from_word(word).map_err(|e| e.named("reference"))
}

fn left(f: Form) -> Left {
    (f.total_mm, f.outside_mm, f.inside_mm, f.rms_mm)
}

fn round(c: Circle) -> Round {
    (c.x_mm, c.y_mm, c.radius_mm, left(c.form))
}

fn shape(s: Section) -> Shape {
    let harmonics = s.harmonics.iter().map(|h| (h.order, h.cos_mm, h.sin_mm)).collect();
    (s.mean_radius_mm, s.position_mm, harmonics, s.residual_mm, s.least_share)
}

fn waves(harmonics: Vec<Wave>) -> Vec<Harmonic> {
    harmonics.into_iter().map(|(order, cos_mm, sin_mm)| Harmonic { order, cos_mm, sin_mm }).collect()
}
