//! Linear stacks.

use crate::error::{Fault, guarded};
use crate::progress::{Progress, watched};
use crate::trials::{Array, Asked, Settled, adaptive, goal, toward_of};
use gaugepoint::Error;
use gaugepoint::measurement::distribution::Distribution;
use gaugepoint::progress::Watch;
use gaugepoint::stack::{
    self, Contributor, Span, Tail, ToleranceCost, Variation, VariationKind, Wanted, cause_of_kind,
};
use numpy::PyArray1;
use pyo3::prelude::*;

/// Lower and upper end.
type Ends = (f64, f64);
/// Nominal, mean, standard deviation; worst case, root-sum-square, Bender, modified; modified factor.
type Forms = ([f64; 3], [Ends; 4], Option<f64>);
/// Name, is it shared, standard deviation, share.
type Shares = Vec<(String, bool, f64, f64)>;
/// Below, above, bound of the relative error.
type Outside = (f64, f64, f64);
/// Name, tolerance, derivatives below and above.
type Slope = (String, f64, f64, f64);
/// Tolerances, cost, price, and what is outside.
type Allocated = (Vec<f64>, f64, f64, Outside);

/// A variation, as `gaugepoint.stack.Variation` has it.
#[derive(FromPyObject)]
struct GivenVariation {
    kind: String,
    numbers: Vec<f64>,
}

/// A contributor, as `gaugepoint.stack.Contributor` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenContributor {
    name: String,
    nominal: f64,
    lower: f64,
    upper: f64,
    variation: GivenVariation,
    coefficient: f64,
    count: i64,
}

/// A shared cause, as `gaugepoint.stack.SharedCause` has it.
#[derive(FromPyObject)]
struct GivenCause {
    name: String,
    kind: String,
    numbers: Vec<f64>,
    factors: Vec<(String, f64)>,
}

/// A cost, as `gaugepoint.stack.ToleranceCost` has it.
#[derive(FromPyObject)]
struct GivenCost {
    contributor: String,
    fixed: f64,
    factor: f64,
    power: f64,
    least: f64,
    most: f64,
}

impl GivenContributor {
    fn contributor(&self) -> Result<Contributor, Error> {
        let kind = kind(&self.variation.kind)?;
        let variation = Variation::of_kind(kind, &self.variation.numbers)?;
        // a count that no u32 holds is refused as one that is too large or too small
        let count = u32::try_from(self.count.max(0)).unwrap_or(u32::MAX);
        Contributor::new(&self.name, self.nominal, (self.lower, self.upper), variation)?
            .with_coefficient(self.coefficient)?
            .with_count(count)
    }
}

impl GivenCause {
    fn distribution(&self) -> Result<Distribution, Error> {
        cause_of_kind(kind(&self.kind)?, &self.numbers)
    }

    fn factors(&self) -> Vec<(&str, f64)> {
        self.factors.iter().map(|(name, factor)| (name.as_str(), *factor)).collect()
    }
}

fn kind(word: &str) -> Result<VariationKind, Error> {
    VariationKind::from_word(word).map_err(|e| e.named("kind"))
}

fn ends(span: Span) -> Ends {
    (span.lower, span.upper)
}

pub(crate) fn contributors_of(given: &[GivenContributor]) -> Result<Vec<Contributor>, Error> {
    let all = given.iter().enumerate().map(|(k, c)| {
        let under = |e: Error| e.under(&format!("contributors/{k}"));
        c.contributor().map_err(under)
    });
    all.collect()
}

fn made(contributors: &[GivenContributor], causes: &[GivenCause]) -> Result<stack::Stack, Error> {
    let mut stack = stack::Stack::new(contributors_of(contributors)?)?;
    for (k, cause) in causes.iter().enumerate() {
        let under = |e: Error| e.under(&format!("causes/{k}"));
        let distribution = cause.distribution().map_err(under)?;
        stack = stack.with_cause(&cause.name, distribution, &cause.factors()).map_err(under)?;
    }
    Ok(stack)
}

/// A linear stack, ready for its probabilities; `gaugepoint.stack.Stack` is its public form.
///
/// Parameters
/// ----------
/// contributors : sequence of Contributor
///     What it is made of.
/// causes : sequence of SharedCause
///     What several of them share.
///
/// Raises
/// ------
/// InputError
///     When a contributor or a cause is refused; it names the place.
#[pyclass(frozen, module = "gaugepoint._gaugepoint")]
pub(crate) struct Stack(stack::Stack);

#[pymethods]
impl Stack {
    #[new]
    fn new(contributors: Vec<GivenContributor>, causes: Vec<GivenCause>) -> Result<Self, Fault> {
        guarded(|| Ok(Stack(made(&contributors, &causes)?)))
    }

    /// Give the published forms.
    ///
    /// Returns
    /// -------
    /// tuple
    ///     Nominal, mean and standard deviation; ends of worst case, root-sum-square, Bender's and the modified; the modified factor.
    fn forms(&self) -> Result<Forms, Fault> {
        guarded(|| {
            let s = &self.0;
            let spans = [s.worst_case(), s.root_sum_square(1.0)?, s.bender(), s.modified_root_sum_square()];
            Ok(([s.nominal(), s.mean(), s.standard_deviation()], spans.map(ends), s.modified_factor()))
        })
    }

    /// Give the root-sum-square times a factor.
    ///
    /// Parameters
    /// ----------
    /// factor : float
    ///     The factor.
    ///
    /// Returns
    /// -------
    /// tuple of float
    ///     Both ends.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When the factor is refused.
    fn root_sum_square(&self, factor: f64) -> Result<Ends, Fault> {
        guarded(|| Ok(ends(self.0.root_sum_square(factor)?)))
    }

    /// Give the shares of the variance, largest first.
    ///
    /// Returns
    /// -------
    /// list of tuple
    ///     Name, whether it is a shared cause, standard deviation, share.
    fn shares(&self) -> Result<Shares, Fault> {
        guarded(|| {
            let shares = self.0.shares().into_iter();
            Ok(shares.map(|s| (s.name, s.is_shared, s.standard_deviation, s.share)).collect())
        })
    }

    /// Give the probabilities outside limits.
    ///
    /// Parameters
    /// ----------
    /// lower, upper : float
    ///     The limits; an infinite one is none.
    ///
    /// Returns
    /// -------
    /// tuple of float
    ///     Below, above, bound of the relative error of both.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a limit is refused, or a probability cannot be had.
    fn outside(&self, lower: f64, upper: f64) -> Result<Outside, Fault> {
        guarded(|| Ok(outside(self.0.outside(lower, upper)?)))
    }

    /// Give capability indices and the probabilities outside.
    ///
    /// Parameters
    /// ----------
    /// lower, upper : float
    ///     The limits.
    ///
    /// Returns
    /// -------
    /// tuple
    ///     Cp, Cpk, and as `outside`.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a limit is refused, or a probability cannot be had.
    fn capability(&self, lower: f64, upper: f64) -> Result<(f64, f64, Outside), Fault> {
        guarded(|| {
            let c = self.0.capability(lower, upper)?;
            Ok((c.cp, c.cpk, outside(c.tail)))
        })
    }

    /// Give the size that the stack is below with a probability.
    ///
    /// Parameters
    /// ----------
    /// probability : float
    ///     The probability.
    ///
    /// Returns
    /// -------
    /// float
    ///     The size.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When the probability is refused, or the size cannot be had.
    fn quantile(&self, probability: f64) -> Result<f64, Fault> {
        guarded(|| self.0.quantile(probability))
    }

    /// Give the size that the stack is above with a probability.
    ///
    /// Parameters
    /// ----------
    /// probability : float
    ///     The probability.
    ///
    /// Returns
    /// -------
    /// float
    ///     The size.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When the probability is refused, or the size cannot be had.
    fn quantile_above(&self, probability: f64) -> Result<f64, Fault> {
        guarded(|| self.0.quantile_above(probability))
    }

    /// Give the derivatives of the probabilities outside by each tolerance.
    ///
    /// Parameters
    /// ----------
    /// lower, upper : float
    ///     The limits; an infinite one is none.
    ///
    /// Returns
    /// -------
    /// list of tuple
    ///     Name, tolerance, and the derivatives of the probabilities below and above.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a limit is refused, or a derivative cannot be had.
    fn sensitivities(&self, lower: f64, upper: f64) -> Result<Vec<Slope>, Fault> {
        guarded(|| {
            let found = self.0.sensitivities(lower, upper)?.into_iter();
            Ok(found.map(|s| (s.name, s.tolerance, s.below, s.above)).collect())
        })
    }

    /// Give the tolerances of least cost.
    ///
    /// Parameters
    /// ----------
    /// lower, upper : float
    ///     The limits.
    /// outside, cpk : float or None
    ///     What is wanted: a probability outside, or a Cpk.
    /// costs : sequence of ToleranceCost
    ///     What tolerances cost.
    ///
    /// Returns
    /// -------
    /// tuple
    ///     Tolerances, cost, price, and as `outside`.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When something is refused, or cannot be reached.
    fn allocate(
        &self,
        py: Python<'_>,
        lower: f64,
        upper: f64,
        outside: Option<f64>,
        cpk: Option<f64>,
        costs: Vec<GivenCost>,
    ) -> Result<Allocated, Fault> {
        let work = || {
            let costs = costs.iter().enumerate().map(|(k, c)| {
                let under = |e: Error| e.under(&format!("costs/{k}"));
                cost(&self.0, c).map_err(under)
            });
            let costs: Vec<ToleranceCost> = costs.collect::<Result<_, _>>()?;
            let a = self.0.allocate((lower, upper), Wanted::either(outside, cpk)?, &costs)?;
            Ok((a.tolerances, a.cost, a.price, self::outside(a.tail)))
        };
        py.detach(|| guarded(work))
    }

    /// Give the density at sizes.
    ///
    /// Parameters
    /// ----------
    /// sizes : sequence of float
    ///     Where.
    ///
    /// Returns
    /// -------
    /// numpy.ndarray
    ///     The densities.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When a size is refused, or a density cannot be had.
    fn densities<'py>(&self, py: Python<'py>, sizes: Vec<f64>) -> PyResult<Array<'py>> {
        let found = py.detach(|| guarded(|| self.0.densities(&sizes)))?;
        Ok(PyArray1::from_vec(py, found))
    }

    /// Give a density to draw.
    ///
    /// Parameters
    /// ----------
    /// count : int
    ///     Number of sizes.
    ///
    /// Returns
    /// -------
    /// tuple of numpy.ndarray
    ///     Sizes and densities.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When the count is refused, or a density cannot be had.
    fn curve<'py>(&self, py: Python<'py>, count: usize) -> PyResult<(Array<'py>, Array<'py>)> {
        let curve = py.detach(|| guarded(|| self.0.curve(count)))?;
        Ok((PyArray1::from_vec(py, curve.sizes), PyArray1::from_vec(py, curve.densities)))
    }

    /// Give the probability between edges.
    ///
    /// Parameters
    /// ----------
    /// edges : sequence of float
    ///     Rising edges.
    ///
    /// Returns
    /// -------
    /// numpy.ndarray
    ///     The probabilities, one less than edges.
    ///
    /// Raises
    /// ------
    /// InputError
    ///     When an edge is refused, or a probability cannot be had.
    fn histogram<'py>(&self, py: Python<'py>, edges: Vec<f64>) -> PyResult<Array<'py>> {
        let found = py.detach(|| guarded(|| self.0.histogram(&edges)))?;
        Ok(PyArray1::from_vec(py, found))
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
    ///     When something is refused.
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
        let values =
            py.detach(|| watched(progress, |watch| of.values(self.0.monte_carlo(of.seed).watched(watch))));
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
    ///     When something is refused.
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
        py.detach(|| watched(progress, |watch| adaptive(&self.0.monte_carlo(seed).watched(watch), goal)))
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
    ///     When something is refused.
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
        let weights = |watch: Watch<'_>| of.values(self.0.importance(toward, limit, of.seed)?.watched(watch));
        let weights = py.detach(|| watched(progress, weights));
        Ok(PyArray1::from_vec(py, weights?))
    }
}

/// A cost for the contributor of its name.
fn cost(stack: &stack::Stack, cost: &GivenCost) -> Result<ToleranceCost, Error> {
    let GivenCost { fixed, factor, power, least, most, .. } = *cost;
    let place = stack.place(&cost.contributor).map_err(|e| e.named("contributor"))?;
    Ok(ToleranceCost { place, fixed, factor, power, least, most })
}

fn outside(tail: Tail) -> Outside {
    (tail.below, tail.above, tail.error)
}
