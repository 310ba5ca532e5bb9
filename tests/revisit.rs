//! Revisits: results by an independent evaluation, what is suspicious, refusals, schemas, and what a report always is.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::job::Entry;
use gaugepoint::revisit::{Hours, RevisitDocument, RevisitReport, revisit_json_bytes};
use gaugepoint::{Document, ErrorKind, revisit, revisit_json};
use gaugepoint_tests::{REVISITS, changed, rows, text};
use serde_json::{Value, json};

fn document(name: &str) -> Value {
    let (_, path) = REVISITS.iter().find(|(known, _)| *known == name).expect(name);
    serde_json::from_str(&text(path)).expect("JSON")
}

fn report(document: &Value) -> Value {
    let report = revisit_json(&document.to_string()).unwrap_or_else(|e| panic!("{e}"));
    serde_json::from_str(&report).expect("JSON")
}

fn pump(changes: &[(&str, Value)]) -> Value {
    let of = |document: Value, (pointer, value): &(&str, Value)| changed(&document, pointer, value.clone());
    changes.iter().fold(document("pump"), of)
}

fn typed(document: &Value) -> RevisitReport {
    RevisitDocument::from_json(&document.to_string())
        .and_then(|d| d.evaluate())
        .unwrap_or_else(|e| panic!("{e}"))
}

/// mpmath at 40 digits, `reference/revisit.py`: differences error by error, ends of forecasts as roots of what defines them.
#[test]
fn independently_evaluated_revisits() {
    for (name, _) in REVISITS {
        let report = report(&document(name));
        let mut held = 0;
        for row in rows("tests/vectors/revisits/expected.csv") {
            let [of, pointer, expected, tolerance, source] = &row[..] else { panic!("{row:?}") };
            assert!(!source.is_empty(), "{row:?}");
            if of != name {
                continue;
            }
            held += 1;
            let found = report.pointer(pointer);
            if tolerance.is_empty() {
                let said = found.map_or_else(|| "absent".to_owned(), Value::to_string);
                assert_eq!(&said, expected, "{name} {pointer}");
                continue;
            }
            let found = found.and_then(Value::as_f64).unwrap_or_else(|| panic!("{name} {pointer}"));
            let (expected, tolerance): (f64, f64) =
                (expected.parse().expect("a number"), tolerance.parse().expect("a number"));
            assert!((found - expected).abs() <= tolerance, "{name} {pointer}: {found} and not {expected}");
        }
        assert!(held >= 60, "{name}");
    }
}

/// By hand: a bore that grew by 0.024 mm in 1210 h grows by 0.0198 mm in 1000 h, and has 0.0614 mm left: 3100 h. The expansion from 18 C and 21 C
/// to 20 C is below 0.01 um for grey iron against gauge steel.
#[test]
fn the_first_cylinder_by_hand() {
    let report = typed(&document("pump"));
    let cylinder = &report.cylinders[0];
    let bore = cylinder.bore_size.as_ref().unwrap();
    assert!((bore.change_mm - 0.024).abs() < 1e-4 && bore.significant);
    assert!((bore.rate_mm_per_1000_h - 0.024 / 1.21).abs() < 1e-4);
    assert!((bore.rate_of_bore_per_1000_h - 0.024 / 1.21 / 86.0).abs() < 1e-6);
    let forecast = &cylinder.forecasts[0];
    assert!((forecast.hours.unwrap() - 0.0614 / 0.024 * 1210.0).abs() < 20.0);
    assert!(forecast.lower_hours < forecast.hours && forecast.hours < forecast.upper_hours);
    // piston less and bore more make the clearance
    let change = |k: usize| cylinder.piston_places[k].change.change_mm;
    let clearance = cylinder.bench_clearance.as_ref().unwrap().change_mm;
    assert!(
        (clearance - (bore.change_mm - change(0))).abs() < 1e-12 && cylinder.piston_places[0].gauge_point
    );
}

/// What defines the interval: at its ends, room less hours times rate is two of its own standard deviations from 0. The bore gauge was calibrated
/// between the visits and reads nearly as well in both, so both sizes have nearly one uncertainty and nothing in common.
#[test]
fn the_ends_of_a_forecast_are_two_deviations_off() {
    let report = typed(&pump(&[("/hours/permissible_error", json!("0 h"))]));
    let bore = report.cylinders[0].bore_size.as_ref().unwrap();
    let forecast = &report.cylinders[0].forecasts[0];
    let u = bore.standard_uncertainty_mm / 2.0_f64.sqrt();
    for end in [forecast.lower_hours.unwrap(), forecast.upper_hours.unwrap()] {
        let q = end / 1210.0;
        let deviation = u * ((1.0 + q) * (1.0 + q) + q * q).sqrt();
        let off = (forecast.room_mm.unwrap() - q * bore.change_mm).abs() / deviation;
        assert!((off - 2.0).abs() < 0.01, "{off} at {end}");
    }
}

#[test]
fn gauges_that_last_count_once() {
    let name = |c: &gaugepoint::revisit::Change| c.shared.clone();
    let same = typed(&document("pump"));
    assert_eq!(same.same_gauges, ["outside micrometer 75-100 mm"]);
    let of = |r: &RevisitReport| r.cylinders[0].piston_places[0].change.clone();
    assert_eq!(name(&of(&same)), ["standard of the zero check of outside micrometer 75-100 mm"]);
    // another day of calibration, another certificate: nothing can be told to be the same
    for change in [
        ("/previous/gauges/0/calibrated", json!("2026-01-19")),
        ("/previous/gauges/0/zero_check/standard", json!("another rod")),
        ("/previous/gauges/0/zero_check/size", json!("75.0005 mm")),
    ] {
        let other = typed(&pump(&[change]));
        assert!(name(&of(&other)).is_empty());
        assert!(of(&other).standard_uncertainty_mm > of(&same).standard_uncertainty_mm);
    }
    // both visits alike, reading by reading: what is left is what differs from day to day
    let mut alike = pump(&[]);
    alike["now"]["cylinders"] = alike["previous"]["cylinders"].clone();
    let shared = name(&of(&typed(&alike)));
    assert!(shared.iter().any(|s| s.starts_with("scale of outside micrometer")), "{shared:?}");
}

#[test]
fn what_is_suspicious() {
    let found = |changes: &[(&str, Value)]| -> Vec<(String, String)> {
        let report = typed(&pump(changes));
        report.suspicious.into_iter().map(|w| (w.kind, w.path)).collect()
    };
    let returned = ("finding_returned".to_owned(), "/now/cylinders/1/findings/0".to_owned());
    assert_eq!(found(&[]), std::slice::from_ref(&returned));
    let cause = ("/now/cylinders/1/findings/0/cause", json!("oil jet blocked"));
    assert_eq!(found(std::slice::from_ref(&cause)), []);
    let cases = [
        ("/now/engine/bore/nominal", json!("86.25 mm"), "nominal_changed", "/now/engine/bore/nominal"),
        ("/now/engine/piston/nominal", json!("85.925 mm"), "nominal_changed", "/now/engine/piston/nominal"),
        (
            "/now/engine/piston/material",
            json!("grey iron"),
            "piston_material_changed",
            "/now/engine/piston/material",
        ),
        (
            "/now/engine/piston/gauge_point/height",
            json!("17 mm"),
            "gauge_point_changed",
            "/now/engine/piston/gauge_point",
        ),
        ("/now/engine/reduction/size", json!("mean"), "reduction_changed", "/now/engine/reduction/size"),
        (
            "/now/engine/reduction/taper",
            json!("top_to_bottom"),
            "reduction_changed",
            "/now/engine/reduction/taper",
        ),
        (
            "/now/engine/limits/bore_size/max",
            json!("86.120 mm"),
            "limit_changed",
            "/now/engine/limits/bore_size",
        ),
    ];
    for (pointer, value, kind, path) in cases {
        assert_eq!(
            found(&[cause.clone(), (pointer, value)]),
            [(kind.to_owned(), path.to_owned())],
            "{pointer}"
        );
    }
    // the same number typed otherwise is no change
    assert_eq!(found(&[cause.clone(), ("/now/engine/bore/nominal", json!("86.000 mm"))]), []);
    let smaller = ("/now/cylinders/0/bore/readings/3/repeats", json!(["-0.003 mm", "-0.003 mm"]));
    assert_eq!(
        found(&[cause.clone(), smaller]),
        [("bore_smaller".to_owned(), "/now/cylinders/0/bore".to_owned())]
    );
    let larger = ("/now/cylinders/2/piston/readings/1/repeats", json!(["85.572 mm"]));
    let larger = found(&[cause.clone(), larger]);
    assert!(
        larger.contains(&("piston_larger".to_owned(), "/now/cylinders/2/piston".to_owned())),
        "{larger:?}"
    );
}

/// Pistons 10 um and more apart: put into other cylinders they fit their sizes of before only in that order.
#[test]
fn pistons_in_other_cylinders_are_noticed() {
    let repeats = "piston/readings/0/repeats";
    // ten micrometres between the pistons are too near the uncertainty; forty are not
    let sizes = [("85.880 mm", "85.871 mm"), ("85.920 mm", "85.909 mm"), ("85.900 mm", "85.889 mm")];
    let visits = |order: [usize; 3]| {
        let mut changes = Vec::new();
        for (k, to) in order.into_iter().enumerate() {
            changes.push((format!("/previous/cylinders/{k}/{repeats}"), json!([sizes[k].0])));
            changes.push((format!("/now/cylinders/{to}/{repeats}"), json!([sizes[k].1])));
        }
        let changes: Vec<(&str, Value)> = changes.iter().map(|(p, v)| (p.as_str(), v.clone())).collect();
        let report = typed(&pump(&changes));
        report.suspicious.into_iter().find(|w| w.kind == "parts_swapped").map(|w| w.text)
    };
    assert_eq!(visits([0, 1, 2]), None);
    let text = visits([1, 0, 2]).unwrap();
    assert!(
        text.ends_with("that of cylinder 1 was in cylinder 2, that of cylinder 2 was in cylinder 1"),
        "{text}"
    );
    let text = visits([1, 2, 0]).unwrap();
    assert!(text.contains("that of cylinder 2 was in cylinder 1"), "{text}");
}

/// What is not known to be the same part in the same state has no wear.
#[test]
fn what_cannot_be_compared_is_said() {
    let missing = |change: (&str, Value)| {
        let report = typed(&pump(&[change]));
        let cylinder = &report.cylinders[0];
        (cylinder.missing.join("; "), cylinder.bore_size.is_some(), cylinder.bench_clearance.is_some())
    };
    let bare = json!("bare");
    let cases = [
        (("/now/engine/bore/nominal", json!("86.25 mm")), "machined or renewed", false, false),
        (("/now/cylinders/0/bore/clamping", bare), "read caps torqued before and bare now", false, false),
        (("/now/cylinders/0/piston/state", json!("new")), "it is a new one now", true, false),
        (("/now/cylinders/0/piston/state", json!("refinished")), "it was refinished since", true, false),
        (("/now/engine/piston/material", json!("grey iron")), "its material changed", true, false),
        (("/now/engine/reduction/size", json!("mean")), "bore size: its rule changed", false, false),
        (
            ("/now/cylinders/0/bore/readings/3/depth", json!("130 mm")),
            "bore size: it was read at other places",
            false,
            false,
        ),
        (("/now/engine/piston/gauge_point/height", json!("17 mm")), "the gauge point changed", true, false),
    ];
    for (change, wanted, bore, clearance) in cases {
        let (said, of_bore, of_clearance) = missing(change.clone());
        assert!(said.contains(wanted), "{change:?}: {said}");
        assert_eq!((of_bore, of_clearance), (bore, clearance), "{change:?}");
    }
    // a cylinder that only one of the jobs has
    let mut document = pump(&[]);
    document["previous"]["cylinders"].as_array_mut().unwrap().remove(0);
    let report = typed(&document);
    assert!(report.cylinders[0].missing.iter().any(|m| m == "bore: not known before"));
    assert!(report.cylinders[1].bore_size.is_some());
}

/// A diameter is the same one named by its other end.
#[test]
fn a_diameter_may_be_named_by_its_other_end() {
    let turned = [0, 2].map(|k| format!("/now/cylinders/0/bore/readings/{k}/axis"));
    let turned = typed(&pump(&turned.each_ref().map(|at| (at.as_str(), json!("180 deg")))));
    let plain = typed(&pump(&[]));
    assert!(turned.cylinders[0].missing.is_empty());
    let first = |r: &RevisitReport| r.cylinders[0].bore_places[0].change.change_mm;
    assert!((first(&turned) - first(&plain)).abs() < 1e-15);
}

#[test]
fn a_forecast_that_cannot_be_made_says_why() {
    let reason = |changes: &[(&str, Value)]| {
        let report = typed(&pump(changes));
        let forecast = report.cylinders[0].forecasts[0].clone();
        assert!(forecast.hours.is_none() && forecast.upper_hours.is_none());
        forecast.reason.unwrap()
    };
    let told = |why: &str| format!("no limit can be told: {why}");
    let worn = ("/previous/engine/limits/bore_size/max", json!("86.030 mm"));
    let reached = ("/now/engine/limits/bore_size/max", json!("86.030 mm"));
    assert_eq!(reason(&[worn, reached]), told("the limit is reached already"));
    let mut same = pump(&[]);
    same["now"]["cylinders"] = same["previous"]["cylinders"].clone();
    let forecast = typed(&same).cylinders[0].forecasts[0].clone();
    assert_eq!(forecast.reason.unwrap(), told("the wear is not significant"));
}

#[test]
fn refused_revisits() {
    let document = document("pump");
    for row in rows("tests/vectors/revisits/refused.csv") {
        let [name, pointer, value, kind, path] = &row[..] else { panic!("{row:?}") };
        let value: Value = serde_json::from_str(&value.replace("%2C", ",")).expect("JSON");
        let changed = changed(&document, pointer, value).to_string();
        let error = revisit_json(&changed).expect_err(name);
        assert_eq!([error.kind().name(), error.field()], [kind.as_str(), path], "{name}: {error}");
    }
    for field in ["hours", "previous", "now"] {
        let mut without = document.clone();
        without.as_object_mut().unwrap().remove(field);
        let error = revisit_json(&without.to_string()).unwrap_err();
        assert_eq!((error.kind(), error.field()), (ErrorKind::MissingField, format!("/{field}").as_str()));
    }
    let mut without = document.clone();
    without["now"].as_object_mut().unwrap().remove("shop");
    let error = revisit_json(&without.to_string()).unwrap_err();
    assert_eq!((error.kind(), error.field()), (ErrorKind::MissingField, "/now/shop"));
    let twice = document.to_string().replacen("\"number\":1", "\"number\":1,\"number\":1", 1);
    let error = revisit_json(&twice).unwrap_err();
    assert_eq!((error.kind(), error.field()), (ErrorKind::RepeatedField, "/now/cylinders/0/number"));
    assert_eq!(revisit_json_bytes(b"{\xff}").unwrap_err().kind(), ErrorKind::NotUtf8);
}

#[test]
fn revisits_and_reports_fit_their_schemas() {
    let of_document = jsonschema::validator_for(RevisitDocument::schema().as_value()).expect("a schema");
    let of_report = jsonschema::validator_for(RevisitReport::schema().as_value()).expect("a schema");
    for (name, _) in REVISITS {
        let document = document(name);
        assert!(of_document.is_valid(&document), "{name}: {:?}", of_document.iter_errors(&document).next());
        assert!(!of_document.is_valid(&changed(&document, "/previous/shop/colour", json!("red"))), "{name}");
        let report = report(&document);
        assert!(of_report.is_valid(&report), "{name}: {:?}", of_report.iter_errors(&report).next());
        assert!(!of_report.is_valid(&changed(&report, "/hours", json!(1))), "{name}");
        let once = RevisitDocument::from_json(&document.to_string()).expect("a revisit");
        let again = RevisitDocument::from_json(&serde_json::to_string(&once).expect("JSON"));
        assert_eq!(once, again.expect("a revisit"), "{name}");
    }
}

/// The function with documents that were read alone gives what the document gives.
#[test]
fn jobs_that_stand_alone_are_compared_alike() {
    let document = document("pump");
    let [previous, now] = ["previous", "now"].map(|v| Document::from_json(&document[v].to_string()).unwrap());
    let hours = Hours { run: Entry::new("1210 h"), permissible_error: Entry::new("10 h") };
    assert_eq!(revisit(&previous, &now, &hours).unwrap(), typed(&document));
    let wrong = Hours { run: Entry::new("1210 kh"), ..hours.clone() };
    let error = revisit(&previous, &now, &wrong).unwrap_err();
    assert_eq!((error.kind(), error.field()), (ErrorKind::WrongUnit, "/hours/run"));
    let error = revisit(&now, &previous, &hours).unwrap_err();
    assert_eq!((error.kind(), error.field()), (ErrorKind::OutOfOrder, "/previous/job/date"));
}

#[test]
fn the_text_says_what_the_numbers_say() {
    for (name, _) in REVISITS {
        let report = typed(&document(name));
        let text = report.to_text();
        let widest = text.lines().map(|l| l.chars().count()).max();
        assert!(widest <= Some(100), "{name}: {widest:?}");
        let markdown = report.to_markdown();
        for cylinder in &report.cylinders {
            let change = format!("{:+.4}", cylinder.bore_places[0].change.change_mm);
            assert!(text.contains(&change) && markdown.contains(&change), "{name}");
        }
    }
    let pump = typed(&document("pump")).to_text();
    for wanted in ["reached in 3092 h, interval 2439 to 4088 h", "SUSPICIOUS", "came back", "not significant"]
    {
        assert!(pump.contains(wanted), "{wanted}");
    }
    let short = typed(&document("short_season")).to_text();
    assert!(short.contains("no limit can be told: the wear is not significant"), "{short}");
}
