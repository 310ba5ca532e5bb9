//! Pairings in the order of size, and the prices that prove them.

use super::assignment::{NONE, Start};
use super::fit::Fit;
use crate::error::Error;
use crate::progress::Work;

/// Rows and columns in order of size: the least threshold, not below `at_least`, at which every row finds a column of its own.
///
/// A row takes the first column that its upper limit and the rows before leave it. Where its lower limit rules that column out, it and the
/// row where the unbroken run of columns began cannot both stay below the lesser of what the run costs from there or from farther back: the
/// threshold rises to that, and the rows are gone through again until it holds.
pub(super) fn threshold_in_order(
    fit: Fit,
    bores_mm: &[f64],
    pistons_mm: &[f64],
    at_least: f64,
    work: &Work<'_>,
) -> Result<f64, Error> {
    let clearance = |row: usize, column: usize| number(bores_mm, row) - number(pistons_mm, column);
    let rows = 0..bores_mm.len();
    if bores_mm.len() == pistons_mm.len() {
        return Ok(rows.map(|row| fit.beyond(clearance(row, row))).fold(at_least, libm::fmax));
    }
    // the clearance falls with the column
    let above = |row: usize, column: usize| fit.above(clearance(row, column));
    let below = |row: usize, column: usize| match column < pistons_mm.len() {
        true => fit.below(clearance(row, column)),
        false => f64::INFINITY,
    };
    // no row stays below its own best column
    let (mut threshold, mut best) = (at_least, 0);
    for row in rows.clone() {
        while below(row, best) < above(row, best) {
            best += 1;
        }
        let before = best.checked_sub(1).map_or(f64::INFINITY, |column| above(row, column));
        threshold = libm::fmax(threshold, libm::fmin(before, below(row, best)));
    }
    loop {
        work.ask()?;
        let (held, mut column, mut run) = (threshold, 0, (0, 0));
        for row in rows.clone() {
            let next = column;
            while column < pistons_mm.len() && above(row, column) > threshold {
                column += 1;
            }
            if column > next {
                run = (row, column);
            }
            if below(row, column) > threshold {
                let (first, from) = run;
                let ends = |back: usize| (above(first, from - back), below(row, column - back));
                threshold = libm::fmax(threshold, least_of_run(from, ends));
            }
            column += 1;
        }
        if threshold <= held {
            return Ok(threshold);
        }
    }
}

/// The least that a run of rows costs at its ends when it is moved back by any number of columns up to `most`: what it costs at its first row
/// rises, at its last row falls.
fn least_of_run(most: usize, ends: impl Fn(usize) -> (f64, f64)) -> f64 {
    let mut least = f64::INFINITY;
    for back in 0..=most {
        let (first, last) = ends(back);
        least = libm::fmin(least, libm::fmax(first, last));
        if first >= last {
            break;
        }
    }
    least
}

/// Columns that a row may have.
#[derive(Clone, Copy)]
pub(super) struct Span {
    pub(super) first: usize,
    pub(super) last: usize,
}

impl Span {
    fn columns(self) -> usize {
        (self.last + 1).saturating_sub(self.first)
    }
}

/// Rows and columns in order of size: the columns of each row that are not beyond its limits by more than a threshold.
pub(super) fn within_threshold(fit: Fit, bores_mm: &[f64], pistons_mm: &[f64], threshold: f64) -> Vec<Span> {
    let (mut first, mut end) = (0, 0);
    let within = |bore_mm: &f64| {
        let clearance = |column: usize| pistons_mm.get(column).map(|piston_mm| bore_mm - piston_mm);
        while clearance(first).is_some_and(|c| fit.above(c) > threshold) {
            first += 1;
        }
        while clearance(end).is_some_and(|c| fit.below(c) <= threshold) {
            end += 1;
        }
        Span { first, last: end.saturating_sub(1) }
    };
    bores_mm.iter().map(within).collect()
}

/// Rows and columns in order of size: the columns in rising order with the least sum of squared deviations. The deviation falls with the
/// column. None when the allowed columns leave no choice.
///
/// By dynamic programming: after each row the least sum of the rows so far within the columns up to each. Of equals the first column.
pub(super) fn least_sum_in_order(
    columns: usize,
    allowed: Vec<Span>,
    deviation: impl Fn(usize, usize) -> f64,
) -> Option<Vec<usize>> {
    let square = |row: usize, column: usize| {
        let deviation = deviation(row, column);
        deviation * deviation
    };
    let spans = worth_trying(columns, allowed, &deviation)?;
    let mut taken: Vec<bool> = Vec::with_capacity(spans.iter().map(|span| span.columns()).sum());
    let (mut sums, mut sums_before) = (Vec::new(), vec![0.0]);
    let mut before = Span { first: 0, last: 0 };
    for (row, span) in spans.iter().enumerate() {
        let mut least = f64::INFINITY;
        for column in span.first..=span.last {
            let left = column.saturating_sub(1).min(before.last);
            let so_far = left.checked_sub(before.first).and_then(|k| sums_before.get(k));
            let here = so_far.map_or(f64::INFINITY, |so_far| so_far + square(row, column));
            taken.push(here < least);
            if here < least {
                least = here;
            }
            sums.push(least);
        }
        core::mem::swap(&mut sums, &mut sums_before);
        sums.clear();
        before = *span;
    }
    let (mut out, mut end, mut limit) = (vec![NONE; spans.len()], taken.len(), columns);
    for (column, span) in out.iter_mut().zip(&spans).rev() {
        let start = end - span.columns();
        let open = taken.get(start..end)?.get(..(span.last + 1).min(limit).checked_sub(span.first)?)?;
        *column = span.first + open.iter().rposition(|taken| *taken)?;
        (end, limit) = (start, *column);
    }
    Some(out)
}

/// The columns outside which a row of a best choice cannot lie: no row passes over a free column that is nearer to what it wants. So a column
/// beyond the nearest one follows on the column of the row before, or is followed by that of the row after.
fn worth_trying(
    columns: usize,
    mut spans: Vec<Span>,
    deviation: impl Fn(usize, usize) -> f64,
) -> Option<Vec<Span>> {
    let (rows, spare) = (spans.len(), columns.checked_sub(spans.len())?);
    let square = |row: usize, column: usize| {
        let deviation = deviation(row, column);
        deviation * deviation
    };
    // the last column of each row that is too large a piston, or its first one
    let mut before_nearest = Vec::with_capacity(rows);
    let (mut nearest, mut next, mut most) = (0, 0, 0.0);
    for (row, span) in spans.iter_mut().enumerate() {
        let (first, last) = (span.first.max(row), span.last.min(row + spare));
        if first > last {
            return None;
        }
        while nearest < columns && deviation(row, nearest) > 0.0 {
            nearest += 1;
        }
        while nearest > 0 && deviation(row, nearest - 1) <= 0.0 {
            nearest -= 1;
        }
        most = libm::fmax(most, libm::fmax(square(row, first), square(row, last)));
        before_nearest.push(nearest.saturating_sub(1).clamp(first, last));
        *span = Span { first, last: nearest.max(next).clamp(first, last) };
        next = span.last + 1;
    }
    // squares that differ by less than the rounding of a sum can be equal in it, and of equals the first column is taken
    #[expect(clippy::cast_precision_loss, reason = "a count of parts is far below 2^53")]
    let noise = most * (rows * rows) as f64 * (2.0 * f64::EPSILON);
    let mut next = columns;
    for ((row, span), nearest) in spans.iter_mut().enumerate().zip(before_nearest).rev() {
        let mut first = nearest.min(next.saturating_sub(1)).max(span.first);
        let limit = square(row, first) + noise;
        while first > span.first && square(row, first - 1) <= limit {
            first -= 1;
        }
        span.first = first;
        next = first;
    }
    Some(spans)
}

/// Pairs in order with as many rows as columns, and prices that prove their least sum.
///
/// For costs with `c(i, k) + c(k, l) >= c(i, l) + c(k, k)` wherever rows and columns cross (Monge), a chain of steps between neighbours,
/// each between the two bounds that its neighbours set, keeps every other pair too: the bounds of farther pairs are sums of nearer ones.
pub(super) fn start_in_order(rows: usize, cost: impl Fn(usize, usize) -> f64) -> Start {
    let mut price = 0.0;
    let column_prices = (0..rows).map(|k| {
        if let Some(before) = k.checked_sub(1) {
            let low = cost(k, k) - cost(k, before);
            let high = cost(before, k) - cost(before, before);
            price += low + (high - low) / 2.0;
        }
        price
    });
    Start { column_prices: column_prices.collect(), column_of: (0..rows).collect() }
}

/// A number of a list.
fn number(list: &[f64], place: usize) -> f64 {
    list.get(place).copied().unwrap_or(f64::NAN)
}
