use crate::feed::{Feed, answered, error, record};
use crate::watched::watched;
use core::ffi::c_void;
use core::ptr::null_mut;
use gaugepoint_c::progress::GaugepointWatcher;
use gaugepoint_c::report::{
    GaugepointCylinderVerdict, GaugepointJobVerdict, GaugepointReport, gaugepoint_report_cylinder,
    gaugepoint_report_free, gaugepoint_report_job, gaugepoint_report_new_watched, gaugepoint_report_text,
};
use gaugepoint_c::text::gaugepoint_text_free;

/// The door of the documents: the first byte says which document, whether with working and how it is watched, the rest is its text.
///
/// # Panics
/// When an answer breaks a rule.
pub fn documents(data: &[u8]) {
    let mut feed = Feed(data);
    let first = feed.byte();
    let (kind, working) = (i32::from(first % 16) % 10, i32::from(first / 16 % 2));
    match first / 32 {
        0 => drop(made(feed.0, kind, working, None, null_mut())),
        stop => drop(watched(usize::from(stop) - 1, &None, |watcher, user| {
            made(feed.0, kind, working, watcher, user)
        })),
    }
}

/// The status of a report, and the text of it as JSON.
fn made(
    text: &[u8],
    kind: i32,
    working: i32,
    watcher: GaugepointWatcher,
    user: *mut c_void,
) -> (i32, Option<String>) {
    let mut report: *mut GaugepointReport = null_mut();
    let mut e = error();
    // SAFETY: the contract of the header; the handle is freed once below
    let status = unsafe {
        gaugepoint_report_new_watched(
            kind,
            text.as_ptr().cast(),
            text.len(),
            working,
            watcher,
            user,
            &raw mut report,
            &raw mut e,
        )
    };
    if !answered(status, &e) {
        assert!(report.is_null(), "a refusal gave a report");
        return (status, None);
    }
    let [_, json, ..] = [0, 1, 2, 3].map(|format| written(report, format));
    asked(report);
    // SAFETY: as above
    unsafe { gaugepoint_report_free(report) };
    (status, json)
}

/// A report in a format: JSON parses, and no text holds a number that is none.
fn written(report: *const GaugepointReport, format: i32) -> Option<String> {
    let (mut text, mut length, mut e) = (null_mut(), usize::MAX, error());
    // SAFETY: the contract of the header; the text is freed once
    unsafe {
        let status = gaugepoint_report_text(report, format, &raw mut text, &raw mut length, &raw mut e);
        if !answered(status, &e) {
            assert!(text.is_null() && length == usize::MAX);
            return None;
        }
        let bytes = core::slice::from_raw_parts(text.cast::<u8>(), length + 1);
        assert_eq!(bytes.last(), Some(&0));
        let told = str::from_utf8(&bytes[..length]).expect("UTF-8").to_owned();
        gaugepoint_text_free(text);
        if format == 1 {
            let _: serde_json::Value = serde_json::from_str(&told).expect("a report that parses");
        }
        Some(told)
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
