//! The shape of a bore over depth and angle.
//!
//! Depths are down from the deck; angles are those of the piston: 0 on the major thrust side, 90 on the pin axis toward the front.
//! Between rows the cosine and the sine part of an order are interpolated, never amplitude and phase, which jump where a wave dies out.

use super::angle::{check_width, opens, turned};
use super::curve::Curve;
use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::{Error, ErrorKind};

formula! {
    /// Mean radius of a bore at a depth, `dev` the deviation of the radius.
    MeanRadius: r ["mm"] = (d20, dev) => d20 / 2.0 + dev; source "definition";
    /// One more order of the radius; `cos_n` and `sin_n` are those of the order times the angle.
    WithHarmonic: r ["mm"] = (r0, a, cos_n, b, sin_n) => r0 + a * cos_n + b * sin_n; source "Fourier series of the radius about the axis";
}

/// Highest order of a bore.
pub const MOST_ORDER: usize = 32;

/// One order of the radius over depth, in mm.
#[derive(Debug, Clone, PartialEq)]
pub struct BoreHarmonic {
    /// Waves in one turn, 2 to 32.
    pub order: usize,
    /// Part that is largest at 0 degrees.
    pub cos_mm: Curve,
    /// Part that is largest a quarter wave further.
    pub sin_mm: Curve,
}

/// Where a bore does not support the piston: a port, a relief.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Port {
    /// Angle at which it begins; its edge belongs to the wall.
    pub from_deg: f64,
    /// Angle at which it ends, in the direction of rising angles: from 350 to 10 is 20 degrees wide, from 0 to 360 the whole turn.
    pub to_deg: f64,
    /// Depth at which it begins.
    pub from_mm: f64,
    /// Depth at which it ends.
    pub to_mm: f64,
}

/// A bore: `R(t, y) = D20/2 + deviation(y) + sum of a_n(y) cos nt + b_n(y) sin nt`, n from 2.
///
/// The size is the finished one: a plated bore is measured over its plating, and the wall that carries it decides how it grows.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct BoreShape {
    /// Size at 20 C.
    pub diameter_mm: f64,
    /// Mean radius at a depth less half the size.
    pub deviation_mm: Curve,
    /// Orders from 2 up, rising.
    pub harmonics: Vec<BoreHarmonic>,
    /// Order 1: how far the axis lies toward 0 and 90 degrees. It is a position, and no part of the clearance.
    pub axis_mm: Option<(Curve, Curve)>,
    /// Where the piston is not supported.
    pub ports: Vec<Port>,
    /// Depth of the lower end; none when the piston does not come out of it.
    pub end_mm: Option<f64>,
}

/// A bore as its drawing gives it.
#[derive(Debug, Clone, PartialEq)]
pub struct BoreDrawing<'a> {
    /// Size at 20 C.
    pub diameter_mm: f64,
    /// Depths, and the mean radius there less half the size; none is the same everywhere.
    pub deviation: Option<(&'a [f64], &'a [f64])>,
    /// Orders, in any order.
    pub harmonics: Vec<HarmonicDrawing<'a>>,
    /// Where the piston is not supported.
    pub ports: Vec<Port>,
    /// Depth of the lower end; none when the piston does not come out of it.
    pub end_mm: Option<f64>,
}

/// One order of a drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HarmonicDrawing<'a> {
    /// Waves in one turn; 1 is the position of the axis.
    pub order: usize,
    /// Depths; one row holds at every depth.
    pub depths_mm: &'a [f64],
    /// Part that is largest at 0 degrees, there.
    pub cos_mm: &'a [f64],
    /// Part that is largest a quarter wave further, there.
    pub sin_mm: &'a [f64],
}

impl BoreShape {
    /// A bore from its drawing.
    ///
    /// # Errors
    /// As the other constructors; the error names the place (`harmonics/0/cos_mm/2`).
    pub fn from_drawing(drawing: &BoreDrawing<'_>) -> Result<Self, Error> {
        let mut bore = BoreShape::round(drawing.diameter_mm)?;
        if let Some((depths_mm, deviation_mm)) = drawing.deviation {
            bore = bore.with_deviation(depths_mm, deviation_mm)?;
        }
        for (k, h) in drawing.harmonics.iter().enumerate() {
            let more = bore.with_harmonic(h.order, h.depths_mm, h.cos_mm, h.sin_mm);
            bore = more.map_err(|e| e.under(&format!("harmonics/{k}")))?;
        }
        for (k, port) in drawing.ports.iter().enumerate() {
            bore = bore.with_port(*port).map_err(|e| e.under(&format!("ports/{k}")))?;
        }
        match drawing.end_mm {
            Some(end_mm) => bore.with_end(end_mm),
            None => Ok(bore),
        }
    }

    /// A round and straight bore.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] or [`ErrorKind::NotFinite`] for an impossible size.
    pub fn round(diameter_mm: f64) -> Result<Self, Error> {
        bounds::BORE.check("diameter_mm", diameter_mm)?;
        Ok(BoreShape {
            diameter_mm,
            deviation_mm: Curve::constant(0.0),
            harmonics: Vec::new(),
            axis_mm: None,
            ports: Vec::new(),
            end_mm: None,
        })
    }

    /// The same bore with a mean radius that changes with depth: rows of radius less half the size.
    ///
    /// # Errors
    /// As [`Curve::through`], and for an impossible number, with the place as field.
    pub fn with_deviation(self, depths_mm: &[f64], deviation_mm: &[f64]) -> Result<Self, Error> {
        Ok(BoreShape { deviation_mm: curve(depths_mm, "deviation_mm", deviation_mm)?, ..self })
    }

    /// The same bore with one order more. Order 1 is the position of the axis, and is kept apart.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] of the order, [`ErrorKind::Repeated`] when it is there, and as [`BoreShape::with_deviation`].
    pub fn with_harmonic(
        self,
        order: usize,
        depths_mm: &[f64],
        cos_mm: &[f64],
        sin_mm: &[f64],
    ) -> Result<Self, Error> {
        let (cosine, sine) = (curve(depths_mm, "cos_mm", cos_mm)?, curve(depths_mm, "sin_mm", sin_mm)?);
        self.with_order(order, cosine, sine)
    }

    /// The same bore with one order more, as curves over depth.
    pub(crate) fn with_order(mut self, order: usize, cosine: Curve, sine: Curve) -> Result<Self, Error> {
        let repeated =
            || Error::new(ErrorKind::Repeated, order.to_string(), "this order stands twice").at("order");
        if order == 1 {
            if self.axis_mm.is_some() {
                return Err(repeated());
            }
            return Ok(BoreShape { axis_mm: Some((cosine, sine)), ..self });
        }
        if !(2..=MOST_ORDER).contains(&order) {
            let reason = "orders of a bore run from 1, the position of its axis, to 32";
            let error = Error::new(ErrorKind::OutOfRange, order.to_string(), reason);
            return Err(error.limits(1.0, 32.0, "1").at("order"));
        }
        let place = self.harmonics.partition_point(|h| h.order < order);
        if self.harmonics.get(place).is_some_and(|h| h.order == order) {
            return Err(repeated());
        }
        self.harmonics.insert(place, BoreHarmonic { order, cos_mm: cosine, sin_mm: sine });
        Ok(self)
    }

    /// The same bore with one port more.
    ///
    /// # Errors
    /// When a number is not finite or impossible, or the port has no width or no height.
    pub fn with_port(mut self, port: Port) -> Result<Self, Error> {
        bounds::ANGLE.check("from_deg", port.from_deg)?;
        bounds::ANGLE.check("to_deg", port.to_deg)?;
        bounds::DEPTH.check("from_mm", port.from_mm)?;
        bounds::DEPTH.check("to_mm", port.to_mm)?;
        bounds::check_above("to_mm", port.to_mm, port.from_mm, "a port ends below its beginning")?;
        check_width(port.from_deg, port.to_deg, "a port")?;
        self.ports.push(port);
        Ok(self)
    }

    /// The same bore that ends at a depth: what stands out below is not in it.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] or [`ErrorKind::NotFinite`] for an impossible depth.
    pub fn with_end(self, end_mm: f64) -> Result<Self, Error> {
        bounds::BORE_LENGTH.check("end_mm", end_mm)?;
        Ok(BoreShape { end_mm: Some(end_mm), ..self })
    }

    /// Radius at 20 C at a depth that was checked.
    #[must_use]
    pub fn radius_mm(&self, depth_mm: f64, angle_deg: f64) -> f64 {
        let mean = MeanRadius::evaluate([self.diameter_mm, self.deviation_mm.value(depth_mm)]);
        self.harmonics.iter().fold(mean, |r, h| {
            let (cosine, sine) = turned(h.order, angle_deg);
            WithHarmonic::evaluate([r, h.cos_mm.value(depth_mm), cosine, h.sin_mm.value(depth_mm), sine])
        })
    }

    /// Is the shape the same at every depth?
    #[must_use]
    pub fn is_straight(&self) -> bool {
        let constant = |curve: &Curve| curve.pieces().is_empty();
        self.ports.is_empty()
            && constant(&self.deviation_mm)
            && self.harmonics.iter().all(|h| constant(&h.cos_mm) && constant(&h.sin_mm))
    }

    /// Is there wall at a place that was checked? The edge of a port belongs to the wall.
    #[must_use]
    pub fn supports(&self, depth_mm: f64, angle_deg: f64) -> bool {
        !self
            .ports
            .iter()
            .any(|p| depth_mm > p.from_mm && depth_mm < p.to_mm && opens(p.from_deg, p.to_deg, angle_deg))
    }
}

fn curve(depths_mm: &[f64], field: &str, values_mm: &[f64]) -> Result<Curve, Error> {
    for (k, depth) in depths_mm.iter().enumerate() {
        bounds::DEPTH.check(&format!("depths_mm/{k}"), *depth)?;
    }
    for (k, value) in values_mm.iter().enumerate() {
        bounds::BORE_FORM.check(&format!("{field}/{k}"), *value)?;
    }
    Curve::through(depths_mm, values_mm).map_err(|e| {
        let moved = e.field().replace("places", "depths_mm").replace("values", field);
        e.moved(moved)
    })
}
