//! Files that are written from something else, and kept.

#![expect(clippy::panic, reason = "a test stops where it fails")]

use std::path::PathBuf;

pub(crate) fn path(of: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(of)
}

pub(crate) fn text(of: &str) -> String {
    std::fs::read_to_string(path(of)).unwrap_or_else(|e| panic!("{of}: {e}"))
}

/// A file is what is generated now; `UPDATE_` with the name of the test writes it.
pub(crate) fn holds(file: &str, generated: &str, test: &str) {
    let variable = format!("UPDATE_{}", test.to_uppercase());
    if std::env::var_os(&variable).is_some() {
        std::fs::write(path(file), generated).unwrap_or_else(|e| panic!("{file}: {e}"));
    }
    assert!(
        text(file) == generated,
        "{file} is out of date: {variable}=1 cargo test -p gaugepoint-ffi --test {test}"
    );
}
