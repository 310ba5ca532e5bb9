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
    Ok(converted(length_inch, (254.0, 0.0, 10.0), |typed| INCH.of(typed), |x| x * 25.4))
}

/// A length in inches from one in mm.
///
/// # Errors
/// When it is not finite or beyond 10160 mm; the error names the parameter.
pub fn mm_to_inch(length_mm: f64) -> Result<f64, Error> {
    length("mm", 10_160.0).check("length_mm", length_mm)?;
    Ok(converted(length_mm, (5.0, 0.0, 127.0), |typed| typed.ratio(5, 0, 127), |x| x / 25.4))
}

/// A length in mm from one in thousandths of an inch.
///
/// # Errors
/// When it is not finite or beyond 400 000 thou; the error names the parameter.
pub fn thou_to_mm(length_thou: f64) -> Result<f64, Error> {
    length("thou", 400_000.0).check("length_thou", length_thou)?;
    Ok(converted(length_thou, (254.0, 0.0, 10_000.0), |typed| THOU.of(typed), |x| x * 25.4 / 1000.0))
}

/// A temperature in degrees Celsius from one in degrees Fahrenheit; a difference of temperatures is another thing.
///
/// # Errors
/// When it is not finite or not within -454 F and 2192 F; the error names the parameter.
pub fn fahrenheit_to_c(temperature_fahrenheit: f64) -> Result<f64, Error> {
    temperature("F", -454.0, 2192.0).check("temperature_fahrenheit", temperature_fahrenheit)?;
    let ratio = (5.0, -160.0, 9.0);
    Ok(converted(temperature_fahrenheit, ratio, |typed| Scale::Fahrenheit.of(typed), |x| (x - 32.0) / 1.8))
}

/// A temperature in degrees Fahrenheit from one in degrees Celsius; a difference of temperatures is another thing.
///
/// # Errors
/// When it is not finite or not within -270 C and 1200 C; the error names the parameter.
pub fn c_to_fahrenheit(temperature_c: f64) -> Result<f64, Error> {
    temperature("C", -270.0, 1200.0).check("temperature_c", temperature_c)?;
    Ok(converted(temperature_c, (9.0, 160.0, 5.0), |typed| typed.ratio(9, 160, 5), |x| x * 1.8 + 32.0))
}

/// A coefficient of expansion per kelvin from one per degree Fahrenheit.
///
/// # Errors
/// When it is not finite or not within 1e-7 and 5e-5 per degree Fahrenheit; the error names the parameter.
pub fn per_fahrenheit_to_per_k(expansion_per_fahrenheit: f64) -> Result<f64, Error> {
    PER_DEGREE.check("expansion_per_fahrenheit", expansion_per_fahrenheit)?;
    let ratio = (9.0, 0.0, 5.0);
    Ok(converted(expansion_per_fahrenheit, ratio, |typed| PER_FAHRENHEIT.of(typed), |x| x * 1.8))
}

/// By the decimal that a double prints as, where that is one that can be typed; else by doubles.
///
/// `(times, offset, over)` say the same as `typed` for numbers of few decimals: `(x times + offset) / over`.
#[inline]
fn converted(
    x: f64,
    ratio: (f64, f64, f64),
    typed: impl Fn(Decimal) -> Option<f64>,
    computed: impl Fn(f64) -> f64,
) -> f64 {
    of_few_decimals(x, ratio)
        .unwrap_or_else(|| Decimal::printed(x).and_then(typed).unwrap_or_else(|| computed(x)))
}

/// Powers of ten of the decimals that typed numbers have at most: lengths and temperatures, and coefficients of expansion.
const TENS: [f64; 2] = [1e6, 1e11];
/// Below it a double that is whole is the number that was meant.
const EXACT: f64 = 9_007_199_254_740_992.0;

/// The same bits without printing the number: with so few decimals both sides of the fraction are whole numbers that doubles hold, and the division
/// is the only rounding.
#[inline]
fn of_few_decimals(x: f64, (times, offset, over): (f64, f64, f64)) -> Option<f64> {
    TENS.into_iter().find_map(|tens| {
        let steps = libm::rint(x * tens);
        let above = steps * times + offset * tens;
        // at most 15 digits, and the double nearest to them: no shorter decimal reads back as it that is not the same number
        let typed = steps.abs() < 1e15 && (steps / tens).to_bits() == x.to_bits();
        // minus zero is zero
        (typed && (steps * times).abs() <= EXACT && above.abs() <= EXACT).then(|| above / (tens * over) + 0.0)
    })
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
