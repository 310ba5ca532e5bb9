//! The report on a stack as text of at most 100 columns and as Markdown: the result in words, and the contributors as a table.

use super::Method;
use super::report::{EstimateReport, SensitivityReport, SettledReport, ShareReport, StackReport};
use crate::report::{Page, aligned, escaped, markdown, short, worked};

/// Most bins of a histogram that are told.
const MOST_BINS: usize = 40;

/// A table, its heads first.
type Table = Vec<Vec<String>>;

impl StackReport {
    /// The report as text.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut page = Page::default();
        page.line("", &self.name);
        self.told(&mut page, "");
        if let Some(working) = &self.working {
            page.working(working);
        }
        page.out
    }

    /// The report as Markdown.
    #[must_use]
    pub fn to_markdown(&self) -> String {
        let mut out = format!("# {}\n\n{}", escaped(&self.name), self.section());
        if let Some(working) = &self.working {
            out.push_str(&worked(working));
        }
        out
    }

    /// Everything below its name as text.
    pub(crate) fn told(&self, page: &mut Page, indent: &str) {
        for paragraph in self.paragraphs() {
            paragraph.iter().for_each(|line| page.line(indent, line));
            page.gap();
        }
        for (k, table) in self.tables().iter().enumerate() {
            if k > 0 {
                page.gap();
            }
            aligned(table).iter().for_each(|line| page.line(indent, line));
        }
    }

    /// Everything below its name as Markdown.
    pub(crate) fn section(&self) -> String {
        let mut out = String::new();
        for line in self.paragraphs().iter().flatten() {
            out.push_str(&format!("- {}\n", escaped(line)));
        }
        for table in self.tables() {
            out.push('\n');
            out.push_str(&markdown(&table));
        }
        out
    }

    fn paragraphs(&self) -> Vec<Vec<String>> {
        let mut first = self.head();
        first.extend(self.published_lines());
        first.extend(self.propagation_lines());
        let all = [first, self.limit_lines(), self.trial_lines(), self.drawn_lines()];
        all.into_iter().filter(|lines| !lines.is_empty()).collect()
    }

    fn head(&self) -> Vec<String> {
        let mut lines: Vec<String> = self.note.iter().cloned().collect();
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
        let mut lines =
            vec![format!("limits: lower {lower}, upper {upper}; the worst case {worst} within them")];
        if let Some(of) = &self.exact {
            let by =
                |method: Option<Method>| method.map_or_else(String::new, |m| format!(" (by {})", m.spoken()));
            lines.push(format!(
                "outside, exactly: {} ppm; below {}{}, above {}{}",
                short(of.ppm),
                short(of.below),
                by(of.below_method),
                short(of.above),
                by(of.above_method)
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
            format!("trials: {} of {} points, runs: {}, seed {}", of.trials, points, of.runs, of.seed),
            format!(
                "mean {}, standard deviation {}, {} % within {}",
                self.with_unit(of.mean.value),
                self.with_unit(of.standard_deviation),
                short(of.probability * 100.0),
                self.span(of.interval.lower, of.interval.upper)
            ),
        ];
        lines.extend(of.settled.as_ref().map(|settled| self.settled(settled)));
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

    fn settled(&self, of: &SettledReport) -> String {
        let how = match of.settled {
            true => format!("settled after {} sequences", of.sequences),
            false => format!("not settled after {} sequences, the trials ran out", of.sequences),
        };
        let digits = if of.digits == 1 { "1 digit" } else { "2 digits" };
        let tolerance = self.with_unit(of.tolerance);
        format!("to {digits} of the standard deviation, numerical tolerance {tolerance}: {how}")
    }

    /// What is in the data to be drawn.
    fn drawn_lines(&self) -> Vec<String> {
        let mut lines = Vec::new();
        let mut tell = |what: &str, sizes: &[f64], count: usize| {
            if let (Some(first), Some(last)) = (sizes.first(), sizes.last()) {
                lines.push(format!("to draw: {count} {what} from {}", self.span(*first, *last)));
            }
        };
        if let Some(of) = &self.curve {
            tell("points of the density", &of.sizes, of.sizes.len());
        }
        if let Some(of) = &self.histogram {
            tell("bins of a histogram", &of.edges, of.edges.len().saturating_sub(1));
        }
        lines
    }

    fn tables(&self) -> Vec<Table> {
        let mut tables = vec![self.contributors()];
        tables.extend(self.sensitivities());
        tables.extend(self.bins());
        tables
    }

    fn contributors(&self) -> Table {
        let row = |s: &ShareReport| {
            [
                s.name.clone(),
                s.sensitivity.map_or_else(String::new, short),
                short(s.standard_deviation),
                format!("{:.1} %", s.share * 100.0),
            ]
        };
        table(["contributor", "sensitivity", "standard deviation", "share"], self.shares.iter().map(row))
    }

    /// What a tenth more of each tolerance does, to first order.
    fn sensitivities(&self) -> Option<Table> {
        let of = self.exact.as_ref().filter(|of| !of.sensitivities.is_empty())?;
        let row = |s: &SensitivityReport| {
            let tenth = short(s.ppm * s.tolerance / 10.0);
            [s.name.clone(), short(s.tolerance), short(s.ppm), tenth]
        };
        let heads = ["contributor", "tolerance", "ppm per unit of it", "ppm for a tenth more"];
        Some(table(heads, of.sensitivities.iter().map(row)))
    }

    /// A histogram of few bins.
    fn bins(&self) -> Option<Table> {
        let of = self.histogram.as_ref().filter(|of| of.edges.len() <= MOST_BINS + 1)?;
        let counts = self.monte_carlo.as_ref().and_then(|m| m.histogram.as_ref());
        let ends = of.edges.iter().zip(of.edges.iter().skip(1));
        let row = |(k, (from, to)): (usize, (&f64, &f64))| {
            let exact = of.probabilities.get(k).map_or_else(String::new, |p| short(*p));
            let count = counts.and_then(|c| c.counts.get(k)).map_or_else(String::new, u64::to_string);
            [short(*from), short(*to), exact, count]
        };
        Some(table(["above", "up to", "exact probability", "trials"], ends.enumerate().map(row)))
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

/// A table of these rows, without columns that are empty in all of them.
fn table(heads: [&str; 4], rows: impl Iterator<Item = [String; 4]>) -> Table {
    let rows: Vec<[String; 4]> = rows.collect();
    let told = |k: usize| rows.iter().any(|row| row.get(k).is_some_and(|cell| !cell.is_empty()));
    let told: Vec<bool> = (0..heads.len()).map(told).collect();
    let kept = |row: &[String; 4]| -> Vec<String> {
        row.iter().zip(&told).filter(|(_, told)| **told).map(|(cell, _)| cell.clone()).collect()
    };
    core::iter::once(&heads.map(str::to_owned)).chain(&rows).map(kept).collect()
}
