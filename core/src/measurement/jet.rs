//! Numbers that carry their derivatives, so that one model, written once as a function of [`Jet`]s, serves as value, first order,
//! second order and Monte Carlo trial.
//!
//! A [`Jet`] behaves as a plain number under `+ - * /` with jets and doubles, by value or by reference, and under the functions below.
//! The value alone costs no allocation. Where a function has no derivative (`abs` at 0, `sqrt` at 0) the derivatives are not finite,
//! and an evaluation that needs them refuses. The rules: product and chain rule to the order carried.

use core::ops::{Add, Div, Mul, Neg, Sub};

/// A number with its derivatives. See the [module](self).
#[derive(Debug, Clone)]
pub struct Jet {
    value: f64,
    terms: Option<Box<Terms>>,
}

/// Derivatives, in one of two forms.
#[derive(Debug, Clone, PartialEq)]
enum Terms {
    /// By every variable: gradient, and the lower triangle of the Hessian row by row (empty at first order).
    All { gradient: Vec<f64>, hessian: Vec<f64> },
    /// Along two directions `s` and `t`: once along `s`, up to twice along `t`.
    Along(Along),
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct Along {
    s: f64,
    t: f64,
    st: f64,
    tt: f64,
    stt: f64,
}

impl Jet {
    /// A number without derivatives: a constant.
    #[must_use]
    pub const fn constant(value: f64) -> Self {
        Jet { value, terms: None }
    }

    /// The value.
    #[must_use]
    pub const fn value(&self) -> f64 {
        self.value
    }

    /// Variable `index` of `count`, at first order.
    pub(crate) fn variable(value: f64, index: usize, count: usize) -> Self {
        let gradient = (0..count).map(|k| if k == index { 1.0 } else { 0.0 }).collect();
        Jet { value, terms: Some(Box::new(Terms::All { gradient, hessian: Vec::new() })) }
    }

    /// Variable `index` of `count`, at second order.
    pub(super) fn variable_second(value: f64, index: usize, count: usize) -> Self {
        let mut jet = Self::variable(value, index, count);
        if let Some(Terms::All { hessian, .. }) = jet.terms.as_deref_mut() {
            *hessian = vec![0.0; count * (count + 1) / 2];
        }
        jet
    }

    /// A variable that changes by `s` and `t` along two directions.
    pub(super) fn along(value: f64, s: f64, t: f64) -> Self {
        Jet { value, terms: Some(Box::new(Terms::Along(Along { s, t, st: 0.0, tt: 0.0, stt: 0.0 }))) }
    }

    /// Derivative by each of `count` variables; zeros for a constant, NaN for a jet of another evaluation.
    pub(crate) fn gradient(&self, count: usize) -> Vec<f64> {
        match self.terms.as_deref() {
            None => vec![0.0; count],
            Some(Terms::All { gradient, .. }) if gradient.len() == count => gradient.clone(),
            Some(_) => vec![f64::NAN; count],
        }
    }

    /// Lower triangle of the second derivatives by `count` variables, row by row; zeros for a constant.
    pub(super) fn hessian(&self, count: usize) -> Vec<f64> {
        match self.terms.as_deref() {
            None => vec![0.0; count * (count + 1) / 2],
            Some(Terms::All { hessian, .. }) if hessian.len() == count * (count + 1) / 2 => hessian.clone(),
            Some(_) => vec![f64::NAN; count * (count + 1) / 2],
        }
    }

    /// Third derivative, once along `s` and twice along `t`.
    pub(super) fn third(&self) -> f64 {
        match self.terms.as_deref() {
            None => 0.0,
            Some(Terms::Along(along)) => along.stt,
            Some(Terms::All { .. }) => f64::NAN,
        }
    }

    /// The jet of a function of this one: its value, and its first three derivatives when they are needed.
    fn compose(&self, value: f64, slopes: impl FnOnce() -> [f64; 3]) -> Self {
        let terms = self.terms.as_deref().map(|terms| Box::new(terms.compose(slopes())));
        Jet { value, terms }
    }

    /// `p a + q b` of the derivatives.
    fn combined(a: &Jet, b: &Jet, value: f64, p: f64, q: f64) -> Self {
        let (value, terms) = match (a.terms.as_deref(), b.terms.as_deref()) {
            (None, None) => (value, None),
            (Some(a), None) => (value, Some(a.scaled(p))),
            (None, Some(b)) => (value, Some(b.scaled(q))),
            (Some(a), Some(b)) => match a.with(b, |a, b| p * a + q * b) {
                Some(terms) => (value, Some(terms)),
                None => (f64::NAN, None),
            },
        };
        Jet { value, terms: terms.map(Box::new) }
    }

    fn product(a: &Jet, b: &Jet, value: f64) -> Self {
        match (a.terms.as_deref(), b.terms.as_deref()) {
            (Some(first), Some(second)) => match Terms::product(a.value, first, b.value, second) {
                Some(terms) => Jet { value, terms: Some(Box::new(terms)) },
                None => Jet::constant(f64::NAN),
            },
            _ => Self::combined(a, b, value, b.value, a.value),
        }
    }

    fn reciprocal(&self) -> Self {
        let r = 1.0 / self.value;
        self.compose(r, || [-r * r, 2.0 * r * r * r, -6.0 * r * r * r * r])
    }

    /// Square root.
    #[must_use]
    pub fn sqrt(&self) -> Self {
        let r = self.value.sqrt();
        let x = self.value;
        self.compose(r, || [0.5 / r, -0.25 / (r * x), 0.375 / (r * x * x)])
    }

    /// Complementary error function.
    #[must_use]
    pub fn erfc(&self) -> Self {
        let x = self.value;
        self.compose(libm::erfc(x), || {
            let slope = crate::calc::erfc_slope(x);
            [slope, -2.0 * x * slope, (4.0 * x * x - 2.0) * slope]
        })
    }

    /// Exponential.
    #[must_use]
    pub fn exp(&self) -> Self {
        let e = libm::exp(self.value);
        self.compose(e, || [e, e, e])
    }

    /// Natural logarithm.
    #[must_use]
    pub fn ln(&self) -> Self {
        let x = self.value;
        self.compose(libm::log(x), || [1.0 / x, -1.0 / (x * x), 2.0 / (x * x * x)])
    }

    /// Sine of an angle in radians.
    #[must_use]
    pub fn sin(&self) -> Self {
        let (sine, x) = (libm::sin(self.value), self.value);
        self.compose(sine, || {
            let cosine = libm::cos(x);
            [cosine, -sine, -cosine]
        })
    }

    /// Cosine of an angle in radians.
    #[must_use]
    pub fn cos(&self) -> Self {
        let (cosine, x) = (libm::cos(self.value), self.value);
        self.compose(cosine, || {
            let sine = libm::sin(x);
            [-sine, -cosine, sine]
        })
    }

    /// Tangent of an angle in radians.
    #[must_use]
    pub fn tan(&self) -> Self {
        let t = libm::tan(self.value);
        let q = 1.0 + t * t;
        self.compose(t, || [q, 2.0 * t * q, 2.0 * q * (1.0 + 3.0 * t * t)])
    }

    /// Angle in radians of a sine from -1 to 1.
    #[must_use]
    pub fn asin(&self) -> Self {
        self.compose(libm::asin(self.value), || arc_slopes(self.value))
    }

    /// Angle in radians of a cosine from -1 to 1.
    #[must_use]
    pub fn acos(&self) -> Self {
        self.compose(libm::acos(self.value), || arc_slopes(self.value).map(|slope| -slope))
    }

    /// Angle in radians of a tangent.
    #[must_use]
    pub fn atan(&self) -> Self {
        let x = self.value;
        let q = 1.0 / (1.0 + x * x);
        self.compose(libm::atan(x), || [q, -2.0 * x * q * q, (6.0 * x * x - 2.0) * q * q * q])
    }

    /// Angle in radians from the x axis to the point with this as y and `x` as x.
    #[must_use]
    pub fn atan2(&self, x: &Jet) -> Self {
        let value = libm::atan2(self.value, x.value);
        if self.terms.is_none() && x.terms.is_none() {
            return Jet::constant(value);
        }
        // the angle differs from these by a constant; the ratio that stays finite is taken
        let angle = if self.value.abs() <= x.value.abs() { (self / x).atan() } else { -(x / self).atan() };
        let value = if angle.value.is_nan() { f64::NAN } else { value };
        Jet { value, terms: angle.terms }
    }

    /// Absolute value.
    #[must_use]
    pub fn abs(&self) -> Self {
        let x = self.value;
        let sign = if x > 0.0 {
            1.0
        } else if x < 0.0 {
            -1.0
        } else {
            f64::NAN
        };
        self.compose(x.abs(), || [sign, 0.0, 0.0])
    }

    /// Integer power.
    #[must_use]
    pub fn powi(&self, exponent: i32) -> Self {
        let (x, n) = (self.value, f64::from(exponent));
        let slope = |factor: f64, less: i32| {
            // a vanished derivative stays zero at x = 0, where the power of x is infinite
            if factor == 0.0 { 0.0 } else { factor * power(x, i64::from(exponent) - i64::from(less)) }
        };
        self.compose(power(x, i64::from(exponent)), || {
            [slope(n, 1), slope(n * (n - 1.0), 2), slope(n * (n - 1.0) * (n - 2.0), 3)]
        })
    }

    /// Power of a number above zero.
    #[must_use]
    pub fn powf(&self, exponent: f64) -> Self {
        let (x, n) = (self.value, exponent);
        let value = libm::pow(x, n);
        let over = move || 1.0 / x;
        self.compose(value, || {
            let (r, first) = (over(), n * value);
            [first * r, first * (n - 1.0) * r * r, first * (n - 1.0) * (n - 2.0) * r * r * r]
        })
    }

    /// The greater of two; of equal ones the first.
    #[must_use]
    pub fn max(&self, other: &Jet) -> Self {
        if other.value > self.value { other.clone() } else { self.clone() }
    }

    /// The smaller of two; of equal ones the first.
    #[must_use]
    pub fn min(&self, other: &Jet) -> Self {
        if other.value < self.value { other.clone() } else { self.clone() }
    }
}

/// Derivatives of the arc sine.
fn arc_slopes(x: f64) -> [f64; 3] {
    let q = (1.0 - x) * (1.0 + x);
    let root = q.sqrt();
    [1.0 / root, x / (q * root), (1.0 + 2.0 * x * x) / (q * q * root)]
}

/// Integer power by squaring.
pub(crate) fn power(x: f64, exponent: i64) -> f64 {
    let (mut base, mut rest, mut out) = (x, exponent.unsigned_abs(), 1.0);
    while rest > 0 {
        if rest % 2 == 1 {
            out *= base;
        }
        base *= base;
        rest /= 2;
    }
    if exponent < 0 { 1.0 / out } else { out }
}

impl Terms {
    fn scaled(&self, factor: f64) -> Terms {
        match self {
            Terms::All { gradient, hessian } => Terms::All {
                gradient: gradient.iter().map(|g| g * factor).collect(),
                hessian: hessian.iter().map(|h| h * factor).collect(),
            },
            Terms::Along(a) => Terms::Along(a.with(a, |a, _| a * factor)),
        }
    }

    /// Term by term; nothing when the two are not of one evaluation.
    fn with(&self, other: &Terms, rule: impl Fn(f64, f64) -> f64) -> Option<Terms> {
        let pairs = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| rule(*a, *b)).collect();
        match (self, other) {
            (Terms::All { gradient: g, hessian: h }, Terms::All { gradient: g2, hessian: h2 })
                if g.len() == g2.len() && h.len() == h2.len() =>
            {
                Some(Terms::All { gradient: pairs(g, g2), hessian: pairs(h, h2) })
            }
            (Terms::Along(a), Terms::Along(b)) => Some(Terms::Along(a.with(b, rule))),
            _ => None,
        }
    }

    fn product(a: f64, first: &Terms, b: f64, second: &Terms) -> Option<Terms> {
        let mut out = first.with(second, |da, db| da * b + a * db)?;
        match (&mut out, first, second) {
            (Terms::All { hessian, .. }, Terms::All { gradient: g, .. }, Terms::All { gradient: g2, .. }) => {
                add_outer(hessian, g, g2);
            }
            (Terms::Along(out), Terms::Along(a), Terms::Along(b)) => {
                out.tt += 2.0 * (a.t * b.t);
                out.st += a.s * b.t + a.t * b.s;
                out.stt += a.s * b.tt + a.tt * b.s + 2.0 * (a.t * b.st + a.st * b.t);
            }
            _ => {}
        }
        Some(out)
    }

    fn compose(&self, [g1, g2, g3]: [f64; 3]) -> Terms {
        let mut out = self.scaled(g1);
        match (&mut out, self) {
            (Terms::All { hessian, .. }, Terms::All { gradient, .. }) => {
                let half: Vec<f64> = gradient.iter().map(|g| g * (g2 / 2.0)).collect();
                add_outer(hessian, gradient, &half);
            }
            (Terms::Along(out), Terms::Along(u)) => {
                out.tt += g2 * (u.t * u.t);
                out.st += g2 * (u.s * u.t);
                out.stt += g2 * (u.s * u.tt + 2.0 * (u.t * u.st)) + g3 * (u.s * u.t * u.t);
            }
            _ => {}
        }
        out
    }
}

/// Adds `a_i b_j + a_j b_i` to a lower triangle; nothing to an empty one.
fn add_outer(triangle: &mut [f64], a: &[f64], b: &[f64]) {
    let mut places = triangle.iter_mut();
    for (row, (ai, bi)) in a.iter().zip(b).enumerate() {
        for (aj, bj) in a.iter().zip(b).take(row + 1) {
            let Some(place) = places.next() else { return };
            *place += ai * bj + aj * bi;
        }
    }
}

impl Along {
    fn with(&self, other: &Along, rule: impl Fn(f64, f64) -> f64) -> Along {
        Along {
            s: rule(self.s, other.s),
            t: rule(self.t, other.t),
            st: rule(self.st, other.st),
            tt: rule(self.tt, other.tt),
            stt: rule(self.stt, other.stt),
        }
    }
}

impl From<f64> for Jet {
    fn from(value: f64) -> Self {
        Jet::constant(value)
    }
}

macro_rules! operator {
    ($($trait:ident $method:ident ($a:ident, $b:ident, $value:expr) => $rule:expr;)+) => {$(
        impl $trait<&Jet> for &Jet {
            type Output = Jet;
            #[inline]
            fn $method(self, other: &Jet) -> Jet {
                let ($a, $b) = (self, other);
                let value = $value;
                // what every Monte Carlo trial does
                if $a.terms.is_none() && $b.terms.is_none() {
                    return Jet::constant(value);
                }
                $rule
            }
        }
        impl $trait<Jet> for &Jet {
            type Output = Jet;
            #[inline]
            fn $method(self, other: Jet) -> Jet { self.$method(&other) }
        }
        impl $trait<&Jet> for Jet {
            type Output = Jet;
            #[inline]
            fn $method(self, other: &Jet) -> Jet { (&self).$method(other) }
        }
        impl $trait<Jet> for Jet {
            type Output = Jet;
            #[inline]
            fn $method(self, other: Jet) -> Jet { (&self).$method(&other) }
        }
        impl $trait<f64> for &Jet {
            type Output = Jet;
            #[inline]
            fn $method(self, other: f64) -> Jet { self.$method(&Jet::constant(other)) }
        }
        impl $trait<f64> for Jet {
            type Output = Jet;
            #[inline]
            fn $method(self, other: f64) -> Jet { (&self).$method(&Jet::constant(other)) }
        }
        impl $trait<&Jet> for f64 {
            type Output = Jet;
            #[inline]
            fn $method(self, other: &Jet) -> Jet { (&Jet::constant(self)).$method(other) }
        }
        impl $trait<Jet> for f64 {
            type Output = Jet;
            #[inline]
            fn $method(self, other: Jet) -> Jet { (&Jet::constant(self)).$method(&other) }
        }
    )+};
}
operator! {
    Add add (a, b, a.value + b.value) => Jet::combined(a, b, a.value + b.value, 1.0, 1.0);
    Sub sub (a, b, a.value - b.value) => Jet::combined(a, b, a.value - b.value, 1.0, -1.0);
    Mul mul (a, b, a.value * b.value) => Jet::product(a, b, a.value * b.value);
    Div div (a, b, a.value / b.value) => Jet::product(a, &b.reciprocal(), a.value / b.value);
}

impl Neg for &Jet {
    type Output = Jet;
    fn neg(self) -> Jet {
        Jet { value: -self.value, terms: self.terms.as_deref().map(|terms| Box::new(terms.scaled(-1.0))) }
    }
}
impl Neg for Jet {
    type Output = Jet;
    fn neg(self) -> Jet {
        -&self
    }
}
