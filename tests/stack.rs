//! Exact distributions of linear stacks against rational numbers and mpmath, the published forms, refusals and properties.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::measurement::distribution::Distribution;
use gaugepoint::stack::{Contributor, Stack, ToleranceCost, Toward, Variation, Wanted};
use gaugepoint::{Error, ErrorKind};
use gaugepoint_tests::rows;
use gaugepoint_tests::stacks::{stack_of as stack, stack_row};
use proptest::prelude::*;

fn close(ours: f64, expected: f64, relative: f64, what: &str) {
    assert!((ours - expected).abs() <= relative * expected.abs(), "{what}: {ours:e} against {expected:e}");
}

/// Every row, within its tolerance and within the error that the library states for it.
#[test]
fn vectors_hold_and_the_stated_error_is_true() {
    let (mut held, mut misses) = (0, Vec::new());
    for row in rows("tests/vectors/stack.csv") {
        let (expected, tolerance): (f64, f64) = (row[4].parse().unwrap(), row[5].parse().unwrap());
        let stated_too = matches!(row[2].as_str(), "above" | "below");
        match stack_row(&row) {
            Ok((value, stated)) => {
                let miss = ((value - expected) / expected).abs();
                // the expected value itself is rounded to a double
                if !(miss <= tolerance && (!stated_too || miss <= stated + 4.0 * f64::EPSILON)) {
                    misses.push(format!(
                        "{}: {value:e} against {expected:e}, off {miss:e}, stated {stated:e}",
                        row[0]
                    ));
                }
            }
            Err(error) => misses.push(format!("{}: {error}", row[0])),
        }
        held += 1;
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

/// A count is as many contributors: the sum of twelve rectangles (Irwin-Hall, an exact rational number).
#[test]
fn a_count_is_independent_pieces() {
    let half = Variation::about(0.0, Distribution::rectangular(0.5).unwrap()).unwrap();
    let twelve = Contributor::new("shim", 1.0, (-0.5, 0.5), half).unwrap().with_count(12).unwrap();
    let stack = Stack::new(vec![twelve]).unwrap();
    close(stack.outside(9.0, 15.0).unwrap().below, 397.0 / 394_240.0, 1e-12, "below");
    close(stack.standard_deviation(), 1.0, 1e-14, "twelve twelfths");
    close(stack.worst_case().upper, 18.0, 1e-15, "limits");
}

/// Normal by Cp and Cpk: sigma and shift by the definitions, the tails 3 Cpk and 6 Cp - 3 Cpk deviations away
/// (tables of the normal distribution).
#[test]
fn capability_says_sigma_and_shift() {
    for (toward, side) in [(Toward::Upper, 1.0), (Toward::Lower, -1.0)] {
        let variation = Variation::normal_by_capability((-0.03, 0.05), 1.0, 2.0 / 3.0, toward).unwrap();
        // sigma = 0.08 / 6, moved by one sigma from the middle 0.01
        close(variation.mean(), 0.01 + side * 0.08 / 6.0, 1e-14, "mean");
        close(variation.variance(), 0.08 * 0.08 / 36.0, 1e-14, "variance");
        let stack = Stack::new(vec![Contributor::new("x", 10.0, (-0.03, 0.05), variation).unwrap()]).unwrap();
        let tail = stack.outside(9.97, 10.05).unwrap();
        let (near, far) = if side > 0.0 { (tail.above, tail.below) } else { (tail.below, tail.above) };
        close(near, 0.022_750_131_948_179_2, 1e-11, "two deviations");
        close(far, 3.167_124_183_311_986e-5, 1e-11, "four deviations");
    }
}

/// The bins of a histogram between all edges add up to what lies between the ends; a bin is the difference of two published tails
/// (Irwin-Hall of three: 9/128 and 1/6 below).
#[test]
fn histograms_are_exact() {
    let three = stack("rectangular 0.5;rectangular 0.5;rectangular 0.5");
    let bins = three.histogram(&[-1.5, -0.75, -0.5, 0.0, 0.5, 0.75, 1.5]).unwrap();
    let expected = [9.0 / 128.0, 1.0 / 6.0 - 9.0 / 128.0, 1.0 / 3.0];
    for (k, bin) in expected.iter().enumerate() {
        close(bins[k], *bin, 1e-12, "bin");
        close(bins[5 - k], *bin, 1e-12, "its mirror");
    }
    // of {1, 2, 3} each value belongs to the bin that ends with it
    let sample = stack("sample 1 2 3").histogram(&[0.0, 1.0, 2.5, 3.0]).unwrap();
    for bin in sample {
        close(bin, 1.0 / 3.0, 1e-14, "third");
    }
    let error = three.histogram(&[0.0, 0.5, 0.5]).unwrap_err();
    assert_eq!((error.kind(), error.field()), (ErrorKind::OutOfOrder, "edges/2"));
}

/// A curve spans all but 1e-6 on each side; its area by Simpson's rule is what is left.
#[test]
fn a_curve_holds_the_whole() {
    let stack = stack("normal 0.003;rectangular 0.01;beta 2 5 -0.01 0.02");
    let curve = stack.curve(401).unwrap();
    let step = curve.sizes[1] - curve.sizes[0];
    let weight = |k: usize| {
        if k == 0 || k == 400 {
            1.0
        } else if k % 2 == 1 {
            4.0
        } else {
            2.0
        }
    };
    let area: f64 = curve.densities.iter().enumerate().map(|(k, d)| weight(k) * d * step / 3.0).sum();
    assert!((area - (1.0 - 2e-6)).abs() < 1e-9, "{area}");
    assert_eq!(stack.curve(1).unwrap_err().kind(), ErrorKind::OutOfRange);
}

#[test]
fn kinds_are_the_constructors() {
    use gaugepoint::stack::VariationKind as K;
    let made = [
        (K::Normal, vec![0.1, 0.2], Variation::about(0.1, Distribution::normal(0.2).unwrap())),
        (
            K::CapabilityTowardLower,
            vec![-1.0, 1.0, 1.3, 1.0],
            Variation::normal_by_capability((-1.0, 1.0), 1.3, 1.0, Toward::Lower),
        ),
        (
            K::CapabilityTowardUpper,
            vec![-1.0, 1.0, 1.3, 1.0],
            Variation::normal_by_capability((-1.0, 1.0), 1.3, 1.0, Toward::Upper),
        ),
        (K::TruncatedNormal, vec![0.0, 1.0, -1.0, 2.0], Variation::truncated_normal(0.0, 1.0, (-1.0, 2.0))),
        (K::Rectangular, vec![0.1, 0.2], Variation::about(0.1, Distribution::rectangular(0.2).unwrap())),
        (K::Triangular, vec![-1.0, 0.5, 1.0], Variation::triangular((-1.0, 1.0), 0.5)),
        (
            K::Trapezoidal,
            vec![0.1, 0.2, 0.5],
            Variation::about(0.1, Distribution::trapezoidal(0.2, 0.5).unwrap()),
        ),
        (K::Arcsine, vec![0.1, 0.2], Variation::about(0.1, Distribution::arcsine(0.2).unwrap())),
        (K::Beta, vec![2.0, 3.0, -1.0, 1.0], Variation::beta(2.0, 3.0, (-1.0, 1.0))),
        (K::Skewed, vec![0.1, -1.0, 0.9, 2.0], Variation::skewed(&[(0.1, -1.0), (0.9, 2.0)])),
        (K::Sample, vec![1.0, 2.0], Variation::sample(&[1.0, 2.0])),
    ];
    assert_eq!(made.len(), K::ALL.len());
    for (kind, numbers, constructed) in made {
        assert_eq!(Variation::of_kind(kind, &numbers).unwrap(), constructed.unwrap(), "{}", kind.word());
        if kind != K::Sample {
            let error = Variation::of_kind(kind, &[numbers.clone(), vec![1.0]].concat()).unwrap_err();
            assert_eq!(
                (error.kind(), error.field()),
                (ErrorKind::Contradiction, "numbers"),
                "{}",
                kind.word()
            );
        }
    }
}

fn cost(place: usize, factor: f64, power: f64, (least, most): (f64, f64)) -> ToleranceCost {
    ToleranceCost { place, fixed: 0.0, factor, power, least, most }
}

/// Normal contributors of sigma = t / 3 each, centred.
fn normals(tolerances: &[f64], coefficients: &[f64]) -> Stack {
    let made = tolerances.iter().zip(coefficients).enumerate().map(|(k, (t, c))| {
        let contributor = Contributor::new(&format!("x{k}"), 10.0, (-t, *t), normal(t / 3.0)).unwrap();
        contributor.with_coefficient(*c).unwrap()
    });
    Stack::new(made.collect()).unwrap()
}

/// Root-sum-square with reciprocal power costs, by the method of Lagrange: `t_i = T r_i / sqrt(sum c_j^2 r_j^2)`, `r_i = (b_i / c_i^2)^(1 / (k + 2))`.
#[test]
fn least_cost_of_a_normal_stack_is_the_closed_form() {
    let (factors, coefficients) = ([0.3, 2.0, 0.05, 1.0], [1.0, -1.0, 2.0, 0.5]);
    let stack = normals(&[0.1, 0.02, 0.05, 0.03], &coefficients);
    let middle = stack.nominal();
    let limits = (middle - 0.2, middle + 0.2);
    // two normal tails of four deviations, from tables; sd = 0.2 / 4
    for (wanted, power) in [
        (Wanted::Cpk(4.0 / 3.0), 1.0),
        (Wanted::Outside(6.334_248_366_623_972e-5), 2.0),
        (Wanted::Cpk(4.0 / 3.0), 0.45),
    ] {
        let costs: Vec<ToleranceCost> =
            factors.iter().enumerate().map(|(k, b)| cost(k, *b, power, (1e-4, 10.0))).collect();
        let made = stack.allocate(limits, wanted, &costs).unwrap();
        let square = |x: f64| x * x;
        let ratio = |k: usize| libm::pow(factors[k] / square(coefficients[k]), 1.0 / (power + 2.0));
        let root = (0..4).map(|k| square(coefficients[k] * ratio(k))).sum::<f64>().sqrt();
        for (k, t) in made.tolerances.iter().enumerate() {
            close(*t, 3.0 * 0.05 * ratio(k) / root, 1e-8, "tolerance");
        }
        close(made.tail.below + made.tail.above, 6.334_248_366_623_972e-5, 1e-8, "tail");
    }
}

/// Tolerances between their bounds have one price, those at a bound are held by it, what is wanted is met, and no neighbour of the same
/// tail costs less.
#[test]
fn least_cost_is_stationary_for_any_shape() {
    let stack = stack("normal 0.3;rectangular 0.8;beta 2 5 -0.9 0.8;arcsine 0.7;triangular -0.9 0.1 0.9");
    let powers = [1.0, 2.0, 0.8, 1.0, 1.5];
    let costs: Vec<ToleranceCost> =
        powers.iter().enumerate().map(|(k, p)| cost(k, 1.0, *p, (0.2, 0.9))).collect();
    for p in [1e-2, 1e-4, 1e-8] {
        let made = stack.allocate((-1.9, 1.5), Wanted::Outside(p), &costs).unwrap();
        let outside = made.tail.below + made.tail.above;
        assert!(outside <= p * (1.0 + 1e-12) && outside > p * (1.0 - 1e-9), "{outside:e}");
        let slopes = made.stack.sensitivities(-1.9, 1.5).unwrap();
        let mut between = 0;
        for (cost, t) in costs.iter().zip(&made.tolerances) {
            let gain = cost.power * cost.factor / libm::pow(*t, cost.power + 1.0);
            let slope = (slopes[cost.place].below + slopes[cost.place].above) / outside;
            let price = gain / slope;
            if *t > 0.2 && *t < 0.9 {
                close(price, made.price, 1e-6, "price");
                between += 1;
            } else {
                assert!(if *t > 0.5 { price > made.price } else { price < made.price }, "{t} {price}");
            }
        }
        assert!(between > 1, "{:?}", made.tolerances);
    }
}

#[test]
fn allocations_that_cannot_be_are_refused_with_what_is_reached() {
    let stack = normals(&[0.03, 0.04], &[1.0, 1.0]);
    let costs = [cost(0, 1.0, 1.0, (0.03, 1.0)), cost(1, 1.0, 1.0, (0.04, 1.0))];
    // sigma is 0.05 / 3, so Cpk of 0.1 is 2 (3-4-5)
    let error = stack.allocate((19.9, 20.1), Wanted::Cpk(2.1), &costs).unwrap_err();
    assert_eq!((error.kind(), error.field()), (ErrorKind::OutOfRange, "cpk"));
    close(error.accepted().unwrap().upper, 2.0, 1e-9, "reached");
    let made = stack.allocate((10.0, 30.0), Wanted::Outside(1e-3), &costs).unwrap();
    assert_eq!((made.tolerances, made.price), (vec![1.0, 1.0], 0.0), "all at the largest");
    let twice = [costs[0], costs[0]];
    let error = stack.allocate((19.9, 20.1), Wanted::Outside(0.1), &twice).unwrap_err();
    assert_eq!((error.kind(), error.field()), (ErrorKind::Repeated, "costs/1/place"));
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
