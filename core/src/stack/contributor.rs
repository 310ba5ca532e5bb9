//! Contributors of a stack: nominal, limits, how often, and how the actual size varies.

use super::inverse;
use super::kernel::{Kernel, Scaled};
use super::moments::{self, Moments};
use crate::choice::choices;
use crate::error::{Error, ErrorKind, moves_the_cursor};
use crate::measurement::distribution::{Distribution, Shape, above_zero, refused, within};
use crate::measurement::monte_carlo::Drawn;
use crate::measurement::statistics::{as_number, sum, too_few};

/// Largest size of a length: its powers stay finite.
pub(super) const LARGEST: f64 = 1e6;
/// Smallest tolerance that a contributor can be given: its powers stay above zero.
const LEAST_TOLERANCE: f64 = 1e-12;
/// Largest count of one contributor.
const MOST: u32 = 1000;
/// Largest sample.
const MOST_VALUES: usize = 100_000;

choices! {
    /// The limit that a process has moved toward.
    Toward {
        /// The lower limit.
        Lower = "lower",
        /// The upper limit.
        Upper = "upper",
    }
}

/// How a contributor varies: deviations from its nominal, in its unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Variation {
    centre: f64,
    form: Form,
}

#[derive(Debug, Clone, PartialEq)]
enum Form {
    About(Distribution),
    Other(Kernel),
}

impl Variation {
    /// A symmetric distribution about a centre, itself a deviation from the nominal: normal, rectangular, triangular, trapezoidal or arcsine.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`]; [`ErrorKind::UnknownChoice`] for a Student's t (its tails are too heavy for a
    /// transform) and for a curvilinear trapezoid (not provided).
    pub fn about(centre: f64, distribution: Distribution) -> Result<Self, Error> {
        let centre = within("centre", centre, -LARGEST, LARGEST)?;
        within("standard_uncertainty", distribution.standard_uncertainty(), 0.0, LARGEST)?;
        let reason = match distribution.shape() {
            Shape::StudentT { .. } => "a Student's t has no exponential moments; an exact stack needs them",
            Shape::CurvilinearTrapezoid { .. } => "a curvilinear trapezoid is not a term of an exact stack",
            _ => return Ok(Variation { centre, form: Form::About(distribution) }),
        };
        Err(Error::new(ErrorKind::UnknownChoice, "distribution", reason).at("distribution"))
    }

    /// Normal from the capability of its process: `sigma = (upper - lower) / (6 Cp)`, mean moved by `3 sigma (Cp - Cpk)` from the middle of
    /// the limits. Limits are deviations from the nominal. Source: definitions of Cp and Cpk, ISO 22514-2.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`], [`ErrorKind::OutOfOrder`] for limits in disorder or `Cpk` above `Cp`.
    pub fn normal_by_capability(
        limits: (f64, f64),
        cp: f64,
        cpk: f64,
        toward: Toward,
    ) -> Result<Self, Error> {
        let (lower, upper) = ordered(limits)?;
        let cp = above_zero("cp", within("cp", cp, 0.0, 100.0)?)?;
        let cpk = within("cpk", cpk, -100.0, 100.0)?;
        if cpk > cp {
            let reason = "Cpk is not above Cp";
            return Err(Error::new(ErrorKind::OutOfOrder, cpk.to_string(), reason).value(cpk).at("cpk"));
        }
        let sigma = (upper - lower) / (6.0 * cp);
        let shift = 3.0 * sigma * (cp - cpk);
        let middle = lower + (upper - lower) / 2.0;
        let centre = if toward == Toward::Upper { middle + shift } else { middle - shift };
        Self::about(centre, Distribution::normal(sigma)?)
    }

    /// Normal of this mean and standard deviation before it was cut off at two limits (sorted parts).
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`] also when less than 1e-12 of the normal lies between the limits, [`ErrorKind::OutOfOrder`].
    pub fn truncated_normal(mean: f64, standard_deviation: f64, limits: (f64, f64)) -> Result<Self, Error> {
        let mean = within("mean", mean, -LARGEST, LARGEST)?;
        let sd = above_zero(
            "standard_deviation",
            within("standard_deviation", standard_deviation, 0.0, LARGEST)?,
        )?;
        let (low, high) = ordered(limits)?;
        let kernel = Kernel::truncated(mean, sd, low, high);
        match &kernel {
            Kernel::Scores { share, .. } if share.is_nan() || *share < 1e-12 => {
                let reason = "next to nothing of the normal lies between the limits";
                Err(refused("limits", *share, reason, 1e-12, 1.0))
            }
            _ => Ok(Self::other(kernel)),
        }
    }

    /// Triangle from its ends and its mode; a mode at an end is a straight slope.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`], [`ErrorKind::OutOfOrder`].
    pub fn triangular(limits: (f64, f64), mode: f64) -> Result<Self, Error> {
        let (low, high) = ordered(limits)?;
        let mode = within("mode", mode, low, high)?;
        if is_middle(low, mode, high) {
            return Self::about(mode, Distribution::triangular((high - low) / 2.0)?);
        }
        Ok(Self::other(Kernel::Triangle { low, mode, high }))
    }

    /// Beta of two shapes, each 0.5 to 500, between two limits; 0.5 and 0.5 is the arcsine, 1 and 1 the rectangle.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`], [`ErrorKind::OutOfOrder`].
    pub fn beta(alpha: f64, beta: f64, limits: (f64, f64)) -> Result<Self, Error> {
        let (alpha, beta) = (within("alpha", alpha, 0.5, 500.0)?, within("beta", beta, 0.5, 500.0)?);
        let (low, high) = ordered(limits)?;
        Ok(Self::other(Kernel::beta(alpha, beta, low, high)))
    }

    /// Skewed, through two or more measured quantiles `(probability, value)`: between them, and beyond the first and the last, the value is a
    /// straight line over the normal score. Two quantiles are a normal; 0.135 %, 50 % and 99.865 % are the usual three.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`], [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`] for probabilities outside 1e-9 to 1 - 1e-9,
    /// [`ErrorKind::OutOfOrder`] unless both rise from point to point.
    pub fn skewed(quantiles: &[(f64, f64)]) -> Result<Self, Error> {
        if quantiles.len() < 2 {
            return Err(too_few("quantiles", "at least two quantiles are needed"));
        }
        within("quantiles", as_number(quantiles.len()), 2.0, 50.0)?;
        for (k, (p, v)) in quantiles.iter().enumerate() {
            within(&format!("quantiles/{k}"), *p, 1e-9, 1.0 - 1e-9)?;
            within(&format!("quantiles/{k}"), *v, -LARGEST, LARGEST)?;
        }
        for (k, pair) in quantiles.windows(2).enumerate() {
            if let [(p0, v0), (p1, v1)] = pair
                && !(p1 - p0 > 1e-9 && *v1 > *v0)
            {
                let reason = "probabilities and values must rise";
                let place = format!("quantiles/{}", k + 1);
                return Err(Error::new(ErrorKind::OutOfOrder, v1.to_string(), reason).value(*v1).at(&place));
            }
        }
        Ok(Self::other(Kernel::skewed(quantiles)))
    }

    /// Measured deviations, each as probable as any other; no smoothing.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`], [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`] also for more than 100 000 values.
    pub fn sample(values: &[f64]) -> Result<Self, Error> {
        if values.is_empty() {
            return Err(too_few("values", "at least one value is needed"));
        }
        if values.len() > MOST_VALUES {
            return Err(refused(
                "values",
                as_number(values.len()),
                "too many values",
                1.0,
                as_number(MOST_VALUES),
            ));
        }
        for (k, v) in values.iter().enumerate() {
            within(&format!("values/{k}"), *v, -LARGEST, LARGEST)?;
        }
        Ok(Self::other(Kernel::Atoms(values.to_vec())))
    }

    /// The same, with all distances from a middle times a factor.
    fn about_middle(&self, middle: f64, factor: f64) -> Result<Self, Error> {
        match &self.form {
            Form::About(distribution) => {
                Self::about(middle + (self.centre - middle) * factor, distribution.scaled(factor)?)
            }
            Form::Other(kernel) => Ok(Self::other(kernel.about_middle(middle, factor))),
        }
    }

    /// How far its own zero is from a middle: what a factor about the middle moves, besides the sizes.
    fn offset(&self, middle: f64) -> f64 {
        match &self.form {
            Form::About(_) => self.centre - middle,
            Form::Other(_) => -middle,
        }
    }

    fn other(kernel: Kernel) -> Self {
        Variation { centre: 0.0, form: Form::Other(kernel) }
    }

    /// Mean of the deviation.
    #[must_use]
    pub fn mean(&self) -> f64 {
        match &self.form {
            Form::About(_) => self.centre,
            Form::Other(kernel) => scaled(kernel, 1.0).moments().0,
        }
    }

    /// Variance of the deviation.
    #[must_use]
    pub fn variance(&self) -> f64 {
        match &self.form {
            Form::About(d) => d.standard_uncertainty() * d.standard_uncertainty(),
            Form::Other(kernel) => scaled(kernel, 1.0).moments().1,
        }
    }

    /// Its middle and what is drawn about it.
    pub(super) fn drawn(&self) -> (f64, Drawn) {
        match &self.form {
            Form::About(distribution) => (self.centre, Drawn::Shape(distribution.shape())),
            Form::Other(kernel) => (self.centre, Drawn::Inverse(inverse::of(kernel))),
        }
    }

    /// Central moments of the deviation up to the eighth: place `k` has that of order `k`.
    pub(super) fn moments(&self) -> Moments {
        match &self.form {
            Form::About(distribution) => moments::of_shape(distribution.shape()),
            Form::Other(kernel) => moments::of_nodes(&scaled(kernel, 1.0).nodes(0.0, 0.0)),
        }
    }

    /// Adds this, times a factor, to the parts of a sum.
    pub(super) fn add_to(&self, parts: &mut Parts, factor: f64) {
        parts.centres.push(self.centre * factor);
        match &self.form {
            Form::About(distribution) => parts.add(distribution, factor),
            Form::Other(kernel) => parts.kernels.push(scaled(kernel, factor)),
        }
    }
}

#[expect(clippy::float_cmp, reason = "a triangle that is not symmetric to the bit keeps its own form")]
fn is_middle(low: f64, mode: f64, high: f64) -> bool {
    mode - low == high - mode
}

fn scaled(kernel: &Kernel, factor: f64) -> Scaled {
    Scaled { kernel: kernel.clone(), factor, shift: 0.0 }
}

/// The parts that a sum is made of.
#[derive(Debug, Default)]
pub(super) struct Parts {
    pub(super) centres: Vec<f64>,
    pub(super) widths: Vec<f64>,
    pub(super) variances: Vec<f64>,
    pub(super) kernels: Vec<Scaled>,
}

impl Parts {
    /// A distribution about zero, times a factor.
    pub(super) fn add(&mut self, distribution: &Distribution, factor: f64) {
        let size = factor.abs();
        match distribution.shape() {
            Shape::Normal { standard_deviation: sd } => self.variances.push(sd * sd * factor * factor),
            Shape::Rectangular { half_width } => self.widths.push(half_width * size),
            // triangle and trapezoid are sums of two rectangles
            Shape::Triangular { half_width } => self.widths.extend([half_width * size / 2.0; 2]),
            Shape::Trapezoidal { half_width, beta } => {
                let half = half_width * size / 2.0;
                self.widths.extend([half * (1.0 + beta), half * (1.0 - beta)]);
            }
            Shape::Arcsine { half_width } if half_width * size > 0.0 => {
                self.kernels.push(scaled(&Kernel::beta(0.5, 0.5, -half_width, half_width), factor));
            }
            // without size, or refused where it came in
            Shape::Arcsine { .. } | Shape::StudentT { .. } | Shape::CurvilinearTrapezoid { .. } => {}
        }
    }
}

fn ordered((lower, upper): (f64, f64)) -> Result<(f64, f64), Error> {
    let (lower, upper) =
        (within("lower", lower, -LARGEST, LARGEST)?, within("upper", upper, -LARGEST, LARGEST)?);
    crate::bounds::check_above("upper", upper, lower, "the upper limit must be above the lower")?;
    Ok((lower, upper))
}

/// Limits that are not in disorder; they may be equal.
pub(super) fn allowed((lower, upper): (f64, f64)) -> Result<(f64, f64), Error> {
    let lower = within("lower", lower, -LARGEST, LARGEST)?;
    let upper = within("upper", upper, -LARGEST, LARGEST)?;
    if upper < lower {
        let reason = "the upper limit must not be below the lower";
        return Err(Error::new(ErrorKind::OutOfOrder, upper.to_string(), reason).value(upper).at("upper"));
    }
    Ok((lower, upper))
}

/// A contributor of a linear stack. Lengths in one unit, the caller's.
#[derive(Debug, Clone, PartialEq)]
pub struct Contributor {
    pub(super) name: String,
    pub(super) nominal: f64,
    pub(super) lower: f64,
    pub(super) upper: f64,
    pub(super) variation: Variation,
    pub(super) coefficient: f64,
    pub(super) count: u32,
}

impl Contributor {
    /// A contributor that adds to the stack once: nominal, lower and upper deviation allowed by its limits (symmetric or not), and how it varies.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] or [`ErrorKind::ControlCharacter`] for the name, [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`],
    /// [`ErrorKind::OutOfOrder`].
    pub fn new(name: &str, nominal: f64, limits: (f64, f64), variation: Variation) -> Result<Self, Error> {
        check_name(name)?;
        let nominal = within("nominal", nominal, -LARGEST, LARGEST)?;
        let (lower, upper) = allowed(limits)?;
        Ok(Contributor {
            name: name.to_owned(),
            nominal,
            lower,
            upper,
            variation,
            coefficient: 1.0,
            count: 1,
        })
    }

    /// With the change of the stack for a change of this: -1 where it subtracts, 2 where a radius acts on a diameter.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`] outside 1e-6 to 1e6 of either sign.
    pub fn with_coefficient(mut self, coefficient: f64) -> Result<Self, Error> {
        let size = within("coefficient", coefficient, -1e6, 1e6)?.abs();
        within("coefficient", size, 1e-6, 1e6)?;
        self.coefficient = coefficient;
        Ok(self)
    }

    /// With this many independent pieces, 1 to 1000: four shims of one kind vary each on its own.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`].
    pub fn with_count(mut self, count: u32) -> Result<Self, Error> {
        within("count", f64::from(count), 1.0, f64::from(MOST))?;
        self.count = count;
        Ok(self)
    }

    /// Name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Tolerance: half the distance of its limits.
    #[must_use]
    pub fn tolerance(&self) -> f64 {
        (self.upper - self.lower) / 2.0
    }

    /// Middle of its limits, a deviation from the nominal.
    fn middle(&self) -> f64 {
        self.lower + self.tolerance()
    }

    /// The same contributor made to another tolerance by a process of the same capability: limits and variation keep their middle and their
    /// form, and all distances from the middle of the limits change in the same ratio.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`]; [`ErrorKind::Contradiction`] when it has no tolerance now.
    pub fn with_tolerance(&self, tolerance: f64) -> Result<Self, Error> {
        let tolerance = within("tolerance", tolerance, LEAST_TOLERANCE, LARGEST)?;
        let (now, middle) = (self.tolerance(), self.middle());
        if now <= 0.0 {
            let reason = "a contributor without a tolerance has none to change";
            return Err(Error::new(ErrorKind::Contradiction, "0", reason).at("tolerance"));
        }
        let factor = tolerance / now;
        Ok(Contributor {
            lower: middle - tolerance,
            upper: middle + tolerance,
            variation: self.variation.about_middle(middle, factor)?,
            ..self.clone()
        })
    }

    /// What changes with the tolerance: the parts of one piece, and how far a change of the logarithm of the tolerance moves the stack.
    pub(super) fn scales(&self) -> (Parts, f64) {
        let mut parts = Parts::default();
        self.variation.add_to(&mut parts, self.coefficient);
        (parts, self.coefficient * self.variation.offset(self.middle()))
    }

    /// What it adds to the stack at nominal.
    pub(super) fn nominal_part(&self) -> f64 {
        self.coefficient * self.nominal * f64::from(self.count)
    }

    /// What its limits add to the stack: lowest and highest.
    pub(super) fn span(&self) -> (f64, f64) {
        let factor = self.coefficient * f64::from(self.count);
        let (a, b) = (factor * (self.nominal + self.lower), factor * (self.nominal + self.upper));
        if a < b { (a, b) } else { (b, a) }
    }

    /// Half the width of the limits of one piece, on the stack.
    pub(super) fn half(&self) -> f64 {
        self.coefficient.abs() * (self.upper - self.lower) / 2.0
    }

    pub(super) fn variance(&self) -> f64 {
        f64::from(self.count) * self.coefficient * self.coefficient * self.variation.variance()
    }

    pub(super) fn add_to(&self, parts: &mut Parts) {
        parts.centres.push(self.nominal_part());
        for _ in 0..self.count {
            self.variation.add_to(parts, self.coefficient);
        }
    }

    /// Change of the mean of the stack for a change of the logarithm of its tolerance.
    pub(super) fn mean_by_logarithm(&self) -> f64 {
        self.coefficient * f64::from(self.count) * (self.variation.mean() - self.middle())
    }

    /// Mean of what it adds.
    pub(super) fn mean_part(&self) -> f64 {
        sum([self.nominal_part(), self.coefficient * f64::from(self.count) * self.variation.mean()]
            .into_iter())
    }
}

pub(super) fn check_name(name: &str) -> Result<(), Error> {
    if name.trim().is_empty() {
        return Err(Error::new(ErrorKind::MissingField, name, "a contributor needs a name").at("name"));
    }
    if name.chars().any(moves_the_cursor) {
        return Err(
            Error::new(ErrorKind::ControlCharacter, name, "a name holds no control characters").at("name")
        );
    }
    Ok(())
}
