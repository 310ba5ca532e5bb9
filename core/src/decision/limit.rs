//! Printed limits, and what they are meant for.

use crate::bounds::{self, Bound};
use crate::error::{Error, ErrorKind};
use crate::job::document::{self as doc, Clamping, PistonState, Surface};
use crate::job::{Entry, Given, Warning};
use crate::quantity::Length;

/// A printed limit.
#[derive(Debug, Clone)]
pub(crate) struct Limit {
    pub(crate) lower: Option<Given>,
    pub(crate) upper: Option<Given>,
    pub(crate) origin: String,
    pub(crate) temperature: Given,
    pub(crate) over: Option<Surface>,
    piston_states: Vec<PistonState>,
    clamping: Vec<Clamping>,
}

/// The printed limits of an engine.
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

impl Limits {
    pub(crate) fn from_document(engine: &doc::Engine, warnings: &mut Vec<Warning>) -> Result<Self, Error> {
        let limits = &engine.limits;
        let size = |nominal: &Entry<Length>, label: &'static str, warnings: &mut Vec<Warning>| {
            let nominal = nominal.read(&bounds::BORE, warnings)?.value;
            Ok::<Bound, Error>(crate::measurement::near_nominal(label, nominal))
        };
        let bore = size(&engine.bore.nominal, "limit of this bore", warnings)?;
        let piston = size(&engine.piston.nominal, "limit of this piston", warnings)?;
        let form = Shape {
            bound: &bounds::FORM,
            piston: false,
            bore: true,
            only_max: true,
        };
        let of_bore = Shape {
            bound: &bore,
            piston: false,
            bore: true,
            only_max: false,
        };
        let of_piston = Shape {
            bound: &piston,
            piston: true,
            bore: false,
            only_max: false,
        };
        let of_both = Shape {
            bound: &bounds::CLEARANCE,
            piston: true,
            bore: true,
            only_max: false,
        };
        let mut read = |limit: &Option<doc::Limit>, shape: &Shape<'_>| {
            limit
                .as_ref()
                .map(|l| Limit::from_document(l, shape, warnings))
                .transpose()
        };
        Ok(Limits {
            bore_size: read(&limits.bore_size, &of_bore)?,
            bore_taper: read(&limits.bore_taper, &form)?,
            bore_out_of_round: read(&limits.bore_out_of_round, &form)?,
            piston_size: read(&limits.piston_size, &of_piston)?,
            bench_clearance: read(&limits.bench_clearance, &of_both)?,
        })
    }
}

impl Limit {
    fn from_document(
        limit: &doc::Limit,
        shape: &Shape<'_>,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        let contradiction = |reason: &str| Err(limit.origin.refuse(ErrorKind::Contradiction, reason));
        limit.origin.words()?;
        match (&limit.min, &limit.max) {
            (None, None) => return contradiction("a limit needs min, max or both"),
            (Some(min), _) if shape.only_max => {
                return Err(min.refuse(ErrorKind::Contradiction, "this limit takes only max"));
            }
            _ => {}
        }
        if limit.over.is_some() != shape.piston || limit.piston_states.is_some() != shape.piston {
            return contradiction(
                "over and piston_states are required for piston_size and bench_clearance, and only there",
            );
        }
        if limit.clamping.is_some() != shape.bore {
            return contradiction(
                "clamping is required for the limits of the bore and bench_clearance, and only there",
            );
        }
        let mut read =
            |entry: &Option<Entry<Length>>| entry.as_ref().map(|e| e.read(shape.bound, warnings)).transpose();
        let (lower, upper) = (read(&limit.min)?, read(&limit.max)?);
        if let (Some(low), Some(high), Some(max)) = (&lower, &upper, &limit.max)
            && low.value >= high.value
        {
            return Err(max
                .refuse(
                    ErrorKind::OutOfOrder,
                    format!("max must be above min, {}", low.text),
                )
                .value(high.value));
        }
        Ok(Limit {
            lower,
            upper,
            origin: limit.origin.text().to_owned(),
            temperature: limit
                .reference_temperature
                .read(&bounds::LIMIT_TEMPERATURE, warnings)?,
            over: limit.over,
            piston_states: limit.piston_states.clone().unwrap_or_default(),
            clamping: limit.clamping.clone().unwrap_or_default(),
        })
    }

    /// Why a piston in this state cannot be held against this limit, if it cannot.
    pub(crate) fn cannot_take_piston(&self, state: PistonState) -> Option<String> {
        let meant = self.piston_states.contains(&state);
        (!meant).then(|| {
            format!(
                "the limit is not meant for a piston in the state {}",
                state.spoken()
            )
        })
    }

    /// Why a bore measured in this state cannot be held against this limit, if it cannot.
    pub(crate) fn cannot_take_bore(&self, clamping: Clamping) -> Option<String> {
        let meant = self.clamping.contains(&clamping);
        (!meant).then(|| format!("the limit is not meant for a bore measured {}", clamping.spoken()))
    }
}
