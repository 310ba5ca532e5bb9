//! The job document, as it is written. `core/docs/job.md` explains every field.

use super::entry::{Count, Date, Entry, Probability, Pure, Words};
use super::plan::Plan;
use crate::choice::{alternatives, choices};
use crate::decision::{Rule, finding, signs};
use crate::fit::document::{Elastic, Field, Find, Motion, Pictures, PistonShape};
use crate::quantity::{Angle, Expansion, Length, Temperature, TemperatureInterval};
use crate::stack::StackEntry;
use schemars::JsonSchema;
use serde::Serialize;

/// Structures of the document: every field has a meaning in `core/docs/job.md`, and unknown fields are refused.
macro_rules! document {
    (@value $fields:ident $field:ident) => {
        $field.ok_or_else(|| $fields.missing(stringify!($field)))?
    };
    (@value $fields:ident $field:ident default $($rest:tt)*) => {
        $field.unwrap_or_default()
    };
    ($($(#[doc = $doc:literal])+ $name:ident {
        $($(#[doc = $field_doc:literal])+ $(#[serde($($serde:tt)*)])? $(#[schemars($($schemars:tt)*)])? $field:ident: $type:ty,)*
    })+) => {
        $(
            $(#[doc = $doc])+
            #[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
            #[serde(deny_unknown_fields)]
            pub struct $name {
                $($(#[doc = $field_doc])+ $(#[serde($($serde)*)])? $(#[schemars($($schemars)*)])? pub $field: $type,)*
            }

            impl $crate::job::decode::Decode for $name {
                fn decode(place: $crate::job::decode::Place<'_>) -> Result<Self, $crate::Error> {
                    let mut fields = $crate::job::decode::Fields::of(place, &[$(stringify!($field)),*])?;
                    $(let $field: Option<$type> = fields.read(stringify!($field));)*
                    fields.finish()?;
                    Ok($name { $($field: $crate::job::document::document!(@value fields $field $($($serde)*)?),)* })
                }
            }

            impl<'de> serde::Deserialize<'de> for $name {
                fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                    $crate::job::decode::deserialize(deserializer)
                }
            }
        )+
    };
}
pub(crate) use document;

document! {
    /// One engine on one day.
    Document {
        /// `gaugepoint-job`
        format: Entry<Words>,
        /// Version of the format: 1.
        version: Entry<Count>,
        /// What the job is.
        job: JobHead,
        /// Where it was measured.
        shop: Shop,
        /// Materials by name.
        materials: Vec<Material>,
        /// Gauges by name.
        gauges: Vec<Gauge>,
        /// The engine and its limits.
        engine: Engine,
        /// Temperatures in the running engine.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        running: Option<Running>,
        /// Overlap that an elastic skirt is allowed to take, for the hot fits.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        elastic: Option<Elastic>,
        /// What is looked for in the hot fits.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        find: Option<Find>,
        /// Data to draw of the hot fits.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pictures: Option<Pictures>,
        /// How conformity is decided.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        decision: Option<DecisionRule>,
        /// Stacks of this engine, each with a name of its own. Their numbers are plain, in units of their own.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        stacks: Vec<StackEntry>,
        /// What was read and seen, cylinder by cylinder.
        cylinders: Vec<Cylinder>,
        /// What is to be done.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        plan: Option<Plan>,
    }
    /// What the job is.
    JobHead {
        /// Name of the job.
        id: Entry<Words>,
        /// Day of the measurement.
        date: Entry<Date>,
        /// Carried into the report.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        note: Option<Entry<Words>>,
    }
    /// Where it was measured.
    Shop {
        /// Gauges are at this temperature unless a measurement says otherwise.
        temperature: Entry<Temperature>,
        /// The thermometer all temperatures were read with.
        thermometer: Thermometer,
    }
    /// A thermometer.
    Thermometer {
        /// Half-width of its error.
        permissible_error: Entry<TemperatureInterval>,
        /// How well that figure is known; taken as exact without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        permissible_error_relative_uncertainty: Option<Entry<Pure>>,
    }
    /// A material and its expansion.
    Material {
        /// Name, referred to elsewhere.
        name: Entry<Words>,
        /// Law of expansion.
        law: Law,
        /// Half-width of the error of the coefficient; that of a built-in law stands in the table.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        coefficient_permissible_error: Option<Entry<Expansion>>,
        /// Where the figures come from; that of a built-in law stands in the table.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        source: Option<Entry<Words>>,
        /// How far they can be trusted; that of a built-in law stands in the table.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        confidence: Option<Confidence>,
    }
    /// One mean coefficient over a range.
    MeanCoefficient {
        /// Temperature the mean starts from.
        base: Entry<Temperature>,
        /// The coefficient.
        value: Entry<Expansion>,
        /// Lowest temperature it holds at.
        from: Entry<Temperature>,
        /// Highest temperature it holds at.
        to: Entry<Temperature>,
    }
    /// Mean coefficients from one base to several temperatures.
    MeanTable {
        /// Temperature the means start from.
        base: Entry<Temperature>,
        /// In rising order of temperature.
        rows: Vec<MeanRow>,
    }
    /// A row of a table of means.
    MeanRow {
        /// End of the mean.
        to: Entry<Temperature>,
        /// Mean coefficient from the base to it.
        value: Entry<Expansion>,
    }
    /// Instantaneous coefficients at several temperatures.
    InstantaneousTable {
        /// In rising order of temperature.
        rows: Vec<InstantaneousRow>,
    }
    /// A row of a table of instantaneous coefficients.
    InstantaneousRow {
        /// Temperature.
        at: Entry<Temperature>,
        /// Coefficient at it.
        value: Entry<Expansion>,
    }
    /// Instantaneous coefficient as a polynomial of the temperature in kelvin.
    InstantaneousPolynomial {
        /// `c0 + c1 T + c2 T^2 + ...` per kelvin.
        kelvin_coefficients: Vec<Entry<Pure>>,
        /// Lowest temperature it holds at.
        from: Entry<Temperature>,
        /// Highest temperature it holds at.
        to: Entry<Temperature>,
    }
    /// Strain from any length as a polynomial of the temperature in kelvin.
    StrainPolynomial {
        /// `c0 + c1 T + c2 T^2 + ...`.
        kelvin_coefficients: Vec<Entry<Pure>>,
        /// Lowest temperature it holds at.
        from: Entry<Temperature>,
        /// Highest temperature it holds at.
        to: Entry<Temperature>,
    }
    /// Structure of compacted or spheroidal graphite iron, for the published regression.
    GraphiteIron {
        /// Nodularity in %.
        nodularity_percent: Entry<Pure>,
        /// Area fraction of graphite in %.
        graphite_percent: Entry<Pure>,
        /// Pearlite over ferrite in the matrix.
        pearlite_to_ferrite: Entry<Pure>,
    }
    /// A gauge, from its data sheet and its calibration.
    Gauge {
        /// Name, referred to elsewhere.
        name: Entry<Words>,
        /// Kind of gauge.
        kind: GaugeKind,
        /// Smallest step.
        resolution: Entry<Length>,
        /// Half-width of its permissible error.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        permissible_error: Option<Entry<Length>>,
        /// Row of a published table, in place of the permissible error and the parallelism.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        preset: Option<Entry<Words>>,
        /// How well that figure is known; taken as exact without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        permissible_error_relative_uncertainty: Option<Entry<Pure>>,
        /// Standard deviation of one reading, from a study of the gauge and its users; without it, from the repeats in this job.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        repeatability: Option<Entry<Length>>,
        /// Degrees of freedom of that standard deviation; taken as exact without them.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        repeatability_dof: Option<Entry<Pure>>,
        /// Half-width of the error from faces that are not parallel.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        face_parallelism: Option<Entry<Length>>,
        /// Material of the scale or frame.
        material: Entry<Words>,
        /// Day of its calibration.
        calibrated: Entry<Date>,
        /// Day the calibration runs out.
        calibration_due: Entry<Date>,
        /// Check of a micrometer or caliper on a standard.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        zero_check: Option<ZeroCheck>,
        /// Setting of a bore gauge.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        setting: Option<Setting>,
        /// Check on the master after the work.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        recheck: Option<Recheck>,
    }
    /// Check of a gauge on its master after the work.
    Recheck {
        /// What it read: a bore gauge its deviation from the setting, the others their reading of the standard.
        reading: Entry<Length>,
        /// Largest drift that is accepted.
        limit: Entry<Length>,
    }
    /// Check of a micrometer or caliper on a standard.
    ZeroCheck {
        /// Name of the standard.
        standard: Entry<Words>,
        /// Certified size at 20 C.
        size: Entry<Length>,
        /// Expanded uncertainty of that size.
        expanded_uncertainty: Entry<Length>,
        /// Coverage factor of that uncertainty.
        coverage_factor: Entry<Pure>,
        /// Material of the standard.
        material: Entry<Words>,
        /// What the gauge read on it.
        reading: Entry<Length>,
        /// Temperature of both.
        temperature: Entry<Temperature>,
    }
    /// A bore gauge set on a ring.
    OnRing {
        /// Name of the ring.
        name: Entry<Words>,
        /// Certified size at 20 C.
        size: Entry<Length>,
        /// Expanded uncertainty of that size.
        expanded_uncertainty: Entry<Length>,
        /// Coverage factor of that uncertainty.
        coverage_factor: Entry<Pure>,
        /// Material of the ring.
        material: Entry<Words>,
        /// Temperature of ring and gauge.
        temperature: Entry<Temperature>,
    }
    /// A bore gauge set between the faces of a micrometer.
    OnMicrometer {
        /// Name of the micrometer.
        gauge: Entry<Words>,
        /// What the micrometer was set to.
        reading: Entry<Length>,
        /// Temperature of micrometer and gauge.
        temperature: Entry<Temperature>,
    }
    /// The engine and its limits.
    Engine {
        /// What it is called.
        name: Entry<Words>,
        /// How many cylinders.
        cylinders: Entry<Count>,
        /// The bores.
        bore: EngineBore,
        /// The pistons.
        piston: EnginePiston,
        /// Crank, rod and deck: where the pistons stand in their bores.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        motion: Option<Motion>,
        /// How readings of a bore become its size, taper and out-of-round.
        reduction: Reduction,
        /// Printed limits.
        limits: Limits,
        /// Limits that are printed for some of the cylinders.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        limits_by_cylinder: Vec<LimitsByCylinder>,
    }
    /// Limits of some of the cylinders, in place of those of the engine.
    LimitsByCylinder {
        /// Their numbers.
        cylinders: Vec<Entry<Count>>,
        /// The limits that differ.
        limits: Limits,
    }
    /// The bores of the engine.
    EngineBore {
        /// Nominal diameter.
        nominal: Entry<Length>,
        /// From the deck to the end of the bore.
        length: Entry<Length>,
        /// Material of the wall that carries the bore.
        material: Entry<Words>,
        /// The shape it should have, where that is not straight.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        target_profile: Option<TargetProfile>,
        /// Openings in the wall, as the ports of a two-stroke engine.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        windows: Vec<Window>,
        /// That the bore may be neither honed nor bored, as a plated one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        may_not_be_machined: Option<NotMachined>,
    }
    /// The shape a bore should have.
    TargetProfile {
        /// When it has that shape.
        state: ProfileState,
        /// In rising order of depth, joined by straight lines.
        rows: Vec<TargetRow>,
        /// Where it is printed.
        origin: Entry<Words>,
    }
    /// A row of a target profile.
    TargetRow {
        /// Depth from the deck.
        depth: Entry<Length>,
        /// Intended diameter less the nominal size; below 0 the bore is narrower.
        deviation: Entry<Length>,
    }
    /// An opening in the wall of a bore.
    Window {
        /// Depth of its upper edge.
        from_depth: Entry<Length>,
        /// Depth of its lower edge.
        to_depth: Entry<Length>,
        /// Angle it begins at.
        from_angle: Entry<Angle>,
        /// Angle it ends at, counted onward from its beginning.
        to_angle: Entry<Angle>,
        /// What it is.
        what: Entry<Words>,
    }
    /// That a bore may not be machined.
    NotMachined {
        /// Why.
        reason: Entry<Words>,
    }
    /// The pistons of the engine.
    EnginePiston {
        /// Nominal diameter.
        nominal: Entry<Length>,
        /// Material at the gauge point.
        material: Entry<Words>,
        /// Where the maker states the diameter.
        gauge_point: GaugePoint,
        /// Materials from height to height, where the piston is of several.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        materials_by_height: Vec<MaterialByHeight>,
        /// What is known of them besides their sizes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        record: Option<PistonRecord>,
        /// Their shape, for the hot fit of every cylinder.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        shape: Option<PistonShape>,
    }
    /// What is known of a piston besides its sizes. What was not seen is left out.
    PistonRecord {
        /// How it was made.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        make: Option<signs::Make>,
        /// Silicon in its alloy.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        silicon: Option<Silicon>,
        /// Form of the skirt.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        skirt: Option<signs::SkirtType>,
        /// How its pin is held.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pin: Option<signs::PinHeld>,
    }
    /// Silicon in the alloy of a piston.
    Silicon {
        /// Its class.
        class: signs::SiliconClass,
        /// What shows it, such as a mark or an analysis; looks do not.
        evidence: Entry<Words>,
    }
    /// The material of a piston between two heights.
    MaterialByHeight {
        /// Lower height.
        from: Entry<Length>,
        /// Upper height.
        to: Entry<Length>,
        /// What the heights are counted from; as the gauge point without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        datum: Option<Datum>,
        /// The material.
        material: Entry<Words>,
    }
    /// A place on a piston.
    GaugePoint {
        /// Height from the datum.
        height: Entry<Length>,
        /// What the height is counted from.
        datum: Datum,
        /// Direction of the diameter.
        angle: Entry<Angle>,
    }
    /// How readings of a bore become three numbers.
    Reduction {
        /// Rule for the size.
        size: SizeRule,
        /// Rule for the taper.
        taper: TaperRule,
        /// Rule for the out-of-round.
        out_of_round: OutOfRoundRule,
    }
    /// A stated place of the size of a bore.
    SizeAt {
        /// Depth.
        depth: Entry<Length>,
        /// Axis; the mean over the axes without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        axis: Option<Entry<Angle>>,
    }
    /// Printed limits.
    Limits {
        /// Of the bore.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        bore_size: Option<Limit>,
        /// Of the taper.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        bore_taper: Option<Limit>,
        /// Of the out-of-round.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        bore_out_of_round: Option<Limit>,
        /// Of the piston at its gauge point.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        piston_size: Option<Limit>,
        /// Of the clearance on the bench.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        bench_clearance: Option<Limit>,
    }
    /// A printed limit and what it is meant for.
    Limit {
        /// Lower limit.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        min: Option<Entry<Length>>,
        /// Upper limit.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        max: Option<Entry<Length>>,
        /// Where it is printed.
        origin: Entry<Words>,
        /// Temperature it holds at.
        reference_temperature: Entry<Temperature>,
        /// Surface of the piston it means.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        over: Option<Surface>,
        /// States of the piston it is meant for.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        piston_states: Option<Vec<PistonState>>,
        /// States of the block it is meant for.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        clamping: Option<Vec<Clamping>>,
    }
    /// Temperatures in the running engine.
    Running {
        /// Range of the piston's temperature at the gauge point.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        piston_temperature: Option<Range>,
        /// Range of the temperature of the bore's wall.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        bore_temperature: Option<Range>,
        /// Where they come from.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        origin: Option<Entry<Words>>,
        /// Temperatures by height and depth, with the shape of the pistons; in place of the two ranges and their origin.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        field: Option<Field>,
        /// Material of the pistons the maker's limits were made for.
        original_piston_material: Entry<Words>,
        /// Shape of these pistons; that of the engine's pistons without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        original_piston_shape: Option<PistonShape>,
    }
    /// A range of temperature.
    Range {
        /// Lowest.
        min: Entry<Temperature>,
        /// Highest.
        max: Entry<Temperature>,
    }
    /// How conformity is decided.
    DecisionRule {
        /// The rule.
        rule: Rule,
        /// Probability asked for, with `conformance_probability`.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at_least: Option<Entry<Probability>>,
        /// Tolerance over the uncertainty interval 2 U asked for, with `simple_acceptance_by_ratio`.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        ratio_at_least: Option<Entry<Pure>>,
        /// Share of the expanded uncertainty that a value must lie inside the limits to conform, with `expanded_guard_band`; below 0 it may lie outside.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        acceptance_guard: Option<Entry<Pure>>,
        /// Share of the expanded uncertainty that a value must lie outside the limits to not conform, with `expanded_guard_band`; below 0 it may lie inside.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rejection_guard: Option<Entry<Pure>>,
    }
    /// What was read and seen in one cylinder.
    Cylinder {
        /// Its number, from 1.
        number: Entry<Count>,
        /// Its piston.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        piston: Option<Piston>,
        /// Its bore.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        bore: Option<Bore>,
        /// What was seen.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        findings: Vec<Finding>,
    }
    /// The piston of a cylinder.
    Piston {
        /// Its state.
        state: PistonState,
        /// What is known of it besides its sizes, in place of the record of the engine's pistons.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        record: Option<PistonRecord>,
        /// Its readings.
        readings: Vec<PistonReading>,
    }
    /// Readings of a piston at one place.
    PistonReading {
        /// Name of the gauge.
        gauge: Entry<Words>,
        /// Height from the datum.
        height: Entry<Length>,
        /// What the height is counted from.
        datum: Datum,
        /// Direction of the diameter.
        angle: Entry<Angle>,
        /// Surface that was touched.
        over: Surface,
        /// The coating, where one was touched and its thickness is known.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        coating: Option<Coating>,
        /// Temperature of the piston.
        temperature: Entry<Temperature>,
        /// Temperature of the gauge, when it is not that of the shop.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        gauge_temperature: Option<Entry<Temperature>>,
        /// What was read, once or more.
        repeats: Vec<Entry<Length>>,
    }
    /// A coating.
    Coating {
        /// Thickness on one side.
        thickness_per_side: Entry<Length>,
        /// Half-width of its error.
        permissible_error: Entry<Length>,
    }
    /// The bore of a cylinder.
    Bore {
        /// State of the block.
        clamping: Clamping,
        /// Name of the gauge.
        gauge: Entry<Words>,
        /// Temperature of the bore.
        temperature: Entry<Temperature>,
        /// Temperature of the gauge, when it is not that of the shop.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        gauge_temperature: Option<Entry<Temperature>>,
        /// Its readings.
        readings: Vec<BoreReading>,
    }
    /// Readings of a bore at one place.
    BoreReading {
        /// Depth from the deck.
        depth: Entry<Length>,
        /// Direction of the diameter.
        axis: Entry<Angle>,
        /// Deviation from the setting, once or more; positive when the bore is larger.
        repeats: Vec<Entry<Length>>,
    }
    /// Something seen.
    Finding {
        /// Where.
        place: finding::Place,
        /// What.
        what: finding::What,
        /// How bad.
        severity: finding::Severity,
        /// Carried into the report.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        note: Option<Entry<Words>>,
        /// Answers to the questions that tell the causes apart.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        answers: Vec<Answered>,
        /// The cause, once it is known.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        cause: Option<Entry<Words>>,
    }
    /// An answer to a question about a finding.
    Answered {
        /// The question.
        question: signs::Question,
        /// The answer.
        answer: signs::Answer,
    }
}

impl PistonRecord {
    /// What of it answers questions about findings.
    pub(crate) fn known(&self) -> signs::PistonRecord {
        let silicon = self.silicon.as_ref().map(|s| s.class);
        signs::PistonRecord { make: self.make, silicon, skirt: self.skirt, pin: self.pin }
    }

    /// Refuses evidence that is no text.
    pub(crate) fn check(&self) -> Result<(), crate::error::Error> {
        self.silicon.as_ref().map_or(Ok(()), |s| s.evidence.words().map(|_| ()))
    }
}

choices! {
    /// How far a figure can be trusted.
    Confidence {
        /// From a standard, a handbook or a paper.
        Published = "published",
        /// From the maker of the part.
        Maker = "maker",
        /// From experience or memory.
        Unverified = "unverified",
    }
    /// Kind of gauge.
    GaugeKind {
        /// Outside micrometer.
        OutsideMicrometer = "outside_micrometer",
        /// Caliper, used outside.
        Caliper = "caliper",
        /// Comparative bore gauge.
        BoreGauge = "bore_gauge",
    }
    /// What a height on a piston is counted from.
    Datum {
        /// Bottom edge of the skirt, upward.
        SkirtBottom = "skirt_bottom",
        /// Top of the crown, downward.
        CrownTop = "crown_top",
        /// Axis of the pin.
        PinAxis = "pin_axis",
    }
    /// Surface of a skirt.
    Surface {
        /// The metal, or a bare window in the coating.
        BareMetal = "bare_metal",
        /// The coating.
        Coating = "coating",
    }
    /// State of a piston.
    PistonState {
        /// Never run.
        New = "new",
        /// Has run.
        RunIn = "run_in",
        /// Coated or finished anew.
        Refinished = "refinished",
    }
    /// State of the block or liner while the bore is measured.
    Clamping {
        /// Nothing fitted.
        Bare = "bare",
        /// Main bearing caps torqued.
        CapsTorqued = "caps_torqued",
        /// Torque plate fitted.
        PlateFitted = "plate_fitted",
        /// Liner clamped in its seat.
        LinerClamped = "liner_clamped",
    }
    /// When a bore has its target profile.
    ProfileState {
        /// On the bench, at 20 C.
        Cold = "cold",
        /// In the running engine: it cannot be compared with cold readings.
        Running = "running",
    }
    /// Rule for the taper of a bore.
    TaperRule {
        /// The largest, over the axes, of largest minus smallest along the axis.
        AlongAxis = "along_axis",
        /// The largest at the least depth against the largest at the greatest depth, without sign.
        TopToBottom = "top_to_bottom",
    }
    /// Rule for the out-of-round of a bore.
    OutOfRoundRule {
        /// The largest, over the depths, of largest minus smallest at the depth.
        AtLevel = "at_level",
        /// Largest on one axis minus smallest on the other, the greater of the two ways.
        BetweenAxes = "between_axes",
    }
}

alternatives! {
    /// Law of expansion of a material.
    Law {
        /// One mean coefficient over a range.
        MeanCoefficient(MeanCoefficient) = "mean_coefficient",
        /// Mean coefficients from one base to several temperatures.
        MeanTable(MeanTable) = "mean_table",
        /// Instantaneous coefficients at several temperatures.
        InstantaneousTable(InstantaneousTable) = "instantaneous_table",
        /// Instantaneous coefficient as a polynomial.
        InstantaneousPolynomial(InstantaneousPolynomial) = "instantaneous_polynomial",
        /// Strain as a polynomial.
        StrainPolynomial(StrainPolynomial) = "strain_polynomial",
        /// Graphite iron from its structure.
        GraphiteIron(GraphiteIron) = "graphite_iron",
        /// The law of a built-in material, by its name.
        BuiltIn(Entry<Words>) = "built_in",
    }
}

alternatives! {
    /// How a bore gauge was set.
    Setting {
        /// On a ring.
        Ring(OnRing) = "ring",
        /// Between the faces of a micrometer.
        Micrometer(OnMicrometer) = "micrometer",
    }
}

alternatives! {
    /// Rule for the size of a bore.
    SizeRule {
        /// The largest reading.
        Largest = "largest",
        /// The mean of all readings.
        Mean = "mean",
        /// The mean of the readings at the greatest depth, where wear is least.
        SmallestWear = "smallest_wear",
        /// The reading at a stated place.
        At(SizeAt) = "at",
    }
}
