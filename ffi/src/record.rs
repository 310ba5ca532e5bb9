//! Records: results of several numbers, in the caller's memory.

use crate::error::Failure;
use crate::guard::{Outs, Places};
use crate::status::{NULL_POINTER, STRUCT_SIZE};

/// No version of a record will be larger; memory that was not set is mostly refused by this.
const LARGEST: usize = 65536;

/// A record that starts with its size, which the caller sets.
///
/// # Safety
/// `#[repr(C)]` without padding, and the first field is `struct_size: usize`.
pub(crate) unsafe trait Record: Copy {
    /// Size in the first version: no caller has a smaller one.
    const SMALLEST: usize;
}

/// The place of a record; left as it was on failure.
pub(crate) struct RecordOut<R> {
    name: &'static str,
    place: *mut R,
}

pub(crate) fn record<R: Record>(name: &'static str, place: *mut R) -> RecordOut<R> {
    RecordOut { name, place }
}

impl<R> RecordOut<R> {
    /// # Safety
    /// `place` points to a record of any version.
    unsafe fn size(&self) -> usize {
        // SAFETY: the first field of every version
        unsafe { self.place.cast::<usize>().read() }
    }
}

impl<R: Record> Places for RecordOut<R> {
    unsafe fn clear(&self) {}

    unsafe fn check(&self) -> Result<(), Failure> {
        if self.place.is_null() {
            return Err(Failure::own(NULL_POINTER, self.name, NULL_POINTER.meaning));
        }
        // SAFETY: the caller's promise
        match (R::SMALLEST..=LARGEST).contains(&unsafe { self.size() }) {
            true => Ok(()),
            false => Err(Failure::own(STRUCT_SIZE, self.name, STRUCT_SIZE.meaning)),
        }
    }
}

impl<R: Record> Outs for RecordOut<R> {
    type Values = R;

    unsafe fn write(&self, values: R) {
        let head = size_of::<usize>();
        // SAFETY: `size` bytes are the caller's, as it said; both records are at least `end` long and do not overlap
        unsafe {
            let end = self.size().min(size_of::<R>());
            let (from, to) = ((&raw const values).cast::<u8>(), self.place.cast::<u8>());
            to.add(head).copy_from_nonoverlapping(from.add(head), end - head);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[repr(C)]
    #[derive(Clone, Copy)]
    struct Known {
        struct_size: usize,
        first: f64,
        second: f64,
    }

    // SAFETY: as the trait asks; `second` came later
    unsafe impl Record for Known {
        const SMALLEST: usize = 16;
    }

    /// Writes into memory that says it holds `size` bytes.
    fn written(size: usize) -> (Result<(), i32>, [f64; 3]) {
        #[repr(C)]
        struct Room {
            size: usize,
            rest: [f64; 3],
        }
        let mut room = Room { size, rest: [-1.0; 3] };
        let out = record::<Known>("known", (&raw mut room).cast());
        // SAFETY: there is room for more than a Known
        let checked = unsafe { out.check() }.map_err(|f| f.code());
        if checked.is_ok() {
            unsafe { out.write(Known { struct_size: 0, first: 1.0, second: 2.0 }) };
        }
        assert_eq!(room.size, size);
        (checked, room.rest)
    }

    #[test]
    fn a_record_is_written_as_far_as_both_sides_know_it() {
        assert_eq!(written(16), (Ok(()), [1.0, -1.0, -1.0]));
        assert_eq!(written(24), (Ok(()), [1.0, 2.0, -1.0]));
        assert_eq!(written(32), (Ok(()), [1.0, 2.0, -1.0]));
        for wrong in [0, 8, 15, LARGEST + 1, usize::MAX] {
            assert_eq!(written(wrong), (Err(STRUCT_SIZE.code), [-1.0; 3]));
        }
    }
}
