//! What a budget comes to, as data. What is absent was not asked for or does not exist; degrees of freedom that are absent are infinite.

use super::document::{CoverageChoice, DegreesChoice};
use crate::job::Warning;
use crate::report::written;
use schemars::JsonSchema;
use serde::Serialize;

/// Format name of the report on a budget.
pub const REPORT_FORMAT: &str = "gaugepoint-budget-report";
/// Version of the format of the report.
pub const REPORT_VERSION: u32 = 1;

/// Structures of the report.
macro_rules! report {
    ($($(#[doc = $doc:literal])+ $name:ident { $($(#[doc = $field_doc:literal])+ $field:ident: $type:ty $(=> $skip:literal)?,)+ })+) => {
        $(
            $(#[doc = $doc])+
            #[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
            pub struct $name {
                $($(#[doc = $field_doc])+ $(#[serde(skip_serializing_if = $skip)])? pub $field: $type,)+
            }
        )+
    };
}

report! {
    /// A result with its uncertainty, and where that comes from.
    BudgetReport {
        /// `gaugepoint-budget-report`
        format: &'static str,
        /// Version of the format.
        version: u32,
        /// Version of the library.
        library: &'static str,
        /// Name of the result.
        name: String,
        /// Note of the document.
        note: Option<String> => "Option::is_none",
        /// Unit of the result, as the document has it.
        unit: Option<String> => "Option::is_none",
        /// The formula, as the document has it.
        model: String,
        /// The model at the estimates of its inputs.
        estimate: f64,
        /// Combined standard uncertainty to first order.
        standard_uncertainty: f64,
        /// Effective degrees of freedom; infinite when absent.
        dof: Option<f64> => "Option::is_none",
        /// Expanded uncertainty and how it came about.
        expanded: ExpandedReport,
        /// What each source does, the largest share first.
        contributions: Vec<ContributionReport>,
        /// What the second order adds.
        second_order: Option<SecondOrderReport> => "Option::is_none",
        /// What the trials say.
        monte_carlo: Option<MonteCarloReport> => "Option::is_none",
        /// Whether the first order stands against the trials.
        validation: Option<ValidationReport> => "Option::is_none",
        /// What a reader must know.
        warnings: Vec<Warning>,
    }
    /// An expanded uncertainty and how it came about.
    ExpandedReport {
        /// Coverage probability.
        probability: f64,
        /// Whether the degrees of freedom were truncated.
        degrees: DegreesChoice,
        /// Degrees of freedom that entered; infinite when absent.
        dof: Option<f64> => "Option::is_none",
        /// Coverage factor.
        coverage_factor: f64,
        /// Expanded uncertainty.
        expanded_uncertainty: f64,
    }
    /// What one source does to the result.
    ContributionReport {
        /// Name of the source.
        source: String,
        /// JSON Pointer of the source, or of the input it belongs to.
        path: String,
        /// Derivative of the model by the source.
        sensitivity: f64,
        /// Standard uncertainty of the source.
        standard_uncertainty: f64,
        /// Its degrees of freedom; infinite when absent.
        dof: Option<f64> => "Option::is_none",
        /// Sensitivity times standard uncertainty, with its sign.
        contribution: f64,
        /// Share of the variance, 0 to 1.
        share: f64,
    }
    /// What the second order adds.
    SecondOrderReport {
        /// Standard uncertainty with the terms of second order; absent when they make the variance negative.
        standard_uncertainty: Option<f64> => "Option::is_none",
        /// Mean of the result less the model at the estimates.
        shift_of_mean: f64,
        /// Part of the variance from third derivatives; it can be negative.
        third_derivatives: f64,
        /// What two sources do together, the largest first; those that do nothing are left out.
        products: Vec<ProductReport>,
    }
    /// What two sources do together.
    ProductReport {
        /// Name of the one.
        first: String,
        /// Name of the other; the same for the square of one.
        second: String,
        /// Root of their term of the variance.
        contribution: f64,
    }
    /// What the trials say.
    MonteCarloReport {
        /// Seed of the trials.
        seed: u32,
        /// Number of trials.
        trials: u64,
        /// Their mean.
        mean: f64,
        /// Their standard deviation.
        standard_deviation: f64,
        /// Coverage probability of the intervals.
        probability: f64,
        /// Probabilistically symmetric coverage interval.
        symmetric: IntervalReport,
        /// Shortest coverage interval.
        shortest: IntervalReport,
        /// How an adaptive run ended.
        adaptive: Option<AdaptiveReport> => "Option::is_none",
    }
    /// An interval of the result.
    IntervalReport {
        /// Lower end.
        lower: f64,
        /// Upper end.
        upper: f64,
    }
    /// How an adaptive run ended.
    AdaptiveReport {
        /// Significant digits of the standard uncertainty that were meant.
        digits: u8,
        /// Interval whose ends were to settle.
        coverage: CoverageChoice,
        /// Number of sequences of trials.
        sequences: u64,
        /// Numerical tolerance at the end.
        tolerance: f64,
        /// Whether mean, deviation and both ends are stable to the tolerance; if not, the trials ran out.
        settled: bool,
    }
    /// Whether the first order stands against the trials.
    ValidationReport {
        /// Significant digits of the standard uncertainty that were meant.
        digits: u8,
        /// Interval it was held against.
        coverage: CoverageChoice,
        /// Difference of the lower ends.
        lower_difference: f64,
        /// Difference of the upper ends.
        upper_difference: f64,
        /// Numerical tolerance of the standard uncertainty.
        tolerance: f64,
        /// Whether both differences are within it.
        validated: bool,
    }
}

written!(BudgetReport, "budget-report");
