//! Means, deviations and one-way analysis of variance that keep the digits the data have.
//!
//! Everything is computed from differences to the first value, which are exact in double precision where the digits of
//! the data would otherwise be lost; sums carry their rounding along (Neumaier). NIST StRD univariate and one-way sets are
//! met to the digits that their double-precision data allow (`tests/study.rs`).

use crate::error::{Error, ErrorKind};

/// Mean and spread of a sample.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// Number of values.
    pub count: usize,
    /// Arithmetic mean. Source: JCGM 100:2008, 4.2.1.
    pub mean: f64,
    /// Experimental standard deviation, `count - 1` degrees of freedom. Source: JCGM 100:2008, 4.2.2.
    pub standard_deviation: f64,
    /// Standard deviation of the mean. Source: JCGM 100:2008, 4.2.3.
    pub deviation_of_mean: f64,
    /// Correlation of each value with the next. Source: NIST/SEMATECH e-Handbook, 1.3.5.12.
    pub lag_1_correlation: f64,
}

/// One-way analysis of variance. Source: NIST/SEMATECH e-Handbook, 7.4.3.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OneWay {
    /// Sum of squares between groups.
    pub between: f64,
    /// Degrees of freedom between groups.
    pub between_dof: f64,
    /// Sum of squares within groups.
    pub within: f64,
    /// Degrees of freedom within groups.
    pub within_dof: f64,
    /// Ratio of the mean squares; none when nothing varies within the groups.
    pub f: Option<f64>,
    /// Share of the variation that is between groups; none when nothing varies at all.
    pub r_squared: Option<f64>,
    /// Pooled standard deviation within groups. Source: JCGM 100:2008, 4.2.4 (pooled estimate).
    pub pooled_deviation: f64,
}

/// Mean and spread of at least two finite values.
///
/// # Errors
/// [`ErrorKind::MissingField`] with fewer than two values, [`ErrorKind::NotFinite`] with the place of the value as field.
pub fn sample(values: &[f64]) -> Result<Sample, Error> {
    values.iter().enumerate().try_for_each(|(k, v)| readable(*v, || format!("values/{k}")))?;
    let [shift, _, ..] = *values else {
        return Err(too_few("values", "at least two values are needed"));
    };
    let count = as_number(values.len());
    let differences: Vec<f64> = values.iter().map(|v| v - shift).collect();
    let mean = sum(differences.iter().copied()) / count;
    let squares = squares_about(&differences, mean);
    let pairs = differences.iter().zip(differences.iter().skip(1));
    let products = sum(pairs.map(|(a, b)| (a - mean) * (b - mean)));
    let standard_deviation = (squares / (count - 1.0)).sqrt();
    Ok(Sample {
        count: values.len(),
        mean: shift + mean,
        standard_deviation,
        deviation_of_mean: standard_deviation / count.sqrt(),
        lag_1_correlation: if squares > 0.0 { products / squares } else { 0.0 },
    })
}

/// One-way analysis of variance of at least two groups with at least one value each and two in one of them.
///
/// # Errors
/// [`ErrorKind::MissingField`] when there are too few groups or values, [`ErrorKind::NotFinite`] with the place of the value as
/// field: `groups/GROUP/PLACE`.
pub fn one_way(groups: &[Vec<f64>]) -> Result<OneWay, Error> {
    for (g, group) in groups.iter().enumerate() {
        group.iter().enumerate().try_for_each(|(k, v)| readable(*v, || format!("groups/{g}/{k}")))?;
    }
    let all: Vec<f64> = groups.iter().flatten().copied().collect();
    let shift = all.first().copied().unwrap_or_default();
    if groups.len() < 2 || groups.iter().any(Vec::is_empty) || all.len() <= groups.len() {
        let reason = "at least two groups, none empty, and more values than groups are needed";
        return Err(too_few("groups", reason));
    }
    let shifted: Vec<Vec<f64>> = groups.iter().map(|g| g.iter().map(|v| v - shift).collect()).collect();
    let means: Vec<f64> = shifted.iter().map(|g| sum(g.iter().copied()) / as_number(g.len())).collect();
    let grand = sum(shifted.iter().flatten().copied()) / as_number(all.len());
    let within = sum(shifted.iter().zip(&means).map(|(g, m)| squares_about(g, *m)));
    let between =
        sum(shifted.iter().zip(&means).map(|(g, m)| as_number(g.len()) * (m - grand) * (m - grand)));
    let (between_dof, within_dof) = (as_number(groups.len() - 1), as_number(all.len() - groups.len()));
    Ok(OneWay {
        between,
        between_dof,
        within,
        within_dof,
        f: ratio(between / between_dof, within / within_dof),
        r_squared: ratio(between, between + within),
        pooled_deviation: (within / within_dof).sqrt(),
    })
}

/// Sum of squares about a mean, with the correction for the rounding of that mean.
pub(super) fn squares_about(values: &[f64], mean: f64) -> f64 {
    let squares = sum(values.iter().map(|v| (v - mean) * (v - mean)));
    let rest = sum(values.iter().map(|v| v - mean));
    squares - rest * rest / as_number(values.len())
}

/// Arithmetic mean, from differences to the first value.
pub(super) fn mean(values: &[f64]) -> f64 {
    let shift = values.first().copied().unwrap_or_default();
    shift + sum(values.iter().map(|v| v - shift)) / as_number(values.len())
}

/// Largest less smallest value.
pub(super) fn range(values: &[f64]) -> f64 {
    let largest = values.iter().copied().fold(f64::NEG_INFINITY, |a, b| if b > a { b } else { a });
    let smallest = values.iter().copied().fold(f64::INFINITY, |a, b| if b < a { b } else { a });
    largest - smallest
}

/// Sum that carries the rounding of each addition along. Source: Neumaier, ZAMM 54 (1974).
pub(crate) fn sum(values: impl Iterator<Item = f64>) -> f64 {
    let (mut sum, mut rest) = (0.0_f64, 0.0_f64);
    for value in values {
        let next = sum + value;
        rest += if sum.abs() >= value.abs() { (sum - next) + value } else { (value - next) + sum };
        sum = next;
    }
    sum + rest
}

#[expect(clippy::cast_precision_loss, reason = "a count of readings is far below 2^53")]
pub(crate) fn as_number(count: usize) -> f64 {
    count as f64
}

/// A ratio of squares; none to nothing, or to next to nothing: division and overflow must not reach a host that traps them.
pub(super) fn ratio(above: f64, below: f64) -> Option<f64> {
    (below > above * 1e-290 && below > 0.0).then(|| above / below)
}

/// Refuses what is not finite, or too large to be squared.
pub(super) fn readable(value: f64, place: impl FnOnce() -> String) -> Result<(), Error> {
    match value.abs() < 1e100 {
        true => Ok(()),
        false => {
            let reason = "a finite number below 1e100 is needed";
            Err(Error::new(ErrorKind::NotFinite, value.to_string(), reason).at(&place()))
        }
    }
}

pub(crate) fn too_few(field: &str, reason: &str) -> Error {
    Error::new(ErrorKind::MissingField, "", reason).at(field)
}
