#![doc = include_str!("../../docs/stack.md")]

mod allocation;
mod closed;
mod columnwise;
mod contributor;
mod convolution;
pub mod document;
mod engine;
mod evaluate;
mod function;
mod inverse;
mod kernel;
mod kind;
mod line;
mod moments;
mod plot;
mod read;
mod report;
mod sensitivity;
mod sum;
mod text;
mod trials;
mod working;
mod worst;

pub use allocation::{Allocation, ToleranceCost, Wanted};
pub use columnwise::Columnwise;
pub use contributor::{Contributor, Toward, Variation};
pub use document::{StackDocument, StackEntry};
pub use engine::EngineStack;
pub use evaluate::{FORMAT, VERSION, stack_json, stack_json_bytes};
pub use function::{Derivation, Derivatives, Effect, FirstOrder, Function, Law, Propagation, SecondOrder};
pub use kind::{VariationKind, cause_of_kind};
pub use plot::Curve;
pub use report::{
    CountsReport, CurveReport, EstimateReport, ExactReport, HistogramReport, LimitsReport, PropagationReport,
    PublishedReport, REPORT_FORMAT, REPORT_VERSION, SensitivityReport, SettledReport, ShareReport,
    SpanReport, StackReport, TrialsReport, WorstCaseReport,
};
pub use sensitivity::Sensitivity;
pub use sum::Method;
pub use worst::{Extreme, Proof, WorstCase};

use crate::error::{Error, ErrorKind};
use crate::measurement::distribution::{Distribution, coverage, within};
use crate::measurement::monte_carlo::{Drawn, MonteCarlo, Trials};
use crate::measurement::statistics::{self, too_few};
use crate::measurement::uncertainty::{Input, root_sum_square};
use crate::special::normal_quantile;
use contributor::{LARGEST, Parts};
use sum::{Asked, Estimate, Sum};
use trials::{Beyond, Only, Sources};

/// Most pieces of a stack, counts included.
const MOST_PIECES: u32 = 2000;
/// Smallest probability that a quantile is asked for: quotients of it stay finite.
const LEAST_PROBABILITY: f64 = 1e-300;
/// A probability known no better than this is not given.
const WORST: f64 = 1e-6;

fn number(count: usize) -> f64 {
    statistics::as_number(count)
}

/// A linear stack, ready for its probabilities. See the [module](self).
#[derive(Debug, Clone, PartialEq)]
pub struct Stack {
    contributors: Vec<Contributor>,
    causes: Vec<Cause>,
    /// Where the sums are zero.
    centre: (f64, f64),
    up: Sum,
    down: Sum,
}

/// A shared cause, with its effect on the whole stack.
#[derive(Debug, Clone, PartialEq)]
struct Cause {
    name: String,
    distribution: Distribution,
    factor: f64,
}

impl Cause {
    /// What it does to the standard deviation of the stack.
    fn deviation(&self) -> f64 {
        (self.factor * self.distribution.standard_uncertainty()).abs()
    }
}

/// An interval of sizes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// Lower end.
    pub lower: f64,
    /// Upper end.
    pub upper: f64,
}

/// Probabilities outside limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tail {
    /// Probability below the lower limit.
    pub below: f64,
    /// Probability above the upper limit.
    pub above: f64,
    /// Bound of the relative error of both.
    pub error: f64,
}

impl Tail {
    /// Parts per million outside.
    #[must_use]
    pub fn ppm(&self) -> f64 {
        1e6 * (self.below + self.above)
    }
}

/// A share of the variance.
#[derive(Debug, Clone, PartialEq)]
pub struct Share {
    /// Name of the contributor or shared cause.
    pub name: String,
    /// Is it a shared cause?
    pub is_shared: bool,
    /// Place among the contributors, or among the shared causes.
    pub place: usize,
    /// Standard deviation that it alone gives the stack.
    pub standard_deviation: f64,
    /// Its share of the variance, 0 to 1; 0 when nothing varies.
    pub share: f64,
}

/// Capability of the stack against limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Capability {
    /// `(upper - lower) / (6 sigma)`.
    pub cp: f64,
    /// Smaller distance of the mean from a limit over `3 sigma`.
    pub cpk: f64,
    /// Probabilities outside, from the exact distribution.
    pub tail: Tail,
}

impl Stack {
    /// A stack of one contributor or more.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] without contributors, [`ErrorKind::Repeated`] for a name that stands twice, [`ErrorKind::OutOfRange`]
    /// for more than 2000 pieces.
    pub fn new(contributors: Vec<Contributor>) -> Result<Self, Error> {
        check(&contributors)?;
        Ok(Self::made(contributors, Vec::new()))
    }

    /// With one more contributor.
    ///
    /// # Errors
    /// As [`Stack::new`].
    pub fn with_contributor(mut self, contributor: Contributor) -> Result<Self, Error> {
        if self.causes.iter().any(|c| c.name == contributor.name) {
            return Err(
                Error::new(ErrorKind::Repeated, contributor.name, "this name stands twice").at("name")
            );
        }
        self.contributors.push(contributor);
        check(&self.contributors)?;
        Ok(Self::made(self.contributors, self.causes))
    }

    /// With a cause that several contributors share: each named one moves by the factor times the error of the cause, with every
    /// piece of it. What two contributors share cancels where one adds and the other subtracts.
    ///
    /// # Errors
    /// [`ErrorKind::UnknownName`] for a contributor that is not there, [`ErrorKind::Repeated`] for a name that stands twice,
    /// [`ErrorKind::MissingField`] without factors, [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`]; as [`Variation::about`].
    pub fn with_cause(
        mut self,
        name: &str,
        distribution: Distribution,
        factors: &[(&str, f64)],
    ) -> Result<Self, Error> {
        contributor::check_name(name)?;
        Variation::about(0.0, distribution)?;
        if self.causes.iter().any(|c| c.name == name) || self.contributors.iter().any(|c| c.name == name) {
            return Err(Error::new(ErrorKind::Repeated, name, "this name stands twice").at("name"));
        }
        if factors.is_empty() {
            return Err(too_few("factors", "a shared cause acts on at least one contributor"));
        }
        let mut effects = Vec::new();
        for (k, (of, factor)) in factors.iter().enumerate() {
            let place = format!("factors/{k}");
            let Some(contributor) = self.contributors.iter().find(|c| c.name == *of) else {
                return Err(
                    Error::new(ErrorKind::UnknownName, *of, "no contributor has this name").at(&place)
                );
            };
            let factor = within(&place, *factor, -LARGEST, LARGEST)?;
            effects.push(contributor.coefficient * f64::from(contributor.count) * factor);
        }
        let factor = statistics::sum(effects.into_iter());
        within("factors", factor, -LARGEST, LARGEST)?;
        self.causes.push(Cause { name: name.to_owned(), distribution, factor });
        Ok(Self::made(self.contributors, self.causes))
    }

    /// The contributors, in the order given.
    #[must_use]
    pub fn contributors(&self) -> &[Contributor] {
        &self.contributors
    }

    /// Place of a contributor among them.
    ///
    /// # Errors
    /// [`ErrorKind::UnknownName`].
    pub fn place(&self, name: &str) -> Result<usize, Error> {
        let place = self.contributors.iter().position(|c| c.name == name);
        place.ok_or_else(|| Error::new(ErrorKind::UnknownName, name, "no contributor has this name"))
    }

    fn made(contributors: Vec<Contributor>, causes: Vec<Cause>) -> Self {
        let mut parts = Parts::default();
        for contributor in &contributors {
            contributor.add_to(&mut parts);
        }
        for cause in &causes {
            parts.add(&cause.distribution, cause.factor);
        }
        let variance = statistics::sum(parts.variances.iter().copied());
        let up = Sum::new(&parts.widths, variance, parts.kernels);
        let centre = parts.centres.iter().fold((0.0, 0.0), |at, part| closed::plus(at, *part));
        Stack { contributors, causes, centre, down: up.mirrored(), up }
    }

    /// Size at nominal.
    #[must_use]
    pub fn nominal(&self) -> f64 {
        statistics::sum(self.contributors.iter().map(Contributor::nominal_part))
    }

    /// Mean of the stack.
    #[must_use]
    pub fn mean(&self) -> f64 {
        statistics::sum(self.contributors.iter().map(Contributor::mean_part))
    }

    /// Standard deviation of the stack.
    #[must_use]
    pub fn standard_deviation(&self) -> f64 {
        root_sum_square(&self.deviations())
    }

    /// What each contributor and then each shared cause alone does to the standard deviation.
    fn deviations(&self) -> Vec<f64> {
        let own = self.contributors.iter().map(|c| c.variance().sqrt());
        own.chain(self.causes.iter().map(Cause::deviation)).collect()
    }

    /// Worst case: all contributors at their limits at once. Definition; shared causes are within the limits.
    #[must_use]
    pub fn worst_case(&self) -> Span {
        let (lows, highs): (Vec<f64>, Vec<f64>) = self.contributors.iter().map(Contributor::span).unzip();
        Span { lower: statistics::sum(lows.into_iter()), upper: statistics::sum(highs.into_iter()) }
    }

    /// Root-sum-square of the half-widths of the limits, about the middle of the worst case, times a factor (1: the plain one).
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`] outside 0 to 100.
    pub fn root_sum_square(&self, factor: f64) -> Result<Span, Error> {
        let factor = within("factor", factor, 0.0, 100.0)?;
        Ok(self.about_middle(factor * root_sum_square(&self.halves())))
    }

    /// Root-sum-square with Bender's factor 1.5. Source: A. Bender, Benderizing tolerances, Graphic Science (1962); the factor from memory.
    #[must_use]
    pub fn bender(&self) -> Span {
        self.about_middle(1.5 * root_sum_square(&self.halves()))
    }

    /// Factor of the modified root-sum-square: `0.5 (sum T - RSS) / (RSS (sqrt(n) - 1)) + 1`; none for fewer than two pieces or without limits.
    /// Source: P. Drake, Dimensioning and Tolerancing Handbook, McGraw-Hill (1999), chapter 9; from memory.
    #[must_use]
    pub fn modified_factor(&self) -> Option<f64> {
        let halves = self.halves();
        let rss = root_sum_square(&halves);
        let total = statistics::sum(halves.iter().copied());
        (halves.len() > 1 && rss > 0.0)
            .then(|| 0.5 * (total - rss) / (rss * (number(halves.len()).sqrt() - 1.0)) + 1.0)
    }

    /// Modified root-sum-square: the plain one times [`modified_factor`](Self::modified_factor), 1 where there is none.
    #[must_use]
    pub fn modified_root_sum_square(&self) -> Span {
        let factor = self.modified_factor().unwrap_or(1.0);
        self.about_middle(factor * root_sum_square(&self.halves()))
    }

    /// Half-widths of the limits, one for each piece.
    fn halves(&self) -> Vec<f64> {
        let pieces = |c: &Contributor| core::iter::repeat_n(c.half(), c.count as usize);
        self.contributors.iter().flat_map(pieces).collect()
    }

    fn about_middle(&self, half: f64) -> Span {
        let Span { lower, upper } = self.worst_case();
        let middle = lower + (upper - lower) / 2.0;
        Span { lower: middle - half, upper: middle + half }
    }

    /// Shares of the variance by contributors and shared causes, largest first.
    #[must_use]
    pub fn shares(&self) -> Vec<Share> {
        let own = self.contributors.iter().map(|c| &c.name).enumerate().map(|(k, name)| (false, k, name));
        let shared = self.causes.iter().map(|c| &c.name).enumerate().map(|(k, name)| (true, k, name));
        let total = self.standard_deviation();
        let of = |sd: f64| if total > 0.0 { (sd / total) * (sd / total) } else { 0.0 };
        let share = |((is_shared, place, name), sd): ((bool, usize, &String), f64)| Share {
            name: name.clone(),
            is_shared,
            place,
            standard_deviation: sd,
            share: of(sd),
        };
        let mut out: Vec<Share> = own.chain(shared).zip(self.deviations()).map(share).collect();
        crate::order::sort_by(&mut out, |a, b| b.share.total_cmp(&a.share));
        out
    }

    /// Probabilities below `lower` and above `upper`, with a bound of their relative error. An infinite limit is no limit.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`], [`ErrorKind::OutOfOrder`]; [`ErrorKind::Contradiction`] when no way reaches a relative error of 1e-6, which
    /// takes many samples without a continuous partner or several steep shapes without a normal one.
    pub fn outside(&self, lower: f64, upper: f64) -> Result<Tail, Error> {
        let below = self.side("lower", lower, f64::NEG_INFINITY)?;
        let above = self.side("upper", upper, f64::INFINITY)?;
        if upper < lower {
            let reason = "the upper limit must not be below the lower";
            return Err(Error::new(ErrorKind::OutOfOrder, upper.to_string(), reason)
                .value(upper)
                .at("upper"));
        }
        let error = libm::fmax(below.relative(), above.relative());
        Ok(Tail { below: below.value, above: above.value, error })
    }

    #[expect(clippy::float_cmp, reason = "infinity is no limit, exactly")]
    fn side(&self, field: &str, x: f64, none: f64) -> Result<Estimate, Error> {
        if x == none {
            return Ok(Estimate::ZERO);
        }
        let x = within(field, x, -f64::MAX, f64::MAX)?;
        known(field, x, if none > 0.0 { self.above(x) } else { self.below(x) })
    }

    /// How [`Self::outside`] computes the probability below a lower limit or above an upper one.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn method(&self, toward: Toward, limit: f64) -> Result<Method, Error> {
        let (x, rest) = self.about_centre(within(toward.word(), limit, -f64::MAX, f64::MAX)?);
        Ok(match toward {
            Toward::Lower => sum::method(&self.down, &self.up, (-x, -rest)),
            Toward::Upper => sum::method(&self.up, &self.down, (x, rest)),
        })
    }

    fn above(&self, x: f64) -> Estimate {
        sum::either(Sum::at, &self.up, &self.down, self.about_centre(x), Asked::Above)
    }

    fn below(&self, x: f64) -> Estimate {
        let (x, rest) = self.about_centre(x);
        sum::either(Sum::at, &self.down, &self.up, (-x, -rest), Asked::Above)
    }

    /// `x` less the centre, with the rest that a double does not hold.
    fn about_centre(&self, x: f64) -> (f64, f64) {
        let whole = closed::plus((-self.centre.0, -self.centre.1), x);
        (whole.0 + 0.0, whole.1)
    }

    /// Density at `x`, per unit of length.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`]; [`ErrorKind::Contradiction`] for samples alone, which have none, and as [`Self::outside`].
    pub fn density(&self, x: f64) -> Result<f64, Error> {
        let x = within("x", x, -f64::MAX, f64::MAX)?;
        if !self.up.is_continuous() {
            let reason = "samples alone have no density";
            return Err(Error::new(ErrorKind::Contradiction, x.to_string(), reason).at("x"));
        }
        known("x", x, self.density_at(x)).map(|d| d.value)
    }

    fn density_at(&self, x: f64) -> Estimate {
        sum::either(Sum::at, &self.up, &self.down, self.about_centre(x), Asked::Density)
    }

    /// The size that the stack is below with this probability, between 0 and 1.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`]; [`ErrorKind::Contradiction`] for samples alone and as [`Self::outside`].
    pub fn quantile(&self, probability: f64) -> Result<f64, Error> {
        let p = coverage("probability", probability)?;
        if p > 0.5 { self.root(1.0 - p, 1.0) } else { self.root(p, -1.0) }
    }

    /// The size that the stack is above with this probability: for a small one it keeps the digits that `1 - probability` has not.
    ///
    /// # Errors
    /// As [`Self::quantile`].
    pub fn quantile_above(&self, probability: f64) -> Result<f64, Error> {
        let p = coverage("probability", probability)?;
        if p > 0.5 { self.root(1.0 - p, -1.0) } else { self.root(p, 1.0) }
    }

    /// Root of the tail on a side, 1 above and -1 below: Newton's method on its logarithm, within a bracket.
    fn root(&self, p: f64, side: f64) -> Result<f64, Error> {
        if !self.up.is_continuous() {
            let reason = "samples alone have no quantile for every probability";
            return Err(Error::new(ErrorKind::Contradiction, p.to_string(), reason).at("probability"));
        }
        let p = within("probability", p, LEAST_PROBABILITY, 1.0)?;
        let tail = |x: f64| {
            known("probability", p, if side > 0.0 { self.above(x) } else { self.below(x) }).map(|t| t.value)
        };
        let centre = self.centre.0 + self.up.mean;
        let sd = self.up.whole_variance.sqrt();
        let (low, high) = self.up.ends;
        let end = self.centre.0 + if side > 0.0 { high } else { low };
        // distances outward from the mean, negative toward the other side
        let (mut near, mut far) = (-8.0 * sd, (end - centre) * side);
        let mut at = libm::fmin(-normal_quantile(p) * sd, far * (1.0 - p / 2.0));
        for _ in 0..100 {
            let x = centre + side * at;
            let (value, density) = (tail(x)?, self.density_at(x).value);
            if value > p {
                near = at;
            } else {
                far = at;
            }
            // where nothing is left there is no step; and an overflow would kill a host that traps it
            let step = match value > 0.0 && density > value * 1e-290 {
                true => libm::log(value / p) * value / density,
                false => f64::INFINITY,
            };
            if (value / p - 1.0).abs() < 1e-12 || step.abs() <= 1e-16 * x.abs() {
                return Ok(x + 0.0);
            }
            let newton = at + step;
            let halved = if far.is_finite() { near + (far - near) / 2.0 } else { near + 2.0 * sd };
            let next = if newton > near && newton < far { newton } else { halved };
            #[expect(clippy::float_cmp, reason = "the bracket holds no further double")]
            if next == at {
                return Ok(x + 0.0);
            }
            at = next;
        }
        let reason = "no size was found for this probability";
        Err(Error::new(ErrorKind::Contradiction, p.to_string(), reason).at("probability"))
    }

    /// Trials of the stack; any seed will do, and the same one gives the same trials.
    #[must_use]
    pub fn monte_carlo(&self, seed: u64) -> MonteCarlo<'static, impl Trials + use<>> {
        let Sources { drawn, inputs } = self.sources();
        MonteCarlo::of_sources(drawn, inputs, Only, seed, Vec::new())
    }

    /// Trials of a tail by importance sampling, as [`Function::importance`]. The [exact](Self::outside) probability is better where there is one.
    ///
    /// # Errors
    /// As [`Function::importance`].
    pub fn importance(
        &self,
        toward: Toward,
        limit: f64,
        seed: u64,
    ) -> Result<MonteCarlo<'static, impl Trials + use<>>, Error> {
        let limit = within("limit", limit, -f64::MAX, f64::MAX)?;
        let sources = self.sources();
        let whole = |x: &[f64]| (x.first().copied().unwrap_or(f64::NAN), vec![1.0]);
        let shift = trials::shift_toward(&sources, &whole, toward, limit)?;
        let Sources { drawn, inputs } = sources;
        let beyond = Beyond { of: Only, toward, limit };
        Ok(MonteCarlo::of_sources(drawn, inputs, beyond, seed, shift))
    }

    /// One input, the stack: every piece and every shared cause is a source of its own.
    fn sources(&self) -> Sources {
        let (mut drawn, mut terms, mut centres) = (Vec::new(), Vec::new(), Vec::new());
        for contributor in &self.contributors {
            let (centre, of) = contributor.variation.drawn();
            centres.push(contributor.nominal_part());
            centres.push(contributor.coefficient * f64::from(contributor.count) * centre);
            for _ in 0..contributor.count {
                terms.push((drawn.len(), contributor.coefficient));
                drawn.push(of.clone());
            }
        }
        for cause in &self.causes {
            terms.push((drawn.len(), cause.factor));
            drawn.push(Drawn::Shape(cause.distribution.shape()));
        }
        let estimate = statistics::sum(centres.into_iter());
        Sources { drawn, inputs: vec![Input { estimate, terms }] }
    }

    /// Capability against two limits: indices from mean and standard deviation, probabilities from the exact distribution.
    ///
    /// # Errors
    /// As [`Self::outside`]; [`ErrorKind::Contradiction`] when nothing varies, [`ErrorKind::NotFinite`] for an infinite limit.
    pub fn capability(&self, lower: f64, upper: f64) -> Result<Capability, Error> {
        within("lower", lower, -f64::MAX, f64::MAX)?;
        within("upper", upper, -f64::MAX, f64::MAX)?;
        let (mean, sd) = (self.mean(), self.standard_deviation());
        if sd <= 0.0 {
            let reason = "a stack that does not vary has no capability";
            return Err(Error::new(ErrorKind::Contradiction, "0", reason).at("standard_deviation"));
        }
        let tail = self.outside(lower, upper)?;
        let cp = (upper - lower) / (6.0 * sd);
        let cpk = libm::fmin(upper - mean, mean - lower) / (3.0 * sd);
        Ok(Capability { cp, cpk, tail })
    }
}

/// Refuses no contributor at all, and a name that stands twice.
fn check_names(contributors: &[Contributor]) -> Result<(), Error> {
    if contributors.is_empty() {
        return Err(too_few("contributors", "at least one contributor is needed"));
    }
    for (k, contributor) in contributors.iter().enumerate() {
        if contributors.iter().take(k).any(|c| c.name == contributor.name) {
            let reason = "this contributor stands twice; equal pieces are a count";
            let error = Error::new(ErrorKind::Repeated, contributor.name.as_str(), reason);
            return Err(error.at(&format!("contributors/{k}/name")));
        }
    }
    Ok(())
}

/// As [`check_names`], and refuses too many pieces.
fn check(contributors: &[Contributor]) -> Result<(), Error> {
    check_names(contributors)?;
    let pieces: u32 = contributors.iter().map(|c| c.count).fold(0, u32::saturating_add);
    within("contributors", f64::from(pieces), 1.0, f64::from(MOST_PIECES)).map(drop)
}

/// Refuses an estimate that is not known well enough.
fn known(field: &str, x: f64, estimate: Estimate) -> Result<Estimate, Error> {
    if estimate.relative() <= WORST {
        return Ok(estimate);
    }
    let reason = "no way to this probability is accurate enough for these contributors; a normal contributor, however small, would help";
    Err(Error::new(ErrorKind::Contradiction, x.to_string(), reason).value(x).at(field))
}
