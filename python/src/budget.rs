//! Uncertain quantities: a whole budget, and the common numbers.

use crate::error::{Fault, guarded};
use crate::progress::{Progress, watched};
use gaugepoint::Error;
use gaugepoint::budget::{Budget, BudgetDocument, BudgetReport};
use gaugepoint::measurement::distribution::{Bounded, Distribution};
use gaugepoint::measurement::{monte_carlo, uncertainty};
use gaugepoint::progress::Watch;
use pyo3::prelude::*;

/// A report as JSON and as text.
type Written = (String, String);

/// Evaluate a budget given as JSON. Other threads run meanwhile.
///
/// Parameters
/// ----------
/// document : bytes
///     The budget document, JSON in UTF-8.
/// progress : callable or None
///     Told what is done and of how much.
///
/// Returns
/// -------
/// tuple of str
///     The report as JSON and as text.
///
/// Raises
/// ------
/// InputError
///     When the document or a field of it is refused.
#[pyfunction]
pub(crate) fn budget(py: Python<'_>, document: &[u8], progress: Progress) -> PyResult<Written> {
    py.detach(|| watched(progress, |watch| written(document, watch)))
}

fn written(document: &[u8], watch: Watch<'_>) -> Result<Written, Error> {
    let report = Budget::from_json_bytes(document)?.evaluate_watched(watch)?;
    Ok((report.to_json(), report.to_text()))
}

/// Give the JSON Schema of a budget document.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn budget_schema() -> &'static str {
    BudgetDocument::schema_json()
}

/// Give the JSON Schema of the report on a budget.
///
/// Returns
/// -------
/// str
///     The schema, as JSON.
#[pyfunction]
pub(crate) fn budget_report_schema() -> &'static str {
    BudgetReport::schema_json()
}

/// Give the effective degrees of freedom of independent contributions, by Welch-Satterthwaite.
///
/// Source: JCGM 100:2008, G.4.1, (G.2b).
///
/// Parameters
/// ----------
/// contributions : sequence of float
///     Sensitivity times standard uncertainty of each source.
/// dofs : sequence of float
///     Degrees of freedom of each, from 0.5; ``math.inf`` where the uncertainty is taken as exact.
///
/// Returns
/// -------
/// float
///     The degrees of freedom, not truncated; ``math.inf`` when all that count are.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, or there are not as many of the one as of the other; it names the place.
///
/// Examples
/// --------
/// >>> from gaugepoint.uncertainty import effective_dof
/// >>> round(effective_dof([5.8, 3.9, 6.7], [24, 5, 8]), 1)
/// 25.4
#[pyfunction]
pub(crate) fn effective_dof(contributions: Vec<f64>, dofs: Vec<f64>) -> Result<f64, Fault> {
    guarded(|| uncertainty::effective_dof(&contributions, &dofs))
}

/// Give the standard uncertainty of a half-width.
///
/// Sources: JCGM 100:2008, 4.3; JCGM 101:2008, 6.4.
///
/// Parameters
/// ----------
/// shape : {"rectangular", "triangular", "trapezoidal", "curvilinear_trapezoid", "arcsine"}
///     The distribution between the limits.
/// half_width : float
///     Half of the distance between the limits, in any one unit.
/// parameter : float, optional
///     Of a trapezoid the width of the top over that of the base, 0 to 1; of a curvilinear trapezoid the largest error of the
///     half-width. The other shapes have none.
///
/// Returns
/// -------
/// float
///     The standard uncertainty, in the same unit.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible, the shape is unknown, or the parameter is missing or not used.
///
/// Examples
/// --------
/// >>> from gaugepoint.uncertainty import standard_uncertainty
/// >>> round(standard_uncertainty("rectangular", 6.0), 4)
/// 3.4641
#[pyfunction]
#[pyo3(signature = (shape, half_width, parameter = None))]
pub(crate) fn standard_uncertainty(
    shape: &str,
    half_width: f64,
    parameter: Option<f64>,
) -> Result<f64, Fault> {
    guarded(|| {
        let shape = Bounded::from_word(shape).map_err(|e| e.named("shape"))?;
        Ok(Distribution::bounded(shape, half_width, parameter)?.standard_uncertainty())
    })
}

/// Give the numerical tolerance of a standard uncertainty.
///
/// Half a unit of the last digit that is meant: 0.00035 to two digits has 0.000005. Source: JCGM 101:2008, 7.9.2.
///
/// Parameters
/// ----------
/// standard_uncertainty : float
///     The standard uncertainty, 0 or more.
/// digits : int
///     Significant digits that are meant, 1 or 2.
///
/// Returns
/// -------
/// float
///     The tolerance, in the same unit.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible; it names the parameter, the value and the range.
///
/// Examples
/// --------
/// >>> from gaugepoint.uncertainty import numerical_tolerance
/// >>> numerical_tolerance(0.00035, 2)
/// 5e-06
#[pyfunction]
pub(crate) fn numerical_tolerance(standard_uncertainty: f64, digits: i64) -> Result<f64, Fault> {
    // no number of digits beyond a byte is one or two
    let digits = u8::try_from(digits).unwrap_or(u8::MAX);
    guarded(|| monte_carlo::numerical_tolerance(standard_uncertainty, digits))
}
