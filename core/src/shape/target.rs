//! The profile a bore should have: its intended deviation of diameter over the depth, as the choke of an air-cooled barrel.
//!
//! A choke is ground as cones between stated depths, so the rows are joined by straight lines and not by a smooth curve.

use super::{BorePlace, same};
use crate::bounds::{self, Bound};
use crate::calc::{Calc, Figure, Measured, formula};
use crate::error::{Error, ErrorKind};
use crate::job::document::{self as doc, ProfileState};
use crate::job::{Entry, Given, Warning, check_length};
use crate::quantity::Length;

formula! {
    /// Deviation that is intended at a depth `y` between two rows; below 0 the bore is narrower there.
    Intended: intended ["mm"] = (t0, t1, y, y0, y1) => t0 + (t1 - t0) * (y - y0) / (y1 - y0);
        source "straight line between two rows of the target profile";
    /// The size of a straight bore that deviates as much.
    Straight: straight ["mm"] = (size, intended) => size - intended; source "definition: size less the deviation intended at its depth";
    /// How far a diameter is from its target; above 0 it is too wide.
    FromTarget: deviation ["mm"] = (size, nominal, intended) => size - (nominal + intended);
        source "definition: size less the nominal size and the deviation intended at its depth";
}

/// A deviation this small, in mm, is none.
const NONE_MM: f64 = 1e-9;

/// The intended deviation from the nominal size over the depth.
pub(crate) struct Target {
    rows: Vec<(Given, Given)>,
    nominal: Given,
    pub(crate) state: ProfileState,
    pub(crate) origin: String,
}

impl Target {
    pub(crate) fn from_document(
        profile: &doc::TargetProfile,
        nominal: &Given,
        length: &Given,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        check_length(&profile.rows, |r| &r.depth)?;
        let depth = Bound { possible: (0.0, length.value), usual: (0.0, length.value), ..bounds::DEPTH };
        let mut rows: Vec<(Given, Given)> = Vec::new();
        for row in &profile.rows {
            let at = row.depth.read(&depth, warnings)?;
            let deviation = row.deviation.read(&bounds::TARGET_DEVIATION, warnings)?;
            if rows.last().is_some_and(|(last, _)| at.value <= last.value || same(at.value, last.value)) {
                return Err(row
                    .depth
                    .refuse(ErrorKind::OutOfOrder, "rows must rise in depth")
                    .value(at.value));
            }
            rows.push((at, deviation));
        }
        if rows.len() < 2 {
            let reason = "a profile needs two rows or more: nothing is known beyond the first and the last";
            return Err(
                Error::new(ErrorKind::MissingField, "rows", reason).at("/engine/bore/target_profile/rows")
            );
        }
        let origin = profile.origin.words()?.to_owned();
        Ok(Target { rows, nominal: nominal.clone(), state: profile.state, origin })
    }

    /// Can bores on the bench be held against it?
    pub(crate) fn is_cold(&self) -> bool {
        self.state == ProfileState::Cold
    }

    /// The deviation that is intended at a depth.
    pub(crate) fn intended(
        &self,
        calc: &mut Calc,
        depth: &Given,
        entry: &Entry<Length>,
    ) -> Result<Figure, Error> {
        let pair = self.rows.iter().zip(self.rows.iter().skip(1));
        let here = pair
            .into_iter()
            .find(|(above, below)| above.0.value <= depth.value && depth.value <= below.0.value);
        let Some(((y0, t0), (y1, t1))) = here else {
            let ends = (self.rows.first(), self.rows.last());
            let refused =
                entry.refuse(ErrorKind::OutOfRange, "the target profile says nothing of this depth");
            return Err(match ends {
                (Some(first), Some(last)) => {
                    refused.value(depth.value).limits(first.0.value, last.0.value, "mm")
                }
                _ => refused,
            });
        };
        let [t0, t1] = [("t0", t0), ("t1", t1)].map(|(symbol, g)| calc.given(symbol, g));
        let [y, y0, y1] = [("y", depth), ("y0", y0), ("y1", y1)].map(|(symbol, g)| calc.given(symbol, g));
        Ok(calc.figure(Intended, [t0, t1, y, y0, y1]))
    }

    /// How far a size is from its target.
    pub(crate) fn deviation(&self, calc: &mut Calc, size: &Measured, intended: Figure) -> Measured {
        let nominal = calc.given("nominal", &self.nominal);
        calc.apply(FromTarget, [size, &nominal.into(), &intended.into()])
    }

    /// The limits hold where the bore is meant to have its nominal size; a size rule that names another depth contradicts them.
    pub(crate) fn check_size_at(&self, depth: &Given, entry: &Entry<Length>) -> Result<(), Error> {
        if !self.is_cold() {
            return Ok(());
        }
        let intended = self.intended(&mut Calc::new(false), depth, entry)?.value;
        match intended.abs() <= NONE_MM {
            true => Ok(()),
            false => {
                let reason = format!(
                    "the target profile deviates by {intended:.4} mm there: the limits hold where it is 0; state the profile from the size at this depth"
                );
                Err(entry.refuse(ErrorKind::Contradiction, reason))
            }
        }
    }
}

/// A diameter as the reductions see it: less the deviation that is intended there.
pub(crate) fn straight(calc: &mut Calc, size: &Measured, intended: Option<Figure>) -> Measured {
    match intended {
        Some(intended) => calc.apply(Straight, [size, &intended.into()]),
        None => size.clone(),
    }
}

/// The sizes as they were read.
pub(super) fn as_read(places: &[BorePlace]) -> Vec<&Measured> {
    places.iter().map(|p| &p.size).collect()
}
