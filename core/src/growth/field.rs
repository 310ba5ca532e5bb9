//! Temperatures of a running piston over its height and of a bore over its depth, and how they rise.
//!
//! A temperature of the piston is that of the material that carries the diameter in its direction: on the pin axis the bosses and the crown
//! that ties them, not the skin of the skirt. That of a bore is the mean over the section of the wall that carries it.

use crate::bounds;
use crate::calc::{Formula, formula};
use crate::choice::choices;
use crate::error::Error;
use crate::shape::curve::Curve;

formula! {
    /// Temperature when the rise from 20 C is `k` times that of the field.
    Risen: t ["C"] = (k, t_field) => 20.0 + k * (t_field - 20.0); source "all rises from 20 C in proportion";
    /// Hottest that the error of a field leaves, of standard uncertainty `u`.
    Hottest: t ["C"] = (t_field, u) => t_field + (3.0 * (u * u)).sqrt(); source "upper end of a rectangular error";
    /// Coldest that the error of a field leaves, of standard uncertainty `u`.
    Coldest: t ["C"] = (t_field, u) => t_field - (3.0 * (u * u)).sqrt(); source "lower end of a rectangular error";
}

/// Temperatures of a piston over height, in two directions.
#[derive(Debug, Clone, PartialEq)]
pub struct PistonField {
    /// Thrust axis.
    pub thrust_c: Curve,
    /// Pin axis.
    pub pin_c: Curve,
}

/// Temperature of the wall of a bore over depth: the mean over its section.
#[derive(Debug, Clone, PartialEq)]
pub struct BoreField {
    /// The wall.
    pub wall_c: Curve,
}

impl PistonField {
    /// Through rows of a table; one row holds at every height.
    ///
    /// # Errors
    /// As [`Curve::through`], and for an impossible temperature, with the place as field (`pin_c/2`).
    pub fn through(heights_mm: &[f64], thrust_c: &[f64], pin_c: &[f64]) -> Result<Self, Error> {
        Ok(PistonField {
            thrust_c: temperatures("heights_mm", heights_mm, "thrust_c", thrust_c)?,
            pin_c: temperatures("heights_mm", heights_mm, "pin_c", pin_c)?,
        })
    }

    /// The same at every height.
    ///
    /// # Errors
    /// For an impossible temperature.
    pub fn uniform(thrust_c: f64, pin_c: f64) -> Result<Self, Error> {
        PistonField::through(&[0.0], &[thrust_c], &[pin_c])
    }

    /// Refuses a stretch of heights that a table does not reach over; the field is that table.
    pub(crate) fn check_over(&self, from_mm: f64, to_mm: f64) -> Result<(), Error> {
        for (curve, of) in [(&self.thrust_c, "piston_field/thrust_c"), (&self.pin_c, "piston_field/pin_c")] {
            for place in [from_mm, to_mm] {
                curve.check(place).map_err(|e| e.moved(of.to_owned()))?;
            }
        }
        Ok(())
    }
}

impl BoreField {
    /// Through rows of a table; one row holds at every depth.
    ///
    /// # Errors
    /// As [`Curve::through`], and for an impossible temperature, with the place as field (`wall_c/2`).
    pub fn through(depths_mm: &[f64], wall_c: &[f64]) -> Result<Self, Error> {
        Ok(BoreField { wall_c: temperatures("depths_mm", depths_mm, "wall_c", wall_c)? })
    }

    /// The same at every depth.
    ///
    /// # Errors
    /// For an impossible temperature.
    pub fn uniform(wall_c: f64) -> Result<Self, Error> {
        BoreField::through(&[0.0], &[wall_c])
    }
}

fn temperatures(places: &str, at: &[f64], field: &str, celsius: &[f64]) -> Result<Curve, Error> {
    for (k, place) in at.iter().enumerate() {
        let bound = if places == "heights_mm" { bounds::PISTON_HEIGHT } else { bounds::DEPTH };
        bound.check(&format!("{places}/{k}"), *place)?;
    }
    for (k, t) in celsius.iter().enumerate() {
        bounds::RUNNING_TEMPERATURE.check(&format!("{field}/{k}"), *t)?;
    }
    Curve::through(at, celsius).map_err(|e| {
        let moved = e.field().replace("places", places).replace("values", field);
        e.moved(moved)
    })
}

/// How far the temperatures have risen: factors on the rise of piston and bore from 20 C; 1 is the field as it stands, 0 is 20 C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rise {
    /// Of the piston.
    pub piston: f64,
    /// Of the bore.
    pub bore: f64,
}

impl Rise {
    /// The fields as they stand.
    pub const FULL: Rise = Rise { piston: 1.0, bore: 1.0 };
    /// Everything at 20 C.
    pub const COLD: Rise = Rise { piston: 0.0, bore: 0.0 };

    /// Temperature of the piston where the field has `field_c`.
    #[must_use]
    pub fn piston_c(&self, field_c: f64) -> f64 {
        Risen::evaluate([self.piston, field_c])
    }

    /// Temperature of the bore where the field has `field_c`.
    #[must_use]
    pub fn bore_c(&self, field_c: f64) -> f64 {
        Risen::evaluate([self.bore, field_c])
    }
}

choices! {
    /// What rises on the way to first contact.
    Scenario {
        /// The piston; the bore stays at its field.
        PistonAlone = "piston_alone",
        /// Piston and bore in proportion.
        PistonAndBore = "piston_and_bore",
        /// The piston; the bore stays at 20 C, as at a cold start.
        PistonWithColdBore = "piston_with_cold_bore",
    }
}

impl Scenario {
    /// The rises with a factor `k`.
    #[must_use]
    pub fn rise(self, k: f64) -> Rise {
        let bore = match self {
            Scenario::PistonAlone => 1.0,
            Scenario::PistonAndBore => k,
            Scenario::PistonWithColdBore => 0.0,
        };
        Rise { piston: k, bore }
    }
}
