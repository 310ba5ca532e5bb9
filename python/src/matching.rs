//! Measured pistons matched to bores.

use crate::batch::array;
use crate::progress::{Progress, watched};
use gaugepoint::plan::matching::{Bore, Conditions, Merit, Piston, WantedClearance, match_pistons_watched};
use gaugepoint::progress::Watch;
use numpy::PyArrayMethods;
use numpy::ndarray::Ix1;
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

/// Worst probability, one less that, bore of the worst, sum of squares, whether it is allowed.
type GivenMerit = (f64, f64, usize, f64, bool);
/// Bore, piston, clearance, uncertainty, deviation, probability of conformity, one less that.
type Pair = (usize, usize, f64, f64, f64, f64, f64);
/// Case, proof, pairs, spare pistons; merits of the best, of what was given, by grade; spread of weight.
type Found =
    (&'static str, String, Vec<Pair>, Vec<usize>, GivenMerit, GivenMerit, Option<GivenMerit>, Option<f64>);

/// A wanted clearance, as `gaugepoint.plan.WantedClearance` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenWanted {
    lower_mm: Option<f64>,
    upper_mm: Option<f64>,
    target_mm: Option<f64>,
}

/// A bore, as `gaugepoint.plan.MeasuredBore` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenBore {
    size_mm: f64,
    standard_uncertainty_mm: f64,
    wanted: Option<GivenWanted>,
    grade: Option<String>,
}

/// A piston, as `gaugepoint.plan.MeasuredPiston` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenPiston {
    size_mm: f64,
    standard_uncertainty_mm: f64,
    weight_g: Option<f64>,
    grade: Option<String>,
}

/// Conditions, as `gaugepoint.plan.match` takes them.
#[derive(FromPyObject)]
pub(crate) struct GivenConditions {
    wanted: Option<GivenWanted>,
    shared_uncertainty_mm: f64,
    common_uncertainty_mm: f64,
    forbidden: Vec<(i64, i64)>,
    fixed: Vec<(i64, i64)>,
    weight_band_g: Option<f64>,
}

impl From<GivenWanted> for WantedClearance {
    fn from(w: GivenWanted) -> Self {
        WantedClearance { lower_mm: w.lower_mm, upper_mm: w.upper_mm, target_mm: w.target_mm }
    }
}

impl From<GivenBore> for Bore {
    fn from(b: GivenBore) -> Self {
        let GivenBore { size_mm, standard_uncertainty_mm, wanted, grade } = b;
        Bore { size_mm, standard_uncertainty_mm, wanted: wanted.map(Into::into), grade }
    }
}

impl From<GivenPiston> for Piston {
    fn from(p: GivenPiston) -> Self {
        let GivenPiston { size_mm, standard_uncertainty_mm, weight_g, grade } = p;
        Piston { size_mm, standard_uncertainty_mm, weight_g, grade }
    }
}

impl From<GivenConditions> for Conditions {
    fn from(c: GivenConditions) -> Self {
        Conditions {
            wanted: c.wanted.map(Into::into),
            shared_uncertainty_mm: c.shared_uncertainty_mm,
            common_uncertainty_mm: c.common_uncertainty_mm,
            forbidden: places(&c.forbidden),
            fixed: places(&c.fixed),
            weight_band_g: c.weight_band_g,
        }
    }
}

/// A place that no part can have is refused by the core.
fn places(pairs: &[(i64, i64)]) -> Vec<(usize, usize)> {
    let place = |k: i64| usize::try_from(k).unwrap_or(usize::MAX);
    pairs.iter().map(|(bore, piston)| (place(*bore), place(*piston))).collect()
}

/// Match measured pistons to bores; `gaugepoint.plan.match` is its public form.
///
/// Parameters
/// ----------
/// bores : sequence of MeasuredBore
///     The bores.
/// pistons : sequence of MeasuredPiston
///     The pistons.
/// conditions : Conditions
///     What holds for the set.
/// progress : callable or None
///     Told what is done and of how much.
///
/// Returns
/// -------
/// tuple
///     Case, proof, pairs, spare pistons, three merits, spread of weight.
///
/// Raises
/// ------
/// InputError
///     When something is refused, or no pairing exists.
#[pyfunction]
#[pyo3(name = "match_pistons")]
pub(crate) fn match_parts(
    py: Python<'_>,
    bores: Vec<GivenBore>,
    pistons: Vec<GivenPiston>,
    conditions: GivenConditions,
    progress: Progress,
) -> PyResult<Found> {
    let bores = bores.into_iter().map(Bore::from).collect();
    let pistons = pistons.into_iter().map(Piston::from).collect();
    matched(py, bores, pistons, conditions.into(), progress)
}

/// Match sizes that stand in arrays; `gaugepoint.plan.match` is its public form.
///
/// Parameters
/// ----------
/// bore_mm, bore_uncertainty_mm : numpy.ndarray
///     Sizes of the bores and their standard uncertainties.
/// piston_mm, piston_uncertainty_mm : numpy.ndarray
///     The same of the pistons.
/// conditions : Conditions
///     What holds for the set.
/// progress : callable or None
///     Told what is done and of how much.
///
/// Returns
/// -------
/// tuple
///     As `match_pistons`.
///
/// Raises
/// ------
/// InputError
///     When something is refused, or no pairing exists.
/// TypeError
///     When an array is none of one dimension and float64.
/// ValueError
///     When sizes and uncertainties are not of one length.
#[pyfunction]
pub(crate) fn match_sizes<'py>(
    py: Python<'py>,
    bore_mm: Bound<'py, PyAny>,
    bore_uncertainty_mm: Bound<'py, PyAny>,
    piston_mm: Bound<'py, PyAny>,
    piston_uncertainty_mm: Bound<'py, PyAny>,
    conditions: GivenConditions,
    progress: Progress,
) -> PyResult<Found> {
    let bores = sizes("bores", &bore_mm, &bore_uncertainty_mm)?;
    let pistons = sizes("pistons", &piston_mm, &piston_uncertainty_mm)?;
    let bores = bores.into_iter().map(|(size, u)| Bore::new(size, u)).collect();
    let pistons = pistons.into_iter().map(|(size, u)| Piston::new(size, u)).collect();
    matched(py, bores, pistons, conditions.into(), progress)
}

fn sizes(
    name: &str,
    sizes: &Bound<'_, PyAny>,
    uncertainties: &Bound<'_, PyAny>,
) -> PyResult<Vec<(f64, f64)>> {
    let column =
        |given| -> PyResult<Vec<f64>> { Ok(array::<Ix1>(name, given)?.readonly().as_array().to_vec()) };
    let (sizes, uncertainties) = (column(sizes)?, column(uncertainties)?);
    match sizes.len() == uncertainties.len() {
        true => Ok(sizes.into_iter().zip(uncertainties).collect()),
        false => {
            let message = format!("{name}: sizes and uncertainties are not of one length");
            Err(PyValueError::new_err(message))
        }
    }
}

fn matched(
    py: Python<'_>,
    bores: Vec<Bore>,
    pistons: Vec<Piston>,
    conditions: Conditions,
    progress: Progress,
) -> PyResult<Found> {
    let work = |watch: Watch<'_>| match_pistons_watched(&bores, &pistons, &conditions, watch);
    let found = py.detach(|| watched(progress, work))?;
    let pairs = found.pairs.iter().map(|p| {
        let (p_in, p_out) = (p.probability_of_conformity, p.probability_outside);
        (p.bore, p.piston, p.clearance_mm, p.standard_uncertainty_mm, p.deviation_mm, p_in, p_out)
    });
    let merit =
        |m: &Merit| (m.worst_probability, m.worst_outside, m.worst_bore, m.sum_of_squares_mm2, m.is_allowed);
    Ok((
        found.case.word(),
        found.because.clone(),
        pairs.collect(),
        found.spare.clone(),
        merit(&found.merit),
        merit(&found.as_given),
        found.by_grade.as_ref().map(merit),
        found.weight_spread_g,
    ))
}
