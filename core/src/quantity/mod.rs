//! Quantities, and the one door through which text becomes a quantity.
//!
//! A text holds a decimal number and its unit. It is kept beside the quantity as a [`Typed`] value and printed from
//! there, so that a reading never comes back with digits that nobody read. The number is converted exactly, as a
//! decimal, and rounded once: to the nearest double in millimetres, degrees Celsius, kelvin, per kelvin or degrees.
//!
//! Nothing is guessed and nothing is repaired. A text that is not understood, or could be understood in two ways, is an
//! [`Error`](crate::error::Error) with the likely meaning beside it where there is exactly one.
//!
//! ```
//! use gaugepoint::quantity::{in_mm, parse_length};
//!
//! let bore = parse_length("2.4126 in")?;
//! assert_eq!(bore.to_string(), "2.4126 in");
//! assert_eq!(in_mm(bore.quantity()), 61.28004);
//!
//! let refused = parse_length("96,012 mm").unwrap_err();
//! assert_eq!(refused.did_you_mean(), Some("96.012 mm"));
//! # Ok::<(), gaugepoint::error::Error>(())
//! ```
//!
//! # What a number looks like
//!
//! - An optional sign (`+`, `-` or the minus sign U+2212) directly before the digits 0 to 9, with at most one point.
//! - `.5 in` is accepted: inch drawings leave the zero out. `5. in` is refused: a digit may have been lost.
//! - At most 15 significant digits, counted from the first that is not zero to the last that was typed, and 12 decimal
//!   places. Coefficients of expansion and pure numbers take 14 decimal places and an exponent from -30 to 30.
//! - Spaces between the number and the unit are optional, spaces inside a number are refused. A text has at most 64
//!   characters, not counting white space around it.
//! - Capital and small letters are different units: `MM` and `Mm` are refused. `µ` and `Δ` are accepted in both of their
//!   code points (U+00B5 and U+03BC, U+0394 and U+2206).
//!
//! # What is refused
//!
//! | text | kind |
//! |---|---|
//! | nothing, `mm`, `5. mm`, `1.2.3 mm`, `3.5 0 mm`, `1e-3 mm`, digits of another script | [`NotANumber`] |
//! | `nan`, `inf`, `1e999` | [`NotFinite`] |
//! | more digits than above | [`TooManyDigits`] |
//! | more than 64 characters | [`TooLarge`] |
//! | `86` as a length | [`MissingUnit`] |
//! | `86 C` as a length, `0.5 C` as a difference, `300 K` as a temperature, `86 MM` | [`WrongUnit`] |
//! | `7/16 in`, `3 1/2 in`, `½ in` | [`Fraction`] |
//! | `96,012 mm`, `1,234.5 mm` | [`DecimalComma`] |
//!
//! [`NotANumber`]: crate::error::ErrorKind::NotANumber
//! [`NotFinite`]: crate::error::ErrorKind::NotFinite
//! [`TooManyDigits`]: crate::error::ErrorKind::TooManyDigits
//! [`TooLarge`]: crate::error::ErrorKind::TooLarge
//! [`MissingUnit`]: crate::error::ErrorKind::MissingUnit
//! [`WrongUnit`]: crate::error::ErrorKind::WrongUnit
//! [`Fraction`]: crate::error::ErrorKind::Fraction
//! [`DecimalComma`]: crate::error::ErrorKind::DecimalComma

pub(crate) mod decimal;
pub(crate) mod notation;
mod spoken;
mod convert;
mod date;
pub(crate) mod refusal;
mod temperature;

#[cfg(test)]
mod tests;

use core::fmt;

pub use convert::{
    c_to_fahrenheit, fahrenheit_to_c, inch_to_mm, mm_to_inch, per_fahrenheit_to_per_k, thou_to_mm,
};
pub use date::parse_date;
pub use notation::{
    parse_angle, parse_expansion, parse_force, parse_hours, parse_length, parse_mass, parse_number,
    parse_probability, parse_roughness, parse_slope, parse_stiffness, parse_temperature,
    parse_temperature_difference, parse_volume,
};
pub use spoken::{print_inch_tenths, print_spoken_inch};
pub use temperature::Temperature;
pub use units::{Length, TemperatureInterval};

/// `uom` quantities on a coherent base of millimetre, tonne and second.
///
/// Their derived units are the newton and the megapascal, so a length in mm, a force in N and a pressure in MPa hold
/// exactly the number that was given. On a base of metres 26 737 of the
/// 200 000 whole micrometres to 200 mm would not come back as typed.
#[allow(
    rustdoc::broken_intra_doc_links,
    reason = "the macro documents its types with paths of its own crate"
)]
pub mod units {
    ISQ!(uom::si, f64, (millimeter, megagram, second, ampere, kelvin, mole, candela));
}

use uom::si::length::millimeter;

/// A length in millimetres; exactly the number that [`from_mm`] was given.
#[must_use]
#[inline]
pub fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

/// The length of `mm` millimetres. A negative zero becomes zero.
#[must_use]
#[inline]
pub fn from_mm(mm: f64) -> Length {
    Length::new::<millimeter>(without_negative_zero(mm))
}

/// A quantity beside the text it was typed as. It prints as that text.
///
/// ```
/// use gaugepoint::quantity::{in_mm, parse_length};
///
/// let reading = parse_length(" 96.010 mm ")?;
/// assert_eq!(reading.text(), "96.010 mm");
/// assert_eq!(in_mm(reading.quantity()), 96.01);
/// # Ok::<(), gaugepoint::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Typed<Q> {
    text: String,
    quantity: Q,
}

impl<Q> Typed<Q> {
    fn new(text: &str, quantity: Q) -> Self {
        Typed { text: text.to_owned(), quantity }
    }

    /// The text as it was typed, without the white space around it.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }
}

impl<Q: Copy> Typed<Q> {
    /// The quantity.
    #[must_use]
    pub fn quantity(&self) -> Q {
        self.quantity
    }
}

impl<Q> fmt::Display for Typed<Q> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.text)
    }
}

/// A coefficient of linear thermal expansion, per kelvin.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Expansion(f64);

impl Expansion {
    /// The coefficient `per_kelvin`, in 1/K. Its range is checked where it is used. A negative zero becomes zero.
    #[must_use]
    #[inline]
    pub fn from_per_kelvin(per_kelvin: f64) -> Self {
        Expansion(without_negative_zero(per_kelvin))
    }

    /// The coefficient in 1/K.
    #[must_use]
    #[inline]
    pub fn per_kelvin(self) -> f64 {
        self.0
    }
}

/// A plane angle, in degrees, not reduced to one turn.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Angle(f64);

impl Angle {
    /// The angle of `degrees` degrees. Its range is checked where it is used. A negative zero becomes zero.
    #[must_use]
    pub fn from_degrees(degrees: f64) -> Self {
        Angle(without_negative_zero(degrees))
    }

    /// The angle in degrees.
    #[must_use]
    pub fn degrees(self) -> f64 {
        self.0
    }
}

/// A negative zero prints as `-0` and is no measurement.
#[inline]
fn without_negative_zero(value: f64) -> f64 {
    value + 0.0
}
