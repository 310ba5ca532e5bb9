#![doc = include_str!("../../docs/stack-document.md")]

use super::{EngineStack, Toward};
use crate::budget::document::{HalfWidth, Normal, Trapezoidal};
use crate::choice::{alternatives, choices};
use crate::job::document::document;
use crate::job::{Count, Entry, Probability, Real, Words};
use schemars::JsonSchema;
use serde::Serialize;

/// A stack in a document of its own and the same within a job: the fields stand here once.
macro_rules! stacks {
    ($($(#[$($meta:tt)*])* $field:ident: $type:ty,)+) => {
        document! {
            /// Contributors, how they add up, and what is asked of the whole.
            StackDocument {
                /// `gaugepoint-stack`
                format: Entry<Words>,
                /// Version of the format: 1.
                version: Entry<Count>,
                $($(#[$($meta)*])* $field: $type,)+
            }
            /// A stack within a job: as a stack document, without its format and version.
            StackEntry {
                $($(#[$($meta)*])* $field: $type,)+
            }
        }

        impl StackDocument {
            /// The stack without the head of the document.
            #[must_use]
            pub fn stack(&self) -> StackEntry {
                StackEntry { $($field: self.$field.clone(),)+ }
            }
        }
    };
}

stacks! {
    /// Name of the stack.
    name: Entry<Words>,
    /// For the reader of the document.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    note: Option<Entry<Words>>,
    /// Unit of the result: a label, nothing is converted; of a ready-made stack it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    unit: Option<Entry<Words>>,
    /// The contributors.
    contributors: Vec<ContributorEntry>,
    /// The stack as a formula in the symbols of the contributors. Without a formula and an engine stack it is linear.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    formula: Option<Entry<Words>>,
    /// A ready-made stack of an engine, whose contributors bear its names.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    engine: Option<EngineStack>,
    /// Causes that several contributors of a linear stack share.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    causes: Vec<CauseEntry>,
    /// Limits of the result.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    limits: Option<LimitsEntry>,
    /// Whether the change of the probabilities outside the limits with each tolerance of a linear stack is wanted; it is not unless stated.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    sensitivities: Option<bool>,
    /// Points of the density of a linear stack to draw, 2 to 10 000.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    curve: Option<Entry<Count>>,
    /// A histogram to draw: exact of a linear stack, and of the trials.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    histogram: Option<HistogramEntry>,
    /// Trials, and what they are to say.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    monte_carlo: Option<TrialsEntry>,
}

document! {
    /// One contributor.
    ContributorEntry {
        /// Name, unique in the stack.
        name: Entry<Words>,
        /// Its name in the formula; its name unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        symbol: Option<Entry<Words>>,
        /// Nominal size.
        nominal: Entry<Real>,
        /// Lower limit, as a deviation from the nominal.
        lower: Entry<Real>,
        /// Upper limit, as a deviation from the nominal.
        upper: Entry<Real>,
        /// Change of a linear stack for a change of this; 1 unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        coefficient: Option<Entry<Real>>,
        /// Independent pieces of this kind in a linear stack; 1 unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        count: Option<Entry<Count>>,
        /// Middle of a symmetric distribution, as a deviation from the nominal; 0 unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        centre: Option<Entry<Real>>,
        /// How the actual size varies.
        distribution: VariationEntry,
    }
    /// A cause that several contributors share.
    CauseEntry {
        /// Name, unique in the stack.
        name: Entry<Words>,
        /// Distribution of its error.
        distribution: VariationEntry,
        /// The contributors that it moves.
        on: Vec<EffectEntry>,
    }
    /// What a cause does to a contributor.
    EffectEntry {
        /// Name of the contributor.
        contributor: Entry<Words>,
        /// What one unit of the error adds to every piece of it; 1 unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        factor: Option<Entry<Real>>,
    }
    /// Limits of the result; one that is absent is no limit.
    LimitsEntry {
        /// Lower limit.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        lower: Option<Entry<Real>>,
        /// Upper limit.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        upper: Option<Entry<Real>>,
    }
    /// Bins of a histogram, which are fixed before the trials: either its edges or how many.
    HistogramEntry {
        /// Edges, rising, 2 to 10 001.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        edges: Vec<Entry<Real>>,
        /// Equal bins, 1 to 10 000, between four standard deviations below and above the mean.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        bins: Option<Entry<Count>>,
    }
    /// Sequences of trials until the results are stable. See [`MonteCarlo::adaptive`](crate::measurement::monte_carlo::MonteCarlo::adaptive).
    SettleEntry {
        /// Significant digits of the standard deviation that are meant, 1 or 2.
        digits: Entry<Count>,
        /// Trials at which it stops unsettled.
        most_trials: Entry<Count>,
    }
    /// Trials.
    TrialsEntry {
        /// The same seed gives the same trials.
        seed: Entry<Count>,
        /// Number of trials of a run; either this or `settle`.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        trials: Option<Entry<Count>>,
        /// When trials at random stop by themselves.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        settle: Option<SettleEntry>,
        /// Probability within the interval of the stack; 0.9973 unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        probability: Option<Entry<Probability>>,
        /// Confidence of the intervals of what is estimated; 0.95 unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        confidence: Option<Entry<Probability>>,
        /// How the points of the trials lie; at random unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        points: Option<PointsChoice>,
        /// Independent runs of points that are spread evenly, 2 to 1000, of which the interval is made; 10 unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        runs: Option<Entry<Count>>,
        /// Whether the probabilities outside the limits are sought by importance sampling; they are not unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rare: Option<bool>,
    }
    /// The capability of a process against the limits of the contributor.
    Capability {
        /// `Cp`.
        cp: Entry<Real>,
        /// `Cpk`, not above `Cp`.
        cpk: Entry<Real>,
        /// The limit that the process has moved toward.
        toward: Toward,
    }
    /// A triangle.
    Triangle {
        /// Lower end, as a deviation.
        low: Entry<Real>,
        /// Where it is highest.
        mode: Entry<Real>,
        /// Upper end.
        high: Entry<Real>,
    }
    /// A beta distribution.
    Beta {
        /// First shape.
        alpha: Entry<Real>,
        /// Second shape.
        beta: Entry<Real>,
        /// Lower end, as a deviation.
        low: Entry<Real>,
        /// Upper end.
        high: Entry<Real>,
    }
    /// A normal that was cut off at two limits.
    TruncatedNormal {
        /// Mean before it was cut off, as a deviation.
        mean: Entry<Real>,
        /// Standard deviation before it was cut off.
        standard_deviation: Entry<Real>,
        /// Lower end, as a deviation.
        low: Entry<Real>,
        /// Upper end.
        high: Entry<Real>,
    }
    /// Measured quantiles.
    Skewed {
        /// The quantiles, rising, two or more.
        quantiles: Vec<Quantile>,
    }
    /// A measured quantile.
    Quantile {
        /// Probability below it.
        probability: Entry<Real>,
        /// Deviation.
        value: Entry<Real>,
    }
    /// Measured deviations.
    Sample {
        /// The deviations.
        values: Vec<Entry<Real>>,
    }
    /// The limits of the contributor say it all.
    WithinLimits {}
}

alternatives! {
    /// How an actual size varies, in deviations from the nominal. See [`Variation`](super::Variation).
    VariationEntry {
        /// Normal, by its standard deviation.
        Normal(Normal) = "normal",
        /// Normal, by the capability of its process.
        NormalByCapability(Capability) = "normal_by_capability",
        /// Uniform about the centre.
        Rectangular(HalfWidth) = "rectangular",
        /// Uniform between the limits of the contributor.
        UniformWithinLimits(WithinLimits) = "uniform_within_limits",
        /// Triangle from its ends and its mode.
        Triangular(Triangle) = "triangular",
        /// Symmetric trapezoid about the centre.
        Trapezoidal(Trapezoidal) = "trapezoidal",
        /// U-shaped about the centre.
        Arcsine(HalfWidth) = "arcsine",
        /// Beta between two ends.
        Beta(Beta) = "beta",
        /// Normal that was cut off.
        TruncatedNormal(TruncatedNormal) = "truncated_normal",
        /// Through measured quantiles.
        Skewed(Skewed) = "skewed",
        /// Measured deviations.
        Sample(Sample) = "sample",
    }
}

choices! {
    /// How the points of trials lie.
    PointsChoice {
        /// Independent of each other.
        Random = "random",
        /// One in every layer of every draw.
        LatinHypercube = "latin_hypercube",
        /// Sobol's sequence, scrambled.
        Sobol = "sobol",
    }
}
