//! From the entries of a stack to what is computed with, with the place of every refusal.

use super::contributor::allowed;
use super::document::{
    CauseEntry, ContributorEntry, HistogramEntry, PointsChoice, StackEntry, TrialsEntry, VariationEntry,
};
use super::{Contributor, Function, Stack, Variation};
use crate::calc::Model;
use crate::error::{Error, ErrorKind};
use crate::job::{Count, Entry, Numeric, Probability, Real, check_length};
use crate::measurement::distribution::{Distribution, coverage};
use crate::measurement::monte_carlo::MOST_TRIALS;

/// What a document holds: a linear stack, or a function with its formula.
#[derive(Debug, Clone)]
pub(super) enum Whole {
    Linear(Box<Stack>),
    Function(Box<Function<Model>>),
}

/// When a run ends.
#[derive(Debug, Clone, Copy)]
pub(super) enum Length {
    Trials(u64),
    Settled { digits: u8, most_trials: u64 },
}

/// Bins of a histogram as they are asked for.
#[derive(Debug, Clone)]
pub(super) enum Bins {
    Edges(Vec<f64>),
    Equal(u32),
}

/// Trials as they are asked for.
#[derive(Debug, Clone, Copy)]
pub(super) struct Asked {
    pub(super) seed: u64,
    pub(super) length: Length,
    pub(super) probability: f64,
    pub(super) confidence: f64,
    pub(super) points: PointsChoice,
    pub(super) runs: u32,
    pub(super) rare: bool,
}

pub(super) fn whole(document: &StackEntry) -> Result<Whole, Error> {
    check_length(&document.contributors, |c| &c.name)?;
    let mut contributors = Vec::with_capacity(document.contributors.len());
    for (k, entry) in document.contributors.iter().enumerate() {
        contributors.push(contributor(entry, &format!("/contributors/{k}"))?);
    }
    let refuse = |field: &str, reason: &str| Err(Error::new(ErrorKind::Contradiction, "", reason).at(field));
    if !document.causes.is_empty() && (document.formula.is_some() || document.engine.is_some()) {
        return refuse("/causes", "a cause that a function shares is a contributor of its formula");
    }
    match (&document.formula, document.engine) {
        (Some(_), Some(_)) => refuse("/engine", "either a formula or a stack of an engine, not both"),
        (Some(formula), None) => {
            let symbols = symbols(document)?;
            let function = Function::from_text(contributors, &symbols, formula.text());
            function.map(|f| Whole::Function(Box::new(f))).map_err(|e| placed(e, "model", "/formula"))
        }
        (None, Some(_)) if document.unit.is_some() => refuse("/unit", "a ready-made stack has its unit"),
        (None, Some(engine)) => {
            let function = engine.function(contributors);
            function.map(|f| Whole::Function(Box::new(f))).map_err(|e| placed(e, "model", "/engine"))
        }
        (None, None) => {
            let mut stack = Stack::new(contributors).map_err(|e| placed(e, "", ""))?;
            for (k, entry) in document.causes.iter().enumerate() {
                stack = cause(stack, entry, &format!("/causes/{k}"))?;
            }
            Ok(Whole::Linear(Box::new(stack)))
        }
    }
}

/// The place in the document of what a calculation refuses.
fn placed(error: Error, own: &str, moved: &str) -> Error {
    let field = if error.field() == own { moved.to_owned() } else { format!("/{}", error.field()) };
    error.moved(field)
}

/// Symbols of the contributors: their names where none is stated.
fn symbols(document: &StackEntry) -> Result<Vec<&str>, Error> {
    let mut out: Vec<&str> = Vec::new();
    for (k, contributor) in document.contributors.iter().enumerate() {
        let field = if contributor.symbol.is_some() { "symbol" } else { "name" };
        let at = format!("/contributors/{k}/{field}");
        let symbol = contributor.symbol.as_ref().unwrap_or(&contributor.name);
        let symbol = symbol.words().map_err(|e| e.at(&at))?;
        crate::calc::check_symbol(symbol).map_err(|e| e.moved(at.clone()))?;
        if out.contains(&symbol) {
            return Err(Error::new(ErrorKind::Repeated, symbol, "this symbol stands twice").at(&at));
        }
        out.push(symbol);
    }
    Ok(out)
}

fn number(entry: &Entry<Real>, at: &str, field: &str) -> Result<f64, Error> {
    entry.number().map_err(|e| e.at(&format!("{at}/{field}")))
}

fn stated(entry: Option<&Entry<Real>>, at: &str, field: &str, unless: f64) -> Result<f64, Error> {
    entry.map_or(Ok(unless), |entry| number(entry, at, field))
}

fn contributor(entry: &ContributorEntry, at: &str) -> Result<Contributor, Error> {
    let name = entry.name.words().map_err(|e| e.at(&format!("{at}/name")))?;
    let nominal = number(&entry.nominal, at, "nominal")?;
    let limits = (number(&entry.lower, at, "lower")?, number(&entry.upper, at, "upper")?);
    // before the variation, which may lie within them
    let limits = allowed(limits).map_err(|e| e.under(at))?;
    let variation = variation(&entry.distribution, entry.centre.as_ref(), Some(limits), at)?;
    let coefficient = stated(entry.coefficient.as_ref(), at, "coefficient", 1.0)?;
    let count = match &entry.count {
        Some(count) => count.count(1, 1000).map_err(|e| e.at(&format!("{at}/count")))?,
        None => 1,
    };
    let made =
        Contributor::new(name, nominal, limits, variation).and_then(|c| c.with_coefficient(coefficient));
    made.and_then(|c| c.with_count(count)).map_err(|e| e.under(at))
}

/// A variation of a contributor, or without limits of a cause.
fn variation(
    entry: &VariationEntry,
    centre: Option<&Entry<Real>>,
    limits: Option<(f64, f64)>,
    at: &str,
) -> Result<Variation, Error> {
    let own = format!("{at}/distribution/{}", word(entry));
    let get = |entry: &Entry<Real>, field: &str| number(entry, &own, field);
    if let Some(distribution) = symmetric(entry, &own)? {
        let centre = stated(centre, at, "centre", 0.0)?;
        return Variation::about(centre, distribution).map_err(|e| match e.field() {
            "centre" => e.under(at),
            _ => e.under(&own),
        });
    }
    if let Some(centre) = centre {
        let reason = "this distribution has its own place; only a symmetric one has a centre";
        return Err(Error::new(ErrorKind::Contradiction, centre.text(), reason).at(&format!("{at}/centre")));
    }
    let limits = |field: &str| {
        limits.ok_or_else(|| {
            let reason = "a cause has no limits of its own that this could be within";
            Error::new(ErrorKind::Contradiction, word(entry), reason).at(&format!("{own}{field}"))
        })
    };
    let made = match entry {
        VariationEntry::NormalByCapability(c) => {
            Variation::normal_by_capability(limits("")?, get(&c.cp, "cp")?, get(&c.cpk, "cpk")?, c.toward)
        }
        VariationEntry::UniformWithinLimits(_) => {
            let (lower, upper) = limits("")?;
            let half = (upper - lower) / 2.0;
            Distribution::rectangular(half).and_then(|d| Variation::about(lower + half, d))
        }
        VariationEntry::Triangular(t) => {
            Variation::triangular((get(&t.low, "low")?, get(&t.high, "high")?), get(&t.mode, "mode")?)
        }
        VariationEntry::Beta(b) => Variation::beta(
            get(&b.alpha, "alpha")?,
            get(&b.beta, "beta")?,
            (get(&b.low, "low")?, get(&b.high, "high")?),
        ),
        VariationEntry::TruncatedNormal(t) => Variation::truncated_normal(
            get(&t.mean, "mean")?,
            get(&t.standard_deviation, "standard_deviation")?,
            (get(&t.low, "low")?, get(&t.high, "high")?),
        ),
        VariationEntry::Skewed(s) => {
            let mut quantiles = Vec::with_capacity(s.quantiles.len());
            for (k, q) in s.quantiles.iter().enumerate() {
                let place = |field: &str| format!("quantiles/{k}/{field}");
                quantiles
                    .push((get(&q.probability, &place("probability"))?, get(&q.value, &place("value"))?));
            }
            Variation::skewed(&quantiles)
        }
        VariationEntry::Sample(s) => {
            let value = |(k, value)| get(value, &format!("values/{k}"));
            let values: Vec<f64> = s.values.iter().enumerate().map(value).collect::<Result<_, _>>()?;
            Variation::sample(&values)
        }
        VariationEntry::Normal(_)
        | VariationEntry::Rectangular(_)
        | VariationEntry::Trapezoidal(_)
        | VariationEntry::Arcsine(_) => Err(Error::new(ErrorKind::UnknownChoice, word(entry), "symmetric")),
    };
    made.map_err(|e| {
        // the ends of a distribution have names of their own in the document
        let field = match (entry, e.field()) {
            (VariationEntry::NormalByCapability(_), end @ ("lower" | "upper")) => format!("{at}/{end}"),
            (_, "lower") => format!("{own}/low"),
            (_, "upper") => format!("{own}/high"),
            (_, "") => own,
            (_, other) => format!("{own}/{other}"),
        };
        e.moved(field)
    })
}

/// A distribution about a centre; none of the others.
fn symmetric(entry: &VariationEntry, at: &str) -> Result<Option<Distribution>, Error> {
    let get = |entry: &Entry<Real>, field: &str| number(entry, at, field);
    let made = match entry {
        VariationEntry::Normal(n) => Distribution::normal(get(&n.standard_deviation, "standard_deviation")?),
        VariationEntry::Rectangular(r) => Distribution::rectangular(get(&r.half_width, "half_width")?),
        VariationEntry::Trapezoidal(t) => {
            Distribution::trapezoidal(get(&t.half_width, "half_width")?, get(&t.beta, "beta")?)
        }
        VariationEntry::Arcsine(a) => Distribution::arcsine(get(&a.half_width, "half_width")?),
        _ => return Ok(None),
    };
    made.map(Some).map_err(|e| e.under(at))
}

/// The word of the document for a variation.
fn word(entry: &VariationEntry) -> &'static str {
    match entry {
        VariationEntry::Normal(_) => "normal",
        VariationEntry::NormalByCapability(_) => "normal_by_capability",
        VariationEntry::Rectangular(_) => "rectangular",
        VariationEntry::UniformWithinLimits(_) => "uniform_within_limits",
        VariationEntry::Triangular(_) => "triangular",
        VariationEntry::Trapezoidal(_) => "trapezoidal",
        VariationEntry::Arcsine(_) => "arcsine",
        VariationEntry::Beta(_) => "beta",
        VariationEntry::TruncatedNormal(_) => "truncated_normal",
        VariationEntry::Skewed(_) => "skewed",
        VariationEntry::Sample(_) => "sample",
    }
}

fn cause(stack: Stack, entry: &CauseEntry, at: &str) -> Result<Stack, Error> {
    let name = entry.name.words().map_err(|e| e.at(&format!("{at}/name")))?;
    let own = format!("{at}/distribution/{}", word(&entry.distribution));
    let Some(distribution) = symmetric(&entry.distribution, &own)? else {
        let reason =
            "a shared cause has a symmetric distribution: normal, rectangular, trapezoidal or arcsine";
        let error = Error::new(ErrorKind::UnknownChoice, word(&entry.distribution), reason);
        return Err(error.at(&format!("{at}/distribution")));
    };
    let mut factors = Vec::with_capacity(entry.on.len());
    for (k, effect) in entry.on.iter().enumerate() {
        let place = format!("{at}/on/{k}");
        let of = effect.contributor.words().map_err(|e| e.at(&format!("{place}/contributor")))?;
        factors.push((of, stated(effect.factor.as_ref(), &place, "factor", 1.0)?));
    }
    stack.with_cause(name, distribution, &factors).map_err(|e| {
        let field = e.field().replacen("factors", "on", 1);
        let of = match e.kind() {
            ErrorKind::UnknownName => "/contributor",
            _ if field.starts_with("on/") => "/factor",
            _ => "",
        };
        e.moved(format!("{at}/{field}{of}"))
    })
}

pub(super) fn limits(document: &StackEntry) -> Result<Option<(f64, f64)>, Error> {
    let Some(entry) = &document.limits else { return Ok(None) };
    if entry.lower.is_none() && entry.upper.is_none() {
        let error = Error::new(ErrorKind::MissingField, "lower", "a lower or an upper limit is needed");
        return Err(error.at("/limits/lower"));
    }
    let lower = stated(entry.lower.as_ref(), "/limits", "lower", f64::NEG_INFINITY)?;
    let upper = stated(entry.upper.as_ref(), "/limits", "upper", f64::INFINITY)?;
    if upper < lower {
        let reason = "the upper limit must not be below the lower";
        let refused = Error::new(ErrorKind::OutOfOrder, upper.to_string(), reason).value(upper);
        return Err(refused.at("/limits/upper"));
    }
    Ok(Some((lower, upper)))
}

/// Most points of a curve and most bins of a histogram in a report.
const MOST_POINTS: u32 = 10_000;

/// Points of a curve.
pub(super) fn curve(document: &StackEntry) -> Result<Option<usize>, Error> {
    let count = |entry: &Entry<Count>| Ok(entry.count(2, MOST_POINTS).map_err(|e| e.at("/curve"))? as usize);
    document.curve.as_ref().map(count).transpose()
}

impl Bins {
    pub(super) fn new(entry: &HistogramEntry) -> Result<Self, Error> {
        match (entry.edges.as_slice(), &entry.bins) {
            ([], None) => {
                let reason = "edges, or a number of equal bins, are needed";
                Err(Error::new(ErrorKind::MissingField, "edges", reason).at("/histogram/edges"))
            }
            (edges, None) => {
                if edges.len() > MOST_POINTS as usize + 1 {
                    let reason = format!("a histogram has at most {MOST_POINTS} bins");
                    let error = Error::new(ErrorKind::TooLarge, edges.len().to_string(), reason);
                    return Err(error.at("/histogram/edges"));
                }
                let number =
                    |(k, edge): (usize, &Entry<Real>)| number(edge, "/histogram/edges", &k.to_string());
                Ok(Bins::Edges(edges.iter().enumerate().map(number).collect::<Result<_, _>>()?))
            }
            ([], Some(bins)) => {
                Ok(Bins::Equal(bins.count(1, MOST_POINTS).map_err(|e| e.at("/histogram/bins"))?))
            }
            (_, Some(bins)) => {
                let reason = "either edges or a number of equal bins, not both";
                Err(Error::new(ErrorKind::Contradiction, bins.text(), reason).at("/histogram/bins"))
            }
        }
    }

    /// The edges, from mean and standard deviation where they are not stated.
    pub(super) fn edges(&self, mean: f64, standard_deviation: f64) -> Result<Vec<f64>, Error> {
        let bins = match self {
            Bins::Edges(edges) => return Ok(edges.clone()),
            Bins::Equal(bins) => *bins,
        };
        if standard_deviation <= 0.0 {
            let reason = "a stack that does not vary has no bins of its own: state the edges";
            return Err(Error::new(ErrorKind::Contradiction, bins.to_string(), reason).at("/histogram/bins"));
        }
        let low = mean - 4.0 * standard_deviation;
        let step = 8.0 * standard_deviation / f64::from(bins);
        Ok((0..=bins).map(|k| low + f64::from(k) * step + 0.0).collect())
    }
}

impl Length {
    fn new(entry: &TrialsEntry, points: PointsChoice) -> Result<Self, Error> {
        let most = u32::try_from(MOST_TRIALS).unwrap_or(u32::MAX);
        let count = |entry: &Entry<Count>, field: &str, least: u32, most: u32| {
            entry.count(least, most).map_err(|e| e.at(&format!("/monte_carlo/{field}")))
        };
        let refuse = |refused: &str, reason: &str| {
            Err(Error::new(ErrorKind::Contradiction, refused, reason).at("/monte_carlo/settle"))
        };
        match (&entry.trials, &entry.settle) {
            (Some(trials), None) => Ok(Length::Trials(count(trials, "trials", 2, most)?.into())),
            (None, None) => {
                let reason = "a number of trials, or when they settle, is needed";
                Err(Error::new(ErrorKind::MissingField, "trials", reason).at("/monte_carlo/trials"))
            }
            (Some(trials), Some(_)) => refuse(trials.text(), "either trials or settle, not both"),
            (None, Some(_)) if points != PointsChoice::Random => {
                refuse(points.word(), "only trials at random say when they have settled")
            }
            (None, Some(settle)) => Ok(Length::Settled {
                // one or two
                digits: u8::try_from(count(&settle.digits, "settle/digits", 1, 2)?).unwrap_or(2),
                most_trials: count(&settle.most_trials, "settle/most_trials", 2, most)?.into(),
            }),
        }
    }
}

impl Asked {
    /// Most trials of all its runs.
    pub(super) fn trials(&self, limits: Option<(f64, f64)>) -> u64 {
        let of_one = match self.length {
            Length::Trials(count) => count,
            Length::Settled { most_trials, .. } => most_trials,
        };
        let runs = if self.points == PointsChoice::Random { 1 } else { u64::from(self.runs) };
        let (lower, upper) = limits.unwrap_or((f64::NEG_INFINITY, f64::INFINITY));
        let rare = [lower, upper].iter().filter(|limit| self.rare && limit.is_finite()).count();
        of_one * (runs + rare as u64)
    }

    pub(super) fn new(entry: &TrialsEntry) -> Result<Self, Error> {
        let count = |entry: &Entry<Count>, field: &str, least: u32, most: u32| {
            entry.count(least, most).map_err(|e| e.at(&format!("/monte_carlo/{field}")))
        };
        let probability = |entry: &Option<Entry<Probability>>, field: &str, unless: f64| {
            let at = format!("/monte_carlo/{field}");
            let Some(entry) = entry else { return Ok(unless) };
            coverage(&at, Probability::number(entry.text()).map_err(|e| e.at(&at))?)
        };
        let points = entry.points.unwrap_or(PointsChoice::Random);
        if let (Some(runs), PointsChoice::Random) = (&entry.runs, points) {
            let reason = "trials at random are independent already: one run of more trials says the same";
            let error = Error::new(ErrorKind::Contradiction, runs.text(), reason);
            return Err(error.at("/monte_carlo/runs"));
        }
        Ok(Asked {
            seed: count(&entry.seed, "seed", 0, u32::MAX)?.into(),
            length: Length::new(entry, points)?,
            probability: probability(&entry.probability, "probability", 0.9973)?,
            confidence: probability(&entry.confidence, "confidence", 0.95)?,
            points,
            runs: entry.runs.as_ref().map_or(Ok(10), |runs| count(runs, "runs", 2, 1000))?,
            rare: entry.rare.unwrap_or(false),
        })
    }
}
