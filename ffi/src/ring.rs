//! Rings.

use crate::error::{Failure, GaugepointError};
use crate::guard::{cleared, kept, status};
use crate::record::{Record, record};
use crate::status::terminated;
use core::ffi::c_char;
use gaugepoint::ErrorKind;
use gaugepoint::clearance::ring::{self, GAP_FACTORS, HotGap};

/// End gap of a hot ring; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointRingHotGap {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when the ends butt, else 0: a fault of the fit, and no error of the call.
    pub butts: i32,
    /// 0.
    pub reserved: i32,
    /// The gap; below zero the ends butt.
    pub gap_mm: f64,
    /// The same to the first order, as it is worked by hand: the difference is the growth of the cold gap.
    pub first_order_mm: f64,
}

// SAFETY: a size, two int32_t, doubles
unsafe impl Record for GaugepointRingHotGap {
    const SMALLEST: usize = 32;
}

/// A published factor for the end gap: data, not a rule of this library. A plain structure; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointRingGapFactor {
    /// Gap in per mille of the bore.
    pub per_mille: f64,
    /// Which ring, for which duty.
    pub duty: *const c_char,
    /// Where it is printed.
    pub source: *const c_char,
}

/// End gap in a bore, in mm, of a ring whose gap was measured in a gauge or in another bore: gap + pi (bore - gauge).
///
/// Refused when gauge and bore are more than 2 % apart.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_gap_in_bore_mm(
    gap_mm: f64,
    gauge_mm: f64,
    bore_mm: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || Ok(ring::gap_in_bore_mm(gap_mm, gauge_mm, bore_mm)?))
    }
}

/// End gap with bore and ring at their temperatures, -40 C to 450 C, from mean coefficients from 20 C.
///
/// gap (1 + eps_ring) + pi bore (eps_bore - eps_ring). Two cases are worth a call: steady running, and a sudden load on a
/// cold bore, where the ring is hot first.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_hot_gap(
    gap_mm: f64,
    bore_mm: f64,
    bore_temperature_c: f64,
    bore_expansion_per_k: f64,
    ring_temperature_c: f64,
    ring_expansion_per_k: f64,
    out: *mut GaugepointRingHotGap,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(ring::hot_gap(
                gap_mm,
                bore_mm,
                bore_temperature_c,
                bore_expansion_per_k,
                ring_temperature_c,
                ring_expansion_per_k,
            )?
            .into())
        })
    }
}

/// Least cold gap, in mm, that leaves `least_hot_gap_mm` with bore and ring at their temperatures.
///
/// Below zero the bore opens by more than the ring grows, and heat asks for no gap at all.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_least_cold_gap_mm(
    least_hot_gap_mm: f64,
    bore_mm: f64,
    bore_temperature_c: f64,
    bore_expansion_per_k: f64,
    ring_temperature_c: f64,
    ring_expansion_per_k: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(ring::least_cold_gap_mm(
                least_hot_gap_mm,
                bore_mm,
                bore_temperature_c,
                bore_expansion_per_k,
                ring_temperature_c,
                ring_expansion_per_k,
            )?)
        })
    }
}

/// Side clearance of a ring in its groove, in mm; negative is a ring that does not enter. Beyond 0.5 mm it is another ring.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_side_clearance_mm(
    groove_width_mm: f64,
    ring_width_mm: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(ring::side_clearance_mm(groove_width_mm, ring_width_mm)?)
        })
    }
}

/// Room behind a ring that stands at the bore, in mm, on one side: (bore - root) / 2 - thickness.
///
/// With the diameter of the land in place of the bore it is how far the ring, pushed in, lies below the land.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_back_clearance_mm(
    bore_mm: f64,
    groove_root_mm: f64,
    ring_thickness_mm: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(ring::back_clearance_mm(bore_mm, groove_root_mm, ring_thickness_mm)?)
        })
    }
}

/// Wear of a groove, in mm: its width where it is widest less its width when new.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_groove_wear_mm(
    groove_width_mm: f64,
    new_groove_width_mm: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(ring::groove_wear_mm(groove_width_mm, new_groove_width_mm)?)
        })
    }
}

/// Width in mm, at a diameter, of a keystone groove whose flanks slope alike, from the size over two pins that lie in it
/// opposite each other.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_keystone_groove_width_mm(
    over_pins_mm: f64,
    pin_mm: f64,
    included_angle_deg: f64,
    at_diameter_mm: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(ring::keystone_groove_width_mm(over_pins_mm, pin_mm, included_angle_deg, at_diameter_mm)?)
        })
    }
}

/// End gap in mm from a factor in per mille of the bore (never "per inch"), 0.5 to 14.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_gap_by_factor_mm(
    bore_mm: f64,
    per_mille: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || Ok(ring::gap_by_factor_mm(bore_mm, per_mille)?))
    }
}

/// Rough: largest radial amplitude, in mm, of a harmonic of the bore's shape that a ring follows by its own tension.
///
/// Order 2 is an oval, 3 and 4 are lobes; 2 to 50. A thin ring, even tension, no gas, no oil: the order of magnitude.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_conformable_amplitude_mm(
    order: i32,
    tangential_force_n: f64,
    bore_mm: f64,
    ring_thickness_mm: f64,
    ring_width_mm: f64,
    modulus_mpa: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(ring::conformable_amplitude_mm(
                order,
                tangential_force_n,
                bore_mm,
                ring_thickness_mm,
                ring_width_mm,
                modulus_mpa,
            )?)
        })
    }
}

/// The published factors one after the other: call with 0, 1, 2 ... until GAUGEPOINT_STATUS_OUT_OF_RANGE. They contradict
/// each other: the maker's figure comes before all of them.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_gap_factor_at(
    index: i32,
    out: *mut GaugepointRingGapFactor,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, kept("out", out), || factor_at(index)) }
}

type Text = [u8; 80];

#[expect(clippy::indexing_slicing, reason = "evaluated by the compiler")]
const fn texts() -> [(Text, Text); GAP_FACTORS.len()] {
    let (mut out, mut k) = ([([0; 80], [0; 80]); GAP_FACTORS.len()], 0);
    while k < GAP_FACTORS.len() {
        out[k] = (terminated(GAP_FACTORS[k].duty), terminated(GAP_FACTORS[k].source));
        k += 1;
    }
    out
}

static TEXTS: [(Text, Text); GAP_FACTORS.len()] = texts();

fn factor_at(index: i32) -> Result<GaugepointRingGapFactor, Failure> {
    let found = usize::try_from(index).ok().and_then(|k| Some((GAP_FACTORS.get(k)?, TEXTS.get(k)?)));
    let (factor, (duty, source)) =
        found.ok_or_else(|| Failure::refused(ErrorKind::OutOfRange, "index", "there are no more"))?;
    Ok(GaugepointRingGapFactor {
        per_mille: factor.per_mille,
        duty: duty.as_ptr().cast(),
        source: source.as_ptr().cast(),
    })
}

impl From<HotGap> for GaugepointRingHotGap {
    fn from(g: HotGap) -> Self {
        GaugepointRingHotGap {
            struct_size: size_of::<Self>(),
            butts: g.butts.into(),
            reserved: 0,
            gap_mm: g.gap_mm,
            first_order_mm: g.first_order_mm,
        }
    }
}
