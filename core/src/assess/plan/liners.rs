//! Wet liners on shims.

use super::parts::{Difference, placed};
use crate::assess::Assessment;
use crate::bounds;
use crate::calc::{Figure, Fold, Measured};
use crate::error::{Error, ErrorKind};
use crate::job::plan as doc;
use crate::job::{Entry, Given, check_length};
use crate::plan::shims::{Liner, RuledOut, Shim, Wanted, shim_plan};
use crate::quantity::Length;
use crate::report::{LinerReport, LinersReport};
use crate::shape::deck::LinerProtrusion;

/// A liner as it was read.
struct Seat {
    cylinder: u32,
    flange: Given,
    depths: [Given; 4],
    cupping_mm: Option<f64>,
}

impl Assessment {
    pub(super) fn liners(&mut self, entry: &doc::Liners) -> Result<LinersReport, Error> {
        self.calc.heading(|| "liners on shims".to_owned());
        let origin = entry.origin.words()?.to_owned();
        let wanted = self.wanted_protrusion(entry)?;
        let (shims, stock) = self.shims(&entry.shims)?;
        check_length(&entry.each, |l| &l.cylinder)?;
        let mut seats: Vec<Seat> = Vec::with_capacity(entry.each.len());
        for liner in &entry.each {
            let cylinder = self.another(&liner.cylinder, |n| seats.iter().any(|s| s.cylinder == n))?;
            seats.push(self.seat(cylinder, liner)?);
        }
        let given: Vec<Liner> = seats.iter().map(Seat::liner).collect();
        let found = shim_plan(&given, &stock, &wanted).map_err(|e| placed(e, "/plan/liners"))?;
        let mut each = Vec::with_capacity(seats.len());
        for (k, (seat, shimmed)) in seats.iter().zip(&found.liners).enumerate() {
            let stack = shimmed.stack.as_ref();
            let stack: Option<Vec<&Given>> =
                stack.map(|stack| stack.iter().filter_map(|shim| shims.get(*shim)).collect());
            each.extend(self.shimmed(seat, stack.as_deref(), &format!("/plan/liners/each/{k}")));
        }
        let cylinder = |place: usize| seats.get(place).map_or(0, |s| s.cylinder);
        let ruled_out = found.ruled_out.iter().map(|r| unfit(*r, cylinder)).collect();
        Ok(LinersReport { each, largest_step_mm: found.largest_step_mm, ruled_out, origin })
    }

    fn wanted_protrusion(&mut self, entry: &doc::Liners) -> Result<Wanted, Error> {
        let (least, most) = self.span(&entry.protrusion, &bounds::LINER_PROTRUSION)?;
        let mut seat = |entry: &Option<Entry<Length>>| {
            Ok::<_, Error>(self.optional(entry, &bounds::SEAT_UNEVENNESS)?.map(|given| given.value))
        };
        Ok(Wanted {
            least_mm: least.value,
            most_mm: most.value,
            cupping_mm: seat(&entry.cupping)?,
            neighbours_mm: seat(&entry.neighbours)?,
            unevenness_mm: entry.unevenness.read(&bounds::SEAT_UNEVENNESS, &mut self.warnings)?.value,
            most_on_one: entry.most_on_one.count(1, 3)? as usize,
        })
    }

    fn shims(&mut self, entries: &[doc::Shim]) -> Result<(Vec<Given>, Vec<Shim>), Error> {
        check_length(entries, |s| &s.thickness)?;
        let (mut given, mut stock) = (Vec::new(), Vec::new());
        for shim in entries {
            let available = shim.available.as_ref().map(|n| n.count(0, 10_000)).transpose()?;
            let thickness = shim.thickness.read(&bounds::SHIM, &mut self.warnings)?;
            stock.push(Shim { thickness_mm: thickness.value, available: available.map(|n| n as usize) });
            given.push(thickness);
        }
        Ok((given, stock))
    }

    fn seat(&mut self, cylinder: u32, liner: &doc::Liner) -> Result<Seat, Error> {
        let [a, b, c, d] = liner.depths.as_slice() else {
            let reason = "four depths: toward the front, one side, toward the rear, the other side";
            let at = format!("{}/depths", liner.flange.parent());
            let count = liner.depths.len().to_string();
            return Err(Error::new(ErrorKind::Contradiction, count, reason).at(&at));
        };
        let mut read = |e: &Entry<Length>| e.read(&bounds::LINER_FLANGE, &mut self.warnings);
        let flange = read(&liner.flange)?;
        let depths = [read(a)?, read(b)?, read(c)?, read(d)?];
        let cupping = self.optional(&liner.cupping, &bounds::SEAT_UNEVENNESS)?;
        Ok(Seat { cylinder, flange, depths, cupping_mm: cupping.map(|c| c.value) })
    }

    /// How a liner stands on its shims; none without a depth.
    fn shimmed(&mut self, seat: &Seat, stack: Option<&[&Given]>, at: &str) -> Option<LinerReport> {
        let depths = seat.depths.each_ref().map(|d| Measured::from(self.calc.given("counterbore", d)));
        let depths = depths.each_ref();
        let deepest = self.calc.fold(Fold::Largest, "deepest", &depths)?.figure;
        let shallowest = self.calc.fold(Fold::Smallest, "shallowest", &depths)?.figure;
        let unevenness = self.calc.figure(Difference, [deepest, shallowest]);
        self.calc.place(unevenness, || format!("{at}/unevenness_mm"));
        let flange = self.calc.given("flange", &seat.flange);
        let ends = stack.map(|stack| {
            let shim = self.stacked(stack);
            let lowest = self.calc.figure(LinerProtrusion, [flange, shim, deepest]);
            let highest = self.calc.figure(LinerProtrusion, [flange, shim, shallowest]);
            self.calc.place(lowest, || format!("{at}/lowest_mm"));
            self.calc.place(highest, || format!("{at}/highest_mm"));
            (lowest.value, highest.value)
        });
        Some(LinerReport {
            cylinder: seat.cylinder,
            unevenness_mm: unevenness.value,
            shims_mm: stack.map(|s| s.iter().map(|s| s.value).collect()),
            lowest_mm: ends.map(|e| e.0),
            highest_mm: ends.map(|e| e.1),
        })
    }

    /// Thickness of a stack of shims.
    fn stacked(&mut self, stack: &[&Given]) -> Figure {
        let figures: Vec<Figure> = stack.iter().map(|s| self.calc.given("shim", s)).collect();
        match figures.as_slice() {
            [] => self.calc.constant("shim", 0.0, "mm", "no shim"),
            several => self.calc.sum("shim", several, "definition"),
        }
    }
}

impl Seat {
    fn liner(&self) -> Liner {
        Liner {
            flange_mm: self.flange.value,
            depths_mm: self.depths.each_ref().map(|d| d.value),
            cupping_mm: self.cupping_mm,
        }
    }
}

/// Why a row of liners is ruled out, in words.
fn unfit(reason: RuledOut, cylinder: impl Fn(usize) -> u32) -> String {
    match reason {
        RuledOut::Uneven { liner } => {
            format!("the seat of cylinder {} is uneven: not fit to shim, machine it", cylinder(liner))
        }
        RuledOut::Cupped { liner } => {
            format!("the seat of cylinder {} is cupped: not fit to shim, machine it", cylinder(liner))
        }
        RuledOut::NoStack { liner } => {
            format!(
                "no stack of the shims brings the liner of cylinder {} within its limits",
                cylinder(liner)
            )
        }
        RuledOut::Neighbours { liner } => format!(
            "no stack of cylinder {} goes with its neighbour within what they may differ by",
            cylinder(liner)
        ),
        RuledOut::TooFewShims { liner } => {
            format!("there are too few shims from cylinder {} on", cylinder(liner))
        }
    }
}
