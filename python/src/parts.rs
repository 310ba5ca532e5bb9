//! Rings, pins, liners and the deck.

use crate::error::{Fault, guarded};
use gaugepoint::clearance::crank;
use gaugepoint::clearance::least::Harmonics;
use gaugepoint::clearance::pin;
use gaugepoint::clearance::press_fit::{self as pressing, PressFit};
use gaugepoint::clearance::ring::{self, GAP_FACTORS};
use gaugepoint::growth::liner::{self, LinerFit};
use gaugepoint::shape::deck::{self as heights, GasketBand};
use pyo3::prelude::*;

/// Pressure (least, most), hoop stress (eye inside, outside, pin outside, inside), force and torque (least, most), caution.
type Pressed = ((f64, f64), (f64, f64, f64, f64), (f64, f64), (f64, f64), &'static str);
/// Pressure at 20 C and hot, interference, bore at 20 C and hot, temperature at which contact is lost, caution.
type Lined = (f64, f64, f64, f64, f64, Option<f64>, &'static str);

/// `gaugepoint.PressFitParts`, by the names of its numbers.
#[derive(FromPyObject)]
pub(crate) struct PressFitParts {
    pin_mm: f64,
    pin_hole_mm: f64,
    eye_mm: f64,
    width_mm: f64,
    interference_least_mm: f64,
    interference_most_mm: f64,
    smoothing_mm: f64,
    friction_least: f64,
    friction_most: f64,
    pin_modulus_mpa: f64,
    pin_poisson: f64,
    eye_modulus_mpa: f64,
    eye_poisson: f64,
}

impl From<PressFitParts> for pressing::PressFitParts {
    fn from(p: PressFitParts) -> Self {
        Self {
            pin_mm: p.pin_mm,
            pin_hole_mm: p.pin_hole_mm,
            eye_mm: p.eye_mm,
            width_mm: p.width_mm,
            interference_least_mm: p.interference_least_mm,
            interference_most_mm: p.interference_most_mm,
            smoothing_mm: p.smoothing_mm,
            friction_least: p.friction_least,
            friction_most: p.friction_most,
            pin_modulus_mpa: p.pin_modulus_mpa,
            pin_poisson: p.pin_poisson,
            eye_modulus_mpa: p.eye_modulus_mpa,
            eye_poisson: p.eye_poisson,
        }
    }
}

/// `gaugepoint.LinerParts`, by the names of its numbers.
#[derive(FromPyObject)]
pub(crate) struct LinerParts {
    bore_mm: f64,
    measured_in_block: bool,
    seat_mm: f64,
    block_mm: f64,
    interference_mm: f64,
    smoothing_mm: f64,
    liner_modulus_mpa: f64,
    liner_poisson: f64,
    liner_expansion_per_k: f64,
    liner_temperature_c: f64,
    block_modulus_mpa: f64,
    block_poisson: f64,
    block_expansion_per_k: f64,
    block_temperature_c: f64,
}

impl From<LinerParts> for liner::LinerParts {
    fn from(p: LinerParts) -> Self {
        Self {
            bore_mm: p.bore_mm,
            measured_in_block: p.measured_in_block,
            seat_mm: p.seat_mm,
            block_mm: p.block_mm,
            interference_mm: p.interference_mm,
            smoothing_mm: p.smoothing_mm,
            liner_modulus_mpa: p.liner_modulus_mpa,
            liner_poisson: p.liner_poisson,
            liner_expansion_per_k: p.liner_expansion_per_k,
            liner_temperature_c: p.liner_temperature_c,
            block_modulus_mpa: p.block_modulus_mpa,
            block_poisson: p.block_poisson,
            block_expansion_per_k: p.block_expansion_per_k,
            block_temperature_c: p.block_temperature_c,
        }
    }
}

/// `gaugepoint.Chamber`, by the names of its numbers.
#[derive(FromPyObject)]
pub(crate) struct Chamber {
    bore_mm: f64,
    stroke_mm: f64,
    head_cm3: f64,
    gasket_bore_mm: f64,
    gasket_mm: f64,
    deck_clearance_mm: f64,
    crown_cm3: f64,
    crevice_cm3: f64,
}

impl From<Chamber> for heights::Chamber {
    fn from(p: Chamber) -> Self {
        Self {
            bore_mm: p.bore_mm,
            stroke_mm: p.stroke_mm,
            head_cm3: p.head_cm3,
            gasket_bore_mm: p.gasket_bore_mm,
            gasket_mm: p.gasket_mm,
            deck_clearance_mm: p.deck_clearance_mm,
            crown_cm3: p.crown_cm3,
            crevice_cm3: p.crevice_cm3,
        }
    }
}

fn pressed(f: PressFit) -> Pressed {
    let hoop = (f.eye_hoop_inside_mpa, f.eye_hoop_outside_mpa, f.pin_hoop_outside_mpa, f.pin_hoop_inside_mpa);
    let (force, torque) = ((f.force_least_n, f.force_most_n), (f.torque_least_nm, f.torque_most_nm));
    ((f.pressure_least_mpa, f.pressure_most_mpa), hoop, force, torque, f.caution)
}

fn lined(f: LinerFit) -> Lined {
    let contact = f.contact_lost_at_c;
    (f.pressure_20_mpa, f.pressure_mpa, f.interference_mm, f.bore_20_mm, f.bore_mm, contact, f.caution)
}

/// Give, roughly, the amplitude of a harmonic of the bore that a ring follows by its own tension.
///
/// ``F r^3 / (E I (n^2 - 1)^2)``: a thin ring of one rectangle, even tension, no gas, no oil, no other harmonic. An order of
/// magnitude. Source: thin ring in plane bending.
///
/// Parameters
/// ----------
/// order : int
///     Harmonic: 2 is an oval, 3 and 4 are lobes; 2 to 50.
/// tangential_force_n : float
///     Force that closes the ring, in N.
/// bore_mm : float
///     Bore, in mm.
/// ring_thickness_mm, ring_width_mm : float
///     Radial thickness and axial width, in mm.
/// modulus_mpa : float
///     Modulus of elasticity, in MPa.
///
/// Returns
/// -------
/// float
///     The largest radial amplitude, in mm.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the ring is thicker than half its bore; it
///     names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> round(gaugepoint.ring_conformable_amplitude_mm(2, 20.0, 86.0, 3.3, 1.5, 160e3), 2)
/// 0.22
#[pyfunction]
pub(crate) fn ring_conformable_amplitude_mm(
    order: i64,
    tangential_force_n: f64,
    bore_mm: f64,
    ring_thickness_mm: f64,
    ring_width_mm: f64,
    modulus_mpa: f64,
) -> Result<f64, Fault> {
    let order = i32::try_from(order).unwrap_or(if order < 0 { i32::MIN } else { i32::MAX });
    guarded(|| {
        ring::conformable_amplitude_mm(
            order,
            tangential_force_n,
            bore_mm,
            ring_thickness_mm,
            ring_width_mm,
            modulus_mpa,
        )
    })
}

/// Give the end gap of a hot ring.
///
/// Parameters
/// ----------
/// gap_mm, bore_mm : float
///     Gap and bore at 20 C, in mm.
/// bore_temperature_c : float
///     Temperature of the bore, -40 C to 450 C.
/// bore_expansion_per_k : float
///     Mean coefficient of linear expansion of the bore from 20 C, per kelvin.
/// ring_temperature_c : float
///     Temperature of the ring, -40 C to 450 C.
/// ring_expansion_per_k : float
///     Mean coefficient of linear expansion of the ring from 20 C, per kelvin.
///
/// Returns
/// -------
/// tuple
///     Gap, gap to the first order, do the ends butt.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
#[pyfunction]
pub(crate) fn ring_hot_gap(
    gap_mm: f64,
    bore_mm: f64,
    bore_temperature_c: f64,
    bore_expansion_per_k: f64,
    ring_temperature_c: f64,
    ring_expansion_per_k: f64,
) -> Result<(f64, f64, bool), Fault> {
    let g = guarded(|| {
        ring::hot_gap(
            gap_mm,
            bore_mm,
            bore_temperature_c,
            bore_expansion_per_k,
            ring_temperature_c,
            ring_expansion_per_k,
        )
    })?;
    Ok((g.gap_mm, g.first_order_mm, g.butts))
}

/// Give the clearance of a pin, cold and hot.
///
/// Parameters
/// ----------
/// hole_mm, pin_mm : float
///     Diameters at 20 C, in mm.
/// hole_temperature_c : float
///     Temperature of the hole, -40 C to 450 C.
/// hole_expansion_per_k : float
///     Mean coefficient of linear expansion of the hole from 20 C, per kelvin.
/// pin_temperature_c : float
///     Temperature of the pin, -40 C to 450 C.
/// pin_expansion_per_k : float
///     Mean coefficient of linear expansion of the pin from 20 C, per kelvin.
///
/// Returns
/// -------
/// tuple
///     At 20 C, at the temperatures given.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the cold clearance is that of another pin; it
///     names the parameter, the value and the range.
#[pyfunction]
pub(crate) fn pin_clearance(
    hole_mm: f64,
    hole_temperature_c: f64,
    hole_expansion_per_k: f64,
    pin_mm: f64,
    pin_temperature_c: f64,
    pin_expansion_per_k: f64,
) -> Result<(f64, f64), Fault> {
    let c = guarded(|| {
        pin::pin_clearance(
            hole_mm,
            hole_temperature_c,
            hole_expansion_per_k,
            pin_mm,
            pin_temperature_c,
            pin_expansion_per_k,
        )
    })?;
    Ok((c.cold_mm, c.hot_mm))
}

/// Give what a press fit holds.
///
/// Parameters
/// ----------
/// parts : PressFitParts
///     The pin and the eye.
///
/// Returns
/// -------
/// tuple
///     Pressures, hoop stresses, forces, torques, caution.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or out of order; it
///     names the parameter, the value and the range.
#[pyfunction]
pub(crate) fn press_fit(parts: PressFitParts) -> Result<Pressed, Fault> {
    Ok(pressed(guarded(|| pressing::press_fit(&parts.into()))?))
}

/// Give the heat that lets a part be slipped on.
///
/// Parameters
/// ----------
/// diameter_mm, interference_mm, clearance_mm : float
///     Joint, interference and clearance, in mm.
/// expansion_per_k : float
///     Mean coefficient of linear expansion of the heated part from 20 C, per kelvin.
///
/// Returns
/// -------
/// tuple
///     Rise, temperature, place of the temper colour, caution.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
#[pyfunction]
pub(crate) fn assembly_temperature(
    diameter_mm: f64,
    interference_mm: f64,
    clearance_mm: f64,
    expansion_per_k: f64,
) -> Result<(f64, f64, u8, &'static str), Fault> {
    let a = guarded(|| {
        pressing::assembly_temperature(diameter_mm, interference_mm, clearance_mm, expansion_per_k)
    })?;
    Ok((a.rise_k, a.temperature_c, a.temper_colour as u8, a.caution))
}

/// Give what becomes of a liner in its block.
///
/// Parameters
/// ----------
/// parts : LinerParts
///     The liner and its block.
///
/// Returns
/// -------
/// tuple
///     Pressures, interference, bores, temperature at which contact is lost, caution.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or out of order; it
///     names the parameter, the value and the range.
#[pyfunction]
pub(crate) fn liner_in_block(parts: LinerParts) -> Result<Lined, Fault> {
    Ok(lined(guarded(|| liner::liner_in_block(&parts.into()))?))
}

/// Give where the piston stops.
///
/// Parameters
/// ----------
/// block_height_mm, stroke_mm, rod_mm, compression_height_mm, gasket_mm : float
///     Heights, in mm.
///
/// Returns
/// -------
/// tuple
///     Deck clearance, protrusion, squish.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
#[pyfunction]
pub(crate) fn deck(
    block_height_mm: f64,
    stroke_mm: f64,
    rod_mm: f64,
    compression_height_mm: f64,
    gasket_mm: f64,
) -> Result<(f64, f64, f64), Fault> {
    let d = guarded(|| heights::deck(block_height_mm, stroke_mm, rod_mm, compression_height_mm, gasket_mm))?;
    Ok((d.deck_clearance_mm, d.protrusion_mm, d.squish_mm))
}

/// Give the compression ratio.
///
/// Parameters
/// ----------
/// chamber : Chamber
///     What encloses the gas.
///
/// Returns
/// -------
/// tuple
///     Swept, gasket, deck and clearance volume, ratio.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or nothing is left above the piston; it
///     names the parameter, the value and the range.
#[pyfunction]
pub(crate) fn compression_ratio(chamber: Chamber) -> Result<(f64, f64, f64, f64, f64), Fault> {
    let c = guarded(|| heights::compression_ratio(&chamber.into()))?;
    Ok((c.swept_cm3, c.gasket_cm3, c.deck_cm3, c.clearance_cm3, c.ratio))
}

/// Give the gasket for the largest of several protrusions.
///
/// Parameters
/// ----------
/// projections_mm : sequence of float
///     Protrusions, in mm.
/// bands : sequence of tuples of float
///     Lines of the table: from, to, thickness, in mm.
/// step_mm : float
///     Last digit of the table, in mm.
///
/// Returns
/// -------
/// tuple
///     Place of the line, largest protrusion, thickness, squish.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the table is not one; it
///     names the parameter, the value and the range.
#[pyfunction]
pub(crate) fn gasket_band(
    projections_mm: Vec<f64>,
    bands: Vec<(f64, f64, f64)>,
    step_mm: f64,
) -> Result<(usize, f64, f64, f64), Fault> {
    let band = |(from_mm, to_mm, thickness_mm)| GasketBand { from_mm, to_mm, thickness_mm };
    let bands: Vec<GasketBand> = bands.into_iter().map(band).collect();
    let c = guarded(|| heights::gasket_band(&projections_mm, &bands, step_mm))?;
    Ok((c.band, c.largest_mm, c.thickness_mm, c.squish_mm))
}

/// Give the published factors for the end gap.
///
/// Returns
/// -------
/// list of tuple
///     Duty, per mille of the bore, source.
#[pyfunction]
pub(crate) fn ring_gap_factors() -> Result<Vec<(&'static str, f64, &'static str)>, Fault> {
    Ok(GAP_FACTORS.iter().map(|f| (f.duty, f.per_mille, f.source)).collect())
}

/// Give the stroke and the dead centres of a crank.
///
/// Parameters
/// ----------
/// crank_radius_mm, rod_mm : float
///     Half of the stroke without offset, rod from centre to centre, in mm.
/// pin_offset_mm : float
///     Pin beside the piston's middle, positive toward the major thrust side, in mm.
///
/// Returns
/// -------
/// tuple
///     Stroke, crank angle of top and of bottom dead centre.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the crank cannot turn; it
///     names the parameter, the value and the range.
#[pyfunction]
pub(crate) fn dead_centres(
    crank_radius_mm: f64,
    rod_mm: f64,
    pin_offset_mm: f64,
) -> Result<(f64, f64, f64), Fault> {
    let d = guarded(|| crank::dead_centres(crank_radius_mm, rod_mm, pin_offset_mm))?;
    Ok((d.stroke_mm, d.top_deg, d.bottom_deg))
}

/// Give how far the piston is down at a crank angle.
///
/// Parameters
/// ----------
/// crank_radius_mm, rod_mm : float
///     Half of the stroke without offset, rod from centre to centre, in mm.
/// pin_offset_mm : float
///     Pin beside the piston's middle, positive toward the major thrust side, in mm.
/// crank_angle_deg : float
///     Crank angle, -720 to 720 degrees.
///
/// Returns
/// -------
/// tuple
///     Travel from top dead centre, and more of it for each degree.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the crank cannot turn; it
///     names the parameter, the value and the range.
#[pyfunction]
pub(crate) fn piston_travel(
    crank_radius_mm: f64,
    rod_mm: f64,
    pin_offset_mm: f64,
    crank_angle_deg: f64,
) -> Result<(f64, f64), Fault> {
    let t = guarded(|| crank::piston_travel(crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg))?;
    Ok((t.travel_mm, t.per_degree_mm))
}

/// Give the crank angles at which the piston is down by a travel.
///
/// Parameters
/// ----------
/// crank_radius_mm, rod_mm : float
///     Half of the stroke without offset, rod from centre to centre, in mm.
/// pin_offset_mm : float
///     Pin beside the piston's middle, positive toward the major thrust side, in mm.
/// travel_mm : float
///     From top dead centre down, in mm.
///
/// Returns
/// -------
/// tuple
///     Crank angle on the way up and on the way down.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the crank cannot turn; it
///     names the parameter, the value and the range.
#[pyfunction]
pub(crate) fn crank_angles_at(
    crank_radius_mm: f64,
    rod_mm: f64,
    pin_offset_mm: f64,
    travel_mm: f64,
) -> Result<(f64, f64), Fault> {
    let a = guarded(|| crank::crank_angles_at(crank_radius_mm, rod_mm, pin_offset_mm, travel_mm))?;
    Ok((a.before_deg, a.after_deg))
}

/// Give the least value of a section over every angle.
///
/// Parameters
/// ----------
/// mean_mm : float
///     Mean of the section, in mm.
/// cos_mm, sin_mm : sequence of float
///     Coefficients in mm, the first of order 1; up to 32.
///
/// Returns
/// -------
/// tuple
///     The least value, its angle, how far the true one can lie below.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
#[pyfunction]
pub(crate) fn least_clearance_of_section(
    mean_mm: f64,
    cos_mm: Vec<f64>,
    sin_mm: Vec<f64>,
) -> Result<(f64, f64, f64), Fault> {
    let l = guarded(|| Ok(Harmonics::new(mean_mm, &cos_mm, &sin_mm)?.least()))?;
    Ok((l.least_mm, l.angle_deg, l.within_mm))
}
