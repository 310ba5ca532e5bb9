//! Which gasket: the largest protrusion chooses it, and how near that is to an edge of its band.
//!
#![doc = include_str!("../../docs/gasket.md")]

use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::Error;
use crate::shape::deck::{GasketBand, SquishOverProtrusion, gasket_band};
use crate::shape::extremes;
use crate::special::normal_cdf;

formula! {
    /// Protrusion of a piston from two points in line with its pin.
    MeanProtrusion: protrusion ["mm"] = (first, second) => (first + second) / 2.0; source "printed procedure of makers";
}

/// The gasket for an engine.
#[derive(Debug, Clone, PartialEq)]
pub struct GasketGrade {
    /// Protrusion of every piston, in mm.
    pub protrusions_mm: Vec<f64>,
    /// Place of the piston that decided, the first of equal ones.
    pub largest_piston: usize,
    /// Its protrusion, in mm.
    pub largest_mm: f64,
    /// Largest less smallest protrusion, in mm.
    pub spread_mm: f64,
    /// Is the spread within its limit? None without a limit.
    pub spread_is_met: Option<bool>,
    /// Place of the line of the table.
    pub band: usize,
    /// The gasket, compressed, in mm.
    pub thickness_mm: f64,
    /// From the crown to the head, in mm, for every piston.
    pub squish_mm: Vec<f64>,
    /// Probability that the true largest protrusion lies below the band; none without an uncertainty.
    pub probability_below: Option<f64>,
    /// Probability that it lies above the band.
    pub probability_above: Option<f64>,
}

/// Spreads nearer to their limit than this are at it, in mm: rounding of the arithmetic.
const NOISE_MM: f64 = 1e-9;

/// The gasket for the largest protrusion of an engine; two readings for each piston, in mm above the deck.
///
/// `step_mm` is the last digit the table is printed to, `largest_spread_mm` the most that protrusions may differ by, `standard_uncertainty_mm` that
/// of one protrusion. With an uncertainty of 0 the protrusions are exact.
///
/// # Errors
/// As [`gasket_band`], for the protrusions (`projections_mm/3`) and for their readings (`projections_mm/3/1`), and when a limit or the uncertainty
/// is impossible.
pub fn gasket_grade(
    projections_mm: &[[f64; 2]],
    bands: &[GasketBand],
    step_mm: f64,
    largest_spread_mm: Option<f64>,
    standard_uncertainty_mm: Option<f64>,
) -> Result<GasketGrade, Error> {
    for (k, readings) in projections_mm.iter().enumerate() {
        for (j, reading) in readings.iter().enumerate() {
            bounds::DECK.check(&format!("projections_mm/{k}/{j}"), *reading)?;
        }
    }
    largest_spread_mm.map(|s| bounds::PROTRUSION_SPREAD.check("largest_spread_mm", s)).transpose()?;
    let uncertainty = |u| bounds::PROTRUSION_UNCERTAINTY.check("standard_uncertainty_mm", u);
    let u = standard_uncertainty_mm.map(uncertainty).transpose()?;
    // a protrusion of -0 is one of 0
    let protrusions_mm: Vec<f64> =
        projections_mm.iter().map(|r| MeanProtrusion::evaluate(*r) + 0.0).collect();
    let choice = gasket_band(&protrusions_mm, bands, step_mm)?;
    let (smallest, largest_mm) = extremes(&protrusions_mm);
    let spread_mm = largest_mm - smallest;
    let (lower, upper) = edges(bands, choice.band);
    let squish = |p: &f64| SquishOverProtrusion::evaluate([choice.thickness_mm, *p]);
    Ok(GasketGrade {
        largest_piston: protrusions_mm.iter().position(|p| *p >= largest_mm).unwrap_or_default(),
        largest_mm,
        spread_mm,
        spread_is_met: largest_spread_mm.map(|limit| spread_mm <= limit + NOISE_MM),
        band: choice.band,
        thickness_mm: choice.thickness_mm,
        squish_mm: protrusions_mm.iter().map(squish).collect(),
        probability_below: u.map(|u| largest_below(&protrusions_mm, lower, u)),
        probability_above: u.map(|u| largest_above(&protrusions_mm, upper, u)),
        protrusions_mm,
    })
}

/// Where a line of the table begins and ends: what lies between two lines belongs to the later one.
fn edges(bands: &[GasketBand], place: usize) -> (f64, f64) {
    let end = |band: &GasketBand| band.to_mm;
    let before = place.checked_sub(1).and_then(|k| bands.get(k)).map(end);
    let first = bands.first().map(|band| band.from_mm);
    (before.or(first).unwrap_or(f64::NAN), bands.get(place).map_or(f64::NAN, end))
}

/// Probability that a normal variable lies above a limit. A value at its limit without an uncertainty does not.
fn above(value: f64, limit: f64, u: f64) -> f64 {
    const FAR: f64 = 37.0;
    match value - limit {
        // the quotient stays within a double
        over if over.abs() >= FAR * u => {
            if over > NOISE_MM {
                1.0
            } else {
                0.0
            }
        }
        over => normal_cdf(over / u),
    }
}

/// Probability that the largest of independent normal variables lies below a limit.
fn largest_below(values: &[f64], limit: f64, u: f64) -> f64 {
    values.iter().fold(1.0, |all, value| all * above(-value, -limit, u))
}

/// The same above a limit, with all digits where it is small.
fn largest_above(values: &[f64], limit: f64, u: f64) -> f64 {
    values.iter().fold(0.0, |any, value| any + (1.0 - any) * above(*value, limit, u))
}
