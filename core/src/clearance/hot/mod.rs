//! The clearance of a running piston everywhere: over angle, height and crank angle, its smallest value with a proof, first contact, and what
//! follows from them.
//!
//! | question | where |
//! |---|---|
//! | what is a fit, and its clearance at one place | here |
//! | a fit from the plain numbers of a host | [`drawing`] |
//! | a piston and a bore by themselves, for any number of fits | [`apart`] |
//! | tables made ready for sections, and how they bend | `tables.rs`, `bent.rs` |
//! | least clearance of one section | `section.rs` |
//! | over angles and heights | `map.rs` |
//! | smallest clearance, certified | [`smallest`] |
//! | where it overlaps, over which area | [`contact`] |
//! | where does it have most room, moved sideways | [`lateral`] |
//! | how much hotter until it touches | [`onset`] |
//! | which bore, which ovality, which temperature | [`inverse`] |
//! | data to draw | [`picture`] |
//!
//! Per side, the piston centred: `c = R (1 + eps_bore) - r (1 + eps)`. Growth is free: no pressure, no oil film, and an overlap is what an
//! elastic skirt takes up, not a fault by itself.

mod bent;
mod map;
mod motion;
mod section;
mod tables;
pub mod apart;
pub mod contact;
pub mod drawing;
pub mod inverse;
pub mod lateral;
pub mod onset;
pub mod picture;
pub mod smallest;

pub use motion::Motion;

use crate::bounds::{self, Bound};
use crate::calc::{Formula, formula};
use crate::error::{Error, ErrorKind};
use crate::growth::field::{BoreField, PistonField, Rise};
use crate::growth::{Grown, Law, Piecewise};
use crate::shape::angle::{across, cosine};
use crate::shape::bore::BoreShape;
use crate::shape::curve::Curve;
use crate::shape::piston::{PistonShape, Surface};
use section::Walls;
use tables::{BoreTables, SurfaceTables};

formula! {
    /// Radius of a piston at an angle and a height, from the coefficients of its side there; `coat` is the coating on it.
    PistonRadius: r ["mm"] = (d, a, b, c, cos_2, cos_4, coat) => d / 2.0 + a + b * cos_2 + c * cos_4 + coat;
        source "definition of ovality and fourth order";
    /// Strain of a piston at an angle: a law of two numbers per height.
    StrainAt: eps ["1"] = (ratio_thrust, eps_thrust, ratio_pin, eps_pin, cos_2) =>
        ratio_thrust * eps_thrust * ((1.0 + cos_2) / 2.0) + ratio_pin * eps_pin * ((1.0 - cos_2) / 2.0);
        source "eps_thrust cos^2 t + eps_pin sin^2 t, an empirical law; (1 + cos 2t) / 2 is cos^2 t";
    /// Strain of a piston on its thrust axis when controlled expansion leaves a part of that of its alloy.
    Controlled: eps ["1"] = (ratio_thrust, eps_free) => ratio_thrust * eps_free; source "definition of the growth ratio";
    /// Clearance on one side of a centred piston.
    PerSide: c ["mm"] = (bore_hot, piston_hot) => bore_hot - piston_hot; source "definition; per side";
    /// Clearance over the diameter.
    BothSides: clearance ["mm"] = (c, c_opposite) => c + c_opposite; source "definition; diametral";
}

/// Clearance on one side that counts as touching: 0, or less the overlap that an elastic skirt may take.
const TOUCHING: Bound = Bound {
    label: "clearance that counts as touching",
    possible: (-0.5, 3.0),
    usual: (-0.06, 0.0),
    ..bounds::CLEARANCE
};

/// How a surface of the piston grows.
#[derive(Debug, Clone, PartialEq)]
pub struct SurfaceGrowth {
    /// Law of its material.
    pub law: Piecewise,
    /// Growth on the thrust axis over that of the material; 1 without controlled expansion.
    pub ratio_thrust: f64,
    /// Growth on the pin axis over that of the material.
    pub ratio_pin: f64,
}

impl SurfaceGrowth {
    /// Free growth of a material.
    #[must_use]
    pub fn free(law: &Law) -> Self {
        SurfaceGrowth { law: Piecewise::of(law), ratio_thrust: 1.0, ratio_pin: 1.0 }
    }

    /// Growth of controlled expansion.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] or [`ErrorKind::NotFinite`] for an impossible ratio.
    pub fn controlled(law: &Law, ratio_thrust: f64, ratio_pin: f64) -> Result<Self, Error> {
        bounds::GROWTH_RATIO.check("ratio_thrust", ratio_thrust)?;
        bounds::GROWTH_RATIO.check("ratio_pin", ratio_pin)?;
        Ok(SurfaceGrowth { law: Piecewise::of(law), ratio_thrust, ratio_pin })
    }
}

/// Everything a fit is made of.
#[derive(Debug, Clone, PartialEq)]
pub struct Parts {
    /// Diameter of the bare piston at its gauge point, at 20 C.
    pub piston_diameter_mm: f64,
    /// Its shape.
    pub piston: PistonShape,
    /// How its surfaces grow, one for each.
    pub growth: Vec<SurfaceGrowth>,
    /// Its temperatures.
    pub piston_field: PistonField,
    /// The bore.
    pub bore: BoreShape,
    /// Law of the wall that carries the bore.
    pub bore_law: Piecewise,
    /// Its temperatures.
    pub bore_field: BoreField,
    /// How the piston moves; none when its place in the bore does not matter.
    pub motion: Option<Motion>,
}

/// Where the piston stands in the bore.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Position {
    /// Crank angle in degrees: 0 is the throw in line with the cylinder, on the way down after it.
    Crank(f64),
    /// At top dead centre.
    TopDeadCentre,
    /// With its gauge point at a depth in mm.
    GaugeDepth(f64),
    /// Where it stands does not matter, because the bore is the same at every depth.
    Anywhere,
}

/// A place on the piston and in the bore.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// Index of the surface: 0 is the skirt.
    pub surface: usize,
    /// Angle, from 0 up to 360; 0 is the major thrust side.
    pub angle_deg: f64,
    /// Height above the bottom edge of the skirt.
    pub height_mm: f64,
    /// Depth in the bore; none when it does not matter.
    pub depth_mm: Option<f64>,
    /// Crank angle on the way down; none when it does not matter.
    pub crank_deg: Option<f64>,
}

/// One piston in one bore at its temperatures, checked: every table reaches every place the piston comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct HotFit {
    parts: Parts,
    rise: Rise,
    surfaces: Vec<SurfaceTables>,
    bore: BoreTables,
    /// by surface, and within it by height cell, then depth cell: where there is surface and wall
    walls: Vec<Vec<Walls>>,
}

impl HotFit {
    /// Checks the parts against each other and makes them ready.
    ///
    /// # Errors
    /// When a size is impossible, a surface lacks its growth, a table does not reach a height or depth the piston comes to (the field is the table
    /// and the place is refused), or a temperature is outside the law of its material.
    pub fn new(parts: Parts) -> Result<Self, Error> {
        HotFit::at_rise(parts, Rise::FULL)
    }

    /// The same with other rises of the temperatures.
    ///
    /// # Errors
    /// As [`HotFit::new`].
    pub fn at_rise(parts: Parts, rise: Rise) -> Result<Self, Error> {
        bounds::PISTON.check("piston_diameter_mm", parts.piston_diameter_mm)?;
        check_growth(&parts.piston, &parts.growth)?;
        let depths = depths(&parts);
        let surfaces = parts
            .piston
            .surfaces
            .iter()
            .enumerate()
            .map(|(k, s)| SurfaceTables::new(&parts, s).map_err(|e| e.under(&format!("surfaces/{k}"))))
            .collect::<Result<Vec<_>, Error>>()?;
        let bore = BoreTables::new(&parts, depths)?;
        let walls = surfaces.iter().map(|s| s.walls(&bore)).collect::<Result<_, Error>>()?;
        let fit = HotFit { parts, rise, surfaces, bore, walls };
        fit.check_temperatures(rise)?;
        Ok(fit)
    }

    /// What it was made of.
    #[must_use]
    pub fn parts(&self) -> &Parts {
        &self.parts
    }

    /// How far the temperatures have risen.
    #[must_use]
    pub fn rise(&self) -> Rise {
        self.rise
    }

    /// Is the clearance the same wherever the piston stands?
    #[must_use]
    pub fn is_straight(&self) -> bool {
        self.bore.straight
    }

    /// Depth in the bore of the bottom edge of the skirt; a height `z` is at that less `z`.
    fn base_depth(&self, position: Position) -> Result<f64, Error> {
        match (position, &self.parts.motion) {
            (Position::GaugeDepth(depth), _) => {
                bounds::DEPTH.check("gauge_depth_mm", depth)?;
                Ok(depth + self.parts.piston.gauge_height_mm)
            }
            (Position::Crank(crank), Some(motion)) => {
                check_crank(crank)?;
                Ok(motion.base_depth(motion.travel_mm(crank)))
            }
            (Position::TopDeadCentre, Some(motion)) => Ok(motion.base_depth(0.0)),
            (Position::Anywhere, _) if self.bore.straight => Ok(f64::NAN),
            (Position::Anywhere, _) => {
                let reason = "the bore changes with depth, so it matters where the piston stands";
                Err(Error::new(ErrorKind::MissingField, "", reason).at("position"))
            }
            (Position::Crank(_) | Position::TopDeadCentre, None) => {
                let reason = "crank, rod and deck are not known";
                Err(Error::new(ErrorKind::MissingField, "", reason).at("motion"))
            }
        }
    }

    /// Depth of a height of the piston where there is bore around it, and none where there is not: above the deck, or below the end.
    ///
    /// # Errors
    /// When the tables of the bore do not reach there.
    fn depth_in_bore(&self, base: f64, height_mm: f64) -> Result<Option<Option<f64>>, Error> {
        let depth = base - height_mm;
        match (base.is_finite(), self.bore.has(depth)) {
            (false, _) => Ok(Some(None)),
            (true, false) => Ok(None),
            (true, true) => self.bore.check_depth(depth).map(|depth| Some(Some(depth))),
        }
    }

    /// Depth of a height of the piston; none where it does not matter.
    ///
    /// # Errors
    /// When the crank angle is impossible, what it needs is not known, or there is no bore at that depth.
    pub fn depth_mm(&self, height_mm: f64, position: Position) -> Result<Option<f64>, Error> {
        let base = self.base_depth(position)?;
        match base.is_finite() {
            true => self.bore.check_depth(base - height_mm).map(Some),
            false => Ok(None),
        }
    }

    /// Clearance on one side at one place, negative for an overlap.
    ///
    /// # Errors
    /// When the place is not on the piston or not in the bore.
    pub fn at(&self, angle_deg: f64, height_mm: f64, position: Position) -> Result<f64, Error> {
        bounds::ANGLE.check("angle_deg", angle_deg)?;
        let (k, _) = self.surface_at(height_mm)?;
        let depth = self.depth_mm(height_mm, position)?;
        Ok(self.clearance(k, angle_deg, height_mm, depth))
    }

    /// Clearance over the diameter at one angle and the opposite one.
    ///
    /// # Errors
    /// As [`HotFit::at`].
    pub fn diametral(&self, angle_deg: f64, height_mm: f64, position: Position) -> Result<f64, Error> {
        let here = self.at(angle_deg, height_mm, position)?;
        Ok(BothSides::evaluate([here, self.at(across(angle_deg), height_mm, position)?]))
    }

    /// Running clearance at the gauge point, over the diameter.
    ///
    /// # Errors
    /// As [`HotFit::at`].
    pub fn running_at_gauge_point(&self, position: Position) -> Result<f64, Error> {
        self.diametral(0.0, self.parts.piston.gauge_height_mm, position)
    }

    /// Temperatures `(thrust, pin)` of the piston at a height.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] where the field does not reach.
    pub fn piston_c(&self, height_mm: f64) -> Result<(f64, f64), Error> {
        let field = &self.parts.piston_field;
        let at = |curve: &Curve| curve.at(height_mm).map(|t| self.rise.piston_c(t));
        Ok((at(&field.thrust_c)?, at(&field.pin_c)?))
    }

    /// Temperature of the wall at a depth.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] where the field does not reach.
    pub fn bore_c(&self, depth_mm: f64) -> Result<f64, Error> {
        self.parts.bore_field.wall_c.at(depth_mm).map(|t| self.rise.bore_c(t))
    }

    /// Index and surface at a height.
    pub(crate) fn surface_at(&self, height_mm: f64) -> Result<(usize, &Surface), Error> {
        let surface = self.parts.piston.surface_at(height_mm)?;
        let place = self.parts.piston.surfaces.iter().position(|s| core::ptr::eq(s, surface));
        Ok((place.unwrap_or(0), surface))
    }

    /// A surface by its index.
    fn surface(&self, index: usize) -> Result<(&Surface, &SurfaceTables), Error> {
        match (self.parts.piston.surfaces.get(index), self.surfaces.get(index)) {
            (Some(surface), Some(tables)) => Ok((surface, tables)),
            _ => {
                let reason = format!("the piston has {} surfaces", self.surfaces.len());
                Err(Error::new(ErrorKind::OutOfRange, index.to_string(), reason).at("surface"))
            }
        }
    }

    /// Is there surface and wall at a place that was checked? Edges belong to what is around.
    fn supported(&self, surface: usize, angle_deg: f64, height_mm: f64, depth_mm: Option<f64>) -> bool {
        let surface = self.parts.piston.surfaces.get(surface);
        let on_piston = surface.is_some_and(|s| s.coating_at(height_mm, angle_deg).is_some());
        on_piston && depth_mm.is_none_or(|depth| self.parts.bore.supports(depth, angle_deg))
    }

    /// Clearance at a place that was found, at other rises.
    fn clearance_at_rise(&self, place: &Place, rise: Rise) -> f64 {
        PerSide::evaluate([
            self.bore_at_rise(place.depth_mm, place.angle_deg, rise),
            self.piston_at_rise(place.surface, place.angle_deg, place.height_mm, rise),
        ])
    }

    /// Clearance at a place that was checked, by the formulas in turn.
    fn clearance(&self, surface: usize, angle_deg: f64, height_mm: f64, depth_mm: Option<f64>) -> f64 {
        PerSide::evaluate([
            self.bore_hot_mm(depth_mm, angle_deg),
            self.piston_hot_mm(surface, angle_deg, height_mm),
        ])
    }

    /// Radius of the running bore at a place that was checked.
    pub(crate) fn bore_hot_mm(&self, depth_mm: Option<f64>, angle_deg: f64) -> f64 {
        self.bore_at_rise(depth_mm, angle_deg, self.rise)
    }

    fn bore_at_rise(&self, depth_mm: Option<f64>, angle_deg: f64, rise: Rise) -> f64 {
        let depth = depth_mm.unwrap_or(0.0);
        let cold = self.parts.bore.radius_mm(depth, angle_deg);
        bore_hot(cold, &self.parts.bore_law, &self.parts.bore_field, depth, rise)
    }

    /// Radius of the piston at 20 C at a place that was checked.
    pub(crate) fn piston_cold_mm(&self, surface: usize, angle_deg: f64, height_mm: f64) -> f64 {
        let surface = self.parts.piston.surfaces.get(surface);
        surface.map_or(f64::NAN, |s| piston_cold(self.parts.piston_diameter_mm, s, angle_deg, height_mm))
    }

    /// Radius of the running piston at a place that was checked.
    pub(crate) fn piston_hot_mm(&self, surface: usize, angle_deg: f64, height_mm: f64) -> f64 {
        self.piston_at_rise(surface, angle_deg, height_mm, self.rise)
    }

    fn piston_at_rise(&self, surface: usize, angle_deg: f64, height_mm: f64, rise: Rise) -> f64 {
        let cold = self.piston_cold_mm(surface, angle_deg, height_mm);
        let eps = self.strain_at_rise(surface, height_mm, cosine(2, angle_deg), rise);
        Grown::evaluate([cold, eps])
    }

    /// Strain of a surface at a height, where the cosine of twice the angle is known.
    pub(super) fn strain_at_rise(&self, surface: usize, height_mm: f64, cos_2: f64, rise: Rise) -> f64 {
        strain_at(self.axial_strains(surface, height_mm, rise), cos_2)
    }

    /// Growth ratio and strain of the material on the thrust axis and on the pin axis.
    fn axial_strains(&self, surface: usize, height_mm: f64, rise: Rise) -> [(f64, f64); 2] {
        let growth = self.parts.growth.get(surface);
        growth.map_or([(f64::NAN, f64::NAN); 2], |g| axial(g, &self.parts.piston_field, height_mm, rise))
    }

    /// Heights of a surface to look at: its rows, and `between` evenly spaced ones between two of them.
    pub(super) fn stations(&self, surface: usize, between: u16) -> Result<Vec<f64>, Error> {
        let (_, tables) = self.surface(surface)?;
        let mut out = Vec::with_capacity(tables.cells.len() * usize::from(between + 1) + 1);
        for cell in &tables.cells {
            for k in 0..=between {
                out.push(cell.from + (cell.to - cell.from) * (f64::from(k) / f64::from(between + 1)));
            }
        }
        out.extend(tables.cells.last().map(|cell| cell.to));
        Ok(out)
    }

    /// Heights of the rows of a surface.
    ///
    /// # Errors
    /// When there is no such surface.
    pub fn rows(&self, surface: usize) -> Result<Vec<f64>, Error> {
        let (shape, _) = self.surface(surface)?;
        let curves = [&shape.thrust.barrel, &shape.thrust.ovality, &shape.thrust.fourth];
        let mut out = vec![shape.from_mm, shape.to_mm];
        out.extend(curves.iter().flat_map(|c| c.pieces()).flat_map(|p| [p.from, p.to]));
        out.retain(|z| *z >= shape.from_mm && *z <= shape.to_mm);
        out.sort_by(f64::total_cmp);
        out.dedup();
        Ok(out)
    }

    /// Thickness of the coating at a place, per side.
    #[must_use]
    pub fn coating_mm(&self, place: &Place) -> f64 {
        let surface = self.parts.piston.surfaces.get(place.surface);
        surface.map_or(0.0, |s| coat(s, place.angle_deg, place.height_mm))
    }

    /// Every temperature must be within the law of its material.
    fn check_temperatures(&self, rise: Rise) -> Result<(), Error> {
        check_piston_laws(&self.parts.piston, &self.parts.growth, &self.parts.piston_field, rise)?;
        let range = (self.bore.from_mm, self.bore.to_mm);
        check_bore_law(&self.parts.bore_law, &self.parts.bore_field, range, rise)
    }
}

/// Radius of a piston at 20 C at a place of a surface that was checked.
fn piston_cold(diameter_mm: f64, surface: &Surface, angle_deg: f64, height_mm: f64) -> f64 {
    let [a, b, c] = surface.side(angle_deg).coefficients(height_mm);
    let (cos_2, cos_4) = (cosine(2, angle_deg), cosine(4, angle_deg));
    let coat = coat(surface, angle_deg, height_mm);
    PistonRadius::evaluate([diameter_mm, a, b, c, cos_2, cos_4, coat])
}

/// Growth ratio and strain of the material on the thrust axis and on the pin axis.
fn axial(growth: &SurfaceGrowth, field: &PistonField, height_mm: f64, rise: Rise) -> [(f64, f64); 2] {
    let strain = |curve: &Curve| growth.law.strain(rise.piston_c(curve.value(height_mm)));
    [(growth.ratio_thrust, strain(&field.thrust_c)), (growth.ratio_pin, strain(&field.pin_c))]
}

/// Strain of a piston where the cosine of twice the angle is known.
fn strain_at([(ratio_thrust, thrust), (ratio_pin, pin)]: [(f64, f64); 2], cos_2: f64) -> f64 {
    StrainAt::evaluate([ratio_thrust, thrust, ratio_pin, pin, cos_2])
}

/// Radius of a bore at its temperature at a depth that was checked.
fn bore_hot(cold_mm: f64, law: &Piecewise, field: &BoreField, depth_mm: f64, rise: Rise) -> f64 {
    Grown::evaluate([cold_mm, law.strain(rise.bore_c(field.wall_c.value(depth_mm)))])
}

/// Coating at a place; beside the surface, where pictures go on, that of the surface.
fn coat(surface: &Surface, angle_deg: f64, height_mm: f64) -> f64 {
    surface.coating_at(height_mm, angle_deg).unwrap_or(surface.coating_mm)
}

/// Depths the piston comes to, within the bore; none when its place does not matter or is not known.
fn depths(parts: &Parts) -> Option<(f64, f64)> {
    let motion = parts.motion.as_ref()?;
    let (lowest, highest) = (
        parts.piston.surfaces.first().map_or(f64::NAN, |s| s.from_mm),
        parts.piston.surfaces.last().map_or(f64::NAN, |s| s.to_mm),
    );
    Some((motion.base_depth(0.0) - highest, motion.base_depth(motion.stroke_mm()) - lowest))
}

fn check_crank(crank_deg: f64) -> Result<(), Error> {
    match (-360.0..=720.0).contains(&crank_deg) {
        true => Ok(()),
        false => {
            let kind = if crank_deg.is_finite() { ErrorKind::OutOfRange } else { ErrorKind::NotFinite };
            let error = Error::new(kind, crank_deg.to_string(), "no crank angle of a cycle");
            Err(error.limits(-360.0, 720.0, "deg").at("crank_deg"))
        }
    }
}

fn check_growth(piston: &PistonShape, growth: &[SurfaceGrowth]) -> Result<(), Error> {
    let (surfaces, growth) = (piston.surfaces.len(), growth.len());
    if surfaces == growth {
        return Ok(());
    }
    let reason = format!("the piston has {surfaces} surfaces, and each has its growth");
    Err(Error::new(ErrorKind::Contradiction, growth.to_string(), reason).at("growth"))
}

/// Every temperature of a piston must be within the law of its surface.
fn check_piston_laws(
    piston: &PistonShape,
    growth: &[SurfaceGrowth],
    field: &PistonField,
    rise: Rise,
) -> Result<(), Error> {
    for (k, (surface, growth)) in piston.surfaces.iter().zip(growth).enumerate() {
        for (curve, of) in [(&field.thrust_c, "piston_field/thrust_c"), (&field.pin_c, "piston_field/pin_c")]
        {
            let (law, over) = (format!("of surface {k}"), (surface.from_mm, surface.to_mm));
            check_law(&growth.law, curve, over, |t| rise.piston_c(t), (of, &law))?;
        }
    }
    Ok(())
}

/// Every temperature of a bore over a stretch of depths must be within the law of its wall.
fn check_bore_law(law: &Piecewise, field: &BoreField, over: (f64, f64), rise: Rise) -> Result<(), Error> {
    check_law(law, &field.wall_c, over, |t| rise.bore_c(t), ("bore_field/wall_c", "of the bore"))
}

/// A monotone cubic is largest and smallest at rows or at the ends of its stretch.
fn check_law(
    law: &Piecewise,
    field: &Curve,
    (from, to): (f64, f64),
    risen: impl Fn(f64) -> f64,
    (path, of): (&str, &str),
) -> Result<(), Error> {
    let (low, high) = law.range();
    let rows = field.pieces().iter().map(|p| p.from).filter(|place| *place > from && *place < to);
    let ends = [from, to].into_iter().filter(|place| place.is_finite());
    let constant = field.pieces().is_empty().then_some(0.0);
    for place in rows.chain(ends).chain(constant) {
        let celsius = risen(field.value(place));
        if !(celsius >= low && celsius <= high) {
            let reason = format!("at {place} mm it is {celsius} C: outside the law of expansion {of}");
            let error = Error::new(ErrorKind::OutsideLaw, format!("{celsius} C"), reason);
            return Err(error.value(celsius).limits(low, high, "C").at(path));
        }
    }
    Ok(())
}
