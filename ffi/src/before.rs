//! Before measuring, and before believing.

use crate::array::{array, array_out, given};
use crate::error::{Failure, GaugepointError};
use crate::guard::status;
use crate::record::{Record, record};
use crate::risk::{GaugepointInterval, guard_of, interval_of};
use gaugepoint::measurement::before::{
    self, Adequacy, Advice, Agreement, Drift, Outliers, Pattern, Point, Soak, Warm,
};

/// What to do with a part that is warm.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointAdvice {
    /// Its error is within what is allowed: measure.
    Measure = 1,
    /// Wait, or measure now and correct.
    WaitOrCorrect = 2,
    /// Wait: the correction is too uncertain.
    Wait = 3,
}

/// What a station list should look like, apart from its scatter.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointPattern {
    /// One mean: repeats at one place. The test is Grubbs'.
    Mean = 1,
    /// A mean for each depth, and one oval for all of them: for few axes.
    CommonOval = 2,
    /// A mean and an oval for each depth: needs more than three directions at most depths.
    OvalByDepth = 3,
}

/// What a warm part means for its size; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointSoak {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// A GaugepointAdvice.
    pub advice: i32,
    /// 0.
    pub reserved: i32,
    /// Error of the size when it is measured now, in mm: positive when it reads too large.
    pub error_mm: f64,
    /// Time until the error is what is allowed, in minutes; 0 when it already is.
    pub wait_min: f64,
    /// What to add to the reading when it is measured now, in mm.
    pub correction_mm: f64,
    /// Standard uncertainty of that correction, in mm.
    pub correction_uncertainty_mm: f64,
}

// SAFETY: a size, two int32_t, doubles
unsafe impl Record for GaugepointSoak {
    const SMALLEST: usize = 48;
}

/// Is a gauge good enough for a tolerance? See RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointAdequacy {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when the uncertainty reaches what is asked, else 0.
    pub adequate: i32,
    /// 0.
    pub reserved: i32,
    /// Target uncertainty: the largest standard uncertainty that does.
    pub largest_u: f64,
    /// Tolerance divided by 2 U, U = 2 u, with the uncertainty given.
    pub ratio: f64,
    /// Share of the tolerance that is left to accept in; below 0 when the guard bands overlap.
    pub zone: f64,
}

// SAFETY: a size, two int32_t, doubles
unsafe impl Record for GaugepointAdequacy {
    const SMALLEST: usize = 40;
}

/// What a gauge moved by between two checks on its master; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointDrift {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Reading after less reading before, in mm.
    pub drift_mm: f64,
    /// Standard uncertainty that it adds to one reading in between: rectangular, half-width the drift.
    pub uncertainty_mm: f64,
    /// The part of it that all readings in between share; it cancels from their differences.
    pub shared_mm: f64,
    /// The part that each has for itself.
    pub own_mm: f64,
}

// SAFETY: a size and doubles
unsafe impl Record for GaugepointDrift {
    const SMALLEST: usize = 40;
}

/// How two results for one quantity stand to each other; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointAgreement {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when `e_n` is at most 1, else 0: look again.
    pub agree: i32,
    /// 0.
    pub reserved: i32,
    /// |difference| / sqrt(U1^2 + U2^2).
    pub e_n: f64,
    /// First value less the second.
    pub difference: f64,
    /// Expanded uncertainty of the first.
    pub first_expanded: f64,
    /// Expanded uncertainty of the second.
    pub second_expanded: f64,
}

// SAFETY: a size, two int32_t, doubles
unsafe impl Record for GaugepointAgreement {
    const SMALLEST: usize = 48;
}

/// Points of a station list against their pattern; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointOutliers {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when `farthest` and its distance are given, else 0: nothing scatters.
    pub has_farthest: i32,
    /// 0.
    pub reserved: i32,
    /// Degrees of freedom of `deviation`.
    pub dof: usize,
    /// Number of points that are farther off than `critical`.
    pub beyond: usize,
    /// Place of the point farthest off, from 0; 0 when not given.
    pub farthest: usize,
    /// Its distance from the pattern in standard deviations; NaN when not given.
    pub farthest_g: f64,
    /// Distance that no point of as many reaches by chance, except with the probability asked for.
    pub critical: f64,
    /// Standard deviation about the pattern.
    pub deviation: f64,
}

// SAFETY: sizes, two int32_t, doubles
unsafe impl Record for GaugepointOutliers {
    const SMALLEST: usize = 64;
}

/// Is a part soaked; if not, how long to wait, and what correcting instead would cost.
///
/// `excess_k` is the temperature of the part less that of the gauge, `time_constant_min` the minutes in which it falls to
/// 37 %, `size_mm` the size of the part, `expansion_per_k` its coefficient, `allowed_mm` the error of the size that is
/// allowed; `excess_error_k` and `expansion_error_per_k` are half-widths. First-order cooling, the gauge at the temperature
/// of the shop.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_soak(
    excess_k: f64,
    time_constant_min: f64,
    size_mm: f64,
    expansion_per_k: f64,
    allowed_mm: f64,
    excess_error_k: f64,
    expansion_error_per_k: f64,
    out: *mut GaugepointSoak,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let warm = Warm {
                excess_k,
                time_constant_min,
                size_mm,
                expansion_per_k,
                allowed_mm,
                excess_error_k,
                expansion_error_per_k,
            };
            Ok(before::soak(warm)?.into())
        })
    }
}

/// Holds a standard uncertainty against a tolerance with two limits, before anything is measured with it.
///
/// `guard` is a GaugepointGuard, with its number as in gaugepoint_acceptance: a ratio that the tolerance must reach (then
/// `least_zone` asks nothing more), or a guard band at each end, with at least the share `least_zone` of the tolerance left
/// between them. A relaxed guard asks nothing of a gauge and is refused. JCGM 106:2012, 8.3.2; ISO 14253-1; ASME B89.7.3.1.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_adequacy(
    tolerance: *const GaugepointInterval,
    u: f64,
    guard: i32,
    has_amount: i32,
    amount: f64,
    least_zone: f64,
    out: *mut GaugepointAdequacy,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let tolerance = interval_of(given("tolerance", tolerance)?)?;
            let guard = guard_of(guard, has_amount, amount)?;
            Ok(before::adequacy(tolerance, u, guard, least_zone)?.into())
        })
    }
}

/// Drift of a gauge from its reading of the master before and after a set of readings, as a source of the set.
///
/// Beyond `limit_mm` the set is refused: the error names `after_mm` and has the drift as its value.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_drift(
    before_mm: f64,
    after_mm: f64,
    limit_mm: f64,
    out: *mut GaugepointDrift,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, record("out", out), || Ok(before::drift(before_mm, after_mm, limit_mm)?.into())) }
}

/// Holds two values with their standard uncertainties against each other: E_n with U = 2 u. ISO/IEC 17043:2010, B.3.1.3.
///
/// What both share (one master, one thermometer) belongs into neither uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_agreement(
    first: f64,
    first_u: f64,
    second: f64,
    second_u: f64,
    out: *mut GaugepointAgreement,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || Ok(before::agreement(first, first_u, second, second_u)?.into()))
    }
}

/// Do two readers agree, from the lists of what each read at one place, with a gauge of this resolution?
///
/// E_n with 95 % expanded uncertainties of the two means: deviation of the mean and resolution, Student's factor.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_readers(
    first: *const f64,
    first_count: usize,
    second: *const f64,
    second_count: usize,
    resolution: f64,
    out: *mut GaugepointAgreement,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let first = array("first", first, Some(first_count))?;
            let second = array("second", second, Some(second_count))?;
            Ok(before::readers(first, second, resolution)?.into())
        })
    }
}

/// Tests a station list for outliers with the probability `alpha` of a false alarm on the whole list, 1e-6 to 0.5.
///
/// `points` has three numbers for each of `count` points, at most 1000: depth in mm, angle in degrees, value in any one
/// unit. `pattern` is a GaugepointPattern. `flags` has room for `count` numbers and gets 1 for each point that is farther off than
/// chance allows, else 0; it is left as it was on failure. A point that stands out is named, never removed. Grubbs' test
/// (ISO 5725-2), for the other forms the maximum normed residual.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_outliers(
    points: *const f64,
    count: usize,
    pattern: i32,
    alpha: f64,
    flags: *mut i32,
    out: *mut GaugepointOutliers,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("flags", flags, count), record("out", out)), || {
            let numbers = array("points", points, count.checked_mul(3))?;
            let found = before::outliers(&points_of(numbers), pattern_of(pattern)?, alpha)?;
            let mut flags = vec![0; count];
            for outlier in &found.beyond {
                flags.iter_mut().skip(outlier.index).take(1).for_each(|flag| *flag = 1);
            }
            Ok((flags, found.into()))
        })
    }
}

fn points_of(numbers: &[f64]) -> Vec<Point> {
    let point = |p: &[f64]| match *p {
        [depth_mm, angle_deg, value] => Some(Point { depth_mm, angle_deg, value }),
        _ => None,
    };
    numbers.chunks(3).filter_map(point).collect()
}

fn pattern_of(number: i32) -> Result<Pattern, Failure> {
    const MEAN: i32 = GaugepointPattern::Mean as i32;
    const COMMON: i32 = GaugepointPattern::CommonOval as i32;
    const BY_DEPTH: i32 = GaugepointPattern::OvalByDepth as i32;
    match number {
        MEAN => Ok(Pattern::Mean),
        COMMON => Ok(Pattern::CommonOval),
        BY_DEPTH => Ok(Pattern::OvalByDepth),
        _ => Err(Failure::choice("pattern", number, "1, 2, 3")),
    }
}

impl From<Soak> for GaugepointSoak {
    fn from(s: Soak) -> Self {
        let advice = match s.advice {
            Advice::Measure => GaugepointAdvice::Measure,
            Advice::WaitOrCorrect => GaugepointAdvice::WaitOrCorrect,
            Advice::Wait => GaugepointAdvice::Wait,
        };
        GaugepointSoak {
            struct_size: size_of::<Self>(),
            advice: advice as i32,
            reserved: 0,
            error_mm: s.error_mm,
            wait_min: s.wait_min,
            correction_mm: s.correction_mm,
            correction_uncertainty_mm: s.correction_uncertainty_mm,
        }
    }
}

impl From<Adequacy> for GaugepointAdequacy {
    fn from(a: Adequacy) -> Self {
        GaugepointAdequacy {
            struct_size: size_of::<Self>(),
            adequate: a.adequate.into(),
            reserved: 0,
            largest_u: a.largest_u,
            ratio: a.ratio,
            zone: a.zone,
        }
    }
}

impl From<Drift> for GaugepointDrift {
    fn from(d: Drift) -> Self {
        GaugepointDrift {
            struct_size: size_of::<Self>(),
            drift_mm: d.drift_mm,
            uncertainty_mm: d.uncertainty_mm,
            shared_mm: d.shared_mm,
            own_mm: d.own_mm,
        }
    }
}

impl From<Agreement> for GaugepointAgreement {
    fn from(a: Agreement) -> Self {
        GaugepointAgreement {
            struct_size: size_of::<Self>(),
            agree: a.agree.into(),
            reserved: 0,
            e_n: a.e_n,
            difference: a.difference,
            first_expanded: a.first_expanded,
            second_expanded: a.second_expanded,
        }
    }
}

impl From<Outliers> for GaugepointOutliers {
    fn from(o: Outliers) -> Self {
        GaugepointOutliers {
            struct_size: size_of::<Self>(),
            has_farthest: o.farthest.is_some().into(),
            reserved: 0,
            dof: o.dof,
            beyond: o.beyond.len(),
            farthest: o.farthest.map_or(0, |f| f.index),
            farthest_g: o.farthest.map_or(f64::NAN, |f| f.g),
            critical: o.critical,
            deviation: o.deviation,
        }
    }
}
