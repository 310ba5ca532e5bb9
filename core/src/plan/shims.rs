//! Shims below the flanges of a row of liners.
//!
#![doc = include_str!("../../docs/shims.md")]

use crate::bounds;
use crate::calc::Formula;
use crate::error::{Error, ErrorKind};
use crate::measurement::statistics::{as_number, sum};
use crate::report::LINER_LIFTING;
use crate::shape::deck::LinerProtrusion;
use crate::shape::extremes;
use crate::shape::least::larger;
use std::collections::BTreeMap;

/// A liner and its counterbore.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Liner {
    /// Height of its flange, in mm.
    pub flange_mm: f64,
    /// Depth of the counterbore toward the front of the row, at one side, toward the rear and at the other side, in mm.
    pub depths_mm: [f64; 4],
    /// How much deeper the seat is at one edge of the ledge than at the other, in mm; none when it was not read.
    pub cupping_mm: Option<f64>,
}

/// A shim that can be had.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shim {
    /// Its thickness, in mm.
    pub thickness_mm: f64,
    /// How many there are; none when it does not matter.
    pub available: Option<usize>,
}

/// What is wanted of a row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wanted {
    /// Smallest protrusion at any place, in mm.
    pub least_mm: f64,
    /// Largest protrusion at any place, in mm.
    pub most_mm: f64,
    /// Most that a seat may be uneven: the difference within one liner, in mm.
    pub unevenness_mm: f64,
    /// Most that a seat may be cupped, in mm; none leaves that out.
    pub cupping_mm: Option<f64>,
    /// Most that two neighbours may differ by at their nearest points, in mm; none leaves that out.
    pub neighbours_mm: Option<f64>,
    /// Most shims on one liner, 1 to 3.
    pub most_on_one: usize,
}

/// A liner in the plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Shimmed {
    /// Mean depth of its counterbore, in mm.
    pub mean_depth_mm: f64,
    /// Unevenness of its seat, in mm.
    pub unevenness_mm: f64,
    /// Thinnest stack that brings every place to the least protrusion, in mm; 0 or less when none is needed for that.
    pub least_shims_mm: f64,
    /// Thickest stack that leaves every place at the largest protrusion, in mm. Below zero the liner stands too high without shims; below the
    /// thinnest stack its seat is too uneven for what is wanted.
    pub most_shims_mm: f64,
    /// Its shims by their places, rising; empty is none. None where nothing serves the row.
    pub stack: Option<Vec<usize>>,
    /// Smallest protrusion, in mm; none without a stack.
    pub lowest_mm: Option<f64>,
    /// Largest protrusion, in mm; none without a stack.
    pub highest_mm: Option<f64>,
}

/// What rules out a row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RuledOut {
    /// The seat of a liner is too uneven: not fit to shim.
    Uneven {
        /// Place of the liner.
        liner: usize,
    },
    /// The seat of a liner is cupped: not fit to shim.
    Cupped {
        /// Place of the liner.
        liner: usize,
    },
    /// No stack of the shims brings a liner within its limits.
    NoStack {
        /// Place of the liner.
        liner: usize,
    },
    /// Every liner has a stack, but none of this one goes with those before it by the rule of neighbours.
    Neighbours {
        /// Place of the liner.
        liner: usize,
    },
    /// It could be done with more shims: there are too few of them from this liner on.
    TooFewShims {
        /// Place of the liner.
        liner: usize,
    },
}

/// The shims of a row.
#[derive(Debug, Clone, PartialEq)]
pub struct ShimPlan {
    /// One for each liner, in order.
    pub liners: Vec<Shimmed>,
    /// Largest distance of a protrusion from the middle of the wanted ones, in mm; none where nothing serves.
    pub largest_deviation_mm: Option<f64>,
    /// Largest difference of neighbours at their nearest points, in mm; none where nothing serves or there is one liner.
    pub largest_step_mm: Option<f64>,
    /// Shims that are used; none where nothing serves.
    pub shims_used: Option<usize>,
    /// What rules the row out; empty for one that can be done.
    pub ruled_out: Vec<RuledOut>,
    /// What to take care of.
    pub caution: &'static str,
}

/// Most liners of a row.
const MOST_LINERS: usize = 24;
/// Most thicknesses of shims.
const MOST_SHIMS: usize = 12;
/// Most shims on one liner.
const MOST_ON_ONE: usize = 3;
/// Most steps of one search along a row: ways to a liner times its stacks.
const MOST_STEPS: usize = 20_000_000;
/// Protrusions nearer than this are the same, in mm: rounding of the arithmetic.
const NOISE_MM: f64 = 1e-9;

/// Chooses the shims of a row of liners, exactly.
///
/// # Errors
/// When a number is not finite or impossible, limits are out of order, there is no liner or too many of something ([`ErrorKind::OutOfRange`]); the
/// error names the place (`liners/2/depths_mm/1`). [`ErrorKind::OutOfRange`] of the field `shims` when limited stocks leave more ways than are
/// searched.
pub fn shim_plan(liners: &[Liner], shims: &[Shim], wanted: &Wanted) -> Result<ShimPlan, Error> {
    check(liners, shims, wanted)?;
    let row = Row::new(liners, shims, wanted);
    let mut ruled_out = row.unfit();
    let chosen = if ruled_out.is_empty() { row.solve()? } else { None };
    if ruled_out.is_empty() && chosen.is_none() {
        ruled_out.push(row.hindrance()?);
    }
    Ok(row.plan(chosen.as_deref(), ruled_out))
}

/// A stack of shims on one liner.
struct Stack {
    /// places of its shims, rising
    shims: Vec<usize>,
    thickness: f64,
}

/// How one stack leaves one liner.
struct Standing {
    /// place among the stacks
    stack: usize,
    front: f64,
    rear: f64,
    deviation: f64,
}

/// The stack of the last liner, and how many of every shim of limited stock are used.
type State = (usize, Vec<u8>);
/// What leads to a state best: its cost, and the state of the liner before.
type Reached<C> = BTreeMap<State, (C, Option<State>)>;

struct Row<'a> {
    liners: &'a [Liner],
    wanted: &'a Wanted,
    stacks: Vec<Stack>,
    /// for every liner the stacks that bring it within its limits
    standings: Vec<Vec<Standing>>,
    /// stock of every shim that could run out; none for the others
    stock: Vec<Option<u8>>,
}

impl<'a> Row<'a> {
    fn new(liners: &'a [Liner], shims: &[Shim], wanted: &'a Wanted) -> Self {
        let stacks = stacks(shims, wanted.most_on_one);
        let standings = liners.iter().map(|liner| standings(liner, &stacks, wanted)).collect();
        let most = liners.len() * wanted.most_on_one;
        let limited =
            |shim: &Shim| shim.available.filter(|n| *n < most).map(|n| u8::try_from(n).unwrap_or(u8::MAX));
        Row { liners, wanted, stacks, standings, stock: shims.iter().map(limited).collect() }
    }

    /// Liners that nothing serves, whatever the others take.
    fn unfit(&self) -> Vec<RuledOut> {
        let of = |(liner, (given, standings)): (usize, (&Liner, &Vec<Standing>))| {
            let (low, high) = extremes(&given.depths_mm);
            let above = |value: f64, limit: f64| value > limit + NOISE_MM;
            let cupped =
                given.cupping_mm.zip(self.wanted.cupping_mm).is_some_and(|(c, limit)| above(c, limit));
            let mut out = Vec::new();
            if above(high - low, self.wanted.unevenness_mm) {
                out.push(RuledOut::Uneven { liner });
            }
            if cupped {
                out.push(RuledOut::Cupped { liner });
            }
            if out.is_empty() && standings.is_empty() {
                out.push(RuledOut::NoStack { liner });
            }
            out
        };
        self.liners.iter().zip(&self.standings).enumerate().flat_map(of).collect()
    }

    /// The stack of every liner; none where none keeps the rule of neighbours with the stock there is.
    fn solve(&self) -> Result<Option<Vec<usize>>, Error> {
        // the largest deviation first, for it alone decides; a way with fewer shims may not be cut off before it is known
        let largest = |so_far: &f64, standing: &Standing| larger(*so_far, standing.deviation);
        let reached = self.along(0.0, largest, f64::total_cmp, f64::INFINITY, true)?;
        let Some(least) = best(&reached, f64::total_cmp).map(|(_, (deviation, _))| *deviation) else {
            return Ok(None);
        };
        let count = |so_far: &usize, standing: &Standing| {
            so_far + self.stacks.get(standing.stack).map_or(0, |s| s.shims.len())
        };
        let reached = self.along(0, count, usize::cmp, least + NOISE_MM, true)?;
        Ok(traced(&reached))
    }

    /// What is best along the row: for every liner the states that can be reached, with the least cost. Ends early at a liner that none leads to.
    fn along<C: Clone>(
        &self,
        start: C,
        add: impl Fn(&C, &Standing) -> C,
        order: impl Fn(&C, &C) -> core::cmp::Ordering,
        most_deviation: f64,
        with_stock: bool,
    ) -> Result<Vec<Reached<C>>, Error> {
        let mut all: Vec<Reached<C>> = Vec::new();
        let mut steps: usize = 0;
        for (k, standings) in self.standings.iter().enumerate() {
            steps += standings.len().saturating_mul(all.last().map_or(1, BTreeMap::len));
            check_steps(steps)?;
            let mut here: Reached<C> = BTreeMap::new();
            for standing in standings.iter().filter(|s| s.deviation <= most_deviation) {
                let mut offer = |used: &[u8], cost: &C, from: Option<&State>| {
                    let Some(used) = self.take(used, standing.stack, with_stock) else { return };
                    let cost = add(cost, standing);
                    let better = |old: &(C, Option<State>)| order(&cost, &old.0).is_lt();
                    let state = (standing.stack, used);
                    if here.get(&state).is_none_or(better) {
                        here.insert(state, (cost, from.cloned()));
                    }
                };
                match all.last() {
                    None => offer(&vec![0; self.stock.len()], &start, None),
                    Some(before) => before
                        .iter()
                        .filter(|(state, _)| self.are_neighbours(k, state.0, standing))
                        .for_each(|(state, (cost, _))| offer(&state.1, cost, Some(state))),
                }
            }
            let dead = here.is_empty();
            all.push(here);
            if dead {
                break;
            }
        }
        Ok(all)
    }

    /// The use of the stock with one more stack; none where it runs out.
    fn take(&self, used: &[u8], stack: usize, with_stock: bool) -> Option<Vec<u8>> {
        let mut used = used.to_vec();
        for shim in self.stacks.get(stack)?.shims.iter().filter(|_| with_stock) {
            if let Some(stock) = self.stock.get(*shim).copied().flatten() {
                let n = used.get_mut(*shim).filter(|n| **n < stock)?;
                *n += 1;
            }
        }
        Some(used)
    }

    /// Does a liner keep the rule of neighbours with the one before it?
    fn are_neighbours(&self, liner: usize, stack_before: usize, standing: &Standing) -> bool {
        let Some(limit) = self.wanted.neighbours_mm else { return true };
        let before = liner.checked_sub(1).and_then(|k| self.liners.get(k));
        let Some((before, stack)) = before.zip(self.stacks.get(stack_before)) else { return true };
        let [_, _, depth, _] = before.depths_mm;
        let rear = LinerProtrusion::evaluate([before.flange_mm, stack.thickness, depth]);
        (rear - standing.front).abs() <= limit + NOISE_MM
    }

    fn standing(&self, liner: usize, stack: usize) -> Option<&Standing> {
        self.standings.get(liner)?.iter().find(|s| s.stack == stack)
    }

    /// Where a row ends that every liner alone could be served in.
    fn hindrance(&self) -> Result<RuledOut, Error> {
        let end = |with_stock| {
            let nothing = |(): &(), _: &Standing| ();
            let reached = self.along((), nothing, Ord::cmp, f64::INFINITY, with_stock)?;
            let dead = reached.last().is_some_and(BTreeMap::is_empty);
            Ok::<_, Error>(dead.then(|| reached.len().saturating_sub(1)))
        };
        Ok(match end(false)? {
            Some(liner) => RuledOut::Neighbours { liner },
            None => RuledOut::TooFewShims { liner: end(true)?.unwrap_or_default() },
        })
    }

    fn plan(&self, chosen: Option<&[usize]>, ruled_out: Vec<RuledOut>) -> ShimPlan {
        let of =
            |liner: usize| chosen.and_then(|c| c.get(liner)).and_then(|stack| self.standing(liner, *stack));
        let liners = self.liners.iter().enumerate().map(|(k, liner)| self.shimmed(liner, of(k))).collect();
        let standings: Vec<&Standing> = (0..self.liners.len()).filter_map(of).collect();
        let steps = standings.windows(2).filter_map(|pair| match pair {
            [a, b] => Some((a.rear - b.front).abs()),
            _ => None,
        });
        let used = |s: &&Standing| self.stacks.get(s.stack).map_or(0, |s| s.shims.len());
        ShimPlan {
            liners,
            largest_deviation_mm: standings.iter().map(|s| s.deviation).reduce(larger),
            largest_step_mm: steps.reduce(larger),
            shims_used: chosen.map(|_| standings.iter().map(used).sum()),
            ruled_out,
            caution: LINER_LIFTING,
        }
    }

    fn shimmed(&self, liner: &Liner, standing: Option<&Standing>) -> Shimmed {
        let (shallowest, deepest) = extremes(&liner.depths_mm);
        let bare = |depth| LinerProtrusion::evaluate([liner.flange_mm, 0.0, depth]);
        let stack = standing.and_then(|s| self.stacks.get(s.stack));
        let at = |depth| stack.map(|s| LinerProtrusion::evaluate([liner.flange_mm, s.thickness, depth]));
        Shimmed {
            mean_depth_mm: sum(liner.depths_mm.iter().copied()) / 4.0,
            unevenness_mm: deepest - shallowest,
            least_shims_mm: self.wanted.least_mm - bare(deepest),
            most_shims_mm: self.wanted.most_mm - bare(shallowest),
            stack: stack.map(|s| s.shims.clone()),
            lowest_mm: at(deepest),
            highest_mm: at(shallowest),
        }
    }
}

fn check_steps(steps: usize) -> Result<(), Error> {
    if steps <= MOST_STEPS {
        return Ok(());
    }
    let reason = "limited stocks leave more ways than are searched: give fewer thicknesses, or no stock where it does not run out";
    let error = Error::new(ErrorKind::OutOfRange, steps.to_string(), reason);
    Err(error.limits(0.0, as_number(MOST_STEPS), "1").at("shims"))
}

/// Every stack of at most so many shims, in order: fewer first, then by the places of the shims.
fn stacks(shims: &[Shim], most_on_one: usize) -> Vec<Stack> {
    let mut all = vec![Vec::new()];
    let mut longest: Vec<Vec<usize>> = all.clone();
    for _ in 0..most_on_one {
        let longer = |stack: &Vec<usize>| {
            let stack = stack.clone();
            (stack.last().copied().unwrap_or(0)..shims.len())
                .map(move |shim| [stack.as_slice(), &[shim]].concat())
        };
        longest = longest.iter().flat_map(longer).collect();
        all.extend(longest.iter().cloned());
    }
    let thickness =
        |stack: &[usize]| sum(stack.iter().filter_map(|shim| shims.get(*shim)).map(|shim| shim.thickness_mm));
    all.into_iter().map(|shims| Stack { thickness: thickness(&shims), shims }).collect()
}

/// The stacks that bring a liner within its limits at every place.
fn standings(liner: &Liner, stacks: &[Stack], wanted: &Wanted) -> Vec<Standing> {
    let middle = wanted.least_mm + (wanted.most_mm - wanted.least_mm) / 2.0;
    let half = (wanted.most_mm - wanted.least_mm) / 2.0;
    let standing = |(stack, of): (usize, &Stack)| {
        let [front, one, rear, other] =
            liner.depths_mm.map(|depth| LinerProtrusion::evaluate([liner.flange_mm, of.thickness, depth]));
        let off = |deviation: f64, at: &f64| larger(deviation, (at - middle).abs());
        let deviation = [front, one, rear, other].iter().fold(0.0, off);
        (deviation <= half + NOISE_MM).then_some(Standing { stack, front, rear, deviation })
    };
    stacks.iter().enumerate().filter_map(standing).collect()
}

/// The first of the best last states.
fn best<C>(
    reached: &[Reached<C>],
    order: impl Fn(&C, &C) -> core::cmp::Ordering,
) -> Option<(&State, &(C, Option<State>))> {
    let last = reached.last()?.iter();
    last.fold(None, |best: Option<(&State, &(C, Option<State>))>, this| match best {
        Some(so_far) if !order(&this.1.0, &so_far.1.0).is_lt() => Some(so_far),
        _ => Some(this),
    })
}

/// The stacks that lead to the best last state.
fn traced(reached: &[Reached<usize>]) -> Option<Vec<usize>> {
    let mut state = best(reached, usize::cmp)?.0;
    let mut chosen = vec![state.0];
    for here in reached.iter().rev() {
        let Some(before) = here.get(state).and_then(|(_, before)| before.as_ref()) else { break };
        chosen.push(before.0);
        state = before;
    }
    chosen.reverse();
    Some(chosen)
}

fn check(liners: &[Liner], shims: &[Shim], wanted: &Wanted) -> Result<(), Error> {
    within("liners", liners.len(), 1, MOST_LINERS)?;
    within("shims", shims.len(), 0, MOST_SHIMS)?;
    within("most_on_one", wanted.most_on_one, 1, MOST_ON_ONE)?;
    for (k, liner) in liners.iter().enumerate() {
        bounds::LINER_FLANGE.check(&format!("liners/{k}/flange_mm"), liner.flange_mm)?;
        for (j, depth) in liner.depths_mm.iter().enumerate() {
            bounds::LINER_FLANGE.check(&format!("liners/{k}/depths_mm/{j}"), *depth)?;
        }
        let cupping = |c| bounds::SEAT_UNEVENNESS.check(&format!("liners/{k}/cupping_mm"), c);
        liner.cupping_mm.map(cupping).transpose()?;
    }
    for (k, shim) in shims.iter().enumerate() {
        bounds::SHIM.check(&format!("shims/{k}/thickness_mm"), shim.thickness_mm)?;
    }
    bounds::LINER_PROTRUSION.check("least_mm", wanted.least_mm)?;
    bounds::LINER_PROTRUSION.check("most_mm", wanted.most_mm)?;
    let reason = "the largest protrusion lies above the smallest";
    bounds::check_above("most_mm", wanted.most_mm, wanted.least_mm, reason)?;
    bounds::SEAT_UNEVENNESS.check("unevenness_mm", wanted.unevenness_mm)?;
    wanted.cupping_mm.map(|c| bounds::SEAT_UNEVENNESS.check("cupping_mm", c)).transpose()?;
    wanted.neighbours_mm.map(|n| bounds::SEAT_UNEVENNESS.check("neighbours_mm", n)).transpose()?;
    Ok(())
}

fn within(field: &str, count: usize, least: usize, most: usize) -> Result<(), Error> {
    if (least..=most).contains(&count) {
        return Ok(());
    }
    let error = Error::new(ErrorKind::OutOfRange, count.to_string(), "too few or too many");
    Err(error.limits(as_number(least), as_number(most), "1").at(field))
}
