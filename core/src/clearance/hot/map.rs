//! The clearance over angles and heights: the formulas of one place in columns, so that what depends on the angle or on the height alone is
//! computed once. The bits are those of [`HotFit::at`].

use super::{HotFit, PerSide, PistonRadius, Position, StrainAt};
use crate::bounds::{self, Verdict};
use crate::calc::Formula;
use crate::error::{Error, ErrorKind};
use crate::growth::Grown;
use crate::shape::angle::{cosine, turned};
use crate::shape::bore::{MeanRadius, WithHarmonic};
use crate::shape::piston::Surface;
use crate::wide::{Columnar, Width};
use core::ops::Range;

impl HotFit {
    /// Clearance on one side over angles and heights at one position, a row for every height: NaN where the piston has a window, where the bore
    /// does not support it, and where there is no bore around it: above the deck, or below its end.
    ///
    /// # Errors
    /// For an angle or a height that is not on the piston, as [`HotFit::at`], and for a depth that the tables of the bore do not reach;
    /// [`ErrorKind::Contradiction`] of the field `out` when it has not one place for every pair. Then nothing is written.
    pub fn map_into(
        &self,
        angles_deg: &[f64],
        heights_mm: &[f64],
        position: Position,
        out: &mut [f64],
    ) -> Result<(), Error> {
        if angles_deg.len().checked_mul(heights_mm.len()) != Some(out.len()) {
            let reason = "one number for every angle and height";
            return Err(Error::new(ErrorKind::Contradiction, out.len().to_string(), reason).at("out"));
        }
        // the field is written out only for a refusal
        if let Some(k) = angles_deg.iter().position(|a| bounds::ANGLE.judge(*a) == Verdict::Impossible) {
            let refused = angles_deg.get(k).copied().unwrap_or(f64::NAN);
            bounds::ANGLE.check(&format!("angles_deg/{k}"), refused)?;
        }
        let base = self.base_depth(position)?;
        let mut rows = Vec::with_capacity(heights_mm.len());
        for (k, height_mm) in heights_mm.iter().copied().enumerate() {
            let below = |e: Error| e.moved(format!("heights_mm/{k}"));
            let (index, surface) = self.surface_at(height_mm).map_err(below)?;
            let depth = self.depth_in_bore(base, height_mm).map_err(below)?;
            rows.push(depth.map(|depth_mm| Row { index, surface, height_mm, depth_mm }));
        }
        let mut columns = Columns::new(self, angles_deg);
        for (row, line) in rows.iter().zip(out.chunks_mut(angles_deg.len().max(1))) {
            let Some(row) = row else {
                line.fill(f64::NAN);
                continue;
            };
            columns.fill(self, row);
            columns.write(self, row, line);
        }
        Ok(())
    }

    /// As [`HotFit::map_into`], into numbers of its own.
    ///
    /// # Errors
    /// As [`HotFit::at`].
    pub fn map(&self, angles_deg: &[f64], heights_mm: &[f64], position: Position) -> Result<Vec<f64>, Error> {
        let mut out = vec![0.0; angles_deg.len().saturating_mul(heights_mm.len())];
        self.map_into(angles_deg, heights_mm, position, &mut out)?;
        Ok(out)
    }
}

/// A height that was checked.
struct Row<'a> {
    index: usize,
    surface: &'a Surface,
    height_mm: f64,
    depth_mm: Option<f64>,
}

/// A number for every angle.
struct Columns<'a> {
    angles_deg: &'a [f64],
    cos_2: Vec<f64>,
    cos_4: Vec<f64>,
    /// cosine and sine of every order of the bore
    waves: Vec<[Vec<f64>; 2]>,
    /// radius of the running bore at the depth of a row
    bore_mm: Vec<f64>,
    /// coating at the height of a row; NaN without surface or wall
    coat_mm: Vec<f64>,
    /// the coating, where it is the same at every angle
    same_coat: Option<f64>,
    runs: Vec<Run>,
    /// has the bore been filled in, and is it that of every depth?
    done: bool,
}

impl<'a> Columns<'a> {
    fn new(fit: &HotFit, angles_deg: &'a [f64]) -> Self {
        let cosines = |times: usize| angles_deg.iter().map(|angle| cosine(times, *angle)).collect();
        let wave = |order: usize| {
            let (cos, sin) = angles_deg.iter().map(|angle| turned(order, *angle)).unzip();
            [cos, sin]
        };
        Columns {
            angles_deg,
            cos_2: cosines(2),
            cos_4: cosines(4),
            waves: fit.parts.bore.harmonics.iter().map(|h| wave(h.order)).collect(),
            bore_mm: vec![0.0; angles_deg.len()],
            coat_mm: vec![0.0; angles_deg.len()],
            same_coat: None,
            runs: Run::all(fit, angles_deg),
            done: false,
        }
    }

    /// What depends on the row and the angle.
    fn fill(&mut self, fit: &HotFit, row: &Row<'_>) {
        if !self.done {
            self.fill_bore(fit, row.depth_mm.unwrap_or(0.0));
            self.done = fit.bore.straight;
        }
        let surface = row.surface;
        let whole =
            surface.windows.is_empty() && surface.panel_deg.is_none() && fit.parts.bore.ports.is_empty();
        if whole {
            if self.same_coat != Some(surface.coating_mm) {
                self.coat_mm.fill(surface.coating_mm);
                self.same_coat = Some(surface.coating_mm);
            }
            return;
        }
        self.same_coat = None;
        for (coat, angle) in self.coat_mm.iter_mut().zip(self.angles_deg) {
            let there = surface.coating_at(row.height_mm, *angle);
            let wall = |depth| fit.parts.bore.supports(depth, *angle);
            *coat = there.filter(|_| row.depth_mm.is_none_or(wall)).unwrap_or(f64::NAN);
        }
    }

    fn fill_bore(&mut self, fit: &HotFit, depth_mm: f64) {
        let bore = &fit.parts.bore;
        self.bore_mm.fill(MeanRadius::evaluate([bore.diameter_mm, bore.deviation_mm.value(depth_mm)]));
        for (harmonic, [cos, sin]) in bore.harmonics.iter().zip(&self.waves) {
            let (a, b) = (harmonic.cos_mm.value(depth_mm), harmonic.sin_mm.value(depth_mm));
            for ((r, cos), sin) in self.bore_mm.iter_mut().zip(cos).zip(sin) {
                *r = WithHarmonic::evaluate([*r, a, *cos, b, *sin]);
            }
        }
        let strain = fit.parts.bore_law.strain(fit.rise.bore_c(fit.parts.bore_field.wall_c.value(depth_mm)));
        for r in &mut self.bore_mm {
            *r = Grown::evaluate([*r, strain]);
        }
    }

    /// The clearance along a row.
    fn write(&self, fit: &HotFit, row: &Row<'_>, line: &mut [f64]) {
        let strain = fit.axial_strains(row.index, row.height_mm, fit.rise);
        let mut left = line;
        for Run { places, minor } in &self.runs {
            let side = if *minor { &row.surface.minor_thrust } else { &row.surface.thrust };
            let (out, rest) = left.split_at_mut(places.len().min(left.len()));
            left = rest;
            let of = |column| part(column, places);
            Width::detected().run(Stretch {
                diameter_mm: fit.parts.piston_diameter_mm,
                side: side.coefficients(row.height_mm),
                strain,
                bore_mm: of(&self.bore_mm),
                coat_mm: of(&self.coat_mm),
                cos_2: of(&self.cos_2),
                cos_4: of(&self.cos_4),
                out,
            });
        }
    }
}

fn part<'a>(column: &'a [f64], places: &Range<usize>) -> &'a [f64] {
    column.get(places.clone()).unwrap_or_default()
}

/// Angles that follow each other on one side of the piston.
struct Run {
    places: Range<usize>,
    minor: bool,
}

impl Run {
    /// All of them; one run where both sides are alike.
    fn all(fit: &HotFit, angles_deg: &[f64]) -> Vec<Run> {
        let Some(surface) =
            fit.parts.piston.surfaces.first().filter(|_| !fit.surfaces.iter().all(|s| s.symmetric))
        else {
            return vec![Run { places: 0..angles_deg.len(), minor: false }];
        };
        let minor = |angle: &f64| core::ptr::eq(surface.side(*angle), &surface.minor_thrust);
        let mut runs: Vec<Run> = Vec::new();
        for run in angles_deg.chunk_by(|a, b| minor(a) == minor(b)) {
            let from = runs.last().map_or(0, |r| r.places.end);
            runs.push(Run { places: from..from + run.len(), minor: run.first().is_some_and(minor) });
        }
        runs
    }
}

/// A stretch of a row with the same side of the piston all along.
struct Stretch<'a> {
    diameter_mm: f64,
    side: [f64; 3],
    /// on both axes, each with its growth ratio
    strain: [(f64, f64); 2],
    bore_mm: &'a [f64],
    coat_mm: &'a [f64],
    cos_2: &'a [f64],
    cos_4: &'a [f64],
    out: &'a mut [f64],
}

impl Columnar for Stretch<'_> {
    #[inline(always)]
    fn run(self) {
        let Stretch {
            diameter_mm, side: [a, b, c], strain: [(ratio_thrust, thrust), (ratio_pin, pin)], ..
        } = self;
        let columns = self.bore_mm.iter().zip(self.coat_mm).zip(self.cos_2.iter().zip(self.cos_4));
        for (out, ((bore, coat), (cos_2, cos_4))) in self.out.iter_mut().zip(columns) {
            let cold = PistonRadius::evaluate([diameter_mm, a, b, c, *cos_2, *cos_4, *coat]);
            let strain = StrainAt::evaluate([ratio_thrust, thrust, ratio_pin, pin, *cos_2]);
            *out = PerSide::evaluate([*bore, Grown::evaluate([cold, strain])]);
        }
    }
}
