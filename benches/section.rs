//! The least clearance of a section.

use divan::{Bencher, black_box};
use gaugepoint::clearance::least::{Arc, EvenHarmonics, Harmonics};

fn main() {
    divan::main();
}

/// Cosines of orders 2, 4, 6: closed form.
#[divan::bench]
fn even(bencher: Bencher<'_, '_>) {
    let section = EvenHarmonics::new(0.03, 0.06, -0.008, 0.001).ok();
    bencher.bench(|| black_box(section).map(|s| s.least()));
}

/// A bore of orders 1 to `order` around an oval piston.
fn section(order: usize) -> Option<Harmonics> {
    let mut cos =
        [0.0004, 0.052, 0.0021, -0.0064, 0.0007, 0.0013, 0.0004, -0.0002, 0.0003, 0.0002, 0.0001, 0.00005];
    let sin =
        [0.0003, 0.0031, -0.0012, 0.0017, 0.0009, -0.0004, 0.0001, 0.0003, 0.0001, -0.0001, 0.0001, 0.00002];
    cos[1] = -cos[1];
    Harmonics::new(0.06, cos.get(..order)?, sin.get(..order)?).ok()
}

/// Any harmonics, the whole turn.
#[divan::bench(args = [4, 6, 8, 12])]
fn general(bencher: Bencher<'_, '_>, order: usize) {
    let section = section(order);
    bencher.bench(|| black_box(section).map(|s| s.least()));
}

/// The half around the major thrust side.
#[divan::bench]
fn half(bencher: Bencher<'_, '_>) {
    let section = section(6);
    let arcs = [Arc::new(270.0, 450.0)].into_iter().flatten().collect::<Vec<_>>();
    bencher.bench(|| black_box(section).map(|s| s.least_over(&arcs)));
}

/// The bound without a search.
#[divan::bench]
fn bound(bencher: Bencher<'_, '_>) {
    let section = section(6);
    bencher.bench(|| black_box(section).map(|s| s.lower_bound()));
}
