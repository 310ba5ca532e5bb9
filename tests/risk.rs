//! Risks of decisions against JCGM 106 and closed forms.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that panics has failed")]

use gaugepoint::ErrorKind;
use gaugepoint::decision::risk::{
    Guard, Interval, Items, acceptance, acceptance_for_risk, capability, global_risks,
};

fn close(ours: f64, expected: f64, tolerance: f64, what: &str) {
    assert!((ours - expected).abs() <= tolerance, "{what}: {ours} against {expected}");
}

fn upper(limit: f64) -> Interval {
    Interval { lower: None, upper: Some(limit) }
}

fn between(low: f64, high: f64) -> Interval {
    Interval { lower: Some(low), upper: Some(high) }
}

/// JCGM 106:2012, 9.5.4: radial error motion of ball bearings, gamma prior with mean 1 um and deviation 0.5 um, limit 2 um, u 0.25 um.
/// Printed: 4.2 % out of tolerance, consumer's risk 0.8 %; limit 1.67 um for 0.1 %. Digits as in an independent public notebook
/// (0.04238011, 0.00801911, A 1.67182877), producer's risks by quadrature at 40 digits.
#[test]
fn ball_bearings_of_jcgm_106() {
    let items = Items::Gamma { shape: 4.0, scale: 0.25 };
    close(items.above(2.0), 0.042_380_111_991_683_9, 1e-14, "out of tolerance");
    let risks = global_risks(items, 0.25, upper(2.0), upper(2.0)).expect("computed");
    close(risks.consumer, 0.008_019_111_88, 1e-11, "consumer");
    close(risks.producer, 0.017_444_569_2, 1e-10, "producer");
    close(risks.conforming, 1.0 - 0.042_380_111_991_683_9, 1e-14, "conforming");
    let limit = acceptance_for_risk(items, 0.25, upper(2.0), 0.001).expect("solved");
    close(limit.upper.expect("a limit"), 1.671_828_771_6, 1e-9, "acceptance limit");
    let risks = global_risks(items, 0.25, upper(2.0), limit).expect("computed");
    close(risks.consumer, 0.001, 1e-12, "wanted risk");
    close(risks.producer, 0.075_493_876_8, 1e-9, "producer at the limit");
}

/// Both normal: resistors of 1500 ohm, tolerance 0.2, process deviation 0.12, u 0.04 (closed form by quadrature; the inputs resemble an
/// example of JCGM 106 as remembered).
#[test]
fn two_sided_normal() {
    let items = Items::Normal { mean: 1500.0, deviation: 0.12 };
    let tolerance = between(1499.8, 1500.2);
    for (half, consumer, producer) in [
        (0.20, 1.894_221, 3.720_780),
        (0.16, 0.433_407, 11.465_658),
        (0.12, 0.046_863, 24.766_964),
        (0.28, 6.940_461, 0.068_060),
    ] {
        let r =
            global_risks(items, 0.04, tolerance, between(1500.0 - half, 1500.0 + half)).expect("computed");
        close(r.conforming * 100.0, 90.4419, 5e-5, "conforming");
        close(r.consumer * 100.0, consumer, 6e-7, "consumer");
        close(r.producer * 100.0, producer, 6e-7, "producer");
    }
}

/// The 4:1 rule: 95 % of the items in tolerance, u an eighth of the half-width (closed form; the same case is in a public test).
#[test]
fn four_to_one() {
    let deviation = 1.0 / 1.959_963_984_540_054;
    let items = Items::Normal { mean: 0.0, deviation };
    let r = global_risks(items, 0.125, between(-1.0, 1.0), between(-1.0, 1.0)).expect("computed");
    close(r.consumer, 0.008_582_664_802, 1e-11, "consumer");
    close(r.producer, 0.015_536_513_023, 1e-11, "producer");
}

/// Cpk and share outside, [9, 11]: as in a public test of a metrology package.
#[test]
fn capability_of_a_process() {
    for (mean, cpk, outside) in
        [(10.0, 0.83333, 0.01242), (10.5, 0.41667, 0.10574), (12.0, -0.83333, 0.99379)]
    {
        let c = capability(mean, 0.4, between(9.0, 11.0)).expect("computed");
        close(c.cpk, cpk, 5e-6, "Cpk");
        close(c.outside, outside, 5e-6, "outside");
    }
}

/// Closed forms: with a uniform item far wider than u on one limit, both risks are the density times u / sqrt(2 pi).
#[test]
fn uniform_and_triangular_items() {
    let u = 0.001;
    let r =
        global_risks(Items::Uniform { low: 0.0, high: 1.0 }, u, upper(0.5), upper(0.5)).expect("computed");
    let by_hand = u / (2.0 * std::f64::consts::PI).sqrt();
    close(r.consumer, by_hand, 1e-12, "consumer");
    close(r.producer, by_hand, 1e-12, "producer");
    let triangle = Items::Triangular { low: 0.0, mode: 1.0, high: 3.0 };
    // (x - low)^2 / ((high - low) (mode - low)) by hand
    close(triangle.below(0.6), 0.12, 1e-15, "below the mode");
    close(triangle.above(2.0), 1.0 / 6.0, 1e-15, "above the mode");
    let r = global_risks(triangle, u, upper(2.0), upper(2.0)).expect("computed");
    // density 1/3 at the limit, falling on one side as it rises on the other: slope -1/3 adds and takes u^2 / 12
    close(r.consumer, by_hand / 3.0 - u * u / 12.0, 1e-12, "consumer");
    close(r.producer, by_hand / 3.0 + u * u / 12.0, 1e-12, "producer");
}

/// Guard bands by hand: 86.000 to 86.020 with u = 0.001 (U = 0.002).
#[test]
fn acceptance_intervals() {
    let tolerance = between(86.0, 86.02);
    for (guard, low, high) in [
        (Guard::Proven, 86.00165, 86.01835),
        (Guard::Stringent(1.0), 86.002, 86.018),
        (Guard::Stringent(0.5), 86.001, 86.019),
        (Guard::Relaxed(1.0), 85.998, 86.022),
        (Guard::RatioAtLeast(4.0), 86.0, 86.02),
    ] {
        let a = acceptance(tolerance, 0.001, guard).expect("an interval");
        close(a.lower.expect("two-sided"), low, 1e-12, "lower");
        close(a.upper.expect("two-sided"), high, 1e-12, "upper");
    }
    // 0.020 / (2 * 0.002) = 5 to 1 holds 4:1 and not 10:1
    assert_eq!(
        acceptance(tolerance, 0.001, Guard::RatioAtLeast(10.0)).expect_err("too coarse").kind(),
        ErrorKind::OutOfRange
    );
    assert_eq!(
        acceptance(tolerance, 0.006, Guard::Stringent(1.0)).expect_err("nothing left").kind(),
        ErrorKind::OutOfOrder
    );
}

#[test]
fn what_cannot_be_is_refused() {
    let items = Items::Normal { mean: 0.0, deviation: 1.0 };
    let kind = |r: Result<_, gaugepoint::Error>| {
        r.map(|_: gaugepoint::decision::risk::Risks| ()).expect_err("refused").kind()
    };
    assert_eq!(kind(global_risks(items, f64::NAN, upper(1.0), upper(1.0))), ErrorKind::NotFinite);
    assert_eq!(kind(global_risks(items, 0.0, upper(1.0), upper(1.0))), ErrorKind::OutOfRange);
    assert_eq!(kind(global_risks(items, 0.1, between(2.0, 1.0), upper(1.0))), ErrorKind::OutOfOrder);
    assert_eq!(
        kind(global_risks(Items::Gamma { shape: -1.0, scale: 1.0 }, 0.1, upper(1.0), upper(1.0))),
        ErrorKind::OutOfRange
    );
    // a risk larger than the share of bad items cannot be wanted
    let error = acceptance_for_risk(Items::Gamma { shape: 4.0, scale: 0.25 }, 0.25, upper(2.0), 0.5)
        .expect_err("no solution");
    assert_eq!(error.kind(), ErrorKind::OutOfRange);
    assert!(error.accepted().expect("the risks that can be had").upper < 0.05);
}
