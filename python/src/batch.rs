//! Many rows at once, over arrays of numpy, which is loaded by whoever passes one and never by this module.

use crate::error::{Fault, guarded};
use gaugepoint::Error;
use gaugepoint::batch::{Batch, COLUMNS, Columns, Refused, Results, Stair};
use gaugepoint::growth::StrainLaw;
use gaugepoint::wide::Width;
use numpy::ndarray::{Dimension, Ix1};
use numpy::{
    Element, PyArray, PyArray1, PyArrayMethods, PyReadonlyArray1, PyReadwriteArray, PyReadwriteArray1,
};
use pyo3::exceptions::{PyTypeError, PyValueError};
use pyo3::prelude::*;
use pyo3::types::PyDict;
use std::borrow::Cow;

/// Most refused rows whose reasons are given.
pub(crate) const MOST_REASONS: usize = 8;

type Array<'py> = Bound<'py, PyArray1<f64>>;
type Given<'py> = Bound<'py, PyAny>;
/// A row and why it is refused.
type Reason = (usize, PyErr);
type Done<'py> = (Given<'py>, Given<'py>, Option<Bound<'py, PyArray1<i32>>>, usize, Vec<Reason>);

/// Give bench and running clearance of many rows; `gaugepoint.batch.clearances` is its public form.
///
/// Parameters
/// ----------
/// bore_law, piston_law : list
///     A mean coefficient; or three coefficients and the two ends of their range.
/// bore_mm, piston_mm, parts_temperature_c, bore_temperature_c, piston_temperature_c : numpy.ndarray
///     The columns.
/// out : tuple of numpy.ndarray or None
///     Where the results go.
/// partial : bool
///     Whether rows that are refused leave the others their results.
///
/// Returns
/// -------
/// tuple
///     Both clearances, statuses, the number of refused rows, and the first of them with their errors.
///
/// Raises
/// ------
/// InputError
///     When a law is refused or the columns are not of one length.
/// TypeError
///     When a column is no array of one dimension and float64.
/// ValueError
///     When a result has no place of its own.
#[pyfunction]
#[expect(clippy::too_many_arguments, reason = "the columns and their laws")]
pub(crate) fn clearances<'py>(
    py: Python<'py>,
    bore_law: Vec<f64>,
    piston_law: Vec<f64>,
    bore_mm: Given<'py>,
    piston_mm: Given<'py>,
    parts_temperature_c: Given<'py>,
    bore_temperature_c: Given<'py>,
    piston_temperature_c: Given<'py>,
    out: Option<(Given<'py>, Given<'py>)>,
    partial: bool,
) -> PyResult<Done<'py>> {
    let batch = guarded(|| Ok(Batch::new(law("bore_law", &bore_law)?, law("piston_law", &piston_law)?)))?;
    let given = [bore_mm, piston_mm, parts_temperature_c, bore_temperature_c, piston_temperature_c];
    let mut arrays = Vec::with_capacity(given.len());
    for (name, column) in COLUMNS.into_iter().zip(&given) {
        arrays.push(array::<Ix1>(name, column)?.try_readonly().map_err(|_| occupied(name))?);
    }
    let slices: Vec<Cow<'_, [f64]>> = arrays.iter().map(side_by_side).collect();
    let [b, p, t, tb, tp] = slices.as_slice() else { return Err(occupied("columns")) };
    let columns = Columns {
        bore_mm: b,
        piston_mm: p,
        parts_temperature_c: t,
        bore_temperature_c: tb,
        piston_temperature_c: tp,
    };
    let (bench, running) = match &out {
        Some((bench, running)) => (array("out", bench)?.clone(), array("out", running)?.clone()),
        None => (empty(py, b.len()), empty(py, b.len())),
    };
    let (mut bench_out, mut running_out) = (writable(&bench)?, writable(&running)?);
    let (bench_mm, running_mm) = (place(&mut bench_out)?, place(&mut running_out)?);
    let refused = py.detach(|| {
        let results = Results { bench_mm: &mut *bench_mm, running_mm: &mut *running_mm, status: None };
        guarded(|| batch.clearances(columns, results))
    })?;
    // some rows are written by then, and none of them may be taken for a result
    if refused > 0 && !partial {
        bench_mm.fill(f64::NAN);
        running_mm.fill(f64::NAN);
    }
    // zeroed memory that nobody touches costs nothing, so statuses are written only where there is something to say
    let status = partial.then(|| PyArray1::<i32>::zeros(py, [b.len()], false));
    if let (Some(status), 1..) = (&status, refused) {
        let mut status = status.try_readwrite().map_err(|_| occupied("status"))?;
        let status = status.as_slice_mut().map_err(|_| occupied("status"))?;
        py.detach(|| {
            let results = Results { bench_mm, running_mm, status: Some(status) };
            guarded(|| batch.clearances(columns, results))
        })?;
    }
    let reasons = if refused > 0 { reasons(py, &batch, columns)? } else { Vec::new() };
    drop((bench_out, running_out));
    Ok((bench.into_any(), running.into_any(), status, refused, reasons))
}

/// Give of many values the number of the step that each stands on; of the frames.
///
/// Parameters
/// ----------
/// values_mm : numpy.ndarray
///     The values.
/// first : int
///     Number of the smallest.
/// up, down : list of float
///     Values from which on the number is one more, and one less.
///
/// Returns
/// -------
/// numpy.ndarray
///     The numbers, as int8.
///
/// Raises
/// ------
/// TypeError, ValueError
///     When an array is none of its kind.
#[pyfunction]
pub(crate) fn steps<'py>(
    py: Python<'py>,
    values_mm: PyReadonlyArray1<'py, f64>,
    first: i8,
    up: Vec<f64>,
    down: Vec<f64>,
) -> PyResult<Bound<'py, PyArray1<i8>>> {
    let values = values_mm.as_slice()?;
    let codes = PyArray1::zeros(py, [values.len()], false);
    let stair = Stair { first, up: &up, down: &down };
    {
        let mut places = writable(&codes)?;
        let places = places.as_slice_mut()?;
        guarded(|| stair.steps(values, places, Width::detected()))?;
    }
    Ok(codes)
}

/// How many codes are counted at a time: few enough that a byte holds it.
const CHUNK: usize = 255;

/// Count codes: how many there are of 0, 1, and so on; of the frames.
///
/// Parameters
/// ----------
/// codes : numpy.ndarray
///     The codes.
/// kinds : int
///     How many are counted, from 0.
///
/// Returns
/// -------
/// list of int
///     How many there are of each.
///
/// Raises
/// ------
/// TypeError, ValueError
///     When it is no array of its kind.
#[pyfunction]
pub(crate) fn counted(codes: PyReadonlyArray1<'_, i8>, kinds: i8) -> PyResult<Vec<usize>> {
    let codes = codes.as_slice()?;
    let among =
        |codes: &[i8], kind: i8| codes.iter().fold(0_u8, |count, code| count + u8::from(*code == kind));
    Ok((0..kinds)
        .map(|kind| codes.chunks(CHUNK).map(|chunk| usize::from(among(chunk, kind))).sum())
        .collect())
}

fn law(field: &str, numbers: &[f64]) -> Result<StrainLaw, Error> {
    let law = match *numbers {
        [per_k, per_k2, per_k3, from_c, to_c] => StrainLaw::cubic(per_k, per_k2, per_k3, from_c, to_c),
        [per_k] => StrainLaw::mean(per_k),
        _ => StrainLaw::mean(f64::NAN),
    };
    law.map_err(|error| error.under(field))
}

/// An array as it is: no subclass, which may have a mask or a unit that would be lost.
pub(crate) fn array<'a, 'py, D: Dimension>(
    name: &str,
    given: &'a Given<'py>,
) -> PyResult<&'a Bound<'py, PyArray<f64, D>>> {
    let wrong = || {
        let class = given.get_type().name().map(|name| name.to_string()).unwrap_or_default();
        let dimensions = match D::NDIM {
            Some(2) => "two dimensions and ",
            Some(1) => "one dimension and ",
            _ => "",
        };
        PyTypeError::new_err(format!(
            "{name}: a numpy.ndarray of {dimensions}float64 is needed, not {class}; no list, no other type, no subclass"
        ))
    };
    // without numpy there is no array, and asking its classes would load it
    let modules = given.py().import("sys")?.getattr("modules")?.cast_into::<PyDict>()?;
    let Some(numpy) = modules.get_item("numpy")? else { return Err(wrong()) };
    match given.get_type().is(&numpy.getattr("ndarray")?) {
        true => given.cast::<PyArray<f64, D>>().map_err(|_| wrong()),
        false => Err(wrong()),
    }
}

pub(crate) fn occupied(name: &str) -> PyErr {
    PyValueError::new_err(format!("{name}: it is being written, or overlaps another array of the call"))
}

/// The numbers of an array; copied only when they do not stand side by side.
fn side_by_side<'a>(array: &'a PyReadonlyArray1<'_, f64>) -> Cow<'a, [f64]> {
    match array.as_slice() {
        Ok(numbers) => Cow::Borrowed(numbers),
        Err(_) => Cow::Owned(array.as_array().to_vec()),
    }
}

fn empty(py: Python<'_>, rows: usize) -> Array<'_> {
    PyArray1::zeros(py, [rows], false)
}

pub(crate) fn writable<'py, T: Element, D: Dimension>(
    array: &Bound<'py, PyArray<T, D>>,
) -> PyResult<PyReadwriteArray<'py, T, D>> {
    array.try_readwrite().map_err(|_| {
        PyValueError::new_err("out: it cannot be written, or overlaps another array of the call")
    })
}

fn place<'a>(array: &'a mut PyReadwriteArray1<'_, f64>) -> PyResult<&'a mut [f64]> {
    array.as_slice_mut().map_err(|_| PyValueError::new_err("out: its numbers do not stand side by side"))
}

fn reasons(py: Python<'_>, batch: &Batch, columns: Columns<'_>) -> PyResult<Vec<Reason>> {
    let refused: Vec<Refused> = py.detach(|| guarded(|| Ok(batch.refused(columns, 0, MOST_REASONS))))?;
    Ok(refused.into_iter().map(|Refused { row, error }| (row, Fault::Refused(error).into())).collect())
}
