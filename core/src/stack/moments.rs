//! Moments: central ones of a contributor, and those of a polynomial of second degree in independent contributors.

use super::kernel::Node;
use crate::measurement::distribution::Shape;
use crate::measurement::statistics::sum;
use std::collections::BTreeMap;

/// Central moments: place `k` has that of order `k`.
pub(super) type Moments = [f64; 9];

/// Of a symmetric shape: closed forms; triangle and trapezoid are sums of two rectangles. Source: definitions.
pub(super) fn of_shape(shape: Shape) -> Moments {
    match shape {
        Shape::Normal { standard_deviation } => even(standard_deviation, [1.0, 3.0, 15.0, 105.0]),
        Shape::Rectangular { half_width } => rectangle(half_width),
        Shape::Triangular { half_width } => added(&rectangle(half_width / 2.0), &rectangle(half_width / 2.0)),
        Shape::Trapezoidal { half_width, beta } => {
            let half = half_width / 2.0;
            added(&rectangle(half * (1.0 + beta)), &rectangle(half * (1.0 - beta)))
        }
        Shape::Arcsine { half_width } => even(half_width, [1.0 / 2.0, 3.0 / 8.0, 5.0 / 16.0, 35.0 / 128.0]),
        // refused where a contributor is made
        Shape::StudentT { .. } | Shape::CurvilinearTrapezoid { .. } => [f64::NAN; 9],
    }
}

fn rectangle(half_width: f64) -> Moments {
    even(half_width, [1.0 / 3.0, 1.0 / 5.0, 1.0 / 7.0, 1.0 / 9.0])
}

/// Of a symmetric distribution, from its moments in units of a size.
fn even(size: f64, [m2, m4, m6, m8]: [f64; 4]) -> Moments {
    let q = size * size;
    [1.0, 0.0, m2 * q, 0.0, m4 * q * q, 0.0, m6 * q * q * q, 0.0, m8 * q * q * q * q]
}

/// Of a sum of two independent terms about zero.
fn added(a: &Moments, b: &Moments) -> Moments {
    let mut out = [0.0; 9];
    for (k, place) in out.iter_mut().enumerate() {
        let mut choose = 1.0;
        for j in 0..=k {
            *place += choose * a.get(j).copied().unwrap_or(0.0) * b.get(k - j).copied().unwrap_or(0.0);
            choose = choose * super::number(k - j) / super::number(j + 1);
        }
    }
    out
}

/// Of values with weights.
pub(super) fn of_nodes(nodes: &[Node]) -> Moments {
    let weighted = |f: &dyn Fn(f64) -> f64| sum(nodes.iter().map(|(v, ln)| f(*v) * libm::exp(*ln)));
    let mean = weighted(&|v| v);
    let mut out = [1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0];
    for (k, place) in (0..).zip(&mut out).skip(2) {
        *place = weighted(&|v| crate::measurement::jet::power(v - mean, k));
    }
    out
}

/// Powers of the contributors in a product, in order.
type Powers = Vec<(usize, u8)>;

/// A polynomial in independent contributors.
#[derive(Debug, Clone, Default)]
pub(super) struct Polynomial(BTreeMap<Powers, f64>);

impl Polynomial {
    /// `sum of f_i x_i + 1/2 sum of f_ij x_i x_j`, `hessian` the lower triangle row by row.
    pub(super) fn second_degree(gradient: &[f64], hessian: &[f64]) -> Self {
        let mut out = Polynomial::default();
        for (i, slope) in gradient.iter().enumerate() {
            out.add(vec![(i, 1)], *slope);
        }
        let mut terms = hessian.iter();
        for i in 0..gradient.len() {
            for (j, second) in (0..=i).zip(&mut terms) {
                match i == j {
                    true => out.add(vec![(i, 2)], second / 2.0),
                    false => out.add(vec![(j, 1), (i, 1)], *second),
                }
            }
        }
        out
    }

    fn add(&mut self, powers: Powers, factor: f64) {
        if factor != 0.0 {
            *self.0.entry(powers).or_insert(0.0) += factor;
        }
    }

    /// The same plus a number.
    pub(super) fn shifted(mut self, by: f64) -> Self {
        self.add(Vec::new(), by);
        self
    }

    pub(super) fn times(&self, other: &Polynomial) -> Polynomial {
        let mut out = Polynomial::default();
        for (a, x) in &self.0 {
            for (b, y) in &other.0 {
                out.add(product(a, b), x * y);
            }
        }
        out
    }

    pub(super) fn terms(&self) -> usize {
        self.0.len()
    }

    /// Expected value of the product with another.
    pub(super) fn expected(&self, other: &Polynomial, moments: &[Moments]) -> f64 {
        let terms = |(a, x): (&Powers, &f64)| {
            let (a, x) = (a.clone(), *x);
            other.0.iter().map(move |(b, y)| x * y * mean(&a, b, moments))
        };
        sum(self.0.iter().flat_map(terms))
    }
}

/// Expected value of a product of two products.
fn mean(a: &[(usize, u8)], b: &[(usize, u8)], moments: &[Moments]) -> f64 {
    let of = |i: usize, power: u8| {
        moments.get(i).and_then(|m| m.get(usize::from(power))).copied().unwrap_or(f64::NAN)
    };
    let (mut a, mut b) = (a.iter().peekable(), b.iter().peekable());
    let mut out = 1.0;
    while let Some((i, power)) = match (a.peek(), b.peek()) {
        (Some((i, _)), Some((j, _))) if i < j => a.next().copied(),
        (Some((i, _)), Some((j, _))) if i > j => b.next().copied(),
        (Some((i, p)), Some((_, q))) => {
            let both = Some((*i, p + q));
            a.next();
            b.next();
            both
        }
        (Some(_), None) => a.next().copied(),
        (None, _) => b.next().copied(),
    } {
        out *= of(i, power);
    }
    out
}

fn product(a: &Powers, b: &Powers) -> Powers {
    let mut out = a.clone();
    for (i, power) in b {
        match out.binary_search_by_key(i, |(j, _)| *j) {
            Ok(place) => {
                if let Some((_, own)) = out.get_mut(place) {
                    *own += power;
                }
            }
            Err(place) => out.insert(place, (*i, *power)),
        }
    }
    out
}
