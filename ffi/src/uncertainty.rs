//! Uncertain quantities: a whole budget, and the common numbers.

use crate::array::{array, number_of_choice};
use crate::error::{Failure, GaugepointError};
use crate::guard::{cleared, kept, status};
use crate::text::{bytes, give};
use core::ffi::c_char;
use gaugepoint::ErrorKind;
use gaugepoint::budget::budget_json_bytes;
use gaugepoint::measurement::distribution::{Bounded, Distribution};
use gaugepoint::measurement::{monte_carlo, uncertainty};

/// Shapes between two limits at equal distances from the estimate.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointBounded {
    /// Uniform.
    Rectangular = 1,
    /// Symmetric triangle.
    Triangular = 2,
    /// Symmetric trapezoid; its parameter is the width of the top over that of the base, 0 to 1.
    Trapezoidal = 3,
    /// Uniform between limits in doubt; its parameter is the largest error of the half-width.
    CurvilinearTrapezoid = 4,
    /// A sine between its limits.
    Arcsine = 5,
}

/// Evaluates a budget of uncertainty and gives its report, both JSON.
///
/// `budget` is a budget document of `budget_length` bytes. `report` gets the text, to be freed by gaugepoint_text_free,
/// and `report_length` its length in bytes without the NUL that ends it. A Monte Carlo run takes the time of its trials.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_budget_evaluate(
    budget: *const c_char,
    budget_length: usize,
    report: *mut *mut c_char,
    report_length: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (kept("report", report), kept("report_length", report_length)), || {
            let report = budget_json_bytes(bytes("budget", budget, budget_length)?)?;
            Ok((give(&report)?, report.len()))
        })
    }
}

/// Effective degrees of freedom of `count` independent contributions. JCGM 100:2008, G.4.1, (G.2b).
///
/// `contributions` are sensitivity times standard uncertainty each, `dofs` their degrees of freedom, from 0.5 or
/// INFINITY. INFINITY when all that count are.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_effective_dof(
    contributions: *const f64,
    dofs: *const f64,
    count: usize,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            let contributions = array("contributions", contributions, Some(count))?;
            Ok(uncertainty::effective_dof(contributions, array("dofs", dofs, Some(count))?)?)
        })
    }
}

/// Standard uncertainty of a half-width, in its unit. JCGM 100:2008, 4.3; JCGM 101:2008, 6.4.
///
/// `shape` is a GaugepointBounded; `parameter` counts when `has_parameter` is 1, which it is with
/// GAUGEPOINT_BOUNDED_TRAPEZOIDAL and GAUGEPOINT_BOUNDED_CURVILINEAR_TRAPEZOID and with no other.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_standard_uncertainty(
    shape: i32,
    half_width: f64,
    has_parameter: i32,
    parameter: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            let shape = bounded(shape)?;
            let needed = matches!(shape, Bounded::Trapezoidal | Bounded::CurvilinearTrapezoid);
            let parameter = number_of_choice(("has_parameter", has_parameter), parameter, needed)?;
            let made = Distribution::bounded(shape, half_width, needed.then_some(parameter))?;
            Ok(made.standard_uncertainty())
        })
    }
}

/// Numerical tolerance of a standard uncertainty that is meant to `digits` significant digits, 1 or 2.
///
/// 0.00035 to two digits is 35e-5 and has 0.000005. JCGM 101:2008, 7.9.2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_numerical_tolerance(
    standard_uncertainty: f64,
    digits: i32,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            let digits = u8::try_from(digits).map_err(|_| {
                Failure::refused(ErrorKind::OutOfRange, "digits", "one or two digits are needed")
            })?;
            Ok(monte_carlo::numerical_tolerance(standard_uncertainty, digits)?)
        })
    }
}

fn bounded(number: i32) -> Result<Bounded, Failure> {
    const RECTANGULAR: i32 = GaugepointBounded::Rectangular as i32;
    const TRIANGULAR: i32 = GaugepointBounded::Triangular as i32;
    const TRAPEZOIDAL: i32 = GaugepointBounded::Trapezoidal as i32;
    const CURVILINEAR: i32 = GaugepointBounded::CurvilinearTrapezoid as i32;
    const ARCSINE: i32 = GaugepointBounded::Arcsine as i32;
    match number {
        RECTANGULAR => Ok(Bounded::Rectangular),
        TRIANGULAR => Ok(Bounded::Triangular),
        TRAPEZOIDAL => Ok(Bounded::Trapezoidal),
        CURVILINEAR => Ok(Bounded::CurvilinearTrapezoid),
        ARCSINE => Ok(Bounded::Arcsine),
        _ => Err(Failure::choice("shape", number, "1, 2, 3, 4, 5")),
    }
}
