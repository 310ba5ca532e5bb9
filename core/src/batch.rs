//! Many rows at once: readings of bore and piston with three temperatures to bench and running clearance.
//!
//! Each row has the bits of the scalar functions ([`crate::size`], [`crate::clearance`]); rows are computed side by side in the widest
//! instructions of the machine ([`crate::wide`]). See the page `batch.md` of the documentation, which is [`crate::batch::page`].

use crate::bounds::{self, Bound};
use crate::calc::Formula;
use crate::clearance::{Bench, Running};
use crate::error::{Error, ErrorKind};
use crate::growth::{StrainLaw, StrainPolynomial};
use crate::size::MicrometerSize;
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
/// let refused = batch.refused(columns, 5);
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
    pub fn clearances(&self, columns: Columns<'_>, results: Results<'_>) -> Result<usize, Error> {
        let rows = columns.rows()?;
        let status = results.status.as_ref().map_or(rows, |status| status.len());
        let lengths = [
            ("bench_mm", results.bench_mm.len()),
            ("running_mm", results.running_mm.len()),
            ("status", status),
        ];
        same_length(rows, &lengths)?;
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

    /// The first refused rows, at most so many.
    #[must_use]
    pub fn refused(&self, columns: Columns<'_>, most: usize) -> Vec<Refused> {
        let refused = columns.each().enumerate().filter(|(_, values)| !self.laws.accepted.has(*values));
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

    /// In pieces.
    #[inline(always)]
    fn blocks(self) -> impl Iterator<Item = Columns<'a>> {
        let [bore, piston, parts, bore_running, piston_running] = self.all().map(|c| c.chunks(BLOCK));
        let running = bore_running.zip(piston_running);
        bore.zip(piston).zip(parts).zip(running).map(|(((b, p), t), (tb, tp))| Columns {
            bore_mm: b,
            piston_mm: p,
            parts_temperature_c: t,
            bore_temperature_c: tb,
            piston_temperature_c: tp,
        })
    }
}

fn same_length(rows: usize, lengths: &[(&str, usize)]) -> Result<(), Error> {
    match lengths.iter().find(|(_, length)| *length != rows) {
        None => Ok(()),
        Some((field, length)) => {
            let reason = format!("it has {length} rows where bore_mm has {rows}");
            Err(Error::new(ErrorKind::Contradiction, length.to_string(), reason).at(field))
        }
    }
}

/// Rows that are checked and then computed: few enough that the nearest cache still holds them then. Of 32 to 512 the fastest here.
const BLOCK: usize = 96;

/// What a size may be. Bits are compared, not doubles: a comparison with NaN, or arithmetic with what is impossible, is an exception
/// that kills a host which unmasks floating-point traps.
#[derive(Debug, Clone, Copy)]
struct Sizes {
    lower: i64,
    upper: i64,
}

impl Sizes {
    const fn of((lower, upper): (f64, f64)) -> Self {
        Sizes { lower: lower.to_bits().cast_signed(), upper: upper.to_bits().cast_signed() }
    }

    /// Negative when `x` is outside: both limits are above zero, where bits have the order of doubles, and of the distances to them one
    /// is negative for all other bits.
    #[inline(always)]
    fn outside(self, x: f64) -> i64 {
        let x = x.to_bits().cast_signed();
        x.wrapping_sub(self.lower) | self.upper.wrapping_sub(x)
    }
}

/// What a temperature may be, in the same way; its upper limit is above zero.
#[derive(Debug, Clone, Copy)]
struct Temperatures {
    /// largest bits of a positive one
    upper: i64,
    /// largest bits of a negative one, which rise as it falls; that of none is below all
    lower: i64,
    /// least bits of a positive one
    least: i64,
}

impl Temperatures {
    /// What all of these ranges hold.
    fn of(ranges: &[(f64, f64)]) -> Self {
        let lower =
            ranges.iter().fold(f64::NEG_INFINITY, |most, range| if range.0 > most { range.0 } else { most });
        let upper =
            ranges.iter().fold(f64::INFINITY, |least, range| if range.1 < least { range.1 } else { least });
        let bits = |x: f64| x.to_bits().cast_signed();
        let (lower, least) = if lower > 0.0 { (i64::MAX, bits(lower)) } else { (bits(-lower.abs()), 0) };
        Temperatures { upper: bits(upper), lower, least }
    }

    /// Negative when `x` is outside. `ABOVE` says that `least` counts; leaving it out saves a tenth of the time.
    #[inline(always)]
    fn outside<const ABOVE: bool>(self, x: f64) -> i64 {
        let x = x.to_bits().cast_signed();
        // of a positive x the first tells, of a negative one the second: what its sign bit chooses
        let (positive, negative) = (self.upper.wrapping_sub(x), self.lower.wrapping_sub(x));
        let chosen = ((positive ^ negative) & x) ^ positive;
        if ABOVE { chosen | (x.wrapping_sub(self.least) & !x) } else { chosen }
    }
}

/// What the columns may be.
#[derive(Debug, Clone, Copy)]
struct Accepted {
    bore: Sizes,
    piston: Sizes,
    parts: Temperatures,
    bore_running: Temperatures,
    piston_running: Temperatures,
}

impl Accepted {
    fn by(bore: &StrainLaw, piston: &StrainLaw) -> Self {
        let (parts, running) = (bounds::SHOP_TEMPERATURE.possible, bounds::RUNNING_TEMPERATURE.possible);
        Accepted {
            bore: Sizes::of(bounds::BORE.possible),
            piston: Sizes::of(bounds::PISTON.possible),
            parts: Temperatures::of(&[parts, bore.range_c(), piston.range_c()]),
            bore_running: Temperatures::of(&[running, bore.range_c()]),
            piston_running: Temperatures::of(&[running, piston.range_c()]),
        }
    }

    /// Whether a temperature just above zero is too low.
    fn is_above(&self) -> bool {
        [self.parts, self.bore_running, self.piston_running].iter().any(|t| t.least > 0)
    }

    #[inline(always)]
    fn sizes_outside(&self, bore: f64, piston: f64) -> i64 {
        self.bore.outside(bore) | self.piston.outside(piston)
    }

    #[inline(always)]
    fn temperatures_outside<const ABOVE: bool>(&self, [parts, bore, piston]: [f64; 3]) -> i64 {
        let running = self.bore_running.outside::<ABOVE>(bore) | self.piston_running.outside::<ABOVE>(piston);
        self.parts.outside::<ABOVE>(parts) | running
    }

    /// Is every row accepted? All are looked at: a loop without a way out becomes vectors. Two loops, because the limits of five columns
    /// need more registers than there are.
    #[inline(always)]
    fn all<const ABOVE: bool>(&self, columns: &Columns<'_>) -> bool {
        let sizes = columns.bore_mm.iter().zip(columns.piston_mm);
        let sizes = sizes.fold(0, |any, (bore, piston)| any | self.sizes_outside(*bore, *piston));
        let running = columns.bore_temperature_c.iter().zip(columns.piston_temperature_c);
        let temperatures =
            columns.parts_temperature_c.iter().zip(running).fold(0, |any, (parts, (bore, piston))| {
                any | self.temperatures_outside::<ABOVE>([*parts, *bore, *piston])
            });
        sizes | temperatures >= 0
    }

    fn has(&self, [b, p, t, tb, tp]: [f64; 5]) -> bool {
        self.sizes_outside(b, p) | self.temperatures_outside::<true>([t, tb, tp]) >= 0
    }
}

impl Laws {
    /// Bench and running clearance of an accepted row.
    #[inline(always)]
    fn evaluate(&self, [b, p, t, tb, tp]: [f64; 5]) -> [f64; 2] {
        let strain = |law: &StrainLaw, t: f64| {
            let [c1, c2, c3] = law.coefficients();
            StrainPolynomial::evaluate([c1, c2, c3, t])
        };
        // a gauge at 20 C without error: the columns hold diameters of the parts
        let size = |r: f64, eps: f64| MicrometerSize::evaluate([r, 0.0, 0.0, eps]);
        let (bore, piston) = (size(b, strain(&self.bore, t)), size(p, strain(&self.piston, t)));
        let running = [bore, strain(&self.bore, tb), piston, strain(&self.piston, tp)];
        [Bench::evaluate([bore, piston]), Running::evaluate(running)]
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

    /// The rows of a block, all of them accepted.
    #[inline(always)]
    fn block(&self, columns: Columns<'_>, bench_mm: &mut [f64], running_mm: &mut [f64]) {
        for (row, (bench, running)) in columns.each().zip(bench_mm.iter_mut().zip(running_mm)) {
            [*bench, *running] = self.evaluate(row);
        }
    }

    /// The rows of a block, one after the other; gives how many are refused.
    #[inline(never)]
    fn row_by_row(&self, columns: Columns<'_>, results: Results<'_>) -> usize {
        let mut refused = 0;
        let places = results.bench_mm.iter_mut().zip(results.running_mm);
        for (row, (bench, running)) in columns.each().zip(places) {
            let accepted = self.accepted.has(row);
            [*bench, *running] = if accepted { self.evaluate(row) } else { [f64::NAN; 2] };
            refused += usize::from(!accepted);
        }
        for (row, status) in columns.each().zip(results.status.into_iter().flatten()) {
            *status = self.status(row);
        }
        refused
    }

    fn status(&self, row: [f64; 5]) -> i32 {
        // an error is made only where there is one: it is data and text
        if self.accepted.has(row) { 0 } else { self.refusal(row).map_or(0, |error| error.kind().code()) }
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
        match self.laws.accepted.is_above() {
            true => self.blocks::<true>(),
            false => self.blocks::<false>(),
        }
    }
}

impl Work<'_, '_> {
    #[inline(always)]
    fn blocks<const ABOVE: bool>(self) {
        let Results { bench_mm, running_mm, mut status } = self.results;
        let places = bench_mm.chunks_mut(BLOCK).zip(running_mm.chunks_mut(BLOCK));
        let mut statuses = status.as_deref_mut().map(|status| status.chunks_mut(BLOCK));
        for (columns, (bench_mm, running_mm)) in self.columns.blocks().zip(places) {
            let mut status = statuses.as_mut().and_then(Iterator::next);
            if self.laws.accepted.all::<ABOVE>(&columns) {
                self.laws.block(columns, bench_mm, running_mm);
                if let Some(status) = &mut status {
                    status.fill(0);
                }
            } else {
                *self.refused += self.laws.row_by_row(columns, Results { bench_mm, running_mm, status });
            }
        }
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
        for columns in self.columns.blocks() {
            if !self.accepted.all::<true>(&columns) {
                *self.refused += columns.each().filter(|row| !self.accepted.has(*row)).count();
            }
        }
    }
}

impl Error {
    /// The same refusal, of a row.
    fn in_row(self, row: usize) -> Error {
        let field = format!("{}/{row}", self.field());
        self.moved(field)
    }
}
