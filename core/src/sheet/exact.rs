//! Exact comparison of printed numbers: whole numbers and their fractions, never doubles.

use core::cmp::Ordering;

/// A fraction. The denominator is above 0.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fraction {
    numerator: i128,
    denominator: i128,
}

impl Fraction {
    /// `numerator / denominator`; none for a denominator that is not above 0.
    pub(super) fn new(numerator: i128, denominator: i128) -> Option<Self> {
        (denominator > 0).then_some(Fraction { numerator, denominator })
    }

    /// A whole number.
    pub(super) const fn whole(numerator: i128) -> Self {
        Fraction { numerator, denominator: 1 }
    }

    /// `self * by`; none where it leaves the range of the whole numbers behind it.
    pub(super) fn times(self, by: Fraction) -> Option<Self> {
        let left = divisor(self.numerator, by.denominator);
        let right = divisor(by.numerator, self.denominator);
        let numerator = (self.numerator / left).checked_mul(by.numerator / right)?;
        let denominator = (self.denominator / right).checked_mul(by.denominator / left)?;
        Fraction::new(numerator, denominator)
    }

    /// The nearest whole number, halves away from zero.
    pub(super) fn rounded(self) -> Option<i128> {
        let half = self.denominator / 2;
        let size = self.numerator.checked_abs()?.checked_add(half)?.div_euclid(self.denominator);
        Some(if self.numerator < 0 { -size } else { size })
    }

    /// The same as a double, to choose among what was found, never to judge.
    pub(super) fn nearly(self) -> f64 {
        self.numerator as f64 / self.denominator as f64
    }
}

/// Greatest common divisor, at least 1.
fn divisor(a: i128, b: i128) -> i128 {
    let (mut a, mut b) = (a.unsigned_abs(), b.unsigned_abs());
    while b != 0 {
        (a, b) = (b, a % b);
    }
    i128::try_from(a).map_or(1, |a| a.max(1))
}

impl Ord for Fraction {
    /// By whole parts and then by what is left, turned over: no product is formed, so nothing overflows.
    fn cmp(&self, other: &Self) -> Ordering {
        let (mut a, mut b) = (*self, *other);
        loop {
            let whole = a.numerator.div_euclid(a.denominator).cmp(&b.numerator.div_euclid(b.denominator));
            if whole.is_ne() {
                return whole;
            }
            let left = |f: Fraction| f.numerator.rem_euclid(f.denominator);
            match (left(a), left(b)) {
                (0, 0) => return Ordering::Equal,
                (0, _) => return Ordering::Less,
                (_, 0) => return Ordering::Greater,
                (of_a, of_b) => {
                    (a, b) = (
                        Fraction { numerator: b.denominator, denominator: of_b },
                        Fraction { numerator: a.denominator, denominator: of_a },
                    );
                }
            }
        }
    }
}

impl PartialOrd for Fraction {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Fraction {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other).is_eq()
    }
}

impl Eq for Fraction {}

/// Everything that a printed number may have been before it was rounded, both ends included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Span {
    pub(super) low: Fraction,
    pub(super) high: Fraction,
}

impl Span {
    /// `value - half` to `value + half`.
    pub(super) fn around(value: i128, half: i128) -> Self {
        Span { low: Fraction::whole(value - half), high: Fraction::whole(value + half) }
    }

    /// Whether both can have been the same number: the values differ by at most the sum of the half units.
    pub(super) fn meets(&self, other: &Span) -> bool {
        self.low <= other.high && other.low <= self.high
    }

    /// The span of `factor` times the number; the factor is above 0.
    pub(super) fn times(&self, factor: Fraction) -> Option<Span> {
        Some(Span { low: self.low.times(factor)?, high: self.high.times(factor)? })
    }

    /// The middle as a double, to choose among what was found.
    pub(super) fn nearly(&self) -> f64 {
        (self.low.nearly() + self.high.nearly()) / 2.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fraction(numerator: i128, denominator: i128) -> Fraction {
        Fraction::new(numerator, denominator).unwrap()
    }

    /// Against cross multiplication, which is exact for numbers this small.
    #[test]
    fn fractions_compare_like_their_cross_products() {
        for a in -12..=12_i128 {
            for b in 1..=9_i128 {
                for c in -12..=12_i128 {
                    for d in 1..=9_i128 {
                        assert_eq!(
                            fraction(a, b).cmp(&fraction(c, d)),
                            (a * d).cmp(&(c * b)),
                            "{a}/{b} {c}/{d}"
                        );
                    }
                }
            }
        }
    }

    /// Neighbours whose cross products need more than 128 bits: m/(m+1) rises with m.
    #[test]
    fn fractions_too_large_to_multiply_still_compare() {
        let m = i128::MAX - 1;
        assert!(fraction(m - 1, m) < fraction(m, m + 1));
        assert!(fraction(-m, m + 1) < fraction(-(m - 1), m));
        assert!(Fraction::new(1, 0).is_none());
        assert_eq!(fraction(m, 1).times(fraction(2, 1)), None);
    }

    #[test]
    fn halves_are_rounded_away_from_zero() {
        let rounded = |n, d| fraction(n, d).rounded();
        assert_eq!([rounded(5, 2), rounded(-5, 2), rounded(7, 3)], [Some(3), Some(-3), Some(2)]);
    }
}
