//! A hot fit from the plain numbers and tables of a host that has no types of its own; refusals name the place in them.

use super::{HotFit, Motion, Parts, Position, SurfaceGrowth};
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

/// Everything a fit is made of.
#[derive(Debug, Clone, PartialEq)]
pub struct FitDrawing<'a> {
    /// Diameter of the bare piston at its gauge point, at 20 C.
    pub piston_diameter_mm: f64,
    /// Its shape.
    pub piston: PistonShape,
    /// How its surfaces grow, one for each.
    pub growth: Vec<GrowthDrawing>,
    /// Heights, and the temperatures of the piston there on the thrust axis and on the pin axis; one row holds at every height.
    pub piston_field: [&'a [f64]; 3],
    /// The bore.
    pub bore: BoreDrawing<'a>,
    /// Law of the wall that carries it.
    pub bore_law: Law,
    /// Depths, and the temperature of the wall there; one row holds at every depth.
    pub bore_field: [&'a [f64]; 2],
    /// Crank radius, rod, pin offset, deck clearance and height of the crown as in [`Motion::new`]; none when the place in the bore does not matter.
    pub motion: Option<[f64; 5]>,
}

impl FitDrawing<'_> {
    /// The fit.
    ///
    /// # Errors
    /// As [`HotFit::new`] and the constructors of its parts; the error names the place: `growth/0/ratio_pin`, `bore/harmonics/1/cos_mm/2`,
    /// `piston_field/thrust_c/3`.
    pub fn fit(self) -> Result<HotFit, Error> {
        let growth = |(k, g): (usize, GrowthDrawing)| {
            let controlled = SurfaceGrowth::controlled(&g.law, g.ratio_thrust, g.ratio_pin);
            controlled.map_err(|e| e.under(&format!("growth/{k}")))
        };
        let [heights_mm, thrust_c, pin_c] = self.piston_field;
        let [depths_mm, wall_c] = self.bore_field;
        let motion = self.motion.map(|[radius, rod, offset, deck, crown]| {
            Motion::new(radius, rod, offset, deck, crown).map_err(|e| e.under("motion"))
        });
        HotFit::new(Parts {
            piston_diameter_mm: self.piston_diameter_mm,
            piston: self.piston,
            growth: self.growth.into_iter().enumerate().map(growth).collect::<Result<_, _>>()?,
            piston_field: PistonField::through(heights_mm, thrust_c, pin_c)
                .map_err(|e| e.under("piston_field"))?,
            bore: BoreShape::from_drawing(&self.bore).map_err(|e| e.under("bore"))?,
            bore_law: Piecewise::of(&self.bore_law),
            bore_field: BoreField::through(depths_mm, wall_c).map_err(|e| e.under("bore_field"))?,
            motion: motion.transpose()?,
        })
    }
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
