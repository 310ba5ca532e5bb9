//! Probabilities by the transform along a vertical line of the plane, tilted to the saddle point.
//!
//! With `K` the cumulant generating function, `P(X > x) = 1 / (2 pi i)` times the integral of `exp(K(z) - z x) / z` along `Re z = s > 0`
//! (Daniels, Annals of Mathematical Statistics 25 (1954); Lugannani and Rice, Advances in Applied Probability 12 (1980)). The trapezoidal sum of
//! step `h` along that line is not an approximation of unknown error: by Poisson's formula it is the sum over all whole `k` of
//! `exp(k s L) P(X > x + k L)`, `L = 2 pi / h`. The term `k = 0` is wanted. Of those below, `P` is 1 but for a little, and the 1 is a
//! geometric series, which is subtracted; that little, and the terms above, are bounded by Chernoff's inequality. What the sum leaves out at its end is bounded by the
//! decay of the factors. So the error is bounded, not guessed; `L` and the end are chosen by these bounds.

use super::kernel::Node;
use super::sum::{Asked, Estimate, LIGHT, Sum, ln_transform, rectangle_edge};
use crate::wide::{Columnar, Width};
use core::f64::consts::PI;

/// Relative error that step and end are chosen for.
const WANTED: f64 = 1e-12;
/// Most steps; and most steps times nodes.
const MOST_STEPS: f64 = 40_000.0;
const MOST_WORK: f64 = 4e6;
/// Most nodes on the real line.
const MOST_NODES: f64 = 4000.0;
/// Roundings of one term, and more for each step of the rotations.
const ROUNDINGS: f64 = 12.0 * f64::EPSILON;

/// A complex number.
#[derive(Debug, Clone, Copy)]
struct Complex {
    re: f64,
    im: f64,
}

impl Complex {
    const ONE: Complex = Complex { re: 1.0, im: 0.0 };

    fn turn(angle: f64) -> Self {
        Complex { re: libm::cos(angle), im: libm::sin(angle) }
    }

    fn times(self, other: Complex) -> Self {
        Complex { re: self.re * other.re - self.im * other.im, im: self.re * other.im + self.im * other.re }
    }

    fn scaled(self, factor: f64) -> Self {
        Complex { re: self.re * factor, im: self.im * factor }
    }

    fn less(self, other: Complex) -> Self {
        Complex { re: self.re - other.re, im: self.im - other.im }
    }

    fn over(self, other: Complex) -> Self {
        let square = other.re * other.re + other.im * other.im;
        self.times(Complex { re: other.re / square, im: -other.im / square })
    }

    /// A whole power by squaring.
    fn power(self, mut n: u32) -> Self {
        let (mut base, mut out) = (self, Complex::ONE);
        while n > 1 {
            if n % 2 == 1 {
                out = out.times(base);
            }
            base = base.times(base);
            n /= 2;
        }
        if n == 1 { out.times(base) } else { out }
    }
}

/// Nodes that turn side by side.
const LANES: usize = 8;
type Lanes = [f64; LANES];

/// Some of the nodes: values, where they stand, and what they turn by. Places that are left over have no weight.
#[derive(Clone, Copy, Default)]
struct Turning {
    value: Lanes,
    re: Lanes,
    im: Lanes,
    step_re: Lanes,
    step_im: Lanes,
}

/// What turns at each step: the transform of the kernels from nodes of weight 1 in sum.
struct Spinning {
    turning: Vec<Turning>,
    /// The transform where they stand.
    sum: Complex,
}

impl Spinning {
    fn new(nodes: &[Node], s: f64, ln: f64, h: f64) -> Self {
        let heavy: Vec<(f64, f64)> = nodes
            .iter()
            .map(|(v, ln_weight)| (*v, ln_weight + s * v - ln))
            .filter(|(_, ln_weight)| *ln_weight > LIGHT)
            .collect();
        let group = |nodes: &[(f64, f64)]| {
            let mut out = Turning::default();
            for (k, (v, ln_weight)) in nodes.iter().enumerate() {
                let step = Complex::turn(v * h);
                let set = |lanes: &mut Lanes, value| {
                    if let Some(lane) = lanes.get_mut(k) {
                        *lane = value;
                    }
                };
                set(&mut out.value, *v);
                set(&mut out.re, libm::exp(*ln_weight));
                set(&mut out.step_re, step.re);
                set(&mut out.step_im, step.im);
            }
            out
        };
        Spinning { turning: heavy.chunks(LANES).map(group).collect(), sum: Complex::ONE }
    }

    /// Node `k` goes to sum `k mod 8`, then the eight are added in order.
    fn advance(&mut self, width: Width) -> Complex {
        let (mut re, mut im) = ([0.0; LANES], [0.0; LANES]);
        width.run(Advance { turning: &mut self.turning, re: &mut re, im: &mut im });
        self.sum = Complex { re: re.iter().sum(), im: im.iter().sum() };
        self.sum
    }

    /// Sum of the values times where they stand: the derivative of the transform.
    fn derivative(&self) -> Complex {
        let mut sum = Complex { re: 0.0, im: 0.0 };
        for of in &self.turning {
            for ((v, re), im) in of.value.iter().zip(&of.re).zip(&of.im) {
                sum = Complex { re: sum.re + v * re, im: sum.im + v * im };
            }
        }
        sum
    }
}

/// A step of all nodes, as work for any [`Width`].
struct Advance<'r> {
    turning: &'r mut [Turning],
    re: &'r mut Lanes,
    im: &'r mut Lanes,
}

impl Columnar for Advance<'_> {
    #[inline(always)]
    fn run(self) {
        let (mut sum_re, mut sum_im) = ([0.0; LANES], [0.0; LANES]);
        for of in self.turning {
            let places = of.re.iter_mut().zip(&mut of.im);
            let steps = of.step_re.iter().zip(&of.step_im);
            let sums = sum_re.iter_mut().zip(&mut sum_im);
            for (((re, im), (step_re, step_im)), (sum_re, sum_im)) in places.zip(steps).zip(sums) {
                let (a, b) = (*re, *im);
                *re = a * step_re - b * step_im;
                *im = a * step_im + b * step_re;
                *sum_re += *re;
                *sum_im += *im;
            }
        }
        (*self.re, *self.im) = (sum_re, sum_im);
    }
}

/// A rectangle at a tilt: half-width, how many, and `coth(a s)`.
struct Side {
    half_width: f64,
    count: u32,
    coth: f64,
}

/// The integrand at a tilt, relative to its value on the real line.
struct Line<'a> {
    sum: &'a Sum,
    x: f64,
    s: f64,
    asked: Asked,
    /// Power of the frequency that the integrand has besides.
    growth: f64,
    sides: Vec<Side>,
    /// Total variation of each kernel's tilted density, where there is one.
    variations: Vec<Option<f64>>,
    logarithms: Vec<f64>,
    nodes: Vec<Vec<Node>>,
    /// Variance at the tilt.
    curvature: f64,
    mean: f64,
    /// `K(s)`, for bounds.
    cumulant: f64,
    /// `K(s) - s x`.
    exponent: f64,
}

/// A line laid for a sum, and how it is walked.
struct Laid<'a> {
    line: Line<'a>,
    length: f64,
    aliases: Aliases,
    h: f64,
    steps: f64,
    /// Bound of the integral beyond the end.
    left_out: f64,
}

fn laid(sum: &Sum, x: f64, asked: Asked, growth: f64) -> Option<Laid<'_>> {
    let least = 0.8 / sum.whole_variance.sqrt();
    let (s, curvature) = sum.tilt(x, least);
    if curvature <= 0.0 {
        return None;
    }
    // a step of a kernel so steep that its nodes would be too many is left to the other ways
    if sum.effort(s, 0.0) > MOST_NODES {
        return None;
    }
    let mut line = Line::new(sum, x, s, curvature, asked);
    line.growth = growth;
    let (length, aliases) = line.length()?;
    let h = 2.0 * PI / length;
    let (end, left_out) = line.end(h)?;
    let steps = (end / h).ceil();
    if !sum.kernels.is_empty() {
        if sum.effort(s, end) * steps > MOST_WORK {
            return None;
        }
        line.nodes = sum.kernels.iter().map(|k| k.nodes(s, end)).collect();
        line.logarithms = line.nodes.iter().map(|nodes| ln_transform(nodes, s)).collect();
        line.exponent = line.exponent();
    }
    Some(Laid { line, length, aliases, h, steps, left_out })
}

pub(super) fn at(sum: &Sum, x: f64, asked: Asked) -> Option<Estimate> {
    let Laid { line, length, aliases, h, steps, left_out } = laid(sum, x, asked, 0.0)?;
    let (total, roundings) = line.trapezoidal(h, steps);
    let unit = libm::exp(line.exponent) * h / (2.0 * PI);
    let unit = if asked == Asked::Above { unit / line.s } else { unit };
    let geometric = match asked {
        // x - L may lie within the distribution; then nothing was taken as 1
        Asked::Above if aliases.whole => {
            let e = libm::exp(-line.s * length);
            e / (1.0 - e)
        }
        _ => 0.0,
    };
    let value = unit * total - geometric;
    let error = unit * (2.0 * left_out / h + roundings * (1.0 + line.exponent.abs() / 8.0))
        + aliases.error
        + geometric * ROUNDINGS;
    (value > 0.0).then_some(Estimate { value, error })
}

/// Derivatives of the probability above a place at or beyond the mean: by the logarithm of the size of each term about its zero, and by a shift
/// of the whole, which is the density.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Slopes {
    pub(super) shift: f64,
    /// By the logarithm of the standard deviation of the whole normal part.
    pub(super) normal: f64,
    /// By that of the width of one rectangle of each kind.
    pub(super) rectangles: Vec<f64>,
    pub(super) kernels: Vec<f64>,
}

/// Largest error of the density that derivatives are given with, relative.
const WORST_SLOPE: f64 = 1e-9;

/// The same integral with each term's own derivative beside it: `d K / d ln(size) = z M'(z) / M(z)`, whose z takes the pole away.
pub(super) fn slopes(sum: &Sum, x: f64) -> Option<Slopes> {
    let growth = if sum.variance > 0.0 { 1.0 } else { 0.0 };
    let Laid { line, aliases, h, steps, left_out, .. } = laid(sum, x, Asked::Density, growth)?;
    let mut walk = line.slopes(h, steps);
    let unit = libm::exp(line.exponent) * h / (2.0 * PI);
    if unit <= 0.0 {
        return None;
    }
    let lost = 2.0 * left_out / h + aliases.error / unit;
    let scale = |v: &mut f64| *v *= unit;
    let known = walk.shift > 0.0 && lost <= WORST_SLOPE * walk.shift;
    scale(&mut walk.shift);
    scale(&mut walk.normal);
    walk.rectangles.iter_mut().for_each(scale);
    walk.kernels.iter_mut().for_each(scale);
    let finite = walk.kernels.iter().chain(&walk.rectangles).all(|v| v.is_finite());
    (known && finite).then_some(walk)
}

/// `a coth(a z) - 1 / z`: the derivative of the logarithm of the transform of a rectangle.
fn rectangle_slope(side: &Side, now: Complex, z: Complex, inverse: Complex) -> Complex {
    let a = side.half_width;
    let u = z.scaled(a);
    if u.re * u.re + u.im * u.im < 0.01 {
        // the series of coth: what is left out is below 1e-15 of the first term
        let square = u.times(u);
        let terms = [2.0 / 93_555.0, -1.0 / 4725.0, 2.0 / 945.0, -1.0 / 45.0, 1.0 / 3.0];
        let series = terms.iter().fold(Complex { re: 0.0, im: 0.0 }, |sum, c| {
            let next = sum.times(square);
            Complex { re: next.re + c, im: next.im }
        });
        return series.times(u).scaled(a);
    }
    let sine = Complex { re: now.re, im: side.coth * now.im };
    let cosine = Complex { re: side.coth * now.re, im: now.im };
    cosine.over(sine).scaled(a).less(inverse)
}

/// What the other terms of Poisson's formula may add, and whether the ones below are taken as 1.
struct Aliases {
    error: f64,
    whole: bool,
}

impl<'a> Line<'a> {
    fn new(sum: &'a Sum, x: f64, s: f64, curvature: f64, asked: Asked) -> Self {
        let side = |r: &super::sum::Rectangles| {
            let e = libm::expm1(-2.0 * r.half_width * s);
            Side { half_width: r.half_width, count: r.count, coth: -(2.0 + e) / e }
        };
        let nodes: Vec<Vec<Node>> = sum.kernels.iter().map(|k| k.nodes(s, 0.0)).collect();
        let logarithms: Vec<f64> = nodes.iter().map(|n| ln_transform(n, s)).collect();
        let variations = sum
            .kernels
            .iter()
            .zip(nodes.iter().zip(&logarithms))
            .map(|(k, (n, ln))| k.variation(s, *ln, n))
            .collect();
        let mean = sum.slopes(s).0;
        let sides = sum.rectangles.iter().map(side).collect();
        let mut line = Line {
            sum,
            x,
            s,
            asked,
            growth: 0.0,
            sides,
            variations,
            logarithms,
            nodes,
            curvature,
            mean,
            cumulant: sum.cumulant(s),
            exponent: 0.0,
        };
        line.exponent = line.exponent();
        line
    }

    /// `K(s) - s x`; the large parts of the rectangles are subtracted from `x` first.
    fn exponent(&self) -> f64 {
        let s = self.s;
        let reach = self
            .sum
            .rectangles
            .iter()
            .fold((-self.x, 0.0), |at, r| super::closed::plus(at, r.half_width * f64::from(r.count)));
        let edges = self.sum.rectangles.iter().map(|r| f64::from(r.count) * rectangle_edge(r.half_width * s));
        self.sum.variance * s * s / 2.0
            + s * (reach.0 + reach.1)
            + edges.sum::<f64>()
            + self.logarithms.iter().sum::<f64>()
    }

    /// Chernoff: a bound of `exp(k s L) P` of the side that is far, `direction` 1 for the terms above and -1 for those below, relative to
    /// `exp(exponent)`; and whether the terms below were taken as 1.
    fn chernoff(&self, length: f64, direction: f64) -> (f64, bool) {
        let lean = direction * (self.x - self.mean);
        let delta = (length + lean) / self.curvature;
        if delta <= 0.0 {
            return (f64::INFINITY, false);
        }
        let tilt = self.s + direction * delta;
        if self.sum.effort(tilt, 0.0) > MOST_NODES {
            return (f64::INFINITY, false);
        }
        let change = self.sum.cumulant(tilt) - self.cumulant - direction * delta * self.x;
        let ratio = libm::exp(-delta * length);
        let exponent = change - delta * length;
        // an overflow would kill a host that traps it
        let bound =
            if exponent < 600.0 && ratio < 1.0 { libm::exp(exponent) / (1.0 - ratio) } else { f64::INFINITY };
        (bound, direction < 0.0 && tilt < 0.0)
    }

    /// The shortest distance of the copies that leaves a small error, and that error.
    fn length(&self) -> Option<(f64, Aliases)> {
        let s = self.s;
        let size = self.size();
        let wanted = WANTED * size;
        let mut length = libm::fmax(7.4 * self.curvature.sqrt(), -(libm::log(size) + self.exponent) / s);
        for _ in 0..60 {
            let above = if self.x + length >= self.sum.ends.1 { 0.0 } else { self.chernoff(length, 1.0).0 };
            // beyond the lower end the probability above is 1 and the density 0
            let (below, whole) =
                if self.x - length <= self.sum.ends.0 { (0.0, true) } else { self.chernoff(length, -1.0) };
            if above + below <= wanted {
                return Some((length, Aliases { error: (above + below) * libm::exp(self.exponent), whole }));
            }
            length *= 1.15;
        }
        None
    }

    /// About the answer over `exp(exponent)`.
    fn size(&self) -> f64 {
        let width = (2.0 * PI * self.curvature).sqrt();
        if self.asked == Asked::Above { 1.0 / (self.s * width) } else { 1.0 / width }
    }

    /// Bound of the integrand at all frequencies from `t` on, relative to that at 0, and the power it falls with.
    fn envelope(&self, t: f64) -> (f64, f64) {
        let ratio = self.s / (self.s * self.s + t * t).sqrt();
        let (mut bound, mut power) = (1.0, 0.0);
        for side in &self.sides {
            let factor = side.coth * ratio;
            if factor < 1.0 {
                bound *= real_power(factor, side.count);
                power += f64::from(side.count);
            }
        }
        for variation in self.variations.iter().flatten() {
            if *variation < t {
                bound *= variation / t;
                power += 1.0;
            }
        }
        if self.asked == Asked::Above {
            bound *= ratio;
            power += 1.0;
        }
        if self.growth > 0.0 {
            bound /= ratio;
            power -= 1.0;
        }
        (bound, power)
    }

    /// Bound of the integral from `t` on.
    fn beyond(&self, t: f64) -> f64 {
        let (bound, power) = self.envelope(t);
        let square = self.sum.variance * t * t;
        let by_power = if power > 1.0 { t / (power - 1.0) } else { f64::INFINITY };
        let by_normal = if square > 0.0 { t / square } else { f64::INFINITY };
        bound * libm::exp(-square / 2.0) * libm::fmin(by_power, by_normal)
    }

    /// Where the sum may end, and the bound of what it leaves out.
    fn end(&self, h: f64) -> Option<(f64, f64)> {
        let wanted = WANTED * libm::sqrt(PI / (2.0 * self.curvature));
        let mut end = 3.0 / self.curvature.sqrt();
        while end <= MOST_STEPS * h {
            let left_out = self.beyond(end);
            if left_out <= wanted {
                return Some((end, left_out));
            }
            end *= 1.12;
        }
        // the best that can be had; its error says what it is worth
        let end = MOST_STEPS * h;
        Some((end, self.beyond(end))).filter(|(_, left_out)| left_out.is_finite())
    }

    /// Sum over all frequencies `k h`, both signs, relative to the value at 0, and the roundings in it.
    fn trapezoidal(&self, h: f64, steps: f64) -> (f64, f64) {
        let mut walk = Walk::new(self, h);
        let (mut total, mut roundings) = (1.0, ROUNDINGS);
        while walk.k < steps {
            let (value, pole) = walk.step();
            let value = if self.asked == Asked::Above { value.times(pole) } else { value };
            total += 2.0 * value.re;
            roundings += 2.0 * (value.re.abs() + value.im.abs()) * (ROUNDINGS + walk.k * f64::EPSILON);
        }
        (total, roundings)
    }

    /// The same of the density, each time with the derivative of a term.
    fn slopes(&self, h: f64, steps: f64) -> Slopes {
        let mut walk = Walk::new(self, h);
        let mut out = Slopes {
            shift: 0.0,
            normal: 0.0,
            rectangles: vec![0.0; self.sides.len()],
            kernels: vec![0.0; self.nodes.len()],
        };
        walk.add_slopes(Complex::ONE, Complex::ONE, &mut out);
        while walk.k < steps {
            let (value, pole) = walk.step();
            walk.add_slopes(value.scaled(2.0), pole, &mut out);
        }
        out
    }
}

/// The way up the line: what turns at each step.
struct Walk<'a> {
    line: &'a Line<'a>,
    width: Width,
    h: f64,
    k: f64,
    rotations: Vec<(Complex, Complex)>,
    spinning: Vec<Spinning>,
    phase: Complex,
    phase_step: Complex,
    /// `exp(-variance t^2 / 2)` at `k h`, by its ratios.
    normal: f64,
    ratio: f64,
    ratio_step: f64,
}

impl<'a> Walk<'a> {
    fn new(line: &'a Line<'a>, h: f64) -> Self {
        let turn = |a: f64| Complex::turn(a * h);
        let spinning = line.nodes.iter().zip(&line.logarithms);
        let square = line.sum.variance * h * h;
        Walk {
            line,
            width: Width::detected(),
            h,
            k: 0.0,
            rotations: line.sides.iter().map(|side| (Complex::ONE, turn(side.half_width))).collect(),
            spinning: spinning.map(|(nodes, ln)| Spinning::new(nodes, line.s, *ln, h)).collect(),
            phase: Complex::ONE,
            phase_step: turn(line.sum.variance * line.s - line.x),
            normal: 1.0,
            ratio: libm::exp(-square / 2.0),
            ratio_step: libm::exp(-square),
        }
    }

    /// The next frequency: the integrand of the density relative to its value at 0, and `s / z`.
    fn step(&mut self) -> (Complex, Complex) {
        self.k += 1.0;
        let (s, t) = (self.line.s, self.k * self.h);
        let inverse = s / (s * s + t * t);
        let pole = Complex { re: s * inverse, im: -t * inverse };
        self.normal *= self.ratio;
        self.ratio *= self.ratio_step;
        self.phase = self.phase.times(self.phase_step);
        let mut value = self.phase.scaled(self.normal);
        for (side, (now, step)) in self.line.sides.iter().zip(self.rotations.iter_mut()) {
            *now = now.times(*step);
            let factor = Complex { re: now.re, im: side.coth * now.im }.times(pole);
            value = value.times(factor.power(side.count));
        }
        for kernel in &mut self.spinning {
            value = value.times(kernel.advance(self.width));
        }
        (value, pole)
    }

    /// Adds a value of the integrand to the density, and with the derivative of each term to the others.
    fn add_slopes(&self, value: Complex, pole: Complex, out: &mut Slopes) {
        let z = Complex { re: self.line.s, im: self.k * self.h };
        let inverse = pole.scaled(1.0 / self.line.s);
        out.shift += value.re;
        out.normal += value.times(z).re * self.line.sum.variance;
        for ((side, (now, _)), slope) in self.line.sides.iter().zip(&self.rotations).zip(&mut out.rectangles)
        {
            *slope += value.times(rectangle_slope(side, *now, z, inverse)).re;
        }
        for (kernel, slope) in self.spinning.iter().zip(&mut out.kernels) {
            *slope += value.times(kernel.derivative().over(kernel.sum)).re;
        }
    }
}

fn real_power(x: f64, n: u32) -> f64 {
    let (mut base, mut out, mut n) = (x, 1.0, n);
    while n > 0 {
        if n % 2 == 1 {
            out *= base;
        }
        base *= base;
        n /= 2;
    }
    out
}
