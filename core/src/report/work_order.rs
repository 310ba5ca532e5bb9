//! The plan in the order of the work: what is done, what must be so before, with what, to which size, and who signs.
//!
//! The order and the conditions are common practice of the trade, no source.

use super::caution::{LINER_WORK, PRESS_WORK};
use super::data::{Report, report};
use super::plan::{BoreWork, FinishTarget, PistonWork, PlanReport, SleeveReport};
use crate::calc::Formula;
use crate::choice::choices;
use crate::decision::{Outcome, named};
use crate::plan::filing::Outcome as GapOutcome;
use crate::plan::machining::{FinishLower, FinishUpper};
use schemars::JsonSchema;
use serde::Serialize;

choices! {
    /// What is done.
    Task {
        /// The cause of a damage is looked for.
        FindCause = "find_cause",
        /// What was not read or not proven is read again.
        ReadAgain = "read_again",
        /// A block or liner is replaced or repaired.
        ReplaceBore = "replace_bore",
        /// Parts are got.
        GetParts = "get_parts",
        /// New pistons are measured.
        MeasurePistons = "measure_pistons",
        /// Sleeves are pressed in.
        FitSleeves = "fit_sleeves",
        /// Bores are bored.
        Bore = "bore",
        /// Bores are honed.
        Hone = "hone",
        /// Everything is cleaned.
        Clean = "clean",
        /// Finished bores are read at 20 C.
        CheckFinish = "check_finish",
        /// Liners are set on shims.
        FitLiners = "fit_liners",
        /// Rings are filed.
        FileRings = "file_rings",
        /// Masses are evened.
        EvenMasses = "even_masses",
        /// Pistons are fitted.
        FitPistons = "fit_pistons",
        /// The head gasket is chosen and the squish is checked.
        FitGasket = "fit_gasket",
        /// The job is closed.
        Close = "close",
    }
}

report! {
    /// A step of the work.
    WorkStep {
        /// Its place in the order, from 1.
        number: u32,
        /// What is done.
        task: Task,
        /// The same in words.
        what: String,
        /// Cylinders, in the order in which they are worked on.
        cylinders: Vec<u32> => "Vec::is_empty",
        /// What must be so before.
        before: Vec<String> => "Vec::is_empty",
        /// What it takes.
        tools: Vec<String> => "Vec::is_empty",
        /// What is to come out.
        targets: Vec<WorkTarget> => "Vec::is_empty",
        /// What to take care of.
        care: Vec<String> => "Vec::is_empty",
    }
    /// What is to come out of a step.
    WorkTarget {
        /// Number of the cylinder.
        cylinder: u32,
        /// What of it.
        of: String,
        /// Size at 20 C.
        value_mm: f64,
        /// Smallest that is accepted.
        lower_mm: Option<f64> => "Option::is_none",
        /// Largest that is accepted.
        upper_mm: Option<f64> => "Option::is_none",
        /// What the dial of the bore gauge reads there, on the machine as it was stated.
        dial_mm: Option<f64> => "Option::is_none",
    }
}

const BORING: &str = "Rotating heads catch clothing and hands; stones break; dust and mist harm the lungs: guards, goggles, no gloves at the head.";
const FILING: &str =
    "File from the outside inwards, ends square, burrs off; ring ends and feelers cut: goggles and gloves.";
const LIFTING: &str = "Blocks and liners are heavy and liners are slippery: lift with what is made for it, and keep hands out of the bore.";
const RETAINERS: &str = "Retaining rings fly: cover them and wear goggles. Never use one twice.";
const WASHING: &str = "Solvents burn and harm skin and lungs: ventilation, gloves, goggles, no open flame. Blow dry at low pressure.";

/// The plan of a report in the order of the work; nothing without a plan.
pub(crate) fn work_order(report: &Report) -> Vec<WorkStep> {
    let Some(plan) = &report.plan else { return Vec::new() };
    let mut list = List { steps: Vec::new() };
    before_the_machine(report, plan, &mut list);
    on_the_machine(plan, &mut list);
    assembly(plan, &mut list);
    list.steps
}

struct List {
    steps: Vec<WorkStep>,
}

impl List {
    /// Adds a step, unless it is about no cylinder.
    fn add(&mut self, task: Task, cylinders: Vec<u32>, what: String) -> Option<&mut WorkStep> {
        if cylinders.is_empty() {
            return None;
        }
        let number = u32::try_from(self.steps.len() + 1).unwrap_or(u32::MAX);
        self.steps.push(WorkStep {
            number,
            task,
            what,
            cylinders,
            before: Vec::new(),
            tools: Vec::new(),
            targets: Vec::new(),
            care: Vec::new(),
        });
        self.steps.last_mut()
    }
}

impl WorkStep {
    fn before(&mut self, text: &str) -> &mut Self {
        self.before.push(text.to_owned());
        self
    }

    fn tool(&mut self, text: &str) -> &mut Self {
        self.tools.push(text.to_owned());
        self
    }

    fn care(&mut self, text: &str) -> &mut Self {
        self.care.push(text.to_owned());
        self
    }
}

fn of(plan: &PlanReport, which: impl Fn(&super::plan::PlannedCylinder) -> bool) -> Vec<u32> {
    plan.cylinders.iter().filter(|c| which(c)).map(|c| c.number).collect()
}

fn before_the_machine(report: &Report, plan: &PlanReport, list: &mut List) {
    let with = |outcome: Outcome| {
        let found = report.cylinders.iter().filter(|c| c.verdict.outcome == outcome);
        found.map(|c| c.number).collect::<Vec<u32>>()
    };
    let unknown = with(Outcome::FindTheCause);
    let what = format!(
        "Find the cause of the damage in {}; nothing new is fitted before it has a name",
        named(&unknown)
    );
    if let Some(step) = list.add(Task::FindCause, unknown, what) {
        step.tool("the findings and their next checks");
    }
    let machined = |number: u32| plan.cylinders.iter().any(|c| c.number == number && c.oversize_mm.is_some());
    let unsettled = |outcome| with(outcome).into_iter().filter(|n| !machined(*n));
    let again: Vec<u32> = unsettled(Outcome::NotProven).chain(unsettled(Outcome::Incomplete)).collect();
    let what = format!("Read again in {} what is not proven or missing", named(&again));
    if let Some(step) = list.add(Task::ReadAgain, again, what) {
        step.before("parts and gauges at shop temperature").tool("gauges set anew on their masters");
    }
    let broken = of(plan, |c| c.bore == BoreWork::Replace);
    let what = format!("Replace or repair block or liner at {}", named(&broken));
    if let Some(step) = list.add(Task::ReplaceBore, broken, what) {
        step.care(LIFTING);
    }
    let parts = of(plan, |c| c.piston == PistonWork::Replace && c.new_piston.is_none());
    let oversizes = plan.cylinders.iter().filter(|c| parts.contains(&c.number)).map(|c| c.oversize_mm);
    let mut sizes: Vec<String> =
        oversizes.map(|o| o.map_or("standard".to_owned(), |o| format!("{o:.2} mm oversize"))).collect();
    sizes.dedup();
    let what = format!(
        "Get {} pistons with rings, {}, and measure each at its gauge point",
        parts.len(),
        sizes.join(", ")
    );
    if let Some(step) = list.add(Task::GetParts, parts, what) {
        step.before("nothing is bored before the pistons are measured");
    }
    let sleeved = of(plan, |c| c.bore == BoreWork::Sleeve);
    let what = format!("Get sleeves for {}", named(&sleeved));
    list.add(Task::GetParts, sleeved, what);
}

fn on_the_machine(plan: &PlanReport, list: &mut List) {
    sleeves(&plan.sleeves, list);
    let order = plan.oversizes.as_ref().map(|o| o.order.as_slice()).unwrap_or_default();
    let machined = of(plan, |c| matches!(c.bore, BoreWork::Bore | BoreWork::Sleeve));
    let cylinders: Vec<u32> = order.iter().copied().filter(|n| machined.contains(n)).collect();
    let targets: Vec<&FinishTarget> =
        cylinders.iter().filter_map(|n| plan.targets.iter().find(|t| t.cylinder == *n)).collect();
    let what = format!("Bore {} in this order, each to the size for its own piston", named(&cylinders));
    if let Some(step) = list.add(Task::Bore, cylinders.clone(), what) {
        step.before("every new piston measured: the sizes follow from them")
            .before("main bearing caps torqued, torque plate fitted with its gasket and torqued")
            .before("bar on the original axis: from the main bearing line or the unworn ridge")
            .tool("boring bar or mill")
            .tool("bore gauge, set on its master")
            .care(BORING)
            .care("A warm bore reads large: the dial readings hold at the stated temperatures only; for others ask again.");
        step.targets =
            targets.iter().map(|t| target(t, "boring size", &t.boring, None, |d| &d.boring)).collect();
    }
    let what = format!("Hone {} in the same order, with falling grit", named(&cylinders));
    if let Some(step) = list.add(Task::Hone, cylinders.clone(), what) {
        step.before("plate and caps as when boring")
            .before("the bore and its neighbours have cooled")
            .tool("hone with the stones for rings and alloy")
            .tool("bore gauge, set on its master")
            .care(BORING)
            .care("Check at top, middle and bottom, let it cool, and check again before the last stock comes off.");
        step.targets = targets
            .iter()
            .map(|t| target(t, "finish size", &t.finish, Some(t.tolerance_mm), |d| &d.finish))
            .collect();
    }
    let what =
        "Chamfer and wash every bore, the block and its passages until a white cloth stays white".to_owned();
    if let Some(step) = list.add(Task::Clean, cylinders.clone(), what) {
        step.care(WASHING);
    }
    let what = format!(
        "Read {} when they are cold, and enter the readings as the finish of this job",
        named(&cylinders)
    );
    if let Some(step) = list.add(Task::CheckFinish, cylinders, what) {
        let states = plan.wanted.iter().flat_map(|w| &w.clamping).map(|c| c.spoken());
        let states: Vec<String> = states.collect();
        step.before("cooled down overnight, or within 1 K of the shop")
            .before(&format!(
                "the block in the state that the clearance is meant for: {}",
                states.join(" or ")
            ))
            .tool("bore gauge, set on its master")
            .tool("roughness tester");
    }
}

fn sleeves(sleeves: &[SleeveReport], list: &mut List) {
    let cylinders: Vec<u32> = sleeves.iter().map(|s| s.cylinder).collect();
    let what =
        format!("Bore the block at {} to the hole of its sleeve, and press the sleeve in", named(&cylinders));
    let Some(step) = list.add(Task::FitSleeves, cylinders, what) else { return };
    step.before("the outside of every sleeve measured before it is chilled")
        .before("block heated and sleeve chilled as stated, every move planned")
        .tool("boring bar or mill")
        .tool("oven, chilling box, contact thermometer")
        .care(LINER_WORK)
        .care(PRESS_WORK);
    step.targets = sleeves
        .iter()
        .map(|s| WorkTarget {
            cylinder: s.cylinder,
            of: "hole for the sleeve".to_owned(),
            value_mm: s.hole.value_mm,
            lower_mm: Some(s.hole_least_mm),
            upper_mm: Some(s.hole_most_mm),
            dial_mm: None,
        })
        .collect();
}

fn target(
    of_bore: &FinishTarget,
    of: &str,
    size: &super::data::MeasuredValue,
    tolerance: Option<f64>,
    dial: impl Fn(&super::plan::DialReport) -> &super::data::MeasuredValue,
) -> WorkTarget {
    WorkTarget {
        cylinder: of_bore.cylinder,
        of: of.to_owned(),
        value_mm: size.value_mm,
        lower_mm: tolerance.map(|t| FinishLower::evaluate([size.value_mm, t])),
        upper_mm: tolerance.map(|t| FinishUpper::evaluate([size.value_mm, t])),
        dial_mm: of_bore.dial.as_ref().map(|d| dial(d).value_mm),
    }
}

fn assembly(plan: &PlanReport, list: &mut List) {
    if let Some(liners) = &plan.liners {
        let shimmed: Vec<u32> =
            liners.each.iter().filter(|l| l.shims_mm.is_some()).map(|l| l.cylinder).collect();
        let what = format!(
            "Set the liners of {} on their shims, clamp them without seals, and read the protrusion",
            named(&shimmed)
        );
        if let Some(step) = list.add(Task::FitLiners, shimmed, what) {
            step.before("seats and flanges clean and free of burrs")
                .tool("clamps, depth gauge or dial on a bridge")
                .care(LIFTING);
            step.targets = liners
                .each
                .iter()
                .filter_map(|l| protrusion(l.cylinder, l.lowest_mm?, l.highest_mm?))
                .collect();
        }
    }
    let filed: Vec<&super::plan::RingReport> =
        plan.rings.iter().filter(|r| r.outcome == Some(GapOutcome::File)).collect();
    let mut cylinders: Vec<u32> = filed.iter().map(|r| r.cylinder).collect();
    cylinders.dedup();
    let what = format!("File the rings of {}, each in its own bore", named(&cylinders));
    if let Some(step) = list.add(Task::FileRings, cylinders, what) {
        step.before("the bore is finished and clean")
            .tool("ring filer, feeler strips, a piston to square the ring")
            .care(FILING);
        step.targets = filed
            .iter()
            .map(|r| WorkTarget {
                cylinder: r.cylinder,
                of: format!("gap of the {} ring", r.ring),
                value_mm: r.target_mm,
                lower_mm: None,
                upper_mm: None,
                dial_mm: None,
            })
            .collect();
    }
    if let Some(masses) = &plan.masses {
        let heavy: Vec<u32> = masses.each.iter().filter(|m| !m.cuts.is_empty()).map(|m| m.cylinder).collect();
        let what = format!(
            "Take the masses of {} down to {:.1} g, where the maker allows it",
            named(&heavy),
            masses.most_g
        );
        if let Some(step) = list.add(Task::EvenMasses, heavy, what) {
            step.tool("scales").care("Never off the crown, the pin bosses or the skirt: only where the maker has left metal for it.");
        }
    }
    let fitted = of(plan, |c| c.bore != BoreWork::Replace);
    let what = format!("Fit the pistons of {}, each in its own bore, marks to the front", named(&fitted));
    if let Some(step) = list.add(Task::FitPistons, fitted, what) {
        step.before("no open point of these cylinders is left")
            .before("rings turned as the maker says, pins and retaining rings in place")
            .tool("ring compressor")
            .care(RETAINERS);
    }
    if let Some(gasket) = &plan.gasket {
        let cylinders = gasket.pistons.iter().map(|p| p.cylinder).collect();
        let what = format!("Read how far the pistons stand, and fit the head gasket {}", gasket.grade);
        if let Some(step) = list.add(Task::FitGasket, cylinders, what) {
            step.tool("dial on a bridge, two points in line with the pin");
            let squish = |p: &super::plan::StandingReport| WorkTarget {
                cylinder: p.cylinder,
                of: "squish".to_owned(),
                value_mm: p.squish_mm,
                lower_mm: None,
                upper_mm: None,
                dial_mm: None,
            };
            step.targets = gasket.pistons.iter().map(squish).collect();
        }
    }
    let all: Vec<u32> = plan.cylinders.iter().map(|c| c.number).collect();
    list.add(Task::Close, all, "Enter what was read after the work, and sign".to_owned());
}

fn protrusion(cylinder: u32, lowest: f64, highest: f64) -> Option<WorkTarget> {
    Some(WorkTarget {
        cylinder,
        of: "protrusion of the liner".to_owned(),
        value_mm: lowest,
        lower_mm: Some(lowest),
        upper_mm: Some(highest),
        dial_mm: None,
    })
}

/// A step as sentences: what is told first, then the rest under it.
pub(super) fn told(step: &WorkStep) -> (String, Vec<String>) {
    let mut under = Vec::new();
    for (title, items) in [("Before", &step.before), ("With", &step.tools)] {
        if !items.is_empty() {
            under.push(format!("{title}: {}.", items.join("; ")));
        }
    }
    for target in &step.targets {
        let ends = target.lower_mm.zip(target.upper_mm);
        let ends = ends.map(|(low, high)| format!(" ({low:.4} to {high:.4})")).unwrap_or_default();
        let dial = target.dial_mm.map(|d| format!("; the dial reads {d:+.4} mm")).unwrap_or_default();
        under.push(format!(
            "Cylinder {}: {} {:.4} mm{ends}{dial}.",
            target.cylinder, target.of, target.value_mm
        ));
    }
    under.extend(step.care.iter().map(|care| format!("Take care: {care}")));
    under.push("Done by ____________________  on ______________".to_owned());
    (format!("{}. {}.", step.number, step.what), under)
}
