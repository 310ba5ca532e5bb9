//! Findings by eye in a job: what they ask, what their answers settle, and how they stand beside the sizes. Expected causes are those
//! of the catalogue (`core/docs/signs.md`), read by hand.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::decision::finding::{Disposition, Finding};
use gaugepoint::decision::signs::{Cause, Group, Question as Q};
use gaugepoint::decision::{Conformity, Of, Outcome};
use gaugepoint::report::CylinderReport;
use gaugepoint::{Document, Error, ErrorKind, Options, Report, assess};
use gaugepoint_tests::job;
use serde_json::{Value, json};

/// The six-cylinder example; everything in its first cylinder conforms.
fn six() -> Value {
    let mut six: Value = serde_json::from_str(&job("pump_six")).expect("JSON");
    // what is looked at here are the verdicts, before any plan
    six.as_object_mut().expect("a job").remove("plan");
    six
}

/// What was seen, with answers.
fn seen(place: &str, what: &str, severity: &str, answers: &[(&str, &str)]) -> Value {
    let answers: Vec<Value> = answers.iter().map(|(q, a)| json!({"question": q, "answer": a})).collect();
    json!({"place": place, "what": what, "severity": severity, "answers": answers})
}

fn assessed(document: &Value) -> Result<Report, Error> {
    assess(&Document::from_json(&document.to_string())?, Options::default())
}

fn report(document: &Value) -> Report {
    assessed(document).unwrap_or_else(|e| panic!("{e}"))
}

/// The example with one finding in place of those of a cylinder.
fn having(cylinder: usize, finding: &Value) -> Value {
    let mut out = six();
    out["cylinders"][cylinder]["findings"] = json!([finding]);
    out
}

fn of_piston(cylinder: &CylinderReport) -> &Finding {
    &cylinder.piston.as_ref().expect("a piston").findings[0]
}

fn causes(finding: &Finding) -> Vec<Cause> {
    finding.candidates.iter().map(|c| c.cause).collect()
}

fn asked(finding: &Finding) -> Vec<Q> {
    finding.ask.iter().map(|a| a.question).collect()
}

fn refused(document: &Value) -> (ErrorKind, String, Error) {
    let error = assessed(document).expect_err("refused");
    (error.kind(), error.field().to_owned(), error)
}

const TIGHT: &[(&str, &str)] = &[
    ("both_faces", "yes"),
    ("ring_zone_clean", "yes"),
    ("dark_and_torn", "yes"),
    ("at_45_degrees", "no"),
    ("lower_edge_alone", "no"),
    ("soon_after_rebuild", "yes"),
    ("coolant_short", "no"),
    ("shape_by_clamping", "no"),
    ("skirt_strutted", "no"),
    ("loaded_cold", "no"),
    ("from_the_crown", "no"),
];

#[test]
fn a_cause_that_is_not_found_blocks_reuse_and_answers_lift_that() {
    let after = |answers: &[(&str, &str)]| {
        report(&having(0, &seen("skirt", "diagonal_wear", "marked", answers))).cylinders[0].clone()
    };
    let open = after(&[]);
    assert_eq!(open.verdict.outcome, Outcome::FindTheCause);
    let finding = of_piston(&open);
    assert_eq!(causes(finding), [Cause::RodBentOrTwisted, Cause::BoreNotSquare]);
    assert_eq!(asked(finding), [Q::RodBent]);
    assert_eq!(finding.ask[0].text, "Is the rod bent or twisted by its gauge?");
    assert_eq!((finding.cause_found, finding.disposition), (None, Disposition::FindCause));
    let candidate = &finding.candidates[0];
    assert_eq!(
        (candidate.group, candidate.sign, candidate.confirmed),
        (Group::Alignment, "diagonal_path", false)
    );
    assert_eq!(candidate.text, "A bent or twisted rod.");
    for (answer, cause) in [("yes", Cause::RodBentOrTwisted), ("no", Cause::BoreNotSquare)] {
        let settled = after(&[("rod_bent", answer)]);
        assert_eq!(settled.verdict.outcome, Outcome::Reuse, "{:?}", settled.verdict);
        let finding = of_piston(&settled);
        assert_eq!((finding.cause_found, finding.disposition), (Some(cause), Disposition::Measure));
        assert_eq!((causes(finding), asked(finding)), (vec![cause], vec![]));
        let found = format!("cause found: {}", cause.spoken());
        assert!(settled.verdict.reasons.iter().any(|r| r.ends_with(&found)), "{:?}", settled.verdict);
    }
    // a sign of one cause that nobody looked into is not settled
    let pits = report(&having(0, &seen("liner_outside", "pitting", "marked", &[]))).cylinders[0].clone();
    assert_eq!(pits.verdict.outcome, Outcome::FindTheCause);
    // more than one candidate that is confirmed is no cause
    let both = [("from_the_crown", "yes"), ("dark_and_torn", "yes"), ("overloaded", "yes")];
    let both = report(&having(0, &seen("top_land", "scuffing", "marked", &both))).cylinders[0].clone();
    assert!(of_piston(&both).candidates.iter().filter(|c| c.confirmed).count() == 2);
    assert_eq!(both.verdict.outcome, Outcome::FindTheCause);
}

#[test]
fn the_answers_of_the_example_narrow_and_do_not_settle() {
    let mut without = six();
    without["cylinders"][2]["findings"][0].as_object_mut().expect("a finding").remove("answers");
    let (before, after) = (report(&without), report(&six()));
    let (before, after) = (of_piston(&before.cylinders[2]), of_piston(&after.cylinders[2]));
    assert!(after.candidates.len() < before.candidates.len() && after.candidates.len() > 1);
    // marks on both faces: not the side that lost its film alone; not half-way to the boss: not the pin
    for gone in [Cause::OilFilmLost, Cause::PinTight, Cause::PinDry, Cause::WrongOvality] {
        assert!(causes(before).contains(&gone) && !causes(after).contains(&gone), "{gone:?}");
    }
    assert_eq!((after.cause_found, after.disposition), (None, Disposition::FindCause));
    assert!(!asked(after).contains(&Q::BothFaces));
}

#[test]
fn a_rejected_part_with_an_unknown_cause_stops_new_parts_too() {
    let nothing_new =
        "nothing new is fitted before the cause of the severe diagonal wear on the skirt is found";
    let open = report(&having(0, &seen("skirt", "diagonal_wear", "severe", &[])));
    let cylinder = &open.cylinders[0];
    assert_eq!(cylinder.piston.as_ref().expect("a piston").verdict.outcome, Outcome::DoNotReuse);
    assert_eq!(cylinder.verdict.outcome, Outcome::DoNotReuse);
    assert!(cylinder.verdict.reasons.iter().any(|r| r == nothing_new), "{:?}", cylinder.verdict);
    let of_block = format!("cylinder 1: {nothing_new}");
    assert!(open.block.verdict.reasons.contains(&of_block), "{:?}", open.block.verdict);
    assert!(open.to_text().replace("\n      ", " ").contains(nothing_new));
    // found, the part stays rejected, and new ones may come
    let found = report(&having(0, &seen("skirt", "diagonal_wear", "severe", &[("rod_bent", "yes")])));
    assert_eq!(found.cylinders[0].verdict.outcome, Outcome::DoNotReuse);
    let reasons = found.cylinders[0].verdict.reasons.iter().chain(&found.block.verdict.reasons);
    assert!(!reasons.into_iter().any(|r| r.contains("nothing new")));
}

#[test]
fn an_answer_against_the_record_is_refused() {
    let mut document =
        having(2, &seen("skirt", "crack", "light", &[("from_the_crown", "no"), ("hypereutectic", "no")]));
    assert!(assessed(&document).is_ok());
    document["engine"]["piston"]["record"] =
        json!({"make": "cast", "silicon": {"class": "hypereutectic", "evidence": "analysis of a chip"}});
    let (kind, field, error) = refused(&document);
    assert_eq!(
        (kind, field.as_str()),
        (ErrorKind::Contradiction, "/cylinders/2/findings/0/answers/1/answer")
    );
    assert!(error.reason().contains("/engine/piston/record/silicon/class"), "{error}");
    assert!(error.reason().contains("hypereutectic"), "{error}");
    // the record of the piston itself stands in place of the engine's, also where it says less
    document["cylinders"][2]["piston"]["record"] = json!({"make": "cast"});
    assert!(assessed(&document).is_ok());
    document["cylinders"][2]["piston"]["record"] =
        json!({"silicon": {"class": "hypereutectic", "evidence": "mark"}});
    assert!(refused(&document).2.reason().contains("/cylinders/2/piston/record/silicon/class"));
    // an answer that agrees says it twice, and nothing else
    document["cylinders"][2]["findings"][0]["answers"][1]["answer"] = json!("yes");
    let agreed = report(&document);
    document["cylinders"][2]["findings"][0]["answers"].as_array_mut().expect("answers").pop();
    assert_eq!(agreed, report(&document));
    for (field, question, word) in [
        ("make", "forged", "forged"),
        ("pin", "pin_pressed", "pressed_in_rod"),
        ("skirt", "skirt_strutted", "strutted"),
    ] {
        let mut document = having(2, &seen("skirt", "crack", "light", &[(question, "no")]));
        document["engine"]["piston"]["record"] = json!({field: word});
        let (kind, _, error) = refused(&document);
        assert_eq!(kind, ErrorKind::Contradiction);
        assert!(error.reason().contains(&format!("/engine/piston/record/{field}")), "{error}");
    }
}

#[test]
fn a_question_is_answered_once_and_silicon_has_its_evidence() {
    for second in ["yes", "no"] {
        let twice = seen("skirt", "crack", "light", &[("from_the_crown", "yes"), ("from_the_crown", second)]);
        let (kind, field, error) = refused(&having(1, &twice));
        assert_eq!(
            (kind, field.as_str()),
            (ErrorKind::Repeated, "/cylinders/1/findings/0/answers/1/question")
        );
        assert_eq!(error.refused(), "from_the_crown");
    }
    for at in ["/engine/piston", "/cylinders/3/piston"] {
        let mut document = six();
        document.pointer_mut(at).expect("a piston")["record"] = json!({"silicon": {"class": "eutectic"}});
        let (kind, field, _) = refused(&document);
        assert_eq!((kind, field), (ErrorKind::MissingField, format!("{at}/record/silicon/evidence")));
        document.pointer_mut(at).expect("a piston")["record"]["silicon"]["evidence"] = json!(" ");
        assert_eq!(refused(&document).1, format!("{at}/record/silicon/evidence"));
    }
}

#[test]
fn a_cause_of_clearance_and_a_clearance_that_conforms_are_both_told() {
    let said =
        "its cause, bore too small, is one of clearance, and yet the bench clearance conforms; both stand";
    let scuffed = having(0, &seen("skirt", "scuffing", "marked", TIGHT));
    let both = report(&scuffed);
    let cylinder = &both.cylinders[0];
    assert_eq!(of_piston(cylinder).cause_found, Some(Cause::BoreTooSmall), "{:?}", of_piston(cylinder));
    let told = |reasons: &[String]| reasons.iter().any(|r| r.contains(said));
    assert_eq!(cylinder.verdict.outcome, Outcome::Reuse);
    assert!(told(&cylinder.verdict.reasons), "{:?}", cylinder.verdict);
    assert!(told(&both.block.verdict.reasons), "{:?}", both.block.verdict);
    assert!(both.to_text().replace("\n      ", " ").contains(said));
    assert!(both.to_markdown().contains(said));
    // named by its word, as written or as read, it is that cause; named otherwise the catalogue does not know it
    for (cause, known) in [("bore_too_small", true), ("bore too small", true), ("too little room", false)] {
        let mut finding = seen("skirt", "scuffing", "marked", &[]);
        finding["cause"] = json!(cause);
        let cylinder = report(&having(0, &finding)).cylinders[0].clone();
        assert_eq!(told(&cylinder.verdict.reasons), known, "{cause}");
        assert_eq!(of_piston(&cylinder).cause_found.is_some(), known);
        assert_eq!(of_piston(&cylinder).cause.as_deref(), Some(cause));
    }
    // where the clearance is too small, cause and size agree: nothing to tell besides
    let mut tight = scuffed.clone();
    tight["engine"]["limits"]["bench_clearance"]["min"] = json!("0.120 mm");
    let cylinder = report(&tight).cylinders[0].clone();
    let bench = cylinder
        .clearance
        .as_ref()
        .expect("a clearance")
        .decisions
        .iter()
        .find(|d| d.of == Of::BenchClearance);
    assert_eq!(bench.map(|d| d.result), Some(Conformity::DoesNotConform));
    assert_eq!(cylinder.verdict.outcome, Outcome::DoNotReuse);
    assert!(!told(&cylinder.verdict.reasons), "{:?}", cylinder.verdict);
}

/// The bore of the fifth cylinder is tapered beyond its limit.
#[test]
fn sizes_that_do_not_conform_and_a_cause_elsewhere_are_both_told() {
    let bent = report(&having(4, &seen("skirt", "diagonal_wear", "light", &[("rod_bent", "yes")])));
    let verdict = &bent.cylinders[4].verdict;
    assert_eq!(verdict.outcome, Outcome::DoNotReuse);
    let said = "light diagonal wear on the skirt: its cause, rod bent or twisted, is one of alignment, and yet these sizes \
                do not conform: bore taper; both stand";
    assert!(verdict.reasons.iter().any(|r| r == said), "{verdict:?}");
    assert!(verdict.reasons[0].starts_with("bore taper does not conform"), "{verdict:?}");
    assert!(bent.block.verdict.reasons.iter().any(|r| r == &format!("cylinder 5: {said}")));
    // in a cylinder whose sizes conform there is nothing to tell
    let fine = report(&having(0, &seen("skirt", "diagonal_wear", "light", &[("rod_bent", "yes")])));
    assert!(!fine.cylinders[0].verdict.reasons.iter().any(|r| r.contains("both stand")));
    // what asks for nothing hides no size, and a good size hides no finding
    let clean = report(&having(4, &seen("crown", "carbon", "light", &[("oily", "no"), ("one_sided", "no")])));
    assert_eq!(of_piston(&clean.cylinders[4]).cause_found, Some(Cause::NormalRunning));
    assert_eq!(clean.cylinders[4].verdict.outcome, Outcome::DoNotReuse);
    assert!(clean.cylinders[4].verdict.reasons[0].starts_with("bore taper does not conform"));
    let cracked = report(&having(0, &seen("pin_boss", "crack", "light", &[])));
    assert_eq!(cracked.cylinders[0].verdict.outcome, Outcome::DoNotReuse);
}

#[test]
fn the_record_changes_what_is_asked() {
    let gone = seen("pin_retention", "retaining_ring_loose", "marked", &[]);
    let asked_with = |record: Value| {
        let mut document = having(0, &gone);
        document["engine"]["piston"]["record"] = record;
        let report = report(&document);
        (asked(of_piston(&report.cylinders[0])), report)
    };
    assert_eq!(asked_with(json!({})).0, [Q::PinInRetainingRings, Q::RingUsedAgain, Q::RodBent]);
    assert_eq!(asked_with(json!({"pin": "retaining_rings"})).0, [Q::RingUsedAgain, Q::RodBent]);
    for held in ["pressed_in_rod", "clamped", "buttons"] {
        let (nothing, report) = asked_with(json!({"pin": held}));
        assert_eq!(nothing, [], "{held}");
        // the catalogue has no such sign for this piston: the cause stays unknown
        assert!(of_piston(&report.cylinders[0]).candidates.is_empty());
        assert!(report.to_text().contains("No known sign agrees with it."));
        assert_eq!(report.cylinders[0].verdict.outcome, Outcome::DoNotReuse);
    }
    // a piston of another make has a record of its own
    let mut document = having(0, &gone);
    document["engine"]["piston"]["record"] = json!({"pin": "pressed_in_rod"});
    document["cylinders"][0]["piston"]["record"] = json!({"pin": "retaining_rings", "make": "forged"});
    let report = report(&document);
    assert_eq!(asked(of_piston(&report.cylinders[0])), [Q::RingUsedAgain, Q::RodBent]);
    let text = report.to_text();
    assert!(text.contains("On record of the pistons: pin: pressed in rod."), "{text}");
    assert!(text.contains("On record of this piston: forged, pin: retaining rings."), "{text}");
}

/// A finding on a part of which nothing was read is a finding.
#[test]
fn what_was_seen_on_a_part_that_was_not_read_stays_in_the_report() {
    let mut document = having(0, &seen("skirt", "diagonal_wear", "marked", &[]));
    document["cylinders"][0].as_object_mut().expect("a cylinder").remove("piston");
    let report = report(&document);
    let cylinder = &report.cylinders[0];
    assert!(cylinder.piston.is_none());
    assert_eq!(causes(&cylinder.findings[0]), [Cause::RodBentOrTwisted, Cause::BoreNotSquare]);
    assert_eq!(cylinder.verdict.outcome, Outcome::FindTheCause);
    assert!(report.to_text().contains("Seen: marked diagonal wear, skirt."));
}

#[test]
fn the_text_names_few_causes_and_one_question() {
    let line = |finding: &Value| {
        let text = report(&having(0, finding)).to_text().replace("\n      ", " ");
        text.lines().find(|l| l.contains("Seen:")).expect("told").trim().to_owned()
    };
    assert_eq!(
        line(&seen("skirt", "diagonal_wear", "light", &[])),
        "Seen: light diagonal wear, skirt. Check next: the rod for bend and twist, then the squareness of the bore. \
         May be: rod bent or twisted or bore not square. Ask: is the rod bent or twisted by its gauge?"
    );
    let long = line(&seen("skirt", "scuffing", "marked", &[]));
    assert!(long.contains(" others. Ask first: ") && long.len() < 400, "{long}");
    // what asks for nothing is not asked about, and what is known neither
    assert!(!line(&seen("crown", "carbon", "light", &[])).contains("Ask"));
    let found = line(&seen("skirt", "diagonal_wear", "light", &[("rod_bent", "no")]));
    assert!(found.ends_with("Cause found: bore not square."), "{found}");
}
