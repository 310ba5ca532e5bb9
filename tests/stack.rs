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

fn normal(sigma: f64) -> Variation {
    Variation::about(0.0, Distribution::normal(sigma).unwrap()).unwrap()
}

/// Motor assembly, inches: P. Drake, Dimensioning and Tolerancing Handbook (1999), chapter 9, from memory; the sums close.
#[test]
fn published_stack_of_eleven() {
    let nominal = [-0.3595, 0.0320, 0.0600, 0.4305, 0.1200, 1.5030, 0.1200, 0.4305, 0.4500, -3.0250, 0.3000];
    let limits = [0.0155, 0.0020, 0.0030, 0.0075, 0.0050, 0.0070, 0.0050, 0.0075, 0.0070, 0.0060, 0.0300];
    let contributor = |(k, (nominal, t)): (usize, (&f64, &f64))| {
        Contributor::new(&format!("{k}"), *nominal, (-t, *t), normal(t / 3.0)).unwrap()
    };
    let stack = Stack::new(nominal.iter().zip(&limits).enumerate().map(contributor).collect()).unwrap();
    let near = |ours: f64, expected: f64, digit: f64| {
        assert!((ours - expected).abs() <= digit, "{ours} against {expected}");
    };
    let half = |span: gaugepoint::stack::Span| (span.upper - span.lower) / 2.0;
    near(stack.nominal(), 0.0615, 1e-12);
    near(stack.worst_case().lower, -0.0340, 1e-12);
    near(stack.worst_case().upper, 0.1570, 1e-12);
    near(half(stack.root_sum_square(1.0).unwrap()), 0.038_075_583, 1e-9);
    near(half(stack.bender()), 0.057_113, 5e-7);
    near(stack.modified_factor().unwrap(), 1.325_510, 5e-7);
    near(half(stack.modified_root_sum_square()), 0.050_469_566, 1e-9);
}

/// Check 9.3: parts per million of a centred normal, recomputed there beside a published table.
#[test]
fn published_parts_per_million() {
    for (cp, ppm, digit) in [(0.5, 133_614.4, 0.05), (1.0, 2699.796, 5e-4), (1.67, 0.5443, 5e-5)] {
        let variation = Variation::normal_by_capability((-1.0, 1.0), cp, cp, Toward::Upper).unwrap();
        let contributor = Contributor::new("x", 10.0, (-1.0, 1.0), variation).unwrap();
        let capability = Stack::new(vec![contributor]).unwrap().capability(9.0, 11.0).unwrap();
        assert!((capability.tail.ppm() - ppm).abs() <= digit, "{cp}: {}", capability.tail.ppm());
        close(capability.cpk, cp, 1e-12, "Cpk");
    }
}

/// Check 10.2: equal rectangles of half-width 1, outside the root-sum-square.
#[test]
fn rectangles_outside_their_root_sum_square() {
    for (n, expected) in
        [(2, 1.5 - 2.0_f64.sqrt()), (4, 1.0 / 12.0), (5, 1.0 / 12.0), (8, 0.083_290_390_104_5)]
    {
        let limit = f64::from(n).sqrt();
        let tail = stack(&["rectangular 1"].repeat(n as usize).join(";")).outside(-limit, limit).unwrap();
        assert!((tail.below + tail.above - expected).abs() < 1e-13, "{n}: {tail:?}");
    }
}

/// A cause that one contributor adds and another subtracts is gone; by hand.
#[test]
fn what_is_shared_cancels() {
    let pair = |coefficient| {
        let a = Contributor::new("a", 10.0, (0.0, 0.0), normal(0.003)).unwrap();
        let b = Contributor::new("b", 4.0, (0.0, 0.0), normal(0.004)).unwrap();
        let cause = Distribution::normal(0.012).unwrap();
        let stack = Stack::new(vec![a, b.with_coefficient(coefficient).unwrap()]).unwrap();
        stack.with_cause("scale", cause, &[("a", 1.0), ("b", 1.0)]).unwrap()
    };
    close(pair(-1.0).standard_deviation(), 0.005, 1e-14, "3-4-5");
    close(pair(1.0).standard_deviation(), (0.000_025_f64 + 0.000_576).sqrt(), 1e-14, "twice");
    close(pair(-1.0).mean(), 6.0, 1e-15, "mean");
}

#[test]
fn refusals_name_the_field() {
    let kind = |e: Error| (e.kind(), e.field().to_owned());
    let t = Distribution::student_t(0.1, 5.0).unwrap();
    assert_eq!(
        kind(Variation::about(0.0, t).unwrap_err()),
        (ErrorKind::UnknownChoice, "distribution".to_owned())
    );
    assert_eq!(kind(Stack::new(vec![]).unwrap_err()), (ErrorKind::MissingField, "contributors".to_owned()));
    let samples = stack("sample 1 2 3");
    assert_eq!(kind(samples.density(1.0).unwrap_err()).0, ErrorKind::Contradiction);
    assert_eq!(kind(samples.outside(f64::NAN, 3.0).unwrap_err()), (ErrorKind::NotFinite, "lower".to_owned()));
    // of the nine sums of {1, 2, 3} with itself one is above 5 and one below 3, by hand
    let two = stack("sample 1 2 3;sample 1 2 3").outside(3.0, 5.0).unwrap();
    close(two.above, 1.0 / 9.0, 1e-14, "above");
    close(two.below, 1.0 / 9.0, 1e-14, "below");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    /// The probability of a quantile is the probability, to 1e-9.
    #[test]
    fn quantiles_return(
        widths in prop::collection::vec(0.001_f64..0.05, 2..7),
        sigma in 0.0005_f64..0.02,
        exponent in 1_i32..15,
    ) {
        let p: f64 = format!("3e-{exponent}").parse().unwrap();
        let terms: Vec<String> = widths.iter().map(|w| format!("rectangular {w}")).collect();
        for stack in [stack(&terms.join(";")), stack(&format!("normal {sigma};{}", terms.join(";")))] {
            let above = stack.outside(f64::NEG_INFINITY, stack.quantile_above(p).unwrap()).unwrap().above;
            prop_assert!((above - p).abs() <= 1e-9 * p, "{above:e} {p:e}");
        }
    }
}
