//! Risks of decisions over a whole process, and the acceptance intervals that hold them.

use crate::error::{Fault, guarded};
use gaugepoint::decision::risk::{self, Guard, Interval, Items};
use pyo3::prelude::*;

/// Lower and upper limit.
pub(crate) type Limits = (Option<f64>, Option<f64>);

/// A distribution of the package, by the names of its numbers.
#[derive(FromPyObject)]
pub(crate) enum Distribution {
    /// `gaugepoint.Normal`
    Normal { mean: f64, deviation: f64 },
    /// `gaugepoint.Triangular`; before the uniform one, which has two of its names
    Triangular { low: f64, mode: f64, high: f64 },
    /// `gaugepoint.Uniform`
    Uniform { low: f64, high: f64 },
    /// `gaugepoint.Gamma`
    Gamma { shape: f64, scale: f64 },
}

impl From<Distribution> for Items {
    fn from(items: Distribution) -> Self {
        match items {
            Distribution::Normal { mean, deviation } => Items::Normal { mean, deviation },
            Distribution::Triangular { low, mode, high } => Items::Triangular { low, mode, high },
            Distribution::Uniform { low, high } => Items::Uniform { low, high },
            Distribution::Gamma { shape, scale } => Items::Gamma { shape, scale },
        }
    }
}

/// Give the global risks of accepting by one interval what should conform to another.
///
/// Parameters
/// ----------
/// items : Normal, Uniform, Triangular or Gamma
///     Distribution of the items.
/// u : float
///     Standard uncertainty of a measurement.
/// tolerance, accepted : tuple of float or None
///     Lower and upper limit of what conforms and of what is accepted.
///
/// Returns
/// -------
/// tuple of float
///     Conforming, consumer's risk, producer's risk.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite, or a distribution or an interval is impossible.
#[pyfunction]
pub(crate) fn global_risks(
    items: Distribution,
    u: f64,
    tolerance: Limits,
    accepted: Limits,
) -> Result<(f64, f64, f64), Fault> {
    let r = guarded(|| risk::global_risks(items.into(), u, interval(tolerance), interval(accepted)))?;
    Ok((r.conforming, r.consumer, r.producer))
}

/// Give the acceptance interval of a tolerance by ``g = 1.65 u``.
///
/// Parameters
/// ----------
/// tolerance : tuple of float or None
///     Lower and upper limit.
/// u : float
///     Standard uncertainty of a measurement.
///
/// Returns
/// -------
/// tuple of float or None
///     Lower and upper limit of what is accepted.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite, the interval is impossible, or the guard bands leave nothing.
#[pyfunction]
pub(crate) fn acceptance_proven(tolerance: Limits, u: f64) -> Result<Limits, Fault> {
    accepted(tolerance, u, Guard::Proven)
}

/// Give the acceptance interval of a tolerance inside by a share of ``U = 2 u``.
///
/// Parameters
/// ----------
/// tolerance : tuple of float or None
///     Lower and upper limit.
/// u : float
///     Standard uncertainty of a measurement.
/// amount : float
///     The share.
///
/// Returns
/// -------
/// tuple of float or None
///     Lower and upper limit of what is accepted.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite, the interval is impossible, or the guard bands leave nothing.
#[pyfunction]
pub(crate) fn acceptance_stringent(tolerance: Limits, u: f64, amount: f64) -> Result<Limits, Fault> {
    accepted(tolerance, u, Guard::Stringent(amount))
}

/// Give the acceptance interval of a tolerance outside by a share of ``U = 2 u``.
///
/// Parameters
/// ----------
/// tolerance : tuple of float or None
///     Lower and upper limit.
/// u : float
///     Standard uncertainty of a measurement.
/// amount : float
///     The share.
///
/// Returns
/// -------
/// tuple of float or None
///     Lower and upper limit of what is accepted.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite, or the interval is impossible.
#[pyfunction]
pub(crate) fn acceptance_relaxed(tolerance: Limits, u: f64, amount: f64) -> Result<Limits, Fault> {
    accepted(tolerance, u, Guard::Relaxed(amount))
}

/// Give the tolerance itself, when it is at least so many times ``2 U`` wide.
///
/// Parameters
/// ----------
/// tolerance : tuple of float or None
///     Lower and upper limit.
/// u : float
///     Standard uncertainty of a measurement.
/// amount : float
///     The ratio.
///
/// Returns
/// -------
/// tuple of float or None
///     Lower and upper limit of what is accepted.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite, the interval is impossible, or the ratio is not reached.
#[pyfunction]
pub(crate) fn acceptance_ratio(tolerance: Limits, u: f64, amount: f64) -> Result<Limits, Fault> {
    accepted(tolerance, u, Guard::RatioAtLeast(amount))
}

/// Give the acceptance interval with a wanted consumer's risk.
///
/// Parameters
/// ----------
/// items : Normal, Uniform, Triangular or Gamma
///     Distribution of the items.
/// u : float
///     Standard uncertainty of a measurement.
/// tolerance : tuple of float or None
///     Lower and upper limit of what conforms.
/// wanted : float
///     The global consumer's risk.
///
/// Returns
/// -------
/// tuple of float or None
///     Lower and upper limit of what is accepted.
///
/// Raises
/// ------
/// InputError
///     When no guard band gives that risk, or a number, a distribution or an interval is impossible.
#[pyfunction]
pub(crate) fn acceptance_for_risk(
    items: Distribution,
    u: f64,
    tolerance: Limits,
    wanted: f64,
) -> Result<Limits, Fault> {
    guarded(|| risk::acceptance_for_risk(items.into(), u, interval(tolerance), wanted)).map(limits)
}

/// Give the capability of a normal process.
///
/// Parameters
/// ----------
/// mean, deviation : float
///     Mean and standard deviation of the process.
/// tolerance : tuple of float or None
///     Lower and upper limit.
///
/// Returns
/// -------
/// tuple of float
///     Cpk, share outside the limits.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite, the deviation is not above 0, or the interval is impossible.
#[pyfunction]
pub(crate) fn capability(mean: f64, deviation: f64, tolerance: Limits) -> Result<(f64, f64), Fault> {
    let c = guarded(|| risk::capability(mean, deviation, interval(tolerance)))?;
    Ok((c.cpk, c.outside))
}

fn accepted(tolerance: Limits, u: f64, guard: Guard) -> Result<Limits, Fault> {
    guarded(|| risk::acceptance(interval(tolerance), u, guard)).map(limits)
}

pub(crate) fn interval((lower, upper): Limits) -> Interval {
    Interval { lower, upper }
}

fn limits(interval: Interval) -> Limits {
    (interval.lower, interval.upper)
}
