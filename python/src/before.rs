//! Before measuring, and before believing; and the table of plausible values.

use crate::error::{Fault, guarded};
use crate::risk::{Limits, interval};
use gaugepoint::bounds::{self, TABLE, Verdict};
use gaugepoint::decision::risk::Guard;
use gaugepoint::measurement::before::{self, Advice, Agreement, Outlier, Pattern, Point, Warm};
use pyo3::prelude::*;

/// Advice, error, wait, correction, its uncertainty.
type Soak = (&'static str, f64, f64, f64, f64);
/// Is it adequate, largest uncertainty, ratio, zone.
type Adequacy = (bool, f64, f64, f64);
/// E_n, difference, both expanded uncertainties, do they agree.
type Agreed = (f64, f64, f64, f64, bool);
/// Place, distance.
type Named = (usize, f64);
/// Deviation, degrees of freedom, farthest, critical, beyond.
type Outliers = (f64, usize, Option<Named>, f64, Vec<Named>);
/// Name, label, unit, of, possible, usual, reason, slips.
type Row = (
    &'static str,
    &'static str,
    &'static str,
    Option<&'static str>,
    (f64, f64),
    (f64, f64),
    &'static str,
    &'static str,
);

/// Say what a warm part means for its size.
///
/// Parameters
/// ----------
/// excess_k, time_constant_min, size_mm, expansion_per_k, allowed_mm, excess_error_k, expansion_error_per_k : float
///     The part and what is asked of it.
///
/// Returns
/// -------
/// tuple
///     Advice, error, wait, correction, uncertainty of the correction.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter.
#[pyfunction]
pub(crate) fn soak(
    excess_k: f64,
    time_constant_min: f64,
    size_mm: f64,
    expansion_per_k: f64,
    allowed_mm: f64,
    excess_error_k: f64,
    expansion_error_per_k: f64,
) -> Result<Soak, Fault> {
    let warm = Warm {
        excess_k,
        time_constant_min,
        size_mm,
        expansion_per_k,
        allowed_mm,
        excess_error_k,
        expansion_error_per_k,
    };
    let s = guarded(|| before::soak(warm))?;
    let advice = match s.advice {
        Advice::Measure => "measure",
        Advice::WaitOrCorrect => "wait or correct",
        Advice::Wait => "wait",
    };
    Ok((advice, s.error_mm, s.wait_min, s.correction_mm, s.correction_uncertainty_mm))
}

/// Hold an uncertainty against a tolerance, with a guard band of ``1.65 u``.
///
/// Parameters
/// ----------
/// tolerance : tuple of float or None
///     Lower and upper limit.
/// u, least_zone : float
///     Standard uncertainty; share of the tolerance that must be left.
///
/// Returns
/// -------
/// tuple
///     Is it adequate, largest uncertainty, ratio, zone.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter.
#[pyfunction]
pub(crate) fn adequacy_proven(tolerance: Limits, u: f64, least_zone: f64) -> Result<Adequacy, Fault> {
    adequacy(tolerance, u, Guard::Proven, least_zone)
}

/// Hold an uncertainty against a tolerance, with a guard band that is a share of ``U = 2 u``.
///
/// Parameters
/// ----------
/// tolerance : tuple of float or None
///     Lower and upper limit.
/// u, amount, least_zone : float
///     Standard uncertainty; the share of the guard band; share of the tolerance that must be left.
///
/// Returns
/// -------
/// tuple
///     Is it adequate, largest uncertainty, ratio, zone.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter.
#[pyfunction]
pub(crate) fn adequacy_stringent(
    tolerance: Limits,
    u: f64,
    amount: f64,
    least_zone: f64,
) -> Result<Adequacy, Fault> {
    adequacy(tolerance, u, Guard::Stringent(amount), least_zone)
}

/// Hold an uncertainty against a tolerance, outside by a share of ``U = 2 u``: always refused.
///
/// Parameters
/// ----------
/// tolerance : tuple of float or None
///     Lower and upper limit.
/// u, amount, least_zone : float
///     Standard uncertainty; the share of the guard band; share of the tolerance that must be left.
///
/// Returns
/// -------
/// tuple
///     Is it adequate, largest uncertainty, ratio, zone.
///
/// Raises
/// ------
/// InputError
///     Always: the rule asks nothing of a gauge.
#[pyfunction]
pub(crate) fn adequacy_relaxed(
    tolerance: Limits,
    u: f64,
    amount: f64,
    least_zone: f64,
) -> Result<Adequacy, Fault> {
    adequacy(tolerance, u, Guard::Relaxed(amount), least_zone)
}

/// Hold an uncertainty against a tolerance that must be so many times ``2 U`` wide.
///
/// Parameters
/// ----------
/// tolerance : tuple of float or None
///     Lower and upper limit.
/// u, amount, least_zone : float
///     Standard uncertainty; the ratio; a share that is not used further.
///
/// Returns
/// -------
/// tuple
///     Is it adequate, largest uncertainty, ratio, zone.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter.
#[pyfunction]
pub(crate) fn adequacy_ratio(
    tolerance: Limits,
    u: f64,
    amount: f64,
    least_zone: f64,
) -> Result<Adequacy, Fault> {
    adequacy(tolerance, u, Guard::RatioAtLeast(amount), least_zone)
}

fn adequacy(tolerance: Limits, u: f64, guard: Guard, least_zone: f64) -> Result<Adequacy, Fault> {
    let a = guarded(|| before::adequacy(interval(tolerance), u, guard, least_zone))?;
    Ok((a.adequate, a.largest_u, a.ratio, a.zone))
}

/// Give the drift of a gauge as a source of uncertainty.
///
/// Parameters
/// ----------
/// before_mm, after_mm, limit_mm : float
///     Readings of the master, and the limit.
///
/// Returns
/// -------
/// tuple of float
///     Drift, uncertainty, its shared part, its own part.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite, or the drift is beyond the limit.
#[pyfunction]
pub(crate) fn drift(before_mm: f64, after_mm: f64, limit_mm: f64) -> Result<(f64, f64, f64, f64), Fault> {
    let d = guarded(|| before::drift(before_mm, after_mm, limit_mm))?;
    Ok((d.drift_mm, d.uncertainty_mm, d.shared_mm, d.own_mm))
}

/// Hold two values against each other.
///
/// Parameters
/// ----------
/// first, first_u, second, second_u : float
///     Values and standard uncertainties.
///
/// Returns
/// -------
/// tuple
///     E_n, difference, both expanded uncertainties, do they agree.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite, or an uncertainty is not above 0.
#[pyfunction]
pub(crate) fn agreement(first: f64, first_u: f64, second: f64, second_u: f64) -> Result<Agreed, Fault> {
    guarded(|| before::agreement(first, first_u, second, second_u)).map(agreed)
}

/// Hold the lists of two readers against each other.
///
/// Parameters
/// ----------
/// first, second : sequence of float
///     What each read at one place.
/// resolution : float
///     Resolution of the gauge.
///
/// Returns
/// -------
/// tuple
///     E_n, difference, both expanded uncertainties, do they agree.
///
/// Raises
/// ------
/// InputError
///     When a list has fewer than two readings, a number is not finite, or the resolution is not above 0.
#[pyfunction]
pub(crate) fn readers(first: Vec<f64>, second: Vec<f64>, resolution: f64) -> Result<Agreed, Fault> {
    guarded(|| before::readers(&first, &second, resolution)).map(agreed)
}

fn agreed(a: Agreement) -> Agreed {
    (a.e_n, a.difference, a.first_expanded, a.second_expanded, a.agree)
}

/// Test a station list for outliers, apart from one mean.
///
/// Parameters
/// ----------
/// points : sequence of tuples of float
///     Depth, angle and value of each point.
/// alpha : float
///     Probability of a false alarm.
///
/// Returns
/// -------
/// tuple
///     Deviation, degrees of freedom, farthest, critical, beyond.
///
/// Raises
/// ------
/// InputError
///     When there are too few or too many points, or a number is not finite or impossible.
#[pyfunction]
pub(crate) fn outliers_mean(points: Vec<(f64, f64, f64)>, alpha: f64) -> Result<Outliers, Fault> {
    outliers(&points, Pattern::Mean, alpha)
}

/// Test a station list for outliers, apart from a mean for each depth and one oval.
///
/// Parameters
/// ----------
/// points : sequence of tuples of float
///     Depth, angle and value of each point.
/// alpha : float
///     Probability of a false alarm.
///
/// Returns
/// -------
/// tuple
///     Deviation, degrees of freedom, farthest, critical, beyond.
///
/// Raises
/// ------
/// InputError
///     When there are too few or too many points, or a number is not finite or impossible.
#[pyfunction]
pub(crate) fn outliers_common_oval(points: Vec<(f64, f64, f64)>, alpha: f64) -> Result<Outliers, Fault> {
    outliers(&points, Pattern::CommonOval, alpha)
}

/// Test a station list for outliers, apart from a mean and an oval for each depth.
///
/// Parameters
/// ----------
/// points : sequence of tuples of float
///     Depth, angle and value of each point.
/// alpha : float
///     Probability of a false alarm.
///
/// Returns
/// -------
/// tuple
///     Deviation, degrees of freedom, farthest, critical, beyond.
///
/// Raises
/// ------
/// InputError
///     When there are too few or too many points, or a number is not finite or impossible.
#[pyfunction]
pub(crate) fn outliers_oval_by_depth(points: Vec<(f64, f64, f64)>, alpha: f64) -> Result<Outliers, Fault> {
    outliers(&points, Pattern::OvalByDepth, alpha)
}

fn outliers(points: &[(f64, f64, f64)], pattern: Pattern, alpha: f64) -> Result<Outliers, Fault> {
    let point = |p: &(f64, f64, f64)| Point { depth_mm: p.0, angle_deg: p.1, value: p.2 };
    let points: Vec<Point> = points.iter().map(point).collect();
    let found = guarded(|| before::outliers(&points, pattern, alpha))?;
    let named = |o: Outlier| (o.index, o.g);
    let beyond = found.beyond.into_iter().map(named).collect();
    Ok((found.deviation, found.dof, found.farthest.map(named), found.critical, beyond))
}

/// Hold one value against the table of plausible values.
///
/// Parameters
/// ----------
/// name : str
///     Name of a row.
/// value : float
///     The value, in the unit of the row.
/// diameter_mm : float or None
///     What relative rows refer to.
///
/// Returns
/// -------
/// str
///     ``usual`` or ``odd``.
///
/// Raises
/// ------
/// InputError
///     When the value is impossible, or there is no such row.
#[pyfunction]
pub(crate) fn judge(name: &str, value: f64, diameter_mm: Option<f64>) -> Result<&'static str, Fault> {
    let verdict = guarded(|| bounds::judge(name, value, diameter_mm))?;
    Ok(if verdict == Verdict::Usual { "usual" } else { "odd" })
}

/// Give the table of plausible values.
///
/// Returns
/// -------
/// list of tuple
///     Name, label, unit, what it is relative to, possible and usual range, reason, slips.
#[pyfunction]
pub(crate) fn plausibility_table() -> Vec<Row> {
    let row = |r: &bounds::Row| {
        let b = r.bound;
        (r.name, b.label, b.unit, r.of, b.possible, b.usual, b.reason, r.slips)
    };
    TABLE.iter().map(row).collect()
}
