//! Trials of stacks: what is drawn, and where rare ones are looked for.

use super::contributor::Toward;
use super::document::PointsChoice;
use crate::error::{Error, ErrorKind};
use crate::measurement::monte_carlo::{Drawn, Trials};
use crate::measurement::points::Points;
use crate::measurement::random::Column;
use crate::measurement::uncertainty::{Input, root_sum_square};
use crate::wide::{Columnar, Width};
use core::ops::Range;

impl PointsChoice {
    /// Points of this kind; `trials` is the number of trials of the whole run, which only a Latin hypercube has.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`], [`ErrorKind::Contradiction`] when it is missing or not used.
    pub fn points(self, trials: Option<u64>) -> Result<Points, Error> {
        match (self, trials) {
            (PointsChoice::Random, None) => Ok(Points::Random),
            (PointsChoice::Sobol, None) => Ok(Points::Sobol),
            (PointsChoice::LatinHypercube, Some(trials)) => Ok(Points::LatinHypercube { trials }),
            (PointsChoice::LatinHypercube, None) => {
                let reason = "a Latin hypercube needs the number of trials of the whole run";
                Err(Error::new(ErrorKind::MissingField, "", reason).at("hypercube_trials"))
            }
            (_, Some(trials)) => {
                let reason = "only a Latin hypercube has a number of trials of the whole run";
                Err(Error::new(ErrorKind::Contradiction, trials.to_string(), reason).at("hypercube_trials"))
            }
        }
    }
}

/// Sources that are drawn, and the inputs of a function that they make.
#[derive(Debug, Default)]
pub(super) struct Sources {
    pub(super) drawn: Vec<Drawn>,
    pub(super) inputs: Vec<Input>,
}

impl Sources {
    /// An input with a source of its own.
    pub(super) fn add(&mut self, estimate: f64, drawn: Drawn) {
        self.inputs.push(Input { estimate, terms: vec![(self.drawn.len(), 1.0)] });
        self.drawn.push(drawn);
    }

    /// Inputs at normal scores of the sources.
    fn at(&self, scores: &[f64]) -> Vec<f64> {
        let errors: Vec<f64> = self.drawn.iter().zip(scores).map(|(of, z)| of.at_score(*z)).collect();
        let error = |source: usize| errors.get(source).copied().unwrap_or(f64::NAN);
        let input = |i: &Input| i.terms.iter().fold(i.estimate, |sum, (s, factor)| sum + factor * error(*s));
        self.inputs.iter().map(input).collect()
    }

    /// Derivative of a function by each score, from those by each input.
    fn by_scores(&self, scores: &[f64], gradient: &[f64]) -> Vec<f64> {
        let mut by_source = vec![0.0; self.drawn.len()];
        for (input, slope) in self.inputs.iter().zip(gradient) {
            for (source, factor) in &input.terms {
                if let Some(place) = by_source.get_mut(*source) {
                    *place += slope * factor;
                }
            }
        }
        // a direction is all that is needed of it: a wide difference, which a sample has too
        let spread = |of: &Drawn, z: f64| of.at_score(z + 0.1) - of.at_score(z - 0.1);
        by_source.iter().zip(&self.drawn).zip(scores).map(|((slope, of), z)| slope * spread(of, *z)).collect()
    }
}

/// The one input, which is the stack.
pub(super) struct Only;

impl Trials for Only {
    type Space = ();

    fn space(&self) {}

    fn block(&self, _: Width, inputs: &[Column], _: Range<usize>, (): &mut (), values: &mut Column) {
        if let Some(only) = inputs.first() {
            *values = *only;
        }
    }
}

/// Weights of the trials beyond a limit; the last input is the weight.
pub(super) struct Beyond<T> {
    pub(super) of: T,
    pub(super) toward: Toward,
    pub(super) limit: f64,
}

impl<T: Trials> Trials for Beyond<T> {
    type Space = T::Space;

    fn space(&self) -> T::Space {
        self.of.space()
    }

    fn block(
        &self,
        width: Width,
        inputs: &[Column],
        lanes: Range<usize>,
        space: &mut T::Space,
        values: &mut Column,
    ) {
        let Some((weights, inputs)) = inputs.split_last() else { return };
        self.of.block(width, inputs, lanes, space, values);
        self.weigh(width, values, weights);
    }

    fn most_together(&self) -> Option<usize> {
        self.of.most_together()
    }

    fn together(&self, inputs: &[&[f64]], values: &mut [f64]) {
        let Some((weights, inputs)) = inputs.split_last() else { return };
        self.of.together(inputs, values);
        self.weigh(Width::baseline(), values, weights);
    }
}

impl<T> Beyond<T> {
    fn weigh(&self, width: Width, values: &mut [f64], weights: &[f64]) {
        width.run(Weigh { toward: self.toward, limit: self.limit, values, weights });
    }
}

/// The weight of each trial beyond a limit in place of its value.
struct Weigh<'r> {
    toward: Toward,
    limit: f64,
    values: &'r mut [f64],
    weights: &'r [f64],
}

impl Columnar for Weigh<'_> {
    #[inline(always)]
    fn run(self) {
        for (value, weight) in self.values.iter_mut().zip(self.weights) {
            let beyond = match self.toward {
                Toward::Lower => *value < self.limit,
                Toward::Upper => *value > self.limit,
            };
            // what is not a number stays one, and is refused
            *value = if beyond { *weight } else { *value * 0.0 };
        }
    }
}

/// A function of the inputs: value and first derivatives.
type Graded<'f> = dyn Fn(&[f64]) -> (f64, Vec<f64>) + 'f;

/// Largest distance from the means that is looked at, in standard scores.
const FARTHEST: f64 = 9.0;

/// Scores of the most probable place at a limit: on each sphere about the means the highest value, the sphere found by halving.
pub(super) fn shift_toward(
    sources: &Sources,
    gradient: &Graded<'_>,
    toward: Toward,
    limit: f64,
) -> Result<Vec<f64>, Error> {
    let side = if toward == Toward::Upper { 1.0 } else { -1.0 };
    let refuse = |reason: &str| {
        Err(Error::new(ErrorKind::Contradiction, limit.to_string(), reason).value(limit).at("limit"))
    };
    let mut scores = vec![0.0; sources.drawn.len()];
    let beyond = |scores: &[f64]| side * (gradient(&sources.at(scores)).0 - limit) > 0.0;
    if beyond(&scores) {
        return refuse("the medians of the contributors are beyond the limit: it is not rare");
    }
    climb(sources, gradient, side, FARTHEST, &mut scores);
    if !beyond(&scores) {
        return refuse("no place beyond the limit was found within 9 standard scores");
    }
    let (mut near, mut far, mut found) = (0.0, FARTHEST, scores.clone());
    for _ in 0..30 {
        let radius = near + (far - near) / 2.0;
        climb(sources, gradient, side, radius, &mut scores);
        if beyond(&scores) {
            far = radius;
            found.clone_from(&scores);
        } else {
            near = radius;
        }
    }
    Ok(found)
}

/// Moves scores to the highest value on a sphere: along the gradient again and again.
fn climb(sources: &Sources, gradient: &Graded<'_>, side: f64, radius: f64, scores: &mut Vec<f64>) {
    // what lies on the last sphere is brought to this one
    let size = root_sum_square(scores);
    if size > 0.0 {
        scores.iter_mut().for_each(|z| *z *= radius / size);
    }
    for _ in 0..20 {
        let slopes = sources.by_scores(scores, &gradient(&sources.at(scores)).1);
        let size = root_sum_square(&slopes);
        if !(size > 0.0 && size.is_finite()) {
            return;
        }
        // half of the way: on a flank that grows flat the whole one would swing
        let mean = |z: f64, slope: f64| z / 2.0 + side * radius * slope / size / 2.0;
        let mut next: Vec<f64> = scores.iter().zip(&slopes).map(|(z, slope)| mean(*z, *slope)).collect();
        let size = root_sum_square(&next);
        if size <= 0.0 {
            return;
        }
        next.iter_mut().for_each(|z| *z *= radius / size);
        *scores = next;
    }
}
