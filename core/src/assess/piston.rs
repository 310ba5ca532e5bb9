//! One piston: its sizes, its decisions, its verdict.

use super::{Assessment, PistonPlace, conclude, not_judged, read_twice};
use crate::bounds::{self, Bound};
use crate::calc::Measured;
use crate::decision::finding::Finding;
use crate::decision::{Ground, Limit, Limits, Of, Outcome, verdict};
use crate::error::{Error, ErrorKind};
use crate::job::document::{self as doc, PistonState, Surface};
use crate::job::{Given, check_length};
use crate::measurement::distribution::Distribution;
use crate::measurement::{Outside, half_width, hold, near_nominal, repeats};
use crate::report::{PistonReport, PistonSizeReport};
use crate::shape::Ovality;
use crate::size::BareSize;

/// A piston with what later stages need of it.
#[derive(Clone)]
pub(super) struct Piston {
    pub(super) report: PistonReport,
    pub(super) grounds: Vec<Ground>,
    pub(super) missing: Vec<String>,
    pub(super) state: PistonState,
    at_gauge_point: Vec<Sized>,
}

/// A size of a piston over one or two surfaces.
#[derive(Clone)]
struct Sized {
    place: PistonPlace,
    over: Surface,
    material: usize,
    size: Measured,
    bare: Option<Measured>,
    overdue: Vec<String>,
    /// the first reading of it
    read: Given,
}

impl Sized {
    fn over(&self, surface: Surface) -> Option<&Measured> {
        match (surface == self.over, surface) {
            (true, _) => Some(&self.size),
            (false, Surface::BareMetal) => self.bare.as_ref(),
            (false, Surface::Coating) => None,
        }
    }
}

impl Piston {
    /// The size at the gauge point over a surface, and the gauges of it that are out of calibration.
    ///
    /// Without a surface: over bare metal if that is known, else as read.
    pub(super) fn at_gauge_point(&self, surface: Option<Surface>) -> Option<(&Measured, &[String])> {
        let with =
            |s: &Surface| self.at_gauge_point.iter().find_map(|p| Some((p.over(*s)?, p.overdue.as_slice())));
        match surface {
            Some(surface) => with(&surface),
            None => [Surface::BareMetal, Surface::Coating].iter().find_map(with),
        }
    }

    /// The first reading at the gauge point.
    pub(super) fn first(&self) -> Option<&Given> {
        self.at_gauge_point.first().map(|p| &p.read)
    }

    /// Was anything read at the gauge point at all?
    pub(super) fn was_read(&self) -> bool {
        !self.at_gauge_point.is_empty()
    }
}

impl Assessment {
    pub(super) fn piston(
        &mut self,
        of: &str,
        piston: &doc::Piston,
        limits: &Limits,
        findings: Vec<Finding>,
        at: &str,
    ) -> Result<Piston, Error> {
        let mut sizes: Vec<Sized> = Vec::new();
        let mut reports = Vec::new();
        let mut missing = Vec::new();
        check_length(&piston.readings, |r| &r.height)?;
        for reading in &piston.readings {
            let place = PistonPlace::from_document(
                &reading.height,
                reading.datum,
                &reading.angle,
                &mut self.warnings,
            )?;
            let other_end = |s: &&Sized| s.place.is_other_end(&place);
            if let Some(s) = sizes.iter().find(other_end) {
                let reason =
                    format!("it is the diameter that is also called {}; name it once", s.place.angle.text);
                return Err(reading.angle.refuse(ErrorKind::Contradiction, reason));
            }
            if sizes.iter().any(|s| s.place.is(&place) && s.over == reading.over) {
                return Err(read_twice(&reading.height));
            }
            let here = format!("{of} at {}", place.words());
            let at = format!("{at}/sizes/{}", reports.len());
            match self.piston_size(&here, reading, place, &at)? {
                Some((sized, report)) => {
                    sizes.push(sized);
                    reports.push(report);
                }
                None => missing.push(format!("{here}: nothing read")),
            }
        }
        let ovality = self.ovality(&sizes)?.map(|o| self.state(&o, &format!("{at}/ovality")));
        self.hold_slopes(&sizes)?;
        let gauge_point = self.engine.gauge_point.clone();
        let at_gauge_point: Vec<Sized> = sizes.into_iter().filter(|s| s.place.is(&gauge_point)).collect();
        if at_gauge_point.is_empty() {
            missing.push(format!(
                "{of} at its gauge point ({}): a size at another place cannot be compared with the limit",
                gauge_point.words()
            ));
        }
        let mut out = Piston {
            report: PistonReport {
                record: piston.record.clone(),
                sizes: reports,
                ovality,
                decisions: Vec::new(),
                verdict: verdict(&[]),
                findings,
            },
            grounds: Vec::new(),
            missing,
            state: piston.state,
            at_gauge_point,
        };
        self.decide_piston(&mut out, limits.piston_size.as_ref(), at)?;
        out.report.verdict = conclude(&mut out.grounds, &out.report.findings, &out.missing);
        Ok(out)
    }

    fn piston_size(
        &mut self,
        of: &str,
        reading: &doc::PistonReading,
        place: PistonPlace,
        at: &str,
    ) -> Result<Option<(Sized, PistonSizeReport)>, Error> {
        self.calc.heading(|| of.to_owned());
        let near = near_nominal("reading of this piston", self.engine.piston_nominal);
        let repeats = repeats(&reading.repeats, &near, &mut self.warnings)?;
        let thickness = self.coating(of, reading)?;
        let (t_part, part_field) =
            self.shop.temperature(&mut self.calc, Some(&reading.temperature), &mut self.warnings)?;
        let (t_gauge, gauge_field) =
            self.shop.temperature(&mut self.calc, reading.gauge_temperature.as_ref(), &mut self.warnings)?;
        let (material, name) = self.engine.material_at(&place, &reading.height)?;
        let eps_part = self.materials.growth(&mut self.calc, material, &t_part, &part_field)?;
        let gauge = self.gauges.find(&reading.gauge, false)?;
        let eps_gauge = gauge.growth(&mut self.calc, &self.materials, &t_gauge, &gauge_field)?;
        let read = Outside { repeats: &repeats, eps_part: &eps_part, eps_gauge: &eps_gauge };
        let overdue = gauge.stale();
        let Some(size) = gauge.read_outside(&mut self.calc, &read, of) else {
            return Ok(None);
        };
        let bare = thickness.map(|c| self.calc.apply(BareSize, [&size, &c]));
        let report = PistonSizeReport {
            height_mm: place.height.value,
            datum: place.datum,
            angle_deg: place.angle.value,
            over: reading.over,
            material: name,
            readings: repeats.iter().map(|r: &Given| r.text.clone()).collect(),
            size: self.state(&size, &format!("{at}/size")),
            bare_size: bare.as_ref().map(|b| self.state(b, &format!("{at}/bare_size"))),
        };
        let Some(read) = repeats.into_iter().next() else {
            return Ok(None);
        };
        Ok(Some((Sized { place, over: reading.over, material, size, bare, overdue, read }, report)))
    }

    /// Thickness of the coating on one side, where one was touched and its thickness is known.
    fn coating(&mut self, of: &str, reading: &doc::PistonReading) -> Result<Option<Measured>, Error> {
        let Some(coating) = &reading.coating else {
            return Ok(None);
        };
        let thickness = coating.thickness_per_side.read(&bounds::COATING, &mut self.warnings)?;
        let error = coating.permissible_error.read(&bounds::COATING_ERROR, &mut self.warnings)?;
        if reading.over == Surface::BareMetal {
            return Err(coating.thickness_per_side.refuse(
                ErrorKind::Contradiction,
                "the reading is over bare metal: there is no coating to take off",
            ));
        }
        let source =
            self.calc.source(format!("coating of {of}"), &error.path, Distribution::STANDARD_RECTANGULAR);
        let standard = half_width(&mut self.calc, &error);
        let c = self.calc.given("c", &thickness);
        Ok(Some(self.calc.add_source(&c.into(), source, standard)))
    }

    /// Thrust less pin axis at the height of the gauge point, both over the same surface.
    fn ovality(&mut self, sizes: &[Sized]) -> Result<Option<Measured>, Error> {
        let at = |angle: f64| {
            let point = &self.engine.gauge_point;
            sizes
                .iter()
                .filter(move |s| s.place.same_height(point) && crate::shape::same(s.place.angle.value, angle))
        };
        let found = at(0.0).find_map(|major| Some((major, at(90.0).find(|minor| minor.over == major.over)?)));
        let Some((major, minor)) = found else {
            return Ok(None);
        };
        let ovality = self.calc.apply(Ovality, [&major.size, &minor.size]);
        let bound = bounds::in_bore(&bounds::OVALITY, self.engine.bore_nominal);
        self.hold_pair(&bound, ovality.value(), "ovality", [major, minor])?;
        Ok(Some(ovality))
    }

    /// How fast the diameter changes from one height to the next, on one axis over one surface.
    fn hold_slopes(&mut self, sizes: &[Sized]) -> Result<(), Error> {
        for upper in sizes {
            let on_line = |s: &&Sized| {
                // over a joint of two materials there is no one skirt
                let there = s.place.datum == upper.place.datum
                    && s.over == upper.over
                    && s.material == upper.material;
                there
                    && crate::shape::same(s.place.angle.value, upper.place.angle.value)
                    && s.place.height.value < upper.place.height.value
            };
            let next_below = sizes
                .iter()
                .filter(on_line)
                .max_by(|a, b| a.place.height.value.total_cmp(&b.place.height.value));
            // within a micrometre it is one height
            let Some(lower) = next_below.filter(|s| !s.place.is(&upper.place)) else {
                continue;
            };
            let rise = upper.place.height.value - lower.place.height.value;
            let slope = (upper.size.value() - lower.size.value()).abs() / rise * 1000.0;
            self.hold_pair(&bounds::BARREL, slope, "slope of the skirt", [upper, lower])?;
        }
        Ok(())
    }

    /// What follows from two readings of a piston is possible, or they contradict each other.
    fn hold_pair(&mut self, bound: &Bound, value: f64, what: &str, [a, b]: [&Sized; 2]) -> Result<(), Error> {
        let unit = bound.unit;
        let (read, other) = (&a.read, &b.read);
        let said = format!(
            "{} and {} give a {what} of {value:.3} {unit}: usual is {}",
            read.text,
            other.text,
            bound.usual_text()
        );
        let reason = || {
            format!(
                "with {} ({}) the {what} would be {value:.3} {unit}: {}",
                other.text, other.path, bound.reason
            )
        };
        hold(bound, value, read, said, reason, &mut self.warnings)
    }

    fn decide_piston(&mut self, piston: &mut Piston, limit: Option<&Limit>, at: &str) -> Result<(), Error> {
        if !piston.was_read() {
            return Ok(());
        }
        let Some(limit) = limit else {
            piston.grounds.push(Ground::new(
                Outcome::Reuse,
                "no limit of the piston size is given: the clearance decides",
            ));
            return Ok(());
        };
        let surface = limit.over.unwrap_or(Surface::BareMetal);
        let sized = piston.at_gauge_point(Some(surface));
        let reason = match (&sized, limit.cannot_take_piston(piston.state)) {
            (_, Some(reason)) => Some(reason),
            (None, None) => {
                Some(format!("it was not measured over the {}, and no thickness is given", surface.spoken()))
            }
            (Some(_), None) => None,
        };
        let (decision, ground) = match (sized, reason) {
            (Some((size, overdue)), None) => {
                let value = self.at_limit(size, self.engine.piston_material, limit)?;
                self.decide(Of::PistonSize, &value, limit, overdue, &format!("{at}/decisions/0"))
            }
            (_, reason) => not_judged(Of::PistonSize, limit, reason.unwrap_or_default()),
        };
        piston.report.decisions.push(decision);
        piston.grounds.push(ground);
        Ok(())
    }
}
