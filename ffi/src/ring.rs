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
