//! The boundary: no panic leaves it, and only here are a caller's outputs written.

use crate::error::{self, Failure, GaugepointError};
use crate::floats::{self, Own};
use crate::status;
use core::any::Any;
use std::panic::{AssertUnwindSafe, catch_unwind};

/// Runs `body`; `on_panic` gets the text of a panic and says what is returned instead.
fn boundary<T>(body: impl FnOnce() -> T, on_panic: impl FnOnce(&str) -> T) -> T {
    // unwind safe: what a body changes is its own; outputs are written after it
    floats::aside(|| {
        catch_unwind(AssertUnwindSafe(body)).unwrap_or_else(|panic| on_panic(said(panic.as_ref())))
    })
}

fn said(panic: &(dyn Any + Send)) -> &str {
    match (panic.downcast_ref::<&str>(), panic.downcast_ref::<String>()) {
        (Some(text), _) => text,
        (_, Some(text)) => text,
        _ => "without a text",
    }
}

/// A function that has no status: gives `on_panic` after a panic.
pub(crate) fn plain<T>(on_panic: T, body: impl FnOnce() -> T) -> T {
    boundary(body, |_| on_panic)
}

/// A function with a status: clears the outputs, runs `body`, writes what it gives or the error.
///
/// # Safety
/// `error` and the pointers of `outs` are NULL or point to what their types say.
pub(crate) unsafe fn status<O: Outs>(
    error: *mut GaugepointError,
    outs: O,
    body: impl FnOnce() -> Result<O::Values, Failure>,
) -> i32 {
    let mut body = Some(body);
    let mut run = || {
        if let Some(body) = body.take() {
            let values = body()?;
            // SAFETY: the caller's promise, and it runs after the check
            unsafe { outs.write(values) };
        }
        Ok(())
    };
    // SAFETY: the caller's promise
    unsafe { guarded(error, &outs, &mut run) }
}

/// A function of doubles that gives one, with a status. A result that has its place takes this short way; all else is told by [`status`], from its
/// start.
///
/// # Safety
/// `error` and `out` are NULL or point to what their types say.
#[inline(always)]
pub(crate) unsafe fn number(
    error: *mut GaugepointError,
    out: *mut f64,
    body: impl Fn() -> Result<f64, gaugepoint::Error>,
) -> i32 {
    // SAFETY: the caller's promise
    unsafe {
        let own = Own::taken();
        if own.is_usual() && !out.is_null() && error::has_its_size(error) {
            let done = catch_unwind(AssertUnwindSafe(&body));
            own.put_back();
            if let Ok(Ok(value)) = done {
                out.write(value);
                return status::OK.code;
            }
        }
        status(error, cleared("out", out, f64::NAN), || Ok(body()?))
    }
}

/// What is the same code for every function with a status.
///
/// # Safety
/// As [`status`].
unsafe fn guarded(
    error: *mut GaugepointError,
    outs: &dyn Places,
    run: &mut dyn FnMut() -> Result<(), Failure>,
) -> i32 {
    let all = || {
        // SAFETY: the caller's promise
        unsafe {
            outs.clear();
            error::check(error)?;
            outs.check()?;
        }
        run()
    };
    let done = boundary(all, |text| Err(Failure::own(status::PANIC, "", text)));
    plain(status::PANIC.code, || match done {
        Ok(()) => status::OK.code,
        Err(failure) => {
            // SAFETY: the caller's promise
            unsafe { error::write(error, &failure) };
            failure.code()
        }
    })
}

/// Where the outputs of a function go.
pub(crate) trait Places {
    /// Sets what an ignored status must not leave readable.
    ///
    /// # Safety
    /// Each pointer is NULL or points to its type.
    unsafe fn clear(&self);
    /// Refuses NULL, and a record whose size was not set.
    ///
    /// # Safety
    /// Each pointer is NULL or points to its type.
    unsafe fn check(&self) -> Result<(), Failure>;
}

/// The outputs of a function.
pub(crate) trait Outs: Places {
    /// What they receive.
    type Values;
    /// Writes the results.
    ///
    /// # Safety
    /// Each pointer points to its type.
    unsafe fn write(&self, values: Self::Values);
}

/// One output.
pub(crate) struct Out<T> {
    name: &'static str,
    place: *mut T,
    on_failure: Option<T>,
}

/// An output that is left as it was on failure.
pub(crate) fn kept<T>(name: &'static str, place: *mut T) -> Out<T> {
    Out { name, place, on_failure: None }
}

/// An output that is set to `value` on failure.
pub(crate) fn cleared<T>(name: &'static str, place: *mut T, value: T) -> Out<T> {
    Out { name, place, on_failure: Some(value) }
}

impl<T: Copy> Places for Out<T> {
    unsafe fn clear(&self) {
        if let (Some(value), false) = (self.on_failure, self.place.is_null()) {
            // SAFETY: the caller's promise
            unsafe { self.place.write(value) };
        }
    }

    unsafe fn check(&self) -> Result<(), Failure> {
        match self.place.is_null() {
            true => Err(Failure::own(status::NULL_POINTER, self.name, status::NULL_POINTER.meaning)),
            false => Ok(()),
        }
    }
}

impl<T: Copy> Outs for Out<T> {
    type Values = T;

    unsafe fn write(&self, value: T) {
        // SAFETY: the caller's promise
        unsafe { self.place.write(value) };
    }
}

/// No output.
impl Places for () {
    unsafe fn clear(&self) {}

    unsafe fn check(&self) -> Result<(), Failure> {
        Ok(())
    }
}

impl Outs for () {
    type Values = ();

    unsafe fn write(&self, (): ()) {}
}

impl<A: Places, B: Places> Places for (A, B) {
    unsafe fn clear(&self) {
        // SAFETY: the caller's promise
        unsafe {
            self.0.clear();
            self.1.clear();
        }
    }

    unsafe fn check(&self) -> Result<(), Failure> {
        // SAFETY: the caller's promise
        unsafe {
            self.0.check()?;
            self.1.check()
        }
    }
}

impl<A: Outs, B: Outs> Outs for (A, B) {
    type Values = (A::Values, B::Values);

    unsafe fn write(&self, values: Self::Values) {
        // SAFETY: the caller's promise
        unsafe {
            self.0.write(values.0);
            self.1.write(values.1);
        }
    }
}

#[cfg(test)]
mod tests {
    //! No input is known to panic, so the boundary itself is proved here, with a body that does.
    use super::*;
    use core::ffi::{CStr, c_char};
    use core::ptr::null_mut;

    fn blank() -> GaugepointError {
        // SAFETY: integers, doubles and characters, for which zero is a value
        let mut error: GaugepointError = unsafe { core::mem::zeroed() };
        error.struct_size = size_of::<GaugepointError>();
        error
    }

    fn text(of: &[c_char]) -> &str {
        // SAFETY: every text of the structure ends with a NUL
        unsafe { CStr::from_ptr(of.as_ptr()) }.to_str().unwrap()
    }

    #[test]
    fn a_panic_becomes_a_status() {
        let (mut size, mut word, mut error) = (1.0, 7_i32, blank());
        let outs = (cleared("size", &raw mut size, f64::NAN), kept("word", &raw mut word));
        let code = unsafe { status(&raw mut error, outs, || panic!("broken at {}", 3)) };
        assert_eq!((code, error.status, word), (904, 904, 7));
        assert!(size.is_nan());
        assert!(text(&error.message).contains("broken at 3"), "{}", text(&error.message));
    }

    #[test]
    fn a_panic_with_any_payload_is_caught() {
        let word = kept("word", null_mut::<i32>());
        assert_eq!(unsafe { status(null_mut(), word, || Ok(1)) }, 901);
        let mut there = 0;
        let mut outs = || kept("word", &raw mut there);
        assert_eq!(unsafe { status(null_mut(), outs(), || std::panic::panic_any(5_u8)) }, 904);
        assert_eq!(unsafe { status(null_mut(), outs(), || panic!("plain")) }, 904);
        assert_eq!(unsafe { status(null_mut(), outs(), || Ok(5)) }, 0);
        assert_eq!(there, 5);
    }

    #[test]
    fn a_number_is_written_or_told_why_not() {
        let (mut out, mut error) = (1.0, blank());
        let mut asked = |body: &dyn Fn() -> Result<f64, gaugepoint::Error>| {
            (unsafe { number(&raw mut error, &raw mut out, body) }, out, error.status)
        };
        assert_eq!(asked(&|| Ok(5.0)), (0, 5.0, 0));
        let (code, out, told) = asked(&|| panic!("broken"));
        assert_eq!((code, told, out.is_nan()), (904, 904, true));
        let (code, out, told) = asked(&|| gaugepoint::flat::bench_clearance_mm(0.0, 86.0));
        assert_eq!((code, told, out.is_nan()), (301, 301, true));
        assert_eq!(unsafe { number(null_mut(), null_mut(), || Ok(5.0)) }, 901);
        error.struct_size = 1;
        let mut kept = 7.0;
        assert_eq!(unsafe { number(&raw mut error, &raw mut kept, || Ok(5.0)) }, 902);
        assert!(kept.is_nan());
    }

    #[test]
    fn a_function_without_status_gives_its_neutral_value() {
        assert_eq!(plain(-1, || panic!("no")), -1);
        assert_eq!(plain(-1, || 4), 4);
    }
}
