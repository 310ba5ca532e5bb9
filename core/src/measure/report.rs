//! The report on a measurement, as data. Names that end in `_mm` hold a number in millimetres; what is absent was not computed.

use super::document::Treatment;
use crate::calc::Working;
use crate::job::Warning;
use crate::report::{BudgetLine, JobName, report, written};
use schemars::JsonSchema;
use serde::Serialize;

/// Format name of the report on a measurement.
pub const REPORT_FORMAT: &str = "gaugepoint-measurement-report";
/// Version of the format of the report.
pub const REPORT_VERSION: u32 = 1;

report! {
    /// Every reading and difference with its uncertainty, by three ways side by side.
    MeasurementReport {
        /// `gaugepoint-measurement-report`
        format: &'static str,
        /// Version of the format.
        version: u32,
        /// Version of the library.
        library: &'static str,
        /// The measurement as named in the document.
        measurement: JobName,
        /// Temperature that sizes are given at.
        reference_temperature_c: f64,
        /// Coverage probability of the expanded uncertainties and the intervals.
        probability: f64,
        /// State of the gauges that have a calibration, the micrometers, calipers and bore gauges first.
        gauges: Vec<GaugeUsed>,
        /// The readings, in the order of the document.
        readings: Vec<ReadingReport>,
        /// The differences, in the order of the document.
        differences: Vec<DifferenceReport>,
        /// What is odd.
        warnings: Vec<Warning>,
        /// The working of every number of the first order, when it was asked for.
        working: Option<Working> => "Option::is_none",
    }
    /// State of a gauge.
    GaugeUsed {
        /// Name.
        name: String,
        /// `in date` or `overdue`, on the day of the measurement.
        calibration: &'static str,
        /// The row of a published table that stands for its data sheet, with the source of it.
        preset: Option<String> => "Option::is_none",
    }
    /// One reading.
    ReadingReport {
        /// Its name.
        name: String,
        /// Name of its gauge.
        gauge: String,
        /// `outside`, `inside`, `transferred`, `clearance` or `depth`.
        what: &'static str,
        /// What was read, as typed.
        readings: Vec<String>,
        /// Its value and uncertainty.
        result: Propagated,
        /// What a reader must know of the way it was read.
        notes: Vec<String> => "Vec::is_empty",
    }
    /// One difference.
    DifferenceReport {
        /// Its name.
        name: String,
        /// Name of the reading it is taken from.
        larger: String,
        /// Name of the reading that is taken off.
        smaller: String,
        /// Its value and uncertainty.
        result: Propagated,
    }
    /// A value with its uncertainty: the linear budget, and what the second order and the trials say to it.
    Propagated {
        /// Best estimate, with the effects that are corrected taken off.
        value_mm: f64,
        /// Standard uncertainty of the linear budget.
        standard_uncertainty_mm: f64,
        /// Its effective degrees of freedom, when they are not infinite.
        dof: Option<f64> => "Option::is_none",
        /// Coverage factor at the coverage probability.
        coverage_factor: f64,
        /// Expanded uncertainty.
        expanded_uncertainty_mm: f64,
        /// Sources, largest share first.
        budget: Vec<BudgetLine>,
        /// Effects whose mean is not zero.
        effects: Vec<EffectReport> => "Vec::is_empty",
        /// Sum of the effects that are stated and not corrected: by so much the value is too large.
        stated_bias_mm: Option<f64> => "Option::is_none",
        /// To second order.
        second_order: SecondOrderReport,
        /// By trials, when they were asked for.
        monte_carlo: Option<MonteCarloReport> => "Option::is_none",
    }
    /// An effect whose mean is not zero.
    EffectReport {
        /// Its source in words.
        source: String,
        /// Its mean in the value: indicated less true.
        mean_mm: f64,
        /// Whether the value is corrected by it.
        treatment: Treatment,
        /// Field of the document it comes from.
        path: String,
    }
    /// A value to second order. It takes every source for normal.
    SecondOrderReport {
        /// Value of the model with its second-order shift.
        mean_mm: f64,
        /// That shift.
        shift_of_mean_mm: f64,
        /// Standard uncertainty; absent where the terms leave a variance below zero.
        standard_uncertainty_mm: Option<f64> => "Option::is_none",
    }
    /// A value by trials.
    MonteCarloReport {
        /// Seed.
        seed: u32,
        /// Number of trials.
        trials: u32,
        /// Mean of the trials.
        mean_mm: f64,
        /// Their standard deviation.
        standard_deviation_mm: f64,
        /// Interval with equal probabilities outside either end.
        symmetric: IntervalReport,
        /// The shortest interval.
        shortest: IntervalReport,
        /// Whether the linear budget stands, by JCGM 101:2008, clause 8.
        validation: ValidationReport,
    }
    /// An interval.
    IntervalReport {
        /// Lower end.
        lower_mm: f64,
        /// Upper end.
        upper_mm: f64,
    }
    /// The linear budget against the symmetric interval of the trials.
    ValidationReport {
        /// Difference of the lower ends.
        lower_difference_mm: f64,
        /// Difference of the upper ends.
        upper_difference_mm: f64,
        /// Numerical tolerance.
        tolerance_mm: f64,
        /// Whether both differences are within it.
        validated: bool,
    }
}

written!(MeasurementReport, "measurement-report");

impl MeasurementReport {
    /// The difference of that name.
    #[must_use]
    pub fn difference(&self, name: &str) -> Option<&DifferenceReport> {
        self.differences.iter().find(|d| d.name == name)
    }

    /// The reading of that name.
    #[must_use]
    pub fn reading(&self, name: &str) -> Option<&ReadingReport> {
        self.readings.iter().find(|r| r.name == name)
    }
}

impl Propagated {
    /// The contribution of the source of that name, in mm; nothing when it has no part in the value.
    #[must_use]
    pub fn contribution(&self, source: &str) -> Option<f64> {
        self.budget.iter().find(|line| line.source == source).map(|line| line.contribution_mm)
    }
}
