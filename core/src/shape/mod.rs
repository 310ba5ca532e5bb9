//! 3 SHAPE: how several sizes of one part become its size, taper, out-of-round and ovality; and the shape itself from full traces.

pub(crate) mod angle;
pub(crate) mod least;
pub(crate) mod minimax;
pub(crate) mod reference;
pub mod curve;
pub mod section;
pub mod circle;
pub mod cylinder;
pub mod plane;
pub mod bore;
pub mod piston;

pub mod deck;

pub(crate) mod target;
pub(crate) mod levels;

pub(crate) use reference::{check, check_as_many, extremes};

use crate::bounds;
use crate::calc::{Calc, Fold, Measured, formula};
use crate::error::Error;
use crate::job::document::{OutOfRoundRule, Reduction, SizeRule, TaperRule};
use crate::job::{Given, Warning};

formula! {
    /// Largest less smallest.
    Range: range ["mm"] = (largest, smallest) => largest - smallest; source "difference of two diameters";
    /// Difference without sign.
    Difference: difference ["mm"] = (a, b) => (a - b).abs(); source "difference of two diameters, without sign";
    /// Ovality of a piston at one height.
    Ovality: ovality ["mm"] = (major, minor) => major - minor; source "definition: thrust diameter less pin-axis diameter";
}

/// One diameter of a bore.
#[derive(Debug, Clone)]
pub(crate) struct BorePlace {
    pub(crate) depth: Given,
    pub(crate) axis: Given,
    /// as it was read
    pub(crate) size: Measured,
    /// less the deviation that is intended at its depth
    pub(crate) straight: Measured,
}

/// The three numbers of a bore; one that the readings do not reach is absent and named in `missing`.
pub(crate) struct Reduced {
    pub(crate) size: Option<Measured>,
    pub(crate) taper: Option<Measured>,
    pub(crate) out_of_round: Option<Measured>,
    pub(crate) missing: Vec<String>,
}

/// Reduces the diameters of a bore by the rules named in the document.
pub(crate) fn reduce(
    calc: &mut Calc,
    rule: &Reduction,
    places: &[BorePlace],
    warnings: &mut Vec<Warning>,
) -> Result<Reduced, Error> {
    let mut missing = Vec::new();
    let mut or_missing = |value: Option<Measured>, what: &str| {
        if value.is_none() {
            missing.push(what.to_owned());
        }
        value
    };
    let size = size(calc, &rule.size, places, warnings)?;
    let size = or_missing(size, "bore size: no reading at the place its rule needs");
    let taper = or_missing(taper(calc, rule.taper, places), "bore taper: readings at two depths are needed");
    let out_of_round = out_of_round(calc, rule.out_of_round, places);
    let out_of_round = or_missing(out_of_round, "bore out-of-round: readings on two axes are needed");
    Ok(Reduced { size, taper, out_of_round, missing })
}

fn size(
    calc: &mut Calc,
    rule: &SizeRule,
    places: &[BorePlace],
    warnings: &mut Vec<Warning>,
) -> Result<Option<Measured>, Error> {
    Ok(match rule {
        SizeRule::Largest => calc.fold(Fold::Largest, "bore", &sizes(places, |_| true)),
        SizeRule::Mean => calc.fold(Fold::Mean, "bore", &sizes(places, |_| true)),
        SizeRule::SmallestWear => {
            let lowest = depths(places).last().copied();
            calc.fold(
                Fold::Mean,
                "bore",
                &sizes(places, |p| lowest.is_some_and(|low| same(p.depth.value, low))),
            )
        }
        SizeRule::At(at) => {
            let depth = at.depth.read(&bounds::DEPTH, warnings)?.value;
            let axis =
                at.axis.as_ref().map(|a| a.read(&bounds::ANGLE, warnings)).transpose()?.map(|a| a.value);
            let here =
                |p: &BorePlace| same(p.depth.value, depth) && axis.is_none_or(|a| same(p.axis.value, a));
            calc.fold(Fold::Mean, "bore", &sizes(places, here))
        }
    })
}

/// The smallest diameter that was read: where a piston is tightest, whatever the rule of the size.
pub(crate) fn smallest(calc: &mut Calc, places: &[BorePlace]) -> Option<Measured> {
    calc.fold(Fold::Smallest, "smallest", &target::as_read(places))
}

/// The smallest diameter against the target profile, less the deviation that is intended there.
pub(crate) fn least(calc: &mut Calc, places: &[BorePlace]) -> Option<Measured> {
    calc.fold(Fold::Smallest, "smallest", &sizes(places, |_| true))
}

fn taper(calc: &mut Calc, rule: TaperRule, places: &[BorePlace]) -> Option<Measured> {
    let depths = depths(places);
    let (top, bottom) = (*depths.first()?, *depths.last()?);
    if same(top, bottom) {
        return None;
    }
    match rule {
        TaperRule::AlongAxis => {
            let lines = axes(places).into_iter().map(|axis| sizes(places, |p| same(p.axis.value, axis)));
            largest_range(calc, "taper", lines)
        }
        TaperRule::TopToBottom => {
            let at = |calc: &mut Calc, depth: f64| {
                calc.fold(Fold::Largest, "largest", &sizes(places, |p| same(p.depth.value, depth)))
            };
            let (a, b) = (at(calc, top)?, at(calc, bottom)?);
            Some(calc.apply(Difference, [&a, &b]))
        }
    }
}

fn out_of_round(calc: &mut Calc, rule: OutOfRoundRule, places: &[BorePlace]) -> Option<Measured> {
    match rule {
        OutOfRoundRule::AtLevel => {
            let levels =
                depths(places).into_iter().map(|depth| sizes(places, |p| same(p.depth.value, depth)));
            largest_range(calc, "out_of_round", levels)
        }
        OutOfRoundRule::BetweenAxes => {
            let axes = axes(places);
            let [x, y] = axes.as_slice() else {
                return None;
            };
            let on = |axis: f64| sizes(places, move |p| same(p.axis.value, axis));
            let ways = [(*x, *y), (*y, *x)].map(|(a, b)| {
                let (high, low) = (
                    calc.fold(Fold::Largest, "largest", &on(a))?,
                    calc.fold(Fold::Smallest, "smallest", &on(b))?,
                );
                Some(calc.apply(Range, [&high, &low]))
            });
            let ways: Vec<Measured> = ways.into_iter().flatten().collect();
            calc.fold(Fold::Largest, "out_of_round", &ways.iter().collect::<Vec<_>>())
        }
    }
}

/// The largest, over several sets, of largest less smallest; sets of fewer than two say nothing.
fn largest_range<'p>(
    calc: &mut Calc,
    symbol: &str,
    sets: impl Iterator<Item = Vec<&'p Measured>>,
) -> Option<Measured> {
    let mut ranges = Vec::new();
    for set in sets.filter(|set| set.len() > 1) {
        let (high, low) =
            (calc.fold(Fold::Largest, "largest", &set)?, calc.fold(Fold::Smallest, "smallest", &set)?);
        ranges.push(calc.apply(Range, [&high, &low]));
    }
    calc.fold(Fold::Largest, symbol, &ranges.iter().collect::<Vec<_>>())
}

fn sizes(places: &[BorePlace], which: impl Fn(&BorePlace) -> bool) -> Vec<&Measured> {
    places.iter().filter(|p| which(p)).map(|p| &p.straight).collect()
}

fn depths(places: &[BorePlace]) -> Vec<f64> {
    distinct(places.iter().map(|p| p.depth.value))
}

fn axes(places: &[BorePlace]) -> Vec<f64> {
    distinct(places.iter().map(|p| p.axis.value))
}

/// Rising, each once.
fn distinct(values: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut out: Vec<f64> = values.collect();
    out.sort_by(f64::total_cmp);
    out.dedup_by(|a, b| same(*a, *b));
    out
}

/// Are two directions those of one diameter? Half a turn apart they are.
pub(crate) fn one_diameter(a: f64, b: f64) -> bool {
    let apart = (a - b).abs() % 180.0;
    same(apart, 0.0) || same(apart, 180.0)
}

/// Two places are the same when they are nearer than a micrometre (or a microdegree).
pub(crate) fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < 0.001
}
