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
//! In a bore that is the same at every depth a part that is left open is closed from the bottom of its valley `z0`, found by Newton's method at the angle
//! `t0` of the least clearance. With `m` at most the second derivative and `g` the slope at `z0`,
//!
//! `c(t, z) >= c(t, z0) + g(t) (z - z0) + m (z - z0)^2 / 2`,
//!
//! and the slope leaves that at `t0` by at most `L |u - u0|`, `u = cos 2t`. So what the clearance falls below its section at `z0` is at most
//! `k (u - u0)^2 + k0` with the numbers of `Swell`, and the section of a piston that is larger by so much is below the clearance of the whole part.
//!
//! Parts are halved until either bound leaves less than [`WITHIN`] below the smallest clearance found, each along the side by which the bound loses more: a
//! kink is closed in on by height alone where the bore does not bend. A section's own smallest value over every angle comes
//! from [`least`](crate::clearance::least).

use super::section::{self, BoreAt, LeastOf, Walls};
use super::tables::{Bend, DepthCell, HeightCell, SurfaceTables};
use super::{HotFit, Place, Position};
use crate::error::{Error, ErrorKind};
use crate::growth::field::Rise;
use crate::shape::least::{larger, quotient, smaller};

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
    /// how the clearance bends over the heights by the piston, and over the depths by the bore: here, or over a larger part that holds this one
    bends: [Bend; 2],
    own_bends: bool,
    /// at its lower and its upper end; where the piston moves, the lowest corner
    ends: [LeastOf; 2],
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

/// The smallest clearance so far.
#[derive(Debug, Clone, Copy)]
struct Best {
    least: LeastOf,
    /// height and depth
    at: (f64, f64),
    /// in the list of walls
    place: usize,
}

struct Search<'a> {
    fit: &'a HotFit,
    tables: &'a SurfaceTables,
    rise: Rise,
    stands: Stands,
    /// by height cell, then depth cell
    walls: &'a [Walls],
    /// the bore, where it is the same at every depth
    alike: Option<BoreAt>,
    best: Best,
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
        let walls = self.walls.get(surface).map_or(&[][..], Vec::as_slice);
        let alike = match (stands, self.bore.cells.first()) {
            (Stands::Anywhere, Some(cell)) => Some(self.bore.section(cell, cell.from, rise)),
            _ => None,
        };
        let mut search = Search {
            fit: self,
            tables,
            rise,
            stands,
            walls,
            alike,
            best: Best { least: LeastOf::NOTHING, at: (f64::NAN, f64::NAN), place: 0 },
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
        let Best { least, at: (height, depth), place } = search.best;
        let Some(walls) = search.walls.get(place).filter(|_| least.value.is_finite()) else {
            return Err(not_in_the_bore());
        };
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
        let angle_deg = walls.angle_deg(least.around);
        Ok(Smallest {
            clearance_mm: least.value,
            place: Place { surface, angle_deg, height_mm: height, depth_mm, crank_deg },
            within_mm: larger(least.value - search.lowest, least.within),
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
        // the most promising last, where the next is taken from
        parts.sort_by(|a, b| b.lowest().total_cmp(&a.lowest()));
        while let Some(mut part) = parts.pop() {
            let bound = self.bound(&mut part);
            if self.is_enough(bound) || self.sections > MOST_SECTIONS {
                self.lowest = smaller(self.lowest, bound);
                continue;
            }
            let [first, second] = self.halves(&part);
            let turned = first.lowest() > second.lowest();
            parts.extend(if turned { [first, second] } else { [second, first] });
        }
    }

    fn is_enough(&self, bound: f64) -> bool {
        bound >= self.best.least.value - WITHIN
    }

    /// The parts to begin with.
    fn parts(&mut self) -> Vec<Part> {
        let (heights, depths) = (&self.tables.cells, &self.fit.bore.cells);
        let mut out = Vec::with_capacity(heights.len() * depths.len());
        for (height_cell, height) in heights.iter().enumerate() {
            for (depth_cell, depth) in depths.iter().enumerate() {
                let (mut z, y) = ((height.from, height.to), (depth.from, depth.to));
                match self.stands {
                    Stands::Anywhere if depth_cell > 0 => continue,
                    Stands::At(base) => z = (larger(z.0, base - y.1), smaller(z.1, base - y.0)),
                    _ => {}
                }
                if z.0 <= z.1 {
                    let part = Part { height_cell, depth_cell, z, y: self.depths(z, y), ..Part::NEW };
                    let part = self.with_bends(part, height, depth);
                    out.push(self.with_ends(part, [None, None]));
                }
            }
        }
        out
    }

    /// Depths of a part: where the piston does not move they follow from its heights.
    fn depths(&self, z: (f64, f64), y: (f64, f64)) -> (f64, f64) {
        match self.stands {
            Stands::Anywhere => (y.0, y.0),
            Stands::At(base) => (base - z.1, base - z.0),
            Stands::Between(..) => y,
        }
    }

    fn with_bends(&self, part: Part, height: &HeightCell, depth: &DepthCell) -> Part {
        let by_piston = self.tables.bend(height, part.z, self.rise);
        Part { bends: [by_piston, self.fit.bore.bend(depth, part.y, self.rise)], own_bends: true, ..part }
    }

    /// The part with its ends, of which some are known.
    fn with_ends(&mut self, part: Part, known: [Option<LeastOf>; 2]) -> Part {
        let enough = self.best.least.value + part.sag();
        let ((z0, z1), (y0, y1)) = (part.z, part.y);
        if let Stands::Between(top, bottom) = self.stands {
            let corners = polygon(part.z, part.y, (top, bottom));
            let lowest = corners.into_iter().flatten().fold(LeastOf::NOTHING, |lowest, at| {
                let found = self.meet(&part, at, enough);
                if found.floor() < lowest.floor() { found } else { lowest }
            });
            return Part { ends: [lowest; 2], ..part };
        }
        let [low, high] = known;
        let low = low.unwrap_or_else(|| self.meet(&part, (z0, y1), enough));
        let high = high.unwrap_or_else(|| self.meet(&part, (z1, y0), enough));
        Part { ends: [low, high], ..part }
    }

    /// The section at a place of a part; what is not below `enough` need not be known.
    fn meet(&mut self, part: &Part, at: (f64, f64), enough: f64) -> LeastOf {
        let Some((height, depth, place)) = self.cells(part) else { return LeastOf::NOTHING };
        let Some(walls) = self.walls.get(place) else { return LeastOf::NOTHING };
        let piston = self.tables.section(height, at.0, self.rise);
        let found = match &self.alike {
            Some(bore) => section::least(&piston, bore, walls, enough),
            None => section::least(&piston, &self.fit.bore.section(depth, at.1, self.rise), walls, enough),
        };
        self.sections += 1;
        if found.value < self.best.least.value {
            self.best = Best { least: found, at, place };
        }
        found
    }

    /// The cells of a part, and its place in the list of walls.
    fn cells(&self, part: &Part) -> Option<(&HeightCell, &DepthCell, usize)> {
        let depths = &self.fit.bore.cells;
        let place = part.height_cell * depths.len() + part.depth_cell;
        Some((self.tables.cells.get(part.height_cell)?, depths.get(part.depth_cell)?, place))
    }

    /// A value the clearance is nowhere below in a part: by its ends, and where that is not enough by its valley.
    fn bound(&mut self, part: &mut Part) -> f64 {
        if !part.own_bends
            && !self.is_enough(part.by_ends())
            && let Some((height, depth, _)) = self.cells(part)
        {
            *part = self.with_bends(*part, height, depth);
        }
        let by_ends = part.by_ends();
        match self.is_enough(by_ends) {
            true => by_ends,
            false => self.bound_of_valley(part).map_or(by_ends, |found| larger(found, by_ends)),
        }
    }

    /// The same by its valley, where there is one bore for all depths, one coating, and no kink.
    fn bound_of_valley(&mut self, part: &Part) -> Option<f64> {
        let (.., place) = self.cells(part)?;
        let walls = self.walls.get(place)?;
        let [bend, _] = part.bends;
        if self.alike.is_none() || walls.bare || !bend.smooth {
            return None;
        }
        let valley = self.valley(part, walls);
        let (height, ..) = self.cells(part)?;
        let mut piston = self.tables.section(height, valley.z, self.rise);
        for (cubic, slopes) in piston.cubic.iter_mut().zip(self.tables.slopes(height, valley.z, self.rise)) {
            Swell::of(slopes.map(|c| -c), &valley, part)?.add(cubic, valley.cos_2);
        }
        self.sections += 1;
        let enough = self.best.least.value - WITHIN;
        Some(section::least(&piston, self.alike.as_ref()?, walls, enough).floor())
    }

    /// The bottom of the valley within a part: in turn the height at one angle, and the angle at that height.
    fn valley(&mut self, part: &Part, walls: &Walls) -> Valley {
        let of = |z: f64, least: &LeastOf, walls: &Walls| {
            let (half, cos_2) = walls.half_and_cos_2(least.around);
            Valley { z, half, cos_2, value: least.value }
        };
        let ([low, high], best) = (&part.ends, &self.best);
        let mut valley = match (self.walls.get(best.place), high.value < low.value) {
            (Some(walls), _) if best.at.0 >= part.z.0 && best.at.0 <= part.z.1 => {
                of(best.at.0, &best.least, walls)
            }
            (_, true) => of(part.z.1, high, walls),
            (_, false) => of(part.z.0, low, walls),
        };
        let [bend, _] = part.bends;
        for _ in 0..MOST_TURNS {
            let next = self.downhill(part, &valley);
            let way = next - valley.z;
            if way * way * bend.most <= WITHIN / 64.0 {
                break;
            }
            let found = self.meet(part, (next, part.y.0), f64::INFINITY);
            if found.value >= valley.value {
                break;
            }
            valley = of(next, &found, walls);
        }
        valley
    }

    /// The height of a part at which the clearance at one angle is level, or an end, by Newton's method.
    fn downhill(&self, part: &Part, from: &Valley) -> f64 {
        let Some((height, ..)) = self.cells(part) else { return from.z };
        let ((z0, z1), [most, _]) = (part.z, part.bends);
        let mut z = from.z;
        for _ in 0..MOST_TURNS {
            let radius = self.tables.radius(height, z, self.rise, (from.half, from.cos_2));
            // the clearance shrinks as the piston grows
            let (slope, bend) = (-radius.slope, -radius.bend);
            let next = match (slope > 0.0, libm::fabs(slope) < bend * (z1 - z0)) {
                (_, true) => larger(z0, smaller(z1, z - quotient(slope, bend))),
                (true, _) => z0,
                (false, _) => z1,
            };
            let way = next - z;
            z = next;
            if way * way * most.most <= WITHIN / 1024.0 {
                break;
            }
        }
        z
    }

    /// Halves a part along the side by which it can sag more.
    fn halves(&mut self, part: &Part) -> [Part; 2] {
        let ((z0, z1), (y0, y1)) = (part.z, part.y);
        let [by_piston, by_bore] = part.sags();
        let along_depth = matches!(self.stands, Stands::Between(..)) && by_bore > by_piston;
        let (zm, ym) = ((z0 + z1) / 2.0, (y0 + y1) / 2.0);
        let places = match along_depth {
            true => [(part.z, (y0, ym)), (part.z, (ym, y1))],
            false => [((z0, zm), part.y), ((zm, z1), part.y)],
        };
        let [first, second] =
            places.map(|(z, y)| Part { z, y: self.depths(z, y), own_bends: false, ..*part });
        if matches!(self.stands, Stands::Between(..)) {
            return [self.with_ends(first, [None, None]), self.with_ends(second, [None, None])];
        }
        let [low, high] = part.ends;
        let enough = self.best.least.value + larger(first.sag(), second.sag());
        let middle = self.meet(part, (zm, second.y.1), enough);
        [self.with_ends(first, [Some(low), Some(middle)]), self.with_ends(second, [Some(middle), Some(high)])]
    }
}

impl Part {
    /// Nothing known of it.
    const NEW: Part = Part {
        height_cell: 0,
        depth_cell: 0,
        z: (f64::NAN, f64::NAN),
        y: (f64::NAN, f64::NAN),
        bends: [Bend::NONE; 2],
        own_bends: false,
        ends: [LeastOf::NOTHING; 2],
    };

    /// How far the clearance can be below its lowest corner, by the piston and by the bore.
    fn sags(&self) -> [f64; 2] {
        let ([by_piston, by_bore], (z0, z1), (y0, y1)) = (&self.bends, self.z, self.y);
        [by_piston.sag(z1 - z0), by_bore.sag(y1 - y0)]
    }

    /// The same, together.
    fn sag(&self) -> f64 {
        let [by_piston, by_bore] = self.sags();
        by_piston + by_bore
    }

    /// A value it is nowhere below, by its ends.
    fn by_ends(&self) -> f64 {
        let [low, high] = &self.ends;
        smaller(low.floor(), high.floor()) - self.sag()
    }

    /// Its lower end.
    fn lowest(&self) -> f64 {
        let [low, high] = &self.ends;
        smaller(low.value, high.value)
    }
}

/// Most steps in search of a valley; without them a part is halved.
const MOST_TURNS: u32 = 6;

/// A height of a part, and where around the turn the clearance is least there.
#[derive(Debug, Clone, Copy)]
struct Valley {
    z: f64,
    half: usize,
    cos_2: f64,
    value: f64,
}

/// What a section at one height must be larger by, `k (u - u0)^2 + k0`, to hold the piston of a whole part.
#[derive(Debug, Clone, Copy)]
struct Swell {
    k: f64,
    k0: f64,
}

impl Swell {
    /// From the slope of the clearance by the height as a cubic in `u`; none where no bound of this kind is of use.
    ///
    /// At an end of the part with a slope `g0` that rises into it, `e = g0 - L |u - u0|` is left of it. Over the width `w` the clearance falls by at
    /// most `-e w`, and where it bends up by at most `e^2 / 2m`. As `L d - g0 <= L^2 d^2 / 4 g0`, either is a parabola; of a bend down, `m w / 2` is taken off
    /// the slope first. Anywhere else it falls by at most `(|g0| + L d)^2 / 2m <= (9 g0^2 + 9/8 L^2 d^2) / 2m`.
    fn of([s0, s1, s2, s3]: [f64; 4], valley: &Valley, part: &Part) -> Option<Swell> {
        let ([bend, _], u) = (part.bends, valley.cos_2);
        let m = bend.least;
        let slope = s0 + u * (s1 + u * (s2 + u * s3));
        // of the divided difference, |u| and |u0| being at most 1
        let change = libm::fabs(s1 + u * (s2 + u * s3)) + libm::fabs(s2 + u * s3) + libm::fabs(s3);
        let square = change * change;
        let (z0, z1) = part.z;
        let width = z1 - z0;
        let inward = if valley.z <= z0 {
            slope
        } else if valley.z >= z1 {
            -slope
        } else {
            -1.0
        };
        let left = inward + smaller(m, 0.0) * width / 2.0;
        if left >= 0.0 {
            let by_slope = below_one(square * width, 4.0 * left);
            let by_bend = below_one(square, 2.0 * m);
            let k = [by_slope, by_bend].into_iter().flatten().reduce(smaller)?;
            return Some(Swell { k, k0: 0.0 });
        }
        Some(Swell {
            k: below_one(9.0 / 8.0 * square, 2.0 * m)?,
            k0: below_one(9.0 * slope * slope, 2.0 * m)?,
        })
    }

    /// Makes a cubic in `u` larger.
    fn add(&self, [c0, c1, c2, _]: &mut [f64; 4], u0: f64) {
        *c0 += self.k0 + self.k * u0 * u0;
        *c1 -= 2.0 * self.k * u0;
        *c2 += self.k;
    }
}

/// A quotient of two numbers, where it is below 1: nothing overflows.
fn below_one(above: f64, below: f64) -> Option<f64> {
    (above < below).then(|| quotient(above, below))
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
