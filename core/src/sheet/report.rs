//! What was found on a sheet, as data.

use super::document::What;
use crate::choice::choices;
use crate::job::Warning;
use crate::report::written;
use core::fmt;
use schemars::JsonSchema;
use serde::Serialize;

/// Format name of the report on a sheet.
pub const REPORT_FORMAT: &str = "gaugepoint-sheet-report";
/// Version of the format of the report.
pub const REPORT_VERSION: u32 = 1;

choices! {
    /// A check of a sheet, in the order of their letters.
    Check {
        /// (a) The texts in two units say the same length or force.
        DualUnit = "dual_unit",
        /// (b) The first end of a range is not above its second.
        MinMax = "min_max",
        /// (c) The number is possible for what it is, for this bore, and beside the new part.
        OrderOfMagnitude = "order_of_magnitude",
        /// (d) Grades are equally wide and each begins where its neighbour ends.
        Ladder = "ladder",
        /// (e) oversize = standard + step.
        Oversize = "oversize",
        /// (f) clearance = outer - inner.
        Clearance = "clearance",
        /// (g) No row repeats the numbers of another quantity.
        CopiedRow = "copied_row",
        /// (h) A ratio is the same in both units and per either base.
        RatioBase = "ratio_base",
        /// (i) Celsius and Fahrenheit agree, as temperatures or as differences.
        TemperatureScale = "temperature_scale",
        /// (j) Two sources of one quantity agree.
        TwoSources = "two_sources",
        /// The text can be read.
        Readable = "readable",
    }
    /// What a contradiction is suspected to come from.
    Slip {
        /// The decimal point stands elsewhere.
        DecimalPoint = "decimal_point",
        /// One digit is another.
        Digit = "digit",
        /// Two neighbouring digits are exchanged.
        DigitsExchanged = "digits_exchanged",
        /// A digit is missing.
        DigitLeftOut = "digit_left_out",
        /// There is a digit too many.
        DigitTooMany = "digit_too_many",
        /// A degree sign was read as a digit.
        DegreeSign = "degree_sign",
        /// A decimal comma stands for the point.
        DecimalComma = "decimal_comma",
        /// The unit is another.
        Unit = "unit",
        /// The sign is the other.
        Sign = "sign",
        /// Smallest and largest are exchanged.
        MinMaxExchanged = "min_max_exchanged",
        /// A temperature difference was converted as a temperature.
        DifferenceAsTemperature = "difference_as_temperature",
        /// A temperature was converted as a temperature difference.
        TemperatureAsDifference = "temperature_as_difference",
        /// A ratio without a dimension was converted as a length.
        RatioConverted = "ratio_converted",
        /// The ratio is per another length.
        OtherBase = "other_base",
        /// The number was rounded and converted more than once.
        RoundedTwice = "rounded_twice",
        /// The two differ by an exact factor.
        ExactFactor = "exact_factor",
        /// The row is that of another entry.
        CopiedRow = "copied_row",
        /// The column changes its unit.
        MixedUnits = "mixed_units",
        /// Something else in the text.
        Text = "text",
    }
}

impl Check {
    /// The letter of the check; none for the reading of the text.
    #[must_use]
    pub const fn letter(self) -> Option<char> {
        match self {
            Check::DualUnit => Some('a'),
            Check::MinMax => Some('b'),
            Check::OrderOfMagnitude => Some('c'),
            Check::Ladder => Some('d'),
            Check::Oversize => Some('e'),
            Check::Clearance => Some('f'),
            Check::CopiedRow => Some('g'),
            Check::RatioBase => Some('h'),
            Check::TemperatureScale => Some('i'),
            Check::TwoSources => Some('j'),
            Check::Readable => None,
        }
    }
}

/// A printed number, and what it would be by the others.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct WouldBe {
    /// JSON Pointer of the text.
    pub path: String,
    /// The number in it.
    pub printed: String,
    /// What it would be by the others, to as many digits.
    pub would_be: String,
}

/// One thing that would explain a contradiction. Often there is more than one, in either text.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Suspicion {
    /// The slip.
    pub slip: Slip,
    /// JSON Pointer of the text it is suspected in.
    pub path: String,
    /// The same in words, with the number that would agree.
    pub text: String,
}

/// Entries that cannot all be right.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Contradiction {
    /// The check that found it.
    pub check: Check,
    /// Letter of the check.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub letter: Option<char>,
    /// Ids of the entries.
    pub entries: Vec<String>,
    /// JSON Pointers of the texts.
    pub paths: Vec<String>,
    /// The texts, as printed.
    pub printed: Vec<String>,
    /// What does not agree, in words.
    pub text: String,
    /// What the numbers would be by the others.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub would_be: Vec<WouldBe>,
    /// What is suspected; empty when no single slip explains it.
    pub suspected: Vec<Suspicion>,
}

/// An entry, and what it was held against.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Checked {
    /// Its id.
    pub id: String,
    /// What it is.
    pub what: What,
    /// The checks that could be made. Only `readable` means: nothing on the sheet says the same thing twice.
    pub checks: Vec<Check>,
}

/// What was found on a sheet. Nothing of the sheet is changed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct SheetReport {
    /// `gaugepoint-sheet-report`
    pub format: &'static str,
    /// Version of the format.
    pub version: u32,
    /// Version of the library.
    pub library: &'static str,
    /// Name of the sheet.
    pub sheet: String,
    /// Every entry, in the order of the sheet.
    pub entries: Vec<Checked>,
    /// What cannot all be right: entry by entry, link by link, copied rows, lost degree signs.
    pub contradictions: Vec<Contradiction>,
    /// What is possible but odd.
    pub warnings: Vec<Warning>,
}

written!(SheetReport, "sheet-report");

impl SheetReport {
    /// The contradictions that name an entry.
    pub fn of<'r>(&'r self, id: &'r str) -> impl Iterator<Item = &'r Contradiction> {
        self.contradictions.iter().filter(move |found| found.entries.iter().any(|entry| entry == id))
    }
}

impl fmt::Display for Contradiction {
    /// One line: the entries, what does not agree, what is suspected.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.entries.join(", "), self.text)?;
        for (number, suspicion) in self.suspected.iter().enumerate() {
            let before = if number == 0 { "; suspected: " } else { ", or " };
            write!(f, "{before}{}", suspicion.text)?;
        }
        Ok(())
    }
}
