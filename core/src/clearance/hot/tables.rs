//! Tables of a fit made ready: cells over height and over depth within which every curve is one cubic and every window is there or not, and
//! the section of piston and bore at any place of a cell, and how they bend there.

use super::bent::{Bent, Quantity, Range};
use super::section::{BoreAt, PistonAt, Region, Walls};
use super::{Parts, Piecewise, SurfaceGrowth};
use crate::clearance::least::Harmonics;
use crate::error::{Error, ErrorKind};
use crate::growth::field::Rise;
use crate::shape::angle::width;
use crate::shape::bore::BoreShape;
use crate::shape::curve::Curve;
use crate::shape::least::{larger, smaller};
use crate::shape::piston::{Side, Surface, WindowKind};
use crate::size::REFERENCE_TEMPERATURE_C;

/// A cubic from the beginning of its cell on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Cubic([f64; 4]);

impl Cubic {
    /// The piece of a curve that a cell lies in.
    fn of(curve: &Curve, from: f64, to: f64) -> Self {
        let middle = (from + to) / 2.0;
        match curve.piece(middle) {
            None => Cubic([curve.value(middle), 0.0, 0.0, 0.0]),
            Some(piece) => {
                let (local, [.., c3]) = (piece.local(from), piece.coefficients);
                Cubic([local.value, local.slope, local.curvature / 2.0, c3])
            }
        }
    }

    fn plus(self, factor: f64, other: Cubic) -> Self {
        let ([a0, a1, a2, a3], [b0, b1, b2, b3]) = (self.0, other.0);
        Cubic([a0 + factor * b0, a1 + factor * b1, a2 + factor * b2, a3 + factor * b3])
    }

    fn raised(self, by: f64) -> Self {
        let [c0, c1, c2, c3] = self.0;
        Cubic([c0 + by, c1, c2, c3])
    }

    pub(super) fn value(&self, x: f64) -> f64 {
        let [c0, c1, c2, c3] = self.0;
        c0 + x * (c1 + x * (c2 + x * c3))
    }

    /// Value, slope and bend at a place.
    fn local(&self, x: f64) -> Bent<f64> {
        let [_, c1, c2, c3] = self.0;
        Bent {
            value: self.value(x),
            slope: c1 + x * (2.0 * c2 + x * (3.0 * c3)),
            bend: 2.0 * c2 + x * (6.0 * c3),
        }
    }

    /// Their ranges between two places: the bend is a straight line, and value and slope leave their chord by at most an eighth of what bends
    /// them times the square of the width.
    fn over(&self, low: f64, high: f64) -> Bent<Range> {
        let (from, to) = (self.local(low), self.local(high));
        let eighth = (high - low) * (high - low) / 8.0;
        let [.., c3] = self.0;
        let bend = Range::between(from.bend, to.bend);
        Bent {
            value: Range::between(from.value, to.value).widened(bend.size() * eighth),
            slope: Range::between(from.slope, to.slope).widened(6.0 * libm::fabs(c3) * eighth),
            bend,
        }
    }

    /// The ranges of a curve that rises or falls all along, as a table of temperatures does between two rows: the value has those of its ends.
    fn over_monotone(&self, low: f64, high: f64) -> Bent<Range> {
        Bent { value: Range::between(self.value(low), self.value(high)), ..self.over(low, high) }
    }
}

/// The stretches between rising breaks.
fn stretches(mut breaks: Vec<f64>, from: f64, to: f64) -> Vec<(f64, f64)> {
    breaks.retain(|b| *b > from && *b < to);
    breaks.push(from);
    breaks.push(to);
    breaks.sort_by(f64::total_cmp);
    breaks.dedup();
    breaks.windows(2).filter_map(|w| if let [a, b] = w { Some((*a, *b)) } else { None }).collect()
}

fn rows(curve: &Curve) -> impl Iterator<Item = f64> {
    curve.pieces().iter().flat_map(|p| [p.from, p.to])
}

/// One half of the turn around an axis: 0 the major, 180 the minor thrust side.
pub(super) const AXES_DEG: [f64; 2] = [0.0, 180.0];

/// Angles about the axis of a half, from -90 to 90.
pub(super) type Span = (f64, f64);

/// Takes an open interval out of closed ones: its ends stay.
fn without(spans: Vec<Span>, from: f64, to: f64) -> Vec<Span> {
    let mut out = Vec::with_capacity(spans.len() + 1);
    for (low, high) in spans {
        if to <= low || from >= high {
            out.push((low, high));
            continue;
        }
        if from >= low {
            out.push((low, from));
        }
        if to <= high {
            out.push((to, high));
        }
    }
    out
}

/// What of closed intervals lies in a closed one.
fn within(spans: &[Span], from: f64, to: f64) -> Vec<Span> {
    let cut = spans.iter().map(|(low, high)| (larger(*low, from), smaller(*high, to)));
    cut.filter(|(low, high)| low <= high).collect()
}

/// The intervals about an axis that a window covers; it may reach over the back of the turn. One of a whole turn has no edges.
fn about(axis: f64, from_deg: f64, to_deg: f64) -> [Span; 3] {
    let width = width(from_deg, to_deg);
    if width >= 360.0 {
        return [(-360.0, 360.0); 3];
    }
    [-360.0, 0.0, 360.0].map(|turn| (from_deg - axis + turn, from_deg - axis + turn + width))
}

/// Heights of a surface over which every curve is one cubic.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct HeightCell {
    pub(super) from: f64,
    pub(super) to: f64,
    /// `a0 + a1 cos 2t + a2 cos^2 2t` of the cold radius of each half
    pub(super) radius: [[Cubic; 3]; 2],
    pub(super) thrust_c: Cubic,
    pub(super) pin_c: Cubic,
    /// with surface, by half
    coated: [Vec<Span>; 2],
    bare: [Vec<Span>; 2],
}

/// A surface made ready.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct SurfaceTables {
    pub(super) cells: Vec<HeightCell>,
    pub(super) growth: SurfaceGrowth,
    coating: f64,
    /// both halves alike
    pub(super) symmetric: bool,
}

impl SurfaceTables {
    pub(super) fn new(parts: &Parts, surface: &Surface) -> Result<Self, Error> {
        let growth = parts
            .growth
            .get(parts.piston.surfaces.iter().position(|s| core::ptr::eq(s, surface)).unwrap_or(0));
        let growth = growth
            .cloned()
            .ok_or_else(|| Error::new(ErrorKind::MissingField, "", "a surface has its growth"))?;
        let field = &parts.piston_field;
        field.check_over(surface.from_mm, surface.to_mm)?;
        let mut breaks: Vec<f64> = rows(&field.thrust_c).chain(rows(&field.pin_c)).collect();
        for side in [&surface.thrust, &surface.minor_thrust] {
            breaks.extend(rows(&side.barrel).chain(rows(&side.ovality)).chain(rows(&side.fourth)));
        }
        breaks.extend(surface.windows.iter().flat_map(|w| [w.from_mm, w.to_mm]));
        let half_gauge = parts.piston_diameter_mm / 2.0;
        let cell = |(from, to): (f64, f64)| HeightCell::new(surface, parts, half_gauge, from, to);
        Ok(SurfaceTables {
            cells: stretches(breaks, surface.from_mm, surface.to_mm).into_iter().map(cell).collect(),
            growth,
            coating: surface.coating_mm,
            symmetric: surface.thrust == surface.minor_thrust,
        })
    }

    /// What there is of surface and wall, by height cell, then depth cell.
    pub(super) fn walls(&self, bore: &BoreTables) -> Result<Vec<Walls>, Error> {
        let pairs = self.cells.iter().flat_map(|height| bore.cells.iter().map(move |depth| (height, depth)));
        pairs.map(|(height, depth)| walls(height, depth, self.symmetric)).collect()
    }

    /// The running piston at a height of a cell.
    pub(super) fn section(&self, cell: &HeightCell, height: f64, rise: Rise) -> PistonAt {
        let x = height - cell.from;
        let SurfaceGrowth { law, ratio_thrust, ratio_pin } = &self.growth;
        let thrust = ratio_thrust * law.strain(rise.piston_c(cell.thrust_c.value(x)));
        let pin = ratio_pin * law.strain(rise.piston_c(cell.pin_c.value(x)));
        // strain is g0 + g1 cos 2t
        let (g0, g1) = (1.0 + (thrust + pin) / 2.0, (thrust - pin) / 2.0);
        let cubic = self.halves(cell, |side| grown(side.map(|c| c.value(x)), g0, g1));
        PistonAt { cubic, coating: [self.coating * g0, self.coating * g1] }
    }

    /// Half the strain on both axes at a place of a cell.
    fn half_strains(&self, cell: &HeightCell, x: f64, rise: Rise) -> [Bent<f64>; 2] {
        let SurfaceGrowth { law, ratio_thrust, ratio_pin } = &self.growth;
        [(&cell.thrust_c, ratio_thrust), (&cell.pin_c, ratio_pin)].map(|(field, ratio)| {
            let celsius = risen(field.local(x), rise.piston);
            celsius.through(law.local(celsius.value)).times(ratio / 2.0)
        })
    }

    /// Slope of the running radius of each half by the height, in `cos 2t`.
    pub(super) fn slopes(&self, cell: &HeightCell, height: f64, rise: Rise) -> [[f64; 4]; 2] {
        let x = height - cell.from;
        let [thrust, pin] = self.half_strains(cell, x, rise);
        let (g0, g1) = ((thrust + pin).raised(1.0), thrust + pin.times(-1.0));
        self.halves(cell, |side| {
            let side = side.map(|c| c.local(x));
            let [p0, p1, p2, p3] = grown(side.map(|c| c.slope), g0.value, g1.value);
            let [q0, q1, q2, q3] = grown(side.map(|c| c.value), g0.slope, g1.slope);
            [p0 + q0, p1 + q1, p2 + q2, p3 + q3]
        })
    }

    /// The running radius of a half at a height and a `cos 2t`, with its derivatives by the height.
    pub(super) fn radius(
        &self,
        cell: &HeightCell,
        height: f64,
        rise: Rise,
        (half, u): (usize, f64),
    ) -> Bent<f64> {
        let x = height - cell.from;
        let [thrust_side, minor_side] = &cell.radius;
        let [a0, a1, a2] = if half == 0 { thrust_side } else { minor_side };
        let [thrust, pin] = self.half_strains(cell, x, rise);
        let cold = a0.local(x) + a1.local(x).times(u) + a2.local(x).times(u * u);
        cold * (thrust.times(1.0 + u) + pin.times(1.0 - u)).raised(1.0)
    }

    fn halves(&self, cell: &HeightCell, of: impl Fn(&[Cubic; 3]) -> [f64; 4]) -> [[f64; 4]; 2] {
        let [thrust_side, minor_side] = &cell.radius;
        let major = of(thrust_side);
        [major, if self.symmetric { major } else { of(minor_side) }]
    }

    /// Bounds of how the clearance bends over heights of a cell, for every angle, the bore left out.
    ///
    /// The radius is `(a0 + a1 u + a2 u^2) (1 + strain)`, u from -1 to 1, and the strain lies between those of both axes.
    pub(super) fn bend(&self, cell: &HeightCell, (z0, z1): (f64, f64), rise: Rise) -> Bend {
        let (low, high) = (z0 - cell.from, z1 - cell.from);
        let SurfaceGrowth { law, ratio_thrust, ratio_pin } = &self.growth;
        let along = |field: &Cubic, ratio: f64| {
            strained(law, risen(field.over_monotone(low, high), rise.piston), ratio)
        };
        let ((thrust, kinks), (pin, more)) =
            (along(&cell.thrust_c, *ratio_thrust), along(&cell.pin_c, *ratio_pin));
        let strain = thrust.hull(pin).raised(1.0);
        let mut out = Bend::NONE;
        for [a0, a1, a2] in cell.radius.iter().take(if self.symmetric { 1 } else { 2 }) {
            let [a0, a1, a2] = [a0, a1, a2].map(|c| c.over(low, high));
            let mut cold = a0 + a1.either_way() + a2.in_part();
            // where a window is bare
            cold.value.low -= self.coating;
            let radius = cold * strain;
            // where the piston grows less steeply from a kink on, the clearance bends down to it
            let jumps = cold.value.size() * larger(kinks.falls, more.falls);
            let here = Bend {
                most: -radius.bend.low,
                least: -radius.bend.high,
                jumps,
                smooth: kinks.none && more.none,
            };
            out = out.or(here);
        }
        out
    }
}

/// `(a0 + a1 u + a2 u^2) (g0 + g1 u)` as a cubic.
fn grown([a0, a1, a2]: [f64; 3], g0: f64, g1: f64) -> [f64; 4] {
    [a0 * g0, a0 * g1 + a1 * g0, a1 * g1 + a2 * g0, a2 * g1]
}

/// A temperature when its rise from 20 C is so many times that of the field.
fn risen<T: Quantity>(field: Bent<T>, factor: f64) -> Bent<T> {
    field.times(factor).raised((1.0 - factor) * REFERENCE_TEMPERATURE_C)
}

/// Kinks of a strain over a stretch.
struct Kinks {
    /// by how much its slope falls at them, together, and by how much it rises
    falls: f64,
    rises: f64,
    none: bool,
}

/// Strain over a stretch of temperatures, and its kinks there.
fn strained(law: &Piecewise, celsius: Bent<Range>, ratio: f64) -> (Bent<Range>, Kinks) {
    let Range { low, high } = celsius.value;
    let steepest = ratio * celsius.slope.size();
    let (falls, rises) = law.jumps(low, high);
    let none = falls + rises <= 0.0;
    let strain = celsius.through(law.ranges(low, high).map(Range::new)).times(ratio);
    (strain, Kinks { falls: falls * steepest, rises: rises * steepest, none })
}

/// How the clearance bends over a stretch, for every angle.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bend {
    /// Its second derivative is between these, kinks apart.
    pub(super) most: f64,
    pub(super) least: f64,
    /// By how much its slope rises at kinks, together.
    pub(super) jumps: f64,
    /// Without kinks.
    pub(super) smooth: bool,
}

impl Bend {
    /// Of a straight line.
    pub(super) const NONE: Bend = Bend { most: 0.0, least: f64::INFINITY, jumps: 0.0, smooth: true };

    fn or(self, other: Bend) -> Bend {
        Bend {
            most: larger(self.most, other.most),
            least: smaller(self.least, other.least),
            jumps: larger(self.jumps, other.jumps),
            smooth: self.smooth && other.smooth,
        }
    }

    /// How far it can sag below the lower of its ends: what bends no more than this, less a parabola, and less the kinks, bends down all along,
    /// and is least at an end.
    pub(super) fn sag(&self, width: f64) -> f64 {
        (self.most * width / 2.0 + self.jumps) * width / 4.0
    }
}

impl HeightCell {
    fn new(surface: &Surface, parts: &Parts, half_gauge: f64, from: f64, to: f64) -> Self {
        let base = half_gauge + surface.coating_mm;
        let radius = [&surface.thrust, &surface.minor_thrust].map(|side| side_cubics(side, base, from, to));
        let middle = (from + to) / 2.0;
        let here = surface.windows.iter().filter(|w| middle > w.from_mm && middle < w.to_mm);
        let mut coated = [vec![(-90.0, 90.0)], vec![(-90.0, 90.0)]];
        if let Some((thrust, minor)) = surface.panel_deg {
            coated = [vec![(-thrust, thrust)], vec![(-minor, minor)]];
        }
        let mut bare: [Vec<Span>; 2] = [Vec::new(), Vec::new()];
        for window in here {
            for ((coated, bare), axis) in coated.iter_mut().zip(&mut bare).zip(AXES_DEG) {
                for (low, high) in about(axis, window.from_deg, window.to_deg) {
                    if window.kind == WindowKind::Bare {
                        bare.extend(within(coated, low, high));
                    } else {
                        *bare = without(core::mem::take(bare), low, high);
                    }
                    *coated = without(core::mem::take(coated), low, high);
                }
            }
        }
        let field = &parts.piston_field;
        HeightCell {
            from,
            to,
            radius,
            thrust_c: Cubic::of(&field.thrust_c, from, to),
            pin_c: Cubic::of(&field.pin_c, from, to),
            coated,
            bare,
        }
    }
}

/// Radius of a side in powers of `cos 2t`, with `cos 4t = 2 cos^2 2t - 1`.
fn side_cubics(side: &Side, base: f64, from: f64, to: f64) -> [Cubic; 3] {
    let barrel = Cubic::of(&side.barrel, from, to);
    let ovality = Cubic::of(&side.ovality, from, to);
    let fourth = Cubic::of(&side.fourth, from, to);
    // r = barrel - ov/2 (1 - cos 2t) + f/2 (1 - cos 4t)
    let zero = Cubic([0.0; 4]);
    [
        barrel.plus(-0.5, ovality).plus(1.0, fourth).raised(base),
        zero.plus(0.5, ovality),
        zero.plus(-1.0, fourth),
    ]
}

/// Depths of a bore over which every curve is one cubic.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct DepthCell {
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) mean: Cubic,
    /// order, cosine and sine part
    pub(super) waves: Vec<(usize, Cubic, Cubic)>,
    pub(super) wall_c: Cubic,
    ports: Vec<(f64, f64)>,
}

/// A bore made ready.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct BoreTables {
    /// the same at every depth: shape and temperature
    pub(super) straight: bool,
    /// cosines of order 2, 4, 6 only
    pub(super) even: bool,
    /// how far the axis of the running bore lies from that of the piston, toward 0 and toward 90 degrees
    pub(super) axis: [f64; 2],
    order: usize,
    pub(super) from_mm: f64,
    pub(super) to_mm: f64,
    end_mm: f64,
    pub(super) cells: Vec<DepthCell>,
    pub(super) law: Piecewise,
}

/// Deepest place of a bore whose tables do not end.
const DEEPEST: f64 = 4000.0;

/// The depths that every table of a bore reaches, within it.
pub(super) fn reach(bore: &BoreShape, wall: &Curve) -> Result<(f64, f64), Error> {
    let waves = bore.harmonics.iter().flat_map(|h| [&h.cos_mm, &h.sin_mm]);
    let ranges = waves.chain([&bore.deviation_mm, wall]).map(Curve::range);
    let all = (0.0, bore.end_mm.unwrap_or(DEEPEST));
    let (from, to) = ranges.fold(all, |(a, b), (c, d)| (larger(a, c), smaller(b, d)));
    match from < to {
        true => Ok((from, to)),
        false => {
            let reason = "the tables of the bore have no depth in common";
            Err(Error::new(ErrorKind::Contradiction, format!("{from} to {to} mm"), reason).at("bore"))
        }
    }
}

impl BoreTables {
    pub(super) fn new(parts: &Parts, depths: Option<(f64, f64)>) -> Result<Self, Error> {
        let bore = &parts.bore;
        let wall = &parts.bore_field.wall_c;
        let mut curves: Vec<(String, &Curve)> = vec![
            ("bore/deviation_mm".to_owned(), &bore.deviation_mm),
            ("bore_field/wall_c".to_owned(), wall),
        ];
        for harmonic in &bore.harmonics {
            curves.push((format!("bore/cos_mm of order {}", harmonic.order), &harmonic.cos_mm));
            curves.push((format!("bore/sin_mm of order {}", harmonic.order), &harmonic.sin_mm));
        }
        let end = bore.end_mm.unwrap_or(DEEPEST);
        if let Some((low, high)) = depths {
            for (name, curve) in &curves {
                for place in [larger(low, 0.0), smaller(high, end)] {
                    curve.check(place).map_err(|e| e.moved(name.clone()))?;
                }
            }
        }
        let (from, to) = reach(bore, wall)?;
        let mut breaks: Vec<f64> = curves.iter().flat_map(|(_, c)| rows(c)).collect();
        breaks.extend(bore.ports.iter().flat_map(|p| [p.from_mm, p.to_mm]));
        let even = bore.harmonics.iter().all(|h| {
            let silent = h.sin_mm.pieces().is_empty() && h.sin_mm.value(0.0) == 0.0;
            matches!(h.order, 2 | 4 | 6)
                && (silent || h.sin_mm.pieces().iter().all(|p| p.coefficients.iter().all(|c| c.abs() <= 0.0)))
        });
        Ok(BoreTables {
            straight: bore.is_straight() && wall.pieces().is_empty(),
            even,
            axis: [0.0; 2],
            order: bore.harmonics.last().map_or(0, |h| h.order),
            from_mm: from,
            to_mm: to,
            end_mm: end,
            cells: stretches(breaks, from, to).into_iter().map(|s| DepthCell::new(parts, s)).collect(),
            law: parts.bore_law.clone(),
        })
    }

    /// Is a depth within the bore?
    pub(super) fn has(&self, depth: f64) -> bool {
        depth >= 0.0 && depth <= self.end_mm
    }

    /// Refuses a depth outside the bore or its tables.
    pub(super) fn check_depth(&self, depth: f64) -> Result<f64, Error> {
        match depth >= self.from_mm && depth <= self.to_mm {
            true => Ok(depth),
            false => {
                let reason = match self.has(depth) {
                    true => "the tables of the bore do not reach there",
                    false => "there is no bore",
                };
                let error = Error::new(ErrorKind::OutOfRange, depth.to_string(), reason);
                Err(error.value(depth).limits(self.from_mm, self.to_mm, "mm").at("depth_mm"))
            }
        }
    }

    /// The running bore at a depth of a cell.
    pub(super) fn section(&self, cell: &DepthCell, depth: f64, rise: Rise) -> BoreAt {
        let x = depth - cell.from;
        let grown = 1.0 + self.law.strain(rise.bore_c(cell.wall_c.value(x)));
        let mean = cell.mean.value(x) * grown;
        if self.even {
            let mut c = [mean, 0.0, 0.0, 0.0];
            for (order, cosine, _) in &cell.waves {
                let a = cosine.value(x) * grown;
                let [c0, c1, c2, c3] = c;
                // cos 4t = 2 u^2 - 1, cos 6t = 4 u^3 - 3 u
                c = match order {
                    2 => [c0, c1 + a, c2, c3],
                    4 => [c0 - a, c1, c2 + 2.0 * a, c3],
                    _ => [c0, c1 - 3.0 * a, c2, c3 + 4.0 * a],
                };
            }
            return BoreAt::Even(c);
        }
        let mut section = Harmonics::round(self.order, mean);
        let [cos, sin] = self.axis;
        section.set(1, cos, sin);
        for (order, cosine, sine) in &cell.waves {
            section.set(*order, cosine.value(x) * grown, sine.value(x) * grown);
        }
        BoreAt::General(section)
    }

    /// Bounds of how the clearance bends over depths of a cell, for every angle, the piston left out.
    pub(super) fn bend(&self, cell: &DepthCell, (y0, y1): (f64, f64), rise: Rise) -> Bend {
        if self.straight {
            return Bend::NONE;
        }
        let (low, high) = (y0 - cell.from, y1 - cell.from);
        let wall = risen(cell.wall_c.over_monotone(low, high), rise.bore);
        let (strain, kinks) = strained(&self.law, wall, 1.0);
        let waves = cell.waves.iter().flat_map(|(_, cosine, sine)| [cosine, sine]);
        let cold = waves.fold(cell.mean.over(low, high), |sum, wave| sum + wave.over(low, high).either_way());
        let radius = cold * strain.raised(1.0);
        let jumps = cold.value.size() * kinks.rises;
        Bend::NONE.or(Bend { most: radius.bend.high, least: radius.bend.low, jumps, smooth: kinks.none })
    }
}

impl DepthCell {
    fn new(parts: &Parts, (from, to): (f64, f64)) -> Self {
        let bore = &parts.bore;
        let middle = (from + to) / 2.0;
        let of = |curve: &Curve| Cubic::of(curve, from, to);
        let here = bore.ports.iter().filter(|p| middle > p.from_mm && middle < p.to_mm);
        DepthCell {
            from,
            to,
            mean: of(&bore.deviation_mm).raised(bore.diameter_mm / 2.0),
            waves: bore.harmonics.iter().map(|h| (h.order, of(&h.cos_mm), of(&h.sin_mm))).collect(),
            wall_c: of(&parts.bore_field.wall_c),
            ports: here.map(|p| (p.from_deg, p.to_deg)).collect(),
        }
    }
}

/// What there is of surface at heights of one cell and of wall at depths of another.
fn walls(height: &HeightCell, depth: &DepthCell, symmetric: bool) -> Result<Walls, Error> {
    let mut out = Vec::new();
    for (half, axis) in AXES_DEG.into_iter().enumerate() {
        for (spans, bare) in [(height.coated.get(half), false), (height.bare.get(half), true)] {
            let mut spans = spans.cloned().unwrap_or_default();
            for (low, high) in depth.ports.iter().flat_map(|(from, to)| about(axis, *from, *to)) {
                spans = without(spans, low, high);
            }
            out.extend(spans.into_iter().map(|span| Region::new(half, span, bare)));
        }
    }
    Walls::new(out, symmetric)
}
