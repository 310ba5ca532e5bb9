//! From a fit document to its report, and the schemas of both.

use crate::error::{Fault, guarded};
use gaugepoint::fit::{FitDocument, FitReport};
use gaugepoint::{Error, Options};
use pyo3::prelude::*;

/// A report as JSON and as text.
type Written = (String, String);

/// Compute a hot fit given as JSON. Other threads run meanwhile.
///
/// Parameters
/// ----------
/// document : bytes
///     The fit document, JSON in UTF-8.
/// working : bool
///     Put the working of every measured value into the report.
///
/// Returns
/// -------
/// tuple of str
///     The report as JSON and as text.
///
/// Raises
/// ------
/// InputError
///     When the document or a field of it is refused.
#[pyfunction]
pub(crate) fn fit(py: Python<'_>, document: &[u8], working: bool) -> Result<Written, Fault> {
    py.detach(|| guarded(|| written(document, Options { working })))
}

fn written(document: &[u8], options: Options) -> Result<Written, Error> {
    let report = gaugepoint::fit::fit(&FitDocument::from_json_bytes(document)?, options)?;
    Ok((report.to_json(), report.to_text()))
}

/// Give the JSON Schema of a fit document.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn fit_schema() -> &'static str {
    FitDocument::schema_json()
}

/// Give the JSON Schema of a report on a hot fit.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn fit_report_schema() -> &'static str {
    FitReport::schema_json()
}
