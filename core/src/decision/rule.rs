//! The rules of conformity and what a job says of them.

use crate::bounds;
use crate::choice::choices;
use crate::error::{Error, ErrorKind};
use crate::job::document as doc;
use crate::job::{Entry, Given, Numeric, Warning};

/// Probability asked for when the document names none. ISO 14253-1:2017 has the same default.
const USUAL_PROBABILITY: f64 = 0.95;
/// Ratio asked for when the document names none: 4 to 1 (ASME B89.7.3.1-2001, from memory; common practice).
const USUAL_RATIO: f64 = 4.0;

choices! {
    /// Rule of decision.
    Rule {
        /// The value lies within the limits. The uncertainty is stated, not used.
        SimpleAcceptance = "simple_acceptance",
        /// The value lies within the limits by a guard band, so that conformity is proven. ISO 14253-1.
        Proven = "proven",
        /// The probability of conformity reaches what is asked. JCGM 106.
        ConformanceProbability = "conformance_probability",
        /// The value lies within the limits by a share of its expanded uncertainty, by all of it unless another share is asked for. ISO 14253-1:1998, ASME B89.7.3.1.
        ExpandedGuardBand = "expanded_guard_band",
        /// The value lies within the limits, and the tolerance is wide enough for its uncertainty. ASME B89.7.3.1.
        SimpleAcceptanceByRatio = "simple_acceptance_by_ratio",
    }
}

/// The rule that a job decides by, and what it asks for.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct RuleInForce {
    pub(crate) rule: Rule,
    /// probability, by [`Rule::ConformanceProbability`]
    pub(crate) at_least: f64,
    /// tolerance over the uncertainty interval, by [`Rule::SimpleAcceptanceByRatio`]
    pub(crate) ratio_at_least: f64,
    /// shares of the expanded uncertainty, by [`Rule::ExpandedGuardBand`]; all of it without one
    pub(crate) acceptance: Option<Given>,
    pub(crate) rejection: Option<Given>,
}

impl RuleInForce {
    /// A rule that asks for what is usual.
    pub(crate) fn usual(rule: Rule) -> Self {
        RuleInForce {
            rule,
            at_least: USUAL_PROBABILITY,
            ratio_at_least: USUAL_RATIO,
            acceptance: None,
            rejection: None,
        }
    }

    pub(crate) fn from_document(
        asked: Option<&doc::DecisionRule>,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        let Some(asked) = asked else {
            return Ok(RuleInForce::usual(Rule::Proven));
        };
        let usual = RuleInForce::usual(asked.rule);
        let probability = Rule::ConformanceProbability;
        let at_least = of_rule(asked, probability, asked.at_least.as_ref(), &bounds::PROBABILITY, warnings)?;
        let ratio = Rule::SimpleAcceptanceByRatio;
        let ratio =
            of_rule(asked, ratio, asked.ratio_at_least.as_ref(), &bounds::UNCERTAINTY_RATIO, warnings)?;
        let mut share =
            |entry| of_rule(asked, Rule::ExpandedGuardBand, entry, &bounds::GUARD_SHARE, warnings);
        let acceptance = share(asked.acceptance_guard.as_ref())?;
        let rejection = share(asked.rejection_guard.as_ref())?;
        if let (Some(accept), Some(reject), Some(entry)) = (&acceptance, &rejection, &asked.rejection_guard)
            && accept.value + reject.value < 0.0
        {
            let reason = format!(
                "with the acceptance guard of {} one value would be accepted and rejected: their sum must not be below 0",
                accept.text
            );
            return Err(entry.refuse(ErrorKind::Contradiction, reason));
        }
        Ok(RuleInForce {
            at_least: at_least.map_or(usual.at_least, |p| p.value),
            ratio_at_least: ratio.map_or(usual.ratio_at_least, |n| n.value),
            acceptance,
            rejection,
            ..usual
        })
    }

    /// Shares of the expanded uncertainty for acceptance and for rejection.
    pub(crate) fn shares(&self) -> (f64, f64) {
        let share = |given: &Option<Given>| given.as_ref().map_or(1.0, |g| g.value);
        (share(&self.acceptance), share(&self.rejection))
    }
}

/// What a rule asks for; refused beside another rule.
fn of_rule<K: Numeric>(
    asked: &doc::DecisionRule,
    owner: Rule,
    entry: Option<&Entry<K>>,
    bound: &bounds::Bound,
    warnings: &mut Vec<Warning>,
) -> Result<Option<Given>, Error> {
    match entry {
        Some(entry) if asked.rule != owner => {
            let reason = format!("it goes with the rule {} only", owner.word());
            Err(entry.refuse(ErrorKind::Contradiction, reason))
        }
        entry => entry.map(|e| e.read(bound, warnings)).transpose(),
    }
}
