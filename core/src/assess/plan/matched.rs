//! Pistons to hand and the bores that take one.

use super::parts::placed;
use super::{Kept, KeptBore, NewPiston, Wanted};
use crate::assess::Assessment;
use crate::bounds;
use crate::calc::Measured;
use crate::clearance::Bench;
use crate::decision::Of;
use crate::error::{Error, ErrorKind};
use crate::job::document::Clamping;
use crate::job::plan as doc;
use crate::job::{Count, Entry, Words, check_length, nearest};
use crate::plan::matching::{Bore, Case, Conditions, Matching, Piston, WantedClearance, match_pistons};
use crate::report::{BoreWork, MatchingReport, PairReport, PistonWork, PlanReport};

/// What the places in the words of a matching mean.
const COUNTED: &str = "bores and pistons counted from 0, in order of cylinder and of the list";

/// A bore that takes a piston.
pub(super) struct Open<'a> {
    pub(super) number: u32,
    pub(super) size: &'a Measured,
    pub(super) clamping: Clamping,
    pub(super) stale: &'a [String],
}

impl Assessment {
    /// Matches the pistons to hand to the bores that are left as they are and need one.
    pub(super) fn matching(
        &mut self,
        entry: Option<&doc::Matching>,
        (wanted, pistons): (&Option<Wanted>, &[NewPiston]),
        kept: &[Kept],
        out: &mut PlanReport,
    ) -> Result<(), Error> {
        let asked = match entry {
            Some(entry) => self.numbers(&entry.cylinders)?,
            None => Vec::new(),
        };
        let needs_one = |number: u32| {
            let planned = out.cylinders.iter().find(|c| c.number == number);
            planned.is_some_and(|c| c.bore == BoreWork::Leave && c.piston == PistonWork::Replace)
        };
        // a bore that is machined does not keep the size that was read
        let machined =
            |number: u32| out.cylinders.iter().any(|c| c.number == number && c.oversize_mm.is_some());
        let takes_one = |number: u32| match asked.as_slice() {
            [] => needs_one(number),
            asked => asked.contains(&number) && !machined(number),
        };
        let bores: Vec<Open<'_>> = kept
            .iter()
            .filter(|k| takes_one(k.number))
            .filter_map(|k| {
                let KeptBore { size, clamping, stale, .. } = k.bore.as_ref()?;
                Some(Open { number: k.number, size: size.as_ref()?, clamping: *clamping, stale })
            })
            .collect();
        if bores.is_empty() {
            return Ok(());
        }
        let Some(wanted) = wanted else {
            out.open.push("matching: no clearance is wanted at 20 C".to_owned());
            return Ok(());
        };
        let measured = pistons.iter().filter(|p| p.size.is_some()).count();
        if measured < bores.len() {
            let numbers: Vec<String> = bores.iter().map(|b| b.number.to_string()).collect();
            out.open.push(format!(
                "pistons for cylinders {}: {} are needed and {measured} measured ones are to hand",
                numbers.join(", "),
                bores.len()
            ));
            return Ok(());
        }
        let found = match self.matched(entry, wanted, pistons, &bores, "/plan/matching")? {
            Ok(found) => found,
            Err(reason) => {
                out.open.push(reason);
                return Ok(());
            }
        };
        for pair in &found.pairs {
            if let Some(cylinder) = out.cylinders.iter_mut().find(|c| c.number == pair.cylinder) {
                cylinder.piston = PistonWork::Replace;
                cylinder.new_piston = Some(pair.piston.clone());
            }
        }
        out.matching = Some(found);
        Ok(())
    }

    /// The best pairs of bores and pistons; why there are none, in words.
    pub(super) fn matched(
        &mut self,
        entry: Option<&doc::Matching>,
        wanted: &Wanted,
        pistons: &[NewPiston],
        bores: &[Open<'_>],
        at: &str,
    ) -> Result<Result<MatchingReport, String>, Error> {
        self.calc.heading(|| "matching".to_owned());
        let measured: Vec<(&NewPiston, &Measured)> =
            pistons.iter().filter_map(|p| Some((p, p.size.as_ref()?))).collect();
        let sizes: Vec<Bore> = bores.iter().map(|b| self.matched_bore(entry, b)).collect::<Result<_, _>>()?;
        let given: Vec<Piston> = measured
            .iter()
            .map(|(piston, size)| Piston {
                size_mm: size.value(),
                standard_uncertainty_mm: self.calc.budget(size).standard.value,
                weight_g: piston.mass_g,
                grade: piston.grade.clone(),
            })
            .collect();
        let conditions = self.conditions(entry, wanted, &measured, bores)?;
        match match_pistons(&sizes, &given, &conditions) {
            Ok(found) => self.pairs(&found, wanted, &measured, bores, at).map(Ok),
            // no fault of the document: these pistons do not serve these bores
            Err(e) if e.kind() == ErrorKind::Contradiction => {
                Ok(Err(format!("matching, {COUNTED}: {}", e.reason())))
            }
            Err(e) => Err(of_document(e, entry, pistons, bores)),
        }
    }

    fn matched_bore(&mut self, entry: Option<&doc::Matching>, bore: &Open<'_>) -> Result<Bore, Error> {
        let grades = entry.map(|e| e.bore_grades.as_slice()).unwrap_or_default();
        let mut grade = None;
        check_length(grades, |g| &g.cylinder)?;
        for of in grades {
            if of.cylinder.count(1, self.engine.cylinders)? != bore.number {
                continue;
            }
            if grade.replace(of.grade.words()?.to_owned()).is_some() {
                return Err(of.cylinder.refuse(ErrorKind::Repeated, "this cylinder stands twice"));
            }
        }
        let standard_uncertainty_mm = self.calc.budget(bore.size).standard.value;
        Ok(Bore { grade, ..Bore::new(bore.size.value(), standard_uncertainty_mm) })
    }

    fn conditions(
        &mut self,
        entry: Option<&doc::Matching>,
        wanted: &Wanted,
        pistons: &[(&NewPiston, &Measured)],
        bores: &[Open<'_>],
    ) -> Result<Conditions, Error> {
        let clearance = WantedClearance::between(wanted.lower.value, wanted.upper.value);
        let mut out = Conditions::wanting(clearance.with_target(wanted.target.value));
        let Some(entry) = entry else { return Ok(out) };
        out.weight_band_g = self.optional(&entry.mass_band, &bounds::MASS_BAND)?.map(|band| band.value);
        for (pairs, into) in [(&entry.fixed, &mut out.fixed), (&entry.forbidden, &mut out.forbidden)] {
            check_length(pairs, |p| &p.cylinder)?;
            for pair in pairs {
                let number = pair.cylinder.count(1, self.engine.cylinders)?;
                let piston = place_of(&pair.piston, pistons)?;
                // a pair of a cylinder that is not matched says nothing here
                if let Some(bore) = bores.iter().position(|b| b.number == number) {
                    into.push((bore, piston));
                }
            }
        }
        Ok(out)
    }

    fn pairs(
        &mut self,
        found: &Matching,
        wanted: &Wanted,
        pistons: &[(&NewPiston, &Measured)],
        bores: &[Open<'_>],
        at: &str,
    ) -> Result<MatchingReport, Error> {
        let name = |place: usize| pistons.get(place).map(|(p, _)| p.name.clone()).unwrap_or_default();
        let mut pairs = Vec::with_capacity(found.pairs.len());
        for (k, pair) in found.pairs.iter().enumerate() {
            let (Some(bore), Some((piston, size))) = (bores.get(pair.bore), pistons.get(pair.piston)) else {
                continue;
            };
            let at = format!("{at}/pairs/{k}");
            self.calc.heading(|| format!("piston {} in bore {}", piston.name, bore.number));
            let clearance = self.calc.apply(Bench, [bore.size, *size]);
            let deviation = self.calc.figure(Deviation, [clearance.figure, wanted.target]);
            self.calc.place(deviation, || format!("{at}/deviation_mm"));
            let stale: Vec<String> = bore.stale.iter().chain(&piston.stale).cloned().collect();
            pairs.push(PairReport {
                cylinder: bore.number,
                piston: piston.name.clone(),
                clearance: self.state(&clearance, &format!("{at}/clearance")),
                deviation_mm: deviation.value,
                decision: self.decide_wanted(
                    Of::MatchedClearance,
                    (&clearance, &stale),
                    (bore.clamping, piston.state),
                    wanted,
                    &format!("{at}/decision"),
                ),
            });
        }
        Ok(MatchingReport {
            case: found.case,
            because: match found.case {
                Case::PairDependent => format!("{}; {COUNTED}", found.because),
                Case::Sorted | Case::OrderPreserving => found.because.clone(),
            },
            pairs,
            spare: found.spare.iter().map(|p| name(*p)).collect(),
            worst_probability: found.merit.worst_probability,
            worst_probability_as_listed: found.as_given.worst_probability,
            worst_probability_by_grade: found.by_grade.map(|m| m.worst_probability),
            sum_of_squares_mm2: found.merit.sum_of_squares_mm2,
            sum_of_squares_as_listed_mm2: found.as_given.sum_of_squares_mm2,
            mass_spread_g: found.weight_spread_g,
        })
    }

    /// Numbers of cylinders, each once.
    pub(super) fn numbers(&self, entries: &[Entry<Count>]) -> Result<Vec<u32>, Error> {
        check_length(entries, |e| e)?;
        let mut out = Vec::with_capacity(entries.len());
        for entry in entries {
            out.push(self.another(entry, |n| out.contains(&n))?);
        }
        Ok(out)
    }
}

crate::calc::formula! {
    /// A clearance less its target.
    Deviation: deviation ["mm"] = (clearance, target) => clearance - target; source "definition";
}

/// An error of the matching, with the field of the document that it means.
fn of_document(
    error: Error,
    entry: Option<&doc::Matching>,
    pistons: &[NewPiston],
    bores: &[Open<'_>],
) -> Error {
    let names: Vec<&str> = error.field().split('/').collect();
    let place = names.get(1).and_then(|k| k.parse::<usize>().ok());
    let at = match (names.first().copied(), place) {
        // matched are those that were measured
        (Some("pistons"), Some(k)) => {
            let mut measured = pistons.iter().enumerate().filter(|(_, p)| p.size.is_some());
            measured.nth(k).map(|(of, _)| match names.last() {
                Some(&"weight_g") => format!("/plan/pistons/{of}/mass"),
                _ => format!("/plan/pistons/{of}/readings"),
            })
        }
        // fixed are the pairs of the cylinders that are matched
        (Some("fixed"), Some(k)) => {
            let matched = |p: &doc::Pair| {
                bores.iter().any(|b| p.cylinder.count(1, u32::MAX).is_ok_and(|n| n == b.number))
            };
            let fixed = entry.map(|e| e.fixed.as_slice()).unwrap_or_default().iter().enumerate();
            let mut fixed = fixed.filter(|(_, p)| matched(p));
            fixed.nth(k).map(|(of, _)| format!("/plan/matching/fixed/{of}"))
        }
        _ => None,
    };
    match at {
        Some(at) => error.moved(at),
        None => placed(error, "/plan/matching"),
    }
}

/// The place of a piston by its name, among those that were measured.
pub(super) fn place_of(name: &Entry<Words>, pistons: &[(&NewPiston, &Measured)]) -> Result<usize, Error> {
    let wanted = name.words()?;
    pistons.iter().position(|(p, _)| p.name == wanted).ok_or_else(|| {
        let known: Vec<&str> = pistons.iter().map(|(p, _)| p.name.as_str()).collect();
        let reason = format!("no such measured piston; known: {}", known.join(", "));
        name.refuse(ErrorKind::UnknownName, reason).suggest(nearest(wanted, &known))
    })
}
