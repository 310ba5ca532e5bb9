//! A law of expansion as pieces of polynomials: the same strain, ready to be asked for thousands of times, with bounds of its slope and bend.

use super::law::{Form, Law, Row};
use crate::shape::least::{larger, smaller};
use crate::size::REFERENCE_TEMPERATURE_C;

/// Kelvin at 0 C.
const ZERO_C: f64 = 273.15;

/// The strain of a law over its range.
///
/// It is that of the law to rounding; what a report states with its working is computed by the law itself.
#[derive(Debug, Clone, PartialEq)]
pub struct Piecewise {
    pieces: Vec<Piece>,
    range: (f64, f64),
}

/// `c0 + c1 x + c2 x^2 + ...`, x in kelvin from the beginning of the piece.
#[derive(Debug, Clone, PartialEq)]
struct Piece {
    from: f64,
    to: f64,
    coefficients: Vec<f64>,
}

impl Piecewise {
    /// The strain of a law.
    #[must_use]
    pub fn of(law: &Law) -> Self {
        let (from, to) = law.range();
        let range = (from.celsius(), to.celsius());
        Piecewise { pieces: pieces(law, range), range }
    }

    /// Lowest and highest temperature, in C.
    #[must_use]
    pub fn range(&self) -> (f64, f64) {
        self.range
    }

    /// Strain from 20 C at a temperature that was checked.
    #[must_use]
    pub fn strain(&self, celsius: f64) -> f64 {
        self.piece(celsius).map_or(f64::NAN, |p| p.value(celsius - p.from))
    }

    /// Strain, slope and second derivative at a temperature that was checked; at a kink those below it.
    #[must_use]
    pub fn local(&self, celsius: f64) -> [f64; 3] {
        self.piece(celsius).map_or([f64::NAN; 3], |p| p.local(celsius - p.from))
    }

    /// Lowest and highest strain, slope and second derivative between two temperatures, or wider; kinks apart.
    #[must_use]
    pub fn ranges(&self, low: f64, high: f64) -> [(f64, f64); 3] {
        // a temperature beyond the law by rounding is that of its end
        let (low, high) = (smaller(low, self.range.1), larger(high, self.range.0));
        let mut out = [(f64::INFINITY, f64::NEG_INFINITY); 3];
        for piece in self.pieces.iter().filter(|p| p.from <= high && p.to >= low) {
            let (x0, x1) = (larger(low - piece.from, 0.0), smaller(high - piece.from, piece.to - piece.from));
            for (range, order) in out.iter_mut().zip(0..) {
                let (least, most) = piece.range(order, x0, x1);
                *range = (smaller(range.0, least), larger(range.1, most));
            }
        }
        out
    }

    /// By how much the slope falls and by how much it rises at the kinks between two temperatures, together.
    #[must_use]
    pub fn jumps(&self, low: f64, high: f64) -> (f64, f64) {
        let mut out = (0.0, 0.0);
        for pair in self.pieces.windows(2) {
            if let [below, above] = pair
                && above.from >= low
                && above.from <= high
            {
                let ([_, after, _], [_, before, _]) = (above.local(0.0), below.local(below.to - below.from));
                let jump = after - before;
                if jump < 0.0 {
                    out.0 -= jump;
                } else {
                    out.1 += jump;
                }
            }
        }
        out
    }

    fn piece(&self, celsius: f64) -> Option<&Piece> {
        let k = match self.pieces.as_slice() {
            [_] => 0,
            pieces => pieces.partition_point(|p| p.to < celsius).min(pieces.len().saturating_sub(1)),
        };
        self.pieces.get(k)
    }
}

impl Piece {
    fn value(&self, x: f64) -> f64 {
        self.coefficients.iter().rev().fold(0.0, |sum, c| sum * x + c)
    }

    /// Value, slope and second derivative, by Horner's rule.
    fn local(&self, x: f64) -> [f64; 3] {
        let down =
            |[value, slope, half]: [f64; 3], c: &f64| [value * x + c, slope * x + value, half * x + slope];
        let [value, slope, half] = self.coefficients.iter().rev().fold([0.0; 3], down);
        [value, slope, 2.0 * half]
    }

    /// Coefficients of a derivative: 0 is the strain itself.
    fn derivative(&self, order: u32) -> impl Iterator<Item = f64> + '_ {
        self.coefficients.iter().enumerate().skip(order as usize).map(move |(n, c)| {
            #[expect(clippy::cast_precision_loss, reason = "a degree is far below 2^53")]
            let n = n as f64;
            let factor = match order {
                0 => 1.0,
                1 => n,
                _ => n * (n - 1.0),
            };
            c * factor
        })
    }

    /// At least every value of a derivative between two places, neither below 0: there every term is largest and smallest at an end.
    fn range(&self, order: u32, x0: f64, x1: f64) -> (f64, f64) {
        let (mut p0, mut p1) = (1.0, 1.0);
        let (mut low, mut high) = (0.0, 0.0);
        for c in self.derivative(order) {
            let (a, b) = (c * p0, c * p1);
            low += smaller(a, b);
            high += larger(a, b);
            p0 *= x0;
            p1 *= x1;
        }
        (low, high)
    }
}

fn pieces(law: &Law, (from, to): (f64, f64)) -> Vec<Piece> {
    let whole = |coefficients: Vec<f64>| vec![Piece { from, to, coefficients }];
    match &law.0 {
        Form::MeanCoefficient { base, value, .. } => {
            let off = value * (REFERENCE_TEMPERATURE_C - base);
            whole(vec![law.strain_at(from), value / (1.0 + off)])
        }
        Form::MeanTable { base, rows } => {
            let a20 = law.mean_at_20();
            let off = a20 * (REFERENCE_TEMPERATURE_C - base);
            between(rows, |row, rise| {
                let way = row.temperature - base;
                let [c0, c1, c2] = [row.value * way - off, row.value + rise * way, rise];
                vec![c0 / (1.0 + off), c1 / (1.0 + off), c2 / (1.0 + off)]
            })
        }
        Form::InstantaneousTable { rows } => {
            between(rows, |row, rise| vec![law.strain_at(row.temperature), row.value, rise / 2.0])
        }
        Form::InstantaneousPolynomial { coefficients, .. } => {
            let integral =
                core::iter::once(0.0).chain(coefficients.iter().zip(1_u32..).map(|(c, n)| c / f64::from(n)));
            whole(at_place(integral.collect(), from, law.strain_at(from), 1.0))
        }
        Form::StrainPolynomial { coefficients, .. } => {
            let kelvin = REFERENCE_TEMPERATURE_C + ZERO_C;
            let at_20 = 1.0 + coefficients.iter().rev().fold(0.0, |sum, c| sum * kelvin + c);
            whole(at_place(coefficients.clone(), from, law.strain_at(from), at_20))
        }
        // a coefficient that is a parabola: the bend is a straight line
        Form::GraphiteIron { .. } => {
            let bend = law.curvature_at(from);
            let third = (law.curvature_at(to) - bend) / (to - from);
            whole(vec![law.strain_at(from), law.slope_at(from), bend / 2.0, third / 6.0])
        }
    }
}

/// A piece between every two rows, from the lower one and the rise of its value per kelvin; a table of one row is that one temperature.
fn between(rows: &[Row<f64>], of: impl Fn(&Row<f64>, f64) -> Vec<f64>) -> Vec<Piece> {
    if let [only] = rows {
        return vec![Piece { from: only.temperature, to: only.temperature, coefficients: of(only, 0.0) }];
    }
    let piece = |pair: &[Row<f64>]| match pair {
        [row, next] => {
            let rise = (next.value - row.value) / (next.temperature - row.temperature);
            Some(Piece { from: row.temperature, to: next.temperature, coefficients: of(row, rise) })
        }
        _ => None,
    };
    rows.windows(2).filter_map(piece).collect()
}

/// A polynomial in kelvin as one in the way from a temperature on, over a divisor; its first coefficient is known.
fn at_place(mut coefficients: Vec<f64>, from_c: f64, first: f64, divisor: f64) -> Vec<f64> {
    let place = from_c + ZERO_C;
    let count = coefficients.len();
    // Horner's rule again and again: what is left over are the coefficients about the place
    for done in 0..count {
        for k in (done..count.saturating_sub(1)).rev() {
            let next = coefficients.get(k + 1).copied().unwrap_or_default();
            if let Some(c) = coefficients.get_mut(k) {
                *c += next * place;
            }
        }
    }
    let mut out: Vec<f64> = coefficients.into_iter().map(|c| c / divisor).collect();
    if let Some(c) = out.first_mut() {
        *c = first;
    }
    out
}
