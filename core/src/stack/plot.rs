//! Numbers to draw: densities and exact histograms.

use super::Stack;
use crate::error::{Error, ErrorKind};
use crate::measurement::distribution::within;
use crate::measurement::statistics::too_few;

/// Most points of a curve, and most edges of a histogram.
const MOST_POINTS: usize = 1_000_000;
/// What a curve leaves out on each side.
const LEFT_OUT: f64 = 1e-6;

/// A density to draw.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    /// Sizes, rising in equal steps; in the unit of the stack.
    pub sizes: Vec<f64>,
    /// Density at each, per that unit.
    pub densities: Vec<f64>,
}

impl Stack {
    /// Density at each of some sizes, per unit of length.
    ///
    /// # Errors
    /// As [`Self::density`], with the place.
    pub fn densities(&self, sizes: &[f64]) -> Result<Vec<f64>, Error> {
        let at = |(k, x): (usize, &f64)| self.density(*x).map_err(|e| e.moved(format!("sizes/{k}")));
        sizes.iter().enumerate().map(at).collect()
    }

    /// The density at `count` sizes in equal steps between the two that leave 1e-6 outside on their side.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a count outside 2 to 1 000 000; as [`Self::quantile`].
    pub fn curve(&self, count: usize) -> Result<Curve, Error> {
        within("count", super::number(count), 2.0, super::number(MOST_POINTS))?;
        let (low, high) = (self.quantile(LEFT_OUT)?, self.quantile_above(LEFT_OUT)?);
        let step = (high - low) / super::number(count - 1);
        let size = |k| if k + 1 == count { high } else { low + super::number(k) * step };
        let sizes: Vec<f64> = (0..count).map(size).collect();
        let densities = self.densities(&sizes)?;
        Ok(Curve { sizes, densities })
    }

    /// Probability between each edge and the next, from the exact distribution; of samples alone an upper edge belongs to its bin.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] for fewer than two edges, [`ErrorKind::OutOfOrder`] unless they rise; as [`Self::outside`].
    pub fn histogram(&self, edges: &[f64]) -> Result<Vec<f64>, Error> {
        check_edges(edges)?;
        let sides = |(k, edge): (usize, &f64)| self.sides(*edge).map_err(|e| e.moved(format!("edges/{k}")));
        let at = edges.iter().enumerate().map(sides).collect::<Result<Vec<_>, _>>()?;
        Ok(at.windows(2).map(|pair| if let [a, b] = pair { between(*a, *b) } else { 0.0 }).collect())
    }

    /// Probabilities below and above a size.
    fn sides(&self, x: f64) -> Result<(f64, f64), Error> {
        // the small side is computed, the other follows; of samples alone a size belongs to what is below it
        if x >= self.mean() || !self.up.is_continuous() {
            let above = self.outside(f64::NEG_INFINITY, x)?.above;
            return Ok((1.0 - above, above));
        }
        let below = self.outside(x, f64::INFINITY)?.below;
        Ok((below, 1.0 - below))
    }
}

/// Refuses edges of a histogram that are too few or too many, not finite, or do not rise.
pub(super) fn check_edges(edges: &[f64]) -> Result<(), Error> {
    if edges.len() < 2 {
        return Err(too_few("edges", "at least two edges are needed"));
    }
    within("edges", super::number(edges.len()), 2.0, super::number(MOST_POINTS))?;
    let mut before = f64::NEG_INFINITY;
    for (k, edge) in edges.iter().enumerate() {
        let place = format!("edges/{k}");
        let edge = within(&place, *edge, -f64::MAX, f64::MAX)?;
        if before >= edge {
            let error = Error::new(ErrorKind::OutOfOrder, edge.to_string(), "edges must rise");
            return Err(error.value(edge).at(&place));
        }
        before = edge;
    }
    Ok(())
}

/// Probability between two places, from the side where it holds its digits.
fn between((below, above): (f64, f64), (next_below, next_above): (f64, f64)) -> f64 {
    let part = if above < below { above - next_above } else { next_below - below };
    libm::fmax(part, 0.0)
}
