//! From a job document to its report, and the schemas of both.

use crate::error::Fault;
use crate::progress::{Progress, watched};
use gaugepoint::progress::Watch;
use gaugepoint::{Document, Error, Options, Report, assess_watched};
use pyo3::prelude::*;
use serde::Serialize;

/// A report as JSON, as text and as Markdown.
type Written = (String, String, String);

/// Assess a job given as JSON. Other threads run meanwhile.
///
/// Parameters
/// ----------
/// job : bytes
///     The job document, JSON in UTF-8.
/// working : bool
///     Put the working of every number into the report.
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
pub(crate) fn assess(py: Python<'_>, job: &[u8], working: bool, progress: Progress) -> PyResult<Written> {
    py.detach(|| watched(progress, |watch| written(job, Options { working }, watch)))
}

fn written(job: &[u8], options: Options, watch: Watch<'_>) -> Result<Written, Error> {
    let report = assess_watched(&Document::from_json_bytes(job)?, options, watch)?;
    Ok((report.to_json(), report.to_text(), report.to_markdown()))
}

/// Give the JSON Schema of a job document.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn job_schema() -> &'static str {
    Document::schema_json()
}

/// Give the JSON Schema of a report.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn report_schema() -> &'static str {
    Report::schema_json()
}

/// Data of the core as JSON.
pub(crate) fn json(data: &impl Serialize) -> Result<String, Fault> {
    // finite numbers, texts and lists can always be written: a failure would be ours
    serde_json::to_string(data).map_err(|_| Fault::Panic)
}
