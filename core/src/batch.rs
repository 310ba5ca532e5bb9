//! Many rows at once: readings of bore and piston with three temperatures to bench and running clearance.
//!
//! Each row has the bits of the scalar functions ([`crate::size`], [`crate::clearance`]); rows are computed side by side in the widest
//! instructions of the machine ([`crate::wide`]). See the page `batch.md` of the documentation, which is [`crate::batch::page`].

use crate::bounds::{self, Bound};
use crate::calc::Formula;
use crate::clearance::{Bench, Running};
use crate::error::{Error, ErrorKind};
use crate::growth::{CubicStrain, StrainLaw};
use crate::size::{MicrometerSize, REFERENCE_TEMPERATURE_C};
use crate::wide::{Columnar, Width};

#[doc = include_str!("../docs/batch.md")]
pub mod page {}

/// Names of the five columns, as errors have them.
pub const COLUMNS: [&str; 5] =
    ["bore_mm", "piston_mm", "parts_temperature_c", "bore_temperature_c", "piston_temperature_c"];

/// The rows, column by column; all columns are of one length.
#[derive(Debug, Clone, Copy)]
pub struct Columns<'a> {
    /// Bore as it was measured, mm: its diameter at [`Columns::parts_temperature_c`]. 10 mm to 1100 mm.
    pub bore_mm: &'a [f64],
    /// Piston as it was measured, mm: its diameter at [`Columns::parts_temperature_c`]. 10 mm to 1100 mm.
    pub piston_mm: &'a [f64],
    /// Temperature of both parts when they were measured. -5 C to 60 C.
    pub parts_temperature_c: &'a [f64],
    /// Temperature of the bore in the running engine. -40 C to 450 C.
    pub bore_temperature_c: &'a [f64],
    /// Temperature of the piston in the running engine. -40 C to 450 C.
    pub piston_temperature_c: &'a [f64],
}

/// Where the results go, each as long as a column.
#[derive(Debug)]
pub struct Results<'a> {
    /// Clearance at 20 C over the diameter, mm; NaN where the row is refused.
    pub bench_mm: &'a mut [f64],
    /// Clearance of the freely growing parts over the diameter, mm; NaN where the row is refused.
    pub running_mm: &'a mut [f64],
    /// 0, or the number of the kind of refusal ([`ErrorKind::code`]).
    pub status: Option<&'a mut [i32]>,
}

/// A refused row.
#[derive(Debug, Clone, PartialEq)]
pub struct Refused {
    /// Its place, from 0.
    pub row: usize,
    /// Why; its field is column and place: `bore_mm/3`.
    pub error: Error,
}

/// The two laws of growth with what the kernel needs of them.
///
/// ```
/// use gaugepoint::batch::{Batch, Columns, Results};
/// use gaugepoint::growth::StrainLaw;
/// let batch = Batch::new(StrainLaw::mean(11.4e-6)?, StrainLaw::mean(20.5e-6)?);
/// let columns = Columns {
///     bore_mm: &[86.25, 86.25],
///     piston_mm: &[86.125, 3.39],
///     parts_temperature_c: &[20.0, 20.0],
///     bore_temperature_c: &[110.0, 110.0],
///     piston_temperature_c: &[120.0, 120.0],
/// };
/// let (mut bench_mm, mut running_mm) = ([0.0; 2], [0.0; 2]);
/// let results = Results { bench_mm: &mut bench_mm, running_mm: &mut running_mm, status: None };
/// assert_eq!(batch.clearances(columns, results)?, 1);
/// assert_eq!(bench_mm[0], 0.125);
/// assert!(bench_mm[1].is_nan() && running_mm[1].is_nan());
/// let refused = batch.refused(columns, 0, 5);
/// assert_eq!(refused[0].error.field(), "piston_mm/1");
/// # Ok::<(), gaugepoint::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct Batch {
    laws: Laws,
    width: Width,
}

#[derive(Debug, Clone, Copy)]
struct Laws {
    bore: StrainLaw,
    piston: StrainLaw,
    accepted: Accepted,
}

impl Batch {
    /// Rows of one pair of materials.
    #[must_use]
    pub fn new(bore: StrainLaw, piston: StrainLaw) -> Self {
        let accepted = Accepted::by(&bore, &piston);
        Batch { laws: Laws { bore, piston, accepted }, width: Width::detected() }
    }

    /// With other instructions than the widest; the results are the same.
    #[must_use]
    pub fn with_width(self, width: Width) -> Self {
        Batch { width, ..self }
    }

    /// Which instructions are used.
    #[must_use]
    pub fn width(&self) -> Width {
        self.width
    }

    /// Both clearances of every row; gives the number of refused rows, whose results are NaN.
    ///
    /// # Errors
    /// [`ErrorKind::Contradiction`] when the columns and results are not of one length; then nothing is written.
    pub fn clearances(&self, columns: Columns<'_>, mut results: Results<'_>) -> Result<usize, Error> {
        let rows = columns.rows()?;
        let status = results.status.as_ref().map_or(rows, |status| status.len());
        let lengths = [
            ("bench_mm", results.bench_mm.len()),
            ("running_mm", results.running_mm.len()),
            ("status", status),
        ];
        same_length(rows, &lengths)?;
        if let Some(status) = &mut results.status {
            status.fill(0);
        }
        let mut refused = 0;
        self.width.run(Work { laws: &self.laws, columns, results, refused: &mut refused });
        Ok(refused)
    }

    /// The number of rows that are refused, without computing any.
    ///
    /// # Errors
    /// As [`Batch::clearances`].
    pub fn count_refused(&self, columns: Columns<'_>) -> Result<usize, Error> {
        columns.rows()?;
        let mut refused = 0;
        self.width.run(Count { accepted: &self.laws.accepted, columns, refused: &mut refused });
        Ok(refused)
    }

    /// The first refused rows, at most so many; `first` is the place of the first row that is given.
    #[must_use]
    pub fn refused(&self, columns: Columns<'_>, first: usize, most: usize) -> Vec<Refused> {
        let refused = (first..).zip(columns.each()).filter(|(_, values)| !self.laws.accepted.has(*values));
        let why = |(row, values)| Some(Refused { row, error: self.laws.refusal(values)?.in_row(row) });
        refused.filter_map(why).take(most).collect()
    }
}

impl<'a> Columns<'a> {
    fn all(self) -> [&'a [f64]; 5] {
        [
            self.bore_mm,
            self.piston_mm,
            self.parts_temperature_c,
            self.bore_temperature_c,
            self.piston_temperature_c,
        ]
    }

    /// How many rows there are.
    fn rows(self) -> Result<usize, Error> {
        let rows = self.bore_mm.len();
        let [_, piston, parts, bore_running, piston_running] = COLUMNS;
        let lengths = [
            (piston, self.piston_mm.len()),
            (parts, self.parts_temperature_c.len()),
            (bore_running, self.bore_temperature_c.len()),
            (piston_running, self.piston_temperature_c.len()),
        ];
        same_length(rows, &lengths).map(|()| rows)
    }

    /// Row by row.
    #[inline(always)]
    fn each(self) -> impl Iterator<Item = [f64; 5]> {
        let [bore, piston, parts, bore_running, piston_running] = self.all();
        let sizes = bore.iter().zip(piston);
        let running = bore_running.iter().zip(piston_running);
        sizes.zip(parts).zip(running).map(|(((b, p), t), (tb, tp))| [*b, *p, *t, *tb, *tp])
    }

    /// Takes the first rows off, when there are so many.
    #[inline(always)]
    fn take_first(&mut self, rows: usize) -> Option<Columns<'a>> {
        Some(Columns {
            bore_mm: self.bore_mm.split_off(..rows)?,
            piston_mm: self.piston_mm.split_off(..rows)?,
            parts_temperature_c: self.parts_temperature_c.split_off(..rows)?,
            bore_temperature_c: self.bore_temperature_c.split_off(..rows)?,
            piston_temperature_c: self.piston_temperature_c.split_off(..rows)?,
        })
    }
}

impl<'a> Results<'a> {
    #[inline(always)]
    fn take_first(&mut self, rows: usize) -> Option<Results<'a>> {
        Some(Results {
            bench_mm: self.bench_mm.split_off_mut(..rows)?,
            running_mm: self.running_mm.split_off_mut(..rows)?,
            status: match &mut self.status {
                Some(status) => Some(status.split_off_mut(..rows)?),
                None => None,
            },
        })
    }
}

fn same_length(rows: usize, lengths: &[(&str, usize)]) -> Result<(), Error> {
    match lengths.iter().find(|(_, length)| *length != rows) {
        None => Ok(()),
        Some((field, length)) => {
            let reason = format!("it has {length} rows where the others have {rows}");
            Err(Error::new(ErrorKind::Contradiction, length.to_string(), reason).at(field))
        }
    }
}

/// Rows that are computed while as many more are checked: so few that the nearest cache still holds those then. The fastest of 32 to 256 here.
const BLOCK: usize = 128;

/// What a column may be, as bits: a comparison with NaN, or arithmetic with what is impossible, would be an exception that kills a host which
/// unmasks floating-point traps.
#[derive(Debug, Clone, Copy)]
struct Span {
    /// least and largest, in the order of doubles
    lower: i64,
    upper: i64,
    /// least that is not below zero: down to it bits have that order as they are
    plain_lower: i64,
}

/// Whole numbers in the order of the doubles, with NaN beyond both infinities.
fn order(x: f64) -> i64 {
    // minus zero becomes zero
    let bits = (x + 0.0).to_bits().cast_signed();
    bits ^ ((bits >> 63).cast_unsigned() >> 1).cast_signed()
}

impl Span {
    /// What all of these ranges hold; it ends above zero.
    fn of(ranges: &[(f64, f64)]) -> Self {
        let lower = ranges.iter().map(|range| order(range.0)).fold(i64::MIN, i64::max);
        let upper = ranges.iter().map(|range| order(range.1)).fold(i64::MAX, i64::min);
        Span { lower, upper, plain_lower: lower.max(0) }
    }

    fn has(self, x: f64) -> bool {
        (self.lower..=self.upper).contains(&order(x))
    }

    /// Negative when `x` is outside or below zero: of the distances to both ends one is negative then.
    #[inline(always)]
    fn outside_or_below_zero(self, x: f64) -> i64 {
        let bits = x.to_bits().cast_signed();
        bits.wrapping_sub(self.plain_lower) | self.upper.wrapping_sub(bits)
    }
}

/// What the columns may be, in their order.
#[derive(Debug, Clone, Copy)]
struct Accepted([Span; 5]);

impl Accepted {
    fn by(bore: &StrainLaw, piston: &StrainLaw) -> Self {
        let running = bounds::RUNNING_TEMPERATURE.possible;
        Accepted([
            Span::of(&[bounds::BORE.possible]),
            Span::of(&[bounds::PISTON.possible]),
            Span::of(&[bounds::SHOP_TEMPERATURE.possible, bore.range_c(), piston.range_c()]),
            Span::of(&[running, bore.range_c()]),
            Span::of(&[running, piston.range_c()]),
        ])
    }

    fn has(&self, row: [f64; 5]) -> bool {
        self.0.iter().zip(row).all(|(span, x)| span.has(x))
    }

    /// Not negative when a row is accepted and nowhere below zero.
    #[inline(always)]
    fn doubt(&self, [b, p, t, tb, tp]: [f64; 5]) -> i64 {
        let [bore, piston, parts, bore_running, piston_running] = self.0;
        bore.outside_or_below_zero(b)
            | piston.outside_or_below_zero(p)
            | parts.outside_or_below_zero(t)
            | bore_running.outside_or_below_zero(tb)
            | piston_running.outside_or_below_zero(tp)
    }

    #[inline(never)]
    fn count_refused(&self, columns: Columns<'_>) -> usize {
        columns.each().filter(|row| !self.has(*row)).count()
    }

    /// The doubts of a block. All rows are looked at: a loop without a way out becomes vectors.
    #[inline(always)]
    fn doubts(&self, columns: Columns<'_>) -> i64 {
        columns.each().fold(0, |doubts, row| doubts | self.doubt(row))
    }
}

/// A row that is accepted with every law.
const HARMLESS: [f64; 5] =
    [100.0, 100.0, REFERENCE_TEMPERATURE_C, REFERENCE_TEMPERATURE_C, REFERENCE_TEMPERATURE_C];

impl Laws {
    /// Bench and running clearance of an accepted row.
    #[inline(always)]
    fn evaluate(&self, [b, p, t, tb, tp]: [f64; 5]) -> [f64; 2] {
        let strain = |law: &StrainLaw, t: f64| {
            let [c1, c2, c3] = law.coefficients();
            CubicStrain::evaluate([c1, c2, c3, t])
        };
        // a gauge at 20 C without error: the columns hold diameters of the parts
        let size = |r: f64, eps: f64| MicrometerSize::evaluate([r, 0.0, 0.0, eps]);
        let (bore, piston) = (size(b, strain(&self.bore, t)), size(p, strain(&self.piston, t)));
        let running = [bore, strain(&self.bore, tb), piston, strain(&self.piston, tp)];
        [Bench::evaluate([bore, piston]), Running::evaluate(running)]
    }

    /// A block without doubts, and meanwhile the doubts of the next: one loop of both waits for the memory once.
    #[inline(always)]
    fn block(
        &self,
        columns: Columns<'_>,
        next: Columns<'_>,
        bench_mm: &mut [f64],
        running_mm: &mut [f64],
    ) -> i64 {
        let mut doubts = 0;
        let places = bench_mm.iter_mut().zip(running_mm);
        for ((row, next), (bench, running)) in columns.each().zip(next.each()).zip(places) {
            doubts |= self.accepted.doubt(next);
            [*bench, *running] = self.evaluate(row);
        }
        doubts
    }

    /// Rows one after the other; gives how many are refused.
    #[inline(never)]
    fn row_by_row(&self, columns: Columns<'_>, results: Results<'_>) -> usize {
        let mut refused = 0;
        let places = results.bench_mm.iter_mut().zip(results.running_mm);
        for (row, (bench, running)) in columns.each().zip(places) {
            let accepted = self.accepted.has(row);
            // what is refused is not computed with, not even where the compiler computes both branches
            let clearances = self.evaluate(if accepted { row } else { HARMLESS });
            [*bench, *running] = if accepted { clearances } else { [f64::NAN; 2] };
            refused += usize::from(!accepted);
        }
        if let (Some(status), 1..) = (results.status, refused) {
            for (row, status) in columns.each().zip(status) {
                *status = self.refusal(row).map_or(0, |error| error.kind().code());
            }
        }
        refused
    }

    /// Why a row is refused: the first of its columns that is.
    fn refusal(&self, [b, p, t, tb, tp]: [f64; 5]) -> Option<Error> {
        let [bore, piston, parts, bore_running, piston_running] = COLUMNS;
        let check = |bound: Bound, field: &str, x: f64, laws: &[&StrainLaw]| {
            bound.check(field, x)?;
            laws.iter().try_for_each(|law| law.check(x, field))
        };
        let running = bounds::RUNNING_TEMPERATURE;
        check(bounds::BORE, bore, b, &[])
            .and_then(|()| check(bounds::PISTON, piston, p, &[]))
            .and_then(|()| check(bounds::SHOP_TEMPERATURE, parts, t, &[&self.bore, &self.piston]))
            .and_then(|()| check(running, bore_running, tb, &[&self.bore]))
            .and_then(|()| check(running, piston_running, tp, &[&self.piston]))
            .err()
    }
}

struct Work<'r, 'a> {
    laws: &'r Laws,
    columns: Columns<'a>,
    results: Results<'a>,
    refused: &'r mut usize,
}

impl Columnar for Work<'_, '_> {
    #[inline(always)]
    fn run(self) {
        let (laws, mut left, mut places) = (self.laws, self.columns, self.results);
        let mut block = left.take_first(BLOCK);
        let mut doubts = block.map_or(0, |first| laws.accepted.doubts(first));
        while let (Some(columns), Some(here)) = (block, places.take_first(BLOCK)) {
            block = left.take_first(BLOCK);
            let next = block.unwrap_or(columns);
            if doubts >= 0 {
                doubts = laws.block(columns, next, here.bench_mm, here.running_mm);
            } else {
                *self.refused += laws.row_by_row(columns, here);
                doubts = laws.accepted.doubts(next);
            }
        }
        // fewer than a block
        *self.refused += laws.row_by_row(left, places);
    }
}

struct Count<'r, 'a> {
    accepted: &'r Accepted,
    columns: Columns<'a>,
    refused: &'r mut usize,
}

impl Columnar for Count<'_, '_> {
    #[inline(always)]
    fn run(self) {
        let mut left = self.columns;
        while let Some(columns) = left.take_first(BLOCK) {
            if self.accepted.doubts(columns) < 0 {
                *self.refused += self.accepted.count_refused(columns);
            }
        }
        *self.refused += self.accepted.count_refused(left);
    }
}

/// A stair: the steps that go up and down with a value. Decisions by one rule on many clearances are one.
#[derive(Debug, Clone, Copy)]
pub struct Stair<'a> {
    /// Number of the step of the smallest values.
    pub first: i8,
    /// Values from which on the number is one more.
    pub up: &'a [f64],
    /// Values from which on the number is one less.
    pub down: &'a [f64],
}

impl Stair<'_> {
    /// The number of the step that each value stands on; of a value that is not finite it is any.
    ///
    /// ```
    /// use gaugepoint::batch::Stair;
    /// use gaugepoint::wide::Width;
    /// let stair = Stair { first: 0, up: &[0.03], down: &[0.06] };
    /// let mut steps = [0; 4];
    /// stair.steps(&[0.029, 0.03, 0.059, 0.06], &mut steps, Width::detected())?;
    /// assert_eq!(steps, [0, 1, 1, 0]);
    /// # Ok::<(), gaugepoint::Error>(())
    /// ```
    ///
    /// # Errors
    /// [`ErrorKind::Contradiction`] when there are not as many places as values.
    pub fn steps(&self, values: &[f64], steps: &mut [i8], width: Width) -> Result<(), Error> {
        same_length(values.len(), &[("steps", steps.len())])?;
        width.run(Climb { stair: self, values, steps });
        Ok(())
    }
}

struct Climb<'r> {
    stair: &'r Stair<'r>,
    values: &'r [f64],
    steps: &'r mut [i8],
}

impl Columnar for Climb<'_> {
    #[inline(always)]
    fn run(self) {
        let Stair { first, up, down } = *self.stair;
        for (values, steps) in self.values.chunks(BLOCK).zip(self.steps.chunks_mut(BLOCK)) {
            // as wide as the values, so that both are vectors of one length
            let mut at = [i64::from(first); BLOCK];
            let (up, down) = (up.iter().map(|edge| (edge, 1)), down.iter().map(|edge| (edge, -1)));
            for (edge, step) in up.chain(down) {
                for (at, value) in at.iter_mut().zip(values) {
                    *at += if value >= edge { step } else { 0 };
                }
            }
            for (step, at) in steps.iter_mut().zip(at) {
                *step = at.to_le_bytes()[0].cast_signed();
            }
        }
    }
}
