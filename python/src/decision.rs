//! One value against its limits.

use crate::error::{Door, Fault, guarded};
use gaugepoint::ErrorKind;
use gaugepoint::decision::{self, Rule};
use pyo3::prelude::*;

const RULES: [Rule; 3] = [Rule::SimpleAcceptance, Rule::Proven, Rule::ConformanceProbability];

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
///     Probability asked for by the rule ``conformance_probability``.
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
    let rule = rule_named(rule)?;
    let decision = guarded(|| {
        decision::decide_mm(value_mm, standard_uncertainty_mm, lower_mm, upper_mm, rule, at_least)
    })?;
    crate::job::json(&decision)
}

fn rule_named(word: &str) -> Result<Rule, Fault> {
    RULES.into_iter().find(|rule| rule.word() == word).ok_or_else(|| {
        Fault::Door(Door {
            kind: ErrorKind::UnknownChoice,
            field: "rule",
            refused: word.to_owned(),
            reason: format!("not one of the choices; accepted: {}", RULES.map(Rule::word).join(", ")),
        })
    })
}
