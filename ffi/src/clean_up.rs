//! Worn bores: the smallest bore that removes all wear, and the wall it leaves.

use crate::array::{array, array_out, fitting, given};
use crate::error::{Failure, GaugepointError};
use crate::guard::{cleared, status};
use crate::record::{Record, record};
use gaugepoint::ErrorKind;
use gaugepoint::plan::clean_up::{
    Allowance, Bar, BarAxis, CleanUp, Held, RadiusUncertainty, WallPoint, WornWall, clean_up, from_diameters,
    largest_by_walls, walls_left,
};

/// Where a boring bar stands.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointBarAxis {
    /// On the axis that the radii are counted from, which is the original one.
    Original = 1,
    /// On the axis of the worn bore, by least squares.
    Worn = 2,
    /// Where the bore comes out smallest, within a shift and a tilt.
    Best = 3,
}

/// The axis of a bar, from the original axis. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointBar {
    /// Its place at the middle of the depths, toward 0 degrees.
    pub x_mm: f64,
    /// The same toward 90 degrees.
    pub y_mm: f64,
    /// Middle of the depths.
    pub middle_mm: f64,
    /// How far it moves toward 0 degrees for each mm of depth.
    pub slope_x: f64,
    /// The same toward 90 degrees.
    pub slope_y: f64,
}

/// A point of the wall that holds the bore. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointHeld {
    /// Place of the point among those given.
    pub place: usize,
    /// Its share: how far the radius of the bore moves with that of the point. The shares add up to 1.
    pub share: f64,
}

/// A bore that removes all wear, without the points that hold it; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointCleanUp {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Number of points that hold it.
    pub held: usize,
    /// Its diameter with every allowance.
    pub diameter_mm: f64,
    /// Standard uncertainty of the diameter from that of the radii.
    pub standard_uncertainty_mm: f64,
    /// No bar that may stand elsewhere needs less than this; that of a fixed axis is the diameter.
    pub least_mm: f64,
    /// The bar that cuts it.
    pub bar: GaugepointBar,
}

// SAFETY: two sizes and doubles, eight bytes each
unsafe impl Record for GaugepointCleanUp {
    const SMALLEST: usize = 80;
}

/// The clean-up about the original axis as far as diameters tell it; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointCleanUpRange {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// When both sides are worn alike.
    pub lower_mm: f64,
    /// When one side alone is worn. This one is used, unless a radial trace or the unworn ridge shows how the wear is shared.
    pub upper_mm: f64,
}

// SAFETY: a size and doubles, eight bytes each
unsafe impl Record for GaugepointCleanUpRange {
    const SMALLEST: usize = 24;
}

/// A wall as it was gauged, by ultrasound as a rule. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointWallPoint {
    /// Angle, 0 to 360 degrees.
    pub angle_deg: f64,
    /// Depth from the deck.
    pub depth_mm: f64,
    /// Distance of the wall from the original axis when it was gauged.
    pub radius_mm: f64,
    /// Thickness.
    pub wall_mm: f64,
}

/// The smallest round, straight bore about an axis that removes all wear, from a radial trace of `count` points about the original axis.
///
/// At least three points; five for the worn axis over several depths. `axis` is a GaugepointBarAxis; `shift_mm` and `tilt` (mm on each mm of depth) say
/// how far the best one may go from the original, and are 0 for the others. `centring_mm` is the largest error of the centre of the bar, 0 leaves it out;
/// `stock_mm` removes the marks of the tool, on the diameter. `each_mm` and `common_mm` are standard uncertainties of one radius alone and of all together.
/// `held` gets the points that hold the bore; `count` places are enough. A refused number is named "radii_mm/3".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_clean_up(
    angles_deg: *const f64,
    depths_mm: *const f64,
    radii_mm: *const f64,
    count: usize,
    axis: i32,
    shift_mm: f64,
    tilt: f64,
    centring_mm: f64,
    stock_mm: f64,
    each_mm: f64,
    common_mm: f64,
    held: *mut GaugepointHeld,
    room: usize,
    out: *mut GaugepointCleanUp,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("held", held, room), record("out", out)), || {
            let wall = WornWall {
                angles_deg: array("angles_deg", angles_deg, Some(count))?,
                depths_mm: array("depths_mm", depths_mm, Some(count))?,
                radii_mm: array("radii_mm", radii_mm, Some(count))?,
            };
            let allowance = Allowance { centring_mm, stock_mm };
            let uncertainty = RadiusUncertainty { each_mm, common_mm };
            let found = clean_up(&wall, axis_of(axis, shift_mm, tilt)?, &allowance, &uncertainty)?;
            let held = found.held_by.iter().map(GaugepointHeld::from).collect();
            Ok((fitting(held, "room", room)?, GaugepointCleanUp::from(&found)))
        })
    }
}

/// The clean-up about the original axis from the unworn and the largest diameter: they never show on which side a bore is worn.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_clean_up_from_diameters(
    unworn_mm: f64,
    largest_mm: f64,
    stock_mm: f64,
    out: *mut GaugepointCleanUpRange,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let range = from_diameters(unworn_mm, largest_mm, stock_mm)?;
            Ok(GaugepointCleanUpRange {
                struct_size: size_of::<GaugepointCleanUpRange>(),
                lower_mm: range.lower_mm,
                upper_mm: range.upper_mm,
            })
        })
    }
}

/// Thickness in mm that is left of each of `count` walls when a bore of a diameter is cut about the axis of a bar; below zero the bar comes through.
///
/// Where the bar does not reach the wall it stays as it is. `left_mm` has `count` places. A refused number is named "walls/2/wall_mm".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_walls_left(
    bar: *const GaugepointBar,
    diameter_mm: f64,
    walls: *const GaugepointWallPoint,
    count: usize,
    left_mm: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, array_out("left_mm", left_mm, count), || {
            let bar = bar_of(&given("bar", bar)?);
            Ok(walls_left(&bar, diameter_mm, &walls_of(array("walls", walls, Some(count))?))?)
        })
    }
}

/// The largest bore in mm about the axis of a bar that leaves at least a thickness of each of `count` walls, of which there is one or more.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_largest_bore_by_walls_mm(
    bar: *const GaugepointBar,
    least_wall_mm: f64,
    walls: *const GaugepointWallPoint,
    count: usize,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            let bar = bar_of(&given("bar", bar)?);
            let walls = walls_of(array("walls", walls, Some(count))?);
            largest_by_walls(&bar, least_wall_mm, &walls)?.ok_or_else(|| {
                Failure::refused(ErrorKind::MissingField, "walls", "without walls no bore is too large")
            })
        })
    }
}

fn axis_of(axis: i32, shift_mm: f64, tilt: f64) -> Result<BarAxis, Failure> {
    let fixed = match axis {
        a if a == GaugepointBarAxis::Original as i32 => BarAxis::Original,
        a if a == GaugepointBarAxis::Worn as i32 => BarAxis::Worn,
        a if a == GaugepointBarAxis::Best as i32 => return Ok(BarAxis::Best { shift_mm, tilt }),
        _ => return Err(Failure::choice("axis", axis, "1, 2, 3")),
    };
    for (field, number) in [("shift_mm", shift_mm), ("tilt", tilt)] {
        // NaN is none either
        if number.abs() > 0.0 || number.is_nan() {
            return Err(Failure::refused(
                ErrorKind::Contradiction,
                field,
                "this axis does not use the number",
            ));
        }
    }
    Ok(fixed)
}

fn bar_of(bar: &GaugepointBar) -> Bar {
    let GaugepointBar { x_mm, y_mm, middle_mm, slope_x, slope_y } = *bar;
    Bar { x_mm, y_mm, middle_mm, slope_x, slope_y }
}

fn walls_of(walls: &[GaugepointWallPoint]) -> Vec<WallPoint> {
    let one = |w: &GaugepointWallPoint| WallPoint {
        angle_deg: w.angle_deg,
        depth_mm: w.depth_mm,
        radius_mm: w.radius_mm,
        wall_mm: w.wall_mm,
    };
    walls.iter().map(one).collect()
}

impl From<&Held> for GaugepointHeld {
    fn from(held: &Held) -> Self {
        GaugepointHeld { place: held.place, share: held.share }
    }
}

impl From<&CleanUp> for GaugepointCleanUp {
    fn from(c: &CleanUp) -> Self {
        let Bar { x_mm, y_mm, middle_mm, slope_x, slope_y } = c.bar;
        GaugepointCleanUp {
            struct_size: size_of::<Self>(),
            held: c.held_by.len(),
            diameter_mm: c.diameter_mm,
            standard_uncertainty_mm: c.standard_uncertainty_mm,
            least_mm: c.least_mm,
            bar: GaugepointBar { x_mm, y_mm, middle_mm, slope_x, slope_y },
        }
    }
}
