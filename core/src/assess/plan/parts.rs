//! The smaller decisions: sleeves, liners on shims, rings, the gasket, masses.

use super::Kept;
use crate::assess::Assessment;
use crate::bounds::{self, Bound};
use crate::calc::{Figure, Fold, Measured, formula};
use crate::clearance::ring::GapInBore;
use crate::error::{Error, ErrorKind};
use crate::growth::liner::{Effective, HotInterference};
use crate::job::plan as doc;
use crate::job::{Entry, Given, Numeric, check_length};
use crate::measurement::distribution::Distribution;
use crate::measurement::half_width;
use crate::plan::filing::{EachEnd, FileOff, Outcome as GapOutcome, Target};
use crate::plan::gasket::{MeanProtrusion, gasket_grade};
use crate::plan::shims::{Liner, RuledOut, Shim, Wanted as WantedProtrusion, shim_plan};
use crate::plan::weights::{Part, cut_list};
use crate::quantity::Length;
use crate::report::{
    CutReport, GasketReport, LinerReport, LinersReport, MassReport, MassesReport, PlanReport, RingReport,
    SleeveReport, StandingReport,
};
use crate::shape::deck::{GasketBand, LinerProtrusion, SquishOverProtrusion};

formula! {
    /// Hole that a sleeve takes.
    Hole: hole ["mm"] = (outside, interference) => outside - interference; source "definition; diametral";
    /// Clearance of a sleeve that goes into its hole.
    Assembly: clearance ["mm"] = (hole, eps_block, outside, eps_sleeve) => hole * (1.0 + eps_block) - outside * (1.0 + eps_sleeve);
        source "free growth of both parts";
    /// Most less least.
    Difference: difference ["mm"] = (most, least) => most - least; source "definition";
}

/// Fewest readings of the outside of a sleeve.
const SLEEVE_READINGS: usize = 3;
/// Lengths nearer than this are the same, in mm: rounding of the arithmetic.
const NOISE_MM: f64 = 1e-9;

impl Assessment {
    /// The smaller decisions of a plan.
    pub(super) fn parts(
        &mut self,
        document: &crate::job::Document,
        plan: &doc::Plan,
        (kept, finishes): (&[Kept], &[(u32, Measured)]),
        out: &mut PlanReport,
    ) -> Result<(), Error> {
        if let Some(sleeves) = &plan.sleeves {
            out.sleeves = self.sleeves(document, sleeves)?;
        }
        if let Some(liners) = &plan.liners {
            out.liners = Some(self.liners(liners)?);
        }
        self.rings(&plan.rings, (kept, finishes), out)?;
        if let Some(gasket) = &plan.gasket {
            self.gasket(gasket, out)?;
        }
        if let Some(masses) = &plan.masses {
            out.masses = Some(self.masses(masses)?);
        }
        Ok(())
    }

    fn sleeves(
        &mut self,
        document: &crate::job::Document,
        entry: &doc::Sleeves,
    ) -> Result<Vec<SleeveReport>, Error> {
        entry.origin.words()?;
        let sleeve = self.materials.find(&entry.material)?;
        let block = self.materials.find(&entry.block_material)?;
        let bound = &bounds::SLEEVE_INTERFERENCE;
        let (least, most) = self.span(&entry.interference, bound)?;
        let target = entry.target.as_ref().map(|t| within(t, (&least, &most), bound)).transpose()?;
        let smoothing = entry.smoothing.as_ref();
        let smoothing = smoothing.map(|s| s.read(&bounds::SMOOTHING, &mut self.warnings)).transpose()?;
        let clearance = entry.least_clearance.read(&bounds::ASSEMBLY_CLEARANCE, &mut self.warnings)?;
        let heated = entry.block_heated_to.read(&bounds::ASSEMBLY_TEMPERATURE, &mut self.warnings)?;
        let chilled = entry.sleeve_chilled_to.as_ref();
        let chilled =
            chilled.map(|t| t.read(&bounds::ASSEMBLY_TEMPERATURE, &mut self.warnings)).transpose()?;
        self.calc.heading(|| "sleeves".to_owned());
        let [heat, chill] = [Some(&heated), chilled.as_ref()].map(|t| t.map(|t| self.calc.given("t", t)));
        let heat: Measured = heat.unwrap_or(Figure::plain(f64::NAN, "C")).into();
        let eps_block = self.materials.growth(&mut self.calc, block, &heat, &heated.path)?;
        let (cold, field) = match (chill, &chilled) {
            (Some(figure), Some(given)) => (figure.into(), given.path.clone()),
            _ => self.shop.temperature(&mut self.calc, None, &mut self.warnings)?,
        };
        let eps_sleeve = self.materials.growth(&mut self.calc, sleeve, &cold, &field)?;
        let walls = self.running_walls(document)?;
        let mut running = Vec::with_capacity(walls.len());
        for wall in &walls {
            let t: Measured = self.calc.given("t", wall).into();
            let of = [sleeve, block].map(|m| self.materials.growth(&mut self.calc, m, &t, &wall.path));
            let [of_sleeve, of_block] = of;
            running.push((of_sleeve?, of_block?));
        }
        check_length(&entry.each, |s| &s.cylinder)?;
        let mut out: Vec<SleeveReport> = Vec::with_capacity(entry.each.len());
        for (k, each) in entry.each.iter().enumerate() {
            let cylinder = each.cylinder.count(1, self.engine.cylinders)?;
            if out.iter().any(|s| s.cylinder == cylinder) {
                return Err(each.cylinder.refuse(ErrorKind::Repeated, "this cylinder stands twice"));
            }
            let at = format!("/plan/sleeves/{k}");
            self.calc.heading(|| format!("sleeve of cylinder {cylinder}"));
            let outside = self.outside(each)?;
            let [least, most] = [&least, &most].map(|g| self.calc.given("interference", g));
            let aim = match &target {
                Some(target) => self.calc.given("target", target),
                None => self.calc.figure(super::machining::Middle, [least, most]),
            };
            let hole = self.calc.apply(Hole, [&outside, &aim.into()]);
            let smallest = self.calc.figure(Hole, [outside.figure, most]);
            let largest = self.calc.figure(Hole, [outside.figure, least]);
            self.calc.place(smallest, || format!("{at}/hole_least_mm"));
            self.calc.place(largest, || format!("{at}/hole_most_mm"));
            let open = self.calc.apply(Assembly, [&hole, &eps_block, &outside, &eps_sleeve]);
            let lost = match &smoothing {
                Some(smoothing) => self.calc.given("smoothing", smoothing),
                None => self.calc.constant("smoothing", 0.0, "mm", "no smoothing is stated"),
            };
            let holds = self.calc.figure(Effective, [aim, lost]);
            let mut left = Vec::with_capacity(running.len());
            for (j, (of_sleeve, of_block)) in running.iter().enumerate() {
                let figures = [holds, outside.figure, of_sleeve.figure, of_block.figure];
                let hot = self.calc.figure(HotInterference, figures);
                self.calc.place(hot, || format!("{at}/running_interference_mm/{j}"));
                left.push(hot.value);
            }
            out.push(SleeveReport {
                cylinder,
                outside: self.state(&outside, &format!("{at}/outside")),
                hole: self.state(&hole, &format!("{at}/hole")),
                hole_least_mm: smallest.value,
                hole_most_mm: largest.value,
                slides_in: open.value() >= clearance.value - NOISE_MM,
                assembly_clearance: self.state(&open, &format!("{at}/assembly_clearance")),
                running_interference_mm: left,
            });
        }
        Ok(out)
    }

    /// The coldest and the hottest of the wall in the running engine, as they are stated.
    fn running_walls(&mut self, document: &crate::job::Document) -> Result<Vec<Given>, Error> {
        let range = document.running.as_ref().and_then(|r| r.bore_temperature.as_ref());
        let Some(range) = range else { return Ok(Vec::new()) };
        let read = |entry: &Entry<_>| entry.read(&bounds::RUNNING_TEMPERATURE, &mut Vec::new());
        Ok(vec![read(&range.min)?, read(&range.max)?])
    }

    fn outside(&mut self, sleeve: &doc::Sleeve) -> Result<Measured, Error> {
        check_length(&sleeve.outside, |e| e)?;
        let bound = Bound { label: "outside of a sleeve", ..bounds::BORE };
        let mut readings: Vec<Measured> = Vec::with_capacity(sleeve.outside.len());
        for entry in &sleeve.outside {
            let given = entry.read(&bound, &mut self.warnings)?;
            readings.push(self.calc.given("outside", &given).into());
        }
        if readings.len() < SLEEVE_READINGS {
            let reason =
                format!("at least {SLEEVE_READINGS} readings are needed: a free sleeve is not round");
            let at = format!("{}/outside", sleeve.cylinder.parent());
            return Err(Error::new(ErrorKind::MissingField, readings.len().to_string(), reason).at(&at));
        }
        let mean = self.calc.fold(Fold::Mean, "outside", &readings.iter().collect::<Vec<_>>());
        let mean = mean.unwrap_or_else(|| Figure::plain(f64::NAN, "mm").into());
        let of = format!("outside of the sleeve of cylinder {}", sleeve.cylinder.text());
        self.with_error(&mean, of, &sleeve.permissible_error, &bounds::PERMISSIBLE_ERROR)
    }

    /// A value with a rectangular error of its own.
    pub(super) fn with_error(
        &mut self,
        value: &Measured,
        of: String,
        error: &Entry<Length>,
        bound: &Bound,
    ) -> Result<Measured, Error> {
        let error = error.read(bound, &mut self.warnings)?;
        let source = self.calc.source(of, &error.path, Distribution::STANDARD_RECTANGULAR);
        let standard = half_width(&mut self.calc, &error);
        Ok(self.calc.add_source(value, source, standard))
    }

    fn span(&mut self, span: &doc::Span, bound: &Bound) -> Result<(Given, Given), Error> {
        let least = span.min.read(bound, &mut self.warnings)?;
        let most = span.max.read(bound, &mut self.warnings)?;
        if least.value >= most.value {
            let reason = format!("it must be above min, {}", least.text);
            return Err(span.max.refuse(ErrorKind::OutOfOrder, reason).value(most.value));
        }
        Ok((least, most))
    }

    fn liners(&mut self, entry: &doc::Liners) -> Result<LinersReport, Error> {
        self.calc.heading(|| "liners on shims".to_owned());
        let origin = entry.origin.words()?.to_owned();
        let (least, most) = self.span(&entry.protrusion, &bounds::LINER_PROTRUSION)?;
        let warnings = &mut self.warnings;
        let seat = |entry: &Option<Entry<Length>>, warnings: &mut Vec<_>| {
            let read = |e: &Entry<Length>| e.read(&bounds::SEAT_UNEVENNESS, warnings).map(|g| g.value);
            entry.as_ref().map(read).transpose()
        };
        check_length(&entry.shims, |s| &s.thickness)?;
        let mut shims = Vec::new();
        for shim in &entry.shims {
            let available = shim.available.as_ref().map(|n| n.count(0, 10_000)).transpose()?;
            shims.push((shim.thickness.read(&bounds::SHIM, warnings)?, available));
        }
        check_length(&entry.each, |l| &l.cylinder)?;
        let mut liners: Vec<(u32, Given, [Given; 4], Option<f64>)> = Vec::new();
        for liner in &entry.each {
            let cylinder = liner.cylinder.count(1, self.engine.cylinders)?;
            if liners.iter().any(|l| l.0 == cylinder) {
                return Err(liner.cylinder.refuse(ErrorKind::Repeated, "this cylinder stands twice"));
            }
            let flange = liner.flange.read(&bounds::LINER_FLANGE, warnings)?;
            let [a, b, c, d] = liner.depths.as_slice() else {
                let reason = "four depths: toward the front, one side, toward the rear, the other side";
                let at = format!("{}/depths", liner.flange.parent());
                return Err(
                    Error::new(ErrorKind::Contradiction, liner.depths.len().to_string(), reason).at(&at)
                );
            };
            let mut read = |e: &Entry<Length>| e.read(&bounds::LINER_FLANGE, warnings);
            let depths = [read(a)?, read(b)?, read(c)?, read(d)?];
            let cupping = seat(&liner.cupping, warnings)?;
            liners.push((cylinder, flange, depths, cupping));
        }
        let wanted = WantedProtrusion {
            least_mm: least.value,
            most_mm: most.value,
            unevenness_mm: entry.unevenness.read(&bounds::SEAT_UNEVENNESS, warnings)?.value,
            cupping_mm: seat(&entry.cupping, warnings)?,
            neighbours_mm: seat(&entry.neighbours, warnings)?,
            most_on_one: entry.most_on_one.count(1, 3)? as usize,
        };
        let given: Vec<Liner> = liners
            .iter()
            .map(|(_, flange, depths, cupping_mm)| Liner {
                flange_mm: flange.value,
                depths_mm: depths.each_ref().map(|d| d.value),
                cupping_mm: *cupping_mm,
            })
            .collect();
        let stock: Vec<Shim> = shims
            .iter()
            .map(|(t, n)| Shim { thickness_mm: t.value, available: n.map(|n| n as usize) })
            .collect();
        let found = shim_plan(&given, &stock, &wanted).map_err(|e| placed(e, "/plan/liners"))?;
        let cylinder = |place: usize| liners.get(place).map_or(0, |l| l.0);
        let mut each = Vec::with_capacity(liners.len());
        for (k, ((number, flange, depths, _), shimmed)) in liners.iter().zip(&found.liners).enumerate() {
            let at = format!("/plan/liners/each/{k}");
            let depths: Vec<Measured> =
                depths.iter().map(|d| self.calc.given("counterbore", d).into()).collect();
            let all: Vec<&Measured> = depths.iter().collect();
            let deepest = self.calc.fold(Fold::Largest, "deepest", &all).map(|d| d.figure);
            let shallowest = self.calc.fold(Fold::Smallest, "shallowest", &all).map(|d| d.figure);
            let (Some(deepest), Some(shallowest)) = (deepest, shallowest) else { continue };
            let unevenness = self.calc.figure(Difference, [deepest, shallowest]);
            self.calc.place(unevenness, || format!("{at}/unevenness_mm"));
            let stack = shimmed.stack.as_ref().map(|stack| {
                stack.iter().filter_map(|shim| shims.get(*shim)).map(|s| &s.0).collect::<Vec<_>>()
            });
            let flange = self.calc.given("flange", flange);
            let ends = stack.as_ref().map(|stack| {
                let figures: Vec<Figure> = stack.iter().map(|s| self.calc.given("shim", s)).collect();
                let shim = match figures.as_slice() {
                    [] => self.calc.constant("shim", 0.0, "mm", "no shim"),
                    several => self.calc.sum("shim", several, "definition"),
                };
                let lowest = self.calc.figure(LinerProtrusion, [flange, shim, deepest]);
                let highest = self.calc.figure(LinerProtrusion, [flange, shim, shallowest]);
                self.calc.place(lowest, || format!("{at}/lowest_mm"));
                self.calc.place(highest, || format!("{at}/highest_mm"));
                (lowest.value, highest.value)
            });
            each.push(LinerReport {
                cylinder: *number,
                unevenness_mm: unevenness.value,
                shims_mm: stack.map(|s| s.iter().map(|s| s.value).collect()),
                lowest_mm: ends.map(|e| e.0),
                highest_mm: ends.map(|e| e.1),
            });
        }
        let ruled_out = found.ruled_out.iter().map(|r| unfit(*r, cylinder)).collect();
        Ok(LinersReport { each, largest_step_mm: found.largest_step_mm, ruled_out, origin })
    }

    fn rings(
        &mut self,
        entries: &[doc::Ring],
        known: (&[Kept], &[(u32, Measured)]),
        out: &mut PlanReport,
    ) -> Result<(), Error> {
        check_length(entries, |r| &r.ring)?;
        for (k, entry) in entries.iter().enumerate() {
            let number = entry.cylinder.count(1, self.engine.cylinders)?;
            let ring = entry.ring.words()?.to_owned();
            if out.rings.iter().any(|r| r.cylinder == number && r.ring == ring) {
                return Err(entry.ring.refuse(ErrorKind::Repeated, "this ring stands twice"));
            }
            self.calc.heading(|| format!("{ring} ring of cylinder {number}"));
            let at = format!("/plan/rings/{k}");
            let limits = self.gap_limits(entry)?;
            self.calc.place(limits.target, || format!("{at}/target_mm"));
            let gap = self.gap(entry, number, known, out)?;
            let mut report = RingReport {
                cylinder: number,
                ring: ring.clone(),
                outcome: None,
                gap: None,
                target_mm: limits.target.value,
                file_off_mm: None,
                each_end_mm: None,
                origin: entry.origin.words()?.to_owned(),
            };
            match gap {
                None => out.open.push(format!(
                    "gap of the {ring} ring of cylinder {number}: the bore that it runs in is not known yet"
                )),
                Some(gap) => {
                    let outcome = limits.outcome(gap.value());
                    let off = match outcome {
                        GapOutcome::File => self.calc.figure(FileOff, [limits.target, gap.figure]),
                        _ => self.calc.constant("filed", 0.0, "mm", "nothing is filed"),
                    };
                    let each_end = self.calc.figure(EachEnd, [off]);
                    self.calc.place(off, || format!("{at}/file_off_mm"));
                    self.calc.place(each_end, || format!("{at}/each_end_mm"));
                    report.outcome = Some(outcome);
                    report.gap = Some(self.state(&gap, &format!("{at}/gap")));
                    report.file_off_mm = Some(off.value);
                    report.each_end_mm = Some(each_end.value);
                }
            }
            out.rings.push(report);
        }
        Ok(())
    }

    /// The gap of a ring in the bore that it runs in; none where that is not known.
    fn gap(
        &mut self,
        entry: &doc::Ring,
        number: u32,
        (kept, finishes): (&[Kept], &[(u32, Measured)]),
        out: &PlanReport,
    ) -> Result<Option<Measured>, Error> {
        let gap = entry.gap.read(&bounds::RING_GAP, &mut self.warnings)?;
        let gap: Measured = self.calc.given("gap", &gap).into();
        let of = format!("gap of the {} ring of cylinder {number}", entry.ring.text().trim());
        let gap = self.with_error(&gap, of, &entry.permissible_error, &bounds::GAP_ERROR)?;
        let Some(read_in) = &entry.read_in else { return Ok(Some(gap)) };
        let near = crate::measurement::near_nominal("ring gauge for this bore", self.engine.bore_nominal);
        let gauge = read_in.read(&near, &mut self.warnings)?;
        let gauge: Measured = self.calc.given("gauge", &gauge).into();
        let machined =
            out.cylinders.iter().find(|c| c.number == number).is_some_and(|c| c.oversize_mm.is_some());
        let bore = match machined {
            // a bore that is machined has the size of its target
            true => finishes.iter().find(|(of, _)| *of == number).map(|(_, finish)| finish.clone()),
            false => kept.iter().find(|k| k.number == number).and_then(|k| k.bore.as_ref()?.size.clone()),
        };
        Ok(bore.map(|bore| self.calc.apply(GapInBore, [&gap, &gauge, &bore])))
    }

    /// The limits of a gap and what it is filed to.
    pub(super) fn gap_limits(&mut self, entry: &doc::Ring) -> Result<GapLimits, Error> {
        let least = entry.min.read(&bounds::RING_GAP, &mut self.warnings)?;
        let most = entry.max.as_ref();
        let most = most.map(|m| m.read(&bounds::RING_GAP, &mut self.warnings)).transpose()?;
        let allowance = entry.allowance.as_ref();
        let allowance = allowance.map(|a| a.read(&bounds::GAP_ALLOWANCE, &mut self.warnings)).transpose()?;
        let figure = self.calc.given("least", &least);
        let above = match &allowance {
            Some(allowance) => self.calc.given("allowance", allowance),
            None => self.calc.constant("allowance", 0.0, "mm", "no allowance is stated"),
        };
        let target = self.calc.figure(Target, [figure, above]);
        if let (Some(most), Some(entry)) = (&most, &entry.max)
            && target.value > most.value + NOISE_MM
        {
            let reason = format!("a ring would be filed to {:.4} mm, above the widest gap", target.value);
            return Err(entry.refuse(ErrorKind::OutOfOrder, reason).value(most.value));
        }
        Ok(GapLimits { least, most, target })
    }

    fn gasket(&mut self, entry: &doc::Gasket, out: &mut PlanReport) -> Result<(), Error> {
        self.calc.heading(|| "head gasket".to_owned());
        let origin = entry.origin.words()?.to_owned();
        let warnings = &mut self.warnings;
        let step = entry.printed_to.read(&bounds::PRINTED_STEP, warnings)?;
        check_length(&entry.grades, |g| &g.name)?;
        let mut grades = Vec::new();
        for grade in &entry.grades {
            let from = grade.from.read(&bounds::DECK, warnings)?;
            let to = grade.to.read(&bounds::DECK, warnings)?;
            let thickness = grade.thickness.read(&bounds::GASKET, warnings)?;
            grades.push((grade.name.words()?.to_owned(), from, to, thickness));
        }
        let spread = entry.spread.as_ref();
        let spread = spread.map(|s| s.read(&bounds::PROTRUSION_SPREAD, warnings)).transpose()?;
        let error = entry.permissible_error.read(&bounds::PROTRUSION_ERROR, warnings)?;
        let squish = entry.least_squish.as_ref();
        let squish = squish.map(|s| s.read(&bounds::LEAST_SQUISH, warnings)).transpose()?;
        check_length(&entry.pistons, |p| &p.cylinder)?;
        let mut pistons: Vec<(u32, [Given; 2])> = Vec::new();
        for standing in &entry.pistons {
            let number = standing.cylinder.count(1, self.engine.cylinders)?;
            if pistons.iter().any(|p| p.0 == number) {
                return Err(standing.cylinder.refuse(ErrorKind::Repeated, "this cylinder stands twice"));
            }
            let [a, b] = standing.readings.as_slice() else {
                let reason = "two readings, in line with the pin";
                let at = format!("{}/readings", standing.cylinder.parent());
                let count = standing.readings.len().to_string();
                return Err(Error::new(ErrorKind::Contradiction, count, reason).at(&at));
            };
            pistons.push((number, [a.read(&bounds::DECK, warnings)?, b.read(&bounds::DECK, warnings)?]));
        }
        let u = half_width(&mut self.calc, &error);
        let projections: Vec<[f64; 2]> = pistons.iter().map(|(_, r)| r.each_ref().map(|g| g.value)).collect();
        let bands: Vec<GasketBand> = grades
            .iter()
            .map(|(_, from, to, thickness)| GasketBand {
                from_mm: from.value,
                to_mm: to.value,
                thickness_mm: thickness.value,
            })
            .collect();
        let limit = spread.as_ref().map(|s| s.value);
        let found = match gasket_grade(&projections, &bands, step.value, limit, Some(u.value)) {
            Ok(found) => found,
            // no fault of the document: the table has no gasket for these pistons
            Err(e) if e.kind() == ErrorKind::OutOfRange && e.field().starts_with("projections_mm") => {
                let reason = format!("head gasket: no grade is for a protrusion of {} mm", e.refused());
                out.open.push(reason);
                return Ok(());
            }
            Err(e) => return Err(placed(e, "/plan/gasket")),
        };
        let Some((grade, _, _, thickness)) = grades.get(found.band) else { return Ok(()) };
        let thickness = self.calc.given("gasket", thickness);
        let mut standings = Vec::with_capacity(pistons.len());
        let mut protrusions: Vec<Measured> = Vec::with_capacity(pistons.len());
        for (k, (number, readings)) in pistons.iter().enumerate() {
            let at = format!("/plan/gasket/pistons/{k}");
            let readings = readings.each_ref().map(|r| self.calc.given("reading", r));
            let protrusion = self.calc.figure(MeanProtrusion, readings);
            let left = self.calc.figure(SquishOverProtrusion, [thickness, protrusion]);
            self.calc.place(protrusion, || format!("{at}/protrusion_mm"));
            self.calc.place(left, || format!("{at}/squish_mm"));
            protrusions.push(protrusion.into());
            standings.push(StandingReport {
                cylinder: *number,
                protrusion_mm: protrusion.value,
                squish_mm: left.value,
                squish_is_met: squish.as_ref().map(|least| left.value >= least.value - NOISE_MM),
            });
        }
        let all: Vec<&Measured> = protrusions.iter().collect();
        let most = self.calc.fold(Fold::Largest, "most", &all);
        let least = self.calc.fold(Fold::Smallest, "least", &all);
        let spread = most.zip(least).map(|(m, l)| self.calc.figure(Difference, [m.figure, l.figure]));
        if let Some(spread) = spread {
            self.calc.place(spread, || "/plan/gasket/spread_mm".to_owned());
        }
        out.gasket = Some(GasketReport {
            grade: grade.clone(),
            thickness_mm: found.thickness_mm,
            decided_by: pistons.get(found.largest_piston).map_or(0, |p| p.0),
            pistons: standings,
            spread_mm: found.spread_mm,
            spread_is_met: found.spread_is_met,
            probability_below: found.probability_below.unwrap_or_default(),
            probability_above: found.probability_above.unwrap_or_default(),
            origin,
        });
        Ok(())
    }

    fn masses(&mut self, entry: &doc::Masses) -> Result<MassesReport, Error> {
        self.calc.heading(|| "masses".to_owned());
        let origin = entry.origin.words()?.to_owned();
        let band = entry.band.read(&bounds::MASS_BAND, &mut self.warnings)?;
        check_length(&entry.each, |a| &a.cylinder)?;
        let mut numbers = Vec::new();
        let mut given: Vec<Vec<Part>> = Vec::new();
        let mut totals: Vec<Measured> = Vec::new();
        for assembly in &entry.each {
            let number = assembly.cylinder.count(1, self.engine.cylinders)?;
            if numbers.contains(&number) {
                return Err(assembly.cylinder.refuse(ErrorKind::Repeated, "this cylinder stands twice"));
            }
            numbers.push(number);
            check_length(&assembly.parts, |p| &p.part)?;
            let mut parts = Vec::new();
            let mut figures = Vec::new();
            for part in &assembly.parts {
                part.part.words()?;
                let mass = part.mass.read(&bounds::PART_MASS, &mut self.warnings)?;
                let removable = part.removable.as_ref();
                let removable =
                    removable.map(|r| r.read(&bounds::REMOVABLE_MASS, &mut self.warnings)).transpose()?;
                figures.push(self.calc.given("mass", &mass));
                parts.push(Part { mass_g: mass.value, removable_g: removable.map_or(0.0, |r| r.value) });
            }
            given.push(parts);
            totals.push(self.calc.sum("mass", &figures, "definition").into());
        }
        let found = cut_list(&given, band.value).map_err(|e| {
            // a part is a place of an assembly there, and here one of its list of parts
            let names: Vec<&str> = e.field().splitn(3, '/').collect();
            let at = match names.as_slice() {
                ["assemblies", k] => format!("assemblies/{k}/parts"),
                ["assemblies", k, part] => format!("assemblies/{k}/parts/{part}"),
                _ => e.field().to_owned(),
            };
            placed(e.moved(at), "/plan/masses")
        })?;
        let lightest = self.calc.fold(Fold::Smallest, "lightest", &totals.iter().collect::<Vec<_>>());
        if let Some(lightest) = lightest {
            let band = self.calc.given("band", &band);
            let most = self.calc.figure(crate::plan::weights::Heaviest, [lightest.figure, band]);
            self.calc.place(most, || "/plan/masses/most_g".to_owned());
        }
        let each = found.assemblies.iter().zip(&entry.each).zip(&numbers).zip(&totals).enumerate();
        let each = each.map(|(k, (((cut, assembly), number), total))| {
            self.calc.place(total.figure, || format!("/plan/masses/each/{k}/mass_g"));
            let cuts = cut.cut_g.iter().zip(&assembly.parts).filter(|(off, _)| **off > 0.0);
            MassReport {
                cylinder: *number,
                mass_g: cut.mass_g,
                cuts: cuts
                    .map(|(off, part)| CutReport { part: part.part.text().trim().to_owned(), off_g: *off })
                    .collect(),
                left_g: cut.left_g,
                over_g: cut.over_g,
            }
        });
        Ok(MassesReport { most_g: found.most_g, each: each.collect(), is_met: found.is_met, origin })
    }
}

/// The limits of a gap.
pub(super) struct GapLimits {
    pub(super) least: Given,
    pub(super) most: Option<Given>,
    pub(super) target: Figure,
}

impl GapLimits {
    fn outcome(&self, gap: f64) -> GapOutcome {
        match gap {
            gap if gap < self.least.value - NOISE_MM => GapOutcome::File,
            gap if self.most.as_ref().is_some_and(|m| gap > m.value + NOISE_MM) => GapOutcome::TooWide,
            _ => GapOutcome::Fits,
        }
    }
}

/// A value between two ends.
fn within<K: Numeric>(
    entry: &Entry<K>,
    (least, most): (&Given, &Given),
    bound: &Bound,
) -> Result<Given, Error> {
    let given = entry.read(bound, &mut Vec::new())?;
    if (least.value..=most.value).contains(&given.value) {
        return Ok(given);
    }
    let reason = format!("it must lie within {} and {}", least.text, most.text);
    let error = entry.refuse(ErrorKind::OutOfRange, reason).value(given.value);
    Err(error.limits(least.value, most.value, K::UNIT))
}

/// Why a row of liners is ruled out, in words.
fn unfit(reason: RuledOut, cylinder: impl Fn(usize) -> u32) -> String {
    match reason {
        RuledOut::Uneven { liner } => {
            format!("the seat of cylinder {} is uneven: not fit to shim, machine it", cylinder(liner))
        }
        RuledOut::Cupped { liner } => {
            format!("the seat of cylinder {} is cupped: not fit to shim, machine it", cylinder(liner))
        }
        RuledOut::NoStack { liner } => {
            format!(
                "no stack of the shims brings the liner of cylinder {} within its limits",
                cylinder(liner)
            )
        }
        RuledOut::Neighbours { liner } => format!(
            "no stack of cylinder {} goes with its neighbour within what they may differ by",
            cylinder(liner)
        ),
        RuledOut::TooFewShims { liner } => {
            format!("there are too few shims from cylinder {} on", cylinder(liner))
        }
    }
}

/// An error of a function with plain numbers, with the field of the document that it means.
pub(super) fn placed(error: Error, at: &str) -> Error {
    let path = error.field().to_owned();
    let names = path.split('/').map(|name| match name {
        "bands" => "grades",
        "projections_mm" => "pistons",
        "assemblies" | "liners" => "each",
        "step_mm" => "printed_to",
        other => ["_mm", "_g", "_cm3"].iter().find_map(|unit| other.strip_suffix(unit)).unwrap_or(other),
    });
    let names: Vec<&str> = names.collect();
    error.moved(format!("{at}/{}", names.join("/")))
}
