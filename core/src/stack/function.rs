//! Any function of contributors.

use super::contributor::Contributor;
use super::moments::{Moments, Polynomial};
use super::trials::{Beyond, Sources, shift_toward};
use super::worst::{self, WorstCase};
use super::{Toward, check_names};
use crate::calc::Model;
use crate::choice::choices;
use crate::error::{Error, ErrorKind};
use crate::measurement::distribution::within;
use crate::measurement::jet::Jet;
use crate::measurement::monte_carlo::{MonteCarlo, Trials};
use crate::measurement::random::Column;
use crate::measurement::statistics::sum;
use crate::wide::Width;
use core::ops::Range;

/// Most contributors of a function.
const MOST: usize = 100;
/// Most terms of the square of the polynomial of second degree from which skewness and kurtosis are made.
const MOST_TERMS: usize = 5000;

choices! {
    /// Where derivatives come from.
    Derivation {
        /// By the rules of derivation, from the operations.
        Exact = "exact",
        /// By differences of fourth order over twentieths of a standard deviation; mixed ones of second order.
        Numeric = "numeric",
    }
}

/// Value and derivatives at a place.
#[derive(Debug, Clone, PartialEq)]
pub struct Derivatives {
    /// Value.
    pub value: f64,
    /// First derivatives.
    pub gradient: Vec<f64>,
    /// Second derivatives, the lower triangle row by row.
    pub hessian: Vec<f64>,
    /// Where they come from.
    pub derivation: Derivation,
}

/// What a function of contributors can be made of: a [`Model`], whose operations are known, or a closure of the sizes, which is only called.
pub trait Law {
    /// Value at sizes of the contributors.
    fn value(&self, at: &[f64]) -> f64;

    /// Value and first derivatives; `scales` say how far each contributor varies.
    fn gradient(&self, at: &[f64], scales: &[f64]) -> (f64, Vec<f64>);

    /// Value with first and second derivatives.
    fn derivatives(&self, at: &[f64], scales: &[f64]) -> Derivatives;

    /// Smallest and largest value within limits.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::Contradiction`] when the function is not defined everywhere within the limits.
    fn worst_case(&self, limits: &[(f64, f64)]) -> Result<WorstCase, Error>;

    /// The same for trials.
    fn trials(&self) -> impl Trials;

    /// Contributors that it does not use; a closure may use all.
    fn check_use(&self, _contributors: &[Contributor]) -> Result<(), Error> {
        Ok(())
    }
}

impl Law for Model {
    fn value(&self, at: &[f64]) -> f64 {
        Model::value(self, at)
    }

    fn gradient(&self, at: &[f64], _: &[f64]) -> (f64, Vec<f64>) {
        let count = at.len();
        let jets: Vec<Jet> = at.iter().enumerate().map(|(k, x)| Jet::variable(*x, k, count)).collect();
        let result = self.jet(&jets);
        (result.value(), result.gradient(count).to_vec())
    }

    fn derivatives(&self, at: &[f64], _: &[f64]) -> Derivatives {
        let count = at.len();
        let jets: Vec<Jet> = at.iter().enumerate().map(|(k, x)| Jet::variable_second(*x, k, count)).collect();
        let result = self.jet(&jets);
        Derivatives {
            value: result.value(),
            gradient: result.gradient(count).to_vec(),
            hessian: result.hessian(count),
            derivation: Derivation::Exact,
        }
    }

    fn worst_case(&self, limits: &[(f64, f64)]) -> Result<WorstCase, Error> {
        worst::proved(self, limits)
    }

    fn trials(&self) -> impl Trials {
        self
    }

    fn check_use(&self, contributors: &[Contributor]) -> Result<(), Error> {
        let used = self.inputs();
        if let Some(beyond) = used.iter().find(|k| **k >= contributors.len()) {
            let reason = "the function has more inputs than there are contributors";
            return Err(Error::new(ErrorKind::Contradiction, beyond.to_string(), reason).at("model"));
        }
        match contributors.iter().enumerate().find(|(k, _)| !used.contains(k)) {
            Some((k, contributor)) => {
                let reason = "the function does not use this contributor";
                let error = Error::new(ErrorKind::Contradiction, contributor.name.as_str(), reason);
                Err(error.at(&format!("contributors/{k}/name")))
            }
            None => Ok(()),
        }
    }
}

impl<F: Fn(&[f64]) -> f64> Law for F {
    fn value(&self, at: &[f64]) -> f64 {
        self(at)
    }

    fn gradient(&self, at: &[f64], scales: &[f64]) -> (f64, Vec<f64>) {
        let slope = |k: usize, h: f64| first_difference(&|d| self(&moved(at, &[(k, d)])), h);
        (self(at), scales.iter().enumerate().map(|(k, scale)| slope(k, step(*scale))).collect())
    }

    fn derivatives(&self, at: &[f64], scales: &[f64]) -> Derivatives {
        let (value, gradient) = Law::gradient(self, at, scales);
        let mut hessian = Vec::new();
        for (i, first) in scales.iter().enumerate() {
            for (j, second) in scales.iter().enumerate().take(i + 1) {
                let (h, k) = (step(*first), step(*second));
                let at = |moves: &[(usize, f64)]| self(&moved(at, moves));
                hessian.push(if i == j {
                    second_difference(&|d| at(&[(i, d)]), h)
                } else {
                    let corner = |a: f64, b: f64| at(&[(i, a * h), (j, b * k)]);
                    let crossed =
                        corner(1.0, 1.0) - corner(1.0, -1.0) - corner(-1.0, 1.0) + corner(-1.0, -1.0);
                    crossed / (4.0 * h * k)
                });
            }
        }
        Derivatives { value, gradient, hessian, derivation: Derivation::Numeric }
    }

    fn worst_case(&self, limits: &[(f64, f64)]) -> Result<WorstCase, Error> {
        worst::searched(&|x| self(x), limits)
    }

    fn trials(&self) -> impl Trials {
        Called(self)
    }
}

/// Step of differences.
fn step(scale: f64) -> f64 {
    scale / 20.0
}

fn moved(at: &[f64], moves: &[(usize, f64)]) -> Vec<f64> {
    let mut out = at.to_vec();
    for (k, by) in moves {
        if let Some(place) = out.get_mut(*k) {
            *place += by;
        }
    }
    out
}

/// Source: A&S 25.3.6.
fn first_difference(f: &dyn Fn(f64) -> f64, h: f64) -> f64 {
    (f(-2.0 * h) - 8.0 * f(-h) + 8.0 * f(h) - f(2.0 * h)) / (12.0 * h)
}

/// Source: A&S 25.3.24.
fn second_difference(f: &dyn Fn(f64) -> f64, h: f64) -> f64 {
    (-f(-2.0 * h) + 16.0 * f(-h) - 30.0 * f(0.0) + 16.0 * f(h) - f(2.0 * h)) / (12.0 * h * h)
}

/// A closure of plain sizes, called trial by trial.
struct Called<'f, F>(&'f F);

impl<F: Fn(&[f64]) -> f64> Trials for Called<'_, F> {
    type Space = Vec<f64>;

    fn space(&self) -> Vec<f64> {
        Vec::new()
    }

    fn block(
        &self,
        _: Width,
        inputs: &[Column],
        lanes: Range<usize>,
        space: &mut Vec<f64>,
        values: &mut Column,
    ) {
        space.resize(inputs.len(), 0.0);
        for (lane, value) in values.iter_mut().enumerate().take(lanes.end).skip(lanes.start) {
            for (place, column) in space.iter_mut().zip(inputs) {
                *place = column.get(lane).copied().unwrap_or(f64::NAN);
            }
            *value = (self.0)(space);
        }
    }
}

/// A function of contributors, each of which adds one size. See the [module](super).
#[derive(Debug, Clone)]
pub struct Function<L> {
    contributors: Vec<Contributor>,
    law: L,
}

/// What a contributor does to a function.
#[derive(Debug, Clone, PartialEq)]
pub struct Effect {
    /// Name of the contributor.
    pub name: String,
    /// Derivative of the function by it, at the means.
    pub sensitivity: f64,
    /// Standard deviation that it alone gives to first order.
    pub standard_deviation: f64,
    /// Share of the variance to first order.
    pub share: f64,
    /// Share of the variance to second order that it has alone.
    pub alone: f64,
    /// Share of the variance to second order of its products with others; each product stands with both.
    pub together: f64,
}

/// Mean and standard deviation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FirstOrder {
    /// The function at the means of the contributors.
    pub mean: f64,
    /// `sqrt(sum of f_i^2 s_i^2)`. Source: law of propagation, JCGM 100:2008, 5.1.2.
    pub standard_deviation: f64,
}

/// Moments of the polynomial of second degree.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SecondOrder {
    /// `f + 1/2 sum of f_ii s_i^2`.
    pub mean: f64,
    /// That mean less the function at the means.
    pub shift: f64,
    /// Standard deviation.
    pub standard_deviation: f64,
    /// Third central moment over the cube of the standard deviation; none when nothing varies or there are too many terms.
    pub skewness: Option<f64>,
    /// Fourth central moment over the square of the variance, less 3; none in the same cases.
    pub excess_kurtosis: Option<f64>,
}

/// A function by its derivatives at the means of the contributors.
#[derive(Debug, Clone, PartialEq)]
pub struct Propagation {
    /// Where the derivatives come from.
    pub derivation: Derivation,
    /// The function at the nominals.
    pub nominal: f64,
    /// To first order.
    pub first: FirstOrder,
    /// To second order.
    pub second: SecondOrder,
    /// What each contributor does, largest share first.
    pub effects: Vec<Effect>,
}

impl Function<Model> {
    /// A formula in symbols, one for each contributor in order.
    ///
    /// # Errors
    /// As [`Model::from_text`] and [`Function::new`].
    pub fn from_text(contributors: Vec<Contributor>, symbols: &[&str], text: &str) -> Result<Self, Error> {
        let model = Model::from_text(text, symbols).map_err(|e| e.at("model"))?;
        Self::new(contributors, model)
    }
}

impl<L: Law> Function<L> {
    /// A function of the sizes of contributors, in order: of a [`Model`], or of a closure `|x: &[f64]| ...`.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] without contributors, [`ErrorKind::TooLarge`] for more than 100, [`ErrorKind::Repeated`] for a name that stands
    /// twice, [`ErrorKind::Contradiction`] for a coefficient or a count (the function says how a contributor acts) and for a contributor
    /// that a model does not use.
    pub fn new(contributors: Vec<Contributor>, law: L) -> Result<Self, Error> {
        check_names(&contributors)?;
        if contributors.len() > MOST {
            let reason = format!("a function has at most {MOST} contributors");
            return Err(
                Error::new(ErrorKind::TooLarge, contributors.len().to_string(), reason).at("contributors")
            );
        }
        for (k, contributor) in contributors.iter().enumerate() {
            let reason = "the function says how a contributor acts: no coefficient and no count";
            #[expect(clippy::float_cmp, reason = "one that was never given is 1 to the bit")]
            let refused = match (contributor.coefficient == 1.0, contributor.count == 1) {
                (false, _) => Some((contributor.coefficient.to_string(), "coefficient")),
                (_, false) => Some((contributor.count.to_string(), "count")),
                _ => None,
            };
            if let Some((value, field)) = refused {
                let error = Error::new(ErrorKind::Contradiction, value, reason);
                return Err(error.at(&format!("contributors/{k}/{field}")));
            }
        }
        law.check_use(&contributors)?;
        Ok(Function { contributors, law })
    }

    /// Its contributors.
    #[must_use]
    pub fn contributors(&self) -> &[Contributor] {
        &self.contributors
    }

    /// What it is made of.
    #[must_use]
    pub fn law(&self) -> &L {
        &self.law
    }

    /// Value at the nominals.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] when it has none there.
    pub fn nominal(&self) -> Result<f64, Error> {
        let nominals: Vec<f64> = self.contributors.iter().map(|c| c.nominal).collect();
        Ok(finite("the function", self.law.value(&nominals), "nominals")? + 0.0)
    }

    /// Smallest and largest value within the limits of all contributors.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::Contradiction`] when the function is not defined or not bounded everywhere within the limits.
    pub fn worst_case(&self) -> Result<WorstCase, Error> {
        let limits: Vec<(f64, f64)> =
            self.contributors.iter().map(|c| (c.nominal + c.lower, c.nominal + c.upper)).collect();
        self.law.worst_case(&limits)
    }

    /// Moments to first and second order, about the means of the contributors. The second order is the polynomial
    /// `f + sum of f_i d_i + 1/2 sum of f_ij d_i d_j`, whose moments are exact, from those of the contributors up to the eighth. Source:
    /// Evans, Statistical tolerancing: the state of the art, part II, Journal of Quality Technology 7 (1975), from memory; here by expansion.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] when the function or a derivative is not finite at the means.
    pub fn propagation(&self) -> Result<Propagation, Error> {
        let means = self.means();
        let moments: Vec<Moments> = self.contributors.iter().map(|c| c.variation.moments()).collect();
        let m =
            |k: usize, order: usize| moments.get(k).and_then(|m| m.get(order)).copied().unwrap_or(f64::NAN);
        let of = self.law.derivatives(&means, &self.scales());
        finite("the function", of.value, "means")?;
        finite("a first derivative", of.gradient.iter().sum(), "means")?;
        finite("a second derivative", of.hessian.iter().sum(), "means")?;
        let b = |k: usize| of.gradient.get(k).copied().unwrap_or(f64::NAN);
        let entry = |i: usize, j: usize| {
            let (row, column) = if i < j { (j, i) } else { (i, j) };
            of.hessian.get(row * (row + 1) / 2 + column).copied().unwrap_or(f64::NAN)
        };
        let count = self.contributors.len();
        let first: Vec<f64> = (0..count).map(|k| b(k) * b(k) * m(k, 2)).collect();
        let first_variance = sum(first.iter().copied());
        let alone: Vec<f64> = (0..count)
            .map(|k| {
                let a = entry(k, k) / 2.0;
                sum([b(k) * b(k) * m(k, 2), 2.0 * a * b(k) * m(k, 3), a * a * (m(k, 4) - m(k, 2) * m(k, 2))]
                    .into_iter())
            })
            .collect();
        let product = |i: usize, j: usize| entry(i, j) * entry(i, j) * m(i, 2) * m(j, 2);
        let together: Vec<f64> =
            (0..count).map(|i| sum((0..count).filter(|j| *j != i).map(|j| product(i, j)))).collect();
        let variance = sum(alone.iter().copied().chain(together.iter().map(|t| t / 2.0)));
        let shift = sum((0..count).map(|k| entry(k, k) * m(k, 2) / 2.0)) + 0.0;
        let (skewness, excess_kurtosis) = shape(&of, shift, variance, &moments);
        let share = |part: f64, of: f64| if of > 0.0 { part / of + 0.0 } else { 0.0 };
        let mut effects: Vec<Effect> = self
            .contributors
            .iter()
            .enumerate()
            .map(|(k, contributor)| Effect {
                name: contributor.name.clone(),
                sensitivity: b(k) + 0.0,
                standard_deviation: first.get(k).copied().unwrap_or(f64::NAN).sqrt(),
                share: share(first.get(k).copied().unwrap_or(f64::NAN), first_variance),
                alone: share(alone.get(k).copied().unwrap_or(f64::NAN), variance),
                together: share(together.get(k).copied().unwrap_or(f64::NAN), variance),
            })
            .collect();
        crate::order::sort_by(&mut effects, |a, b| b.share.total_cmp(&a.share));
        Ok(Propagation {
            derivation: of.derivation,
            nominal: self.nominal()?,
            first: FirstOrder { mean: of.value + 0.0, standard_deviation: first_variance.sqrt() },
            second: SecondOrder {
                mean: of.value + shift,
                shift,
                standard_deviation: libm::fmax(variance, 0.0).sqrt(),
                skewness,
                excess_kurtosis,
            },
            effects,
        })
    }

    /// Trials of the function; any seed will do, and the same one gives the same trials.
    #[must_use]
    pub fn monte_carlo(&self, seed: u64) -> MonteCarlo<'static, impl Trials> {
        let Sources { drawn, inputs } = self.sources();
        MonteCarlo::of_sources(drawn, inputs, self.law.trials(), seed, Vec::new())
    }

    /// Trials of a tail too rare for others: importance sampling. The normal score of every contributor is drawn about the most probable
    /// place beyond the limit, and a trial counts by the ratio of the two densities when the function is beyond, else not. A summary of its
    /// values is [`Part::importance`](crate::measurement::monte_carlo::Part::importance). Source: mean shift to the design point, Melchers, Structural Safety 6
    /// (1989), from memory.
    ///
    /// One place is looked at: a function that is beyond its limit in two places that are far apart needs two runs with limits of its
    /// own, or plain trials.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`] for a limit; [`ErrorKind::Contradiction`] when no place within 9 standard scores is found
    /// beyond it, or the means are: then plain trials will do.
    pub fn importance(
        &self,
        toward: Toward,
        limit: f64,
        seed: u64,
    ) -> Result<MonteCarlo<'static, impl Trials>, Error> {
        let limit = within("limit", limit, -f64::MAX, f64::MAX)?;
        let sources = self.sources();
        let scales = self.scales();
        let shift = shift_toward(&sources, &|x| self.law.gradient(x, &scales), toward, limit)?;
        let Sources { drawn, inputs } = sources;
        let beyond = Beyond { of: self.law.trials(), toward, limit };
        Ok(MonteCarlo::of_sources(drawn, inputs, beyond, seed, shift))
    }

    fn sources(&self) -> Sources {
        let mut out = Sources::default();
        for contributor in &self.contributors {
            let (centre, drawn) = contributor.variation.drawn();
            out.add(contributor.nominal + centre, drawn);
        }
        out
    }

    fn means(&self) -> Vec<f64> {
        self.contributors.iter().map(|c| c.nominal + c.variation.mean()).collect()
    }

    /// How far each contributor varies; where one does not, its limits or a thousandth of its size say over what it is differenced.
    fn scales(&self) -> Vec<f64> {
        let scale = |c: &Contributor| {
            let candidates = [c.variation.variance().sqrt(), (c.upper - c.lower) / 2.0];
            let least = libm::fmax(c.nominal.abs(), 1.0) / 1000.0;
            candidates.into_iter().find(|s| *s > 0.0).unwrap_or(least)
        };
        self.contributors.iter().map(scale).collect()
    }
}

/// Skewness and excess kurtosis of the polynomial of second degree.
fn shape(of: &Derivatives, shift: f64, variance: f64, moments: &[Moments]) -> (Option<f64>, Option<f64>) {
    let from_mean = Polynomial::second_degree(&of.gradient, &of.hessian).shifted(-shift);
    if variance <= 0.0 || from_mean.terms() * from_mean.terms() > MOST_TERMS * 40 {
        return (None, None);
    }
    let square = from_mean.times(&from_mean);
    if square.terms() > MOST_TERMS {
        return (None, None);
    }
    let third = square.expected(&from_mean, moments) / (variance * variance.sqrt());
    let fourth = square.expected(&square, moments) / (variance * variance);
    (Some(third + 0.0), Some(fourth - 3.0))
}

fn finite(what: &str, value: f64, place: &str) -> Result<f64, Error> {
    if value.is_finite() {
        return Ok(value);
    }
    let reason = format!("{what} is not finite at the {place} of the contributors");
    Err(Error::new(ErrorKind::NotFinite, value.to_string(), reason).at("model"))
}
