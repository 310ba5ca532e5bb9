//! Angles in degrees: exact at the quarters of a turn, where instruments are set.

use core::f64::consts::PI;

/// Cosine and sine of `times` an angle in degrees.
pub(crate) fn turned(times: usize, angle_deg: f64) -> (f64, f64) {
    // the remainder is exact, and so are the quarters taken off it
    let angle = (angle_deg % 360.0 * as_number(times)) % 360.0;
    let quarter = libm::round(angle / 90.0);
    let rest = (angle - quarter * 90.0) * (PI / 180.0);
    let (cosine, sine) = (libm::cos(rest), libm::sin(rest));
    match quarter.rem_euclid(4.0) {
        q if q < 0.5 => (cosine, sine),
        q if q < 1.5 => (-sine, cosine),
        q if q < 2.5 => (-cosine, -sine),
        _ => (sine, -cosine),
    }
}

#[expect(clippy::cast_precision_loss, reason = "a count of points is far below 2^53")]
pub(crate) const fn as_number(count: usize) -> f64 {
    count as f64
}

/// From one angle to another in the direction of rising angles, 0 up to 360 degrees.
pub(crate) fn forward(from_deg: f64, to_deg: f64) -> f64 {
    let apart = (to_deg - from_deg) % 360.0;
    if apart < 0.0 { apart + 360.0 } else { apart }
}
