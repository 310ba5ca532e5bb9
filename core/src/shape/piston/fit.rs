//! The form of a piston from measured points, and measured points against a form that is given.

use super::{Counted, PistonShape, Surface, Symmetric, Table};
use crate::bounds;
use crate::choice::choices;
use crate::error::{Error, ErrorKind};
use crate::shape::angle::{as_number, turned};
use crate::shape::curve::Curve;
use crate::shape::least::{LEAST_SHARE, Solution, dot, least_squares};
use crate::shape::reference::{check, extremes};
use crate::shape::same;

choices! {
    /// What was read at each point.
    Reading {
        /// Radii from any one axis near that of the piston.
        Radii = "radii",
        /// Two-point diameters at the angles of their axes.
        Diameters = "diameters",
    }
}

/// Measured points of a piston, and how they were read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Points<'a> {
    /// Height of each point from the bottom edge of the skirt, in mm.
    pub heights_mm: &'a [f64],
    /// Angle of each, 0 to 360 degrees.
    pub angles_deg: &'a [f64],
    /// Radius or diameter of each, in mm.
    pub values_mm: &'a [f64],
    /// Which of the two.
    pub reading: Reading,
    /// Standard uncertainty of one reading, in mm; it counts where no reading is left to see the scatter by.
    pub uncertainty_mm: Option<f64>,
}

/// What a fit found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate {
    /// The number.
    pub value: f64,
    /// Its standard uncertainty, from the scatter about the fit; none when nothing is left to see that by and no uncertainty was stated.
    pub uncertainty: Option<f64>,
}

/// What the points at one height say; all diametral.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// The height.
    pub height_mm: f64,
    /// Points there.
    pub points: usize,
    /// Diameter in the thrust direction, in mm.
    pub diameter_mm: Estimate,
    /// That less the diameter on the pin axis, in mm.
    pub ovality_mm: Estimate,
    /// Diameter added at 45 degrees, in mm; none when it was not asked for.
    pub double_ovality_mm: Option<Estimate>,
    /// How well the angles tell them apart: 1 when they are spread evenly.
    pub least_share: f64,
}

/// A surface as points say it is.
#[derive(Debug, Clone, PartialEq)]
pub struct FittedSurface {
    /// By rising height.
    pub stations: Vec<Station>,
    /// Standard deviation of a reading about the fit, over all stations, in mm; none without degrees of freedom.
    pub deviation_mm: Option<f64>,
    /// Readings less unknowns, over all stations.
    pub dof: usize,
    /// Reading less fit of each point, in mm.
    pub residuals_mm: Vec<f64>,
}

/// How a piston lies and what is left, when it is held against a form.
#[derive(Debug, Clone, PartialEq)]
pub struct TraceFit {
    /// Diameter of the piston less that of the form, in mm.
    pub size_mm: Estimate,
    /// Position of the axis along 0 degrees, at `height_mm`; none where the points do not see it, as from diameters.
    pub x_mm: Option<Estimate>,
    /// Position of the axis along 90 degrees, at `height_mm`; none where the points do not see it.
    pub y_mm: Option<Estimate>,
    /// How far the axis moves along 0 degrees for each mm of height; none where the points do not see it, as from one height.
    pub slope_x: Option<Estimate>,
    /// How far the axis moves along 90 degrees for each mm of height; none where the points do not see it.
    pub slope_y: Option<Estimate>,
    /// Height of the position: in the middle of the lowest and the highest point.
    pub height_mm: f64,
    /// Reading less form of each point, once size and position are taken out, in mm; below zero material is missing.
    pub residuals_mm: Vec<f64>,
    /// Root of their mean square.
    pub rms_mm: f64,
    /// Place of the largest of them, without sign.
    pub largest: usize,
    /// Standard deviation of a reading about the fit, in mm; none without degrees of freedom.
    pub deviation_mm: Option<f64>,
    /// Readings less unknowns.
    pub dof: usize,
    /// How well the points tell the unknowns apart: 1 when they are spread evenly.
    pub least_share: f64,
}

/// Fits a symmetric surface to points: at each height the diameter in the thrust direction, the ovality and, when asked for, the double
/// ovality, by least squares.
///
/// Heights within a micrometre are one station. Radii need not be counted from the axis of the piston: its position is fitted at each
/// height and left out. The scatter is taken as equal at all stations.
///
/// # Errors
/// With the place of a number that is not finite or impossible (`values_mm/3`); [`ErrorKind::OutOfRange`] of `angles_deg` when the angles at a
/// height do not tell the unknowns apart, with the height.
pub fn fit_surface(points: &Points<'_>, double_ovality: bool) -> Result<FittedSurface, Error> {
    check_points(points)?;
    let mut solved = Vec::new();
    let mut residuals_mm = vec![0.0; points.values_mm.len()];
    let (mut squares, mut dof) = (0.0, 0);
    for (height_mm, places) in stations(points.heights_mm) {
        let solution = station(points, double_ovality, height_mm, &places)?;
        for (place, residual) in places.iter().zip(&solution.residuals) {
            if let Some(slot) = residuals_mm.get_mut(*place) {
                *slot = *residual / as_diameter(points.reading);
            }
        }
        squares += dot(&solution.residuals, &solution.residuals);
        dof += solution.residuals.len() - solution.coefficients.len();
        solved.push((height_mm, places.len(), solution));
    }
    let deviation = (dof > 0).then(|| (squares / as_number(dof)).sqrt());
    let scatter = deviation.or(points.uncertainty_mm.map(|u| u * as_diameter(points.reading)));
    let stations = solved.iter().map(|(height_mm, count, solution)| Station {
        height_mm: *height_mm,
        points: *count,
        diameter_mm: estimate(solution, &[1.0, 1.0, if double_ovality { 1.0 } else { 0.0 }], scatter),
        ovality_mm: estimate(solution, &[0.0, 2.0], scatter),
        double_ovality_mm: double_ovality.then(|| estimate(solution, &[0.0, 0.0, -2.0], scatter)),
        least_share: solution.least_share,
    });
    Ok(FittedSurface {
        stations: stations.collect(),
        deviation_mm: deviation.map(|d| d / as_diameter(points.reading)),
        dof,
        residuals_mm,
    })
}

/// Holds points against a form: the size, the position and the tilt that leave the least squares, to the first order, and what is left.
///
/// A wave that is zero at every point (the tilt of points at one height, the position of diameters) is not estimated.
///
/// # Errors
/// As [`fit_surface`], and for points where the form has no surface (`heights_mm/3`, `angles_deg/3`).
pub fn fit_trace(
    shape: &PistonShape,
    gauge_diameter_mm: f64,
    points: &Points<'_>,
) -> Result<TraceFit, Error> {
    bounds::PISTON.check("gauge_diameter_mm", gauge_diameter_mm)?;
    check_points(points)?;
    let (low, high) = extremes(points.heights_mm);
    let (height_mm, half) = ((low + high) / 2.0, (high - low) / 2.0);
    let right = beyond(shape, gauge_diameter_mm, points)?;
    let waves = placements(points, height_mm, half);
    let names: Vec<usize> = waves.iter().map(|(name, _)| *name).collect();
    let columns = waves.into_iter().map(|(_, column)| column).collect();
    let even = (as_number(right.len()) / 2.0).sqrt();
    let solution = least_squares(columns, right, even, LEAST_SHARE).map_err(|weak| {
        let unknown = names.get(weak.column).and_then(|name| PLACEMENTS.get(*name)).unwrap_or(&"size");
        let reason = format!("the points do not tell the {unknown} from the rest");
        unresolved(weak.share, reason)
    })?;
    let dof = solution.residuals.len() - solution.coefficients.len();
    let squares = dot(&solution.residuals, &solution.residuals);
    let deviation_mm = (dof > 0).then(|| (squares / as_number(dof)).sqrt());
    let scatter = deviation_mm.or(points.uncertainty_mm);
    let of = |name: usize, factor: f64| {
        let place = names.iter().position(|n| *n == name)?;
        let mut weights = vec![0.0; place];
        weights.push(factor);
        Some(estimate(&solution, &weights, scatter))
    };
    // points at one height see no tilt, and nothing is divided by their distance
    let tilt = |name: usize| if half > 0.0 { of(name, 1.0 / half) } else { None };
    let rms_mm = (squares / as_number(solution.residuals.len())).sqrt();
    let size = of(0, as_diameter(points.reading)).unwrap_or(Estimate { value: 0.0, uncertainty: None });
    Ok(TraceFit {
        size_mm: size,
        x_mm: of(1, 1.0),
        y_mm: of(2, 1.0),
        slope_x: tilt(3),
        slope_y: tilt(4),
        height_mm,
        rms_mm,
        largest: largest(&solution.residuals),
        deviation_mm,
        dof,
        least_share: solution.least_share,
        residuals_mm: solution.residuals,
    })
}

impl FittedSurface {
    /// Diameter in the thrust direction at a height, in mm: the monotone cubic through the stations.
    ///
    /// Its uncertainty is that of the stations around, each moved by one standard uncertainty either way.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] beyond the stations.
    pub fn diameter_mm(&self, height_mm: f64) -> Result<Estimate, Error> {
        bounds::PISTON_HEIGHT.check("height_mm", height_mm)?;
        let diameters: Vec<f64> = self.stations.iter().map(|s| s.diameter_mm.value).collect();
        let heights: Vec<f64> = self.stations.iter().map(|s| s.height_mm).collect();
        let through = |diameters: &[f64]| {
            Curve::through(&heights, diameters)?.at(height_mm).map_err(|e| e.moved("height_mm".to_owned()))
        };
        let mut squares = Some(0.0);
        for (k, station) in self.stations.iter().enumerate() {
            let moved = |by: f64| {
                let one = |(j, d): (usize, &f64)| if j == k { d + by } else { *d };
                through(&diameters.iter().enumerate().map(one).collect::<Vec<f64>>())
            };
            squares = match (squares, station.diameter_mm.uncertainty) {
                (Some(sum), Some(u)) => {
                    let part = (moved(u)? - moved(-u)?) / 2.0;
                    Some(sum + part * part)
                }
                _ => None,
            };
        }
        Ok(Estimate { value: through(&diameters)?, uncertainty: squares.map(f64::sqrt) })
    }

    /// The surface from the lowest to the highest station, against a gauge diameter.
    ///
    /// # Errors
    /// When there are fewer than two stations, or what was fitted is impossible for a piston, as in [`Surface::symmetric`].
    pub fn surface(&self, name: &str, gauge_diameter_mm: f64) -> Result<Surface, Error> {
        bounds::PISTON.check("gauge_diameter_mm", gauge_diameter_mm)?;
        let (Some(first), Some(last), true) =
            (self.stations.first(), self.stations.last(), self.stations.len() > 1)
        else {
            let reason = "a surface needs points at two heights";
            return Err(Error::new(ErrorKind::MissingField, "heights_mm", reason).at("heights_mm"));
        };
        let column = |of: &dyn Fn(&Station) -> f64| -> Vec<f64> { self.stations.iter().map(of).collect() };
        let heights = column(&|s| s.height_mm);
        let barrel = column(&|s| s.diameter_mm.value - gauge_diameter_mm);
        let ovality = column(&|s| s.ovality_mm.value);
        let double = column(&|s| s.double_ovality_mm.map_or(0.0, |d| d.value));
        let table = |values_mm| Table { heights_mm: &heights, values_mm };
        let drawing = Symmetric {
            barrel: table(&barrel),
            counted: Counted::Above,
            ovality: table(&ovality),
            double_ovality: first.double_ovality_mm.map(|_| table(&double)),
        };
        Surface::symmetric(name, first.height_mm, last.height_mm, &drawing)
    }
}

/// Factor from a reading to a diameter.
fn as_diameter(reading: Reading) -> f64 {
    match reading {
        Reading::Radii => 2.0,
        Reading::Diameters => 1.0,
    }
}

fn check_points(points: &Points<'_>) -> Result<(), Error> {
    check(&[("heights_mm", points.heights_mm)], &bounds::PISTON_HEIGHT, 1)?;
    let count = points.heights_mm.len();
    check(&[("angles_deg", points.angles_deg)], &bounds::ANGLE, 1)?;
    let size = match points.reading {
        Reading::Radii => bounds::PISTON_RADIUS,
        Reading::Diameters => bounds::PISTON,
    };
    check(&[("values_mm", points.values_mm)], &size, 1)?;
    for (name, values) in [("angles_deg", points.angles_deg), ("values_mm", points.values_mm)] {
        if values.len() != count {
            let reason = format!("there are {count} heights");
            return Err(Error::new(ErrorKind::Contradiction, values.len().to_string(), reason).at(name));
        }
    }
    if let Some(u) = points.uncertainty_mm {
        bounds::READING_UNCERTAINTY.check("uncertainty_mm", u)?;
    }
    Ok(())
}

/// Heights, rising, with the places of their points; what lies within a micrometre of the lowest belongs to it.
fn stations(heights_mm: &[f64]) -> Vec<(f64, Vec<usize>)> {
    let mut places: Vec<(usize, f64)> = heights_mm.iter().copied().enumerate().collect();
    crate::order::sort_by(&mut places, |(_, a), (_, b)| a.total_cmp(b));
    let mut stations: Vec<(f64, Vec<usize>)> = Vec::new();
    for (place, height) in places {
        match stations.last_mut() {
            Some((lowest, of)) if same(*lowest, height) => of.push(place),
            _ => stations.push((height, vec![place])),
        }
    }
    stations.iter_mut().for_each(|(_, of)| of.sort_unstable());
    stations
}

/// Diameters at one height by waves of order 0, 2, 4, and 1 for radii.
fn station(
    points: &Points<'_>,
    double_ovality: bool,
    height_mm: f64,
    places: &[usize],
) -> Result<Solution, Error> {
    let of = |values: &[f64]| -> Vec<f64> { places.iter().filter_map(|k| values.get(*k).copied()).collect() };
    let angles = of(points.angles_deg);
    let wave = |order: usize| -> Vec<(f64, f64)> { angles.iter().map(|a| turned(order, *a)).collect() };
    let cosines = |order: usize| -> Vec<f64> { wave(order).iter().map(|(cosine, _)| *cosine).collect() };
    let mut columns = vec![vec![1.0; angles.len()], cosines(2)];
    let mut names = vec!["diameter", "ovality"];
    if double_ovality {
        columns.push(cosines(4));
        names.push("double ovality");
    }
    if points.reading == Reading::Radii {
        let sines = wave(1).iter().map(|(_, sine)| *sine).collect();
        // a wave that is zero at every angle changes no reading
        columns.extend([cosines(1), sines].into_iter().filter(|wave| seen(wave)));
        names.extend(["position", "position"]);
    }
    let factor = as_diameter(points.reading);
    let values: Vec<f64> = of(points.values_mm);
    // from the first reading on, so that no digit of the form is spent on the size
    let first = values.first().copied().unwrap_or_default();
    let right = values.iter().map(|v| (v - first) * factor).collect();
    let even = (as_number(angles.len()) / 2.0).sqrt();
    let mut solution = least_squares(columns, right, even, LEAST_SHARE).map_err(|weak| {
        let unknown = names.get(weak.column).unwrap_or(&"diameter");
        let reason = format!("at height {height_mm} mm the angles do not tell the {unknown} from the rest");
        unresolved(weak.share, reason).moved("angles_deg".to_owned())
    })?;
    if let Some(mean) = solution.coefficients.first_mut() {
        *mean += first * factor;
    }
    Ok(solution)
}

fn seen(column: &[f64]) -> bool {
    dot(column, column).sqrt() > as_number(column.len()).sqrt() * 1e-9
}

fn unresolved(share: f64, reason: String) -> Error {
    let error = Error::new(ErrorKind::OutOfRange, format!("{share:.2e}"), reason);
    error.value(share).limits(LEAST_SHARE, 1.0, "1").at("points")
}

/// A sum of coefficients with its standard uncertainty, when one reading has the standard deviation `scatter`.
fn estimate(solution: &Solution, weights: &[f64], scatter: Option<f64>) -> Estimate {
    Estimate {
        value: dot(&solution.coefficients, weights),
        uncertainty: scatter.map(|s| s * solution.spread(weights)),
    }
}

/// Readings less what the form says.
fn beyond(shape: &PistonShape, gauge_diameter_mm: f64, points: &Points<'_>) -> Result<Vec<f64>, Error> {
    let places = points.heights_mm.iter().zip(points.angles_deg).zip(points.values_mm).enumerate();
    let one = |(k, ((height, angle), value)): (usize, ((&f64, &f64), &f64))| {
        let beyond = match points.reading {
            Reading::Radii => {
                shape.checked_deviation_mm(*height, *angle).map(|d| value - gauge_diameter_mm / 2.0 - d)
            }
            Reading::Diameters => {
                shape.checked_change_mm(*height, *angle).map(|d| value - gauge_diameter_mm - d)
            }
        };
        beyond.map_err(|e| {
            let field = if e.field() == "height_mm" { "heights_mm" } else { "angles_deg" };
            e.moved(format!("{field}/{k}"))
        })
    };
    places.map(one).collect()
}

/// The unknowns of a placement, in the order of their columns.
const PLACEMENTS: [&str; 5] = ["size", "position", "position", "tilt", "tilt"];

/// Columns of a placement with the place of their unknown; without those that no point sees.
fn placements(points: &Points<'_>, height_mm: f64, half: f64) -> Vec<(usize, Vec<f64>)> {
    let mut columns = vec![(0, vec![1.0; points.values_mm.len()])];
    if points.reading == Reading::Radii {
        let (cosines, sines): (Vec<f64>, Vec<f64>) = points.angles_deg.iter().map(|a| turned(1, *a)).unzip();
        let tilted = |wave: &[f64]| -> Vec<f64> {
            let share = |height: f64| if half > 0.0 { (height - height_mm) / half } else { 0.0 };
            wave.iter().zip(points.heights_mm).map(|(w, height)| w * share(*height)).collect()
        };
        let tilts = [tilted(&cosines), tilted(&sines)];
        let waves = [cosines, sines].into_iter().chain(tilts).zip(1..);
        columns.extend(waves.map(|(column, name)| (name, column)).filter(|(_, column)| seen(column)));
    }
    columns
}

/// Place of the largest number without sign, of several the first.
fn largest(values: &[f64]) -> usize {
    let most =
        values.iter().enumerate().fold(
            (0, 0.0),
            |best: (usize, f64), (k, value)| {
                if value.abs() > best.1 { (k, value.abs()) } else { best }
            },
        );
    most.0
}
