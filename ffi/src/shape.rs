//! Shapes from full traces.

use crate::array::{array, array_out, fitting};
use crate::error::{Failure, GaugepointError};
use crate::guard::{cleared, status};
use crate::record::{Record, record};
use crate::text::flag;
use gaugepoint::shape::circle::{self, Algebraic, Circle, Form, Reference};
use gaugepoint::shape::cylinder::{self, Cylinder};
use gaugepoint::shape::plane::{self, BoreAxis, Plane};
use gaugepoint::shape::section::{self, Harmonic, Section};

/// What a shape is fitted by.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointReference {
    /// Least sum of squares of the distances.
    LeastSquares = 1,
    /// Two shapes with one centre or axis that hold all points between them as narrowly as can be.
    MinimumZone = 2,
    /// The smallest that holds all points.
    MinimumCircumscribed = 3,
    /// The largest that all points are outside of.
    MaximumInscribed = 4,
}

/// What the equation of a circle is held to.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointAlgebraic {
    /// Its numbers have the square sum 1: depends on the origin of the coordinates, for comparison only.
    UnitNorm = 1,
    /// Pratt's.
    Pratt = 2,
    /// Taubin's.
    Taubin = 3,
    /// That of Al-Sharadqah and Chernov, without bias to the second order.
    Hyperaccurate = 4,
}

/// What the points leave over a reference: roundness, cylindricity or flatness.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointForm {
    /// Outside and inside together (RONt, CYLt).
    pub total_mm: f64,
    /// Largest distance of a point beyond the reference, away from the centre; of a plane: above it.
    pub outside_mm: f64,
    /// Largest distance of a point within the reference; of a plane: below it.
    pub inside_mm: f64,
    /// Root of the mean square of all distances (RONq, CYLq about the least-squares reference).
    pub rms_mm: f64,
}

/// A circle that points were fitted by; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointCircle {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Centre.
    pub x_mm: f64,
    /// Centre.
    pub y_mm: f64,
    /// Radius; of a minimum zone the mean of its two.
    pub radius_mm: f64,
    /// What the points leave: roundness.
    pub form: GaugepointForm,
}

// SAFETY: a size and doubles, eight bytes each
unsafe impl Record for GaugepointCircle {
    const SMALLEST: usize = 64;
}

/// A cylinder that points were fitted by; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointCylinder {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// The axis at `z_mm`.
    pub x_mm: f64,
    /// The axis at `z_mm`.
    pub y_mm: f64,
    /// Depth of that point of the axis: in the middle of the first and the last point.
    pub z_mm: f64,
    /// How far the axis moves along x for each mm of depth.
    pub slope_x: f64,
    /// How far the axis moves along y for each mm of depth.
    pub slope_y: f64,
    /// Radius; of a minimum zone the mean of its two.
    pub radius_mm: f64,
    /// What the points leave: cylindricity.
    pub form: GaugepointForm,
}

// SAFETY: a size and doubles, eight bytes each
unsafe impl Record for GaugepointCylinder {
    const SMALLEST: usize = 88;
}

/// A plane that points were fitted by; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPlane {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when `direction_deg` is given, else 0: the plane has no tilt.
    pub has_direction: i32,
    /// Always 0.
    pub reserved: i32,
    /// A point of the plane: the mean of the points along x and y.
    pub x_mm: f64,
    /// A point of the plane.
    pub y_mm: f64,
    /// A point of the plane; of a minimum zone in the middle of its two.
    pub z_mm: f64,
    /// Rise along z for each mm along x.
    pub slope_x: f64,
    /// Rise along z for each mm along y.
    pub slope_y: f64,
    /// Rise for each mm in the direction of steepest rise: the tilt.
    pub slope: f64,
    /// Direction of steepest rise, from x toward y, -180 to 180 degrees.
    pub direction_deg: f64,
    /// What the points leave: flatness.
    pub form: GaugepointForm,
}

// SAFETY: a size, two int32_t, doubles
unsafe impl Record for GaugepointPlane {
    const SMALLEST: usize = 104;
}

/// How a bore's axis stands to the main line; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointBoreAxis {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Shortest distance between the two lines.
    pub offset_mm: f64,
    /// Where along the main line that is, from its first point toward its last.
    pub station_mm: f64,
    /// How far the angle between the lines is from a right one; positive when the bore, from its first point to its
    /// last, leans toward the last point of the main line.
    pub out_of_square_mrad: f64,
    /// Length of the bore from its first point to its last, along its axis.
    pub length_mm: f64,
    /// The same as `out_of_square_mrad`, over `length_mm`.
    pub out_of_square_mm: f64,
    /// Twice the largest distance of a point of the bore from its straight axis.
    pub bore_straightness_mm: f64,
    /// Twice the largest distance of a point of the main line from its straight line.
    pub main_straightness_mm: f64,
}

// SAFETY: a size and doubles, eight bytes each
unsafe impl Record for GaugepointBoreAxis {
    const SMALLEST: usize = 64;
}

/// One order of a section: cos_mm cos(n angle) + sin_mm sin(n angle).
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointHarmonic {
    /// Undulations in one turn, n.
    pub order: usize,
    /// 1 when `cos_mm` is given, else 0: the cosine is zero at every angle that was read.
    pub has_cos: i32,
    /// 1 when `sin_mm` is given, else 0: the sine is zero at every angle that was read.
    pub has_sin: i32,
    /// Cosine part.
    pub cos_mm: f64,
    /// Sine part.
    pub sin_mm: f64,
}

/// A section without its harmonics, which stand in an array of their own; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointSection {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Number of harmonics that were written.
    pub harmonics: usize,
    /// 1 when `x_mm` and `y_mm` are given, else 0: diameters do not show the position, nor does order 0.
    pub has_position: i32,
    /// 1 when `residual_mm` is given, else 0: nothing is left to see it by.
    pub has_residual: i32,
    /// Mean radius.
    pub mean_radius_mm: f64,
    /// Position of the axis along 0 degrees, to the first order.
    pub x_mm: f64,
    /// Position of the axis along 90 degrees, to the first order.
    pub y_mm: f64,
    /// Experimental standard deviation of a radius about the section.
    pub residual_mm: f64,
    /// How well the angles tell the orders apart: 1 when they are spread evenly. Noise of the readings is enlarged by about
    /// its inverse.
    pub least_share: f64,
}

// SAFETY: sizes, two int32_t, doubles
unsafe impl Record for GaugepointSection {
    const SMALLEST: usize = 64;
}

/// Fits a circle to `count` points of a section, at least three, by the true distances.
///
/// `reference` is a GaugepointReference; all but least squares need points in every half of the circle. Minimum zone and
/// maximum inscribed are the best near the least-squares circle. A refused number is named "x_mm/3". ISO 12181-1.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_fit_circle(
    x_mm: *const f64,
    y_mm: *const f64,
    count: usize,
    reference: i32,
    out: *mut GaugepointCircle,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let (x, y) = (array("x_mm", x_mm, Some(count))?, array("y_mm", y_mm, Some(count))?);
            Ok(circle::fit(x, y, reference_of(reference)?)?.into())
        })
    }
}

/// Fits the equation of a circle to `count` points, at least three: no iteration, but biased on short arcs.
///
/// `method` is a GaugepointAlgebraic. The form is that of the distances from the circle.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_fit_circle_algebraic(
    x_mm: *const f64,
    y_mm: *const f64,
    count: usize,
    method: i32,
    out: *mut GaugepointCircle,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let (x, y) = (array("x_mm", x_mm, Some(count))?, array("y_mm", y_mm, Some(count))?);
            Ok(circle::fit_algebraic(x, y, algebraic_of(method)?)?.into())
        })
    }
}

/// Fits a cylinder to `count` points of a bore or a piston, at least five at two depths, by the true distances.
///
/// z is the depth; the axis leans from it by a tenth at most. `reference` is as in gaugepoint_fit_circle. ISO 12180-1.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_fit_cylinder(
    x_mm: *const f64,
    y_mm: *const f64,
    z_mm: *const f64,
    count: usize,
    reference: i32,
    out: *mut GaugepointCylinder,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let (x, y) = (array("x_mm", x_mm, Some(count))?, array("y_mm", y_mm, Some(count))?);
            let z = array("z_mm", z_mm, Some(count))?;
            Ok(cylinder::fit(x, y, z, reference_of(reference)?)?.into())
        })
    }
}

/// Fits a plane to `count` points of a deck, at least three that do not lie on a line; z is the height.
///
/// `reference` is GAUGEPOINT_REFERENCE_LEAST_SQUARES or GAUGEPOINT_REFERENCE_MINIMUM_ZONE. Distances are perpendicular
/// to the plane. ISO 12781-1.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_fit_plane(
    x_mm: *const f64,
    y_mm: *const f64,
    z_mm: *const f64,
    count: usize,
    reference: i32,
    out: *mut GaugepointPlane,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let (x, y) = (array("x_mm", x_mm, Some(count))?, array("y_mm", y_mm, Some(count))?);
            let z = array("z_mm", z_mm, Some(count))?;
            Ok(plane::fit(x, y, z, reference_of(reference)?)?.into())
        })
    }
}

/// Squareness and position of a bore to the main line, from points of both: x, y, z of the first, of the second, and so on.
///
/// At least two points of each, in their order: centres of the bore's sections, centres of the main bearings. A refused
/// number is named by its point and its place there: "bore_mm/1/2".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_bore_to_main_line(
    bore_mm: *const f64,
    bore_points: usize,
    main_mm: *const f64,
    main_points: usize,
    out: *mut GaugepointBoreAxis,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let bore = array("bore_mm", bore_mm, bore_points.checked_mul(3))?;
            let main = array("main_mm", main_mm, main_points.checked_mul(3))?;
            Ok(plane::bore_to_main_line(bore.as_chunks().0, main.as_chunks().0)?.into())
        })
    }
}

/// Harmonics of a section up to `order` by least squares, from `count` radii at angles from 0 to 360 degrees.
///
/// Radii are counted from any one centre near the axis. Order 1, the position, stands in `out`; `harmonics` gets the orders
/// from 2 up, rising, and has `room` for them: `order` is enough. An order that the angles do not resolve is refused,
/// with those they do as the accepted range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_section_from_radii(
    angles_deg: *const f64,
    radii_mm: *const f64,
    count: usize,
    order: usize,
    harmonics: *mut GaugepointHarmonic,
    room: usize,
    out: *mut GaugepointSection,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("harmonics", harmonics, room), record("out", out)), || {
            let angles = array("angles_deg", angles_deg, Some(count))?;
            let radii = array("radii_mm", radii_mm, Some(count))?;
            parts(section::from_radii(angles, radii, order)?, room)
        })
    }
}

/// Harmonics of a section up to `order`, which is even, from `count` two-point diameters at the angles of their axes.
///
/// `harmonics` gets the even orders from 2 up and has `room` for them: `order` is enough. Two axes give the mean and one
/// phase of order 2, four axes order 2 and one phase of order 4.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_section_from_diameters(
    angles_deg: *const f64,
    diameters_mm: *const f64,
    count: usize,
    order: usize,
    harmonics: *mut GaugepointHarmonic,
    room: usize,
    out: *mut GaugepointSection,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("harmonics", harmonics, room), record("out", out)), || {
            let angles = array("angles_deg", angles_deg, Some(count))?;
            let diameters = array("diameters_mm", diameters_mm, Some(count))?;
            parts(section::from_diameters(angles, diameters, order)?, room)
        })
    }
}

/// Diameter in mm that a two-point gauge reads across the axis of a section, at an angle from 0 to 360 degrees.
///
/// `harmonics` has `count` orders, in any order. Odd orders do not show.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_two_point_mm(
    mean_radius_mm: f64,
    harmonics: *const GaugepointHarmonic,
    count: usize,
    angle_deg: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            let harmonics = known(array("harmonics", harmonics, Some(count))?)?;
            Ok(section::two_point_mm(mean_radius_mm, &harmonics, angle_deg)?)
        })
    }
}

/// Diameter in mm that a gauge with three legs reads, which reach out equally from a centre that finds itself.
///
/// The first leg is turned to `angle_deg`; the directions of the legs rise, neighbours less than half a turn apart. To the
/// first order: the second is the square of the form error over the radius.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_three_leg_mm(
    mean_radius_mm: f64,
    harmonics: *const GaugepointHarmonic,
    count: usize,
    angle_deg: f64,
    leg_1_deg: f64,
    leg_2_deg: f64,
    leg_3_deg: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            let harmonics = known(array("harmonics", harmonics, Some(count))?)?;
            let legs = [leg_1_deg, leg_2_deg, leg_3_deg];
            Ok(section::three_leg_mm(mean_radius_mm, &harmonics, angle_deg, legs)?)
        })
    }
}

/// How much of the amplitude of an order a probe shows over a V-block in which the part is turned. ISO 4292.
///
/// `included_deg` is the angle between the faces, 10 to 170 degrees; `probe_deg` the direction of the probe, 0 opposite
/// the V, where the factor is |1 + cos(n (90 + a)) / sin a| with a half the included angle.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_v_block_factor(
    order: usize,
    included_deg: f64,
    probe_deg: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            Ok(section::v_block_factor(order, included_deg, probe_deg)?)
        })
    }
}

fn reference_of(number: i32) -> Result<Reference, Failure> {
    const REFERENCES: [(GaugepointReference, Reference); 4] = [
        (GaugepointReference::LeastSquares, Reference::LeastSquares),
        (GaugepointReference::MinimumZone, Reference::MinimumZone),
        (GaugepointReference::MinimumCircumscribed, Reference::MinimumCircumscribed),
        (GaugepointReference::MaximumInscribed, Reference::MaximumInscribed),
    ];
    let found = REFERENCES.iter().find(|(c, _)| *c as i32 == number);
    found.map(|(_, reference)| *reference).ok_or_else(|| Failure::choice("reference", number, "1, 2, 3, 4"))
}

fn algebraic_of(number: i32) -> Result<Algebraic, Failure> {
    const METHODS: [(GaugepointAlgebraic, Algebraic); 4] = [
        (GaugepointAlgebraic::UnitNorm, Algebraic::UnitNorm),
        (GaugepointAlgebraic::Pratt, Algebraic::Pratt),
        (GaugepointAlgebraic::Taubin, Algebraic::Taubin),
        (GaugepointAlgebraic::Hyperaccurate, Algebraic::Hyperaccurate),
    ];
    let found = METHODS.iter().find(|(c, _)| *c as i32 == number);
    found.map(|(_, method)| *method).ok_or_else(|| Failure::choice("method", number, "1, 2, 3, 4"))
}

/// The harmonics of the caller.
fn known(harmonics: &[GaugepointHarmonic]) -> Result<Vec<Harmonic>, Failure> {
    let one = |h: &GaugepointHarmonic| {
        Ok(Harmonic {
            order: h.order,
            cos_mm: flag("has_cos", h.has_cos)?.then_some(h.cos_mm),
            sin_mm: flag("has_sin", h.has_sin)?.then_some(h.sin_mm),
        })
    };
    harmonics.iter().map(one).collect()
}

/// The two outputs of a section.
fn parts(s: Section, room: usize) -> Result<(Vec<GaugepointHarmonic>, GaugepointSection), Failure> {
    let one = |h: &Harmonic| GaugepointHarmonic {
        order: h.order,
        has_cos: h.cos_mm.is_some().into(),
        has_sin: h.sin_mm.is_some().into(),
        cos_mm: h.cos_mm.unwrap_or(f64::NAN),
        sin_mm: h.sin_mm.unwrap_or(f64::NAN),
    };
    let harmonics = fitting(s.harmonics.iter().map(one).collect(), "room", room)?;
    let (x_mm, y_mm) = s.position_mm.unwrap_or((f64::NAN, f64::NAN));
    let out = GaugepointSection {
        struct_size: size_of::<GaugepointSection>(),
        harmonics: harmonics.len(),
        has_position: s.position_mm.is_some().into(),
        has_residual: s.residual_mm.is_some().into(),
        mean_radius_mm: s.mean_radius_mm,
        x_mm,
        y_mm,
        residual_mm: s.residual_mm.unwrap_or(f64::NAN),
        least_share: s.least_share,
    };
    Ok((harmonics, out))
}

impl From<Form> for GaugepointForm {
    fn from(f: Form) -> Self {
        GaugepointForm {
            total_mm: f.total_mm,
            outside_mm: f.outside_mm,
            inside_mm: f.inside_mm,
            rms_mm: f.rms_mm,
        }
    }
}

impl From<Circle> for GaugepointCircle {
    fn from(c: Circle) -> Self {
        GaugepointCircle {
            struct_size: size_of::<Self>(),
            x_mm: c.x_mm,
            y_mm: c.y_mm,
            radius_mm: c.radius_mm,
            form: c.form.into(),
        }
    }
}

impl From<Cylinder> for GaugepointCylinder {
    fn from(c: Cylinder) -> Self {
        GaugepointCylinder {
            struct_size: size_of::<Self>(),
            x_mm: c.x_mm,
            y_mm: c.y_mm,
            z_mm: c.z_mm,
            slope_x: c.slope_x,
            slope_y: c.slope_y,
            radius_mm: c.radius_mm,
            form: c.form.into(),
        }
    }
}

impl From<Plane> for GaugepointPlane {
    fn from(p: Plane) -> Self {
        GaugepointPlane {
            struct_size: size_of::<Self>(),
            has_direction: p.direction_deg.is_some().into(),
            reserved: 0,
            x_mm: p.x_mm,
            y_mm: p.y_mm,
            z_mm: p.z_mm,
            slope_x: p.slope_x,
            slope_y: p.slope_y,
            slope: p.slope,
            direction_deg: p.direction_deg.unwrap_or(f64::NAN),
            form: p.form.into(),
        }
    }
}

impl From<BoreAxis> for GaugepointBoreAxis {
    fn from(b: BoreAxis) -> Self {
        GaugepointBoreAxis {
            struct_size: size_of::<Self>(),
            offset_mm: b.offset_mm,
            station_mm: b.station_mm,
            out_of_square_mrad: b.out_of_square_mrad,
            length_mm: b.length_mm,
            out_of_square_mm: b.out_of_square_mm,
            bore_straightness_mm: b.bore_straightness_mm,
            main_straightness_mm: b.main_straightness_mm,
        }
    }
}
