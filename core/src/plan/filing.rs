//! End gaps of rings: how much is filed off, or whether another ring is needed.
//!
#![doc = include_str!("../../docs/filing.md")]

use crate::bounds;
use crate::calc::{Formula, formula};
use crate::choice::choices;
use crate::clearance::ring::{HotGapExact, bore_strain, gap_in_bore_mm, least_cold_gap_mm, ring_strain};
use crate::error::{Error, ErrorKind};
use crate::report::RING_FILING;
use crate::shape::least::larger;
use core::f64::consts::PI;

formula! {
    /// Gap that a ring is filed to.
    Target: target ["mm"] = (least, allowance) => least + allowance; source "definition";
    /// What is filed off a ring.
    FileOff: filed ["mm"] = (target, gap) => target - gap; source "definition: a gap opens by what is taken off the ends";
    /// The same at each of two ends.
    EachEnd: filed ["mm"] = (filed) => filed / 2.0; source "definition";
    /// Standard uncertainty of a gap that was read in a gauge or in another bore.
    GapUncertainty: u ["mm"] = (u_gap, u_gauge, u_bore) => (u_gap * u_gap + (u_gauge * u_gauge + u_bore * u_bore) * PI * PI).sqrt();
        source "JCGM 100:2008, 5.1.2, of gap_gauge + pi (bore - gauge)";
}

choices! {
    /// What is done to a ring.
    Outcome {
        /// It has its gap.
        Fits = "fits",
        /// It is filed.
        File = "file",
        /// Its gap is too wide: another ring.
        TooWide = "too_wide",
    }
}

/// An end gap as it was read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GapReading {
    /// The gap, in mm.
    pub gap_mm: f64,
    /// Size of the ring gauge or bore that it was read in, in mm; none for the bore that the ring runs in.
    pub gauge_mm: Option<f64>,
    /// Standard uncertainty of the gap, in mm; 0 leaves it out.
    pub gap_uncertainty_mm: f64,
    /// The same of the size of the gauge; not used without one.
    pub gauge_uncertainty_mm: f64,
    /// The same of the size of the bore that the ring runs in; not used without a gauge.
    pub bore_uncertainty_mm: f64,
}

impl GapReading {
    /// A gap that was read in the bore that the ring runs in, its uncertainty left out.
    #[must_use]
    pub fn in_its_bore(gap_mm: f64) -> Self {
        GapReading {
            gap_mm,
            gauge_mm: None,
            gap_uncertainty_mm: 0.0,
            gauge_uncertainty_mm: 0.0,
            bore_uncertainty_mm: 0.0,
        }
    }
}

/// A gap that is to be left when ring and bore are hot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HotRing {
    /// The least gap then, in mm; 0 lets the ends touch.
    pub least_hot_gap_mm: f64,
    /// Temperature of the bore at the ring, in C.
    pub bore_temperature_c: f64,
    /// Its coefficient of expansion.
    pub bore_expansion_per_k: f64,
    /// Temperature of the ring, in C.
    pub ring_temperature_c: f64,
    /// Its coefficient of expansion.
    pub ring_expansion_per_k: f64,
}

/// The gap that is wanted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WantedGap {
    /// The least gap at 20 C, in mm; none where heat alone says it.
    pub least_mm: Option<f64>,
    /// The widest gap at 20 C, in mm; none when it is not limited.
    pub most_mm: Option<f64>,
    /// How far above the least gap a ring is filed, in mm.
    pub allowance_mm: f64,
    /// What heat asks for; none leaves it out.
    pub hot: Option<HotRing>,
}

/// What is filed off a ring.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Filing {
    /// What is done.
    pub outcome: Outcome,
    /// Gap in the bore that the ring runs in, in mm; below zero the ends overlap.
    pub gap_mm: f64,
    /// Its standard uncertainty, in mm.
    pub standard_uncertainty_mm: f64,
    /// The least gap in force, in mm: the wanted one or that of heat, whichever is larger.
    pub least_mm: f64,
    /// The gap that a short ring is filed to, in mm.
    pub target_mm: f64,
    /// What is filed off in all, in mm; 0 unless the ring is filed.
    pub file_off_mm: f64,
    /// What is filed off each end, in mm.
    pub each_end_mm: f64,
    /// Gap of the ring as it is then, hot, in mm; none when no temperatures were given.
    pub hot_gap_mm: Option<f64>,
    /// What to take care of.
    pub caution: &'static str,
}

/// Gaps nearer than this are the same, in mm: rounding of the arithmetic, not metal.
const NOISE_MM: f64 = 1e-9;

/// What is filed off a ring for the bore that it runs in, in mm.
///
/// # Errors
/// When a number is not finite or impossible, or gauge and bore are more than 2 % apart; [`ErrorKind::MissingField`] when neither a least gap nor
/// heat is given; [`ErrorKind::OutOfOrder`] of `most_mm` when the target lies above it.
pub fn filing(reading: &GapReading, bore_mm: f64, wanted: &WantedGap) -> Result<Filing, Error> {
    bounds::BORE.check("bore_mm", bore_mm)?;
    let gap_mm = gap_in_bore_mm(reading.gap_mm, reading.gauge_mm.unwrap_or(bore_mm), bore_mm)?;
    let standard_uncertainty_mm = uncertainty(reading)?;
    let least_mm = wanted.least(bore_mm)?;
    let target_mm = wanted.target(least_mm)?;
    let outcome = Outcome::of(gap_mm, least_mm, wanted.most_mm);
    let (file_off_mm, gap_then) = match outcome {
        Outcome::File => (FileOff::evaluate([target_mm, gap_mm]), target_mm),
        Outcome::Fits | Outcome::TooWide => (0.0, gap_mm),
    };
    Ok(Filing {
        outcome,
        gap_mm,
        standard_uncertainty_mm,
        least_mm,
        target_mm,
        file_off_mm,
        each_end_mm: EachEnd::evaluate([file_off_mm]),
        hot_gap_mm: wanted.hot.map(|hot| hot.gap(gap_then, bore_mm)).transpose()?,
        caution: RING_FILING,
    })
}

fn uncertainty(reading: &GapReading) -> Result<f64, Error> {
    let gap = bounds::GAP_UNCERTAINTY.check("gap_uncertainty_mm", reading.gap_uncertainty_mm)?;
    let gauge = bounds::SIZE_DEVIATION.check("gauge_uncertainty_mm", reading.gauge_uncertainty_mm)?;
    let bore = bounds::SIZE_DEVIATION.check("bore_uncertainty_mm", reading.bore_uncertainty_mm)?;
    // in its own bore the size cancels, whatever it is
    Ok(reading.gauge_mm.map_or(gap, |_| GapUncertainty::evaluate([gap, gauge, bore])))
}

impl Outcome {
    /// What is done to a ring with a gap, by its limits.
    pub(crate) fn of(gap_mm: f64, least_mm: f64, most_mm: Option<f64>) -> Self {
        match gap_mm {
            gap if gap < least_mm - NOISE_MM => Outcome::File,
            gap if most_mm.is_some_and(|most| gap > most + NOISE_MM) => Outcome::TooWide,
            _ => Outcome::Fits,
        }
    }
}

impl WantedGap {
    fn least(&self, bore_mm: f64) -> Result<f64, Error> {
        let wanted = self.least_mm.map(|least| bounds::RING_GAP.check("least_mm", least)).transpose()?;
        let hot = self.hot.map(|hot| hot.least_cold_gap(bore_mm)).transpose()?;
        match (wanted, hot) {
            // heat that opens the gap asks for none
            (wanted, Some(hot)) => Ok(larger(wanted.unwrap_or(0.0), hot)),
            (Some(wanted), None) => Ok(wanted),
            (None, None) => {
                let reason = "a least gap, or what heat asks for, is needed";
                Err(Error::new(ErrorKind::MissingField, "", reason).at("least_mm"))
            }
        }
    }

    fn target(&self, least_mm: f64) -> Result<f64, Error> {
        let allowance = bounds::GAP_ALLOWANCE.check("allowance_mm", self.allowance_mm)?;
        let target = Target::evaluate([least_mm, allowance]);
        let Some(most) = self.most_mm else { return Ok(target) };
        bounds::RING_GAP.check("most_mm", most)?;
        if target > most + NOISE_MM {
            let reason = format!("a ring would be filed to {target:.4} mm, above the widest gap");
            return Err(Error::new(ErrorKind::OutOfOrder, most.to_string(), reason)
                .value(most)
                .at("most_mm"));
        }
        Ok(target)
    }
}

impl HotRing {
    fn least_cold_gap(&self, bore_mm: f64) -> Result<f64, Error> {
        least_cold_gap_mm(
            self.least_hot_gap_mm,
            bore_mm,
            self.bore_temperature_c,
            self.bore_expansion_per_k,
            self.ring_temperature_c,
            self.ring_expansion_per_k,
        )
        .map_err(|error| error.under("hot"))
    }

    fn gap(&self, gap_mm: f64, bore_mm: f64) -> Result<f64, Error> {
        let eps_bore = bore_strain(self.bore_temperature_c, self.bore_expansion_per_k)?;
        let eps_ring = ring_strain(self.ring_temperature_c, self.ring_expansion_per_k)?;
        Ok(HotGapExact::evaluate([gap_mm, bore_mm, eps_bore, eps_ring]))
    }
}
