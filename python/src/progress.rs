//! Long work: told to a callable of Python, and ended by what it raises and by signals.

use crate::error::guarded;
use core::ops::ControlFlow;
use gaugepoint::Error;
use gaugepoint::progress::Watch;
use pyo3::prelude::*;
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

/// A callable of what is done and of how much, if there is one.
pub(crate) type Progress = Option<Py<PyAny>>;

/// Between two visits to the interpreter: a stop comes well before a fifth of a second, and a block of trials is far shorter than a visit is dear.
const PAUSE: Duration = Duration::from_millis(50);

/// Does long work. What the callable raises, and a signal, end it before the next unit and are raised as they are.
pub(crate) fn watched<T>(
    progress: Progress,
    work: impl FnOnce(Watch<'_>) -> Result<T, Error>,
) -> PyResult<T> {
    let reports = Reports { callable: progress, state: Mutex::default() };
    let ask = |done, total| reports.ask(done, total);
    let answer = guarded(|| work(Watch::by(&ask)));
    let raised = reports.state().raised.take();
    raised.map_or_else(|| Ok(answer?), Err)
}

/// What was reported.
struct Reports {
    callable: Progress,
    state: Mutex<State>,
}

#[derive(Default)]
struct State {
    visited: Option<Instant>,
    told: Option<(u64, u64)>,
    raised: Option<PyErr>,
}

impl Reports {
    fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn ask(&self, done: u64, total: u64) -> ControlFlow<()> {
        let due = self.state().visited.is_none_or(|visited| visited.elapsed() >= PAUSE);
        if !due && done < total {
            return ControlFlow::Continue(());
        }
        match Python::attach(|py| self.visit(py, done, total)) {
            Ok(()) => {
                self.state().visited = Some(Instant::now());
                ControlFlow::Continue(())
            }
            Err(raised) => {
                self.state().raised = Some(raised);
                ControlFlow::Break(())
            }
        }
    }

    /// Lets signals be handled, and tells what was not told yet.
    fn visit(&self, py: Python<'_>, done: u64, total: u64) -> PyResult<()> {
        py.check_signals()?;
        let is_new = self.state().told.replace((done, total)) != Some((done, total));
        if let (Some(callable), true) = (&self.callable, is_new) {
            callable.call1(py, (done, total))?;
        }
        Ok(())
    }
}
