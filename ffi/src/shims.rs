//! Shims below the flanges of a row of liners.

use crate::array::{array, array_out, fitting, given};
use crate::caution::caution;
use crate::error::{Failure, GaugepointError};
use crate::guard::status;
use crate::record::{Record, record};
use crate::text::flag;
use core::ffi::c_char;
use gaugepoint::plan::shims::{Liner, RuledOut, Shim, ShimPlan, Shimmed, Wanted, shim_plan};

/// A liner and its counterbore. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointLiner {
    /// Height of its flange.
    pub flange_mm: f64,
    /// Depth of the counterbore toward the front of the row, at one side, toward the rear and at the other side.
    pub depths_mm: [f64; 4],
    /// 1 when `cupping_mm` is given, else 0.
    pub has_cupping: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// How much deeper the seat is at one edge of the ledge than at the other.
    pub cupping_mm: f64,
}

/// A shim that can be had. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointShim {
    /// Its thickness.
    pub thickness_mm: f64,
    /// 1 when `available` is given, else 0: it does not matter.
    pub has_available: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// How many there are.
    pub available: usize,
}

/// What is wanted of a row of liners. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointWantedProtrusion {
    /// 1 when `cupping_mm` is given, else 0.
    pub has_cupping: i32,
    /// 1 when `neighbours_mm` is given, else 0.
    pub has_neighbours: i32,
    /// Most shims on one liner, 1 to 3.
    pub most_on_one: usize,
    /// Smallest protrusion at any place.
    pub least_mm: f64,
    /// Largest protrusion at any place.
    pub most_mm: f64,
    /// Most that a seat may be uneven: the difference within one liner.
    pub unevenness_mm: f64,
    /// Most that a seat may be cupped.
    pub cupping_mm: f64,
    /// Most that two neighbours may differ by at their nearest points.
    pub neighbours_mm: f64,
}

/// A liner in the plan. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointShimmed {
    /// Mean depth of its counterbore.
    pub mean_depth_mm: f64,
    /// Unevenness of its seat.
    pub unevenness_mm: f64,
    /// Thinnest stack that brings every place to the least protrusion; 0 or less when none is needed for that.
    pub least_shims_mm: f64,
    /// Thickest stack that leaves every place at the largest protrusion; below zero the liner stands too high without shims.
    pub most_shims_mm: f64,
    /// Smallest protrusion; NaN without a stack.
    pub lowest_mm: f64,
    /// Largest protrusion; NaN without a stack.
    pub highest_mm: f64,
    /// 1 when there is a stack, else 0: nothing serves the row.
    pub has_stack: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Number of its shims.
    pub shims: usize,
    /// Its shims by their places, as many as `shims` says.
    pub stack: [usize; 3],
}

/// Why a row of liners is ruled out.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointShimReason {
    /// The seat of the liner is too uneven: not fit to shim.
    Uneven = 1,
    /// The seat of the liner is cupped: not fit to shim.
    Cupped = 2,
    /// No stack of the shims brings the liner within its limits.
    NoStack = 3,
    /// No stack of the liner goes with those before it by the rule of neighbours.
    Neighbours = 4,
    /// From the liner on there are too few shims.
    TooFewShims = 5,
}

/// What rules out a row of liners. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointShimRuledOut {
    /// A GaugepointShimReason.
    pub reason: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Place of the liner.
    pub liner: usize,
}

/// The shims of a row, without its liners; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointShimPlan {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Number of reasons that rule the row out; 0 for one that can be done.
    pub ruled_out: usize,
    /// Shims that are used.
    pub shims_used: usize,
    /// 1 when the row can be done, else 0: of what follows nothing is given.
    pub is_done: i32,
    /// 1 when `largest_step_mm` is given, else 0.
    pub has_step: i32,
    /// Largest distance of a protrusion from the middle of the wanted ones.
    pub largest_deviation_mm: f64,
    /// Largest difference of neighbours at their nearest points.
    pub largest_step_mm: f64,
    /// What to take care of; a text that lives for ever.
    pub caution: *const c_char,
}

// SAFETY: three sizes, two int32_t, two doubles, a pointer
unsafe impl Record for GaugepointShimPlan {
    const SMALLEST: usize = 56;
}

/// Chooses the shims of a row of 1 to 24 liners from up to 12 thicknesses, exactly: the largest deviation from the middle of the wanted protrusions
/// is as small as it can be, and among such choices the number of shims.
///
/// `shimmed` has `liner_count` places. `ruled_out` gets what rules the row out; twice as many places as liners are enough. An uneven or cupped seat
/// is a finding there, and no error. A refused number is named "liners/2/depths_mm/1".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_shim_plan(
    liners: *const GaugepointLiner,
    liner_count: usize,
    shims: *const GaugepointShim,
    shim_count: usize,
    wanted: *const GaugepointWantedProtrusion,
    shimmed: *mut GaugepointShimmed,
    ruled_out: *mut GaugepointShimRuledOut,
    room: usize,
    out: *mut GaugepointShimPlan,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(
            error,
            (
                (array_out("shimmed", shimmed, liner_count), array_out("ruled_out", ruled_out, room)),
                record("out", out),
            ),
            || {
                let liners = all("liners", array("liners", liners, Some(liner_count))?, liner_of)?;
                let shims = all("shims", array("shims", shims, Some(shim_count))?, shim_of)?;
                let plan = shim_plan(&liners, &shims, &wanted_of(&given("wanted", wanted)?)?)?;
                let shimmed = plan.liners.iter().map(GaugepointShimmed::from).collect();
                let ruled_out = plan.ruled_out.iter().map(GaugepointShimRuledOut::from).collect();
                Ok(((shimmed, fitting(ruled_out, "room", room)?), GaugepointShimPlan::from(&plan)))
            },
        )
    }
}

/// The parts of a list; a refusal has its place.
pub(crate) fn all<T, P>(
    name: &str,
    given: &[T],
    part: impl Fn(&T) -> Result<P, Failure>,
) -> Result<Vec<P>, Failure> {
    let parts = given.iter().enumerate();
    parts.map(|(k, one)| part(one).map_err(|e| e.under(&format!("{name}/{k}")))).collect()
}

fn liner_of(liner: &GaugepointLiner) -> Result<Liner, Failure> {
    Ok(Liner {
        flange_mm: liner.flange_mm,
        depths_mm: liner.depths_mm,
        cupping_mm: flag("has_cupping", liner.has_cupping)?.then_some(liner.cupping_mm),
    })
}

fn shim_of(shim: &GaugepointShim) -> Result<Shim, Failure> {
    let available = flag("has_available", shim.has_available)?.then_some(shim.available);
    Ok(Shim { thickness_mm: shim.thickness_mm, available })
}

fn wanted_of(w: &GaugepointWantedProtrusion) -> Result<Wanted, Failure> {
    Ok(Wanted {
        least_mm: w.least_mm,
        most_mm: w.most_mm,
        unevenness_mm: w.unevenness_mm,
        cupping_mm: flag("has_cupping", w.has_cupping)?.then_some(w.cupping_mm),
        neighbours_mm: flag("has_neighbours", w.has_neighbours)?.then_some(w.neighbours_mm),
        most_on_one: w.most_on_one,
    })
}

impl From<&Shimmed> for GaugepointShimmed {
    fn from(s: &Shimmed) -> Self {
        let mut stack = [0; 3];
        let shims = s.stack.as_deref().unwrap_or_default();
        stack.iter_mut().zip(shims).for_each(|(place, shim)| *place = *shim);
        GaugepointShimmed {
            mean_depth_mm: s.mean_depth_mm,
            unevenness_mm: s.unevenness_mm,
            least_shims_mm: s.least_shims_mm,
            most_shims_mm: s.most_shims_mm,
            lowest_mm: s.lowest_mm.unwrap_or(f64::NAN),
            highest_mm: s.highest_mm.unwrap_or(f64::NAN),
            has_stack: s.stack.is_some().into(),
            reserved: 0,
            shims: shims.len(),
            stack,
        }
    }
}

impl From<&RuledOut> for GaugepointShimRuledOut {
    fn from(reason: &RuledOut) -> Self {
        let (reason, liner) = match *reason {
            RuledOut::Uneven { liner } => (GaugepointShimReason::Uneven, liner),
            RuledOut::Cupped { liner } => (GaugepointShimReason::Cupped, liner),
            RuledOut::NoStack { liner } => (GaugepointShimReason::NoStack, liner),
            RuledOut::Neighbours { liner } => (GaugepointShimReason::Neighbours, liner),
            RuledOut::TooFewShims { liner } => (GaugepointShimReason::TooFewShims, liner),
        };
        GaugepointShimRuledOut { reason: reason as i32, reserved: 0, liner }
    }
}

impl From<&ShimPlan> for GaugepointShimPlan {
    fn from(plan: &ShimPlan) -> Self {
        GaugepointShimPlan {
            struct_size: size_of::<Self>(),
            ruled_out: plan.ruled_out.len(),
            shims_used: plan.shims_used.unwrap_or_default(),
            is_done: plan.shims_used.is_some().into(),
            has_step: plan.largest_step_mm.is_some().into(),
            largest_deviation_mm: plan.largest_deviation_mm.unwrap_or(f64::NAN),
            largest_step_mm: plan.largest_step_mm.unwrap_or(f64::NAN),
            caution: caution(plan.caution),
        }
    }
}
