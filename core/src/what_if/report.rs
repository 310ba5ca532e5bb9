//! The report on what if, as data.

use crate::decision::Outcome;
use crate::report::{JobName, report, written};
use schemars::JsonSchema;
use serde::Serialize;

/// Format name of the report on what if.
pub const REPORT_FORMAT: &str = "gaugepoint-what-if-report";
/// Version of the format of the report.
pub const REPORT_VERSION: u32 = 1;

report! {
    /// A job assessed with every combination of the values.
    WhatIfReport {
        /// `gaugepoint-what-if-report`
        format: &'static str,
        /// Version of the format.
        version: u32,
        /// Version of the library.
        library: &'static str,
        /// Name of the engine in the job as it is.
        engine: String,
        /// The job as named in it.
        job: JobName,
        /// JSON Pointers of the varied fields of the job, in order.
        fields: Vec<String>,
        /// JSON Pointers of what is shown of its report, in order.
        shown: Vec<String>,
        /// The job as it is.
        base: WhatIfRow,
        /// Every combination; the first varied field varies slowest.
        rows: Vec<WhatIfRow>,
    }
    /// The job with one combination of values.
    WhatIfRow {
        /// The value of every varied field, as typed; `null` where the job as it is has none.
        values: Vec<Option<String>>,
        /// What is shown, in order; `null` where the report has none.
        shown: Vec<Option<Cell>>,
        /// What becomes of the engine.
        outcome: Option<Outcome> => "Option::is_none",
        /// What becomes of every cylinder, in order of number.
        cylinders: Vec<Outcome> => "Vec::is_empty",
        /// Why the job with these values is refused.
        refused: Option<RefusedRow> => "Option::is_none",
    }
    /// A refusal of a row.
    RefusedRow {
        /// Kind of the refusal.
        kind: &'static str,
        /// JSON Pointer into the what-if document.
        field: String,
        /// What was refused.
        refused: String,
        /// Why.
        reason: String,
        /// What was probably meant.
        did_you_mean: Option<String> => "Option::is_none",
    }
}

/// What stands at a place of a report.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(untagged)]
pub enum Cell {
    /// Yes or no.
    Truth(bool),
    /// A whole number.
    Whole(u64),
    /// A number.
    Number(f64),
    /// A word.
    Word(String),
}

written!(WhatIfReport, "what-if-report");
