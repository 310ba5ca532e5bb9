//! Probabilities from trials, with intervals that say how far they can be trusted.

use super::distribution::{coverage, within};
use super::monte_carlo::{Part, Tally};
use super::points::Points;
use super::statistics::{self, as_number, too_few};
use crate::error::{Error, ErrorKind};
use crate::special::{coverage_factor, f_quantile, normal_quantile};

/// Fewest effective trials beyond a limit of an importance sample that says something of its own error.
const LEAST_EFFECTIVE: f64 = 100.0;

/// A probability as the share of the trials, with its interval of Clopper and Pearson, which covers with at least its confidence.
/// Source: Clopper and Pearson, Biometrika 26 (1934); by the F distribution.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Proportion {
    /// Trials that it happened in.
    pub count: u64,
    /// Share of the trials.
    pub probability: f64,
    /// Lower end of the interval.
    pub lower: f64,
    /// Upper end of the interval.
    pub upper: f64,
}

/// Shares of the trials outside two limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outside {
    /// Below the lower limit.
    pub below: Proportion,
    /// Above the upper limit.
    pub above: Proportion,
}

/// A mean of weights or of independent runs, with its interval.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mean {
    /// The mean.
    pub mean: f64,
    /// Its standard deviation.
    pub standard_error: f64,
    /// Lower end of the interval, not below zero for a probability.
    pub lower: f64,
    /// Upper end of the interval.
    pub upper: f64,
    /// `(sum of weights)^2 / sum of squares`: how many trials of equal weight would say as much. Source: Kish, Survey Sampling (1965).
    pub effective: f64,
}

impl Part {
    /// Shares of the trials below `lower` and above `upper`, infinite where there is no limit.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`], [`ErrorKind::OutOfOrder`]; [`ErrorKind::Contradiction`] for trials that are not independent: of those, see [`Mean::of_runs`].
    pub fn outside(&self, lower: f64, upper: f64, confidence: f64) -> Result<Outside, Error> {
        let confidence = coverage("confidence", confidence)?;
        check_limits((lower, upper))?;
        check_independent(self.points())?;
        let share = |which: &dyn Fn(f64) -> bool| {
            let count = self.values().iter().filter(|v| which(**v)).count();
            proportion(count, self.values().len(), confidence)
        };
        Ok(Outside { below: share(&|v| v < lower), above: share(&|v| v > upper) })
    }

    /// Share of the trials outside the limits as a number alone, for points of any kind.
    #[must_use]
    pub fn share_outside(&self, lower: f64, upper: f64) -> f64 {
        let count = self.values().iter().filter(|v| **v < lower || **v > upper).count();
        as_number(count) / as_number(self.values().len())
    }

    /// How many trials lie above each edge and not above the next: a value on an edge belongs to the bin that ends there.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] for fewer than two edges, [`ErrorKind::NotFinite`], [`ErrorKind::OutOfOrder`] unless they rise.
    pub fn histogram(&self, edges: &[f64]) -> Result<Vec<u64>, Error> {
        check_edges(edges)?;
        let mut counts = counted(self.values(), edges);
        // beyond the edges
        counts.pop();
        counts.remove(0);
        Ok(counts)
    }

    /// The probability that the weights of a run of [importance sampling](crate::stack::Function::importance) come to, with the normal interval of their mean.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`]; [`ErrorKind::Contradiction`] when fewer than 100 effective trials are beyond the limit: then their spread does not say how
    /// wrong they are; and for values below zero, which are no weights.
    pub fn importance(&self, confidence: f64) -> Result<Mean, Error> {
        let confidence = coverage("confidence", confidence)?;
        let refuse = |value: f64, reason: &str| {
            Err(Error::new(ErrorKind::Contradiction, value.to_string(), reason).value(value).at("trials"))
        };
        let (mut whole, mut squares) = (0.0, 0.0);
        for weight in self.values() {
            if *weight < 0.0 {
                return refuse(*weight, "a value below zero is no weight");
            }
            whole += weight;
            squares += weight * weight;
        }
        let effective = if squares > 0.0 { whole * whole / squares } else { 0.0 };
        if effective < LEAST_EFFECTIVE {
            return refuse(effective, "fewer than 100 effective trials are beyond the limit");
        }
        let of = self.mean(confidence)?;
        Ok(Mean { lower: libm::fmax(of.lower, 0.0), effective, ..of })
    }

    /// The mean of independent trials with its normal interval, for a confidence that was checked.
    pub(crate) fn mean(&self, confidence: f64) -> Result<Mean, Error> {
        let effective = as_number(self.values().len());
        let (mean, deviation) = self.moments()?;
        let standard_error = deviation / effective.sqrt();
        let half = -normal_quantile((1.0 - confidence) / 2.0) * standard_error;
        Ok(Mean { mean, standard_error, lower: mean - half, upper: mean + half, effective })
    }
}

/// How many values lie below the first edge, between each and the next, and above the last; one on an edge belongs to what ends there.
pub(crate) fn counted(values: &[f64], edges: &[f64]) -> Vec<u64> {
    let mut counts = vec![0; edges.len() + 1];
    for value in values {
        // as many edges are below it
        if let Some(count) = counts.get_mut(edges.partition_point(|edge| edge < value)) {
            *count += 1;
        }
    }
    counts
}

/// Most edges of a histogram.
const MOST_EDGES: usize = 1_000_000;

/// Refuses edges of a histogram that are too few, too many, not finite or do not rise.
pub(crate) fn check_edges(edges: &[f64]) -> Result<(), Error> {
    if edges.len() < 2 {
        return Err(too_few("edges", "at least two edges are needed"));
    }
    within("edges", as_number(edges.len()), 2.0, as_number(MOST_EDGES))?;
    let mut before = f64::NEG_INFINITY;
    for (k, edge) in edges.iter().enumerate() {
        let edge = within(&format!("edges/{k}"), *edge, -f64::MAX, f64::MAX)?;
        if before >= edge {
            let error = Error::new(ErrorKind::OutOfOrder, edge.to_string(), "edges must rise").value(edge);
            return Err(error.at(&format!("edges/{k}")));
        }
        before = edge;
    }
    Ok(())
}

impl Tally {
    /// Shares of the trials outside the limits, as [`Part::outside`].
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`]; [`ErrorKind::Contradiction`] for trials that are not independent.
    pub fn outside(&self, confidence: f64) -> Result<Outside, Error> {
        let confidence = coverage("confidence", confidence)?;
        check_independent(self.points)?;
        // counts of trials, of which there are at most 2^27
        let share = |count: u64| proportion(count as usize, self.summary.trials as usize, confidence);
        Ok(Outside { below: share(self.below), above: share(self.above) })
    }
}

pub(super) fn check_limits((lower, upper): (f64, f64)) -> Result<(), Error> {
    for (field, limit) in [("lower", lower), ("upper", upper)] {
        if limit.is_nan() {
            return Err(Error::new(ErrorKind::NotFinite, "NaN", "a limit is a number").at(field));
        }
    }
    if upper < lower {
        let reason = "the upper limit must not be below the lower";
        return Err(Error::new(ErrorKind::OutOfOrder, upper.to_string(), reason).at("upper"));
    }
    Ok(())
}

fn check_independent(points: Points) -> Result<(), Error> {
    if points != Points::Random {
        let reason =
            "points that are spread evenly are not independent: their shares have no interval of this kind";
        return Err(Error::new(ErrorKind::Contradiction, "", reason).at("points"));
    }
    Ok(())
}

impl Mean {
    /// Mean of the results of independent runs (other seeds, the same trials), with Student's interval: the honest error of points that are spread evenly.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] for fewer than two runs, [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn of_runs(results: &[f64], confidence: f64) -> Result<Self, Error> {
        let confidence = coverage("confidence", confidence)?;
        if results.len() < 2 {
            return Err(too_few("results", "at least two runs are needed"));
        }
        for (k, result) in results.iter().enumerate() {
            within(&format!("results/{k}"), *result, -1e100, 1e100)?;
        }
        let sample = statistics::sample(results)?;
        let standard_error = sample.deviation_of_mean;
        let half = coverage_factor(confidence, as_number(results.len() - 1)) * standard_error;
        let (mean, effective) = (sample.mean, as_number(results.len()));
        Ok(Mean { mean, standard_error, lower: mean - half, upper: mean + half, effective })
    }
}

fn proportion(count: usize, trials: usize, confidence: f64) -> Proportion {
    let (hits, misses) = (as_number(count), as_number(trials - count));
    let tail = (1.0 - confidence) / 2.0;
    // quantiles of beta distributions as ratios of the F distribution
    let lower = match count {
        0 => 0.0,
        _ => {
            let odds = hits / (misses + 1.0) * f_quantile(tail, 2.0 * hits, 2.0 * (misses + 1.0));
            odds / (1.0 + odds)
        }
    };
    let upper = match trials - count {
        0 => 1.0,
        _ => {
            let odds = misses / (hits + 1.0) * f_quantile(tail, 2.0 * misses, 2.0 * (hits + 1.0));
            1.0 / (1.0 + odds)
        }
    };
    Proportion { count: count as u64, probability: hits / as_number(trials), lower, upper }
}
