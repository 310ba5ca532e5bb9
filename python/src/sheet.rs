//! From a printed sheet to its report, and the schemas of both.

use crate::error::{Fault, guarded};
use gaugepoint::sheet::{SheetDocument, SheetReport, check_json_bytes};
use pyo3::prelude::*;

/// Hold the limits of a printed sheet against themselves. Other threads run meanwhile.
///
/// Parameters
/// ----------
/// sheet : bytes
///     The sheet document, JSON in UTF-8.
///
/// Returns
/// -------
/// str
///     The report as JSON.
///
/// Raises
/// ------
/// InputError
///     When the document or a field of it is refused.
#[pyfunction]
pub(crate) fn check_sheet(py: Python<'_>, sheet: &[u8]) -> Result<String, Fault> {
    py.detach(|| guarded(|| check_json_bytes(sheet)))
}

/// Give the JSON Schema of a sheet document.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn sheet_schema() -> &'static str {
    SheetDocument::schema_json()
}

/// Give the JSON Schema of the report on a sheet.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn sheet_report_schema() -> &'static str {
    SheetReport::schema_json()
}
