//! What is done to the engine: the stage after the verdicts.

mod finish;
mod gasket;
mod given;
mod liners;
mod machining;
mod masses;
mod matched;
mod parts;
mod rings;
mod sleeves;
mod targets;

use super::Assessment;
use super::bore::Bore;
use super::piston::Piston;
use crate::bounds;
use crate::calc::{Figure, Measured};
use crate::decision::finding::What;
use crate::decision::{Decision, Limit, Limits, Of, Outcome};
use crate::error::{Error, ErrorKind};
use crate::job::document::{Clamping, Document, Limit as LimitEntry, PistonState, Surface};
use crate::job::plan as doc;
use crate::job::{Given, check_length};
use crate::report::{
    BoreWork, CylinderReport, NewPistonReport, PistonWork, PlanReport, PlannedCylinder, WantedReport,
};
use crate::size::REFERENCE_TEMPERATURE_C;

/// What the plan needs of a cylinder.
pub(super) struct Kept {
    number: u32,
    bore: Option<KeptBore>,
    piston: Option<Piston>,
}

/// A bore that was read.
struct KeptBore {
    /// every diameter
    places: Vec<Measured>,
    size: Option<Measured>,
    clamping: Clamping,
    stale: Vec<String>,
}

impl Kept {
    pub(super) fn of(number: u32, bore: Option<&Bore>, piston: Option<&Piston>) -> Self {
        let bore = bore.map(|b| KeptBore {
            places: b.places.iter().map(|p| p.size.clone()).collect(),
            size: b.size.clone(),
            clamping: b.clamping,
            stale: b.overdue.clone(),
        });
        Kept { number, bore, piston: piston.cloned() }
    }
}

/// A piston to hand.
struct NewPiston {
    name: String,
    oversize: Option<Given>,
    state: PistonState,
    size: Option<Measured>,
    stale: Vec<String>,
    mass_g: Option<f64>,
    grade: Option<String>,
}

/// The clearance that is wanted, at 20 C.
struct Wanted {
    lower: Given,
    upper: Given,
    target: Figure,
    limit: Limit,
}

impl Assessment {
    /// The plan of a document; none when it asks for none.
    pub(super) fn plan(
        &mut self,
        document: &Document,
        cylinders: &[CylinderReport],
        kept: &[Kept],
    ) -> Result<Option<PlanReport>, Error> {
        let Some(plan) = &document.plan else { return Ok(None) };
        let wanted = self.wanted(plan)?;
        let (pistons, reports) = self.new_pistons(&plan.pistons, wanted.as_ref())?;
        let mut out = PlanReport {
            wanted: wanted.as_ref().map(Wanted::report),
            cylinders: cylinders.iter().map(|c| planned(c, self.engine.not_machined.as_deref())).collect(),
            oversizes: None,
            sleeves: Vec::new(),
            liners: None,
            rings: Vec::new(),
            gasket: None,
            masses: None,
            pistons: reports,
            matching: None,
            targets: Vec::new(),
            finish: None,
            open: Vec::new(),
        };
        let mut finishes = Vec::new();
        if let Some(machining) = &plan.machining {
            finishes =
                self.machining(machining, plan.matching.as_ref(), (&wanted, &pistons), kept, &mut out)?;
        } else if out.cylinders.iter().any(|c| c.bore == BoreWork::Bore) {
            out.open.push("how the bores are machined: the document has no plan of it".to_owned());
        }
        self.matching(plan.matching.as_ref(), (&wanted, &pistons), kept, &mut out)?;
        self.parts(document, plan, (kept, &finishes), &mut out)?;
        if let Some(finish) = &plan.finish {
            self.finish(document, finish, (&wanted, &pistons), kept, &mut out)?;
        }
        Ok(Some(out))
    }

    /// The clearance that is wanted: of the plan, or the limit of the bench clearance; none where there is none with both ends at 20 C.
    fn wanted(&mut self, plan: &doc::Plan) -> Result<Option<Wanted>, Error> {
        self.calc.heading(|| "the plan".to_owned());
        let stated = plan.wanted_clearance.as_ref();
        let stated = stated.map(|w| Limit::of_clearance(w, &mut self.warnings)).transpose()?;
        if let Some((limit, entry)) = stated.as_ref().zip(plan.wanted_clearance.as_ref()) {
            check_stated(limit, entry)?;
        }
        let limit = stated.or_else(|| self.limits.bench_clearance_of_all().filter(|l| at_20(l)).cloned());
        let ends = limit.and_then(|l| Some((l.lower.clone()?, l.upper.clone()?, l)));
        let Some((lower, upper, limit)) = ends else {
            return match &plan.target_clearance {
                Some(entry) => Err(entry.refuse(ErrorKind::Contradiction, "no clearance is wanted at 20 C")),
                None => Ok(None),
            };
        };
        let target = match &plan.target_clearance {
            Some(entry) => {
                let given = entry.read(&bounds::CLEARANCE, &mut self.warnings)?;
                let given = parts::within(entry, given, (&lower, &upper))?;
                self.calc.given("target", &given)
            }
            None => {
                let ends = [self.calc.given("lower", &lower), self.calc.given("upper", &upper)];
                self.calc.figure(machining::Middle, ends)
            }
        };
        self.calc.place(target, || "/plan/wanted/target_mm".to_owned());
        Ok(Some(Wanted { lower, upper, target, limit }))
    }

    /// The pistons to hand, at their gauge point over the surface that the limit of the clearance means.
    fn new_pistons(
        &mut self,
        entries: &[doc::NewPiston],
        wanted: Option<&Wanted>,
    ) -> Result<(Vec<NewPiston>, Vec<NewPistonReport>), Error> {
        check_length(entries, |p| &p.name)?;
        let surface = self.plan_surface(wanted);
        let mut pistons: Vec<NewPiston> = Vec::with_capacity(entries.len());
        let mut reports = Vec::with_capacity(entries.len());
        for (k, entry) in entries.iter().enumerate() {
            let name = entry.name.words()?.to_owned();
            if pistons.iter().any(|p| p.name == name) {
                return Err(entry.name.refuse(ErrorKind::Repeated, "this piston stands twice"));
            }
            let oversize = self.optional(&entry.oversize, &bounds::OVERSIZE)?;
            let mass = self.optional(&entry.mass, &bounds::ASSEMBLY_MASS)?;
            let read = crate::job::document::Piston {
                state: entry.state,
                record: None,
                readings: entry.readings.clone(),
            };
            let (of, at) = (format!("new piston {name}"), format!("/plan/pistons/{k}"));
            let read = self.piston(&of, &read, &Limits::none(), Vec::new(), &at)?;
            let sized = read.at_gauge_point(Some(surface));
            reports.push(NewPistonReport {
                name: name.clone(),
                oversize_mm: oversize.as_ref().map(|o| o.value),
                sizes: read.report.sizes.clone(),
                mass_g: mass.as_ref().map(|m| m.value),
            });
            pistons.push(NewPiston {
                name,
                oversize,
                state: entry.state,
                size: sized.map(|(size, _)| size.clone()),
                stale: sized.map(|(_, stale)| stale.to_vec()).unwrap_or_default(),
                mass_g: mass.map(|m| m.value),
                grade: entry.grade.as_ref().map(|g| g.words().map(str::to_owned)).transpose()?,
            });
        }
        Ok((pistons, reports))
    }

    /// The surface that clearances of the plan are over.
    fn plan_surface(&self, wanted: Option<&Wanted>) -> Surface {
        wanted.and_then(|w| w.limit.over).unwrap_or(Surface::BareMetal)
    }

    /// A clearance of the plan against what is wanted, and puts the decision at `at`.
    fn decide_wanted(
        &mut self,
        of: Of,
        (value, stale): (&Measured, &[String]),
        (clamping, state): (Clamping, PistonState),
        wanted: &Wanted,
        at: &str,
    ) -> Decision {
        let limit = &wanted.limit;
        let unusable = limit.cannot_take_piston(state).or_else(|| limit.cannot_take_bore(clamping));
        match unusable {
            Some(reason) => Decision::not_judged(of, limit, reason),
            None => self.decide(of, value, limit, stale, at).0,
        }
    }
}

impl Wanted {
    fn report(&self) -> WantedReport {
        WantedReport {
            min_mm: self.lower.value,
            max_mm: self.upper.value,
            target_mm: self.target.value,
            clamping: self.limit.clamping.clone(),
            origin: self.limit.origin.clone(),
        }
    }
}

/// Does a limit hold at the temperature of all sizes? One at another temperature is another clearance at 20 C.
fn at_20(limit: &Limit) -> bool {
    (limit.temperature.value - REFERENCE_TEMPERATURE_C).abs() <= 0.0
}

/// A wanted clearance holds at 20 C and has both ends.
fn check_stated(limit: &Limit, entry: &LimitEntry) -> Result<(), Error> {
    if !at_20(limit) {
        let reason = "the plan is made of sizes at 20 C";
        return Err(entry.reference_temperature.refuse(ErrorKind::Contradiction, reason));
    }
    for (end, name) in [(&limit.lower, "min"), (&limit.upper, "max")] {
        if end.is_none() {
            let reason = "a bore is machined between two ends";
            let at = format!("{}/{name}", entry.origin.parent());
            return Err(Error::new(ErrorKind::MissingField, name, reason).at(&at));
        }
    }
    Ok(())
}

/// What the verdicts of a cylinder ask for, before anything is chosen.
fn planned(cylinder: &CylinderReport, not_machined: Option<&str>) -> PlannedCylinder {
    let mut reasons = Vec::new();
    let bore = match cylinder.bore.as_ref().map(|b| (b.verdict.outcome, b)) {
        Some((Outcome::Reuse, _)) => BoreWork::Leave,
        Some((Outcome::DoNotReuse, bore)) => {
            let broken =
                bore.findings.iter().find(|f| matches!(f.what, What::Crack | What::Hole | What::Fracture));
            match (broken, not_machined) {
                (Some(finding), _) => {
                    reasons.push(format!("a {} is not machined away", finding.what.spoken()));
                    BoreWork::Replace
                }
                (None, Some(why)) => {
                    reasons.push(format!("the bore may be neither honed nor bored: {why}"));
                    BoreWork::Replace
                }
                (None, None) => BoreWork::Bore,
            }
        }
        Some(_) | None => BoreWork::Undecided,
    };
    let piston = cylinder.piston.as_ref().map(|p| p.verdict.outcome);
    // parts that are well each and do not fit each other: another piston is tried first
    let fits = cylinder.clearance.iter().flat_map(|c| &c.decisions);
    let mut fits = fits.filter(|d| matches!(d.of, Of::BenchClearance | Of::SmallestClearance));
    let misfit = fits.any(|d| d.result == crate::decision::Conformity::DoesNotConform);
    let piston = match piston {
        Some(Outcome::DoNotReuse) => PistonWork::Replace,
        Some(Outcome::Reuse) if misfit && bore == BoreWork::Leave => {
            reasons.push("both parts are within their limits and do not fit each other: another piston, or the bore is machined".to_owned());
            PistonWork::Replace
        }
        Some(Outcome::Reuse) if bore == BoreWork::Leave && cylinder.verdict.outcome == Outcome::Reuse => {
            PistonWork::Reuse
        }
        _ => PistonWork::Undecided,
    };
    if matches!((bore, piston), (BoreWork::Undecided, _) | (_, PistonWork::Undecided)) {
        reasons.push(format!("its verdict is: {}", cylinder.verdict.outcome.word()));
    }
    PlannedCylinder { number: cylinder.number, bore, oversize_mm: None, piston, new_piston: None, reasons }
}
