//! 1 MEASUREMENT: what a gauge says, and what its data sheet, its calibration and the thermometer leave uncertain.

mod gauge;
mod repeatability;
pub mod statistics;
pub mod study;
pub mod bias;
pub mod chart;
pub mod distribution;
pub mod jet;
pub mod uncertainty;
pub mod random;
pub mod monte_carlo;
mod tally;
pub mod points;
pub mod tail;
pub mod before;
pub mod preset;

mod placement;

pub(crate) use gauge::{
    Between, DepthIndicators, Gauge, Gauges, Outside, Over, Strips, Transfers, certified,
};
pub(crate) use placement::{Effect, Placement};
pub(crate) use repeatability::places;

use crate::bounds;
use crate::calc::{Calc, EstimateId, Figure, Fold, Measured, SourceId, formula};
use crate::error::{Error, ErrorKind};
use crate::job::document as doc;
use crate::job::{Entry, Given, Pure, Warning, check_length};
use crate::measurement::distribution::Distribution;
use crate::quantity::{Length, Temperature};

formula! {
    /// Standard uncertainty of a rectangular source of half-width `a`.
    HalfWidth: u [""] = (a) => (a * a / 3.0).sqrt(); source "JCGM 100:2008, 4.3.7";
    /// Standard uncertainty from an expanded one.
    Expanded: u ["mm"] = (expanded, k) => expanded / k; source "JCGM 100:2008, 4.3.3";
    /// Standard uncertainty of a resolution `r`: rectangular over one step.
    Resolution: u ["mm"] = (r) => (r * r / 12.0).sqrt(); source "JCGM 100:2008, F.2.2.1";
    /// Standard uncertainty of the mean of `n` readings of repeatability `s`.
    MeanOfRepeats: u ["mm"] = (s, n) => (s * s / n).sqrt(); source "JCGM 100:2008, 4.2.3, with a stated or pooled standard deviation";
    /// Degrees of freedom of an uncertainty of relative uncertainty `r`.
    Reliability: dof ["1"] = (r) => 1.0 / (2.0 * r * r); source "JCGM 100:2008, G.4.2, (G.3)";
}

/// The shop: its temperature and its one thermometer.
#[derive(Debug)]
pub(crate) struct Shop {
    temperature: Given,
    thermometer: SourceId,
    standard: Figure,
}

impl Shop {
    pub(crate) fn from_document(
        calc: &mut Calc,
        shop: &doc::Shop,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        calc.heading(|| "the shop".to_owned());
        let temperature = shop.temperature.read(&bounds::SHOP_TEMPERATURE, warnings)?;
        let error = shop.thermometer.permissible_error.read(&bounds::THERMOMETER_ERROR, warnings)?;
        let thermometer =
            calc.source("thermometer".to_owned(), &error.path, Distribution::STANDARD_RECTANGULAR);
        let standard = half_width(calc, &error);
        let estimate =
            reliability(calc, shop.thermometer.permissible_error_relative_uncertainty.as_ref(), warnings)?;
        calc.rests_on(thermometer, estimate);
        Ok(Shop { temperature, thermometer, standard })
    }

    /// A temperature read in the shop; they all share the error of the thermometer.
    pub(crate) fn temperature(
        &self,
        calc: &mut Calc,
        entry: Option<&Entry<Temperature>>,
        warnings: &mut Vec<Warning>,
    ) -> Result<(Measured, String), Error> {
        let given = match entry {
            Some(entry) => entry.read(&bounds::SHOP_TEMPERATURE, warnings)?,
            None => self.temperature.clone(),
        };
        let figure = calc.given("t", &given);
        Ok((calc.add_source(&figure.into(), self.thermometer, self.standard), given.path))
    }
}

/// The repeats read at one place, held against `bound`; nothing when nothing was read.
pub(crate) fn repeats(
    entries: &[Entry<Length>],
    bound: &bounds::Bound,
    warnings: &mut Vec<Warning>,
) -> Result<Vec<Given>, Error> {
    let mut out: Vec<Given> = Vec::with_capacity(entries.len());
    let mut ends: Option<[Given; 2]> = None;
    check_length(entries, |e| e)?;
    for entry in entries {
        let given = entry.read(bound, warnings)?;
        let [mut low, mut high] = ends.unwrap_or_else(|| [given.clone(), given.clone()]);
        // held against the one furthest off, not against each: a thousand repeats have half a million pairs
        let other = if given.value - low.value > high.value - given.value { &low } else { &high };
        check_spread(&given, other, warnings)?;
        if given.value < low.value {
            low = given.clone();
        } else if given.value > high.value {
            high = given.clone();
        }
        ends = Some([low, high]);
        out.push(given);
    }
    Ok(out)
}

/// Two readings at one place agree, or one of them was read elsewhere or wrongly.
fn check_spread(given: &Given, other: &Given, warnings: &mut Vec<Warning>) -> Result<(), Error> {
    let spread = (given.value - other.value).abs();
    let said = format!("{} and {} at one place differ by {spread:.3} mm", given.text, other.text);
    let reason = || format!("it differs by {spread:.3} mm from {} read at the same place", other.text);
    hold(&bounds::SPREAD, spread, given, said, reason, warnings)
}

/// Holds what follows from readings against its bound: odd is a warning, impossible a contradiction of the readings. `at` is the reading that
/// is named, `said` the sentence of the warning, `reason` that of the refusal.
pub(crate) fn hold(
    bound: &bounds::Bound,
    value: f64,
    at: &Given,
    said: String,
    reason: impl FnOnce() -> String,
    warnings: &mut Vec<Warning>,
) -> Result<(), Error> {
    match bound.judge(value) {
        bounds::Verdict::Usual => {}
        bounds::Verdict::Odd => {
            warnings.push(Warning { kind: "odd_value".to_owned(), path: at.path.clone(), text: said });
        }
        bounds::Verdict::Impossible => {
            return Err(Error::new(ErrorKind::Contradiction, &at.text, reason())
                .value(value)
                .limits(bound.possible.0, bound.possible.1, bound.unit)
                .at(&at.path));
        }
    }
    Ok(())
}

/// Standard uncertainty of a source that is given by its half-width.
pub(crate) fn half_width(calc: &mut Calc, given: &Given) -> Figure {
    let a = calc.given("half_width", given);
    calc.figure(HalfWidth, [a])
}

/// A number that the document types, or that a published table gives in its place.
#[derive(Debug, Clone)]
pub(crate) enum Stated {
    Typed(Given),
    Cited { value: f64, unit: &'static str, source: &'static str, path: String },
}

impl Stated {
    pub(crate) fn value(&self) -> f64 {
        match self {
            Stated::Typed(given) => given.value,
            Stated::Cited { value, .. } => *value,
        }
    }

    /// The field it is typed in, or the one that names the table.
    pub(crate) fn path(&self) -> &str {
        match self {
            Stated::Typed(given) => &given.path,
            Stated::Cited { path, .. } => path,
        }
    }

    /// The number: an input of the working, or a constant with its source.
    pub(crate) fn figure(&self, calc: &mut Calc, symbol: &str) -> Figure {
        match self {
            Stated::Typed(given) => calc.given(symbol, given),
            Stated::Cited { value, unit, source, .. } => calc.constant(symbol, *value, unit, source),
        }
    }

    /// Standard uncertainty of a source of this half-width.
    pub(crate) fn half_width(&self, calc: &mut Calc) -> Figure {
        let a = self.figure(calc, "half_width");
        calc.figure(HalfWidth, [a])
    }
}

/// The estimate behind a permissible error whose relative uncertainty is stated; none when it is taken as exact.
fn reliability(
    calc: &mut Calc,
    relative: Option<&Entry<Pure>>,
    warnings: &mut Vec<Warning>,
) -> Result<Option<EstimateId>, Error> {
    let Some(entry) = relative else { return Ok(None) };
    let given = entry.read(&bounds::RELATIVE_UNCERTAINTY, warnings)?;
    let r = calc.given("r", &given);
    let dof = calc.figure(Reliability, [r]);
    Ok(Some(calc.estimate(dof)))
}

/// Mean of the repeats at one place.
fn mean(calc: &mut Calc, symbol: &str, repeats: &[Given]) -> Option<Measured> {
    let figures: Vec<Measured> = repeats.iter().map(|r| calc.given(symbol, r).into()).collect();
    calc.fold(Fold::Mean, symbol, &figures.iter().collect::<Vec<_>>())
}

/// What a piston reading or a setting near the nominal size must lie within: 2 % either side.
pub(crate) fn near_nominal(label: &'static str, nominal: f64) -> bounds::Bound {
    bounds::Bound {
        label,
        unit: "mm",
        possible: (nominal * 0.98, nominal * 1.02),
        usual: (nominal * 0.99, nominal * 1.01),
        reason: "2 % from the nominal is another oversize, another height or another unit",
    }
}
