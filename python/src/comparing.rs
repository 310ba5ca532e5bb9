//! Jobs compared: from a revisit or what-if document to its report, and the schemas of both.

use crate::error::{Fault, guarded};
use crate::progress::{Progress, watched};
use gaugepoint::revisit::{RevisitDocument, RevisitReport};
use gaugepoint::what_if::{WhatIfDocument, WhatIfReport, what_if_watched};
use pyo3::prelude::*;

/// A report as JSON, as text and as Markdown.
type Written = (String, String, String);

/// Compare two jobs given as JSON. Other threads run meanwhile.
///
/// Parameters
/// ----------
/// document : bytes
///     The revisit document, JSON in UTF-8.
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
pub(crate) fn revisit(py: Python<'_>, document: &[u8]) -> Result<Written, Fault> {
    py.detach(|| {
        guarded(|| {
            let report = RevisitDocument::from_json_bytes(document)?.evaluate()?;
            Ok((report.to_json(), report.to_text(), report.to_markdown()))
        })
    })
}

/// Give the JSON Schema of a revisit document.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn revisit_schema() -> &'static str {
    RevisitDocument::schema_json()
}

/// Give the JSON Schema of a report on a revisit.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn revisit_report_schema() -> &'static str {
    RevisitReport::schema_json()
}

/// Assess a job with every combination of values, given as JSON. Other threads run meanwhile.
///
/// Parameters
/// ----------
/// document : bytes
///     The what-if document, JSON in UTF-8.
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
pub(crate) fn what_if(py: Python<'_>, document: &[u8], progress: Progress) -> PyResult<Written> {
    py.detach(|| {
        watched(progress, |watch| {
            let report = what_if_watched(&WhatIfDocument::from_json_bytes(document)?, watch)?;
            Ok((report.to_json(), report.to_text(), report.to_markdown()))
        })
    })
}

/// Give the JSON Schema of a what-if document.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn what_if_schema() -> &'static str {
    WhatIfDocument::schema_json()
}

/// Give the JSON Schema of a report on a what-if.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn what_if_report_schema() -> &'static str {
    WhatIfReport::schema_json()
}
