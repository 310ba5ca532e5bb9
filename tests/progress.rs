//! Long work that is watched: what a watcher is told, that a stop is a refusal and nothing else, and that nothing else changes.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use core::cell::Cell;
use core::ops::ControlFlow;
use gaugepoint::budget::Budget;
use gaugepoint::calc::Model;
use gaugepoint::measure::{MeasurementDocument, measure_watched};
use gaugepoint::measurement::distribution::Distribution;
use gaugepoint::measurement::jet::Jet;
use gaugepoint::measurement::monte_carlo::{Coverage, Goal, MonteCarlo};
use gaugepoint::measurement::uncertainty::Inputs;
use gaugepoint::plan::matching::{
    Bore, Case, Conditions, Piston, WantedClearance, match_pistons, match_pistons_watched,
};
use gaugepoint::progress::Watch;
use gaugepoint::stack::{Columnwise, Contributor, Function, Stack, StackDocument, Toward, Variation};
use gaugepoint::what_if::{WhatIfDocument, what_if_watched};
use gaugepoint::{Document, Error, ErrorKind, Options, assess_watched};
use gaugepoint_tests::{
    BUDGETS, EXAMPLES, MEASUREMENTS, STACKS, WHAT_IF, budget, job, measurement, rows, text,
};
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

/// Does a work unwatched, watched, and stopped at a few of the asks; gives what the watcher was told.
fn held<T: PartialEq + core::fmt::Debug>(
    what: &str,
    work: impl Fn(Watch<'_>) -> Result<T, Error>,
) -> Vec<(u64, u64)> {
    let unwatched = work(Watch::default());
    let told = Mutex::new(Vec::new());
    let caller = thread::current().id();
    let go_on = |done: u64, total: u64| {
        assert_eq!(thread::current().id(), caller, "{what}: asked on another thread");
        told.lock().unwrap().push((done, total));
        ControlFlow::Continue(())
    };
    assert_eq!(work(Watch::by(&go_on)), unwatched, "{what}");
    let told = told.into_inner().unwrap();
    assert!(told.is_sorted_by(|a, b| a.0 <= b.0), "{what}: less is done than before");
    assert!(told.iter().all(|(done, total)| done <= total), "{what}: more is done than all");
    if unwatched.is_ok() {
        let (done, total) = *told.last().expect("asked");
        assert_eq!(done, total, "{what}: the last");
        assert_eq!(told[0].0, 0, "{what}: the first");
    }
    let first = |_: u64, _: u64| true;
    let half = |done: u64, total: u64| 2 * done >= total;
    let all = |done: u64, total: u64| done == total;
    for (when, stops) in [("first", &first as &Stops), ("half", &half), ("all", &all)] {
        if told.iter().any(|(done, total)| stops(*done, *total)) {
            stopped(&format!("{what}, {when}"), &work, stops);
        }
    }
    told
}

/// Whether a watcher stops at what it is told.
type Stops = dyn Fn(u64, u64) -> bool + Sync;

/// A stop is refused as one, and nothing is asked after it.
fn stopped<T: core::fmt::Debug>(what: &str, work: impl Fn(Watch<'_>) -> Result<T, Error>, stops: &Stops) {
    let has_stopped = Mutex::new(false);
    let stop = |done: u64, total: u64| {
        let mut has_stopped = has_stopped.lock().unwrap();
        assert!(!*has_stopped, "{what}: asked after the stop");
        *has_stopped = stops(done, total);
        if *has_stopped { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
    };
    let error = work(Watch::by(&stop)).expect_err(what);
    assert_eq!((error.kind(), error.field(), error.refused()), (ErrorKind::Stopped, "", ""), "{what}");
    assert!(error.to_string().starts_with("stopped by the caller when "), "{what}: {error}");
}

fn contributor(name: &str, nominal: f64) -> Contributor {
    let variation = Variation::about(0.0, Distribution::normal(0.03).unwrap()).unwrap();
    Contributor::new(name, nominal, (-0.1, 0.1), variation).unwrap()
}

fn sides() -> Vec<Contributor> {
    vec![contributor("a", 10.0), contributor("b", 20.0)]
}

fn inputs() -> Inputs {
    let mut inputs = Inputs::new();
    inputs.quantity("a", 10.0, Distribution::normal(0.03).unwrap()).unwrap();
    inputs
}

fn goal(most_trials: u64) -> Goal {
    Goal { probability: 0.95, coverage: Coverage::Symmetric, digits: 1, most_trials }
}

/// A unit is a block of 256 trials: no longer may a stop wait.
#[test]
fn trials_are_watched_block_by_block() {
    let stack = Stack::new(sides()).unwrap();
    let told = held("part", |watch| stack.monte_carlo(1).watched(watch).part(100..5000));
    assert_eq!(told[..3], [(0, 4900), (156, 4900), (412, 4900)]);
    assert!(told.windows(2).all(|pair| pair[1].0 - pair[0].0 <= 256));
    let formula = Function::from_text(sides(), &["a", "b"], "a * b").unwrap();
    held("formula", |watch| formula.monte_carlo(1).watched(watch).part(0..5000));
    held("rare", |watch| stack.importance(Toward::Upper, 30.3, 1)?.watched(watch).part(0..5000));
    let rare = |watch: Watch<'_>| formula.importance(Toward::Upper, 210.0, 1)?.watched(watch).part(0..5000);
    held("rare of a formula", rare);
}

/// What takes many trials at once is asked between its calls.
#[test]
fn calls_of_many_trials_are_units() {
    let calls = Cell::new(0);
    let law = Columnwise::new(|sizes: &[&[f64]], values: &mut [f64]| {
        calls.set(calls.get() + 1);
        values.iter_mut().zip(sizes[0].iter().zip(sizes[1])).for_each(|(value, (a, b))| *value = a * b);
        Ok::<(), ()>(())
    });
    let function = Function::new(sides(), law).unwrap();
    let told = held("called", |watch| function.monte_carlo(1).watched(watch).part(0..50_000));
    calls.set(0);
    function.monte_carlo(1).part(0..50_000).unwrap();
    assert_eq!(told.len(), calls.get() + 1);
}

/// On any number of threads: asked on this one alone, and the others stop too.
#[test]
fn tallies_are_watched_on_threads() {
    let model = Model::from_text("a * a", &["a"]).unwrap();
    let inputs = inputs();
    for threads in [1, 2, 5] {
        held(&format!("{threads} threads"), |watch| {
            let run = MonteCarlo::of_model(&inputs, &model, 1).watched(watch);
            run.tally(200_000, 0.95, (99.0, 101.0), threads)
        });
    }
    held("run", |watch| MonteCarlo::of_model(&inputs, &model, 1).watched(watch).run(100_000, 0.95));
}

/// The whole shrinks to what settled, and grows where the first trials were not like the others.
#[test]
fn the_whole_is_what_was_done_in_the_end() {
    let stack = Stack::new(sides()).unwrap();
    let settled = stack.monte_carlo(1).adaptive(goal(5_000_000)).unwrap();
    assert!(settled.settled && settled.summary.trials < 5_000_000);
    let told = held("adaptive", |watch| stack.monte_carlo(1).watched(watch).adaptive(goal(5_000_000)));
    assert_eq!(told[0], (0, 5_000_000));
    assert_eq!(*told.last().unwrap(), (settled.summary.trials, settled.summary.trials));

    // a model that is no function of its inputs: every value after the first look lies between the others
    let inputs = inputs();
    let told = Mutex::new(Vec::new());
    let go_on = |done: u64, total: u64| {
        told.lock().unwrap().push((done, total));
        ControlFlow::Continue(())
    };
    let calls = Cell::new(0_u32);
    let changing = |_: &[Jet]| {
        calls.set(calls.get() + 1);
        Jet::constant(if calls.get() > 4096 { 0.5 } else { f64::from(calls.get() % 2) })
    };
    MonteCarlo::new(&inputs, changing, 1).watched(Watch::by(&go_on)).run(100_000, 0.95).unwrap();
    let told = told.into_inner().unwrap();
    assert_eq!((told[0], *told.last().unwrap()), ((0, 104_096), (204_096, 204_096)));
    assert!(told.is_sorted());
}

/// The rows that every host answers, refusals among them.
#[test]
fn matchings_are_watched() {
    for row in rows("tests/vectors/matching.csv") {
        let (bores, pistons, conditions) = gaugepoint_tests::matchings::parts_of(&row);
        held(&row[0], |watch| match_pistons_watched(&bores, &pistons, &conditions, watch));
    }
}

/// Row by row, whatever is searched.
#[test]
fn large_matchings_are_asked_row_by_row() {
    let wanted = WantedClearance::between(0.03, 0.07);
    let size = |k: usize, spread: usize| 0.001 * ((k * spread) % 97) as f64;
    let bores: Vec<Bore> =
        (0..150).map(|k| Bore::new(86.0 + size(k, 31), 0.001 + 1e-5 * (k % 7) as f64)).collect();
    let pistons: Vec<Piston> = (0..200)
        .map(|k| Piston {
            weight_g: Some(400.0 + 100.0 * size(k, 17)),
            ..Piston::new(85.95 + size(k, 57), 0.001)
        })
        .collect();
    let one = Conditions::wanting(wanted);
    let banded = Conditions { weight_band_g: Some(9.0), ..one.clone() };
    let forbidden = Conditions { forbidden: vec![(3, 4)], ..one.clone() };
    for (what, conditions) in [("one window", &one), ("windows", &banded), ("forbidden", &forbidden)] {
        let case = match_pistons(&bores, &pistons, conditions).unwrap().case;
        assert_eq!(case, Case::PairDependent);
        let told = held(what, |watch| match_pistons_watched(&bores, &pistons, conditions, watch));
        assert!(told.len() > bores.len(), "{what}: {} asks", told.len());
    }
    let alike: Vec<Bore> = bores.iter().map(|b| Bore::new(b.size_mm, 0.001)).collect();
    held("ordered", |watch| match_pistons_watched(&alike, &pistons, &one, watch));
    let told = held("ruled out", |watch| match_pistons_watched(&alike, &pistons, &forbidden, watch));
    assert!(told.len() > 2 * bores.len(), "ruled out: {} asks", told.len());
}

#[test]
fn documents_are_watched() {
    let without = Options::default();
    for name in BUDGETS {
        let budget = Budget::from_json(&budget(name)).unwrap();
        if budget.document().monte_carlo.is_some() {
            held(name, |watch| Ok(budget.evaluate_watched(watch)?.to_json()));
        }
    }
    for name in MEASUREMENTS {
        let document = MeasurementDocument::from_json(&measurement(name)).unwrap();
        held(name, |watch| Ok(measure_watched(&document, without, watch)?.to_json()));
    }
    for (name, path) in STACKS {
        let document = StackDocument::from_json(&text(path)).unwrap();
        if text(path).contains("monte_carlo") {
            held(name, |watch| Ok(document.evaluate_watched(without, watch)?.to_json()));
        }
    }
}

#[test]
fn jobs_are_watched() {
    for name in EXAMPLES {
        let document = Document::from_json(&job(name)).unwrap();
        let told = held(name, |watch| Ok(assess_watched(&document, Options::default(), watch)?.to_json()));
        let cylinders = document.cylinders.len();
        assert!(told.len() > 2 * cylinders, "{name}: {} asks for {cylinders} cylinders", told.len());
    }
}

/// A hot fit is asked between its parts, of which none is counted; a stop there is a stop as any other.
#[test]
fn hot_fits_are_stopped_within() {
    let document = Document::from_json(&job("sawmill_twin")).unwrap();
    let work = |watch: Watch<'_>| assess_watched(&document, Options::default(), watch);
    let asks = Mutex::new(Vec::new());
    let go_on = |done: u64, _: u64| {
        asks.lock().unwrap().push(done);
        ControlFlow::Continue(())
    };
    work(Watch::by(&go_on)).unwrap();
    let asks = asks.into_inner().unwrap();
    // two surfaces, the original piston, three scenarios; before the first of them the fit itself
    let most = asks.iter().map(|done| asks.iter().filter(|other| *other == done).count()).max().unwrap();
    assert!(most > 6, "{asks:?}");
    let within: Vec<usize> = (1..asks.len()).filter(|k| asks[*k] == asks[*k - 1]).collect();
    for last in within {
        let asked = AtomicUsize::new(0);
        let stops = move |_, _| asked.fetch_add(1, Ordering::Relaxed) == last;
        stopped(&format!("ask {last}"), work, &stops);
    }
}

/// A stop within a combination is no row of the report.
#[test]
fn combinations_are_watched() {
    let document = WhatIfDocument::from_json(&text(WHAT_IF)).unwrap();
    let told = held("what if", |watch| Ok(what_if_watched(&document, watch)?.to_json()));
    // by hand: 2 times 4 times 2 combinations, and the job as it is
    assert_eq!(*told.last().unwrap(), (17, 17));
    for at in 0..17 {
        stopped(&format!("{at} of 17"), |watch| what_if_watched(&document, watch), &move |done, _| {
            done >= at
        });
    }
}

/// What is refused is refused before anything is asked, and says so as ever.
#[test]
fn refusals_come_first() {
    let stack = Stack::new(sides()).unwrap();
    let never = |_: u64, _: u64| -> ControlFlow<()> { panic!("asked") };
    let run = stack.monte_carlo(1).watched(Watch::by(&never));
    assert_eq!(run.part(5..5).unwrap_err().kind(), ErrorKind::OutOfRange);
    assert_eq!(run.adaptive(goal(3)).unwrap_err().kind(), ErrorKind::OutOfRange);
    let none = match_pistons_watched(&[], &[], &Conditions::default(), Watch::by(&never));
    assert_eq!(none.unwrap_err().kind(), ErrorKind::OutOfRange);
}
