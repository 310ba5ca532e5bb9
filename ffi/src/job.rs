//! A whole job, from document to report.

use crate::error::GaugepointError;
use crate::guard::{kept, status};
use crate::text::{bytes, flag, give};
use core::ffi::c_char;
use gaugepoint::{Options, assess_json_bytes};

/// Assesses a job document and gives its report, both JSON.
///
/// `job` is a job document of `job_length` bytes. `with_working` is 1 to have the working of every number in the report,
/// else 0. `report` gets the text, to be freed by gaugepoint_text_free, and `report_length` its length in bytes without
/// the NUL that ends it. Readings that are missing give a report that says what is missing; anything that is refused
/// gives a status and no report.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_job_assess(
    job: *const c_char,
    job_length: usize,
    with_working: i32,
    report: *mut *mut c_char,
    report_length: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (kept("report", report), kept("report_length", report_length)), || {
            let job = bytes("job", job, job_length)?;
            let working = flag("with_working", with_working)?;
            let report = assess_json_bytes(job, Options { working })?;
            Ok((give(&report)?, report.len()))
        })
    }
}
