//! The report on a measurement as text of at most 100 columns.

use super::document::Treatment;
use super::report::{EffectReport, MeasurementReport, MonteCarloReport, Propagated};
use crate::report::{Page, warned};

impl MeasurementReport {
    /// The report as text.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut page = Page::default();
        page.line("", &format!("measurement {}   {}", self.measurement.id, self.measurement.date));
        if let Some(note) = &self.measurement.note {
            page.line("", note);
        }
        let percent = self.probability * 100.0;
        page.line("", &format!("Sizes at 20 C in mm; contributions in um; expanded at {percent} %."));
        for gauge in &self.gauges {
            let preset = gauge.preset.as_ref().map_or_else(String::new, |p| format!(", by preset {p}"));
            page.line("", &format!("{}: calibration {}{preset}", gauge.name, gauge.calibration));
        }
        for reading in &self.readings {
            page.gap();
            page.line("", &format!("{} ({}, with {})", reading.name, reading.what, reading.gauge));
            propagated(&mut page, &reading.result);
            reading.notes.iter().for_each(|note| page.line("  ", note));
        }
        for difference in &self.differences {
            page.gap();
            page.line(
                "",
                &format!("{} ({} less {})", difference.name, difference.larger, difference.smaller),
            );
            propagated(&mut page, &difference.result);
        }
        page.list("TO KNOW", &warned(&self.warnings));
        if let Some(working) = &self.working {
            page.working(working);
        }
        page.out
    }
}

fn propagated(page: &mut Page, result: &Propagated) {
    let um = |mm: f64| format!("{:.2} um", mm * 1000.0);
    page.line(
        "  ",
        &format!(
            "linear budget: {:.4}, u = {}, U = {} (k = {:.2})",
            result.value_mm,
            um(result.standard_uncertainty_mm),
            um(result.expanded_uncertainty_mm),
            result.coverage_factor
        ),
    );
    let second = &result.second_order;
    let u = second.standard_uncertainty_mm.map_or_else(|| "not defined".to_owned(), um);
    page.line("  ", &format!("second order: {:.4}, u = {u}", second.mean_mm));
    if let Some(run) = &result.monte_carlo {
        page.line("  ", &trials(run));
    }
    result.effects.iter().for_each(|effect| page.line("  ", &told(effect)));
    for line in &result.budget {
        let (contribution, share) = (line.contribution_mm * 1000.0, line.share * 100.0);
        page.line("    ", &format!("{contribution:+9.3} um {share:5.1} %  {}", line.source));
    }
}

fn trials(run: &MonteCarloReport) -> String {
    let stands = if run.validation.validated { "stands" } else { "does not stand" };
    format!(
        "{} trials: {:.4}, u = {:.2} um, {:.4} to {:.4}, shortest {:.4} to {:.4}; the linear budget {stands}",
        run.trials,
        run.mean_mm,
        run.standard_deviation_mm * 1000.0,
        run.symmetric.lower_mm,
        run.symmetric.upper_mm,
        run.shortest.lower_mm,
        run.shortest.upper_mm
    )
}

fn told(effect: &EffectReport) -> String {
    let done = match effect.treatment {
        Treatment::Corrected => "taken off",
        Treatment::Stated => "not taken off",
    };
    format!("{}: {:+.2} um on the mean, {done}", effect.source, effect.mean_mm * 1000.0)
}
