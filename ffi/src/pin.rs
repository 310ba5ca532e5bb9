//! Pins, press fits, and the rod.

use crate::array::given;
use crate::caution::caution;
use crate::error::GaugepointError;
use crate::guard::status;
use crate::record::{Record, record};
use core::ffi::c_char;
use gaugepoint::clearance::pin::{self, PinClearance};
use gaugepoint::clearance::press_fit::{self, Assembly, PressFit, PressFitParts, TemperColour};

/// Colour that clean steel takes at a temperature.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointTemperColour {
    /// None yet.
    None = 1,
    /// Straw to brown, from 480 F.
    Straw = 2,
    /// Purple, from 520 F.
    Purple = 3,
    /// Blue, from 575 F.
    Blue = 4,
}

/// Clearance of a pin, diametral; negative is interference. See RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPinClearance {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// At 20 C.
    pub cold_mm: f64,
    /// Free growth at the temperatures given.
    pub hot_mm: f64,
}

// SAFETY: a size and doubles
unsafe impl Record for GaugepointPinClearance {
    const SMALLEST: usize = 24;
}

/// A pin and the eye it is pressed into; sizes are diameters at 20 C. A plain structure; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPressFitParts {
    /// Joint: outside of the pin.
    pub pin_mm: f64,
    /// Hole of the pin; 0 is a solid pin.
    pub pin_hole_mm: f64,
    /// Outside of the eye.
    pub eye_mm: f64,
    /// Length of the joint along the axis.
    pub width_mm: f64,
    /// Measured interference, least of its range.
    pub interference_least_mm: f64,
    /// Measured interference, most of its range.
    pub interference_most_mm: f64,
    /// Interference that is lost because roughness is pressed flat.
    pub smoothing_mm: f64,
    /// Coefficient of friction, least of its range.
    pub friction_least: f64,
    /// Coefficient of friction, most of its range.
    pub friction_most: f64,
    /// Modulus of elasticity of the pin.
    pub pin_modulus_mpa: f64,
    /// Poisson's ratio of the pin.
    pub pin_poisson: f64,
    /// Modulus of elasticity of the eye.
    pub eye_modulus_mpa: f64,
    /// Poisson's ratio of the eye.
    pub eye_poisson: f64,
}

/// What a press fit holds, and what it does to its parts; see RECORDS at the head. Tension is positive.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPressFit {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// What to take care of; a text that lives for ever.
    pub caution: *const c_char,
    /// Pressure at the least interference; 0 when the smoothing takes all of it.
    pub pressure_least_mpa: f64,
    /// Pressure at the most interference.
    pub pressure_most_mpa: f64,
    /// Hoop stress of the eye at the joint, at the most interference.
    pub eye_hoop_inside_mpa: f64,
    /// Hoop stress of the eye at its outside.
    pub eye_hoop_outside_mpa: f64,
    /// Hoop stress of the pin at the joint.
    pub pin_hoop_outside_mpa: f64,
    /// Hoop stress of the pin at its hole; of a solid pin the same as at the joint.
    pub pin_hoop_inside_mpa: f64,
    /// Axial force at which it slips, least interference and least friction.
    pub force_least_n: f64,
    /// The same at the most of both.
    pub force_most_n: f64,
    /// Torque at which it slips, least interference and least friction, in newton metre.
    pub torque_least_nm: f64,
    /// The same at the most of both.
    pub torque_most_nm: f64,
}

// SAFETY: a size, a pointer, doubles
unsafe impl Record for GaugepointPressFit {
    const SMALLEST: usize = 96;
}

/// Heat that lets a part be slipped on; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointAssembly {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// What to take care of; a text that lives for ever.
    pub caution: *const c_char,
    /// A GaugepointTemperColour, of clean steel: any is a sign of too much heat. It says nothing of aluminium.
    pub temper_colour: i32,
    /// 0.
    pub reserved: i32,
    /// Rise of temperature.
    pub rise_k: f64,
    /// Temperature of the heated part, from 20 C.
    pub temperature_c: f64,
}

// SAFETY: a size, a pointer, two int32_t, doubles
unsafe impl Record for GaugepointAssembly {
    const SMALLEST: usize = 40;
}

/// Clearance of a pin in a boss or in a bush, cold and hot, for temperatures from -40 C to 450 C.
///
/// A pressed bush grows by the coefficient of what holds it, not by its own. A cold clearance that is not between -0.15 mm
/// and 0.2 mm is refused: another pin.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_pin_clearance(
    hole_mm: f64,
    hole_temperature_c: f64,
    hole_expansion_per_k: f64,
    pin_mm: f64,
    pin_temperature_c: f64,
    pin_expansion_per_k: f64,
    out: *mut GaugepointPinClearance,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(pin::pin_clearance(
                hole_mm,
                hole_temperature_c,
                hole_expansion_per_k,
                pin_mm,
                pin_temperature_c,
                pin_expansion_per_k,
            )?
            .into())
        })
    }
}

/// A press fit over the range of its interference and friction, by Lame's formulas: thick elastic tubes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_press_fit(
    parts: *const GaugepointPressFitParts,
    out: *mut GaugepointPressFit,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || Ok(press_fit::press_fit(&given("parts", parts)?.into())?.into()))
    }
}

/// Temperature to which the outer part is heated, the pin at 20 C, so that its hole opens by the interference and a clearance.
///
/// A result that no part survives is a fault of the fit, and no error of the call.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_assembly_temperature(
    diameter_mm: f64,
    interference_mm: f64,
    clearance_mm: f64,
    expansion_per_k: f64,
    out: *mut GaugepointAssembly,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(press_fit::assembly_temperature(diameter_mm, interference_mm, clearance_mm, expansion_per_k)?
                .into())
        })
    }
}

impl From<PinClearance> for GaugepointPinClearance {
    fn from(c: PinClearance) -> Self {
        GaugepointPinClearance { struct_size: size_of::<Self>(), cold_mm: c.cold_mm, hot_mm: c.hot_mm }
    }
}

impl From<GaugepointPressFitParts> for PressFitParts {
    fn from(p: GaugepointPressFitParts) -> Self {
        PressFitParts {
            pin_mm: p.pin_mm,
            pin_hole_mm: p.pin_hole_mm,
            eye_mm: p.eye_mm,
            width_mm: p.width_mm,
            interference_least_mm: p.interference_least_mm,
            interference_most_mm: p.interference_most_mm,
            smoothing_mm: p.smoothing_mm,
            friction_least: p.friction_least,
            friction_most: p.friction_most,
            pin_modulus_mpa: p.pin_modulus_mpa,
            pin_poisson: p.pin_poisson,
            eye_modulus_mpa: p.eye_modulus_mpa,
            eye_poisson: p.eye_poisson,
        }
    }
}

impl From<PressFit> for GaugepointPressFit {
    fn from(f: PressFit) -> Self {
        GaugepointPressFit {
            struct_size: size_of::<Self>(),
            caution: caution(f.caution),
            pressure_least_mpa: f.pressure_least_mpa,
            pressure_most_mpa: f.pressure_most_mpa,
            eye_hoop_inside_mpa: f.eye_hoop_inside_mpa,
            eye_hoop_outside_mpa: f.eye_hoop_outside_mpa,
            pin_hoop_outside_mpa: f.pin_hoop_outside_mpa,
            pin_hoop_inside_mpa: f.pin_hoop_inside_mpa,
            force_least_n: f.force_least_n,
            force_most_n: f.force_most_n,
            torque_least_nm: f.torque_least_nm,
            torque_most_nm: f.torque_most_nm,
        }
    }
}

impl From<Assembly> for GaugepointAssembly {
    fn from(a: Assembly) -> Self {
        let colour = match a.temper_colour {
            TemperColour::None => GaugepointTemperColour::None,
            TemperColour::Straw => GaugepointTemperColour::Straw,
            TemperColour::Purple => GaugepointTemperColour::Purple,
            TemperColour::Blue => GaugepointTemperColour::Blue,
        };
        GaugepointAssembly {
            struct_size: size_of::<Self>(),
            caution: caution(a.caution),
            temper_colour: colour as i32,
            reserved: 0,
            rise_k: a.rise_k,
            temperature_c: a.temperature_c,
        }
    }
}
