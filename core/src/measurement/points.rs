//! How the draws of a run lie in the unit cube: at random, one in every layer, or spread by Sobol's sequence. Every way is a function of the
//! seed, the trial and the draw alone, so that a run of any of them may be split anywhere.

use super::distribution::refused;
use super::random::{BLOCK, Column, philox4x32, uniform, uniforms};
use crate::error::{Error, ErrorKind};

/// Most draws of a trial of [`Points::Sobol`].
pub const MOST_DIMENSIONS: u32 = 64;

/// How the draws of the trials of a run lie.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Points {
    /// Independent of each other.
    Random,
    /// Latin hypercube: with this many trials, each draw has one trial in each of as many layers of equal probability. Which layer belongs to which
    /// trial is a keyed permutation (Feistel network of six rounds, walked until it is inside; Black and Rogaway, CT-RSA 2002).
    /// Source: McKay, Beckman, Conover, Technometrics 21 (1979).
    LatinHypercube {
        /// Trials of the whole run.
        trials: u64,
    },
    /// Sobol's sequence in the order of Gray's code, scrambled by a random lower triangular matrix for each draw and a random digital shift. The
    /// means of runs of a power of two trials have the smallest error. Source: Matousek, Journal of Complexity 14 (1998).
    Sobol,
}

impl Points {
    /// Trials of the whole run; none where there is no end.
    pub(super) fn most_trials(self) -> Option<u64> {
        match self {
            Points::Random => None,
            Points::LatinHypercube { trials } => Some(trials),
            Points::Sobol => Some(1 << WORD),
        }
    }
}

/// The draws of a run.
#[derive(Debug, Clone)]
pub(super) struct Draws {
    seed: u64,
    way: Way,
}

#[derive(Debug, Clone)]
enum Way {
    Random,
    Layers { trials: u64, keys: Vec<[u32; 8]> },
    Sobol(Vec<Spread>),
}

/// A draw of the scrambled sequence: direction numbers and the digital shift.
#[derive(Debug, Clone)]
struct Spread {
    directions: [u32; WORD],
    shift: u32,
}

const WORD: usize = 32;
/// Last word of the counters of the generator that scramble; that of the draws themselves is 0.
const OF_SOBOL: u32 = 1;
const OF_LAYERS: u32 = 2;

impl Draws {
    pub(super) fn new(points: Points, seed: u64, count: u32) -> Result<Self, Error> {
        let way = match points {
            Points::Random => Way::Random,
            Points::LatinHypercube { trials } => {
                Way::Layers { trials: checked(trials)?, keys: (0..count).map(|k| keys(seed, k)).collect() }
            }
            Points::Sobol if count > MOST_DIMENSIONS => {
                let reason = "a trial takes more draws than the sequence has dimensions";
                let most = f64::from(MOST_DIMENSIONS);
                return Err(refused("points", f64::from(count), reason, 1.0, most));
            }
            Points::Sobol => Way::Sobol((0..count).map(|k| Spread::new(seed, k)).collect()),
        };
        Ok(Draws { seed, way })
    }

    pub(super) fn random(seed: u64) -> Self {
        Draws { seed, way: Way::Random }
    }

    pub(super) fn points(&self) -> Points {
        match self.way {
            Way::Random => Points::Random,
            Way::Layers { trials, .. } => Points::LatinHypercube { trials },
            Way::Sobol(_) => Points::Sobol,
        }
    }

    /// Draw number `draw` of every trial of a block.
    #[inline(always)]
    pub(super) fn column(&self, block: u64, draw: u32, column: &mut Column) {
        match &self.way {
            Way::Random => uniforms(self.seed, block, draw, column),
            Way::Layers { trials, keys } => {
                // where in its layer a trial lies
                uniforms(self.seed, block, draw, column);
                let Some(keys) = keys.get(draw as usize) else { return };
                for (trial, place) in (block.saturating_mul(BLOCK as u64)..).zip(column) {
                    *place = in_layer(permuted(trial, *trials, keys), *trials, *place);
                }
            }
            Way::Sobol(spreads) => {
                if let Some(spread) = spreads.get(draw as usize) {
                    spread.column(block, column);
                }
            }
        }
    }
}

fn checked(trials: u64) -> Result<u64, Error> {
    if (1..=super::monte_carlo::MOST_TRIALS).contains(&trials) {
        return Ok(trials);
    }
    let error = Error::new(ErrorKind::OutOfRange, trials.to_string(), "a whole run has 1 to 2^27 trials");
    Err(error.at("points"))
}

/// Eight words of the generator that no draw takes.
fn keys(seed: u64, draw: u32) -> [u32; 8] {
    let mut out = [0; 8];
    for (half, place) in (0..).zip(out.chunks_mut(4)) {
        place.copy_from_slice(&philox4x32([half, 0, draw, OF_LAYERS], key(seed)));
    }
    out
}

#[expect(clippy::cast_possible_truncation, reason = "the two halves are meant")]
fn key(seed: u64) -> [u32; 2] {
    [seed as u32, (seed >> 32) as u32]
}

/// The layer of a trial: a permutation of the numbers below `count`; a trial beyond is itself.
fn permuted(trial: u64, count: u64, keys: &[u32; 8]) -> u64 {
    if trial >= count {
        return trial;
    }
    let bits = (u64::BITS - (count - 1).leading_zeros()).max(2);
    let half = bits / 2;
    let (low_mask, high_mask) = (mask(half), mask(bits - half));
    let mut at = trial;
    loop {
        #[expect(clippy::cast_possible_truncation, reason = "at most 27 bits")]
        let (mut low, mut high) = ((at as u32) & low_mask, (at >> half) as u32);
        for pair in keys.chunks_exact(2).take(3) {
            if let [first, second] = pair {
                high ^= mixed(low ^ first) & high_mask;
                low ^= mixed(high ^ second) & low_mask;
            }
        }
        at = (u64::from(high) << half) | u64::from(low);
        // what lies outside goes on: the walk returns to where it began at the latest
        if at < count {
            return at;
        }
    }
}

fn mask(bits: u32) -> u32 {
    u32::MAX >> (u32::BITS - bits)
}

/// Finalizer of MurmurHash3 (public domain).
fn mixed(word: u32) -> u32 {
    let word = (word ^ (word >> 16)).wrapping_mul(0x85eb_ca6b);
    let word = (word ^ (word >> 13)).wrapping_mul(0xc2b2_ae35);
    word ^ (word >> 16)
}

/// A number of [`uniform`] within a layer, whose words are all as probable as each other.
fn in_layer(layer: u64, layers: u64, within: f64) -> f64 {
    // words whose number (w + 1/2) / 2^32 lies in the layer
    let edge = |layer: u64| (((layer << 33) / layers) + 1) >> 1;
    let (from, to) = (edge(layer), edge(layer + 1));
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        clippy::cast_precision_loss,
        reason = "below 2^32"
    )]
    let word = (from + ((to - from) as f64 * within) as u64) as u32;
    uniform(word)
}

impl Spread {
    fn new(seed: u64, draw: u32) -> Self {
        let directions = directions(draw);
        // row r of the matrix: random above the diagonal, 1 on it, bits counted from the highest
        let row = |r: u32| {
            let [word, ..] = philox4x32([r, 0, draw, OF_SOBOL], key(seed));
            (word & !(u32::MAX >> r)) | (1 << (31 - r))
        };
        let scrambled = |direction: u32| {
            (0..32).fold(0, |out, r| out | (((row(r) & direction).count_ones() % 2) << (31 - r)))
        };
        let [shift, ..] = philox4x32([32, 0, draw, OF_SOBOL], key(seed));
        Spread { directions: directions.map(scrambled), shift }
    }

    fn column(&self, block: u64, column: &mut Column) {
        let first = block.saturating_mul(BLOCK as u64);
        let start = self.shift ^ gray_sum(&self.directions, first);
        let mut words = [start; BLOCK];
        for (within, word) in (0_u64..).zip(&mut words) {
            // Gray's code of a sum without a carry is the sum of the codes
            *word ^= gray_sum(&self.directions, within);
        }
        for (place, word) in column.iter_mut().zip(words) {
            *place = uniform(word);
        }
    }
}

/// Sum without carries of the direction numbers that Gray's code of a number names.
fn gray_sum(directions: &[u32; WORD], number: u64) -> u32 {
    let mut code = number ^ (number >> 1);
    let mut out = 0;
    while code != 0 {
        out ^= directions.get(code.trailing_zeros() as usize).copied().unwrap_or_default();
        code &= code - 1;
    }
    out
}

/// Direction numbers of a dimension of the unscrambled sequence, highest bit first.
fn directions(dimension: u32) -> [u32; WORD] {
    let mut out = [0; WORD];
    let row = (dimension as usize).checked_sub(1).and_then(|k| PRIMITIVE.get(k));
    let Some((polynomial, initial)) = row else {
        for (k, place) in (0..).zip(&mut out) {
            *place = 1 << (31 - k);
        }
        return out;
    };
    let degree = initial.len();
    for k in 0..WORD {
        let at = |back: usize| k.checked_sub(back).and_then(|j| out.get(j)).copied().unwrap_or_default();
        let value = match initial.get(k) {
            Some(first) => first << (31 - k),
            // the recurrence of Bratley and Fox, ACM TOMS 14 (1988)
            None => (1..=degree)
                .filter(|back| (polynomial >> (degree - back)) & 1 == 1)
                .fold(at(degree) >> degree, |sum, back| sum ^ at(back)),
        };
        if let Some(place) = out.get_mut(k) {
            *place = value;
        }
    }
    out
}

/// Primitive polynomials (bits, the highest and the constant one included) and initial direction numbers of the dimensions after the first.
///
/// Source: Joe and Kuo, Constructing Sobol sequences with better two-dimensional projections, SIAM J. Sci. Comput. 30 (2008), file
/// `new-joe-kuo-6.21201`, its first 64 dimensions. Copyright (c) 2008, Frances Y. Kuo and Stephen Joe; 3-clause BSD licence, in `LICENSE-SOBOL`.
const PRIMITIVE: [(u32, &[u32]); 63] = [
    (3, &[1]),
    (7, &[1, 3]),
    (11, &[1, 3, 1]),
    (13, &[1, 1, 1]),
    (19, &[1, 1, 3, 3]),
    (25, &[1, 3, 5, 13]),
    (37, &[1, 1, 5, 5, 17]),
    (41, &[1, 1, 5, 5, 5]),
    (47, &[1, 1, 7, 11, 19]),
    (55, &[1, 1, 5, 1, 1]),
    (59, &[1, 1, 1, 3, 11]),
    (61, &[1, 3, 5, 5, 31]),
    (67, &[1, 3, 3, 9, 7, 49]),
    (91, &[1, 1, 1, 15, 21, 21]),
    (97, &[1, 3, 1, 13, 27, 49]),
    (103, &[1, 1, 1, 15, 7, 5]),
    (109, &[1, 3, 1, 15, 13, 25]),
    (115, &[1, 1, 5, 5, 19, 61]),
    (131, &[1, 3, 7, 11, 23, 15, 103]),
    (137, &[1, 3, 7, 13, 13, 15, 69]),
    (143, &[1, 1, 3, 13, 7, 35, 63]),
    (145, &[1, 3, 5, 9, 1, 25, 53]),
    (157, &[1, 3, 1, 13, 9, 35, 107]),
    (167, &[1, 3, 1, 5, 27, 61, 31]),
    (171, &[1, 1, 5, 11, 19, 41, 61]),
    (185, &[1, 3, 5, 3, 3, 13, 69]),
    (191, &[1, 1, 7, 13, 1, 19, 1]),
    (193, &[1, 3, 7, 5, 13, 19, 59]),
    (203, &[1, 1, 3, 9, 25, 29, 41]),
    (211, &[1, 3, 5, 13, 23, 1, 55]),
    (213, &[1, 3, 7, 3, 13, 59, 17]),
    (229, &[1, 3, 1, 3, 5, 53, 69]),
    (239, &[1, 1, 5, 5, 23, 33, 13]),
    (241, &[1, 1, 7, 7, 1, 61, 123]),
    (247, &[1, 1, 7, 9, 13, 61, 49]),
    (253, &[1, 3, 3, 5, 3, 55, 33]),
    (285, &[1, 3, 1, 15, 31, 13, 49, 245]),
    (299, &[1, 3, 5, 15, 31, 59, 63, 97]),
    (301, &[1, 3, 1, 11, 11, 11, 77, 249]),
    (333, &[1, 3, 1, 11, 27, 43, 71, 9]),
    (351, &[1, 1, 7, 15, 21, 11, 81, 45]),
    (355, &[1, 3, 7, 3, 25, 31, 65, 79]),
    (357, &[1, 3, 1, 1, 19, 11, 3, 205]),
    (361, &[1, 1, 5, 9, 19, 21, 29, 157]),
    (369, &[1, 3, 7, 11, 1, 33, 89, 185]),
    (391, &[1, 3, 3, 3, 15, 9, 79, 71]),
    (397, &[1, 3, 7, 11, 15, 39, 119, 27]),
    (425, &[1, 1, 3, 1, 11, 31, 97, 225]),
    (451, &[1, 1, 1, 3, 23, 43, 57, 177]),
    (463, &[1, 3, 7, 7, 17, 17, 37, 71]),
    (487, &[1, 3, 1, 5, 27, 63, 123, 213]),
    (501, &[1, 1, 3, 5, 11, 43, 53, 133]),
    (529, &[1, 3, 5, 5, 29, 17, 47, 173, 479]),
    (539, &[1, 3, 3, 11, 3, 1, 109, 9, 69]),
    (545, &[1, 1, 1, 5, 17, 39, 23, 5, 343]),
    (557, &[1, 3, 1, 5, 25, 15, 31, 103, 499]),
    (563, &[1, 1, 1, 11, 11, 17, 63, 105, 183]),
    (601, &[1, 1, 5, 11, 9, 29, 97, 231, 363]),
    (607, &[1, 1, 5, 15, 19, 45, 41, 7, 383]),
    (617, &[1, 3, 7, 7, 31, 19, 83, 137, 221]),
    (623, &[1, 1, 1, 3, 23, 15, 111, 223, 83]),
    (631, &[1, 1, 5, 13, 31, 15, 55, 25, 161]),
    (637, &[1, 1, 3, 13, 25, 47, 39, 87, 257]),
];

#[cfg(test)]
mod tests {
    use super::*;

    fn unscrambled(dimension: u32, number: u64) -> u32 {
        gray_sum(&directions(dimension), number)
    }

    /// The first ten points of ten dimensions, as the file of Joe and Kuo's program prints them and as SciPy 1.17.1 `qmc.Sobol(10, scramble=False)` gives them.
    #[test]
    fn first_points_are_the_published_ones() {
        let expected: [[f64; 10]; 10] = [
            [0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0],
            [0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
            [0.75, 0.25, 0.25, 0.25, 0.75, 0.75, 0.25, 0.75, 0.75, 0.75],
            [0.25, 0.75, 0.75, 0.75, 0.25, 0.25, 0.75, 0.25, 0.25, 0.25],
            [0.375, 0.375, 0.625, 0.875, 0.375, 0.125, 0.375, 0.875, 0.875, 0.625],
            [0.875, 0.875, 0.125, 0.375, 0.875, 0.625, 0.875, 0.375, 0.375, 0.125],
            [0.625, 0.125, 0.875, 0.625, 0.625, 0.875, 0.125, 0.125, 0.125, 0.375],
            [0.125, 0.625, 0.375, 0.125, 0.125, 0.375, 0.625, 0.625, 0.625, 0.875],
            [0.1875, 0.3125, 0.9375, 0.4375, 0.5625, 0.3125, 0.4375, 0.9375, 0.9375, 0.3125],
            [0.6875, 0.8125, 0.4375, 0.9375, 0.0625, 0.8125, 0.9375, 0.4375, 0.4375, 0.8125],
        ];
        for (number, row) in (0..).zip(expected) {
            for (dimension, value) in (0..).zip(row) {
                let ours = f64::from(unscrambled(dimension, number)) / 4_294_967_296.0;
                assert_eq!(ours.to_bits(), value.to_bits());
            }
        }
    }

    /// SciPy 1.17.1, `qmc.Sobol(64, scramble=False, bits=32)`: point 1 000 003 of dimensions 1, 2, 21, 40 and 64, times 2^32.
    #[test]
    fn a_late_point_is_that_of_scipy() {
        let late: [(u32, u32); 5] =
            [(0, 1187450880), (1, 2413424640), (20, 3393581056), (39, 1122742272), (63, 1323372544)];
        for (dimension, word) in late {
            assert_eq!(unscrambled(dimension, 1_000_003), word);
        }
    }

    /// In every elementary interval of 2^-16 of one draw lies one of 2^16 scrambled points, and each draw has a shift of its own.
    #[test]
    fn scrambled_points_keep_their_layers() {
        for draw in [0, 1, 2, 17, 63] {
            let spread = Spread::new(5, draw);
            let mut seen = vec![false; 1 << 16];
            let mut column = [0.0; BLOCK];
            for block in 0..256 {
                spread.column(block, &mut column);
                for value in column {
                    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "below 2^16")]
                    let layer = (value * 65536.0) as usize;
                    assert!(!seen.get(layer).copied().unwrap_or(true), "twice in a layer");
                    if let Some(place) = seen.get_mut(layer) {
                        *place = true;
                    }
                }
            }
            assert_ne!(spread.shift, Spread::new(6, draw).shift);
        }
    }

    /// The proof of layers: every layer is taken exactly once, of any number of them.
    #[test]
    fn every_layer_is_taken_once() {
        for count in [1, 2, 3, 255, 256, 257, 1000, 65_537] {
            let keys = keys(9, 3);
            let mut taken: Vec<u64> = (0..count).map(|trial| permuted(trial, count, &keys)).collect();
            taken.sort_unstable();
            assert_eq!(taken, (0..count).collect::<Vec<u64>>());
            for layer in 0..count {
                for within in [1e-10, 0.5, 1.0 - 1e-10] {
                    #[expect(clippy::cast_precision_loss, reason = "small counts")]
                    let place = in_layer(layer, count, within) * count as f64;
                    #[expect(
                        clippy::cast_possible_truncation,
                        clippy::cast_sign_loss,
                        reason = "small counts"
                    )]
                    let found = place as u64;
                    assert_eq!(found, layer);
                }
            }
        }
    }
}
