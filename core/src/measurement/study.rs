//! Gauge studies: how much of what a gauge shows is the gauge, the hand that holds it, and the part.
//!
//! A crossed study: every appraiser measures every part the same number of times. Two methods: averages and ranges, and
//! analysis of variance, which also sees when appraisers differ on some parts only (interaction). Both as published in the
//! measurement systems analysis manual of the automotive industry, fourth edition (method by range constants `1 / d2*`, and
//! ANOVA with a pooling rule).
//!
#![doc = include_str!("../../docs/gauge-studies.md")]

use super::statistics::{as_number, ratio, readable, sum, too_few};
use crate::error::{Error, ErrorKind};
use crate::special::{chi2_quantile, f_cdf};

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

/// Expected range `d2` of 2, 3, ... normal values. Source: integral of the distribution of the range, evaluated again in `tests/study.rs`.
#[expect(clippy::approx_constant, reason = "the first is 2 / sqrt(pi), to the digits of the table")]
pub const D2: [f64; 14] = [
    1.128_379, 1.692_569, 2.058_751, 2.325_929, 2.534_413, 2.704_357, 2.847_201, 2.970_026, 3.077_505,
    3.172_873, 3.258_455, 3.335_980, 3.406_763, 3.471_827,
];
/// `d2*` of one subgroup of 2, 3, ... values: the square root of the mean square of the range. Source as for [`D2`].
#[expect(clippy::approx_constant, reason = "the first is sqrt(2), to the digits of the table")]
pub const D2_STAR: [f64; 14] = [
    1.414_214, 1.911_540, 2.238_865, 2.481_246, 2.672_530, 2.829_802, 2.962_883, 3.077_930, 3.179_045,
    3.269_096, 3.350_158, 3.423_785, 3.491_166, 3.553_229,
];

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

    /// By averages and ranges, for up to 15 trials, appraisers and parts.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] when there are more.
    pub fn by_ranges(&self) -> Result<Study, Error> {
        let trials_constant = constant(&D2, self.trials, "trials")?;
        let appraisers_constant = constant(&D2_STAR, self.appraisers(), "appraisers")?;
        let parts_constant = constant(&D2_STAR, self.parts, "parts")?;
        let (n, r) = (as_number(self.parts), as_number(self.trials));
        let ranges: Vec<f64> =
            self.values.iter().flat_map(|a| (0..self.parts).map(|p| range(&self.repeats(a, p)))).collect();
        let ev = mean(&ranges) / trials_constant;
        let averages: Vec<f64> = self.values.iter().map(|a| mean(&a.concat())).collect();
        let spread = range(&averages) / appraisers_constant;
        // a difference of appraisers below what the repeats explain is none
        let av = positive_root(spread * spread - ev * ev / (n * r));
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
        let equipment =
            sum(cells.iter().zip(&cell_means).map(|(c, m)| super::statistics::squares_about(c, *m)));
        let (appraiser, part) = (squares(&appraiser_means, n * r), squares(&part_means, k * r));
        // a difference that is below 0 by rounding only
        let interaction = positive(squares(&cell_means, r) - appraiser - part);
        let equipment_dof = k * n * (r - 1.0);
        let base = equipment / equipment_dof;
        let line = |squares: f64, dof: f64| {
            let mean = squares / dof;
            let f = ratio(mean, base);
            Line { squares, dof, mean, f, p: f.map(|f| 1.0 - f_cdf(f, dof, equipment_dof)) }
        };
        let mut table = Table {
            appraiser: line(appraiser, k - 1.0),
            part: line(part, n - 1.0),
            interaction: line(interaction, (k - 1.0) * (n - 1.0)),
            equipment: Line::of_repeats(equipment, equipment_dof),
            total_squares: appraiser + part + interaction + equipment,
            pooled: false,
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
    fn study(self, k: f64, n: f64, r: f64) -> Study {
        let (a, p, i, e) = (self.appraiser, self.part, self.interaction, self.equipment);
        // the mean squares that each component is a difference of, with their factors
        let (within, terms_av, terms_pv): (Line, Terms, Terms) = if self.pooled {
            let dof = i.dof + e.dof;
            let squares = i.squares + e.squares;
            let pooled = Line::of_repeats(squares, dof);
            let av = vec![(1.0 / (n * r), a), (-1.0 / (n * r), pooled)];
            (pooled, av, vec![(1.0 / (k * r), p), (-1.0 / (k * r), pooled)])
        } else {
            // between appraisers, and the interaction with it
            let av = vec![(1.0 / (n * r), a), (1.0 / r - 1.0 / (n * r), i), (-1.0 / r, e)];
            (e, av, vec![(1.0 / (k * r), p), (-1.0 / (k * r), i)])
        };
        let terms_ev = vec![(1.0, within)];
        let mut terms_gauge = terms_av.clone();
        terms_gauge.extend(&terms_ev);
        let mut parts = [combined(&terms_ev), combined(&terms_av), combined(&terms_pv)];
        if !self.pooled {
            // components that come out negative are none, each on its own
            let own = positive((a.mean - i.mean) / (n * r));
            parts[1].0 = own + positive((i.mean - e.mean) / r);
        }
        let [ev, av, pv] = parts;
        let intervals = [ev.1, av.1, combined(&terms_gauge).1, pv.1];
        study([ev.0, av.0, pv.0], intervals, Some(self))
    }
}

/// A variance as mean squares with their factors.
type Terms = Vec<(f64, Line)>;

/// A variance as a combination of mean squares, and the interval of its root by Satterthwaite's degrees of freedom (approximate where
/// a factor is negative). Source: Satterthwaite, Biometrics Bulletin 2 (1946).
fn combined(terms: &[(f64, Line)]) -> (f64, Option<(f64, f64)>) {
    let variance = sum(terms.iter().map(|(factor, line)| factor * line.mean));
    if variance <= 0.0 {
        return (0.0, None);
    }
    // as shares: the square of a variance may be outside what a double holds
    let parts = sum(terms.iter().map(|(factor, line)| {
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

fn constant(table: &[f64], count: usize, field: &str) -> Result<f64, Error> {
    table.get(count - 2).copied().ok_or_else(|| {
        let most = as_number(table.len() + 1);
        let error = Error::new(
            ErrorKind::OutOfRange,
            count.to_string(),
            "the method by ranges has no constant for so many",
        );
        error.value(as_number(count)).limits(2.0, most, "1").at(field)
    })
}

fn mean(values: &[f64]) -> f64 {
    let shift = values.first().copied().unwrap_or_default();
    shift + sum(values.iter().map(|v| v - shift)) / as_number(values.len())
}

fn range(values: &[f64]) -> f64 {
    let largest = values.iter().copied().fold(f64::NEG_INFINITY, |a, b| if b > a { b } else { a });
    let smallest = values.iter().copied().fold(f64::INFINITY, |a, b| if b < a { b } else { a });
    largest - smallest
}

fn positive(variance: f64) -> f64 {
    if variance > 0.0 { variance } else { 0.0 }
}

fn positive_root(variance: f64) -> f64 {
    positive(variance).sqrt()
}
