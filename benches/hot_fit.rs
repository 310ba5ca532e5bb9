//! Timings of hot fits: the smallest clearance of a skirt, first contact and a map. Invented sizes.

use divan::{Bencher, black_box};
use gaugepoint::clearance::hot::Position;
use gaugepoint::growth::field::Scenario;
use gaugepoint_benches::{ANGLES, BORES, HEIGHTS, evenly, hot_fit};

fn main() {
    divan::main();
}

#[divan::bench(args = BORES)]
fn smallest(bencher: Bencher<'_, '_>, kind: &str) {
    let Ok(fit) = hot_fit(kind) else { return };
    bencher.bench(|| black_box(&fit).smallest_at(0, Position::Anywhere));
}

#[divan::bench(args = BORES)]
fn onset(bencher: Bencher<'_, '_>, kind: &str) {
    let Ok(fit) = hot_fit(kind) else { return };
    bencher.bench(|| black_box(&fit).onset(Scenario::PistonAlone, 0.0));
}

#[divan::bench(args = BORES)]
fn map(bencher: Bencher<'_, '_>, kind: &str) {
    let Ok(fit) = hot_fit(kind) else { return };
    let (angles, heights) = (evenly(360.0, ANGLES), evenly(50.0, HEIGHTS));
    let mut out = vec![0.0; ANGLES * HEIGHTS];
    bencher.bench_local(|| black_box(&fit).map_into(&angles, &heights, Position::Anywhere, &mut out));
}
