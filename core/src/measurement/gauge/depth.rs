//! A dial indicator on a bridge over the deck, zeroed on a flat or on a master.

use super::super::repeatability::Repeatability;
use super::transfer::{check_names, named};
use super::{Gauge, SetTo, Stated, certified, overdue, resolution_of};
use crate::bounds;
use crate::calc::{Calc, Fold, Measured};
use crate::error::Error;
use crate::growth::Materials;
use crate::job::document::GaugeKind;
use crate::job::{Entry, Given, Warning, Words};
use crate::measure::document as doc;
use crate::measurement::distribution::Distribution;
use crate::measurement::{Placement, Shop, half_width};
use jiff::civil;

/// The depth indicators of a document. Each is a comparator, as a bore gauge is.
#[derive(Debug)]
pub(crate) struct DepthIndicators(Vec<Gauge>);

/// A part read over its deck at two points in line with the pin, so that its rocking about the pin cancels.
pub(crate) struct Over<'a> {
    pub(crate) points: [&'a [Given]; 2],
    pub(crate) tilt: Option<&'a doc::Tilt>,
    pub(crate) eps_part: &'a Measured,
    pub(crate) eps_used: &'a Measured,
}

impl DepthIndicators {
    pub(crate) fn from_document(
        calc: &mut Calc,
        indicators: &[doc::DepthIndicator],
        date: civil::Date,
        shop: &Shop,
        materials: &Materials,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        check_names(indicators, |i| &i.name)?;
        let mut out = Vec::with_capacity(indicators.len());
        for entry in indicators {
            out.push(indicator(calc, entry, date, shop, materials, warnings)?);
        }
        Ok(DepthIndicators(out))
    }

    pub(crate) fn iter(&self) -> impl Iterator<Item = &Gauge> {
        self.0.iter()
    }

    pub(crate) fn find(&mut self, name: &Entry<Words>) -> Result<&mut Gauge, Error> {
        let index = named(&self.0, name, |g| &g.name)?.0;
        let none = || name.refuse(crate::ErrorKind::UnknownName, "no such indicator");
        self.0.get_mut(index).ok_or_else(none)
    }
}

fn indicator(
    calc: &mut Calc,
    entry: &doc::DepthIndicator,
    date: civil::Date,
    shop: &Shop,
    materials: &Materials,
    warnings: &mut Vec<Warning>,
) -> Result<Gauge, Error> {
    let mut gauge = Gauge {
        name: entry.name.words()?.to_owned(),
        kind: GaugeKind::BoreGauge,
        overdue: overdue(&entry.name, [&entry.calibrated, &entry.calibration_due], date, warnings)?,
        zero_error: calc.constant("e0", 0.0, "mm", "a comparator has its setting in place of a zero").into(),
        checked: false,
        setting: None,
        resolution: entry.resolution.read(&bounds::RESOLUTION, warnings)?,
        permissible_error: Stated::Typed(entry.permissible_error.read(&bounds::PERMISSIBLE_ERROR, warnings)?),
        repeatability: Some(Repeatability::exact(calc, &entry.repeatability, warnings)?),
        scale_estimate: None,
        drift: None,
        face_parallelism: None,
        preset: None,
        material: materials.find(&entry.material)?,
        set_on_stale: Vec::new(),
        scale: Vec::new(),
    };
    gauge.setting = Some(gauge.zeroed(calc, &entry.zeroed, shop, materials, warnings)?);
    Ok(gauge)
}

impl Gauge {
    fn zeroed(
        &self,
        calc: &mut Calc,
        zeroed: &doc::Zeroed,
        shop: &Shop,
        materials: &Materials,
        warnings: &mut Vec<Warning>,
    ) -> Result<SetTo, Error> {
        calc.heading(|| format!("zero of {}", self.name));
        let temperature = match zeroed {
            doc::Zeroed::Flat(flat) => &flat.temperature,
            doc::Zeroed::Master(master) => &master.temperature,
        };
        let (t, field) = shop.temperature(calc, Some(temperature), warnings)?;
        let distance = match zeroed {
            doc::Zeroed::Flat(flat) => self.on_flat(calc, flat, warnings)?,
            doc::Zeroed::Master(master) => {
                master.name.words()?;
                let name = || format!("master of {}", self.name);
                let expanded =
                    (&bounds::STANDARD_UNCERTAINTY, &master.expanded_uncertainty, &master.coverage_factor);
                let size = certified(calc, (&master.size, &bounds::STEP), expanded, name, warnings)?;
                let material = materials.find(&master.material)?;
                let eps = materials.growth(calc, material, &t, &field)?;
                calc.apply(crate::size::SetOnRing, [&size, &eps])
            }
        };
        let name = format!("resolution of {} at its setting", self.name);
        let source = calc.source(name, &self.resolution.path, Distribution::STANDARD_RECTANGULAR);
        let step = resolution_of(calc, &self.resolution);
        let distance = calc.add_source(&distance, source, step);
        let eps = materials.growth(calc, self.material, &t, &field)?;
        Ok(SetTo { distance, eps })
    }

    fn on_flat(
        &self,
        calc: &mut Calc,
        flat: &doc::OnFlat,
        warnings: &mut Vec<Warning>,
    ) -> Result<Measured, Error> {
        flat.name.words()?;
        let error = flat.permissible_error.read(&bounds::FLATNESS, warnings)?;
        let source =
            calc.source(format!("flat of {}", self.name), &error.path, Distribution::STANDARD_RECTANGULAR);
        let u = half_width(calc, &error);
        let zero = calc.constant("flat", 0.0, "mm", "a flat has no step").into();
        Ok(calc.add_source(&zero, source, u))
    }

    /// Height over the deck at 20 C, positive when the part stands above the surface the bridge rests on.
    pub(crate) fn read_depth(
        &mut self,
        placement: &mut Placement<'_>,
        over: &Over<'_>,
    ) -> Result<Option<Measured>, Error> {
        let mut points = Vec::with_capacity(2);
        for (repeats, word) in over.points.iter().zip(["first", "opposite"]) {
            let of = format!("the {word} point of {}", placement.of);
            points.extend(self.deviation(placement.calc, repeats, &of));
        }
        let Some(d) = placement.calc.fold(Fold::Mean, "d", &points.iter().collect::<Vec<_>>()) else {
            return Ok(None);
        };
        let d = placement.tilt(d, over.tilt)?;
        Ok(self.compared(placement.calc, &d, over.eps_part, over.eps_used))
    }
}
