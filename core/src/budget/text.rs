//! The report on a budget as text: the result in words, and the contributions as a table.

use super::report::{BudgetReport, ContributionReport};
use crate::report::{aligned, exponent_of, short};

/// Heads of the table of contributions.
const HEADS: [&str; 6] =
    ["source", "sensitivity", "standard uncertainty", "degrees of freedom", "contribution", "share"];

impl BudgetReport {
    /// The report as text.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut lines = self.head();
        lines.push(String::new());
        lines.extend(table(&self.contributions));
        lines.extend(self.second_order_lines());
        lines.extend(self.trial_lines());
        lines.extend(self.warnings.iter().map(|warning| format!("to know: {}", warning.text)));
        lines.join("\n") + "\n"
    }

    fn head(&self) -> Vec<String> {
        let expanded = &self.expanded;
        // a formula may stand on several lines
        let model = self.model.split_whitespace().collect::<Vec<_>>().join(" ");
        let mut lines = vec![self.name.clone()];
        lines.extend(self.note.clone());
        lines.push(format!("model: {model}"));
        lines.push(format!("estimate: {}", self.with_unit(self.estimate)));
        lines.push(format!("standard uncertainty: {}", self.with_unit(self.standard_uncertainty)));
        lines.push(format!("effective degrees of freedom: {}", degrees(self.dof)));
        lines.push(format!(
            "expanded uncertainty: {} at a coverage probability of {} %, coverage factor {} for {} degrees of freedom",
            self.with_unit(expanded.expanded_uncertainty),
            short(expanded.probability * 100.0),
            short(expanded.coverage_factor),
            degrees(expanded.dof),
        ));
        lines
    }

    fn second_order_lines(&self) -> Vec<String> {
        let Some(second) = &self.second_order else {
            return Vec::new();
        };
        let u = match second.standard_uncertainty {
            Some(u) => self.with_unit(u),
            None => "none, the variance would be negative".to_owned(),
        };
        let shift = self.with_unit(second.shift_of_mean);
        vec![String::new(), format!("to second order: standard uncertainty {u}; shift of the mean {shift}")]
    }

    fn trial_lines(&self) -> Vec<String> {
        let Some(run) = &self.monte_carlo else {
            return Vec::new();
        };
        let interval = |lower, upper| format!("{} to {}", self.with_unit(lower), self.with_unit(upper));
        let mut lines = vec![
            String::new(),
            format!(
                "Monte Carlo, {} trials: mean {}, standard deviation {}",
                run.trials,
                self.with_unit(run.mean),
                self.with_unit(run.standard_deviation)
            ),
            format!("symmetric coverage interval: {}", interval(run.symmetric.lower, run.symmetric.upper)),
            format!("shortest coverage interval: {}", interval(run.shortest.lower, run.shortest.upper)),
        ];
        if let Some(adaptive) = &run.adaptive {
            let settled = if adaptive.settled { "settled" } else { "not settled, the trials ran out" };
            lines.push(format!("to {} digits of the standard uncertainty: {settled}", adaptive.digits));
        }
        if let Some(validation) = &self.validation {
            let stands = if validation.validated { "stands" } else { "does not stand" };
            lines.push(format!("the result to first order {stands} against the trials"));
        }
        lines
    }

    fn with_unit(&self, value: f64) -> String {
        match &self.unit {
            Some(unit) => format!("{} {unit}", self.number(value)),
            None => self.number(value),
        }
    }

    /// To two places beyond the first digit of the uncertainty, or to six digits where that is more.
    fn number(&self, value: f64) -> String {
        let exponent = exponent_of(self.standard_uncertainty);
        let finer = exponent_of(value) - exponent >= 4 && value.abs() < 1e12;
        match usize::try_from(2 - exponent) {
            Ok(decimals) if finer && decimals < 16 => format!("{value:.decimals$}"),
            _ => short(value),
        }
    }
}

fn table(contributions: &[ContributionReport]) -> Vec<String> {
    let cells = |c: &ContributionReport| {
        [
            c.source.clone(),
            short(c.sensitivity),
            short(c.standard_uncertainty),
            degrees(c.dof),
            short(c.contribution),
            format!("{:.1} %", c.share * 100.0),
        ]
    };
    let heads = core::iter::once(HEADS.map(str::to_owned));
    aligned(&heads.chain(contributions.iter().map(cells)).collect::<Vec<_>>())
}

fn degrees(dof: Option<f64>) -> String {
    dof.map_or_else(|| "infinite".to_owned(), short)
}
