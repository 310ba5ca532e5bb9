//! Numbers that carry their derivatives, so that one model, written once as a function of [`Jet`]s, serves as value, first order,
//! second order and Monte Carlo trial.
//!
//! A [`Jet`] behaves as a plain number under `+ - * /` with jets and doubles, by value or by reference, and under the functions below.
//! The value alone costs no allocation. Where a function has no derivative (`abs` at 0, `sqrt` at 0) the derivatives are not finite,
//! and an evaluation that needs them refuses. The rules: product and chain rule to the order carried.

use core::ops::{Add, Div, Mul, Neg, Sub};
use std::borrow::Cow;

/// A number with its derivatives. See the [module](self).
#[derive(Debug, Clone)]
pub struct Jet {
    value: f64,
    terms: Option<Terms>,
}

/// Derivatives, in one of three forms.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Terms {
    /// By every variable, once. The form of budgets, which are many: it costs one allocation, and a result is written over an operand that
    /// is not needed any more.
    First(Vec<f64>),
    /// Once and twice by every variable.
    Second(Box<Second>),
    /// Along two directions `s` and `t`: once along `s`, up to twice along `t`.
    Along(Box<Along>),
}

/// Gradient, and the lower triangle of the Hessian row by row.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Second {
    gradient: Vec<f64>,
    hessian: Vec<f64>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Along {
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
        Jet { value, terms: Some(Terms::First(unit(index, count))) }
    }

    /// Variable `index` of `count`, at second order.
    pub(crate) fn variable_second(value: f64, index: usize, count: usize) -> Self {
        let second = Second { gradient: unit(index, count), hessian: vec![0.0; count * (count + 1) / 2] };
        Jet { value, terms: Some(Terms::Second(Box::new(second))) }
    }

    /// A variable that changes by `s` and `t` along two directions.
    pub(super) fn along(value: f64, s: f64, t: f64) -> Self {
        Jet { value, terms: Some(Terms::Along(Box::new(Along { s, t, st: 0.0, tt: 0.0, stt: 0.0 }))) }
    }

    /// Derivative by each of `count` variables; zeros for a constant, NaN for a jet of another evaluation.
    pub(crate) fn gradient(&self, count: usize) -> Cow<'_, [f64]> {
        match &self.terms {
            None => vec![0.0; count].into(),
            Some(Terms::First(gradient)) if gradient.len() == count => gradient.into(),
            Some(Terms::Second(second)) if second.gradient.len() == count => (&second.gradient).into(),
            Some(_) => vec![f64::NAN; count].into(),
        }
    }

    /// Lower triangle of the second derivatives by `count` variables, row by row; zeros for a constant.
    pub(crate) fn hessian(&self, count: usize) -> Vec<f64> {
        let entries = count * (count + 1) / 2;
        match &self.terms {
            None => vec![0.0; entries],
            Some(Terms::Second(second)) if second.hessian.len() == entries => second.hessian.clone(),
            Some(_) => vec![f64::NAN; entries],
        }
    }

    /// Third derivative, once along `s` and twice along `t`.
    pub(super) fn third(&self) -> f64 {
        match &self.terms {
            None => 0.0,
            Some(Terms::Along(along)) => along.stt,
            Some(_) => f64::NAN,
        }
    }

    /// The jet of a function of this one: its value, and its first three derivatives when they are needed.
    fn compose(&self, value: f64, slopes: impl FnOnce() -> [f64; 3]) -> Self {
        Jet { value, terms: self.terms.as_ref().map(|terms| terms.compose(slopes())) }
    }

    /// `p a + q b` of the derivatives.
    fn combined(a: impl Operand, b: impl Operand, value: f64, p: f64, q: f64) -> Self {
        let terms = match (&a.jet().terms, &b.jet().terms) {
            (None, None) => None,
            (Some(_), None) => a.into_terms().map(|terms| terms.scaled(p)),
            (None, Some(_)) => b.into_terms().map(|terms| terms.scaled(q)),
            (Some(Terms::First(x)), Some(Terms::First(y))) if x.len() == y.len() => {
                Some(Terms::First(first(a, b, p, q)))
            }
            (Some(first), Some(second)) => match first.with(second, |a, b| p * a + q * b) {
                Some(terms) => Some(terms),
                None => return Jet::constant(f64::NAN),
            },
        };
        Jet { value, terms }
    }

    fn product(a: impl Operand, b: impl Operand, value: f64) -> Self {
        let (x, y) = (a.jet(), b.jet());
        match (&x.terms, &y.terms) {
            (Some(first), Some(second)) if !first.is_first() => {
                match Terms::product(x.value, first, y.value, second) {
                    Some(terms) => Jet { value, terms: Some(terms) },
                    None => Jet::constant(f64::NAN),
                }
            }
            // at first order the product rule is a combination
            _ => {
                let (p, q) = (y.value, x.value);
                Self::combined(a, b, value, p, q)
            }
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

/// A jet as an operand: lent, or given away with its room.
pub(crate) trait Operand: Sized {
    fn owned(&self) -> bool;
    fn jet(&self) -> &Jet;
    fn into_terms(self) -> Option<Terms>;
}

impl Operand for Jet {
    fn owned(&self) -> bool {
        true
    }
    fn jet(&self) -> &Jet {
        self
    }
    fn into_terms(self) -> Option<Terms> {
        self.terms
    }
}

impl Operand for &Jet {
    fn owned(&self) -> bool {
        false
    }
    fn jet(&self) -> &Jet {
        self
    }
    fn into_terms(self) -> Option<Terms> {
        self.terms.clone()
    }
}

impl Operand for Cow<'_, Jet> {
    fn owned(&self) -> bool {
        matches!(self, Cow::Owned(_))
    }
    fn jet(&self) -> &Jet {
        self
    }
    fn into_terms(self) -> Option<Terms> {
        match self {
            Cow::Owned(jet) => jet.terms,
            Cow::Borrowed(jet) => jet.terms.clone(),
        }
    }
}

/// The four operations on operands of any kind.
impl Jet {
    pub(crate) fn added(a: impl Operand, b: impl Operand) -> Jet {
        let value = a.jet().value + b.jet().value;
        Jet::combined(a, b, value, 1.0, 1.0)
    }

    pub(crate) fn subtracted(a: impl Operand, b: impl Operand) -> Jet {
        let value = a.jet().value - b.jet().value;
        Jet::combined(a, b, value, 1.0, -1.0)
    }

    pub(crate) fn multiplied(a: impl Operand, b: impl Operand) -> Jet {
        let value = a.jet().value * b.jet().value;
        Jet::product(a, b, value)
    }

    pub(crate) fn divided(a: impl Operand, b: impl Operand) -> Jet {
        let value = a.jet().value / b.jet().value;
        let reciprocal = b.jet().reciprocal();
        Jet::product(a, reciprocal, value)
    }

    /// Derivatives of first order; none else.
    fn first(&self) -> &[f64] {
        match &self.terms {
            Some(Terms::First(gradient)) => gradient,
            _ => &[],
        }
    }
}

/// `p a + q b` of gradients, written over one that is given away. A sum of two products is the same in either order.
fn first(a: impl Operand, b: impl Operand, p: f64, q: f64) -> Vec<f64> {
    if !a.owned() && b.owned() {
        return over(b, q, a.jet().first(), p);
    }
    over(a, p, b.jet().first(), q)
}

/// Gradient of an operand times a factor, and another one times its own.
fn over(own: impl Operand, factor: f64, other: &[f64], other_factor: f64) -> Vec<f64> {
    let Some(Terms::First(mut gradient)) = own.into_terms() else { return Vec::new() };
    for (place, other) in gradient.iter_mut().zip(other) {
        *place = factor * *place + other_factor * other;
    }
    gradient
}

fn unit(index: usize, count: usize) -> Vec<f64> {
    let mut out = vec![0.0; count];
    if let Some(place) = out.get_mut(index) {
        *place = 1.0;
    }
    out
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
    fn is_first(&self) -> bool {
        matches!(self, Terms::First(_))
    }

    fn scaled(mut self, factor: f64) -> Terms {
        let scale = |values: &mut Vec<f64>| values.iter_mut().for_each(|value| *value *= factor);
        match &mut self {
            Terms::First(gradient) => scale(gradient),
            Terms::Second(second) => {
                scale(&mut second.gradient);
                scale(&mut second.hessian);
            }
            Terms::Along(a) => **a = a.with(a, |a, _| a * factor),
        }
        self
    }

    /// Term by term; nothing when the two are not of one evaluation.
    fn with(&self, other: &Terms, rule: impl Fn(f64, f64) -> f64) -> Option<Terms> {
        let pairs = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| rule(*a, *b)).collect();
        match (self, other) {
            (Terms::First(g), Terms::First(g2)) if g.len() == g2.len() => Some(Terms::First(pairs(g, g2))),
            (Terms::Second(a), Terms::Second(b)) if a.gradient.len() == b.gradient.len() => {
                Some(Terms::Second(Box::new(Second {
                    gradient: pairs(&a.gradient, &b.gradient),
                    hessian: pairs(&a.hessian, &b.hessian),
                })))
            }
            (Terms::Along(a), Terms::Along(b)) => Some(Terms::Along(Box::new(a.with(b, rule)))),
            _ => None,
        }
    }

    fn product(a: f64, first: &Terms, b: f64, second: &Terms) -> Option<Terms> {
        let mut out = first.with(second, |da, db| da * b + a * db)?;
        match (&mut out, first, second) {
            (Terms::Second(out), Terms::Second(x), Terms::Second(y)) => {
                add_outer(&mut out.hessian, &x.gradient, &y.gradient);
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
        let mut out = self.clone().scaled(g1);
        match (&mut out, self) {
            (Terms::Second(out), Terms::Second(u)) => {
                let half: Vec<f64> = u.gradient.iter().map(|g| g * (g2 / 2.0)).collect();
                add_outer(&mut out.hessian, &u.gradient, &half);
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
        operator!(@one $trait $method &Jet, &Jet, $a, $b, $value, $rule);
        operator!(@one $trait $method &Jet, Jet, $a, $b, $value, $rule);
        operator!(@one $trait $method Jet, &Jet, $a, $b, $value, $rule);
        operator!(@one $trait $method Jet, Jet, $a, $b, $value, $rule);
        impl $trait<f64> for &Jet {
            type Output = Jet;
            #[inline]
            fn $method(self, other: f64) -> Jet { self.$method(Jet::constant(other)) }
        }
        impl $trait<f64> for Jet {
            type Output = Jet;
            #[inline]
            fn $method(self, other: f64) -> Jet { self.$method(Jet::constant(other)) }
        }
        impl $trait<&Jet> for f64 {
            type Output = Jet;
            #[inline]
            fn $method(self, other: &Jet) -> Jet { Jet::constant(self).$method(other) }
        }
        impl $trait<Jet> for f64 {
            type Output = Jet;
            #[inline]
            fn $method(self, other: Jet) -> Jet { Jet::constant(self).$method(other) }
        }
    )+};
    (@one $trait:ident $method:ident $left:ty, $right:ty, $a:ident, $b:ident, $value:expr, $rule:expr) => {
        impl $trait<$right> for $left {
            type Output = Jet;
            #[inline]
            fn $method(self, other: $right) -> Jet {
                let ($a, $b) = (self, other);
                // what every Monte Carlo trial of a closure does
                if $a.terms.is_none() && $b.terms.is_none() {
                    return Jet::constant($value);
                }
                $rule
            }
        }
    };
}
operator! {
    Add add (a, b, a.value + b.value) => Jet::added(a, b);
    Sub sub (a, b, a.value - b.value) => Jet::subtracted(a, b);
    Mul mul (a, b, a.value * b.value) => Jet::multiplied(a, b);
    Div div (a, b, a.value / b.value) => Jet::divided(a, b);
}

impl Neg for &Jet {
    type Output = Jet;
    fn neg(self) -> Jet {
        -self.clone()
    }
}
impl Neg for Jet {
    type Output = Jet;
    fn neg(self) -> Jet {
        Jet { value: -self.value, terms: self.terms.map(|terms| terms.scaled(-1.0)) }
    }
}
