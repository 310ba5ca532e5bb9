//! Which oversize: one for the block, one for each bore, or a sleeve where the block would not hold it.
//!
#![doc = include_str!("../../docs/oversize.md")]

use crate::bounds;
use crate::calc::{Formula, formula};
use crate::choice::choices;
use crate::clearance::ring::GapInBore;
use crate::error::{Error, ErrorKind};
use crate::measurement::statistics::sum;
use crate::shape::deck::{Chamber, compression_ratio};
use crate::shape::least::larger;

formula! {
    /// Bore of a step.
    StepBore: bore ["mm"] = (nominal, oversize) => nominal + oversize; source "definition";
    /// What one bore costs.
    BorePrice: price ["1"] = (piston, boring, sleeve) => piston + boring + sleeve; source "definition";
    /// What a bore must at least be to be clean, with a margin for what is not known of it.
    Needed: needed ["mm"] = (clean_up, k, u) => clean_up + k * u; source "clean-up and a guard of k standard uncertainties";
}

/// A size of piston that can be had.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Over the nominal bore, in mm.
    pub oversize_mm: f64,
    /// What one piston with its rings costs.
    pub price: f64,
    /// How many there are; none when it does not matter.
    pub available: Option<usize>,
    /// Mass of a piston over that of the standard one, in g; none when it is not known.
    pub more_mass_g: Option<f64>,
}

/// What is known of a bore.
#[derive(Debug, Clone, PartialEq)]
pub struct WornBore {
    /// What it must be bored to at least to be clean, in mm.
    pub clean_up_mm: f64,
    /// Standard uncertainty of that, in mm.
    pub standard_uncertainty_mm: f64,
    /// Largest bore that its walls allow, in mm; none when they were not gauged.
    pub largest_by_walls_mm: Option<f64>,
    /// Whether it may take a sleeve.
    pub may_be_sleeved: bool,
    /// Whether it may go back as it is.
    pub goes_back: bool,
}

/// The block, and what is fitted to it.
#[derive(Debug, Clone, PartialEq)]
pub struct Block {
    /// Nominal bore of the standard size, in mm.
    pub nominal_mm: f64,
    /// Largest bore that the opening of the gasket allows, in mm; none when it does not matter.
    pub largest_by_gasket_mm: Option<f64>,
    /// What a sleeve costs, with the work; none when no sleeve is fitted.
    pub sleeve_price: Option<f64>,
    /// What boring and honing one bore costs.
    pub boring_price: f64,
    /// How many standard uncertainties a step must lie above the clean-up.
    pub guard: f64,
    /// The chamber at the nominal bore, for the compression ratio of each step; none leaves that out.
    pub chamber: Option<Chamber>,
    /// End gap at the nominal bore of rings that are kept, in mm, for the gap in each step; none leaves that out.
    pub ring_gap_mm: Option<f64>,
}

choices! {
    /// How the block is brought back.
    Way {
        /// All bores to one step.
        OneStep = "one_step",
        /// Every bore to the smallest step that serves it.
        StepByBore = "step_by_bore",
        /// One step, and a sleeve where it does not serve.
        StepAndSleeves = "step_and_sleeves",
        /// Bores that go back stay as they are, and the others take a sleeve and are bored to the standard size.
        SleevesAlone = "sleeves_alone",
    }
}

/// What is done to a bore.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Action {
    /// It is bored to a step, by its place.
    Bore(usize),
    /// It takes a sleeve and is bored to a step, by its place.
    Sleeve(usize),
    /// It stays as it is, with its piston.
    Leave,
}

impl Action {
    /// Place of the step that it is bored to.
    pub(crate) fn step(self) -> Option<usize> {
        match self {
            Action::Bore(step) | Action::Sleeve(step) => Some(step),
            Action::Leave => None,
        }
    }
}

/// Why an option is ruled out.
#[derive(Debug, Clone, PartialEq)]
pub enum RuledOut {
    /// A bore is not clean at the step: it needs so much, in mm.
    NotClean {
        /// Place of the bore.
        bore: usize,
        /// What it needs, with the guard, in mm.
        needed_mm: f64,
    },
    /// The wall of a bore would be too thin: it allows so much, in mm.
    WallTooThin {
        /// Place of the bore.
        bore: usize,
        /// What it allows, in mm.
        largest_mm: f64,
    },
    /// The step is larger than the gasket allows, in mm.
    GasketTooSmall {
        /// What it allows, in mm.
        largest_mm: f64,
    },
    /// There are not enough pistons of a step.
    TooFewPistons {
        /// Place of the step.
        step: usize,
        /// How many are needed.
        needed: usize,
        /// How many there are.
        available: usize,
    },
    /// A bore needs a sleeve and may not take one.
    NoSleeve {
        /// Place of the bore.
        bore: usize,
    },
}

/// One way to bring the block back.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// Which way.
    pub way: Way,
    /// What is done to each bore, in order; empty where nothing serves.
    pub actions: Vec<Action>,
    /// Pistons, boring and sleeves together.
    pub price: f64,
    /// What rules it out; empty for one that can be done.
    pub ruled_out: Vec<RuledOut>,
}

/// What a step does besides.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Consequence {
    /// Bore of the step, in mm.
    pub bore_mm: f64,
    /// Compression ratio with the same chamber; none without one.
    pub compression_ratio: Option<f64>,
    /// End gap of rings that are kept, in mm; none when it was not given.
    pub ring_gap_mm: Option<f64>,
    /// Mass of a piston over that of the standard one, in g; none when it is not known.
    pub more_mass_g: Option<f64>,
}

/// The ways to bring a block back.
#[derive(Debug, Clone, PartialEq)]
pub struct Oversizes {
    /// Those that can be done, the cheapest first (of equal ones that with fewer sizes, then with less metal taken off), and after them those that cannot.
    pub choices: Vec<Choice>,
    /// What each step does, in the order of the steps.
    pub consequences: Vec<Consequence>,
}

/// Bores nearer than this are the same, in mm: rounding of the arithmetic.
const NOISE_MM: f64 = 1e-9;

/// Holds every way to bring a block back against what its bores need.
///
/// # Errors
/// When a number is not finite or impossible, [`ErrorKind::MissingField`] without bores or steps, [`ErrorKind::OutOfOrder`] for steps that do not rise; the error
/// names the field (`bores/2/clean_up_mm`).
pub fn oversizes(block: &Block, bores: &[WornBore], steps: &[Step]) -> Result<Oversizes, Error> {
    check(block, bores, steps)?;
    let table = Table { block, bores, steps };
    let consequences = steps.iter().map(|step| table.consequence(step)).collect::<Result<Vec<_>, _>>()?;
    let places = 0..steps.len();
    let mut choices: Vec<Choice> = places.clone().map(|step| table.one_step(step)).collect();
    choices.push(table.step_by_bore());
    if block.sleeve_price.is_some() {
        choices.extend(places.filter_map(|step| table.step_and_sleeves(step)));
        choices.extend(table.sleeves_alone());
    }
    let sizes = |c: &Choice| {
        let mut of: Vec<usize> = c.actions.iter().filter_map(|a| a.step()).collect();
        of.sort_unstable();
        of.dedup();
        of.len()
    };
    let metal = |c: &Choice| sum(c.actions.iter().filter_map(|a| a.step()).map(|step| table.bore_of(step)));
    crate::order::sort_by(&mut choices, |a, b| {
        let ruled_out = |c: &Choice| !c.ruled_out.is_empty();
        let by_price = ruled_out(a).cmp(&ruled_out(b)).then(a.price.total_cmp(&b.price));
        by_price.then(sizes(a).cmp(&sizes(b))).then(metal(a).total_cmp(&metal(b)))
    });
    Ok(Oversizes { choices, consequences })
}

struct Table<'a> {
    block: &'a Block,
    bores: &'a [WornBore],
    steps: &'a [Step],
}

impl Table<'_> {
    fn bore_of(&self, step: usize) -> f64 {
        let oversize = self.steps.get(step).map_or(f64::NAN, |s| s.oversize_mm);
        StepBore::evaluate([self.block.nominal_mm, oversize])
    }

    /// What speaks against a bore at a step, clean or not asked.
    fn against(&self, bore: usize, step: usize) -> Vec<RuledOut> {
        let Some(worn) = self.bores.get(bore) else { return Vec::new() };
        let size = self.bore_of(step);
        let needed_mm = Needed::evaluate([worn.clean_up_mm, self.block.guard, worn.standard_uncertainty_mm]);
        let mut out = Vec::new();
        if needed_mm > size + NOISE_MM {
            out.push(RuledOut::NotClean { bore, needed_mm });
        }
        if let Some(largest_mm) = worn.largest_by_walls_mm.filter(|largest| *largest < size - NOISE_MM) {
            out.push(RuledOut::WallTooThin { bore, largest_mm });
        }
        out
    }

    /// What speaks against a step in any bore.
    fn against_step(&self, step: usize) -> Option<RuledOut> {
        let size = self.bore_of(step);
        let largest = self.block.largest_by_gasket_mm.filter(|largest| *largest < size - NOISE_MM);
        largest.map(|largest_mm| RuledOut::GasketTooSmall { largest_mm })
    }

    fn one_step(&self, step: usize) -> Choice {
        let actions = vec![Action::Bore(step); self.bores.len()];
        let of_bores = (0..self.bores.len()).flat_map(|bore| self.against(bore, step));
        let ruled_out = self.against_step(step).into_iter().chain(of_bores).collect();
        self.choice(Way::OneStep, actions, ruled_out)
    }

    /// A bore that no step serves is held against the largest one.
    fn step_by_bore(&self) -> Choice {
        let serves = |bore: usize, step: &usize| {
            self.against(bore, *step).is_empty() && self.against_step(*step).is_none()
        };
        let (mut actions, mut ruled_out) = (Vec::new(), Vec::new());
        for bore in 0..self.bores.len() {
            let last = self.steps.len().saturating_sub(1);
            let step = (0..self.steps.len()).find(|step| serves(bore, step)).unwrap_or_else(|| {
                ruled_out.extend(self.against(bore, last).into_iter().chain(self.against_step(last)));
                last
            });
            actions.push(Action::Bore(step));
        }
        self.choice(Way::StepByBore, actions, ruled_out)
    }

    /// None where no bore goes back, where all do, and without pistons of the standard size.
    fn sleeves_alone(&self) -> Option<Choice> {
        let standard = self.steps.iter().position(|s| s.oversize_mm <= 0.0)?;
        let stays = self.bores.iter().filter(|b| b.goes_back).count();
        if stays == 0 || stays == self.bores.len() {
            return None;
        }
        let mut ruled_out: Vec<RuledOut> = self.against_step(standard).into_iter().collect();
        let mut actions = Vec::new();
        for (bore, worn) in self.bores.iter().enumerate() {
            if !worn.goes_back && !worn.may_be_sleeved {
                ruled_out.push(RuledOut::NoSleeve { bore });
            }
            actions.push(if worn.goes_back { Action::Leave } else { Action::Sleeve(standard) });
        }
        Some(self.choice(Way::SleevesAlone, actions, ruled_out))
    }

    /// None where no sleeve is needed.
    fn step_and_sleeves(&self, step: usize) -> Option<Choice> {
        let mut ruled_out: Vec<RuledOut> = self.against_step(step).into_iter().collect();
        let mut actions = Vec::new();
        for (bore, worn) in self.bores.iter().enumerate() {
            let served = self.against(bore, step).is_empty();
            if !served && !worn.may_be_sleeved {
                ruled_out.push(RuledOut::NoSleeve { bore });
            }
            actions.push(if served { Action::Bore(step) } else { Action::Sleeve(step) });
        }
        let sleeved = actions.iter().any(|a| matches!(a, Action::Sleeve(_)));
        sleeved.then(|| self.choice(Way::StepAndSleeves, actions, ruled_out))
    }

    fn choice(&self, way: Way, actions: Vec<Action>, mut ruled_out: Vec<RuledOut>) -> Choice {
        for (step, of) in self.steps.iter().enumerate() {
            let needed = actions.iter().filter(|a| a.step() == Some(step)).count();
            if let Some(available) = of.available.filter(|available| *available < needed) {
                ruled_out.push(RuledOut::TooFewPistons { step, needed, available });
            }
        }
        let price = |action: &Action| {
            let Some(step) = action.step() else { return 0.0 };
            let piston = self.steps.get(step).map_or(f64::NAN, |s| s.price);
            let sleeve = match action {
                Action::Sleeve(_) => self.block.sleeve_price.unwrap_or(f64::NAN),
                Action::Bore(_) | Action::Leave => 0.0,
            };
            BorePrice::evaluate([piston, self.block.boring_price, sleeve])
        };
        let price = sum(actions.iter().map(price));
        Choice { way, actions, price, ruled_out }
    }

    fn consequence(&self, step: &Step) -> Result<Consequence, Error> {
        let bore_mm = StepBore::evaluate([self.block.nominal_mm, step.oversize_mm]);
        let ratio = |chamber: &Chamber| {
            // the opening of the gasket is never narrower than the bore
            let gasket_bore_mm = larger(chamber.gasket_bore_mm, bore_mm);
            compression_ratio(&Chamber { bore_mm, gasket_bore_mm, ..*chamber }).map(|c| c.ratio)
        };
        let chamber = self.block.chamber.as_ref();
        let gap = |gap: f64| GapInBore::evaluate([gap, self.block.nominal_mm, bore_mm]);
        Ok(Consequence {
            bore_mm,
            compression_ratio: chamber.map(ratio).transpose().map_err(|e| e.under("chamber"))?,
            ring_gap_mm: self.block.ring_gap_mm.map(gap),
            more_mass_g: step.more_mass_g,
        })
    }
}

fn check(block: &Block, bores: &[WornBore], steps: &[Step]) -> Result<(), Error> {
    bounds::BORE.check("nominal_mm", block.nominal_mm)?;
    bounds::BORING_GUARD.check("guard", block.guard)?;
    bounds::PRICE.check("boring_price", block.boring_price)?;
    block.sleeve_price.map(|p| bounds::PRICE.check("sleeve_price", p)).transpose()?;
    block.ring_gap_mm.map(|g| bounds::RING_GAP.check("ring_gap_mm", g)).transpose()?;
    block.largest_by_gasket_mm.map(|d| bounds::BORE.check("largest_by_gasket_mm", d)).transpose()?;
    for (list, name) in [(bores.len(), "bores"), (steps.len(), "steps")] {
        if list == 0 {
            return Err(Error::new(ErrorKind::MissingField, "", "at least one is needed").at(name));
        }
    }
    for (k, bore) in bores.iter().enumerate() {
        let at = |field: &str| format!("bores/{k}/{field}");
        bounds::BORE.check(&at("clean_up_mm"), bore.clean_up_mm)?;
        bounds::SIZE_UNCERTAINTY.check(&at("standard_uncertainty_mm"), bore.standard_uncertainty_mm)?;
        bore.largest_by_walls_mm.map(|d| bounds::BORE.check(&at("largest_by_walls_mm"), d)).transpose()?;
    }
    for (k, step) in steps.iter().enumerate() {
        let at = |field: &str| format!("steps/{k}/{field}");
        bounds::OVERSIZE.check(&at("oversize_mm"), step.oversize_mm)?;
        bounds::PRICE.check(&at("price"), step.price)?;
        step.more_mass_g.map(|m| bounds::MASS_DIFFERENCE.check(&at("more_mass_g"), m)).transpose()?;
        let before = k.checked_sub(1).and_then(|b| steps.get(b));
        if before.is_some_and(|before| before.oversize_mm >= step.oversize_mm) {
            let reason = "steps rise";
            let error = Error::new(ErrorKind::OutOfOrder, step.oversize_mm.to_string(), reason);
            return Err(error.value(step.oversize_mm).at(&at("oversize_mm")));
        }
    }
    Ok(())
}
