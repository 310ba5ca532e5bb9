#![forbid(unsafe_code)]
//! Python module of gaugepoint. It translates and computes nothing: texts and doubles in, texts and doubles out.
//!
//! The package around it (`gaugepoint/`) gives the texts their Python types.

mod error;

mod arrays;
mod flat;

mod measurement;

mod shape;

mod piston;

mod decision;

mod risk;

mod before;

mod parts;

mod growth;

mod hot;

mod job;

mod progress;

mod sheet;

mod measure;

mod fit;

mod budget;

mod comparing;

mod batch;

mod stack;

mod trials;

mod function;
mod assembly;
mod clean_up;
mod matching;
mod stack_document;

use gaugepoint::ErrorKind;
use pyo3::prelude::*;
use pyo3::types::PyTuple;

/// The compiled part of gaugepoint. Private: the package re-exports what is public.
#[pymodule(gil_used = false)]
fn _gaugepoint(module: &Bound<'_, PyModule>) -> PyResult<()> {
    let kinds = ErrorKind::ALL.iter().map(|kind| kind.name());
    module.add("ERROR_KINDS", PyTuple::new(module.py(), kinds)?)?;
    module.add("__version__", env!("CARGO_PKG_VERSION"))?;
    flat::add(module)?;
    module.add_function(wrap_pyfunction!(measurement::sample, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::one_way, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::study_by_ranges, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::study_by_variance, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::bias, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::linearity, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::linearity_band, module)?)?;
    module.add_function(wrap_pyfunction!(measurement::control_chart, module)?)?;
    module.add_function(wrap_pyfunction!(shape::fit_circle, module)?)?;
    module.add_function(wrap_pyfunction!(shape::fit_circle_algebraic, module)?)?;
    module.add_function(wrap_pyfunction!(shape::fit_cylinder, module)?)?;
    module.add_function(wrap_pyfunction!(shape::fit_plane, module)?)?;
    module.add_function(wrap_pyfunction!(shape::bore_to_main_line, module)?)?;
    module.add_function(wrap_pyfunction!(shape::section_from_radii, module)?)?;
    module.add_function(wrap_pyfunction!(shape::section_from_diameters, module)?)?;
    module.add_function(wrap_pyfunction!(shape::two_point_mm, module)?)?;
    module.add_function(wrap_pyfunction!(shape::three_leg_mm, module)?)?;
    module.add_function(wrap_pyfunction!(shape::v_block_factor, module)?)?;
    module.add_function(wrap_pyfunction!(piston::piston_radius_mm, module)?)?;
    module.add_function(wrap_pyfunction!(piston::piston_diameter_mm, module)?)?;
    module.add_function(wrap_pyfunction!(piston::piston_ovality_mm, module)?)?;
    module.add_function(wrap_pyfunction!(piston::piston_largest, module)?)?;
    module.add_function(wrap_pyfunction!(piston::piston_warnings, module)?)?;
    module.add_function(wrap_pyfunction!(piston::fit_piston_surface, module)?)?;
    module.add_function(wrap_pyfunction!(piston::fit_piston_trace, module)?)?;
    module.add_function(wrap_pyfunction!(decision::decide_mm, module)?)?;
    module.add_function(wrap_pyfunction!(decision::explain, module)?)?;
    module.add_function(wrap_pyfunction!(risk::global_risks, module)?)?;
    module.add_function(wrap_pyfunction!(risk::acceptance_proven, module)?)?;
    module.add_function(wrap_pyfunction!(risk::acceptance_stringent, module)?)?;
    module.add_function(wrap_pyfunction!(risk::acceptance_relaxed, module)?)?;
    module.add_function(wrap_pyfunction!(risk::acceptance_ratio, module)?)?;
    module.add_function(wrap_pyfunction!(risk::acceptance_for_risk, module)?)?;
    module.add_function(wrap_pyfunction!(risk::capability, module)?)?;
    module.add_function(wrap_pyfunction!(parts::ring_conformable_amplitude_mm, module)?)?;
    module.add_function(wrap_pyfunction!(parts::ring_hot_gap, module)?)?;
    module.add_function(wrap_pyfunction!(parts::pin_clearance, module)?)?;
    module.add_function(wrap_pyfunction!(parts::press_fit, module)?)?;
    module.add_function(wrap_pyfunction!(parts::assembly_temperature, module)?)?;
    module.add_function(wrap_pyfunction!(parts::liner_in_block, module)?)?;
    module.add_function(wrap_pyfunction!(parts::deck, module)?)?;
    module.add_function(wrap_pyfunction!(parts::compression_ratio, module)?)?;
    module.add_function(wrap_pyfunction!(parts::gasket_band, module)?)?;
    module.add_function(wrap_pyfunction!(parts::ring_gap_factors, module)?)?;
    module.add_function(wrap_pyfunction!(parts::dead_centres, module)?)?;
    module.add_function(wrap_pyfunction!(parts::piston_travel, module)?)?;
    module.add_function(wrap_pyfunction!(parts::crank_angles_at, module)?)?;
    module.add_function(wrap_pyfunction!(parts::least_clearance_of_section, module)?)?;
    module.add_function(wrap_pyfunction!(before::soak, module)?)?;
    module.add_function(wrap_pyfunction!(before::adequacy_proven, module)?)?;
    module.add_function(wrap_pyfunction!(before::adequacy_stringent, module)?)?;
    module.add_function(wrap_pyfunction!(before::adequacy_relaxed, module)?)?;
    module.add_function(wrap_pyfunction!(before::adequacy_ratio, module)?)?;
    module.add_function(wrap_pyfunction!(before::drift, module)?)?;
    module.add_function(wrap_pyfunction!(before::agreement, module)?)?;
    module.add_function(wrap_pyfunction!(before::readers, module)?)?;
    module.add_function(wrap_pyfunction!(before::outliers_mean, module)?)?;
    module.add_function(wrap_pyfunction!(before::outliers_common_oval, module)?)?;
    module.add_function(wrap_pyfunction!(before::outliers_oval_by_depth, module)?)?;
    module.add_function(wrap_pyfunction!(before::judge, module)?)?;
    module.add_function(wrap_pyfunction!(before::plausibility_table, module)?)?;
    module.add_function(wrap_pyfunction!(job::assess, module)?)?;
    module.add_function(wrap_pyfunction!(job::job_schema, module)?)?;
    module.add_function(wrap_pyfunction!(job::report_schema, module)?)?;
    module.add_function(wrap_pyfunction!(sheet::check_sheet, module)?)?;
    module.add_function(wrap_pyfunction!(sheet::sheet_schema, module)?)?;
    module.add_function(wrap_pyfunction!(sheet::sheet_report_schema, module)?)?;
    module.add_function(wrap_pyfunction!(measure::measure, module)?)?;
    module.add_function(wrap_pyfunction!(measure::presets, module)?)?;
    module.add_function(wrap_pyfunction!(growth::growth_mean_coefficient, module)?)?;
    module.add_function(wrap_pyfunction!(growth::growth_mean_table, module)?)?;
    module.add_function(wrap_pyfunction!(growth::growth_instantaneous_table, module)?)?;
    module.add_function(wrap_pyfunction!(growth::growth_instantaneous_polynomial, module)?)?;
    module.add_function(wrap_pyfunction!(growth::growth_strain_polynomial, module)?)?;
    module.add_function(wrap_pyfunction!(growth::growth_graphite_iron, module)?)?;
    module.add_function(wrap_pyfunction!(growth::growth_built_in, module)?)?;
    module.add_function(wrap_pyfunction!(growth::built_in_materials, module)?)?;
    module.add_class::<growth::Law>()?;
    module.add_function(wrap_pyfunction!(hot::hot_fit, module)?)?;
    module.add_class::<hot::HotFit>()?;
    module.add_function(wrap_pyfunction!(growth::illustrative_duties, module)?)?;
    module.add_function(wrap_pyfunction!(measure::measurement_schema, module)?)?;
    module.add_function(wrap_pyfunction!(measure::measurement_report_schema, module)?)?;
    module.add_function(wrap_pyfunction!(fit::fit, module)?)?;
    module.add_function(wrap_pyfunction!(fit::fit_schema, module)?)?;
    module.add_function(wrap_pyfunction!(fit::fit_report_schema, module)?)?;
    module.add_function(wrap_pyfunction!(budget::budget, module)?)?;
    module.add_function(wrap_pyfunction!(budget::budget_schema, module)?)?;
    module.add_function(wrap_pyfunction!(budget::budget_report_schema, module)?)?;
    module.add_function(wrap_pyfunction!(budget::effective_dof, module)?)?;
    module.add_function(wrap_pyfunction!(budget::standard_uncertainty, module)?)?;
    module.add_function(wrap_pyfunction!(budget::numerical_tolerance, module)?)?;
    module.add_function(wrap_pyfunction!(stack_document::evaluate_stack, module)?)?;
    module.add_function(wrap_pyfunction!(stack_document::stack_schema, module)?)?;
    module.add_function(wrap_pyfunction!(stack_document::stack_report_schema, module)?)?;
    module.add_function(wrap_pyfunction!(comparing::revisit, module)?)?;
    module.add_function(wrap_pyfunction!(comparing::revisit_schema, module)?)?;
    module.add_function(wrap_pyfunction!(comparing::revisit_report_schema, module)?)?;
    module.add_function(wrap_pyfunction!(comparing::what_if, module)?)?;
    module.add_function(wrap_pyfunction!(comparing::what_if_schema, module)?)?;
    module.add_function(wrap_pyfunction!(comparing::what_if_report_schema, module)?)?;
    module.add_function(wrap_pyfunction!(batch::clearances, module)?)?;
    module.add_function(wrap_pyfunction!(batch::steps, module)?)?;
    module.add_function(wrap_pyfunction!(batch::counted, module)?)?;
    module.add_class::<stack::Stack>()?;
    module.add_class::<function::Function>()?;
    module.add_function(wrap_pyfunction!(function::engine_stacks, module)?)?;
    module.add_function(wrap_pyfunction!(trials::trials_summary, module)?)?;
    module.add_function(wrap_pyfunction!(trials::trials_outside, module)?)?;
    module.add_function(wrap_pyfunction!(trials::trials_histogram, module)?)?;
    module.add_function(wrap_pyfunction!(trials::trials_rare_tail, module)?)?;
    module.add_function(wrap_pyfunction!(trials::trials_merged, module)?)?;
    module.add_function(wrap_pyfunction!(clean_up::cleaned_up, module)?)?;
    module.add_function(wrap_pyfunction!(clean_up::clean_up_from_diameters, module)?)?;
    module.add_function(wrap_pyfunction!(clean_up::walls_left, module)?)?;
    module.add_function(wrap_pyfunction!(clean_up::largest_bore_by_walls_mm, module)?)?;
    module.add_function(wrap_pyfunction!(clean_up::bore_sizes, module)?)?;
    module.add_function(wrap_pyfunction!(clean_up::dial_reading_mm, module)?)?;
    module.add_function(wrap_pyfunction!(clean_up::finish_check, module)?)?;
    module.add_function(wrap_pyfunction!(clean_up::boring_order, module)?)?;
    module.add_function(wrap_pyfunction!(assembly::filed, module)?)?;
    module.add_function(wrap_pyfunction!(assembly::gasket_grade, module)?)?;
    module.add_function(wrap_pyfunction!(assembly::cut_list, module)?)?;
    module.add_function(wrap_pyfunction!(assembly::bob_weight_g, module)?)?;
    module.add_function(wrap_pyfunction!(assembly::finish, module)?)?;
    module.add_function(wrap_pyfunction!(assembly::shim_plan, module)?)?;
    module.add_function(wrap_pyfunction!(assembly::oversizes, module)?)?;
    module.add_function(wrap_pyfunction!(matching::match_parts, module)?)?;
    module.add_function(wrap_pyfunction!(matching::match_sizes, module)?)
}
