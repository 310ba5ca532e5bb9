//! Random numbers by counting: draw `k` of trial `i` is a function of the seed, `i` and `k` alone.
//!
//! Philox4x64-10 turns a counter of four words and a key of two into four words. The key is the seed, the counter the number of the
//! trial and of the call within it, so any trial can be made anywhere, in any order. Source: Salmon, Moraes, Dror, Shaw, *Parallel random
//! numbers: as easy as 1, 2, 3*, SC 2011; it passes the BigCrush battery there.

use crate::special::{normal_density, normal_quantile};

/// Rounds of the generator.
const ROUNDS: u32 = 10;
const MULTIPLIERS: [u64; 2] = [0xD2E7_470E_E14C_6C93, 0xCA5A_8263_9512_1157];
/// What is added to the key before each further round: golden ratio and `sqrt(3) - 1`.
const WEYL: [u64; 2] = [0x9E37_79B9_7F4A_7C15, 0xBB67_AE85_84CA_A73B];

/// Philox4x64-10: four random words for a counter and a key.
#[must_use]
pub fn philox4x64(counter: [u64; 4], key: [u64; 2]) -> [u64; 4] {
    let [mut c0, mut c1, mut c2, mut c3] = counter;
    let [mut k0, mut k1] = key;
    for _ in 0..ROUNDS {
        let (high0, low0) = wide_product(MULTIPLIERS[0], c0);
        let (high1, low1) = wide_product(MULTIPLIERS[1], c2);
        (c0, c1, c2, c3) = (high1 ^ c1 ^ k0, low1, high0 ^ c3 ^ k1, low0);
        k0 = k0.wrapping_add(WEYL[0]);
        k1 = k1.wrapping_add(WEYL[1]);
    }
    [c0, c1, c2, c3]
}

#[expect(clippy::cast_possible_truncation, reason = "the two halves of the product")]
fn wide_product(a: u64, b: u64) -> (u64, u64) {
    let product = u128::from(a) * u128::from(b);
    ((product >> 64) as u64, product as u64)
}

/// The words of one trial, from its first on; the last call may leave some over.
pub(super) fn words_of_trial(seed: u64, trial: u64, words: &mut [u64]) {
    for (call, four) in (0_u64..).zip(words.chunks_mut(4)) {
        for (place, word) in four.iter_mut().zip(philox4x64([call, trial, 0, 0], [seed, 0])) {
            *place = word;
        }
    }
}

/// A number between 0 and 1 and neither, from the upper 52 bits of a word: `(n + 1/2) / 2^52`, exact and symmetric about one half.
#[must_use]
#[expect(clippy::cast_precision_loss, reason = "52 bits fit")]
pub fn uniform(word: u64) -> f64 {
    ((word >> 12) as f64 + 0.5) / FIFTY_TWO
}

const FIFTY_TWO: f64 = 4_503_599_627_370_496.0;

/// Bits of the mantissa that choose the segment within an octave of the tail probability.
const SEGMENT_BITS: u32 = 6;
/// Octaves of the tail probability: from 2^-53 to below 2^-1.
const OCTAVES: u64 = 52;
const REST_BITS: u32 = 52 - SEGMENT_BITS;
/// Number, counted over all doubles, of the segment that starts at 2^-53.
const FIRST_SEGMENT: u64 = (1023 - 53) << SEGMENT_BITS;

/// Normal quantiles for the numbers of [`uniform`], without a transcendental function per draw.
///
/// Each octave of the tail probability is cut into 64 segments with a cubic through value and slope at both ends. Its error against
/// [`normal_quantile`] is below 1e-9 (`tests/monte_carlo.rs`); it increases throughout.
#[derive(Debug, Clone)]
pub struct NormalTable(Vec<[f64; 4]>);

impl NormalTable {
    /// Makes the table: about 3000 quantiles.
    #[must_use]
    pub fn new() -> Self {
        let start = |segment: u64| f64::from_bits((FIRST_SEGMENT + segment) << REST_BITS);
        let segments = OCTAVES << SEGMENT_BITS;
        NormalTable((0..segments).map(|k| cubic(start(k), start(k + 1))).collect())
    }

    /// Quantile of a probability of [`uniform`]; NaN outside 2^-53 to 1 - 2^-53.
    #[must_use]
    pub fn quantile(&self, probability: f64) -> f64 {
        if probability > 0.5 { -self.lower(1.0 - probability) } else { self.lower(probability) }
    }

    #[expect(clippy::cast_precision_loss, reason = "46 bits fit")]
    fn lower(&self, tail: f64) -> f64 {
        let bits = tail.to_bits();
        let segment = (bits >> REST_BITS).checked_sub(FIRST_SEGMENT).and_then(|k| usize::try_from(k).ok());
        let Some([c0, c1, c2, c3]) = segment.and_then(|k| self.0.get(k)) else {
            // one half is the end of the last segment
            return if bits == 0.5_f64.to_bits() { 0.0 } else { f64::NAN };
        };
        let rest = bits & ((1 << REST_BITS) - 1);
        let x = rest as f64 / (1_u64 << REST_BITS) as f64;
        ((c3 * x + c2) * x + c1) * x + c0
    }
}

impl Default for NormalTable {
    fn default() -> Self {
        Self::new()
    }
}

/// Hermite's cubic on 0 to 1 between two probabilities.
fn cubic(start: f64, end: f64) -> [f64; 4] {
    // the quantile of one half comes out as 0 only to rounding
    let at = |p: f64| if p < 0.5 { normal_quantile(p) } else { 0.0 };
    let slope = |p: f64| (end - start) / normal_density(at(p));
    let (a, b, da, db) = (at(start), at(end), slope(start), slope(end));
    [a, da, 3.0 * (b - a) - 2.0 * da - db, 2.0 * (a - b) + da + db]
}
