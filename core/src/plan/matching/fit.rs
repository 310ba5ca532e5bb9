//! One pair: its clearance, how far it is from what is wanted, and how it ranks.

use crate::decision::risk::Interval;
use core::f64::consts::PI;

/// A wanted clearance that was checked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Fit {
    pub(super) limits: Interval,
    pub(super) target: f64,
}

impl Fit {
    /// Distance of a clearance beyond the nearer limit; negative inside. Computed, it still falls and then rises with the clearance,
    /// since a difference rounds without changing its order.
    pub(super) fn beyond(&self, clearance: f64) -> f64 {
        let (below, above) = (self.below(clearance), self.above(clearance));
        if below > above { below } else { above }
    }

    /// Distance of a clearance below the lower limit; negative above it.
    pub(super) fn below(&self, clearance: f64) -> f64 {
        self.limits.lower.map_or(f64::NEG_INFINITY, |l| l - clearance)
    }

    /// Distance of a clearance above the upper limit; negative below it.
    pub(super) fn above(&self, clearance: f64) -> f64 {
        self.limits.upper.map_or(f64::NEG_INFINITY, |u| clearance - u)
    }

    /// Probability that a clearance of standard uncertainty `u` lies outside the limits.
    pub(super) fn outside(&self, clearance: f64, u: f64) -> f64 {
        self.limits.outside(clearance, u)
    }

    /// A number that rises with [`Fit::outside`], also where that is too small for a double: then its logarithm, which is below 0.
    pub(super) fn rank(&self, clearance: f64, u: f64) -> f64 {
        /// Standard uncertainties within the limits beyond which the logarithm is taken.
        const FAR: f64 = 36.0;
        let near = -self.beyond(clearance) / u;
        if near < FAR {
            return self.outside(clearance, u);
        }
        let width = self.limits.width().map_or(f64::INFINITY, |w| w / u);
        let far = width - near;
        let r = 1.0 / (near * near);
        // asymptotic series of the normal tail, DLMF 7.12.1, and beside it the tail of the other limit
        let series = libm::log1p(-r * (1.0 - r * (3.0 - r * (15.0 - r * 105.0))));
        let other = libm::log1p(near / far * libm::exp(-(far - near) * (far + near) / 2.0));
        -near * near / 2.0 - libm::log(near * libm::sqrt(2.0 * PI)) + series + other
    }

    /// Deviation from the target.
    pub(super) fn deviation(&self, clearance: f64) -> f64 {
        clearance - self.target
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ln of the probability outside, by mpmath at 40 digits: `log(ncdf(-n) + ncdf(-f))`.
    #[test]
    fn ranks_beyond_the_smallest_double() {
        let fit = Fit { limits: Interval { lower: Some(0.0), upper: Some(80.0) }, target: 40.0 };
        for (clearance, expected) in RANKS {
            let rank = fit.rank(clearance, 1.0);
            assert!(
                (rank - expected).abs() < 1e-12 * expected.abs(),
                "{clearance}: {rank} against {expected}"
            );
        }
        // it falls without a break where the probability gives way to its logarithm
        let ranks: Vec<f64> = (0..=500).map(|k| fit.rank(35.0 + f64::from(k) * 0.01, 1.0)).collect();
        assert!(ranks.is_sorted_by(|a, b| a > b));
    }

    const RANKS: [(f64, f64); 5] = [
        (36.0, -652.503_227_593_798_4),
        (36.5, -670.642_000_000_313_7),
        (38.0, -726.557_216_018_820_1),
        (39.5, -784.720_879_104_317_5),
        (40.0, -803.915_294_833_193_8),
    ];
}
