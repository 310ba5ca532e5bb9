//! Rows of `stack.csv`: the stack of a row, and what is asked of it.

use gaugepoint::Error;
use gaugepoint::measurement::distribution::Distribution;
use gaugepoint::stack::{Contributor, Stack, ToleranceCost, Toward, Variation, Wanted};

/// A variation from its words, as `tests/reference/stack.py` has them.
fn variation(words: &str) -> Result<Variation, Error> {
    let mut words = words.split_whitespace();
    let kind = words.next().unwrap_or_default();
    let n: Vec<f64> = words.map(crate::named::number).collect();
    match kind {
        "normal" => Variation::about(0.0, Distribution::normal(n[0])?),
        "rectangular" => Variation::about(0.0, Distribution::rectangular(n[0])?),
        "triangular" => Variation::triangular((n[0], n[2]), n[1]),
        "trapezoidal" => Variation::about(0.0, Distribution::trapezoidal(n[0], n[1])?),
        "arcsine" => Variation::about(0.0, Distribution::arcsine(n[0])?),
        "beta" => Variation::beta(n[0], n[1], (n[2], n[3])),
        "truncated" => Variation::truncated_normal(n[0], n[1], (n[2], n[3])),
        "skewed" => Variation::skewed(&n.chunks(2).map(|c| (c[0], c[1])).collect::<Vec<_>>()),
        "sample" => Variation::sample(&n),
        _ => panic!("{kind}"),
    }
}

/// A stack of the terms of a row, each about zero and with limits of -1 and 1.
///
/// # Panics
/// When the words are none of a row.
#[must_use]
pub fn stack_of(terms: &str) -> Stack {
    let contributor = |(k, words): (usize, &str)| {
        Contributor::new(&format!("x{k}"), 0.0, (-1.0, 1.0), variation(words).unwrap()).unwrap()
    };
    Stack::new(terms.split(';').enumerate().map(contributor).collect()).unwrap()
}

/// What a row asks, and the relative error that the library states; 0 where it states none.
///
/// # Errors
/// As the library.
///
/// # Panics
/// When the row is none.
pub fn stack_row(row: &[String]) -> Result<(f64, f64), Error> {
    let (stack, x) = (stack_of(&row[1]), crate::named::number(&row[3]));
    match row[2].as_str() {
        "above" => stack.outside(f64::NEG_INFINITY, x).map(|t| (t.above, t.error)),
        "below" => stack.outside(x, f64::INFINITY).map(|t| (t.below, t.error)),
        "density" => stack.density(x).map(|d| (d, 0.0)),
        "quantile_above" => stack.quantile_above(x).map(|q| (q, 0.0)),
        other => {
            let place = other.strip_prefix("slope_above_").unwrap_or_else(|| panic!("{other}"));
            let slopes = stack.sensitivities(f64::NEG_INFINITY, x)?;
            Ok((slopes[place.parse::<usize>().unwrap()].above, 0.0))
        }
    }
}

/// The deck clearance that the programs of every host ask: invented, mm.
///
/// # Panics
/// Never.
#[must_use]
pub fn deck() -> Stack {
    let about = |d: Result<Distribution, Error>| Variation::about(0.0, d.unwrap()).unwrap();
    let rod = Variation::normal_by_capability((-0.03, 0.03), 1.2, 1.0, Toward::Upper).unwrap();
    let contributor =
        |name, nominal, t: f64, variation| Contributor::new(name, nominal, (-t, t), variation).unwrap();
    let stack = Stack::new(vec![
        contributor("block", 227.0, 0.05, about(Distribution::normal(0.015))),
        contributor("rod", 174.0, 0.03, rod).with_coefficient(-1.0).unwrap(),
        contributor("shims", 21.5, 0.0125, about(Distribution::rectangular(0.01)))
            .with_coefficient(-1.0)
            .unwrap()
            .with_count(2)
            .unwrap(),
    ])
    .unwrap();
    let scale = Distribution::rectangular(0.004).unwrap();
    stack.with_cause("scale", scale, &[("block", 1.0), ("rod", 1.0)]).unwrap()
}

/// What the programs of every host print of it, in their order.
///
/// # Panics
/// When the core refuses.
#[must_use]
pub fn deck_results() -> Vec<(String, f64)> {
    let stack = deck();
    let numbered = |name: &str, values: &[f64]| -> Vec<(String, f64)> {
        values.iter().enumerate().map(|(k, v)| (format!("{name}.{k}"), *v)).collect()
    };
    let (worst, rss) = (stack.worst_case(), stack.root_sum_square(1.0).unwrap());
    let (bender, modified) = (stack.bender(), stack.modified_root_sum_square());
    let mut out = numbered(
        "forms",
        &[
            stack.nominal(),
            stack.mean(),
            stack.standard_deviation(),
            worst.lower,
            worst.upper,
            rss.lower,
            rss.upper,
            bender.lower,
            bender.upper,
            modified.lower,
            modified.upper,
            stack.modified_factor().unwrap(),
        ],
    );
    let name =
        |s: &gaugepoint::stack::Share| format!("shares.{}", s.place + if s.is_shared { 10 } else { 0 });
    out.extend(stack.shares().iter().map(|s| (name(s), s.share)));
    let c = stack.capability(9.9, 10.1).unwrap();
    let tail = [("below", c.tail.below), ("above", c.tail.above), ("ppm", c.tail.ppm())];
    out.extend([("cp", c.cp), ("cpk", c.cpk)].into_iter().chain(tail).map(|(n, v)| (n.to_owned(), v)));
    out.push(("quantile".to_owned(), stack.quantile(0.001).unwrap()));
    let curve = stack.curve(5).unwrap();
    for (k, (size, density)) in curve.sizes.iter().zip(&curve.densities).enumerate() {
        out.push((format!("sizes.{k}"), *size));
        out.push((format!("densities.{k}"), *density));
    }
    out.extend(numbered("bins", &stack.histogram(&[9.9, 9.95, 10.0, 10.05, 10.1]).unwrap()));
    for (k, slope) in stack.sensitivities(9.9, 10.1).unwrap().iter().enumerate() {
        out.push((format!("slopes.{}", 10 + k), slope.below));
        out.push((format!("slopes.{k}"), slope.above));
    }
    for wanted in [Wanted::Outside(1e-6), Wanted::Cpk(1.5)] {
        let made = stack.allocate((9.9, 10.1), wanted, &DECK_COSTS).unwrap();
        out.extend(numbered("tolerances", &made.tolerances));
        let rest = [("cost", made.cost), ("price", made.price), ("ppm", made.tail.ppm())];
        out.extend(rest.map(|(name, value)| (name.to_owned(), value)));
    }
    out
}

/// Invented costs of its block and its shims.
pub const DECK_COSTS: [ToleranceCost; 2] = [
    ToleranceCost { place: 0, fixed: 1.0, factor: 0.02, power: 1.0, least: 0.01, most: 0.2 },
    ToleranceCost { place: 2, fixed: 0.5, factor: 1e-4, power: 2.0, least: 0.002, most: 0.05 },
];
