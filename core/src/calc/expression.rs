//! A formula as an expression: to print, to print its derivatives, and to keep as a [`Model`](super::model::Model).

use super::model::{Binary, Model, Op, Unary};
use super::number::{Number, with_plain};
use core::cell::RefCell;
use core::ops::{Add, Div, Mul, Neg, Sub};
use std::string::String;

#[derive(Debug, Clone, Copy)]
enum Node {
    Symbol(&'static str),
    Op(Op),
}

/// Holds the nodes of the expressions of one formula, or of one calculation.
#[derive(Debug, Default)]
pub(crate) struct Sheet(RefCell<Vec<(Node, f64)>>);

/// One expression of a formula, to be put together with `+ - * /` and the functions of [`Number`]. See [`Model::of`].
#[derive(Debug, Clone, Copy)]
pub struct Expression<'s> {
    sheet: &'s Sheet,
    index: usize,
}

impl Sheet {
    /// The operations of a model, to be printed.
    pub(super) fn of(ops: &[Op]) -> Self {
        Sheet(RefCell::new(ops.iter().map(|op| (Node::Op(*op), f64::NAN)).collect()))
    }

    /// The last expression as text.
    pub(super) fn text(&self) -> String {
        let last = self.0.borrow().len().saturating_sub(1);
        self.at(last).text()
    }

    /// Is nothing on it whose derivative depends on the values?
    pub(super) fn is_smooth(&self) -> bool {
        self.0.borrow().iter().all(|(node, _)| match node {
            Node::Op(Op::Unary(unary, _)) => matches!(unary, Unary::Neg | Unary::Sqrt),
            Node::Op(Op::Binary(binary, ..)) => !matches!(binary, Binary::Max | Binary::Min),
            Node::Op(_) | Node::Symbol(_) => true,
        })
    }

    fn put(&self, node: Node, value: f64) -> Expression<'_> {
        let mut nodes = self.0.borrow_mut();
        nodes.push((node, value));
        Expression { sheet: self, index: nodes.len() - 1 }
    }

    pub(crate) fn at(&self, index: usize) -> Expression<'_> {
        Expression { sheet: self, index }
    }

    /// An argument of a formula.
    pub(crate) fn symbol(&self, name: &'static str, value: f64) -> Expression<'_> {
        self.put(Node::Symbol(name), value)
    }

    pub(crate) fn plain(&self, value: f64) -> Expression<'_> {
        self.put(Node::Op(Op::Plain(value)), value)
    }

    /// An input of a model, at its estimate.
    pub(crate) fn input(&self, index: usize, value: f64) -> Expression<'_> {
        self.put(Node::Op(Op::Input(index)), value)
    }

    fn unary(&self, unary: Unary, a: Expression<'_>) -> Expression<'_> {
        self.put(Node::Op(Op::Unary(unary, a.index)), unary.of(a.value()))
    }

    fn binary(&self, binary: Binary, a: Expression<'_>, b: Expression<'_>) -> Expression<'_> {
        self.put(Node::Op(Op::Binary(binary, a.index, b.index)), binary.of(a.value(), b.value()))
    }
}

/// How tightly an expression binds, for the placing of parentheses.
#[derive(Clone, Copy, PartialEq, PartialOrd)]
enum Binding {
    Sum,
    Product,
    Sign,
    Atom,
}

impl<'s> Expression<'s> {
    fn node(self) -> (Node, f64) {
        self.sheet.0.borrow().get(self.index).copied().unwrap_or((Node::Op(Op::Plain(f64::NAN)), f64::NAN))
    }

    /// A plain number on the same sheet.
    pub(crate) fn constant(self, plain: f64) -> Self {
        self.sheet.plain(plain)
    }

    /// Its place on the sheet.
    pub(crate) fn index(self) -> usize {
        self.index
    }

    /// The operations that lead to it, as a model of the inputs on the sheet.
    pub(crate) fn model(self) -> Model {
        let nodes = self.sheet.0.borrow();
        let op = |k: usize| match nodes.get(k) {
            Some((Node::Op(op), _)) => *op,
            Some((Node::Symbol(_), value)) => Op::Plain(*value),
            None => Op::Plain(f64::NAN),
        };
        Model::reaching(self.index, op)
    }

    pub(crate) fn value(self) -> f64 {
        self.node().1
    }

    /// The number this is written as, if it is a plain number.
    pub(crate) fn plain(self) -> Option<f64> {
        match self.node().0 {
            Node::Op(Op::Plain(value)) => Some(value),
            _ => None,
        }
    }

    /// The derivative to one argument, with the terms that vanish left out.
    ///
    /// Where a function has a corner (`abs`, `max`, `min`) the branch is that of the values.
    pub(crate) fn derivative(self, to: &str) -> Expression<'s> {
        let sheet = self.sheet;
        let slope = |index: usize| sheet.at(index).derivative(to);
        let op = match self.node().0 {
            Node::Symbol(name) => return sheet.plain(if name == to { 1.0 } else { 0.0 }),
            Node::Op(op) => op,
        };
        match op {
            Op::Plain(_) | Op::Input(_) => sheet.plain(0.0),
            Op::Binary(Binary::Add, a, b) => slope(a).plus(slope(b)),
            Op::Binary(Binary::Sub, a, b) => slope(a).minus(slope(b)),
            Op::Binary(Binary::Mul, a, b) => slope(a).times(sheet.at(b)).plus(sheet.at(a).times(slope(b))),
            Op::Binary(Binary::Div, a, b) => {
                let fall = self.times(slope(b));
                slope(a).minus(fall).over(sheet.at(b))
            }
            Op::Binary(Binary::Max, a, b) => {
                slope(if sheet.at(b).value() > sheet.at(a).value() { b } else { a })
            }
            Op::Binary(Binary::Min, a, b) => {
                slope(if sheet.at(b).value() < sheet.at(a).value() { b } else { a })
            }
            Op::Unary(Unary::Neg, a) => slope(a).negative(),
            Op::Unary(Unary::Sqrt, a) => slope(a).over(sheet.plain(2.0) * self),
            Op::Unary(Unary::Abs, a) if sheet.at(a).value() < 0.0 => slope(a).negative(),
            Op::Unary(Unary::Abs, a) => slope(a),
            Op::Unary(unary, a) => sheet.plain(unary.slope(sheet.at(a).value())).times(slope(a)),
        }
    }

    fn is(self, plain: f64) -> bool {
        self.plain() == Some(plain)
    }

    fn plus(self, b: Self) -> Self {
        match (self.is(0.0), b.is(0.0)) {
            (true, _) => b,
            (_, true) => self,
            _ => self + b,
        }
    }

    fn minus(self, b: Self) -> Self {
        match (self.is(0.0), b.is(0.0)) {
            (_, true) => self,
            (true, _) => b.negative(),
            _ => self - b,
        }
    }

    fn times(self, b: Self) -> Self {
        match (self.plain(), b.plain()) {
            (Some(0.0), _) | (_, Some(1.0)) => self,
            (_, Some(0.0)) | (Some(1.0), _) => b,
            _ => self * b,
        }
    }

    fn over(self, b: Self) -> Self {
        if self.is(0.0) || b.is(1.0) { self } else { self / b }
    }

    fn negative(self) -> Self {
        match self.plain() {
            Some(value) => self.sheet.plain(if value == 0.0 { 0.0 } else { -value }),
            None => -self,
        }
    }

    /// The expression as text: `+ - * /`, parentheses where they are needed, functions by name.
    pub(crate) fn text(self) -> String {
        let mut out = String::new();
        self.write(&mut out, Binding::Sum);
        out
    }

    fn write(self, out: &mut String, needed: Binding) {
        let sheet = self.sheet;
        let (node, _) = self.node();
        let own = node.binding();
        let wrap = own < needed;
        if wrap {
            out.push('(');
        }
        let (signed, plus, product) = (Binding::Sign, Binding::Sum, Binding::Product);
        match node {
            Node::Symbol(name) => out.push_str(name),
            Node::Op(Op::Plain(value)) => out.push_str(&value.to_string()),
            Node::Op(Op::Input(index)) => out.push_str(&format!("x{index}")),
            Node::Op(Op::Unary(Unary::Neg, a)) => {
                out.push('-');
                sheet.at(a).write(out, Binding::Atom);
            }
            Node::Op(Op::Unary(unary, a)) => {
                out.push_str(unary.name());
                out.push('(');
                sheet.at(a).write(out, plus);
                out.push(')');
                if let Some(exponent) = unary.exponent() {
                    out.push_str(&format!("^{exponent}"));
                }
            }
            Node::Op(Op::Binary(binary, a, b)) => {
                let (a, b) = (sheet.at(a), sheet.at(b));
                match binary {
                    // the right side of - and / binds one step tighter: a - (b - c)
                    Binary::Add => pair(out, a, " + ", b, plus, product),
                    Binary::Sub => pair(out, a, " - ", b, plus, product),
                    Binary::Mul => pair(out, a, " * ", b, product, signed),
                    Binary::Div => pair(out, a, " / ", b, product, signed),
                    Binary::Max | Binary::Min => {
                        out.push_str(binary.name());
                        out.push('(');
                        pair(out, a, ", ", b, plus, plus);
                        out.push(')');
                    }
                }
            }
        }
        if wrap {
            out.push(')');
        }
    }
}

fn pair(out: &mut String, a: Expression<'_>, sign: &str, b: Expression<'_>, left: Binding, right: Binding) {
    a.write(out, left);
    out.push_str(sign);
    b.write(out, right);
}

impl Node {
    fn binding(self) -> Binding {
        match self {
            Node::Op(Op::Plain(value)) if value < 0.0 => Binding::Sign,
            Node::Op(Op::Unary(Unary::Neg, _)) => Binding::Sign,
            Node::Op(Op::Binary(Binary::Add | Binary::Sub, ..)) => Binding::Sum,
            Node::Op(Op::Binary(Binary::Mul | Binary::Div, ..)) => Binding::Product,
            Node::Op(_) | Node::Symbol(_) => Binding::Atom,
        }
    }
}

macro_rules! operator {
    ($trait:ident, $method:ident) => {
        impl $trait for Expression<'_> {
            type Output = Self;
            fn $method(self, b: Self) -> Self {
                self.sheet.binary(Binary::$trait, self, b)
            }
        }
    };
}
operator!(Add, add);
operator!(Sub, sub);
operator!(Mul, mul);
operator!(Div, div);

impl Neg for Expression<'_> {
    type Output = Self;
    fn neg(self) -> Self {
        self.sheet.unary(Unary::Neg, self)
    }
}

fn lift<'s>(like: Expression<'s>, plain: f64) -> Expression<'s> {
    like.constant(plain)
}
with_plain!(['s] Expression<'s>, plain => lift);

impl Number for Expression<'_> {
    fn sqrt(self) -> Self {
        self.sheet.unary(Unary::Sqrt, self)
    }
    fn abs(self) -> Self {
        self.sheet.unary(Unary::Abs, self)
    }
    fn max(self, other: Self) -> Self {
        self.sheet.binary(Binary::Max, self, other)
    }
    fn min(self, other: Self) -> Self {
        self.sheet.binary(Binary::Min, self, other)
    }
    fn erfc(self) -> Self {
        self.sheet.unary(Unary::Erfc, self)
    }
}
