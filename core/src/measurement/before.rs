//! Before measuring, and before believing: is the part soaked, is the gauge good enough for this limit, did it drift, do two
//! readers agree, is one point of a list unlike the others.
//!
#![doc = include_str!("../../docs/before-measuring.md")]

use super::HalfWidth;
use super::statistics::{as_number, readable, sample, sum, too_few};
use crate::bounds::{self, Bound};
use crate::calc::{Formula, formula};
use crate::decision::risk::{Guard, Interval, above_zero, finite};
use crate::error::{Error, ErrorKind};
use crate::job::MOST_ENTRIES;
use crate::special::{coverage_factor, t_quantile};
use core::f64::consts::PI;

formula! {
    /// Error of a size that is read while the part is warm, once for every kelvin above the gauge.
    WarmError: error ["mm"] = (size, a, excess) => size * a * excess; source "definition of strain, first order";
    /// Standard uncertainty of the correction for it, from the half-widths of the excess and of the coefficient.
    WarmUncertainty: u ["mm"] = (size, a, excess, w_excess, w_a) => size * ((a * w_excess * (a * w_excess) + excess * w_a * (excess * w_a)) / 3.0).sqrt();
        source "JCGM 100:2008, 4.3.7 and 5.1.2";
    /// What a gauge shows on its master after the work, less what it showed before.
    DriftOnMaster: drift ["mm"] = (after, before) => after - before; source "difference of two readings of one standard";
    /// What all readings between the two checks share of the drift: its mean.
    DriftShared: u ["mm"] = (drift) => (drift * drift / 4.0).sqrt();
        source "JCGM 100:2008, 4.3.7, half-width drift: drift^2 / 3 = drift^2 / 4 + drift^2 / 12; the mean, not corrected";
    /// What each of these readings has for itself: rectangular between nothing and the whole drift.
    DriftOwn: u ["mm"] = (drift) => (drift * drift / 12.0).sqrt(); source "JCGM 100:2008, 4.3.7, over the width of the drift";
}

const EXCESS: Bound = Bound {
    label: "temperature of a part above the shop",
    unit: "K",
    possible: (-100.0, 300.0),
    usual: (-20.0, 60.0),
    reason: "a part from the wash is at 60 C to 80 C; from the furnace at 300 C",
};
const TIME_CONSTANT: Bound = Bound {
    label: "time constant of cooling, in minutes",
    unit: "min",
    possible: (0.1, 10_000.0),
    usual: (5.0, 600.0),
    reason: "a bare piston about a quarter of an hour, an iron block some hours; unverified",
};
const PART: Bound = Bound {
    label: "size of a part",
    unit: "mm",
    possible: (1.0, 1100.0),
    usual: (5.0, 200.0),
    reason: "from a small pin to a marine bore",
};
const ALLOWED: Bound = Bound {
    label: "allowed error of a size",
    unit: "mm",
    possible: (0.000_01, 1.0),
    usual: (0.0005, 0.02),
    reason: "a tenth of a tolerance, as a rule",
};
const EXCESS_ERROR: Bound =
    Bound { label: "error of a temperature difference", possible: (0.0, 10.0), ..bounds::THERMOMETER_ERROR };

/// A part that is not at the temperature of the gauge, and what is asked of its size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Warm {
    /// Temperature of the part less that of the gauge, in K; negative when the part is colder.
    pub excess_k: f64,
    /// Time after which the excess has fallen to 37 % (1/e), in minutes; see [`TIME_CONSTANTS`].
    pub time_constant_min: f64,
    /// Size of the part in mm; the nominal size will do.
    pub size_mm: f64,
    /// Coefficient of expansion of the part, per kelvin.
    pub expansion_per_k: f64,
    /// Error of the size that is allowed, in mm.
    pub allowed_mm: f64,
    /// Half-width of the error of the excess, in K.
    pub excess_error_k: f64,
    /// Half-width of the error of the coefficient, per kelvin.
    pub expansion_error_per_k: f64,
}

/// What to do with a part that is warm.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Advice {
    /// Its error is within what is allowed: measure.
    Measure,
    /// Wait, or measure now and correct: twice the uncertainty of the correction is within what is allowed.
    WaitOrCorrect,
    /// Wait: the correction is too uncertain.
    Wait,
}

/// What a warm part means for its size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Soak {
    /// What to do.
    pub advice: Advice,
    /// Error of the size when it is measured now, in mm: positive when it reads too large.
    pub error_mm: f64,
    /// Time until the error is what is allowed, in minutes; 0 when it already is.
    pub wait_min: f64,
    /// What to add to the reading when it is measured now, in mm.
    pub correction_mm: f64,
    /// Standard uncertainty of that correction, in mm.
    pub correction_uncertainty_mm: f64,
}

/// Guide values of time constants in still air: what, shortest and longest in minutes. Unverified: experience says that a difference of
/// 10 K has fallen to 0.5 K after 0.5 h to 1 h (bare piston), 1 h to 2 h (liner), 6 h to 12 h (iron block); a time constant is a
/// third of that, `1 / ln 20`. Measure your own: the time in which the excess falls to 37 %.
pub const TIME_CONSTANTS: [(&str, f64, f64); 3] =
    [("bare piston", 10.0, 20.0), ("liner", 20.0, 40.0), ("iron block", 120.0, 240.0)];

/// Is a part soaked; if not, how long to wait, and what correcting instead would cost.
///
/// First-order cooling (Newton): `excess(t) = excess exp(-t / time constant)`. The gauge is at the temperature of the shop.
///
/// # Errors
/// When a number is not finite or impossible; the error names it.
///
/// ```
/// use gaugepoint::measurement::before::{Advice, Warm, soak};
/// // an aluminium piston of 86 mm, 10 K warm: 86 * 20.5e-6 * 10 = 17.6 um, by hand
/// let warm = Warm {
///     excess_k: 10.0, time_constant_min: 15.0, size_mm: 86.0, expansion_per_k: 20.5e-6,
///     allowed_mm: 0.001, excess_error_k: 1.0, expansion_error_per_k: 1e-6,
/// };
/// let soak = soak(warm)?;
/// assert_eq!(format!("{:.4} mm, {:.0} min", soak.error_mm, soak.wait_min), "0.0176 mm, 43 min");
/// assert_eq!(soak.advice, Advice::Wait);
/// # Ok::<(), gaugepoint::Error>(())
/// ```
pub fn soak(warm: Warm) -> Result<Soak, Error> {
    let excess = EXCESS.check("excess_k", warm.excess_k)?;
    let time_constant = TIME_CONSTANT.check("time_constant_min", warm.time_constant_min)?;
    let size = PART.check("size_mm", warm.size_mm)?;
    let a = bounds::EXPANSION.check("expansion_per_k", warm.expansion_per_k)?;
    let allowed = ALLOWED.check("allowed_mm", warm.allowed_mm)?;
    let w_excess = EXCESS_ERROR.check("excess_error_k", warm.excess_error_k)?;
    let w_a = bounds::EXPANSION_ERROR.check("expansion_error_per_k", warm.expansion_error_per_k)?;
    // + 0.0: minus zero is zero
    let error = WarmError::evaluate([size, a, excess]) + 0.0;
    let u = WarmUncertainty::evaluate([size, a, excess, w_excess, w_a]);
    let soaked = error.abs() <= allowed;
    let advice = match (soaked, 2.0 * u <= allowed) {
        (true, _) => Advice::Measure,
        (false, true) => Advice::WaitOrCorrect,
        (false, false) => Advice::Wait,
    };
    let wait_min = if soaked { 0.0 } else { time_constant * libm::log(error.abs() / allowed) };
    Ok(Soak { advice, error_mm: error, wait_min, correction_mm: 0.0 - error, correction_uncertainty_mm: u })
}

/// Is a gauge good enough for a tolerance?
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Adequacy {
    /// Does the uncertainty reach what is asked?
    pub adequate: bool,
    /// Target uncertainty: the largest standard uncertainty that does.
    pub largest_u: f64,
    /// Tolerance divided by `2 U`, `U = 2 u`, with the uncertainty given.
    pub ratio: f64,
    /// Share of the tolerance that is left to accept in, with the uncertainty given; below 0 when the guard bands overlap.
    pub zone: f64,
}

/// Holds a standard uncertainty against a tolerance with two limits, before anything is measured with it.
///
/// With [`Guard::RatioAtLeast`] the tolerance must be at least that many times `2 U` wide (ASME B89.7.3.1) and `least_zone` asks nothing
/// more; with a guard band at either end ([`Guard::Proven`], ISO 14253-1:2017; [`Guard::Stringent`], JCGM 106:2012, 8.3.2) at least
/// the share `least_zone` of the tolerance must be left between them. All numbers are in one unit, whichever it is.
///
/// # Errors
/// When a number is not finite or impossible, or the tolerance has one limit only; [`ErrorKind::OutOfRange`] for a rule that asks
/// nothing of a gauge ([`Guard::Relaxed`], a number of 0) and for a share that is not from 0 to below 1.
pub fn adequacy(tolerance: Interval, u: f64, guard: Guard, least_zone: f64) -> Result<Adequacy, Error> {
    tolerance.check("tolerance")?;
    let width = above_zero("tolerance", tolerance.two_limits("tolerance")?)?;
    above_zero("u", u)?;
    if !(0.0..1.0).contains(&least_zone) {
        let error = Error::new(ErrorKind::OutOfRange, least_zone.to_string(), "a share below 1 is needed");
        return Err(error.value(least_zone).limits(0.0, 1.0, "1").at("least_zone"));
    }
    let band = guard.band()?;
    let asked = match guard {
        Guard::RatioAtLeast(ratio) => 4.0 * ratio,
        _ => 2.0 * band / (1.0 - least_zone),
    };
    // a rule that asks nothing of a gauge has no answer
    let largest_u = finite("guard", width / above_zero("guard", asked)?)?;
    Ok(Adequacy {
        adequate: u <= largest_u,
        largest_u,
        ratio: finite("u", width / (4.0 * u))?,
        zone: finite("u", 1.0 - 2.0 * band * u / width)?,
    })
}

/// What a gauge moved by between two checks on its master.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drift {
    /// Reading after less reading before, in mm.
    pub drift_mm: f64,
    /// Standard uncertainty that it adds to one reading in between: rectangular, half-width the drift.
    pub uncertainty_mm: f64,
    /// The part of it that all readings in between share; it cancels from their differences.
    pub shared_mm: f64,
    /// The part that each has for itself.
    pub own_mm: f64,
}

/// Drift of a gauge from its reading of the master before and after a set of readings, as a source of uncertainty of the set.
///
/// # Errors
/// When a number is not finite; [`ErrorKind::OutOfRange`] when the limit is below 0, and, with the field `after_mm` and the drift as value,
/// when the drift is beyond the limit: the set is refused.
pub fn drift(before_mm: f64, after_mm: f64, limit_mm: f64) -> Result<Drift, Error> {
    let (before, after) = (finite("before_mm", before_mm)?, finite("after_mm", after_mm)?);
    if finite("limit_mm", limit_mm)? < 0.0 {
        let error = Error::new(ErrorKind::OutOfRange, limit_mm.to_string(), "a limit is not negative");
        return Err(error.value(limit_mm).limits(0.0, 1.0, "mm").at("limit_mm"));
    }
    let drift_mm = DriftOnMaster::evaluate([after, before]) + 0.0;
    if beyond(drift_mm, limit_mm) {
        let reason = "the gauge has drifted beyond the limit: nothing that was read in between counts";
        let error = Error::new(ErrorKind::OutOfRange, drift_mm.to_string(), reason).value(drift_mm);
        return Err(error.limits(-limit_mm, limit_mm, "mm").at("after_mm"));
    }
    Ok(Drift {
        drift_mm,
        uncertainty_mm: HalfWidth::evaluate([drift_mm]),
        shared_mm: DriftShared::evaluate([drift_mm]),
        own_mm: DriftOwn::evaluate([drift_mm]),
    })
}

/// Is a drift beyond its limit? A picometre is the rounding of a difference of decimal readings.
pub(crate) fn beyond(drift_mm: f64, limit_mm: f64) -> bool {
    drift_mm.abs() > limit_mm + 1e-9
}

/// How two results for one quantity stand to each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Agreement {
    /// `|difference| / sqrt(U1^2 + U2^2)`: the number E_n.
    pub e_n: f64,
    /// First value less the second.
    pub difference: f64,
    /// Expanded uncertainty of the first.
    pub first_expanded: f64,
    /// Expanded uncertainty of the second.
    pub second_expanded: f64,
    /// Is the number at most 1? If not, one of them is wrong, or knows less than it says: look again.
    pub agree: bool,
}

/// Holds two values with their standard uncertainties against each other: the number E_n with `U = 2 u`. Source: ISO/IEC 17043:2010, B.3.1.3.
///
/// All numbers are in one unit, whichever it is. What both share (one master, one thermometer) belongs into neither uncertainty.
///
/// # Errors
/// When a number is not finite, or an uncertainty is not above 0.
pub fn agreement(first: f64, first_u: f64, second: f64, second_u: f64) -> Result<Agreement, Error> {
    let (first, second) = (finite("first", first)?, finite("second", second)?);
    agree(first - second, 2.0 * above_zero("first_u", first_u)?, 2.0 * above_zero("second_u", second_u)?)
}

fn agree(difference: f64, first_expanded: f64, second_expanded: f64) -> Result<Agreement, Error> {
    let both = (first_expanded * first_expanded + second_expanded * second_expanded).sqrt();
    let e_n = finite("first", difference.abs() / both)?;
    Ok(Agreement { e_n, difference: difference + 0.0, first_expanded, second_expanded, agree: e_n <= 1.0 })
}

/// Do two readers agree, from the lists of what each read at one place? E_n with 95 % expanded uncertainties of the two means.
///
/// Each mean has the deviation of its readings over the root of their number, and the resolution of the gauge (rectangular over one
/// step), with Student's factor for the effective degrees of freedom (JCGM 100:2008, G.4; more than 1000 count as 1000).
///
/// # Errors
/// When a list has fewer than two readings, a number is not finite, or the resolution is not above 0.
pub fn readers(first: &[f64], second: &[f64], resolution: f64) -> Result<Agreement, Error> {
    let step = above_zero("resolution", resolution)?;
    let [first, second] =
        [("first", first), ("second", second)].map(|(name, list)| mean_of(name, list, step));
    let ((first, first_expanded), (second, second_expanded)) = (first?, second?);
    agree(first - second, first_expanded, second_expanded)
}

/// Mean and expanded uncertainty of one reader's list.
fn mean_of(name: &str, list: &[f64], step: f64) -> Result<(f64, f64), Error> {
    for (k, value) in list.iter().enumerate() {
        finite(&format!("{name}/{k}"), *value)?;
    }
    if list.len() < 2 {
        return Err(too_few(name, "at least two readings are needed"));
    }
    let read = sample(list)?;
    let (own, step) = (read.deviation_of_mean, super::Resolution::evaluate([step]));
    let u = (own * own + step * step).sqrt();
    // as a share: fourth powers of small readings leave what a double holds
    let share = own / u;
    let (fourth, free) = (share * share * share * share, as_number(list.len()) - 1.0);
    let dof = if fourth * MOST_DOF > free { free / fourth } else { MOST_DOF };
    Ok((read.mean, coverage_factor(0.95, dof) * u))
}

/// Range of [`crate::special::t_quantile`].
const MOST_DOF: f64 = 1000.0;

/// One value of a station list.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// Depth (or height), in mm.
    pub depth_mm: f64,
    /// Direction, in degrees.
    pub angle_deg: f64,
    /// What was read there, in any one unit.
    pub value: f64,
}

/// What a station list should look like, apart from its scatter. Named by what is taken off before anything is called an outlier.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pattern {
    /// One mean: repeats at one place. The test is Grubbs'.
    Mean,
    /// A mean for each depth, and one oval (second order in the angle) for all of them: for few axes.
    CommonOval,
    /// A mean and an oval for each depth: needs more than three directions at most depths.
    OvalByDepth,
}

/// A point that is unlike the others.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outlier {
    /// Its place in the list, from 0.
    pub index: usize,
    /// Its distance from the pattern in standard deviations.
    pub g: f64,
}

/// Points of a station list against their pattern. A point that stands out is named, never removed.
#[derive(Debug, Clone, PartialEq)]
pub struct Outliers {
    /// Standard deviation about the pattern.
    pub deviation: f64,
    /// Degrees of freedom of it: points less the terms of the pattern that they determine.
    pub dof: usize,
    /// The point farthest off; none when nothing scatters.
    pub farthest: Option<Outlier>,
    /// Distance that no point of as many reaches by chance, except with the probability asked for.
    pub critical: f64,
    /// All points beyond it, in the order of the list. More than one says more about the pattern than about the points.
    pub beyond: Vec<Outlier>,
}

/// Tests a station list for outliers with the probability `alpha` of a false alarm on the whole list.
///
/// The pattern is fitted by least squares; the distance of a point is its residual in standard deviations, scaled for its weight in the fit,
/// `|r| / (s sqrt((1 - h) n / dof))`. It is held against `dof t / sqrt(n (dof - 1 + t^2))` with Student's `t` at `alpha / (2 n)` and
/// `dof - 1` degrees of freedom. For [`Pattern::Mean`] these are Grubbs' statistic and its critical value, two-sided (ISO 5725-2;
/// NIST/SEMATECH e-Handbook 1.3.5.17.1); otherwise the maximum normed residual (Stefansky, Technometrics 14, 1972). A point that the pattern
/// follows wherever it is cannot be tested.
///
/// # Errors
/// [`ErrorKind::MissingField`] when fewer than two degrees of freedom are left, [`ErrorKind::TooLarge`] with more than 1000 points,
/// [`ErrorKind::NotFinite`] with the place (`points/3`), [`ErrorKind::OutOfRange`] when `alpha` is not 1e-6 to 0.5.
pub fn outliers(points: &[Point], pattern: Pattern, alpha: f64) -> Result<Outliers, Error> {
    check(points, alpha)?;
    let n = as_number(points.len());
    let basis = pattern.basis(points);
    let dof = points.len().saturating_sub(basis.len());
    if dof < 2 {
        let reason = "too few points for this pattern: two more are needed than it has terms";
        return Err(too_few("points", reason));
    }
    let shift = points.first().map_or(0.0, |p| p.value);
    let values: Vec<f64> = points.iter().map(|p| p.value - shift).collect();
    let residuals = basis.iter().fold(values.clone(), |rest, q| without(&rest, q));
    let free = as_number(dof);
    let deviation = (sum(residuals.iter().map(|r| r * r)) / free).sqrt();
    // t at the lower tail, where the probability holds its digits
    let t = t_quantile(alpha / (2.0 * n), free - 1.0);
    let critical = free * (t * t / (n * (free - 1.0 + t * t))).sqrt();
    let size = values.iter().fold(0.0, |most: f64, v| if v.abs() > most { v.abs() } else { most });
    let scatter = deviation > size * ROUNDING;
    let distance = |k: usize, residual: f64| {
        let weight = sum(basis.iter().map(|q| q.get(k).map_or(0.0, |x| x * x)));
        let rest = 1.0 - weight;
        let g = if rest > ROUNDING { residual.abs() / (deviation * (rest * n / free).sqrt()) } else { 0.0 };
        Outlier { index: k, g }
    };
    let all: Vec<Outlier> = match scatter {
        true => residuals.iter().enumerate().map(|(k, r)| distance(k, *r)).collect(),
        false => Vec::new(),
    };
    Ok(Outliers {
        deviation: if scatter { deviation } else { 0.0 },
        dof,
        farthest: all.iter().copied().reduce(|a, b| if b.g > a.g { b } else { a }),
        critical,
        beyond: all.into_iter().filter(|o| o.g > critical).collect(),
    })
}

/// Residuals below this share of the values, and directions below this share of a term, are rounding.
const ROUNDING: f64 = 1e-9;

/// Probabilities of a false alarm that make sense, and that Student's t is good for.
const ALPHA: (f64, f64) = (1e-6, 0.5);

fn check(points: &[Point], alpha: f64) -> Result<(), Error> {
    for (k, point) in points.iter().enumerate() {
        let numbers = [point.depth_mm, point.angle_deg, point.value];
        numbers.iter().try_for_each(|x| readable(*x, || format!("points/{k}")))?;
    }
    if points.len() > MOST_ENTRIES {
        let reason = format!("at most {MOST_ENTRIES} points are taken");
        return Err(Error::new(ErrorKind::TooLarge, points.len().to_string(), reason).at("points"));
    }
    match (ALPHA.0..=ALPHA.1).contains(&alpha) {
        true => Ok(()),
        false => {
            let error = Error::new(ErrorKind::OutOfRange, alpha.to_string(), "a small probability is needed");
            Err(error.value(alpha).limits(ALPHA.0, ALPHA.1, "1").at("alpha"))
        }
    }
}

impl Pattern {
    /// The terms of the pattern at the points, as orthonormal columns; a term that the points do not determine is left out.
    fn basis(self, points: &[Point]) -> Vec<Vec<f64>> {
        let mut depths: Vec<f64> = points.iter().map(|p| p.depth_mm).collect();
        depths.sort_by(f64::total_cmp);
        depths.dedup_by(|a, b| crate::shape::same(*a, *b));
        let column = |depth: Option<f64>, term: fn(f64) -> f64| -> Vec<f64> {
            let here = |p: &Point| depth.is_none_or(|d| crate::shape::same(p.depth_mm, d));
            points.iter().map(|p| if here(p) { term(p.angle_deg * PI / 180.0) } else { 0.0 }).collect()
        };
        let means = |depths: &[f64]| depths.iter().map(|d| column(Some(*d), |_| 1.0)).collect::<Vec<_>>();
        let oval = |depth| [column(depth, |x| libm::cos(2.0 * x)), column(depth, |x| libm::sin(2.0 * x))];
        let columns = match self {
            Pattern::Mean => vec![column(None, |_| 1.0)],
            Pattern::CommonOval => means(&depths).into_iter().chain(oval(None)).collect(),
            Pattern::OvalByDepth => {
                means(&depths).into_iter().chain(depths.iter().flat_map(|d| oval(Some(*d)))).collect()
            }
        };
        orthonormal(columns)
    }
}

/// Gram-Schmidt, each column cleared twice of those before it.
fn orthonormal(columns: Vec<Vec<f64>>) -> Vec<Vec<f64>> {
    let mut out: Vec<Vec<f64>> = Vec::new();
    for column in columns {
        let before = length(&column);
        let once = out.iter().fold(column, |c, q| without(&c, q));
        let twice = out.iter().fold(once, |c, q| without(&c, q));
        let left = length(&twice);
        if left > before * ROUNDING && left > ROUNDING {
            out.push(twice.into_iter().map(|x| x / left).collect());
        }
    }
    out
}

fn length(column: &[f64]) -> f64 {
    sum(column.iter().map(|x| x * x)).sqrt()
}

/// A column without its share of the direction `q`.
fn without(column: &[f64], q: &[f64]) -> Vec<f64> {
    let share = sum(column.iter().zip(q).map(|(c, q)| c * q));
    column.iter().zip(q).map(|(c, q)| c - share * q).collect()
}
