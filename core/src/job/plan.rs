//! What the job document says of the plan, as it is written. `core/docs/plan.md` explains every field.

use super::document::{Bore, Clamping, Limit, PistonReading, PistonState, document};
use super::entry::{Count, Date, Entry, Mass, Pure, Roughness, Volume, Words};
use crate::choice::choices;
use crate::quantity::{Angle, Length, Temperature};
use schemars::JsonSchema;
use serde::Serialize;

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
        /// Dry sleeves that are pressed in.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        sleeves: Option<Sleeves>,
        /// Wet liners on shims.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        liners: Option<Liners>,
        /// Rings and the gaps they are to have.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        rings: Vec<Ring>,
        /// Head gaskets that can be had, and how far the pistons stand above the deck.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        gasket: Option<Gasket>,
        /// Masses of what goes into each cylinder.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        masses: Option<Masses>,
        /// What the finish of a bore is to be.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        surface: Option<SurfaceLimits>,
        /// What was read after the work.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        finish: Option<Finish>,
    }
    /// Dry sleeves that are pressed into the block.
    Sleeves {
        /// Material of the sleeves.
        material: Entry<Words>,
        /// Material of the block around them.
        block_material: Entry<Words>,
        /// Interference that is wanted, over the diameter.
        interference: Span,
        /// Interference that is aimed at; the middle without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        target: Option<Entry<Length>>,
        /// Interference that is lost because roughness is pressed flat.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        smoothing: Option<Entry<Length>>,
        /// Where the interference comes from.
        origin: Entry<Words>,
        /// Temperature of the block when a sleeve goes in.
        block_heated_to: Entry<Temperature>,
        /// Temperature of the sleeve then; that of the shop without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        sleeve_chilled_to: Option<Entry<Temperature>>,
        /// Clearance that it takes to slide in.
        least_clearance: Entry<Length>,
        /// The sleeves.
        each: Vec<Sleeve>,
    }
    /// A sleeve.
    Sleeve {
        /// Number of its cylinder.
        cylinder: Entry<Count>,
        /// Outside diameter at 20 C: three readings or more, makers print three or six; their mean is the size.
        outside: Vec<Entry<Length>>,
        /// Half-width of the error of that mean.
        permissible_error: Entry<Length>,
    }
    /// Two ends of a length.
    Span {
        /// Least.
        min: Entry<Length>,
        /// Largest.
        max: Entry<Length>,
    }
    /// Wet liners on shims, in a row.
    Liners {
        /// How far a liner is to stand above the deck.
        protrusion: Span,
        /// Where that comes from.
        origin: Entry<Words>,
        /// Most that a seat may be uneven round the ring.
        unevenness: Entry<Length>,
        /// Most that a seat may be cupped.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        cupping: Option<Entry<Length>>,
        /// Most that neighbours may differ by at their nearest points.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        neighbours: Option<Entry<Length>>,
        /// Shims that can be had.
        shims: Vec<Shim>,
        /// Most shims on one liner.
        most_on_one: Entry<Count>,
        /// The liners along the row, from the front.
        each: Vec<Liner>,
    }
    /// A shim that can be had.
    Shim {
        /// Its thickness.
        thickness: Entry<Length>,
        /// How many there are; enough without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        available: Option<Entry<Count>>,
    }
    /// A liner and its counterbore.
    Liner {
        /// Number of its cylinder.
        cylinder: Entry<Count>,
        /// Height of its flange.
        flange: Entry<Length>,
        /// Depth of the counterbore: toward the front, at one side, toward the rear, at the other side.
        depths: Vec<Entry<Length>>,
        /// How much deeper the seat is at one edge of the ledge than at the other.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        cupping: Option<Entry<Length>>,
    }
    /// A ring and the gap it is to have.
    Ring {
        /// Number of its cylinder.
        cylinder: Entry<Count>,
        /// Which ring.
        ring: Entry<Words>,
        /// Its end gap as it was read.
        gap: Entry<Length>,
        /// Half-width of the error of a gap.
        permissible_error: Entry<Length>,
        /// Size at 20 C of the ring gauge that it was read in; the bore it runs in without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        read_in: Option<Entry<Length>>,
        /// Least gap.
        min: Entry<Length>,
        /// Widest gap.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        max: Option<Entry<Length>>,
        /// How far above the least gap it is filed.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        allowance: Option<Entry<Length>>,
        /// Where the limits come from.
        origin: Entry<Words>,
    }
    /// Head gaskets that can be had.
    Gasket {
        /// Where the table is printed.
        origin: Entry<Words>,
        /// Last digit that the table is printed to.
        printed_to: Entry<Length>,
        /// The grades, in rising order.
        grades: Vec<Grade>,
        /// Most that the pistons may differ by.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        spread: Option<Entry<Length>>,
        /// Half-width of the error of the protrusion of a piston.
        permissible_error: Entry<Length>,
        /// Least distance from the crown to the head.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        least_squish: Option<Entry<Length>>,
        /// How far each piston stands above the deck; below 0 it stands below.
        pistons: Vec<Standing>,
    }
    /// A grade of gasket.
    Grade {
        /// Its mark.
        name: Entry<Words>,
        /// Largest protrusion from here.
        from: Entry<Length>,
        /// Largest protrusion to here.
        to: Entry<Length>,
        /// Its thickness, compressed.
        thickness: Entry<Length>,
    }
    /// How far a piston stands above the deck.
    Standing {
        /// Number of its cylinder.
        cylinder: Entry<Count>,
        /// Readings at two points in line with the pin.
        readings: Vec<Entry<Length>>,
    }
    /// Masses of what goes into each cylinder.
    Masses {
        /// Largest difference.
        band: Entry<Mass>,
        /// Where that comes from.
        origin: Entry<Words>,
        /// What goes into each cylinder.
        each: Vec<Assembly>,
    }
    /// What goes into a cylinder.
    Assembly {
        /// Number of the cylinder.
        cylinder: Entry<Count>,
        /// Its parts; what is over is taken off in this order.
        parts: Vec<Weighed>,
    }
    /// A part that was weighed.
    Weighed {
        /// What it is.
        part: Entry<Words>,
        /// Its mass.
        mass: Entry<Mass>,
        /// What may be taken off it; nothing without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        removable: Option<Entry<Mass>>,
    }
    /// What the finish of a bore is to be; parameters of ISO 13565-2.
    SurfaceLimits {
        /// Reduced peak height.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rpk: Option<Heights>,
        /// Core height.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rk: Option<Heights>,
        /// Reduced valley depth.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rvk: Option<Heights>,
        /// Material ratio where the peaks end, in %.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        mr1_percent: Option<Shares>,
        /// Material ratio where the valleys begin, in %.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        mr2_percent: Option<Shares>,
        /// Angle between the two directions of the marks.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        crosshatch: Option<Directions>,
        /// Where the limits come from.
        origin: Entry<Words>,
    }
    /// Limits of a roughness.
    Heights {
        /// Least.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        min: Option<Entry<Roughness>>,
        /// Largest.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        max: Option<Entry<Roughness>>,
    }
    /// Limits of a material ratio.
    Shares {
        /// Least.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        min: Option<Entry<Pure>>,
        /// Largest.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        max: Option<Entry<Pure>>,
    }
    /// Limits of an angle.
    Directions {
        /// Least.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        min: Option<Entry<Angle>>,
        /// Largest.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        max: Option<Entry<Angle>>,
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
        /// Over the nominal size; the standard size without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        oversize: Option<Entry<Length>>,
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
        /// End gaps, read in this bore.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        gaps: Vec<FinishedGap>,
        /// Finish of its wall.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        surface: Option<SurfaceRead>,
    }
    /// An end gap after filing.
    FinishedGap {
        /// Which ring, as the plan names it.
        ring: Entry<Words>,
        /// Its end gap.
        gap: Entry<Length>,
    }
    /// The finish of a bore as it was read.
    SurfaceRead {
        /// Reduced peak height.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rpk: Option<Entry<Roughness>>,
        /// Core height.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rk: Option<Entry<Roughness>>,
        /// Reduced valley depth.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rvk: Option<Entry<Roughness>>,
        /// Material ratio where the peaks end, in %.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        mr1_percent: Option<Entry<Pure>>,
        /// Material ratio where the valleys begin, in %.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        mr2_percent: Option<Entry<Pure>>,
        /// Angle between the two directions of the marks.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        crosshatch: Option<Entry<Angle>>,
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
