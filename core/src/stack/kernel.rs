//! Terms of a sum that are not made of rectangles and a normal: density, tail, and the nodes of their transform.

use crate::special::{beta_i, normal_cdf, normal_density, normal_quantile};
use core::f64::consts::PI;
use std::borrow::Cow;
use std::sync::OnceLock;

/// A distribution in its own unit and place.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Kernel {
    /// Beta of two shapes between two ends.
    Beta { alpha: f64, beta: f64, low: f64, high: f64, ln_scale: f64 },
    /// Two straight flanks.
    Triangle { low: f64, mode: f64, high: f64 },
    /// A line over the normal score in each of a few pieces.
    Scores { pieces: Vec<ScorePiece>, share: f64 },
    /// Equally probable values.
    Atoms(Vec<f64>),
}

/// A piece of [`Kernel::Scores`]: the value is `at + slope z` for scores from `low` to `high`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct ScorePiece {
    pub(super) low: f64,
    pub(super) high: f64,
    pub(super) at: f64,
    pub(super) slope: f64,
}

/// A kernel times a factor, plus a shift.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Scaled {
    pub(super) kernel: Kernel,
    pub(super) factor: f64,
    pub(super) shift: f64,
}

/// A value and the logarithm of its weight.
pub(super) type Node = (f64, f64);

/// Tilted scores outside this square of a distance weigh less than a rounding: `exp(-45)`.
const SQUARE_OF_REACH: f64 = 90.0;

impl Kernel {
    pub(super) fn beta(alpha: f64, beta: f64, low: f64, high: f64) -> Self {
        let ln_scale =
            libm::lgamma(alpha + beta) - libm::lgamma(alpha) - libm::lgamma(beta) - libm::log(high - low);
        Kernel::Beta { alpha, beta, low, high, ln_scale }
    }

    /// Pieces between measured quantiles, straight over the normal score; the first and the last go on.
    pub(super) fn skewed(points: &[(f64, f64)]) -> Self {
        let count = points.len();
        let pieces = points.windows(2).enumerate().filter_map(|(k, pair)| {
            let [(p0, v0), (p1, v1)] = pair else { return None };
            let (z0, z1) = (normal_quantile(*p0), normal_quantile(*p1));
            let slope = (v1 - v0) / (z1 - z0);
            let low = if k == 0 { f64::NEG_INFINITY } else { z0 };
            let high = if k + 2 == count { f64::INFINITY } else { z1 };
            Some(ScorePiece { low, high, at: v0 - slope * z0, slope })
        });
        Kernel::Scores { pieces: pieces.collect(), share: 1.0 }
    }

    pub(super) fn truncated(mean: f64, sd: f64, low: f64, high: f64) -> Self {
        let piece = ScorePiece { low: (low - mean) / sd, high: (high - mean) / sd, at: mean, slope: sd };
        Kernel::Scores { pieces: vec![piece], share: between(piece.low, piece.high) }
    }

    /// The same, with all distances from a middle times a factor above zero.
    pub(super) fn about_middle(&self, middle: f64, factor: f64) -> Self {
        let at = |v: f64| middle + (v - middle) * factor;
        match self {
            Kernel::Beta { alpha, beta, low, high, .. } => Kernel::beta(*alpha, *beta, at(*low), at(*high)),
            Kernel::Triangle { low, mode, high } => {
                Kernel::Triangle { low: at(*low), mode: at(*mode), high: at(*high) }
            }
            Kernel::Scores { pieces, share } => {
                let moved = |p: &ScorePiece| ScorePiece { at: at(p.at), slope: p.slope * factor, ..*p };
                Kernel::Scores { pieces: pieces.iter().map(moved).collect(), share: *share }
            }
            Kernel::Atoms(values) => Kernel::Atoms(values.iter().map(|v| at(*v)).collect()),
        }
    }

    fn ends(&self) -> (f64, f64) {
        match self {
            Kernel::Beta { low, high, .. } | Kernel::Triangle { low, high, .. } => (*low, *high),
            Kernel::Scores { pieces, .. } => (
                pieces.first().map_or(0.0, |p| p.at + p.slope * p.low),
                pieces.last().map_or(0.0, |p| p.at + p.slope * p.high),
            ),
            Kernel::Atoms(values) => values
                .iter()
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), v| (libm::fmin(a, *v), libm::fmax(b, *v))),
        }
    }

    /// Where the density has a corner or a step, the ends too; not for atoms.
    fn corners(&self) -> Vec<f64> {
        match self {
            Kernel::Beta { low, high, .. } => vec![*low, *high],
            Kernel::Triangle { low, mode, high } => vec![*low, *mode, *high],
            Kernel::Scores { pieces, .. } => {
                let mut out: Vec<f64> = pieces.iter().map(|p| p.at + p.slope * p.low).collect();
                out.extend(pieces.last().map(|p| p.at + p.slope * p.high));
                out.retain(|v| v.is_finite());
                out
            }
            Kernel::Atoms(_) => Vec::new(),
        }
    }

    pub(super) fn density(&self, v: f64) -> f64 {
        let (low, high) = self.ends();
        if v < low || v > high {
            return 0.0;
        }
        match self {
            Kernel::Beta { alpha, beta, low, high, ln_scale } => {
                let width = high - low;
                let part = |shape: f64, distance: f64| match distance > 0.0 {
                    true => (shape - 1.0) * libm::log(distance / width),
                    // at an end: flat, nothing or without bound
                    false if shape > 1.0 => f64::NEG_INFINITY,
                    false if shape < 1.0 => f64::INFINITY,
                    false => 0.0,
                };
                libm::exp(ln_scale + part(*alpha, v - low) + part(*beta, high - v))
            }
            Kernel::Triangle { low, mode, high } => {
                let top = 2.0 / (high - low);
                if v < *mode { top * (v - low) / (mode - low) } else { top * falling(v, *mode, *high) }
            }
            Kernel::Scores { pieces, share } => pieces
                .iter()
                .find(|p| v <= p.at + p.slope * p.high)
                .map_or(0.0, |p| normal_density((v - p.at) / p.slope) / p.slope / share),
            Kernel::Atoms(_) => f64::NAN,
        }
    }

    /// Probability above `v`.
    fn above(&self, v: f64) -> f64 {
        let (low, high) = self.ends();
        if v >= high || v < low {
            return if v < low { 1.0 } else { 0.0 };
        }
        match self {
            Kernel::Beta { alpha, beta, low, high, .. } => beta_i(*beta, *alpha, (high - v) / (high - low)),
            Kernel::Triangle { low, mode, high } => {
                if v < *mode {
                    1.0 - (v - low) * (v - low) / ((high - low) * (mode - low))
                } else {
                    (high - v) * (high - v) / ((high - low) * (high - mode))
                }
            }
            Kernel::Scores { pieces, share } => {
                let part = |p: &ScorePiece| {
                    let z = (v - p.at) / p.slope;
                    if z >= p.high { 0.0 } else { between(libm::fmax(z, p.low), p.high) }
                };
                pieces.iter().rev().map(part).sum::<f64>() / share
            }
            Kernel::Atoms(values) => share_of(values, |a| a > v),
        }
    }

    /// Probability below `v`.
    fn below(&self, v: f64) -> f64 {
        let (low, high) = self.ends();
        if v > high || v <= low {
            return if v > high { 1.0 } else { 0.0 };
        }
        match self {
            Kernel::Beta { alpha, beta, low, high, .. } => beta_i(*alpha, *beta, (v - low) / (high - low)),
            Kernel::Triangle { low, mode, high } => {
                if v < *mode {
                    (v - low) * (v - low) / ((high - low) * (mode - low))
                } else {
                    1.0 - (high - v) * (high - v) / ((high - low) * (high - mode))
                }
            }
            Kernel::Scores { pieces, share } => {
                let part = |p: &ScorePiece| {
                    let z = (v - p.at) / p.slope;
                    if z <= p.low { 0.0 } else { between(p.low, libm::fmin(z, p.high)) }
                };
                pieces.iter().map(part).sum::<f64>() / share
            }
            Kernel::Atoms(values) => share_of(values, |a| a < v),
        }
    }

    /// Values and logarithms of weights whose sum of `exp(z v)` is the transform, for tilts about `s` and frequencies up to `t`.
    fn nodes(&self, s: f64, t: f64) -> Vec<Node> {
        match self {
            Kernel::Atoms(values) => {
                let ln = -libm::log(super::number(values.len()));
                values.iter().map(|v| (*v, ln)).collect()
            }
            Kernel::Scores { pieces, share } => {
                let ln_share = libm::log(*share);
                pieces.iter().flat_map(|p| score_nodes(p, ln_share, s, t)).collect()
            }
            Kernel::Triangle { low, mode, high } => {
                let ln_top = libm::log(2.0 / (high - low));
                let up =
                    double_exponential(*low, *mode, bandwidth(mode - low, s, t), |from, _, _| ln_top + from);
                let down =
                    double_exponential(*mode, *high, bandwidth(high - mode, s, t), |_, to, _| ln_top + to);
                up.into_iter().chain(down).collect()
            }
            Kernel::Beta { alpha, beta, low, high, ln_scale } => {
                double_exponential(*low, *high, bandwidth(high - low, s, t), |from, to, _| {
                    ln_scale + (alpha - 1.0) * from + (beta - 1.0) * to
                })
            }
        }
    }

    /// Is every tilt of the density without a step to infinity, so that its transform falls as 1 / t?
    fn has_bounded_density(&self) -> bool {
        match self {
            Kernel::Beta { alpha, beta, .. } => *alpha >= 1.0 && *beta >= 1.0,
            Kernel::Atoms(_) => false,
            _ => true,
        }
    }
}

fn falling(v: f64, mode: f64, high: f64) -> f64 {
    if high > mode { (high - v) / (high - mode) } else { 1.0 }
}

fn share_of(values: &[f64], which: impl Fn(f64) -> bool) -> f64 {
    super::number(values.iter().filter(|v| which(**v)).count()) / super::number(values.len())
}

/// Probability of a normal score between two, from the side where it holds its digits.
fn between(low: f64, high: f64) -> f64 {
    if low > 0.0 { normal_cdf(-low) - normal_cdf(-high) } else { normal_cdf(high) - normal_cdf(low) }
}

/// Room that a transform over a width needs: highest frequency in the variable of the double exponential, plus that of the rule.
fn bandwidth(width: f64, s: f64, t: f64) -> f64 {
    width * PI / 4.0 * libm::sqrt(s * s + t * t) + 70.0
}

fn score_nodes(p: &ScorePiece, ln_share: f64, s: f64, t: f64) -> Vec<Node> {
    // the tilted density is that of a normal about this score
    let centre = p.slope * s;
    let away = libm::fmax(libm::fmax(p.low - centre, centre - p.high), 0.0);
    let reach = libm::sqrt(SQUARE_OF_REACH + away * away);
    let (low, high) = (libm::fmax(p.low, centre - reach), libm::fmin(p.high, centre + reach));
    if low >= high {
        return Vec::new();
    }
    let room = (high - low) * PI / 4.0 * (p.slope.abs() * t + 9.0 + away) + 70.0;
    let ln_top = -0.5 * libm::log(2.0 * PI) - ln_share;
    let ln = |_: f64, _: f64, z: f64| -z * z / 2.0 + ln_top;
    let nodes = double_exponential(low, high, room, ln);
    nodes.into_iter().map(|(z, ln_weight)| (p.at + p.slope * z, ln_weight)).collect()
}

/// A node of the double exponential rule on an interval of width 1.
#[derive(Debug, Clone, Copy)]
struct Place {
    /// Distance from the nearer end.
    near: f64,
    /// Logarithms of the distances from both ends, and of the weight.
    ln_near: f64,
    ln_far: f64,
    ln_weight: f64,
}

impl Place {
    fn new(u: f64, h: f64) -> Self {
        let exponent = -PI * libm::sinh(u);
        let e = libm::exp(exponent);
        let ln_far = -libm::log1p(e);
        let ln_weight = libm::log(h * PI * libm::cosh(u)) + exponent + 2.0 * ln_far;
        Place { near: e / (1.0 + e), ln_near: exponent + ln_far, ln_far, ln_weight }
    }

    /// The nodes of a step, from the middle to one end. Source: Takahasi and Mori, Publ. RIMS 9 (1974).
    fn of_step(h: f64) -> Vec<Place> {
        // beyond this the distance to the end is below the smallest number
        (0..).map(|k| f64::from(k) * h).take_while(|u| *u < 5.3).map(|u| Place::new(u, h)).collect()
    }
}

/// Room of the coarsest rule that is kept, and how many of them, each with 1.25 times that of the one before.
const LEAST_ROOM: f64 = 70.0;
const KEPT: usize = 20;

/// The rule with at least so much room: kept once it was made, unless it is very fine.
fn rule(room: f64) -> Cow<'static, [Place]> {
    static RULES: [OnceLock<Vec<Place>>; KEPT] = [const { OnceLock::new() }; KEPT];
    let mut kept = LEAST_ROOM;
    for place in &RULES {
        if room <= kept {
            return Cow::Borrowed(place.get_or_init(|| Place::of_step(2.0 * PI / kept)));
        }
        kept *= 1.25;
    }
    Cow::Owned(Place::of_step(2.0 * PI / room))
}

/// Nodes of the double exponential rule on an interval. `ln_density` gets the logarithms of the distances from both ends over the width, and the value.
fn double_exponential(
    low: f64,
    high: f64,
    room: f64,
    ln_density: impl Fn(f64, f64, f64) -> f64,
) -> Vec<Node> {
    let width = high - low;
    if width <= 0.0 {
        return Vec::new();
    }
    let rule = rule(room);
    let ln_width = libm::log(width);
    let mut out = Vec::with_capacity(2 * rule.len());
    let mut push = |value: f64, ln: f64| {
        if ln.is_finite() {
            out.push((value, ln));
        }
    };
    for (k, place) in rule.iter().enumerate() {
        let Place { near, ln_near, ln_far, ln_weight } = *place;
        let (ln_weight, near) = (ln_weight + ln_width, width * near);
        let above = high - near;
        push(above, ln_weight + ln_density(ln_far, ln_near, above));
        // the middle stands once
        if k > 0 {
            let below = low + near;
            push(below, ln_weight + ln_density(ln_near, ln_far, below));
        }
    }
    out
}

impl Scaled {
    pub(super) fn mirrored(&self) -> Self {
        Scaled { kernel: self.kernel.clone(), factor: -self.factor, shift: -self.shift }
    }

    fn own(&self, x: f64) -> f64 {
        (x - self.shift) / self.factor
    }

    fn placed(&self, v: f64) -> f64 {
        self.shift + self.factor * v
    }

    pub(super) fn ends(&self) -> (f64, f64) {
        let (low, high) = self.kernel.ends();
        let (a, b) = (self.placed(low), self.placed(high));
        if a < b { (a, b) } else { (b, a) }
    }

    pub(super) fn corners(&self) -> Vec<f64> {
        self.kernel.corners().into_iter().map(|v| self.placed(v)).collect()
    }

    pub(super) fn density(&self, x: f64) -> f64 {
        self.kernel.density(self.own(x)) / self.factor.abs()
    }

    pub(super) fn above(&self, x: f64) -> f64 {
        if self.factor > 0.0 { self.kernel.above(self.own(x)) } else { self.kernel.below(self.own(x)) }
    }

    pub(super) fn nodes(&self, s: f64, t: f64) -> Vec<Node> {
        let nodes = self.kernel.nodes(s * self.factor, t * self.factor.abs());
        nodes.into_iter().map(|(v, ln)| (self.placed(v), ln)).collect()
    }

    /// About how many nodes a tilt and a frequency need.
    pub(super) fn effort(&self, s: f64, t: f64) -> f64 {
        let (s, t) = (s * self.factor, t * self.factor);
        match &self.kernel {
            Kernel::Beta { low, high, .. } | Kernel::Triangle { low, high, .. } => {
                1.4 * (high - low) * libm::sqrt(s * s + t * t) + 250.0
            }
            Kernel::Scores { pieces, .. } => {
                let width = |p: &ScorePiece| libm::fmin(p.high - p.low, 25.0);
                pieces.iter().map(|p| 1.4 * width(p) * (p.slope * (t.abs() + s.abs()) + 9.0) + 120.0).sum()
            }
            Kernel::Atoms(values) => super::number(values.len()),
        }
    }

    /// The values of a sample; none for a density.
    pub(super) fn atoms(&self) -> Option<Vec<f64>> {
        match &self.kernel {
            Kernel::Atoms(values) => Some(values.iter().map(|v| self.placed(*v)).collect()),
            _ => None,
        }
    }

    /// Low end, mode and high end of a triangle with two flanks; none of anything else.
    pub(super) fn triangle(&self) -> Option<[f64; 3]> {
        let Kernel::Triangle { low, mode, high } = self.kernel else { return None };
        let (low, mode, high) = (self.placed(low), self.placed(mode), self.placed(high));
        let (low, high) = if low < high { (low, high) } else { (high, low) };
        (low < mode && mode < high).then_some([low, mode, high])
    }

    /// Largest value of the tilted and normalised density from its nodes, times 2 for each piece: more than its total variation.
    /// None when the density is not bounded.
    pub(super) fn variation(&self, s: f64, ln_transform: f64, nodes: &[Node]) -> Option<f64> {
        if !self.kernel.has_bounded_density() {
            return None;
        }
        let pieces = match &self.kernel {
            Kernel::Scores { pieces, .. } => super::number(pieces.len()),
            _ => 1.0,
        };
        let largest = nodes
            .iter()
            .map(|(v, _)| self.density(*v) * libm::exp(s * v - ln_transform))
            .fold(0.0, libm::fmax);
        // between two nodes the density may be a little larger than at both
        Some(2.0 * pieces * 1.5 * largest)
    }

    /// Mean and variance of the kernel, from nodes.
    pub(super) fn moments(&self) -> (f64, f64) {
        let nodes = self.nodes(0.0, 0.0);
        let moment = |f: &dyn Fn(f64) -> f64| {
            crate::measurement::statistics::sum(nodes.iter().map(|(v, ln)| f(*v) * libm::exp(*ln)))
        };
        let mean = moment(&|v| v);
        (mean, moment(&|v| (v - mean) * (v - mean)))
    }

    /// Pieces to integrate over, each smooth within: ends and the places `cuts` inside; infinite ends are cut where nothing is left.
    pub(super) fn integral_over(
        &self,
        cuts: &[f64],
        tolerance: f64,
        f: &dyn Fn(f64) -> f64,
    ) -> crate::quadrature::Integral {
        let (low, high) = self.reach();
        let mut points: Vec<f64> = self.corners();
        points.extend(cuts.iter().copied());
        points.extend([low, high]);
        points.retain(|v| *v >= low && *v <= high);
        points.sort_by(f64::total_cmp);
        points.dedup();
        match &self.kernel {
            Kernel::Beta { alpha, beta, low, high, ln_scale } => {
                // v = low + width sin^2(a): the roots at the ends are gone
                let width = high - low;
                let angle = |x: &f64| {
                    let from = (self.own(*x) - low) / width;
                    2.0 * libm::atan2(
                        libm::sqrt(libm::fmax(from, 0.0)),
                        1.0 + libm::sqrt(libm::fmax(1.0 - from, 0.0)),
                    )
                };
                let mut angles: Vec<f64> = points.iter().map(angle).collect();
                angles.sort_by(f64::total_cmp);
                let g = |a: f64| {
                    let (sine, cosine) = (libm::sin(a), libm::cos(a));
                    let logs = (2.0 * alpha - 1.0) * libm::log(sine) + (2.0 * beta - 1.0) * libm::log(cosine);
                    let value = if cosine > sine {
                        low + width * sine * sine
                    } else {
                        high - width * cosine * cosine
                    };
                    2.0 * width * libm::exp(ln_scale + logs) * f(self.placed(value))
                };
                crate::quadrature::integral(&g, &angles, tolerance)
            }
            _ => crate::quadrature::integral(&|x| self.density(x) * f(x), &points, tolerance),
        }
    }

    /// Ends, with infinite ones cut where less is left than the smallest number.
    pub(super) fn reach(&self) -> (f64, f64) {
        match &self.kernel {
            Kernel::Scores { pieces, .. } => {
                let low =
                    pieces.first().map_or(0.0, |p| self.placed(p.at + p.slope * libm::fmax(p.low, -38.0)));
                let high =
                    pieces.last().map_or(0.0, |p| self.placed(p.at + p.slope * libm::fmin(p.high, 38.0)));
                if low < high { (low, high) } else { (high, low) }
            }
            _ => self.ends(),
        }
    }
}
