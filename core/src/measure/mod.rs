#![doc = include_str!("../../docs/measurement.md")]

pub mod document;
mod propagate;
mod reading;
mod report;
mod text;

pub use document::MeasurementDocument;
pub use report::{
    DifferenceReport, EffectReport, GaugeUsed, IntervalReport, MeasurementReport, MonteCarloReport,
    Propagated, REPORT_FORMAT, REPORT_VERSION, ReadingReport, SecondOrderReport, ValidationReport,
};

use crate::Options;
use crate::assess::once;
use crate::bounds::{self, Bound};
use crate::calc::{Calc, formula};
use crate::error::{Error, ErrorKind};
use crate::growth::Materials;
use crate::job::document as doc;
use crate::job::{Entry, Given, Warning, Words, check_length, nearest, readable};
use crate::measurement::{DepthIndicators, Gauge, Gauges, Shop, Strips, Transfers};
use crate::progress::{Watch, Work};
use crate::report::{GaugeReport, JobName};
use crate::size::REFERENCE_TEMPERATURE_C;
use propagate::Asked;
use reading::Taken;

/// Format name of a measurement.
pub const FORMAT: &str = "gaugepoint-measurement";
/// Version of the measurement format.
pub const VERSION: u32 = 1;

formula! {
    /// Difference of two readings.
    Difference: difference ["mm"] = (larger, smaller) => larger - smaller; source "definition";
}

readable!(MeasurementDocument, FORMAT, VERSION, "measurement");

/// Evaluates the readings of a document and their differences.
///
/// # Errors
/// When a field is refused: see [`Error`].
pub fn measure(document: &MeasurementDocument, options: Options) -> Result<MeasurementReport, Error> {
    measure_watched(document, options, Watch::default())
}

/// [`measure`] with a watcher, who is asked value by value and in their trials; see [`progress`](crate::progress).
///
/// # Errors
/// As [`measure`], and [`ErrorKind::Stopped`].
pub fn measure_watched(
    document: &MeasurementDocument,
    options: Options,
    watch: Watch<'_>,
) -> Result<MeasurementReport, Error> {
    Measuring::new(document, options, watch)?.report(document)
}

/// [`measure`] from JSON to JSON.
///
/// # Errors
/// When the text is not a measurement document or a field is refused.
pub fn measure_json(document: &str, options: Options) -> Result<String, Error> {
    Ok(measure(&MeasurementDocument::from_json(document)?, options)?.to_json())
}

/// [`measure_json`] for a host whose text is bytes.
///
/// # Errors
/// As [`measure_json`], and [`ErrorKind::NotUtf8`].
pub fn measure_json_bytes(document: &[u8], options: Options) -> Result<String, Error> {
    Ok(measure(&MeasurementDocument::from_json_bytes(document)?, options)?.to_json())
}

/// Everything that is common to the readings of one document.
struct Measuring<'w> {
    calc: Calc,
    warnings: Vec<Warning>,
    shop: Shop,
    materials: Materials,
    gauges: Gauges,
    transfers: Transfers,
    strips: Strips,
    indicators: DepthIndicators,
    asked: Asked,
    work: Work<'w>,
}

/// A repeatability is stated here: there are too few repeats to find it from.
fn no_repeats(gauge: &doc::Gauge, _: &mut Vec<Warning>) -> Result<Vec<Vec<Given>>, Error> {
    let error = Error::new(ErrorKind::MissingField, "repeatability", "this field is required here");
    Err(error.at(&format!("{}/repeatability", gauge.name.parent())))
}

impl<'w> Measuring<'w> {
    fn new(document: &MeasurementDocument, options: Options, watch: Watch<'w>) -> Result<Self, Error> {
        let mut calc = Calc::with_model(options.working);
        let mut warnings = Vec::new();
        let head = &document.measurement;
        head.id.words()?;
        head.note.as_ref().map(Entry::words).transpose()?;
        let date = head.date.date()?;
        check_length(&document.readings, |r| r.name())?;
        check_length(&document.differences, |d| &d.name)?;
        let shop = Shop::from_document(&mut calc, &document.shop, &mut warnings)?;
        let materials = Materials::from_document(&mut calc, &document.materials, &mut warnings)?;
        let near = Bound { label: "setting of a bore gauge", ..bounds::STANDARD_SIZE };
        let on = (date, &near);
        let gauges = Gauges::from_document(
            &mut calc,
            (&document.gauges, &no_repeats),
            on,
            &shop,
            &materials,
            &mut warnings,
        )?;
        let transfers = Transfers::from_document(&document.transfer_gauges, &mut warnings)?;
        let strips = Strips::from_document(&document.feeler_strips, &mut warnings)?;
        let indicators = DepthIndicators::from_document(
            &mut calc,
            &document.depth_indicators,
            date,
            &shop,
            &materials,
            &mut warnings,
        )?;
        let asked = Asked::from_document(document, &mut warnings)?;
        let values = document.readings.len() + document.differences.len();
        let work = Work::new(watch, asked.units() * values as u64);
        Ok(Measuring { calc, warnings, shop, materials, gauges, transfers, strips, indicators, asked, work })
    }

    fn report(mut self, document: &MeasurementDocument) -> Result<MeasurementReport, Error> {
        // everything is read, and may be refused, before the first trial is run
        let taken = self.readings(document)?;
        let differences = self.differences(document, &taken)?;
        let readings = self.reading_reports(document, &taken)?;
        let differences = self.difference_reports(document, differences)?;
        self.work.finish()?;
        let head = &document.measurement;
        Ok(MeasurementReport {
            format: REPORT_FORMAT,
            version: REPORT_VERSION,
            library: env!("CARGO_PKG_VERSION"),
            measurement: JobName {
                id: head.id.text().to_owned(),
                date: head.date.text().trim().to_owned(),
                note: head.note.as_ref().map(|n| n.text().to_owned()),
            },
            reference_temperature_c: REFERENCE_TEMPERATURE_C,
            probability: self.asked.probability,
            gauges: self.gauges.iter().chain(self.indicators.iter()).map(used).collect(),
            readings,
            differences,
            warnings: once(self.warnings),
            working: self.calc.into_working(),
        })
    }

    fn readings(&mut self, document: &MeasurementDocument) -> Result<Vec<Taken>, Error> {
        let mut out: Vec<Taken> = Vec::with_capacity(document.readings.len());
        for reading in &document.readings {
            let taken = self.read(reading)?;
            if out.iter().any(|t| t.name == taken.name) {
                return Err(reading.name().refuse(ErrorKind::Repeated, "this reading stands twice"));
            }
            out.push(taken);
        }
        Ok(out)
    }

    fn differences(&mut self, document: &MeasurementDocument, taken: &[Taken]) -> Result<Vec<Taken>, Error> {
        let mut out: Vec<Taken> = Vec::with_capacity(document.differences.len());
        for entry in &document.differences {
            let name = entry.name.words()?;
            if out.iter().chain(taken).any(|d| d.name == name) {
                return Err(entry.name.refuse(ErrorKind::Repeated, "this name stands twice"));
            }
            let (larger, smaller) = (find(taken, &entry.larger)?, find(taken, &entry.smaller)?);
            if larger.name == smaller.name {
                return Err(entry
                    .smaller
                    .refuse(ErrorKind::Contradiction, "a reading less itself is nothing"));
            }
            self.calc.heading(|| name.to_owned());
            out.push(Taken {
                name: name.to_owned(),
                value: self.calc.apply(Difference, [&larger.value, &smaller.value]),
                effects: larger.less(smaller),
                notes: Vec::new(),
            });
        }
        Ok(out)
    }

    fn reading_reports(
        &mut self,
        document: &MeasurementDocument,
        taken: &[Taken],
    ) -> Result<Vec<ReadingReport>, Error> {
        let report = |(index, (entry, taken)): (usize, (&document::Reading, &Taken))| {
            let at = format!("/readings/{index}/result");
            Ok(ReadingReport {
                result: self.propagated(taken, &at)?,
                name: taken.name.clone(),
                gauge: entry.gauge().words()?.to_owned(),
                what: entry.what(),
                readings: entry.repeats().iter().map(|r| r.text().trim().to_owned()).collect(),
                notes: taken.notes.clone(),
            })
        };
        document.readings.iter().zip(taken).enumerate().map(report).collect()
    }

    fn difference_reports(
        &mut self,
        document: &MeasurementDocument,
        differences: Vec<Taken>,
    ) -> Result<Vec<DifferenceReport>, Error> {
        let report = |(index, (entry, taken)): (usize, (&document::Difference, Taken))| {
            let at = format!("/differences/{index}/result");
            Ok(DifferenceReport {
                result: self.propagated(&taken, &at)?,
                name: taken.name,
                larger: entry.larger.words()?.to_owned(),
                smaller: entry.smaller.words()?.to_owned(),
            })
        };
        document.differences.iter().zip(differences).enumerate().map(report).collect()
    }
}

fn used(gauge: &Gauge) -> GaugeUsed {
    let GaugeReport { name, calibration, preset, .. } = gauge.report();
    GaugeUsed { name, calibration, preset }
}

/// The reading of that name.
fn find<'t>(taken: &'t [Taken], name: &Entry<Words>) -> Result<&'t Taken, Error> {
    let wanted = name.words()?;
    taken.iter().find(|t| t.name == wanted).ok_or_else(|| {
        let known: Vec<&str> = taken.iter().map(|t| t.name.as_str()).collect();
        let reason = format!("no such reading; known: {}", known.join(", "));
        name.refuse(ErrorKind::UnknownName, reason).suggest(nearest(wanted, &known))
    })
}
