//! From the entries of a budget to sources and inputs, with the place of every refusal.

use super::document::{BudgetDocument, InputEntry, Shape, SourceEntry, Term};
use crate::calc::check_symbol;
use crate::error::{Error, ErrorKind};
use crate::job::{Entry, Kind, Real, Words, check_length};
use crate::measurement::distribution::Distribution;
use crate::measurement::uncertainty::{Inputs, SourceId};
use std::collections::{BTreeMap, BTreeSet};

/// Most sources, and most inputs. The second order looks at every pair.
const MOST: usize = 100;

/// The inputs of a budget while they are made.
#[derive(Debug, Default)]
pub(super) struct Maker<'d> {
    pub(super) inputs: Inputs,
    pub(super) symbols: Vec<&'d str>,
    /// JSON Pointer of each source
    pub(super) paths: BTreeMap<String, String>,
    sources: BTreeMap<&'d str, SourceId>,
    used: BTreeSet<&'d str>,
}

impl<'d> Maker<'d> {
    pub(super) fn new(document: &'d BudgetDocument) -> Result<Self, Error> {
        check_count("/sources", document.sources.len())?;
        check_count("/inputs", document.inputs.len())?;
        let mut maker = Maker::default();
        for (index, source) in document.sources.iter().enumerate() {
            maker.source(source, &format!("/sources/{index}"))?;
        }
        for (index, input) in document.inputs.iter().enumerate() {
            maker.input(input, &format!("/inputs/{index}"))?;
        }
        maker.check_use(&document.sources)?;
        Ok(maker)
    }

    fn source(&mut self, source: &'d SourceEntry, at: &str) -> Result<(), Error> {
        let name = words(&source.name, at, "name")?;
        let (distribution, _) = distribution(&source.distribution, &format!("{at}/distribution"))?;
        let distribution =
            with_dof(distribution, &source.distribution, [&source.dof, &source.reliability], at)?;
        let id = self.inputs.source(name, distribution).map_err(|e| e.under(at))?;
        self.sources.insert(name, id);
        self.paths.insert(name.to_owned(), at.to_owned());
        Ok(())
    }

    fn input(&mut self, input: &'d InputEntry, at: &str) -> Result<(), Error> {
        let symbol = words(&input.symbol, at, "symbol")?;
        let field = format!("{at}/symbol");
        check_symbol(symbol).map_err(|e| e.moved(field.clone()))?;
        if self.symbols.contains(&symbol) {
            return Err(Error::new(ErrorKind::Repeated, symbol, "this symbol stands twice").at(&field));
        }
        self.symbols.push(symbol);
        input.unit.as_ref().map(|unit| words(unit, at, "unit")).transpose()?;
        match &input.distribution {
            Some(shape) => self.quantity(input, shape, symbol, at),
            None => self.combination(input, at),
        }
    }

    /// An input that is a source of its own.
    fn quantity(&mut self, input: &InputEntry, shape: &Shape, symbol: &str, at: &str) -> Result<(), Error> {
        if !input.terms.is_empty() {
            let reason = "an input has terms or a distribution of its own, not both";
            return Err(Error::new(ErrorKind::Contradiction, "", reason).at(&format!("{at}/terms")));
        }
        let (distribution, mean) = distribution(shape, &format!("{at}/distribution"))?;
        let distribution = with_dof(distribution, shape, [&input.dof, &input.reliability], at)?;
        let estimate = match (mean, &input.estimate) {
            (Some(_), Some(stated)) => {
                let reason = "the estimate is the mean of the repeats; leave it out";
                let error = Error::new(ErrorKind::Contradiction, stated.text(), reason);
                return Err(error.at(&format!("{at}/estimate")));
            }
            (Some(mean), None) => mean,
            (None, _) => estimate(input, at)?,
        };
        self.inputs.quantity(symbol, estimate, distribution).map_err(|e| match e.field() {
            "name" => e.moved(format!("{at}/symbol")),
            _ => e.under(at),
        })?;
        self.paths.insert(symbol.to_owned(), at.to_owned());
        Ok(())
    }

    /// An input that is exact or made of sources.
    fn combination(&mut self, input: &'d InputEntry, at: &str) -> Result<(), Error> {
        for (field, given) in [("dof", &input.dof), ("reliability", &input.reliability)] {
            if let Some(given) = given {
                let reason = "this belongs to a distribution, and the input has none of its own";
                let error = Error::new(ErrorKind::Contradiction, given.text(), reason);
                return Err(error.at(&format!("{at}/{field}")));
            }
        }
        let mut terms = Vec::with_capacity(input.terms.len());
        let mut named = BTreeSet::new();
        for (index, term) in input.terms.iter().enumerate() {
            let at = format!("{at}/terms/{index}");
            let found = self.term(term, &at)?;
            if !named.insert(found.0) {
                let error = Error::new(
                    ErrorKind::Repeated,
                    term.source.text(),
                    "this source stands twice in the input",
                );
                return Err(error.at(&format!("{at}/source")));
            }
            terms.push(found);
        }
        let estimate = estimate(input, at)?;
        self.inputs.input(estimate, &terms).map_err(|e| e.under(at)).map(|_| ())
    }

    fn term(&mut self, term: &'d Term, at: &str) -> Result<(SourceId, f64), Error> {
        let name = words(&term.source, at, "source")?;
        let factor = term.factor.as_ref().map_or(Ok(1.0), |factor| number(factor, at, "factor"))?;
        let Some(id) = self.sources.get(name).copied() else {
            let known: Vec<&str> = self.sources.keys().copied().collect();
            let error = Error::new(ErrorKind::UnknownName, name, "no source has this name");
            return Err(error.at(&format!("{at}/source")).suggest(crate::job::nearest(name, &known)));
        };
        self.used.insert(name);
        Ok((id, factor))
    }

    /// Refuses a source that does nothing: it was forgotten somewhere.
    fn check_use(&self, sources: &[SourceEntry]) -> Result<(), Error> {
        let unused = sources.iter().position(|source| !self.used.contains(source.name.text().trim()));
        unused.and_then(|index| Some((index, sources.get(index)?))).map_or(Ok(()), |(index, source)| {
            let error = Error::new(ErrorKind::Contradiction, source.name.text(), "no input uses this source");
            Err(error.at(&format!("/sources/{index}")))
        })
    }
}

fn check_count(field: &str, count: usize) -> Result<(), Error> {
    match count > MOST {
        true => Err(Error::new(ErrorKind::TooLarge, "", format!("at most {MOST}")).at(field)),
        false => Ok(()),
    }
}

/// A field of an object; a document that was not read from text knows no paths of its own.
fn placed<T>(result: Result<T, Error>, at: &str, field: &str) -> Result<T, Error> {
    result.map_err(|e| e.at(&format!("{at}/{field}")))
}

fn words<'d>(entry: &'d Entry<Words>, at: &str, field: &str) -> Result<&'d str, Error> {
    placed(entry.words(), at, field)
}

fn number(entry: &Entry<Real>, at: &str, field: &str) -> Result<f64, Error> {
    placed(entry.number(), at, field)
}

fn estimate(input: &InputEntry, at: &str) -> Result<f64, Error> {
    match &input.estimate {
        Some(estimate) => number(estimate, at, "estimate"),
        None => {
            let error = Error::new(ErrorKind::MissingField, "estimate", "this field is required");
            Err(error.at(&format!("{at}/estimate")))
        }
    }
}

fn probability<K: Kind + crate::job::Numeric>(entry: &Entry<K>, at: &str) -> Result<f64, Error> {
    placed(K::number(entry.text()), at, "probability")
}

/// The distribution of a shape, and the mean of its readings if it has any.
fn distribution(shape: &Shape, at: &str) -> Result<(Distribution, Option<f64>), Error> {
    let at = format!("{at}/{}", word(shape));
    let get = |entry: &Entry<Real>, field: &str| number(entry, &at, field);
    let made = match shape {
        Shape::Normal(s) => Distribution::normal(get(&s.standard_deviation, "standard_deviation")?),
        Shape::NormalExpanded(s) => Distribution::normal_expanded(
            get(&s.expanded, "expanded")?,
            get(&s.coverage_factor, "coverage_factor")?,
        ),
        Shape::NormalAtCoverage(s) => {
            Distribution::normal_at_coverage(get(&s.expanded, "expanded")?, probability(&s.probability, &at)?)
        }
        Shape::StudentT(s) => Distribution::student_t(get(&s.scale, "scale")?, get(&s.dof, "dof")?),
        Shape::StudentTAtCoverage(s) => Distribution::student_t_at_coverage(
            get(&s.expanded, "expanded")?,
            probability(&s.probability, &at)?,
            get(&s.dof, "dof")?,
        ),
        Shape::Rectangular(s) => Distribution::rectangular(get(&s.half_width, "half_width")?),
        Shape::Triangular(s) => Distribution::triangular(get(&s.half_width, "half_width")?),
        Shape::Trapezoidal(s) => {
            Distribution::trapezoidal(get(&s.half_width, "half_width")?, get(&s.beta, "beta")?)
        }
        Shape::SumOfRectangular(s) => Distribution::sum_of_rectangular(
            get(&s.half_width_1, "half_width_1")?,
            get(&s.half_width_2, "half_width_2")?,
        ),
        Shape::CurvilinearTrapezoid(s) => Distribution::curvilinear_trapezoid(
            get(&s.half_width, "half_width")?,
            get(&s.half_width_error, "half_width_error")?,
        ),
        Shape::Arcsine(s) => Distribution::arcsine(get(&s.half_width, "half_width")?),
        Shape::Repeats(s) => {
            placed(check_length(&s.values, |value| value), &at, "values")?;
            let place = |(k, value)| number(value, &at, &format!("values/{k}"));
            let values: Vec<f64> = s.values.iter().enumerate().map(place).collect::<Result<_, _>>()?;
            let (mean, made) = Distribution::from_repeats(&values).map_err(|e| e.under(&at))?;
            return Ok((made, Some(mean)));
        }
        Shape::Pooled(s) => {
            let count = placed(s.count.count(1, 1_000_000), &at, "count")?;
            let s_of_one = get(&s.standard_deviation, "standard_deviation")?;
            Distribution::pooled(s_of_one, get(&s.dof, "dof")?, count as usize)
        }
    };
    made.map(|made| (made, None)).map_err(|e| e.under(&at))
}

/// The word of the document for a shape.
fn word(shape: &Shape) -> &'static str {
    match shape {
        Shape::Normal(_) => "normal",
        Shape::NormalExpanded(_) => "normal_expanded",
        Shape::NormalAtCoverage(_) => "normal_at_coverage",
        Shape::StudentT(_) => "student_t",
        Shape::StudentTAtCoverage(_) => "student_t_at_coverage",
        Shape::Rectangular(_) => "rectangular",
        Shape::Triangular(_) => "triangular",
        Shape::Trapezoidal(_) => "trapezoidal",
        Shape::SumOfRectangular(_) => "sum_of_rectangular",
        Shape::CurvilinearTrapezoid(_) => "curvilinear_trapezoid",
        Shape::Arcsine(_) => "arcsine",
        Shape::Repeats(_) => "repeats",
        Shape::Pooled(_) => "pooled",
    }
}

/// With the degrees of freedom that are stated beside the shape.
fn with_dof(
    distribution: Distribution,
    shape: &Shape,
    [dof, reliability]: [&Option<Entry<Real>>; 2],
    at: &str,
) -> Result<Distribution, Error> {
    let refuse = |entry: &Entry<Real>, field: &str, reason: &str| {
        Err(Error::new(ErrorKind::Contradiction, entry.text(), reason).at(&format!("{at}/{field}")))
    };
    let (entry, field) = match (dof, reliability) {
        (None, None) => return Ok(distribution),
        (Some(_), Some(entry)) => {
            return refuse(entry, "reliability", "either degrees of freedom or a reliability, not both");
        }
        (Some(entry), None) => (entry, "dof"),
        (None, Some(entry)) => (entry, "reliability"),
    };
    let value = number(entry, at, field)?;
    match (shape, field) {
        (
            Shape::StudentT(_)
            | Shape::StudentTAtCoverage(_)
            | Shape::Repeats(_)
            | Shape::Pooled(_)
            | Shape::CurvilinearTrapezoid(_),
            _,
        ) => refuse(entry, field, "this distribution says itself how well its size is known"),
        (_, "dof") => distribution.with_dof(value).map_err(|e| e.moved(format!("{at}/dof"))),
        _ => distribution.with_reliability(value).map_err(|e| e.moved(format!("{at}/reliability"))),
    }
}
