//! Long work that is watched: how much of it is done, and whether it goes on.
//!
//! Trials, matchings, documents with either, and batches of jobs have a form that takes a [`Watch`]. Its watcher is asked before every unit of the
//! work, and once more when all of it is done; it is told how much is done and of how much, and answers to go on or to stop. A unit is 256 trials
//! (those of a function that takes many at once: one call of it), a row of a matching, a cylinder or a job; between the parts of a hot fit it is asked, too. What is done never falls, and is the
//! whole in the end. The whole grows where more is found to be done, and shrinks in the end where trials settled before the most that were allowed.
//!
//! A stop is a refusal of the kind [`ErrorKind::Stopped`] that names no field: nothing is written. Results have the same bits with a watcher and
//! without. It is asked on the thread of the call alone, however many threads work.
//!
//! ```
//! use core::ops::ControlFlow;
//! use gaugepoint::measurement::distribution::Distribution;
//! use gaugepoint::progress::Watch;
//! use gaugepoint::stack::{Contributor, Stack, Variation};
//! use gaugepoint::ErrorKind;
//!
//! let part = Contributor::new("part", 2.0, (-0.1, 0.1), Variation::about(0.0, Distribution::rectangular(0.1)?)?)?;
//! let stack = Stack::new(vec![part])?;
//! let half = |done: u64, total: u64| if 2 * done < total { ControlFlow::Continue(()) } else { ControlFlow::Break(()) };
//! let stopped = stack.monte_carlo(1).watched(Watch::by(&half)).part(0..100_000).unwrap_err();
//! assert_eq!(stopped.kind(), ErrorKind::Stopped);
//! assert_eq!(stopped.to_string(), "stopped by the caller when 50176 of 100000 were done");
//! # Ok::<(), gaugepoint::Error>(())
//! ```

use crate::error::{Error, ErrorKind};
use core::fmt;
use core::ops::ControlFlow;
use core::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::thread;

/// Told how much is done and of how much; answers whether the work goes on.
pub type Watcher<'w> = dyn Fn(u64, u64) -> ControlFlow<()> + Sync + 'w;

/// Who watches; by default nobody does.
#[derive(Clone, Copy, Default)]
pub struct Watch<'w>(Option<&'w Watcher<'w>>);

impl<'w> Watch<'w> {
    /// By a watcher.
    #[must_use]
    pub fn by(watcher: &'w Watcher<'w>) -> Self {
        Watch(Some(watcher))
    }
}

impl fmt::Debug for Watch<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(if self.0.is_some() { "Watch(by a watcher)" } else { "Watch(by nobody)" })
    }
}

/// Work under way.
#[derive(Debug)]
pub(crate) struct Work<'w> {
    watch: Watch<'w>,
    /// The thread of the call.
    caller: usize,
    done: AtomicU64,
    total: AtomicU64,
    stopped: AtomicBool,
}

// no number here orders anything else in memory
const ORDER: Ordering = Ordering::Relaxed;

impl<'w> Work<'w> {
    /// Nothing of it is done.
    pub(crate) fn new(watch: Watch<'w>, total: u64) -> Self {
        Work {
            watch,
            caller: here(),
            done: AtomicU64::new(0),
            total: AtomicU64::new(total),
            stopped: AtomicBool::new(false),
        }
    }

    /// Asks whether it goes on; on another thread than the caller's, whether it was stopped.
    pub(crate) fn ask(&self) -> Result<(), Error> {
        let Some(watcher) = self.watch.0 else { return Ok(()) };
        let (done, total) = (self.done.load(ORDER), self.total.load(ORDER));
        let stopped = self.stopped.load(ORDER) || (here() == self.caller && watcher(done, total).is_break());
        if !stopped {
            return Ok(());
        }
        self.stopped.store(true, ORDER);
        let reason = format!("stopped by the caller when {done} of {total} were done");
        Err(Error::new(ErrorKind::Stopped, "", reason))
    }

    /// So much more is done.
    pub(crate) fn add(&self, units: u64) {
        if self.watch.0.is_some() {
            self.done.fetch_add(units, ORDER);
        }
    }

    /// So much is done, unless it was more.
    fn reach(&self, done: u64) {
        self.done.fetch_max(done, ORDER);
    }

    /// So much more is to be done.
    pub(crate) fn more(&self, units: u64) {
        self.total.fetch_add(units, ORDER);
    }

    /// What is so much of it, however much of that is to be done.
    pub(crate) fn whole<T, E>(&self, units: u64, make: impl FnOnce() -> Result<T, E>) -> Result<T, E> {
        let before = self.done.load(ORDER);
        let made = make();
        self.reach(before + units);
        made
    }

    /// Asks a last time: what is done was the whole.
    pub(crate) fn finish(&self) -> Result<(), Error> {
        self.total.store(self.done.load(ORDER), ORDER);
        self.ask()
    }

    /// A part of it that has a watch of its own, and is so much of this one.
    pub(crate) fn part<T>(
        &self,
        units: u64,
        part: impl FnOnce(Watch<'_>) -> Result<T, Error>,
    ) -> Result<T, Error> {
        let before = self.done.load(ORDER);
        let within = |done: u64, total: u64| {
            self.reach(before + share(units, done, total));
            self.ask().map_or(ControlFlow::Break(()), ControlFlow::Continue)
        };
        let watch = self.watch.0.map_or(Watch::default(), |_| Watch::by(&within));
        self.whole(units, || part(watch))
    }

    /// While other threads work: asks again and again until they have ended or a stop is theirs to see.
    pub(crate) fn wait(&self, ended: impl Fn() -> bool) {
        let pause = core::time::Duration::from_millis(5);
        while self.watch.0.is_some() && !ended() && self.ask().is_ok() {
            thread::sleep(pause);
        }
    }
}

/// What tells threads that run at the same time from each other: the place of something that each has of its own. The standard library's number of a
/// thread would allocate in every thread of a host, where nothing may be left behind.
fn here() -> usize {
    std::thread_local! {
        static OWN: u8 = const { 0 };
    }
    OWN.with(|own| core::ptr::from_ref(own).addr())
}

/// So much of the units as is done of a total, rounded down.
fn share(units: u64, done: u64, total: u64) -> u64 {
    let share = u128::from(units) * u128::from(done) / u128::from(total.max(1));
    u64::try_from(share).unwrap_or(units)
}
