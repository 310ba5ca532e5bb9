//! (c) is the number possible at all: for what it is, for this bore, beside the new part.
//!
//! The ranges are guide ranges of the trade for bores of 20 mm to 1100 mm: common practice, no source. They tell a unit or a
//! decimal place from its neighbour, no more.

use super::document::{Dimension, What};
use super::exact::{Fraction, Span};
use super::found::{Findings, Read, Row};
use super::number::{Change, Number};
use super::report::{Check, Suspicion, WouldBe};
use super::slip;
use crate::job::Warning;

/// Smallest and largest, in millionths: of a mm, of a degree Celsius, of 1, or of the bore.
type Range = (i64, i64);

/// A possible and a usual range.
#[derive(Debug, Clone, Copy)]
struct Guide {
    possible: Range,
    usual: Range,
}

/// Millionths of a mm in so many um.
const fn um(from: i64, to: i64) -> Range {
    (from * 1_000, to * 1_000)
}

/// Millionths of a degree.
const fn degrees(from: i64, to: i64) -> Range {
    (from * 1_000_000, to * 1_000_000)
}

/// Millionths of the bore in so many parts per thousand of it.
const fn per_mille(from: i64, to: i64) -> Range {
    (from * 1_000, to * 1_000)
}

impl What {
    /// The range for an engine of any size.
    fn guide(self) -> Option<Guide> {
        let guide = |possible, usual| Some(Guide { possible, usual });
        match self {
            What::Bore | What::PistonDiameter => guide(um(10_000, 1_100_000), um(20_000, 1_000_000)),
            What::Grade | What::PinDiameter | What::PinBore => {
                guide(um(5_000, 1_100_000), um(8_000, 1_000_000))
            }
            What::Clearance => guide(um(-200, 3_000), um(0, 1_000)),
            What::OversizeStep => guide(um(1, 5_000), um(100, 1_530)),
            What::PinClearance => guide(um(-150, 200), um(-60, 60)),
            What::RingWidth | What::GrooveWidth => guide(um(300, 50_000), um(700, 20_000)),
            What::RingSideClearance => guide(um(9, 500), um(10, 300)),
            What::Taper | What::OutOfRound => guide(um(0, 1_000), um(0, 500)),
            What::HoneStock => guide(um(0, 500), um(0, 200)),
            What::Temperature => guide(degrees(-273, 2_000), degrees(-60, 1_200)),
            What::MeasuringTemperature => guide(degrees(-5, 60), degrees(5, 45)),
            What::HeatingTemperature => guide(degrees(0, 400), degrees(40, 350)),
            What::Bend => guide((0, 10_000), (0, 3_000)),
            What::ClearancePerBore => guide(per_mille(-2, 5), per_mille(0, 3)),
            What::RingGapPerBore => guide((500, 15_000), (1_000, 12_000)),
            _ => None,
        }
    }

    /// The range by the nominal bore. A sheet lists oversizes, so sizes may exceed it by more than a fit would.
    fn guide_by_bore(self) -> Option<Guide> {
        let guide = |possible, usual| Some(Guide { possible, usual });
        match self {
            What::Bore => guide(per_mille(900, 1_100), per_mille(980, 1_070)),
            What::PistonDiameter => guide(per_mille(980, 1_100), per_mille(990, 1_070)),
            What::Clearance => guide(per_mille(-2, 5), per_mille(0, 3)),
            What::RingGap => guide((500, 15_000), (1_000, 12_000)),
            What::PinDiameter | What::PinBore => guide(per_mille(100, 700), per_mille(150, 500)),
            What::Stroke => guide(per_mille(200, 6_000), per_mille(300, 4_500)),
            _ => None,
        }
    }
}

/// How a number stands to a guide range.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Standing {
    Usual,
    Odd,
    Impossible,
}

/// The guide ranges of one entry, as spans.
#[derive(Debug)]
struct Ranges {
    possible: Vec<Span>,
    usual: Vec<Span>,
}

/// The nominal bore all orders of magnitude are held against.
#[derive(Debug, Clone, Copy)]
pub(super) struct NominalBore<'s> {
    read: Read<'s>,
    span: Span,
}

impl<'s> NominalBore<'s> {
    /// The bore of an entry; none when it is no bore of any engine, so that one slip is not reported for every entry.
    pub(super) fn new(row: &'s Row) -> Option<Self> {
        let read = row.read().into_iter().next()?;
        let span = read.reading.whole_span()?;
        let ranges = Ranges::new(row.what, None)?;
        let possible = read.reading.ends().iter().all(|end| ranges.judge(&read, end) != Standing::Impossible);
        possible.then_some(NominalBore { read, span })
    }
}

impl Ranges {
    fn new(what: What, bore: Option<&NominalBore<'_>>) -> Option<Self> {
        let mut ranges = Ranges { possible: Vec::new(), usual: Vec::new() };
        let unit = match what.dimension() {
            Dimension::Ratio => 1,
            other => other.unit()?,
        };
        if let Some(guide) = what.guide() {
            let unit = Span::around(unit, 0);
            ranges.possible.extend(scaled(&unit, guide.possible));
            ranges.usual.extend(scaled(&unit, guide.usual));
        }
        if let Some((guide, bore)) = what.guide_by_bore().zip(bore) {
            ranges.possible.extend(scaled(&bore.span, guide.possible));
            ranges.usual.extend(scaled(&bore.span, guide.usual));
        }
        (!ranges.possible.is_empty()).then_some(ranges)
    }

    fn judge(&self, read: &Read<'_>, number: &Number) -> Standing {
        // from nothing to something is a manner of speaking
        if number.value == 0 && read.reading.second.is_some() {
            return Standing::Usual;
        }
        let Some(span) = read.reading.span(number) else {
            return Standing::Usual;
        };
        let within = |ranges: &[Span]| ranges.iter().all(|range| range.meets(&span));
        match (within(&self.possible), within(&self.usual)) {
            (false, _) => Standing::Impossible,
            (true, false) => Standing::Odd,
            (true, true) => Standing::Usual,
        }
    }

    /// The possible range in the unit of a number.
    fn words(&self, read: &Read<'_>, number: &Number) -> Option<String> {
        let low = self.possible.iter().map(|range| range.low).max()?;
        let high = self.possible.iter().map(|range| range.high).min()?;
        let (low, high) = (read.reading.render(number, low)?, read.reading.render(number, high)?);
        Some(format!("{low} to {high}"))
    }
}

/// From the smallest to the largest that a range allows for a size that is itself a span.
fn scaled(unit: &Span, range: Range) -> Option<Span> {
    let times = |millionths: i64, end: Fraction| Fraction::new(i128::from(millionths), 1_000_000)?.times(end);
    let low = times(range.0, if range.0 < 0 { unit.high } else { unit.low })?;
    let high = times(range.1, if range.1 < 0 { unit.low } else { unit.high })?;
    Some(Span { low, high })
}

/// How the worst number of a row stands.
pub(super) fn standing(row: &Row, bore: Option<&NominalBore<'_>>) -> Standing {
    let Some(ranges) = Ranges::new(row.what, bore) else {
        return Standing::Usual;
    };
    let worst = |read: &Read<'_>| read.reading.ends().map(|end| ranges.judge(read, &end)).into_iter().max();
    row.read().iter().filter_map(worst).max().unwrap_or(Standing::Usual)
}

/// (c) for one entry.
pub(super) fn check(row: &Row, bore: Option<&NominalBore<'_>>, findings: &mut Findings) {
    check_width(row, findings);
    let Some(ranges) = Ranges::new(row.what, bore) else {
        return;
    };
    findings.applied(Check::OrderOfMagnitude, row);
    for read in row.read() {
        let ends = read.reading.ends();
        let worst = ends.iter().max_by_key(|end| ranges.judge(&read, end));
        let Some((end, standing)) = worst.map(|end| (end, ranges.judge(&read, end))) else {
            continue;
        };
        match standing {
            Standing::Usual => {}
            Standing::Odd => findings.warnings.push(odd(&read)),
            Standing::Impossible => {
                findings.doubtful.insert(row.index);
                impossible(&read, end, &ranges, bore, findings);
            }
        }
        // the other text says the same, or does not agree and is reported for that
        if standing != Standing::Usual {
            return;
        }
    }
}

fn odd(read: &Read<'_>) -> Warning {
    let what = read.row.what.spoken();
    Warning {
        kind: "odd_value".to_owned(),
        path: read.text.path.clone(),
        text: format!("\"{}\" is odd for the entry {what}", read.text.printed),
    }
}

fn impossible(
    read: &Read<'_>,
    end: &Number,
    ranges: &Ranges,
    bore: Option<&NominalBore<'_>>,
    findings: &mut Findings,
) {
    let bore =
        bore.filter(|bore| read.row.what.guide_by_bore().is_some() && bore.read.row.index != read.row.index);
    let beside = bore.map_or(String::new(), |bore| format!(" with a bore of \"{}\"", bore.read.text.printed));
    let what = read.row.what.spoken();
    let said = format!("\"{}\" is no {what}{beside}", read.text.printed);
    let mut texts = vec![(read.row, read.text)];
    texts.extend(bore.map(|bore| (bore.read.row, bore.read.text)));
    let would_be = ranges.words(read, end).map(|range| WouldBe {
        path: read.text.path.clone(),
        printed: read.reading.written(end),
        would_be: range,
    });
    let would_be = would_be.into_iter().collect();
    findings.contradict(Check::OrderOfMagnitude, &texts, said, would_be, slips(read, ranges));
}

/// The slips that, made in every number of the text, leave it usual.
fn slips(read: &Read<'_>, ranges: &Ranges) -> Vec<Suspicion> {
    let ends = read.reading.ends();
    let usual = |ends: &[Number]| ends.iter().all(|end| ranges.judge(read, end) == Standing::Usual);
    let numbers = if read.reading.second.is_some() { 2 } else { 1 };
    let say = |change: Change, changed: Vec<Number>| {
        let fits = changed.len() == ends.len() && usual(&changed);
        fits.then(|| {
            slip::suspicion(read, change, changed.get(..numbers).unwrap_or_default(), "would be usual")
        })
    };
    let points = [-1, 1, -2, 2, -3, 3].into_iter().map(|places| {
        say(Change::Point(places), ends.iter().filter_map(|end| end.point_moved(places)).collect())
    });
    let units = ends[0]
        .in_other_units()
        .into_iter()
        .map(|other| say(Change::Unit, ends.iter().filter_map(|end| end.in_unit_of(&other)).collect()));
    points.chain(units).flatten().collect()
}

/// Widest printed range of a size, in hundredths of it. Common practice, no source: a part worn by more is no part.
const WIDEST_SIZE: i128 = 2;

/// A size is printed with a range that is small beside it.
fn check_width(row: &Row, findings: &mut Findings) {
    if !row.what.is_size() {
        return;
    }
    for read in row.read() {
        let [low, high] = read.reading.ordered();
        findings.applied(Check::OrderOfMagnitude, row);
        let width = high.value - low.value - high.half - low.half;
        if width * 100 <= high.value * WIDEST_SIZE {
            continue;
        }
        findings.doubtful.insert(row.index);
        let said = format!("\"{}\" is wider than {WIDEST_SIZE} % of the size", read.text.printed);
        let near = |of: &Number, to: &Number| {
            let half = to.value * WIDEST_SIZE / 100;
            slip::suspect_of(&read, of, &Span::around(to.value, half.abs()), "would be near enough")
        };
        let suspected = near(&low, &high).into_iter().chain(near(&high, &low)).collect();
        let texts = [(row, read.text)];
        return findings.contradict(Check::OrderOfMagnitude, &texts, said, Vec::new(), suspected);
    }
}

/// Most times the largest new value a limit for wear may be. Common practice, no source: limits for wear run to a few times
/// what is new, and ten times is a decimal place.
const LARGEST_WEAR: i128 = 10;

/// (c): a limit for a worn part beside what is printed for a new one.
pub(super) fn check_wear(limit: &Row, new: &Row, findings: &mut Findings) {
    let (Some(limit), Some(new)) = (limit.read().into_iter().next(), new.read().into_iter().next()) else {
        return;
    };
    [limit.row, new.row].iter().for_each(|row| findings.applied(Check::OrderOfMagnitude, row));
    let (least, most) = (new.reading.ordered()[0], new.reading.ordered()[1]);
    let [low, high] = limit.reading.ordered();
    let (worn, allowed) = if limit.row.what.wears_down() {
        (low, down_from(limit.row.what, &least))
    } else {
        (high, up_from(limit.row.what, &most))
    };
    // beside an interference nothing is said of wear
    let Some(allowed) = allowed.filter(|allowed| allowed.low <= allowed.high) else {
        return;
    };
    if limit.reading.span(&worn).is_none_or(|span| span.meets(&allowed)) {
        return;
    }
    findings.doubtful.insert(limit.row.index);
    let said = format!(
        "\"{}\" cannot be the limit for a part that is \"{}\" when new",
        limit.text.printed, new.text.printed
    );
    let range = limit.reading.render(&worn, allowed.low).zip(limit.reading.render(&worn, allowed.high));
    let would_be = limit.would_be(&worn, range.map(|(low, high)| format!("{low} to {high}")));
    let suspected = slip::suspect(&limit, &worn, &allowed);
    let texts = [(limit.row, limit.text), (new.row, new.text)];
    let (would_be, suspected) = (would_be.into_iter().collect(), suspected.into_iter().collect());
    findings.contradict(Check::OrderOfMagnitude, &texts, said, would_be, suspected);
}

/// What a limit may be for a part that wear makes smaller.
fn down_from(what: What, new: &Number) -> Option<Span> {
    let percent = if what.is_size() { 100 - WIDEST_SIZE } else { 100 / LARGEST_WEAR };
    let low = Fraction::whole(new.value - new.half).times(Fraction::new(percent, 100)?)?;
    Some(Span { low, high: Fraction::whole(new.value + new.half) })
}

/// What a limit may be for a part or a clearance that wear makes larger.
fn up_from(what: What, new: &Number) -> Option<Span> {
    let percent = if what.is_size() { 100 + WIDEST_SIZE } else { 100 * LARGEST_WEAR };
    let high = Fraction::whole(new.value + new.half).times(Fraction::new(percent, 100)?)?;
    Some(Span { low: Fraction::whole(new.value - new.half), high })
}
