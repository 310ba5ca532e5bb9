//! A piston moved sideways, without tilting, to where it has most room.
//!
//! Moved by `e` the clearance on one side is `c - e . (cos t, sin t)`, to the first order: the second is `e^2 / (2 R)`, a hundredth of a
//! micrometre for a tenth of a millimetre. The least of it over the surface is largest where the programme of the maximum inscribed circle settles.

use super::{HotFit, Position};
use crate::error::Error;
use crate::shape::angle::turned;
use crate::shape::least::smaller;
use crate::shape::minimax::{Seen, settle};
use crate::shape::reference::Reference;

/// Angles that are looked at: what lies between two is within some hundredths of a micrometre of them.
const ANGLES: u16 = 360;
/// Heights between two rows of the tables that are looked at.
const BETWEEN: u16 = 8;

/// A clearance with cosine and sine of its angle.
type Around = (f64, (f64, f64));

/// Where a piston has most room.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BestPlaced {
    /// Smallest clearance on one side there.
    pub clearance_mm: f64,
    /// Moved toward the major thrust side.
    pub thrust_mm: f64,
    /// Moved along the pin, toward the front.
    pub pin_mm: f64,
}

impl HotFit {
    /// Where a surface has most room at one position, its smallest clearance to a tenth of a micrometre.
    ///
    /// # Errors
    /// When there is no such surface, its position is not known, or no part of it is in the bore.
    pub fn best_placed(&self, surface: usize, position: Position) -> Result<BestPlaced, Error> {
        let around = self.least_around(surface, position)?;
        let look = |at: &[f64]| -> Vec<Seen> {
            let of = |(gap, (cosine, sine)): &Around| {
                let shift = at.iter().zip([cosine, sine]).fold(0.0, |sum, (e, u)| sum + e * u);
                Seen { deviation: gap - shift, gradient: vec![-cosine, -sine] }
            };
            around.iter().map(of).collect()
        };
        let size = self.parts.piston_diameter_mm / 2.0;
        let at = settle(Reference::MaximumInscribed, vec![0.0, 0.0], size, look)
            .map_err(|e| e.named("surface"))?;
        let (low, _) = crate::shape::minimax::ends(&look(&at));
        let [thrust_mm, pin_mm] = [at.first(), at.get(1)].map(|e| e.copied().unwrap_or_default());
        Ok(BestPlaced { clearance_mm: low, thrust_mm, pin_mm })
    }

    /// The least clearance over all heights of a surface at every degree that has surface and wall, with cosine and sine.
    fn least_around(&self, index: usize, position: Position) -> Result<Vec<Around>, Error> {
        let heights = self.stations(index, BETWEEN)?;
        let mut places = Vec::with_capacity(heights.len());
        for height in heights {
            // what stands out of the bore is not in it
            if let Ok(depth) = self.depth_mm(height, position) {
                places.push((height, depth));
            }
        }
        let mut out = Vec::with_capacity(usize::from(ANGLES));
        for degree in 0..ANGLES {
            let angle = 360.0 * f64::from(degree) / f64::from(ANGLES);
            let mut least: Option<f64> = None;
            for (height, depth) in &places {
                if self.supported(index, angle, *height, *depth) {
                    let gap = self.clearance(index, angle, *height, *depth);
                    least = Some(least.map_or(gap, |l| smaller(l, gap)));
                }
            }
            out.extend(least.map(|gap| (gap, turned(1, angle))));
        }
        match out.is_empty() {
            false => Ok(out),
            true => Err(super::smallest::not_in_the_bore()),
        }
    }
}
