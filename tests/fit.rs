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

fn vector(name: &str) -> Value {
    serde_json::from_str(&text(&format!("tests/vectors/fits/{name}.json"))).unwrap()
}

fn edited(mut document: Value, edits: &[(&str, Value)]) -> Result<FitReport, Error> {
    for (pointer, value) in edits {
        put(&mut document, pointer, value.clone());
    }
    computed(&document)
}

fn refused(document: Value, edits: &[(&str, Value)]) -> (&'static str, String) {
    let error = edited(document, edits).expect_err("it is refused");
    (error.kind().name(), error.field().to_owned())
}

/// A preset stands in place of every row, and the report never hides that it was used.
#[test]
fn a_preset_is_told_and_stands_alone() {
    let illustrative = || vector("illustrative");
    let report = computed(&illustrative()).unwrap();
    let told: Vec<_> = report.warnings.iter().filter(|w| w.kind == "illustrative_temperatures").collect();
    assert_eq!(told.len(), 1);
    assert_eq!(told[0].path, "/running/preset");
    assert!(report.hot.origin.contains("illustrative") && report.hot.origin.contains("from memory"));
    assert!(report.to_text().contains("illustrative preset"));
    let rows = example();
    for field in ["piston", "piston_permissible_error", "bore", "bore_permissible_error", "origin"] {
        let place = format!("/running/{field}");
        let typed = rows.pointer(&place).unwrap().clone();
        assert_eq!(refused(illustrative(), &[(&place, typed)]), ("contradiction", place.clone()));
        // without a preset all of them are needed
        let mut without = example();
        without.pointer_mut("/running").unwrap().as_object_mut().unwrap().remove(field);
        assert_eq!(refused(without, &[]), ("missing_field", place));
    }
    let of = |name: &str| [("/running", json!({ "preset": name }))];
    assert_eq!(refused(illustrative(), &of("petrol")), ("unknown_name", "/running/preset".to_owned()));
    assert_eq!(
        refused(illustrative(), &[("/running", json!({}))]),
        ("missing_field", "/running/origin".to_owned())
    );
    let mut still = illustrative();
    still.as_object_mut().unwrap().remove("motion");
    assert_eq!(refused(still, &[]), ("missing_field", "/motion".to_owned()));
    // every duty runs on a piston whose alloy reaches its crown
    let law =
        json!({"mean_coefficient": {"base": "20 C", "value": "12e-6 /K", "from": "0 C", "to": "400 C"}});
    for duty in gaugepoint::growth::duty::ALL {
        let edits = [("/running", json!({"preset": duty.name})), ("/materials/0/law", law.clone())];
        let report = edited(illustrative(), &edits).expect(duty.name);
        // 60 mm is the crown, 0 mm the bottom edge: the gauge point lies between
        let gauge = report.hot.gauge_point.thrust_c;
        assert!(gauge > duty.piston[0].thrust_c && gauge < duty.piston[1].thrust_c, "{}: {gauge}", duty.name);
    }
}

/// Where the piston stands before a port nothing touches: without its ports the bore is tighter. A port of the whole turn takes away all wall between its depths.
#[test]
fn ports_take_wall_away() {
    let ported = || vector("ports_in_the_bore");
    let smallest = |edits: &[(&str, Value)]| edited(ported(), edits).unwrap().hot.surfaces[0].clone();
    let with = smallest(&[]);
    let without = smallest(&[("/bore/shape/windows", json!([]))]);
    assert!(without.smallest.value_mm < with.smallest.value_mm - 1e-3);
    let depth = without.place.depth_mm.unwrap();
    assert!(depth > 38.0 && depth < 53.0, "{depth}");
    let all = json!({"what": "port all round", "from_angle": "0 deg", "to_angle": "360 deg", "from_depth": "38 mm", "to_depth": "53 mm"});
    let open = smallest(&[("/bore/shape/windows", json!([all]))]);
    let depth = open.place.depth_mm.unwrap();
    assert!(open.smallest.value_mm >= with.smallest.value_mm && !(depth > 38.0 && depth < 53.0), "{depth}");

    let window = "/bore/shape/windows/0";
    for (field, value, kind) in [
        ("to_angle", "325 deg", "out_of_order"),
        ("to_angle", "400 deg", "out_of_range"),
        ("to_depth", "38 mm", "out_of_order"),
        ("from_depth", "-3 mm", "out_of_range"),
        ("what", " ", "blank"),
    ] {
        let place = format!("{window}/{field}");
        let (got, at) = refused(ported(), &[(&place, json!(value))]);
        assert_eq!(at, place);
        assert!(got == kind || field == "what", "{place}: {got}");
    }
}

/// What a bare window leaves out, the struts hold back, the lands are made of and the minor side looks like moves what it should.
#[test]
fn each_vector_reaches_what_it_is_for() {
    let skirt = |name: &str, edits: &[(&str, Value)]| {
        edited(vector(name), edits).unwrap().hot.surfaces[0].smallest.value_mm
    };
    let surface = "/piston/shape/surfaces/0";
    let bare = skirt("bare_windows", &[]);
    // the coating is 14 um: left out nowhere, the skirt is tighter, but by no more
    let coated = skirt("bare_windows", &[(&format!("{surface}/windows"), json!([]))]);
    assert!(coated < bare - 1e-4 && coated > bare - 0.0142, "{coated} {bare}");
    let ratio = format!("{surface}/growth_ratio/thrust");
    assert!(
        skirt("controlled_expansion", &[(&ratio, json!("1"))]) < skirt("controlled_expansion", &[]) - 0.02
    );
    let minor = format!("{surface}/side_rows/2/minor_thrust_below");
    let one = edited(vector("two_sides"), &[]).unwrap().hot.surfaces[0].clone();
    let other = edited(vector("two_sides"), &[(&minor, json!("0 mm"))]).unwrap().hot.surfaces[0].clone();
    assert!(one.place.angle_deg > 270.0 || one.place.angle_deg < 90.0);
    assert!(other.place.angle_deg > 90.0 && other.place.angle_deg < 270.0);
    let crown = edited(vector("steel_crown"), &[]).unwrap().hot;
    let alloy = edited(
        vector("steel_crown"),
        &[
            ("/piston/shape/surfaces/1/material", json!("piston alloy")),
            ("/materials/0/law/mean_coefficient/to", json!("450 C")),
        ],
    );
    let (steel, alloy) =
        (crown.surfaces[1].smallest.value_mm, alloy.unwrap().hot.surfaces[1].smallest.value_mm);
    // by hand: 65 mm times 7.9e-6 times about 315 K at the crown
    assert!((steel - alloy - 65.0 * 7.9e-6 * 315.0).abs() < 0.01, "{steel} {alloy}");
    let kinked = edited(vector("kinked_law"), &[]).unwrap().hot.surfaces[0].clone();
    assert!(kinked.certified_within_mm <= 1e-9, "{kinked:?}");
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
