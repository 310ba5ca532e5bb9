//! One value against its limits.

use crate::error::{Failure, GaugepointError};
use crate::guard::{Out, cleared, status};
use crate::status::PANIC;
use crate::text::flag;
use gaugepoint::decision::{Conformity, Rule, decide_mm};

/// Rule of decision.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointRule {
    /// The value lies within the limits. The uncertainty is stated, not used.
    SimpleAcceptance = 1,
    /// The value lies within the limits by a guard band, so that conformity is proven. ISO 14253-1.
    Proven = 2,
    /// The probability of conformity reaches what is asked. JCGM 106.
    ConformanceProbability = 3,
    /// The value lies within the limits by its expanded uncertainty, twice the standard uncertainty. ISO 14253-1:1998.
    ExpandedGuardBand = 4,
    /// The value lies within the limits, and the tolerance is wide enough for its uncertainty. ASME B89.7.3.1.
    SimpleAcceptanceByRatio = 5,
}

/// What a decision says.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointConformity {
    /// It conforms.
    Conforms = 1,
    /// It does not conform.
    DoesNotConform = 2,
    /// Neither is proven.
    NotProven = 3,
    /// There is nothing to judge by, or the call failed.
    NotJudged = 4,
}

/// Judges one value in mm with its standard uncertainty in mm, for a value whose error is normal.
///
/// `lower_mm` counts when `has_lower` is 1, `upper_mm` when `has_upper` is 1; at least one must. `rule` is a
/// GaugepointRule. `at_least` is the probability asked for by the rule conformance probability, 0.5 to 0.999999, or the
/// ratio of the tolerance to the uncertainty interval asked for by the rule simple acceptance by ratio, 1 to 100; the
/// others do not look at it. `result` gets a GaugepointConformity, `probability` the probability of conformity.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_decide_mm(
    value_mm: f64,
    standard_uncertainty_mm: f64,
    has_lower: i32,
    lower_mm: f64,
    has_upper: i32,
    upper_mm: f64,
    rule: i32,
    at_least: f64,
    result: *mut i32,
    probability: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, outs(result, probability), || {
            let lower = flag("has_lower", has_lower)?.then_some(lower_mm);
            let upper = flag("has_upper", has_upper)?.then_some(upper_mm);
            let rule = rule_of(rule)?;
            let decision = decide_mm(value_mm, standard_uncertainty_mm, lower, upper, rule, at_least)?;
            let probability = decision.probability_of_conformity.ok_or_else(no_probability)?;
            Ok((number_of(decision.result) as i32, probability))
        })
    }
}

fn outs(result: *mut i32, probability: *mut f64) -> (Out<i32>, Out<f64>) {
    let not_judged = GaugepointConformity::NotJudged as i32;
    (cleared("result", result, not_judged), cleared("probability", probability, f64::NAN))
}

fn no_probability() -> Failure {
    Failure::own(PANIC, "probability", "a decision without a probability")
}

pub(crate) fn rule_of(number: i32) -> Result<Rule, Failure> {
    const RULES: [(GaugepointRule, Rule); 5] = [
        (GaugepointRule::SimpleAcceptance, Rule::SimpleAcceptance),
        (GaugepointRule::Proven, Rule::Proven),
        (GaugepointRule::ConformanceProbability, Rule::ConformanceProbability),
        (GaugepointRule::ExpandedGuardBand, Rule::ExpandedGuardBand),
        (GaugepointRule::SimpleAcceptanceByRatio, Rule::SimpleAcceptanceByRatio),
    ];
    let found = RULES.iter().find(|(c, _)| *c as i32 == number);
    found.map(|(_, rule)| *rule).ok_or_else(|| Failure::choice("rule", number, "1, 2, 3, 4, 5"))
}

pub(crate) fn number_of(result: Conformity) -> GaugepointConformity {
    match result {
        Conformity::Conforms => GaugepointConformity::Conforms,
        Conformity::DoesNotConform => GaugepointConformity::DoesNotConform,
        Conformity::NotProven => GaugepointConformity::NotProven,
        Conformity::NotJudged => GaugepointConformity::NotJudged,
    }
}
