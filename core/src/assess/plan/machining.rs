//! To which sizes bores are machined: what they need, and every way with what rules it out.

use super::given::{Machining, StepGiven, chosen};
use super::parts::placed;
use super::targets::allot;
use super::{Kept, NewPiston, Wanted};
use crate::assess::Assessment;
use crate::calc::{Figure, Fold, Measured, formula};
use crate::clearance::ring::GapInBore;
use crate::decision::{GUARD_FACTOR, GUARD_SOURCE, Rule};
use crate::error::{Error, ErrorKind};
use crate::job::plan as doc;
use crate::plan::clean_up::{WornOnBothSides, WornOnOneSide};
use crate::plan::machining::boring_order;
use crate::plan::oversize::{
    Action, Block, BorePrice, Choice, Needed, Oversizes, RuledOut, Step, StepBore, WornBore, oversizes,
};
use crate::report::{
    ActionReport, BoreNeed, BoreWork, ChoiceReport, OversizesReport, PistonWork, PlanReport, StepReport,
};

formula! {
    /// Middle of two limits.
    Middle: target ["mm"] = (lower, upper) => lower + (upper - lower) / 2.0; source "definition";
    /// Radius of a bore.
    Radius: radius ["mm"] = (diameter) => diameter / 2.0; source "definition";
    /// Largest bore about the original axis that leaves a wall, the whole error of its reading taken off.
    BoreByWall: bore ["mm"] = (radius, wall, error, least) => 2.0 * (radius + wall - error - least);
        source "outside of the wall less what is to be left, as a diameter";
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
            false => (GUARD_FACTOR, GUARD_SOURCE),
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
