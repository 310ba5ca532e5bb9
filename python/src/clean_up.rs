//! Worn bores and machining.

use crate::error::{Fault, guarded};
use gaugepoint::Error;
use gaugepoint::plan::clean_up::{
    self, Allowance, Bar, BarAxis, RadiusUncertainty, WallPoint, WornWall, from_diameters, largest_by_walls,
};
use gaugepoint::plan::machining::{self, FinishCheck, WarmGauging};
use gaugepoint::quantity::{Expansion, Temperature};
use gaugepoint::size::Condition;
use pyo3::prelude::*;

/// Place x and y, middle of the depths, slopes along x and y.
type Axis = (f64, f64, f64, f64, f64);
/// Diameter, its uncertainty, least, bar, points that hold it with their shares.
type Cleaned = (f64, f64, f64, Axis, Vec<(usize, f64)>);

/// An axis, as `gaugepoint.plan.clean_up` takes it: a word, or a `BestAxis`.
#[derive(FromPyObject)]
pub(crate) enum GivenAxis {
    #[pyo3(annotation = "str")]
    Fixed(String),
    #[pyo3(annotation = "BestAxis")]
    Best { shift_mm: f64, tilt: f64 },
}

/// A bar, as `gaugepoint.plan.Bar` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenBar {
    x_mm: f64,
    y_mm: f64,
    middle_mm: f64,
    slope_x: f64,
    slope_y: f64,
}

/// A wall, as `gaugepoint.plan.WallPoint` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenWall {
    angle_deg: f64,
    depth_mm: f64,
    radius_mm: f64,
    wall_mm: f64,
}

/// A gauge and a bore, as `gaugepoint.plan.WarmGauging` has them.
#[derive(FromPyObject)]
pub(crate) struct GivenGauging {
    setting_mm: f64,
    ring_temperature_c: f64,
    ring_expansion_per_k: f64,
    set_temperature_c: f64,
    set_expansion_per_k: f64,
    used_temperature_c: f64,
    used_expansion_per_k: f64,
    block_temperature_c: f64,
    block_expansion_per_k: f64,
}

/// Give the smallest bore that removes all wear; `gaugepoint.plan.clean_up` is its public form.
///
/// Parameters
/// ----------
/// angles_deg, depths_mm, radii_mm : sequence of float
///     The wall.
/// axis : str or BestAxis
///     Where the bar stands.
/// centring_mm, stock_mm : float
///     What a bar adds to the bare wall.
/// each_mm, common_mm : float
///     Standard uncertainties of one radius alone and of all together.
///
/// Returns
/// -------
/// tuple
///     Diameter, its uncertainty, least, bar, points that hold it with their shares.
///
/// Raises
/// ------
/// InputError
///     When a number is refused, or the points do not tell where the axis lies; it names the place.
#[pyfunction]
#[pyo3(name = "clean_up")]
#[expect(clippy::too_many_arguments, reason = "a wall, an axis and four numbers")]
pub(crate) fn cleaned_up(
    py: Python<'_>,
    angles_deg: Vec<f64>,
    depths_mm: Vec<f64>,
    radii_mm: Vec<f64>,
    axis: GivenAxis,
    centring_mm: f64,
    stock_mm: f64,
    each_mm: f64,
    common_mm: f64,
) -> Result<Cleaned, Fault> {
    let work = || {
        let wall = WornWall { angles_deg: &angles_deg, depths_mm: &depths_mm, radii_mm: &radii_mm };
        let allowance = Allowance { centring_mm, stock_mm };
        clean_up::clean_up(&wall, axis_of(&axis)?, &allowance, &RadiusUncertainty { each_mm, common_mm })
    };
    let found = py.detach(|| guarded(work))?;
    let Bar { x_mm, y_mm, middle_mm, slope_x, slope_y } = found.bar;
    let bar = (x_mm, y_mm, middle_mm, slope_x, slope_y);
    let held = found.held_by.iter().map(|h| (h.place, h.share)).collect();
    Ok((found.diameter_mm, found.standard_uncertainty_mm, found.least_mm, bar, held))
}

/// Give the clean-up from diameters; `gaugepoint.plan.clean_up_from_diameters` is its public form.
///
/// Parameters
/// ----------
/// unworn_mm, largest_mm, stock_mm : float
///     Unworn and largest diameter, and what removes the marks of the tool.
///
/// Returns
/// -------
/// tuple
///     Diameter when both sides are worn alike, and when one side alone is.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the largest diameter is below the unworn one.
#[pyfunction]
pub(crate) fn clean_up_from_diameters(
    unworn_mm: f64,
    largest_mm: f64,
    stock_mm: f64,
) -> Result<(f64, f64), Fault> {
    guarded(|| from_diameters(unworn_mm, largest_mm, stock_mm)).map(|range| (range.lower_mm, range.upper_mm))
}

/// Give what a bore leaves of walls; `gaugepoint.plan.walls_left` is its public form.
///
/// Parameters
/// ----------
/// bar : Bar
///     The axis of the bar.
/// diameter_mm : float
///     The bore.
/// walls : sequence of WallPoint
///     The walls as they were gauged.
///
/// Returns
/// -------
/// list
///     Thickness that is left of each.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the place.
#[pyfunction]
pub(crate) fn walls_left(bar: GivenBar, diameter_mm: f64, walls: Vec<GivenWall>) -> Result<Vec<f64>, Fault> {
    guarded(|| clean_up::walls_left(&bar.into(), diameter_mm, &walls_of(walls)))
}

/// Give the largest bore that walls allow; `gaugepoint.plan.largest_bore_by_walls_mm` is its public form.
///
/// Parameters
/// ----------
/// bar : Bar
///     The axis of the bar.
/// least_wall_mm : float
///     What is to be left.
/// walls : sequence of WallPoint
///     The walls as they were gauged.
///
/// Returns
/// -------
/// float or None
///     The diameter; None without walls.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the place.
#[pyfunction]
pub(crate) fn largest_bore_by_walls_mm(
    bar: GivenBar,
    least_wall_mm: f64,
    walls: Vec<GivenWall>,
) -> Result<Option<f64>, Fault> {
    guarded(|| largest_by_walls(&bar.into(), least_wall_mm, &walls_of(walls)))
}

/// Give finish and boring size; `gaugepoint.plan.bore_sizes` is its public form.
///
/// Parameters
/// ----------
/// piston_mm, clearance_mm, honing_mm : float
///     Piston as measured, wanted clearance, and what is left for the hone.
///
/// Returns
/// -------
/// tuple
///     Finish size and boring size.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible.
#[pyfunction]
pub(crate) fn bore_sizes(piston_mm: f64, clearance_mm: f64, honing_mm: f64) -> Result<(f64, f64), Fault> {
    guarded(|| machining::bore_sizes(piston_mm, clearance_mm, honing_mm)).map(|s| (s.finish_mm, s.boring_mm))
}

/// Give what the dial must read; `gaugepoint.plan.dial_reading_mm` is its public form.
///
/// Parameters
/// ----------
/// size_mm : float
///     Size of the bore at 20 C.
/// gauging : WarmGauging
///     The gauge that was set, and the bore that it goes into.
///
/// Returns
/// -------
/// float
///     The reading above the setting.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or the reading is beyond the travel of a gauge.
#[pyfunction]
pub(crate) fn dial_reading_mm(size_mm: f64, gauging: GivenGauging) -> Result<f64, Fault> {
    guarded(|| machining::dial_reading_mm(size_mm, &gauging.into()))
}

/// Hold a bore against its finish size; `gaugepoint.plan.finish_check` is its public form.
///
/// Parameters
/// ----------
/// size_mm, finish_mm, tolerance_mm : float
///     Bore as it was found, finish size, and half the width of the tolerance.
///
/// Returns
/// -------
/// tuple
///     Outcome as a word, and the difference.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible.
#[pyfunction]
pub(crate) fn finish_check(
    size_mm: f64,
    finish_mm: f64,
    tolerance_mm: f64,
) -> Result<(&'static str, Option<f64>), Fault> {
    Ok(match guarded(|| machining::finish_check(size_mm, finish_mm, tolerance_mm))? {
        FinishCheck::Met => ("met", None),
        FinishCheck::HoneOn { stock_mm } => ("hone_on", Some(stock_mm)),
        FinishCheck::TooLarge { by_mm } => ("too_large", Some(by_mm)),
    })
}

/// Give an order of boring; `gaugepoint.plan.boring_order` is its public form.
///
/// Parameters
/// ----------
/// cylinders : int
///     How many cylinders the bank has.
///
/// Returns
/// -------
/// list
///     The cylinders, from 1.
///
/// Raises
/// ------
/// InputError
///     For no cylinder or more than 24.
#[pyfunction]
pub(crate) fn boring_order(cylinders: usize) -> Result<Vec<usize>, Fault> {
    guarded(|| machining::boring_order(cylinders))
}

fn axis_of(axis: &GivenAxis) -> Result<BarAxis, Error> {
    match axis {
        GivenAxis::Fixed(word) => BarAxis::from_word(word).map_err(|e| e.named("axis")),
        GivenAxis::Best { shift_mm, tilt } => Ok(BarAxis::Best { shift_mm: *shift_mm, tilt: *tilt }),
    }
}

fn walls_of(walls: Vec<GivenWall>) -> Vec<WallPoint> {
    let one = |w: GivenWall| WallPoint {
        angle_deg: w.angle_deg,
        depth_mm: w.depth_mm,
        radius_mm: w.radius_mm,
        wall_mm: w.wall_mm,
    };
    walls.into_iter().map(one).collect()
}

impl From<GivenBar> for Bar {
    fn from(bar: GivenBar) -> Self {
        let GivenBar { x_mm, y_mm, middle_mm, slope_x, slope_y } = bar;
        Bar { x_mm, y_mm, middle_mm, slope_x, slope_y }
    }
}

impl From<GivenGauging> for WarmGauging {
    fn from(g: GivenGauging) -> Self {
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
}
