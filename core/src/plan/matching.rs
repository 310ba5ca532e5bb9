#![doc = include_str!("../../docs/matching.md")]

mod assignment;
mod fit;
mod ordered;
mod parts;
mod solve;

pub use parts::{Bore, Conditions, Piston, WantedClearance};

use crate::choice::choices;
use crate::error::{Error, ErrorKind};
use crate::progress::Watch;
use parts::Parts;

/// Most bores of one matching.
pub const MOST_BORES: usize = 2000;
/// Most pistons of one matching.
pub const MOST_PISTONS: usize = 4000;

choices! {
    /// What the data let the search be; the result has the proof in words.
    Case {
        /// One wanted clearance, one uncertainty, no pair ruled out, a bore for every piston: the order of size is best for both aims.
        Sorted = "sorted",
        /// The same with pistons to spare: the best choice keeps the order of size.
        OrderPreserving = "order_preserving",
        /// What a pair costs depends on the pair: threshold search, then shortest augmenting paths.
        PairDependent = "pair_dependent",
    }
}

/// A piston in its bore.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Matched {
    /// Place of the bore.
    pub bore: usize,
    /// Place of the piston.
    pub piston: usize,
    /// Clearance at 20 C, mm over the diameter.
    pub clearance_mm: f64,
    /// Its standard uncertainty.
    pub standard_uncertainty_mm: f64,
    /// Clearance less its target.
    pub deviation_mm: f64,
    /// Probability that the clearance conforms to its limits.
    pub probability_of_conformity: f64,
    /// One less that, with all its digits where it is small.
    pub probability_outside: f64,
}

/// How good a pairing is as a whole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Merit {
    /// Least probability of conformity of its pairs.
    pub worst_probability: f64,
    /// One less that, with all its digits where it is small.
    pub worst_outside: f64,
    /// Bore with that pair.
    pub worst_bore: usize,
    /// Sum of the squared deviations from the targets, mm2.
    pub sum_of_squares_mm2: f64,
    /// Does it keep the forbidden and fixed pairs, the grades and the weight band?
    pub is_allowed: bool,
}

/// The best pairing.
#[derive(Debug, Clone, PartialEq)]
pub struct Matching {
    /// The case that the data are.
    pub case: Case,
    /// What in the data proves it.
    pub because: String,
    /// One pair for each bore, in the order of the bores.
    pub pairs: Vec<Matched>,
    /// Pistons without a bore.
    pub spare: Vec<usize>,
    /// How good it is.
    pub merit: Merit,
    /// The parts as they were given: the first piston in the first bore, and so on.
    pub as_given: Merit,
    /// What the grades alone give: each bore in turn the first free piston that it may take. None where one finds none.
    pub by_grade: Option<Merit>,
    /// Largest difference of weight of the chosen pistons, g; none where one has no weight.
    pub weight_spread_g: Option<f64>,
}

/// Matches pistons to bores: the least probability of conformity is as large as it can be, and among such pairings the sum of squared
/// deviations from the targets is as small as it can be.
///
/// # Errors
/// When a number is refused ([`ErrorKind::OutOfRange`], with its place: `bores/3/size_mm`), something contradicts something, or no pairing exists:
/// then [`ErrorKind::Contradiction`] names bores with too few pistons. Never a part of a pairing.
///
/// ```
/// use gaugepoint::plan::matching::{Bore, Case, Conditions, Piston, WantedClearance, match_pistons};
/// // invented sizes
/// let bores = [86.012, 86.004, 86.009, 86.015].map(|mm| Bore::new(mm, 0.001));
/// let pistons = [85.958, 85.949, 85.961, 85.953].map(|mm| Piston::new(mm, 0.001));
/// let wanted = WantedClearance::between(0.045, 0.065).with_target(0.053);
/// let found = match_pistons(&bores, &pistons, &Conditions::wanting(wanted))?;
/// let places: Vec<usize> = found.pairs.iter().map(|pair| pair.piston).collect();
/// assert_eq!((found.case, places), (Case::Sorted, vec![0, 1, 3, 2]));
/// # Ok::<(), gaugepoint::Error>(())
/// ```
pub fn match_pistons(bores: &[Bore], pistons: &[Piston], conditions: &Conditions) -> Result<Matching, Error> {
    match_pistons_watched(bores, pistons, conditions, Watch::default())
}

/// [`match_pistons`] with a watcher, who is asked row by row of the search; see [`progress`](crate::progress).
///
/// # Errors
/// As [`match_pistons`], and [`ErrorKind::Stopped`].
pub fn match_pistons_watched(
    bores: &[Bore],
    pistons: &[Piston],
    conditions: &Conditions,
    watch: Watch<'_>,
) -> Result<Matching, Error> {
    let parts = Parts::checked(bores, pistons, conditions)?;
    let solved = solve::solve(&parts, watch)?;
    let chosen = &solved.piston_of;
    let pairs: Vec<Matched> =
        chosen.iter().enumerate().map(|(bore, piston)| parts.pair(bore, *piston)).collect();
    let of_pair = |bore: usize| pairs.get(bore).map_or(f64::NAN, |pair| pair.probability_outside);
    let merit = parts.merit(chosen, of_pair).ok_or_else(none_left)?;
    let merit_of = |chosen: &[usize]| {
        parts.merit(chosen, |bore| chosen.get(bore).map_or(f64::NAN, |piston| parts.outside(bore, *piston)))
    };
    let given: Vec<usize> = (0..bores.len()).collect();
    let as_given = merit_of(&given).ok_or_else(none_left)?;
    let by_grade = match parts.by_grade() {
        Some(chosen) if chosen == given => Some(as_given),
        Some(chosen) => merit_of(&chosen),
        None => None,
    };
    let mut is_spare = vec![true; pistons.len()];
    for piston in chosen {
        if let Some(spare) = is_spare.get_mut(*piston) {
            *spare = false;
        }
    }
    Ok(Matching {
        case: solved.case,
        because: solved.because,
        spare: is_spare.iter().enumerate().filter(|(_, spare)| **spare).map(|(piston, _)| piston).collect(),
        merit,
        as_given,
        by_grade,
        weight_spread_g: parts.weight_spread(chosen),
        pairs,
    })
}

fn none_left() -> Error {
    Error::new(ErrorKind::Contradiction, "", "there is no pairing").at("bores")
}
