//! Few terms, of which one is neither a rectangle nor normal: the tail of all others, averaged over that one. Everything added is positive.

use super::kernel::{Kernel, Scaled};
use super::sum::{Asked, Estimate, Sum, Way};
use crate::quadrature::Integral;

/// Relative error of one integral.
const WANTED: f64 = 1e-12;
/// One that is taken where roundings leave no more.
const COARSE: f64 = 3e-10;
/// Most evaluations of one integral.
const MOST_EVALUATIONS: u32 = 6000;
/// Most values of samples enumerated.
pub(super) const MOST_ATOMS: f64 = 1e6;
/// Most corners of the other terms that are looked for.
const MOST_CORNERS: usize = 200;

pub(super) fn at(sum: &Sum, x: (f64, f64), asked: Asked) -> Option<Estimate> {
    let (outer, rest) = split(sum)?;
    if let Some(values) = outer.atoms() {
        return enumerated(&values, &rest, x, asked);
    }
    let others = rest.count() > 0 || rest.variance > 0.0;
    match rest.kernels.len() {
        0 if !others => Some(alone(&outer, x.0, asked)),
        1 if !others => averaged(&outer, &rest, x, asked),
        // integrals are not nested: what is left needs a closed form
        _ if super::closed::terms(&rest) < u64::MAX => averaged(&outer, &rest, x, asked),
        _ => None,
    }
}

pub(super) fn alone(term: &Scaled, x: f64, asked: Asked) -> Estimate {
    let value = match asked {
        Asked::Above => term.above(x),
        Asked::Density => term.density(x),
    };
    // the error of the special functions
    Estimate { value, error: 5e-12 * value }
}

/// A term to integrate over, and the others: a sample first, then the narrowest kernel without a closed form, then the narrowest rectangle.
fn split(sum: &Sum) -> Option<(Scaled, Sum)> {
    let mut widths: Vec<f64> = Vec::new();
    for r in &sum.rectangles {
        widths.extend((0..r.count).map(|_| r.half_width));
    }
    let mut kernels = sum.kernels.clone();
    let narrow = |k: &Scaled| k.ends().1 - k.ends().0;
    crate::order::sort_by(&mut kernels, |a, b| {
        let samples_last = a.atoms().is_some().cmp(&b.atoms().is_some());
        let triangles_first = b.triangle().is_some().cmp(&a.triangle().is_some());
        samples_last.then(triangles_first).then(narrow(b).total_cmp(&narrow(a)))
    });
    let outer = match kernels.pop() {
        Some(kernel) => kernel,
        // the widths stand from the widest down
        None => {
            let a = widths.pop().filter(|_| !widths.is_empty() && widths.len() < 5)?;
            Scaled { kernel: Kernel::beta(1.0, 1.0, -a, a), factor: 1.0, shift: 0.0 }
        }
    };
    Some((outer, Sum::new(&widths, sum.variance, kernels)))
}

fn enumerated(values: &[f64], rest: &Sum, x: (f64, f64), asked: Asked) -> Option<Estimate> {
    let (count, mirror) = (super::number(values.len()), rest.mirrored());
    if rest.enumeration() * count > MOST_ATOMS {
        return None;
    }
    let mut out = Estimate::ZERO;
    for value in values {
        let part = either_side(Sum::at, (rest, &mirror), super::closed::plus(x, -value), asked)?;
        out = Estimate { value: out.value + part.value / count, error: out.error + part.error / count };
    }
    Some(out)
}

/// The rest at any place, also below its mean; a step where nothing is left of it.
pub(super) fn either_side(
    way: Way,
    (rest, mirror): (&Sum, &Sum),
    x: (f64, f64),
    asked: Asked,
) -> Option<Estimate> {
    let nothing = rest.kernels.is_empty() && rest.count() == 0 && rest.variance <= 0.0;
    if nothing {
        let above = if x.0 < 0.0 { 1.0 } else { 0.0 };
        return (asked == Asked::Above).then_some(Estimate { value: above, error: 0.0 });
    }
    let estimate = super::sum::either(way, rest, mirror, x, asked);
    estimate.error.is_finite().then_some(estimate)
}

fn averaged(outer: &Scaled, rest: &Sum, x: (f64, f64), asked: Asked) -> Option<Estimate> {
    let cuts: Vec<f64> = corners(rest).into_iter().map(|c| x.0 - c).collect();
    let mirror = rest.mirrored();
    let worst = core::cell::Cell::new(0.0);
    let evaluations = core::cell::Cell::new(0);
    let f = |v: f64| {
        evaluations.set(evaluations.get() + 1);
        let part = either_side(Sum::plain, (rest, &mirror), super::closed::plus(x, -v), asked);
        let Some(part) = part.filter(|_| evaluations.get() < MOST_EVALUATIONS) else { return f64::NAN };
        if part.value > 0.0 && part.relative() > worst.get() {
            worst.set(part.relative());
        }
        part.value
    };
    // first the size, then the value to a share of it
    let rough = outer.integral_over(&cuts, f64::INFINITY, &f).value;
    if rough.is_nan() || rough <= 0.0 {
        return None;
    }
    // close to an end the places themselves are rounded, and only the second tolerance can be reached
    let to = |wanted: f64| {
        evaluations.set(0);
        let Integral { value, error } = outer.integral_over(&cuts, rough * wanted, &f);
        let error = error + value * (worst.get() + 1e-13);
        value.is_finite().then_some(Estimate { value, error })
    };
    let coarse = || to(COARSE).map(|e| Estimate { error: libm::fmax(e.error, e.value * COARSE), ..e });
    to(WANTED).or_else(coarse)
}

/// Corners of the distribution of a sum: all sums of corners of its terms; about a normal part some distances.
fn corners(sum: &Sum) -> Vec<f64> {
    let mut out = vec![0.0];
    let spread = |out: &mut Vec<f64>, by: &[f64]| {
        if out.len() * by.len() <= MOST_CORNERS {
            *out = out.iter().flat_map(|c| by.iter().map(move |d| c + d)).collect();
        }
    };
    for r in &sum.rectangles {
        for _ in 0..r.count {
            spread(&mut out, &[-r.half_width, r.half_width]);
        }
    }
    for kernel in &sum.kernels {
        spread(&mut out, &kernel.corners());
    }
    if sum.variance > 0.0 {
        let sd = sum.variance.sqrt();
        spread(&mut out, &[-8.0, -3.0, 0.0, 3.0, 8.0].map(|z| z * sd));
    }
    out
}
