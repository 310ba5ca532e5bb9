//! Temperatures of piston and bore by duty: ILLUSTRATIVE fields, for a first look before anything was measured or simulated.
//!
#![doc = include_str!("../../docs/duties.md")]

use super::field::{BoreField, PistonField};
use crate::error::{Error, ErrorKind};
use crate::job::document::Confidence;
use crate::job::nearest;
use schemars::JsonSchema;
use serde::Serialize;

/// Temperatures of a piston at a share of its height.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct PistonRow {
    /// 0 at the bottom edge of the skirt, 1 at its top, 2 at the crown.
    pub at: f64,
    /// On the thrust axis, in C.
    pub thrust_c: f64,
    /// On the pin axis, in C.
    pub pin_c: f64,
}

/// Temperature of the wall at a share of its depth.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct BoreRow {
    /// 0 at the deck, 1 at the lowest place the skirt comes to.
    pub at: f64,
    /// Mean of the wall, in C.
    pub wall_c: f64,
}

/// Illustrative temperatures of one duty.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Duty {
    /// Name, as a document refers to it.
    pub name: &'static str,
    /// Of the piston, upward.
    pub piston: &'static [PistonRow],
    /// Of the bore, downward.
    pub bore: &'static [BoreRow],
    /// Half-width of the error of all of them, in K.
    pub permissible_error_k: f64,
    /// Where the row comes from.
    pub source: &'static str,
    /// How far it can be trusted.
    pub confidence: Confidence,
}

/// Half-width of the error of every temperature here, in K: about half the width of the bands they are the middles of.
const HALF_WIDTH_K: f64 = 25.0;

const PLAIN: &str =
    "illustrative, never measured on this engine: middles of guide bands for full load, from memory";
const DIESEL: &str = "illustrative, never measured on this engine: middles of guide bands for full load, from memory; the crown halfway from the top groove to the bowl rim";
const TWO_STROKE: &str = "illustrative, never measured on this engine: middles of guide bands for full load, from memory; wall of a bore that water cools";

/// A bore that water cools: 140 to 190, 100 to 130, 85 to 110.
const WATER: &[BoreRow] = &[
    BoreRow { at: 0.0, wall_c: 165.0 },
    BoreRow { at: 0.5, wall_c: 115.0 },
    BoreRow { at: 1.0, wall_c: 97.5 },
];
/// A bore that air cools: 40 K more.
const AIR: &[BoreRow] = &[
    BoreRow { at: 0.0, wall_c: 205.0 },
    BoreRow { at: 0.5, wall_c: 155.0 },
    BoreRow { at: 1.0, wall_c: 137.5 },
];

/// One duty: name, wall, source, and of the piston place, thrust axis, pin axis.
macro_rules! duties {
    ($($name:literal, $bore:ident, $source:ident, [$($at:literal: $thrust:literal $pin:literal),+];)+) => {
        /// Every duty.
        pub const ALL: &[Duty] = &[$(Duty {
            name: $name,
            piston: &[$(PistonRow { at: $at, thrust_c: $thrust, pin_c: $pin }),+],
            bore: $bore,
            permissible_error_k: HALF_WIDTH_K,
            source: $source,
            confidence: Confidence::Unverified,
        },)+];
    };
}

duties! {
    "petrol, naturally aspirated", WATER, PLAIN,
        [0.0: 105.0 120.0, 1.0: 137.5 152.5, 1.35: 165.0 172.5, 1.75: 200.0 200.0, 2.0: 240.0 240.0];
    "petrol, turbocharged, oil jet", WATER, PLAIN,
        [0.0: 110.0 125.0, 1.0: 147.5 162.5, 1.35: 172.5 180.0, 1.75: 215.0 215.0, 2.0: 265.0 265.0];
    "light diesel, aluminium, gallery", WATER, DIESEL,
        [0.0: 110.0 125.0, 1.0: 142.5 157.5, 1.35: 175.0 182.5, 1.75: 225.0 225.0, 2.0: 287.5 287.5];
    "heavy diesel, aluminium", WATER, DIESEL,
        [0.0: 105.0 120.0, 1.0: 135.0 150.0, 1.35: 167.5 175.0, 1.75: 220.0 220.0, 2.0: 282.5 282.5];
    "heavy diesel, steel", WATER, DIESEL,
        [0.0: 100.0 115.0, 1.0: 125.0 140.0, 1.35: 160.0 167.5, 1.75: 230.0 230.0, 2.0: 340.0 340.0];
    "petrol, air-cooled", AIR, PLAIN,
        [0.0: 135.0 150.0, 1.0: 167.5 182.5, 1.35: 190.0 197.5, 1.75: 230.0 230.0, 2.0: 265.0 265.0];
    "petrol, two-stroke", WATER, TWO_STROKE,
        [0.0: 150.0 165.0, 1.0: 170.0 185.0, 1.75: 230.0 230.0, 2.0: 275.0 275.0];
}

/// The duty of a name.
///
/// # Errors
/// [`ErrorKind::UnknownName`], with the nearest name where one is near; the field is `name`.
///
/// ```
/// use gaugepoint::growth::duty;
///
/// let field = duty::named("petrol, naturally aspirated")?.piston_field((0.0, 40.0), 60.0)?;
/// assert_eq!((field.thrust_c.at(0.0)?, field.thrust_c.at(40.0)?, field.pin_c.at(60.0)?), (105.0, 137.5, 240.0));
/// # Ok::<(), gaugepoint::Error>(())
/// ```
pub fn named(name: &str) -> Result<&'static Duty, Error> {
    ALL.iter().find(|row| row.name == name).ok_or_else(|| {
        let known: Vec<&str> = ALL.iter().map(|row| row.name).collect();
        let reason = format!("no illustrative duty has this name; known: {}", known.join("; "));
        Error::new(ErrorKind::UnknownName, name, reason).suggest(nearest(name, &known)).at("name")
    })
}

/// The table as JSON: a list of its rows.
#[must_use]
pub fn to_json() -> String {
    // numbers and texts: nothing in it can fail to be written
    serde_json::to_string(ALL).unwrap_or_default()
}

impl Duty {
    /// The temperatures of a piston whose skirt lies between two heights, with its crown above. A skirt up to the crown has no rows above it.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfOrder`] when the heights do not rise, [`ErrorKind::NotFinite`].
    pub fn piston_field(&self, skirt_mm: (f64, f64), crown_mm: f64) -> Result<PistonField, Error> {
        let (bottom, top) = skirt_mm;
        let rows = self.piston.iter().filter(|row| row.at <= 1.0 || crown_mm > top);
        let height = |at: f64| match at <= 1.0 {
            true => bottom + (top - bottom) * at,
            false => top + (crown_mm - top) * (at - 1.0),
        };
        let heights: Vec<f64> = rows.clone().map(|row| height(row.at)).collect();
        let thrust: Vec<f64> = rows.clone().map(|row| row.thrust_c).collect();
        let pin: Vec<f64> = rows.map(|row| row.pin_c).collect();
        PistonField::through(&heights, &thrust, &pin)
    }

    /// The temperatures of a bore, the lowest place of which that the skirt comes to is at a depth.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfOrder`] when it is not below the deck, [`ErrorKind::NotFinite`].
    pub fn bore_field(&self, lowest_mm: f64) -> Result<BoreField, Error> {
        let depths: Vec<f64> = self.bore.iter().map(|row| row.at * lowest_mm).collect();
        let wall: Vec<f64> = self.bore.iter().map(|row| row.wall_c).collect();
        BoreField::through(&depths, &wall)
    }

    /// The row in words, as a report tells it.
    pub(crate) fn words(&self) -> String {
        format!(
            "illustrative preset \"{}\", within {} K; {}; {}",
            self.name,
            self.permissible_error_k,
            self.source,
            self.confidence.word()
        )
    }
}
