//! Risks of a decision over a whole process: how many items are accepted that should not be, and rejected that should not be.
//!
//! Source: JCGM 106:2012, clause 9. The measurement error is normal with standard uncertainty `u`; the items follow any
//! distribution. All numbers are in one unit, whichever it is.

use crate::error::{Error, ErrorKind};
use crate::quadrature::integral;
use crate::special::{gamma_p, gamma_q, normal_cdf, normal_density};

/// Distribution of the items that come to be measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Items {
    /// Normal.
    Normal {
        /// Mean.
        mean: f64,
        /// Standard deviation.
        deviation: f64,
    },
    /// Uniform.
    Uniform {
        /// Smallest.
        low: f64,
        /// Largest.
        high: f64,
    },
    /// Triangular.
    Triangular {
        /// Smallest.
        low: f64,
        /// Most frequent.
        mode: f64,
        /// Largest.
        high: f64,
    },
    /// Gamma: for what cannot be negative, such as run-out or out-of-round.
    Gamma {
        /// Shape.
        shape: f64,
        /// Scale: the mean is shape times scale.
        scale: f64,
    },
}

/// Limits with one or two sides.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// Lower limit.
    pub lower: Option<f64>,
    /// Upper limit.
    pub upper: Option<f64>,
}

/// Shares of all items.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Risks {
    /// Items that conform.
    pub conforming: f64,
    /// Global consumer's risk: accepted, and does not conform.
    pub consumer: f64,
    /// Global producer's risk: rejected, and conforms.
    pub producer: f64,
}

/// How an acceptance interval follows from the tolerance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Guard {
    /// Simple acceptance; ASME B89.7.3.1 asks that the tolerance be at least a ratio times the expanded uncertainty `2 u`.
    RatioAtLeast(f64),
    /// Stringent acceptance: inside by a share of the expanded uncertainty `2 u` (ASME B89.7.3.1; JCGM 106:2012, 8.3.2.2; a share of 1 is
    /// `g = U`, ISO 14253-1:1998 and 2013).
    Stringent(f64),
    /// Relaxed acceptance: outside by a share of the expanded uncertainty `2 u` (ASME B89.7.3.1).
    Relaxed(f64),
    /// Inside by `1.65 u`: ISO 14253-1:2017, default.
    Proven,
}

/// Numbers are below this, and numbers above 0 are above its inverse: what is computed from them stays far within a double.
const LARGEST: f64 = 1e50;
/// Shapes that the incomplete gamma function is held to; see [`crate::special`].
const SHAPES: (f64, f64) = (0.01, 1000.0);
/// Absolute error of the integrals.
const TOLERANCE: f64 = 1e-13;
/// A normal variable is not farther from its mean than this many deviations, to 1e-30.
const FAR: f64 = 12.0;

impl Items {
    fn density(self, x: f64) -> f64 {
        match self {
            Items::Normal { mean, deviation } => normal_density((x - mean) / deviation) / deviation,
            Items::Uniform { low, high } => {
                if x >= low && x <= high {
                    1.0 / (high - low)
                } else {
                    0.0
                }
            }
            Items::Triangular { low, mode, high } => {
                if x < low || x > high {
                    0.0
                } else if x < mode {
                    2.0 * (x - low) / ((high - low) * (mode - low))
                } else if x > mode {
                    2.0 * (high - x) / ((high - low) * (high - mode))
                } else {
                    2.0 / (high - low)
                }
            }
            Items::Gamma { shape, scale } => {
                if x <= 0.0 {
                    return 0.0;
                }
                let x = x / scale;
                libm::exp((shape - 1.0) * libm::log(x) - x - libm::lgamma(shape)) / scale
            }
        }
    }

    /// Share of the items that are not above `x`.
    #[must_use]
    pub fn below(self, x: f64) -> f64 {
        match self {
            Items::Normal { mean, deviation } => normal_cdf((x - mean) / deviation),
            Items::Uniform { low, high } => ((x - low) / (high - low)).clamp(0.0, 1.0),
            Items::Triangular { low, mode, high } => {
                if x <= low {
                    0.0
                } else if x >= high {
                    1.0
                } else if x <= mode {
                    (x - low) * (x - low) / ((high - low) * (mode - low))
                } else {
                    1.0 - (high - x) * (high - x) / ((high - low) * (high - mode))
                }
            }
            Items::Gamma { shape, scale } => {
                if x > 0.0 {
                    gamma_p(shape, x / scale)
                } else {
                    0.0
                }
            }
        }
    }

    /// Share of the items above `x`, without loss in the tail.
    #[must_use]
    pub fn above(self, x: f64) -> f64 {
        match self {
            Items::Normal { mean, deviation } => normal_cdf((mean - x) / deviation),
            Items::Gamma { shape, scale } if x > 0.0 => gamma_q(shape, x / scale),
            _ => 1.0 - self.below(x),
        }
    }

    /// Where the items lie: the ends, and the corners and centre between them.
    fn points(self) -> Vec<f64> {
        match self {
            Items::Normal { mean, deviation } => {
                [-FAR, -3.0, 0.0, 3.0, FAR].into_iter().map(|k| mean + k * deviation).collect()
            }
            Items::Uniform { low, high } => vec![low, high],
            Items::Triangular { low, mode, high } => vec![low, mode, high],
            Items::Gamma { shape, scale } => {
                let (mean, deviation) = (shape * scale, shape.sqrt() * scale);
                vec![
                    0.0,
                    mean / 4.0,
                    mean,
                    mean + 3.0 * deviation,
                    mean + 10.0 * deviation,
                    mean + 70.0 * deviation,
                ]
            }
        }
    }

    /// The same items on a scale that begins where they do, and its origin. Without it, a large mean takes the digits that the
    /// integrals need, and they halve without end.
    fn about_origin(self) -> (Self, f64) {
        match self {
            Items::Normal { mean, deviation } => (Items::Normal { mean: 0.0, deviation }, mean),
            Items::Uniform { low, high } => (Items::Uniform { low: 0.0, high: high - low }, low),
            Items::Triangular { low, mode, high } => {
                (Items::Triangular { low: 0.0, mode: mode - low, high: high - low }, low)
            }
            Items::Gamma { .. } => (self, 0.0),
        }
    }

    fn check(self) -> Result<(), Error> {
        let numbers = match self {
            Items::Normal { mean, deviation } => vec![mean, deviation],
            Items::Uniform { low, high } => vec![low, high],
            Items::Triangular { low, mode, high } => vec![low, mode, high],
            Items::Gamma { shape, scale } => vec![shape, scale],
        };
        numbers.iter().try_for_each(|n| finite("items", *n).map(drop))?;
        let apart = |low: f64, high: f64| high - low > 1.0 / LARGEST;
        let (sound, reason) = match self {
            Items::Normal { deviation, .. } => {
                (apart(0.0, deviation), "the standard deviation must be above 0")
            }
            Items::Uniform { low, high } => (apart(low, high), "low must be below high"),
            Items::Triangular { low, mode, high } => {
                let rise = |a: f64, b: f64| b - a == 0.0 || apart(a, b);
                (rise(low, mode) && rise(mode, high) && apart(low, high), "low, mode and high must rise")
            }
            Items::Gamma { shape, scale } => (
                shape >= SHAPES.0 && shape <= SHAPES.1 && apart(0.0, scale),
                "the shape must be 0.01 to 1000, the scale above 0",
            ),
        };
        match sound {
            true => Ok(()),
            false => Err(Error::new(ErrorKind::OutOfRange, format!("{self:?}"), reason).at("items")),
        }
    }
}

impl Guard {
    /// The guard band at each limit, in standard uncertainties; negative outside, 0 for a rule without one.
    pub(crate) fn band(self) -> Result<f64, Error> {
        match self {
            Guard::Proven => Ok(1.65),
            Guard::Stringent(share) => Ok(2.0 * finite("guard", share)?),
            Guard::Relaxed(share) => Ok(-2.0 * finite("guard", share)?),
            Guard::RatioAtLeast(least) => finite("guard", least).map(|_| 0.0),
        }
    }
}

impl Interval {
    /// The same interval on a scale that begins at `origin`.
    fn measured_from(self, origin: f64) -> Self {
        Interval { lower: self.lower.map(|l| l - origin), upper: self.upper.map(|u| u - origin) }
    }

    /// The same interval made narrower by `guard` at each end.
    fn narrowed(self, guard: f64) -> Self {
        Interval { lower: self.lower.map(|l| l + guard), upper: self.upper.map(|u| u - guard) }
    }

    pub(crate) fn check(self, field: &str) -> Result<(), Error> {
        [self.lower, self.upper]
            .into_iter()
            .flatten()
            .try_for_each(|limit| finite(field, limit).map(drop))?;
        match (self.lower, self.upper) {
            (None, None) => Err(Error::new(ErrorKind::MissingField, "", "a limit is needed").at(field)),
            (Some(low), Some(high)) if low >= high => {
                let error = Error::new(
                    ErrorKind::OutOfOrder,
                    high.to_string(),
                    "the upper limit must be above the lower",
                );
                Err(error.value(high).at(field))
            }
            _ => Ok(()),
        }
    }

    /// Probability that a normal variable of mean `x` and deviation `u` lies outside, with its digits where it is small. Source: JCGM
    /// 106:2012, 7.2.2.
    pub(crate) fn outside(self, x: f64, u: f64) -> f64 {
        /// Tails at `n` and `f` standard deviations, `n < f`, have at least the ratio `exp((f^2 - n^2) / 2)`: beyond this difference of
        /// squares the farther one does not change the last digit of the sum.
        const APART: f64 = 80.0;
        let below = self.lower.map_or(f64::INFINITY, |l| (x - l) / u);
        let above = self.upper.map_or(f64::INFINITY, |h| (h - x) / u);
        let (near, far) = if below < above { (below, above) } else { (above, below) };
        let inside = if near > 0.0 { near } else { 0.0 };
        let farther = if far * far - inside * inside > APART { 0.0 } else { normal_cdf(-far) };
        normal_cdf(-near) + farther
    }

    pub(crate) fn width(self) -> Option<f64> {
        Some(self.upper? - self.lower?)
    }

    /// The width, which a ratio is taken of.
    pub(crate) fn two_limits(self, field: &str) -> Result<f64, Error> {
        let reason = "a ratio needs a tolerance with two limits";
        self.width().ok_or_else(|| Error::new(ErrorKind::MissingField, "", reason).at(field))
    }
}

/// The acceptance interval of a tolerance by a rule.
///
/// # Errors
/// [`ErrorKind::OutOfRange`] when the ratio is not reached, [`ErrorKind::OutOfOrder`] when the guard bands leave nothing.
pub fn acceptance(tolerance: Interval, u: f64, guard: Guard) -> Result<Interval, Error> {
    tolerance.check("tolerance")?;
    above_zero("u", u)?;
    let band = guard.band()? * u;
    if let Guard::RatioAtLeast(least) = guard {
        let ratio = tolerance.two_limits("tolerance")? / (4.0 * u);
        if ratio < least {
            let reason =
                "the tolerance is too narrow for this uncertainty: tolerance / (2 U) must reach the ratio";
            let error = Error::new(ErrorKind::OutOfRange, ratio.to_string(), reason);
            return Err(error.value(ratio).limits(least, f64::MAX, "1").at("u"));
        }
    }
    let out = tolerance.narrowed(band);
    out.check("guard").map(|()| out)
}

/// Global risks of accepting by `accepted` what should conform to `tolerance`. Source: JCGM 106:2012, 9.4, formulae 18 and 19.
///
/// # Errors
/// When a number is not finite, a distribution or an interval is impossible.
pub fn global_risks(items: Items, u: f64, tolerance: Interval, accepted: Interval) -> Result<Risks, Error> {
    items.check()?;
    above_zero("u", u)?;
    tolerance.check("tolerance")?;
    accepted.check("accepted")?;
    let (items, origin) = items.about_origin();
    let (tolerance, accepted) = (tolerance.measured_from(origin), accepted.measured_from(origin));
    let accept = |x: f64| {
        let below = accepted.upper.map_or(1.0, |a| normal_cdf((a - x) / u));
        below - accepted.lower.map_or(0.0, |a| normal_cdf((a - x) / u))
    };
    // one less the probability to accept, without loss where that is near one
    let reject = |x: f64| {
        let above = accepted.upper.map_or(0.0, |a| normal_cdf((x - a) / u));
        above + accepted.lower.map_or(0.0, |a| normal_cdf((a - x) / u))
    };
    let over = |from: f64, to: f64, share: &dyn Fn(f64) -> f64| {
        let points = points(items, accepted, u, from, to);
        integral(&|x| items.density(x) * share(x), &points, TOLERANCE).value
    };
    let (first, last) = ends(items);
    let (low, high) = (tolerance.lower.unwrap_or(first), tolerance.upper.unwrap_or(last));
    let outside =
        tolerance.lower.map_or(0.0, |l| items.below(l)) + tolerance.upper.map_or(0.0, |h| items.above(h));
    Ok(Risks {
        conforming: 1.0 - outside,
        consumer: over(first, low, &accept) + over(high, last, &accept),
        producer: over(low, high, &reject),
    })
}

fn ends(items: Items) -> (f64, f64) {
    let points = items.points();
    (points.first().copied().unwrap_or_default(), points.last().copied().unwrap_or_default())
}

/// Where to cut an integral from `from` to `to`: where the items or the chance of acceptance turn.
fn points(items: Items, accepted: Interval, u: f64, from: f64, to: f64) -> Vec<f64> {
    let mut out = items.points();
    let turns = [accepted.lower, accepted.upper].into_iter().flatten();
    out.extend(turns.flat_map(|a| [-6.0, -2.0, 0.0, 2.0, 6.0].map(|k| a + k * u)));
    out.retain(|x| *x > from && *x < to);
    out.extend([from, to]);
    out.sort_by(f64::total_cmp);
    out
}

/// The acceptance interval, narrowed (or widened) equally at each limit, whose global consumer's risk is `wanted`.
///
/// # Errors
/// [`ErrorKind::OutOfRange`] when no guard band within ten standard uncertainties gives that risk, with the risks that can be had.
pub fn acceptance_for_risk(
    items: Items,
    u: f64,
    tolerance: Interval,
    wanted: f64,
) -> Result<Interval, Error> {
    let risk = |guard: f64| global_risks(items, u, tolerance, tolerance.narrowed(guard)).map(|r| r.consumer);
    finite("wanted", wanted)?;
    risk(0.0)?;
    // a wider guard accepts less: the risk falls with it
    let half = tolerance.width().map_or(f64::INFINITY, |w| w / 2.0);
    let widest = if 10.0 * u < half { 10.0 * u } else { half * (1.0 - 1e-9) };
    let (mut low, mut high) = (-10.0 * u, widest);
    let (most, least) = (risk(low)?, risk(high)?);
    if !(wanted <= most && wanted >= least) {
        let error =
            Error::new(ErrorKind::OutOfRange, wanted.to_string(), "no guard band gives this consumer's risk");
        return Err(error.value(wanted).limits(least, most, "1").at("wanted"));
    }
    for _ in 0..200 {
        let middle = low + (high - low) / 2.0;
        if middle <= low || middle >= high {
            break;
        }
        if risk(middle)? > wanted {
            low = middle;
        } else {
            high = middle;
        }
    }
    Ok(tolerance.narrowed(high))
}

/// Process capability and the share outside the limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Capability {
    /// Distance of the mean from the nearer limit in three standard deviations.
    pub cpk: f64,
    /// Share of the items outside the limits.
    pub outside: f64,
}

/// Capability of a normal process. Source: definition of Cpk (ISO 22514-2).
///
/// # Errors
/// When a number is not finite, the deviation is not above 0, or an interval is impossible.
pub fn capability(mean: f64, deviation: f64, tolerance: Interval) -> Result<Capability, Error> {
    finite("mean", mean)?;
    above_zero("deviation", deviation)?;
    tolerance.check("tolerance")?;
    let above = tolerance.lower.map_or(f64::INFINITY, |l| mean - l);
    let below = tolerance.upper.map_or(f64::INFINITY, |h| h - mean);
    let nearer = if below < above { below } else { above };
    Ok(Capability { cpk: nearer / (3.0 * deviation), outside: tolerance.outside(mean, deviation) })
}

pub(crate) fn finite(field: &str, value: f64) -> Result<f64, Error> {
    match value.abs() < LARGEST {
        true => Ok(value),
        false => {
            Err(Error::new(ErrorKind::NotFinite, value.to_string(), "a finite number below 1e50 is needed")
                .at(field))
        }
    }
}

pub(crate) fn above_zero(field: &str, value: f64) -> Result<f64, Error> {
    match finite(field, value)? > 1.0 / LARGEST {
        true => Ok(value),
        false => {
            let error = Error::new(ErrorKind::OutOfRange, value.to_string(), "it must be above 0");
            Err(error.value(value).limits(1.0 / LARGEST, LARGEST, "1").at(field))
        }
    }
}
