//! Bias of a gauge, and its linearity.

use crate::array::array;
use crate::error::{Failure, GaugepointError};
use crate::guard::status;
use crate::record::{Record, record};
use crate::statistics::grouped;
use gaugepoint::measurement::bias::{Band, Bias, Linearity, Test, bias, linearity};

/// Bias of a gauge at one size; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointBias {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when `dof` is given, else 0: above a million, taken as infinite.
    pub has_dof: i32,
    /// 1 when `t` and `p` are given, else 0: the uncertainty is 0.
    pub has_t: i32,
    /// 1 when zero lies in the interval: no bias is shown; else 0.
    pub zero_within: i32,
    /// Always 0.
    pub reserved: i32,
    /// Mean of the readings less the reference.
    pub bias: f64,
    /// Standard deviation of the readings.
    pub standard_deviation: f64,
    /// Standard uncertainty of the bias.
    pub standard_uncertainty: f64,
    /// Its degrees of freedom.
    pub dof: f64,
    /// Ratio of the bias to its standard uncertainty.
    pub t: f64,
    /// Probability of a ratio as far from zero by chance.
    pub p: f64,
    /// Lower end of the confidence interval of the bias.
    pub lower: f64,
    /// Upper end of it.
    pub upper: f64,
}

// SAFETY: a size, four int32_t, doubles
unsafe impl Record for GaugepointBias {
    const SMALLEST: usize = 88;
}

/// How the bias of a gauge depends on the size; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointLinearity {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when `intercept_t` and `intercept_p` are given, else 0: the line leaves no residuals.
    pub has_intercept_t: i32,
    /// 1 when `slope_t` and `slope_p` are given, else 0: the line leaves no residuals.
    pub has_slope_t: i32,
    /// 1 when `r_squared` is given, else 0: the bias does not vary.
    pub has_r_squared: i32,
    /// 1 when zero lies in the confidence band at every reference value: no bias is shown; else 0.
    pub zero_within: i32,
    /// Bias at size 0, by the line.
    pub intercept: f64,
    /// Its standard uncertainty.
    pub intercept_uncertainty: f64,
    /// Ratio of the two.
    pub intercept_t: f64,
    /// Probability of a ratio as far from zero by chance.
    pub intercept_p: f64,
    /// Bias per size.
    pub slope: f64,
    /// Its standard uncertainty.
    pub slope_uncertainty: f64,
    /// Ratio of the two.
    pub slope_t: f64,
    /// Probability of a ratio as far from zero by chance.
    pub slope_p: f64,
    /// Standard deviation of the residuals.
    pub residual_deviation: f64,
    /// Degrees of freedom, two fewer than the readings.
    pub dof: f64,
    /// Share of the variation of the bias that the line explains.
    pub r_squared: f64,
}

// SAFETY: a size, four int32_t, doubles
unsafe impl Record for GaugepointLinearity {
    const SMALLEST: usize = 112;
}

/// Mean bias at a size, by the line; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointBand {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Mean bias.
    pub bias: f64,
    /// Its standard uncertainty, without the scatter of a new reading.
    pub standard_uncertainty: f64,
    /// Lower end of its confidence interval.
    pub lower: f64,
    /// Upper end of it.
    pub upper: f64,
}

// SAFETY: a size, doubles
unsafe impl Record for GaugepointBand {
    const SMALLEST: usize = 40;
}

/// Bias from `count` readings of one part, at least two, in any one unit.
///
/// `reference` is the value of the part and `reference_uncertainty` its standard uncertainty, 0 when it is exact. `coverage`
/// is that of the confidence interval, between 0 and 1 (0.95 is usual). One-sample t test: NIST/SEMATECH e-Handbook, 7.2.2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_bias(
    values: *const f64,
    count: usize,
    reference: f64,
    reference_uncertainty: f64,
    coverage: f64,
    out: *mut GaugepointBias,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let values = array("values", values, Some(count))?;
            Ok(bias(values, reference, reference_uncertainty, coverage)?.into())
        })
    }
}

/// Linearity from `count` readings of several parts, one part after the other, in any one unit.
///
/// `references` has the value of each of the `groups` parts, taken as exact, and `group_sizes` how many readings are of it;
/// they must add to `count`. At least three readings of two sizes. `coverage` is that of the confidence band, between 0 and
/// 1 (0.95 is usual). Measurement systems analysis, fourth edition.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_linearity(
    references: *const f64,
    group_sizes: *const usize,
    groups: usize,
    readings: *const f64,
    count: usize,
    coverage: f64,
    out: *mut GaugepointLinearity,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(linear(references, group_sizes, groups, readings, count, coverage)?.into())
        })
    }
}

/// Mean bias at size `x`, with its confidence interval; the other arguments are those of gaugepoint_linearity.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_linearity_band(
    references: *const f64,
    group_sizes: *const usize,
    groups: usize,
    readings: *const f64,
    count: usize,
    x: f64,
    coverage: f64,
    out: *mut GaugepointBand,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(linear(references, group_sizes, groups, readings, count, coverage)?.at(x)?.into())
        })
    }
}

/// # Safety
/// As [`array`].
unsafe fn linear(
    references: *const f64,
    group_sizes: *const usize,
    groups: usize,
    readings: *const f64,
    count: usize,
    coverage: f64,
) -> Result<Linearity, Failure> {
    // SAFETY: the caller's promise
    let (references, sizes, readings) = unsafe {
        (
            array("references", references, Some(groups))?,
            array("group_sizes", group_sizes, Some(groups))?,
            array("readings", readings, Some(count))?,
        )
    };
    Ok(linearity(references, &grouped(readings, sizes)?, coverage)?)
}

fn tested(test: Option<Test>) -> (i32, f64, f64) {
    test.map_or((0, f64::NAN, f64::NAN), |test| (1, test.t, test.p))
}

impl From<Bias> for GaugepointBias {
    fn from(b: Bias) -> Self {
        let (has_t, t, p) = tested(b.test);
        GaugepointBias {
            struct_size: size_of::<Self>(),
            has_dof: b.dof.is_some().into(),
            has_t,
            zero_within: b.zero_within.into(),
            reserved: 0,
            bias: b.bias,
            standard_deviation: b.standard_deviation,
            standard_uncertainty: b.standard_uncertainty,
            dof: b.dof.unwrap_or(f64::NAN),
            t,
            p,
            lower: b.interval.0,
            upper: b.interval.1,
        }
    }
}

impl From<Linearity> for GaugepointLinearity {
    fn from(l: Linearity) -> Self {
        let (has_intercept_t, intercept_t, intercept_p) = tested(l.intercept_test);
        let (has_slope_t, slope_t, slope_p) = tested(l.slope_test);
        GaugepointLinearity {
            struct_size: size_of::<Self>(),
            has_intercept_t,
            has_slope_t,
            has_r_squared: l.r_squared.is_some().into(),
            zero_within: l.zero_within.into(),
            intercept: l.line.intercept,
            intercept_uncertainty: l.line.intercept_uncertainty,
            intercept_t,
            intercept_p,
            slope: l.line.slope,
            slope_uncertainty: l.line.slope_uncertainty,
            slope_t,
            slope_p,
            residual_deviation: l.line.residual_deviation,
            dof: l.line.dof,
            r_squared: l.r_squared.unwrap_or(f64::NAN),
        }
    }
}

impl From<Band> for GaugepointBand {
    fn from(b: Band) -> Self {
        GaugepointBand {
            struct_size: size_of::<Self>(),
            bias: b.bias,
            standard_uncertainty: b.standard_uncertainty,
            lower: b.interval.0,
            upper: b.interval.1,
        }
    }
}
