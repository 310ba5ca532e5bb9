//! A field as it was typed, with its place in the document.

use super::decode::{Decode, Json, Place};
use super::document::Document;
use crate::bounds::{Bound, Verdict};
use crate::error::{Error, ErrorKind, moves_the_cursor};
use crate::quantity::{
    Angle, Expansion, Length, Temperature, TemperatureInterval, in_mm, parse_angle, parse_date,
    parse_expansion, parse_force, parse_hours, parse_length, parse_mass, parse_number, parse_probability,
    parse_roughness, parse_slope, parse_stiffness, parse_temperature, parse_temperature_difference,
    parse_volume,
};
use core::fmt;
use core::marker::PhantomData;
use schemars::JsonSchema;
use serde::{Serialize, Serializer};
use std::borrow::Cow;
use uom::si::temperature_interval::kelvin;

/// A field that holds a `K`, kept as it was typed until it is read.
#[derive(Clone, PartialEq, Eq)]
pub struct Entry<K> {
    text: String,
    path: String,
    kind: PhantomData<K>,
}

/// What an [`Entry`] can hold.
pub trait Kind {
    /// What the field holds, for the schema.
    const DESCRIPTION: &'static str;
    /// Example, for the schema.
    const EXAMPLE: &'static str;
    /// May the field be a JSON number?
    const NUMBER: bool = false;
    /// Is the field words or a date rather than a number, with a unit or without?
    const WORDS: bool = false;
}

/// A [`Kind`] that is a number in a fixed unit of the calculation.
pub trait Numeric: Kind {
    /// Unit of the number within the calculation.
    const UNIT: &'static str;
    /// The number in that unit.
    ///
    /// # Errors
    /// When the text is not of this kind.
    fn number(text: &str) -> Result<f64, Error>;
}

/// A word or sentence, not empty.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Words {}

/// A whole number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Count {}

/// A pure number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pure {}

/// A number without a unit of its own, to every digit of a double.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Real {}

/// A probability.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Probability {}

/// A date.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Date {}

/// A force.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Force {}

/// Hours run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Duration {}

/// A force per deflection.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stiffness {}

/// A change of a size per height.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Slope {}

/// A mass.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mass {}

/// A height of a roughness.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Roughness {}

/// A volume.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Volume {}

macro_rules! kinds {
    ($($kind:ty: $description:literal, $example:literal $(, number $number:literal)? $(, words $words:literal)?;)+) => {
        $(impl Kind for $kind {
            const DESCRIPTION: &'static str = $description;
            const EXAMPLE: &'static str = $example;
            $(const NUMBER: bool = $number;)?
            $(const WORDS: bool = $words;)?
        })+
    };
}

kinds! {
    Words: "text, not empty", "mic A", words true;
    Count: "whole number", "6", number true;
    Pure: "pure number", "2", number true;
    Real: "number in the unit of the caller", "0.5", number true;
    Probability: "probability, as a number or in %", "0.95", number true;
    Date: "ISO 8601 date", "2026-03-14", words true;
    Length: "length with its unit: mm, um, cm, m, in, thou, tenth", "96.012 mm";
    Temperature: "temperature with its unit: C, F", "27 C";
    TemperatureInterval: "temperature difference with its unit: K, delta C, delta F", "0.5 K";
    Expansion: "coefficient of linear expansion with its unit: /K, /F, ppm/K, ppm/F", "11.4e-6 /K";
    Angle: "angle with its unit: deg", "90 deg";
    Force: "force with its unit: N, daN, kN, kgf, lbf", "8 N";
    Duration: "hours run with their unit: h", "1200 h";
    Stiffness: "stiffness with its unit: N/um, N/mm, kN/mm", "10 N/um";
    Slope: "slope of a profile with its unit: um/mm, mm/m", "3 um/mm";
    Mass: "mass with its unit: g, kg, oz, lb", "512 g";
    Roughness: "roughness with its unit: um, nm, uin", "0.25 um";
    Volume: "volume with its unit: cm3, ml, l, in3", "52.4 cm3";
}

macro_rules! numeric {
    ($($kind:ty: $unit:literal, $parse:expr;)+) => {
        $(impl Numeric for $kind {
            const UNIT: &'static str = $unit;
            fn number(text: &str) -> Result<f64, Error> {
                let parse: fn(&str) -> Result<f64, Error> = $parse;
                parse(text)
            }
        })+
    };
}

numeric! {
    Length: "mm", |t| parse_length(t).map(|x| in_mm(x.quantity()));
    Temperature: "C", |t| parse_temperature(t).map(|x| x.quantity().celsius());
    TemperatureInterval: "K", |t| parse_temperature_difference(t).map(|x| x.quantity().get::<kelvin>());
    Expansion: "1/K", |t| parse_expansion(t).map(|x| x.quantity().per_kelvin());
    Angle: "deg", |t| parse_angle(t).map(|x| x.quantity().degrees());
    Force: "N", |t| parse_force(t).map(|x| x.quantity());
    Duration: "h", |t| parse_hours(t).map(|x| x.quantity());
    Stiffness: "N/um", |t| parse_stiffness(t).map(|x| x.quantity());
    Slope: "um/mm", |t| parse_slope(t).map(|x| x.quantity());
    Mass: "g", |t| parse_mass(t).map(|x| x.quantity());
    Roughness: "um", |t| parse_roughness(t).map(|x| x.quantity());
    Volume: "cm3", |t| parse_volume(t).map(|x| x.quantity());
    Pure: "1", |t| parse_number(t).map(|x| x.quantity());
    Probability: "1", |t| parse_probability(t).map(|x| x.quantity());
}

/// A number that was read from an entry and found possible.
#[derive(Debug, Clone, Default, PartialEq)]
pub(crate) struct Given {
    pub(crate) value: f64,
    pub(crate) unit: &'static str,
    pub(crate) text: String,
    pub(crate) path: String,
}

/// A job document within another document.
///
/// Its fields are named from its own root, as when it stands alone; what is refused in it is named from the root of the other.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(transparent)]
pub struct Nested(pub Document);

impl Decode for Nested {
    fn decode(place: Place<'_>) -> Result<Self, Error> {
        place.job().map(Nested)
    }
}

/// Any JSON within a document, with its numbers as they were typed.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(transparent)]
pub struct Tree(pub(crate) Json);

impl Decode for Tree {
    fn decode(place: Place<'_>) -> Result<Self, Error> {
        Ok(Tree(place.copied()))
    }
}

/// Something that is possible but odd, or that a reader of the report must know.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, JsonSchema)]
pub struct Warning {
    /// Kind: `odd_value`, `calibration_overdue`, `cannot_compare`, ...
    pub kind: String,
    /// JSON Pointer of the field.
    pub path: String,
    /// What to know.
    pub text: String,
}

impl<K: Kind> Entry<K> {
    /// A field outside any document.
    pub fn new(text: impl Into<String>) -> Self {
        Entry { text: text.into(), path: String::new(), kind: PhantomData }
    }

    /// What was typed.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// JSON Pointer of the field in its document; empty outside one.
    #[must_use]
    pub fn path(&self) -> &str {
        &self.path
    }

    pub(crate) fn refuse(&self, kind: ErrorKind, reason: impl Into<String>) -> Error {
        Error::new(kind, &self.text, reason).at(&self.path)
    }

    /// JSON Pointer of the object this field stands in.
    pub(crate) fn parent(&self) -> &str {
        self.path.rsplit_once('/').map_or("", |(parent, _)| parent)
    }
}

impl<K: Numeric> Entry<K> {
    /// The number, refused where it is impossible and with a warning where it is odd.
    pub(crate) fn read(&self, bound: &Bound, warnings: &mut Vec<Warning>) -> Result<Given, Error> {
        given(K::number(&self.text), K::UNIT, (&self.text, &self.path), bound, warnings)
    }
}

fn given(
    number: Result<f64, Error>,
    unit: &'static str,
    (text, path): (&str, &str),
    bound: &Bound,
    warnings: &mut Vec<Warning>,
) -> Result<Given, Error> {
    let value = number.map_err(|e| e.at(path))?;
    match bound.judge(value) {
        Verdict::Usual => {}
        Verdict::Odd => warnings.push(Warning {
            kind: "odd_value".to_owned(),
            path: path.to_owned(),
            text: format!("{text} is odd for the {}: usual is {}", bound.label, bound.usual_text()),
        }),
        Verdict::Impossible => return Err(bound.refuse(value, text).at(path)),
    }
    Ok(Given { value, unit, text: text.trim().to_owned(), path: path.to_owned() })
}

/// Most entries of a list. No job needs more; a list without end would make a report without end.
pub(crate) const MOST_ENTRIES: usize = 1000;
/// Longest words, in characters. A name is repeated beside every source of uncertainty it has a part in.
const LONGEST_WORDS: usize = 1000;

/// Refuses a list that is too long, at the first item too many.
pub(crate) fn check_length<T, K: Kind>(items: &[T], field: impl Fn(&T) -> &Entry<K>) -> Result<(), Error> {
    items.get(MOST_ENTRIES).map_or(Ok(()), |item| {
        Err(field(item).refuse(ErrorKind::TooLarge, format!("a list has at most {MOST_ENTRIES} entries")))
    })
}

impl Entry<Words> {
    /// The text, refused when it is blank, too long, or could move the cursor of whoever prints it.
    pub(crate) fn words(&self) -> Result<&str, Error> {
        if let Some(c) = self.text.chars().find(|c| moves_the_cursor(*c)) {
            let reason = format!("it holds the control character U+{:04X}", u32::from(c));
            return Err(self.refuse(ErrorKind::ControlCharacter, reason));
        }
        if self.text.chars().nth(LONGEST_WORDS).is_some() {
            let reason = format!("a name or note has at most {LONGEST_WORDS} characters");
            return Err(self.refuse(ErrorKind::TooLarge, reason));
        }
        match self.text.trim() {
            "" => Err(self.refuse(ErrorKind::MissingField, "it is blank")),
            words => Ok(words),
        }
    }
}

impl Entry<Real> {
    /// The number, as JSON has numbers; minus zero is zero.
    pub(crate) fn number(&self) -> Result<f64, Error> {
        match (serde_json::from_str::<f64>(&self.text), parse_number(&self.text)) {
            (Ok(value), _) => Ok(value + 0.0),
            // it knows the slips
            (Err(_), Err(error)) => Err(error.at(&self.path)),
            (Err(_), Ok(_)) => Err(self.refuse(ErrorKind::NotANumber, "a decimal number is needed")),
        }
    }
}

impl Entry<Count> {
    /// The whole number, within a range.
    pub(crate) fn count(&self, lower: u32, upper: u32) -> Result<u32, Error> {
        let value = parse_number(&self.text).map_err(|e| e.at(&self.path))?.quantity();
        let refused = if value.fract() != 0.0 {
            self.refuse(ErrorKind::NotANumber, "a whole number is needed")
        } else if value >= f64::from(lower) && value <= f64::from(upper) {
            #[expect(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "a whole number within the range of the type"
            )]
            return Ok(value as u32);
        } else {
            self.refuse(ErrorKind::OutOfRange, "outside the accepted range")
        };
        Err(refused.value(value).limits(f64::from(lower), f64::from(upper), "1"))
    }
}

impl Entry<Date> {
    pub(crate) fn date(&self) -> Result<jiff::civil::Date, Error> {
        parse_date(&self.text).map(|d| d.quantity()).map_err(|e| e.at(&self.path))
    }
}

impl<K> fmt::Debug for Entry<K> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?}", self.text)
    }
}

impl<K> Serialize for Entry<K> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.text)
    }
}

impl<K: Kind> Decode for Entry<K> {
    /// A number without its unit is read, to say that the unit is missing.
    fn decode(place: Place<'_>) -> Result<Self, Error> {
        let (text, path) = place.typed(!K::WORDS)?;
        Ok(Entry { text, path, kind: PhantomData })
    }
}

impl<K: Kind> JsonSchema for Entry<K> {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> Cow<'static, str> {
        Cow::Borrowed(K::DESCRIPTION)
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let types: &[&str] = if K::NUMBER { &["string", "number"] } else { &["string"] };
        schemars::json_schema!({
            "type": types,
            "minLength": 1,
            "description": K::DESCRIPTION,
            "examples": [K::EXAMPLE],
        })
    }
}
