//! One reading: from what was typed to a value at 20 C with its sources.

use super::Measuring;
use super::document::{self as doc, Reading, Treatment};
use crate::bounds;
use crate::calc::Measured;
use crate::error::{Error, ErrorKind};
use crate::job::{Entry, Given, Words};
use crate::measurement::{Between, Effect, Outside, Over, Placement, near_nominal, repeats};
use crate::quantity::{Length, Temperature};

/// A reading that was taken.
pub(super) struct Taken {
    pub(super) name: String,
    pub(super) value: Measured,
    pub(super) effects: Vec<Told>,
    pub(super) notes: Vec<String>,
}

/// An effect whose mean is not zero, in a reading or a difference.
#[derive(Clone)]
pub(super) struct Told {
    pub(super) source: String,
    pub(super) mean_mm: f64,
    pub(super) treatment: Treatment,
    pub(super) path: String,
}

impl Taken {
    /// The effects in this reading less another.
    pub(super) fn less(&self, other: &Taken) -> Vec<Told> {
        let taken_off = other.effects.iter().map(|e| Told { mean_mm: -e.mean_mm, ..e.clone() });
        self.effects.iter().cloned().chain(taken_off).collect()
    }
}

impl From<Effect> for Told {
    fn from(effect: Effect) -> Self {
        let Effect { source, mean, treatment, path } = effect;
        Told { source, mean_mm: mean.value, treatment, path }
    }
}

/// Part and gauge as they were.
struct State {
    eps_part: Measured,
    eps_gauge: Measured,
}

/// A value with its effects, before it has a name.
type Value = (Measured, Vec<Effect>);

impl Measuring<'_> {
    pub(super) fn read(&mut self, reading: &Reading) -> Result<Taken, Error> {
        let name = reading.name().words()?.to_owned();
        self.calc.heading(|| name.clone());
        let mut notes = Vec::new();
        let (value, effects) = match reading {
            Reading::Outside(r) => self.outside(&name, r)?,
            Reading::Inside(r) => self.inside(&name, r)?,
            Reading::Transferred(r) => self.transferred(&name, r)?,
            Reading::Clearance(r) => {
                notes.push(self.strips.find(&r.gauge)?.note.clone());
                (self.clearance(&name, r)?, Vec::new())
            }
            Reading::Depth(r) => self.depth(&name, r)?,
        };
        let effects = effects.into_iter().map(Told::from).collect();
        Ok(Taken { name, value, effects, notes })
    }

    fn outside(&mut self, of: &str, r: &doc::Outside) -> Result<Value, Error> {
        let nominal = r.nominal.read(&bounds::PISTON, &mut self.warnings)?.value;
        let near = near_nominal("reading of this part", nominal);
        let repeats = self.repeats(&r.repeats, &near, (&r.gauge, "repeats"))?;
        let eps_part = self.growth(&r.material, Some(&r.temperature))?;
        let (t, field) =
            self.shop.temperature(&mut self.calc, r.gauge_temperature.as_ref(), &mut self.warnings)?;
        let gauge = self.gauges.find(&r.gauge, false)?;
        let eps_gauge = gauge.growth(&mut self.calc, &self.materials, &t, &field)?;
        let read = Outside { repeats: &repeats, eps_part: &eps_part, eps_gauge: &eps_gauge };
        let size =
            gauge.read_outside(&mut self.calc, &read, of).ok_or_else(|| nothing_read(&r.gauge, "repeats"))?;
        let mut placement = self.placement(of);
        let size = placement.force(size, r.force.as_ref())?;
        let size = placement.off_axis(size, r.off_axis.as_ref())?;
        let size = placement.height(size, r.height.as_ref())?;
        Ok((size, placement.effects))
    }

    fn inside(&mut self, of: &str, r: &doc::Inside) -> Result<Value, Error> {
        let nominal = r.nominal.read(&bounds::BORE, &mut self.warnings)?.value;
        let repeats = self.repeats(&r.repeats, &bounds::DEVIATION, (&r.gauge, "repeats"))?;
        let eps_part = self.growth(&r.material, Some(&r.temperature))?;
        let (t, field) =
            self.shop.temperature(&mut self.calc, r.gauge_temperature.as_ref(), &mut self.warnings)?;
        let gauge = self.gauges.find(&r.gauge, true)?;
        let eps_used = gauge.growth(&mut self.calc, &self.materials, &t, &field)?;
        let size = gauge
            .read_bore(&mut self.calc, &repeats, &eps_part, &eps_used, of)
            .ok_or_else(|| r.gauge.refuse(ErrorKind::Contradiction, "this gauge has no setting"))?;
        check_near(&size, nominal, &r.repeats)?;
        let mut placement = self.placement(of);
        let size = placement.tilt(size, r.tilt.as_ref())?;
        let size = placement.height(size, r.height.as_ref())?;
        Ok((size, placement.effects))
    }

    fn transferred(&mut self, of: &str, r: &doc::Transferred) -> Result<Value, Error> {
        let nominal = r.nominal.read(&bounds::SMALL_HOLE, &mut self.warnings)?.value;
        let near = near_nominal("reading over this gauge", nominal);
        let repeats = self.repeats(&r.repeats, &near, (&r.gauge, "repeats"))?;
        let transfer = self.transfers.find(&r.gauge)?;
        let state = State {
            eps_part: {
                let (t, field) =
                    self.shop.temperature(&mut self.calc, Some(&r.temperature), &mut self.warnings)?;
                let material = self.materials.find(&r.material)?;
                self.materials.growth(&mut self.calc, material, &t, &field)?
            },
            eps_gauge: {
                let entry = r.gauge_temperature.as_ref();
                let (t, field) = self.shop.temperature(&mut self.calc, entry, &mut self.warnings)?;
                let micrometer = self.gauges.find(&r.micrometer, false)?;
                micrometer.growth(&mut self.calc, &self.materials, &t, &field)?
            },
        };
        let read = Outside { repeats: &repeats, eps_part: &state.eps_part, eps_gauge: &state.eps_gauge };
        let micrometer = self.gauges.find(&r.micrometer, false)?;
        let size = micrometer
            .read_transfer(&mut self.calc, &read, transfer, of)
            .ok_or_else(|| nothing_read(&r.gauge, "repeats"))?;
        let mut placement = self.placement(of);
        let size = placement.tilt(size, r.tilt.as_ref())?;
        Ok((size, placement.effects))
    }

    fn clearance(&mut self, of: &str, r: &doc::Clearance) -> Result<Measured, Error> {
        let nominal = r.nominal.read(&bounds::BORE, &mut self.warnings)?;
        let repeats = self.repeats(&r.repeats, &bounds::FEELER, (&r.gauge, "repeats"))?;
        let eps_bore = self.growth(&r.material, Some(&r.temperature))?;
        let eps_piston = self.growth(&r.piston_material, Some(&r.temperature))?;
        let between = Between { nominal: &nominal, eps_bore: &eps_bore, eps_piston: &eps_piston };
        let strips = self.strips.find(&r.gauge)?;
        strips.read(&mut self.calc, &repeats, &between, of).ok_or_else(|| nothing_read(&r.gauge, "repeats"))
    }

    fn depth(&mut self, of: &str, r: &doc::Depth) -> Result<Value, Error> {
        let first = self.repeats(&r.repeats, &bounds::DEVIATION, (&r.gauge, "repeats"))?;
        let opposite = self.repeats(&r.opposite, &bounds::DEVIATION, (&r.gauge, "opposite"))?;
        let eps_part = self.growth(&r.material, Some(&r.temperature))?;
        let (t, field) =
            self.shop.temperature(&mut self.calc, r.gauge_temperature.as_ref(), &mut self.warnings)?;
        let indicator = self.indicators.find(&r.gauge)?;
        let eps_used = indicator.growth(&mut self.calc, &self.materials, &t, &field)?;
        let over = Over {
            points: [&first, &opposite],
            tilt: r.tilt.as_ref(),
            eps_part: &eps_part,
            eps_used: &eps_used,
        };
        let mut placement =
            Placement { calc: &mut self.calc, warnings: &mut self.warnings, of, effects: Vec::new() };
        let height =
            indicator.read_depth(&mut placement, &over)?.ok_or_else(|| nothing_read(&r.gauge, "repeats"))?;
        Ok((height, placement.effects))
    }

    fn placement<'c>(&'c mut self, of: &'c str) -> Placement<'c> {
        Placement { calc: &mut self.calc, warnings: &mut self.warnings, of, effects: Vec::new() }
    }

    fn repeats(
        &mut self,
        entries: &[Entry<Length>],
        bound: &bounds::Bound,
        (gauge, field): (&Entry<Words>, &str),
    ) -> Result<Vec<Given>, Error> {
        let read = repeats(entries, bound, &mut self.warnings)?;
        if read.is_empty() { Err(nothing_read(gauge, field)) } else { Ok(read) }
    }

    /// Strain of a part.
    fn growth(
        &mut self,
        material: &Entry<Words>,
        temperature: Option<&Entry<Temperature>>,
    ) -> Result<Measured, Error> {
        let (t, field) = self.shop.temperature(&mut self.calc, temperature, &mut self.warnings)?;
        let material = self.materials.find(material)?;
        self.materials.growth(&mut self.calc, material, &t, &field)
    }
}

fn nothing_read(gauge: &Entry<Words>, field: &str) -> Error {
    let path = format!("{}/{field}", gauge.parent());
    Error::new(ErrorKind::MissingField, field, "at least one reading is needed").at(&path)
}

/// A bore far from its nominal is another oversize, or a deviation with the wrong sign or unit.
fn check_near(size: &Measured, nominal: f64, repeats: &[Entry<Length>]) -> Result<(), Error> {
    let near = near_nominal("size of this part", nominal);
    match (near.judge(size.value()), repeats.first()) {
        (bounds::Verdict::Impossible, Some(first)) => {
            Err(near.refuse(size.value(), first.text()).suggest(None).at(first.path()))
        }
        _ => Ok(()),
    }
}
