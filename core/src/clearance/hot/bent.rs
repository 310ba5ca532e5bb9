//! A quantity along a line with its first two derivatives: at one place, or as ranges over a stretch. The rules of sums, products and functions
//! of functions are the same for both.

use crate::shape::least::{larger, smaller};
use core::ops::{Add, Mul};

/// At least every value over a stretch.
#[derive(Debug, Clone, Copy)]
pub(super) struct Range {
    pub(super) low: f64,
    pub(super) high: f64,
}

impl Range {
    /// From one number to another, in any order.
    pub(super) fn between(a: f64, b: f64) -> Self {
        Range { low: smaller(a, b), high: larger(a, b) }
    }

    /// From the first number to the second.
    pub(super) const fn new((low, high): (f64, f64)) -> Self {
        Range { low, high }
    }

    /// Both.
    pub(super) fn hull(self, other: Range) -> Self {
        Range { low: smaller(self.low, other.low), high: larger(self.high, other.high) }
    }

    /// Wider by so much on both sides.
    pub(super) fn widened(self, by: f64) -> Self {
        Range { low: self.low - by, high: self.high + by }
    }

    /// Largest absolute value.
    pub(super) fn size(self) -> f64 {
        larger(-self.low, self.high)
    }
}

impl Add for Range {
    type Output = Range;

    fn add(self, other: Range) -> Range {
        Range { low: self.low + other.low, high: self.high + other.high }
    }
}

impl Mul for Range {
    type Output = Range;

    fn mul(self, other: Range) -> Range {
        let with = |a: f64| Range::between(a * other.low, a * other.high);
        with(self.low).hull(with(self.high))
    }
}

impl Add<f64> for Range {
    type Output = Range;

    fn add(self, number: f64) -> Range {
        Range { low: self.low + number, high: self.high + number }
    }
}

impl Mul<f64> for Range {
    type Output = Range;

    fn mul(self, factor: f64) -> Range {
        Range::between(self.low * factor, self.high * factor)
    }
}

/// What such a quantity is made of: numbers, or ranges.
pub(super) trait Quantity:
    Copy + Add<Output = Self> + Mul<Output = Self> + Add<f64, Output = Self> + Mul<f64, Output = Self>
{
}
impl Quantity for f64 {}
impl Quantity for Range {}

/// A value with its first and second derivative along the line.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bent<T> {
    pub(super) value: T,
    pub(super) slope: T,
    pub(super) bend: T,
}

impl<T: Quantity> Bent<T> {
    /// A function of it, by the function's value and derivatives there.
    pub(super) fn through(self, [value, first, second]: [T; 3]) -> Self {
        Bent {
            value,
            slope: first * self.slope,
            bend: second * (self.slope * self.slope) + first * self.bend,
        }
    }

    /// So many times as much.
    pub(super) fn times(self, factor: f64) -> Self {
        Bent { value: self.value * factor, slope: self.slope * factor, bend: self.bend * factor }
    }

    /// A number more.
    pub(super) fn raised(self, by: f64) -> Self {
        Bent { value: self.value + by, ..self }
    }
}

impl Bent<Range> {
    fn each(self, of: impl Fn(Range) -> Range) -> Self {
        Bent { value: of(self.value), slope: of(self.slope), bend: of(self.bend) }
    }

    /// Either of two.
    pub(super) fn hull(self, other: Self) -> Self {
        Bent {
            value: self.value.hull(other.value),
            slope: self.slope.hull(other.slope),
            bend: self.bend.hull(other.bend),
        }
    }

    /// Times anything from 0 to 1.
    pub(super) fn in_part(self) -> Self {
        self.each(|r| r.hull(Range { low: 0.0, high: 0.0 }))
    }

    /// Times anything from -1 to 1.
    pub(super) fn either_way(self) -> Self {
        self.each(|r| Range { low: -r.size(), high: r.size() })
    }
}

impl<T: Quantity> Add for Bent<T> {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Bent {
            value: self.value + other.value,
            slope: self.slope + other.slope,
            bend: self.bend + other.bend,
        }
    }
}

impl<T: Quantity> Mul for Bent<T> {
    type Output = Self;

    fn mul(self, other: Self) -> Self {
        let crossed = self.slope * other.slope;
        Bent {
            value: self.value * other.value,
            slope: self.slope * other.value + self.value * other.slope,
            bend: self.bend * other.value + (crossed + crossed) + self.value * other.bend,
        }
    }
}
