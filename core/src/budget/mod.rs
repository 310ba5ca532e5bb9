#![doc = include_str!("../../docs/budget.md")]

pub mod document;
mod make;
mod report;
mod text;

pub use document::{BudgetDocument, CoverageChoice, DegreesChoice, Shape};
pub use report::{
    AdaptiveReport, BudgetReport, ContributionReport, ExpandedReport, IntervalReport, MonteCarloReport,
    ProductReport, REPORT_FORMAT, REPORT_VERSION, SecondOrderReport, ValidationReport,
};

use crate::calc::Model;
use crate::error::{Error, ErrorKind};
use crate::job::{Entry, Numeric, Probability, Warning, decode};
use crate::measurement::distribution;
use crate::measurement::monte_carlo::{self, Adaptive, Goal, Interval, MOST_TRIALS, MonteCarlo, Summary};
use crate::measurement::uncertainty::{
    Contribution, Degrees, Evaluation, Expanded, Inputs, Product, SecondOrder,
};
use crate::progress::Watch;
use document::MonteCarloEntry;
use make::Maker;
use std::collections::BTreeMap;

/// Format name of a budget.
pub const FORMAT: &str = "gaugepoint-budget";
/// Version of the budget format.
pub const VERSION: u32 = 1;

/// A budget whose names, numbers and formula fit together, ready to be evaluated.
#[derive(Debug, Clone, PartialEq)]
pub struct Budget {
    document: BudgetDocument,
    inputs: Inputs,
    model: Model,
    probability: f64,
    run: Option<Run>,
    /// JSON Pointer of each source
    paths: BTreeMap<String, String>,
}

/// A Monte Carlo run as it is asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Run {
    seed: u32,
    length: Length,
    digits: u8,
    coverage: CoverageChoice,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Length {
    Fixed(u64),
    Adaptive(u64),
}

crate::job::schema!(BudgetDocument, crate::job::document_schema, "budget");

impl Budget {
    /// Reads a budget from JSON text.
    ///
    /// # Errors
    /// When the text is not JSON, is too large or too deep, or a field is unknown, repeated, missing or of another type; and as [`Budget::new`].
    pub fn from_json(text: &str) -> Result<Self, Error> {
        Budget::new(decode::from_json(text, FORMAT, VERSION)?)
    }

    /// [`Budget::from_json`] for a host whose text is bytes.
    ///
    /// # Errors
    /// As [`Budget::from_json`], and [`ErrorKind::NotUtf8`].
    pub fn from_json_bytes(bytes: &[u8]) -> Result<Self, Error> {
        Budget::from_json(decode::text(bytes)?)
    }

    /// A budget from its structures.
    ///
    /// # Errors
    /// What [the page](self#what-is-refused) lists; the error names the field by its JSON Pointer.
    pub fn new(document: BudgetDocument) -> Result<Self, Error> {
        check_head(&document)?;
        let Maker { inputs, symbols, paths, .. } = Maker::new(&document)?;
        let model = Model::from_text(document.model.text(), &symbols).map_err(|e| e.at("/model"))?;
        check_use(&model, &symbols)?;
        let probability = number_at(&document.probability, "/probability")?;
        distribution::coverage("/probability", probability)?;
        let run = document.monte_carlo.as_ref().map(Run::new).transpose()?;
        Ok(Budget { inputs, model, probability, run, paths, document })
    }

    /// The budget as it was given.
    #[must_use]
    pub fn document(&self) -> &BudgetDocument {
        &self.document
    }

    /// Evaluates the budget.
    ///
    /// # Errors
    /// When the model or a derivative is not finite at the estimates or in a trial, when truncation leaves no degree of freedom, and when the trials
    /// are too few for the probability.
    pub fn evaluate(&self) -> Result<BudgetReport, Error> {
        self.evaluate_watched(Watch::default())
    }

    /// [`Budget::evaluate`] with a watcher of its trials; see [`progress`](crate::progress).
    ///
    /// # Errors
    /// As [`Budget::evaluate`], and [`ErrorKind::Stopped`].
    pub fn evaluate_watched(&self, watch: Watch<'_>) -> Result<BudgetReport, Error> {
        self.evaluated(watch).map_err(at_field)
    }

    fn evaluated(&self, watch: Watch<'_>) -> Result<BudgetReport, Error> {
        let document = &self.document;
        let degrees = document.degrees.unwrap_or(DegreesChoice::Truncated);
        let first = self.inputs.evaluate(|x| self.model.jet(x))?;
        let expanded = first.expanded(self.probability, degrees.into())?;
        let second = match document.second_order {
            Some(false) => None,
            _ => Some(self.inputs.second_order(|x| self.model.jet(x))?),
        };
        let trials = self.run.map(|run| run.made(self, watch)).transpose()?;
        let validation = match (self.run, &trials) {
            (Some(run), Some((summary, _))) => run.validation(&first, &expanded, summary)?,
            _ => None,
        };
        Ok(BudgetReport {
            format: REPORT_FORMAT,
            version: REPORT_VERSION,
            library: env!("CARGO_PKG_VERSION"),
            name: document.name.text().trim().to_owned(),
            note: document.note.as_ref().map(|note| note.text().trim().to_owned()),
            unit: document.unit.as_ref().map(|unit| unit.text().trim().to_owned()),
            model: document.model.text().trim().to_owned(),
            estimate: first.estimate + 0.0,
            standard_uncertainty: first.standard_uncertainty,
            dof: finite(first.dof),
            expanded: expanded_report(&expanded, degrees),
            warnings: self.warnings(&first),
            contributions: first.contributions.into_iter().map(|c| self.contribution(c)).collect(),
            second_order: second.map(second_order),
            monte_carlo: self.run.zip(trials).map(|(run, trials)| run.report(trials)),
            validation,
        })
    }

    fn contribution(&self, of: Contribution<'_>) -> ContributionReport {
        ContributionReport {
            path: self.paths.get(of.source).cloned().unwrap_or_default(),
            source: of.source.to_owned(),
            sensitivity: of.sensitivity + 0.0,
            standard_uncertainty: of.standard_uncertainty,
            dof: finite(of.dof),
            contribution: of.contribution,
            share: of.share,
        }
    }

    /// Student's t of two degrees of freedom or fewer has no standard deviation that trials could show.
    fn warnings(&self, first: &Evaluation<'_>) -> Vec<Warning> {
        let wide = self.inputs.without_deviation();
        let sources =
            first.contributions.iter().filter(|c| c.contribution != 0.0 && wide.contains(&c.source));
        let warn = |c: &Contribution<'_>| Warning {
            kind: "no_standard_deviation".to_owned(),
            path: self.paths.get(c.source).cloned().unwrap_or_default(),
            text: format!(
                "the distribution of {} has no standard deviation: that of the trials means nothing, their intervals do",
                c.source
            ),
        };
        if self.run.is_some() { sources.map(warn).collect() } else { Vec::new() }
    }
}

/// [`Budget::evaluate`] from JSON to JSON.
///
/// # Errors
/// As [`Budget::from_json`] and [`Budget::evaluate`].
pub fn budget_json(budget: &str) -> Result<String, Error> {
    Ok(Budget::from_json(budget)?.evaluate()?.to_json())
}

/// [`budget_json`] for a host whose text is bytes.
///
/// # Errors
/// As [`budget_json`], and [`ErrorKind::NotUtf8`].
pub fn budget_json_bytes(budget: &[u8]) -> Result<String, Error> {
    Ok(Budget::from_json_bytes(budget)?.evaluate()?.to_json())
}

impl Run {
    fn new(entry: &MonteCarloEntry) -> Result<Self, Error> {
        let count = |entry: &Entry<_>, field: &str, lower, upper| {
            entry.count(lower, upper).map_err(|e| e.at(&format!("/monte_carlo/{field}")))
        };
        let most = u32::try_from(MOST_TRIALS).unwrap_or(u32::MAX);
        let length = match (&entry.trials, &entry.most_trials) {
            (Some(trials), None) => Length::Fixed(count(trials, "trials", 2, most)?.into()),
            (None, Some(trials)) => Length::Adaptive(count(trials, "most_trials", 2, most)?.into()),
            (None, None) => {
                let error =
                    Error::new(ErrorKind::MissingField, "trials", "either trials or most_trials is needed");
                return Err(error.at("/monte_carlo/trials"));
            }
            (Some(_), Some(most)) => {
                let reason = "either a number of trials or an adaptive run, not both";
                let error = Error::new(ErrorKind::Contradiction, most.text(), reason);
                return Err(error.at("/monte_carlo/most_trials"));
            }
        };
        let digits = entry.digits.as_ref().map_or(Ok(2), |digits| count(digits, "digits", 1, 2))?;
        Ok(Run {
            seed: count(&entry.seed, "seed", 0, u32::MAX)?,
            length,
            digits: if digits == 1 { 1 } else { 2 },
            coverage: entry.coverage.unwrap_or(CoverageChoice::Symmetric),
        })
    }

    fn made(self, budget: &Budget, watch: Watch<'_>) -> Result<(Summary, Option<Adaptive>), Error> {
        let run = MonteCarlo::of_model(&budget.inputs, &budget.model, self.seed.into()).watched(watch);
        match self.length {
            Length::Fixed(trials) => Ok((run.run(trials, budget.probability)?, None)),
            Length::Adaptive(most_trials) => {
                let goal = Goal {
                    probability: budget.probability,
                    coverage: self.coverage.into(),
                    digits: self.digits,
                    most_trials,
                };
                let adaptive = run.adaptive(goal)?;
                Ok((adaptive.summary, Some(adaptive)))
            }
        }
    }

    /// The trials must know one digit more than is judged by them. Source: JCGM 101:2008, 8.2.
    fn validation(
        self,
        first: &Evaluation<'_>,
        expanded: &Expanded,
        summary: &Summary,
    ) -> Result<Option<ValidationReport>, Error> {
        let digits = match self.length {
            Length::Fixed(_) => self.digits,
            Length::Adaptive(_) if self.digits == 2 => 1,
            Length::Adaptive(_) => return Ok(None),
        };
        let found = summary.validate(first, expanded, self.coverage.into(), digits)?;
        Ok(Some(ValidationReport {
            digits,
            coverage: self.coverage,
            lower_difference: found.lower_difference,
            upper_difference: found.upper_difference,
            tolerance: found.tolerance,
            validated: found.validated,
        }))
    }

    fn report(self, (summary, adaptive): (Summary, Option<Adaptive>)) -> MonteCarloReport {
        MonteCarloReport {
            seed: self.seed,
            trials: summary.trials,
            mean: summary.mean + 0.0,
            standard_deviation: summary.standard_deviation,
            probability: summary.probability,
            symmetric: interval(summary.symmetric),
            shortest: interval(summary.shortest),
            adaptive: adaptive.map(|adaptive| AdaptiveReport {
                digits: self.digits,
                coverage: self.coverage,
                sequences: adaptive.sequences,
                tolerance: adaptive.tolerance,
                settled: adaptive.settled,
            }),
        }
    }
}

fn check_head(document: &BudgetDocument) -> Result<(), Error> {
    if document.format.text() != FORMAT {
        let error = document.format.refuse(ErrorKind::UnknownFormat, format!("the format is \"{FORMAT}\""));
        return Err(error.at("/format"));
    }
    if document.version.count(0, u32::MAX).map_err(|e| e.at("/version"))? != VERSION {
        let error =
            document.version.refuse(ErrorKind::UnknownFormat, format!("version {VERSION} is read here"));
        return Err(error.at("/version"));
    }
    document.name.words().map_err(|e| e.at("/name"))?;
    for (field, entry) in [("/note", &document.note), ("/unit", &document.unit)] {
        entry.as_ref().map(Entry::words).transpose().map_err(|e| e.at(field))?;
    }
    if document.inputs.is_empty() {
        return Err(Error::new(ErrorKind::MissingField, "", "a model has at least one input").at("/inputs"));
    }
    Ok(())
}

/// Refuses an input that does nothing: it was forgotten in the formula.
fn check_use(model: &Model, symbols: &[&str]) -> Result<(), Error> {
    let used = model.inputs();
    match symbols.iter().enumerate().find(|(k, _)| !used.contains(k)) {
        Some((k, symbol)) => {
            let error = Error::new(ErrorKind::Contradiction, *symbol, "the model does not use this input");
            Err(error.at(&format!("/inputs/{k}/symbol")))
        }
        None => Ok(()),
    }
}

fn number_at(entry: &Entry<Probability>, field: &str) -> Result<f64, Error> {
    Probability::number(entry.text()).map_err(|e| e.at(field))
}

/// The field of the document behind the parameter that a calculation names.
fn at_field(error: Error) -> Error {
    let field = match error.field() {
        "dof" => "/degrees".to_owned(),
        "trials" | "digits" => format!("/monte_carlo/{}", error.field()),
        "most_trials" => "/monte_carlo/most_trials".to_owned(),
        other => format!("/{other}"),
    };
    error.moved(field)
}

fn finite(dof: f64) -> Option<f64> {
    dof.is_finite().then_some(dof)
}

fn interval(of: Interval) -> IntervalReport {
    IntervalReport { lower: of.lower + 0.0, upper: of.upper + 0.0 }
}

fn expanded_report(of: &Expanded, degrees: DegreesChoice) -> ExpandedReport {
    ExpandedReport {
        probability: of.probability,
        degrees,
        dof: finite(of.dof),
        coverage_factor: of.coverage_factor,
        expanded_uncertainty: of.expanded_uncertainty,
    }
}

fn second_order(of: SecondOrder) -> SecondOrderReport {
    let product =
        |p: Product| ProductReport { first: p.first, second: p.second, contribution: p.contribution };
    SecondOrderReport {
        standard_uncertainty: of.standard_uncertainty,
        shift_of_mean: of.shift_of_mean + 0.0,
        third_derivatives: of.third_derivatives + 0.0,
        products: of.products.into_iter().map(product).collect(),
    }
}

impl From<DegreesChoice> for Degrees {
    fn from(choice: DegreesChoice) -> Self {
        match choice {
            DegreesChoice::AsComputed => Degrees::AsComputed,
            DegreesChoice::Truncated => Degrees::Truncated,
        }
    }
}

impl From<CoverageChoice> for monte_carlo::Coverage {
    fn from(choice: CoverageChoice) -> Self {
        match choice {
            CoverageChoice::Symmetric => monte_carlo::Coverage::Symmetric,
            CoverageChoice::Shortest => monte_carlo::Coverage::Shortest,
        }
    }
}
