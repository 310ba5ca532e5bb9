//! A piston and a bore at their temperatures, each by itself: made and checked once, put together into any number of fits.

use super::tables::reach;
use super::{HotFit, Motion, Parts, SurfaceGrowth, axial, bore_hot, piston_cold, strain_at};
use super::{check_bore_law, check_growth, check_piston_laws};
use crate::bounds;
use crate::calc::Formula;
use crate::error::{Error, ErrorKind};
use crate::growth::field::{BoreField, PistonField, Rise};
use crate::growth::{Grown, Piecewise};
use crate::shape::angle::{across, cosine};
use crate::shape::bore::BoreShape;
use crate::shape::piston::PistonShape;

/// Radius and diameter at one place, at 20 C and at its temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SizeAt {
    /// Radius at 20 C.
    pub cold_radius_mm: f64,
    /// Radius at its temperature.
    pub hot_radius_mm: f64,
    /// Diameters at 20 C and at its temperature: the radii at the angle and across; none where there is nothing across.
    pub diameters_mm: Option<(f64, f64)>,
}

/// A piston with how its surfaces grow, at its temperatures.
#[derive(Debug, Clone, PartialEq)]
pub struct HotPiston {
    diameter_mm: f64,
    shape: PistonShape,
    growth: Vec<SurfaceGrowth>,
    field: PistonField,
}

impl HotPiston {
    /// A piston by the diameter of its bare metal at the gauge point, at 20 C.
    ///
    /// # Errors
    /// When the diameter is impossible, a surface lacks its growth, the temperatures do not reach over every surface, or one is outside the law of
    /// its material. The fields are those of [`Parts`].
    pub fn new(
        diameter_mm: f64,
        shape: PistonShape,
        growth: Vec<SurfaceGrowth>,
        field: PistonField,
    ) -> Result<Self, Error> {
        bounds::PISTON.check("piston_diameter_mm", diameter_mm)?;
        check_growth(&shape, &growth)?;
        for (k, surface) in shape.surfaces.iter().enumerate() {
            let reaches = field.check_over(surface.from_mm, surface.to_mm);
            reaches.map_err(|e| e.under(&format!("surfaces/{k}")))?;
        }
        check_piston_laws(&shape, &growth, &field, Rise::FULL)?;
        Ok(HotPiston { diameter_mm, shape, growth, field })
    }

    /// Its size at a height and an angle; cold as [`PistonShape::radius_mm`] and [`PistonShape::diameter_mm`].
    ///
    /// # Errors
    /// As [`PistonShape::radius_mm`].
    pub fn size_at(&self, height_mm: f64, angle_deg: f64) -> Result<SizeAt, Error> {
        let cold_radius_mm = self.shape.radius_mm(self.diameter_mm, height_mm, angle_deg)?;
        let hot_radius_mm = self.hot_radius_mm(height_mm, angle_deg);
        // refused where there is no surface across; all else was accepted above
        let cold = self.shape.diameter_mm(self.diameter_mm, height_mm, angle_deg).ok();
        let hot = hot_radius_mm + self.hot_radius_mm(height_mm, across(angle_deg));
        Ok(SizeAt { cold_radius_mm, hot_radius_mm, diameters_mm: cold.map(|cold| (cold, hot)) })
    }

    /// Its size at the gauge point.
    ///
    /// # Errors
    /// As [`HotPiston::size_at`]: the gauge point may lie in a window.
    pub fn at_gauge_point(&self) -> Result<SizeAt, Error> {
        self.size_at(self.shape.gauge_height_mm, 0.0)
    }

    /// As that of a fit, at a place that was checked.
    fn hot_radius_mm(&self, height_mm: f64, angle_deg: f64) -> f64 {
        let mut grown = self.shape.surfaces.iter().zip(&self.growth);
        let here = grown.find(|(surface, _)| height_mm >= surface.from_mm && height_mm <= surface.to_mm);
        here.map_or(f64::NAN, |(surface, growth)| {
            let cold = piston_cold(self.diameter_mm, surface, angle_deg, height_mm);
            let strains = axial(growth, &self.field, height_mm, Rise::FULL);
            Grown::evaluate([cold, strain_at(strains, cosine(2, angle_deg))])
        })
    }
}

/// A bore with how the wall that carries it grows, at its temperatures.
#[derive(Debug, Clone, PartialEq)]
pub struct HotBore {
    shape: BoreShape,
    law: Piecewise,
    field: BoreField,
    /// depths that every table reaches
    reach: (f64, f64),
}

impl HotBore {
    /// A bore.
    ///
    /// # Errors
    /// When its tables have no depth in common, or a temperature is outside the law of the wall. The fields are those of [`Parts`].
    pub fn new(shape: BoreShape, law: Piecewise, field: BoreField) -> Result<Self, Error> {
        let reach = reach(&shape, &field.wall_c)?;
        check_bore_law(&law, &field, reach, Rise::FULL)?;
        Ok(HotBore { shape, law, field, reach })
    }

    /// Its size at a depth and an angle.
    ///
    /// # Errors
    /// When a number is not finite or impossible; [`ErrorKind::OutOfRange`] where there is no bore, or a table does not reach;
    /// [`ErrorKind::Contradiction`] in a port. The error names the parameter.
    pub fn size_at(&self, depth_mm: f64, angle_deg: f64) -> Result<SizeAt, Error> {
        bounds::ANGLE.check("angle_deg", angle_deg)?;
        self.check_depth(depth_mm)?;
        if !self.shape.supports(depth_mm, angle_deg) {
            let error =
                Error::new(ErrorKind::Contradiction, angle_deg.to_string(), "there is a port, and no wall");
            return Err(error.value(angle_deg).at("angle_deg"));
        }
        let cold = |angle: f64| self.shape.radius_mm(depth_mm, angle);
        let hot = |angle: f64| bore_hot(cold(angle), &self.law, &self.field, depth_mm, Rise::FULL);
        let opposite = across(angle_deg);
        let (cold_radius_mm, hot_radius_mm) = (cold(angle_deg), hot(angle_deg));
        let diameters = (cold_radius_mm + cold(opposite), hot_radius_mm + hot(opposite));
        let diameters_mm = self.shape.supports(depth_mm, opposite).then_some(diameters);
        Ok(SizeAt { cold_radius_mm, hot_radius_mm, diameters_mm })
    }

    fn check_depth(&self, depth_mm: f64) -> Result<(), Error> {
        bounds::DEPTH.check("depth_mm", depth_mm)?;
        let (from, to) = self.reach;
        match depth_mm >= from && depth_mm <= to {
            true => Ok(()),
            false => {
                let reason = "there is no bore, or its tables do not reach there";
                let error = Error::new(ErrorKind::OutOfRange, depth_mm.to_string(), reason);
                Err(error.value(depth_mm).limits(from, to, "mm").at("depth_mm"))
            }
        }
    }
}

impl HotFit {
    /// A fit of a piston and a bore that were made before; copies of them may be in other fits.
    ///
    /// # Errors
    /// As [`HotFit::new`].
    pub fn of(piston: HotPiston, bore: HotBore, motion: Option<Motion>) -> Result<Self, Error> {
        HotFit::new(Parts {
            piston_diameter_mm: piston.diameter_mm,
            piston: piston.shape,
            growth: piston.growth,
            piston_field: piston.field,
            bore: bore.shape,
            bore_law: bore.law,
            bore_field: bore.field,
            motion,
        })
    }
}
