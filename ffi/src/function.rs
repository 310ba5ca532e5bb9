//! Functions of contributors: of a formula, ready made for an engine, or called back.

use crate::array::{ArrayOut, array, array_out, fitting, given};
use crate::error::{Failure, GaugepointError};
use crate::guard::{cleared, kept, plain, status};
use crate::handle::{self, freed, lent};
use crate::progress::{GaugepointWatcher, watched};
use crate::record::{Record, record};
use crate::stack::{GaugepointContributor, all};
use crate::status::{CALLBACK_FAILED, NULL_POINTER};
use crate::text;
use crate::trials::{Asked, GaugepointAdaptive, GaugepointGoal, GaugepointRun, adaptive, goal_of, toward_of};
use core::ffi::{c_char, c_void};
use core::ptr::null_mut;
use gaugepoint::calc::Model;
use gaugepoint::progress::Watch;
use gaugepoint::stack::{
    Columnwise, Contributor, Derivation, Effect, EngineStack, Function, Proof, Propagation, WorstCase,
};
use std::ffi::CString;
use std::sync::LazyLock;

/// Stacks of an engine that are ready made. Lengths are in mm, volumes in cm3, temperatures in C, expansions per kelvin.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointEngineStack {
    /// From the deck down to the crown, mm.
    DeckClearance = 1,
    /// From the crown to the head, mm.
    Squish = 2,
    /// Compression ratio.
    CompressionRatio = 3,
    /// Bore less piston at 20 C over the diameter, mm.
    BenchClearance = 4,
    /// End gap of a ring in its bore, mm, from the gap in a gauge.
    RingGap = 5,
    /// End gap of a ring with bore and ring at their temperatures, mm.
    HotRingGap = 6,
    /// Flange of a liner above the deck, mm.
    LinerProtrusion = 7,
}

/// Where derivatives come from.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointDerivation {
    /// By the rules of derivation, from the operations.
    Exact = 1,
    /// By differences over twentieths of a standard deviation.
    Numeric = 2,
}

/// How the ends of a worst case were found.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointProof {
    /// The slopes by all contributors have one sign each within the limits: the ends are two corners.
    Monotone = 1,
    /// Intervals over parts of the limits: nothing lies beyond the bounds.
    Subdivision = 2,
    /// A search of a function that is only called: there may be more beyond.
    Searched = 3,
}

/// A function of sizes. It is called with the sizes of `trials` trials, one or many, and writes the value of each.
///
/// The size of contributor k in trial i is `sizes[k * trials + i]`; `values[i]` gets the value of that trial. `user` is the
/// pointer that was given with the callback. It returns 0, or a number of its own when it fails: the call that it serves then ends and
/// is refused with GAUGEPOINT_STATUS_CALLBACK_FAILED and that number. A value that is not finite, or is not written, is refused.
///
/// It is called from the thread of the call that it serves, and from several threads at once when several call. It may be
/// called many times, with one trial or thousands, in an order and in groups that may change from version to version: a value must depend
/// on the sizes of its trial alone, or the results mean nothing. No exception and no longjmp may leave it.
pub type GaugepointCallback = Option<
    unsafe extern "C" fn(
        user: *mut c_void,
        sizes: *const f64,
        contributors: usize,
        trials: usize,
        values: *mut f64,
    ) -> i32,
>;

/// A function of contributors; made by gaugepoint_function_from_formula, gaugepoint_function_of_engine or
/// gaugepoint_function_of_callback, freed by gaugepoint_function_free and by nothing else.
///
/// It never changes, and may be asked from any number of threads at once.
pub struct GaugepointFunction {
    made: Made,
    /// Names of the contributors as they were given: a ready-made stack has an order of its own.
    names: Vec<String>,
}

enum Made {
    Model(Function<Model>),
    Called(Called),
}

/// What writes the values of trials, or gives a number of its own.
type Values<'c> = Box<dyn Fn(&[&[f64]], &mut [f64]) -> Result<(), i32> + 'c>;

/// A callback and its contributors.
struct Called {
    contributors: Vec<Contributor>,
    callback: unsafe extern "C" fn(*mut c_void, *const f64, usize, usize, *mut f64) -> i32,
    user: *mut c_void,
}

/// A function by its derivatives at the means of the contributors, without the effects; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPropagation {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// A GaugepointDerivation.
    pub derivation: i32,
    /// 1 when `skewness` is given, else 0: nothing varies, or there are too many terms.
    pub has_skewness: i32,
    /// 1 when `excess_kurtosis` is given, else 0: in the same cases.
    pub has_excess_kurtosis: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Value at the nominals.
    pub nominal: f64,
    /// Value at the means.
    pub first_mean: f64,
    /// Standard deviation to first order.
    pub first_standard_deviation: f64,
    /// Mean to second order.
    pub second_mean: f64,
    /// That mean less the value at the means.
    pub shift: f64,
    /// Standard deviation to second order.
    pub second_standard_deviation: f64,
    /// Third central moment over the cube of the standard deviation.
    pub skewness: f64,
    /// Fourth central moment over the square of the variance, less 3.
    pub excess_kurtosis: f64,
}

// SAFETY: a size, four int32_t, doubles
unsafe impl Record for GaugepointPropagation {
    const SMALLEST: usize = 88;
}

/// What a contributor does to a function. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointEffect {
    /// Place of the contributor as it was given.
    pub place: usize,
    /// Derivative of the function by it, at the means.
    pub sensitivity: f64,
    /// Standard deviation that it alone gives to first order.
    pub standard_deviation: f64,
    /// Share of the variance to first order.
    pub share: f64,
    /// Share of the variance to second order that it has alone.
    pub alone: f64,
    /// Share of the variance to second order of its products with others; each product stands with both.
    pub together: f64,
}

/// Smallest and largest value within the limits, without their places; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointWorstCase {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// A GaugepointProof.
    pub proof: i32,
    /// 1 when `lowest_bound` is given, else 0: after a search.
    pub has_lowest_bound: i32,
    /// 1 when `highest_bound` is given, else 0: after a search.
    pub has_highest_bound: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Smallest value that is attained.
    pub lowest: f64,
    /// No value lies below this.
    pub lowest_bound: f64,
    /// Largest value that is attained.
    pub highest: f64,
    /// No value lies above this.
    pub highest_bound: f64,
}

// SAFETY: a size, four int32_t, doubles
unsafe impl Record for GaugepointWorstCase {
    const SMALLEST: usize = 56;
}

/// Asks the function of a handle, whatever it is made of; a failure of the callback stands before what became of it.
macro_rules! asked {
    ($handle:expr, $function:ident => $answer:expr) => {
        match &$handle.made {
            Made::Model($function) => $answer,
            Made::Called(called) => {
                let $function = &called.function()?;
                let answer = || $answer;
                let answer = answer();
                $function.law().failure().map_or(answer, |code| Err(failed(code)))
            }
        }
    };
}

/// Makes a function of `count` contributors from a formula: `acos((a + c) / (e - c))`.
///
/// `symbols` and `symbol_lengths` have a symbol for each contributor and its length in bytes; both NULL when the names are the symbols. A contributor
/// has coefficient 1 and count 1: the formula says how it acts. `function` gets it, to be freed by gaugepoint_function_free.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_function_from_formula(
    contributors: *const GaugepointContributor,
    count: usize,
    formula: *const c_char,
    formula_length: usize,
    symbols: *const *const c_char,
    symbol_lengths: *const usize,
    function: *mut *mut GaugepointFunction,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("function", function), || {
            let contributors = all(contributors, count)?;
            let formula = text::name("formula", formula, formula_length)?;
            let names = names(&contributors);
            let symbols = match symbols.is_null() && symbol_lengths.is_null() {
                true => names.iter().map(String::as_str).collect(),
                false => texts(array("symbols", symbols, Some(count))?, symbol_lengths)?,
            };
            let made = Function::from_text(contributors, &symbols, formula)?;
            Ok(handle::made(GaugepointFunction { made: Made::Model(made), names }))
        })
    }
}

/// Makes a stack of an engine of the contributors that it has, in any order. `engine` is a GaugepointEngineStack.
///
/// gaugepoint_engine_contributor says which they are. An impossible nominal is refused.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_function_of_engine(
    engine: i32,
    contributors: *const GaugepointContributor,
    count: usize,
    function: *mut *mut GaugepointFunction,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("function", function), || {
            let engine = engine_of(engine).ok_or_else(|| Failure::choice("engine", engine, "1 to 7"))?;
            let contributors = all(contributors, count)?;
            let names = names(&contributors);
            let made = Made::Model(engine.function(contributors)?);
            Ok(handle::made(GaugepointFunction { made, names }))
        })
    }
}

/// Makes a function of `count` contributors that is called back; it is not called yet. `user` may be NULL.
///
/// The callback and `user` are kept, and must live as long as the function. Derivatives are differences, and the worst case is a search.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_function_of_callback(
    contributors: *const GaugepointContributor,
    count: usize,
    callback: GaugepointCallback,
    user: *mut c_void,
    function: *mut *mut GaugepointFunction,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("function", function), || {
            let null = || Failure::own(NULL_POINTER, "callback", NULL_POINTER.meaning);
            let called = Called {
                contributors: all(contributors, count)?,
                callback: callback.ok_or_else(null)?,
                user,
            };
            // refused now and not when it is asked
            called.function()?;
            let names = names(&called.contributors);
            Ok(handle::made(GaugepointFunction { made: Made::Called(called), names }))
        })
    }
}

/// Frees a function. NULL is fine.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_function_free(function: *mut GaugepointFunction) {
    // SAFETY: it came from one of the three, and was not freed
    plain((), || unsafe { freed(function) });
}

/// Name of the contributor at a place, from 0, of a GaugepointEngineStack; empty when there is none.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_engine_contributor(engine: i32, place: usize) -> *const c_char {
    plain(c"".as_ptr(), || {
        let of = engine_of(engine).and_then(|of| EngineStack::ALL.iter().position(|stack| *stack == of));
        let name = of.and_then(|k| ENGINE_NAMES.get(k)).and_then(|names| names.get(place));
        name.map_or(c"".as_ptr(), |name| name.as_ptr())
    })
}

/// Unit of the result of a GaugepointEngineStack: "mm" or "1"; empty when there is none of this number.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_engine_unit(engine: i32) -> *const c_char {
    plain(c"".as_ptr(), || match engine_of(engine).map(EngineStack::unit) {
        Some("mm") => c"mm".as_ptr(),
        Some(_) => c"1".as_ptr(),
        None => c"".as_ptr(),
    })
}

/// Value of a function at the nominals.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_function_nominal(
    function: *const GaugepointFunction,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(
            error,
            cleared("out", out, f64::NAN),
            || asked!(lent("function", function)?, f => Ok(f.nominal()?)),
        )
    }
}

/// Moments of a function to first and second order, and what each contributor does, largest share first.
///
/// `effects` has `room` for one for each contributor.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_function_propagation(
    function: *const GaugepointFunction,
    out: *mut GaugepointPropagation,
    effects: *mut GaugepointEffect,
    room: usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (record("out", out), array_out("effects", effects, room)), || {
            let function = lent("function", function)?;
            let of = asked!(function, f => Ok(f.propagation()?))?;
            let effects = of.effects.iter().map(|e| function.effect(e)).collect();
            Ok(((&of).into(), fitting(effects, "room", room)?))
        })
    }
}

/// Smallest and largest value of a function within the limits of all contributors, proved where it is a formula.
///
/// `lowest_at` and `highest_at` have `room` for the size of each contributor where these values are attained, as the contributors were given.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_function_worst_case(
    function: *const GaugepointFunction,
    out: *mut GaugepointWorstCase,
    lowest_at: *mut f64,
    highest_at: *mut f64,
    room: usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (record("out", out), ends_out(lowest_at, highest_at, room)), || {
            let function = lent("function", function)?;
            let found = asked!(function, f => Ok(f.worst_case()?))?;
            let lowest = fitting(function.as_given(&found.lowest.at), "room", room)?;
            Ok(((&found).into(), (lowest, function.as_given(&found.highest.at))))
        })
    }
}

/// The values of `count` trials of a function, from `run->first` on.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_function_trials(
    function: *const GaugepointFunction,
    run: *const GaugepointRun,
    values: *mut f64,
    count: usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { gaugepoint_function_trials_watched(function, run, None, null_mut(), values, count, error) }
}

/// gaugepoint_function_trials with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_function_trials_watched(
    function: *const GaugepointFunction,
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
            let of = lent("function", function)?;
            let work =
                |watch: Watch<'_>| asked!(of, f => asked.values(f.monte_carlo(asked.seed).watched(watch)));
            watched(watcher, user, work)
        })
    }
}

/// Trials of a function until mean, deviation and both ends of the interval are stable. Source: JCGM 101:2008, 7.9.4.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_function_adaptive(
    function: *const GaugepointFunction,
    goal: *const GaugepointGoal,
    out: *mut GaugepointAdaptive,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { gaugepoint_function_adaptive_watched(function, goal, None, null_mut(), out, error) }
}

/// gaugepoint_function_adaptive with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_function_adaptive_watched(
    function: *const GaugepointFunction,
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
            let of = lent("function", function)?;
            let work = |watch: Watch<'_>| asked!(of, f => adaptive(f.monte_carlo(seed).watched(watch), goal));
            watched(watcher, user, work)
        })
    }
}

/// Weights of `count` trials of a tail of a function too rare for others, from `run->first` on: importance sampling beyond one
/// limit. gaugepoint_trials_rare_tail says what they come to.
///
/// `toward` is a GaugepointToward: the side of the limit that is rare.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_function_importance(
    function: *const GaugepointFunction,
    toward: i32,
    limit: f64,
    run: *const GaugepointRun,
    weights: *mut f64,
    count: usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        gaugepoint_function_importance_watched(
            function,
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

/// gaugepoint_function_importance with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_function_importance_watched(
    function: *const GaugepointFunction,
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
            let toward = toward_of(toward)?;
            let of = lent("function", function)?;
            let work = |watch: Watch<'_>| {
                asked!(of, f => {
                    let run = f.importance(toward, limit, asked.seed)?;
                    asked.values(run.watched(watch))
                })
            };
            watched(watcher, user, work)
        })
    }
}

impl GaugepointFunction {
    /// Place of a contributor among those given.
    fn place(&self, name: &str) -> usize {
        self.names.iter().position(|given| given == name).unwrap_or(usize::MAX)
    }

    fn effect(&self, e: &Effect) -> GaugepointEffect {
        GaugepointEffect {
            place: self.place(&e.name),
            sensitivity: e.sensitivity,
            standard_deviation: e.standard_deviation,
            share: e.share,
            alone: e.alone,
            together: e.together,
        }
    }

    /// Numbers in the order of the function's contributors, in the order in which these were given.
    fn as_given(&self, numbers: &[f64]) -> Vec<f64> {
        let own: &[Contributor] = match &self.made {
            Made::Model(function) => function.contributors(),
            Made::Called(called) => &called.contributors,
        };
        let number = |name: &String| {
            let place = own.iter().position(|c| c.name() == name);
            place.and_then(|k| numbers.get(k)).copied().unwrap_or(f64::NAN)
        };
        self.names.iter().map(number).collect()
    }
}

impl Called {
    /// The function for one call, which has failures of its own.
    fn function(&self) -> Result<Function<Columnwise<Values<'_>, i32>>, Failure> {
        let values: Values<'_> = Box::new(|sizes, values| {
            let all = sizes.concat();
            // SAFETY: the callback keeps to its contract: it reads what is there, and writes values
            match unsafe {
                (self.callback)(self.user, all.as_ptr(), sizes.len(), values.len(), values.as_mut_ptr())
            } {
                0 => Ok(()),
                code => Err(code),
            }
        });
        Ok(Function::new(self.contributors.clone(), Columnwise::new(values))?)
    }
}

/// The places of a worst case.
fn ends_out(lowest_at: *mut f64, highest_at: *mut f64, room: usize) -> (ArrayOut<f64>, ArrayOut<f64>) {
    (array_out("lowest_at", lowest_at, room), array_out("highest_at", highest_at, room))
}

fn failed(code: i32) -> Failure {
    Failure::AtTheDoor {
        code: CALLBACK_FAILED.code,
        field: "callback".to_owned(),
        refused: code.to_string(),
        reason: format!("the callback returned {code}"),
    }
}

fn names(contributors: &[Contributor]) -> Vec<String> {
    contributors.iter().map(|c| c.name().to_owned()).collect()
}

/// The caller's symbols.
///
/// # Safety
/// As the header says.
unsafe fn texts<'a>(symbols: &[*const c_char], lengths: *const usize) -> Result<Vec<&'a str>, Failure> {
    // SAFETY: the caller's promise
    let lengths = unsafe { array("symbol_lengths", lengths, Some(symbols.len())) }?;
    let text = |(k, (symbol, length)): (usize, (&*const c_char, &usize))| {
        // SAFETY: the caller's promise
        unsafe { text::name("", *symbol, *length) }.map_err(|f| f.under(&format!("symbols/{k}")))
    };
    symbols.iter().zip(lengths).enumerate().map(text).collect()
}

fn engine_of(engine: i32) -> Option<EngineStack> {
    use EngineStack as E;
    Some(match engine {
        1 => E::DeckClearance,
        2 => E::Squish,
        3 => E::CompressionRatio,
        4 => E::BenchClearance,
        5 => E::RingGap,
        6 => E::HotRingGap,
        7 => E::LinerProtrusion,
        _ => return None,
    })
}

/// Names of the contributors of every engine stack, with their NUL.
static ENGINE_NAMES: LazyLock<Vec<Vec<CString>>> = LazyLock::new(|| {
    let names = |of: &EngineStack| of.contributors().into_iter().filter_map(|name| CString::new(name).ok());
    EngineStack::ALL.iter().map(|of| names(of).collect()).collect()
});

impl From<&Propagation> for GaugepointPropagation {
    fn from(p: &Propagation) -> Self {
        let (skewness, excess_kurtosis) = (p.second.skewness, p.second.excess_kurtosis);
        GaugepointPropagation {
            struct_size: size_of::<Self>(),
            derivation: match p.derivation {
                Derivation::Exact => GaugepointDerivation::Exact,
                Derivation::Numeric => GaugepointDerivation::Numeric,
            } as i32,
            has_skewness: skewness.is_some().into(),
            has_excess_kurtosis: excess_kurtosis.is_some().into(),
            reserved: 0,
            nominal: p.nominal,
            first_mean: p.first.mean,
            first_standard_deviation: p.first.standard_deviation,
            second_mean: p.second.mean,
            shift: p.second.shift,
            second_standard_deviation: p.second.standard_deviation,
            skewness: skewness.unwrap_or(f64::NAN),
            excess_kurtosis: excess_kurtosis.unwrap_or(f64::NAN),
        }
    }
}

impl From<&WorstCase> for GaugepointWorstCase {
    fn from(w: &WorstCase) -> Self {
        let (lowest, highest) = (&w.lowest, &w.highest);
        GaugepointWorstCase {
            struct_size: size_of::<Self>(),
            proof: match w.proof {
                Proof::Monotone => GaugepointProof::Monotone,
                Proof::Subdivision => GaugepointProof::Subdivision,
                Proof::Searched => GaugepointProof::Searched,
            } as i32,
            has_lowest_bound: lowest.bound.is_some().into(),
            has_highest_bound: highest.bound.is_some().into(),
            reserved: 0,
            lowest: lowest.attained,
            lowest_bound: lowest.bound.unwrap_or(f64::NAN),
            highest: highest.attained,
            highest_bound: highest.bound.unwrap_or(f64::NAN),
        }
    }
}
