//! Gauges: their sources of uncertainty, and how each kind turns an indication into a size at 20 C.

mod depth;
mod feeler;
mod transfer;

pub(crate) use depth::{DepthIndicators, Over};
pub(crate) use feeler::{Between, Strips};
pub(crate) use transfer::Transfers;

use super::before::{DriftOnMaster, DriftOwn, DriftShared};
use super::preset::{self, Preset};
use super::repeatability::Repeatability;
use super::{Expanded, MeanOfRepeats, Resolution, Shop, Stated, mean, reliability};
use crate::bounds::{self, Bound};
use crate::calc::{Calc, EstimateId, Figure, Measured, SourceId};
use crate::error::{Error, ErrorKind};
use crate::growth::Materials;
use crate::job::document::{self as doc, GaugeKind};
use crate::job::{Date, Entry, Given, Warning, Words, check_length, nearest};
use crate::measurement::distribution::Distribution;
use crate::plan::machining::DialOfDistance;
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
    repeatability: Option<Repeatability>,
    /// what the figure of the permissible error rests on
    scale_estimate: Option<EstimateId>,
    face_parallelism: Option<Stated>,
    /// the row of a published table that stands for its data sheet
    preset: Option<&'static Preset>,
    material: usize,
    /// nothing is proven with the micrometer it was set on
    set_on_stale: Vec<String>,
    /// from the check on its master after the work
    drift: Option<Drift>,
    /// the error of the scale or the travel, one source for each indication
    scale: Vec<(f64, SourceId)>,
}

/// What a gauge moved by between two checks on its master.
#[derive(Debug)]
struct Drift {
    beyond: bool,
    shared: SourceId,
    shared_standard: Figure,
    own_standard: Figure,
    path: String,
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

/// The repeats of every place that was read with a gauge.
pub(crate) type PlacesOf<'a> = &'a dyn Fn(&doc::Gauge, &mut Vec<Warning>) -> Result<Vec<Vec<Given>>, Error>;

/// What is read outside: a piston.
pub(crate) struct Outside<'a> {
    pub(crate) repeats: &'a [Given],
    /// strain of the part and of the gauge
    pub(crate) eps_part: &'a Measured,
    pub(crate) eps_gauge: &'a Measured,
}

impl Gauges {
    /// Reads the gauges on a day; those that are set on another come after it, and what they are set to lies within `near`. `places`
    /// gives what was read with a gauge whose repeatability is not stated.
    pub(crate) fn from_document(
        calc: &mut Calc,
        (gauges, places): (&[doc::Gauge], PlacesOf<'_>),
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
        for (gauge, entry) in out.0.iter_mut().zip(gauges) {
            if gauge.repeatability.is_none() {
                let places = places(entry, warnings)?;
                gauge.repeatability = Repeatability::pooled(calc, entry, &places)?;
            }
        }
        for (index, entry) in gauges.iter().enumerate() {
            if let Some(setting) = &entry.setting {
                let set = out.set(calc, index, setting, near, shop, materials, warnings)?;
                let set_on_stale = match setting {
                    doc::Setting::Ring(_) => Vec::new(),
                    doc::Setting::Micrometer(on) => out.find(&on.gauge, false)?.stale(),
                };
                if let Some(gauge) = out.0.get_mut(index) {
                    (gauge.setting, gauge.set_on_stale) = (Some(set), set_on_stale);
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
                    (&on.size, near),
                    (&bounds::STANDARD_UNCERTAINTY, &on.expanded_uncertainty, &on.coverage_factor),
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
            set_on_stale: Vec::new(),
            drift: None,
            repeatability: Repeatability::stated(calc, entry, warnings)?,
            scale_estimate: reliability(
                calc,
                entry.permissible_error_relative_uncertainty.as_ref(),
                warnings,
            )?,
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
        if let Some(recheck) = &entry.recheck {
            gauge.drift = Some(gauge.recheck(calc, recheck, entry.zero_check.as_ref(), warnings)?);
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
            (&check.size, &bounds::STANDARD_SIZE),
            (&bounds::STANDARD_UNCERTAINTY, &check.expanded_uncertainty, &check.coverage_factor),
            name,
            warnings,
        )?;
        let near = near_standard("reading of a standard of this size", size.value());
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

    /// Drift from the check on the master after the work: of a bore gauge from the zero it was set to, of the others from the zero check.
    fn recheck(
        &self,
        calc: &mut Calc,
        recheck: &doc::Recheck,
        zero_check: Option<&doc::ZeroCheck>,
        warnings: &mut Vec<Warning>,
    ) -> Result<Drift, Error> {
        calc.heading(|| format!("drift of {}", self.name));
        let before = match zero_check {
            None => calc.constant("set", 0.0, "mm", "a bore gauge is set to zero on its master"),
            Some(check) => {
                let reading = check.reading.read(&bounds::STANDARD_SIZE, &mut Vec::new())?;
                calc.given("before", &reading)
            }
        };
        let near = near_standard("reading of the master after the work", before.value);
        let after = recheck.reading.read(&near, warnings)?;
        let limit = recheck.limit.read(&DRIFT_LIMIT, warnings)?;
        let after_figure = calc.given("after", &after);
        let drift = calc.figure(DriftOnMaster, [after_figure, before]);
        let beyond = super::before::beyond(drift.value, limit.value);
        if beyond {
            let text = format!(
                "{} has drifted by {:.4} mm on its master, its limit is {}: nothing is proven with it; set it and read again",
                self.name, drift.value, limit.text
            );
            warnings.push(Warning { kind: "gauge_drifted".to_owned(), path: after.path.clone(), text });
        }
        let shared = calc.source(
            format!("drift of {}, shared by its readings", self.name),
            &after.path,
            Distribution::STANDARD_RECTANGULAR,
        );
        Ok(Drift {
            beyond,
            shared,
            shared_standard: calc.figure(DriftShared, [drift]),
            own_standard: calc.figure(DriftOwn, [drift]),
            path: after.path,
        })
    }

    /// How the check on the master after the work came out, where there was one.
    pub(crate) fn recheck_word(&self) -> Option<&'static str> {
        self.drift.as_ref().map(|d| if d.beyond { "beyond its limit" } else { "within its limit" })
    }

    /// The gauge as the report tells it, without its zero.
    pub(crate) fn report(&self) -> GaugeReport {
        GaugeReport {
            name: self.name.clone(),
            calibration: if self.overdue { "overdue" } else { "in date" },
            preset: self.preset.map(Preset::words),
            zero_error: None,
            recheck: self.recheck_word(),
        }
    }

    pub(crate) fn zero_error(&self) -> &Measured {
        &self.zero_error
    }

    /// Gauges behind a reading of this one with which nothing is proven: out of calibration, or drifted.
    pub(crate) fn stale(&self) -> Vec<String> {
        let drifted = self.drift.as_ref().is_some_and(|d| d.beyond);
        let own = (self.overdue || drifted).then(|| self.name.clone());
        own.into_iter().chain(self.set_on_stale.iter().cloned()).collect()
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
        self.add_reading(calc, &r, of, &path, repeats.len())
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
        self.add_reading(calc, &d, of, &path, repeats.len())
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

    /// What the dial of a bore gauge must read in a bore of a size at 20 C; none of a gauge without a setting.
    pub(crate) fn dial(
        &self,
        calc: &mut Calc,
        size: &Measured,
        eps_bore: &Measured,
        eps_used: &Measured,
    ) -> Option<Measured> {
        let set = self.setting.as_ref()?;
        Some(calc.apply(DialOfDistance, [size, &set.distance, &set.eps, eps_used, eps_bore]))
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
        let r = self.add_drift(calc, &r, &of);
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
            calc.rests_on(source, self.scale_estimate);
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

    /// Resolution and repeatability of the reading of one place; nothing without a repeatability.
    fn add_reading(
        &self,
        calc: &mut Calc,
        r: &Measured,
        of: &str,
        path: &str,
        count: usize,
    ) -> Option<Measured> {
        let repeatability = self.repeatability.as_ref()?;
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
        calc.rests_on(source, repeatability.estimate);
        let n = self::count(calc, count);
        let standard = calc.figure(MeanOfRepeats, [repeatability.deviation, n]);
        let r = calc.add_source(&r, source, standard);
        Some(self.add_drift(calc, &r, of))
    }

    /// What the drift of the gauge adds to a reading between two checks: a part that all of them share, and its own.
    fn add_drift(&self, calc: &mut Calc, r: &Measured, of: &str) -> Measured {
        let Some(drift) = &self.drift else {
            return r.clone();
        };
        let r = calc.add_source(r, drift.shared, drift.shared_standard);
        let own = calc.source(
            format!("drift of {} on {of}", self.name),
            &drift.path,
            Distribution::STANDARD_RECTANGULAR,
        );
        calc.add_source(&r, own, drift.own_standard)
    }
}

/// Limit that the user states for a drift.
const DRIFT_LIMIT: Bound = Bound {
    label: "limit of a drift",
    unit: "mm",
    possible: (0.0, 0.05),
    usual: (0.0005, 0.01),
    reason: "a gauge comes back to its master within one small division; common practice, no source",
};

fn permissible_error(kind: GaugeKind) -> &'static Bound {
    match kind {
        GaugeKind::OutsideMicrometer => &bounds::MICROMETER_ERROR,
        GaugeKind::Caliper | GaugeKind::BoreGauge => &bounds::PERMISSIBLE_ERROR,
    }
}

/// What a gauge may read on its standard.
fn near_standard(label: &'static str, size: f64) -> Bound {
    let near = |(low, high): (f64, f64)| (size + low, size + high);
    let zero = crate::size::ZERO_ERROR;
    Bound { label, possible: near(zero.possible), usual: near(zero.usual), ..zero }
}

/// A size with its expanded uncertainty as a source of its own.
pub(crate) fn certified(
    calc: &mut Calc,
    (size, near): (&Entry<Length>, &Bound),
    (bound, expanded, factor): (&Bound, &Entry<Length>, &Entry<crate::job::Pure>),
    name: impl FnOnce() -> String,
    warnings: &mut Vec<Warning>,
) -> Result<Measured, Error> {
    let size = size.read(near, warnings)?;
    let expanded = expanded.read(bound, warnings)?;
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
        let error = error.read(permissible_error(entry.kind), warnings)?;
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
    let stated =
        |value| Stated::Cited { value, unit: "mm", source: row.source, path: name.path().to_owned() };
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
        (false, _, None, _) if entry.recheck.is_some() => {
            contradiction("recheck", "a recheck repeats the zero check, and there is none")
        }
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
