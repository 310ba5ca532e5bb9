//! Clean-up of worn bores against values from outside (`tests/reference/clean_up.py`), and what holds of every wall.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::ErrorKind;
use gaugepoint::plan::clean_up::{
    Allowance, BarAxis, CleanUp, RadiusUncertainty, WallPoint, WornWall, clean_up, largest_by_walls,
    walls_left,
};
use gaugepoint_tests::named::{clean_up_row, hold};
use gaugepoint_tests::rows;
use proptest::prelude::*;

/// Closed forms, SLSQP and least squares of SciPy, refusals.
#[test]
fn vectors_hold() {
    let rows = rows("tests/vectors/clean_up.csv");
    let held: usize = rows.iter().map(|r| hold(&r[0], &r[4], clean_up_row(r))).sum();
    assert!(rows.len() > 50 && held > 90, "{held} comparisons in {} rows", rows.len());
}

/// In C there is one count for all three.
#[test]
fn as_many_depths_and_radii_as_angles() {
    let refused = |depths_mm: &[f64], radii_mm: &[f64]| {
        let wall = WornWall { angles_deg: &[0.0, 90.0, 180.0], depths_mm, radii_mm };
        let error = clean_up(&wall, BarAxis::Original, &BARE, &EXACT).unwrap_err();
        (error.kind(), error.field().to_owned())
    };
    assert_eq!(refused(&[30.0; 4], &[43.0; 3]), (ErrorKind::Contradiction, "depths_mm".to_owned()));
    assert_eq!(refused(&[30.0; 3], &[43.0; 4]), (ErrorKind::Contradiction, "radii_mm".to_owned()));
}

const BARE: Allowance = Allowance { centring_mm: 0.0, stock_mm: 0.0 };
const EXACT: RadiusUncertainty = RadiusUncertainty { each_mm: 0.0, common_mm: 0.0 };
const MIDDLE: f64 = 60.0;

fn best(points: &[(f64, f64, f64)], shift_mm: f64, tilt: f64) -> CleanUp {
    let column = |of: fn(&(f64, f64, f64)) -> f64| -> Vec<f64> { points.iter().map(of).collect() };
    let (angles_deg, depths_mm, radii_mm) = (column(|p| p.0), column(|p| p.1), column(|p| p.2));
    let wall = WornWall { angles_deg: &angles_deg, depths_mm: &depths_mm, radii_mm: &radii_mm };
    clean_up(&wall, BarAxis::Best { shift_mm, tilt }, &BARE, &EXACT).unwrap()
}

/// Diameter about an axis, by the definition.
fn about(points: &[(f64, f64, f64)], [x, y, p, q]: [f64; 4]) -> f64 {
    let distance = |(angle, depth, radius): &(f64, f64, f64)| {
        let (a, below) = (angle.to_radians(), depth - MIDDLE);
        libm::hypot(radius * libm::cos(a) - x - p * below, radius * libm::sin(a) - y - q * below)
    };
    2.0 * points.iter().map(distance).fold(0.0, f64::max)
}

/// Points of a wall at three depths, of any form within a tenth of a millimetre.
fn wall() -> impl Strategy<Value = Vec<(f64, f64, f64)>> {
    prop::collection::vec((0.0..360.0, 0..3u8, 42.95..43.05), 3..40).prop_map(|points| {
        let mut points: Vec<(f64, f64, f64)> =
            points.into_iter().map(|(a, d, r)| (a, 10.0 + 50.0 * f64::from(d), r)).collect();
        // the middle of the depths is the same in all
        points.extend([(0.0, 10.0, 42.9), (0.0, 110.0, 42.9)]);
        points
    })
}

proptest! {
    /// No allowed axis does better, the bound is below, and the axis is one that is allowed and needs what is told.
    #[test]
    fn nothing_beats_the_best(
        points in wall(),
        shift in 0.0..0.2,
        tilt in 0.0..0.002,
        others in prop::collection::vec((0.0..1.0, 0.0..360.0, 0.0..1.0, 0.0..360.0), 50),
    ) {
        let found = best(&points, shift, tilt);
        prop_assert!(found.least_mm <= found.diameter_mm && found.diameter_mm - found.least_mm <= 2e-9);
        prop_assert!(libm::hypot(found.bar.x_mm, found.bar.y_mm) <= shift * (1.0 + 1e-12));
        prop_assert!(libm::hypot(found.bar.slope_x, found.bar.slope_y) <= tilt * (1.0 + 1e-12));
        let own = [found.bar.x_mm, found.bar.y_mm, found.bar.slope_x, found.bar.slope_y];
        prop_assert!((about(&points, own) - found.diameter_mm).abs() < 1e-11);
        let shares: f64 = found.held_by.iter().map(|h| h.share).sum();
        prop_assert!((shares - 1.0).abs() < 1e-9);
        for (r, a, t, b) in others {
            let turned = |size: f64, angle: f64| (size * libm::cos(angle.to_radians()), size * libm::sin(angle.to_radians()));
            let ((x, y), (p, q)) = (turned(r * shift, a), turned(t * tilt, b));
            prop_assert!(about(&points, [x, y, p, q]) >= found.least_mm - 1e-11);
        }
    }

    /// More freedom never asks for more metal, and a wider bore leaves less wall everywhere.
    #[test]
    fn freedom_saves_metal(points in wall(), shift in 0.0..0.1, tilt in 0.0..0.001) {
        let (fixed, free) = (best(&points, 0.0, 0.0), best(&points, shift, tilt));
        prop_assert!(free.diameter_mm <= fixed.diameter_mm);
        prop_assert!(best(&points, shift * 2.0, tilt).diameter_mm <= free.diameter_mm + 2e-9);
        let walls: Vec<WallPoint> = points
            .iter()
            .map(|(angle_deg, depth_mm, radius_mm)| WallPoint {
                angle_deg: *angle_deg,
                depth_mm: *depth_mm,
                radius_mm: *radius_mm,
                wall_mm: 5.0,
            })
            .collect();
        let left = |more: f64| walls_left(&free.bar, free.diameter_mm + more, &walls).unwrap();
        // the largest bore leaves the least wall at one place and more elsewhere
        let largest = largest_by_walls(&free.bar, 4.0, &walls).unwrap().unwrap();
        let thinnest = walls_left(&free.bar, largest, &walls).unwrap().into_iter().fold(f64::MAX, f64::min);
        prop_assert!((thinnest - 4.0).abs() < 1e-11);
        prop_assert!(left(0.0).iter().zip(left(0.2)).all(|(a, b)| b < *a && *a <= 5.0 + 1e-9));
    }
}
