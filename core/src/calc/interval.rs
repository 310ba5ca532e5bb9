//! A model over a box of its inputs: intervals that hold every value and every slope there.
//!
//! Bounds are rounded outward: one step after `+ - * /` and `sqrt`, which the hardware rounds correctly, and four after a function of `libm`, which is
//! taken to be right within three. Source: Moore, Kearfott, Cloud, Introduction to Interval Analysis, SIAM (2009).

use super::model::{Binary, Model, Op, Unary};
use core::f64::consts::{FRAC_2_SQRT_PI, FRAC_PI_2, PI};
use core::ops::{Add, Div, Mul, Neg, Sub};

/// All numbers from `low` to `high`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Interval {
    pub(crate) low: f64,
    pub(crate) high: f64,
}

/// Nothing is known.
const ALL: Interval = Interval { low: f64::NEG_INFINITY, high: f64::INFINITY };
/// Steps that a function of `libm` is rounded outward by.
const STEPS: u32 = 4;

impl Interval {
    pub(crate) fn new(low: f64, high: f64) -> Self {
        Interval { low, high }
    }

    pub(crate) fn point(value: f64) -> Self {
        Interval { low: value, high: value }
    }

    /// Rounded outward; what is not a number says nothing.
    fn outward(low: f64, high: f64, steps: u32) -> Self {
        if low.is_nan() || high.is_nan() {
            return ALL;
        }
        let (low, high) = (0..steps).fold((low, high), |(a, b), _| (a.next_down(), b.next_up()));
        Interval { low, high }
    }

    pub(crate) fn width(self) -> f64 {
        self.high - self.low
    }

    pub(crate) fn hull(self, other: Self) -> Self {
        Interval { low: libm::fmin(self.low, other.low), high: libm::fmax(self.high, other.high) }
    }

    fn contains(self, value: f64) -> bool {
        self.low <= value && value <= self.high
    }

    fn is_all(self) -> bool {
        self.low == f64::NEG_INFINITY && self.high == f64::INFINITY
    }

    /// A rising function of `libm`.
    fn rising(self, f: impl Fn(f64) -> f64) -> Self {
        Self::outward(f(self.low), f(self.high), STEPS)
    }

    fn falling(self, f: impl Fn(f64) -> f64) -> Self {
        Self::outward(f(self.high), f(self.low), STEPS)
    }

    fn abs(self) -> Self {
        let (a, b) = (self.low.abs(), self.high.abs());
        let least = if self.contains(0.0) { 0.0 } else { libm::fmin(a, b) };
        Interval { low: least, high: libm::fmax(a, b) }
    }

    fn sqrt(self) -> Self {
        if self.low < 0.0 { ALL } else { Self::outward(self.low.sqrt(), self.high.sqrt(), 1) }
    }

    /// Whole power above 0 by products of ends, each rounded outward.
    fn whole_power(self, exponent: u32) -> Self {
        let of = |x: f64| {
            let (mut base, mut rest, mut out) = (Self::point(x), exponent, Self::point(1.0));
            while rest > 0 {
                if rest % 2 == 1 {
                    out = out * base;
                }
                base = base * base;
                rest /= 2;
            }
            out
        };
        let even = exponent.is_multiple_of(2);
        let x = if even { self.abs() } else { self };
        let out = Interval { low: of(x.low).low, high: of(x.high).high };
        if even { Interval { low: libm::fmax(out.low, 0.0), high: out.high } } else { out }
    }

    fn powi(self, exponent: i32) -> Self {
        let power = self.whole_power(exponent.unsigned_abs());
        if exponent < 0 { Self::point(1.0) / power } else { power }
    }

    fn powf(self, exponent: f64) -> Self {
        match (self.low > 0.0, exponent < 0.0) {
            (false, _) => ALL,
            (true, true) => self.falling(|x| libm::pow(x, exponent)),
            (true, false) => self.rising(|x| libm::pow(x, exponent)),
        }
    }

    /// Does it hold `from` plus a whole multiple of `period`? Where rounding leaves it open, yes.
    fn holds_turn(self, from: f64, period: f64) -> bool {
        let slack = 1e-12 * (1.0 + self.low.abs() + self.high.abs());
        let next = libm::ceil((self.low - slack - from) / period);
        next.is_nan() || from + next * period <= self.high + slack
    }

    fn sin(self) -> Self {
        let ends = Self::point(self.low).rising(libm::sin).hull(Self::point(self.high).rising(libm::sin));
        Interval {
            low: if self.holds_turn(-FRAC_PI_2, 2.0 * PI) { -1.0 } else { ends.low },
            high: if self.holds_turn(FRAC_PI_2, 2.0 * PI) { 1.0 } else { ends.high },
        }
    }

    fn cos(self) -> Self {
        let ends = Self::point(self.low).rising(libm::cos).hull(Self::point(self.high).rising(libm::cos));
        Interval {
            low: if self.holds_turn(PI, 2.0 * PI) { -1.0 } else { ends.low },
            high: if self.holds_turn(0.0, 2.0 * PI) { 1.0 } else { ends.high },
        }
    }

    fn of(self, unary: Unary) -> Self {
        match unary {
            Unary::Neg => -self,
            Unary::Abs => self.abs(),
            Unary::Erfc => self.falling(libm::erfc),
            Unary::Atan => self.rising(libm::atan),
            Unary::Sin | Unary::Cos if self.is_all() => Self::new(-1.0, 1.0),
            _ if self.is_all() => ALL,
            Unary::Sin => self.sin(),
            Unary::Cos => self.cos(),
            Unary::Sqrt => self.sqrt(),
            Unary::Exp => self.rising(libm::exp),
            Unary::Ln if self.low > 0.0 => self.rising(libm::log),
            Unary::Ln => ALL,
            Unary::Tan if self.holds_turn(FRAC_PI_2, PI) => ALL,
            Unary::Tan => self.rising(libm::tan),
            // outside their range these are not numbers, and nothing is known
            Unary::Asin => self.rising(libm::asin),
            Unary::Acos => self.falling(libm::acos),
            Unary::Powi(exponent) => self.powi(exponent),
            Unary::Powf(exponent) => self.powf(exponent),
        }
    }

    /// Slopes of a function of one number, with the function's own values there.
    fn slope(self, unary: Unary, value: Interval) -> Self {
        let one = Self::point(1.0);
        let of = |exponent: i32| self.powi(exponent);
        match unary {
            Unary::Neg => Self::point(-1.0),
            Unary::Sqrt => Self::point(0.5) / value,
            Unary::Abs if self.low >= 0.0 => one,
            Unary::Abs if self.high <= 0.0 => -one,
            Unary::Abs => Self::new(-1.0, 1.0),
            Unary::Erfc => {
                let bell = (-of(2)).of(Unary::Exp);
                -(Self::outward(FRAC_2_SQRT_PI, FRAC_2_SQRT_PI, 1) * bell)
            }
            Unary::Exp => value,
            Unary::Ln => one / self,
            Unary::Sin => self.of(Unary::Cos),
            Unary::Cos => -self.of(Unary::Sin),
            Unary::Tan => one + value * value,
            Unary::Asin => one / (one - of(2)).sqrt(),
            Unary::Acos => -(one / (one - of(2)).sqrt()),
            Unary::Atan => one / (one + of(2)),
            Unary::Powi(0) => Self::point(0.0),
            Unary::Powi(n) => Self::point(f64::from(n)) * self.powi(n.saturating_sub(1)),
            Unary::Powf(n) => Self::point(n) * self.powf(n - 1.0),
        }
    }
}

impl Neg for Interval {
    type Output = Self;
    fn neg(self) -> Self {
        Interval { low: -self.high, high: -self.low }
    }
}

impl Add for Interval {
    type Output = Self;
    fn add(self, b: Self) -> Self {
        Self::outward(self.low + b.low, self.high + b.high, 1)
    }
}

impl Sub for Interval {
    type Output = Self;
    fn sub(self, b: Self) -> Self {
        Self::outward(self.low - b.high, self.high - b.low, 1)
    }
}

impl Mul for Interval {
    type Output = Self;
    fn mul(self, b: Self) -> Self {
        let zero = Interval::point(0.0);
        if self == zero || b == zero {
            return zero;
        }
        let ends = [self.low * b.low, self.low * b.high, self.high * b.low, self.high * b.high];
        if ends.iter().any(|end| end.is_nan()) {
            return ALL;
        }
        let (low, high) = (
            ends.iter().copied().fold(f64::INFINITY, libm::fmin),
            ends.iter().copied().fold(f64::NEG_INFINITY, libm::fmax),
        );
        Self::outward(low, high, 1)
    }
}

impl Div for Interval {
    type Output = Self;
    fn div(self, b: Self) -> Self {
        if b.contains(0.0) {
            return ALL;
        }
        self * Self::outward(1.0 / b.high, 1.0 / b.low, 1)
    }
}

/// Values of a model over a box, and its slopes there by every input.
#[derive(Debug, Clone)]
pub(crate) struct Enclosure {
    pub(crate) value: Interval,
    pub(crate) slopes: Vec<Interval>,
}

impl Enclosure {
    fn constant(value: Interval, count: usize) -> Self {
        Enclosure { value, slopes: vec![Interval::point(0.0); count] }
    }

    fn unary(&self, unary: Unary) -> Self {
        let value = self.value.of(unary);
        let slope = self.value.slope(unary, value);
        Enclosure { value, slopes: self.slopes.iter().map(|s| slope * *s).collect() }
    }

    fn binary(&self, binary: Binary, b: &Self) -> Self {
        let (x, y) = (self.value, b.value);
        let with = |value: Interval, rule: &dyn Fn(Interval, Interval) -> Interval| Enclosure {
            value,
            slopes: self.slopes.iter().zip(&b.slopes).map(|(s, t)| rule(*s, *t)).collect(),
        };
        match binary {
            Binary::Add => with(x + y, &|s, t| s + t),
            Binary::Sub => with(x - y, &|s, t| s - t),
            Binary::Mul => with(x * y, &|s, t| s * y + x * t),
            Binary::Div => {
                let ratio = x / y;
                with(ratio, &|s, t| (s - ratio * t) / y)
            }
            Binary::Max if x.low > y.high => self.clone(),
            Binary::Max if y.low > x.high => b.clone(),
            Binary::Min if x.high < y.low => self.clone(),
            Binary::Min if y.high < x.low => b.clone(),
            Binary::Max => {
                let value = Interval::new(libm::fmax(x.low, y.low), libm::fmax(x.high, y.high));
                with(value, &Interval::hull)
            }
            Binary::Min => {
                let value = Interval::new(libm::fmin(x.low, y.low), libm::fmin(x.high, y.high));
                with(value, &Interval::hull)
            }
        }
    }
}

impl Model {
    /// Encloses its values and slopes over a box.
    pub(crate) fn enclosure(&self, inputs: &[Interval]) -> Enclosure {
        let count = inputs.len();
        let missing = || Enclosure { value: ALL, slopes: vec![ALL; count] };
        let mut out: Vec<Enclosure> = Vec::new();
        for op in self.ops() {
            let at = |k: usize| out.get(k).cloned().unwrap_or_else(missing);
            let next = match *op {
                Op::Plain(value) => Enclosure::constant(Interval::point(value), count),
                Op::Input(index) => match inputs.get(index) {
                    Some(input) => {
                        let mut own = Enclosure::constant(*input, count);
                        if let Some(slope) = own.slopes.get_mut(index) {
                            *slope = Interval::point(1.0);
                        }
                        own
                    }
                    None => missing(),
                },
                Op::Unary(kind, a) => at(a).unary(kind),
                Op::Binary(kind, a, b) => at(a).binary(kind, &at(b)),
            };
            out.push(next);
        }
        out.pop().unwrap_or_else(missing)
    }
}
