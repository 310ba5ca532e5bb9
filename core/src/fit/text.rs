//! The report on a hot fit as text: at most 100 columns.

use super::report::{
    BestPlaced, FitReport, FoundReport, HotReport, OnsetReport, PlaceReport, ReferenceReport, SurfaceReport,
};
use crate::report::{MeasuredValue, Page, give_or_take, warned};

impl FitReport {
    /// The report as text.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut page = Page::default();
        page.line("", &format!("hot fit {}   {}", self.fit.id, self.fit.date));
        if let Some(note) = &self.fit.note {
            page.line("", note);
        }
        page.line("", "Sizes in mm, temperatures in C; U is expanded at about 95 %.");
        page.gap();
        told(&mut page, &self.hot);
        page.list("TO KNOW", &warned(&self.warnings));
        page.list("CAUTION", &self.cautions);
        if let Some(working) = &self.working {
            page.working(working);
        }
        page.out
    }
}

/// A hot fit as text, for its own report and for that of a job.
pub(crate) fn told(page: &mut Page, hot: &HotReport) {
    page.line("", &format!("bench clearance at the gauge point: {}", stated(&hot.bench)));
    let at = &hot.gauge_point;
    page.line(
        "",
        &format!(
            "running clearance there: {}; thrust side {:.0} C, pin side {:.0} C, bore {:.0} C ({})",
            stated(&hot.running),
            at.thrust_c,
            at.pin_c,
            at.bore_c,
            hot.origin
        ),
    );
    hot.surfaces.iter().for_each(|surface| told_surface(page, surface));
    if let Some(reference) = &hot.reference {
        told_reference(page, reference);
    }
    page.gap();
    page.line("", "How far the temperatures can rise");
    hot.onset.iter().for_each(|onset| page.line("  ", &told_onset(onset)));
    hot.found.iter().for_each(|found| page.line("  ", &told_found(found)));
    page.list("NOTES", &hot.notes);
}

fn smallest_of(surface: &SurfaceReport) -> f64 {
    surface.smallest.value_mm
}

/// What a cylinder of a job says of its hot fit, a sentence each.
pub(crate) fn sentences(hot: &HotReport) -> Vec<String> {
    let mut out = Vec::new();
    let tighter = |a, b| if smallest_of(b) < smallest_of(a) { b } else { a };
    if let Some(tightest) = hot.surfaces.iter().reduce(tighter) {
        let overlaps =
            if tightest.overlap.is_some() { ": free growth overlaps, which is no verdict" } else { "" };
        out.push(format!(
            "Running, the smallest clearance anywhere, on one side, is {} on the {}, {}{overlaps}.",
            give_or_take(&tightest.smallest),
            tightest.name,
            place(&tightest.place)
        ));
    }
    out.push(match &hot.reference {
        Some(reference) => format!(
            "Room left against an original piston fitted at the maker's least clearance: where the skirt is tightest {}, on one side; at the gauge point {}, over the diameter. Below 0 it is tighter.",
            give_or_take(&reference.smallest_margin),
            give_or_take(&reference.margin)
        ),
        None => "There is no least clearance of the maker to compare the running fit with: it asks for judgement.".to_owned(),
    });
    out.extend(hot.onset.iter().map(|onset| format!("Hotter, {}.", told_onset(onset))));
    out
}

fn told_surface(page: &mut Page, surface: &SurfaceReport) {
    page.gap();
    page.line("", &surface.name);
    let smallest = &surface.smallest;
    page.line(
        "  ",
        &format!("smallest clearance, on one side: {}, {}", stated(smallest), place(&surface.place)),
    );
    if let Some(dominant) = &smallest.dominant {
        page.line(
            "  ",
            &format!("most of its uncertainty: {} ({:.0} %)", dominant.source, dominant.share * 100.0),
        );
    }
    page.line("  ", &best_placed(&surface.best_placed));
    if let Some(overlap) = &surface.overlap {
        let beyond = overlap
            .beyond_allowed_mm2
            .map_or_else(String::new, |area| format!("; beyond what is allowed over {area:.0} mm2"));
        page.line(
            "  ",
            &format!("overlaps by up to {:.3} over {:.0} mm2{beyond}", overlap.largest_mm, overlap.area_mm2),
        );
    }
    for row in &surface.ovality {
        page.line(
            "  ",
            &format!(
                "{:.1} mm up: ovality {:.3} cold, {:+.3} running; {:.3} would run round",
                row.height_mm, row.cold_mm, row.running_mm, row.round_running_mm
            ),
        );
    }
}

/// Moves below this are none to a technician, in mm.
const NO_MOVE: f64 = 0.0005;

fn best_placed(best: &BestPlaced) -> String {
    let move_to = |mm: f64, [positive, negative]: [&str; 2]| {
        let side = if mm < 0.0 { negative } else { positive };
        (mm.abs() >= NO_MOVE).then(|| format!("{:.3} to the {side}", mm.abs()))
    };
    let moves = [
        move_to(best.thrust_mm, ["major thrust side", "minor thrust side"]),
        move_to(best.pin_mm, ["front", "flywheel"]),
    ];
    let moves: Vec<String> = moves.into_iter().flatten().collect();
    match moves.is_empty() {
        true => format!("centred it has most room: {:.3}", best.clearance_mm),
        false => format!("moved {} it has most room: {:.3}", moves.join(" and "), best.clearance_mm),
    }
}

fn told_reference(page: &mut Page, reference: &ReferenceReport) {
    page.gap();
    page.line(
        "",
        &format!("Against the original piston at the maker's least clearance ({})", reference.origin),
    );
    page.line("  ", &format!("its running clearance: {}", stated(&reference.running)));
    page.line("  ", &format!("margin at the gauge point: {}", stated(&reference.margin)));
    page.line(
        "  ",
        &format!("margin of the smallest clearance, on one side: {}", stated(&reference.smallest_margin)),
    );
    page.line("  ", &reference.note);
}

/// First contact, or the first overlap beyond what is allowed: in words.
fn told_onset(onset: &OnsetReport) -> String {
    let allowed = -onset.touching_at_mm;
    let [touches, none] = match allowed > 0.0 {
        true => [
            format!("overlaps by more than the allowed {allowed:.3}"),
            format!("no overlap beyond the allowed {allowed:.3}"),
        ],
        false => ["touches".to_owned(), "no contact".to_owned()],
    };
    let scenario = onset.scenario.replace('_', " ");
    let u = onset.standard_uncertainty_k.map_or_else(String::new, |u| format!(", u = {u:.1} K"));
    match onset.outcome {
        "touches" => {
            let at = onset
                .place
                .as_ref()
                .map_or_else(String::new, |p| format!(": {} {}", p.surface, place(&p.place)));
            format!("{scenario}: {touches} with the thrust side at {:.0} C{u}{at}", onset.thrust_c)
        }
        "touches_at_20_c" => format!("{scenario}: {touches} at 20 C already"),
        _ => {
            let by = onset.stopped_by.as_ref().map_or_else(String::new, |by| format!(" ({by})"));
            format!("{scenario}: {none} up to {:.0} C on the thrust side{by}", onset.thrust_c)
        }
    }
}

fn told_found(found: &FoundReport) -> String {
    let what = found.what.replace('_', " ");
    match (found.size_mm, found.temperature_c, &found.no_solution) {
        (Some(mm), ..) => format!("{what} of {}: {mm:.4} mm", found.wanted),
        (_, Some(c), _) => format!("{what} of {}: {c:.0} C", found.wanted),
        (.., Some(why)) => format!("{what} of {}: none; {why}", found.wanted),
        _ => format!("{what} of {}: none", found.wanted),
    }
}

fn stated(value: &MeasuredValue) -> String {
    format!("{:.4}, U = {:.4}", value.value_mm, value.expanded_uncertainty_mm)
}

fn place(place: &PlaceReport) -> String {
    let depth = place.depth_mm.map_or_else(String::new, |mm| format!(", {mm:.1} deep in the bore"));
    let crank = place.crank_deg.map_or_else(String::new, |deg| format!(", crank at {deg:.0} deg"));
    format!("at {:.0} deg, {:.1} up the piston{depth}{crank}", place.angle_deg, place.height_mm)
}
