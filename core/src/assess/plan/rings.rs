//! Rings: their gap in the bore they run in, and what is filed off.

use super::Kept;
use super::parts::NOISE_MM;
use crate::assess::Assessment;
use crate::bounds;
use crate::calc::{Figure, Measured};
use crate::clearance::ring::GapInBore;
use crate::error::{Error, ErrorKind};
use crate::job::plan as doc;
use crate::job::{Given, check_length};
use crate::plan::filing::{EachEnd, FileOff, Outcome as GapOutcome, Target};
use crate::report::{PlanReport, RingReport};

impl Assessment {
    pub(super) fn rings(
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
            let limits = self.gap_limits(entry)?;
            let gap = self.gap(entry, number, known, out)?;
            if gap.is_none() {
                out.open.push(format!(
                    "gap of the {ring} ring of cylinder {number}: the bore that it runs in is not known yet"
                ));
            }
            let origin = entry.origin.words()?.to_owned();
            let of = RingReport { ring, origin, ..RingReport::new(number, limits.target.value) };
            let report = self.filed(of, gap.as_ref(), &limits, &format!("/plan/rings/{k}"));
            out.rings.push(report);
        }
        Ok(())
    }

    /// What is filed off a ring, where its gap is known.
    fn filed(&mut self, of: RingReport, gap: Option<&Measured>, limits: &GapLimits, at: &str) -> RingReport {
        self.calc.place(limits.target, || format!("{at}/target_mm"));
        let Some(gap) = gap else { return of };
        let most = limits.most.as_ref().map(|m| m.value);
        let outcome = GapOutcome::of(gap.value(), limits.least.value, most);
        let off = match outcome {
            GapOutcome::File => self.calc.figure(FileOff, [limits.target, gap.figure]),
            _ => self.calc.constant("filed", 0.0, "mm", "nothing is filed"),
        };
        let each_end = self.calc.figure(EachEnd, [off]);
        self.calc.place(off, || format!("{at}/file_off_mm"));
        self.calc.place(each_end, || format!("{at}/each_end_mm"));
        RingReport {
            outcome: Some(outcome),
            gap: Some(self.state(gap, &format!("{at}/gap"))),
            file_off_mm: Some(off.value),
            each_end_mm: Some(each_end.value),
            ..of
        }
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
        let most = self.optional(&entry.max, &bounds::RING_GAP)?;
        let allowance = self.optional(&entry.allowance, &bounds::GAP_ALLOWANCE)?;
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
}

/// The limits of a gap.
pub(super) struct GapLimits {
    pub(super) least: Given,
    pub(super) most: Option<Given>,
    pub(super) target: Figure,
}

impl RingReport {
    /// A ring of a cylinder that nothing is known of but what it is filed to.
    fn new(cylinder: u32, target_mm: f64) -> Self {
        RingReport {
            cylinder,
            ring: String::new(),
            outcome: None,
            gap: None,
            target_mm,
            file_off_mm: None,
            each_end_mm: None,
            origin: String::new(),
        }
    }
}
