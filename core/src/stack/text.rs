//! The report on a stack as text: the result in words, and the contributors as a table.

use super::report::{EstimateReport, StackReport};
use crate::report::{aligned, short};

impl StackReport {
    /// The report as text.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut lines = self.head();
        lines.extend(self.published_lines());
        lines.extend(self.propagation_lines());
        lines.extend(self.limit_lines());
        lines.extend(self.trial_lines());
        lines.push(String::new());
        lines.extend(self.table());
        lines.join("\n") + "\n"
    }

    fn head(&self) -> Vec<String> {
        let mut lines = vec![self.name.clone()];
        lines.extend(self.note.clone());
        match &self.formula {
            Some(formula) => {
                lines.push(format!("formula: {}", formula.split_whitespace().collect::<Vec<_>>().join(" ")))
            }
            None => lines.push(format!("stack: {}", self.kind.replace('_', " "))),
        }
        lines.push(format!("nominal: {}", self.with_unit(self.nominal)));
        let worst = &self.worst_case;
        let proof = match worst.proof {
            "subdivision" => {
                format!(", nothing lies outside {}", self.span(worst.lower_bound, worst.upper_bound))
            }
            "monotone" => ", at two corners of the limits".to_owned(),
            _ => String::new(),
        };
        lines.push(format!("worst case: {}{proof}", self.span(worst.lower, worst.upper)));
        lines.push(format!(
            "mean: {}, standard deviation {}",
            self.with_unit(self.mean),
            self.with_unit(self.standard_deviation)
        ));
        lines
    }

    fn published_lines(&self) -> Vec<String> {
        let Some(of) = &self.published else { return Vec::new() };
        let forms = [
            ("root-sum-square", &of.root_sum_square),
            ("Bender's 1.5", &of.bender),
            ("modified root-sum-square", &of.modified),
        ];
        forms.iter().map(|(name, of)| format!("{name}: {}", self.span(of.lower, of.upper))).collect()
    }

    fn propagation_lines(&self) -> Vec<String> {
        let Some(of) = &self.propagation else { return Vec::new() };
        let shape = |value: Option<f64>| value.map_or_else(|| "not computed".to_owned(), short);
        vec![
            format!(
                "to first order: mean {}, standard deviation {}",
                self.with_unit(of.first_order_mean),
                self.with_unit(of.first_order_standard_deviation)
            ),
            format!(
                "to second order: shift of the mean {}, skewness {}, excess kurtosis {}",
                self.with_unit(of.shift_of_mean),
                shape(of.skewness),
                shape(of.excess_kurtosis)
            ),
        ]
    }

    fn limit_lines(&self) -> Vec<String> {
        let Some(limits) = &self.limits else { return Vec::new() };
        let limit = |value: Option<f64>| value.map_or_else(|| "none".to_owned(), |v| self.with_unit(v));
        let worst = if limits.worst_case_within { "is" } else { "is not" };
        let (lower, upper) = (limit(limits.lower), limit(limits.upper));
        let mut lines = vec![
            String::new(),
            format!("limits: lower {lower}, upper {upper}; the worst case {worst} within them"),
        ];
        if let Some(of) = &self.exact {
            lines.push(format!(
                "outside, exactly: {} ppm; below {}, above {}",
                short(of.ppm),
                short(of.below),
                short(of.above)
            ));
            if let (Some(cp), Some(cpk)) = (of.cp, of.cpk) {
                lines.push(format!("Cp {}, Cpk {}", short(cp), short(cpk)));
            }
        }
        lines
    }

    fn trial_lines(&self) -> Vec<String> {
        let Some(of) = &self.monte_carlo else { return Vec::new() };
        let points = of.points.spoken();
        let mut lines = vec![
            String::new(),
            format!("trials: {} of {} points, runs: {}, seed {}", of.trials, points, of.runs, of.seed),
            format!(
                "mean {}, standard deviation {}, {} % within {}",
                self.with_unit(of.mean.value),
                self.with_unit(of.standard_deviation),
                short(of.probability * 100.0),
                self.span(of.interval.lower, of.interval.upper)
            ),
        ];
        let confidence = short(of.confidence * 100.0);
        let estimates = [
            ("below the lower limit", &of.below),
            ("above the upper limit", &of.above),
            ("below the lower limit, by importance sampling", &of.rare_below),
            ("above the upper limit, by importance sampling", &of.rare_above),
        ];
        let line = |name: &str, e: &EstimateReport| {
            format!(
                "{name}: {}; with {confidence} % confidence {} to {}",
                short(e.value),
                short(e.lower),
                short(e.upper)
            )
        };
        lines.extend(estimates.iter().filter_map(|(name, e)| e.as_ref().map(|e| line(name, e))));
        lines
    }

    fn table(&self) -> Vec<String> {
        let heads = ["contributor", "sensitivity", "standard deviation", "share"].map(str::to_owned);
        let rows = self.shares.iter().map(|s| {
            [
                s.name.clone(),
                s.sensitivity.map_or_else(String::new, short),
                short(s.standard_deviation),
                format!("{:.1} %", s.share * 100.0),
            ]
        });
        aligned(&core::iter::once(heads).chain(rows).collect::<Vec<_>>())
    }

    fn span(&self, lower: f64, upper: f64) -> String {
        format!("{} to {}", short(lower), self.with_unit(upper))
    }

    fn with_unit(&self, value: f64) -> String {
        match self.unit.as_deref() {
            None | Some("1") => short(value),
            Some(unit) => format!("{} {unit}", short(value)),
        }
    }
}
