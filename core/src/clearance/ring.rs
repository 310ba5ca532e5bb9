//! Rings: end gap cold and hot, side and back clearance, groove wear, keystone grooves, conformability.
//!
#![doc = include_str!("../../docs/rings.md")]

use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::{Error, ErrorKind};
use crate::growth::running_strain;
use core::f64::consts::PI;

formula! {
    /// Gap in a bore from the gap in a gauge.
    GapInBore: gap ["mm"] = (gap_gauge, gauge, bore) => gap_gauge + (bore - gauge) * PI;
        source "a closed ring keeps its length: circumference less gap";
    /// Gap with ring and bore at their temperatures, exact.
    HotGapExact: gap_hot ["mm"] = (gap, bore, eps_bore, eps_ring) => gap * (1.0 + eps_ring) + bore * (eps_bore - eps_ring) * PI;
        source "hot circumference of the bore less the hot length of the ring";
    /// The same to the first order: without the growth of the gap itself.
    HotGapFirstOrder: gap_hot ["mm"] = (gap, bore, eps_bore, eps_ring) => gap + bore * (eps_bore - eps_ring) * PI;
        source "common practice; the exact gap to the first order";
    /// Cold gap that leaves a gap hot.
    LeastColdGap: gap ["mm"] = (gap_hot, bore, eps_bore, eps_ring) => (gap_hot - bore * (eps_bore - eps_ring) * PI) / (1.0 + eps_ring);
        source "the exact hot gap, solved for the cold one";
    /// Groove less ring.
    SideClearance: clearance ["mm"] = (groove, ring) => groove - ring; source "definition";
    /// Room behind a ring that stands at the bore.
    BackClearance: clearance ["mm"] = (bore, root, thickness) => (bore - root) / 2.0 - thickness; source "definition; per side";
    /// Groove less what it was new.
    GrooveWear: wear ["mm"] = (groove, new) => groove - new; source "definition";
    /// Width of a symmetric keystone groove at a diameter, from the size over two pins.
    KeystoneWidth: width ["mm"] = (over_pins, pin, at, tan_half, cos_half) => (at - over_pins + pin) * tan_half + pin / cos_half;
        source "plane geometry: a circle that touches both flanks of a V";
    /// Gap from a factor of the bore.
    GapByFactor: gap ["mm"] = (bore, per_mille) => bore * per_mille / 1000.0; source "common practice, no source";
    /// Largest amplitude of a harmonic that a thin ring follows by its own tension.
    Conformable: amplitude ["mm"] = (force, r, e, width, thickness, n) => 12.0 * force * r * r * r / (e * width * thickness * thickness * thickness * (n * n - 1.0) * (n * n - 1.0));
        source "thin ring in plane bending: load E I (n2 - 1)2 U / r4 per length equals that of the tension, F / r";
}

/// A published factor for the end gap: data, not a rule of this library.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GapFactor {
    /// Which ring, for which duty.
    pub duty: &'static str,
    /// Gap in per mille of the bore.
    pub per_mille: f64,
    /// Where it is printed.
    pub source: &'static str,
}

const RING_TABLE: &str = "table of a ring supplier, printed in inch per inch; common practice";
const GUIDE_TABLE: &str = "guide for small engines, printed as a share of the bore; common practice";

/// Published factors, by duty. They contradict each other: the maker's figure comes before all of them.
pub const GAP_FACTORS: [GapFactor; 15] = [
    factor("compression ring of iron, least", 3.5, RING_TABLE),
    factor("first ring, street performance", 4.5, RING_TABLE),
    factor("first ring, moderate turbo or nitrous oxide", 5.0, RING_TABLE),
    factor("first ring, drag race or oval track", 5.5, RING_TABLE),
    factor("first ring, race turbo or nitrous oxide", 6.5, RING_TABLE),
    factor("two-stroke with one ring", 4.5, GUIDE_TABLE),
    factor("two-stroke with two rings, top", 3.0, GUIDE_TABLE),
    factor("two-stroke with two rings, bottom", 3.8, GUIDE_TABLE),
    factor("four-stroke, top", 4.0, GUIDE_TABLE),
    factor("four-stroke, second", 5.0, GUIDE_TABLE),
    factor("racing two-stroke with one ring", 5.0, GUIDE_TABLE),
    factor("racing two-stroke with two rings, top", 4.5, GUIDE_TABLE),
    factor("racing two-stroke with two rings, bottom", 5.5, GUIDE_TABLE),
    factor("racing four-stroke, top", 5.0, GUIDE_TABLE),
    factor("racing four-stroke, second", 5.5, GUIDE_TABLE),
];

const fn factor(duty: &'static str, per_mille: f64, source: &'static str) -> GapFactor {
    GapFactor { duty, per_mille, source }
}

/// End gap of a hot ring.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HotGap {
    /// The gap, in mm. Below zero the ends butt, and the ring breaks the land or scores the bore.
    pub gap_mm: f64,
    /// The same to the first order, as it is worked by hand: the difference is the growth of the cold gap.
    pub first_order_mm: f64,
    /// Do the ends butt? A fault of the fit, and no error of the call.
    pub butts: bool,
}

/// End gap in a bore, in mm, of a ring whose gap was measured in a gauge or in another bore.
///
/// # Errors
/// When a number is not finite or impossible, or gauge and bore are more than 2 % apart; the error names the parameter.
pub fn gap_in_bore_mm(gap_mm: f64, gauge_mm: f64, bore_mm: f64) -> Result<f64, Error> {
    bounds::RING_GAP.check("gap_mm", gap_mm)?;
    bounds::BORE.check("gauge_mm", gauge_mm)?;
    bounds::BORE.check("bore_mm", bore_mm)?;
    if (gauge_mm - bore_mm).abs() > 0.02 * bore_mm {
        let reason = "gauge and bore are more than 2 % apart: a ring of another bore";
        return Err(Error::new(ErrorKind::Contradiction, gauge_mm.to_string(), reason).at("gauge_mm"));
    }
    Ok(GapInBore::evaluate([gap_mm, gauge_mm, bore_mm]))
}

/// End gap with bore and ring at their temperatures.
///
/// Two cases are worth a call: steady running, and a sudden load on a cold bore, where the ring is hot first.
///
/// # Errors
/// When a number is not finite or impossible; the error names the parameter.
pub fn hot_gap(
    gap_mm: f64,
    bore_mm: f64,
    bore_temperature_c: f64,
    bore_expansion_per_k: f64,
    ring_temperature_c: f64,
    ring_expansion_per_k: f64,
) -> Result<HotGap, Error> {
    bounds::RING_GAP.check("gap_mm", gap_mm)?;
    bounds::BORE.check("bore_mm", bore_mm)?;
    let eps_bore = bore_strain(bore_temperature_c, bore_expansion_per_k)?;
    let eps_ring = ring_strain(ring_temperature_c, ring_expansion_per_k)?;
    let arguments = [gap_mm, bore_mm, eps_bore, eps_ring];
    let gap = HotGapExact::evaluate(arguments);
    Ok(HotGap { gap_mm: gap, first_order_mm: HotGapFirstOrder::evaluate(arguments), butts: gap < 0.0 })
}

/// Least cold gap, in mm, that leaves `least_hot_gap_mm` with bore and ring at their temperatures.
///
/// Below zero the bore opens by more than the ring grows, and heat asks for no gap at all.
///
/// # Errors
/// When a number is not finite or impossible; the error names the parameter.
pub fn least_cold_gap_mm(
    least_hot_gap_mm: f64,
    bore_mm: f64,
    bore_temperature_c: f64,
    bore_expansion_per_k: f64,
    ring_temperature_c: f64,
    ring_expansion_per_k: f64,
) -> Result<f64, Error> {
    bounds::LEAST_HOT_GAP.check("least_hot_gap_mm", least_hot_gap_mm)?;
    bounds::BORE.check("bore_mm", bore_mm)?;
    let eps_bore = bore_strain(bore_temperature_c, bore_expansion_per_k)?;
    let eps_ring = ring_strain(ring_temperature_c, ring_expansion_per_k)?;
    // a least gap may be typed as -0
    Ok(LeastColdGap::evaluate([least_hot_gap_mm, bore_mm, eps_bore, eps_ring]) + 0.0)
}

pub(crate) fn bore_strain(temperature_c: f64, expansion_per_k: f64) -> Result<f64, Error> {
    running_strain(["bore_temperature_c", "bore_expansion_per_k"], temperature_c, expansion_per_k)
}

pub(crate) fn ring_strain(temperature_c: f64, expansion_per_k: f64) -> Result<f64, Error> {
    running_strain(["ring_temperature_c", "ring_expansion_per_k"], temperature_c, expansion_per_k)
}

/// Side clearance of a ring in its groove, in mm; negative is a ring that does not enter.
///
/// Of keystone parts both widths are taken at one diameter.
///
/// # Errors
/// When a number is not finite or impossible, or the clearance is beyond 0.5 mm: another ring.
pub fn side_clearance_mm(groove_width_mm: f64, ring_width_mm: f64) -> Result<f64, Error> {
    bounds::RING_WIDTH.check("groove_width_mm", groove_width_mm)?;
    bounds::RING_WIDTH.check("ring_width_mm", ring_width_mm)?;
    let clearance = SideClearance::evaluate([groove_width_mm, ring_width_mm]);
    bounds::RING_SIDE_CLEARANCE.check("groove_width_mm", clearance)
}

/// Room behind a ring that stands at the bore, in mm, on one side; negative is a ring that cannot go in.
///
/// With the diameter of the land in place of the bore it is how far the ring, pushed in, lies below the land.
///
/// # Errors
/// When a number is not finite or impossible, or the root of the groove does not lie below the bore.
pub fn back_clearance_mm(bore_mm: f64, groove_root_mm: f64, ring_thickness_mm: f64) -> Result<f64, Error> {
    bounds::BORE.check("bore_mm", bore_mm)?;
    bounds::PISTON.check("groove_root_mm", groove_root_mm)?;
    bounds::RING_THICKNESS.check("ring_thickness_mm", ring_thickness_mm)?;
    bounds::check_above(
        "groove_root_mm",
        bore_mm,
        groove_root_mm,
        "the root of a groove lies below the bore",
    )?;
    Ok(BackClearance::evaluate([bore_mm, groove_root_mm, ring_thickness_mm]))
}

/// Wear of a groove, in mm: its width where it is widest less its width when new.
///
/// # Errors
/// When a number is not finite or impossible, or the wear is beyond 0.5 mm.
pub fn groove_wear_mm(groove_width_mm: f64, new_groove_width_mm: f64) -> Result<f64, Error> {
    bounds::RING_WIDTH.check("groove_width_mm", groove_width_mm)?;
    bounds::RING_WIDTH.check("new_groove_width_mm", new_groove_width_mm)?;
    let wear = GrooveWear::evaluate([groove_width_mm, new_groove_width_mm]);
    bounds::RING_SIDE_CLEARANCE.check("groove_width_mm", wear)
}

/// Width in mm, at a diameter, of a keystone groove whose flanks slope alike, from the size over two pins that lie in it opposite each other.
///
/// # Errors
/// When a number is not finite or impossible, or the flanks have met at that diameter.
pub fn keystone_groove_width_mm(
    over_pins_mm: f64,
    pin_mm: f64,
    included_angle_deg: f64,
    at_diameter_mm: f64,
) -> Result<f64, Error> {
    bounds::PISTON.check("over_pins_mm", over_pins_mm)?;
    bounds::GAUGE_PIN.check("pin_mm", pin_mm)?;
    bounds::KEYSTONE_ANGLE.check("included_angle_deg", included_angle_deg)?;
    bounds::PISTON.check("at_diameter_mm", at_diameter_mm)?;
    let half = included_angle_deg * PI / 360.0;
    let width =
        KeystoneWidth::evaluate([over_pins_mm, pin_mm, at_diameter_mm, libm::tan(half), libm::cos(half)]);
    if width > 0.0 {
        return Ok(width);
    }
    let reason = "the flanks have met above this diameter: there is no groove";
    Err(Error::new(ErrorKind::Contradiction, at_diameter_mm.to_string(), reason).at("at_diameter_mm"))
}

/// End gap in mm from a factor in per mille of the bore, for example one of [`GAP_FACTORS`].
///
/// # Errors
/// When a number is not finite or impossible: 0.5 to 14 per mille.
pub fn gap_by_factor_mm(bore_mm: f64, per_mille: f64) -> Result<f64, Error> {
    bounds::BORE.check("bore_mm", bore_mm)?;
    bounds::RING_GAP_FACTOR.check("per_mille", per_mille)?;
    Ok(GapByFactor::evaluate([bore_mm, per_mille]))
}

/// Rough: largest radial amplitude, in mm, of a harmonic of the bore's shape that a ring follows by its own tension.
///
/// Order 2 is an oval, 3 and 4 are lobes; 2 to 50. A thin ring of one rectangle, even tension, no gas, no oil, no other harmonic: the
/// order of magnitude, and how fast it falls with the order.
///
/// # Errors
/// When a number is not finite or impossible, or the ring is thicker than half the bore.
pub fn conformable_amplitude_mm(
    order: i32,
    tangential_force_n: f64,
    bore_mm: f64,
    ring_thickness_mm: f64,
    ring_width_mm: f64,
    modulus_mpa: f64,
) -> Result<f64, Error> {
    let n = ORDER.check("order", f64::from(order))?;
    bounds::TANGENTIAL_FORCE.check("tangential_force_n", tangential_force_n)?;
    bounds::BORE.check("bore_mm", bore_mm)?;
    bounds::RING_THICKNESS.check("ring_thickness_mm", ring_thickness_mm)?;
    bounds::RING_WIDTH.check("ring_width_mm", ring_width_mm)?;
    bounds::MODULUS.check("modulus_mpa", modulus_mpa)?;
    let radius = (bore_mm - ring_thickness_mm) / 2.0;
    let reason = "a ring is thinner than half its bore";
    bounds::check_above("ring_thickness_mm", radius, ring_thickness_mm / 2.0, reason)?;
    Ok(Conformable::evaluate([tangential_force_n, radius, modulus_mpa, ring_width_mm, ring_thickness_mm, n]))
}

const ORDER: bounds::Bound = bounds::Bound {
    label: "order of a harmonic",
    unit: "1",
    possible: (2.0, 50.0),
    usual: (2.0, 20.0),
    reason: "order 0 is a size, 1 a shift; above 50 it is roughness",
};
