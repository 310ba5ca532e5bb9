//! Printed numbers, exactly, with how finely they were printed.
//!
//! Every number is a whole number of parts of its unit of comparison (mm, a ninth of a degree Celsius, N), small enough that
//! the last digit of every accepted text, and half of it, is a whole number of them. Nothing is rounded.

use super::document::Dimension;
use super::exact::Fraction;
use crate::quantity::notation::{DIFFERENCE, FORCE, Kind, LENGTH, Scale, TEMPERATURE};
use crate::quantity::refusal;
use core::fmt;

/// Largest printed number, in the unit of comparison. With it no sum, and no product with a factor of a slip, leaves the
/// range of the whole numbers.
const LARGEST: i128 = 10_000_000;

impl Dimension {
    pub(super) fn kind(self) -> &'static Kind {
        match self {
            Dimension::Length | Dimension::Ratio => &LENGTH,
            Dimension::Temperature => &TEMPERATURE,
            Dimension::Difference => &DIFFERENCE,
            Dimension::Force => &FORCE,
        }
    }

    /// Decimal places of the parts, so that the finest accepted number in the smallest unit still has a half.
    fn places(self) -> i32 {
        match self {
            Dimension::Length | Dimension::Ratio => 18,
            Dimension::Temperature | Dimension::Difference => 13,
            Dimension::Force => 26,
        }
    }

    /// A ninth of a degree Celsius is a whole number of fifths of a degree Fahrenheit.
    fn parts_of_a_unit(self) -> i128 {
        match self {
            Dimension::Temperature | Dimension::Difference => 9,
            _ => 1,
        }
    }

    /// Parts of one unit of comparison: mm, C, K, N.
    pub(super) fn unit(self) -> Option<i128> {
        ten_to(self.places())?.checked_mul(self.parts_of_a_unit())
    }

    /// The unit a text names, with the one it is written as here.
    pub(super) fn unit_named(self, text: &str) -> Option<NamedUnit> {
        let kinds: &[&Kind] = match self {
            // a sheet prints differences in C and F
            Dimension::Difference => &[&DIFFERENCE, &TEMPERATURE],
            _ => &[self.kind()],
        };
        let known = |kind: &Kind, name: &str| {
            let scale = kind.scale(name)?;
            let name = kind.units.iter().map(|unit| unit.0).find(|unit| *unit == name)?;
            Some(NamedUnit { name, scale, dimension: self })
        };
        // a unit in other letters, with a full stop or written out, names the same unit
        let named = |name: &str| kinds.iter().find_map(|kind| known(kind, name));
        let other = || kinds.iter().find_map(|kind| refusal::unit_meant(text, kind).and_then(&named));
        named(text).or_else(other)
    }

    /// Its other units that a number may have been meant in.
    fn other_units(self, than: &str) -> Vec<NamedUnit> {
        let names: &[&str] = match self {
            Dimension::Length | Dimension::Ratio => &["mm", "in", "thou", "cm", "um"],
            Dimension::Temperature | Dimension::Difference => &["C", "F"],
            Dimension::Force => &["N", "kgf", "lbf"],
        };
        names.iter().filter(|name| **name != than).filter_map(|name| self.unit_named(name)).collect()
    }
}

/// Ten to a power, where it is a whole number in range.
fn ten_to(power: i32) -> Option<i128> {
    10_i128.checked_pow(u32::try_from(power).ok()?)
}

/// A unit as it is written here, and where its numbers lie.
#[derive(Debug, Clone, Copy)]
pub(super) struct NamedUnit {
    pub(super) name: &'static str,
    scale: Scale,
    dimension: Dimension,
}

impl NamedUnit {
    /// Whether it is one of the inch units.
    pub(super) fn is_inch(&self) -> bool {
        matches!(self.name, "in" | "inch" | "\"" | "thou" | "tenth" | "tenths")
    }

    /// Where its zero lies.
    fn zero(&self) -> Option<i128> {
        match (self.scale, self.dimension) {
            // -32 F of fifths each
            (Scale::Fahrenheit, Dimension::Temperature) => Some(-160 * ten_to(self.dimension.places())?),
            _ => Some(0),
        }
    }

    /// Parts of one in its last decimal place.
    fn step(&self, decimals: u32) -> Option<i128> {
        let (factor, tens) = match self.scale {
            Scale::Times(factor, tens) => {
                (i128::from(factor).checked_mul(self.dimension.parts_of_a_unit())?, tens)
            }
            Scale::Fahrenheit | Scale::FahrenheitStep => (5, 0),
        };
        let power = self.dimension.places() + tens - i32::try_from(decimals).ok()?;
        // below one tenth of a part no half is left
        factor.checked_mul(ten_to(power)?).filter(|step| step % 2 == 0)
    }
}

/// A number as it is printed.
#[derive(Debug, Clone, Copy)]
pub(super) struct Number {
    negative: bool,
    /// its digits without the point
    mantissa: u64,
    pub(super) decimals: u32,
    pub(super) unit: NamedUnit,
    /// where it lies, in parts
    pub(super) value: i128,
    /// half of one in its last digit, in parts
    pub(super) half: i128,
}

/// One slip of the pen or the eye: what became of the digits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Change {
    /// by so many places to the right
    Point(i32),
    Digit,
    Transposed,
    LeftOut,
    TooMany,
    LastTooMany,
    Unit,
    Sign,
}

impl Number {
    /// A number from its parts; none for one that is too large, or printed too finely, to be on a sheet.
    pub(super) fn new(negative: bool, mantissa: u64, decimals: u32, unit: NamedUnit) -> Option<Self> {
        let step = unit.step(decimals)?;
        let size = i128::from(mantissa).checked_mul(step)?;
        let value = unit.zero()? + if negative { -size } else { size };
        let largest = LARGEST.checked_mul(unit.dimension.unit()?)?;
        (value.checked_abs()? <= largest && step <= largest).then_some(Number {
            negative,
            mantissa,
            decimals,
            unit,
            value,
            half: step / 2,
        })
    }

    /// A whole zero is the end of a range, printed without the decimals of the other end.
    pub(super) fn as_fine_as(&mut self, other: &Number) {
        if self.mantissa == 0 && self.decimals == 0 {
            self.half = self.half.min(other.half);
        }
    }

    /// The same digits in another dimension: a temperature as a difference, a difference as a temperature.
    pub(super) fn in_dimension(&self, dimension: Dimension) -> Option<Number> {
        let unit = dimension.unit_named(self.unit.name)?;
        Number::new(self.negative, self.mantissa, self.decimals, unit)
    }

    /// Its digits from the first that is not zero.
    pub(super) fn significant(&self) -> usize {
        if self.mantissa == 0 { 0 } else { self.mantissa.to_string().len() }
    }

    /// What makes it the same print as another: digits, decimals, unit.
    pub(super) fn print(&self) -> (bool, u64, u32, &'static str) {
        (self.negative, self.mantissa, self.decimals, self.unit.name)
    }

    fn changed(&self, mantissa: u64, decimals: u32) -> Option<Number> {
        Number::new(self.negative, mantissa, decimals, self.unit)
    }

    /// With its point moved to the right, or to the left where `places` is below 0.
    pub(super) fn point_moved(&self, places: i32) -> Option<Number> {
        let decimals = i32::try_from(self.decimals).ok()? - places;
        match u32::try_from(decimals) {
            Ok(decimals) => self.changed(self.mantissa, decimals),
            Err(_) => {
                let zeros = 10_u64.checked_pow(decimals.unsigned_abs())?;
                self.changed(self.mantissa.checked_mul(zeros)?, 0)
            }
        }
    }

    /// The same digits in the other units of its dimension.
    pub(super) fn in_other_units(&self) -> Vec<Number> {
        let units = self.unit.dimension.other_units(self.unit.name);
        let again = |unit| Number::new(self.negative, self.mantissa, self.decimals, unit);
        units.into_iter().filter_map(again).collect()
    }

    /// The same digits in the unit of another number.
    pub(super) fn in_unit_of(&self, other: &Number) -> Option<Number> {
        Number::new(self.negative, self.mantissa, self.decimals, other.unit)
    }

    fn with_other_sign(&self) -> Option<Number> {
        Number::new(!self.negative, self.mantissa, self.decimals, self.unit)
    }

    /// Everything that one change makes of it, changes that are commoner first.
    pub(super) fn changes(&self) -> Vec<(Change, Number)> {
        let mut out = Vec::new();
        let mut add = |change, number: Option<Number>| out.extend(number.map(|n| (change, n)));
        let degrees = matches!(self.unit.dimension, Dimension::Temperature | Dimension::Difference);
        if degrees && self.decimals == 0 && self.mantissa >= 10 {
            add(Change::LastTooMany, self.changed(self.mantissa / 10, 0));
        }
        [-1, 1, -2, 2, -3, 3]
            .iter()
            .for_each(|places| add(Change::Point(*places), self.point_moved(*places)));
        let digits = self.digits();
        substituted(&digits).for_each(|m| add(Change::Digit, self.changed(m, self.decimals)));
        transposed(&digits).for_each(|m| add(Change::Transposed, self.changed(m, self.decimals)));
        self.longer(&digits).for_each(|n| add(Change::LeftOut, n));
        self.shorter(&digits).for_each(|n| add(Change::TooMany, n));
        self.in_other_units().into_iter().for_each(|n| add(Change::Unit, Some(n)));
        add(Change::Sign, self.with_other_sign());
        out
    }

    /// Its digits, one at least before the point.
    fn digits(&self) -> Vec<u8> {
        format!("{:0>width$}", self.mantissa, width = self.decimals as usize + 1).into_bytes()
    }

    /// With one digit more, before or behind the point.
    fn longer<'a>(&'a self, digits: &'a [u8]) -> impl Iterator<Item = Option<Number>> + 'a {
        let before_point = digits.len().saturating_sub(self.decimals as usize);
        let places = (0..=digits.len()).flat_map(|at| (b'0'..=b'9').map(move |digit| (at, digit)));
        places.flat_map(move |(at, digit)| {
            let mut longer = digits.to_vec();
            longer.insert(at, digit);
            let mantissa = whole(&longer);
            let before = (at <= before_point && (at > 0 || digit != b'0')).then_some(self.decimals);
            let behind = (at >= before_point).then_some(self.decimals + 1);
            [before, behind].map(|decimals| self.changed(mantissa?, decimals?))
        })
    }

    /// With one digit less.
    fn shorter<'a>(&'a self, digits: &'a [u8]) -> impl Iterator<Item = Option<Number>> + 'a {
        let before_point = digits.len().saturating_sub(self.decimals as usize);
        (0..digits.len()).map(move |at| {
            let mut shorter = digits.to_vec();
            shorter.remove(at);
            let decimals = if at < before_point { self.decimals } else { self.decimals.checked_sub(1)? };
            self.changed(whole(&shorter)?, decimals)
        })
    }

    /// What would be printed in its unit for a number that lies at `value`: to its last digit, or to two digits where
    /// nothing but zero would be left.
    pub(super) fn render(&self, value: Fraction) -> Option<String> {
        let finer = (self.decimals..=12).find_map(|decimals| {
            let text = self.render_to(value, decimals)?;
            (text.1 >= 10).then_some(text)
        });
        match self.render_to(value, self.decimals)? {
            (_, 0) => finer.map(|(text, _)| text).or_else(|| Some(format!("0 {}", self.unit.name))),
            (text, _) => Some(text),
        }
    }

    fn render_to(&self, value: Fraction, decimals: u32) -> Option<(String, u128)> {
        let step = self.unit.step(decimals)?;
        // the zero of Fahrenheit is a whole number of steps away
        let zero = self.unit.zero()?.checked_div(step)?;
        let from_zero = value.times(Fraction::new(1, step)?)?.rounded()?.checked_sub(zero)?;
        let (negative, size) = (from_zero < 0, from_zero.unsigned_abs());
        Some((format!("{} {}", written(negative, size, decimals), self.unit.name), size))
    }
}

/// Digits as a whole number.
fn whole(digits: &[u8]) -> Option<u64> {
    core::str::from_utf8(digits).ok()?.parse().ok()
}

/// With one digit another.
fn substituted(digits: &[u8]) -> impl Iterator<Item = u64> + '_ {
    let places = (0..digits.len()).flat_map(|at| (b'0'..=b'9').map(move |digit| (at, digit)));
    places.filter_map(|(at, digit)| {
        let mut other = digits.to_vec();
        let place = other.get_mut(at).filter(|old| **old != digit)?;
        *place = digit;
        whole(&other)
    })
}

/// With two neighbouring digits exchanged.
fn transposed(digits: &[u8]) -> impl Iterator<Item = u64> + '_ {
    let unlike = |at: usize| digits.get(at) != digits.get(at + 1);
    (0..digits.len().saturating_sub(1)).filter(move |at| unlike(*at)).filter_map(|at| {
        let mut other = digits.to_vec();
        other.swap(at, at + 1);
        whole(&other)
    })
}

/// A decimal number, one digit at least before its point.
fn written(negative: bool, size: u128, decimals: u32) -> String {
    let decimals = decimals as usize;
    let digits = format!("{size:0>width$}", width = decimals + 1);
    let (before, behind) = digits.split_at(digits.len() - decimals);
    let sign = if negative { "-" } else { "" };
    let point = if behind.is_empty() { "" } else { "." };
    format!("{sign}{before}{point}{behind}")
}

impl fmt::Display for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let digits = written(self.negative && self.mantissa > 0, self.mantissa.into(), self.decimals);
        write!(f, "{digits} {}", self.unit.name)
    }
}
