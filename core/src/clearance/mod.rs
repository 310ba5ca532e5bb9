//! 5 CLEARANCE: bore less piston, on the bench, running, and against the reference case; rings in their bore, pins in boss and bush.

pub mod ring;

pub mod pin;

pub mod press_fit;

pub mod least;

pub mod crank;

pub mod hot;

use crate::calc::{Formula, formula};
use crate::error::Error;
use crate::growth::running_strain;
use crate::quantity::{Length, from_mm, in_mm};
use crate::size::{Condition, SizeAt20};

formula! {
    /// Clearance at 20 C.
    Bench: clearance ["mm"] = (bore, piston) => bore - piston; source "definition; diametral";
    /// Clearance with both parts at their temperature.
    Running: clearance ["mm"] = (bore, eps_bore, piston, eps_piston) => bore * (1.0 + eps_bore) - piston * (1.0 + eps_piston);
        source "free growth of both parts";
    /// The original piston that has the maker's least bench clearance in this bore, at 20 C; the strains are those of the limit's temperature.
    ReferencePiston: piston_ref ["mm"] = (bore, eps_bore_limit, c_min, eps_original_limit) => (bore * (1.0 + eps_bore_limit) - c_min) / (1.0 + eps_original_limit);
        source "reference case: the original piston at the maker's least clearance";
    /// Running clearance less that of the reference case in the same bore at the same temperatures.
    Margin: margin ["mm"] = (piston_ref, eps_original, piston, eps_piston) => piston_ref * (1.0 + eps_original) - piston * (1.0 + eps_piston);
        source "difference of two running clearances; the bore's growth cancels";
}

/// A diametral clearance: bore less piston. Negative is interference.
///
/// It is not a diameter:
///
/// ```compile_fail
/// use gaugepoint::clearance::{Clearance, bench};
/// use gaugepoint::size::SizeAt20;
/// fn wrong(bore: SizeAt20, piston: SizeAt20) -> SizeAt20 {
///     bench(bore, piston)
/// }
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Clearance(Length);

impl Clearance {
    /// Over the diameter.
    #[must_use]
    #[inline]
    pub fn diametral(self) -> Length {
        self.0
    }

    /// On each side of a centred piston.
    #[must_use]
    pub fn per_side(self) -> Length {
        self.0 / 2.0
    }
}

/// Clearance at 20 C: `bore - piston`.
///
/// ```
/// use gaugepoint::{clearance::bench, quantity::{from_mm, in_mm}, size::SizeAt20};
/// let clearance = bench(SizeAt20::declared(from_mm(86.035))?, SizeAt20::declared(from_mm(86.0))?);
/// assert!((in_mm(clearance.diametral()) - 0.035).abs() < 1e-12);
/// # Ok::<(), gaugepoint::Error>(())
/// ```
#[must_use]
#[inline]
pub fn bench(bore: SizeAt20, piston: SizeAt20) -> Clearance {
    Clearance(from_mm(Bench::evaluate([in_mm(bore.diameter()), in_mm(piston.diameter())])))
}

/// Clearance of freely growing parts: `bore (1 + eps_bore) - piston (1 + eps_piston)`, with mean coefficients from 20 C.
///
/// A running clearance below zero is common in engines that run for years, because skirts are elastic: it is not a
/// verdict. Valid for temperatures from -40 C to 450 C, free growth only.
///
/// # Errors
/// When a number is not finite or impossible; the error names the parameter.
#[inline]
pub fn running(
    bore: SizeAt20,
    bore_state: Condition,
    piston: SizeAt20,
    piston_state: Condition,
) -> Result<Clearance, Error> {
    let strain = |state: Condition, fields: [&str; 2]| {
        running_strain(fields, state.temperature.celsius(), state.expansion.per_kelvin())
    };
    let eps_bore = strain(bore_state, ["bore_temperature_c", "bore_expansion_per_k"])?;
    let eps_piston = strain(piston_state, ["piston_temperature_c", "piston_expansion_per_k"])?;
    let clearance =
        Running::evaluate([in_mm(bore.diameter()), eps_bore, in_mm(piston.diameter()), eps_piston]);
    Ok(Clearance(from_mm(clearance)))
}
