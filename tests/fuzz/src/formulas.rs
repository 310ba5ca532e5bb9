use crate::feed::{Feed, answered, error, number_or_nan, record, zeroed};
use crate::handles::Written;
use crate::watched::watched;
use core::ptr::null_mut;
use gaugepoint_c::function::{
    GaugepointEffect, GaugepointFunction, GaugepointPropagation, gaugepoint_function_free,
    gaugepoint_function_from_formula, gaugepoint_function_importance_watched, gaugepoint_function_nominal,
    gaugepoint_function_propagation, gaugepoint_function_trials_watched,
};
use gaugepoint_c::trials::GaugepointRun;

/// Two blocks of trials, between which a watcher is asked.
const TRIALS: usize = 300;

/// The door of the formulas: the first bytes make up to three contributors, the rest is a formula of a, b and c.
///
/// # Panics
/// When an answer breaks a rule.
pub fn formulas(data: &[u8]) {
    let mut feed = Feed(data);
    let count = 1 + feed.few(2);
    let written = Written::new(&mut feed, count);
    let contributors = written.contributors(&mut feed);
    let symbols: Vec<_> = written.names.iter().map(|name| name.as_ptr().cast()).collect();
    let lengths: Vec<usize> = written.names.iter().map(Vec::len).collect();
    let run = GaugepointRun {
        seed: u64::from(feed.byte()),
        first: u64::from(feed.byte()),
        hypercube_trials: 256 * u64::from(feed.byte() % 4),
        points: feed.choice(4),
        reserved: 0,
    };
    let (mut function, mut e): (*mut GaugepointFunction, _) = (null_mut(), error());
    // SAFETY: the contract of the header; the function is freed once below
    unsafe {
        let status = gaugepoint_function_from_formula(
            contributors.as_ptr(),
            contributors.len(),
            feed.0.as_ptr().cast(),
            feed.0.len(),
            symbols.as_ptr(),
            lengths.as_ptr(),
            &raw mut function,
            &raw mut e,
        );
        if !answered(status, &e) {
            assert!(function.is_null());
            return;
        }
        let (mut out, mut e) = (0.0, error());
        let status = gaugepoint_function_nominal(function, &raw mut out, &raw mut e);
        number_or_nan(answered(status, &e), out);
        let (mut moments, mut e) = (record!(GaugepointPropagation), error());
        let mut effects: [GaugepointEffect; 3] = zeroed();
        let status =
            gaugepoint_function_propagation(function, &raw mut moments, effects.as_mut_ptr(), 3, &raw mut e);
        answered(status, &e);
        tried(function, &run, None);
        tried(function, &run, Some(out));
        gaugepoint_function_free(function);
    }
}

/// Trials, or with a limit the weights of trials toward it, alone and watched; the seed also says where they are stopped.
///
/// # Safety
/// The function is there.
unsafe fn tried(function: *const GaugepointFunction, run: &GaugepointRun, limit: Option<f64>) {
    let stop = usize::try_from(run.seed % 4).unwrap_or(0);
    let (_, values) = watched(stop, &[5.0_f64.to_bits(); TRIALS], |watcher, user| {
        let (mut values, mut e) = ([5.0; TRIALS], error());
        let (run, out, e_out) = (&raw const *run, values.as_mut_ptr(), &raw mut e);
        // SAFETY: the caller's promise, the contract of the header
        let status = unsafe {
            match limit {
                None => gaugepoint_function_trials_watched(function, run, watcher, user, out, TRIALS, e_out),
                Some(limit) => gaugepoint_function_importance_watched(
                    function, 1, limit, run, watcher, user, out, TRIALS, e_out,
                ),
            }
        };
        answered(status, &e);
        (status, values.map(f64::to_bits))
    });
    assert!(values.iter().all(|v| f64::from_bits(*v).is_finite()), "{values:?}");
}
