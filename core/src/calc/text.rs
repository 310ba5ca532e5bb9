//! The door for formulas as text: ordinary algebra becomes a [`Model`].
//!
//! Written by hand because no expression library that was tried fits: they keep the tree to themselves, do not say where a text is wrong,
//! read `-2^2` as 4 or `2^3^2` as 64, or follow parentheses until the stack ends.

use super::model::{Binary, Model, Op, Unary};
use crate::error::{Error, ErrorKind};
use crate::job::nearest;
use core::ops::Range;

/// Longest formula, in bytes.
const LONGEST: usize = 4000;
/// Deepest nesting of parentheses, functions, signs and exponents.
const DEEPEST: u32 = 100;

/// What a function of a formula does.
#[derive(Clone, Copy)]
enum Function {
    OfOne(Unary),
    OfSome(Binary),
}

/// The functions, as they are written.
const FUNCTIONS: [(&str, Function); 13] = [
    ("sqrt", Function::OfOne(Unary::Sqrt)),
    ("abs", Function::OfOne(Unary::Abs)),
    ("min", Function::OfSome(Binary::Min)),
    ("max", Function::OfSome(Binary::Max)),
    ("exp", Function::OfOne(Unary::Exp)),
    ("ln", Function::OfOne(Unary::Ln)),
    ("sin", Function::OfOne(Unary::Sin)),
    ("cos", Function::OfOne(Unary::Cos)),
    ("tan", Function::OfOne(Unary::Tan)),
    ("asin", Function::OfOne(Unary::Asin)),
    ("acos", Function::OfOne(Unary::Acos)),
    ("atan", Function::OfOne(Unary::Atan)),
    ("erfc", Function::OfOne(Unary::Erfc)),
];

/// The one constant with a name.
const PI: &str = "pi";

/// Signs of other alphabets and languages, and what is written here for them.
const LOOKALIKES: [(&str, &str); 12] = [
    ("**", "^"),
    ("\u{2212}", "-"),
    ("\u{2013}", "-"),
    ("\u{d7}", "*"),
    ("\u{b7}", "*"),
    ("\u{22c5}", "*"),
    ("\u{f7}", "/"),
    (":", "/"),
    ("\u{b2}", "^2"),
    ("\u{b3}", "^3"),
    ("[", "("),
    ("]", ")"),
];

/// How tightly a sign before an operand binds: tighter than `*`, less than `^`.
const SIGN: u8 = 3;

#[derive(Clone, Copy, PartialEq)]
enum Token<'t> {
    Number(f64),
    Name(&'t str),
    Sign(char),
    End,
}

struct Reader<'t> {
    text: &'t str,
    names: &'t [&'t str],
    token: Token<'t>,
    /// where the token stands, in bytes
    span: Range<usize>,
    ops: Vec<Op>,
    depth: u32,
}

impl Model {
    /// Reads a formula in ordinary algebra; input `k` is `names[k]`.
    ///
    /// | | |
    /// |---|---|
    /// | numbers | `2`, `0.5`, `11.5e-6`: digits on both sides of a point |
    /// | names | a letter or `_`, then letters, digits and `_`; capitals are others than small letters; `pi` is the constant |
    /// | `^` | binds tightest, from the right: `2^3^2` is 512; the exponent holds no input: `x^2`, `x^-1`, `x^(1/3)`, `x^0.5` |
    /// | `-` and `+` before an operand | bind less than `^`: `-2^2` is -4 |
    /// | `*` `/` | from the left |
    /// | `+` `-` | from the left |
    /// | `(` `)` | nothing is multiplied without its `*` |
    /// | of one argument | `sqrt` `abs` `exp` `ln` `sin` `cos` `tan` `asin` `acos` `atan` (radians) `erfc` |
    /// | of two or more | `min` `max`, arguments separated by `,` |
    ///
    /// The operations are done in the order in which they are written. A whole exponent of up to ten digits is repeated multiplication and takes any base,
    /// any other exponent a base above zero.
    ///
    /// ```
    /// use gaugepoint::calc::Model;
    ///
    /// let size = Model::from_text("(s + d) / (1 + alpha * (t - 20))", &["s", "d", "alpha", "t"])?;
    /// assert_eq!(size.value(&[86.0, 0.25, 0.0, 25.0]), 86.25);
    ///
    /// let refused = Model::from_text("s + D", &["s", "d"]).unwrap_err();
    /// assert_eq!(refused.did_you_mean(), Some("d"));
    /// assert_eq!(refused.reason(), "no such name, at character 5");
    /// # Ok::<(), gaugepoint::Error>(())
    /// ```
    ///
    /// # Errors
    /// With the refused piece and the place of its first character, counted from 1: [`ErrorKind::NotAnExpression`] for what is no formula, and for names that
    /// cannot stand in one; [`ErrorKind::UnknownName`] for another name or function; [`ErrorKind::Repeated`] for a name that stands twice among
    /// `names`; [`ErrorKind::NotFinite`] for a number beyond doubles; [`ErrorKind::TooLarge`] for more than 4000 bytes; [`ErrorKind::TooDeep`] for
    /// more than 100 levels.
    pub fn from_text(text: &str, names: &[&str]) -> Result<Model, Error> {
        check_symbols(names)?;
        if text.len() > LONGEST {
            let reason = format!("a formula has at most {LONGEST} bytes");
            return Err(Error::new(ErrorKind::TooLarge, text, reason));
        }
        let (token, span) = (Token::End, 0..0);
        let mut reader = Reader { text, names, token, span, ops: Vec::new(), depth: 0 };
        reader.advance()?;
        reader.expression(0)?;
        match reader.token {
            Token::End => Ok(Model::of_ops(reader.ops)),
            _ => Err(reader.out_of_place("")),
        }
    }
}

fn check_symbols(names: &[&str]) -> Result<(), Error> {
    for (k, name) in names.iter().enumerate() {
        check_symbol(name)?;
        if names.iter().take(k).any(|earlier| earlier == name) {
            return Err(Error::new(ErrorKind::Repeated, *name, "this name stands twice"));
        }
    }
    Ok(())
}

/// Refuses what cannot stand for an input in a formula.
pub(crate) fn check_symbol(name: &str) -> Result<(), Error> {
    let refuse = |reason: &str| Err(Error::new(ErrorKind::NotAnExpression, name, reason));
    let mut rest = name.chars();
    if !rest.next().is_some_and(begins_name) || !rest.all(goes_on_in_name) {
        return refuse("a symbol is a letter or _, then letters, digits and _");
    }
    if name == PI || function(name).is_some() {
        return refuse("this name has its meaning in formulas");
    }
    Ok(())
}

fn function(name: &str) -> Option<Function> {
    FUNCTIONS.iter().find(|(known, _)| *known == name).map(|(_, function)| *function)
}

fn begins_name(c: char) -> bool {
    c.is_alphabetic() || c == '_'
}

fn goes_on_in_name(c: char) -> bool {
    begins_name(c) || c.is_ascii_digit()
}

impl<'t> Reader<'t> {
    /// Goes on to the next token.
    fn advance(&mut self) -> Result<(), Error> {
        let behind = self.text.get(self.span.end..).unwrap_or_default();
        let rest = behind.trim_start();
        let start = self.text.len() - rest.len();
        let (token, length) = self.scanned(rest, start)?;
        self.token = token;
        self.span = start..start + length;
        Ok(())
    }

    /// The token at the beginning of `rest`, and its length.
    fn scanned(&self, rest: &'t str, start: usize) -> Result<(Token<'t>, usize), Error> {
        if let Some((alien, meant)) = LOOKALIKES.iter().find(|(alien, _)| rest.starts_with(alien)) {
            let error = self.refuse(ErrorKind::NotAnExpression, start..start + alien.len(), "another sign");
            return Err(error.suggest(Some((*meant).to_owned())));
        }
        match rest.chars().next() {
            None => Ok((Token::End, 0)),
            Some(c) if c.is_ascii_digit() => self.number(rest, start),
            Some(c) if begins_name(c) => {
                let length = rest.find(|c| !goes_on_in_name(c)).unwrap_or(rest.len());
                Ok((Token::Name(rest.get(..length).unwrap_or_default()), length))
            }
            Some(c) if "+-*/^(),".contains(c) => Ok((Token::Sign(c), 1)),
            Some(c) => {
                let span = start..start + c.len_utf8();
                let reason = match c {
                    '.' => "a point stands between digits",
                    _ => "this has no meaning in a formula",
                };
                Err(self.refuse(ErrorKind::NotAnExpression, span, reason))
            }
        }
    }

    fn number(&self, rest: &'t str, start: usize) -> Result<(Token<'t>, usize), Error> {
        let length = length_of_number(rest.as_bytes());
        match rest.get(..length).unwrap_or_default().parse() {
            Ok(value) if f64::is_finite(value) => Ok((Token::Number(value), length)),
            _ => Err(self.refuse(ErrorKind::NotFinite, start..start + length, "a finite number is needed")),
        }
    }

    /// Reads what binds at least as tightly as `least`; gives the place of its result, which is the last operation.
    fn expression(&mut self, least: u8) -> Result<usize, Error> {
        self.depth += 1;
        if self.depth > DEEPEST {
            return Err(self.here(ErrorKind::TooDeep, &format!("more than {DEEPEST} levels")));
        }
        let mut left = self.operand()?;
        while let Some((binary, binding)) = self.infix().filter(|(_, binding)| *binding >= least) {
            self.advance()?;
            let right = self.expression(binding + 1)?;
            left = self.put(Op::Binary(binary, left, right));
        }
        self.depth -= 1;
        Ok(left)
    }

    /// The sign between two operands, and how tightly it binds.
    fn infix(&self) -> Option<(Binary, u8)> {
        match self.token {
            Token::Sign('+') => Some((Binary::Add, 1)),
            Token::Sign('-') => Some((Binary::Sub, 1)),
            Token::Sign('*') => Some((Binary::Mul, 2)),
            Token::Sign('/') => Some((Binary::Div, 2)),
            _ => None,
        }
    }

    fn operand(&mut self) -> Result<usize, Error> {
        match self.token {
            Token::Sign('-') => {
                self.advance()?;
                let of = self.expression(SIGN)?;
                Ok(self.put(Op::Unary(Unary::Neg, of)))
            }
            Token::Sign('+') => {
                self.advance()?;
                self.expression(SIGN)
            }
            _ => {
                let base = self.atom()?;
                self.raised(base)
            }
        }
    }

    /// A power, when a `^` follows.
    fn raised(&mut self, base: usize) -> Result<usize, Error> {
        if self.token != Token::Sign('^') {
            return Ok(base);
        }
        self.advance()?;
        let (start, first) = (self.span.start, self.ops.len());
        let last = self.expression(SIGN)?;
        let exponent = self.constant(first, last);
        self.ops.truncate(first);
        match exponent.filter(|value| value.is_finite()) {
            Some(exponent) => Ok(self.put(Op::Unary(Unary::power(exponent), base))),
            None => {
                let behind = self.text.get(start..self.span.start).unwrap_or_default();
                let span = start..start + behind.trim_end().len();
                let reason = "an exponent is a finite number without inputs";
                Err(self.refuse(ErrorKind::NotAnExpression, span, reason))
            }
        }
    }

    /// The value of the operations from `first` on, of which `last` is the result; none when an input is among them.
    fn constant(&self, first: usize, last: usize) -> Option<f64> {
        let of_inputs = self.ops.iter().skip(first).any(|op| matches!(op, Op::Input(_)));
        let op = |k: usize| self.ops.get(k).copied().unwrap_or(Op::Plain(f64::NAN));
        (!of_inputs).then(|| Model::reaching(last, op).value(&[]))
    }

    fn atom(&mut self) -> Result<usize, Error> {
        match self.token {
            Token::Number(value) => {
                self.advance()?;
                Ok(self.put(Op::Plain(value)))
            }
            Token::Name(name) => self.named(name),
            Token::Sign('(') => {
                self.advance()?;
                let inner = self.expression(0)?;
                self.close(inner)
            }
            _ => Err(self.here(ErrorKind::NotAnExpression, "a number, a name or ( is needed")),
        }
    }

    fn named(&mut self, name: &'t str) -> Result<usize, Error> {
        let span = self.span.clone();
        self.advance()?;
        let input = self.names.iter().position(|known| *known == name);
        if self.token == Token::Sign('(') && input.is_none() {
            return self.applied(name, span);
        }
        match (input, function(name)) {
            (Some(input), _) => Ok(self.put(Op::Input(input))),
            _ if name == PI => Ok(self.put(Op::Plain(core::f64::consts::PI))),
            (None, Some(_)) => {
                Err(self.refuse(ErrorKind::NotAnExpression, span, "the argument of the function is missing"))
            }
            (None, None) => {
                let error = self.refuse(ErrorKind::UnknownName, span, "no such name");
                Err(error.suggest(nearest(name, &[self.names, &[PI]].concat())))
            }
        }
    }

    /// A function of what stands in the parentheses that follow.
    fn applied(&mut self, name: &str, span: Range<usize>) -> Result<usize, Error> {
        let Some(function) = function(name) else {
            let known = FUNCTIONS.map(|(known, _)| known);
            let reason = format!("no such function; accepted: {}", known.join(", "));
            let error = self.refuse(ErrorKind::UnknownName, span, &reason);
            return Err(error.suggest(nearest(name, &known)));
        };
        self.advance()?;
        let first = self.expression(0)?;
        let result = match function {
            Function::OfOne(unary) => self.put(Op::Unary(unary, first)),
            Function::OfSome(binary) => self.folded(binary, first, span)?,
        };
        self.close(result)
    }

    /// The further arguments, joined with the first from the left.
    fn folded(&mut self, binary: Binary, first: usize, span: Range<usize>) -> Result<usize, Error> {
        if self.token == Token::Sign(')') {
            return Err(self.refuse(ErrorKind::NotAnExpression, span, "at least two arguments are needed"));
        }
        let mut joined = first;
        while self.token == Token::Sign(',') {
            self.advance()?;
            let next = self.expression(0)?;
            joined = self.put(Op::Binary(binary, joined, next));
        }
        Ok(joined)
    }

    fn close(&mut self, inner: usize) -> Result<usize, Error> {
        match self.token {
            Token::Sign(')') => self.advance().map(|()| inner),
            _ => Err(self.out_of_place(" or ) is needed")),
        }
    }

    fn put(&mut self, op: Op) -> usize {
        self.ops.push(op);
        self.ops.len() - 1
    }

    /// A refusal of a token behind a whole operand.
    fn out_of_place(&self, or_else: &str) -> Error {
        let reason = match self.token {
            Token::Sign(',') => {
                "a comma stands between the arguments of min and max; a number has a point".to_owned()
            }
            Token::Sign(')') => "no ( stands before it".to_owned(),
            Token::End => ") is needed".to_owned(),
            _ => format!("an operator{}", if or_else.is_empty() { " is needed" } else { or_else }),
        };
        self.here(ErrorKind::NotAnExpression, &reason)
    }

    fn here(&self, kind: ErrorKind, reason: &str) -> Error {
        self.refuse(kind, self.span.clone(), reason)
    }

    fn refuse(&self, kind: ErrorKind, span: Range<usize>, reason: &str) -> Error {
        let before = self.text.get(..span.start).unwrap_or_default().chars().count();
        let refused = self.text.get(span).unwrap_or_default();
        let place = match refused {
            "" => "at the end".to_owned(),
            _ => format!("at character {}", before + 1),
        };
        Error::new(kind, refused, format!("{reason}, {place}"))
    }
}

/// Length of the number at the beginning: digits, a point with digits, an exponent with digits.
fn length_of_number(text: &[u8]) -> usize {
    let digits = |from: usize| text.iter().skip(from).take_while(|byte| byte.is_ascii_digit()).count();
    let at = |place: usize| text.get(place).copied().unwrap_or_default();
    let mut end = digits(0);
    if at(end) == b'.' && digits(end + 1) > 0 {
        end += 1 + digits(end + 1);
    }
    if at(end).eq_ignore_ascii_case(&b'e') {
        let first = end + 1 + usize::from(matches!(at(end + 1), b'+' | b'-'));
        if digits(first) > 0 {
            end = first + digits(first);
        }
    }
    end
}
