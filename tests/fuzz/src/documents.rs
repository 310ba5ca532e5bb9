use crate::feed::{Feed, answered, error, record};
use core::ptr::null_mut;
use gaugepoint_c::report::{
    GaugepointCylinderVerdict, GaugepointJobVerdict, GaugepointReport, gaugepoint_report_cylinder,
    gaugepoint_report_free, gaugepoint_report_job, gaugepoint_report_new, gaugepoint_report_text,
};
use gaugepoint_c::text::gaugepoint_text_free;

/// The door of the documents: the first byte says which document and whether with working, the rest is its text.
///
/// # Panics
/// When an answer breaks a rule.
pub fn documents(data: &[u8]) {
    let mut feed = Feed(data);
    let first = feed.byte();
    let (kind, working) = (i32::from(first % 16) % 10, i32::from(first / 16 % 2));
    let mut report: *mut GaugepointReport = null_mut();
    let mut e = error();
    // SAFETY: the contract of the header; the handle is freed once below
    let status = unsafe {
        gaugepoint_report_new(
            kind,
            feed.0.as_ptr().cast(),
            feed.0.len(),
            working,
            &raw mut report,
            &raw mut e,
        )
    };
    if !answered(status, &e) {
        assert!(report.is_null(), "a refusal gave a report");
        return;
    }
    for format in 0..4 {
        written(report, format);
    }
    asked(report);
    // SAFETY: as above
    unsafe { gaugepoint_report_free(report) };
}

/// A report in a format: JSON parses, and no text holds a number that is none.
fn written(report: *const GaugepointReport, format: i32) {
    let (mut text, mut length, mut e) = (null_mut(), usize::MAX, error());
    // SAFETY: the contract of the header; the text is freed once
    unsafe {
        let status = gaugepoint_report_text(report, format, &raw mut text, &raw mut length, &raw mut e);
        if !answered(status, &e) {
            assert!(text.is_null() && length == usize::MAX);
            return;
        }
        let bytes = core::slice::from_raw_parts(text.cast::<u8>(), length + 1);
        assert_eq!(bytes.last(), Some(&0));
        let told = str::from_utf8(&bytes[..length]).expect("UTF-8");
        if format == 1 {
            let _: serde_json::Value = serde_json::from_str(told).expect("a report that parses");
        }
        gaugepoint_text_free(text);
    }
}

fn asked(report: *const GaugepointReport) {
    let (mut job, mut e) = (record!(GaugepointJobVerdict), error());
    // SAFETY: the contract of the header
    if !answered(unsafe { gaugepoint_report_job(report, &raw mut job, &raw mut e) }, &e) {
        return;
    }
    for place in 0..=job.cylinder_count {
        let (mut cylinder, mut e) = (record!(GaugepointCylinderVerdict), error());
        // SAFETY: the contract of the header
        let status = unsafe { gaugepoint_report_cylinder(report, place, &raw mut cylinder, &raw mut e) };
        assert_eq!(answered(status, &e), place < job.cylinder_count);
    }
}
