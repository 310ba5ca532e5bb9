//! The texts of caution, as C reads them.

use crate::status::terminated;
use core::ffi::c_char;
use gaugepoint::report::{HEATED_PART, LINER_WORK, OVERHEATED_PART, PRESS_WORK};

const CAUTIONS: [&str; 4] = [HEATED_PART, LINER_WORK, OVERHEATED_PART, PRESS_WORK];

static TEXTS: [[u8; 400]; 4] =
    [terminated(HEATED_PART), terminated(LINER_WORK), terminated(OVERHEATED_PART), terminated(PRESS_WORK)];

/// The text of the core with a NUL after it; lives for ever.
pub(crate) fn caution(text: &str) -> *const c_char {
    let found = CAUTIONS.iter().zip(&TEXTS).find(|(of_core, _)| **of_core == text);
    found.map_or(c"".as_ptr(), |(_, text)| text.as_ptr().cast())
}
