//! Which head gasket, and what is left above the pistons with it.

use super::parts::{Difference, NOISE_MM, placed};
use crate::assess::Assessment;
use crate::bounds;
use crate::calc::{Figure, Fold, Measured};
use crate::error::{Error, ErrorKind};
use crate::job::plan as doc;
use crate::job::{Given, check_length};
use crate::measurement::half_width;
use crate::plan::gasket::{GasketGrade, MeanProtrusion, gasket_grade};
use crate::report::{GasketReport, PlanReport, StandingReport};
use crate::shape::deck::{GasketBand, SquishOverProtrusion};

/// A grade as it is printed.
struct Grade {
    name: String,
    thickness: Given,
    band: GasketBand,
}

/// A piston as it stands.
struct Standing {
    cylinder: u32,
    readings: [Given; 2],
}

impl Assessment {
    pub(super) fn gasket(&mut self, entry: &doc::Gasket, out: &mut PlanReport) -> Result<(), Error> {
        self.calc.heading(|| "head gasket".to_owned());
        let origin = entry.origin.words()?.to_owned();
        let step = entry.printed_to.read(&bounds::PRINTED_STEP, &mut self.warnings)?;
        let grades = self.grades(&entry.grades)?;
        let spread = self.optional(&entry.spread, &bounds::PROTRUSION_SPREAD)?;
        let error = entry.permissible_error.read(&bounds::PROTRUSION_ERROR, &mut self.warnings)?;
        let squish = self.optional(&entry.least_squish, &bounds::LEAST_SQUISH)?;
        let pistons = self.standings(&entry.pistons)?;
        let u = half_width(&mut self.calc, &error);
        let projections: Vec<[f64; 2]> =
            pistons.iter().map(|p| p.readings.each_ref().map(|g| g.value)).collect();
        let bands: Vec<GasketBand> = grades.iter().map(|g| g.band).collect();
        let limit = spread.as_ref().map(|s| s.value);
        let found = match gasket_grade(&projections, &bands, step.value, limit, Some(u.value)) {
            Ok(found) => found,
            // no fault of the document: the table has no gasket for these pistons
            Err(e) if e.kind() == ErrorKind::OutOfRange && e.field().starts_with("projections_mm") => {
                out.open.push(format!("head gasket: no grade is for a protrusion of {} mm", e.refused()));
                return Ok(());
            }
            Err(e) => return Err(placed(e, "/plan/gasket")),
        };
        if let Some(grade) = grades.get(found.band) {
            out.gasket = Some(self.with_gasket(grade, &found, &pistons, squish.as_ref(), origin));
        }
        Ok(())
    }

    fn grades(&mut self, entries: &[doc::Grade]) -> Result<Vec<Grade>, Error> {
        check_length(entries, |g| &g.name)?;
        let mut out = Vec::with_capacity(entries.len());
        for grade in entries {
            let from_mm = grade.from.read(&bounds::DECK, &mut self.warnings)?.value;
            let to_mm = grade.to.read(&bounds::DECK, &mut self.warnings)?.value;
            let thickness = grade.thickness.read(&bounds::GASKET, &mut self.warnings)?;
            let band = GasketBand { from_mm, to_mm, thickness_mm: thickness.value };
            out.push(Grade { name: grade.name.words()?.to_owned(), thickness, band });
        }
        Ok(out)
    }

    fn standings(&mut self, entries: &[doc::Standing]) -> Result<Vec<Standing>, Error> {
        check_length(entries, |p| &p.cylinder)?;
        let mut out: Vec<Standing> = Vec::with_capacity(entries.len());
        for standing in entries {
            let cylinder = self.another(&standing.cylinder, |n| out.iter().any(|p| p.cylinder == n))?;
            let [a, b] = standing.readings.as_slice() else {
                let at = format!("{}/readings", standing.cylinder.parent());
                let count = standing.readings.len().to_string();
                let reason = "two readings, in line with the pin";
                return Err(Error::new(ErrorKind::Contradiction, count, reason).at(&at));
            };
            let mut read = |entry: &crate::job::Entry<_>| entry.read(&bounds::DECK, &mut self.warnings);
            out.push(Standing { cylinder, readings: [read(a)?, read(b)?] });
        }
        Ok(out)
    }

    fn with_gasket(
        &mut self,
        grade: &Grade,
        found: &GasketGrade,
        pistons: &[Standing],
        least_squish: Option<&Given>,
        origin: String,
    ) -> GasketReport {
        let thickness = self.calc.given("gasket", &grade.thickness);
        let mut standings = Vec::with_capacity(pistons.len());
        let mut protrusions: Vec<Measured> = Vec::with_capacity(pistons.len());
        for (k, piston) in pistons.iter().enumerate() {
            let (protrusion, left) = self.squish(piston, thickness, &format!("/plan/gasket/pistons/{k}"));
            protrusions.push(protrusion.into());
            standings.push(StandingReport {
                cylinder: piston.cylinder,
                protrusion_mm: protrusion.value,
                squish_mm: left.value,
                squish_is_met: least_squish.map(|least| left.value >= least.value - NOISE_MM),
            });
        }
        let all: Vec<&Measured> = protrusions.iter().collect();
        let most = self.calc.fold(Fold::Largest, "most", &all);
        let least = self.calc.fold(Fold::Smallest, "least", &all);
        if let Some((most, least)) = most.zip(least) {
            let spread = self.calc.figure(Difference, [most.figure, least.figure]);
            self.calc.place(spread, || "/plan/gasket/spread_mm".to_owned());
        }
        GasketReport {
            grade: grade.name.clone(),
            thickness_mm: found.thickness_mm,
            decided_by: pistons.get(found.largest_piston).map_or(0, |p| p.cylinder),
            pistons: standings,
            spread_mm: found.spread_mm,
            spread_is_met: found.spread_is_met,
            probability_below: found.probability_below.unwrap_or_default(),
            probability_above: found.probability_above.unwrap_or_default(),
            origin,
        }
    }

    /// How far a piston stands above the deck, and what is left above it.
    fn squish(&mut self, piston: &Standing, thickness: Figure, at: &str) -> (Figure, Figure) {
        let readings = piston.readings.each_ref().map(|r| self.calc.given("reading", r));
        let protrusion = self.calc.figure(MeanProtrusion, readings);
        let left = self.calc.figure(SquishOverProtrusion, [thickness, protrusion]);
        self.calc.place(protrusion, || format!("{at}/protrusion_mm"));
        self.calc.place(left, || format!("{at}/squish_mm"));
        (protrusion, left)
    }
}
