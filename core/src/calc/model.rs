//! A model as a list of operations: the same list gives the value, the derivatives and the trials of a Monte Carlo run.

use super::expression::{Expression, Sheet};
use super::formula::Formula;
use super::number::Number;
use crate::measurement::jet::{self, Jet};
use crate::measurement::random::{BLOCK, Column};
use crate::wide;
use std::borrow::Cow;
use std::collections::BTreeSet;

/// What is done to one number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Unary {
    Neg,
    Sqrt,
    Abs,
    Erfc,
    Exp,
    Ln,
    Sin,
    Cos,
    Tan,
    Asin,
    Acos,
    Atan,
    /// whole power, of any number
    Powi(i32),
    /// another power, of a number above zero
    Powf(f64),
}

/// What is done to two numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Binary {
    Add,
    Sub,
    Mul,
    Div,
    Max,
    Min,
}

/// One operation; its operands are earlier ones.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Op {
    Plain(f64),
    Input(usize),
    Unary(Unary, usize),
    Binary(Binary, usize, usize),
}

impl Unary {
    pub(crate) fn name(self) -> &'static str {
        match self {
            Unary::Neg => "-",
            Unary::Sqrt => "sqrt",
            Unary::Abs => "abs",
            Unary::Erfc => "erfc",
            Unary::Exp => "exp",
            Unary::Ln => "ln",
            Unary::Sin => "sin",
            Unary::Cos => "cos",
            Unary::Tan => "tan",
            Unary::Asin => "asin",
            Unary::Acos => "acos",
            Unary::Atan => "atan",
            Unary::Powi(_) | Unary::Powf(_) => "",
        }
    }

    /// The exponent, which is written behind.
    pub(crate) fn exponent(self) -> Option<f64> {
        match self {
            Unary::Powi(exponent) => Some(exponent.into()),
            Unary::Powf(exponent) => Some(exponent),
            _ => None,
        }
    }

    /// A power with this exponent.
    pub(crate) fn power(exponent: f64) -> Self {
        match exponent.abs() <= f64::from(i32::MAX) && exponent.fract() == 0.0 {
            #[expect(
                clippy::cast_possible_truncation,
                reason = "a whole number within the range of the type"
            )]
            true => Unary::Powi(exponent as i32),
            false => Unary::Powf(exponent),
        }
    }

    pub(crate) fn of(self, a: f64) -> f64 {
        match self {
            Unary::Neg => -a,
            Unary::Sqrt => a.sqrt(),
            Unary::Abs => a.abs(),
            Unary::Erfc => Number::erfc(a),
            Unary::Exp => libm::exp(a),
            Unary::Ln => libm::log(a),
            Unary::Sin => libm::sin(a),
            Unary::Cos => libm::cos(a),
            Unary::Tan => libm::tan(a),
            Unary::Asin => libm::asin(a),
            Unary::Acos => libm::acos(a),
            Unary::Atan => libm::atan(a),
            Unary::Powi(exponent) => jet::power(a, exponent.into()),
            Unary::Powf(exponent) => libm::pow(a, exponent),
        }
    }

    /// Its derivative at `a`.
    pub(crate) fn slope(self, a: f64) -> f64 {
        self.of_jet(Jet::variable(a, 0, 1)).gradient(1).first().copied().unwrap_or(f64::NAN)
    }

    #[inline(always)]
    fn of_column(self, a: &Column, out: &mut Column) {
        match self {
            Unary::Neg => each(a, out, |a| -a),
            Unary::Sqrt => each(a, out, f64::sqrt),
            Unary::Abs => each(a, out, f64::abs),
            Unary::Acos => each(a, out, wide::acos),
            // these are called number by number, whatever the width
            _ => each(a, out, |a| self.of(a)),
        }
    }

    fn of_jet(self, a: Jet) -> Jet {
        match self {
            Unary::Neg => -a,
            Unary::Sqrt => a.sqrt(),
            Unary::Abs => a.abs(),
            Unary::Erfc => a.erfc(),
            Unary::Exp => a.exp(),
            Unary::Ln => a.ln(),
            Unary::Sin => a.sin(),
            Unary::Cos => a.cos(),
            Unary::Tan => a.tan(),
            Unary::Asin => a.asin(),
            Unary::Acos => a.acos(),
            Unary::Atan => a.atan(),
            Unary::Powi(exponent) => a.powi(exponent),
            Unary::Powf(exponent) => a.powf(exponent),
        }
    }
}

impl Binary {
    pub(crate) fn name(self) -> &'static str {
        match self {
            Binary::Add => "+",
            Binary::Sub => "-",
            Binary::Mul => "*",
            Binary::Div => "/",
            Binary::Max => "max",
            Binary::Min => "min",
        }
    }

    pub(crate) fn of(self, a: f64, b: f64) -> f64 {
        match self {
            Binary::Add => a + b,
            Binary::Sub => a - b,
            Binary::Mul => a * b,
            Binary::Div => a / b,
            Binary::Max => Number::max(a, b),
            Binary::Min => Number::min(a, b),
        }
    }

    #[inline(always)]
    fn of_columns(self, a: &Column, b: &Column, out: &mut Column) {
        match self {
            Binary::Add => pairs(a, b, out, |a, b| a + b),
            Binary::Sub => pairs(a, b, out, |a, b| a - b),
            Binary::Mul => pairs(a, b, out, |a, b| a * b),
            Binary::Div => pairs(a, b, out, |a, b| a / b),
            Binary::Max => pairs(a, b, out, |a, b| if b > a { b } else { a }),
            Binary::Min => pairs(a, b, out, |a, b| if b < a { b } else { a }),
        }
    }

    fn of_jets(self, a: Cow<'_, Jet>, b: Cow<'_, Jet>) -> Jet {
        match self {
            Binary::Add => Jet::added(a, b),
            Binary::Sub => Jet::subtracted(a, b),
            Binary::Mul => Jet::multiplied(a, b),
            Binary::Div => Jet::divided(a, b),
            Binary::Max => a.max(&b),
            Binary::Min => a.min(&b),
        }
    }
}

#[inline(always)]
fn each(a: &Column, out: &mut Column, rule: impl Fn(f64) -> f64) {
    for (out, a) in out.iter_mut().zip(a) {
        *out = rule(*a);
    }
}

#[inline(always)]
fn pairs(a: &Column, b: &Column, out: &mut Column, rule: impl Fn(f64, f64) -> f64) {
    for ((out, a), b) in out.iter_mut().zip(a).zip(b) {
        *out = rule(*a, *b);
    }
}

/// A function of numbered inputs, from a calculation or [from text](Model::from_text).
///
/// As a model of [`Inputs`](crate::measurement::uncertainty::Inputs): `inputs.evaluate(|x| model.jet(x))`, and
/// [`MonteCarlo::of_model`](crate::measurement::monte_carlo::MonteCarlo::of_model).
///
/// ```
/// use gaugepoint::calc::Model;
///
/// // a length at a temperature: length, coefficient of expansion, temperature
/// let model = Model::of(3, |x| x[0] * (1.0 + x[1] * (x[2] - 20.0)));
/// assert_eq!(model.value(&[100.0, 1e-5, 30.0]), 100.0 * (1.0 + 1e-5 * 10.0));
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Model {
    /// in an order in which operands come first; the last one is the result
    ops: Vec<Op>,
}

impl Model {
    /// The operations of a closure over `inputs` inputs, which is run once, on symbols instead of numbers.
    #[must_use]
    pub fn of(inputs: usize, law: impl for<'s> Fn(&[Expression<'s>]) -> Expression<'s>) -> Model {
        let sheet = Sheet::default();
        let symbols: Vec<Expression<'_>> = (0..inputs).map(|k| sheet.input(k, f64::NAN)).collect();
        law(&symbols).model()
    }

    /// The same of a closure that names its inputs.
    #[must_use]
    pub fn of_array<const N: usize>(law: impl for<'s> Fn([Expression<'s>; N]) -> Expression<'s>) -> Model {
        let sheet = Sheet::default();
        law(core::array::from_fn(|k| sheet.input(k, f64::NAN))).model()
    }

    /// A formula of its arguments.
    pub(crate) fn of_formula<F: Formula<N>, const N: usize>(_: F) -> Model {
        Model::of_array(|arguments| F::evaluate(arguments))
    }

    /// A model of operations whose operands come first and whose last one is the result.
    pub(super) fn of_ops(ops: Vec<Op>) -> Model {
        Model { ops }
    }

    /// The operations, operands before what is made of them.
    pub(super) fn ops(&self) -> &[Op] {
        &self.ops
    }

    /// The operations that lead to number `last`, of a list that `op` reads and whose operands come first.
    pub(crate) fn reaching(last: usize, op: impl Fn(usize) -> Op) -> Model {
        let mut waiting = BTreeSet::from([last]);
        let mut kept: Vec<(usize, Op)> = Vec::new();
        while let Some(k) = waiting.pop_last() {
            let op = op(k);
            waiting.extend(op.operands().into_iter().flatten());
            kept.push((k, op));
        }
        kept.reverse();
        let place = |old: usize| kept.binary_search_by_key(&old, |(k, _)| *k).unwrap_or_default();
        Model { ops: kept.iter().map(|(_, op)| op.moved(place)).collect() }
    }

    /// As text, its inputs `x0`, `x1`, ...; an operation that is used twice stands twice.
    pub(crate) fn text(&self) -> String {
        Sheet::of(&self.ops).text()
    }

    /// Every input it uses, in order, each once.
    #[must_use]
    pub fn inputs(&self) -> Vec<usize> {
        let mut out: Vec<usize> = self.ops.iter().filter_map(|op| op.input()).collect();
        out.sort_unstable();
        out.dedup();
        out
    }

    /// The same function with its inputs numbered anew.
    pub(crate) fn renumbered(mut self, number: impl Fn(usize) -> usize) -> Model {
        for op in &mut self.ops {
            if let Op::Input(index) = op {
                *index = number(*index);
            }
        }
        self
    }

    /// Its value; NaN when an input is missing.
    #[must_use]
    pub fn value(&self, inputs: &[f64]) -> f64 {
        let mut out: Vec<f64> = Vec::with_capacity(self.ops.len());
        for op in &self.ops {
            let at = |k: usize| out.get(k).copied().unwrap_or(f64::NAN);
            let next = match *op {
                Op::Plain(value) => value,
                Op::Input(index) => inputs.get(index).copied().unwrap_or(f64::NAN),
                Op::Unary(kind, a) => kind.of(at(a)),
                Op::Binary(kind, a, b) => kind.of(at(a), at(b)),
            };
            out.push(next);
        }
        out.pop().unwrap_or(f64::NAN)
    }

    /// Its value with derivatives; NaN when an input is missing.
    #[must_use]
    pub fn jet(&self, inputs: &[Jet]) -> Jet {
        let mut made = Made::new(&self.ops, inputs);
        for op in &self.ops {
            let next = match *op {
                Op::Plain(value) => Jet::constant(value),
                // read where it is used
                Op::Input(_) => Jet::constant(f64::NAN),
                Op::Unary(kind, a) => kind.of_jet(made.take(a).into_owned()),
                Op::Binary(kind, a, b) => {
                    let (a, b) = (made.take(a), made.take(b));
                    kind.of_jets(a, b)
                }
            };
            made.jets.push(next);
        }
        match self.ops.len().checked_sub(1) {
            Some(last) => made.take(last).into_owned(),
            None => Jet::constant(f64::NAN),
        }
    }

    /// Room for [`Self::column`]: a column for every operation, the constants filled in.
    pub(crate) fn space(&self) -> Vec<Column> {
        let column = |op: &Op| match *op {
            Op::Plain(value) => [value; BLOCK],
            _ => [0.0; BLOCK],
        };
        self.ops.iter().map(column).collect()
    }

    /// Its value for every trial of a block, the same bits as [`Self::value`]; NaN when an input is missing.
    #[inline(always)]
    pub(crate) fn column(&self, inputs: &[Column], space: &mut [Column], out: &mut Column) {
        for (k, op) in self.ops.iter().enumerate() {
            let Some((earlier, [place, ..])) = space.split_at_mut_checked(k) else { return };
            let operand = |k: usize| match self.ops.get(k) {
                Some(Op::Input(index)) => inputs.get(*index).unwrap_or(&MISSING),
                _ => earlier.get(k).unwrap_or(&MISSING),
            };
            match *op {
                Op::Plain(_) | Op::Input(_) => {}
                Op::Unary(kind, a) => kind.of_column(operand(a), place),
                Op::Binary(kind, a, b) => kind.of_columns(operand(a), operand(b), place),
            }
        }
        *out = match self.ops.last() {
            Some(Op::Input(index)) => *inputs.get(*index).unwrap_or(&MISSING),
            _ => *space.last().unwrap_or(&MISSING),
        };
    }
}

/// What [`Model::jet`] has made.
struct Made<'m> {
    ops: &'m [Op],
    inputs: &'m [Jet],
    /// by how many operations each is still to be used
    uses: Vec<usize>,
    jets: Vec<Jet>,
}

impl<'m> Made<'m> {
    fn new(ops: &'m [Op], inputs: &'m [Jet]) -> Self {
        let mut uses = vec![0; ops.len()];
        for operand in ops.iter().flat_map(|op| op.operands()).flatten() {
            if let Some(uses) = uses.get_mut(operand) {
                *uses += 1;
            }
        }
        Made { ops, inputs, uses, jets: Vec::with_capacity(ops.len()) }
    }

    /// An operand: an input is lent; what was made is given away at its last use, so that the result can be written over it, and a copy before.
    fn take(&mut self, k: usize) -> Cow<'m, Jet> {
        let missing = || Jet::constant(f64::NAN);
        if let Some(Op::Input(index)) = self.ops.get(k) {
            return self.inputs.get(*index).map_or_else(|| Cow::Owned(missing()), Cow::Borrowed);
        }
        let (Some(jet), Some(uses)) = (self.jets.get_mut(k), self.uses.get_mut(k)) else {
            return Cow::Owned(missing());
        };
        *uses = uses.saturating_sub(1_usize);
        Cow::Owned(if *uses > 0 { jet.clone() } else { core::mem::replace(jet, missing()) })
    }
}

const MISSING: Column = [f64::NAN; BLOCK];

impl Op {
    fn operands(self) -> [Option<usize>; 2] {
        match self {
            Op::Plain(_) | Op::Input(_) => [None, None],
            Op::Unary(_, a) => [Some(a), None],
            Op::Binary(_, a, b) => [Some(a), Some(b)],
        }
    }

    fn input(self) -> Option<usize> {
        match self {
            Op::Input(index) => Some(index),
            _ => None,
        }
    }

    fn moved(self, place: impl Fn(usize) -> usize) -> Op {
        match self {
            Op::Plain(_) | Op::Input(_) => self,
            Op::Unary(kind, a) => Op::Unary(kind, place(a)),
            Op::Binary(kind, a, b) => Op::Binary(kind, place(a), place(b)),
        }
    }
}
