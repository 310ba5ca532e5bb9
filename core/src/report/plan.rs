//! The plan as data. `core/docs/plan.md` explains every field.

use super::data::{BoreReport, MeasuredValue, PistonSizeReport, report};
use crate::choice::choices;
use crate::decision::Decision;
use crate::job::document::Clamping;
use crate::job::plan::Stage;
use crate::plan::filing::Outcome as GapOutcome;
use crate::plan::matching::Case;
use crate::plan::oversize::Way;
use crate::plan::surface::{Finding as SurfaceFinding, Parameter};
use schemars::JsonSchema;
use serde::Serialize;

report! {
    /// What is to be done to the engine.
    PlanReport {
        /// Clearance that is wanted.
        wanted: Option<WantedReport> => "Option::is_none",
        /// What is done to every cylinder, in order of number.
        cylinders: Vec<PlannedCylinder>,
        /// To which sizes the bores can be machined.
        oversizes: Option<OversizesReport> => "Option::is_none",
        /// Pistons to hand, in the order of the document.
        pistons: Vec<NewPistonReport> => "Vec::is_empty",
        /// Which of them goes into which bore that is left as it is.
        matching: Option<MatchingReport> => "Option::is_none",
        /// Sizes that bores are machined to, each for its piston.
        targets: Vec<FinishTarget> => "Vec::is_empty",
        /// Sleeves that are pressed in.
        sleeves: Vec<SleeveReport> => "Vec::is_empty",
        /// Shims below the liners.
        liners: Option<LinersReport> => "Option::is_none",
        /// Rings, in the order of the document.
        rings: Vec<RingReport> => "Vec::is_empty",
        /// Which head gasket.
        gasket: Option<GasketReport> => "Option::is_none",
        /// What is taken off the masses.
        masses: Option<MassesReport> => "Option::is_none",
        /// What was found after the work.
        finish: Option<FinishReport> => "Option::is_none",
        /// What is not settled.
        open: Vec<String> => "Vec::is_empty",
    }
    /// Clearance that is wanted at 20 C, over the diameter.
    WantedReport {
        /// Lower limit.
        min_mm: f64,
        /// Upper limit.
        max_mm: f64,
        /// What is aimed at.
        target_mm: f64,
        /// States of the block that it is meant for.
        clamping: Vec<Clamping>,
        /// Where it comes from.
        origin: String,
    }
    /// What is done to a cylinder.
    PlannedCylinder {
        /// Its number.
        number: u32,
        /// What is done to its bore.
        bore: BoreWork,
        /// Oversize that it is machined to.
        oversize_mm: Option<f64> => "Option::is_none",
        /// What is done about its piston.
        piston: PistonWork,
        /// Name of the piston that is fitted, where it is known.
        new_piston: Option<String> => "Option::is_none",
        /// Why.
        reasons: Vec<String>,
    }
    /// To which sizes the bores can be machined.
    OversizesReport {
        /// What every bore that was read needs.
        needs: Vec<BoreNeed>,
        /// What each step brings with it, rising.
        steps: Vec<StepReport>,
        /// Every way, those that can be done first, the cheapest first.
        choices: Vec<ChoiceReport>,
        /// Place of the way that is taken; absent when none can be.
        chosen: Option<usize> => "Option::is_none",
        /// Order in which the bores are machined, so that the heat spreads.
        order: Vec<u32>,
    }
    /// What a bore needs.
    BoreNeed {
        /// Number of the cylinder.
        cylinder: u32,
        /// Smallest clean bore when both sides are worn alike.
        clean_up_least: MeasuredValue,
        /// The same when one side alone is worn: diameters do not tell, so this one is used.
        clean_up: MeasuredValue,
        /// What the bore of a step must at least be, with the guard of the rule.
        needed_mm: f64,
        /// Largest bore that its walls allow, where they were gauged.
        largest_by_walls_mm: Option<f64> => "Option::is_none",
    }
    /// What a step brings with it.
    StepReport {
        /// Over the nominal bore.
        oversize_mm: f64,
        /// Its bore.
        bore_mm: f64,
        /// Compression ratio with the same chamber.
        compression_ratio: Option<f64> => "Option::is_none",
        /// End gap of rings that are kept.
        kept_ring_gap_mm: Option<f64> => "Option::is_none",
        /// Mass of a piston over that of a standard one.
        more_mass_g: Option<f64> => "Option::is_none",
    }
    /// A way to bring the block back.
    ChoiceReport {
        /// Which way.
        way: Way,
        /// Pistons, boring and sleeves together.
        price: f64,
        /// What is done to each bore that was read.
        actions: Vec<ActionReport>,
        /// What rules it out; absent for one that can be done.
        ruled_out: Vec<String> => "Vec::is_empty",
    }
    /// What is done to a bore.
    ActionReport {
        /// Number of the cylinder.
        cylinder: u32,
        /// `bore`, `sleeve` or `leave`.
        work: BoreWork,
        /// Oversize that it is bored to; absent for a bore that is left.
        oversize_mm: Option<f64> => "Option::is_none",
    }
    /// A piston to hand.
    NewPistonReport {
        /// Its name.
        name: String,
        /// Over the nominal size.
        oversize_mm: Option<f64> => "Option::is_none",
        /// Its sizes.
        sizes: Vec<PistonSizeReport>,
        /// Mass.
        mass_g: Option<f64> => "Option::is_none",
    }
    /// Which piston goes into which bore.
    MatchingReport {
        /// The case that the data are.
        case: Case,
        /// What in the data proves it.
        because: String,
        /// The pairs, in order of cylinder.
        pairs: Vec<PairReport>,
        /// Pistons without a bore.
        spare: Vec<String>,
        /// Least probability of conformity of its pairs, by the sizes and their uncertainties alone.
        worst_probability: f64,
        /// The same of the pistons as they are listed: the first in the first bore, and so on.
        worst_probability_as_listed: f64,
        /// The same of what the grades alone give.
        worst_probability_by_grade: Option<f64> => "Option::is_none",
        /// Sum of the squared deviations from the target.
        sum_of_squares_mm2: f64,
        /// The same of the pistons as they are listed.
        sum_of_squares_as_listed_mm2: f64,
        /// Largest difference of mass of the pistons that are fitted.
        mass_spread_g: Option<f64> => "Option::is_none",
    }
    /// A piston in a bore.
    PairReport {
        /// Number of the cylinder.
        cylinder: u32,
        /// Name of the piston.
        piston: String,
        /// Their clearance at 20 C.
        clearance: MeasuredValue,
        /// Clearance less its target.
        deviation_mm: f64,
        /// The clearance against what is wanted.
        decision: Decision,
    }
    /// Size that a bore is machined to.
    FinishTarget {
        /// Number of the cylinder.
        cylinder: u32,
        /// Name of its piston.
        piston: String,
        /// Size after honing, at 20 C.
        finish: MeasuredValue,
        /// Size after boring, at 20 C.
        boring: MeasuredValue,
        /// Half of the tolerance of the finish size.
        tolerance_mm: f64,
        /// What the dial must read on the machine.
        dial: Option<DialReport> => "Option::is_none",
    }
    /// What the dial of a bore gauge must read.
    DialReport {
        /// Name of the gauge.
        gauge: String,
        /// Temperature of the block.
        block_temperature_c: f64,
        /// Temperature of the gauge.
        gauge_temperature_c: f64,
        /// At the size after boring.
        boring: MeasuredValue,
        /// At the finish size.
        finish: MeasuredValue,
    }
    /// A sleeve that is pressed in.
    SleeveReport {
        /// Number of its cylinder.
        cylinder: u32,
        /// Its outside diameter at 20 C.
        outside: MeasuredValue,
        /// Hole that it takes, at 20 C.
        hole: MeasuredValue,
        /// Smallest hole: with the largest interference.
        hole_least_mm: f64,
        /// Largest hole: with the least interference.
        hole_most_mm: f64,
        /// Clearance when it goes in, the block heated and the sleeve chilled as stated.
        assembly_clearance: MeasuredValue,
        /// Does it slide in?
        slides_in: bool,
        /// Interference that is left at the coldest and at the hottest of the wall in the running engine; below 0 the sleeve has lost contact.
        running_interference_mm: Vec<f64> => "Vec::is_empty",
    }
    /// Shims below the liners of a row.
    LinersReport {
        /// The liners along the row.
        each: Vec<LinerReport>,
        /// Largest difference of neighbours at their nearest points.
        largest_step_mm: Option<f64> => "Option::is_none",
        /// What rules the row out; absent when it can be done.
        ruled_out: Vec<String> => "Vec::is_empty",
        /// Where the limits come from.
        origin: String,
    }
    /// A liner on its shims.
    LinerReport {
        /// Number of its cylinder.
        cylinder: u32,
        /// Most less least depth of its counterbore.
        unevenness_mm: f64,
        /// Its shims; empty is none, absent where nothing serves the row.
        shims_mm: Option<Vec<f64>> => "Option::is_none",
        /// Smallest protrusion round its flange.
        lowest_mm: Option<f64> => "Option::is_none",
        /// Largest protrusion round its flange.
        highest_mm: Option<f64> => "Option::is_none",
    }
    /// A ring and its gap.
    RingReport {
        /// Number of its cylinder.
        cylinder: u32,
        /// Which ring.
        ring: String,
        /// What is done; absent where the bore it runs in is not known.
        outcome: Option<GapOutcome> => "Option::is_none",
        /// Its gap in the bore it runs in.
        gap: Option<MeasuredValue> => "Option::is_none",
        /// Gap that it is filed to.
        target_mm: f64,
        /// What is filed off in all.
        file_off_mm: Option<f64> => "Option::is_none",
        /// What is filed off each end.
        each_end_mm: Option<f64> => "Option::is_none",
        /// Where the limits come from.
        origin: String,
    }
    /// Which head gasket.
    GasketReport {
        /// Mark of the grade.
        grade: String,
        /// Its thickness, compressed.
        thickness_mm: f64,
        /// The cylinder that decided.
        decided_by: u32,
        /// The pistons, in the order of the document.
        pistons: Vec<StandingReport>,
        /// Largest less smallest protrusion.
        spread_mm: f64,
        /// Is that within its limit?
        spread_is_met: Option<bool> => "Option::is_none",
        /// Probability that the true largest protrusion lies in a grade below.
        probability_below: f64,
        /// Probability that it lies in a grade above.
        probability_above: f64,
        /// Where the table is printed.
        origin: String,
    }
    /// How a piston stands.
    StandingReport {
        /// Number of its cylinder.
        cylinder: u32,
        /// Above the deck.
        protrusion_mm: f64,
        /// From its crown to the head, with that gasket.
        squish_mm: f64,
        /// Is that at least what is asked for?
        squish_is_met: Option<bool> => "Option::is_none",
    }
    /// What is taken off the masses.
    MassesReport {
        /// Heaviest mass that is allowed.
        most_g: f64,
        /// The cylinders, in the order of the document.
        each: Vec<MassReport>,
        /// Are all within the band then?
        is_met: bool,
        /// Where the band comes from.
        origin: String,
    }
    /// The mass of what goes into a cylinder.
    MassReport {
        /// Number of the cylinder.
        cylinder: u32,
        /// As it was weighed.
        mass_g: f64,
        /// What is taken off each part, in order.
        cuts: Vec<CutReport> => "Vec::is_empty",
        /// Then.
        left_g: f64,
        /// What it is then still over.
        over_g: f64,
    }
    /// What is taken off a part.
    CutReport {
        /// Which part.
        part: String,
        /// How much.
        off_g: f64,
    }
    /// What was found after the work.
    FinishReport {
        /// Who read it, as given.
        by: String,
        /// When, as given.
        date: String,
        /// Cylinder by cylinder, in the order of the document.
        cylinders: Vec<FinishedReport>,
        /// The pistons to hand matched to the bores as they are now.
        matching: Option<MatchingReport> => "Option::is_none",
        /// Is the job closed?
        result: Closing,
        /// What is not proven, not met or not read.
        open: Vec<String> => "Vec::is_empty",
    }
    /// A cylinder after the work.
    FinishedReport {
        /// Its number.
        number: u32,
        /// What was done to it last.
        stage: Stage,
        /// Name of its piston; absent for the one that was in it.
        piston: Option<String> => "Option::is_none",
        /// Its bore.
        bore: BoreReport,
        /// Finish size less the size that was found.
        stock: Option<MeasuredValue> => "Option::is_none",
        /// Clearance at 20 C.
        clearance: Option<MeasuredValue> => "Option::is_none",
        /// The clearance against what is wanted, and the size against its target.
        decisions: Vec<Decision>,
        /// End gaps, as they are now.
        gaps: Vec<GapReport> => "Vec::is_empty",
        /// Finish of its wall.
        surface: Vec<WallFinishReport> => "Vec::is_empty",
        /// What that makes.
        result: FinishResult,
        /// What to do next.
        next: String,
    }
}

report! {
    /// An end gap after filing.
    GapReport {
        /// Which ring.
        ring: String,
        /// Its gap.
        gap: MeasuredValue,
        /// The gap against its limits.
        decision: Decision,
    }
    /// A parameter of a finish.
    WallFinishReport {
        /// Which one.
        parameter: Parameter,
        /// As it was read, in um, % or degrees.
        value: Option<f64> => "Option::is_none",
        /// What is found.
        finding: SurfaceFinding,
    }
}

choices! {
    /// What is done to a bore.
    BoreWork {
        /// It goes back as it is.
        Leave = "leave",
        /// It is bored and honed.
        Bore = "bore",
        /// It takes a sleeve, and that is bored and honed.
        Sleeve = "sleeve",
        /// It cannot be machined: the block or liner is replaced or repaired.
        Replace = "replace",
        /// What the readings do not settle.
        Undecided = "undecided",
    }
    /// What is done about a piston.
    PistonWork {
        /// It goes back.
        Reuse = "reuse",
        /// Another is fitted.
        Replace = "replace",
        /// What the readings do not settle.
        Undecided = "undecided",
    }
    /// What was found of a bore after the work.
    FinishResult {
        /// The clearance is proven.
        Met = "met",
        /// It is bored, and the hone comes.
        ToBeHoned = "to be honed",
        /// It is still too small.
        HoneOn = "hone on",
        /// It is too large for its piston.
        TooLarge = "too large",
        /// Neither is proven.
        NotProven = "not proven",
    }
    /// Is a job closed?
    Closing {
        /// Everything is met and proven.
        Proven = "proven",
        /// Something is not.
        NotProven = "not proven",
    }
}
