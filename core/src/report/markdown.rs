//! The report as Markdown.

use super::data::{CylinderReport, Report};
use super::text::{arguments, block_lines, conventions, headline, limits, notes, sentences, unit, values};
use super::{plan_text, work_order};
use crate::calc::Working;
use crate::decision::Decision;
use core::fmt::Write;

impl Report {
    /// The report as Markdown (CommonMark with tables).
    #[must_use]
    pub fn to_markdown(&self) -> String {
        let mut out = String::new();
        let mut put = |line: &str| {
            out.push_str(line);
            out.push('\n');
        };
        put(&format!("# {}\n", escaped(&self.engine.name)));
        put(&format!("Job {}, {}\n", escaped(&self.job.id), escaped(&self.job.date)));
        if let Some(note) = &self.job.note {
            put(&format!("{}\n", escaped(note)));
        }
        put(&format!("{}\n", conventions(self)));
        put(&format!("## The engine: {}\n", self.block.verdict.outcome.word()));
        for line in block_lines(self) {
            put(&format!("- {}", escaped(&line)));
        }
        for cylinder in &self.cylinders {
            put(&section(cylinder));
        }
        for stack in &self.stacks {
            put(&format!("\n## Stack: {}\n\n{}", escaped(&stack.name), stack.section().trim_end()));
        }
        for (title, lines) in self.plan.iter().flat_map(plan_text::sections) {
            put(&format!("\n## {title}\n"));
            lines.iter().for_each(|line| put(&format!("- {}", escaped(line))));
        }
        if !self.work_order.is_empty() {
            put("\n## Work order\n");
        }
        for step in &self.work_order {
            let (what, under) = work_order::told(step);
            put(&format!("{}. {}", step.number, escaped(what.split_once(". ").map_or(&what, |(_, w)| w))));
            under.iter().for_each(|line| put(&format!("   - {}", escaped(line))));
        }
        let notes = notes(self);
        for (title, items) in [("To know", &notes), ("Take care", &self.cautions)] {
            if !items.is_empty() {
                put(&format!("\n## {title}\n"));
                items.iter().for_each(|item| put(&format!("- {}", escaped(item))));
            }
        }
        if let Some(working) = &self.working {
            put(&worked(working));
        }
        out
    }
}

fn section(cylinder: &CylinderReport) -> String {
    let mut out = format!("\n## Cylinder {}: {}\n\n", cylinder.number, headline(cylinder));
    let decisions: Vec<&Decision> = cylinder.decisions().collect();
    if !decisions.is_empty() {
        out.push_str(
            "| of | mm | standard uncertainty | limits | probability | result |\n|---|---|---|---|---|---|\n",
        );
        decisions.iter().for_each(|d| out.push_str(&row(d)));
        out.push('\n');
    }
    for sentence in sentences(cylinder) {
        let _ = writeln!(out, "- {}", escaped(&sentence));
    }
    out.truncate(out.trim_end().len());
    out
}

fn row(decision: &Decision) -> String {
    let number =
        |value: Option<f64>, digits: usize| value.map(|v| format!("{v:.digits$}")).unwrap_or_default();
    format!(
        "| {} | {} | {} | {} | {} | {} |\n",
        decision.of.spoken(),
        number(decision.value_mm, 4),
        number(decision.standard_uncertainty_mm, 4),
        limits(decision),
        number(decision.probability_of_conformity, 4),
        decision.result.word()
    )
}

pub(crate) fn worked(working: &Working) -> String {
    let values = values(working);
    let mut out = String::from("\n## Working\n");
    out.push_str("\n### read from the job, and constants\n\n");
    for input in &working.inputs {
        let typed = escaped(&format!("typed {:?} in {}", input.typed, input.path));
        let _ = writeln!(
            out,
            "- {}: `{} = {}`{}, {typed}",
            input.id,
            input.symbol,
            input.value,
            unit(&input.unit)
        );
    }
    for constant in &working.constants {
        let source = escaped(&constant.source);
        let (id, symbol, value) = (&constant.id, &constant.symbol, constant.value);
        let _ = writeln!(out, "- {id}: `{symbol} = {value}`{} ({source})", unit(&constant.unit));
    }
    let mut heading = "";
    for step in &working.steps {
        if step.of != heading {
            heading = &step.of;
            let _ = write!(out, "\n### {}\n\n", escaped(heading));
        }
        let _ = writeln!(
            out,
            "- {}: `{} = {}` with {} gives `{}`{} ({})",
            step.id,
            step.symbol,
            step.formula,
            escaped(&arguments(step, &values)),
            step.value,
            unit(&step.unit),
            escaped(&step.source)
        );
    }
    out
}

/// What was typed must not become markup, neither within a line nor at its beginning.
pub(crate) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.trim_start().chars() {
        match c {
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '&' => out.push_str("&amp;"),
            '\\' | '`' | '*' | '_' | '[' | ']' | '#' | '|' => out.extend(['\\', c]),
            c if c.is_control() => out.push(' '),
            c => out.push(c),
        }
    }
    let digits = out.chars().take_while(char::is_ascii_digit).count();
    let marker = out.get(digits..).and_then(|rest| rest.chars().next());
    match marker {
        Some('-' | '+' | '=') if digits == 0 => out.insert(0, '\\'),
        Some('.' | ')') if digits > 0 => out.insert(digits, '\\'),
        _ => {}
    }
    out
}
