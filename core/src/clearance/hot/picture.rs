//! Data to draw. Every list has its unit in its name; a number that does not exist is absent.

use super::{HotFit, Position};
use crate::error::{Error, ErrorKind};
use crate::growth::field::Scenario;

/// Radii of a surface over height, less half the gauge diameter at 20 C.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    /// Heights.
    pub heights_mm: Vec<f64>,
    /// Thrust axis at 20 C.
    pub cold_thrust_mm: Vec<f64>,
    /// Pin axis at 20 C.
    pub cold_pin_mm: Vec<f64>,
    /// Thrust axis in the running engine.
    pub hot_thrust_mm: Vec<f64>,
    /// Pin axis in the running engine.
    pub hot_pin_mm: Vec<f64>,
}

/// A section of piston and bore.
#[derive(Debug, Clone, PartialEq)]
pub struct SectionData {
    /// Angles.
    pub angles_deg: Vec<f64>,
    /// Radius of the piston at 20 C.
    pub piston_cold_mm: Vec<f64>,
    /// Radius of the running piston.
    pub piston_hot_mm: Vec<f64>,
    /// Radius of the bore at 20 C.
    pub bore_cold_mm: Vec<f64>,
    /// Radius of the running bore.
    pub bore_hot_mm: Vec<f64>,
}

/// Clearance on one side over a surface.
#[derive(Debug, Clone, PartialEq)]
pub struct Map {
    /// Angles.
    pub angles_deg: Vec<f64>,
    /// Heights.
    pub heights_mm: Vec<f64>,
    /// A row for every height, an entry for every angle; none where there is no surface, no wall or no bore.
    pub clearance_mm: Vec<Vec<Option<f64>>>,
}

/// `count` numbers evenly from one to another, both among them.
#[must_use]
pub fn evenly(from: f64, to: f64, count: u32) -> Vec<f64> {
    let steps = f64::from(count.saturating_sub(1).max(1));
    (0..count)
        .map(|k| if k + 1 == count && count > 1 { to } else { from + (to - from) * (f64::from(k) / steps) })
        .collect()
}

/// Most places along a line of a picture: more than any screen or sheet shows.
const MOST_PLACES: u32 = 65536;

fn check_count(field: &str, count: u32) -> Result<(), Error> {
    match (2..=MOST_PLACES).contains(&count) {
        true => Ok(()),
        false => {
            let error = Error::new(
                ErrorKind::OutOfRange,
                count.to_string(),
                "a picture has two places at least, and not too many",
            );
            Err(error.value(f64::from(count)).limits(2.0, f64::from(MOST_PLACES), "1").at(field))
        }
    }
}

impl HotFit {
    /// Radii of a surface over `count` heights, 2 to 65536.
    ///
    /// # Errors
    /// When there is no such surface, or the count is not possible.
    pub fn profile(&self, surface: usize, count: u32) -> Result<Profile, Error> {
        let (shape, _) = self.surface(surface)?;
        check_count("count", count)?;
        let heights_mm = evenly(shape.from_mm, shape.to_mm, count);
        let half = self.parts.piston_diameter_mm / 2.0;
        let over = |of: &dyn Fn(f64) -> f64| heights_mm.iter().map(|z| of(*z) - half).collect();
        Ok(Profile {
            cold_thrust_mm: over(&|z| self.piston_cold_mm(surface, 0.0, z)),
            cold_pin_mm: over(&|z| self.piston_cold_mm(surface, 90.0, z)),
            hot_thrust_mm: over(&|z| self.piston_hot_mm(surface, 0.0, z)),
            hot_pin_mm: over(&|z| self.piston_hot_mm(surface, 90.0, z)),
            heights_mm,
        })
    }

    /// A section of a surface at a height, cold and hot, over `count` angles, 2 to 65536.
    ///
    /// # Errors
    /// When there is no surface at the height, no bore at its depth, or the count is not possible.
    pub fn section_at(&self, height_mm: f64, position: Position, count: u32) -> Result<SectionData, Error> {
        let (surface, _) = self.surface_at(height_mm)?;
        let depth = self.depth_mm(height_mm, position)?;
        check_count("count", count)?;
        let angles_deg = evenly(0.0, 360.0, count);
        let around = |of: &dyn Fn(f64) -> f64| angles_deg.iter().map(|t| of(*t)).collect();
        Ok(SectionData {
            piston_cold_mm: around(&|t| self.piston_cold_mm(surface, t, height_mm)),
            piston_hot_mm: around(&|t| self.piston_hot_mm(surface, t, height_mm)),
            bore_cold_mm: around(&|t| self.parts.bore.radius_mm(depth.unwrap_or(0.0), t)),
            bore_hot_mm: around(&|t| self.bore_hot_mm(depth, t)),
            angles_deg,
        })
    }

    /// The clearance over a surface at one position, ready to draw.
    ///
    /// # Errors
    /// When there is no such surface, its position is not known, or the tables of the bore do not reach there.
    pub fn map_of(
        &self,
        surface: usize,
        position: Position,
        angles: u32,
        heights: u32,
    ) -> Result<Map, Error> {
        let (shape, _) = self.surface(surface)?;
        check_count("angles", angles)?;
        check_count("heights", heights)?;
        let angles_deg = evenly(0.0, 360.0, angles);
        let heights_mm = evenly(shape.from_mm, shape.to_mm, heights);
        let mut clearance_mm = Vec::with_capacity(heights_mm.len());
        let base = self.base_depth(position)?;
        for height in &heights_mm {
            let depth = self.depth_in_bore(base, *height)?;
            let at = |angle: &f64| {
                let depth = depth?;
                let there = self.supported(surface, *angle, *height, depth);
                there.then(|| self.clearance(surface, *angle, *height, depth))
            };
            clearance_mm.push(angles_deg.iter().map(at).collect());
        }
        Ok(Map { angles_deg, heights_mm, clearance_mm })
    }

    /// Smallest clearance of the skirt on one side with each factor on the rise of piston and bore.
    ///
    /// # Errors
    /// When a factor leads out of a law.
    pub fn against_rise(&self, factors: &[f64]) -> Result<Vec<f64>, Error> {
        let at = |k: &f64| {
            let rise = Scenario::PistonAndBore.rise(*k);
            self.check_temperatures(rise)?;
            Ok(self.smallest_at_rise(0, rise, None)?.clearance_mm)
        };
        factors.iter().map(at).collect()
    }
}
