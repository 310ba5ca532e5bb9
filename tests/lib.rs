//! The suite that every host runs: what its parts share. The vectors in `vectors/` are read by Rust, C and Python.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

pub mod assemblies;
pub mod expression;
pub mod functions;
pub mod hot;
pub mod matchings;
pub mod named;
pub mod pistons;
pub mod replay;
pub mod stacks;

use gaugepoint::decision::finding::{Place, What};
use gaugepoint::decision::signs::Question;
use serde_json::Value;
use std::path::PathBuf;

/// Names of the shipped examples.
pub const EXAMPLES: &[&str] = &["pump_six", "air_twin", "launch_vee", "harvester_three"];

/// Names of the examples and of the jobs that are vectors only.
pub const JOBS: &[&str] = &[
    "pump_six",
    "air_twin",
    "launch_vee",
    "harvester_three",
    "odd_bases",
    "guard_bands",
    "ratio",
    "few_readings",
    "materials",
    "rear_cylinders",
    "ported_barrel",
    "steel_crown",
    "choked_barrel",
    "sawmill_twin",
    "planned_block",
];

/// Names of the jobs with hot fits, which take a second each.
pub const HOT_JOBS: &[&str] = &["sawmill_twin"];

/// Names of the measurements: the shipped example, and a vector with every kind of gauge.
pub const MEASUREMENTS: &[&str] = &["three_ways", "every_kind"];

/// Names of the budgets with known results, in order.
pub const BUDGETS: [&str; 11] = [
    "additive_normal",
    "additive_one_large",
    "additive_rectangular",
    "ea_s10",
    "ea_s2",
    "gauge_block",
    "gauge_block_adaptive",
    "gum_h1",
    "repeats",
    "shapes",
    "square",
];

/// The table of refused budgets.
pub const REFUSED_BUDGETS: &str = "tests/vectors/budgets/refused.csv";

/// Names of the stacks with known results, in order, and their files.
pub const STACKS: [(&str, &str); 4] = [
    ("clutch", "tests/vectors/stacks/clutch.json"),
    ("deck", "core/examples/deck_stack.json"),
    ("ratio", "tests/vectors/stacks/ratio.json"),
    ("shims", "tests/vectors/stacks/shims.json"),
];

/// The table of refused stacks.
pub const REFUSED_STACKS: &str = "tests/vectors/stacks/refused.csv";

/// Names of the revisits with known results, and their files.
pub const REVISITS: [(&str, &str); 2] = [
    ("pump", "core/examples/pump_revisit.json"),
    ("short_season", "tests/vectors/revisits/short_season.json"),
];

/// The shipped what-if document.
pub const WHAT_IF: &str = "core/examples/pump_what_if.json";

/// A document with the field at a JSON Pointer replaced or, in an object, added.
///
/// # Panics
/// When there is nothing the field could stand in.
#[must_use]
pub fn changed(document: &Value, pointer: &str, value: Value) -> Value {
    let mut document = document.clone();
    let (parent, field) = pointer.rsplit_once('/').expect("a pointer");
    match document.pointer_mut(parent).expect(pointer) {
        Value::Object(fields) => drop(fields.insert(field.to_owned(), value)),
        Value::Array(items) => items[field.parse::<usize>().expect("a place")] = value,
        _ => panic!("{pointer}"),
    }
    document
}

/// A file below the workspace.
#[must_use]
pub fn workspace(path: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("..").join(path)
}

/// Text of a file below the workspace.
///
/// # Panics
/// When it cannot be read.
#[must_use]
pub fn text(path: &str) -> String {
    let file = workspace(path);
    std::fs::read_to_string(&file).unwrap_or_else(|e| panic!("{}: {e}", file.display()))
}

/// Text of a job: a shipped example or a vector.
#[must_use]
pub fn job(name: &str) -> String {
    let folder = if EXAMPLES.contains(&name) { "core/examples" } else { "tests/vectors/jobs" };
    text(&format!("{folder}/{name}.json"))
}

/// Text of a measurement: the shipped example or a vector.
#[must_use]
pub fn measurement(name: &str) -> String {
    let folder = if name == "three_ways" { "core/examples" } else { "tests/vectors/measurements" };
    text(&format!("{folder}/{name}.json"))
}

/// Text of a budget with known results.
#[must_use]
pub fn budget(name: &str) -> String {
    text(&format!("tests/vectors/budgets/{name}.json"))
}

/// What a row of `uncertainty.csv` gives.
///
/// # Errors
/// As the function of the row.
///
/// # Panics
/// When the row is none.
pub fn uncertainty_row(row: &[String]) -> Result<f64, gaugepoint::Error> {
    use gaugepoint::measurement::distribution::{Bounded, Distribution, coverage_factor};
    use gaugepoint::measurement::{monte_carlo::numerical_tolerance, uncertainty::effective_dof};
    let cells: Vec<&str> = row[2].split(';').collect();
    let number = |k: usize| -> f64 { cells[k].parse().expect("a number") };
    let list = |k: usize| -> Vec<f64> { cells[k].split('/').map(|n| n.parse().expect("a number")).collect() };
    match row[1].as_str() {
        "coverage_factor" => coverage_factor(number(0), number(1)),
        "effective_dof" => effective_dof(&list(0), &list(1)),
        "numerical_tolerance" => numerical_tolerance(number(0), cells[1].parse().expect("digits")),
        "standard_uncertainty" => {
            let parameter = cells.get(2).map(|_| number(2));
            let made = Distribution::bounded(Bounded::from_word(cells[0])?, number(1), parameter)?;
            Ok(made.standard_uncertainty())
        }
        other => panic!("{other}"),
    }
}

/// Both clearances of a row of `batch.csv`, as a batch of one row.
///
/// # Errors
/// When a law or the row is refused.
///
/// # Panics
/// When the row is not as the file describes it.
pub fn batch_row(cells: &[String]) -> Result<[f64; 2], gaugepoint::Error> {
    use gaugepoint::batch::{Batch, Columns, Results};
    use gaugepoint::growth::StrainLaw;
    let numbers = |k: usize| -> [f64; 5] {
        let all: Vec<f64> = cells[k].split(';').map(|x| x.parse().expect("a number")).collect();
        all.try_into().expect("five numbers")
    };
    let law = |[c1, c2, c3, from, to]: [f64; 5]| StrainLaw::cubic(c1, c2, c3, from, to);
    let batch = Batch::new(law(numbers(1))?, law(numbers(2))?);
    let [b, p, t, tb, tp] = numbers(3);
    let columns = Columns {
        bore_mm: &[b],
        piston_mm: &[p],
        parts_temperature_c: &[t],
        bore_temperature_c: &[tb],
        piston_temperature_c: &[tp],
    };
    let (mut bench_mm, mut running_mm) = ([0.0], [0.0]);
    let results = Results { bench_mm: &mut bench_mm, running_mm: &mut running_mm, status: None };
    batch.clearances(columns, results)?;
    match batch.refused(columns, 0, 1).pop() {
        Some(refused) => Err(refused.error),
        None => Ok([bench_mm[0], running_mm[0]]),
    }
}

/// Rows of a vector file: comma-separated, first line the heading, `#` lines are comments.
#[must_use]
pub fn rows(path: &str) -> Vec<Vec<String>> {
    let lines = text(path);
    let mut lines = lines.lines().filter(|l| !l.is_empty() && !l.starts_with('#'));
    let columns = lines.next().map_or(0, |heading| heading.split(',').count());
    let rows: Vec<Vec<String>> =
        lines.map(|l| l.splitn(columns, ',').map(|cell| cell.trim().to_owned()).collect()).collect();
    assert!(!rows.is_empty(), "{path} has no rows");
    rows
}

/// Every number of a JSON value with its JSON Pointer.
#[must_use]
pub fn numbers(value: &Value) -> Vec<(String, f64)> {
    leaves(value).into_iter().filter_map(|(at, leaf)| Some((at, leaf.as_f64()?))).collect()
}

/// Every text of a JSON value with its JSON Pointer.
#[must_use]
pub fn words(value: &Value) -> Vec<(String, &str)> {
    leaves(value).into_iter().filter_map(|(at, leaf)| Some((at, leaf.as_str()?))).collect()
}

/// Every yes or no of a JSON document, with its JSON Pointer.
#[must_use]
pub fn answers(value: &Value) -> Vec<(String, bool)> {
    leaves(value).into_iter().filter_map(|(at, leaf)| Some((at, leaf.as_bool()?))).collect()
}

/// Every value that holds no other, with its JSON Pointer.
fn leaves(value: &Value) -> Vec<(String, &Value)> {
    let under = |name: &dyn std::fmt::Display, inner| {
        let below = leaves(inner).into_iter();
        below.map(|(at, leaf)| (format!("/{name}{at}"), leaf)).collect::<Vec<_>>()
    };
    match value {
        Value::Array(items) => items.iter().enumerate().flat_map(|(k, v)| under(&k, v)).collect(),
        Value::Object(fields) => fields.iter().flat_map(|(k, v)| under(k, v)).collect(),
        leaf => vec![(String::new(), leaf)],
    }
}

/// What a row of `signs.csv` asks: where, what, and the answers.
///
/// # Panics
/// When a word is unknown.
#[must_use]
pub fn sign_row(row: &[String]) -> ((Place, What), Vec<(Question, bool)>) {
    let answer = |text: &str| {
        let (question, answer) = text.split_once('=').expect("question=answer");
        (Question::from_word(question).expect("a question"), answer == "yes")
    };
    let answers = row[3].split(';').filter(|text| !text.is_empty()).map(answer).collect();
    ((Place::from_word(&row[1]).expect("a place"), What::from_word(&row[2]).expect("seen")), answers)
}
