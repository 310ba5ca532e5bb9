//! Why a text is refused, and what was probably meant by it.
//!
//! A suggestion is offered only when it would be accepted in its turn and nothing else could have been meant.

use super::decimal::{self, Decimal, Form};
use super::notation::{KINDS_WITH_UNITS, Kind, TEMPERATURE, is_space, read};
use crate::error::{Error, ErrorKind};

/// What is wrong with a text.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Fault {
    Empty,
    TooLong,
    NoDigits,
    ForeignDigit,
    NotFinite,
    TrailingPoint,
    SecondPoint,
    SecondNumber,
    TooManyDigits,
    TooManyDecimals(usize),
    Exponent,
    ExponentRange,
    OutOfRange(f64),
    Comma,
    Fraction,
    MissingUnit,
    WrongUnit(String),
    SpokenPart,
    SpokenOrder,
    SpokenWithoutUnit,
    SpokenUnit(String),
    SpokenTooMany { count: u64, most: u64, unit: &'static str },
}

/// The refusal of `text` as a quantity of `kind`.
pub(crate) fn refuse(text: &str, kind: &Kind, fault: Fault) -> Error {
    let meant = meant(text, kind, &fault);
    let refused = Error::new(error_kind(&fault), text, reason(text, kind, &fault)).suggest(meant);
    match (fault, kind.range) {
        (Fault::SpokenTooMany { count, most, unit }, _) => {
            refused.value(count as f64).limits(0.0, most as f64, unit)
        }
        (Fault::OutOfRange(value), Some((lower, upper))) => refused.value(value).limits(lower, upper, ""),
        _ => refused,
    }
}

fn error_kind(fault: &Fault) -> ErrorKind {
    match fault {
        Fault::TooLong => ErrorKind::TooLarge,
        Fault::NotFinite => ErrorKind::NotFinite,
        Fault::TooManyDigits | Fault::TooManyDecimals(_) => ErrorKind::TooManyDigits,
        Fault::ExponentRange | Fault::OutOfRange(_) | Fault::SpokenTooMany { .. } => ErrorKind::OutOfRange,
        Fault::Comma => ErrorKind::DecimalComma,
        Fault::Fraction => ErrorKind::Fraction,
        Fault::MissingUnit | Fault::SpokenWithoutUnit => ErrorKind::MissingUnit,
        Fault::WrongUnit(_) | Fault::SpokenUnit(_) => ErrorKind::WrongUnit,
        _ => ErrorKind::NotANumber,
    }
}

fn reason(text: &str, kind: &Kind, fault: &Fault) -> String {
    let Kind { asked, advice, example, .. } = kind;
    match fault {
        Fault::Empty => format!("it is empty; {advice}"),
        Fault::TooLong => "a quantity has at most 64 characters".into(),
        Fault::NoDigits => "it does not begin with a number".into(),
        Fault::ForeignDigit => "numbers are written with the digits 0 to 9".into(),
        Fault::NotFinite => "it is not a finite number".into(),
        Fault::TrailingPoint => "no digit follows the decimal point; one may be missing".into(),
        Fault::SecondPoint => "it has more than one decimal point".into(),
        Fault::SecondNumber => "it holds more than one number".into(),
        Fault::TooManyDigits => "it has more than 15 significant digits".into(),
        Fault::TooManyDecimals(most) => format!("it has more than {most} decimal places"),
        Fault::Exponent => format!("{asked} is written without an exponent"),
        Fault::ExponentRange => "its exponent is beyond 30".into(),
        Fault::OutOfRange(_) => format!("it is outside what {asked} can be; {advice}"),
        Fault::Comma => "the decimal sign is a point, and digits are not grouped".into(),
        Fault::Fraction => "a fraction does not say how finely it was read; write a decimal number".into(),
        Fault::MissingUnit => {
            format!("a number without a unit is not {asked}; {advice}, for example {text} {example}")
        }
        Fault::WrongUnit(unit) => wrong_unit(unit, kind),
        Fault::SpokenPart => "inches, thou and tenths that follow one another are whole numbers".into(),
        Fault::SpokenOrder => "inches, thou and tenths stand in this order, each once".into(),
        Fault::SpokenWithoutUnit => "the last number has no unit; write in, thou or tenths".into(),
        Fault::SpokenUnit(unit) => {
            format!("{unit:?} cannot follow; inches, thou and tenths follow one another")
        }
        Fault::SpokenTooMany { unit, .. } => format!("behind a larger unit these are too many {unit}"),
    }
}

fn wrong_unit(unit: &str, kind: &Kind) -> String {
    let Kind { asked, advice, .. } = kind;
    let folded = folded(unit);
    if let Some((_, why)) = kind.unclear_names.iter().find(|(name, _)| *name == folded) {
        return format!("{why}; {advice}");
    }
    if let Some(other) = KINDS_WITH_UNITS.iter().find(|other| other.knows(unit)) {
        return format!("{} is not {asked}; {advice}", other.asked);
    }
    if let Some(known) = kind.units.iter().find(|known| known.0.to_lowercase() == unit.to_lowercase()) {
        return format!("capital and small letters differ, {unit:?} is not {:?}; {advice}", known.0);
    }
    format!("{unit:?} is not accepted for {asked}; {advice}")
}

/// The fault of a unit that is not one of the kind's.
pub(crate) fn unit_fault(unit: &str, kind: &Kind) -> Fault {
    let second_number = unit.contains(|c: char| c.is_ascii_digit());
    if unit.is_empty() {
        Fault::MissingUnit
    } else if second_number && unit_meant(unit, kind).is_none() {
        Fault::SecondNumber
    } else {
        Fault::WrongUnit(unit.to_owned())
    }
}

/// What was probably meant, where there is exactly one answer.
fn meant(text: &str, kind: &Kind, fault: &Fault) -> Option<String> {
    let meant = match fault {
        Fault::NoDigits => after_lone_sign(text),
        Fault::Comma => return without_comma(text, kind),
        Fault::Fraction => as_decimal(text),
        Fault::Exponent => without_exponent(text),
        // a probability of 95
        Fault::OutOfRange(_) => Some(format!("{text} {}", kind.example)),
        Fault::WrongUnit(unit) => with_unit_meant(text, unit, kind),
        Fault::SecondNumber | Fault::SpokenUnit(_) => Some(text.to_lowercase()),
        _ => None,
    };
    meant.filter(|meant| read(meant, kind).is_ok())
}

/// Whether a text is accepted, with a value that is not absurd.
pub(super) fn likely(text: &str, kind: &Kind) -> bool {
    read(text, kind).is_ok_and(|value| value.abs() <= kind.plausible)
}

/// `- 5 mm` and other dashes as `-5 mm`; `±0.01 mm` as the half-width it is.
fn after_lone_sign(text: &str) -> Option<String> {
    let sign = text.chars().next()?;
    let number = text.strip_prefix(sign)?.trim_start_matches(is_space);
    let number = number.starts_with(|c: char| c.is_ascii_digit() || c == '.').then_some(number)?;
    match sign {
        '-' | '\u{2010}'..='\u{2015}' | '\u{2212}' => Some(format!("-{number}")),
        '+' | '\u{b1}' => Some(number.to_owned()),
        _ => None,
    }
}

/// Whether a slash or a fraction character makes a fraction of the text.
pub(crate) fn has_fraction(text: &str) -> bool {
    let behind_slash = |(at, slash): (usize, &str)| {
        let rest = text.get(at..).and_then(|rest| rest.strip_prefix(slash)).unwrap_or_default();
        rest.trim_start_matches(is_space).starts_with(|c: char| c.is_ascii_digit())
    };
    text.contains(|c| ready_made(c).is_some()) || text.match_indices(is_slash).any(behind_slash)
}

fn is_slash(c: char) -> bool {
    matches!(c, '/' | '\u{2044}' | '\u{2215}')
}

/// Numerator and denominator of a fraction that is one character; (0, 0) where no decimal is offered for it.
fn ready_made(c: char) -> Option<(u64, u64)> {
    match c {
        '\u{bc}' => Some((1, 4)),
        '\u{bd}' => Some((1, 2)),
        '\u{be}' => Some((3, 4)),
        '\u{215b}' => Some((1, 8)),
        '\u{215c}' => Some((3, 8)),
        '\u{215d}' => Some((5, 8)),
        '\u{215e}' => Some((7, 8)),
        '\u{2150}'..='\u{215f}' | '\u{2189}' => Some((0, 0)),
        _ => None,
    }
}

/// `3 1/2 in`, `3-1/2 in`, `7/16 in` and `½ in` as exact decimals, for halves to hundred-and-twenty-eighths.
fn as_decimal(text: &str) -> Option<String> {
    let (negative, unsigned) = decimal::sign(text);
    let (whole, (numerator, denominator), unit) = fraction(unsigned)?;
    if whole > 0 && numerator >= denominator {
        return None;
    }
    let decimals = (1..=7_u32).find(|power| 1 << power == denominator)?;
    let parts = numerator.checked_mul(5_u64.pow(decimals))?;
    let coefficient = whole.checked_mul(10_u64.pow(decimals))?.checked_add(parts)?;
    let number = Decimal::new(negative, coefficient, -(decimals as i32))?;
    Some(format!("{} {}", number.plainly(), unit.trim_start_matches(is_space)))
}

/// Whole number, fraction and what follows them.
fn fraction(unsigned: &str) -> Option<(u64, (u64, u64), &str)> {
    let (first, rest) = decimal::digits(unsigned);
    if let Some((parts, rest)) = parts_behind(first, rest) {
        return Some((0, parts, rest));
    }
    let rest = rest.strip_prefix('-').unwrap_or_else(|| rest.trim_start_matches(is_space));
    let whole = if first.is_empty() { 0 } else { first.parse().ok()? };
    let mut characters = rest.chars();
    if let Some(parts) = characters.next().and_then(ready_made) {
        return Some((whole, parts, characters.as_str()));
    }
    let (numerator, rest) = decimal::digits(rest);
    parts_behind(numerator, rest).map(|(parts, rest)| (whole, parts, rest))
}

/// Numerator and denominator where `rest` goes on with a slash and digits.
fn parts_behind<'a>(numerator: &str, rest: &'a str) -> Option<((u64, u64), &'a str)> {
    let denominator = rest.trim_start_matches(is_space).strip_prefix(is_slash)?;
    let (denominator, rest) = decimal::digits(denominator.trim_start_matches(is_space));
    Some(((numerator.parse().ok()?, denominator.parse().ok()?), rest))
}

/// Whether a comma stands beside a digit.
pub(crate) fn has_comma(text: &str) -> bool {
    let (before, after) = (text.chars(), text.chars().skip(1));
    let beside = |(left, right): (char, char)| {
        (left == ',' && right.is_ascii_digit()) || (left.is_ascii_digit() && right == ',')
    };
    before.zip(after).any(beside)
}

/// The text with its comma read as a decimal sign or as a mark between thousands, if only one of these makes sense.
fn without_comma(text: &str, kind: &Kind) -> Option<String> {
    let (_, unsigned) = decimal::sign(text);
    let (number, _) = decimal::split_while(unsigned, |c| c.is_ascii_digit() || c == ',' || c == '.');
    let mut readings = Vec::new();
    if !number.contains('.') {
        readings.push(text.replace(',', "."));
    }
    if in_thousands(number, ',', '.') {
        readings.push(text.replace(',', ""));
    }
    if in_thousands(number, '.', ',') {
        readings.push(text.replace('.', "").replace(',', "."));
    }
    readings.retain(|reading| likely(reading, kind));
    match readings.as_slice() {
        [only] => Some(only.clone()),
        _ => None,
    }
}

/// Whether the digits before the decimal sign are grouped by threes with `mark`.
fn in_thousands(number: &str, mark: char, decimal_sign: char) -> bool {
    let (whole, fraction) = number.split_once(decimal_sign).unwrap_or((number, ""));
    let Some((first, groups)) = whole.split_once(mark) else {
        return false;
    };
    (1..=3).contains(&first.len())
        && !first.starts_with('0')
        && groups.split(mark).all(|group| group.len() == 3)
        && fraction.chars().all(|c| c.is_ascii_digit())
}

/// The number of the text written out, with its unit.
fn without_exponent(text: &str) -> Option<String> {
    let (number, rest) = decimal::scan(text, Form::SCIENTIFIC).ok()?;
    Some(format!("{} {}", number.plainly(), rest.trim_start_matches(is_space)).trim_end().to_owned())
}

/// The text with the unit that was probably meant.
fn with_unit_meant(text: &str, unit: &str, kind: &Kind) -> Option<String> {
    let number = text.strip_suffix(unit)?.trim_end_matches(is_space);
    if core::ptr::eq(kind, &TEMPERATURE) && unit == "K" {
        return in_celsius(number);
    }
    let unit = unit_meant(unit, kind)?;
    Some(format!("{number} {unit}").trim_end().to_owned())
}

/// An absolute temperature in kelvin as Celsius, if it is not rather a difference.
fn in_celsius(kelvin: &str) -> Option<String> {
    let (kelvin, _) = decimal::scan(kelvin, Form::PLAIN).ok()?;
    let celsius = kelvin.less_hundredths(27_315)?;
    let shop = -100.0..=TEMPERATURE.plausible;
    shop.contains(&celsius.times(1, 0)?).then(|| format!("{} C", celsius.plainly()))
}

/// The unit that was probably meant by another name or by other letters.
pub(crate) fn unit_meant(unit: &str, kind: &Kind) -> Option<&'static str> {
    let typed = folded(unit);
    let known = kind.units.iter().map(|known| known.0).find(|known| folded(known) == typed);
    known.or_else(|| kind.other_names.iter().find(|(name, _)| *name == typed).map(|(_, unit)| *unit))
}

/// A unit without what slips of the hand, the keyboard and the typesetter change: case, spaces, look-alikes, a full stop.
pub(super) fn folded(unit: &str) -> String {
    let letters = unit.chars().filter(|c| !is_space(*c)).flat_map(char::to_lowercase).map(|c| match c {
        '\u{b5}' | '\u{3bc}' => 'u',
        '\u{ba}' | '\u{2da}' => '\u{b0}',
        '\u{2206}' => '\u{3b4}',
        '\u{2033}' | '\u{201c}' | '\u{201d}' => '"',
        c => c,
    });
    let letters: String = letters.collect();
    let letters = letters.replace('\u{2103}', "\u{b0}c").replace('\u{2109}', "\u{b0}f").replace("''", "\"");
    letters.trim_end_matches('.').to_owned()
}
