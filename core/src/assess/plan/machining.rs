//! To which sizes bores are machined, and what the dial must read there.

use super::parts::placed;
use super::{Kept, NewPiston, Wanted};
use crate::assess::Assessment;
use crate::bounds;
use crate::calc::{Figure, Fold, Measured, formula};
use crate::clearance::ring::GapInBore;
use crate::decision::{Rule, named};
use crate::error::{Error, ErrorKind};
use crate::job::plan as doc;
use crate::job::{Entry, Given, check_length};
use crate::plan::clean_up::{WornOnBothSides, WornOnOneSide};
use crate::plan::machining::{BoringSize, FinishSize, boring_order};
use crate::plan::oversize::{
    Action, Block, BorePrice, Choice, Needed, Oversizes, RuledOut, Step, StepBore, WornBore, oversizes,
};
use crate::report::{
    ActionReport, BoreNeed, BoreWork, ChoiceReport, DialReport, FinishTarget, OversizesReport, PistonWork,
    PlanReport, StepReport,
};
use crate::shape::deck::{Chamber, ClearanceVolume, Cylinder, Ratio};
use crate::shape::least::larger;

formula! {
    /// Middle of two limits.
    Middle: target ["mm"] = (lower, upper) => lower + (upper - lower) / 2.0; source "definition";
    /// Radius of a bore.
    Radius: radius ["mm"] = (diameter) => diameter / 2.0; source "definition";
    /// Largest bore about the original axis that leaves a wall, the whole error of its reading taken off.
    BoreByWall: bore ["mm"] = (radius, wall, error, least) => 2.0 * (radius + wall - error - least);
        source "outside of the wall less what is to be left, as a diameter";
}

/// Most steps of oversize: series have four to six.
const MOST_STEPS: usize = 32;
/// Standard uncertainties between the clean-up and the bore of a step, where conformity is to be proven.
const GUARD: f64 = 1.65;

/// What the document says of the machining, read.
struct Machining {
    unworn: Given,
    tool_marks: Given,
    honing: Given,
    tolerance: Given,
    steps: Vec<StepGiven>,
    boring_price: Given,
    sleeve_price: Option<Given>,
    no_sleeve_in: Vec<u32>,
    largest_by_gasket: Option<Given>,
    walls: Option<Walls>,
    chamber: Option<ChamberGiven>,
    kept_ring_gap: Option<Given>,
}

struct StepGiven {
    oversize: Given,
    /// without an oversize of its own
    is_standard: bool,
    price: Given,
    available: Option<u32>,
    more_mass: Option<Given>,
}

struct Walls {
    least: Given,
    error: Given,
    /// number of the cylinder, thickness
    readings: Vec<(u32, Given)>,
}

struct ChamberGiven {
    stroke: Given,
    head: Given,
    gasket_bore: Given,
    gasket: Given,
    deck_clearance: Given,
    crown: Given,
}

/// A bore with its clean-up.
struct Need {
    cylinder: u32,
    worn: WornBore,
    report: BoreNeed,
}

impl Assessment {
    pub(super) fn machining(
        &mut self,
        entry: &doc::Machining,
        matching: Option<&doc::Matching>,
        (wanted, pistons): (&Option<Wanted>, &[NewPiston]),
        kept: &[Kept],
        out: &mut PlanReport,
    ) -> Result<Vec<(u32, Measured)>, Error> {
        if self.engine.target.is_some() {
            let reason = "a bore with a target profile is not bored round and straight";
            return Err(Error::new(ErrorKind::Contradiction, "", reason).at("/plan/machining"));
        }
        let read = self.read_machining(entry)?;
        self.calc.heading(|| "clean-up".to_owned());
        let mut needs = Vec::new();
        for kept in kept {
            let planned = out.cylinders.iter().find(|c| c.number == kept.number);
            let goes_back = planned.is_some_and(|c| c.bore == BoreWork::Leave);
            match self.need((kept, goes_back), &read, needs.len()) {
                Some(need) => needs.push(need),
                None => out.open.push(format!("clean-up of cylinder {}: its bore was not read", kept.number)),
            }
        }
        if needs.is_empty() {
            return Ok(Vec::new());
        }
        let (found, report) = self.oversizes(&read, entry, &needs)?;
        let chosen = report.chosen.and_then(|place| found.choices.get(place)).cloned();
        out.oversizes = Some(report);
        // the block is machined when one of its bores does not go back
        let must = out.cylinders.iter().any(|c| c.bore == BoreWork::Bore);
        let gauging = entry.gauging.as_ref().map(|g| self.read_gauging(g)).transpose()?;
        match chosen {
            _ if !must => Ok(Vec::new()),
            None => {
                out.open.push("no way to machine the block can be taken".to_owned());
                Ok(Vec::new())
            }
            Some(choice) => {
                let actions =
                    choice.actions.iter().zip(&needs).map(|(action, need)| (need.cylinder, *action));
                apply(&choice, actions.clone(), &read, out);
                let actions: Vec<(u32, Action)> = actions.collect();
                let allotted = allot(&actions, &read, matching, pistons, out);
                Ok(self.targets(&allotted, (wanted, pistons), &read, gauging, out))
            }
        }
    }

    fn read_machining(&mut self, entry: &doc::Machining) -> Result<Machining, Error> {
        let nominal = self.engine.nominal.clone();
        let near = crate::measurement::near_nominal("unworn diameter of this bore", nominal.value);
        let warnings = &mut self.warnings;
        let unworn = entry.unworn.as_ref().map(|u| u.read(&near, warnings)).transpose()?.unwrap_or(nominal);
        let mut no_sleeve_in = Vec::new();
        check_length(&entry.no_sleeve_in, |c| c)?;
        for cylinder in &entry.no_sleeve_in {
            no_sleeve_in.push(cylinder.count(1, self.engine.cylinders)?);
        }
        if let Some(step) = entry.steps.get(MOST_STEPS) {
            let reason = format!("a list has at most {MOST_STEPS} steps");
            return Err(step.price.refuse(ErrorKind::TooLarge, reason));
        }
        if entry.steps.is_empty() {
            let reason = "at least one step is needed";
            return Err(Error::new(ErrorKind::MissingField, "", reason).at("/plan/machining/steps"));
        }
        let mut steps: Vec<StepGiven> = Vec::new();
        for step in &entry.steps {
            let oversize = match &step.oversize {
                Some(oversize) => oversize.read(&bounds::OVERSIZE, warnings)?,
                None => standard_size(&step.price),
            };
            if steps.last().is_some_and(|before| before.oversize.value >= oversize.value) {
                let error = Error::new(ErrorKind::OutOfOrder, &oversize.text, "steps rise");
                return Err(error.value(oversize.value).at(&oversize.path));
            }
            steps.push(StepGiven {
                oversize,
                is_standard: step.oversize.is_none(),
                price: step.price.read(&bounds::PRICE, warnings)?,
                available: step.available.as_ref().map(|n| n.count(0, 10_000)).transpose()?,
                more_mass: step
                    .more_mass
                    .as_ref()
                    .map(|m| m.read(&bounds::MASS_DIFFERENCE, warnings))
                    .transpose()?,
            });
        }
        let chamber = entry.chamber.as_ref().map(|c| {
            Ok::<_, Error>(ChamberGiven {
                stroke: c.stroke.read(&bounds::STROKE, warnings)?,
                head: c.head.read(&bounds::HEAD_VOLUME, warnings)?,
                gasket_bore: c.gasket_bore.read(&bounds::BORE, warnings)?,
                gasket: c.gasket.read(&bounds::GASKET, warnings)?,
                deck_clearance: c.deck_clearance.read(&bounds::DECK, warnings)?,
                crown: c.crown.read(&bounds::CROWN_VOLUME, warnings)?,
            })
        });
        let chamber = chamber.transpose()?;
        let walls = entry.walls.as_ref().map(|w| {
            w.origin.words()?;
            check_length(&w.readings, |r| &r.cylinder)?;
            let mut readings = Vec::new();
            for reading in &w.readings {
                reading.angle.read(&bounds::ANGLE, warnings)?;
                super::super::bore::read_depth(&reading.depth, &self.engine.bore_length, warnings)?;
                let cylinder = reading.cylinder.count(1, self.engine.cylinders)?;
                readings.push((cylinder, reading.thickness.read(&bounds::WALL, warnings)?));
            }
            let least = w.least.read(&bounds::WALL, warnings)?;
            let error = w.permissible_error.read(&bounds::WALL_ERROR, warnings)?;
            Ok::<_, Error>(Walls { least, error, readings })
        });
        Ok(Machining {
            unworn,
            tool_marks: entry.tool_marks.read(&bounds::STOCK, warnings)?,
            honing: entry.honing.read(&bounds::STOCK, warnings)?,
            tolerance: entry.finish_tolerance.read(&bounds::FINISH_TOLERANCE, warnings)?,
            steps,
            boring_price: entry.boring_price.read(&bounds::PRICE, warnings)?,
            sleeve_price: entry
                .sleeve_price
                .as_ref()
                .map(|p| p.read(&bounds::PRICE, warnings))
                .transpose()?,
            no_sleeve_in,
            largest_by_gasket: entry
                .largest_by_gasket
                .as_ref()
                .map(|d| d.read(&bounds::BORE, warnings))
                .transpose()?,
            kept_ring_gap: entry
                .kept_ring_gap
                .as_ref()
                .map(|g| g.read(&bounds::RING_GAP, warnings))
                .transpose()?,
            walls: walls.transpose()?,
            chamber,
        })
    }

    /// What a bore needs, its place among those that were read being `place`; none for a bore that was not read.
    fn need(&mut self, (kept, goes_back): (&Kept, bool), read: &Machining, place: usize) -> Option<Need> {
        let at = format!("/plan/oversizes/needs/{place}");
        self.calc.heading(|| format!("clean-up of cylinder {}", kept.number));
        let places: Vec<&Measured> = kept.bore.iter().flat_map(|b| &b.places).collect();
        let largest = &self.calc.fold(Fold::Largest, "largest", &places)?;
        let unworn: Measured = self.calc.given("unworn", &read.unworn).into();
        let stock: Measured = self.calc.given("stock", &read.tool_marks).into();
        let both = self.calc.apply(WornOnBothSides, [largest, &stock]);
        // a bore that is not worn is cleaned by the stock alone
        let one = match largest.value() > unworn.value() {
            true => self.calc.apply(WornOnOneSide, [&unworn, largest, &stock]),
            false => both.clone(),
        };
        let u = self.calc.budget(&one).standard;
        let k = self.boring_guard();
        let needed = self.calc.figure(Needed, [one.figure, k, u]);
        self.calc.place(needed, || format!("{at}/needed_mm"));
        let by_walls = self.largest_by_walls(kept.number, read);
        if let Some(largest) = &by_walls {
            self.calc.place(largest.figure, || format!("{at}/largest_by_walls_mm"));
        }
        let largest_by_walls_mm = by_walls.map(|l| l.value());
        Some(Need {
            cylinder: kept.number,
            worn: WornBore {
                clean_up_mm: one.value(),
                standard_uncertainty_mm: u.value,
                largest_by_walls_mm,
                may_be_sleeved: !read.no_sleeve_in.contains(&kept.number),
                goes_back,
            },
            report: BoreNeed {
                cylinder: kept.number,
                clean_up_least: self.state(&both, &format!("{at}/clean_up_least")),
                clean_up: self.state(&one, &format!("{at}/clean_up")),
                needed_mm: needed.value,
                largest_by_walls_mm,
            },
        })
    }

    /// How many standard uncertainties a step must lie above the clean-up: where the rule does not use the uncertainty, none.
    fn boring_guard(&mut self) -> Figure {
        let by_value = matches!(self.rule.rule, Rule::SimpleAcceptance | Rule::SimpleAcceptanceByRatio);
        let (k, source) = match by_value {
            true => (0.0, "the rule does not use the uncertainty"),
            false => (GUARD, "ISO 14253-1:2017, default conformance probability of 95 %"),
        };
        self.calc.constant("k", k, "1", source)
    }

    fn largest_by_walls(&mut self, cylinder: u32, read: &Machining) -> Option<Measured> {
        let walls = read.walls.as_ref()?;
        let diameter = self.calc.given("diameter", &read.unworn);
        let radius = self.calc.figure(Radius, [diameter]);
        let least = self.calc.given("least", &walls.least);
        let error = self.calc.given("error", &walls.error);
        let own = walls.readings.iter().filter(|(of, _)| *of == cylinder);
        let bores: Vec<Measured> = own
            .map(|(_, wall)| {
                let wall = self.calc.given("wall", wall);
                self.calc.figure(BoreByWall, [radius, wall, error, least]).into()
            })
            .collect();
        self.calc.fold(Fold::Smallest, "largest", &bores.iter().collect::<Vec<_>>())
    }

    fn oversizes(
        &mut self,
        read: &Machining,
        entry: &doc::Machining,
        needs: &[Need],
    ) -> Result<(Oversizes, OversizesReport), Error> {
        let block = Block {
            nominal_mm: self.engine.nominal.value,
            largest_by_gasket_mm: read.largest_by_gasket.as_ref().map(|g| g.value),
            sleeve_price: read.sleeve_price.as_ref().map(|p| p.value),
            boring_price: read.boring_price.value,
            guard: self.boring_guard().value,
            chamber: read.chamber.as_ref().map(|c| c.chamber(self.engine.nominal.value)),
            ring_gap_mm: read.kept_ring_gap.as_ref().map(|g| g.value),
        };
        let step = |s: &StepGiven| Step {
            oversize_mm: s.oversize.value,
            price: s.price.value,
            available: s.available.map(|n| n as usize),
            more_mass_g: s.more_mass.as_ref().map(|m| m.value),
        };
        let steps: Vec<Step> = read.steps.iter().map(step).collect();
        let bores: Vec<WornBore> = needs.iter().map(|n| n.worn.clone()).collect();
        let found = oversizes(&block, &bores, &steps).map_err(|e| placed(e, "/plan/machining"))?;
        let wanted = entry.chosen_oversize.as_ref().map(|o| chosen(o, &read.steps)).transpose()?;
        let serves = |c: &Choice| {
            let asked = |step: usize| c.actions.iter().filter_map(|a| a.step()).all(|of| of == step);
            c.ruled_out.is_empty() && wanted.is_none_or(asked)
        };
        let steps = read.steps.iter().enumerate().map(|(k, step)| self.step(read, step, k)).collect();
        let choices = found.choices.iter().enumerate();
        let choices = choices.map(|(k, choice)| self.choice(read, needs, choice, k)).collect();
        let order = boring_order(needs.len())
            .unwrap_or_else(|_| (1..=needs.len()).collect())
            .into_iter()
            .filter_map(|k| Some(needs.get(k.checked_sub(1)?)?.cylinder))
            .collect();
        let report = OversizesReport {
            needs: needs.iter().map(|n| n.report.clone()).collect(),
            steps,
            choices,
            chosen: found.choices.iter().position(serves),
            order,
        };
        Ok((found, report))
    }

    /// What a step brings with it, with its working.
    fn step(&mut self, read: &Machining, step: &StepGiven, place: usize) -> StepReport {
        let at = format!("/plan/oversizes/steps/{place}");
        let calc = &mut self.calc;
        calc.heading(|| format!("oversize {}", step.oversize.text));
        let nominal = calc.given("nominal", &self.engine.nominal);
        let oversize = match step.is_standard {
            true => calc.constant("oversize", 0.0, "mm", "the standard size"),
            false => calc.given("oversize", &step.oversize),
        };
        let bore = calc.figure(StepBore, [nominal, oversize]);
        calc.place(bore, || format!("{at}/bore_mm"));
        let gap = read.kept_ring_gap.as_ref().map(|gap| {
            let gap = calc.given("gap", gap);
            calc.figure(GapInBore, [gap, nominal, bore])
        });
        if let Some(gap) = gap {
            calc.place(gap, || format!("{at}/kept_ring_gap_mm"));
        }
        let ratio = read.chamber.as_ref().map(|c| c.ratio(calc, bore));
        if let Some(ratio) = ratio {
            calc.place(ratio, || format!("{at}/compression_ratio"));
        }
        StepReport {
            oversize_mm: step.oversize.value,
            bore_mm: bore.value,
            compression_ratio: ratio.map(|r| r.value),
            kept_ring_gap_mm: gap.map(|g| g.value),
            more_mass_g: step.more_mass.as_ref().map(|m| m.value),
        }
    }

    fn choice(&mut self, read: &Machining, needs: &[Need], choice: &Choice, place: usize) -> ChoiceReport {
        self.calc.heading(|| format!("choice {}", place + 1));
        let boring = self.calc.given("boring", &read.boring_price);
        let mut prices = Vec::with_capacity(choice.actions.len());
        let mut actions = Vec::with_capacity(choice.actions.len());
        for (action, need) in choice.actions.iter().zip(needs) {
            let Some(step) = action.step().and_then(|step| read.steps.get(step)) else {
                actions.push(ActionReport {
                    cylinder: need.cylinder,
                    work: BoreWork::Leave,
                    oversize_mm: None,
                });
                continue;
            };
            let piston = self.calc.given("piston", &step.price);
            let (sleeve, work) = match (action, &read.sleeve_price) {
                (Action::Sleeve(_), Some(price)) => (self.calc.given("sleeve", price), BoreWork::Sleeve),
                _ => (self.calc.constant("sleeve", 0.0, "1", "no sleeve is fitted"), BoreWork::Bore),
            };
            prices.push(self.calc.figure(BorePrice, [piston, boring, sleeve]));
            actions.push(ActionReport {
                cylinder: need.cylinder,
                work,
                oversize_mm: Some(step.oversize.value),
            });
        }
        let price = self.calc.sum("price", &prices, "definition");
        self.calc.place(price, || format!("/plan/oversizes/choices/{place}/price"));
        let ruled_out = choice.ruled_out.iter().map(|r| ruled_out(r, read, needs)).collect();
        ChoiceReport { way: choice.way, price: price.value, actions, ruled_out }
    }

    /// The gauge on the machine and the strains there.
    fn read_gauging<'g>(&mut self, entry: &'g doc::Gauging) -> Result<OnMachine<'g>, Error> {
        self.calc.heading(|| "the gauge on the machine".to_owned());
        let (t_block, field) =
            self.shop.temperature(&mut self.calc, Some(&entry.block_temperature), &mut self.warnings)?;
        let eps_bore = self.materials.growth(&mut self.calc, self.engine.bore_material, &t_block, &field)?;
        let (t_gauge, field) =
            self.shop.temperature(&mut self.calc, entry.gauge_temperature.as_ref(), &mut self.warnings)?;
        let gauge = self.gauges.find(&entry.gauge, true)?;
        let eps_used = gauge.growth(&mut self.calc, &self.materials, &t_gauge, &field)?;
        Ok(OnMachine { entry, t_block, t_gauge, eps_bore, eps_used })
    }

    /// What every bore is machined to for its piston.
    fn targets(
        &mut self,
        allotted: &[(u32, usize)],
        (wanted, pistons): (&Option<Wanted>, &[NewPiston]),
        read: &Machining,
        gauging: Option<OnMachine<'_>>,
        out: &mut PlanReport,
    ) -> Vec<(u32, Measured)> {
        let mut finishes = Vec::with_capacity(allotted.len());
        let Some(wanted) = wanted else {
            out.open.push("finish sizes: no clearance is wanted at 20 C".to_owned());
            return finishes;
        };
        for (cylinder, piston) in allotted {
            let Some(piston) = pistons.get(*piston) else { continue };
            let Some(size) = &piston.size else {
                out.open.push(format!(
                    "finish size of cylinder {cylinder}: piston {} was not measured at its gauge point",
                    piston.name
                ));
                continue;
            };
            let at = format!("/plan/targets/{}", out.targets.len());
            self.calc.heading(|| format!("finish size of cylinder {cylinder}"));
            let target: Measured = wanted.target.into();
            let honing: Measured = self.calc.given("honing", &read.honing).into();
            let finish = self.calc.apply(FinishSize, [size, &target]);
            let boring = self.calc.apply(BoringSize, [size, &target, &honing]);
            let dial = gauging.as_ref().and_then(|g| self.dial(g, [&boring, &finish], &format!("{at}/dial")));
            out.targets.push(FinishTarget {
                cylinder: *cylinder,
                piston: piston.name.clone(),
                finish: self.state(&finish, &format!("{at}/finish")),
                boring: self.state(&boring, &format!("{at}/boring")),
                tolerance_mm: read.tolerance.value,
                dial,
            });
            finishes.push((*cylinder, finish));
        }
        finishes
    }

    fn dial(&mut self, on: &OnMachine<'_>, [boring, finish]: [&Measured; 2], at: &str) -> Option<DialReport> {
        let gauge = self.gauges.find(&on.entry.gauge, true).ok()?;
        let mut dial = |size| gauge.dial(&mut self.calc, size, &on.eps_bore, &on.eps_used);
        let (boring, finish) = (dial(boring)?, dial(finish)?);
        Some(DialReport {
            gauge: on.entry.gauge.text().trim().to_owned(),
            block_temperature_c: on.t_block.value(),
            gauge_temperature_c: on.t_gauge.value(),
            boring: self.state(&boring, &format!("{at}/boring")),
            finish: self.state(&finish, &format!("{at}/finish")),
        })
    }
}

/// A gauge on the machine.
struct OnMachine<'g> {
    entry: &'g doc::Gauging,
    t_block: Measured,
    t_gauge: Measured,
    eps_bore: Measured,
    eps_used: Measured,
}

impl ChamberGiven {
    fn chamber(&self, bore_mm: f64) -> Chamber {
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
    fn ratio(&self, calc: &mut crate::calc::Calc, bore: Figure) -> Figure {
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
fn standard_size(price: &Entry<crate::job::Pure>) -> Given {
    let path = format!("{}/oversize", price.parent());
    Given { value: 0.0, unit: "mm", text: "standard size".to_owned(), path }
}

/// The step that is asked for.
fn chosen(entry: &Entry<crate::quantity::Length>, steps: &[StepGiven]) -> Result<usize, Error> {
    let asked = entry.read(&bounds::OVERSIZE, &mut Vec::new())?;
    let same = |s: &StepGiven| crate::shape::same(s.oversize.value, asked.value);
    let known = || steps.iter().map(|s| s.oversize.text.as_str()).collect::<Vec<_>>().join(", ");
    steps.iter().position(same).ok_or_else(|| {
        entry.refuse(ErrorKind::UnknownName, format!("no such step; known: {}", known())).value(asked.value)
    })
}

/// Writes what is chosen into the cylinders.
fn apply(
    choice: &Choice,
    actions: impl Iterator<Item = (u32, Action)>,
    read: &Machining,
    out: &mut PlanReport,
) {
    let way = choice.way.spoken();
    for (number, action) in actions {
        let step = action.step().and_then(|step| read.steps.get(step));
        let cylinder = out.cylinders.iter_mut().find(|c| c.number == number);
        let Some((cylinder, step)) = cylinder.zip(step) else { continue };
        if cylinder.bore == BoreWork::Replace {
            continue;
        }
        cylinder.reasons.push(format!("the block is machined: {way}, {}", step.oversize.text));
        (cylinder.bore, cylinder.piston) = match action {
            Action::Bore(_) => (BoreWork::Bore, PistonWork::Replace),
            Action::Sleeve(_) => (BoreWork::Sleeve, PistonWork::Replace),
            Action::Leave => continue,
        };
        cylinder.oversize_mm = Some(step.oversize.value);
    }
}

/// A piston of the right step for every bore: fixed pairs first, then in the order of the document.
fn allot(
    actions: &[(u32, Action)],
    read: &Machining,
    matching: Option<&doc::Matching>,
    pistons: &[NewPiston],
    out: &mut PlanReport,
) -> Vec<(u32, usize)> {
    let mut free: Vec<bool> = vec![true; pistons.len()];
    let is_of =
        |pair: &doc::Pair, cylinder: u32| pair.cylinder.count(1, u32::MAX).is_ok_and(|n| n == cylinder);
    let fits = |p: &NewPiston, action: Action| {
        let step = action.step().and_then(|s| read.steps.get(s));
        // a piston without an oversize is one of the standard size
        let oversize = p.oversize.as_ref().map_or(0.0, |o| o.value);
        step.is_some_and(|s| crate::shape::same(oversize, s.oversize.value))
    };
    let fixed = |cylinder: u32, action: Action| {
        let pair = matching?.fixed.iter().find(|pair| is_of(pair, cylinder))?;
        pistons.iter().position(|p| p.name == pair.piston.text().trim() && fits(p, action))
    };
    let forbidden = |cylinder: u32, piston: &NewPiston| {
        let pairs = matching.map(|m| m.forbidden.as_slice()).unwrap_or_default();
        pairs.iter().any(|pair| is_of(pair, cylinder) && pair.piston.text().trim() == piston.name)
    };
    let mut allotted: Vec<Option<usize>> =
        actions.iter().map(|(cylinder, action)| fixed(*cylinder, *action)).collect();
    for place in allotted.iter().flatten() {
        if let Some(free) = free.get_mut(*place) {
            *free = false;
        }
    }
    let has_fixed =
        |cylinder: u32| matching.is_some_and(|m| m.fixed.iter().any(|pair| is_of(pair, cylinder)));
    for ((cylinder, action), place) in actions.iter().zip(&mut allotted) {
        // a fixed piston of another size serves nobody, and no other stands in for it
        if place.is_some() || has_fixed(*cylinder) {
            continue;
        }
        let serves = |p: &NewPiston| fits(p, *action) && !forbidden(*cylinder, p);
        *place = pistons.iter().zip(&free).position(|(p, free)| *free && serves(p));
        if let Some(free) = place.and_then(|p| free.get_mut(p)) {
            *free = false;
        }
    }
    let mut pairs = Vec::new();
    let mut without: Vec<(usize, Vec<u32>)> = Vec::new();
    for ((number, action), place) in actions.iter().zip(allotted) {
        let cylinder = out.cylinders.iter_mut().find(|c| c.number == *number);
        let Some(cylinder) = cylinder.filter(|c| c.bore != BoreWork::Replace) else { continue };
        match place.and_then(|p| Some((p, pistons.get(p)?))) {
            Some((place, piston)) => {
                cylinder.new_piston = Some(piston.name.clone());
                pairs.push((*number, place));
            }
            None => {
                let Some(step) = action.step() else { continue };
                match without.iter_mut().find(|(of, _)| *of == step) {
                    Some((_, numbers)) => numbers.push(*number),
                    None => without.push((step, vec![*number])),
                }
            }
        }
    }
    for (step, numbers) in without {
        let step = read.steps.get(step).map_or("", |s| s.oversize.text.as_str());
        out.open.push(format!(
            "finish size of {}: it is that of a measured piston, and none of oversize {step} is to hand",
            named(&numbers)
        ));
    }
    pairs
}

/// What rules a way out, in words.
fn ruled_out(reason: &RuledOut, read: &Machining, needs: &[Need]) -> String {
    let cylinder = |bore: &usize| needs.get(*bore).map_or(0, |n| n.cylinder);
    let step = |step: &usize| read.steps.get(*step).map_or("", |s| s.oversize.text.as_str());
    match reason {
        RuledOut::NotClean { bore, needed_mm } => {
            format!("cylinder {} is not clean below {needed_mm:.3} mm", cylinder(bore))
        }
        RuledOut::WallTooThin { bore, largest_mm } => {
            format!("the walls of cylinder {} allow {largest_mm:.3} mm", cylinder(bore))
        }
        RuledOut::GasketTooSmall { largest_mm } => format!("the gasket allows {largest_mm:.3} mm"),
        RuledOut::TooFewPistons { step: place, needed, available } => {
            format!("{needed} pistons of {} are needed and {available} can be had", step(place))
        }
        RuledOut::NoSleeve { bore } => format!("cylinder {} may not take a sleeve", cylinder(bore)),
    }
}
