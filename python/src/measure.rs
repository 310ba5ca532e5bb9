//! From a measurement document to its report, the schemas of both, and the presets of gauges.

use crate::error::{Fault, guarded};
use gaugepoint::measure::{MeasurementDocument, MeasurementReport};
use gaugepoint::measurement::preset;
use gaugepoint::{Error, Options};
use pyo3::prelude::*;

/// A report as JSON and as text.
type Written = (String, String);

/// Evaluate a measurement given as JSON. Other threads run meanwhile.
///
/// Parameters
/// ----------
/// document : bytes
///     The measurement document, JSON in UTF-8.
/// working : bool
///     Put the working of every number of the first order into the report.
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
pub(crate) fn measure(py: Python<'_>, document: &[u8], working: bool) -> Result<Written, Fault> {
    py.detach(|| guarded(|| written(document, Options { working })))
}

fn written(document: &[u8], options: Options) -> Result<Written, Error> {
    let report = gaugepoint::measure::measure(&MeasurementDocument::from_json_bytes(document)?, options)?;
    Ok((report.to_json(), report.to_text()))
}

/// Give the presets of gauges as JSON.
///
/// Returns
/// -------
/// str
///     A list of rows of published tables, as JSON.
#[pyfunction]
pub(crate) fn presets() -> Result<String, Fault> {
    guarded(|| Ok(preset::to_json()))
}

/// Give the JSON Schema of a measurement document.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn measurement_schema() -> &'static str {
    MeasurementDocument::schema_json()
}

/// Give the JSON Schema of a report on a measurement.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn measurement_report_schema() -> &'static str {
    MeasurementReport::schema_json()
}
