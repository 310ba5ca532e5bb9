//! The hot fit of a cylinder: what all of them have in common, and each from its own readings.

use super::bore::Bore;
use super::clearance::{Celsius, Pair, RunningState};
use super::piston::Piston;
use super::{Assessment, Engine};
use crate::calc::{Figure, Measured};
use crate::clearance::hot::{Controlled, HotFit, Motion, Parts};
use crate::decision::LimitSets;
use crate::error::{Error, ErrorKind};
use crate::fit::document::PistonShape;
use crate::fit::{
    Asked, BoreSources, Hot, HotReport, Least, Original, Reader, Shaped, Sources, Temperatures, gauge_depth,
    placed,
};
use crate::growth::field::{Coldest, Hottest};
use crate::growth::{Materials, Piecewise};
use crate::job::document::{self as doc, Datum, Surface};
use crate::job::{Document, Entry, Warning};
use crate::progress::Work;
use crate::shape::bore::BoreShape;
use crate::shape::levels::Levels;

/// What the hot fits of all cylinders have in common.
pub(super) struct HotState {
    piston: Shaped,
    original: Shaped,
    original_material: usize,
    motion: Motion,
    temperatures: Temperatures,
    asked: Asked,
}

const COATED: &str = "The running clearances everywhere are those of the coated skirt; the clearance on the bench is over the bare metal.";

/// A hot fit that is not computed yet: it takes longest, so that everything else is read first.
pub(super) struct Pending {
    parts: Parts,
    sources: Sources,
    original: Option<Original>,
    notes: Vec<String>,
    at: String,
    /// field of the piston's reading at its gauge point
    read: String,
}

/// Which of two pistons.
#[derive(Debug, Clone, Copy)]
pub(super) enum Which {
    Fitted,
    Original,
}

impl HotState {
    /// Reads the shape of the pistons and the temperatures by height and depth; none without them.
    pub(super) fn from_document(
        document: &Document,
        engine: &Engine,
        limits: &LimitSets,
        reader: &mut Reader<'_>,
    ) -> Result<Option<Self>, Error> {
        let Some(shape) = &document.engine.piston.shape else {
            without_shape(document)?;
            return Ok(None);
        };
        check_gauge_point(&document.engine.piston.gauge_point, engine)?;
        let gauge = &engine.gauge_point.height;
        let piston = reader.piston_shape(shape, gauge, engine.piston_material, "shape of the pistons")?;
        engine.check_materials(shape, &piston)?;
        let original = document.running.as_ref().and_then(|r| r.original_piston_shape.as_ref());
        for shape in [Some(shape), original].into_iter().flatten() {
            check_skirt(shape, limits)?;
        }
        let motion = document.engine.motion.as_ref();
        let motion = motion.map(|m| reader.motion(m, &piston.height)).transpose()?;
        let Document { elastic, find, pictures, .. } = document;
        let asked = Asked::read(elastic.as_ref(), find.as_ref(), pictures.as_ref(), reader.warnings)?;
        let Some(running) = &document.running else {
            return Ok(None); // the report says that the hot fit was not examined
        };
        let reason = "with the shape of the pistons the temperatures are stated by height and depth";
        let field = running.field.as_ref().ok_or_else(|| missing("/running/field", reason))?;
        let reason = "with the shape of the pistons it matters where they stand in their bores";
        let motion = motion.ok_or_else(|| missing("/engine/motion", reason))?;
        let original_material = reader.materials.find(&running.original_piston_material)?;
        let own = (shape, piston.spread);
        let original = reader.original_shape(original, own, gauge, original_material)?;
        let temperatures = reader.field(field, "/running/field", (&piston, Some(&motion)))?;
        Ok(Some(HotState { piston, original, original_material, motion, temperatures, asked }))
    }

    /// The temperatures of the running engine at the gauge point, which the field states for a place and with an error.
    ///
    /// Everything is held against a bore and a piston of nominal size, because nothing may be read yet.
    pub(super) fn running(
        &self,
        running: &doc::Running,
        engine: &Engine,
        reader: &mut Reader<'_>,
    ) -> Result<RunningState, Error> {
        let depth = self.nominal_gauge_depth(engine, reader.materials)?;
        let ranges = [&running.piston_temperature, &running.bore_temperature].into_iter().flatten();
        let mut stated_twice =
            ranges.map(|range| range.min.parent()).chain(running.origin.as_ref().map(Entry::path));
        if let Some(path) = stated_twice.next() {
            let reason = "the field says it already: the temperatures at the gauge point are those of it";
            return Err(Error::new(ErrorKind::Contradiction, "", reason).at(path));
        }
        let Temperatures { piston, bore, piston_spread, bore_spread, origin, place } = &self.temperatures;
        let calc = &mut *reader.calc;
        calc.heading(|| "temperatures at the gauge point".to_owned());
        let height = calc.given("z", &engine.gauge_point.height);
        let thrust = piston.thrust_c.temperature(calc, height);
        let depth = calc.constant("y", depth, "mm", "depth of the gauge point at top dead centre");
        let wall = bore.wall_c.temperature(calc, depth);
        let mut ends = |t: Figure, u: Figure, of: &str| {
            let found = |figure| Celsius::Found { figure, path: format!("{place}/{of}") };
            (found(calc.figure(Coldest, [t, u])), found(calc.figure(Hottest, [t, u])))
        };
        let piston = ends(thrust, piston_spread.standard, "piston");
        let bore = ends(wall, bore_spread.standard, "bore");
        Ok(RunningState::of_field(piston, bore, origin.clone(), self.original_material))
    }

    fn nominal_gauge_depth(&self, engine: &Engine, materials: &Materials) -> Result<f64, Error> {
        let bore = BoreShape::round(engine.bore_nominal)?.with_end(engine.bore_length.value)?;
        let parts = self.parts(engine, materials, bore, engine.piston_nominal)?;
        let (piston, growth) = (self.original.shape.clone(), self.original.growth.clone());
        let at = |error: Error| placed(error, &self.temperatures.place, "/engine/bore");
        HotFit::new(Parts { piston, growth, ..parts.clone() }).map_err(at)?;
        HotFit::new(parts).and_then(|fit| gauge_depth(&fit)).map_err(at)
    }

    fn parts(
        &self,
        engine: &Engine,
        materials: &Materials,
        bore: BoreShape,
        piston_mm: f64,
    ) -> Result<Parts, Error> {
        let mut ports = engine.windows.iter().map(super::barrel::Window::port);
        Ok(Parts {
            piston_diameter_mm: piston_mm,
            piston: self.piston.shape.clone(),
            growth: self.piston.growth.clone(),
            piston_field: self.temperatures.piston.clone(),
            bore: ports.try_fold(bore, BoreShape::with_port)?,
            bore_law: Piecewise::of(materials.law(engine.bore_material)?),
            bore_field: self.temperatures.bore.clone(),
            motion: Some(self.motion),
        })
    }

    /// Does the shape put a coating on the gauge diameter of the skirt?
    pub(super) fn is_coated(&self) -> bool {
        self.piston.shape.surfaces.first().is_some_and(|skirt| skirt.coating_mm > 0.0)
    }

    /// Are piston and original of one alloy, and does as much of its growth remain?
    pub(super) fn grow_alike(&self) -> bool {
        self.piston.growth == self.original.growth
    }
}

impl Assessment {
    /// Strain of a piston on its thrust axis at the gauge point: what controlled expansion leaves of that of its alloy.
    pub(super) fn controlled(&mut self, which: Which, eps: Measured) -> Measured {
        let piston = self.hot.as_ref().map(|hot| match which {
            Which::Fitted => &hot.piston,
            Which::Original => &hot.original,
        });
        let skirt = piston.and_then(|piston| piston.surfaces.first());
        match skirt.and_then(|skirt| skirt.growth_ratios(&mut self.calc)) {
            Some([thrust, _]) => self.calc.apply(Controlled, [&thrust, &eps]),
            None => eps,
        }
    }

    /// What a piston in its bore is made of; none without a shape and temperatures.
    pub(super) fn pending(
        &mut self,
        pair: &Pair<'_>,
        piston: &Piston,
        bore: &Bore,
        at: String,
    ) -> Result<Option<Pending>, Error> {
        let Some(state) = &self.hot else {
            return Ok(None);
        };
        let (Some(levels), Some(read)) = (Levels::of(&mut self.calc, &bore.places), piston.first()) else {
            return Ok(None);
        };
        let shape = levels.shape(pair.bore.value(), self.engine.bore_length.value)?;
        let parts = state.parts(&self.engine, &self.materials, shape, pair.piston.value())?;
        let coated = state.is_coated().then(|| COATED.to_owned());
        let notes = levels.notes().into_iter().chain(coated).collect();
        let sources = Sources {
            bore: pair.bore.clone(),
            bore_material: self.engine.bore_material,
            bore_shape: BoreSources::Read(Box::new(levels)),
            bore_field: Some(state.temperatures.bore_spread),
            piston: pair.piston.clone(),
            piston_shape: state.piston.spread,
            piston_field: Some(state.temperatures.piston_spread),
            surfaces: state.piston.surfaces.clone(),
            field: state.temperatures.place.clone(),
            bore_place: "/engine/bore".to_owned(),
        };
        let least = pair.limit.as_ref().and_then(|l| {
            let clearance = l.lower.clone()?;
            Some(Least { clearance, temperature: l.temperature.clone(), origin: l.origin.clone() })
        });
        let original = least.map(|least| {
            Original::new(state.original.clone(), state.original_material, least, &parts, &sources)
        });
        Ok(Some(Pending { parts, sources, original, notes, at, read: read.path.clone() }))
    }

    /// The clearance of a cylinder everywhere and at temperature.
    pub(super) fn hot_fit(&mut self, pending: Pending, work: &Work<'_>) -> Result<Option<HotReport>, Error> {
        let Some(state) = &self.hot else {
            return Ok(None);
        };
        let Pending { parts, sources, original, notes, at, read } = pending;
        let (calc, materials) = (&mut self.calc, &self.materials);
        let (temperatures, asked) = (&state.temperatures, &state.asked);
        let goes_on = &|| work.ask();
        let hot = Hot { calc, materials, parts, sources, temperatures, original, asked, at, goes_on };
        let mut report = hot.report()?;
        report.notes.extend(notes);
        self.warnings.extend(tighter_than_original(&report, read));
        Ok(Some(report))
    }
}

/// An overlap is no verdict, but a piston that is tighter than the original at the maker's least clearance asks for attention.
fn tighter_than_original(hot: &HotReport, path: String) -> Option<Warning> {
    let margin = &hot.reference.as_ref()?.smallest_margin;
    if margin.value_mm + margin.expanded_uncertainty_mm >= 0.0 {
        return None;
    }
    let text = format!(
        "running, the skirt is tighter than that of an original piston fitted at the maker's least clearance: by {:.4} mm, give or take {:.4}, on one side, each at its tightest place",
        -margin.value_mm, margin.expanded_uncertainty_mm
    );
    Some(Warning { kind: "tighter_than_original".to_owned(), path, text })
}

impl Engine {
    /// The surfaces of a shape are of the materials that the engine names by height.
    fn check_materials(&self, shape: &PistonShape, piston: &Shaped) -> Result<(), Error> {
        for ((entry, surface), sources) in
            shape.surfaces.iter().zip(&piston.shape.surfaces).zip(&piston.surfaces)
        {
            if let Some(range) = self.piston_ranges.iter().find(|r| r.contradicts(surface, sources.material))
            {
                let reason = format!("materials_by_height has {} at its height", range.name);
                let entry = entry.material.as_ref().unwrap_or(&entry.name);
                return Err(entry.refuse(ErrorKind::Contradiction, reason));
            }
        }
        Ok(())
    }
}

/// The heights of a shape are counted from the bottom edge of the skirt, and its gauge diameter lies on the thrust axis.
fn check_gauge_point(point: &doc::GaugePoint, engine: &Engine) -> Result<(), Error> {
    if point.datum != Datum::SkirtBottom {
        let reason = "with the shape of the pistons it is counted from the bottom edge of the skirt, as the heights of the shape are";
        return Err(point.height.refuse(ErrorKind::Contradiction, reason));
    }
    if !crate::shape::one_diameter(engine.gauge_point.angle.value, 0.0) {
        let reason = "with the shape of the pistons the gauge diameter lies on the thrust axis, 0 deg";
        return Err(point.angle.refuse(ErrorKind::Contradiction, reason));
    }
    Ok(())
}

/// The material of a skirt is that at the gauge point, and a limit over the coating means a diameter that holds the coating.
fn check_skirt(shape: &PistonShape, limits: &LimitSets) -> Result<(), Error> {
    let Some(skirt) = shape.surfaces.first() else {
        return Ok(());
    };
    if let Some(material) = &skirt.material {
        let reason = "the skirt is of the material at the gauge point, which is named with the piston";
        return Err(material.refuse(ErrorKind::Contradiction, reason));
    }
    let mut over = limits.printed().filter_map(|l| l.bench_clearance.as_ref()?.over);
    match skirt.coating.as_ref().filter(|_| over.any(|surface| surface == Surface::Coating)) {
        Some(coating) => {
            let reason = "the bench clearance is over the coating: the gauge diameter holds it already";
            Err(coating.refuse(ErrorKind::Contradiction, reason))
        }
        None => Ok(()),
    }
}

/// Without the shape of the pistons nothing that a hot fit needs may be stated: it would not be used.
fn without_shape(document: &Document) -> Result<(), Error> {
    let running = document.running.as_ref();
    let field = running.and_then(|r| r.field.as_ref());
    let original = running.and_then(|r| r.original_piston_shape.as_ref());
    let stated = [
        (document.engine.motion.is_some(), "/engine/motion"),
        (field.is_some(), "/running/field"),
        (original.is_some(), "/running/original_piston_shape"),
        (document.elastic.is_some(), "/elastic"),
        (document.find.is_some(), "/find"),
        (document.pictures.is_some(), "/pictures"),
    ];
    match stated.into_iter().find(|(is_stated, _)| *is_stated) {
        Some((_, path)) => {
            let reason = "it needs the shape of the pistons, /engine/piston/shape";
            Err(Error::new(ErrorKind::Contradiction, "", reason).at(path))
        }
        None => Ok(()),
    }
}

fn missing(path: &str, reason: &str) -> Error {
    let name = path.rsplit('/').next().unwrap_or_default();
    Error::new(ErrorKind::MissingField, name, reason).at(path)
}
