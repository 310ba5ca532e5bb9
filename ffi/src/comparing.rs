//! Jobs compared: one engine at two visits, and one job with other values.

use crate::error::GaugepointError;
use crate::guard::{kept, status};
use crate::text::{bytes, give};
use core::ffi::c_char;
use gaugepoint::{revisit_json_bytes, what_if_json_bytes};

/// Compares two jobs of one engine and gives the report, both JSON: what changed of every cylinder, how fast, when limits of this job are reached
/// and what is suspicious.
///
/// `document` is a revisit document of `document_length` bytes. `report` gets the text, to be freed by gaugepoint_text_free, and `report_length` its
/// length in bytes without the NUL that ends it. Anything that is refused gives a status and no report.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_revisit(
    document: *const c_char,
    document_length: usize,
    report: *mut *mut c_char,
    report_length: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (kept("report", report), kept("report_length", report_length)), || {
            let report = revisit_json_bytes(bytes("document", document, document_length)?)?;
            Ok((give(&report)?, report.len()))
        })
    }
}

/// Assesses a job with every combination of values and gives the report, both JSON: a row for each combination with what is to be shown, what
/// becomes of the engine and of every cylinder, or why the job with these values is refused.
///
/// `document` is a what-if document of `document_length` bytes. `report` gets the text, to be freed by gaugepoint_text_free, and `report_length` its
/// length in bytes without the NUL that ends it. Anything else that is refused gives a status and no report. A thousand combinations take their
/// time.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_what_if(
    document: *const c_char,
    document_length: usize,
    report: *mut *mut c_char,
    report_length: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (kept("report", report), kept("report_length", report_length)), || {
            let report = what_if_json_bytes(bytes("document", document, document_length)?)?;
            Ok((give(&report)?, report.len()))
        })
    }
}
