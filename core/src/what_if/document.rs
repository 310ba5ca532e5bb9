//! The what-if document, as it is written. `core/docs/what-if.md` explains every field.

use crate::job::document::{Document, document};
use crate::job::{Count, Entry, Tree, Words};
use schemars::JsonSchema;
use serde::Serialize;

document! {
    /// A job, what to vary in it, and what to show of its report.
    WhatIfDocument {
        /// `gaugepoint-what-if`
        format: Entry<Words>,
        /// Version of the format: 1.
        version: Entry<Count>,
        /// The job as it is.
        #[schemars(with = "Document")]
        job: Tree,
        /// What is varied; the first varies slowest.
        vary: Vec<Vary>,
        /// JSON Pointers into the report of the job: the numbers and words to show.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        show: Vec<Entry<Words>>,
    }
    /// A field of the job, or several that change in step, and the values put there.
    Vary {
        /// JSON Pointer of the field.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        field: Option<Entry<Words>>,
        /// JSON Pointers of fields that change in step, in place of the one.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        fields: Vec<Entry<Words>>,
        /// The values, as the job holds them; of fields in step a list of one value for each.
        #[schemars(with = "Vec<serde_json::Value>")]
        values: Vec<Tree>,
    }
}
