//! A stack from a document, evaluated to its report.

use super::document::{PointsChoice, StackDocument, StackEntry, TrialsEntry};
use super::read::{self, Asked, Bins, Length, Whole};
use super::report::{
    CountsReport, CurveReport, EstimateReport, ExactReport, HistogramReport, LimitsReport, PropagationReport,
    PublishedReport, REPORT_FORMAT, REPORT_VERSION, SensitivityReport, SettledReport, ShareReport,
    SpanReport, StackReport, TrialsReport, WorstCaseReport,
};
use super::worst::Extreme;
use super::{Curve, Effect, Function, Method, Propagation, Sensitivity, Share, Span, Stack, Toward, working};
use crate::Options;
use crate::calc::{Calc, Model};
use crate::error::{Error, ErrorKind};
use crate::job::{Entry, Words, decode, readable};
use crate::measurement::monte_carlo::{Coverage, Goal, MonteCarlo, Part, Trials};
use crate::measurement::points::Points;
use crate::measurement::tail::{Mean, Proportion, check_edges, counted};
use crate::progress::{Watch, Work};

/// Format name of a stack.
pub const FORMAT: &str = "gaugepoint-stack";
/// Version of the stack format.
pub const VERSION: u32 = 1;

readable!(StackDocument, FORMAT, VERSION, "stack");

/// [`StackDocument::evaluate`] from JSON to JSON.
///
/// # Errors
/// As [`StackDocument::from_json`] and [`StackDocument::evaluate`].
pub fn stack_json(stack: &str, options: Options) -> Result<String, Error> {
    Ok(StackDocument::from_json(stack)?.evaluate(options)?.to_json())
}

/// [`stack_json`] for a host whose text is bytes.
///
/// # Errors
/// As [`stack_json`], and [`ErrorKind::NotUtf8`].
pub fn stack_json_bytes(stack: &[u8], options: Options) -> Result<String, Error> {
    stack_json(decode::text(stack)?, options)
}

/// Limits of the result, infinite where there is none.
type Limits = Option<(f64, f64)>;

/// What is asked of a stack besides its limits.
struct Wanted {
    limits: Limits,
    sensitivities: bool,
    curve: Option<usize>,
    bins: Option<Bins>,
    trials: Option<Asked>,
}

impl StackDocument {
    /// Evaluates the stack.
    ///
    /// # Errors
    /// What [the page](crate::stack#what-is-refused) and that of the document list; the error names the field by its JSON Pointer.
    pub fn evaluate(&self, options: Options) -> Result<StackReport, Error> {
        self.evaluate_watched(options, Watch::default())
    }

    /// [`StackDocument::evaluate`] with a watcher of its trials; see [`progress`](crate::progress).
    ///
    /// # Errors
    /// As [`StackDocument::evaluate`], and [`ErrorKind::Stopped`].
    pub fn evaluate_watched(&self, options: Options, watch: Watch<'_>) -> Result<StackReport, Error> {
        if self.format.text() != FORMAT {
            let error = self.format.refuse(ErrorKind::UnknownFormat, format!("the format is \"{FORMAT}\""));
            return Err(error.at("/format"));
        }
        self.version.count(VERSION, VERSION).map_err(|e| e.at("/version"))?;
        let mut calc = Calc::new(options.working);
        let report = self.stack().report(&mut calc, "", watch)?;
        Ok(StackReport { working: calc.into_working(), ..report })
    }
}

impl StackEntry {
    /// Its report, with its working in the calculation; `at` is its place in the document and in the report.
    pub(crate) fn report(&self, calc: &mut Calc, at: &str, watch: Watch<'_>) -> Result<StackReport, Error> {
        self.evaluated(calc, at, watch).map_err(|e| match e.field().starts_with(&format!("{at}/")) {
            // an entry knows its place in the document
            true => e,
            false => e.below(at),
        })
    }

    fn evaluated(&self, calc: &mut Calc, at: &str, watch: Watch<'_>) -> Result<StackReport, Error> {
        check_words(self)?;
        let wanted = self.wanted()?;
        match read::whole(self)? {
            Whole::Linear(stack) => {
                working::linear(calc, self, &stack, wanted.limits, at);
                self.linear(&stack, &wanted, watch)
            }
            Whole::Function(function) => {
                let report = self.function(&function, &wanted, watch)?;
                working::function(calc, self, &function, &report, at);
                Ok(report)
            }
        }
    }

    fn wanted(&self) -> Result<Wanted, Error> {
        let limits = read::limits(self)?;
        let sensitivities = self.sensitivities.unwrap_or(false);
        if sensitivities && limits.is_none() {
            let reason = "they are those of the probabilities outside limits, and there are none";
            return Err(Error::new(ErrorKind::Contradiction, "true", reason).at("/sensitivities"));
        }
        Ok(Wanted {
            limits,
            sensitivities,
            curve: read::curve(self)?,
            bins: self.histogram.as_ref().map(Bins::new).transpose()?,
            trials: self.monte_carlo.as_ref().map(|entry| checked(entry, limits)).transpose()?,
        })
    }

    fn linear(&self, stack: &Stack, wanted: &Wanted, watch: Watch<'_>) -> Result<StackReport, Error> {
        let Span { lower, upper } = stack.worst_case();
        let worst = WorstCaseReport { lower, upper, proof: "linear", lower_bound: lower, upper_bound: upper };
        let (mean, standard_deviation) = (stack.mean() + 0.0, stack.standard_deviation());
        let edges = wanted.bins.as_ref().map(|bins| bins.edges(mean, standard_deviation)).transpose()?;
        let exact = wanted.limits.map(|limits| exact(stack, limits, wanted.sensitivities)).transpose()?;
        let monte_carlo = wanted.trials.map(|asked| {
            let run = |seed| stack.monte_carlo(seed);
            let rare = |toward, limit, (seed, count), watch: Watch<'_>| {
                stack.importance(toward, limit, seed)?.watched(watch).part(0..count)
            };
            trials(asked, wanted.limits, edges.as_deref(), (&run, &rare), watch)
        });
        Ok(StackReport {
            nominal: stack.nominal() + 0.0,
            mean,
            standard_deviation,
            published: Some(published(stack)?),
            shares: stack.shares().into_iter().map(share).collect(),
            exact,
            curve: wanted.curve.map(|count| curve(stack, count)).transpose()?,
            monte_carlo: monte_carlo.transpose()?,
            histogram: edges.map(|edges| histogram(stack, edges)).transpose()?,
            ..self.head("linear", wanted.limits, worst)
        })
    }

    fn function(
        &self,
        function: &Function<Model>,
        wanted: &Wanted,
        watch: Watch<'_>,
    ) -> Result<StackReport, Error> {
        self.check_asked_of_function(wanted)?;
        let place = if self.formula.is_some() { "/formula" } else { "/engine" };
        let at_formula = |e: Error| e.moved(place.to_owned());
        let of = function.propagation().map_err(at_formula)?;
        let worst = function.worst_case().map_err(at_formula)?;
        let bound = |extreme: &Extreme| extreme.bound.unwrap_or(extreme.attained);
        let worst = WorstCaseReport {
            lower: worst.lowest.attained,
            upper: worst.highest.attained,
            proof: worst.proof.word(),
            lower_bound: bound(&worst.lowest),
            upper_bound: bound(&worst.highest),
        };
        let (mean, standard_deviation) = (of.second.mean, of.second.standard_deviation);
        let edges = wanted.bins.as_ref().map(|bins| bins.edges(mean, standard_deviation)).transpose()?;
        edges.as_deref().map(check_edges).transpose().map_err(|e| e.under("/histogram"))?;
        let trials = wanted.trials.map(|asked| {
            let run = |seed| function.monte_carlo(seed);
            let rare = |toward, limit, (seed, count), watch: Watch<'_>| {
                function.importance(toward, limit, seed)?.watched(watch).part(0..count)
            };
            trials(asked, wanted.limits, edges.as_deref(), (&run, &rare), watch)
        });
        let kind = self.engine.map_or("formula", |engine| engine.word());
        Ok(StackReport {
            nominal: of.nominal,
            mean,
            standard_deviation,
            propagation: Some(propagation(&of)),
            monte_carlo: trials.transpose()?,
            histogram: edges.map(|edges| HistogramReport { edges, probabilities: Vec::new() }),
            shares: of.effects.into_iter().map(effect).collect(),
            ..self.head(kind, wanted.limits, worst)
        })
    }

    /// Refuses what only the exact distribution of a linear stack can say.
    fn check_asked_of_function(&self, wanted: &Wanted) -> Result<(), Error> {
        let refuse = |refused: String, reason: &str, at: &str| {
            Err(Error::new(ErrorKind::Contradiction, refused, reason).at(at))
        };
        if wanted.sensitivities {
            let reason = "of a function they are not known exactly; a linear stack has them";
            return refuse("true".to_owned(), reason, "/sensitivities");
        }
        if let Some(count) = wanted.curve {
            let reason = "of a function the density is not known exactly; a histogram of trials shows it";
            return refuse(count.to_string(), reason, "/curve");
        }
        if wanted.bins.is_some() && wanted.trials.is_none() {
            let reason = "a histogram of a function needs trials";
            return Err(Error::new(ErrorKind::MissingField, "monte_carlo", reason).at("/monte_carlo"));
        }
        Ok(())
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
            curve: None,
            histogram: None,
            monte_carlo: None,
            working: None,
        }
    }
}

fn check_words(document: &StackEntry) -> Result<(), Error> {
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

fn exact(stack: &Stack, (lower, upper): (f64, f64), sensitivities: bool) -> Result<ExactReport, Error> {
    let at_limit = |e: Error| {
        let field = format!("/limits/{}", e.field());
        e.moved(field)
    };
    let two = lower.is_finite() && upper.is_finite() && stack.standard_deviation() > 0.0;
    let (tail, capability) = if two {
        let of = stack.capability(lower, upper).map_err(at_limit)?;
        (of.tail, Some(of))
    } else {
        (stack.outside(lower, upper).map_err(at_limit)?, None)
    };
    let method = |toward, limit: f64| -> Result<Option<Method>, Error> {
        if limit.is_infinite() {
            return Ok(None);
        }
        stack.method(toward, limit).map(Some).map_err(at_limit)
    };
    let sensitivities = match sensitivities {
        true => stack.sensitivities(lower, upper).map_err(at_limit)?,
        false => Vec::new(),
    };
    Ok(ExactReport {
        below: tail.below,
        below_method: method(Toward::Lower, lower)?,
        above: tail.above,
        above_method: method(Toward::Upper, upper)?,
        ppm: tail.ppm(),
        relative_error: tail.error,
        cp: capability.map(|c| c.cp),
        cpk: capability.map(|c| c.cpk),
        sensitivities: sensitivities.into_iter().map(sensitivity).collect(),
    })
}

fn sensitivity(of: Sensitivity) -> SensitivityReport {
    let Sensitivity { name, tolerance, below, above } = of;
    SensitivityReport { name, tolerance, below, above, ppm: 1e6 * (below + above) }
}

fn curve(stack: &Stack, count: usize) -> Result<CurveReport, Error> {
    let refused = |e: Error| Error::new(e.kind(), count.to_string(), e.reason()).at("/curve");
    let Curve { sizes, densities } = stack.curve(count).map_err(refused)?;
    Ok(CurveReport { sizes: sizes.into_iter().map(|size| size + 0.0).collect(), densities })
}

fn histogram(stack: &Stack, edges: Vec<f64>) -> Result<HistogramReport, Error> {
    let probabilities = stack.histogram(&edges).map_err(|e| e.under("/histogram"))?;
    Ok(HistogramReport { edges, probabilities })
}

/// Trials in the bins between edges; a value at an edge belongs to the bin below it.
fn counts(values: &[f64], edges: &[f64]) -> CountsReport {
    let mut counts = counted(values, edges);
    let above = counts.pop().unwrap_or_default();
    let mut counts = counts.into_iter();
    let below = counts.next().unwrap_or_default();
    CountsReport { below, counts: counts.collect(), above }
}

/// Where trials begin, and how many there are.
type Drawn = (u64, u64);

/// Weights of trials beyond a limit.
type Rare<'r> = dyn Fn(Toward, f64, Drawn, Watch<'_>) -> Result<Part, Error> + 'r;

/// Runs as they are asked for: the first one for deviation and interval, all of them for what is estimated.
fn trials<T: Trials>(
    asked: Asked,
    limits: Limits,
    edges: Option<&[f64]>,
    (run, rare): (&dyn Fn(u64) -> MonteCarlo<'static, T>, &Rare<'_>),
    watch: Watch<'_>,
) -> Result<TrialsReport, Error> {
    let work = Work::new(watch, asked.trials(limits));
    let at = |e: Error| {
        let field = match e.field() {
            "model" => "/formula".to_owned(),
            "most_trials" => "/monte_carlo/settle/most_trials".to_owned(),
            other => format!("/monte_carlo/{other}"),
        };
        e.moved(field)
    };
    let points = |count| match asked.points {
        PointsChoice::Random => Points::Random,
        PointsChoice::LatinHypercube => Points::LatinHypercube { trials: count },
        PointsChoice::Sobol => Points::Sobol,
    };
    let part = |seed: u64, count| {
        let run = run(seed).with_points(points(count))?;
        work.part(count, |watch| run.watched(watch).part(0..count)).map_err(at)
    };
    let (first, settled) = match asked.length {
        Length::Trials(count) => (part(asked.seed, count)?, None),
        Length::Settled { digits, most_trials } => {
            let coverage = Coverage::Symmetric;
            let goal = Goal { probability: asked.probability, coverage, digits, most_trials };
            let settle = |watch: Watch<'_>| run(asked.seed).watched(watch).settle(goal);
            let (adaptive, first) = work.part(most_trials, settle).map_err(at)?;
            let (sequences, tolerance, settled) = (adaptive.sequences, adaptive.tolerance, adaptive.settled);
            (first, Some(SettledReport { digits, most_trials, sequences, tolerance, settled }))
        }
    };
    let count = first.trials().end;
    let summary = first.summary(asked.probability).map_err(at)?;
    let confidence = asked.confidence;
    let (lower, upper) = limits.unwrap_or((f64::NEG_INFINITY, f64::INFINITY));
    let (runs, mean, below, above) = match asked.points {
        PointsChoice::Random => {
            let outside = first.outside(lower, upper, confidence).map_err(at)?;
            (1, estimate(first.mean(confidence)?, false), of_share(outside.below), of_share(outside.above))
        }
        _ => {
            let (mut means, mut belows, mut aboves) = (Vec::new(), Vec::new(), Vec::new());
            for k in 0..u64::from(asked.runs) {
                let part = if k == 0 { first.clone() } else { part(asked.seed + k, count)? };
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
        let part = work.part(count, |watch| rare(toward, limit, (asked.seed, count), watch)).map_err(at)?;
        Ok(Some(estimate(part.importance(confidence).map_err(at)?, true)))
    };
    let (rare_below, rare_above) = (rare(Toward::Lower, lower)?, rare(Toward::Upper, upper)?);
    work.finish()?;
    Ok(TrialsReport {
        seed: asked.seed,
        trials: count,
        settled,
        points: asked.points,
        runs,
        mean,
        standard_deviation: summary.standard_deviation,
        probability: asked.probability,
        interval: SpanReport { lower: summary.symmetric.lower + 0.0, upper: summary.symmetric.upper + 0.0 },
        confidence,
        below: lower.is_finite().then_some(below),
        above: upper.is_finite().then_some(above),
        rare_below,
        rare_above,
        histogram: edges.map(|edges| counts(first.values(), edges)),
    })
}

fn estimate(of: Mean, weighted: bool) -> EstimateReport {
    let effective = weighted.then_some(of.effective);
    EstimateReport { value: of.mean + 0.0, lower: of.lower + 0.0, upper: of.upper + 0.0, effective }
}

fn of_share(of: Proportion) -> EstimateReport {
    EstimateReport { value: of.probability, lower: of.lower, upper: of.upper, effective: None }
}
