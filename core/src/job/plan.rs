//! What the job document says of the plan, as it is written. `core/docs/plan.md` explains every field.

use super::document::{Bore, Clamping, Limit, PistonReading, PistonState, document};
use super::entry::{Count, Date, Entry, Mass, Pure, Volume, Words};
use crate::choice::choices;
use crate::quantity::{Angle, Length, Temperature};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

document! {
    /// What is to be done to the engine.
    Plan {
        /// Clearance that is wanted at 20 C, with both ends; the limit of the bench clearance without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        wanted_clearance: Option<Limit>,
        /// Clearance that is aimed at; the middle of the two without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        target_clearance: Option<Entry<Length>>,
        /// How bores that do not go back are machined.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        machining: Option<Machining>,
        /// Pistons that are to hand.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        pistons: Vec<NewPiston>,
        /// What holds when they are matched to the bores.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        matching: Option<Matching>,
        /// What was read after the work.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        finish: Option<Finish>,
    }
    /// How bores are machined.
    Machining {
        /// Diameter of the bore where it is not worn; the nominal bore without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        unworn: Option<Entry<Length>>,
        /// What removes the marks of the tool, on the diameter.
        tool_marks: Entry<Length>,
        /// What the bar leaves for the hone, on the diameter.
        honing: Entry<Length>,
        /// Half of the tolerance of the finish size.
        finish_tolerance: Entry<Length>,
        /// Sizes of piston that can be had, rising.
        steps: Vec<Step>,
        /// The step that is asked for; the best without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        chosen_oversize: Option<Entry<Length>>,
        /// What boring and honing one bore costs.
        boring_price: Entry<Pure>,
        /// What a sleeve costs, with the work; none is fitted without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        sleeve_price: Option<Entry<Pure>>,
        /// Cylinders that may not take a sleeve.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        no_sleeve_in: Vec<Entry<Count>>,
        /// Largest bore that the opening of the gasket allows.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        largest_by_gasket: Option<Entry<Length>>,
        /// Walls that were gauged.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        walls: Option<Walls>,
        /// The chamber at the nominal bore, for the compression ratio of each step.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        chamber: Option<Chamber>,
        /// End gap, at the nominal bore, of rings that are kept.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        kept_ring_gap: Option<Entry<Length>>,
        /// With what a bore is gauged on the machine, for what the dial must read.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        gauging: Option<Gauging>,
    }
    /// A size of piston.
    Step {
        /// Over the nominal size.
        oversize: Entry<Length>,
        /// What one piston with its rings costs.
        price: Entry<Pure>,
        /// How many there are; enough without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        available: Option<Entry<Count>>,
        /// Mass of a piston over that of a standard one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        more_mass: Option<Entry<Mass>>,
    }
    /// Walls that were gauged.
    Walls {
        /// Thickness that is to be left.
        least: Entry<Length>,
        /// Where it comes from.
        origin: Entry<Words>,
        /// Largest error of a reading; all of it is taken off.
        permissible_error: Entry<Length>,
        /// What was read.
        readings: Vec<WallReading>,
    }
    /// A wall.
    WallReading {
        /// Number of the cylinder.
        cylinder: Entry<Count>,
        /// Angle in the bore.
        angle: Entry<Angle>,
        /// Depth from the deck.
        depth: Entry<Length>,
        /// Thickness.
        thickness: Entry<Length>,
    }
    /// What encloses the gas at top dead centre at the nominal bore.
    Chamber {
        /// Stroke.
        stroke: Entry<Length>,
        /// Chamber in the head.
        head: Entry<Volume>,
        /// Opening of the gasket.
        gasket_bore: Entry<Length>,
        /// Gasket, compressed.
        gasket: Entry<Length>,
        /// From the deck down to the crown; below 0 the crown stands above.
        deck_clearance: Entry<Length>,
        /// Dish and pockets in the crown; below 0 a dome.
        crown: Entry<Volume>,
    }
    /// How a bore is gauged on the machine.
    Gauging {
        /// Name of the bore gauge.
        gauge: Entry<Words>,
        /// Temperature of the block.
        block_temperature: Entry<Temperature>,
        /// Temperature of the gauge, when it is not that of the shop.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        gauge_temperature: Option<Entry<Temperature>>,
        /// State of the block while it is machined and gauged.
        clamping: Clamping,
    }
    /// A piston that is to hand.
    NewPiston {
        /// Name, as it is marked.
        name: Entry<Words>,
        /// Its size over the nominal one; standard without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        oversize: Option<Entry<Length>>,
        /// Its state.
        state: PistonState,
        /// Readings at its gauge point.
        readings: Vec<PistonReading>,
        /// Mass of piston, pin and rings.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        mass: Option<Entry<Mass>>,
        /// Grade, where it has one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        grade: Option<Entry<Words>>,
    }
    /// What holds for the matching of pistons to bores.
    Matching {
        /// Cylinders whose bores are matched; those whose piston is replaced without it.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        cylinders: Vec<Entry<Count>>,
        /// Largest difference of mass in the engine.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        mass_band: Option<Entry<Mass>>,
        /// Pairs that must be.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        fixed: Vec<Pair>,
        /// Pairs that may not be.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        forbidden: Vec<Pair>,
        /// Grades of bores; one with a grade takes only pistons of that grade, or of none.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        bore_grades: Vec<BoreGrade>,
    }
    /// A bore and a piston.
    Pair {
        /// Number of the cylinder.
        cylinder: Entry<Count>,
        /// Name of the piston.
        piston: Entry<Words>,
    }
    /// The grade of a bore.
    BoreGrade {
        /// Number of the cylinder.
        cylinder: Entry<Count>,
        /// Grade.
        grade: Entry<Words>,
    }
    /// The second visit: what was read after the work.
    Finish {
        /// Who read it, as given.
        by: Entry<Words>,
        /// When.
        date: Entry<Date>,
        /// Cylinder by cylinder.
        cylinders: Vec<Finished>,
    }
    /// A cylinder after the work.
    Finished {
        /// Its number.
        number: Entry<Count>,
        /// What was done to it last.
        stage: Stage,
        /// Name of its piston, of those that are to hand; the piston that was in it without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        piston: Option<Entry<Words>>,
        /// Its bore.
        bore: Bore,
    }
}

choices! {
    /// What was done to a bore last.
    Stage {
        /// Bored; the hone comes.
        Bored = "bored",
        /// Honed; it may be honed on.
        Honed = "honed",
        /// Nothing: it goes back as it was.
        AsItWas = "as_it_was",
    }
}
