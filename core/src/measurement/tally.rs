//! What a run comes to without its values being kept: sums, counts, and those values that can be ends of its intervals.

use super::distribution::{coverage, refused};
use super::monte_carlo::{Interval, Summary};
use super::random::BLOCK;
use super::statistics::{self, as_number};
use crate::error::Error;

/// Sums and squares of the values of a block, from a shift.
type Sums = [f64; 2];

/// Blocks whose sums are added to each other before they are added to those of other blocks; parts of a run on different threads are cut
/// between such spans, so that the order of every addition is that of the trials.
pub(super) const SPAN: usize = 16 * BLOCK;

/// Values that are looked at side by side.
const LANES: usize = 16;

/// A place near the values, from the first block of them: sums of distances from there keep their digits.
pub(super) fn shift(values: &[f64]) -> f64 {
    let block = values.get(..BLOCK).unwrap_or(values);
    let first = block.first().copied().unwrap_or_default();
    first + block.iter().map(|v| v - first).sum::<f64>() / as_number(block.len().max(1))
}

/// Sums over a block in a stated order that vectors can follow: value `i` goes to sum `i mod 16`, then the sixteen are added in order.
#[inline(always)]
fn of_block(values: &[f64], shift: f64) -> Sums {
    let (mut sums, mut squares) = ([0.0; LANES], [0.0; LANES]);
    let (chunks, rest) = values.as_chunks::<LANES>();
    for chunk in chunks {
        for ((value, sum), square) in chunk.iter().zip(&mut sums).zip(&mut squares) {
            let from_shift = value - shift;
            *sum += from_shift;
            *square += from_shift * from_shift;
        }
    }
    for ((value, sum), square) in rest.iter().zip(&mut sums).zip(&mut squares) {
        let from_shift = value - shift;
        *sum += from_shift;
        *square += from_shift * from_shift;
    }
    [sums.iter().sum(), squares.iter().sum()]
}

fn added(to: &mut Sums, of: Sums) {
    for (to, of) in to.iter_mut().zip(of) {
        *to += of;
    }
}

/// Mean and standard deviation of at least two values.
pub(super) fn moments(values: &[f64]) -> (f64, f64) {
    let shift = shift(values);
    let span = |values: &[f64]| {
        let mut sums = Sums::default();
        values.chunks(BLOCK).for_each(|block| added(&mut sums, of_block(block, shift)));
        sums
    };
    of_spans(shift, as_number(values.len()), values.chunks(SPAN).map(span))
}

/// The same from the sums of all spans, which are added with their rounding carried along.
fn of_spans(shift: f64, count: f64, spans: impl Iterator<Item = Sums> + Clone) -> (f64, f64) {
    let sum = statistics::sum(spans.clone().map(|[sum, _]| sum));
    let squares = statistics::sum(spans.map(|[_, squares]| squares));
    let variance = (squares - sum * sum / count) / (count - 1.0);
    (shift + sum / count, libm::fmax(variance, 0.0).sqrt())
}

/// Number of values inside an interval: the whole number nearest `p M`.
pub(super) fn inside(probability: f64, count: usize) -> Result<usize, Error> {
    let probability = coverage("probability", probability)?;
    let inside = whole((probability * as_number(count) + 0.5).floor());
    if inside == 0 || inside >= count {
        return Err(refused("probability", probability, "too few trials for this probability", 0.0, 1.0));
    }
    Ok(inside)
}

/// The symmetric and the shortest interval from the values that can be lower and upper ends; none when they are too few.
pub(super) fn intervals(
    mut low: Vec<f64>,
    mut high: Vec<f64>,
    outside: usize,
) -> Option<(Interval, Interval)> {
    let last = outside.checked_sub(1)?;
    if low.len() < outside || high.len() < outside {
        return None;
    }
    // the few, then their order
    low.select_nth_unstable_by(last, f64::total_cmp);
    low.truncate(outside);
    let first = high.len() - outside;
    high.select_nth_unstable_by(first, f64::total_cmp);
    high.drain(..first);
    for tail in [&mut low, &mut high] {
        tail.sort_unstable_by(f64::total_cmp);
    }
    let pairs = || low.iter().zip(&high).map(|(lower, upper)| Interval { lower: *lower, upper: *upper });
    let shortest = pairs().reduce(|best, next| if next.width() < best.width() { next } else { best })?;
    // the r-th pair, r counted from 1 as half the values outside, rounded up
    Some((pairs().nth(outside.div_ceil(2) - 1)?, shortest))
}

/// Values that are looked at to guess where the tails begin.
const GLANCE: usize = 4096;

/// Where the `outside` smallest and largest of so many values begin, or a little further inside, by a sample of them: so the few are found
/// without an order of the many.
fn edges(mut sample: Vec<f64>, outside: usize, count: usize) -> (f64, f64) {
    sample.sort_unstable_by(f64::total_cmp);
    // rank in the sample: the expected one, and six of its deviations more
    let expected = as_number(outside) * as_number(sample.len()) / as_number(count);
    let rank = whole(expected + 6.0 * expected.sqrt() + 6.0);
    let from_below = sample.get(rank).copied().unwrap_or(f64::INFINITY);
    (from_below, sample.iter().rev().nth(rank).copied().unwrap_or(f64::NEG_INFINITY))
}

/// The symmetric and the shortest interval of values, with `inside` of them.
pub(super) fn intervals_of(values: &[f64], inside: usize) -> Option<(Interval, Interval)> {
    let outside = values.len() - inside;
    let sample = values.iter().step_by(values.len().div_ceil(GLANCE)).copied().collect();
    let (from_below, from_above) = edges(sample, outside, values.len());
    let which = |which: &dyn Fn(f64) -> bool| values.iter().copied().filter(|v| which(*v)).collect();
    intervals(which(&|v| v <= from_below), which(&|v| v >= from_above), outside)
        // with too few in a tail the guess has failed
        .or_else(|| intervals(values.to_vec(), values.to_vec(), outside))
}

/// What is asked of a run, and what its first trials say of it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Plan {
    trials: usize,
    probability: f64,
    outside: usize,
    limits: (f64, f64),
    shift: f64,
    edges: (f64, f64),
}

impl Plan {
    /// How many trials are looked at first; none when a run is so short that its values may as well be kept.
    pub(super) fn glance(trials: u64) -> Option<u64> {
        let glance = GLANCE as u64;
        (trials >= 8 * glance).then(|| (trials / 256).clamp(glance, 8 * glance))
    }

    pub(super) fn new(
        first: &[f64],
        trials: usize,
        probability: f64,
        limits: (f64, f64),
    ) -> Result<Self, Error> {
        let outside = trials - inside(probability, trials)?;
        let edges = edges(first.to_vec(), outside, trials);
        Ok(Plan { trials, probability, outside, limits, shift: shift(first), edges })
    }
}

/// What the trials of a range have come to.
#[derive(Debug)]
pub(super) struct Digest {
    plan: Plan,
    spans: Vec<Sums>,
    /// blocks in the last span
    blocks: usize,
    low: Vec<f64>,
    high: Vec<f64>,
    below: u64,
    above: u64,
}

impl Digest {
    pub(super) fn new(plan: Plan) -> Self {
        let (spans, low, high) = (Vec::new(), Vec::new(), Vec::new());
        Digest { plan, spans, blocks: 0, low, high, below: 0, above: 0 }
    }

    /// Adds the values of a block.
    #[inline(always)]
    pub(super) fn add(&mut self, values: &[f64]) {
        let sums = of_block(values, self.plan.shift);
        match self.spans.last_mut() {
            Some(span) if self.blocks < SPAN / BLOCK => added(span, sums),
            _ => {
                self.blocks = 0;
                // sums begin with zero
                self.spans.push(sums.map(|sum| 0.0 + sum));
            }
        }
        self.blocks += 1;
        let (lower, upper) = self.plan.limits;
        self.below += count(values, |v| v < lower);
        self.above += count(values, |v| v > upper);
        let (from_below, from_above) = self.plan.edges;
        let (chunks, rest) = values.as_chunks::<LANES>();
        for chunk in chunks {
            // most chunks have none
            if chunk.iter().fold(false, |any, v| any | (*v <= from_below) | (*v >= from_above)) {
                self.keep(chunk);
            }
        }
        self.keep(rest);
    }

    fn keep(&mut self, values: &[f64]) {
        let (from_below, from_above) = self.plan.edges;
        self.low.extend(values.iter().filter(|v| **v <= from_below));
        self.high.extend(values.iter().filter(|v| **v >= from_above));
    }

    /// Results of ranges that follow each other, each but the last of whole spans; none when too few values were kept.
    pub(super) fn concluded(plan: &Plan, digests: Vec<Digest>) -> Option<(Summary, [u64; 2])> {
        let (mut spans, mut low, mut high, mut counts) = (Vec::new(), Vec::new(), Vec::new(), [0; 2]);
        for digest in digests {
            spans.extend(digest.spans);
            low.extend(digest.low);
            high.extend(digest.high);
            counts[0] += digest.below;
            counts[1] += digest.above;
        }
        let (symmetric, shortest) = intervals(low, high, plan.outside)?;
        let (mean, standard_deviation) = of_spans(plan.shift, as_number(plan.trials), spans.into_iter());
        let (trials, probability) = (plan.trials as u64, plan.probability);
        Some((Summary { trials, mean, standard_deviation, probability, symmetric, shortest }, counts))
    }
}

/// Number of values of a kind.
#[inline(always)]
pub(super) fn count(values: &[f64], which: impl Fn(f64) -> bool) -> u64 {
    values.iter().fold(0, |count, v| count + u64::from(which(*v)))
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "whole and not negative; saturates"
)]
pub(super) fn whole(value: f64) -> usize {
    value as usize
}
