//! Stacks as documents: results by an independent evaluation, refusals, schemas, and what a report always is.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::stack::{StackDocument, StackReport, stack_json, stack_json_bytes};
use gaugepoint::{Error, ErrorKind, Options};
use gaugepoint_tests::replay::Replay;
use gaugepoint_tests::{rows, text};
use serde_json::{Value, json};

const STACKS: [(&str, &str); 4] = [
    ("clutch", "tests/vectors/stacks/clutch.json"),
    ("deck", "core/examples/deck_stack.json"),
    ("ratio", "tests/vectors/stacks/ratio.json"),
    ("shims", "tests/vectors/stacks/shims.json"),
];

fn document(name: &str) -> Value {
    let (_, path) = STACKS.iter().find(|(known, _)| *known == name).expect(name);
    serde_json::from_str(&text(path)).expect("JSON")
}

fn report(document: &Value) -> Value {
    let report = stack_json(&document.to_string(), Options::default()).unwrap_or_else(|e| panic!("{e}"));
    serde_json::from_str(&report).expect("JSON")
}

fn at(report: &Value, pointer: &str) -> f64 {
    report.pointer(pointer).and_then(Value::as_f64).unwrap_or_else(|| panic!("{pointer}"))
}

/// mpmath at 40 digits, `reference/stack_document.py`.
#[test]
fn independently_evaluated_stacks() {
    for (name, _) in STACKS {
        let report = report(&document(name));
        let mut held = 0;
        for row in rows("tests/vectors/stacks/expected.csv") {
            let [of, pointer, expected, tolerance, source] = &row[..] else { panic!("{row:?}") };
            assert!(!source.is_empty(), "{row:?}");
            if of != name {
                continue;
            }
            let (found, expected): (f64, f64) = (at(&report, pointer), expected.parse().expect("a number"));
            let off = (found - expected).abs();
            assert!(
                off <= tolerance.parse().expect("a number"),
                "{name} {pointer}: {found} and not {expected}"
            );
            held += 1;
        }
        assert!(held >= 10, "{name}");
    }
}

/// Trials against what is known without them: mean and deviation to a few of their errors, the exact tails within their intervals, and rare
/// tails by importance sampling against the exact ones.
#[test]
fn trials_agree_with_what_is_exact() {
    let deck = report(&document("deck"));
    for side in ["below", "above"] {
        let exact = at(&deck, &format!("/exact/{side}"));
        let estimate = |field: &str| at(&deck, &format!("/monte_carlo/{side}/{field}"));
        // ten runs of 2^16 points: a few parts in a hundred of a tail of 3e-5
        assert!((estimate("value") - exact).abs() < 0.15 * exact, "{side}");
        let rare = |field: &str| at(&deck, &format!("/monte_carlo/rare_{side}/{field}"));
        let half = rare("value") - rare("lower");
        assert!((rare("value") - exact).abs() < 2.0 * half && half < 0.05 * exact, "{side}");
    }
    for (name, _) in STACKS {
        let report = report(&document(name));
        let (mean, sd) = (at(&report, "/mean"), at(&report, "/standard_deviation"));
        let trials = at(&report, "/monte_carlo/trials");
        // beyond the second order little is left of these functions
        assert!((at(&report, "/monte_carlo/mean/value") - mean).abs() < 4.0 * sd / trials.sqrt(), "{name}");
        assert!((at(&report, "/monte_carlo/standard_deviation") / sd - 1.0).abs() < 0.01, "{name}");
    }
}

#[test]
fn stacks_and_reports_fit_their_schemas() {
    let of_stack = jsonschema::validator_for(StackDocument::schema().as_value()).expect("a schema");
    let of_report = jsonschema::validator_for(StackReport::schema().as_value()).expect("a schema");
    for (name, _) in STACKS {
        let document = document(name);
        assert!(of_stack.is_valid(&document), "{name}: {:?}", of_stack.iter_errors(&document).next());
        let mut wrong = document.clone();
        wrong["contributors"][0]["colour"] = json!("red");
        assert!(!of_stack.is_valid(&wrong), "{name}");
        let report = report(&document);
        assert!(of_report.is_valid(&report), "{name}: {:?}", of_report.iter_errors(&report).next());
        let mut wrong = report;
        wrong.as_object_mut().expect("an object").remove("worst_case");
        assert!(!of_report.is_valid(&wrong), "{name}");
        let once = StackDocument::from_json(&document.to_string()).expect("a stack");
        let again = StackDocument::from_json(&serde_json::to_string(&once).expect("JSON")).expect("a stack");
        assert_eq!(once, again, "{name}");
    }
}

/// Every distribution of the document, in a stack that is exactly its mean.
#[test]
fn every_distribution_is_read() {
    let cases = [
        (json!({ "normal": { "standard_deviation": 0.1 } }), 0.0, 0.1),
        (json!({ "normal_by_capability": { "cp": 1, "cpk": 0.5, "toward": "upper" } }), 0.5, 1.0 / 3.0),
        (json!({ "rectangular": { "half_width": 0.3 } }), 0.0, 0.3 / 3.0_f64.sqrt()),
        (json!({ "uniform_within_limits": {} }), 0.0, 1.0 / 3.0_f64.sqrt()),
        (json!({ "triangular": { "low": 0, "mode": 0, "high": 0.6 } }), 0.2, 0.6 / 18.0_f64.sqrt()),
        (json!({ "trapezoidal": { "half_width": 0.3, "beta": 0.5 } }), 0.0, 0.3 * (1.25_f64 / 6.0).sqrt()),
        (json!({ "arcsine": { "half_width": 0.2 } }), 0.0, 0.2 / 2.0_f64.sqrt()),
        (json!({ "beta": { "alpha": 2, "beta": 2, "low": 0, "high": 1 } }), 0.5, 0.05_f64.sqrt()),
        (
            json!({ "truncated_normal": { "mean": 0.1, "standard_deviation": 0.01, "low": 0, "high": 0.2 } }),
            0.1,
            0.01,
        ),
        (
            json!({ "skewed": { "quantiles": [{ "probability": 0.5, "value": 0.2 }, { "probability": 0.841_344_746_068_542_9, "value": 0.3 }] } }),
            0.2,
            0.1,
        ),
        (json!({ "sample": { "values": [0.1, 0.3] } }), 0.2, 0.1),
    ];
    for (distribution, mean, sd) in cases {
        let document = json!({
            "format": "gaugepoint-stack", "version": 1, "name": "one",
            "contributors": [{ "name": "x", "nominal": 0, "lower": -1, "upper": 1, "distribution": distribution }],
        });
        let report = report(&document);
        let off = (at(&report, "/mean") - mean).abs() + (at(&report, "/standard_deviation") - sd).abs();
        assert!(off < 1e-12, "{distribution}: {report}");
    }
}

fn refusal(document: &Value) -> Error {
    stack_json(&document.to_string(), Options::default()).expect_err("refused")
}

#[test]
fn refused_stacks() {
    let set = |name: &str, pointer: &str, value: Value| {
        let mut document = document(name);
        let (parent, field) = pointer.rsplit_once('/').expect("a pointer");
        document.pointer_mut(parent).expect(parent)[field] = value;
        document
    };
    let cases = [
        ("deck", "/format", json!("gaugepoint-job"), ErrorKind::UnknownFormat, "/format"),
        ("deck", "/name", json!(" "), ErrorKind::MissingField, "/name"),
        ("deck", "/contributors", json!([]), ErrorKind::MissingField, "/contributors"),
        ("deck", "/limits/upper", json!(0.1), ErrorKind::OutOfOrder, "/limits/upper"),
        ("deck", "/limits", json!({}), ErrorKind::MissingField, "/limits/lower"),
        ("deck", "/formula", json!("block"), ErrorKind::Contradiction, "/causes"),
        ("deck", "/monte_carlo/trials", json!(1), ErrorKind::OutOfRange, "/monte_carlo/trials"),
        ("clutch", "/engine", json!("squish"), ErrorKind::Contradiction, "/engine"),
        ("clutch", "/formula", json!("a + c"), ErrorKind::Contradiction, "/contributors/2/name"),
        ("clutch", "/formula", json!("a + c + f"), ErrorKind::UnknownName, "/formula"),
        ("clutch", "/formula", json!("ln(a + c - e)"), ErrorKind::NotFinite, "/formula"),
        ("clutch", "/monte_carlo/runs", json!(3), ErrorKind::Contradiction, "/monte_carlo/runs"),
        ("clutch", "/limits/lower", json!(0.13), ErrorKind::Contradiction, "/limits/lower"),
        ("clutch", "/limits/upper", json!(9), ErrorKind::Contradiction, "/limits/upper"),
        ("ratio", "/unit", json!("mm"), ErrorKind::Contradiction, "/unit"),
        ("ratio", "/engine", json!("squish"), ErrorKind::UnknownName, "/contributors/0/name"),
        ("ratio", "/monte_carlo/rare", json!("yes"), ErrorKind::WrongType, "/monte_carlo/rare"),
    ];
    for (name, pointer, value, kind, field) in cases {
        let error = refusal(&set(name, pointer, value.clone()));
        assert_eq!((error.kind(), error.field()), (kind, field), "{name} {pointer} {value}: {error}");
    }
    let own = [
        ("symbol", json!("pi"), ErrorKind::NotAnExpression, "symbol"),
        ("symbol", json!("c"), ErrorKind::Repeated, "symbol"),
        ("nominal", json!(1e9), ErrorKind::OutOfRange, "nominal"),
        ("upper", json!(-1), ErrorKind::OutOfOrder, "upper"),
        ("count", json!(2), ErrorKind::Contradiction, "count"),
        ("coefficient", json!(-1), ErrorKind::Contradiction, "coefficient"),
        ("centre", json!(1e9), ErrorKind::OutOfRange, "distribution/normal/centre"),
        (
            "distribution",
            json!({ "normal": { "standard_deviation": -1 } }),
            ErrorKind::OutOfRange,
            "distribution/normal/standard_deviation",
        ),
        (
            "distribution",
            json!({ "beta": { "alpha": 1, "beta": 1, "low": 1, "high": 0 } }),
            ErrorKind::OutOfOrder,
            "distribution/beta/upper",
        ),
    ];
    for (field, value, kind, place) in own {
        // the first contributor, after the others for a symbol that stands twice
        let k = if field == "symbol" { 2 } else { 0 };
        let error = refusal(&set("clutch", &format!("/contributors/{k}/{field}"), value.clone()));
        let at = format!("/contributors/{k}/{place}");
        assert_eq!((error.kind(), error.field()), (kind, at.as_str()), "{field} {value}: {error}");
    }
    let mut centred = document("clutch");
    centred["contributors"][0]["distribution"] = json!({ "sample": { "values": [0.1] } });
    centred["contributors"][0]["centre"] = json!(0.1);
    assert_eq!(refusal(&centred).field(), "/contributors/0/centre");
    let unknown = set("deck", "/causes/0/on/0/contributor", json!("rood"));
    assert_eq!(
        (refusal(&unknown).kind(), refusal(&unknown).field()),
        (ErrorKind::UnknownName, "/causes/0/on/0")
    );
    let mut limitless = document("clutch");
    limitless.as_object_mut().expect("an object").remove("limits");
    assert_eq!(refusal(&limitless).field(), "/monte_carlo/rare");
    assert_eq!(stack_json_bytes(b"{\xff}", Options::default()).unwrap_err().kind(), ErrorKind::NotUtf8);
}

/// What the text says, by hand from the numbers of the report.
#[test]
fn the_text_says_it() {
    let of = |name: &str| {
        StackDocument::from_json(&document(name).to_string())
            .and_then(|s| s.evaluate(Options::default()))
            .expect("a report")
            .to_text()
    };
    let deck = of("deck");
    for line in [
        "nominal: 0.2 mm",
        "worst case: 0.065 to 0.335 mm",
        "Cp 1.09473, Cpk 0.924964",
        "Bender's 1.5: 0.0947325 to 0.305268 mm",
    ] {
        assert!(deck.contains(line), "{line} in {deck}");
    }
    let clutch = of("clutch");
    assert!(
        clutch.contains("at two corners of the limits") && clutch.contains("skewness -0.125526"),
        "{clutch}"
    );
    assert!(of("ratio").contains("stack: compression ratio"));
}

/// Every step of the working gives its number to the bit, and the numbers stand where the working says.
#[test]
fn the_working_is_replayed() {
    for (name, _) in STACKS {
        let stack = StackDocument::from_json(&document(name).to_string()).expect("a stack");
        let report = stack.evaluate(Options { working: true }).expect("a report");
        let written: Value = serde_json::from_str(&report.to_json()).expect("JSON");
        let working = report.working.as_ref().expect("it was asked for");
        let replay = Replay::new(working);
        let values = replay.values(|k| working.inputs[k].value, |_| None);
        for (step, value) in working.steps.iter().zip(&values) {
            assert_eq!(step.value.to_bits(), (value + 0.0).to_bits(), "{name} {} {}", step.id, step.formula);
        }
        let results = replay.results(&values);
        for (pointer, number) in &results {
            assert_eq!(at(&written, pointer).to_bits(), (number + 0.0).to_bits(), "{name} {pointer}");
        }
        // everything that is a formula is there
        let whole =
            if written.get("propagation").is_some() { "/propagation/first_order_mean" } else { "/exact/cpk" };
        for pointer in ["/nominal", whole, "/shares/1/share", "/shares/1/standard_deviation"] {
            assert!(results.contains_key(pointer), "{name} {pointer}");
        }
        assert!(
            working.inputs.iter().all(|i| document(name).pointer(&i.path).is_some() && !i.typed.is_empty())
        );
        assert!(report.to_text().contains("WORKING") && report.to_markdown().contains("## Working"));
        let plain = stack.evaluate(Options::default()).expect("a report");
        assert_eq!(StackReport { working: None, ..report }, plain, "{name}");
    }
}
