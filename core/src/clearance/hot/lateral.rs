//! A piston moved sideways, without tilting, to where it has most room.
//!
//! Moved by `e` the clearance on one side is `c - e . (cos t, sin t)`, to the first order: the second is `e^2 / (2 R)`, a hundredth of a
//! micrometre for a tenth of a millimetre. The least of it over the surface is concave in `e`, and the most of that is a linear programme with a row for
//! every place of the surface. It is solved by exchange: the programme of the places that are known says more room than there is; the certified search
//! for the smallest clearance of the piston moved there says less, and gives the place that is added. What is left between the two is the proof. Source:
//! the cutting planes of Kelley, J. SIAM 8 (1960) 703, from memory.

use super::{HotFit, Position};
use crate::error::{Error, ErrorKind};
use crate::shape::angle::turned;
use crate::shape::least::{larger, smaller};
use crate::shape::minimax::{Seen, most_room};

/// What the exchange leaves between the two bounds, in mm; the search of the last place leaves as much besides.
const WITHIN: f64 = 1e-9;
/// Rounding of the programme, in mm.
const STILL: f64 = 1e-12;
/// Most places that are exchanged; the usual number is below thirty. Then the proof is as good as it is, and says so.
const MOST_EXCHANGES: u32 = 200;
/// Angles that are known to begin with.
const ANGLES: u16 = 36;

/// Where a piston has most room.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BestPlaced {
    /// Smallest clearance on one side there.
    pub clearance_mm: f64,
    /// Moved toward the major thrust side.
    pub thrust_mm: f64,
    /// Moved along the pin, toward the front.
    pub pin_mm: f64,
    /// The largest smallest clearance of any place sideways is within this of the one found.
    pub within_mm: f64,
}

impl HotFit {
    /// Where a surface has most room at one position.
    ///
    /// # Errors
    /// When there is no such surface, its position is not known, or no part of it is in the bore; [`ErrorKind::Contradiction`] when it is held on
    /// one side only, so that there is more room the further it is moved.
    pub fn best_placed(&self, surface: usize, position: Position) -> Result<BestPlaced, Error> {
        let reach = self.parts.piston_diameter_mm / 8.0;
        let mut moved = self.in_general();
        let mut seen = self.coarse(surface, position)?;
        let mut best: Option<BestPlaced> = None;
        let mut most = f64::INFINITY;
        for _ in 0..MOST_EXCHANGES {
            let (mut thrust_mm, mut pin_mm) = (0.0, 0.0);
            if !seen.is_empty() {
                let Some((by, level)) = most_room(&seen, reach, STILL) else { break };
                if let [thrust, pin] = by.as_slice() {
                    (thrust_mm, pin_mm) = (*thrust, *pin);
                }
                most = smaller(most, level);
            }
            // the piston to one side is the bore to the other
            moved.bore.axis = [-thrust_mm, -pin_mm];
            let found = moved.smallest_at(surface, position)?;
            let clearance_mm = found.clearance_mm;
            if best.is_none_or(|b| clearance_mm > b.clearance_mm) {
                best = Some(BestPlaced { clearance_mm, thrust_mm, pin_mm, within_mm: found.within_mm });
            }
            if best.is_some_and(|b| most - b.clearance_mm <= WITHIN) {
                break;
            }
            let (cosine, sine) = turned(1, found.place.angle_deg);
            seen.push(row(clearance_mm + thrust_mm * cosine + pin_mm * sine, (cosine, sine)));
        }
        let settled = best.filter(|b| most.is_finite() && larger(b.thrust_mm.abs(), b.pin_mm.abs()) < reach);
        let best = settled.ok_or_else(|| {
            let reason = "it is held on one side only: there is more room the further it is moved";
            Error::new(ErrorKind::Contradiction, surface.to_string(), reason).at("surface")
        })?;
        Ok(BestPlaced { within_mm: larger(most - best.clearance_mm, 0.0) + STILL + best.within_mm, ..best })
    }

    /// The same fit with every section as harmonics.
    pub(super) fn in_general(&self) -> HotFit {
        let mut out = self.clone();
        out.bore.even = false;
        out
    }

    /// The least clearance at the rows of a surface at some angles, where there is surface and wall: rows to begin with.
    fn coarse(&self, index: usize, position: Position) -> Result<Vec<Seen>, Error> {
        let heights = self.stations(index, 0)?.into_iter();
        // what stands out of the bore is not in it
        let places: Vec<_> = heights.filter_map(|z| Some((z, self.depth_mm(z, position).ok()?))).collect();
        let around = (0..ANGLES).filter_map(|k| {
            let angle = 360.0 / f64::from(ANGLES) * f64::from(k);
            let there = places.iter().filter(|(z, y)| self.supported(index, angle, *z, *y));
            let least = there.map(|(z, y)| self.clearance(index, angle, *z, *y)).reduce(smaller)?;
            Some(row(least, turned(1, angle)))
        });
        Ok(around.collect())
    }
}

/// A clearance with what moving toward 0 and 90 degrees takes off it.
fn row(gap: f64, (cosine, sine): (f64, f64)) -> Seen {
    Seen { deviation: gap, gradient: vec![-cosine, -sine] }
}
