//! Gauge studies.

use crate::array::{array, number_of_choice};
use crate::error::{Failure, GaugepointError};
use crate::guard::status;
use crate::record::{Record, record};
use gaugepoint::measurement::study::{Component, Crossed, Line, Pooling, Ratio, Study, Table};

/// What a study by variance does with the interaction of appraiser and part.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointPooling {
    /// Keep it as a component.
    Never = 1,
    /// Count it as repeats.
    Always = 2,
    /// Count it as repeats when a ratio as large is more probable by chance than the probability given.
    Above = 3,
}

/// A standard deviation of a study, its share, and its confidence interval.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointComponent {
    /// Standard deviation, in the unit of the readings.
    pub deviation: f64,
    /// Ratio to the total deviation. The ratios do not add to 1; their squares do.
    pub of_total: f64,
    /// Lower end of the 95 % confidence interval of the deviation; NaN when not given.
    pub lower: f64,
    /// Upper end of it; NaN when not given.
    pub upper: f64,
}

/// A line of the analysis of variance of a study.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointLine {
    /// Sum of squares.
    pub squares: f64,
    /// Degrees of freedom.
    pub dof: f64,
    /// Mean square.
    pub mean: f64,
    /// Ratio to the mean square of the equipment; NaN when not given, and for the equipment itself.
    pub f: f64,
    /// Probability of a ratio as large by chance; NaN where `f` is.
    pub p: f64,
}

/// What a gauge study finds; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointStudy {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when `categories` is given, else 0: the gauge shows no variation.
    pub has_categories: i32,
    /// 1 when `repeatability` has its interval, else 0.
    pub has_repeatability_interval: i32,
    /// 1 when `reproducibility` has its interval, else 0.
    pub has_reproducibility_interval: i32,
    /// 1 when `gauge` has its interval, else 0.
    pub has_gauge_interval: i32,
    /// 1 when `part` has its interval, else 0.
    pub has_part_interval: i32,
    /// 1 when the four lines and `total_squares` are given, else 0: always by variance, never by ranges.
    pub has_table: i32,
    /// 1 when the lines of appraiser, part and interaction have `f` and `p`, else 0: the repeats do not vary.
    pub has_ratios: i32,
    /// 1 when the interaction was counted as repeats, else 0.
    pub pooled: i32,
    /// Repeatability: the same appraiser, the same part ("equipment variation").
    pub repeatability: GaugepointComponent,
    /// Reproducibility: between appraisers, interaction included ("appraiser variation").
    pub reproducibility: GaugepointComponent,
    /// Both together ("gauge repeatability and reproducibility").
    pub gauge: GaugepointComponent,
    /// Between parts.
    pub part: GaugepointComponent,
    /// Deviation of everything together.
    pub total: f64,
    /// 1.41 part / gauge, not truncated; its whole part is the number of distinct categories. NaN when not given.
    pub categories: f64,
    /// Between appraisers; all numbers NaN when there is no table, as in the next four fields.
    pub appraiser: GaugepointLine,
    /// Between parts.
    pub parts: GaugepointLine,
    /// Appraiser by part.
    pub interaction: GaugepointLine,
    /// Repeats.
    pub equipment: GaugepointLine,
    /// Sum of squares about the grand mean.
    pub total_squares: f64,
    /// 1 when `appraiser_residual_f` and `appraiser_residual_p` are given, else 0: no table, or the residual is 0.
    pub has_appraiser_residual: i32,
    /// 1 when `part_residual_f` and `part_residual_p` are given, else 0.
    pub has_part_residual: i32,
    /// Ratio of the mean square of the appraisers to what their component is formed with: interaction and repeats together when
    /// `pooled`, else the interaction.
    pub appraiser_residual_f: f64,
    /// Probability of a ratio as large by chance.
    pub appraiser_residual_p: f64,
    /// Ratio of the mean square of the parts to the same.
    pub part_residual_f: f64,
    /// Probability of a ratio as large by chance.
    pub part_residual_p: f64,
}

// SAFETY: a size, eight int32_t, doubles, two int32_t, doubles
unsafe impl Record for GaugepointStudy {
    const SMALLEST: usize = 392;
}

/// Crossed gauge study by averages and ranges, for up to 25 appraisers, trials and parts.
///
/// Every appraiser reads every part equally often: `appraisers` x `trials` x `parts` values in any one unit, those of an
/// appraiser together, within them those of a trial, within it the parts in order. At least two of each. A refused value
/// is named by appraiser, trial and part, from 0: "values/2/0/9". Measurement systems analysis, fourth edition.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_study_by_ranges(
    values: *const f64,
    appraisers: usize,
    trials: usize,
    parts: usize,
    out: *mut GaugepointStudy,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(crossed(values, appraisers, trials, parts)?.by_ranges()?.into())
        })
    }
}

/// Crossed gauge study by analysis of variance; the values are those of gaugepoint_study_by_ranges, without its limit.
///
/// `pooling` is a GaugepointPooling; `probability` counts when `has_probability` is 1, which it is with
/// GAUGEPOINT_POOLING_ABOVE (0.25 is usual) and with no other.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_study_by_variance(
    values: *const f64,
    appraisers: usize,
    trials: usize,
    parts: usize,
    pooling: i32,
    has_probability: i32,
    probability: f64,
    out: *mut GaugepointStudy,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let pooling = pooling_of(pooling, has_probability, probability)?;
            Ok(crossed(values, appraisers, trials, parts)?.by_variance(pooling)?.into())
        })
    }
}

fn pooling_of(number: i32, has_probability: i32, probability: f64) -> Result<Pooling, Failure> {
    const ABOVE: i32 = GaugepointPooling::Above as i32;
    const NEVER: i32 = GaugepointPooling::Never as i32;
    const ALWAYS: i32 = GaugepointPooling::Always as i32;
    let probability = || number_of_choice(("has_probability", has_probability), probability, number == ABOVE);
    match number {
        NEVER => probability().map(|_| Pooling::Never),
        ALWAYS => probability().map(|_| Pooling::Always),
        ABOVE => probability().map(Pooling::Above),
        _ => Err(Failure::choice("pooling", number, "1, 2, 3")),
    }
}

/// # Safety
/// As [`array`].
unsafe fn crossed(
    values: *const f64,
    appraisers: usize,
    trials: usize,
    parts: usize,
) -> Result<Crossed, Failure> {
    let count = appraisers.checked_mul(trials).and_then(|n| n.checked_mul(parts));
    // SAFETY: the caller's promise
    let values = unsafe { array("values", values, count)? };
    // of nothing, every piece is too little; chunks of nothing are not to be had
    let rows: Vec<Vec<f64>> = values.chunks(parts.max(1)).map(<[f64]>::to_vec).collect();
    Ok(Crossed::new(rows.chunks(trials.max(1)).map(<[Vec<f64>]>::to_vec).collect())?)
}

const NO_LINE: GaugepointLine =
    GaugepointLine { squares: f64::NAN, dof: f64::NAN, mean: f64::NAN, f: f64::NAN, p: f64::NAN };

fn component(c: Component) -> (i32, GaugepointComponent) {
    let (lower, upper) = c.interval.unwrap_or((f64::NAN, f64::NAN));
    let given = c.interval.is_some().into();
    (given, GaugepointComponent { deviation: c.deviation, of_total: c.of_total, lower, upper })
}

fn residual(ratio: Option<Ratio>) -> (i32, f64, f64) {
    ratio.map_or((0, f64::NAN, f64::NAN), |ratio| (1, ratio.f, ratio.p))
}

fn line(of: impl Fn(Table) -> Line, table: Option<Table>) -> GaugepointLine {
    table.map(of).map_or(NO_LINE, |l| GaugepointLine {
        squares: l.squares,
        dof: l.dof,
        mean: l.mean,
        f: l.f.unwrap_or(f64::NAN),
        p: l.p.unwrap_or(f64::NAN),
    })
}

impl From<Study> for GaugepointStudy {
    fn from(s: Study) -> Self {
        let [repeatability, reproducibility, gauge, part] =
            [s.repeatability, s.reproducibility, s.gauge, s.part].map(component);
        let appraiser_residual = residual(s.table.and_then(|t| t.appraiser_residual));
        let part_residual = residual(s.table.and_then(|t| t.part_residual));
        GaugepointStudy {
            struct_size: size_of::<Self>(),
            has_categories: s.categories.is_some().into(),
            has_repeatability_interval: repeatability.0,
            has_reproducibility_interval: reproducibility.0,
            has_gauge_interval: gauge.0,
            has_part_interval: part.0,
            has_table: s.table.is_some().into(),
            has_ratios: s.table.is_some_and(|t| t.interaction.f.is_some()).into(),
            pooled: s.table.is_some_and(|t| t.pooled).into(),
            repeatability: repeatability.1,
            reproducibility: reproducibility.1,
            gauge: gauge.1,
            part: part.1,
            total: s.total,
            categories: s.categories.unwrap_or(f64::NAN),
            appraiser: line(|t| t.appraiser, s.table),
            parts: line(|t| t.part, s.table),
            interaction: line(|t| t.interaction, s.table),
            equipment: line(|t| t.equipment, s.table),
            total_squares: s.table.map_or(f64::NAN, |t| t.total_squares),
            has_appraiser_residual: appraiser_residual.0,
            has_part_residual: part_residual.0,
            appraiser_residual_f: appraiser_residual.1,
            appraiser_residual_p: appraiser_residual.2,
            part_residual_f: part_residual.1,
            part_residual_p: part_residual.2,
        }
    }
}
