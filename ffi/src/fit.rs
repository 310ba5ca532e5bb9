//! A hot fit as a document with its report.

use crate::error::GaugepointError;
use crate::guard::{kept, status};
use crate::text::{bytes, flag, give};
use core::ffi::c_char;
use gaugepoint::Options;
use gaugepoint::fit::fit_json_bytes;

/// Computes the hot fit of one piston in one bore and gives its report, both JSON: the clearance everywhere and at temperature, its smallest value
/// with its place and uncertainty, the margin to the reference case, first contact, and what was looked for.
///
/// `document` is a fit document of `document_length` bytes. `with_working` is 1 to have the working of every measured value in the
/// report, else 0. `report` gets the text, to be freed by gaugepoint_text_free, and `report_length` its length in bytes without
/// the NUL that ends it. Anything that is refused gives a status and no report.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_fit(
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
            let report = fit_json_bytes(document, Options { working })?;
            Ok((give(&report)?, report.len()))
        })
    }
}
