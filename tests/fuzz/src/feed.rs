//! Numbers and choices from bytes, and what every answer must keep.

use gaugepoint_c::error::GaugepointError;
use gaugepoint_c::status::ALL;

/// Bytes that are used up from the front; when they are gone, zeros follow.
pub(crate) struct Feed<'d>(pub(crate) &'d [u8]);

/// Sizes, temperatures, coefficients and probabilities that a shop could mean, and doubles that it could not.
const KNOWN: [f64; 24] = [
    86.0,
    85.96,
    0.04,
    0.01,
    1.2,
    20.0,
    120.0,
    250.0,
    20.5e-6,
    11.4e-6,
    0.5,
    0.95,
    1.0,
    -1.0,
    2.0,
    3.0,
    90.0,
    0.0,
    -0.0,
    1e308,
    5e-324,
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
];

impl Feed<'_> {
    pub(crate) fn byte(&mut self) -> u8 {
        let Some((first, rest)) = self.0.split_first() else { return 0 };
        self.0 = rest;
        *first
    }

    pub(crate) fn done(&self) -> bool {
        self.0.is_empty()
    }

    /// Any double at all, or one of the known ones, or one of them a little changed.
    pub(crate) fn number(&mut self) -> f64 {
        let choice = self.byte();
        let known = KNOWN[usize::from(choice) % KNOWN.len()];
        match choice / 64 {
            0 | 1 => known,
            2 => known * (1.0 + f64::from(self.byte()) / 1024.0),
            _ => f64::from_bits((0..8).fold(0, |bits, _| bits << 8 | u64::from(self.byte()))),
        }
    }

    /// Mostly the number that is usual, sometimes it a little changed, seldom any.
    pub(crate) fn near(&mut self, usual: f64) -> f64 {
        match self.byte() {
            0..=127 => usual,
            change @ 128..=239 => usual * (1.0 + (f64::from(change) - 184.0) / 1024.0),
            _ => self.number(),
        }
    }

    pub(crate) fn numbers<const N: usize>(&mut self) -> [f64; N] {
        core::array::from_fn(|_| self.number())
    }

    /// A count of a few.
    pub(crate) fn few(&mut self, most: usize) -> usize {
        usize::from(self.byte()) % (most + 1)
    }

    /// A number of an enumeration, mostly within it.
    pub(crate) fn choice(&mut self, most: i32) -> i32 {
        match i32::from(self.byte()) {
            255 => i32::MIN,
            254 => i32::MAX,
            n => n % (most + 2),
        }
    }

    /// A yes or no, mostly.
    pub(crate) fn flag(&mut self) -> i32 {
        match self.byte() {
            255 => 2,
            n => i32::from(n & 1),
        }
    }

    pub(crate) fn text(&mut self, most: usize) -> Vec<u8> {
        let length = self.few(most).min(self.0.len());
        let (text, rest) = self.0.split_at(length);
        self.0 = rest;
        text.to_vec()
    }
}

/// A structure of the header, zeroed.
pub(crate) fn zeroed<T: Copy>() -> T {
    // SAFETY: structures of the header hold numbers, characters and pointers, for which zero is a value
    unsafe { core::mem::zeroed() }
}

/// An error structure of its own size.
pub(crate) fn error() -> GaugepointError {
    GaugepointError { struct_size: size_of::<GaugepointError>(), ..zeroed() }
}

/// A record of its own size, zeroed.
macro_rules! record {
    ($type:ty) => {{
        let mut record: $type = crate::feed::zeroed();
        record.struct_size = size_of::<$type>();
        record
    }};
}
pub(crate) use record;

/// A status is one of the published, never a fault of the library, and a refusal says why. Whether the call succeeded.
pub(crate) fn answered(status: i32, error: &GaugepointError) -> bool {
    assert!(ALL.iter().any(|s| s.code == status), "status {status}");
    assert_ne!(status, 904, "a panic: {}", text_of(&error.message));
    if status == 0 {
        assert_eq!(error.status, 0, "a success wrote an error");
        return true;
    }
    assert_eq!(error.status, status);
    assert!(!text_of(&error.reason).is_empty() && !text_of(&error.message).is_empty());
    false
}

/// Text up to its NUL; it must be UTF-8.
pub(crate) fn text_of(chars: &[core::ffi::c_char]) -> String {
    let bytes: Vec<u8> = chars.iter().map(|c| c.to_ne_bytes()[0]).take_while(|b| *b != 0).collect();
    assert!(bytes.len() < chars.len(), "a text without its NUL");
    String::from_utf8(bytes).expect("UTF-8")
}

/// A number is finite with success and NaN without.
pub(crate) fn number_or_nan(succeeded: bool, number: f64) {
    assert_eq!(number.is_finite(), succeeded, "{number}");
    assert!(succeeded || number.is_nan());
}

/// What a record holds, byte by byte.
pub(crate) fn bytes_of<R: Copy>(record: &R) -> Vec<u8> {
    // SAFETY: records of the header have no padding
    unsafe { core::slice::from_raw_parts((&raw const *record).cast(), size_of::<R>()) }.to_vec()
}
