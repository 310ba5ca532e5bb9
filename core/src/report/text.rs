//! The report as text of at most 100 columns, to be read aloud. No colour is needed to understand it.

use super::data::{
    CylinderReport, MeasuredValue, PistonReport, Report, RunningReport, TargetReport, WindowReport,
};
use super::plan_text;
use super::work_order::{self, WorkStep};
use crate::calc::{Step, Text, Working};
use crate::decision::finding::{Disposition, Finding};
use crate::decision::{Decision, Of, Outcome, Rule, named};
use crate::job::Warning;
use crate::job::document::{PistonRecord, ProfileState, Surface};
use std::collections::HashMap;

/// Widest line, in characters.
pub(crate) const WIDTH: usize = 100;
/// Most causes of a finding that are named; a longer list is not listened to.
const MOST_CAUSES: usize = 5;

impl Report {
    /// The report as text.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut page = Page::default();
        page.line("", &format!("{}   job {}   {}", self.engine.name, self.job.id, self.job.date));
        if let Some(note) = &self.job.note {
            page.line("", note);
        }
        page.line("", &conventions(self));
        page.gap();
        page.line("", &format!("THE ENGINE: {}", self.block.verdict.outcome.word()));
        for line in block_lines(self) {
            page.line("  ", &format!("- {line}"));
        }
        for cylinder in &self.cylinders {
            page.gap();
            page.line("", &format!("CYLINDER {}: {}", cylinder.number, headline(cylinder)));
            for sentence in sentences(cylinder) {
                page.line("  ", &sentence);
            }
        }
        for stack in &self.stacks {
            page.gap();
            page.line("", &format!("STACK: {}", stack.name));
            stack.told(&mut page, "  ");
        }
        for (title, lines) in self.plan.iter().flat_map(plan_text::sections) {
            page.list(&title.to_uppercase(), &lines);
        }
        page.work_order(&self.work_order);
        page.list("TO KNOW", &notes(self));
        page.list("TAKE CARE", &self.cautions);
        if let Some(working) = &self.working {
            page.working(working);
        }
        page.out
    }
}

/// Lines of text at most [`WIDTH`] wide.
#[derive(Default)]
pub(crate) struct Page {
    pub(crate) out: String,
}

impl Page {
    pub(crate) fn gap(&mut self) {
        self.out.push('\n');
    }

    /// A paragraph, folded at [`WIDTH`]; what follows the first line is indented a little more.
    pub(crate) fn line(&mut self, indent: &str, text: &str) {
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

    pub(crate) fn list(&mut self, title: &str, items: &[String]) {
        if items.is_empty() {
            return;
        }
        self.gap();
        self.line("", title);
        for item in items {
            self.line("  ", &format!("- {item}"));
        }
    }

    fn work_order(&mut self, steps: &[WorkStep]) {
        if steps.is_empty() {
            return;
        }
        self.gap();
        self.line("", "WORK ORDER");
        for step in steps {
            let (what, under) = work_order::told(step);
            self.line("  ", &what);
            for line in under {
                self.line("      ", &line);
            }
        }
    }

    pub(crate) fn working(&mut self, working: &Working) {
        let values = values(working);
        self.gap();
        self.line("", "WORKING");
        self.gap();
        self.line("  ", "read from the job, and constants");
        for input in &working.inputs {
            let (id, symbol, value, unit) = (&input.id, &input.symbol, input.value, unit(&input.unit));
            self.line(
                "    ",
                &format!("{id}  {symbol} = {value}{unit}, typed {:?} in {}", input.typed, input.path),
            );
        }
        for constant in &working.constants {
            let (id, symbol, value, unit) =
                (&constant.id, &constant.symbol, constant.value, unit(&constant.unit));
            self.line("    ", &format!("{id}  {symbol} = {value}{unit} ({})", constant.source));
        }
        let mut heading = "";
        for step in &working.steps {
            if step.of != heading {
                heading = &step.of;
                self.gap();
                self.line("  ", heading);
            }
            self.line("    ", &format!("{}  {} = {}", step.id, step.symbol, step.formula));
            self.line("        ", &format!("with {}", arguments(step, &values)));
            self.line("        ", &format!("= {}{} ({})", step.value, unit(&step.unit), step.source));
        }
    }
}

/// A unit behind its number; a pure number has none.
pub(super) fn unit(unit: &str) -> String {
    if unit.is_empty() || unit == "1" { String::new() } else { format!(" {unit}") }
}

/// The value behind every id of a working.
pub(super) fn values(working: &Working) -> HashMap<&str, f64> {
    let inputs = working.inputs.iter().map(|i| (&*i.id, i.value));
    let constants = working.constants.iter().map(|k| (&*k.id, k.value));
    let steps = working.steps.iter().map(|s| (&*s.id, s.value));
    inputs.chain(constants).chain(steps).collect()
}

pub(super) fn arguments(step: &Step, values: &HashMap<&str, f64>) -> String {
    let one = |(symbol, id): &(Text, Text)| match values.get(&**id) {
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
            format!("probability of conformity at least {} %, JCGM 106", report.conventions.at_least * 100.0)
        }
        Rule::ExpandedGuardBand => {
            let share = |of: Option<f64>| of.unwrap_or(1.0);
            let (accept, reject) =
                (share(report.conventions.acceptance_guard), share(report.conventions.rejection_guard));
            format!(
                "guard bands of {accept} U for acceptance and {reject} U for rejection, U the expanded uncertainty, ASME B89.7.3.1 (1 U for both: ISO 14253-1:1998)"
            )
        }
        Rule::SimpleAcceptanceByRatio => {
            let least = report.conventions.ratio_at_least.unwrap_or_default();
            format!(
                "simple acceptance where the tolerance is at least {least} times the uncertainty interval 2 U, ASME B89.7.3.1"
            )
        }
    };
    let more = match few_degrees(report) {
        true => ", or k where few degrees of freedom are behind them",
        false => "",
    };
    format!(
        "Sizes in mm at 20 C. Clearances are over the diameter. \"Give or take\" is two standard uncertainties{more}. Rule: {rule}."
    )
}

pub(super) fn block_lines(report: &Report) -> Vec<String> {
    let counts: Vec<String> =
        report.block.counts.iter().map(|(outcome, n)| format!("{n} {outcome}")).collect();
    let mut out = vec![format!("Cylinders: {}.", counts.join(", "))];
    let gauges: Vec<String> =
        report.gauges.iter().map(|g| format!("{} ({})", g.name, g.calibration)).collect();
    out.push(format!("Gauges: {}.", gauges.join(", ")));
    out.extend(report.block.verdict.reasons.iter().cloned());
    out
}

/// The verdict of a cylinder, and what of it when the parts differ.
pub(super) fn headline(cylinder: &CylinderReport) -> String {
    let outcome = cylinder.verdict.outcome;
    let parts = [
        cylinder.piston.as_ref().map(|p| ("piston", p.verdict.outcome)),
        cylinder.bore.as_ref().map(|b| ("bore", b.verdict.outcome)),
    ];
    let parts: Vec<String> = parts
        .iter()
        .flatten()
        .filter(|_| outcome != Outcome::Reuse)
        .map(|(part, outcome)| format!("{part}: {}", outcome.word()))
        .collect();
    let cold_only = cylinder.clearance.as_ref().is_some_and(|c| c.bench.is_some() && c.running.is_none());
    let notes: Vec<String> =
        parts.into_iter().chain(cold_only.then(|| "judged cold only".to_owned())).collect();
    match notes.as_slice() {
        [] => outcome.word().to_owned(),
        notes => format!("{} ({})", outcome.word(), notes.join(", ")),
    }
}

/// What there is to say of a cylinder, a sentence each.
pub(super) fn sentences(cylinder: &CylinderReport) -> Vec<String> {
    let mut out = Vec::new();
    if let Some(piston) = &cylinder.piston {
        out.extend(piston_sentences(piston));
    }
    if let Some(bore) = &cylinder.bore {
        let of = |of: Of| decided(&bore.decisions, of);
        out.extend(judged("Bore", bore.size.as_ref(), of(Of::BoreSize)));
        out.extend(judged("Taper", bore.taper.as_ref(), of(Of::BoreTaper)));
        out.extend(judged("Out-of-round", bore.out_of_round.as_ref(), of(Of::BoreOutOfRound)));
        let from_target = || bore.places.iter().filter_map(|p| Some(p.from_target.as_ref()?.value_mm));
        if let (Some(low), Some(high)) = (from_target().reduce(f64::min), from_target().reduce(f64::max)) {
            out.push(format!("From the target profile {low:+.4} to {high:+.4} mm."));
        }
        out.extend(bore.findings.iter().map(finding));
    }
    if let Some(clearance) = &cylinder.clearance {
        let bench = decided(&clearance.decisions, Of::BenchClearance);
        out.extend(judged("Clearance on the bench", clearance.bench.as_ref(), bench));
        let smallest = decided(&clearance.decisions, Of::SmallestClearance);
        let against = clearance.smallest_from_target.as_ref();
        out.extend(judged(
            "Clearance at the smallest place of the bore",
            clearance.smallest.as_ref(),
            smallest.filter(|_| against.is_none()),
        ));
        out.extend(against.and_then(|_| {
            judged(
                "Clearance at the place smallest against the target profile, less what is intended there",
                against,
                smallest,
            )
        }));
        out.extend(clearance.running.as_ref().map(|r| running_sentence(r, &clearance.decisions)));
    }
    out.extend(cylinder.hot.iter().flat_map(crate::fit::sentences));
    out.extend(cylinder.findings.iter().map(finding));
    out.extend(because(cylinder));
    out
}

fn piston_sentences(piston: &PistonReport) -> Vec<String> {
    let decision = decided(&piston.decisions, Of::PistonSize);
    let mut out: Vec<String> = piston.record.iter().map(|r| record("this piston", r)).collect();
    for place in &piston.sizes {
        let (size, surface) = match (&place.bare_size, place.over) {
            (Some(bare), _) => (bare, ", coating subtracted"),
            (None, Surface::Coating) => (&place.size, ", over the coating"),
            (None, Surface::BareMetal) => (&place.size, ""),
        };
        let material = place.material.as_ref().map(|m| format!(", {m}")).unwrap_or_default();
        let at = format!(
            "{} deg, {} mm from the {}{surface}{material}",
            place.angle_deg,
            place.height_mm,
            place.datum.spoken()
        );
        out.push(format!("Piston {} ({at}).", give_or_take(size)));
    }
    out.extend(piston.ovality.as_ref().map(|o| format!("Ovality {}.", give_or_take(o))));
    out.extend(decision.map(|d| format!("Piston at its gauge point: {}.", told(d))));
    out.extend(piston.findings.iter().map(finding));
    out
}

/// A value and what was decided of it.
fn judged(name: &str, value: Option<&MeasuredValue>, decision: Option<&Decision>) -> Option<String> {
    let value = value.map(give_or_take);
    match (value, decision.map(told)) {
        (Some(value), Some(told)) => Some(format!("{name} {value}; {told}.")),
        (Some(value), None) => Some(format!("{name} {value}.")),
        (None, Some(told)) => Some(format!("{name}: {told}.")),
        (None, None) => None,
    }
}

fn running_sentence(running: &RunningReport, decisions: &[Decision]) -> String {
    let (tight, loose) = (&running.tight, &running.loose);
    let mut out = format!(
        "Running, free growth gives {:.3} mm (piston {} C, bore {} C) to {:.3} mm (piston {} C, bore {} C).",
        tight.clearance.value_mm,
        degrees(tight.piston_temperature_c),
        degrees(tight.bore_temperature_c),
        loose.clearance.value_mm,
        degrees(loose.piston_temperature_c),
        degrees(loose.bore_temperature_c)
    );
    let margins =
        [("tight", &tight.margin, Of::RunningMarginTight), ("loose", &loose.margin, Of::RunningMarginLoose)];
    let margins: Vec<String> = margins
        .iter()
        .filter_map(|(name, margin, of)| {
            let (margin, decision) = (margin.as_ref()?, decided(decisions, *of)?);
            Some(format!("{name} {:.3} mm ({})", margin.value_mm, decision.result.word()))
        })
        .collect();
    if let [tight, loose] = margins.as_slice() {
        out.push_str(&format!(
            " Room left against an original piston fitted at the maker's least clearance: {tight}, {loose}."
        ));
    }
    out
}

/// A temperature to a tenth of a degree, which is more than anybody knows of a running engine.
fn degrees(celsius: f64) -> String {
    let tenths = format!("{celsius:.1}");
    tenths.strip_suffix(".0").unwrap_or(&tenths).to_owned()
}

fn decided(decisions: &[Decision], of: Of) -> Option<&Decision> {
    decisions.iter().find(|d| d.of == of)
}

/// `allowed 95.900 to 95.945 mm: conforms`
fn told(decision: &Decision) -> String {
    let limits = limits(decision);
    let result = decision.result.word();
    match limits.is_empty() {
        true => result.to_owned(),
        false => format!("allowed {limits}: {result}"),
    }
}

pub(super) fn limits(decision: &Decision) -> String {
    let at = match decision.reference_temperature_c {
        Some(t) if (t - crate::size::REFERENCE_TEMPERATURE_C).abs() > 0.0 => format!(" at {t} C"),
        _ => String::new(),
    };
    let of = match decision.for_cylinders.as_slice() {
        [] => String::new(),
        cylinders => format!(" ({})", named(cylinders)),
    };
    match (decision.lower_mm, decision.upper_mm) {
        (Some(low), Some(high)) => format!("{} to {} mm{at}{of}", printed(low), printed(high)),
        (Some(low), None) => format!("{} mm or more{at}{of}", printed(low)),
        (None, Some(high)) => format!("up to {} mm{at}{of}", printed(high)),
        (None, None) => String::new(),
    }
}

/// A limit with at least three decimals, and all it has up to six.
fn printed(limit: f64) -> String {
    let full = format!("{limit:.6}");
    let kept = full.trim_end_matches('0');
    let decimals = kept.rsplit('.').next().map_or(0, str::len).max(3);
    format!("{limit:.decimals$}")
}

pub(crate) fn give_or_take(value: &MeasuredValue) -> String {
    let factor = value.dof.map(|_| format!(" (k = {:.2})", value.coverage_factor)).unwrap_or_default();
    format!("{:.4} mm, give or take {:.4}{factor}", value.value_mm, value.expanded_uncertainty_mm)
}

/// Does any size that was read have an uncertainty with finite degrees of freedom?
fn few_degrees(report: &Report) -> bool {
    let sizes = |c: &CylinderReport| {
        let piston = c.piston.iter().flat_map(|p| &p.sizes).any(|s| s.size.dof.is_some());
        piston || c.bore.iter().flat_map(|b| &b.places).any(|p| p.size.dof.is_some())
    };
    report.cylinders.iter().any(sizes)
}

fn finding(finding: &Finding) -> String {
    let mut out =
        format!("Seen: {} {}, {}", finding.severity.word(), finding.what.spoken(), finding.place.spoken());
    if let Some(note) = &finding.note {
        out.push_str(&format!(" ({note})"));
    }
    out.push_str(&format!(". Check next: {}.{}", finding.check_next, behind(finding)));
    out
}

/// What may be behind a finding, and what to ask; of one that asks for nothing, nothing.
fn behind(finding: &Finding) -> String {
    match (&finding.cause, finding.cause_found) {
        (Some(cause), _) => return format!(" Cause given: {cause}."),
        (None, Some(cause)) => return format!(" Cause found: {}.", cause.spoken()),
        (None, None) if finding.disposition == Disposition::Clean => return String::new(),
        (None, None) => {}
    }
    let mut causes: Vec<String> = Vec::new();
    for candidate in &finding.candidates {
        let cause = candidate.cause.spoken();
        if !causes.contains(&cause) {
            causes.push(cause);
        }
    }
    if causes.is_empty() {
        return " No known sign agrees with it.".to_owned();
    }
    if causes.len() > MOST_CAUSES {
        let others = causes.len() - MOST_CAUSES + 1;
        causes.truncate(MOST_CAUSES - 1);
        causes.push(format!("{others} others"));
    }
    let ask = match finding.ask.as_slice() {
        [] => String::new(),
        [only] => format!(" Ask: {}", lower(only.text)),
        [first, ..] => format!(" Ask first: {}", lower(first.text)),
    };
    let may_be = match causes.split_last() {
        Some((last, before)) if !before.is_empty() => format!("{} or {last}", before.join(", ")),
        _ => causes.concat(),
    };
    format!(" May be: {may_be}.{ask}")
}

/// A sentence within another.
fn lower(sentence: &str) -> String {
    let mut rest = sentence.chars();
    rest.next().map(|first| first.to_lowercase().chain(rest).collect()).unwrap_or_default()
}

/// What is known of a piston besides its sizes.
fn record(of: &str, record: &PistonRecord) -> String {
    let silicon = record.silicon.as_ref();
    let known = [
        record.make.map(|m| m.spoken()),
        silicon.map(|s| format!("{} ({})", s.class.spoken(), s.evidence.text())),
        record.skirt.map(|s| format!("{} skirt", s.spoken())),
        record.pin.map(|p| format!("pin: {}", p.spoken())),
    ];
    let known: Vec<String> = known.into_iter().flatten().collect();
    let known = if known.is_empty() { "nothing".to_owned() } else { known.join(", ") };
    format!("On record of {of}: {known}.")
}

fn because(cylinder: &CylinderReport) -> Vec<String> {
    let verdict = &cylinder.verdict;
    let mut out: Vec<String> = match verdict.outcome {
        Outcome::Reuse => cylinder.together().iter().map(|g| format!("To know: {}.", g.reason)).collect(),
        _ => verdict.reasons.iter().map(|r| format!("Because: {r}.")).collect(),
    };
    if let (Some(dominant), Some(of)) = (&verdict.dominant, verdict.decided_by) {
        let percent = dominant.share * 100.0;
        out.push(format!(
            "Least certain in the {}: {} ({percent:.0} % of its variance).",
            of.spoken(),
            dominant.source
        ));
    }
    if verdict.outcome == Outcome::NotProven {
        out.push("To settle it: measure again with less uncertainty, or ask whoever may decide.".to_owned());
    }
    out
}

/// Warnings as a reader sees them.
pub(crate) fn warned(warnings: &[Warning]) -> Vec<String> {
    warnings.iter().map(|w| format!("{} ({})", w.text, w.path)).collect()
}

/// What every cylinder says, once.
pub(super) fn notes(report: &Report) -> Vec<String> {
    let mut out = warned(&report.warnings);
    out.extend(report.engine.piston_record.as_ref().map(|r| record("the pistons", r)));
    out.extend(report.engine.target_profile.as_ref().map(target));
    out.extend(report.engine.windows.iter().map(window));
    let why = report.engine.may_not_be_machined.iter();
    out.extend(why.map(|why| format!("The bores may not be honed or bored: {why}.")));
    let cold = |c: &CylinderReport| c.clearance.as_ref()?.note.clone();
    let hot = |c: &CylinderReport| c.hot.iter().flat_map(|hot| hot.notes.clone()).collect::<Vec<_>>();
    let said = report.cylinders.iter().filter_map(cold).chain(report.cylinders.iter().flat_map(hot));
    for note in said {
        if !out.contains(&note) {
            out.push(note);
        }
    }
    out.extend(origins_of_limits(report));
    let origins =
        report.cylinders.iter().filter_map(|c| Some(&c.clearance.as_ref()?.running.as_ref()?.origin));
    out.extend(origins.take(1).map(|origin| format!("Running temperatures: {origin}")));
    out
}

fn target(target: &TargetReport) -> String {
    let said = match target.state {
        ProfileState::Cold => {
            "sizes, taper, out-of-round and clearances are those of the bore less the deviation that is intended at each depth"
        }
        ProfileState::Running => {
            "it is a running shape, so taper and the smallest clearance are not judged on the bench"
        }
    };
    format!("The bores have a target profile: {said}. Target profile: {}", target.origin)
}

fn window(window: &WindowReport) -> String {
    format!(
        "Window {}, {} to {} mm deep, {} to {} deg: the shape of the bore was not examined there.",
        window.what, window.from_depth_mm, window.to_depth_mm, window.from_angle_deg, window.to_angle_deg
    )
}

/// Where the limits of the decisions come from, each once.
fn origins_of_limits(report: &Report) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for cylinder in &report.cylinders {
        let margin = |d: &&Decision| matches!(d.of, Of::RunningMarginTight | Of::RunningMarginLoose);
        for decision in cylinder.decisions().filter(|d| !margin(d)) {
            let of = match decision.for_cylinders.as_slice() {
                [] => String::new(),
                cylinders => format!(" of {}", named(cylinders)),
            };
            let told = decision.origin.as_ref().map(|origin| format!("Limits{of}: {origin}"));
            out.extend(told.filter(|told| !out.contains(told)));
        }
    }
    out
}
