//! A piston and a bore at their temperatures, each by itself: made once, asked often, put together into any number of fits.

use crate::array::{array, given, rows};
use crate::error::{Failure, GaugepointError};
use crate::growth::{self, GaugepointLaw};
use crate::guard::{kept, plain, status};
use crate::handle::{self, freed, lent};
use crate::hot::{
    GaugepointBore, GaugepointBoreField, GaugepointBoreHarmonic, GaugepointPistonField, GaugepointPort,
    GaugepointSurfaceGrowth,
};
use crate::piston::{self, GaugepointPiston};
use crate::record::{Record, record};
use crate::text::flag;
use gaugepoint::clearance::hot::apart::{HotBore, HotPiston, SizeAt};
use gaugepoint::clearance::hot::drawing::{GrowthDrawing, PistonDrawing, WallDrawing};
use gaugepoint::shape::bore::{BoreDrawing, HarmonicDrawing, Port};

/// A piston with its materials, at its temperatures. It never changes; any number of threads may ask it at once.
#[derive(Debug)]
pub struct GaugepointHotPiston(pub(crate) HotPiston);

/// A bore with the material of its wall, at its temperatures. It never changes; any number of threads may ask it at once.
#[derive(Debug)]
pub struct GaugepointHotBore(pub(crate) HotBore);

/// Radius and diameter of a piston or a bore at one place; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointHotSize {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when the diameters are given, else 0: there is no surface or no wall across.
    pub has_diameter: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Radius at 20 C.
    pub cold_radius_mm: f64,
    /// Radius at its temperature.
    pub hot_radius_mm: f64,
    /// Diameter at 20 C: the radii at the angle and across.
    pub cold_diameter_mm: f64,
    /// Diameter at its temperature.
    pub hot_diameter_mm: f64,
}

// SAFETY: a size, two int32_t, doubles
unsafe impl Record for GaugepointHotSize {
    const SMALLEST: usize = 48;
}

/// Makes a piston: the diameter of its bare metal at the gauge point at 20 C, its shape, how its surfaces grow, one `growth` for each, and its
/// temperatures. It is checked then: the temperatures reach over every surface, and are within the law of its material.
///
/// `made` gets it, to be freed by gaugepoint_hot_piston_free; on failure it keeps what it held. A refused number is named with its place, as by
/// gaugepoint_hot_fit_new.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_piston_new(
    piston_diameter_mm: f64,
    piston: *const GaugepointPiston,
    growth: *const GaugepointSurfaceGrowth,
    growth_count: usize,
    piston_field: *const GaugepointPistonField,
    made: *mut *mut GaugepointHotPiston,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("made", made), || {
            let growth = array("growth", growth, Some(growth_count))?;
            let field = given("piston_field", piston_field)?;
            let drawing = piston_of(piston_diameter_mm, piston, growth, &field)?;
            Ok(handle::made(GaugepointHotPiston(drawing.piston()?)))
        })
    }
}

/// Frees a piston. NULL is fine.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_piston_free(piston: *mut GaugepointHotPiston) {
    // SAFETY: the contract of the header
    plain((), || unsafe { freed(piston) });
}

/// Size of a piston at a height and an angle, with the coating where there is one: cold as gaugepoint_piston_radius_mm and
/// gaugepoint_piston_diameter_mm, hot as in a fit.
///
/// Refused where there is no surface: between surfaces, in a cut-out, beside the panels.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_piston_at(
    piston: *const GaugepointHotPiston,
    height_mm: f64,
    angle_deg: f64,
    out: *mut GaugepointHotSize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(lent("piston", piston)?.0.size_at(height_mm, angle_deg)?.into())
        })
    }
}

/// Size of a piston at its gauge point, at angle 0. As gaugepoint_hot_piston_at.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_piston_at_gauge_point(
    piston: *const GaugepointHotPiston,
    out: *mut GaugepointHotSize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, record("out", out), || Ok(lent("piston", piston)?.0.at_gauge_point()?.into())) }
}

/// Makes a bore: its shape at 20 C, the law of the wall that carries it, and its temperatures. It is checked then: its tables have depths in common,
/// and there the temperatures are within the law.
///
/// `made` gets it, to be freed by gaugepoint_hot_bore_free; on failure it keeps what it held. A refused number is named with its place, as by
/// gaugepoint_hot_fit_new.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_bore_new(
    bore: *const GaugepointBore,
    bore_law: *const GaugepointLaw,
    bore_field: *const GaugepointBoreField,
    made: *mut *mut GaugepointHotBore,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("made", made), || {
            let drawing = wall_of(bore, &given("bore_law", bore_law)?, &given("bore_field", bore_field)?)?;
            Ok(handle::made(GaugepointHotBore(drawing.bore()?)))
        })
    }
}

/// Frees a bore. NULL is fine.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_bore_free(bore: *mut GaugepointHotBore) {
    // SAFETY: the contract of the header
    plain((), || unsafe { freed(bore) });
}

/// Size of a bore at a depth and an angle; about the axis of the bore, whose position is no part of it.
///
/// Refused where there is no bore, a table does not reach, or a port is.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_hot_bore_at(
    bore: *const GaugepointHotBore,
    depth_mm: f64,
    angle_deg: f64,
    out: *mut GaugepointHotSize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || Ok(lent("bore", bore)?.0.size_at(depth_mm, angle_deg)?.into()))
    }
}

/// The caller's piston at its temperatures.
///
/// # Safety
/// As the header says.
pub(crate) unsafe fn piston_of<'a>(
    diameter_mm: f64,
    piston: *const GaugepointPiston,
    growth: &[GaugepointSurfaceGrowth],
    field: &GaugepointPistonField,
) -> Result<PistonDrawing<'a>, Failure> {
    // SAFETY: the caller's promise
    unsafe {
        let growth = growth.iter().enumerate().map(|(k, g)| {
            let law = growth::law(&g.law).map_err(|e| e.under(&format!("growth/{k}/law")))?;
            Ok(GrowthDrawing { law, ratio_thrust: g.ratio_thrust, ratio_pin: g.ratio_pin })
        });
        let columns = || {
            Ok([
                array("heights_mm", field.heights_mm, Some(field.count))?,
                array("thrust_c", field.thrust_c, Some(field.count))?,
                array("pin_c", field.pin_c, Some(field.count))?,
            ])
        };
        Ok(PistonDrawing {
            diameter_mm,
            shape: piston::shape(piston)?,
            growth: growth.collect::<Result<_, Failure>>()?,
            field: columns().map_err(|e: Failure| e.under("piston_field"))?,
        })
    }
}

/// The caller's bore at its temperatures.
///
/// # Safety
/// As the header says.
pub(crate) unsafe fn wall_of<'a>(
    bore: *const GaugepointBore,
    law: &GaugepointLaw,
    field: &GaugepointBoreField,
) -> Result<WallDrawing<'a>, Failure> {
    // SAFETY: the caller's promise
    unsafe {
        let columns = || {
            let depths = array("depths_mm", field.depths_mm, Some(field.count))?;
            Ok([depths, array("wall_c", field.wall_c, Some(field.count))?])
        };
        Ok(WallDrawing {
            bore: bore_of(&given("bore", bore)?).map_err(|e| e.under("bore"))?,
            law: growth::law(law).map_err(|e| e.under("bore_law"))?,
            field: columns().map_err(|e: Failure| e.under("bore_field"))?,
        })
    }
}

/// The shape of the caller's bore.
///
/// # Safety
/// As the header says.
unsafe fn bore_of<'a>(bore: &GaugepointBore) -> Result<BoreDrawing<'a>, Failure> {
    // SAFETY: the caller's promise
    unsafe {
        let deviation = match bore.depth_count {
            0 => None,
            count => Some((
                array("depths_mm", bore.depths_mm, Some(count))?,
                array("deviation_mm", bore.deviation_mm, Some(count))?,
            )),
        };
        let harmonics = rows("harmonics", bore.harmonics, bore.harmonic_count)?;
        let ports = rows("ports", bore.ports, bore.port_count)?;
        let harmonics = harmonics
            .iter()
            .enumerate()
            .map(|(k, h)| harmonic(h).map_err(|e| e.under(&format!("harmonics/{k}"))));
        Ok(BoreDrawing {
            diameter_mm: bore.diameter_mm,
            deviation,
            harmonics: harmonics.collect::<Result<_, _>>()?,
            ports: ports.iter().map(port).collect(),
            end_mm: flag("has_end", bore.has_end)?.then_some(bore.end_mm),
        })
    }
}

/// # Safety
/// As [`bore_of`].
unsafe fn harmonic<'a>(h: &GaugepointBoreHarmonic) -> Result<HarmonicDrawing<'a>, Failure> {
    // SAFETY: the caller's promise
    unsafe {
        Ok(HarmonicDrawing {
            order: h.order,
            depths_mm: array("depths_mm", h.depths_mm, Some(h.count))?,
            cos_mm: array("cos_mm", h.cos_mm, Some(h.count))?,
            sin_mm: array("sin_mm", h.sin_mm, Some(h.count))?,
        })
    }
}

fn port(p: &GaugepointPort) -> Port {
    Port { from_deg: p.from_deg, to_deg: p.to_deg, from_mm: p.from_mm, to_mm: p.to_mm }
}

impl From<SizeAt> for GaugepointHotSize {
    fn from(s: SizeAt) -> Self {
        let (cold_diameter_mm, hot_diameter_mm) = s.diameters_mm.unwrap_or((f64::NAN, f64::NAN));
        GaugepointHotSize {
            struct_size: size_of::<Self>(),
            has_diameter: s.diameters_mm.is_some().into(),
            reserved: 0,
            cold_radius_mm: s.cold_radius_mm,
            hot_radius_mm: s.hot_radius_mm,
            cold_diameter_mm,
            hot_diameter_mm,
        }
    }
}
