//! A hot fit: made once, asked often.

use crate::batch::{array, writable};
use crate::error::{Fault, guarded};
use crate::growth::Law;
use crate::piston::Piston;
use gaugepoint::Error;
use gaugepoint::clearance::hot::drawing::{
    FitDrawing, GrowthDrawing, PistonDrawing, PositionKind, WallDrawing,
};
use gaugepoint::clearance::hot::inverse::Answer;
use gaugepoint::clearance::hot::onset::Onset;
use gaugepoint::clearance::hot::smallest::Smallest;
use gaugepoint::clearance::hot::{self, Place, Position};
use gaugepoint::growth::field::Scenario;
use gaugepoint::shape::bore::{BoreDrawing, HarmonicDrawing, Port};
use numpy::ndarray::Ix2;
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

/// Word of the position and its crank angle or depth.
type Stands = (String, f64);
/// Surface, angle, height, depth, crank angle.
type There = (usize, f64, f64, Option<f64>, Option<f64>);
/// Clearance, within, place.
type Least = (f64, f64, There);
/// Outcome, factor, temperature, place, slope, why it stopped, proven.
type First = (&'static str, Option<f64>, Option<f64>, Option<There>, Option<f64>, Option<String>, bool);
/// The number, or why there is none.
type Found = (Option<f64>, Option<String>);
/// Height, first and last angle.
type Between = (f64, f64, f64);
/// Columns of a picture.
type Columns = [Vec<f64>; 5];

/// An order of a bore, as `gaugepoint.shape.BoreHarmonic` has it.
#[derive(FromPyObject)]
struct GivenHarmonic {
    order: usize,
    rows: Vec<(f64, f64, f64)>,
}

/// A port, as `gaugepoint.shape.Port` has it.
#[derive(FromPyObject)]
struct GivenPort {
    from_deg: f64,
    to_deg: f64,
    from_mm: f64,
    to_mm: f64,
}

/// A bore, as `gaugepoint.shape.Bore` has it.
#[derive(FromPyObject)]
pub(crate) struct Bore {
    diameter_mm: f64,
    deviation: Option<Vec<(f64, f64)>>,
    harmonics: Vec<GivenHarmonic>,
    ports: Vec<GivenPort>,
    end_mm: Option<f64>,
}

/// Rows of three numbers, in columns.
fn three(rows: &[(f64, f64, f64)]) -> [Vec<f64>; 3] {
    [
        rows.iter().map(|row| row.0).collect(),
        rows.iter().map(|row| row.1).collect(),
        rows.iter().map(|row| row.2).collect(),
    ]
}

/// One piston in one bore at its temperatures, made and checked once.
#[pyclass(frozen, module = "gaugepoint._gaugepoint")]
pub(crate) struct HotFit(hot::HotFit);

/// Make a hot fit; `gaugepoint.hot.HotFit` is its public form.
///
/// Parameters
/// ----------
/// piston_diameter_mm : float
///     Diameter of the bare piston at its gauge point, at 20 C.
/// piston : Piston
///     Its form.
/// growth : sequence of (Law, float, float)
///     Law and the growth ratios on both axes, of every surface.
/// piston_field : sequence of (float, float, float)
///     Height, and the temperatures on both axes there.
/// bore : Bore
///     The bore.
/// bore_law : Law
///     Law of its wall.
/// bore_field : sequence of (float, float)
///     Depth, and the temperature of the wall there.
/// motion : tuple of float or None
///     Crank radius, rod, pin offset, deck clearance, height of the crown.
///
/// Returns
/// -------
/// HotFit
///     The fit.
///
/// Raises
/// ------
/// InputError
///     When a number is impossible or a table does not reach where the piston goes; it names the place.
#[pyfunction]
#[expect(clippy::too_many_arguments, reason = "the parts of a fit")]
#[expect(clippy::needless_pass_by_value, reason = "lists of Python are copied")]
pub(crate) fn hot_fit(
    piston_diameter_mm: f64,
    piston: Piston,
    growth: Vec<(Py<Law>, f64, f64)>,
    piston_field: Vec<(f64, f64, f64)>,
    bore: Bore,
    bore_law: Py<Law>,
    bore_field: Vec<(f64, f64)>,
    motion: Option<[f64; 5]>,
) -> Result<HotFit, Fault> {
    guarded(|| {
        let growth = growth.iter().map(|(law, ratio_thrust, ratio_pin)| GrowthDrawing {
            law: law.get().0.clone(),
            ratio_thrust: *ratio_thrust,
            ratio_pin: *ratio_pin,
        });
        let [heights_mm, thrust_c, pin_c] = three(&piston_field);
        let (depths_mm, wall_c): (Vec<f64>, Vec<f64>) = bore_field.into_iter().unzip();
        let deviation: Option<(Vec<f64>, Vec<f64>)> = bore.deviation.map(|rows| rows.into_iter().unzip());
        let waves: Vec<(usize, [Vec<f64>; 3])> =
            bore.harmonics.iter().map(|h| (h.order, three(&h.rows))).collect();
        let harmonics = waves.iter().map(|(order, [depths_mm, cos_mm, sin_mm])| HarmonicDrawing {
            order: *order,
            depths_mm,
            cos_mm,
            sin_mm,
        });
        let port = |p: &GivenPort| Port {
            from_deg: p.from_deg,
            to_deg: p.to_deg,
            from_mm: p.from_mm,
            to_mm: p.to_mm,
        };
        let piston = PistonDrawing {
            diameter_mm: piston_diameter_mm,
            shape: piston.shape()?,
            growth: growth.collect(),
            field: [&heights_mm, &thrust_c, &pin_c],
        };
        let bore = BoreDrawing {
            diameter_mm: bore.diameter_mm,
            deviation: deviation.as_ref().map(|(depths, values)| (depths.as_slice(), values.as_slice())),
            harmonics: harmonics.collect(),
            ports: bore.ports.iter().map(port).collect(),
            end_mm: bore.end_mm,
        };
        let wall = WallDrawing { bore, law: bore_law.get().0.clone(), field: [&depths_mm, &wall_c] };
        FitDrawing { piston, bore: wall, motion }.fit().map(HotFit)
    })
}

fn at(position: &Stands) -> Result<Position, Error> {
    let kind = PositionKind::from_word(&position.0).map_err(|e| e.named("position"))?;
    Ok(kind.at(position.1))
}

fn scenario_of(word: &str) -> Result<Scenario, Error> {
    Scenario::from_word(word).map_err(|e| e.named("scenario"))
}

fn there(place: &Place) -> There {
    (place.surface, place.angle_deg, place.height_mm, place.depth_mm, place.crank_deg)
}

fn least(found: &Smallest) -> Least {
    (found.clearance_mm, found.within_mm, there(&found.place))
}

fn found(answer: Answer) -> Found {
    match answer {
        Answer::Found(number) => (Some(number), None),
        Answer::NoSolution(why) => (None, Some(why)),
    }
}

impl HotFit {
    /// Asks the fit while other threads may run.
    fn ask<T: Send>(
        &self,
        py: Python<'_>,
        question: impl FnOnce(&hot::HotFit) -> Result<T, Error> + Send,
    ) -> Result<T, Fault> {
        py.detach(|| guarded(|| question(&self.0)))
    }
}

#[pymethods]
#[expect(clippy::needless_pass_by_value, reason = "what Python gives is copied")]
impl HotFit {
    /// Give the clearance on one side.
    fn clearance_mm(&self, angle_deg: f64, height_mm: f64, position: Stands) -> Result<f64, Fault> {
        guarded(|| self.0.at(angle_deg, height_mm, at(&position)?))
    }

    /// Give the clearance over the diameter.
    fn diametral_mm(&self, angle_deg: f64, height_mm: f64, position: Stands) -> Result<f64, Fault> {
        guarded(|| self.0.diametral(angle_deg, height_mm, at(&position)?))
    }

    /// Give the running clearance at the gauge point.
    fn running_mm(&self, position: Stands) -> Result<f64, Fault> {
        guarded(|| self.0.running_at_gauge_point(at(&position)?))
    }

    /// Write the clearance on one side over angles and heights into an array.
    fn map_into(
        &self,
        py: Python<'_>,
        angles_deg: Vec<f64>,
        heights_mm: Vec<f64>,
        position: Stands,
        out: &Bound<'_, PyAny>,
    ) -> PyResult<()> {
        let out = array::<Ix2>("out", out)?;
        let mut out = writable(out)?;
        let shape = [heights_mm.len(), angles_deg.len()];
        if out.as_array().shape() != shape {
            let [heights, angles] = shape;
            let reason = format!(
                "out: of shape ({heights}, {angles}): a row for every height, a number for every angle"
            );
            return Err(PyValueError::new_err(reason));
        }
        let mut view = out.as_array_mut();
        // row by row: columns side by side would be another order
        let place = view.as_slice_mut();
        let place = place
            .ok_or_else(|| PyValueError::new_err("out: its numbers do not stand side by side, row by row"))?;
        Ok(self.ask(py, |fit| fit.map_into(&angles_deg, &heights_mm, at(&position)?, place))?)
    }

    /// Give the smallest clearance of a surface.
    fn smallest(&self, py: Python<'_>, surface: usize, position: Option<Stands>) -> Result<Least, Fault> {
        self.ask(py, |fit| match position {
            None => fit.smallest(surface).map(|found| least(&found)),
            Some(position) => fit.smallest_at(surface, at(&position)?).map(|found| least(&found)),
        })
    }

    /// Give the area and the bands of a surface below a clearance.
    fn contact(
        &self,
        py: Python<'_>,
        surface: usize,
        position: Stands,
        below_mm: f64,
    ) -> Result<(f64, Vec<Between>), Fault> {
        let patch = self.ask(py, |fit| fit.contact(surface, at(&position)?, below_mm))?;
        Ok((patch.area_mm2, patch.bands.iter().map(|b| (b.height_mm, b.from_deg, b.to_deg)).collect()))
    }

    /// Give where a surface has most room.
    fn best_placed(
        &self,
        py: Python<'_>,
        surface: usize,
        position: Stands,
    ) -> Result<(f64, f64, f64, f64), Fault> {
        let placed = self.ask(py, |fit| fit.best_placed(surface, at(&position)?))?;
        Ok((placed.clearance_mm, placed.thrust_mm, placed.pin_mm, placed.within_mm))
    }

    /// Give the first contact.
    fn onset(&self, py: Python<'_>, scenario: &str, touching_mm: f64) -> Result<First, Fault> {
        let onset = self.ask(py, |fit| fit.onset(scenario_of(scenario)?, touching_mm))?;
        let thrust_c = |factor: f64| Some(self.0.gauge_thrust_c(factor));
        Ok(match onset {
            Onset::Touches(contact) => {
                let (factor, place) = (contact.factor, there(&contact.place));
                let slope = Some(contact.slope_mm);
                ("touches", Some(factor), thrust_c(factor), Some(place), slope, None, contact.proven)
            }
            Onset::TouchesCold => ("touches_at_20_c", None, None, None, None, None, true),
            Onset::NoContact { factor, stopped_by, proven } => {
                ("no_contact", Some(factor), thrust_c(factor), None, None, Some(stopped_by), proven)
            }
        })
    }

    /// Give the bore for a running clearance at the gauge point.
    fn bore_for_running_mm(&self, py: Python<'_>, wanted_mm: f64, position: Stands) -> Result<Found, Fault> {
        self.ask(py, |fit| fit.bore_for_running_clearance(wanted_mm, at(&position)?)).map(found)
    }

    /// Give the bore for a smallest clearance of the skirt.
    fn bore_for_smallest_mm(&self, py: Python<'_>, wanted_mm: f64) -> Result<Found, Fault> {
        self.ask(py, |fit| fit.bore_for_smallest_clearance(wanted_mm)).map(found)
    }

    /// Give the temperature of first contact for a clearance on the bench.
    fn temperature_for_bench_c(
        &self,
        py: Python<'_>,
        bench_mm: f64,
        scenario: &str,
        touching_mm: f64,
    ) -> Result<Found, Fault> {
        let ask = |fit: &hot::HotFit| {
            fit.piston_temperature_for_bench_clearance(bench_mm, scenario_of(scenario)?, touching_mm)
        };
        self.ask(py, ask).map(found)
    }

    /// Give the ovality of a surface: cold, running, and cold of a piston that runs round.
    fn ovality(&self, surface: usize, height_mm: f64) -> Result<(f64, f64, f64), Fault> {
        let found = guarded(|| self.0.ovality(surface, height_mm))?;
        Ok((found.cold_mm, found.running_mm, found.round_running_mm))
    }

    /// Give heights and four radii of a surface.
    fn profile(&self, py: Python<'_>, surface: usize, count: u32) -> Result<Columns, Fault> {
        let p = self.ask(py, |fit| fit.profile(surface, count))?;
        Ok([p.heights_mm, p.cold_thrust_mm, p.cold_pin_mm, p.hot_thrust_mm, p.hot_pin_mm])
    }

    /// Give angles and four radii of a section.
    fn section(
        &self,
        py: Python<'_>,
        height_mm: f64,
        position: Stands,
        count: u32,
    ) -> Result<Columns, Fault> {
        let s = self.ask(py, |fit| fit.section_at(height_mm, at(&position)?, count))?;
        Ok([s.angles_deg, s.piston_cold_mm, s.piston_hot_mm, s.bore_cold_mm, s.bore_hot_mm])
    }
}
