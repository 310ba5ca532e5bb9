//! The texts of caution, as C reads them.

use crate::status::terminated;
use core::ffi::c_char;
use gaugepoint::report::{HEATED_PART, LINER_LIFTING, LINER_WORK, OVERHEATED_PART, PRESS_WORK, RING_FILING};

const CAUTIONS: [&str; 6] =
    [HEATED_PART, LINER_LIFTING, LINER_WORK, OVERHEATED_PART, PRESS_WORK, RING_FILING];

static TEXTS: [[u8; 400]; 6] = [
    terminated(HEATED_PART),
    terminated(LINER_LIFTING),
    terminated(LINER_WORK),
    terminated(OVERHEATED_PART),
    terminated(PRESS_WORK),
    terminated(RING_FILING),
];

/// The text of the core with a NUL after it; lives for ever.
pub(crate) fn caution(text: &str) -> *const c_char {
    let found = CAUTIONS.iter().zip(&TEXTS).find(|(of_core, _)| **of_core == text);
    found.map_or(c"".as_ptr(), |(_, text)| text.as_ptr().cast())
}
