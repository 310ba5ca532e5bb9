//! Angles in degrees: exact at the quarters of a turn, where instruments are set.

use crate::error::{Error, ErrorKind};
use core::f64::consts::PI;

/// Cosine and sine of `times` an angle in degrees.
pub(crate) fn turned(times: usize, angle_deg: f64) -> (f64, f64) {
    let (quarter, rest) = parts(times, angle_deg);
    let (cosine, sine) = (libm::cos(rest), libm::sin(rest));
    match quarter {
        q if q < 0.5 => (cosine, sine),
        q if q < 1.5 => (-sine, cosine),
        q if q < 2.5 => (-cosine, -sine),
        _ => (sine, -cosine),
    }
}

/// The cosine alone.
pub(crate) fn cosine(times: usize, angle_deg: f64) -> f64 {
    let (quarter, rest) = parts(times, angle_deg);
    match quarter {
        q if q < 0.5 => libm::cos(rest),
        q if q < 1.5 => -libm::sin(rest),
        q if q < 2.5 => -libm::cos(rest),
        _ => libm::sin(rest),
    }
}

/// The nearest quarter of the turn of `times` an angle, 0 to 3, and what is left from there, in radians.
fn parts(times: usize, angle_deg: f64) -> (f64, f64) {
    let angle = angle_deg % 360.0 * as_number(times);
    let quarters = libm::round(angle / 90.0);
    // exact, as the remainder above: what is left is smaller than the angle, and no finer
    let rest = (angle - quarters * 90.0) * (PI / 180.0);
    (quarters - 4.0 * libm::floor(quarters / 4.0), rest)
}

#[expect(clippy::cast_precision_loss, reason = "a count of points is far below 2^53")]
pub(crate) const fn as_number(count: usize) -> f64 {
    count as f64
}

/// The opposite of an angle from 0 to 360 degrees.
pub(crate) fn across(angle_deg: f64) -> f64 {
    if angle_deg < 180.0 { angle_deg + 180.0 } else { angle_deg - 180.0 }
}

/// From one angle to another in the direction of rising angles, 0 up to 360 degrees.
pub(crate) fn forward(from_deg: f64, to_deg: f64) -> f64 {
    let apart = (to_deg - from_deg) % 360.0;
    if apart < 0.0 { apart + 360.0 } else { apart }
}

/// Narrower openings, in degrees, are none.
const LEAST_WIDTH: f64 = 0.001;

/// How wide an opening is that runs from one angle onward to another, both 0 to 360 degrees: from 350 to 10 it is 20 degrees, from 0 to 360
/// the whole turn, and from 360 to 0 nothing.
pub(crate) fn width(from_deg: f64, to_deg: f64) -> f64 {
    let apart = to_deg - from_deg;
    if apart < 0.0 { apart + 360.0 } else { apart }
}

/// Refuses an opening without width; the field is `to_deg`.
pub(crate) fn check_width(from_deg: f64, to_deg: f64, of: &str) -> Result<(), Error> {
    match width(from_deg, to_deg) < LEAST_WIDTH {
        true => {
            let reason = format!("{of} has a width: it runs from its beginning onward to its end");
            Err(Error::new(ErrorKind::OutOfOrder, to_deg.to_string(), reason).at("to_deg"))
        }
        false => Ok(()),
    }
}

/// Is an angle within an opening? Its edges belong to what is around; a whole turn has none.
pub(crate) fn opens(from_deg: f64, to_deg: f64, angle_deg: f64) -> bool {
    let (into, width) = (forward(from_deg, angle_deg), width(from_deg, to_deg));
    width >= 360.0 || (into > 0.0 && into < width)
}
