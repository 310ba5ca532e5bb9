//! What is refused, and how: every error names the field, what was refused, why, what is accepted and what was probably meant.
//!
//! `vectors/refused.csv` holds whole documents with what a user needs to see, written by hand; `vectors/README.md` explains it. The
//! generated refusals put every kind of slip into every field of the jobs; which fields there are and what they hold is read from
//! the JSON Schema.

#![expect(
    clippy::panic,
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "the functions behind the tests are tests too"
)]

use gaugepoint::error::Limits;
use gaugepoint::job::{
    Count, Date, Duration, Force, Kind, Mass, Probability, Pure, Real, Roughness, Slope, Stiffness, Volume,
    Words,
};
use gaugepoint::measure::{MeasurementDocument, measure_json_bytes};
use gaugepoint::quantity::{Angle, Expansion, Length, Temperature, TemperatureInterval};
use gaugepoint::stack::{StackDocument, stack_json_bytes};
use gaugepoint::{Document, Error, ErrorKind, Options, Report, assess, assess_json_bytes};
use gaugepoint_tests::{JOBS, MEASUREMENTS, REFUSED_BUDGETS, STACKS, job, measurement, text, workspace};

use proptest::collection;
use proptest::prelude::{Strategy, any};
use proptest::prop_oneof;
use proptest::sample::Index;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
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

/// The same of a measurement.
fn measured(document: &[u8]) -> Result<String, Error> {
    catch_unwind(AssertUnwindSafe(|| measure_json_bytes(document, Options::default())))
        .unwrap_or_else(|_| panic!("a panic on {}", String::from_utf8_lossy(document)))
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

/// A choice that lacks what it is about is answered with the form that it has.
#[test]
fn a_choice_without_its_contents_is_told_its_form() {
    let row = rows().into_iter().find(|row| row.text("id") == "choice_without_contents").expect("a row");
    let error = assessed(&row.document()).expect_err("a refusal");
    assert_eq!(error.reason(), "\"mean_coefficient\" needs its contents: {\"mean_coefficient\": ...}");
}

/// A job is checked before anything is read: what is wrong outside the cylinders is refused without them just the same.
#[test]
fn a_job_without_readings_is_refused_as_well() {
    let without_readings = |job: &[u8]| {
        let mut job: Value = serde_json::from_slice(job).ok()?;
        *job.get_mut("cylinders")? = Value::Array(Vec::new());
        Some(job.to_string())
    };
    let base = without_readings(text(BASE).as_bytes()).expect("a job");
    assessed(base.as_bytes()).unwrap_or_else(|e| panic!("{e}"));
    // a tree of values no longer holds a name twice or the digits of a number
    let lost = |row: &Row| {
        // and a gauge that nothing was read with needs no repeatability
        let ids = ["too_many_digits_number", "repeatability_of_single_readings"];
        row.text("kind") == "repeated_field" || ids.contains(&row.text("id"))
    };
    let mut tried = 0;
    for row in rows().iter().filter(|r| !r.text("path").starts_with("/cylinders") && !lost(r)) {
        let Some(job) = without_readings(&row.document()) else { continue };
        let error = assessed(job.as_bytes()).expect_err(row.text("id"));
        assert_eq!((error.kind().name(), error.field()), (row.text("kind"), row.text("path")), "{error}");
        tried += 1;
    }
    assert!(tried > 80, "{tried}");
}

/// What was probably meant is accepted in place of what was refused.
#[test]
fn every_suggestion_is_accepted() {
    let mut tried = 0;
    for row in rows().iter().filter(|r| !r.text("did_you_mean_contains").is_empty()) {
        let error = assessed(&row.document()).expect_err("a refusal");
        let said = error.did_you_mean().expect("a suggestion");
        // behind it stands in parentheses which slip it was
        let meant = said.split_once(" (").map_or(said, |(meant, _)| meant);
        let mut job: Value = serde_json::from_slice(&row.document()).expect("JSON");
        let (object, field) = error.field().rsplit_once('/').expect("a pointer");
        let object = job.pointer_mut(object).expect("an object");
        match (object, error.kind()) {
            (Value::Object(fields), ErrorKind::UnknownField) => {
                let value = fields.remove(field).expect("the field");
                fields.insert(meant.to_owned(), value);
            }
            (Value::Object(fields), _) => drop(fields.insert(field.to_owned(), meant.into())),
            (Value::Array(items), _) => items[field.parse::<usize>().expect("an index")] = meant.into(),
            (other, _) => panic!("{other}"),
        }
        let accepted = assessed(job.to_string().as_bytes());
        accepted.unwrap_or_else(|e| panic!("{}: {meant} is refused in its turn: {e}", row.text("id")));
        tried += 1;
    }
    assert!(tried > 20, "{tried}");
}

/// No file without a row, no row without a file, no kind that the core can give without a row.
#[test]
fn the_table_is_complete() {
    let rows = rows();
    let ids: BTreeSet<&str> = rows.iter().map(|r| r.text("id")).collect();
    assert_eq!(ids.len(), rows.len(), "an id stands twice");
    let listed: BTreeSet<String> =
        rows.iter().map(|r| r.text("file").to_owned()).filter(|f| !f.is_empty()).collect();
    let folder = std::fs::read_dir(workspace("tests/vectors/refused")).expect("the folder");
    let present: BTreeSet<String> = folder
        .map(|entry| entry.expect("an entry").file_name().into_string().expect("UTF-8"))
        .filter(|name| name.ends_with(".json") && name != "base.json")
        .collect();
    assert_eq!(listed, present);
    let of_budgets = gaugepoint_tests::rows(REFUSED_BUDGETS);
    let of_budgets = of_budgets.iter().map(|row| row[1].as_str());
    let shown: BTreeSet<&str> = rows.iter().map(|r| r.text("kind")).chain(of_budgets).collect();
    // no document is stopped: its caller is
    let kinds = ErrorKind::ALL.iter().filter(|kind| **kind != ErrorKind::Stopped);
    let kinds: BTreeSet<&str> = kinds.map(|k| k.name()).collect();
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
    Force,
    Duration,
    Stiffness,
    Slope,
    Mass,
    Roughness,
    Volume,
    /// a number of any size
    Real,
    /// yes or no
    Truth,
}

/// The kinds of field, the example by which the schema tells each, and a unit of it.
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
    (Holds::Force, Force::EXAMPLE, "N"),
    (Holds::Duration, Duration::EXAMPLE, "h"),
    (Holds::Stiffness, Stiffness::EXAMPLE, "N/um"),
    (Holds::Slope, Slope::EXAMPLE, "um/mm"),
    (Holds::Mass, Mass::EXAMPLE, "g"),
    // a unit that is none of a length
    (Holds::Roughness, Roughness::EXAMPLE, "uin"),
    (Holds::Volume, Volume::EXAMPLE, "ml"),
    (Holds::Real, Real::EXAMPLE, ""),
];

impl Holds {
    fn of_example(example: &str) -> Holds {
        KINDS.iter().find(|k| k.1 == example).unwrap_or_else(|| panic!("a kind unknown here: {example}")).0
    }

    fn unit(self) -> &'static str {
        KINDS.iter().find(|k| k.0 == self).map_or("", |k| k.2)
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

/// The JSON Schema of a document, and which of its fields were met.
struct Schema {
    schema: Value,
    met: RefCell<BTreeSet<String>>,
}

impl Schema {
    /// That of a job. Its stacks are looked at in documents of their own.
    fn new() -> Self {
        let mut schema = Document::schema().to_value();
        let root = schema.pointer_mut("/properties").and_then(Value::as_object_mut).expect("fields");
        root.remove("stacks").expect("stacks");
        let all = schema["$defs"].as_object_mut().map(core::mem::take).expect("definitions");
        let mut used = schema.to_string();
        let mut kept = serde_json::Map::new();
        while let Some((name, definition)) = all
            .iter()
            .find(|(name, _)| !kept.contains_key(*name) && used.contains(&format!("\"#/$defs/{name}\"")))
        {
            used += &definition.to_string();
            kept.insert(name.clone(), definition.clone());
        }
        schema["$defs"] = kept.into();
        Schema::of(schema)
    }

    fn of(schema: Value) -> Self {
        Schema { schema, met: RefCell::default() }
    }

    /// The schema of a value behind references, and whether it is one of several alternatives.
    fn resolved<'s>(&'s self, schema: &'s Value, value: &Value) -> (&'s Value, bool) {
        if let Some(reference) = schema["$ref"].as_str() {
            let definition = self.schema.pointer(reference.trim_start_matches('#')).expect("a definition");
            return self.resolved(definition, value);
        }
        // an optional field: itself or nothing
        if let Some(itself) = schema["anyOf"].get(0) {
            return self.resolved(itself, value);
        }
        match (schema["oneOf"].as_array(), value) {
            (Some(several), Value::Object(fields)) => {
                let fits = |s: &&Value| fields.keys().all(|name| s["properties"].get(name).is_some());
                (several.iter().find(fits).unwrap_or_else(|| panic!("no alternative for {value}")), true)
            }
            _ => (schema, false),
        }
    }

    /// Every place of a document with its JSON Pointer.
    fn places(&self, document: &Value) -> Vec<(String, Place)> {
        let mut out = Vec::new();
        self.walk(&self.schema, document, String::new(), &mut out);
        out
    }

    fn walk(&self, schema: &Value, value: &Value, at: String, out: &mut Vec<(String, Place)>) {
        let (schema, variant) = self.resolved(schema, value);
        let place = match value {
            Value::Object(fields) => {
                for (name, value) in fields {
                    self.met.borrow_mut().insert(format!("{} {name}", schema["description"]));
                    self.walk(&schema["properties"][name], value, format!("{at}/{name}"), out);
                }
                match variant {
                    true => Place::Variant,
                    false => Place::Object(names(&schema["required"])),
                }
            }
            Value::Array(items) => {
                for (index, value) in items.iter().enumerate() {
                    self.walk(&schema["items"], value, format!("{at}/{index}"), out);
                }
                Place::List
            }
            Value::Bool(_) => Place::Leaf(Holds::Truth),
            _ => Place::Leaf(schema["examples"][0].as_str().map_or(Holds::Choice, Holds::of_example)),
        };
        out.push((at, place));
    }

    /// Fields of the schema that no document has shown yet.
    fn unmet(&self) -> Vec<String> {
        let definitions = self.schema["$defs"].as_object().expect("definitions");
        let alternatives = |s: &Value| s["oneOf"].as_array().cloned().unwrap_or_default();
        let all = definitions.values().flat_map(|d| alternatives(d).into_iter().chain([d.clone()]));
        let field = |s: Value| {
            let fields = s["properties"].as_object().cloned().unwrap_or_default();
            fields.into_iter().map(move |(name, _)| format!("{} {name}", s["description"]))
        };
        all.chain([self.schema.clone()]).flat_map(field).filter(|f| !self.met.borrow().contains(f)).collect()
    }
}

fn names(list: &Value) -> Vec<String> {
    list.as_array().into_iter().flatten().filter_map(|n| n.as_str().map(str::to_owned)).collect()
}

/// A JSON text for a field, and the kinds of which one must refuse it.
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

/// Numbers written in ways that are refused.
const WRITTEN: &[(&str, ErrorKind)] = &[
    ("NaN", ErrorKind::NotFinite),
    ("inf", ErrorKind::NotFinite),
    ("-Infinity", ErrorKind::NotFinite),
    ("1e400", ErrorKind::NotFinite),
    ("1000000000000", ErrorKind::OutOfRange),
    ("-1000000000000", ErrorKind::OutOfRange),
    ("7,25", ErrorKind::DecimalComma),
    ("7/16", ErrorKind::Fraction),
    ("7 \u{bd}", ErrorKind::Fraction),
    ("7.2500000000000000001", ErrorKind::TooManyDigits),
    ("72500000000000000001", ErrorKind::TooManyDigits),
    ("\u{667}", ErrorKind::NotANumber),
    ("\u{ff17}", ErrorKind::NotANumber),
    ("7.2.5", ErrorKind::NotANumber),
    ("7.", ErrorKind::NotANumber),
    ("- 7", ErrorKind::NotANumber),
    ("\u{7}7", ErrorKind::NotANumber),
    ("about 7", ErrorKind::NotANumber),
];

/// Every slip that can be made in a field.
fn slips(holds: Holds) -> Vec<Slip> {
    let of_another_type = ["null", "true", "[]", "{}", "[1]", r#"["7 mm"]"#];
    let mut out: Vec<Slip> = of_another_type.map(|json| slip(json, &[ErrorKind::WrongType])).into();
    match holds {
        Holds::Words => {
            out.extend(["7.25", "1e30", "-0"].map(|json| slip(json, &[ErrorKind::WrongType])));
            out.extend(["", "   ", "\u{a0}"].map(|text| slip(quoted(text), &[ErrorKind::MissingField])));
            let control =
                ["a\u{0}b", "a\u{7}b", "a\nb", "\u{1b}[2J", "\u{7f}", "\u{85}", "\u{2028}", "\u{202e}a"];
            out.extend(control.map(|text| slip(quoted(text), &[ErrorKind::ControlCharacter])));
        }
        Holds::Choice | Holds::Date => {
            let (kind, texts) = (
                if holds == Holds::Date { ErrorKind::NotADate } else { ErrorKind::UnknownChoice },
                [
                    "",
                    "   ",
                    "7.25",
                    "7.25 mm",
                    "NaN",
                    "\u{667}",
                    "2026\u{7}03\u{7}14",
                    "14.03.26",
                    "2026-13-01",
                ],
            );
            out.extend(["7.25", "1e30", "20260314"].map(|json| slip(json, &[ErrorKind::WrongType])));
            out.extend(texts.map(|text| slip(quoted(text), &[kind])));
            out.push(slip(quoted(&"x".repeat(100)), &[kind]));
        }
        Holds::Truth => {
            out.retain(|slip| slip.json != "true");
            out.extend(["7.25", "\"true\""].map(|json| slip(json, &[ErrorKind::WrongType])));
        }
        Holds::Real => out.extend(slips_of_real()),
        _ => out.extend(slips_of_number(holds)),
    }
    out
}

/// What is no number, whatever its size and its digits.
fn slips_of_real() -> impl Iterator<Item = Slip> {
    let of_size = [ErrorKind::OutOfRange, ErrorKind::TooManyDigits];
    let written = WRITTEN.iter().filter(move |(_, kind)| !of_size.contains(kind));
    let blank = ["", "   "].map(|text| slip(quoted(text), &[ErrorKind::NotANumber]));
    let foreign = ["7 mm", "7.25 furlong", "5 %"].map(|text| slip(quoted(text), &[ErrorKind::WrongUnit]));
    written.map(|(number, kind)| slip(quoted(number), &[*kind])).chain(blank).chain(foreign)
}

fn slips_of_number(holds: Holds) -> Vec<Slip> {
    use ErrorKind::{MissingUnit, NotANumber, OutOfRange, TooLarge, TooManyDigits, WrongUnit};
    let unit = holds.unit();
    // a number that has no unit is refused for its size or its decimals
    let (bare, number): (&[ErrorKind], _) = match unit {
        "" => (&[OutOfRange, NotANumber], "7250000000.25"),
        _ => (&[MissingUnit], "7.25"),
    };
    let mut out = vec![
        slip(number, bare),
        slip(format!("-{number}"), bare),
        slip("1e30", &[OutOfRange, NotANumber, MissingUnit]),
        slip("7.2500000000000000001", &[TooManyDigits]),
        slip("72500000000000000001", &[TooManyDigits]),
        slip(quoted(""), &[NotANumber]),
        slip(quoted("   "), &[NotANumber]),
        slip(quoted(number), bare),
        slip(quoted("7.25 furlong"), &[WrongUnit]),
        slip(quoted(&format!("7.25 {unit}\u{7}")), &[WrongUnit]),
        slip(quoted(&"x".repeat(100)), &[TooLarge]),
        slip(quoted(&format!("7.25{}mm", " ".repeat(100))), &[TooLarge]),
    ];
    let written =
        |(number, kind): &(&str, ErrorKind)| slip(quoted(format!("{number} {unit}").trim_end()), &[*kind]);
    out.extend(WRITTEN.iter().map(written));
    let foreign = KINDS.iter().filter(|k| k.0 != holds && !k.2.is_empty());
    out.extend(foreign.map(|k| slip(quoted(&format!("7 {}", k.2)), &[WrongUnit])));
    out
}

/// The text of a document with the value at a pointer replaced by a JSON text.
fn spliced(document: &Value, pointer: &str, json: &str) -> String {
    const MARK: &str = "<replaced>";
    let mut marked = document.clone();
    *marked.pointer_mut(pointer).unwrap_or_else(|| panic!("{pointer}")) = MARK.into();
    marked.to_string().replacen(&quoted(MARK), json, 1)
}

/// The text of a document with `name` put once more into the object at a pointer.
fn with_field(document: &Value, pointer: &str, name: &str, json: &str) -> String {
    let object = document.pointer(pointer).unwrap_or_else(|| panic!("{pointer}")).to_string();
    let comma = if object == "{}" { "" } else { "," };
    let opened = object.strip_suffix('}').expect("an object");
    spliced(document, pointer, &format!("{opened}{comma}{}:{json}}}", quoted(name)))
}

fn without_field(document: &Value, pointer: &str, name: &str) -> String {
    let mut out = document.clone();
    let object = out.pointer_mut(pointer).and_then(Value::as_object_mut).expect("an object");
    object.remove(name).unwrap_or_else(|| panic!("{pointer} has no {name}"));
    out.to_string()
}

/// What was tried and what came of it.
struct Tally {
    read: fn(&[u8]) -> Result<String, Error>,
    tried: BTreeMap<&'static str, usize>,
    wrong: Vec<String>,
}

impl Tally {
    fn new(read: fn(&[u8]) -> Result<String, Error>) -> Self {
        Tally { read, tried: BTreeMap::new(), wrong: Vec::new() }
    }

    fn add(&mut self, other: Tally) {
        other.tried.into_iter().for_each(|(what, count)| *self.tried.entry(what).or_default() += count);
        self.wrong.extend(other.wrong);
    }

    /// The document must be refused at `path` with one of `kinds`.
    fn refuses(&mut self, what: &'static str, document: &str, path: &str, kinds: &[ErrorKind], slip: &str) {
        *self.tried.entry(what).or_default() += 1;
        let complaint = match (self.read)(document.as_bytes()) {
            Ok(_) => Some("accepted".to_owned()),
            Err(error) => complaint(&error, path, kinds, slip),
        };
        self.wrong.extend(complaint.map(|c| format!("{what} {path} {slip}: {c}")));
    }

    fn finish(self) {
        let total: usize = self.tried.values().sum();
        println!("{total} generated refusals: {:?}", self.tried);
        let shown: Vec<String> = self.wrong.iter().take(40).cloned().collect();
        assert!(self.wrong.is_empty(), "{} of {total}:\n{}", self.wrong.len(), shown.join("\n"));
    }
}

/// What is wrong with an error, if anything is.
fn complaint(error: &Error, path: &str, kinds: &[ErrorKind], slip: &str) -> Option<String> {
    let range_fits = match (error.kind(), error.accepted(), error.refused_value()) {
        (ErrorKind::OutOfRange, Some(range), Some(value)) => value < range.lower || value > range.upper,
        // an exponent beyond what is read has no value
        (ErrorKind::OutOfRange, None, None) => slip.contains('e'),
        (ErrorKind::OutOfRange, ..) => false,
        _ => true,
    };
    let typed: Value = serde_json::from_str(slip).unwrap_or_default();
    let cut = |text: &str| text.chars().take(80).collect::<String>();
    let repeats = match typed.as_str() {
        Some(text) => cut(error.refused()) == cut(text) || cut(error.refused()) == cut(text.trim()),
        None => !error.refused().is_empty(),
    };
    let good = error.field() == path
        && kinds.contains(&error.kind())
        && !error.reason().is_empty()
        && error.to_string().contains(path)
        && !error.to_string().contains(char::is_control)
        && range_fits
        && repeats;
    (!good).then(|| format!("{:?} {error}", error.kind()))
}

fn documents() -> Vec<Value> {
    let jobs = JOBS.iter().map(|name| job(name)).chain([text(BASE)]);
    let jobs = jobs.map(|job| {
        let mut job: Value = serde_json::from_str(&job).expect("JSON");
        job.as_object_mut().expect("an object").remove("stacks");
        job
    });
    jobs.chain([with_preset()]).collect()
}

/// Stacks that have every field of their schema.
fn stacks() -> Vec<Value> {
    let known = STACKS.iter().map(|(_, file)| serde_json::from_str(&text(file)).expect("JSON"));
    let normal = json!({ "normal": { "standard_deviation": 0.1 } });
    let distributions = [
        normal.clone(),
        json!({ "trapezoidal": { "half_width": 0.3, "beta": 0.5 } }),
        json!({ "arcsine": { "half_width": 0.2 } }),
        json!({ "triangular": { "low": 0, "mode": 0, "high": 0.6 } }),
        json!({ "beta": { "alpha": 2, "beta": 2, "low": 0, "high": 1 } }),
        json!({ "truncated_normal": { "mean": 0.1, "standard_deviation": 0.01, "low": 0, "high": 0.2 } }),
        json!({ "skewed": { "quantiles": [{ "probability": 0.5, "value": 0.2 }, { "probability": 0.84, "value": 0.3 }] } }),
    ];
    let contributor = |(k, distribution): (usize, &Value)| json!({ "name": format!("x{k}"), "nominal": 0.5, "lower": -1, "upper": 1, "distribution": distribution });
    let contributors: Vec<Value> = distributions.iter().enumerate().map(contributor).collect();
    let every_kind = json!({
        "format": "gaugepoint-stack", "version": 1, "name": "every kind", "contributors": contributors,
        "causes": [{ "name": "shared", "distribution": normal, "on": [{ "contributor": "x0", "factor": 0.5 }] }],
        "monte_carlo": { "seed": 1, "trials": 1000, "probability": 0.95, "confidence": 0.9 },
    });
    known.chain([every_kind]).collect()
}

fn evaluated(document: &[u8]) -> Result<String, Error> {
    stack_json_bytes(document, Options::default())
}

/// A job with hot fits whose temperatures are those of a duty.
fn with_preset() -> Value {
    let mut out: Value = serde_json::from_str(&job("sawmill_twin")).expect("JSON");
    out["running"]["field"] = json!({"preset": "petrol, naturally aspirated"});
    out
}

fn measurements() -> Vec<Value> {
    MEASUREMENTS.iter().map(|name| serde_json::from_str(&measurement(name)).expect("JSON")).collect()
}

#[test]
fn every_slip_in_every_field_is_refused_there() {
    every_slip(&Schema::new(), documents(), assessed);
}

#[test]
fn every_slip_in_a_measurement_is_refused_there() {
    every_slip(&Schema::of(MeasurementDocument::schema().to_value()), measurements(), measured);
}

#[test]
fn every_slip_in_a_stack_is_refused_there() {
    every_slip(&Schema::of(StackDocument::schema().to_value()), stacks(), evaluated);
}

fn every_slip(schema: &Schema, documents: Vec<Value>, read: fn(&[u8]) -> Result<String, Error>) {
    let documents: Vec<(Value, Vec<(String, Place)>)> = documents
        .into_iter()
        .map(|d| {
            let places = schema.places(&d);
            (d, places)
        })
        .collect();
    assert!(schema.unmet().is_empty(), "no job has {:?}", schema.unmet());
    let mut tally = Tally::new(read);
    std::thread::scope(|scope| {
        let workers: Vec<_> = documents
            .iter()
            .map(|(d, places)| scope.spawn(move || slips_of_document(d, places, read)))
            .collect();
        workers.into_iter().for_each(|w| tally.add(w.join().expect("no panic")));
    });
    tally.finish();
}

fn slips_of_document(
    document: &Value,
    places: &[(String, Place)],
    read: fn(&[u8]) -> Result<String, Error>,
) -> Tally {
    let mut tally = Tally::new(read);
    for (path, place) in places {
        match place {
            Place::Leaf(holds) => {
                // a formula is a text with a reader of its own
                let any_text = |slip: &Slip| path == "/formula" && slip.json.starts_with('"');
                for slip in slips(*holds).into_iter().filter(|slip| !any_text(slip)) {
                    let spliced = spliced(document, path, &slip.json);
                    // whatever else it is, it is not the word that must stand there
                    let of_format = path == "/format" && slip.json.starts_with('"');
                    let kinds = if of_format { vec![ErrorKind::UnknownFormat] } else { slip.kinds };
                    tally.refuses("in a field", &spliced, path, &kinds, &slip.json);
                }
            }
            Place::List => {
                for json in ["{}", "null", "7", "\"7 mm\"", "true"] {
                    let spliced = spliced(document, path, json);
                    tally.refuses("for a list", &spliced, path, &[ErrorKind::WrongType], json);
                }
            }
            Place::Object(required) => slips_of_object(&mut tally, document, path, Some(required)),
            Place::Variant => slips_of_object(&mut tally, document, path, None),
        }
    }
    tally
}

/// The slips of an object; without a list of required fields it is one with exactly one of several names.
fn slips_of_object(tally: &mut Tally, document: &Value, path: &str, required: Option<&Vec<String>>) {
    for json in ["[]", "null", "7", "\"7 mm\"", "true"] {
        let spliced = if path.is_empty() { json.to_owned() } else { spliced(document, path, json) };
        let kinds = [ErrorKind::WrongType, ErrorKind::UnknownChoice];
        tally.refuses("for an object", &spliced, path, &kinds, json);
    }
    let field = |name: &str| format!("{path}/{name}");
    for name in required.into_iter().flatten() {
        let cut = without_field(document, path, name);
        tally.refuses("field missing", &cut, &field(name), &[ErrorKind::MissingField], &quoted(name));
    }
    let fields = document.pointer(path).and_then(Value::as_object).expect("an object");
    for (name, value) in fields {
        let doubled = with_field(document, path, name, &value.to_string());
        tally.refuses("field repeated", &doubled, &field(name), &[ErrorKind::RepeatedField], &quoted(name));
    }
    let more = with_field(document, path, "hearsay", "1");
    let (at, kind, repeated) = match required {
        Some(_) => (field("hearsay"), ErrorKind::UnknownField, "\"hearsay\""),
        None => (path.to_owned(), ErrorKind::WrongType, "{}"),
    };
    tally.refuses("field unknown", &more, &at, &[kind], repeated);
}

/// A list without end would make a report without end.
#[test]
fn long_lists_are_refused() {
    let schema = Schema::new();
    let document: Value = serde_json::from_str(&text(BASE)).expect("JSON");
    let mut lists = 0;
    for (path, place) in schema.places(&document) {
        let Some(first) = document.pointer(&path).and_then(|list| list.get(0)) else { continue };
        // words that are listed are few; cylinders have numbers of their own
        if !matches!(place, Place::List)
            || !path.contains("rows") && first.is_string() && !path.contains("repeats")
        {
            continue;
        }
        let long = Value::from(vec![first.clone(); 1001]);
        let error = assessed(spliced(&document, &path, &long.to_string()).as_bytes()).expect_err(&path);
        let asked = if path == "/cylinders" { ErrorKind::Repeated } else { ErrorKind::TooLarge };
        assert_eq!(error.kind(), asked, "{error}");
        assert!(error.field().starts_with(&path), "{error}");
        lists += 1;
    }
    assert!(lists > 8, "{lists}");
}

// --- what is accepted beside it ---

/// A text is free where it names nothing else: `7` is as good as any. The others must name what stands in the document.
#[test]
fn a_number_is_a_text_where_any_text_is() {
    const FREE: &[&str] = &[
        "id", "note", "source", "standard", "origin", "cause", "name", "what", "reason", "evidence", "part",
        "by", "grade", "ring",
    ];
    const NAMES: &[&str] = &[
        "format",
        "name",
        "gauge",
        "material",
        "original_piston_material",
        "preset",
        "built_in",
        "piston",
        "block_material",
        "ring",
    ];
    let schema = Schema::new();
    let mut seen = BTreeMap::from([("accepted", BTreeSet::new()), ("refused", BTreeSet::new())]);
    for document in documents() {
        for (path, place) in schema.places(&document) {
            if !matches!(place, Place::Leaf(Holds::Words)) {
                continue;
            }
            let field = path.rsplit('/').next().unwrap_or_default().to_owned();
            let spliced = spliced(&document, &path, "\"7\"");
            let (what, may) = match assessed(spliced.as_bytes()) {
                Ok(_) => ("accepted", FREE),
                Err(e) => {
                    let named = [ErrorKind::UnknownName, ErrorKind::UnknownFormat].contains(&e.kind());
                    assert!(named, "{path}: {e}");
                    ("refused", NAMES)
                }
            };
            assert!(may.contains(&field.as_str()), "{path} is {what}");
            seen.entry(what).or_default().insert(field);
        }
    }
    assert_eq!(seen["accepted"].len(), FREE.len(), "{seen:?}");
    assert_eq!(seen["refused"].len(), NAMES.len(), "{seen:?}");
}

/// What may be below zero: deviations, laws and running engines in the cold, an interference, a relaxed guard band, an offset to the other side.
fn may_be_negative(path: &str, holds: Holds) -> bool {
    let of_law = path.starts_with("/materials/") && holds != Holds::Expansion;
    of_law
        || path.starts_with("/running/")
        || path.contains("/bore/readings/") && path.contains("/repeats/")
        || (path.contains("/inside/") || path.contains("/depth/")) && path.contains("/repeats/")
        || path.contains("/opposite/")
        || path.ends_with("/profile_slope")
        || path.ends_with("/master/size")
        // of a bore gauge it is a deviation too
        || path.ends_with("/recheck/reading")
        || path.starts_with("/engine/bore/target_profile/rows/") && path.ends_with("/deviation")
        || path.starts_with("/engine/limits") && path.contains("/bench_clearance/") && holds == Holds::Length
        || path.starts_with("/decision/") && path.ends_with("_guard")
        || path.starts_with("/engine/piston/shape/") && (path.ends_with("below") || path.ends_with("ovality"))
        || ["/engine/motion/pin_offset", "/engine/motion/deck_clearance", "/pictures/crank"].contains(&path)
        || path.starts_with("/find/")
        || path.starts_with("/plan/wanted_clearance/") && holds == Holds::Length
        || path.starts_with("/plan/gasket/") && holds == Holds::Length
        || path.starts_with("/plan/sleeves/") && holds == Holds::Temperature
        || path.starts_with("/plan/liners/protrusion/")
        || path.starts_with("/plan/machining/steps/") && path.ends_with("/more_mass")
        || ["/plan/machining/chamber/deck_clearance", "/plan/machining/chamber/crown"].contains(&path)
}

/// The same text with the other sign.
fn negated(value: &Value) -> String {
    let text = value.as_str().map_or_else(|| value.to_string(), str::to_owned);
    text.strip_prefix('-').map_or_else(|| format!("-{text}"), str::to_owned)
}

fn is_zero(value: &Value) -> bool {
    let text = value.as_str().map_or_else(|| value.to_string(), str::to_owned);
    !text.split(' ').next().unwrap_or_default().contains(|c: char| c.is_ascii_digit() && c != '0')
}

#[test]
fn the_other_sign_is_refused_where_nothing_is_negative() {
    other_signs(&Schema::new(), documents(), assessed);
    other_signs(&Schema::of(MeasurementDocument::schema().to_value()), measurements(), measured);
}

fn other_signs(schema: &Schema, documents: Vec<Value>, read: fn(&[u8]) -> Result<String, Error>) {
    let mut tally = Tally::new(read);
    for document in documents {
        for (path, place) in schema.places(&document) {
            let Place::Leaf(holds) = place else { continue };
            let value = document.pointer(&path).expect("a field");
            if matches!(holds, Holds::Words | Holds::Choice | Holds::Date) || is_zero(value) {
                continue;
            }
            let json = quoted(&negated(value));
            let spliced = spliced(&document, &path, &json);
            match may_be_negative(&path, holds) {
                true => drop(read(spliced.as_bytes())),
                false => tally.refuses("the other sign", &spliced, &path, &[ErrorKind::OutOfRange], &json),
            }
        }
    }
    tally.finish();
}

/// A bore gauge reads from its setting: with every deviation negated the sizes lie as far on the other side of one size.
#[test]
fn deviations_of_the_other_sign_mirror_the_sizes() {
    let schema = Schema::new();
    for document in documents() {
        let mut mirrored = document.clone();
        for (path, _) in schema.places(&document) {
            if path.contains("/bore/readings/") && path.contains("/repeats/") {
                let value = mirrored.pointer_mut(&path).expect("a reading");
                *value = negated(value).into();
            }
        }
        let [report, mirror] = [&document, &mirrored].map(|d| {
            let job = Document::from_json(&d.to_string()).expect("a job");
            assess(&job, Options::default()).unwrap_or_else(|e| panic!("{e}"))
        });
        for (a, b) in report.cylinders.iter().zip(&mirror.cylinders) {
            let (Some(a), Some(b)) = (&a.bore, &b.bore) else { continue };
            let sums: Vec<f64> =
                a.places.iter().zip(&b.places).map(|(a, b)| a.size.value_mm + b.size.value_mm).collect();
            assert!(sums.len() > 3 && sums.iter().all(|s| (s - sums[0]).abs() < 1e-10), "{sums:?}");
            assert!(
                a.places.iter().zip(&b.places).any(|(a, b)| (a.size.value_mm - b.size.value_mm).abs() > 1e-3)
            );
        }
    }
}

// --- bytes that are no job at all ---

/// A change of the bytes of a document.
#[derive(Debug, Clone)]
enum Change {
    Insert(Index, Vec<u8>),
    Delete(Index, usize),
    Replace(Index, u8),
    /// bytes copied from one place to another
    Copy(Index, usize, Index),
}

impl Change {
    fn apply(&self, bytes: &mut Vec<u8>) {
        let span = |at: &Index, length: usize, bytes: &[u8]| {
            let start = at.index(bytes.len() + 1);
            start..(start + length).min(bytes.len())
        };
        match self {
            Change::Insert(at, new) => {
                let at = span(at, 0, bytes);
                bytes.splice(at, new.iter().copied());
            }
            Change::Delete(at, length) => drop(bytes.drain(span(at, *length, bytes))),
            Change::Replace(at, byte) => {
                let at = span(at, 1, bytes);
                bytes.splice(at, [*byte]);
            }
            Change::Copy(from, length, to) => {
                let copied = bytes[span(from, *length, bytes)].to_vec();
                let to = span(to, 0, bytes);
                bytes.splice(to, copied);
            }
        }
    }
}

/// Bytes of the trade as well as any others: most of the others end the JSON and go no further.
fn byte() -> impl Strategy<Value = u8> {
    let of_the_trade = proptest::sample::select(b"0123456789.,-+eE/ \"{}[]:mMCFKinu%nulltrue\\".to_vec());
    prop_oneof![4 => of_the_trade, 1 => any::<u8>()]
}

fn changes() -> impl Strategy<Value = Vec<Change>> {
    let change = prop_oneof![
        (any::<Index>(), collection::vec(byte(), 1..4)).prop_map(|(at, new)| Change::Insert(at, new)),
        (any::<Index>(), 1..4_usize).prop_map(|(at, length)| Change::Delete(at, length)),
        (any::<Index>(), byte()).prop_map(|(at, byte)| Change::Replace(at, byte)),
        (any::<Index>(), prop_oneof![1..12_usize, 1..400_usize], any::<Index>())
            .prop_map(|(from, length, to)| Change::Copy(from, length, to)),
    ];
    collection::vec(change, 1..4)
}

#[test]
fn any_bytes_give_a_report_or_an_error() {
    let base = text(BASE).into_bytes();
    let config = Config { cases: 2000, failure_persistence: None, ..Config::default() };
    let mut runner = TestRunner::new_with_rng(config, TestRng::deterministic_rng(RngAlgorithm::ChaCha));
    let seen = RefCell::new(BTreeMap::<&str, usize>::new());
    let run = runner.run(&changes(), |changes| {
        let mut bytes = base.clone();
        changes.iter().for_each(|c| c.apply(&mut bytes));
        let kind = match assessed(&bytes) {
            Ok(report) => {
                let report: Value = serde_json::from_str(&report).expect("JSON");
                assert_eq!(report["format"], "gaugepoint-report");
                "a report"
            }
            Err(error) => {
                assert!(!error.reason().is_empty() && !error.to_string().contains(char::is_control));
                error.kind().name()
            }
        };
        *seen.borrow_mut().entry(kind).or_default() += 1;
        Ok(())
    });
    run.unwrap_or_else(|e| panic!("{e}"));
    let seen = seen.into_inner();
    println!("mutated bytes: {seen:?}");
    // a test of syntax errors alone would say little
    assert!(seen.len() > 12 && seen["a report"] > 50, "{seen:?}");
}
