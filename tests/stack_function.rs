//! Functions of contributors: derivatives and moments by `reference/function.py`, worst cases by hand, trials against the exact distributions of
//! linear stacks, and their bits under any split.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]
#![allow(
    clippy::disallowed_methods,
    clippy::float_cmp,
    clippy::cast_precision_loss,
    reason = "the tests' own arithmetic; equality of bits is meant where it stands"
)]

use core::f64::consts::PI;
use gaugepoint::ErrorKind;
use gaugepoint::calc::Model;
use gaugepoint::measurement::distribution::Distribution;
use gaugepoint::measurement::monte_carlo::{Coverage, Goal, MonteCarlo, Part, Trials};
use gaugepoint::measurement::points::Points;
use gaugepoint::measurement::tail::Mean;
use gaugepoint::stack::{
    Contributor, Derivation, EngineStack, Function, Law, Proof, Propagation, Stack, Toward, Variation,
};
use proptest::prelude::*;

fn near(ours: f64, expected: f64, tolerance: f64, what: &str) {
    assert!((ours - expected).abs() <= tolerance, "{what}: {ours:e} against {expected:e}");
}

fn contributor(name: &str, nominal: f64, half: f64, variation: Variation) -> Contributor {
    Contributor::new(name, nominal, (-half, half), variation).unwrap()
}

fn normal(sd: f64) -> Variation {
    Variation::about(0.0, Distribution::normal(sd).unwrap()).unwrap()
}

fn rectangular(half: f64) -> Variation {
    Variation::about(0.0, Distribution::rectangular(half).unwrap()).unwrap()
}

/// Sizes of the one-way clutch of Fortini, Dimensioning for Interchangeable Manufacture (1967), as Chase (ADCATS) has them; the limits are invented.
fn clutch_parts() -> Vec<Contributor> {
    vec![
        contributor("hub", 27.645, 0.05, normal(0.0125)),
        contributor("roller", 11.43, 0.01, normal(0.0025)),
        contributor("cage", 50.8, 0.05, normal(0.0125)),
    ]
}

const CLUTCH: &str = "acos((a + c) / (e - c))";

fn clutch() -> Function<Model> {
    Function::from_text(clutch_parts(), &["a", "c", "e"], CLUTCH).unwrap()
}

fn clutch_angle(x: &[f64]) -> f64 {
    ((x[0] + x[1]) / (x[2] - x[1])).acos()
}

const AT: [f64; 3] = [27.645, 11.43, 50.8];

/// mpmath at 40 digits, `reference/function.py`; 7.018 degrees are published with the example.
#[test]
fn sensitivities_of_the_clutch() {
    let gradient = [-0.207_876_960_613_020_77, -0.414_196_296_044_917_9, 0.206_319_335_431_897_05];
    let hessian = [
        -0.351_008_846_139_799_4,
        -0.704_667_663_094_985_6,
        -1.414_575_847_790_984_6,
        0.353_658_816_955_186_2,
        0.709_908_184_695_999,
        -0.356_249_367_740_812_8,
    ];
    let model = Model::from_text(CLUTCH, &["a", "c", "e"]).unwrap();
    let scales = [0.0125, 0.0025, 0.0125];
    let exact = Law::derivatives(&model, &AT, &scales);
    let numeric = Law::derivatives(&clutch_angle, &AT, &scales);
    assert_eq!((exact.derivation, numeric.derivation), (Derivation::Exact, Derivation::Numeric));
    for (of, first, second) in [(&exact, 1e-12, 1e-11), (&numeric, 1e-9, 1e-5)] {
        near(of.value, 0.122_494_010_257_163_27, 1e-13, "angle");
        assert_eq!((of.gradient.len(), of.hessian.len()), (3, 6));
        of.gradient.iter().zip(gradient).for_each(|(ours, slope)| near(*ours, slope, first, "slope"));
        of.hessian.iter().zip(hessian).for_each(|(ours, bend)| near(*ours, bend, second, "curvature"));
    }
    let degrees = clutch().nominal().unwrap() * 180.0 / PI;
    near(degrees, 7.018_389_803_367_671, 1e-11, "degrees");
}

fn check_moments(of: &Propagation, [mean, sd, skewness, kurtosis]: [f64; 4], tolerance: f64) {
    near(of.second.mean, mean, tolerance * mean.abs(), "mean");
    near(of.second.standard_deviation, sd, tolerance * sd, "deviation");
    near(of.second.skewness.unwrap(), skewness, tolerance, "skewness");
    near(of.second.excess_kurtosis.unwrap(), kurtosis, tolerance * 10.0, "kurtosis");
}

/// Chi-squared with one degree of freedom: 1, 2, sqrt(8), 12. Product of two normals: m1 m2, m1^2 s2^2 + m2^2 s1^2 + s1^2 s2^2, and by quadrature.
/// Three skewed contributors in a polynomial of second degree: by quadrature on a grid, `reference/function.py`.
#[test]
fn moments_of_polynomials_of_second_degree_are_exact() {
    let square = Function::from_text(vec![contributor("x", 0.0, 3.0, normal(1.0))], &["x"], "x * x").unwrap();
    check_moments(&square.propagation().unwrap(), [1.0, 2.0_f64.sqrt(), 8.0_f64.sqrt(), 12.0], 1e-13);

    let pair = vec![contributor("x", 2.0, 1.0, normal(0.5)), contributor("y", 3.0, 1.0, normal(0.4))];
    let product = Function::from_text(pair, &["x", "y"], "x * y").unwrap().propagation().unwrap();
    let expected = [6.0, 1.711_724_276_862_368_6, 0.287_118_424_056_402_75, 0.162_704_283_101_726_24];
    check_moments(&product, expected, 1e-12);
    let variance = 4.0 * 0.16 + 9.0 * 0.25 + 0.25 * 0.16;
    near(product.second.standard_deviation.powi(2), variance, 1e-13, "variance");
    near(product.effects[0].together, 0.25 * 0.16 / variance, 1e-13, "together");

    let skewed = || {
        vec![
            Contributor::new("a", 10.0, (-0.2, 0.3), Variation::triangular((-0.2, 0.3), -0.1).unwrap())
                .unwrap(),
            Contributor::new("b", 5.0, (-0.1, 0.2), Variation::beta(2.0, 5.0, (-0.1, 0.2)).unwrap()).unwrap(),
            Contributor::new(
                "c",
                1.0,
                (-0.03, 0.05),
                Variation::truncated_normal(0.02, 0.03, (-0.03, 0.05)).unwrap(),
            )
            .unwrap(),
        ]
    };
    let expected =
        [124.651_309_438_688_37, 2.451_950_118_210_871_4, 0.484_603_954_814_924_8, -0.563_995_644_363_767_5];
    let text = "a * a + 0.3 * a * b - b / 2 + a * c + 2 * c";
    let function = Function::from_text(skewed(), &["a", "b", "c"], text).unwrap();
    check_moments(&function.propagation().unwrap(), expected, 1e-11);
    let shares: f64 =
        function.propagation().unwrap().effects.iter().map(|e| e.alone + e.together / 2.0).sum();
    near(shares, 1.0, 1e-13, "shares of the variance");

    let called = |x: &[f64]| x[0] * x[0] + 0.3 * x[0] * x[1] - x[1] / 2.0 + x[0] * x[2] + 2.0 * x[2];
    let numeric = Function::new(skewed(), called).unwrap().propagation().unwrap();
    assert_eq!(numeric.derivation, Derivation::Numeric);
    check_moments(&numeric, expected, 1e-6);
}

/// A linear function has the moments of the linear stack, and its exact ones of independent terms: four equal rectangles have excess kurtosis -1.2 / 4.
#[test]
fn a_linear_function_is_a_linear_stack() {
    let parts =
        || (0..4).map(|k| contributor(&format!("x{k}"), 1.0, 0.1, rectangular(0.1))).collect::<Vec<_>>();
    let function = Function::from_text(parts(), &["a", "b", "c", "d"], "a + b - c + d").unwrap();
    let of = function.propagation().unwrap();
    let signed = parts()
        .into_iter()
        .enumerate()
        .map(|(k, c)| if k == 2 { c.with_coefficient(-1.0).unwrap() } else { c });
    let stack = Stack::new(signed.collect()).unwrap();
    near(of.first.mean, stack.mean(), 1e-15, "mean");
    near(of.first.standard_deviation, stack.standard_deviation(), 1e-16, "deviation");
    near(of.second.shift, 0.0, 0.0, "shift");
    near(of.second.excess_kurtosis.unwrap(), -0.3, 1e-12, "kurtosis");
    let worst = function.worst_case().unwrap();
    assert_eq!(worst.proof, Proof::Monotone);
    near(worst.lowest.attained, stack.worst_case().lower, 1e-15, "lowest");
    near(worst.highest.attained, stack.worst_case().upper, 1e-15, "highest");
}

/// Ready-made stacks at their nominals with every first derivative: mpmath at 40 digits, `reference/function.py`.
#[test]
fn ready_made_stacks() {
    let rows: [(&str, &[f64], f64, &[f64]); 7] = [
        ("deck_clearance", &[216.4, 86.0, 143.0, 30.2], 0.2, &[1.0, -0.5, -1.0, -1.0]),
        ("squish", &[216.4, 86.0, 143.0, 30.2, 1.2], 1.4, &[1.0, -0.5, -1.0, -1.0, 1.0]),
        (
            "compression_ratio",
            &[86.0, 86.0, 216.4, 143.0, 30.2, 48.5, 87.5, 1.2, 2.5, 0.4],
            9.356_929_002_667_34,
            &[
                0.190_570_103_233_711_9,
                0.503_210_002_098_588_3,
                -0.812_072_818_088_634,
                0.812_072_818_088_634,
                0.812_072_818_088_634,
                -0.139_800_327_906_297_04,
                -0.023_057_773_363_793_013,
                -0.840_647_987_221_620_3,
                -0.139_800_327_906_297_04,
                -0.139_800_327_906_297_04,
            ],
        ),
        ("bench_clearance", &[86.02, 85.96], 0.06, &[1.0, -1.0]),
        ("ring_gap", &[0.35, 86.0, 86.03], 0.444_247_779_607_693_8, &[1.0, -PI, PI]),
        (
            "hot_ring_gap",
            &[0.35, 86.0, 110.0, 1.2e-5, 200.0, 1.15e-5],
            0.083_249_301_473_365,
            &[
                1.002_07,
                -0.003_110_176_727_053_895_5,
                0.003_242_123_618_504_666_7,
                24_315.927_138_785,
                -0.003_103_010_134_400_305_4,
                -48_568.854_277_57,
            ],
        ),
        ("liner_protrusion", &[8.9, 0.15, 8.95], 0.1, &[1.0, 1.0, -1.0]),
    ];
    assert_eq!(rows.len(), EngineStack::ALL.len());
    for (word, sizes, value, slopes) in rows {
        let kind = EngineStack::from_word(word).unwrap();
        let names = kind.contributors();
        let parts: Vec<Contributor> = names
            .iter()
            .zip(sizes)
            .map(|(name, size)| contributor(name, *size, 1e-6, normal(1e-7)))
            .collect();
        // the order in which they are given does not matter
        let function = kind.function(parts.iter().rev().cloned().collect()).unwrap();
        near(function.nominal().unwrap(), value, 2e-13, word);
        let of = function.propagation().unwrap();
        for (name, slope) in names.iter().zip(slopes) {
            let effect = of.effects.iter().find(|e| e.name == *name).unwrap();
            near(effect.sensitivity, *slope, 1e-11 * slope.abs(), name);
        }
        assert_eq!(function.worst_case().unwrap().proof, Proof::Monotone, "{word}");

        let missing = kind.function(parts.iter().skip(1).cloned().collect()).unwrap_err();
        assert_eq!((missing.kind(), missing.refused()), (ErrorKind::MissingField, names[0]), "{word}");
        let mut other = parts.clone();
        other.push(contributor("weight", 1.0, 0.1, normal(0.1)));
        assert_eq!(kind.function(other).unwrap_err().kind(), ErrorKind::UnknownName, "{word}");
        let mut large = parts;
        large[0] = contributor(names[0], 9999.0, 0.1, normal(0.1));
        assert_eq!(kind.function(large).unwrap_err().field(), "contributors/0/nominal", "{word}");
    }
}

/// Corners of the clutch by hand: the angle falls with hub and roller and rises with the cage.
#[test]
fn a_monotone_worst_case_is_two_corners() {
    let worst = clutch().worst_case().unwrap();
    assert_eq!(worst.proof, Proof::Monotone);
    near(worst.lowest.attained, clutch_angle(&[27.645 + 0.05, 11.43 + 0.01, 50.8 - 0.05]), 1e-15, "lowest");
    near(worst.highest.attained, clutch_angle(&[27.645 - 0.05, 11.43 - 0.01, 50.8 + 0.05]), 1e-15, "highest");
    assert!(worst.lowest.bound.unwrap() <= worst.lowest.attained);
    near(worst.highest.bound.unwrap(), worst.highest.attained, 1e-13, "bound");
    let searched = Function::new(clutch_parts(), clutch_angle).unwrap().worst_case().unwrap();
    assert_eq!((searched.proof, searched.lowest.bound), (Proof::Searched, None));
    near(searched.lowest.attained, worst.lowest.attained, 1e-13, "searched");
    near(searched.highest.attained, worst.highest.attained, 1e-13, "searched");
}

/// Formula, limits of its inputs, least and largest value by hand.
#[test]
fn worst_cases_inside_the_limits() {
    // the least values of the fifth lie along a line, and the boxes about it run out
    let coarse = "max(x, y) - min(x, y)";
    #[expect(clippy::type_complexity, reason = "a table")]
    let cases: [(&str, &[(f64, f64)], f64, f64); 7] = [
        ("x * x - x", &[(-1.0, 2.0)], -0.25, 2.0),
        ("sin(x) + 0 * y + y", &[(0.0, 10.0), (1.0, 2.0)], 0.0, 3.0),
        ("abs(x) * y", &[(-1.0, 3.0), (-2.0, 1.0)], -6.0, 3.0),
        ("(x - 1) ^ 2 + (y + 2) ^ 2 + 3", &[(-5.0, 5.0), (-5.0, 5.0)], 3.0, 88.0),
        (coarse, &[(0.0, 1.0), (0.5, 4.0)], 0.0, 4.0),
        ("x / (1 + x * x)", &[(-3.0, 3.0)], -0.5, 0.5),
        ("cos(x)", &[(3.0, 7.0)], -1.0, 1.0),
    ];
    for (text, limits, least, largest) in cases {
        let parts = limits.iter().enumerate().map(|(k, (low, high))| {
            Contributor::new(&format!("c{k}"), 0.0, (*low, *high), normal(0.1)).unwrap()
        });
        let symbols: Vec<&str> = ["x", "y"].into_iter().take(limits.len()).collect();
        let worst = Function::from_text(parts.collect(), &symbols, text).unwrap().worst_case().unwrap();
        assert_eq!(worst.proof, Proof::Subdivision, "{text}");
        for (extreme, expected, side) in [(worst.lowest, least, 1.0), (worst.highest, largest, -1.0)] {
            let bound = extreme.bound.unwrap();
            assert!(side * (expected - bound) >= 0.0, "{text}: the bound {bound} cuts off {expected}");
            let tolerance = if text == coarse { 1e-3 } else { 2e-7 };
            near(bound, expected, tolerance, text);
            near(extreme.attained, expected, tolerance, text);
        }
    }
}

proptest! {
    /// No value at any place lies beyond the bounds.
    #[test]
    fn bounds_hold(places in prop::collection::vec((0.0..1.0_f64, 0.0..1.0_f64, 0.0..1.0_f64), 20), pick in 0_usize..5) {
        let texts = [
            "x ^ 3 * y - sqrt(z + 2) * x",
            "exp(x * y) / (z + 3) + tan(x / 2)",
            "atan(x * z) - asin(x / 4) * y ^ -2.5",
            "ln(y + z + 2) * erfc(x) - y ^ 4",
            "sin(3 * x) * cos(y * z)",
        ];
        let limits = [(-1.5, 1.5), (0.5, 2.0), (-1.0, 1.0)];
        let parts = limits.iter().enumerate().map(|(k, l)| Contributor::new(&format!("c{k}"), 0.0, *l, normal(0.1)).unwrap());
        let function = Function::from_text(parts.collect(), &["x", "y", "z"], texts[pick]).unwrap();
        let model = Model::from_text(texts[pick], &["x", "y", "z"]).unwrap();
        let worst = function.worst_case().unwrap();
        let (low, high) = (worst.lowest.bound.unwrap(), worst.highest.bound.unwrap());
        for (a, b, c) in places {
            let at = [-1.5 + 3.0 * a, 0.5 + 1.5 * b, -1.0 + 2.0 * c];
            let value = model.value(&at);
            prop_assert!(low <= value && value <= high, "{value} outside {low} to {high}");
        }
        prop_assert!(worst.lowest.attained - low <= 1e-3 * (high - low) && high - worst.highest.attained <= 1e-3 * (high - low));
    }
}

fn variations() -> Vec<(&'static str, Variation)> {
    let about = |d: Result<Distribution, _>| Variation::about(0.01, d.unwrap()).unwrap();
    vec![
        ("normal", about(Distribution::normal(0.02))),
        ("rectangular", about(Distribution::rectangular(0.02))),
        ("triangular", about(Distribution::triangular(0.02))),
        ("trapezoidal", about(Distribution::trapezoidal(0.02, 0.4))),
        ("arcsine", about(Distribution::arcsine(0.02))),
        ("oblique", Variation::triangular((-0.02, 0.05), 0.01).unwrap()),
        ("slope", Variation::triangular((-0.02, 0.05), 0.05).unwrap()),
        ("beta", Variation::beta(2.0, 5.0, (-0.1, 0.2)).unwrap()),
        ("steep beta", Variation::beta(0.6, 30.0, (0.0, 1.0)).unwrap()),
        ("truncated", Variation::truncated_normal(0.0, 0.02, (-0.01, 0.05)).unwrap()),
        ("far truncated", Variation::truncated_normal(0.0, 0.01, (0.05, 0.06)).unwrap()),
        ("skewed", Variation::skewed(&[(0.001_35, -0.02), (0.5, 0.0), (0.998_65, 0.06)]).unwrap()),
    ]
}

/// Every distribution is drawn as the exact distribution has it: of a Latin hypercube the `k`-th smallest value lies between the quantiles of
/// `k / N` and `(k + 1) / N`.
#[test]
fn every_variation_is_drawn_as_it_is() {
    let count: u32 = 500;
    for (name, variation) in variations() {
        let stack = Stack::new(vec![contributor("x", 5.0, 0.1, variation)]).unwrap();
        let run = stack.monte_carlo(3).with_points(Points::LatinHypercube { trials: count.into() }).unwrap();
        let mut values = run.part(0..count.into()).unwrap().values().to_vec();
        values.sort_by(f64::total_cmp);
        let quantile = |k: u32| match k {
            0 => f64::NEG_INFINITY,
            k if k == count => f64::INFINITY,
            k => stack.quantile(f64::from(k) / f64::from(count)).unwrap(),
        };
        for (k, value) in (0..count).zip(values) {
            let (low, high) = (quantile(k) - 1e-8, quantile(k + 1) + 1e-8);
            assert!(low <= value && value <= high, "{name} {k}: {value} outside {low} to {high}");
        }
    }
    let values = [0.3, -0.1, 0.2, 0.1];
    let sample = Stack::new(vec![contributor("x", 0.0, 0.1, Variation::sample(&values).unwrap())]).unwrap();
    let run = sample.monte_carlo(3).with_points(Points::LatinHypercube { trials: 400 }).unwrap();
    let part = run.part(0..400).unwrap();
    for value in values {
        assert_eq!(part.values().iter().filter(|v| **v == value).count(), 100);
    }
}

/// The exact distribution has no way to some of the others together.
fn mixed_stack() -> Stack {
    stack_of(&["normal", "rectangular", "triangular", "trapezoidal", "oblique", "beta"])
}

fn stack_of(kinds: &[&str]) -> Stack {
    let some = variations().into_iter().filter(|(name, _)| kinds.contains(name));
    let parts = some.enumerate().map(|(k, (name, variation))| {
        let part = contributor(name, 1.0, 0.1, variation);
        part.with_coefficient(if k % 2 == 0 { 1.0 } else { -1.5 })
            .unwrap()
            .with_count(1 + (k % 2) as u32)
            .unwrap()
    });
    let cause = Distribution::triangular(0.01).unwrap();
    Stack::new(parts.collect())
        .unwrap()
        .with_cause("gauge", cause, &[("normal", 1.0), ("trapezoidal", -2.0)])
        .unwrap()
}

/// Seven uneven parts that cut blocks, in another order.
fn in_seven<T: Trials>(run: &MonteCarlo<'_, T>, trials: u64) -> Part {
    let cuts = [0, 1, 300, 1023, 4096, 5001, 9999, trials];
    let mut parts: Vec<Part> = cuts.windows(2).map(|w| run.part(w[0]..w[1]).unwrap()).collect();
    for (a, b) in [(0, 5), (1, 3), (2, 6), (4, 0)] {
        parts.swap(a, b);
    }
    Part::merged(parts).unwrap()
}

fn check_bits<T: Trials>(run: &MonteCarlo<'_, T>, what: &str) {
    let trials = 10_240;
    let (whole, merged) = (run.part(0..trials).unwrap(), in_seven(run, trials));
    let same = whole.values().iter().zip(merged.values()).all(|(a, b)| a.to_bits() == b.to_bits());
    assert!(same && whole == merged, "{what}");
    let (a, b) = (whole.summary(0.9973).unwrap(), merged.summary(0.9973).unwrap());
    let bits = |s: &gaugepoint::measurement::monte_carlo::Summary| {
        [
            s.mean,
            s.standard_deviation,
            s.symmetric.lower,
            s.symmetric.upper,
            s.shortest.lower,
            s.shortest.upper,
        ]
        .map(f64::to_bits)
    };
    assert_eq!(bits(&a), bits(&b), "{what}");
}

#[test]
fn the_same_bits_however_it_is_split() {
    let stack = mixed_stack();
    let called = Function::new(clutch_parts(), clutch_angle).unwrap();
    for points in [Points::Random, Points::LatinHypercube { trials: 10_240 }, Points::Sobol] {
        check_bits(&stack.monte_carlo(8).with_points(points).unwrap(), "stack");
        check_bits(&clutch().monte_carlo(8).with_points(points).unwrap(), "model");
        check_bits(&called.monte_carlo(8).with_points(points).unwrap(), "closure");
    }
    let rare = stack.importance(Toward::Upper, stack.mean() + 3.5 * stack.standard_deviation(), 8).unwrap();
    let (whole, merged) = (rare.part(0..10_240).unwrap(), in_seven(&rare, 10_240));
    assert_eq!(whole, merged);
    assert_eq!(whole.importance(0.95).unwrap(), merged.importance(0.95).unwrap());
}

/// Mean, deviation and shares outside of a stack of every kind against its exact ones, for every kind of points.
#[test]
fn trials_of_a_stack_have_its_exact_distribution() {
    let stack = mixed_stack();
    let (low, high) = (stack.quantile(0.02).unwrap(), stack.quantile_above(0.005).unwrap());
    let trials = 1 << 16;
    for points in [Points::Random, Points::LatinHypercube { trials }, Points::Sobol] {
        let part = stack.monte_carlo(11).with_points(points).unwrap().part(0..trials).unwrap();
        let (mean, sd) = part.moments().unwrap();
        let of_mean = stack.standard_deviation() / (trials as f64).sqrt();
        near(mean, stack.mean(), 4.0 * of_mean, "mean");
        near(sd, stack.standard_deviation(), 4.0 * of_mean, "deviation");
        near(part.share_outside(low, high), 0.025, 4.0 * (0.025 / trials as f64).sqrt(), "share");
        if points != Points::Random {
            // what spread points are for: of a sum the mean is much better than by chance
            near(mean, stack.mean(), 0.1 * of_mean, "mean of spread points");
        }
    }
}

/// Of 400 runs at least 93 % of the intervals for 95 % hold the exact probability, of about 4 in 2000 trials.
#[test]
fn intervals_of_shares_cover() {
    let parts = (0..3).map(|k| contributor(&format!("x{k}"), 0.0, 0.1, rectangular(0.1))).collect();
    let stack = Stack::new(parts).unwrap();
    let limit = stack.quantile_above(0.002).unwrap();
    let covered = (0..400).filter(|seed| {
        let part = stack.monte_carlo(*seed).part(0..2000).unwrap();
        let above = part.outside(f64::NEG_INFINITY, limit, 0.95).unwrap().above;
        above.lower <= 0.002 && 0.002 <= above.upper
    });
    let covered = covered.count();
    assert!(covered >= 372, "{covered} of 400");
}

/// Clopper and Pearson's interval for 0 of n is 1 - (alpha/2)^(1/n), for n of n its mirror; 4 of 20 by SciPy 1.17.1 `binomtest(4, 20).proportion_ci()`.
#[test]
fn intervals_of_shares_by_closed_forms() {
    let step = |low: f64, n: u32| {
        let values: Vec<f64> = (0..n).map(|k| f64::from(k) / f64::from(n)).collect();
        let stack =
            Stack::new(vec![contributor("x", 0.0, 1.0, Variation::sample(&values).unwrap())]).unwrap();
        let run = stack.monte_carlo(1).part(0..20).unwrap();
        run.outside(low, f64::INFINITY, 0.95).unwrap().below
    };
    let (none, all) = (step(-1.0, 10), step(2.0, 10));
    near(none.upper, 1.0 - 0.025_f64.powf(1.0 / 20.0), 1e-13, "none");
    near(all.lower, 0.025_f64.powf(1.0 / 20.0), 1e-13, "all");
    assert_eq!((none.lower, all.upper), (0.0, 1.0));
    let some = (0..20).map(|k| step(f64::from(k) / 20.0 + 0.01, 20)).find(|p| p.count == 4);
    if let Some(some) = some {
        near(some.lower, 0.057_333_99, 1e-8, "4 of 20");
        near(some.upper, 0.436_614_0, 1e-7, "4 of 20");
    }
}

/// Tails of 1e-11 to 1e-7 on either side of stacks: of 40 runs at least 35 intervals for 95 % hold the exact probability, none is off by more than 6 errors.
#[test]
fn importance_sampling_reaches_rare_tails() {
    let rectangles = (0..5).map(|k| contributor(&format!("x{k}"), 0.0, 0.1, rectangular(0.1))).collect();
    let rectangles = Stack::new(rectangles).unwrap();
    // far out the exact distribution needs rectangles and normals
    let mixed = stack_of(&["normal", "rectangular", "triangular", "trapezoidal"]);
    for (stack, scores, trials) in [(mixed, 5.1, 20_000), (rectangles, 3.79, 40_000)] {
        for (toward, side) in [(Toward::Lower, -1.0), (Toward::Upper, 1.0)] {
            let limit = stack.mean() + side * scores * stack.standard_deviation();
            let exact = match toward {
                Toward::Lower => stack.outside(limit, f64::INFINITY).unwrap().below,
                Toward::Upper => stack.outside(f64::NEG_INFINITY, limit).unwrap().above,
            };
            assert!(exact > 1e-11 && exact < 1e-7, "{exact:e}");
            let mut covered = 0;
            for seed in 0..40 {
                let run = stack.importance(toward, limit, seed).unwrap();
                let of = run.part(0..trials).unwrap().importance(0.95).unwrap();
                near(of.mean, exact, 6.0 * of.standard_error, "rare tail");
                assert!(of.standard_error < 0.12 * exact, "{} effective", of.effective);
                covered += u32::from(of.lower <= exact && exact <= of.upper);
            }
            assert!(covered >= 35, "{covered} of 40 cover");
        }
    }
}

/// A nonlinear tail with a closed form: of two normals the sum of squares is beyond r^2 with probability exp(-r^2 / 2) on the whole circle; along one
/// axis `x^2` beyond 36 with `x > 0` is the tail of 6 (mpmath, `reference/function.py`).
#[test]
fn importance_sampling_of_functions() {
    let parts = || vec![contributor("x", 10.0, 1.0, normal(1.0)), contributor("y", 0.0, 1.0, normal(1e-9))];
    let model = Function::from_text(parts(), &["x", "y"], "(x - 4) ^ 3 + y").unwrap();
    let closure = Function::new(parts(), |x: &[f64]| (x[0] - 4.0).powi(3) + x[1]).unwrap();
    let expected = 9.865_876_450_376_98e-10;
    let of = model.importance(Toward::Upper, 12.0_f64.powi(3), 5).unwrap().part(0..20_000).unwrap();
    let of = of.importance(0.99).unwrap();
    near(of.mean, expected, 4.0 * of.standard_error, "model");
    let called = closure.importance(Toward::Lower, 0.0, 5).unwrap().part(0..20_000).unwrap();
    near(called.importance(0.99).unwrap().mean, expected, 4.0 * of.standard_error, "closure");
}

/// The mean of a product of two rectangles from 0 to 1 is 1/4: independent scrambles of 2^12 points are within a few parts in 1e6, and the interval of
/// sixteen runs covers it.
#[test]
fn independent_scrambles_say_how_good_they_are() {
    let parts = || ["x", "y"].map(|n| contributor(n, 0.5, 0.5, rectangular(0.5))).to_vec();
    let function = Function::from_text(parts(), &["x", "y"], "x * y").unwrap();
    let of = |points: Points| -> Vec<f64> {
        let mean = |seed| {
            let run = function.monte_carlo(seed).with_points(points).unwrap();
            run.part(0..4096).unwrap().moments().unwrap().0
        };
        (0..16).map(mean).collect()
    };
    let spread = Mean::of_runs(&of(Points::Sobol), 0.99).unwrap();
    assert!(spread.lower <= 0.25 && 0.25 <= spread.upper && spread.standard_error < 5e-6, "{spread:?}");
    let layers = Mean::of_runs(&of(Points::LatinHypercube { trials: 4096 }), 0.99).unwrap();
    assert!(layers.lower <= 0.25 && 0.25 <= layers.upper && layers.standard_error < 5e-4, "{layers:?}");
    let random = Mean::of_runs(&of(Points::Random), 0.99).unwrap();
    assert!(random.standard_error > 20.0 * spread.standard_error);
}

#[test]
fn an_adaptive_run_settles() {
    let goal = Goal { probability: 0.95, coverage: Coverage::Symmetric, digits: 2, most_trials: 1 << 22 };
    let of = clutch().monte_carlo(1).adaptive(goal).unwrap();
    assert!(of.settled && of.sequences > 1);
    let clutch = clutch();
    let spread = clutch.monte_carlo(1).with_points(Points::Sobol).unwrap();
    assert_eq!(spread.adaptive(goal).unwrap_err().kind(), ErrorKind::Contradiction);
}

#[test]
fn what_cannot_be_is_refused() {
    let kind = |r: Result<Function<Model>, gaugepoint::Error>| {
        let error = r.unwrap_err();
        (error.kind(), error.field().to_owned())
    };
    let of = |parts: Vec<Contributor>, text: &str| Function::from_text(parts, &["x", "y"], text);
    let x = || contributor("x", 1.0, 0.1, normal(0.1));
    let y = || contributor("y", 1.0, 0.1, normal(0.1));
    assert_eq!(kind(of(vec![], "x")), (ErrorKind::MissingField, "contributors".to_owned()));
    assert_eq!(kind(of(vec![x(), x()], "x + y")), (ErrorKind::Repeated, "contributors/1/name".to_owned()));
    assert_eq!(
        kind(of(vec![x(), y()], "x + 1")),
        (ErrorKind::Contradiction, "contributors/1/name".to_owned())
    );
    assert_eq!(kind(of(vec![x()], "x + y")), (ErrorKind::Contradiction, "model".to_owned()));
    assert_eq!(kind(of(vec![x(), y()], "x + z")).0, ErrorKind::UnknownName);
    let twice = y().with_count(2).unwrap();
    assert_eq!(
        kind(of(vec![x(), twice], "x + y")),
        (ErrorKind::Contradiction, "contributors/1/count".to_owned())
    );
    let minus = y().with_coefficient(-1.0).unwrap();
    assert_eq!(kind(of(vec![x(), minus], "x + y")).1, "contributors/1/coefficient");

    let pole = of(vec![x(), y()], "1 / (x - 1) + y").unwrap();
    assert!(pole.worst_case().is_err() && pole.propagation().is_err());
    let product = of(vec![x(), y()], "x * y").unwrap();
    let refused = |toward, limit| product.importance(toward, limit, 1).err().map(|e| e.kind());
    assert_eq!(refused(Toward::Upper, 0.5), Some(ErrorKind::Contradiction));
    assert_eq!(refused(Toward::Upper, 1e9), Some(ErrorKind::Contradiction));
    assert_eq!(refused(Toward::Upper, f64::NAN), Some(ErrorKind::NotFinite));
    let rare = product.importance(Toward::Upper, 2.0, 1).unwrap();
    assert!(rare.part(0..10_000).unwrap().importance(0.95).is_ok());
    assert_eq!(rare.part(0..100).unwrap().importance(0.95).unwrap_err().kind(), ErrorKind::Contradiction);

    let layers = product.monte_carlo(1).with_points(Points::LatinHypercube { trials: 100 }).unwrap();
    assert_eq!(layers.part(50..101).unwrap_err().kind(), ErrorKind::OutOfRange);
    assert_eq!(
        layers.part(0..100).unwrap().outside(0.0, 1.0, 0.95).unwrap_err().kind(),
        ErrorKind::Contradiction
    );
    let random = product.monte_carlo(1).part(100..200).unwrap();
    assert_eq!(
        Part::merged(vec![layers.part(0..100).unwrap(), random]).unwrap_err().kind(),
        ErrorKind::Contradiction
    );
    let many = Stack::new(vec![x().with_count(65).unwrap()]).unwrap();
    assert!(many.monte_carlo(1).with_points(Points::Sobol).is_err());
    assert!(many.monte_carlo(1).with_points(Points::LatinHypercube { trials: 0 }).is_err());
}
