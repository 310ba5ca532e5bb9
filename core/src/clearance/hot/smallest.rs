//! The smallest clearance of a surface over angle, height and crank angle, with a proof of how much smaller it could be.
//!
//! In height `z` and depth `y` the clearance is a difference, `R(t, y) - r(t, z)`, and the places the piston comes to are those with a travel
//! `s = y - y0 + z` between 0 and the stroke. Let `M` be at least the second derivative of `-r` over the heights of a cell, for every angle,
//! and `N` that of `R` over its depths. Less `M (z - z_mid)^2 / 2 + N (y - y_mid)^2 / 2` the clearance is concave for every angle, so over any convex
//! polygon it is smallest at a corner:
//!
//! `c >= smallest corner section - (M w_z / 2 + J) w_z / 4 - (N w_y / 2 + K) w_y / 4`,
//!
//! with J and K the jumps of the slope at the kinks of the laws of expansion.
//!
//! Cells are halved until that bound leaves less than [`WITHIN`] below the smallest clearance found. A section's own smallest value over every angle comes from
//! [`least`](crate::clearance::least).

use super::tables::{self, BoreAt, DepthCell, HeightCell, LeastOf, PistonAt, Region, SurfaceTables};
use super::{HotFit, Place, Position};
use crate::error::{Error, ErrorKind};
use crate::growth::field::Rise;
use crate::shape::least::{larger, smaller};

/// What is left unproven of the smallest clearance, in mm.
pub const WITHIN: f64 = 1e-9;

/// Most sections that are looked at; then the proof is as good as it is, and says so.
const MOST_SECTIONS: u32 = 2_000_000;

/// The smallest clearance of a surface.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Smallest {
    /// On one side; negative for an overlap.
    pub clearance_mm: f64,
    /// Where it is.
    pub place: Place,
    /// How far the true smallest clearance can lie below.
    pub within_mm: f64,
    /// Sections that were looked at.
    pub sections: u32,
}

/// A part of height and depth that is looked at as one.
#[derive(Debug, Clone, Copy)]
struct Part {
    height_cell: usize,
    depth_cell: usize,
    z: (f64, f64),
    y: (f64, f64),
}

/// Corners of a part, in height and depth.
type Corners = [Option<(f64, f64)>; 12];

/// Where the piston may stand.
#[derive(Debug, Clone, Copy)]
enum Stands {
    /// the bore is the same everywhere
    Anywhere,
    /// depth of the bottom edge
    At(f64),
    /// depths of the bottom edge, at top and bottom dead centre
    Between(f64, f64),
}

struct Search<'a> {
    fit: &'a HotFit,
    tables: &'a SurfaceTables,
    rise: Rise,
    stands: Stands,
    /// by height cell, then depth cell
    regions: &'a [Vec<Region>],
    /// the bore, where it is the same at every depth
    alike: Option<BoreAt>,
    best: LeastOf,
    at: (f64, f64),
    lowest: f64,
    sections: u32,
}

impl HotFit {
    /// The smallest clearance of a surface over angle, height and every crank angle.
    ///
    /// # Errors
    /// When there is no such surface, or its place in the bore matters and is not known.
    pub fn smallest(&self, surface: usize) -> Result<Smallest, Error> {
        self.smallest_at_rise(surface, self.rise, None)
    }

    /// The smallest clearance of a surface where the piston stands at one position.
    ///
    /// # Errors
    /// As [`HotFit::smallest`].
    pub fn smallest_at(&self, surface: usize, position: Position) -> Result<Smallest, Error> {
        self.smallest_at_rise(surface, self.rise, Some(position))
    }

    /// The same with other rises, which were checked.
    pub(super) fn smallest_at_rise(
        &self,
        surface: usize,
        rise: Rise,
        position: Option<Position>,
    ) -> Result<Smallest, Error> {
        let (_, tables) = self.surface(surface)?;
        let stands = self.stands(position)?;
        let regions = self.regions.get(surface).map_or(&[][..], Vec::as_slice);
        let alike = match (stands, self.bore.cells.first()) {
            (Stands::Anywhere, Some(cell)) => Some(self.bore.section(cell, cell.from, rise)),
            _ => None,
        };
        let mut search = Search {
            fit: self,
            tables,
            rise,
            stands,
            regions,
            alike,
            best: LeastOf { value: f64::INFINITY, within: 0.0, angle_deg: 0.0 },
            at: (f64::NAN, f64::NAN),
            lowest: f64::INFINITY,
            sections: 0,
        };
        search.run();
        self.told(surface, position, &search)
    }

    fn stands(&self, position: Option<Position>) -> Result<Stands, Error> {
        if let Some(position) = position {
            let base = self.base_depth(position)?;
            return Ok(if self.bore.straight || !base.is_finite() {
                Stands::Anywhere
            } else {
                Stands::At(base)
            });
        }
        if self.bore.straight {
            return Ok(Stands::Anywhere);
        }
        match &self.parts.motion {
            Some(motion) => {
                Ok(Stands::Between(motion.base_depth(0.0), motion.base_depth(motion.stroke_mm())))
            }
            None => Err(Error::new(
                ErrorKind::MissingField,
                "",
                "the bore changes with depth, and crank, rod and deck are not known",
            )
            .at("motion")),
        }
    }

    fn told(
        &self,
        surface: usize,
        position: Option<Position>,
        search: &Search<'_>,
    ) -> Result<Smallest, Error> {
        let (height, depth) = search.at;
        if !search.best.value.is_finite() {
            return Err(not_in_the_bore());
        }
        let (depth_mm, crank_deg) = match (search.stands, position, &self.parts.motion) {
            (Stands::Anywhere, ..) => (None, None),
            (Stands::At(base), Some(Position::Crank(crank)), _) => (Some(base - height), Some(crank)),
            (Stands::At(base), _, Some(motion)) => {
                (Some(base - height), Some(motion.crank_deg(base - motion.base_depth(0.0))))
            }
            (Stands::At(base), ..) => (Some(base - height), None),
            (Stands::Between(top, _), _, Some(motion)) => {
                (Some(depth), Some(motion.crank_deg(depth + height - top)))
            }
            (Stands::Between(..), ..) => (Some(depth), None),
        };
        let place =
            Place { surface, angle_deg: search.best.angle_deg, height_mm: height, depth_mm, crank_deg };
        Ok(Smallest {
            clearance_mm: search.best.value,
            place,
            within_mm: larger(search.best.value - search.lowest, search.best.within),
            sections: search.sections,
        })
    }
}

pub(super) fn not_in_the_bore() -> Error {
    Error::new(ErrorKind::Contradiction, "", "no part of the surface is in the bore").at("surface")
}

impl Search<'_> {
    fn run(&mut self) {
        let mut parts = self.parts();
        parts.reverse();
        while let Some(part) = parts.pop() {
            let bound = self.look(&part);
            if bound >= self.best.value - WITHIN || self.sections > MOST_SECTIONS {
                self.lowest = smaller(self.lowest, bound);
                continue;
            }
            let [first, second] = self.halves(&part);
            parts.push(second);
            parts.push(first);
        }
    }

    /// The parts to begin with.
    fn parts(&self) -> Vec<Part> {
        let mut out = Vec::new();
        for (height_cell, height) in self.tables.cells.iter().enumerate() {
            for (depth_cell, depth) in self.fit.bore.cells.iter().enumerate() {
                let (z, y) = ((height.from, height.to), (depth.from, depth.to));
                let part = match self.stands {
                    Stands::Anywhere => (depth_cell == 0).then_some(Part { height_cell, depth_cell, z, y }),
                    Stands::At(base) => {
                        let z = (larger(z.0, base - y.1), smaller(z.1, base - y.0));
                        (z.0 <= z.1).then_some(Part { height_cell, depth_cell, z, y })
                    }
                    Stands::Between(..) => Some(Part { height_cell, depth_cell, z, y }),
                };
                out.extend(part);
            }
        }
        out
    }

    /// Looks at the corners of a part; a value the clearance is nowhere below there.
    fn look(&mut self, part: &Part) -> f64 {
        let fit = self.fit;
        let (Some(height), Some(depth)) =
            (self.tables.cells.get(part.height_cell), fit.bore.cells.get(part.depth_cell))
        else {
            return f64::INFINITY;
        };
        let place = part.height_cell * fit.bore.cells.len() + part.depth_cell;
        let (z0, z1) = part.z;
        let mut corners: Corners = [None; 12];
        let y = match self.stands {
            Stands::Anywhere => {
                corners[0] = Some((z0, depth.from));
                corners[1] = Some((z1, depth.from));
                (depth.from, depth.from)
            }
            Stands::At(base) => {
                corners[0] = Some((z0, base - z0));
                corners[1] = Some((z1, base - z1));
                (base - z1, base - z0)
            }
            Stands::Between(top, bottom) => {
                corners = polygon(part.z, part.y, (top, bottom));
                part.y
            }
        };
        let mut lowest = f64::INFINITY;
        for (z, y) in corners.into_iter().flatten() {
            let piston = self.tables.section(height, z, self.rise);
            let bore = self.alike.unwrap_or_else(|| fit.bore.section(depth, y, self.rise));
            lowest = smaller(lowest, self.meet(place, &piston, &bore, (z, y)));
        }
        let (wz, wy) = (z1 - z0, y.1 - y.0);
        let (m, j) = piston_bend(self.tables, height, part.z, self.rise);
        let (n, k) = bore_bend(fit, depth, y, self.rise);
        lowest - (m * wz / 2.0 + j) * wz / 4.0 - (n * wy / 2.0 + k) * wy / 4.0
    }

    fn meet(&mut self, place: usize, piston: &PistonAt, bore: &BoreAt, at: (f64, f64)) -> f64 {
        let Some(regions) = self.regions.get(place) else {
            return f64::INFINITY;
        };
        let found = tables::least(piston, bore, regions);
        self.sections += 1;
        if found.value < self.best.value {
            self.best = found;
            self.at = at;
        }
        found.value - found.within
    }

    /// Halves a part along the direction whose bend costs most.
    fn halves(&self, part: &Part) -> [Part; 2] {
        let ((z0, z1), (y0, y1)) = (part.z, part.y);
        let along_depth = matches!(self.stands, Stands::Between(..)) && y1 - y0 > z1 - z0;
        if along_depth {
            let middle = (y0 + y1) / 2.0;
            return [Part { y: (y0, middle), ..*part }, Part { y: (middle, y1), ..*part }];
        }
        let middle = (z0 + z1) / 2.0;
        [Part { z: (z0, middle), ..*part }, Part { z: (middle, z1), ..*part }]
    }
}

/// Corners of the part of a rectangle in which the depth of the bottom edge, `y + z`, is within its range.
fn polygon((z0, z1): (f64, f64), (y0, y1): (f64, f64), (top, bottom): (f64, f64)) -> Corners {
    let within = |(z, y): (f64, f64)| (z + y >= top && z + y <= bottom).then_some((z, y));
    // where a line of one travel meets the sides; through a corner it does so twice, and rounding must not lose one: a place that is
    // a hair outside only lowers the bound
    let crossing = |base: f64| {
        let on_side = [(z0, base - z0), (z1, base - z1), (base - y0, y0), (base - y1, y1)];
        on_side.map(|(z, y)| {
            let inside = z >= z0 - HAIR && z <= z1 + HAIR && y >= y0 - HAIR && y <= y1 + HAIR;
            inside.then_some((z, y))
        })
    };
    let ([a, b, c, d], [e, f, g, h]) = (crossing(top), crossing(bottom));
    [within((z0, y0)), within((z0, y1)), within((z1, y0)), within((z1, y1)), a, b, c, d, e, f, g, h]
}

/// Rounding of a height or a depth, in mm, and far above it.
const HAIR: f64 = 1e-10;

/// At least the second derivative of the negative hot radius over height, for every angle, and the jumps of its slope at kinks of the law.
fn piston_bend(tables: &SurfaceTables, cell: &HeightCell, (z0, z1): (f64, f64), rise: Rise) -> (f64, f64) {
    let (low, high) = (z0 - cell.from, z1 - cell.from);
    let law = &tables.growth.law;
    let mut strain = (0.0_f64, 0.0_f64, 0.0_f64);
    let mut kink = 0.0;
    for (field, ratio) in
        [(&cell.thrust_c, tables.growth.ratio_thrust), (&cell.pin_c, tables.growth.ratio_pin)]
    {
        let slope = libm::fabs(rise.piston) * field.steepest(low, high);
        let bend = libm::fabs(rise.piston) * field.most_bent(low, high);
        let (t0, t1) = (rise.piston_c(field.value(low)), rise.piston_c(field.value(high)));
        let (t0, t1) = (smaller(t0, t1), larger(t0, t1));
        let (steep, bent) = (law.steepest(t0, t1), law.most_bent(t0, t1));
        let size = larger(libm::fabs(law.strain(t0)), libm::fabs(law.strain(t1)));
        strain.0 = larger(strain.0, ratio * size);
        strain.1 = larger(strain.1, ratio * steep * slope);
        strain.2 = larger(strain.2, ratio * (bent * slope * slope + steep * bend));
        // where the piston grows less steeply from a kink on, the clearance bends down to it
        kink = larger(kink, ratio * law.jumps(t0, t1).0 * slope);
    }
    let mut most = (0.0, 0.0);
    for side in cell.radius.iter().take(if tables.symmetric { 1 } else { 2 }) {
        let [a0, a1, a2] = side;
        let size = a0.largest(low, high) + a1.largest(low, high) + a2.largest(low, high);
        let slope = a0.steepest(low, high) + a1.steepest(low, high) + a2.steepest(low, high);
        // -(a0'' + a1'' u + a2'' u^2) at both ends, u from -1 to 1
        let down = |x: f64| -a0.bend(x) + libm::fabs(a1.bend(x)) + larger(-a2.bend(x), 0.0);
        let both = |x: f64| libm::fabs(a0.bend(x)) + libm::fabs(a1.bend(x)) + libm::fabs(a2.bend(x));
        let own = larger(down(low), down(high));
        let extra = larger(both(low), both(high)) * strain.0 + 2.0 * slope * strain.1 + size * strain.2;
        most = (larger(most.0, own + extra), larger(most.1, size * kink));
    }
    most
}

/// At least the second derivative of the hot radius of the bore over depth, for every angle, and the jumps of its slope at kinks of the law.
fn bore_bend(fit: &HotFit, cell: &DepthCell, (y0, y1): (f64, f64), rise: Rise) -> (f64, f64) {
    let (low, high) = (y0 - cell.from, y1 - cell.from);
    if fit.bore.straight {
        return (0.0, 0.0);
    }
    let law = &fit.bore.law;
    let wall_slope = libm::fabs(rise.bore) * cell.wall_c.steepest(low, high);
    let bend = libm::fabs(rise.bore) * cell.wall_c.most_bent(low, high);
    let (t0, t1) = (rise.bore_c(cell.wall_c.value(low)), rise.bore_c(cell.wall_c.value(high)));
    let (t0, t1) = (smaller(t0, t1), larger(t0, t1));
    let (steep, bent) = (law.steepest(t0, t1), law.most_bent(t0, t1));
    let strain = larger(libm::fabs(law.strain(t0)), libm::fabs(law.strain(t1)));
    let strain_slope = steep * wall_slope;
    let strain_bend = bent * wall_slope * wall_slope + steep * bend;
    let mut up = larger(cell.mean.bend(low), cell.mean.bend(high));
    let mut both = cell.mean.most_bent(low, high);
    let mut slope = cell.mean.steepest(low, high);
    let mut size = cell.mean.largest(low, high);
    for (_, cosine, sine) in &cell.waves {
        for wave in [cosine, sine] {
            let bent = wave.most_bent(low, high);
            up += bent;
            both += bent;
            slope += wave.steepest(low, high);
            size += wave.largest(low, high);
        }
    }
    let bend = up + both * strain + 2.0 * slope * strain_slope + size * strain_bend;
    (larger(0.0, bend), size * law.jumps(t0, t1).1 * wall_slope)
}
