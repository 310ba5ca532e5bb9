//! Worst case of a function over a box: proved by intervals and subdivision, or searched.

use crate::calc::{Enclosure, Interval, Model};
use crate::choice::choices;
use crate::error::{Error, ErrorKind};
use crate::measurement::random::{philox4x32, uniform};
use std::cmp::Ordering;
use std::collections::BinaryHeap;

/// Boxes that are looked at before the bounds are given as they are.
const MOST_BOXES: usize = 5_000;
/// Difference of bound and attained value that is aimed at, over the width of the first enclosure, or over the value where that has no end.
const AIM: f64 = 1e-9;

choices! {
    /// How the ends of a worst case were found.
    Proof {
        /// The slopes by all contributors have one sign each within the limits: the ends are two corners.
        Monotone = "monotone",
        /// Intervals over parts of the box: nothing lies beyond the bounds.
        Subdivision = "subdivision",
        /// A search of a function that is only called: there may be more beyond.
        Searched = "searched",
    }
}

/// Largest or smallest value within the limits.
#[derive(Debug, Clone, PartialEq)]
pub struct Extreme {
    /// A value that is attained.
    pub attained: f64,
    /// Sizes of the contributors where it is attained.
    pub at: Vec<f64>,
    /// No value lies beyond this; none after a search.
    pub bound: Option<f64>,
}

/// Smallest and largest value of a function when every contributor is anywhere within its limits.
#[derive(Debug, Clone, PartialEq)]
pub struct WorstCase {
    /// Smallest.
    pub lowest: Extreme,
    /// Largest.
    pub highest: Extreme,
    /// How they were found.
    pub proof: Proof,
}

/// Proved by intervals.
pub(super) fn proved(model: &Model, limits: &[(f64, f64)]) -> Result<WorstCase, Error> {
    let whole: Vec<Interval> = limits.iter().map(|(low, high)| Interval::new(*low, *high)).collect();
    let enclosure = model.enclosure(&whole);
    let monotone = whole.iter().zip(&enclosure.slopes).all(|(x, s)| x.width() == 0.0 || sign(*s) != 0.0);
    let proof = if monotone { Proof::Monotone } else { Proof::Subdivision };
    let lowest = Descent::new(model, 1.0).from(&whole)?;
    let highest = Descent::new(model, -1.0).from(&whole)?;
    Ok(WorstCase { lowest, highest, proof })
}

/// Sign of a slope over a box: 0 when it may have both.
fn sign(slope: Interval) -> f64 {
    match slope {
        Interval { low, .. } if low >= 0.0 => 1.0,
        Interval { high, .. } if high <= 0.0 => -1.0,
        _ => 0.0,
    }
}

/// The least value of a model, or with `side` -1 of its negative.
struct Descent<'m> {
    model: &'m Model,
    side: f64,
    best: f64,
    at: Vec<f64>,
}

/// A box and what no value in it is below.
struct Part {
    bound: f64,
    sides: Vec<Interval>,
    enclosure: Enclosure,
}

impl PartialEq for Part {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}
impl Eq for Part {}
impl PartialOrd for Part {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Part {
    fn cmp(&self, other: &Self) -> Ordering {
        // the lowest comes first
        other.bound.total_cmp(&self.bound)
    }
}

impl<'m> Descent<'m> {
    fn new(model: &'m Model, side: f64) -> Self {
        Descent { model, side, best: f64::INFINITY, at: Vec::new() }
    }

    fn from(mut self, whole: &[Interval]) -> Result<Extreme, Error> {
        let first = self.part(whole.to_vec())?;
        let width = first.enclosure.value.width();
        let mut waiting = BinaryHeap::from([first]);
        let mut seen = 1;
        let mut lowest = f64::INFINITY;
        while let Some(part) = waiting.pop() {
            let aim = AIM * if width.is_finite() { width } else { self.best.abs() };
            let settled = self.best - part.bound <= aim || seen >= MOST_BOXES;
            let Some((a, b)) = halves(&part).filter(|_| !settled) else {
                lowest = libm::fmin(lowest, part.bound);
                break;
            };
            for half in [a, b] {
                let half = self.part(half)?;
                seen += 1;
                if half.bound < self.best {
                    waiting.push(half);
                }
            }
        }
        let bound = libm::fmin(lowest, self.best);
        if bound.is_infinite() {
            let reason = "the function is not defined, or not bounded, everywhere within the limits";
            return Err(Error::new(ErrorKind::Contradiction, "", reason).at("model"));
        }
        Ok(Extreme {
            attained: self.side * self.best + 0.0,
            at: self.at,
            bound: Some(self.side * bound + 0.0),
        })
    }

    /// A box with its bound; sides along which the function rises or falls are taken at their end, and the value in the middle is tried.
    fn part(&mut self, mut sides: Vec<Interval>) -> Result<Part, Error> {
        let mut enclosure = self.enclosure(&sides);
        loop {
            let mut moved = false;
            for (side, slope) in sides.iter_mut().zip(&enclosure.slopes) {
                let toward = sign(*slope);
                if side.width() > 0.0 && toward != 0.0 {
                    *side = Interval::point(if toward > 0.0 { side.low } else { side.high });
                    moved = true;
                }
            }
            if !moved {
                break;
            }
            enclosure = self.enclosure(&sides);
        }
        let middle: Vec<f64> = sides.iter().map(|s| s.low + s.width() / 2.0).collect();
        let points: Vec<Interval> = middle.iter().copied().map(Interval::point).collect();
        let at_middle = self.enclosure(&points).value;
        // the mean value form: slopes over the box, from its middle
        let from_middle = sides
            .iter()
            .zip(points)
            .zip(&enclosure.slopes)
            .filter(|((side, _), _)| side.width() > 0.0)
            .fold(at_middle, |sum, ((side, point), slope)| sum + *slope * (*side - point));
        let bound = libm::fmax(enclosure.value.low, from_middle.low);
        let value = self.side * self.model.value(&middle);
        if !value.is_finite() {
            let reason = "the function has no value at a place within the limits";
            let place = middle.iter().map(f64::to_string).collect::<Vec<_>>().join(", ");
            return Err(Error::new(ErrorKind::NotFinite, place, reason).at("model"));
        }
        if value < self.best {
            self.best = value;
            self.at = middle;
        }
        Ok(Part { bound, sides, enclosure })
    }

    fn enclosure(&self, sides: &[Interval]) -> Enclosure {
        let own = self.model.enclosure(sides);
        if self.side > 0.0 {
            return own;
        }
        Enclosure { value: -own.value, slopes: own.slopes.into_iter().map(|s| -s).collect() }
    }
}

/// A box cut where the function may change most; none when it is too small to be cut.
fn halves(part: &Part) -> Option<(Vec<Interval>, Vec<Interval>)> {
    let change = |(side, slope): (&Interval, &Interval)| {
        let steep = libm::fmax(slope.low.abs(), slope.high.abs());
        if side.width() > 0.0 { side.width() * libm::fmin(steep, f64::MAX) } else { -1.0 }
    };
    let changes: Vec<f64> = part.sides.iter().zip(&part.enclosure.slopes).map(change).collect();
    let (place, _) = changes.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1))?;
    let side = part.sides.get(place)?;
    let middle = side.low + side.width() / 2.0;
    if middle <= side.low || middle >= side.high {
        return None;
    }
    let with = |new: Interval| {
        let mut sides = part.sides.clone();
        if let Some(place) = sides.get_mut(place) {
            *place = new;
        }
        sides
    };
    Some((with(Interval::new(side.low, middle)), with(Interval::new(middle, side.high))))
}

/// Starts of a search besides the middle.
const STARTS: u32 = 24;
/// Halvings of the step of a search: down to 2^-40 of the limits.
const HALVINGS: usize = 40;

/// Searched: from the middle and from places by counting, along each contributor in turn with steps that are halved (compass search).
pub(super) fn searched(value: &dyn Fn(&[f64]) -> f64, limits: &[(f64, f64)]) -> Result<WorstCase, Error> {
    let lowest = descended(&|x| value(x), limits)?;
    let highest = descended(&|x| -value(x), limits)?;
    let highest = Extreme { attained: -highest.attained + 0.0, ..highest };
    Ok(WorstCase { lowest, highest, proof: Proof::Searched })
}

fn descended(value: &dyn Fn(&[f64]) -> f64, limits: &[(f64, f64)]) -> Result<Extreme, Error> {
    let mut best: Option<Extreme> = None;
    for start in 0..=STARTS {
        let place = |(k, (low, high)): (u32, &(f64, f64))| {
            let [word, ..] = philox4x32([start, k, 0, 0], [0, 0]);
            low + (high - low) * if start == 0 { 0.5 } else { uniform(word) }
        };
        let found = compass(value, limits, (0..).zip(limits).map(place).collect())?;
        if best.as_ref().is_none_or(|b| found.attained < b.attained) {
            best = Some(found);
        }
    }
    best.ok_or_else(|| Error::new(ErrorKind::MissingField, "", "no start").at("contributors"))
}

fn compass(value: &dyn Fn(&[f64]) -> f64, limits: &[(f64, f64)], start: Vec<f64>) -> Result<Extreme, Error> {
    let mut at = start;
    let mut attained = finite(value(&at))?;
    let mut step = 0.5;
    for _ in 0..HALVINGS {
        // few rounds at a step: the next, smaller one goes on
        for _ in 0..8 {
            let before = attained;
            for (k, (low, high)) in limits.iter().enumerate() {
                let Some(own) = at.get(k).copied() else { continue };
                for toward in [-1.0, 1.0] {
                    let next = libm::fmin(libm::fmax(own + toward * step * (high - low), *low), *high);
                    let mut trial = at.clone();
                    if let Some(place) = trial.get_mut(k) {
                        *place = next;
                    }
                    let there = finite(value(&trial))?;
                    if there < attained {
                        (attained, at) = (there, trial);
                    }
                }
            }
            if attained >= before {
                break;
            }
        }
        step /= 2.0;
    }
    Ok(Extreme { attained: attained + 0.0, at, bound: None })
}

fn finite(value: f64) -> Result<f64, Error> {
    if value.is_finite() {
        return Ok(value);
    }
    let reason = "the function has no value at a place within the limits";
    Err(Error::new(ErrorKind::NotFinite, value.to_string(), reason).at("model"))
}
