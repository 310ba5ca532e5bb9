//! The form of a piston.

use crate::error::{Fault, guarded};
use gaugepoint::Error;
use gaugepoint::shape::piston::{
    self, Asymmetric, Counted, Estimate, Form, PistonShape, Points, Reading, SurfaceDrawing, Symmetric,
    Table, Window, WindowKind,
};
use pyo3::prelude::*;

/// Rows of height and value.
type Rows = Vec<(f64, f64)>;
/// Heights and values.
type Columns = (Vec<f64>, Vec<f64>);
/// Kind, surface, height, angle, value.
type Odd = (&'static str, usize, f64, Option<f64>, f64);
/// Value and standard uncertainty.
type Found = (f64, Option<f64>);
/// Height, points, diameter, ovality, double ovality, least share.
type At = (f64, usize, Found, Found, Option<Found>, f64);
/// Stations, deviation, degrees of freedom, residuals.
type Fitted = (Vec<At>, Option<f64>, usize, Vec<f64>);
/// Size, x, y, slopes, height, residuals, rms, largest, deviation, degrees of freedom, least share.
type Traced = (Found, [Option<Found>; 4], f64, Vec<f64>, f64, usize, Option<f64>, usize, f64);

/// A window, as `gaugepoint.shape.Window` has it.
#[derive(FromPyObject)]
struct GivenWindow {
    kind: String,
    from_deg: f64,
    to_deg: f64,
    from_mm: f64,
    to_mm: f64,
}

/// What both kinds of surface have.
struct Common {
    from_mm: f64,
    to_mm: f64,
    counted: String,
    coating_mm: Option<f64>,
    panel_deg: Option<(f64, f64)>,
    windows: Vec<GivenWindow>,
}

/// A surface, as `gaugepoint.shape.SymmetricSurface` and `AsymmetricSurface` have it.
#[derive(FromPyObject)]
enum GivenSurface {
    Symmetric {
        from_mm: f64,
        to_mm: f64,
        barrel: Rows,
        ovality: Rows,
        double_ovality: Option<Rows>,
        counted: String,
        coating_mm: Option<f64>,
        panel_deg: Option<(f64, f64)>,
        windows: Vec<GivenWindow>,
    },
    Asymmetric {
        from_mm: f64,
        to_mm: f64,
        thrust: Rows,
        pin_axis: Rows,
        minor_thrust: Rows,
        thrust_fourth: Option<Rows>,
        minor_thrust_fourth: Option<Rows>,
        counted: String,
        coating_mm: Option<f64>,
        panel_deg: Option<(f64, f64)>,
        windows: Vec<GivenWindow>,
    },
}

/// A piston, as `gaugepoint.shape.Piston` has it.
#[derive(FromPyObject)]
pub(crate) struct Piston {
    gauge_height_mm: f64,
    surfaces: Vec<GivenSurface>,
}

/// The tables of a surface, in columns.
enum Tables {
    Symmetric([Columns; 2], Option<Columns>),
    Asymmetric([Columns; 3], [Option<Columns>; 2]),
}

impl Piston {
    pub(crate) fn shape(self) -> Result<PistonShape, Error> {
        let read: Vec<(Common, Tables)> = self.surfaces.into_iter().map(read).collect();
        let drawn = read.iter().enumerate().map(|(k, (common, tables))| {
            drawing(common, tables).map_err(|e| e.named(&format!("surfaces/{k}")))
        });
        PistonShape::from_drawings(self.gauge_height_mm, &drawn.collect::<Result<Vec<_>, _>>()?)
    }
}

fn columns(rows: Rows) -> Columns {
    rows.into_iter().unzip()
}

fn read(surface: GivenSurface) -> (Common, Tables) {
    match surface {
        GivenSurface::Symmetric {
            from_mm,
            to_mm,
            barrel,
            ovality,
            double_ovality,
            counted,
            coating_mm,
            panel_deg,
            windows,
        } => (
            Common { from_mm, to_mm, counted, coating_mm, panel_deg, windows },
            Tables::Symmetric([columns(barrel), columns(ovality)], double_ovality.map(columns)),
        ),
        GivenSurface::Asymmetric {
            from_mm,
            to_mm,
            thrust,
            pin_axis,
            minor_thrust,
            thrust_fourth,
            minor_thrust_fourth,
            counted,
            coating_mm,
            panel_deg,
            windows,
        } => (
            Common { from_mm, to_mm, counted, coating_mm, panel_deg, windows },
            Tables::Asymmetric(
                [columns(thrust), columns(pin_axis), columns(minor_thrust)],
                [thrust_fourth.map(columns), minor_thrust_fourth.map(columns)],
            ),
        ),
    }
}

fn table((heights_mm, values_mm): &Columns) -> Table<'_> {
    Table { heights_mm, values_mm }
}

fn drawing<'a>(common: &Common, tables: &'a Tables) -> Result<SurfaceDrawing<'a>, Error> {
    let counted = Counted::from_word(&common.counted)?;
    let form = match tables {
        Tables::Symmetric([barrel, ovality], double) => Form::Symmetric(Symmetric {
            barrel: table(barrel),
            counted,
            ovality: table(ovality),
            double_ovality: double.as_ref().map(table),
        }),
        Tables::Asymmetric([thrust, pin_axis, minor], [thrust_fourth, minor_fourth]) => {
            Form::Asymmetric(Asymmetric {
                thrust: table(thrust),
                pin_axis: table(pin_axis),
                minor_thrust: table(minor),
                counted,
                thrust_fourth: thrust_fourth.as_ref().map(table),
                minor_thrust_fourth: minor_fourth.as_ref().map(table),
            })
        }
    };
    let windows = common.windows.iter().map(|w| {
        let kind = WindowKind::from_word(&w.kind)?;
        Ok(Window { kind, from_deg: w.from_deg, to_deg: w.to_deg, from_mm: w.from_mm, to_mm: w.to_mm })
    });
    Ok(SurfaceDrawing {
        from_mm: common.from_mm,
        to_mm: common.to_mm,
        form,
        panel_deg: common.panel_deg,
        coating_mm: common.coating_mm,
        windows: windows.collect::<Result<Vec<_>, Error>>()?,
    })
}

fn points<'a>(
    heights_mm: &'a [f64],
    angles_deg: &'a [f64],
    values_mm: &'a [f64],
    reading: &str,
    uncertainty_mm: Option<f64>,
) -> Result<Points<'a>, Error> {
    let reading = Reading::from_word(reading).map_err(|e| e.named("reading"))?;
    Ok(Points { heights_mm, angles_deg, values_mm, reading, uncertainty_mm })
}

fn both(e: Estimate) -> Found {
    (e.value, e.uncertainty)
}

/// Give the radius of a piston at a height and an angle.
///
/// Parameters
/// ----------
/// piston : Piston
///     Its form.
/// gauge_diameter_mm : float
///     Diameter of the bare metal at the gauge point.
/// height_mm, angle_deg : float
///     Where.
///
/// Returns
/// -------
/// float
///     The radius, in mm.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or there is no surface; it names the place.
#[pyfunction]
pub(crate) fn piston_radius_mm(
    piston: Piston,
    gauge_diameter_mm: f64,
    height_mm: f64,
    angle_deg: f64,
) -> Result<f64, Fault> {
    guarded(|| piston.shape()?.radius_mm(gauge_diameter_mm, height_mm, angle_deg))
}

/// Give the diameter that a micrometer reads on a piston.
///
/// Parameters
/// ----------
/// piston : Piston
///     Its form.
/// gauge_diameter_mm : float
///     Diameter of the bare metal at the gauge point.
/// height_mm, angle_deg : float
///     Where.
///
/// Returns
/// -------
/// float
///     The diameter, in mm.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or an end has no surface; it names the place.
#[pyfunction]
pub(crate) fn piston_diameter_mm(
    piston: Piston,
    gauge_diameter_mm: f64,
    height_mm: f64,
    angle_deg: f64,
) -> Result<f64, Fault> {
    guarded(|| piston.shape()?.diameter_mm(gauge_diameter_mm, height_mm, angle_deg))
}

/// Give the ovality that a micrometer reads on a piston.
///
/// Parameters
/// ----------
/// piston : Piston
///     Its form.
/// height_mm : float
///     Where.
///
/// Returns
/// -------
/// float
///     The ovality, in mm.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or an end has no surface; it names the place.
#[pyfunction]
pub(crate) fn piston_ovality_mm(piston: Piston, height_mm: f64) -> Result<f64, Fault> {
    guarded(|| piston.shape()?.ovality_mm(height_mm))
}

/// Give the largest diameter of a piston at a height.
///
/// Parameters
/// ----------
/// piston : Piston
///     Its form.
/// gauge_diameter_mm : float
///     Diameter of the bare metal at the gauge point.
/// height_mm : float
///     Where.
///
/// Returns
/// -------
/// tuple
///     Angle and diameter.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or there is no surface; it names the place.
#[pyfunction]
pub(crate) fn piston_largest(
    piston: Piston,
    gauge_diameter_mm: f64,
    height_mm: f64,
) -> Result<(f64, f64), Fault> {
    let largest = guarded(|| piston.shape()?.largest(gauge_diameter_mm, height_mm))?;
    Ok((largest.angle_deg, largest.diameter_mm))
}

/// Give what is odd about the form of a piston.
///
/// Parameters
/// ----------
/// piston : Piston
///     Its form.
///
/// Returns
/// -------
/// list
///     Kind, surface, height, angle and value of each.
///
/// Raises
/// ------
/// InputError
///     When the form is refused; it names the place.
#[pyfunction]
pub(crate) fn piston_warnings(piston: Piston) -> Result<Vec<Odd>, Fault> {
    let warnings = guarded(|| Ok(piston.shape()?.warnings()))?;
    Ok(warnings.iter().map(|w| (w.kind.word(), w.surface, w.height_mm, w.angle_deg, w.value)).collect())
}

/// Fit the surface of a piston to points.
///
/// Parameters
/// ----------
/// heights_mm, angles_deg, values_mm : sequence of float
///     The points.
/// reading : str
///     What was read.
/// double_ovality : bool
///     Whether it is fitted.
/// uncertainty_mm : float or None
///     Standard uncertainty of a reading.
///
/// Returns
/// -------
/// tuple
///     Stations, deviation, degrees of freedom, residuals.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the angles do not tell the unknowns apart; it names the place.
#[pyfunction]
pub(crate) fn fit_piston_surface(
    heights_mm: Vec<f64>,
    angles_deg: Vec<f64>,
    values_mm: Vec<f64>,
    reading: &str,
    double_ovality: bool,
    uncertainty_mm: Option<f64>,
) -> Result<Fitted, Fault> {
    let fit = guarded(|| {
        let points = points(&heights_mm, &angles_deg, &values_mm, reading, uncertainty_mm)?;
        piston::fit_surface(&points, double_ovality)
    })?;
    let stations = fit.stations.iter().map(|s| {
        let double = s.double_ovality_mm.map(both);
        (s.height_mm, s.points, both(s.diameter_mm), both(s.ovality_mm), double, s.least_share)
    });
    Ok((stations.collect(), fit.deviation_mm, fit.dof, fit.residuals_mm))
}

/// Hold points against the form of a piston.
///
/// Parameters
/// ----------
/// piston : Piston
///     Its form.
/// gauge_diameter_mm : float
///     Diameter of the bare metal at the gauge point.
/// heights_mm, angles_deg, values_mm : sequence of float
///     The points.
/// reading : str
///     What was read.
/// uncertainty_mm : float or None
///     Standard uncertainty of a reading.
///
/// Returns
/// -------
/// tuple
///     Size, position and slopes, height, residuals, rms, largest, deviation, degrees of freedom, least share.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the points do not tell the unknowns apart; it names the place.
#[pyfunction]
pub(crate) fn fit_piston_trace(
    piston: Piston,
    gauge_diameter_mm: f64,
    heights_mm: Vec<f64>,
    angles_deg: Vec<f64>,
    values_mm: Vec<f64>,
    reading: &str,
    uncertainty_mm: Option<f64>,
) -> Result<Traced, Fault> {
    let f = guarded(|| {
        let points = points(&heights_mm, &angles_deg, &values_mm, reading, uncertainty_mm)?;
        piston::fit_trace(&piston.shape()?, gauge_diameter_mm, &points)
    })?;
    let placed = [f.x_mm, f.y_mm, f.slope_x, f.slope_y].map(|e| e.map(both));
    Ok((
        both(f.size_mm),
        placed,
        f.height_mm,
        f.residuals_mm,
        f.rms_mm,
        f.largest,
        f.deviation_mm,
        f.dof,
        f.least_share,
    ))
}
