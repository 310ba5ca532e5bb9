//! (g) a row that repeats the numbers of another quantity.

use super::document::What;
use super::found::{Findings, Read, Row};
use super::magnitude::{self, NominalBore, Standing};
use super::report::{Check, Slip, Suspicion};
use std::collections::BTreeMap;

/// Significant digits, of both ends together, from which two quantities hardly share a range by chance. Common practice, no
/// source.
const DIGITS_BEYOND_CHANCE: usize = 4;

/// Width of a range, in units of its last digit, from which parts that fit each other do not share it by rounding alone.
/// Common practice, no source.
const STEPS_BEYOND_CHANCE: i128 = 3;

/// The same for one value that already contradicts something.
const DIGITS_OF_A_SINGLE_VALUE: usize = 3;

type Print = [(bool, u64, u32, &'static str); 2];

/// Compares every row with every other.
pub(super) fn check(rows: &[Row], bore: Option<&NominalBore<'_>>, findings: &mut Findings) {
    let mut prints: BTreeMap<Print, Vec<Read<'_>>> = BTreeMap::new();
    let comparable = rows.iter().filter(|row| row.what.family().is_some());
    for row in comparable {
        for read in row.read().into_iter().filter(|read| !read.reading.is_ratio()) {
            findings.applied(Check::CopiedRow, row);
            let print = read.reading.ends().map(|end| end.print());
            let same = prints.entry(print).or_default();
            if same.iter().all(|other| other.row.index != row.index) {
                same.push(read);
            }
        }
    }
    let mut groups: Vec<Vec<Read<'_>>> =
        prints.into_values().filter(|group| tells(group, bore, findings)).collect();
    crate::order::sort_by(&mut groups, |a, b| {
        a.iter().map(|r| r.row.index).cmp(b.iter().map(|r| r.row.index))
    });
    // rows that are the same in both units are one finding
    groups.dedup_by(|a, b| a.iter().map(|r| r.row.index).eq(b.iter().map(|r| r.row.index)));
    groups.iter().for_each(|group| report(group, bore, findings));
}

/// Whether the same print in several rows is more than chance. Single values often are the same by intent: a limit, a nominal
/// size, a square engine.
fn tells(group: &[Read<'_>], bore: Option<&NominalBore<'_>>, findings: &Findings) -> bool {
    let families: Vec<Option<What>> = group.iter().map(|read| read.row.what.family()).collect();
    let Some(first) =
        group.first().filter(|_| families.iter().any(|family| Some(family) != families.first()))
    else {
        return false;
    };
    let [low, high] = first.reading.ordered();
    if low.value == high.value {
        let contradicted = group.iter().any(|read| findings.doubtful.contains(&read.row.index));
        return contradicted && low.significant() >= DIGITS_OF_A_SINGLE_VALUE;
    }
    if group.iter().any(|read| is_doubtful(read, bore, findings)) {
        return true;
    }
    if group.iter().all(|read| findings.is_borne_out(read.row)) {
        return false;
    }
    let steps = (high.value - low.value) / (low.half + high.half).max(1);
    steps >= STEPS_BEYOND_CHANCE && low.significant() + high.significant() >= DIGITS_BEYOND_CHANCE
}

/// Whether a row is odd for what it is, or contradicts itself.
fn is_doubtful(read: &Read<'_>, bore: Option<&NominalBore<'_>>, findings: &Findings) -> bool {
    findings.doubtful.contains(&read.row.index) || magnitude::standing(read.row, bore) != Standing::Usual
}

fn report(group: &[Read<'_>], bore: Option<&NominalBore<'_>>, findings: &mut Findings) {
    let texts: Vec<_> = group.iter().map(|read| (read.row, read.text)).collect();
    let printed = texts.first().map_or("", |(_, text)| text.printed.as_str());
    let said = format!("\"{printed}\" stands in rows of different quantities");
    let doubtful: Vec<bool> = group.iter().map(|read| is_doubtful(read, bore, findings)).collect();
    // with no row more doubtful than another, any may be the copy
    let any = doubtful.iter().all(|doubt| *doubt == doubtful.first().copied().unwrap_or_default());
    let copies = group.iter().zip(&doubtful).filter(|(_, doubt)| any || **doubt);
    let from = |copy: &Read<'_>| {
        let other = group
            .iter()
            .zip(&doubtful)
            .find(|(other, doubt)| other.row.index != copy.row.index && (any || !**doubt));
        other.map(|(other, _)| Suspicion {
            slip: Slip::CopiedRow,
            path: copy.text.path.clone(),
            text: format!("copied from row {}", other.row.id),
        })
    };
    let suspected = copies.filter_map(|(copy, _)| from(copy)).collect();
    findings.contradict(Check::CopiedRow, &texts, said, Vec::new(), suspected);
}
