//! The finish of a bore against its limits.
//!
#![doc = include_str!("../../docs/surface.md")]

use crate::bounds::{self, Bound};
use crate::choice::choices;
use crate::decision::{Conformity, Rule, RuleInForce, asked, check_order, decide};
use crate::error::Error;

choices! {
    /// A parameter of a finish. The names are those of ISO 13565-2.
    Parameter {
        /// Reduced peak height, in um.
        Rpk = "rpk",
        /// Core height, in um.
        Rk = "rk",
        /// Reduced valley depth, in um.
        Rvk = "rvk",
        /// Material ratio where the peaks end, in %.
        Mr1 = "mr1",
        /// Material ratio where the valleys begin, in %.
        Mr2 = "mr2",
        /// Angle between the two directions of the marks, in degrees.
        Crosshatch = "crosshatch",
    }
    /// What is found of a parameter.
    Finding {
        /// Within its limits.
        In = "in",
        /// Outside them.
        Out = "out",
        /// Neither is proven.
        NotProven = "not_proven",
        /// There are limits and no value.
        NotGiven = "not_given",
        /// There is nothing to judge by.
        NoLimit = "no_limit",
    }
}

/// A parameter as it was measured and what is asked of it, in its unit; everything may be missing.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct FinishValue {
    /// The value.
    pub value: Option<f64>,
    /// Its standard uncertainty; without one the value alone is held against the limits.
    pub standard_uncertainty: Option<f64>,
    /// Lower limit.
    pub lower: Option<f64>,
    /// Upper limit.
    pub upper: Option<f64>,
}

/// The finish of a bore as it was measured and what is asked of it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Finish {
    /// Reduced peak height.
    pub rpk_um: FinishValue,
    /// Core height.
    pub rk_um: FinishValue,
    /// Reduced valley depth.
    pub rvk_um: FinishValue,
    /// Material ratio where the peaks end.
    pub mr1_percent: FinishValue,
    /// Material ratio where the valleys begin.
    pub mr2_percent: FinishValue,
    /// Angle between the two directions of the marks.
    pub crosshatch_deg: FinishValue,
}

/// A parameter that was judged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Judged {
    /// Which one.
    pub parameter: Parameter,
    /// What is found.
    pub finding: Finding,
    /// Probability that it conforms; none without an uncertainty.
    pub probability_of_conformity: Option<f64>,
}

/// What is found of a finish.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FinishFound {
    /// Every parameter, in the order of [`Parameter::ALL`].
    pub parameters: [Judged; 6],
    /// Is there a limit, and does every parameter with a limit lie within it?
    pub is_met: bool,
}

/// Holds a finish against its limits.
///
/// `at_least` is what the rule asks for, as in [`decide_mm`](crate::decision::decide_mm); it is not looked at where no uncertainty is given.
///
/// # Errors
/// When a number is not finite or impossible, limits are out of order, or the first material ratio lies above the second; the error names the place
/// (`rpk_um/upper`).
pub fn finish(given: &Finish, rule: Rule, at_least: f64) -> Result<FinishFound, Error> {
    let asked_for = asked(rule, at_least)?;
    let judge = |parameter: Parameter, given: &FinishValue| {
        check(parameter, given).map_err(|error| error.under(parameter.field()))?;
        Ok::<_, Error>(judged(parameter, given, &asked_for))
    };
    let parameters = [
        judge(Parameter::Rpk, &given.rpk_um)?,
        judge(Parameter::Rk, &given.rk_um)?,
        judge(Parameter::Rvk, &given.rvk_um)?,
        judge(Parameter::Mr1, &given.mr1_percent)?,
        judge(Parameter::Mr2, &given.mr2_percent)?,
        judge(Parameter::Crosshatch, &given.crosshatch_deg)?,
    ];
    let reason = "the valleys begin where more of the given is material than where the peaks end";
    if let (Some(mr1), Some(mr2)) = (given.mr1_percent.value, given.mr2_percent.value) {
        bounds::check_above("mr2_percent/value", mr2, mr1, reason)?;
    }
    let with_limit = || parameters.iter().filter(|p| p.finding != Finding::NoLimit);
    let is_met = with_limit().next().is_some() && with_limit().all(|p| p.finding == Finding::In);
    Ok(FinishFound { parameters, is_met })
}

impl Parameter {
    const fn field(self) -> &'static str {
        match self {
            Parameter::Rpk => "rpk_um",
            Parameter::Rk => "rk_um",
            Parameter::Rvk => "rvk_um",
            Parameter::Mr1 => "mr1_percent",
            Parameter::Mr2 => "mr2_percent",
            Parameter::Crosshatch => "crosshatch_deg",
        }
    }

    /// Of the value and its limits, and of the standard uncertainty.
    const fn bounds(self) -> [&'static Bound; 2] {
        match self {
            Parameter::Rpk | Parameter::Rk | Parameter::Rvk => {
                [&bounds::ROUGHNESS, &bounds::ROUGHNESS_UNCERTAINTY]
            }
            Parameter::Mr1 | Parameter::Mr2 => [&bounds::MATERIAL_RATIO, &bounds::MATERIAL_RATIO_UNCERTAINTY],
            Parameter::Crosshatch => [&bounds::CROSSHATCH, &bounds::CROSSHATCH_UNCERTAINTY],
        }
    }
}

fn check(parameter: Parameter, given: &FinishValue) -> Result<(), Error> {
    let [value, uncertainty] = parameter.bounds();
    let of =
        |bound: &Bound, field: &str, given: Option<f64>| given.map(|v| bound.check(field, v)).transpose();
    of(value, "value", given.value)?;
    of(uncertainty, "standard_uncertainty", given.standard_uncertainty)?;
    of(value, "lower", given.lower)?;
    of(value, "upper", given.upper)?;
    check_order("upper", given.lower, given.upper)
}

fn judged(parameter: Parameter, given: &FinishValue, asked_for: &RuleInForce) -> Judged {
    let FinishValue { value, standard_uncertainty, lower, upper } = *given;
    let without = |finding| Judged { parameter, finding, probability_of_conformity: None };
    let Some(value) = value else {
        return without(if lower.or(upper).is_some() { Finding::NotGiven } else { Finding::NoLimit });
    };
    if lower.or(upper).is_none() {
        return without(Finding::NoLimit);
    }
    let alone = RuleInForce::usual(Rule::SimpleAcceptance);
    let decision = match standard_uncertainty {
        Some(u) => decide(asked_for, value, u, lower, upper),
        None => decide(&alone, value, 0.0, lower, upper),
    };
    let finding = match decision.result {
        Conformity::Conforms => Finding::In,
        Conformity::DoesNotConform => Finding::Out,
        Conformity::NotProven | Conformity::NotJudged => Finding::NotProven,
    };
    let probability_of_conformity =
        decision.probability_of_conformity.filter(|_| standard_uncertainty.is_some());
    Judged { parameter, finding, probability_of_conformity }
}
