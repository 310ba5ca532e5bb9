//! The whole six-cylinder job, and the flat functions.

use divan::{Bencher, black_box};
use gaugepoint::{Document, Options, assess, assess_json, flat};

const JOB: &str = include_str!("../core/examples/pump_six.json");

fn main() {
    divan::main();
}

/// JSON to JSON.
#[divan::bench(args = [false, true])]
fn job(bencher: Bencher<'_, '_>, working: bool) {
    bencher.bench(|| assess_json(black_box(JOB), Options { working }));
}

/// JSON to the document alone.
#[divan::bench]
fn read(bencher: Bencher<'_, '_>) {
    bencher.bench(|| Document::from_json(black_box(JOB)));
}

/// The document to the report alone.
#[divan::bench(args = [false, true])]
fn compute(bencher: Bencher<'_, '_>, working: bool) {
    let document = Document::from_json(JOB).ok();
    bencher.bench(|| document.as_ref().map(|d| assess(black_box(d), Options { working })));
}

/// One running clearance.
#[divan::bench]
fn running_clearance(bencher: Bencher<'_, '_>) {
    bencher.bench(|| {
        flat::running_clearance_mm(
            black_box(86.035),
            black_box(110.0),
            black_box(11.4e-6),
            black_box(86.0),
            black_box(120.0),
            black_box(20.5e-6),
        )
    });
}
