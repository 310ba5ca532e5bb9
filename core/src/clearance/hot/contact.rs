//! Where a surface overlaps, and over which area.
//!
//! At a height the clearance is a short trigonometric polynomial on every part of the turn that has surface and wall, and the angles where it is below a level
//! are found without a grid: an overlap may be as narrow as it likes. Heights are looked at by stations, with that of the smallest clearance among them. Between
//! two stations the area is taken by halving until the middle of a step agrees with its ends; an overlap that begins and ends between two stations, beside
//! the deepest one, is not seen.

use super::section::Walls;
use super::tables::{DepthCell, HeightCell, SurfaceTables};
use super::{HotFit, Position};
use crate::error::Error;
use crate::shape::least::{larger, smaller};
use core::f64::consts::PI;

/// Steps from one row of the tables to the next.
const STEPS: u16 = 17;
/// A step is halved until its middle changes its area by less than this, in mm2.
const AREA_WITHIN: f64 = 1e-3;
/// Most halvings of a step: at the end of a patch its width is a root.
const HALVINGS: u32 = 12;
/// Parts of the turn nearer than this, in degrees, are one: rounding of an edge.
const HAIR: f64 = 1e-9;

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
    /// Where a surface has less clearance than `below_mm` on one side, at one position. The angles are exact; the area is that between the stations to about a
    /// hundredth of a square millimetre.
    ///
    /// # Errors
    /// When there is no such surface, its position is not known, or no part of it is in the bore.
    pub fn contact(&self, surface: usize, position: Position, below_mm: f64) -> Result<Patch, Error> {
        super::TOUCHING.check("below_mm", below_mm)?;
        let deepest = self.smallest_at(surface, position)?;
        let mut patch = Patch { area_mm2: 0.0, bands: Vec::new() };
        if deepest.clearance_mm >= below_mm {
            return Ok(patch);
        }
        let fit = self.in_general();
        let base = fit.base_depth(position)?;
        for stretch in fit.stretches(surface, base, below_mm)? {
            stretch.add(deepest.place.height_mm, &mut patch);
        }
        Ok(patch)
    }

    /// The heights of a surface that are in the bore, with its bottom edge at a depth, cell by cell.
    fn stretches(&self, surface: usize, base: f64, level: f64) -> Result<Vec<Stretch<'_>>, Error> {
        let (_, tables) = self.surface(surface)?;
        let walls = self.walls.get(surface).map_or(&[][..], Vec::as_slice);
        // a bore that is the same at every depth has one cell that matters
        let bore =
            if self.bore.straight { self.bore.cells.get(..1) } else { Some(self.bore.cells.as_slice()) };
        let bore = bore.unwrap_or_default();
        let by_height = walls.chunks(self.bore.cells.len().max(1));
        let mut out = Vec::new();
        for (height, walls) in tables.cells.iter().zip(by_height) {
            // deeper cells are lower on the piston
            for (depth, walls) in bore.iter().zip(walls).rev() {
                let (from, to) = match self.bore.straight {
                    true => (height.from, height.to),
                    false => (larger(height.from, base - depth.to), smaller(height.to, base - depth.from)),
                };
                if from < to {
                    out.push(Stretch { fit: self, tables, height, depth, walls, base, level, from, to });
                }
            }
        }
        Ok(out)
    }
}

/// Heights within one cell of the piston and one of the bore.
struct Stretch<'a> {
    fit: &'a HotFit,
    tables: &'a SurfaceTables,
    height: &'a HeightCell,
    depth: &'a DepthCell,
    walls: &'a Walls,
    base: f64,
    level: f64,
    from: f64,
    to: f64,
}

impl Stretch<'_> {
    /// Adds what touches here.
    fn add(&self, deepest: f64, patch: &mut Patch) {
        let step = (self.to - self.from) / f64::from(STEPS);
        let mut stations: Vec<f64> = (0..STEPS).map(|k| self.from + f64::from(k) * step).collect();
        stations.push(self.to);
        if deepest > self.from && deepest < self.to {
            stations.push(deepest);
            stations.sort_by(f64::total_cmp);
        }
        let mut last: Option<(f64, f64)> = None;
        for height in stations {
            let parts = self.below(height);
            let here = (height, width(&parts));
            patch.area_mm2 += last.map_or(0.0, |lower| self.area(lower, here, HALVINGS));
            last = Some(here);
            tell(height, parts, &mut patch.bands);
        }
    }

    /// Area between two heights, from the widths of what touches at them.
    fn area(&self, lower: (f64, f64), upper: (f64, f64), halvings: u32) -> f64 {
        let middle = (lower.0 + upper.0) / 2.0;
        let radius = self.fit.parts.piston_diameter_mm / 2.0;
        let here = (middle, width(&self.below(middle)));
        let tall = (upper.0 - lower.0) * radius * (PI / 180.0);
        let bent = (here.1 - (lower.1 + upper.1) / 2.0).abs() * tall;
        match halvings.checked_sub(1).filter(|_| bent > AREA_WITHIN) {
            Some(left) => self.area(lower, here, left) + self.area(here, upper, left),
            // Simpson's rule
            None => (lower.1 + 4.0 * here.1 + upper.1) / 6.0 * tall,
        }
    }

    /// The parts of the turn that are below the level at a height, apart from each other and rising.
    fn below(&self, height: f64) -> Vec<(f64, f64)> {
        let depth = if self.fit.bore.straight { self.depth.from } else { self.base - height };
        let piston = self.tables.section(self.height, height, self.fit.rise);
        let bore = self.fit.bore.section(self.depth, depth, self.fit.rise);
        let sections = self.walls.sections(&piston, &bore);
        let parts = sections
            .flat_map(|(section, arcs)| arcs.iter().flat_map(move |arc| section.below(self.level, *arc)));
        joined(parts.collect())
    }
}

/// Tells the parts at a height; one that has been told for the stretch below is told once.
fn tell(height_mm: f64, parts: Vec<(f64, f64)>, bands: &mut Vec<Band>) {
    let at = bands.partition_point(|b| b.height_mm < height_mm);
    let known = bands.split_off(at).into_iter().map(|b| (b.from_deg, b.to_deg));
    let all = joined(known.chain(parts).collect());
    bands.extend(all.into_iter().map(|(from_deg, to_deg)| Band { height_mm, from_deg, to_deg }));
}

fn width(parts: &[(f64, f64)]) -> f64 {
    parts.iter().fold(0.0, |sum, (from, to)| sum + (to - from))
}

/// Parts of the turn that meet as one, each beginning at 0 up to 360.
fn joined(mut parts: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    parts.retain(|(from, to)| from < to);
    for part in &mut parts {
        let turn = if part.0 >= 360.0 { 360.0 } else { 0.0 };
        *part = (part.0 - turn, part.1 - turn);
    }
    crate::order::sort_by(&mut parts, |a, b| a.0.total_cmp(&b.0));
    let mut out: Vec<(f64, f64)> = Vec::with_capacity(parts.len());
    for (from, to) in parts {
        match out.last_mut() {
            Some(last) if from <= last.1 + HAIR => last.1 = larger(last.1, to),
            _ => out.push((from, to)),
        }
    }
    // over the thrust axis
    if let (Some(first), Some(last)) = (out.first().copied(), out.last().copied())
        && last.1 >= first.0 + 360.0 - HAIR
    {
        if out.len() == 1 {
            return vec![(0.0, 360.0)];
        }
        out.remove(0);
        if let Some(end) = out.last_mut() {
            end.1 = larger(end.1, first.1 + 360.0);
        }
    }
    out
}
