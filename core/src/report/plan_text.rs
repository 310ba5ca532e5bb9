//! The plan in sentences, for the text and the Markdown of a report.

use super::data::MeasuredValue;
use super::plan::{
    BoreWork, ChoiceReport, FinishReport, FinishedReport, GasketReport, LinersReport, MassesReport,
    MatchingReport, OversizesReport, PistonWork, PlanReport, PlannedCylinder, RingReport, SleeveReport,
};
use super::text::give_or_take;
use crate::decision::named;
use crate::plan::filing::Outcome as GapOutcome;

/// A title and what is told under it.
pub(super) type Section = (String, Vec<String>);

/// The plan, section by section, without the work order.
pub(super) fn sections(plan: &PlanReport) -> Vec<Section> {
    let mut out: Vec<Section> = vec![("The plan".to_owned(), cylinders(plan))];
    let mut put = |title: &str, lines: Vec<String>| {
        if !lines.is_empty() {
            out.push((title.to_owned(), lines));
        }
    };
    put("Sizes that can be bored", plan.oversizes.iter().flat_map(oversizes).collect());
    put("Pistons to hand", plan.pistons.iter().filter_map(piston).collect());
    put("Pistons matched to bores", plan.matching.iter().flat_map(matching).collect());
    put("Sizes to machine to", plan.targets.iter().map(target).collect());
    put("Sleeves", plan.sleeves.iter().map(sleeve).collect());
    put("Liners", plan.liners.iter().flat_map(liners).collect());
    put("Rings", plan.rings.iter().map(ring).collect());
    put("Head gasket", plan.gasket.iter().flat_map(gasket).collect());
    put("Masses", plan.masses.iter().flat_map(masses).collect());
    put("After the work", plan.finish.iter().flat_map(finish).collect());
    put("Not settled", plan.open.clone());
    out
}

/// What is done, cylinders with the same words together.
fn cylinders(plan: &PlanReport) -> Vec<String> {
    let mut groups: Vec<(String, Vec<u32>)> = Vec::new();
    for cylinder in &plan.cylinders {
        let said = planned(cylinder);
        match groups.iter_mut().find(|(words, _)| *words == said) {
            Some((_, numbers)) => numbers.push(cylinder.number),
            None => groups.push((said, vec![cylinder.number])),
        }
    }
    let mut out: Vec<String> =
        groups.into_iter().map(|(said, numbers)| format!("{}: {said}", capital(&named(&numbers)))).collect();
    out.extend(plan.wanted.as_ref().map(|w| {
        format!(
            "Wanted clearance at 20 C: {:.3} to {:.3} mm, aimed at {:.3} mm ({}).",
            w.min_mm, w.max_mm, w.target_mm, w.origin
        )
    }));
    out
}

fn planned(cylinder: &PlannedCylinder) -> String {
    let oversize = match cylinder.oversize_mm {
        Some(o) if o > 0.0 => format!(" to {o:.2} mm oversize"),
        Some(_) => " to the standard size".to_owned(),
        None => String::new(),
    };
    let bore = match cylinder.bore {
        BoreWork::Leave => "the bore stays as it is".to_owned(),
        BoreWork::Bore => format!("bore and hone{oversize}"),
        BoreWork::Sleeve => format!("fit a sleeve, bore and hone it{oversize}"),
        BoreWork::Replace => "block or liner is replaced or repaired".to_owned(),
        BoreWork::Undecided => "the bore is undecided".to_owned(),
    };
    let piston = match (cylinder.piston, &cylinder.new_piston) {
        (PistonWork::Reuse, _) => "its piston goes back".to_owned(),
        (PistonWork::Replace, Some(name)) => format!("piston {name} is fitted"),
        (PistonWork::Replace, None) => "another piston is fitted".to_owned(),
        (PistonWork::Undecided, _) => "its piston is undecided".to_owned(),
    };
    let why = match cylinder.reasons.as_slice() {
        [] => String::new(),
        reasons => format!(" ({})", reasons.join("; ")),
    };
    format!("{bore}; {piston}{why}.")
}

fn oversizes(of: &OversizesReport) -> Vec<String> {
    let mut out = Vec::new();
    for need in &of.needs {
        let walls =
            need.largest_by_walls_mm.map(|w| format!("; its walls allow {w:.3} mm")).unwrap_or_default();
        out.push(format!(
            "Cylinder {} is clean at {} if one side alone is worn, at {:.4} mm if both are; a step must reach {:.3} mm{walls}.",
            need.cylinder,
            give_or_take(&need.clean_up),
            need.clean_up_least.value_mm,
            need.needed_mm
        ));
    }
    for step in &of.steps {
        let more = [
            step.compression_ratio.map(|r| format!("compression ratio {r:.2}")),
            step.kept_ring_gap_mm.map(|g| format!("gap of kept rings {g:.3} mm")),
            step.more_mass_g.map(|m| format!("pistons heavier by {m} g")),
        ];
        let more: Vec<String> = more.into_iter().flatten().collect();
        let more = if more.is_empty() { String::new() } else { format!(": {}", more.join(", ")) };
        out.push(format!("Oversize {:.2} mm, bore {:.3} mm{more}.", step.oversize_mm, step.bore_mm));
    }
    for (place, choice) in of.choices.iter().enumerate() {
        let taken = if of.chosen == Some(place) { ", taken" } else { "" };
        out.push(format!("{}{taken}.", choice_words(choice)));
    }
    out
}

fn choice_words(choice: &ChoiceReport) -> String {
    let mut sizes: Vec<(BoreWork, Option<f64>, Vec<u32>)> = Vec::new();
    for action in &choice.actions {
        let same =
            |s: &&mut (BoreWork, Option<f64>, Vec<u32>)| (s.0, s.1) == (action.work, action.oversize_mm);
        match sizes.iter_mut().find(same) {
            Some((_, _, numbers)) => numbers.push(action.cylinder),
            None => sizes.push((action.work, action.oversize_mm, vec![action.cylinder])),
        }
    }
    let sizes = sizes.iter().map(|(work, oversize, numbers)| match work {
        BoreWork::Leave => format!("{} as they are", named(numbers)),
        BoreWork::Sleeve => {
            format!("{:.2} mm with a sleeve in {}", oversize.unwrap_or_default(), named(numbers))
        }
        _ => format!("{:.2} mm in {}", oversize.unwrap_or_default(), named(numbers)),
    });
    let what =
        format!("{}: {}, price {}", choice.way.spoken(), sizes.collect::<Vec<_>>().join(", "), choice.price);
    match choice.ruled_out.as_slice() {
        [] => what,
        reasons => format!("{what}; ruled out, because {}", reasons.join("; ")),
    }
}

fn piston(of: &super::plan::NewPistonReport) -> Option<String> {
    let size = of.sizes.first().map(|s| s.bare_size.as_ref().unwrap_or(&s.size))?;
    let oversize = of.oversize_mm.map(|o| format!(", oversize {o:.2} mm")).unwrap_or_default();
    let mass = of.mass_g.map(|m| format!(", {m:.1} g")).unwrap_or_default();
    Some(format!("Piston {}{oversize}: {}{mass}.", of.name, give_or_take(size)))
}

fn matching(of: &MatchingReport) -> Vec<String> {
    let mut out: Vec<String> = of
        .pairs
        .iter()
        .map(|p| {
            format!(
                "Cylinder {}: piston {}, clearance {}: {}.",
                p.cylinder,
                p.piston,
                give_or_take(&p.clearance),
                p.decision.result.word()
            )
        })
        .collect();
    out.push(format!(
        "The least sure pair conforms with probability {:.4}; as the pistons are listed it would be {:.4}. {}",
        of.worst_probability,
        of.worst_probability_as_listed,
        sentence(&of.because)
    ));
    if !of.spare.is_empty() {
        out.push(format!("Left over: {}.", of.spare.join(", ")));
    }
    out
}

fn sentence(text: &str) -> String {
    format!("{}.", capital(text.trim_end_matches('.')))
}

fn capital(text: &str) -> String {
    let mut out = text.to_owned();
    if let Some(first) = out.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    out
}

fn target(of: &super::plan::FinishTarget) -> String {
    let dial = of.dial.as_ref().map(|d| {
        format!(
            " On the machine, block at {} C and gauge at {} C, {} reads {:+.4} mm after boring and {:+.4} mm when it is finished.",
            d.block_temperature_c, d.gauge_temperature_c, d.gauge, d.boring.value_mm, d.finish.value_mm
        )
    });
    format!(
        "Cylinder {} for piston {}: bore to {:.4} mm, hone to {}, tolerance {:.4} mm either way.{}",
        of.cylinder,
        of.piston,
        of.boring.value_mm,
        give_or_take(&of.finish),
        of.tolerance_mm,
        dial.unwrap_or_default()
    )
}

fn sleeve(of: &SleeveReport) -> String {
    let slides =
        if of.slides_in { "it slides in" } else { "it does not slide in: more heat, or a colder sleeve" };
    let running = match of.running_interference_mm.as_slice() {
        [] => String::new(),
        left => {
            let left: Vec<String> = left.iter().map(|l| format!("{l:+.4} mm")).collect();
            let lost = if of.running_interference_mm.iter().any(|l| *l <= 0.0) {
                "; below zero it has lost contact and must be held otherwise"
            } else {
                ""
            };
            format!(" Interference left when the engine runs: {}{lost}.", left.join(" to "))
        }
    };
    format!(
        "Cylinder {}: sleeve {} outside; hole {:.4} mm ({:.4} to {:.4}); clearance at assembly {:+.4} mm: {slides}.{running}",
        of.cylinder,
        give_or_take(&of.outside),
        of.hole.value_mm,
        of.hole_least_mm,
        of.hole_most_mm,
        of.assembly_clearance.value_mm
    )
}

fn liners(of: &LinersReport) -> Vec<String> {
    let mut out: Vec<String> = of
        .each
        .iter()
        .map(|l| {
            let shims = match &l.shims_mm {
                None => "no stack of shims".to_owned(),
                Some(shims) if shims.is_empty() => "no shim".to_owned(),
                Some(shims) => {
                    let shims: Vec<String> = shims.iter().map(|s| format!("{s:.3}")).collect();
                    format!("shims {} mm", shims.join(" + "))
                }
            };
            let stands = l.lowest_mm.zip(l.highest_mm);
            let stands =
                stands.map(|(low, high)| format!(", it stands {low:.3} to {high:.3} mm above the deck"));
            format!(
                "Cylinder {}: {shims}{}; its seat is uneven by {:.3} mm.",
                l.cylinder,
                stands.unwrap_or_default(),
                l.unevenness_mm
            )
        })
        .collect();
    out.extend(of.largest_step_mm.map(|s| format!("Neighbours differ by at most {s:.3} mm.")));
    out.extend(of.ruled_out.iter().map(|r| sentence(r)));
    out.push(format!("Limits of the protrusion: {}.", of.origin));
    out
}

fn ring(of: &RingReport) -> String {
    let gap = |value: &Option<MeasuredValue>| value.as_ref().map(give_or_take).unwrap_or_default();
    let what = match (of.outcome, of.file_off_mm, of.each_end_mm) {
        (None, _, _) => "the bore it runs in is not known yet".to_owned(),
        (Some(GapOutcome::Fits), _, _) => format!("gap {}: it fits", gap(&of.gap)),
        (Some(GapOutcome::TooWide), _, _) => format!("gap {}: too wide, another ring", gap(&of.gap)),
        (Some(GapOutcome::File), off, each) => format!(
            "gap {}: file {:.3} mm off, {:.3} mm at each end, to {:.3} mm",
            gap(&of.gap),
            off.unwrap_or_default(),
            each.unwrap_or_default(),
            of.target_mm
        ),
    };
    format!("Cylinder {}, {} ring: {what}.", of.cylinder, of.ring)
}

fn gasket(of: &GasketReport) -> Vec<String> {
    let mut out = vec![format!(
        "Gasket {}, {:.2} mm: the piston of cylinder {} stands highest ({}).",
        of.grade, of.thickness_mm, of.decided_by, of.origin
    )];
    let doubt = of.probability_below + of.probability_above;
    if doubt > 0.05 {
        out.push(format!(
            "That is near the edge of its band: with probability {doubt:.2} the highest belongs to the next grade. Read it again."
        ));
    }
    for piston in &of.pistons {
        let met = match piston.squish_is_met {
            Some(false) => ": too little",
            _ => "",
        };
        out.push(format!(
            "Cylinder {}: stands {:+.3} mm above the deck, squish {:.3} mm{met}.",
            piston.cylinder, piston.protrusion_mm, piston.squish_mm
        ));
    }
    if of.spread_is_met == Some(false) {
        out.push(format!("The pistons stand {:.3} mm apart: too far.", of.spread_mm));
    }
    out
}

fn masses(of: &MassesReport) -> Vec<String> {
    let mut out: Vec<String> = of
        .each
        .iter()
        .map(|m| {
            let cuts: Vec<String> =
                m.cuts.iter().map(|c| format!("{:.1} g off the {}", c.off_g, c.part)).collect();
            let cuts = if cuts.is_empty() { "nothing off".to_owned() } else { cuts.join(", ") };
            let over =
                if m.over_g > 0.0 { format!("; still {:.1} g too heavy", m.over_g) } else { String::new() };
            format!("Cylinder {}: {:.1} g, {cuts}{over}.", m.cylinder, m.mass_g)
        })
        .collect();
    out.push(format!("Heaviest allowed: {:.1} g ({}).", of.most_g, of.origin));
    out
}

fn finish(of: &FinishReport) -> Vec<String> {
    let mut out = vec![format!("Read by {} on {}. The job is {}.", of.by, of.date, of.result.word())];
    out.extend(of.cylinders.iter().map(finished));
    if let Some(matching) = &of.matching {
        let given = |cylinder: u32| of.cylinders.iter().find(|c| c.number == cylinder)?.piston.clone();
        let moved = matching.pairs.iter().filter(|p| given(p.cylinder).is_some_and(|name| name != p.piston));
        let moved: Vec<String> =
            moved.map(|p| format!("piston {} in cylinder {}", p.piston, p.cylinder)).collect();
        if !moved.is_empty() {
            out.push(format!(
                "As the bores are now these pairs would be better: {}; the least sure pair would conform with probability {:.4}.",
                moved.join(", "),
                matching.worst_probability
            ));
        }
    }
    out.extend(of.open.iter().map(|o| format!("Open: {o}.")));
    out
}

fn finished(of: &FinishedReport) -> String {
    let piston = of.piston.as_ref().map_or("its own piston".to_owned(), |p| format!("piston {p}"));
    let size = of.bore.size.as_ref().map(|s| format!(", bore {}", give_or_take(s))).unwrap_or_default();
    let clearance =
        of.clearance.as_ref().map(|c| format!(", clearance {}", give_or_take(c))).unwrap_or_default();
    let gaps = of.gaps.iter().map(|g| {
        format!(" Gap of the {} ring {}: {}.", g.ring, give_or_take(&g.gap), g.decision.result.word())
    });
    let surface = of.surface.iter().map(|s| {
        let value = s.value.map(|v| format!(" {v}")).unwrap_or_default();
        format!(" {}{value}: {}.", capital(s.parameter.word()), s.finding.spoken())
    });
    format!(
        "Cylinder {}, {}, {piston}{size}{clearance}: {}: {}.{}{}",
        of.number,
        of.stage.spoken(),
        of.result.word(),
        of.next,
        gaps.collect::<String>(),
        surface.collect::<String>()
    )
}
