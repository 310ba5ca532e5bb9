//! Readings and their differences: against the independent evaluation, the same clearance by three ways of holding the gauges, effects that
//! are even in their angle, presets, the working, refusals.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]
#![allow(clippy::disallowed_methods, reason = "the tests' own arithmetic is compared with a tolerance")]

use gaugepoint::measure::{MeasurementDocument, MeasurementReport, Propagated, measure, measure_json_bytes};
use gaugepoint::measurement::preset::{self, PresetKind};
use gaugepoint::{ErrorKind, Options};
use gaugepoint_tests::replay::Replay;
use gaugepoint_tests::{MEASUREMENTS, measurement, numbers, text};
use serde_json::{Value, json};
use std::collections::{BTreeMap, HashMap, HashSet};

fn document(name: &str) -> Value {
    serde_json::from_str(&measurement(name)).expect("JSON")
}

fn report(document: &Value, working: bool) -> MeasurementReport {
    let document = MeasurementDocument::from_json(&document.to_string()).unwrap_or_else(|e| panic!("{e}"));
    measure(&document, Options { working }).unwrap_or_else(|e| panic!("{e}"))
}

/// Every value of a report by name.
fn results(report: &MeasurementReport) -> Vec<(&str, &Propagated)> {
    let readings = report.readings.iter().map(|r| (r.name.as_str(), &r.result));
    readings.chain(report.differences.iter().map(|d| (d.name.as_str(), &d.result))).collect()
}

fn reference(name: &str) -> Value {
    serde_json::from_str(&text(&format!("tests/vectors/reports/{name}.json"))).expect("JSON")
}

/// The document with the value at a pointer put in, replaced, or removed by `null`.
fn with(document: &Value, pointer: &str, value: Value) -> Value {
    let mut out = document.clone();
    let (parent, last) = pointer.rsplit_once('/').expect("a pointer");
    match (out.pointer_mut(parent).unwrap_or_else(|| panic!("{pointer}")), value) {
        (Value::Object(fields), Value::Null) => drop(fields.remove(last)),
        (Value::Object(fields), value) => drop(fields.insert(last.to_owned(), value)),
        (Value::Array(items), value) => items[last.parse::<usize>().expect("an index")] = value,
        (other, _) => panic!("{pointer}: {other}"),
    }
    out
}

/// Contributions that are more than rounding, in order of size.
fn sorted(contributions: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut out: Vec<f64> = contributions.filter(|c| c.abs() > 1e-13).collect();
    out.sort_by(f64::total_cmp);
    out
}

// --- against the independent evaluation ---

/// Numbers of `reference/measure.py`: mpmath at 40 digits, every source moved through the whole chain.
#[test]
fn reports_agree_with_the_independent_evaluation() {
    for name in MEASUREMENTS {
        let (report, reference) = (report(&document(name), false), reference(name));
        for (of, result) in results(&report) {
            let expected = &reference[of];
            let near = |what: &str, found: f64| {
                let number = expected[what].as_f64().unwrap_or_else(|| panic!("{name} {of} {what}"));
                assert!((found - number).abs() < 1e-12, "{name} {of} {what}: {found} and {number}");
            };
            near("value_mm", result.value_mm);
            near("standard_uncertainty_mm", result.standard_uncertainty_mm);
            near("expanded_uncertainty_mm", result.expanded_uncertainty_mm);
            near("second_order_mean_mm", result.second_order.mean_mm);
            near("shift_of_mean_mm", result.second_order.shift_of_mean_mm);
            match result.stated_bias_mm {
                Some(bias) => near("stated_bias_mm", bias),
                None => assert!(expected["stated_bias_mm"].is_null(), "{name} {of}"),
            }
            let list = |what: &str| expected[what].as_array().unwrap().iter().map(|v| v.as_f64().unwrap());
            let pairs = [
                (sorted(result.budget.iter().map(|l| l.contribution_mm)), sorted(list("contributions_mm"))),
                (result.effects.iter().map(|e| e.mean_mm).collect(), list("effects_mm").collect()),
            ];
            for (found, expected) in pairs {
                assert_eq!(found.len(), expected.len(), "{name} {of}: {found:?} and {expected:?}");
                assert!(
                    found.iter().zip(&expected).all(|(a, b)| (a - b).abs() < 1e-12),
                    "{name} {of}: {found:?} and {expected:?}"
                );
            }
        }
        assert_eq!(reference.as_object().unwrap().len(), results(&report).len());
    }
}

// --- one clearance, three ways to hold the gauges ---

const MICROMETER: &str = "micrometer 75-100";
const WAYS: [&str; 3] = ["independent gauges", "shared micrometer", "zeroed on the piston"];

/// In mm: what a source has in the clearance measured each way; every way must name the source.
fn by_way(report: &MeasurementReport, source: &str) -> [f64; 3] {
    WAYS.map(|way| {
        let result = &report.difference(way).unwrap().result;
        result.contribution(source).unwrap_or_else(|| panic!("{way}: {source}"))
    })
}

#[test]
fn what_the_gauges_share_cancels_by_itself() {
    let report = report(&document("three_ways"), false);
    for way in WAYS {
        println!("{way}");
        for line in &report.difference(way).unwrap().result.budget {
            println!("  {:+9.4} um  {}", line.contribution_mm * 1000.0, line.source);
        }
    }
    // the micrometer's scale at the piston: 3 um / sqrt(3), by hand; with the bore gauge zeroed on it, it is in both and goes out
    let scale = by_way(&report, &format!("scale of {MICROMETER} at 85.9520 mm"));
    let by_hand = 0.003 / 3.0_f64.sqrt();
    assert!((scale[0] + by_hand).abs() < 1e-6 && (scale[1] + by_hand).abs() < 1e-6, "{scale:?}");
    // what is left is the growth of the bore less that of the piston from 20 C to 23 C: 3 (20 - 11.2) 1e-6 of it
    assert!((scale[2] - by_hand * 3.0 * 8.8e-6).abs() < 1e-10 && scale[2] != 0.0, "{scale:?}");
    // the standard of its zero, U / k by hand, is out as soon as the micrometer is shared, and in the budget all the same
    let zero = by_way(&report, &format!("standard of the zero check of {MICROMETER}"));
    assert!((zero[0] + 0.0006).abs() < 1e-6, "{zero:?}");
    assert!(zero[1..].iter().all(|z| z.abs() < 1e-7 && *z != 0.0), "{zero:?}");
    // another reading is another place of the scale: 3 um / sqrt(3) comes in, nothing goes out
    let shared = &report.difference(WAYS[1]).unwrap().result;
    let at_86 = shared.contribution(&format!("scale of {MICROMETER} at 86.0000 mm")).unwrap();
    assert!((at_86 - by_hand).abs() < 1e-6, "{at_86}");
    // faces do not cancel: they are touched anew
    let faces = by_way(&report, &format!("faces of {MICROMETER} on piston"));
    assert!(faces.iter().all(|f| (f + 0.002 / 3.0_f64.sqrt()).abs() < 1e-6), "{faces:?}");
    let u = WAYS.map(|way| report.difference(way).unwrap().result.standard_uncertainty_mm);
    assert!(u[2] < u[0] && u[0] < u[1], "{u:?}");
    // one clearance: the three values agree within what they leave uncertain
    let c = WAYS.map(|way| report.difference(way).unwrap().result.value_mm);
    assert!(c.iter().all(|x| (x - c[0]).abs() < u[2]), "{c:?}");
}

#[test]
fn trials_stand_by_the_linear_budget_of_a_clearance() {
    let report = report(&document("three_ways"), false);
    for way in WAYS {
        let result = &report.difference(way).unwrap().result;
        let run = result.monte_carlo.as_ref().unwrap();
        // 20 000 trials: mean within u / 141, deviation within 0.5 %; six of each
        let u = result.standard_uncertainty_mm;
        assert!((run.mean_mm - result.second_order.mean_mm).abs() < 6.0 * u / 141.0, "{way}: {run:?}");
        assert!((run.standard_deviation_mm / u - 1.0).abs() < 0.03, "{way}: {run:?}");
        assert!(run.validation.validated, "{way}: {run:?}");
        assert!(
            run.shortest.upper_mm - run.shortest.lower_mm <= run.symmetric.upper_mm - run.symmetric.lower_mm
        );
    }
}

// --- effects that are even in their angle ---

/// A bore of 86 mm read by a gauge tilted anywhere within 1 degree, by the exact moments of the cosine.
#[test]
fn a_tilt_has_a_mean_and_a_spread_in_every_column() {
    let report = report(&document("three_ways"), false);
    let [stated, corrected] =
        ["bore, not rocked", "bore, not rocked, corrected"].map(|name| &report.reading(name).unwrap().result);
    let a = 1.0_f64.to_radians();
    let read = stated.value_mm;
    let mean = read * (1.0 - a.sin() / a);
    // the closed form loses digits: 1e-12 of 1 leaves 6 digits of the variance
    let deviation = read * (0.5 + (2.0 * a).sin() / (4.0 * a) - (a.sin() / a).powi(2)).sqrt();
    assert!((mean - 0.00437).abs() < 5e-6, "86 mm, 1 deg: a third of 13 um: {mean}");
    assert!((stated.value_mm - corrected.value_mm - mean).abs() < 1e-12);
    assert!((stated.stated_bias_mm.unwrap() - mean).abs() < 1e-12 && corrected.stated_bias_mm.is_none());
    for result in [stated, corrected] {
        let tilt = result.budget.iter().find(|l| l.source.starts_with("tilt")).unwrap();
        assert!((tilt.contribution_mm.abs() / deviation - 1.0).abs() < 1e-5, "{tilt:?}");
        // second order: the angle as if it were normal, its square has the deviation sqrt(2) u^2, and f_tt = -read; with the rest
        // of the budget, each part of which falls with the cosine: sum of f_i f_itt u_i^2 u_t^2 = -u_rest^2 u_t^2
        let rest = result.standard_uncertainty_mm.powi(2) - tilt.contribution_mm.powi(2);
        let u_t = a / 3.0_f64.sqrt();
        let second = (rest + (read * u_t * u_t).powi(2) / 2.0 - rest * u_t * u_t).sqrt();
        let found = result.second_order.standard_uncertainty_mm.unwrap();
        assert!((found / second - 1.0).abs() < 1e-4, "{found} and {second}");
        assert!((result.second_order.shift_of_mean_mm + read * u_t * u_t / 2.0).abs() < 1e-6);
        // trials know the exact distribution: mean and deviation to six of their own deviations
        let (run, u) = (result.monte_carlo.as_ref().unwrap(), result.standard_uncertainty_mm);
        assert!((run.mean_mm - corrected.value_mm).abs() < 6.0 * u / 141.0, "{run:?}");
        assert!((run.standard_deviation_mm / u - 1.0).abs() < 0.03, "{run:?}");
        // skewed, so the symmetric interval of the linear budget does not stand
        assert!(!run.validation.validated, "{run:?}");
    }
}

/// By hand: 8 N on 20 N/um give 0.4 um; 1 / k has the mean ln((20 + 6) / (20 - 6)) / 12 for k anywhere from 14 to 26.
#[test]
fn a_skirt_that_gives_way_is_taken_at_its_free_size() {
    let given = document("three_ways");
    let with_force = report(&given, false);
    let without = report(&with(&given, "/readings/0/outside/force", Value::Null), false);
    let [pressed, free] = [&with_force, &without].map(|r| &r.reading("piston").unwrap().result);
    assert!((pressed.value_mm - free.value_mm - 0.0004).abs() < 1e-12);
    let exact = 8.0 * (26.0_f64 / 14.0).ln() / 12.0 / 1000.0;
    let shift = pressed.second_order.shift_of_mean_mm - free.second_order.shift_of_mean_mm;
    // to second order: 0.4 um times (u / k)^2 = 3 / 100; the exact mean is a little more
    assert!((shift - 0.0004 * 0.03).abs() < 1e-9, "{shift}");
    assert!(exact - 0.0004 > shift && exact - 0.0004 < shift * 1.1);
    let effect = &pressed.effects[0];
    assert!((effect.mean_mm + 0.0004).abs() < 1e-15, "{effect:?}");
}

// --- presets ---

/// The numbers as the table prints them, in um.
#[test]
fn presets_are_the_published_rows() {
    let printed = [
        (PresetKind::OutsideMicrometer, 20.0, "4", Some("2")),
        (PresetKind::OutsideMicrometer, 60.0, "5", Some("3")),
        (PresetKind::OutsideMicrometer, 86.0, "5", Some("3")),
        (PresetKind::OutsideMicrometer, 110.0, "6", Some("3")),
        (PresetKind::OutsideMicrometer, 180.0, "7", Some("4")),
        (PresetKind::OutsideMicrometer, 290.0, "9", None),
        (PresetKind::Caliper, 86.0, "20", None),
        (PresetKind::InsideMicrometer, 200.0, "10", None),
        (PresetKind::SettingRing, 86.0, "0.64", None),
        (PresetKind::SettingRing, 50.0, "0.51", None),
    ];
    let um = |text: &str| text.parse::<f64>().unwrap() / 1000.0;
    for (kind, size, error, faces) in printed {
        let row = preset::for_size(kind, size).next().unwrap();
        assert!((row.permissible_error_mm - um(error)).abs() < 1e-12, "{row:?}");
        assert_eq!(row.face_parallelism_mm.map(|f| (f * 1e6).round()), faces.map(|f| um(f) * 1e6), "{row:?}");
        assert!(!row.source.is_empty());
    }
    let names: HashSet<&str> = preset::ALL.iter().map(|row| row.name).collect();
    assert_eq!(names.len(), preset::ALL.len());
    // what is from memory says so, and nothing else does
    for row in preset::ALL {
        let unverified = row.confidence.word() == "unverified";
        assert_eq!(row.source.starts_with("from memory"), unverified, "{row:?}");
    }
}

#[test]
fn a_preset_stands_for_the_numbers_it_holds() {
    let given = document("three_ways");
    let typed = with(&given, "/gauges/0/permissible_error", json!("0.005 mm"));
    let typed = with(&typed, "/gauges/0/face_parallelism", json!("0.003 mm"));
    let named = with(&typed, "/gauges/0/permissible_error", Value::Null);
    let named = with(&named, "/gauges/0/face_parallelism", Value::Null);
    let named = with(&named, "/gauges/0/preset", json!("DIN 863 75-100 mm"));
    let [by_hand, by_name] = [&typed, &named].map(|d| report(d, false));
    for ((of, a), (_, b)) in results(&by_hand).into_iter().zip(results(&by_name)) {
        assert_eq!(a.value_mm.to_bits(), b.value_mm.to_bits(), "{of}");
        assert_eq!(a.standard_uncertainty_mm.to_bits(), b.standard_uncertainty_mm.to_bits(), "{of}");
    }
    let told = by_name.gauges[0].preset.as_ref().unwrap();
    assert!(told.contains("DIN 863") && told.contains("extract") && told.contains("published"), "{told}");
    assert!(by_hand.gauges.iter().all(|g| g.preset.is_none()));
}

// --- the working ---

#[test]
fn every_step_gives_its_number_to_the_bit_and_every_number_has_its_step() {
    for name in MEASUREMENTS {
        let report = report(&document(name), true);
        let mut value: Value = serde_json::from_str(&report.to_json()).expect("JSON");
        let working = report.working.as_ref().expect("asked for");
        let replay = Replay::new(working);
        let values = replay.values(|k| working.inputs[k].value, |_| None);
        for (step, value) in working.steps.iter().zip(&values) {
            assert_eq!(step.value.to_bits(), (value + 0.0).to_bits(), "{name} {} {}", step.id, step.formula);
        }
        let results = replay.results(&values);
        for (pointer, number) in &results {
            let there = value.pointer(pointer).and_then(Value::as_f64);
            assert_eq!(there.map(f64::to_bits), Some((number + 0.0).to_bits()), "{name} {pointer}");
        }
        value.as_object_mut().map(|o| o.remove("working"));
        // by other ways than the linear budget, or numbers of the document
        let others = ["second_order", "monte_carlo", "coverage_factor", "effects", "stated_bias", "version"];
        for (pointer, number) in numbers(&value) {
            let head = pointer.matches('/').count() == 1;
            if head || others.iter().any(|o| pointer.contains(o)) || results.contains_key(pointer.as_str()) {
                continue;
            }
            panic!("{name} {pointer} = {number} has no working");
        }
    }
}

/// The numbers that the independent evaluation holds, out of those that steps give.
fn held(
    report: &MeasurementReport,
    results: &HashMap<&str, f64>,
) -> BTreeMap<(String, &'static str), Vec<f64>> {
    let mut out: BTreeMap<(String, &'static str), Vec<f64>> = BTreeMap::new();
    for (pointer, number) in results {
        let mut parts = pointer.split('/').skip(1);
        let (list, index) = (parts.next().unwrap(), parts.next().unwrap().parse::<usize>().unwrap());
        let name =
            if list == "readings" { &report.readings[index].name } else { &report.differences[index].name };
        let what = match pointer.rsplit('/').next().unwrap() {
            "value_mm" => "value_mm",
            "standard_uncertainty_mm" => "standard_uncertainty_mm",
            "expanded_uncertainty_mm" => "expanded_uncertainty_mm",
            "contribution_mm" => "contributions_mm",
            _ => continue,
        };
        out.entry((name.clone(), what)).or_default().push(*number);
    }
    out
}

/// A mutation of a formula moves a number that the independent evaluation holds.
#[test]
fn every_mutated_formula_of_this_stage_is_caught() {
    let ours = [
        "a = ",
        "a2 = ",
        "size = size_",
        "clearance = strip",
        "clearance_20",
        "difference",
        "u = slope",
        "d_size_d_size_",
        "d_size_d_g",
        "d_size_d_force",
        "d_size_d_stiffness",
        "d_clearance_20",
    ];
    let mut caught: BTreeMap<String, bool> = BTreeMap::new();
    for name in MEASUREMENTS {
        let (report, reference) = (report(&document(name), true), reference(name));
        let replay = Replay::new(report.working.as_ref().unwrap());
        let mut by_text: BTreeMap<String, Vec<usize>> = BTreeMap::new();
        for (k, step) in replay.working.steps.iter().enumerate() {
            by_text.entry(format!("{} = {}", step.symbol, step.formula)).or_default().push(k);
        }
        for (formula, steps) in by_text {
            // means of effects are held by the first test here, the series of the cosine by their closed forms beside them, whose
            // last terms count at 30 degrees only; the formulas of gauges and growth by the jobs
            if !ours.iter().any(|o| formula.starts_with(o)) {
                continue;
            }
            for (m, mutation) in replay.formulas[steps[0]].mutations().iter().enumerate() {
                let here = |k: usize| steps.contains(&k).then_some(mutation);
                let values = replay.values(|k| replay.working.inputs[k].value, here);
                let moved = held(&report, &replay.results(&values)).into_iter().any(|((of, what), found)| {
                    let expected = match &reference[&of][what] {
                        Value::Array(list) => list.iter().map(|v| v.as_f64().unwrap()).collect(),
                        one => vec![one.as_f64().unwrap()],
                    };
                    let (found, expected) = (sorted(found.into_iter()), sorted(expected.into_iter()));
                    let near = |(a, b): (&f64, &f64)| (a - b).abs() < 1e-12;
                    found.len() != expected.len() || !found.iter().zip(&expected).all(near)
                });
                *caught.entry(format!("{formula} [{m}]")).or_default() |= moved;
            }
        }
    }
    let survivors: Vec<&String> = caught.iter().filter(|(_, caught)| !**caught).map(|(f, _)| f).collect();
    assert!(caught.len() > 30, "{}", caught.len());
    assert!(survivors.is_empty(), "{} of {} survive:\n{survivors:#?}", survivors.len(), caught.len());
}

// --- the report in other forms ---

#[test]
fn the_text_says_what_the_numbers_say() {
    let text = report(&document("three_ways"), true).to_text();
    for wanted in
        ["zeroed on the piston", "linear budget", "second order", "trials", "not taken off", "does not stand"]
    {
        assert!(text.contains(wanted), "{wanted}");
    }
    let widest = text.lines().map(|l| l.chars().count()).max();
    assert!(widest <= Some(100), "{widest:?}");
    let strips = report(&document("every_kind"), false).to_text();
    assert!(strips.contains("empirical, common practice") && strips.contains("6 lbf"), "{strips}");
}

// --- what is refused ---

#[test]
fn contradictions_are_refused_with_their_place() {
    use ErrorKind::{
        Contradiction, MissingField, OutOfRange, Repeated, TooLarge, UnknownField, UnknownName, WrongUnit,
    };
    let kinds = "every_kind";
    let cases = [
        (
            "three_ways",
            "/gauges/0/preset",
            json!("DIN 863 75-100 mm"),
            Contradiction,
            "/gauges/0/permissible_error",
        ),
        (
            "three_ways",
            "/gauges/0/permissible_error",
            Value::Null,
            MissingField,
            "/gauges/0/permissible_error",
        ),
        (kinds, "/gauges/1/preset", json!("DIN 863 75-100 mm"), Contradiction, "/gauges/1/preset"),
        (kinds, "/gauges/1/preset", json!("DIN 862 vernier 0.5 mm"), UnknownName, "/gauges/1/preset"),
        (kinds, "/gauges/1/face_parallelism", json!("2 um"), Contradiction, "/gauges/1/face_parallelism"),
        ("three_ways", "/readings/0/outside/repeats", json!([]), MissingField, "/readings/0/outside/repeats"),
        (
            "three_ways",
            "/readings/0/outside/gauge",
            json!("bore gauge on the ring"),
            Contradiction,
            "/readings/0/outside/gauge",
        ),
        (
            "three_ways",
            "/readings/1/inside/gauge",
            json!(MICROMETER),
            Contradiction,
            "/readings/1/inside/gauge",
        ),
        ("three_ways", "/readings/1/inside/name", json!("piston"), Repeated, "/readings/1/inside/name"),
        ("three_ways", "/readings/1/inside/force", json!({}), UnknownField, "/readings/1/inside/force"),
        (
            "three_ways",
            "/readings/0/outside/off_axis/half_width",
            json!("20 deg"),
            OutOfRange,
            "/readings/0/outside/off_axis/half_width",
        ),
        (
            "three_ways",
            "/readings/0/outside/force/force",
            json!("8 N/um"),
            WrongUnit,
            "/readings/0/outside/force/force",
        ),
        (
            "three_ways",
            "/readings/0/outside/nominal",
            json!("76 mm"),
            OutOfRange,
            "/readings/0/outside/repeats/0",
        ),
        (
            "three_ways",
            "/readings/1/inside/nominal",
            json!("76 mm"),
            OutOfRange,
            "/readings/1/inside/repeats/0",
        ),
        ("three_ways", "/differences/0/smaller", json!("pistom"), UnknownName, "/differences/0/smaller"),
        (
            "three_ways",
            "/differences/0/smaller",
            json!("bore, ring"),
            Contradiction,
            "/differences/0/smaller",
        ),
        ("three_ways", "/differences/0/name", json!("piston"), Repeated, "/differences/0/name"),
        ("three_ways", "/monte_carlo/trials", json!(100), OutOfRange, "/monte_carlo/trials"),
        (
            kinds,
            "/readings/0/transferred/micrometer",
            json!("bore gauge"),
            Contradiction,
            "/readings/0/transferred/micrometer",
        ),
        (
            kinds,
            "/readings/0/transferred/gauge",
            json!("telescopik"),
            UnknownName,
            "/readings/0/transferred/gauge",
        ),
        (kinds, "/readings/6/depth/opposite", json!([]), MissingField, "/readings/6/depth/opposite"),
        (kinds, "/transfer_gauges/1/name", json!("telescopic"), Repeated, "/transfer_gauges/1/name"),
    ];
    for (name, pointer, value, kind, field) in cases {
        let changed = with(&document(name), pointer, value.clone()).to_string();
        let error = measure_json_bytes(changed.as_bytes(), Options::default()).expect_err(pointer);
        assert_eq!((error.kind(), error.field()), (kind, field), "{pointer} {value}: {error}");
    }
    // so many values that the trials would take minutes
    let mut many = document("three_ways");
    many["monte_carlo"]["trials"] = json!(1_000_000);
    let first = many["differences"][0].clone();
    many["differences"] = (0..60).map(|_| first.clone()).collect();
    let error = measure_json_bytes(many.to_string().as_bytes(), Options::default()).unwrap_err();
    assert_eq!((error.kind(), error.field()), (TooLarge, "/monte_carlo/trials"), "{error}");
}

#[test]
fn a_near_name_is_suggested() {
    let changed =
        with(&document("every_kind"), "/gauges/1/preset", json!("DIN 862 vernier 0.5 mm")).to_string();
    let error = measure_json_bytes(changed.as_bytes(), Options::default()).unwrap_err();
    assert_eq!(error.did_you_mean(), Some("DIN 862 vernier 0.05 mm"));
}
