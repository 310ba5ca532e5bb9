//! A hot fit, a piston and a bore from the plain numbers and tables of a host that has no types of its own; refusals name the place in them.

use super::apart::{HotBore, HotPiston};
use super::{HotFit, Motion, Position, SurfaceGrowth};
use crate::choice::choices;
use crate::error::Error;
use crate::growth::field::{BoreField, PistonField};
use crate::growth::{Law, Piecewise};
use crate::shape::bore::{BoreDrawing, BoreShape};
use crate::shape::piston::PistonShape;

/// How a surface of the piston grows.
#[derive(Debug, Clone, PartialEq)]
pub struct GrowthDrawing {
    /// Law of its material.
    pub law: Law,
    /// Growth on the thrust axis over that of the material; 1 without controlled expansion.
    pub ratio_thrust: f64,
    /// Growth on the pin axis over that of the material.
    pub ratio_pin: f64,
}

/// A piston at its temperatures.
#[derive(Debug, Clone, PartialEq)]
pub struct PistonDrawing<'a> {
    /// Diameter of the bare piston at its gauge point, at 20 C.
    pub diameter_mm: f64,
    /// Its shape.
    pub shape: PistonShape,
    /// How its surfaces grow, one for each.
    pub growth: Vec<GrowthDrawing>,
    /// Heights, and the temperatures there on the thrust axis and on the pin axis; one row holds at every height.
    pub field: [&'a [f64]; 3],
}

impl PistonDrawing<'_> {
    /// The piston.
    ///
    /// # Errors
    /// As [`HotPiston::new`] and the constructors of its parts; the error names the place: `growth/0/ratio_pin`, `piston_field/thrust_c/3`.
    pub fn piston(self) -> Result<HotPiston, Error> {
        let growth = |(k, g): (usize, GrowthDrawing)| {
            let controlled = SurfaceGrowth::controlled(&g.law, g.ratio_thrust, g.ratio_pin);
            controlled.map_err(|e| e.under(&format!("growth/{k}")))
        };
        let growth = self.growth.into_iter().enumerate().map(growth).collect::<Result<_, _>>()?;
        let [heights_mm, thrust_c, pin_c] = self.field;
        let field = PistonField::through(heights_mm, thrust_c, pin_c).map_err(|e| e.under("piston_field"))?;
        HotPiston::new(self.diameter_mm, self.shape, growth, field)
    }
}

/// A bore at its temperatures.
#[derive(Debug, Clone, PartialEq)]
pub struct WallDrawing<'a> {
    /// The bore.
    pub bore: BoreDrawing<'a>,
    /// Law of the wall that carries it.
    pub law: Law,
    /// Depths, and the temperature of the wall there; one row holds at every depth.
    pub field: [&'a [f64]; 2],
}

impl WallDrawing<'_> {
    /// The bore.
    ///
    /// # Errors
    /// As [`HotBore::new`] and the constructors of its parts; the error names the place: `bore/harmonics/1/cos_mm/2`, `bore_field/wall_c/3`.
    pub fn bore(&self) -> Result<HotBore, Error> {
        let [depths_mm, wall_c] = self.field;
        let shape = BoreShape::from_drawing(&self.bore).map_err(|e| e.under("bore"))?;
        let field = BoreField::through(depths_mm, wall_c).map_err(|e| e.under("bore_field"))?;
        HotBore::new(shape, Piecewise::of(&self.law), field)
    }
}

/// Everything a fit is made of.
#[derive(Debug, Clone, PartialEq)]
pub struct FitDrawing<'a> {
    /// The piston.
    pub piston: PistonDrawing<'a>,
    /// The bore.
    pub bore: WallDrawing<'a>,
    /// Crank radius, rod, pin offset, deck clearance and height of the crown as in [`Motion::new`]; none when the place in the bore does not matter.
    pub motion: Option<[f64; 5]>,
}

impl FitDrawing<'_> {
    /// The fit.
    ///
    /// # Errors
    /// As [`HotFit::of`], [`PistonDrawing::piston`] and [`WallDrawing::bore`]; the error names the place.
    pub fn fit(self) -> Result<HotFit, Error> {
        HotFit::of(self.piston.piston()?, self.bore.bore()?, moved(self.motion)?)
    }
}

/// A motion of five numbers, or none.
///
/// # Errors
/// As [`Motion::new`]; the error names the place: `motion/rod_mm`.
pub fn moved(motion: Option<[f64; 5]>) -> Result<Option<Motion>, Error> {
    let made = motion.map(|[radius, rod, offset, deck, crown]| Motion::new(radius, rod, offset, deck, crown));
    made.transpose().map_err(|e| e.under("motion"))
}

choices! {
    /// How it is said where the piston stands.
    PositionKind {
        /// By the crank angle.
        Crank = "crank",
        /// At top dead centre.
        TopDeadCentre = "top_dead_centre",
        /// By the depth of its gauge point.
        GaugeDepth = "gauge_depth",
        /// Not: the bore is the same at every depth.
        Anywhere = "anywhere",
    }
}

impl PositionKind {
    /// The position of that kind; only a crank angle and a depth look at the number, in degrees or mm.
    #[must_use]
    pub fn at(self, number: f64) -> Position {
        match self {
            PositionKind::Crank => Position::Crank(number),
            PositionKind::TopDeadCentre => Position::TopDeadCentre,
            PositionKind::GaugeDepth => Position::GaugeDepth(number),
            PositionKind::Anywhere => Position::Anywhere,
        }
    }
}
