//! From a stack document to its report, and the schemas of both.

use crate::progress::{Progress, watched};
use gaugepoint::progress::Watch;
use gaugepoint::stack::{StackDocument, StackReport};
use gaugepoint::{Error, Options};
use pyo3::prelude::*;

/// A report as JSON, as text and as Markdown.
type Written = (String, String, String);

/// Evaluate a stack given as JSON. Other threads run meanwhile.
///
/// Parameters
/// ----------
/// document : bytes
///     The stack document, JSON in UTF-8.
/// working : bool
///     Put the working of every number that has a formula into the report.
/// progress : callable or None
///     Told what is done and of how much.
///
/// Returns
/// -------
/// tuple of str
///     The report as JSON, as text and as Markdown.
///
/// Raises
/// ------
/// InputError
///     When the document or a field of it is refused.
#[pyfunction]
pub(crate) fn evaluate_stack(
    py: Python<'_>,
    document: &[u8],
    working: bool,
    progress: Progress,
) -> PyResult<Written> {
    py.detach(|| watched(progress, |watch| written(document, Options { working }, watch)))
}

fn written(document: &[u8], options: Options, watch: Watch<'_>) -> Result<Written, Error> {
    let report = StackDocument::from_json_bytes(document)?.evaluate_watched(options, watch)?;
    Ok((report.to_json(), report.to_text(), report.to_markdown()))
}

/// Give the JSON Schema of a stack document.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn stack_schema() -> &'static str {
    StackDocument::schema_json()
}

/// Give the JSON Schema of a report on a stack.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn stack_report_schema() -> &'static str {
    StackReport::schema_json()
}
