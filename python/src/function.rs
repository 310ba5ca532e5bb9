//! Functions of contributors: of a formula, ready made for an engine, or of a callable.

use crate::error::{Fault, guarded};
use crate::progress::{Progress, watched};
use crate::stack::{GivenContributor, contributors_of};
use crate::trials::{Array, Asked, Settled, adaptive, goal, toward_of};
use gaugepoint::Error;
use gaugepoint::calc::Model;
use gaugepoint::stack::{self, Columnwise, Contributor, EngineStack, Extreme};
use numpy::ndarray::Ix1;
use numpy::{PyArray, PyArray1, PyArrayMethods, PyUntypedArray, PyUntypedArrayMethods};
use pyo3::gc::{PyTraverseError, PyVisit};
use pyo3::prelude::*;
use pyo3::types::PyTuple;

/// Name, sensitivity, standard deviation, share, alone, together.
type Effect = (String, f64, f64, f64, f64, f64);
/// Derivation; nominal; mean and standard deviation to first order; mean, shift and standard deviation to second order, skewness, excess kurtosis; effects.
type Moments = (&'static str, f64, (f64, f64), (f64, f64, f64, Option<f64>, Option<f64>), Vec<Effect>);
/// Attained, sizes by contributor, bound.
type End = (f64, Vec<(String, f64)>, Option<f64>);

/// A function of contributors; `gaugepoint.stack.Function` is its public form.
///
/// Parameters
/// ----------
/// contributors : sequence of Contributor
///     What it is a function of.
/// formula : str or None
///     A formula.
/// symbols : sequence of str or None
///     Symbols of the contributors in it; without them their names.
/// engine : str or None
///     Or a ready-made stack.
/// callable : callable or None
///     Or what computes it.
///
/// Raises
/// ------
/// InputError
///     When a contributor, the formula or the engine is refused.
#[pyclass(frozen, module = "gaugepoint._gaugepoint")]
pub(crate) struct Function(Made);

enum Made {
    Model(stack::Function<Model>),
    Called(Called),
}

struct Called {
    contributors: Vec<Contributor>,
    callable: Py<PyAny>,
}

/// What writes the values of trials.
type Values<'c> = Box<dyn Fn(&[&[f64]], &mut [f64]) -> PyResult<()> + 'c>;

impl Called {
    /// The function for one call, which has failures of its own.
    fn function<'c>(
        &'c self,
        py: Python<'c>,
    ) -> Result<stack::Function<Columnwise<Values<'c>, PyErr>>, Error> {
        let callable = self.callable.bind(py);
        let values: Values<'c> = Box::new(move |sizes, values| write(callable, sizes, values));
        stack::Function::new(self.contributors.clone(), Columnwise::new(values))
    }
}

/// Calls with an array for each contributor, and takes the array that comes back.
fn write(callable: &Bound<'_, PyAny>, sizes: &[&[f64]], values: &mut [f64]) -> PyResult<()> {
    let py = callable.py();
    let arrays = sizes.iter().map(|sizes| PyArray1::from_slice(py, sizes));
    let given = callable.call1(PyTuple::new(py, arrays)?)?;
    match given.cast::<PyArray<f64, Ix1>>() {
        Ok(array) if array.len() == values.len() => {
            values.iter_mut().zip(array.readonly().as_array()).for_each(|(value, made)| *value = *made);
            Ok(())
        }
        _ => Err(refused(&given, values.len())),
    }
}

/// The refusal of what is no array of the values.
fn refused(given: &Bound<'_, PyAny>, trials: usize) -> PyErr {
    let made = || {
        let what = match given.cast::<PyUntypedArray>() {
            Ok(array) => format!("array of {} and shape {}", array.dtype(), array.getattr("shape")?),
            Err(_) => given.get_type().name()?.to_string(),
        };
        let reason = format!("an array of float64 with the value of each of {trials} trials is needed");
        let at_door = given.py().import("gaugepoint.error")?.getattr("at_door")?;
        at_door.call1(("wrong_type", "callable", what, reason))
    };
    made().map_or_else(|failed| failed, PyErr::from_value)
}

/// Asks a function, whatever it is made of; what a callable raises stands before what became of it. Other threads run meanwhile where
/// nothing is called.
macro_rules! asked {
    ($py:expr, $of:expr, $function:ident => $answer:expr) => {
        asked!($py, $of, None, $function, _watch => $answer)
    };
    ($py:expr, $of:expr, $progress:expr, $function:ident, $watch:pat => $answer:expr) => {
        match &$of.0 {
            Made::Model($function) => $py.detach(|| watched($progress, |$watch| $answer)),
            Made::Called(called) => {
                let $function = &guarded(|| called.function($py))?;
                let answer = watched($progress, |$watch| $answer);
                $function.law().failure().map_or(answer, Err)
            }
        }
    };
}

#[pymethods]
impl Function {
    #[new]
    fn new(
        contributors: Vec<GivenContributor>,
        formula: Option<&str>,
        symbols: Option<Vec<String>>,
        engine: Option<&str>,
        callable: Option<Py<PyAny>>,
    ) -> Result<Self, Fault> {
        guarded(|| {
            let contributors = contributors_of(&contributors)?;
            let Some(callable) = callable else {
                return Ok(Function(Made::Model(model(contributors, formula, symbols, engine)?)));
            };
            // refused now and not when it is asked
            let nothing = |_: &[f64]| 0.0;
            let contributors = stack::Function::new(contributors, nothing)?.contributors().to_vec();
            Ok(Function(Made::Called(Called { contributors, callable })))
        })
    }

    fn __traverse__(&self, visit: PyVisit<'_>) -> Result<(), PyTraverseError> {
        match &self.0 {
            Made::Model(_) => Ok(()),
            Made::Called(called) => visit.call(&called.callable),
        }
    }

    /// Give the value at the nominals.
    ///
    /// Returns
    /// -------
    /// float
    ///     The value.
    fn nominal(&self, py: Python<'_>) -> PyResult<f64> {
        asked!(py, self, f => f.nominal())
    }

    /// Give the moments to first and second order, and what each contributor does.
    ///
    /// Returns
    /// -------
    /// tuple
    ///     Derivation, nominal, moments of both orders, effects.
    fn propagation(&self, py: Python<'_>) -> PyResult<Moments> {
        let p = asked!(py, self, f => f.propagation())?;
        let (first, second) = (p.first, p.second);
        let second =
            (second.mean, second.shift, second.standard_deviation, second.skewness, second.excess_kurtosis);
        let effect =
            |e: stack::Effect| (e.name, e.sensitivity, e.standard_deviation, e.share, e.alone, e.together);
        let effects = p.effects.into_iter().map(effect).collect();
        Ok((p.derivation.word(), p.nominal, (first.mean, first.standard_deviation), second, effects))
    }

    /// Give the smallest and the largest value within the limits.
    ///
    /// Returns
    /// -------
    /// tuple
    ///     Proof; of each end the value that is attained, the sizes there, and the bound.
    fn worst_case(&self, py: Python<'_>) -> PyResult<(&'static str, End, End)> {
        let found = asked!(py, self, f => f.worst_case())?;
        Ok((found.proof.word(), self.end(found.lowest), self.end(found.highest)))
    }

    /// Give the values of trials.
    ///
    /// Parameters
    /// ----------
    /// seed, first, count : int
    ///     Seed, number of the first trial, and how many there are.
    /// points : str
    ///     How the points lie.
    /// hypercube_trials : int or None
    ///     Trials of the whole run of a Latin hypercube.
    /// progress : callable or None
    ///     Told what is done and of how much.
    ///
    /// Returns
    /// -------
    /// numpy.ndarray
    ///     The values.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When something is refused, or the function is not finite in a trial.
    #[expect(clippy::too_many_arguments, reason = "a run and who is told")]
    fn trials<'py>(
        &self,
        py: Python<'py>,
        seed: u64,
        first: u64,
        count: u64,
        points: &str,
        hypercube_trials: Option<u64>,
        progress: Progress,
    ) -> PyResult<Array<'py>> {
        let of = Asked::new(seed, first, count, points, hypercube_trials)?;
        let values = asked!(py, self, progress, f, watch => of.values(f.monte_carlo(of.seed).watched(watch)));
        Ok(PyArray1::from_vec(py, values?))
    }

    /// Make trials until they are stable.
    ///
    /// Parameters
    /// ----------
    /// seed : int
    ///     Seed.
    /// probability : float
    ///     Coverage probability.
    /// coverage : str
    ///     The interval whose ends must settle.
    /// digits : int
    ///     Significant digits that are meant.
    /// most_trials : int
    ///     Trials at which it stops unsettled.
    /// progress : callable or None
    ///     Told what is done and of how much.
    ///
    /// Returns
    /// -------
    /// tuple
    ///     Summary, sequences, tolerance, settled.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When something is refused, or the function is not finite in a trial.
    #[expect(clippy::too_many_arguments, reason = "a run, its limit and who is told")]
    fn adaptive(
        &self,
        py: Python<'_>,
        seed: u64,
        probability: f64,
        coverage: &str,
        digits: u64,
        most_trials: u64,
        progress: Progress,
    ) -> PyResult<Settled> {
        let goal = goal(probability, coverage, digits, most_trials)?;
        asked!(py, self, progress, f, watch => adaptive(&f.monte_carlo(seed).watched(watch), goal))
    }

    /// Give the weights of trials of a rare tail.
    ///
    /// Parameters
    /// ----------
    /// toward : str
    ///     The side of the limit that is rare.
    /// limit : float
    ///     The limit.
    /// seed, first, count : int
    ///     Seed, number of the first trial, and how many there are.
    /// points : str
    ///     How the points lie.
    /// hypercube_trials : int or None
    ///     Trials of the whole run of a Latin hypercube.
    /// progress : callable or None
    ///     Told what is done and of how much.
    ///
    /// Returns
    /// -------
    /// numpy.ndarray
    ///     The weights.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When something is refused, or the function is not finite in a trial.
    #[expect(clippy::too_many_arguments, reason = "a run, its limit and who is told")]
    fn importance<'py>(
        &self,
        py: Python<'py>,
        toward: &str,
        limit: f64,
        seed: u64,
        first: u64,
        count: u64,
        points: &str,
        hypercube_trials: Option<u64>,
        progress: Progress,
    ) -> PyResult<Array<'py>> {
        let of = Asked::new(seed, first, count, points, hypercube_trials)?;
        let toward = guarded(|| toward_of(toward))?;
        let weights = asked!(py, self, progress, f, watch => {
            of.values(f.importance(toward, limit, of.seed)?.watched(watch))
        });
        Ok(PyArray1::from_vec(py, weights?))
    }
}

impl Function {
    fn end(&self, end: Extreme) -> End {
        let contributors = match &self.0 {
            Made::Model(function) => function.contributors(),
            Made::Called(called) => &called.contributors,
        };
        let at = contributors.iter().zip(end.at).map(|(c, size)| (c.name().to_owned(), size));
        (end.attained, at.collect(), end.bound)
    }
}

fn model(
    contributors: Vec<Contributor>,
    formula: Option<&str>,
    symbols: Option<Vec<String>>,
    engine: Option<&str>,
) -> Result<stack::Function<Model>, Error> {
    if let Some(word) = engine {
        return EngineStack::from_word(word).map_err(|e| e.named("engine"))?.function(contributors);
    }
    let symbols = symbols.unwrap_or_else(|| contributors.iter().map(|c| c.name().to_owned()).collect());
    let symbols: Vec<&str> = symbols.iter().map(String::as_str).collect();
    stack::Function::from_text(contributors, &symbols, formula.unwrap_or_default())
}

/// Give the ready-made stacks of an engine.
///
/// Returns
/// -------
/// list of tuple
///     Word, names of the contributors, unit.
#[pyfunction]
pub(crate) fn engine_stacks() -> Vec<(&'static str, Vec<&'static str>, &'static str)> {
    EngineStack::ALL.iter().map(|of| (of.word(), of.contributors(), of.unit())).collect()
}
