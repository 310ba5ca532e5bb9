//! Shapes against values from outside (`tests/reference/shape.py`), and what holds of every shape.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint_tests::named::{Named, hold, shape_row};
use gaugepoint_tests::pistons::piston_row;
use gaugepoint_tests::rows;

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
