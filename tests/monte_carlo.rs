//! Monte Carlo against published generator vectors, exact distributions and the examples of JCGM 101, and its bits under any split.

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
    reason = "the tests' own arithmetic; equality of bits is meant where it stands"
)]

use gaugepoint::ErrorKind;
use gaugepoint::calc::{Model, Number};
use gaugepoint::measurement::distribution::Distribution;
use gaugepoint::measurement::jet::Jet;
use gaugepoint::measurement::monte_carlo::{
    Coverage, Goal, MOST_TRIALS, MonteCarlo, Part, Summary, Trials, numerical_tolerance,
};
use gaugepoint::measurement::random::{NormalTable, philox4x32, uniform};
use gaugepoint::measurement::uncertainty::{Degrees, Inputs, StraightLine};
use gaugepoint::special::normal_quantile;
use gaugepoint::wide::Width;

const SEED: u64 = 20_260_101;

fn near(ours: f64, expected: f64, tolerance: f64, what: &str) {
    assert!((ours - expected).abs() <= tolerance, "{what}: {ours} against {expected}");
}

/// As published with the generator: Random123, `tests/kat_vectors`, lines "philox4x32 10".
#[test]
fn published_vectors_of_the_generator() {
    let rows = [
        ([0; 4], [0; 2], [0x6627_e8d5, 0xe169_c58d, 0xbc57_ac4c, 0x9b00_dbd8]),
        ([u32::MAX; 4], [u32::MAX; 2], [0x408f_276d, 0x41c8_3b0e, 0xa20b_c7c6, 0x6d54_51fd]),
        (
            [0x243f_6a88, 0x85a3_08d3, 0x1319_8a2e, 0x0370_7344],
            [0xa409_3822, 0x299f_31d0],
            [0xd16c_fe09, 0x94fd_cceb, 0x5001_e420, 0x2412_6ea1],
        ),
    ];
    for (counter, key, words) in rows {
        assert_eq!(philox4x32(counter, key), words);
    }
}

/// Seed, trial, draw and word by `reference/philox.py`.
#[test]
fn a_trial_is_a_function_of_seed_and_number() {
    let rows = [
        (SEED, 0, 0, 0x6d39_236d),
        (SEED, 7, 8, 0x9415_a0e2),
        (SEED, 64, 0, 0x8af7_b285),
        (SEED, 255, 1, 0xeb53_0bd5),
        (SEED, 256, 1, 0x3561_215e),
        (u64::MAX - 1, 1_000_003, 2, 0x81d3_f4a7),
        (SEED, u64::MAX - 5, 0, 0x714a_55b4),
    ];
    let inputs = rectangles(9);
    for (seed, trial, draw, word) in rows {
        let run = MonteCarlo::new(&inputs, |x| x[draw].clone(), seed);
        assert_eq!(run.draws(), 9);
        let alone = run.part(trial..trial + 1).unwrap();
        near(alone.values()[0], uniform(word) - 0.5, 0.0, "by hand");
        let among = run.part(trial.saturating_sub(300)..trial + 3).unwrap();
        let place = usize::try_from(trial.min(300)).unwrap();
        assert_eq!(among.values()[place].to_bits(), alone.values()[0].to_bits());
    }
}

/// Inputs that are their draws less one half.
fn rectangles(count: usize) -> Inputs {
    let mut inputs = Inputs::new();
    for k in 0..count {
        inputs.quantity(&format!("x{k}"), 0.0, Distribution::rectangular(0.5).unwrap()).unwrap();
    }
    inputs
}

/// The numbers that the stream gives draw `k` of so many trials.
fn stream(k: usize, trials: u64) -> Vec<f64> {
    let inputs = rectangles(5);
    let part = MonteCarlo::new(&inputs, |x| x[k].clone(), SEED).part(0..trials).unwrap();
    part.values().iter().map(|v| v + 0.5).collect()
}

/// Counts in equal cells against their expectation: the sum of `(count - n)^2 / n` is chi-square of one degree less than the cells, with that
/// mean and twice that variance; five deviations, either way, for a stream may also be too even.
fn is_even(cells: impl Iterator<Item = usize>, count: usize, what: &str) {
    let (mut counts, mut total) = (vec![0.0; count], 0.0);
    for cell in cells {
        counts[cell] += 1.0;
        total += 1.0;
    }
    let expected = total / count as f64;
    let chi2: f64 = counts.iter().map(|n: &f64| (n - expected) * (n - expected) / expected).sum();
    let dof = count as f64 - 1.0;
    near(chi2, dof, 5.0 * (2.0 * dof).sqrt(), what);
}

/// Even in 256 cells; in 16 x 16 cells of neighbours: the next trial, the next call or word (64 and 256 trials on), the next draw, the next seed;
/// and every bit of a word against the next. Moments of a rectangle: 1/2, 1/12, 1/80, within five of their deviations.
#[test]
fn the_stream_is_even_and_unrelated() {
    const TRIALS: u64 = 1 << 18;
    let cell = |u: f64, cells: f64| (u * cells) as usize;
    let draws: Vec<Vec<f64>> = (0..5).map(|k| stream(k, TRIALS)).collect();
    for (k, u) in draws.iter().enumerate() {
        is_even(u.iter().map(|u| cell(*u, 256.0)), 256, &format!("draw {k}"));
        let pair = |(a, b): (&f64, &f64)| 16 * cell(*a, 16.0) + cell(*b, 16.0);
        for lag in [1, 2, 4, 8, 64, 128, 192, 256] {
            is_even(u.iter().zip(&u[lag..]).map(pair), 256, &format!("draw {k}, {lag} trials on"));
        }
        let next = &draws[(k + 1) % draws.len()];
        is_even(u.iter().zip(next).map(pair), 256, &format!("draw {k} and the next"));
        let word = |u: f64| (u * 4_294_967_296.0) as u32;
        for bit in 0..32 {
            let of = |u: &f64| (word(*u) >> bit & 1) as usize;
            let next_bit = |u: &f64| (word(*u).rotate_left(31 - bit) & 1) as usize;
            let cells = u.iter().zip(next).map(|(a, b)| 4 * of(a) + 2 * next_bit(a) + of(b));
            is_even(cells, 8, &format!("draw {k}, bit {bit}"));
        }
        let n = TRIALS as f64;
        let moment = |power: i32| u.iter().map(|u| (u - 0.5).powi(power)).sum::<f64>() / n;
        // deviation of a power's mean: sqrt((m_2p - m_p^2) / n), m_2 1/12, m_4 1/80, m_8 1/2304
        near(moment(1), 0.0, 5.0 * (1.0 / 12.0 / n).sqrt(), "mean");
        near(moment(2), 1.0 / 12.0, 5.0 * ((1.0 / 80.0 - 1.0 / 144.0) / n).sqrt(), "variance");
        near(moment(4), 1.0 / 80.0, 5.0 * ((1.0 / 2304.0 - 1.0 / 6400.0) / n).sqrt(), "fourth");
    }
    let inputs = rectangles(1);
    let other = MonteCarlo::new(&inputs, |x| x[0].clone(), SEED + 1).part(0..TRIALS).unwrap();
    let pair = |(a, b): (&f64, &f64)| 16 * cell(*a, 16.0) + cell(b + 0.5, 16.0);
    is_even(draws[0].iter().zip(other.values()).map(pair), 256, "the next seed");
}

/// Normal draws: correlation of draws and of neighbouring trials within five deviations `1 / sqrt(n)` of zero, moments 1 and 3 within five of
/// theirs, `sqrt(2 / n)` and `sqrt(96 / n)`.
#[test]
fn normal_draws_are_normal_and_unrelated() {
    const TRIALS: u64 = 1 << 19;
    let inputs = four([(); 4].map(|()| Distribution::normal(1.0).unwrap()));
    let column = |k: usize| MonteCarlo::new(&inputs, |x| x[k].clone(), SEED).part(0..TRIALS).unwrap();
    let columns: Vec<Part> = (0..4).map(column).collect();
    let n = TRIALS as f64;
    let mean = |values: &mut dyn Iterator<Item = f64>| values.sum::<f64>() / n;
    for (k, x) in columns.iter().map(Part::values).enumerate() {
        near(mean(&mut x.iter().copied()), 0.0, 5.0 / n.sqrt(), "mean");
        near(mean(&mut x.iter().map(|x| x * x)), 1.0, 5.0 * (2.0 / n).sqrt(), "variance");
        near(mean(&mut x.iter().map(|x| x.powi(4))), 3.0, 5.0 * (96.0 / n).sqrt(), "fourth");
        for y in columns[k + 1..].iter().map(Part::values) {
            near(mean(&mut x.iter().zip(y).map(|(x, y)| x * y)), 0.0, 5.0 / n.sqrt(), "draws");
            near(
                mean(&mut x.iter().zip(y).map(|(x, y)| x * x * y * y)),
                1.0,
                5.0 * (8.0 / n).sqrt(),
                "squares",
            );
        }
        for lag in [1, 2, 3, 64, 256] {
            let products = x.iter().zip(&x[lag..]).map(|(x, y)| x * y);
            near(products.sum::<f64>() / n, 0.0, 5.0 / n.sqrt(), &format!("{lag} trials on"));
        }
    }
}

#[test]
fn uniform_numbers_are_inside() {
    // (n + 1/2) / 2^32
    near(uniform(0), 2.0_f64.powi(-33), 0.0, "smallest");
    near(1.0 - uniform(u32::MAX), 2.0_f64.powi(-33), 0.0, "largest");
    near(uniform(1 << 31), 0.5 + 2.0_f64.powi(-33), 0.0, "just above the middle");
    for word in [0, 1 << 20, 0x6627_e8d5] {
        near(uniform(word) + uniform(!word), 1.0, 0.0, "symmetric");
    }
}

/// Against the quantile function (itself held to mpmath in `special.csv`), over every octave; and in order.
#[test]
fn normal_table() {
    let table = NormalTable::new();
    let mut last = f64::NEG_INFINITY;
    for octave in 0..32 {
        for step in 0..512 {
            let p = 2.0_f64.powi(octave - 33) * (1.0 + f64::from(step) / 512.0);
            let x = table.quantile(p);
            near(x, normal_quantile(p), 1e-9, "table");
            assert!(x > last, "in order at {p:e}");
            last = x;
            near(table.quantile(1.0 - p), normal_quantile(1.0 - p), 1e-9, "upper half");
        }
    }
    near(table.quantile(0.5), 0.0, 0.0, "middle");
    // the ends of `uniform`, by mpmath at 40 digits
    near(table.quantile(uniform(0)), -6.337_957_754_6, 1e-9, "2^-33");
    near(table.quantile(uniform(u32::MAX)), 6.337_957_754_6, 1e-9, "1 - 2^-33");
    for outside in [0.0, 2.0_f64.powi(-34), 1.0 - 2.0_f64.powi(-34), 1.0, f64::NAN] {
        assert!(table.quantile(outside).is_nan());
    }
}

/// Every shape as it is drawn against its quantile function: the number of trials below each of 11 quantiles within five deviations of a
/// binomial count.
#[test]
fn shapes_are_drawn_as_they_are() {
    const TRIALS: u32 = 200_000;
    let shapes = [
        ("normal", Distribution::normal(2.0)),
        ("t of 1", Distribution::student_t(2.0, 1.0)),
        ("t of 2.5", Distribution::student_t(2.0, 2.5)),
        ("t of 18", Distribution::student_t(2.0, 18.0)),
        ("t of 1e6", Distribution::student_t(2.0, 1e6)),
        ("rectangular", Distribution::rectangular(2.0)),
        ("triangular", Distribution::triangular(2.0)),
        ("trapezoidal", Distribution::trapezoidal(2.0, 0.3)),
        ("curvilinear", Distribution::curvilinear_trapezoid(2.0, 0.9)),
        ("arcsine", Distribution::arcsine(2.0)),
    ];
    let mut inputs = Inputs::new();
    for (name, shape) in &shapes {
        inputs.quantity(name, 0.0, shape.as_ref().copied().unwrap()).unwrap();
    }
    for (place, (name, shape)) in shapes.iter().enumerate() {
        let part = MonteCarlo::new(&inputs, |x| x[place].clone(), SEED).part(0..u64::from(TRIALS)).unwrap();
        for k in [1, 2, 5, 10, 25, 50, 75, 90, 95, 98, 99] {
            let p = f64::from(k) / 100.0;
            let limit = shape.as_ref().unwrap().quantile(p);
            let below = part.values().iter().filter(|v| **v <= limit).count() as f64;
            let n = f64::from(TRIALS);
            near(below, n * p, 5.0 * (n * p * (1.0 - p)).sqrt(), &format!("{name}, {p}"));
        }
    }
}

/// The moments of JCGM 101:2008, 6.4.3: mean 0, variance (b - a)^2 / 12 + d^2 / 9, within four deviations of the moments of a sample.
#[test]
fn jcgm_101_curvilinear_trapezoid() {
    let mut inputs = Inputs::new();
    inputs.quantity("x", 5.0, Distribution::curvilinear_trapezoid(1.0, 0.5).unwrap()).unwrap();
    let summary = MonteCarlo::new(&inputs, |x| x[0].clone(), SEED).run(1_000_000, 0.95).unwrap();
    let variance: f64 = 4.0 / 12.0 + 0.25 / 9.0;
    near(summary.mean, 5.0, 4.0 * variance.sqrt() / 1e3, "mean");
    // fourth moment of a rectangle of random half-width h: E(h^4) / 5 = (1 + 2 d^2 + d^4 / 5) / 5
    let fourth = (1.0 + 2.0 * 0.25 + 0.0625 / 5.0) / 5.0;
    let of_variance = (fourth - variance * variance).sqrt() / 1e3;
    near(summary.standard_deviation.powi(2), variance, 4.0 * of_variance, "variance");
}

fn four(distributions: [Distribution; 4]) -> Inputs {
    let mut inputs = Inputs::new();
    for (k, distribution) in distributions.into_iter().enumerate() {
        inputs.quantity(&format!("x{k}"), 0.0, distribution).unwrap();
    }
    inputs
}

fn sum(x: &[Jet]) -> Jet {
    &x[0] + &x[1] + &x[2] + &x[3]
}

fn about(summary: &Summary, half: f64, tolerance: f64, what: &str) {
    for interval in [summary.symmetric, summary.shortest] {
        near(interval.lower, -half, tolerance, what);
        near(interval.upper, half, tolerance, what);
    }
}

/// JCGM 101:2008, 9.2: four normals, u 2 and ±3.919928 at 95 %; four rectangles of variance 1, ±2 sqrt(3) (2 - (3/5)^(1/4)) =
/// ±3.87940674134782; three and one ten times as wide, u sqrt(103), ±17.0158140998667 against ±19.8915 to first order. The tolerance is five
/// deviations of a quantile of 10^6 trials; shortest intervals scatter more (the minimum is flat): 0.06 u.
#[test]
fn jcgm_101_additive_models() {
    let rectangle = |deviation: f64| Distribution::rectangular(deviation * 3.0_f64.sqrt()).unwrap();
    let normal = Distribution::normal(1.0).unwrap();
    let rows = [
        (four([(); 4].map(|()| normal)), 2.0, 3.919_928, 0.027, 3.919_928, true),
        (four([(); 4].map(|()| rectangle(1.0))), 2.0, 3.879_406_741_347_82, 0.023, 3.919_928, true),
        (
            four([rectangle(1.0), rectangle(1.0), rectangle(1.0), rectangle(10.0)]),
            103.0_f64.sqrt(),
            17.015_814_099_866_7,
            0.03,
            19.8915,
            false,
        ),
    ];
    for (inputs, u, half, tolerance, first_order, validated) in rows {
        let summary = MonteCarlo::new(&inputs, sum, SEED).run(1_000_000, 0.95).unwrap();
        near(summary.mean, 0.0, 5.0 * u / 1e3, "mean");
        near(summary.standard_deviation, u, 5.0 * u / 1e3 / 2.0_f64.sqrt(), "u");
        near(summary.symmetric.lower, -half, tolerance, "symmetric");
        near(summary.symmetric.upper, half, tolerance, "symmetric");
        assert!(summary.shortest.width() <= summary.symmetric.width());
        about(&summary, half, 0.06 * u, "shortest");
        let evaluation = inputs.evaluate(sum).unwrap();
        let expanded = evaluation.expanded(0.95, Degrees::AsComputed).unwrap();
        near(expanded.expanded_uncertainty, first_order, 1e-4, "to first order");
        // two digits of u = 2.0 and 10: tolerance 0.05 and 0.5
        let validation = summary.validate(&evaluation, &expanded, Coverage::Symmetric, 2).unwrap();
        near(validation.tolerance, if u < 5.0 { 0.05 } else { 0.5 }, 0.0, "tolerance");
        near(validation.upper_difference, (half - first_order).abs(), tolerance, "difference");
        assert_eq!(validation.validated, validated, "{validation:?}");
    }
}

/// JCGM 101:2008, 9.5 (inputs from memory): the end gauge. Arguments in nm and C.
fn end_gauge() -> Inputs {
    let mut inputs = Inputs::new();
    let t = |scale, dof| Distribution::student_t(scale, dof).unwrap();
    inputs.quantity("ls", 50_000_623.0, t(25.0, 18.0)).unwrap();
    inputs.quantity("d", 215.0, t(6.0, 24.0)).unwrap();
    inputs.quantity("d1", 0.0, t(4.0, 5.0)).unwrap();
    inputs.quantity("d2", 0.0, t(7.0, 8.0)).unwrap();
    inputs.quantity("alpha", 11.5e-6, Distribution::rectangular(2e-6).unwrap()).unwrap();
    inputs.quantity("theta0", -0.1, Distribution::normal(0.2).unwrap()).unwrap();
    inputs.quantity("cycle", 0.0, Distribution::arcsine(0.5).unwrap()).unwrap();
    let doubtful = |a, d| Distribution::curvilinear_trapezoid(a, d).unwrap();
    inputs.quantity("dalpha", 0.0, doubtful(1e-6, 0.1e-6)).unwrap();
    inputs.quantity("dtheta", 0.0, doubtful(0.050, 0.025)).unwrap();
    inputs
}

fn deviation_from_nominal(x: &[Jet]) -> Jet {
    let expansion = &x[7] * (&x[5] + &x[6]) + &x[4] * &x[8];
    &x[0] + &x[1] + &x[2] + &x[3] - &x[0] * expansion - 50_000_000.0
}

/// The same operations, kept as a list.
fn end_gauge_model() -> Model {
    Model::of(9, |x| {
        let expansion = x[7] * (x[5] + x[6]) + x[4] * x[8];
        x[0] + x[1] + x[2] + x[3] - x[0] * expansion - 50_000_000.0
    })
}

/// u 35.808079 nm analytically from the parts 703.125, 39.273, 26.667, 65.333, 146.323, 301.498 nm2; symmetric 99 % interval [744.348, 931.617]
/// and shortest [744.34, 931.58] by 48 million trials elsewhere; published 838, 36, [745, 932]. The deviation of u over 16 million trials is
/// 0.0065 nm, so 0.02 is three of them; that of the ends 0.05 nm.
#[test]
fn jcgm_101_end_gauge() {
    const TRIALS: u64 = 16_000_000;
    let inputs = end_gauge();
    let model = end_gauge_model();
    let run = MonteCarlo::of_model(&inputs, &model, SEED);
    let parts = on_two_threads(&run, TRIALS);
    let summary = Part::merged(parts).unwrap().summary(0.99).unwrap();
    assert_eq!(summary.trials, TRIALS);
    near(summary.mean, 838.0, 0.04, "mean");
    near(summary.standard_deviation, 35.808, 0.02, "u");
    near(summary.symmetric.lower, 744.348, 0.3, "symmetric");
    near(summary.symmetric.upper, 931.617, 0.3, "symmetric");
    near(summary.shortest.lower, 744.34, 0.6, "shortest");
    near(summary.shortest.upper, 931.58, 0.6, "shortest");
}

fn on_two_threads<T: Trials + Sync>(run: &MonteCarlo<'_, T>, trials: u64) -> Vec<Part> {
    let cut = trials / 3 + 1;
    std::thread::scope(|scope| {
        let second = scope.spawn(|| run.part(cut..trials).unwrap());
        let first = run.part(0..cut).unwrap();
        vec![second.join().unwrap(), first]
    })
}

fn bits(summary: &Summary) -> Vec<u64> {
    let (s, t) = (summary.symmetric, summary.shortest);
    [summary.mean, summary.standard_deviation, s.lower, s.upper, t.lower, t.upper].map(f64::to_bits).to_vec()
}

/// One run, the same in seven uneven parts on threads of their own, merged in another order: the same bits, of a closure and of a model.
#[test]
fn the_same_bits_however_it_is_split() {
    const TRIALS: u64 = 50_003;
    let cuts = [0, 1, 255, 4_097, 9_000, 29_999, 30_001, TRIALS];
    let inputs = end_gauge();
    let (run, model) = (MonteCarlo::new(&inputs, deviation_from_nominal, SEED), end_gauge_model());
    let listed = MonteCarlo::of_model(&inputs, &model, SEED);
    let whole = run.part(0..TRIALS).unwrap();
    let expected = bits(&whole.summary(0.99).unwrap());
    for seven in [in_parts(&run, &cuts), in_parts(&listed, &cuts)] {
        let merged = Part::merged(seven).unwrap();
        assert_eq!(merged.trials(), 0..TRIALS);
        assert!(same_bits(merged.values(), whole.values()));
        assert_eq!(bits(&merged.summary(0.99).unwrap()), expected);
    }
    let threads = Part::merged(on_two_threads(&run, TRIALS)).unwrap();
    assert_eq!(bits(&threads.summary(0.99).unwrap()), expected);
    let other = MonteCarlo::new(&inputs, deviation_from_nominal, SEED + 1);
    assert_ne!(bits(&other.run(TRIALS, 0.99).unwrap()), expected);
    // far out in the stream, too
    let far = u64::MAX - 5;
    assert_eq!(run.part(far..far + 3).unwrap().values()[2], run.part(far + 2..far + 3).unwrap().values()[0]);
}

fn same_bits(a: &[f64], b: &[f64]) -> bool {
    a.len() == b.len() && a.iter().zip(b).all(|(a, b)| a.to_bits() == b.to_bits())
}

/// The parts between the cuts, each on a thread, the last one first.
fn in_parts<T: Trials + Sync>(run: &MonteCarlo<'_, T>, cuts: &[u64]) -> Vec<Part> {
    std::thread::scope(|scope| {
        let part = |ends: &[u64]| {
            let trials = ends[0]..ends[1];
            scope.spawn(move || run.part(trials).unwrap())
        };
        let parts: Vec<_> = cuts.windows(2).rev().map(part).collect();
        parts.into_iter().map(|part| part.join().unwrap()).collect()
    })
}

/// Every distribution and every operation: the operations over columns, one value after the other, and the same operations in a closure give
/// the same bits; so do the widest instructions of this machine, which ran where it has them.
#[test]
fn columns_have_the_bits_of_single_trials_at_every_width() {
    const TRIALS: u64 = 3_000;
    let inputs = end_gauge();
    let model = Model::of(9, |x| {
        let root = (x[0] / (x[1] + 2.0)).abs().sqrt() - x[2] * 0.5;
        root.max(-x[3]).min(x[5] + 1e4) * (x[6] + x[7] * 1e5 + x[8] + 3.0 * x[4]).erfc() + 1.0 / x[1]
    });
    let closure = |x: &[Jet]| {
        let root = (&x[0] / (&x[1] + 2.0)).abs().sqrt() - &x[2] * 0.5;
        let bounded = root.max(&-&x[3]).min(&(&x[5] + 1e4));
        bounded * (&x[6] + &x[7] * 1e5 + &x[8] + 3.0 * &x[4]).erfc() + 1.0 / &x[1]
    };
    let run = MonteCarlo::of_model(&inputs, &model, SEED);
    let columns = run.part(0..TRIALS).unwrap();
    let single = MonteCarlo::new(&inputs, closure, SEED).part(0..TRIALS).unwrap();
    assert!(same_bits(columns.values(), single.values()));
    let arguments: Vec<Part> =
        (0..9).map(|k| MonteCarlo::new(&inputs, |x| x[k].clone(), SEED).part(0..TRIALS).unwrap()).collect();
    let value = |trial: usize| {
        let x: Vec<f64> = arguments.iter().map(|part| part.values()[trial]).collect();
        model.value(&x)
    };
    let values: Vec<f64> = (0..columns.values().len()).map(value).collect();
    assert!(same_bits(columns.values(), &values));
    let baseline = run.clone().with_width(Width::baseline());
    assert!(!baseline.width().is_wide());
    assert!(same_bits(baseline.part(0..TRIALS).unwrap().values(), columns.values()));
    #[cfg(target_arch = "x86_64")]
    assert_eq!(run.width().is_wide(), is_x86_feature_detected!("avx2") && is_x86_feature_detected!("fma"));
    #[cfg(target_arch = "aarch64")]
    assert!(run.width().is_wide());
}

/// A run that keeps sums and the ends of its intervals against one that keeps every value: the same bits, for runs that end within a block and
/// within a span, for both kinds of model, at every width, on any number of threads; counts are those of the values.
#[test]
fn a_tally_is_that_of_the_values() {
    let inputs = end_gauge();
    let model = end_gauge_model();
    let limits = (800.0, 900.0);
    for (trials, probability) in
        [(32_767, 0.95), (32_768, 0.95), (100_000, 0.95), (270_001, 0.9973), (65_535, 0.3)]
    {
        let run = MonteCarlo::of_model(&inputs, &model, SEED);
        let part = run.part(0..trials).unwrap();
        let expected = bits(&part.summary(probability).unwrap());
        let count = |which: &dyn Fn(f64) -> bool| part.values().iter().filter(|v| which(**v)).count() as u64;
        let counts = (count(&|v| v < limits.0), count(&|v| v > limits.1));
        assert!(counts.0 > 0 && counts.1 > 0);
        for threads in [1, 2, 3, 7, 1000] {
            let tally = run.tally(trials, probability, limits, threads).unwrap();
            assert_eq!((bits(&tally.summary), tally.summary.trials), (expected.clone(), trials));
            assert_eq!((tally.below, tally.above), counts);
            let outside = part.outside(limits.0, limits.1, 0.95).unwrap();
            assert_eq!(tally.outside(0.95).unwrap(), outside);
        }
        let narrow = run.clone().with_width(Width::baseline()).tally(trials, probability, limits, 2).unwrap();
        assert_eq!(bits(&narrow.summary), expected);
        let closure = MonteCarlo::new(&inputs, deviation_from_nominal, SEED);
        assert_eq!(bits(&closure.run(trials, probability).unwrap()), expected);
    }
}

/// What the first trials say of the tails may be wrong: with a model that gives other values when it is asked for the first time; and values may be equal.
#[test]
fn a_tally_of_odd_trials() {
    const TRIALS: u64 = 60_000;
    let inputs = rectangles(1);
    let calls = std::sync::atomic::AtomicU64::new(0);
    let late = |x: &[Jet]| {
        let number = calls.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
        if number < 4_096 { &x[0] + 1000.0 } else { x[0].clone() }
    };
    let summary = MonteCarlo::new(&inputs, late, SEED).run(TRIALS, 0.95).unwrap();
    let plain = MonteCarlo::new(&inputs, |x| x[0].clone(), SEED).part(0..TRIALS).unwrap();
    assert_eq!(bits(&summary), bits(&plain.summary(0.95).unwrap()));
    let constant = MonteCarlo::new(&inputs, |_| Jet::constant(0.1), SEED);
    let tally = constant.tally(TRIALS, 0.95, (0.1, 0.1), 2).unwrap();
    let s = tally.summary;
    assert_eq!([s.mean, s.standard_deviation, s.symmetric.lower, s.shortest.upper], [0.1, 0.0, 0.1, 0.1]);
    assert_eq!((tally.below, tally.above), (0, 0));
}

/// Mean and deviation of a part against exact arithmetic: values `10^6 + k / 2^10` have the mean `10^6 + (n - 1) / 2^11` and the deviation
/// `sqrt(n (n + 1) / 12) / 2^10` of n numbers in a row.
#[test]
fn moments_keep_their_digits() {
    let inputs = rectangles(1);
    for n in [2_u64, 17, 256, 257, 4_097, 100_003] {
        let next = std::sync::atomic::AtomicU64::new(0);
        let row = |_: &[Jet]| {
            Jet::constant(1e6 + next.fetch_add(1, std::sync::atomic::Ordering::Relaxed) as f64 / 1024.0)
        };
        let (mean, deviation) = MonteCarlo::new(&inputs, row, SEED).part(0..n).unwrap().moments().unwrap();
        let count = n as f64;
        near(mean, 1e6 + (count - 1.0) / 2048.0, 2e-10, "mean");
        let expected = (count * (count + 1.0) / 12.0).sqrt() / 1024.0;
        near(deviation / expected, 1.0, 2e-14, "deviation");
    }
}

#[test]
fn impossible_tallies_are_refused() {
    let inputs = end_gauge();
    let run = MonteCarlo::new(&inputs, deviation_from_nominal, SEED);
    let none = (f64::NEG_INFINITY, f64::INFINITY);
    for (trials, probability, limits, threads, field) in [
        (50_000, 0.95, (1.0, 0.0), 1, "upper"),
        (50_000, 0.95, (f64::NAN, 0.0), 1, "lower"),
        (50_000, 0.95, none, 0, "threads"),
        (50_000, 0.95, none, 1025, "threads"),
        (50_000, 1.0, none, 2, "probability"),
        (50_000, 1e-6, none, 2, "probability"),
        (50_000, 1.0 - 1e-6, none, 2, "probability"),
        (MOST_TRIALS + 1, 0.95, none, 2, "trials"),
        (0, 0.95, none, 2, "trials"),
    ] {
        assert_eq!(run.tally(trials, probability, limits, threads).expect_err(field).field(), field);
    }
    let root = MonteCarlo::new(&inputs, |x| (x[2].clone() + 40.0).sqrt(), SEED);
    let refused = |threads| root.tally(200_000, 0.95, none, threads).expect_err("a root");
    // the same trial whichever thread meets one first
    assert_eq!(refused(1), refused(4));
    assert_eq!((refused(1).kind(), refused(1).field()), (ErrorKind::NotFinite, "model"));
}

/// The ends are the order statistics of JCGM 101:2008, 7.7: for 1000 trials at 95 % the 25th and 975th value, for 1001 the 25th and 976th
/// (q = 951, r = 25), for 7 at 50 % the 2nd and 6th (q = 4, r = 2).
#[test]
fn ends_are_values_of_trials() {
    let inputs = end_gauge();
    let run = MonteCarlo::new(&inputs, deviation_from_nominal, SEED);
    for (trials, probability, low, high) in [(1000, 0.95, 25, 975), (1001, 0.95, 25, 976), (7, 0.5, 2, 6)] {
        let part = run.part(0..trials).unwrap();
        let summary = part.summary(probability).unwrap();
        let mut sorted = part.values().to_vec();
        sorted.sort_by(f64::total_cmp);
        near(summary.symmetric.lower, sorted[low - 1], 0.0, "lower");
        near(summary.symmetric.upper, sorted[high - 1], 0.0, "upper");
        let inside = high - low;
        let widths = sorted.iter().zip(&sorted[inside..]).map(|(a, b)| b - a);
        near(summary.shortest.width(), widths.fold(f64::INFINITY, f64::min), 0.0, "shortest");
    }
    // a skewed result has a shortest interval off the symmetric one: the square of a normal, 95 % below 1.9599640^2
    let mut square = Inputs::new();
    square.quantity("x", 0.0, Distribution::normal(1.0).unwrap()).unwrap();
    let summary = MonteCarlo::new(&square, |x| &x[0] * &x[0], SEED).run(200_000, 0.95).unwrap();
    near(summary.shortest.lower, 0.0, 1e-6, "shortest");
    near(summary.shortest.upper, 3.841_459, 0.08, "shortest");
    near(summary.symmetric.lower, 9.820_7e-4, 1e-4, "symmetric: chi2 0.025");
    near(summary.symmetric.upper, 5.023_886, 0.15, "symmetric: chi2 0.975");
}

/// JCGM 101:2008, 7.9.2, examples: 0.00035 g to two digits, 2 K to one digit; and a rounding that carries.
#[test]
fn jcgm_101_numerical_tolerance() {
    for (u, digits, tolerance) in [
        (0.000_35, 2, 0.000_005),
        (2.0, 1, 0.5),
        (9.96, 2, 0.5),
        (9.94, 2, 0.05),
        (35.8, 1, 5.0),
        (0.0, 1, 0.0),
    ] {
        near(numerical_tolerance(u, digits).unwrap(), tolerance, 0.0, "tolerance");
    }
    assert_eq!(numerical_tolerance(1.0, 3).expect_err("digits").field(), "digits");
    assert_eq!(numerical_tolerance(f64::NAN, 1).expect_err("u").kind(), ErrorKind::NotFinite);
}

/// Four normals: exact 2 and ±3.919928; a settled run is within its tolerance of them (four deviations of its averages at most).
#[test]
fn adaptive_runs() {
    let inputs = four([(); 4].map(|()| Distribution::normal(1.0).unwrap()));
    let run = MonteCarlo::new(&inputs, sum, SEED);
    let goal = Goal { probability: 0.95, coverage: Coverage::Symmetric, digits: 2, most_trials: 10_000_000 };
    let outcome = run.adaptive(goal).unwrap();
    assert!(outcome.settled && outcome.sequences >= 2);
    near(outcome.tolerance, 0.05, 0.0, "tolerance");
    assert_eq!(outcome.summary.trials, outcome.sequences * 10_000);
    near(outcome.summary.standard_deviation, 2.0, 0.05, "u");
    about(&outcome.summary, 3.919_928, 0.1, "ends");
    // one digit less settles no later, and the pooled trials are those of a fixed run
    let coarse = run.adaptive(Goal { digits: 1, ..goal }).unwrap();
    assert!(coarse.settled && coarse.sequences <= outcome.sequences);
    assert_eq!(bits(&outcome.summary), bits(&run.run(outcome.summary.trials, 0.95).unwrap()));
    // 99.99 % needs 10^6 trials a sequence
    let rare = run.adaptive(Goal { probability: 0.9999, most_trials: 2_000_000, digits: 1, ..goal }).unwrap();
    assert_eq!((rare.sequences, rare.summary.trials), (2, 2_000_000));
    let stopped = run.adaptive(Goal { most_trials: 20_000, ..goal }).unwrap();
    assert_eq!((stopped.sequences, stopped.settled), (2, outcome.sequences == 2));
    for (refused, field) in [
        (Goal { most_trials: 19_999, ..goal }, "most_trials"),
        (Goal { most_trials: MOST_TRIALS + 1, ..goal }, "trials"),
        (Goal { probability: 1.0, ..goal }, "probability"),
        (Goal { digits: 0, ..goal }, "digits"),
        (Goal { probability: 1.0 - 1e-12, ..goal }, "most_trials"),
    ] {
        assert_eq!(run.adaptive(refused).expect_err(field).field(), field);
    }
}

/// The parameters of a fitted line are jointly t: a prediction is t with the nine degrees of freedom of the fit, its 95 % interval ±2.262157 u
/// (table of t) and its deviation sqrt(9/7) u.
#[test]
fn a_fitted_line_is_jointly_t() {
    let points: Vec<(f64, f64)> =
        [-5.0, -4.0, -3.0, -2.0, -1.0, 0.0, 1.0, 2.0, 3.0, 4.0, 5.0].map(|x| (x, (x * 7.0) % 3.0)).to_vec();
    let line = StraightLine::fit(&points, 20.0).unwrap();
    let mut inputs = Inputs::new();
    let [intercept, slope] = inputs.line("line", &line).unwrap();
    let run = MonteCarlo::new(&inputs, |x| &x[intercept] + &x[slope] * (-17.0), SEED);
    assert_eq!(run.draws(), 2);
    let (value, u) = line.at(3.0).unwrap();
    let summary = run.run(400_000, 0.95).unwrap();
    near(summary.mean, value, 5.0 * u / 632.0, "mean");
    near(summary.standard_deviation, (9.0_f64 / 7.0).sqrt() * u, 0.01 * u, "deviation");
    // five deviations of a quantile: sqrt(.025 .975 / 4e5) / 0.0316
    near(summary.symmetric.lower, value - 2.262_157 * u, 0.04 * u, "lower");
    near(summary.symmetric.upper, value + 2.262_157 * u, 0.04 * u, "upper");
}

#[test]
fn impossible_runs_are_refused() {
    let inputs = four([(); 4].map(|()| Distribution::normal(1.0).unwrap()));
    let run = MonteCarlo::new(&inputs, sum, SEED);
    #[expect(clippy::reversed_empty_ranges, reason = "what is refused")]
    let backward = 3..2;
    assert_eq!(run.part(backward).expect_err("empty").kind(), ErrorKind::OutOfRange);
    assert_eq!(run.part(5..5).expect_err("empty").kind(), ErrorKind::OutOfRange);
    assert_eq!(run.part(0..u64::MAX).expect_err("many").kind(), ErrorKind::TooLarge);
    let root = MonteCarlo::new(&inputs, |x| x[0].sqrt(), SEED).part(0..100).expect_err("a root");
    assert_eq!((root.kind(), root.field()), (ErrorKind::NotFinite, "model"));
    let first_negative = MonteCarlo::new(&inputs, |x| x[0].clone(), SEED).part(0..100).unwrap();
    let trial = first_negative.values().iter().position(|v| *v < 0.0).unwrap();
    assert!(root.reason().ends_with(&format!("trial {trial}")), "{root}");
    assert_eq!(run.run(1, 0.95).expect_err("one").kind(), ErrorKind::MissingField);
    for probability in [0.0, 1.0, -0.5, f64::NAN, 0.001, 0.999] {
        assert_eq!(run.run(100, probability).expect_err("p").field(), "probability", "{probability}");
    }
    let part = |trials| run.part(trials).unwrap();
    let kind = |parts| Part::merged(parts).expect_err("not one run").kind();
    assert_eq!(kind(vec![]), ErrorKind::MissingField);
    assert_eq!(kind(vec![part(0..3), part(4..5)]), ErrorKind::Contradiction);
    assert_eq!(kind(vec![part(0..3), part(2..5)]), ErrorKind::Contradiction);
    let other = MonteCarlo::new(&inputs, sum, 1).part(3..4).unwrap();
    assert_eq!(kind(vec![part(0..3), other]), ErrorKind::Contradiction);
    let evaluation = inputs.evaluate(sum).unwrap();
    let expanded = evaluation.expanded(0.99, Degrees::AsComputed).unwrap();
    let summary = run.run(1000, 0.95).unwrap();
    let error = summary.validate(&evaluation, &expanded, Coverage::Shortest, 1).expect_err("99 against 95");
    assert_eq!((error.kind(), error.field()), (ErrorKind::Contradiction, "probability"));
}
