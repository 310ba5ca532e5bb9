//! Printed limits, and what they are meant for.

use crate::bounds::{self, Bound};
use crate::calc::{Calc, Figure, formula};
use crate::error::{Error, ErrorKind};
use crate::job::document::{self as doc, Clamping, PistonState, Surface};
use crate::job::{Count, Entry, Given, Warning};
use crate::quantity::Length;

formula! {
    /// Width of a tolerance.
    Tolerance: tolerance ["mm"] = (max, min) => max - min; source "definition";
}

/// A printed limit.
#[derive(Debug, Clone)]
pub(crate) struct Limit {
    pub(crate) lower: Option<Given>,
    pub(crate) upper: Option<Given>,
    /// the limits as printed: the tolerance of all that is judged by them
    printed: (Option<Given>, Option<Given>),
    /// a taper or an out-of-round, which cannot be below 0
    form: bool,
    pub(crate) origin: String,
    pub(crate) temperature: Given,
    pub(crate) over: Option<Surface>,
    piston_states: Vec<PistonState>,
    pub(crate) clamping: Vec<Clamping>,
    /// the cylinders it is printed for; none when it is for all
    pub(crate) cylinders: Vec<u32>,
}

/// The printed limits of a cylinder.
#[derive(Debug, Clone)]
pub(crate) struct Limits {
    pub(crate) bore_size: Option<Limit>,
    pub(crate) bore_taper: Option<Limit>,
    pub(crate) bore_out_of_round: Option<Limit>,
    pub(crate) piston_size: Option<Limit>,
    pub(crate) bench_clearance: Option<Limit>,
}

/// What a kind of limit holds and needs.
struct Shape<'b> {
    bound: &'b Bound,
    /// is it a limit of the piston, of the bore?
    piston: bool,
    bore: bool,
    only_max: bool,
}

const OF_CLEARANCE: Shape<'_> =
    Shape { bound: &bounds::CLEARANCE, piston: true, bore: true, only_max: false };

/// The printed limits of an engine, and those that are printed for some of its cylinders.
#[derive(Debug)]
pub(crate) struct LimitSets {
    common: Limits,
    own: Vec<(Vec<u32>, Limits)>,
}

/// One of the limits of a set.
pub(crate) type Which = fn(&Limits) -> &Option<Limit>;

/// Every limit of a set by its name.
pub(crate) const WHICH: [(&str, Which); 5] = [
    ("bore_size", |l| &l.bore_size),
    ("bore_taper", |l| &l.bore_taper),
    ("bore_out_of_round", |l| &l.bore_out_of_round),
    ("piston_size", |l| &l.piston_size),
    ("bench_clearance", |l| &l.bench_clearance),
];

impl Limits {
    /// No limit at all.
    pub(crate) fn none() -> Self {
        Limits {
            bore_size: None,
            bore_taper: None,
            bore_out_of_round: None,
            piston_size: None,
            bench_clearance: None,
        }
    }
}

impl LimitSets {
    pub(crate) fn from_document(
        engine: &doc::Engine,
        cylinders: u32,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        let common = Limits::from_document(engine, &engine.limits, &[], warnings)?;
        let mut out = LimitSets { common, own: Vec::new() };
        for (index, group) in engine.limits_by_cylinder.iter().enumerate() {
            let at = format!("/engine/limits_by_cylinder/{index}");
            let numbers = out.new_group(&group.cylinders, cylinders, &at)?;
            let limits = Limits::from_document(engine, &group.limits, &numbers, warnings)?;
            if WHICH.iter().all(|(_, which)| which(&limits).is_none()) {
                return Err(missing(
                    &at,
                    "limits",
                    "no limit is given: these cylinders have those of the engine",
                ));
            }
            out.own.push((numbers, limits));
        }
        out.warn_of_missing(cylinders, warnings);
        Ok(out)
    }

    /// Numbers of cylinders that no other group has.
    fn new_group(&self, entries: &[Entry<Count>], cylinders: u32, at: &str) -> Result<Vec<u32>, Error> {
        let mut numbers = Vec::new();
        for entry in entries {
            let number = entry.count(1, cylinders)?;
            if numbers.contains(&number) || self.own.iter().any(|(others, _)| others.contains(&number)) {
                return Err(entry.refuse(ErrorKind::Repeated, "this cylinder has limits of its own already"));
            }
            numbers.push(number);
        }
        match numbers.is_empty() {
            true => Err(missing(at, "cylinders", "no cylinder is named: the limits are meant for none")),
            false => Ok(numbers),
        }
    }

    fn find(&self, number: u32, which: Which) -> Option<&Limit> {
        let own = self.own.iter().find(|(numbers, _)| numbers.contains(&number));
        own.and_then(|(_, limits)| which(limits).as_ref()).or(which(&self.common).as_ref())
    }

    /// The limits of a cylinder: its own where there are any, else those of the engine.
    pub(crate) fn of(&self, number: u32) -> Limits {
        let find = |which| self.find(number, which).cloned();
        Limits {
            bore_size: find(|l| &l.bore_size),
            bore_taper: find(|l| &l.bore_taper),
            bore_out_of_round: find(|l| &l.bore_out_of_round),
            piston_size: find(|l| &l.piston_size),
            bench_clearance: find(|l| &l.bench_clearance),
        }
    }

    /// The limit of the bench clearance, where it is one for all cylinders.
    pub(crate) fn bench_clearance_of_all(&self) -> Option<&Limit> {
        let own = self.own.iter().any(|(_, limits)| limits.bench_clearance.is_some());
        self.common.bench_clearance.as_ref().filter(|_| !own)
    }

    /// Every set of limits as it is printed.
    pub(crate) fn printed(&self) -> impl Iterator<Item = &Limits> {
        [&self.common].into_iter().chain(self.own.iter().map(|(_, limits)| limits))
    }

    /// What has no limit is computed and not judged: the reader must know.
    fn warn_of_missing(&self, cylinders: u32, warnings: &mut Vec<Warning>) {
        for (name, which) in WHICH {
            let without: Vec<u32> = (1..=cylinders).filter(|n| self.find(*n, which).is_none()).collect();
            let of = match without.len() {
                0 => continue,
                all if all == cylinders as usize => String::new(),
                _ => format!(" of {}", named(&without)),
            };
            warnings.push(Warning {
                kind: "no_limit".to_owned(),
                path: format!("/engine/limits/{name}"),
                text: format!("no limit is given for the {}{of}: it was not judged", name.replace('_', " ")),
            });
        }
    }
}

/// `cylinders 7 and 8`
pub(crate) fn named(cylinders: &[u32]) -> String {
    let numbers: Vec<String> = cylinders.iter().map(u32::to_string).collect();
    match numbers.as_slice() {
        [one] => format!("cylinder {one}"),
        [first @ .., last] => format!("cylinders {} and {last}", first.join(", ")),
        [] => "no cylinder".to_owned(),
    }
}

impl Limits {
    fn from_document(
        engine: &doc::Engine,
        limits: &doc::Limits,
        cylinders: &[u32],
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        let size = |nominal: &Entry<Length>, label: &'static str, warnings: &mut Vec<Warning>| {
            let nominal = nominal.read(&bounds::BORE, warnings)?.value;
            Ok::<Bound, Error>(crate::measurement::near_nominal(label, nominal))
        };
        let bore = size(&engine.bore.nominal, "limit of this bore", warnings)?;
        let piston = size(&engine.piston.nominal, "limit of this piston", warnings)?;
        let form = Shape { bound: &bounds::FORM, piston: false, bore: true, only_max: true };
        let of_bore = Shape { bound: &bore, piston: false, bore: true, only_max: false };
        let of_piston = Shape { bound: &piston, piston: true, bore: false, only_max: false };
        let mut read = |limit: &Option<doc::Limit>, shape: &Shape<'_>| {
            limit.as_ref().map(|l| Limit::from_document(l, shape, cylinders, warnings)).transpose()
        };
        Ok(Limits {
            bore_size: read(&limits.bore_size, &of_bore)?,
            bore_taper: read(&limits.bore_taper, &form)?,
            bore_out_of_round: read(&limits.bore_out_of_round, &form)?,
            piston_size: read(&limits.piston_size, &of_piston)?,
            bench_clearance: read(&limits.bench_clearance, &OF_CLEARANCE)?,
        })
    }
}

impl Limit {
    /// A limit of a clearance.
    pub(crate) fn of_clearance(limit: &doc::Limit, warnings: &mut Vec<Warning>) -> Result<Self, Error> {
        Limit::from_document(limit, &OF_CLEARANCE, &[], warnings)
    }

    fn from_document(
        limit: &doc::Limit,
        shape: &Shape<'_>,
        cylinders: &[u32],
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        limit.origin.words()?;
        check_parts(limit, shape)?;
        let mut read =
            |entry: &Option<Entry<Length>>| entry.as_ref().map(|e| e.read(shape.bound, warnings)).transpose();
        let (lower, upper) = (read(&limit.min)?, read(&limit.max)?);
        if let (Some(low), Some(high), Some(max)) = (&lower, &upper, &limit.max)
            && low.value >= high.value
        {
            return Err(max
                .refuse(ErrorKind::OutOfOrder, format!("max must be above min, {}", low.text))
                .value(high.value));
        }
        Ok(Limit {
            printed: (lower.clone(), upper.clone()),
            form: shape.only_max,
            lower,
            upper,
            origin: limit.origin.text().to_owned(),
            temperature: limit.reference_temperature.read(&bounds::LIMIT_TEMPERATURE, warnings)?,
            over: limit.over,
            piston_states: limit.piston_states.clone().unwrap_or_default(),
            clamping: limit.clamping.clone().unwrap_or_default(),
            cylinders: cylinders.to_vec(),
        })
    }

    /// Width of the tolerance: between both limits; of a form, which begins at 0, to its upper one.
    pub(crate) fn tolerance(&self, calc: &mut Calc) -> Option<Figure> {
        match &self.printed {
            (Some(min), Some(max)) => {
                let (max, min) = (calc.given("max", max), calc.given("min", min));
                Some(calc.figure(Tolerance, [max, min]))
            }
            (None, Some(max)) if self.form => Some(calc.given("max", max)),
            _ => None,
        }
    }

    /// The lower limit alone.
    pub(crate) fn lower_only(&self) -> Option<Self> {
        self.lower.is_some().then(|| Limit { upper: None, ..self.clone() })
    }

    /// Why a piston in this state cannot be held against this limit, if it cannot.
    pub(crate) fn cannot_take_piston(&self, state: PistonState) -> Option<String> {
        let meant = self.piston_states.contains(&state);
        (!meant).then(|| format!("the limit is not meant for a piston in the state {}", state.spoken()))
    }

    /// Why a bore measured in this state cannot be held against this limit, if it cannot.
    pub(crate) fn cannot_take_bore(&self, clamping: Clamping) -> Option<String> {
        let meant = self.clamping.contains(&clamping);
        (!meant).then(|| format!("the limit is not meant for a bore measured {}", clamping.spoken()))
    }
}

/// What the limit holds is what a limit of its kind takes and needs.
fn check_parts(limit: &doc::Limit, shape: &Shape<'_>) -> Result<(), Error> {
    let at = limit.origin.parent();
    match (&limit.min, &limit.max) {
        (Some(min), _) if shape.only_max => {
            return Err(min.refuse(ErrorKind::Contradiction, "this limit takes only max"));
        }
        (None, None) if shape.only_max => return Err(missing(at, "max", "this limit needs max")),
        (None, None) => {
            return Err(Error::new(ErrorKind::MissingField, "", "a limit needs min, max or both").at(at));
        }
        _ => {}
    }
    let states = limit.piston_states.as_ref().map(Vec::len);
    let clamping = limit.clamping.as_ref().map(Vec::len);
    let (of_piston, of_bore) =
        ("piston_size and bench_clearance", "the limits of the bore and bench_clearance");
    check_part(at, "over", limit.over.map(|_| 1), shape.piston, of_piston)?;
    check_part(at, "piston_states", states, shape.piston, of_piston)?;
    check_part(at, "clamping", clamping, shape.bore, of_bore)
}

/// A field of so many items stands where it is needed, is not empty, and stands nowhere else.
fn check_part(at: &str, field: &str, items: Option<usize>, needed: bool, where_: &str) -> Result<(), Error> {
    let rule = format!("{field} is required for {where_}, and only there");
    match (needed, items) {
        (true, None) => Err(missing(at, field, rule)),
        (true, Some(0)) => {
            Err(missing(at, field, format!("{field} is empty: the limit is meant for nothing")))
        }
        (false, Some(_)) => Err(Error::new(ErrorKind::Contradiction, "", rule).at(&format!("{at}/{field}"))),
        _ => Ok(()),
    }
}

fn missing(at: &str, field: &str, reason: impl Into<String>) -> Error {
    Error::new(ErrorKind::MissingField, field, reason).at(&format!("{at}/{field}"))
}
