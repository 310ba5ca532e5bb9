//! A liner pressed into its block.

use crate::array::given;
use crate::caution::caution;
use crate::error::GaugepointError;
use crate::guard::status;
use crate::record::{Record, record};
use crate::text::flag;
use core::ffi::c_char;
use gaugepoint::growth::liner::{self, LinerFit, LinerParts};

/// A liner and its block; sizes are diameters at 20 C. A plain structure; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointLinerParts {
    /// Bore of the liner.
    pub bore_mm: f64,
    /// Joint: outside of the liner, bore of the block.
    pub seat_mm: f64,
    /// Outside of the wall that holds the liner; of a block that is no tube, of the tube that stands for it.
    pub block_mm: f64,
    /// Measured interference, 0 to 0.3.
    pub interference_mm: f64,
    /// Interference that is lost because roughness is pressed flat.
    pub smoothing_mm: f64,
    /// Modulus of elasticity of the liner.
    pub liner_modulus_mpa: f64,
    /// Poisson's ratio of the liner.
    pub liner_poisson: f64,
    /// Mean coefficient of expansion of the liner from 20 C.
    pub liner_expansion_per_k: f64,
    /// Temperature of the liner.
    pub liner_temperature_c: f64,
    /// Modulus of elasticity of the block.
    pub block_modulus_mpa: f64,
    /// Poisson's ratio of the block.
    pub block_poisson: f64,
    /// Mean coefficient of expansion of the block from 20 C.
    pub block_expansion_per_k: f64,
    /// Temperature of the block.
    pub block_temperature_c: f64,
}

/// What becomes of a liner in its block; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointLinerFit {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// What to take care of; a text that lives for ever.
    pub caution: *const c_char,
    /// 1 when `contact_lost_at_c` is given, else 0: contact is not lost between -40 C and 450 C.
    pub has_contact_lost: i32,
    /// 0.
    pub reserved: i32,
    /// Pressure in the joint at 20 C.
    pub pressure_20_mpa: f64,
    /// Pressure in the joint at the temperatures given; 0 when contact is lost.
    pub pressure_mpa: f64,
    /// Interference at the temperatures given; negative is the gap of a liner that lost contact.
    pub interference_mm: f64,
    /// Bore of the liner in the block at 20 C.
    pub bore_20_mm: f64,
    /// Bore of the liner in the block at the temperatures given.
    pub bore_mm: f64,
    /// Temperature of both parts, soaked, at which contact is lost; NaN when not given.
    pub contact_lost_at_c: f64,
}

// SAFETY: a size, a pointer, two int32_t, doubles
unsafe impl Record for GaugepointLinerFit {
    const SMALLEST: usize = 72;
}

/// A liner in its block: pressure over temperature, loss of contact, and the bore that is left. -40 C to 450 C.
///
/// `measured_in_block` is 1 when the bore was measured in the block, and so already holds what the cold pressure takes; 0 when
/// it was measured before the liner was pressed in.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_liner_in_block(
    parts: *const GaugepointLinerParts,
    measured_in_block: i32,
    out: *mut GaugepointLinerFit,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let measured_in_block = flag("measured_in_block", measured_in_block)?;
            Ok(liner::liner_in_block(&parts_of(given("parts", parts)?, measured_in_block))?.into())
        })
    }
}

fn parts_of(p: GaugepointLinerParts, measured_in_block: bool) -> LinerParts {
    LinerParts {
        bore_mm: p.bore_mm,
        measured_in_block,
        seat_mm: p.seat_mm,
        block_mm: p.block_mm,
        interference_mm: p.interference_mm,
        smoothing_mm: p.smoothing_mm,
        liner_modulus_mpa: p.liner_modulus_mpa,
        liner_poisson: p.liner_poisson,
        liner_expansion_per_k: p.liner_expansion_per_k,
        liner_temperature_c: p.liner_temperature_c,
        block_modulus_mpa: p.block_modulus_mpa,
        block_poisson: p.block_poisson,
        block_expansion_per_k: p.block_expansion_per_k,
        block_temperature_c: p.block_temperature_c,
    }
}

impl From<LinerFit> for GaugepointLinerFit {
    fn from(f: LinerFit) -> Self {
        GaugepointLinerFit {
            struct_size: size_of::<Self>(),
            caution: caution(f.caution),
            has_contact_lost: f.contact_lost_at_c.is_some().into(),
            reserved: 0,
            pressure_20_mpa: f.pressure_20_mpa,
            pressure_mpa: f.pressure_mpa,
            interference_mm: f.interference_mm,
            bore_20_mm: f.bore_20_mm,
            bore_mm: f.bore_mm,
            contact_lost_at_c: f.contact_lost_at_c.unwrap_or(f64::NAN),
        }
    }
}
