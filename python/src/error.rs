//! The one place where a refusal of the core becomes a Python exception, and where a panic stops.

use gaugepoint::Error;
use pyo3::exceptions::PyRuntimeError;
use pyo3::prelude::*;
use pyo3::types::PyDict;
use std::panic::{AssertUnwindSafe, catch_unwind};

/// Why a call has no result.
pub(crate) enum Fault {
    /// The core refused an input.
    Refused(Error),
    /// The core panicked: our fault, never the caller's.
    Panic,
}

/// Runs the core. Unguarded, a panic would reach Python as `PanicException`, which `except Exception` lets through.
pub(crate) fn guarded<T>(work: impl FnOnce() -> Result<T, Error>) -> Result<T, Fault> {
    match catch_unwind(AssertUnwindSafe(work)) {
        Ok(done) => done.map_err(Fault::Refused),
        Err(_) => Err(Fault::Panic),
    }
}

impl From<Fault> for PyErr {
    fn from(fault: Fault) -> PyErr {
        Python::attach(|py| match fault {
            Fault::Refused(error) => refused(py, &error).unwrap_or_else(|failed| failed),
            Fault::Panic => {
                PyRuntimeError::new_err("a fault inside gaugepoint; please report it with its input")
            }
        })
    }
}

fn refused(py: Python<'_>, error: &Error) -> PyResult<PyErr> {
    let data = PyDict::new(py);
    data.set_item("kind", error.kind().name())?;
    data.set_item("field", error.field())?;
    data.set_item("refused", error.refused())?;
    data.set_item("reason", error.reason())?;
    data.set_item("value", error.refused_value())?;
    data.set_item("lower", error.accepted().map(|limits| limits.lower))?;
    data.set_item("upper", error.accepted().map(|limits| limits.upper))?;
    data.set_item("unit", error.accepted().map(|limits| limits.unit))?;
    data.set_item("did_you_mean", error.did_you_mean())?;
    exception(py, &error.to_string(), &data)
}

fn exception(py: Python<'_>, message: &str, data: &Bound<'_, PyDict>) -> PyResult<PyErr> {
    let class = py.import("gaugepoint.error")?.getattr("InputError")?;
    Ok(PyErr::from_value(class.call((message,), Some(data))?))
}
