//! Gauge studies: how much of what a gauge shows is the gauge, the hand that holds it, and the part.
//!
//! A crossed study: every appraiser measures every part the same number of times. Two methods: averages and ranges, and
//! analysis of variance, which also sees when appraisers differ on some parts only (interaction). Both as published in the
//! measurement systems analysis manual of the automotive industry, fourth edition (method by range constants `1 / d2*`, and
//! ANOVA with a pooling rule).
//!
#![doc = include_str!("../../docs/gauge-studies.md")]

use super::chart::{Constants, MOST};
use super::statistics::{as_number, mean, range, ratio, readable, squares_about, sum, too_few};
use crate::error::{Error, ErrorKind};
use crate::special::{chi2_quantile, f_upper};

/// A crossed study: `values[appraiser][trial][part]`, in any one unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Crossed {
    values: Vec<Vec<Vec<f64>>>,
    parts: usize,
    trials: usize,
}

/// A standard deviation and its shares.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Component {
    /// Standard deviation, in the unit of the readings.
    pub deviation: f64,
    /// Ratio to the total deviation. The ratios of the components do not add to 1; their squares do.
    pub of_total: f64,
    /// 95 % confidence interval of the deviation; none with the method by ranges, and none for a deviation of 0.
    pub interval: Option<(f64, f64)>,
}

/// What a study finds.
#[derive(Debug, Clone, PartialEq)]
pub struct Study {
    /// Repeatability: the same appraiser, the same part ("equipment variation").
    pub repeatability: Component,
    /// Reproducibility: between appraisers, interaction included ("appraiser variation").
    pub reproducibility: Component,
    /// Both together ("gauge repeatability and reproducibility").
    pub gauge: Component,
    /// Between parts.
    pub part: Component,
    /// Everything together.
    pub total: f64,
    /// `1.41 * part / gauge`, not truncated; its whole part is the number of distinct categories. None when the gauge shows no
    /// variation: a resolution too coarse for the study looks like that, too.
    pub categories: Option<f64>,
    /// The table behind it; none with the method by ranges.
    pub table: Option<Table>,
}

/// Sums of squares of a crossed study.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Table {
    /// Between appraisers.
    pub appraiser: Line,
    /// Between parts.
    pub part: Line,
    /// Appraiser by part.
    pub interaction: Line,
    /// Repeats.
    pub equipment: Line,
    /// Sum of squares about the grand mean.
    pub total_squares: f64,
    /// Was the interaction pooled with the equipment?
    pub pooled: bool,
    /// Appraisers against what their component is formed with: interaction and repeats together when pooled, the interaction when kept.
    /// None when that is 0.
    pub appraiser_residual: Option<Ratio>,
    /// Parts against the same.
    pub part_residual: Option<Ratio>,
}

/// A ratio of mean squares.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ratio {
    /// The ratio.
    pub f: f64,
    /// Probability of a ratio as large by chance.
    pub p: f64,
}

/// One line of the table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// Sum of squares.
    pub squares: f64,
    /// Degrees of freedom.
    pub dof: f64,
    /// Mean square.
    pub mean: f64,
    /// Ratio to the mean square of the equipment; none when that is 0.
    pub f: Option<f64>,
    /// Probability of a ratio as large by chance; none without a ratio.
    pub p: Option<f64>,
}

/// What to do with the interaction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Pooling {
    /// Keep it as a component.
    Never,
    /// Count it as repeats.
    Always,
    /// Count it as repeats when a ratio as large is more probable by chance than this, 0 to 1. Without a ratio it is kept.
    Above(f64),
}

const COVERAGE: f64 = 0.95;
const CATEGORY_FACTOR: f64 = 1.41;
/// With fewer degrees of freedom the upper limit is above a thousand deviations: it says nothing.
const LEAST_DOF: f64 = 0.5;

impl Crossed {
    /// A study of at least two appraisers, two trials and two parts: `values[appraiser][trial][part]`.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] when there is too little or it is not balanced; [`ErrorKind::NotFinite`] with the place as field.
    pub fn new(values: Vec<Vec<Vec<f64>>>) -> Result<Self, Error> {
        let trials = values.first().map_or(0, Vec::len);
        let parts = values.first().and_then(|a| a.first()).map_or(0, Vec::len);
        let balanced = values.iter().all(|a| a.len() == trials && a.iter().all(|t| t.len() == parts));
        if values.len() < 2 || trials < 2 || parts < 2 || !balanced {
            return Err(too_few(
                "values",
                "two or more appraisers, trials and parts are needed, and every appraiser reads every part equally often",
            ));
        }
        for (a, appraiser) in values.iter().enumerate() {
            for (t, trial) in appraiser.iter().enumerate() {
                let place = |p: usize| format!("values/{a}/{t}/{p}");
                trial.iter().enumerate().try_for_each(|(p, v)| readable(*v, || place(p)))?;
            }
        }
        Ok(Crossed { values, parts, trials })
    }

    fn appraisers(&self) -> usize {
        self.values.len()
    }

    /// The repeats of one appraiser on one part.
    fn repeats(&self, appraiser: &[Vec<f64>], part: usize) -> Vec<f64> {
        appraiser.iter().filter_map(|trial| trial.get(part).copied()).collect()
    }

    /// By averages and ranges, for up to 25 trials, appraisers and parts.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] when there are more.
    pub fn by_ranges(&self) -> Result<Study, Error> {
        let trials_constant = constants(self.trials, "trials")?.d2;
        let appraisers_constant = constants(self.appraisers(), "appraisers")?.d2_star();
        let parts_constant = constants(self.parts, "parts")?.d2_star();
        let (n, r) = (as_number(self.parts), as_number(self.trials));
        let ranges: Vec<f64> =
            self.values.iter().flat_map(|a| (0..self.parts).map(|p| range(&self.repeats(a, p)))).collect();
        let ev = mean(&ranges) / trials_constant;
        let averages: Vec<f64> = self.values.iter().map(|a| mean(&a.concat())).collect();
        let spread = range(&averages) / appraisers_constant;
        // a difference of appraisers below what the repeats explain is none
        let av = positive(spread * spread - ev * ev / (n * r)).sqrt();
        let part_averages: Vec<f64> = (0..self.parts).map(|p| mean(&self.part(p))).collect();
        let pv = range(&part_averages) / parts_constant;
        Ok(study([ev * ev, av * av, pv * pv], [None; 4], None))
    }

    fn part(&self, part: usize) -> Vec<f64> {
        self.values.iter().flat_map(|a| self.repeats(a, part)).collect()
    }

    /// By analysis of variance. Ratios are to the mean square of the equipment, before pooling.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] when the probability to pool above is none.
    pub fn by_variance(&self, pooling: Pooling) -> Result<Study, Error> {
        pooling.check()?;
        let (k, n, r) = (as_number(self.appraisers()), as_number(self.parts), as_number(self.trials));
        let all: Vec<f64> = self.values.iter().flatten().flatten().copied().collect();
        let grand = mean(&all);
        let squares =
            |means: &[f64], count: f64| count * sum(means.iter().map(|m| (m - grand) * (m - grand)));
        let appraiser_means: Vec<f64> = self.values.iter().map(|a| mean(&a.concat())).collect();
        let part_means: Vec<f64> = (0..self.parts).map(|p| mean(&self.part(p))).collect();
        let cells: Vec<Vec<f64>> =
            self.values.iter().flat_map(|a| (0..self.parts).map(|p| self.repeats(a, p))).collect();
        let cell_means: Vec<f64> = cells.iter().map(|c| mean(c)).collect();
        let equipment = sum(cells.iter().zip(&cell_means).map(|(c, m)| squares_about(c, *m)));
        let (appraiser, part) = (squares(&appraiser_means, n * r), squares(&part_means, k * r));
        // a difference that is below 0 by rounding only
        let interaction = positive(squares(&cell_means, r) - appraiser - part);
        let equipment_dof = k * n * (r - 1.0);
        let base = equipment / equipment_dof;
        let line = |squares: f64, dof: f64| {
            let mean = squares / dof;
            let f = ratio(mean, base);
            Line { squares, dof, mean, f, p: f.map(|f| f_upper(f, dof, equipment_dof)) }
        };
        let mut table = Table {
            appraiser: line(appraiser, k - 1.0),
            part: line(part, n - 1.0),
            interaction: line(interaction, (k - 1.0) * (n - 1.0)),
            equipment: Line::of_repeats(equipment, equipment_dof),
            total_squares: appraiser + part + interaction + equipment,
            pooled: false,
            appraiser_residual: None,
            part_residual: None,
        };
        table.pooled = match pooling {
            Pooling::Never => false,
            Pooling::Always => true,
            Pooling::Above(p) => table.interaction.p.is_some_and(|chance| chance > p),
        };
        Ok(table.study(k, n, r))
    }
}

impl Pooling {
    fn check(self) -> Result<(), Error> {
        match self {
            Pooling::Above(p) if !(0.0..=1.0).contains(&p) => {
                let error = Error::new(ErrorKind::OutOfRange, p.to_string(), "a probability is needed");
                Err(error.value(p).limits(0.0, 1.0, "1").at("pooling"))
            }
            _ => Ok(()),
        }
    }
}

impl Line {
    /// What the others are held against; it has no ratio of its own.
    fn of_repeats(squares: f64, dof: f64) -> Self {
        Line { squares, dof, mean: squares / dof, f: None, p: None }
    }
}

impl Table {
    fn study(mut self, k: f64, n: f64, r: f64) -> Study {
        let (interaction, equipment) = (self.interaction, self.equipment);
        let together =
            Line::of_repeats(interaction.squares + equipment.squares, interaction.dof + equipment.dof);
        // what the components of appraisers and parts are formed with; pooled, it is also the repeats
        let (residual, repeats) = if self.pooled { (together, together) } else { (interaction, equipment) };
        let lines = [self.appraiser, self.part, residual, repeats];
        let of_residual = if self.pooled { REPEATS } else { RESIDUAL };
        let repeatability = difference(REPEATS, 1.0, None);
        let own = counted(&lines, difference(APPRAISER, n * r, Some(of_residual)));
        let on_some_parts = counted(&lines, difference(of_residual, r, Some(REPEATS)));
        let part = counted(&lines, difference(PART, k * r, Some(of_residual)));
        let reproducibility = added(own, on_some_parts);
        let gauge = added(reproducibility, repeatability);
        self.appraiser_residual = Ratio::of(self.appraiser, residual);
        self.part_residual = Ratio::of(self.part, residual);
        let [ev, av, both, pv] =
            [repeatability, reproducibility, gauge, part].map(|factors| combined(&lines, factors));
        study([ev.0, av.0, pv.0], [ev.1, av.1, both.1, pv.1], Some(self))
    }
}

impl Ratio {
    fn of(line: Line, base: Line) -> Option<Self> {
        ratio(line.mean, base.mean).map(|f| Ratio { f, p: f_upper(f, line.dof, base.dof) })
    }
}

/// A variance as a combination of the mean squares of appraisers, parts, residual and repeats: the factor of each.
type Factors = [f64; 4];

const APPRAISER: usize = 0;
const PART: usize = 1;
const RESIDUAL: usize = 2;
const REPEATS: usize = 3;

/// The mean square at one place less that at another, over a count; nothing when they are the same.
fn difference(place: usize, count: f64, less: Option<usize>) -> Factors {
    let factor = |k| f64::from(u8::from(k == place)) - f64::from(u8::from(less == Some(k)));
    core::array::from_fn(|k| factor(k) / count)
}

fn added(a: Factors, b: Factors) -> Factors {
    let mut out = a;
    out.iter_mut().zip(b).for_each(|(sum, factor)| *sum += factor);
    out
}

/// The factors of a component; none when its variance comes out negative.
fn counted(lines: &[Line; 4], factors: Factors) -> Factors {
    if variance(lines, factors) > 0.0 { factors } else { [0.0; 4] }
}

fn variance(lines: &[Line; 4], factors: Factors) -> f64 {
    sum(lines.iter().zip(factors).map(|(line, factor)| factor * line.mean))
}

/// A variance as a combination of mean squares, and the interval of its root by Satterthwaite's degrees of freedom (approximate where
/// a factor is negative). Source: Satterthwaite, Biometrics Bulletin 2 (1946).
fn combined(lines: &[Line; 4], factors: Factors) -> (f64, Option<(f64, f64)>) {
    let variance = variance(lines, factors);
    if variance <= 0.0 {
        return (0.0, None);
    }
    // as shares: the square of a variance may be outside what a double holds
    let parts = sum(lines.iter().zip(factors).map(|(line, factor)| {
        let share = factor * line.mean / variance;
        share * share / line.dof
    }));
    let dof = 1.0 / parts;
    if dof < LEAST_DOF {
        return (variance, None);
    }
    let limit = |p: f64| (dof * variance / chi2_quantile(p, dof)).sqrt();
    (variance, Some((limit(0.5 + COVERAGE / 2.0), limit(0.5 - COVERAGE / 2.0))))
}

fn study(
    [ev, av, pv]: [f64; 3],
    [of_ev, of_av, of_gauge, of_pv]: [Option<(f64, f64)>; 4],
    table: Option<Table>,
) -> Study {
    let gauge = ev + av;
    let total = (gauge + pv).sqrt();
    let component = |variance: f64, interval| {
        let deviation = variance.sqrt();
        Component { deviation, of_total: if total > 0.0 { deviation / total } else { 0.0 }, interval }
    };
    Study {
        repeatability: component(ev, of_ev),
        reproducibility: component(av, of_av),
        gauge: component(gauge, of_gauge),
        part: component(pv, of_pv),
        total,
        categories: ratio(pv, gauge).map(|r| CATEGORY_FACTOR * r.sqrt()),
        table,
    }
}

fn constants(count: usize, field: &str) -> Result<Constants, Error> {
    Constants::of(count).ok_or_else(|| {
        let reason = "the method by ranges has no constant for so many";
        let error = Error::new(ErrorKind::OutOfRange, count.to_string(), reason);
        error.value(as_number(count)).limits(2.0, as_number(MOST), "1").at(field)
    })
}

fn positive(variance: f64) -> f64 {
    if variance > 0.0 { variance } else { 0.0 }
}
