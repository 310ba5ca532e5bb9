//! Columns and results that lie anywhere in the memory of a caller, also one over another.

use crate::feed::{Feed, answered, error};
use core::ptr::null_mut;
use gaugepoint_c::batch::{
    GaugepointClearanceColumns, GaugepointClearancePlaces, GaugepointColumn, GaugepointStrainLaw,
    gaugepoint_clearances_strided,
};
use gaugepoint_c::columns::{gaugepoint_flat_count, gaugepoint_flat_parameter, gaugepoint_flat_strided};
use gaugepoint_c::flat::gaugepoint_bench_clearance_mm_array;

const WORDS: usize = 160;
const DOUBLE: usize = size_of::<f64>();
const STATUS: usize = size_of::<i32>();

/// Memory of a caller, aligned as doubles are.
type Memory = [u64; WORDS];

/// Where a column or a result has its rows: so many bytes into the memory, or at NULL.
#[derive(Clone, Copy)]
struct Place {
    offset: Option<usize>,
    stride: isize,
}

impl Place {
    fn new(feed: &mut Feed<'_>, rows: usize, width: usize) -> Self {
        let side_by_side = width.cast_signed();
        let choice = feed.byte();
        let stride = match choice % 8 {
            0..4 => side_by_side,
            4 => 24,
            5 => 0,
            6 => -side_by_side,
            _ => isize::from(feed.byte().cast_signed()),
        };
        let offset = 4 * usize::from(feed.byte()) + if choice < 224 { 0 } else { usize::from(choice % 4) };
        let last = offset.checked_add_signed(stride * (rows.max(1) - 1).cast_signed());
        let is_within = last.is_some_and(|last| offset.max(last) + width <= size_of::<Memory>());
        let stride = if is_within { stride } else { 0 };
        Place { offset: (choice < 255).then_some(offset), stride }
    }

    /// The place of its first row.
    fn within<T>(self, memory: *mut Memory) -> *mut T {
        self.offset.map_or(null_mut(), |offset| memory.wrapping_byte_add(offset).cast())
    }

    /// The places of its rows, none at NULL.
    fn rows<T>(self, memory: *mut Memory, rows: usize) -> impl Iterator<Item = *mut T> {
        let start = self.within::<T>(memory);
        let rows = if start.is_null() { 0 } else { rows.cast_signed() };
        (0..rows).map(move |row| start.wrapping_byte_offset(row * self.stride))
    }
}

/// A function of many rows.
#[derive(Clone, Copy, PartialEq)]
enum Of {
    Flat(i32),
    Array,
    Clearances,
}

/// Where the results of a call go: of each the first row and the stride, then the statuses.
struct Results {
    numbers: Vec<(*mut f64, isize)>,
    row_status: (*mut i32, isize),
}

impl Of {
    fn parameters_and_results(self) -> (usize, usize) {
        match self {
            Of::Flat(f) => ((0..).take_while(|k| !gaugepoint_flat_parameter(f, *k).is_null()).count(), 1),
            Of::Array => (2, 1),
            Of::Clearances => (5, 2),
        }
    }

    /// Status and number of refused rows.
    fn call(self, columns: &[GaugepointColumn], rows: usize, results: &Results) -> (i32, usize) {
        let (out, out_stride) = results.numbers[0];
        let (row_status, row_status_stride) = results.row_status;
        let (mut refused, mut e) = (0, error());
        // SAFETY: the contract of the header: every row of the columns and results is there
        let status = unsafe {
            match self {
                Of::Flat(function) => gaugepoint_flat_strided(
                    function,
                    columns.as_ptr(),
                    columns.len(),
                    rows,
                    out,
                    out_stride,
                    row_status,
                    row_status_stride,
                    &raw mut e,
                ),
                Of::Array => gaugepoint_bench_clearance_mm_array(
                    columns[0].values,
                    columns[1].values,
                    rows,
                    out,
                    row_status,
                    &raw mut e,
                ),
                Of::Clearances => {
                    let [bore_law, piston_law] = [11.4e-6, 20.5e-6].map(|per_k| GaugepointStrainLaw {
                        per_k,
                        per_k2: 0.0,
                        per_k3: 0.0,
                        from_c: -40.0,
                        to_c: 450.0,
                    });
                    let columns = GaugepointClearanceColumns {
                        bore_mm: columns[0],
                        piston_mm: columns[1],
                        parts_temperature_c: columns[2],
                        bore_temperature_c: columns[3],
                        piston_temperature_c: columns[4],
                    };
                    let (running_mm, running_stride) = results.numbers[1];
                    let places = GaugepointClearancePlaces {
                        bench_mm: out,
                        bench_stride: out_stride,
                        running_mm,
                        running_stride,
                        row_status,
                        row_status_stride,
                    };
                    gaugepoint_clearances_strided(
                        &raw const bore_law,
                        &raw const piston_law,
                        &raw const columns,
                        rows,
                        &raw const places,
                        &raw mut refused,
                        &raw mut e,
                    )
                }
            }
        };
        answered(status, &e);
        (status, refused)
    }
}

/// Results are those of the same rows in arrays of their own, and nothing else is written; or the call is refused for how its memory lies, and
/// nothing is written at all.
pub(crate) fn placed(feed: &mut Feed<'_>) {
    let of = match feed.byte() % 8 {
        0..5 => Of::Flat(1 + i32::from(feed.byte()) % gaugepoint_flat_count()),
        5 => Of::Array,
        _ => Of::Clearances,
    };
    let (parameters, results) = of.parameters_and_results();
    let (rows, with_status) = (feed.few(6), feed.flag() == 1);
    let place = |feed: &mut Feed<'_>, width: usize| {
        let place = Place::new(feed, rows, width);
        // an array has its rows side by side
        if of == Of::Array { Place { stride: width.cast_signed(), ..place } } else { place }
    };
    let columns: Vec<Place> = (0..parameters).map(|_| place(feed, DOUBLE)).collect();
    let numbers: Vec<Place> = (0..results)
        .map(|_| match feed.byte() {
            in_place @ 160.. => columns[usize::from(in_place) % parameters],
            _ => place(feed, DOUBLE),
        })
        .collect();
    let states = place(feed, STATUS);
    let states = if with_status { states } else { Place { offset: None, ..states } };

    let mut before: Memory = [u64::MAX; WORDS];
    for row in columns.iter().flat_map(|column| column.rows::<f64>(&raw mut before, rows)) {
        // SAFETY: a place is within the memory
        unsafe { row.write_unaligned(feed.number()) };
    }
    let mut memory = before;
    let within = &raw mut memory;
    let given: Vec<_> =
        columns.iter().map(|c| GaugepointColumn { values: c.within(within), stride: c.stride }).collect();
    let results = Results {
        numbers: numbers.iter().map(|place| (place.within(within), place.stride)).collect(),
        row_status: (states.within(within), states.stride),
    };
    let told = of.call(&given, rows, &results);
    let (alone, written) = apart(of, &columns, &numbers, states, rows, before);
    if told.0 == 0 {
        assert!(told == alone && memory == written, "{told:?} {alone:?}");
    } else {
        // a row that refuses all sets the results of clearances to NaN
        let as_alone = of == Of::Clearances && told == alone && memory == written;
        assert!(memory == before || as_alone, "{told:?} {alone:?}");
    }
}

/// The call with the same rows in arrays of their own, and the memory with what it gave.
fn apart(
    of: Of,
    columns: &[Place],
    numbers: &[Place],
    states: Place,
    rows: usize,
    mut memory: Memory,
) -> ((i32, usize), Memory) {
    let within = &raw mut memory;
    // SAFETY: a place is within the memory
    let read = |column: &Place| {
        column.rows(within, rows).map(|row: *mut f64| unsafe { row.read_unaligned() }).collect()
    };
    let inputs: Vec<Vec<f64>> = columns.iter().map(read).collect();
    let given: Vec<_> = inputs
        .iter()
        .map(|c| GaugepointColumn {
            values: if c.len() == rows { c.as_ptr() } else { core::ptr::null() },
            stride: DOUBLE.cast_signed(),
        })
        .collect();
    let mut out = vec![vec![0.0; rows]; numbers.len()];
    let mut row_status = vec![0; rows];
    let results = Results {
        numbers: out.iter_mut().map(|out| (out.as_mut_ptr(), DOUBLE.cast_signed())).collect(),
        row_status: (
            if states.offset.is_some() { row_status.as_mut_ptr() } else { null_mut() },
            STATUS.cast_signed(),
        ),
    };
    let told = of.call(&given, rows, &results);
    for (place, out) in numbers.iter().zip(out) {
        // SAFETY: as above
        place
            .rows(within, rows)
            .zip(out)
            .for_each(|(row, number): (*mut f64, f64)| unsafe { row.write_unaligned(number) });
    }
    // SAFETY: as above
    states
        .rows(within, rows)
        .zip(row_status)
        .for_each(|(row, state): (*mut i32, i32)| unsafe { row.write_unaligned(state) });
    (told, memory)
}
