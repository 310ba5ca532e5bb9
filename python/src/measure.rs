//! From a measurement document to its report, the schemas of both, and the presets of gauges.

use crate::error::{Fault, guarded};
use crate::progress::{Progress, watched};
use gaugepoint::measure::{MeasurementDocument, MeasurementReport, measure_watched};
use gaugepoint::measurement::preset;
use gaugepoint::progress::Watch;
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
/// progress : callable or None
///     Told what is done and of how much.
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
pub(crate) fn measure(
    py: Python<'_>,
    document: &[u8],
    working: bool,
    progress: Progress,
) -> PyResult<Written> {
    py.detach(|| watched(progress, |watch| written(document, Options { working }, watch)))
}

fn written(document: &[u8], options: Options, watch: Watch<'_>) -> Result<Written, Error> {
    let report = measure_watched(&MeasurementDocument::from_json_bytes(document)?, options, watch)?;
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
