//! Replays the working of a report from its inputs, with inputs or formulas changed.

use crate::expression::Expression;
use gaugepoint::calc::Working;
use std::collections::HashMap;

/// The working of a report, ready to be run again.
pub struct Replay<'w> {
    /// The working.
    pub working: &'w Working,
    /// The formula of every step.
    pub formulas: Vec<Expression>,
}

impl<'w> Replay<'w> {
    /// Reads every formula of a working.
    ///
    /// # Panics
    /// When one is not understood.
    #[must_use]
    pub fn new(working: &'w Working) -> Self {
        let read = |text: &str| Expression::parse(text).unwrap_or_else(|e| panic!("{text}: {e}"));
        Replay { working, formulas: working.steps.iter().map(|s| read(&s.formula)).collect() }
    }

    /// The value of every step, in order.
    ///
    /// # Panics
    /// When a step refers to something that does not come before it.
    pub fn values<'a>(
        &'a self,
        input: impl Fn(usize) -> f64,
        formula: impl Fn(usize) -> Option<&'a Expression>,
    ) -> Vec<f64> {
        let mut known: HashMap<&str, f64> = HashMap::new();
        known.extend(self.working.inputs.iter().enumerate().map(|(k, i)| (&*i.id, input(k))));
        known.extend(self.working.constants.iter().map(|k| (&*k.id, k.value)));
        let mut out = Vec::with_capacity(self.working.steps.len());
        for (k, step) in self.working.steps.iter().enumerate() {
            let value = |id: &str| *known.get(id).unwrap_or_else(|| panic!("{}: {id} comes later", step.id));
            let arguments: HashMap<&str, f64> =
                step.arguments.0.iter().map(|(symbol, id)| (&**symbol, value(id))).collect();
            let formula = formula(k).unwrap_or(&self.formulas[k]);
            let result =
                formula.evaluate(&arguments).unwrap_or_else(|e| panic!("{} {}: {e}", step.id, step.formula));
            known.insert(&step.id, result);
            out.push(result);
        }
        out
    }

    /// The numbers of the report that the values of the steps give: JSON Pointer and value.
    #[must_use]
    pub fn results(&self, values: &[f64]) -> HashMap<&'w str, f64> {
        let places = self.working.steps.iter().zip(values);
        places.flat_map(|(step, value)| step.results.iter().map(move |at| (at.as_str(), *value))).collect()
    }
}
