//! One bore: its diameters, what the rules make of them, its decisions, its verdict.

use super::barrel::{clear_of_windows, not_machined};
use super::{Assessment, conclude, not_judged, read_twice};
use crate::bounds::{self, Bound};
use crate::calc::Measured;
use crate::decision::finding::Finding;
use crate::decision::{Ground, Limit, Limits, Of, Outcome, verdict};
use crate::error::{Error, ErrorKind};
use crate::job::document::{self as doc, Clamping, OutOfRoundRule};
use crate::job::{Entry, Given, Warning, check_length};
use crate::measurement::{hold, repeats};
use crate::quantity::{Angle, Length};
use crate::report::{BorePlaceReport, BoreReport};
use crate::shape::target::straight;
use crate::shape::{self, BorePlace};

/// A bore with what later stages need of it.
pub(super) struct Bore {
    pub(super) report: BoreReport,
    pub(super) grounds: Vec<Ground>,
    pub(super) missing: Vec<String>,
    pub(super) size: Option<Measured>,
    /// the smallest diameter that was read
    pub(super) smallest: Option<Measured>,
    /// the smallest against the target profile, less the deviation intended there
    pub(super) least: Option<Measured>,
    pub(super) clamping: Clamping,
    pub(super) overdue: Vec<String>,
    /// the reading of the largest diameter
    pub(super) widest: Option<Given>,
    /// every diameter that was read
    pub(super) places: Vec<BorePlace>,
}

/// The diameters that were read.
#[derive(Default)]
struct Read {
    places: Vec<BorePlace>,
    /// the first reading of each place
    readings: Vec<Given>,
    reports: Vec<BorePlaceReport>,
    missing: Vec<String>,
}

impl Read {
    /// The readings of the largest and of the smallest diameter; of equals the first.
    fn extremes(&self) -> Option<[&Given; 2]> {
        let all = || self.places.iter().map(|p| p.straight.value()).zip(&self.readings);
        let largest = all().reduce(|a, b| if b.0 > a.0 { b } else { a })?.1;
        let smallest = all().reduce(|a, b| if b.0 < a.0 { b } else { a })?.1;
        Some([largest, smallest])
    }
}

impl Assessment {
    pub(super) fn bore(
        &mut self,
        of: &str,
        bore: &doc::Bore,
        reduction: &doc::Reduction,
        limits: &Limits,
        findings: Vec<Finding>,
        at: &str,
    ) -> Result<Bore, Error> {
        let read = self.bore_places(of, bore, at)?;
        self.calc.heading(|| of.to_owned());
        let reduced = shape::reduce(&mut self.calc, reduction, &read.places, &mut self.warnings)?;
        self.hold_form("taper", reduced.taper.as_ref(), &read)?;
        self.hold_form("out-of-round", reduced.out_of_round.as_ref(), &read)?;
        let widest = read.extremes().map(|[largest, _]| largest.clone());
        let mut missing = read.missing;
        missing.extend(reduced.missing.iter().map(|m| format!("{of}, {m}")));
        let mut state = |value: &Option<Measured>, name: &str| {
            value.as_ref().map(|v| self.state(v, &format!("{at}/{name}")))
        };
        let report = BoreReport {
            places: read.reports,
            size: state(&reduced.size, "size"),
            taper: state(&reduced.taper, "taper"),
            out_of_round: state(&reduced.out_of_round, "out_of_round"),
            decisions: Vec::new(),
            findings,
            verdict: verdict(&[]),
        };
        let mut out = Bore {
            report,
            grounds: Vec::new(),
            missing,
            size: reduced.size.clone(),
            smallest: shape::smallest(&mut self.calc, &read.places),
            least: shape::least(&mut self.calc, &read.places),
            clamping: bore.clamping,
            overdue: self.gauges.find(&bore.gauge, true)?.stale(),
            widest,
            places: read.places,
        };
        let judged = [
            (Of::BoreSize, &reduced.size, &limits.bore_size),
            (Of::BoreTaper, &reduced.taper, &limits.bore_taper),
            (Of::BoreOutOfRound, &reduced.out_of_round, &limits.bore_out_of_round),
        ];
        for (of, value, limit) in judged {
            if let (Some(value), Some(limit)) = (value, limit) {
                let over_depths = of == Of::BoreTaper
                    || of == Of::BoreOutOfRound && reduction.out_of_round == OutOfRoundRule::BetweenAxes;
                let unknown = self.cold_shape_unknown().filter(|_| over_depths);
                self.decide_bore(&mut out, of, value, limit, unknown, at)?;
            }
        }
        if out.report.decisions.is_empty() && out.size.is_some() {
            out.grounds
                .push(Ground::new(Outcome::Reuse, "no limit of the bore is given: the clearance decides"));
        }
        let why = self.engine.not_machined.as_deref();
        out.grounds.extend(not_machined(why, &out.grounds, &out.report.findings));
        out.report.verdict = conclude(&mut out.grounds, &out.report.findings, &out.missing);
        Ok(out)
    }

    /// Every diameter that was read, at 20 C.
    fn bore_places(&mut self, of: &str, bore: &doc::Bore, at: &str) -> Result<Read, Error> {
        self.calc.heading(|| of.to_owned());
        let calc = &mut self.calc;
        let (t_bore, field) = self.shop.temperature(calc, Some(&bore.temperature), &mut self.warnings)?;
        let eps_bore = self.materials.growth(calc, self.engine.bore_material, &t_bore, &field)?;
        let (t_gauge, field) =
            self.shop.temperature(calc, bore.gauge_temperature.as_ref(), &mut self.warnings)?;
        let eps_used =
            self.gauges.find(&bore.gauge, true)?.growth(calc, &self.materials, &t_gauge, &field)?;
        let mut out = Read::default();
        check_length(&bore.readings, |r| &r.depth)?;
        for reading in &bore.readings {
            let depth = read_depth(&reading.depth, &self.engine.bore_length, &mut self.warnings)?;
            let axis = read_axis(&reading.axis, &out.places, &mut self.warnings)?;
            clear_of_windows(&self.engine.windows, &depth, &axis, &reading.axis)?;
            let here = |p: &BorePlace| {
                shape::same(p.depth.value, depth.value) && shape::same(p.axis.value, axis.value)
            };
            if out.places.iter().any(here) {
                return Err(read_twice(&reading.depth));
            }
            let here = format!("{of} at depth {}, axis {}", depth.text, axis.text);
            self.calc.heading(|| here.clone());
            let repeats = repeats(&reading.repeats, &bounds::DEVIATION, &mut self.warnings)?;
            if repeats.is_empty() {
                out.missing.push(format!("{here}: nothing read"));
                continue;
            }
            let gauge = self.gauges.find(&bore.gauge, true)?;
            let size = gauge
                .read_bore(&mut self.calc, &repeats, &eps_bore, &eps_used, &here)
                .ok_or_else(|| bore.gauge.refuse(ErrorKind::Contradiction, "this gauge has no setting"))?;
            self.check_size(&size, reading)?;
            let at = format!("{at}/places/{}", out.reports.len());
            let target = self.engine.target.as_ref().filter(|t| t.is_cold());
            let intended = target.map(|t| t.intended(&mut self.calc, &depth, &reading.depth)).transpose()?;
            let from_target = target.zip(intended).map(|(t, i)| t.deviation(&mut self.calc, &size, i));
            if let Some(intended) = intended {
                self.calc.place(intended, || format!("{at}/intended_mm"));
            }
            let straight = straight(&mut self.calc, &size, intended);
            let stated = self.state(&size, &format!("{at}/size"));
            let from_target = from_target.map(|d| self.state(&d, &format!("{at}/from_target")));
            out.reports.push(BorePlaceReport {
                depth_mm: depth.value,
                axis_deg: axis.value,
                readings: repeats.iter().map(|r| r.text.clone()).collect(),
                size: stated,
                intended_mm: intended.map(|i| i.value),
                from_target,
            });
            out.places.push(BorePlace { depth, axis, size, straight });
            out.readings.extend(repeats.into_iter().next());
        }
        Ok(out)
    }

    /// Why the shape that the bore should have on the bench is not known, when it is not.
    pub(super) fn cold_shape_unknown(&self) -> Option<&'static str> {
        let running = self.engine.target.as_ref().is_some_and(|t| !t.is_cold());
        running.then_some(
            "the target profile is a running shape: what the bore should be on the bench is not known",
        )
    }

    /// A form that no bore has is a contradiction of the readings behind it.
    fn hold_form(&mut self, what: &str, form: Option<&Measured>, read: &Read) -> Result<(), Error> {
        let (Some(form), Some([largest, smallest])) = (form, read.extremes()) else {
            return Ok(());
        };
        let bound = bounds::FORM_FOUND;
        let said = format!(
            "the {what} of {:.3} mm between {} and {} is odd: usual is {}",
            form.value(),
            largest.text,
            smallest.text,
            bound.usual_text()
        );
        let reason = || {
            format!("with {} ({}) the {what} would be {:.3} mm", smallest.text, smallest.path, form.value())
        };
        hold(&bound, form.value(), largest, said, reason, &mut self.warnings)
    }

    fn decide_bore(
        &mut self,
        bore: &mut Bore,
        of: Of,
        value: &Measured,
        limit: &Limit,
        unknown: Option<&str>,
        at: &str,
    ) -> Result<(), Error> {
        let unknown = unknown.map(str::to_owned);
        let (decision, ground) = match limit.cannot_take_bore(bore.clamping).or(unknown) {
            Some(reason) => not_judged(of, limit, reason),
            None => {
                let value = self.at_limit(value, self.engine.bore_material, limit)?;
                let at = format!("{at}/decisions/{}", bore.report.decisions.len());
                self.decide(of, &value, limit, &bore.overdue, &at)
            }
        };
        bore.report.decisions.push(decision);
        bore.grounds.push(ground);
        Ok(())
    }

    /// A bore far from its nominal is another oversize, or a deviation with the wrong sign or unit.
    fn check_size(&mut self, size: &Measured, reading: &doc::BoreReading) -> Result<(), Error> {
        let near = crate::measurement::near_nominal("size of this bore", self.engine.bore_nominal);
        match (near.judge(size.value()), reading.repeats.first()) {
            (bounds::Verdict::Impossible, Some(first)) => {
                Err(near.refuse(size.value(), first.text()).suggest(None).at(first.path()))
            }
            (bounds::Verdict::Odd, Some(first)) => {
                let text = format!(
                    "{} makes a bore of {:.3} mm: usual is {}",
                    first.text(),
                    size.value(),
                    near.usual_text()
                );
                self.warnings.push(Warning {
                    kind: "odd_value".to_owned(),
                    path: first.path().to_owned(),
                    text,
                });
                Ok(())
            }
            _ => Ok(()),
        }
    }
}

/// A depth lies within the bore.
pub(super) fn read_depth(
    depth: &Entry<Length>,
    length: &Given,
    warnings: &mut Vec<Warning>,
) -> Result<Given, Error> {
    let bound = Bound {
        label: "depth in this bore",
        possible: (0.0, length.value),
        usual: (0.0, length.value),
        ..bounds::DEPTH
    };
    // nearly every slip ends at some depth: none is likelier than the others
    depth.read(&bound, warnings).map_err(|e| match e.kind() {
        ErrorKind::OutOfRange => e.suggest(None),
        _ => e,
    })
}

/// A diameter has one direction: named by both of its ends it would count as two.
fn read_axis(axis: &Entry<Angle>, places: &[BorePlace], warnings: &mut Vec<Warning>) -> Result<Given, Error> {
    let given = axis.read(&bounds::ANGLE, warnings)?;
    let other_end = |p: &&BorePlace| {
        shape::one_diameter(p.axis.value, given.value) && !shape::same(p.axis.value, given.value)
    };
    match places.iter().find(other_end) {
        Some(p) => {
            let reason = format!("it is the diameter that is also called {}; name it once", p.axis.text);
            Err(axis.refuse(ErrorKind::Contradiction, reason))
        }
        None => Ok(given),
    }
}
