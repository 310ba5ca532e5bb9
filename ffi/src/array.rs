//! Arrays of numbers, and numbers that only some choices use.

use crate::error::Failure;
use crate::guard::{Outs, Places};
use crate::status::NULL_POINTER;
use crate::text::flag;
use core::slice;
use gaugepoint::ErrorKind;

/// Most numbers that one array may hold; a count beyond it is a mistake, and is refused before anything is read.
pub const GAUGEPOINT_MOST_VALUES: usize = 16_777_216;

/// The caller's numbers.
///
/// # Safety
/// `values` is NULL or points to `count` values that do not change while they are used.
pub(crate) unsafe fn array<'a, T>(
    field: &'static str,
    values: *const T,
    count: Option<usize>,
) -> Result<&'a [T], Failure> {
    if values.is_null() {
        return Err(Failure::own(NULL_POINTER, field, NULL_POINTER.meaning));
    }
    // before the slice is made: no slice is longer than half of the memory
    match count.filter(|count| *count <= GAUGEPOINT_MOST_VALUES) {
        // hosts give any address to an empty array
        Some(0) => Ok(&[]),
        // SAFETY: the caller's promise
        Some(count) => Ok(unsafe { slice::from_raw_parts(values, count) }),
        None => Err(Failure::refused(ErrorKind::OutOfRange, field, "more than 16777216 values")),
    }
}

/// An array that may be left out.
///
/// # Safety
/// As [`array`].
pub(crate) unsafe fn rows<'a, T>(
    field: &'static str,
    values: *const T,
    count: usize,
) -> Result<&'a [T], Failure> {
    match count {
        0 => Ok(&[]),
        // SAFETY: the caller's promise
        _ => unsafe { array(field, values, Some(count)) },
    }
}

/// A record that the caller passes in.
///
/// # Safety
/// `record` is NULL or points to what its type says.
pub(crate) unsafe fn given<T: Copy>(field: &'static str, record: *const T) -> Result<T, Failure> {
    match record.is_null() {
        true => Err(Failure::own(NULL_POINTER, field, NULL_POINTER.meaning)),
        // SAFETY: the caller's promise
        false => Ok(unsafe { record.read() }),
    }
}

/// A number that belongs to some choices: there with `has` 1, and only with those.
pub(crate) fn number_of_choice(
    (has_field, has): (&'static str, i32),
    number: f64,
    needed: bool,
) -> Result<f64, Failure> {
    match (flag(has_field, has)?, needed) {
        (true, true) => Ok(number),
        (false, false) => Ok(0.0),
        (false, true) => {
            Err(Failure::refused(ErrorKind::MissingField, has_field, "this choice needs its number"))
        }
        (true, false) => {
            Err(Failure::refused(ErrorKind::Contradiction, has_field, "this choice does not use the number"))
        }
    }
}

/// The place of an array of results; left as it was on failure.
pub(crate) struct ArrayOut<T> {
    name: &'static str,
    place: *mut T,
    room: usize,
}

/// An array that the caller has `room` for; results that need more are refused by [`fitting`].
pub(crate) fn array_out<T>(name: &'static str, place: *mut T, room: usize) -> ArrayOut<T> {
    ArrayOut { name, place, room }
}

/// Refuses more results than the caller has room for.
pub(crate) fn fitting<T>(values: Vec<T>, field: &'static str, room: usize) -> Result<Vec<T>, Failure> {
    match values.len() <= room {
        true => Ok(values),
        false => Err(Failure::refused(
            ErrorKind::Contradiction,
            field,
            "there are more results than room for them",
        )),
    }
}

impl<T: Copy> Places for ArrayOut<T> {
    unsafe fn clear(&self) {}

    unsafe fn check(&self) -> Result<(), Failure> {
        match self.place.is_null() {
            true => Err(Failure::own(NULL_POINTER, self.name, NULL_POINTER.meaning)),
            false => Ok(()),
        }
    }
}

impl<T: Copy> Outs for ArrayOut<T> {
    type Values = Vec<T>;

    unsafe fn write(&self, values: Vec<T>) {
        let count = values.len().min(self.room);
        if count > 0 {
            // SAFETY: the caller has `room` places, as it said; its array is its own
            unsafe { self.place.copy_from_nonoverlapping(values.as_ptr(), count) }
        }
    }
}
