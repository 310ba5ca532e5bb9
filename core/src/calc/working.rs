//! The working: every number of a calculation with the numbers it came from, as data.
//!
//! A checker that knows `+ - * /` and `sqrt`, `abs`, `max`, `min`, `erfc`, `t_factor`, `t_below` re-evaluates each step from its numbers in
//! and gets its number out to the bit. Stacks also need `sum`, which carries the rounding of every addition along (Neumaier, Zeitschrift für
//! angewandte Mathematik und Mechanik 54 (1974)), `root_sum_square`, which divides by the largest first, and, in a formula of the document, its
//! own functions and powers ([`Model::from_text`](super::Model::from_text)). No step holds a number that is not an input, a constant with a source, or the
//! result of an earlier step, save the whole numbers written in its formula.

use core::fmt;
use core::ops::Deref;
use schemars::JsonSchema;
use serde::Serialize;
use std::sync::Arc;

/// A text of the working. Formulas, sources and headings stand in many steps: each is kept once.
#[derive(Clone, PartialEq, Eq, Hash)]
pub struct Text(Arc<str>);

impl Deref for Text {
    type Target = str;
    fn deref(&self) -> &str {
        &self.0
    }
}

impl core::borrow::Borrow<str> for Text {
    fn borrow(&self) -> &str {
        self
    }
}

impl From<&str> for Text {
    fn from(text: &str) -> Self {
        Text(Arc::from(text))
    }
}

impl PartialEq<str> for Text {
    fn eq(&self, other: &str) -> bool {
        **self == *other
    }
}

impl PartialEq<&str> for Text {
    fn eq(&self, other: &&str) -> bool {
        **self == **other
    }
}

impl fmt::Display for Text {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self)
    }
}

impl fmt::Debug for Text {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(&**self, f)
    }
}

impl Serialize for Text {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self)
    }
}

impl JsonSchema for Text {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> std::borrow::Cow<'static, str> {
        String::schema_name()
    }
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        String::json_schema(generator)
    }
}

/// The working of a calculation.
#[derive(Debug, Clone, Default, PartialEq, Serialize, JsonSchema)]
pub struct Working {
    /// Numbers given by the user.
    pub inputs: Vec<Input>,
    /// Constants and where they come from.
    pub constants: Vec<Constant>,
    /// The steps, each after those it needs.
    pub steps: Vec<Step>,
}

/// A number given by the user.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Input {
    /// Name within the working: `i0`, `i1`, ...
    pub id: Text,
    /// Symbol.
    pub symbol: Text,
    /// The number in `unit`.
    pub value: f64,
    /// Unit.
    pub unit: Text,
    /// JSON Pointer of the field.
    pub path: String,
    /// The field as it was typed.
    pub typed: String,
}

/// A constant with its source.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Constant {
    /// Name within the working: `k0`, `k1`, ...
    pub id: Text,
    /// Symbol.
    pub symbol: Text,
    /// The number in `unit`.
    pub value: f64,
    /// Unit.
    pub unit: Text,
    /// Where it comes from.
    pub source: Text,
}

/// One step.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Step {
    /// Name within the working: `s0`, `s1`, ...
    pub id: Text,
    /// What the step belongs to, in words.
    pub of: Text,
    /// Symbol of the result.
    pub symbol: Text,
    /// The formula, in the symbols of `in`.
    pub formula: Text,
    /// The id behind each symbol.
    #[serde(rename = "in")]
    pub arguments: Arguments,
    /// The result in `unit`.
    pub value: f64,
    /// Unit.
    pub unit: Text,
    /// Where the formula comes from.
    pub source: Text,
    /// JSON Pointers into the report of the places where this number stands.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub results: Vec<String>,
}

/// Symbols of a formula and the ids behind them, in the order of the formula.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Arguments(pub Vec<(Text, Text)>);

impl Serialize for Arguments {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(symbol, id)| (symbol, id)))
    }
}

impl JsonSchema for Arguments {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Arguments".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "object", "additionalProperties": { "type": "string" } })
    }
}
