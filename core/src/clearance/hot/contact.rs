//! Where a surface overlaps, and over which area.
//!
//! At stations of height the edges of the overlap are found between whole degrees by halving; over height the area is the trapezoid rule on the
//! stations. An overlap that is narrower than a degree and lies between two of them is not seen.

use super::{HotFit, Position};
use crate::error::Error;

/// Heights between two rows of the tables that are looked at.
const BETWEEN: u16 = 16;
/// Halvings of a degree: the edge is within a millionth of it.
const HALVINGS: u32 = 20;

/// Where a surface is below a clearance.
#[derive(Debug, Clone, PartialEq)]
pub struct Patch {
    /// Area of the surface there.
    pub area_mm2: f64,
    /// Angles, height by height.
    pub bands: Vec<Band>,
}

/// Angles at one height.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// The height.
    pub height_mm: f64,
    /// First angle, from 0 up to 360.
    pub from_deg: f64,
    /// Last angle, not below the first: above 360 when the band goes over the thrust axis.
    pub to_deg: f64,
}

impl HotFit {
    /// Where a surface has less clearance than `below_mm` on one side, at one position.
    ///
    /// # Errors
    /// When there is no such surface or its position is not known.
    pub fn contact(&self, surface: usize, position: Position, below_mm: f64) -> Result<Patch, Error> {
        super::TOUCHING.check("below_mm", below_mm)?;
        let mut bands = Vec::new();
        let mut area = 0.0;
        let mut last: Option<(f64, f64)> = None;
        for height in self.stations(surface, BETWEEN)? {
            let Ok(depth) = self.depth_mm(height, position) else {
                last = None;
                continue;
            };
            let below = |angle: f64| {
                let angle = if angle >= 360.0 { angle - 360.0 } else { angle };
                self.supported(surface, angle, height, depth)
                    && self.clearance(surface, angle, height, depth) < below_mm
            };
            let found = around(below);
            let width = found.iter().fold(0.0, |sum, (from, to)| sum + (to - from));
            let arc = self.parts.piston_diameter_mm / 2.0 * (width * (core::f64::consts::PI / 180.0));
            if let Some((lower, before)) = last {
                area += (height - lower) * (before + arc) / 2.0;
            }
            last = Some((height, arc));
            bands.extend(found.into_iter().map(|(from_deg, to_deg)| Band {
                height_mm: height,
                from_deg,
                to_deg,
            }));
        }
        Ok(Patch { area_mm2: area, bands })
    }
}

/// Stretches of the turn where something holds.
fn around(holds: impl Fn(f64) -> bool) -> Vec<(f64, f64)> {
    let there: Vec<bool> = (0..360_u16).map(|degree| holds(f64::from(degree))).collect();
    let at = |degree: usize| there.get(degree % 360).copied().unwrap_or_default();
    let Some(start) = (0..360).find(|degree| !at(*degree)) else {
        return vec![(0.0, 360.0)];
    };
    let edge = |inside: f64, outside: f64| {
        let (mut inside, mut outside) = (inside, outside);
        for _ in 0..HALVINGS {
            let middle = (inside + outside) / 2.0;
            if holds(middle) { inside = middle } else { outside = middle }
        }
        inside
    };
    let mut out = Vec::new();
    let mut from: Option<f64> = None;
    for step in start..start + 360 {
        #[expect(clippy::cast_precision_loss, reason = "below 720")]
        let (here, next) = (step as f64, (step + 1) as f64);
        match (at(step), at(step + 1), from) {
            (false, true, _) => from = Some(edge(next, here)),
            (true, false, Some(begin)) => {
                let turn = if begin >= 360.0 { 360.0 } else { 0.0 };
                out.push((begin - turn, edge(here, next) - turn));
                from = None;
            }
            _ => {}
        }
    }
    out
}
