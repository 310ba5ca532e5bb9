//! A measurement document with its report, and the presets of its gauges.

use crate::error::GaugepointError;
use crate::guard::{kept, status};
use crate::text::{bytes, flag, give};
use core::ffi::c_char;
use gaugepoint::Options;
use gaugepoint::measure::measure_json_bytes;
use gaugepoint::measurement::preset;

/// Evaluates a measurement document and gives its report, both JSON: the readings and their differences with the budget of each, to first
/// and second order and by trials.
///
/// `document` is a measurement document of `document_length` bytes. `with_working` is 1 to have the working of every number of
/// the first order in the report, else 0. `report` gets the text, to be freed by gaugepoint_text_free, and `report_length` its
/// length in bytes without the NUL that ends it. Anything that is refused gives a status and no report.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_measure(
    document: *const c_char,
    document_length: usize,
    with_working: i32,
    report: *mut *mut c_char,
    report_length: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (kept("report", report), kept("report_length", report_length)), || {
            let document = bytes("document", document, document_length)?;
            let working = flag("with_working", with_working)?;
            let report = measure_json_bytes(document, Options { working })?;
            Ok((give(&report)?, report.len()))
        })
    }
}

/// Gives the presets of gauges as JSON: a list of rows of published tables, each with its source.
///
/// `table` gets the text, to be freed by gaugepoint_text_free, and `table_length` its length in bytes without the NUL that ends it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_presets(
    table: *mut *mut c_char,
    table_length: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (kept("table", table), kept("table_length", table_length)), || {
            let text = preset::to_json();
            Ok((give(&text)?, text.len()))
        })
    }
}
