//! Distributions of errors about a best estimate: what a certificate, a data sheet or repeats say of an input.
//!
//! A distribution is symmetric about zero and in the unit of its input. It gives three things that are not the same for a
//! Student's t: its *standard uncertainty* `u` (the scale, JCGM 100), the degrees of freedom of that `u`, and, for
//! sampling, the distribution itself, whose deviation is larger than its scale (JCGM 101, 6.4.9.4).
//!
//! | made by | standard uncertainty | source |
//! |---|---|---|
//! | [`normal`](Distribution::normal), [`student_t`](Distribution::student_t) | as given | JCGM 100:2008, 4.3.3; JCGM 101:2008, 6.4.7, 6.4.9 |
//! | [`normal_expanded`](Distribution::normal_expanded) | `U / k` | JCGM 100:2008, 4.3.3 |
//! | [`normal_at_coverage`](Distribution::normal_at_coverage), [`student_t_at_coverage`](Distribution::student_t_at_coverage) | `U / t_p(dof)` | JCGM 100:2008, 4.3.4, H.1.3.2 |
//! | [`rectangular`](Distribution::rectangular) | `a / sqrt(3)` | JCGM 100:2008, 4.3.7 |
//! | [`triangular`](Distribution::triangular) | `a / sqrt(6)` | JCGM 100:2008, 4.3.9 |
//! | [`trapezoidal`](Distribution::trapezoidal) | `a sqrt((1 + beta^2) / 6)` | JCGM 100:2008, 4.3.9 |
//! | [`curvilinear_trapezoid`](Distribution::curvilinear_trapezoid) | `sqrt(a^2 / 3 + d^2 / 9)` | JCGM 101:2008, 6.4.3 |
//! | [`arcsine`](Distribution::arcsine) | `a / sqrt(2)` | JCGM 101:2008, 6.4.6 |
//! | [`from_repeats`](Distribution::from_repeats) | `s / sqrt(n)`, `n - 1` degrees of freedom | JCGM 100:2008, 4.2.3 |
//! | [`pooled`](Distribution::pooled) | `s / sqrt(n)`, those of `s` | JCGM 100:2008, 4.2.4, H.1.3.2 |

use super::statistics;
use crate::choice::choices;
use crate::error::{Error, ErrorKind, written};
use crate::special::{normal_quantile, t_quantile};
use core::f64::consts::PI;

/// Largest size of a parameter: its powers stay finite.
const LARGEST: f64 = 1e50;

/// Smallest degrees of freedom; those of an uncertainty that is only known to within itself.
pub const LEAST_DOF: f64 = 0.5;

/// A distribution of an error about zero, with the degrees of freedom of its standard uncertainty. See the [module](self).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Distribution {
    shape: Shape,
    dof: f64,
}

/// Shape and size of a [`Distribution`]; lengths in the unit of the input.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Shape {
    /// Normal.
    Normal {
        /// Standard deviation.
        standard_deviation: f64,
    },
    /// Scaled Student's t.
    StudentT {
        /// Factor on the standard t variable.
        scale: f64,
        /// Degrees of freedom, finite.
        dof: f64,
    },
    /// Uniform between two limits.
    Rectangular {
        /// Half-width.
        half_width: f64,
    },
    /// Symmetric triangle.
    Triangular {
        /// Half-width.
        half_width: f64,
    },
    /// Symmetric trapezoid: the sum of two rectangular errors.
    Trapezoidal {
        /// Half-width of the base.
        half_width: f64,
        /// Width of the top over that of the base, 0 to 1.
        beta: f64,
    },
    /// Rectangle whose half-width is itself known only to within limits.
    CurvilinearTrapezoid {
        /// Half-width at its best estimate.
        half_width: f64,
        /// Largest error of the half-width.
        half_width_error: f64,
    },
    /// A quantity that swings as a sine between its limits (U-shaped).
    Arcsine {
        /// Half-width.
        half_width: f64,
    },
}

choices! {
    /// Shapes between two limits at equal distances from the estimate.
    Bounded {
        /// Uniform.
        Rectangular = "rectangular",
        /// Symmetric triangle.
        Triangular = "triangular",
        /// Symmetric trapezoid; its parameter is the width of the top over that of the base, 0 to 1.
        Trapezoidal = "trapezoidal",
        /// Uniform between limits in doubt; its parameter is the largest error of the half-width.
        CurvilinearTrapezoid = "curvilinear_trapezoid",
        /// A sine between its limits.
        Arcsine = "arcsine",
    }
}

impl Distribution {
    /// Normal of standard uncertainty 1.
    pub(crate) const STANDARD_NORMAL: Self = Self::exact(Shape::Normal { standard_deviation: 1.0 });
    /// Rectangular of standard uncertainty 1: its half-width is the square root of 3.
    pub(crate) const STANDARD_RECTANGULAR: Self =
        Self::exact(Shape::Rectangular { half_width: 1.732_050_807_568_877_2 });

    /// Normal with a standard deviation, 0 or more.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn normal(standard_deviation: f64) -> Result<Self, Error> {
        let standard_deviation = size("standard_deviation", standard_deviation)?;
        Ok(Self::exact(Shape::Normal { standard_deviation }))
    }

    /// Normal from a certificate: expanded uncertainty, 0 or more, and its coverage factor, above 0.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn normal_expanded(expanded: f64, coverage_factor: f64) -> Result<Self, Error> {
        Self::normal(size("expanded", expanded)? / above_zero("coverage_factor", coverage_factor)?)
    }

    /// Normal from an expanded uncertainty at a coverage probability between 0 and 1.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn normal_at_coverage(expanded: f64, probability: f64) -> Result<Self, Error> {
        Self::student_t_at_coverage(expanded, probability, f64::INFINITY)
    }

    /// Scaled Student's t: scale 0 or more, degrees of freedom from [`LEAST_DOF`]; with infinite ones it is the normal.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn student_t(scale: f64, dof: f64) -> Result<Self, Error> {
        let (scale, dof) = (size("scale", scale)?, degrees("dof", dof)?);
        if dof == f64::INFINITY {
            return Self::normal(scale);
        }
        Ok(Distribution { shape: Shape::StudentT { scale, dof }, dof })
    }

    /// Scaled Student's t from an expanded uncertainty at a coverage probability between 0 and 1: `U / t_p(dof)`.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn student_t_at_coverage(expanded: f64, probability: f64, dof: f64) -> Result<Self, Error> {
        let expanded = size("expanded", expanded)?;
        let probability = coverage("probability", probability)?;
        let factor = t_quantile(0.5 + probability / 2.0, degrees("dof", dof)?);
        Self::student_t(expanded / above_zero("probability", factor)?, dof)
    }

    /// Rectangular with a half-width, 0 or more.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn rectangular(half_width: f64) -> Result<Self, Error> {
        Ok(Self::exact(Shape::Rectangular { half_width: size("half_width", half_width)? }))
    }

    /// Symmetric triangle with a half-width, 0 or more.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn triangular(half_width: f64) -> Result<Self, Error> {
        Ok(Self::exact(Shape::Triangular { half_width: size("half_width", half_width)? }))
    }

    /// Symmetric trapezoid: half-width of the base, 0 or more, and the ratio of top to base, 0 (triangle) to 1 (rectangle).
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn trapezoidal(half_width: f64, beta: f64) -> Result<Self, Error> {
        let beta = within("beta", beta, 0.0, 1.0)?;
        Ok(Self::exact(Shape::Trapezoidal { half_width: size("half_width", half_width)?, beta }))
    }

    /// The trapezoid that is the sum of two independent rectangular errors of these half-widths.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`], also when both are 0.
    pub fn sum_of_rectangular(half_width_1: f64, half_width_2: f64) -> Result<Self, Error> {
        let (a, b) = (size("half_width_1", half_width_1)?, size("half_width_2", half_width_2)?);
        let base = above_zero("half_width_1", a + b)?;
        Self::trapezoidal(base, (a - b).abs() / base)
    }

    /// Rectangle of half-width `a` whose half-width is known to within `d`, `0 <= d < a`. The doubt of the limits is in the
    /// standard uncertainty; the degrees of freedom are infinite, or it would count twice.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn curvilinear_trapezoid(half_width: f64, half_width_error: f64) -> Result<Self, Error> {
        let (half_width, half_width_error) =
            (size("half_width", half_width)?, size("half_width_error", half_width_error)?);
        if half_width_error > 0.0 && half_width_error >= half_width {
            let reason = "the half-width must be larger than its error";
            return Err(refused("half_width_error", half_width_error, reason, 0.0, half_width));
        }
        Ok(Self::exact(Shape::CurvilinearTrapezoid { half_width, half_width_error }))
    }

    /// Arcsine (U-shaped) with a half-width, 0 or more: a temperature that is controlled between two switching points.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn arcsine(half_width: f64) -> Result<Self, Error> {
        Ok(Self::exact(Shape::Arcsine { half_width: size("half_width", half_width)? }))
    }

    /// A shape from its half-width, and from its parameter where it has one.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`]; [`ErrorKind::MissingField`] without the parameter, [`ErrorKind::Contradiction`] for one that is not used.
    pub fn bounded(shape: Bounded, half_width: f64, parameter: Option<f64>) -> Result<Self, Error> {
        match (shape, parameter) {
            (Bounded::Rectangular, None) => Self::rectangular(half_width),
            (Bounded::Triangular, None) => Self::triangular(half_width),
            (Bounded::Arcsine, None) => Self::arcsine(half_width),
            (Bounded::Trapezoidal, Some(beta)) => {
                within("parameter", beta, 0.0, 1.0)?;
                Self::trapezoidal(half_width, beta)
            }
            (Bounded::CurvilinearTrapezoid, Some(error)) => {
                size("parameter", error)?;
                Self::curvilinear_trapezoid(half_width, error).map_err(|e| match e.field() {
                    "half_width_error" => e.moved("parameter".to_owned()),
                    _ => e,
                })
            }
            (Bounded::Trapezoidal | Bounded::CurvilinearTrapezoid, None) => {
                Err(Error::new(ErrorKind::MissingField, "parameter", "this shape needs its parameter")
                    .at("parameter"))
            }
            (_, Some(value)) => {
                let error =
                    Error::new(ErrorKind::Contradiction, value.to_string(), "this shape has no parameter");
                Err(error.at("parameter"))
            }
        }
    }

    /// Type A: the mean of repeated readings, and the distribution of its error.
    ///
    /// # Errors
    /// As [`statistics::sample`]; [`ErrorKind::OutOfRange`] for readings too large to be squared.
    pub fn from_repeats(values: &[f64]) -> Result<(f64, Self), Error> {
        let sample = statistics::sample(values)?;
        let dof = statistics::as_number(sample.count) - 1.0;
        Ok((sample.mean, Self::student_t(sample.deviation_of_mean, dof)?))
    }

    /// Type A with a pooled standard deviation of `dof` degrees of freedom, for the mean of `count` readings, one or more.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn pooled(standard_deviation: f64, dof: f64, count: usize) -> Result<Self, Error> {
        let s = size("standard_deviation", standard_deviation)?;
        let count = above_zero("count", statistics::as_number(count))?;
        Self::student_t(s / count.sqrt(), dof)
    }

    /// The same shape with another size: standard uncertainty `expanded / coverage_factor`.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`], also when this one has no size to scale.
    pub fn with_expanded(self, expanded: f64, coverage_factor: f64) -> Result<Self, Error> {
        let wanted = size("expanded", expanded)? / above_zero("coverage_factor", coverage_factor)?;
        let factor = wanted / above_zero("standard_uncertainty", self.standard_uncertainty())?;
        self.scaled(size("expanded", factor)?)
    }

    /// With degrees of freedom, from [`LEAST_DOF`] to infinite. A normal becomes a Student's t; a bounded shape keeps its
    /// limits when it is sampled (for doubtful limits sample a [`curvilinear_trapezoid`](Self::curvilinear_trapezoid)).
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn with_dof(self, dof: f64) -> Result<Self, Error> {
        match self.shape {
            Shape::Normal { standard_deviation: scale } | Shape::StudentT { scale, .. } => {
                Self::student_t(scale, dof)
            }
            shape => Ok(Distribution { shape, dof: degrees("dof", dof)? }),
        }
    }

    /// With the relative uncertainty of its standard uncertainty, 0 to 1: `dof = 1/2 (du / u)^-2`. See [`Self::with_dof`].
    /// Source: JCGM 100:2008, G.4.2, (G.3).
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn with_reliability(self, relative_uncertainty: f64) -> Result<Self, Error> {
        self.with_dof(dof_of_reliability(relative_uncertainty)?)
    }

    /// Shape and size.
    #[must_use]
    pub fn shape(&self) -> Shape {
        self.shape
    }

    /// Degrees of freedom of the standard uncertainty; infinite when it is taken as exact.
    #[must_use]
    pub fn dof(&self) -> f64 {
        self.dof
    }

    /// Standard uncertainty in the sense of JCGM 100: for a Student's t its scale.
    #[must_use]
    pub fn standard_uncertainty(&self) -> f64 {
        match self.shape {
            Shape::Normal { standard_deviation: u } | Shape::StudentT { scale: u, .. } => u,
            Shape::Rectangular { half_width: a } => a / 3.0_f64.sqrt(),
            Shape::Triangular { half_width: a } => a / 6.0_f64.sqrt(),
            Shape::Trapezoidal { half_width: a, beta } => a * ((1.0 + beta * beta) / 6.0).sqrt(),
            Shape::CurvilinearTrapezoid { half_width: a, half_width_error: d } => {
                (a * a / 3.0 + d * d / 9.0).sqrt()
            }
            Shape::Arcsine { half_width: a } => a / 2.0_f64.sqrt(),
        }
    }

    /// Standard deviation of the distribution, as sampling shows it; none for a Student's t with two degrees of freedom or fewer.
    /// Source: JCGM 101:2008, 6.4.9.4.
    #[must_use]
    pub fn standard_deviation(&self) -> Option<f64> {
        match self.shape {
            Shape::StudentT { dof, .. } if dof <= 2.0 => None,
            Shape::StudentT { scale, dof } => Some(scale * (dof / (dof - 2.0)).sqrt()),
            _ => Some(self.standard_uncertainty()),
        }
    }

    /// The value that the error is not above with this probability, between 0 and 1; NaN outside.
    #[must_use]
    pub fn quantile(&self, probability: f64) -> f64 {
        if !(probability > 0.0 && probability < 1.0) {
            return f64::NAN;
        }
        // by the lower tail, where the probability holds its digits
        if probability > 0.5 { -self.shape.lower(1.0 - probability) } else { self.shape.lower(probability) }
    }

    /// Coverage factor of this shape alone for a probability between 0 and 1: half the symmetric interval over the standard uncertainty.
    ///
    /// For a trapezoid that is `(1 - sqrt((1 - p) (1 - beta^2))) / sqrt((1 + beta^2) / 6)` where the interval reaches its flanks: 1.83
    /// at 95 % and `beta` 1/3. Source: EA-4/02 M:2022, S10.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`], also when the shape has no size.
    pub fn coverage_factor(&self, probability: f64) -> Result<f64, Error> {
        let probability = coverage("probability", probability)?;
        let u = above_zero("standard_uncertainty", self.standard_uncertainty())?;
        Ok(-self.shape.lower((1.0 - probability) / 2.0) / u)
    }

    const fn exact(shape: Shape) -> Self {
        Distribution { shape, dof: f64::INFINITY }
    }

    pub(crate) fn scaled(self, factor: f64) -> Result<Self, Error> {
        let scaled = match self.shape {
            Shape::Normal { standard_deviation } => Self::normal(standard_deviation * factor),
            Shape::StudentT { scale, dof } => Self::student_t(scale * factor, dof),
            Shape::Rectangular { half_width } => Self::rectangular(half_width * factor),
            Shape::Triangular { half_width } => Self::triangular(half_width * factor),
            Shape::Trapezoidal { half_width, beta } => Self::trapezoidal(half_width * factor, beta),
            Shape::CurvilinearTrapezoid { half_width, half_width_error } => {
                Self::curvilinear_trapezoid(half_width * factor, half_width_error * factor)
            }
            Shape::Arcsine { half_width } => Self::arcsine(half_width * factor),
        };
        scaled?.with_dof(self.dof)
    }
}

impl Shape {
    /// Quantile for a probability up to one half.
    pub(crate) fn lower(self, tail: f64) -> f64 {
        match self {
            Shape::Normal { standard_deviation } => standard_deviation * normal_quantile(tail),
            Shape::StudentT { scale, dof } => scale * t_quantile(tail, dof),
            Shape::Rectangular { half_width } => half_width * (2.0 * tail - 1.0),
            Shape::Triangular { half_width } => half_width * trapezoid_lower(tail, 0.0),
            Shape::Trapezoidal { half_width, beta } => half_width * trapezoid_lower(tail, beta),
            Shape::CurvilinearTrapezoid { half_width, half_width_error } => {
                curvilinear_lower(tail, half_width, half_width_error)
            }
            Shape::Arcsine { half_width } => -half_width * libm::cos(PI * tail),
        }
    }
}

/// Two-sided coverage factor `t_p(dof)` for a probability between 0 and 1; degrees of freedom from [`LEAST_DOF`] to infinite.
/// Source: JCGM 100:2008, G.3.2.
///
/// # Errors
/// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
pub fn coverage_factor(probability: f64, dof: f64) -> Result<f64, Error> {
    let probability = coverage("probability", probability)?;
    let factor = crate::special::coverage_factor(probability, degrees("dof", dof)?);
    // a probability within a rounding of 1 has no tail
    if factor.is_finite() {
        Ok(factor)
    } else {
        Err(refused("probability", probability, "too near to 1", 0.0, 1.0))
    }
}

/// Degrees of freedom of a standard uncertainty that is itself known to a relative uncertainty, 0 to 1; 0 gives infinite ones.
/// Source: JCGM 100:2008, G.4.2, (G.3).
///
/// # Errors
/// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
pub fn dof_of_reliability(relative_uncertainty: f64) -> Result<f64, Error> {
    let r = within("relative_uncertainty", relative_uncertainty, 0.0, 1.0)?;
    // below this the degrees of freedom are infinite for every purpose, and the square would lose itself
    Ok(if r < 1e-100 { f64::INFINITY } else { 0.5 / (r * r) })
}

/// Quantile up to one half of the trapezoid of half-width 1.
#[inline(always)]
pub(super) fn trapezoid_lower(tail: f64, beta: f64) -> f64 {
    if tail * 2.0 * (1.0 + beta) < 1.0 - beta {
        (2.0 * tail * (1.0 - beta) * (1.0 + beta)).sqrt() - 1.0
    } else {
        (tail - 0.5) * (1.0 + beta)
    }
}

/// Quantile up to one half of the curvilinear trapezoid: its probability above `x` is `(c - x - x ln(c / x)) / 4d` beyond the flat
/// middle, `c = a + d`, which is halved down to the last digit. Source: integral of the density of JCGM 101:2008, 6.4.3.2.
fn curvilinear_lower(tail: f64, half_width: f64, error: f64) -> f64 {
    let (inner, outer) = (half_width - error, half_width + error);
    if error <= 0.0 {
        return half_width * (2.0 * tail - 1.0);
    }
    let above = |x: f64| {
        let ratio = x / outer;
        outer * ((1.0 - ratio) + ratio * libm::log(ratio)) / (4.0 * error)
    };
    if tail >= above(inner) {
        let density = libm::log(outer / inner) / (4.0 * error);
        return (tail - 0.5) / density;
    }
    let (mut low, mut high) = (inner, outer);
    for _ in 0..200 {
        let middle = low + (high - low) / 2.0;
        if above(middle) > tail {
            low = middle;
        } else {
            high = middle;
        }
    }
    -high
}

/// A size: finite, not negative, small enough for its powers.
pub(crate) fn size(field: &str, value: f64) -> Result<f64, Error> {
    // minus zero is zero
    within(field, value, 0.0, LARGEST).map(|v| v + 0.0)
}

pub(crate) fn above_zero(field: &str, value: f64) -> Result<f64, Error> {
    let value = size(field, value)?;
    if value > 0.0 {
        return Ok(value);
    }
    Err(refused(field, value, "a value above zero is needed", 0.0, LARGEST))
}

/// A coverage probability, between 0 and 1 and neither.
pub(crate) fn coverage(field: &str, value: f64) -> Result<f64, Error> {
    let value = within(field, value, 0.0, 1.0)?;
    if value > 0.0 && value < 1.0 {
        return Ok(value);
    }
    Err(refused(field, value, "a probability between 0 and 1, and neither of them, is needed", 0.0, 1.0))
}

pub(super) fn degrees(field: &str, value: f64) -> Result<f64, Error> {
    match value {
        f64::INFINITY => Ok(value),
        _ => within(field, value, LEAST_DOF, f64::MAX),
    }
}

pub(crate) fn within(field: &str, value: f64, lower: f64, upper: f64) -> Result<f64, Error> {
    if !value.is_finite() {
        let error = Error::new(ErrorKind::NotFinite, value.to_string(), "a finite number is needed");
        return Err(error.limits(lower, upper, "").at(field));
    }
    if value < lower || value > upper {
        return Err(refused(field, value, "outside what is possible", lower, upper));
    }
    Ok(value)
}

pub(crate) fn refused(field: &str, value: f64, reason: &str, lower: f64, upper: f64) -> Error {
    let error = Error::new(ErrorKind::OutOfRange, written(value), reason);
    error.value(value).limits(lower, upper, "").at(field)
}
