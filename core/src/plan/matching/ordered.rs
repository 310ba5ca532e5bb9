//! Pairings in the order of size, and the prices that prove them.

use super::assignment::{NONE, Start};

/// Rows and columns in order of size: the columns in rising order with the least total. `total(row)` adds the pair of a column to what was
/// chosen so far. None when every choice is infinite.
///
/// After each row the least total of the rows so far within the first `k` columns too many: `O(rows (columns - rows + 1))`.
pub(super) fn order_preserving<T: Fn(f64, usize) -> f64>(
    rows: usize,
    columns: usize,
    total: impl Fn(usize) -> T,
) -> Option<Vec<usize>> {
    let width = (columns + 1).checked_sub(rows)?;
    let mut best = vec![f64::NEG_INFINITY; width];
    let mut taken = vec![false; rows * width];
    for (row, taken) in taken.chunks_exact_mut(width).enumerate() {
        let total = total(row);
        let mut least = f64::INFINITY;
        for (column, (best, taken)) in (row..).zip(best.iter_mut().zip(taken)) {
            let here = total(*best, column);
            if here < least {
                (least, *taken) = (here, true);
            }
            *best = least;
        }
    }
    let mut skipped = width - 1;
    let mut out = vec![NONE; rows];
    for (row, (column, taken)) in out.iter_mut().zip(taken.chunks_exact(width)).enumerate().rev() {
        skipped = taken.get(..=skipped)?.iter().rposition(|t| *t)?;
        *column = row + skipped;
    }
    Some(out)
}

/// Adds a cost to what was chosen so far.
pub(super) fn sum(so_far: f64, cost: f64) -> f64 {
    if so_far > f64::NEG_INFINITY { so_far + cost } else { cost }
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
