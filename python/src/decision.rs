//! One value against its limits.

use crate::error::{Fault, guarded};
use gaugepoint::decision::{self, Rule};
use pyo3::prelude::*;

/// Judge one value with its standard uncertainty.
///
/// Parameters
/// ----------
/// value_mm, standard_uncertainty_mm : float
///     The value and its standard uncertainty, in mm.
/// lower_mm, upper_mm : float or None
///     The limits, in mm; at least one.
/// rule : str
///     Rule of decision.
/// at_least : float
///     Probability asked for by the rule ``conformance_probability``, or ratio asked for by ``simple_acceptance_by_ratio``.
///
/// Returns
/// -------
/// str
///     The decision, as JSON.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, the limits are out of order or missing, or the rule is unknown.
#[pyfunction]
pub(crate) fn decide_mm(
    value_mm: f64,
    standard_uncertainty_mm: f64,
    lower_mm: Option<f64>,
    upper_mm: Option<f64>,
    rule: &str,
    at_least: f64,
) -> Result<String, Fault> {
    let decision = guarded(|| {
        let rule = Rule::from_word(rule).map_err(|e| e.named("rule"))?;
        decision::decide_mm(value_mm, standard_uncertainty_mm, lower_mm, upper_mm, rule, at_least)
    })?;
    crate::job::json(&decision)
}
