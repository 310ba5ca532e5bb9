//! Risks of decisions over a whole process, and the acceptance intervals that hold them.

use crate::array::{given, number_of_choice};
use crate::error::{Failure, GaugepointError};
use crate::guard::{kept, status};
use crate::record::{Record, record};
use crate::text::flag;
use gaugepoint::decision::risk::{
    self, Capability, Guard, Interval, Items, Risks, acceptance_for_risk, global_risks,
};

/// Kind of distribution of the items that come to be measured.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointDistribution {
    /// Normal: mean, standard deviation.
    Normal = 1,
    /// Uniform: smallest, largest.
    Uniform = 2,
    /// Triangular: smallest, most frequent, largest.
    Triangular = 3,
    /// Gamma: shape, scale. For what cannot be negative, such as run-out or out-of-round; the mean is shape times scale.
    Gamma = 4,
}

/// How an acceptance interval follows from the tolerance. U is the expanded uncertainty 2 u.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointGuard {
    /// Inside by 1.65 u: ISO 14253-1:2017, default. Has no number.
    Proven = 1,
    /// Inside by the number times U: stringent acceptance, ASME B89.7.3.1; JCGM 106:2012, 8.3.2.2.
    Stringent = 2,
    /// Outside by the number times U: relaxed acceptance, ASME B89.7.3.1.
    Relaxed = 3,
    /// The tolerance itself, which must be at least the number times 2 U wide: simple acceptance, ASME B89.7.3.1.
    RatioAtLeast = 4,
}

/// Distribution of the items that come to be measured. A plain structure; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointItems {
    /// A GaugepointDistribution.
    pub distribution: i32,
    /// 1 when `third` counts, as it must for the triangular distribution and for no other; else 0.
    pub has_third: i32,
    /// First number of the distribution.
    pub first: f64,
    /// Second number of the distribution.
    pub second: f64,
    /// Third number of the distribution; not read when `has_third` is 0.
    pub third: f64,
}

/// Limits with one or two sides. A plain structure; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointInterval {
    /// 1 when `lower` is given, else 0.
    pub has_lower: i32,
    /// 1 when `upper` is given, else 0.
    pub has_upper: i32,
    /// Lower limit; not read when it is not given, and NaN in a result.
    pub lower: f64,
    /// Upper limit; not read when it is not given, and NaN in a result.
    pub upper: f64,
}

/// Shares of all items; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointRisks {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Items that conform.
    pub conforming: f64,
    /// Global consumer's risk: accepted, and does not conform.
    pub consumer: f64,
    /// Global producer's risk: rejected, and conforms.
    pub producer: f64,
}

// SAFETY: a size and doubles
unsafe impl Record for GaugepointRisks {
    const SMALLEST: usize = 32;
}

/// Process capability; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointCapability {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Distance of the mean from the nearer limit in three standard deviations (Cpk); negative outside.
    pub cpk: f64,
    /// Share of the items outside the limits.
    pub outside: f64,
}

// SAFETY: a size and doubles
unsafe impl Record for GaugepointCapability {
    const SMALLEST: usize = 24;
}

/// Global risks of accepting by `accepted` what should conform to `tolerance`. JCGM 106:2012, 9.4.
///
/// The measurement error is normal with standard uncertainty `u`. All numbers are in one unit, whichever it is.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_global_risks(
    items: *const GaugepointItems,
    u: f64,
    tolerance: *const GaugepointInterval,
    accepted: *const GaugepointInterval,
    out: *mut GaugepointRisks,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let items = items_of(given("items", items)?)?;
            let tolerance = interval_of(given("tolerance", tolerance)?)?;
            let accepted = interval_of(given("accepted", accepted)?)?;
            Ok(global_risks(items, u, tolerance, accepted)?.into())
        })
    }
}

/// Acceptance interval of a tolerance by a rule.
///
/// `guard` is a GaugepointGuard; `amount`, its number, counts when `has_amount` is 1, which it is with all but
/// GAUGEPOINT_GUARD_PROVEN. Refused when the ratio is not reached, or when the guard bands leave nothing.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_acceptance(
    tolerance: *const GaugepointInterval,
    u: f64,
    guard: i32,
    has_amount: i32,
    amount: f64,
    accepted: *mut GaugepointInterval,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("accepted", accepted), || {
            let tolerance = interval_of(given("tolerance", tolerance)?)?;
            let guard = guard_of(guard, has_amount, amount)?;
            Ok(risk::acceptance(tolerance, u, guard)?.into())
        })
    }
}

/// Acceptance interval, narrowed or widened equally at each limit, whose global consumer's risk is `wanted`.
///
/// Refused when no guard band within ten standard uncertainties gives that risk; the error has the risks that can be had.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_acceptance_for_risk(
    items: *const GaugepointItems,
    u: f64,
    tolerance: *const GaugepointInterval,
    wanted: f64,
    accepted: *mut GaugepointInterval,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("accepted", accepted), || {
            let items = items_of(given("items", items)?)?;
            let tolerance = interval_of(given("tolerance", tolerance)?)?;
            Ok(acceptance_for_risk(items, u, tolerance, wanted)?.into())
        })
    }
}

/// Capability of a normal process with its mean and standard deviation. ISO 22514-2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_capability(
    mean: f64,
    deviation: f64,
    tolerance: *const GaugepointInterval,
    out: *mut GaugepointCapability,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let tolerance = interval_of(given("tolerance", tolerance)?)?;
            Ok(risk::capability(mean, deviation, tolerance)?.into())
        })
    }
}

fn items_of(items: GaugepointItems) -> Result<Items, Failure> {
    const NORMAL: i32 = GaugepointDistribution::Normal as i32;
    const UNIFORM: i32 = GaugepointDistribution::Uniform as i32;
    const TRIANGULAR: i32 = GaugepointDistribution::Triangular as i32;
    const GAMMA: i32 = GaugepointDistribution::Gamma as i32;
    let GaugepointItems { distribution, has_third, first, second, third } = items;
    if !(NORMAL..=GAMMA).contains(&distribution) {
        return Err(Failure::choice("items", distribution, "1, 2, 3, 4"));
    }
    let third = number_of_choice(("has_third", has_third), third, distribution == TRIANGULAR)?;
    Ok(match distribution {
        UNIFORM => Items::Uniform { low: first, high: second },
        TRIANGULAR => Items::Triangular { low: first, mode: second, high: third },
        GAMMA => Items::Gamma { shape: first, scale: second },
        _ => Items::Normal { mean: first, deviation: second },
    })
}

pub(crate) fn guard_of(number: i32, has_amount: i32, amount: f64) -> Result<Guard, Failure> {
    const PROVEN: i32 = GaugepointGuard::Proven as i32;
    const STRINGENT: i32 = GaugepointGuard::Stringent as i32;
    const RELAXED: i32 = GaugepointGuard::Relaxed as i32;
    const RATIO: i32 = GaugepointGuard::RatioAtLeast as i32;
    let amount = || number_of_choice(("has_amount", has_amount), amount, number != PROVEN);
    match number {
        PROVEN => amount().map(|_| Guard::Proven),
        STRINGENT => amount().map(Guard::Stringent),
        RELAXED => amount().map(Guard::Relaxed),
        RATIO => amount().map(Guard::RatioAtLeast),
        _ => Err(Failure::choice("guard", number, "1, 2, 3, 4")),
    }
}

pub(crate) fn interval_of(interval: GaugepointInterval) -> Result<Interval, Failure> {
    Ok(Interval {
        lower: flag("has_lower", interval.has_lower)?.then_some(interval.lower),
        upper: flag("has_upper", interval.has_upper)?.then_some(interval.upper),
    })
}

impl From<Interval> for GaugepointInterval {
    fn from(i: Interval) -> Self {
        GaugepointInterval {
            has_lower: i.lower.is_some().into(),
            has_upper: i.upper.is_some().into(),
            lower: i.lower.unwrap_or(f64::NAN),
            upper: i.upper.unwrap_or(f64::NAN),
        }
    }
}

impl From<Risks> for GaugepointRisks {
    fn from(r: Risks) -> Self {
        GaugepointRisks {
            struct_size: size_of::<Self>(),
            conforming: r.conforming,
            consumer: r.consumer,
            producer: r.producer,
        }
    }
}

impl From<Capability> for GaugepointCapability {
    fn from(c: Capability) -> Self {
        GaugepointCapability { struct_size: size_of::<Self>(), cpk: c.cpk, outside: c.outside }
    }
}
