//! Finish sizes: which piston for which bore, and what the dial must read.

use super::given::Machining;
use super::{NewPiston, Wanted};
use crate::assess::Assessment;
use crate::calc::Measured;
use crate::decision::named;
use crate::error::Error;
use crate::job::plan as doc;
use crate::plan::machining::{BoringSize, FinishSize};
use crate::plan::oversize::Action;
use crate::report::{BoreWork, DialReport, FinishTarget, PlanReport};

impl Assessment {
    /// The gauge on the machine and the strains there.
    pub(super) fn read_gauging<'g>(&mut self, entry: &'g doc::Gauging) -> Result<OnMachine<'g>, Error> {
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
    pub(super) fn targets(
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
pub(super) struct OnMachine<'g> {
    entry: &'g doc::Gauging,
    t_block: Measured,
    t_gauge: Measured,
    eps_bore: Measured,
    eps_used: Measured,
}

/// A piston of the right step for every bore: fixed pairs first, then in the order of the document.
pub(super) fn allot(
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
