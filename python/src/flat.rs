//! The common numbers as functions of plain doubles.

#![allow(clippy::too_many_arguments, reason = "the functions of hosts without structures")]

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

/// Give a length in mm from inches.
///
/// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
/// 811 (2008), appendix B.
///
/// Parameters
/// ----------
/// length_inch : float
///     Length in inches, -400 to 400.
///
/// Returns
/// -------
/// float
///     The length, in mm.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> gaugepoint.inch_to_mm(2.4126)
/// 61.28004
#[pyfunction]
pub(crate) fn inch_to_mm(length_inch: f64) -> Result<f64, Fault> {
    guarded(|| flat::inch_to_mm(length_inch))
}

/// Give a length in inches from mm.
///
/// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
/// 811 (2008), appendix B.
///
/// Parameters
/// ----------
/// length_mm : float
///     Length in mm, -10160 to 10160.
///
/// Returns
/// -------
/// float
///     The length, in inches.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> gaugepoint.mm_to_inch(61.28004)
/// 2.4126
#[pyfunction]
pub(crate) fn mm_to_inch(length_mm: f64) -> Result<f64, Fault> {
    guarded(|| flat::mm_to_inch(length_mm))
}

/// Give a length in mm from thousandths of an inch.
///
/// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
/// 811 (2008), appendix B.
///
/// Parameters
/// ----------
/// length_thou : float
///     Length in thou, -400000 to 400000.
///
/// Returns
/// -------
/// float
///     The length, in mm.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> gaugepoint.thou_to_mm(1.7)
/// 0.04318
#[pyfunction]
pub(crate) fn thou_to_mm(length_thou: f64) -> Result<f64, Fault> {
    guarded(|| flat::thou_to_mm(length_thou))
}

/// Give a temperature in degrees Celsius from degrees Fahrenheit.
///
/// A difference of temperatures is another thing. A number of up to 15 digits and 12 decimals is converted exactly and rounded once.
/// Source: NIST SP 811 (2008), appendix B.
///
/// Parameters
/// ----------
/// temperature_fahrenheit : float
///     Temperature in degrees Fahrenheit, -454 to 2192.
///
/// Returns
/// -------
/// float
///     The temperature, in C.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> gaugepoint.fahrenheit_to_c(80.6)
/// 27.0
#[pyfunction]
pub(crate) fn fahrenheit_to_c(temperature_fahrenheit: f64) -> Result<f64, Fault> {
    guarded(|| flat::fahrenheit_to_c(temperature_fahrenheit))
}

/// Give a temperature in degrees Fahrenheit from degrees Celsius.
///
/// A difference of temperatures is another thing. A number of up to 15 digits and 12 decimals is converted exactly and rounded once.
/// Source: NIST SP 811 (2008), appendix B.
///
/// Parameters
/// ----------
/// temperature_c : float
///     Temperature in C, -270 to 1200.
///
/// Returns
/// -------
/// float
///     The temperature, in degrees Fahrenheit.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> gaugepoint.c_to_fahrenheit(22.7)
/// 72.86
#[pyfunction]
pub(crate) fn c_to_fahrenheit(temperature_c: f64) -> Result<f64, Fault> {
    guarded(|| flat::c_to_fahrenheit(temperature_c))
}

/// Give a coefficient of expansion per kelvin from one per degree Fahrenheit.
///
/// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
/// 811 (2008), appendix B.
///
/// Parameters
/// ----------
/// expansion_per_fahrenheit : float
///     Coefficient per degree Fahrenheit, 1e-7 to 5e-5.
///
/// Returns
/// -------
/// float
///     The coefficient, per kelvin.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> gaugepoint.per_fahrenheit_to_per_k(6.4e-6)
/// 1.152e-05
#[pyfunction]
pub(crate) fn per_fahrenheit_to_per_k(expansion_per_fahrenheit: f64) -> Result<f64, Fault> {
    guarded(|| flat::per_fahrenheit_to_per_k(expansion_per_fahrenheit))
}

/// Give the end gap of a ring with bore and ring at their temperatures.
///
/// The gap alone of `ring_hot_gap`. Source: hot circumference of the bore less the hot length of the ring.
///
/// Parameters
/// ----------
/// gap_mm : float
///     End gap at 20 C, in mm.
/// bore_mm : float
///     Diameter of the bore at 20 C, in mm.
/// bore_temperature_c, ring_temperature_c : float
///     Temperatures of bore and ring, -40 C to 450 C.
/// bore_expansion_per_k, ring_expansion_per_k : float
///     Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
///
/// Returns
/// -------
/// float
///     The hot gap, in mm; below zero the ends butt.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> round(gaugepoint.ring_hot_gap_mm(0.35, 86.0, 150.0, 11e-6, 250.0, 11.5e-6), 4)
/// 0.0227
#[pyfunction]
pub(crate) fn ring_hot_gap_mm(
    gap_mm: f64,
    bore_mm: f64,
    bore_temperature_c: f64,
    bore_expansion_per_k: f64,
    ring_temperature_c: f64,
    ring_expansion_per_k: f64,
) -> Result<f64, Fault> {
    guarded(|| {
        flat::ring_hot_gap_mm(
            gap_mm,
            bore_mm,
            bore_temperature_c,
            bore_expansion_per_k,
            ring_temperature_c,
            ring_expansion_per_k,
        )
    })
}

/// Give the clearance of a pin in a boss or in a bush at 20 C, over the diameter.
///
/// ``hole - pin``, both at 20 C.
///
/// Parameters
/// ----------
/// hole_mm, pin_mm : float
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
///     When a number is not finite or impossible, or the clearance is not between -0.15 mm and 0.2 mm; it
///     names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> gaugepoint.pin_cold_clearance_mm(22.125, 22.0)
/// 0.125
#[pyfunction]
pub(crate) fn pin_cold_clearance_mm(hole_mm: f64, pin_mm: f64) -> Result<f64, Fault> {
    guarded(|| flat::pin_cold_clearance_mm(hole_mm, pin_mm))
}

/// Give the clearance of a freely growing pin in a boss or in a bush, over the diameter.
///
/// ``hole (1 + a_hole (t_hole - 20)) - pin (1 + a_pin (t_pin - 20))``. A pressed bush grows by the coefficient of what
/// holds it. Source: definition of strain.
///
/// Parameters
/// ----------
/// hole_mm, pin_mm : float
///     Diameters at 20 C, in mm.
/// hole_temperature_c, pin_temperature_c : float
///     Temperatures, -40 C to 450 C.
/// hole_expansion_per_k, pin_expansion_per_k : float
///     Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
///
/// Returns
/// -------
/// float
///     The diametral clearance, in mm; negative is interference.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the clearance at 20 C is not between -0.15 mm and 0.2 mm;
///     it names the parameter, the value and the range.
///
/// Examples
/// --------
/// An aluminium piston heated to 80 C lets in a pin of its own size.
///
/// >>> import gaugepoint
/// >>> round(gaugepoint.pin_hot_clearance_mm(22.0, 80.0, 20.5e-6, 22.0, 20.0, 11.7e-6), 4)
/// 0.0271
#[pyfunction]
pub(crate) fn pin_hot_clearance_mm(
    hole_mm: f64,
    hole_temperature_c: f64,
    hole_expansion_per_k: f64,
    pin_mm: f64,
    pin_temperature_c: f64,
    pin_expansion_per_k: f64,
) -> Result<f64, Fault> {
    guarded(|| {
        flat::pin_hot_clearance_mm(
            hole_mm,
            hole_temperature_c,
            hole_expansion_per_k,
            pin_mm,
            pin_temperature_c,
            pin_expansion_per_k,
        )
    })
}

/// Give the pressure in the joint of a pin pressed into an eye.
///
/// One interference; `press_fit` takes ranges. Source: Lame, thick elastic tubes with free ends.
///
/// Parameters
/// ----------
/// pin_mm : float
///     Diameter of the pin at 20 C, in mm.
/// pin_hole_mm : float
///     Its hole, in mm; 0 is a solid pin.
/// eye_mm : float
///     Outside of the eye, in mm.
/// interference_mm : float
///     Interference as measured, in mm.
/// smoothing_mm : float
///     What of it is lost because roughness is pressed flat, in mm.
/// pin_modulus_mpa, eye_modulus_mpa : float
///     Moduli of elasticity, in MPa.
/// pin_poisson, eye_poisson : float
///     Poisson's ratios.
///
/// Returns
/// -------
/// float
///     The pressure, in MPa; 0 when the smoothing takes all of the interference.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the diameters are out of order; it names the parameter,
///     the value and the range.
///
/// Examples
/// --------
/// One material and a solid pin, by hand: E delta (D^2 - d^2) / (2 d D^2).
///
/// >>> import gaugepoint
/// >>> round(gaugepoint.press_fit_pressure_mpa(20.0, 0.0, 40.0, 0.02, 0.0, 200e3, 0.3, 200e3, 0.3), 6)
/// 75.0
#[pyfunction]
pub(crate) fn press_fit_pressure_mpa(
    pin_mm: f64,
    pin_hole_mm: f64,
    eye_mm: f64,
    interference_mm: f64,
    smoothing_mm: f64,
    pin_modulus_mpa: f64,
    pin_poisson: f64,
    eye_modulus_mpa: f64,
    eye_poisson: f64,
) -> Result<f64, Fault> {
    guarded(|| {
        flat::press_fit_pressure_mpa(
            pin_mm,
            pin_hole_mm,
            eye_mm,
            interference_mm,
            smoothing_mm,
            pin_modulus_mpa,
            pin_poisson,
            eye_modulus_mpa,
            eye_poisson,
        )
    })
}

/// Give the axial force at which a pin pressed into an eye slips.
///
/// ``pi pin width pressure friction`` with the pressure of `press_fit_pressure_mpa`. Source: Coulomb friction over the
/// joint.
///
/// Parameters
/// ----------
/// pin_mm : float
///     Diameter of the pin at 20 C, in mm.
/// pin_hole_mm : float
///     Its hole, in mm; 0 is a solid pin.
/// eye_mm : float
///     Outside of the eye, in mm.
/// width_mm : float
///     Length of the joint along the axis, in mm.
/// interference_mm : float
///     Interference as measured, in mm.
/// smoothing_mm : float
///     What of it is lost because roughness is pressed flat, in mm.
/// friction : float
///     Coefficient of friction.
/// pin_modulus_mpa, eye_modulus_mpa : float
///     Moduli of elasticity, in MPa.
/// pin_poisson, eye_poisson : float
///     Poisson's ratios.
///
/// Returns
/// -------
/// float
///     The force, in N.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the diameters are out of order; it names the parameter,
///     the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> round(gaugepoint.press_fit_force_n(20.0, 0.0, 40.0, 25.0, 0.02, 0.0, 0.1, 200e3, 0.3, 200e3, 0.3))
/// 11781
#[pyfunction]
pub(crate) fn press_fit_force_n(
    pin_mm: f64,
    pin_hole_mm: f64,
    eye_mm: f64,
    width_mm: f64,
    interference_mm: f64,
    smoothing_mm: f64,
    friction: f64,
    pin_modulus_mpa: f64,
    pin_poisson: f64,
    eye_modulus_mpa: f64,
    eye_poisson: f64,
) -> Result<f64, Fault> {
    guarded(|| {
        flat::press_fit_force_n(
            pin_mm,
            pin_hole_mm,
            eye_mm,
            width_mm,
            interference_mm,
            smoothing_mm,
            friction,
            pin_modulus_mpa,
            pin_poisson,
            eye_modulus_mpa,
            eye_poisson,
        )
    })
}

/// Give the torque at which a pin pressed into an eye slips.
///
/// ``force pin / 2`` with the force of `press_fit_force_n`. Source: Coulomb friction at the radius of the joint.
///
/// Parameters
/// ----------
/// pin_mm : float
///     Diameter of the pin at 20 C, in mm.
/// pin_hole_mm : float
///     Its hole, in mm; 0 is a solid pin.
/// eye_mm : float
///     Outside of the eye, in mm.
/// width_mm : float
///     Length of the joint along the axis, in mm.
/// interference_mm : float
///     Interference as measured, in mm.
/// smoothing_mm : float
///     What of it is lost because roughness is pressed flat, in mm.
/// friction : float
///     Coefficient of friction.
/// pin_modulus_mpa, eye_modulus_mpa : float
///     Moduli of elasticity, in MPa.
/// pin_poisson, eye_poisson : float
///     Poisson's ratios.
///
/// Returns
/// -------
/// float
///     The torque, in N m.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the diameters are out of order; it names the parameter,
///     the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> round(gaugepoint.press_fit_torque_nm(20.0, 0.0, 40.0, 25.0, 0.02, 0.0, 0.1, 200e3, 0.3, 200e3, 0.3), 1)
/// 117.8
#[pyfunction]
pub(crate) fn press_fit_torque_nm(
    pin_mm: f64,
    pin_hole_mm: f64,
    eye_mm: f64,
    width_mm: f64,
    interference_mm: f64,
    smoothing_mm: f64,
    friction: f64,
    pin_modulus_mpa: f64,
    pin_poisson: f64,
    eye_modulus_mpa: f64,
    eye_poisson: f64,
) -> Result<f64, Fault> {
    guarded(|| {
        flat::press_fit_torque_nm(
            pin_mm,
            pin_hole_mm,
            eye_mm,
            width_mm,
            interference_mm,
            smoothing_mm,
            friction,
            pin_modulus_mpa,
            pin_poisson,
            eye_modulus_mpa,
            eye_poisson,
        )
    })
}

/// Give the temperature to which the outer part is heated so that the pin, at 20 C, slips in.
///
/// ``20 + (interference + clearance) / (a diameter)``. Clean steel colours from 249 C: too much heat. `assembly_temperature`
/// also says what to take care of. Source: free growth.
///
/// Parameters
/// ----------
/// diameter_mm : float
///     Diameter of the joint, in mm.
/// interference_mm : float
///     Interference at 20 C, in mm.
/// clearance_mm : float
///     Clearance that the heated part is to have, in mm.
/// expansion_per_k : float
///     Mean coefficient of linear expansion of the heated part, 1e-7 to 1e-4 per kelvin.
///
/// Returns
/// -------
/// float
///     The temperature, in C.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> round(gaugepoint.assembly_temperature_c(22.0, 0.03, 0.02, 12e-6))
/// 209
#[pyfunction]
pub(crate) fn assembly_temperature_c(
    diameter_mm: f64,
    interference_mm: f64,
    clearance_mm: f64,
    expansion_per_k: f64,
) -> Result<f64, Fault> {
    guarded(|| flat::assembly_temperature_c(diameter_mm, interference_mm, clearance_mm, expansion_per_k))
}

/// Give how far below the deck the crown stops at top dead centre.
///
/// ``block - (stroke / 2 + rod + compression height)``.
///
/// Parameters
/// ----------
/// block_height_mm : float
///     Centre of the crankshaft to the deck, in mm.
/// stroke_mm : float
///     Stroke, in mm.
/// rod_mm : float
///     Rod, centre to centre, in mm.
/// compression_height_mm : float
///     Pin axis to crown, in mm.
///
/// Returns
/// -------
/// float
///     The deck clearance, in mm; negative when the crown stands above the deck.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> gaugepoint.piston_deck_clearance_mm(217.5, 86.0, 143.0, 31.0)
/// 0.5
#[pyfunction]
pub(crate) fn piston_deck_clearance_mm(
    block_height_mm: f64,
    stroke_mm: f64,
    rod_mm: f64,
    compression_height_mm: f64,
) -> Result<f64, Fault> {
    guarded(|| flat::piston_deck_clearance_mm(block_height_mm, stroke_mm, rod_mm, compression_height_mm))
}

/// Give the swept volume of one cylinder.
///
/// ``pi bore^2 stroke / 4``.
///
/// Parameters
/// ----------
/// bore_mm, stroke_mm : float
///     Bore and stroke, in mm.
///
/// Returns
/// -------
/// float
///     The volume, in cm3.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> round(gaugepoint.swept_volume_cm3(86.0, 86.0), 1)
/// 499.6
#[pyfunction]
pub(crate) fn swept_volume_cm3(bore_mm: f64, stroke_mm: f64) -> Result<f64, Fault> {
    guarded(|| flat::swept_volume_cm3(bore_mm, stroke_mm))
}

/// Give the compression ratio.
///
/// The ratio alone of `compression_ratio`: swept and clearance volume over the clearance volume.
///
/// Parameters
/// ----------
/// bore_mm, stroke_mm : float
///     Bore and stroke, in mm.
/// head_cm3 : float
///     Chamber in the head, in cm3; 0 is a flat head.
/// gasket_bore_mm, gasket_mm : float
///     Opening of the gasket and its compressed thickness, in mm.
/// deck_clearance_mm : float
///     From the deck down to the crown, in mm; negative for a protrusion.
/// crown_cm3 : float
///     Dish, bowl and pockets of the crown, in cm3; negative for a dome.
/// crevice_cm3 : float
///     Crevice at the top land, in cm3; 0 leaves it out, as is usual.
///
/// Returns
/// -------
/// float
///     The ratio.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or nothing is left above the piston; it names the parameter,
///     the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> round(gaugepoint.static_compression_ratio(86.0, 86.0, 49.697791, 86.0, 1.0, 0.0, 0.0, 0.0), 2)
/// 10.0
#[pyfunction]
pub(crate) fn static_compression_ratio(
    bore_mm: f64,
    stroke_mm: f64,
    head_cm3: f64,
    gasket_bore_mm: f64,
    gasket_mm: f64,
    deck_clearance_mm: f64,
    crown_cm3: f64,
    crevice_cm3: f64,
) -> Result<f64, Fault> {
    guarded(|| {
        flat::static_compression_ratio(
            bore_mm,
            stroke_mm,
            head_cm3,
            gasket_bore_mm,
            gasket_mm,
            deck_clearance_mm,
            crown_cm3,
            crevice_cm3,
        )
    })
}

/// Give the travel of the piston from top dead centre at a crank angle.
///
/// The travel alone of `piston_travel`. Source: slider-crank with an offset pin.
///
/// Parameters
/// ----------
/// crank_radius_mm : float
///     Half the stroke of an engine without offset, in mm.
/// rod_mm : float
///     Rod, centre to centre, in mm.
/// pin_offset_mm : float
///     Offset of the pin, in mm, positive toward the major thrust side.
/// crank_angle_deg : float
///     Crank angle, -720 deg to 720 deg; 0 with the throw in line with the cylinder.
///
/// Returns
/// -------
/// float
///     The travel down, in mm.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the rod is too short for the crank to turn; it names the
///     parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> round(gaugepoint.piston_travel_mm(43.0, 143.0, 0.0, 60.0), 3)
/// 26.434
#[pyfunction]
pub(crate) fn piston_travel_mm(
    crank_radius_mm: f64,
    rod_mm: f64,
    pin_offset_mm: f64,
    crank_angle_deg: f64,
) -> Result<f64, Fault> {
    guarded(|| flat::piston_travel_mm(crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg))
}

/// Give the size at 20 C to which the bore for a piston is finished.
///
/// ``piston + clearance``.
///
/// Parameters
/// ----------
/// piston_mm : float
///     Diameter of the piston as measured, at 20 C, in mm.
/// clearance_mm : float
///     Clearance wanted on the bench, in mm.
///
/// Returns
/// -------
/// float
///     The size, in mm.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> gaugepoint.finish_size_mm(86.25, 0.125)
/// 86.375
#[pyfunction]
pub(crate) fn finish_size_mm(piston_mm: f64, clearance_mm: f64) -> Result<f64, Fault> {
    guarded(|| flat::finish_size_mm(piston_mm, clearance_mm))
}

/// Give the size at 20 C to which the bore for a piston is bored before it is honed.
///
/// ``piston + clearance - honing``.
///
/// Parameters
/// ----------
/// piston_mm : float
///     Diameter of the piston as measured, at 20 C, in mm.
/// clearance_mm : float
///     Clearance wanted on the bench, in mm.
/// honing_mm : float
///     What is left for the hone, on the diameter, in mm.
///
/// Returns
/// -------
/// float
///     The size, in mm.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> gaugepoint.boring_size_mm(86.25, 0.125, 0.0625)
/// 86.3125
#[pyfunction]
pub(crate) fn boring_size_mm(piston_mm: f64, clearance_mm: f64, honing_mm: f64) -> Result<f64, Fault> {
    guarded(|| flat::boring_size_mm(piston_mm, clearance_mm, honing_mm))
}

/// Give the size of a bore at 20 C from the deviation that a bore gauge set on a ring shows.
///
/// The ring, the gauge when it was set, the gauge when it is used and the block each have their temperature. Source: ISO
/// 1:2022 and the definition of strain.
///
/// Parameters
/// ----------
/// deviation_mm : float
///     What the dial shows above its setting, in mm; positive when the bore is larger.
/// setting_mm : float
///     Size of the ring at 20 C, in mm.
/// ring_temperature_c, set_temperature_c, used_temperature_c, block_temperature_c : float
///     Temperatures, -5 C to 60 C.
/// ring_expansion_per_k, set_expansion_per_k, used_expansion_per_k, block_expansion_per_k : float
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
/// At 20 C nothing grows.
///
/// >>> import gaugepoint
/// >>> at_20 = (20.0, 11.5e-6) * 4
/// >>> gaugepoint.bore_size_at_20_mm(0.125, 86.25, *at_20)
/// 86.375
#[pyfunction]
pub(crate) fn bore_size_at_20_mm(
    deviation_mm: f64,
    setting_mm: f64,
    ring_temperature_c: f64,
    ring_expansion_per_k: f64,
    set_temperature_c: f64,
    set_expansion_per_k: f64,
    used_temperature_c: f64,
    used_expansion_per_k: f64,
    block_temperature_c: f64,
    block_expansion_per_k: f64,
) -> Result<f64, Fault> {
    guarded(|| {
        flat::bore_size_at_20_mm(
            deviation_mm,
            setting_mm,
            ring_temperature_c,
            ring_expansion_per_k,
            set_temperature_c,
            set_expansion_per_k,
            used_temperature_c,
            used_expansion_per_k,
            block_temperature_c,
            block_expansion_per_k,
        )
    })
}

/// Give the size of a freely growing part at a temperature.
///
/// ``size (1 + a (t - 20))``. Source: definition of strain.
///
/// Parameters
/// ----------
/// size_mm : float
///     Size at 20 C, in mm.
/// temperature_c : float
///     Temperature, -40 C to 450 C.
/// expansion_per_k : float
///     Mean coefficient of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
///
/// Returns
/// -------
/// float
///     The size, in mm.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> import gaugepoint
/// >>> round(gaugepoint.size_at_temperature_mm(86.0, 120.0, 20e-6), 6)
/// 86.172
#[pyfunction]
pub(crate) fn size_at_temperature_mm(
    size_mm: f64,
    temperature_c: f64,
    expansion_per_k: f64,
) -> Result<f64, Fault> {
    guarded(|| flat::size_at_temperature_mm(size_mm, temperature_c, expansion_per_k))
}

/// Give the probability that the true value lies within two limits.
///
/// For a value with a normal error. A value without uncertainty gives 1 or 0. Source: JCGM 106:2012, 7.2.2.
///
/// Parameters
/// ----------
/// value_mm : float
///     The value, in mm.
/// standard_uncertainty_mm : float
///     Its standard uncertainty, in mm.
/// lower_mm, upper_mm : float
///     The limits, in mm.
///
/// Returns
/// -------
/// float
///     The probability.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the limits are out of order; it names the parameter, the
///     value and the range.
///
/// Examples
/// --------
/// Two standard uncertainties to each limit.
///
/// >>> import gaugepoint
/// >>> round(gaugepoint.probability_of_conformity(86.01, 0.005, 86.0, 86.02), 4)
/// 0.9545
#[pyfunction]
pub(crate) fn probability_of_conformity(
    value_mm: f64,
    standard_uncertainty_mm: f64,
    lower_mm: f64,
    upper_mm: f64,
) -> Result<f64, Fault> {
    guarded(|| flat::probability_of_conformity(value_mm, standard_uncertainty_mm, lower_mm, upper_mm))
}
