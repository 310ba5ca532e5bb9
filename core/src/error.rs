//! What is refused, and everything a caller needs to say so.
//!
//! An [`Error`] is data first: its kind, the field, the refused text or value, the limits and, where a slip of unit
//! explains the value, what was probably meant. The sentence is made from that data.

use core::fmt;

/// Kinds of refusal with their stable number (C status), name (JSON, Python) and meaning.
macro_rules! kinds {
    ($($(#[doc = $doc:literal])+ $variant:ident = $code:literal $name:literal;)+) => {
        /// The kind of a refusal. Numbers are stable; a retired number is never used again.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        pub enum ErrorKind {
            $($(#[doc = $doc])+ $variant,)+
        }

        impl ErrorKind {
            /// Every kind, in order of number.
            pub const ALL: &'static [ErrorKind] = &[$(ErrorKind::$variant,)+];

            /// The stable number; never 0, which is success in C.
            #[must_use]
            pub const fn code(self) -> i32 {
                match self { $(ErrorKind::$variant => $code,)+ }
            }

            /// The stable name used in JSON and Python.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(ErrorKind::$variant => $name,)+ }
            }

            /// One sentence on the kind.
            #[must_use]
            pub const fn meaning(self) -> &'static str {
                match self { $(ErrorKind::$variant => concat!($($doc),+).trim_ascii(),)+ }
            }
        }
    };
}

kinds! {
    /// The text is not valid UTF-8.
    NotUtf8 = 101 "not_utf8";
    /// The text is larger than is accepted.
    TooLarge = 102 "too_large";
    /// The text is not valid JSON.
    Syntax = 103 "syntax";
    /// The text is nested more deeply than is accepted.
    TooDeep = 104 "too_deep";
    /// A field holds another type of JSON value than it should.
    WrongType = 105 "wrong_type";
    /// A field is not known here.
    UnknownField = 106 "unknown_field";
    /// A field stands twice in the same object.
    RepeatedField = 107 "repeated_field";
    /// A required field is missing.
    MissingField = 108 "missing_field";
    /// A word is not one of the words accepted here.
    UnknownChoice = 109 "unknown_choice";
    /// The document's format or version is not one this library reads.
    UnknownFormat = 110 "unknown_format";

    /// The text does not hold a decimal number.
    NotANumber = 201 "not_a_number";
    /// A number stands without a unit.
    MissingUnit = 202 "missing_unit";
    /// The unit is unknown or measures something else.
    WrongUnit = 203 "wrong_unit";
    /// A fraction of an inch is not a measurement.
    Fraction = 204 "fraction";
    /// A comma stands where a decimal point should.
    DecimalComma = 205 "decimal_comma";
    /// The number has more digits than are accepted.
    TooManyDigits = 206 "too_many_digits";
    /// The number is not finite.
    NotFinite = 207 "not_finite";
    /// The text is not an ISO 8601 date.
    NotADate = 208 "not_a_date";
    /// A name or note holds a control character.
    ControlCharacter = 209 "control_character";
    /// The text is not a formula in ordinary algebra, or a name cannot stand in one.
    NotAnExpression = 210 "not_an_expression";

    /// The value is outside what is possible for this quantity.
    OutOfRange = 301 "out_of_range";
    /// A lower bound is above its upper bound, or rows are out of order.
    OutOfOrder = 302 "out_of_order";
    /// A name or number that must be unique stands twice.
    Repeated = 303 "repeated";
    /// A name refers to nothing in the document.
    UnknownName = 304 "unknown_name";
    /// Two fields contradict each other.
    Contradiction = 305 "contradiction";
    /// A temperature is outside the range of the expansion law.
    OutsideLaw = 306 "outside_law";

    /// The caller stopped the work.
    Stopped = 401 "stopped";
}

/// The range a value was held against.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Smallest accepted value.
    pub lower: f64,
    /// Largest accepted value.
    pub upper: f64,
    /// Unit of both.
    pub unit: &'static str,
}

/// A refusal, as data. See the [module](self).
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{}", self.sentence())]
pub struct Error(Box<Refusal>);

#[derive(Debug, Clone, PartialEq)]
struct Refusal {
    kind: ErrorKind,
    field: String,
    refused: String,
    value: Option<f64>,
    limits: Option<Limits>,
    reason: String,
    did_you_mean: Option<String>,
}

/// Longest piece of refused text that is repeated in an error, in characters.
const LONGEST_QUOTE: usize = 80;

// a refusal is rare: what leads to one is compiled for size
impl Error {
    /// A refusal of `refused` for `reason`, not yet tied to a field.
    #[cold]
    pub(crate) fn new(kind: ErrorKind, refused: impl Into<String>, reason: impl Into<String>) -> Self {
        Error(Box::new(Refusal {
            kind,
            field: String::new(),
            refused: shortened(refused.into()),
            value: None,
            limits: None,
            reason: reason.into(),
            did_you_mean: None,
        }))
    }

    /// The same refusal, tied to a field unless it already is.
    #[cold]
    pub(crate) fn at(mut self, field: &str) -> Self {
        if self.0.field.is_empty() && !self.is_stop() {
            self.0.field = field.to_owned();
        }
        self
    }

    /// The same refusal, at another field.
    #[cold]
    pub(crate) fn moved(mut self, field: String) -> Self {
        if !self.is_stop() {
            self.0.field = field;
        }
        self
    }

    /// A stop has no field: nothing that was given is refused.
    fn is_stop(&self) -> bool {
        self.0.kind == ErrorKind::Stopped
    }

    /// The same refusal, of a row: its field is parameter and place. Of an element of more axes each axis adds its own: `bore_mm/1/3`.
    #[must_use]
    #[cold]
    pub fn in_row(self, row: usize) -> Self {
        let field = format!("{}/{row}", self.field());
        self.moved(field)
    }

    /// The same refusal, of a document that stands at `place` of another: its JSON Pointer goes on from there.
    #[cold]
    pub(crate) fn below(self, place: &str) -> Self {
        let field = format!("{place}{}", self.field());
        self.moved(field)
    }

    /// The same refusal, with its field below `parent`.
    #[must_use]
    #[cold]
    pub fn under(self, parent: &str) -> Self {
        let field =
            if self.field().is_empty() { parent.to_owned() } else { format!("{parent}/{}", self.field()) };
        self.moved(field)
    }

    /// The same refusal as that of a parameter, for callers that know its name.
    #[must_use]
    #[cold]
    pub fn named(self, parameter: &str) -> Self {
        self.at(parameter)
    }

    #[cold]
    pub(crate) fn value(mut self, value: f64) -> Self {
        self.0.value = Some(value);
        self
    }

    #[cold]
    pub(crate) fn limits(mut self, lower: f64, upper: f64, unit: &'static str) -> Self {
        self.0.limits = Some(Limits { lower, upper, unit });
        self
    }

    #[cold]
    pub(crate) fn suggest(mut self, meant: Option<String>) -> Self {
        self.0.did_you_mean = meant;
        self
    }

    /// Kind of the refusal.
    #[must_use]
    pub fn kind(&self) -> ErrorKind {
        self.0.kind
    }

    /// The refused field: a JSON Pointer into the document, or the name of a parameter.
    #[must_use]
    pub fn field(&self) -> &str {
        &self.0.field
    }

    /// What was refused, as it was given (cut after 80 characters).
    #[must_use]
    pub fn refused(&self) -> &str {
        &self.0.refused
    }

    /// The refused value as a number, in the unit of [`Error::accepted`], where there is one.
    #[must_use]
    pub fn refused_value(&self) -> Option<f64> {
        self.0.value
    }

    /// The accepted range, where there is one.
    #[must_use]
    pub fn accepted(&self) -> Option<Limits> {
        self.0.limits
    }

    /// Why it was refused.
    #[must_use]
    pub fn reason(&self) -> &str {
        &self.0.reason
    }

    /// What was probably meant, where a slip explains the value.
    #[must_use]
    pub fn did_you_mean(&self) -> Option<&str> {
        self.0.did_you_mean.as_deref()
    }

    fn sentence(&self) -> Sentence<'_> {
        Sentence(&self.0)
    }
}

/// One line: field, what was refused, why, what is accepted, what was probably meant.
struct Sentence<'a>(&'a Refusal);

impl fmt::Display for Sentence<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let r = self.0;
        if !r.field.is_empty() {
            write!(f, "{}: ", printable(&r.field))?;
        }
        // of a missing field only its name is known, and that stands in front
        if !r.refused.is_empty() && r.kind != ErrorKind::MissingField {
            write!(f, "\"{}\" is refused: ", printable(&r.refused))?;
        }
        f.write_str(&r.reason)?;
        if let Some(l) = r.limits {
            write!(f, "; accepted: {} to {}", written(rounded(l.lower)), written(rounded(l.upper)))?;
            if !l.unit.is_empty() && l.unit != "1" {
                write!(f, " {}", l.unit)?;
            }
        }
        if let Some(meant) = &r.did_you_mean {
            write!(f, "; did you mean {meant}?")?;
        }
        Ok(())
    }
}

/// Does a character move the cursor of whoever prints it, or turn the text around?
pub(crate) fn moves_the_cursor(c: char) -> bool {
    let turns = matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    c.is_control() || turns || matches!(c, '\u{2028}' | '\u{2029}')
}

/// A number as a person would write it: of a very large one the exponent, not a hundred digits.
pub(crate) fn written(value: f64) -> String {
    if value.abs() >= 1e16 && value.is_finite() { format!("{value:e}") } else { value.to_string() }
}

/// A range is a guide: six digits are enough to read, the numbers themselves are in the data.
fn rounded(value: f64) -> f64 {
    format!("{value:.5e}").parse().unwrap_or(value)
}

/// A refused text may hold anything; a sentence must not move the cursor of whoever prints it.
fn printable(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match moves_the_cursor(c) {
            true => out.extend(c.escape_unicode()),
            false => out.push(c),
        }
    }
    out
}

fn shortened(text: String) -> String {
    match text.char_indices().nth(LONGEST_QUOTE) {
        Some((cut, _)) => format!("{}...", &text[..cut]),
        None => text,
    }
}
