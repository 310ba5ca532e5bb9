//! Numbers in the units that shops also read in. A number of up to 15 digits and 12 decimals is converted as the decimal that it is typed and printed
//! as: exactly, and rounded once, to the bits that its text gives. Other doubles take two or three roundings.

use super::decimal::Decimal;
use super::notation::{INCH, PER_FAHRENHEIT, Scale, THOU};
use crate::bounds::Bound;
use crate::error::Error;

/// A length in mm from one in inches.
///
/// # Errors
/// When it is not finite or beyond 400 in; the error names the parameter.
///
/// ```
/// use gaugepoint::quantity::{inch_to_mm, in_mm, parse_length};
/// assert_eq!(inch_to_mm(2.4126)?, 61.28004);
/// assert_eq!(inch_to_mm(2.4126)?, in_mm(parse_length("2.4126 in")?.quantity()));
/// # Ok::<(), gaugepoint::Error>(())
/// ```
pub fn inch_to_mm(length_inch: f64) -> Result<f64, Error> {
    length("in", 400.0).check("length_inch", length_inch)?;
    Ok(converted(length_inch, |typed| INCH.of(typed), |x| x * 25.4))
}

/// A length in inches from one in mm.
///
/// # Errors
/// When it is not finite or beyond 10160 mm; the error names the parameter.
pub fn mm_to_inch(length_mm: f64) -> Result<f64, Error> {
    length("mm", 10_160.0).check("length_mm", length_mm)?;
    Ok(converted(length_mm, |typed| typed.ratio(5, 0, 127), |x| x / 25.4))
}

/// A length in mm from one in thousandths of an inch.
///
/// # Errors
/// When it is not finite or beyond 400 000 thou; the error names the parameter.
pub fn thou_to_mm(length_thou: f64) -> Result<f64, Error> {
    length("thou", 400_000.0).check("length_thou", length_thou)?;
    Ok(converted(length_thou, |typed| THOU.of(typed), |x| x * 25.4 / 1000.0))
}

/// A temperature in degrees Celsius from one in degrees Fahrenheit; a difference of temperatures is another thing.
///
/// # Errors
/// When it is not finite or not within -454 F and 2192 F; the error names the parameter.
pub fn fahrenheit_to_c(temperature_fahrenheit: f64) -> Result<f64, Error> {
    temperature("F", -454.0, 2192.0).check("temperature_fahrenheit", temperature_fahrenheit)?;
    Ok(converted(temperature_fahrenheit, |typed| Scale::Fahrenheit.of(typed), |x| (x - 32.0) / 1.8))
}

/// A temperature in degrees Fahrenheit from one in degrees Celsius; a difference of temperatures is another thing.
///
/// # Errors
/// When it is not finite or not within -270 C and 1200 C; the error names the parameter.
pub fn c_to_fahrenheit(temperature_c: f64) -> Result<f64, Error> {
    temperature("C", -270.0, 1200.0).check("temperature_c", temperature_c)?;
    Ok(converted(temperature_c, |typed| typed.ratio(9, 160, 5), |x| x * 1.8 + 32.0))
}

/// A coefficient of expansion per kelvin from one per degree Fahrenheit.
///
/// # Errors
/// When it is not finite or not within 1e-7 and 5e-5 per degree Fahrenheit; the error names the parameter.
pub fn per_fahrenheit_to_per_k(expansion_per_fahrenheit: f64) -> Result<f64, Error> {
    PER_DEGREE.check("expansion_per_fahrenheit", expansion_per_fahrenheit)?;
    Ok(converted(expansion_per_fahrenheit, |typed| PER_FAHRENHEIT.of(typed), |x| x * 1.8))
}

/// By the decimal that a double prints as, where that is one that can be typed; else by doubles.
fn converted(x: f64, typed: impl Fn(Decimal) -> Option<f64>, computed: impl Fn(f64) -> f64) -> f64 {
    Decimal::printed(x).and_then(typed).unwrap_or_else(|| computed(x))
}

const fn length(unit: &'static str, most: f64) -> Bound {
    let reason = "no part of an engine is longer than 10 m";
    Bound { label: "length", unit, possible: (-most, most), usual: (-most, most), reason }
}

const fn temperature(unit: &'static str, least: f64, most: f64) -> Bound {
    let reason = "as for the laws of expansion";
    Bound { label: "temperature", unit, possible: (least, most), usual: (least, most), reason }
}

const PER_DEGREE: Bound = Bound {
    label: "coefficient of expansion",
    unit: "1/F",
    possible: (1e-7, 5e-5),
    usual: (5e-6, 1.45e-5),
    reason: "metals of engines have 5e-6 to 14e-6 per degree Fahrenheit; a bare 6 lacks its 1e-6",
};
