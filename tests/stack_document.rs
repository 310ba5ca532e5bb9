//! Stacks as documents: results by an independent evaluation, refusals, schemas, and what a report always is.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::stack::{StackDocument, StackReport, stack_json, stack_json_bytes};
use gaugepoint::{ErrorKind, Options};
use gaugepoint_tests::replay::Replay;
use gaugepoint_tests::{REFUSED_STACKS, STACKS, rows, text};
use serde_json::{Value, json};
use std::collections::HashMap;

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

/// The documents of `refused/`, as every host reads them.
#[test]
fn refused_stacks() {
    for row in rows(REFUSED_STACKS) {
        let [name, kind, path, refused] = &row[..] else { panic!("{row:?}") };
        let document = text(&format!("tests/vectors/stacks/refused/{name}.json"));
        let error = stack_json(&document, Options::default()).expect_err(name);
        let said = [error.kind().name(), error.field(), error.refused()];
        assert_eq!(said.map(str::trim), [kind.as_str(), path, refused], "{name}: {error}");
    }
    assert_eq!(stack_json_bytes(b"{\xff}", Options::default()).unwrap_err().kind(), ErrorKind::NotUtf8);
}

fn of_one(distribution: &Value, limits: &Value) -> Value {
    json!({
        "format": "gaugepoint-stack", "version": 1, "name": "one", "limits": limits,
        "contributors": [{ "name": "x", "nominal": 0, "lower": -1, "upper": 1, "distribution": distribution }],
    })
}

/// Which way gives a probability, where the contributors leave no other.
#[test]
fn methods_are_told() {
    let method = |document: &Value, side: &str| {
        report(document).pointer(&format!("/exact/{side}_method")).and_then(Value::as_str).map(str::to_owned)
    };
    let normal = json!({ "normal": { "standard_deviation": 0.1 } });
    let beta = json!({ "beta": { "alpha": 2, "beta": 3, "low": 0, "high": 1 } });
    let sample = json!({ "sample": { "values": [0.1, 0.3] } });
    for (document, side, expected) in [
        (of_one(&normal, &json!({ "upper": 0.3 })), "above", Some("closed_form")),
        (of_one(&normal, &json!({ "upper": 0.3 })), "below", None),
        (of_one(&normal, &json!({ "upper": 9 })), "above", Some("beyond_reach")),
        (of_one(&beta, &json!({ "lower": 0.1 })), "below", Some("one_contributor")),
        (of_one(&sample, &json!({ "lower": 0.2 })), "below", Some("enumeration")),
        (document("shims"), "above", Some("line_integral")),
    ] {
        assert_eq!(method(&document, side).as_deref(), expected, "{document}");
    }
}

/// Trials that stop by themselves, and in the bins of a histogram as often as the exact probabilities say.
#[test]
fn trials_settle_and_fill_the_bins() {
    let shims = report(&document("shims"));
    let of = |field: &str| shims.pointer(&format!("/monte_carlo/settled/{field}")).expect(field).clone();
    // a standard deviation of 0.0412 is 4e-2 to one digit: half of 1e-2. Source: JCGM 101:2008, 7.9.2
    assert_eq!((of("tolerance"), of("settled")), (json!(0.005), json!(true)));
    // 10^4 trials each for 99 %: JCGM 101:2008, 7.9.4 b)
    let trials = at(&shims, "/monte_carlo/trials");
    assert!((trials - 10_000.0 * at(&shims, "/monte_carlo/settled/sequences")).abs() < 0.5);
    let mut finer = document("shims");
    finer["monte_carlo"]["settle"] = json!({ "digits": 2, "most_trials": 20000 });
    let finer = report(&finer);
    assert_eq!(finer["monte_carlo"]["settled"]["settled"], json!(false), "{finer}");
    assert_eq!(finer["monte_carlo"]["trials"], json!(20000));
    for name in ["shims", "deck"] {
        let report = report(&document(name));
        let trials = at(&report, "/monte_carlo/trials");
        let bins = report["histogram"]["probabilities"].as_array().expect("a list").len();
        let mut all =
            at(&report, "/monte_carlo/histogram/below") + at(&report, "/monte_carlo/histogram/above");
        for k in 0..bins {
            let p = at(&report, &format!("/histogram/probabilities/{k}"));
            let count = at(&report, &format!("/monte_carlo/histogram/counts/{k}"));
            assert!((count - trials * p).abs() < 5.0 * (trials * p * (1.0 - p)).sqrt(), "{name} {k}");
            all += count;
        }
        assert!((all - trials).abs() < 0.5, "{name}");
    }
    // a value at an edge belongs to the bin below it, exactly and in the trials
    let mut sample = of_one(&json!({ "sample": { "values": [0.1, 0.3] } }), &json!({ "lower": 0 }));
    sample["histogram"] = json!({ "edges": [0, 0.1, 0.3] });
    sample["monte_carlo"] = json!({ "seed": 1, "trials": 1000 });
    let sample = report(&sample);
    assert_eq!(sample["histogram"]["probabilities"], json!([0.5, 0.5]));
    let counts = sample["monte_carlo"]["histogram"]["counts"].as_array().expect("a list").clone();
    assert_eq!(counts.iter().filter_map(Value::as_u64).sum::<u64>(), 1000);
    assert!(counts.iter().all(|count| *count != json!(0)));
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
        // what is added has one unit, also where several contributors of other units leave the same number out
        let inputs = working.inputs.iter().map(|i| (&i.id, &i.unit));
        let units: HashMap<_, _> = inputs.chain(working.constants.iter().map(|k| (&k.id, &k.unit))).collect();
        for step in working.steps.iter().filter(|s| s.formula == "nominal + deviation") {
            let known = step.arguments.0.iter().filter_map(|(_, id)| units.get(id));
            assert!(
                known.clone().count() > 0 && known.clone().all(|unit| **unit == step.unit),
                "{name} {step:?}"
            );
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
