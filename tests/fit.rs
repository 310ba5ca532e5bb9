//! What a fit document means: refusals with their place, what moves with what, and the sides of a comparison.

#![expect(clippy::unwrap_used, clippy::expect_used, reason = "a test stops where it fails")]

use gaugepoint::fit::{FitDocument, FitReport, fit, fit_json};
use gaugepoint::{Error, Options};
use gaugepoint_tests::text;
use serde_json::{Value, json};

fn example() -> Value {
    serde_json::from_str(&text("core/examples/sawmill_fit.json")).unwrap()
}

fn put(document: &mut Value, pointer: &str, value: Value) {
    match document.pointer_mut(pointer) {
        Some(place) => *place = value,
        None => {
            let (parent, name) = pointer.rsplit_once('/').unwrap();
            let parent = document.pointer_mut(parent).expect(pointer);
            parent.as_object_mut().expect(pointer).insert(name.to_owned(), value);
        }
    }
}

fn with(edits: &[(&str, Value)]) -> Value {
    let mut document = example();
    for (pointer, value) in edits {
        put(&mut document, pointer, value.clone());
    }
    document
}

fn computed(document: &Value) -> Result<FitReport, Error> {
    fit(&FitDocument::from_json(&document.to_string())?, Options { working: true })
}

/// Every refusal names its field in the document.
#[test]
fn refusals_have_their_place() {
    let rows = "/piston/shape/surfaces/0/rows";
    let (height, ovality) = (format!("{rows}/1/height"), format!("{rows}/1/ovality"));
    let order = "/bore/shape/rows/1/harmonics/0/order";
    let second = "/bore/shape/rows/1/harmonics/1/order";
    let cases = [
        ("/bore/size/value", json!("91.046"), "missing_unit", "/bore/size/value"),
        ("/bore/size/value", json!("3.584 mm"), "out_of_range", "/bore/size/value"),
        ("/piston/size/value", json!("80.0 mm"), "out_of_range", "/piston/size/value"),
        ("/piston/material", json!("piston aloy"), "unknown_name", "/piston/material"),
        ("/piston/gauge_height", json!("60 mm"), "out_of_range", "/piston/gauge_height"),
        (&height, json!("0 mm"), "out_of_order", &height),
        (&ovality, json!("3 mm"), "out_of_range", &ovality),
        (order, json!(3), "contradiction", order),
        (second, json!(2), "repeated", second),
        ("/motion/rod_length", json!("40 mm"), "out_of_order", "/motion/rod_length"),
        ("/running/piston/4/thrust", json!("420 C"), "outside_law", "/running/piston"),
        ("/running/bore/2/depth", json!("100 mm"), "out_of_range", "/running/bore"),
        ("/reference/material", json!("unobtainium"), "unknown_name", "/reference/material"),
        ("/elastic/overlap_per_side", json!("3 mm"), "out_of_range", "/elastic/overlap_per_side"),
        (
            "/find/bore_for_running_clearance",
            json!("20 mm"),
            "out_of_range",
            "/find/bore_for_running_clearance",
        ),
        ("/pictures/angles", json!(1), "out_of_range", "/pictures/angles"),
        ("/version", json!(2), "unknown_format", "/version"),
        ("/piston/colour", json!("red"), "unknown_field", "/piston/colour"),
    ];
    for (pointer, value, kind, field) in cases {
        let error = computed(&with(&[(pointer, value)])).expect_err(pointer);
        assert_eq!((error.kind().name(), error.field()), (kind, field), "{pointer}: {error}");
    }
    let mut still = example();
    still.as_object_mut().unwrap().remove("motion");
    let error = computed(&still).expect_err("the bore changes with depth");
    assert_eq!((error.kind().name(), error.field()), ("missing_field", "/motion"));
}

/// A piston of the original's alloy and shape at the maker's least clearance is the reference case.
#[test]
fn the_reference_case_has_no_margin_against_itself() {
    // 0.064 mm on the bench
    let edits =
        [("/reference/material", json!("piston alloy")), ("/reference/least_clearance", json!("0.064 mm"))];
    let report = computed(&with(&edits)).unwrap();
    let reference = report.hot.reference.unwrap();
    assert!(reference.margin.value_mm.abs() < 1e-12);
    assert!(reference.smallest_margin.value_mm.abs() < 1e-12);
    assert!(reference.note.contains("no thermal information"));
    // what both share cancels: the bore's temperature, alloy and shape
    let u = |name: &str| {
        let line = reference.margin.budget.iter().find(|l| l.source == name);
        line.map_or(0.0, |l| l.contribution_mm.abs())
    };
    for shared in ["temperatures of the bore", "coefficient of expansion of grey iron", "shape of the bore"] {
        assert!(u(shared) < 1e-12, "{shared}: {}", u(shared));
    }
    assert!(u("size of the piston") > 1e-3);
}

/// Two alloys at one bench clearance: 20.5e-6 against 22.8e-6 per kelvin on 86 mm over 110 K is 22 um less, by hand 86 x 2.3e-6 x 110.
#[test]
fn another_alloy_at_the_same_bench_clearance_has_another_margin() {
    let law =
        |a: &str| json!({"mean_coefficient": {"base": "20 C", "value": a, "from": "0 C", "to": "300 C"}});
    let edits = [
        ("/materials/0/law", law("22.8e-6 /K")),
        ("/materials/1/law", law("20.5e-6 /K")),
        ("/bore/size/value", json!("86.035 mm")),
        ("/piston/size/value", json!("86 mm")),
        ("/reference/least_clearance", json!("0.035 mm")),
        ("/running/piston", json!([{"height": "14 mm", "thrust": "130 C", "pin": "130 C"}])),
    ];
    let reference = computed(&with(&edits)).unwrap().hot.reference.unwrap();
    assert!(
        (reference.margin.value_mm + 86.0 * 2.3e-6 * 110.0).abs() < 1e-9,
        "{}",
        reference.margin.value_mm
    );
    assert!(reference.note.contains("another alloy"));
}

/// What is looked for gives what was wanted when it is put in.
#[test]
fn what_was_found_gives_what_was_wanted() {
    let report = computed(&example()).unwrap();
    let found = |what: &str| report.hot.found.iter().find(|f| f.what == what).unwrap().clone();
    let bored = |mm: f64| computed(&with(&[("/bore/size/value", json!(format!("{mm:.9} mm")))])).unwrap().hot;
    let running = found("bore_for_running_clearance").size_mm.unwrap();
    assert!((bored(running).running.value_mm - 0.02).abs() < 2e-9);
    let smallest = found("bore_for_smallest_clearance").size_mm.unwrap();
    assert!(bored(smallest).surfaces.first().unwrap().smallest.value_mm.abs() < 2e-9);
    // the piston is 90.982 mm: with 0.08 mm on the bench the bore is 91.062 mm
    let warmest = found("skirt_temperature_for_bench_clearance").temperature_c.unwrap();
    let alone = bored(91.062).onset.into_iter().find(|o| o.scenario == "piston_alone").unwrap();
    assert!((alone.thrust_c - warmest).abs() < 1e-4, "{} {warmest}", alone.thrust_c);
}

/// At 20 C the running clearance is the bench clearance, and the smallest that of the cold shapes.
#[test]
fn at_20_c_nothing_grows() {
    let edits = [
        ("/running/piston", json!([{"height": "0 mm", "thrust": "20 C", "pin": "20 C"}])),
        ("/running/bore", json!([{"depth": "0 mm", "temperature": "20 C"}])),
        ("/bore/shape/rows", json!([{"depth": "0 mm", "deviation": "0 mm"}])),
    ];
    let hot = computed(&with(&edits)).unwrap().hot;
    assert!((hot.running.value_mm - hot.bench.value_mm).abs() < 1e-13);
    // the bore is straight: where the piston stands does not matter
    let skirt = hot.surfaces.first().unwrap();
    assert_eq!((hot.running_crank_deg, skirt.place.crank_deg), (None, None));
    assert!((skirt.smallest.value_mm - 0.032).abs() < 1e-12);
    for row in hot.surfaces.iter().flat_map(|s| &s.ovality) {
        assert!((row.cold_mm - row.running_mm).abs() < 1e-12);
        assert!(row.round_running_mm.abs() < 1e-12);
    }
}

/// One report for the text of a document, whoever asks; the working leads to what is stated.
#[test]
fn the_text_and_the_json_tell_the_same() {
    let report = computed(&example()).unwrap();
    let again = fit_json(&example().to_string(), Options { working: true }).unwrap();
    assert_eq!(report.to_json(), again);
    let told = report.to_text();
    assert!(told.lines().all(|line| line.chars().count() <= 100), "{told}");
    let parts =
        ["bench clearance at the gauge point: 0.0640", "skirt", "top land", "the original piston", "CAUTION"];
    for part in parts {
        assert!(told.contains(part), "{part}");
    }
    let working = report.working.unwrap();
    let stated =
        working.steps.iter().flat_map(|s| &s.results).any(|r| r == "/hot/surfaces/0/smallest/value_mm");
    assert!(stated, "the working leads to the smallest clearance");
}
