//! Gauges: their sources of uncertainty, and how each kind turns an indication into a size at 20 C.

mod depth;
mod feeler;
mod transfer;

pub(crate) use depth::{DepthIndicators, Over};
pub(crate) use feeler::{Between, Strips};
pub(crate) use transfer::Transfers;

use super::preset::{self, Preset};
use super::{Expanded, HalfWidth, MeanOfRepeats, Resolution, Shop, half_width, mean};
use crate::bounds::{self, Bound};
use crate::calc::{Calc, Figure, Measured, SourceId};
use crate::error::{Error, ErrorKind};
use crate::growth::Materials;
use crate::job::document::{self as doc, GaugeKind};
use crate::job::{Date, Entry, Given, Warning, Words, check_length, nearest};
use crate::measurement::distribution::Distribution;
use crate::quantity::Length;
use crate::report::GaugeReport;
use crate::size::{BoreGaugeSize, MicrometerSize, SetOnMicrometer, SetOnRing, ZeroError};
use jiff::civil;

/// A gauge with its sources.
#[derive(Debug)]
pub(crate) struct Gauge {
    pub(crate) name: String,
    pub(crate) kind: GaugeKind,
    pub(crate) overdue: bool,
    /// error of the zero; 0 without a check
    zero_error: Measured,
    pub(crate) checked: bool,
    setting: Option<SetTo>,
    resolution: Given,
    permissible_error: Stated,
    repeatability: Given,
    face_parallelism: Option<Stated>,
    /// the row of a published table that stands for its data sheet
    preset: Option<&'static Preset>,
    material: usize,
    /// the micrometer it was set on, when the calibration of that has run out
    set_on_overdue: Option<String>,
    /// the error of the scale or the travel, one source for each indication
    scale: Vec<(f64, SourceId)>,
}

/// The half-width of an error: typed, or from a published table.
#[derive(Debug)]
enum Stated {
    Typed(Given),
    Preset { value: f64, source: &'static str, path: String },
}

impl Stated {
    fn path(&self) -> &str {
        match self {
            Stated::Typed(given) => &given.path,
            Stated::Preset { path, .. } => path,
        }
    }

    /// Standard uncertainty of the source.
    fn half_width(&self, calc: &mut Calc) -> Figure {
        match self {
            Stated::Typed(given) => half_width(calc, given),
            Stated::Preset { value, source, .. } => {
                let a = calc.constant("half_width", *value, "mm", source);
                calc.figure(HalfWidth, [a])
            }
        }
    }
}

/// What a bore gauge was set to.
#[derive(Debug)]
struct SetTo {
    distance: Measured,
    /// strain of the bore gauge when it was set
    eps: Measured,
}

/// The gauges of a document by name.
#[derive(Debug)]
pub(crate) struct Gauges(Vec<Gauge>);

/// What is read outside: a piston.
pub(crate) struct Outside<'a> {
    pub(crate) repeats: &'a [Given],
    /// strain of the part and of the gauge
    pub(crate) eps_part: &'a Measured,
    pub(crate) eps_gauge: &'a Measured,
}

impl Gauges {
    /// Reads the gauges on a day; those that are set on another come after it, and what they are set to lies within `near`.
    pub(crate) fn from_document(
        calc: &mut Calc,
        gauges: &[doc::Gauge],
        (date, near): (civil::Date, &Bound),
        shop: &Shop,
        materials: &Materials,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        check_length(gauges, |g| &g.name)?;
        let mut out = Gauges(Vec::with_capacity(gauges.len()));
        for entry in gauges {
            let name = entry.name.words()?;
            if out.0.iter().any(|g| g.name == name) {
                return Err(entry.name.refuse(ErrorKind::Repeated, "this gauge stands twice"));
            }
            let gauge = Gauge::from_document(calc, entry, date, shop, materials, warnings)?;
            out.0.push(gauge);
        }
        for (index, entry) in gauges.iter().enumerate() {
            if let Some(setting) = &entry.setting {
                let set = out.set(calc, index, setting, near, shop, materials, warnings)?;
                let set_on_overdue = match setting {
                    doc::Setting::Ring(_) => None,
                    doc::Setting::Micrometer(on) => {
                        Some(out.find(&on.gauge, false)?).filter(|g| g.overdue).map(|g| g.name.clone())
                    }
                };
                if let Some(gauge) = out.0.get_mut(index) {
                    (gauge.setting, gauge.set_on_overdue) = (Some(set), set_on_overdue);
                }
            }
        }
        Ok(out)
    }

    pub(crate) fn iter(&self) -> impl Iterator<Item = &Gauge> {
        self.0.iter()
    }

    /// The gauge of that name, of a kind that can do the work.
    pub(crate) fn find(&mut self, name: &Entry<Words>, bore: bool) -> Result<&mut Gauge, Error> {
        let index = self.index(name, bore)?;
        self.0.get_mut(index).ok_or_else(|| name.refuse(ErrorKind::UnknownName, "no such gauge"))
    }

    fn index(&self, name: &Entry<Words>, bore: bool) -> Result<usize, Error> {
        let wanted = name.words()?;
        let Some(index) = self.0.iter().position(|g| g.name == wanted) else {
            let known: Vec<&str> = self.0.iter().map(|g| g.name.as_str()).collect();
            return Err(name
                .refuse(ErrorKind::UnknownName, format!("no such gauge; known: {}", known.join(", ")))
                .suggest(nearest(wanted, &known)));
        };
        let fits = self.0.get(index).is_some_and(|g| (g.kind == GaugeKind::BoreGauge) == bore);
        match (fits, bore) {
            (true, _) => Ok(index),
            (false, true) => Err(name.refuse(ErrorKind::Contradiction, "a bore is read with a bore gauge")),
            (false, false) => {
                Err(name.refuse(ErrorKind::Contradiction, "a micrometer or caliper is needed here"))
            }
        }
    }

    #[expect(clippy::too_many_arguments, reason = "the context of one setting")]
    fn set(
        &mut self,
        calc: &mut Calc,
        index: usize,
        setting: &doc::Setting,
        near: &Bound,
        shop: &Shop,
        materials: &Materials,
        warnings: &mut Vec<Warning>,
    ) -> Result<SetTo, Error> {
        let (name, own_material, own_resolution) = match self.0.get(index) {
            Some(g) => (g.name.clone(), g.material, g.resolution.clone()),
            None => (String::new(), 0, Given::default()),
        };
        calc.heading(|| format!("setting of {name}"));
        let entry = match setting {
            doc::Setting::Ring(on) => &on.temperature,
            doc::Setting::Micrometer(on) => &on.temperature,
        };
        let (t, field) = shop.temperature(calc, Some(entry), warnings)?;
        let distance = match setting {
            doc::Setting::Ring(on) => {
                on.name.words()?;
                let size = certified(
                    calc,
                    &on.size,
                    near,
                    (&on.expanded_uncertainty, &on.coverage_factor),
                    || format!("setting ring of {name}"),
                    warnings,
                )?;
                let ring = materials.find(&on.material)?;
                let eps_ring = materials.growth(calc, ring, &t, &field)?;
                calc.apply(SetOnRing, [&size, &eps_ring])
            }
            doc::Setting::Micrometer(on) => {
                let reading = on.reading.read(near, warnings)?;
                let micrometer = self.find(&on.gauge, false)?;
                micrometer.distance_between_faces(calc, &reading, &t, &field, &name, materials)?
            }
        };
        let resolution = calc.source(
            format!("resolution of {name} at its setting"),
            &own_resolution.path,
            Distribution::STANDARD_RECTANGULAR,
        );
        let step = resolution_of(calc, &own_resolution);
        let distance = calc.add_source(&distance, resolution, step);
        let eps = materials.growth(calc, own_material, &t, &field)?;
        Ok(SetTo { distance, eps })
    }
}

impl Gauge {
    fn from_document(
        calc: &mut Calc,
        entry: &doc::Gauge,
        date: civil::Date,
        shop: &Shop,
        materials: &Materials,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        let name = entry.name.words()?.to_owned();
        check_parts(entry)?;
        let resolution = entry.resolution.read(&bounds::RESOLUTION, warnings)?;
        let (permissible_error, face_parallelism, preset) = data_sheet(entry, warnings)?;
        let mut gauge = Gauge {
            overdue: overdue(&entry.name, [&entry.calibrated, &entry.calibration_due], date, warnings)?,
            kind: entry.kind,
            zero_error: calc
                .constant(
                    "e0",
                    0.0,
                    "mm",
                    "no check of the zero: its error counts through the permissible error",
                )
                .into(),
            checked: entry.zero_check.is_some(),
            setting: None,
            set_on_overdue: None,
            repeatability: entry.repeatability.read(&bounds::REPEATABILITY, warnings)?,
            permissible_error,
            face_parallelism,
            preset,
            material: materials.find(&entry.material)?,
            scale: Vec::new(),
            resolution,
            name,
        };
        if let Some(check) = &entry.zero_check {
            gauge.zero_error = gauge.check_zero(calc, check, shop, materials, warnings)?;
        }
        Ok(gauge)
    }

    /// Error of the zero from the check on a standard.
    fn check_zero(
        &self,
        calc: &mut Calc,
        check: &doc::ZeroCheck,
        shop: &Shop,
        materials: &Materials,
        warnings: &mut Vec<Warning>,
    ) -> Result<Measured, Error> {
        calc.heading(|| format!("zero of {}", self.name));
        check.standard.words()?;
        let name = || format!("standard of the zero check of {}", self.name);
        let size = certified(
            calc,
            &check.size,
            &bounds::STANDARD_SIZE,
            (&check.expanded_uncertainty, &check.coverage_factor),
            name,
            warnings,
        )?;
        let near = Bound {
            label: "reading of a standard of this size",
            possible: (
                size.value() + crate::size::ZERO_ERROR.possible.0,
                size.value() + crate::size::ZERO_ERROR.possible.1,
            ),
            usual: (
                size.value() + crate::size::ZERO_ERROR.usual.0,
                size.value() + crate::size::ZERO_ERROR.usual.1,
            ),
            ..crate::size::ZERO_ERROR
        };
        let reading = check.reading.read(&near, warnings)?;
        let (t, field) = shop.temperature(calc, Some(&check.temperature), warnings)?;
        let standard = materials.find(&check.material)?;
        let eps_standard = materials.growth(calc, standard, &t, &field)?;
        let eps_gauge = materials.growth(calc, self.material, &t, &field)?;
        let r = calc.given("r", &reading);
        let source = calc.source(
            format!("resolution of {} at its zero check", self.name),
            &self.resolution.path,
            Distribution::STANDARD_RECTANGULAR,
        );
        let step = resolution_of(calc, &self.resolution);
        let r = calc.add_source(&r.into(), source, step);
        Ok(calc.apply(ZeroError, [&r, &size, &eps_standard, &eps_gauge]))
    }

    /// The gauge as the report tells it, without its zero.
    pub(crate) fn report(&self) -> GaugeReport {
        GaugeReport {
            name: self.name.clone(),
            calibration: if self.overdue { "overdue" } else { "in date" },
            preset: self.preset.map(Preset::words),
            zero_error: None,
        }
    }

    pub(crate) fn zero_error(&self) -> &Measured {
        &self.zero_error
    }

    /// Gauges behind a reading of this one whose calibration has run out.
    pub(crate) fn stale(&self) -> Vec<String> {
        let own = self.overdue.then(|| self.name.clone());
        own.into_iter().chain(self.set_on_overdue.clone()).collect()
    }

    /// Strain of the gauge at a temperature.
    pub(crate) fn growth(
        &self,
        calc: &mut Calc,
        materials: &Materials,
        t: &Measured,
        field: &str,
    ) -> Result<Measured, Error> {
        materials.growth(calc, self.material, t, field)
    }

    /// A size at 20 C from an outside micrometer or caliper.
    pub(crate) fn read_outside(&mut self, calc: &mut Calc, read: &Outside<'_>, of: &str) -> Option<Measured> {
        let r = self.indicated(calc, read.repeats, of)?;
        Some(calc.apply(MicrometerSize, [&r, &self.zero_error, read.eps_gauge, read.eps_part]))
    }

    /// What a micrometer or caliper indicates, with everything but its zero.
    fn indicated(&mut self, calc: &mut Calc, repeats: &[Given], of: &str) -> Option<Measured> {
        let r = mean(calc, "r", repeats)?;
        let path = repeats.first().map(|g| g.path.clone()).unwrap_or_default();
        let r = self.add_scale(calc, &r, "scale");
        let r = self.add_faces(calc, &r, of);
        Some(self.add_reading(calc, &r, of, &path, repeats.len()))
    }

    /// A bore at 20 C from a bore gauge.
    pub(crate) fn read_bore(
        &mut self,
        calc: &mut Calc,
        repeats: &[Given],
        eps_bore: &Measured,
        eps_used: &Measured,
        of: &str,
    ) -> Option<Measured> {
        let d = self.deviation(calc, repeats, of)?;
        self.compared(calc, &d, eps_bore, eps_used)
    }

    /// The deviation of a comparative gauge from its setting.
    fn deviation(&mut self, calc: &mut Calc, repeats: &[Given], of: &str) -> Option<Measured> {
        let d = mean(calc, "d", repeats)?;
        let path = repeats.first().map(|g| g.path.clone()).unwrap_or_default();
        let d = self.add_scale(calc, &d, "travel");
        Some(self.add_reading(calc, &d, of, &path, repeats.len()))
    }

    /// A size at 20 C from a deviation.
    fn compared(
        &self,
        calc: &mut Calc,
        d: &Measured,
        eps_part: &Measured,
        eps_used: &Measured,
    ) -> Option<Measured> {
        let set = self.setting.as_ref()?;
        Some(calc.apply(BoreGaugeSize, [&set.distance, d, &set.eps, eps_used, eps_part]))
    }

    /// Distance between the faces of a micrometer set to a reading, for `user` to be set on.
    fn distance_between_faces(
        &mut self,
        calc: &mut Calc,
        reading: &Given,
        t: &Measured,
        field: &str,
        user: &str,
        materials: &Materials,
    ) -> Result<Measured, Error> {
        let of = format!("the setting of {user}");
        let r = calc.given("r", reading).into();
        let r = self.add_scale(calc, &r, "scale");
        let r = self.add_faces(calc, &r, &of);
        let source = calc.source(
            format!("resolution of {} at {of}", self.name),
            &reading.path,
            Distribution::STANDARD_RECTANGULAR,
        );
        let step = resolution_of(calc, &self.resolution);
        let r = calc.add_source(&r, source, step);
        let eps = materials.growth(calc, self.material, t, field)?;
        Ok(calc.apply(SetOnMicrometer, [&r, &self.zero_error, &eps]))
    }

    /// The error of the scale (or travel): common to equal indications, independent between different ones.
    fn add_scale(&mut self, calc: &mut Calc, r: &Measured, word: &str) -> Measured {
        let known =
            self.scale.iter().find(|(at, _)| at.to_bits() == r.value().to_bits()).map(|(_, source)| *source);
        let source = known.unwrap_or_else(|| {
            let name = format!("{word} of {} at {:.4} mm", self.name, r.value());
            calc.source(name, self.permissible_error.path(), Distribution::STANDARD_RECTANGULAR)
        });
        if known.is_none() {
            self.scale.push((r.value(), source));
        }
        let standard = self.permissible_error.half_width(calc);
        calc.add_source(r, source, standard)
    }

    fn add_faces(&self, calc: &mut Calc, r: &Measured, of: &str) -> Measured {
        let Some(parallelism) = &self.face_parallelism else {
            return r.clone();
        };
        let source = calc.source(
            format!("faces of {} on {of}", self.name),
            parallelism.path(),
            Distribution::STANDARD_RECTANGULAR,
        );
        let standard = parallelism.half_width(calc);
        calc.add_source(r, source, standard)
    }

    /// Resolution and repeatability of the reading of one place.
    fn add_reading(&self, calc: &mut Calc, r: &Measured, of: &str, path: &str, count: usize) -> Measured {
        let source = calc.source(
            format!("resolution of {} on {of}", self.name),
            path,
            Distribution::STANDARD_RECTANGULAR,
        );
        let step = resolution_of(calc, &self.resolution);
        let r = calc.add_source(r, source, step);
        let source = calc.source(
            format!("repeatability of {} on {of}", self.name),
            path,
            Distribution::STANDARD_NORMAL,
        );
        let s = calc.given("s", &self.repeatability);
        let n = self::count(calc, count);
        let standard = calc.figure(MeanOfRepeats, [s, n]);
        calc.add_source(&r, source, standard)
    }
}

/// A certified size with the source of its uncertainty.
fn certified(
    calc: &mut Calc,
    size: &Entry<Length>,
    bound: &Bound,
    (expanded, factor): (&Entry<Length>, &Entry<crate::job::Pure>),
    name: impl FnOnce() -> String,
    warnings: &mut Vec<Warning>,
) -> Result<Measured, Error> {
    let size = size.read(bound, warnings)?;
    let expanded = expanded.read(&bounds::STANDARD_UNCERTAINTY, warnings)?;
    let factor = factor.read(&bounds::COVERAGE_FACTOR, warnings)?;
    let source = calc.source(name(), &expanded.path, Distribution::STANDARD_NORMAL);
    let [expanded, factor] = [calc.given("expanded", &expanded), calc.given("k", &factor)];
    let standard = calc.figure(Expanded, [expanded, factor]);
    let size = calc.given("size", &size);
    Ok(calc.add_source(&size.into(), source, standard))
}

/// A number of repeats.
fn count(calc: &mut Calc, count: usize) -> Figure {
    #[expect(clippy::cast_precision_loss, reason = "a count of readings is far below 2^53")]
    let value = count as f64;
    calc.constant(&format!("n{count}"), value, "1", "number of repeats read")
}

fn resolution_of(calc: &mut Calc, resolution: &Given) -> Figure {
    let r = calc.given("r", resolution);
    calc.figure(Resolution, [r])
}

/// Permissible error and parallelism of the faces, from the document or from the preset it names.
fn data_sheet(
    entry: &doc::Gauge,
    warnings: &mut Vec<Warning>,
) -> Result<(Stated, Option<Stated>, Option<&'static Preset>), Error> {
    let Some(name) = &entry.preset else {
        let missing = || {
            let field = format!("{}/permissible_error", entry.name.parent());
            let reason = "this field is required, or a preset in its place";
            Error::new(ErrorKind::MissingField, "permissible_error", reason).at(&field)
        };
        let error = entry.permissible_error.as_ref().ok_or_else(missing)?;
        let error = error.read(&bounds::PERMISSIBLE_ERROR, warnings)?;
        let faces = entry.face_parallelism.as_ref().map(|p| p.read(&bounds::PARALLELISM, warnings));
        return Ok((Stated::Typed(error), faces.transpose()?.map(Stated::Typed), None));
    };
    if let Some(typed) = [&entry.permissible_error, &entry.face_parallelism].into_iter().flatten().next() {
        let reason = "the preset says it already: one of the two is given";
        return Err(typed.refuse(ErrorKind::Contradiction, reason));
    }
    let row = preset::named(name.words()?).map_err(|e| e.at(name.path()))?;
    if !row.is_for(entry.kind) {
        let reason = format!("it is the preset of another kind of gauge: {}", row.kind.word());
        return Err(name.refuse(ErrorKind::Contradiction, reason));
    }
    let stated = |value| Stated::Preset { value, source: row.source, path: name.path().to_owned() };
    Ok((stated(row.permissible_error_mm), row.face_parallelism_mm.map(stated), Some(row)))
}

/// A bore gauge has a setting and no zero check; the others the other way round.
fn check_parts(entry: &doc::Gauge) -> Result<(), Error> {
    let bore = entry.kind == GaugeKind::BoreGauge;
    let gauge = entry.name.parent();
    let contradiction = |field: &str, reason: &str| {
        Err(Error::new(ErrorKind::Contradiction, "", reason).at(&format!("{gauge}/{field}")))
    };
    match (bore, &entry.setting, &entry.zero_check, &entry.face_parallelism) {
        (true, None, ..) => {
            let reason = "a bore gauge compares: its setting is required";
            Err(Error::new(ErrorKind::MissingField, "setting", reason).at(&format!("{gauge}/setting")))
        }
        (true, _, Some(_), _) => contradiction("zero_check", "a bore gauge has a setting, not a zero check"),
        (true, _, _, Some(faces)) => {
            Err(faces.refuse(ErrorKind::Contradiction, "a bore gauge has no measuring faces"))
        }
        (false, Some(_), ..) => contradiction("setting", "only a bore gauge has a setting"),
        (_, _, _, Some(faces)) if entry.kind == GaugeKind::Caliper => {
            Err(faces.refuse(ErrorKind::Contradiction, "face parallelism is stated for micrometers"))
        }
        _ => Ok(()),
    }
}

/// Has the calibration run out on the day of the job?
fn overdue(
    name: &Entry<Words>,
    [from, to]: [&Entry<Date>; 2],
    date: civil::Date,
    warnings: &mut Vec<Warning>,
) -> Result<bool, Error> {
    let calibrated = from.date()?;
    let due = to.date()?;
    if due <= calibrated {
        return Err(to.refuse(ErrorKind::OutOfOrder, "it must be after the day of the calibration"));
    }
    if calibrated > date {
        return Err(from.refuse(ErrorKind::Contradiction, "calibrated after the day of the job"));
    }
    let overdue = date > due;
    if overdue {
        warnings.push(Warning {
            kind: "calibration_overdue".to_owned(),
            path: to.path().to_owned(),
            text: format!(
                "the calibration of {} ran out on {due}; nothing is proven with it on {date}",
                name.text()
            ),
        });
    }
    Ok(overdue)
}
