//! What is refused, and how: every error names the field, what was refused, why, what is accepted and what was probably meant.
//!
//! `vectors/refused.csv` holds whole documents with what a user needs to see, written by hand; `vectors/README.md` explains it. The
//! generated refusals put every kind of slip into every field of the jobs; which fields there are and what they hold is read from
//! the JSON Schema.

use gaugepoint::error::Limits;
use gaugepoint::job::{Count, Date, Kind, Probability, Pure, Words};
use gaugepoint::quantity::{Angle, Expansion, Length, Temperature, TemperatureInterval};
use gaugepoint::{Document, Error, ErrorKind, Options, Report, assess, assess_json_bytes};
use gaugepoint_tests::{JOBS, job, text, workspace};
use proptest::prelude::{Just, Strategy, any};
use proptest::sample::Index;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use proptest::{collection, prop_oneof};
use serde_json::{Value, json};
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::panic::{AssertUnwindSafe, catch_unwind};

const BASE: &str = "tests/vectors/refused/base.json";

/// Assesses a job as the hosts do; a panic is a failure, whatever the input.
fn assessed(job: &[u8]) -> Result<String, Error> {
    catch_unwind(AssertUnwindSafe(|| assess_json_bytes(job, Options::default())))
        .unwrap_or_else(|_| panic!("a panic on {}", String::from_utf8_lossy(job)))
}

// --- the vectors ---

/// A row of `refused.csv`.
struct Row {
    cells: BTreeMap<String, Vec<u8>>,
}

impl Row {
    fn bytes(&self, column: &str) -> &[u8] {
        self.cells.get(column).unwrap_or_else(|| panic!("no column {column}"))
    }

    fn text(&self, column: &str) -> &str {
        str::from_utf8(self.bytes(column)).expect("UTF-8")
    }

    fn number(&self, column: &str) -> Option<f64> {
        let text = self.text(column);
        (!text.is_empty()).then(|| text.parse().unwrap_or_else(|_| panic!("{column}: {text}")))
    }

    fn document(&self) -> Vec<u8> {
        match self.text("file") {
            "" => {
                let count = self.text("count").parse().expect("a count");
                [self.bytes("prefix"), &self.bytes("unit").repeat(count), self.bytes("suffix")].concat()
            }
            file => std::fs::read(workspace(&format!("tests/vectors/refused/{file}"))).expect(file),
        }
    }
}

/// A cell with each `%` and its two hexadecimal digits turned into that byte.
fn decoded(cell: &str) -> Vec<u8> {
    let mut parts = cell.split('%');
    let mut out = parts.next().unwrap_or_default().as_bytes().to_vec();
    for part in parts {
        let (byte, rest) = part.split_at(2);
        out.push(u8::from_str_radix(byte, 16).expect("two hexadecimal digits"));
        out.extend_from_slice(rest.as_bytes());
    }
    out
}

fn rows() -> Vec<Row> {
    let table = text("tests/vectors/refused.csv");
    let mut lines = table.lines();
    let names: Vec<&str> = lines.next().expect("a heading").split(',').collect();
    let row = |line: &str| {
        let cells: Vec<&str> = line.split(',').collect();
        assert_eq!(cells.len(), names.len(), "{line}");
        let cells = names.iter().zip(cells).map(|(name, cell)| ((*name).to_owned(), decoded(cell)));
        Row { cells: cells.collect() }
    };
    lines.map(row).collect()
}

fn near(a: Option<f64>, b: Option<f64>) -> bool {
    match (a, b) {
        (Some(a), Some(b)) => (a - b).abs() <= 1e-9 * a.abs().max(b.abs()),
        (None, None) => true,
        _ => false,
    }
}

/// Where an error differs from what the row asks for.
fn differences(row: &Row, error: &Error) -> Vec<String> {
    let mut out = Vec::new();
    let mut compare = |column: &str, found: &str| {
        if row.text(column) != found {
            out.push(format!("{column}: asked {:?}, found {found:?}", row.text(column)));
        }
    };
    compare("kind", error.kind().name());
    compare("path", error.field());
    compare("refused", error.refused());
    let range = error.accepted();
    let unit = range.map_or("", |l| l.unit);
    compare("limits_unit", unit);
    let ends = |end: fn(Limits) -> f64| range.map(end);
    for (column, found) in
        [("value", error.refused_value()), ("lower", ends(|l| l.lower)), ("upper", ends(|l| l.upper))]
    {
        if !near(row.number(column), found) {
            out.push(format!("{column}: asked {:?}, found {found:?}", row.text(column)));
        }
    }
    let (asked, found) = (row.text("did_you_mean_contains"), error.did_you_mean());
    if asked.is_empty() != found.is_none() || !found.unwrap_or_default().contains(asked) {
        out.push(format!("did you mean: asked {asked:?}, found {found:?}"));
    }
    if error.reason().is_empty() {
        out.push("no reason".to_owned());
    }
    out
}

#[test]
fn the_base_of_the_refused_jobs_is_accepted() {
    let report: Report = assess(&Document::from_json(&text(BASE)).expect("a job"), Options::default())
        .unwrap_or_else(|e| panic!("{e}"));
    assert!(report.warnings.is_empty(), "{:?}", report.warnings);
    assert!(report.cylinders.iter().all(|c| c.missing.is_empty()));
}

#[test]
fn every_refused_job_is_refused_as_the_table_says() {
    let rows = rows();
    let mut wrong = Vec::new();
    for row in &rows {
        let found = match assessed(&row.document()) {
            Ok(_) => vec!["accepted".to_owned()],
            Err(error) => differences(row, &error),
        };
        wrong.extend(found.into_iter().map(|what| format!("{}: {what}", row.text("id"))));
    }
    assert!(wrong.is_empty(), "{} of {} rows:\n{}", wrong.len(), rows.len(), wrong.join("\n"));
    println!("{} refused jobs", rows.len());
}

/// No file without a row, no row without a file, no kind that the core can give without a row.
#[test]
fn the_table_is_complete() {
    let rows = rows();
    let ids: BTreeSet<&str> = rows.iter().map(|r| r.text("id")).collect();
    assert_eq!(ids.len(), rows.len(), "an id stands twice");
    let listed: BTreeSet<String> = rows.iter().map(|r| r.text("file").to_owned()).filter(|f| !f.is_empty()).collect();
    let folder = std::fs::read_dir(workspace("tests/vectors/refused")).expect("the folder");
    let present: BTreeSet<String> = folder
        .map(|entry| entry.expect("an entry").file_name().into_string().expect("UTF-8"))
        .filter(|name| name.ends_with(".json") && name != "base.json")
        .collect();
    assert_eq!(listed, present);
    let shown: BTreeSet<&str> = rows.iter().map(|r| r.text("kind")).collect();
    let kinds: BTreeSet<&str> = ErrorKind::ALL.iter().map(|k| k.name()).collect();
    assert_eq!(shown, kinds);
}

// --- generated refusals ---

/// What a text field holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Holds {
    Words,
    Choice,
    Date,
    Count,
    Pure,
    Probability,
    Length,
    Temperature,
    Difference,
    Expansion,
    Angle,
}

/// Every kind of field with the example by which the schema tells it, and a unit of it.
const KINDS: &[(Holds, &str, &str)] = &[
    (Holds::Words, Words::EXAMPLE, ""),
    (Holds::Date, Date::EXAMPLE, ""),
    (Holds::Count, Count::EXAMPLE, ""),
    (Holds::Pure, Pure::EXAMPLE, ""),
    (Holds::Probability, Probability::EXAMPLE, ""),
    (Holds::Length, <Length as Kind>::EXAMPLE, "mm"),
    (Holds::Temperature, <Temperature as Kind>::EXAMPLE, "C"),
    (Holds::Difference, <TemperatureInterval as Kind>::EXAMPLE, "K"),
    (Holds::Expansion, <Expansion as Kind>::EXAMPLE, "/K"),
    (Holds::Angle, <Angle as Kind>::EXAMPLE, "deg"),
];

impl Holds {
    fn of_example(example: &str) -> Holds {
        KINDS.iter().find(|k| k.1 == example).unwrap_or_else(|| panic!("a kind unknown here: {example}")).0
    }

    fn unit(self) -> &'static str {
        KINDS.iter().find(|k| k.0 == self).map_or("", |k| k.2)
    }

    fn has_unit(self) -> bool {
        !self.unit().is_empty()
    }

    /// A JSON number is a pure number; anywhere else it lacks something.
    fn is_number(self) -> bool {
        matches!(self, Holds::Count | Holds::Pure | Holds::Probability)
    }
}

/// A place in a document, and what the schema says of it.
enum Place {
    Leaf(Holds),
    /// an object, with the names it must have
    Object(Vec<String>),
    /// an object with exactly one of several names
    Variant,
    List,
}

/// The JSON Schema of a job.
struct Schema(Value);

impl Schema {
    fn new() -> Self {
        Schema(serde_json::to_value(Document::schema()).expect("a schema"))
    }

    /// The schema behind references, without the alternatives the value does not take.
    fn resolved<'s>(&'s self, schema: &'s Value, value: &Value) -> &'s Value {
        if let Some(reference) = schema["$ref"].as_str() {
            let definition = self.0.pointer(reference.trim_start_matches('#')).expect("a definition");
            return self.resolved(definition, value);
        }
        let alternatives = schema["anyOf"].as_array().or_else(|| schema["oneOf"].as_array());
        match alternatives.map(Vec::as_slice) {
            Some([only, ..]) if schema["anyOf"].is_array() => self.resolved(only, value),
            Some(several) if value.is_object() => {
                let named = |s: &&Value| s["properties"].as_object().is_some_and(|p| p.keys().all(|k| value.get(k).is_some()));
                several.iter().find(named).unwrap_or_else(|| panic!("no alternative for {value}"))
            }
            _ => schema,
        }
    }

    /// Every place of a document with its JSON Pointer.
    fn places(&self, document: &Value) -> Vec<(String, Place)> {
        let mut out = Vec::new();
        self.walk(&self.0, document, String::new(), &mut out);
        out
    }

    fn walk(&self, schema: &Value, value: &Value, at: String, out: &mut Vec<(String, Place)>) {
        let schema = self.resolved(schema, value);
        let place = match value {
            Value::Object(fields) => {
                for (name, value) in fields {
                    self.walk(&schema["properties"][name], value, format!("{at}/{name}"), out);
                }
                let required = schema["required"].as_array().cloned().unwrap_or_default();
                let required = required.iter().filter_map(|n| n.as_str().map(str::to_owned)).collect();
                // the alternatives of a choice with content have a name each and no definition of their own
                match schema["properties"].as_object().is_some_and(|p| p.len() == 1) && schema.get("title").is_none()
                    && self.is_alternative(schema)
                {
                    true => Place::Variant,
                    false => Place::Object(required),
                }
            }
            Value::Array(items) => {
                for (index, value) in items.iter().enumerate() {
                    self.walk(&schema["items"], value, format!("{at}/{index}"), out);
                }
                Place::List
            }
            _ => Place::Leaf(match schema["examples"][0].as_str() {
                Some(example) => Holds::of_example(example),
                None => {
                    assert!(schema["oneOf"].is_array() || schema["const"].is_string(), "{at}: {schema}");
                    Holds::Choice
                }
            }),
        };
        out.push((at, place));
    }

    fn is_alternative(&self, schema: &Value) -> bool {
        let definitions = self.0["$defs"].as_object().expect("definitions");
        definitions
            .values()
            .filter_map(|d| d["oneOf"].as_array())
            .flatten()
            .any(|alternative| alternative == schema)
    }
}

/// A text for a field, and the kinds one of which refuses it; none where it is not refused.
struct Slip {
    json: String,
    kinds: Vec<ErrorKind>,
}

fn slip(json: impl Into<String>, kinds: &[ErrorKind]) -> Slip {
    Slip { json: json.into(), kinds: kinds.to_vec() }
}

fn quoted(text: &str) -> String {
    Value::from(text).to_string()
}

/// What a text that is not of the kind at all is refused as.
fn not_of_the_kind(holds: Holds) -> Vec<ErrorKind> {
    match holds {
        Holds::Words => vec![],
        Holds::Choice => vec![ErrorKind::UnknownChoice],
        Holds::Date => vec![ErrorKind::NotADate],
        _ => vec![ErrorKind::NotANumber],
    }
}

/// Every slip that can be made in a field.
fn slips(holds: Holds) -> Vec<Slip> {
    let mut out: Vec<Slip> =
        ["null", "true", "[]", "{}", "[1]", r#"["7 mm"]"#].map(|json| slip(json, &[ErrorKind::WrongType])).into();
    let blank = match holds {
        Holds::Words => vec![ErrorKind::MissingField],
        _ => not_of_the_kind(holds),
    };
    out.extend(["\"\"", "\"   \""].map(|json| slip(json, &blank)));
    out.extend(number_slips(holds));
    let mut text = |text: &str, kind: ErrorKind| {
        let kinds = match holds {
            Holds::Words | Holds::Choice | Holds::Date => not_of_the_kind(holds),
            _ => vec![kind],
        };
        if !kinds.is_empty() {
            out.push(slip(quoted(text), &kinds));
        }
    };
    let unit = holds.unit();
    for (text_of_number, kind) in [
        ("NaN", ErrorKind::NotFinite),
        ("inf", ErrorKind::NotFinite),
        ("-Infinity", ErrorKind::NotFinite),
        ("1e400", ErrorKind::NotFinite),
        ("7,25", ErrorKind::DecimalComma),
        ("7/16", ErrorKind::Fraction),
        ("7 \u{bd}", ErrorKind::Fraction),
        ("7.2500000000000000001", ErrorKind::TooManyDigits),
        ("72500000000000000001", ErrorKind::TooManyDigits),
        ("\u{667}", ErrorKind::NotANumber),
        ("\u{ff17}", ErrorKind::NotANumber),
        ("7.2.5", ErrorKind::NotANumber),
        ("7.", ErrorKind::NotANumber),
        ("0x7", ErrorKind::WrongUnit),
        ("\u{7}7", ErrorKind::NotANumber),
        ("about 7", ErrorKind::NotANumber),
    ] {
        // a number written wrongly is refused for it, or for what stands where its unit should
        if text_of_number != "0x7" {
            text(format!("{text_of_number} {unit}").trim_end(), kind);
        }
    }
    text("7.25 furlong", ErrorKind::WrongUnit);
    text(&format!("7.25 {unit}\u{7}"), ErrorKind::WrongUnit);
    text(&"x".repeat(100), ErrorKind::TooLarge);
    text(&format!("7.25{}{unit}", " ".repeat(100)), if holds.has_unit() { ErrorKind::TooLarge } else { ErrorKind::TooLarge });
    for (other, _, foreign) in KINDS.iter().filter(|k| k.0.has_unit() && k.0 != holds) {
        let _ = other;
        text(&format!("7 {foreign}"), ErrorKind::WrongUnit);
    }
    if holds == Holds::Words {
        out.extend(["\"a\\u0007b\"", "\"a\\nb\"", "\"\\u007f\"", "\"\\u0085\"", "\"a\\u0000\""].map(|json| slip(json, &[ErrorKind::ControlCharacter])));
    }
    out
}
