//! Statistics of readings, and gauge studies.

use crate::error::{Fault, guarded};
use gaugepoint::measurement::bias::{self as biases, Test};
use gaugepoint::measurement::chart::{self, Kind};
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
/// F, p; or t, p.
type Pair = Option<(f64, f64)>;
/// Appraiser, part, interaction, equipment, total sum of squares, pooled, appraiser and part against the residual.
type Table = (Row, Row, Row, Row, f64, bool, Pair, Pair);
/// Repeatability, reproducibility, gauge, part, total, categories, table.
type Found = (Part, Part, Part, Part, f64, Option<f64>, Option<Table>);

/// Bias, deviation of the readings, uncertainty, degrees of freedom, test, interval, zero within.
type Biased = (f64, f64, f64, Option<f64>, Pair, (f64, f64), bool);
/// Intercept, its uncertainty and test, slope, its uncertainty and test, residual deviation, degrees of freedom, R squared, zero within.
type Linear = (f64, f64, Pair, f64, f64, Pair, f64, f64, Option<f64>, bool);
/// Bias, uncertainty, interval.
type Band = (f64, f64, (f64, f64));
/// Centre, lower limit, upper limit, deviation, points: value, beyond, run.
type Charted = (f64, f64, f64, f64, Vec<(f64, bool, bool)>);

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

/// Give the bias of a gauge at one size.
///
/// Parameters
/// ----------
/// values : sequence of float
///     At least two readings of one part, in any one unit.
/// reference, reference_uncertainty : float
///     Value of the part and its standard uncertainty.
/// coverage : float
///     Coverage of the confidence interval.
///
/// Returns
/// -------
/// tuple
///     Bias, deviation of the readings, uncertainty, degrees of freedom, test, interval, zero within.
///
/// Raises
/// ------
/// InputError
///     When there are fewer than two readings, or a number is not finite or impossible; it names the parameter or the place.
#[pyfunction]
pub(crate) fn bias(
    values: Vec<f64>,
    reference: f64,
    reference_uncertainty: f64,
    coverage: f64,
) -> Result<Biased, Fault> {
    let b = guarded(|| biases::bias(&values, reference, reference_uncertainty, coverage))?;
    let (deviation, u) = (b.standard_deviation, b.standard_uncertainty);
    Ok((b.bias, deviation, u, b.dof, tested(b.test), b.interval, b.zero_within))
}

/// Give how the bias of a gauge depends on the size.
///
/// Parameters
/// ----------
/// references : sequence of float
///     Values of the parts, in any one unit.
/// readings : sequence of sequences of float
///     The readings of each part.
/// coverage : float
///     Coverage of the confidence band.
///
/// Returns
/// -------
/// tuple
///     Intercept, its uncertainty and test, slope, its uncertainty and test, residual deviation, degrees of freedom, R squared,
///     zero within.
///
/// Raises
/// ------
/// InputError
///     When there is too little, the sizes do not differ, or a number is not finite or impossible; it names the parameter or the
///     place.
#[pyfunction]
pub(crate) fn linearity(
    references: Vec<f64>,
    readings: Vec<Vec<f64>>,
    coverage: f64,
) -> Result<Linear, Fault> {
    let l = guarded(|| biases::linearity(&references, &readings, coverage))?;
    let line = l.line;
    Ok((
        line.intercept,
        line.intercept_uncertainty,
        tested(l.intercept_test),
        line.slope,
        line.slope_uncertainty,
        tested(l.slope_test),
        line.residual_deviation,
        line.dof,
        l.r_squared,
        l.zero_within,
    ))
}

/// Give the mean bias of a gauge at a size, by the line of a linearity study.
///
/// Parameters
/// ----------
/// references : sequence of float
///     Values of the parts, in any one unit.
/// readings : sequence of sequences of float
///     The readings of each part.
/// x : float
///     The size.
/// coverage : float
///     Coverage of the confidence band.
///
/// Returns
/// -------
/// tuple
///     Bias, uncertainty, interval.
///
/// Raises
/// ------
/// InputError
///     When there is too little, the sizes do not differ, or a number is not finite or impossible; it names the parameter or the
///     place.
#[pyfunction]
pub(crate) fn linearity_band(
    references: Vec<f64>,
    readings: Vec<Vec<f64>>,
    x: f64,
    coverage: f64,
) -> Result<Band, Fault> {
    let band = guarded(|| biases::linearity(&references, &readings, coverage)?.at(x))?;
    Ok((band.bias, band.standard_uncertainty, band.interval))
}

/// Give a control chart.
///
/// Parameters
/// ----------
/// values : sequence of sequences of float
///     Subgroups of equal size in order of time, in any one unit; single readings are subgroups of one.
/// kind : str
///     What the chart shows.
///
/// Returns
/// -------
/// tuple
///     Centre, lower limit, upper limit, deviation, points.
///
/// Raises
/// ------
/// InputError
///     When there is too little, the subgroups are of a wrong size, a value is not finite, or the kind is unknown; it names the
///     parameter or the place.
#[pyfunction]
pub(crate) fn control_chart(values: Vec<Vec<f64>>, kind: &str) -> Result<Charted, Fault> {
    let c = guarded(|| {
        let kind = Kind::from_word(kind).map_err(|refused| refused.named("kind"))?;
        chart::control_chart(&values, kind)
    })?;
    let points = c.points.iter().map(|p| (p.value, p.beyond, p.run)).collect();
    Ok((c.centre, c.lower, c.upper, c.deviation, points))
}

fn tested(test: Option<Test>) -> Pair {
    test.map(|test| (test.t, test.p))
}

fn found(s: Study) -> Found {
    let [repeatability, reproducibility, gauge, part] =
        [s.repeatability, s.reproducibility, s.gauge, s.part].map(component);
    let table = s.table.map(|t| {
        let [appraiser, part, interaction, equipment] =
            [t.appraiser, t.part, t.interaction, t.equipment].map(line);
        let [of_appraiser, of_part] = [t.appraiser_residual, t.part_residual].map(|r| r.map(|r| (r.f, r.p)));
        (appraiser, part, interaction, equipment, t.total_squares, t.pooled, of_appraiser, of_part)
    });
    (repeatability, reproducibility, gauge, part, s.total, s.categories, table)
}

fn component(c: Component) -> Part {
    (c.deviation, c.of_total, c.interval)
}

fn line(l: Line) -> Row {
    (l.squares, l.dof, l.mean, l.f, l.p)
}
