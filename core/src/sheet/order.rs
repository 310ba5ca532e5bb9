//! (b) the first end of a range is not above its second.

use super::agreement;
use super::found::{Findings, Read, Row};
use super::number::{Change, Number};
use super::report::{Check, Slip, Suspicion};
use super::slip;

/// Largest end over smallest with which a range is still plausible after a slip is undone, in
/// millionths. Common practice, no
/// source: sizes are printed to a thousandth of themselves, clearances to a few times themselves.
const WIDEST_AFTER_POINT: i128 = 5_000_000;
const WIDEST_AFTER_DIGIT: i128 = 1_500_000;
const WIDEST_AFTER_EXCHANGE: i128 = 1_020_000;

pub(super) fn check(row: &Row, findings: &mut Findings) {
    let read = row.read();
    for one in read.iter().filter(|one| one.reading.second.is_some()) {
        findings.applied(Check::MinMax, row);
        let [first, second] = one.reading.ends();
        if !is_above(&first, &second) {
            continue;
        }
        findings.doubtful.insert(row.index);
        let said = format!("in \"{}\" the first end is above the second", one.text.printed);
        let other = read.iter().find(|other| other.text.path != one.text.path);
        let by_the_other = other.filter(|other| is_ordered(other)).map(|other| by_the_other(one, other));
        // where the other text explains nothing, it is wrong itself
        let suspected = by_the_other.filter(|found| !found.is_empty()).unwrap_or_else(|| alone(one));
        let would_be = Vec::new();
        findings.contradict(Check::MinMax, &[(row, one.text)], said, would_be, suspected);
    }
}

/// Above by more than its printed digits can hide: ends with the same decimals are compared as they stand.
fn is_above(first: &Number, second: &Number) -> bool {
    let hidden = if first.half == second.half { 0 } else { first.half + second.half };
    first.value - second.value > hidden
}

fn is_ordered(read: &Read<'_>) -> bool {
    let [first, second] = read.reading.ends();
    read.reading.second.is_some() && !is_above(&first, &second)
}

/// What the text in the other unit says about it.
fn by_the_other(read: &Read<'_>, other: &Read<'_>) -> Vec<Suspicion> {
    let differing = agreement::differing(&read.reading, &other.reading);
    if differing.is_empty() {
        return vec![exchanged(read)];
    }
    let target = |(own, by): &(Number, Number)| slip::suspect(read, own, &other.reading.span(by)?);
    differing.iter().filter_map(target).collect()
}

/// What the range alone says: the narrowest range that each kind of slip leaves.
fn alone(read: &Read<'_>) -> Vec<Suspicion> {
    let [first, second] = read.reading.ends();
    let plausible = width(&second, &first).is_some_and(|width| width <= WIDEST_AFTER_POINT);
    let mut out: Vec<Suspicion> = plausible.then(|| exchanged(read)).into_iter().collect();
    let of_first = narrowest(&first, |changed| width(changed, &second));
    let of_second = narrowest(&second, |changed| width(&first, changed));
    let mut found: Vec<(Change, Number, i128)> = of_first.into_iter().chain(of_second).collect();
    crate::order::sort_by(&mut found, |(_, _, a), (_, _, b)| a.cmp(b));
    out.extend(
        found
            .iter()
            .map(|(change, number, _)| slip::suspicion(read, *change, &[*number], "would be in order")),
    );
    out
}

fn exchanged(read: &Read<'_>) -> Suspicion {
    let text = "min and max exchanged".to_owned();
    Suspicion { slip: Slip::MinMaxExchanged, path: read.text.path.clone(), text }
}

/// Largest over smallest, in millionths; none for ends out of order or not above zero.
fn width(low: &Number, high: &Number) -> Option<i128> {
    let in_order = low.value > 0 && low.value < high.value;
    in_order.then(|| high.value.checked_mul(1_000_000)?.checked_div(low.value)).flatten()
}

/// For each kind of change the number that leaves the narrowest plausible range.
fn narrowest(number: &Number, width: impl Fn(&Number) -> Option<i128>) -> Vec<(Change, Number, i128)> {
    let mut out: Vec<(Change, Number, i128)> = Vec::new();
    for (change, candidate) in number.changes() {
        let widest = match change {
            Change::Point(-1 | 1) => WIDEST_AFTER_POINT,
            Change::Digit | Change::LastTooMany => WIDEST_AFTER_DIGIT,
            Change::Transposed => WIDEST_AFTER_EXCHANGE,
            _ => continue,
        };
        let Some(width) = width(&candidate).filter(|width| *width <= widest) else {
            continue;
        };
        match out.iter_mut().find(|(found, ..)| *found == change) {
            Some((_, _, narrowest)) if *narrowest <= width => {}
            Some(best) => *best = (change, candidate, width),
            None => out.push((change, candidate, width)),
        }
    }
    out
}
