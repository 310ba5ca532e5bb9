//! Flat functions of many rows, and what a host can list of them.

use crate::array::{GAUGEPOINT_MOST_VALUES, array};
use crate::batch::GaugepointColumn;
use crate::error::{Failure, GaugepointError};
use crate::extent::{Arranged, Arrangement, DOUBLE, Extent, STATUS, at};
use crate::flat::{TEXTS, Texts};
use crate::guard::{plain, status};
use core::ffi::{CStr, c_char};
use core::slice;
use gaugepoint::ErrorKind;
use gaugepoint::flat::{Column, Function, TABLE};

/// Number of the flat functions, which are numbered from 1; a number never changes its function.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_flat_count() -> i32 {
    plain(0, || i32::try_from(TABLE.len()).unwrap_or(0))
}

/// Name of a flat function without "gaugepoint_"; NULL of a number that has none.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_flat_name(function: i32) -> *const c_char {
    plain(core::ptr::null(), || text(texts_of(function).map(|texts| texts.name)))
}

/// What a flat function computes, its ranges and its source; NULL of a number that has none.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_flat_meaning(function: i32) -> *const c_char {
    plain(core::ptr::null(), || text(texts_of(function).map(|texts| texts.meaning)))
}

/// Name of a parameter of a flat function, which are counted from 0 and end in their units; NULL after the last.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_flat_parameter(function: i32, index: i32) -> *const c_char {
    plain(core::ptr::null(), || {
        let parameter = || texts_of(function)?.parameters.get(usize::try_from(index).ok()?).copied();
        text(parameter())
    })
}

/// A flat function, by its number, of each of `count` rows whose numbers need not stand side by side.
///
/// `columns` has one for each parameter, `column_count` of them. Strides are bytes to the next row: any number for a column, 0 giving every row the
/// same number; those of the results are not within one. Nothing needs alignment. Otherwise as the functions that end in _array.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_flat_strided(
    function: i32,
    columns: *const GaugepointColumn,
    column_count: usize,
    count: usize,
    out: *mut f64,
    out_stride: isize,
    row_status: *mut i32,
    row_status_stride: isize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (), || {
            let function = place(function).and_then(|place| TABLE.get(place));
            let function = function.ok_or_else(|| {
                Failure::refused(ErrorKind::UnknownChoice, "function", "no function has this number")
            })?;
            let columns = array("columns", columns, Some(column_count))?;
            if columns.len() != function.parameters.len() {
                let reason = "not one for each parameter of the function";
                return Err(Failure::refused(ErrorKind::Contradiction, "column_count", reason));
            }
            Rows { function, columns, count, out, out_stride, row_status, row_status_stride }.run()
        })
    }
}

fn place(function: i32) -> Option<usize> {
    usize::try_from(function).ok()?.checked_sub(1)
}

fn texts_of(function: i32) -> Option<&'static Texts> {
    TEXTS.get(place(function)?)
}

fn text(text: Option<&'static CStr>) -> *const c_char {
    text.map_or(core::ptr::null(), CStr::as_ptr)
}

/// A function of columns whose numbers stand side by side.
///
/// # Safety
/// Each pointer is NULL or points to what the header says.
pub(crate) unsafe fn each<const N: usize>(
    function: &Function,
    columns: [*const f64; N],
    count: usize,
    out: *mut f64,
    row_status: *mut i32,
) -> Result<(), Failure> {
    let columns = &columns.map(|values| GaugepointColumn { values, stride: DOUBLE });
    let rows =
        Rows { function, columns, count, out, out_stride: DOUBLE, row_status, row_status_stride: STATUS };
    // SAFETY: the caller's promise
    unsafe { rows.run() }
}

/// Most parameters of a function.
const MOST: usize = 11;
/// Rows that are collected at a time.
const PIECE: usize = 256;
const EMPTY: Column<'_> = Column { values: &[], stride: 1 };

struct Rows<'a> {
    function: &'a Function,
    columns: &'a [GaugepointColumn],
    count: usize,
    out: *mut f64,
    out_stride: isize,
    row_status: *mut i32,
    row_status_stride: isize,
}

/// What was collected, and its results.
struct Piece {
    columns: [[f64; PIECE]; MOST],
    out: [f64; PIECE],
    status: [i32; PIECE],
}

impl Rows<'_> {
    /// # Safety
    /// Each pointer is NULL or points to what the header says.
    unsafe fn run(&self) -> Result<(), Failure> {
        if self.count > GAUGEPOINT_MOST_VALUES {
            return Err(Failure::refused(ErrorKind::OutOfRange, "count", "more than 16777216 values"));
        }
        // SAFETY: the caller's promise; where it is side by side nothing overlaps
        unsafe {
            match self.arranged()? {
                Arrangement::SideBySide => self.whole(),
                Arrangement::Apart | Arrangement::InPlace => self.piece_by_piece(),
            }
        }
    }

    /// Refuses NULL and overlapping memory.
    fn arranged(&self) -> Result<Arrangement, Failure> {
        let out = Extent::of("out", self.out.cast_const(), self.out_stride, self.count)?;
        match self.row_status.is_null() {
            true => self.beside(&[out]),
            false => {
                let status = self.row_status.cast_const();
                self.beside(&[out, Extent::of("row_status", status, self.row_status_stride, self.count)?])
            }
        }
    }

    fn beside(&self, results: &[Extent]) -> Result<Arrangement, Failure> {
        let mut arranged = Arranged::new(results, self.count)?;
        for (name, column) in self.function.parameters.iter().zip(self.columns) {
            arranged.beside(&Extent::of(name, column.values, column.stride, self.count)?)?;
        }
        Ok(arranged.arrangement())
    }

    /// All rows as slices.
    ///
    /// # Safety
    /// The rows are side by side, aligned, and do not overlap.
    unsafe fn whole(&self) -> Result<(), Failure> {
        let mut columns = [EMPTY; MOST];
        for (column, from) in columns.iter_mut().zip(self.columns) {
            // SAFETY: the caller's promise
            column.values = unsafe { slice::from_raw_parts(from.values, self.count) };
        }
        let columns = columns.get(..self.columns.len()).unwrap_or_default();
        // SAFETY: the caller's promise
        let out = unsafe { slice::from_raw_parts_mut(self.out, self.count) };
        let status = (!self.row_status.is_null())
            // SAFETY: the caller's promise
            .then(|| unsafe { slice::from_raw_parts_mut(self.row_status, self.count) });
        Ok(self.function.each(columns, out, status)?)
    }

    /// Rows that do not stand side by side, collected piece by piece. Without statuses all are checked before any is written.
    ///
    /// # Safety
    /// As for [`Rows::run`]; a result overlaps a column only element for element.
    unsafe fn piece_by_piece(&self) -> Result<(), Failure> {
        let mut piece = Piece { columns: [[0.0; PIECE]; MOST], out: [0.0; PIECE], status: [0; PIECE] };
        let pieces = || (0..self.count).step_by(PIECE).map(|first| (first, PIECE.min(self.count - first)));
        if self.row_status.is_null() {
            for (first, length) in pieces() {
                // SAFETY: the caller's promise
                unsafe { piece.collect(self, first, length) };
                self.function.check_rows(
                    self.given(&piece.columns.each_ref().map(|c| column(c, length))),
                    length,
                    first,
                )?;
            }
        }
        for (first, length) in pieces() {
            // SAFETY: the caller's promise
            unsafe { piece.collect(self, first, length) };
            let Piece { columns, out, status } = &mut piece;
            let columns = columns.each_ref().map(|c| column(c, length));
            let (out, status) = (out.get_mut(..length).unwrap_or_default(), status.get_mut(..length));
            self.function.each(self.given(&columns), out, status)?;
            // SAFETY: the caller's promise
            unsafe { piece.hand_out(self, first, length) };
        }
        Ok(())
    }

    /// As many as the function has parameters.
    fn given<'c>(&self, columns: &'c [Column<'c>]) -> &'c [Column<'c>] {
        columns.get(..self.columns.len()).unwrap_or_default()
    }
}

fn column(values: &[f64], length: usize) -> Column<'_> {
    Column { values: values.get(..length).unwrap_or_default(), stride: 1 }
}

impl Piece {
    /// # Safety
    /// The columns have these rows.
    unsafe fn collect(&mut self, rows: &Rows<'_>, first: usize, length: usize) {
        for (column, from) in self.columns.iter_mut().zip(rows.columns) {
            for (row, value) in (first..first + length).zip(column) {
                // SAFETY: the caller's promise; it need not be aligned
                *value = unsafe { at(from.values, from.stride, row).read_unaligned() };
            }
        }
    }

    /// # Safety
    /// The places have these rows.
    unsafe fn hand_out(&self, rows: &Rows<'_>, first: usize, length: usize) {
        for (row, (out, status)) in (first..first + length).zip(self.out.iter().zip(&self.status)) {
            // SAFETY: the caller's promise; they need not be aligned
            unsafe {
                at(rows.out, rows.out_stride, row).cast_mut().write_unaligned(*out);
                if !rows.row_status.is_null() {
                    at(rows.row_status, rows.row_status_stride, row).cast_mut().write_unaligned(*status);
                }
            }
        }
    }
}
