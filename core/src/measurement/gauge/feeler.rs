//! Feeler strips: the clearance is the thickest strip that passes, with an allowance for the pull it passes at.

use super::transfer::{check_names, named};
use super::{count, resolution_of};
use crate::bounds;
use crate::calc::{Calc, Measured, formula};
use crate::error::Error;
use crate::job::{Entry, Given, Warning, Words};
use crate::measure::document as doc;
use crate::measurement::distribution::Distribution;
use crate::measurement::{MeanOfRepeats, half_width, mean};

formula! {
    /// Clearance as it was when the strip was pulled.
    StripClearance: clearance ["mm"] = (strip, allowance) => strip + allowance;
        source "makers' manuals: strip thickness and an allowance tied to the pull; empirical, common practice";
    /// That clearance at 20 C, of a bore of about nominal size.
    StripClearanceAt20: clearance_20 ["mm"] = (clearance, nominal, eps_bore, eps_piston) => (clearance + nominal * eps_piston - nominal * eps_bore) / (1.0 + eps_piston);
        source "nominal (1 + eps_bore) - piston (1 + eps_piston) = clearance, solved for nominal - piston";
}

/// A set of strips.
#[derive(Debug)]
pub(crate) struct Strip {
    pub(crate) name: String,
    resolution: Given,
    permissible_error: Given,
    repeatability: Given,
    allowance: Given,
    allowance_error: Given,
    /// what the allowance is tied to
    pub(crate) note: String,
}

/// The feeler strips of a document.
#[derive(Debug)]
pub(crate) struct Strips(Vec<Strip>);

/// What a clearance is between.
pub(crate) struct Between<'a> {
    pub(crate) nominal: &'a Given,
    pub(crate) eps_bore: &'a Measured,
    pub(crate) eps_piston: &'a Measured,
}

impl Strips {
    pub(crate) fn from_document(
        strips: &[doc::FeelerStrip],
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        check_names(strips, |s| &s.name)?;
        strips.iter().map(|s| Strip::from_document(s, warnings)).collect::<Result<_, _>>().map(Strips)
    }

    pub(crate) fn find(&self, name: &Entry<Words>) -> Result<&Strip, Error> {
        Ok(named(&self.0, name, |s| &s.name)?.1)
    }
}

impl Strip {
    fn from_document(strip: &doc::FeelerStrip, warnings: &mut Vec<Warning>) -> Result<Self, Error> {
        let drag = &strip.drag;
        let pull = drag.pull.read(&bounds::MEASURING_FORCE, warnings)?;
        let width = drag.width.read(&bounds::STRIP_WIDTH, warnings)?;
        let allowance = drag.allowance.read(&bounds::DRAG_ALLOWANCE, warnings)?;
        let note = format!(
            "the allowance of {} is empirical, common practice, and tied to a pull of {} and a strip {} wide: {}",
            allowance.text,
            pull.text,
            width.text,
            drag.origin.words()?
        );
        Ok(Strip {
            name: strip.name.words()?.to_owned(),
            resolution: strip.resolution.read(&bounds::RESOLUTION, warnings)?,
            permissible_error: strip.permissible_error.read(&bounds::PERMISSIBLE_ERROR, warnings)?,
            repeatability: strip.repeatability.read(&bounds::REPEATABILITY, warnings)?,
            allowance_error: drag.permissible_error.read(&bounds::ALLOWANCE_ERROR, warnings)?,
            allowance,
            note,
        })
    }

    /// A clearance at 20 C from the thickness of the strip that passed, tried once or more.
    pub(crate) fn read(
        &self,
        calc: &mut Calc,
        repeats: &[Given],
        between: &Between<'_>,
        of: &str,
    ) -> Option<Measured> {
        let strip = mean(calc, "strip", repeats)?;
        let rectangular = Distribution::STANDARD_RECTANGULAR;
        let name = format!("thickness of {} on {of}", self.name);
        let source = calc.source(name, &self.permissible_error.path, rectangular);
        let u = half_width(calc, &self.permissible_error);
        let strip = calc.add_source(&strip, source, u);
        let name = format!("steps of {} on {of}", self.name);
        let source = calc.source(name, &self.resolution.path, rectangular);
        let u = resolution_of(calc, &self.resolution);
        let strip = calc.add_source(&strip, source, u);
        let name = format!("feel of {} on {of}", self.name);
        let source = calc.source(name, &self.repeatability.path, Distribution::STANDARD_NORMAL);
        let s = calc.given("s", &self.repeatability);
        let n = count(calc, repeats.len());
        let u = calc.figure(MeanOfRepeats, [s, n]);
        let strip = calc.add_source(&strip, source, u);
        let clearance = self.with_allowance(calc, &strip, of);
        let nominal = calc.given("nominal", between.nominal).into();
        Some(calc.apply(StripClearanceAt20, [&clearance, &nominal, between.eps_bore, between.eps_piston]))
    }

    /// The allowance is common to whatever is read with this strip at this pull, but not to other places: drag differs.
    fn with_allowance(&self, calc: &mut Calc, strip: &Measured, of: &str) -> Measured {
        let name = format!("drag allowance of {} on {of} (empirical)", self.name);
        let source = calc.source(name, &self.allowance_error.path, Distribution::STANDARD_RECTANGULAR);
        let u = half_width(calc, &self.allowance_error);
        let allowance = calc.given("allowance", &self.allowance).into();
        let allowance = calc.add_source(&allowance, source, u);
        calc.apply(StripClearance, [strip, &allowance])
    }
}
