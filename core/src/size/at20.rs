//! A size at 20 C.

use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::Error;
use crate::growth::{MeanGrowth, running_strain};
use crate::quantity::{Expansion, Length, Temperature, from_mm, in_mm};

formula! {
    /// Error of a micrometer's zero, from its reading `r` of a standard of certified size.
    ZeroError: e0 ["mm"] = (r, size, eps_standard, eps_gauge) => r - size * (1.0 + eps_standard) / (1.0 + eps_gauge);
        source "definition of an indication error, with both parts at their temperature";
    /// Size at 20 C from a micrometer or caliper.
    MicrometerSize: size ["mm"] = (r, e0, eps_gauge, eps_part) => (r - e0) * (1.0 + eps_gauge) / (1.0 + eps_part);
        source "ISO 1: a size is the size at 20 C; scale and part each grow by their own law";
    /// Size of the metal under a coating of thickness `c` on each side.
    BareSize: size_bare ["mm"] = (size, c) => size - 2.0 * c; source "a diameter carries the coating twice";
    /// Distance a bore gauge was set to, on a ring.
    SetOnRing: s ["mm"] = (size, eps_ring) => size * (1.0 + eps_ring); source "definition of strain";
    /// Distance a bore gauge was set to, between the faces of a micrometer.
    SetOnMicrometer: s ["mm"] = (r, e0, eps_micrometer) => (r - e0) * (1.0 + eps_micrometer);
        source "definition of an indication error";
    /// Bore at 20 C from a comparative gauge with deviation `d`, positive when the bore is larger than the setting.
    BoreGaugeSize: size ["mm"] = (s, d, eps_set, eps_used, eps_bore) => (s * (1.0 + eps_used) / (1.0 + eps_set) + d) / (1.0 + eps_bore);
        source "comparison with a setting, gauge and bore each at their temperature";
}

/// A diameter at 20 C.
///
/// It is made from a reading and the temperatures it was taken at, or declared from a drawing; a reading alone is not
/// one:
///
/// ```compile_fail
/// use gaugepoint::quantity::parse_length;
/// use gaugepoint::size::SizeAt20;
/// let reading = parse_length("95.93 mm").unwrap();
/// let size: SizeAt20 = reading;
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct SizeAt20(Length);

impl SizeAt20 {
    /// A size stated at 20 C, for example on a drawing.
    ///
    /// # Errors
    /// When it is impossible for a bore or piston.
    #[inline]
    pub fn declared(diameter: Length) -> Result<Self, Error> {
        bounds::BORE.check("diameter", in_mm(diameter)).map(|_| SizeAt20(diameter))
    }

    /// The diameter.
    #[must_use]
    #[inline]
    pub fn diameter(self) -> Length {
        self.0
    }
}

/// Temperature and mean coefficient of expansion from 20 C of a gauge or a part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Condition {
    /// Temperature during the measurement.
    pub temperature: Temperature,
    /// Mean coefficient of linear expansion between 20 C and that temperature.
    pub expansion: Expansion,
}

impl Condition {
    /// Strain from 20 C; `fields` names the two numbers in an error.
    #[inline]
    pub(crate) fn strain(self, fields: [&str; 2]) -> Result<f64, Error> {
        let t = bounds::SHOP_TEMPERATURE.check(fields[0], self.temperature.celsius())?;
        let a = bounds::EXPANSION.check(fields[1], self.expansion.per_kelvin())?;
        Ok(MeanGrowth::evaluate([a, a, t, super::REFERENCE_TEMPERATURE_C]))
    }
}

/// Size in mm of a freely growing part at a temperature, from its size at 20 C: `L20 (1 + a (T - 20))`. Valid from -40 C to 450 C.
///
/// # Errors
/// When a number is not finite or impossible; the error names the parameter.
#[inline]
pub fn size_at_temperature_mm(size_mm: f64, temperature_c: f64, expansion_per_k: f64) -> Result<f64, Error> {
    bounds::BORE.check("size_mm", size_mm)?;
    let strain = running_strain(["temperature_c", "expansion_per_k"], temperature_c, expansion_per_k)?;
    // a part grows as a ring does
    Ok(SetOnRing::evaluate([size_mm, strain]))
}

/// Size at 20 C from the indication of a micrometer or caliper.
///
/// `L20 = (R - e0) (1 + eps_gauge) / (1 + eps_part)`, `eps = a (T - 20)`. Valid from -5 C to 60 C.
///
/// # Errors
/// When a number is not finite or impossible; the error names the parameter.
///
/// ```
/// use gaugepoint::quantity::{Expansion, Temperature, from_mm, in_mm};
/// use gaugepoint::size::{Condition, micrometer_size_at_20};
/// let gauge = Condition { temperature: Temperature::from_celsius(20.0), expansion: Expansion::from_per_kelvin(11.5e-6) };
/// let part = Condition { temperature: Temperature::from_celsius(30.0), expansion: Expansion::from_per_kelvin(21e-6) };
/// let size = micrometer_size_at_20(from_mm(86.0), from_mm(0.0), gauge, part)?;
/// assert!((in_mm(size.diameter()) - 85.98194379).abs() < 1e-8); // 86 / (1 + 21e-6 * 10), by hand
/// # Ok::<(), gaugepoint::Error>(())
/// ```
#[inline]
pub fn micrometer_size_at_20(
    reading: Length,
    zero_error: Length,
    gauge: Condition,
    part: Condition,
) -> Result<SizeAt20, Error> {
    let r = bounds::PISTON.check("reading_mm", in_mm(reading))?;
    let e0 = ZERO_ERROR.check("zero_error_mm", in_mm(zero_error))?;
    let eps_gauge = gauge.strain(["gauge_temperature_c", "gauge_expansion_per_k"])?;
    let eps_part = part.strain(["part_temperature_c", "part_expansion_per_k"])?;
    Ok(SizeAt20(from_mm(MicrometerSize::evaluate([r, e0, eps_gauge, eps_part]))))
}

/// A zero error is small or the gauge is not one.
pub(crate) const ZERO_ERROR: bounds::Bound = bounds::Bound {
    label: "zero error of a gauge",
    unit: "mm",
    possible: (-0.2, 0.2),
    usual: (-0.02, 0.02),
    reason: "a larger zero error is set right before measuring",
};
