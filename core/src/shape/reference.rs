//! What a shape is fitted by, what the fit leaves, and which points are accepted.

use super::angle::as_number;
use super::least::{Solution, dot, larger, least_squares, smaller};
use super::minimax::{Seen, ends, settle, unsettled};
use crate::bounds::{self, Bound, Verdict};
use crate::choice::choices;
use crate::error::{Error, ErrorKind};

choices! {
    /// The reference that points are held against. Source: ISO 12181-1 and 12180-1, from memory.
    Reference {
        /// Least sum of squares of the distances (LSCI, LSCY, LSPL).
        LeastSquares = "least_squares",
        /// Two shapes with one centre or axis that hold all points between them as narrowly as can be (MZCI, MZCY, MZPL).
        MinimumZone = "minimum_zone",
        /// The smallest that holds all points: the largest plug of a set of holes, the ring that goes over a shaft (MCCI, MCCY).
        MinimumCircumscribed = "minimum_circumscribed",
        /// The largest that all points are outside of: the plug that goes into a bore (MICI, MICY).
        MaximumInscribed = "maximum_inscribed",
    }
}

/// What the points leave over a reference, in mm.
///
/// ISO 12181-1 and 12180-1 name these RONt and CYLt, RONp and CYLp, RONv and CYLv, RONq and CYLq, the last three about the least
/// squares reference only. A peak is there what stands out of the material: on a bore the inside, on a piston the outside.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Form {
    /// Outside and inside together.
    pub total_mm: f64,
    /// Largest distance of a point beyond the reference, away from the centre (of a plane: above it).
    pub outside_mm: f64,
    /// Largest distance of a point within the reference (of a plane: below it).
    pub inside_mm: f64,
    /// Root of the mean square of all distances.
    pub rms_mm: f64,
}

/// Where a shape lies: its location, and its level (a radius less the base, or the height of a plane).
pub(super) struct Placed {
    pub(super) at: Vec<f64>,
    pub(super) level: f64,
    pub(super) form: Form,
}

/// Most points of a fit.
const MOST_POINTS: usize = 1_000_000;

/// Fits a shape that `look` sees from a location; `start` is near it, `size` the size of the shape; `around` refuses points that hold no shape
/// but the least-squares one, which is given.
pub(super) fn fit(
    reference: Reference,
    start: Vec<f64>,
    size: f64,
    look: impl Fn(&[f64]) -> Vec<Seen>,
    around: impl Fn(&[f64]) -> Result<(), Error>,
) -> Result<Placed, Error> {
    let (least, level) = by_least_squares(start, size, &look)?;
    if reference == Reference::LeastSquares {
        return Ok(Placed { level, form: form_of(level, &look(&least)), at: least });
    }
    around(&least)?;
    let at = settle(reference, least, size, &look)?;
    let seen = look(&at);
    let (low, high) = ends(&seen);
    let level = match reference {
        Reference::MinimumCircumscribed => high,
        Reference::MaximumInscribed => low,
        Reference::MinimumZone | Reference::LeastSquares => (low + high) / 2.0,
    };
    Ok(Placed { level, form: form_of(level, &seen), at })
}

/// What points leave over a level.
pub(super) fn form_of(level: f64, seen: &[Seen]) -> Form {
    let (low, high) = ends(seen);
    let squares = seen.iter().fold(0.0, |sum, p| sum + (p.deviation - level) * (p.deviation - level));
    Form {
        total_mm: high - low,
        // a reference through the extreme point itself leaves nothing on that side
        outside_mm: larger(high - level, 0.0),
        inside_mm: larger(level - low, 0.0),
        rms_mm: (squares / as_number(seen.len())).sqrt(),
    }
}

/// Most steps; a trace of a bore needs five, points far from any circle a hundred.
const MOST_STEPS: u32 = 500;

/// Least squares of the true distances by steps of the linear problem (Gauss-Newton); location and level.
fn by_least_squares(
    start: Vec<f64>,
    size: f64,
    look: impl Fn(&[f64]) -> Vec<Seen>,
) -> Result<(Vec<f64>, f64), Error> {
    let mut at = start;
    let mut seen = look(&at);
    let mut before = f64::MAX;
    for _ in 0..MOST_STEPS {
        let step = linear(&seen, 1e-9)?;
        let (level, by) = step.coefficients.split_first().ok_or_else(unsettled)?;
        let length = dot(by, by).sqrt();
        // where rounding is all that is left, steps no longer shrink
        if length <= size * 1e-15 || (length <= size * 1e-12 && length >= before) {
            linear(&seen, super::least::LEAST_SHARE)?;
            return Ok((at, *level));
        }
        let squares = squares_left(&seen);
        let mut share = 1.0;
        loop {
            let next: Vec<f64> = at.iter().zip(by).map(|(a, d)| a - share * d).collect();
            let next_seen = look(&next);
            // near the end the squares are equal to all digits: the step is then right as it is
            if length <= size * 1e-4 || squares_left(&next_seen) < squares {
                (at, seen) = (next, next_seen);
                break;
            }
            share /= 2.0;
            if share < 1e-9 {
                return Err(unsettled());
            }
        }
        before = length;
    }
    Err(unsettled())
}

/// Level and step back, as the deviations have them.
fn linear(seen: &[Seen], least: f64) -> Result<Solution, Error> {
    let shifts = seen.first().map_or(0, |p| p.gradient.len());
    let mut columns = vec![vec![1.0; seen.len()]];
    columns.extend(
        (0..shifts).map(|j| seen.iter().map(|p| p.gradient.get(j).copied().unwrap_or(0.0)).collect()),
    );
    let right = seen.iter().map(|p| p.deviation).collect();
    least_squares(columns, right, (as_number(seen.len()) / 2.0).sqrt(), least).map_err(|weak| {
        let reason = "the points do not tell where the shape lies: too few of them, repeated, or on too small a part of it";
        Error::new(ErrorKind::Contradiction, format!("{:.2e}", weak.share), reason)
            .value(weak.share)
            .limits(super::least::LEAST_SHARE, 1.0, "1")
            .at("points")
    })
}

/// Sum of squares about the mean level.
fn squares_left(seen: &[Seen]) -> f64 {
    let mean = seen.iter().fold(0.0, |sum, p| sum + p.deviation) / as_number(seen.len());
    seen.iter().fold(0.0, |sum, p| sum + (p.deviation - mean) * (p.deviation - mean))
}

/// Columns of coordinates, each with its name: finite, possible, equally many, and at least `least` of them.
pub(crate) fn check(columns: &[(&str, &[f64])], bound: &Bound, least: usize) -> Result<(), Error> {
    let count = columns.first().map_or(0, |(_, values)| values.len());
    for (name, values) in columns {
        if values.len() != count {
            let reason = "there must be as many as of the first";
            return Err(Error::new(ErrorKind::Contradiction, values.len().to_string(), reason).at(name));
        }
        for (k, value) in values.iter().enumerate() {
            if bound.judge(*value) == Verdict::Impossible {
                bound.check(&format!("{name}/{k}"), *value)?;
            }
        }
    }
    let name = columns.first().map_or("", |(name, _)| name);
    if count < least {
        let reason = format!("at least {least} points are needed");
        return Err(Error::new(ErrorKind::MissingField, count.to_string(), reason).at(name));
    }
    if count > MOST_POINTS {
        let reason = "more than a million points";
        return Err(Error::new(ErrorKind::TooLarge, count.to_string(), reason).at(name));
    }
    Ok(())
}

/// A value for each angle.
pub(crate) fn check_as_many(angles_deg: &[f64], (name, values): (&str, &[f64])) -> Result<(), Error> {
    match angles_deg.len() == values.len() {
        true => Ok(()),
        false => {
            let reason = format!("there are {} angles", angles_deg.len());
            Err(Error::new(ErrorKind::Contradiction, values.len().to_string(), reason).at(name))
        }
    }
}

pub(super) fn check_coordinates(columns: &[(&str, &[f64])], least: usize) -> Result<(), Error> {
    check(columns, &bounds::COORDINATE, least)
}

/// Points that lie on one side only hold nothing: seen from the centre there must be some in every half of the circle.
pub(super) fn check_around(points: impl Iterator<Item = (f64, f64)>) -> Result<(), Error> {
    let mut angles: Vec<f64> = points.map(|(x, y)| libm::atan2(y, x).to_degrees()).collect();
    angles.sort_by(f64::total_cmp);
    let (first, last) = (angles.first().copied().unwrap_or(0.0), angles.last().copied().unwrap_or(0.0));
    let around = first + 360.0 - last;
    let gap = angles.iter().zip(angles.iter().skip(1)).fold(around, |most, (a, b)| larger(most, b - a));
    match gap < 180.0 - 1e-6 {
        true => Ok(()),
        false => {
            let reason = "the points leave half of the circle or more without any: only a least-squares fit can use them";
            let error = Error::new(ErrorKind::Contradiction, format!("{gap:.3} deg"), reason);
            Err(error.value(gap).limits(0.0, 180.0, "deg").at("points"))
        }
    }
}

/// Smallest and largest coordinate.
pub(crate) fn extremes(values: &[f64]) -> (f64, f64) {
    let start = (f64::INFINITY, f64::NEG_INFINITY);
    values.iter().fold(start, |(low, high), v| (smaller(low, *v), larger(high, *v)))
}

/// Mean of coordinates.
pub(super) fn mean(values: &[f64]) -> f64 {
    values.iter().fold(0.0, |sum, v| sum + v) / as_number(values.len())
}
