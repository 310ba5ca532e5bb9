//! Materials of a piston that change with the height: a steel crown over an aluminium skirt.

use super::{Engine, PistonPlace};
use crate::bounds::{self, Bound};
use crate::error::{Error, ErrorKind};
use crate::growth::Materials;
use crate::job::document::{self as doc, Datum};
use crate::job::{Entry, Given, Warning, check_length};
use crate::quantity::Length;
use crate::shape::piston::Surface;

/// Heights nearer than this, in mm, are one, as elsewhere on a piston.
const NEAR_MM: f64 = 0.001;
/// An end of a range may be an end of the piston, where nobody reads.
const BOUND: Bound = Bound { label: "height on a piston", usual: (0.0, 1000.0), ..bounds::PISTON_HEIGHT };

/// The material between two heights.
pub(super) struct MaterialRange {
    from: Given,
    to: Given,
    datum: Datum,
    material: usize,
    pub(super) name: String,
}

impl MaterialRange {
    /// The ranges of a piston, none of which overlap; of two counts of height nothing is known of each other.
    pub(super) fn from_document(
        piston: &doc::EnginePiston,
        materials: &Materials,
        warnings: &mut Vec<Warning>,
    ) -> Result<Vec<Self>, Error> {
        check_length(&piston.materials_by_height, |r| &r.from)?;
        let mut out: Vec<Self> = Vec::new();
        for range in &piston.materials_by_height {
            let new = MaterialRange {
                from: range.from.read(&BOUND, warnings)?,
                to: range.to.read(&BOUND, warnings)?,
                datum: range.datum.unwrap_or(piston.gauge_point.datum),
                material: materials.find(&range.material)?,
                name: range.material.words()?.to_owned(),
            };
            if new.from.value >= new.to.value {
                let reason = format!("to must be above from, {}", new.from.text);
                return Err(range.to.refuse(ErrorKind::OutOfOrder, reason).value(new.to.value));
            }
            if let Some(other) = out.iter().find(|other| other.overlaps(&new)) {
                let reason = format!(
                    "it overlaps the range from {} to {} ({})",
                    other.from.text, other.to.text, other.from.path
                );
                return Err(range.from.refuse(ErrorKind::Contradiction, reason));
            }
            out.push(new);
        }
        Ok(out)
    }

    fn overlaps(&self, other: &MaterialRange) -> bool {
        let below = |a: &Given, b: &Given| a.value < b.value - NEAR_MM;
        self.datum == other.datum && below(&self.from, &other.to) && below(&other.from, &self.to)
    }

    /// Has it another material at heights of a surface, which are counted from the bottom edge of the skirt?
    pub(super) fn contradicts(&self, surface: &Surface, material: usize) -> bool {
        let meets = surface.from_mm < self.to.value - NEAR_MM && self.from.value < surface.to_mm - NEAR_MM;
        self.datum == Datum::SkirtBottom && meets && self.material != material
    }

    fn holds(&self, place: &PistonPlace) -> bool {
        let height = place.height.value;
        self.datum == place.datum && height > self.from.value - NEAR_MM && height < self.to.value + NEAR_MM
    }
}

/// The range of a place; none when the piston is of one material.
pub(super) fn range_at<'r>(
    ranges: &'r [MaterialRange],
    place: &PistonPlace,
    height: &Entry<Length>,
) -> Result<Option<&'r MaterialRange>, Error> {
    if ranges.is_empty() {
        return Ok(None);
    }
    let mut here = ranges.iter().filter(|r| r.holds(place));
    match (here.next(), here.next()) {
        (Some(range), None) => Ok(Some(range)),
        (Some(a), Some(b)) => {
            let reason = format!("it stands on the joint of {} and {}", a.name, b.name);
            Err(height.refuse(ErrorKind::Contradiction, reason))
        }
        _ => {
            let reason = format!(
                "no material is stated at this height from the {}; see materials_by_height",
                place.datum.spoken()
            );
            Err(height.refuse(ErrorKind::Contradiction, reason))
        }
    }
}

/// The gauge point stands in a range of the material that the piston is named after: that one carries the running clearance.
pub(super) fn check_gauge_point(engine: &Engine, piston: &doc::EnginePiston) -> Result<(), Error> {
    let range = range_at(&engine.piston_ranges, &engine.gauge_point, &piston.gauge_point.height)?;
    match range.filter(|r| r.material != engine.piston_material) {
        Some(range) => {
            let reason = format!("it is the material at the gauge point, where the range has {}", range.name);
            Err(piston.material.refuse(ErrorKind::Contradiction, reason))
        }
        None => Ok(()),
    }
}

impl Engine {
    /// Material of a piston at a place, and its name where materials change with the height.
    pub(super) fn material_at(
        &self,
        place: &PistonPlace,
        height: &Entry<Length>,
    ) -> Result<(usize, Option<String>), Error> {
        let range = range_at(&self.piston_ranges, place, height)?;
        Ok(range.map_or((self.piston_material, None), |r| (r.material, Some(r.name.clone()))))
    }
}
