//! A quantity over height or depth from rows of a table: the monotone cubic through them.
//!
//! Slopes at the rows are those of Fritsch and Butland (the weighted harmonic mean of the slopes of the neighbouring chords; zero where
//! these differ in sign), with the one-sided end rule of three rows that is kept from overshooting. Between two rows the curve stays between
//! their two values. Source: F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300; the same numbers as SciPy's
//! `PchipInterpolator`.

use crate::calc::{Calc, Figure, Formula, formula};
use crate::error::{Error, ErrorKind};

formula! {
    /// A length between two rows, from the coefficients of the piece that begins at `x0`.
    LengthBetween: v ["mm"] = (v0, v1, v2, v3, x0, x) => v0 + (x - x0) * (v1 + (x - x0) * (v2 + (x - x0) * v3));
        source "cubic Hermite polynomial";
    /// A temperature between two rows, from the coefficients of the piece that begins at `x0`.
    TemperatureBetween: t ["C"] = (t0, t1, t2, t3, x0, x) => t0 + (x - x0) * (t1 + (x - x0) * (t2 + (x - x0) * t3));
        source "cubic Hermite polynomial";
}

/// A monotone cubic through rows; one row is a constant that holds everywhere.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    /// value of the first row
    first: f64,
    pieces: Vec<Piece>,
}

/// Between two rows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Piece {
    /// Place of the first row.
    pub from: f64,
    /// Place of the second row.
    pub to: f64,
    /// `c0 + c1 x + c2 x^2 + c3 x^3`, x from the first row on.
    pub coefficients: [f64; 4],
}

/// Value and derivatives at a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Local {
    /// The value.
    pub value: f64,
    /// First derivative.
    pub slope: f64,
    /// Second derivative; at a row that of the piece it was asked of.
    pub curvature: f64,
}

/// Least distance of two rows, in mm: what is closer is no table, and its slopes would overflow.
const APART: f64 = 1e-6;

impl Curve {
    /// The same value everywhere.
    #[must_use]
    pub fn constant(value: f64) -> Self {
        Curve { first: value, pieces: Vec::new() }
    }

    /// Through rows in rising order of place.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] without rows, [`ErrorKind::Contradiction`] when there are not as many values as places,
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfOrder`]; the field is `places/3` or `values/3`.
    pub fn through(places: &[f64], values: &[f64]) -> Result<Self, Error> {
        check_rows(places, values)?;
        let slopes = slopes(places, values);
        let pieces =
            rows(places, values).zip(slopes.windows(2)).filter_map(|((from, to), slopes)| match slopes {
                [slope, next] => Some(Piece::hermite(from, to, *slope, *next)),
                _ => None,
            });
        Ok(Curve { first: values.first().copied().unwrap_or(f64::NAN), pieces: pieces.collect() })
    }

    /// Straight lines through rows in rising order of place, where nothing says that the curve is smooth.
    ///
    /// # Errors
    /// As [`Curve::through`].
    pub fn lines(places: &[f64], values: &[f64]) -> Result<Self, Error> {
        check_rows(places, values)?;
        let pieces = rows(places, values).map(|(from, to)| Piece::line(from, to)).collect();
        Ok(Curve { first: values.first().copied().unwrap_or(f64::NAN), pieces })
    }

    /// First and last place; everywhere for a constant.
    #[must_use]
    pub fn range(&self) -> (f64, f64) {
        match (self.pieces.first(), self.pieces.last()) {
            (Some(first), Some(last)) => (first.from, last.to),
            _ => (f64::NEG_INFINITY, f64::INFINITY),
        }
    }

    /// The pieces between the rows, rising; none of a constant.
    #[must_use]
    pub fn pieces(&self) -> &[Piece] {
        &self.pieces
    }

    /// The curve less a number.
    #[must_use]
    pub fn less(&self, number: f64) -> Self {
        let lowered = |piece: &Piece| {
            let [c0, c1, c2, c3] = piece.coefficients;
            Piece { coefficients: [c0 - number, c1, c2, c3], ..*piece }
        };
        Curve { first: self.first - number, pieces: self.pieces.iter().map(lowered).collect() }
    }

    /// The curve plus `factor` times another, over the places that both reach.
    ///
    /// # Errors
    /// [`ErrorKind::Contradiction`] when they have no stretch in common.
    pub fn plus(&self, factor: f64, other: &Curve) -> Result<Self, Error> {
        let ((a, b), (c, d)) = (self.range(), other.range());
        let (low, high) = (if a > c { a } else { c }, if b < d { b } else { d });
        if low >= high {
            let reason = "the two tables have no stretch of height in common";
            return Err(Error::new(ErrorKind::Contradiction, format!("{a} to {b}, {c} to {d}"), reason));
        }
        let mut places: Vec<f64> = [low, high].into_iter().filter(|place| place.is_finite()).collect();
        for piece in self.pieces.iter().chain(&other.pieces) {
            places.extend([piece.from, piece.to].into_iter().filter(|place| *place > low && *place < high));
        }
        places.sort_by(f64::total_cmp);
        places.dedup();
        let between = |pair: &[f64]| match pair {
            [from, to] => Some(self.between(*from, *to).plus(factor, &other.between(*from, *to))),
            _ => None,
        };
        let pieces: Vec<Piece> = places.windows(2).filter_map(between).collect();
        let first = pieces.first().map_or(self.first + factor * other.first, |piece| piece.value(piece.from));
        Ok(Curve { first, pieces })
    }

    /// Place and value where `measure` of the value is largest between two places, of several the lowest.
    ///
    /// `measure` grows with the value or with its distance from zero, so that it is largest at an end or where the curve is level.
    #[must_use]
    pub(crate) fn largest(&self, from: f64, to: f64, measure: impl Fn(f64) -> f64) -> (f64, f64) {
        let inside = |place: &f64| *place > from && *place < to;
        let mut places = vec![from];
        for piece in &self.pieces {
            places.extend([piece.from].iter().chain(&piece.level()).copied().filter(inside));
        }
        places.push(to);
        let start = (from, self.value(from));
        places
            .into_iter()
            .map(|place| (place, self.value(place)))
            .fold(start, |best, next| if measure(next.1) > measure(best.1) { next } else { best })
    }

    /// The part of the curve between two places of one piece, counted from the first of them.
    fn between(&self, from: f64, to: f64) -> Piece {
        let constant = Piece { from, to, coefficients: [self.first, 0.0, 0.0, 0.0] };
        self.piece((from + to) / 2.0).map_or(constant, |piece| {
            let ([_, _, _, c3], local) = (piece.coefficients, piece.local(from));
            Piece { from, to, coefficients: [local.value, local.slope, local.curvature / 2.0, c3] }
        })
    }

    /// Value at a place.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] outside the rows: nothing is known there.
    pub fn at(&self, place: f64) -> Result<f64, Error> {
        self.check(place)?;
        Ok(self.value(place))
    }

    /// Refuses a place outside the rows.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] with the range of the rows.
    pub fn check(&self, place: f64) -> Result<(), Error> {
        let (low, high) = self.range();
        match place >= low && place <= high {
            true => Ok(()),
            false => {
                let error =
                    Error::new(ErrorKind::OutOfRange, place.to_string(), "the table does not reach there");
                Err(error.value(place).limits(low, high, "mm").at("place"))
            }
        }
    }

    /// Value at a place that was checked; beyond the rows the outer pieces go on.
    #[must_use]
    pub fn value(&self, place: f64) -> f64 {
        self.piece(place).map_or(self.first, |piece| piece.value(place))
    }

    /// Value and derivatives at a place that was checked.
    #[must_use]
    pub fn local(&self, place: f64) -> Local {
        let constant = Local { value: self.first, slope: 0.0, curvature: 0.0 };
        self.piece(place).map_or(constant, |piece| piece.local(place))
    }

    /// The piece a place lies in, of two that meet there the lower one; none of a constant.
    #[must_use]
    pub fn piece(&self, place: f64) -> Option<&Piece> {
        let k = self.pieces.partition_point(|piece| piece.to < place);
        self.pieces.get(k).or(self.pieces.last())
    }

    /// A length with its step in the working.
    pub(crate) fn length(&self, calc: &mut Calc, place: Figure) -> Figure {
        match self.piece(place.value) {
            None => calc.constant("v", self.first, "mm", "the same everywhere"),
            Some(piece) => {
                let arguments =
                    piece.figures(calc, ["v0", "v1", "v2", "v3"], ["mm", "1", "1/mm", "1/mm2"], place);
                calc.figure(LengthBetween, arguments)
            }
        }
    }

    /// A temperature with its step in the working.
    pub(crate) fn temperature(&self, calc: &mut Calc, place: Figure) -> Figure {
        match self.piece(place.value) {
            None => calc.constant("t", self.first, "C", "the same everywhere"),
            Some(piece) => {
                let arguments =
                    piece.figures(calc, ["t0", "t1", "t2", "t3"], ["C", "K/mm", "K/mm2", "K/mm3"], place);
                calc.figure(TemperatureBetween, arguments)
            }
        }
    }
}

impl Piece {
    /// A straight line between two rows.
    fn line((from, value): (f64, f64), (to, next_value): (f64, f64)) -> Self {
        Piece { from, to, coefficients: [value, (next_value - value) / (to - from), 0.0, 0.0] }
    }

    /// Between two rows with given slopes.
    fn hermite((from, value): (f64, f64), (to, next_value): (f64, f64), slope: f64, next_slope: f64) -> Self {
        let width = to - from;
        let chord = (next_value - value) / width;
        let second = (chord * 3.0 - slope * 2.0 - next_slope) / width;
        let third = (slope + next_slope - chord * 2.0) / width / width;
        Piece { from, to, coefficients: [value, slope, second, third] }
    }

    /// Places at which the piece is level, within it; a piece that is level all along has none that its ends do not tell.
    fn level(&self) -> Vec<f64> {
        let [_, c1, c2, c3] = self.coefficients;
        // c1 + 2 c2 x + 3 c3 x^2 = 0, by the sum that does not cancel
        let square = c2 * c2 - 3.0 * c1 * c3;
        if square < 0.0 {
            return Vec::new();
        }
        let sum = -(c2 + if c2 < 0.0 { -square.sqrt() } else { square.sqrt() });
        // a quotient is only made when it lies within: a host may trap a division by zero, or an overflow
        let width = self.to - self.from;
        let inside = |(above, below): &(f64, f64)| {
            above.abs() < width * below.abs() && (*above < 0.0) == (*below < 0.0) && *above != 0.0
        };
        let places = [(sum, 3.0 * c3), (c1, sum)].into_iter().filter(inside);
        places.map(|(above, below)| self.from + above / below).collect()
    }

    /// The sum with `factor` times another piece over the same places.
    fn plus(&self, factor: f64, other: &Piece) -> Self {
        let ([a0, a1, a2, a3], [b0, b1, b2, b3]) = (self.coefficients, other.coefficients);
        let coefficients = [a0 + factor * b0, a1 + factor * b1, a2 + factor * b2, a3 + factor * b3];
        Piece { coefficients, ..*self }
    }

    /// Value at a place.
    #[must_use]
    pub fn value(&self, place: f64) -> f64 {
        let [c0, c1, c2, c3] = self.coefficients;
        LengthBetween::evaluate([c0, c1, c2, c3, self.from, place])
    }

    /// Value and derivatives at a place.
    #[must_use]
    pub fn local(&self, place: f64) -> Local {
        let ([_, c1, c2, c3], x) = (self.coefficients, place - self.from);
        Local {
            value: self.value(place),
            slope: c1 + x * (c2 * 2.0 + x * (c3 * 3.0)),
            curvature: c2 * 2.0 + x * (c3 * 6.0),
        }
    }

    fn figures(
        &self,
        calc: &mut Calc,
        symbols: [&str; 4],
        units: [&'static str; 4],
        place: Figure,
    ) -> [Figure; 6] {
        let ([s0, s1, s2, s3], [u0, u1, u2, u3], [c0, c1, c2, c3]) = (symbols, units, self.coefficients);
        let rule = "monotone cubic through the rows of the table";
        [
            calc.constant(s0, c0, u0, rule),
            calc.constant(s1, c1, u1, rule),
            calc.constant(s2, c2, u2, rule),
            calc.constant(s3, c3, u3, rule),
            calc.constant("x0", self.from, "mm", "row of the table"),
            place,
        ]
    }
}

/// There are rows, of finite numbers, and their places rise.
fn check_rows(places: &[f64], values: &[f64]) -> Result<(), Error> {
    if places.len() != values.len() {
        let reason = format!("there are {} places", places.len());
        return Err(Error::new(ErrorKind::Contradiction, values.len().to_string(), reason).at("values"));
    }
    if places.is_empty() {
        return Err(Error::new(ErrorKind::MissingField, "places", "a curve needs a row").at("places"));
    }
    for (field, numbers) in [("places", places), ("values", values)] {
        if let Some((k, bad)) = numbers.iter().enumerate().find(|(_, v)| !v.is_finite()) {
            let error = Error::new(ErrorKind::NotFinite, bad.to_string(), "a number is needed");
            return Err(error.at(&format!("{field}/{k}")));
        }
    }
    if let Some((k, pair)) =
        places.windows(2).enumerate().find(|(_, pair)| !matches!(pair, [a, b] if *b - *a >= APART))
    {
        let at = pair.last().copied().unwrap_or(f64::NAN);
        let reason = "places must rise, by a nanometre at least";
        let error = Error::new(ErrorKind::OutOfOrder, at.to_string(), reason).value(at);
        return Err(error.at(&format!("places/{}", k + 1)));
    }
    Ok(())
}

/// Each row with the next one.
fn rows(places: &[f64], values: &[f64]) -> impl Iterator<Item = ((f64, f64), (f64, f64))> {
    let row = || places.iter().copied().zip(values.iter().copied());
    row().zip(row().skip(1))
}

/// Slopes at the rows.
fn slopes(places: &[f64], values: &[f64]) -> Vec<f64> {
    let widths: Vec<f64> = places.windows(2).filter_map(difference).collect();
    let rises = values.windows(2).filter_map(difference);
    let chords: Vec<f64> = rises.zip(&widths).map(|(rise, width)| rise / width).collect();
    let (first, last) = match (widths.as_slice(), chords.as_slice()) {
        ([h0, h1, ..], [m0, m1, ..]) => {
            let backwards = |numbers: &[f64]| (numbers.last().copied(), numbers.iter().rev().nth(1).copied());
            let last = match (backwards(&widths), backwards(&chords)) {
                ((Some(h), Some(g)), (Some(m), Some(n))) => end_slope(h, g, m, n),
                _ => 0.0,
            };
            (end_slope(*h0, *h1, *m0, *m1), last)
        }
        (_, [chord]) => (*chord, *chord),
        _ => return vec![0.0; places.len()],
    };
    let inner = widths.windows(2).zip(chords.windows(2)).map(|(h, m)| match (h, m) {
        ([h0, h1], [m0, m1]) => inner_slope(*h0, *h1, *m0, *m1),
        _ => 0.0,
    });
    core::iter::once(first).chain(inner).chain([last]).collect()
}

fn difference(pair: &[f64]) -> Option<f64> {
    match pair {
        [a, b] => Some(b - a),
        _ => None,
    }
}

/// Weighted harmonic mean of the slopes of two chords.
fn inner_slope(h0: f64, h1: f64, m0: f64, m1: f64) -> f64 {
    if !((m0 > 0.0 && m1 > 0.0) || (m0 < 0.0 && m1 < 0.0)) {
        return 0.0;
    }
    let (w0, w1) = (2.0 * h1 + h0, h1 + 2.0 * h0);
    (w0 + w1) / (w0 / m0 + w1 / m1)
}

/// Slope of the parabola through three rows at the first, kept from overshooting.
fn end_slope(h0: f64, h1: f64, m0: f64, m1: f64) -> f64 {
    let slope = ((2.0 * h0 + h1) * m0 - h0 * m1) / (h0 + h1);
    let opposite = |a: f64, b: f64| !((a > 0.0 && b > 0.0) || (a < 0.0 && b < 0.0) || (a == 0.0 && b == 0.0));
    if opposite(slope, m0) {
        0.0
    } else if opposite(m0, m1) && slope.abs() > 3.0 * m0.abs() {
        3.0 * m0
    } else {
        slope
    }
}
