//! The common numbers.

use crate::error::GaugepointError;
use crate::guard::{cleared, status};
use gaugepoint::flat;

/// Size at 20 C from the reading of a micrometer or caliper, in mm.
///
/// (reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20)), for temperatures from -5 C to 60 C
/// and mean coefficients from 20 C.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_size_at_20_mm(
    reading_mm: f64,
    zero_error_mm: f64,
    gauge_temperature_c: f64,
    gauge_expansion_per_k: f64,
    part_temperature_c: f64,
    part_expansion_per_k: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(flat::size_at_20_mm(
                reading_mm,
                zero_error_mm,
                gauge_temperature_c,
                gauge_expansion_per_k,
                part_temperature_c,
                part_expansion_per_k,
            )?)
        })
    }
}

/// Clearance at 20 C in mm, over the diameter: bore - piston; negative is interference.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_bench_clearance_mm(
    bore_mm: f64,
    piston_mm: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || Ok(flat::bench_clearance_mm(bore_mm, piston_mm)?))
    }
}

/// Clearance in mm of freely growing parts, over the diameter, from sizes at 20 C.
///
/// bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20)), for temperatures from -40 C to 450 C. It is
/// not a verdict: skirts are elastic, and engines run for years with a free clearance below zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_running_clearance_mm(
    bore_mm: f64,
    bore_temperature_c: f64,
    bore_expansion_per_k: f64,
    piston_mm: f64,
    piston_temperature_c: f64,
    piston_expansion_per_k: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(flat::running_clearance_mm(
                bore_mm,
                bore_temperature_c,
                bore_expansion_per_k,
                piston_mm,
                piston_temperature_c,
                piston_expansion_per_k,
            )?)
        })
    }
}
