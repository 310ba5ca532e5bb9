//! The revisit document, as it is written. `core/docs/revisit.md` explains every field.

use crate::job::document::document;
use crate::job::{Count, Duration, Entry, Nested, Words};
use schemars::JsonSchema;
use serde::Serialize;

document! {
    /// Two jobs of one engine, and the hours between them.
    RevisitDocument {
        /// `gaugepoint-revisit`
        format: Entry<Words>,
        /// Version of the format: 1.
        version: Entry<Count>,
        /// Hours the engine ran between the two jobs.
        hours: Hours,
        /// The job of the earlier visit.
        previous: Nested,
        /// The job of this visit.
        now: Nested,
    }
    /// Hours an engine ran.
    Hours {
        /// The hours.
        run: Entry<Duration>,
        /// Half-width of their error.
        permissible_error: Entry<Duration>,
    }
}
