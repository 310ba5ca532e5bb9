//! Floating pins in boss and bush, and the rod that carries them: clearance cold and hot, bend and twist.
//!
//! The page of the [press fits](super::press_fit) has the formulas, their range and their sources.

use super::{Bench, Running};
use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::Error;
use crate::growth::running_strain;

formula! {
    /// Bend or twist as a slope.
    RodAngle: angle ["mrad"] = (deviation, base) => 1000.0 * deviation / base; source "definition; a small angle is its slope";
    /// What a slope makes over a length.
    Skew: skew ["mm"] = (angle, length) => angle * length / 1000.0; source "definition";
}

/// Clearance of a pin, diametral, in mm; negative is interference.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PinClearance {
    /// At 20 C.
    pub cold_mm: f64,
    /// Free growth at the temperatures given.
    pub hot_mm: f64,
}

/// Clearance of a pin in a boss or in a bush, cold and hot.
///
/// Sizes at 20 C. A pressed bush grows by the coefficient of what holds it, not by its own.
///
/// # Errors
/// When a number is not finite or impossible, or the cold clearance is not between -0.15 mm and 0.2 mm: another pin.
///
/// ```
/// use gaugepoint::clearance::pin::pin_clearance;
/// // an aluminium piston heated to 80 C lets in a pin of its own size
/// let warm = pin_clearance(22.0, 80.0, 20.5e-6, 22.0, 20.0, 11.7e-6)?;
/// assert!((warm.hot_mm - 0.02706).abs() < 1e-9);
/// # Ok::<(), gaugepoint::Error>(())
/// ```
pub fn pin_clearance(
    hole_mm: f64,
    hole_temperature_c: f64,
    hole_expansion_per_k: f64,
    pin_mm: f64,
    pin_temperature_c: f64,
    pin_expansion_per_k: f64,
) -> Result<PinClearance, Error> {
    let cold_mm = cold_clearance_mm(hole_mm, pin_mm)?;
    let eps_hole = running_strain(
        ["hole_temperature_c", "hole_expansion_per_k"],
        hole_temperature_c,
        hole_expansion_per_k,
    )?;
    let eps_pin =
        running_strain(["pin_temperature_c", "pin_expansion_per_k"], pin_temperature_c, pin_expansion_per_k)?;
    Ok(PinClearance { cold_mm, hot_mm: Running::evaluate([hole_mm, eps_hole, pin_mm, eps_pin]) })
}

/// Clearance of a pin at 20 C, in mm, diametral; negative is interference.
///
/// # Errors
/// When a number is not finite or impossible, or the clearance is not between -0.15 mm and 0.2 mm: another pin.
pub fn cold_clearance_mm(hole_mm: f64, pin_mm: f64) -> Result<f64, Error> {
    bounds::PIN.check("hole_mm", hole_mm)?;
    bounds::PIN.check("pin_mm", pin_mm)?;
    bounds::PIN_CLEARANCE.check("hole_mm", Bench::evaluate([hole_mm, pin_mm]))
}

/// Bend or twist of a rod as an angle in mrad, from its deviation over any base; the sign is kept.
///
/// # Errors
/// When a number is not finite or impossible, or the angle is beyond 10 mrad: another base.
pub fn rod_angle_mrad(deviation_mm: f64, base_mm: f64) -> Result<f64, Error> {
    bounds::ROD_DEVIATION.check("deviation_mm", deviation_mm)?;
    bounds::ROD_BASE.check("base_mm", base_mm)?;
    // a straight rod may read -0
    bounds::ROD_ANGLE.check("deviation_mm", RodAngle::evaluate([deviation_mm, base_mm]) + 0.0)
}

/// What an angle of a rod makes over a length, in mm: a piston's skew over its height, for example.
///
/// # Errors
/// When a number is not finite or impossible.
pub fn rod_skew_mm(angle_mrad: f64, length_mm: f64) -> Result<f64, Error> {
    bounds::ROD_ANGLE.check("angle_mrad", angle_mrad)?;
    bounds::ROD_BASE.check("length_mm", length_mm)?;
    Ok(Skew::evaluate([angle_mrad, length_mm]) + 0.0)
}
