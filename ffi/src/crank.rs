//! The crank, and the least clearance of a section.

use crate::array::array;
use crate::error::GaugepointError;
use crate::guard::status;
use crate::record::{Record, record};
use gaugepoint::clearance::crank::{self, CrankAngles, DeadCentres, PistonTravel};
use gaugepoint::clearance::least::{Harmonics, Least};

/// The two dead centres of a crank with an offset pin; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointDeadCentres {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// From one to the other. With an offset it is more than twice the crank radius.
    pub stroke_mm: f64,
    /// Crank angle of top dead centre: 0 without an offset, below 0 for a pin offset to the major thrust side.
    pub top_deg: f64,
    /// Crank angle of bottom dead centre: 180 without an offset.
    pub bottom_deg: f64,
}

// SAFETY: a size and doubles
unsafe impl Record for GaugepointDeadCentres {
    const SMALLEST: usize = 32;
}

/// How far the piston is down, and how fast it goes down; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPistonTravel {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// From top dead centre down.
    pub travel_mm: f64,
    /// More travel for each degree of the crank; negative on the way up.
    pub per_degree_mm: f64,
}

// SAFETY: a size and doubles
unsafe impl Record for GaugepointPistonTravel {
    const SMALLEST: usize = 24;
}

/// The two crank angles at which a piston is down by a given travel; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointCrankAngles {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// On the way up, before top dead centre.
    pub before_deg: f64,
    /// On the way down, after it.
    pub after_deg: f64,
}

// SAFETY: a size and doubles
unsafe impl Record for GaugepointCrankAngles {
    const SMALLEST: usize = 24;
}

/// The least clearance of a section, and where it is; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointLeastClearance {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// The clearance.
    pub least_mm: f64,
    /// Its angle, from 0 up to 360; of angles whose values rounding cannot tell apart, the smallest.
    pub angle_deg: f64,
    /// The true least value is between `least_mm` - `within_mm` and `least_mm`.
    pub within_mm: f64,
}

// SAFETY: a size and doubles
unsafe impl Record for GaugepointLeastClearance {
    const SMALLEST: usize = 32;
}

/// Stroke and dead centres from crank radius, rod and pin offset.
///
/// Seen from where the crankshaft turns clockwise, the major thrust side is on the left; a pin offset toward it is positive. The crank angle is 0 with the
/// throw in line with the cylinder, and grows as the crank turns. A rod that is not longer than crank radius and offset together is refused.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_dead_centres(
    crank_radius_mm: f64,
    rod_mm: f64,
    pin_offset_mm: f64,
    out: *mut GaugepointDeadCentres,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(crank::dead_centres(crank_radius_mm, rod_mm, pin_offset_mm)?.into())
        })
    }
}

/// Travel of the piston from top dead centre at a crank angle, -720 to 720. Signs as in `gaugepoint_dead_centres`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_piston_travel(
    crank_radius_mm: f64,
    rod_mm: f64,
    pin_offset_mm: f64,
    crank_angle_deg: f64,
    out: *mut GaugepointPistonTravel,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(crank::piston_travel(crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg)?.into())
        })
    }
}

/// The crank angles at which the piston is down by `travel_mm`, from 0 to the stroke. Signs as in `gaugepoint_dead_centres`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_crank_angles_at(
    crank_radius_mm: f64,
    rod_mm: f64,
    pin_offset_mm: f64,
    travel_mm: f64,
    out: *mut GaugepointCrankAngles,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(crank::crank_angles_at(crank_radius_mm, rod_mm, pin_offset_mm, travel_mm)?.into())
        })
    }
}

/// The least value over every angle of a section `mean + sum of cos_n cos(n angle) + sin_n sin(n angle)`: of a clearance, or of any other section.
///
/// Both arrays hold `orders` numbers, at most 32, the first of order 1. Found without a grid to miss it between, with a bound on its error.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_least_clearance_of_section(
    mean_mm: f64,
    cos_mm: *const f64,
    sin_mm: *const f64,
    orders: usize,
    out: *mut GaugepointLeastClearance,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let cos = array("cos_mm", cos_mm, Some(orders))?;
            let sin = array("sin_mm", sin_mm, Some(orders))?;
            Ok(Harmonics::new(mean_mm, cos, sin)?.least().into())
        })
    }
}

impl From<DeadCentres> for GaugepointDeadCentres {
    fn from(d: DeadCentres) -> Self {
        GaugepointDeadCentres {
            struct_size: size_of::<Self>(),
            stroke_mm: d.stroke_mm,
            top_deg: d.top_deg,
            bottom_deg: d.bottom_deg,
        }
    }
}

impl From<PistonTravel> for GaugepointPistonTravel {
    fn from(t: PistonTravel) -> Self {
        GaugepointPistonTravel {
            struct_size: size_of::<Self>(),
            travel_mm: t.travel_mm,
            per_degree_mm: t.per_degree_mm,
        }
    }
}

impl From<CrankAngles> for GaugepointCrankAngles {
    fn from(a: CrankAngles) -> Self {
        GaugepointCrankAngles {
            struct_size: size_of::<Self>(),
            before_deg: a.before_deg,
            after_deg: a.after_deg,
        }
    }
}

impl From<Least> for GaugepointLeastClearance {
    fn from(l: Least) -> Self {
        GaugepointLeastClearance {
            struct_size: size_of::<Self>(),
            least_mm: l.least_mm,
            angle_deg: l.angle_deg,
            within_mm: l.within_mm,
        }
    }
}
