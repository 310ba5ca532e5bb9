#![forbid(unsafe_code)]
//! Python module of gaugepoint. It translates and computes nothing: texts and doubles in, texts and doubles out.
//!
//! The package around it (`gaugepoint/`) gives the texts their Python types.

mod error;

mod flat;

mod measurement;

mod decision;

mod risk;

mod job;

mod sheet;

mod measure;

use gaugepoint::ErrorKind;
use pyo3::prelude::*;
use pyo3::types::PyTuple;

/// The compiled part of gaugepoint. Private: the package re-exports what is public.
#[pymodule(gil_used = false)]
fn _gaugepoint(module: &Bound<'_, PyModule>) -> PyResult<()> {
    let kinds = ErrorKind::ALL.iter().map(|kind| kind.name());
    module.add("ERROR_KINDS", PyTuple::new(module.py(), kinds)?)?;
    module.add("__version__", env!("CARGO_PKG_VERSION"))?;
    module.add_function(wrap_pyfunction!(flat::size_at_20_mm, module)?)?;
    module.add_function(wrap_pyfunction!(flat::bench_clearance_mm, module)?)?;
    module.add_function(wrap_pyfunction!(flat::running_clearance_mm, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::sample, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::one_way, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::study_by_ranges, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::study_by_variance, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::bias, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::linearity, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::linearity_band, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::control_chart, module)?)?;
    module.add_function(wrap_pyfunction!(decision::decide_mm, module)?)?;
    module.add_function(wrap_pyfunction!(risk::global_risks, module)?)?;
    module.add_function(wrap_pyfunction!(risk::acceptance_proven, module)?)?;
    module.add_function(wrap_pyfunction!(risk::acceptance_stringent, module)?)?;
    module.add_function(wrap_pyfunction!(risk::acceptance_relaxed, module)?)?;
    module.add_function(wrap_pyfunction!(risk::acceptance_ratio, module)?)?;
    module.add_function(wrap_pyfunction!(risk::acceptance_for_risk, module)?)?;
    module.add_function(wrap_pyfunction!(risk::capability, module)?)?;
    module.add_function(wrap_pyfunction!(job::assess, module)?)?;
    module.add_function(wrap_pyfunction!(job::job_schema, module)?)?;
    module.add_function(wrap_pyfunction!(job::report_schema, module)?)?;
    module.add_function(wrap_pyfunction!(sheet::check_sheet, module)?)?;
    module.add_function(wrap_pyfunction!(sheet::sheet_schema, module)?)?;
    module.add_function(wrap_pyfunction!(sheet::sheet_report_schema, module)?)?;
    module.add_function(wrap_pyfunction!(measure::measure, module)?)?;
    module.add_function(wrap_pyfunction!(measure::presets, module)?)?;
    module.add_function(wrap_pyfunction!(measure::measurement_schema, module)?)?;
    module.add_function(wrap_pyfunction!(measure::measurement_report_schema, module)?)
}
