//! One value against its limits, and what may be behind a finding.

use crate::error::{Fault, guarded};
use gaugepoint::decision::finding::{Asked, Place, What};
use gaugepoint::decision::signs::{self, Candidate, Cause, Question};
use gaugepoint::decision::{self, Rule};
use pyo3::prelude::*;
use serde::Serialize;

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

/// What may be behind a finding, as `gaugepoint.decision.Explanation` has it.
#[derive(Serialize)]
struct Explained {
    candidates: Vec<Candidate>,
    ask: Vec<Asked>,
    #[serde(skip_serializing_if = "Option::is_none")]
    cause_found: Option<Cause>,
}

/// Give the causes that agree with a finding and with the answers, and what to ask next.
///
/// Parameters
/// ----------
/// place, what : str
///     Where something was seen, and what.
/// answers : sequence of (str, bool)
///     Questions that were answered, yes or no.
///
/// Returns
/// -------
/// str
///     The explanation, as JSON.
///
/// Raises
/// ------
/// InputError
///     When a word is unknown or a question is answered both ways; it names the place.
#[pyfunction]
pub(crate) fn explain(place: &str, what: &str, answers: Vec<(String, bool)>) -> Result<String, Fault> {
    let explained = guarded(|| {
        let place = Place::from_word(place).map_err(|e| e.named("place"))?;
        let what = What::from_word(what).map_err(|e| e.named("what"))?;
        let mut given = Vec::with_capacity(answers.len());
        for (k, (word, yes)) in answers.iter().enumerate() {
            given.push((Question::from_word(word).map_err(|e| e.named(&format!("answers/{k}")))?, *yes));
        }
        let found = signs::explain(place, what, &given)?;
        let cause_found = found.cause();
        let ask = found.ask.into_iter().map(Asked::from).collect();
        Ok(Explained { candidates: found.candidates, ask, cause_found })
    })?;
    crate::job::json(&explained)
}
