//! Many rows at once.

use crate::array::{GAUGEPOINT_MOST_VALUES, given};
use crate::error::{Failure, GaugepointError};
use crate::extent::{Arranged, Arrangement, DOUBLE, Extent, STATUS, at};
use crate::guard::{kept, status};
use core::slice;
use gaugepoint::batch::{Batch, COLUMNS, Columns, Results};
use gaugepoint::growth::StrainLaw;
use gaugepoint::{Error, ErrorKind};

/// Strain from 20 C: per_k d + per_k2 d^2 + per_k3 d^3 with d = T - 20 C. A mean coefficient a from 20 C is {a, 0, 0, -40, 450}.
///
/// A plain structure of five doubles.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointStrainLaw {
    /// Coefficient of the first power, 1/K.
    pub per_k: f64,
    /// Coefficient of the second power, 1/K2.
    pub per_k2: f64,
    /// Coefficient of the third power, 1/K3.
    pub per_k3: f64,
    /// Lowest temperature at which the law holds, at most 20 C.
    pub from_c: f64,
    /// Highest temperature at which the law holds, at least 20 C.
    pub to_c: f64,
}

/// A column of numbers that need not stand side by side.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointColumn {
    /// The number of the first row.
    pub values: *const f64,
    /// Bytes from a row to the next: any number; 0 gives every row the same number.
    pub stride: isize,
}

/// The columns of gaugepoint_clearances_strided. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointClearanceColumns {
    /// Bore as it was measured, mm: its diameter at parts_temperature_c.
    pub bore_mm: GaugepointColumn,
    /// Piston as it was measured, mm: its diameter at parts_temperature_c.
    pub piston_mm: GaugepointColumn,
    /// Temperature of both parts when they were measured.
    pub parts_temperature_c: GaugepointColumn,
    /// Temperature of the bore in the running engine.
    pub bore_temperature_c: GaugepointColumn,
    /// Temperature of the piston in the running engine.
    pub piston_temperature_c: GaugepointColumn,
}

/// Where the results of gaugepoint_clearances_strided go. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointClearancePlaces {
    /// Clearance at 20 C over the diameter, mm; of the first row.
    pub bench_mm: *mut f64,
    /// Bytes to the next row; not within a double.
    pub bench_stride: isize,
    /// Clearance of the freely growing parts over the diameter, mm; of the first row.
    pub running_mm: *mut f64,
    /// Bytes to the next row; not within a double.
    pub running_stride: isize,
    /// Status of the first row; NULL when statuses are not wanted.
    pub row_status: *mut i32,
    /// Bytes to the next row; not within an int32_t.
    pub row_status_stride: isize,
}

/// Clearance on the bench and running, row by row, from diameters and temperatures in arrays of `count`.
///
/// bore_mm and piston_mm are diameters at parts_temperature_c, the temperature of both parts when they were measured (-5 C to 60 C).
/// bench_mm is the clearance at 20 C; running_mm that of the freely growing parts at bore_temperature_c and piston_temperature_c (-40 C to
/// 450 C). Each row has the bits of the functions of one row.
///
/// With `row_status`, each row gets its own: GAUGEPOINT_STATUS_OK, or why it is refused and its results are NaN; the others are computed,
/// and the call returns GAUGEPOINT_STATUS_OK with the number of refused rows in `refused`. Without (NULL), the first refused row
/// refuses the call, its column and place are in the error ("bore_mm/3"), and every result is NaN. Results may take the place of a column,
/// element for element; they do not overlap otherwise. Then all rows are read before any is computed, and a call that is refused
/// writes nothing, so that the column is not lost. Nothing is written either when the arguments themselves are refused.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_clearances(
    bore_law: *const GaugepointStrainLaw,
    piston_law: *const GaugepointStrainLaw,
    bore_mm: *const f64,
    piston_mm: *const f64,
    parts_temperature_c: *const f64,
    bore_temperature_c: *const f64,
    piston_temperature_c: *const f64,
    count: usize,
    bench_mm: *mut f64,
    running_mm: *mut f64,
    row_status: *mut i32,
    refused: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("refused", refused), || {
            let columns = [bore_mm, piston_mm, parts_temperature_c, bore_temperature_c, piston_temperature_c];
            let columns = columns.map(|values| GaugepointColumn { values, stride: DOUBLE });
            let places = GaugepointClearancePlaces {
                bench_mm,
                bench_stride: DOUBLE,
                running_mm,
                running_stride: DOUBLE,
                row_status,
                row_status_stride: STATUS,
            };
            rows(bore_law, piston_law, columns, count, places)
        })
    }
}

/// The same with numbers that need not stand side by side: the fields of an array of structures, every second row, one temperature for
/// all. They need no alignment. Slower than gaugepoint_clearances, about by what it costs to collect them.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_clearances_strided(
    bore_law: *const GaugepointStrainLaw,
    piston_law: *const GaugepointStrainLaw,
    columns: *const GaugepointClearanceColumns,
    count: usize,
    places: *const GaugepointClearancePlaces,
    refused: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("refused", refused), || {
            let (columns, places) = (given("columns", columns)?, given("places", places)?);
            let columns = [
                columns.bore_mm,
                columns.piston_mm,
                columns.parts_temperature_c,
                columns.bore_temperature_c,
                columns.piston_temperature_c,
            ];
            rows(bore_law, piston_law, columns, count, places)
        })
    }
}

/// The rows of a call.
///
/// # Safety
/// Each pointer is NULL or points to what the header says.
unsafe fn rows(
    bore_law: *const GaugepointStrainLaw,
    piston_law: *const GaugepointStrainLaw,
    columns: [GaugepointColumn; 5],
    count: usize,
    places: GaugepointClearancePlaces,
) -> Result<usize, Failure> {
    // SAFETY: the caller's promise
    let laws = unsafe { [law("bore_law", bore_law)?, law("piston_law", piston_law)?] };
    let batch = Batch::new(laws[0], laws[1]);
    if count > GAUGEPOINT_MOST_VALUES {
        return Err(Failure::refused(ErrorKind::OutOfRange, "count", "more than 16777216 values"));
    }
    let rows = Rows { columns, count, places };
    // SAFETY: the caller's promise; where it is side by side nothing overlaps
    unsafe {
        match rows.check()? {
            Arrangement::SideBySide => whole(&batch, &rows),
            arrangement => piece_by_piece(&batch, &rows, arrangement == Arrangement::InPlace),
        }
    }
}

unsafe fn law(field: &'static str, law: *const GaugepointStrainLaw) -> Result<StrainLaw, Failure> {
    // SAFETY: the caller's promise
    let law = unsafe { given(field, law)? };
    let checked = StrainLaw::cubic(law.per_k, law.per_k2, law.per_k3, law.from_c, law.to_c);
    Ok(checked.map_err(|error| error.under(field))?)
}

struct Rows {
    columns: [GaugepointColumn; 5],
    count: usize,
    places: GaugepointClearancePlaces,
}

impl Rows {
    /// Refuses NULL and overlapping memory.
    fn check(&self) -> Result<Arrangement, Failure> {
        let Rows { columns, count, places } = self;
        let mut results = vec![
            Extent::of("bench_mm", places.bench_mm.cast_const(), places.bench_stride, *count)?,
            Extent::of("running_mm", places.running_mm.cast_const(), places.running_stride, *count)?,
        ];
        if !places.row_status.is_null() {
            results.push(Extent::of(
                "row_status",
                places.row_status.cast_const(),
                places.row_status_stride,
                *count,
            )?);
        }
        let mut arranged = Arranged::new(&results, *count)?;
        for (name, column) in COLUMNS.into_iter().zip(columns) {
            arranged.beside(&Extent::of(name, column.values, column.stride, *count)?)?;
        }
        Ok(arranged.arrangement())
    }
}

/// All rows as slices.
///
/// # Safety
/// The rows are side by side, aligned, and do not overlap.
unsafe fn whole(batch: &Batch, rows: &Rows) -> Result<usize, Failure> {
    let Rows { columns, count, places } = rows;
    // SAFETY: the caller's promise
    let [b, p, t, tb, tp] = columns.map(|column| unsafe { slice::from_raw_parts(column.values, *count) });
    let columns = Columns {
        bore_mm: b,
        piston_mm: p,
        parts_temperature_c: t,
        bore_temperature_c: tb,
        piston_temperature_c: tp,
    };
    // SAFETY: the caller's promise
    let (bench_mm, running_mm) = unsafe {
        (
            slice::from_raw_parts_mut(places.bench_mm, *count),
            slice::from_raw_parts_mut(places.running_mm, *count),
        )
    };
    let status = (!places.row_status.is_null())
        // SAFETY: the caller's promise
        .then(|| unsafe { slice::from_raw_parts_mut(places.row_status, *count) });
    let without_status = status.is_none();
    let results = Results { bench_mm: &mut *bench_mm, running_mm: &mut *running_mm, status };
    let refused = batch.clearances(columns, results)?;
    if refused > 0 && without_status {
        bench_mm.fill(f64::NAN);
        running_mm.fill(f64::NAN);
        refuse_all(batch, columns, 0)?;
    }
    Ok(refused)
}

/// Refuses all rows because of one of them.
fn refuse_all(batch: &Batch, columns: Columns<'_>, first: usize) -> Result<(), Failure> {
    if batch.count_refused(columns)? == 0 {
        return Ok(());
    }
    match batch.refused(columns, first, 1).pop() {
        Some(refused) => Err(Error::into(refused.error)),
        None => Ok(()),
    }
}

/// Rows that are collected at a time.
const PIECE: usize = 256;

/// What was collected, and its results.
struct Piece {
    columns: [[f64; PIECE]; 5],
    results: [[f64; PIECE]; 2],
    status: [i32; PIECE],
}

/// Rows that do not stand side by side, collected piece by piece.
///
/// # Safety
/// As for [`rows`]; a result overlaps a column only element for element.
unsafe fn piece_by_piece(batch: &Batch, rows: &Rows, in_place: bool) -> Result<usize, Failure> {
    let mut piece = Piece { columns: [[0.0; PIECE]; 5], results: [[0.0; PIECE]; 2], status: [0; PIECE] };
    let pieces = || (0..rows.count).step_by(PIECE).map(|first| (first, PIECE.min(rows.count - first)));
    let without_status = rows.places.row_status.is_null();
    if without_status && in_place {
        for (first, length) in pieces() {
            // SAFETY: the caller's promise
            unsafe { piece.collect(rows, first, length) };
            refuse_all(batch, piece.split(length).0, first)?;
        }
    }
    let mut refused = 0;
    for (first, length) in pieces() {
        // SAFETY: the caller's promise
        unsafe { piece.collect(rows, first, length) };
        let (columns, results) = piece.split(length);
        let here = batch.clearances(columns, results)?;
        if here > 0 && without_status {
            piece.results = [[f64::NAN; PIECE]; 2];
            for (first, length) in pieces() {
                // SAFETY: the caller's promise
                unsafe { piece.hand_out(&rows.places, first, length) };
            }
            refuse_all(batch, piece.split(length).0, first)?;
        }
        refused += here;
        // SAFETY: the caller's promise
        unsafe { piece.hand_out(&rows.places, first, length) };
    }
    Ok(refused)
}

impl Piece {
    /// # Safety
    /// The columns have these rows.
    unsafe fn collect(&mut self, rows: &Rows, first: usize, length: usize) {
        for (column, from) in self.columns.iter_mut().zip(&rows.columns) {
            for (row, value) in (first..first + length).zip(column) {
                // SAFETY: the caller's promise; it need not be aligned
                *value = unsafe { at(from.values, from.stride, row).read_unaligned() };
            }
        }
    }

    fn split(&mut self, length: usize) -> (Columns<'_>, Results<'_>) {
        let [b, p, t, tb, tp] = self.columns.each_ref().map(|c| c.get(..length).unwrap_or_default());
        let [bench, running] = self.results.each_mut().map(|r| r.get_mut(..length).unwrap_or_default());
        let columns = Columns {
            bore_mm: b,
            piston_mm: p,
            parts_temperature_c: t,
            bore_temperature_c: tb,
            piston_temperature_c: tp,
        };
        let status = self.status.get_mut(..length);
        (columns, Results { bench_mm: bench, running_mm: running, status })
    }

    /// # Safety
    /// The places have these rows.
    unsafe fn hand_out(&self, places: &GaugepointClearancePlaces, first: usize, length: usize) {
        let [bench, running] = &self.results;
        let numbers = bench.iter().zip(running).zip(&self.status);
        for (row, ((bench, running), status)) in (first..first + length).zip(numbers) {
            // SAFETY: the caller's promise; they need not be aligned
            unsafe {
                at(places.bench_mm, places.bench_stride, row).cast_mut().write_unaligned(*bench);
                at(places.running_mm, places.running_stride, row).cast_mut().write_unaligned(*running);
                if !places.row_status.is_null() {
                    at(places.row_status, places.row_status_stride, row).cast_mut().write_unaligned(*status);
                }
            }
        }
    }
}
