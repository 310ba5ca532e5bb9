//! What a formula may do with its arguments, so that one text of a formula serves as a number, as a number with its
//! partial derivatives, and as an expression to print.

use core::array;
use core::ops::{Add, Div, Mul, Neg, Sub};

/// The arithmetic of the formulas: `+ - * /` with itself and with plain numbers, and the listed functions.
///
/// The functions other than `sqrt` come from one pinned pure-Rust library, so that every host gets the same bits.
pub trait Number:
    Copy
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Neg<Output = Self>
    + Add<f64, Output = Self>
    + Sub<f64, Output = Self>
    + Mul<f64, Output = Self>
    + Div<f64, Output = Self>
{
    /// Square root.
    fn sqrt(self) -> Self;
    /// Absolute value.
    fn abs(self) -> Self;
    /// The greater of two.
    fn max(self, other: Self) -> Self;
    /// The smaller of two.
    fn min(self, other: Self) -> Self;
    /// Complementary error function.
    fn erfc(self) -> Self;
}

/// Derivative of `erfc` at `x`: `-2 / sqrt(pi) * exp(-x * x)`.
pub(crate) fn erfc_slope(x: f64) -> f64 {
    -core::f64::consts::FRAC_2_SQRT_PI * libm::exp(-(x * x))
}

impl Number for f64 {
    fn sqrt(self) -> f64 {
        f64::sqrt(self)
    }
    fn abs(self) -> f64 {
        f64::abs(self)
    }
    fn max(self, other: f64) -> f64 {
        if other > self { other } else { self }
    }
    fn min(self, other: f64) -> f64 {
        if other < self { other } else { self }
    }
    fn erfc(self) -> f64 {
        libm::erfc(self)
    }
}

/// A number with its partial derivatives to the `N` arguments of a formula.
///
/// The order of operations of each rule is that of [`Expression::derivative`](super::expression::Expression::derivative),
/// so that the printed derivative gives the same bits.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Dual<const N: usize> {
    pub(crate) value: f64,
    pub(crate) slope: [f64; N],
}

impl<const N: usize> Dual<N> {
    /// The arguments of a formula, each with slope 1 to itself.
    pub(crate) fn arguments(values: [f64; N]) -> [Self; N] {
        array::from_fn(|k| Dual {
            value: values.get(k).copied().unwrap_or_default(),
            slope: array::from_fn(|j| if j == k { 1.0 } else { 0.0 }),
        })
    }

    fn with(self, value: f64, rule: impl Fn(f64) -> f64) -> Self {
        Dual { value, slope: self.slope.map(rule) }
    }

    fn with_both(self, other: Self, value: f64, rule: impl Fn(f64, f64) -> f64) -> Self {
        let mut slope = self.slope;
        for (a, b) in slope.iter_mut().zip(other.slope) {
            *a = rule(*a, b);
        }
        Dual { value, slope }
    }
}

impl<const N: usize> Add for Dual<N> {
    type Output = Self;
    fn add(self, b: Self) -> Self {
        self.with_both(b, self.value + b.value, |da, db| da + db)
    }
}
impl<const N: usize> Sub for Dual<N> {
    type Output = Self;
    fn sub(self, b: Self) -> Self {
        self.with_both(b, self.value - b.value, |da, db| da - db)
    }
}
impl<const N: usize> Mul for Dual<N> {
    type Output = Self;
    #[expect(clippy::suspicious_arithmetic_impl, reason = "the product rule adds")]
    fn mul(self, b: Self) -> Self {
        self.with_both(b, self.value * b.value, |da, db| da * b.value + self.value * db)
    }
}
impl<const N: usize> Div for Dual<N> {
    type Output = Self;
    #[expect(clippy::suspicious_arithmetic_impl, reason = "the quotient rule subtracts and multiplies")]
    fn div(self, b: Self) -> Self {
        let ratio = self.value / b.value;
        self.with_both(b, ratio, |da, db| (da - ratio * db) / b.value)
    }
}
impl<const N: usize> Neg for Dual<N> {
    type Output = Self;
    fn neg(self) -> Self {
        self.with(-self.value, |da| -da)
    }
}

/// Arithmetic of a number with plain numbers, on either side.
macro_rules! with_plain {
    ([$($generic:tt)*] $type:ty, $plain:ident => $lift:expr) => {
        impl<$($generic)*> Add<f64> for $type {
            type Output = Self;
            fn add(self, $plain: f64) -> Self { self + $lift(self, $plain) }
        }
        impl<$($generic)*> Sub<f64> for $type {
            type Output = Self;
            fn sub(self, $plain: f64) -> Self { self - $lift(self, $plain) }
        }
        impl<$($generic)*> Mul<f64> for $type {
            type Output = Self;
            fn mul(self, $plain: f64) -> Self { self * $lift(self, $plain) }
        }
        impl<$($generic)*> Div<f64> for $type {
            type Output = Self;
            fn div(self, $plain: f64) -> Self { self / $lift(self, $plain) }
        }
        impl<$($generic)*> Add<$type> for f64 {
            type Output = $type;
            fn add(self, other: $type) -> $type { $lift(other, self) + other }
        }
        impl<$($generic)*> Sub<$type> for f64 {
            type Output = $type;
            fn sub(self, other: $type) -> $type { $lift(other, self) - other }
        }
        impl<$($generic)*> Mul<$type> for f64 {
            type Output = $type;
            fn mul(self, other: $type) -> $type { $lift(other, self) * other }
        }
        impl<$($generic)*> Div<$type> for f64 {
            type Output = $type;
            fn div(self, other: $type) -> $type { $lift(other, self) / other }
        }
    };
}
pub(crate) use with_plain;

fn lift_dual<const N: usize>(_like: Dual<N>, plain: f64) -> Dual<N> {
    Dual { value: plain, slope: [0.0; N] }
}
with_plain!([const N: usize] Dual<N>, plain => lift_dual);

impl<const N: usize> Number for Dual<N> {
    fn sqrt(self) -> Self {
        let root = self.value.sqrt();
        self.with(root, |da| da / (2.0 * root))
    }
    fn abs(self) -> Self {
        if self.value < 0.0 { -self } else { self }
    }
    fn max(self, other: Self) -> Self {
        if other.value > self.value { other } else { self }
    }
    fn min(self, other: Self) -> Self {
        if other.value < self.value { other } else { self }
    }
    fn erfc(self) -> Self {
        let slope = erfc_slope(self.value);
        self.with(libm::erfc(self.value), |da| slope * da)
    }
}
