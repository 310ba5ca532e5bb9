//! A number that carries its first and second derivative by one variable, for formulas that are asked for them again and again: it
//! is copied, not allocated.

use super::number::{Number, erfc_slope, with_plain};
use core::ops::{Add, Div, Mul, Neg, Sub};

/// A value with its first and second derivative. The value is operation by operation that of a plain number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Taylor {
    pub(crate) value: f64,
    pub(crate) slope: f64,
    pub(crate) curvature: f64,
}

impl Taylor {
    /// A number that does not change.
    pub(crate) fn constant(value: f64) -> Self {
        Taylor { value, slope: 0.0, curvature: 0.0 }
    }

    /// The variable itself.
    pub(crate) fn variable(value: f64) -> Self {
        Taylor { value, slope: 1.0, curvature: 0.0 }
    }

    /// Chain rule, from the value of a function and its two derivatives here.
    fn compose(self, value: f64, first: f64, second: f64) -> Self {
        Taylor {
            value,
            slope: first * self.slope,
            curvature: second * self.slope * self.slope + first * self.curvature,
        }
    }
}

impl Add for Taylor {
    type Output = Self;
    fn add(self, b: Self) -> Self {
        Taylor {
            value: self.value + b.value,
            slope: self.slope + b.slope,
            curvature: self.curvature + b.curvature,
        }
    }
}
impl Sub for Taylor {
    type Output = Self;
    fn sub(self, b: Self) -> Self {
        Taylor {
            value: self.value - b.value,
            slope: self.slope - b.slope,
            curvature: self.curvature - b.curvature,
        }
    }
}
impl Mul for Taylor {
    type Output = Self;
    fn mul(self, b: Self) -> Self {
        Taylor {
            value: self.value * b.value,
            slope: self.slope * b.value + self.value * b.slope,
            curvature: self.curvature * b.value + 2.0 * self.slope * b.slope + self.value * b.curvature,
        }
    }
}
impl Div for Taylor {
    type Output = Self;
    fn div(self, b: Self) -> Self {
        let value = self.value / b.value;
        let slope = (self.slope - value * b.slope) / b.value;
        let curvature = (self.curvature - 2.0 * slope * b.slope - value * b.curvature) / b.value;
        Taylor { value, slope, curvature }
    }
}
impl Neg for Taylor {
    type Output = Self;
    fn neg(self) -> Self {
        Taylor { value: -self.value, slope: -self.slope, curvature: -self.curvature }
    }
}

fn lift(_like: Taylor, plain: f64) -> Taylor {
    Taylor::constant(plain)
}
with_plain!([] Taylor, plain => lift);

impl Number for Taylor {
    fn sqrt(self) -> Self {
        let root = self.value.sqrt();
        let first = 1.0 / (2.0 * root);
        self.compose(root, first, -first / (2.0 * self.value))
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
        let first = erfc_slope(self.value);
        self.compose(libm::erfc(self.value), first, -2.0 * self.value * first)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: f = (x^2 + 3) / x - 1 / sqrt(x) at 4: f' = 1 - 3/x^2 + 1/(2 x sqrt x), f'' = 6/x^3 - 3/(4 x^2 sqrt x).
    #[test]
    fn derivatives_by_hand() {
        let x = Taylor::variable(4.0);
        let f = (x * x + 3.0) / x - 1.0 / x.sqrt();
        assert_eq!((f.value, f.slope, f.curvature), (4.25, 0.875, 0.0703125));
        let g = (-x).abs().max(Taylor::constant(1.0)).min(Taylor::constant(9.0));
        assert_eq!((g.value, g.slope, g.curvature), (4.0, 1.0, 0.0));
    }

    /// erfc' = -2/sqrt(pi) e^(-x^2), erfc'' = -2 x erfc'; at 0 by hand: -2/sqrt(pi) and 0.
    #[test]
    fn complementary_error_function() {
        let f = Taylor::variable(0.0).erfc();
        assert_eq!((f.value, f.slope, f.curvature), (1.0, -core::f64::consts::FRAC_2_SQRT_PI, 0.0));
    }
}
