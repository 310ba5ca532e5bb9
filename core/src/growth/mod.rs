//! 4 GROWTH: how a part changes with temperature, and two parts that hold each other. Otherwise growth is free: no pressure, no stress.

mod law;
mod material;

mod strain;

pub(crate) mod lame;

pub mod library;

pub mod liner;

pub mod field;

pub mod duty;

mod piecewise;

pub use piecewise::Piecewise;

#[cfg(test)]
mod tests;

pub(crate) use law::MeanGrowth;
pub use law::{Growth, InstantaneousCoefficient, Law, MeanCoefficient};
pub use material::Material;
pub(crate) use material::{Grown, Materials};
pub(crate) use strain::CubicStrain;
pub use strain::StrainLaw;

use crate::bounds;
use crate::error::Error;

/// Strain from 20 C of a running part, from a mean coefficient; `fields` names the two numbers in an error.
#[inline]
pub(crate) fn running_strain(
    fields: [&str; 2],
    temperature_c: f64,
    expansion_per_k: f64,
) -> Result<f64, Error> {
    use crate::calc::Formula;
    let t = bounds::RUNNING_TEMPERATURE.check(fields[0], temperature_c)?;
    let a = bounds::EXPANSION.check(fields[1], expansion_per_k)?;
    Ok(MeanGrowth::evaluate([a, a, t, crate::size::REFERENCE_TEMPERATURE_C]))
}
