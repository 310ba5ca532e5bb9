//! The common numbers as functions of plain doubles.

use crate::error::{Fault, guarded};
use gaugepoint::flat;
use pyo3::prelude::*;

/// Give the size at 20 C from the reading of a micrometer or caliper.
///
/// ``(reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20))``. Source: ISO 1:2022 and the definition
/// of strain.
///
/// Parameters
/// ----------
/// reading_mm : float
///     What the gauge reads, in mm.
/// zero_error_mm : float
///     What it reads too much at its zero, in mm.
/// gauge_temperature_c, part_temperature_c : float
///     Temperatures of gauge and part at the reading, -5 C to 60 C.
/// gauge_expansion_per_k, part_expansion_per_k : float
///     Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
///
/// Returns
/// -------
/// float
///     The size at 20 C, in mm.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// At 20 C nothing grows: the reading less the zero error.
///
/// >>> import gaugepoint
/// >>> gaugepoint.size_at_20_mm(86.5, 0.125, 20.0, 11.5e-6, 20.0, 20.5e-6)
/// 86.375
#[pyfunction]
pub(crate) fn size_at_20_mm(
    reading_mm: f64,
    zero_error_mm: f64,
    gauge_temperature_c: f64,
    gauge_expansion_per_k: f64,
    part_temperature_c: f64,
    part_expansion_per_k: f64,
) -> Result<f64, Fault> {
    guarded(|| {
        flat::size_at_20_mm(
            reading_mm,
            zero_error_mm,
            gauge_temperature_c,
            gauge_expansion_per_k,
            part_temperature_c,
            part_expansion_per_k,
        )
    })
}

/// Give the clearance at 20 C, over the diameter.
///
/// ``bore - piston``, both at 20 C.
///
/// Parameters
/// ----------
/// bore_mm, piston_mm : float
///     Diameters at 20 C, in mm.
///
/// Returns
/// -------
/// float
///     The diametral clearance, in mm; negative is interference.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> gaugepoint.bench_clearance_mm(86.25, 86.125)
/// 0.125
#[pyfunction]
pub(crate) fn bench_clearance_mm(bore_mm: f64, piston_mm: f64) -> Result<f64, Fault> {
    guarded(|| flat::bench_clearance_mm(bore_mm, piston_mm))
}

/// Give the clearance of freely growing parts, over the diameter.
///
/// ``bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20))``. It is not a verdict: skirts are elastic, and
/// engines run for years with a free clearance below zero. Source: definition of strain.
///
/// Parameters
/// ----------
/// bore_mm, piston_mm : float
///     Diameters at 20 C, in mm.
/// bore_temperature_c, piston_temperature_c : float
///     Temperatures of the running parts, -40 C to 450 C.
/// bore_expansion_per_k, piston_expansion_per_k : float
///     Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
///
/// Returns
/// -------
/// float
///     The diametral clearance, in mm; negative is interference of the free shapes.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// An aluminium piston 100 K above a cold iron bore has used up its clearance.
///
/// >>> import gaugepoint
/// >>> gaugepoint.running_clearance_mm(86.25, 20.0, 11.5e-6, 86.125, 120.0, 20.5e-6) < 0
/// True
#[pyfunction]
pub(crate) fn running_clearance_mm(
    bore_mm: f64,
    bore_temperature_c: f64,
    bore_expansion_per_k: f64,
    piston_mm: f64,
    piston_temperature_c: f64,
    piston_expansion_per_k: f64,
) -> Result<f64, Fault> {
    guarded(|| {
        flat::running_clearance_mm(
            bore_mm,
            bore_temperature_c,
            bore_expansion_per_k,
            piston_mm,
            piston_temperature_c,
            piston_expansion_per_k,
        )
    })
}
