//! What was refused, as C sees it.

use crate::status::{self, Status};
use core::ffi::c_char;
use core::mem::{offset_of, size_of};
use gaugepoint::{Error, ErrorKind};

/// What was refused, and why. Belongs to the caller; see ERROR at the head.
///
/// Every text ends with a NUL.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointError {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// The status that was returned.
    pub status: i32,
    /// 1 when `value` is given, else 0.
    pub has_value: i32,
    /// 1 when `lower` is given, else 0.
    pub has_lower: i32,
    /// 1 when `upper` is given, else 0.
    pub has_upper: i32,
    /// The refused value, in `unit`; NaN when not given.
    pub value: f64,
    /// Smallest accepted value, in `unit`; NaN when not given.
    pub lower: f64,
    /// Largest accepted value, in `unit`; NaN when not given.
    pub upper: f64,
    /// Unit of the three numbers: "mm", "C", "K", "1/K", "deg", "1" (a pure number) or empty.
    pub unit: [c_char; 16],
    /// Name of the parameter, or JSON Pointer (RFC 6901) of the refused field in the job; empty when it is the whole text.
    pub field: [c_char; 256],
    /// What was refused, as it was given.
    pub refused: [c_char; 336],
    /// Why.
    pub reason: [c_char; 512],
    /// What was probably meant; empty when no slip of unit or of spelling explains it.
    pub did_you_mean: [c_char; 128],
    /// All of this in one line.
    pub message: [c_char; 1024],
}

/// Size of the structure in its first version, which ends with `message`: no caller has a smaller one.
const SMALLEST: usize = offset_of!(GaugepointError, message) + 1024;
/// No version will be larger; memory that was not set is mostly refused by this.
const LARGEST: usize = 65536;

/// Why a call failed.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Failure {
    /// Refused by the core.
    Refused(Error),
    /// Wrong before the core could be asked.
    AtTheDoor { code: i32, field: String, refused: String, reason: String },
}

impl From<Error> for Failure {
    fn from(error: Error) -> Self {
        Failure::Refused(error)
    }
}

impl Failure {
    /// One of the statuses that only C can cause.
    pub(crate) fn own(status: Status, field: &'static str, reason: &str) -> Self {
        Failure::AtTheDoor {
            code: status.code,
            field: field.to_owned(),
            refused: String::new(),
            reason: reason.to_owned(),
        }
    }

    /// A refusal of the core's kinds that only C can cause.
    pub(crate) fn refused(kind: ErrorKind, field: &'static str, reason: &str) -> Self {
        Failure::AtTheDoor {
            code: kind.code(),
            field: field.to_owned(),
            refused: String::new(),
            reason: reason.to_owned(),
        }
    }

    /// A number outside an enum.
    pub(crate) fn choice(field: &'static str, refused: i32, accepted: &str) -> Self {
        Failure::AtTheDoor {
            code: ErrorKind::UnknownChoice.code(),
            field: field.to_owned(),
            refused: refused.to_string(),
            reason: format!("not one of the choices; accepted: {accepted}"),
        }
    }

    /// The same failure, with its field below `parent`.
    pub(crate) fn under(self, parent: &str) -> Self {
        match self {
            Failure::Refused(error) => Failure::Refused(error.under(parent)),
            Failure::AtTheDoor { code, field, refused, reason } => {
                let field = if field.is_empty() { parent.to_owned() } else { format!("{parent}/{field}") };
                Failure::AtTheDoor { code, field, refused, reason }
            }
        }
    }

    pub(crate) fn code(&self) -> i32 {
        match self {
            Failure::Refused(error) => error.kind().code(),
            Failure::AtTheDoor { code, .. } => *code,
        }
    }

    fn as_c(&self) -> GaugepointError {
        match self {
            Failure::Refused(error) => refused(error),
            Failure::AtTheDoor { code, field, refused, reason } => GaugepointError {
                status: *code,
                field: cut(field),
                refused: cut(refused),
                reason: cut(reason),
                message: cut(&sentence(field, refused, reason)),
                ..EMPTY
            },
        }
    }
}

/// In the form of the core's sentences.
fn sentence(field: &str, refused: &str, reason: &str) -> String {
    let place = if field.is_empty() { String::new() } else { format!("{field}: ") };
    let quoted = match refused.is_empty() {
        true => String::new(),
        false => format!("\"{refused}\" is refused: "),
    };
    place + &quoted + reason
}

const EMPTY: GaugepointError = GaugepointError {
    struct_size: size_of::<GaugepointError>(),
    status: status::OK.code,
    has_value: 0,
    has_lower: 0,
    has_upper: 0,
    value: f64::NAN,
    lower: f64::NAN,
    upper: f64::NAN,
    unit: [0; 16],
    field: [0; 256],
    refused: [0; 336],
    reason: [0; 512],
    did_you_mean: [0; 128],
    message: [0; 1024],
};

fn refused(error: &Error) -> GaugepointError {
    let (value, limits) = (error.refused_value(), error.accepted());
    GaugepointError {
        status: error.kind().code(),
        has_value: value.is_some().into(),
        has_lower: limits.is_some().into(),
        has_upper: limits.is_some().into(),
        value: value.unwrap_or(f64::NAN),
        lower: limits.map_or(f64::NAN, |l| l.lower),
        upper: limits.map_or(f64::NAN, |l| l.upper),
        unit: cut(limits.map_or("", |l| l.unit)),
        field: cut(error.field()),
        refused: cut(error.refused()),
        reason: cut(error.reason()),
        did_you_mean: cut(error.did_you_mean().unwrap_or_default()),
        message: cut(&error.to_string()),
        ..EMPTY
    }
}

/// A text in a place of fixed size, cut between characters, with its NUL.
pub(crate) fn cut<const N: usize>(text: &str) -> [c_char; N] {
    let text = text.replace('\0', "\u{2400}");
    let whole = |end: &usize| text.is_char_boundary(*end);
    let end = (0..N.min(text.len() + 1)).rev().find(whole).unwrap_or(0);
    let mut out = [0; N];
    for (to, from) in out.iter_mut().zip(text.bytes().take(end)) {
        *to = c_char::from_ne_bytes([from]);
    }
    out
}

/// Whether the size of an error structure was set. NULL is fine: nothing is wanted.
///
/// # Safety
/// `error` is NULL or points to a `GaugepointError`.
#[inline]
pub(crate) unsafe fn has_its_size(error: *const GaugepointError) -> bool {
    // SAFETY: the first field of every version
    error.is_null() || matches!(unsafe { error.cast::<usize>().read() }, SMALLEST..=LARGEST)
}

/// Refuses an error structure whose size was not set.
///
/// # Safety
/// As [`has_its_size`].
pub(crate) unsafe fn check(error: *const GaugepointError) -> Result<(), Failure> {
    // SAFETY: the caller's promise
    match unsafe { has_its_size(error) } {
        true => Ok(()),
        false => Err(Failure::own(status::STRUCT_SIZE, "error", status::STRUCT_SIZE.meaning)),
    }
}

/// Fills the caller's structure, as much of it as the caller knows.
///
/// # Safety
/// As [`check`].
pub(crate) unsafe fn write(error: *mut GaugepointError, failure: &Failure) {
    // SAFETY: the caller's promise
    if error.is_null() || unsafe { check(error) }.is_err() {
        return;
    }
    let filled = failure.as_c();
    let start = offset_of!(GaugepointError, status);
    // SAFETY: `size` bytes are the caller's, as it said; both structures are at least `end` long and do not overlap
    unsafe {
        let end = error.cast::<usize>().read().min(size_of::<GaugepointError>());
        let (from, to) = ((&raw const filled).cast::<u8>(), error.cast::<u8>());
        to.add(start).copy_from_nonoverlapping(from.add(start), end - start);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &[c_char]) -> String {
        let bytes: Vec<u8> = text.iter().map(|c| c.to_ne_bytes()[0]).take_while(|b| *b != 0).collect();
        String::from_utf8(bytes).unwrap()
    }

    #[test]
    fn texts_are_cut_between_characters() {
        assert_eq!(read(&cut::<4>("abcdef")), "abc");
        assert_eq!(read(&cut::<4>("abc")), "abc");
        assert_eq!(read(&cut::<4>("ab\u{e9}")), "ab");
        assert_eq!(read(&cut::<5>("ab\u{e9}")), "ab\u{e9}");
        assert_eq!(read(&cut::<3>("\u{1f600}")), "");
        assert_eq!(read(&cut::<16>("")), "");
        assert_eq!(read(&cut::<16>("a\0b")), "a\u{2400}b");
        assert_eq!(cut::<4>("abcdef")[3], 0);
    }

    #[test]
    fn a_newer_caller_keeps_what_this_library_does_not_know() {
        #[repr(C)]
        struct Newer {
            known: GaugepointError,
            later: [u8; 24],
        }
        let mut newer = Newer { known: EMPTY, later: [0xA5; 24] };
        newer.known.struct_size = size_of::<Newer>();
        let failure = Failure::own(status::NULL_POINTER, "job", "NULL");
        // SAFETY: a structure that starts with the known one
        unsafe { write((&raw mut newer).cast(), &failure) };
        assert_eq!((newer.known.status, newer.later), (901, [0xA5; 24]));
        assert_eq!(newer.known.struct_size, size_of::<Newer>());
    }
}
