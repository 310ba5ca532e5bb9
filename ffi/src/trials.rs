//! Trials of linear stacks, and what is said of the values of trials, whatever they are of.

use crate::array::{GAUGEPOINT_MOST_VALUES, array, array_out, given};
use crate::error::{Failure, GaugepointError};
use crate::guard::status;
use crate::progress::{GaugepointWatcher, watched};
use crate::record::{Record, record};
use crate::stack::{GaugepointStack, filled};
use core::ffi::c_void;
use core::ptr::null_mut;
use gaugepoint::ErrorKind;
use gaugepoint::measurement::monte_carlo::{
    Adaptive, Coverage, Goal, MonteCarlo, Part, Summary, Trials, trials_from,
};
use gaugepoint::measurement::points::Points;
use gaugepoint::measurement::tail::{Mean, Outside};
use gaugepoint::stack::Toward;
use gaugepoint::stack::document::PointsChoice;

/// How the points of trials lie.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointPoints {
    /// Independent of each other.
    Random = 1,
    /// One in every layer of every draw. It has a number of trials of the whole run.
    LatinHypercube = 2,
    /// Sobol's sequence, scrambled; for up to 64 draws.
    Sobol = 3,
}

/// A side of a distribution.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointToward {
    /// Below a limit.
    Lower = 1,
    /// Above a limit.
    Upper = 2,
}

/// Which coverage interval.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointCoverage {
    /// Equal probabilities outside either end.
    Symmetric = 1,
    /// The shortest.
    Shortest = 2,
}

/// A run of trials and where a part of it begins. A plain structure.
///
/// Trial i is a function of the seed, the points and i alone: parts of a run, made anywhere and in any order, are the whole
/// to the bit when their values stand in the order of the trials.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointRun {
    /// Seed; any will do.
    pub seed: u64,
    /// Number of the first trial of the part, from 0.
    pub first: u64,
    /// Trials of the whole run of a Latin hypercube, up to 134217728; 0 for other points.
    pub hypercube_trials: u64,
    /// A GaugepointPoints.
    pub points: i32,
    /// Not used; 0.
    pub reserved: i32,
}

/// What an adaptive run is to reach. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointGoal {
    /// Seed; any will do.
    pub seed: u64,
    /// Trials at which it stops unsettled, up to 134217728.
    pub most_trials: u64,
    /// Coverage probability of the interval.
    pub probability: f64,
    /// A GaugepointCoverage: the interval whose ends must settle.
    pub coverage: i32,
    /// Significant digits of the standard deviation that are meant, 1 or 2.
    pub digits: i32,
}

/// Mean, deviation and intervals of trials; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointTrialsSummary {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Number of trials.
    pub trials: usize,
    /// Mean.
    pub mean: f64,
    /// Standard deviation.
    pub standard_deviation: f64,
    /// Coverage probability of the intervals.
    pub probability: f64,
    /// Lower end of the interval with equal probabilities outside.
    pub symmetric_lower: f64,
    /// Its upper end.
    pub symmetric_upper: f64,
    /// Lower end of the shortest interval.
    pub shortest_lower: f64,
    /// Its upper end.
    pub shortest_upper: f64,
}

// SAFETY: two sizes, doubles
unsafe impl Record for GaugepointTrialsSummary {
    const SMALLEST: usize = 72;
}

/// Shares of trials outside two limits, with intervals of Clopper and Pearson; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointTrialsOutside {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Trials below the lower limit.
    pub below_count: usize,
    /// Trials above the upper limit.
    pub above_count: usize,
    /// Share of the trials below the lower limit.
    pub below: f64,
    /// Lower end of the interval of that probability.
    pub below_lower: f64,
    /// Upper end of the interval of that probability.
    pub below_upper: f64,
    /// Share of the trials above the upper limit.
    pub above: f64,
    /// Lower end of the interval of that probability.
    pub above_lower: f64,
    /// Upper end of the interval of that probability.
    pub above_upper: f64,
}

// SAFETY: three sizes, doubles
unsafe impl Record for GaugepointTrialsOutside {
    const SMALLEST: usize = 72;
}

/// A probability from the weights of importance sampling; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointRareTail {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Probability beyond the limit.
    pub probability: f64,
    /// Its standard deviation.
    pub standard_error: f64,
    /// Lower end of its interval, not below 0.
    pub lower: f64,
    /// Upper end of its interval.
    pub upper: f64,
    /// Effective trials: how many of equal weight would say as much.
    pub effective_trials: f64,
}

// SAFETY: a size, doubles
unsafe impl Record for GaugepointRareTail {
    const SMALLEST: usize = 48;
}

/// Outcome of an adaptive run; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointAdaptive {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when mean, deviation and both ends are stable to the tolerance; 0 when the trials ran out.
    pub settled: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Number of sequences.
    pub sequences: usize,
    /// Number of trials.
    pub trials: usize,
    /// Numerical tolerance at the end.
    pub tolerance: f64,
    /// Mean of all trials.
    pub mean: f64,
    /// Standard deviation of all trials.
    pub standard_deviation: f64,
    /// Coverage probability of the intervals.
    pub probability: f64,
    /// Lower end of the interval with equal probabilities outside.
    pub symmetric_lower: f64,
    /// Its upper end.
    pub symmetric_upper: f64,
    /// Lower end of the shortest interval.
    pub shortest_lower: f64,
    /// Its upper end.
    pub shortest_upper: f64,
}

// SAFETY: a size, two int32_t, two sizes, doubles
unsafe impl Record for GaugepointAdaptive {
    const SMALLEST: usize = 96;
}

/// The values of `count` trials of a stack, from `run->first` on.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_trials(
    stack: *const GaugepointStack,
    run: *const GaugepointRun,
    values: *mut f64,
    count: usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { gaugepoint_stack_trials_watched(stack, run, None, null_mut(), values, count, error) }
}

/// gaugepoint_stack_trials with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_trials_watched(
    stack: *const GaugepointStack,
    run: *const GaugepointRun,
    watcher: GaugepointWatcher,
    user: *mut c_void,
    values: *mut f64,
    count: usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, array_out("values", values, count), || {
            let asked = Asked::new(given("run", run)?, count)?;
            let run = filled(stack)?.monte_carlo(asked.seed);
            watched(watcher, user, |watch| asked.values(run.watched(watch)))
        })
    }
}

/// Trials of a stack until mean, deviation and both ends of the interval are stable. Source: JCGM 101:2008, 7.9.4.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_adaptive(
    stack: *const GaugepointStack,
    goal: *const GaugepointGoal,
    out: *mut GaugepointAdaptive,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { gaugepoint_stack_adaptive_watched(stack, goal, None, null_mut(), out, error) }
}

/// gaugepoint_stack_adaptive with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_adaptive_watched(
    stack: *const GaugepointStack,
    goal: *const GaugepointGoal,
    watcher: GaugepointWatcher,
    user: *mut c_void,
    out: *mut GaugepointAdaptive,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let (seed, goal) = goal_of(given("goal", goal)?)?;
            let run = filled(stack)?.monte_carlo(seed);
            watched(watcher, user, |watch| adaptive(run.watched(watch), goal))
        })
    }
}

/// Weights of `count` trials of a tail of a stack too rare for others, from `run->first` on: importance sampling beyond one
/// limit. gaugepoint_trials_rare_tail says what they come to; gaugepoint_stack_outside is exact and better.
///
/// `toward` is a GaugepointToward: the side of the limit that is rare.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_importance(
    stack: *const GaugepointStack,
    toward: i32,
    limit: f64,
    run: *const GaugepointRun,
    weights: *mut f64,
    count: usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        gaugepoint_stack_importance_watched(
            stack,
            toward,
            limit,
            run,
            None,
            null_mut(),
            weights,
            count,
            error,
        )
    }
}

/// gaugepoint_stack_importance with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_stack_importance_watched(
    stack: *const GaugepointStack,
    toward: i32,
    limit: f64,
    run: *const GaugepointRun,
    watcher: GaugepointWatcher,
    user: *mut c_void,
    weights: *mut f64,
    count: usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, array_out("weights", weights, count), || {
            let asked = Asked::new(given("run", run)?, count)?;
            let run = filled(stack)?.importance(toward_of(toward)?, limit, asked.seed)?;
            watched(watcher, user, |watch| asked.values(run.watched(watch)))
        })
    }
}

/// Mean, standard deviation and intervals at a coverage probability of the values of trials. The ends are values of trials.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_trials_summary(
    values: *const f64,
    count: usize,
    probability: f64,
    out: *mut GaugepointTrialsSummary,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(part(values, count, Points::Random)?.summary(probability)?.into())
        })
    }
}

/// Shares of the values of trials below `lower` and above `upper`, infinite where there is no limit, with intervals of Clopper
/// and Pearson that cover with at least `confidence`.
///
/// `points` is the GaugepointPoints that the values were made with. Only random ones are independent; others are refused.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_trials_outside(
    values: *const f64,
    count: usize,
    points: i32,
    lower: f64,
    upper: f64,
    confidence: f64,
    out: *mut GaugepointTrialsOutside,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let points = match choice_of(points)? {
                // a number of trials that only stands for there being one
                PointsChoice::LatinHypercube => Points::LatinHypercube { trials: 1 },
                other => other.points(None)?,
            };
            Ok(part(values, count, points)?.outside(lower, upper, confidence)?.into())
        })
    }
}

/// How many of the values of trials lie above each of `edge_count` rising edges and not above the next; `counts` has room for one less.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_trials_histogram(
    values: *const f64,
    count: usize,
    edges: *const f64,
    edge_count: usize,
    counts: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, array_out("counts", counts, edge_count.saturating_sub(1)), || {
            let part = part(values, count, Points::Random)?;
            let counts = part.histogram(array("edges", edges, Some(edge_count))?)?;
            Ok(counts.into_iter().map(whole).collect())
        })
    }
}

/// The probability that the weights of importance sampling come to, with its interval at a confidence; `values` are the weights.
///
/// Refused with fewer than 100 effective trials: then their spread does not say how wrong they are.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_trials_rare_tail(
    values: *const f64,
    count: usize,
    confidence: f64,
    out: *mut GaugepointRareTail,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(part(values, count, Points::Random)?.importance(confidence)?.into())
        })
    }
}

/// A part that is asked for.
pub(crate) struct Asked {
    pub(crate) seed: u64,
    points: Points,
    first: u64,
    count: u64,
}

impl Asked {
    pub(crate) fn new(run: GaugepointRun, count: usize) -> Result<Self, Failure> {
        let GaugepointRun { seed, first, hypercube_trials, points, .. } = run;
        let points = choice_of(points)?.points((hypercube_trials > 0).then_some(hypercube_trials));
        let points = points.map_err(|e| e.under("run"))?;
        if count > GAUGEPOINT_MOST_VALUES {
            return Err(Failure::refused(ErrorKind::OutOfRange, "count", "more than 16777216 values"));
        }
        Ok(Asked { seed, points, first, count: count as u64 })
    }

    pub(crate) fn values<T: Trials>(&self, run: MonteCarlo<'_, T>) -> Result<Vec<f64>, Failure> {
        let trials = trials_from(self.first, self.count).map_err(|e| e.under("run"))?;
        let part = run.with_points(self.points)?.part(trials)?;
        Ok(part.into_values())
    }
}

pub(crate) fn goal_of(goal: GaugepointGoal) -> Result<(u64, Goal), Failure> {
    let GaugepointGoal { seed, most_trials, probability, coverage, digits } = goal;
    let coverage = match coverage {
        1 => Coverage::Symmetric,
        2 => Coverage::Shortest,
        other => return Err(Failure::choice("coverage", other, "1, 2")),
    };
    // no number beyond a byte is one or two
    let digits = u8::try_from(digits).unwrap_or(u8::MAX);
    Ok((seed, Goal { probability, coverage, digits, most_trials }))
}

pub(crate) fn adaptive<T: Trials>(run: MonteCarlo<'_, T>, goal: Goal) -> Result<GaugepointAdaptive, Failure> {
    Ok(run.adaptive(goal)?.into())
}

pub(crate) fn toward_of(toward: i32) -> Result<Toward, Failure> {
    match toward {
        1 => Ok(Toward::Lower),
        2 => Ok(Toward::Upper),
        other => Err(Failure::choice("toward", other, "1, 2")),
    }
}

fn choice_of(points: i32) -> Result<PointsChoice, Failure> {
    match points {
        1 => Ok(PointsChoice::Random),
        2 => Ok(PointsChoice::LatinHypercube),
        3 => Ok(PointsChoice::Sobol),
        other => Err(Failure::choice("points", other, "1, 2, 3")),
    }
}

/// The caller's values as a part.
///
/// # Safety
/// As [`array`].
unsafe fn part(values: *const f64, count: usize, points: Points) -> Result<Part, Failure> {
    // SAFETY: the caller's promise
    let values = unsafe { array("values", values, Some(count)) }?;
    Ok(Part::of_values(0, points, 0, values.to_vec())?)
}

/// A count of values that stood in memory.
fn whole(count: u64) -> usize {
    usize::try_from(count).unwrap_or(usize::MAX)
}

impl From<Summary> for GaugepointTrialsSummary {
    fn from(s: Summary) -> Self {
        GaugepointTrialsSummary {
            struct_size: size_of::<Self>(),
            trials: whole(s.trials),
            mean: s.mean,
            standard_deviation: s.standard_deviation,
            probability: s.probability,
            symmetric_lower: s.symmetric.lower,
            symmetric_upper: s.symmetric.upper,
            shortest_lower: s.shortest.lower,
            shortest_upper: s.shortest.upper,
        }
    }
}

impl From<Outside> for GaugepointTrialsOutside {
    fn from(o: Outside) -> Self {
        GaugepointTrialsOutside {
            struct_size: size_of::<Self>(),
            below_count: whole(o.below.count),
            above_count: whole(o.above.count),
            below: o.below.probability,
            below_lower: o.below.lower,
            below_upper: o.below.upper,
            above: o.above.probability,
            above_lower: o.above.lower,
            above_upper: o.above.upper,
        }
    }
}

impl From<Mean> for GaugepointRareTail {
    fn from(m: Mean) -> Self {
        GaugepointRareTail {
            struct_size: size_of::<Self>(),
            probability: m.mean,
            standard_error: m.standard_error,
            lower: m.lower,
            upper: m.upper,
            effective_trials: m.effective,
        }
    }
}

impl From<Adaptive> for GaugepointAdaptive {
    fn from(a: Adaptive) -> Self {
        let GaugepointTrialsSummary {
            trials,
            mean,
            standard_deviation,
            probability,
            symmetric_lower,
            symmetric_upper,
            shortest_lower,
            shortest_upper,
            ..
        } = a.summary.into();
        GaugepointAdaptive {
            struct_size: size_of::<Self>(),
            settled: a.settled.into(),
            reserved: 0,
            sequences: whole(a.sequences),
            trials,
            tolerance: a.tolerance,
            mean,
            standard_deviation,
            probability,
            symmetric_lower,
            symmetric_upper,
            shortest_lower,
            shortest_upper,
        }
    }
}
