//! Monte Carlo and the budget of a clearance: ours alone, at both widths. Against peers: `peers/`.

#![expect(clippy::indexing_slicing, reason = "the models of benches name their own inputs")]

use divan::counter::ItemsCount;
use divan::{Bencher, black_box};
use gaugepoint::measurement::monte_carlo::MonteCarlo;
use gaugepoint::measurement::random::{BLOCK, NormalTable, block_of_uniforms};
use gaugepoint::wide::Width;
use gaugepoint_benches::{clearance, clearance_model, clearance_of_jets, stack};

const TRIALS: u64 = 1 << 17;

fn main() {
    divan::main();
}

fn width(wide: bool) -> Width {
    if wide { Width::detected() } else { Width::baseline() }
}

#[divan::bench(args = [false, true])]
fn uniforms(bencher: Bencher<'_, '_>, wide: bool) {
    let mut column = [0.0; BLOCK];
    bencher
        .counter(ItemsCount::new(BLOCK))
        .bench_local(|| block_of_uniforms(width(wide), black_box(1), 2, 3, black_box(&mut column)));
}

#[divan::bench(args = [false, true])]
fn normals(bencher: Bencher<'_, '_>, wide: bool) {
    let (table, mut column) = (NormalTable::new(), [0.0; BLOCK]);
    bencher
        .counter(ItemsCount::new(BLOCK))
        .bench_local(|| table.block(width(wide), black_box(1), 2, 3, black_box(&mut column)));
}

/// Values of the stack of eight, as a list of operations.
#[divan::bench(args = [false, true])]
fn trials(bencher: Bencher<'_, '_>, wide: bool) {
    let Ok((inputs, model)) = stack() else { return };
    let run = MonteCarlo::of_model(&inputs, &model, 1).with_width(width(wide));
    bencher.counter(ItemsCount::new(TRIALS)).bench(|| run.part(black_box(0..TRIALS)));
}

/// The same as a closure.
#[divan::bench]
fn trials_of_a_closure(bencher: Bencher<'_, '_>) {
    let Ok((inputs, _)) = stack() else { return };
    let run = MonteCarlo::new(&inputs, |x| x.iter().skip(1).fold(x[0].clone(), |sum, next| sum + next), 1);
    bencher.counter(ItemsCount::new(TRIALS)).bench(|| run.part(black_box(0..TRIALS)));
}

/// Values to mean, deviation and coverage intervals.
#[divan::bench(args = [0.95, 0.9973])]
fn summary(bencher: Bencher<'_, '_>, probability: f64) {
    let Ok((inputs, model)) = stack() else { return };
    let part = MonteCarlo::of_model(&inputs, &model, 1).part(0..TRIALS);
    bencher
        .counter(ItemsCount::new(TRIALS))
        .bench(|| part.as_ref().map(|part| part.summary(black_box(probability)).is_ok()));
}

/// Estimate, standard uncertainty and the fifteen contributions of a clearance.
#[divan::bench]
fn budget_of_a_closure(bencher: Bencher<'_, '_>) {
    let Ok(inputs) = clearance() else { return };
    bencher.bench(|| black_box(&inputs).evaluate(clearance_of_jets));
}

#[divan::bench]
fn budget_of_a_model(bencher: Bencher<'_, '_>) {
    let (Ok(inputs), model) = (clearance(), clearance_model()) else { return };
    bencher.bench(|| black_box(&inputs).evaluate(|x| model.jet(x)));
}
