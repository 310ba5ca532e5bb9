//! Fits that look only at the extreme points: minimum zone, minimum circumscribed, maximum inscribed.
//!
//! Near a location the deviation of every point is linear in a small shift, so the best shift is the solution of a linear
//! programme; the deviations are taken anew at the new location, until nothing is gained. The shift is bounded, and the
//! bound shrinks where the programme promised what the shape does not hold. Source of the scheme: Madsen, Journal of the
//! Institute of Mathematics and its Applications 16 (1975), from memory. The programme is solved by exchange: of `k` rows that
//! hold, one that holds wrongly makes room for the one that is broken most (the simplex method on the dual).

use super::least::{dot, larger, smaller};
use super::reference::Reference;
use crate::error::{Error, ErrorKind};

/// A point seen from a location: its deviation from the shape, and how a shift of the location changes it.
#[derive(Debug, Clone)]
pub(crate) struct Seen {
    pub(crate) deviation: f64,
    pub(crate) gradient: Vec<f64>,
}

/// What is asked of the shift.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Sides {
    outer: bool,
    inner: bool,
}

impl Sides {
    fn of(reference: Reference) -> Self {
        Sides {
            outer: reference != Reference::MaximumInscribed,
            inner: reference != Reference::MinimumCircumscribed,
        }
    }

    /// What is made small: half the zone, the largest deviation, or the smallest with its sign turned.
    fn measure(self, seen: &[Seen]) -> f64 {
        let (low, high) = ends(seen);
        match (self.outer, self.inner) {
            (true, true) => (high - low) / 2.0,
            (true, false) => high,
            _ => -low,
        }
    }
}

/// Smallest and largest deviation.
pub(crate) fn ends(seen: &[Seen]) -> (f64, f64) {
    let start = (f64::INFINITY, f64::NEG_INFINITY);
    seen.iter().map(|p| p.deviation).fold(start, |(low, high), e| (smaller(low, e), larger(high, e)))
}

/// Most shifts; the usual number is below ten, and below forty where two points hold a circle.
const MOST_SHIFTS: u32 = 300;
/// Most exchanges in one programme; the usual number is below forty.
const MOST_EXCHANGES: u32 = 5000;

/// The location at which `look` sees what `reference` asks for, from a location near it. `size` is that of the shape, and
/// settles what is rounding.
pub(crate) fn settle(
    reference: Reference,
    start: Vec<f64>,
    size: f64,
    look: impl Fn(&[f64]) -> Vec<Seen>,
) -> Result<Vec<f64>, Error> {
    let sides = Sides::of(reference);
    let mut at = start;
    let mut seen = look(&at);
    let mut value = sides.measure(&seen);
    let (low, high) = ends(&seen);
    let still = size * 1e-13;
    let mut reach = larger(smaller((high - low) * 2.0, size / 4.0), still);
    for _ in 0..MOST_SHIFTS {
        let shift = best_shift(sides, &seen, reach, still / 100.0).ok_or_else(unsettled)?;
        let promised = value - shift.measure;
        let next: Vec<f64> = at.iter().zip(&shift.by).map(|(a, d)| a + d).collect();
        let next_seen = look(&next);
        let gained = value - sides.measure(&next_seen);
        // between two points an inscribed circle is free to the first order, and gains in the second by going aside
        if promised <= still && gained <= still {
            return Ok(at);
        }
        if gained > promised * 0.75 {
            reach = smaller(reach * 2.0, size);
        } else if gained < promised * 0.25 {
            reach /= 2.0;
        }
        if gained > 0.0 {
            (at, seen) = (next, next_seen);
            value -= gained;
        }
    }
    Err(unsettled())
}

/// A bound of the shift: `normal . shift` is at most `room`.
#[derive(Debug, Clone)]
pub(crate) struct Fence {
    pub(crate) normal: Vec<f64>,
    pub(crate) room: f64,
}

/// Where the largest deviation is least.
#[derive(Debug, Clone)]
pub(crate) struct Lowest {
    pub(crate) shift: Vec<f64>,
    pub(crate) level: f64,
    /// the points that hold it, each with the change of the level for a change of its deviation
    pub(crate) held_by: Vec<(usize, f64)>,
}

/// The shift within `fences`, no component of it beyond `reach`, that makes the largest of deviations least which are linear in it; none
/// where the programme does not settle to `still`.
pub(crate) fn least_largest(seen: &[Seen], fences: &[Fence], reach: f64, still: f64) -> Option<Lowest> {
    let shift = shift_within(Sides { outer: true, inner: false }, seen, fences, reach, still)?;
    let point = |(row, weight): (Row, f64)| match row {
        Row::Outer(k) if weight > 0.0 => Some((k, weight)),
        _ => None,
    };
    let held_by = shift.weights.into_iter().filter_map(point).collect();
    Some(Lowest { shift: shift.by, level: shift.measure, held_by })
}

/// The shift, no component of it beyond `reach`, that makes the smallest of deviations largest which are linear in it, and that smallest; none
/// where the programme does not settle to `still`.
pub(crate) fn most_room(seen: &[Seen], reach: f64, still: f64) -> Option<(Vec<f64>, f64)> {
    let shift = best_shift(Sides { outer: false, inner: true }, seen, reach, still)?;
    Some((shift.by, -shift.measure))
}

pub(super) fn unsettled() -> Error {
    let reason = "the points do not settle where the shape lies: they are too far from such a shape";
    Error::new(ErrorKind::Contradiction, "", reason)
}

struct Shift {
    by: Vec<f64>,
    /// What the programme promises.
    measure: f64,
    /// Of the rows that hold.
    weights: Vec<(Row, f64)>,
}

/// A row of the programme. The unknowns are the shift, the level `s`, and, for a zone, its half-width `h`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Row {
    /// `s + h - g d >= e` of a point.
    Outer(usize),
    /// `h - s + g d >= -e` of a point.
    Inner(usize),
    /// A component of the shift is not below the bound.
    Low(usize),
    /// A component of the shift is not above the bound.
    High(usize),
    /// The shift is within a fence.
    Within(usize),
}

struct Programme<'a> {
    sides: Sides,
    seen: &'a [Seen],
    fences: &'a [Fence],
    /// components of the shift
    shifts: usize,
    reach: f64,
}

fn best_shift(sides: Sides, seen: &[Seen], reach: f64, still: f64) -> Option<Shift> {
    shift_within(sides, seen, &[], reach, still)
}

fn shift_within(sides: Sides, seen: &[Seen], fences: &[Fence], reach: f64, still: f64) -> Option<Shift> {
    let shifts = seen.first()?.gradient.len();
    let programme = Programme { sides, seen, fences, shifts, reach };
    let mut basis = programme.start()?;
    let mut stuck = false;
    for _ in 0..MOST_EXCHANGES {
        let inverse = inverse(basis.iter().map(|r| programme.row(*r)).collect::<Option<_>>()?)?;
        let right: Vec<f64> = basis.iter().map(|r| programme.right(*r)).collect::<Option<_>>()?;
        let unknowns: Vec<f64> = inverse.iter().map(|row| dot(row, &right)).collect();
        let Some(broken) = programme.broken(&unknowns, still, stuck) else {
            let measure = dot(&programme.cost(), &unknowns);
            let weights = basis.into_iter().zip(across(&programme.cost(), &inverse)).collect();
            return Some(Shift { by: unknowns.into_iter().take(shifts).collect(), measure, weights });
        };
        let (leaving, ratio) = leaving(
            &basis,
            &across(&programme.cost(), &inverse),
            &across(&programme.row(broken)?, &inverse),
        )?;
        // an exchange that gains nothing may lead in a circle: then by the order of the rows (Bland)
        stuck = ratio < 1e-12;
        *basis.get_mut(leaving)? = broken;
    }
    None
}

impl Programme<'_> {
    fn zone(&self) -> bool {
        self.sides.outer && self.sides.inner
    }

    /// What is made small, in the unknowns.
    fn cost(&self) -> Vec<f64> {
        let mut cost = vec![0.0; self.shifts];
        match self.zone() {
            true => cost.extend([0.0, 1.0]),
            false => cost.push(if self.sides.outer { 1.0 } else { -1.0 }),
        }
        cost
    }

    /// Rows that hold with weights that are not negative: the extreme points, and a bound on each component of the shift.
    fn start(&self) -> Option<Vec<Row>> {
        let by_deviation = |a: &(usize, &Seen), b: &(usize, &Seen)| a.1.deviation.total_cmp(&b.1.deviation);
        let points = || self.seen.iter().enumerate();
        let outer = Row::Outer(points().max_by(by_deviation)?.0);
        let inner = Row::Inner(points().min_by(by_deviation)?.0);
        let mut basis: Vec<Row> = match (self.sides.outer, self.sides.inner) {
            (true, true) => vec![outer, inner],
            (true, false) => vec![outer],
            _ => vec![inner],
        };
        let rows: Vec<Vec<f64>> = basis.iter().map(|r| self.row(*r)).collect::<Option<_>>()?;
        for component in 0..self.shifts {
            let pull = rows.iter().filter_map(|r| r.get(component)).fold(0.0, |sum, v| sum + v);
            basis.push(if pull > 0.0 { Row::High(component) } else { Row::Low(component) });
        }
        Some(basis)
    }

    /// Factors of a row.
    fn row(&self, row: Row) -> Option<Vec<f64>> {
        let (mut out, level, half) = match row {
            Row::Outer(k) => (self.seen.get(k)?.gradient.iter().map(|g| -g).collect(), 1.0, 1.0),
            Row::Inner(k) => (self.seen.get(k)?.gradient.clone(), -1.0, 1.0),
            Row::Low(component) | Row::High(component) => {
                let mut out = vec![0.0; self.shifts];
                *out.get_mut(component)? = if matches!(row, Row::Low(_)) { 1.0 } else { -1.0 };
                (out, 0.0, 0.0)
            }
            Row::Within(k) => (self.fences.get(k)?.normal.iter().map(|n| -n).collect(), 0.0, 0.0),
        };
        out.push(level);
        out.extend(self.zone().then_some(half));
        Some(out)
    }

    /// What a row must not be below.
    fn right(&self, row: Row) -> Option<f64> {
        match row {
            Row::Outer(k) => Some(self.seen.get(k)?.deviation),
            Row::Inner(k) => Some(-self.seen.get(k)?.deviation),
            Row::Low(_) | Row::High(_) => Some(-self.reach),
            Row::Within(k) => Some(-self.fences.get(k)?.room),
        }
    }

    /// The row that is broken most, or the first that is broken; none when all hold.
    fn broken(&self, unknowns: &[f64], still: f64, first: bool) -> Option<Row> {
        let (shift, levels) = unknowns.split_at_checked(self.shifts)?;
        let level = levels.first().copied()?;
        let half = levels.get(1).copied().unwrap_or(0.0);
        let mut worst: Option<(Row, f64)> = None;
        let mut judge = |row: Row, short: f64| {
            let better = short > still && worst.is_none_or(|(_, most)| !first && short > most);
            if better {
                worst = Some((row, short));
            }
        };
        for (k, point) in self.seen.iter().enumerate() {
            let deviation = point.deviation + dot(&point.gradient, shift);
            if self.sides.outer {
                judge(Row::Outer(k), deviation - level - half);
            }
            if self.sides.inner {
                judge(Row::Inner(k), level - half - deviation);
            }
        }
        for (component, by) in shift.iter().enumerate() {
            judge(Row::Low(component), -self.reach - by);
            judge(Row::High(component), by - self.reach);
        }
        for (k, fence) in self.fences.iter().enumerate() {
            judge(Row::Within(k), dot(&fence.normal, shift) - fence.room);
        }
        worst.map(|(row, _)| row)
    }
}

/// The row that makes room: that whose weight reaches zero first as the broken row takes weight on, and how soon.
fn leaving(basis: &[Row], weights: &[f64], takes: &[f64]) -> Option<(usize, f64)> {
    let mut best: Option<(usize, Row, f64)> = None;
    for (place, ((row, weight), take)) in basis.iter().zip(weights).zip(takes).enumerate() {
        if *take <= 1e-9 {
            continue;
        }
        let ratio = larger(*weight, 0.0) / take;
        let sooner = best.is_none_or(|(_, other, least)| ratio < least || (ratio <= least && *row < other));
        if sooner {
            best = Some((place, *row, ratio));
        }
    }
    best.map(|(place, _, ratio)| (place, ratio))
}

/// A row times a matrix.
fn across(row: &[f64], matrix: &[Vec<f64>]) -> Vec<f64> {
    let mut out = vec![0.0; row.len()];
    for (factor, line) in row.iter().zip(matrix) {
        out.iter_mut().zip(line).for_each(|(o, m)| *o += factor * m);
    }
    out
}

/// Inverse of a small matrix, by elimination with the largest pivot; none where it has none.
fn inverse(matrix: Vec<Vec<f64>>) -> Option<Vec<Vec<f64>>> {
    let size = matrix.len();
    let mut rows: Vec<Vec<f64>> = matrix
        .into_iter()
        .enumerate()
        .map(|(k, row)| row.into_iter().chain((0..size).map(|j| if j == k { 1.0 } else { 0.0 })).collect())
        .collect();
    for column in 0..size {
        let at = |row: &Vec<f64>| row.get(column).map_or(0.0, |v| v.abs());
        let largest = (column..size).max_by(|a, b| {
            let of = |k: &usize| rows.get(*k).map_or(0.0, at);
            of(a).total_cmp(&of(b))
        })?;
        rows.swap(column, largest);
        let pivot = rows.get(column)?.clone();
        let scale = *pivot.get(column)?;
        if scale.abs() < 1e-12 {
            return None;
        }
        for (k, row) in rows.iter_mut().enumerate() {
            let factor = *row.get(column)? / scale;
            match k == column {
                true => row.iter_mut().for_each(|v| *v /= scale),
                false => row.iter_mut().zip(&pivot).for_each(|(v, p)| *v -= factor * p),
            }
        }
    }
    Some(rows.into_iter().map(|row| row.into_iter().skip(size).collect()).collect())
}
