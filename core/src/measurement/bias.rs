//! Bias of a gauge against parts of known size, and whether the bias depends on the size (linearity). The guide is that of
//! [`study`](super::study).

use super::distribution::{coverage, refused, size};
use super::statistics::{as_number, mean, range, ratio, readable, sample, sum, too_few};
use super::uncertainty::{StraightLine, root_sum_square};
use crate::error::{Error, ErrorKind};
use crate::special::{coverage_factor, t_cdf};

/// Two-sided t test of a value against zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Test {
    /// Ratio of the value to its standard uncertainty.
    pub t: f64,
    /// Probability of a ratio as far from zero by chance, 0 to 1.
    pub p: f64,
}

/// Bias of a gauge at one size. Source: NIST/SEMATECH e-Handbook, 7.2.2 (one-sample t test); measurement systems analysis, fourth edition.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bias {
    /// Mean of the readings less the reference.
    pub bias: f64,
    /// Standard deviation of the readings.
    pub standard_deviation: f64,
    /// Standard uncertainty of the bias: deviation of the mean and uncertainty of the reference.
    pub standard_uncertainty: f64,
    /// Its degrees of freedom, by Welch-Satterthwaite; none when above a million, where t is within 3e-6 of the normal distribution, which is then used.
    pub dof: Option<f64>,
    /// Test of the bias; none when its uncertainty is 0: a resolution too coarse for the study looks like that.
    pub test: Option<Test>,
    /// Confidence interval of the bias.
    pub interval: (f64, f64),
    /// Does zero lie in it? Then no bias is shown.
    pub zero_within: bool,
}

/// With more degrees of freedom the distribution is taken as normal.
const MOST_DOF: f64 = 1e6;

/// Bias of at least two readings of one part, whose reference value has a standard uncertainty (0: it is exact), and its interval of
/// the given coverage, between 0 and 1. All in any one unit.
///
/// # Errors
/// [`ErrorKind::MissingField`], [`ErrorKind::NotFinite`] and [`ErrorKind::OutOfRange`], with the parameter or the place as field: `values/3`.
pub fn bias(
    values: &[f64],
    reference: f64,
    reference_uncertainty: f64,
    coverage: f64,
) -> Result<Bias, Error> {
    let readings = sample(values)?;
    readable(reference, || "reference".to_owned())?;
    let of_reference = size("reference_uncertainty", reference_uncertainty)?;
    let of_mean = readings.deviation_of_mean;
    let differences: Vec<f64> = values.iter().map(|v| v - reference).collect();
    let bias = mean(&differences);
    let u = root_sum_square(&[of_mean, of_reference]);
    let dof = effective_dof(of_mean, u, as_number(values.len() - 1));
    let half = factor(coverage, dof)? * u;
    Ok(Bias {
        bias,
        standard_deviation: readings.standard_deviation,
        standard_uncertainty: u,
        dof: Some(dof).filter(|dof| dof.is_finite()),
        test: against_zero(bias, u, dof),
        interval: (bias - half, bias + half),
        zero_within: bias.abs() <= half,
    })
}

/// Welch-Satterthwaite for the deviation of a mean and an uncertainty that is known. Source: JCGM 100:2008, G.4.1, (G.2b).
fn effective_dof(of_mean: f64, combined: f64, dof: f64) -> f64 {
    or_normal(match ratio(of_mean, combined) {
        // as a ratio: the fourth powers of what is known in metres are outside what a double holds
        Some(share) if share > 1e-50 => dof / (share * share * share * share),
        Some(_) => f64::INFINITY,
        None => dof,
    })
}

fn or_normal(dof: f64) -> f64 {
    if dof > MOST_DOF { f64::INFINITY } else { dof }
}

/// Coverage factor, where there is one.
fn factor(probability: f64, dof: f64) -> Result<f64, Error> {
    let factor = coverage_factor(coverage("coverage", probability)?, or_normal(dof));
    match factor.is_finite() {
        true => Ok(factor),
        false => Err(refused("coverage", probability, "too close to 1", 0.0, 1.0)),
    }
}

fn against_zero(value: f64, u: f64, dof: f64) -> Option<Test> {
    let size = ratio(value.abs(), u)?;
    // beyond that the square of t is outside what a double holds
    let p = if size < 1e100 { 2.0 * t_cdf(-size, or_normal(dof)) } else { 0.0 };
    Some(Test { t: if value < 0.0 { -size } else { size }, p })
}

/// How the bias depends on the size. Source: measurement systems analysis, fourth edition; NIST/SEMATECH e-Handbook, 2.3.5 and 4.1.4.1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Linearity {
    /// Line of the bias on the reference value, by least squares; its origin is 0.
    pub line: StraightLine,
    /// Test of its intercept; none when the line leaves no residuals.
    pub intercept_test: Option<Test>,
    /// Test of its slope; none when the line leaves no residuals.
    pub slope_test: Option<Test>,
    /// Share of the variation of the bias that the line explains; none when the bias does not vary.
    pub r_squared: Option<f64>,
    /// Does zero lie in the confidence band of the mean bias at every reference value? Then no bias is shown at any of them.
    pub zero_within: bool,
    factor: f64,
}

/// Mean bias at a size, by the line. Source: NIST/SEMATECH e-Handbook, 4.5.1.1 (confidence interval of the mean response).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// Mean bias there.
    pub bias: f64,
    /// Its standard uncertainty, without the scatter of a new reading.
    pub standard_uncertainty: f64,
    /// Confidence interval of the mean bias.
    pub interval: (f64, f64),
}

/// Least ratio of the range of the reference values to the largest of them: below it they are one size.
const LEAST_SPREAD: f64 = 1e-9;
/// Least range of the reference values: the square of a smaller one leaves a double.
const LEAST_RANGE: f64 = 1e-50;

/// Linearity from the readings of each of several parts, whose reference values are taken as exact; at least three readings of two
/// sizes. `coverage`, between 0 and 1, is that of the confidence band. All in any one unit.
///
/// # Errors
/// [`ErrorKind::MissingField`], [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`], and [`ErrorKind::Contradiction`] when there are not as
/// many groups of readings as references; with the parameter or the place as field: `references/2`, `readings/2/0`.
pub fn linearity(references: &[f64], readings: &[Vec<f64>], coverage: f64) -> Result<Linearity, Error> {
    let points = points(references, readings)?;
    let line = StraightLine::fit(&points, 0.0)?;
    let (x, y): (Vec<f64>, Vec<f64>) = points.into_iter().unzip();
    let factor = factor(coverage, line.dof)?;
    let explained =
        sum(x.iter().map(|x| (line.slope * (x - line.mean_x)) * (line.slope * (x - line.mean_x))));
    let varies = y.iter().any(|bias| y.first() != Some(bias));
    let mut found = Linearity {
        line,
        intercept_test: against_zero(line.intercept, line.intercept_uncertainty, line.dof),
        slope_test: against_zero(line.slope, line.slope_uncertainty, line.dof),
        r_squared: ratio(explained, explained + line.residual_squares).filter(|_| varies),
        zero_within: true,
        factor,
    };
    for x in references {
        let Band { interval: (lower, upper), .. } = found.at(*x)?;
        found.zero_within &= lower <= 0.0 && upper >= 0.0;
    }
    Ok(found)
}

impl Linearity {
    /// Mean bias at size `x`, with its interval of the coverage that the study was asked for.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`] when `x` is beyond 1e100.
    pub fn at(&self, x: f64) -> Result<Band, Error> {
        let (bias, u) = self.line.at(x)?;
        let half = self.factor * u;
        Ok(Band { bias, standard_uncertainty: u, interval: (bias - half, bias + half) })
    }
}

/// Reference value and bias of every reading.
fn points(references: &[f64], readings: &[Vec<f64>]) -> Result<Vec<(f64, f64)>, Error> {
    references.iter().enumerate().try_for_each(|(g, x)| readable(*x, || format!("references/{g}")))?;
    if references.len() != readings.len() {
        let counts = format!("{} references, {} groups of readings", references.len(), readings.len());
        let reason = "every reference value needs its group of readings";
        return Err(Error::new(ErrorKind::Contradiction, counts, reason).at("readings"));
    }
    if readings.iter().any(Vec::is_empty) || readings.iter().map(Vec::len).sum::<usize>() < 3 {
        return Err(too_few("readings", "at least three readings are needed, and one of every part"));
    }
    let (spread, largest) = (range(references), references.iter().fold(0.0_f64, |a, x| a.max(x.abs())));
    if !(spread > LEAST_RANGE && spread > largest * LEAST_SPREAD) {
        let reason = "a line needs reference values that differ";
        return Err(refused("references", spread, reason, LEAST_RANGE, f64::MAX));
    }
    let mut out = Vec::new();
    for (g, (x, group)) in references.iter().zip(readings).enumerate() {
        for (k, reading) in group.iter().enumerate() {
            let place = || format!("readings/{g}/{k}");
            readable(*reading, place)?;
            readable(reading - x, place)?;
            out.push((*x, reading - x));
        }
    }
    Ok(out)
}
