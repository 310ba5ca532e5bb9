//! Long work that is watched.

use crate::error::Failure;
use core::ffi::c_void;
use core::ops::ControlFlow;
use gaugepoint::progress::Watch;

/// Is told how much of a long work is done and of how much, and answers 0 to go on, anything else to stop. See PROGRESS at the head.
///
/// `user` is the pointer that was given with it. It is called on the thread of the call that it serves, before every unit and once more when all
/// is done: about as often as 256 trials, a row of a matching, a cylinder or a job take, so one that is dear does nothing most of the time. It must not
/// ask or free the handle that is being asked. No exception and no longjmp may leave it.
pub type GaugepointWatcher =
    Option<unsafe extern "C" fn(user: *mut c_void, done: usize, total: usize) -> i32>;

/// A watcher with its pointer.
struct Called {
    watcher: unsafe extern "C" fn(*mut c_void, usize, usize) -> i32,
    user: *mut c_void,
}

// SAFETY: the core asks on the thread of the call alone; other threads that work for it hold this and never use it
unsafe impl Sync for Called {}

impl Called {
    fn ask(&self, done: u64, total: u64) -> ControlFlow<()> {
        let count = |count: u64| usize::try_from(count).unwrap_or(usize::MAX);
        // SAFETY: the watcher keeps to its contract
        match unsafe { (self.watcher)(self.user, count(done), count(total)) } {
            0 => ControlFlow::Continue(()),
            _ => ControlFlow::Break(()),
        }
    }
}

/// Does long work, watched when there is a watcher.
///
/// # Safety
/// The watcher keeps to its contract with this pointer.
pub(crate) unsafe fn watched<T>(
    watcher: GaugepointWatcher,
    user: *mut c_void,
    work: impl FnOnce(Watch<'_>) -> Result<T, Failure>,
) -> Result<T, Failure> {
    let Some(watcher) = watcher else { return work(Watch::default()) };
    let called = Called { watcher, user };
    work(Watch::by(&|done, total| called.ask(done, total)))
}
