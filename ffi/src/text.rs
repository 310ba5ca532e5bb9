//! Texts and yes or no, from the caller and to the caller.

use crate::error::Failure;
use crate::guard::plain;
use crate::status::{NULL_POINTER, OUT_OF_MEMORY};
use core::ffi::c_char;
use core::mem::{align_of, size_of};
use core::ptr::copy_nonoverlapping;
use core::slice;
use gaugepoint::ErrorKind;
use std::alloc::{Layout, alloc, dealloc};

/// Frees a text that this library gave. NULL is fine.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_text_free(text: *mut c_char) {
    // SAFETY: the contract of the header
    plain((), || unsafe { take(text) });
}

/// A yes or no.
pub(crate) fn flag(field: &'static str, number: i32) -> Result<bool, Failure> {
    match number {
        0 => Ok(false),
        1 => Ok(true),
        _ => Err(Failure::choice(field, number, "0, 1")),
    }
}

/// The caller's bytes.
///
/// # Safety
/// `text` is NULL or points to `length` bytes that do not change while they are used.
pub(crate) unsafe fn bytes<'a>(
    field: &'static str,
    text: *const c_char,
    length: usize,
) -> Result<&'a [u8], Failure> {
    if text.is_null() {
        return Err(Failure::own(NULL_POINTER, field, NULL_POINTER.meaning));
    }
    // before the slice is made: no slice is longer than half of the memory
    gaugepoint::job::check_size(length)?;
    // SAFETY: the caller's promise
    Ok(unsafe { slice::from_raw_parts(text.cast(), length) })
}

/// The caller's name, in UTF-8.
///
/// # Safety
/// As [`bytes`].
pub(crate) unsafe fn name<'a>(
    field: &'static str,
    text: *const c_char,
    length: usize,
) -> Result<&'a str, Failure> {
    // SAFETY: the caller's promise
    core::str::from_utf8(unsafe { bytes(field, text, length) }?)
        .map_err(|_| Failure::refused(ErrorKind::NotUtf8, field, "the name is not UTF-8"))
}

/// The length of a text stands before it, so that freeing it does not depend on what the caller wrote into it.
const HEAD: usize = size_of::<usize>();

fn layout(length: usize) -> Option<Layout> {
    let size = length.checked_add(HEAD + 1)?;
    Layout::from_size_align(size, align_of::<usize>()).ok()
}

/// Copies a text into memory that the caller will own.
#[cfg_attr(not(feature = "models"), allow(dead_code, reason = "without models nothing hands a text out"))]
pub(crate) fn give(text: &str) -> Result<*mut c_char, Failure> {
    let none = || Failure::own(OUT_OF_MEMORY, "report", OUT_OF_MEMORY.meaning);
    let layout = layout(text.len()).ok_or_else(none)?;
    // SAFETY: HEAD bytes for the length, the bytes of the text and the NUL are what was asked for
    unsafe {
        let start = alloc(layout);
        if start.is_null() {
            return Err(none());
        }
        start.cast::<usize>().write(text.len());
        let first = start.add(HEAD);
        copy_nonoverlapping(text.as_ptr(), first, text.len());
        first.add(text.len()).write(0);
        Ok(first.cast())
    }
}

/// # Safety
/// `text` is NULL or came from [`give`] and was not freed.
unsafe fn take(text: *mut c_char) {
    if text.is_null() {
        return;
    }
    // SAFETY: the caller's promise
    unsafe {
        let start = text.cast::<u8>().sub(HEAD);
        if let Some(layout) = layout(start.cast::<usize>().read()) {
            dealloc(start, layout);
        }
    }
}
