//! Dry sleeves: the hole they take, how they go in, and what holds them when the engine runs.

use super::machining::Middle;
use super::parts::{NOISE_MM, within};
use crate::assess::Assessment;
use crate::bounds::{self, Bound};
use crate::calc::{Figure, Fold, Measured, formula};
use crate::error::{Error, ErrorKind};
use crate::growth::liner::{Effective, HotInterference};
use crate::job::plan as doc;
use crate::job::{Document, Given, check_length};
use crate::report::SleeveReport;

formula! {
    /// Hole that a sleeve takes.
    Hole: hole ["mm"] = (outside, interference) => outside - interference; source "definition; diametral";
    /// Clearance of a sleeve that goes into its hole.
    Assembly: clearance ["mm"] = (hole, eps_block, outside, eps_sleeve) => hole * (1.0 + eps_block) - outside * (1.0 + eps_sleeve);
        source "free growth of both parts";
}

/// Fewest readings of the outside of a sleeve.
const LEAST_READINGS: usize = 3;

/// What all sleeves have in common.
struct Common {
    least: Given,
    most: Given,
    target: Option<Given>,
    smoothing: Option<Given>,
    least_clearance: Given,
    /// strains when a sleeve goes in
    eps_block: Measured,
    eps_sleeve: Measured,
    /// strains of sleeve and block, the coldest and the hottest of the running wall
    running: Vec<[Measured; 2]>,
}

impl Assessment {
    pub(super) fn sleeves(
        &mut self,
        document: &Document,
        entry: &doc::Sleeves,
    ) -> Result<Vec<SleeveReport>, Error> {
        let common = self.common(document, entry)?;
        check_length(&entry.each, |s| &s.cylinder)?;
        let mut out: Vec<SleeveReport> = Vec::with_capacity(entry.each.len());
        for each in &entry.each {
            let cylinder = self.another(&each.cylinder, |n| out.iter().any(|s| s.cylinder == n))?;
            let at = format!("/plan/sleeves/{}", out.len());
            self.calc.heading(|| format!("sleeve of cylinder {cylinder}"));
            let outside = self.outside(each)?;
            out.push(self.sleeve(cylinder, &outside, &common, &at));
        }
        Ok(out)
    }

    fn common(&mut self, document: &Document, entry: &doc::Sleeves) -> Result<Common, Error> {
        entry.origin.words()?;
        let sleeve = self.materials.find(&entry.material)?;
        let block = self.materials.find(&entry.block_material)?;
        let bound = &bounds::SLEEVE_INTERFERENCE;
        let (least, most) = self.span(&entry.interference, bound)?;
        let target = entry
            .target
            .as_ref()
            .map(|t| within(t, t.read(bound, &mut Vec::new())?, (&least, &most)))
            .transpose()?;
        let smoothing = self.optional(&entry.smoothing, &bounds::SMOOTHING)?;
        let least_clearance = entry.least_clearance.read(&bounds::ASSEMBLY_CLEARANCE, &mut self.warnings)?;
        let heated = entry.block_heated_to.read(&bounds::ASSEMBLY_TEMPERATURE, &mut self.warnings)?;
        let chilled = self.optional(&entry.sleeve_chilled_to, &bounds::ASSEMBLY_TEMPERATURE)?;
        self.calc.heading(|| "sleeves".to_owned());
        let heat = self.calc.given("t", &heated).into();
        let (cold, field) = match chilled {
            Some(given) => (self.calc.given("t", &given).into(), given.path),
            None => self.shop.temperature(&mut self.calc, None, &mut self.warnings)?,
        };
        let eps_block = self.materials.growth(&mut self.calc, block, &heat, &heated.path)?;
        let eps_sleeve = self.materials.growth(&mut self.calc, sleeve, &cold, &field)?;
        let mut running = Vec::new();
        for wall in running_walls(document)? {
            let t: Measured = self.calc.given("t", &wall).into();
            let mut eps = |material| self.materials.growth(&mut self.calc, material, &t, &wall.path);
            running.push([eps(sleeve)?, eps(block)?]);
        }
        Ok(Common { least, most, target, smoothing, least_clearance, eps_block, eps_sleeve, running })
    }

    fn sleeve(&mut self, cylinder: u32, outside: &Measured, common: &Common, at: &str) -> SleeveReport {
        let [least, most] = [&common.least, &common.most].map(|given| self.calc.given("interference", given));
        let aim = match &common.target {
            Some(target) => self.calc.given("target", target),
            None => self.calc.figure(Middle, [least, most]),
        };
        let hole = self.calc.apply(Hole, [outside, &aim.into()]);
        let smallest = self.calc.figure(Hole, [outside.figure, most]);
        let largest = self.calc.figure(Hole, [outside.figure, least]);
        self.calc.place(smallest, || format!("{at}/hole_least_mm"));
        self.calc.place(largest, || format!("{at}/hole_most_mm"));
        let open = self.calc.apply(Assembly, [&hole, &common.eps_block, outside, &common.eps_sleeve]);
        SleeveReport {
            cylinder,
            outside: self.state(outside, &format!("{at}/outside")),
            hole: self.state(&hole, &format!("{at}/hole")),
            hole_least_mm: smallest.value,
            hole_most_mm: largest.value,
            slides_in: open.value() >= common.least_clearance.value - NOISE_MM,
            assembly_clearance: self.state(&open, &format!("{at}/assembly_clearance")),
            running_interference_mm: self.running_interference(aim, outside, common, at),
        }
    }

    /// Interference that is left when the engine runs.
    fn running_interference(
        &mut self,
        aim: Figure,
        outside: &Measured,
        common: &Common,
        at: &str,
    ) -> Vec<f64> {
        let lost = match &common.smoothing {
            Some(smoothing) => self.calc.given("smoothing", smoothing),
            None => self.calc.constant("smoothing", 0.0, "mm", "no smoothing is stated"),
        };
        let holds = self.calc.figure(Effective, [aim, lost]);
        let mut left = Vec::with_capacity(common.running.len());
        for (k, [of_sleeve, of_block]) in common.running.iter().enumerate() {
            let figures = [holds, outside.figure, of_sleeve.figure, of_block.figure];
            let hot = self.calc.figure(HotInterference, figures);
            self.calc.place(hot, || format!("{at}/running_interference_mm/{k}"));
            left.push(hot.value);
        }
        left
    }

    /// Outside diameter of a sleeve, the mean of its readings.
    fn outside(&mut self, sleeve: &doc::Sleeve) -> Result<Measured, Error> {
        check_length(&sleeve.outside, |e| e)?;
        let bound = Bound { label: "outside of a sleeve", ..bounds::BORE };
        let mut readings: Vec<Measured> = Vec::with_capacity(sleeve.outside.len());
        for entry in &sleeve.outside {
            let given = entry.read(&bound, &mut self.warnings)?;
            readings.push(self.calc.given("outside", &given).into());
        }
        let few = || {
            let reason = format!("at least {LEAST_READINGS} readings are needed: a free sleeve is not round");
            let at = format!("{}/outside", sleeve.cylinder.parent());
            Error::new(ErrorKind::MissingField, sleeve.outside.len().to_string(), reason).at(&at)
        };
        let enough = readings.len() >= LEAST_READINGS;
        let mean = self.calc.fold(Fold::Mean, "outside", &readings.iter().collect::<Vec<_>>());
        let mean = mean.filter(|_| enough).ok_or_else(few)?;
        let of = format!("outside of the sleeve of cylinder {}", sleeve.cylinder.text());
        self.with_error(&mean, of, &sleeve.permissible_error, &bounds::PERMISSIBLE_ERROR)
    }
}

/// The coldest and the hottest of the wall in the running engine, as they are stated.
fn running_walls(document: &Document) -> Result<Vec<Given>, Error> {
    let range = document.running.as_ref().and_then(|r| r.bore_temperature.as_ref());
    let ends = range.iter().flat_map(|range| [&range.min, &range.max]);
    // what is odd of them is told with the running clearance
    ends.map(|entry| entry.read(&bounds::RUNNING_TEMPERATURE, &mut Vec::new())).collect()
}
