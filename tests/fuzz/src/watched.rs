//! Long work with and without a watcher.

use core::ffi::c_void;
use gaugepoint_c::progress::GaugepointWatcher;

const STOPPED: i32 = 401;

/// What a watcher was told; it stops at a call, counted from 1.
struct Seen {
    stop: usize,
    calls: usize,
    done: usize,
    total: usize,
    orderly: bool,
}

unsafe extern "C" fn watch(user: *mut c_void, done: usize, total: usize) -> i32 {
    // SAFETY: the pointer that went with it, which nobody else uses meanwhile
    let seen = unsafe { &mut *user.cast::<Seen>() };
    let stopped_before = seen.stop > 0 && seen.calls >= seen.stop;
    seen.calls += 1;
    seen.orderly &= done >= seen.done && done <= total && !stopped_before;
    (seen.done, seen.total) = (done, total);
    i32::from(seen.calls == seen.stop)
}

/// Does the same work alone, watched, and stopped at a call unless that is 0; it gives a status and its results, which hold what was in their places
/// when it fails. Gives the status and results of the work alone.
pub(crate) fn watched<T: PartialEq>(
    stop: usize,
    untouched: &T,
    work: impl Fn(GaugepointWatcher, *mut c_void) -> (i32, T),
) -> (i32, T) {
    let seen_with = |stop| {
        let mut seen = Seen { stop, calls: 0, done: 0, total: 0, orderly: true };
        let answer = work(Some(watch), (&raw mut seen).cast());
        assert!(seen.orderly, "{} of {}, or asked after a stop", seen.done, seen.total);
        (answer, seen)
    };
    let alone = work(None, core::ptr::null_mut());
    let (answer, seen) = seen_with(0);
    assert!(answer == alone, "the results depend on who watches");
    assert!(alone.0 != 0 || seen.done == seen.total, "{} of {}", seen.done, seen.total);
    assert!(alone.0 == 0 || alone.1 == *untouched, "a failure wrote results");
    if stop > 0 {
        let (answer, told) = seen_with(stop);
        assert!(if seen.calls < stop {
            answer == alone
        } else {
            answer.0 == STOPPED && answer.1 == *untouched
        });
        assert_eq!(told.calls, stop.min(seen.calls));
    }
    alone
}
