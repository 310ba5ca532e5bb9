//! The form of a piston.

use crate::array::{array, array_out, fitting, given, rows};
use crate::error::{Failure, GaugepointError};
use crate::guard::{cleared, kept, status};
use crate::record::{Record, record};
use crate::text::flag;
use gaugepoint::shape::piston::{
    Asymmetric, Counted, Estimate, FittedSurface, Form, FormWarning, Largest, OddForm, PistonShape, Points,
    Reading, Station, SurfaceDrawing, Symmetric, Table, TraceFit, Window, WindowKind, fit_surface, fit_trace,
};

/// Whether the sides of a surface are equal.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointPistonForm {
    /// Both sides are equal: tables of diameters.
    Symmetric = 1,
    /// Each side has its own: tables of radii.
    Asymmetric = 2,
}

/// How the rows of a table against the gauge diameter are counted.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointCounted {
    /// Size there less the size at the gauge point: negative where the piston is smaller.
    Above = 1,
    /// Drop: positive where the piston is smaller.
    Below = 2,
}

/// What a window takes away.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointWindowKind {
    /// There is no surface: a cut-out, a slot, a relief.
    CutOut = 1,
    /// There is no coating: a place to measure bare metal.
    Bare = 2,
}

/// What was read at each point of a piston.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointPistonReading {
    /// Radii from any one axis near that of the piston.
    Radii = 1,
    /// Two-point diameters at the angles of their axes.
    Diameters = 2,
}

/// What is odd about the form of a piston; none of it is refused.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointOddForm {
    /// A diameter beside the gauge direction is larger.
    LargerBeside = 1,
    /// A diameter beside the pin axis is smaller.
    SmallerBeside = 2,
    /// The ovality is not usual.
    OddOvality = 3,
    /// The diameter against the gauge diameter is not usual for a skirt.
    OddBarrel = 4,
    /// The skirt changes over its height more than is usual.
    OddSlope = 5,
    /// The coating is not usual.
    OddCoating = 6,
}

/// A row of a table over height. A plain structure; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointTableRow {
    /// Height from the bottom edge of the skirt.
    pub height_mm: f64,
    /// The quantity there.
    pub value_mm: f64,
}

/// A table over height: one row holds at every height, two are a straight line, more a monotone cubic. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointTable {
    /// The rows by rising height; may be NULL when there are none.
    pub rows: *const GaugepointTableRow,
    /// How many there are; 0 leaves the table out.
    pub count: usize,
}

/// A part of a surface that lacks something; its edge belongs to what is around. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointWindow {
    /// A GaugepointWindowKind.
    pub kind: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Angle at which it begins.
    pub from_deg: f64,
    /// Angle at which it ends, in the direction of rising angles: from 350 to 10 is 20 degrees wide.
    pub to_deg: f64,
    /// Height at which it begins.
    pub from_mm: f64,
    /// Height at which it ends.
    pub to_mm: f64,
}

/// A skirt or a land as its drawing gives it. A plain structure; start it zeroed.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPistonSurface {
    /// A GaugepointPistonForm: which of the tables count.
    pub form: i32,
    /// A GaugepointCounted: how `barrel`, `thrust`, `pin_axis` and `minor_thrust` are counted.
    pub counted: i32,
    /// 1 when the two panels are given, else 0: all round.
    pub has_panels: i32,
    /// 1 when `coating_mm` is given, else 0.
    pub has_coating: i32,
    /// Height at which it begins.
    pub from_mm: f64,
    /// Height at which it ends.
    pub to_mm: f64,
    /// Half-width of the thrust panel; beside the panels there is no surface.
    pub thrust_panel_deg: f64,
    /// Half-width of the minor thrust panel.
    pub minor_thrust_panel_deg: f64,
    /// Coating, per side.
    pub coating_mm: f64,
    /// Symmetric: diameter in the thrust direction against the gauge diameter.
    pub barrel: GaugepointTable,
    /// Symmetric: diameter in the thrust direction less that on the pin axis.
    pub ovality: GaugepointTable,
    /// Symmetric: diameter added at 45 degrees; none is a simple oval.
    pub double_ovality: GaugepointTable,
    /// Asymmetric: radius on the major thrust side against half the gauge diameter.
    pub thrust: GaugepointTable,
    /// Asymmetric: radius on the pin axis against half the gauge diameter.
    pub pin_axis: GaugepointTable,
    /// Asymmetric: radius on the minor thrust side against half the gauge diameter.
    pub minor_thrust: GaugepointTable,
    /// Asymmetric: radius added at 45 degrees on the major thrust side; none is a simple oval.
    pub thrust_fourth: GaugepointTable,
    /// Asymmetric: radius added at 135 degrees on the minor thrust side; none is a simple oval.
    pub minor_thrust_fourth: GaugepointTable,
    /// Where there is no metal or no coating; may be NULL when there are none.
    pub windows: *const GaugepointWindow,
    /// How many there are.
    pub window_count: usize,
}

/// Skirt and lands of a piston, but for its size. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPiston {
    /// Height of the gauge point, on the skirt at angle 0.
    pub gauge_height_mm: f64,
    /// The skirt first, then the lands upward.
    pub surfaces: *const GaugepointPistonSurface,
    /// How many there are.
    pub surface_count: usize,
}

/// The largest diameter of a section; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointLargest {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Its angle, from 0 up to 180 degrees; of several the smallest.
    pub angle_deg: f64,
    /// The diameter.
    pub diameter_mm: f64,
}

// SAFETY: a size and doubles
unsafe impl Record for GaugepointLargest {
    const SMALLEST: usize = 24;
}

/// Something odd about the form of a piston, where it is worst. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointFormWarning {
    /// A GaugepointOddForm.
    pub kind: i32,
    /// 1 when `angle_deg` is given, else 0.
    pub has_angle: i32,
    /// Place of the surface, 0 the skirt.
    pub surface: usize,
    /// Height.
    pub height_mm: f64,
    /// Angle of the diameter that is larger or smaller.
    pub angle_deg: f64,
    /// By how much it is larger or smaller, or what is odd, in mm; a slope in um/mm.
    pub value: f64,
}

/// Measured points of a piston. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPistonPoints {
    /// Height of each point from the bottom edge of the skirt.
    pub heights_mm: *const f64,
    /// Angle of each, 0 to 360 degrees.
    pub angles_deg: *const f64,
    /// Radius or diameter of each.
    pub values_mm: *const f64,
    /// How many there are.
    pub count: usize,
    /// A GaugepointPistonReading.
    pub reading: i32,
    /// 1 when `uncertainty_mm` is given, else 0.
    pub has_uncertainty: i32,
    /// Standard uncertainty of one reading; it counts where no reading is left to see the scatter by.
    pub uncertainty_mm: f64,
}

/// What the points at one height say; diametral. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPistonStation {
    /// The height.
    pub height_mm: f64,
    /// Points there.
    pub points: usize,
    /// 1 when the uncertainties are given, else 0: nothing is left to see them by.
    pub has_uncertainty: i32,
    /// 1 when the double ovality is given, else 0: it was not asked for.
    pub has_double_ovality: i32,
    /// Diameter in the thrust direction.
    pub diameter_mm: f64,
    /// Its standard uncertainty.
    pub diameter_uncertainty_mm: f64,
    /// That less the diameter on the pin axis.
    pub ovality_mm: f64,
    /// Its standard uncertainty.
    pub ovality_uncertainty_mm: f64,
    /// Diameter added at 45 degrees.
    pub double_ovality_mm: f64,
    /// Its standard uncertainty.
    pub double_ovality_uncertainty_mm: f64,
    /// How well the angles tell them apart: 1 when they are spread evenly.
    pub least_share: f64,
}

/// A surface as points say it is, without its stations and residuals; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPistonFit {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Number of stations that were written.
    pub stations: usize,
    /// Readings less unknowns.
    pub dof: usize,
    /// 1 when `deviation_mm` is given, else 0: there are no degrees of freedom.
    pub has_deviation: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Standard deviation of a reading about the fit, over all stations.
    pub deviation_mm: f64,
}

// SAFETY: three sizes, two int32_t, a double
unsafe impl Record for GaugepointPistonFit {
    const SMALLEST: usize = 40;
}

/// How a piston lies and what is left, when it is held against a form, without its residuals; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPistonTrace {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Place of the largest residual, without sign.
    pub largest: usize,
    /// Readings less unknowns.
    pub dof: usize,
    /// 1 when the uncertainties are given, else 0.
    pub has_uncertainty: i32,
    /// 1 when `deviation_mm` is given, else 0: there are no degrees of freedom.
    pub has_deviation: i32,
    /// 1 when `x_mm` is given, else 0: the points do not see it.
    pub has_x: i32,
    /// 1 when `y_mm` is given, else 0.
    pub has_y: i32,
    /// 1 when `slope_x` is given, else 0.
    pub has_slope_x: i32,
    /// 1 when `slope_y` is given, else 0.
    pub has_slope_y: i32,
    /// Diameter of the piston less that of the form.
    pub size_mm: f64,
    /// Its standard uncertainty.
    pub size_uncertainty_mm: f64,
    /// Position of the axis along 0 degrees, at `height_mm`.
    pub x_mm: f64,
    /// Its standard uncertainty.
    pub x_uncertainty_mm: f64,
    /// Position of the axis along 90 degrees, at `height_mm`.
    pub y_mm: f64,
    /// Its standard uncertainty.
    pub y_uncertainty_mm: f64,
    /// How far the axis moves along 0 degrees for each mm of height.
    pub slope_x: f64,
    /// Its standard uncertainty.
    pub slope_x_uncertainty: f64,
    /// How far the axis moves along 90 degrees for each mm of height.
    pub slope_y: f64,
    /// Its standard uncertainty.
    pub slope_y_uncertainty: f64,
    /// Height of the position.
    pub height_mm: f64,
    /// Root of the mean square of the residuals.
    pub rms_mm: f64,
    /// Standard deviation of a reading about the fit.
    pub deviation_mm: f64,
    /// How well the points tell the unknowns apart: 1 when they are spread evenly.
    pub least_share: f64,
}

// SAFETY: three sizes, six int32_t, doubles
unsafe impl Record for GaugepointPistonTrace {
    const SMALLEST: usize = 160;
}

/// Radius at a height and an angle, with the coating where there is one; the gauge diameter is that of bare metal.
///
/// Refused where there is no surface: between surfaces, in a cut-out, beside the panels.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_piston_radius_mm(
    piston: *const GaugepointPiston,
    gauge_diameter_mm: f64,
    height_mm: f64,
    angle_deg: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(shape(piston)?.radius_mm(gauge_diameter_mm, height_mm, angle_deg)?)
        })
    }
}

/// Diameter that a micrometer reads at a height and an angle: the radii at both ends. As gaugepoint_piston_radius_mm.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_piston_diameter_mm(
    piston: *const GaugepointPiston,
    gauge_diameter_mm: f64,
    height_mm: f64,
    angle_deg: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(shape(piston)?.diameter_mm(gauge_diameter_mm, height_mm, angle_deg)?)
        })
    }
}

/// Ovality that a micrometer reads at a height: the diameter at 0 less that at 90 degrees.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_piston_ovality_mm(
    piston: *const GaugepointPiston,
    height_mm: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(shape(piston)?.ovality_mm(height_mm)?)) }
}

/// The largest diameter that a micrometer finds at a height, over all angles at which both ends have a surface.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_piston_largest(
    piston: *const GaugepointPiston,
    gauge_diameter_mm: f64,
    height_mm: f64,
    out: *mut GaugepointLargest,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || Ok(shape(piston)?.largest(gauge_diameter_mm, height_mm)?.into()))
    }
}

/// What is odd about a form: of each kind and surface the worst. Six for each surface are room enough.
///
/// `count` gets their number, which is kept on failure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_piston_warnings(
    piston: *const GaugepointPiston,
    warnings: *mut GaugepointFormWarning,
    room: usize,
    count: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("warnings", warnings, room), kept("count", count)), || {
            let found = shape(piston)?.warnings().into_iter().map(GaugepointFormWarning::from).collect();
            let found: Vec<GaugepointFormWarning> = fitting(found, "room", room)?;
            let count = found.len();
            Ok((found, count))
        })
    }
}

/// Fits a symmetric surface to points: at each height the diameter, the ovality and, with `double_ovality` 1, that too.
///
/// `stations` has `room`; `residuals_mm` has room for one number for each point: reading less fit. Heights within a
/// micrometre are one station. Radii may be counted from any axis near that of the piston. Refused when the angles at a
/// height do not tell the unknowns apart.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_fit_piston_surface(
    points: *const GaugepointPistonPoints,
    double_ovality: i32,
    stations: *mut GaugepointPistonStation,
    room: usize,
    residuals_mm: *mut f64,
    out: *mut GaugepointPistonFit,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(
            error,
            (
                (array_out("stations", stations, room), array_out("residuals_mm", residuals_mm, usize::MAX)),
                record("out", out),
            ),
            || {
                let fit = fit_surface(&points_of(points)?, flag("double_ovality", double_ovality)?)?;
                let found = fit.stations.iter().copied().map(GaugepointPistonStation::from).collect();
                let found = fitting(found, "room", room)?;
                let record = GaugepointPistonFit::from(&fit);
                Ok(((found, fit.residuals_mm), record))
            },
        )
    }
}

/// Holds points against a form: the size, position and tilt that leave the least squares, to the first order, and what is
/// left.
///
/// `residuals_mm` has room for one number for each point: reading less form; below zero material is missing.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_fit_piston_trace(
    piston: *const GaugepointPiston,
    gauge_diameter_mm: f64,
    points: *const GaugepointPistonPoints,
    residuals_mm: *mut f64,
    out: *mut GaugepointPistonTrace,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("residuals_mm", residuals_mm, usize::MAX), record("out", out)), || {
            let fit = fit_trace(&shape(piston)?, gauge_diameter_mm, &points_of(points)?)?;
            let record = GaugepointPistonTrace::from(&fit);
            Ok((fit.residuals_mm, record))
        })
    }
}

/// The caller's points.
///
/// # Safety
/// As the header says.
unsafe fn points_of<'a>(points: *const GaugepointPistonPoints) -> Result<Points<'a>, Failure> {
    // SAFETY: the caller's promise
    unsafe {
        let p = given("points", points)?;
        Ok(Points {
            heights_mm: array("heights_mm", p.heights_mm, Some(p.count))?,
            angles_deg: array("angles_deg", p.angles_deg, Some(p.count))?,
            values_mm: array("values_mm", p.values_mm, Some(p.count))?,
            reading: match p.reading {
                1 => Reading::Radii,
                2 => Reading::Diameters,
                other => return Err(Failure::choice("reading", other, "1, 2")),
            },
            uncertainty_mm: flag("has_uncertainty", p.has_uncertainty)?.then_some(p.uncertainty_mm),
        })
    }
}

/// Heights and values of a table.
type Columns = (Vec<f64>, Vec<f64>);

/// The caller's piston.
///
/// # Safety
/// As the header says.
pub(crate) unsafe fn shape(piston: *const GaugepointPiston) -> Result<PistonShape, Failure> {
    // SAFETY: the caller's promise
    unsafe {
        let piston = given("piston", piston)?;
        let surfaces = rows("surfaces", piston.surfaces, piston.surface_count)?;
        let tables = surfaces.iter().map(|s| columns(s)).collect::<Result<Vec<_>, _>>()?;
        let drawn =
            surfaces.iter().zip(&tables).map(|(s, t)| drawing(s, t)).collect::<Result<Vec<_>, _>>()?;
        Ok(PistonShape::from_drawings(piston.gauge_height_mm, &drawn)?)
    }
}

/// The eight tables of a surface.
///
/// # Safety
/// As the header says.
unsafe fn columns(s: &GaugepointPistonSurface) -> Result<[Columns; 8], Failure> {
    let column = |field: &'static str, table: GaugepointTable| -> Result<Columns, Failure> {
        // SAFETY: the caller's promise
        let rows = unsafe { rows(field, table.rows, table.count) }?;
        Ok(rows.iter().map(|row| (row.height_mm, row.value_mm)).unzip())
    };
    Ok([
        column("barrel", s.barrel)?,
        column("ovality", s.ovality)?,
        column("double_ovality", s.double_ovality)?,
        column("thrust", s.thrust)?,
        column("pin_axis", s.pin_axis)?,
        column("minor_thrust", s.minor_thrust)?,
        column("thrust_fourth", s.thrust_fourth)?,
        column("minor_thrust_fourth", s.minor_thrust_fourth)?,
    ])
}

/// A surface of the caller, with its tables.
///
/// # Safety
/// As the header says.
unsafe fn drawing<'a>(
    s: &GaugepointPistonSurface,
    tables: &'a [Columns; 8],
) -> Result<SurfaceDrawing<'a>, Failure> {
    let [barrel, ovality, double, thrust, pin_axis, minor, thrust_fourth, minor_fourth] =
        tables.each_ref().map(|(heights_mm, values_mm)| Table { heights_mm, values_mm });
    let optional = |table: Table<'a>| (!table.heights_mm.is_empty()).then_some(table);
    let counted = match s.counted {
        1 => Counted::Above,
        2 => Counted::Below,
        other => return Err(Failure::choice("counted", other, "1, 2")),
    };
    let form = match s.form {
        1 => Form::Symmetric(Symmetric { barrel, counted, ovality, double_ovality: optional(double) }),
        2 => Form::Asymmetric(Asymmetric {
            thrust,
            pin_axis,
            minor_thrust: minor,
            counted,
            thrust_fourth: optional(thrust_fourth),
            minor_thrust_fourth: optional(minor_fourth),
        }),
        other => return Err(Failure::choice("form", other, "1, 2")),
    };
    // SAFETY: the caller's promise
    let windows = unsafe { rows("windows", s.windows, s.window_count) }?;
    Ok(SurfaceDrawing {
        from_mm: s.from_mm,
        to_mm: s.to_mm,
        form,
        panel_deg: flag("has_panels", s.has_panels)?
            .then_some((s.thrust_panel_deg, s.minor_thrust_panel_deg)),
        coating_mm: flag("has_coating", s.has_coating)?.then_some(s.coating_mm),
        windows: windows.iter().map(window).collect::<Result<Vec<_>, _>>()?,
    })
}

fn window(w: &GaugepointWindow) -> Result<Window, Failure> {
    let kind = match w.kind {
        1 => WindowKind::CutOut,
        2 => WindowKind::Bare,
        other => return Err(Failure::choice("kind", other, "1, 2")),
    };
    Ok(Window { kind, from_deg: w.from_deg, to_deg: w.to_deg, from_mm: w.from_mm, to_mm: w.to_mm })
}

impl From<Largest> for GaugepointLargest {
    fn from(l: Largest) -> Self {
        GaugepointLargest {
            struct_size: size_of::<Self>(),
            angle_deg: l.angle_deg,
            diameter_mm: l.diameter_mm,
        }
    }
}

impl From<FormWarning> for GaugepointFormWarning {
    fn from(w: FormWarning) -> Self {
        let kind = match w.kind {
            OddForm::LargerBeside => GaugepointOddForm::LargerBeside,
            OddForm::SmallerBeside => GaugepointOddForm::SmallerBeside,
            OddForm::OddOvality => GaugepointOddForm::OddOvality,
            OddForm::OddBarrel => GaugepointOddForm::OddBarrel,
            OddForm::OddSlope => GaugepointOddForm::OddSlope,
            OddForm::OddCoating => GaugepointOddForm::OddCoating,
        };
        GaugepointFormWarning {
            kind: kind as i32,
            has_angle: w.angle_deg.is_some().into(),
            surface: w.surface,
            height_mm: w.height_mm,
            angle_deg: w.angle_deg.unwrap_or(f64::NAN),
            value: w.value,
        }
    }
}

/// Value and uncertainty, NaN where there is none.
fn both(estimate: Option<Estimate>) -> (f64, f64) {
    estimate.map_or((f64::NAN, f64::NAN), |e| (e.value, e.uncertainty.unwrap_or(f64::NAN)))
}

impl From<Station> for GaugepointPistonStation {
    fn from(s: Station) -> Self {
        let (diameter_mm, diameter_uncertainty_mm) = both(Some(s.diameter_mm));
        let (ovality_mm, ovality_uncertainty_mm) = both(Some(s.ovality_mm));
        let (double_ovality_mm, double_ovality_uncertainty_mm) = both(s.double_ovality_mm);
        GaugepointPistonStation {
            height_mm: s.height_mm,
            points: s.points,
            has_uncertainty: s.diameter_mm.uncertainty.is_some().into(),
            has_double_ovality: s.double_ovality_mm.is_some().into(),
            diameter_mm,
            diameter_uncertainty_mm,
            ovality_mm,
            ovality_uncertainty_mm,
            double_ovality_mm,
            double_ovality_uncertainty_mm,
            least_share: s.least_share,
        }
    }
}

impl From<&FittedSurface> for GaugepointPistonFit {
    fn from(f: &FittedSurface) -> Self {
        GaugepointPistonFit {
            struct_size: size_of::<Self>(),
            stations: f.stations.len(),
            dof: f.dof,
            has_deviation: f.deviation_mm.is_some().into(),
            reserved: 0,
            deviation_mm: f.deviation_mm.unwrap_or(f64::NAN),
        }
    }
}

impl From<&TraceFit> for GaugepointPistonTrace {
    fn from(f: &TraceFit) -> Self {
        let (size_mm, size_uncertainty_mm) = both(Some(f.size_mm));
        let (x_mm, x_uncertainty_mm) = both(f.x_mm);
        let (y_mm, y_uncertainty_mm) = both(f.y_mm);
        let (slope_x, slope_x_uncertainty) = both(f.slope_x);
        let (slope_y, slope_y_uncertainty) = both(f.slope_y);
        GaugepointPistonTrace {
            struct_size: size_of::<Self>(),
            largest: f.largest,
            dof: f.dof,
            has_uncertainty: f.size_mm.uncertainty.is_some().into(),
            has_deviation: f.deviation_mm.is_some().into(),
            has_x: f.x_mm.is_some().into(),
            has_y: f.y_mm.is_some().into(),
            has_slope_x: f.slope_x.is_some().into(),
            has_slope_y: f.slope_y.is_some().into(),
            size_mm,
            size_uncertainty_mm,
            x_mm,
            x_uncertainty_mm,
            y_mm,
            y_uncertainty_mm,
            slope_x,
            slope_x_uncertainty,
            slope_y,
            slope_y_uncertainty,
            height_mm: f.height_mm,
            rms_mm: f.rms_mm,
            deviation_mm: f.deviation_mm.unwrap_or(f64::NAN),
            least_share: f.least_share,
        }
    }
}
