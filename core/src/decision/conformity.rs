//! One value against its limits by the rule in force.

use super::limit::Limit;
use super::rule::{Rule, RuleInForce};
use crate::bounds;
use crate::calc::{Budget, Calc, Figure, Formula, formula};
use crate::choice::choices;
use crate::error::{Error, ErrorKind};
use crate::job::Given;
use schemars::JsonSchema;
use serde::Serialize;

/// Guard band in standard uncertainties for one-sided proof at 95 %.
pub(crate) const GUARD_FACTOR: f64 = 1.65;
pub(crate) const GUARD_SOURCE: &str = "ISO 14253-1:2017, default conformance probability of 95 %";
/// The whole of the expanded uncertainty.
const WHOLE_SOURCE: &str = "ISO 14253-1:1998 and 2013: the guard band is U";
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
formula! {
    /// Guard band.
    GuardBand: guard ["mm"] = (g, u) => g * u; source "ISO 14253-1:2017";
    /// Guard band as a share `h` of the expanded uncertainty.
    GuardShare: guard ["mm"] = (h, expanded) => h * expanded; source "ASME B89.7.3.1-2001; JCGM 106:2012, 8.3.2";
    /// Tolerance over the uncertainty interval from `-expanded` to `expanded`.
    UncertaintyRatio: ratio ["1"] = (tolerance, expanded) => tolerance / (2.0 * expanded); source "ASME B89.7.3.1-2001, N to 1 rule";
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
        /// Clearance of a piston to hand in a bore.
        MatchedClearance = "matched_clearance",
        /// Clearance after the work.
        FinishedClearance = "finished_clearance",
        /// Bore after the work, against the size it was machined to.
        FinishedSize = "finished_size",
        /// End gap of a ring after filing.
        RingGap = "ring_gap",
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
    /// Its effective degrees of freedom; absent when they are infinite.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dof: Option<f64>,
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
    /// Cylinders that the limits are printed for; absent when they are for all.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub for_cylinders: Vec<u32>,
    /// What a value must lie inside the limits to conform, with the rules `proven` and `expanded_guard_band`; below 0 it may lie outside.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub guard_band_mm: Option<f64>,
    /// What a value must lie outside the limits to not conform, with the rule `expanded_guard_band`; below 0 it may lie inside.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rejection_guard_band_mm: Option<f64>,
    /// Tolerance over the uncertainty interval 2 U, with the rule `simple_acceptance_by_ratio`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uncertainty_ratio: Option<f64>,
    /// Probability that the true value conforms.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub probability_of_conformity: Option<f64>,
    /// What it says.
    pub result: Outcome,
    /// Why, in words.
    pub reason: String,
}

/// What a value is held against.
pub(crate) struct Against<'a> {
    pub(crate) lower: Option<Figure>,
    pub(crate) upper: Option<Figure>,
    /// width of the printed tolerance, where the rule asks for it and there is one
    pub(crate) tolerance: Option<Figure>,
    pub(crate) temperature_c: Option<f64>,
    pub(crate) origin: &'a str,
    /// the cylinders it is printed for; none when it is for all
    pub(crate) cylinders: &'a [u32],
}

/// A value to be judged and what it is held against.
pub(crate) struct Judged<'a> {
    pub(crate) of: Of,
    pub(crate) value: Figure,
    pub(crate) budget: &'a Budget,
    pub(crate) against: Against<'a>,
    /// gauges with which nothing is proven
    pub(crate) overdue: &'a [String],
}

/// Numbers of a decision that stand in the report, for the working.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Figures {
    pub(crate) guard: Option<Figure>,
    pub(crate) rejection_guard: Option<Figure>,
    pub(crate) ratio: Option<Figure>,
    pub(crate) probability: Figure,
}

/// Judges a value by the rule in force.
pub(crate) fn judge(calc: &mut Calc, rule: &RuleInForce, judged: &Judged<'_>) -> (Decision, Figures) {
    let (x, u, against) = (judged.value, judged.budget.standard, &judged.against);
    let (guard, rejection_guard) = guards(calc, rule, judged.budget);
    let ratio = ratio(calc, rule, judged);
    let probability = probability(calc, x, judged.budget, against.lower, against.upper);
    let figures = Figures { guard, rejection_guard, ratio, probability };
    let limits = (against.lower.map(|f| f.value), against.upper.map(|f| f.value));
    let (result, reason) = match judged.overdue {
        [_, ..] if rule.rule != Rule::SimpleAcceptance => {
            let gauges = judged.overdue.join(", ");
            let reason = format!("nothing is proven with a gauge out of calibration or drifted: {gauges}");
            (Outcome::NotProven, reason)
        }
        _ => by_rule(rule, judged, limits, &figures),
    };
    let decision = Decision {
        of: judged.of,
        value_mm: Some(x.value),
        standard_uncertainty_mm: Some(u.value),
        dof: judged.budget.dof.map(|d| d.value),
        reference_temperature_c: against.temperature_c,
        lower_mm: limits.0,
        upper_mm: limits.1,
        origin: Some(against.origin.to_owned()),
        for_cylinders: against.cylinders.to_vec(),
        guard_band_mm: guard.map(|g| g.value),
        rejection_guard_band_mm: rejection_guard.map(|g| g.value),
        uncertainty_ratio: ratio.map(|r| r.value),
        probability_of_conformity: Some(probability.value),
        result,
        reason,
    };
    (decision, figures)
}

/// Guard bands for acceptance and, where it is another, for rejection.
fn guards(calc: &mut Calc, rule: &RuleInForce, budget: &Budget) -> (Option<Figure>, Option<Figure>) {
    match rule.rule {
        Rule::Proven => {
            let factor = calc.constant("g", GUARD_FACTOR, "1", GUARD_SOURCE);
            let factor = calc.t_factor(factor, budget.dof);
            (Some(calc.figure(GuardBand, [factor, budget.standard])), None)
        }
        Rule::ExpandedGuardBand => {
            let expanded = calc.coverage(budget).expanded;
            let mut band = |share: &Option<Given>| {
                let h = match share {
                    Some(given) => calc.given("h", given),
                    None => calc.constant("h", 1.0, "1", WHOLE_SOURCE),
                };
                calc.figure(GuardShare, [h, expanded])
            };
            (Some(band(&rule.acceptance)), Some(band(&rule.rejection)))
        }
        _ => (None, None),
    }
}

/// Tolerance over the uncertainty interval, where the rule asks for it and it is defined.
fn ratio(calc: &mut Calc, rule: &RuleInForce, judged: &Judged<'_>) -> Option<Figure> {
    let asked = rule.rule == Rule::SimpleAcceptanceByRatio && judged.budget.standard.value > NOISE_MM;
    let tolerance = judged.against.tolerance.filter(|_| asked)?;
    let expanded = calc.coverage(judged.budget).expanded;
    Some(calc.figure(UncertaintyRatio, [tolerance, expanded]))
}

impl Decision {
    /// A decision that could not be made.
    pub(crate) fn not_judged(of: Of, limit: &Limit, reason: String) -> Self {
        Decision {
            of,
            value_mm: None,
            standard_uncertainty_mm: None,
            dof: None,
            reference_temperature_c: Some(limit.temperature.value),
            lower_mm: limit.lower.as_ref().map(|g| g.value),
            upper_mm: limit.upper.as_ref().map(|g| g.value),
            origin: Some(limit.origin.clone()),
            for_cylinders: limit.cylinders.clone(),
            guard_band_mm: None,
            rejection_guard_band_mm: None,
            uncertainty_ratio: None,
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

/// Beyond `accept` inside the limits it conforms, beyond `reject` outside them it does not.
fn banded(inside: f64, accept: f64, reject: f64) -> Outcome {
    if inside >= accept - NOISE_MM {
        Outcome::Conforms
    } else if inside < -reject - NOISE_MM {
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
    budget: &Budget,
    lower: Option<Figure>,
    upper: Option<Figure>,
) -> Figure {
    let u = budget.standard;
    if u.value <= NOISE_MM {
        let p = of_exact(x.value, (lower.map(|f| f.value), upper.map(|f| f.value)));
        return calc.constant("p", p, "1", "a value without uncertainty");
    }
    let mut below = |limit: Figure| match budget.dof {
        None => calc.figure(BelowLimit, [limit, x, u]),
        Some(dof) => calc.t_below(limit, x, u, dof),
    };
    match (lower.map(&mut below), upper.map(&mut below)) {
        (Some(min), Some(max)) => calc.figure(Between, [max, min]),
        (Some(min), None) => calc.figure(NotBelow, [min]),
        (None, Some(max)) => calc.figure(OneSided, [max]),
        (None, None) => calc.constant("p", 1.0, "1", "no limit"),
    }
}

/// The result by the rule, and why.
fn by_rule(rule: &RuleInForce, judged: &Judged<'_>, limits: Pair, figures: &Figures) -> (Outcome, String) {
    let x = judged.value.value;
    let inside = inside(x, limits);
    let place = match inside >= -NOISE_MM {
        true => format!("inside the nearer limit by {:.4} mm", inside.max(0.0)),
        false => format!("outside the limit by {:.4} mm", -inside),
    };
    match (rule.rule, figures.guard, figures.rejection_guard) {
        (Rule::ExpandedGuardBand, Some(accept), Some(reject)) => {
            let (accept, reject) = (accept.value, reject.value);
            let bands = format!("{accept:.4} mm for acceptance and {reject:.4} mm for rejection");
            (banded(inside, accept, reject), format!("{place}, and the guard bands are {bands}"))
        }
        (_, Some(guard), _) => {
            let guard = guard.value;
            (banded(inside, guard, guard), format!("{place}, and the guard band is {guard:.4} mm"))
        }
        (Rule::ConformanceProbability, ..) => {
            let p = figures.probability.value;
            let (has, asked) = (percent(p), percent(rule.at_least));
            let odds = format!("it conforms with a probability of {has} %, and {asked} % is asked for");
            (by_probability(p, rule.at_least), format!("{place}, {odds}"))
        }
        (Rule::SimpleAcceptanceByRatio, ..) => match too_uncertain(rule, judged, figures.ratio) {
            Some(reason) => (Outcome::NotProven, reason),
            None => {
                (simple(x, limits), format!("{place}, by simple acceptance: {}", ratio_held(figures.ratio)))
            }
        },
        _ => (simple(x, limits), format!("{place}, by simple acceptance")),
    }
}

/// Why the tolerance does not carry a decision by simple acceptance, if it does not.
fn too_uncertain(rule: &RuleInForce, judged: &Judged<'_>, ratio: Option<Figure>) -> Option<String> {
    let Some(tolerance) = judged.against.tolerance else {
        return Some(
            "with one limit alone a ratio of the tolerance to the uncertainty is not defined".to_owned(),
        );
    };
    let ratio = ratio?.value;
    // the same as `ratio >= ratio_at_least`, with the noise of the arithmetic in mm
    let missing = |interval: f64| rule.ratio_at_least * interval - tolerance.value;
    // a printed limit of 0 leaves no tolerance, and nothing to divide by
    let short = ratio <= 0.0 || missing(tolerance.value / ratio) > NOISE_MM;
    short.then(|| {
        let has = cut(ratio);
        format!(
            "the tolerance is {has} times the uncertainty interval 2 U, and {} times is asked for",
            rule.ratio_at_least
        )
    })
}

fn ratio_held(ratio: Option<Figure>) -> String {
    match ratio {
        Some(ratio) => format!("the tolerance is {} times the uncertainty interval 2 U", cut(ratio.value)),
        None => "the value has no uncertainty".to_owned(),
    }
}

/// Two decimals, cut: a ratio that falls short must not round to what is asked for.
fn cut(ratio: f64) -> String {
    format!("{:.2}", (ratio * 100.0).floor() / 100.0)
}

/// Two decimals, and more where they would round to a hundred.
fn percent(p: f64) -> String {
    if p < 0.9999 { format!("{:.2}", p * 100.0) } else { format!("{:.6}", p * 100.0) }
}

/// Judges one value in mm with its standard uncertainty in mm.
///
/// Valid for a value whose error is normal and whose uncertainty has infinite degrees of freedom. `at_least` is the probability asked for by [`Rule::ConformanceProbability`] or the ratio asked for
/// by [`Rule::SimpleAcceptanceByRatio`]; the other rules do not look at it. [`Rule::ExpandedGuardBand`] takes the whole of `U = 2 u`.
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
    let rule = asked(rule, at_least)?;
    check_order("upper_mm", lower_mm, upper_mm)?;
    if lower_mm.or(upper_mm).is_none() {
        return Err(Error::new(ErrorKind::MissingField, "upper_mm", "a limit is needed").at("upper_mm"));
    }
    Ok(decide(&rule, value_mm, standard_uncertainty_mm, lower_mm, upper_mm))
}

/// Probability that the true value of a quantity in mm lies within two limits, for a value whose error is normal.
///
/// A value without uncertainty conforms or does not: 1 or 0. Source: JCGM 106:2012, 7.2.2.
///
/// # Errors
/// When a number is not finite or impossible, or the limits are out of order.
pub fn probability_of_conformity(
    value_mm: f64,
    standard_uncertainty_mm: f64,
    lower_mm: f64,
    upper_mm: f64,
) -> Result<f64, Error> {
    let x = JUDGED.check("value_mm", value_mm)?;
    let u = UNCERTAINTY.check("standard_uncertainty_mm", standard_uncertainty_mm)?;
    let lower = JUDGED.check("lower_mm", lower_mm)?;
    let upper = JUDGED.check("upper_mm", upper_mm)?;
    check_order("upper_mm", Some(lower), Some(upper))?;
    if u <= NOISE_MM {
        return Ok(of_exact(x, (Some(lower), Some(upper))));
    }
    Ok(Between::evaluate([upper, lower].map(|limit| BelowLimit::evaluate([limit, x, u]))))
}

/// An exact value conforms or does not; the square of a smaller uncertainty would be lost, and a division by it is not a number.
fn of_exact(x: f64, limits: Pair) -> f64 {
    if simple(x, limits) == Outcome::Conforms { 1.0 } else { 0.0 }
}

/// Refuses an upper limit that does not lie above the lower one.
pub(crate) fn check_order(field: &str, lower: Option<f64>, upper: Option<f64>) -> Result<(), Error> {
    match (lower, upper) {
        (Some(low), Some(high)) => {
            bounds::check_above(field, high, low, "the upper limit must be above the lower")
        }
        _ => Ok(()),
    }
}

/// Judges a checked value of any unit; what the decision calls mm and its reason are then in that unit.
pub(crate) fn decide(
    rule: &RuleInForce,
    value: f64,
    standard_uncertainty: f64,
    lower: Option<f64>,
    upper: Option<f64>,
) -> Decision {
    let mut calc = Calc::new(false);
    let figure = |value: f64| Figure::plain(value, "mm");
    let budget = Budget { standard: figure(standard_uncertainty), dof: None, lines: Vec::new() };
    let against = Against {
        lower: lower.map(figure),
        upper: upper.map(figure),
        tolerance: lower.zip(upper).map(|(low, high)| figure(high - low)),
        temperature_c: None,
        origin: "",
        cylinders: &[],
    };
    let judged = Judged { of: Of::Value, value: figure(value), budget: &budget, against, overdue: &[] };
    let (decision, _) = judge(&mut calc, rule, &judged);
    Decision { origin: None, ..decision }
}

/// A rule with what it asks for at least.
pub(crate) fn asked(rule: Rule, at_least: f64) -> Result<RuleInForce, Error> {
    let usual = RuleInForce::usual(rule);
    Ok(match rule {
        Rule::ConformanceProbability => {
            RuleInForce { at_least: bounds::PROBABILITY.check("at_least", at_least)?, ..usual }
        }
        Rule::SimpleAcceptanceByRatio => {
            RuleInForce { ratio_at_least: bounds::UNCERTAINTY_RATIO.check("at_least", at_least)?, ..usual }
        }
        _ => usual,
    })
}
