//! A sum of independent terms about zero, and the choice of the way to its probabilities.

use super::kernel::{Node, Scaled};
use super::line::Slopes;
use super::{closed, convolution, line};
use crate::choice::choices;
use crate::measurement::statistics::sum;

choices! {
    /// How a probability of a linear stack was computed.
    Method {
        /// Sum of the terms of a closed form.
        ClosedForm = "closed_form",
        /// Integral of the transform along a vertical line through the saddle point.
        LineIntegral = "line_integral",
        /// The tail of all but one contributor, averaged over that one.
        Convolution = "convolution",
        /// Over every combination of the values of samples; the others by one of the other ways.
        Enumeration = "enumeration",
        /// The distribution of the only contributor that varies.
        OneContributor = "one_contributor",
        /// Nothing is that far out that a double could hold.
        BeyondReach = "beyond_reach",
    }
}

/// Equal rectangles: half-width and how many.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Rectangles {
    pub(super) half_width: f64,
    pub(super) count: u32,
}

/// A sum in the form that probabilities are computed from: rectangles about zero, one normal about zero, other terms.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Sum {
    pub(super) rectangles: Vec<Rectangles>,
    /// Variance of the normal part.
    pub(super) variance: f64,
    pub(super) kernels: Vec<Scaled>,
    /// Nodes of every kernel for small tilts, from which the tilt is found.
    rough: Vec<Vec<Node>>,
    /// Mean and variance of the whole.
    pub(super) mean: f64,
    pub(super) whole_variance: f64,
    /// Ends of the whole, from the middle of the rectangles; infinite with a normal part.
    pub(super) ends: (f64, f64),
    /// Beyond these the probability is below the smallest number: one of the terms would have to be that far out.
    far: (f64, f64),
}

/// What is asked of a sum at a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Asked {
    /// Probability above.
    Above,
    /// Density.
    Density,
}

/// A value and a bound of its absolute error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Estimate {
    pub(super) value: f64,
    pub(super) error: f64,
}

impl Estimate {
    pub(super) const ZERO: Estimate = Estimate { value: 0.0, error: 0.0 };

    pub(super) fn relative(&self) -> f64 {
        match self.value {
            // nothing beyond the ends, without doubt
            0.0 if self.error == 0.0 => 0.0,
            value if value > 0.0 => self.error / value,
            _ => f64::INFINITY,
        }
    }
}

/// Before any way was tried.
const UNKNOWN: (Estimate, Method) = (Estimate { value: 0.0, error: f64::INFINITY }, Method::ClosedForm);

/// The better known of two, with the way to it.
fn better(best: (Estimate, Method), other: Option<Estimate>, method: Method) -> (Estimate, Method) {
    match other {
        Some(other) if other.relative() < best.0.relative() => (other, method),
        _ => best,
    }
}

/// A value known to this relative error is taken without a second way.
const GOOD: f64 = 1e-11;
/// One known to this is taken before the slowest way is tried.
const GOOD_ENOUGH: f64 = 1e-10;
/// Most terms of a closed form that are summed without asking for another way first.
const QUICK_TERMS: u64 = 300;

impl Sum {
    pub(super) fn new(widths: &[f64], variance: f64, kernels: Vec<Scaled>) -> Self {
        let mut widths: Vec<f64> = widths.iter().copied().filter(|w| *w > 0.0).collect();
        widths.sort_by(f64::total_cmp);
        widths.reverse();
        let mut rectangles: Vec<Rectangles> = Vec::new();
        for half_width in widths {
            match rectangles.last_mut() {
                #[expect(clippy::float_cmp, reason = "equal widths are one term of the closed form")]
                Some(last) if last.half_width == half_width => last.count += 1,
                _ => rectangles.push(Rectangles { half_width, count: 1 }),
            }
        }
        let reach = sum(rectangles.iter().map(|r| r.half_width * f64::from(r.count)));
        let moments: Vec<(f64, f64)> = kernels.iter().map(Scaled::moments).collect();
        let squares = rectangles.iter().map(|r| f64::from(r.count) * r.half_width * r.half_width / 3.0);
        let infinite = if variance > 0.0 { f64::INFINITY } else { 0.0 };
        let (lows, highs): (Vec<f64>, Vec<f64>) = kernels.iter().map(Scaled::ends).unzip();
        let (least, most): (Vec<f64>, Vec<f64>) = kernels.iter().map(Scaled::reach).unzip();
        let room = reach + 39.0 * variance.sqrt();
        Sum {
            variance,
            mean: sum(moments.iter().map(|m| m.0)),
            whole_variance: variance + sum(squares) + sum(moments.iter().map(|m| m.1)),
            ends: (lows.iter().sum::<f64>() - reach - infinite, highs.iter().sum::<f64>() + reach + infinite),
            far: (least.iter().sum::<f64>() - room, most.iter().sum::<f64>() + room),
            rough: kernels.iter().map(|k| k.nodes(0.0, 0.0)).collect(),
            rectangles,
            kernels,
        }
    }

    /// The same seen from the other side.
    pub(super) fn mirrored(&self) -> Self {
        let (low, high) = self.ends;
        let mirror = |nodes: &Vec<Node>| nodes.iter().map(|(v, ln)| (-v, *ln)).collect();
        Sum {
            rectangles: self.rectangles.clone(),
            variance: self.variance,
            kernels: self.kernels.iter().map(Scaled::mirrored).collect(),
            rough: self.rough.iter().map(mirror).collect(),
            mean: -self.mean,
            whole_variance: self.whole_variance,
            ends: (-high, -low),
            far: (-self.far.1, -self.far.0),
        }
    }

    /// Number of rectangles.
    pub(super) fn count(&self) -> u32 {
        self.rectangles.iter().map(|r| r.count).sum()
    }

    /// Has it a part with a density?
    pub(super) fn is_continuous(&self) -> bool {
        self.variance > 0.0 || !self.rectangles.is_empty() || self.kernels.iter().any(|k| k.atoms().is_none())
    }

    /// Terms of a full enumeration of the samples.
    pub(super) fn enumeration(&self) -> f64 {
        let sizes = self.kernels.iter().filter_map(Scaled::atoms);
        sizes.map(|a| super::number(a.len())).product()
    }

    /// Probability above a place at or beyond the mean, or the density there; `x` is a number and its rest.
    pub(super) fn at(&self, x: (f64, f64), asked: Asked) -> Estimate {
        self.by_method(x, asked).0
    }

    /// The same, and which way gave it.
    pub(super) fn by_method(&self, x: (f64, f64), asked: Asked) -> (Estimate, Method) {
        if x.0 > self.far.1 || (x.0 >= self.far.1 && x.1 >= 0.0) {
            return (Estimate::ZERO, Method::BeyondReach);
        }
        let terms = closed::terms(self);
        // beside a normal part that is not small the line ends after a few steps, and a term costs more than a step
        let quick_terms = if self.variance * 400.0 > self.whole_variance { 8 } else { QUICK_TERMS };
        let quick = if terms <= quick_terms { closed::at(self, x, asked) } else { None };
        if let Some(known) = quick
            && known.relative() <= GOOD
        {
            return (known, Method::ClosedForm);
        }
        let mut best = better(UNKNOWN, quick, Method::ClosedForm);
        // one kernel alone, or samples alone, need no integral
        if self.is_continuous() && (self.kernels.len() != 1 || self.count() > 0 || self.variance > 0.0) {
            best = better(best, line::at(self, x.0, asked), Method::LineIntegral);
        }
        if best.0.relative() > GOOD_ENOUGH && quick.is_none() {
            best = better(best, closed::at(self, x, asked), Method::ClosedForm);
        }
        if best.0.relative() > GOOD_ENOUGH {
            best = better(best, convolution::at(self, x, asked), self.last_method());
        }
        best
    }

    /// What a convolution comes to with these terms.
    fn last_method(&self) -> Method {
        let alone = self.kernels.len() == 1 && self.count() == 0 && self.variance <= 0.0;
        match self.kernels.iter().any(|k| k.atoms().is_some()) {
            true => Method::Enumeration,
            false if alone => Method::OneContributor,
            false => Method::Convolution,
        }
    }

    /// The same without any integral: a closed form, or one kernel alone.
    pub(super) fn plain(&self, x: (f64, f64), asked: Asked) -> Estimate {
        if x.0 >= self.far.1 {
            return Estimate::ZERO;
        }
        match self.kernels.as_slice() {
            [one] if self.count() == 0 && self.variance <= 0.0 => convolution::alone(one, x.0, asked),
            _ => better(UNKNOWN, closed::at(self, x, asked), Method::ClosedForm).0,
        }
    }

    /// Derivatives of the probability above a place at or beyond the mean.
    pub(super) fn slopes_at(&self, x: (f64, f64)) -> Option<Slopes> {
        if x.0 >= self.far.1 {
            return Some(Slopes {
                shift: 0.0,
                normal: 0.0,
                rectangles: vec![0.0; self.rectangles.len()],
                kernels: vec![0.0; self.kernels.len()],
            });
        }
        line::slopes(self, x.0).or_else(|| self.slopes_by_ends(x))
    }

    /// Without kernels, or of one alone. What a rectangle of half-width `a` adds at its ends. With `Q` the tail of the others, `P(x) = (1 / 2a)` times the
    /// integral of `Q` from `x - a` to `x + a`, so `dP / d ln a = (Q(x - a) + Q(x + a)) / 2 - P(x)`; and `dP / d ln sigma = sigma^2 P''(x)`.
    fn slopes_by_ends(&self, x: (f64, f64)) -> Option<Slopes> {
        let alone = self.count() == 0 && self.variance <= 0.0 && self.kernels.len() == 1;
        if !self.kernels.is_empty() && !alone {
            return None;
        }
        let known = |e: Estimate| (e.relative() <= GOOD_ENOUGH).then_some(e.value);
        let (above, shift) = (known(self.at(x, Asked::Above))?, known(self.at(x, Asked::Density))?);
        if alone {
            return Some(Slopes { shift, normal: 0.0, rectangles: Vec::new(), kernels: vec![x.0 * shift] });
        }
        let mut normal = 0.0;
        let mut rectangles = Vec::with_capacity(self.rectangles.len());
        for (place, r) in self.rectangles.iter().enumerate() {
            let a = r.half_width;
            let rest = self.without(place);
            let mirror = rest.mirrored();
            let ends = |asked| {
                let at = |a: f64| {
                    super::convolution::either_side(
                        Sum::at,
                        (&rest, &mirror),
                        super::closed::plus(x, a),
                        asked,
                    )
                };
                Some((at(-a)?.value, at(a)?.value))
            };
            let (near, far) = ends(Asked::Above)?;
            rectangles.push((near + far) / 2.0 - above);
            if self.variance > 0.0 {
                let (near, far) = ends(Asked::Density)?;
                normal = self.variance * (near - far) / (2.0 * a);
            }
        }
        if self.rectangles.is_empty() {
            normal = x.0 * shift;
        }
        Some(Slopes { shift, normal, rectangles, kernels: Vec::new() })
    }

    /// The same with one rectangle of a kind less; without kernels.
    fn without(&self, place: usize) -> Sum {
        let mut widths = Vec::new();
        for (k, r) in self.rectangles.iter().enumerate() {
            widths.extend((0..r.count - u32::from(k == place)).map(|_| r.half_width));
        }
        Sum::new(&widths, self.variance, Vec::new())
    }

    /// First and second derivative of the cumulant generating function at a real tilt.
    pub(super) fn slopes(&self, s: f64) -> (f64, f64) {
        let (mut first, mut second) = (self.variance * s, self.variance);
        for r in &self.rectangles {
            let (a, m) = (r.half_width, f64::from(r.count));
            let (k1, k2) = rectangle_slopes(a * s);
            first += m * a * k1;
            second += m * a * a * k2;
        }
        for nodes in &self.rough {
            let (k1, k2) = node_slopes(nodes, s);
            first += k1;
            second += k2;
        }
        (first, second)
    }

    /// Cumulant generating function at a real tilt.
    pub(super) fn cumulant(&self, s: f64) -> f64 {
        let normal = self.variance * s * s / 2.0;
        let of_rectangles = self.rectangles.iter().map(|r| {
            let u = libm::fabs(r.half_width * s);
            f64::from(r.count) * (u + rectangle_edge(u))
        });
        let of_kernels = self.kernels.iter().map(|k| ln_transform(&k.nodes(s, 0.0), s));
        normal + of_rectangles.sum::<f64>() + of_kernels.sum::<f64>()
    }

    /// About how many nodes the kernels need for a tilt and a frequency.
    pub(super) fn effort(&self, s: f64, t: f64) -> f64 {
        self.kernels.iter().map(|k| k.effort(s, t)).sum()
    }

    /// A positive tilt whose mean is about `x`, at least `least`, and the variance there.
    pub(super) fn tilt(&self, x: f64, least: f64) -> (f64, f64) {
        let (mut low, mut high) = (0.0, f64::INFINITY);
        let mut s = libm::fmax(least, (x - self.mean) / self.whole_variance);
        for _ in 0..80 {
            let (mean, variance) = self.slopes(s);
            if variance <= 0.0 {
                return (s, 0.0);
            }
            let miss = mean - x;
            // the integral is the same along every line: near is enough
            if miss * miss <= 0.01 * variance || (miss > 0.0 && s <= least) {
                return (s, variance);
            }
            if miss < 0.0 {
                low = s;
            } else {
                high = s;
            }
            let newton = s - miss / variance;
            let halved = if high.is_finite() { low + (high - low) / 2.0 } else { 2.0 * s };
            let inside = newton > low && newton < high && newton < 8.0 * s;
            s = libm::fmax(if inside { newton } else { halved }, least);
        }
        (s, self.slopes(s).1)
    }
}

/// `ln((1 - exp(-2u)) / 2u)`: the logarithm of `sinh(u) / u`, less `u`.
pub(super) fn rectangle_edge(u: f64) -> f64 {
    if u < 1e-9 { -u } else { libm::log(-libm::expm1(-2.0 * u) / (2.0 * u)) }
}

/// Derivatives of `ln(sinh(u) / u)`.
fn rectangle_slopes(u: f64) -> (f64, f64) {
    let size = u.abs();
    if size < 0.02 {
        // the first terms of the series; what is left out is below 1e-9, and a tilt needs no more
        return (u / 3.0 - u * u * u / 45.0, 1.0 / 3.0 - u * u / 15.0);
    }
    let e = libm::exp(-2.0 * size);
    let first = (1.0 + e) / (1.0 - e) - 1.0 / size;
    let second = 1.0 / (u * u) - 4.0 * e / ((1.0 - e) * (1.0 - e));
    (if u < 0.0 { -first } else { first }, second)
}

/// Mean and variance of tilted nodes.
fn node_slopes(nodes: &[Node], s: f64) -> (f64, f64) {
    let top = top(nodes, s);
    // from the heaviest node: a tilt needs few digits
    let (mut weight, mut first, mut second) = (0.0, 0.0, 0.0);
    for (v, ln) in nodes {
        let below = ln + s * v - top.1;
        if below > LIGHT {
            let (w, from) = (libm::exp(below), v - top.0);
            weight += w;
            first += w * from;
            second += w * from * from;
        }
    }
    let mean = first / weight;
    (top.0 + mean, libm::fmax(second / weight - mean * mean, 0.0))
}

/// Logarithm of the transform of nodes at a real tilt.
pub(super) fn ln_transform(nodes: &[Node], s: f64) -> f64 {
    let (_, top) = top(nodes, s);
    let below = nodes.iter().map(|(v, ln)| ln + s * v - top).filter(|below| *below > LIGHT);
    top + libm::log(sum(below.map(libm::exp)))
}

/// Logarithm of a weight that is nothing beside the heaviest: 1e-26, of some thousand nodes.
pub(super) const LIGHT: f64 = -60.0;

/// Value of the heaviest node at a tilt, and the logarithm of its weight.
fn top(nodes: &[Node], s: f64) -> Node {
    let heavier = |top: Node, (v, ln): &Node| if ln + s * v > top.1 { (*v, ln + s * v) } else { top };
    nodes.iter().fold((0.0, f64::NEG_INFINITY), heavier)
}

/// Which way gives the probability above a place, as [`either`] asks for it.
pub(super) fn method(up: &Sum, down: &Sum, x: (f64, f64)) -> Method {
    let is_up = x.0 >= up.mean || !up.is_continuous();
    let (sum, x) = if is_up { (up, x) } else { (down, (-x.0, -x.1)) };
    sum.by_method(x, Asked::Above).1
}

/// A way to the value of a sum at or beyond its mean.
pub(super) type Way = fn(&Sum, (f64, f64), Asked) -> Estimate;

/// A sum at any place, from itself and from its mirror: below the mean by the other side.
pub(super) fn either(way: Way, up: &Sum, down: &Sum, x: (f64, f64), asked: Asked) -> Estimate {
    // of samples alone every side is exact, and a value at x itself is on neither
    if x.0 >= up.mean || !up.is_continuous() {
        return way(up, x, asked);
    }
    let other = way(down, (-x.0, -x.1), asked);
    match asked {
        Asked::Density => other,
        Asked::Above => Estimate { value: 1.0 - other.value, error: other.error },
    }
}
