//! The working: every number of a calculation with the numbers it came from, as data.
//!
//! A checker that knows `+ - * /` and `sqrt`, `abs`, `max`, `min`, `erfc`, `t_factor`, `t_below` re-evaluates each step from its numbers in
//! and gets its number out to the bit. Stacks also need `sum`, which carries the rounding of every addition along (Neumaier, Zeitschrift für
//! angewandte Mathematik und Mechanik 54 (1974)), `root_sum_square`, which divides by the largest first, and, in a formula of the document, its
//! own functions and powers ([`Model::from_text`](super::Model::from_text)). No step holds a number that is not an input, a constant with a source, or the
//! result of an earlier step, save the whole numbers written in its formula.

use schemars::JsonSchema;
use serde::Serialize;

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
    pub id: String,
    /// Symbol.
    pub symbol: String,
    /// The number in `unit`.
    pub value: f64,
    /// Unit.
    pub unit: String,
    /// JSON Pointer of the field.
    pub path: String,
    /// The field as it was typed.
    pub typed: String,
}

/// A constant with its source.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Constant {
    /// Name within the working: `k0`, `k1`, ...
    pub id: String,
    /// Symbol.
    pub symbol: String,
    /// The number in `unit`.
    pub value: f64,
    /// Unit.
    pub unit: String,
    /// Where it comes from.
    pub source: String,
}

/// One step.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Step {
    /// Name within the working: `s0`, `s1`, ...
    pub id: String,
    /// What the step belongs to, in words.
    pub of: String,
    /// Symbol of the result.
    pub symbol: String,
    /// The formula, in the symbols of `in`.
    pub formula: String,
    /// The id behind each symbol.
    #[serde(rename = "in")]
    pub arguments: Arguments,
    /// The result in `unit`.
    pub value: f64,
    /// Unit.
    pub unit: String,
    /// Where the formula comes from.
    pub source: String,
    /// JSON Pointers into the report of the places where this number stands.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub results: Vec<String>,
}

/// Symbols of a formula and the ids behind them, in the order of the formula.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Arguments(pub Vec<(String, String)>);

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
