//! Shapes against values from outside (`tests/reference/shape.py`), and what holds of every shape.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint_tests::named::{hold, shape_row};
use gaugepoint_tests::rows;

/// Published fits, provable shapes, programmes of another solver, refusals: what every host must say.
#[test]
fn vectors_hold() {
    let rows = rows("tests/vectors/shape.csv");
    let mut failed = Vec::new();
    let mut held = 0;
    for r in &rows {
        match std::panic::catch_unwind(|| hold(&r[0], &r[4], shape_row(r))) {
            Ok(n) => held += n,
            Err(e) => failed.push(e.downcast_ref::<String>().cloned().unwrap_or_default()),
        }
    }
    assert!(failed.is_empty(), "{failed:#?}");
    assert!(rows.len() > 120 && held > 250, "{held} comparisons in {} rows", rows.len());
}
