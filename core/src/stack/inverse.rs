//! Draws of the terms that are not symmetric shapes, by their inverse.

use super::kernel::{Kernel, ScorePiece};
use crate::measurement::monte_carlo::Inverse;
use crate::measurement::random::TailTable;
use crate::special::{beta_lower, normal_cdf, normal_quantile};
use std::sync::Arc;

pub(super) fn of(kernel: &Kernel) -> Arc<dyn Inverse> {
    match kernel {
        Kernel::Beta { alpha, beta, low, high, .. } => {
            let unit = |alpha: f64, beta: f64| {
                let kernel = Kernel::beta(alpha, beta, 0.0, 1.0);
                TailTable::new(|p| beta_lower(p, alpha, beta), |x| kernel.density(x))
            };
            let tables = [unit(*alpha, *beta), unit(*beta, *alpha)];
            Arc::new(Beta { shapes: (*alpha, *beta), ends: (*low, *high), tables })
        }
        Kernel::Triangle { low, mode, high } => Arc::new(Triangle { low: *low, mode: *mode, high: *high }),
        Kernel::Scores { pieces, share } => Arc::new(Scores { pieces: pieces.clone(), share: *share }),
        Kernel::Atoms(values) => {
            let mut sorted = values.clone();
            sorted.sort_unstable_by(f64::total_cmp);
            Arc::new(Atoms(sorted))
        }
    }
}

/// Beta: by a table of each tail, below it by the function itself.
#[derive(Debug)]
struct Beta {
    shapes: (f64, f64),
    ends: (f64, f64),
    tables: [TailTable; 2],
}

impl Beta {
    fn above_low(&self, x: f64) -> f64 {
        self.ends.0 + (self.ends.1 - self.ends.0) * x
    }

    fn below_high(&self, x: f64) -> f64 {
        self.ends.1 - (self.ends.1 - self.ends.0) * x
    }
}

impl Inverse for Beta {
    fn lower(&self, probability: f64) -> f64 {
        let [lower, _] = &self.tables;
        let (alpha, beta) = self.shapes;
        self.above_low(lower.within(probability).unwrap_or_else(|| beta_lower(probability, alpha, beta)))
    }

    fn upper(&self, probability: f64) -> f64 {
        let [_, upper] = &self.tables;
        let (alpha, beta) = self.shapes;
        self.below_high(upper.within(probability).unwrap_or_else(|| beta_lower(probability, beta, alpha)))
    }
}

#[derive(Debug)]
struct Triangle {
    low: f64,
    mode: f64,
    high: f64,
}

impl Inverse for Triangle {
    fn lower(&self, probability: f64) -> f64 {
        let width = self.high - self.low;
        match probability * width < self.mode - self.low {
            true => self.low + (probability * width * (self.mode - self.low)).sqrt(),
            false => self.high - ((1.0 - probability) * width * (self.high - self.mode)).sqrt(),
        }
    }

    fn upper(&self, probability: f64) -> f64 {
        let width = self.high - self.low;
        match probability * width < self.high - self.mode {
            true => self.high - (probability * width * (self.high - self.mode)).sqrt(),
            false => self.low + ((1.0 - probability) * width * (self.mode - self.low)).sqrt(),
        }
    }
}

/// Straight over the normal score, the scores cut off or not.
#[derive(Debug)]
struct Scores {
    pieces: Vec<ScorePiece>,
    share: f64,
}

impl Scores {
    /// Value from the probabilities of a score below and above, each with its own digits.
    fn value(&self, below: f64, above: f64) -> f64 {
        let score = if below < above { normal_quantile(below) } else { -normal_quantile(above) };
        let piece = self.pieces.iter().find(|p| score <= p.high).or(self.pieces.last());
        piece.map_or(f64::NAN, |p| p.at + p.slope * libm::fmin(libm::fmax(score, p.low), p.high))
    }

    /// Probabilities outside the scores at either end.
    fn outside(&self) -> (f64, f64) {
        let low = self.pieces.first().map_or(f64::NEG_INFINITY, |p| p.low);
        let high = self.pieces.last().map_or(f64::INFINITY, |p| p.high);
        (normal_cdf(low), normal_cdf(-high))
    }

    fn at(&self, below: f64, above: f64) -> f64 {
        let (under, over) = self.outside();
        self.value(under + self.share * below, over + self.share * above)
    }
}

impl Inverse for Scores {
    fn lower(&self, probability: f64) -> f64 {
        self.at(probability, 1.0 - probability)
    }

    fn upper(&self, probability: f64) -> f64 {
        self.at(1.0 - probability, probability)
    }
}

/// Equally probable values, in order.
#[derive(Debug)]
struct Atoms(Vec<f64>);

impl Atoms {
    fn place(&self, probability: f64) -> usize {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "below the count")]
        let place = (super::number(self.0.len()) * probability) as usize;
        place.min(self.0.len().saturating_sub(1))
    }
}

impl Inverse for Atoms {
    fn lower(&self, probability: f64) -> f64 {
        self.0.get(self.place(probability)).copied().unwrap_or(f64::NAN)
    }

    fn upper(&self, probability: f64) -> f64 {
        self.0.iter().rev().nth(self.place(probability)).copied().unwrap_or(f64::NAN)
    }
}
