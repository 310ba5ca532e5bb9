//! How the columns and results of many rows lie in memory.

use crate::error::Failure;
use crate::status::NULL_POINTER;
use gaugepoint::ErrorKind;

/// Bytes from a double to the next.
pub(crate) const DOUBLE: isize = size_of::<f64>().cast_signed();
/// Bytes from a status to the next.
pub(crate) const STATUS: isize = size_of::<i32>().cast_signed();

/// How columns and results lie in memory.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Arrangement {
    /// as slices that do not overlap
    SideBySide,
    /// otherwise, no result in the place of a column
    Apart,
    /// a result takes the place of a column
    InPlace,
}

/// Memory that a column reaches over.
#[derive(Clone, Copy)]
pub(crate) struct Extent {
    name: &'static str,
    start: usize,
    /// address after the last byte, and of the first
    first: usize,
    end: usize,
    stride: isize,
    width: usize,
}

impl Extent {
    pub(crate) fn of<T>(
        name: &'static str,
        start: *const T,
        stride: isize,
        count: usize,
    ) -> Result<Self, Failure> {
        if start.is_null() {
            return Err(Failure::own(NULL_POINTER, name, NULL_POINTER.meaning));
        }
        let beyond = || Failure::refused(ErrorKind::OutOfRange, name, "the stride leads out of memory");
        let (start, width) = (start.addr(), size_of::<T>());
        let steps = isize::try_from(count.saturating_sub(1)).map_err(|_| beyond())?;
        let last =
            start.checked_add_signed(stride.checked_mul(steps).ok_or_else(beyond)?).ok_or_else(beyond)?;
        let end = start.max(last).checked_add(width).ok_or_else(beyond)?;
        // no object is longer than that
        match isize::try_from(end - start.min(last)) {
            Ok(_) => Ok(Extent { name, start, first: start.min(last), end, stride, width }),
            Err(_) => Err(beyond()),
        }
    }

    /// Do no two rows of results share a byte?
    fn is_apart(&self, count: usize) -> bool {
        count < 2 || self.stride.unsigned_abs() >= self.width
    }

    fn is_disjoint(&self, other: &Extent) -> bool {
        self.end <= other.first || other.end <= self.first
    }

    /// Do both alternate without sharing a byte, as the fields of structures do?
    fn alternates(&self, other: &Extent) -> bool {
        let step = self.stride.unsigned_abs();
        let gap = self.start.wrapping_sub(other.start).cast_signed().checked_rem_euclid(step.cast_signed());
        let gap = gap.map_or(0, isize::unsigned_abs);
        self.stride == other.stride && gap >= other.width && gap + self.width <= step
    }

    /// Is one the other, element for element?
    fn is_in_place(&self, other: &Extent) -> bool {
        (self.start, self.stride, self.width) == (other.start, other.stride, other.width)
    }

    /// Is it a slice? Widths are powers of two: a division here would cost as much as the rest of a call.
    fn is_slice(&self) -> bool {
        self.stride == self.width.cast_signed() && self.start & (self.width - 1) == 0
    }
}

/// Results, and the columns that were looked at beside them.
pub(crate) struct Arranged<'a> {
    results: &'a [Extent],
    count: usize,
    slices: bool,
    apart: bool,
    in_place: bool,
}

impl<'a> Arranged<'a> {
    /// Refuses results that overlap.
    pub(crate) fn new(results: &'a [Extent], count: usize) -> Result<Self, Failure> {
        // hosts give the same address to all empty arrays
        if count > 0 {
            for (k, result) in results.iter().enumerate() {
                if !result.is_apart(count) {
                    return Err(overlap(result, "its rows overlap each other"));
                }
                let among = |other: &Extent| result.is_disjoint(other) || result.alternates(other);
                if !results.iter().take(k).all(among) {
                    return Err(overlap(result, "it overlaps other results"));
                }
            }
        }
        let slices = results.iter().all(Extent::is_slice);
        Ok(Arranged { results, count, slices, apart: true, in_place: false })
    }

    /// Refuses a column that a result overlaps otherwise than element for element.
    pub(crate) fn beside(&mut self, column: &Extent) -> Result<(), Failure> {
        self.slices &= column.is_slice();
        if self.count > 0 {
            for result in self.results.iter().filter(|result| !result.is_disjoint(column)) {
                self.apart = false;
                let in_place = result.is_in_place(column);
                if !in_place && !result.alternates(column) {
                    return Err(overlap(result, "it overlaps a column, and not element for element"));
                }
                self.in_place |= in_place;
            }
        }
        Ok(())
    }

    pub(crate) fn arrangement(&self) -> Arrangement {
        match (self.in_place, self.slices && self.apart && self.count > 0) {
            (true, _) => Arrangement::InPlace,
            (false, true) => Arrangement::SideBySide,
            (false, false) => Arrangement::Apart,
        }
    }
}

fn overlap(result: &Extent, reason: &'static str) -> Failure {
    Failure::refused(ErrorKind::Contradiction, result.name, reason)
}

/// The element of a row.
pub(crate) fn at<T>(start: *const T, stride: isize, row: usize) -> *const T {
    start.wrapping_byte_offset(stride.wrapping_mul(row.cast_signed()))
}
