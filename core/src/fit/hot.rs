//! A hot fit from two sizes that were measured or declared: what a fit document and a job have in common.

use super::document::{self, Elastic, Pictures};
use super::read::{Shaped, Temperatures};
use super::report::{
    AgainstPicture, Band, BestPlaced, FoundReport, GaugePointTemperatures, HotReport, KelvinLine, MapPicture,
    OnsetReport, OvalityReport, OverlapReport, PicturesReport, PlaceReport, ProfilePicture, ReferenceReport,
    SectionPicture, SurfacePlace, SurfaceReport,
};
use super::trace::{Sources, Trace};
use crate::assess::{budget_lines, state};
use crate::bounds;
use crate::calc::{Budget, Calc, Measured, formula};
use crate::clearance::hot::inverse::{self, Answer};
use crate::clearance::hot::onset::{Contact, Onset};
use crate::clearance::hot::smallest::Smallest;
use crate::clearance::hot::{BothSides, HotFit, Parts, Place, Position};
use crate::clearance::hot::{contact, picture};
use crate::clearance::{Bench, ReferencePiston};
use crate::error::{Error, ErrorKind};
use crate::growth::Materials;
use crate::growth::field::{Rise, Scenario};
use crate::job::{Given, Warning};
use crate::report::BudgetLine;
use crate::size::REFERENCE_TEMPERATURE_C;

formula! {
    /// A clearance less that of the reference case.
    MarginOf: margin ["mm"] = (clearance, reference) => clearance - reference; source "difference of two clearances; what both share cancels";
    /// Temperature at which a clearance is used up, one step of Newton's method from where it nearly is.
    UsedUp: t ["C"] = (t_found, clearance, touching, per_kelvin) => t_found - (clearance - touching) / per_kelvin;
        source "Newton's method at the contact";
}

/// The original piston at the maker's least clearance.
pub(crate) struct Original {
    pub(crate) parts: Parts,
    pub(crate) sources: Sources,
    pub(crate) least: Given,
    pub(crate) temperature: Given,
    pub(crate) material: usize,
    pub(crate) origin: String,
    /// same alloy, shape and growth as the piston of the fit
    pub(crate) same: bool,
}

/// What the maker says of the original piston.
pub(crate) struct Least {
    pub(crate) clearance: Given,
    pub(crate) temperature: Given,
    pub(crate) origin: String,
}

impl Original {
    /// The original piston in the bore of a fit, at its temperatures.
    pub(crate) fn new(
        shaped: Shaped,
        material: usize,
        least: Least,
        parts: &Parts,
        sources: &Sources,
    ) -> Self {
        let skirts = [&shaped.surfaces, &sources.surfaces].map(|s| s.first().map(|skirt| skirt.material));
        let same = skirts[0] == skirts[1] && shaped.shape == parts.piston && shaped.growth == parts.growth;
        let parts = Parts { piston: shaped.shape, growth: shaped.growth, ..parts.clone() };
        let sources = Sources { piston_shape: shaped.spread, surfaces: shaped.surfaces, ..sources.clone() };
        let Least { clearance, temperature, origin } = least;
        Original { parts, sources, least: clearance, temperature, material, origin, same }
    }
}

/// What is asked of a hot fit besides.
pub(crate) struct Asked {
    /// overlap on one side that an elastic skirt may take
    allowed: Option<f64>,
    find: Vec<(Find, Given)>,
    pictures: Option<Drawn>,
}

/// What is looked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Find {
    BoreForRunning,
    BoreForSmallest,
    SkirtTemperature,
}

/// How finely pictures are drawn.
struct Drawn {
    angles: u32,
    heights: u32,
    crank: Option<f64>,
}

/// Most angles and heights of a picture.
const MOST_DRAWN: u32 = 721;

impl Asked {
    /// What a document asks for.
    pub(crate) fn read(
        elastic: Option<&Elastic>,
        asked: Option<&document::Find>,
        pictures: Option<&Pictures>,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        let allowed = elastic.map(|elastic| {
            elastic.origin.words()?;
            elastic.overlap_per_side.read(&bounds::ELASTIC_OVERLAP, warnings).map(|given| given.value)
        });
        let allowed = allowed.transpose()?;
        let mut find = Vec::new();
        if let Some(asked) = asked {
            let fields = [
                (Find::BoreForRunning, &asked.bore_for_running_clearance),
                (Find::BoreForSmallest, &asked.bore_for_smallest_clearance),
                (Find::SkirtTemperature, &asked.skirt_temperature_for_bench_clearance),
            ];
            for (what, entry) in fields {
                if let Some(entry) = entry {
                    find.push((what, entry.read(&WANTED, warnings)?));
                }
            }
        }
        let pictures = pictures.map(|asked| Drawn::from_document(asked, warnings)).transpose()?;
        Ok(Asked { allowed, find, pictures })
    }
}

/// A clearance that is wanted.
const WANTED: bounds::Bound =
    bounds::Bound { label: "wanted clearance", usual: (-0.1, 0.5), ..bounds::CLEARANCE };

impl Drawn {
    fn from_document(asked: &Pictures, warnings: &mut Vec<Warning>) -> Result<Self, Error> {
        let crank = asked.crank.as_ref().map(|c| c.read(&bounds::CRANK_ANGLE, warnings)).transpose()?;
        Ok(Drawn {
            angles: asked.angles.count(2, MOST_DRAWN)?,
            heights: asked.heights.count(2, MOST_DRAWN)?,
            crank: crank.map(|c| c.value),
        })
    }
}

impl Find {
    fn told(self, wanted: &Given, answer: Answer) -> FoundReport {
        let what = match self {
            Find::BoreForRunning => "bore_for_running_clearance",
            Find::BoreForSmallest => "bore_for_smallest_clearance",
            Find::SkirtTemperature => "skirt_temperature_for_bench_clearance",
        };
        let (found, no_solution) = match answer {
            Answer::Found(number) => (Some(number), None),
            Answer::NoSolution(reason) => (None, Some(reason)),
        };
        let of_size = self != Find::SkirtTemperature;
        FoundReport {
            what,
            wanted: wanted.text.clone(),
            size_mm: found.filter(|_| of_size),
            temperature_c: found.filter(|_| !of_size),
            no_solution,
        }
    }
}

/// Everything that a hot fit needs.
pub(crate) struct Hot<'a> {
    pub(crate) calc: &'a mut Calc,
    pub(crate) materials: &'a Materials,
    pub(crate) parts: Parts,
    pub(crate) sources: Sources,
    pub(crate) temperatures: &'a Temperatures,
    pub(crate) original: Option<Original>,
    pub(crate) asked: &'a Asked,
    /// place in the report
    pub(crate) at: String,
    /// asked between its parts, each of which may take long
    pub(crate) goes_on: &'a dyn Fn() -> Result<(), Error>,
}

impl Hot<'_> {
    /// Everything that is asked of the fit.
    pub(crate) fn report(mut self) -> Result<HotReport, Error> {
        self.told().map_err(|e| placed(e, &self.sources.field, &self.sources.bore_place))
    }

    fn told(&mut self) -> Result<HotReport, Error> {
        let fit = HotFit::new(self.parts.clone())?;
        let bench = self.calc.apply(Bench, [&self.sources.bore, &self.sources.piston]);
        let running = self.running(&fit, &self.sources.clone())?;
        let mut places = Vec::with_capacity(self.parts.piston.surfaces.len());
        let mut smallest = Vec::with_capacity(self.parts.piston.surfaces.len());
        let mut surfaces = Vec::with_capacity(self.parts.piston.surfaces.len());
        for index in 0..self.parts.piston.surfaces.len() {
            (self.goes_on)()?;
            let (found, value, report) = self.surface(&fit, index)?;
            places.push(found.place);
            smallest.push(value);
            surfaces.push(report);
        }
        (self.goes_on)()?;
        let original = self.original.take();
        let reference =
            original.as_ref().map(|o| self.reference(o, &running, smallest.first())).transpose()?;
        let onset =
            Scenario::ALL.iter().map(|scenario| self.onset(&fit, *scenario)).collect::<Result<_, _>>()?;
        let at = self.at.clone();
        let found = self.found(&fit)?;
        let pictures = self.pictures(&fit, &places, reference.as_ref().map(|r| &r.fit))?;
        Ok(HotReport {
            bench: state(self.calc, &bench, &format!("{at}/bench")),
            running: state(self.calc, &running, &format!("{at}/running")),
            running_crank_deg: running_crank(&fit),
            gauge_point: gauge_point(&fit)?,
            origin: self.temperatures.origin.clone(),
            surfaces,
            reference: reference.map(|r| r.report),
            onset,
            found,
            pictures,
            notes: notes(&fit, original.is_some()),
        })
    }

    /// Running clearance at the gauge point, over the diameter.
    fn running(&mut self, fit: &HotFit, sources: &Sources) -> Result<Measured, Error> {
        let mut trace = Trace { calc: self.calc, materials: self.materials, fit, sources, rise: Rise::FULL };
        let thrust = trace.clearance(&gauge_place(fit, 0.0)?)?;
        let minor = trace.clearance(&gauge_place(fit, 180.0)?)?;
        Ok(self.calc.apply(BothSides, [&thrust, &minor]))
    }

    /// Clearance on one side at a place.
    fn clearance(&mut self, fit: &HotFit, sources: &Sources, place: &Place) -> Result<Measured, Error> {
        Trace { calc: self.calc, materials: self.materials, fit, sources, rise: Rise::FULL }.clearance(place)
    }

    fn surface(&mut self, fit: &HotFit, index: usize) -> Result<(Smallest, Measured, SurfaceReport), Error> {
        let shape = self.parts.piston.surfaces.get(index);
        let name = shape.map(|s| s.name.clone()).unwrap_or_default();
        let found = fit.smallest(index)?;
        let of = name.clone();
        self.calc.heading(|| of);
        let sources = self.sources.clone();
        let smallest = self.clearance(fit, &sources, &found.place)?;
        let at = format!("{}/surfaces/{index}", self.at);
        let best = fit.best_placed(index, position_of(fit, &found.place))?;
        let report = SurfaceReport {
            name,
            smallest: state(self.calc, &smallest, &format!("{at}/smallest")),
            place: place_report(&found.place),
            certified_within_mm: found.within_mm,
            best_placed: BestPlaced {
                clearance_mm: best.clearance_mm,
                thrust_mm: best.thrust_mm,
                pin_mm: best.pin_mm,
                certified_within_mm: best.within_mm,
            },
            overlap: self.overlap(fit, &found, &smallest)?,
            ovality: ovality(fit, index)?,
        };
        Ok((found, smallest, report))
    }

    /// Where the surface overlaps, at the crank angle of its smallest clearance.
    fn overlap(
        &self,
        fit: &HotFit,
        found: &Smallest,
        smallest: &Measured,
    ) -> Result<Option<OverlapReport>, Error> {
        if found.clearance_mm >= 0.0 {
            return Ok(None);
        }
        let position = position_of(fit, &found.place);
        let surface = found.place.surface;
        let patch = fit.contact(surface, position, 0.0)?;
        let beyond =
            self.asked.allowed.map(|allowed| fit.contact(surface, position, -allowed)).transpose()?;
        let band = |b: contact::Band| Band { height_mm: b.height_mm, from_deg: b.from_deg, to_deg: b.to_deg };
        Ok(Some(OverlapReport {
            area_mm2: patch.area_mm2,
            beyond_allowed_mm2: beyond.map(|b| b.area_mm2),
            largest_mm: -smallest.value(),
            bands: patch.bands.into_iter().map(band).collect(),
        }))
    }

    fn found(&self, fit: &HotFit) -> Result<Vec<FoundReport>, Error> {
        let touching = self.asked.allowed.map_or(0.0, |allowed| -allowed);
        let mut out = Vec::new();
        for (what, wanted) in &self.asked.find {
            (self.goes_on)()?;
            let answer = match what {
                Find::BoreForRunning => fit.bore_for_running_clearance(wanted.value, gauge_position(fit)),
                Find::BoreForSmallest => fit.bore_for_smallest_clearance(wanted.value),
                Find::SkirtTemperature => {
                    let scenario = Scenario::PistonAlone;
                    fit.piston_temperature_for_bench_clearance(wanted.value, scenario, touching)
                }
            };
            out.push(what.told(wanted, answer.map_err(|e| e.moved(wanted.path.clone()))?));
        }
        Ok(out)
    }

    fn pictures(
        &self,
        fit: &HotFit,
        places: &[Place],
        reference: Option<&HotFit>,
    ) -> Result<Option<PicturesReport>, Error> {
        let Some(asked) = &self.asked.pictures else {
            return Ok(None);
        };
        let mut out = PicturesReport {
            profile: Vec::new(),
            sections: Vec::new(),
            maps: Vec::new(),
            against_temperature: against(fit, reference)?,
        };
        let position = match (asked.crank, fit.is_straight()) {
            (_, true) => Position::Anywhere,
            (Some(crank), _) => Position::Crank(crank),
            (None, _) => Position::TopDeadCentre,
        };
        for (index, (shape, place)) in self.parts.piston.surfaces.iter().zip(places).enumerate() {
            (self.goes_on)()?;
            let surface = shape.name.clone();
            let at_smallest = position_of(fit, place);
            let height_mm = place.height_mm;
            out.profile.push(profile(surface.clone(), fit.profile(index, asked.heights)?));
            let section = fit.section_at(height_mm, at_smallest, asked.angles)?;
            out.sections.push(section_picture(surface.clone(), height_mm, section));
            let picture::Map { angles_deg, heights_mm, clearance_mm } =
                fit.map_of(index, position, asked.angles, asked.heights)?;
            let crank_deg = if fit.is_straight() { None } else { asked.crank.or_else(|| running_crank(fit)) };
            out.maps.push(MapPicture { surface, crank_deg, angles_deg, heights_mm, clearance_mm });
        }
        Ok(Some(out))
    }

    fn reference(
        &mut self,
        original: &Original,
        running: &Measured,
        smallest: Option<&Measured>,
    ) -> Result<Reference, Error> {
        self.calc.heading(|| "the original piston at the maker's least clearance".to_owned());
        let t = self.calc.given("t", &original.temperature).into();
        let field = &original.temperature.path;
        let eps_bore = self.materials.growth(self.calc, self.sources.bore_material, &t, field)?;
        let eps_piston = self.materials.growth(self.calc, original.material, &t, field)?;
        let least = self.calc.given("c_min", &original.least).into();
        let piston = self.calc.apply(ReferencePiston, [&self.sources.bore, &eps_bore, &least, &eps_piston]);
        let parts = Parts { piston_diameter_mm: piston.value(), ..original.parts.clone() };
        let fit = HotFit::new(parts)?;
        let sources = Sources { piston, ..original.sources.clone() };
        let own_running = self.running(&fit, &sources)?;
        let found = fit.smallest(0)?;
        let own_smallest = self.clearance(&fit, &sources, &found.place)?;
        let margin = self.calc.apply(MarginOf, [running, &own_running]);
        let smallest_margin = smallest.map(|s| self.calc.apply(MarginOf, [s, &own_smallest]));
        let at = format!("{}/reference", self.at);
        let smallest_margin = smallest_margin.unwrap_or_else(|| margin.clone());
        let report = ReferenceReport {
            running: state(self.calc, &own_running, &format!("{at}/running")),
            margin: state(self.calc, &margin, &format!("{at}/margin")),
            smallest_mm: found.clearance_mm,
            smallest_margin: state(self.calc, &smallest_margin, &format!("{at}/smallest_margin")),
            origin: original.origin.clone(),
            note: if original.same { SAME_ALLOY } else { OTHER_ALLOY }.to_owned(),
        };
        Ok(Reference { fit, report })
    }

    fn onset(&mut self, fit: &HotFit, scenario: Scenario) -> Result<OnsetReport, Error> {
        let touching = self.asked.allowed.map_or(0.0, |allowed| -allowed);
        let none = |outcome, factor: f64, stopped_by| OnsetReport {
            scenario: scenario.word(),
            outcome,
            touching_at_mm: touching,
            factor,
            thrust_c: fit.gauge_thrust_c(factor),
            standard_uncertainty_k: None,
            budget: Vec::new(),
            place: None,
            stopped_by,
        };
        (self.goes_on)()?;
        match fit.onset(scenario, touching)? {
            Onset::Touches(contact) => self.touches(fit, scenario, touching, &contact),
            Onset::TouchesCold => Ok(none("touches_at_20_c", 0.0, None)),
            Onset::NoContact { factor, stopped_by, .. } => Ok(none("no_contact", factor, Some(stopped_by))),
        }
    }

    fn touches(
        &mut self,
        fit: &HotFit,
        scenario: Scenario,
        touching: f64,
        contact: &Contact,
    ) -> Result<OnsetReport, Error> {
        self.calc.heading(|| format!("first contact, {}", scenario.spoken()));
        // the temperature is what is asked for: only that of a bore that keeps its own is uncertain
        let bore_field = self.sources.bore_field.filter(|_| scenario == Scenario::PistonAlone);
        let sources = Sources { piston_field: None, bore_field, ..self.sources.clone() };
        let rise = scenario.rise(contact.factor);
        let trace = Trace { calc: self.calc, materials: self.materials, fit, sources: &sources, rise };
        let clearance = { trace }.clearance(&contact.place)?;
        let thrust_c = fit.gauge_thrust_c(contact.factor);
        let per_kelvin = contact.slope_mm / (fit.gauge_thrust_c(1.0) - REFERENCE_TEMPERATURE_C);
        let found = self.calc.constant("t_found", thrust_c, "C", "first contact, by bracketing").into();
        let touching_at =
            self.calc.constant("touching", touching, "mm", "clearance that counts as touching").into();
        let slope = self
            .calc
            .constant("per_kelvin", per_kelvin, "mm/K", "slope of the clearance at the contact")
            .into();
        let t = self.calc.apply(UsedUp, [&found, &clearance, &touching_at, &slope]);
        let budget = self.calc.budget(&t);
        let at = format!("{}/onset/{}", self.at, scenario_index(scenario));
        self.calc.place(t.figure, || format!("{at}/thrust_c"));
        self.calc.place(budget.standard, || format!("{at}/standard_uncertainty_k"));
        let name = self.parts.piston.surfaces.get(contact.place.surface).map(|s| s.name.clone());
        Ok(OnsetReport {
            scenario: scenario.word(),
            outcome: "touches",
            touching_at_mm: touching,
            factor: contact.factor,
            thrust_c: t.value(),
            standard_uncertainty_k: Some(budget.standard.value),
            budget: kelvin_lines(self.calc, &budget, &at),
            place: Some(SurfacePlace {
                surface: name.unwrap_or_default(),
                place: place_report(&contact.place),
            }),
            stopped_by: None,
        })
    }
}

/// A refusal of the fit itself, at the part of the document it is of: the temperatures at `field`, the shape of the bore at `bore`.
pub(crate) fn placed(error: Error, field: &str, bore: &str) -> Error {
    let place = match error.field() {
        // a stop is of no field
        _ if error.kind() == ErrorKind::Stopped => return error,
        known if known.starts_with('/') => return error,
        of if of.contains("piston_field") => format!("{field}/piston"),
        of if of.contains("bore_field") => format!("{field}/bore"),
        of if of.starts_with("bore/") => bore.to_owned(),
        // it matters where the piston stands, and that is not known
        of if of == "motion" || of == "position" => "/motion".to_owned(),
        _ => return error.under(field),
    };
    error.moved(place)
}

fn notes(fit: &HotFit, compared: bool) -> Vec<String> {
    let mut out = Vec::new();
    if !compared {
        out.push(NO_REFERENCE.to_owned());
    }
    if !fit.is_straight() {
        out.push(AT_TOP.to_owned());
    }
    out
}

const NO_REFERENCE: &str =
    "There is no least clearance of the maker to compare with: the running clearances ask for judgement.";
const AT_TOP: &str = "The running clearance at the gauge point is that at top dead centre.";

/// The reference case with the fit of its piston.
struct Reference {
    fit: HotFit,
    report: ReferenceReport,
}

const SAME_ALLOY: &str = "The piston has the alloy and the shape of the original: the margin holds no thermal information beyond the bench margin.";
const OTHER_ALLOY: &str = "The piston has another alloy or another shape than the original: the margin is what it grows more or less by, too.";

fn place_report(place: &Place) -> PlaceReport {
    let Place { angle_deg, height_mm, depth_mm, crank_deg, .. } = *place;
    PlaceReport { angle_deg, height_mm, depth_mm, crank_deg }
}

/// The gauge point on one side, at top dead centre when the piston moves in the bore.
fn gauge_place(fit: &HotFit, angle_deg: f64) -> Result<Place, Error> {
    let height_mm = fit.parts().piston.gauge_height_mm;
    let depth_mm = fit.depth_mm(height_mm, gauge_position(fit))?;
    Ok(Place { surface: 0, angle_deg, height_mm, depth_mm, crank_deg: running_crank(fit) })
}

fn gauge_position(fit: &HotFit) -> Position {
    if fit.is_straight() { Position::Anywhere } else { Position::TopDeadCentre }
}

fn running_crank(fit: &HotFit) -> Option<f64> {
    let motion = fit.parts().motion.as_ref().filter(|_| !fit.is_straight())?;
    Some(motion.top_dead_centre_deg())
}

fn position_of(fit: &HotFit, place: &Place) -> Position {
    match place.crank_deg {
        Some(crank) if !fit.is_straight() => Position::Crank(crank),
        _ => Position::Anywhere,
    }
}

/// Depth of the gauge point at top dead centre; 0 when it does not matter.
pub(crate) fn gauge_depth(fit: &HotFit) -> Result<f64, Error> {
    let height = fit.parts().piston.gauge_height_mm;
    Ok(fit.depth_mm(height, gauge_position(fit))?.unwrap_or(0.0))
}

/// Temperatures at the gauge point.
fn gauge_point(fit: &HotFit) -> Result<GaugePointTemperatures, Error> {
    let (thrust_c, pin_c) = fit.piston_c(fit.parts().piston.gauge_height_mm)?;
    Ok(GaugePointTemperatures { thrust_c, pin_c, bore_c: fit.bore_c(gauge_depth(fit)?)? })
}

/// A budget in kelvin, with its value at `at`.
fn kelvin_lines(calc: &mut Calc, budget: &Budget, at: &str) -> Vec<KelvinLine> {
    let lines = budget_lines(calc, budget, at, "contribution_k");
    let kelvin = |l: BudgetLine| KelvinLine {
        source: l.source,
        contribution_k: l.contribution_mm,
        share: l.share,
        path: l.path,
    };
    lines.into_iter().map(kelvin).collect()
}

fn scenario_index(scenario: Scenario) -> usize {
    Scenario::ALL.iter().position(|s| *s == scenario).unwrap_or_default()
}

/// Ovality at the rows of a surface.
fn ovality(fit: &HotFit, index: usize) -> Result<Vec<OvalityReport>, Error> {
    let at = |height_mm: f64| {
        let inverse::OvalityAt { cold_mm, running_mm, round_running_mm } = fit.ovality(index, height_mm)?;
        Ok(OvalityReport { height_mm, cold_mm, running_mm, round_running_mm })
    };
    fit.rows(index)?.into_iter().map(at).collect()
}

fn profile(surface: String, data: picture::Profile) -> ProfilePicture {
    let picture::Profile { heights_mm, cold_thrust_mm, cold_pin_mm, hot_thrust_mm, hot_pin_mm } = data;
    ProfilePicture { surface, heights_mm, cold_thrust_mm, cold_pin_mm, hot_thrust_mm, hot_pin_mm }
}

fn section_picture(surface: String, height_mm: f64, data: picture::SectionData) -> SectionPicture {
    let picture::SectionData { angles_deg, piston_cold_mm, piston_hot_mm, bore_cold_mm, bore_hot_mm } = data;
    SectionPicture {
        surface,
        height_mm,
        angles_deg,
        piston_cold_mm,
        piston_hot_mm,
        bore_cold_mm,
        bore_hot_mm,
    }
}

/// Factors that the smallest clearance is drawn over.
const FACTORS: u32 = 25;

/// The smallest clearance against the rise of piston and bore, as far as every law holds and no further than twice.
fn against(fit: &HotFit, reference: Option<&HotFit>) -> Result<AgainstPicture, Error> {
    let last = |of: &HotFit| of.highest_factor(Scenario::PistonAndBore);
    let ends = [Some(last(fit)), reference.map(last)].into_iter().flatten();
    let end = ends.fold(2.0, |end, k| if k < end { k } else { end });
    let factors = picture::evenly(0.0, end, FACTORS);
    Ok(AgainstPicture {
        thrust_c: factors.iter().map(|k| fit.gauge_thrust_c(*k)).collect(),
        clearance_mm: fit.against_rise(&factors)?,
        reference_mm: reference.map(|r| r.against_rise(&factors)).transpose()?.unwrap_or_default(),
        factors,
    })
}
