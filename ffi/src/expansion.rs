//! A law of expansion as a handle: checked once, then asked.

use crate::array::{array, array_out, given};
use crate::error::{Failure, GaugepointError};
use crate::growth::{GaugepointGrowth, GaugepointLaw, c, law};
use crate::guard::{cleared, kept, plain, status};
use crate::handle;
use crate::record::record;
use gaugepoint::growth::{Law, MeanCoefficient};

/// A law of expansion, made by gaugepoint_expansion_new. It never changes.
#[derive(Debug)]
pub struct GaugepointExpansion(Law);

/// Makes a law of expansion, checked over its whole range.
///
/// `expansion` gets it, to be freed by gaugepoint_expansion_free. The law is copied; nothing of it is kept.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_expansion_new(
    law: *const GaugepointLaw,
    expansion: *mut *mut GaugepointExpansion,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("expansion", expansion), || {
            Ok(handle::made(GaugepointExpansion(self::law(&given("law", law)?)?)))
        })
    }
}

/// Frees a law of expansion. NULL is fine.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_expansion_free(expansion: *mut GaugepointExpansion) {
    // SAFETY: the contract of the header
    plain((), || unsafe { handle::freed(expansion) });
}

/// Lowest and highest temperature that a law holds at.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_expansion_range(
    expansion: *const GaugepointExpansion,
    from_c: *mut f64,
    to_c: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (cleared("from_c", from_c, f64::NAN), cleared("to_c", to_c, f64::NAN)), || {
            let (from, to) = of(expansion)?.range();
            Ok((from.celsius(), to.celsius()))
        })
    }
}

/// What a law says of one temperature: strain, instantaneous coefficient, mean coefficient from 20 C.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_expansion_at(
    expansion: *const GaugepointExpansion,
    temperature_c: f64,
    out: *mut GaugepointGrowth,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, record("out", out), || Ok(of(expansion)?.at(c(temperature_c))?.into())) }
}

/// Mean coefficient `(L1 - L0) / (L0 (T1 - T0))` from one temperature to another; two that are the same are refused.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_expansion_mean_per_k(
    expansion: *const GaugepointExpansion,
    from_c: f64,
    to_c: f64,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            let (from, to) = (c(from_c), c(to_c));
            Ok(of(expansion)?.mean(from, to).map(MeanCoefficient::per_kelvin)?)
        })
    }
}

/// Strains from 20 C, (L - L20) / L20, at `count` temperatures in any order; `strains` has room for as many. A refused temperature is named with
/// its place: "temperatures_c/3".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_expansion_strains(
    expansion: *const GaugepointExpansion,
    temperatures_c: *const f64,
    count: usize,
    strains: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, array_out("strains", strains, count), || {
            let temperatures = array("temperatures_c", temperatures_c, Some(count))?.iter();
            let temperatures: Vec<_> = temperatures.map(|t| c(*t)).collect();
            Ok(of(expansion)?.strains(&temperatures)?)
        })
    }
}

/// # Safety
/// As [`handle::lent`].
unsafe fn of<'a>(expansion: *const GaugepointExpansion) -> Result<&'a Law, Failure> {
    // SAFETY: the caller's promise
    Ok(unsafe { &handle::lent("expansion", expansion)?.0 })
}
