//! Statistics and gauge studies against certified and published values.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]
#![allow(clippy::disallowed_methods, reason = "the tests' own arithmetic is compared with a tolerance")]

use gaugepoint::ErrorKind;
use gaugepoint::measurement::bias::linearity;
use gaugepoint::measurement::chart::{Constants, Kind, control_chart};
use gaugepoint::measurement::statistics::{one_way, sample};
use gaugepoint::measurement::study::{Crossed, Pooling};
use gaugepoint_tests::named::{hold, study_row};
use gaugepoint_tests::rows;

fn close(ours: f64, expected: f64, relative: f64, what: &str) {
    assert!(((ours - expected) / expected).abs() <= relative, "{what}: {ours:e} against {expected:e}");
}

/// NIST StRD univariate sets NumAcc2 to NumAcc4, by construction; the deviations of 3 and 4 are the exact ones of the data as
/// doubles hold them (rational arithmetic): 9.5 and 8.3 digits of the certified 0.1 are all that the data carry.
#[test]
fn nist_strd_univariate() {
    let alternating = |first: f64, low: f64, high: f64, turns: usize| {
        let mut out = vec![first];
        (0..turns).for_each(|_| out.extend([low, high]));
        out
    };
    let cases = [
        ("NumAcc2", alternating(1.2, 1.1, 1.3, 500), 1.2, 0.1, -0.999),
        (
            "NumAcc3",
            alternating(1_000_000.2, 1_000_000.1, 1_000_000.3, 500),
            1_000_000.2,
            0.100_000_000_034_925,
            -0.999,
        ),
        (
            "NumAcc4",
            alternating(10_000_000.2, 10_000_000.1, 10_000_000.3, 500),
            10_000_000.2,
            0.100_000_000_558_794,
            -0.999,
        ),
    ];
    for (name, values, mean, deviation, correlation) in cases {
        let s = sample(&values).expect("computed");
        close(s.mean, mean, 1e-15, name);
        close(s.standard_deviation, deviation, 5e-15, name);
        close(s.lag_1_correlation, correlation, 1e-9, name);
    }
}

/// NIST StRD one-way sets SmLs01 to SmLs09 by construction. SmLs04 to 06 (the same plus 1e6) and SmLs07 to 09 (plus 1e12) against the exact
/// values of the data as doubles hold them (rational arithmetic): 10 and 4.4 digits of the certified ratios are all that the data carry.
#[test]
fn nist_strd_one_way() {
    let centres = [1.4, 1.3, 1.5, 1.3, 1.5, 1.3, 1.5, 1.3, 1.5];
    let small = |pairs: usize, offset: f64| -> Vec<Vec<f64>> {
        let value = |tenths: f64| offset + tenths / 10.0;
        let group = |c: f64| {
            let c = (c * 10.0).round();
            let mut out = vec![value(c)];
            (0..pairs).for_each(|_| out.extend([value(c - 1.0), value(c + 1.0)]));
            out
        };
        centres.iter().map(|c| group(*c)).collect()
    };
    for (pairs, between, within, f, r2) in [
        (10, 1.68, 1.8, 21.0, 0.482_758_620_689_655),
        (100, 16.08, 18.0, 201.0, 0.471_830_985_915_493),
        (1000, 160.08, 180.0, 2001.0, 0.470_712_773_465_067),
    ] {
        let a = one_way(&small(pairs, 0.0)).expect("computed");
        close(a.between, between, 1e-13, "between");
        close(a.within, within, 1e-13, "within");
        close(a.f.expect("a ratio"), f, 1e-13, "F");
        close(a.r_squared.expect("a share"), r2, 2e-15 * 1e2, "R2");
    }
    for (pairs, offset, f, r2) in [
        (10, 1e6, 21.000_000_000_776_1, 0.482_758_620_698_883),
        (100, 1e6, 201.000_000_012_418, 0.471_830_985_930_889),
        (1000, 1e6, 2_001.000_000_128_83, 0.470_712_773_481_108),
        (10, 1e12, 21.000_811_887_818_8, 0.482_768_274_347_989),
        (100, 1e12, 201.013_004_095_948, 0.471_847_108_335_396),
        (1000, 1e12, 2_001.134_926_220_95, 0.470_729_572_443_813),
    ] {
        let a = one_way(&small(pairs, offset)).expect("computed");
        close(a.f.expect("a ratio"), f, 1e-12, "F");
        close(a.r_squared.expect("a share"), r2, 1e-12, "R2");
    }
}

/// Published studies, certified samples, refusals: what every host must say.
#[test]
fn vectors_hold() {
    let rows = rows("tests/vectors/study.csv");
    let held: usize = rows.iter().map(|r| hold(&r[0], &r[4], study_row(r))).sum();
    assert!(rows.len() > 25 && held > 120, "{held} comparisons in {} rows", rows.len());
}

/// Intervals hold their deviation; those of the repeats are exact and in the vectors.
#[test]
fn intervals_hold_their_deviation() {
    let rows = rows("tests/vectors/study.csv");
    let published = rows.iter().find(|r| r[0] == "published_by_variance").expect("a row");
    let named = study_row(published).expect("computed");
    let of = |name: String| named.iter().find(|(n, _)| *n == name).and_then(|(_, v)| *v).expect("given");
    for component in ["repeatability", "reproducibility", "gauge", "part"] {
        let [low, value, high] = ["lower", "deviation", "upper"].map(|n| of(format!("{component}.{n}")));
        assert!(low < value && value < high, "{component}: {low} {value} {high}");
    }
}

/// The squares of large and small numbers leave the range of a double; the shares and degrees of freedom do not.
#[test]
fn the_unit_does_not_matter() {
    let study = |scale: f64| {
        let readings = [[[10.0, 20.0], [12.0, 22.5]], [[14.0, 24.0], [16.0, 26.0]]];
        let scaled = readings.map(|a| a.map(|t| t.map(|v: f64| v * scale).to_vec()).to_vec());
        Crossed::new(scaled.to_vec()).expect("balanced").by_variance(Pooling::Never).expect("computed")
    };
    let plain = study(1.0);
    // powers of two, so that nothing is rounded
    for scale in [2.0_f64.powi(300), 2.0_f64.powi(-300)] {
        let scaled = study(scale);
        assert_eq!(scaled.gauge.of_total.to_bits(), plain.gauge.of_total.to_bits());
        let [of_scaled, of_plain] = [&scaled, &plain].map(|s| s.part.interval.expect("an interval"));
        assert_eq!((of_scaled.0 / scale).to_bits(), of_plain.0.to_bits());
        assert_eq!((of_scaled.1 / scale).to_bits(), of_plain.1.to_bits());
    }
}

/// d2 and d3 of the range of m normal values by integration over the distribution of the range, in the test's own arithmetic:
/// `E R = integral of 1 - Phi^m - (1 - Phi)^m`, `E R^2 = 2 integral over x < y of ...`.
#[test]
fn constants_of_the_range() {
    let cdf = |x: f64| libm::erfc(-x / 2.0_f64.sqrt()) / 2.0;
    let density = |x: f64| (-x * x / 2.0).exp() / (2.0 * std::f64::consts::PI).sqrt();
    for size in 2..=25 {
        let Constants { d2, d3, .. } = Constants::of(size).expect("constants");
        let m = i32::try_from(size).expect("small");
        // P(R > w) = 1 - m * integral of phi(x) (Phi(x + w) - Phi(x))^(m-1) dx; moments of R by parts
        let step = 0.02;
        let tail = |w: f64| {
            let inner = (-450..450).map(|i| f64::from(i) * step);
            1.0 - f64::from(m)
                * step
                * inner.map(|x| density(x) * (cdf(x + w) - cdf(x)).powi(m - 1)).sum::<f64>()
        };
        // Simpson's rule over 0 to 10
        let points: Vec<(f64, f64)> = (0..=500).map(|i| f64::from(i) * step).map(|w| (w, tail(w))).collect();
        let simpson = |f: &dyn Fn(f64, f64) -> f64| {
            let weight = |i: usize| {
                if i == 0 || i == 500 {
                    1.0
                } else if i % 2 == 1 {
                    4.0
                } else {
                    2.0
                }
            };
            step / 3.0 * points.iter().enumerate().map(|(i, (w, p))| weight(i) * f(*w, *p)).sum::<f64>()
        };
        let first = simpson(&|_, p| p);
        let second = simpson(&|w, p| 2.0 * w * p);
        assert!((first - d2).abs() < 2e-9, "d2 of {m}: {first} against {d2}");
        assert!((second - d2 * d2 - d3 * d3).abs() < 2e-8, "d3 of {m}: {second} against {d2} and {d3}");
    }
}

/// What only Rust and Python can pass: C has one array and its counts.
#[test]
fn what_is_not_balanced_is_refused() {
    for values in [
        vec![vec![vec![1.0, 2.0]; 2], vec![vec![1.0, 2.0]; 3]],
        vec![vec![vec![1.0, 2.0]; 2], vec![vec![1.0, 2.0], vec![1.0]]],
        vec![vec![]; 2],
        vec![],
    ] {
        let error = Crossed::new(values).expect_err("refused");
        assert_eq!((error.kind(), error.field()), (ErrorKind::MissingField, "values"));
    }
    let error = one_way(&[vec![1.0, 2.0], vec![]]).expect_err("refused");
    assert_eq!((error.kind(), error.field()), (ErrorKind::MissingField, "groups"));
}

/// The constants of control charts as ISO 7870-2 and ASTM MNL 7 print them (from memory): size, then A2, A3, B3, B4, D3, D4, d2, c4.
#[test]
fn constants_of_charts_are_the_published_ones() {
    let table = [
        (2, [1.880, 2.659, 0.0, 3.267, 0.0, 3.267, 1.128, 0.7979]),
        (3, [1.023, 1.954, 0.0, 2.568, 0.0, 2.575, 1.693, 0.8862]),
        (4, [0.729, 1.628, 0.0, 2.266, 0.0, 2.282, 2.059, 0.9213]),
        (5, [0.577, 1.427, 0.0, 2.089, 0.0, 2.114, 2.326, 0.9400]),
        (6, [0.483, 1.287, 0.030, 1.970, 0.0, 2.004, 2.534, 0.9515]),
        (7, [0.419, 1.182, 0.118, 1.882, 0.076, 1.924, 2.704, 0.9594]),
        (8, [0.373, 1.099, 0.185, 1.815, 0.136, 1.864, 2.847, 0.9650]),
        (9, [0.337, 1.032, 0.239, 1.761, 0.184, 1.816, 2.970, 0.9693]),
        (10, [0.308, 0.975, 0.284, 1.716, 0.223, 1.777, 3.078, 0.9727]),
        (15, [0.223, 0.789, 0.428, 1.572, 0.347, 1.653, 3.472, 0.9823]),
        (20, [0.180, 0.680, 0.510, 1.490, 0.415, 1.585, 3.735, 0.9869]),
        (25, [0.153, 0.606, 0.565, 1.435, 0.459, 1.541, 3.931, 0.9896]),
    ];
    for (size, published) in table {
        let Constants { d2, d3, c4 } = Constants::of(size).expect("constants");
        let root = f64::from(u32::try_from(size).expect("small")).sqrt();
        let (of_range, of_deviation) = (3.0 * d3 / d2, 3.0 * (1.0 - c4 * c4).sqrt() / c4);
        let ours = [
            3.0 / (d2 * root),
            3.0 / (c4 * root),
            (1.0 - of_deviation).max(0.0),
            1.0 + of_deviation,
            (1.0 - of_range).max(0.0),
            1.0 + of_range,
            d2,
            c4,
        ];
        for (k, (ours, published)) in ours.iter().zip(published).enumerate() {
            let half_of_the_last_digit = if k == 7 { 0.000_05 } else { 0.000_5 };
            assert!(
                (ours - published).abs() <= half_of_the_last_digit * 1.05,
                "{size}, {k}: {ours} {published}"
            );
        }
    }
    // E2 of neighbours
    let two = Constants::of(2).expect("constants");
    assert!((3.0 / two.d2 - 2.660).abs() < 0.002);
    for none in [0, 1, 26, usize::MAX] {
        assert_eq!(Constants::of(none), None);
    }
}

/// What only Rust and Python can pass: C has the sizes of groups once.
#[test]
fn every_reference_needs_its_readings() {
    let error = linearity(&[1.0, 2.0, 3.0], &[vec![1.0, 1.0], vec![2.0]], 0.95).expect_err("refused");
    assert_eq!((error.kind(), error.field()), (ErrorKind::Contradiction, "readings"));
    let error = control_chart(&[vec![1.0, 2.0], vec![1.0]], Kind::Ranges).expect_err("refused");
    assert_eq!((error.kind(), error.field()), (ErrorKind::MissingField, "values"));
}
