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
use gaugepoint::measurement::statistics::{one_way, sample};
use gaugepoint::measurement::study::{Crossed, D2, D2_STAR, Pooling};
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

/// NIST StRD one-way sets SmLs01 to SmLs03 by construction, SmLs07 (the same plus 1e12) against the ratio of the
/// data as doubles hold them, 21.0008118878188: 4.4 digits of the certified 21 are all that the data carry.
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
    let f = one_way(&small(10, 1e12)).expect("computed").f.expect("a ratio");
    close(f, 21.000_811_887_818_8, 1e-12, "SmLs07");
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
    for (k, (d2, d2_star)) in D2.iter().zip(D2_STAR).enumerate() {
        let m = i32::try_from(k + 2).expect("small");
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
        assert!((first - d2).abs() < 2e-6, "d2 of {m}: {first} against {d2}");
        assert!((second.sqrt() - d2_star).abs() < 2e-6, "d2* of {m}: {} against {d2_star}", second.sqrt());
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
