//! Laws of expansion, and the built-in materials.

use crate::error::{Fault, guarded};
use gaugepoint::Error;
use gaugepoint::growth::{self, InstantaneousCoefficient, MeanCoefficient, duty, library};
use gaugepoint::quantity::Temperature;
use pyo3::prelude::*;

/// Strain, instantaneous coefficient, mean coefficient from 20 C.
type Grown = (f64, f64, Option<f64>);

fn c(celsius: f64) -> Temperature {
    Temperature::from_celsius(celsius)
}

/// A law of expansion, made and checked once.
#[pyclass(frozen, module = "gaugepoint._gaugepoint")]
pub(crate) struct Law(pub(crate) growth::Law);

#[pymethods]
impl Law {
    /// Give strain, instantaneous coefficient, and mean coefficient from 20 C (none at 20 C) at a temperature.
    fn at(&self, temperature_c: f64) -> Result<Grown, Fault> {
        guarded(|| {
            let growth = self.0.at(c(temperature_c))?;
            let mean = growth.mean_from_20.map(MeanCoefficient::per_kelvin);
            Ok((growth.strain, growth.instantaneous.per_kelvin(), mean))
        })
    }
}

fn law(made: impl FnOnce() -> Result<growth::Law, Error>) -> Result<Law, Fault> {
    guarded(made).map(Law)
}

/// Make the law of one mean coefficient from a base.
///
/// Parameters
/// ----------
/// base_c : float
///     Temperature the mean starts from.
/// mean_per_k : float
///     The coefficient.
/// from_c, to_c : float
///     Range, which holds 20 C.
///
/// Returns
/// -------
/// Law
///     The law.
///
/// Raises
/// ------
/// InputError
///     When a number is impossible.
#[pyfunction]
pub(crate) fn growth_mean_coefficient(
    base_c: f64,
    mean_per_k: f64,
    from_c: f64,
    to_c: f64,
) -> Result<Law, Fault> {
    law(|| {
        growth::Law::mean_coefficient(
            c(base_c),
            MeanCoefficient::from_per_kelvin(mean_per_k),
            c(from_c),
            c(to_c),
        )
    })
}

/// Make the law of a table of mean coefficients from a base.
///
/// Parameters
/// ----------
/// base_c : float
///     Temperature the means start from.
/// rows : sequence of (float, float)
///     Temperature and mean coefficient up to it, in rising order.
///
/// Returns
/// -------
/// Law
///     The law.
///
/// Raises
/// ------
/// InputError
///     When a number is impossible.
#[expect(clippy::needless_pass_by_value, reason = "a list of Python is copied")]
#[pyfunction]
pub(crate) fn growth_mean_table(base_c: f64, rows: Vec<(f64, f64)>) -> Result<Law, Fault> {
    law(|| {
        let rows = rows.iter().map(|(t, a)| (c(*t), MeanCoefficient::from_per_kelvin(*a)));
        growth::Law::mean_table(c(base_c), &rows.collect::<Vec<_>>())
    })
}

/// Make the law of a table of instantaneous coefficients.
///
/// Parameters
/// ----------
/// rows : sequence of (float, float)
///     Temperature and instantaneous coefficient at it, in rising order.
///
/// Returns
/// -------
/// Law
///     The law.
///
/// Raises
/// ------
/// InputError
///     When a number is impossible.
#[expect(clippy::needless_pass_by_value, reason = "a list of Python is copied")]
#[pyfunction]
pub(crate) fn growth_instantaneous_table(rows: Vec<(f64, f64)>) -> Result<Law, Fault> {
    law(|| {
        let rows = rows.iter().map(|(t, a)| (c(*t), InstantaneousCoefficient::from_per_kelvin(*a)));
        growth::Law::instantaneous_table(&rows.collect::<Vec<_>>())
    })
}

/// Make the law of an instantaneous coefficient that is a polynomial.
///
/// Parameters
/// ----------
/// kelvin_coefficients : sequence of float
///     c0, c1, c2, ... over kelvin.
/// from_c, to_c : float
///     Range, which holds 20 C.
///
/// Returns
/// -------
/// Law
///     The law.
///
/// Raises
/// ------
/// InputError
///     When a number is impossible.
#[expect(clippy::needless_pass_by_value, reason = "a list of Python is copied")]
#[pyfunction]
pub(crate) fn growth_instantaneous_polynomial(
    kelvin_coefficients: Vec<f64>,
    from_c: f64,
    to_c: f64,
) -> Result<Law, Fault> {
    law(|| growth::Law::instantaneous_polynomial(&kelvin_coefficients, c(from_c), c(to_c)))
}

/// Make the law of a strain that is a polynomial.
///
/// Parameters
/// ----------
/// kelvin_coefficients : sequence of float
///     c0, c1, c2, ... over kelvin.
/// from_c, to_c : float
///     Range, which holds 20 C.
///
/// Returns
/// -------
/// Law
///     The law.
///
/// Raises
/// ------
/// InputError
///     When a number is impossible.
#[expect(clippy::needless_pass_by_value, reason = "a list of Python is copied")]
#[pyfunction]
pub(crate) fn growth_strain_polynomial(
    kelvin_coefficients: Vec<f64>,
    from_c: f64,
    to_c: f64,
) -> Result<Law, Fault> {
    law(|| growth::Law::strain_polynomial(&kelvin_coefficients, c(from_c), c(to_c)))
}

/// Make the law of compacted or spheroidal graphite iron.
///
/// Parameters
/// ----------
/// nodularity_percent : float
///     Nodularity, in %.
/// graphite_percent : float
///     Area fraction of graphite, in %.
/// pearlite_to_ferrite : float
///     Pearlite over ferrite in the matrix.
///
/// Returns
/// -------
/// Law
///     The law.
///
/// Raises
/// ------
/// InputError
///     When a number is impossible.
#[pyfunction]
pub(crate) fn growth_graphite_iron(
    nodularity_percent: f64,
    graphite_percent: f64,
    pearlite_to_ferrite: f64,
) -> Result<Law, Fault> {
    law(|| growth::Law::graphite_iron(nodularity_percent, graphite_percent, pearlite_to_ferrite))
}

/// Give the law of a built-in material.
///
/// Parameters
/// ----------
/// name : str
///     Its name.
///
/// Returns
/// -------
/// Law
///     The law.
///
/// Raises
/// ------
/// InputError
///     When a number is impossible.
#[pyfunction]
pub(crate) fn growth_built_in(name: &str) -> Result<Law, Fault> {
    law(|| library::named(name).map(library::Row::law))
}

/// Give the built-in materials as JSON.
///
/// Returns
/// -------
/// str
///     A list of rows, as JSON.
#[pyfunction]
pub(crate) fn built_in_materials() -> Result<String, Fault> {
    guarded(|| Ok(library::to_json()))
}

/// Give the illustrative temperatures by duty as JSON.
///
/// Returns
/// -------
/// str
///     A list of rows, as JSON.
#[pyfunction]
pub(crate) fn illustrative_duties() -> Result<String, Fault> {
    guarded(|| Ok(duty::to_json()))
}
