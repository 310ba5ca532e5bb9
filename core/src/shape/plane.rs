//! Planes through points of a deck, and a bore's axis against the main line. The page is that of [`circle`](super::circle).

use super::circle::SMALLEST;
use super::least::{dot, larger};
use super::minimax::Seen;
use super::reference::{check_coordinates, fit as fit_shape, mean};
use crate::error::{Error, ErrorKind};

pub use super::reference::{Form, Reference};

/// A plane that points were fitted by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plane {
    /// A point of the plane: the mean of the points along x and y.
    pub x_mm: f64,
    /// A point of the plane.
    pub y_mm: f64,
    /// A point of the plane; of a minimum zone in the middle of its two.
    pub z_mm: f64,
    /// Rise along z for each mm along x.
    pub slope_x: f64,
    /// Rise along z for each mm along y.
    pub slope_y: f64,
    /// Rise for each mm in the direction of steepest rise: the tilt.
    pub slope: f64,
    /// Direction of steepest rise, from x toward y, -180 to 180 degrees; none for a plane without tilt.
    pub direction_deg: Option<f64>,
    /// What the points leave: flatness.
    pub form: Form,
}

/// Most that a plane may rise: what rises more was given with its axes mixed up.
const MOST_SLOPE: f64 = 0.2;

/// Fits a plane to points in mm; z is its height, and distances are perpendicular to it.
///
/// By least squares or minimum zone, from at least three points that do not lie on a line. Source: ISO 12781-1, from memory.
///
/// # Errors
/// As [`circle::fit`](super::circle::fit); [`ErrorKind::UnknownChoice`] for a circumscribed or inscribed reference: a plane has none.
pub fn fit(x_mm: &[f64], y_mm: &[f64], z_mm: &[f64], reference: Reference) -> Result<Plane, Error> {
    check_coordinates(&[("x_mm", x_mm), ("y_mm", y_mm), ("z_mm", z_mm)], 3)?;
    if matches!(reference, Reference::MinimumCircumscribed | Reference::MaximumInscribed) {
        let reason = "a plane is fitted by least_squares or minimum_zone";
        return Err(Error::new(ErrorKind::UnknownChoice, reference.word(), reason).at("reference"));
    }
    fitted(x_mm, y_mm, z_mm, reference).map_err(|e| e.named("points"))
}

fn fitted(x_mm: &[f64], y_mm: &[f64], z_mm: &[f64], reference: Reference) -> Result<Plane, Error> {
    let (x, y, z) = (mean(x_mm), mean(y_mm), mean(z_mm));
    let half = x_mm
        .iter()
        .zip(y_mm)
        .fold(0.0, |most, (px, py)| larger(most, larger((px - x).abs(), (py - y).abs())));
    if half < SMALLEST {
        let reason = "the points lie at one place";
        return Err(Error::new(ErrorKind::Contradiction, "", reason));
    }
    let look = |at: &[f64]| -> Vec<Seen> {
        let &[rise_x, rise_y] = at else { return Vec::new() };
        let (p, q) = (rise_x / half, rise_y / half);
        let square = 1.0 + p * p + q * q;
        let length = square.sqrt();
        let one = |((px, py), pz): ((&f64, &f64), &f64)| {
            let (dx, dy) = (px - x, py - y);
            let deviation = (pz - z - p * dx - q * dy) / length;
            let by = |d: f64, slope: f64| -(d / length + deviation * slope / square) / half;
            Seen { deviation, gradient: vec![by(dx, p), by(dy, q)] }
        };
        x_mm.iter().zip(y_mm).zip(z_mm).map(one).collect()
    };
    let placed = fit_shape(reference, vec![0.0, 0.0], half, look, |_| Ok(()))?;
    let [p, q] = match placed.at.as_slice() {
        &[rise_x, rise_y] => [rise_x / half, rise_y / half],
        _ => return Err(super::minimax::unsettled()),
    };
    let slope = (p * p + q * q).sqrt();
    if slope > MOST_SLOPE {
        let reason = "the plane is not across z: are the coordinates in another order?";
        let error = Error::new(ErrorKind::Contradiction, slope.to_string(), reason);
        return Err(error.value(slope).limits(0.0, MOST_SLOPE, "1"));
    }
    Ok(Plane {
        x_mm: x,
        y_mm: y,
        z_mm: z + placed.level * (1.0 + p * p + q * q).sqrt(),
        slope_x: p,
        slope_y: q,
        slope,
        direction_deg: (slope > 0.0).then(|| libm::atan2(q, p) * (180.0 / core::f64::consts::PI)),
        form: placed.form,
    })
}

/// How a bore's axis stands to the main line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoreAxis {
    /// Shortest distance between the two lines.
    pub offset_mm: f64,
    /// Where along the main line that is, from its first point toward its last.
    pub station_mm: f64,
    /// How far the angle between the lines is from a right one; positive when the bore, from its first point to its last, leans toward
    /// the last point of the main line.
    pub out_of_square_mrad: f64,
    /// Length of the bore from its first point to its last, along its axis.
    pub length_mm: f64,
    /// The same as `out_of_square_mrad`, over `length_mm`.
    pub out_of_square_mm: f64,
    /// Twice the largest distance of a point of the bore from its straight axis.
    pub bore_straightness_mm: f64,
    /// Twice the largest distance of a point of the main line from its straight line.
    pub main_straightness_mm: f64,
}

type Point = [f64; 3];

/// A straight line: a point, its direction of length 1, and what the points leave.
struct Line {
    middle: Point,
    direction: Point,
    first: f64,
    last: f64,
    straightness: f64,
}

/// Most that a bore may be out of square: what is more was given in another order.
const MOST_OUT_OF_SQUARE: f64 = 0.2;

/// Squareness and position of a bore to the main line, from points of both in mm, each point x, y, z; at least two of each, in their order.
///
/// Points of a bore are centres of its sections, those of the main line centres of its bearings. Lines are those of least squares of the
/// distances; the straightness is about them, not the smallest that there is.
///
/// # Errors
/// [`ErrorKind::NotFinite`] or [`ErrorKind::OutOfRange`] with the place of the coordinate as field (`bore_mm/1/2`),
/// [`ErrorKind::MissingField`] with fewer than two points, [`ErrorKind::Contradiction`] when points do not lie along a line, or the lines are
/// nowhere near square.
pub fn bore_to_main_line(bore: &[Point], main: &[Point]) -> Result<BoreAxis, Error> {
    let (axis, line) = (through(bore, "bore_mm")?, through(main, "main_mm")?);
    let lean = dot(&axis.direction, &line.direction);
    if lean.abs() > MOST_OUT_OF_SQUARE {
        let reason = "the bore is nowhere near square to the main line: are the points in another order?";
        let error = Error::new(ErrorKind::Contradiction, lean.to_string(), reason);
        return Err(error.value(lean).limits(-MOST_OUT_OF_SQUARE, MOST_OUT_OF_SQUARE, "1").at("bore_mm"));
    }
    let between = minus(axis.middle, line.middle);
    let (along_axis, along_line) = (dot(&between, &axis.direction), dot(&between, &line.direction));
    // the feet of the common perpendicular
    let square = 1.0 - lean * lean;
    let on_line = (along_line - lean * along_axis) / square;
    let on_axis = (lean * along_line - along_axis) / square;
    let gap = minus(plus(between, axis.direction, on_axis), plus([0.0; 3], line.direction, on_line));
    let length_mm = axis.last - axis.first;
    Ok(BoreAxis {
        offset_mm: dot(&gap, &gap).sqrt(),
        station_mm: on_line - line.first,
        out_of_square_mrad: libm::asin(lean) * 1000.0,
        length_mm,
        out_of_square_mm: lean * length_mm,
        bore_straightness_mm: axis.straightness,
        main_straightness_mm: line.straightness,
    })
}

fn minus(a: Point, b: Point) -> Point {
    plus(a, b, -1.0)
}

fn plus([ax, ay, az]: Point, [bx, by, bz]: Point, times: f64) -> Point {
    [ax + times * bx, ay + times * by, az + times * bz]
}

/// Most turns of the direction; a line needs three.
const MOST_TURNS: u32 = 100;

/// The line that leaves the least squares of the distances: its direction is turned by the points until it stands.
fn through(points: &[Point], field: &'static str) -> Result<Line, Error> {
    let column = |of: fn(&Point) -> f64| points.iter().map(of).collect::<Vec<f64>>();
    let columns = [column(|p| p[0]), column(|p| p[1]), column(|p| p[2])];
    for (k, point) in points.iter().enumerate() {
        for (j, value) in point.iter().enumerate() {
            crate::bounds::COORDINATE.check(&format!("{field}/{k}/{j}"), *value)?;
        }
    }
    let (Some(first), Some(last), true) = (points.first(), points.last(), points.len() > 1) else {
        let reason = "at least two points are needed";
        return Err(Error::new(ErrorKind::MissingField, points.len().to_string(), reason).at(field));
    };
    let middle = columns.each_ref().map(|c| mean(c));
    let about: Vec<Point> = points.iter().map(|p| minus(*p, middle)).collect();
    let no_line = || {
        let reason = "the points do not lie along a line from the first to the last";
        Error::new(ErrorKind::Contradiction, "", reason).at(field)
    };
    let mut direction = unit(minus(*last, *first)).ok_or_else(no_line)?;
    for _ in 0..MOST_TURNS {
        let turned = about.iter().fold([0.0; 3], |sum, p| plus(sum, *p, dot(p, &direction)));
        let next = unit(turned).ok_or_else(no_line)?;
        let change = minus(next, direction);
        direction = next;
        if dot(&change, &change) <= 1e-31 {
            return line(middle, direction, &about).ok_or_else(no_line);
        }
    }
    Err(no_line())
}

fn unit(v: Point) -> Option<Point> {
    let length = dot(&v, &v).sqrt();
    (length > 1e-9).then(|| v.map(|c| c / length))
}

/// What the points leave over a line; none when they rather lie across it.
fn line(middle: Point, direction: Point, about: &[Point]) -> Option<Line> {
    let along: Vec<f64> = about.iter().map(|p| dot(p, &direction)).collect();
    let away = about.iter().zip(&along).map(|(p, t)| plus(*p, direction, -t)).map(|w| dot(&w, &w).sqrt());
    let straightness = away.fold(0.0, larger) * 2.0;
    let (first, last) = (along.first().copied()?, along.last().copied()?);
    (last - first > straightness * 2.0).then_some(Line { middle, direction, first, last, straightness })
}
