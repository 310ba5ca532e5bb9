//! One value three ways: the linear budget, the second order, trials.

use super::document::{MeasurementDocument, Treatment};
use super::reading::{Taken, Told};
use super::report::{
    EffectReport, IntervalReport, MonteCarloReport, Propagated, SecondOrderReport, ValidationReport,
};
use super::{Measuring, bounds};
use crate::assess::budget_lines;
use crate::calc::{ExpandedUncertainty, Model};
use crate::error::{Error, ErrorKind};
use crate::job::Warning;
use crate::measurement::monte_carlo::{Coverage, Interval, MonteCarlo, Validation};
use crate::measurement::uncertainty::{Degrees, Evaluation, Expanded, Inputs};
use crate::progress::Watch;

/// Coverage probability where the document asks for none.
const PROBABILITY: f64 = 0.95;
/// Fewest and most trials of one value: an interval at 95 % needs the first, and more than the second tell nothing new.
const TRIALS: (u32, u32) = (10_000, 1_000_000);
/// Most trials of one document.
const MOST_TRIALS: u64 = 50_000_000;

/// What the document asks for.
pub(super) struct Asked {
    pub(super) probability: f64,
    trials: Option<Run>,
}

/// A Monte Carlo run.
struct Run {
    seed: u32,
    trials: u32,
    digits: u8,
}

impl Asked {
    pub(super) fn from_document(
        document: &MeasurementDocument,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        let probability = match &document.probability {
            Some(entry) => entry.read(&bounds::PROBABILITY, warnings)?.value,
            None => PROBABILITY,
        };
        let Some(entry) = &document.monte_carlo else {
            return Ok(Asked { probability, trials: None });
        };
        let trials = entry.trials.count(TRIALS.0, TRIALS.1)?;
        let values = document.readings.len() + document.differences.len();
        if u64::from(trials).saturating_mul(values as u64) > MOST_TRIALS {
            let reason = format!("with {values} values that is more than {MOST_TRIALS} trials");
            return Err(entry.trials.refuse(ErrorKind::TooLarge, reason));
        }
        let digits = entry.digits.as_ref().map(|d| d.count(1, 2)).transpose()?;
        let digits = if digits == Some(2) { 2 } else { 1 };
        let run = Run { seed: entry.seed.count(0, u32::MAX)?, trials, digits };
        Ok(Asked { probability, trials: Some(run) })
    }
}

impl Measuring<'_> {
    /// States a value in the report at `at`.
    pub(super) fn propagated(&mut self, taken: &Taken, at: &str) -> Result<Propagated, Error> {
        let Taken { name, value, effects, .. } = taken;
        self.work.ask()?;
        self.calc.heading(|| name.clone());
        let Some((inputs, model)) = self.calc.model(value).map_err(|e| e.at(at))? else {
            return Err(Error::new(ErrorKind::Contradiction, "", "the calculation keeps no model").at(at));
        };
        let budget = self.calc.budget(value);
        let evaluation = Evaluation {
            estimate: value.value(),
            standard_uncertainty: budget.standard.value,
            dof: budget.dof.map_or(f64::INFINITY, |dof| dof.value),
            contributions: Vec::new(),
        };
        let expanded = evaluation.expanded(self.asked.probability, Degrees::AsComputed)?;
        let source = "coverage factor of the t-distribution at the coverage probability: JCGM 100:2008, G.3";
        let k = self.calc.constant("k", expanded.coverage_factor, "1", source);
        let stated = self.calc.figure(ExpandedUncertainty, [k, budget.standard]);
        self.calc.place(value.figure, || format!("{at}/value_mm"));
        self.calc.place(budget.standard, || format!("{at}/standard_uncertainty_mm"));
        if let Some(dof) = budget.dof {
            self.calc.place(dof, || format!("{at}/dof"));
        }
        self.calc.place(stated, || format!("{at}/expanded_uncertainty_mm"));
        Ok(Propagated {
            value_mm: value.value(),
            standard_uncertainty_mm: budget.standard.value,
            dof: Some(evaluation.dof).filter(|dof| dof.is_finite()),
            coverage_factor: expanded.coverage_factor,
            expanded_uncertainty_mm: stated.value,
            budget: budget_lines(&mut self.calc, &budget, at, "contribution_mm"),
            stated_bias_mm: stated_bias(effects),
            effects: effects.iter().map(told).collect(),
            second_order: second_order(&inputs, &model)?,
            monte_carlo: self.work.part(self.asked.units(), |watch| {
                self.asked.trials(&inputs, &model, &evaluation, &expanded, watch)
            })?,
        })
    }
}

fn told(effect: &Told) -> EffectReport {
    let Told { source, mean_mm, treatment, path } = effect.clone();
    EffectReport { source, mean_mm, treatment, path }
}

/// Sum of the means that were not taken off.
fn stated_bias(effects: &[Told]) -> Option<f64> {
    let stated = effects.iter().filter(|e| e.treatment == Treatment::Stated).map(|e| e.mean_mm);
    stated.reduce(|sum, next| sum + next)
}

fn second_order(inputs: &Inputs, model: &Model) -> Result<SecondOrderReport, Error> {
    let second = inputs.second_order(|x| model.jet(x))?;
    // an input of the model is the error of a source: 0 at its estimate
    let at_estimates = model.value(&vec![0.0; model.inputs().len()]);
    Ok(SecondOrderReport {
        mean_mm: at_estimates + second.shift_of_mean,
        shift_of_mean_mm: second.shift_of_mean,
        standard_uncertainty_mm: second.standard_uncertainty,
    })
}

impl Asked {
    /// Trials of one value; without them it is one step.
    pub(super) fn units(&self) -> u64 {
        self.trials.as_ref().map_or(1, |run| run.trials.into())
    }

    fn trials(
        &self,
        inputs: &Inputs,
        model: &Model,
        first_order: &Evaluation<'_>,
        expanded: &Expanded,
        watch: Watch<'_>,
    ) -> Result<Option<MonteCarloReport>, Error> {
        let Some(run) = &self.trials else {
            return Ok(None);
        };
        let monte_carlo = MonteCarlo::of_model(inputs, model, u64::from(run.seed)).watched(watch);
        let summary = monte_carlo.run(u64::from(run.trials), self.probability)?;
        let validation = summary.validate(first_order, expanded, Coverage::Symmetric, run.digits)?;
        Ok(Some(MonteCarloReport {
            seed: run.seed,
            trials: run.trials,
            mean_mm: summary.mean,
            standard_deviation_mm: summary.standard_deviation,
            symmetric: interval(summary.symmetric),
            shortest: interval(summary.shortest),
            validation: validated(validation),
        }))
    }
}

fn interval(of: Interval) -> IntervalReport {
    IntervalReport { lower_mm: of.lower, upper_mm: of.upper }
}

fn validated(validation: Validation) -> ValidationReport {
    ValidationReport {
        lower_difference_mm: validation.lower_difference,
        upper_difference_mm: validation.upper_difference,
        tolerance_mm: validation.tolerance,
        validated: validation.validated,
    }
}
