//! Statuses: those of the core under its own numbers, and the few that only C can cause.

use crate::abi::GAUGEPOINT_ABI;
use crate::guard::plain;
use core::ffi::c_char;
use gaugepoint::ErrorKind;

/// A status with its texts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Status {
    /// The number.
    pub code: i32,
    /// The stable name.
    pub name: &'static str,
    /// One sentence on it.
    pub meaning: &'static str,
}

/// Success.
pub(crate) const OK: Status = Status { code: 0, name: "ok", meaning: "Success." };
/// A pointer that is needed is NULL.
pub(crate) const NULL_POINTER: Status =
    Status { code: 901, name: "null_pointer", meaning: "A pointer that is needed is NULL." };
/// A structure is not of a size this library knows.
pub(crate) const STRUCT_SIZE: Status =
    Status { code: 902, name: "struct_size", meaning: "The struct_size of a structure was not set." };
/// No memory for a text.
pub(crate) const OUT_OF_MEMORY: Status =
    Status { code: 903, name: "out_of_memory", meaning: "There is no memory for the text." };
/// A fault of the library.
pub(crate) const PANIC: Status =
    Status { code: 904, name: "panic", meaning: "A fault of this library; please report it." };
/// What is called back failed.
pub(crate) const CALLBACK_FAILED: Status =
    Status { code: 905, name: "callback_failed", meaning: "A callback said that it failed." };
const UNKNOWN: Status = Status {
    code: -1,
    name: "unknown",
    meaning: "Unknown to this version of the library; treat it as a failure.",
};

const OURS: [Status; 5] = [NULL_POINTER, STRUCT_SIZE, OUT_OF_MEMORY, PANIC, CALLBACK_FAILED];
const COUNT: usize = 1 + ErrorKind::ALL.len() + OURS.len();

/// Every status, in order of number. Retired: none.
pub const ALL: [Status; COUNT] = all();

#[expect(clippy::indexing_slicing, reason = "evaluated by the compiler")]
const fn all() -> [Status; COUNT] {
    let mut out = [OK; COUNT];
    let (mut k, kinds) = (0, ErrorKind::ALL.len());
    while k < kinds {
        let kind = ErrorKind::ALL[k];
        out[1 + k] = Status { code: kind.code(), name: kind.name(), meaning: kind.meaning() };
        k += 1;
    }
    while k < kinds + OURS.len() {
        out[1 + k] = OURS[k - kinds];
        k += 1;
    }
    out
}

/// A short text with its NUL.
pub(crate) type Text = [u8; 160];

/// A text with its NUL, made by the compiler.
#[expect(
    clippy::indexing_slicing,
    reason = "evaluated by the compiler: a text that is too long does not build"
)]
pub(crate) const fn terminated<const N: usize>(text: &str) -> [u8; N] {
    let (mut out, mut k) = ([0; N], 0);
    while k < text.len() {
        out[k] = text.as_bytes()[k];
        k += 1;
    }
    assert!(out[N - 1] == 0, "the text is too long");
    out
}

#[expect(clippy::indexing_slicing, reason = "evaluated by the compiler")]
const fn texts() -> [(i32, Text, Text); COUNT] {
    let (mut out, mut k) = ([(0, [0; 160], [0; 160]); COUNT], 0);
    while k < COUNT {
        out[k] = (ALL[k].code, terminated(ALL[k].name), terminated(ALL[k].meaning));
        k += 1;
    }
    out
}

static TEXTS: [(i32, Text, Text); COUNT] = texts();
static UNKNOWN_TEXTS: (i32, Text, Text) =
    (UNKNOWN.code, terminated(UNKNOWN.name), terminated(UNKNOWN.meaning));
static VERSION: Text = terminated(env!("CARGO_PKG_VERSION"));

fn texts_of(status: i32) -> &'static (i32, Text, Text) {
    TEXTS.iter().find(|(code, ..)| *code == status).unwrap_or(&UNKNOWN_TEXTS)
}

/// Number of the ABI of the library that is loaded; compare with GAUGEPOINT_ABI. 0 only after a fault of the library.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_abi() -> i32 {
    plain(0, || GAUGEPOINT_ABI)
}

/// Version of the library that is loaded, as "1.2.3".
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_version() -> *const c_char {
    plain(c"".as_ptr(), || VERSION.as_ptr().cast())
}

/// The statuses one after the other: call with 0, 1, 2 ... until it returns -1.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_status_at(index: i32) -> i32 {
    plain(-1, || {
        let status = usize::try_from(index).ok().and_then(|k| ALL.get(k));
        status.map_or(-1, |s| s.code)
    })
}

/// Stable name of a status, as it also stands in the documents: "out_of_range". Of an unknown one: "unknown".
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_status_name(status: i32) -> *const c_char {
    plain(c"".as_ptr(), || texts_of(status).1.as_ptr().cast())
}

/// One sentence on a status, also on an unknown one.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_status_text(status: i32) -> *const c_char {
    plain(c"".as_ptr(), || texts_of(status).2.as_ptr().cast())
}
