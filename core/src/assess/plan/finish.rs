//! The second visit: what was found after the work.

use super::matched::{Open, place_of};
use super::parts::placed;
use super::{Kept, NewPiston, Wanted};
use crate::assess::Assessment;
use crate::assess::bore::Bore;
use crate::bounds::{self, Bound};
use crate::calc::Measured;
use crate::clearance::Bench;
use crate::decision::{Against, Conformity, Decision, Limits, Of, Outcome, Rule};
use crate::error::{Error, ErrorKind};
use crate::job::document::{Clamping, Document, PistonState, Surface as Over};
use crate::job::plan::{self as doc, Stage};
use crate::job::{Entry, Given, Numeric, Pure, Roughness, Words, check_length, nearest};
use crate::plan::machining::{FinishLower, FinishSize, FinishUpper, Remaining};
use crate::plan::surface::{self, Finding, Finish as Surface, FinishValue};
use crate::report::{
    Closing, FinishReport, FinishResult, FinishedReport, GapReport, PlanReport, WallFinishReport,
};
use crate::size::REFERENCE_TEMPERATURE_C;

crate::calc::formula! {
    /// The whole of it.
    Width: width ["mm"] = (tolerance) => 2.0 * tolerance; source "definition";
}

/// A cylinder after the work, with what the matching needs of it.
struct After {
    number: u32,
    stage: Stage,
    size: Option<Measured>,
    clamping: Clamping,
    stale: Vec<String>,
    /// piston, by its place among those that are to hand
    piston: Option<usize>,
}

/// The piston that goes into a finished bore.
struct Fitted<'a> {
    name: Option<String>,
    place: Option<usize>,
    state: PistonState,
    size: Option<&'a Measured>,
    stale: &'a [String],
}

impl Assessment {
    pub(super) fn finish(
        &mut self,
        document: &Document,
        entry: &doc::Finish,
        (wanted, pistons): (&Option<Wanted>, &[NewPiston]),
        kept: &[Kept],
        out: &mut PlanReport,
    ) -> Result<(), Error> {
        let Some(wanted) = wanted else {
            let reason = "without a wanted clearance at 20 C nothing that was finished can be judged";
            return Err(Error::new(ErrorKind::MissingField, "", reason).at("/plan/wanted_clearance"));
        };
        let by = entry.by.words()?.to_owned();
        let date = entry.date.date()?;
        if date < document.job.date.date()? {
            let reason = format!("the engine was measured on {}", document.job.date.text());
            return Err(entry.date.refuse(ErrorKind::OutOfOrder, reason));
        }
        check_length(&entry.cylinders, |c| &c.number)?;
        let mut reports = Vec::with_capacity(entry.cylinders.len());
        let mut after: Vec<After> = Vec::with_capacity(entry.cylinders.len());
        for (k, cylinder) in entry.cylinders.iter().enumerate() {
            let number = self.another(&cylinder.number, |n| after.iter().any(|a| a.number == n))?;
            let surface = self.plan_surface(Some(wanted));
            let fitted = fitted(cylinder, number, pistons, (kept, surface), &after)?;
            let at = format!("/plan/finish/cylinders/{k}");
            let (report, found) = self.finished(document, cylinder, (number, &fitted), wanted, &at)?;
            reports.push(report);
            after.push(found);
        }
        let mut open = open_points(out, &reports);
        open.extend(run_out(document, entry)?);
        let result = if open.is_empty() { Closing::Proven } else { Closing::NotProven };
        let matching = self.matched_again(document, wanted, pistons, &after)?;
        out.finish = Some(FinishReport {
            by,
            date: entry.date.text().trim().to_owned(),
            cylinders: reports,
            matching,
            result,
            open,
        });
        Ok(())
    }

    fn finished(
        &mut self,
        document: &Document,
        entry: &doc::Finished,
        (number, fitted): (u32, &Fitted<'_>),
        wanted: &Wanted,
        at: &str,
    ) -> Result<(FinishedReport, After), Error> {
        let of = format!("finished bore {number}");
        // the printed limits of its size are those of the standard bore
        let limits = Limits { bore_size: None, ..self.limits.of(number) };
        let bore = self.bore(
            &of,
            &entry.bore,
            &document.engine.reduction,
            &limits,
            Vec::new(),
            &format!("{at}/bore"),
        )?;
        let target = match (document.plan.as_ref().and_then(|p| p.machining.as_ref()), entry.stage) {
            (Some(machining), Stage::Bored | Stage::Honed) => {
                Some(machining.finish_tolerance.read(&bounds::FINISH_TOLERANCE, &mut Vec::new())?)
            }
            _ => None,
        };
        let mut found = Found { stock: None, clearance: None, decisions: Vec::new() };
        if let (Some(size), Some(piston)) = (&bore.size, fitted.size) {
            let stale: Vec<String> = bore.overdue.iter().chain(fitted.stale).cloned().collect();
            let states = (entry.bore.clamping, fitted.state);
            let held = Held { size, piston, tolerance: target.as_ref(), stage: entry.stage, states, stale };
            found = self.held_against(&held, wanted, (&of, at));
        }
        let gaps = self.finished_gaps(document, entry, number, &format!("{at}/gaps"))?;
        let surface = self.finished_surface(document, entry)?;
        let (result, next) = judged(entry.stage, &bore, &found, fitted.size.is_some());
        let (stock, clearance) = (found.stock, found.clearance);
        let report = FinishedReport {
            number,
            stage: entry.stage,
            piston: fitted.name.clone(),
            stock: stock.map(|s| self.state(&s, &format!("{at}/stock"))),
            clearance: clearance.map(|c| self.state(&c, &format!("{at}/clearance"))),
            decisions: found.decisions,
            gaps,
            surface,
            result,
            next,
            bore: bore.report,
        };
        let after = After {
            number,
            stage: entry.stage,
            size: bore.size,
            clamping: bore.clamping,
            stale: bore.overdue,
            piston: fitted.place,
        };
        Ok((report, after))
    }

    /// The clearance of a finished bore, its stock, and the decisions.
    fn held_against(&mut self, held: &Held<'_>, wanted: &Wanted, (of, at): (&str, &str)) -> Found {
        self.calc.heading(|| of.to_owned());
        let clearance = self.calc.apply(Bench, [held.size, held.piston]);
        let target: Measured = wanted.target.into();
        let finish = self.calc.apply(FinishSize, [held.piston, &target]);
        let stock = self.calc.apply(Remaining, [&finish, held.size]);
        let mut decisions = Vec::new();
        if held.stage != Stage::Bored {
            let value = (&clearance, held.stale.as_slice());
            let here = format!("{at}/decisions/0");
            decisions.push(self.decide_wanted(Of::FinishedClearance, value, held.states, wanted, &here));
        }
        if let Some(tolerance) = held.tolerance.filter(|_| held.stage == Stage::Honed) {
            let tolerance = self.calc.given("tolerance", tolerance);
            let against = Against {
                lower: Some(self.calc.figure(FinishLower, [finish.figure, tolerance])),
                upper: Some(self.calc.figure(FinishUpper, [finish.figure, tolerance])),
                tolerance: Some(self.calc.figure(Width, [tolerance])),
                temperature_c: Some(REFERENCE_TEMPERATURE_C),
                origin: "finish size for its piston and its tolerance",
                cylinders: &[],
            };
            let here = format!("{at}/decisions/1");
            decisions.push(self.decide_against(Of::FinishedSize, held.size, against, &held.stale, &here).0);
        }
        Found { stock: Some(stock), clearance: Some(clearance), decisions }
    }

    /// The gaps as they are now against the limits of the plan.
    fn finished_gaps(
        &mut self,
        document: &Document,
        entry: &doc::Finished,
        number: u32,
        at: &str,
    ) -> Result<Vec<GapReport>, Error> {
        let planned = document.plan.as_ref().map(|p| p.rings.as_slice()).unwrap_or_default();
        check_length(&entry.gaps, |g| &g.ring)?;
        let mut out: Vec<GapReport> = Vec::with_capacity(entry.gaps.len());
        for read in &entry.gaps {
            let name = read.ring.words()?;
            if out.iter().any(|g| g.ring == name) {
                return Err(read.ring.refuse(ErrorKind::Repeated, "this ring stands twice"));
            }
            let of_cylinder = |r: &&crate::job::plan::Ring| {
                r.cylinder.count(1, self.engine.cylinders).is_ok_and(|n| n == number)
            };
            let own: Vec<_> = planned.iter().filter(of_cylinder).collect();
            let known: Vec<&str> = own.iter().map(|r| r.ring.text().trim()).collect();
            let Some(ring) = own.iter().find(|r| r.ring.text().trim() == name) else {
                let reason =
                    format!("the plan has no such ring in this cylinder; known: {}", known.join(", "));
                return Err(read.ring.refuse(ErrorKind::UnknownName, reason).suggest(nearest(name, &known)));
            };
            self.calc.heading(|| format!("{name} ring of finished cylinder {number}"));
            let limits = self.gap_limits(ring)?;
            let gap = read.gap.read(&bounds::RING_GAP, &mut self.warnings)?;
            let gap: Measured = self.calc.given("gap", &gap).into();
            let of = format!("gap of the {name} ring of finished cylinder {number}");
            let gap = self.with_error(&gap, of, &ring.permissible_error, &bounds::GAP_ERROR)?;
            let at = format!("{at}/{}", out.len());
            let against = Against {
                lower: Some(self.calc.given("least", &limits.least)),
                upper: limits.most.as_ref().map(|m| self.calc.given("most", m)),
                tolerance: None,
                temperature_c: Some(REFERENCE_TEMPERATURE_C),
                origin: ring.origin.words()?,
                cylinders: &[],
            };
            let here = format!("{at}/decision");
            let decision = self.decide_against(Of::RingGap, &gap, against, &[], &here).0;
            out.push(GapReport {
                ring: name.to_owned(),
                gap: self.state(&gap, &format!("{at}/gap")),
                decision,
            });
        }
        Ok(out)
    }

    /// The finish of a wall against the limits of the plan.
    fn finished_surface(
        &mut self,
        document: &Document,
        entry: &doc::Finished,
    ) -> Result<Vec<WallFinishReport>, Error> {
        let limits = document.plan.as_ref().and_then(|p| p.surface.as_ref());
        let (limits, read) = match (limits, &entry.surface) {
            (Some(limits), Some(read)) => (limits, read),
            (_, None) => return Ok(Vec::new()),
            (None, Some(_)) => {
                let at = format!("{}/surface", entry.number.parent());
                let reason = "the plan has no limits of a finish";
                return Err(Error::new(ErrorKind::Contradiction, "", reason).at(&at));
            }
        };
        limits.origin.words()?;
        let angles = limits.crosshatch.as_ref().map_or((None, None), |a| (a.min.as_ref(), a.max.as_ref()));
        let given = Surface {
            rpk_um: self.surface_value(read.rpk.as_ref(), heights(&limits.rpk), &bounds::ROUGHNESS)?,
            rk_um: self.surface_value(read.rk.as_ref(), heights(&limits.rk), &bounds::ROUGHNESS)?,
            rvk_um: self.surface_value(read.rvk.as_ref(), heights(&limits.rvk), &bounds::ROUGHNESS)?,
            mr1_percent: self.surface_value(
                read.mr1_percent.as_ref(),
                shares(&limits.mr1_percent),
                &bounds::MATERIAL_RATIO,
            )?,
            mr2_percent: self.surface_value(
                read.mr2_percent.as_ref(),
                shares(&limits.mr2_percent),
                &bounds::MATERIAL_RATIO,
            )?,
            crosshatch_deg: self.surface_value(read.crosshatch.as_ref(), angles, &bounds::CROSSHATCH)?,
        };
        // the values alone are held against their limits, whatever the rule of the job asks for
        let found = surface::finish(&given, Rule::SimpleAcceptance, self.rule.at_least)
            .map_err(|e| placed(e, &format!("{}/surface", entry.number.parent())))?;
        let values = [
            given.rpk_um,
            given.rk_um,
            given.rvk_um,
            given.mr1_percent,
            given.mr2_percent,
            given.crosshatch_deg,
        ];
        let stated = found.parameters.iter().zip(values);
        // what has neither a limit nor a value is not spoken of
        let stated = stated.filter(|(judged, v)| judged.finding != Finding::NoLimit || v.value.is_some());
        Ok(stated
            .map(|(judged, v)| WallFinishReport {
                parameter: judged.parameter,
                value: v.value,
                finding: judged.finding,
            })
            .collect())
    }

    fn surface_value<K: Numeric>(
        &mut self,
        value: Option<&Entry<K>>,
        (lower, upper): Ends<'_, K>,
        bound: &Bound,
    ) -> Result<FinishValue, Error> {
        let mut read = |entry: Option<&Entry<K>>| {
            entry.map(|e| e.read(bound, &mut self.warnings).map(|g| g.value)).transpose()
        };
        Ok(FinishValue {
            value: read(value)?,
            standard_uncertainty: None,
            lower: read(lower)?,
            upper: read(upper)?,
        })
    }

    /// The pistons to hand, matched to the bores as they are now; none where there are too few.
    fn matched_again(
        &mut self,
        document: &Document,
        wanted: &Wanted,
        pistons: &[NewPiston],
        after: &[After],
    ) -> Result<Option<crate::report::MatchingReport>, Error> {
        let takes_one = |a: &&After| a.stage != Stage::Bored && a.piston.is_some();
        let bores: Vec<Open<'_>> = after
            .iter()
            .filter(takes_one)
            .filter_map(|a| {
                let size = a.size.as_ref()?;
                Some(Open { number: a.number, size, clamping: a.clamping, stale: &a.stale })
            })
            .collect();
        let measured = pistons.iter().filter(|p| p.size.is_some()).count();
        if bores.is_empty() || measured < bores.len() {
            return Ok(None);
        }
        let matching = document.plan.as_ref().and_then(|p| p.matching.as_ref());
        // the pairs that were fitted stand, whatever there would be besides
        Ok(self.matched(matching, wanted, pistons, &bores, "/plan/finish/matching")?.ok())
    }
}

/// A finished bore and its piston.
struct Held<'a> {
    size: &'a Measured,
    piston: &'a Measured,
    /// half of the tolerance of the finish size, where the bore was machined
    tolerance: Option<&'a Given>,
    stage: Stage,
    states: (Clamping, PistonState),
    stale: Vec<String>,
}

/// What was found of a finished bore.
struct Found {
    stock: Option<Measured>,
    clearance: Option<Measured>,
    decisions: Vec<Decision>,
}

/// The two ends of a limit, where it is given.
fn heights(of: &Option<doc::Heights>) -> Ends<'_, Roughness> {
    of.as_ref().map_or((None, None), |h| (h.min.as_ref(), h.max.as_ref()))
}

fn shares(of: &Option<doc::Shares>) -> Ends<'_, Pure> {
    of.as_ref().map_or((None, None), |s| (s.min.as_ref(), s.max.as_ref()))
}

type Ends<'a, K> = (Option<&'a Entry<K>>, Option<&'a Entry<K>>);

/// The piston of a finished cylinder: one of those to hand, or the one that was in it.
fn fitted<'a>(
    entry: &doc::Finished,
    number: u32,
    pistons: &'a [NewPiston],
    (kept, surface): (&'a [Kept], Over),
    before: &[After],
) -> Result<Fitted<'a>, Error> {
    let Some(name) = &entry.piston else {
        let own = kept.iter().find(|k| k.number == number).and_then(|k| k.piston.as_ref());
        let sized = own.and_then(|p| p.at_gauge_point(Some(surface)));
        return Ok(Fitted {
            name: None,
            place: None,
            state: own.map_or(PistonState::RunIn, |p| p.state),
            size: sized.map(|(size, _)| size),
            stale: sized.map(|(_, stale)| stale).unwrap_or_default(),
        });
    };
    let place = named(name, pistons)?;
    if before.iter().any(|a| a.piston == Some(place)) {
        return Err(name.refuse(ErrorKind::Repeated, "this piston is in another cylinder already"));
    }
    let piston = pistons.get(place);
    Ok(Fitted {
        name: piston.map(|p| p.name.clone()),
        place: Some(place),
        state: piston.map_or(PistonState::New, |p| p.state),
        size: piston.and_then(|p| p.size.as_ref()),
        stale: piston.map(|p| p.stale.as_slice()).unwrap_or_default(),
    })
}

/// The place of a piston among all that are to hand.
fn named(name: &Entry<Words>, pistons: &[NewPiston]) -> Result<usize, Error> {
    let measured: Vec<(&NewPiston, &Measured)> =
        pistons.iter().filter_map(|p| Some((p, p.size.as_ref()?))).collect();
    let wanted = name.words()?;
    match pistons.iter().position(|p| p.name == wanted) {
        Some(place) => Ok(place),
        None => place_of(name, &measured),
    }
}

/// What a finished bore makes of what was found, and what to do next.
fn judged(stage: Stage, bore: &Bore, found: &Found, has_piston: bool) -> (FinishResult, String) {
    let (Some(stock), Some(clearance)) = (&found.stock, &found.clearance) else {
        let what = if has_piston { "read the bore" } else { "measure its piston at the gauge point" };
        return (FinishResult::NotProven, what.to_owned());
    };
    let (stock, clearance) = (stock.value(), clearance.value());
    if stage == Stage::Bored {
        return match stock > 0.0 {
            true => (FinishResult::ToBeHoned, format!("hone {stock:.3} mm off the diameter")),
            false => (
                FinishResult::TooLarge,
                "nothing is left for the hone: a larger piston, or the next step".to_owned(),
            ),
        };
    }
    let decision = found.decisions.first();
    let (lower, upper) = decision.map_or((None, None), |d| (d.lower_mm, d.upper_mm));
    let tight = lower.is_some_and(|l| clearance < l) || stock > 0.0;
    match (decision.map(|d| d.result), bore.report.verdict.outcome) {
        (Some(Conformity::Conforms), Outcome::Reuse) => {
            let off = found
                .decisions
                .iter()
                .any(|d| d.of == Of::FinishedSize && d.result == Conformity::DoesNotConform);
            let besides = if off {
                "; its size is outside the tolerance it was honed to, its clearance is not"
            } else {
                ""
            };
            (FinishResult::Met, format!("fit its piston{besides}"))
        }
        (Some(Conformity::Conforms), _) => (
            FinishResult::NotProven,
            "the clearance conforms; taper or out-of-round is not proven: hone to shape".to_owned(),
        ),
        (Some(Conformity::DoesNotConform), _) if tight => (
            FinishResult::HoneOn,
            format!("hone {stock:.3} mm off the diameter, let it cool, and read again"),
        ),
        (Some(Conformity::DoesNotConform), _) => {
            let over = upper.map_or(0.0, |u| clearance - u);
            let next = format!("{over:.3} mm above the largest clearance: a larger piston, or the next step");
            (FinishResult::TooLarge, next)
        }
        (_, _) if tight => (
            FinishResult::NotProven,
            format!("{stock:.3} mm to the middle: hone on, or read again with less uncertainty"),
        ),
        _ => (
            FinishResult::NotProven,
            "read again with less uncertainty; do not hone on: it is above the middle".to_owned(),
        ),
    }
}

/// What of the smaller decisions is not settled.
fn settled(plan: &PlanReport) -> Vec<String> {
    let mut out: Vec<String> = plan.liners.iter().flat_map(|l| l.ruled_out.clone()).collect();
    if let Some(gasket) = &plan.gasket {
        if gasket.spread_is_met == Some(false) {
            out.push(format!("the pistons stand {:.3} mm apart: too far", gasket.spread_mm));
        }
        let short = gasket.pistons.iter().filter(|p| p.squish_is_met == Some(false));
        out.extend(
            short.map(|p| format!("cylinder {}: squish of {:.3} mm is too little", p.cylinder, p.squish_mm)),
        );
    }
    let heavy = plan.masses.iter().flat_map(|m| &m.each).filter(|m| m.over_g > 0.0);
    out.extend(heavy.map(|m| {
        format!("cylinder {}: {:.1} g too heavy, and no more may be taken off", m.cylinder, m.over_g)
    }));
    out.extend(plan.open.iter().cloned());
    out
}

/// Gauges whose calibration ran out between the two visits.
fn run_out(document: &Document, entry: &doc::Finish) -> Result<Vec<String>, Error> {
    let date = entry.date.date()?;
    let mut out: Vec<String> = Vec::new();
    for cylinder in &entry.cylinders {
        let name = cylinder.bore.gauge.text().trim();
        let Some(gauge) = document.gauges.iter().find(|g| g.name.text().trim() == name) else { continue };
        let reason = format!(
            "{name}: its calibration ran out on {}: nothing is proven with it",
            gauge.calibration_due.text()
        );
        if gauge.calibration_due.date()? < date && !out.contains(&reason) {
            out.push(reason);
        }
    }
    Ok(out)
}

/// What keeps the job from being closed.
fn open_points(plan: &PlanReport, finished: &[FinishedReport]) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for cylinder in &plan.cylinders {
        match finished.iter().find(|f| f.number == cylinder.number) {
            None => out.push(format!("cylinder {}: nothing was read after the work", cylinder.number)),
            Some(f) if f.result != FinishResult::Met => {
                out.push(format!("cylinder {}: {}: {}", f.number, f.result.word(), f.next));
            }
            Some(_) => {}
        }
    }
    for f in finished {
        for gap in f.gaps.iter().filter(|g| g.decision.result != Conformity::Conforms) {
            out.push(format!(
                "cylinder {}: gap of the {} ring: {}",
                f.number,
                gap.ring,
                gap.decision.result.word()
            ));
        }
        for of in f.surface.iter().filter(|s| !matches!(s.finding, Finding::In | Finding::NoLimit)) {
            let (name, found) = (of.parameter.word(), of.finding.spoken());
            out.push(format!("cylinder {}: {name} of its wall: {found}", f.number));
        }
    }
    for ring in &plan.rings {
        let after = finished.iter().find(|f| f.number == ring.cylinder);
        if !after.is_some_and(|f| f.gaps.iter().any(|g| g.ring == ring.ring)) {
            out.push(format!(
                "cylinder {}: the gap of the {} ring was not read after the work",
                ring.cylinder, ring.ring
            ));
        }
    }
    out.extend(settled(plan));
    out
}
