//! Functions of contributors and trials of stacks against `function.csv`, and functions that are computed many trials at once.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]
#![allow(clippy::float_cmp, reason = "equality of bits is meant")]

use gaugepoint::ErrorKind;
use gaugepoint::measurement::monte_carlo::{Part, trials_from};
use gaugepoint::measurement::points::Points;
use gaugepoint::stack::{Columnwise, Contributor, Function, Law, Toward};
use gaugepoint_tests::functions::{Results, contributors, function_row, has_bits};
use gaugepoint_tests::rows;
use std::cell::{Cell, RefCell};
use std::fmt::Write as _;

/// What is wrong with results against the cell `expected`.
fn wrong(results: &Results, expected: &str) -> Option<String> {
    let held = |cell: &str| {
        let (name, value) = cell.split_once('=').unwrap();
        let ours = results.iter().find(|(n, _)| n == name).unwrap_or_else(|| panic!("{name}")).1;
        let Some((value, tolerance)) = value.split_once('~') else { return ours.is_none() };
        let (value, tolerance): (f64, f64) = (value.parse().unwrap(), tolerance.parse().unwrap());
        ours.is_some_and(|ours| (ours - value).abs() <= tolerance)
    };
    expected.split(';').find(|cell| !held(cell)).map(|cell| format!("{cell}: {results:?}"))
}

#[test]
fn vectors_hold() {
    let (mut misses, mut written) = (Vec::new(), String::new());
    let table = rows("tests/vectors/function.csv");
    for row in &table {
        let made = function_row(row);
        match (row[5].strip_prefix("error:"), made) {
            (Some(expected), Err(e)) if expected == format!("{} {}", e.kind().name(), e.field()) => {}
            (None, Ok(results)) => {
                misses.extend(wrong(&results, &row[5]).map(|what| format!("{}: {what}", row[0])));
                for (name, value) in results.iter().filter(|_| has_bits(row)) {
                    let value = value.map_or("none".to_owned(), |v| format!("{v:?}"));
                    writeln!(written, "{} {name} {value}", row[0]).unwrap();
                }
            }
            (_, made) => misses.push(format!("{}: {made:?}", row[0])),
        }
    }
    assert!(
        misses.is_empty() && table.len() > 50,
        "{} of {}:\n{}",
        misses.len(),
        table.len(),
        misses.join("\n")
    );
    // for the hosts that compare bits
    if let Some(file) = std::env::var_os("GAUGEPOINT_FUNCTION_ROWS") {
        std::fs::write(file, written).unwrap();
    }
}

const PLATES: &str =
    "a 2 -0.1 0.1 normal 0 0.03;b 3 -0.05 0.2 beta 2 5 -0.1 0.2;c 10 -0.3 0.3 sample -0.1 0 0.25";

fn plates() -> Vec<Contributor> {
    contributors(PLATES)
}

fn ratio(x: &[f64]) -> f64 {
    (x[0] + x[1]) / (x[2] - x[1])
}

#[expect(clippy::unnecessary_wraps, reason = "what a function of columns is")]
fn ratios(sizes: &[&[f64]], values: &mut [f64]) -> Result<(), i32> {
    for (i, value) in values.iter_mut().enumerate() {
        *value = ratio(&[sizes[0][i], sizes[1][i], sizes[2][i]]);
    }
    Ok(())
}

/// The same trials as of a closure that is called with one, however the run is cut; derivatives and worst case to the bit.
#[test]
fn columns_have_the_bits_of_single_trials() {
    let one = Function::new(plates(), ratio).unwrap();
    let many = Function::new(plates(), Columnwise::new(ratios)).unwrap();
    for points in [Points::Random, Points::LatinHypercube { trials: 40_000 }, Points::Sobol] {
        let run = one.monte_carlo(8).with_points(points).unwrap();
        let columns = many.monte_carlo(8).with_points(points).unwrap();
        let whole = run.part(0..40_000).unwrap();
        assert!(whole == columns.part(0..40_000).unwrap(), "{points:?}");
        let cuts = [0, 1, 300, 1023, 16_384, 16_385, 33_000, 40_000];
        let mut parts: Vec<Part> = cuts.windows(2).map(|w| columns.part(w[0]..w[1]).unwrap()).collect();
        parts.rotate_left(3);
        assert!(whole == Part::merged(parts).unwrap(), "{points:?}");
    }
    let rare = (Toward::Upper, 0.76, 5);
    let (a, b) =
        (one.importance(rare.0, rare.1, rare.2).unwrap(), many.importance(rare.0, rare.1, rare.2).unwrap());
    assert!(a.part(100..30_000).unwrap() == b.part(100..30_000).unwrap());
    assert_eq!(one.propagation().unwrap(), many.propagation().unwrap());
    assert_eq!(one.worst_case().unwrap(), many.worst_case().unwrap());
    assert_eq!((one.nominal().unwrap(), many.law().failure()), (many.nominal().unwrap(), None));
}

/// It fails at a call, and is not called again, whatever is computed.
#[test]
fn a_failure_ends_everything() {
    type Ask<L> = (&'static str, fn(&Function<L>) -> bool);
    fn held<L: Law>(
        function: &Function<L>,
        calls: &Cell<u32>,
        failing: u32,
        failure: impl Fn() -> Option<u32>,
    ) {
        let asks: [Ask<L>; 5] = [
            ("nominal", |f| f.nominal().is_ok()),
            ("propagation", |f| f.propagation().is_ok()),
            ("worst case", |f| f.worst_case().is_ok()),
            ("trials", |f| f.monte_carlo(1).part(0..100_000).is_ok()),
            ("importance", |f| f.importance(Toward::Upper, 0.76, 1).and_then(|r| r.part(0..100_000)).is_ok()),
        ];
        for (name, ask) in asks {
            calls.set(0);
            let done = ask(function);
            if calls.get() < failing {
                assert!(done && failure().is_none(), "{name}");
            } else {
                assert!(
                    !done && failure() == Some(failing) && calls.get() == failing,
                    "{name} {failing}: {calls:?}"
                );
            }
        }
    }
    for failing in [1, 2, 5, 60] {
        let calls = Cell::new(0);
        let law = Columnwise::new(|sizes: &[&[f64]], values: &mut [f64]| {
            calls.set(calls.get() + 1);
            let made = ratios(sizes, values);
            if calls.get() >= failing { Err(calls.get()) } else { made.map_err(|_| 0) }
        });
        let function = Function::new(plates(), law).unwrap();
        held(&function, &calls, failing, || function.law().failure());
    }
}

/// What is not written is refused, and the places that are handed over are those of the trials.
#[test]
fn columns_are_checked() {
    let seen = RefCell::new(Vec::new());
    let lazy = Columnwise::new(|sizes: &[&[f64]], values: &mut [f64]| {
        seen.borrow_mut().push((sizes.len(), sizes[0].len(), values.len()));
        let written = values.len() - 1;
        values[..written].fill(1.0);
        Ok::<(), i32>(())
    });
    let function = Function::new(plates(), lazy).unwrap();
    let error = function.monte_carlo(1).part(16_000..16_500).unwrap_err();
    assert_eq!((error.kind(), error.field()), (ErrorKind::NotFinite, "model"));
    assert!(error.reason().contains("16499"), "{error}");
    assert!(seen.borrow().iter().all(|(contributors, sizes, values)| *contributors == 3 && sizes == values));
}

#[test]
fn parts_of_values_are_refused_or_the_same() {
    let kind = |first, values: &[f64]| {
        let error = Part::of_values(1, Points::Random, first, values.to_vec()).unwrap_err();
        (error.kind(), error.field().to_owned())
    };
    assert_eq!(kind(0, &[]), (ErrorKind::MissingField, "values".to_owned()));
    for wrong in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1.1e100] {
        assert_eq!(kind(0, &[1.0, wrong]), (ErrorKind::NotFinite, "values/1".to_owned()));
    }
    assert_eq!(kind(u64::MAX, &[1.0]), (ErrorKind::OutOfRange, "first".to_owned()));
    assert_eq!(trials_from(7, 3).unwrap(), 7..10);
    let function = Function::new(plates(), ratio).unwrap();
    let made = function.monte_carlo(4).part(3..900).unwrap();
    assert_eq!(made, Part::of_values(4, Points::Random, 3, made.values().to_vec()).unwrap());
}
