//! What to take care of. The wording is the trade's usual caution.

use super::data::{CylinderReport, Report};
use crate::decision::Outcome;
use crate::decision::finding::{Disposition, Finding, Place, What};

const ALWAYS: &[&str] = &[SERVICE_DATA, SEIZURE];

/// What every report says first.
pub(crate) const SERVICE_DATA: &str = "The maker's service data, local codes and licensed practice come before this report. It rests on the limits, \
     temperatures and readings that were given to it.";
/// What a piston that is too tight does.
pub(crate) const SEIZURE: &str = "A piston that is too tight seizes: the rod can break out of the block, with fire and loss of control. Measure again \
     before you override a verdict.";
/// What a running clearance is.
pub(crate) const RUNNING_CLEARANCE: &str = "Running clearances are free growth at the stated temperatures: no pressure, no oil film, no bending of the \
     skirt. One below zero is no verdict, because skirts are elastic: the margin is.";

/// What a part that is heated for assembly calls for.
pub const HEATED_PART: &str = "Heated parts burn and hide it: tongs, gloves, and every move planned before the heat. \
     The fit sets in seconds; a part that stopped half-way is pressed out, never hammered. Measure the temperature: do not wait for a colour.";
/// What a part that was heated too far calls for.
pub const OVERHEATED_PART: &str = "At this temperature clean steel takes a temper colour: it is too hot, and a part that shows \
     one was overheated; the maker says whether it may be used. Heated parts burn and hide it: tongs, gloves, and every move planned before the heat.";
/// What press work calls for.
pub const PRESS_WORK: &str = "Press work: guards, supports under the part itself, nobody in line with it. A seized pin lets go \
     suddenly and breaks brittle parts; never hammer it.";
/// What a liner that is heated or chilled in calls for.
pub const LINER_WORK: &str = "Heated blocks burn. Chilled liners burn, too, and are brittle; dry ice and liquid nitrogen take the air \
     away: ventilate. Measure when both are at shop temperature.";
/// What the filing of rings calls for.
pub const RING_FILING: &str = "Rings: ends and chips are sharp, and coatings break off as splinters: cover your eyes. A gap that \
     was filed too wide is another ring.";
/// What the fitting of wet liners calls for.
pub const LINER_LIFTING: &str = "Liners are heavy and their edges sharp: lift them with a puller or by two, nobody and no hand below. \
     Measure the protrusion again when the liner is clamped.";

/// The cautions a report calls for, each once, in a fixed order.
pub(crate) fn cautions(report: &Report) -> Vec<String> {
    let mut out: Vec<&str> = ALWAYS.to_vec();
    let findings: Vec<&Finding> = report.cylinders.iter().flat_map(CylinderReport::seen).collect();
    let worst = report.block.verdict.outcome;
    if report.cylinders.iter().any(|c| c.clearance.as_ref().is_some_and(|k| k.running.is_some())) {
        out.push(RUNNING_CLEARANCE);
    }
    if findings.iter().any(|f| f.disposition == Disposition::Clean || f.what == What::Carbon) {
        out.push(
            "Solvents burn and harm skin and lungs: ventilation, gloves, eye protection, no open flame. No caustic \
             cleaner, wire brush or glass beads on pistons.",
        );
    }
    if findings.iter().any(|f| f.place == Place::PinRetention || f.what == What::RetainingRingLoose) {
        out.push("Retaining rings fly: cover them and wear goggles. Never use one twice.");
    }
    if worst == Outcome::DoNotReuse || worst == Outcome::FindTheCause {
        out.push("Do not fit new parts before the cause of the damage has a name.");
    }
    if report
        .cylinders
        .iter()
        .any(|c| c.bore.as_ref().is_some_and(|b| b.verdict.outcome == Outcome::DoNotReuse))
    {
        out.push(if report.engine.may_not_be_machined.is_some() {
            "The coat of a bore that may not be machined is thin: a hone or a cutter goes through it. Ask the maker what may be done."
        } else {
            "Boring and honing: rotating heads catch clothing and hands, stones break, dust and mist harm the lungs. \
             Let the block cool before it is measured."
        });
    }
    out.into_iter().map(str::to_owned).collect()
}
