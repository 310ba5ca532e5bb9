//! Pairings whose cost depends on the pair: the least largest key, then the least sum among the pairs that keep it.
//!
//! Source: shortest augmenting paths, D. F. Crouse, On implementing 2D rectangular assignment algorithms (2016), and the bottleneck form of
//! Derigs and Zimmermann (1978), both after Burkard, Dell'Amico, Martello, Assignment Problems (SIAM 2009), chapters 4 to 6; from memory.

use crate::error::Error;
use crate::progress::Work;

/// No row, or no column.
pub(super) const NONE: usize = usize::MAX;

/// Numbers of pairs, row by row.
pub(super) struct Matrix {
    columns: usize,
    values: Vec<f64>,
}

impl Matrix {
    pub(super) fn new(rows: usize, columns: usize, value: impl Fn(usize, usize) -> f64) -> Self {
        let mut values = Vec::with_capacity(rows * columns);
        for row in 0..rows {
            values.extend((0..columns).map(|column| value(row, column)));
        }
        Matrix { columns, values }
    }

    /// As [`Matrix::new`], of numbers that take their time.
    pub(super) fn watched(
        rows: usize,
        columns: usize,
        work: &Work<'_>,
        value: impl Fn(usize, usize) -> f64,
    ) -> Result<Self, Error> {
        let mut values = Vec::with_capacity(rows * columns);
        for row in 0..rows {
            work.ask()?;
            values.extend((0..columns).map(|column| value(row, column)));
            work.add(1);
        }
        Ok(Matrix { columns, values })
    }

    /// The same with some of its columns.
    pub(super) fn with_columns(&self, columns: &[usize]) -> Self {
        let rows = self.values.len().checked_div(self.columns).unwrap_or(0);
        Matrix::new(rows, columns.len(), |row, k| columns.get(k).map_or(f64::INFINITY, |c| self.at(row, *c)))
    }

    pub(super) fn row(&self, row: usize) -> &[f64] {
        self.values.get(row * self.columns..(row + 1) * self.columns).unwrap_or_default()
    }

    pub(super) fn at(&self, row: usize, column: usize) -> f64 {
        self.row(row).get(column).copied().unwrap_or(f64::INFINITY)
    }

    /// Replaces every number.
    pub(super) fn replace(&mut self, value: impl Fn(usize, usize, f64) -> f64) {
        for (row, values) in self.values.chunks_exact_mut(self.columns.max(1)).enumerate() {
            for (column, v) in values.iter_mut().enumerate() {
                *v = value(row, column, *v);
            }
        }
    }
}

/// Rows that have fewer columns than they need: each of their finite pairs is with one of `columns`, which are one less.
pub(super) struct Short {
    pub(super) rows: Vec<usize>,
    pub(super) columns: Vec<usize>,
}

/// Why a search has no result.
pub(super) enum Halt {
    Short(Short),
    Stopped(Error),
}

impl From<Error> for Halt {
    fn from(stopped: Error) -> Self {
        Halt::Stopped(stopped)
    }
}

/// A pairing that grows: the column of each row and the row of each column.
struct Pairing {
    column_of: Vec<usize>,
    row_of: Vec<usize>,
}

impl Pairing {
    /// The pairs of `start` that are accepted.
    fn new(start: &[usize], columns: usize, accepted: impl Fn(usize, usize) -> bool) -> Self {
        let mut pairing = Pairing { column_of: vec![NONE; start.len()], row_of: vec![NONE; columns] };
        for (row, column) in start.iter().enumerate() {
            if pairing.row_of(*column) == NONE && accepted(row, *column) {
                pairing.join(row, *column);
            }
        }
        pairing
    }

    fn row_of(&self, column: usize) -> usize {
        self.row_of.get(column).copied().unwrap_or(NONE)
    }

    /// Joins a row to a column; gives the column that the row had.
    fn join(&mut self, row: usize, column: usize) -> usize {
        if let Some(of) = self.row_of.get_mut(column) {
            *of = row;
        }
        self.column_of.get_mut(row).map_or(NONE, |of| core::mem::replace(of, column))
    }

    fn open_rows(&self) -> Vec<usize> {
        let open = self.column_of.iter().enumerate().filter(|(_, column)| **column == NONE);
        open.map(|(row, _)| row).collect()
    }

    /// Moves every row of a path to the column from which the path came to it.
    fn augment(&mut self, from: &[usize], end: usize) {
        let mut column = end;
        while let Some(row) = from.get(column).copied().filter(|row| *row != NONE) {
            column = self.join(row, column);
        }
    }
}

/// The least largest key with which every row has a column of its own, not below `at_least`; none when it is above `cap`.
///
/// One row after another gets the alternating path whose largest key is least, which is the least threshold at which the rows so far have
/// columns: at no lower one is there an augmenting path (Berge). `start` is a guess.
pub(super) fn bottleneck(
    keys: &Matrix,
    start: &[usize],
    at_least: f64,
    cap: f64,
    work: &Work<'_>,
) -> Result<Option<f64>, Halt> {
    let least_of = |row| keys.row(row).iter().copied().fold(f64::INFINITY, libm::fmin);
    let rows = 0..start.len();
    let mut threshold = rows.map(least_of).filter(|k| k.is_finite()).fold(at_least, libm::fmax);
    let mut pairing = Pairing::new(start, keys.columns, |row, column| keys.at(row, column) <= threshold);
    let mut short: Option<Short> = None;
    for first in pairing.open_rows() {
        work.ask()?;
        if threshold > cap && short.is_none() {
            return Ok(None);
        }
        match least_path(keys, &pairing, first, threshold) {
            Ok((reached, end, from)) => {
                threshold = reached;
                pairing.augment(&from, end);
            }
            Err(found) if short.as_ref().is_none_or(|s| found.rows.len() < s.rows.len()) => {
                short = Some(found)
            }
            Err(_) => {}
        }
        work.add(1);
    }
    match short {
        Some(short) => Err(Halt::Short(short)),
        None => Ok(Some(threshold).filter(|t| *t <= cap)),
    }
}

/// The path from an open row to an open column whose largest key, or the threshold, is least: rows are passed at one threshold as long as
/// there are any, then it rises to the next key.
fn least_path(
    keys: &Matrix,
    pairing: &Pairing,
    first: usize,
    threshold: f64,
) -> Result<(f64, usize, Vec<usize>), Short> {
    let mut reach = vec![f64::INFINITY; keys.columns];
    let mut from = vec![NONE; keys.columns];
    // columns that were not reached yet; rows that were, of which `next` comes
    let mut far: Vec<usize> = (0..keys.columns).collect();
    let (mut rows, mut next, mut so_far, mut end) = (vec![first], 0, threshold, NONE);
    loop {
        while let Some(row) = rows.get(next).copied() {
            next += 1;
            let keys = keys.row(row);
            far.retain(|column| {
                let (Some(key), Some(reach), Some(from)) =
                    (keys.get(*column), reach.get_mut(*column), from.get_mut(*column))
                else {
                    return false;
                };
                if key < reach {
                    (*reach, *from) = (*key, row);
                }
                *reach > so_far || end != NONE || reached(pairing, *column, &mut rows, &mut end)
            });
            if end != NONE {
                return Ok((so_far, end, from));
            }
        }
        let reach_of = |column: &usize| reach.get(*column).copied().unwrap_or(f64::INFINITY);
        so_far = far.iter().map(reach_of).fold(f64::INFINITY, libm::fmin);
        if so_far == f64::INFINITY {
            let columns = (0..keys.columns).filter(|column| far.binary_search(column).is_err()).collect();
            return Err(Short { rows, columns });
        }
        far.retain(|column| {
            reach_of(column) > so_far || end != NONE || reached(pairing, *column, &mut rows, &mut end)
        });
        if end != NONE {
            return Ok((so_far, end, from));
        }
    }
}

/// A column is reached: it is the end, or its row comes. It is not far any more.
fn reached(pairing: &Pairing, column: usize, rows: &mut Vec<usize>, end: &mut usize) -> bool {
    match pairing.row_of(column) {
        NONE => *end = column,
        row => rows.push(row),
    }
    false
}

/// Prices that prove a least sum: `row + column <= cost` of every pair, equal for the chosen ones, and a column that is not chosen has price 0
/// while none is above 0; with as many rows as columns the sign is free.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Prices {
    pub(super) rows: Vec<f64>,
    pub(super) columns: Vec<f64>,
}

/// What a search of the least sum starts from: pairs, with the prices that prove them.
pub(super) struct Start {
    pub(super) column_of: Vec<usize>,
    pub(super) column_prices: Vec<f64>,
}

/// The columns of the rows with the least sum of finite costs, and the prices that prove it; none when some row can have no column.
pub(super) fn least_sum(
    costs: &Matrix,
    start: &Start,
    work: &Work<'_>,
) -> Result<Option<(Vec<usize>, Prices)>, Error> {
    let spans: Vec<Span> = (0..start.column_of.len()).map(|row| Span::of(costs.row(row))).collect();
    let mut search = Search {
        costs,
        pairing: Pairing::new(&start.column_of, costs.columns, |row, column| {
            costs.at(row, column).is_finite()
        }),
        prices: Prices { rows: vec![0.0; spans.len()], columns: start.column_prices.clone() },
        spans,
        reach: vec![f64::INFINITY; costs.columns],
        from: vec![NONE; costs.columns],
    };
    search.price_rows();
    for first in search.pairing.open_rows() {
        work.ask()?;
        let Some(end) = search.path(first) else { return Ok(None) };
        search.pairing.augment(&search.from, end);
        work.add(1);
    }
    Ok(Some((search.pairing.column_of, search.prices)))
}

/// Columns that a row can have lie in here.
#[derive(Clone, Copy)]
struct Span {
    first: usize,
    end: usize,
}

impl Span {
    fn of(costs: &[f64]) -> Self {
        let first = costs.iter().position(|c| c.is_finite()).unwrap_or(0);
        Span { first, end: costs.iter().rposition(|c| c.is_finite()).map_or(0, |last| last + 1) }
    }

    fn join(self, other: Span) -> Self {
        Span { first: self.first.min(other.first), end: self.end.max(other.end) }
    }
}

struct Search<'a> {
    costs: &'a Matrix,
    pairing: Pairing,
    prices: Prices,
    spans: Vec<Span>,
    /// length of the shortest path to each column; minus infinity once it is final
    reach: Vec<f64>,
    from: Vec<usize>,
}

impl Search<'_> {
    /// The highest price of each row. A row without a column takes a free one that has it.
    fn price_rows(&mut self) {
        for (row, price) in self.prices.rows.iter_mut().enumerate() {
            let (mut best, mut least) = (NONE, f64::INFINITY);
            for (column, (cost, price)) in self.costs.row(row).iter().zip(&self.prices.columns).enumerate() {
                if cost - price < least {
                    (best, least) = (column, cost - price);
                }
            }
            match self.pairing.column_of.get(row) {
                Some(&NONE) => {
                    *price = least;
                    if best != NONE && self.pairing.row_of(best) == NONE {
                        self.pairing.join(row, best);
                    }
                }
                Some(&column) => {
                    *price = self.costs.at(row, column)
                        - self.prices.columns.get(column).copied().unwrap_or_default();
                }
                None => {}
            }
        }
    }

    /// The shortest path from an open row to an open column, with the prices that go with it.
    fn path(&mut self, first: usize) -> Option<usize> {
        self.reach.fill(f64::INFINITY);
        self.from.fill(NONE);
        let mut passed: Vec<(usize, usize, f64)> = Vec::new();
        let mut touched = self.spans.get(first).copied()?;
        let (mut row, mut so_far) = (first, 0.0);
        let end = loop {
            let span = self.spans.get(row).copied()?;
            touched = touched.join(span);
            self.relax(row, span, so_far);
            let (column, length) = self.nearest(touched)?;
            so_far = length;
            let next = self.pairing.row_of(column);
            if next == NONE {
                break column;
            }
            *self.reach.get_mut(column)? = f64::NEG_INFINITY;
            passed.push((next, column, so_far));
            row = next;
        };
        *self.prices.rows.get_mut(first)? += so_far;
        for (row, column, length) in passed {
            *self.prices.rows.get_mut(row)? += so_far - length;
            *self.prices.columns.get_mut(column)? -= so_far - length;
        }
        Some(end)
    }

    fn relax(&mut self, row: usize, span: Span, so_far: f64) {
        let Span { first, end } = span;
        let base = so_far - self.prices.rows.get(row).copied().unwrap_or_default();
        let costs = self.costs.row(row).get(first..end).unwrap_or_default();
        let prices = self.prices.columns.get(first..end).unwrap_or_default();
        let reach = self.reach.get_mut(first..end).unwrap_or_default();
        let from = self.from.get_mut(first..end).unwrap_or_default();
        for (((cost, price), reach), from) in costs.iter().zip(prices).zip(reach).zip(from) {
            let here = base + (cost - price);
            if here < *reach {
                (*reach, *from) = (here, row);
            }
        }
    }

    /// The first of the open columns that are nearest.
    fn nearest(&self, span: Span) -> Option<(usize, f64)> {
        let (mut column, mut least) = (NONE, f64::INFINITY);
        for (k, reach) in self.reach.get(span.first..span.end)?.iter().enumerate() {
            if *reach < least && *reach > f64::NEG_INFINITY {
                (column, least) = (span.first + k, *reach);
            }
        }
        (column != NONE).then_some((column, least))
    }
}

#[cfg(test)]
mod tests {
    use super::super::fit::Fit;
    use super::super::ordered::{
        Span, least_sum_in_order, start_in_order, threshold_in_order, within_threshold,
    };
    use super::*;
    use crate::decision::risk::Interval;
    use crate::progress::Watch;

    fn unwatched() -> Work<'static> {
        Work::new(Watch::default(), 0)
    }

    fn numbers(seed: u64) -> impl FnMut() -> f64 {
        let mut state = seed;
        move || {
            // Knuth's MMIX generator
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (state >> 33) as f64 / f64::from(1_u32 << 31)
        }
    }

    /// Pairs and prices prove each other: no pair costs less than its prices, the chosen ones as much, and an open column is free.
    fn prove(costs: &Matrix, columns: &[usize], prices: &Prices) {
        let is_square = columns.len() == costs.columns;
        for (row, u) in prices.rows.iter().enumerate() {
            for (column, v) in prices.columns.iter().enumerate() {
                let cost = costs.at(row, column);
                assert!(u + v <= cost + 1e-12, "{row}, {column}: {u} + {v} above {cost}");
                if columns[row] == column {
                    assert!(cost.is_finite() && (u + v - cost).abs() < 1e-12, "{row}, {column}");
                } else {
                    assert!(is_square || *v <= 1e-12);
                }
            }
        }
        for (column, v) in prices.columns.iter().enumerate() {
            assert!(columns.contains(&column) || *v == 0.0, "open column {column} has price {v}");
        }
    }

    fn cold(rows: usize, columns: usize) -> Start {
        Start { column_of: vec![NONE; rows], column_prices: vec![0.0; columns] }
    }

    /// The example of SciPy's documentation of `linear_sum_assignment`: columns 1, 0, 2, cost 5.
    #[test]
    fn documented_example() {
        let costs = [[4.0, 1.0, 3.0], [2.0, 0.0, 5.0], [3.0, 2.0, 2.0]];
        let costs = Matrix::new(3, 3, |row, column| costs[row][column]);
        let (columns, prices) = least_sum(&costs, &cold(3, 3), &unwatched()).unwrap().unwrap();
        assert_eq!(columns, [1, 0, 2]);
        prove(&costs, &columns, &prices);
        let total: f64 = prices.rows.iter().chain(&prices.columns).sum();
        assert!((total - 5.0).abs() < 1e-15);
    }

    #[test]
    fn random_costs_are_proven() {
        let mut next = numbers(1);
        for (rows, columns) in [(1, 1), (2, 2), (7, 7), (7, 9), (30, 30), (30, 31), (40, 90)] {
            for share in [0.0, 0.3, 0.6] {
                let draws: Vec<(f64, f64)> = (0..rows * columns).map(|_| (next(), next())).collect();
                let costs = Matrix::new(rows, columns, |row, column| {
                    let (cost, chance) = draws[row * columns + column];
                    if chance < share && row != column { f64::INFINITY } else { cost }
                });
                let (chosen, prices) =
                    least_sum(&costs, &cold(rows, columns), &unwatched()).unwrap().unwrap();
                prove(&costs, &chosen, &prices);
            }
        }
    }

    /// From the prices of the order of size, with pairs struck out of it.
    #[test]
    fn start_in_order_is_proven() {
        let mut next = numbers(2);
        for rows in [1, 2, 5, 40] {
            let mut sorted = |spread: f64| {
                let mut all: Vec<f64> = (0..rows).map(|_| next() * spread).collect();
                all.sort_by(f64::total_cmp);
                all
            };
            let (bores, pistons) = (sorted(1.0), sorted(1.3));
            let square = |row: usize, column: usize| {
                let deviation: f64 = bores[row] - pistons[column];
                deviation * deviation
            };
            let start = start_in_order(rows, square);
            let costs = Matrix::new(rows, rows, square);
            let (columns, prices) = least_sum(&costs, &start, &unwatched()).unwrap().unwrap();
            assert!(columns.is_sorted());
            prove(&costs, &columns, &prices);
            let struck = Matrix::new(rows, rows, |row, column| {
                let is_struck = rows > 2 && row == column && row % 3 == 0;
                if is_struck { f64::INFINITY } else { square(row, column) }
            });
            let (columns, prices) = least_sum(&struck, &start, &unwatched()).unwrap().unwrap();
            prove(&struck, &columns, &prices);
        }
    }

    #[test]
    fn the_order_preserving_choice_is_the_least_of_all_choices() {
        let mut next = numbers(3);
        for _ in 0..50 {
            let mut sorted = |count: usize| {
                let mut all: Vec<f64> = (0..count).map(|_| next()).collect();
                all.sort_by(f64::total_cmp);
                all
            };
            let (bores, pistons) = (sorted(4), sorted(7));
            let deviation = |row: usize, column: usize| bores[row] - pistons[column];
            let square = |row: usize, column: usize| deviation(row, column) * deviation(row, column);
            let ours = least_sum_in_order(7, vec![Span { first: 0, last: 6 }; 4], deviation).unwrap();
            let total: f64 = ours.iter().enumerate().map(|(row, column)| square(row, *column)).sum();
            let costs = Matrix::new(4, 7, square);
            let (any, _) = least_sum(&costs, &cold(4, 7), &unwatched()).unwrap().unwrap();
            let least: f64 = any.iter().enumerate().map(|(row, column)| square(row, *column)).sum();
            assert!((total - least).abs() < 1e-14);

            // the same under the least threshold, against augmenting paths
            let fit = Fit { limits: Interval { lower: Some(-0.1), upper: Some(0.2) }, target: 0.0 };
            let beyond = Matrix::new(4, 7, |row, column| fit.beyond(deviation(row, column)));
            let threshold =
                threshold_in_order(fit, &bores, &pistons, f64::NEG_INFINITY, &unwatched()).unwrap();
            let paths = bottleneck(&beyond, &[0, 1, 2, 3], f64::NEG_INFINITY, f64::INFINITY, &unwatched());
            assert_eq!(Some(threshold), paths.ok().flatten());
            let allowed = within_threshold(fit, &bores, &pistons, threshold);
            let ours = least_sum_in_order(7, allowed, deviation).unwrap();
            assert!(ours.is_sorted_by(|a, b| a < b));
            assert!(ours.iter().enumerate().all(|(row, column)| beyond.at(row, *column) <= threshold));
            let total: f64 = ours.iter().enumerate().map(|(row, column)| square(row, *column)).sum();
            let costs = Matrix::new(4, 7, |row, column| {
                if beyond.at(row, column) <= threshold { square(row, column) } else { f64::INFINITY }
            });
            let (any, _) = least_sum(&costs, &cold(4, 7), &unwatched()).unwrap().unwrap();
            let least: f64 = any.iter().enumerate().map(|(row, column)| square(row, *column)).sum();
            assert!((total - least).abs() < 1e-14);
        }
    }

    #[test]
    fn the_threshold_is_the_least_and_what_is_short_is_named() {
        let keys = [[9.0, 2.0, 3.0], [1.0, 7.0, 8.0], [4.0, 3.0, 6.0]];
        let matrix = Matrix::new(3, 3, |row, column| keys[row][column]);
        let found =
            |at_least, cap| bottleneck(&matrix, &[0, 1, 2], at_least, cap, &unwatched()).ok().flatten();
        // by hand: columns 2, 0, 1 have 3, 1, 3; below 3 the last row has nothing
        assert_eq!(found(f64::NEG_INFINITY, f64::INFINITY), Some(3.0));
        assert_eq!(found(5.0, f64::INFINITY), Some(5.0));
        assert_eq!(found(f64::NEG_INFINITY, 2.9), None);
        let ruled = Matrix::new(4, 4, |row, column| if row < 3 && column > 1 { f64::INFINITY } else { 1.0 });
        let Err(Halt::Short(short)) = bottleneck(&ruled, &[0, 1, 2, 3], 0.0, f64::INFINITY, &unwatched())
        else {
            panic!("three rows, two columns")
        };
        let (mut rows, mut columns) = (short.rows, short.columns);
        rows.sort_unstable();
        columns.sort_unstable();
        assert_eq!((rows, columns), (vec![0, 1, 2], vec![0, 1]));
    }
}
