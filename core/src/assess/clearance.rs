//! A piston in its bore: on the bench, running, against the reference case.

use super::bore::Bore;
use super::hot::{HotState, Pending, Which};
use super::piston::Piston;
use super::{Assessment, not_judged};
use crate::bounds;
use crate::calc::{Calc, Figure, Measured};
use crate::clearance::{Bench, Margin, ReferencePiston, Running};
use crate::decision::{Against, Decision, Ground, Limit, Limits, Of, Outcome};
use crate::error::{Error, ErrorKind};
use crate::growth::Materials;
use crate::job::document::{self as doc, Surface};
use crate::job::{Given, Warning};
use crate::measurement::hold;
use crate::report::{ClearanceReport, RunningCase, RunningReport};

/// Temperatures of the running engine at the gauge point, from the coldest to the hottest, and the original piston.
pub(super) struct RunningState {
    piston: (Celsius, Celsius),
    bore: (Celsius, Celsius),
    origin: String,
    original_material: usize,
}

/// A temperature of the running engine.
pub(super) enum Celsius {
    Stated(Given),
    /// from a field that stands at `path`
    Found {
        figure: Figure,
        path: String,
    },
}

impl Celsius {
    fn figure(&self, calc: &mut Calc) -> Figure {
        match self {
            Celsius::Stated(given) => calc.given("t", given),
            Celsius::Found { figure, .. } => *figure,
        }
    }

    fn path(&self) -> &str {
        match self {
            Celsius::Stated(given) => &given.path,
            Celsius::Found { path, .. } => path,
        }
    }

    /// Refuses it when the law of a material does not hold there.
    fn check(&self, materials: &Materials, material: usize) -> Result<(), Error> {
        match self {
            Celsius::Stated(given) => materials.check(material, given),
            Celsius::Found { figure: Figure { value, unit, .. }, path } => {
                let (text, path) = (format!("{value} {unit}"), path.clone());
                materials.check(material, &Given { value: *value, unit, text, path })
            }
        }
    }
}

/// A clearance with its grounds for the verdict of the cylinder.
pub(super) struct Clearance {
    pub(super) report: ClearanceReport,
    pub(super) grounds: Vec<Ground>,
    pub(super) hot: Option<Pending>,
    pub(super) missing: Vec<String>,
}

/// Piston and bore at 20 C, over the surface that the limit means.
pub(super) struct Pair<'a> {
    pub(super) piston: &'a Measured,
    pub(super) bore: &'a Measured,
    overdue: Vec<String>,
    /// the limit, when it can be used for this pair
    pub(super) limit: Option<Limit>,
}

impl RunningState {
    pub(super) fn from_document(
        running: &doc::Running,
        materials: &Materials,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        let at = running.original_piston_material.parent();
        let missing = |name: &str| {
            let reason = "this field is required, or the temperatures by height and depth in its place";
            Error::new(ErrorKind::MissingField, name, reason).at(&format!("{at}/{name}"))
        };
        let mut range = |range: &Option<doc::Range>, name: &str, bound: &bounds::Bound| {
            let range = range.as_ref().ok_or_else(|| missing(name))?;
            let low = range.min.read(bound, warnings)?;
            let high = range.max.read(bound, warnings)?;
            if low.value > high.value {
                let reason = format!("max must not be below min, {}", low.text);
                return Err(range.max.refuse(ErrorKind::OutOfOrder, reason).value(high.value));
            }
            Ok((Celsius::Stated(low), Celsius::Stated(high)))
        };
        Ok(RunningState {
            piston: range(&running.piston_temperature, "piston_temperature", &bounds::SKIRT_TEMPERATURE)?,
            bore: range(&running.bore_temperature, "bore_temperature", &bounds::RUNNING_TEMPERATURE)?,
            origin: running.origin.as_ref().ok_or_else(|| missing("origin"))?.words()?.to_owned(),
            original_material: materials.find(&running.original_piston_material)?,
        })
    }

    /// Temperatures that a field has at the gauge point.
    pub(super) fn of_field(
        piston: (Celsius, Celsius),
        bore: (Celsius, Celsius),
        origin: String,
        original_material: usize,
    ) -> Self {
        RunningState { piston, bore, origin, original_material }
    }

    /// Refuses temperatures at which the laws of the piston and of the bore do not hold.
    pub(super) fn check_laws(&self, materials: &Materials, piston: usize, bore: usize) -> Result<(), Error> {
        for (material, (low, high)) in [(piston, &self.piston), (bore, &self.bore)] {
            low.check(materials, material)?;
            high.check(materials, material)?;
        }
        Ok(())
    }
}

impl Assessment {
    pub(super) fn clearance(
        &mut self,
        piston: &Piston,
        bore: &Bore,
        limits: &Limits,
        cylinder: &str,
    ) -> Result<Clearance, Error> {
        let at = &format!("{cylinder}/clearance");
        let limit = limits.bench_clearance.clone();
        let mut out = Clearance {
            report: ClearanceReport {
                bench: None,
                smallest: None,
                smallest_from_target: None,
                running: None,
                note: None,
                decisions: Vec::new(),
            },
            grounds: Vec::new(),
            hot: None,
            missing: Vec::new(),
        };
        let surface = limit.as_ref().and_then(|l| l.over);
        let (Some(bore_size), true) = (&bore.size, piston.was_read()) else {
            return Ok(out); // named as missing with the part
        };
        let Some((piston_size, piston_overdue)) = piston.at_gauge_point(surface) else {
            // only a limit asks for a surface
            if let (Some(limit), Some(surface)) = (&limit, surface) {
                let surface = surface.spoken();
                let reason = format!(
                    "it is over the {surface}; the piston was not measured there and no thickness is given"
                );
                out.not_judged(Of::BenchClearance, limit, reason);
            }
            return Ok(out);
        };
        let bench = self.calc.apply(Bench, [bore_size, piston_size]);
        self.hold_clearance(&bench, piston, bore)?;
        out.report.bench = Some(self.state(&bench, &format!("{at}/bench")));
        let unusable = limit
            .as_ref()
            .and_then(|l| l.cannot_take_piston(piston.state).or_else(|| l.cannot_take_bore(bore.clamping)));
        let overdue: Vec<String> = piston_overdue.iter().chain(&bore.overdue).cloned().collect();
        match (&limit, &unusable) {
            (None, _) => {
                out.grounds.push(Ground::new(Outcome::NotProven, "no limit for the bench clearance is given"))
            }
            (Some(limit), Some(reason)) => out.not_judged(Of::BenchClearance, limit, reason.clone()),
            (Some(limit), None) => {
                let value = self.clearance_at_limit(bore_size, piston_size, limit)?;
                let (decision, ground) =
                    self.decide(Of::BenchClearance, &value, limit, &overdue, &format!("{at}/decisions/0"));
                out.push(decision, ground);
            }
        }
        let limit = limit.filter(|_| unusable.is_none());
        if let (Some(smallest), Some(least)) = (&bore.smallest, &bore.least) {
            let sizes = [smallest, least];
            self.smallest_clearance(&mut out, sizes, piston_size, limit.as_ref(), &overdue, at)?;
        }
        let pair = Pair { piston: piston_size, bore: bore_size, overdue, limit };
        self.running_clearance(&mut out, &pair, at)?;
        let bare = || piston.at_gauge_point(Some(Surface::BareMetal)).is_some();
        if self.hot.as_ref().is_none_or(|hot| !hot.is_coated() || bare()) {
            out.hot = self.pending(&pair, piston, bore, format!("{cylinder}/hot"))?;
        } else {
            let reason = "hot fit: the shape is that of the bare piston, and the thickness of the coating is not given";
            out.missing.push(reason.to_owned());
        }
        Ok(out)
    }

    /// A clearance that no engine has is a contradiction of the two readings behind it.
    fn hold_clearance(&mut self, bench: &Measured, piston: &Piston, bore: &Bore) -> Result<(), Error> {
        let (Some(of_piston), Some(of_bore)) = (piston.first(), &bore.widest) else {
            return Ok(());
        };
        let bound = bounds::in_bore(&bounds::CLEARANCE, self.engine.bore_nominal);
        let said = format!(
            "the clearance of {:.3} mm between {} of the piston and {} of the bore is odd: usual is {}",
            bench.value(),
            of_piston.text,
            of_bore.text,
            bound.usual_text()
        );
        let reason = || {
            format!(
                "with {} of the bore ({}) the clearance would be {:.3} mm: one of the two is another oversize, another place or another unit",
                of_bore.text,
                of_bore.path,
                bench.value()
            )
        };
        hold(&bound, bench.value(), of_piston, said, reason, &mut self.warnings)
    }

    /// The clearance at the smallest place that was read: a size rule may look past it, a piston cannot.
    fn smallest_clearance(
        &mut self,
        out: &mut Clearance,
        [bore, least]: [&Measured; 2],
        piston: &Measured,
        limit: Option<&Limit>,
        overdue: &[String],
        at: &str,
    ) -> Result<(), Error> {
        let smallest = self.calc.apply(Bench, [bore, piston]);
        out.report.smallest = Some(self.state(&smallest, &format!("{at}/smallest")));
        if self.engine.target.as_ref().is_some_and(|t| t.is_cold()) {
            let straight = self.calc.apply(Bench, [least, piston]);
            out.report.smallest_from_target =
                Some(self.state(&straight, &format!("{at}/smallest_from_target")));
        }
        let Some(limit) = limit.and_then(Limit::lower_only) else {
            return Ok(());
        };
        if let Some(reason) = self.cold_shape_unknown() {
            out.not_judged(Of::SmallestClearance, &limit, reason.to_owned());
            return Ok(());
        }
        // where the bore is narrow on purpose the maker's least clearance is not meant
        let value = self.clearance_at_limit(least, piston, &limit)?;
        let at = format!("{at}/decisions/{}", out.report.decisions.len());
        let (decision, ground) = self.decide(Of::SmallestClearance, &value, &limit, overdue, &at);
        out.push(decision, ground);
        Ok(())
    }

    /// The bench clearance at the temperature of its limit.
    fn clearance_at_limit(
        &mut self,
        bore: &Measured,
        piston: &Measured,
        limit: &Limit,
    ) -> Result<Measured, Error> {
        let t = self.calc.given("t", &limit.temperature).into();
        let field = &limit.temperature.path;
        let eps_bore = self.materials.growth(&mut self.calc, self.engine.bore_material, &t, field)?;
        let eps_piston = self.materials.growth(&mut self.calc, self.engine.piston_material, &t, field)?;
        Ok(self.calc.apply(Running, [bore, &eps_bore, piston, &eps_piston]))
    }

    fn running_clearance(&mut self, out: &mut Clearance, pair: &Pair<'_>, at: &str) -> Result<(), Error> {
        let Some(running) = self.running.take() else {
            out.report.note =
                Some("No running temperatures are given: the hot fit was not examined.".to_owned());
            return Ok(());
        };
        let reference = self.reference_piston(pair, running.original_material)?;
        let ends = [
            (Of::RunningMarginTight, "tight", &running.piston.1, &running.bore.0),
            (Of::RunningMarginLoose, "loose", &running.piston.0, &running.bore.1),
        ];
        let mut cases = Vec::with_capacity(2);
        for (of, name, t_piston, t_bore) in ends {
            let at_case = format!("{at}/running/{name}");
            let (case, margin) = self.running_case(
                pair,
                reference.as_ref(),
                running.original_material,
                (t_piston, t_bore),
                &at_case,
            )?;
            if let Some(margin) = margin {
                let zero = self.calc.constant("zero", 0.0, "mm", "the reference case itself");
                let at = format!("{at}/decisions/{}", out.report.decisions.len());
                let against = Against {
                    lower: Some(zero),
                    upper: None,
                    tolerance: pair.limit.as_ref().and_then(|l| self.tolerance(l)),
                    temperature_c: None,
                    origin: "original piston at the maker's least bench clearance",
                    cylinders: pair.limit.as_ref().map_or(&[], |l| l.cylinders.as_slice()),
                };
                let (decision, ground) = self.decide_against(of, &margin, against, &pair.overdue, &at);
                out.push(decision, ground);
            }
            cases.push(case);
        }
        let same_alloy = running.original_material == self.engine.piston_material
            && self.hot.as_ref().is_none_or(HotState::grow_alike);
        out.report.note = match (&reference, same_alloy) {
            (None, _) => {
                let text = "there is no least clearance to compare the running clearance with: it is an interval that asks for judgement";
                out.grounds.push(Ground::new(Outcome::NotProven, text));
                Some(format!("{}.", text.replacen('t', "T", 1)))
            }
            (Some(_), true) => Some(
                "The pistons have the alloy of the original ones: the margins hold no thermal information beyond the bench margin."
                    .to_owned(),
            ),
            (Some(_), false) => None,
        };
        if let (Some(loose), Some(tight)) = (cases.pop(), cases.pop()) {
            out.report.running = Some(RunningReport { tight, loose, origin: running.origin.clone() });
        }
        self.running = Some(running);
        Ok(())
    }

    /// The original piston at the maker's least bench clearance in this bore.
    fn reference_piston(&mut self, pair: &Pair<'_>, original: usize) -> Result<Option<Measured>, Error> {
        let Some((limit, least)) = pair.limit.as_ref().and_then(|l| Some((l, l.lower.as_ref()?))) else {
            return Ok(None);
        };
        let t = self.calc.given("t", &limit.temperature).into();
        let field = &limit.temperature.path;
        let eps_bore = self.materials.growth(&mut self.calc, self.engine.bore_material, &t, field)?;
        let eps_original = self.materials.growth(&mut self.calc, original, &t, field)?;
        let c_min = self.calc.given("c_min", least).into();
        Ok(Some(self.calc.apply(ReferencePiston, [pair.bore, &eps_bore, &c_min, &eps_original])))
    }

    fn running_case(
        &mut self,
        pair: &Pair<'_>,
        reference: Option<&Measured>,
        original: usize,
        (t_piston, t_bore): (&Celsius, &Celsius),
        at: &str,
    ) -> Result<(RunningCase, Option<Measured>), Error> {
        let [hot_piston, hot_bore]: [Measured; 2] =
            [t_piston, t_bore].map(|t| t.figure(&mut self.calc).into());
        let material = self.engine.piston_material;
        let eps_piston = self.materials.growth(&mut self.calc, material, &hot_piston, t_piston.path())?;
        let eps_piston = self.controlled(Which::Fitted, eps_piston);
        let eps_bore =
            self.materials.growth(&mut self.calc, self.engine.bore_material, &hot_bore, t_bore.path())?;
        let clearance = self.calc.apply(Running, [pair.bore, &eps_bore, pair.piston, &eps_piston]);
        let mut case = RunningCase {
            piston_temperature_c: hot_piston.value(),
            bore_temperature_c: hot_bore.value(),
            clearance: self.state(&clearance, &format!("{at}/clearance")),
            reference: None,
            margin: None,
        };
        let Some(reference) = reference else {
            return Ok((case, None));
        };
        let eps_original = self.materials.growth(&mut self.calc, original, &hot_piston, t_piston.path())?;
        let eps_original = self.controlled(Which::Original, eps_original);
        let clearance = self.calc.apply(Running, [pair.bore, &eps_bore, reference, &eps_original]);
        let margin = self.calc.apply(Margin, [reference, &eps_original, pair.piston, &eps_piston]);
        case.reference = Some(self.state(&clearance, &format!("{at}/reference")));
        case.margin = Some(self.state(&margin, &format!("{at}/margin")));
        Ok((case, Some(margin)))
    }
}

impl Clearance {
    fn push(&mut self, decision: Decision, ground: Ground) {
        self.report.decisions.push(decision);
        self.grounds.push(ground);
    }

    fn not_judged(&mut self, of: Of, limit: &Limit, reason: String) {
        let (decision, ground) = not_judged(of, limit, reason);
        self.push(decision, ground);
    }
}
