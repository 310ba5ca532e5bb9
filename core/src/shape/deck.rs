//! The deck: where the piston stops, what is left above it, and which gasket goes there.
//!
#![doc = include_str!("../../docs/deck.md")]

use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::{Error, ErrorKind};
use core::f64::consts::PI;

formula! {
    /// From the deck down to the crown.
    DeckClearance: deck_clearance ["mm"] = (block, stroke, rod, height) => block - (stroke / 2.0 + rod + height); source "definition";
    /// From the deck up to the crown.
    Protrusion: protrusion ["mm"] = (block, stroke, rod, height) => stroke / 2.0 + rod + height - block; source "definition";
    /// From the crown to the head.
    Squish: squish ["mm"] = (deck_clearance, gasket) => deck_clearance + gasket; source "definition";
    /// From the crown to the head, by the protrusion.
    SquishOverProtrusion: squish ["mm"] = (gasket, protrusion) => gasket - protrusion; source "definition";
    /// From the deck up to the flange of a liner on its shims.
    LinerProtrusion: protrusion ["mm"] = (flange, shim, counterbore) => flange + shim - counterbore; source "definition";
    /// Volume of a cylinder; negative below a negative height.
    Cylinder: v ["cm3"] = (d, h) => d * d * h * PI / 4000.0; source "definition";
    /// Volume between two cylinders.
    Ring: v ["cm3"] = (outside, inside, h) => (outside - inside) * (outside + inside) * h * PI / 4000.0; source "definition";
    /// Everything above the piston.
    ClearanceVolume: v ["cm3"] = (head, gasket, deck, crown, crevice) => head + gasket + deck + crown + crevice; source "definition";
    /// Compression ratio.
    Ratio: ratio ["1"] = (swept, clearance) => (swept + clearance) / clearance; source "definition";
}

/// Where the piston stops at top dead centre.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Deck {
    /// From the deck down to the crown, in mm; negative when the crown stands above the deck.
    pub deck_clearance_mm: f64,
    /// The same the other way: from the deck up to the crown.
    pub protrusion_mm: f64,
    /// From the crown to the head, in mm. Below zero they meet: a fault of the parts, and no error of the call.
    pub squish_mm: f64,
}

/// Deck clearance, protrusion and squish from the heights of the parts, in mm.
///
/// # Errors
/// When a number is not finite or impossible; the error names the parameter.
pub fn deck(
    block_height_mm: f64,
    stroke_mm: f64,
    rod_mm: f64,
    compression_height_mm: f64,
    gasket_mm: f64,
) -> Result<Deck, Error> {
    let deck_clearance_mm = deck_clearance_mm(block_height_mm, stroke_mm, rod_mm, compression_height_mm)?;
    bounds::GASKET.check("gasket_mm", gasket_mm)?;
    let heights = [block_height_mm, stroke_mm, rod_mm, compression_height_mm];
    Ok(Deck {
        deck_clearance_mm,
        protrusion_mm: Protrusion::evaluate(heights),
        squish_mm: Squish::evaluate([deck_clearance_mm, gasket_mm]),
    })
}

/// From the deck down to the crown at top dead centre, in mm; negative when the crown stands above the deck.
///
/// # Errors
/// When a number is not finite or impossible; the error names the parameter.
pub fn deck_clearance_mm(
    block_height_mm: f64,
    stroke_mm: f64,
    rod_mm: f64,
    compression_height_mm: f64,
) -> Result<f64, Error> {
    bounds::BLOCK_HEIGHT.check("block_height_mm", block_height_mm)?;
    bounds::STROKE.check("stroke_mm", stroke_mm)?;
    bounds::ROD.check("rod_mm", rod_mm)?;
    bounds::COMPRESSION_HEIGHT.check("compression_height_mm", compression_height_mm)?;
    Ok(DeckClearance::evaluate([block_height_mm, stroke_mm, rod_mm, compression_height_mm]))
}

/// Swept volume of one cylinder, in cm3.
///
/// # Errors
/// When a number is not finite or impossible; the error names the parameter.
pub fn swept_volume_cm3(bore_mm: f64, stroke_mm: f64) -> Result<f64, Error> {
    bounds::BORE.check("bore_mm", bore_mm)?;
    bounds::STROKE.check("stroke_mm", stroke_mm)?;
    Ok(Cylinder::evaluate([bore_mm, stroke_mm]))
}

/// Volume in cm3 between top land and bore, down to the first ring.
///
/// # Errors
/// When a number is not finite or impossible, or the land is larger than the bore.
pub fn top_land_crevice_cm3(bore_mm: f64, land_mm: f64, land_height_mm: f64) -> Result<f64, Error> {
    bounds::BORE.check("bore_mm", bore_mm)?;
    bounds::PISTON.check("land_mm", land_mm)?;
    bounds::LAND_HEIGHT.check("land_height_mm", land_height_mm)?;
    if land_mm > bore_mm {
        bounds::check_above("land_mm", bore_mm, land_mm, "the land lies within the bore")?;
    }
    Ok(Ring::evaluate([bore_mm, land_mm, land_height_mm]))
}

/// What encloses the gas at top dead centre.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Chamber {
    /// Bore, in mm.
    pub bore_mm: f64,
    /// Stroke, in mm.
    pub stroke_mm: f64,
    /// Chamber in the head, valves and plug in place, in cm3; 0 is a flat head.
    pub head_cm3: f64,
    /// Opening of the gasket, as a diameter in mm.
    pub gasket_bore_mm: f64,
    /// Gasket, compressed, in mm.
    pub gasket_mm: f64,
    /// From the deck down to the crown, in mm; negative for a protrusion.
    pub deck_clearance_mm: f64,
    /// Dish, bowl and valve pockets in the crown, in cm3; negative for a dome.
    pub crown_cm3: f64,
    /// Crevice at the top land, in cm3; 0 leaves it out, as is usual.
    pub crevice_cm3: f64,
}

/// Compression ratio and the volumes behind it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Compression {
    /// Swept volume of the cylinder, in cm3.
    pub swept_cm3: f64,
    /// Volume within the gasket, in cm3.
    pub gasket_cm3: f64,
    /// Volume between deck and crown, in cm3; negative for a protrusion.
    pub deck_cm3: f64,
    /// Everything above the piston at top dead centre, in cm3.
    pub clearance_cm3: f64,
    /// Swept and clearance volume over the clearance volume.
    pub ratio: f64,
}

/// Compression ratio.
///
/// # Errors
/// When a number is not finite or impossible, or nothing is left above the piston; the error names the field.
pub fn compression_ratio(chamber: &Chamber) -> Result<Compression, Error> {
    let Chamber { bore_mm, stroke_mm, head_cm3, gasket_bore_mm, gasket_mm, .. } = *chamber;
    let swept_cm3 = swept_volume_cm3(bore_mm, stroke_mm)?;
    bounds::HEAD_VOLUME.check("head_cm3", head_cm3)?;
    bounds::BORE.check("gasket_bore_mm", gasket_bore_mm)?;
    bounds::GASKET.check("gasket_mm", gasket_mm)?;
    // a deck at -0 is one at 0
    let deck = bounds::DECK.check("deck_clearance_mm", chamber.deck_clearance_mm)? + 0.0;
    let crown = bounds::CROWN_VOLUME.check("crown_cm3", chamber.crown_cm3)?;
    let crevice = bounds::CREVICE_VOLUME.check("crevice_cm3", chamber.crevice_cm3)?;
    let gasket_cm3 = Cylinder::evaluate([gasket_bore_mm, gasket_mm]);
    let deck_cm3 = Cylinder::evaluate([bore_mm, deck]);
    let clearance_cm3 = ClearanceVolume::evaluate([head_cm3, gasket_cm3, deck_cm3, crown, crevice]);
    // a thousandth of the swept volume is a ratio of 1001: an error of sign or unit, as below zero
    if clearance_cm3 <= swept_cm3 / 1000.0 {
        let reason = "nothing is left above the piston: the volumes contradict each other";
        return Err(Error::new(ErrorKind::Contradiction, crown.to_string(), reason).at("crown_cm3"));
    }
    let ratio = Ratio::evaluate([swept_cm3, clearance_cm3]);
    Ok(Compression { swept_cm3, gasket_cm3, deck_cm3, clearance_cm3, ratio })
}

/// A line of a table of gaskets: protrusions, and the gasket for them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GasketBand {
    /// Smallest protrusion, in mm.
    pub from_mm: f64,
    /// Largest protrusion, in mm.
    pub to_mm: f64,
    /// Gasket, compressed, in mm.
    pub thickness_mm: f64,
}

/// The gasket that a table asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GasketChoice {
    /// Place of its line in the table, from 0.
    pub band: usize,
    /// The protrusion that decided, in mm: the largest.
    pub largest_mm: f64,
    /// The gasket, in mm.
    pub thickness_mm: f64,
    /// From that crown to the head, in mm.
    pub squish_mm: f64,
}

/// Most lines of a table, and most protrusions: more is a mistake.
const MOST: usize = 1000;

/// The gasket for the largest of several protrusions, from a table.
///
/// `step_mm` is the last digit the table is printed to: lines that follow each other by no more than that leave no hole. Between what
/// two lines print, and where they share an end, the later line counts: the thicker gasket.
///
/// # Errors
/// When there is nothing to choose from, a number is not finite or impossible, lines overlap, leave a hole or do not rise in thickness,
/// or the largest protrusion lies outside the table; the error names the place: `bands/1/from_mm`.
pub fn gasket_band(
    projections_mm: &[f64],
    bands: &[GasketBand],
    step_mm: f64,
) -> Result<GasketChoice, Error> {
    filled("projections_mm", projections_mm.len())?;
    filled("bands", bands.len())?;
    bounds::PRINTED_STEP.check("step_mm", step_mm)?;
    check_table(bands, step_mm)?;
    let (place, largest) = largest(projections_mm)?;
    let lowest = bands.first().map_or(f64::NAN, |b| b.from_mm);
    let highest = bands.last().map_or(f64::NAN, |b| b.to_mm);
    if largest < lowest || largest > highest {
        let error =
            Error::new(ErrorKind::OutOfRange, largest.to_string(), "no gasket of the table is for it");
        return Err(error
            .value(largest)
            .limits(lowest, highest, "mm")
            .at(&format!("projections_mm/{place}")));
    }
    let later = |pair: &[GasketBand]| matches!(pair, [before, this] if largest >= this.from_mm || largest > before.to_mm);
    let band = bands.windows(2).filter(|pair| later(pair)).count();
    let thickness_mm = bands.get(band).map_or(f64::NAN, |b| b.thickness_mm);
    let squish_mm = SquishOverProtrusion::evaluate([thickness_mm, largest]);
    Ok(GasketChoice { band, largest_mm: largest, thickness_mm, squish_mm })
}

fn filled(field: &str, count: usize) -> Result<(), Error> {
    match count {
        0 => Err(Error::new(ErrorKind::MissingField, "", "there is none").at(field)),
        1..=MOST => Ok(()),
        _ => Err(Error::new(ErrorKind::OutOfRange, count.to_string(), "more than 1000").at(field)),
    }
}

/// The largest with its place; each must be possible.
fn largest(projections_mm: &[f64]) -> Result<(usize, f64), Error> {
    let mut best = (0, f64::NEG_INFINITY);
    for (place, value) in projections_mm.iter().enumerate() {
        let value = bounds::DECK.check(&format!("projections_mm/{place}"), *value)? + 0.0;
        if value > best.1 {
            best = (place, value);
        }
    }
    Ok(best)
}

fn check_table(bands: &[GasketBand], step_mm: f64) -> Result<(), Error> {
    for (place, band) in bands.iter().enumerate() {
        let field = |name: &str| format!("bands/{place}/{name}");
        bounds::DECK.check(&field("from_mm"), band.from_mm)?;
        bounds::DECK.check(&field("to_mm"), band.to_mm)?;
        bounds::GASKET.check(&field("thickness_mm"), band.thickness_mm)?;
        bounds::check_above(&field("to_mm"), band.to_mm, band.from_mm, "the end lies above the beginning")?;
        if let Some(before) = place.checked_sub(1).and_then(|k| bands.get(k)) {
            check_neighbours(before, band, step_mm, &field)?;
        }
    }
    Ok(())
}

fn check_neighbours(
    before: &GasketBand,
    band: &GasketBand,
    step_mm: f64,
    field: &dyn Fn(&str) -> String,
) -> Result<(), Error> {
    let contradiction = |reason: &str| {
        let error = Error::new(ErrorKind::Contradiction, band.from_mm.to_string(), reason);
        Err(error.value(band.from_mm).at(&field("from_mm")))
    };
    if band.from_mm < before.to_mm {
        return contradiction("two gaskets for one protrusion: the lines overlap");
    }
    // a nanometre is arithmetic noise of the printed digits
    if band.from_mm - before.to_mm > step_mm + 1e-9 {
        return contradiction("no gasket for some protrusions: a hole in the table");
    }
    let reason = "a larger protrusion asks for a thicker gasket";
    bounds::check_above(&field("thickness_mm"), band.thickness_mm, before.thickness_mm, reason)
}
