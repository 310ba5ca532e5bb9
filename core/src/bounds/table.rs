//! The table of plausible values, row by row, and the judging of one value by it.

use super::{
    BARREL, BORE, Bound, CLEARANCE, COATING, EXPANSION, FORM_FOUND, MICROMETER_ERROR, OVALITY, PISTON,
    REPEATABILITY, SHOP_TEMPERATURE, SKIRT_TEMPERATURE, SPREAD, Verdict,
};
use crate::error::{Error, ErrorKind};
use crate::job::unknown_choice;

/// One row of the table. Several rows may have one name: a value is held against all of them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Row {
    /// Name of the quantity.
    pub name: &'static str,
    /// The ranges, their unit and their reason; of a relative row as multiples of the diameter it refers to, and the unit is that of the
    /// value.
    pub bound: Bound,
    /// What the ranges are multiples of: `bore` or `pin`; none when they stand in the unit themselves.
    pub of: Option<&'static str>,
    /// What usually happened when a value is impossible.
    pub slips: &'static str,
}

const fn range(
    label: &'static str,
    unit: &'static str,
    possible: (f64, f64),
    usual: (f64, f64),
    reason: &'static str,
) -> Bound {
    Bound { label, unit, possible, usual, reason }
}

macro_rules! rows {
    ($($name:literal $(of $of:literal)? = $bound:expr, $slips:literal;)+) => {
        /// Every row, in the order of the work. The ranges are common practice with a margin, and no maker's data.
        pub const TABLE: &[Row] = &[$(Row { name: $name, bound: $bound, of: rows!(@of $($of)?), slips: $slips },)+];
    };
    (@of) => { None };
    (@of $of:literal) => { Some($of) };
}

rows! {
    "bore" = BORE, "inches entered as mm; micrometres or thou entered as mm";
    "stroke" of "bore" = range("stroke", "mm", (0.2, 6.0), (0.5, 2.0), "0.5 to 2 bores; marine engines to 4.5"),
        "inches and mm mixed; half a stroke: the crank radius";
    "piston" = PISTON, "inches entered as mm";
    "piston" of "bore" = range("piston diameter", "mm", (0.98, 1.002), (0.9975, 1.0005),
        "2.5 per mille below the bore to 0.5 per mille above it over a coating"),
        "another oversize; measured at the crown or a land";
    "clearance" = CLEARANCE, "mm and inches mixed; half or double";
    "clearance" of "bore" = range("clearance", "mm", (-0.002, 0.005), (0.0001, 0.002),
        "0.1 to 2 per mille of the bore; above 5 per mille another oversize or another height"),
        "piston and bore of different oversizes: 0.25 mm or 0.5 mm too much; measured at a land; half or double";
    "taper" = FORM_FOUND, "readings of two bores; the setting moved";
    "out_of_round" = FORM_FOUND, "readings of two bores; the setting moved";
    "wear" = range("total wear of a bore", "mm", (0.0, 22.0), (0.0, 0.5), "0.5 mm; 0.8 % of the bore in large engines"),
        "already bored oversize";
    "wear" of "bore" = range("total wear of a bore", "mm", (0.0, 0.02), (0.0, 0.008), "0.8 % of the bore; above 2 % another oversize"),
        "already bored oversize";
    "repeats" = SPREAD, "another place; a thimble read one turn off";
    "ovality" = OVALITY, "the axes exchanged, when it is negative";
    "ovality" of "bore" = range("ovality", "mm", (-0.02, 0.02), (-0.0001, 0.01), "up to 1 % of the diameter"),
        "the axes exchanged, when it is negative";
    "barrel_slope" = BARREL, "a height in another unit; a reading at a land";
    "coating" = COATING, "the total of both sides; micrometres and mm mixed";
    "oversize" = range("oversize", "mm", (0.0, 5.0), (0.1, 1.53), "steps of 0.25 mm to 1.5 mm or of 0.010 in to 0.060 in; also 0.10, 0.20, 0.40 mm"),
        "thousandths of an inch entered as mm: 10, 20, 30, 40";
    "hone_stock" = range("hone stock on the diameter", "mm", (0.0, 0.5), (0.01, 0.12), "0.01 mm to 0.12 mm on the diameter"),
        "micrometres entered as mm; a bore that is still to be bored";
    "measuring_temperature" = SHOP_TEMPERATURE, "Fahrenheit entered as Celsius";
    "skirt_temperature" = SKIRT_TEMPERATURE, "Fahrenheit entered as Celsius; the temperature of the crown";
    "crown_temperature" = range("temperature of a crown", "C", (-40.0, 550.0), (220.0, 400.0),
        "aluminium to 450 C, steel to 550 C; unverified"), "Fahrenheit entered as Celsius";
    "coolant_temperature" = range("temperature of the coolant", "C", (-40.0, 140.0), (60.0, 115.0), "a thermostat opens at 70 C to 95 C"),
        "Fahrenheit entered as Celsius";
    "expansion" = EXPANSION, "the factor 1e-6 left out; per degree Fahrenheit";
    "ring_gap" of "bore" = range("ring gap", "mm", (0.0005, 0.015), (0.002, 0.009), "2 to 9 per mille of the bore"),
        "the rail of an oil ring, whose gap is 15 per mille; a gap filed twice";
    "ring_side_clearance" = range("ring side clearance", "mm", (0.0085, 0.5), (0.02, 0.20), "0.02 mm to 0.20 mm"),
        "inches entered as mm: 0.001 to 0.008";
    "ring_width" = range("axial width of a ring", "mm", (0.3, 30.0), (0.7, 5.0), "0.7 mm to 5 mm; large engines to 20 mm"), "inches entered as mm";
    "pin_diameter" = range("pin diameter", "mm", (5.0, 300.0), (8.0, 100.0), "ISO 18669 pins: 8 mm to 100 mm; large engines to 200 mm"),
        "inches entered as mm";
    "pin_diameter" of "bore" = range("pin diameter", "mm", (0.1, 0.8), (0.18, 0.45), "0.18 to 0.45 of the bore"), "inches and mm mixed";
    "pin_boss_clearance" = range("pin-boss clearance", "mm", (-0.01, 0.2), (0.0, 0.03), "a floating pin; tight when the piston is cold"),
        "inches and mm mixed";
    "press_fit" = range("interference of a pressed pin", "mm", (0.0, 0.15), (0.01, 0.06), "0.01 mm to 0.06 mm"), "inches and mm mixed; half or double";
    "press_fit" of "pin" = range("interference of a pressed pin", "mm", (0.0, 0.01), (0.0004, 0.002), "0.4 to 2 per mille of the pin"),
        "inches and mm mixed; half or double";
    "rod_heat" = range("temperature of a heated rod", "C", (20.0, 400.0), (150.0, 320.0), "above 320 C the temper of a rod suffers"),
        "Fahrenheit entered as Celsius: 450 to 600";
    "bend_twist" = range("bend or twist of a rod", "mrad", (0.0, 10.0), (0.0, 1.5), "0.15 mm in 100 mm"), "in 25 mm and in 100 mm mixed";
    "sleeve_interference" = range("interference of a sleeve", "mm", (0.0, 0.3), (0.01, 0.13), "0.01 mm to 0.13 mm; a slip fit must be declared"),
        "a slip fit, when it is negative; half or double";
    "sleeve_interference" of "bore" = range("interference of a sleeve", "mm", (0.0, 0.005), (0.0002, 0.0015), "0.2 to 1.5 per mille"),
        "half or double";
    "liner_protrusion" = range("protrusion of a liner", "mm", (0.0, 1.0), (0.0, 0.20), "to 0.20 mm; negative is a seat that is worn"),
        "a seat that is worn; a deck that was planed";
    "protrusion_difference" = range("difference of neighbouring liners", "mm", (0.0, 1.0), (0.0, 0.05), "neighbours within 0.05 mm"),
        "dirt below a flange";
    "wall_after_bore" = range("wall left after boring", "mm", (1.5, 50.0), (2.5, 8.0), "2.5 mm to 8 mm of grey iron"), "inches entered as mm";
    "deck_height" = range("deck height, with its sign", "mm", (-3.0, 3.0), (-1.0, 1.0), "within 1 mm of the deck either way"), "inches and mm mixed";
    "squish" = range("squish", "mm", (0.3, 5.0), (0.7, 1.5), "0.7 mm to 1.5 mm"), "inches entered as mm: 0.035";
    "gasket" = range("thickness of a gasket, compressed", "mm", (0.1, 6.0), (0.3, 2.0), "0.3 mm to 2 mm"), "inches entered as mm";
    "compression_ratio_petrol" = range("compression ratio", "1", (2.0, 40.0), (6.0, 13.0), "6 to 13 in petrol engines"), "a pressure";
    "compression_ratio_diesel" = range("compression ratio", "1", (2.0, 40.0), (13.0, 24.0), "13 to 24 in diesel engines"), "a pressure";
    "micrometer_error" = MICROMETER_ERROR, "micrometres entered as mm";
    "repeatability" = REPEATABILITY, "micrometres entered as mm";
}

impl Row {
    /// The ranges for a diameter that a relative row refers to; the row's own when it is not relative.
    #[must_use]
    pub fn for_diameter(&self, diameter_mm: f64) -> Bound {
        let scale = if self.of.is_some() { diameter_mm } else { 1.0 };
        let scaled = |(lower, upper): (f64, f64)| (lower * scale, upper * scale);
        Bound { possible: scaled(self.bound.possible), usual: scaled(self.bound.usual), ..self.bound }
    }
}

/// What all rows of a quantity take, for a bore. The doors of a job use it.
pub(crate) fn in_bore(bound: &Bound, bore_mm: f64) -> Bound {
    let rows = TABLE.iter().filter(|row| row.bound.label == bound.label && row.of.is_some());
    rows.fold(*bound, |all, row| all.and(&row.for_diameter(bore_mm)))
}

/// Holds one value, in the unit of its rows, against the table.
///
/// `diameter_mm` is what the relative rows of the quantity refer to (the bore; the pin for a pressed pin). Without it only the other rows are
/// used; a quantity that has relative rows only needs it. Gives [`Verdict::Usual`] or [`Verdict::Odd`]: what is impossible is an error.
///
/// # Errors
/// [`ErrorKind::OutOfRange`] when the value is impossible, with the range and, where a slip explains the value, what was probably meant;
/// [`ErrorKind::NotFinite`]; [`ErrorKind::UnknownChoice`] when there is no such row; [`ErrorKind::MissingField`] when the diameter is needed.
///
/// ```
/// use gaugepoint::bounds::{Verdict, judge};
/// assert_eq!(judge("clearance", 0.04, Some(86.0))?, Verdict::Usual);
/// assert_eq!(judge("clearance", 0.21, Some(86.0))?, Verdict::Odd); // 2.4 per mille
/// assert_eq!(judge("bore", 3.386, None).unwrap_err().did_you_mean(), Some("86.004 mm (inches entered as mm)"));
/// # Ok::<(), gaugepoint::Error>(())
/// ```
pub fn judge(name: &str, value: f64, diameter_mm: Option<f64>) -> Result<Verdict, Error> {
    let rows: Vec<&Row> = TABLE.iter().filter(|row| row.name == name).collect();
    if rows.is_empty() {
        let mut names: Vec<&str> = TABLE.iter().map(|row| row.name).collect();
        names.dedup();
        return Err(unknown_choice(name, &names).at("name"));
    }
    let diameter = diameter_mm.map(|d| DIAMETER.check("diameter_mm", d)).transpose()?;
    if diameter.is_none() && rows.iter().all(|row| row.of.is_some()) {
        let reason = "the range is relative: the diameter that it refers to is needed";
        return Err(Error::new(ErrorKind::MissingField, "diameter_mm", reason).at("diameter_mm"));
    }
    let mut verdict = Verdict::Usual;
    for row in rows {
        let bound = match (row.of, diameter) {
            (None, _) => row.bound,
            (Some(_), Some(diameter)) => row.for_diameter(diameter),
            (Some(_), None) => continue,
        };
        bound.check("value", value)?;
        if bound.judge(value) == Verdict::Odd {
            verdict = Verdict::Odd;
        }
    }
    Ok(verdict)
}

/// What a relative row may refer to.
const DIAMETER: Bound = range(
    "diameter of the bore or pin",
    "mm",
    (5.0, 1100.0),
    (8.0, 200.0),
    "pins from 5 mm, bores to 1100 mm",
);
