//! Shapes against values from outside (`tests/reference/shape.py`), and what holds of every shape.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::ErrorKind;
use gaugepoint::shape::curve::Curve;
use gaugepoint::shape::piston::{Points, Reading, Side, Surface, fit_surface};
use gaugepoint_tests::named::{Named, hold, shape_row};
use gaugepoint_tests::pistons::piston_row;
use gaugepoint_tests::rows;
use proptest::prelude::*;

/// Holds every row of a file; gives the numbers of rows and of comparisons.
fn held(file: &str, call: fn(&[String]) -> Result<Named, gaugepoint::Error>) -> (usize, usize) {
    let rows = rows(file);
    let mut failed = Vec::new();
    let mut held = 0;
    for r in &rows {
        match std::panic::catch_unwind(|| hold(&r[0], &r[4], call(r))) {
            Ok(n) => held += n,
            Err(e) => failed.push(e.downcast_ref::<String>().cloned().unwrap_or_default()),
        }
    }
    assert!(failed.is_empty(), "{failed:#?}");
    (rows.len(), held)
}

/// Published fits, provable shapes, programmes of another solver, refusals: what every host must say.
#[test]
fn vectors_hold() {
    let (rows, held) = held("tests/vectors/shape.csv", shape_row);
    assert!(rows > 120 && held > 250, "{held} comparisons in {rows} rows");
}

/// Forms of pistons by SciPy and NumPy, closed forms, refusals.
#[test]
fn pistons_hold() {
    let (rows, held) = held("tests/vectors/piston.csv", piston_row);
    assert!(rows > 130 && held > 300, "{held} comparisons in {rows} rows");
}

/// Rows at rising places.
fn table() -> impl Strategy<Value = (Vec<f64>, Vec<f64>)> {
    prop::collection::vec((0.1..30.0, -1.0..1.0), 2..9).prop_map(|rows| {
        let mut place = 0.0;
        let step = |(width, value): (f64, f64)| {
            place += width;
            (place, value)
        };
        rows.into_iter().map(step).unzip()
    })
}

proptest! {
    /// Fritsch and Butland 1984: between two rows the curve stays between their values and does not turn round.
    #[test]
    fn interpolation_keeps_shape((places, values) in table()) {
        let curve = Curve::through(&places, &values).unwrap();
        for (place, value) in places.iter().zip(&values) {
            prop_assert!((curve.at(*place).unwrap() - value).abs() < 1e-13);
        }
        for (x, y) in places.windows(2).zip(values.windows(2)) {
            let inside: Vec<f64> =
                (0..=64).map(|k| curve.at(x[0] + (x[1] - x[0]) * f64::from(k) / 64.0).unwrap()).collect();
            let (low, high) = (y[0].min(y[1]), y[0].max(y[1]));
            prop_assert!(inside.iter().all(|v| *v >= low - 1e-13 && *v <= high + 1e-13), "{inside:?}");
            let way = (y[1] - y[0]).signum();
            prop_assert!(inside.windows(2).all(|v| (v[1] - v[0]) * way >= -1e-13), "{inside:?}");
        }
    }

    /// The sum of two curves is the sum of their values, whatever the rows of each.
    #[test]
    fn sums_of_curves((a, b) in (table(), table()), share in 0.0..1.0, factor in -2.0..2.0) {
        let (first, second) = (Curve::through(&a.0, &a.1).unwrap(), Curve::through(&b.0, &b.1).unwrap());
        let (low, high) = (a.0[0].max(b.0[0]), first.range().1.min(second.range().1));
        let sum = first.plus(factor, &second);
        prop_assert_eq!(sum.is_ok(), low < high);
        if let Ok(sum) = sum {
            let place = low + (high - low) * share;
            let expected = first.at(place).unwrap() + factor * second.at(place).unwrap();
            prop_assert!((sum.at(place).unwrap() - expected).abs() < 1e-11);
        }
    }
}

/// Sides that differ by 0.01 on the pin axis in the middle of the skirt only.
/// Straight lines through rows, by hand; beyond them the outer ones go on.
#[test]
fn lines_go_through_their_rows() {
    let curve = Curve::lines(&[0.0, 2.0, 3.0], &[1.0, 2.0, 0.0]).unwrap();
    for (place, by_hand) in [(0.0, 1.0), (1.0, 1.5), (2.0, 2.0), (2.25, 1.5), (3.0, 0.0), (3.5, -1.0)] {
        assert!((curve.value(place) - by_hand).abs() < 1e-15, "{place}: {}", curve.value(place));
    }
    assert_eq!(curve.range(), (0.0, 3.0));
    let error = Curve::lines(&[0.0, 2.0, 2.0], &[1.0, 2.0, 0.0]).unwrap_err();
    assert_eq!((error.kind(), error.field()), (ErrorKind::OutOfOrder, "places/2"));
    assert_eq!(Curve::lines(&[], &[]).unwrap_err().kind(), ErrorKind::MissingField);
}

#[test]
fn sides_must_meet_on_the_pin_axis() {
    let through = |values: &[f64]| Curve::through(&[0.0, 20.0, 40.0], values).unwrap();
    let side = |barrel: &[f64]| Side {
        barrel: through(barrel),
        ovality: Curve::constant(0.1),
        fourth: Curve::constant(0.0),
    };
    let even = side(&[0.0, 0.0, 0.0]);
    assert!(Surface::of_sides("skirt", 0.0, 40.0, even.clone(), even.clone()).is_ok());
    let error = Surface::of_sides("skirt", 0.0, 40.0, side(&[0.0, 0.01, 0.0]), even).unwrap_err();
    assert_eq!((error.kind(), error.field()), (ErrorKind::Contradiction, "minor_thrust"));
    assert!((error.refused_value().unwrap() - 0.01).abs() < 1e-15 && error.reason().contains("height 20 mm"));
}

/// The stated uncertainty of a fit is the scatter of many fits about the known truth: diameter 86, ovality 0.3, double ovality 0.04, eight
/// axes; noise of one micrometre in each reading. The standard deviation of 4000 trials is known to 1.1 %.
#[test]
fn uncertainty_of_a_fit_is_the_scatter_of_fits() {
    let angles: Vec<f64> = (0..8).map(|k| 22.5 * f64::from(k)).collect();
    let heights = vec![10.0; 8];
    let truth: Vec<f64> = angles
        .iter()
        .map(|a| {
            let t = a * core::f64::consts::PI / 180.0;
            86.0 - 0.15 * (1.0 - libm::cos(2.0 * t)) + 0.02 * (1.0 - libm::cos(4.0 * t))
        })
        .collect();
    // the sum of twelve uniform numbers less six has mean 0 and standard deviation 1
    let mut state = 7_u64;
    let mut noise = || {
        let mut uniform = || {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            f64::from(u32::try_from(state >> 32).unwrap()) / 4_294_967_296.0
        };
        (0..12).fold(-6.0, |sum, _| sum + uniform()) * 0.001
    };
    let (trials, known) = (4000, [86.0, 0.3, 0.04]);
    let (mut squares, mut stated) = ([0.0; 3], [0.0; 3]);
    for _ in 0..trials {
        let values: Vec<f64> = truth.iter().map(|d| d + noise()).collect();
        let points = Points {
            heights_mm: &heights,
            angles_deg: &angles,
            values_mm: &values,
            reading: Reading::Diameters,
            uncertainty_mm: None,
        };
        let station = fit_surface(&points, true).unwrap().stations[0];
        let found = [station.diameter_mm, station.ovality_mm, station.double_ovality_mm.unwrap()];
        for k in 0..3 {
            let (error, u) = (found[k].value - known[k], found[k].uncertainty.unwrap());
            squares[k] += error * error / f64::from(trials);
            stated[k] += u * u / f64::from(trials);
        }
    }
    for k in 0..3 {
        // three standard deviations of the ratio: 1.1 % of the trials, 0.7 % of the mean of the stated squares
        assert!((squares[k] / stated[k]).sqrt() - 1.0 < 0.04, "{squares:?} {stated:?}");
        assert!(1.0 - (squares[k] / stated[k]).sqrt() < 0.04, "{squares:?} {stated:?}");
    }
}

/// In C there is one count for all three.
#[test]
fn as_many_angles_and_values_as_heights() {
    let of = |angles_deg: &[f64], values_mm: &[f64]| {
        let heights_mm = &[8.0, 8.0];
        let (reading, uncertainty_mm) = (Reading::Diameters, None);
        let error =
            fit_surface(&Points { heights_mm, angles_deg, values_mm, reading, uncertainty_mm }, false);
        let error = error.unwrap_err();
        (error.kind(), error.field().to_owned())
    };
    assert_eq!(of(&[0.0], &[86.0, 86.0]), (ErrorKind::Contradiction, "angles_deg".to_owned()));
    assert_eq!(of(&[0.0, 90.0], &[86.0]), (ErrorKind::Contradiction, "values_mm".to_owned()));
}
