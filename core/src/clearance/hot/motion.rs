//! Stand-in for the slider-crank.

use crate::bounds;
use crate::error::Error;
use crate::shape::angle::turned;
use core::f64::consts::PI;

/// Crank, rod and deck.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Motion {
    /// Half of the throw.
    pub crank_radius_mm: f64,
    /// Rod, centre to centre.
    pub rod_length_mm: f64,
    /// Pin axis from the cylinder axis, positive toward the major thrust side.
    pub pin_offset_mm: f64,
}

impl Motion {
    /// From its lengths.
    ///
    /// # Errors
    /// When a number is impossible, or the rod is too short for the crank.
    pub fn new(crank_radius_mm: f64, rod_length_mm: f64, pin_offset_mm: f64) -> Result<Self, Error> {
        bounds::CRANK_THROW.check("crank_radius_mm", crank_radius_mm)?;
        bounds::ROD.check("rod_length_mm", rod_length_mm)?;
        bounds::check_above(
            "rod_length_mm",
            rod_length_mm,
            crank_radius_mm + pin_offset_mm.abs(),
            "the rod is too short",
        )?;
        Ok(Motion { crank_radius_mm, rod_length_mm, pin_offset_mm })
    }

    /// Crank angle of top dead centre.
    #[must_use]
    pub fn top_dead_centre_deg(&self) -> f64 {
        -libm::asin(self.pin_offset_mm / (self.rod_length_mm + self.crank_radius_mm)) * (180.0 / PI)
    }

    /// Crank angle of bottom dead centre.
    #[must_use]
    pub fn bottom_dead_centre_deg(&self) -> f64 {
        180.0 - libm::asin(self.pin_offset_mm / (self.rod_length_mm - self.crank_radius_mm)) * (180.0 / PI)
    }

    /// Way of the piston down from top dead centre.
    #[must_use]
    pub fn travel_mm(&self, crank_deg: f64) -> f64 {
        let (r, l, o) = (self.crank_radius_mm, self.rod_length_mm, self.pin_offset_mm);
        let (cosine, sine) = turned(1, crank_deg);
        let side = r * sine + o;
        libm::sqrt((l + r) * (l + r) - o * o) - r * cosine - libm::sqrt(l * l - side * side)
    }

    /// Way from top to bottom dead centre.
    #[must_use]
    pub fn stroke_mm(&self) -> f64 {
        let (r, l, o) = (self.crank_radius_mm, self.rod_length_mm, self.pin_offset_mm);
        libm::sqrt((l + r) * (l + r) - o * o) - libm::sqrt((l - r) * (l - r) - o * o)
    }

    /// Crank angle of a travel on the way down.
    #[must_use]
    pub fn crank_deg(&self, travel_mm: f64) -> f64 {
        let (mut low, mut high) = (self.top_dead_centre_deg(), self.bottom_dead_centre_deg());
        if travel_mm <= 0.0 {
            return low;
        }
        if travel_mm >= self.stroke_mm() {
            return high;
        }
        for _ in 0..60 {
            let middle = (low + high) / 2.0;
            if self.travel_mm(middle) < travel_mm {
                low = middle;
            } else {
                high = middle;
            }
        }
        (low + high) / 2.0
    }
}
