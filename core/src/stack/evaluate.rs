//! A stack from a document, evaluated to its report.

use super::document::{PointsChoice, StackDocument, TrialsEntry};
use super::read::{self, Asked, Whole};
use super::report::{
    EstimateReport, ExactReport, LimitsReport, PropagationReport, PublishedReport, REPORT_FORMAT,
    REPORT_VERSION, ShareReport, SpanReport, StackReport, TrialsReport, WorstCaseReport,
};
use super::worst::Extreme;
use super::{Effect, Function, Proof, Propagation, Share, Span, Stack, Toward};
use crate::calc::Model;
use crate::error::{Error, ErrorKind};
use crate::job::{Entry, Words, decode, readable};
use crate::measurement::monte_carlo::{MonteCarlo, Part, Trials};
use crate::measurement::points::Points;
use crate::measurement::tail::{Mean, Proportion};

/// Format name of a stack.
pub const FORMAT: &str = "gaugepoint-stack";
/// Version of the stack format.
pub const VERSION: u32 = 1;

readable!(StackDocument, FORMAT, VERSION);

/// [`StackDocument::evaluate`] from JSON to JSON.
///
/// # Errors
/// As [`StackDocument::from_json`] and [`StackDocument::evaluate`].
pub fn stack_json(stack: &str) -> Result<String, Error> {
    Ok(StackDocument::from_json(stack)?.evaluate()?.to_json())
}

/// [`stack_json`] for a host whose text is bytes.
///
/// # Errors
/// As [`stack_json`], and [`ErrorKind::NotUtf8`].
pub fn stack_json_bytes(stack: &[u8]) -> Result<String, Error> {
    stack_json(decode::text(stack)?)
}

/// Limits of the result, infinite where there is none.
type Limits = Option<(f64, f64)>;

impl StackDocument {
    /// Evaluates the stack.
    ///
    /// # Errors
    /// What [the page](crate::stack#what-is-refused) and that of the document list; the error names the field by its JSON Pointer.
    pub fn evaluate(&self) -> Result<StackReport, Error> {
        check_head(self)?;
        let limits = read::limits(self)?;
        let asked = self.monte_carlo.as_ref().map(|entry| checked(entry, limits)).transpose()?;
        match read::whole(self)? {
            Whole::Linear(stack) => self.linear(&stack, limits, asked),
            Whole::Function(function) => self.function(&function, limits, asked),
        }
    }

    fn linear(&self, stack: &Stack, limits: Limits, asked: Option<Asked>) -> Result<StackReport, Error> {
        let Span { lower, upper } = stack.worst_case();
        let worst = WorstCaseReport { lower, upper, proof: "linear", lower_bound: lower, upper_bound: upper };
        let trials = asked.map(|asked| {
            let run = |seed| stack.monte_carlo(seed);
            let rare = |toward, limit, seed| stack.importance(toward, limit, seed)?.part(0..asked.trials);
            trials(asked, limits, &run, &rare)
        });
        Ok(StackReport {
            nominal: stack.nominal() + 0.0,
            mean: stack.mean() + 0.0,
            standard_deviation: stack.standard_deviation(),
            published: Some(published(stack)?),
            shares: stack.shares().into_iter().map(share).collect(),
            exact: limits.map(|limits| exact(stack, limits)).transpose()?,
            monte_carlo: trials.transpose()?,
            ..self.head("linear", limits, worst)
        })
    }

    fn function(
        &self,
        function: &Function<Model>,
        limits: Limits,
        asked: Option<Asked>,
    ) -> Result<StackReport, Error> {
        let place = if self.formula.is_some() { "/formula" } else { "/engine" };
        let at_formula = |e: Error| e.moved(place.to_owned());
        let of = function.propagation().map_err(at_formula)?;
        let worst = function.worst_case().map_err(at_formula)?;
        let proof = if worst.proof == Proof::Monotone { "monotone" } else { "subdivision" };
        let bound = |extreme: &Extreme| extreme.bound.unwrap_or(extreme.attained);
        let worst = WorstCaseReport {
            lower: worst.lowest.attained,
            upper: worst.highest.attained,
            proof,
            lower_bound: bound(&worst.lowest),
            upper_bound: bound(&worst.highest),
        };
        let trials = asked.map(|asked| {
            let run = |seed| function.monte_carlo(seed);
            let rare = |toward, limit, seed| function.importance(toward, limit, seed)?.part(0..asked.trials);
            trials(asked, limits, &run, &rare)
        });
        let kind = self.engine.map_or("formula", |engine| engine.word());
        Ok(StackReport {
            nominal: of.nominal,
            mean: of.second.mean,
            standard_deviation: of.second.standard_deviation,
            propagation: Some(propagation(&of)),
            monte_carlo: trials.transpose()?,
            shares: of.effects.into_iter().map(effect).collect(),
            ..self.head(kind, limits, worst)
        })
    }

    /// What every report begins with.
    fn head(&self, kind: &str, limits: Limits, worst_case: WorstCaseReport) -> StackReport {
        let words = |entry: &Entry<Words>| entry.text().trim().to_owned();
        let within =
            |(lower, upper): (f64, f64)| worst_case.lower_bound >= lower && worst_case.upper_bound <= upper;
        StackReport {
            format: REPORT_FORMAT,
            version: REPORT_VERSION,
            library: env!("CARGO_PKG_VERSION"),
            name: words(&self.name),
            note: self.note.as_ref().map(words),
            unit: self.unit.as_ref().map(words).or(self.engine.map(|e| e.unit().to_owned())),
            kind: kind.to_owned(),
            formula: self.formula.as_ref().map(words),
            limits: limits.map(|(lower, upper)| LimitsReport {
                lower: lower.is_finite().then_some(lower),
                upper: upper.is_finite().then_some(upper),
                worst_case_within: within((lower, upper)),
            }),
            nominal: 0.0,
            mean: 0.0,
            standard_deviation: 0.0,
            worst_case,
            published: None,
            propagation: None,
            shares: Vec::new(),
            exact: None,
            monte_carlo: None,
        }
    }
}

fn check_head(document: &StackDocument) -> Result<(), Error> {
    if document.format.text() != FORMAT {
        let error = document.format.refuse(ErrorKind::UnknownFormat, format!("the format is \"{FORMAT}\""));
        return Err(error.at("/format"));
    }
    document.version.count(VERSION, VERSION).map_err(|e| e.at("/version"))?;
    document.name.words().map_err(|e| e.at("/name"))?;
    for (field, entry) in [("/note", &document.note), ("/unit", &document.unit)] {
        entry.as_ref().map(Entry::words).transpose().map_err(|e| e.at(field))?;
    }
    Ok(())
}

fn checked(entry: &TrialsEntry, limits: Limits) -> Result<Asked, Error> {
    let asked = Asked::new(entry)?;
    if asked.rare && limits.is_none() {
        let reason = "rare parts are those outside limits, and there are none";
        return Err(Error::new(ErrorKind::Contradiction, "true", reason).at("/monte_carlo/rare"));
    }
    Ok(asked)
}

fn published(stack: &Stack) -> Result<PublishedReport, Error> {
    Ok(PublishedReport {
        root_sum_square: span(stack.root_sum_square(1.0)?),
        bender: span(stack.bender()),
        modified: span(stack.modified_root_sum_square()),
    })
}

fn span(of: Span) -> SpanReport {
    SpanReport { lower: of.lower + 0.0, upper: of.upper + 0.0 }
}

fn share(of: Share) -> ShareReport {
    let Share { name, standard_deviation, share, .. } = of;
    ShareReport { name, sensitivity: None, standard_deviation, share, together: None }
}

fn effect(of: Effect) -> ShareReport {
    ShareReport {
        name: of.name,
        sensitivity: Some(of.sensitivity),
        standard_deviation: of.standard_deviation,
        share: of.share,
        together: Some(of.together),
    }
}

fn propagation(of: &Propagation) -> PropagationReport {
    PropagationReport {
        first_order_mean: of.first.mean,
        first_order_standard_deviation: of.first.standard_deviation,
        shift_of_mean: of.second.shift,
        skewness: of.second.skewness,
        excess_kurtosis: of.second.excess_kurtosis,
    }
}

fn exact(stack: &Stack, (lower, upper): (f64, f64)) -> Result<ExactReport, Error> {
    let at_limit = |e: Error| {
        let field = format!("/limits/{}", e.field());
        e.moved(field)
    };
    let tail = stack.outside(lower, upper).map_err(at_limit)?;
    let two = lower.is_finite() && upper.is_finite() && stack.standard_deviation() > 0.0;
    let capability = if two { Some(stack.capability(lower, upper).map_err(at_limit)?) } else { None };
    Ok(ExactReport {
        below: tail.below,
        above: tail.above,
        ppm: tail.ppm(),
        relative_error: tail.error,
        cp: capability.map(|c| c.cp),
        cpk: capability.map(|c| c.cpk),
    })
}

/// Runs as they are asked for: the first one for deviation and interval, all of them for what is estimated.
fn trials<T: Trials>(
    asked: Asked,
    limits: Limits,
    run: &dyn Fn(u64) -> MonteCarlo<'static, T>,
    rare: &dyn Fn(Toward, f64, u64) -> Result<Part, Error>,
) -> Result<TrialsReport, Error> {
    let points = match asked.points {
        PointsChoice::Random => Points::Random,
        PointsChoice::LatinHypercube => Points::LatinHypercube { trials: asked.trials },
        PointsChoice::Sobol => Points::Sobol,
    };
    let at = |e: Error| {
        let field = match e.field() {
            "model" => "/formula".to_owned(),
            other => format!("/monte_carlo/{other}"),
        };
        e.moved(field)
    };
    let part = |seed: u64| run(seed).with_points(points)?.part(0..asked.trials).map_err(at);
    let first = part(asked.seed)?;
    let summary = first.summary(asked.probability).map_err(at)?;
    let confidence = asked.confidence;
    let (lower, upper) = limits.unwrap_or((f64::NEG_INFINITY, f64::INFINITY));
    let (runs, mean, below, above) = match points {
        Points::Random => {
            let outside = first.outside(lower, upper, confidence).map_err(at)?;
            (1, estimate(first.mean(confidence)?, false), of_share(outside.below), of_share(outside.above))
        }
        _ => {
            let (mut means, mut belows, mut aboves) = (Vec::new(), Vec::new(), Vec::new());
            for k in 0..u64::from(asked.runs) {
                let part = if k == 0 { first.clone() } else { part(asked.seed + k)? };
                means.push(part.moments()?.0);
                belows.push(part.share_outside(lower, f64::INFINITY));
                aboves.push(part.share_outside(f64::NEG_INFINITY, upper));
            }
            let of = |results: &[f64]| Mean::of_runs(results, confidence).map(|m| estimate(m, false));
            let of_shares = |results: &[f64]| {
                of(results).map(|e| EstimateReport {
                    lower: libm::fmax(e.lower, 0.0),
                    upper: libm::fmin(e.upper, 1.0),
                    ..e
                })
            };
            (asked.runs, of(&means)?, of_shares(&belows)?, of_shares(&aboves)?)
        }
    };
    let rare = |toward: Toward, limit: f64| -> Result<Option<EstimateReport>, Error> {
        if !asked.rare || limit.is_infinite() {
            return Ok(None);
        }
        let at = |e: Error| match e.field() {
            "limit" => e.moved(format!("/limits/{}", toward.word())),
            _ => at(e),
        };
        let part = rare(toward, limit, asked.seed).map_err(at)?;
        Ok(Some(estimate(part.importance(confidence).map_err(at)?, true)))
    };
    Ok(TrialsReport {
        seed: asked.seed,
        trials: asked.trials,
        points: asked.points,
        runs,
        mean,
        standard_deviation: summary.standard_deviation,
        probability: asked.probability,
        interval: SpanReport { lower: summary.symmetric.lower + 0.0, upper: summary.symmetric.upper + 0.0 },
        confidence,
        below: lower.is_finite().then_some(below),
        above: upper.is_finite().then_some(above),
        rare_below: rare(Toward::Lower, lower)?,
        rare_above: rare(Toward::Upper, upper)?,
    })
}

fn estimate(of: Mean, weighted: bool) -> EstimateReport {
    let effective = weighted.then_some(of.effective);
    EstimateReport { value: of.mean + 0.0, lower: of.lower + 0.0, upper: of.upper + 0.0, effective }
}

fn of_share(of: Proportion) -> EstimateReport {
    EstimateReport { value: of.probability, lower: of.lower, upper: of.upper, effective: None }
}
