//! What the document says of the machining, read and found possible.

use crate::assess::Assessment;
use crate::assess::bore::read_depth;
use crate::bounds;
use crate::calc::{Calc, Figure};
use crate::error::{Error, ErrorKind};
use crate::job::plan as doc;
use crate::job::{Entry, Given, Pure, check_length};
use crate::quantity::Length;
use crate::shape::deck::{Chamber, ClearanceVolume, Cylinder, Ratio};
use crate::shape::least::larger;

/// Most steps of oversize: series have four to six.
const MOST_STEPS: usize = 32;
/// What the document says of the machining, read.
pub(super) struct Machining {
    pub(super) unworn: Given,
    pub(super) tool_marks: Given,
    pub(super) honing: Given,
    pub(super) tolerance: Given,
    pub(super) steps: Vec<StepGiven>,
    pub(super) boring_price: Given,
    pub(super) sleeve_price: Option<Given>,
    pub(super) no_sleeve_in: Vec<u32>,
    pub(super) largest_by_gasket: Option<Given>,
    pub(super) walls: Option<Walls>,
    pub(super) chamber: Option<ChamberGiven>,
    pub(super) kept_ring_gap: Option<Given>,
}

pub(super) struct StepGiven {
    pub(super) oversize: Given,
    /// without an oversize of its own
    pub(super) is_standard: bool,
    pub(super) price: Given,
    pub(super) available: Option<u32>,
    pub(super) more_mass: Option<Given>,
}

pub(super) struct Walls {
    pub(super) least: Given,
    pub(super) error: Given,
    /// number of the cylinder, thickness
    pub(super) readings: Vec<(u32, Given)>,
}

pub(super) struct ChamberGiven {
    pub(super) stroke: Given,
    pub(super) head: Given,
    pub(super) gasket_bore: Given,
    pub(super) gasket: Given,
    pub(super) deck_clearance: Given,
    pub(super) crown: Given,
}

impl Assessment {
    pub(super) fn read_machining(&mut self, entry: &doc::Machining) -> Result<Machining, Error> {
        let nominal = self.engine.nominal.clone();
        let near = crate::measurement::near_nominal("unworn diameter of this bore", nominal.value);
        let unworn = self.optional(&entry.unworn, &near)?.unwrap_or(nominal);
        let read = |entry: &Entry<Length>, bound, this: &mut Self| entry.read(bound, &mut this.warnings);
        Ok(Machining {
            unworn,
            tool_marks: read(&entry.tool_marks, &bounds::STOCK, self)?,
            honing: read(&entry.honing, &bounds::STOCK, self)?,
            tolerance: read(&entry.finish_tolerance, &bounds::FINISH_TOLERANCE, self)?,
            steps: self.steps(&entry.steps)?,
            boring_price: entry.boring_price.read(&bounds::PRICE, &mut self.warnings)?,
            sleeve_price: self.optional(&entry.sleeve_price, &bounds::PRICE)?,
            no_sleeve_in: self.numbers(&entry.no_sleeve_in)?,
            largest_by_gasket: self.optional(&entry.largest_by_gasket, &bounds::BORE)?,
            walls: entry.walls.as_ref().map(|w| self.walls(w)).transpose()?,
            chamber: entry.chamber.as_ref().map(|c| self.chamber(c)).transpose()?,
            kept_ring_gap: self.optional(&entry.kept_ring_gap, &bounds::RING_GAP)?,
        })
    }

    fn steps(&mut self, entries: &[doc::Step]) -> Result<Vec<StepGiven>, Error> {
        if let Some(step) = entries.get(MOST_STEPS) {
            let reason = format!("a list has at most {MOST_STEPS} steps");
            return Err(step.price.refuse(ErrorKind::TooLarge, reason));
        }
        if entries.is_empty() {
            let reason = "at least one step is needed";
            return Err(Error::new(ErrorKind::MissingField, "", reason).at("/plan/machining/steps"));
        }
        let mut steps: Vec<StepGiven> = Vec::with_capacity(entries.len());
        for step in entries {
            let oversize = self.optional(&step.oversize, &bounds::OVERSIZE)?;
            let oversize = oversize.unwrap_or_else(|| standard_size(&step.price));
            if steps.last().is_some_and(|before| before.oversize.value >= oversize.value) {
                let error = Error::new(ErrorKind::OutOfOrder, &oversize.text, "steps rise");
                return Err(error.value(oversize.value).at(&oversize.path));
            }
            steps.push(StepGiven {
                oversize,
                is_standard: step.oversize.is_none(),
                price: step.price.read(&bounds::PRICE, &mut self.warnings)?,
                available: step.available.as_ref().map(|n| n.count(0, 10_000)).transpose()?,
                more_mass: self.optional(&step.more_mass, &bounds::MASS_DIFFERENCE)?,
            });
        }
        Ok(steps)
    }

    fn walls(&mut self, entry: &doc::Walls) -> Result<Walls, Error> {
        entry.origin.words()?;
        check_length(&entry.readings, |r| &r.cylinder)?;
        let mut readings = Vec::with_capacity(entry.readings.len());
        for reading in &entry.readings {
            reading.angle.read(&bounds::ANGLE, &mut self.warnings)?;
            read_depth(&reading.depth, &self.engine.bore_length, &mut self.warnings)?;
            let cylinder = reading.cylinder.count(1, self.engine.cylinders)?;
            readings.push((cylinder, reading.thickness.read(&bounds::WALL, &mut self.warnings)?));
        }
        let least = entry.least.read(&bounds::WALL, &mut self.warnings)?;
        let error = entry.permissible_error.read(&bounds::WALL_ERROR, &mut self.warnings)?;
        Ok(Walls { least, error, readings })
    }

    fn chamber(&mut self, entry: &doc::Chamber) -> Result<ChamberGiven, Error> {
        let warnings = &mut self.warnings;
        Ok(ChamberGiven {
            stroke: entry.stroke.read(&bounds::STROKE, warnings)?,
            head: entry.head.read(&bounds::HEAD_VOLUME, warnings)?,
            gasket_bore: entry.gasket_bore.read(&bounds::BORE, warnings)?,
            gasket: entry.gasket.read(&bounds::GASKET, warnings)?,
            deck_clearance: entry.deck_clearance.read(&bounds::DECK, warnings)?,
            crown: entry.crown.read(&bounds::CROWN_VOLUME, warnings)?,
        })
    }
}

impl ChamberGiven {
    pub(super) fn chamber(&self, bore_mm: f64) -> Chamber {
        Chamber {
            bore_mm,
            stroke_mm: self.stroke.value,
            head_cm3: self.head.value,
            gasket_bore_mm: self.gasket_bore.value,
            gasket_mm: self.gasket.value,
            deck_clearance_mm: self.deck_clearance.value,
            crown_cm3: self.crown.value,
            crevice_cm3: 0.0,
        }
    }

    /// Compression ratio at a bore: the operations of [`crate::shape::deck::compression_ratio`], with their working.
    pub(super) fn ratio(&self, calc: &mut Calc, bore: Figure) -> Figure {
        let gasket_bore = calc.given("gasket_bore", &self.gasket_bore);
        // the opening of the gasket is never narrower than the bore
        let gasket_bore = match larger(gasket_bore.value, bore.value) > gasket_bore.value {
            true => bore,
            false => gasket_bore,
        };
        let stroke = calc.given("stroke", &self.stroke);
        let gasket = calc.given("gasket", &self.gasket);
        let deck = calc.given("deck_clearance", &self.deck_clearance);
        let head = calc.given("head", &self.head);
        let crown = calc.given("crown", &self.crown);
        let swept = calc.figure(Cylinder, [bore, stroke]);
        let gasket = calc.figure(Cylinder, [gasket_bore, gasket]);
        let deck = calc.figure(Cylinder, [bore, deck]);
        let crevice =
            calc.constant("crevice", 0.0, "cm3", "the crevice at the top land is left out, as is usual");
        let clearance = calc.figure(ClearanceVolume, [head, gasket, deck, crown, crevice]);
        calc.figure(Ratio, [swept, clearance])
    }
}

/// The standard size, as a step without an oversize is read; it stands beside a price.
fn standard_size(price: &Entry<Pure>) -> Given {
    let path = format!("{}/oversize", price.parent());
    Given { value: 0.0, unit: "mm", text: "standard size".to_owned(), path }
}

/// The step that is asked for.
pub(super) fn chosen(entry: &Entry<Length>, steps: &[StepGiven]) -> Result<usize, Error> {
    let asked = entry.read(&bounds::OVERSIZE, &mut Vec::new())?;
    let same = |s: &StepGiven| crate::shape::same(s.oversize.value, asked.value);
    let known = || steps.iter().map(|s| s.oversize.text.as_str()).collect::<Vec<_>>().join(", ");
    steps.iter().position(same).ok_or_else(|| {
        entry.refuse(ErrorKind::UnknownName, format!("no such step; known: {}", known())).value(asked.value)
    })
}
