//! A flat function over whatever NumPy takes for an array: broadcast, computed in pieces by threads, refused by its places.
//!
//! The functions stand in [`crate::flat`]. numpy is loaded by the first argument that is an array, never by this module.

use crate::batch::{MOST_REASONS, array, occupied, writable};
use crate::error::{Fault, guarded};
use gaugepoint::flat::{Column, Function};
use gaugepoint::{Error, ErrorKind};
use numpy::ndarray::IxDyn;
use numpy::{
    BorrowError, PyArrayDyn, PyArrayMethods, PyReadonlyArrayDyn, PyUntypedArray, PyUntypedArrayMethods,
};
use pyo3::exceptions::{PyMemoryError, PyTypeError, PyValueError};
use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyFloat, PyInt, PyList, PySequence, PyString, PyTuple};
use std::borrow::Cow;
use std::panic::resume_unwind;
use std::slice;
use std::thread;

/// Most threads of a call, as of a Monte Carlo run.
const MOST_THREADS: usize = 1024;
/// Most axes of an array of numpy: what lies deeper in a list is no number, and a list may hold itself.
const MOST_AXES: usize = 64;
/// Elements computed at a time: their statuses stay where they are fast.
const PIECE: usize = 1024;

type Given<'py> = Bound<'py, PyAny>;
type Numbers<'py> = Bound<'py, PyArrayDyn<f64>>;
type Statuses<'py> = Bound<'py, PyArrayDyn<i32>>;

/// What every flat function takes besides its parameters.
pub(crate) struct Options<'a, 'py> {
    /// Where the results go.
    pub(crate) out: Option<&'a Given<'py>>,
    /// Whether elements that are refused leave the others their results.
    pub(crate) partial: bool,
    /// How many threads compute.
    pub(crate) threads: i64,
}

/// The number of a Python float, which most arguments are.
#[inline(always)]
pub(crate) fn float(given: &Given<'_>) -> Option<f64> {
    given.cast_exact::<PyFloat>().ok().map(PyFloatMethods::value)
}

/// A function of arguments of any kind.
#[cold]
pub(crate) fn call<'py>(
    py: Python<'py>,
    function: &'static Function,
    given: &[&Given<'py>],
    options: Options<'_, 'py>,
) -> PyResult<Given<'py>> {
    let threads =
        usize::try_from(options.threads).ok().filter(|threads| (1..=MOST_THREADS).contains(threads));
    let threads = threads.ok_or_else(|| {
        let reason = "1 to 1024 threads are needed";
        at_door(py, ErrorKind::OutOfRange, "threads", &options.threads.to_string(), reason)
    })?;
    let arguments = function.parameters.iter().zip(given).map(|(name, given)| Argument::of(name, given));
    let arguments = arguments.collect::<PyResult<Vec<_>>>()?;
    let numbers: Option<Vec<f64>> = arguments.iter().map(Argument::number).collect();
    match (numbers, options.out) {
        (Some(numbers), None) => of_numbers(py, function, &numbers, options.partial),
        _ => of_arrays(py, function, given, arguments, &options, threads),
    }
}

fn of_numbers<'py>(
    py: Python<'py>,
    function: &Function,
    numbers: &[f64],
    partial: bool,
) -> PyResult<Given<'py>> {
    match (guarded(|| function.call(numbers)), partial) {
        (Ok(value), false) => Ok(PyFloat::new(py, value).into_any()),
        (Ok(value), true) => Ok((value, 0).into_pyobject(py)?.into_any()),
        (Err(Fault::Refused(error)), true) => {
            Ok((f64::NAN, error.kind().code()).into_pyobject(py)?.into_any())
        }
        (Err(fault), _) => Err(fault.into()),
    }
}

fn of_arrays<'py>(
    py: Python<'py>,
    function: &'static Function,
    given: &[&Given<'py>],
    arguments: Vec<Argument<'py>>,
    options: &Options<'_, 'py>,
    threads: usize,
) -> PyResult<Given<'py>> {
    let partial = options.partial;
    let out = options.out.map(|out| array::<IxDyn>("out", out)).transpose()?;
    let shape = shape_of_all(py, function, &arguments, out)?;
    let rows = shape.iter().try_fold(1_usize, |rows, length| rows.checked_mul(*length));
    let rows = rows.ok_or_else(|| PyMemoryError::new_err("more elements than memory has places"))?;
    let shares = out.map(|out| shares_memory(out, given)).transpose()?.unwrap_or(false);
    // results go to their place at once where nothing is read from it any more
    let direct = out.filter(|out| !shares && out.is_c_contiguous() && out.is_aligned());
    let results: Numbers<'py> = match direct {
        Some(out) => out.clone(),
        None => zeros(py, &shape, "float64")?,
    };
    let status: Option<Statuses<'py>> = partial.then(|| zeros(py, &shape, "int32")).transpose()?;
    {
        let spread: Vec<Cow<'_, [f64]>> =
            arguments.iter().map(|argument| argument.spread(&shape, rows)).collect::<PyResult<_>>()?;
        let columns: Vec<Column<'_>> = spread.iter().map(|values| column(values)).collect();
        let work = Work { function, columns: &columns };
        let mut writing = writable(&results)?;
        let numbers = writing.as_slice_mut().map_err(|_| occupied("out"))?;
        let mut statuses = status.as_ref().map(writable).transpose()?;
        let statuses = statuses.as_mut().map(|statuses| statuses.as_slice_mut()).transpose();
        let statuses = statuses.map_err(|_| occupied("status"))?;
        let refused = py.detach(|| guarded(|| work.all(numbers, statuses, threads)))?;
        if refused > 0 && !partial {
            let error = refusal(py, &work, numbers, &shape, refused)?;
            drop(writing);
            // none of the elements that were computed may be taken for a result, and what was given is not ours to spoil
            if let Some(out) = out.filter(|_| !shares) {
                out.call_method1("fill", (f64::NAN,))?;
            }
            return Err(error);
        }
    }
    drop(arguments);
    let values = match out {
        Some(out) => {
            if direct.is_none() {
                let _alone = writable(out)?;
                py.import("numpy")?.call_method1("copyto", (out, results))?;
            }
            out.clone().into_any()
        }
        None => as_ufuncs_give_it(py, results.into_any(), &shape)?,
    };
    match status {
        Some(status) => {
            let status = as_ufuncs_give_it(py, status.into_any(), &shape)?;
            Ok((values, status).into_pyobject(py)?.into_any())
        }
        None => Ok(values),
    }
}

/// An argument as it was understood.
enum Argument<'py> {
    Number(f64),
    /// In the order of C.
    Array(PyReadonlyArrayDyn<'py, f64>),
}

impl<'py> Argument<'py> {
    fn of(name: &str, given: &Given<'py>) -> PyResult<Self> {
        if given.is_instance_of::<PyFloat>() || given.is_instance_of::<PyInt>() {
            return given.extract().map(Self::Number);
        }
        if is_quantity(given)? {
            let module = given.py().import("gaugepoint._quantities")?;
            return Self::of(name, &module.call_method1("magnitude", (name, given))?);
        }
        match given.hasattr("__array__")? || is_sequence(given) {
            true => Self::of_array(name, given),
            false => given.extract().map(Self::Number).map_err(|error| named(name, error, given.py())),
        }
    }

    /// What is no array of ours yet becomes one, once.
    fn of_array(name: &str, given: &Given<'py>) -> PyResult<Self> {
        no_quantities(name, given, 0)?;
        let fits = |array: &Numbers<'py>| array.is_c_contiguous() && array.is_aligned();
        let array = match array::<IxDyn>(name, given) {
            Ok(array) if fits(array) => array.clone(),
            _ => converted(name, given)?.cast_into()?,
        };
        array.try_readonly().map(Self::Array).map_err(|_| occupied(name))
    }

    fn number(&self) -> Option<f64> {
        match self {
            Self::Number(number) => Some(*number),
            Self::Array(_) => None,
        }
    }

    fn shape(&self) -> &[usize] {
        match self {
            Self::Number(_) => &[],
            Self::Array(array) => array.shape(),
        }
    }

    /// One number for all elements, or one for each in the order of C; copied only where a part of the elements share one.
    fn spread(&self, shape: &[usize], rows: usize) -> PyResult<Cow<'_, [f64]>> {
        let array = match self {
            Self::Number(number) => return Ok(Cow::Borrowed(slice::from_ref(number))),
            Self::Array(array) => array,
        };
        if array.len() == rows || array.len() == 1 {
            return array.as_slice().map(Cow::Borrowed).map_err(|_| occupied("argument"));
        }
        let view = array.as_array();
        let view = view.broadcast(shape).ok_or_else(|| occupied("argument"))?;
        let mut numbers = Vec::new();
        numbers.try_reserve_exact(rows).map_err(|_| PyMemoryError::new_err("no memory for the argument"))?;
        numbers.extend(view.iter());
        Ok(Cow::Owned(numbers))
    }
}

/// A column of numbers side by side; a single one holds for every row.
fn column(values: &[f64]) -> Column<'_> {
    Column { values, stride: usize::from(values.len() != 1) }
}

/// A function and the columns that it is computed of.
struct Work<'a> {
    function: &'static Function,
    columns: &'a [Column<'a>],
}

impl Work<'_> {
    /// Every row, NaN where it is refused; gives how many are. Each has the same bits on any number of threads.
    fn all(&self, out: &mut [f64], status: Option<&mut [i32]>, threads: usize) -> Result<usize, Error> {
        let length = out.len().div_ceil(threads).max(1);
        let mut statuses = status.map(|status| status.chunks_mut(length));
        let mut parts = (0..)
            .step_by(length)
            .zip(out.chunks_mut(length))
            .map(|(first, out)| (first, out, statuses.as_mut().and_then(Iterator::next)));
        thread::scope(|scope| {
            let own = parts.next();
            let others: Vec<_> = parts
                .map(|(first, out, status)| scope.spawn(move || self.part(first, out, status)))
                .collect();
            let own = own.map_or(Ok(0), |(first, out, status)| self.part(first, out, status));
            others
                .into_iter()
                .map(|other| other.join().unwrap_or_else(|panic| resume_unwind(panic)))
                .try_fold(own?, |sum, refused| Ok(sum + refused?))
        })
    }

    fn part(&self, first: usize, out: &mut [f64], mut status: Option<&mut [i32]>) -> Result<usize, Error> {
        let mut codes = [0; PIECE];
        let mut refused = 0;
        for (start, out) in (0..).step_by(PIECE).zip(out.chunks_mut(PIECE)) {
            let codes = codes.get_mut(..out.len()).unwrap_or_default();
            self.function.each(&self.from(first + start), out, Some(&mut *codes))?;
            let here = codes.iter().filter(|code| **code != 0).count();
            let place = status.as_mut().and_then(|status| status.get_mut(start..start + codes.len()));
            // zeroed memory that nobody touches costs nothing, so statuses are written only where there is something to say
            if let (Some(place), 1..) = (place, here) {
                place.copy_from_slice(codes);
            }
            refused += here;
        }
        Ok(refused)
    }

    /// The columns from a row on.
    fn from(&self, row: usize) -> Vec<Column<'_>> {
        let columns = self.columns.iter();
        columns
            .map(|&Column { values, stride }| Column {
                values: values.get(row * stride..).unwrap_or_default(),
                stride,
            })
            .collect()
    }

    fn call(&self, row: usize) -> Result<f64, Fault> {
        let numbers: Vec<f64> =
            self.from(row).iter().filter_map(|column| column.values.first().copied()).collect();
        guarded(|| self.function.call(&numbers))
    }
}

/// The refusal of elements: how many, the first of them, and why.
fn refusal(
    py: Python<'_>,
    work: &Work<'_>,
    results: &[f64],
    shape: &[usize],
    count: usize,
) -> PyResult<PyErr> {
    let refused = results.iter().enumerate().filter(|(_, result)| result.is_nan()).map(|(row, _)| row);
    let mut reasons: Vec<(usize, PyErr)> = Vec::new();
    for row in refused.take(MOST_REASONS) {
        let error: PyErr = match work.call(row) {
            Err(Fault::Refused(error)) => {
                Fault::Refused(indices(row, shape).into_iter().fold(error, Error::in_row)).into()
            }
            Err(fault) => fault.into(),
            Ok(_) => continue,
        };
        reasons.push((row, error));
    }
    match (shape, reasons.pop()) {
        // of no dimension there is one element, and its refusal is that of a number
        ([], Some((_, error))) => Ok(error),
        (_, last) => {
            reasons.extend(last);
            let refused = py.import("gaugepoint.batch")?.getattr("rows_refused")?;
            Ok(PyErr::from_value(refused.call1((count, reasons, "elements"))?))
        }
    }
}

/// The place of an element on each axis, from its place in the order of C.
fn indices(row: usize, shape: &[usize]) -> Vec<usize> {
    let mut rest = row;
    let mut indices: Vec<usize> = Vec::with_capacity(shape.len());
    for length in shape.iter().rev() {
        indices.push(rest % length);
        rest /= length;
    }
    indices.reverse();
    indices
}

/// The shape that all arguments and the place of the results are stretched to; the place itself is not.
fn shape_of_all<'py>(
    py: Python<'py>,
    function: &Function,
    arguments: &[Argument<'py>],
    out: Option<&Numbers<'py>>,
) -> PyResult<Vec<usize>> {
    let misfit = |name: &str, its: &[usize], others: &[usize]| {
        let reason = format!("its shape does not broadcast with {}", written(others));
        at_door(py, ErrorKind::Contradiction, name, &written(its), &reason)
    };
    let mut shape = Vec::new();
    for (name, argument) in function.parameters.iter().zip(arguments) {
        shape = joined(&shape, argument.shape()).ok_or_else(|| misfit(name, argument.shape(), &shape))?;
    }
    let Some(out) = out else { return Ok(shape) };
    match joined(&shape, out.shape()) {
        Some(joined) if joined == out.shape() => Ok(joined),
        _ => Err(misfit("out", out.shape(), &shape)),
    }
}

/// Both shapes stretched to each other, as NumPy does it: from the last axis, where a length of 1 takes the other.
fn joined(one: &[usize], other: &[usize]) -> Option<Vec<usize>> {
    let axes = one.len().max(other.len());
    let length = |shape: &[usize], axis: usize| {
        (axis + shape.len()).checked_sub(axes).and_then(|axis| shape.get(axis).copied()).unwrap_or(1)
    };
    let both = (0..axes).map(|axis| (length(one, axis), length(other, axis)));
    both.map(|lengths| match lengths {
        (1, length) | (length, 1) => Some(length),
        (one, other) => (one == other).then_some(one),
    })
    .collect()
}

/// A shape as Python writes it.
fn written(shape: &[usize]) -> String {
    let lengths: Vec<String> = shape.iter().map(usize::to_string).collect();
    format!("({}{})", lengths.join(", "), if shape.len() == 1 { "," } else { "" })
}

/// Whether the place of the results may lie in memory that was given.
fn shares_memory<'py>(out: &Numbers<'py>, given: &[&Given<'py>]) -> PyResult<bool> {
    match out.try_readwrite() {
        Ok(_) => {}
        Err(BorrowError::AlreadyBorrowed) => return Ok(true),
        Err(_) => return Err(PyValueError::new_err("out: it cannot be written")),
    }
    // what was converted is not read any more, but it is still the caller's
    let numpy = out.py().import("numpy")?;
    for given in given.iter().filter(|given| given.cast::<PyUntypedArray>().is_ok()) {
        if numpy.call_method1("may_share_memory", (out, given))?.extract()? {
            return Ok(true);
        }
    }
    Ok(false)
}

/// New memory by numpy, which refuses what there is no memory for.
fn zeros<'py, T: numpy::Element>(
    py: Python<'py>,
    shape: &[usize],
    kind: &str,
) -> PyResult<Bound<'py, PyArrayDyn<T>>> {
    let shape = PyTuple::new(py, shape)?;
    Ok(py.import("numpy")?.call_method1("zeros", (shape, kind))?.cast_into()?)
}

/// An array; of one without dimensions its element.
fn as_ufuncs_give_it<'py>(py: Python<'py>, array: Given<'py>, shape: &[usize]) -> PyResult<Given<'py>> {
    match shape {
        [] => array.get_item(PyTuple::empty(py)),
        _ => Ok(array),
    }
}

/// Anything that numpy makes an array of, as one of float64 in the order of C; what is masked is NaN.
fn converted<'py>(name: &str, given: &Given<'py>) -> PyResult<Given<'py>> {
    let py = given.py();
    let numpy = py.import("numpy")?;
    let array = numpy.call_method1("asanyarray", (given,)).map_err(|error| named(name, error, py))?;
    let class = array.get_type();
    let masked = class.is(&numpy.getattr("ma")?.getattr("MaskedArray")?);
    if !masked && !class.is(&numpy.getattr("ndarray")?) && !class.is(&numpy.getattr("memmap")?) {
        let class = class.name()?;
        return Err(PyTypeError::new_err(format!(
            "{name}: {class} may have a unit or another meaning that would be lost; give it as a numpy.ndarray"
        )));
    }
    let dtype = array.getattr("dtype")?;
    let kind: String = dtype.getattr("kind")?.extract()?;
    if !["f", "i", "u"].contains(&kind.as_str()) {
        return Err(PyTypeError::new_err(format!("{name}: integers or real floats are needed, not {dtype}")));
    }
    let float64 = numpy.getattr("float64")?;
    let array = match masked {
        true => array.call_method1("astype", (&float64,))?.call_method1("filled", (f64::NAN,))?,
        false => array,
    };
    numpy.call_method1("require", (array, float64, "CA"))
}

/// Whether it is a list or the like: text is none, although it is made of characters.
fn is_sequence(given: &Given<'_>) -> bool {
    let text = given.is_instance_of::<PyString>() || given.is_instance_of::<PyBytes>();
    !text && given.cast::<PySequence>().is_ok()
}

/// Refuses a list of quantities, of which numpy would take the numbers and drop the units.
fn no_quantities(name: &str, given: &Given<'_>, depth: usize) -> PyResult<()> {
    let list = given.is_instance_of::<PyList>() || given.is_instance_of::<PyTuple>();
    if !list || depth > MOST_AXES {
        return Ok(());
    }
    for item in given.try_iter()? {
        let item = item?;
        if float(&item).is_none() && is_quantity(&item)? {
            let reason = "a list of quantities loses its units; one quantity of an array keeps it";
            return Err(PyTypeError::new_err(format!("{name}: {reason}")));
        }
        no_quantities(name, &item, depth + 1)?;
    }
    Ok(())
}

/// Whether it is a quantity of pint, which is not loaded to know it.
fn is_quantity(given: &Given<'_>) -> PyResult<bool> {
    let classes = given.get_type().getattr("__mro__")?;
    for class in classes.try_iter()? {
        let module = class?.getattr("__module__")?;
        let module = module.extract::<String>().unwrap_or_default();
        if module.split('.').next() == Some("pint") {
            return Ok(given.hasattr("magnitude")? && given.hasattr("to")?);
        }
    }
    Ok(false)
}

/// A refusal of a type that says which parameter it is of.
fn named(name: &str, error: PyErr, py: Python<'_>) -> PyErr {
    match error.is_instance_of::<PyTypeError>(py) || error.is_instance_of::<PyValueError>(py) {
        true => PyTypeError::new_err(format!("{name}: {}", error.value(py))),
        false => error,
    }
}

/// A refusal of what never gets to the core.
fn at_door(py: Python<'_>, kind: ErrorKind, field: &str, refused: &str, reason: &str) -> PyErr {
    let error = py
        .import("gaugepoint.error")
        .and_then(|module| module.getattr("at_door")?.call1((kind.name(), field, refused, reason)));
    error.map_or_else(|failed| failed, PyErr::from_value)
}
