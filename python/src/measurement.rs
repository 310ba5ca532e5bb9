//! Statistics of readings, and gauge studies.

use crate::error::{Fault, guarded};
use gaugepoint::measurement::statistics;
use gaugepoint::measurement::study::{Component, Crossed, Line, Pooling, Study};
use pyo3::prelude::*;

/// Count, mean, standard deviation, deviation of the mean, correlation.
type Sample = (usize, f64, f64, f64, f64);
/// Between, its degrees of freedom, within, its degrees of freedom, F, R squared, pooled deviation.
type OneWay = (f64, f64, f64, f64, Option<f64>, Option<f64>, f64);
/// Deviation, ratio to the total, interval.
type Part = (f64, f64, Option<(f64, f64)>);
/// Sum of squares, degrees of freedom, mean square, F, p.
type Row = (f64, f64, f64, Option<f64>, Option<f64>);
/// Appraiser, part, interaction, equipment, total sum of squares, pooled.
type Table = (Row, Row, Row, Row, f64, bool);
/// Repeatability, reproducibility, gauge, part, total, categories, table.
type Found = (Part, Part, Part, Part, f64, Option<f64>, Option<Table>);

/// Give mean and spread of a sample.
///
/// Parameters
/// ----------
/// values : sequence of float
///     At least two values, in any one unit.
///
/// Returns
/// -------
/// tuple
///     Count, mean, standard deviation, standard deviation of the mean, correlation of each value with the next.
///
/// Raises
/// ------
/// InputError
///     When there are fewer than two values, or one is not finite; it names the place.
#[pyfunction]
pub(crate) fn sample(values: Vec<f64>) -> Result<Sample, Fault> {
    let s = guarded(|| statistics::sample(&values))?;
    Ok((s.count, s.mean, s.standard_deviation, s.deviation_of_mean, s.lag_1_correlation))
}

/// Give the one-way analysis of variance of groups.
///
/// Parameters
/// ----------
/// groups : sequence of sequences of float
///     At least two groups, none empty, and more values than groups.
///
/// Returns
/// -------
/// tuple
///     Between, its degrees of freedom, within, its degrees of freedom, F, R squared, pooled deviation.
///
/// Raises
/// ------
/// InputError
///     When there is too little, or a value is not finite; it names the place.
#[pyfunction]
pub(crate) fn one_way(groups: Vec<Vec<f64>>) -> Result<OneWay, Fault> {
    let a = guarded(|| statistics::one_way(&groups))?;
    Ok((a.between, a.between_dof, a.within, a.within_dof, a.f, a.r_squared, a.pooled_deviation))
}

/// Give what a crossed gauge study finds by averages and ranges.
///
/// Parameters
/// ----------
/// values : sequence of sequences of sequences of float
///     The readings, ``values[appraiser][trial][part]``.
///
/// Returns
/// -------
/// tuple
///     Repeatability, reproducibility, gauge, part, total, categories, None.
///
/// Raises
/// ------
/// InputError
///     When there is too little or too much, it is not balanced, or a value is not finite; it names the place.
#[pyfunction]
pub(crate) fn study_by_ranges(values: Vec<Vec<Vec<f64>>>) -> Result<Found, Fault> {
    guarded(|| Crossed::new(values)?.by_ranges()).map(found)
}

/// Give what a crossed gauge study finds by analysis of variance.
///
/// Parameters
/// ----------
/// values : sequence of sequences of sequences of float
///     The readings, ``values[appraiser][trial][part]``.
/// pooled : bool or None
///     Count the interaction as repeats; None: when it is probable by chance.
/// above : float
///     How probable, when `pooled` is None.
///
/// Returns
/// -------
/// tuple
///     Repeatability, reproducibility, gauge, part, total, categories, table.
///
/// Raises
/// ------
/// InputError
///     When there is too little, it is not balanced, a value is not finite, or the probability is none; it names the place.
#[pyfunction]
pub(crate) fn study_by_variance(
    values: Vec<Vec<Vec<f64>>>,
    pooled: Option<bool>,
    above: f64,
) -> Result<Found, Fault> {
    let pooling = match pooled {
        Some(true) => Pooling::Always,
        Some(false) => Pooling::Never,
        None => Pooling::Above(above),
    };
    guarded(|| Crossed::new(values)?.by_variance(pooling)).map(found)
}

fn found(s: Study) -> Found {
    let [repeatability, reproducibility, gauge, part] =
        [s.repeatability, s.reproducibility, s.gauge, s.part].map(component);
    let table = s.table.map(|t| {
        let [appraiser, part, interaction, equipment] =
            [t.appraiser, t.part, t.interaction, t.equipment].map(line);
        (appraiser, part, interaction, equipment, t.total_squares, t.pooled)
    });
    (repeatability, reproducibility, gauge, part, s.total, s.categories, table)
}

fn component(c: Component) -> Part {
    (c.deviation, c.of_total, c.interval)
}

fn line(l: Line) -> Row {
    (l.squares, l.dof, l.mean, l.f, l.p)
}
