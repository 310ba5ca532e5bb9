//! A printed sheet, from document to report.

use crate::error::GaugepointError;
use crate::guard::{kept, status};
use crate::text::{bytes, give};
use core::ffi::c_char;
use gaugepoint::sheet::check_json_bytes;

/// Holds the limits of a printed sheet against themselves and gives the report, both JSON.
///
/// `sheet` is a sheet document of `sheet_length` bytes. `report` gets the text, to be freed by gaugepoint_text_free, and
/// `report_length` its length in bytes without the NUL that ends it. A printed text that contradicts another, or cannot be
/// read, stands in the report; anything that is refused gives a status and no report.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_sheet_check(
    sheet: *const c_char,
    sheet_length: usize,
    report: *mut *mut c_char,
    report_length: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (kept("report", report), kept("report_length", report_length)), || {
            let report = check_json_bytes(bytes("sheet", sheet, sheet_length)?)?;
            Ok((give(&report)?, report.len()))
        })
    }
}
