//! The common numbers as functions of plain doubles, for hosts that cannot carry units: the unit is the suffix of every
//! name. C, Python, sheets and SQL call these; the same inputs give the same bits everywhere.

use crate::bounds;
use crate::clearance;
use crate::error::Error;
use crate::quantity::{Expansion, Temperature, from_mm, in_mm};
use crate::size::{Condition, SizeAt20, micrometer_size_at_20};

fn condition(temperature_c: f64, expansion_per_k: f64) -> Condition {
    Condition {
        temperature: Temperature::from_celsius(temperature_c),
        expansion: Expansion::from_per_kelvin(expansion_per_k),
    }
}

/// A size at 20 C in mm, with `field` named when it is impossible.
fn size(field: &str, mm: f64) -> Result<SizeAt20, Error> {
    bounds::BORE.check(field, mm)?;
    SizeAt20::declared(from_mm(mm))
}

/// Size at 20 C from the reading of a micrometer or caliper, in mm.
///
/// `(reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20))`. Temperatures from -5 C to 60 C, mean
/// coefficients from 20 C between 1e-7 and 1e-4 per kelvin. Source: ISO 1:2022 and the definition of strain.
///
/// # Errors
/// When a number is not finite or impossible; the error names the parameter, the value and the limits.
pub fn size_at_20_mm(
    reading_mm: f64,
    zero_error_mm: f64,
    gauge_temperature_c: f64,
    gauge_expansion_per_k: f64,
    part_temperature_c: f64,
    part_expansion_per_k: f64,
) -> Result<f64, Error> {
    let gauge = condition(gauge_temperature_c, gauge_expansion_per_k);
    let part = condition(part_temperature_c, part_expansion_per_k);
    let size = micrometer_size_at_20(from_mm(reading_mm), from_mm(zero_error_mm), gauge, part)?;
    Ok(in_mm(size.diameter()))
}

/// Clearance at 20 C in mm, over the diameter: `bore - piston`; negative is interference.
///
/// # Errors
/// When a number is not finite or impossible; the error names the parameter, the value and the limits.
pub fn bench_clearance_mm(bore_mm: f64, piston_mm: f64) -> Result<f64, Error> {
    let (bore, piston) = (size("bore_mm", bore_mm)?, size("piston_mm", piston_mm)?);
    Ok(in_mm(clearance::bench(bore, piston).diametral()))
}

/// Clearance in mm of freely growing parts, over the diameter, from sizes at 20 C.
///
/// `bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20))`. Temperatures from -40 C to 450 C. It is not a
/// verdict: skirts are elastic, and engines run for years with a free clearance below zero. Source: definition of strain.
///
/// # Errors
/// When a number is not finite or impossible; the error names the parameter, the value and the limits.
pub fn running_clearance_mm(
    bore_mm: f64,
    bore_temperature_c: f64,
    bore_expansion_per_k: f64,
    piston_mm: f64,
    piston_temperature_c: f64,
    piston_expansion_per_k: f64,
) -> Result<f64, Error> {
    let (bore, piston) = (size("bore_mm", bore_mm)?, size("piston_mm", piston_mm)?);
    let bore_state = condition(bore_temperature_c, bore_expansion_per_k);
    let piston_state = condition(piston_temperature_c, piston_expansion_per_k);
    clearance::running(bore, bore_state, piston, piston_state).map(|c| in_mm(c.diametral()))
}
