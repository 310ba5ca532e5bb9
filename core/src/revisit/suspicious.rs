//! What does not fit two visits of one engine, or should be looked into. Common practice, no source.

use super::{CylinderChange, Visits};
use crate::decision::{Limit, LimitSets, WHICH, named};
use crate::job::Warning;
use crate::order;
use crate::special::chi2_quantile;

/// Probability of the test by which pistons fit their own cylinders.
const FIT: f64 = 0.95;

/// All of it, the documents first, then cylinder by cylinder.
pub(super) fn all(visits: &Visits<'_>, cylinders: &[CylinderChange]) -> Vec<Warning> {
    let mut out = documents(visits);
    out.extend(limits(visits));
    for cylinder in cylinders {
        out.extend(sizes(cylinder, &visits.place(cylinder.number)));
        out.extend(findings(visits, cylinder.number));
    }
    out.extend(swapped(cylinders));
    out
}

fn remark(kind: &str, path: impl Into<String>, text: impl Into<String>) -> Warning {
    Warning { kind: kind.to_owned(), path: path.into(), text: text.into() }
}

fn documents(visits: &Visits<'_>) -> Vec<Warning> {
    let [before, now] = visits.documents.map(|d| &d.engine);
    let changed = |kind: &str, field: &str, what: &str, [a, b]: [&str; 2]| {
        let was = if a == b { String::new() } else { format!(": {a} before, {b} now") };
        remark(kind, format!("/now/engine/{field}"), format!("the {what} changed{was}"))
    };
    let mut out = Vec::new();
    if !visits.same_bore_nominal() {
        let texts = [before.bore.nominal.text(), now.bore.nominal.text()];
        out.push(changed("nominal_changed", "bore/nominal", "nominal size of the bores", texts));
    }
    if !visits.same_piston_nominal() {
        let texts = [before.piston.nominal.text(), now.piston.nominal.text()];
        out.push(changed("nominal_changed", "piston/nominal", "nominal size of the pistons", texts));
    }
    if !visits.same_piston_material() {
        let texts = [before.piston.material.text(), now.piston.material.text()];
        out.push(changed("piston_material_changed", "piston/material", "material of the pistons", texts));
    }
    if !visits.same_gauge_point() {
        let words = [&before.piston.gauge_point, &now.piston.gauge_point]
            .map(|p| format!("{} from the {}, {}", p.height.text(), p.datum.spoken(), p.angle.text()));
        let texts = [words[0].as_str(), words[1].as_str()];
        out.push(changed("gauge_point_changed", "piston/gauge_point", "gauge point of the pistons", texts));
    }
    let mut rule = |field: &str, what: &str| {
        out.push(changed("reduction_changed", &format!("reduction/{field}"), what, ["", ""]));
    };
    if !visits.same_size_rule() {
        rule("size", "rule for the size of a bore");
    }
    if before.reduction.taper != now.reduction.taper {
        rule("taper", "rule for the taper of a bore");
    }
    if before.reduction.out_of_round != now.reduction.out_of_round {
        rule("out_of_round", "rule for the out-of-round of a bore");
    }
    out
}

/// Limits that changed, each once with its cylinders.
fn limits(visits: &Visits<'_>) -> Vec<Warning> {
    let count = visits.reports[1].cylinders.len();
    #[expect(clippy::cast_possible_truncation, reason = "an engine has few cylinders")]
    let count = count as u32;
    let sets = visits.documents.map(|d| LimitSets::from_document(&d.engine, count, &mut Vec::new()));
    let [Ok(before), Ok(now)] = sets else {
        // both jobs were accepted with them
        return Vec::new();
    };
    let mut out = Vec::new();
    for (name, which) in WHICH {
        let mut told: Vec<(String, Vec<u32>)> = Vec::new();
        for number in 1..=count {
            let [a, b] = [&before, &now].map(|set| printed(which(&set.of(number)).as_ref()));
            if a == b {
                continue;
            }
            let text = format!("{a} before, {b} now");
            match told.iter_mut().find(|(known, _)| *known == text) {
                Some((_, cylinders)) => cylinders.push(number),
                None => told.push((text, vec![number])),
            }
        }
        let spoken = name.replace('_', " ");
        out.extend(told.into_iter().map(|(text, cylinders)| {
            let of = named(&cylinders);
            let text = format!("the limits of the {spoken} of {of} changed: {text}");
            remark("limit_changed", format!("/now/engine/limits/{name}"), text)
        }));
    }
    out
}

fn printed(limit: Option<&Limit>) -> String {
    let Some(limit) = limit else { return "none".to_owned() };
    let end = |end: &Option<crate::job::Given>| {
        end.as_ref().map_or_else(|| "none".to_owned(), |g| format!("{} mm", g.value))
    };
    let over = limit.over.map_or_else(String::new, |s| format!(" over {}", s.spoken()));
    format!("{} to {} at {} C{over}", end(&limit.lower), end(&limit.upper), limit.temperature.value)
}

/// Sizes that went the wrong way by more than their uncertainty allows.
fn sizes(cylinder: &CylinderChange, at: &str) -> Vec<Warning> {
    let of = |what: &str| format!("{what} of cylinder {}", cylinder.number);
    let mut out = Vec::new();
    if let Some(change) = &cylinder.bore_size
        && change.significant
        && change.change_mm < 0.0
    {
        let text = format!("the {} is {:.4} mm smaller than before", of("bore"), -change.change_mm);
        out.push(remark("bore_smaller", format!("{at}/bore"), text));
    }
    for place in cylinder.bore_places.iter().filter(|p| p.change.significant && p.change.change_mm < 0.0) {
        let text = format!(
            "the {} is {:.4} mm smaller than before at depth {} mm, axis {} deg",
            of("bore"),
            -place.change.change_mm,
            place.depth_mm,
            place.axis_deg
        );
        out.push(remark("bore_smaller", format!("{at}/bore"), text));
    }
    for place in cylinder.piston_places.iter().filter(|p| p.change.significant && p.change.change_mm > 0.0) {
        let text = format!(
            "the {} is {:.4} mm larger than before at {} mm from the {}, {} deg",
            of("piston"),
            place.change.change_mm,
            place.height_mm,
            place.datum.spoken(),
            place.angle_deg
        );
        out.push(remark("piston_larger", format!("{at}/piston"), text));
    }
    out
}

/// Findings that were there before and are there again, without a cause.
fn findings(visits: &Visits<'_>, number: u32) -> Vec<Warning> {
    let [Some(before), Some(now)] = visits.entries(number) else {
        return Vec::new();
    };
    let mut out = Vec::new();
    for (k, finding) in now.findings.iter().enumerate().filter(|(_, f)| f.cause.is_none()) {
        if before.findings.iter().any(|f| f.place == finding.place && f.what == finding.what) {
            let (what, place) = (finding.what.spoken(), finding.place.spoken());
            let text = format!(
                "{what}, {place}, of cylinder {number} was seen before and came back; its cause is not found"
            );
            let path = format!("{}/findings/{k}", visits.place(number));
            out.push(remark("finding_returned", path, text));
        }
    }
    out
}

/// Pistons that do not fit the wear of their own cylinders and fit it in another order.
///
/// What all pistons lost in the mean drops out. The sum of squares of what is left over, in units of its variance, is chi-squared with one degree of
/// freedom less than pistons; the order with the least sum is that of their sizes.
fn swapped(cylinders: &[CylinderChange]) -> Option<Warning> {
    let sizes: Vec<(u32, f64, f64, f64)> = cylinders
        .iter()
        .filter_map(|c| {
            let change = &c.piston_places.iter().find(|p| p.gauge_point)?.change;
            Some((c.number, change.previous_mm, change.now_mm, change.standard_uncertainty_mm))
        })
        .collect();
    let count = crate::measurement::statistics::as_number(sizes.len());
    let variance = sizes.iter().map(|s| s.3 * s.3).sum::<f64>() / count.max(1.0);
    if sizes.len() < 2 || variance <= 0.0 {
        return None;
    }
    let mean = sizes.iter().map(|s| s.2 - s.1).sum::<f64>() / count;
    let left_over = |pairs: &[(f64, f64)]| -> f64 {
        pairs.iter().map(|(before, now)| (now - before - mean) * (now - before - mean)).sum::<f64>()
            / variance
    };
    let (mut before, mut now) = (sizes.clone(), sizes.clone());
    order::sort_by(&mut before, |a, b| a.1.total_cmp(&b.1));
    order::sort_by(&mut now, |a, b| a.2.total_cmp(&b.2));
    let own: Vec<(f64, f64)> = sizes.iter().map(|s| (s.1, s.2)).collect();
    let ordered: Vec<(f64, f64)> = before.iter().zip(&now).map(|(a, b)| (a.1, b.2)).collect();
    let most = chi2_quantile(FIT, count - 1.0);
    if left_over(&own) <= most || left_over(&ordered) > most {
        return None;
    }
    let mut moved: Vec<(u32, u32)> =
        before.iter().zip(&now).map(|(a, b)| (b.0, a.0)).filter(|(n, p)| n != p).collect();
    order::sort_by(&mut moved, Ord::cmp);
    let moved: Vec<String> =
        moved.iter().map(|(n, p)| format!("that of cylinder {n} was in cylinder {p}")).collect();
    let text =
        format!("the pistons fit their sizes of before only if they were swapped: {}", moved.join(", "));
    Some(remark("parts_swapped", "/now/cylinders", text))
}
