//! A checker of formulas: it knows `+ - * /`, parentheses and `sqrt`, `abs`, `max`, `min`, `erfc`, `t_factor`, `t_below`; for stacks `sum` and
//! `root_sum_square`, and the functions and powers of a formula of a document; and nothing else. `t_factor` and `t_below` are those of
//! `gaugepoint::special`, which `vectors/special.csv` holds.

use gaugepoint::special;
use std::collections::HashMap;

/// A formula as it was printed.
#[derive(Debug, Clone, PartialEq)]
pub enum Expression {
    /// A number.
    Number(f64),
    /// A symbol.
    Symbol(String),
    /// The sign.
    Negative(Box<Expression>),
    /// `+ - * /`.
    Binary(char, Box<Expression>, Box<Expression>),
    /// A listed function.
    Call(String, Vec<Expression>),
    /// A power with a plain exponent.
    Power(Box<Expression>, f64),
}

impl Expression {
    /// Reads a formula.
    ///
    /// # Errors
    /// What was not understood.
    pub fn parse(text: &str) -> Result<Self, String> {
        let mut reader = Reader { text, at: 0 };
        let out = reader.sum()?;
        match reader.peek() {
            None => Ok(out),
            Some(c) => Err(format!("{c:?} at {} of {text:?}", reader.at)),
        }
    }

    /// Evaluates it in double precision, from left to right.
    ///
    /// # Errors
    /// A symbol that has no value, or a function that is not listed.
    pub fn evaluate(&self, values: &HashMap<&str, f64>) -> Result<f64, String> {
        Ok(match self {
            Expression::Number(n) => *n,
            Expression::Symbol(name) => {
                *values.get(name.as_str()).ok_or_else(|| format!("no value for {name}"))?
            }
            Expression::Negative(a) => -a.evaluate(values)?,
            Expression::Binary(sign, a, b) => {
                let (a, b) = (a.evaluate(values)?, b.evaluate(values)?);
                match sign {
                    '+' => a + b,
                    '-' => a - b,
                    '*' => a * b,
                    _ => a / b,
                }
            }
            Expression::Power(a, exponent) => power(a.evaluate(values)?, *exponent),
            Expression::Call(name, arguments) => {
                let x: Vec<f64> = arguments.iter().map(|a| a.evaluate(values)).collect::<Result<_, _>>()?;
                match (name.as_str(), x.as_slice()) {
                    ("sqrt", [x]) => x.sqrt(),
                    ("abs", [x]) => x.abs(),
                    ("erfc", [x]) => libm::erfc(*x),
                    ("exp", [x]) => libm::exp(*x),
                    ("ln", [x]) => libm::log(*x),
                    ("sin", [x]) => libm::sin(*x),
                    ("cos", [x]) => libm::cos(*x),
                    ("tan", [x]) => libm::tan(*x),
                    ("asin", [x]) => libm::asin(*x),
                    ("acos", [x]) => libm::acos(*x),
                    ("atan", [x]) => libm::atan(*x),
                    ("sum", terms) => sum(terms),
                    ("root_sum_square", parts) => root_sum_square(parts),
                    ("max", [a, b]) => a.max(*b),
                    ("min", [a, b]) => a.min(*b),
                    ("t_factor", [k, dof]) => special::t_factor(*k, *dof),
                    ("t_below", [t, dof]) => special::t_cdf(*t, *dof),
                    _ => return Err(format!("{name} of {} is not a listed function", x.len())),
                }
            }
        })
    }

    /// Every formula that differs from this one by one operator: `+` for `-`, `*` for `/` and the other way round, a
    /// sign left out, or a number doubled.
    #[must_use]
    pub fn mutations(&self) -> Vec<Expression> {
        let inside = |build: &dyn Fn(Expression) -> Expression, of: &Expression| -> Vec<Expression> {
            of.mutations().into_iter().map(build).collect()
        };
        match self {
            Expression::Number(n) => vec![Expression::Number(if *n == 0.0 { 1.0 } else { n * 2.0 })],
            Expression::Symbol(_) => Vec::new(),
            Expression::Negative(a) => {
                let mut out = inside(&|a| Expression::Negative(Box::new(a)), a);
                out.push((**a).clone());
                out
            }
            Expression::Binary(sign, a, b) => {
                let other = match sign {
                    '+' => '-',
                    '-' => '+',
                    '*' => '/',
                    _ => '*',
                };
                let mut out = vec![Expression::Binary(other, a.clone(), b.clone())];
                out.extend(inside(&|a| Expression::Binary(*sign, Box::new(a), b.clone()), a));
                out.extend(inside(&|b| Expression::Binary(*sign, a.clone(), Box::new(b)), b));
                out
            }
            Expression::Power(a, exponent) => {
                let mut out = inside(&|a| Expression::Power(Box::new(a), *exponent), a);
                out.push(Expression::Power(a.clone(), exponent * 2.0));
                out
            }
            Expression::Call(name, arguments) => {
                let mut out = Vec::new();
                for (k, argument) in arguments.iter().enumerate() {
                    for changed in argument.mutations() {
                        let mut arguments = arguments.clone();
                        arguments[k] = changed;
                        out.push(Expression::Call(name.clone(), arguments));
                    }
                }
                out
            }
        }
    }
}

/// The sum, the rounding of every addition carried along: what is lost of the smaller of the two.
fn sum(terms: &[f64]) -> f64 {
    let add = |(sum, lost): (f64, f64), term: &f64| {
        let next = sum + term;
        let (large, small) = if sum.abs() < term.abs() { (*term, sum) } else { (sum, *term) };
        (next, lost + ((large - next) + small))
    };
    let (sum, lost) = terms.iter().fold((0.0, 0.0), add);
    sum + lost
}

/// The root of the sum of squares, over the largest.
fn root_sum_square(parts: &[f64]) -> f64 {
    let largest = parts.iter().fold(0.0_f64, |most, part| most.max(part.abs()));
    let squares: Vec<f64> = parts.iter().map(|part| (part / largest) * (part / largest)).collect();
    if largest > 0.0 { largest * sum(&squares).sqrt() } else { 0.0 }
}

/// A whole power by repeated squares, any other one by `libm`.
fn power(base: f64, exponent: f64) -> f64 {
    if exponent.fract() != 0.0 {
        return libm::pow(base, exponent);
    }
    let (mut square, mut left, mut out) = (base, exponent.abs(), 1.0);
    while left >= 1.0 {
        if left % 2.0 >= 1.0 {
            out *= square;
        }
        square *= square;
        left = (left / 2.0).floor();
    }
    if exponent < 0.0 { 1.0 / out } else { out }
}

struct Reader<'t> {
    text: &'t str,
    at: usize,
}

impl Reader<'_> {
    fn rest(&self) -> &str {
        &self.text[self.at..]
    }

    fn peek(&mut self) -> Option<char> {
        let blank = self.rest().len() - self.rest().trim_start().len();
        self.at += blank;
        self.rest().chars().next()
    }

    fn take(&mut self, wanted: char) -> bool {
        let found = self.peek() == Some(wanted);
        if found {
            self.at += wanted.len_utf8();
        }
        found
    }

    fn word(&mut self, of: impl Fn(char) -> bool) -> String {
        let word: String = self.rest().chars().take_while(|c| of(*c)).collect();
        self.at += word.len();
        word
    }

    fn sum(&mut self) -> Result<Expression, String> {
        self.chain(['+', '-'], Self::product)
    }

    fn product(&mut self) -> Result<Expression, String> {
        self.chain(['*', '/'], Self::signed)
    }

    fn chain(
        &mut self,
        signs: [char; 2],
        next: fn(&mut Self) -> Result<Expression, String>,
    ) -> Result<Expression, String> {
        let mut out = next(self)?;
        while let Some(sign) = self.peek().filter(|c| signs.contains(c)) {
            self.at += 1;
            out = Expression::Binary(sign, Box::new(out), Box::new(next(self)?));
        }
        Ok(out)
    }

    fn signed(&mut self) -> Result<Expression, String> {
        if self.take('-') {
            return Ok(Expression::Negative(Box::new(self.signed()?)));
        }
        let base = self.atom()?;
        if !self.take('^') {
            return Ok(base);
        }
        let sign = if self.take('-') { -1.0 } else { 1.0 };
        match self.atom()? {
            Expression::Number(exponent) => Ok(Expression::Power(Box::new(base), sign * exponent)),
            other => Err(format!("{other:?} is no plain exponent")),
        }
    }

    fn atom(&mut self) -> Result<Expression, String> {
        match self.peek() {
            Some('(') => {
                self.at += 1;
                let inner = self.sum()?;
                self.take(')').then_some(inner).ok_or_else(|| format!("a ) is missing in {:?}", self.text))
            }
            Some(c) if c.is_ascii_digit() => {
                let digits = self.word(|c| c.is_ascii_digit() || c == '.');
                digits.parse().map(Expression::Number).map_err(|e| format!("{digits}: {e}"))
            }
            Some(c) if c.is_ascii_alphabetic() => {
                let name = self.word(|c| c.is_ascii_alphanumeric() || c == '_');
                if !self.take('(') {
                    return Ok(Expression::Symbol(name));
                }
                let mut arguments = vec![self.sum()?];
                while self.take(',') {
                    arguments.push(self.sum()?);
                }
                self.take(')')
                    .then_some(Expression::Call(name, arguments))
                    .ok_or_else(|| "a ) is missing".to_owned())
            }
            other => Err(format!("{other:?} at {} of {:?}", self.at, self.text)),
        }
    }
}
