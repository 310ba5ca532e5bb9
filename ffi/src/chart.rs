//! Control charts.

use crate::array::{array, array_out};
use crate::error::{Failure, GaugepointError};
use crate::guard::status;
use crate::record::{Record, record};
use gaugepoint::measurement::chart::{Kind, control_chart};

/// What a control chart shows, and what its limits rest on.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointChartKind {
    /// Means of subgroups, limits by their ranges.
    MeansByRanges = 1,
    /// Ranges of subgroups.
    Ranges = 2,
    /// Means of subgroups, limits by their standard deviations.
    MeansByDeviations = 3,
    /// Standard deviations of subgroups.
    Deviations = 4,
    /// Single readings, limits by the ranges of neighbours.
    Individuals = 5,
    /// Ranges of neighbouring single readings.
    MovingRanges = 6,
}

/// The lines of a control chart; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointChart {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Number of points.
    pub count: usize,
    /// Centre line: the mean of what is shown.
    pub centre: f64,
    /// Lower control limit; 0 for a range or a deviation that could be nothing.
    pub lower: f64,
    /// Upper control limit.
    pub upper: f64,
    /// Standard deviation of a reading within a subgroup, which the limits rest on.
    pub deviation: f64,
}

// SAFETY: sizes and doubles, eight bytes each
unsafe impl Record for GaugepointChart {
    const SMALLEST: usize = 48;
}

/// A point of a control chart.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPoint {
    /// What is shown.
    pub value: f64,
    /// 1 when it is beyond a control limit, else 0.
    pub beyond: i32,
    /// 1 when it is the ninth in a row, or a later one, on one side of the centre line, else 0; never for ranges and deviations.
    pub run: i32,
}

/// Control chart of `subgroups` x `size` readings, one subgroup after the other in order of time, in any one unit.
///
/// `kind` is a GaugepointChartKind. At least two subgroups, of 2 to 25 readings; `size` is 1 for single readings. `points`
/// has room for `subgroups` points; moving ranges are one fewer. A refused value is named by subgroup and place, from 0:
/// "values/4/0". ISO 7870-2:2013.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_control_chart(
    values: *const f64,
    subgroups: usize,
    size: usize,
    kind: i32,
    out: *mut GaugepointChart,
    points: *mut GaugepointPoint,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (record("out", out), array_out("points", points, subgroups)), || {
            charted(array("values", values, subgroups.checked_mul(size))?, size, kind)
        })
    }
}

fn charted(
    values: &[f64],
    size: usize,
    kind: i32,
) -> Result<(GaugepointChart, Vec<GaugepointPoint>), Failure> {
    let chosen = usize::try_from(kind).ok().and_then(|number| number.checked_sub(1));
    let Some(chosen) = chosen.and_then(|place| Kind::ALL.get(place)) else {
        return Err(Failure::choice("kind", kind, "1, 2, 3, 4, 5, 6"));
    };
    // chunks of nothing are not to be had
    let groups: Vec<Vec<f64>> = values.chunks(size.max(1)).map(<[f64]>::to_vec).collect();
    let chart = control_chart(&groups, *chosen)?;
    let point = chart.points.iter().map(|p| GaugepointPoint {
        value: p.value,
        beyond: p.beyond.into(),
        run: p.run.into(),
    });
    let points: Vec<GaugepointPoint> = point.collect();
    let lines = GaugepointChart {
        struct_size: size_of::<GaugepointChart>(),
        count: points.len(),
        centre: chart.centre,
        lower: chart.lower,
        upper: chart.upper,
        deviation: chart.deviation,
    };
    Ok((lines, points))
}
