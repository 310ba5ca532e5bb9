//! The budget as it is written. `core/docs/budget.md` explains every field.

use crate::choice::{alternatives, choices};
use crate::job::document::document;
use crate::job::{Count, Entry, Probability, Real, Words};
use schemars::JsonSchema;
use serde::Serialize;

document! {
    /// One result, the model it comes from, and what is uncertain about it.
    BudgetDocument {
        /// `gaugepoint-budget`
        format: Entry<Words>,
        /// Version of the format: 1.
        version: Entry<Count>,
        /// Name of the result.
        name: Entry<Words>,
        /// For the reader of the document.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        note: Option<Entry<Words>>,
        /// Unit of the result: a label, nothing is converted.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        unit: Option<Entry<Words>>,
        /// Independent sources that inputs are made of.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        sources: Vec<SourceEntry>,
        /// Inputs of the model.
        inputs: Vec<InputEntry>,
        /// The result as a formula in the symbols of the inputs.
        model: Entry<Words>,
        /// Coverage probability.
        probability: Entry<Probability>,
        /// Degrees of freedom that enter the coverage factor; truncated unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        degrees: Option<DegreesChoice>,
        /// Whether the second order is evaluated; it is unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        second_order: Option<bool>,
        /// A Monte Carlo run, and what it says of the first order.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        monte_carlo: Option<MonteCarloEntry>,
    }
    /// An independent source of uncertainty.
    SourceEntry {
        /// Its name, unique in the budget.
        name: Entry<Words>,
        /// Distribution of its error.
        distribution: Shape,
        /// Degrees of freedom of its standard uncertainty; infinite unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        dof: Option<Entry<Real>>,
        /// Relative uncertainty of its standard uncertainty, which gives the degrees of freedom.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        reliability: Option<Entry<Real>>,
    }
    /// An input of the model: exact, or with terms, or with a distribution of its own.
    InputEntry {
        /// Its name in the model.
        symbol: Entry<Words>,
        /// Its unit: a label, nothing is converted.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        unit: Option<Entry<Words>>,
        /// Best estimate; of repeats it is their mean and left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        estimate: Option<Entry<Real>>,
        /// The sources of its error.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        terms: Vec<Term>,
        /// The distribution of its error, when that is a source of its own.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        distribution: Option<Shape>,
        /// Degrees of freedom of that source; infinite unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        dof: Option<Entry<Real>>,
        /// Relative uncertainty of its standard uncertainty, which gives the degrees of freedom.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        reliability: Option<Entry<Real>>,
    }
    /// A source in an input.
    Term {
        /// Name of the source.
        source: Entry<Words>,
        /// What one unit of the source adds to the input; 1 unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        factor: Option<Entry<Real>>,
    }
    /// A Monte Carlo run: of `trials`, or until it has settled.
    MonteCarloEntry {
        /// The same seed gives the same trials.
        seed: Entry<Count>,
        /// Number of trials.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        trials: Option<Entry<Count>>,
        /// Trials at which an adaptive run stops unsettled.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        most_trials: Option<Entry<Count>>,
        /// Significant digits of the standard uncertainty that are meant, 1 or 2; 2 unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        digits: Option<Entry<Count>>,
        /// Interval that is held against the first order, and that an adaptive run settles; symmetric unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        coverage: Option<CoverageChoice>,
    }
    /// A standard deviation.
    Normal {
        /// Standard deviation.
        standard_deviation: Entry<Real>,
    }
    /// An expanded uncertainty with its coverage factor.
    NormalExpanded {
        /// Expanded uncertainty.
        expanded: Entry<Real>,
        /// Coverage factor.
        coverage_factor: Entry<Real>,
    }
    /// An expanded uncertainty with its coverage probability.
    NormalAtCoverage {
        /// Expanded uncertainty.
        expanded: Entry<Real>,
        /// Coverage probability.
        probability: Entry<Probability>,
    }
    /// A scaled Student's t.
    StudentT {
        /// Factor on the standard t variable.
        scale: Entry<Real>,
        /// Degrees of freedom.
        dof: Entry<Real>,
    }
    /// An expanded uncertainty with its coverage probability and degrees of freedom.
    StudentTAtCoverage {
        /// Expanded uncertainty.
        expanded: Entry<Real>,
        /// Coverage probability.
        probability: Entry<Probability>,
        /// Degrees of freedom.
        dof: Entry<Real>,
    }
    /// Limits on both sides of the estimate.
    HalfWidth {
        /// Half of the distance between the limits.
        half_width: Entry<Real>,
    }
    /// A symmetric trapezoid.
    Trapezoidal {
        /// Half-width of the base.
        half_width: Entry<Real>,
        /// Width of the top over that of the base, 0 to 1.
        beta: Entry<Real>,
    }
    /// The sum of two rectangular errors.
    SumOfRectangular {
        /// Half-width of the one.
        half_width_1: Entry<Real>,
        /// Half-width of the other.
        half_width_2: Entry<Real>,
    }
    /// Limits that are themselves in doubt.
    CurvilinearTrapezoid {
        /// Half-width at its best estimate.
        half_width: Entry<Real>,
        /// Largest error of the half-width.
        half_width_error: Entry<Real>,
    }
    /// Repeated readings; their mean is used.
    Repeats {
        /// The readings, at least two.
        values: Vec<Entry<Real>>,
    }
    /// The mean of readings of which the standard deviation is known from many.
    Pooled {
        /// Standard deviation of one reading.
        standard_deviation: Entry<Real>,
        /// Its degrees of freedom.
        dof: Entry<Real>,
        /// Number of readings in the mean.
        count: Entry<Count>,
    }
}

alternatives! {
    /// What is known of an error. See [`Distribution`](crate::measurement::distribution::Distribution).
    Shape {
        /// Normal, by its standard deviation.
        Normal(Normal) = "normal",
        /// Normal, from a certificate with a coverage factor.
        NormalExpanded(NormalExpanded) = "normal_expanded",
        /// Normal, from an expanded uncertainty at a coverage probability.
        NormalAtCoverage(NormalAtCoverage) = "normal_at_coverage",
        /// Scaled Student's t.
        StudentT(StudentT) = "student_t",
        /// Student's t, from an expanded uncertainty at a coverage probability.
        StudentTAtCoverage(StudentTAtCoverage) = "student_t_at_coverage",
        /// Uniform between two limits.
        Rectangular(HalfWidth) = "rectangular",
        /// Symmetric triangle between two limits.
        Triangular(HalfWidth) = "triangular",
        /// Symmetric trapezoid between two limits.
        Trapezoidal(Trapezoidal) = "trapezoidal",
        /// The sum of two rectangular errors: a trapezoid.
        SumOfRectangular(SumOfRectangular) = "sum_of_rectangular",
        /// Uniform between limits that are themselves in doubt.
        CurvilinearTrapezoid(CurvilinearTrapezoid) = "curvilinear_trapezoid",
        /// A quantity that swings as a sine between two limits.
        Arcsine(HalfWidth) = "arcsine",
        /// Repeated readings.
        Repeats(Repeats) = "repeats",
        /// A pooled standard deviation.
        Pooled(Pooled) = "pooled",
    }
}

choices! {
    /// Degrees of freedom that enter the coverage factor.
    DegreesChoice {
        /// Those of Welch-Satterthwaite as they are.
        AsComputed = "as_computed",
        /// Truncated to the next lower integer.
        Truncated = "truncated",
    }
    /// Which coverage interval.
    CoverageChoice {
        /// Equal probabilities outside either end.
        Symmetric = "symmetric",
        /// The shortest.
        Shortest = "shortest",
    }
}
