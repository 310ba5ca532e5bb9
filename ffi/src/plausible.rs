//! The table of plausible values.

use crate::error::{Failure, GaugepointError};
use crate::guard::{kept, status};
use crate::record::{Record, record};
use crate::status::{Text, terminated};
use crate::text::{self, flag};
use core::ffi::c_char;
use core::ptr::null;
use gaugepoint::ErrorKind;
use gaugepoint::bounds::{Row, TABLE, Verdict, judge};

/// How a value stands to the table. What is impossible is a failure.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointPlausibility {
    /// Usual.
    Usual = 1,
    /// Possible, and odd.
    Odd = 2,
}

/// A row of the table of plausible values; see RECORDS at the head. Several rows may have one name.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointRow {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Name of the quantity.
    pub name: *const c_char,
    /// What it is called.
    pub label: *const c_char,
    /// Unit of a value.
    pub unit: *const c_char,
    /// What the ranges are multiples of, "bore" or "pin"; NULL when they stand in the unit themselves.
    pub of: *const c_char,
    /// Where the ranges come from.
    pub reason: *const c_char,
    /// What usually happened when a value is impossible.
    pub slips: *const c_char,
    /// Smallest possible value.
    pub possible_lower: f64,
    /// Largest possible value.
    pub possible_upper: f64,
    /// Smallest usual value.
    pub usual_lower: f64,
    /// Largest usual value.
    pub usual_upper: f64,
}

// SAFETY: a size, pointers and doubles, eight bytes each
unsafe impl Record for GaugepointRow {
    const SMALLEST: usize = 88;
}

/// Name, label, unit, of, reason, slips.
type Texts = [Text; 6];

#[expect(clippy::indexing_slicing, reason = "evaluated by the compiler")]
const fn texts() -> [Texts; TABLE.len()] {
    let (mut out, mut k) = ([[[0; 160]; 6]; TABLE.len()], 0);
    while k < TABLE.len() {
        let row = &TABLE[k];
        let of = match row.of {
            Some(of) => of,
            None => "",
        };
        let bound = &row.bound;
        out[k] = [
            terminated(row.name),
            terminated(bound.label),
            terminated(bound.unit),
            terminated(of),
            terminated(bound.reason),
            terminated(row.slips),
        ];
        k += 1;
    }
    out
}

static TEXTS: [Texts; TABLE.len()] = texts();

/// The rows one after the other: call with 0, 1, 2 ... until it fails with GAUGEPOINT_STATUS_OUT_OF_RANGE.
///
/// The ranges are common practice with a margin, and no maker's data.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_plausibility_row(
    index: usize,
    out: *mut GaugepointRow,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || match (TABLE.get(index), TEXTS.get(index)) {
            (Some(row), Some(texts)) => Ok(row_of(row, texts)),
            _ => Err(Failure::refused(ErrorKind::OutOfRange, "index", "the table has no more rows")),
        })
    }
}

/// Holds one value, in the unit of its rows, against the table.
///
/// `name` is that of a row, of `name_length` bytes. `diameter_mm` counts when `has_diameter` is 1: what relative rows refer
/// to, the bore (or, for a pressed pin, the pin). Without it only the other rows are used; a quantity that has relative
/// rows only needs it. `verdict` gets a GaugepointPlausibility; an impossible value fails, and the error says what was
/// probably meant where a slip explains it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_judge(
    name: *const c_char,
    name_length: usize,
    value: f64,
    has_diameter: i32,
    diameter_mm: f64,
    verdict: *mut i32,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("verdict", verdict), || {
            let name = text::name("name", name, name_length)?;
            let diameter = flag("has_diameter", has_diameter)?.then_some(diameter_mm);
            Ok(match judge(name, value, diameter)? {
                Verdict::Usual => GaugepointPlausibility::Usual as i32,
                _ => GaugepointPlausibility::Odd as i32,
            })
        })
    }
}

fn row_of(row: &Row, [name, label, unit, of, reason, slips]: &'static Texts) -> GaugepointRow {
    let text = |t: &'static Text| t.as_ptr().cast::<c_char>();
    GaugepointRow {
        struct_size: size_of::<GaugepointRow>(),
        name: text(name),
        label: text(label),
        unit: text(unit),
        of: if row.of.is_some() { text(of) } else { null() },
        reason: text(reason),
        slips: text(slips),
        possible_lower: row.bound.possible.0,
        possible_upper: row.bound.possible.1,
        usual_lower: row.bound.usual.0,
        usual_upper: row.bound.usual.1,
    }
}
