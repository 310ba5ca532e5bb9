//! Inches, thou and tenths, one after the other, as they are called out beside a gauge.

use super::decimal::{self, Decimal};
use super::notation::is_space;
use super::refusal::Fault;
use super::{Length, in_mm};

/// A part of a spoken length, largest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Part {
    Tenths,
    Thou,
    Inches,
}

impl Part {
    fn of(word: &str) -> Option<Part> {
        match word {
            "in" | "inch" | "\"" => Some(Part::Inches),
            "thou" => Some(Part::Thou),
            "tenth" | "tenths" => Some(Part::Tenths),
            _ => None,
        }
    }

    fn tenths(self) -> u64 {
        match self {
            Part::Inches => 10_000,
            Part::Thou => 10,
            Part::Tenths => 1,
        }
    }

    /// The most of it behind a larger part; more would be a slip of a digit.
    fn most(self) -> (u64, &'static str) {
        match self {
            Part::Inches => (0, "in"),
            Part::Thou => (999, "thou"),
            Part::Tenths => (9, "tenths"),
        }
    }
}

/// Whether what follows the first number is a part of a spoken length with more behind it.
pub(super) fn goes_on(unit: &str) -> bool {
    let (word, rest) = decimal::split_while(unit, |c| c.is_alphabetic() || c == '"');
    Part::of(word).is_some() && rest.trim_start_matches(is_space).starts_with(|c: char| c.is_ascii_digit())
}

/// The tenths of a thousandth in `2 in 412 thou 6 tenths`.
pub(super) fn in_tenths(text: &str) -> Result<Decimal, Fault> {
    let (negative, mut rest) = decimal::sign(text);
    let mut total = 0_u64;
    let mut before = None;
    while !rest.is_empty() {
        let (count, part, after) = next_part(rest)?;
        check_part(count, part, before)?;
        let tenths = count.checked_mul(part.tenths()).and_then(|t| total.checked_add(t));
        total = tenths.ok_or(Fault::TooManyDigits)?;
        before = Some(part);
        rest = after;
    }
    Decimal::new(negative, total, 0).ok_or(Fault::TooManyDigits)
}

/// How many of what stand first, and the parts behind.
fn next_part(text: &str) -> Result<(u64, Part, &str), Fault> {
    let (count, rest) = decimal::digits(text);
    if count.is_empty() || rest.starts_with('.') {
        return Err(Fault::SpokenPart);
    }
    let (word, rest) =
        decimal::split_while(rest.trim_start_matches(is_space), |c| !c.is_ascii_digit() && !is_space(c));
    let part = match word {
        "" => return Err(Fault::SpokenWithoutUnit),
        word => Part::of(word).ok_or_else(|| Fault::SpokenUnit(word.to_owned()))?,
    };
    let count = count.parse().map_err(|_| Fault::TooManyDigits)?;
    Ok((count, part, rest.trim_start_matches(is_space)))
}

/// Parts stand in order of size, and each is less than one of the next larger.
fn check_part(count: u64, part: Part, before: Option<Part>) -> Result<(), Fault> {
    let (most, unit) = part.most();
    match before {
        Some(before) if part >= before => Err(Fault::SpokenOrder),
        Some(_) if count > most => Err(Fault::SpokenTooMany { count, most, unit }),
        _ => Ok(()),
    }
}

/// Prints a length in inches with four decimals, rounded to the nearest tenth of a thousandth: `2.4126 in`.
///
/// An exact half goes to the even tenth (ISO 80000-1, rounding rule A). A length that is not finite, or not below 1e30
/// mm, has no tenths and prints as the plain quotient in inches.
///
/// ```
/// use gaugepoint::quantity::{from_mm, print_inch_tenths};
///
/// assert_eq!(print_inch_tenths(from_mm(61.28)), "2.4126 in");
/// ```
#[must_use]
pub fn print_inch_tenths(length: Length) -> String {
    let Some((sign, tenths)) = nearest_tenths(length) else {
        return unprintable(length);
    };
    format!("{sign}{}.{:04} in", tenths / 10_000, tenths % 10_000)
}

/// Prints a length as it is called out, rounded like [`print_inch_tenths`]: `2 in 412 thou 6 tenths`.
///
/// The sign stands first and holds for the whole; parts of zero are left out, and zero is `0 tenths`.
///
/// ```
/// use gaugepoint::quantity::{from_mm, print_spoken_inch};
///
/// assert_eq!(print_spoken_inch(from_mm(-61.28)), "-2 in 412 thou 6 tenths");
/// assert_eq!(print_spoken_inch(from_mm(25.4025)), "1 in 1 tenth");
/// ```
#[must_use]
pub fn print_spoken_inch(length: Length) -> String {
    let Some((sign, tenths)) = nearest_tenths(length) else {
        return unprintable(length);
    };
    let last = if tenths % 10 == 1 { "tenth" } else { "tenths" };
    let parts = [(tenths / 10_000, "in"), (tenths / 10 % 1_000, "thou"), (tenths % 10, last)];
    let said: Vec<String> =
        parts.iter().filter(|(count, _)| *count > 0).map(|(count, unit)| format!("{count} {unit}")).collect();
    if said.is_empty() { "0 tenths".to_owned() } else { format!("{sign}{}", said.join(" ")) }
}

fn unprintable(length: Length) -> String {
    format!("{} in", in_mm(length) / 25.4)
}

/// Sign and number of tenths nearest to a length; a half goes to the even one.
///
/// Whole numbers throughout: a double is `mantissa * 2^exponent` mm, and a millimetre is 50000/127 tenths. In doubles
/// the quotient would be rounded before it is rounded.
fn nearest_tenths(length: Length) -> Option<(&'static str, u128)> {
    let size = in_mm(length).abs();
    if size < 0.001 {
        return Some(("", 0));
    }
    // below 1e30 no shift leaves 128 bits
    if size.is_nan() || size >= 1e30 {
        return None;
    }
    let exponent = (size.to_bits() >> 52) as i32 - 1075;
    let mantissa = u128::from(size.to_bits() & ((1 << 52) - 1) | 1 << 52);
    let up = exponent.max(0).unsigned_abs();
    let down = exponent.min(0).unsigned_abs();
    let (numerator, denominator) = ((mantissa * 50_000) << up, 127_u128 << down);
    let (whole, left) = (numerator / denominator, numerator % denominator);
    let tenths = match (2 * left).cmp(&denominator) {
        core::cmp::Ordering::Less => whole,
        core::cmp::Ordering::Equal => whole + whole % 2,
        core::cmp::Ordering::Greater => whole + 1,
    };
    let sign = if in_mm(length) < 0.0 && tenths > 0 { "-" } else { "" };
    Some((sign, tenths))
}
