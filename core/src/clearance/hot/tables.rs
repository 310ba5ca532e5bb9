//! Tables of a fit made ready: cells over height and over depth within which every curve is one cubic and every window is there or not, and
//! the section of piston and bore at any place of a cell.

use super::{Parts, SurfaceGrowth};
use crate::clearance::least::{Arc, EvenHarmonics, Harmonics};
use crate::error::{Error, ErrorKind};
use crate::growth::field::Rise;
use crate::shape::angle::{turned, width};
use crate::shape::curve::Curve;
use crate::shape::least::{larger, smaller};
use crate::shape::piston::{Side, Surface, WindowKind};
use core::f64::consts::PI;

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

    /// Second derivative; a straight line.
    pub(super) fn bend(&self, x: f64) -> f64 {
        let [_, _, c2, c3] = self.0;
        2.0 * c2 + x * (6.0 * c3)
    }

    /// Largest absolute slope between two places.
    pub(super) fn steepest(&self, low: f64, high: f64) -> f64 {
        let [_, c1, c2, c3] = self.0;
        let slope = |x: f64| libm::fabs(c1 + x * (2.0 * c2 + x * (3.0 * c3)));
        let ends = larger(slope(low), slope(high));
        // the parabola turns between
        match 3.0 * libm::fabs(c3) * (high - low) > 0.0 {
            true => {
                let turn = -c2 / (3.0 * c3);
                if turn > low && turn < high { larger(ends, slope(turn)) } else { ends }
            }
            false => ends,
        }
    }

    /// At least every absolute value between two places: it may turn between them.
    pub(super) fn largest(&self, low: f64, high: f64) -> f64 {
        libm::fabs(self.value(low)) + self.steepest(low, high) * (high - low)
    }

    /// Largest absolute second derivative between two places.
    pub(super) fn most_bent(&self, low: f64, high: f64) -> f64 {
        larger(libm::fabs(self.bend(low)), libm::fabs(self.bend(high)))
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
type Span = (f64, f64);

/// A part of the turn that has surface and wall, with or without coating.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Region {
    /// 0 for the half around the major thrust side, 1 for the other.
    pub(super) half: usize,
    span: Span,
    /// The same in `cos 2t`.
    low: f64,
    high: f64,
    pub(super) arc: Arc,
    pub(super) bare: bool,
}

impl Region {
    fn new(half: usize, span: Span, bare: bool) -> Result<Self, Error> {
        let (from, to) = span;
        let (near, far) =
            (smaller(libm::fabs(from), libm::fabs(to)), larger(libm::fabs(from), libm::fabs(to)));
        let near = if from <= 0.0 && to >= 0.0 { 0.0 } else { near };
        let axis = AXES_DEG.get(half).copied().unwrap_or(0.0);
        let begin = if axis + from < 0.0 { axis + from + 360.0 } else { axis + from };
        Ok(Region {
            half,
            span,
            low: turned(2, far).0,
            high: turned(2, near).0,
            arc: Arc::new(begin, begin + (to - from))?,
            bare,
        })
    }

    /// An angle of the region with this `cos 2t`.
    fn angle_deg(&self, cos_2: f64) -> f64 {
        let (from, to) = self.span;
        let from_axis = libm::acos(cos_2) * (90.0 / PI);
        let about = if from_axis <= to { from_axis } else { -from_axis };
        let about = larger(from, smaller(to, about));
        let angle = AXES_DEG.get(self.half).copied().unwrap_or(0.0) + about;
        if angle < 0.0 { angle + 360.0 } else { angle }
    }
}

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

/// The running piston at a height.
#[derive(Debug, Clone, Copy)]
pub(super) struct PistonAt {
    /// radius of each half in `cos 2t`
    pub(super) cubic: [[f64; 4]; 2],
    /// what a bare window takes off, in `cos 2t`
    coating: [f64; 2],
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
        for (curve, of) in [(&field.thrust_c, "piston_field/thrust_c"), (&field.pin_c, "piston_field/pin_c")]
        {
            for place in [surface.from_mm, surface.to_mm] {
                curve.check(place).map_err(|e| e.moved(of.to_owned()))?;
            }
        }
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
    pub(super) fn regions(&self, bore: &BoreTables) -> Result<Vec<Vec<Region>>, Error> {
        let alike = self.symmetric && bore.even;
        let pairs = self.cells.iter().flat_map(|height| bore.cells.iter().map(move |depth| (height, depth)));
        pairs.map(|(height, depth)| regions(height, depth, alike)).collect()
    }

    /// The running piston at a height of a cell.
    pub(super) fn section(&self, cell: &HeightCell, height: f64, rise: Rise) -> PistonAt {
        let x = height - cell.from;
        let SurfaceGrowth { law, ratio_thrust, ratio_pin } = &self.growth;
        let thrust = ratio_thrust * law.strain(rise.piston_c(cell.thrust_c.value(x)));
        let pin = ratio_pin * law.strain(rise.piston_c(cell.pin_c.value(x)));
        // strain is g0 + g1 cos 2t
        let (g0, g1) = (1.0 + (thrust + pin) / 2.0, (thrust - pin) / 2.0);
        let [thrust_side, minor_side] = &cell.radius;
        let grown = |side: &[Cubic; 3]| {
            let [a0, a1, a2] = side.map(|c| c.value(x));
            [a0 * g0, a0 * g1 + a1 * g0, a1 * g1 + a2 * g0, a2 * g1]
        };
        let major = grown(thrust_side);
        let minor = if self.symmetric { major } else { grown(minor_side) };
        PistonAt { cubic: [major, minor], coating: [self.coating * g0, self.coating * g1] }
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
    pub(super) law: super::Piecewise,
}

/// The running bore at a depth.
#[derive(Debug, Clone, Copy)]
#[expect(
    clippy::large_enum_variant,
    reason = "one of them lives at a time, on the stack, and allocates nothing"
)]
pub(super) enum BoreAt {
    /// radius in `cos 2t`
    Even([f64; 4]),
    /// mean, cosines, sines from order 1
    General { mean: f64, cos: [f64; 32], sin: [f64; 32], order: usize },
}

/// Deepest place of a bore whose tables do not end.
const DEEPEST: f64 = 4000.0;

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
        let reach = curves.iter().map(|(_, c)| c.range());
        let (from, to) = reach.fold((0.0, end), |(a, b), (c, d)| (larger(a, c), smaller(b, d)));
        if from >= to {
            let reason = "the tables of the bore have no depth in common";
            return Err(Error::new(ErrorKind::Contradiction, format!("{from} to {to} mm"), reason).at("bore"));
        }
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
        let (mut cos, mut sin) = ([0.0; 32], [0.0; 32]);
        [cos[0], sin[0]] = self.axis;
        for (order, cosine, sine) in &cell.waves {
            if let (Some(c), Some(s)) = (cos.get_mut(order - 1), sin.get_mut(order - 1)) {
                *c = cosine.value(x) * grown;
                *s = sine.value(x) * grown;
            }
        }
        BoreAt::General { mean, cos, sin, order: self.order.max(6) }
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

/// The regions that have surface at heights of one cell and wall at depths of another.
fn regions(height: &HeightCell, depth: &DepthCell, both_alike: bool) -> Result<Vec<Region>, Error> {
    let mut out = Vec::new();
    for (half, axis) in AXES_DEG.into_iter().enumerate() {
        for (spans, bare) in [(height.coated.get(half), false), (height.bare.get(half), true)] {
            let mut spans = spans.cloned().unwrap_or_default();
            for (low, high) in depth.ports.iter().flat_map(|(from, to)| about(axis, *from, *to)) {
                spans = without(spans, low, high);
            }
            for span in spans {
                let region = Region::new(half, span, bare)?;
                // of two alike halves the first is enough
                if !(both_alike && half == 1 && out.iter().any(|r: &Region| r.covers(&region))) {
                    out.push(region);
                }
            }
        }
    }
    Ok(out)
}

impl Region {
    /// Does the other region hold nothing that this one lacks, were both halves alike?
    fn covers(&self, other: &Region) -> bool {
        self.bare == other.bare && self.low <= other.low && self.high >= other.high
    }
}

/// The least clearance of a section, and its angle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct LeastOf {
    pub(super) value: f64,
    /// How far below the true least can lie.
    pub(super) within: f64,
    pub(super) angle_deg: f64,
}

/// The least clearance of a section over regions; infinite without any.
pub(super) fn least(piston: &PistonAt, bore: &BoreAt, regions: &[Region]) -> LeastOf {
    let mut best = LeastOf { value: f64::INFINITY, within: 0.0, angle_deg: 0.0 };
    for region in regions {
        let cubic = piston.cubic.get(region.half).copied().unwrap_or([f64::NAN; 4]);
        let found = match bore {
            BoreAt::Even(bore) => least_even(piston, cubic, bore, region),
            BoreAt::General { mean, cos, sin, order } => {
                least_general(piston, cubic, (*mean, cos, sin, *order), region)
            }
        };
        if let Some(found) = found.filter(|f| f.value < best.value) {
            best = found;
        }
    }
    best
}

fn least_even(
    piston: &PistonAt,
    [p0, p1, p2, p3]: [f64; 4],
    bore: &[f64; 4],
    region: &Region,
) -> Option<LeastOf> {
    let [b0, b1, b2, b3] = *bore;
    let [k0, k1] = if region.bare { piston.coating } else { [0.0, 0.0] };
    let section = EvenHarmonics::in_cos2([b0 - p0 + k0, b1 - p1 + k1, b2 - p2, b3 - p3]).ok()?;
    let found = section.least_between(region.low, region.high);
    Some(LeastOf { value: found.least_mm, within: found.within_mm, angle_deg: region.angle_deg(found.cos2) })
}

fn least_general(
    piston: &PistonAt,
    cubic: [f64; 4],
    (mean, cos, sin, order): (f64, &[f64; 32], &[f64; 32], usize),
    region: &Region,
) -> Option<LeastOf> {
    let section = general(piston, cubic, (mean, cos, sin, order), region.bare)?;
    let found = section.least_over(&[region.arc])?;
    Some(LeastOf { value: found.least_mm, within: found.within_mm, angle_deg: found.angle_deg })
}

/// A section of clearance over a region as harmonics; none of a bore that is told in `cos 2t`.
pub(super) fn harmonics(piston: &PistonAt, bore: &BoreAt, region: &Region) -> Option<Harmonics> {
    match bore {
        BoreAt::General { mean, cos, sin, order } => {
            let cubic = piston.cubic.get(region.half).copied()?;
            general(piston, cubic, (*mean, cos, sin, *order), region.bare)
        }
        BoreAt::Even(_) => None,
    }
}

/// A section of clearance as harmonics: `u^2 = (1 + cos 4t) / 2`, `u^3 = (3 cos 2t + cos 6t) / 4` with `u = cos 2t`.
fn general(
    piston: &PistonAt,
    [p0, p1, p2, p3]: [f64; 4],
    (mean, cos, sin, order): (f64, &[f64; 32], &[f64; 32], usize),
    bare: bool,
) -> Option<Harmonics> {
    let [k0, k1] = if bare { piston.coating } else { [0.0, 0.0] };
    let mut cos = *cos;
    for (place, off) in [(1, p1 - k1 + 0.75 * p3), (3, p2 / 2.0), (5, p3 / 4.0)] {
        if let Some(c) = cos.get_mut(place) {
            *c -= off;
        }
    }
    Harmonics::new(mean - (p0 - k0) - p2 / 2.0, cos.get(..order)?, sin.get(..order)?).ok()
}
