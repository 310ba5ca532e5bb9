#![doc = include_str!("../../docs/hot-fit.md")]

pub mod document;
mod hot;
mod read;
mod report;
mod shapes;
mod text;
mod trace;

pub use document::FitDocument;
pub use report::{
    AgainstPicture, Band, BestPlaced, FitReport, FoundReport, GaugePointTemperatures, HotReport, KelvinLine,
    MapPicture, OnsetReport, OvalityReport, OverlapReport, PicturesReport, PlaceReport, ProfilePicture,
    REPORT_FORMAT, REPORT_VERSION, ReferenceReport, SectionPicture, SurfacePlace, SurfaceReport,
};

use crate::Options;
use crate::assess::once;
use crate::bounds;
use crate::calc::Calc;
use crate::clearance::hot::Parts;
use crate::error::Error;
use crate::growth::{Materials, Piecewise};
use crate::job::{Entry, Given, Warning, readable};
use crate::report::{JobName, RUNNING_CLEARANCE, SEIZURE, SERVICE_DATA};
use document::{FitPiston, ReferenceCase};
pub(crate) use hot::{Asked, Hot, Least, Original, gauge_depth, placed};
pub(crate) use read::{Reader, Shaped, Temperatures};
pub(crate) use text::sentences;
pub(crate) use trace::{BoreSources, Sources};

/// Format name of a hot fit.
pub const FORMAT: &str = "gaugepoint-fit";
/// Version of the format of a hot fit.
pub const VERSION: u32 = 1;

readable!(FitDocument, FORMAT, VERSION, "fit");

/// Computes a hot fit.
///
/// # Errors
/// When a field is refused: see [`Error`].
pub fn fit(document: &FitDocument, options: Options) -> Result<FitReport, Error> {
    let head = &document.fit;
    head.id.words()?;
    head.note.as_ref().map(Entry::words).transpose()?;
    head.date.date()?;
    let mut calc = Calc::new(options.working);
    let mut warnings = Vec::new();
    let materials = Materials::from_document(&mut calc, &document.materials, &mut warnings)?;
    let hot = Fit::read(document, &mut calc, &materials, &mut warnings)?.report(&mut calc, &materials)?;
    Ok(FitReport {
        format: REPORT_FORMAT,
        version: REPORT_VERSION,
        library: env!("CARGO_PKG_VERSION"),
        fit: JobName {
            id: head.id.text().to_owned(),
            date: head.date.text().trim().to_owned(),
            note: head.note.as_ref().map(|n| n.text().to_owned()),
        },
        hot,
        warnings: once(warnings),
        cautions: [SERVICE_DATA, SEIZURE, RUNNING_CLEARANCE].map(str::to_owned).to_vec(),
        working: calc.into_working(),
    })
}

/// [`fit`] from JSON to JSON.
///
/// # Errors
/// When the text is not a fit document or a field is refused.
pub fn fit_json(document: &str, options: Options) -> Result<String, Error> {
    Ok(fit(&FitDocument::from_json(document)?, options)?.to_json())
}

/// [`fit_json`] for a host whose text is bytes.
///
/// # Errors
/// As [`fit_json`], and [`crate::ErrorKind::NotUtf8`].
pub fn fit_json_bytes(document: &[u8], options: Options) -> Result<String, Error> {
    Ok(fit(&FitDocument::from_json_bytes(document)?, options)?.to_json())
}

/// A document that was read.
struct Fit {
    parts: Parts,
    sources: Sources,
    temperatures: Temperatures,
    original: Option<Original>,
    asked: Asked,
}

impl Fit {
    fn read(
        document: &FitDocument,
        calc: &mut Calc,
        materials: &Materials,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        let mut reader = Reader { calc, materials, warnings };
        let bore = reader.diameter(&document.bore.size, "bore", &bounds::BORE)?;
        let bore_material = materials.find(&document.bore.material)?;
        let (bore_shape, bore_spread) =
            reader.bore_shape(document.bore.shape.as_ref(), bore.value(), "shape of the bore")?;
        let near = bounds::in_bore(&bounds::PISTON, bore.value());
        let size = reader.diameter(&document.piston.size, "piston", &near)?;
        let skirt = materials.find(&document.piston.material)?;
        let gauge = document.piston.gauge_height.read(&bounds::PISTON_HEIGHT, reader.warnings)?;
        let of_piston = &document.piston.shape;
        let piston = reader.piston_shape(of_piston, &gauge, skirt, "shape of the piston")?;
        let motion = document.motion.as_ref();
        let motion = motion.map(|motion| reader.motion(motion, &piston.height)).transpose()?;
        let temperatures = reader.field(&document.running, "/running", (&piston, motion.as_ref()))?;
        let parts = Parts {
            piston_diameter_mm: size.value(),
            piston: piston.shape.clone(),
            growth: piston.growth.clone(),
            piston_field: temperatures.piston.clone(),
            bore: bore_shape,
            bore_law: Piecewise::of(materials.law(bore_material)?),
            bore_field: temperatures.bore.clone(),
            motion,
        };
        let sources = Sources {
            bore,
            bore_material,
            bore_shape: BoreSources::Tables(bore_spread),
            bore_field: Some(temperatures.bore_spread),
            piston: size,
            piston_shape: piston.spread,
            piston_field: Some(temperatures.piston_spread),
            surfaces: piston.surfaces.clone(),
            field: temperatures.place.clone(),
            bore_place: format!("{}/shape", document.bore.material.parent()),
        };
        let of = Found { parts: &parts, sources: &sources, piston: &document.piston, gauge: &gauge };
        let original =
            document.reference.as_ref().map(|case| original(&mut reader, case, &of)).transpose()?;
        let FitDocument { elastic, find, pictures, .. } = document;
        let asked = Asked::read(elastic.as_ref(), find.as_ref(), pictures.as_ref(), reader.warnings)?;
        Ok(Fit { parts, sources, temperatures, original, asked })
    }

    fn report(self, calc: &mut Calc, materials: &Materials) -> Result<HotReport, Error> {
        let Fit { parts, sources, temperatures, original, asked } = self;
        let at = "/hot".to_owned();
        let (temperatures, asked) = (&temperatures, &asked);
        Hot { calc, materials, parts, sources, temperatures, original, asked, at, goes_on: &|| Ok(()) }
            .report()
    }
}

/// What the reference case takes over from the fit.
struct Found<'a> {
    parts: &'a Parts,
    sources: &'a Sources,
    piston: &'a FitPiston,
    gauge: &'a Given,
}

fn original(reader: &mut Reader<'_>, case: &ReferenceCase, of: &Found<'_>) -> Result<Original, Error> {
    let bore = of.sources.bore.value();
    let least = case.least_clearance.read(&bounds::in_bore(&bounds::CLEARANCE, bore), reader.warnings)?;
    let temperature = case.reference_temperature.read(&bounds::LIMIT_TEMPERATURE, reader.warnings)?;
    let material = reader.materials.find(&case.material)?;
    let own = (&of.piston.shape, of.sources.piston_shape);
    let shape = reader.original_shape(case.shape.as_ref(), own, of.gauge, material)?;
    let least = Least { clearance: least, temperature, origin: case.origin.words()?.to_owned() };
    Ok(Original::new(shape, material, least, of.parts, of.sources))
}
