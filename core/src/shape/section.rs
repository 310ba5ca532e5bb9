//! A section as harmonics of its radius, and what gauges read from it. The page is that of [`circle`](super::circle).

use super::angle::{as_number, turned};
use super::least::{LEAST_SHARE, Unresolved, dot, least_squares};
use super::reference::{check, check_as_many};
use crate::bounds;
use crate::error::{Error, ErrorKind};

/// One order of a section: `cos_mm cos(n angle) + sin_mm sin(n angle)`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Harmonic {
    /// Undulations in one turn, `n`.
    pub order: usize,
    /// Cosine part; none when the cosine is zero at every angle that was read.
    pub cos_mm: Option<f64>,
    /// Sine part; none when the sine is zero at every angle that was read.
    pub sin_mm: Option<f64>,
}

/// A section of a bore or a piston: `R(angle) = mean + sum over the orders`.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// Mean radius.
    pub mean_radius_mm: f64,
    /// Order 1, which is the position of the axis along 0 and 90 degrees, to the first order; none from diameters.
    pub position_mm: Option<(f64, f64)>,
    /// Orders from 2 up, rising; from diameters the even ones only.
    pub harmonics: Vec<Harmonic>,
    /// Experimental standard deviation of a radius about the section; none when nothing is left to see it by.
    pub residual_mm: Option<f64>,
    /// How well the angles tell the orders apart: 1 when they are spread evenly. Noise of the readings is enlarged by about its inverse.
    pub least_share: f64,
}

/// Highest order.
pub const MOST_ORDER: usize = 500;
/// Most numbers in the matrix of a fit.
const MOST_NUMBERS: usize = 16_777_216;

/// Harmonics of a section up to `order`, by least squares from radii at angles.
///
/// Radii are counted from any one centre near the axis, in mm; deviations from a nominal radius will do as well. Angles are 0 to 360
/// degrees.
///
/// # Errors
/// [`ErrorKind::NotFinite`] or [`ErrorKind::OutOfRange`] with the place of the number as field (`radii_mm/3`);
/// [`ErrorKind::OutOfRange`] of the field `order` when the angles do not resolve it, with the orders they do resolve.
pub fn from_radii(angles_deg: &[f64], radii_mm: &[f64], order: usize) -> Result<Section, Error> {
    check_readings(angles_deg, ("radii_mm", radii_mm))?;
    harmonics(angles_deg, radii_mm.to_vec(), order, 1)
}

/// Harmonics of a section up to `order`, which is even, by least squares from two-point diameters at the angles of their axes.
///
/// Diameters never show an odd order. Two axes give the mean and one phase of order 2, four axes order 2 and one phase of order 4.
///
/// # Errors
/// As [`from_radii`], and for an odd order.
pub fn from_diameters(angles_deg: &[f64], diameters_mm: &[f64], order: usize) -> Result<Section, Error> {
    check_readings(angles_deg, ("diameters_mm", diameters_mm))?;
    if order % 2 == 1 {
        let reason = "a diameter never shows an odd order";
        return Err(Error::new(ErrorKind::Contradiction, order.to_string(), reason).at("order"));
    }
    harmonics(angles_deg, diameters_mm.iter().map(|d| d / 2.0).collect(), order, 2)
}

fn check_readings(angles_deg: &[f64], readings: (&str, &[f64])) -> Result<(), Error> {
    check(&[("angles_deg", angles_deg)], &bounds::ANGLE, 1)?;
    check(&[readings], &bounds::COORDINATE, 1)?;
    check_as_many(angles_deg, readings)
}

/// Of one phase of one order: which, and its value at every angle.
struct Wave {
    order: usize,
    sine: bool,
    values: Vec<f64>,
}

/// Orders `every`, twice `every`, and so on, up to `order`.
fn harmonics(angles_deg: &[f64], radii_mm: Vec<f64>, order: usize, every: usize) -> Result<Section, Error> {
    let count = radii_mm.len();
    check_order(order, count)?;
    let full = as_number(count).sqrt();
    let mut waves = vec![Wave { order: 0, sine: false, values: vec![1.0; count] }];
    for n in (every..=order).step_by(every) {
        let (cosines, sines): (Vec<f64>, Vec<f64>) = angles_deg.iter().map(|a| turned(n, *a)).unzip();
        for (sine, values) in [(false, cosines), (true, sines)] {
            // a wave that is zero at every angle changes no reading: nothing is known of it, and it disturbs nothing
            if dot(&values, &values).sqrt() > full * 1e-9 {
                waves.push(Wave { order: n, sine, values });
            }
        }
    }
    let names: Vec<(usize, bool)> = waves.iter().map(|w| (w.order, w.sine)).collect();
    let columns = waves.into_iter().map(|w| w.values).collect();
    // from the first radius on, so that no digit of the form is spent on the size
    let first = radii_mm.first().copied().unwrap_or_default();
    let radii_mm = radii_mm.into_iter().map(|r| r - first).collect();
    let even = (as_number(count) / 2.0).sqrt();
    let solution = least_squares(columns, radii_mm, even, LEAST_SHARE).map_err(|weak| {
        let failing = names.get(weak.column).map_or(0, |(n, _)| *n);
        not_resolved(order, failing, every, &weak)
    })?;
    let of = |n: usize, sine: bool| {
        let place = names.iter().position(|name| *name == (n, sine))?;
        solution.coefficients.get(place).copied()
    };
    let position_mm = match (every == 1 && order > 0, of(1, false), of(1, true)) {
        (false, ..) => None,
        (true, Some(x), Some(y)) => Some((x, y)),
        (true, ..) => return Err(not_resolved(order, 1, every, &Unresolved { column: 0, share: 0.0 })),
    };
    let orders = (every..=order).step_by(every).filter(|n| *n > 1);
    let free = count - names.len();
    Ok(Section {
        mean_radius_mm: first + of(0, false).unwrap_or_default(),
        position_mm,
        harmonics: orders.map(|n| Harmonic { order: n, cos_mm: of(n, false), sin_mm: of(n, true) }).collect(),
        residual_mm: (free > 0)
            .then(|| (dot(&solution.residuals, &solution.residuals) / as_number(free)).sqrt()),
        least_share: solution.least_share,
    })
}

fn check_order(order: usize, count: usize) -> Result<(), Error> {
    if order > MOST_ORDER {
        let error =
            Error::new(ErrorKind::OutOfRange, order.to_string(), "no trace is resolved to such an order");
        return Err(error.value(as_number(order)).limits(0.0, as_number(MOST_ORDER), "1").at("order"));
    }
    // a fit has at most one unknown for each reading; what has more is refused by its angles, without the matrix
    if (2 * order + 1).min(count) * count > MOST_NUMBERS {
        let reason = "too many readings for so high an order: their product is above eight million";
        return Err(Error::new(ErrorKind::TooLarge, order.to_string(), reason).at("order"));
    }
    Ok(())
}

fn not_resolved(order: usize, failing: usize, every: usize, weak: &Unresolved) -> Error {
    let reason = format!(
        "the angles do not tell order {failing} from lower ones (share {:.1e}, needed {LEAST_SHARE})",
        weak.share
    );
    let error = Error::new(ErrorKind::OutOfRange, order.to_string(), reason).value(as_number(order));
    error.limits(0.0, as_number(failing.saturating_sub(every)), "1").at("order")
}

/// Diameter that a two-point gauge reads across the axis at an angle, in mm.
///
/// Odd orders do not show. `mean_radius_mm` and `harmonics` are those of a [`Section`].
///
/// # Errors
/// [`ErrorKind::NotFinite`] or [`ErrorKind::OutOfRange`] for an impossible number, [`ErrorKind::MissingField`] when a phase that the angle
/// needs was not seen (`harmonics/0/sin_mm`).
pub fn two_point_mm(mean_radius_mm: f64, harmonics: &[Harmonic], angle_deg: f64) -> Result<f64, Error> {
    let angle = bounds::ANGLE.check("angle_deg", angle_deg)?;
    reading(mean_radius_mm, harmonics, &[(0.5, angle), (0.5, angle + 180.0)])
}

/// Diameter that a gauge with three legs reads, in mm, its first leg turned to `angle_deg`.
///
/// The legs reach out equally from a centre that finds itself: the reading is twice the weighted mean of the three radii, with the weights that
/// cancel a shift, `sin` of the angle between the two other legs. To the first order: the second is the square of the form error over the
/// radius. `legs_deg` are the directions of the legs, rising; neighbours are less than half a turn apart.
///
/// # Errors
/// As [`two_point_mm`]; [`ErrorKind::OutOfOrder`] for legs that do not centre the gauge.
pub fn three_leg_mm(
    mean_radius_mm: f64,
    harmonics: &[Harmonic],
    angle_deg: f64,
    legs_deg: [f64; 3],
) -> Result<f64, Error> {
    let angle = bounds::ANGLE.check("angle_deg", angle_deg)?;
    for (k, leg) in legs_deg.iter().enumerate() {
        bounds::ANGLE.check(&format!("legs_deg/{k}"), *leg)?;
    }
    let [a, b, c] = legs_deg;
    let gaps = [c - b, a + 360.0 - c, b - a];
    if !gaps.iter().all(|gap| *gap > 1.0 && *gap < 179.0) {
        let reason = "legs rise, and neighbours are 1 to 179 degrees apart, or they do not centre the gauge";
        return Err(Error::new(ErrorKind::OutOfOrder, format!("{a}, {b}, {c}"), reason).at("legs_deg"));
    }
    let sines = gaps.map(|gap| turned(1, gap).1);
    let sum = sines.iter().fold(0.0, |sum, s| sum + s);
    let [wa, wb, wc] = sines.map(|s| s / sum);
    reading(mean_radius_mm, harmonics, &[(wa, angle + a), (wb, angle + b), (wc, angle + c)])
}

/// Twice the weighted mean of the radius at some angles.
fn reading(mean_radius_mm: f64, harmonics: &[Harmonic], points: &[(f64, f64)]) -> Result<f64, Error> {
    bounds::COORDINATE.check("mean_radius_mm", mean_radius_mm)?;
    let mut sum = 0.0;
    for (k, harmonic) in harmonics.iter().enumerate() {
        if !(1..=MOST_ORDER).contains(&harmonic.order) {
            let error =
                Error::new(ErrorKind::OutOfRange, harmonic.order.to_string(), "no order of a section");
            let error = error.value(as_number(harmonic.order)).limits(1.0, as_number(MOST_ORDER), "1");
            return Err(error.at(&format!("harmonics/{k}/order")));
        }
        let (cosine, sine) = points.iter().fold((0.0, 0.0), |(c, s), (weight, angle)| {
            let (cosine, sine) = turned(harmonic.order, *angle);
            (c + weight * cosine, s + weight * sine)
        });
        sum += part(harmonic.cos_mm, cosine, || format!("harmonics/{k}/cos_mm"))?;
        sum += part(harmonic.sin_mm, sine, || format!("harmonics/{k}/sin_mm"))?;
    }
    Ok(2.0 * (mean_radius_mm + sum))
}

/// A phase that the gauge does not see need not be known.
fn part(phase_mm: Option<f64>, factor: f64, field: impl FnOnce() -> String) -> Result<f64, Error> {
    match phase_mm {
        None if factor.abs() < 1e-12 => Ok(0.0),
        None => {
            let reason = "the gauge sees this phase at this angle, and the section does not have it";
            Err(Error::new(ErrorKind::MissingField, "", reason).at(&field()))
        }
        Some(mm) => Ok(bounds::COORDINATE.check(&field(), mm)? * factor),
    }
}

/// How much of the amplitude of an order a probe shows over a V-block in which the part is turned.
///
/// `included_deg` is the angle between the faces, `probe_deg` the direction of the probe from the one opposite the V: 0 opposite, 180 through the
/// V. `|e^(i n p) + cos p cos(n b) / sin a - i sin p sin(n b) / cos a|`, `a` half the included angle, `b = 90 + a`; opposite the V it is
/// `|1 + cos(n b) / sin a|`. To the first order. Source: ISO 4292, from memory; derivation in the page.
///
/// # Errors
/// [`ErrorKind::NotFinite`] or [`ErrorKind::OutOfRange`], with the parameter as field.
pub fn v_block_factor(order: usize, included_deg: f64, probe_deg: f64) -> Result<f64, Error> {
    if !(1..=MOST_ORDER).contains(&order) {
        let error = Error::new(ErrorKind::OutOfRange, order.to_string(), "no order of a section");
        return Err(error.value(as_number(order)).limits(1.0, as_number(MOST_ORDER), "1").at("order"));
    }
    bounds::V_BLOCK.check("included_deg", included_deg)?;
    bounds::ANGLE.check("probe_deg", probe_deg)?;
    let half = included_deg / 2.0;
    let (cos_half, sin_half) = turned(1, half);
    let (cos_face, sin_face) = turned(order, 90.0 + half);
    let (cos_probe, sin_probe) = turned(1, probe_deg);
    let (real, imaginary) = turned(order, probe_deg);
    let real = real + cos_probe * cos_face / sin_half;
    let imaginary = imaginary - sin_probe * sin_face / cos_half;
    Ok((real * real + imaginary * imaginary).sqrt())
}
