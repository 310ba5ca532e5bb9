//! Opaque handles: made in a box, lent to a call, freed once.

use crate::error::Failure;
use crate::status::NULL_POINTER;

fn null(name: &'static str) -> Failure {
    Failure::own(NULL_POINTER, name, NULL_POINTER.meaning)
}

/// A handle for the caller.
pub(crate) fn made<T>(of: T) -> *mut T {
    Box::into_raw(Box::new(of))
}

/// The caller's handle; `name` is that of the parameter.
///
/// # Safety
/// `handle` is NULL or came from [`made`] and was not freed.
pub(crate) unsafe fn lent<'a, T>(name: &'static str, handle: *const T) -> Result<&'a T, Failure> {
    // SAFETY: the caller's promise
    unsafe { handle.as_ref() }.ok_or_else(|| null(name))
}

/// The caller's handle, to be changed.
///
/// # Safety
/// As [`lent`], and nothing else uses it.
#[cfg_attr(not(feature = "models"), allow(dead_code, reason = "without models nothing is added to"))]
pub(crate) unsafe fn lent_to_change<'a, T>(name: &'static str, handle: *mut T) -> Result<&'a mut T, Failure> {
    // SAFETY: the caller's promise
    unsafe { handle.as_mut() }.ok_or_else(|| null(name))
}

/// Frees a handle; NULL is fine.
///
/// # Safety
/// As [`lent`].
pub(crate) unsafe fn freed<T>(handle: *mut T) {
    if !handle.is_null() {
        // SAFETY: the caller's promise
        drop(unsafe { Box::from_raw(handle) });
    }
}
