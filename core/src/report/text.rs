//! The report as text of at most 100 columns, to be read aloud. No colour is needed to understand it.

use super::data::{ClearanceReport, CylinderReport, MeasuredValue, Report, RunningReport};
use crate::calc::{Step, Working};
use crate::decision::finding::Finding;
use crate::decision::{Decision, Of, Rule, Verdict};
use std::collections::HashMap;

/// Widest line, in characters.
const WIDTH: usize = 100;

impl Report {
    /// The report as text.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut page = Page::default();
        page.line(
            "",
            &format!("{}   job {}   {}", self.engine.name, self.job.id, self.job.date),
        );
        if let Some(note) = &self.job.note {
            page.line("", note);
        }
        page.line("", &conventions(self));
        page.gap();
        page.line("", &format!("THE ENGINE: {}", self.block.verdict.outcome.word()));
        for line in block_lines(self) {
            page.line("  ", &line);
        }
        for cylinder in &self.cylinders {
            page.gap();
            page.line(
                "",
                &format!(
                    "CYLINDER {}: {}",
                    cylinder.number,
                    cylinder.verdict.outcome.word()
                ),
            );
            for sentence in sentences(cylinder) {
                page.line("  ", &sentence);
            }
        }
        page.list(
            "TO KNOW",
            &self
                .warnings
                .iter()
                .map(|w| format!("{} ({})", w.text, w.path))
                .collect::<Vec<_>>(),
        );
        page.list("TAKE CARE", &self.cautions);
        if let Some(working) = &self.working {
            page.working(working);
        }
        page.out
    }
}

#[derive(Default)]
struct Page {
    out: String,
}

impl Page {
    fn gap(&mut self) {
        self.out.push('\n');
    }

    /// A paragraph, folded at [`WIDTH`]; what follows the first line is indented a little more.
    fn line(&mut self, indent: &str, text: &str) {
        let mut column = indent.chars().count();
        self.out.push_str(indent);
        let mut first = true;
        for word in text.split(' ') {
            let width = word.chars().count();
            if !first && column + 1 + width > WIDTH {
                self.out.push('\n');
                self.out.push_str(indent);
                self.out.push_str("    ");
                column = indent.chars().count() + 4;
            } else if !first {
                self.out.push(' ');
                column += 1;
            }
            column = self.word(word, column);
            first = false;
        }
        self.out.push('\n');
    }

    /// One word; one that is wider than a line is cut into pieces.
    fn word(&mut self, word: &str, mut column: usize) -> usize {
        for c in word.chars() {
            if column >= WIDTH {
                self.out.push_str("\n      ");
                column = 6;
            }
            // what was typed may hold line breaks and other controls
            self.out.push(if c.is_control() { ' ' } else { c });
            column += 1;
        }
        column
    }

    fn list(&mut self, title: &str, items: &[String]) {
        if items.is_empty() {
            return;
        }
        self.gap();
        self.line("", title);
        for item in items {
            self.line("  ", &format!("- {item}"));
        }
    }

    fn working(&mut self, working: &Working) {
        let values = values(working);
        self.gap();
        self.line("", "WORKING");
        let mut heading = "";
        for step in &working.steps {
            if step.of != heading {
                heading = &step.of;
                self.gap();
                self.line("  ", heading);
            }
            self.line(
                "    ",
                &format!("{}  {} = {}", step.id, step.symbol, step.formula),
            );
            self.line("        ", &format!("with {}", arguments(step, &values)));
            self.line(
                "        ",
                &format!("= {} {} ({})", step.value, step.unit, step.source),
            );
        }
    }
}

/// The value behind every id of a working.
pub(super) fn values(working: &Working) -> HashMap<&str, f64> {
    let inputs = working.inputs.iter().map(|i| (i.id.as_str(), i.value));
    let constants = working.constants.iter().map(|k| (k.id.as_str(), k.value));
    let steps = working.steps.iter().map(|s| (s.id.as_str(), s.value));
    inputs.chain(constants).chain(steps).collect()
}

pub(super) fn arguments(step: &Step, values: &HashMap<&str, f64>) -> String {
    let one = |(symbol, id): &(String, String)| match values.get(id.as_str()) {
        Some(value) => format!("{symbol} = {value} ({id})"),
        None => format!("{symbol} = {id}"),
    };
    step.arguments.0.iter().map(one).collect::<Vec<_>>().join(", ")
}

pub(super) fn conventions(report: &Report) -> String {
    let rule = match report.conventions.rule {
        Rule::SimpleAcceptance => "simple acceptance, the uncertainty is stated and not used".to_owned(),
        Rule::Proven => "conformity must be proven, ISO 14253-1 at 95 %".to_owned(),
        Rule::ConformanceProbability => {
            format!(
                "probability of conformity at least {} %, JCGM 106",
                report.conventions.at_least * 100.0
            )
        }
    };
    format!(
        "Sizes in mm at 20 C. Clearances are over the diameter. \"Give or take\" is two standard uncertainties. Rule: {rule}."
    )
}

pub(super) fn block_lines(report: &Report) -> Vec<String> {
    let counts: Vec<String> = report
        .block
        .counts
        .iter()
        .map(|(outcome, n)| format!("{n} {outcome}"))
        .collect();
    let mut out = vec![format!("Cylinders: {}.", counts.join(", "))];
    let stale: Vec<&str> = report
        .gauges
        .iter()
        .filter(|g| g.calibration == "overdue")
        .map(|g| g.name.as_str())
        .collect();
    if !stale.is_empty() {
        out.push(format!("Out of calibration: {}.", stale.join(", ")));
    }
    out.extend(report.block.verdict.reasons.iter().map(|r| format!("- {r}")));
    out
}

/// What there is to say of a cylinder, a sentence each.
pub(super) fn sentences(cylinder: &CylinderReport) -> Vec<String> {
    let mut out = Vec::new();
    if let Some(piston) = &cylinder.piston {
        let judged = decided(&piston.decisions, Of::PistonSize);
        let sizes = piston
            .sizes
            .iter()
            .map(|s| (s, s.bare_size.as_ref().unwrap_or(&s.size)));
        for (place, size) in sizes {
            let surface = match (&place.bare_size, place.over.word()) {
                (Some(_), _) => ", coating taken off",
                (None, "coating") => ", over the coating",
                _ => "",
            };
            let at = format!(
                "{} mm from the {}, {} deg",
                place.height_mm,
                place.datum.spoken(),
                place.angle_deg
            );
            out.push(format!(
                "The piston measures {}{surface} ({at}).",
                give_or_take(size)
            ));
        }
        out.extend(
            piston
                .ovality
                .as_ref()
                .map(|o| format!("Its ovality is {}.", give_or_take(o))),
        );
        out.extend(judged.map(|d| format!("Piston size: {}.", told(d))));
        out.extend(piston.findings.iter().map(|f| finding(f, "piston")));
    }
    if let Some(bore) = &cylinder.bore {
        out.extend(
            bore.size
                .as_ref()
                .map(|s| format!("The bore measures {}.", give_or_take(s))),
        );
        let forms = [(&bore.taper, "taper"), (&bore.out_of_round, "out-of-round")];
        out.extend(
            forms
                .iter()
                .filter_map(|(f, name)| Some(format!("Its {name} is {}.", give_or_take(f.as_ref()?)))),
        );
        out.extend(
            bore.decisions
                .iter()
                .map(|d| format!("{}: {}.", capital(&d.of.spoken()), told(d))),
        );
        out.extend(bore.findings.iter().map(|f| finding(f, "bore")));
    }
    if let Some(clearance) = &cylinder.clearance {
        out.extend(clearance_sentences(clearance));
    }
    out.extend(cylinder.missing.iter().map(|m| format!("Missing: {m}.")));
    out.extend(because(&cylinder.verdict));
    out
}

fn clearance_sentences(clearance: &ClearanceReport) -> Vec<String> {
    let mut out = Vec::new();
    out.extend(
        clearance
            .bench
            .as_ref()
            .map(|b| format!("Clearance on the bench is {}.", give_or_take(b))),
    );
    out.extend(
        decided(&clearance.decisions, Of::BenchClearance).map(|d| format!("Bench clearance: {}.", told(d))),
    );
    if let Some(running) = &clearance.running {
        out.push(running_sentence(running));
    }
    let margins = [Of::RunningMarginTight, Of::RunningMarginLoose];
    out.extend(margins.iter().filter_map(|of| {
        Some(format!(
            "{}: {}.",
            capital(&of.spoken()),
            told(decided(&clearance.decisions, *of)?)
        ))
    }));
    out.extend(clearance.note.clone());
    out
}

fn running_sentence(running: &RunningReport) -> String {
    let (tight, loose) = (&running.tight, &running.loose);
    let mut out = format!(
        "Running, free growth gives {:.3} mm (piston {} C, bore {} C) to {:.3} mm (piston {} C, bore {} C).",
        tight.clearance.value_mm,
        tight.piston_temperature_c,
        tight.bore_temperature_c,
        loose.clearance.value_mm,
        loose.piston_temperature_c,
        loose.bore_temperature_c
    );
    if let (Some(tight), Some(loose)) = (&tight.margin, &loose.margin) {
        out.push_str(&format!(
            " Against the original piston at the maker's least clearance that leaves {:.3} mm to {:.3} mm.",
            tight.value_mm, loose.value_mm
        ));
    }
    out
}

fn decided(decisions: &[Decision], of: Of) -> Option<&Decision> {
    decisions.iter().find(|d| d.of == of)
}

/// `conforms, limits 95.900 to 95.945 mm: inside by ...`
pub(super) fn told(decision: &Decision) -> String {
    format!(
        "{}{}: {}",
        decision.result.word(),
        limits(decision),
        decision.reason
    )
}

pub(super) fn limits(decision: &Decision) -> String {
    let at = match decision.reference_temperature_c {
        Some(t) if (t - crate::size::REFERENCE_TEMPERATURE_C).abs() > 0.0 => format!(" at {t} C"),
        _ => String::new(),
    };
    match (decision.lower_mm, decision.upper_mm) {
        (Some(low), Some(high)) => format!(", limits {low} to {high} mm{at}"),
        (Some(low), None) => format!(", at least {low} mm{at}"),
        (None, Some(high)) => format!(", at most {high} mm{at}"),
        (None, None) => String::new(),
    }
}

pub(super) fn give_or_take(value: &MeasuredValue) -> String {
    format!(
        "{:.4} mm, give or take {:.4}",
        value.value_mm, value.expanded_uncertainty_mm
    )
}

pub(super) fn finding(finding: &Finding, part: &str) -> String {
    let mut out = format!(
        "Seen on the {part}: {} {}, {}",
        finding.severity.word(),
        finding.what.spoken(),
        finding.place.spoken()
    );
    if let Some(note) = &finding.note {
        out.push_str(&format!(" ({note})"));
    }
    out.push_str(&format!(". Check next: {}.", finding.check_next));
    out
}

fn because(verdict: &Verdict) -> Vec<String> {
    let mut out = Vec::new();
    if verdict.outcome.word() != "reuse" {
        out.extend(verdict.reasons.iter().map(|r| format!("Because {r}.")));
    }
    out.extend(verdict.dominant.as_ref().map(|d| {
        format!(
            "Least certain in what decided: {} ({:.0} % of the variance; {}).",
            d.source,
            d.share * 100.0,
            d.path
        )
    }));
    out
}

fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars
        .next()
        .map(|first| first.to_uppercase().chain(chars).collect())
        .unwrap_or_default()
}
