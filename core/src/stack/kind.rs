//! Variations by a kind and its numbers, for hosts that have no constructors.

use super::contributor::{Toward, Variation};
use crate::choice::choices;
use crate::error::{Error, ErrorKind};
use crate::measurement::distribution::Distribution;

choices! {
    /// Kinds of [`Variation`], with the numbers of each in order. Deviations from the nominal.
    VariationKind {
        /// Centre, standard deviation.
        Normal = "normal",
        /// Lower and upper limit, Cp, Cpk: a normal whose mean has moved toward the lower limit.
        CapabilityTowardLower = "capability_toward_lower",
        /// Lower and upper limit, Cp, Cpk: a normal whose mean has moved toward the upper limit.
        CapabilityTowardUpper = "capability_toward_upper",
        /// Mean and standard deviation before sorting, lower and upper limit of the sorting.
        TruncatedNormal = "truncated_normal",
        /// Centre, half-width.
        Rectangular = "rectangular",
        /// Lower end, mode, upper end.
        Triangular = "triangular",
        /// Centre, half-width of the base, width of the top over that of the base.
        Trapezoidal = "trapezoidal",
        /// Centre, half-width.
        Arcsine = "arcsine",
        /// Two shapes, lower end, upper end.
        Beta = "beta",
        /// Probability and value in turn, of two quantiles or more.
        Skewed = "skewed",
        /// The measured values.
        Sample = "sample",
    }
}

impl Variation {
    /// A variation of a kind from its numbers.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] or [`ErrorKind::Contradiction`] for too few or too many numbers; as the constructor of the kind.
    pub fn of_kind(kind: VariationKind, numbers: &[f64]) -> Result<Self, Error> {
        use VariationKind as K;
        match (kind, numbers) {
            (K::Normal, &[centre, sd]) => Self::about(centre, Distribution::normal(sd)?),
            (K::CapabilityTowardLower, &[lower, upper, cp, cpk]) => {
                Self::normal_by_capability((lower, upper), cp, cpk, Toward::Lower)
            }
            (K::CapabilityTowardUpper, &[lower, upper, cp, cpk]) => {
                Self::normal_by_capability((lower, upper), cp, cpk, Toward::Upper)
            }
            (K::TruncatedNormal, &[mean, sd, lower, upper]) => {
                Self::truncated_normal(mean, sd, (lower, upper))
            }
            (K::Rectangular, &[centre, half]) => Self::about(centre, Distribution::rectangular(half)?),
            (K::Triangular, &[low, mode, high]) => Self::triangular((low, high), mode),
            (K::Trapezoidal, &[centre, half, beta]) => {
                Self::about(centre, Distribution::trapezoidal(half, beta)?)
            }
            (K::Arcsine, &[centre, half]) => Self::about(centre, Distribution::arcsine(half)?),
            (K::Beta, &[alpha, beta, low, high]) => Self::beta(alpha, beta, (low, high)),
            (K::Skewed, pairs) if pairs.len() % 2 == 0 => {
                let pairs: Vec<(f64, f64)> =
                    pairs.chunks_exact(2).filter_map(|c| Some((*c.first()?, *c.last()?))).collect();
                Self::skewed(&pairs)
            }
            (K::Sample, values) => Self::sample(values),
            _ => Err(wrong_count(kind.word(), numbers.len())),
        }
    }
}

/// The distribution of a shared cause, about zero: normal (standard deviation), rectangular, triangular and arcsine (half-width) or
/// trapezoidal (half-width of the base, width of the top over that of the base).
///
/// # Errors
/// [`ErrorKind::UnknownChoice`] for another kind; [`ErrorKind::MissingField`] or [`ErrorKind::Contradiction`] for too few or too many numbers; as the
/// constructor of the distribution.
pub fn cause_of_kind(kind: VariationKind, numbers: &[f64]) -> Result<Distribution, Error> {
    use VariationKind as K;
    match (kind, numbers) {
        (K::Normal, &[sd]) => Distribution::normal(sd),
        (K::Rectangular, &[half]) => Distribution::rectangular(half),
        (K::Triangular, &[half]) => Distribution::triangular(half),
        (K::Trapezoidal, &[half, beta]) => Distribution::trapezoidal(half, beta),
        (K::Arcsine, &[half]) => Distribution::arcsine(half),
        (K::Normal | K::Rectangular | K::Triangular | K::Trapezoidal | K::Arcsine, _) => {
            Err(wrong_count(kind.word(), numbers.len()))
        }
        _ => {
            let reason = "a shared cause is symmetric about zero: normal, rectangular, triangular, trapezoidal or arcsine";
            Err(Error::new(ErrorKind::UnknownChoice, kind.word(), reason).at("kind"))
        }
    }
}

fn wrong_count(kind: &str, count: usize) -> Error {
    let error_kind = if count == 0 { ErrorKind::MissingField } else { ErrorKind::Contradiction };
    Error::new(error_kind, count.to_string(), format!("not the number of numbers that {kind} takes"))
        .at("numbers")
}
