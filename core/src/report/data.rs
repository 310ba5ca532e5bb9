//! The report as data. `core/docs/job.md` explains every field. Names that end in `_mm`, `_c`, `_deg` hold a number in that
//! unit; what is absent was not computed, and `missing` or a reason says why.

use super::plan::PlanReport;
use super::work_order::WorkStep;
use crate::calc::Working;
use crate::decision::finding::Finding;
use crate::decision::{Decision, Ground, Rule, Verdict, together};
use crate::fit::HotReport;
use crate::job::Warning;
use crate::job::document::{Datum, PistonRecord, ProfileState, Surface};
use crate::stack::StackReport;
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;

/// Structures of the report.
macro_rules! report {
    ($($(#[doc = $doc:literal])+ $name:ident { $($(#[doc = $field_doc:literal])+ $field:ident: $type:ty $(=> $skip:literal)?,)+ })+) => {
        $(
            $(#[doc = $doc])+
            #[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
            pub struct $name {
                $($(#[doc = $field_doc])+ $(#[serde(skip_serializing_if = $skip)])? pub $field: $type,)+
            }
        )+
    };
}
pub(crate) use report;

/// How a report is written, and the schema of that.
macro_rules! written {
    ($name:ident, $file:literal) => {
        $crate::job::schema!($name, $crate::job::report_schema, $file);

        impl $name {
            /// The report as JSON on one line.
            #[must_use]
            pub fn to_json(&self) -> String {
                // a report holds finite numbers, texts and lists only: nothing in it can fail to be written
                serde_json::to_string(self).unwrap_or_default()
            }
        }
    };
}
pub(crate) use written;

report! {
    /// Everything that was found out about one engine.
    Report {
        /// `gaugepoint-report`
        format: &'static str,
        /// Version of the format.
        version: u32,
        /// Version of the library.
        library: &'static str,
        /// The job as named in the document.
        job: JobName,
        /// The engine as named in the document.
        engine: EngineName,
        /// What the numbers mean and how they were judged.
        conventions: Conventions,
        /// State of the gauges.
        gauges: Vec<GaugeReport>,
        /// Every cylinder, in order of number.
        cylinders: Vec<CylinderReport>,
        /// The engine as a whole.
        block: Block,
        /// The stacks of the job, each as the report on a stack.
        stacks: Vec<StackReport> => "Vec::is_empty",
        /// What is to be done, when the document asks for a plan.
        plan: Option<PlanReport> => "Option::is_none",
        /// The plan in the order of the work.
        work_order: Vec<WorkStep> => "Vec::is_empty",
        /// What is odd.
        warnings: Vec<Warning>,
        /// What to take care of.
        cautions: Vec<String>,
        /// The working of every number, when it was asked for.
        working: Option<Working> => "Option::is_none",
    }
    /// The job as named in the document.
    JobName {
        /// Name.
        id: String,
        /// Date.
        date: String,
        /// Note.
        note: Option<String> => "Option::is_none",
    }
    /// The engine as named in the document.
    EngineName {
        /// Name.
        name: String,
        /// The shape its bores should have, where that is not straight.
        target_profile: Option<TargetReport> => "Option::is_none",
        /// Openings in the walls of its bores, where shape was not examined.
        windows: Vec<WindowReport> => "Vec::is_empty",
        /// Why its bores may be neither honed nor bored, when they may not.
        may_not_be_machined: Option<String> => "Option::is_none",
        /// What is known of its pistons besides their sizes, as given.
        piston_record: Option<PistonRecord> => "Option::is_none",
    }
    /// The shape the bores should have, as named in the document.
    TargetReport {
        /// When they have it.
        state: ProfileState,
        /// Where it is printed, as given.
        origin: String,
    }
    /// An opening in the wall of a bore.
    WindowReport {
        /// What it is, as given.
        what: String,
        /// Depth of its upper edge.
        from_depth_mm: f64,
        /// Depth of its lower edge.
        to_depth_mm: f64,
        /// Angle it begins at.
        from_angle_deg: f64,
        /// Angle it ends at, counted onward from its beginning.
        to_angle_deg: f64,
    }
    /// What the numbers mean and how they were judged.
    Conventions {
        /// Temperature that sizes are given at.
        reference_temperature_c: f64,
        /// `diametral`
        clearance: &'static str,
        /// Rule of decision.
        rule: Rule,
        /// Probability asked for by the rule `conformance_probability`.
        at_least: f64,
        /// Tolerance over the uncertainty interval asked for by the rule `simple_acceptance_by_ratio`.
        ratio_at_least: Option<f64> => "Option::is_none",
        /// Share of the expanded uncertainty that a value must lie inside the limits to conform, with the rule `expanded_guard_band`.
        acceptance_guard: Option<f64> => "Option::is_none",
        /// Share of the expanded uncertainty that a value must lie outside the limits to not conform, with the rule `expanded_guard_band`.
        rejection_guard: Option<f64> => "Option::is_none",
    }
    /// State of a gauge.
    GaugeReport {
        /// Name.
        name: String,
        /// `in date` or `overdue`, on the day of the job.
        calibration: &'static str,
        /// The row of a published table that stands for its data sheet, with the source of it.
        preset: Option<String> => "Option::is_none",
        /// Error of the zero, where it was checked.
        zero_error: Option<MeasuredValue> => "Option::is_none",
        /// `within its limit` or `beyond its limit`: the drift on its master, where it was checked after the work.
        recheck: Option<&'static str> => "Option::is_none",
    }
    /// A value with its uncertainty.
    MeasuredValue {
        /// Best estimate.
        value_mm: f64,
        /// Standard uncertainty.
        standard_uncertainty_mm: f64,
        /// Expanded uncertainty at about 95 %: coverage factor times standard uncertainty.
        expanded_uncertainty_mm: f64,
        /// Coverage factor: 2, or with few degrees of freedom that of Student's t at the same probability.
        coverage_factor: f64,
        /// Effective degrees of freedom of the standard uncertainty; absent when they are infinite.
        dof: Option<f64> => "Option::is_none",
        /// Sources, largest share first.
        budget: Vec<BudgetLine>,
        /// The largest share.
        dominant: Option<Dominant> => "Option::is_none",
    }
    /// Share of one source.
    BudgetLine {
        /// The source in words.
        source: String,
        /// Sensitivity times standard uncertainty, with its sign.
        contribution_mm: f64,
        /// Share of the variance, 0 to 1.
        share: f64,
        /// Field of the document it comes from.
        path: String,
    }
    /// The source with the largest share.
    Dominant {
        /// The source in words.
        source: String,
        /// Share of the variance, 0 to 1.
        share: f64,
        /// Field of the document it comes from.
        path: String,
    }
    /// One cylinder.
    CylinderReport {
        /// Its number.
        number: u32,
        /// Its piston.
        piston: Option<PistonReport> => "Option::is_none",
        /// Its bore.
        bore: Option<BoreReport> => "Option::is_none",
        /// Piston in bore.
        clearance: Option<ClearanceReport> => "Option::is_none",
        /// Piston in bore everywhere and at temperature, when the shape of the pistons is known.
        hot: Option<HotReport> => "Option::is_none",
        /// Findings by eye on a part of which nothing was read.
        findings: Vec<Finding> => "Vec::is_empty",
        /// What was not read.
        missing: Vec<String> => "Vec::is_empty",
        /// Does it go back together.
        verdict: Verdict,
    }
    /// A piston.
    PistonReport {
        /// What is known of it besides its sizes, as given, where that is not what is known of the engine's pistons.
        record: Option<PistonRecord> => "Option::is_none",
        /// Its sizes, in the order of the document.
        sizes: Vec<PistonSizeReport>,
        /// Thrust diameter less pin-axis diameter at the height of the gauge point.
        ovality: Option<MeasuredValue> => "Option::is_none",
        /// Decisions.
        decisions: Vec<Decision>,
        /// Findings by eye.
        findings: Vec<Finding>,
        /// Does it go back.
        verdict: Verdict,
    }
    /// A size of a piston.
    PistonSizeReport {
        /// Height of the place.
        height_mm: f64,
        /// What the height is counted from.
        datum: Datum,
        /// Direction of the diameter.
        angle_deg: f64,
        /// Surface that was touched.
        over: Surface,
        /// Material at this height, where the piston is of several.
        material: Option<String> => "Option::is_none",
        /// Readings as typed.
        readings: Vec<String>,
        /// Size at 20 C over that surface.
        size: MeasuredValue,
        /// Size at 20 C of the metal under a coating of stated thickness.
        bare_size: Option<MeasuredValue> => "Option::is_none",
    }
    /// A bore.
    BoreReport {
        /// Its diameters, in the order of the document.
        places: Vec<BorePlaceReport>,
        /// Size by the size rule.
        size: Option<MeasuredValue> => "Option::is_none",
        /// Taper by the taper rule.
        taper: Option<MeasuredValue> => "Option::is_none",
        /// Out-of-round by its rule, as a difference of diameters.
        out_of_round: Option<MeasuredValue> => "Option::is_none",
        /// Decisions.
        decisions: Vec<Decision>,
        /// Findings by eye.
        findings: Vec<Finding>,
        /// Does it go back.
        verdict: Verdict,
    }
    /// A diameter of a bore.
    BorePlaceReport {
        /// Depth from the deck.
        depth_mm: f64,
        /// Direction of the diameter.
        axis_deg: f64,
        /// Readings as typed.
        readings: Vec<String>,
        /// Size at 20 C.
        size: MeasuredValue,
        /// Deviation from the nominal size that a cold target profile intends at this depth.
        intended_mm: Option<f64> => "Option::is_none",
        /// How far the size is from that target; above 0 it is too wide.
        from_target: Option<MeasuredValue> => "Option::is_none",
    }
    /// Piston in bore.
    ClearanceReport {
        /// Clearance at 20 C.
        bench: Option<MeasuredValue> => "Option::is_none",
        /// Clearance at 20 C at the smallest place of the bore that was read.
        smallest: Option<MeasuredValue> => "Option::is_none",
        /// The same at the place that is smallest against a cold target profile, less the deviation intended there.
        smallest_from_target: Option<MeasuredValue> => "Option::is_none",
        /// Clearance at the stated temperatures.
        running: Option<RunningReport> => "Option::is_none",
        /// What the numbers do not say.
        note: Option<String> => "Option::is_none",
        /// Decisions.
        decisions: Vec<Decision>,
    }
    /// Clearance at the stated temperatures.
    RunningReport {
        /// Hottest piston in the coldest bore.
        tight: RunningCase,
        /// Coldest piston in the hottest bore.
        loose: RunningCase,
        /// Where the temperatures come from.
        origin: String,
    }
    /// Clearance at one pair of temperatures.
    RunningCase {
        /// Temperature of the piston.
        piston_temperature_c: f64,
        /// Temperature of the bore.
        bore_temperature_c: f64,
        /// Clearance of freely growing parts.
        clearance: MeasuredValue,
        /// That of the original piston at the maker's least bench clearance.
        reference: Option<MeasuredValue> => "Option::is_none",
        /// The one less the other.
        margin: Option<MeasuredValue> => "Option::is_none",
    }
    /// The engine as a whole.
    Block {
        /// Its verdict: the worst of its cylinders.
        verdict: Verdict,
        /// Number of cylinders of each outcome.
        counts: BTreeMap<&'static str, u32>,
    }
}

written!(Report, "report");

impl CylinderReport {
    /// Every decision on it, in the order of the work.
    pub fn decisions(&self) -> impl Iterator<Item = &Decision> {
        let of_piston = self.piston.iter().flat_map(|p| &p.decisions);
        let of_bore = self.bore.iter().flat_map(|b| &b.decisions);
        of_piston.chain(of_bore).chain(self.clearance.iter().flat_map(|c| &c.decisions))
    }

    /// Every finding in it.
    pub(crate) fn seen(&self) -> impl Iterator<Item = &Finding> {
        let of_piston = self.piston.iter().flat_map(|p| &p.findings);
        of_piston.chain(self.bore.iter().flat_map(|b| &b.findings)).chain(&self.findings)
    }

    /// What its findings and its sizes say only together.
    pub(crate) fn together(&self) -> Vec<Ground> {
        together(self.seen(), self.decisions())
    }
}
