//! A stack as a document with its report.

use crate::error::GaugepointError;
use crate::guard::{kept, status};
use crate::text::{bytes, flag, give};
use core::ffi::c_char;
use gaugepoint::Options;
use gaugepoint::stack::stack_json_bytes;

/// Evaluates a stack of contributors and gives its report, both JSON: worst case, published forms, moments, shares, exact probabilities outside
/// the limits of a linear stack, trials, and what was asked for to be drawn.
///
/// `document` is a stack document of `document_length` bytes. `with_working` is 1 to have the working of every number that has a formula in the
/// report, else 0. `report` gets the text, to be freed by gaugepoint_text_free, and `report_length` its length in bytes without
/// the NUL that ends it. Anything that is refused gives a status and no report. Trials take their time.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_evaluate(
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
            let report = stack_json_bytes(document, Options { working })?;
            Ok((give(&report)?, report.len()))
        })
    }
}
