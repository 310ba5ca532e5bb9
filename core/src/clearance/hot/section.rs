//! The least clearance of one section, over what there is of surface and wall.

use super::tables::{AXES_DEG, Span};
use crate::clearance::least::{Arc, EvenHarmonics, Harmonics, Least};
use crate::error::Error;
use crate::shape::angle::cosine;
use crate::shape::least::{larger, smaller};
use core::f64::consts::PI;

/// The running piston at a height.
#[derive(Debug, Clone, Copy)]
pub(super) struct PistonAt {
    /// radius of each half in `cos 2t`
    pub(super) cubic: [[f64; 4]; 2],
    /// what a bare window takes off, in `cos 2t`
    pub(super) coating: [f64; 2],
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
    General(Harmonics),
}

/// A part of half the turn that has surface and wall, with or without coating.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Region {
    /// 0 for the half around the major thrust side, 1 for the other.
    half: usize,
    span: Span,
    /// The same in `cos 2t`.
    low: f64,
    high: f64,
    bare: bool,
}

impl Region {
    pub(super) fn new(half: usize, span: Span, bare: bool) -> Self {
        let (from, to) = span;
        let (near, far) =
            (smaller(libm::fabs(from), libm::fabs(to)), larger(libm::fabs(from), libm::fabs(to)));
        let near = if from <= 0.0 && to >= 0.0 { 0.0 } else { near };
        Region { half, span, low: cosine(2, far), high: cosine(2, near), bare }
    }

    fn arc(&self) -> Result<Arc, Error> {
        let (from, to) = self.span;
        let axis = AXES_DEG.get(self.half).copied().unwrap_or(0.0);
        let begin = if axis + from < 0.0 { axis + from + 360.0 } else { axis + from };
        Arc::new(begin, begin + (to - from))
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

    /// Does the other region hold nothing that this one lacks, were both halves alike?
    fn covers(&self, other: &Region) -> bool {
        self.bare == other.bare && self.low <= other.low && self.high >= other.high
    }
}

/// What there is of surface and wall, at heights of one cell and depths of another.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Walls {
    /// for a bore that is the same in both halves
    regions: Vec<Region>,
    /// for any other
    arcs: Vec<Arcs>,
    /// Is any of it bare?
    pub(super) bare: bool,
}

/// Parts of the turn in which the piston is one cubic in `cos 2t`.
#[derive(Debug, Clone, PartialEq)]
struct Arcs {
    half: usize,
    bare: bool,
    arcs: Vec<Arc>,
}

impl Arcs {
    /// The section of clearance.
    fn section(&self, piston: &PistonAt, bore: &Harmonics) -> Harmonics {
        bore.less(piston.of(self.half, self.bare))
    }
}

impl Walls {
    /// Of the two halves of a symmetric piston the first stands for both where it has all that the second has.
    pub(super) fn new(all: Vec<Region>, symmetric: bool) -> Result<Self, Error> {
        let mut regions: Vec<Region> = Vec::with_capacity(all.len());
        let mut arcs: Vec<Arcs> = Vec::new();
        for region in &all {
            let half = if symmetric { 0 } else { region.half };
            match arcs.iter_mut().find(|a| a.half == half && a.bare == region.bare) {
                Some(found) => found.arcs.push(region.arc()?),
                None => arcs.push(Arcs { half, bare: region.bare, arcs: vec![region.arc()?] }),
            }
            if !(symmetric && region.half == 1 && regions.iter().any(|r| r.covers(region))) {
                regions.push(*region);
            }
        }
        for group in &mut arcs {
            if group.arcs.iter().map(|a| a.to_deg() - a.from_deg()).sum::<f64>() >= 360.0 {
                group.arcs = vec![Arc::TURN];
            }
        }
        Ok(Walls { regions, arcs, bare: all.iter().any(|r| r.bare) })
    }

    /// The sections of clearance as harmonics, each with the parts of the turn it holds for; none of a bore that is told in `cos 2t`.
    pub(super) fn sections<'a>(
        &'a self,
        piston: &'a PistonAt,
        bore: &'a BoreAt,
    ) -> impl Iterator<Item = (Harmonics, &'a [Arc])> {
        self.arcs.iter().filter_map(move |group| match bore {
            BoreAt::General(bore) => Some((group.section(piston, bore), group.arcs.as_slice())),
            BoreAt::Even(_) => None,
        })
    }

    /// The angle of a least clearance.
    pub(super) fn angle_deg(&self, around: Around) -> f64 {
        match around {
            Around::Cos2 { region, cos_2 } => {
                self.regions.get(region).map_or(f64::NAN, |r| r.angle_deg(cos_2))
            }
            Around::Degrees(angle) => angle,
        }
    }

    /// Its half of the turn and its `cos 2t`.
    pub(super) fn half_and_cos_2(&self, around: Around) -> (usize, f64) {
        match around {
            Around::Cos2 { region, cos_2 } => (self.regions.get(region).map_or(0, |r| r.half), cos_2),
            Around::Degrees(angle) => (usize::from(angle > 90.0 && angle < 270.0), cosine(2, angle)),
        }
    }
}

/// Where around the turn the least clearance of a section is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Around {
    /// in a region, by its place in the list
    Cos2 {
        region: usize,
        cos_2: f64,
    },
    Degrees(f64),
}

/// The least clearance of a section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct LeastOf {
    pub(super) value: f64,
    /// How far below the true least can lie.
    pub(super) within: f64,
    pub(super) around: Around,
}

impl LeastOf {
    /// Of no section.
    pub(super) const NOTHING: LeastOf =
        LeastOf { value: f64::INFINITY, within: 0.0, around: Around::Degrees(f64::NAN) };

    /// What the clearance is nowhere below.
    pub(super) fn floor(&self) -> f64 {
        self.value - self.within
    }
}

/// The least clearance of a section, infinite where there is no surface; or, where it is certainly not below `enough`, a number between the two.
pub(super) fn least(piston: &PistonAt, bore: &BoreAt, walls: &Walls, enough: f64) -> LeastOf {
    let mut best = LeastOf::NOTHING;
    let mut take = |found: LeastOf| {
        let within = larger(best.within, found.within);
        best = LeastOf { within, ..if found.value < best.value { found } else { best } };
    };
    match bore {
        BoreAt::Even(bore) => {
            for (place, region) in walls.regions.iter().enumerate() {
                take(least_even(piston, bore, (place, region)));
            }
        }
        BoreAt::General(bore) => {
            for arcs in &walls.arcs {
                least_general(piston, bore, arcs, enough).map(&mut take);
            }
        }
    }
    best
}

fn least_even(piston: &PistonAt, [b0, b1, b2, b3]: &[f64; 4], (region, r): (usize, &Region)) -> LeastOf {
    let [p0, p1, p2, p3] = piston.of(r.half, r.bare);
    let found = EvenHarmonics::of([b0 - p0, b1 - p1, b2 - p2, b3 - p3]).least_between(r.low, r.high);
    LeastOf {
        value: found.least_mm,
        within: found.within_mm,
        around: Around::Cos2 { region, cos_2: found.cos2 },
    }
}

fn least_general(piston: &PistonAt, bore: &Harmonics, arcs: &Arcs, enough: f64) -> Option<LeastOf> {
    Some(match arcs.section(piston, bore).least_below(&arcs.arcs, enough)? {
        Ok(Least { least_mm, angle_deg, within_mm }) => {
            LeastOf { value: least_mm, within: within_mm, around: Around::Degrees(angle_deg) }
        }
        Err(bound) => LeastOf { value: bound, ..LeastOf::NOTHING },
    })
}

impl PistonAt {
    /// Radius of a half in `cos 2t`, with or without coating.
    fn of(&self, half: usize, bare: bool) -> [f64; 4] {
        let [p0, p1, p2, p3] = self.cubic.get(half).copied().unwrap_or([f64::NAN; 4]);
        let [k0, k1] = if bare { self.coating } else { [0.0, 0.0] };
        [p0 - k0, p1 - k1, p2, p3]
    }
}
