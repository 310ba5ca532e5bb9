//! What a job means: partial results, comparability, findings, correlation, the reference case.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]
#![allow(clippy::disallowed_methods, reason = "the tests' own arithmetic is compared with a tolerance")]

use gaugepoint::budget::{BudgetDocument, BudgetReport};
use gaugepoint::decision::{Conformity, Of, Outcome};
use gaugepoint::fit::{FitDocument, FitReport, HotReport};
use gaugepoint::measure::{MeasurementDocument, MeasurementReport, measure};
use gaugepoint::report::{CylinderReport, MeasuredValue};
use gaugepoint::revisit::{RevisitDocument, RevisitReport};
use gaugepoint::sheet::{SheetDocument, SheetReport};
use gaugepoint::stack::{StackDocument, StackReport};
use gaugepoint::what_if::{WhatIfDocument, WhatIfReport};
use gaugepoint::{Document, ErrorKind, Options, Report, assess};
use gaugepoint_tests::{EXAMPLES, JOBS, MEASUREMENTS, job, measurement, workspace};
use serde_json::{Value, json};

fn document(name: &str) -> Value {
    serde_json::from_str(&job(name)).expect("JSON")
}

fn report(document: &Value) -> Report {
    let document = Document::from_json(&document.to_string()).unwrap_or_else(|e| panic!("{e}"));
    assess(&document, Options::default()).unwrap_or_else(|e| panic!("{e}"))
}

/// The document with the value at a pointer replaced, or removed by `null`.
fn with(document: &Value, pointer: &str, value: Value) -> Value {
    let mut out = document.clone();
    let (parent, last) = pointer.rsplit_once('/').expect("a pointer");
    let parent = out.pointer_mut(parent).unwrap_or_else(|| panic!("{pointer}"));
    match (parent, value) {
        (Value::Object(fields), Value::Null) => drop(fields.remove(last)),
        (Value::Object(fields), value) => drop(fields.insert(last.to_owned(), value)),
        (Value::Array(items), Value::Null) => drop(items.remove(last.parse().expect("an index"))),
        (Value::Array(items), value) => items[last.parse::<usize>().expect("an index")] = value,
        (other, _) => panic!("{pointer}: {other}"),
    }
    out
}

/// What a job finds, without what is done about it: the plan names cylinders and limits that a test may take away.
fn without_plan(name: &str) -> Value {
    with(&document(name), "/plan", Value::Null)
}

fn decision(cylinder: &CylinderReport, of: Of) -> &gaugepoint::decision::Decision {
    let decisions = [
        cylinder.piston.as_ref().map(|p| &p.decisions),
        cylinder.bore.as_ref().map(|b| &b.decisions),
        cylinder.clearance.as_ref().map(|c| &c.decisions),
    ];
    decisions.into_iter().flatten().flatten().find(|d| d.of == of).unwrap_or_else(|| panic!("{of:?}"))
}

fn bench(cylinder: &CylinderReport) -> &MeasuredValue {
    cylinder.clearance.as_ref().and_then(|c| c.bench.as_ref()).expect("a bench clearance")
}

// --- the schema ---

/// The schemas in the documentation are those of the code; `UPDATE_SCHEMA=1` writes them.
#[test]
fn the_exported_schemas_are_current() {
    let schemas = [
        ("job", Document::schema(), Document::schema_json()),
        ("report", Report::schema(), Report::schema_json()),
        ("sheet", SheetDocument::schema(), SheetDocument::schema_json()),
        ("sheet-report", SheetReport::schema(), SheetReport::schema_json()),
        ("measurement", MeasurementDocument::schema(), MeasurementDocument::schema_json()),
        ("fit", FitDocument::schema(), FitDocument::schema_json()),
        ("fit-report", FitReport::schema(), FitReport::schema_json()),
        ("measurement-report", MeasurementReport::schema(), MeasurementReport::schema_json()),
        ("budget", BudgetDocument::schema(), BudgetDocument::schema_json()),
        ("budget-report", BudgetReport::schema(), BudgetReport::schema_json()),
        ("stack", StackDocument::schema(), StackDocument::schema_json()),
        ("stack-report", StackReport::schema(), StackReport::schema_json()),
        ("revisit", RevisitDocument::schema(), RevisitDocument::schema_json()),
        ("revisit-report", RevisitReport::schema(), RevisitReport::schema_json()),
        ("what-if", WhatIfDocument::schema(), WhatIfDocument::schema_json()),
        ("what-if-report", WhatIfReport::schema(), WhatIfReport::schema_json()),
    ];
    for (name, schema, kept) in schemas {
        let path = format!("core/docs/{name}.schema.json");
        let current = serde_json::to_string_pretty(&schema).expect("JSON") + "\n";
        if std::env::var_os("UPDATE_SCHEMA").is_some() {
            std::fs::write(workspace(&path), &current).expect("written");
            continue;
        }
        assert!(
            kept == current,
            "{path} is stale: UPDATE_SCHEMA=1 cargo test -p gaugepoint-tests --test job"
        );
    }
}

#[test]
fn measurements_and_their_reports_fit_their_schemas() {
    let [of_document, of_report] = [MeasurementDocument::schema(), MeasurementReport::schema()]
        .map(|schema| jsonschema::validator_for(schema.as_value()).expect("a schema"));
    for name in MEASUREMENTS {
        let value: Value = serde_json::from_str(&measurement(name)).expect("JSON");
        assert!(of_document.is_valid(&value), "{name}: {:?}", of_document.iter_errors(&value).next());
        let document = MeasurementDocument::from_json(&measurement(name)).expect("a document");
        let report = measure(&document, Options { working: true }).expect("accepted").to_json();
        let report: Value = serde_json::from_str(&report).expect("JSON");
        assert!(of_report.is_valid(&report), "{name}: {:?}", of_report.iter_errors(&report).next());
        // and a schema that takes everything would not do
        assert!(!of_document.is_valid(&with(&value, "/readings/0", json!({"weighed": {}}))), "{name}");
        assert!(!of_report.is_valid(&with(&report, "/readings/0/result", json!(1))), "{name}");
    }
}

#[test]
fn jobs_and_reports_fit_their_schemas() {
    let of_job = jsonschema::validator_for(Document::schema().as_value()).expect("a schema");
    let of_report = jsonschema::validator_for(Report::schema().as_value()).expect("a schema");
    for name in JOBS {
        assert!(of_job.is_valid(&document(name)), "{name}: {:?}", of_job.iter_errors(&document(name)).next());
        for working in [false, true] {
            let report = assess(&Document::from_json(&job(name)).expect("a job"), Options { working })
                .expect("accepted");
            let value: Value = serde_json::from_str(&report.to_json()).expect("JSON");
            assert!(of_report.is_valid(&value), "{name}: {:?}", of_report.iter_errors(&value).next());
        }
        // and a schema that takes everything would not do
        let wrong = [
            ("/shop/temperature", json!(27)),
            ("/engine/bore/colour", json!("red")),
            ("/gauges/0/kind", json!("ruler")),
            ("/job/date", Value::Null),
        ];
        for (pointer, value) in wrong {
            assert!(!of_job.is_valid(&with(&document(name), pointer, value)), "{name} {pointer}");
        }
    }
}

/// A document that is written out again is the same document.
#[test]
fn a_document_survives_being_written_and_read() {
    for name in JOBS {
        let once = Document::from_json(&job(name)).expect("a job");
        let again = serde_json::to_string(&once).expect("JSON");
        let again = Document::from_json(&again).expect("a job");
        assert_eq!(once, again, "{name}");
    }
}

// --- partial results ---

#[test]
fn what_is_missing_is_named_and_stops_nothing_else() {
    let document = document("pump_six");
    let whole = report(&document);
    let missing = [
        ("/cylinders/1/piston", "piston: nothing read"),
        ("/cylinders/1/bore", "bore: nothing read"),
        ("/cylinders/1", "piston: nothing read"),
        ("/cylinders/1/piston/readings/0", "at its gauge point"),
        ("/cylinders/1/bore/readings", "no reading at the place"),
    ];
    for (pointer, text) in missing {
        let emptied = if pointer.ends_with("readings") { json!([]) } else { Value::Null };
        let partial = report(&with(&document, pointer, emptied));
        let cylinder = &partial.cylinders[1];
        assert!(cylinder.missing.iter().any(|m| m.contains(text)), "{pointer}: {:?}", cylinder.missing);
        assert_eq!(cylinder.verdict.outcome, Outcome::Incomplete, "{pointer}: {:?}", cylinder.verdict);
        assert!(cylinder.clearance.as_ref().is_none_or(|c| c.bench.is_none()), "{pointer}");
        // the values of every other cylinder stand as they were (paths shift when an entry is gone)
        for (k, (a, b)) in whole.cylinders.iter().zip(&partial.cylinders).enumerate().filter(|(k, _)| *k != 1)
        {
            assert_eq!(
                bench(a).value_mm.to_bits(),
                bench(b).value_mm.to_bits(),
                "{pointer}: cylinder {}",
                k + 1
            );
            assert_eq!(a.verdict.outcome, b.verdict.outcome, "{pointer}: cylinder {}", k + 1);
        }
    }
    // one place of six was not read: the others still give a size, and the gap is named
    let partial = report(&with(&document, "/cylinders/1/bore/readings/3/repeats", json!([])));
    let bore = partial.cylinders[1].bore.as_ref().expect("a bore");
    assert!(bore.size.is_some() && bore.places.len() == 5);
    assert!(partial.cylinders[1].missing[0].contains("nothing read"));
}

#[test]
fn an_overdue_gauge_proves_nothing() {
    let document = document("pump_six");
    let stale = with(&document, "/gauges/0/calibration_due", json!("2026-03-13"));
    let report_stale = report(&stale);
    assert!(
        report_stale
            .warnings
            .iter()
            .any(|w| w.kind == "calibration_overdue" && w.path == "/gauges/0/calibration_due")
    );
    assert_eq!(report_stale.gauges[0].calibration, "overdue");
    for cylinder in &report_stale.cylinders {
        let piston = decision(cylinder, Of::PistonSize);
        assert_eq!(piston.result, Conformity::NotProven, "{}", piston.reason);
        assert!(piston.reason.contains("out of calibration"));
        assert_eq!(decision(cylinder, Of::BenchClearance).result, Conformity::NotProven);
    }
    // the bores were read with the other gauge
    assert_eq!(decision(&report_stale.cylinders[0], Of::BoreSize).result, Conformity::Conforms);
    // on the day it is due it is in date; simple acceptance does not speak of proof
    assert_eq!(
        report(&with(&document, "/gauges/0/calibration_due", json!("2026-03-14"))).gauges[0].calibration,
        "in date"
    );
    let simple = report(&with(&stale, "/decision", json!({"rule": "simple_acceptance"})));
    assert_eq!(decision(&simple.cylinders[0], Of::PistonSize).result, Conformity::Conforms);
    // a bore gauge set on a micrometer is as good as the micrometer's calibration
    let twin = with(&self::document("air_twin"), "/gauges/0/calibration_due", json!("2026-02-01"));
    assert_eq!(decision(&report(&twin).cylinders[0], Of::BoreSize).result, Conformity::NotProven);
}

// --- comparability ---

#[test]
fn unlike_things_are_not_compared() {
    let document = document("pump_six");
    let changes = [
        // a run-in piston against limits for new ones, a bore with the plate fitted against limits for a bare block
        (
            "/engine/limits/piston_size/piston_states",
            json!(["new"]),
            "/cylinders/0/piston/state",
            json!("run_in"),
            Of::PistonSize,
        ),
        (
            "/engine/limits/bench_clearance/piston_states",
            json!(["new"]),
            "/cylinders/0/piston/state",
            json!("run_in"),
            Of::BenchClearance,
        ),
        (
            "/engine/limits/bore_size/clamping",
            json!(["bare"]),
            "/cylinders/0/bore/clamping",
            json!("plate_fitted"),
            Of::BoreSize,
        ),
        // over a coating of unknown thickness against limits for bare metal
        (
            "/engine/limits/piston_size/over",
            json!("bare_metal"),
            "/cylinders/0/piston/readings/0/coating",
            Value::Null,
            Of::PistonSize,
        ),
        (
            "/engine/limits/bench_clearance/over",
            json!("bare_metal"),
            "/cylinders/0/piston/readings/0/coating",
            Value::Null,
            Of::BenchClearance,
        ),
    ];
    for (limit, meant, reading, is, of) in changes {
        let report = report(&with(&with(&document, limit, meant), reading, is));
        let decision = decision(&report.cylinders[0], of);
        assert_eq!(decision.result, Conformity::NotJudged, "{limit} {reading}");
        assert!(decision.value_mm.is_none() && decision.reason.len() > 20, "{}", decision.reason);
        assert!(report.cylinders[0].verdict.outcome >= Outcome::NotProven, "{limit} {reading}");
    }
    // at another height, on another axis or from another datum it is another size
    for (field, value) in
        [("height", json!("30 mm")), ("angle", json!("90 deg")), ("datum", json!("pin_axis"))]
    {
        let pointer = format!("/cylinders/1/piston/readings/0/{field}");
        let report = report(&with(&document, &pointer, value));
        assert!(report.cylinders[1].missing.iter().any(|m| m.contains("another place")), "{field}");
        assert!(
            report.cylinders[1].piston.as_ref().is_some_and(|p| p.sizes.len() == 1 && p.decisions.is_empty())
        );
    }
}

#[test]
fn the_coating_comes_off_twice() {
    let document = document("pump_six");
    let piston = report(&document).cylinders[0].piston.clone().expect("a piston");
    let place = &piston.sizes[0];
    let bare = place.bare_size.as_ref().expect("a stated thickness");
    let thickness = 0.012; // per side, as stated in the document
    assert_eq!(
        document.pointer("/cylinders/0/piston/readings/0/coating/thickness_per_side"),
        Some(&json!("12 um"))
    );
    assert!((place.size.value_mm - bare.value_mm - 2.0 * thickness).abs() < 1e-12);
    // and its uncertainty counts twice too: 2 * half-width / sqrt(3), JCGM 100 4.3.7
    let line = bare.budget.iter().find(|l| l.source.starts_with("coating")).expect("a source");
    assert!(
        (line.contribution_mm.abs() - 2.0 * 0.003 / 3f64.sqrt()).abs() < 1e-6,
        "{}",
        line.contribution_mm
    );
}

// --- reduction rules (by hand on one set of six) ---

#[test]
fn bores_are_reduced_by_named_rules() {
    // deviations in um, depth by depth, thrust and pin axis; the sizes differ from them by one constant at 20 C
    let readings = |rows: [(i32, i32); 3]| -> Value {
        let depths = ["20 mm", "90 mm", "160 mm"];
        let places = rows.iter().zip(depths).flat_map(|((x, y), depth)| {
            [("0 deg", x), ("90 deg", y)]
                .map(|(axis, um)| json!({"depth": depth, "axis": axis, "repeats": [format!("{um} um")]}))
        });
        Value::Array(places.collect())
    };
    let mut document = document("pump_six");
    document = with(&document, "/cylinders/0/bore/readings", readings([(31, 12), (24, 15), (9, 5)]));
    let cases = [
        // size, taper and out-of-round of (31 12) (24 15) (9 5)
        (json!("largest"), "along_axis", "at_level", 31.0, 22.0, 19.0),
        (json!("mean"), "top_to_bottom", "between_axes", 16.0, 22.0, 26.0),
        (json!("smallest_wear"), "along_axis", "at_level", 7.0, 22.0, 19.0),
        (json!({"at": {"depth": "90 mm"}}), "along_axis", "at_level", 19.5, 22.0, 19.0),
        (json!({"at": {"depth": "90 mm", "axis": "90 deg"}}), "along_axis", "at_level", 15.0, 22.0, 19.0),
    ];
    let zero = {
        let flat = with(&document, "/cylinders/0/bore/readings", readings([(0, 0); 3]));
        report(&flat).cylinders[0].bore.as_ref().and_then(|b| b.size.as_ref()).expect("a size").value_mm
    };
    for (size, taper, round, expected_size, expected_taper, expected_round) in cases {
        let rule = json!({"size": size, "taper": taper, "out_of_round": round});
        let bore =
            report(&with(&document, "/engine/reduction", rule)).cylinders[0].bore.clone().expect("a bore");
        let um = |value: &Option<MeasuredValue>, from: f64| {
            (value.as_ref().expect("reduced").value_mm - from) * 1000.0
        };
        // growth of the deviation itself, 11.4e-6 * 7 K, is below 0.003 um
        assert!((um(&bore.size, zero) - expected_size).abs() < 0.003, "{size}: {}", um(&bore.size, zero));
        assert!((um(&bore.taper, 0.0) - expected_taper).abs() < 0.003, "{taper}: {}", um(&bore.taper, 0.0));
        assert!(
            (um(&bore.out_of_round, 0.0) - expected_round).abs() < 0.003,
            "{round}: {}",
            um(&bore.out_of_round, 0.0)
        );
    }
    // a range of equal readings is zero, and not certain
    let flat = report(&with(&document, "/cylinders/0/bore/readings", readings([(10, 10); 3])));
    let taper = flat.cylinders[0].bore.as_ref().and_then(|b| b.taper.clone()).expect("reduced");
    assert!(taper.value_mm.abs() < 1e-12 && taper.standard_uncertainty_mm > 0.001, "{taper:?}");
}

// --- rules of decision ---

/// Shares of U by hand: bands of a job are the shares of the expanded uncertainty of the value that is judged, on both sides of the limits.
#[test]
fn guard_bands_are_shares_of_the_expanded_uncertainty() {
    let document = document("pump_six");
    let judged = |decision: Value| {
        let report = report(&with(&document, "/decision", decision));
        self::decision(&report.cylinders[3], Of::BoreSize).clone()
    };
    // 1998: the guard band is U = 2 u, for acceptance and for rejection
    let whole = judged(json!({"rule": "expanded_guard_band"}));
    let u = whole.standard_uncertainty_mm.expect("judged");
    let close = |of: Option<f64>, expected: f64| assert!((of.expect("given") - expected).abs() < 1e-15);
    close(whole.guard_band_mm, 2.0 * u);
    close(whole.rejection_guard_band_mm, 2.0 * u);
    // this bore lies inside its limit by less than 1.65 u
    let inside = whole.upper_mm.expect("a limit") - whole.value_mm.expect("judged");
    assert!(inside > 0.0 && inside < 1.65 * u, "{inside} {u}");
    assert_eq!(whole.result, Conformity::NotProven);
    // relaxed acceptance at the limit itself takes it; stringent with a smaller share may, by hand
    let share = inside / (2.0 * u);
    for (factor, result) in [(0.99, Conformity::Conforms), (1.01, Conformity::NotProven)] {
        let accept =
            json!({"rule": "expanded_guard_band", "acceptance_guard": format!("{:.6}", share * factor)});
        let decision = judged(accept);
        assert_eq!(decision.result, result, "{}", decision.reason);
        close(decision.rejection_guard_band_mm, 2.0 * u);
    }
    // relaxed rejection: what is inside by less than the share does not conform, and nothing lies between
    for (factor, result) in [(0.99, Conformity::Conforms), (1.01, Conformity::DoesNotConform)] {
        let (h, less) = (format!("{:.6}", share * factor), format!("-{:.6}", share * factor));
        let both = json!({"rule": "expanded_guard_band", "acceptance_guard": h, "rejection_guard": less});
        assert_eq!(judged(both).result, result);
    }
}

/// Tolerance over 2 U by hand, with the tolerance as printed: both limits, or a form's upper one; the smallest clearance and the margins have
/// that of the bench clearance.
#[test]
fn a_ratio_is_of_the_printed_tolerance() {
    let document = document("pump_six");
    let rule = |n: f64| json!({"rule": "simple_acceptance_by_ratio", "ratio_at_least": n});
    let first = report(&with(&document, "/decision", rule(1.0))).cylinders[0].clone();
    let mm = |pointer: &str| {
        let text = document.pointer(pointer).and_then(Value::as_str).expect(pointer);
        let length: f64 = text.split(' ').next().and_then(|n| n.parse().ok()).expect(pointer);
        if text.ends_with("in") { length * 25.4 } else { length }
    };
    let width =
        |limit: &str| mm(&format!("/engine/limits/{limit}/max")) - mm(&format!("/engine/limits/{limit}/min"));
    let bench = width("bench_clearance");
    let tolerances = [
        (Of::PistonSize, width("piston_size")),
        (Of::BoreSize, width("bore_size")),
        (Of::BoreTaper, mm("/engine/limits/bore_taper/max")),
        (Of::BoreOutOfRound, mm("/engine/limits/bore_out_of_round/max")),
        (Of::BenchClearance, bench),
        (Of::SmallestClearance, bench),
        (Of::RunningMarginTight, bench),
        (Of::RunningMarginLoose, bench),
    ];
    for (of, tolerance) in tolerances {
        let decision = decision(&first, of);
        let expected = tolerance / (4.0 * decision.standard_uncertainty_mm.expect("judged"));
        let found = decision.uncertainty_ratio.expect("a ratio");
        assert!((found - expected).abs() < 1e-9 * expected, "{of:?}: {found} {expected}");
        // just reached, and just not
        for (n, held) in [(expected * 0.999, true), (expected * 1.001, false)] {
            let n = (n * 1e6).round() / 1e6;
            if !(1.0..=100.0).contains(&n) {
                continue;
            }
            let report = report(&with(&document, "/decision", rule(n)));
            let result = self::decision(&report.cylinders[0], of).result;
            assert_eq!(result == Conformity::NotProven, !held, "{of:?} at {n}");
        }
    }
    // without an upper limit there is no ratio of a size
    let open = with(&with(&document, "/decision", rule(4.0)), "/engine/limits/bore_size/max", Value::Null);
    let open = report(&open).cylinders[0].clone();
    let size = decision(&open, Of::BoreSize);
    assert!(size.uncertainty_ratio.is_none() && size.result == Conformity::NotProven, "{}", size.reason);
}

/// Every rule says in words what it asked for.
#[test]
fn a_report_names_its_rule() {
    let document = document("pump_six");
    let text = |decision: Value| {
        let report = report(&with(&document, "/decision", decision));
        // folded lines and emphasis apart
        let plain = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
        (plain(report.to_text()), plain(report.to_markdown()))
    };
    let said = [
        (
            json!({"rule": "expanded_guard_band", "acceptance_guard": 0.5, "rejection_guard": "-0.25"}),
            "0.5 U for acceptance and -0.25 U for rejection",
        ),
        (json!({"rule": "simple_acceptance_by_ratio"}), "at least 4 times the uncertainty interval 2 U"),
    ];
    for (rule, words) in said {
        let (text, markdown) = text(rule);
        assert!(text.contains(words), "{text}");
        assert!(markdown.contains(words), "{markdown}");
    }
}

// --- degrees of freedom ---

/// By hand: the pooled deviation of the repeats of one gauge, the only finite estimate, in the shares of the report itself.
#[test]
fn few_repeats_are_known_to_few_degrees_of_freedom() {
    let mut document = without_plan("pump_six");
    document["gauges"][1].as_object_mut().expect("a gauge").remove("repeatability");
    document["cylinders"].as_array_mut().expect("a list").truncate(1);
    document["engine"]["cylinders"] = json!(1);
    // um of each place: deviations from its mean squared are 2 * 0.5^2, 2, 2 * 1^2, and none for one reading
    let repeats = [&["10 um", "11 um"][..], &["11 um", "12 um", "13 um"], &["10 um", "12 um"], &["9 um"]];
    let places: Vec<Value> = repeats
        .iter()
        .zip(["22 mm", "85 mm", "150 mm", "160 mm"])
        .map(|(r, depth)| json!({"depth": depth, "axis": "0 deg", "repeats": r}))
        .collect();
    document["cylinders"][0]["bore"]["readings"] = json!(places);
    let cylinder = report(&document).cylinders[0].clone();
    let bore = cylinder.bore.as_ref().expect("a bore");
    let s = ((0.5 + 2.0 + 2.0) / 4.0_f64).sqrt() / 1000.0;
    for (place, n) in bore.places.iter().zip([2.0, 3.0, 2.0, 1.0_f64]) {
        let line =
            place.size.budget.iter().find(|l| l.source.starts_with("repeatability")).expect("a source");
        // growth of the deviation itself is 8e-5 of it
        assert!((line.contribution_mm - s / n.sqrt()).abs() < 1e-6, "{}", line.contribution_mm);
        let dof = place.size.dof.expect("finite");
        assert!((dof - 4.0 / line.share.powi(2)).abs() < 1e-9 * dof, "{dof}");
        // more than 2, and what is printed is that many standard uncertainties
        let k = place.size.coverage_factor;
        assert!(
            k > 2.0
                && (place.size.expanded_uncertainty_mm / place.size.standard_uncertainty_mm - k).abs()
                    < 1e-12
        );
    }
    // the piston's gauge states its repeatability, which is taken as exact
    let piston = &cylinder.piston.as_ref().expect("a piston").sizes[0].size;
    assert!(piston.dof.is_none() && piston.coverage_factor.to_bits() == 2.0_f64.to_bits());
    // the guard band has the factor of t, a little more than 1.65
    let size = decision(&cylinder, Of::BoreSize);
    let factor = size.guard_band_mm.expect("proven") / size.standard_uncertainty_mm.expect("judged");
    assert!(factor > 1.65 && factor < 2.2, "{factor}");
    let text = report(&document).to_text();
    assert!(text.contains("(k = 2."), "{text}");
}

/// JCGM 100:2008, G.4.2: a figure that is known to 25 % has 8 degrees of freedom, to 50 % 2; the share is that of the report itself.
#[test]
fn a_doubtful_permissible_error_has_few_degrees_of_freedom() {
    let document = document("pump_six");
    for (r, dof) in [(0.25, 8.0), (0.5, 2.0)] {
        let pointer = "/gauges/0/permissible_error_relative_uncertainty";
        let report = report(&with(&document, pointer, json!(r)));
        let size = &report.cylinders[0].piston.as_ref().expect("a piston").sizes[0].size;
        let line = size.budget.iter().find(|l| l.source.starts_with("scale")).expect("a source");
        let expected = dof / line.share.powi(2);
        let found = size.dof.expect("finite");
        assert!((found - expected).abs() < 1e-9 * expected, "{found} {expected}");
    }
}

// --- limits of some cylinders ---

/// Two cylinders with the same readings: the rear one has limits of its own for piston and fit, and those of the engine for the rest. By hand.
#[test]
fn a_cylinder_is_judged_by_its_own_limits() {
    let document = document("rear_cylinders");
    let report = self::report(&document);
    let (front, rear) = (&report.cylinders[4], &report.cylinders[6]);
    assert_eq!(bench(front).value_mm.to_bits(), bench(rear).value_mm.to_bits());
    let limits = |cylinder: &CylinderReport, of: Of| {
        let d = decision(cylinder, of);
        (d.lower_mm.expect("a limit"), d.upper_mm.expect("a limit"), d.for_cylinders.clone())
    };
    assert_eq!(limits(front, Of::BenchClearance), (0.075, 0.110, vec![]));
    assert_eq!(limits(rear, Of::BenchClearance), (0.093, 0.125, vec![7, 8]));
    assert_eq!(limits(rear, Of::PistonSize), (103.880, 103.910, vec![7, 8]));
    assert_eq!(limits(rear, Of::BoreSize), limits(front, Of::BoreSize));
    assert_eq!(decision(rear, Of::SmallestClearance).for_cylinders, [7, 8]);
    assert_eq!(decision(rear, Of::RunningMarginTight).for_cylinders, [7, 8]);
    assert_eq!(front.verdict.outcome, Outcome::Reuse);
    assert_eq!(rear.verdict.outcome, Outcome::DoNotReuse);
    assert!(
        decision(rear, Of::BenchClearance).origin.as_ref().is_some_and(|o| o.contains("cylinders 7 and 8"))
    );
    // the reference case is the original piston at the least clearance of this cylinder: 18 um less room by hand
    let margin = |c: &CylinderReport| decision(c, Of::RunningMarginTight).value_mm.expect("judged");
    assert!((margin(front) - margin(rear) - 0.018).abs() < 1e-4, "{} {}", margin(front), margin(rear));
    let page = report.to_text().split_whitespace().collect::<Vec<_>>().join(" ");
    for said in ["0.093 to 0.125 mm (cylinders 7 and 8): not proven", "Limits of cylinders 7 and 8: invented"]
    {
        assert!(page.contains(said), "{page}");
    }
    assert!(
        report.to_markdown().contains("0.093 to 0.125 mm (cylinders 7 and 8) |"),
        "{}",
        report.to_markdown()
    );
    // a limit that only some cylinders have is missing for the others, and they are named
    let partly = with(&document, "/engine/limits/bench_clearance", Value::Null);
    let partly = self::report(&partly);
    let missing: Vec<&str> =
        partly.warnings.iter().filter(|w| w.kind == "no_limit").map(|w| w.text.as_str()).collect();
    assert_eq!(
        missing,
        ["no limit is given for the bench clearance of cylinders 1, 2, 3, 4, 5 and 6: it was not judged"]
    );
    assert!(partly.cylinders[4].verdict.outcome >= Outcome::NotProven);
}

// --- windows, bores that may not be machined, pistons of several materials ---

/// A plated barrel beyond its limits: nothing in the report sends it to the hone, and it says why.
#[test]
fn a_bore_that_may_not_be_machined_is_not_sent_to_the_hone() {
    let document = document("ported_barrel");
    let report = self::report(&document);
    let why = |reasons: &[String]| reasons.iter().filter(|r| r.contains("plated with nickel")).count();
    let bore = |k: usize| report.cylinders[k].bore.as_ref().expect("a bore");
    assert_eq!((bore(0).verdict.outcome, why(&bore(0).verdict.reasons)), (Outcome::Reuse, 0));
    assert_eq!(report.cylinders[0].verdict.outcome, Outcome::Reuse, "{:?}", report.cylinders[0].verdict);
    assert_eq!((bore(1).verdict.outcome, why(&bore(1).verdict.reasons)), (Outcome::DoNotReuse, 1));
    assert_eq!(why(&report.cylinders[1].verdict.reasons), 1);
    assert!(!report.cautions.iter().any(|c| c.starts_with("Boring and honing")), "{:?}", report.cautions);
    assert!(report.cautions.iter().any(|c| c.contains("may not be machined")));
    assert_eq!(report.engine.may_not_be_machined.as_deref(), Some("plated with nickel and silicon carbide"));
    // the same barrel without a coat is bored as any other
    let plain = self::report(&with(&document, "/engine/bore/may_not_be_machined", Value::Null));
    assert!(plain.cautions.iter().any(|c| c.starts_with("Boring and honing")));
    assert_eq!(why(&plain.cylinders[1].verdict.reasons), 0);
    // a fit that is refuted says it too, though the bore itself conforms
    let tight = with(&document, "/cylinders/0/piston/readings/0/repeats", json!(["53.990 mm"]));
    let tight = self::report(&tight);
    assert_eq!(tight.cylinders[0].bore.as_ref().map(|b| b.verdict.outcome), Some(Outcome::Reuse));
    assert_eq!(why(&tight.cylinders[0].verdict.reasons), 1);
}

/// The ends of a diameter against the exhaust port from 335 on to 25 deg and the transfer port from 60 to 120 deg, by hand.
#[test]
fn a_diameter_across_a_window_is_refused() {
    let document = document("ported_barrel");
    let read = |depth: &str, axis: &str| {
        let place = json!({"depth": depth, "axis": axis, "repeats": ["0.004 mm"]});
        let job = with(&document, "/cylinders/0/bore/readings", json!([place]));
        assess(&Document::from_json(&job.to_string()).expect("a job"), Options::default())
    };
    let on = [
        ("40 mm", "0 deg", "exhaust"),
        ("40 mm", "180 deg", "exhaust"),
        ("34 mm", "25 deg", "exhaust"),
        ("58 mm", "155 deg", "exhaust"),
        ("50 mm", "270 deg", "transfer"),
        ("42 mm", "300 deg", "transfer"),
    ];
    for (depth, axis, port) in on {
        let error = read(depth, axis).expect_err(axis);
        assert_eq!(error.field(), "/cylinders/0/bore/readings/0/axis");
        assert!(error.reason().contains(port), "{error}");
    }
    for (depth, axis) in [
        ("33.9 mm", "0 deg"),
        ("58.1 mm", "90 deg"),
        ("40 mm", "26 deg"),
        ("40 mm", "90 deg"),
        ("50 mm", "154 deg"),
    ] {
        read(depth, axis).unwrap_or_else(|e| panic!("{e}"));
    }
    let report = self::report(&document);
    assert_eq!(report.engine.windows.len(), 2);
    let page = report.to_text().split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(page.contains("Window exhaust port, 34 to 58 mm deep, 335 to 25 deg"), "{page}");
}

/// The steel crown is brought to 20 C by its own law: by hand, 9 K and 6 K above 20 C for part and gauge.
#[test]
fn a_piston_of_two_materials_is_reduced_by_the_one_that_was_read() {
    let document = document("steel_crown");
    let report = self::report(&document);
    let piston = report.cylinders[0].piston.as_ref().expect("a piston");
    let materials: Vec<&str> = piston.sizes.iter().filter_map(|s| s.material.as_deref()).collect();
    assert_eq!(materials, ["skirt alloy", "skirt alloy", "crown steel", "crown steel", "crown steel"]);
    let by_hand = |read: f64, alpha: f64| read * (1.0 + 11.5e-6 * 6.0) / (1.0 + alpha * 9.0);
    let close = |k: usize, expected: f64| {
        let found = piston.sizes[k].size.value_mm;
        assert!((found - expected).abs() < 1e-9, "{found} {expected}");
    };
    close(0, by_hand(129.871, 20.5e-6));
    close(2, by_hand(129.2825, 12.2e-6));
    close(4, by_hand(129.104, 12.2e-6));
    // and the expansion of the skirt has no part in it
    let sources =
        |k: usize| piston.sizes[k].size.budget.iter().map(|l| l.source.as_str()).collect::<Vec<_>>();
    assert!(
        sources(2).iter().all(|s| !s.contains("skirt alloy"))
            && sources(2).iter().any(|s| s.contains("crown steel"))
    );
    assert!(report.to_text().contains("crown steel"));
    assert!(report.warnings.iter().all(|w| w.kind != "odd_value"), "{:?}", report.warnings);
}

// --- the target profile ---

/// A choke of 0.060 mm at the deck, 0.035 mm at 18 mm, none from 45 mm down: every place is held against it, by hand.
#[test]
fn a_choked_barrel_is_judged_against_its_choke() {
    let document = document("choked_barrel");
    let report = self::report(&document);
    let bore = report.cylinders[0].bore.as_ref().expect("a bore");
    let close = |found: f64, expected: f64| assert!((found - expected).abs() < 1e-9, "{found} {expected}");
    let intended = [-0.060 + 0.025 * 8.0 / 18.0, -0.035 + 0.035 * 12.0 / 27.0, 0.0, 0.0];
    for (place, intended) in bore.places.iter().step_by(2).zip(intended) {
        close(place.intended_mm.expect("a target"), intended);
        let from = place.from_target.as_ref().expect("a target");
        close(from.value_mm, place.size.value_mm - 70.0 - intended);
        close(from.standard_uncertainty_mm, place.size.standard_uncertainty_mm);
    }
    // taper of what deviates from the choke, not of the choke itself
    let on_thrust = |k: usize| bore.places[2 * k].from_target.as_ref().expect("a target").value_mm;
    close(bore.taper.as_ref().expect("reduced").value_mm, on_thrust(0) - on_thrust(3));
    assert!(bore.places[6].size.value_mm - bore.places[0].size.value_mm > 0.035);
    assert_eq!(decision(&report.cylinders[0], Of::BoreTaper).result, Conformity::Conforms);
    // the clearance in the choke is below the maker's least one, and is meant to be
    let clearance = report.cylinders[0].clearance.as_ref().expect("a clearance");
    let least = decision(&report.cylinders[0], Of::SmallestClearance);
    assert!(clearance.smallest.as_ref().is_some_and(|s| Some(s.value_mm) < least.lower_mm));
    assert_eq!(least.value_mm, clearance.smallest_from_target.as_ref().map(|s| s.value_mm));
    assert_eq!(least.result, Conformity::Conforms, "{}", least.reason);
    assert_eq!(report.cylinders[0].verdict.outcome, Outcome::Reuse, "{:?}", report.cylinders[0].verdict);
    // a worn choke: smaller than the nominal size at the top, and too wide for where it is
    let worn = report.cylinders[1].bore.as_ref().expect("a bore");
    assert!(worn.places[0].size.value_mm < 70.0);
    assert_eq!(decision(&report.cylinders[1], Of::BoreTaper).result, Conformity::DoesNotConform);
    assert_eq!(worn.verdict.outcome, Outcome::DoNotReuse);
    // without the profile the same barrel would be refused for its choke
    let plain = self::report(&with(&document, "/engine/bore/target_profile", Value::Null));
    assert_eq!(decision(&plain.cylinders[0], Of::SmallestClearance).result, Conformity::DoesNotConform);
    assert_eq!(decision(&plain.cylinders[0], Of::BoreTaper).result, Conformity::DoesNotConform);
    let page = report.to_text().split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        page.contains("The bores have a target profile: sizes") && page.contains("From the target profile"),
        "{page}"
    );
}

/// A shape of the running engine says nothing of cold readings: what depends on it is not judged, and the cylinder is not proven.
#[test]
fn a_running_profile_is_not_compared_with_cold_readings() {
    let document = with(&document("choked_barrel"), "/engine/bore/target_profile/state", json!("running"));
    let report = self::report(&document);
    let cylinder = &report.cylinders[0];
    for of in [Of::BoreTaper, Of::BoreOutOfRound, Of::SmallestClearance] {
        let decision = decision(cylinder, of);
        assert_eq!(decision.result, Conformity::NotJudged);
        assert!(decision.reason.contains("running shape"), "{}", decision.reason);
    }
    let bore = cylinder.bore.as_ref().expect("a bore");
    assert!(bore.places.iter().all(|p| p.intended_mm.is_none() && p.from_target.is_none()));
    assert_eq!(cylinder.verdict.outcome, Outcome::NotProven);
    // at one level no profile enters
    let at_level = with(&document, "/engine/reduction/out_of_round", json!("at_level"));
    assert_ne!(
        decision(&self::report(&at_level).cylinders[0], Of::BoreOutOfRound).result,
        Conformity::NotJudged
    );
}

// --- findings ---

#[test]
fn findings_and_sizes_do_not_overrule_each_other() {
    let document = document("pump_six");
    let seen = |what: &str, severity: &str, cause: Option<&str>| {
        let mut finding = json!({"place": "skirt", "what": what, "severity": severity});
        if let Some(cause) = cause {
            finding = with(&finding, "/cause", json!(cause));
        }
        let cylinder =
            report(&with(&document, "/cylinders/0/findings", json!([finding]))).cylinders[0].clone();
        assert_eq!(decision(&cylinder, Of::PistonSize).result, Conformity::Conforms);
        cylinder.verdict.outcome
    };
    assert_eq!(seen("scuffing", "light", None), Outcome::Reuse);
    assert_eq!(seen("scuffing", "marked", None), Outcome::FindTheCause);
    assert_eq!(seen("scuffing", "marked", Some("oil jet blocked")), Outcome::Reuse);
    assert_eq!(seen("scuffing", "severe", Some("oil jet blocked")), Outcome::DoNotReuse);
    // a crack rejects whatever the sizes and whatever is known of its cause
    for severity in ["light", "marked", "severe"] {
        assert_eq!(seen("crack", severity, Some("overload")), Outcome::DoNotReuse);
    }
    assert_eq!(seen("diagonal_wear", "light", None), Outcome::FindTheCause);
    // a good finding does not save a bad size
    assert_eq!(report(&document).cylinders[4].verdict.outcome, Outcome::DoNotReuse);
    let clean = with(&document, "/cylinders/4/findings", json!([]));
    assert_eq!(report(&clean).cylinders[4].verdict.outcome, Outcome::DoNotReuse);
}

#[test]
fn the_examples_show_what_they_are_for() {
    let six = report(&document("pump_six"));
    let outcomes: Vec<Outcome> = six.cylinders.iter().map(|c| c.verdict.outcome).collect();
    use Outcome::{DoNotReuse, FindTheCause, Incomplete, NotProven, Reuse};
    assert_eq!(outcomes, [Reuse, Reuse, FindTheCause, NotProven, DoNotReuse, Reuse]);
    assert_eq!(six.block.verdict.outcome, DoNotReuse);
    // the scuffed piston has good sizes; the bore in the guard band is neither proven nor refuted; the other is tapered
    assert_eq!(decision(&six.cylinders[2], Of::PistonSize).result, Conformity::Conforms);
    assert_eq!(decision(&six.cylinders[3], Of::BoreSize).result, Conformity::NotProven);
    assert_eq!(decision(&six.cylinders[4], Of::BoreTaper).result, Conformity::DoesNotConform);
    let twin = report(&document("air_twin"));
    assert_eq!(twin.cylinders[1].verdict.outcome, Incomplete);
    for name in EXAMPLES {
        assert!(
            document(name)
                .pointer("/job/note")
                .and_then(Value::as_str)
                .is_some_and(|n| n.contains("invented")),
            "{name}"
        );
    }
}

// --- correlation ---

/// A bore gauge set between the faces of the micrometer at the very reading the piston gave: zero and scale of the
/// micrometer cancel from the clearance, to the difference of two strains.
#[test]
fn a_shared_micrometer_cancels_from_the_clearance() {
    let contribution = |value: &MeasuredValue, source: &str| {
        value
            .budget
            .iter()
            .filter(|l| l.source.starts_with(source))
            .map(|l| l.contribution_mm.powi(2))
            .sum::<f64>()
            .sqrt()
    };
    let document = document("air_twin");
    let shared = report(&document);
    let piston = &shared.cylinders[0].piston.as_ref().expect("a piston").sizes[0].size;
    assert!(contribution(piston, "scale of outside micrometer") > 0.0028); // 0.005 / sqrt(3)
    assert!(contribution(bench(&shared.cylinders[0]), "scale of outside micrometer") < 1e-6);
    // another setting does not share the scale, and the clearance is less certain by it
    let pointer = "/gauges/1/setting/micrometer/reading";
    let apart = report(&with(&document, pointer, json!("79.954 mm")));
    assert!(contribution(bench(&apart.cylinders[0]), "scale of outside micrometer") > 0.004);
    assert!(
        bench(&apart.cylinders[0]).standard_uncertainty_mm
            > bench(&shared.cylinders[0]).standard_uncertainty_mm * 1.5
    );
}

// --- the reference case ---

/// 20.5e-6 against 22.8e-6 on 86 mm over 110 K: about 22 um less margin (86 * 2.3e-6 * 110 = 21.8 um by hand).
#[test]
fn another_alloy_has_another_margin() {
    let alloy = |name: &str, per_k: &str| {
        let law = json!({"mean_coefficient": {"base": "20 C", "value": per_k, "from": "0 C", "to": "200 C"}});
        json!({"name": name, "law": law, "coefficient_permissible_error": "0 /K", "source": "by hand", "confidence": "unverified"})
    };
    let mut document = document("air_twin");
    let changes = [
        ("/materials/0", alloy("cast piston alloy AlSi12CuMgNi", "22.8e-6 /K")),
        ("/materials/1", alloy("original piston alloy AlSi18", "20.5e-6 /K")),
        ("/engine/bore/nominal", json!("86 mm")),
        ("/engine/piston/nominal", json!("85.965 mm")),
        (
            "/engine/limits",
            json!({"bench_clearance": {"min": "0.035 mm", "origin": "by hand", "reference_temperature": "20 C",
            "over": "bare_metal", "piston_states": ["new"], "clamping": ["bare"]}}),
        ),
        ("/running/piston_temperature", json!({"min": "130 C", "max": "130 C"})),
        ("/shop/temperature", json!("20 C")),
        (
            "/gauges/1/setting/micrometer",
            json!({"gauge": "outside micrometer 75-100 mm", "reading": "85.965 mm", "temperature": "20 C"}),
        ),
        ("/cylinders/0/piston/readings/0/temperature", json!("20 C")),
        ("/cylinders/0/piston/readings/0/repeats", json!(["85.965 mm"])),
        ("/cylinders/0/bore/temperature", json!("20 C")),
        ("/cylinders/0/bore/readings", json!([{"depth": "40 mm", "axis": "0 deg", "repeats": ["0.035 mm"]}])),
        ("/cylinders/1", Value::Null),
    ];
    for (pointer, value) in changes {
        document = with(&document, pointer, value);
    }
    let margin = |document: &Value| {
        let report = report(document);
        let running =
            report.cylinders[0].clearance.as_ref().and_then(|c| c.running.clone()).expect("running");
        (bench(&report.cylinders[0]).value_mm, running.tight.margin.expect("a reference").value_mm)
    };
    // at exactly the maker's least clearance: the same alloy has no margin left, the other about 22 um less than none
    let (bench, other) = margin(&document);
    assert!((bench - 0.035).abs() < 1e-9, "{bench}");
    assert!((other + 0.0218).abs() < 0.0001, "{other}");
    let (_, same) = margin(&with(
        &document,
        "/running/original_piston_material",
        json!("cast piston alloy AlSi12CuMgNi"),
    ));
    assert!(same.abs() < 1e-9, "{same}");
}

#[test]
fn without_a_published_minimum_nothing_passes() {
    let document = with(&without_plan("pump_six"), "/engine/limits/bench_clearance/min", Value::Null);
    let report = report(&document);
    for cylinder in &report.cylinders {
        assert!(cylinder.verdict.outcome > Outcome::Incomplete, "{:?}", cylinder.verdict);
        let clearance = cylinder.clearance.as_ref().expect("a clearance");
        assert!(
            clearance
                .running
                .as_ref()
                .is_some_and(|r| r.tight.reference.is_none() && r.tight.margin.is_none())
        );
        assert!(clearance.note.as_ref().is_some_and(|n| n.contains("judgement")));
    }
}

/// A size rule may look past the place where the piston is tight: the largest diameter conforms, the bottom does not.
#[test]
fn a_bore_that_is_tight_in_one_place_is_not_reused() {
    let mut document = document("pump_six");
    for limit in ["bore_size", "bore_taper", "bore_out_of_round"] {
        document = with(&document, &format!("/engine/limits/{limit}"), Value::Null);
    }
    let report_wide = report(&document);
    // nothing hides: what has no limit is named
    for limit in ["bore_size", "bore_taper", "bore_out_of_round"] {
        let path = format!("/engine/limits/{limit}");
        assert!(report_wide.warnings.iter().any(|w| w.kind == "no_limit" && w.path == path), "{limit}");
    }
    assert_eq!(report_wide.cylinders[0].verdict.outcome, Outcome::Reuse);
    let last =
        document.pointer("/cylinders/0/bore/readings").and_then(Value::as_array).expect("readings").len() - 1;
    let pointer = format!("/cylinders/0/bore/readings/{last}/repeats");
    let tight = report(&with(&document, &pointer, json!(["-0.040 mm"]))).cylinders[0].clone();
    assert_eq!(decision(&tight, Of::BenchClearance).result, Conformity::Conforms);
    assert_eq!(decision(&tight, Of::SmallestClearance).result, Conformity::DoesNotConform);
    assert_eq!(tight.verdict.outcome, Outcome::DoNotReuse);
    assert_eq!(tight.verdict.decided_by, Some(Of::SmallestClearance));
}

#[test]
fn a_verdict_of_the_cold_fit_says_so() {
    let report = report(&with(&document("pump_six"), "/running", Value::Null));
    assert!(report.cylinders[0].clearance.as_ref().is_some_and(|c| c.running.is_none() && c.note.is_some()));
    assert!(report.to_text().contains("CYLINDER 1: reuse (judged cold only)"), "{}", report.to_text());
}

#[test]
fn a_negative_running_clearance_is_no_verdict() {
    let first = report(&document("pump_six")).cylinders[0].clone();
    let running = first.clearance.as_ref().and_then(|c| c.running.clone()).expect("running");
    assert!(running.tight.clearance.value_mm < 0.0);
    assert_eq!(first.verdict.outcome, Outcome::Reuse);
}

// --- hot fits ---

/// The invented twin as a single, with nothing drawn or looked for.
fn single() -> Value {
    let twin = with(&with(&document("sawmill_twin"), "/pictures", Value::Null), "/find", Value::Null);
    with(&with(&twin, "/cylinders/1", Value::Null), "/engine/cylinders", json!(1))
}

fn hot(report: &Report) -> &HotReport {
    report.cylinders[0].hot.as_ref().expect("a hot fit")
}

/// One depth, two axes; the bore of 91.0410 mm at 0 deg and 91.0350 mm at 90 deg.
fn at_one_depth() -> Value {
    let read = |axis: &str, d: &str| json!({"depth": "65 mm", "axis": axis, "repeats": [d]});
    let readings = json!([read("0 deg", "0.041 mm"), read("90 deg", "0.035 mm")]);
    let job = with(&single(), "/cylinders/0/bore/readings", readings);
    // a fit document has no end of the bore: its temperatures reach as deep as the piston goes
    with(&job, "/running/field/bore/2/depth", json!("170 mm"))
}

#[test]
fn a_job_without_a_shape_has_no_hot_fit() {
    assert!(report(&document("pump_six")).cylinders.iter().all(|c| c.hot.is_none()));
    // shape and crank may be known where the temperatures are not
    let cold = report(&with(&single(), "/running", Value::Null));
    assert!(cold.cylinders[0].hot.is_none());
    assert!(cold.to_text().contains("the hot fit was not examined"));
}

/// The values themselves are those of a fit document with the same preset (`tests/vectors/fits/illustrative.json`); the skirt of this duty has 105 C below, 137.5 C above.
#[test]
fn the_temperatures_of_a_duty_are_told_as_illustrative() {
    let preset = json!({"preset": "petrol, naturally aspirated"});
    let told = report(&with(&single(), "/running/field", preset));
    let hot = hot(&told);
    assert!(
        hot.origin.contains("illustrative")
            && hot.gauge_point.thrust_c > 105.0
            && hot.gauge_point.thrust_c < 137.5
    );
    let warned = told.warnings.iter().find(|w| w.kind == "illustrative_temperatures").expect("a warning");
    assert_eq!(warned.path, "/running/field/preset");
}

/// The same piston in the same bore as a fit document: what was read is its shape, by hand `(91.041 + 91.035) / 2` and `(91.041 - 91.035) / 4`.
#[test]
fn a_job_and_a_fit_document_say_the_same() {
    let job = at_one_depth();
    let told = report(&job);
    let clearance = told.cylinders[0].clearance.as_ref().expect("a clearance");
    let bare =
        told.cylinders[0].piston.as_ref().expect("a piston").sizes[0].bare_size.clone().expect("a size");
    let bore = told.cylinders[0].bore.as_ref().expect("a bore");
    let (along, across) = (bore.places[0].size.value_mm, bore.places[1].size.value_mm);
    let size = |mm: f64| json!({"value": format!("{mm:.12} mm"), "expanded_uncertainty": "1 um", "coverage_factor": 2});
    let running = &job["running"];
    let fit = json!({
        "format": "gaugepoint-fit", "version": 1, "fit": {"id": "the same", "date": "2026-10-02"},
        "materials": job["materials"],
        "bore": {"size": size((along + across) / 2.0), "material": "grey iron", "shape": {"rows": [{
            "depth": "0 mm", "deviation": "0 mm",
            "harmonics": [{"order": 2, "cos": format!("{:.12} mm", (along - across) / 4.0), "sin": "0 mm"}]}]}},
        "piston": {"size": size(bare.value_mm), "gauge_height": "14 mm", "material": "piston alloy",
            "shape": job["engine"]["piston"]["shape"]},
        "motion": job["engine"]["motion"], "running": running["field"],
        "reference": {"least_clearance": "0.045 mm", "reference_temperature": "20 C", "origin": "invented service sheet",
            "material": "original alloy", "shape": running["original_piston_shape"]},
        "elastic": job["elastic"]
    });
    let fit =
        gaugepoint::fit::fit(&FitDocument::from_json(&fit.to_string()).expect("a fit"), Options::default());
    let (ours, theirs) = (hot(&told), fit.expect("accepted").hot);
    let same = |a: f64, b: f64, what: &str| assert!((a - b).abs() < 2e-9, "{what}: {a} {b}");
    let bench = clearance.bench.as_ref().expect("a clearance");
    same(ours.bench.value_mm, bench.value_mm, "bench of the job");
    same(ours.bench.value_mm, theirs.bench.value_mm, "bench");
    same(ours.running.value_mm, theirs.running.value_mm, "running");
    for (a, b) in ours.surfaces.iter().zip(&theirs.surfaces) {
        same(a.smallest.value_mm, b.smallest.value_mm, &a.name);
    }
    let margins =
        [ours, &theirs].map(|h| h.reference.as_ref().expect("a reference").smallest_margin.value_mm);
    same(margins[0], margins[1], "margin");
    for (a, b) in ours.onset.iter().zip(&theirs.onset) {
        assert_eq!((a.scenario, a.outcome), (b.scenario, b.outcome));
        assert!((a.thrust_c - b.thrust_c).abs() < 1e-5, "{} {}", a.thrust_c, b.thrust_c);
    }
    assert!(
        ours.notes.iter().any(|n| n.contains("read at 65 mm alone: it counts as straight")),
        "{:?}",
        ours.notes
    );
}

/// By hand: the thrust side has 112 C at the gauge point and 10 K of error; the wall 150 C to 100 C over 160 mm and 6 K, the gauge point
/// at top dead centre 0.2 + 72 - 14 = 58.2 mm deep, so 131.8125 C.
#[test]
fn the_range_at_the_gauge_point_is_that_of_the_field() {
    let rows =
        json!([{"depth": "0 mm", "temperature": "150 C"}, {"depth": "160 mm", "temperature": "100 C"}]);
    let told = report(&with(&single(), "/running/field/bore", rows));
    let running = told.cylinders[0].clearance.as_ref().and_then(|c| c.running.as_ref()).expect("running");
    let found = [&running.tight, &running.loose].map(|c| (c.piston_temperature_c, c.bore_temperature_c));
    for ((piston, bore), (by_hand, wall)) in found.into_iter().zip([(122.0, 125.8125), (102.0, 137.8125)]) {
        assert!((piston - by_hand).abs() < 1e-9 && (bore - wall).abs() < 1e-9, "{piston} {bore}");
    }
    assert!((hot(&told).gauge_point.bore_c - 131.8125).abs() < 1e-9);
    assert_eq!(running.origin, "invented full-load figures");
}

#[test]
fn what_a_hot_fit_lacks_is_refused_there() {
    let shape = "/engine/piston/shape";
    let skirt = "/engine/piston/shape/surfaces/0";
    let range = json!({"min": "100 C", "max": "120 C"});
    let by_height = |material: &str| {
        json!([{"from": "0 mm", "to": "48 mm", "material": "piston alloy"},
               {"from": "48 mm", "to": "80 mm", "material": material}])
    };
    let coated = ["/engine/limits/piston_size/over", "/engine/limits/bench_clearance/over"];
    let over_coating = coated.iter().fold(single(), |d, p| with(&d, p, json!("coating")));
    let cases = [
        (with(&single(), shape, Value::Null), "contradiction", "/engine/motion"),
        (with(&single(), "/engine/motion", Value::Null), "missing_field", "/engine/motion"),
        (with(&single(), "/running/field", Value::Null), "missing_field", "/running/field"),
        (with(&single(), "/running/bore_temperature", range), "contradiction", "/running/bore_temperature"),
        (with(&single(), "/running/origin", json!("elsewhere")), "contradiction", "/running/origin"),
        (with(&document("pump_six"), "/running/origin", Value::Null), "missing_field", "/running/origin"),
        (with(&document("pump_six"), "/elastic", single()["elastic"].clone()), "contradiction", "/elastic"),
        (
            with(&single(), &format!("{skirt}/material"), json!("original alloy")),
            "contradiction",
            &format!("{skirt}/material"),
        ),
        (
            with(&single(), "/engine/piston/materials_by_height", by_height("original alloy")),
            "contradiction",
            "/engine/piston/shape/surfaces/1/material",
        ),
        (
            with(&single(), "/engine/piston/gauge_point/angle", json!("90 deg")),
            "contradiction",
            "/engine/piston/gauge_point/angle",
        ),
        (
            with(&single(), "/engine/piston/gauge_point/datum", json!("crown_top")),
            "contradiction",
            "/engine/piston/gauge_point/height",
        ),
        (over_coating, "contradiction", &format!("{skirt}/coating")),
        // before anything is read, too
        (
            with(&with(&single(), "/running/field/piston/4/thrust", json!("420 C")), "/cylinders", json!([])),
            "outside_law",
            "/running/field/piston",
        ),
        (
            with(&with(&single(), "/running/field/bore/2/depth", json!("100 mm")), "/cylinders", json!([])),
            "out_of_range",
            "/running/field/bore",
        ),
    ];
    for (document, kind, field) in cases {
        let parsed = Document::from_json(&document.to_string()).unwrap_or_else(|e| panic!("{field}: {e}"));
        let error = assess(&parsed, Options::default()).expect_err(field);
        assert_eq!((error.kind().name(), error.field()), (kind, field), "{error}");
    }
    // and materials by height that agree are accepted
    let agreed = with(&single(), "/engine/piston/materials_by_height", by_height("piston alloy"));
    assert!(report(&agreed).cylinders[0].hot.is_some());
}

/// A thicker coating on the skirt is no part of the bench clearance over bare metal: nothing is judged otherwise, but the report warns.
#[test]
fn a_skirt_that_is_tighter_than_the_original_is_a_warning_and_no_verdict() {
    let warned = |r: &Report| r.warnings.iter().filter(|w| w.kind == "tighter_than_original").count();
    let plain = report(&single());
    let coated = report(&with(&single(), "/engine/piston/shape/surfaces/0/coating", json!("30 um")));
    assert_eq!((warned(&plain), warned(&coated)), (0, 1));
    let overlap = hot(&coated).surfaces[0].overlap.as_ref().expect("an overlap");
    assert!(overlap.largest_mm > 0.02);
    assert_eq!(coated.cylinders[0].verdict, plain.cylinders[0].verdict);
    let warning = coated.warnings.iter().find(|w| w.kind == "tighter_than_original").expect("a warning");
    assert_eq!(warning.path, "/cylinders/0/piston/readings/0/repeats/0");
    // 20 um on the radius, and the growth of that
    let margins =
        [&plain, &coated].map(|r| hot(r).reference.as_ref().expect("a reference").smallest_margin.value_mm);
    assert!((margins[0] - margins[1] - 0.020).abs() < 1e-4, "{margins:?}");
}

#[test]
fn a_coating_of_unknown_thickness_leaves_the_hot_fit_open() {
    let open = with(&single(), "/cylinders/0/piston/readings/0/coating", Value::Null);
    let open = report(&with(&open, "/engine/limits/bench_clearance", Value::Null));
    let cylinder = &open.cylinders[0];
    assert!(cylinder.hot.is_none() && cylinder.clearance.as_ref().is_some_and(|c| c.bench.is_some()));
    assert!(
        cylinder.missing.iter().any(|m| m.contains("thickness of the coating")),
        "{:?}",
        cylinder.missing
    );
    assert!(
        report(&with(&single(), "/engine/limits/bench_clearance", Value::Null)).cylinders[0].hot.is_some()
    );
}

/// One axis, or axes that are not evenly spaced, say nothing of a wave.
#[test]
fn what_was_not_read_of_a_bore_counts_as_round() {
    let read = |depth: &str, axis: &str, d: &str| json!({"depth": depth, "axis": axis, "repeats": [d]});
    let readings = json!([
        read("20 mm", "0 deg", "0.041 mm"),
        read("20 mm", "40 deg", "0.035 mm"),
        read("110 mm", "0 deg", "0.040 mm")
    ]);
    let told = report(&with(&single(), "/cylinders/0/bore/readings", readings));
    let notes = &hot(&told).notes;
    assert!(notes.iter().any(|n| n.starts_with("At 20 mm, 110 mm the axes")), "{notes:?}");
    assert!(notes.iter().any(|n| n.contains("above 20 mm as there, below 110 mm as there")), "{notes:?}");
    assert!(
        told.to_text().contains("At 20 mm, 110 mm the axes")
            && told.to_markdown().contains("At 20 mm, 110 mm the axes")
    );
}

/// The skirt is tightest on the thrust side near bottom dead centre; a port there does not support it.
#[test]
fn a_window_of_the_bore_does_not_support_the_piston() {
    let port = |from: &str, to: &str| json!({"from_depth": "125 mm", "to_depth": "145 mm", "from_angle": from, "to_angle": to, "what": "port"});
    // diameters do not tell one side from the other: the minor thrust side is as tight
    let ports = json!([port("340 deg", "20 deg"), port("160 deg", "200 deg")]);
    let [closed, open] = [single(), with(&single(), "/engine/bore/windows", ports)].map(|d| report(&d));
    let (was, is) = (&hot(&closed).surfaces[0], &hot(&open).surfaces[0]);
    let within = |p: &gaugepoint::fit::PlaceReport| {
        let depth = p.depth_mm.expect("a depth");
        let from_axis = p.angle_deg % 180.0;
        depth > 125.0 && depth < 145.0 && !(20.0..=160.0).contains(&from_axis)
    };
    assert!(within(&was.place) && !within(&is.place), "{:?} {:?}", was.place, is.place);
    assert!(is.smallest.value_mm > was.smallest.value_mm);
}

#[test]
fn the_text_tells_where_a_cylinder_is_tightest() {
    let told = report(&single());
    let text = told.to_text().split_whitespace().collect::<Vec<_>>().join(" ");
    let skirt = &hot(&told).surfaces[0];
    assert!(
        text.contains(&format!(
            "the smallest clearance anywhere, on one side, is {:.4} mm",
            skirt.smallest.value_mm
        )),
        "{text}"
    );
    for part in [
        "on the skirt, at 0 deg",
        "which is no verdict",
        "where the skirt is tightest",
        "Hotter, piston alone",
    ] {
        assert!(text.contains(part), "{part}: {text}");
    }
    let of = "Running, the smallest clearance anywhere";
    assert!(told.to_markdown().contains(of) && !report(&document("pump_six")).to_text().contains(of));
}

// --- stacks ---

/// A stack of a job is the stack of a document of its own.
#[test]
fn stacks_of_a_job_are_those_of_their_documents() {
    let document = document("rear_cylinders");
    let report = report(&document);
    let stacks = document["stacks"].as_array().expect("a list");
    assert_eq!(report.stacks.len(), stacks.len());
    for (stack, told) in stacks.iter().zip(&report.stacks) {
        let mut own = stack.clone();
        own["format"] = json!("gaugepoint-stack");
        own["version"] = json!(1);
        let alone = StackDocument::from_json(&own.to_string())
            .and_then(|stack| stack.evaluate(Options::default()))
            .expect("a report");
        assert_eq!(*told, alone);
        assert!(report.to_text().contains(&format!("\nSTACK: {}\n", told.name)));
        assert!(report.to_markdown().contains(&format!("\n## Stack: {}\n", told.name)));
    }
    assert!(report.to_text().lines().all(|line| line.chars().count() <= 100));
}

#[test]
fn a_bad_stack_refuses_the_job() {
    let document = document("rear_cylinders");
    for (pointer, value, kind, field) in [
        ("/stacks/1/name", json!(" deck clearance"), ErrorKind::Repeated, "/stacks/1/name"),
        ("/stacks/1/name", json!(""), ErrorKind::MissingField, "/stacks/1/name"),
        ("/stacks/0/format", json!("gaugepoint-stack"), ErrorKind::UnknownField, "/stacks/0/format"),
        (
            "/stacks/0/contributors/1/nominal",
            json!("long"),
            ErrorKind::NotANumber,
            "/stacks/0/contributors/1/nominal",
        ),
        (
            "/stacks/0/contributors/1/upper",
            json!(-1),
            ErrorKind::OutOfOrder,
            "/stacks/0/contributors/1/upper",
        ),
        ("/stacks/2/limits/upper", json!(-9), ErrorKind::OutOfOrder, "/stacks/2/limits/upper"),
        ("/stacks/1/engine", json!("squish"), ErrorKind::UnknownName, "/stacks/1/contributors/0/name"),
        (
            "/stacks/2/causes/0/on/0/contributor",
            json!("pin"),
            ErrorKind::UnknownName,
            "/stacks/2/causes/0/on/0/contributor",
        ),
        (
            "/stacks/2/monte_carlo",
            json!({ "seed": 1 }),
            ErrorKind::MissingField,
            "/stacks/2/monte_carlo/trials",
        ),
    ] {
        let refused = Document::from_json(&with(&document, pointer, value).to_string())
            .and_then(|job| assess(&job, Options::default()))
            .expect_err(pointer);
        assert_eq!((refused.kind(), refused.field()), (kind, field), "{pointer}: {refused}");
    }
}
