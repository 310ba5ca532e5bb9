//! The job document: reading it, and the schema of it.

pub(crate) mod decode;
pub mod document;
mod entry;
pub mod plan;

pub use decode::check_size;
pub(crate) use decode::{nearest, unknown_choice};
pub use document::Document;
pub use entry::{
    Count, Date, Duration, Entry, Force, Kind, Mass, Nested, Numeric, Probability, Pure, Real, Roughness,
    Slope, Stiffness, Tree, Volume, Warning, Words,
};
pub(crate) use entry::{Given, MOST_ENTRIES, check_length};

use crate::calc::{Calc, Figure};
use schemars::generate::SchemaSettings;
use schemars::transform::RecursiveTransform;
use serde_json::Value;

/// Format name of a job.
pub const FORMAT: &str = "gaugepoint-job";
/// Version of the job format.
pub const VERSION: u32 = 1;

/// How a document is read, and the schema of it.
macro_rules! readable {
    ($name:ident, $format:expr, $version:expr, $file:literal) => {
        $crate::job::schema!($name, $crate::job::document_schema, $file);

        impl $name {
            /// Reads a document from JSON text. Its quantities are read when it is computed with.
            ///
            /// # Errors
            /// When the text is not JSON, is too large or too deep, of another format or version, or a field is unknown, repeated,
            /// missing or of another type.
            pub fn from_json(text: &str) -> Result<Self, $crate::Error> {
                let document: $name = $crate::job::decode::from_json(text, $format, $version)?;
                document.version.count($version, $version)?;
                Ok(document)
            }

            /// [`Self::from_json`] for a host whose text is bytes.
            ///
            /// # Errors
            /// As [`Self::from_json`], and [`NotUtf8`](crate::ErrorKind::NotUtf8).
            pub fn from_json_bytes(bytes: &[u8]) -> Result<Self, $crate::Error> {
                Self::from_json($crate::job::decode::text(bytes)?)
            }
        }
    };
}
pub(crate) use readable;

/// The schema of a document or report, as it is made and as it is kept in the documentation.
macro_rules! schema {
    ($name:ident, $make:path, $file:literal) => {
        impl $name {
            /// JSON Schema (draft 2020-12) of it, made from the structures.
            #[must_use]
            pub fn schema() -> schemars::Schema {
                use $make as make;
                make::<$name>()
            }

            /// The same as text, from the documentation: for a host that needs no other way to it.
            #[must_use]
            pub const fn schema_json() -> &'static str {
                include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/docs/", $file, ".schema.json"))
            }
        }
    };
}
pub(crate) use schema;

readable!(Document, FORMAT, VERSION, "job");

/// The schema of a document.
pub(crate) fn document_schema<T: schemars::JsonSchema>() -> schemars::Schema {
    schema_of::<T>(SchemaSettings::draft2020_12())
}

/// The schema of a report: of what is written, so that a list that is left out when empty is not required.
pub(crate) fn report_schema<T: schemars::JsonSchema>() -> schemars::Schema {
    schema_of::<T>(SchemaSettings::draft2020_12().for_serialize())
}

fn schema_of<T: schemars::JsonSchema>(settings: SchemaSettings) -> schemars::Schema {
    let settings = settings.with_transform(RecursiveTransform(without_null));
    settings.into_generator().into_root_schema_for::<T>()
}

/// An optional field is left out, never `null`, but the derived schema of an option allows it; in a list an entry can be `null`.
fn without_null(schema: &mut schemars::Schema) {
    let fields = schema.get_mut("properties").and_then(Value::as_object_mut);
    for field in fields.into_iter().flat_map(|fields| fields.values_mut()) {
        if let Some(types) = field.get_mut("type").and_then(Value::as_array_mut) {
            types.retain(|t| t != "null");
        }
        if let Some(either) = field.get_mut("anyOf").and_then(Value::as_array_mut) {
            either.retain(|s| s.get("type").is_none_or(|t| t != "null"));
        }
    }
}

impl Calc {
    /// A number read from the document.
    pub(crate) fn given(&mut self, symbol: &str, given: &Given) -> Figure {
        self.input(symbol, given.value, given.unit, &given.path, &given.text)
    }
}
