//! Cylinders through points of a bore or a piston: size, axis and cylindricity. The page is that of [`circle`].

use super::circle::{self, Algebraic};
use super::least::larger;
use super::minimax::{Seen, unsettled};
use super::reference::{check_around, check_coordinates, fit as fit_shape};
use crate::error::{Error, ErrorKind};

pub use super::reference::{Form, Reference};

/// A cylinder that points were fitted by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cylinder {
    /// The axis at `z_mm`.
    pub x_mm: f64,
    /// The axis at `z_mm`.
    pub y_mm: f64,
    /// Depth of that point of the axis: in the middle of the first and the last point.
    pub z_mm: f64,
    /// How far the axis moves along x for each mm of depth.
    pub slope_x: f64,
    /// How far the axis moves along y for each mm of depth.
    pub slope_y: f64,
    /// Radius; of a minimum zone the mean of its two.
    pub radius_mm: f64,
    /// What the points leave: cylindricity.
    pub form: Form,
}

/// Most that an axis may lean: what leans more was given with its axes mixed up.
const MOST_SLOPE: f64 = 0.1;

/// Points of a cylinder whose axis is along z but for a small lean.
struct Points<'a> {
    x: &'a [f64],
    y: &'a [f64],
    z: &'a [f64],
    middle: f64,
    half: f64,
    base: f64,
}

/// Fits a cylinder to points in mm, its axis along z to a tenth of the length at most; z is the depth as a rule.
///
/// Distances are the true ones, perpendicular to the axis. At least five points, at two depths. What [`circle::fit`] says of the references
/// holds here too. Source: ISO 12180-1, from memory.
///
/// # Errors
/// As [`circle::fit`].
pub fn fit(x_mm: &[f64], y_mm: &[f64], z_mm: &[f64], reference: Reference) -> Result<Cylinder, Error> {
    check_coordinates(&[("x_mm", x_mm), ("y_mm", y_mm), ("z_mm", z_mm)], 5)?;
    fitted(x_mm, y_mm, z_mm, reference).map_err(|e| e.named("points"))
}

fn fitted(x_mm: &[f64], y_mm: &[f64], z_mm: &[f64], reference: Reference) -> Result<Cylinder, Error> {
    let start = circle::fit_algebraic(x_mm, y_mm, Algebraic::Taubin)?;
    let (low, high) = super::reference::extremes(z_mm);
    let (middle, half) = (low + (high - low) / 2.0, (high - low) / 2.0);
    if half <= start.radius_mm * 1e-6 {
        let reason = "the points lie at one depth: they have no axis";
        return Err(Error::new(ErrorKind::Contradiction, "", reason).at("z_mm"));
    }
    let points = Points { x: x_mm, y: y_mm, z: z_mm, middle, half, base: start.radius_mm };
    let from = vec![start.x_mm, start.y_mm, 0.0, 0.0];
    let size = larger(half, start.radius_mm);
    let placed = fit_shape(reference, from, size, |at| points.seen_from(at), |at| points.check_around(at))?;
    let [x, y, lean_x, lean_y] = four(&placed.at)?;
    Ok(Cylinder {
        x_mm: x,
        y_mm: y,
        z_mm: middle,
        slope_x: upright(lean_x / half)?,
        slope_y: upright(lean_y / half)?,
        radius_mm: start.radius_mm + placed.level,
        form: placed.form,
    })
}

fn upright(slope: f64) -> Result<f64, Error> {
    match slope.abs() <= MOST_SLOPE {
        true => Ok(slope),
        false => {
            let reason = "the axis is not along z: are the coordinates in another order?";
            let error = Error::new(ErrorKind::Contradiction, slope.to_string(), reason);
            Err(error.value(slope).limits(-MOST_SLOPE, MOST_SLOPE, "1"))
        }
    }
}

fn four(at: &[f64]) -> Result<[f64; 4], Error> {
    at.try_into().map_err(|_| unsettled())
}

impl Points<'_> {
    /// The points from an axis: its place at the middle, and how far it has moved at the last depth.
    fn seen_from(&self, at: &[f64]) -> Vec<Seen> {
        let Ok([x, y, lean_x, lean_y]) = four(at) else { return Vec::new() };
        let (p, q) = (lean_x / self.half, lean_y / self.half);
        let length = p * p + q * q + 1.0;
        let one = |((px, py), pz): ((&f64, &f64), &f64)| {
            let (dx, dy, dz) = (px - x, py - y, pz - self.middle);
            // the foot of the point on the axis, as a depth
            let foot = (dx * p + dy * q + dz) / length;
            let (wx, wy, wz) = (dx - foot * p, dy - foot * q, dz - foot);
            let r = (wx * wx + wy * wy + wz * wz).sqrt();
            let along = foot / self.half;
            let gradient = match r > 0.0 {
                true => vec![-wx / r, -wy / r, -wx / r * along, -wy / r * along],
                false => vec![0.0; 4],
            };
            Seen { deviation: r - self.base, gradient }
        };
        self.x.iter().zip(self.y).zip(self.z).map(one).collect()
    }

    fn check_around(&self, at: &[f64]) -> Result<(), Error> {
        let [x, y, lean_x, lean_y] = four(at)?;
        let (p, q) = (lean_x / self.half, lean_y / self.half);
        let about = self.x.iter().zip(self.y).zip(self.z).map(|((px, py), pz)| {
            let dz = pz - self.middle;
            (px - x - p * dz, py - y - q * dz)
        });
        check_around(about)
    }
}
