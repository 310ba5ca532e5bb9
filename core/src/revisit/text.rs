//! The report on a revisit as text of at most 100 columns and as Markdown.

use super::report::{Change, CylinderChange, Forecast, RevisitReport};
use crate::report::{Page, aligned, escaped, markdown, short, warned};

impl RevisitReport {
    /// The report as text.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut page = Page::default();
        self.head().iter().for_each(|line| page.line("", line));
        for cylinder in &self.cylinders {
            page.gap();
            page.line("", &format!("CYLINDER {}", cylinder.number));
            aligned(&rows(cylinder)).iter().for_each(|row| page.line("  ", row));
            cylinder.lines().iter().for_each(|line| page.line("  ", line));
        }
        page.list("SUSPICIOUS", &warned(&self.suspicious));
        page.list("TO KNOW", &warned(&self.warnings));
        page.out
    }

    /// The report as Markdown.
    #[must_use]
    pub fn to_markdown(&self) -> String {
        let head = self.head();
        let (title, rest) = head.split_first().map_or(("", [].as_slice()), |(t, rest)| (t.as_str(), rest));
        let mut out = format!("# {}\n\n", escaped(title));
        rest.iter().for_each(|line| out.push_str(&format!("{}\n", escaped(line))));
        for cylinder in &self.cylinders {
            out.push_str(&format!("\n## Cylinder {}\n\n", cylinder.number));
            out.push_str(&markdown(&rows(cylinder)));
            let lines = cylinder.lines();
            out.push_str(if lines.is_empty() { "" } else { "\n" });
            lines.iter().for_each(|line| out.push_str(&format!("- {}\n", escaped(line))));
        }
        for (title, warnings) in [("Suspicious", &self.suspicious), ("To know", &self.warnings)] {
            let lines = warned(warnings);
            if !lines.is_empty() {
                out.push_str(&format!("\n## {title}\n\n"));
                lines.iter().for_each(|line| out.push_str(&format!("- {}\n", escaped(line))));
            }
        }
        out
    }

    fn head(&self) -> Vec<String> {
        let shared = match self.same_gauges.as_slice() {
            [] => "No gauge has one name and one calibration date in both jobs: all errors were taken as independent.".to_owned(),
            gauges => format!(
                "Gauges with one calibration date in both jobs: {}. The error of their scale at one indication and that of their standard were taken as the same, all others as independent.",
                gauges.join(", ")
            ),
        };
        vec![
            self.engine.clone(),
            format!("job {} of {}, after job {} of {}", self.now.id, self.now.date, self.previous.id, self.previous.date),
            format!(
                "{} h between them, standard uncertainty {} h",
                short(self.hours.run_h),
                short(self.hours.standard_uncertainty_h)
            ),
            "Sizes in mm at 20 C. A change is the value now less the one before; \"+/-\" is two standard uncertainties, or k where few degrees of freedom are behind them.".to_owned(),
            shared,
        ]
    }
}

impl CylinderChange {
    fn lines(&self) -> Vec<String> {
        let of_bore = self.bore_size.iter().map(|change| {
            let share = change.rate_of_bore_per_1000_h * 100.0;
            format!("The bore changes by {share:+.4} % of its nominal size in 1000 h.")
        });
        let forecasts = self.forecasts.iter().map(Forecast::line);
        let missing = self.missing.iter().map(|m| format!("Not compared: {m}."));
        of_bore.chain(forecasts).chain(missing).collect()
    }
}

impl Forecast {
    fn line(&self) -> String {
        let of = self.of.spoken();
        match (self.limit_mm, self.hours, self.lower_hours.zip(self.upper_hours)) {
            (Some(limit), Some(hours), Some((lower, upper))) => format!(
                "Limit of the {of}, {limit} mm: reached in {hours:.0} h, interval {lower:.0} to {upper:.0} h, if it goes on as before."
            ),
            _ => format!("Limit of the {of}: {}.", self.reason.as_deref().unwrap_or_default()),
        }
    }
}

/// The changes of a cylinder, heads first; no rows where nothing was compared.
fn rows(cylinder: &CylinderChange) -> Vec<Vec<String>> {
    let row = |name: String, change: &Change| {
        let mark = if change.significant { "" } else { "not significant" };
        vec![
            name,
            format!("{:.4}", change.previous_mm),
            format!("{:.4}", change.now_mm),
            format!("{:+.4}", change.change_mm),
            format!("{:.4}", change.expanded_uncertainty_mm),
            format!("{:+.4}", change.rate_mm_per_1000_h),
            format!("{:.4}", change.rate_expanded_uncertainty_mm_per_1000_h),
            mark.to_owned(),
        ]
    };
    let bore = cylinder
        .bore_places
        .iter()
        .map(|p| row(format!("bore {} mm, {} deg", p.depth_mm, p.axis_deg), &p.change));
    let size = cylinder.bore_size.iter().map(|change| row("bore size".to_owned(), change));
    let piston = cylinder
        .piston_places
        .iter()
        .map(|p| row(format!("piston {} mm, {} deg", p.height_mm, p.angle_deg), &p.change));
    let clearance = cylinder.bench_clearance.iter().map(|change| row("clearance".to_owned(), change));
    let told: Vec<Vec<String>> = bore.chain(size).chain(piston).chain(clearance).collect();
    let heads = ["", "before", "now", "change", "+/-", "per 1000 h", "+/-", ""].map(str::to_owned).to_vec();
    match told.is_empty() {
        true => Vec::new(),
        false => core::iter::once(heads).chain(told).collect(),
    }
}
