//! The crank, the rod and the pin offset: how far the piston is from top dead centre, and where it stands in its bore.
//!
#![doc = include_str!("../../docs/crank.md")]

use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::{Error, ErrorKind};
use crate::shape::angle::turned;
use core::f64::consts::PI;

formula! {
    /// From the crankshaft's centre up to the pin at top dead centre, where rod and crank are in one line.
    TopOfPin: top ["mm"] = (radius, rod, offset) => ((rod + radius) * (rod + radius) - offset * offset).sqrt(); source "Pythagoras: rod and crank in one line";
    /// The same at bottom dead centre, where they lie over each other.
    BottomOfPin: bottom ["mm"] = (radius, rod, offset) => ((rod - radius) * (rod - radius) - offset * offset).sqrt(); source "Pythagoras: rod and crank over each other";
    /// Stroke: top less bottom, in the form that subtracts nothing from its like.
    TrueStroke: stroke ["mm"] = (radius, rod, top, bottom) => 4.0 * radius * rod / (top + bottom); source "difference of the squares of top and bottom";
    /// From top dead centre down to the pin; with the sine and cosine of the crank angle.
    Travel: travel ["mm"] = (radius, rod, offset, top, sin_f, cos_f) =>
        top - radius * cos_f - (rod * rod - (radius * sin_f + offset) * (radius * sin_f + offset)).sqrt();
        source "slider-crank with an offset pin";
    /// How fast it goes down.
    TravelPerDegree: travel_per_degree ["mm/deg"] = (radius, rod, offset, sin_f, cos_f) =>
        radius * (sin_f + cos_f * (radius * sin_f + offset) / (rod * rod - (radius * sin_f + offset) * (radius * sin_f + offset)).sqrt()) * PI / 180.0;
        source "derivative of the travel";
    /// From the deck down to a place of the piston.
    DepthInBore: depth ["mm"] = (deck_clearance, crown, place, travel) => deck_clearance + (crown - place) + travel;
        source "definition; heights from the bottom edge of the skirt";
}

/// The two dead centres of a crank with an offset pin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DeadCentres {
    /// From one to the other, in mm. With an offset it is more than twice the crank radius.
    pub stroke_mm: f64,
    /// Crank angle of top dead centre: 0 without an offset, below 0 for a pin offset to the major thrust side.
    pub top_deg: f64,
    /// Crank angle of bottom dead centre: 180 without an offset.
    pub bottom_deg: f64,
}

/// How far the piston is down, and how fast it goes down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PistonTravel {
    /// From top dead centre down, in mm.
    pub travel_mm: f64,
    /// More travel for each degree of the crank, in mm; negative on the way up.
    pub per_degree_mm: f64,
}

/// The two crank angles at which a piston is down by a given travel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CrankAngles {
    /// On the way up, before top dead centre.
    pub before_deg: f64,
    /// On the way down, after it.
    pub after_deg: f64,
}

/// The crank with what must hold for it to turn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Crank {
    radius: f64,
    rod: f64,
    offset: f64,
    top: f64,
    bottom: f64,
}

impl Crank {
    pub(crate) fn new(crank_radius_mm: f64, rod_mm: f64, pin_offset_mm: f64) -> Result<Crank, Error> {
        let radius = bounds::CRANK_RADIUS.check("crank_radius_mm", crank_radius_mm)?;
        let rod = bounds::ROD.check("rod_mm", rod_mm)?;
        let offset = bounds::PIN_OFFSET.check("pin_offset_mm", pin_offset_mm)? + 0.0;
        let reason = "the rod is longer than crank radius and offset together, or the crank cannot turn";
        bounds::check_above("rod_mm", rod, radius + offset.abs(), reason)?;
        let (top, bottom) =
            (TopOfPin::evaluate([radius, rod, offset]), BottomOfPin::evaluate([radius, rod, offset]));
        Ok(Crank { radius, rod, offset, top, bottom })
    }

    pub(crate) fn stroke(&self) -> f64 {
        TrueStroke::evaluate([self.radius, self.rod, self.top, self.bottom])
    }

    /// Crank angle of top dead centre; arctangents hold their digits where an arcsine is near a right angle.
    pub(crate) fn top_deg(&self) -> f64 {
        -libm::atan2(self.offset, self.top) * (180.0 / PI) + 0.0
    }

    /// Travel at a crank angle; a dead centre that rounding puts a hair above itself is at it.
    pub(crate) fn travel(&self, crank_angle_deg: f64) -> f64 {
        let (cos, sin) = turned(1, crank_angle_deg);
        let travel = Travel::evaluate([self.radius, self.rod, self.offset, self.top, sin, cos]);
        if travel > 0.0 { travel } else { 0.0 }
    }

    /// The crank angles at a travel from 0 to the stroke.
    pub(crate) fn angles_at(&self, travel_mm: f64) -> CrankAngles {
        let Crank { radius, rod, offset, top, .. } = *self;
        let pin = top - travel_mm;
        // triangle of crank, rod and the line from the crankshaft's centre to the pin
        let line = libm::sqrt(pin * pin + offset * offset);
        let short = travel_mm * (2.0 * top - travel_mm) / (radius + rod + line);
        let across = (line + rod - radius) * short;
        let along = (line + radius + rod) * (line + radius - rod);
        // at bottom dead centre the triangle closes, to rounding
        let along = if along > 0.0 { along } else { 0.0 };
        let half_width = 2.0 * libm::atan2(libm::sqrt(across), libm::sqrt(along)) * (180.0 / PI);
        let middle = -libm::atan2(offset, pin) * (180.0 / PI);
        CrankAngles { before_deg: middle - half_width + 0.0, after_deg: middle + half_width + 0.0 }
    }
}

/// Stroke and dead centres.
///
/// `pin_offset_mm` is positive toward the major thrust side; crank angles as on the page above.
///
/// # Errors
/// When a number is not finite or impossible, or the rod is too short for the crank to turn; the error names the parameter.
pub fn dead_centres(crank_radius_mm: f64, rod_mm: f64, pin_offset_mm: f64) -> Result<DeadCentres, Error> {
    let crank = Crank::new(crank_radius_mm, rod_mm, pin_offset_mm)?;
    let bottom_deg = 180.0 - libm::atan2(crank.offset, crank.bottom) * (180.0 / PI);
    Ok(DeadCentres { stroke_mm: crank.stroke(), top_deg: crank.top_deg(), bottom_deg })
}

/// Travel of the piston from top dead centre at a crank angle.
///
/// # Errors
/// As [`dead_centres`].
pub fn piston_travel(
    crank_radius_mm: f64,
    rod_mm: f64,
    pin_offset_mm: f64,
    crank_angle_deg: f64,
) -> Result<PistonTravel, Error> {
    let crank = Crank::new(crank_radius_mm, rod_mm, pin_offset_mm)?;
    bounds::CRANK_ANGLE.check("crank_angle_deg", crank_angle_deg)?;
    let (cos, sin) = turned(1, crank_angle_deg);
    let per_degree_mm = TravelPerDegree::evaluate([crank.radius, crank.rod, crank.offset, sin, cos]);
    let travel_mm = crank.travel(crank_angle_deg);
    Ok(PistonTravel { travel_mm, per_degree_mm: per_degree_mm + 0.0 })
}

/// The crank angles at which the piston is down by `travel_mm` from top dead centre.
///
/// Both are counted as in [`dead_centres`]: at no travel both are that of top dead centre, at the whole stroke they are a turn apart.
///
/// # Errors
/// As [`dead_centres`]; [`ErrorKind::OutOfRange`] for a travel below 0 or beyond the stroke.
pub fn crank_angles_at(
    crank_radius_mm: f64,
    rod_mm: f64,
    pin_offset_mm: f64,
    travel_mm: f64,
) -> Result<CrankAngles, Error> {
    let crank = Crank::new(crank_radius_mm, rod_mm, pin_offset_mm)?;
    let stroke = crank.stroke();
    if !(travel_mm >= 0.0 && travel_mm <= stroke) {
        let kind = if travel_mm.is_finite() { ErrorKind::OutOfRange } else { ErrorKind::NotFinite };
        let error = Error::new(kind, travel_mm.to_string(), "the piston is never there");
        let error = if travel_mm.is_finite() { error.value(travel_mm) } else { error };
        return Err(error.limits(0.0, stroke, "mm").at("travel_mm"));
    }
    Ok(crank.angles_at(travel_mm))
}

/// How deep below the deck a place of the piston is, in mm: `deck clearance + (crown - place) + travel`.
///
/// `crown_height_mm` is the height of the crown's deck reference and `height_mm` that of the place, both up from the bottom edge of the skirt.
/// Negative above the deck.
///
/// # Errors
/// When a number is not finite or impossible; the error names the parameter.
pub fn depth_in_bore_mm(
    deck_clearance_mm: f64,
    crown_height_mm: f64,
    height_mm: f64,
    travel_mm: f64,
) -> Result<f64, Error> {
    bounds::DECK.check("deck_clearance_mm", deck_clearance_mm)?;
    bounds::PISTON_HEIGHT.check("crown_height_mm", crown_height_mm)?;
    bounds::PISTON_HEIGHT.check("height_mm", height_mm)?;
    bounds::TRAVEL.check("travel_mm", travel_mm)?;
    Ok(DepthInBore::evaluate([deck_clearance_mm, crown_height_mm, height_mm, travel_mm]) + 0.0)
}
