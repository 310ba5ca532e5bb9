//! A document with its report: evaluated once, then asked.

use crate::decision::number_of;
use crate::error::{Failure, GaugepointError};
use crate::guard::{kept, plain, status};
use crate::handle;
use crate::progress::{GaugepointWatcher, watched};
use crate::record::{Record, record};
use crate::signs::number;
use crate::text::{bytes, flag, give};
use core::ffi::{c_char, c_void};
use core::ptr::null_mut;
use gaugepoint::budget::{Budget, BudgetReport};
use gaugepoint::decision::{Decision, Of, Outcome};
use gaugepoint::fit::{FitDocument, FitReport, fit};
use gaugepoint::measure::{MeasurementDocument, MeasurementReport, measure_watched};
use gaugepoint::progress::Watch;
use gaugepoint::report::CylinderReport;
use gaugepoint::revisit::{RevisitDocument, RevisitReport};
use gaugepoint::sheet::{Sheet, SheetReport, check};
use gaugepoint::stack::{StackDocument, StackReport};
use gaugepoint::what_if::{WhatIfDocument, WhatIfReport, what_if_watched};
use gaugepoint::{Document, ErrorKind, Options, Report, assess_watched};

/// What a document is.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointDocument {
    /// A job.
    Job = 1,
    /// A printed sheet.
    Sheet = 2,
    /// A measurement.
    Measurement = 3,
    /// A hot fit.
    Fit = 4,
    /// A stack.
    Stack = 5,
    /// A budget of uncertainty.
    Budget = 6,
    /// Two jobs of one engine.
    Revisit = 7,
    /// A job with other values.
    WhatIf = 8,
}

/// How a report is written.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointFormat {
    /// JSON on one line.
    Json = 1,
    /// Text for a reader, of at most 100 columns where a word or a table does not need more.
    Text = 2,
    /// Markdown.
    Markdown = 3,
}

/// What a verdict says, from the best to the worst.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointOutcome {
    /// It goes back.
    Reuse = 1,
    /// Something that is needed was not read.
    Incomplete = 2,
    /// Neither conformity nor the opposite is proven, or there is nothing to judge by.
    NotProven = 3,
    /// A damage whose cause is not known.
    FindTheCauseFirst = 4,
    /// It does not go back.
    DoNotReuse = 5,
}

/// What a decision is of.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointJudged {
    /// Piston at its gauge point.
    PistonSize = 1,
    /// Bore by the size rule.
    BoreSize = 2,
    /// Taper of the bore.
    BoreTaper = 3,
    /// Out-of-round of the bore.
    BoreOutOfRound = 4,
    /// Clearance on the bench.
    BenchClearance = 5,
    /// Clearance on the bench at the smallest place that was read.
    SmallestClearance = 6,
    /// Margin against the reference case, hottest piston and coldest bore.
    RunningMarginTight = 7,
    /// Margin against the reference case, coldest piston and hottest bore.
    RunningMarginLoose = 8,
    /// Clearance of a piston to hand in a bore.
    MatchedClearance = 9,
    /// Clearance after the work.
    FinishedClearance = 10,
    /// Bore after the work, against the size it was machined to.
    FinishedSize = 11,
    /// End gap of a ring after filing.
    RingGap = 12,
    /// A value that belongs to no job.
    Value = 13,
}

/// Sentences of the report on a job.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointLines {
    /// What to take care of. Show them with the results.
    Cautions = 1,
    /// What is odd, each with its field.
    Warnings = 2,
    /// Why the verdict on the engine is what it is, the weightiest first.
    Reasons = 3,
    /// Why the verdict on a cylinder is what it is, the weightiest first.
    CylinderReasons = 4,
    /// What of a cylinder was not read.
    CylinderMissing = 5,
    /// Why each decision on a cylinder is what it is, in the order of the decisions.
    CylinderDecisions = 6,
}

/// A document with its report, made by gaugepoint_report_new. It never changes.
#[derive(Debug)]
pub struct GaugepointReport(Made);

#[derive(Debug)]
enum Made {
    Job(Box<Report>),
    Sheet(SheetReport),
    Measurement(MeasurementReport),
    Fit(Box<FitReport>),
    Stack(Box<StackReport>),
    Budget(BudgetReport),
    Revisit(RevisitReport),
    WhatIf(WhatIfReport),
}

/// What a job comes to; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointJobVerdict {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// A GaugepointOutcome: that of the engine, the worst of its cylinders.
    pub outcome: i32,
    /// 0.
    pub reserved: i32,
    /// Cylinders of the engine.
    pub cylinder_count: usize,
    /// Cylinders that go back.
    pub reuse_count: usize,
    /// Cylinders of which something was not read.
    pub incomplete_count: usize,
    /// Cylinders of which nothing is proven.
    pub not_proven_count: usize,
    /// Cylinders with a damage whose cause is not known.
    pub find_the_cause_first_count: usize,
    /// Cylinders that do not go back.
    pub do_not_reuse_count: usize,
}

// SAFETY: a size, two int32_t, sizes
unsafe impl Record for GaugepointJobVerdict {
    const SMALLEST: usize = 64;
}

/// What a cylinder of a job comes to; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointCylinderVerdict {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Number of the cylinder.
    pub number: i32,
    /// A GaugepointOutcome: that of the cylinder.
    pub outcome: i32,
    /// 1 when there is a verdict on its piston, else 0.
    pub has_piston: i32,
    /// A GaugepointOutcome: that of its piston; 0 when not given.
    pub piston_outcome: i32,
    /// 1 when there is a verdict on its bore, else 0.
    pub has_bore: i32,
    /// A GaugepointOutcome: that of its bore; 0 when not given.
    pub bore_outcome: i32,
    /// 1 when a measured value decided, else 0.
    pub has_decided_by: i32,
    /// A GaugepointJudged: the value that decided; 0 when not given.
    pub decided_by: i32,
    /// Decisions on it.
    pub decision_count: usize,
    /// What was not read of it.
    pub missing_count: usize,
}

// SAFETY: a size, eight int32_t, sizes
unsafe impl Record for GaugepointCylinderVerdict {
    const SMALLEST: usize = 56;
}

/// One value of a job against its limits; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointJobDecision {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// A GaugepointJudged: what it is of.
    pub judged: i32,
    /// A GaugepointConformity.
    pub result: i32,
    /// 1 when `value_mm`, its uncertainty and degrees of freedom are given, else 0.
    pub has_value: i32,
    /// 1 when `reference_temperature_c` is given, else 0.
    pub has_reference_temperature: i32,
    /// 1 when `lower_mm` is given, else 0.
    pub has_lower: i32,
    /// 1 when `upper_mm` is given, else 0.
    pub has_upper: i32,
    /// 1 when `guard_band_mm` is given, else 0.
    pub has_guard_band: i32,
    /// 1 when `rejection_guard_band_mm` is given, else 0.
    pub has_rejection_guard_band: i32,
    /// 1 when `uncertainty_ratio` is given, else 0.
    pub has_uncertainty_ratio: i32,
    /// 1 when `probability_of_conformity` is given, else 0.
    pub has_probability: i32,
    /// The value at the reference temperature of its limit.
    pub value_mm: f64,
    /// Its standard uncertainty.
    pub standard_uncertainty_mm: f64,
    /// Its effective degrees of freedom; INFINITY when they are infinite.
    pub dof: f64,
    /// Reference temperature of the limit.
    pub reference_temperature_c: f64,
    /// Lower limit.
    pub lower_mm: f64,
    /// Upper limit.
    pub upper_mm: f64,
    /// What a value must lie inside the limits to conform; below 0 it may lie outside.
    pub guard_band_mm: f64,
    /// What a value must lie outside the limits to not conform; below 0 it may lie inside.
    pub rejection_guard_band_mm: f64,
    /// Tolerance over the uncertainty interval 2 U.
    pub uncertainty_ratio: f64,
    /// Probability that the true value conforms.
    pub probability_of_conformity: f64,
}

// SAFETY: a size, ten int32_t, doubles
unsafe impl Record for GaugepointJobDecision {
    const SMALLEST: usize = 128;
}

/// Evaluates a document, once, and gives its report as a handle, to be freed by gaugepoint_report_free.
///
/// `kind` is a GaugepointDocument and `document` a document of that kind in JSON, of `document_length` bytes. `with_working` is 1 to have the
/// working of every number in the report, with a job, a measurement, a fit or a stack; else 0. Readings of a job that are missing give a
/// report that says what is missing; anything that is refused gives a status and no report. Trials, and many combinations of a what-if, take
/// their time.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_report_new(
    kind: i32,
    document: *const c_char,
    document_length: usize,
    with_working: i32,
    report: *mut *mut GaugepointReport,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        gaugepoint_report_new_watched(
            kind,
            document,
            document_length,
            with_working,
            None,
            null_mut(),
            report,
            error,
        )
    }
}

/// gaugepoint_report_new with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_report_new_watched(
    kind: i32,
    document: *const c_char,
    document_length: usize,
    with_working: i32,
    watcher: GaugepointWatcher,
    user: *mut c_void,
    report: *mut *mut GaugepointReport,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, kept("report", report), || {
            let document = bytes("document", document, document_length)?;
            let working = flag("with_working", with_working)?;
            let made = |watch: Watch<'_>| Made::of(kind, document, working, watch);
            Ok(handle::made(GaugepointReport(watched(watcher, user, made)?)))
        })
    }
}

/// Frees a report. NULL is fine.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_report_free(report: *mut GaugepointReport) {
    // SAFETY: the contract of the header
    plain((), || unsafe { handle::freed(report) });
}

/// Writes a report.
///
/// `format` is a GaugepointFormat: every report is written as JSON, all but that on a sheet as text, those on a job, a stack, a revisit and a
/// what-if as Markdown; another is refused. `text` gets the text, to be freed by gaugepoint_text_free, and `text_length` its length in bytes
/// without the NUL that ends it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_report_text(
    report: *const GaugepointReport,
    format: i32,
    text: *mut *mut c_char,
    text_length: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (kept("text", text), kept("text_length", text_length)), || {
            let text = handle::lent("report", report)?.0.text(format)?;
            Ok((give(&text)?, text.len()))
        })
    }
}

/// What a job comes to. The report on another document is refused with GAUGEPOINT_STATUS_UNKNOWN_FORMAT.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_report_job(
    report: *const GaugepointReport,
    out: *mut GaugepointJobVerdict,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, record("out", out), || Ok(job_of(report)?.into())) }
}

/// What a cylinder of a job comes to; `cylinder` is its place in the report, from 0. The report on another document is refused.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_report_cylinder(
    report: *const GaugepointReport,
    cylinder: usize,
    out: *mut GaugepointCylinderVerdict,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let job = job_of(report)?;
            verdict_of(at("cylinder", &job.cylinders, cylinder)?)
        })
    }
}

/// One decision on a cylinder of a job: piston, bore and clearance in the order of the work. `cylinder` is its place in the report, `decision` that
/// of the decision, both from 0. The report on another document is refused.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_report_decision(
    report: *const GaugepointReport,
    cylinder: usize,
    decision: usize,
    out: *mut GaugepointJobDecision,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let job = job_of(report)?;
            let mut decisions = at("cylinder", &job.cylinders, cylinder)?.decisions();
            Ok(decisions.nth(decision).ok_or_else(|| no_such("decision"))?.into())
        })
    }
}

/// One sentence of the report on a job: call with `index` 0, 1, 2 ... until it fails with GAUGEPOINT_STATUS_OUT_OF_RANGE.
///
/// `lines` is a GaugepointLines. `cylinder` is the place of the cylinder in the report, from 0, and 0 with lines on the engine. `text` gets the
/// sentence, to be freed by gaugepoint_text_free, and `text_length` its length in bytes without the NUL that ends it. The report on another
/// document is refused.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_report_line(
    report: *const GaugepointReport,
    lines: i32,
    cylinder: usize,
    index: usize,
    text: *mut *mut c_char,
    text_length: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (kept("text", text), kept("text_length", text_length)), || {
            let line = line(job_of(report)?, lines, cylinder, index)?;
            Ok((give(&line)?, line.len()))
        })
    }
}

/// # Safety
/// As [`handle::lent`].
unsafe fn job_of<'a>(report: *const GaugepointReport) -> Result<&'a Report, Failure> {
    // SAFETY: the caller's promise
    unsafe { handle::lent("report", report) }?.0.job()
}

impl Made {
    fn of(kind: i32, document: &[u8], working: bool, watch: Watch<'_>) -> Result<Self, Failure> {
        let options = Options { working };
        if working && !matches!(kind, 1 | 3 | 4 | 5) && (1..=8).contains(&kind) {
            let reason = "the report on this document has no working";
            return Err(Failure::refused(ErrorKind::Contradiction, "with_working", reason));
        }
        Ok(match kind {
            1 => Made::Job(Box::new(assess_watched(&Document::from_json_bytes(document)?, options, watch)?)),
            2 => Made::Sheet(check(&Sheet::from_json_bytes(document)?)),
            3 => {
                let document = MeasurementDocument::from_json_bytes(document)?;
                Made::Measurement(measure_watched(&document, options, watch)?)
            }
            4 => Made::Fit(Box::new(fit(&FitDocument::from_json_bytes(document)?, options)?)),
            5 => Made::Stack(Box::new(
                StackDocument::from_json_bytes(document)?.evaluate_watched(options, watch)?,
            )),
            6 => Made::Budget(Budget::from_json_bytes(document)?.evaluate_watched(watch)?),
            7 => Made::Revisit(RevisitDocument::from_json_bytes(document)?.evaluate()?),
            8 => Made::WhatIf(what_if_watched(&WhatIfDocument::from_json_bytes(document)?, watch)?),
            other => return Err(Failure::choice("kind", other, "1, 2, 3, 4, 5, 6, 7, 8")),
        })
    }

    fn text(&self, format: i32) -> Result<String, Failure> {
        const JSON: i32 = GaugepointFormat::Json as i32;
        const TEXT: i32 = GaugepointFormat::Text as i32;
        const MARKDOWN: i32 = GaugepointFormat::Markdown as i32;
        Ok(match (self, format) {
            (Made::Job(report), JSON) => report.to_json(),
            (Made::Job(report), TEXT) => report.to_text(),
            (Made::Job(report), MARKDOWN) => report.to_markdown(),
            (Made::Sheet(report), JSON) => report.to_json(),
            (Made::Measurement(report), JSON) => report.to_json(),
            (Made::Measurement(report), TEXT) => report.to_text(),
            (Made::Fit(report), JSON) => report.to_json(),
            (Made::Fit(report), TEXT) => report.to_text(),
            (Made::Stack(report), JSON) => report.to_json(),
            (Made::Stack(report), TEXT) => report.to_text(),
            (Made::Stack(report), MARKDOWN) => report.to_markdown(),
            (Made::Budget(report), JSON) => report.to_json(),
            (Made::Budget(report), TEXT) => report.to_text(),
            (Made::Revisit(report), JSON) => report.to_json(),
            (Made::Revisit(report), TEXT) => report.to_text(),
            (Made::Revisit(report), MARKDOWN) => report.to_markdown(),
            (Made::WhatIf(report), JSON) => report.to_json(),
            (Made::WhatIf(report), TEXT) => report.to_text(),
            (Made::WhatIf(report), MARKDOWN) => report.to_markdown(),
            (Made::Sheet(_), _) => return Err(Failure::choice("format", format, "1")),
            (Made::Measurement(_) | Made::Fit(_) | Made::Budget(_), _) => {
                return Err(Failure::choice("format", format, "1, 2"));
            }
            _ => return Err(Failure::choice("format", format, "1, 2, 3")),
        })
    }

    fn job(&self) -> Result<&Report, Failure> {
        match self {
            Made::Job(report) => Ok(report),
            _ => Err(Failure::refused(ErrorKind::UnknownFormat, "report", "it is not the report on a job")),
        }
    }
}

fn no_such(field: &'static str) -> Failure {
    Failure::refused(ErrorKind::OutOfRange, field, "there are not so many")
}

fn at<'a, T>(field: &'static str, all: &'a [T], index: usize) -> Result<&'a T, Failure> {
    all.get(index).ok_or_else(|| no_such(field))
}

fn line(job: &Report, lines: i32, cylinder: usize, index: usize) -> Result<String, Failure> {
    if matches!(lines, 1..=3) && cylinder != 0 {
        let reason = "these lines are on the engine: 0 is needed";
        return Err(Failure::refused(ErrorKind::OutOfRange, "cylinder", reason));
    }
    let of = || at("cylinder", &job.cylinders, cylinder);
    let line = match lines {
        1 => job.cautions.get(index).cloned(),
        2 => job.warnings.get(index).map(|w| format!("{} ({})", w.text, w.path)),
        3 => job.block.verdict.reasons.get(index).cloned(),
        4 => of()?.verdict.reasons.get(index).cloned(),
        5 => of()?.missing.get(index).cloned(),
        6 => of()?.decisions().nth(index).map(|d| d.reason.clone()),
        other => return Err(Failure::choice("lines", other, "1, 2, 3, 4, 5, 6")),
    };
    line.ok_or_else(|| no_such("index"))
}

fn outcome(of: Outcome) -> i32 {
    number(Outcome::ALL, of)
}

impl From<&Report> for GaugepointJobVerdict {
    fn from(job: &Report) -> Self {
        let count = |of: Outcome| job.cylinders.iter().filter(|c| c.verdict.outcome == of).count();
        GaugepointJobVerdict {
            struct_size: size_of::<Self>(),
            outcome: outcome(job.block.verdict.outcome),
            reserved: 0,
            cylinder_count: job.cylinders.len(),
            reuse_count: count(Outcome::Reuse),
            incomplete_count: count(Outcome::Incomplete),
            not_proven_count: count(Outcome::NotProven),
            find_the_cause_first_count: count(Outcome::FindTheCause),
            do_not_reuse_count: count(Outcome::DoNotReuse),
        }
    }
}

fn verdict_of(cylinder: &CylinderReport) -> Result<GaugepointCylinderVerdict, Failure> {
    let piston = cylinder.piston.as_ref().map(|p| outcome(p.verdict.outcome));
    let bore = cylinder.bore.as_ref().map(|b| outcome(b.verdict.outcome));
    let decided_by = cylinder.verdict.decided_by.map(|of| number(Of::ALL, of));
    Ok(GaugepointCylinderVerdict {
        struct_size: size_of::<GaugepointCylinderVerdict>(),
        number: i32::try_from(cylinder.number).map_err(|_| no_such("cylinder"))?,
        outcome: outcome(cylinder.verdict.outcome),
        has_piston: piston.is_some().into(),
        piston_outcome: piston.unwrap_or(0),
        has_bore: bore.is_some().into(),
        bore_outcome: bore.unwrap_or(0),
        has_decided_by: decided_by.is_some().into(),
        decided_by: decided_by.unwrap_or(0),
        decision_count: cylinder.decisions().count(),
        missing_count: cylinder.missing.len(),
    })
}

impl From<&Decision> for GaugepointJobDecision {
    fn from(decision: &Decision) -> Self {
        let has = |x: Option<f64>| i32::from(x.is_some());
        let or_nan = |x: Option<f64>| x.unwrap_or(f64::NAN);
        let dof = decision.dof.or(decision.value_mm.map(|_| f64::INFINITY));
        GaugepointJobDecision {
            struct_size: size_of::<Self>(),
            judged: number(Of::ALL, decision.of),
            result: number_of(decision.result) as i32,
            has_value: has(decision.value_mm),
            has_reference_temperature: has(decision.reference_temperature_c),
            has_lower: has(decision.lower_mm),
            has_upper: has(decision.upper_mm),
            has_guard_band: has(decision.guard_band_mm),
            has_rejection_guard_band: has(decision.rejection_guard_band_mm),
            has_uncertainty_ratio: has(decision.uncertainty_ratio),
            has_probability: has(decision.probability_of_conformity),
            value_mm: or_nan(decision.value_mm),
            standard_uncertainty_mm: or_nan(decision.standard_uncertainty_mm),
            dof: or_nan(dof),
            reference_temperature_c: or_nan(decision.reference_temperature_c),
            lower_mm: or_nan(decision.lower_mm),
            upper_mm: or_nan(decision.upper_mm),
            guard_band_mm: or_nan(decision.guard_band_mm),
            rejection_guard_band_mm: or_nan(decision.rejection_guard_band_mm),
            uncertainty_ratio: or_nan(decision.uncertainty_ratio),
            probability_of_conformity: or_nan(decision.probability_of_conformity),
        }
    }
}
