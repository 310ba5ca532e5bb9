//! Trials of stacks and of functions, and what is said of their values.

use crate::batch;
use crate::error::{Fault, guarded};
use gaugepoint::Error;
use gaugepoint::budget::CoverageChoice;
use gaugepoint::measurement::monte_carlo::{
    self, Adaptive, Coverage, Goal, MonteCarlo, Part, Summary, trials_from,
};
use gaugepoint::measurement::points::Points;
use gaugepoint::measurement::tail::Proportion;
use gaugepoint::stack::Toward;
use gaugepoint::stack::document::PointsChoice;
use numpy::ndarray::Ix1;
use numpy::{PyArray1, PyArrayMethods};
use pyo3::prelude::*;

pub(crate) type Array<'py> = Bound<'py, PyArray1<f64>>;
type Given<'py> = Bound<'py, PyAny>;
/// Trials, mean, standard deviation, probability; ends of the symmetric and of the shortest interval.
type Summarized = (u64, f64, f64, f64, (f64, f64), (f64, f64));
/// Count, share, ends of the interval.
type Share = (u64, f64, f64, f64);
/// Summary, sequences, tolerance, settled.
pub(crate) type Settled = (Summarized, u64, f64, bool);
/// Probability, standard error, ends of the interval, effective trials.
type Rare = (f64, f64, f64, f64, f64);

/// A part of a run, as the methods of the public classes ask for it.
pub(crate) struct Asked {
    pub(crate) seed: u64,
    first: u64,
    count: u64,
    points: Points,
}

impl Asked {
    pub(crate) fn new(
        seed: u64,
        first: u64,
        count: u64,
        points: &str,
        hypercube_trials: Option<u64>,
    ) -> Result<Self, Fault> {
        guarded(|| Ok(Asked { seed, first, count, points: points_of(points, hypercube_trials)? }))
    }

    pub(crate) fn values<T: monte_carlo::Trials>(&self, run: MonteCarlo<'_, T>) -> Result<Vec<f64>, Error> {
        let trials = trials_from(self.first, self.count)?;
        Ok(run.with_points(self.points)?.part(trials)?.into_values())
    }
}

fn points_of(word: &str, hypercube_trials: Option<u64>) -> Result<Points, Error> {
    PointsChoice::from_word(word).map_err(|e| e.named("points"))?.points(hypercube_trials)
}

pub(crate) fn toward_of(word: &str) -> Result<Toward, Error> {
    Toward::from_word(word).map_err(|e| e.named("toward"))
}

/// What an adaptive run is to reach.
pub(crate) fn goal(probability: f64, coverage: &str, digits: u64, most_trials: u64) -> Result<Goal, Fault> {
    guarded(|| {
        let coverage = match CoverageChoice::from_word(coverage).map_err(|e| e.named("coverage"))? {
            CoverageChoice::Symmetric => Coverage::Symmetric,
            CoverageChoice::Shortest => Coverage::Shortest,
        };
        // no number beyond a byte is one or two
        let digits = u8::try_from(digits).unwrap_or(u8::MAX);
        Ok(Goal { probability, coverage, digits, most_trials })
    })
}

pub(crate) fn adaptive<T: monte_carlo::Trials>(
    run: &MonteCarlo<'_, T>,
    goal: Goal,
) -> Result<Settled, Error> {
    let Adaptive { summary, sequences, tolerance, settled } = run.adaptive(goal)?;
    Ok((summarized(summary), sequences, tolerance, settled))
}

fn summarized(s: Summary) -> Summarized {
    let ends = |i: monte_carlo::Interval| (i.lower, i.upper);
    (s.trials, s.mean, s.standard_deviation, s.probability, ends(s.symmetric), ends(s.shortest))
}

/// The values of an array as a part.
fn part(values: &Given<'_>, points: Points) -> PyResult<Part> {
    let values = batch::array::<Ix1>("values", values)?.to_vec()?;
    Ok(guarded(|| Part::of_values(0, points, 0, values))?)
}

/// Give mean, standard deviation and intervals of the values of trials.
///
/// Parameters
/// ----------
/// values : numpy.ndarray
///     The values.
/// probability : float
///     Coverage probability of the intervals.
///
/// Returns
/// -------
/// tuple
///     Number, mean, standard deviation, probability, ends of the symmetric and of the shortest interval.
///
/// Raises
/// ------
/// InputError
///     When a value or the probability is refused.
/// TypeError
///     When the values are no array of one dimension and float64.
#[pyfunction]
pub(crate) fn trials_summary(py: Python<'_>, values: &Given<'_>, probability: f64) -> PyResult<Summarized> {
    let part = part(values, Points::Random)?;
    Ok(py.detach(|| guarded(|| Ok(summarized(part.summary(probability)?))))?)
}

/// Give the shares of the values of trials outside two limits, with intervals of Clopper and Pearson.
///
/// Parameters
/// ----------
/// values : numpy.ndarray
///     The values.
/// points : str
///     How their points lie.
/// hypercube_trials : int or None
///     Trials of the whole run of a Latin hypercube.
/// lower, upper : float
///     The limits; an infinite one is none.
/// confidence : float
///     What the intervals cover with.
///
/// Returns
/// -------
/// tuple
///     Of each side the count, the share and the ends of its interval.
///
/// Raises
/// ------
/// InputError
///     When something is refused, or the points are not random.
/// TypeError
///     When the values are no array of one dimension and float64.
#[pyfunction]
pub(crate) fn trials_outside(
    values: &Given<'_>,
    points: &str,
    hypercube_trials: Option<u64>,
    lower: f64,
    upper: f64,
    confidence: f64,
) -> PyResult<(Share, Share)> {
    let part = part(values, guarded(|| points_of(points, hypercube_trials))?)?;
    let share = |p: Proportion| (p.count, p.probability, p.lower, p.upper);
    let outside = guarded(|| part.outside(lower, upper, confidence))?;
    Ok((share(outside.below), share(outside.above)))
}

/// Give how many values of trials lie above each edge and not above the next.
///
/// Parameters
/// ----------
/// values : numpy.ndarray
///     The values.
/// edges : sequence of float
///     Rising edges.
///
/// Returns
/// -------
/// numpy.ndarray
///     The counts, one less than edges.
///
/// Raises
/// ------
/// InputError
///     When a value or an edge is refused.
/// TypeError
///     When the values are no array of one dimension and float64.
#[pyfunction]
pub(crate) fn trials_histogram<'py>(
    py: Python<'py>,
    values: &Given<'py>,
    edges: Vec<f64>,
) -> PyResult<Bound<'py, PyArray1<u64>>> {
    let part = part(values, Points::Random)?;
    Ok(PyArray1::from_vec(py, py.detach(|| guarded(|| part.histogram(&edges)))?))
}

/// Give the probability that the weights of importance sampling come to.
///
/// Parameters
/// ----------
/// values : numpy.ndarray
///     The weights.
/// confidence : float
///     What the interval covers with.
///
/// Returns
/// -------
/// tuple of float
///     Probability, standard error, ends of the interval, effective trials.
///
/// Raises
/// ------
/// InputError
///     When something is refused, or fewer than 100 effective trials are beyond the limit.
/// TypeError
///     When the values are no array of one dimension and float64.
#[pyfunction]
pub(crate) fn trials_rare_tail(values: &Given<'_>, confidence: f64) -> PyResult<Rare> {
    let part = part(values, Points::Random)?;
    let of = guarded(|| part.importance(confidence))?;
    Ok((of.mean, of.standard_error, of.lower, of.upper, of.effective))
}

/// A part, as `gaugepoint.stack.Trials` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenPart<'py> {
    values: Given<'py>,
    seed: u64,
    points: String,
    hypercube_trials: Option<u64>,
    first: u64,
}

/// Give parts of one run, in any order, as one.
///
/// Parameters
/// ----------
/// parts : sequence of Trials
///     The parts.
///
/// Returns
/// -------
/// tuple
///     Number of the first trial, and the values.
///
/// Raises
/// ------
/// InputError
///     When they are not parts of one run that follow each other.
/// TypeError
///     When the values are no array of one dimension and float64.
#[pyfunction]
pub(crate) fn trials_merged<'py>(py: Python<'py>, parts: Vec<GivenPart<'py>>) -> PyResult<(u64, Array<'py>)> {
    let mut made = Vec::with_capacity(parts.len());
    for (k, part) in parts.into_iter().enumerate() {
        let values = batch::array::<Ix1>("values", &part.values)?.to_vec()?;
        let of = || {
            let points = points_of(&part.points, part.hypercube_trials)?;
            Part::of_values(part.seed, points, part.first, values).map_err(|e| e.under(&format!("parts/{k}")))
        };
        made.push(guarded(of)?);
    }
    let whole = guarded(|| Part::merged(made))?;
    Ok((whole.trials().start, PyArray1::from_vec(py, whole.into_values())))
}
