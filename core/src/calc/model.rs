//! A model as a list of operations: the same list gives the value, the derivatives and the trials of a Monte Carlo run.

use super::number::Number;
use crate::measurement::jet::{self, Jet};
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
        self.of_jet(&Jet::variable(a, 0, 1)).gradient(1).first().copied().unwrap_or(f64::NAN)
    }

    fn of_jet(self, a: &Jet) -> Jet {
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

    fn of_jets(self, a: &Jet, b: &Jet) -> Jet {
        match self {
            Binary::Add => a + b,
            Binary::Sub => a - b,
            Binary::Mul => a * b,
            Binary::Div => a / b,
            Binary::Max => a.max(b),
            Binary::Min => a.min(b),
        }
    }
}

/// A function of numbered inputs, from a calculation or [from text](Model::from_text).
///
/// As a model of [`Inputs`](crate::measurement::uncertainty::Inputs): `inputs.evaluate(|x| model.jet(x))`.
#[derive(Debug, Clone, PartialEq)]
pub struct Model {
    /// in an order in which operands come first; the last one is the result
    ops: Vec<Op>,
}

impl Model {
    /// A model of operations whose operands come first and whose last one is the result.
    pub(super) fn of(ops: Vec<Op>) -> Model {
        Model { ops }
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

    pub(crate) fn ops(&self) -> &[Op] {
        &self.ops
    }

    /// Its value; NaN when an input is missing.
    #[must_use]
    pub fn value(&self, inputs: &[f64]) -> f64 {
        let input = |k: usize| inputs.get(k).copied().unwrap_or(f64::NAN);
        self.run(|plain| plain, input, |unary, a| unary.of(*a), |binary, a, b| binary.of(*a, *b))
            .unwrap_or(f64::NAN)
    }

    /// Its value with derivatives; NaN when an input is missing.
    #[must_use]
    pub fn jet(&self, inputs: &[Jet]) -> Jet {
        let missing = || Jet::constant(f64::NAN);
        let input = |k: usize| inputs.get(k).cloned().unwrap_or_else(missing);
        self.run(Jet::constant, input, Unary::of_jet, Binary::of_jets).unwrap_or_else(missing)
    }

    /// Every operation in order, over any kind of number; nothing for an empty list.
    fn run<T>(
        &self,
        plain: impl Fn(f64) -> T,
        input: impl Fn(usize) -> T,
        unary: impl Fn(Unary, &T) -> T,
        binary: impl Fn(Binary, &T, &T) -> T,
    ) -> Option<T> {
        let mut out: Vec<T> = Vec::with_capacity(self.ops.len());
        for op in &self.ops {
            let next = match *op {
                Op::Plain(value) => plain(value),
                Op::Input(index) => input(index),
                Op::Unary(kind, a) => unary(kind, out.get(a)?),
                Op::Binary(kind, a, b) => binary(kind, out.get(a)?, out.get(b)?),
            };
            out.push(next);
        }
        out.pop()
    }
}

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
