//! Where the piston stands in the bore.

use crate::bounds;
use crate::calc::Formula;
use crate::clearance::crank::{Crank, DepthInBore};
use crate::error::Error;

/// How a piston moves in its bore: crank, rod and deck.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Motion {
    crank: Crank,
    deck_clearance_mm: f64,
    crown_height_mm: f64,
}

impl Motion {
    /// Crank and rod in mm, the pin offset positive toward the major thrust side; the crown below the deck at top dead centre, negative where it
    /// stands out; and from the bottom edge of the skirt to the plane of the crown that is counted against the deck.
    ///
    /// # Errors
    /// When a number is impossible, or the rod is too short for the crank to turn; the error names the parameter.
    pub fn new(
        crank_radius_mm: f64,
        rod_mm: f64,
        pin_offset_mm: f64,
        deck_clearance_mm: f64,
        crown_height_mm: f64,
    ) -> Result<Self, Error> {
        let crank = Crank::new(crank_radius_mm, rod_mm, pin_offset_mm)?;
        bounds::DECK.check("deck_clearance_mm", deck_clearance_mm)?;
        bounds::PISTON_HEIGHT.check("crown_height_mm", crown_height_mm)?;
        Ok(Motion { crank, deck_clearance_mm, crown_height_mm })
    }

    /// Crank angle of top dead centre.
    #[must_use]
    pub fn top_dead_centre_deg(&self) -> f64 {
        self.crank.top_deg()
    }

    /// Travel from top dead centre at a crank angle.
    #[must_use]
    pub fn travel_mm(&self, crank_deg: f64) -> f64 {
        self.crank.travel(crank_deg)
    }

    /// Travel from top to bottom dead centre.
    #[must_use]
    pub fn stroke_mm(&self) -> f64 {
        self.crank.stroke()
    }

    /// Crank angle of a travel on the way down; beyond a dead centre that of it.
    #[must_use]
    pub fn crank_deg(&self, travel_mm: f64) -> f64 {
        let stroke = self.crank.stroke();
        let travel = if travel_mm < stroke { travel_mm } else { stroke };
        self.crank.angles_at(if travel > 0.0 { travel } else { 0.0 }).after_deg
    }

    /// Depth of the bottom edge of the skirt.
    pub(crate) fn base_depth(&self, travel_mm: f64) -> f64 {
        DepthInBore::evaluate([self.deck_clearance_mm, self.crown_height_mm, 0.0, travel_mm])
    }
}
