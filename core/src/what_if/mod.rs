#![doc = include_str!("../../docs/what-if.md")]

pub mod document;
mod report;
mod text;

pub use document::{Vary, WhatIfDocument};
pub use report::{Cell, REPORT_FORMAT, REPORT_VERSION, RefusedRow, WhatIfReport, WhatIfRow};

use crate::Options;
use crate::assess::assess_watched;
use crate::error::{Error, ErrorKind};
use crate::job::decode::{self, Json};
use crate::job::{Entry, Words, check_length, readable};
use crate::progress::{Watch, Work};
use crate::report::Report;
use serde_json::Value;

/// Format name of a what-if document.
pub const FORMAT: &str = "gaugepoint-what-if";
/// Version of the what-if format.
pub const VERSION: u32 = 1;
/// Most combinations of one document.
const MOST_ROWS: usize = 1000;

readable!(WhatIfDocument, FORMAT, VERSION, "what-if");

/// Fields that change in step, each by the entry that names it, and their values step by step.
struct Steps<'d> {
    fields: Vec<&'d Entry<Words>>,
    values: Vec<Vec<&'d Json>>,
}

/// Assesses a job with every combination of values.
///
/// A combination that is refused is a row that says why.
///
/// # Errors
/// What is refused in the job as it is, with its field below `/job`; [`ErrorKind::TooLarge`] for more than 1000 combinations; a field that the job
/// neither has nor could have; a place that no report has, or that holds a list or an object.
pub fn what_if(document: &WhatIfDocument) -> Result<WhatIfReport, Error> {
    what_if_watched(document, Watch::default())
}

/// [`what_if`] with a watcher, who is asked job by job and within each; see [`progress`](crate::progress).
///
/// # Errors
/// As [`what_if`], and [`ErrorKind::Stopped`].
pub fn what_if_watched(document: &WhatIfDocument, watch: Watch<'_>) -> Result<WhatIfReport, Error> {
    let job = &document.job.0;
    let work = Work::new(watch, 1);
    let base = work.part(1, |watch| assessed(job, watch))?;
    let steps = document.vary.iter().enumerate().map(|(k, vary)| Steps::new(k, vary));
    let steps: Vec<Steps<'_>> = steps.collect::<Result<_, _>>()?;
    let fields: Vec<&str> =
        steps.iter().flat_map(|s| &s.fields).map(|field| pointer(field)).collect::<Result<_, _>>()?;
    check_fields(job, &steps)?;
    check_length(&document.show, |show| show)?;
    let count = combinations(&steps)?;
    work.more(count as u64);
    let values = fields.iter().map(|field| job.at(field).map(Json::written)).collect();
    let mut out = WhatIfReport {
        format: REPORT_FORMAT,
        version: REPORT_VERSION,
        library: env!("CARGO_PKG_VERSION"),
        engine: base.engine.name.clone(),
        job: base.job.clone(),
        shown: document.show.iter().map(|show| pointer(show).map(str::to_owned)).collect::<Result<_, _>>()?,
        base: accepted(values, &base, &document.show)?,
        fields: fields.into_iter().map(str::to_owned).collect(),
        rows: Vec::with_capacity(count),
    };
    for k in 0..count {
        out.rows.push(work.part(1, |watch| row(document, &chosen(&steps, k), watch))?);
    }
    check_shown(document, &out)?;
    work.finish()?;
    Ok(out)
}

/// [`what_if`] from JSON to JSON.
///
/// # Errors
/// As [`WhatIfDocument::from_json`] and [`what_if`].
pub fn what_if_json(document: &str) -> Result<String, Error> {
    Ok(what_if(&WhatIfDocument::from_json(document)?)?.to_json())
}

/// [`what_if_json`] for a host whose text is bytes.
///
/// # Errors
/// As [`what_if_json`], and [`ErrorKind::NotUtf8`].
pub fn what_if_json_bytes(document: &[u8]) -> Result<String, Error> {
    what_if_json(decode::text(document)?)
}

impl<'d> Steps<'d> {
    fn new(k: usize, vary: &'d Vary) -> Result<Self, Error> {
        let at = format!("/vary/{k}");
        let refuse =
            |kind, field: &str, reason: &str| Error::new(kind, "", reason).at(&format!("{at}/{field}"));
        check_length(&vary.fields, |field| field)?;
        let fields: Vec<&Entry<Words>> = vary.field.iter().chain(&vary.fields).collect();
        if fields.is_empty() {
            return Err(refuse(
                ErrorKind::MissingField,
                "field",
                "this field, or fields in step, is required",
            ));
        }
        if vary.field.is_some() && !vary.fields.is_empty() {
            return Err(refuse(
                ErrorKind::Contradiction,
                "fields",
                "one field and fields in step exclude each other",
            ));
        }
        if vary.values.is_empty() {
            return Err(refuse(ErrorKind::MissingField, "values", "there is no value to put there"));
        }
        let values = vary.values.iter().enumerate().map(|(i, value)| match &value.0 {
            _ if vary.field.is_some() => Ok(vec![&value.0]),
            Json::List(items) if items.len() == fields.len() => Ok(items.iter().collect()),
            other => {
                let reason = format!("a list of {} values is needed, one for each field", fields.len());
                Err(Error::new(ErrorKind::WrongType, other.brief(), reason).at(&format!("{at}/values/{i}")))
            }
        });
        Ok(Steps { values: values.collect::<Result<_, _>>()?, fields })
    }
}

/// The job as it is, or with one combination.
fn assessed(job: &Json, watch: Watch<'_>) -> Result<Report, Error> {
    let report = decode::job(job).and_then(|job| assess_watched(&job, Options::default(), watch));
    report.map_err(|e| e.below("/job"))
}

/// A JSON Pointer to something within.
fn pointer(entry: &Entry<Words>) -> Result<&str, Error> {
    let words = entry.words()?;
    match words.starts_with('/') {
        true => Ok(words),
        false => {
            Err(entry.refuse(ErrorKind::UnknownName, "a JSON Pointer begins with /: /engine/piston/material"))
        }
    }
}

/// Every field has its place in the job, and none lies within another.
fn check_fields(job: &Json, steps: &[Steps<'_>]) -> Result<(), Error> {
    let mut known: Vec<&str> = Vec::new();
    for field in steps.iter().flat_map(|s| &s.fields) {
        let here = pointer(field)?;
        let within = |a: &str, b: &str| a.strip_prefix(b).is_some_and(|rest| rest.starts_with('/'));
        if known.contains(&here) {
            return Err(field.refuse(ErrorKind::Repeated, "this field is varied twice"));
        }
        if let Some(other) = known.iter().find(|other| within(here, other) || within(other, here)) {
            let reason = format!("one of this field and {other} lies within the other");
            return Err(field.refuse(ErrorKind::Contradiction, reason));
        }
        if !job.clone().put(here, Json::Null) {
            return Err(field.refuse(ErrorKind::UnknownName, "the job has no such place"));
        }
        known.push(here);
    }
    Ok(())
}

/// How many combinations there are.
fn combinations(steps: &[Steps<'_>]) -> Result<usize, Error> {
    let missing = Error::new(ErrorKind::MissingField, "vary", "nothing is varied").at("/vary");
    let count = steps.iter().try_fold(1_usize, |n, s| n.checked_mul(s.values.len())).unwrap_or(usize::MAX);
    match count {
        _ if steps.is_empty() => Err(missing),
        1..=MOST_ROWS => Ok(count),
        _ => {
            let reason = format!("there are more than {MOST_ROWS} combinations");
            Err(Error::new(ErrorKind::TooLarge, "", reason).at("/vary"))
        }
    }
}

/// The fields with their values in combination `k`; the last varies fastest.
fn chosen<'s, 'd>(steps: &'s [Steps<'d>], mut k: usize) -> Vec<(&'d Entry<Words>, &'d Json)> {
    let mut out: Vec<(&'d Entry<Words>, &'d Json)> = Vec::new();
    for step in steps.iter().rev() {
        let values = step.values.get(k % step.values.len()).into_iter().flatten().copied();
        out.extend(step.fields.iter().copied().zip(values).collect::<Vec<_>>().into_iter().rev());
        k /= step.values.len();
    }
    out.reverse();
    out
}

/// One combination, put into the job and assessed.
fn row(
    document: &WhatIfDocument,
    chosen: &[(&Entry<Words>, &Json)],
    watch: Watch<'_>,
) -> Result<WhatIfRow, Error> {
    let mut job = document.job.0.clone();
    for (field, value) in chosen {
        job.put(pointer(field)?, (*value).clone());
    }
    let values = chosen.iter().map(|(_, value)| Some(value.written())).collect();
    let error = match assessed(&job, watch) {
        Ok(report) => return accepted(values, &report, &document.show),
        Err(error) if error.kind() == ErrorKind::Stopped => return Err(error),
        Err(error) => error,
    };
    if error.kind() == ErrorKind::UnknownField
        && let Some((field, _)) =
            chosen.iter().find(|(f, _)| error.field() == format!("/job{}", f.text().trim()))
    {
        return Err(error.moved(field.path().to_owned()));
    }
    Ok(WhatIfRow {
        values,
        shown: vec![None; document.show.len()],
        outcome: None,
        cylinders: Vec::new(),
        refused: Some(RefusedRow {
            kind: error.kind().name(),
            field: error.field().to_owned(),
            refused: error.refused().to_owned(),
            reason: error.reason().to_owned(),
            did_you_mean: error.did_you_mean().map(str::to_owned),
        }),
    })
}

fn accepted(values: Vec<Option<String>>, report: &Report, show: &[Entry<Words>]) -> Result<WhatIfRow, Error> {
    // a report holds finite numbers, texts and lists only: nothing in it can fail to be written
    let tree = serde_json::to_value(report).unwrap_or_default();
    Ok(WhatIfRow {
        values,
        shown: show.iter().map(|show| cell(&tree, show)).collect::<Result<_, _>>()?,
        outcome: Some(report.block.verdict.outcome),
        cylinders: report.cylinders.iter().map(|c| c.verdict.outcome).collect(),
        refused: None,
    })
}

/// What stands at a place of a report.
fn cell(report: &Value, show: &Entry<Words>) -> Result<Option<Cell>, Error> {
    match report.pointer(pointer(show)?) {
        None | Some(Value::Null) => Ok(None),
        Some(Value::Bool(truth)) => Ok(Some(Cell::Truth(*truth))),
        Some(Value::String(word)) => Ok(Some(Cell::Word(word.clone()))),
        Some(Value::Number(number)) => {
            let whole = number.as_u64().map(Cell::Whole);
            Ok(whole.or(number.as_f64().map(Cell::Number)))
        }
        Some(Value::Array(_) | Value::Object(_)) => Err(show
            .refuse(ErrorKind::WrongType, "a list or an object stands there; name a number or a word in it")),
    }
}

/// What is shown stands in one report at least.
fn check_shown(document: &WhatIfDocument, report: &WhatIfReport) -> Result<(), Error> {
    let there = |k: usize| {
        let mut rows = core::iter::once(&report.base).chain(&report.rows);
        rows.any(|row| row.shown.get(k).is_some_and(Option::is_some))
    };
    match document.show.iter().enumerate().find(|(k, _)| !there(*k)) {
        Some((_, show)) => Err(show.refuse(ErrorKind::UnknownName, "no report has this place")),
        None => Ok(()),
    }
}
