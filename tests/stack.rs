//! Exact distributions of linear stacks against rational numbers and mpmath, the published forms, refusals and properties.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::measurement::distribution::Distribution;
use gaugepoint::stack::{Contributor, Stack, Toward, Variation};
use gaugepoint::{Error, ErrorKind};
use gaugepoint_tests::rows;
use proptest::prelude::*;

fn close(ours: f64, expected: f64, relative: f64, what: &str) {
    assert!((ours - expected).abs() <= relative * expected.abs(), "{what}: {ours:e} against {expected:e}");
}

/// A variation from its words, as `tests/reference/stack.py` has them.
fn variation(words: &str) -> Result<Variation, Error> {
    let mut words = words.split_whitespace();
    let kind = words.next().unwrap();
    let n: Vec<f64> = words.map(|w| w.parse().unwrap()).collect();
    match kind {
        "normal" => Variation::about(0.0, Distribution::normal(n[0])?),
        "rectangular" => Variation::about(0.0, Distribution::rectangular(n[0])?),
        "triangular" => Variation::triangular((n[0], n[2]), n[1]),
        "trapezoidal" => Variation::about(0.0, Distribution::trapezoidal(n[0], n[1])?),
        "arcsine" => Variation::about(0.0, Distribution::arcsine(n[0])?),
        "beta" => Variation::beta(n[0], n[1], (n[2], n[3])),
        "truncated" => Variation::truncated_normal(n[0], n[1], (n[2], n[3])),
        "skewed" => Variation::skewed(&n.chunks(2).map(|c| (c[0], c[1])).collect::<Vec<_>>()),
        "sample" => Variation::sample(&n),
        _ => panic!("{kind}"),
    }
}

/// A stack of the terms of a row, each about zero.
fn stack(terms: &str) -> Stack {
    let contributor = |(k, words): (usize, &str)| {
        Contributor::new(&format!("x{k}"), 0.0, (0.0, 0.0), variation(words).unwrap()).unwrap()
    };
    Stack::new(terms.split(';').enumerate().map(contributor).collect()).unwrap()
}

fn value_and_error(stack: &Stack, function: &str, x: f64) -> Result<(f64, f64), Error> {
    match function {
        "above" => stack.outside(f64::NEG_INFINITY, x).map(|t| (t.above, t.error)),
        "below" => stack.outside(x, f64::INFINITY).map(|t| (t.below, t.error)),
        _ => stack.density(x).map(|d| (d, 1e-6)),
    }
}

/// Every row, within its tolerance and within the error that the library states for it.
#[test]
fn vectors_hold_and_the_stated_error_is_true() {
    let (mut held, mut misses) = (0, Vec::new());
    for row in rows("tests/vectors/stack.csv") {
        let (x, expected): (f64, f64) = (row[3].parse().unwrap(), row[4].parse().unwrap());
        let tolerance: f64 = row[5].parse().unwrap();
        let start = std::time::Instant::now();
        match value_and_error(&stack(&row[1]), &row[2], x) {
            Ok((value, stated)) => {
                let miss = ((value - expected) / expected).abs();
                // the expected value itself is rounded to a double
                if !(miss <= tolerance && miss <= stated + 4.0 * f64::EPSILON) {
                    misses.push(format!(
                        "{}: {value:e} against {expected:e}, off {miss:e}, stated {stated:e}",
                        row[0]
                    ));
                }
            }
            Err(error) => misses.push(format!("{}: {error}", row[0])),
        }
        held += 1;
        if start.elapsed().as_millis() > 20 {
            println!("slow {} {:?}", row[0], start.elapsed());
        }
    }
    assert!(misses.is_empty() && held > 350, "{} of {held}:\n{}", misses.len(), misses.join("\n"));
}
