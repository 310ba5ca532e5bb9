//! A decimal number exactly as typed, up to the one rounding.

use super::refusal::Fault;
use core::fmt::{self, Write as _};

/// Most significant digits. Two decimals of 15 digits never meet in one double.
const MOST_DIGITS: usize = 15;

/// Above every coefficient of so many digits.
const COEFFICIENTS_END: u64 = 1_000_000_000_000_000;

/// Largest exponent, either way, of a number that may have one.
const LARGEST_EXPONENT: u32 = 30;

/// Which numbers a kind of quantity accepts.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Form {
    decimals: usize,
    exponent: bool,
}

impl Form {
    /// Digits and a point.
    pub(crate) const PLAIN: Form = Form { decimals: 12, exponent: false };
    /// Also an exponent.
    pub(super) const SCIENTIFIC: Form = Form { decimals: 14, exponent: true };
}

/// `coefficient * 10^exponent` with its sign. The coefficient of a typed number is below 10^15.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Decimal {
    pub(crate) negative: bool,
    pub(crate) coefficient: u64,
    pub(crate) exponent: i32,
}

impl Decimal {
    /// A number from its parts, within the limit of digits.
    pub(super) fn new(negative: bool, coefficient: u64, exponent: i32) -> Option<Self> {
        (coefficient < COEFFICIENTS_END).then_some(Decimal { negative, coefficient, exponent })
    }

    /// The double nearest to `self * factor * 10^tens`.
    pub(super) fn times(self, factor: u64, tens: i32) -> Option<f64> {
        let coefficient = self.coefficient.checked_mul(factor)?;
        // reading decimal digits rounds correctly, and nothing was rounded before
        let text = Line::of(format_args!("{coefficient}e{}", self.exponent.checked_add(tens)?))?;
        let size: f64 = text.as_str()?.parse().ok()?;
        // a typed -0 is 0
        Some(if self.negative && coefficient != 0 { -size } else { size })
    }

    /// The shortest decimal that reads back as a double, where it is one that can be typed.
    pub(super) fn printed(x: f64) -> Option<Self> {
        let text = Line::of(format_args!("{x}"))?;
        scan(text.as_str()?, Form::SCIENTIFIC)
            .ok()
            .filter(|(_, rest)| rest.is_empty())
            .map(|(number, _)| number)
    }

    /// The double nearest to `(self * times + offset) / over`.
    ///
    /// With at most 15 digits and 12 decimals both sides of the division are whole numbers below 2^53, so they are exact
    /// and the division is the only rounding.
    pub(super) fn ratio(self, times: i64, offset: i64, over: i64) -> Option<f64> {
        let tens = 10_i64.checked_pow(u32::try_from(self.exponent.checked_neg()?).ok()?)?;
        let steps = self.signed()?.checked_mul(times)?.checked_add(offset.checked_mul(tens)?)?;
        Some(exactly(steps)? / exactly(tens.checked_mul(over)?)?)
    }

    /// `self - hundredths / 100`, exactly.
    pub(super) fn less_hundredths(self, hundredths: i64) -> Option<Self> {
        let exponent = self.exponent.min(-2);
        let own = self.signed()?.checked_mul(ten_to(self.exponent.checked_sub(exponent)?)?)?;
        let other = hundredths.checked_mul(ten_to((-2_i32).checked_sub(exponent)?)?)?;
        let difference = own.checked_sub(other)?;
        Decimal::new(difference < 0, difference.unsigned_abs(), exponent)
    }

    fn signed(self) -> Option<i64> {
        let size = i64::try_from(self.coefficient).ok()?;
        Some(if self.negative { -size } else { size })
    }

    /// The number written without an exponent.
    pub(super) fn plainly(self) -> String {
        let sign = if self.negative { "-" } else { "" };
        let digits = self.coefficient.to_string();
        let Ok(decimals) = usize::try_from(-self.exponent) else {
            return format!("{sign}{digits}{}", "0".repeat(self.exponent.unsigned_abs() as usize));
        };
        // one digit at least stands before the point
        let digits = format!("{digits:0>width$}", width = decimals + 1);
        let (whole, fraction) = digits.split_at(digits.len() - decimals);
        let point = if fraction.is_empty() { "" } else { "." };
        format!("{sign}{whole}{point}{fraction}")
    }
}

/// A short text that needs no memory.
struct Line {
    bytes: [u8; 40],
    length: usize,
}

impl Line {
    fn of(text: fmt::Arguments<'_>) -> Option<Self> {
        let mut line = Line { bytes: [0; 40], length: 0 };
        line.write_fmt(text).ok().map(|()| line)
    }

    fn as_str(&self) -> Option<&str> {
        core::str::from_utf8(self.bytes.get(..self.length)?).ok()
    }
}

impl fmt::Write for Line {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        let end = self.length + text.len();
        self.bytes.get_mut(self.length..end).ok_or(fmt::Error)?.copy_from_slice(text.as_bytes());
        self.length = end;
        Ok(())
    }
}

fn ten_to(power: i32) -> Option<i64> {
    10_i64.checked_pow(u32::try_from(power).ok()?)
}

/// A whole number as a double, where the double is that number.
fn exactly(whole: i64) -> Option<f64> {
    (whole.unsigned_abs() <= 1 << f64::MANTISSA_DIGITS).then_some(whole as f64)
}

/// The number at the start of `text`, and what follows it.
pub(crate) fn scan(text: &str, form: Form) -> Result<(Decimal, &str), Fault> {
    let (negative, unsigned) = sign(text);
    let (whole, fraction, rest) = mantissa(unsigned)?;
    let coefficient = coefficient(whole, fraction, form)?;
    let (power, rest) = match power(rest) {
        Some((power, rest)) => (accepted_power(coefficient, &power, form)?, rest),
        None => (0, rest),
    };
    let number = Decimal::new(negative, coefficient, power - fraction.len() as i32);
    Ok((number.ok_or(Fault::TooManyDigits)?, rest))
}

/// Whether a minus stands at the start, and what follows the sign.
pub(crate) fn sign(text: &str) -> (bool, &str) {
    match text.strip_prefix(['-', '\u{2212}']) {
        Some(unsigned) => (true, unsigned),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    }
}

/// The digits 0 to 9 at the start, and what follows them.
pub(super) fn digits(text: &str) -> (&str, &str) {
    split_while(text, |c| c.is_ascii_digit())
}

/// The longest start of `text` whose characters all are as asked, and the rest.
pub(super) fn split_while(text: &str, asked: impl Fn(char) -> bool) -> (&str, &str) {
    text.split_at(text.find(|c| !asked(c)).unwrap_or(text.len()))
}

/// Digits before the point, digits after it, and the rest.
fn mantissa(unsigned: &str) -> Result<(&str, &str, &str), Fault> {
    let (whole, rest) = digits(unsigned);
    let (fraction, rest) = match rest.strip_prefix('.') {
        Some(after) => digits(after),
        None => ("", rest),
    };
    if whole.is_empty() && fraction.is_empty() {
        return Err(no_digits(unsigned));
    }
    if fraction.is_empty() && unsigned.strip_prefix(whole).is_some_and(|r| r.starts_with('.')) {
        return Err(Fault::TrailingPoint);
    }
    match rest.chars().next() {
        Some('.') => Err(Fault::SecondPoint),
        Some(c) if c.is_numeric() => Err(Fault::ForeignDigit),
        _ => Ok((whole, fraction, rest)),
    }
}

/// What stands where digits should.
fn no_digits(unsigned: &str) -> Fault {
    let (word, _) = split_while(unsigned, char::is_alphabetic);
    let word = word.to_ascii_lowercase();
    if ["nan", "inf", "infinity"].contains(&word.as_str()) || unsigned.starts_with('\u{221e}') {
        Fault::NotFinite
    } else if unsigned.starts_with(char::is_numeric) {
        Fault::ForeignDigit
    } else {
        Fault::NoDigits
    }
}

/// The digits of a number as a whole number, within the limits.
fn coefficient(whole: &str, fraction: &str, form: Form) -> Result<u64, Fault> {
    let significant = || whole.bytes().chain(fraction.bytes()).skip_while(|digit| *digit == b'0');
    if significant().count() > MOST_DIGITS {
        return Err(Fault::TooManyDigits);
    }
    if fraction.len() > form.decimals {
        return Err(Fault::TooManyDecimals(form.decimals));
    }
    Ok(significant().fold(0, |number, digit| 10 * number + u64::from(digit - b'0')))
}

/// The exponent at the start of `rest`, as digits behind an optional `-`, and what follows it.
fn power(rest: &str) -> Option<(String, &str)> {
    let (negative, unsigned) = sign(rest.strip_prefix(['e', 'E'])?);
    let (power, rest) = digits(unsigned);
    let sign = if negative { "-" } else { "" };
    (!power.is_empty()).then(|| (format!("{sign}{power}"), rest))
}

/// The exponent as a number, where one is accepted and within its range.
fn accepted_power(coefficient: u64, power: &str, form: Form) -> Result<i32, Fault> {
    if format!("{coefficient}e{power}").parse().is_ok_and(f64::is_infinite) {
        return Err(Fault::NotFinite);
    }
    match power.parse::<i32>() {
        _ if !form.exponent => Err(Fault::Exponent),
        Ok(power) if power.unsigned_abs() <= LARGEST_EXPONENT => Ok(power),
        _ => Err(Fault::ExponentRange),
    }
}
