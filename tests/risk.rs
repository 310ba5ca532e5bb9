//! Risks of decisions against JCGM 106 and closed forms.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::ErrorKind;
use gaugepoint::decision::risk::{Interval, Items, acceptance_for_risk, global_risks};
use gaugepoint_tests::named::{hold, risk_row};
use gaugepoint_tests::rows;

fn close(ours: f64, expected: f64, tolerance: f64, what: &str) {
    assert!((ours - expected).abs() <= tolerance, "{what}: {ours} against {expected}");
}

fn upper(limit: f64) -> Interval {
    Interval { lower: None, upper: Some(limit) }
}

/// Published risks, closed forms, refusals: what every host must say.
#[test]
fn vectors_hold() {
    let rows = rows("tests/vectors/risk.csv");
    let held: usize = rows.iter().map(|r| hold(&r[0], &r[6], risk_row(r))).sum();
    assert!(rows.len() > 35 && held > 60, "{held} comparisons in {} rows", rows.len());
}

/// The limit for a wanted risk has that risk.
#[test]
fn the_wanted_risk_is_what_the_limit_gives() {
    let items = Items::Gamma { shape: 4.0, scale: 0.25 };
    let limit = acceptance_for_risk(items, 0.25, upper(2.0), 0.001).expect("solved");
    let risks = global_risks(items, 0.25, upper(2.0), limit).expect("computed");
    close(risks.consumer, 0.001, 1e-12, "wanted risk");
}

#[test]
fn shares_below_and_above() {
    // P(4, 8) by quadrature at 40 digits
    close(
        Items::Gamma { shape: 4.0, scale: 0.25 }.above(2.0),
        0.042_380_111_991_683_9,
        1e-14,
        "out of tolerance",
    );
    let triangle = Items::Triangular { low: 0.0, mode: 1.0, high: 3.0 };
    // (x - low)^2 / ((high - low) (mode - low)) by hand
    close(triangle.below(0.6), 0.12, 1e-15, "below the mode");
    close(triangle.above(2.0), 1.0 / 6.0, 1e-15, "above the mode");
}

#[test]
fn a_refused_risk_names_those_that_can_be_had() {
    // a risk larger than the share of bad items cannot be wanted
    let items = Items::Gamma { shape: 4.0, scale: 0.25 };
    let error = acceptance_for_risk(items, 0.25, upper(2.0), 0.5).expect_err("no solution");
    assert_eq!(error.kind(), ErrorKind::OutOfRange);
    assert!(error.accepted().expect("the risks that can be had").upper < 0.05);
}
