//! The whole job: from a document to a report, stage by stage in the order of the work.

mod barrel;
mod bore;
mod clearance;
mod cross;
mod heights;
mod hot;
mod piston;
mod plan;
mod seen;

use crate::bounds::{self, Bound};
use crate::calc::{Budget, Calc, Figure, Measured};
use crate::decision::finding::Finding;
use crate::decision::{
    Against, Decision, Ground, Judged, Limit, LimitSets, Of, Outcome, Rule, RuleInForce, Verdict, judge,
    verdict,
};
use crate::error::{Error, ErrorKind};
use crate::fit::Reader;
use crate::growth::{Grown, Materials};
use crate::job::document::{self as doc, Datum};
use crate::job::{Document, Entry, Given, Warning, check_length};
use crate::measurement::{Gauges, Shop, places};
use crate::progress::{Watch, Work};
use crate::report::{
    self, Block, BudgetLine, Conventions, CylinderReport, Dominant, EngineName, GaugeReport, JobName,
    MeasuredValue, Report, TargetReport,
};
use crate::shape::target::Target;
use crate::size::REFERENCE_TEMPERATURE_C;
use crate::stack::{StackEntry, StackReport};
use std::collections::{BTreeMap, HashSet};

/// Most cylinders of one engine.
const MOST_CYLINDERS: u32 = 64;

/// What to put into a report besides its results.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Options {
    /// The working of every number.
    pub working: bool,
}

/// Assesses a job.
///
/// Readings that are missing give a partial report that says what is missing; anything that is refused gives an error
/// and no report.
///
/// # Errors
/// When a field is refused: see [`Error`].
pub fn assess(document: &Document, options: Options) -> Result<Report, Error> {
    assess_watched(document, options, Watch::default())
}

/// [`assess`] with a watcher, who is asked cylinder by cylinder, hot fit by hot fit and in the trials of stacks; see [`progress`](crate::progress).
///
/// # Errors
/// As [`assess`], and [`ErrorKind::Stopped`].
pub fn assess_watched(document: &Document, options: Options, watch: Watch<'_>) -> Result<Report, Error> {
    Assessment::new(document, options)?.report(document, watch)
}

/// Assesses a job given as JSON and gives the report as JSON.
///
/// # Errors
/// When the text is not a job document or a field is refused.
///
/// ```
/// let job = include_str!("../../examples/pump_six.json");
/// let report = gaugepoint::assess_json(job, gaugepoint::Options::default())?;
/// assert!(report.starts_with(r#"{"format":"gaugepoint-report","version":1"#));
/// # Ok::<(), gaugepoint::Error>(())
/// ```
pub fn assess_json(job: &str, options: Options) -> Result<String, Error> {
    Ok(assess(&Document::from_json(job)?, options)?.to_json())
}

/// [`assess_json`] for a host whose text is bytes.
///
/// # Errors
/// As [`assess_json`], and [`ErrorKind::NotUtf8`].
pub fn assess_json_bytes(job: &[u8], options: Options) -> Result<String, Error> {
    Ok(assess(&Document::from_json_bytes(job)?, options)?.to_json())
}

/// Everything that is common to the cylinders of one job.
struct Assessment {
    calc: Calc,
    warnings: Vec<Warning>,
    shop: Shop,
    materials: Materials,
    gauges: Gauges,
    limits: LimitSets,
    rule: RuleInForce,
    engine: Engine,
    running: Option<clearance::RunningState>,
    hot: Option<hot::HotState>,
}

/// What was read of the engine.
struct Engine {
    cylinders: u32,
    /// of the bore
    nominal: Given,
    bore_nominal: f64,
    bore_length: Given,
    bore_material: usize,
    piston_nominal: f64,
    /// at the gauge point
    piston_material: usize,
    piston_ranges: Vec<heights::MaterialRange>,
    piston_record: Option<doc::PistonRecord>,
    gauge_point: PistonPlace,
    target: Option<Target>,
    windows: Vec<barrel::Window>,
    /// why the bore may not be machined, when it may not
    not_machined: Option<String>,
}

/// A place on a piston.
#[derive(Debug, Clone)]
struct PistonPlace {
    height: Given,
    datum: Datum,
    angle: Given,
}

impl PistonPlace {
    fn words(&self) -> String {
        format!("{} from the {}, {}", self.height.text, self.datum.spoken(), self.angle.text)
    }

    fn same_height(&self, other: &PistonPlace) -> bool {
        self.datum == other.datum && crate::shape::same(self.height.value, other.height.value)
    }

    /// Is it the same diameter, named by its other end?
    fn is_other_end(&self, other: &PistonPlace) -> bool {
        let (a, b) = (self.angle.value, other.angle.value);
        self.same_height(other) && crate::shape::one_diameter(a, b) && !crate::shape::same(a, b)
    }

    fn is(&self, other: &PistonPlace) -> bool {
        self.same_height(other) && crate::shape::same(self.angle.value, other.angle.value)
    }
}

impl Assessment {
    fn new(document: &Document, options: Options) -> Result<Self, Error> {
        let mut calc = Calc::new(options.working);
        let mut warnings = Vec::new();
        document.job.id.words()?;
        document.job.note.as_ref().map(Entry::words).transpose()?;
        let shop = Shop::from_document(&mut calc, &document.shop, &mut warnings)?;
        let materials = Materials::from_document(&mut calc, &document.materials, &mut warnings)?;
        let engine = Engine::from_document(&document.engine, &materials, &mut warnings)?;
        let near = crate::measurement::near_nominal("setting of a bore gauge", engine.bore_nominal);
        let on = (document.job.date.date()?, &near);
        let places = |gauge: &doc::Gauge, warnings: &mut Vec<Warning>| places(document, gauge, warnings);
        let gauges = Gauges::from_document(
            &mut calc,
            (&document.gauges, &places),
            on,
            &shop,
            &materials,
            &mut warnings,
        )?;
        let limits = LimitSets::from_document(&document.engine, engine.cylinders, &mut warnings)?;
        let rule = RuleInForce::from_document(document.decision.as_ref(), &mut warnings)?;
        let mut reader = Reader { calc: &mut calc, materials: &materials, warnings: &mut warnings };
        let hot = hot::HotState::from_document(document, &engine, &limits, &mut reader)?;
        let running = |stated: &doc::Running| match &hot {
            Some(hot) => hot.running(stated, &engine, &mut reader),
            None => clearance::RunningState::from_document(stated, &materials, reader.warnings),
        };
        let running = document.running.as_ref().map(running).transpose()?;
        check_laws(&engine, &limits, running.as_ref(), &materials)?;
        Ok(Assessment { calc, warnings, shop, materials, gauges, limits, rule, engine, running, hot })
    }

    fn report(mut self, document: &Document, watch: Watch<'_>) -> Result<Report, Error> {
        let cylinders = self.numbered(&document.cylinders)?;
        // cylinders, their hot fits, stacks, the plan
        let work = Work::new(watch, (2 * cylinders.len() + document.stacks.len() + 1) as u64);
        let gauges = self.gauge_reports();
        let mut reports = Vec::with_capacity(cylinders.len());
        let mut hot = Vec::with_capacity(cylinders.len());
        let mut kept = Vec::with_capacity(cylinders.len());
        for (index, cylinder) in cylinders.iter().enumerate() {
            work.ask()?;
            let (report, pending, left) = self.cylinder(index, *cylinder, &document.engine.reduction)?;
            reports.push(report);
            hot.push(pending);
            kept.push(left);
            work.add(1);
        }
        cross::check(document, &self.engine, &cylinders, &reports, &mut self.warnings)?;
        for (report, pending) in reports.iter_mut().zip(hot) {
            work.ask()?;
            report.hot = pending.map(|p| self.hot_fit(p, &work)).transpose()?.flatten();
            work.add(1);
        }
        let stacks = self.stacks(&document.stacks, &work)?;
        work.ask()?;
        let plan = self.plan(document, &reports, &kept)?;
        work.add(1);
        let block = block(&reports);
        let mut out = Report {
            format: report::FORMAT,
            version: report::VERSION,
            library: env!("CARGO_PKG_VERSION"),
            job: JobName {
                id: document.job.id.text().to_owned(),
                date: document.job.date.text().trim().to_owned(),
                note: document.job.note.as_ref().map(|n| n.text().to_owned()),
            },
            engine: EngineName {
                name: document.engine.name.words()?.to_owned(),
                target_profile: self
                    .engine
                    .target
                    .as_ref()
                    .map(|t| TargetReport { state: t.state, origin: t.origin.clone() }),
                windows: self.engine.windows.iter().map(barrel::Window::report).collect(),
                may_not_be_machined: self.engine.not_machined.clone(),
                piston_record: self.engine.piston_record.clone(),
            },
            conventions: conventions(&self.rule),
            gauges,
            cylinders: reports,
            block,
            stacks,
            plan,
            work_order: Vec::new(),
            warnings: once(self.warnings),
            cautions: Vec::new(),
            working: self.calc.into_working(),
        };
        out.work_order = report::work_order(&out);
        out.cautions = report::cautions(&out);
        work.finish()?;
        Ok(out)
    }

    /// The stacks of the document, in its order.
    fn stacks(&mut self, entries: &[StackEntry], work: &Work<'_>) -> Result<Vec<StackReport>, Error> {
        check_length(entries, |stack| &stack.name)?;
        let name = |stack: &StackEntry| stack.name.text().trim().to_owned();
        let mut out = Vec::with_capacity(entries.len());
        for (k, entry) in entries.iter().enumerate() {
            if entries.iter().take(k).any(|earlier| name(earlier) == name(entry)) {
                let error = entry.name.refuse(ErrorKind::Repeated, "this stack stands twice");
                return Err(error.at(&format!("/stacks/{k}/name")));
            }
            work.ask()?;
            let report = |watch: Watch<'_>| entry.report(&mut self.calc, &format!("/stacks/{k}"), watch);
            out.push(work.part(1, report)?);
        }
        Ok(out)
    }

    /// One place for every cylinder of the engine, with what the document says of it.
    fn numbered<'d>(&self, entries: &'d [doc::Cylinder]) -> Result<Vec<Option<&'d doc::Cylinder>>, Error> {
        let mut out = vec![None; self.engine.cylinders as usize];
        for entry in entries {
            let number = entry.number.count(1, self.engine.cylinders)?;
            match out.get_mut(number as usize - 1) {
                Some(place @ None) => *place = Some(entry),
                _ => {
                    return Err(entry.number.refuse(ErrorKind::Repeated, "this cylinder stands twice"));
                }
            }
        }
        Ok(out)
    }

    fn gauge_reports(&mut self) -> Vec<GaugeReport> {
        let gauges: Vec<(GaugeReport, Option<Measured>)> =
            self.gauges.iter().map(|g| (g.report(), g.checked.then(|| g.zero_error().clone()))).collect();
        gauges
            .into_iter()
            .enumerate()
            .map(|(index, (report, zero_error))| GaugeReport {
                zero_error: zero_error.map(|e| self.state(&e, &format!("/gauges/{index}/zero_error"))),
                ..report
            })
            .collect()
    }

    fn cylinder(
        &mut self,
        index: usize,
        cylinder: Option<&doc::Cylinder>,
        reduction: &doc::Reduction,
    ) -> Result<(CylinderReport, Option<hot::Pending>, plan::Kept), Error> {
        let at = format!("/cylinders/{index}");
        #[expect(clippy::cast_possible_truncation, reason = "at most MOST_CYLINDERS")]
        let number = index as u32 + 1;
        let limits = self.limits.of(number);
        let findings = self.findings(cylinder)?;
        let (of_bore, of_piston): (Vec<Finding>, Vec<Finding>) =
            findings.into_iter().partition(Finding::of_bore);
        let mut missing = Vec::new();
        let mut grounds = Vec::new();
        let mut unread = Vec::new();

        let piston = match cylinder.and_then(|c| c.piston.as_ref()) {
            Some(piston) => Some(self.piston(
                &format!("piston {}", index + 1),
                piston,
                &limits,
                of_piston,
                &format!("{at}/piston"),
            )?),
            None => {
                missing.push("piston: nothing read".to_owned());
                unread.extend(of_piston);
                None
            }
        };
        let bore = match cylinder.and_then(|c| c.bore.as_ref()) {
            Some(bore) => Some(self.bore(
                &format!("bore {}", index + 1),
                bore,
                reduction,
                &limits,
                of_bore,
                &format!("{at}/bore"),
            )?),
            None => {
                missing.push("bore: nothing read".to_owned());
                unread.extend(of_bore);
                None
            }
        };
        grounds.extend(unread.iter().map(Ground::from_finding));
        let clearance = match (&piston, &bore) {
            (Some(piston), Some(bore)) => {
                self.calc.heading(|| format!("piston {0} in bore {0}", index + 1));
                Some(self.clearance(piston, bore, &limits, &at)?)
            }
            _ => None,
        };
        let kept = plan::Kept::of(number, bore.as_ref(), piston.as_ref());

        let piston = piston.map(|p| {
            grounds.extend(p.grounds);
            missing.extend(p.missing);
            p.report
        });
        let bore = bore.map(|b| {
            grounds.extend(b.grounds);
            missing.extend(b.missing);
            b.report
        });
        let mut hot = None;
        let clearance = clearance.map(|c| {
            let bore_stands = bore.as_ref().is_some_and(|b| b.verdict.outcome != Outcome::DoNotReuse);
            let why = self.engine.not_machined.as_deref().filter(|_| bore_stands);
            grounds.extend(barrel::not_machined(why, &c.grounds, &[]));
            grounds.extend(c.grounds);
            missing.extend(c.missing);
            hot = c.hot;
            c.report
        });
        grounds.extend(missing.iter().map(|m| Ground::missing(m)));
        let mut report = CylinderReport {
            number,
            piston,
            bore,
            clearance,
            hot: None,
            findings: unread,
            missing,
            verdict: verdict(&[]),
        };
        grounds.extend(report.together());
        report.verdict = verdict(&grounds);
        Ok((report, hot, kept))
    }

    /// States a value in the report at `at`, and tells the working where it stands.
    fn state(&mut self, value: &Measured, at: &str) -> MeasuredValue {
        state(&mut self.calc, value, at)
    }

    /// Judges a value, given at the temperature of the limit, and puts the decision at `at`.
    fn decide(
        &mut self,
        of: Of,
        value: &Measured,
        limit: &Limit,
        overdue: &[String],
        at: &str,
    ) -> (Decision, Ground) {
        let against = Against {
            lower: limit.lower.as_ref().map(|g| self.calc.given("min", g)),
            upper: limit.upper.as_ref().map(|g| self.calc.given("max", g)),
            tolerance: self.tolerance(limit),
            temperature_c: Some(limit.temperature.value),
            origin: &limit.origin,
            cylinders: &limit.cylinders,
        };
        self.decide_against(of, value, against, overdue, at)
    }

    /// Width of the tolerance that a limit stands for, where the rule asks for it.
    fn tolerance(&mut self, limit: &Limit) -> Option<Figure> {
        let asked = self.rule.rule == Rule::SimpleAcceptanceByRatio;
        asked.then(|| limit.tolerance(&mut self.calc)).flatten()
    }

    fn decide_against(
        &mut self,
        of: Of,
        value: &Measured,
        against: Against<'_>,
        overdue: &[String],
        at: &str,
    ) -> (Decision, Ground) {
        let budget = self.calc.budget(value);
        let judged = Judged { of, value: value.figure, budget: &budget, against, overdue };
        let (decision, figures) = judge(&mut self.calc, &self.rule, &judged);
        self.calc.place(value.figure, || format!("{at}/value_mm"));
        self.calc.place(budget.standard, || format!("{at}/standard_uncertainty_mm"));
        self.calc.place(figures.probability, || format!("{at}/probability_of_conformity"));
        let more = [
            (figures.guard, "guard_band_mm"),
            (figures.rejection_guard, "rejection_guard_band_mm"),
            (figures.ratio, "uncertainty_ratio"),
            (budget.dof, "dof"),
        ];
        for (figure, name) in more {
            if let Some(figure) = figure {
                self.calc.place(figure, || format!("{at}/{name}"));
            }
        }
        let dominant = budget.lines.first().and_then(|line| {
            let source = self.calc.source_of(line.source)?;
            Some(Dominant { source: source.name.clone(), share: line.share.value, path: source.path.clone() })
        });
        let ground = Ground::from_decision(&decision, dominant);
        (decision, ground)
    }

    /// A size, taper or out-of-round at the temperature of its limit.
    fn at_limit(&mut self, value: &Measured, material: usize, limit: &Limit) -> Result<Measured, Error> {
        let t = self.calc.given("t", &limit.temperature).into();
        let eps = self.materials.growth(&mut self.calc, material, &t, &limit.temperature.path)?;
        Ok(self.calc.apply(Grown, [value, &eps]))
    }
}

impl Engine {
    fn from_document(
        engine: &doc::Engine,
        materials: &Materials,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        engine.name.words()?;
        let nominal = engine.bore.nominal.read(&bounds::BORE, warnings)?;
        let bore_nominal = nominal.value;
        let near =
            Bound { label: "nominal piston of this bore", ..bounds::in_bore(&bounds::PISTON, bore_nominal) };
        let bore_length = engine.bore.length.read(&bounds::BORE_LENGTH, warnings)?;
        let profile = engine.bore.target_profile.as_ref();
        let target =
            profile.map(|p| Target::from_document(p, &nominal, &bore_length, warnings)).transpose()?;
        let windows = barrel::Window::from_document(&engine.bore.windows, &bore_length, warnings)?;
        if let doc::SizeRule::At(at) = &engine.reduction.size {
            let depth = bore::read_depth(&at.depth, &bore_length, warnings)?;
            target.as_ref().map_or(Ok(()), |t| t.check_size_at(&depth, &at.depth))?;
            let axis = at.axis.as_ref().map(|a| Ok((a.read(&bounds::ANGLE, warnings)?, a))).transpose()?;
            if let Some((axis, entry)) = axis {
                barrel::clear_of_windows(&windows, &depth, &axis, entry)?;
            }
        }
        engine.piston.record.as_ref().map_or(Ok(()), doc::PistonRecord::check)?;
        let not_machined = engine.bore.may_not_be_machined.as_ref();
        let not_machined = not_machined.map(|n| n.reason.words()).transpose()?.map(str::to_owned);
        let out = Engine {
            cylinders: engine.cylinders.count(1, MOST_CYLINDERS)?,
            bore_nominal,
            nominal: nominal.clone(),
            target,
            windows,
            not_machined,
            bore_length,
            bore_material: materials.find(&engine.bore.material)?,
            piston_nominal: engine.piston.nominal.read(&near, warnings)?.value,
            piston_material: materials.find(&engine.piston.material)?,
            piston_ranges: heights::MaterialRange::from_document(&engine.piston, materials, warnings)?,
            piston_record: engine.piston.record.clone(),
            gauge_point: PistonPlace::from_document(
                &engine.piston.gauge_point.height,
                engine.piston.gauge_point.datum,
                &engine.piston.gauge_point.angle,
                warnings,
            )?,
        };
        heights::check_gauge_point(&out, &engine.piston)?;
        Ok(out)
    }
}

impl PistonPlace {
    fn from_document(
        height: &Entry<crate::quantity::Length>,
        datum: Datum,
        angle: &Entry<crate::quantity::Angle>,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        Ok(PistonPlace {
            height: height.read(&bounds::PISTON_HEIGHT, warnings)?,
            datum,
            angle: angle.read(&bounds::ANGLE, warnings)?,
        })
    }
}

fn block(cylinders: &[CylinderReport]) -> Block {
    let mut counts = BTreeMap::new();
    let mut grounds = Vec::with_capacity(cylinders.len());
    for cylinder in cylinders {
        let outcome = cylinder.verdict.outcome;
        *counts.entry(outcome.word()).or_insert(0) += 1;
        grounds.push(Ground::of_cylinder(cylinder.number, &cylinder.verdict));
        grounds.extend(cylinder.together().into_iter().map(|g| g.within_cylinder(cylinder.number)));
    }
    Block { verdict: verdict(&grounds), counts }
}

fn conventions(rule: &RuleInForce) -> Conventions {
    let banded = (rule.rule == Rule::ExpandedGuardBand).then(|| rule.shares());
    let by_ratio = rule.rule == Rule::SimpleAcceptanceByRatio;
    Conventions {
        reference_temperature_c: REFERENCE_TEMPERATURE_C,
        clearance: "diametral",
        rule: rule.rule,
        at_least: rule.at_least,
        ratio_at_least: by_ratio.then_some(rule.ratio_at_least),
        acceptance_guard: banded.map(|(accept, _)| accept),
        rejection_guard: banded.map(|(_, reject)| reject),
    }
}

/// The limits and the running engine stay within the laws of what they are of, also before anything is read.
fn check_laws(
    engine: &Engine,
    limits: &LimitSets,
    running: Option<&clearance::RunningState>,
    materials: &Materials,
) -> Result<(), Error> {
    for limits in limits.printed() {
        let both = &limits.bench_clearance;
        let of_bore = [&limits.bore_size, &limits.bore_taper, &limits.bore_out_of_round, both];
        for limit in of_bore.into_iter().flatten() {
            materials.check(engine.bore_material, &limit.temperature)?;
        }
        for limit in [&limits.piston_size, both].into_iter().flatten() {
            materials.check(engine.piston_material, &limit.temperature)?;
        }
    }
    running.map_or(Ok(()), |r| r.check_laws(materials, engine.piston_material, engine.bore_material))
}

/// A field that is read for several cylinders warns once.
pub(crate) fn once(warnings: Vec<Warning>) -> Vec<Warning> {
    let mut seen = HashSet::with_capacity(warnings.len());
    warnings.into_iter().filter(|w| seen.insert(w.clone())).collect()
}

/// A value as the report tells it at `at`; the working learns where it stands.
pub(crate) fn state(calc: &mut Calc, value: &Measured, at: &str) -> MeasuredValue {
    let budget = calc.budget(value);
    let coverage = calc.coverage(&budget);
    calc.place(value.figure, || format!("{at}/value_mm"));
    calc.place(budget.standard, || format!("{at}/standard_uncertainty_mm"));
    calc.place(coverage.expanded, || format!("{at}/expanded_uncertainty_mm"));
    calc.place(coverage.factor, || format!("{at}/coverage_factor"));
    if let Some(dof) = budget.dof {
        calc.place(dof, || format!("{at}/dof"));
    }
    let lines = budget_lines(calc, &budget, at, "contribution_mm");
    let dominant =
        lines.first().map(|l| Dominant { source: l.source.clone(), share: l.share, path: l.path.clone() });
    MeasuredValue {
        value_mm: value.value(),
        standard_uncertainty_mm: budget.standard.value,
        expanded_uncertainty_mm: coverage.expanded.value,
        coverage_factor: coverage.factor.value,
        dof: budget.dof.map(|d| d.value),
        budget: lines,
        dominant,
    }
}

/// A budget as the report tells it, with its value at `at` and its contributions under a name with their unit.
pub(crate) fn budget_lines(
    calc: &mut Calc,
    budget: &Budget,
    at: &str,
    contribution: &str,
) -> Vec<BudgetLine> {
    let mut lines = Vec::with_capacity(budget.lines.len());
    for (index, line) in budget.lines.iter().enumerate() {
        let place = |name| [at, "/budget/", &index.to_string(), "/", name].concat();
        calc.place(line.contribution, || place(contribution));
        calc.place(line.share, || place("share"));
        let (source, path) =
            calc.source_of(line.source).map(|s| (s.name.clone(), s.path.clone())).unwrap_or_default();
        lines.push(BudgetLine {
            source,
            contribution_mm: line.contribution.value,
            share: line.share.value,
            path,
        });
    }
    lines
}

/// The verdict of a part: its decisions, then its findings, then what was not read.
fn conclude(grounds: &mut Vec<Ground>, findings: &[Finding], missing: &[String]) -> Verdict {
    grounds.extend(findings.iter().map(Ground::from_finding));
    let all: Vec<Ground> =
        grounds.iter().cloned().chain(missing.iter().map(|m| Ground::missing(m))).collect();
    verdict(&all)
}

/// A decision that cannot be made, and the ground it gives.
fn not_judged(of: Of, limit: &Limit, reason: String) -> (Decision, Ground) {
    let decision = Decision::not_judged(of, limit, reason);
    let ground = Ground::from_decision(&decision, None);
    (decision, ground)
}

fn read_twice<K: crate::job::Kind>(entry: &Entry<K>) -> Error {
    entry.refuse(ErrorKind::Repeated, "this place was read twice; put the readings into one list of repeats")
}
