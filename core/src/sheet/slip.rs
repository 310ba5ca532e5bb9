//! Which single slip would make a number agree.

use super::exact::Span;
use super::found::Read;
use super::number::{Change, Number};
use super::report::{Slip, Suspicion};

/// The commonest change of a number with which it meets `target`, and of the numbers it makes the one nearest to it.
fn change(read: &Read<'_>, number: &Number, target: &Span) -> Option<(Change, Number)> {
    let mut best: Option<(Change, Number, f64)> = None;
    for (change, candidate) in number.changes() {
        // a change that is less common than one that was found; moves of the point are one kind, the shortest first
        let same_kind = |found: Change| found == change && !matches!(found, Change::Point(_));
        if best.as_ref().is_some_and(|(found, ..)| !same_kind(*found)) {
            break;
        }
        let Some(span) = read.reading.span(&candidate).filter(|span| span.meets(target)) else {
            continue;
        };
        let off = (span.nearly() - target.nearly()).abs();
        if best.as_ref().is_none_or(|(.., nearest)| off < *nearest) {
            best = Some((change, candidate, off));
        }
    }
    best.map(|(change, candidate, _)| (change, candidate))
}

/// The same as a suspicion.
pub(super) fn suspect(read: &Read<'_>, number: &Number, target: &Span) -> Option<Suspicion> {
    suspect_of(read, number, target, "would agree")
}

/// The same, with another word for what the changed number would do.
pub(super) fn suspect_of(
    read: &Read<'_>,
    number: &Number,
    target: &Span,
    verdict: &str,
) -> Option<Suspicion> {
    let (change, candidate) = change(read, number, target)?;
    Some(suspicion(read, change, &[candidate], verdict))
}

/// A change in words, with the numbers it makes.
pub(super) fn suspicion(read: &Read<'_>, change: Change, changed: &[Number], verdict: &str) -> Suspicion {
    let (slip, words) = named(read, change);
    let numbers: Vec<String> = changed.iter().map(|number| read.reading.written(number)).collect();
    let text = format!("{words}: {} {verdict}", numbers.join(" to "));
    Suspicion { slip, path: read.text.path.clone(), text }
}

fn named(read: &Read<'_>, change: Change) -> (Slip, &'static str) {
    match change {
        Change::Point(-1 | 1) => (Slip::DecimalPoint, "the decimal point one place off"),
        Change::Point(-2 | 2) => (Slip::DecimalPoint, "the decimal point two places off"),
        Change::Point(_) => (Slip::DecimalPoint, "the decimal point three places off"),
        Change::Digit => (Slip::Digit, "a digit"),
        Change::Transposed => (Slip::DigitsExchanged, "two digits exchanged"),
        Change::LeftOut => (Slip::DigitLeftOut, "a digit left out"),
        Change::LastTooMany if has_degree_sign(&read.text.printed) => {
            (Slip::DigitTooMany, "a digit too many")
        }
        Change::LastTooMany => (Slip::DegreeSign, "the degree sign read as a digit"),
        Change::TooMany => (Slip::DigitTooMany, "a digit too many"),
        Change::Unit => (Slip::Unit, "the unit"),
        Change::Sign => (Slip::Sign, "the sign"),
    }
}

/// Degree sign, and what stands for it.
fn has_degree_sign(text: &str) -> bool {
    text.contains(['\u{b0}', '\u{ba}', '\u{2da}', '\u{2103}', '\u{2109}']) || text.contains("deg")
}
