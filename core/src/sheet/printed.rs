//! What a printed text says.

use super::document::Dimension;
use super::exact::{Fraction, Span};
use super::number::Number;
use crate::error::{Error, ErrorKind};
use crate::quantity::decimal::{self, Form};
use crate::quantity::notation::is_space;
use crate::quantity::refusal::{self, Fault};

/// Whether a text is one value, or all that is allowed to one side of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    Both,
    AtMost,
    AtLeast,
}

/// What a ratio is per.
#[derive(Debug, Clone, Copy)]
pub(super) struct Base {
    number: Number,
    /// a base without decimals is exact: per 100 mm, per inch
    half: i128,
    /// the unit alone was printed
    bare: bool,
}

/// What a printed text says.
#[derive(Debug, Clone, Copy)]
pub(super) struct Reading {
    pub(super) first: Number,
    /// the other end of a range
    pub(super) second: Option<Number>,
    pub(super) side: Side,
    base: Option<Base>,
}

impl Reading {
    /// The ends as printed; both the same for a single value.
    pub(super) fn ends(&self) -> [Number; 2] {
        [self.first, self.second.unwrap_or(self.first)]
    }

    /// The ends by size.
    pub(super) fn ordered(&self) -> [Number; 2] {
        let [first, second] = self.ends();
        if first.value > second.value { [second, first] } else { [first, second] }
    }

    /// What one of its numbers may have been.
    pub(super) fn span(&self, number: &Number) -> Option<Span> {
        let (low, high) = (number.value - number.half, number.value + number.half);
        match self.base {
            None => Some(Span::around(number.value, number.half)),
            Some(Base { number: base, half, .. }) => {
                let (least, most) = (base.value - half, base.value + half);
                let low = Fraction::new(low, if low < 0 { least } else { most })?;
                let high = Fraction::new(high, if high < 0 { most } else { least })?;
                Some(Span { low, high })
            }
        }
    }

    /// From its first end to its second.
    pub(super) fn whole_span(&self) -> Option<Span> {
        let [low, high] = self.ordered();
        Some(Span { low: self.span(&low)?.low, high: self.span(&high)?.high })
    }

    /// Where a number of this text lies without its rounding: a length, a temperature, a ratio.
    pub(super) fn point(&self, number: &Number) -> Option<Fraction> {
        Fraction::new(number.value, self.base.map_or(1, |base| base.number.value))
    }

    /// The text that would say `value` in place of `number`.
    pub(super) fn render(&self, number: &Number, value: Fraction) -> Option<String> {
        let base = self.base.map_or(1, |base| base.number.value);
        let text = number.render(value.times(Fraction::whole(base))?)?;
        Some(format!("{text}{}", self.per()))
    }

    /// One of its numbers as it reads, with the base of a ratio.
    pub(super) fn written(&self, number: &Number) -> String {
        format!("{number}{}", self.per())
    }

    fn per(&self) -> String {
        match self.base {
            None => String::new(),
            Some(base) if base.bare => format!(" per {}", base.number.unit.name),
            Some(base) => format!(" per {}", base.number),
        }
    }

    pub(super) fn is_ratio(&self) -> bool {
        self.base.is_some()
    }
}

/// A text that cannot be read, and the number of it that is at fault.
#[derive(Debug, Clone)]
pub(super) struct Unreadable {
    pub(super) error: Error,
    digits: String,
    unit: String,
}

impl Unreadable {
    fn new(error: Error, piece: Piece<'_>) -> Self {
        Unreadable { error, digits: piece.digits.to_owned(), unit: piece.unit.to_owned() }
    }

    /// The printed text with what was probably meant in place of the number at fault.
    pub(super) fn replaced_in(&self, printed: &str, meant: &str) -> String {
        let (digits, unit) = meant.split_once(' ').unwrap_or((meant, ""));
        let text = printed.replacen(&self.digits, digits, 1);
        if self.unit.is_empty() || self.unit == unit { text } else { text.replacen(&self.unit, unit, 1) }
    }

    /// The number with its degree, where something unreadable stands before the C or F.
    pub(super) fn without_degree_sign(&self, dimension: Dimension) -> Option<String> {
        let degrees = matches!(dimension, Dimension::Temperature | Dimension::Difference);
        let scale = self.unit.chars().last().filter(|c| degrees && matches!(c, 'C' | 'F'))?;
        let short = self.unit.chars().count() <= 3 && !self.digits.is_empty();
        let meant = format!("{} {scale}", self.digits);
        (short && read(&meant, dimension).is_ok()).then_some(meant)
    }
}

/// A number and the text of its unit.
#[derive(Debug, Clone, Copy)]
struct Piece<'t> {
    digits: &'t str,
    unit: &'t str,
}

/// Reads a printed text.
pub(super) fn read(text: &str, dimension: Dimension) -> Result<Reading, Unreadable> {
    let (side, text) = without_words(text);
    let (value, base) = match dimension {
        Dimension::Ratio => split_ratio(text)?,
        _ => (text, None),
    };
    let base = base.map(read_base).transpose()?;
    let (first, second) = split_range(value);
    let own_unit = base.map_or("", |base| base.number.unit.name);
    let last_unit = [second.map_or("", |piece| piece.unit), first.unit, own_unit];
    let unit = last_unit.into_iter().find(|unit| !unit.is_empty()).unwrap_or_default();
    let with_unit = |piece: Piece<'_>| {
        let own = if piece.unit.is_empty() { unit } else { piece.unit };
        number(Piece { unit: own, ..piece }, dimension)
    };
    let mut first = with_unit(first)?;
    let mut second = second.map(with_unit).transpose()?;
    if let Some(second) = &mut second {
        first.as_fine_as(second);
        second.as_fine_as(&first);
    }
    Ok(Reading { first, second, side, base })
}

/// Words that stand beside a number on a sheet.
const WORDS: &[(&str, Side)] = &[
    ("not more than", Side::AtMost),
    ("up to", Side::AtMost),
    ("maximum", Side::AtMost),
    ("max.", Side::AtMost),
    ("max", Side::AtMost),
    ("at least", Side::AtLeast),
    ("minimum", Side::AtLeast),
    ("min.", Side::AtLeast),
    ("min", Side::AtLeast),
    ("approximately", Side::Both),
    ("approx.", Side::Both),
    ("approx", Side::Both),
    ("about", Side::Both),
];

/// The text without a word before or behind it.
fn without_words(text: &str) -> (Side, &str) {
    let text = text.trim();
    for (word, side) in WORDS {
        if let Some(rest) = behind(text, word) {
            return (*side, rest);
        }
        let cut = text.len().saturating_sub(word.len());
        if text.get(cut..).is_some_and(|end| end.eq_ignore_ascii_case(word)) {
            return (*side, text.get(..cut).unwrap_or_default().trim_end());
        }
    }
    (Side::Both, text)
}

/// What follows a word at the start, in whatever letters, and the spaces behind it.
fn behind<'t>(text: &'t str, word: &str) -> Option<&'t str> {
    let start = text.get(..word.len())?;
    let rest = text.get(word.len()..)?;
    let ends = !rest.starts_with(char::is_alphabetic);
    (ends && start.eq_ignore_ascii_case(word)).then(|| rest.trim_start())
}

fn is_dash(c: char) -> bool {
    matches!(c, '-' | '\u{2010}'..='\u{2015}' | '\u{2026}' | '\u{2212}' | '~')
}

/// The one or two numbers of a text; what is no number stays with its unit and is refused there.
fn split_range(text: &str) -> (Piece<'_>, Option<Piece<'_>>) {
    let (digits, rest) = split_number(text);
    let parts =
        rest.split_once(" to ").or_else(|| rest.split_once("...")).or_else(|| rest.split_once(is_dash));
    match parts {
        Some((unit, other)) if !digits.is_empty() && !unit.contains(|c: char| c.is_ascii_digit()) => {
            let (other_digits, other_unit) = split_number(other.trim());
            let other = Piece { digits: other_digits, unit: other_unit.trim() };
            (Piece { digits, unit: unit.trim() }, Some(other))
        }
        _ => (Piece { digits, unit: rest.trim() }, None),
    }
}

/// The number at the start, points and commas included, and the rest. The word for nothing is a zero.
fn split_number(text: &str) -> (&str, &str) {
    if let Some(word) = ["zero", "nil"].iter().find(|word| behind(text, word).is_some()) {
        return ("0", text.get(word.len()..).unwrap_or_default());
    }
    let (_, unsigned) = decimal::sign(text);
    let sign = text.len() - unsigned.len();
    let digits = unsigned.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',');
    text.split_at_checked(sign + digits.unwrap_or(unsigned.len())).unwrap_or((text, ""))
}

/// The value of a ratio and what it is per.
fn split_ratio(text: &str) -> Result<(&str, Option<&str>), Unreadable> {
    let parts = text.split_once(" per ").or_else(|| text.split_once('/'));
    let reason = "a ratio names what it is per, for example per 100 mm or per inch";
    match parts {
        Some((value, base)) => Ok((value.trim(), Some(base.trim()))),
        None => Err(Unreadable::new(Error::new(ErrorKind::MissingUnit, text, reason), split_range(text).0)),
    }
}

fn read_base(text: &str) -> Result<Base, Unreadable> {
    let text = text.split_once(" of ").map_or(text, |(base, _)| base);
    let (digits, unit) = split_number(text);
    let bare = digits.is_empty();
    let piece = Piece { digits: if bare { "1" } else { digits }, unit: unit.trim() };
    let number = number(piece, Dimension::Ratio)?;
    let half = if number.decimals == 0 { 0 } else { number.half };
    let reason = "a ratio is per a length above 0";
    match number.value > half {
        true => Ok(Base { number, half, bare }),
        false => Err(Unreadable::new(Error::new(ErrorKind::OutOfRange, text, reason), piece)),
    }
}

/// The number of a piece; the refusals are those of every other quantity.
fn number(piece: Piece<'_>, dimension: Dimension) -> Result<Number, Unreadable> {
    let (kind, text) = (dimension.kind(), format!("{} {}", piece.digits, piece.unit));
    let refused = |fault: Fault| Unreadable::new(refusal::refuse(text.trim(), kind, fault), piece);
    if refusal::has_fraction(&text) {
        return Err(refused(Fault::Fraction));
    }
    if refusal::has_comma(&text) {
        return Err(refused(Fault::Comma));
    }
    let (decimal, rest) = decimal::scan(piece.digits, Form::PLAIN).map_err(refused)?;
    if !rest.is_empty() {
        return Err(refused(Fault::SecondNumber));
    }
    let unit = piece.unit.trim_matches(is_space);
    let named = dimension.unit_named(unit).ok_or_else(|| refused(refusal::unit_fault(unit, kind)))?;
    let decimals = decimal.exponent.unsigned_abs();
    let reason = "it is larger than anything on a sheet";
    Number::new(decimal.negative, decimal.coefficient, decimals, named)
        .ok_or_else(|| Unreadable::new(Error::new(ErrorKind::OutOfRange, text.trim(), reason), piece))
}
