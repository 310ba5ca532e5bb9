//! The common numbers as functions of plain doubles, of arrays of them and of quantities.
//!
//! Each stands in the block below with its text; what they have in common is written once, in [`crate::arrays`].

use crate::arrays::{self, Options, float};
use crate::error::guarded;
use gaugepoint::flat;
use pyo3::prelude::*;
use pyo3::types::PyFloat;

macro_rules! functions {
    ($($(#[doc = $line:literal])+ fn $name:ident($($parameter:ident),+);)+) => {
        $($(#[doc = $line])+
        #[pyfunction(signature = ($($parameter),+, *, out=None, partial=false, threads=1))]
        #[allow(clippy::too_many_arguments, reason = "the functions of hosts without structures")]
        pub(crate) fn $name<'py>(
            py: Python<'py>,
            $($parameter: &Bound<'py, PyAny>,)+
            out: Option<&Bound<'py, PyAny>>,
            partial: bool,
            threads: i64,
        ) -> PyResult<Bound<'py, PyAny>> {
            // a call with floats takes no other way than the number itself
            if let (None, false, 1, $(Some($parameter)),+) = (out, partial, threads, $(float($parameter)),+) {
                return Ok(PyFloat::new(py, guarded(|| flat::$name($($parameter),+))?).into_any());
            }
            arrays::call(py, &flat::row::$name, &[$($parameter),+], Options { out, partial, threads })
        })+

        /// Adds every function to the module.
        pub(crate) fn add(module: &Bound<'_, PyModule>) -> PyResult<()> {
            $(module.add_function(wrap_pyfunction!($name, module)?)?;)+
            Ok(())
        }
    };
}

functions! {
    /// Give the size at 20 C from the reading of a micrometer or caliper.
    ///
    /// ``(reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20))``. Source: ISO 1:2022 and the definition
    /// of strain.
    ///
    /// Parameters
    /// ----------
    /// reading_mm : float or array_like
    ///     What the gauge reads, in mm.
    /// zero_error_mm : float or array_like
    ///     What it reads too much at its zero, in mm.
    /// gauge_temperature_c, part_temperature_c : float or array_like
    ///     Temperatures of gauge and part at the reading, -5 C to 60 C.
    /// gauge_expansion_per_k, part_expansion_per_k : float or array_like
    ///     Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn size_at_20_mm(
        reading_mm,
        zero_error_mm,
        gauge_temperature_c,
        gauge_expansion_per_k,
        part_temperature_c,
        part_expansion_per_k
    );

    /// Give the clearance at 20 C, over the diameter.
    ///
    /// ``bore - piston``, both at 20 C.
    ///
    /// Parameters
    /// ----------
    /// bore_mm, piston_mm : float or array_like
    ///     Diameters at 20 C, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn bench_clearance_mm(bore_mm, piston_mm);

    /// Give the clearance of freely growing parts, over the diameter.
    ///
    /// ``bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20))``. It is not a verdict: skirts are elastic, and
    /// engines run for years with a free clearance below zero. Source: definition of strain.
    ///
    /// Parameters
    /// ----------
    /// bore_mm, piston_mm : float or array_like
    ///     Diameters at 20 C, in mm.
    /// bore_temperature_c, piston_temperature_c : float or array_like
    ///     Temperatures of the running parts, -40 C to 450 C.
    /// bore_expansion_per_k, piston_expansion_per_k : float or array_like
    ///     Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn running_clearance_mm(
        bore_mm,
        bore_temperature_c,
        bore_expansion_per_k,
        piston_mm,
        piston_temperature_c,
        piston_expansion_per_k
    );

    /// Give the end gap in a bore of a ring whose gap was measured in a gauge.
    ///
    /// ``gap + pi (bore - gauge)``. Source: a closed ring keeps its length.
    ///
    /// Parameters
    /// ----------
    /// gap_mm : float or array_like
    ///     End gap in the gauge, or in another bore, in mm.
    /// gauge_mm, bore_mm : float or array_like
    ///     Diameters, in mm, not more than 2 % apart.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
    ///     The end gap, in mm; negative is a ring whose ends overlap.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a number is not finite or impossible, or the diameters are not those of one ring; it
    ///     names the parameter, the value and the range.
    ///
    /// Examples
    /// --------
    /// >>> import gaugepoint
    /// >>> round(gaugepoint.ring_gap_in_bore_mm(0.3, 86.0, 86.1), 3)
    /// 0.614
    fn ring_gap_in_bore_mm(gap_mm, gauge_mm, bore_mm);

    /// Give the least cold end gap that leaves a gap with bore and ring at their temperatures.
    ///
    /// The exact hot gap, solved for the cold one. Below zero the bore opens by more than the ring grows.
    ///
    /// Parameters
    /// ----------
    /// least_hot_gap_mm : float or array_like
    ///     What is to be left, in mm; 0 lets the ends touch.
    /// bore_mm : float or array_like
    ///     Bore at 20 C, in mm.
    /// bore_temperature_c : float or array_like
    ///     Temperature of the bore, -40 C to 450 C.
    /// bore_expansion_per_k : float or array_like
    ///     Mean coefficient of linear expansion of the bore from 20 C, per kelvin.
    /// ring_temperature_c : float or array_like
    ///     Temperature of the ring, -40 C to 450 C.
    /// ring_expansion_per_k : float or array_like
    ///     Mean coefficient of linear expansion of the ring from 20 C, per kelvin.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
    ///     The least cold gap, in mm.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a number is not finite or impossible; it names the parameter, the value and the range.
    ///
    /// Examples
    /// --------
    /// A sudden load on a cold bore of 100 mm, all of iron.
    ///
    /// >>> import gaugepoint
    /// >>> round(gaugepoint.ring_least_cold_gap_mm(0.05, 100.0, 90.0, 11.4e-6, 230.0, 11.4e-6), 2)
    /// 0.55
    fn ring_least_cold_gap_mm(
        least_hot_gap_mm,
        bore_mm,
        bore_temperature_c,
        bore_expansion_per_k,
        ring_temperature_c,
        ring_expansion_per_k
    );

    /// Give the side clearance of a ring in its groove.
    ///
    /// ``groove - ring``; of keystone parts both at one diameter.
    ///
    /// Parameters
    /// ----------
    /// groove_width_mm, ring_width_mm : float or array_like
    ///     Axial widths, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
    ///     The clearance, in mm; negative is a ring that does not enter.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a number is not finite or impossible, or the clearance is beyond 0.5 mm; it
    ///     names the parameter, the value and the range.
    ///
    /// Examples
    /// --------
    /// >>> import gaugepoint
    /// >>> gaugepoint.ring_side_clearance_mm(1.5625, 1.5)
    /// 0.0625
    fn ring_side_clearance_mm(groove_width_mm, ring_width_mm);

    /// Give the room behind a ring that stands at the bore, on one side.
    ///
    /// ``(bore - root) / 2 - thickness``. With the diameter of the land in place of the bore it is how far the ring, pushed in, lies
    /// below the land.
    ///
    /// Parameters
    /// ----------
    /// bore_mm, groove_root_mm : float or array_like
    ///     Diameters, in mm.
    /// ring_thickness_mm : float or array_like
    ///     Radial thickness, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
    ///     The room, in mm; negative is a ring that cannot go in.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a number is not finite or impossible, or the root does not lie below the bore; it
    ///     names the parameter, the value and the range.
    ///
    /// Examples
    /// --------
    /// >>> import gaugepoint
    /// >>> gaugepoint.ring_back_clearance_mm(86.0, 78.5, 3.25)
    /// 0.5
    fn ring_back_clearance_mm(bore_mm, groove_root_mm, ring_thickness_mm);

    /// Give the wear of a ring groove.
    ///
    /// ``groove - new groove``.
    ///
    /// Parameters
    /// ----------
    /// groove_width_mm, new_groove_width_mm : float or array_like
    ///     Axial width where it is widest, and when it was new, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
    ///     The wear, in mm.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a number is not finite or impossible, or the wear is beyond 0.5 mm; it
    ///     names the parameter, the value and the range.
    ///
    /// Examples
    /// --------
    /// >>> import gaugepoint
    /// >>> gaugepoint.ring_groove_wear_mm(1.5625, 1.5)
    /// 0.0625
    fn ring_groove_wear_mm(groove_width_mm, new_groove_width_mm);

    /// Give the width of a keystone groove at a diameter, from the size over two pins.
    ///
    /// ``(at - over_pins + pin) tan(angle / 2) + pin / cos(angle / 2)``, for flanks that slope alike. Source: plane geometry.
    ///
    /// Parameters
    /// ----------
    /// over_pins_mm : float or array_like
    ///     Size over two pins that lie in the groove opposite each other, in mm.
    /// pin_mm : float or array_like
    ///     Diameter of the pins, in mm.
    /// included_angle_deg : float or array_like
    ///     Angle between the flanks, 1 to 40 degrees.
    /// at_diameter_mm : float or array_like
    ///     Diameter at which the width is stated, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
    ///     The axial width, in mm.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a number is not finite or impossible, or the flanks have met at that diameter; it
    ///     names the parameter, the value and the range.
    ///
    /// Examples
    /// --------
    /// >>> import gaugepoint
    /// >>> round(gaugepoint.keystone_groove_width_mm(104.2, 2.5, 15.0, 102.0), 3)
    /// 2.561
    fn keystone_groove_width_mm(over_pins_mm, pin_mm, included_angle_deg, at_diameter_mm);

    /// Give the end gap by a factor of the bore.
    ///
    /// ``bore per_mille / 1000``; published factors: `ring_gap_factors`. Never per inch. Common practice, no source.
    ///
    /// Parameters
    /// ----------
    /// bore_mm : float or array_like
    ///     Bore, in mm.
    /// per_mille : float or array_like
    ///     Gap in per mille of the bore, 0.5 to 14.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
    ///     The end gap, in mm.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a number is not finite or impossible; it names the parameter, the value and the range.
    ///
    /// Examples
    /// --------
    /// >>> import gaugepoint
    /// >>> gaugepoint.ring_gap_by_factor_mm(100.0, 4.5)
    /// 0.45
    fn ring_gap_by_factor_mm(bore_mm, per_mille);

    /// Give the bend or twist of a rod as an angle.
    ///
    /// ``1000 deviation / base``: figures over bases of 25 mm and 100 mm cannot be compared otherwise.
    ///
    /// Parameters
    /// ----------
    /// deviation_mm : float or array_like
    ///     Deviation on the fixture, in mm; the sign is kept.
    /// base_mm : float or array_like
    ///     Length it is stated over, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
    ///     The angle, in mrad.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a number is not finite or impossible, or the angle is beyond 10 mrad; it
    ///     names the parameter, the value and the range.
    ///
    /// Examples
    /// --------
    /// >>> import gaugepoint
    /// >>> round(gaugepoint.rod_angle_mrad(0.038, 25.0), 2)
    /// 1.52
    fn rod_angle_mrad(deviation_mm, base_mm);

    /// Give what an angle of a rod makes over a length.
    ///
    /// ``angle length / 1000``: the skew of a piston over its height, for example.
    ///
    /// Parameters
    /// ----------
    /// angle_mrad : float or array_like
    ///     Bend or twist, in mrad.
    /// length_mm : float or array_like
    ///     Length, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
    ///     The skew, in mm.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a number is not finite or impossible; it names the parameter, the value and the range.
    ///
    /// Examples
    /// --------
    /// >>> import gaugepoint
    /// >>> gaugepoint.rod_skew_mm(0.5, 60.0)
    /// 0.03
    fn rod_skew_mm(angle_mrad, length_mm);

    /// Give the volume between top land and bore.
    ///
    /// ``pi / 4 (bore^2 - land^2) height``.
    ///
    /// Parameters
    /// ----------
    /// bore_mm, land_mm : float or array_like
    ///     Diameters, in mm.
    /// land_height_mm : float or array_like
    ///     From the crown to the first ring, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
    ///     The volume, in cm3.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a number is not finite or impossible, or the land is larger than the bore; it
    ///     names the parameter, the value and the range.
    ///
    /// Examples
    /// --------
    /// >>> import gaugepoint
    /// >>> round(gaugepoint.top_land_crevice_cm3(86.0, 85.4, 7.0), 3)
    /// 0.565
    fn top_land_crevice_cm3(bore_mm, land_mm, land_height_mm);

    /// Give how deep below the deck a place of the piston is.
    ///
    /// ``deck clearance + (crown - place) + travel``. Source: definition.
    ///
    /// Parameters
    /// ----------
    /// deck_clearance_mm : float or array_like
    ///     From the deck down to the crown at top dead centre, in mm.
    /// crown_height_mm, height_mm : float or array_like
    ///     Heights of the crown and of the place, up from the bottom edge of the skirt, in mm.
    /// travel_mm : float or array_like
    ///     From top dead centre down, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
    ///     The depth, in mm; negative above the deck.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a number is not finite or impossible; it names the parameter, the value and the range.
    ///
    /// Examples
    /// --------
    /// >>> import gaugepoint
    /// >>> gaugepoint.depth_in_bore_mm(0.5, 60.0, 12.0, 10.0)
    /// 58.5
    fn depth_in_bore_mm(deck_clearance_mm, crown_height_mm, height_mm, travel_mm);

    /// Give a length in mm from inches.
    ///
    /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
    /// 811 (2008), appendix B.
    ///
    /// Parameters
    /// ----------
    /// length_inch : float or array_like
    ///     Length in inches, -400 to 400.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn inch_to_mm(length_inch);

    /// Give a length in inches from mm.
    ///
    /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
    /// 811 (2008), appendix B.
    ///
    /// Parameters
    /// ----------
    /// length_mm : float or array_like
    ///     Length in mm, -10160 to 10160.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn mm_to_inch(length_mm);

    /// Give a length in mm from thousandths of an inch.
    ///
    /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
    /// 811 (2008), appendix B.
    ///
    /// Parameters
    /// ----------
    /// length_thou : float or array_like
    ///     Length in thou, -400000 to 400000.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn thou_to_mm(length_thou);

    /// Give a temperature in degrees Celsius from degrees Fahrenheit.
    ///
    /// A difference of temperatures is another thing. A number of up to 15 digits and 12 decimals is converted exactly and rounded once.
    /// Source: NIST SP 811 (2008), appendix B.
    ///
    /// Parameters
    /// ----------
    /// temperature_fahrenheit : float or array_like
    ///     Temperature in degrees Fahrenheit, -454 to 2192.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn fahrenheit_to_c(temperature_fahrenheit);

    /// Give a temperature in degrees Fahrenheit from degrees Celsius.
    ///
    /// A difference of temperatures is another thing. A number of up to 15 digits and 12 decimals is converted exactly and rounded once.
    /// Source: NIST SP 811 (2008), appendix B.
    ///
    /// Parameters
    /// ----------
    /// temperature_c : float or array_like
    ///     Temperature in C, -270 to 1200.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn c_to_fahrenheit(temperature_c);

    /// Give a coefficient of expansion per kelvin from one per degree Fahrenheit.
    ///
    /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
    /// 811 (2008), appendix B.
    ///
    /// Parameters
    /// ----------
    /// expansion_per_fahrenheit : float or array_like
    ///     Coefficient per degree Fahrenheit, 1e-7 to 5e-5.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn per_fahrenheit_to_per_k(expansion_per_fahrenheit);

    /// Give the end gap of a ring with bore and ring at their temperatures.
    ///
    /// The gap alone of `ring_hot_gap`. Source: hot circumference of the bore less the hot length of the ring.
    ///
    /// Parameters
    /// ----------
    /// gap_mm : float or array_like
    ///     End gap at 20 C, in mm.
    /// bore_mm : float or array_like
    ///     Diameter of the bore at 20 C, in mm.
    /// bore_temperature_c, ring_temperature_c : float or array_like
    ///     Temperatures of bore and ring, -40 C to 450 C.
    /// bore_expansion_per_k, ring_expansion_per_k : float or array_like
    ///     Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn ring_hot_gap_mm(
        gap_mm,
        bore_mm,
        bore_temperature_c,
        bore_expansion_per_k,
        ring_temperature_c,
        ring_expansion_per_k
    );

    /// Give the clearance of a pin in a boss or in a bush at 20 C, over the diameter.
    ///
    /// ``hole - pin``, both at 20 C.
    ///
    /// Parameters
    /// ----------
    /// hole_mm, pin_mm : float or array_like
    ///     Diameters at 20 C, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn pin_cold_clearance_mm(hole_mm, pin_mm);

    /// Give the clearance of a freely growing pin in a boss or in a bush, over the diameter.
    ///
    /// ``hole (1 + a_hole (t_hole - 20)) - pin (1 + a_pin (t_pin - 20))``. A pressed bush grows by the coefficient of what
    /// holds it. Source: definition of strain.
    ///
    /// Parameters
    /// ----------
    /// hole_mm, pin_mm : float or array_like
    ///     Diameters at 20 C, in mm.
    /// hole_temperature_c, pin_temperature_c : float or array_like
    ///     Temperatures, -40 C to 450 C.
    /// hole_expansion_per_k, pin_expansion_per_k : float or array_like
    ///     Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn pin_hot_clearance_mm(
        hole_mm,
        hole_temperature_c,
        hole_expansion_per_k,
        pin_mm,
        pin_temperature_c,
        pin_expansion_per_k
    );

    /// Give the pressure in the joint of a pin pressed into an eye.
    ///
    /// One interference; `press_fit` takes ranges. Source: Lame, thick elastic tubes with free ends.
    ///
    /// Parameters
    /// ----------
    /// pin_mm : float or array_like
    ///     Diameter of the pin at 20 C, in mm.
    /// pin_hole_mm : float or array_like
    ///     Its hole, in mm; 0 is a solid pin.
    /// eye_mm : float or array_like
    ///     Outside of the eye, in mm.
    /// interference_mm : float or array_like
    ///     Interference as measured, in mm.
    /// smoothing_mm : float or array_like
    ///     What of it is lost because roughness is pressed flat, in mm.
    /// pin_modulus_mpa, eye_modulus_mpa : float or array_like
    ///     Moduli of elasticity, in MPa.
    /// pin_poisson, eye_poisson : float or array_like
    ///     Poisson's ratios.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn press_fit_pressure_mpa(
        pin_mm,
        pin_hole_mm,
        eye_mm,
        interference_mm,
        smoothing_mm,
        pin_modulus_mpa,
        pin_poisson,
        eye_modulus_mpa,
        eye_poisson
    );

    /// Give the axial force at which a pin pressed into an eye slips.
    ///
    /// ``pi pin width pressure friction`` with the pressure of `press_fit_pressure_mpa`. Source: Coulomb friction over the
    /// joint.
    ///
    /// Parameters
    /// ----------
    /// pin_mm : float or array_like
    ///     Diameter of the pin at 20 C, in mm.
    /// pin_hole_mm : float or array_like
    ///     Its hole, in mm; 0 is a solid pin.
    /// eye_mm : float or array_like
    ///     Outside of the eye, in mm.
    /// width_mm : float or array_like
    ///     Length of the joint along the axis, in mm.
    /// interference_mm : float or array_like
    ///     Interference as measured, in mm.
    /// smoothing_mm : float or array_like
    ///     What of it is lost because roughness is pressed flat, in mm.
    /// friction : float or array_like
    ///     Coefficient of friction.
    /// pin_modulus_mpa, eye_modulus_mpa : float or array_like
    ///     Moduli of elasticity, in MPa.
    /// pin_poisson, eye_poisson : float or array_like
    ///     Poisson's ratios.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn press_fit_force_n(
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
        eye_poisson
    );

    /// Give the torque at which a pin pressed into an eye slips.
    ///
    /// ``force pin / 2`` with the force of `press_fit_force_n`. Source: Coulomb friction at the radius of the joint.
    ///
    /// Parameters
    /// ----------
    /// pin_mm : float or array_like
    ///     Diameter of the pin at 20 C, in mm.
    /// pin_hole_mm : float or array_like
    ///     Its hole, in mm; 0 is a solid pin.
    /// eye_mm : float or array_like
    ///     Outside of the eye, in mm.
    /// width_mm : float or array_like
    ///     Length of the joint along the axis, in mm.
    /// interference_mm : float or array_like
    ///     Interference as measured, in mm.
    /// smoothing_mm : float or array_like
    ///     What of it is lost because roughness is pressed flat, in mm.
    /// friction : float or array_like
    ///     Coefficient of friction.
    /// pin_modulus_mpa, eye_modulus_mpa : float or array_like
    ///     Moduli of elasticity, in MPa.
    /// pin_poisson, eye_poisson : float or array_like
    ///     Poisson's ratios.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn press_fit_torque_nm(
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
        eye_poisson
    );

    /// Give the temperature to which the outer part is heated so that the pin, at 20 C, slips in.
    ///
    /// ``20 + (interference + clearance) / (a diameter)``. Clean steel colours from 249 C: too much heat. `assembly_temperature`
    /// also says what to take care of. Source: free growth.
    ///
    /// Parameters
    /// ----------
    /// diameter_mm : float or array_like
    ///     Diameter of the joint, in mm.
    /// interference_mm : float or array_like
    ///     Interference at 20 C, in mm.
    /// clearance_mm : float or array_like
    ///     Clearance that the heated part is to have, in mm.
    /// expansion_per_k : float or array_like
    ///     Mean coefficient of linear expansion of the heated part, 1e-7 to 1e-4 per kelvin.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn assembly_temperature_c(diameter_mm, interference_mm, clearance_mm, expansion_per_k);

    /// Give how far below the deck the crown stops at top dead centre.
    ///
    /// ``block - (stroke / 2 + rod + compression height)``.
    ///
    /// Parameters
    /// ----------
    /// block_height_mm : float or array_like
    ///     Centre of the crankshaft to the deck, in mm.
    /// stroke_mm : float or array_like
    ///     Stroke, in mm.
    /// rod_mm : float or array_like
    ///     Rod, centre to centre, in mm.
    /// compression_height_mm : float or array_like
    ///     Pin axis to crown, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn piston_deck_clearance_mm(block_height_mm, stroke_mm, rod_mm, compression_height_mm);

    /// Give the swept volume of one cylinder.
    ///
    /// ``pi bore^2 stroke / 4``.
    ///
    /// Parameters
    /// ----------
    /// bore_mm, stroke_mm : float or array_like
    ///     Bore and stroke, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn swept_volume_cm3(bore_mm, stroke_mm);

    /// Give the compression ratio.
    ///
    /// The ratio alone of `compression_ratio`: swept and clearance volume over the clearance volume.
    ///
    /// Parameters
    /// ----------
    /// bore_mm, stroke_mm : float or array_like
    ///     Bore and stroke, in mm.
    /// head_cm3 : float or array_like
    ///     Chamber in the head, in cm3; 0 is a flat head.
    /// gasket_bore_mm, gasket_mm : float or array_like
    ///     Opening of the gasket and its compressed thickness, in mm.
    /// deck_clearance_mm : float or array_like
    ///     From the deck down to the crown, in mm; negative for a protrusion.
    /// crown_cm3 : float or array_like
    ///     Dish, bowl and pockets of the crown, in cm3; negative for a dome.
    /// crevice_cm3 : float or array_like
    ///     Crevice at the top land, in cm3; 0 leaves it out, as is usual.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn static_compression_ratio(
        bore_mm,
        stroke_mm,
        head_cm3,
        gasket_bore_mm,
        gasket_mm,
        deck_clearance_mm,
        crown_cm3,
        crevice_cm3
    );

    /// Give the travel of the piston from top dead centre at a crank angle.
    ///
    /// The travel alone of `piston_travel`. Source: slider-crank with an offset pin.
    ///
    /// Parameters
    /// ----------
    /// crank_radius_mm : float or array_like
    ///     Half the stroke of an engine without offset, in mm.
    /// rod_mm : float or array_like
    ///     Rod, centre to centre, in mm.
    /// pin_offset_mm : float or array_like
    ///     Offset of the pin, in mm, positive toward the major thrust side.
    /// crank_angle_deg : float or array_like
    ///     Crank angle, -720 deg to 720 deg; 0 with the throw in line with the cylinder.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn piston_travel_mm(crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg);

    /// Give the size at 20 C to which the bore for a piston is finished.
    ///
    /// ``piston + clearance``.
    ///
    /// Parameters
    /// ----------
    /// piston_mm : float or array_like
    ///     Diameter of the piston as measured, at 20 C, in mm.
    /// clearance_mm : float or array_like
    ///     Clearance wanted on the bench, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn finish_size_mm(piston_mm, clearance_mm);

    /// Give the size at 20 C to which the bore for a piston is bored before it is honed.
    ///
    /// ``piston + clearance - honing``.
    ///
    /// Parameters
    /// ----------
    /// piston_mm : float or array_like
    ///     Diameter of the piston as measured, at 20 C, in mm.
    /// clearance_mm : float or array_like
    ///     Clearance wanted on the bench, in mm.
    /// honing_mm : float or array_like
    ///     What is left for the hone, on the diameter, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn boring_size_mm(piston_mm, clearance_mm, honing_mm);

    /// Give the size of a bore at 20 C from the deviation that a bore gauge set on a ring shows.
    ///
    /// The ring, the gauge when it was set, the gauge when it is used and the block each have their temperature. Source: ISO
    /// 1:2022 and the definition of strain.
    ///
    /// Parameters
    /// ----------
    /// deviation_mm : float or array_like
    ///     What the dial shows above its setting, in mm; positive when the bore is larger.
    /// setting_mm : float or array_like
    ///     Size of the ring at 20 C, in mm.
    /// ring_temperature_c, set_temperature_c, used_temperature_c, block_temperature_c : float or array_like
    ///     Temperatures, -5 C to 60 C.
    /// ring_expansion_per_k, set_expansion_per_k, used_expansion_per_k, block_expansion_per_k : float or array_like
    ///     Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn bore_size_at_20_mm(
        deviation_mm,
        setting_mm,
        ring_temperature_c,
        ring_expansion_per_k,
        set_temperature_c,
        set_expansion_per_k,
        used_temperature_c,
        used_expansion_per_k,
        block_temperature_c,
        block_expansion_per_k
    );

    /// Give the size of a freely growing part at a temperature.
    ///
    /// ``size (1 + a (t - 20))``. Source: definition of strain.
    ///
    /// Parameters
    /// ----------
    /// size_mm : float or array_like
    ///     Size at 20 C, in mm.
    /// temperature_c : float or array_like
    ///     Temperature, -40 C to 450 C.
    /// expansion_per_k : float or array_like
    ///     Mean coefficient of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn size_at_temperature_mm(size_mm, temperature_c, expansion_per_k);

    /// Give the probability that the true value lies within two limits.
    ///
    /// For a value with a normal error. A value without uncertainty gives 1 or 0. Source: JCGM 106:2012, 7.2.2.
    ///
    /// Parameters
    /// ----------
    /// value_mm : float or array_like
    ///     The value, in mm.
    /// standard_uncertainty_mm : float or array_like
    ///     Its standard uncertainty, in mm.
    /// lower_mm, upper_mm : float or array_like
    ///     The limits, in mm.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
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
    fn probability_of_conformity(value_mm, standard_uncertainty_mm, lower_mm, upper_mm);

    /// Give the coverage factor of Student's t, ``t_p(dof)``.
    ///
    /// Source: JCGM 100:2008, G.3.2.
    ///
    /// Parameters
    /// ----------
    /// probability : float or array_like
    ///     Coverage probability, between 0 and 1.
    /// dof : float or array_like
    ///     Degrees of freedom, from 0.5; ``math.inf`` gives the factor of the normal.
    /// out, partial, threads : optional
    ///     What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
    ///     compute. See python/docs/arrays.md.
    ///
    /// Returns
    /// -------
    /// float or numpy.ndarray
    ///     The coverage factor.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a number is not finite or impossible; it names the parameter, the value and the range.
    ///
    /// Examples
    /// --------
    /// >>> from gaugepoint.uncertainty import coverage_factor
    /// >>> round(coverage_factor(0.99, 16), 2)
    /// 2.92
    fn coverage_factor(probability, dof);
}
