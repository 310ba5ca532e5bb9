//! What a change of a tolerance does to the probabilities outside limits: exact derivatives.

use super::line::Slopes;
use super::{Stack, Sum};
use crate::error::{Error, ErrorKind};

/// Change of both probabilities for a change of one tolerance.
#[derive(Debug, Clone, PartialEq)]
pub struct Sensitivity {
    /// Name of the contributor.
    pub name: String,
    /// Its tolerance: half the distance of its limits.
    pub tolerance: f64,
    /// Derivative of the probability below the lower limit by the tolerance, per unit of length.
    pub below: f64,
    /// Derivative of the probability above the upper limit by the tolerance, per unit of length.
    pub above: f64,
}

impl Stack {
    /// Derivatives of the probabilities outside two limits by each tolerance, where the variation of a contributor keeps its form and
    /// capability: all distances from the middle of its limits change with the tolerance. In the order of the contributors; of one without a
    /// tolerance 0.
    ///
    /// # Errors
    /// As [`Self::outside`]; [`ErrorKind::Contradiction`] also when no way to a derivative is accurate enough: without a normal contributor, samples,
    /// and few contributors of which one is neither a rectangle, a triangle nor a trapezoid.
    pub fn sensitivities(&self, lower: f64, upper: f64) -> Result<Vec<Sensitivity>, Error> {
        self.outside(lower, upper)?;
        let below = self.by_logarithms("lower", lower, -1.0)?;
        let above = self.by_logarithms("upper", upper, 1.0)?;
        let of = |((c, below), above): ((&super::Contributor, f64), f64)| {
            let tolerance = c.tolerance();
            let per = |d: f64| if tolerance > 0.0 { d / tolerance + 0.0 } else { 0.0 };
            Sensitivity { name: c.name.clone(), tolerance, below: per(below), above: per(above) }
        };
        Ok(self.contributors.iter().zip(below).zip(above).map(of).collect())
    }

    /// Derivatives of the probability on a side of a size (1 above, -1 below) by the logarithm of each tolerance.
    pub(super) fn by_logarithms(&self, field: &str, x: f64, side: f64) -> Result<Vec<f64>, Error> {
        if !x.is_finite() {
            return Ok(vec![0.0; self.contributors.len()]);
        }
        let place = self.about_centre(x);
        // the tail on the far side of the mean is computed; the other is what is left of 1
        let up = place.0 >= self.up.mean;
        let (sum, place) = if up { (&self.up, place) } else { (&self.down, (-place.0, -place.1)) };
        let sign = if up { side } else { -side };
        let slopes = sum.slopes_at(place).ok_or_else(|| {
            let reason = "no way to a derivative is accurate enough for these contributors; a normal contributor, however small, would help";
            Error::new(ErrorKind::Contradiction, x.to_string(), reason).value(x).at(field)
        })?;
        let toward = if up { 1.0 } else { -1.0 };
        let mut kernel = 0;
        let by = |c: &super::Contributor| {
            let (parts, offset) = c.scales();
            let mut one = toward * offset * slopes.shift;
            one += parts.widths.iter().map(|w| rectangle(sum, &slopes, *w)).sum::<f64>();
            if sum.variance > 0.0 {
                one += slopes.normal * (parts.variances.iter().sum::<f64>() / sum.variance);
            }
            // pieces stand one after the other, in the order of the contributors
            let pieces = c.count as usize;
            one += parts.kernels.iter().enumerate().map(|(k, _)| of_kernel(&slopes, kernel + k)).sum::<f64>();
            kernel += parts.kernels.len() * pieces;
            sign * one * f64::from(c.count)
        };
        Ok(self.contributors.iter().map(by).collect())
    }
}

#[expect(clippy::float_cmp, reason = "the widths of the sum are those of its parts, to the bit")]
fn rectangle(sum: &Sum, slopes: &Slopes, width: f64) -> f64 {
    let place = sum.rectangles.iter().position(|r| r.half_width == width);
    place.and_then(|k| slopes.rectangles.get(k)).copied().unwrap_or(0.0)
}

fn of_kernel(slopes: &Slopes, place: usize) -> f64 {
    slopes.kernels.get(place).copied().unwrap_or(0.0)
}
