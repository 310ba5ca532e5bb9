//! The working of both examples: every step re-evaluates to the bit, every formula is held by a number from outside, and
//! an input moves exactly the results that the working says it moves.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::calc::Working;
use gaugepoint::{Document, ErrorKind, Options, Report, assess};
use gaugepoint_tests::expression::Expression;
use gaugepoint_tests::replay::Replay;
use gaugepoint_tests::{HOT_JOBS, JOBS, answers, job, numbers, text, words};
use serde_json::Value;
use std::collections::{BTreeMap, HashMap, HashSet};

fn worked(job: &str) -> Result<(Report, Value), gaugepoint::Error> {
    let report = assess(&Document::from_json(job)?, Options { working: true })?;
    let value = serde_json::from_str(&report.to_json()).expect("a report is JSON");
    Ok((report, value))
}

fn working(report: &Report) -> &Working {
    report.working.as_ref().expect("the working was asked for")
}

/// Numbers from the independent evaluation in `reference/`.
fn reference(name: &str) -> Value {
    serde_json::from_str(&text(&format!("tests/vectors/reports/{name}.json"))).expect("JSON")
}

#[test]
fn every_step_gives_its_number_to_the_bit() {
    for name in JOBS {
        let (report, value) = worked(&job(name)).expect("accepted");
        let working = working(&report);
        let replay = Replay::new(working);
        let inputs = |k: usize| working.inputs[k].value;
        for (step, value) in working.steps.iter().zip(replay.values(inputs, |_| None)) {
            // minus zero is written as zero
            assert_eq!(step.value.to_bits(), (value + 0.0).to_bits(), "{name} {} {}", step.id, step.formula);
        }
        // and the numbers stand in the report where the working says they stand
        for (pointer, number) in replay.results(&replay.values(inputs, |_| None)) {
            let there = value.pointer(pointer).and_then(Value::as_f64);
            assert_eq!(there.map(f64::to_bits), Some((number + 0.0).to_bits()), "{name} {pointer}");
        }
    }
}

#[test]
fn every_number_of_a_report_has_its_working() {
    // numbers that were read and not computed, and the words' own numbers
    let given = [
        "_c",
        "_deg",
        "depth_mm",
        "height_mm",
        "lower_mm",
        "upper_mm",
        "version",
        "number",
        "at_least",
        "_guard",
    ];
    for name in JOBS {
        let (report, mut value) = worked(&job(name)).expect("accepted");
        let places: HashSet<&str> =
            working(&report).steps.iter().flat_map(|s| s.results.iter().map(String::as_str)).collect();
        value.as_object_mut().map(|o| o.remove("working"));
        let numbers = numbers(&value);
        assert!(numbers.len() > 500, "{name}: {}", numbers.len());
        for (pointer, number) in numbers {
            let last = pointer.rsplit('/').next().unwrap_or_default();
            let counted = ["/block/counts/", "/for_cylinders/"].iter().any(|c| pointer.contains(c))
                || pointer.ends_with("dominant/share");
            // with infinite degrees of freedom it is the constant itself
            let constant = last == "coverage_factor" && number.to_bits() == 2.0_f64.to_bits();
            if counted
                || constant
                || given.iter().any(|g| last.ends_with(g))
                || is_searched(&pointer)
                || has_no_steps(&pointer)
                || is_chosen(&pointer)
                || places.contains(pointer.as_str())
            {
                continue;
            }
            // the share of a source in nothing: a value without uncertainty
            assert!(number.abs() <= 0.0, "{name} {pointer} = {number} has no working");
        }
    }
}

/// A number of a hot fit that is searched or drawn: it has no formula of its own. The clearances there are evaluated again with their working.
fn is_searched(pointer: &str) -> bool {
    let measured =
        ["value_mm", "uncertainty_mm", "uncertainty_k", "contribution_mm", "contribution_k", "/share"];
    pointer.contains("/hot/") && !measured.iter().any(|m| pointer.ends_with(m))
}

/// A number of a plan that was read, counted, or comes out of a choice among many: the independent evaluation holds those, it tries all of them.
fn is_chosen(pointer: &str) -> bool {
    let read = [
        "oversize_mm",
        "more_mass_g",
        "/wanted/min_mm",
        "/wanted/max_mm",
        "/wanted/target_mm",
        "tolerance_mm",
        "/gasket/thickness_mm",
        "/value",
    ];
    // the work order repeats numbers of the plan: tests/planned.rs holds it to them
    if pointer.starts_with("/work_order/") {
        return true;
    }
    let counted = ["/cylinder", "/chosen", "/decided_by"];
    let chosen = [
        "worst_probability",
        "worst_probability_as_listed",
        "worst_probability_by_grade",
        "sum_of_squares_mm2",
        "sum_of_squares_as_listed_mm2",
        "mass_spread_g",
        "largest_step_mm",
        "probability_below",
        "probability_above",
        "off_g",
        "left_g",
        "over_g",
    ];
    let lists = ["/oversizes/order/", "/shims_mm/"];
    let ends = read.iter().chain(&counted).chain(&chosen).any(|end| pointer.ends_with(end));
    let mass = pointer.starts_with("/plan/pistons/") && pointer.ends_with("/mass_g");
    // a gap that was read in its own bore stands as it was read
    let gap =
        ["/rings/", "/gaps/"].iter().any(|list| pointer.contains(list)) && pointer.ends_with("/value_mm");
    pointer.starts_with("/plan/") && (ends || mass || gap || lists.iter().any(|list| pointer.contains(list)))
}

/// A number of a stack that is an integral, a derivative, a moment of second order or a bound by intervals, or a limit that was read.
fn has_no_steps(pointer: &str) -> bool {
    let of_function =
        ["mean", "standard_deviation", "worst_case/lower", "worst_case/upper", "lower_bound", "upper_bound"];
    let function =
        pointer.strip_prefix("/stacks/1/").is_some_and(|of| of_function.iter().any(|end| of.ends_with(end)));
    let never = [
        "/exact/below",
        "/exact/above",
        "/ppm",
        "/relative_error",
        "/sensitivity",
        "/together",
        "/shift_of_mean",
        "/skewness",
        "/excess_kurtosis",
        "/limits/lower",
        "/limits/upper",
    ];
    pointer.starts_with("/stacks/") && (function || never.iter().any(|end| pointer.ends_with(end)))
}

#[test]
fn sources_are_named() {
    for name in JOBS {
        let (report, _) = worked(&job(name)).expect("accepted");
        let working = working(&report);
        assert!(working.steps.iter().all(|s| !s.source.is_empty() && !s.of.is_empty()));
        assert!(working.constants.iter().all(|k| !k.source.is_empty()));
        assert!(working.inputs.iter().all(|i| i.path.starts_with('/') && !i.typed.is_empty()));
    }
}

/// A seeded mutation of each formula moves a number that the independent evaluation holds.
#[test]
fn every_mutated_formula_is_caught() {
    let mut formulas: BTreeMap<String, bool> = BTreeMap::new();
    for name in JOBS {
        let (report, _) = worked(&job(name)).expect("accepted");
        let expected = Expected::new(&reference(name));
        let replay = Replay::new(working(&report));
        let mut by_text: BTreeMap<String, Vec<usize>> = BTreeMap::new();
        for (k, step) in replay.working.steps.iter().enumerate() {
            by_text.entry(format!("{} = {}", step.symbol, step.formula)).or_default().push(k);
        }
        for (formula, steps) in by_text {
            let mutations = replay.formulas[steps[0]].mutations();
            for (m, mutation) in mutations.iter().enumerate() {
                let here = |k: usize| steps.contains(&k).then_some(mutation);
                let values = replay.values(|k| replay.working.inputs[k].value, here);
                let known = formulas.entry(mutant(&formula, m, mutations.len())).or_default();
                *known = *known || expected.refutes(&replay.results(&values));
            }
        }
    }
    // where a root was found its step of Newton's method is nothing, whichever sign it has: what is uncertain of it has a formula of its own
    let nothing = |formula: &str| {
        let step = "t = t_found - (clearance - touching) / per_kelvin";
        formula.strip_prefix(step).is_some_and(|m| ["  #0", "  #1"].contains(&m))
    };
    // the crevice is left out, whichever sign it has
    let nothing =
        |formula: &str| nothing(formula) || formula == "v = head + gasket + deck + crown + crevice  #0";
    let survived = |(formula, caught): &(&String, &bool)| !**caught && !nothing(formula);
    let survivors: Vec<&String> = formulas.iter().filter(survived).map(|(f, _)| f).collect();
    assert!(formulas.len() > 150, "{}", formulas.len());
    assert!(survivors.is_empty(), "{} of {} survive:\n{survivors:#?}", survivors.len(), formulas.len());
}

/// Names a mutation. A sum or a choice over a varying number of terms is one formula, whatever its length.
fn mutant(formula: &str, m: usize, of: usize) -> String {
    let varying = ["(x1", "(c1", "(q1", "(h1", "max(x", "min(x"].iter().any(|start| formula.contains(start))
        || ["c = ", "h = "].iter().any(|start| formula.starts_with(start));
    let symbol = formula.split(' ').next().unwrap_or_default();
    match varying {
        true => format!("{symbol} of several, last but {}", (of - m).min(3)),
        false => format!("{formula}  #{m}"),
    }
}

/// Numbers of the independent evaluation, with its budgets sorted: the order of the sources is not part of it.
struct Expected {
    plain: HashMap<String, f64>,
    sorted: HashMap<String, Vec<f64>>,
}

impl Expected {
    fn new(report: &Value) -> Self {
        let all = numbers(report);
        let all = all.iter().map(|(at, v)| (at.as_str(), *v));
        let (plain, sorted) = split(all);
        Expected { plain: plain.into_iter().map(|(at, v)| (at.to_owned(), v)).collect(), sorted }
    }

    /// Does any of these numbers differ from the independent one by more than both errors of arithmetic?
    fn refutes(&self, results: &HashMap<&str, f64>) -> bool {
        let (plain, sorted) = split(results.iter().map(|(at, v)| (*at, *v)));
        let far = |at: &str, a: f64, b: f64| a.is_nan() || (a - b).abs() > agreement(at);
        let value = plain.iter().any(|(at, v)| self.plain.get(*at).is_some_and(|e| far(at, *v, *e)));
        let differ = |at: &str, a: &[f64], b: &[f64]| {
            a.len() != b.len() || a.iter().zip(b).any(|(a, b)| far(at, *a, *b))
        };
        value || sorted.iter().any(|(at, v)| self.sorted.get(at).is_some_and(|e| differ(at, v, e)))
    }
}

/// Degrees of freedom by their reciprocal, which is what enters: those of a source that hardly counts are large and known to few digits.
fn entering(at: &str, value: f64) -> f64 {
    if at.ends_with("/dof") { 1.0 / value } else { value }
}

/// Numbers as they stand, and the sorted numbers of every budget. Sources that cancel to nothing are left out.
fn split<'a>(
    numbers: impl Iterator<Item = (&'a str, f64)>,
) -> (HashMap<&'a str, f64>, HashMap<String, Vec<f64>>) {
    let (mut plain, mut sorted) = (HashMap::<&str, f64>::new(), HashMap::<String, Vec<f64>>::new());
    for (at, value) in numbers {
        match at.split_once("/budget/") {
            Some((of, line)) if value.abs() > 1e-14 => {
                let column = line.rsplit('/').next().unwrap_or_default();
                sorted.entry(format!("{of} {column}")).or_default().push(value);
            }
            Some(_) => {}
            None => plain.extend([(at, entering(at, value))]),
        }
    }
    sorted.values_mut().for_each(|v| v.sort_by(f64::total_cmp));
    (plain, sorted)
}

/// How near both evaluations are: to the errors of arithmetic, or in a hot fit to those of two searches. A smallest clearance is certain to a
/// millionth of a micrometre; its place, where it is flat, to the root of that, and what is uncertain of it depends on the place.
fn agreement(at: &str) -> f64 {
    match at {
        _ if !at.contains("/hot/") => 1e-10,
        _ if at.ends_with("value_mm") || at.ends_with("smallest_mm") => 2e-9,
        _ if at.ends_with("_mm") => 1e-7,
        _ if at.ends_with("share") => 1e-5,
        _ => 1e-4,
    }
}

/// The unmutated report agrees with the independent evaluation in every number.
#[test]
fn reports_agree_with_the_independent_evaluation() {
    for name in JOBS {
        let (report, value) = worked(&job(name)).expect("accepted");
        let expected = reference(name);
        let replay = Replay::new(working(&report));
        let results = replay.results(&replay.values(|k| replay.working.inputs[k].value, |_| None));
        assert!(!Expected::new(&expected).refutes(&results), "{name}");
        let mut compared = 0;
        for (at, number) in numbers(&expected).iter().filter(|(at, _)| !at.contains("/budget/")) {
            let ours = value
                .pointer(at)
                .and_then(Value::as_f64)
                .unwrap_or_else(|| panic!("{name}: {at} is missing"));
            let error = (entering(at, ours) - entering(at, *number)).abs();
            let most = if at.contains("/hot/") { agreement(at) } else { 1e-11 };
            assert!(error <= most, "{name} {at}: {ours} against {number}");
            compared += 1;
        }
        assert!(compared > 100, "{name}: {compared}");
    }
}

/// The words that decide agree too, and of a plan all words, every yes or no and the length of every list of choices.
#[test]
fn decisions_agree_with_the_independent_evaluation() {
    for name in JOBS {
        let (_, value) = worked(&job(name)).expect("accepted");
        let mut decisions = 0;
        let decides = |at: &str| at.ends_with("/result") || at.ends_with("/of");
        let in_plan =
            |at: &str| at.starts_with("/plan/") && !at.contains("/budget/") && !at.contains("/dominant/");
        let expected = reference(name);
        for (at, word) in words(&expected).iter().filter(|(at, _)| decides(at) || in_plan(at)) {
            assert_eq!(value.pointer(at).and_then(Value::as_str), Some(*word), "{name} {at}");
            decisions += 1;
        }
        for (at, answer) in answers(&expected) {
            assert_eq!(value.pointer(&at).and_then(Value::as_bool), Some(answer), "{name} {at}");
        }
        for list in [
            "/plan/oversizes/choices",
            "/plan/targets",
            "/plan/matching/pairs",
            "/plan/finish/matching/pairs",
        ] {
            let length = |of: &Value| of.pointer(list).and_then(Value::as_array).map(Vec::len);
            assert_eq!(length(&value), length(&expected), "{name} {list}");
        }
        assert!(decisions > 5, "{name}: {decisions}");
    }
}

/// What may be behind the findings, too, with nothing beside it.
#[test]
fn findings_agree_with_the_independent_evaluation() {
    let (mut found, mut settled) = (0, 0);
    for name in JOBS {
        let (_, value) = worked(&job(name)).expect("accepted");
        for (k, expected) in reference(name)["cylinders"].as_array().expect("cylinders").iter().enumerate() {
            for part in ["", "/piston", "/bore"] {
                let at = format!("{part}/findings");
                let ours = value["cylinders"][k].pointer(&at).and_then(Value::as_array).into_iter().flatten();
                let theirs = expected.pointer(&at).and_then(Value::as_array).into_iter().flatten();
                let ours: Vec<Value> = ours.map(|f| of_both(f.clone())).collect();
                let theirs: Vec<Value> = theirs.cloned().collect();
                assert_eq!(ours, theirs, "{name} {k}{at}");
                found += ours.len();
                settled += ours.iter().filter(|f| f.get("cause_found").is_some()).count();
            }
        }
    }
    assert!(found > 20 && settled > 3, "{found} {settled}");
}

/// The fields of a finding that the independent evaluation has.
fn of_both(mut finding: Value) -> Value {
    let keep = |value: &mut Value, names: &[&str]| {
        value.as_object_mut().expect("an object").retain(|name, _| names.contains(&name.as_str()));
    };
    keep(&mut finding, &["place", "what", "cause_found", "disposition", "candidates", "ask"]);
    for (list, names) in
        [("candidates", &["cause", "group", "sign", "confirmed"][..]), ("ask", &["question"])]
    {
        finding[list].as_array_mut().expect("a list").iter_mut().for_each(|item| keep(item, names));
    }
    finding
}

/// One input moved by a small share of itself, or to the other sign (a share of -2), in the unit it was typed in.
fn moved(typed: &str, share: f64) -> String {
    if let Some((head, _)) = typed.split_once(" thou ") {
        return if share < -1.0 { format!("-{typed}") } else { format!("{head} thou 1 tenth") };
    }
    let end = typed.find(|c: char| !(c.is_ascii_digit() || "+-.e".contains(c))).unwrap_or(typed.len());
    let (number, unit) = typed.split_at(end);
    let value: f64 = number.parse().unwrap_or_else(|e| panic!("{typed}: {e}"));
    let new = value + if value == 0.0 && share > -1.0 { 0.001 } else { value * share };
    // coefficients have an exponent, lengths have none
    let exponent = number.contains('e') || (unit.is_empty() && new.abs() < 1.0);
    if exponent { format!("{new:.8e}{unit}") } else { format!("{new:.9}{unit}") }
}

const STEP: f64 = 1e-4;
const SIGN: f64 = -2.0;

#[test]
fn an_input_moves_exactly_what_the_working_says() {
    // the place of a smallest clearance moves, too, and a working is of one place: hot fits are moved in the tests of Python
    for name in JOBS.iter().filter(|name| !HOT_JOBS.contains(name)) {
        let document: Value = serde_json::from_str(&job(name)).expect("JSON");
        let (report, before) = worked(&job(name)).expect("accepted");
        let replay = Replay::new(working(&report));
        let mut moves = 0;
        // a plan is made of sizes at 20 C: the clearance that it takes from the limits has no other temperature
        let at_20 = document.pointer("/plan").is_some_and(|plan| plan.get("wanted_clearance").is_none());
        let fixed = |path: &str| at_20 && path == "/engine/limits/bench_clearance/reference_temperature";
        // a number of pieces has no small change
        let movable = replay.working.inputs.iter().enumerate();
        let movable = movable.filter(|(_, input)| input.symbol != "count" && !fixed(&input.path));
        for (k, input) in movable {
            // the first row of a table and a reading at its limit can move one way only
            let ways = [STEP, -STEP].map(|share| moved(&input.typed, share));
            let Some((typed, (after_report, after))) = ways
                .into_iter()
                .find_map(|typed| Some((typed.clone(), worked(&with(&document, &input.path, &typed)).ok()?)))
            else {
                panic!("{name}: {} = {} cannot move", input.path, input.typed);
            };
            let value =
                |inputs: &Working| inputs.inputs.iter().find(|i| i.path == input.path).map(|i| i.value);
            let new = value(working(&after_report)).expect("still an input");
            let values = replay.values(
                |i| {
                    if i == k { new } else { replay.working.inputs[i].value }
                },
                |_| None,
            );
            let predicted = replay.results(&values);
            moves += compare(
                &format!("{name} {} {} -> {typed}", input.path, input.typed),
                &before,
                &after,
                &predicted,
            );
        }
        assert!(moves > 300, "{name}: {moves}");
    }
}

/// The report after the step against what the replay predicts; how many numbers moved.
fn compare(of: &str, before: &Value, after: &Value, predicted: &HashMap<&str, f64>) -> usize {
    let mut moves = 0;
    for (pointer, number) in predicted {
        // a step can part two equal indications, which then no longer share the error of their scale: the working before
        // the step cannot know that, so the values are held here and the uncertainties by the independent evaluation
        if !pointer.ends_with("value_mm") || is_paired_anew(pointer, before, after) {
            continue;
        }
        let Some(now) = after.pointer(pointer).and_then(Value::as_f64) else {
            panic!("{of}: {pointer} is gone");
        };
        assert_eq!(now.to_bits(), (number + 0.0).to_bits(), "{of}: {pointer} {now} predicted {number}");
        let was = before.pointer(pointer).and_then(Value::as_f64);
        moves += usize::from(was.map(f64::to_bits) != Some(now.to_bits()));
    }
    moves
}

/// Does a number stand in a pair of a matching that has another piston now? The working before the step is of the one before.
fn is_paired_anew(pointer: &str, before: &Value, after: &Value) -> bool {
    let Some((matching, within)) = pointer.split_once("/pairs/") else { return false };
    let place = within.split('/').next().unwrap_or_default();
    let piston = format!("{matching}/pairs/{place}/piston");
    before.pointer(&piston) != after.pointer(&piston)
}

#[test]
fn a_changed_sign_is_refused_or_moves_the_results() {
    for name in JOBS.iter().filter(|name| !HOT_JOBS.contains(name)) {
        let document: Value = serde_json::from_str(&job(name)).expect("JSON");
        let (report, before) = worked(&job(name)).expect("accepted");
        let (mut refused, mut accepted) = (0, 0);
        for input in &working(&report).inputs {
            let typed = moved(&input.typed, SIGN);
            if typed.trim_start_matches('-') == typed && input.value == 0.0 {
                continue; // minus nothing is nothing
            }
            match worked(&with(&document, &input.path, &typed)) {
                Err(error) => {
                    refused += 1;
                    assert!(error.field().starts_with('/'), "{}: {error}", input.path);
                    let kinds = [
                        ErrorKind::OutOfRange,
                        ErrorKind::Contradiction,
                        ErrorKind::OutOfOrder,
                        ErrorKind::OutsideLaw,
                    ];
                    assert!(kinds.contains(&error.kind()), "{} {typed}: {error}", input.path);
                }
                Ok((_, after)) => {
                    accepted += 1;
                    // only these, and a temperature, can have either sign
                    let two_signs = [
                        "/repeats/",
                        "bench_clearance",
                        "kelvin_coefficients",
                        "_guard",
                        "/recheck/reading",
                        "/deviation",
                        "/stacks/",
                        "wanted_clearance",
                        "/chamber/deck_clearance",
                        "/chamber/crown",
                        "/plan/gasket/",
                        "/liners/protrusion/",
                    ];
                    assert!(
                        two_signs.iter().any(|t| input.path.contains(t)) || input.unit == "C",
                        "{} {typed} was accepted",
                        input.path
                    );
                    assert_ne!(before, after, "{} {typed} moves nothing", input.path);
                }
            }
        }
        assert!(refused > 50 && accepted > 2, "{name}: {refused} refused, {accepted} accepted");
    }
}

/// The job with one field replaced.
fn with(job: &Value, pointer: &str, text: &str) -> String {
    let mut job = job.clone();
    *job.pointer_mut(pointer).unwrap_or_else(|| panic!("{pointer}")) = Value::String(text.to_owned());
    job.to_string()
}

#[test]
fn the_checker_itself_is_right() {
    let values: HashMap<&str, f64> = [("a", 3.0), ("b", -2.0)].into();
    // by hand
    for (text, expected) in [
        ("a - b - 1", 4.0),
        ("a - (b - 1)", 6.0),
        ("a / b / 2", -0.75),
        ("-a * b", 6.0),
        ("2 * -(a + b)", -2.0),
        ("max(a, b) + min(a, b) * abs(b)", -1.0),
        ("sqrt(a * a / 9)", 1.0),
        ("erfc(0) / 2", 0.5),
        // T of one degree of freedom is 1/2 + atan(t) / pi
        ("t_below(1, 1) * 4", 3.0),
        // in plain additions 1 is lost
        ("sum(1, 10000000000000000, -10000000000000000)", 1.0),
        ("root_sum_square(a, 4)", 5.0),
        ("-a^2 + (b)^-1", -9.5),
        ("cos(0) + acos(1) + 9^0.5", 4.0),
    ] {
        assert_eq!(Expression::parse(text).and_then(|e| e.evaluate(&values)), Ok(expected), "{text}");
    }
    for wrong in ["a +", "(a", "a b", "sinh(a)", "", "1e-3", "a^b"] {
        assert!(Expression::parse(wrong).and_then(|e| e.evaluate(&values)).is_err(), "{wrong}");
    }
}
