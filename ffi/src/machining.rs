//! From the piston that is fitted to what the machine is set to.

use crate::array::{array_out, given};
use crate::error::GaugepointError;
use crate::guard::{cleared, status};
use crate::record::{Record, record};
use gaugepoint::plan::machining::{
    FinishCheck, WarmGauging, bore_sizes, boring_order, dial_reading_mm, finish_check,
};
use gaugepoint::quantity::{Expansion, Temperature};
use gaugepoint::size::Condition;

/// What a bore is machined to; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointBoreSizes {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Size at 20 C when it is finished.
    pub finish_mm: f64,
    /// Size at 20 C after boring.
    pub boring_mm: f64,
}

// SAFETY: a size and doubles, eight bytes each
unsafe impl Record for GaugepointBoreSizes {
    const SMALLEST: usize = 24;
}

/// A gauge that was set, and the bore that it goes into. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointWarmGauging {
    /// Size at 20 C of the ring that the gauge was set on.
    pub setting_mm: f64,
    /// The ring, when the gauge was set.
    pub ring_temperature_c: f64,
    /// The ring.
    pub ring_expansion_per_k: f64,
    /// The gauge, when it was set.
    pub set_temperature_c: f64,
    /// The gauge, when it was set.
    pub set_expansion_per_k: f64,
    /// The gauge in the bore.
    pub used_temperature_c: f64,
    /// The gauge in the bore.
    pub used_expansion_per_k: f64,
    /// The wall of the bore.
    pub block_temperature_c: f64,
    /// The wall of the bore.
    pub block_expansion_per_k: f64,
}

/// How a size found at a finish check stands to its target.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointFinishOutcome {
    /// Within the tolerance of the target.
    Met = 1,
    /// Stock is still to be honed off.
    HoneOn = 2,
    /// Too large: the next step, or another piston.
    TooLarge = 3,
}

/// Outcome of a finish check; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointFinishCheck {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// A GaugepointFinishOutcome.
    pub outcome: i32,
    /// 1 when `difference_mm` is given, else 0: the finish is met.
    pub has_difference: i32,
    /// What is still to be honed off the diameter, to the middle of the tolerance; or by how much the bore is too large.
    pub difference_mm: f64,
}

// SAFETY: a size, two int32_t, a double
unsafe impl Record for GaugepointFinishCheck {
    const SMALLEST: usize = 24;
}

/// Finish size and boring size of the bore for a piston as it was measured, at 20 C: piston + clearance; less the honing allowance.
///
/// `clearance_mm` is wanted at 20 C, `honing_mm` is left for the hone, on the diameter.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_bore_sizes(
    piston_mm: f64,
    clearance_mm: f64,
    honing_mm: f64,
    out: *mut GaugepointBoreSizes,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let sizes = bore_sizes(piston_mm, clearance_mm, honing_mm)?;
            Ok(GaugepointBoreSizes {
                struct_size: size_of::<GaugepointBoreSizes>(),
                finish_mm: sizes.finish_mm,
                boring_mm: sizes.boring_mm,
            })
        })
    }
}

/// What the dial of a bore gauge must read, in mm above its setting, when the bore has a size at 20 C and the block is warm.
///
/// A reading beyond the travel of a gauge is refused with the field "setting_mm".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_dial_reading_mm(
    size_mm: f64,
    gauging: *const GaugepointWarmGauging,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(dial_reading_mm(size_mm, &gauging_of(&given("gauging", gauging)?))?)
        })
    }
}

/// Holds a bore as it was found, at 20 C, against its finish size and tolerance (half the width).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_finish_check(
    size_mm: f64,
    finish_mm: f64,
    tolerance_mm: f64,
    out: *mut GaugepointFinishCheck,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || Ok(finish_check(size_mm, finish_mm, tolerance_mm)?.into()))
    }
}

/// An order of boring in which no two neighbours follow each other, so that the heat spreads; cylinders are counted from 1 along the block.
///
/// `order` gets as many numbers as there are cylinders, 1 to 24. Of three or fewer no such order exists: the order along the block, and the block must cool
/// between. Common practice, no source.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_boring_order(
    cylinders: usize,
    order: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, array_out("order", order, cylinders), || Ok(boring_order(cylinders)?)) }
}

fn gauging_of(g: &GaugepointWarmGauging) -> WarmGauging {
    let at = |celsius, per_kelvin| Condition {
        temperature: Temperature::from_celsius(celsius),
        expansion: Expansion::from_per_kelvin(per_kelvin),
    };
    WarmGauging {
        setting_mm: g.setting_mm,
        ring: at(g.ring_temperature_c, g.ring_expansion_per_k),
        set: at(g.set_temperature_c, g.set_expansion_per_k),
        used: at(g.used_temperature_c, g.used_expansion_per_k),
        block: at(g.block_temperature_c, g.block_expansion_per_k),
    }
}

impl From<FinishCheck> for GaugepointFinishCheck {
    fn from(found: FinishCheck) -> Self {
        let (outcome, difference) = match found {
            FinishCheck::Met => (GaugepointFinishOutcome::Met, None),
            FinishCheck::HoneOn { stock_mm } => (GaugepointFinishOutcome::HoneOn, Some(stock_mm)),
            FinishCheck::TooLarge { by_mm } => (GaugepointFinishOutcome::TooLarge, Some(by_mm)),
        };
        GaugepointFinishCheck {
            struct_size: size_of::<Self>(),
            outcome: outcome as i32,
            has_difference: difference.is_some().into(),
            difference_mm: difference.unwrap_or(f64::NAN),
        }
    }
}
