//! (a), (h), (i) the texts of one entry in two units, and (j) one quantity from two sources.

use super::document::{Dimension, What};
use super::exact::{Fraction, Span};
use super::found::{Findings, Read, Row};
use super::number::Number;
use super::printed::{Reading, Side};
use super::report::{Check, Slip, Suspicion, WouldBe};
use super::slip;

/// The numbers of two texts that should agree and do not.
pub(super) type Differing = Vec<(Number, Number)>;

/// Whether two numbers can be the same.
fn meets(a: &Reading, x: &Number, b: &Reading, y: &Number) -> bool {
    a.span(x).zip(b.span(y)).is_some_and(|(x, y)| x.meets(&y))
}

/// The pairs of numbers that differ by more than their rounding.
pub(super) fn differing(a: &Reading, b: &Reading) -> Differing {
    let apart = |pairs: &[(Number, Number)]| -> Differing {
        pairs.iter().filter(|(x, y)| !meets(a, x, b, y)).copied().collect()
    };
    let pairs = |x: [Number; 2], y: [Number; 2]| x.into_iter().zip(y).collect::<Vec<_>>();
    match (a.second, b.second) {
        (None, None) => apart(&[(a.first, b.first)]),
        // ends that stand the wrong way round are another check's business
        (Some(_), Some(_)) if apart(&pairs(a.ordered(), b.ordered())).is_empty() => Vec::new(),
        (Some(_), Some(_)) => apart(&pairs(a.ends(), b.ends())),
        (Some(_), None) => apart_from_single(a, b),
        (None, Some(_)) => apart_from_single(b, a).into_iter().map(|(y, x)| (x, y)).collect(),
    }
}

/// A range beside one value: the value is its top where the range begins at zero or the value is a maximum, its bottom where
/// the value is a minimum, and otherwise somewhere within.
fn apart_from_single(range: &Reading, single: &Reading) -> Differing {
    let [low, high] = range.ordered();
    let top = low.value == 0 || single.side == Side::AtMost;
    let (end, agrees) = if top {
        (high, meets(range, &high, single, &single.first))
    } else if single.side == Side::AtLeast {
        (low, meets(range, &low, single, &single.first))
    } else {
        let within = range.whole_span().zip(single.span(&single.first));
        (high, within.is_some_and(|(range, single)| range.meets(&single)))
    };
    if agrees { Vec::new() } else { vec![(end, single.first)] }
}

/// (a), (h), (i): the two texts of an entry.
pub(super) fn check_units(row: &Row, findings: &mut Findings) {
    let read = row.read();
    let [a, b] = read.as_slice() else {
        return;
    };
    let check = match row.what.dimension() {
        Dimension::Length | Dimension::Force => Check::DualUnit,
        Dimension::Ratio => Check::RatioBase,
        Dimension::Temperature | Dimension::Difference => Check::TemperatureScale,
    };
    findings.applied(check, row);
    let differing = differing(&a.reading, &b.reading);
    if differing.is_empty() {
        return;
    }
    findings.doubtful.insert(row.index);
    let said =
        format!("\"{}\" and \"{}\" do not agree within their rounding", a.text.printed, b.text.printed);
    let texts = [(a.row, a.text), (b.row, b.text)];
    findings.contradict(check, &texts, said, would_be(a, b, &differing), suspected(a, b, &differing));
}

/// (j): one quantity from two sources.
pub(super) fn check_sources(first: &Row, second: &Row, findings: &mut Findings) {
    let Some((a, b)) = in_one_unit(first, second) else {
        return;
    };
    let check = if a.reading.is_ratio() { Check::RatioBase } else { Check::TwoSources };
    [first, second].iter().for_each(|row| findings.applied(check, row));
    let differing = differing(&a.reading, &b.reading);
    if differing.is_empty() {
        return;
    }
    let said = format!(
        "\"{}\" and \"{}\" are printed for the same and do not agree within their rounding",
        a.text.printed, b.text.printed
    );
    let mut suspects: Vec<Suspicion> = exact_factor(&a, &b).into_iter().collect();
    if suspects.is_empty() {
        suspects = suspected(&a, &b, &differing);
    }
    let texts = [(a.row, a.text), (b.row, b.text)];
    findings.contradict(check, &texts, said, would_be(&a, &b, &differing), suspects);
}

/// The texts of two entries that are in the same unit, or the first of each.
fn in_one_unit<'s>(first: &'s Row, second: &'s Row) -> Option<(Read<'s>, Read<'s>)> {
    let (first, second) = (first.read(), second.read());
    let pairs = first.iter().flat_map(|a| second.iter().map(move |b| (*a, *b)));
    let same = pairs.clone().find(|(a, b)| a.reading.first.unit.name == b.reading.first.unit.name);
    same.or_else(|| pairs.clone().next())
}

/// What the numbers that differ would be by the other text.
pub(super) fn would_be(a: &Read<'_>, b: &Read<'_>, differing: &[(Number, Number)]) -> Vec<WouldBe> {
    let by = |of: &Read<'_>, number: &Number, other: &Read<'_>, of_other: &Number| {
        let value = other.reading.point(of_other)?;
        of.would_be(number, of.reading.render(number, value))
    };
    let of_a = differing.iter().filter_map(|(x, y)| by(a, x, b, y));
    let of_b = differing.iter().filter_map(|(x, y)| by(b, y, a, x));
    of_a.chain(of_b).collect()
}

/// The slips that would explain what differs: one for all numbers, or else for each.
pub(super) fn suspected(a: &Read<'_>, b: &Read<'_>, differing: &[(Number, Number)]) -> Vec<Suspicion> {
    let common = other_dimension(a, b, differing).or_else(|| other_base(a, b));
    if let Some(common) = common {
        return vec![common];
    }
    let of_a = differing.iter().filter_map(|(x, y)| slip::suspect(a, x, &b.reading.span(y)?));
    let of_b = differing.iter().filter_map(|(x, y)| slip::suspect(b, y, &a.reading.span(x)?));
    of_a.chain(of_b).collect()
}

/// A temperature difference that was converted as a temperature, or the other way round: read so, both texts agree.
fn other_dimension(a: &Read<'_>, b: &Read<'_>, differing: &[(Number, Number)]) -> Option<Suspicion> {
    let (other, slip, words) = match a.row.what.dimension() {
        Dimension::Difference => (
            Dimension::Temperature,
            Slip::DifferenceAsTemperature,
            "a temperature difference converted as a temperature",
        ),
        Dimension::Temperature => (
            Dimension::Difference,
            Slip::TemperatureAsDifference,
            "a temperature converted as a temperature difference",
        ),
        _ => return None,
    };
    let agree = |(x, y): &(Number, Number)| {
        let (x, y) = (x.in_dimension(other)?, y.in_dimension(other)?);
        Span::around(x.value, x.half).meets(&Span::around(y.value, y.half)).then_some(())
    };
    differing.iter().try_for_each(agree)?;
    // degrees Celsius are what such sheets are written in
    let converted = if a.reading.first.unit.name.ends_with('F') { (a, b) } else { (b, a) };
    let rendered = would_be(a, b, differing);
    let of_it: Vec<&str> =
        rendered.iter().filter(|w| w.path == converted.0.text.path).map(|w| w.would_be.as_str()).collect();
    let text = format!("{words}: {} would agree", of_it.join(" to "));
    Some(Suspicion { slip, path: converted.0.text.path.clone(), text })
}

/// Factors between two bases, and what they come from.
const BASES: &[(i128, i128, Slip, &str)] = &[
    (254, 10, Slip::RatioConverted, "a dimensionless ratio converted as a length"),
    (4, 1, Slip::OtherBase, "per 25 mm in one and per 100 mm in the other"),
    (10_000, 2_540, Slip::OtherBase, "per inch in one and per 100 mm in the other"),
    (10, 1, Slip::DecimalPoint, "the decimal point one place off"),
];

/// A ratio that was converted, or is per another length.
fn other_base(a: &Read<'_>, b: &Read<'_>) -> Option<Suspicion> {
    if !a.reading.is_ratio() {
        return None;
    }
    let fits = |(over, under, slip, words): &(i128, i128, Slip, &str)| {
        let larger = by_factor(&a.reading, &b.reading, Fraction::new(*over, *under)?)?;
        let read = if larger == Larger::First { a } else { b };
        let other = if larger == Larger::First { b } else { a };
        let value = other.reading.point(&other.reading.first)?;
        let text = match read.reading.render(&read.reading.first, value) {
            Some(number) => format!("{words}: {number} would agree"),
            None => (*words).to_owned(),
        };
        Some(Suspicion { slip: *slip, path: read.text.path.clone(), text })
    };
    BASES.iter().find_map(fits)
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Larger {
    First,
    Second,
}

/// Which text is the other times a factor, in all its numbers.
fn by_factor(a: &Reading, b: &Reading, factor: Fraction) -> Option<Larger> {
    let same_form = a.second.is_some() == b.second.is_some();
    let times = |large: &Reading, small: &Reading| {
        let pairs = large.ends().into_iter().zip(small.ends());
        same_form && pairs.into_iter().all(|(x, y)| is_times(large, &x, small, &y, factor).unwrap_or(false))
    };
    if times(a, b) { Some(Larger::First) } else { times(b, a).then_some(Larger::Second) }
}

fn is_times(large: &Reading, x: &Number, small: &Reading, y: &Number, factor: Fraction) -> Option<bool> {
    Some(large.span(x)?.meets(&small.span(y)?.times(factor)?))
}

/// Exact factors that come from a habit, and the habit.
const FACTORS: &[(i128, i128, &str)] = &[
    (2, 1, "exactly 2: one per side or radius, the other over the diameter"),
    (10, 1, "exactly 10: the decimal point one place off"),
    (254, 10, "exactly 25.4: one in inches, the other in millimetres"),
    (100, 1, "exactly 100: the decimal point two places off"),
    (1000, 1, "exactly 1000: mm and um, or inches and thou"),
];

/// A factor between two sources; of several within the rounding the nearest.
fn exact_factor(a: &Read<'_>, b: &Read<'_>) -> Option<Suspicion> {
    // degrees have no factors: their zero is not one
    if a.row.what.dimension() == Dimension::Temperature {
        return None;
    }
    let ratio = ratio(a, b)?;
    let off = |factor: &Fraction| (ratio / factor.nearly() - 1.0).abs();
    let fits = |(over, under, words): &(i128, i128, &'static str)| {
        let factor = Fraction::new(*over, *under)?;
        by_factor(&a.reading, &b.reading, factor).map(|larger| (off(&factor), larger, *words))
    };
    let nearest = FACTORS.iter().filter_map(fits).min_by(|x, y| x.0.total_cmp(&y.0));
    nearest.map(|(_, larger, words)| {
        let larger = if larger == Larger::First { a } else { b };
        let text = format!("a factor of {words}; \"{}\" is the larger", larger.text.printed);
        Suspicion { slip: Slip::ExactFactor, path: larger.text.path.clone(), text }
    })
}

/// How many times the smaller the larger is, roughly.
fn ratio(a: &Read<'_>, b: &Read<'_>) -> Option<f64> {
    let top = |read: &Read<'_>| {
        let [_, high] = read.reading.ordered();
        read.reading.point(&high).map(|at| at.nearly().abs()).filter(|size| *size > 0.0)
    };
    let (a, b) = (top(a)?, top(b)?);
    Some(if a > b { a / b } else { b / a })
}

/// pi, from below and from above.
const PI: (i128, i128, i128) = (31_415_926_535, 31_415_926_536, 10_000_000_000);

/// (h): a ring gap grows by pi times what the bore grows by, because the ring is cut from a circumference.
pub(super) fn check_gap_growth(row: &Row, findings: &mut Findings) {
    if row.what != What::RingGapGrowth {
        return;
    }
    for read in row.read() {
        findings.applied(Check::RatioBase, row);
        let [low, high] = read.reading.ordered();
        let pi = Fraction::new(PI.0, PI.2).zip(Fraction::new(PI.1, PI.2));
        let span = read.reading.span(&low).zip(read.reading.span(&high));
        let (Some((below, above)), Some((low_span, high_span))) = (pi, span) else {
            continue;
        };
        if low_span.low <= above && high_span.high >= below {
            continue;
        }
        let would_be = read.would_be(&high, read.reading.render(&high, above));
        let said = format!(
            "\"{}\" is not pi within its rounding: a ring gap grows by pi times what the bore grows by",
            read.text.printed
        );
        let suspicion = Suspicion {
            slip: Slip::RoundedTwice,
            path: read.text.path.clone(),
            text: "the gap was rounded and converted more than once".to_owned(),
        };
        let would_be = would_be.into_iter().collect();
        findings.contradict(Check::RatioBase, &[(row, read.text)], said, would_be, vec![suspicion]);
    }
}
