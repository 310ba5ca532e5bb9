//! Does a part, a cylinder, the block go back?

use super::conformity::{Decision, Of, Outcome as Conformity};
use super::finding::{Disposition, Finding};
use super::signs::Group;
use crate::choice::choices;
use crate::report::Dominant;
use schemars::JsonSchema;
use serde::Serialize;

choices! {
    /// What a verdict says, from the best to the worst.
    Outcome {
        /// It goes back.
        Reuse = "reuse",
        /// Something that is needed was not read.
        Incomplete = "incomplete",
        /// Neither conformity nor the opposite is proven, or there is nothing to judge by.
        NotProven = "not proven",
        /// A damage whose cause is not known.
        FindTheCause = "find the cause first",
        /// It does not go back.
        DoNotReuse = "do not reuse",
    }
}

/// A verdict with its reasons.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Verdict {
    /// What it says.
    pub outcome: Outcome,
    /// Why, the weightiest first.
    pub reasons: Vec<String>,
    /// The value that decided: of those with this outcome, the one least sure to conform.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub decided_by: Option<Of>,
    /// What dominates the uncertainty of that value.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dominant: Option<Dominant>,
}

/// One ground of a verdict.
#[derive(Clone)]
pub(crate) struct Ground {
    pub(crate) outcome: Outcome,
    pub(crate) reason: String,
    /// is it told whatever the verdict
    remark: bool,
    measured: Option<Behind>,
}

/// The value behind a ground.
#[derive(Clone)]
struct Behind {
    probability: f64,
    of: Of,
    dominant: Dominant,
}

impl Ground {
    pub(crate) fn new(outcome: Outcome, reason: impl Into<String>) -> Self {
        Ground { outcome, reason: reason.into(), remark: false, measured: None }
    }

    /// Something to know that decides nothing.
    fn remark(reason: String) -> Self {
        Ground { remark: true, ..Ground::new(Outcome::Reuse, reason) }
    }

    pub(crate) fn missing(what: &str) -> Self {
        Ground::new(Outcome::Incomplete, format!("missing: {what}"))
    }

    pub(crate) fn from_decision(decision: &Decision, dominant: Option<Dominant>) -> Self {
        let outcome = match decision.result {
            Conformity::Conforms => Outcome::Reuse,
            Conformity::DoesNotConform => Outcome::DoNotReuse,
            Conformity::NotProven | Conformity::NotJudged => Outcome::NotProven,
        };
        let reason = format!("{} {}: {}", decision.of.spoken(), decision.result.word(), decision.reason);
        let behind = decision.probability_of_conformity.zip(dominant);
        let measured =
            behind.map(|(probability, dominant)| Behind { probability, of: decision.of, dominant });
        Ground { measured, ..Ground::new(outcome, reason) }
    }

    pub(crate) fn from_finding(finding: &Finding) -> Self {
        let outcome = match finding.disposition {
            Disposition::Clean | Disposition::Measure => Outcome::Reuse,
            Disposition::FindCause => Outcome::FindTheCause,
            Disposition::Reject => Outcome::DoNotReuse,
        };
        let (seen, next) = (finding.spoken(), &finding.check_next);
        let reason = match (finding.disposition, &finding.cause, finding.cause_found) {
            (Disposition::Clean, ..) => format!("{seen}: clean"),
            (_, Some(cause), _) => format!("{seen}, cause given: {cause}"),
            (_, None, Some(cause)) => format!("{seen}, cause found: {}", cause.spoken()),
            (Disposition::Measure, None, None) => format!("{seen}: the sizes decide; check {next}"),
            (_, None, None) => format!("{seen}, cause not found: check {next}"),
        };
        Ground::new(outcome, reason)
    }

    /// The verdict of a cylinder as a ground for the block.
    pub(crate) fn of_cylinder(number: u32, verdict: &Verdict) -> Self {
        let why = verdict.reasons.first().map(|r| format!(" ({r})")).unwrap_or_default();
        let reason = match verdict.outcome {
            Outcome::Reuse => format!("cylinder {number}: reuse"),
            outcome => format!("cylinder {number}: {}{why}", outcome.word()),
        };
        let behind = verdict.decided_by.zip(verdict.dominant.clone());
        let measured = behind.map(|(of, dominant)| Behind { probability: 0.0, of, dominant });
        Ground { measured, ..Ground::new(verdict.outcome, reason) }
    }

    /// A ground of a cylinder that the block tells besides the verdict of the cylinder.
    pub(crate) fn within_cylinder(self, number: u32) -> Self {
        Ground { reason: format!("cylinder {number}: {}", self.reason), ..self }
    }
}

/// What the findings and the sizes of a cylinder say only together.
///
/// A part that is rejected takes its damage with it, but the cause stays in the engine. A cause that is known and sizes that do not
/// fit it are both told, and neither decides over the other.
pub(crate) fn together<'r>(
    findings: impl Iterator<Item = &'r Finding>,
    decisions: impl Iterator<Item = &'r Decision>,
) -> Vec<Ground> {
    let decisions: Vec<&Decision> = decisions.collect();
    findings
        .filter_map(|finding| cause_unknown(finding).or_else(|| disagreement(finding, &decisions)))
        .collect()
}

fn cause_unknown(finding: &Finding) -> Option<Ground> {
    let rejects = finding.disposition == Disposition::Reject && !finding.cause_known();
    let reason = || format!("nothing new is fitted before the cause of the {} is found", finding.spoken());
    rejects.then(|| Ground::new(Outcome::FindTheCause, reason()))
}

fn disagreement(finding: &Finding, decisions: &[&Decision]) -> Option<Ground> {
    let cause = finding.cause_found?;
    let failed: Vec<&Decision> =
        decisions.iter().copied().filter(|d| d.result == Conformity::DoesNotConform).collect();
    let sizes = match cause.group() {
        Group::Clearance => {
            let bench = decisions.iter().find(|d| d.of == Of::BenchClearance)?;
            let tight_elsewhere = |of: Of| {
                matches!(of, Of::SmallestClearance | Of::RunningMarginTight | Of::RunningMarginLoose)
            };
            let fits = bench.result == Conformity::Conforms && !failed.iter().any(|d| tight_elsewhere(d.of));
            fits.then(|| format!("the {} conforms", bench.of.spoken()))?
        }
        _ if failed.is_empty() => return None,
        _ => {
            let names: Vec<String> = failed.iter().map(|d| d.of.spoken()).collect();
            format!("these sizes do not conform: {}", names.join(", "))
        }
    };
    let about = match cause.group() {
        Group::Normal => "is no fault".to_owned(),
        group => format!("is one of {}", group.spoken()),
    };
    let (seen, cause) = (finding.spoken(), cause.spoken());
    Some(Ground::remark(format!("{seen}: its cause, {cause}, {about}, and yet {sizes}; both stand")))
}

/// The worst ground decides. Its reasons come first; when everything is well, all grounds are the reasons.
pub(crate) fn verdict(grounds: &[Ground]) -> Verdict {
    let outcome = rank(grounds.iter().map(|g| g.outcome));
    let mut told: Vec<&Ground> = grounds
        .iter()
        .filter(|g| g.outcome > Outcome::Reuse || outcome == Outcome::Reuse || g.remark)
        .collect();
    // stable: equal weights stay in the order of the work
    crate::order::sort_by(&mut told, |a, b| b.outcome.cmp(&a.outcome));
    let decided = grounds
        .iter()
        .filter(|g| g.outcome == outcome)
        .filter_map(|g| g.measured.as_ref())
        .min_by(|a, b| a.probability.total_cmp(&b.probability));
    Verdict {
        outcome,
        reasons: told.into_iter().map(|g| g.reason.clone()).collect(),
        decided_by: decided.map(|behind| behind.of),
        dominant: decided.map(|behind| behind.dominant.clone()),
    }
}

/// The worst of several outcomes; of none, nothing is known.
fn rank(outcomes: impl Iterator<Item = Outcome>) -> Outcome {
    outcomes.max().unwrap_or(Outcome::Incomplete)
}
