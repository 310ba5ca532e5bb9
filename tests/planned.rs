//! What the plan of a job means: what is machined and what is left, which piston goes where, what the second visit says.
//!
//! The numbers in these tests are worked out by hand from the document, beside each.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]
#![allow(clippy::disallowed_methods, reason = "the tests' own arithmetic is compared with a tolerance")]

use gaugepoint::plan::oversize::Way;
use gaugepoint::report::{BoreWork, Closing, FinishResult, PistonWork, PlanReport, Task};
use gaugepoint::{Document, Error, ErrorKind, Options, Report, assess};
use gaugepoint_tests::job;
use serde_json::{Value, json};

fn example(name: &str) -> Value {
    serde_json::from_str(&job(name)).expect("JSON")
}

fn tried(document: &Value) -> Result<Report, Error> {
    assess(&Document::from_json(&document.to_string())?, Options::default())
}

fn report(document: &Value) -> Report {
    tried(document).unwrap_or_else(|e| panic!("{e}"))
}

fn plan(document: &Value) -> PlanReport {
    report(document).plan.expect("a plan")
}

/// The document with the value at a pointer set.
fn with(document: &Value, pointer: &str, value: Value) -> Value {
    let mut out = document.clone();
    let (parent, last) = pointer.rsplit_once('/').expect("a pointer");
    match out.pointer_mut(parent).unwrap_or_else(|| panic!("{pointer}")) {
        Value::Object(fields) => drop(fields.insert(last.to_owned(), value)),
        Value::Array(items) => items[last.parse::<usize>().expect("an index")] = value,
        other => panic!("{pointer}: {other}"),
    }
    out
}

fn near(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "{found}, expected {expected}");
}

fn open(plan: &PlanReport, words: &str) -> bool {
    plan.open.iter().any(|o| o.contains(words))
}

#[test]
fn a_block_with_one_bad_bore_is_bored_to_one_step() {
    let plan = plan(&example("pump_six"));
    assert!(plan.cylinders.iter().all(|c| c.bore == BoreWork::Bore && c.piston == PistonWork::Replace));
    assert!(plan.cylinders.iter().all(|c| c.oversize_mm == Some(0.5)));
    let sizes = plan.oversizes.as_ref().expect("sizes");
    // 6 (58 + 45); 0.25 mm is as cheap, but only 4 pistons can be had; 1.00 mm goes through the wall of cylinder 4:
    // 96 + 2 (4.5 - 0.1 - 4.0) = 96.8 mm
    let taken = &sizes.choices[sizes.chosen.expect("a way")];
    assert_eq!((taken.way, taken.price), (Way::OneStep, 618.0));
    near(sizes.needs[3].largest_by_walls_mm.unwrap(), 96.8, 1e-9);
    let ruled_out = |step: f64| {
        let way = sizes
            .choices
            .iter()
            .find(|c| c.way == Way::OneStep && c.actions.iter().all(|a| a.oversize_mm == Some(step)));
        way.unwrap().ruled_out.join("; ")
    };
    assert_eq!(ruled_out(0.25), "6 pistons of 0.25 mm are needed and 4 can be had");
    assert_eq!(ruled_out(1.0), "the walls of cylinder 4 allow 96.800 mm");
    // no two neighbours follow each other
    assert_eq!(sizes.order, [1, 3, 5, 2, 4, 6]);
}

#[test]
fn the_clean_up_is_an_interval_and_its_upper_end_is_used() {
    let plan = plan(&example("pump_six"));
    let need = &plan.oversizes.as_ref().unwrap().needs[3];
    // the largest reading of cylinder 4 is 0.0385 mm above a ring of 95.9994 mm, all within 0.5 K of each other; iron 0.5 K cooler than the ring
    // grows by 96 (11.4e-6 6.5 - 11.5e-6 7) = -0.0006 mm less: 96.0379 + 0.0006; both sides: + 0.02; one side: 96 + 2 0.0385 + 0.02
    near(need.clean_up_least.value_mm, 96.0585, 2e-4);
    near(need.clean_up.value_mm, 96.0970, 4e-4);
    // one side worn counts the diameter twice, and so its uncertainty
    let ratio = need.clean_up.standard_uncertainty_mm / need.clean_up_least.standard_uncertainty_mm;
    near(ratio, 2.0, 1e-6);
    near(need.needed_mm, need.clean_up.value_mm + 1.65 * need.clean_up.standard_uncertainty_mm, 1e-9);
    // what is asked for proves nothing by a rule that leaves the uncertainty out
    let simple = with(&example("pump_six"), "/decision", json!({"rule": "simple_acceptance"}));
    let need = &self::plan(&simple).oversizes.unwrap().needs[3].clone();
    near(need.needed_mm, need.clean_up.value_mm, 1e-12);
}

#[test]
fn sizes_to_machine_follow_from_the_measured_piston() {
    let given = example("pump_six");
    let plan = plan(&given);
    assert_eq!(plan.targets.len(), 6);
    let size = |k: usize| plan.pistons[k].sizes[0].bare_size.as_ref().unwrap().value_mm;
    for (k, target) in plan.targets.iter().enumerate() {
        let place = plan.pistons.iter().position(|p| p.name == target.piston).unwrap();
        near(target.finish.value_mm, size(place) + 0.095, 1e-9);
        near(target.boring.value_mm, size(place) + 0.095 - 0.06, 1e-9);
        let dial = target.dial.as_ref().unwrap_or_else(|| panic!("{k}"));
        // 0.06 mm of metal is 0.06 (1 + 11.4e-6 11) on a block at 31 C
        near(dial.finish.value_mm - dial.boring.value_mm, 0.06 * (1.0 + 11.4e-6 * 11.0), 1e-9);
        // a block 4 K warmer than the ring: the dial reads 96.5 11.4e-6 11 - 96 11.5e-6 7 and the gauge at shop temperature as when it was set
        let warm = target.finish.value_mm * (1.0 + 11.4e-6 * 11.0) - 95.9994 * (1.0 + 11.5e-6 * 7.0);
        near(dial.finish.value_mm, warm, 1e-9);
    }
    // without the pistons there is no size, and nothing is guessed from the nominal one
    let none = with(&given, "/plan/pistons", json!([]));
    let plan = self::plan(&none);
    assert!(plan.targets.is_empty());
    assert!(open(&plan, "finish size of cylinders 1, 2, 3, 4, 5 and 6: it is that of a measured piston"));
    // a pair that may not be is not made, and a fixed piston of another size serves nobody
    let apart = with(&given, "/plan/matching", json!({"forbidden": [{"cylinder": 1, "piston": "P1"}]}));
    assert_eq!(self::plan(&apart).targets.iter().find(|t| t.cylinder == 1).unwrap().piston, "P2");
    let other = with(&given, "/plan/pistons/0/oversize", json!("0.25 mm"));
    let other = with(&other, "/plan/matching", json!({"fixed": [{"cylinder": 1, "piston": "P1"}]}));
    assert!(self::plan(&other).targets.iter().all(|t| t.cylinder != 1));
    // pistons of another step are not taken
    let other = with(&given, "/plan/pistons/0/oversize", json!("0.25 mm"));
    assert_eq!(self::plan(&other).targets.len(), 5);
}

#[test]
fn the_work_order_finds_the_cause_first_and_bores_before_it_hones() {
    let report = report(&example("pump_six"));
    let tasks: Vec<Task> = report.work_order.iter().map(|s| s.task).collect();
    let expected = [
        Task::FindCause,
        Task::Bore,
        Task::Hone,
        Task::Clean,
        Task::CheckFinish,
        Task::FitPistons,
        Task::Close,
    ];
    assert_eq!(tasks, expected);
    assert_eq!(report.work_order[0].cylinders, [3]);
    let bore = &report.work_order[1];
    assert_eq!(bore.cylinders, [1, 3, 5, 2, 4, 6]);
    assert!(bore.before.iter().any(|b| b.contains("torque plate")) && !bore.care.is_empty());
    let dial = &report.plan.as_ref().unwrap().targets[1].dial.as_ref().unwrap().boring;
    let target =
        bore.targets.iter().find(|t| t.cylinder == report.plan.as_ref().unwrap().targets[1].cylinder);
    assert_eq!(target.unwrap().dial_mm, Some(dial.value_mm));
    // the work order repeats the numbers of the plan
    let hone = &report.work_order[2];
    for target in &report.plan.as_ref().unwrap().targets {
        let of = |step: &gaugepoint::report::WorkStep| {
            step.targets.iter().find(|t| t.cylinder == target.cylinder).expect("a target").clone()
        };
        let (bored, honed) = (of(bore), of(hone));
        assert_eq!((bored.value_mm, honed.value_mm), (target.boring.value_mm, target.finish.value_mm));
        assert_eq!(honed.lower_mm, Some(target.finish.value_mm - 0.006));
        assert_eq!(honed.upper_mm, Some(target.finish.value_mm + 0.006));
    }
    let (text, markdown) = (report.to_text(), report.to_markdown());
    for words in ["WORK ORDER", "Done by", "the dial reads"] {
        assert!(text.contains(words), "{words}");
    }
    assert!(markdown.contains("## Work order"));
    assert!(text.lines().all(|line| line.chars().count() <= 100));
}

#[test]
fn one_sleeve_leaves_the_bores_that_go_back() {
    let given = example("launch_vee");
    let plan = plan(&given);
    let work: Vec<BoreWork> = plan.cylinders.iter().map(|c| c.bore).collect();
    assert_eq!(work, [BoreWork::Leave, BoreWork::Leave, BoreWork::Sleeve, BoreWork::Leave]);
    let sizes = plan.oversizes.as_ref().unwrap();
    let taken = &sizes.choices[sizes.chosen.unwrap()];
    // 71 + 55 + 165
    assert_eq!((taken.way, taken.price), (Way::SleevesAlone, 291.0));
    let sleeve = &plan.sleeves[0];
    // mean of the six readings 90.070; less 0.080; from 0.095 to 0.070
    near(sleeve.hole.value_mm, 89.990, 1e-9);
    near(sleeve.hole_least_mm, 89.975, 1e-9);
    near(sleeve.hole_most_mm, 90.000, 1e-9);
    // 89.99 (1 + 21.5e-6 130) - 90.07 (1 - 11.4e-6 40)
    near(
        sleeve.assembly_clearance.value_mm,
        89.99 * (1.0 + 21.5e-6 * 130.0) - 90.07 * (1.0 - 11.4e-6 * 40.0),
        1e-9,
    );
    assert!(sleeve.slides_in);
    // 0.075 + 90.07 (11.4e-6 - 21.5e-6) 55 and 75
    for (left, warm) in sleeve.running_interference_mm.iter().zip([55.0, 75.0]) {
        near(*left, 0.075 + 90.07 * (11.4e-6 - 21.5e-6) * warm, 1e-9);
    }
    // a cold block does not take it
    let cold = with(&given, "/plan/sleeves/block_heated_to", json!("40 C"));
    assert!(!self::plan(&cold).sleeves[0].slides_in);
    // where the sleeve is forbidden the block is bored, and the sleeve stays visible
    let forbidden = with(&given, "/plan/machining/no_sleeve_in", json!([3]));
    let plan = self::plan(&forbidden);
    let sizes = plan.oversizes.as_ref().unwrap();
    assert_eq!(sizes.choices[sizes.chosen.unwrap()].way, Way::OneStep);
    let sleeves = sizes.choices.iter().find(|c| c.way == Way::SleevesAlone).unwrap();
    assert_eq!(sleeves.ruled_out, ["cylinder 3 may not take a sleeve"]);
}

#[test]
fn rings_and_masses_of_the_sleeved_cylinder() {
    let plan = plan(&example("launch_vee"));
    let finish = plan.targets[0].finish.value_mm;
    let top = &plan.rings[0];
    // read in a ring gauge of 84.000
    let gap = 0.28 + std::f64::consts::PI * (finish - 84.0);
    near(top.gap.as_ref().unwrap().value_mm, gap, 1e-9);
    near(top.target_mm, 0.37, 1e-12);
    near(top.file_off_mm.unwrap(), 0.37 - gap, 1e-9);
    near(top.each_end_mm.unwrap(), (0.37 - gap) / 2.0, 1e-9);
    assert_eq!(plan.rings[1].file_off_mm, Some(0.0));
    // lightest 398.6 + 101.1 = 499.7, band 4: cylinder 3 with 504.4 loses 0.7
    let masses = plan.masses.as_ref().unwrap();
    near(masses.most_g, 503.7, 1e-9);
    near(masses.each[2].cuts[0].off_g, 0.7, 1e-9);
    assert!(masses.is_met);
}

/// The V with cylinder 3 read after the work, so much from its finish size.
fn finished(off_mm: f64, stage: &str) -> Value {
    let given = example("launch_vee");
    let finish = plan(&given).targets[0].finish.value_mm;
    // gauge and bore at the temperature of its setting: what it read at 84.040 is known, so the reading moves by the difference
    let reading = |size: f64| {
        let probe = with_finish(&given, "0.013 mm", "as_it_was");
        let found = plan(&probe).finish.unwrap().cylinders[0].bore.size.as_ref().unwrap().value_mm;
        format!("{:.4} mm", 0.013 + (size - found))
    };
    with_finish(&given, &reading(finish + off_mm), stage)
}

fn with_finish(given: &Value, reading: &str, stage: &str) -> Value {
    let place = |depth: &str, axis: &str| json!({"depth": depth, "axis": axis, "repeats": [reading]});
    let bore = json!({
        "clamping": "plate_fitted", "gauge": "bore gauge 50-100 mm", "temperature": "22 C",
        "readings": [place("15 mm", "0 deg"), place("15 mm", "90 deg"), place("105 mm", "0 deg"), place("105 mm", "90 deg")],
    });
    let gaps = json!([{"ring": "top", "gap": "0.40 mm"}, {"ring": "second", "gap": "0.45 mm"}]);
    let cylinder = json!({"number": 3, "stage": stage, "piston": "S7", "bore": bore, "gaps": gaps});
    with(given, "/plan/finish", json!({"by": "invented name", "date": "2026-05-27", "cylinders": [cylinder]}))
}

#[test]
fn the_second_visit_says_met_hone_on_or_too_large() {
    let cases = [
        (0.0, "honed", FinishResult::Met, "fit its piston"),
        (-0.045, "honed", FinishResult::HoneOn, "hone 0.045 mm off the diameter"),
        (0.045, "honed", FinishResult::TooLarge, "0.015 mm above the largest clearance"),
        (-0.058, "bored", FinishResult::ToBeHoned, "hone 0.058 mm off the diameter"),
        (0.004, "bored", FinishResult::TooLarge, "nothing is left for the hone"),
        // the clearance is 0.029 mm from its middle, and the guard band is about 5 um: within it, nothing is proven
        (0.0285, "honed", FinishResult::NotProven, "do not hone on"),
    ];
    for (off, stage, result, next) in cases {
        let plan = plan(&finished(off, stage));
        let found = plan.finish.as_ref().unwrap();
        let cylinder = &found.cylinders[0];
        assert_eq!(cylinder.result, result, "{off} {stage}: {}", cylinder.next);
        assert!(cylinder.next.contains(next), "{off}: {}", cylinder.next);
        near(cylinder.stock.as_ref().unwrap().value_mm, -off, 6e-5);
        // the others were not read after the work: the job is not closed
        assert_eq!(found.result, Closing::NotProven);
        assert!(
            found.open.iter().any(|o| o == "cylinder 1: nothing was read after the work"),
            "{:?}",
            found.open
        );
    }
}

#[test]
fn a_job_is_closed_when_everything_was_read_and_is_proven() {
    let mut given = finished(0.0, "honed");
    for number in [1, 2, 4] {
        let bore = given.pointer(&format!("/cylinders/{}/bore", number - 1)).unwrap().clone();
        let cylinder = json!({"number": number, "stage": "as_it_was", "bore": bore});
        given.pointer_mut("/plan/finish/cylinders").unwrap().as_array_mut().unwrap().push(cylinder);
    }
    let found = plan(&given).finish.unwrap();
    assert_eq!((found.result, found.open.as_slice()), (Closing::Proven, [].as_slice()));
    // a gauge that ran out between the visits proves nothing
    let late = with(&given, "/plan/finish/date", json!("2027-02-03"));
    let found = plan(&late).finish.unwrap();
    assert_eq!(
        found.open,
        ["bore gauge 50-100 mm: its calibration ran out on 2027-02-02: nothing is proven with it"]
    );
    // a ring below its least gap opens it again
    let short = with(&given, "/plan/finish/cylinders/0/gaps/0/gap", json!("0.30 mm"));
    let found = plan(&short).finish.unwrap();
    assert_eq!(found.result, Closing::NotProven);
    assert_eq!(found.open, ["cylinder 3: gap of the top ring: does not conform"]);
}

#[test]
fn a_cracked_bore_is_not_machined_away_and_an_uncertain_one_is_not_decided() {
    let given = example("pump_six");
    let crack = json!([{"place": "bore_wall", "what": "crack", "severity": "light"}]);
    let cracked = with(&given, "/cylinders/4/findings", crack);
    let found = plan(&cracked);
    assert_eq!(found.cylinders[4].bore, BoreWork::Replace);
    assert!(found.cylinders[4].reasons.iter().any(|r| r.contains("not machined away")));
    // all bores well: nothing is machined, and what is undecided is said to be
    let mut well = given;
    for k in [2, 3, 4] {
        let bore = well.pointer("/cylinders/0/bore").unwrap().clone();
        *well.pointer_mut(&format!("/cylinders/{k}/bore")).unwrap() = bore;
    }
    let found = plan(&well);
    let work: Vec<(BoreWork, PistonWork)> = found.cylinders.iter().map(|c| (c.bore, c.piston)).collect();
    let reuse = (BoreWork::Leave, PistonWork::Reuse);
    assert_eq!(work, [reuse, reuse, (BoreWork::Leave, PistonWork::Undecided), reuse, reuse, reuse]);
    assert!(found.targets.is_empty() && found.oversizes.is_some());
}

#[test]
fn what_the_plan_refuses() {
    let six = example("pump_six");
    let vee = example("launch_vee");
    let cases = [
        (&six, "/plan/target_clearance", json!("0.2 mm"), ErrorKind::OutOfRange, "/plan/target_clearance"),
        (
            &six,
            "/plan/machining/steps/1/oversize",
            json!("0.25 mm"),
            ErrorKind::OutOfOrder,
            "/plan/machining/steps/1/oversize",
        ),
        (&six, "/plan/machining/steps", json!([]), ErrorKind::MissingField, "/plan/machining/steps"),
        (
            &six,
            "/plan/machining/chosen_oversize",
            json!("0.75 mm"),
            ErrorKind::UnknownName,
            "/plan/machining/chosen_oversize",
        ),
        (
            &six,
            "/plan/machining/chamber/crown",
            json!("-200 cm3"),
            ErrorKind::Contradiction,
            "/plan/machining/chamber/crown",
        ),
        (&six, "/plan/pistons/1/name", json!("P1"), ErrorKind::Repeated, "/plan/pistons/1/name"),
        (&vee, "/plan/sleeves/target", json!("0.1 mm"), ErrorKind::OutOfRange, "/plan/sleeves/target"),
        (&vee, "/plan/rings/0/max", json!("0.36 mm"), ErrorKind::OutOfOrder, "/plan/rings/0/max"),
        (&vee, "/plan/rings/1/ring", json!("top"), ErrorKind::Repeated, "/plan/rings/1/ring"),
        (
            &vee,
            "/plan/masses/each/2/parts/0/removable",
            json!("500 g"),
            ErrorKind::Contradiction,
            "/plan/masses/each/2/parts/0/removable",
        ),
    ];
    for (given, pointer, value, kind, field) in cases {
        let error = tried(&with(given, pointer, value)).expect_err(pointer);
        assert_eq!((error.kind(), error.field()), (kind, field), "{error}");
    }
    let early = with(&finished(0.0, "honed"), "/plan/finish/date", json!("2026-05-18"));
    let error = tried(&early).expect_err("before the job");
    assert_eq!((error.kind(), error.field()), (ErrorKind::OutOfOrder, "/plan/finish/date"));
}
