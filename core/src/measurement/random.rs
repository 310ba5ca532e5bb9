//! Random numbers by counting: draw `k` of trial `i` is a function of the seed, `i` and `k` alone.
//!
//! Philox4x32-10 turns a counter of four words and a key of two into four words of 32 bits. The key is the seed, low half first. Trials are
//! made in blocks of [`BLOCK`]; a quarter of a block has one word of each call: draw `k` of trial `i` is word `i mod 256 / 64` of the call
//! with the counter `[low half of n, high half of n, k, 0]`, `n = 64 floor(i / 256) + i mod 64`. So any trial can be made anywhere, in any
//! order, and a column of draws is made by vectors of plain 32-bit products. Source: Salmon, Moraes, Dror, Shaw, *Parallel
//! random numbers: as easy as 1, 2, 3*, SC 2011; it passes the BigCrush battery there.
//!
//! A draw is one word, a probability `(n + 1/2) / 2^32`: its steps are 2.3e-10 and the smallest is 1.2e-10, which a normal draw turns into
//! 6.34 standard deviations. That is 64 times finer than one trial among the most that are kept
//! ([`MOST_TRIALS`](super::monte_carlo::MOST_TRIALS)), so that no run can tell it from a finer one by its quantiles; it costs half as much as a draw
//! of 64 bits. Probabilities below 1e-9 are not a matter of trials.

use crate::special::{normal_density, normal_quantile};
use crate::wide::{Columnar, Width};
use std::sync::LazyLock;

/// Trials of a block. Results do not depend on it but through the place of a draw, above.
pub const BLOCK: usize = 256;

/// One number for each trial of a block.
pub type Column = [f64; BLOCK];

const QUARTER: usize = BLOCK / 4;
const MULTIPLIERS: [u64; 2] = [0xD251_1F53, 0xCD9E_8D57];
/// What is added to the key before each further round: golden ratio and `sqrt(3) - 1`.
const WEYL: [u32; 2] = [0x9E37_79B9, 0xBB67_AE85];
const LOW_HALF: u64 = 0xFFFF_FFFF;

/// Philox4x32-10: four random words for a counter and a key.
#[must_use]
pub fn philox4x32(counter: [u32; 4], key: [u32; 2]) -> [u32; 4] {
    call(counter.map(u64::from), key).map(low)
}

/// The same with every word in the lower half of 64 bits, where its products have room; the upper halves are zero.
#[inline(always)]
fn call(counter: [u64; 4], key: [u32; 2]) -> [u64; 4] {
    // ten rounds in a row, not a loop: the loop over the counters is the one that must become vectors
    let c = round(counter, key, 0);
    let c = round(c, key, 1);
    let c = round(c, key, 2);
    let c = round(c, key, 3);
    let c = round(c, key, 4);
    let c = round(c, key, 5);
    let c = round(c, key, 6);
    let c = round(c, key, 7);
    let c = round(c, key, 8);
    round(c, key, 9).map(|word| word & LOW_HALF)
}

/// One round; what it leaves in the upper halves is not looked at.
#[inline(always)]
fn round([c0, c1, c2, c3]: [u64; 4], key: [u32; 2], number: u32) -> [u64; 4] {
    let [k0, k1] = key;
    let k0 = u64::from(k0.wrapping_add(number.wrapping_mul(WEYL[0])));
    let k1 = u64::from(k1.wrapping_add(number.wrapping_mul(WEYL[1])));
    let (product0, product1) = ((c0 & LOW_HALF) * MULTIPLIERS[0], (c2 & LOW_HALF) * MULTIPLIERS[1]);
    [(product1 >> 32) ^ c1 ^ k0, product1, (product0 >> 32) ^ c3 ^ k1, product0]
}

#[expect(clippy::cast_possible_truncation, reason = "the lower half is meant")]
fn low(word: u64) -> u32 {
    word as u32
}

/// Draw number `draw` of every trial of a block, as numbers of [`uniform`], with the instructions of a [`Width`].
pub fn block_of_uniforms(width: Width, seed: u64, block: u64, draw: u32, column: &mut Column) {
    width.run(BlockOfDraws { seed, block, draw, normal: None, column });
}

struct BlockOfDraws<'r> {
    seed: u64,
    block: u64,
    draw: u32,
    normal: Option<&'r NormalTable>,
    column: &'r mut Column,
}

impl Columnar for BlockOfDraws<'_> {
    #[inline(always)]
    fn run(self) {
        uniforms(self.seed, self.block, self.draw, self.column);
        if let Some(normal) = self.normal {
            normal.quantiles(self.column);
        }
    }
}

/// As [`block_of_uniforms`], within code that is compiled for every width.
#[inline(always)]
pub(super) fn uniforms(seed: u64, block: u64, draw: u32, column: &mut Column) {
    let key = [low(seed), low(seed >> 32)];
    let first = block.wrapping_mul(QUARTER as u64);
    let (a, rest) = column.split_at_mut(QUARTER);
    let (b, rest) = rest.split_at_mut(QUARTER);
    let (c, d) = rest.split_at_mut(QUARTER);
    for (k, (((a, b), c), d)) in a.iter_mut().zip(b).zip(c).zip(d).enumerate() {
        let n = first + k as u64;
        let words = call([n & LOW_HALF, n >> 32, u64::from(draw), 0], key);
        [*a, *b, *c, *d] = words.map(probability);
    }
}

/// A number between 0 and 1 and neither: `(n + 1/2) / 2^32`, exact and symmetric about one half.
#[must_use]
pub fn uniform(word: u32) -> f64 {
    probability(u64::from(word))
}

#[inline(always)]
fn probability(word: u64) -> f64 {
    // 2^52 with the word for its last bits: a conversion that every vector has
    (f64::from_bits(TWO_TO_52.to_bits() | word) - (TWO_TO_52 - 0.5)) / TWO_TO_32
}

const TWO_TO_52: f64 = 4_503_599_627_370_496.0;
const TWO_TO_32: f64 = 4_294_967_296.0;

/// Bits of the mantissa that choose the segment within an octave of the tail probability.
const SEGMENT_BITS: u32 = 6;
/// Octaves of the tail probability: from 2^-33 to below 2^-1.
const OCTAVES: u64 = 32;
const SEGMENTS: usize = 1 << 11;
const REST_BITS: u32 = 52 - SEGMENT_BITS;
/// Number, counted over all doubles, of the segment that starts at 2^-33.
const FIRST_SEGMENT: u64 = (1023 - 33) << SEGMENT_BITS;

/// A function of the tail probability, 2^-33 to one half: each octave is cut into 64 segments with a cubic through value and slope at both ends.
#[derive(Debug, Clone)]
pub(crate) struct TailTable(Box<[[f64; 4]; SEGMENTS]>);

impl TailTable {
    /// The table of a quantile, from its values and the densities there.
    pub(crate) fn new(at: impl Fn(f64) -> f64, density: impl Fn(f64) -> f64) -> Self {
        let start = |segment: u64| f64::from_bits((FIRST_SEGMENT + segment) << REST_BITS);
        let mut table = Box::new([[0.0; 4]; SEGMENTS]);
        let mut first = at(start(0));
        for (k, row) in (0..OCTAVES << SEGMENT_BITS).zip(table.iter_mut()) {
            let width = start(k + 1) - start(k);
            let last = at(start(k + 1));
            *row = cubic([first, last], [width / density(first), width / density(last)]);
            first = last;
        }
        TailTable(table)
    }

    /// Value at a tail probability that the table reaches; none below and above.
    pub(crate) fn within(&self, tail: f64) -> Option<f64> {
        (0.5 / TWO_TO_32..0.5).contains(&tail).then(|| self.at(tail))
    }

    /// Value at a tail probability that is not below the first or above the last.
    #[inline(always)]
    fn at(&self, tail: f64) -> f64 {
        let bits = tail.to_bits();
        let segment = (bits >> REST_BITS).wrapping_sub(FIRST_SEGMENT) as usize % SEGMENTS;
        let Some([c0, c1, c2, c3]) = self.0.get(segment) else { return f64::NAN };
        // the rest of the mantissa as that of a number from 1 to 2
        let x = f64::from_bits((bits << SEGMENT_BITS) & MANTISSA | 1.0_f64.to_bits()) - 1.0;
        ((c3 * x + c2) * x + c1) * x + c0
    }
}

/// Normal quantiles for the numbers of [`uniform`], without a transcendental function per draw.
///
/// Each octave of the tail probability is cut into 64 segments with a cubic through value and slope at both ends. Its error against
/// [`normal_quantile`] is below 1e-9 (`tests/monte_carlo.rs`); it increases throughout.
#[derive(Debug, Clone)]
pub struct NormalTable(TailTable);

impl NormalTable {
    /// Makes the table: about 2000 quantiles.
    #[must_use]
    pub fn new() -> Self {
        // the quantile of one half comes out as 0 only to rounding
        let at = |p: f64| if p < 0.5 { normal_quantile(p) } else { 0.0 };
        NormalTable(TailTable::new(at, normal_density))
    }

    /// The one that all runs share, made when it is first needed.
    pub(super) fn shared() -> &'static Self {
        static SHARED: LazyLock<NormalTable> = LazyLock::new(NormalTable::new);
        &SHARED
    }

    /// Quantile of a probability from 2^-33 to 1 - 2^-33; NaN outside.
    #[must_use]
    pub fn quantile(&self, probability: f64) -> f64 {
        if !((0.5 / TWO_TO_32..=1.0 - 0.5 / TWO_TO_32).contains(&probability)) {
            return f64::NAN;
        }
        // one half is no number of `uniform`: it is the end of the last segment
        if probability.to_bits() == 0.5_f64.to_bits() { 0.0 } else { inside(&self.0, probability) }
    }

    /// Draw number `draw` of every trial of a block, as standard normal numbers.
    pub fn block(&self, width: Width, seed: u64, block: u64, draw: u32, column: &mut Column) {
        width.run(BlockOfDraws { seed, block, draw, normal: Some(self), column });
    }

    /// The quantiles of a column of numbers of [`uniform`].
    #[inline(always)]
    pub(super) fn quantiles(&self, column: &mut Column) {
        // beside it and not over it: what is read in the table can then become vectors
        let places = *column;
        let mut out = [0.0; BLOCK];
        for (out, place) in out.iter_mut().zip(&places) {
            *out = self.inside(*place);
        }
        *column = out;
    }

    /// Quantile of a number of [`uniform`].
    #[inline(always)]
    pub(super) fn inside(&self, probability: f64) -> f64 {
        inside(&self.0, probability)
    }
}

/// Without a branch: a loop over it has none to mispredict, and can become vectors.
#[inline(always)]
fn inside(table: &TailTable, probability: f64) -> f64 {
    let from_middle = probability - 0.5;
    table.at(0.5 - from_middle.abs()).abs().copysign(from_middle)
}

const MANTISSA: u64 = (1 << 52) - 1;

impl Default for NormalTable {
    fn default() -> Self {
        Self::new()
    }
}

/// Hermite's cubic on 0 to 1 through two values with their slopes.
fn cubic([a, b]: [f64; 2], [da, db]: [f64; 2]) -> [f64; 4] {
    [a, da, 3.0 * (b - a) - 2.0 * da - db, 2.0 * (a - b) + da + db]
}
