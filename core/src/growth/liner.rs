//! A liner pressed into its block: two tubes that hold each other, each growing by its own law.
//!
//! The page of the [pins](crate::clearance::press_fit) has the formulas, their range and their sources.

use super::lame::{Elastic, Joint};
use super::running_strain;
use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::Error;
use crate::report::LINER_WORK;

formula! {
    /// Interference that holds, at 20 C.
    Effective: interference ["mm"] = (measured, smoothing) => measured - smoothing; source "roughness pressed flat does not hold";
    /// Interference at temperature.
    HotInterference: interference_hot ["mm"] = (interference, d, eps_liner, eps_block) => interference + d * (eps_liner - eps_block);
        source "free growth of both parts at the joint";
    /// Bore of a liner that was measured free: `shrinkage` by the pressure there is.
    BoreInBlock: bore_hot ["mm"] = (bore, eps_liner, shrinkage) => bore * (1.0 + eps_liner) - shrinkage;
        source "free growth less what the pressure takes";
    /// Temperature of both parts at which the interference is used up.
    ContactLost: t ["C"] = (interference, d, a_block, a_liner) => 20.0 + interference / (d * (a_block - a_liner));
        source "free growth of both parts at the joint";
}

/// A liner and its block. All sizes are diameters in mm at 20 C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LinerParts {
    /// Bore of the liner.
    pub bore_mm: f64,
    /// Was the bore measured in the block? It then already holds what the cold pressure takes. False: measured before the liner was
    /// pressed in.
    pub measured_in_block: bool,
    /// Joint: outside of the liner, bore of the block.
    pub seat_mm: f64,
    /// Outside of the wall that holds the liner; of a block that is no tube, of the tube that stands for it.
    pub block_mm: f64,
    /// Measured interference, 0 to 0.3.
    pub interference_mm: f64,
    /// Interference that is lost because roughness is pressed flat.
    pub smoothing_mm: f64,
    /// Modulus of elasticity of the liner, in MPa.
    pub liner_modulus_mpa: f64,
    /// Poisson's ratio of the liner.
    pub liner_poisson: f64,
    /// Mean coefficient of expansion of the liner from 20 C, per kelvin.
    pub liner_expansion_per_k: f64,
    /// Temperature of the liner, -40 C to 450 C.
    pub liner_temperature_c: f64,
    /// Modulus of elasticity of the block, in MPa.
    pub block_modulus_mpa: f64,
    /// Poisson's ratio of the block.
    pub block_poisson: f64,
    /// Mean coefficient of expansion of the block from 20 C, per kelvin.
    pub block_expansion_per_k: f64,
    /// Temperature of the block, -40 C to 450 C.
    pub block_temperature_c: f64,
}

/// What becomes of a liner in its block.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LinerFit {
    /// Pressure in the joint at 20 C, in MPa.
    pub pressure_20_mpa: f64,
    /// Pressure in the joint at the temperatures given, in MPa; 0 when contact is lost.
    pub pressure_mpa: f64,
    /// Interference at the temperatures given, in mm; negative is the gap of a liner that lost contact.
    pub interference_mm: f64,
    /// Bore of the liner in the block at 20 C, in mm.
    pub bore_20_mm: f64,
    /// Bore of the liner in the block at the temperatures given, in mm.
    pub bore_mm: f64,
    /// Temperature of both parts, soaked, at which contact is lost; none when it is not lost between -40 C and 450 C.
    pub contact_lost_at_c: Option<f64>,
    /// What to take care of.
    pub caution: &'static str,
}

/// A liner in its block: pressure over temperature, loss of contact, and the bore that is left.
///
/// # Errors
/// When a number is not finite or impossible, or the diameters are out of order; the error names the field.
///
/// ```
/// use gaugepoint::growth::liner::{LinerParts, liner_in_block};
/// let parts = LinerParts {
///     bore_mm: 86.0, measured_in_block: true, seat_mm: 91.0, block_mm: 104.0, interference_mm: 0.04, smoothing_mm: 0.005,
///     liner_modulus_mpa: 110e3, liner_poisson: 0.26, liner_expansion_per_k: 11.4e-6, liner_temperature_c: 110.0,
///     block_modulus_mpa: 72e3, block_poisson: 0.33, block_expansion_per_k: 20.5e-6, block_temperature_c: 110.0,
/// };
/// let fit = liner_in_block(&parts)?;
/// // an iron liner in aluminium: 0.035 / (91 9.1e-6) = 42.3 K above 20 C the block has grown away from it
/// assert!(fit.contact_lost_at_c.is_some_and(|t| (t - 62.3).abs() < 0.05));
/// assert_eq!(fit.pressure_mpa, 0.0);
/// # Ok::<(), gaugepoint::Error>(())
/// ```
pub fn liner_in_block(parts: &LinerParts) -> Result<LinerFit, Error> {
    let joint = joint(parts)?;
    bounds::SLEEVE_INTERFERENCE.check("interference_mm", parts.interference_mm)?;
    bounds::SMOOTHING.check("smoothing_mm", parts.smoothing_mm)?;
    let eps_liner = running_strain(
        ["liner_temperature_c", "liner_expansion_per_k"],
        parts.liner_temperature_c,
        parts.liner_expansion_per_k,
    )?;
    let eps_block = running_strain(
        ["block_temperature_c", "block_expansion_per_k"],
        parts.block_temperature_c,
        parts.block_expansion_per_k,
    )?;
    let cold = Effective::evaluate([parts.interference_mm, parts.smoothing_mm]);
    let hot = HotInterference::evaluate([cold, parts.seat_mm, eps_liner, eps_block]);
    let (pressure_20_mpa, pressure_mpa) = (joint.pressure(cold), joint.pressure(hot));
    let shrinkage = |pressure: f64| {
        // a bore measured in the block already holds the cold pressure
        let change = if parts.measured_in_block { pressure - pressure_20_mpa } else { pressure };
        joint.hole_shrinkage(change)
    };
    Ok(LinerFit {
        pressure_20_mpa,
        pressure_mpa,
        interference_mm: hot,
        bore_20_mm: BoreInBlock::evaluate([parts.bore_mm, 0.0, shrinkage(pressure_20_mpa)]),
        bore_mm: BoreInBlock::evaluate([parts.bore_mm, eps_liner, shrinkage(pressure_mpa)]),
        contact_lost_at_c: contact_lost(cold, parts),
        caution: LINER_WORK,
    })
}

fn joint(parts: &LinerParts) -> Result<Joint, Error> {
    bounds::BORE.check("bore_mm", parts.bore_mm)?;
    bounds::BORE.check("seat_mm", parts.seat_mm)?;
    bounds::BLOCK_OUTSIDE.check("block_mm", parts.block_mm)?;
    bounds::check_above("seat_mm", parts.seat_mm, parts.bore_mm, "the seat lies around the bore")?;
    bounds::check_above("block_mm", parts.block_mm, parts.seat_mm, "the block lies around the seat")?;
    Ok(Joint {
        inside: parts.bore_mm,
        joint: parts.seat_mm,
        outside: parts.block_mm,
        inner: Elastic::new(
            ["liner_modulus_mpa", "liner_poisson"],
            parts.liner_modulus_mpa,
            parts.liner_poisson,
        )?,
        outer: Elastic::new(
            ["block_modulus_mpa", "block_poisson"],
            parts.block_modulus_mpa,
            parts.block_poisson,
        )?,
    })
}

/// Of parts that grow alike, or do not touch cold, there is no such temperature.
fn contact_lost(cold: f64, parts: &LinerParts) -> Option<f64> {
    let (a_block, a_liner) = (parts.block_expansion_per_k, parts.liner_expansion_per_k);
    #[expect(clippy::float_cmp, reason = "a difference of exactly zero must not divide")]
    if cold <= 0.0 || a_block == a_liner {
        return None;
    }
    let t = ContactLost::evaluate([cold, parts.seat_mm, a_block, a_liner]);
    (bounds::RUNNING_TEMPERATURE.judge(t) != bounds::Verdict::Impossible).then_some(t)
}
