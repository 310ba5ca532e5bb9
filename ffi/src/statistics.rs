//! Samples and groups of readings.

use crate::array::array;
use crate::error::{Failure, GaugepointError};
use crate::guard::status;
use crate::record::{Record, record};
use gaugepoint::ErrorKind;
use gaugepoint::measurement::statistics::{OneWay, Sample, one_way, sample};

/// Mean and spread of a sample; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointSample {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Number of values.
    pub count: usize,
    /// Arithmetic mean.
    pub mean: f64,
    /// Experimental standard deviation, count - 1 degrees of freedom.
    pub standard_deviation: f64,
    /// Standard deviation of the mean.
    pub deviation_of_mean: f64,
    /// Correlation of each value with the next; 0 when all are equal.
    pub lag_1_correlation: f64,
}

// SAFETY: sizes and doubles, eight bytes each
unsafe impl Record for GaugepointSample {
    const SMALLEST: usize = 48;
}

/// One-way analysis of variance; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointOneWay {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when `f` is given, else 0: nothing varies within the groups.
    pub has_f: i32,
    /// 1 when `r_squared` is given, else 0: nothing varies at all.
    pub has_r_squared: i32,
    /// Sum of squares between groups.
    pub between: f64,
    /// Degrees of freedom between groups.
    pub between_dof: f64,
    /// Sum of squares within groups.
    pub within: f64,
    /// Degrees of freedom within groups.
    pub within_dof: f64,
    /// Ratio of the mean squares.
    pub f: f64,
    /// Share of the variation that is between groups.
    pub r_squared: f64,
    /// Pooled standard deviation within groups.
    pub pooled_deviation: f64,
}

// SAFETY: a size, two int32_t, doubles
unsafe impl Record for GaugepointOneWay {
    const SMALLEST: usize = 72;
}

/// Mean and spread of `count` values, at least two, in any one unit. JCGM 100:2008, 4.2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_sample(
    values: *const f64,
    count: usize,
    out: *mut GaugepointSample,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, record("out", out), || Ok(sample(array("values", values, Some(count))?)?.into())) }
}

/// One-way analysis of variance of `count` values, one group after the other.
///
/// `group_sizes` has the number of values of each of the `groups` groups, which must add to `count`. At least two groups,
/// none empty, and more values than groups. A refused value is named by its group and its place there, from 0:
/// "groups/1/4". NIST/SEMATECH e-Handbook, 7.4.3.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_one_way(
    values: *const f64,
    count: usize,
    group_sizes: *const usize,
    groups: usize,
    out: *mut GaugepointOneWay,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let values = array("values", values, Some(count))?;
            let sizes = array("group_sizes", group_sizes, Some(groups))?;
            Ok(one_way(&grouped(values, sizes)?)?.into())
        })
    }
}

/// The groups that stand one after the other.
pub(crate) fn grouped(values: &[f64], sizes: &[usize]) -> Result<Vec<Vec<f64>>, Failure> {
    let mut out = Vec::with_capacity(sizes.len());
    let mut rest = values;
    for size in sizes {
        let (group, after) = rest.split_at_checked(*size).ok_or_else(not_the_count)?;
        out.push(group.to_vec());
        rest = after;
    }
    if rest.is_empty() { Ok(out) } else { Err(not_the_count()) }
}

fn not_the_count() -> Failure {
    Failure::refused(ErrorKind::Contradiction, "group_sizes", "the sizes of the groups do not add to count")
}

impl From<Sample> for GaugepointSample {
    fn from(s: Sample) -> Self {
        GaugepointSample {
            struct_size: size_of::<Self>(),
            count: s.count,
            mean: s.mean,
            standard_deviation: s.standard_deviation,
            deviation_of_mean: s.deviation_of_mean,
            lag_1_correlation: s.lag_1_correlation,
        }
    }
}

impl From<OneWay> for GaugepointOneWay {
    fn from(a: OneWay) -> Self {
        GaugepointOneWay {
            struct_size: size_of::<Self>(),
            has_f: a.f.is_some().into(),
            has_r_squared: a.r_squared.is_some().into(),
            between: a.between,
            between_dof: a.between_dof,
            within: a.within,
            within_dof: a.within_dof,
            f: a.f.unwrap_or(f64::NAN),
            r_squared: a.r_squared.unwrap_or(f64::NAN),
            pooled_deviation: a.pooled_deviation,
        }
    }
}
