//! (d), (e), (f) entries tied by arithmetic: a signed sum of printed numbers is zero within their rounding.

use super::exact::{Fraction, Span};
use super::found::{Findings, Read, Row, Text};
use super::number::Number;
use super::printed::Side;
use super::report::{Check, Slip, Suspicion, WouldBe};
use super::slip;

/// Which sums are in order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Allowed {
    Zero,
    NotBelowZero,
    NotAboveZero,
}

/// One number of a sum.
#[derive(Debug, Clone, Copy)]
struct Term<'s> {
    read: Read<'s>,
    number: Number,
    sign: i128,
}

/// Numbers of several texts whose signed sum, with a constant, should be zero.
#[derive(Debug)]
struct Sum<'s> {
    terms: Vec<Term<'s>>,
    constant: i128,
    allowed: Allowed,
}

fn plus<'s>(read: &Read<'s>, number: Number) -> Term<'s> {
    Term { read: *read, number, sign: 1 }
}

fn minus<'s>(read: &Read<'s>, number: Number) -> Term<'s> {
    Term { read: *read, number, sign: -1 }
}

impl<'s> Sum<'s> {
    fn new(terms: Vec<Term<'s>>) -> Self {
        Sum { terms, constant: 0, allowed: Allowed::Zero }
    }

    /// The sum, and the half units of its numbers together.
    fn total(&self) -> (i128, i128) {
        let value = self.terms.iter().map(|term| term.sign * term.number.value).sum::<i128>();
        (value + self.constant, self.terms.iter().map(|term| term.number.half).sum())
    }

    fn holds(&self) -> bool {
        let (value, rounding) = self.total();
        match self.allowed {
            Allowed::Zero => value.abs() <= rounding,
            Allowed::NotBelowZero => value >= -rounding,
            Allowed::NotAboveZero => value <= rounding,
        }
    }

    /// What a number would be by all others.
    fn target(&self, term: &Term<'_>) -> (i128, Span) {
        let (value, rounding) = self.total();
        let by_others = term.number.value - term.sign * value;
        (by_others, Span::around(by_others, rounding - term.number.half))
    }

    fn would_be(&self) -> Vec<WouldBe> {
        let of = |term: &Term<'_>| {
            let value = Fraction::whole(self.target(term).0);
            term.read.would_be(&term.number, term.read.reading.render(&term.number, value))
        };
        self.terms.iter().filter_map(of).collect()
    }

    fn suspected(&self) -> Vec<Suspicion> {
        let of = |term: &Term<'_>| slip::suspect(&term.read, &term.number, &self.target(term).1);
        self.terms.iter().filter_map(of).collect()
    }
}

/// Reports the sums of one link that do not hold, together.
fn report(check: Check, texts: &[Read<'_>], sums: &[Sum<'_>], said: String, findings: &mut Findings) {
    let broken: Vec<&Sum<'_>> = sums.iter().filter(|sum| !sum.holds()).collect();
    if broken.is_empty() {
        return;
    }
    let texts: Vec<(&Row, &Text)> = texts.iter().map(|read| (read.row, read.text)).collect();
    let would_be = broken.iter().flat_map(|sum| sum.would_be()).collect();
    let suspected = broken.iter().flat_map(|sum| sum.suspected()).collect();
    findings.contradict(check, &texts, said, would_be, suspected);
}

/// The texts of the entries unit by unit: in millimetres and in inches where all have one, else the first text of each. Sums of
/// one unit have the rounding of that unit only.
fn columns<'s>(rows: &[&'s Row]) -> Vec<Vec<Read<'s>>> {
    let in_unit = |inch: bool| -> Option<Vec<Read<'s>>> {
        let of_row = |row: &&'s Row| row.read().into_iter().find(|r| r.reading.first.unit.is_inch() == inch);
        rows.iter().map(of_row).collect()
    };
    let columns: Vec<_> = [in_unit(false), in_unit(true)].into_iter().flatten().collect();
    if !columns.is_empty() {
        return columns;
    }
    let first: Option<Vec<Read<'s>>> = rows.iter().map(|row| row.read().into_iter().next()).collect();
    first.into_iter().collect()
}

/// (e) oversize = standard + step.
pub(super) fn check_oversize(standard: &Row, step: &Row, oversize: &Row, findings: &mut Findings) {
    for column in columns(&[standard, step, oversize]) {
        let [base, by, over] = column.as_slice() else {
            continue;
        };
        column.iter().for_each(|read| findings.applied(Check::Oversize, read.row));
        let ends = |read: &Read<'_>| read.reading.ordered();
        let [step_low, step_high] = ends(by);
        let sum = |over_end: Number, base_end: Number, by_end: Number, allowed| Sum {
            allowed,
            ..Sum::new(vec![plus(over, over_end), minus(base, base_end), minus(by, by_end)])
        };
        // of a range and a single value the single value is somewhere within
        let same_form = base.reading.second.is_some() == over.reading.second.is_some();
        let (low, high) = match (same_form, over.reading.second) {
            (true, _) => (Allowed::Zero, Allowed::Zero),
            (false, None) => (Allowed::NotBelowZero, Allowed::NotAboveZero),
            (false, Some(_)) => (Allowed::NotAboveZero, Allowed::NotBelowZero),
        };
        let [over_low, over_high] = ends(over);
        let [base_low, base_high] = ends(base);
        let sums = [sum(over_low, base_low, step_low, low), sum(over_high, base_high, step_high, high)];
        // two single values make one sum
        let single = over.reading.second.is_none() && base.reading.second.is_none();
        let sums = if single { sums.get(..1).unwrap_or_default() } else { &sums };
        let said =
            format!("\"{}\" is not \"{}\" and \"{}\"", over.text.printed, base.text.printed, by.text.printed);
        report(Check::Oversize, &column, sums, said, findings);
    }
}

/// (f) clearance = outer - inner, for every pair of parts or for selected ones.
pub(super) fn check_clearance(
    outer: &Row,
    inner: &Row,
    clearance: &Row,
    every: bool,
    findings: &mut Findings,
) {
    for column in columns(&[outer, inner, clearance]) {
        let [outer, inner, fit] = column.as_slice() else {
            continue;
        };
        column.iter().for_each(|read| findings.applied(Check::Clearance, read.row));
        let [outer_low, outer_high] = outer.reading.ordered();
        let [inner_low, inner_high] = inner.reading.ordered();
        let [fit_low, fit_high] = fit.reading.ordered();
        let range = outer.reading.second.is_some() || inner.reading.second.is_some();
        // one value for a range of pairs is that of some of them
        let exact = every && (!range || fit.reading.second.is_some() || fit.reading.side != Side::Both);
        let [low, high] = match exact {
            true => [Allowed::Zero; 2],
            false => [Allowed::NotBelowZero, Allowed::NotAboveZero],
        };
        let sum = |fit_end: Number, outer_end: Number, inner_end: Number, allowed| Sum {
            allowed,
            ..Sum::new(vec![plus(fit, fit_end), minus(outer, outer_end), plus(inner, inner_end)])
        };
        let loosest = sum(fit_high, outer_high, inner_low, high);
        let tightest = sum(fit_low, outer_low, inner_high, low);
        let sums = match fit.reading.side {
            Side::AtMost => vec![loosest],
            Side::AtLeast => vec![tightest],
            Side::Both => vec![tightest, loosest],
        };
        let said = format!(
            "\"{}\" is not \"{}\" less \"{}\"",
            fit.text.printed, outer.text.printed, inner.text.printed
        );
        report(Check::Clearance, &column, &sums, said, findings);
    }
}

/// (d) grades in order of size.
pub(super) fn check_ladder(rows: &[&Row], findings: &mut Findings) {
    check_units(rows, findings);
    for column in columns(rows) {
        column.iter().for_each(|read| findings.applied(Check::Ladder, read.row));
        let ranges = column.iter().filter(|read| read.reading.second.is_some()).count();
        if ranges == column.len() {
            Ladder::new(&column).check(findings);
        } else if ranges == 0 {
            check_steps(&column, findings);
        } else {
            let odd = column.iter().filter(|read| read.reading.second.is_none());
            let texts: Vec<(&Row, &Text)> = odd.map(|read| (read.row, read.text)).collect();
            let said = "a single value stands among ranges".to_owned();
            findings.contradict(Check::Ladder, &texts, said, Vec::new(), Vec::new());
        }
    }
}

/// A column of one table has one unit.
fn check_units(rows: &[&Row], findings: &mut Findings) {
    let all =
        |inch: bool| rows.iter().all(|row| row.read().iter().any(|r| r.reading.first.unit.is_inch() == inch));
    let readable = rows.iter().all(|row| !row.read().is_empty());
    if !readable || all(false) || all(true) {
        return;
    }
    let first: Vec<(&Row, &Text)> = rows.iter().filter_map(|row| Some((*row, row.texts.first()?))).collect();
    let said = "the list changes between millimetres and inches".to_owned();
    let suspected = first.first().map(|(_, text)| Suspicion {
        slip: Slip::MixedUnits,
        path: text.path.clone(),
        text: "the unit of one of them".to_owned(),
    });
    findings.contradict(Check::Ladder, &first, said, Vec::new(), suspected.into_iter().collect());
}

/// Grades that are ranges, smallest first.
struct Ladder<'c, 's> {
    /// in order of size
    grades: Vec<&'c Read<'s>>,
    /// each grade begins one in the last digit behind its neighbour: 0.010-0.019, 0.020-0.029
    apart: bool,
}

impl<'c, 's> Ladder<'c, 's> {
    /// The order and the manner of printing that most neighbours agree with.
    fn new(column: &'c [Read<'s>]) -> Self {
        let rising: Vec<&Read<'s>> = column.iter().collect();
        let falling: Vec<&Read<'s>> = column.iter().rev().collect();
        let ladders = [(&rising, false), (&falling, false), (&rising, true), (&falling, true)]
            .map(|(grades, apart)| Ladder { grades: grades.clone(), apart });
        let fitting = |ladder: &Ladder<'_, '_>| ladder.joints().iter().filter(|joint| joint.holds()).count();
        // of several that fit equally well the one that is nearest: rounding may hide one in the last digit
        let off =
            |ladder: &Ladder<'_, '_>| ladder.joints().iter().map(|joint| joint.total().0.abs()).sum::<i128>();
        let best = ladders.into_iter().max_by(|a, b| fitting(a).cmp(&fitting(b)).then(off(b).cmp(&off(a))));
        best.unwrap_or(Ladder { grades: rising, apart: false })
    }

    /// Where two grades meet.
    fn joints(&self) -> Vec<Sum<'s>> {
        let neighbours = self.grades.iter().zip(self.grades.iter().skip(1));
        let joint = |(below, above): (&&Read<'s>, &&Read<'s>)| {
            let ([_, end], [start, _]) = (below.reading.ordered(), above.reading.ordered());
            let constant = if self.apart { -2 * start.half } else { 0 };
            Sum { constant, ..Sum::new(vec![plus(above, start), minus(below, end)]) }
        };
        neighbours.map(joint).collect()
    }

    /// The width of a grade less that of another.
    fn width_less(&self, one: &Read<'s>, other: &Read<'s>) -> Sum<'s> {
        let ([low, high], [other_low, other_high]) = (one.reading.ordered(), other.reading.ordered());
        Sum::new(vec![plus(one, high), minus(one, low), minus(other, other_high), plus(other, other_low)])
    }

    /// The grade whose width most others have; of equals the first that nothing else speaks against.
    fn model(&self, findings: &Findings) -> Option<&'c Read<'s>> {
        let widths: Vec<(i128, i128)> = self.grades.iter().map(|read| width(read)).collect();
        let alike = |(width, rounding): &(i128, i128)| {
            widths.iter().filter(|other| (other.0 - width).abs() <= other.1 + rounding).count()
        };
        let trusted =
            |at: usize| self.grades.get(at).is_some_and(|read| !findings.doubtful.contains(&read.row.index));
        let best = widths.iter().enumerate().rev().max_by_key(|(at, width)| (alike(width), trusted(*at)));
        best.and_then(|(at, _)| self.grades.get(at)).copied()
    }

    fn check(&self, findings: &mut Findings) {
        let Some(model) = self.model(findings) else {
            return;
        };
        let odd = |read: &&Read<'s>| !self.width_less(read, model).holds();
        let odd_rows: Vec<usize> =
            self.grades.iter().copied().filter(|r| odd(r)).map(|r| r.row.index).collect();
        let joints = self.joints();
        for (at, grade) in self.grades.iter().enumerate().filter(|(_, grade)| odd(grade)) {
            let before = at.checked_sub(1).and_then(|before| joints.get(before));
            let beside = [before, joints.get(at)].into_iter().flatten();
            self.report_width(grade, model, beside.filter(|joint| !joint.holds()).collect(), findings);
        }
        for joint in joints.iter().filter(|joint| !joint.holds()) {
            // a grade of another width says it already
            if !joint.terms.iter().any(|term| odd_rows.contains(&term.read.row.index)) {
                report_joint(joint, findings);
            }
        }
    }

    /// A grade of another width: its neighbours say which end is wrong, or else the common width says it of both.
    fn report_width(
        &self,
        grade: &Read<'s>,
        model: &Read<'s>,
        broken: Vec<&Sum<'s>>,
        findings: &mut Findings,
    ) {
        findings.doubtful.insert(grade.row.index);
        let width = self.width_less(grade, model);
        let mut texts = vec![(grade.row, grade.text)];
        let others = broken.iter().flat_map(|joint| &joint.terms).map(|term| &term.read);
        let others: Vec<&Read<'s>> = if broken.is_empty() { vec![model] } else { others.collect() };
        texts.extend(
            others.iter().map(|read| (read.row, read.text)).filter(|(row, _)| row.index != grade.row.index),
        );
        let by: Vec<&Sum<'s>> = if broken.is_empty() { vec![&width] } else { broken };
        let own = |path: &str| path == grade.text.path;
        let would_be = by.iter().flat_map(|sum| sum.would_be()).filter(|w| own(&w.path)).collect();
        let suspected = by.iter().flat_map(|sum| sum.suspected()).filter(|s| own(&s.path)).collect();
        let said =
            format!("the grade \"{}\" is not as wide as \"{}\"", grade.text.printed, model.text.printed);
        findings.contradict(Check::Ladder, &texts, said, would_be, suspected);
    }
}

/// Width of a grade, and the half units in it.
fn width(read: &Read<'_>) -> (i128, i128) {
    let [low, high] = read.reading.ordered();
    (high.value - low.value, high.half + low.half)
}

fn report_joint(joint: &Sum<'_>, findings: &mut Findings) {
    let [above, below] = joint.terms.as_slice() else {
        return;
    };
    let texts = [above, below].map(|term| (term.read.row, term.read.text));
    let said = format!(
        "the grade \"{}\" does not begin where \"{}\" ends",
        above.read.text.printed, below.read.text.printed
    );
    findings.contradict(Check::Ladder, &texts, said, joint.would_be(), joint.suspected());
}

/// Grades that are single values: equal steps.
fn check_steps(column: &[Read<'_>], findings: &mut Findings) {
    let steps = |from: usize| -> Vec<(&Read<'_>, &Read<'_>)> {
        column.iter().skip(from).zip(column.iter().skip(from + 1)).collect()
    };
    let steps = steps(0);
    let less = |(a, b): &(&Read<'_>, &Read<'_>), (c, d): &(&Read<'_>, &Read<'_>)| -> bool {
        let sum = vec![
            plus(b, b.reading.first),
            minus(a, a.reading.first),
            minus(d, d.reading.first),
            plus(c, c.reading.first),
        ];
        Sum::new(sum).holds()
    };
    let alike = |one: &&(&Read<'_>, &Read<'_>)| steps.iter().filter(|other| less(one, other)).count();
    let Some(model) = steps.iter().rev().max_by_key(alike) else {
        return;
    };
    for step in steps.iter().filter(|step| !less(step, model)) {
        let (a, b) = step;
        let (c, d) = model;
        let sum = Sum::new(vec![
            plus(b, b.reading.first),
            minus(a, a.reading.first),
            minus(d, d.reading.first),
            plus(c, c.reading.first),
        ]);
        let own = [&a.text.path, &b.text.path];
        let would_be = sum.would_be().into_iter().filter(|w| own.contains(&&w.path)).collect();
        let suspected = sum.suspected().into_iter().filter(|s| own.contains(&&s.path)).collect();
        let said =
            format!("the step from \"{}\" to \"{}\" is not that of the list", a.text.printed, b.text.printed);
        let texts = [(a.row, a.text), (b.row, b.text)];
        findings.contradict(Check::Ladder, &texts, said, would_be, suspected);
    }
}
