//! Circles through points of a section: size, place and roundness.
//!
#![doc = include_str!("../../docs/roundness.md")]

use super::angle::as_number;
use super::least::{dot, larger};
use super::minimax::{Seen, unsettled};
use super::reference::{check_around, check_coordinates, fit as fit_shape, form_of, mean};
use crate::choice::choices;
use crate::error::{Error, ErrorKind};

pub use super::reference::{Form, Reference};

/// A circle that points were fitted by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Circle {
    /// Centre.
    pub x_mm: f64,
    /// Centre.
    pub y_mm: f64,
    /// Radius; of a minimum zone the mean of its two.
    pub radius_mm: f64,
    /// What the points leave: roundness.
    pub form: Form,
}

/// Fits a circle to points of a section, in mm.
///
/// Distances are the true ones. Minimum zone and maximum inscribed are the best near the least-squares circle: on a section that is round to
/// a thousandth, any other solution differs in the second order of the form error over the radius. At least three points; all references but
/// least squares need points in every half of the circle. Source: ISO 12181-1, from memory.
///
/// # Errors
/// [`ErrorKind::NotFinite`] or [`ErrorKind::OutOfRange`] with the place of the
/// coordinate as field (`x_mm/3`), [`ErrorKind::MissingField`] with too few points,
/// [`ErrorKind::Contradiction`] when the points do not tell where the circle lies.
pub fn fit(x_mm: &[f64], y_mm: &[f64], reference: Reference) -> Result<Circle, Error> {
    check_points(x_mm, y_mm)?;
    let start = moments(x_mm, y_mm, Algebraic::Taubin).map_err(|e| e.named("points"))?;
    let base = start.radius_mm;
    let look = |at: &[f64]| -> Vec<Seen> {
        let &[x, y] = at else { return Vec::new() };
        x_mm.iter().zip(y_mm).map(|(px, py)| seen(px - x, py - y, base)).collect()
    };
    let around = |at: &[f64]| {
        let [x, y] = two(at)?;
        check_around(x_mm.iter().zip(y_mm).map(|(px, py)| (px - x, py - y)))
    };
    let from = vec![start.x_mm, start.y_mm];
    let placed =
        fit_shape(reference, from, extent(x_mm, y_mm), look, around).map_err(|e| e.named("points"))?;
    let [x, y] = two(&placed.at)?;
    Ok(Circle { x_mm: x, y_mm: y, radius_mm: base + placed.level, form: placed.form })
}

fn two(at: &[f64]) -> Result<[f64; 2], Error> {
    match *at {
        [x, y] => Ok([x, y]),
        _ => Err(unsettled()),
    }
}

/// A point at `(x, y)` from the centre; one at the centre itself has no direction.
fn seen(x: f64, y: f64, base: f64) -> Seen {
    let r = (x * x + y * y).sqrt();
    let gradient = if r > 0.0 { vec![-x / r, -y / r] } else { vec![0.0, 0.0] };
    Seen { deviation: r - base, gradient }
}

/// Of the circle with centre `(x, y)`: the distances that the points leave.
fn measured(x_mm: &[f64], y_mm: &[f64], (x, y): (f64, f64), radius_mm: f64) -> Circle {
    let seen: Vec<Seen> = x_mm.iter().zip(y_mm).map(|(px, py)| seen(px - x, py - y, radius_mm)).collect();
    Circle { x_mm: x, y_mm: y, radius_mm, form: form_of(0.0, &seen) }
}

/// What is smaller is one place: a nanometre.
pub(super) const SMALLEST: f64 = 1e-6;

fn check_points(x_mm: &[f64], y_mm: &[f64]) -> Result<(), Error> {
    check_coordinates(&[("x_mm", x_mm), ("y_mm", y_mm)], 3)?;
    match extent(x_mm, y_mm) < SMALLEST {
        true => Err(on_a_line().named("points")),
        false => Ok(()),
    }
}

/// Largest distance from the mean of the points along an axis.
fn extent(x_mm: &[f64], y_mm: &[f64]) -> f64 {
    let along = |values: &[f64]| {
        let middle = mean(values);
        values.iter().fold(0.0, |most, v| larger(most, (v - middle).abs()))
    };
    larger(along(x_mm), along(y_mm))
}

choices! {
    /// Fits of the equation of a circle, `A (x^2 + y^2) + B x + C y + D = 0`, instead of distances: they need no iteration, and differ from the
    /// least-squares circle in the second order of the form error. All are biased on short arcs, least so the hyperaccurate one.
    Algebraic {
        /// `A^2 + B^2 + C^2 + D^2 = 1`. It depends on the origin of the coordinates; shown for comparison only. Source: Gander, Golub and
        /// Strebel, BIT 34 (1994).
        UnitNorm = "unit_norm",
        /// `B^2 + C^2 - 4 A D = 1`. Source: Pratt, Computer Graphics 21 (1987), from memory.
        Pratt = "pratt",
        /// The mean square of the gradient is 1. Source: Taubin, IEEE PAMI 13 (1991), from memory.
        Taubin = "taubin",
        /// Without bias to the second order. Source: Al-Sharadqah and Chernov, Electronic Journal of Statistics 3 (2009), from memory.
        Hyperaccurate = "hyperaccurate",
    }
}

/// Fits the equation of a circle; the form is that of the distances from it.
///
/// # Errors
/// As [`fit`].
pub fn fit_algebraic(x_mm: &[f64], y_mm: &[f64], method: Algebraic) -> Result<Circle, Error> {
    check_points(x_mm, y_mm)?;
    match method {
        Algebraic::UnitNorm => unit_norm(x_mm, y_mm),
        Algebraic::Pratt | Algebraic::Taubin | Algebraic::Hyperaccurate => moments(x_mm, y_mm, method),
    }
    .map_err(|e| e.named("points"))
}

/// Pratt's, Taubin's and the hyperaccurate fit from moments about the mean: the smallest root of a polynomial of order four by Newton's steps
/// from zero, which come from below. Source: Chernov, Circular and linear regression (2010), from memory.
fn moments(x_mm: &[f64], y_mm: &[f64], method: Algebraic) -> Result<Circle, Error> {
    let (mx, my) = (mean(x_mm), mean(y_mm));
    let n = as_number(x_mm.len());
    let about: Vec<(f64, f64)> = x_mm.iter().zip(y_mm).map(|(x, y)| (x - mx, y - my)).collect();
    let of = |f: fn(f64, f64, f64) -> f64| {
        about.iter().map(|(x, y)| f(*x, *y, x * x + y * y)).fold(0.0, |sum, v| sum + v) / n
    };
    let (xx, yy, xy) = (of(|x, _, _| x * x), of(|_, y, _| y * y), of(|x, y, _| x * y));
    let (xz, yz, zz) = (of(|x, _, z| x * z), of(|_, y, z| y * z), of(|_, _, z| z * z));
    let z = xx + yy;
    let spread = xx * yy - xy * xy;
    let variance = zz - z * z;
    let a0 = xz * (xz * yy - yz * xy) + yz * (yz * xx - xz * xy) - variance * spread;
    let a1 = variance * z + 4.0 * spread * z - xz * xz - yz * yz;
    let (a2, a3, a4) = match method {
        Algebraic::Taubin => (-3.0 * z * z - zz, 4.0 * z, 0.0),
        _ => (4.0 * spread - 3.0 * z * z - zz, 0.0, 4.0),
    };
    let root = smallest_root([a0, a1, a2, a3, a4]);
    let determinant = root * root - root * z + spread;
    if determinant.abs() <= z * z * 1e-12 || z <= 0.0 {
        return Err(on_a_line());
    }
    let x = (xz * (yy - root) - yz * xy) / determinant / 2.0;
    let y = (yz * (xx - root) - xz * xy) / determinant / 2.0;
    let more = match method {
        Algebraic::Pratt => 2.0 * root,
        Algebraic::Hyperaccurate => -2.0 * root,
        Algebraic::Taubin | Algebraic::UnitNorm => 0.0,
    };
    let square = x * x + y * y + z + more;
    match square > 0.0 {
        true => Ok(measured(x_mm, y_mm, (x + mx, y + my), square.sqrt())),
        false => Err(on_a_line()),
    }
}

fn smallest_root(coefficients: [f64; 5]) -> f64 {
    let mut x = 0.0;
    let mut before = f64::INFINITY;
    for _ in 0..100 {
        let (value, slope) = coefficients.iter().rev().fold((0.0, 0.0), |(p, d), c| (p * x + c, d * x + p));
        if value == 0.0 || slope == 0.0 || value.abs() >= before {
            break;
        }
        before = value.abs();
        x -= value / slope;
    }
    x
}

fn on_a_line() -> Error {
    let reason = "the points do not tell a circle from a line";
    Error::new(ErrorKind::Contradiction, "", reason)
}

/// A column of the equation, and what it was made of.
type Column = (Vec<f64>, [f64; 4]);

/// Smallest singular vector by rotations of pairs of columns (Hestenes, from memory).
fn unit_norm(x_mm: &[f64], y_mm: &[f64]) -> Result<Circle, Error> {
    let squares = x_mm.iter().zip(y_mm).map(|(x, y)| x * x + y * y).collect();
    let mut columns: [Column; 4] = [
        (squares, [1.0, 0.0, 0.0, 0.0]),
        (x_mm.to_vec(), [0.0, 1.0, 0.0, 0.0]),
        (y_mm.to_vec(), [0.0, 0.0, 1.0, 0.0]),
        (vec![1.0; x_mm.len()], [0.0, 0.0, 0.0, 1.0]),
    ];
    for _ in 0..60 {
        for second in 1..4 {
            let (head, tail) = columns.split_at_mut(second);
            if let Some(other) = tail.first_mut() {
                head.iter_mut().for_each(|one| rotate(one, other));
            }
        }
    }
    let smallest = columns.iter().min_by(|a, b| dot(&a.0, &a.0).total_cmp(&dot(&b.0, &b.0)));
    let &(_, [a, b, c, d]) = smallest.ok_or_else(on_a_line)?;
    let square = (b * b + c * c) / 4.0 - a * d;
    // the vector has length 1: what is this small is a line
    match a.abs() > 1e-12 && square > 0.0 {
        true => Ok(measured(x_mm, y_mm, (-b / a / 2.0, -c / a / 2.0), square.sqrt() / a.abs())),
        false => Err(on_a_line()),
    }
}

/// Makes two columns perpendicular.
fn rotate(one: &mut Column, other: &mut Column) {
    let (a, b, c) = (dot(&one.0, &one.0), dot(&other.0, &other.0), dot(&one.0, &other.0));
    // perpendicular already, or one of them is nothing
    if c.abs() <= 1e-17 * (a * b).sqrt() || c.abs() < 1e-100 {
        return;
    }
    let turn = (b - a) / (2.0 * c);
    let t = if turn >= 0.0 { 1.0 } else { -1.0 } / (turn.abs() + (1.0 + turn * turn).sqrt());
    let cosine = 1.0 / (1.0 + t * t).sqrt();
    let sine = cosine * t;
    let turned = |p: &mut f64, q: &mut f64| (*p, *q) = (cosine * *p - sine * *q, sine * *p + cosine * *q);
    one.0.iter_mut().zip(&mut other.0).for_each(|(p, q)| turned(p, q));
    one.1.iter_mut().zip(&mut other.1).for_each(|(p, q)| turned(p, q));
}
