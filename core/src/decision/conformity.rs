//! The three rules of conformity.

use super::limit::Limit;
use crate::bounds;
use crate::calc::{Budget, Calc, Figure, formula};
use crate::choice::choices;
use crate::error::{Error, ErrorKind};
use crate::job::Warning;
use crate::job::document as doc;
use schemars::JsonSchema;
use serde::Serialize;

/// Guard band in standard uncertainties for one-sided proof at 95 %.
const GUARD_FACTOR: f64 = 1.65;
const GUARD_SOURCE: &str = "ISO 14253-1:2017, default conformance probability of 95 %";
/// A value nearer than this to a limit, in mm, is at the limit: it is rounding of the arithmetic, not metal.
const NOISE_MM: f64 = 1e-9;
/// A value or limit of a decision of its own: a size, a clearance or a difference of sizes.
const JUDGED: bounds::Bound = bounds::Bound {
    label: "value or limit",
    unit: "mm",
    possible: (-1100.0, 1100.0),
    usual: (-0.1, 200.0),
    reason: "no size is larger than the largest bore",
};
/// Standard uncertainty of such a value.
const UNCERTAINTY: bounds::Bound = bounds::Bound {
    label: "standard uncertainty",
    unit: "mm",
    possible: (0.0, 1.0),
    usual: (0.0001, 0.05),
    reason: "a caliper reads better than 1 mm",
};
/// Probability asked for when the document names none. ISO 14253-1:2017 has the same default.
const USUAL_PROBABILITY: f64 = 0.95;

formula! {
    /// Guard band.
    GuardBand: guard ["mm"] = (g, u) => g * u; source "ISO 14253-1:2017";
    /// Probability that a normal variable with mean `x` and deviation `u` is not above `limit`.
    BelowLimit: below ["1"] = (limit, x, u) => ((x - limit) / (u * u * 2.0).sqrt()).erfc() / 2.0; source "JCGM 106:2012, 7.2.2";
    /// Probability of conformity to an upper limit.
    OneSided: p ["1"] = (below) => below; source "JCGM 106:2012, 7.2.2";
    /// Probability of conformity to a lower limit.
    NotBelow: p ["1"] = (below) => 1.0 - below; source "JCGM 106:2012, 7.2.2";
    /// Probability of conformity to two limits.
    Between: p ["1"] = (below_max, below_min) => below_max - below_min; source "JCGM 106:2012, 7.2.2";
}

choices! {
    /// Rule of decision.
    Rule {
        /// The value lies within the limits. The uncertainty is stated, not used.
        SimpleAcceptance = "simple_acceptance",
        /// The value lies within the limits by a guard band, so that conformity is proven. ISO 14253-1.
        Proven = "proven",
        /// The probability of conformity reaches what is asked. JCGM 106.
        ConformanceProbability = "conformance_probability",
    }
    /// What a decision says.
    Outcome {
        /// It conforms.
        Conforms = "conforms",
        /// It does not conform.
        DoesNotConform = "does not conform",
        /// Neither is proven.
        NotProven = "not proven",
        /// There is nothing to judge by.
        NotJudged = "not judged",
    }
    /// What a decision is of.
    Of {
        /// Piston at its gauge point.
        PistonSize = "piston_size",
        /// Bore by the size rule.
        BoreSize = "bore_size",
        /// Taper of the bore.
        BoreTaper = "bore_taper",
        /// Out-of-round of the bore.
        BoreOutOfRound = "bore_out_of_round",
        /// Clearance on the bench.
        BenchClearance = "bench_clearance",
        /// Clearance on the bench at the smallest place that was read.
        SmallestClearance = "smallest_clearance",
        /// Margin against the reference case, hottest piston and coldest bore.
        RunningMarginTight = "running_margin_tight",
        /// Margin against the reference case, coldest piston and hottest bore.
        RunningMarginLoose = "running_margin_loose",
        /// A value that belongs to no job.
        Value = "value",
    }
}

/// A decision with everything it rests on. Names that end in `_mm` are in mm.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Decision {
    /// What it is of.
    pub of: Of,
    /// The value at the reference temperature of its limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value_mm: Option<f64>,
    /// Its standard uncertainty.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub standard_uncertainty_mm: Option<f64>,
    /// Reference temperature of the limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reference_temperature_c: Option<f64>,
    /// Lower limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lower_mm: Option<f64>,
    /// Upper limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub upper_mm: Option<f64>,
    /// Where the limits come from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub origin: Option<String>,
    /// Guard band, with the rule `proven`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub guard_band_mm: Option<f64>,
    /// Probability that the true value conforms.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub probability_of_conformity: Option<f64>,
    /// What it says.
    pub result: Outcome,
    /// Why, in words.
    pub reason: String,
}

/// The rule that a job decides by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct RuleInForce {
    pub(crate) rule: Rule,
    pub(crate) at_least: f64,
}

impl RuleInForce {
    pub(crate) fn from_document(
        rule: Option<&doc::DecisionRule>,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        let Some(rule) = rule else {
            return Ok(RuleInForce { rule: Rule::Proven, at_least: USUAL_PROBABILITY });
        };
        let at_least = match (&rule.at_least, rule.rule) {
            (Some(entry), Rule::ConformanceProbability) => entry.read(&bounds::PROBABILITY, warnings)?.value,
            (Some(entry), _) => {
                return Err(entry.refuse(
                    ErrorKind::Contradiction,
                    "at_least goes with the rule conformance_probability only",
                ));
            }
            (None, _) => USUAL_PROBABILITY,
        };
        Ok(RuleInForce { rule: rule.rule, at_least })
    }
}

/// A value to be judged and the limits it is held against.
pub(crate) struct Judged<'a> {
    pub(crate) of: Of,
    pub(crate) value: Figure,
    pub(crate) budget: &'a Budget,
    pub(crate) lower: Option<Figure>,
    pub(crate) upper: Option<Figure>,
    pub(crate) temperature_c: Option<f64>,
    pub(crate) origin: &'a str,
    /// gauges with which nothing is proven
    pub(crate) overdue: &'a [String],
}

/// Numbers of a decision that stand in the report, for the working.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Figures {
    pub(crate) guard: Option<Figure>,
    pub(crate) probability: Figure,
}

/// Judges a value by the rule in force.
pub(crate) fn judge(calc: &mut Calc, rule: RuleInForce, judged: &Judged<'_>) -> (Decision, Figures) {
    let (x, u) = (judged.value, judged.budget.standard);
    let guard = (rule.rule == Rule::Proven).then(|| {
        let factor = calc.constant("g", GUARD_FACTOR, "1", GUARD_SOURCE);
        calc.figure(GuardBand, [factor, u])
    });
    let probability = probability(calc, x, u, judged.lower, judged.upper);
    let limits = (judged.lower.map(|f| f.value), judged.upper.map(|f| f.value));
    let by_rule = match (rule.rule, guard) {
        (Rule::Proven, Some(guard)) => proven(x.value, guard.value, limits),
        (Rule::ConformanceProbability, _) => by_probability(probability.value, rule.at_least),
        _ => simple(x.value, limits),
    };
    let stale = !judged.overdue.is_empty() && rule.rule != Rule::SimpleAcceptance;
    let result = if stale { Outcome::NotProven } else { by_rule };
    let reason = match stale {
        true => format!(
            "nothing is proven with a gauge out of calibration or drifted: {}",
            judged.overdue.join(", ")
        ),
        false => reason(rule, x.value, limits, guard.map(|g| g.value), probability.value),
    };
    let decision = Decision {
        of: judged.of,
        value_mm: Some(x.value),
        standard_uncertainty_mm: Some(u.value),
        reference_temperature_c: judged.temperature_c,
        lower_mm: limits.0,
        upper_mm: limits.1,
        origin: Some(judged.origin.to_owned()),
        guard_band_mm: guard.map(|g| g.value),
        probability_of_conformity: Some(probability.value),
        result,
        reason,
    };
    (decision, Figures { guard, probability })
}

impl Decision {
    /// A decision that could not be made.
    pub(crate) fn not_judged(of: Of, limit: &Limit, reason: String) -> Self {
        Decision {
            of,
            value_mm: None,
            standard_uncertainty_mm: None,
            reference_temperature_c: Some(limit.temperature.value),
            lower_mm: limit.lower.as_ref().map(|g| g.value),
            upper_mm: limit.upper.as_ref().map(|g| g.value),
            origin: Some(limit.origin.clone()),
            guard_band_mm: None,
            probability_of_conformity: None,
            result: Outcome::NotJudged,
            reason,
        }
    }
}

type Pair = (Option<f64>, Option<f64>);

/// Distance of a value inside the nearer limit; negative outside.
fn inside(x: f64, (lower, upper): Pair) -> f64 {
    let above = lower.map_or(f64::INFINITY, |l| x - l);
    let below = upper.map_or(f64::INFINITY, |l| l - x);
    if below < above { below } else { above }
}

fn simple(x: f64, limits: Pair) -> Outcome {
    if inside(x, limits) >= -NOISE_MM { Outcome::Conforms } else { Outcome::DoesNotConform }
}

fn proven(x: f64, guard: f64, limits: Pair) -> Outcome {
    let inside = inside(x, limits);
    if inside >= guard - NOISE_MM {
        Outcome::Conforms
    } else if inside < -guard - NOISE_MM {
        Outcome::DoesNotConform
    } else {
        Outcome::NotProven
    }
}

fn by_probability(p: f64, at_least: f64) -> Outcome {
    if p >= at_least {
        Outcome::Conforms
    } else if 1.0 - p >= at_least {
        Outcome::DoesNotConform
    } else {
        Outcome::NotProven
    }
}

fn probability(
    calc: &mut Calc,
    x: Figure,
    u: Figure,
    lower: Option<Figure>,
    upper: Option<Figure>,
) -> Figure {
    if u.value <= NOISE_MM {
        // an exact value conforms or does not; the square of a smaller uncertainty would be lost, and a division by it is not a number
        let conforms = simple(x.value, (lower.map(|f| f.value), upper.map(|f| f.value))) == Outcome::Conforms;
        return calc.constant("p", if conforms { 1.0 } else { 0.0 }, "1", "a value without uncertainty");
    }
    let mut below = |limit: Figure| calc.figure(BelowLimit, [limit, x, u]);
    match (lower.map(&mut below), upper.map(&mut below)) {
        (Some(min), Some(max)) => calc.figure(Between, [max, min]),
        (Some(min), None) => calc.figure(NotBelow, [min]),
        (None, Some(max)) => calc.figure(OneSided, [max]),
        (None, None) => calc.constant("p", 1.0, "1", "no limit"),
    }
}

fn reason(rule: RuleInForce, x: f64, limits: Pair, guard: Option<f64>, p: f64) -> String {
    let inside = inside(x, limits);
    let place = match inside >= -NOISE_MM {
        true => format!("inside the nearer limit by {:.4} mm", inside.max(0.0)),
        false => format!("outside the limit by {:.4} mm", -inside),
    };
    match (rule.rule, guard) {
        (Rule::Proven, Some(guard)) => format!("{place}, and the guard band is {guard:.4} mm"),
        (Rule::ConformanceProbability, _) => {
            let (has, asked) = (percent(p), percent(rule.at_least));
            format!("{place}, it conforms with a probability of {has} %, and {asked} % is asked for")
        }
        _ => format!("{place}, by simple acceptance"),
    }
}

/// Two decimals, and more where they would round to a hundred.
fn percent(p: f64) -> String {
    if p < 0.9999 { format!("{:.2}", p * 100.0) } else { format!("{:.6}", p * 100.0) }
}

/// Judges one value in mm with its standard uncertainty in mm.
///
/// Valid for a value whose error is normal. `at_least` is used by [`Rule::ConformanceProbability`] only.
///
/// # Errors
/// When a number is not finite or impossible, the limits are out of order or there is none.
///
/// ```
/// use gaugepoint::decision::{Conformity, Rule, decide_mm};
/// // 1.65 standard uncertainties inside a single limit is proven, half of that is not
/// let decide = |x| decide_mm(x, 0.001, None, Some(86.020), Rule::Proven, 0.95).map(|d| d.result);
/// assert_eq!(decide(86.018)?, Conformity::Conforms);
/// assert_eq!(decide(86.0192)?, Conformity::NotProven);
/// # Ok::<(), gaugepoint::Error>(())
/// ```
pub fn decide_mm(
    value_mm: f64,
    standard_uncertainty_mm: f64,
    lower_mm: Option<f64>,
    upper_mm: Option<f64>,
    rule: Rule,
    at_least: f64,
) -> Result<Decision, Error> {
    JUDGED.check("value_mm", value_mm)?;
    UNCERTAINTY.check("standard_uncertainty_mm", standard_uncertainty_mm)?;
    lower_mm.map(|l| JUDGED.check("lower_mm", l)).transpose()?;
    upper_mm.map(|l| JUDGED.check("upper_mm", l)).transpose()?;
    if rule == Rule::ConformanceProbability {
        bounds::PROBABILITY.check("at_least", at_least)?;
    }
    match (lower_mm, upper_mm) {
        (Some(low), Some(high)) if low >= high => {
            let error = Error::new(
                ErrorKind::OutOfOrder,
                high.to_string(),
                "the upper limit must be above the lower",
            );
            return Err(error.value(high).at("upper_mm"));
        }
        (None, None) => {
            return Err(Error::new(ErrorKind::MissingField, "upper_mm", "a limit is needed").at("upper_mm"));
        }
        _ => {}
    }
    let mut calc = Calc::new(false);
    let figure = |value: f64| Figure::plain(value, "mm");
    let budget = Budget { standard: figure(standard_uncertainty_mm), lines: Vec::new() };
    let judged = Judged {
        of: Of::Value,
        value: figure(value_mm),
        budget: &budget,
        lower: lower_mm.map(figure),
        upper: upper_mm.map(figure),
        temperature_c: None,
        origin: "",
        overdue: &[],
    };
    let (decision, _) = judge(&mut calc, RuleInForce { rule, at_least }, &judged);
    Ok(Decision { origin: None, ..decision })
}
