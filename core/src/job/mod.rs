//! The job document: reading it, and the schema of it.

pub(crate) mod decode;
pub mod document;
mod entry;

pub use decode::check_size;
pub(crate) use decode::nearest;
pub use document::Document;
pub(crate) use entry::Given;
pub use entry::{Count, Date, Entry, Kind, Numeric, Probability, Pure, Warning, Words};

use crate::calc::{Calc, Figure};
use crate::error::{Error, ErrorKind};

/// Format name of a job.
pub const FORMAT: &str = "gaugepoint-job";
/// Version of the job format.
pub const VERSION: u32 = 1;

impl Document {
    /// Reads a document from JSON text. Quantities are read when the job is assessed.
    ///
    /// # Errors
    /// When the text is not JSON, is too large or too deep, or a field is unknown, repeated, missing or of another type.
    pub fn from_json(text: &str) -> Result<Self, Error> {
        let document: Document = decode::from_json(text)?;
        if document.format.text() != FORMAT {
            return Err(document
                .format
                .refuse(ErrorKind::UnknownFormat, format!("the format is \"{FORMAT}\"")));
        }
        if document.version.count(0, u32::MAX)? != VERSION {
            return Err(document
                .version
                .refuse(ErrorKind::UnknownFormat, format!("version {VERSION} is read here")));
        }
        Ok(document)
    }

    /// [`Document::from_json`] for a host whose text is bytes.
    ///
    /// # Errors
    /// As [`Document::from_json`], and [`ErrorKind::NotUtf8`].
    pub fn from_json_bytes(bytes: &[u8]) -> Result<Self, Error> {
        Self::from_json(decode::text(bytes)?)
    }

    /// JSON Schema (draft 2020-12) of the document.
    #[must_use]
    pub fn schema() -> schemars::Schema {
        schemars::schema_for!(Document)
    }
}

impl Calc {
    /// A number read from the document.
    pub(crate) fn given(&mut self, symbol: &str, given: &Given) -> Figure {
        self.input(symbol, given.value, given.unit, &given.path, &given.text)
    }
}
