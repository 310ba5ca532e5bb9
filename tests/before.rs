//! Questions before measuring, the table of plausible values, and fields of a job held against each other.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::bounds::{TABLE, Verdict, judge};
use gaugepoint::decision::Conformity;
use gaugepoint::decision::risk::{Guard, Interval, acceptance};
use gaugepoint::measurement::before::{Pattern, Point, adequacy, outliers};
use gaugepoint::{Document, ErrorKind, Options, Report, assess};
use gaugepoint_tests::named::{before_row, hold};
use gaugepoint_tests::{JOBS, job, rows};
use serde_json::{Value, json};

/// Closed forms, a published worked example, by hand, refusals: what every host must say.
#[test]
fn the_vectors_hold() {
    let rows = rows("tests/vectors/before.csv");
    let held: usize = rows.iter().map(|r| hold(&r[0], &r[4], before_row(r))).sum();
    assert!(held > 150, "{held}");
}

// --- the table ---

#[test]
fn every_row_is_in_order_and_says_why() {
    assert!(TABLE.len() >= 40, "{}", TABLE.len());
    for row in TABLE {
        let b = row.bound;
        let numbers = [b.possible.0, b.usual.0, b.usual.1, b.possible.1];
        assert!(numbers.windows(2).all(|w| w[0] <= w[1]) && b.possible.0 < b.possible.1, "{row:?}");
        assert!(
            !b.reason.is_empty() && !b.label.is_empty() && !b.unit.is_empty() && !row.slips.is_empty(),
            "{row:?}"
        );
    }
}

/// Values that the trade's table calls impossible, and what it says they probably were.
#[test]
fn slips_of_the_table_are_named() {
    let meant = |name: &str, value: f64, diameter: Option<f64>| {
        let error = judge(name, value, diameter).expect_err("impossible");
        assert_eq!((error.kind(), error.field()), (ErrorKind::OutOfRange, "value"), "{name}");
        error.did_you_mean().unwrap_or_default().to_owned()
    };
    assert!(meant("bore", 3.386, None).starts_with("86.004 mm (inches"));
    assert!(meant("measuring_temperature", 70.0, None).starts_with("21.111 C (Fahrenheit"));
    assert!(meant("coating", 15.0, None).starts_with("0.015 mm (micrometres"));
    assert!(meant("oversize", 20.0, None).starts_with("0.508 mm (thou"));
    assert!(meant("squish", 0.035, None).starts_with("0.889 mm (inches"));
    assert!(meant("ring_side_clearance", 0.002, None).starts_with("0.0508 mm (inches"));
    assert!(meant("rod_heat", 550.0, None).starts_with("287.78 C (Fahrenheit"));
    assert!(meant("expansion", 11.4, None).contains("1e-6 left out"));
    // 6.5e-6 per degree Fahrenheit is 11.7e-6 per kelvin
    assert!(
        meant("expansion", 6.5, None).starts_with("0.0000117 /K")
            && meant("expansion", 6.5, None).contains("Fahrenheit")
    );
    // counted once instead of twice: 0.0005 of 86 mm is 0.043 mm
    assert!(meant("ring_gap", 1.5, Some(86.0)).starts_with("0.75 mm (both sides"));
}

#[test]
fn a_relative_row_needs_its_diameter_and_a_name_is_known() {
    assert_eq!(judge("ring_gap", 0.4, None).expect_err("refused").kind(), ErrorKind::MissingField);
    let error = judge("clearence", 0.04, None).expect_err("refused");
    assert_eq!((error.kind(), error.did_you_mean()), (ErrorKind::UnknownChoice, Some("clearance")));
    // 2.4 per mille: odd for the bore although 0.21 mm by itself is usual
    assert_eq!(judge("clearance", 0.21, None).ok(), Some(Verdict::Usual));
    assert_eq!(judge("clearance", 0.21, Some(86.0)).ok(), Some(Verdict::Odd));
}

// --- what the questions must agree with ---

/// The largest uncertainty that is adequate is the one whose acceptance interval is just what was asked (JCGM 106:2012, 8.3.2).
#[test]
fn the_target_uncertainty_leaves_the_zone_that_was_asked() {
    let tolerance = Interval { lower: Some(0.0), upper: Some(0.02) };
    for guard in [Guard::Proven, Guard::Stringent(0.5), Guard::Stringent(1.0)] {
        for zone in [0.0, 0.3, 0.8] {
            let u = adequacy(tolerance, 0.001, guard, zone).expect("asked").largest_u;
            // at 0 nothing is left to accept, which is refused
            let accepted = acceptance(tolerance, u * (1.0 - 1e-12), guard).expect("something left");
            let left = (accepted.upper.unwrap() - accepted.lower.unwrap()) / 0.02;
            assert!((left - zone).abs() < 1e-10, "{guard:?} {zone}: {left}");
        }
    }
    let one_sided = Interval { lower: None, upper: Some(0.02) };
    let error = adequacy(one_sided, 0.001, Guard::Proven, 0.5).expect_err("no width");
    assert_eq!((error.kind(), error.field()), (ErrorKind::MissingField, "tolerance"));
}

/// The pattern is taken off: its taper and oval do not move the distances, nor does the order of the list.
#[test]
fn a_form_is_no_outlier() {
    let noise = [0.3, -0.2, 0.1, -0.4, 0.2, 0.5, -0.3, -0.1, 0.4, -0.5, 0.0, 0.2, -0.2, 0.1, -0.1, 0.3];
    let points = |taper: f64, oval: f64| -> Vec<Point> {
        let place =
            |k: usize| ([20.0, 140.0][k / 8], [0.0, 22.0, 45.0, 67.0, 90.0, 112.0, 135.0, 157.0][k % 8]);
        let value = |k: usize| {
            let (depth, angle) = place(k);
            noise[k] + taper * depth + oval * (libm::cos(2.0 * angle * core::f64::consts::PI / 180.0) + 0.3)
        };
        (0..16).map(|k| Point { depth_mm: place(k).0, angle_deg: place(k).1, value: value(k) }).collect()
    };
    for pattern in [Pattern::CommonOval, Pattern::OvalByDepth] {
        let (plain, formed) = (points(0.0, 0.0), points(0.05, 7.0));
        let (a, b) = (outliers(&plain, pattern, 0.05).unwrap(), outliers(&formed, pattern, 0.05).unwrap());
        assert!((a.farthest.unwrap().g - b.farthest.unwrap().g).abs() < 1e-12, "{pattern:?}");
        let backwards: Vec<Point> = formed.iter().rev().copied().collect();
        let c = outliers(&backwards, pattern, 0.05).unwrap();
        assert!((b.farthest.unwrap().g - c.farthest.unwrap().g).abs() < 1e-12, "{pattern:?}");
        assert_eq!(b.farthest.unwrap().index, 15 - c.farthest.unwrap().index, "{pattern:?}");
        assert!(a.beyond.is_empty(), "{pattern:?} {a:?}");
    }
}

#[test]
fn strange_lists_do_not_panic() {
    let strange = [0.0, -0.0, 5e-324, 1e-50, 1e-9, 1.0, 86.0, 1e49, 1e99, 1e308, f64::INFINITY, f64::NAN];
    for a in strange {
        for b in strange {
            let points: Vec<Point> = [(a, b, 1.0), (1.0, a, b), (b, 2.0, a), (3.0, 3.0, 3.0), (b, a, b)]
                .map(|(depth_mm, angle_deg, value)| Point { depth_mm, angle_deg, value })
                .to_vec();
            for pattern in [Pattern::Mean, Pattern::CommonOval, Pattern::OvalByDepth] {
                if let Ok(found) = outliers(&points, pattern, 0.05) {
                    assert!(found.critical.is_finite() && found.deviation.is_finite());
                    assert!(found.farthest.is_none_or(|f| f.g.is_finite()), "{points:?}");
                }
            }
        }
    }
}

#[test]
fn too_many_points_are_refused() {
    let point = Point { depth_mm: 1.0, angle_deg: 0.0, value: 1.0 };
    let error = outliers(&vec![point; 1001], Pattern::Mean, 0.05).expect_err("refused");
    assert_eq!((error.kind(), error.field()), (ErrorKind::TooLarge, "points"));
}

// --- fields of a job held against each other ---

fn document(name: &str) -> Value {
    serde_json::from_str(&job(name)).expect("JSON")
}

fn with(document: &Value, changes: &[(&str, Value)]) -> Value {
    let mut document = document.clone();
    for (pointer, value) in changes {
        let (parent, last) = pointer.rsplit_once('/').expect("a pointer");
        let parent = document.pointer_mut(parent).unwrap_or_else(|| panic!("{pointer}"));
        match last.parse::<usize>() {
            Ok(index) => parent[index] = value.clone(),
            Err(_) => parent[last] = value.clone(),
        }
    }
    document
}

fn assessed(document: &Value) -> Result<Report, gaugepoint::Error> {
    assess(&Document::from_json(&document.to_string())?, Options::default())
}

/// Kinds of the warnings, each with its path.
fn warned(document: &Value) -> Vec<(String, String)> {
    let report = assessed(document).unwrap_or_else(|e| panic!("{e}"));
    report.warnings.into_iter().map(|w| (w.kind, w.path)).collect()
}

/// Fields by their pointers, with what is put there.
type Changes<'a> = &'a [(&'a str, Value)];

const CROSS: [&str; 5] = ["copied", "oversize_step", "mixed_oversizes", "missed_turn", "not_measured"];

#[test]
fn sound_jobs_are_not_suspected() {
    // the planned block has one bore that is worn by more than others differ: it is what its plan is for
    for name in JOBS.iter().filter(|name| **name != "planned_block") {
        let warnings = warned(&document(name));
        assert!(warnings.iter().all(|(kind, _)| !CROSS.contains(&kind.as_str())), "{name}: {warnings:?}");
    }
}

/// Each slip of the trade's list, made on purpose, is named at its place; by hand on the invented six-cylinder engine of 96 mm.
#[test]
fn slips_across_fields_are_named() {
    let base = document("pump_six");
    let pistons: Vec<(String, Value)> =
        (0..6).map(|k| (format!("/cylinders/{k}/piston/readings/0/repeats"), json!(["95.92 mm"]))).collect();
    let nominal: Vec<(&str, Value)> = pistons.iter().map(|(p, v)| (p.as_str(), v.clone())).collect();
    let zeros: Vec<(String, Value)> = (0..6)
        .flat_map(|k| {
            let places = base
                .pointer(&format!("/cylinders/{k}/bore/readings"))
                .and_then(Value::as_array)
                .map_or(0, Vec::len);
            (0..places).map(move |r| (format!("/cylinders/{k}/bore/readings/{r}/repeats"), json!(["0 mm"])))
        })
        .collect();
    let zeros: Vec<(&str, Value)> = zeros.iter().map(|(p, v)| (p.as_str(), v.clone())).collect();
    let limits = base.pointer("/engine/limits/piston_size").cloned().expect("a limit");
    let copied = with(&limits, &[("/min", json!("96.000 mm")), ("/max", json!("96.040 mm"))]);
    let cases: [(&str, &str, Changes<'_>); 7] = [
        ("copied", "/engine/piston/nominal", &[("/engine/piston/nominal", json!("96 mm"))]),
        ("copied", "/engine/limits/piston_size", &[("/engine/limits/piston_size", copied)]),
        ("oversize_step", "/engine/piston/nominal", &[("/engine/piston/nominal", json!("95.5 mm"))]),
        ("not_measured", "/cylinders/0/piston/readings/0/repeats/0", &nominal),
        ("not_measured", "/cylinders/0/bore/readings/0/repeats/0", &zeros),
        // 0.06 mm below the others, which are alike to 0.03 mm
        ("mixed_oversizes", "/cylinders", &[("/cylinders/1/piston/readings/0/repeats", json!(["95.85 mm"]))]),
        // one turn of a metric thimble too few, from the first piston to the second
        (
            "missed_turn",
            "/cylinders/1/piston/readings/0/repeats/0",
            &[
                ("/cylinders/0/piston/readings/0/repeats", json!(["95.92 mm"])),
                ("/cylinders/1/piston/readings/0/repeats", json!(["96.42 mm"])),
                ("/cylinders/1/bore", Value::Null),
            ],
        ),
    ];
    for (kind, path, changes) in cases {
        let mut changed = with(&base, changes);
        if kind == "missed_turn" {
            changed["cylinders"][1].as_object_mut().map(|c| c.remove("bore"));
        }
        let warnings = warned(&changed);
        assert!(warnings.contains(&(kind.to_owned(), path.to_owned())), "{kind} {path}: {warnings:?}");
    }
}

/// 0.25 mm between piston and bore, at 20 C on 96 mm: 2.6 per mille is odd, and it is an oversize.
#[test]
fn a_clearance_that_is_an_oversize_is_named() {
    let base = document("air_twin");
    let at_20 = |deviation: &str| {
        with(
            &base,
            &[
                ("/shop/temperature", json!("20 C")),
                ("/gauges/1/setting/micrometer/temperature", json!("20 C")),
                ("/cylinders/0/piston/readings/0/temperature", json!("20 C")),
                ("/cylinders/0/bore/temperature", json!("20 C")),
                (
                    "/cylinders/0/bore/readings",
                    json!([{"depth": "40 mm", "axis": "0 deg", "repeats": [deviation]}]),
                ),
            ],
        )
    };
    let kinds = |document: &Value| warned(document).into_iter().map(|w| w.0).collect::<Vec<_>>();
    // the bore gauge is set at the reading of the piston: the deviation is the clearance
    let found = kinds(&at_20("0.25 mm"));
    assert!(
        found.contains(&"oversize_step".to_owned()) && found.contains(&"odd_value".to_owned()),
        "{found:?}"
    );
    assert!(!kinds(&at_20("0.060 mm")).contains(&"oversize_step".to_owned()));
    let found = kinds(&at_20("0 mm"));
    assert!(found.contains(&"copied".to_owned()), "{found:?}");
    // 5 per mille of 80 mm is 0.4 mm: beyond, the two readings contradict each other, and both are named
    let error = assessed(&at_20("0.45 mm")).expect_err("a contradiction");
    assert_eq!(error.kind(), ErrorKind::Contradiction);
    assert_eq!(error.field(), "/cylinders/0/piston/readings/0/repeats/0");
    assert!(error.reason().contains("/cylinders/0/bore/readings/0/repeats/0"), "{error}");
    assert!(error.accepted().is_some_and(|l| (l.upper - 0.4).abs() < 1e-12), "{error}");
}

/// A pattern that no bore or piston has is a contradiction, an odd one a warning.
#[test]
fn impossible_forms_are_contradictions() {
    let base = document("pump_six");
    let bore = |deviation: &str| with(&base, &[("/cylinders/0/bore/readings/0/repeats", json!([deviation]))]);
    let path = "/cylinders/0/bore/readings/0/repeats/0".to_owned();
    assert!(warned(&bore("0.20 mm")).contains(&("odd_value".to_owned(), path.clone())));
    let error = assessed(&bore("1.2 mm")).expect_err("a contradiction");
    assert_eq!((error.kind(), error.field()), (ErrorKind::Contradiction, path.as_str()));
    // the axes of a skirt exchanged: the pin axis is 0.3 mm larger than the thrust axis
    let twin = document("odd_bases");
    let (thrust, pin) = ("/cylinders/0/piston/readings/0/repeats", "/cylinders/0/piston/readings/1/repeats");
    let exchanged = with(&twin, &[(thrust, json!(["79.655 mm"])), (pin, json!(["79.953 mm"]))]);
    let error = assessed(&exchanged).expect_err("a contradiction");
    assert_eq!(
        (error.kind(), error.field()),
        (ErrorKind::Contradiction, "/cylinders/0/piston/readings/0/repeats/0")
    );
    assert!(error.reason().contains("ovality") && error.reason().contains(pin), "{error}");
    // 0.3 mm over 4 mm of height is 75 um/mm
    let steep = with(
        &twin,
        &[
            ("/cylinders/0/piston/readings/1/angle", json!("0 deg")),
            ("/cylinders/0/piston/readings/1/height", json!("56 mm")),
        ],
    );
    let error = assessed(&steep).expect_err("a contradiction");
    assert!(error.reason().contains("slope of the skirt"), "{error}");
}

// --- the master read again ---

fn rechecked(reading: &str) -> Report {
    let base = document("pump_six");
    let recheck = json!({"reading": reading, "limit": "0.002 mm"});
    assessed(&with(&base, &[("/gauges/1/recheck", recheck)])).expect("accepted")
}

/// A drift within its limit is a source (half-width d: d / sqrt(3) on a size, JCGM 100:2008, 4.3.7) and no more.
#[test]
fn a_drift_within_its_limit_is_a_source() {
    let report = rechecked("0.0015 mm");
    assert_eq!(report.gauges[1].recheck, Some("within its limit"));
    assert_eq!(report.gauges[0].recheck, None);
    let bore = report.cylinders[0].bore.as_ref().expect("a bore");
    let of_drift = |value: &gaugepoint::report::MeasuredValue| {
        let lines = value.budget.iter().filter(|l| l.source.starts_with("drift"));
        lines.map(|l| l.contribution_mm * l.contribution_mm).sum::<f64>().sqrt()
    };
    let size = bore.size.as_ref().expect("a size");
    assert!((of_drift(size) - 0.0015 / 3f64.sqrt()).abs() < 1e-6, "{}", of_drift(size));
    // what the readings share cancels from their difference: 0.0015 / sqrt(12) twice is left
    let taper = bore.taper.as_ref().expect("a taper");
    assert!((of_drift(taper) - 0.0015 / 6f64.sqrt()).abs() < 1e-6, "{}", of_drift(taper));
    let plain = assessed(&document("pump_six")).expect("accepted");
    let u = |r: &Report| {
        r.cylinders[0].bore.as_ref().and_then(|b| b.size.clone()).expect("a size").standard_uncertainty_mm
    };
    assert!(u(&report) > u(&plain));
}

#[test]
fn a_drift_beyond_its_limit_proves_nothing() {
    let report = rechecked("-0.0025 mm");
    assert_eq!(report.gauges[1].recheck, Some("beyond its limit"));
    let path = "/gauges/1/recheck/reading";
    assert!(
        report.warnings.iter().any(|w| w.kind == "gauge_drifted" && w.path == path),
        "{:?}",
        report.warnings
    );
    for cylinder in &report.cylinders {
        let bore = cylinder.bore.as_ref().expect("a bore");
        assert!(bore.decisions.iter().all(|d| d.result == Conformity::NotProven), "{:?}", bore.decisions);
        // the pistons were read with another gauge
        let piston = cylinder.piston.as_ref().expect("a piston");
        assert!(piston.decisions.iter().all(|d| d.result == Conformity::Conforms), "{:?}", piston.decisions);
    }
    // at the limit it is not beyond it
    assert_eq!(rechecked("0.002 mm").gauges[1].recheck, Some("within its limit"));
}

/// A bore gauge that was set on a drifted micrometer is as good as that.
#[test]
fn a_drifted_micrometer_takes_the_bore_gauge_with_it() {
    let base = document("odd_bases");
    let changed = with(&base, &[("/gauges/0/recheck/reading", json!("75.010 mm"))]);
    let report = assessed(&changed).expect("accepted");
    assert_eq!(report.gauges[0].recheck, Some("beyond its limit"));
    let bore = report.cylinders[0].bore.as_ref().expect("a bore");
    assert!(
        bore.decisions.iter().all(|d| d.result == Conformity::NotProven && d.reason.contains("micrometer"))
    );
    // a micrometer without a zero check has nothing to be rechecked against
    let mut lone = base;
    lone["gauges"][0].as_object_mut().map(|g| g.remove("zero_check"));
    let error = assessed(&lone).expect_err("a contradiction");
    assert_eq!((error.kind(), error.field()), (ErrorKind::Contradiction, "/gauges/0/recheck"));
}
