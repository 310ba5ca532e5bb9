//! Budgets as documents: published results, refusals, and what a report always is.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::ErrorKind;
use gaugepoint::budget::{Budget, BudgetDocument, BudgetReport, budget_json, budget_json_bytes};
use gaugepoint_tests::{BUDGETS, REFUSED_BUDGETS, budget, rows, text, uncertainty_row, workspace};
use proptest::prelude::*;
use serde_json::{Value, json};
use std::collections::BTreeMap;

fn report(document: &str) -> Value {
    serde_json::from_str(&budget_json(document).unwrap_or_else(|e| panic!("{e}"))).expect("JSON")
}

/// A cell of the tables: a number within its tolerance, or a word.
fn check(name: &str, pointer: &str, found: Option<&Value>, expected: &str, tolerance: &str) {
    let what = format!("{name} {pointer}: {found:?} and not {expected}");
    match (found, expected.parse::<f64>()) {
        (None, _) => assert_eq!(expected, "absent", "{what}"),
        (Some(found), Ok(expected)) => {
            let off = (found.as_f64().expect(&what) - expected).abs();
            assert!(off <= tolerance.parse().expect(&what), "{what}");
        }
        (Some(Value::String(found)), Err(_)) => assert_eq!(found, expected, "{what}"),
        (Some(found), Err(_)) => assert_eq!(found.to_string(), expected, "{what}"),
    }
}

#[test]
fn published_budgets() {
    let mut reports: BTreeMap<String, Value> = BTreeMap::new();
    for row in rows("tests/vectors/budgets/expected.csv") {
        let [name, pointer, expected, tolerance, source] = &row[..] else { panic!("{row:?}") };
        assert!(!source.is_empty(), "{row:?}");
        let report = reports.entry(name.clone()).or_insert_with(|| report(&budget(name)));
        check(name, pointer, report.pointer(pointer), expected, tolerance);
    }
    assert_eq!(reports.keys().map(String::as_str).collect::<Vec<_>>(), BUDGETS);
}

#[test]
fn every_document_has_its_rows() {
    let named = |folder: &str| {
        let files =
            std::fs::read_dir(workspace(folder)).expect("a folder").map(|file| file.expect("a file").path());
        let documents = files.filter(|path| path.extension().is_some_and(|e| e == "json"));
        let mut names: Vec<String> =
            documents.map(|path| path.file_stem().expect("a name").to_string_lossy().into_owned()).collect();
        names.sort();
        names
    };
    assert_eq!(named("tests/vectors/budgets"), BUDGETS);
    let mut refused: Vec<String> = rows(REFUSED_BUDGETS).into_iter().map(|row| row[0].clone()).collect();
    refused.sort();
    assert_eq!(named("tests/vectors/budgets/refused"), refused);
}

#[test]
fn refused_budgets() {
    for row in rows(REFUSED_BUDGETS) {
        let [name, kind, path, refused] = &row[..] else { panic!("{row:?}") };
        let document = text(&format!("tests/vectors/budgets/refused/{name}.json"));
        let error = budget_json(&document).expect_err(name);
        let said = [error.kind().name(), error.field(), error.refused()];
        assert_eq!(
            said.map(str::trim),
            [kind.as_str(), path, &refused.replace("%2C", ",")],
            "{name}: {error}"
        );
    }
    let error = budget_json(&text("tests/vectors/budgets/refused/term_unknown.json")).unwrap_err();
    assert_eq!(error.did_you_mean(), Some("d mean"));
    let error = budget_json(&text("tests/vectors/budgets/refused/model_symbol_unknown.json")).unwrap_err();
    assert_eq!(error.did_you_mean(), Some("theta"));
    assert_eq!(error.reason(), "no such name, at character 25");
    assert_eq!(budget_json_bytes(b"{\xff}").unwrap_err().kind(), ErrorKind::NotUtf8);
}

#[test]
fn flat_functions() {
    for row in rows("tests/vectors/uncertainty.csv") {
        let [id, _, _, expected, tolerance, source] = &row[..] else { panic!("{row:?}") };
        assert!(!source.is_empty(), "{row:?}");
        match uncertainty_row(&row) {
            Err(error) => {
                assert_eq!(*expected, format!("error:{} {}", error.kind().name(), error.field()), "{id}")
            }
            Ok(found) if expected == "inf" => assert!(found == f64::INFINITY, "{id}: {found}"),
            Ok(found) => check(id, "", Some(&json!(found)), expected, tolerance),
        }
    }
}

// --- the documents ---

#[test]
fn budgets_and_reports_fit_their_schemas() {
    let of_budget = jsonschema::validator_for(BudgetDocument::schema().as_value()).expect("a schema");
    let of_report = jsonschema::validator_for(BudgetReport::schema().as_value()).expect("a schema");
    for name in BUDGETS {
        let document: Value = serde_json::from_str(&budget(name)).expect("JSON");
        assert!(of_budget.is_valid(&document), "{name}: {:?}", of_budget.iter_errors(&document).next());
        let mut wrong = document.clone();
        wrong["inputs"][0]["colour"] = json!("red");
        assert!(!of_budget.is_valid(&wrong), "{name}");
        let short = shortened(document);
        let report = report(&short.to_string());
        assert!(of_report.is_valid(&report), "{name}: {:?}", of_report.iter_errors(&report).next());
        let mut wrong = report;
        wrong.as_object_mut().expect("an object").remove("expanded");
        assert!(!of_report.is_valid(&wrong), "{name}");
    }
}

/// The same document with few trials.
fn shortened(mut document: Value) -> Value {
    if let Some(run) = document.get_mut("monte_carlo").and_then(Value::as_object_mut)
        && run.contains_key("trials")
    {
        run.insert("trials".to_owned(), json!(2000));
    }
    document
}

/// A document that is written out again is the same document.
#[test]
fn a_budget_survives_being_written_and_read() {
    for name in BUDGETS {
        let once = Budget::from_json(&budget(name)).expect("a budget");
        let again = serde_json::to_string(once.document()).expect("JSON");
        let again = Budget::from_json(&again).expect("a budget");
        assert_eq!(once.document(), again.document(), "{name}");
    }
}

/// By hand from the numbers of the report: three digits of the uncertainty, six elsewhere.
#[test]
fn the_text_is_a_table_in_words() {
    let text = Budget::from_json(&budget("gum_h1")).unwrap().evaluate().unwrap().to_text();
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines[0], "end gauge");
    assert_eq!(lines[1], "model: ls + d - ls * (dalpha * theta + alpha * dtheta)");
    assert_eq!(lines[2], "estimate: 50000838.0 nm");
    assert_eq!(lines[3], "standard uncertainty: 31.6582 nm");
    assert_eq!(lines[4], "effective degrees of freedom: 16.7411");
    assert_eq!(
        lines[5],
        "expanded uncertainty: 92.4666 nm at a coverage probability of 99 %, coverage factor 2.92078 for 16 degrees of freedom"
    );
    let cells = |line: &str| -> Vec<String> {
        line.split("  ").map(str::trim).filter(|cell| !cell.is_empty()).map(str::to_owned).collect()
    };
    assert_eq!(
        cells(lines[7]),
        ["source", "sensitivity", "standard uncertainty", "degrees of freedom", "contribution", "share"]
    );
    assert_eq!(cells(lines[8]), ["ls", "1", "25", "18", "25", "62.4 %"]);
    assert_eq!(cells(lines[9]), ["dtheta", "-575.007", "0.0288675", "2", "-16.599", "27.5 %"]);
    assert!(text.contains("to second order: standard uncertainty 33.8012 nm; shift of the mean 0 nm"));
    assert!(!text.contains("Monte Carlo"));
    let text = Budget::from_json(&budget("additive_one_large")).unwrap().evaluate().unwrap().to_text();
    assert!(text.contains("Monte Carlo, 400000 trials: mean "));
    assert!(text.contains("the result to first order does not stand against the trials"));
}

/// What two inputs share counts by its difference, whatever it is: the same thermometer twice.
#[test]
fn a_shared_source_cancels() {
    let document = json!({
        "format": "gaugepoint-budget", "version": 1, "name": "difference",
        "sources": [{"name": "thermometer", "distribution": {"rectangular": {"half_width": 0.5}}}],
        "inputs": [
            {"symbol": "first", "estimate": 22, "terms": [{"source": "thermometer"}]},
            {"symbol": "second", "estimate": 24.5, "terms": [{"source": "thermometer", "factor": 1}]}
        ],
        "model": "second - first", "probability": 0.95, "monte_carlo": {"seed": 1, "trials": 1000}
    });
    let report = report(&document.to_string());
    assert_eq!((&report["estimate"], &report["standard_uncertainty"]), (&json!(2.5), &json!(0.0)));
    assert_eq!(report["monte_carlo"]["standard_deviation"], json!(0.0));
    assert_eq!(report["validation"]["validated"], json!(true));
}

/// The formula of a budget and a closure in Rust are the same model: the same bits.
#[test]
fn a_budget_has_the_bits_of_the_closure() {
    use gaugepoint::measurement::distribution::Distribution;
    use gaugepoint::measurement::uncertainty::Inputs;
    let mut inputs = Inputs::new();
    for (name, estimate, u) in
        [("s", 86.0, 0.001), ("d", 0.0123, 0.002), ("a", 11.5e-6, 1e-6), ("t", 23.7, 0.4)]
    {
        inputs.quantity(name, estimate, Distribution::normal(u).unwrap()).unwrap();
    }
    let closure = inputs.evaluate(|x| (&x[0] + &x[1]) / (1.0 + &x[2] * (&x[3] - 20.0))).unwrap();
    let of = |symbol: &str, estimate: f64, u: f64| json!({"symbol": symbol, "estimate": estimate, "distribution": {"normal": {"standard_deviation": u}}});
    let document = json!({
        "format": "gaugepoint-budget", "version": 1, "name": "size", "probability": 0.95,
        "inputs": [of("s", 86.0, 0.001), of("d", 0.0123, 0.002), of("a", 11.5e-6, 1e-6), of("t", 23.7, 0.4)],
        "model": "(s + d) / (1 + a * (t - 20))"
    });
    let report = Budget::from_json(&document.to_string()).unwrap().evaluate().unwrap();
    assert_eq!(report.estimate.to_bits(), closure.estimate.to_bits());
    assert_eq!(report.standard_uncertainty.to_bits(), closure.standard_uncertainty.to_bits());
}

fn nulls(value: &Value) -> bool {
    match value {
        Value::Null => true,
        Value::Array(items) => items.iter().any(nulls),
        Value::Object(fields) => fields.values().any(nulls),
        _ => false,
    }
}

fn number() -> impl Strategy<Value = f64> {
    let strange =
        [0.0, -0.0, 5e-324, 1e-300, 1e-60, 1e-12, 1.0, -1.0, 2.0, 1e10, 1e49, 1e50, 1e99, 1e300, -1e100];
    prop_oneof![-10.0_f64..10.0, proptest::sample::select(strange.to_vec())]
}

proptest! {
    /// Strange numbers and formulas give a report without null, or a refusal with its place.
    #[test]
    fn no_report_holds_null(
        x in number(), y in number(), u in number(), v in number(), dof in number(),
        model in proptest::sample::select(vec!["x + y", "x * y", "x / y", "x ^ 2 * y", "exp(x) + y", "sqrt(x) * ln(y)",
            "max(x, y)", "abs(x) - y", "x ^ 0.5 + y ^ -3", "atan(x * y)", "erfc(x) * tan(y)", "x - x + y"]),
        shape in proptest::sample::select(vec!["normal", "rectangular", "arcsine"]),
    ) {
        let parameter = if shape == "normal" { "standard_deviation" } else { "half_width" };
        let document = json!({
            "format": "gaugepoint-budget", "version": 1, "name": "strange",
            "inputs": [
                {"symbol": "x", "estimate": x, "distribution": {shape: {parameter: u}}},
                {"symbol": "y", "estimate": y, "distribution": {"student_t": {"scale": v, "dof": dof}}}
            ],
            "model": model, "probability": 0.95, "degrees": "as_computed", "monte_carlo": {"seed": 1, "trials": 50}
        });
        match Budget::from_json(&document.to_string()).and_then(|budget| budget.evaluate()) {
            Ok(report) => {
                let value: Value = serde_json::from_str(&report.to_json()).unwrap();
                prop_assert!(!nulls(&value), "{document}");
                prop_assert!(!report.to_json().contains("-0.0,"), "{}", report.to_json());
                prop_assert!(report.to_text().lines().count() > 8);
            }
            Err(error) => prop_assert!(error.field().starts_with('/') && !error.reason().is_empty(), "{error}"),
        }
    }

    /// A piece of a document put elsewhere or left out ends in a report or a refusal.
    #[test]
    fn mangled_documents_have_an_answer(cut in 0_usize..1500, length in 0_usize..30) {
        let document = budget("gum_h1");
        let mangled: String = document.chars().enumerate().filter(|(k, _)| !(cut..cut + length).contains(k)).map(|(_, c)| c).collect();
        if let Err(error) = budget_json(&mangled) {
            prop_assert!(!error.reason().is_empty());
        }
    }
}
