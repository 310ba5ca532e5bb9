//! What a stack comes to, as data. What is absent was not asked for or does not exist.

use super::Method;
use super::document::PointsChoice;
use crate::calc::Working;
use crate::report::{report, written};
use schemars::JsonSchema;
use serde::Serialize;

/// Format name of the report on a stack.
pub const REPORT_FORMAT: &str = "gaugepoint-stack-report";
/// Version of the format of the report.
pub const REPORT_VERSION: u32 = 1;

report! {
    /// A stack: worst case, moments, what each contributor does, and what lies outside the limits.
    StackReport {
        /// `gaugepoint-stack-report`
        format: &'static str,
        /// Version of the format.
        version: u32,
        /// Version of the library.
        library: &'static str,
        /// Name of the stack.
        name: String,
        /// Note of the document.
        note: Option<String> => "Option::is_none",
        /// Unit of the result.
        unit: Option<String> => "Option::is_none",
        /// `linear`, `formula` or the word of a ready-made stack.
        kind: String,
        /// The formula, as the document has it.
        formula: Option<String> => "Option::is_none",
        /// Size at nominal.
        nominal: f64,
        /// Mean: of a linear stack exact, of a function to second order.
        mean: f64,
        /// Standard deviation: of a linear stack exact, of a function to second order.
        standard_deviation: f64,
        /// All contributors anywhere within their limits.
        worst_case: WorstCaseReport,
        /// Published forms of a linear stack.
        published: Option<PublishedReport> => "Option::is_none",
        /// A function by its derivatives.
        propagation: Option<PropagationReport> => "Option::is_none",
        /// What each contributor and shared cause does, the largest share first.
        shares: Vec<ShareReport>,
        /// Limits of the result.
        limits: Option<LimitsReport> => "Option::is_none",
        /// A linear stack against the limits, from its exact distribution.
        exact: Option<ExactReport> => "Option::is_none",
        /// Density of a linear stack to draw, when it was asked for.
        curve: Option<CurveReport> => "Option::is_none",
        /// Histogram to draw, when it was asked for.
        histogram: Option<HistogramReport> => "Option::is_none",
        /// What the trials say.
        monte_carlo: Option<TrialsReport> => "Option::is_none",
        /// The working, when it was asked for; within a job it stands with that of the job.
        working: Option<Working> => "Option::is_none",
    }
    /// Smallest and largest value within the limits of all contributors.
    WorstCaseReport {
        /// Smallest value.
        lower: f64,
        /// Largest value.
        upper: f64,
        /// `linear`, `monotone` (two corners, by the signs of the slopes) or `subdivision` (bounds by intervals).
        proof: &'static str,
        /// Nothing lies below this; of a linear stack it is the smallest value.
        lower_bound: f64,
        /// Nothing lies above this.
        upper_bound: f64,
    }
    /// Published forms of a linear stack.
    PublishedReport {
        /// Root-sum-square.
        root_sum_square: SpanReport,
        /// With Bender's factor 1.5.
        bender: SpanReport,
        /// Modified root-sum-square.
        modified: SpanReport,
    }
    /// An interval of sizes.
    SpanReport {
        /// Lower end.
        lower: f64,
        /// Upper end.
        upper: f64,
    }
    /// A function by its derivatives at the means of the contributors.
    PropagationReport {
        /// Mean to first order: the function at the means.
        first_order_mean: f64,
        /// Standard deviation to first order.
        first_order_standard_deviation: f64,
        /// Mean to second order less that to first.
        shift_of_mean: f64,
        /// Skewness to second order.
        skewness: Option<f64> => "Option::is_none",
        /// Excess kurtosis to second order.
        excess_kurtosis: Option<f64> => "Option::is_none",
    }
    /// What a contributor or shared cause does.
    ShareReport {
        /// Its name.
        name: String,
        /// Derivative of a function by it.
        sensitivity: Option<f64> => "Option::is_none",
        /// Standard deviation that it alone gives, of a function to first order.
        standard_deviation: f64,
        /// Its share of the variance, of a function to first order.
        share: f64,
        /// Share to second order of its products with others.
        together: Option<f64> => "Option::is_none",
    }
    /// Limits of the result; one that is absent is no limit.
    LimitsReport {
        /// Lower limit.
        lower: Option<f64> => "Option::is_none",
        /// Upper limit.
        upper: Option<f64> => "Option::is_none",
        /// Whether the worst case is within them.
        worst_case_within: bool,
    }
    /// A linear stack against its limits.
    ExactReport {
        /// Probability below the lower limit.
        below: f64,
        /// How it was computed; absent without that limit.
        below_method: Option<Method> => "Option::is_none",
        /// Probability above the upper limit.
        above: f64,
        /// How it was computed; absent without that limit.
        above_method: Option<Method> => "Option::is_none",
        /// Parts per million outside.
        ppm: f64,
        /// Bound of the relative error of both.
        relative_error: f64,
        /// `Cp`; of two limits only.
        cp: Option<f64> => "Option::is_none",
        /// `Cpk`; of two limits only.
        cpk: Option<f64> => "Option::is_none",
        /// What each tolerance does to the probabilities, in the order of the contributors, when it was asked for.
        sensitivities: Vec<SensitivityReport> => "Vec::is_empty",
    }
    /// Change of the probabilities outside the limits for a change of one tolerance, its capability kept.
    SensitivityReport {
        /// Name of the contributor.
        name: String,
        /// Its tolerance: half the distance of its limits.
        tolerance: f64,
        /// Derivative of the probability below the lower limit by it.
        below: f64,
        /// Derivative of the probability above the upper limit by it.
        above: f64,
        /// Derivative of the parts per million outside by it.
        ppm: f64,
    }
    /// A density to draw.
    CurveReport {
        /// Sizes, rising in equal steps between the two that leave 1e-6 outside on their side.
        sizes: Vec<f64>,
        /// Density at each, per unit of the stack.
        densities: Vec<f64>,
    }
    /// A histogram to draw. A size at an edge belongs to the bin below it.
    HistogramReport {
        /// Edges of the bins, fixed before the trials.
        edges: Vec<f64>,
        /// Exact probability of each bin of a linear stack.
        probabilities: Vec<f64> => "Vec::is_empty",
    }
    /// What the trials say.
    TrialsReport {
        /// Seed of the first run.
        seed: u64,
        /// Trials of a run.
        trials: u64,
        /// Whether the trials have settled, when that was to end them.
        settled: Option<SettledReport> => "Option::is_none",
        /// How their points lie.
        points: PointsChoice,
        /// Independent runs, each with the next seed.
        runs: u32,
        /// Mean, with the interval of that mean.
        mean: EstimateReport,
        /// Standard deviation of the trials of the first run.
        standard_deviation: f64,
        /// Probability within the interval of the stack.
        probability: f64,
        /// Interval with equal shares of the trials of the first run beyond either end.
        interval: SpanReport,
        /// Confidence of all intervals of estimates.
        confidence: f64,
        /// Probability below the lower limit.
        below: Option<EstimateReport> => "Option::is_none",
        /// Probability above the upper limit.
        above: Option<EstimateReport> => "Option::is_none",
        /// The same by importance sampling.
        rare_below: Option<EstimateReport> => "Option::is_none",
        /// The same by importance sampling.
        rare_above: Option<EstimateReport> => "Option::is_none",
        /// Trials of the first run in each bin of the histogram, when it was asked for.
        histogram: Option<CountsReport> => "Option::is_none",
    }
    /// How an adaptive run ended. Source: JCGM 101:2008, 7.9.4.
    SettledReport {
        /// Significant digits of the standard deviation that are meant.
        digits: u8,
        /// Trials at which it stops unsettled.
        most_trials: u64,
        /// Number of sequences.
        sequences: u64,
        /// Numerical tolerance at the end.
        tolerance: f64,
        /// Whether mean, deviation and both ends of the interval are stable to it; if not, the trials ran out.
        settled: bool,
    }
    /// Trials in the bins of a histogram.
    CountsReport {
        /// Not above the first edge.
        below: u64,
        /// In each bin.
        counts: Vec<u64>,
        /// Above the last edge.
        above: u64,
    }
    /// An estimate with its interval.
    EstimateReport {
        /// The estimate.
        value: f64,
        /// Lower end of its interval.
        lower: f64,
        /// Upper end.
        upper: f64,
        /// Effective trials behind an importance sample.
        effective: Option<f64> => "Option::is_none",
    }
}

written!(StackReport, "stack-report");
