//! A formula as an expression: to print, and to print its derivatives.

use super::number::{Number, erfc_slope, with_plain};
use core::cell::RefCell;
use core::ops::{Add, Div, Mul, Neg, Sub};
use std::string::String;

#[derive(Debug, Clone, Copy)]
enum Node {
    Plain(f64),
    Symbol(&'static str),
    Add(usize, usize),
    Sub(usize, usize),
    Mul(usize, usize),
    Div(usize, usize),
    Neg(usize),
    Call(&'static str, usize, Option<usize>),
}

/// Holds the nodes of the expressions of one formula.
#[derive(Debug, Default)]
pub(crate) struct Sheet(RefCell<Vec<(Node, f64)>>);

/// One expression on a [`Sheet`], with its value.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Expression<'s> {
    sheet: &'s Sheet,
    index: usize,
}

impl Sheet {
    fn put(&self, node: Node, value: f64) -> Expression<'_> {
        let mut nodes = self.0.borrow_mut();
        nodes.push((node, value));
        Expression { sheet: self, index: nodes.len() - 1 }
    }

    fn at(&self, index: usize) -> Expression<'_> {
        Expression { sheet: self, index }
    }

    /// An argument of a formula.
    pub(crate) fn symbol(&self, name: &'static str, value: f64) -> Expression<'_> {
        self.put(Node::Symbol(name), value)
    }

    fn plain(&self, value: f64) -> Expression<'_> {
        self.put(Node::Plain(value), value)
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
        self.sheet.0.borrow().get(self.index).copied().unwrap_or((Node::Plain(f64::NAN), f64::NAN))
    }

    pub(crate) fn value(self) -> f64 {
        self.node().1
    }

    /// The number this is written as, if it is a plain number.
    pub(crate) fn plain(self) -> Option<f64> {
        match self.node().0 {
            Node::Plain(value) => Some(value),
            _ => None,
        }
    }

    /// The derivative to one argument, with the terms that vanish left out.
    ///
    /// Where a function has a corner (`abs`, `max`, `min`) the branch is that of the values.
    pub(crate) fn derivative(self, to: &str) -> Expression<'s> {
        let sheet = self.sheet;
        let slope = |index: usize| sheet.at(index).derivative(to);
        match self.node().0 {
            Node::Plain(_) => sheet.plain(0.0),
            Node::Symbol(name) => sheet.plain(if name == to { 1.0 } else { 0.0 }),
            Node::Add(a, b) => slope(a).plus(slope(b)),
            Node::Sub(a, b) => slope(a).minus(slope(b)),
            Node::Mul(a, b) => slope(a).times(sheet.at(b)).plus(sheet.at(a).times(slope(b))),
            Node::Div(a, b) => {
                let fall = self.times(slope(b));
                slope(a).minus(fall).over(sheet.at(b))
            }
            Node::Neg(a) => slope(a).negative(),
            Node::Call("sqrt", a, _) => slope(a).over(sheet.plain(2.0) * self),
            Node::Call("abs", a, _) if sheet.at(a).value() < 0.0 => slope(a).negative(),
            Node::Call("erfc", a, _) => sheet.plain(erfc_slope(sheet.at(a).value())).times(slope(a)),
            Node::Call(_, a, Some(b)) if self.picks_second(a, b) => slope(b),
            Node::Call(_, a, _) => slope(a),
        }
    }

    fn picks_second(self, a: usize, b: usize) -> bool {
        let (first, second) = (self.sheet.at(a).value(), self.sheet.at(b).value());
        match self.node().0 {
            Node::Call("max", ..) => second > first,
            _ => second < first,
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
        match node {
            Node::Plain(value) => out.push_str(&value.to_string()),
            Node::Symbol(name) => out.push_str(name),
            // the right side of - and / binds one step tighter: a - (b - c)
            Node::Add(a, b) => pair(out, sheet.at(a), " + ", sheet.at(b), Binding::Sum, Binding::Product),
            Node::Sub(a, b) => pair(out, sheet.at(a), " - ", sheet.at(b), Binding::Sum, Binding::Product),
            Node::Mul(a, b) => pair(out, sheet.at(a), " * ", sheet.at(b), Binding::Product, Binding::Sign),
            Node::Div(a, b) => pair(out, sheet.at(a), " / ", sheet.at(b), Binding::Product, Binding::Sign),
            Node::Neg(a) => {
                out.push('-');
                sheet.at(a).write(out, Binding::Atom);
            }
            Node::Call(name, a, b) => {
                out.push_str(name);
                out.push('(');
                sheet.at(a).write(out, Binding::Sum);
                if let Some(b) = b {
                    out.push_str(", ");
                    sheet.at(b).write(out, Binding::Sum);
                }
                out.push(')');
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
            Node::Plain(value) if value < 0.0 => Binding::Sign,
            Node::Plain(_) | Node::Symbol(_) | Node::Call(..) => Binding::Atom,
            Node::Add(..) | Node::Sub(..) => Binding::Sum,
            Node::Mul(..) | Node::Div(..) => Binding::Product,
            Node::Neg(_) => Binding::Sign,
        }
    }
}

macro_rules! operator {
    ($trait:ident, $method:ident, $sign:tt, $node:ident) => {
        impl $trait for Expression<'_> {
            type Output = Self;
            fn $method(self, b: Self) -> Self {
                self.sheet.put(Node::$node(self.index, b.index), self.value() $sign b.value())
            }
        }
    };
}
operator!(Add, add, +, Add);
operator!(Sub, sub, -, Sub);
operator!(Mul, mul, *, Mul);
operator!(Div, div, /, Div);

impl Neg for Expression<'_> {
    type Output = Self;
    fn neg(self) -> Self {
        self.sheet.put(Node::Neg(self.index), -self.value())
    }
}

fn lift<'s>(like: Expression<'s>, plain: f64) -> Expression<'s> {
    like.sheet.plain(plain)
}
with_plain!(['s] Expression<'s>, plain => lift);

impl Number for Expression<'_> {
    fn sqrt(self) -> Self {
        self.sheet.put(Node::Call("sqrt", self.index, None), self.value().sqrt())
    }
    fn abs(self) -> Self {
        self.sheet.put(Node::Call("abs", self.index, None), self.value().abs())
    }
    fn max(self, other: Self) -> Self {
        self.sheet
            .put(Node::Call("max", self.index, Some(other.index)), Number::max(self.value(), other.value()))
    }
    fn min(self, other: Self) -> Self {
        self.sheet
            .put(Node::Call("min", self.index, Some(other.index)), Number::min(self.value(), other.value()))
    }
    fn erfc(self) -> Self {
        self.sheet.put(Node::Call("erfc", self.index, None), libm::erfc(self.value()))
    }
}
