//! The calculation that every stage is written in: values that carry their sources of uncertainty, and the working.

mod coverage;
mod expression;
mod formula;
mod interval;
mod model;
mod text;
mod number;
mod pooled;
mod taylor;
mod working;
#[cfg(test)]
mod tests;

pub(crate) use coverage::ExpandedUncertainty;
pub use expression::Expression;
use formula::Form;
pub use formula::Formula;
pub(crate) use formula::formula;
pub(crate) use interval::{Enclosure, Interval};
pub use model::Model;
pub use number::Number;
pub(crate) use taylor::Taylor;
pub(crate) use text::check_symbol;
pub use working::{Arguments, Constant, Input, Step, Text, Working};

use crate::error::Error;
use crate::measurement::distribution::Distribution;
use crate::measurement::statistics;
use crate::measurement::uncertainty::{self, Inputs};
use core::any::TypeId;
use core::fmt::Write;
use expression::Sheet;
use number::Dual;
pub(crate) use number::erfc_slope;
use std::collections::{HashMap, HashSet};
use std::sync::Arc;

/// A place in the working; nothing when no working is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) enum Node {
    None,
    Input(usize),
    Constant(usize),
    Step(usize),
}

/// A number and its place in the working.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Figure {
    pub(crate) value: f64,
    pub(crate) node: Node,
    pub(crate) unit: &'static str,
}

impl Figure {
    /// A number outside any working.
    pub(crate) fn plain(value: f64, unit: &'static str) -> Self {
        Figure { value, node: Node::None, unit }
    }
}

/// An independent source of uncertainty.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Source {
    /// What it is, in words.
    pub(crate) name: String,
    /// The field of the document it comes from.
    pub(crate) path: String,
    /// Its distribution at a standard uncertainty of 1.
    pub(crate) distribution: Distribution,
    /// The estimate of variance behind it; none when its standard uncertainty is taken as exact.
    estimate: Option<EstimateId>,
}

/// Number of a source within one calculation.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct SourceId(usize);

/// Number of an estimate of variance within one calculation. Sources that rest on one estimate share its degrees of freedom.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct EstimateId(usize);

#[derive(Debug, Clone, Copy)]
struct Part {
    source: SourceId,
    /// sensitivity times standard uncertainty, with its sign
    contribution: Figure,
}

/// A value as a linear combination of independent sources of uncertainty about a best estimate.
#[derive(Debug, Clone)]
pub(crate) struct Measured {
    pub(crate) figure: Figure,
    /// sorted by source
    parts: Vec<Part>,
    /// its place on the sheet of a calculation that keeps its model; none for an exact number
    node: Option<usize>,
}

impl Measured {
    pub(crate) fn value(&self) -> f64 {
        self.figure.value
    }
}

/// A number without a source of uncertainty.
impl From<Figure> for Measured {
    fn from(figure: Figure) -> Self {
        Measured { figure, parts: Vec::new(), node: None }
    }
}

/// The standard uncertainty of a value and how each source shares in it.
pub(crate) struct Budget {
    pub(crate) standard: Figure,
    /// effective degrees of freedom; none when they are infinite
    pub(crate) dof: Option<Figure>,
    pub(crate) lines: Vec<Line>,
}

/// One source's share.
pub(crate) struct Line {
    pub(crate) source: SourceId,
    pub(crate) contribution: Figure,
    pub(crate) share: Figure,
}

/// Context of one calculation: its sources, and its working when that is asked for.
#[derive(Debug, Default)]
pub(crate) struct Calc {
    sources: Vec<Source>,
    /// degrees of freedom of each estimate of variance
    estimates: Vec<Figure>,
    working: Option<Working>,
    /// every operation on measured values, with their sources as inputs
    model: Option<Sheet>,
    heading: String,
    /// place of each field among the inputs of the working
    read: HashMap<String, usize>,
    /// the last step with a value and a first argument
    worked: HashMap<(u64, Node), usize>,
    /// for each step the one before it in `worked`
    earlier: Vec<Option<usize>>,
    /// the texts of the working, each once
    texts: HashSet<Text>,
    /// the formulas of the working as they are printed
    printed: HashMap<TypeId, Arc<Printed>>,
    /// letters with their numbers
    names: HashMap<&'static str, Arc<[String]>>,
}

/// A formula as it is printed.
#[derive(Debug)]
struct Printed {
    formula: Formulation,
    /// its derivatives to its arguments; none where they depend on the values
    derivatives: Option<Derivatives>,
}

/// To each argument of a formula; none where it is a plain number, which is written into the contribution itself.
type Derivatives = Vec<Option<Formulation>>;

/// A symbol, the formula behind it, and which of the arguments stand in that.
#[derive(Debug)]
struct Formulation {
    symbol: String,
    text: String,
    mentions: Vec<bool>,
}

impl Formulation {
    fn new(symbol: String, text: String, names: &[&str]) -> Self {
        let mentions = names.iter().map(|name| mentions(&text, name)).collect();
        Formulation { symbol, text, mentions }
    }
}

impl Form {
    /// The formula on a sheet, as its symbols.
    fn on<'s>(&self, sheet: &'s Sheet, arguments: &[Figure]) -> Expression<'s> {
        let mut symbols: Vec<Expression<'s>> = Vec::with_capacity(arguments.len());
        for (name, figure) in self.arguments.iter().zip(arguments) {
            symbols.push(sheet.symbol(name, figure.value));
        }
        (self.evaluate)(&|k| symbols.get(k).copied().unwrap_or_else(|| sheet.plain(f64::NAN)))
    }

    /// The derivatives of a formula as they are printed.
    fn derivatives(&self, expression: Expression<'_>) -> Derivatives {
        let of = |symbol: &&'static str| {
            let derivative = expression.derivative(symbol);
            let name = || format!("d_{}_d_{symbol}", self.symbol);
            derivative.plain().is_none().then(|| Formulation::new(name(), derivative.text(), self.arguments))
        };
        self.arguments.iter().map(of).collect()
    }

    /// Unit of a result: that of the formula, or of its first argument where the formula keeps it.
    fn unit(&self, first: Option<Figure>) -> &'static str {
        match (self.unit, first) {
            ("", Some(first)) => first.unit,
            (unit, _) => unit,
        }
    }
}

/// Several values into one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Fold {
    Mean,
    Largest,
    Smallest,
}

const COMBINATION: &str = "JCGM 100:2008, 5.2.2, as a sum over independent sources";

impl Calc {
    pub(crate) fn new(with_working: bool) -> Self {
        Calc { working: with_working.then(Working::default), ..Calc::default() }
    }

    /// A calculation that keeps the [`Model`] of its values besides: for the second order and for Monte Carlo.
    pub(crate) fn with_model(with_working: bool) -> Self {
        Calc { model: Some(Sheet::default()), ..Calc::new(with_working) }
    }

    /// A value as a model of the sources it depends on: input `k` is the error of source `k` in units of its standard uncertainty.
    /// Nothing in a calculation that keeps no model.
    ///
    /// # Errors
    /// When two of the sources have one name.
    pub(crate) fn model(&self, value: &Measured) -> Result<Option<(Inputs, Model)>, Error> {
        let Some(sheet) = &self.model else {
            return Ok(None);
        };
        let model = value.on(sheet).model();
        let used = model.inputs();
        let mut inputs = Inputs::new();
        for source in used.iter().filter_map(|k| self.sources.get(*k)) {
            inputs.quantity(&source.name, 0.0, source.distribution)?;
        }
        let place = |source: usize| used.binary_search(&source).unwrap_or_default();
        Ok(Some((inputs, model.renumbered(place))))
    }

    /// Is the working kept?
    pub(crate) fn keeps_working(&self) -> bool {
        self.working.is_some()
    }

    /// Says in words what the next steps belong to.
    pub(crate) fn heading(&mut self, text: impl FnOnce() -> String) {
        if self.working.is_some() {
            self.heading = text();
        }
    }

    pub(crate) fn into_working(self) -> Option<Working> {
        self.working
    }

    /// Names the place in the report where a number of the working stands.
    pub(crate) fn place(&mut self, figure: Figure, pointer: impl FnOnce() -> String) {
        if let (Some(working), Node::Step(index)) = (&mut self.working, figure.node)
            && let Some(step) = working.steps.get_mut(index)
        {
            step.results.push(pointer());
        }
    }

    /// A number given by the user.
    pub(crate) fn input(
        &mut self,
        symbol: &str,
        value: f64,
        unit: &'static str,
        path: &str,
        typed: &str,
    ) -> Figure {
        let Some(working) = &mut self.working else {
            return Figure::plain(value, unit);
        };
        if let Some(known) = self.read.get(path) {
            return Figure { value, node: Node::Input(*known), unit };
        }
        let node = Node::Input(working.inputs.len());
        if !path.is_empty() {
            self.read.insert(path.to_owned(), working.inputs.len());
        }
        working.inputs.push(Input {
            id: format!("i{}", working.inputs.len()).as_str().into(),
            symbol: symbol.into(),
            value,
            unit: unit.into(),
            path: path.to_owned(),
            typed: typed.to_owned(),
        });
        Figure { value, node, unit }
    }

    /// A constant with its source.
    pub(crate) fn constant(&mut self, symbol: &str, value: f64, unit: &'static str, source: &str) -> Figure {
        let Some(working) = &mut self.working else {
            return Figure::plain(value, unit);
        };
        // one table can give several constants of one symbol
        let same = |k: &Constant| {
            k.symbol == symbol && k.unit == unit && k.source == source && k.value.to_bits() == value.to_bits()
        };
        if let Some(known) = working.constants.iter().position(same) {
            return Figure { value, node: Node::Constant(known), unit };
        }
        let node = Node::Constant(working.constants.len());
        working.constants.push(Constant {
            id: format!("k{}", working.constants.len()).as_str().into(),
            symbol: symbol.into(),
            value,
            unit: unit.into(),
            source: source.into(),
        });
        Figure { value, node, unit }
    }

    /// A new independent source of uncertainty, with its distribution at a standard uncertainty of 1.
    pub(crate) fn source(&mut self, name: String, path: &str, distribution: Distribution) -> SourceId {
        self.sources.push(Source { name, path: path.to_owned(), distribution, estimate: None });
        SourceId(self.sources.len() - 1)
    }

    pub(crate) fn source_of(&self, id: SourceId) -> Option<&Source> {
        self.sources.get(id.0)
    }

    /// Adds a source that acts on the value itself, with its standard uncertainty.
    pub(crate) fn add_source(&mut self, value: &Measured, source: SourceId, standard: Figure) -> Measured {
        let mut out = value.clone();
        out.node = self.model.as_ref().map(|sheet| {
            let error = sheet.plain(standard.value) * sheet.input(source.0, 0.0);
            (value.on(sheet) + error).index()
        });
        match out.parts.binary_search_by_key(&source, |p| p.source) {
            Ok(index) => {
                if let Some(part) = out.parts.get_mut(index) {
                    let own = self.step(
                        "c",
                        "a + b",
                        &[("a", part.contribution), ("b", standard)],
                        part.contribution.value + standard.value,
                        standard.unit,
                        COMBINATION,
                    );
                    part.contribution = own;
                }
            }
            Err(index) => out.parts.insert(index, Part { source, contribution: standard }),
        }
        out
    }

    /// An effect that is even in the error of its source: to first order the source has no part in it.
    ///
    /// The value is the mean of the effect and the source contributes the effect's own standard deviation. The model that is kept
    /// has the effect itself, as the formula `F` of an error of standard uncertainty `u`: the second order and the trials see
    /// the mean and the skew there. So the value and the model at its estimates differ by the mean.
    pub(crate) fn even_effect<F: Formula<1>>(
        &mut self,
        _: F,
        source: SourceId,
        u: Figure,
        mean: Figure,
        deviation: Figure,
    ) -> Measured {
        let node = self.model.as_ref().map(|sheet| {
            let error = sheet.plain(u.value) * sheet.input(source.0, 0.0);
            F::evaluate([error]).index()
        });
        Measured { figure: mean, parts: vec![Part { source, contribution: deviation }], node }
    }

    /// A formula of exact numbers.
    pub(crate) fn figure<F: Formula<N>, const N: usize>(&mut self, _: F, arguments: [Figure; N]) -> Figure {
        let value = F::evaluate(arguments.map(|a| a.value));
        self.figure_of(Form::of::<F, N>(), value, &arguments)
    }

    fn figure_of(&mut self, form: &Form, value: f64, arguments: &[Figure]) -> Figure {
        let (value, unit) = (no_minus_zero(value), form.unit(arguments.first().copied()));
        if self.working.is_none() {
            return Figure::plain(value, unit);
        }
        let printed = self.printed(form, arguments);
        self.record(form, &printed.formula, unit, value, arguments)
    }

    /// A formula of measured values: the value, and the contribution of every source of its arguments.
    pub(crate) fn apply<F: Formula<N>, const N: usize>(
        &mut self,
        _: F,
        arguments: [&Measured; N],
    ) -> Measured {
        let result = F::evaluate(Dual::arguments(arguments.map(|a| a.value())));
        let mut slopes = result.slope.map(|slope| Figure::plain(no_minus_zero(slope), ""));
        self.measured_of(Form::of::<F, N>(), result.value, &mut slopes, &arguments)
    }

    fn measured_of(
        &mut self,
        form: &Form,
        value: f64,
        slopes: &mut [Figure],
        arguments: &[&Measured],
    ) -> Measured {
        let (value, unit) = (no_minus_zero(value), form.unit(arguments.first().map(|a| a.figure)));
        let node = self.model.as_ref().map(|sheet| {
            let argument = |k: usize| arguments.get(k).map_or_else(|| sheet.plain(f64::NAN), |a| a.on(sheet));
            (form.evaluate)(&argument).index()
        });
        let figure = match self.working {
            None => Figure::plain(value, unit),
            Some(_) => self.worked_out(form, unit, value, slopes, arguments),
        };
        Measured { figure, parts: self.contributions(arguments, slopes, unit), node }
    }

    /// A formula in the working, and its derivatives there as the slopes.
    fn worked_out(
        &mut self,
        form: &Form,
        unit: &'static str,
        value: f64,
        slopes: &mut [Figure],
        arguments: &[&Measured],
    ) -> Figure {
        let figures: Vec<Figure> = arguments.iter().map(|a| a.figure).collect();
        let printed = self.printed(form, &figures);
        let figure = self.record(form, &printed.formula, unit, value, &figures);
        let here = match printed.derivatives {
            Some(_) => None,
            None => Some(form.derivatives(form.on(&Sheet::default(), &figures))),
        };
        let derivatives = printed.derivatives.as_ref().or(here.as_ref());
        for ((slope, derivative), argument) in
            slopes.iter_mut().zip(derivatives.into_iter().flatten()).zip(arguments)
        {
            if let (Some(derivative), false) = (derivative, argument.parts.is_empty()) {
                let unit = per(unit, argument.figure.unit);
                *slope = self.record(form, derivative, unit, slope.value, &figures);
            }
        }
        figure
    }

    /// Mean, largest or smallest of measured values; of none, nothing.
    pub(crate) fn fold(&mut self, fold: Fold, symbol: &str, values: &[&Measured]) -> Option<Measured> {
        Some(match (fold, values) {
            (_, []) => return None,
            (_, [only]) => (*only).clone(),
            (Fold::Mean, _) => self.mean(symbol, values),
            (Fold::Largest, _) => {
                let node = self.joined(values, |a, b| Number::max(a, b), |all| all);
                self.pick(symbol, "max", values, node, |a, b| b > a)
            }
            // of equal values the last, so that a range of equal readings is not one reading less itself
            (Fold::Smallest, _) => {
                let node = self.joined(values, |a, b| Number::min(a, b), |all| all);
                self.pick(symbol, "min", values, node, |a, b| b <= a)
            }
        })
    }

    fn mean(&mut self, symbol: &str, values: &[&Measured]) -> Measured {
        let figures: Vec<Figure> = values.iter().map(|v| v.figure).collect();
        let figure = self.mean_of("arithmetic mean", symbol, &figures, values.len());
        let mut parts = Vec::new();
        for source in sources(values) {
            let own: Vec<Figure> = values.iter().filter_map(|v| v.contribution(source)).collect();
            parts.push(Part { source, contribution: self.mean_of(COMBINATION, "c", &own, values.len()) });
        }
        #[expect(clippy::cast_precision_loss, reason = "a count of readings is far below 2^53")]
        let count = values.len() as f64;
        let node = self.joined(values, |sum, next| sum + next, |sum| sum / count);
        Measured { figure, parts, node }
    }

    /// Several values as one on the sheet of the model.
    fn joined(
        &self,
        values: &[&Measured],
        join: for<'s> fn(Expression<'s>, Expression<'s>) -> Expression<'s>,
        then: impl for<'s> Fn(Expression<'s>) -> Expression<'s>,
    ) -> Option<usize> {
        let sheet = self.model.as_ref()?;
        values.iter().map(|v| v.on(sheet)).reduce(join).map(|all| then(all).index())
    }

    /// `(x1 + x2 + ...) / count`.
    fn mean_of(&mut self, source: &str, symbol: &str, figures: &[Figure], count: usize) -> Figure {
        let sum = no_minus_zero(total(figures.iter().map(|f| f.value)));
        #[expect(clippy::cast_precision_loss, reason = "a count of readings is far below 2^53")]
        let value = sum / count as f64;
        let text = |x: &[String]| format!("({}) / {count}", x.join(" + "));
        self.of_several(symbol, "x", text, figures, value, source)
    }

    /// Sum of figures with its roundings carried along.
    pub(crate) fn sum(&mut self, symbol: &str, figures: &[Figure], source: &str) -> Figure {
        let value = no_minus_zero(statistics::sum(figures.iter().map(|f| f.value)));
        self.of_several(symbol, "x", |x| format!("sum({})", x.join(", ")), figures, value, source)
    }

    /// Root of the sum of squares of figures.
    pub(crate) fn root_sum_square(&mut self, symbol: &str, figures: &[Figure], source: &str) -> Figure {
        let values: Vec<f64> = figures.iter().map(|f| f.value).collect();
        let text = |x: &[String]| format!("root_sum_square({})", x.join(", "));
        self.of_several(symbol, "x", text, figures, uncertainty::root_sum_square(&values), source)
    }

    /// A model of inputs in order, as one step.
    pub(crate) fn of_model(
        &mut self,
        symbol: &str,
        model: &Model,
        inputs: &[Figure],
        unit: &'static str,
        source: &str,
    ) -> Figure {
        let values: Vec<f64> = inputs.iter().map(|f| f.value).collect();
        let names: Vec<String> = (0..inputs.len()).map(|k| format!("x{k}")).collect();
        let arguments: Vec<(&str, Figure)> =
            names.iter().map(String::as_str).zip(inputs.iter().copied()).collect();
        self.step(symbol, &model.text(), &arguments, no_minus_zero(model.value(&values)), unit, source)
    }

    /// Gives the numbers of the working in one unit another name for it: that of a document, which no formula knows.
    pub(crate) fn rename_unit(&mut self, from: &str, to: &str) {
        let Some(working) = &mut self.working else { return };
        let to = Text::from(to);
        let inputs = working.inputs.iter_mut().map(|i| &mut i.unit);
        let constants = working.constants.iter_mut().map(|k| &mut k.unit);
        let steps = working.steps.iter_mut().map(|s| &mut s.unit);
        for unit in inputs.chain(constants).chain(steps).filter(|unit| **unit == *from) {
            *unit = to.clone();
        }
    }

    fn pick(
        &mut self,
        symbol: &str,
        name: &str,
        values: &[&Measured],
        node: Option<usize>,
        better: impl Fn(f64, f64) -> bool,
    ) -> Measured {
        let best =
            values.iter().copied().reduce(|best, v| if better(best.value(), v.value()) { v } else { best });
        let (value, parts) = best.map_or((f64::NAN, Vec::new()), |b| (b.value(), b.parts.clone()));
        let figures: Vec<Figure> = values.iter().map(|v| v.figure).collect();
        let text = |x: &[String]| {
            let nested = x.iter().cloned().reduce(|out, next| format!("{name}({out}, {next})"));
            nested.unwrap_or_default()
        };
        let source = "reduction rule named in the document";
        Measured { figure: self.of_several(symbol, "x", text, &figures, value, source), parts, node }
    }

    /// Standard uncertainty and shares, largest share first.
    pub(crate) fn budget(&mut self, value: &Measured) -> Budget {
        let contributions: Vec<Figure> = value.parts.iter().map(|p| p.contribution).collect();
        let variance = total(contributions.iter().map(|c| c.value * c.value));
        let text = |c: &[String]| {
            let mut out = String::with_capacity(16 * c.len());
            for c in c {
                let joint = if out.is_empty() { "sqrt(" } else { " + " };
                out.extend([joint, c, " * ", c]);
            }
            out.push_str(if out.is_empty() { "0" } else { ")" });
            out
        };
        let standard = self.of_several("u", "c", text, &contributions, variance.sqrt(), COMBINATION);
        let mut lines: Vec<Line> = Vec::with_capacity(value.parts.len());
        for part in &value.parts {
            let share = self.share(part.contribution, standard);
            lines.push(Line { source: part.source, contribution: part.contribution, share });
        }
        let dof = self.effective_dof(&lines);
        lines.sort_by(|a, b| b.share.value.total_cmp(&a.share.value));
        Budget { standard, dof, lines }
    }

    fn share(&mut self, contribution: Figure, standard: Figure) -> Figure {
        if standard.value <= 0.0 {
            return contribution;
        }
        self.figure(Share, [contribution, standard])
    }

    /// Contribution of every source: over the arguments, slope times contribution, summed in order.
    fn contributions(&mut self, arguments: &[&Measured], slopes: &[Figure], unit: &'static str) -> Vec<Part> {
        let of = |source| Part { source, contribution: self.contribution(source, arguments, slopes, unit) };
        sources(arguments).into_iter().map(of).collect()
    }

    fn contribution(
        &mut self,
        source: SourceId,
        arguments: &[&Measured],
        slopes: &[Figure],
        unit: &'static str,
    ) -> Figure {
        let terms =
            || arguments.iter().zip(slopes).filter_map(|(a, slope)| Some((*slope, a.contribution(source)?)));
        let value = no_minus_zero(total(terms().map(|(slope, u)| slope.value * u.value)));
        if self.working.is_none() {
            return Figure::plain(value, unit);
        }
        let terms: Vec<(Figure, Figure)> = terms().collect();
        if let [(slope, u)] = terms.as_slice()
            && slope.node == Node::None
            && slope.value.to_bits() == 1.0_f64.to_bits()
        {
            return Figure { value, node: u.node, unit };
        }
        let (slopes, errors) = (self.numbered("s", terms.len()), self.numbered("u", terms.len()));
        let mut text = String::with_capacity(16 * terms.len());
        let mut named: Vec<(&str, Figure)> = Vec::with_capacity(2 * terms.len());
        for ((slope, u), (c, x)) in terms.iter().zip(slopes.iter().zip(errors.iter())) {
            text.push_str(if text.is_empty() { "" } else { " + " });
            match slope.node {
                Node::None => {
                    let _ = write!(text, "{}", slope.value);
                }
                _ => {
                    text.push_str(c);
                    named.push((c, *slope));
                }
            }
            text.push_str(" * ");
            text.push_str(x);
            named.push((x, *u));
        }
        let mut of = self.source_of(source).map(|s| s.name.clone()).unwrap_or_default();
        of.push_str(": ");
        of.push_str(COMBINATION);
        self.step("c", &text, &named, value, unit, &of)
    }

    /// A formula as it is printed.
    fn printed(&mut self, form: &Form, arguments: &[Figure]) -> Arc<Printed> {
        let print = || {
            let sheet = Sheet::default();
            let expression = form.on(&sheet, arguments);
            let formula = Formulation::new(form.symbol.to_owned(), expression.text(), form.arguments);
            // at a corner, and where a function has a slope of its own, they depend on the values
            let derivatives = sheet.is_smooth().then(|| form.derivatives(expression));
            Arc::new(Printed { formula, derivatives })
        };
        Arc::clone(self.printed.entry((form.id)()).or_insert_with(print))
    }

    fn record(
        &mut self,
        form: &Form,
        formulation: &Formulation,
        unit: &'static str,
        value: f64,
        figures: &[Figure],
    ) -> Figure {
        let mut arguments: Vec<(&str, Figure)> = Vec::with_capacity(figures.len());
        let all = form.arguments.iter().copied().zip(figures.iter().copied()).zip(&formulation.mentions);
        arguments.extend(all.filter(|(_, is_mentioned)| **is_mentioned).map(|(argument, _)| argument));
        self.step(&formulation.symbol, &formulation.text, &arguments, value, unit, form.source)
    }

    /// A step over several figures of one unit, named by a letter and their number.
    fn of_several(
        &mut self,
        symbol: &str,
        letter: &'static str,
        text: impl FnOnce(&[String]) -> String,
        figures: &[Figure],
        value: f64,
        source: &str,
    ) -> Figure {
        let unit = figures.first().map_or("mm", |f| f.unit);
        if self.working.is_none() {
            return Figure::plain(value, unit);
        }
        let names = self.numbered(letter, figures.len());
        let symbols = names.get(..figures.len()).unwrap_or_default();
        let arguments: Vec<(&str, Figure)> =
            symbols.iter().map(String::as_str).zip(figures.iter().copied()).collect();
        self.step(symbol, &text(symbols), &arguments, value, unit, source)
    }

    /// A letter with the numbers from 1 on, as many as are needed or more: `x1`, `x2`, ...
    fn numbered(&mut self, letter: &'static str, count: usize) -> Arc<[String]> {
        let names = self.names.entry(letter).or_default();
        if names.len() < count {
            *names = (1..=2 * count).map(|k| format!("{letter}{k}")).collect();
        }
        Arc::clone(names)
    }

    fn step(
        &mut self,
        symbol: &str,
        text: &str,
        arguments: &[(&str, Figure)],
        value: f64,
        unit: &'static str,
        source: &str,
    ) -> Figure {
        let Some(working) = &mut self.working else {
            return Figure::plain(value, unit);
        };
        // the same formula of the same numbers is the same step
        let is_same =
            |step: &Step| {
                step.formula == text
                    && step.symbol == symbol
                    && step.source == source
                    && step.arguments.0.len() == arguments.len()
                    && step.arguments.0.iter().zip(arguments).all(|((_, id), (_, figure))| {
                        working.id(figure.node).map_or("", |known| known) == &**id
                    })
            };
        let key = (value.to_bits(), arguments.first().map_or(Node::None, |(_, figure)| figure.node));
        let last = self.worked.get(&key).copied();
        let mut known = last;
        while let Some(place) = known {
            if working.steps.get(place).is_some_and(is_same) {
                return Figure { value, node: Node::Step(place), unit };
            }
            known = self.earlier.get(place).copied().flatten();
        }
        let place = working.steps.len();
        self.worked.insert(key, place);
        self.earlier.push(last);
        let texts = &mut self.texts;
        let mut once = |text: &str| match texts.get(text) {
            Some(known) => known.clone(),
            None => {
                let new = Text::from(text);
                texts.insert(new.clone());
                new
            }
        };
        let ids = arguments.iter().map(|(symbol, figure)| {
            (once(symbol), working.id(figure.node).cloned().unwrap_or_else(|| Text::from("")))
        });
        let arguments = Arguments(ids.collect());
        working.steps.push(Step {
            id: format!("s{place}").as_str().into(),
            of: once(&self.heading),
            symbol: once(symbol),
            formula: once(text),
            arguments,
            value,
            unit: once(unit),
            source: once(source),
            results: Vec::new(),
        });
        Figure { value, node: Node::Step(place), unit }
    }
}

impl Working {
    /// Name of a number.
    fn id(&self, node: Node) -> Option<&Text> {
        match node {
            Node::None => None,
            Node::Input(k) => self.inputs.get(k).map(|i| &i.id),
            Node::Constant(k) => self.constants.get(k).map(|k| &k.id),
            Node::Step(k) => self.steps.get(k).map(|s| &s.id),
        }
    }
}

impl Measured {
    /// The value on the sheet of a model.
    fn on<'s>(&self, sheet: &'s Sheet) -> Expression<'s> {
        self.node.map_or_else(|| sheet.plain(self.value()), |node| sheet.at(node))
    }

    fn contribution(&self, source: SourceId) -> Option<Figure> {
        let index = self.parts.binary_search_by_key(&source, |p| p.source).ok()?;
        self.parts.get(index).map(|p| p.contribution)
    }
}

formula! {
    /// Share of one source in the variance.
    Share: share ["1"] = (c, u) => c * c / (u * u); source "JCGM 100:2008, F.1.2.4 (share of the combined variance)";
}

/// Minus zero is zero: it would print as another number, and derivatives with terms left out differ only in it.
fn no_minus_zero(value: f64) -> f64 {
    value + 0.0
}

/// Unit of a sensitivity.
fn per(of: &'static str, to: &'static str) -> &'static str {
    match (of, to) {
        (_, "1") => of,
        (of, to) if of == to => "1",
        ("mm", "C") => "mm/C",
        ("1", "C") => "1/C",
        ("1/K", "C") => "1/K/C",
        ("1", "1/K") => "K",
        _ => "",
    }
}

/// Sum in the order given. The working adds the same way.
fn total(values: impl Iterator<Item = f64>) -> f64 {
    values.reduce(|sum, next| sum + next).unwrap_or(0.0)
}

/// Every source of several values, in order.
fn sources(values: &[&Measured]) -> Vec<SourceId> {
    let mut out: Vec<SourceId> = values.iter().flat_map(|v| v.parts.iter().map(|p| p.source)).collect();
    out.sort_unstable();
    out.dedup();
    out
}

/// Does the formula's text hold this symbol as a whole word?
fn mentions(text: &str, symbol: &str) -> bool {
    text.split(|c: char| !c.is_ascii_alphanumeric() && c != '_').any(|word| word == symbol)
}
