//! A hot fit: made once, asked often.

use crate::array::{GAUGEPOINT_MOST_VALUES, array, array_out, fitting, given};
use crate::error::{Failure, GaugepointError, cut};
use crate::growth::GaugepointLaw;
use crate::guard::{cleared, kept, plain, status};
use crate::handle::{self, freed, lent};
use crate::hot_part::{GaugepointHotBore, GaugepointHotPiston, piston_of, wall_of};
use crate::piston::GaugepointPiston;
use crate::record::{Record, record};
use core::ffi::c_char;
use gaugepoint::ErrorKind;
use gaugepoint::clearance::hot::contact::{Band, Patch};
use gaugepoint::clearance::hot::drawing::{FitDrawing, PositionKind, moved};
use gaugepoint::clearance::hot::inverse::{Answer, OvalityAt};
use gaugepoint::clearance::hot::lateral::BestPlaced;
use gaugepoint::clearance::hot::onset::{Contact, Onset};
use gaugepoint::clearance::hot::smallest::Smallest;
use gaugepoint::clearance::hot::{HotFit, Place, Position};
use gaugepoint::growth::field::Scenario;

/// How it is said where the piston stands.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointPosition {
    /// By the crank angle in degrees, -360 to 720: 0 is the throw in line with the cylinder, on the way down after it.
    Crank = 1,
    /// At top dead centre.
    TopDeadCentre = 2,
    /// By the depth of its gauge point in mm.
    GaugeDepth = 3,
    /// Not: the bore is the same at every depth.
    Anywhere = 4,
}

/// What rises on the way to first contact.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointScenario {
    /// The piston; the bore stays at its field.
    PistonAlone = 1,
    /// Piston and bore in proportion.
    PistonAndBore = 2,
    /// The piston; the bore stays at 20 C, as at a cold start.
    PistonWithColdBore = 3,
}

/// How far the temperatures can rise.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointOnsetOutcome {
    /// Something touches.
    Touches = 1,
    /// Something touches with the piston at 20 C already.
    TouchesCold = 2,
    /// Nothing touches up to a factor.
    NoContact = 3,
}

/// One order of the radius of a bore over depth. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointBoreHarmonic {
    /// Waves in one turn, 2 to 32; 1 is the position of the axis, which is no part of a clearance.
    pub order: usize,
    /// Rising depths; one row holds at every depth.
    pub depths_mm: *const f64,
    /// Part that is largest at 0 degrees, at each depth.
    pub cos_mm: *const f64,
    /// Part that is largest a quarter wave further, at each depth.
    pub sin_mm: *const f64,
    /// How many depths there are.
    pub count: usize,
}

/// Where a bore does not support the piston: a port, a relief; its edge belongs to the wall. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPort {
    /// Angle at which it begins.
    pub from_deg: f64,
    /// Angle at which it ends, in the direction of rising angles: from 350 to 10 is 20 degrees wide.
    pub to_deg: f64,
    /// Depth at which it begins.
    pub from_mm: f64,
    /// Depth at which it ends.
    pub to_mm: f64,
}

/// A bore as its drawing gives it. A plain structure; start it zeroed: without tables it is round and straight.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointBore {
    /// Size at 20 C, over any plating.
    pub diameter_mm: f64,
    /// Rising depths of `deviation_mm`; may be NULL when there are none.
    pub depths_mm: *const f64,
    /// Mean radius at each depth less half the size.
    pub deviation_mm: *const f64,
    /// How many depths there are; 0 is the same everywhere.
    pub depth_count: usize,
    /// Orders of the radius; may be NULL when there are none.
    pub harmonics: *const GaugepointBoreHarmonic,
    /// How many there are.
    pub harmonic_count: usize,
    /// Ports; may be NULL when there are none.
    pub ports: *const GaugepointPort,
    /// How many there are.
    pub port_count: usize,
    /// 1 when `end_mm` is given, else 0: the piston does not come out of it.
    pub has_end: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Depth of the lower end.
    pub end_mm: f64,
}

/// How a surface of a piston grows. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointSurfaceGrowth {
    /// Law of its material.
    pub law: GaugepointLaw,
    /// Growth on the thrust axis over that of the material; 1 without controlled expansion.
    pub ratio_thrust: f64,
    /// Growth on the pin axis over that of the material; 1 without controlled expansion.
    pub ratio_pin: f64,
}

/// Temperatures of a piston over height. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPistonField {
    /// Rising heights; one row holds at every height.
    pub heights_mm: *const f64,
    /// Temperature on the thrust axis at each.
    pub thrust_c: *const f64,
    /// Temperature on the pin axis at each.
    pub pin_c: *const f64,
    /// How many there are.
    pub count: usize,
}

/// Temperatures of the wall of a bore over depth: means over its section. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointBoreField {
    /// Rising depths; one row holds at every depth.
    pub depths_mm: *const f64,
    /// Temperature of the wall at each.
    pub wall_c: *const f64,
    /// How many there are.
    pub count: usize,
}

/// How a piston moves in its bore. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointMotion {
    /// Crank radius.
    pub crank_radius_mm: f64,
    /// Length of the rod.
    pub rod_mm: f64,
    /// Pin offset, positive toward the major thrust side.
    pub pin_offset_mm: f64,
    /// Crown below the deck at top dead centre, negative where it stands out.
    pub deck_clearance_mm: f64,
    /// From the bottom edge of the skirt to the plane of the crown that is counted against the deck.
    pub crown_height_mm: f64,
}

/// Everything a hot fit is made of. A plain structure; start it zeroed.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointHotFitParts {
    /// Diameter of the bare piston at its gauge point, at 20 C.
    pub piston_diameter_mm: f64,
    /// Its shape.
    pub piston: *const GaugepointPiston,
    /// How its surfaces grow, one for each.
    pub growth: *const GaugepointSurfaceGrowth,
    /// How many there are.
    pub growth_count: usize,
    /// Temperatures of the piston.
    pub piston_field: GaugepointPistonField,
    /// The bore.
    pub bore: *const GaugepointBore,
    /// Law of the wall that carries it.
    pub bore_law: GaugepointLaw,
    /// Temperatures of the bore.
    pub bore_field: GaugepointBoreField,
    /// How the piston moves; NULL when its place in the bore does not matter, or is always said as a depth.
    pub motion: *const GaugepointMotion,
}

/// One piston in one bore at its temperatures, ready to be asked. It never changes; any number of threads may ask it at once.
#[derive(Debug)]
pub struct GaugepointHotFit(HotFit);

/// A place on the piston and in the bore. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointHotPlace {
    /// Index of the surface: 0 is the skirt.
    pub surface: usize,
    /// 1 when `depth_mm` is given, else 0: it does not matter.
    pub has_depth: i32,
    /// 1 when `crank_deg` is given, else 0: it does not matter, or is not known.
    pub has_crank: i32,
    /// Angle, from 0 up to 360; 0 is the major thrust side.
    pub angle_deg: f64,
    /// Height above the bottom edge of the skirt.
    pub height_mm: f64,
    /// Depth in the bore.
    pub depth_mm: f64,
    /// Crank angle on the way down.
    pub crank_deg: f64,
}

/// The smallest clearance of a surface; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointHotSmallest {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// On one side; negative for an overlap.
    pub clearance_mm: f64,
    /// The smallest clearance is certainly not below that by more than this.
    pub certified_within_mm: f64,
    /// Where it is.
    pub place: GaugepointHotPlace,
}

// SAFETY: sizes, doubles, two int32_t
unsafe impl Record for GaugepointHotSmallest {
    const SMALLEST: usize = 72;
}

/// Where a surface is below a clearance, without its bands; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointHotContact {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// How many bands there are.
    pub bands: usize,
    /// Area of the surface there.
    pub area_mm2: f64,
}

// SAFETY: two sizes, a double
unsafe impl Record for GaugepointHotContact {
    const SMALLEST: usize = 24;
}

/// Angles at one height. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointHotBand {
    /// The height.
    pub height_mm: f64,
    /// First angle, from 0 up to 360.
    pub from_deg: f64,
    /// Last angle; above 360 when the band goes over the thrust axis.
    pub to_deg: f64,
}

/// A piston moved sideways, without tilting, to where it has most room; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointHotBestPlaced {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Smallest clearance on one side there.
    pub clearance_mm: f64,
    /// Moved toward the major thrust side.
    pub thrust_mm: f64,
    /// Moved along the pin, toward the front.
    pub pin_mm: f64,
    /// The most room of any place sideways is certainly within this of the clearance.
    pub certified_within_mm: f64,
}

// SAFETY: a size and doubles
unsafe impl Record for GaugepointHotBestPlaced {
    const SMALLEST: usize = 40;
}

/// How far the temperatures can rise until something touches; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointHotOnset {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// A GaugepointOnsetOutcome.
    pub outcome: i32,
    /// 1 when every smaller factor was excluded, else 0.
    pub proven: i32,
    /// 1 when `factor` and `thrust_c` are given, else 0: it touches at 20 C already.
    pub has_factor: i32,
    /// 1 when `slope_mm` and `place` are given, else 0: nothing touches on the way.
    pub has_place: i32,
    /// Factor on the rise of the temperatures; without contact the largest that was looked at.
    pub factor: f64,
    /// Temperature of the thrust side at the gauge point with it.
    pub thrust_c: f64,
    /// Change of the clearance at `place` with the factor; negative.
    pub slope_mm: f64,
    /// Where it touches.
    pub place: GaugepointHotPlace,
    /// Why no more was looked at, without contact; else empty.
    pub stopped_by: [c_char; 160],
}

// SAFETY: sizes, int32_t in pairs, doubles, characters to a multiple of eight
unsafe impl Record for GaugepointHotOnset {
    const SMALLEST: usize = 256;
}

/// What was looked for; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointHotAnswer {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when `value` is given, else 0: it does not exist.
    pub has_value: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// The size or temperature, in the unit of the function's name.
    pub value: f64,
    /// Why there is none; else empty.
    pub no_solution: [c_char; 160],
}

// SAFETY: a size, two int32_t, a double, characters to a multiple of eight
unsafe impl Record for GaugepointHotAnswer {
    const SMALLEST: usize = 184;
}

/// Ovality at one height; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointHotOvality {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// At 20 C.
    pub cold_mm: f64,
    /// In the running engine.
    pub running_mm: f64,
    /// At 20 C, of a piston that runs round.
    pub round_running_mm: f64,
}

// SAFETY: a size and doubles
unsafe impl Record for GaugepointHotOvality {
    const SMALLEST: usize = 32;
}

/// Radii of a surface at one height, less half the gauge diameter at 20 C. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointProfileRow {
    /// The height.
    pub height_mm: f64,
    /// Thrust axis at 20 C.
    pub cold_thrust_mm: f64,
    /// Pin axis at 20 C.
    pub cold_pin_mm: f64,
    /// Thrust axis in the running engine.
    pub hot_thrust_mm: f64,
    /// Pin axis in the running engine.
    pub hot_pin_mm: f64,
}

/// Radii of piston and bore at one angle of a section. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointSectionRow {
    /// The angle.
    pub angle_deg: f64,
    /// Piston at 20 C.
    pub piston_cold_mm: f64,
    /// Running piston.
    pub piston_hot_mm: f64,
    /// Bore at 20 C.
    pub bore_cold_mm: f64,
    /// Running bore.
    pub bore_hot_mm: f64,
}

/// Makes a hot fit: one piston in one bore at its temperatures, checked: every table reaches every place that the piston comes to.
///
/// `fit` gets it, to be freed by gaugepoint_hot_fit_free; on failure it keeps what it held. A refused number is named with its place: "growth/0/ratio_pin",
/// "bore/harmonics/1/cos_mm/2", "surfaces/0/barrel/values_mm/2" of the piston.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_new(
    parts: *const GaugepointHotFitParts,
    fit: *mut *mut GaugepointHotFit,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("fit", fit), || {
            let p = given("parts", parts)?;
            let growth = array("growth", p.growth, Some(p.growth_count))?;
            let drawing = FitDrawing {
                piston: piston_of(p.piston_diameter_mm, p.piston, growth, &p.piston_field)?,
                bore: wall_of(p.bore, &p.bore_law, &p.bore_field)?,
                motion: motion_of(p.motion)?,
            };
            Ok(handle::made(GaugepointHotFit(drawing.fit()?)))
        })
    }
}

/// Makes a hot fit of a piston and a bore that were made before; `motion` may be NULL, as in GaugepointHotFitParts.
///
/// `fit` gets it, to be freed by gaugepoint_hot_fit_free; on failure it keeps what it held. It holds copies: piston and bore may be in any number of
/// fits, and may be freed before them. It has the bits of a fit that gaugepoint_hot_fit_new makes of the same parts.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_of(
    piston: *const GaugepointHotPiston,
    bore: *const GaugepointHotBore,
    motion: *const GaugepointMotion,
    fit: *mut *mut GaugepointHotFit,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("fit", fit), || {
            let (piston, bore) = (lent("piston", piston)?.0.clone(), lent("bore", bore)?.0.clone());
            let made = HotFit::of(piston, bore, moved(motion_of(motion)?)?)?;
            Ok(handle::made(GaugepointHotFit(made)))
        })
    }
}

/// Frees a hot fit. NULL is fine.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_free(fit: *mut GaugepointHotFit) {
    // SAFETY: the contract of the header
    plain((), || unsafe { freed(fit) });
}

/// Clearance on one side at an angle and a height, negative for an overlap; `position` is a GaugepointPosition, `position_at` its crank angle or
/// depth, which the others do not look at.
///
/// Refused where the piston has no surface or there is no bore; in a window or a port it is that of the surfaces around.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_clearance_mm(
    fit: *const GaugepointHotFit,
    angle_deg: f64,
    height_mm: f64,
    position: i32,
    position_at: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(of(fit)?.at(angle_deg, height_mm, stands(position, position_at)?)?)
        })
    }
}

/// Clearance over the diameter at an angle and the opposite one. As gaugepoint_hot_fit_clearance_mm.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_diametral_mm(
    fit: *const GaugepointHotFit,
    angle_deg: f64,
    height_mm: f64,
    position: i32,
    position_at: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(of(fit)?.diametral(angle_deg, height_mm, stands(position, position_at)?)?)
        })
    }
}

/// Running clearance at the gauge point, over the diameter. As gaugepoint_hot_fit_clearance_mm.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_running_mm(
    fit: *const GaugepointHotFit,
    position: i32,
    position_at: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(of(fit)?.running_at_gauge_point(stands(position, position_at)?)?)
        })
    }
}

/// Clearance on one side over angles and heights: a row for every height, a number for every angle, one after the other.
///
/// NaN where the piston has a window, the bore a port, or no bore is around the piston: above the deck, or below its end. Refused is what is not
/// on the piston at all, with its place: "heights_mm/3"; then `clearances_mm` keeps what it held.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_map(
    fit: *const GaugepointHotFit,
    angles_deg: *const f64,
    angle_count: usize,
    heights_mm: *const f64,
    height_count: usize,
    position: i32,
    position_at: f64,
    clearances_mm: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, array_out("clearances_mm", clearances_mm, usize::MAX), || {
            let fit = of(fit)?;
            let angles = array("angles_deg", angles_deg, Some(angle_count))?;
            let heights = array("heights_mm", heights_mm, Some(height_count))?;
            let count = angle_count.checked_mul(height_count).filter(|n| *n <= GAUGEPOINT_MOST_VALUES);
            count.ok_or_else(|| {
                Failure::refused(ErrorKind::OutOfRange, "clearances_mm", "more than 16777216 values")
            })?;
            Ok(fit.map(angles, heights, stands(position, position_at)?)?)
        })
    }
}

/// The smallest clearance of a surface over angle, height and every crank angle, with a proof of how much smaller it could be.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_smallest(
    fit: *const GaugepointHotFit,
    surface: usize,
    out: *mut GaugepointHotSmallest,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, record("out", out), || Ok(of(fit)?.smallest(surface)?.into())) }
}

/// The smallest clearance of a surface where the piston stands at one position.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_smallest_at(
    fit: *const GaugepointHotFit,
    surface: usize,
    position: i32,
    position_at: f64,
    out: *mut GaugepointHotSmallest,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(of(fit)?.smallest_at(surface, stands(position, position_at)?)?.into())
        })
    }
}

/// Where a surface has less clearance than `below_mm` on one side: its area, and how many bands gaugepoint_hot_fit_bands gives.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_contact(
    fit: *const GaugepointHotFit,
    surface: usize,
    position: i32,
    position_at: f64,
    below_mm: f64,
    out: *mut GaugepointHotContact,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let patch = of(fit)?.contact(surface, stands(position, position_at)?, below_mm)?;
            Ok(GaugepointHotContact::from(&patch))
        })
    }
}

/// The angles at which a surface has less clearance than `below_mm` on one side, height by height.
///
/// `bands` has `room` for those of gaugepoint_hot_fit_contact; `count` gets their number, which is kept on failure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_bands(
    fit: *const GaugepointHotFit,
    surface: usize,
    position: i32,
    position_at: f64,
    below_mm: f64,
    bands: *mut GaugepointHotBand,
    room: usize,
    count: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("bands", bands, room), kept("count", count)), || {
            let patch = of(fit)?.contact(surface, stands(position, position_at)?, below_mm)?;
            let found = patch.bands.into_iter().map(GaugepointHotBand::from).collect();
            let found: Vec<GaugepointHotBand> = fitting(found, "room", room)?;
            let count = found.len();
            Ok((found, count))
        })
    }
}

/// Where a surface has most room at one position, moved sideways without tilting.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_best_placed(
    fit: *const GaugepointHotFit,
    surface: usize,
    position: i32,
    position_at: f64,
    out: *mut GaugepointHotBestPlaced,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(of(fit)?.best_placed(surface, stands(position, position_at)?)?.into())
        })
    }
}

/// First contact: the least factor on the rise of the temperatures from 20 C at which the smallest clearance of all surfaces is `touching_mm`, on
/// one side. `scenario` is a GaugepointScenario.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_onset(
    fit: *const GaugepointHotFit,
    scenario: i32,
    touching_mm: f64,
    out: *mut GaugepointHotOnset,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let fit = of(fit)?;
            Ok(onset(fit, &fit.onset(scenario_of(scenario)?, touching_mm)?))
        })
    }
}

/// Size of the bore at 20 C for a running clearance at the gauge point, over the diameter.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_bore_for_running_mm(
    fit: *const GaugepointHotFit,
    wanted_mm: f64,
    position: i32,
    position_at: f64,
    out: *mut GaugepointHotAnswer,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(of(fit)?.bore_for_running_clearance(wanted_mm, stands(position, position_at)?)?.into())
        })
    }
}

/// Size of the bore at 20 C for a smallest clearance of the skirt, on one side.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_bore_for_smallest_mm(
    fit: *const GaugepointHotFit,
    wanted_mm: f64,
    out: *mut GaugepointHotAnswer,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || Ok(of(fit)?.bore_for_smallest_clearance(wanted_mm)?.into()))
    }
}

/// Temperature of the thrust side at the gauge point at which the piston first touches, in a bore that leaves it a clearance on the bench, over the
/// diameter. As gaugepoint_hot_fit_onset.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_temperature_for_bench_c(
    fit: *const GaugepointHotFit,
    bench_mm: f64,
    scenario: i32,
    touching_mm: f64,
    out: *mut GaugepointHotAnswer,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let (fit, scenario) = (of(fit)?, scenario_of(scenario)?);
            Ok(fit.piston_temperature_for_bench_clearance(bench_mm, scenario, touching_mm)?.into())
        })
    }
}

/// Ovality of a surface at a height: at 20 C, running, and at 20 C of a piston that would run round.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_ovality(
    fit: *const GaugepointHotFit,
    surface: usize,
    height_mm: f64,
    out: *mut GaugepointHotOvality,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, record("out", out), || Ok(of(fit)?.ovality(surface, height_mm)?.into())) }
}

/// Radii of a surface over `count` evenly spaced heights, 2 to 65536, both ends among them; `out` has room for as many rows.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_profile(
    fit: *const GaugepointHotFit,
    surface: usize,
    count: usize,
    out: *mut GaugepointProfileRow,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, array_out("out", out, usize::MAX), || {
            let p = of(fit)?.profile(surface, places(count)?)?;
            let columns = [&p.heights_mm, &p.cold_thrust_mm, &p.cold_pin_mm, &p.hot_thrust_mm, &p.hot_pin_mm];
            Ok(in_rows(columns, |[height_mm, cold_thrust_mm, cold_pin_mm, hot_thrust_mm, hot_pin_mm]| {
                GaugepointProfileRow { height_mm, cold_thrust_mm, cold_pin_mm, hot_thrust_mm, hot_pin_mm }
            }))
        })
    }
}

/// Radii of piston and bore over `count` evenly spaced angles, 2 to 65536, from 0 to 360 degrees at a height; `out` has room for as many rows.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_fit_section(
    fit: *const GaugepointHotFit,
    height_mm: f64,
    position: i32,
    position_at: f64,
    count: usize,
    out: *mut GaugepointSectionRow,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, array_out("out", out, usize::MAX), || {
            let s = of(fit)?.section_at(height_mm, stands(position, position_at)?, places(count)?)?;
            let columns =
                [&s.angles_deg, &s.piston_cold_mm, &s.piston_hot_mm, &s.bore_cold_mm, &s.bore_hot_mm];
            Ok(in_rows(columns, |[angle_deg, piston_cold_mm, piston_hot_mm, bore_cold_mm, bore_hot_mm]| {
                GaugepointSectionRow { angle_deg, piston_cold_mm, piston_hot_mm, bore_cold_mm, bore_hot_mm }
            }))
        })
    }
}

/// The caller's fit.
///
/// # Safety
/// `fit` is NULL or came from [`gaugepoint_hot_fit_new`] and was not freed.
unsafe fn of<'a>(fit: *const GaugepointHotFit) -> Result<&'a HotFit, Failure> {
    // SAFETY: the caller's promise
    unsafe { lent("fit", fit) }.map(|fit| &fit.0)
}

/// The five numbers of the caller's motion; none when it is NULL.
///
/// # Safety
/// As the header says.
unsafe fn motion_of(motion: *const GaugepointMotion) -> Result<Option<[f64; 5]>, Failure> {
    if motion.is_null() {
        return Ok(None);
    }
    // SAFETY: the caller's promise
    let m = unsafe { given("motion", motion) }?;
    Ok(Some([m.crank_radius_mm, m.rod_mm, m.pin_offset_mm, m.deck_clearance_mm, m.crown_height_mm]))
}

/// Where the piston stands.
fn stands(position: i32, at: f64) -> Result<Position, Failure> {
    let kind = match position {
        1 => PositionKind::Crank,
        2 => PositionKind::TopDeadCentre,
        3 => PositionKind::GaugeDepth,
        4 => PositionKind::Anywhere,
        other => return Err(Failure::choice("position", other, "1, 2, 3, 4")),
    };
    Ok(kind.at(at))
}

fn scenario_of(number: i32) -> Result<Scenario, Failure> {
    match number {
        1 => Ok(Scenario::PistonAlone),
        2 => Ok(Scenario::PistonAndBore),
        3 => Ok(Scenario::PistonWithColdBore),
        other => Err(Failure::choice("scenario", other, "1, 2, 3")),
    }
}

/// Places along a line of a picture.
fn places(count: usize) -> Result<u32, Failure> {
    u32::try_from(count)
        .map_err(|_| Failure::refused(ErrorKind::OutOfRange, "count", "more than 65536 places"))
}

/// Rows of five columns.
fn in_rows<R>(columns: [&Vec<f64>; 5], row: impl Fn([f64; 5]) -> R) -> Vec<R> {
    let [a, b, c, d, e] = columns;
    let rows = a.iter().zip(b).zip(c).zip(d).zip(e);
    rows.map(|((((a, b), c), d), e)| row([*a, *b, *c, *d, *e])).collect()
}

impl From<Place> for GaugepointHotPlace {
    fn from(p: Place) -> Self {
        GaugepointHotPlace {
            surface: p.surface,
            has_depth: p.depth_mm.is_some().into(),
            has_crank: p.crank_deg.is_some().into(),
            angle_deg: p.angle_deg,
            height_mm: p.height_mm,
            depth_mm: p.depth_mm.unwrap_or(f64::NAN),
            crank_deg: p.crank_deg.unwrap_or(f64::NAN),
        }
    }
}

impl From<Smallest> for GaugepointHotSmallest {
    fn from(s: Smallest) -> Self {
        GaugepointHotSmallest {
            struct_size: size_of::<Self>(),
            clearance_mm: s.clearance_mm,
            certified_within_mm: s.within_mm,
            place: s.place.into(),
        }
    }
}

impl From<&Patch> for GaugepointHotContact {
    fn from(p: &Patch) -> Self {
        GaugepointHotContact { struct_size: size_of::<Self>(), bands: p.bands.len(), area_mm2: p.area_mm2 }
    }
}

impl From<Band> for GaugepointHotBand {
    fn from(b: Band) -> Self {
        GaugepointHotBand { height_mm: b.height_mm, from_deg: b.from_deg, to_deg: b.to_deg }
    }
}

impl From<BestPlaced> for GaugepointHotBestPlaced {
    fn from(b: BestPlaced) -> Self {
        GaugepointHotBestPlaced {
            struct_size: size_of::<Self>(),
            clearance_mm: b.clearance_mm,
            thrust_mm: b.thrust_mm,
            pin_mm: b.pin_mm,
            certified_within_mm: b.within_mm,
        }
    }
}

/// A place that is not there.
const NOWHERE: GaugepointHotPlace = GaugepointHotPlace {
    surface: 0,
    has_depth: 0,
    has_crank: 0,
    angle_deg: f64::NAN,
    height_mm: f64::NAN,
    depth_mm: f64::NAN,
    crank_deg: f64::NAN,
};

fn onset(fit: &HotFit, onset: &Onset) -> GaugepointHotOnset {
    let cold = GaugepointHotOnset {
        struct_size: size_of::<GaugepointHotOnset>(),
        outcome: GaugepointOnsetOutcome::TouchesCold as i32,
        proven: 1,
        has_factor: 0,
        has_place: 0,
        factor: f64::NAN,
        thrust_c: f64::NAN,
        slope_mm: f64::NAN,
        place: NOWHERE,
        stopped_by: [0; 160],
    };
    match onset {
        Onset::TouchesCold => cold,
        Onset::Touches(Contact { factor, place, slope_mm, proven, .. }) => GaugepointHotOnset {
            outcome: GaugepointOnsetOutcome::Touches as i32,
            proven: (*proven).into(),
            has_factor: 1,
            has_place: 1,
            factor: *factor,
            thrust_c: fit.gauge_thrust_c(*factor),
            slope_mm: *slope_mm,
            place: (*place).into(),
            ..cold
        },
        Onset::NoContact { factor, stopped_by, proven } => GaugepointHotOnset {
            outcome: GaugepointOnsetOutcome::NoContact as i32,
            proven: (*proven).into(),
            has_factor: 1,
            factor: *factor,
            thrust_c: fit.gauge_thrust_c(*factor),
            stopped_by: cut(stopped_by),
            ..cold
        },
    }
}

impl From<Answer> for GaugepointHotAnswer {
    fn from(answer: Answer) -> Self {
        let (value, no_solution) = match answer {
            Answer::Found(value) => (Some(value), String::new()),
            Answer::NoSolution(why) => (None, why),
        };
        GaugepointHotAnswer {
            struct_size: size_of::<Self>(),
            has_value: value.is_some().into(),
            reserved: 0,
            value: value.unwrap_or(f64::NAN),
            no_solution: cut(&no_solution),
        }
    }
}

impl From<OvalityAt> for GaugepointHotOvality {
    fn from(o: OvalityAt) -> Self {
        GaugepointHotOvality {
            struct_size: size_of::<Self>(),
            cold_mm: o.cold_mm,
            running_mm: o.running_mm,
            round_running_mm: o.round_running_mm,
        }
    }
}
