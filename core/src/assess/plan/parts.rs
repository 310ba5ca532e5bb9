//! The smaller decisions, and what they have in common.

use super::Kept;
use crate::assess::Assessment;
use crate::bounds::Bound;
use crate::calc::{Measured, formula};
use crate::error::{Error, ErrorKind};
use crate::job::plan as doc;
use crate::job::{Count, Document, Entry, Given, Numeric};
use crate::measurement::distribution::Distribution;
use crate::measurement::half_width;
use crate::quantity::Length;
use crate::report::PlanReport;

formula! {
    /// Most less least.
    Difference: difference ["mm"] = (most, least) => most - least; source "definition";
}

/// Lengths nearer than this are the same, in mm: rounding of the arithmetic.
pub(super) const NOISE_MM: f64 = 1e-9;

impl Assessment {
    /// The smaller decisions of a plan.
    pub(super) fn parts(
        &mut self,
        document: &Document,
        plan: &doc::Plan,
        (kept, finishes): (&[Kept], &[(u32, Measured)]),
        out: &mut PlanReport,
    ) -> Result<(), Error> {
        if let Some(sleeves) = &plan.sleeves {
            out.sleeves = self.sleeves(document, sleeves)?;
        }
        if let Some(liners) = &plan.liners {
            out.liners = Some(self.liners(liners)?);
        }
        self.rings(&plan.rings, (kept, finishes), out)?;
        if let Some(gasket) = &plan.gasket {
            self.gasket(gasket, out)?;
        }
        if let Some(masses) = &plan.masses {
            out.masses = Some(self.masses(masses)?);
        }
        Ok(())
    }

    /// The number of a cylinder that a list does not have yet.
    pub(super) fn another(&self, entry: &Entry<Count>, known: impl Fn(u32) -> bool) -> Result<u32, Error> {
        let number = entry.count(1, self.engine.cylinders)?;
        match known(number) {
            true => Err(entry.refuse(ErrorKind::Repeated, "this cylinder stands twice")),
            false => Ok(number),
        }
    }

    /// A field that may be left out.
    pub(super) fn optional<K: Numeric>(
        &mut self,
        entry: &Option<Entry<K>>,
        bound: &Bound,
    ) -> Result<Option<Given>, Error> {
        entry.as_ref().map(|e| e.read(bound, &mut self.warnings)).transpose()
    }

    /// Two ends of a length.
    pub(super) fn span(&mut self, span: &doc::Span, bound: &Bound) -> Result<(Given, Given), Error> {
        let least = span.min.read(bound, &mut self.warnings)?;
        let most = span.max.read(bound, &mut self.warnings)?;
        if least.value >= most.value {
            let reason = format!("it must be above min, {}", least.text);
            return Err(span.max.refuse(ErrorKind::OutOfOrder, reason).value(most.value));
        }
        Ok((least, most))
    }

    /// A value with a rectangular error of its own.
    pub(super) fn with_error(
        &mut self,
        value: &Measured,
        of: String,
        error: &Entry<Length>,
        bound: &Bound,
    ) -> Result<Measured, Error> {
        let error = error.read(bound, &mut self.warnings)?;
        let source = self.calc.source(of, &error.path, Distribution::STANDARD_RECTANGULAR);
        let standard = half_width(&mut self.calc, &error);
        Ok(self.calc.add_source(value, source, standard))
    }
}

/// What was read of a field, where it lies between two ends.
pub(super) fn within<K: Numeric>(
    entry: &Entry<K>,
    given: Given,
    (least, most): (&Given, &Given),
) -> Result<Given, Error> {
    if (least.value..=most.value).contains(&given.value) {
        return Ok(given);
    }
    let reason = format!("it must lie within {} and {}", least.text, most.text);
    let error = entry.refuse(ErrorKind::OutOfRange, reason).value(given.value);
    Err(error.limits(least.value, most.value, K::UNIT))
}

/// An error of a function with plain numbers, with the field of the document that it means.
pub(super) fn placed(error: Error, at: &str) -> Error {
    let path = error.field().to_owned();
    let names = path.split('/').map(|name| match name {
        "bands" => "grades",
        "projections_mm" => "pistons",
        "assemblies" | "liners" => "each",
        "step_mm" => "printed_to",
        other => ["_mm", "_g", "_cm3"].iter().find_map(|unit| other.strip_suffix(unit)).unwrap_or(other),
    });
    let names: Vec<&str> = names.collect();
    error.moved(format!("{at}/{}", names.join("/")))
}
