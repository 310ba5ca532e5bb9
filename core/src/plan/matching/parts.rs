//! What is matched, checked.

use super::fit::Fit;
use super::{MOST_BORES, MOST_PISTONS, Matched, Merit};
use crate::bounds::{self, Bound};
use crate::decision::risk::Interval;
use crate::error::{Error, ErrorKind};
use std::collections::BTreeSet;

/// Standard uncertainty of a measured size: it is never nothing.
const UNCERTAINTY: Bound = Bound {
    label: "standard uncertainty of a size",
    unit: "mm",
    possible: (1e-6, 0.2),
    usual: (0.0005, 0.02),
    reason: "no shop measures to a nanometre",
};
/// An uncertainty that may be left out.
const PART_OF_UNCERTAINTY: Bound = Bound { possible: (0.0, 0.2), ..UNCERTAINTY };
/// Weights that differ by this, in g, are equal: it is rounding of the arithmetic.
const NOISE_G: f64 = 1e-9;

/// A wanted clearance at 20 C, over the diameter: at least one limit, and a target within them.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct WantedClearance {
    /// Lower limit, mm.
    pub lower_mm: Option<f64>,
    /// Upper limit, mm.
    pub upper_mm: Option<f64>,
    /// Target, mm; with both limits it may be left out and is their middle.
    pub target_mm: Option<f64>,
}

impl WantedClearance {
    /// Two limits, with the target in their middle.
    #[must_use]
    pub fn between(lower_mm: f64, upper_mm: f64) -> Self {
        WantedClearance { lower_mm: Some(lower_mm), upper_mm: Some(upper_mm), target_mm: None }
    }

    /// The same with a target of its own.
    #[must_use]
    pub fn with_target(self, target_mm: f64) -> Self {
        WantedClearance { target_mm: Some(target_mm), ..self }
    }

    fn checked(self) -> Result<Fit, Error> {
        for (field, limit) in
            [("lower_mm", self.lower_mm), ("upper_mm", self.upper_mm), ("target_mm", self.target_mm)]
        {
            limit.map(|l| bounds::CLEARANCE.check(field, l)).transpose()?;
        }
        let limits = Interval { lower: self.lower_mm, upper: self.upper_mm };
        limits.check("upper_mm")?;
        let middle = self.lower_mm.zip(self.upper_mm).map(|(low, high)| low + (high - low) / 2.0);
        let target = self.target_mm.or(middle).ok_or_else(|| {
            Error::new(ErrorKind::MissingField, "", "with one limit a target is needed").at("target_mm")
        })?;
        let fit = Fit { limits, target };
        match fit.beyond(target) <= 0.0 {
            true => Ok(fit),
            false => {
                let reason = "the target must lie within the limits";
                Err(Error::new(ErrorKind::Contradiction, target.to_string(), reason)
                    .value(target)
                    .at("target_mm"))
            }
        }
    }
}

/// A measured bore.
#[derive(Debug, Clone, PartialEq)]
pub struct Bore {
    /// Size at 20 C, mm.
    pub size_mm: f64,
    /// Standard uncertainty of the size, mm.
    pub standard_uncertainty_mm: f64,
    /// The clearance that this bore wants, where it is not that of all.
    pub wanted: Option<WantedClearance>,
    /// Its grade, where it has one.
    pub grade: Option<String>,
}

impl Bore {
    /// A bore without a grade that wants what all want.
    #[must_use]
    pub fn new(size_mm: f64, standard_uncertainty_mm: f64) -> Self {
        Bore { size_mm, standard_uncertainty_mm, wanted: None, grade: None }
    }
}

/// A measured piston.
#[derive(Debug, Clone, PartialEq)]
pub struct Piston {
    /// Size at its gauge point at 20 C, mm.
    pub size_mm: f64,
    /// Standard uncertainty of the size, mm.
    pub standard_uncertainty_mm: f64,
    /// Weight, g: of the assembly where pin, rings or rod stay with it. Needed with a weight band.
    pub weight_g: Option<f64>,
    /// Its grade, where it has one.
    pub grade: Option<String>,
}

impl Piston {
    /// A piston without grade and weight.
    #[must_use]
    pub fn new(size_mm: f64, standard_uncertainty_mm: f64) -> Self {
        Piston { size_mm, standard_uncertainty_mm, weight_g: None, grade: None }
    }
}

/// What holds for the whole set.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Conditions {
    /// The clearance that bores without their own want.
    pub wanted: Option<WantedClearance>,
    /// The part of every standard uncertainty, of bores and of pistons, that is one and the same error, mm: it cancels in a clearance.
    pub shared_uncertainty_mm: f64,
    /// Standard uncertainty beside those of the parts that all bores have in common, or all pistons, mm: it adds to every clearance.
    pub common_uncertainty_mm: f64,
    /// Pairs that may not be: place of the bore, place of the piston.
    pub forbidden: Vec<(usize, usize)>,
    /// Pairs that must be.
    pub fixed: Vec<(usize, usize)>,
    /// Largest difference of weight of the chosen pistons, g.
    pub weight_band_g: Option<f64>,
}

impl Conditions {
    /// One wanted clearance and nothing else.
    #[must_use]
    pub fn wanting(wanted: WantedClearance) -> Self {
        Conditions { wanted: Some(wanted), ..Conditions::default() }
    }
}

/// Checked parts, with what a pair costs.
pub(super) struct Parts<'a> {
    pub(super) bores: &'a [Bore],
    pub(super) pistons: &'a [Piston],
    pub(super) conditions: &'a Conditions,
    fits: Vec<Fit>,
    /// squared uncertainties that a bore and a piston bring into a clearance
    variances: (Vec<f64>, Vec<f64>),
    forbidden: BTreeSet<(usize, usize)>,
}

impl<'a> Parts<'a> {
    pub(super) fn checked(
        bores: &'a [Bore],
        pistons: &'a [Piston],
        conditions: &'a Conditions,
    ) -> Result<Self, Error> {
        count("bores", bores.len(), (1, MOST_BORES.min(pistons.len())))?;
        count("pistons", pistons.len(), (1, MOST_PISTONS))?;
        let Conditions { shared_uncertainty_mm: shared, common_uncertainty_mm: common, .. } = *conditions;
        PART_OF_UNCERTAINTY.check("shared_uncertainty_mm", shared)?;
        PART_OF_UNCERTAINTY.check("common_uncertainty_mm", common)?;
        conditions.weight_band_g.map(|b| bounds::MASS_BAND.check("weight_band_g", b)).transpose()?;
        let wanted = conditions.wanted.map(|w| w.checked().map_err(|e| e.under("wanted"))).transpose()?;
        let mut fits = Vec::with_capacity(bores.len());
        for (k, bore) in bores.iter().enumerate() {
            fits.push(checked_bore(bore, wanted, shared).map_err(|e| e.under(&format!("bores/{k}")))?);
        }
        for (k, piston) in pistons.iter().enumerate() {
            checked_piston(piston, shared, conditions.weight_band_g.is_some())
                .map_err(|e| e.under(&format!("pistons/{k}")))?;
        }
        let own = |u: f64| u * u - shared * shared;
        let of_bores = bores.iter().map(|b| own(b.standard_uncertainty_mm) + common * common).collect();
        let of_pistons = pistons.iter().map(|p| own(p.standard_uncertainty_mm)).collect();
        let forbidden = conditions.forbidden.iter().copied().collect();
        let parts = Parts { bores, pistons, conditions, fits, variances: (of_bores, of_pistons), forbidden };
        parts.check_pairs()?;
        Ok(parts)
    }

    fn check_pairs(&self) -> Result<(), Error> {
        let Conditions { forbidden, fixed, .. } = self.conditions;
        for (list, name) in [(forbidden, "forbidden"), (fixed, "fixed")] {
            for (k, (bore, piston)) in list.iter().enumerate() {
                if *bore >= self.bores.len() || *piston >= self.pistons.len() {
                    return Err(refused_pair(
                        ErrorKind::UnknownName,
                        (*bore, *piston),
                        "no such bore or piston",
                    )
                    .at(&format!("{name}/{k}")));
                }
            }
        }
        for (k, (bore, piston)) in fixed.iter().enumerate() {
            let before = fixed.iter().take(k);
            let (kind, reason) = if before.clone().any(|(b, p)| b == bore || p == piston) {
                (ErrorKind::Repeated, "a bore or a piston is fixed twice")
            } else if self.ruled_out(*bore, *piston).is_some() {
                (ErrorKind::Contradiction, "this pair is forbidden, or its grades differ")
            } else {
                continue;
            };
            return Err(refused_pair(kind, (*bore, *piston), reason).at(&format!("fixed/{k}")));
        }
        Ok(())
    }

    pub(super) fn fit(&self, bore: usize) -> Fit {
        let none = Fit { limits: Interval { lower: None, upper: None }, target: 0.0 };
        self.fits.get(bore).copied().unwrap_or(none)
    }

    pub(super) fn bore_mm(&self, bore: usize) -> f64 {
        self.bores.get(bore).map_or(f64::NAN, |b| b.size_mm)
    }

    pub(super) fn piston_mm(&self, piston: usize) -> f64 {
        self.pistons.get(piston).map_or(f64::NAN, |p| p.size_mm)
    }

    pub(super) fn weight_g(&self, piston: usize) -> Option<f64> {
        self.pistons.get(piston)?.weight_g
    }

    /// Squared standard uncertainties that a bore and a piston bring into a clearance.
    pub(super) fn variance_of_bore(&self, bore: usize) -> f64 {
        self.variances.0.get(bore).copied().unwrap_or_default()
    }

    pub(super) fn variance_of_piston(&self, piston: usize) -> f64 {
        self.variances.1.get(piston).copied().unwrap_or_default()
    }

    /// Why a pair may not be.
    pub(super) fn ruled_out(&self, bore: usize, piston: usize) -> Option<&'static str> {
        let grades = self.bores.get(bore)?.grade.as_ref().zip(self.pistons.get(piston)?.grade.as_ref());
        match grades {
            Some((ours, theirs)) if ours != theirs => Some("their grades differ"),
            _ if !self.forbidden.is_empty() && self.forbidden.contains(&(bore, piston)) => {
                Some("it is forbidden")
            }
            _ => None,
        }
    }

    fn clearance(&self, bore: usize, piston: usize) -> f64 {
        self.bore_mm(bore) - self.piston_mm(piston)
    }

    fn standard_uncertainty(&self, bore: usize, piston: usize) -> f64 {
        (self.variance_of_bore(bore) + self.variance_of_piston(piston)).sqrt()
    }

    /// Probability that the clearance of a pair lies outside its limits.
    pub(super) fn outside(&self, bore: usize, piston: usize) -> f64 {
        self.fit(bore).outside(self.clearance(bore, piston), self.standard_uncertainty(bore, piston))
    }

    pub(super) fn pair(&self, bore: usize, piston: usize) -> Matched {
        let clearance = self.clearance(bore, piston);
        let outside = self.outside(bore, piston);
        Matched {
            bore,
            piston,
            clearance_mm: clearance,
            standard_uncertainty_mm: self.standard_uncertainty(bore, piston),
            deviation_mm: self.fit(bore).deviation(clearance),
            probability_of_conformity: 1.0 - outside,
            probability_outside: outside,
        }
    }

    /// How good the pairs of each bore with its piston are, with the probability outside of each where it is needed; none of none.
    pub(super) fn merit(&self, piston_of: &[usize], outside: impl Fn(usize) -> f64) -> Option<Merit> {
        let (worst_bore, worst_outside) = self.worst(piston_of, outside)?;
        let pairs = || piston_of.iter().copied().enumerate();
        let squares = pairs().map(|(bore, piston)| {
            let deviation = self.fit(bore).deviation(self.clearance(bore, piston));
            deviation * deviation
        });
        let within = |band: f64| self.weight_spread(piston_of).is_some_and(|s| s <= band + NOISE_G);
        Some(Merit {
            worst_probability: 1.0 - worst_outside,
            worst_outside,
            worst_bore,
            sum_of_squares_mm2: squares.sum(),
            is_allowed: pairs().all(|(bore, piston)| self.ruled_out(bore, piston).is_none())
                && self.conditions.fixed.iter().all(|(bore, piston)| piston_of.get(*bore) == Some(piston))
                && self.conditions.weight_band_g.is_none_or(within),
        })
    }

    /// The first bore with the largest probability outside.
    fn worst(&self, piston_of: &[usize], outside: impl Fn(usize) -> f64) -> Option<(usize, f64)> {
        /// Standard uncertainties within the limits up to which no probability is too small for a double.
        const FAR: f64 = 36.0;
        let pairs = piston_of.iter().enumerate();
        let beyond = pairs.map(|(bore, piston)| {
            self.fit(bore).beyond(self.clearance(bore, *piston)) / self.standard_uncertainty(bore, *piston)
        });
        let beyond: Vec<f64> = beyond.collect();
        let most = beyond.iter().copied().reduce(libm::fmax)?;
        // with x standard uncertainties beyond the nearer limit it lies between Phi(x) and twice that, and 2 Phi(x - 1) < Phi(x) for x <= 0
        let least = if most > -FAR { libm::fmin(most, 0.0) - 1.0 } else { f64::NEG_INFINITY };
        let candidates = beyond.iter().enumerate().filter(|(_, beyond)| **beyond >= least);
        let candidates = candidates.map(|(bore, _)| (bore, outside(bore)));
        candidates.reduce(|worst, pair| if pair.1 > worst.1 { pair } else { worst })
    }

    /// Each bore in turn the first free piston that it may take; fixed pairs first.
    pub(super) fn by_grade(&self) -> Option<Vec<usize>> {
        let mut piston_of = vec![None; self.bores.len()];
        let mut is_free = vec![true; self.pistons.len()];
        for (bore, piston) in &self.conditions.fixed {
            *piston_of.get_mut(*bore)? = Some(*piston);
            *is_free.get_mut(*piston)? = false;
        }
        // where every piston before is taken, there is nothing to look at again
        let mut first = 0;
        for (bore, piston_of) in piston_of.iter_mut().enumerate().filter(|(_, p)| p.is_none()) {
            first += is_free.get(first..)?.iter().take_while(|free| !**free).count();
            let mut rest = is_free.iter_mut().enumerate().skip(first);
            let (piston, free) =
                rest.find(|(piston, free)| **free && self.ruled_out(bore, *piston).is_none())?;
            (*piston_of, *free) = (Some(piston), false);
        }
        piston_of.into_iter().collect()
    }

    /// Largest difference of weight.
    pub(super) fn weight_spread(&self, pistons: &[usize]) -> Option<f64> {
        let weights = pistons.iter().map(|piston| self.weight_g(*piston));
        let weights: Vec<f64> = weights.collect::<Option<_>>()?;
        let most = weights.iter().copied().reduce(libm::fmax)?;
        Some(most - weights.iter().copied().reduce(libm::fmin)?)
    }

    /// Is a weight within the band above another?
    pub(super) fn is_within(band: f64, lightest: f64, weight: f64) -> bool {
        weight >= lightest && weight - lightest <= band + NOISE_G
    }
}

fn count(field: &str, count: usize, (least, most): (usize, usize)) -> Result<(), Error> {
    if (least..=most).contains(&count) {
        return Ok(());
    }
    let reason = match field {
        "bores" if count > most && most < MOST_BORES => "there are more bores than pistons",
        _ => "too few or too many",
    };
    Err(Error::new(ErrorKind::OutOfRange, count.to_string(), reason).at(field))
}

fn refused_pair(kind: ErrorKind, (bore, piston): (usize, usize), reason: &str) -> Error {
    Error::new(kind, format!("bore {bore}, piston {piston}"), reason)
}

fn uncertainty(u: f64, shared: f64) -> Result<(), Error> {
    const FIELD: &str = "standard_uncertainty_mm";
    UNCERTAINTY.check(FIELD, u)?;
    match shared < u {
        true => Ok(()),
        false => {
            let reason = "the shared uncertainty is a part of it and must be smaller";
            Err(Error::new(ErrorKind::Contradiction, u.to_string(), reason).value(u).at(FIELD))
        }
    }
}

fn checked_bore(bore: &Bore, wanted: Option<Fit>, shared: f64) -> Result<Fit, Error> {
    bounds::BORE.check("size_mm", bore.size_mm)?;
    uncertainty(bore.standard_uncertainty_mm, shared)?;
    let own = bore.wanted.map(|w| w.checked().map_err(|e| e.under("wanted"))).transpose()?;
    own.or(wanted).ok_or_else(|| {
        Error::new(ErrorKind::MissingField, "", "neither this bore nor the set has a wanted clearance")
            .at("wanted")
    })
}

fn checked_piston(piston: &Piston, shared: f64, weighed: bool) -> Result<(), Error> {
    bounds::PISTON.check("size_mm", piston.size_mm)?;
    uncertainty(piston.standard_uncertainty_mm, shared)?;
    match piston.weight_g {
        Some(weight) => bounds::ASSEMBLY_MASS.check("weight_g", weight).map(drop),
        None if weighed => {
            Err(Error::new(ErrorKind::MissingField, "", "a weight band needs every weight").at("weight_g"))
        }
        None => Ok(()),
    }
}
