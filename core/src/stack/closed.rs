//! Sums of rectangles and lopsided triangles, with or without a normal part: the closed form, with a bound of what its alternating terms lose.
//!
//! With half-widths `a_i`, `P(X > x) = sum over signs of (product of signs) E (sum of +-a_i - x + N)_+^n / n! / product of 2 a_i`, `N` the normal
//! part. Terms whose reach is below `x` vanish without a normal part, so in the tail few are left. Source: Feller, An Introduction to
//! Probability Theory and Its Applications II (1971), I.9, for equal widths; the same divided difference for others. A triangle of flanks `p` and `q` has a density with
//! the second derivative `2 (q / (p + q) at its low end - 1 at its mode + p / (p + q) at its high end) / (p q)`: three terms instead of two, and two more powers.

use super::kernel::Scaled;
use super::sum::{Asked, Estimate, Sum};
use crate::special::{normal_cdf, normal_density};

/// Roundings counted for a term, in units of its size.
const ROUNDINGS: f64 = 4.0 * f64::EPSILON;
/// Most terms that are summed at all.
const MOST_TERMS: u64 = 100_000;

/// Number of terms; the largest number when there is no closed form.
pub(super) fn terms(sum: &Sum) -> u64 {
    if sum.kernels.iter().any(|k| k.triangle().is_none()) {
        return u64::MAX;
    }
    let of_triangles = sum.kernels.iter().fold(1, |all: u64, _| all.saturating_mul(3));
    sum.rectangles.iter().fold(of_triangles, |all, r| all.saturating_mul(u64::from(r.count) + 1))
}

/// A number as a double and its rest.
type Long = (f64, f64);

pub(super) fn plus(a: Long, b: f64) -> Long {
    let whole = a.0 + b;
    let back = whole - a.0;
    let rest = (a.0 - (whole - back)) + (b - back);
    let rest = rest + a.1;
    let first = whole + rest;
    (first, rest - (first - whole))
}

pub(super) fn at(sum: &Sum, x: Long, asked: Asked) -> Option<Estimate> {
    let triangles: Vec<[f64; 3]> = sum.kernels.iter().filter_map(Scaled::triangle).collect();
    if terms(sum) > MOST_TERMS || super::number(triangles.len()) * 2.0 + f64::from(sum.count()) > 60.0 {
        return None;
    }
    if sum.count() == 0 && triangles.is_empty() {
        return normal_alone(sum.variance, x.0, asked);
    }
    // a factor 2 a_i for each rectangle; a density has one power less, and one width is left over
    let mut widths: Vec<f64> = Vec::new();
    let mut reach = (-x.0, -x.1);
    for r in &sum.rectangles {
        for _ in 0..r.count {
            widths.push(2.0 * r.half_width);
            reach = plus(reach, r.half_width);
        }
    }
    for [low, mode, high] in &triangles {
        widths.extend([mode - low, high - mode]);
        reach = plus(reach, *high);
    }
    let over = if asked == Asked::Density { widths.pop() } else { None };
    let walk = Walk { sum, triangles: &triangles, widths: &widths, sd: sum.variance.sqrt() };
    let total = walk.among_triangles(0, reach, 1.0);
    let scale = over.unwrap_or(1.0);
    Some(Estimate { value: total.value / scale, error: total.error / scale })
}

fn normal_alone(variance: f64, x: f64, asked: Asked) -> Option<Estimate> {
    if variance <= 0.0 {
        return None;
    }
    let sd = variance.sqrt();
    let z = x / sd;
    let value = match asked {
        Asked::Above => normal_cdf(-z),
        Asked::Density => normal_density(z) / sd,
    };
    // the relative slope of a tail is about z
    Some(Estimate { value, error: value * (4.0 + z * z) * ROUNDINGS })
}

/// The walk over all signs: of each width, how many have theirs turned.
struct Walk<'a> {
    sum: &'a Sum,
    triangles: &'a [[f64; 3]],
    widths: &'a [f64],
    sd: f64,
}

impl Walk<'_> {
    /// Over the corners of each triangle, from the high end down.
    fn among_triangles(&self, place: usize, reach: Long, weight: f64) -> Estimate {
        let Some([low, mode, high]) = self.triangles.get(place) else { return self.from(0, reach, weight) };
        let (up, down) = (mode - low, high - mode);
        let parts = [(0.0, 2.0 * up / (up + down)), (down, -2.0), (up, 2.0 * down / (up + down))];
        let (mut out, mut reach) = (Estimate::ZERO, reach);
        for (step, share) in parts {
            reach = plus(reach, -step);
            if self.sd == 0.0 && reach.0 <= 0.0 {
                break;
            }
            let part = self.among_triangles(place + 1, reach, weight * share);
            out = Estimate { value: out.value + part.value, error: out.error + part.error };
        }
        out
    }

    fn from(&self, place: usize, reach: Long, weight: f64) -> Estimate {
        let Some(r) = self.sum.rectangles.get(place) else { return self.term(reach, weight) };
        let mut out = Estimate::ZERO;
        let (mut reach, mut weight, mut left) = (reach, weight, f64::from(r.count));
        for turned in 0..=r.count {
            // without a normal part nothing beyond the reach is left, in this or in any further term
            if self.sd == 0.0 && reach.0 <= 0.0 {
                break;
            }
            let part = self.from(place + 1, reach, weight);
            out = Estimate { value: out.value + part.value, error: out.error + part.error };
            reach = plus(reach, -2.0 * r.half_width);
            weight *= -left / (f64::from(turned) + 1.0);
            left -= 1.0;
        }
        out
    }

    fn term(&self, reach: Long, weight: f64) -> Estimate {
        let (value, roundings) = match self.sd > 0.0 {
            false => self.power(reach.0 + reach.1),
            true => self.repeated(reach.0 + reach.1),
        };
        let value = value * weight;
        Estimate { value, error: value.abs() * roundings * ROUNDINGS }
    }

    /// `y^n / n!` over the widths.
    fn power(&self, y: f64) -> (f64, f64) {
        let (mut out, mut k) = (1.0, 0.0);
        for width in self.widths {
            k += 1.0;
            out *= y / (k * width);
        }
        (out, k + 1.0)
    }

    /// `E (y + N)_+^n / n!` over the widths.
    fn repeated(&self, y: f64) -> (f64, f64) {
        let z = y / self.sd;
        let roundings = super::number(self.widths.len()) + 4.0;
        match z {
            z if z < -38.0 => (0.0, 1.0),
            z if z < -0.7 => (self.downward(z), roundings + z * z),
            _ => self.upward(z, roundings),
        }
    }

    /// By the recurrence `k J_k = z J_(k-1) + J_(k-2)`, which for `z > 0` adds only. Source: A&S 7.2.5 for the repeated integrals.
    fn upward(&self, z: f64, roundings: f64) -> (f64, f64) {
        let (mut before, mut now, mut k) = (normal_density(z), normal_cdf(z), 0.0);
        // the same with every sign turned to plus: what cancelled
        let (mut size_before, mut size) = (before, now);
        let mut before_width = 1.0;
        for width in self.widths {
            let step = self.sd / width;
            k += 1.0;
            let next = (z * now + before * before_width) * step / k;
            let next_size = (z.abs() * size + size_before * before_width) * step / k;
            (before, now) = (now, next);
            (size_before, size) = (size, next_size);
            before_width = step;
        }
        let lost = if now > 0.0 { size / now } else { f64::INFINITY };
        (now, roundings * lost)
    }

    /// For `z < 0` the wanted solution is the smallest one: ratios from far up, then down. Source: Gautschi, SIAM Review 9 (1967).
    fn downward(&self, z: f64) -> f64 {
        let count = self.widths.len();
        let root = super::number(count).sqrt() + 14.0 / z.abs();
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "z is below -0.7: at most a few hundred more than the count"
        )]
        let start = (root * root) as usize + 60;
        let mut ratio = 0.0;
        let mut ratios = vec![0.0; count];
        for k in (2..=start).rev() {
            ratio = 1.0 / (super::number(k) * ratio - z);
            if let Some(place) = ratios.get_mut(k - 2) {
                *place = ratio;
            }
        }
        self.widths
            .iter()
            .zip(ratios)
            .fold(normal_cdf(z), |out, (width, ratio)| out * ratio * self.sd / width)
    }
}
