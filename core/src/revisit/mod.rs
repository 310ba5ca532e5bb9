#![doc = include_str!("../../docs/revisit.md")]

mod change;
pub mod document;
mod report;
mod suspicious;
mod text;

pub use document::{Hours, RevisitDocument};
pub use report::{
    BorePlaceChange, Change, CylinderChange, Forecast, HoursReport, PistonPlaceChange, REPORT_FORMAT,
    REPORT_VERSION, RevisitReport,
};

use crate::Options;
use crate::assess::{assess, once};
use crate::bounds;
use crate::decision::{Decision, Of};
use crate::error::{Error, ErrorKind};
use crate::job::document::{self as doc, PistonState, SizeRule};
use crate::job::{self, Document, Entry, Numeric, Warning, readable};
use crate::report::{CylinderReport, PistonReport, PistonSizeReport, Report};
use crate::shape::{one_diameter, same};
use change::{Lasting, Pair, Run};
use jiff::civil;

/// Format name of a revisit.
pub const FORMAT: &str = "gaugepoint-revisit";
/// Version of the revisit format.
pub const VERSION: u32 = 1;

/// Most hours of a day.
const HOURS_OF_A_DAY: f64 = 24.0;

readable!(RevisitDocument, FORMAT, VERSION, "revisit");

impl RevisitDocument {
    /// Compares both jobs: [`revisit`].
    ///
    /// # Errors
    /// As [`revisit`]; the error names the field by its JSON Pointer.
    pub fn evaluate(&self) -> Result<RevisitReport, Error> {
        revisit(&self.previous.0, &self.now.0, &self.hours)
    }
}

/// Compares two jobs of one engine: what changed, how fast, when limits are reached, and what is suspicious.
///
/// # Errors
/// What is refused in either job, with its field below `/previous` or `/now`, and below `/hours`; [`ErrorKind::Contradiction`] for engines of
/// other names or numbers of cylinders and for more hours than lie between the visits; [`ErrorKind::OutOfOrder`] when `previous` is the later.
pub fn revisit(previous: &Document, now: &Document, hours: &Hours) -> Result<RevisitReport, Error> {
    let assessed = |job: &Document, at: &str| {
        let version = job.version.count(job::VERSION, job::VERSION);
        version.and_then(|_| assess(job, Options::default())).map_err(|e| e.below(at))
    };
    let reports = [assessed(previous, "/previous")?, assessed(now, "/now")?];
    let documents = [previous, now];
    check_engine(&documents, &reports)?;
    let mut warnings = Vec::new();
    let run = hours.read(dates(&documents)?, &mut warnings)?;
    let lasting = Lasting::new(&previous.gauges, &now.gauges);
    let visits = Visits { documents, reports: &reports, lasting: &lasting, run };
    let cylinders: Vec<CylinderChange> =
        (0..reports[1].cylinders.len()).map(|k| visits.cylinder(k)).collect();
    let suspicious = suspicious::all(&visits, &cylinders);
    for (report, at) in reports.iter().zip(["/previous", "/now"]) {
        let below = |w: &Warning| Warning { path: format!("{at}{}", w.path), ..w.clone() };
        warnings.extend(report.warnings.iter().map(below));
    }
    Ok(RevisitReport {
        format: REPORT_FORMAT,
        version: REPORT_VERSION,
        library: env!("CARGO_PKG_VERSION"),
        engine: reports[1].engine.name.clone(),
        previous: reports[0].job.clone(),
        now: reports[1].job.clone(),
        hours: HoursReport { run_h: run.hours, standard_uncertainty_h: run.standard },
        same_gauges: lasting.gauges.clone(),
        cylinders,
        suspicious,
        warnings: once(warnings),
    })
}

/// [`revisit`] from JSON to JSON.
///
/// # Errors
/// As [`RevisitDocument::from_json`] and [`revisit`].
pub fn revisit_json(document: &str) -> Result<String, Error> {
    Ok(RevisitDocument::from_json(document)?.evaluate()?.to_json())
}

/// [`revisit_json`] for a host whose text is bytes.
///
/// # Errors
/// As [`revisit_json`], and [`ErrorKind::NotUtf8`].
pub fn revisit_json_bytes(document: &[u8]) -> Result<String, Error> {
    Ok(RevisitDocument::from_json_bytes(document)?.evaluate()?.to_json())
}

impl Hours {
    fn read(&self, [from, to]: [civil::Date; 2], warnings: &mut Vec<Warning>) -> Result<Run, Error> {
        let run = self.run.read(&bounds::RUN, warnings).map_err(|e| e.at("/hours/run"))?;
        let error = self.permissible_error.read(&bounds::RUN_ERROR, warnings);
        let error = error.map_err(|e| e.at("/hours/permissible_error"))?;
        if error.value >= run.value {
            let reason = format!("the error is not smaller than the hours themselves, {}", run.text);
            let error = self.permissible_error.refuse(ErrorKind::Contradiction, reason);
            return Err(error.at("/hours/permissible_error"));
        }
        // both days count
        let days = (to - from).get_days() + 1;
        if run.value - error.value > HOURS_OF_A_DAY * f64::from(days) {
            let reason = format!("from {from} to {to} there are {days} days, of 24 h each");
            return Err(self.run.refuse(ErrorKind::Contradiction, reason).at("/hours/run"));
        }
        // a rectangular distribution: JCGM 100:2008, 4.3.7
        Ok(Run { hours: run.value, standard: error.value / 3.0_f64.sqrt() })
    }
}

/// Both jobs are of one engine.
fn check_engine([previous, now]: &[&Document; 2], reports: &[Report; 2]) -> Result<(), Error> {
    let [before, after] = reports;
    if before.engine.name != after.engine.name {
        let reason = format!("the previous job is of another engine, {}", before.engine.name);
        return Err(now
            .engine
            .name
            .refuse(ErrorKind::Contradiction, reason)
            .moved("/now/engine/name".to_owned()));
    }
    if before.cylinders.len() != after.cylinders.len() {
        let reason = format!("the engine of the previous job has {}", previous.engine.cylinders.text());
        let error = now.engine.cylinders.refuse(ErrorKind::Contradiction, reason);
        return Err(error.moved("/now/engine/cylinders".to_owned()));
    }
    Ok(())
}

/// The days of both jobs, in order.
fn dates([previous, now]: &[&Document; 2]) -> Result<[civil::Date; 2], Error> {
    let [from, to] = [previous.job.date.date()?, now.job.date.date()?];
    if to < from {
        let reason = format!("the previous job is the later one: this job is of {to}");
        let error = previous.job.date.refuse(ErrorKind::OutOfOrder, reason);
        return Err(error.moved("/previous/job/date".to_owned()));
    }
    Ok([from, to])
}

/// Both visits, the earlier first.
struct Visits<'v> {
    documents: [&'v Document; 2],
    reports: &'v [Report; 2],
    lasting: &'v Lasting,
    run: Run,
}

/// The number of a field of a document that was accepted.
fn number<K: Numeric>(entry: &Entry<K>) -> f64 {
    K::number(entry.text()).unwrap_or(f64::NAN)
}

impl Visits<'_> {
    /// Is something of the documents the same in both?
    fn unchanged<T>(&self, of: fn(&Document) -> T, same: impl Fn(T, T) -> bool) -> bool {
        same(of(self.documents[0]), of(self.documents[1]))
    }

    fn same_bore_nominal(&self) -> bool {
        self.unchanged(|d| number(&d.engine.bore.nominal), same)
    }

    fn same_piston_nominal(&self) -> bool {
        self.unchanged(|d| number(&d.engine.piston.nominal), same)
    }

    fn same_piston_material(&self) -> bool {
        self.unchanged(|d| d.engine.piston.material.text().trim().to_owned(), |a, b| a == b)
    }

    fn same_gauge_point(&self) -> bool {
        let point = |d: &Document| {
            let p = &d.engine.piston.gauge_point;
            (number(&p.height), p.datum, number(&p.angle))
        };
        self.unchanged(point, |a, b| same(a.0, b.0) && a.1 == b.1 && same(a.2, b.2))
    }

    fn same_size_rule(&self) -> bool {
        let rule = |d: &Document| match &d.engine.reduction.size {
            SizeRule::At(at) => {
                // without an axis it is the mean over them
                (3, number(&at.depth), at.axis.as_ref().map_or(-1.0, number))
            }
            SizeRule::Largest => (0, 0.0, 0.0),
            SizeRule::Mean => (1, 0.0, 0.0),
            SizeRule::SmallestWear => (2, 0.0, 0.0),
        };
        self.unchanged(rule, |a, b| a.0 == b.0 && same(a.1, b.1) && same(a.2, b.2))
    }

    /// What a document says of a cylinder.
    fn entries(&self, number: u32) -> [Option<&doc::Cylinder>; 2] {
        self.documents.map(|d| d.cylinders.iter().find(|c| c.number.count(number, number).is_ok()))
    }

    /// Where this job has a cylinder.
    fn place(&self, number: u32) -> String {
        let mut cylinders = self.documents[1].cylinders.iter();
        let place = cylinders.position(|c| c.number.count(number, number).is_ok());
        place.map_or_else(|| "/now/cylinders".to_owned(), |k| format!("/now/cylinders/{k}"))
    }

    fn bore_nominal(&self) -> f64 {
        number(&self.documents[1].engine.bore.nominal)
    }

    fn change(&self, pair: &Pair<'_>) -> Change {
        pair.change(self.lasting, self.run, self.bore_nominal())
    }

    fn cylinder(&self, index: usize) -> CylinderChange {
        let [before, after] = self.reports.each_ref().map(|r| r.cylinders.get(index));
        #[expect(clippy::cast_possible_truncation, reason = "an engine has few cylinders")]
        let number = index as u32 + 1;
        let mut out = CylinderChange {
            number,
            bore_places: Vec::new(),
            bore_size: None,
            piston_places: Vec::new(),
            bench_clearance: None,
            forecasts: Vec::new(),
            missing: Vec::new(),
        };
        if let (Some(before), Some(after)) = (before, after) {
            let bore = self.bore(before, after, &mut out);
            let piston = self.piston(before, after, &mut out);
            self.clearance(before, after, [bore, piston], &mut out);
        }
        out
    }

    /// The changes of the bore; whether its size could be compared.
    fn bore(&self, before: &CylinderReport, after: &CylinderReport, out: &mut CylinderChange) -> bool {
        let clamping = self.entries(out.number).map(|c| c?.bore.as_ref().map(|b| b.clamping));
        let (Some(previous), Some(now)) = (&before.bore, &after.bore) else {
            out.missing.push(not_read("bore", before.bore.is_some()));
            return false;
        };
        if !self.same_bore_nominal() {
            out.missing.push("bore: its nominal size changed, so it was machined or renewed".to_owned());
            return false;
        }
        if clamping[0] != clamping[1] {
            let words = clamping.map(|c| c.map_or_else(String::new, |c| c.spoken()));
            out.missing.push(format!("bore: it was read {} before and {} now", words[0], words[1]));
            return false;
        }
        for place in &now.places {
            let here = |p: &&crate::report::BorePlaceReport| {
                same(p.depth_mm, place.depth_mm) && one_diameter(p.axis_deg, place.axis_deg)
            };
            match previous.places.iter().find(here) {
                Some(earlier) => out.bore_places.push(BorePlaceChange {
                    depth_mm: place.depth_mm,
                    axis_deg: place.axis_deg,
                    change: self.change(&Pair { previous: &earlier.size, now: &place.size }),
                }),
                None => out.missing.push(format!(
                    "bore at depth {} mm, axis {} deg: not read before",
                    place.depth_mm, place.axis_deg
                )),
            }
        }
        let why = match out.bore_places.len() {
            _ if !self.same_size_rule() => "its rule changed",
            both if both != now.places.len() || both != previous.places.len() => {
                "it was read at other places"
            }
            _ => "",
        };
        if !why.is_empty() {
            out.missing.push(format!("bore size: {why}"));
            return false;
        }
        let (Some(previous), Some(now_size)) = (&previous.size, &now.size) else {
            out.missing.push(not_read("bore size", previous.size.is_some()));
            return false;
        };
        let pair = Pair { previous, now: now_size };
        self.add(out, Of::BoreSize, &pair, &now.decisions);
        true
    }

    /// A change with its forecast.
    fn add(&self, out: &mut CylinderChange, of: Of, pair: &Pair<'_>, decisions: &[Decision]) {
        let change = self.change(pair);
        let decision = decisions.iter().find(|d| d.of == of);
        out.forecasts.push(pair.forecast(of, decision, &change, (self.lasting, self.run)));
        match of {
            Of::BoreSize => out.bore_size = Some(change),
            _ => out.bench_clearance = Some(change),
        }
    }

    /// The changes of the piston; whether it could be compared.
    fn piston(&self, before: &CylinderReport, after: &CylinderReport, out: &mut CylinderChange) -> bool {
        let state = self.entries(out.number).map(|c| c?.piston.as_ref().map(|p| p.state));
        let (Some(previous), Some(now)) = (&before.piston, &after.piston) else {
            out.missing.push(not_read("piston", before.piston.is_some()));
            return false;
        };
        let why = match state {
            _ if !self.same_piston_nominal() => "its nominal size changed, so it is another",
            _ if !self.same_piston_material() => "its material changed, so it is another",
            [_, Some(PistonState::New)] => "it is a new one now",
            [Some(a), Some(PistonState::Refinished)] if a != PistonState::Refinished => {
                "it was refinished since"
            }
            _ => "",
        };
        if !why.is_empty() {
            out.missing.push(format!("piston: {why}"));
            return false;
        }
        for size in &now.sizes {
            match previous.sizes.iter().find(|s| same_place(s, size) && s.over == size.over) {
                Some(earlier) => out.piston_places.push(PistonPlaceChange {
                    height_mm: size.height_mm,
                    datum: size.datum,
                    angle_deg: size.angle_deg,
                    over: size.over,
                    gauge_point: self.at_gauge_point(size),
                    change: self.change(&Pair { previous: &earlier.size, now: &size.size }),
                }),
                None => out.missing.push(format!(
                    "piston at {} mm from the {}, {} deg, over {}: not read before",
                    size.height_mm,
                    size.datum.spoken(),
                    size.angle_deg,
                    size.over.spoken()
                )),
            }
        }
        true
    }

    fn at_gauge_point(&self, size: &PistonSizeReport) -> bool {
        let point = &self.documents[1].engine.piston.gauge_point;
        size.datum == point.datum
            && same(size.height_mm, number(&point.height))
            && same(size.angle_deg, number(&point.angle))
    }

    /// The surfaces at the gauge point, each with whether the metal under it is known.
    fn surfaces(&self, piston: &PistonReport) -> Vec<(doc::Surface, bool)> {
        let here = piston.sizes.iter().filter(|s| self.at_gauge_point(s));
        let mut out: Vec<_> = here.map(|s| (s.over, s.bare_size.is_some())).collect();
        crate::order::sort_by(&mut out, Ord::cmp);
        out
    }

    fn clearance(
        &self,
        before: &CylinderReport,
        after: &CylinderReport,
        parts: [bool; 2],
        out: &mut CylinderChange,
    ) {
        if parts != [true, true] {
            out.missing.push("clearance: its parts could not be compared".to_owned());
            return;
        }
        if !self.same_gauge_point() {
            out.missing.push("clearance: the gauge point changed".to_owned());
            return;
        }
        let surfaces = [before, after].map(|c| c.piston.as_ref().map(|p| self.surfaces(p)));
        if surfaces[0] != surfaces[1] || !self.unchanged(clearance_over, |a, b| a == b) {
            out.missing.push("clearance: it is over another surface of the piston".to_owned());
            return;
        }
        let bench = [before, after].map(|c| c.clearance.as_ref().and_then(|c| c.bench.as_ref()));
        let (Some(previous), Some(now)) = (bench[0], bench[1]) else {
            out.missing.push(not_read("clearance", bench[0].is_some()));
            return;
        };
        let decisions = after.clearance.as_ref().map(|c| c.decisions.as_slice()).unwrap_or_default();
        self.add(out, Of::BenchClearance, &Pair { previous, now }, decisions);
    }
}

/// The surface that the printed clearance means.
fn clearance_over(document: &Document) -> Option<doc::Surface> {
    document.engine.limits.bench_clearance.as_ref().and_then(|l| l.over)
}

fn same_place(a: &PistonSizeReport, b: &PistonSizeReport) -> bool {
    a.datum == b.datum && same(a.height_mm, b.height_mm) && one_diameter(a.angle_deg, b.angle_deg)
}

fn not_read(what: &str, before: bool) -> String {
    format!("{what}: not known {}", if before { "now" } else { "before" })
}
