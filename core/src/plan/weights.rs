//! Masses of assemblies: what each must lose, and the bob weight of a crankpin.
//!
#![doc = include_str!("../../docs/weights.md")]

use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::{Error, ErrorKind};
use crate::measurement::statistics::{as_number, sum};
use crate::shape::least::smaller;

formula! {
    /// Heaviest assembly of a band.
    Heaviest: most ["g"] = (lightest, band) => lightest + band; source "common practice, no source";
    /// What stands in for rods and pistons on a crankpin when the crankshaft is balanced.
    Bob: bob ["g"] = (rods, rotating, share, reciprocating, oil) => rods * (rotating + share * reciprocating) + oil;
        source "primary forces of a slider crank: rotating mass, and a share of the reciprocating";
}

/// A part of an assembly.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// Its mass, in g.
    pub mass_g: f64,
    /// What may be taken off it at most, in g; 0 where nothing may.
    pub removable_g: f64,
}

/// What an assembly loses.
#[derive(Debug, Clone, PartialEq)]
pub struct Cut {
    /// Its mass as it was weighed, in g.
    pub mass_g: f64,
    /// What each part loses, in g, in the order of the parts.
    pub cut_g: Vec<f64>,
    /// Its mass then, in g.
    pub left_g: f64,
    /// How far it is still over the heaviest allowed, in g; 0 when it is within.
    pub over_g: f64,
}

/// What all assemblies lose.
#[derive(Debug, Clone, PartialEq)]
pub struct CutList {
    /// Place of the lightest assembly, the first of equal ones.
    pub lightest: usize,
    /// Heaviest mass that is allowed, in g.
    pub most_g: f64,
    /// One for each assembly, in order.
    pub assemblies: Vec<Cut>,
    /// Is every one within the band?
    pub is_met: bool,
}

/// Most assemblies of an engine, and most parts of one.
const MOST: usize = 100;
/// Masses nearer than this are the same, in g: rounding of the arithmetic.
const NOISE_G: f64 = 1e-9;

/// What each assembly loses so that all are within a band of the lightest, in g.
///
/// # Errors
/// When a number is not finite or impossible, [`ErrorKind::MissingField`] without assemblies or parts, [`ErrorKind::OutOfRange`] for more than 100
/// of either, [`ErrorKind::Contradiction`] where more may be taken off a part than it has; the error names the place (`assemblies/2/0/mass_g`).
pub fn cut_list(assemblies: &[Vec<Part>], band_g: f64) -> Result<CutList, Error> {
    bounds::MASS_BAND.check("band_g", band_g)?;
    filled("assemblies", assemblies.len())?;
    for (k, parts) in assemblies.iter().enumerate() {
        filled(&format!("assemblies/{k}"), parts.len())?;
        parts.iter().enumerate().try_for_each(|(j, part)| check(part, &format!("assemblies/{k}/{j}")))?;
    }
    let masses: Vec<f64> = assemblies.iter().map(|parts| sum(parts.iter().map(|p| p.mass_g))).collect();
    let lighter = |best: (usize, f64), this: (usize, f64)| if this.1 < best.1 { this } else { best };
    let (lightest, least) = masses.iter().copied().enumerate().fold((0, f64::INFINITY), lighter);
    let most_g = Heaviest::evaluate([least, band_g]);
    let assemblies: Vec<Cut> =
        assemblies.iter().zip(&masses).map(|(parts, mass)| cut(parts, *mass, most_g)).collect();
    let is_met = assemblies.iter().all(|a| a.over_g <= 0.0);
    Ok(CutList { lightest, most_g, assemblies, is_met })
}

/// Takes what is over from the parts in order, from each what may be taken.
fn cut(parts: &[Part], mass_g: f64, most_g: f64) -> Cut {
    let above = mass_g - most_g;
    let mut over = if above > NOISE_G { above } else { 0.0 };
    let cut_g: Vec<f64> = parts
        .iter()
        .map(|part| {
            let cut = smaller(over, part.removable_g);
            over -= cut;
            cut
        })
        .collect();
    let over_g = if over > NOISE_G { over } else { 0.0 };
    Cut { mass_g, left_g: mass_g - sum(cut_g.iter().copied()), cut_g, over_g }
}

fn filled(field: &str, count: usize) -> Result<(), Error> {
    match count {
        0 => Err(Error::new(ErrorKind::MissingField, "", "at least one is needed").at(field)),
        1..=MOST => Ok(()),
        _ => {
            let error = Error::new(ErrorKind::OutOfRange, count.to_string(), "more than 100");
            Err(error.limits(1.0, as_number(MOST), "1").at(field))
        }
    }
}

fn check(part: &Part, field: &str) -> Result<(), Error> {
    bounds::PART_MASS.check(&format!("{field}/mass_g"), part.mass_g)?;
    bounds::REMOVABLE_MASS.check(&format!("{field}/removable_g"), part.removable_g)?;
    if part.removable_g > part.mass_g {
        let reason = "more may be taken off than the part has";
        let error = Error::new(ErrorKind::Contradiction, part.removable_g.to_string(), reason);
        return Err(error.value(part.removable_g).at(&format!("{field}/removable_g")));
    }
    Ok(())
}

/// What moves with a crankpin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BobWeight {
    /// Rods on the pin, 1 to 4.
    pub rods: usize,
    /// Big end of one rod as it is weighed with the rod level, in g.
    pub big_end_g: f64,
    /// Bearing shells of one rod, in g.
    pub bearing_g: f64,
    /// Small end of one rod, in g.
    pub small_end_g: f64,
    /// Piston with pin, rings and retainers, in g.
    pub piston_g: f64,
    /// Share of the reciprocating mass that is balanced: 0.5 for a right-angled V of two rods on a pin.
    pub share: f64,
    /// Oil in the pin, in g; 0 leaves it out.
    pub oil_g: f64,
}

/// Bob weight of a crankpin, in g.
///
/// # Errors
/// When a number is not finite or impossible; the error names the field.
pub fn bob_weight_g(of: &BobWeight) -> Result<f64, Error> {
    if !(1..=4).contains(&of.rods) {
        let error = Error::new(ErrorKind::OutOfRange, of.rods.to_string(), "a pin takes 1 to 4 rods");
        return Err(error.limits(1.0, 4.0, "1").at("rods"));
    }
    bounds::PART_MASS.check("big_end_g", of.big_end_g)?;
    bounds::PART_MASS.check("bearing_g", of.bearing_g)?;
    bounds::PART_MASS.check("small_end_g", of.small_end_g)?;
    bounds::PART_MASS.check("piston_g", of.piston_g)?;
    bounds::RECIPROCATING_SHARE.check("share", of.share)?;
    bounds::OIL_MASS.check("oil_g", of.oil_g)?;
    let (rotating, reciprocating) = (of.big_end_g + of.bearing_g, of.small_end_g + of.piston_g);
    Ok(Bob::evaluate([as_number(of.rods), rotating, of.share, reciprocating, of.oil_g]))
}
