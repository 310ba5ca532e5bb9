//! Masses: what each assembly loses.

use super::parts::placed;
use crate::assess::Assessment;
use crate::bounds;
use crate::calc::{Figure, Fold, Measured};
use crate::error::Error;
use crate::job::check_length;
use crate::job::plan as doc;
use crate::plan::weights::{Heaviest, Part, cut_list};
use crate::report::{CutReport, MassReport, MassesReport};

impl Assessment {
    pub(super) fn masses(&mut self, entry: &doc::Masses) -> Result<MassesReport, Error> {
        self.calc.heading(|| "masses".to_owned());
        let origin = entry.origin.words()?.to_owned();
        let band = entry.band.read(&bounds::MASS_BAND, &mut self.warnings)?;
        check_length(&entry.each, |a| &a.cylinder)?;
        let mut numbers = Vec::new();
        let mut given: Vec<Vec<Part>> = Vec::new();
        let mut totals: Vec<Measured> = Vec::new();
        for assembly in &entry.each {
            numbers.push(self.another(&assembly.cylinder, |n| numbers.contains(&n))?);
            let (parts, total) = self.weighed(&assembly.parts)?;
            given.push(parts);
            totals.push(total.into());
        }
        let found = cut_list(&given, band.value).map_err(of_the_document)?;
        let lightest = self.calc.fold(Fold::Smallest, "lightest", &totals.iter().collect::<Vec<_>>());
        if let Some(lightest) = lightest {
            let band = self.calc.given("band", &band);
            let most = self.calc.figure(Heaviest, [lightest.figure, band]);
            self.calc.place(most, || "/plan/masses/most_g".to_owned());
        }
        let each = found.assemblies.iter().zip(&entry.each).zip(&numbers).zip(&totals).enumerate();
        let each = each.map(|(k, (((cut, assembly), number), total))| {
            self.calc.place(total.figure, || format!("/plan/masses/each/{k}/mass_g"));
            let cuts = cut.cut_g.iter().zip(&assembly.parts).filter(|(off, _)| **off > 0.0);
            MassReport {
                cylinder: *number,
                mass_g: cut.mass_g,
                cuts: cuts
                    .map(|(off, part)| CutReport { part: part.part.text().trim().to_owned(), off_g: *off })
                    .collect(),
                left_g: cut.left_g,
                over_g: cut.over_g,
            }
        });
        Ok(MassesReport { most_g: found.most_g, each: each.collect(), is_met: found.is_met, origin })
    }

    /// The parts of an assembly, and their sum.
    fn weighed(&mut self, entries: &[doc::Weighed]) -> Result<(Vec<Part>, Figure), Error> {
        check_length(entries, |p| &p.part)?;
        let (mut parts, mut figures) = (Vec::new(), Vec::new());
        for part in entries {
            part.part.words()?;
            let mass = part.mass.read(&bounds::PART_MASS, &mut self.warnings)?;
            let removable = self.optional(&part.removable, &bounds::REMOVABLE_MASS)?;
            figures.push(self.calc.given("mass", &mass));
            parts.push(Part { mass_g: mass.value, removable_g: removable.map_or(0.0, |r| r.value) });
        }
        Ok((parts, self.calc.sum("mass", &figures, "definition")))
    }
}

/// A part is a place of an assembly there, and here one of its list of parts.
fn of_the_document(error: Error) -> Error {
    let names: Vec<&str> = error.field().splitn(3, '/').collect();
    let at = match names.as_slice() {
        ["assemblies", k] => format!("assemblies/{k}/parts"),
        ["assemblies", k, part] => format!("assemblies/{k}/parts/{part}"),
        _ => error.field().to_owned(),
    };
    placed(error.moved(at), "/plan/masses")
}
