//! Laws of expansion: `eps(T) = (L(T) - L20) / L20`. The page of the [materials](super::library) has the formulas.
//!
//! A mean coefficient and an instantaneous one are different things, and a mean without its base temperature means
//! nothing; the laws keep them apart. No law is used outside its range.

use crate::bounds::{self, Bound, Verdict};
use crate::calc::{Formula, Number, Taylor, formula};
use crate::error::{Error, ErrorKind};
use crate::job::Given;
use crate::measurement::Stated;
use crate::quantity::Temperature;
use crate::size::REFERENCE_TEMPERATURE_C;
use core::fmt;
use core::ops::{Add, Div, Mul, Sub};

formula! {
    /// Strain from a mean coefficient `a` that starts from `t0`; `a20` is the mean from `t0` to 20 C.
    MeanGrowth: eps ["1"] = (a, a20, t, t0) => (a * (t - t0) - a20 * (20.0 - t0)) / (a20 * (20.0 - t0) + 1.0);
        source "definition of the mean coefficient, L = L0 (1 + a (T - T0)), solved for (L - L20) / L20";
    /// A coefficient between two rows of a table.
    BetweenRows: a ["1/K"] = (a0, a1, t, t0, t1) => a0 + (a1 - a0) * (t - t0) / (t1 - t0);
        source "linear interpolation";
    /// Integral of an instantaneous coefficient over one more straight piece.
    Trapezoid: i ["1"] = (i0, a0, a1, t0, t1) => i0 + (t1 - t0) * (a0 + a1) / 2.0;
        source "integral of a straight line";
    /// Temperature in kelvin.
    InKelvin: x ["K"] = (t, zero) => t + zero; source "SI: 0 C is 273.15 K";
    /// One more term of the integral of a polynomial, by Horner's rule.
    HornerTerm: p ["1"] = (p0, c, n, x) => (p0 + c / n) * x; source "integral of a polynomial, term by term";
    /// A definite integral from its two ends.
    FromBase: eps ["1"] = (p, p20) => p - p20; source "definite integral";
    /// One more term of a polynomial, by Horner's rule.
    HornerStep: p ["1"] = (p0, c, x) => p0 * x + c; source "a polynomial, term by term";
    /// A strain from 20 C from two strains from another base.
    FromOtherBase: eps ["1"] = (p, p20) => (p - p20) / (p20 + 1.0);
        source "L = L0 (1 + p(T)), solved for (L - L20) / L20";
    /// What the composition of graphite iron makes of the coefficient at 0 C.
    IronConstant: c0 ["1/K"] = (n, g, r) => 1.38e-5 + 5.38e-8 * n - 5.85e-7 * g - 2.41e-6 * r - 1.28e-8 * n * g - 2.97e-7 * g * r + 1.08e-7 * g * g;
        source "Matsushita et al., Metals 2015, 5, 1000-1019: regression on compacted and spheroidal graphite iron, terms without T";
    /// What it makes of its slope.
    IronSlope: c1 ["1/K2"] = (r) => 1.85e-8 + 4.65e-9 * r;
        source "Matsushita et al., Metals 2015, 5, 1000-1019: terms with T";
    /// Strain of graphite iron.
    IronGrowth: eps ["1"] = (c0, c1, t) =>
        c0 * (t - 20.0) + c1 * (t * t - 400.0) / 2.0 - 4.80e-11 * (t * t * t - 8000.0) / 3.0;
        source "integral from 20 C of c0 + c1 T - 4.80e-11 T^2 (Matsushita et al., Metals 2015, 5, 1000-1019)";
    /// Mean coefficient between two temperatures.
    MeanBetween: a ["1/K"] = (eps0, eps1, t0, t1) => (eps1 - eps0) / ((eps0 + 1.0) * (t1 - t0));
        source "definition of the mean coefficient, (L1 - L0) / (L0 (T1 - T0))";
}

/// Declares the two kinds of coefficient, which no code can take for each other.
macro_rules! coefficients {
    ($($(#[doc = $doc:literal])+ $name:ident;)+) => {$(
        $(#[doc = $doc])+
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// The coefficient `per_kelvin`, in 1/K. Its range is checked where it is used. A negative zero becomes zero.
            #[must_use]
            pub fn from_per_kelvin(per_kelvin: f64) -> Self {
                $name(per_kelvin + 0.0)
            }

            /// The coefficient in 1/K.
            #[must_use]
            pub fn per_kelvin(self) -> f64 {
                self.0
            }
        }
    )+};
}

coefficients! {
    /// A mean coefficient of linear expansion between two temperatures, `(L1 - L0) / (L0 (T1 - T0))`.
    ///
    /// It is not an [`InstantaneousCoefficient`]: at 200 C that of aluminium alloys is 2e-6 /K larger than their mean from 20 C, which is 0.03 mm on a
    /// piston of 86 mm.
    ///
    /// ```compile_fail
    /// use gaugepoint::growth::{InstantaneousCoefficient, Law};
    /// use gaugepoint::quantity::Temperature;
    ///
    /// let c = Temperature::from_celsius;
    /// let instantaneous = InstantaneousCoefficient::from_per_kelvin(26.4e-6);
    /// let law = Law::mean_coefficient(c(20.0), instantaneous, c(20.0), c(200.0));
    /// ```
    MeanCoefficient;
    /// An instantaneous coefficient of linear expansion at one temperature, `(1 / L20) dL/dT`.
    ///
    /// It is not a [`MeanCoefficient`]:
    ///
    /// ```compile_fail
    /// use gaugepoint::growth::{InstantaneousCoefficient, MeanCoefficient};
    ///
    /// let mean = MeanCoefficient::from_per_kelvin(24.4e-6);
    /// let at_200_c: InstantaneousCoefficient = mean;
    /// ```
    InstantaneousCoefficient;
}

/// What a law says of one temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Growth {
    /// Strain from 20 C.
    pub strain: f64,
    /// Instantaneous coefficient.
    pub instantaneous: InstantaneousCoefficient,
    /// Mean coefficient from 20 C; none at 20 C: a mean over nothing.
    pub mean_from_20: Option<MeanCoefficient>,
}

/// A law of expansion with its range.
///
/// ```
/// use gaugepoint::growth::{Law, MeanCoefficient};
/// use gaugepoint::quantity::Temperature;
///
/// let c = Temperature::from_celsius;
/// let mean = MeanCoefficient::from_per_kelvin;
/// // a piston alloy: means from 20 C to each temperature
/// let law = Law::mean_table(c(20.0), &[(c(20.0), mean(20.0e-6)), (c(100.0), mean(20.0e-6)), (c(200.0), mean(21.0e-6))])?;
/// assert!((law.strain(c(150.0))? - 20.5e-6 * 130.0).abs() < 1e-15);
/// assert!((law.mean(c(20.0), c(200.0))?.per_kelvin() - 21.0e-6).abs() < 1e-18);
/// assert!(law.strain(c(250.0)).is_err()); // it is never used outside its range
/// # Ok::<(), gaugepoint::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Law(pub(super) Form<f64>);

/// The forms a law is stated in, over what its numbers are: plain ones, or those of a document with their places.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Form<X> {
    MeanCoefficient { base: X, value: X, range: [X; 2] },
    MeanTable { base: X, rows: Vec<Row<X>> },
    InstantaneousTable { rows: Vec<Row<X>> },
    InstantaneousPolynomial { coefficients: Vec<X>, range: [X; 2] },
    StrainPolynomial { coefficients: Vec<X>, range: [X; 2] },
    GraphiteIron { nodularity: X, graphite: X, pearlite_to_ferrite: X },
}

/// The regression on graphite iron was made over 25 C to 500 C. It is a parabola, and a strain starts at 20 C: it is continued by those 5 K, over which
/// the coefficient changes by 1.4e-7 /K at most and the strain by 4e-7.
const GRAPHITE_IRON: (f64, f64) = (REFERENCE_TEMPERATURE_C, 500.0);

/// A coefficient at, or up to, a temperature.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Row<X> {
    pub(crate) temperature: X,
    pub(crate) value: X,
}

/// A number of a law.
pub(crate) trait Figured {
    fn number(&self) -> f64;
}

impl Figured for f64 {
    fn number(&self) -> f64 {
        *self
    }
}

impl Figured for Stated {
    fn number(&self) -> f64 {
        self.value()
    }
}

impl Figured for Given {
    fn number(&self) -> f64 {
        self.value
    }
}

/// What the one text of the laws is computed on: plain numbers, numbers with derivatives, or values with their uncertainty and working.
pub(crate) trait Desk<X> {
    type Value: Clone;
    /// The plain number of a value.
    fn number(&self, value: &Self::Value) -> f64;
    /// A number that the law states.
    fn stated(&mut self, symbol: &str, stated: &X) -> Self::Value;
    /// A number that is the same for every law.
    fn constant(
        &mut self,
        symbol: fmt::Arguments<'_>,
        value: f64,
        unit: &'static str,
        source: &str,
    ) -> Self::Value;
    /// A formula.
    fn apply<F: Formula<N>, const N: usize>(
        &mut self,
        formula: F,
        arguments: [&Self::Value; N],
    ) -> Self::Value;
    /// A mean coefficient with the error of the material's coefficient.
    fn uncertain(&mut self, coefficient: Self::Value) -> Self::Value;
    /// A strain with what that error makes of it, of a law that was integrated.
    fn integrated(&mut self, eps: Self::Value, t: &Self::Value) -> Self::Value;
}

impl<X: Figured> Form<X> {
    /// Strain from 20 C at `t`, which lies within the range.
    pub(crate) fn growth<D: Desk<X>>(&self, desk: &mut D, t: &D::Value) -> D::Value {
        match self {
            Form::MeanCoefficient { base, value, .. } => {
                let a = desk.stated("a", value);
                let a = desk.uncertain(a);
                let t0 = desk.stated("t0", base);
                desk.apply(MeanGrowth, [&a, &a, t, &t0])
            }
            Form::MeanTable { base, rows } => {
                let a = between_rows(desk, rows, t);
                let a = desk.uncertain(a);
                let reference = reference_temperature(desk);
                let a20 = between_rows(desk, rows, &reference);
                let a20 = desk.uncertain(a20);
                let t0 = desk.stated("t0", base);
                desk.apply(MeanGrowth, [&a, &a20, t, &t0])
            }
            Form::InstantaneousTable { rows } => {
                let eps = integrated_table(desk, rows, t);
                desk.integrated(eps, t)
            }
            Form::InstantaneousPolynomial { coefficients, .. } => {
                let p = integrated_polynomial(desk, coefficients, t);
                let reference = reference_temperature(desk);
                let p20 = integrated_polynomial(desk, coefficients, &reference);
                let eps = desk.apply(FromBase, [&p, &p20]);
                desk.integrated(eps, t)
            }
            Form::StrainPolynomial { coefficients, .. } => {
                let p = polynomial(desk, coefficients, t);
                let reference = reference_temperature(desk);
                let p20 = polynomial(desk, coefficients, &reference);
                let eps = desk.apply(FromOtherBase, [&p, &p20]);
                desk.integrated(eps, t)
            }
            Form::GraphiteIron { nodularity, graphite, pearlite_to_ferrite } => {
                let n = desk.stated("n", nodularity);
                let g = desk.stated("g", graphite);
                let r = desk.stated("r", pearlite_to_ferrite);
                let c0 = desk.apply(IronConstant, [&n, &g, &r]);
                let c1 = desk.apply(IronSlope, [&r]);
                let eps = desk.apply(IronGrowth, [&c0, &c1, t]);
                desk.integrated(eps, t)
            }
        }
    }

    /// Lowest and highest temperature it holds at, in C; NaN of a table without rows.
    pub(crate) fn range(&self) -> (f64, f64) {
        match self {
            Form::MeanCoefficient { range: [from, to], .. }
            | Form::InstantaneousPolynomial { range: [from, to], .. }
            | Form::StrainPolynomial { range: [from, to], .. } => (from.number(), to.number()),
            Form::MeanTable { rows, .. } | Form::InstantaneousTable { rows } => {
                let at = |row: Option<&Row<X>>| row.map_or(f64::NAN, |r| r.temperature.number());
                (at(rows.first()), at(rows.last()))
            }
            Form::GraphiteIron { .. } => GRAPHITE_IRON,
        }
    }

    pub(crate) fn holds_at(&self, celsius: f64) -> bool {
        let (lower, upper) = self.range();
        celsius >= lower && celsius <= upper
    }

    /// Refuses a temperature outside the range; `of` says whose law it is.
    pub(crate) fn check_at(&self, celsius: f64, typed: &str, of: &str) -> Result<(), Error> {
        if self.holds_at(celsius) {
            return Ok(());
        }
        let (lower, upper) = self.range();
        let reason = format!("outside the range of the expansion law{of}");
        let error = Error::new(ErrorKind::OutsideLaw, typed, reason);
        Err(error.value(celsius).limits(lower, upper, "C"))
    }

    /// The same law over other numbers.
    pub(crate) fn map<Y>(&self, mut number: impl FnMut(&X) -> Y) -> Form<Y> {
        fn rows<X, Y>(rows: &[Row<X>], number: &mut impl FnMut(&X) -> Y) -> Vec<Row<Y>> {
            let mut row = |r: &Row<X>| Row { temperature: number(&r.temperature), value: number(&r.value) };
            rows.iter().map(&mut row).collect()
        }
        let number = &mut number;
        match self {
            Form::MeanCoefficient { base, value, range: [from, to] } => Form::MeanCoefficient {
                base: number(base),
                value: number(value),
                range: [number(from), number(to)],
            },
            Form::MeanTable { base, rows: r } => {
                Form::MeanTable { base: number(base), rows: rows(r, number) }
            }
            Form::InstantaneousTable { rows: r } => Form::InstantaneousTable { rows: rows(r, number) },
            Form::InstantaneousPolynomial { coefficients, range: [from, to] } => {
                Form::InstantaneousPolynomial {
                    coefficients: coefficients.iter().map(&mut *number).collect(),
                    range: [number(from), number(to)],
                }
            }
            Form::StrainPolynomial { coefficients, range: [from, to] } => Form::StrainPolynomial {
                coefficients: coefficients.iter().map(&mut *number).collect(),
                range: [number(from), number(to)],
            },
            Form::GraphiteIron { nodularity, graphite, pearlite_to_ferrite } => Form::GraphiteIron {
                nodularity: number(nodularity),
                graphite: number(graphite),
                pearlite_to_ferrite: number(pearlite_to_ferrite),
            },
        }
    }
}

impl Form<Given> {
    /// The law, when its rows rise, it reaches 20 C, and every coefficient it gives is possible.
    ///
    /// `field` is that of the law, `list` that of its rows or coefficients; `of` says in an error whose law it is.
    pub(crate) fn checked(&self, field: &str, list: &str, of: &str) -> Result<Law, Error> {
        match self {
            Form::MeanCoefficient { range, .. } => check_rising(range)?,
            Form::MeanTable { rows, .. } | Form::InstantaneousTable { rows } => check_rows(rows, list)?,
            Form::InstantaneousPolynomial { range, .. } | Form::StrainPolynomial { range, .. } => {
                check_rising(range)?;
            }
            Form::GraphiteIron { .. } => {}
        }
        let law = Law(self.map(|given| given.value));
        if !law.0.holds_at(REFERENCE_TEMPERATURE_C) {
            let (lower, upper) = law.0.range();
            let reason = format!("the law of expansion{of} does not reach 20 C");
            let error = Error::new(ErrorKind::OutsideLaw, "", reason);
            return Err(error.value(REFERENCE_TEMPERATURE_C).limits(lower, upper, "C").at(field));
        }
        law.check_coefficients(list)?;
        Ok(law)
    }
}

fn check_rising([from, to]: &[Given; 2]) -> Result<(), Error> {
    if from.value < to.value {
        return Ok(());
    }
    let reason = format!("it must be above {}", from.text);
    Err(Error::new(ErrorKind::OutOfOrder, &to.text, reason).value(to.value).at(&to.path))
}

/// Rows that are nearer to each other are one row: between them the slope would have no end.
const LEAST_RISE_K: f64 = 1e-6;

/// A table has rows, and they rise; without any it has no range either.
fn check_rows(rows: &[Row<Given>], field: &str) -> Result<(), Error> {
    if rows.is_empty() {
        return Err(Error::new(ErrorKind::MissingField, "rows", "the table has no rows").at(field));
    }
    for pair in rows.windows(2) {
        if let [low, high] = pair
            && high.temperature.value - low.temperature.value < LEAST_RISE_K
        {
            let t = &high.temperature;
            let error = Error::new(ErrorKind::OutOfOrder, &t.text, "rows must rise in temperature");
            return Err(error.value(t.value).at(&t.path));
        }
    }
    Ok(())
}

fn reference_temperature<X, D: Desk<X>>(desk: &mut D) -> D::Value {
    desk.constant(format_args!("t20"), REFERENCE_TEMPERATURE_C, "C", "ISO 1:2022")
}

/// The coefficient of a table at a temperature within its range; at a row, from the piece toward 20 C, which is the one an integral from
/// there came through.
fn between_rows<X: Figured, D: Desk<X>>(desk: &mut D, rows: &[Row<X>], t: &D::Value) -> D::Value {
    let at = desk.number(t);
    let upper = match at < REFERENCE_TEMPERATURE_C {
        true => rows.partition_point(|r| r.temperature.number() <= at),
        false => rows.partition_point(|r| r.temperature.number() < at),
    };
    let lower = upper.saturating_sub(1);
    match (rows.get(lower), rows.get(lower + 1)) {
        (Some(low), Some(high)) => {
            let [a0, a1] = [desk.stated("a0", &low.value), desk.stated("a1", &high.value)];
            let [t0, t1] = [desk.stated("t0", &low.temperature), desk.stated("t1", &high.temperature)];
            desk.apply(BetweenRows, [&a0, &a1, t, &t0, &t1])
        }
        // a table of one row holds at that one temperature
        _ => match rows.first() {
            Some(row) => desk.stated("a", &row.value),
            None => desk.constant(format_args!("a"), f64::NAN, "1/K", "no row"),
        },
    }
}

/// Integral of a table's coefficient from 20 C to `t`, piece by piece over the rows between.
fn integrated_table<X: Figured, D: Desk<X>>(desk: &mut D, rows: &[Row<X>], t: &D::Value) -> D::Value {
    let reference = reference_temperature(desk);
    let end = desk.number(t);
    let rising = end >= REFERENCE_TEMPERATURE_C;
    let (low, high) = if rising { (REFERENCE_TEMPERATURE_C, end) } else { (end, REFERENCE_TEMPERATURE_C) };
    let first = rows.partition_point(|r| r.temperature.number() <= low);
    let last = rows.partition_point(|r| r.temperature.number() < high);
    let between = rows.get(first..last).unwrap_or_default();
    let mut sum = desk.constant(format_args!("i20"), 0.0, "1", "strain at the reference temperature");
    let mut at = reference.clone();
    let mut a = between_rows(desk, rows, &reference);
    for k in 0..between.len() {
        let place = if rising { k } else { between.len() - 1 - k };
        let Some(row) = between.get(place) else { break };
        let next_at = desk.stated("t1", &row.temperature);
        let next_a = desk.stated("a1", &row.value);
        sum = desk.apply(Trapezoid, [&sum, &a, &next_a, &at, &next_at]);
        (at, a) = (next_at, next_a);
    }
    let last = between_rows(desk, rows, t);
    desk.apply(Trapezoid, [&sum, &a, &last, &at, t])
}

fn in_kelvin<X, D: Desk<X>>(desk: &mut D, t: &D::Value) -> D::Value {
    let zero = desk.constant(format_args!("zero"), 273.15, "K", "SI: 0 C is 273.15 K");
    desk.apply(InKelvin, [t, &zero])
}

fn integrated_polynomial<X: Figured, D: Desk<X>>(desk: &mut D, coefficients: &[X], t: &D::Value) -> D::Value {
    let x = in_kelvin(desk, t);
    let mut p = desk.constant(format_args!("p0"), 0.0, "1", "start of Horner's rule");
    for (power, coefficient) in coefficients.iter().enumerate().rev() {
        let power = power + 1;
        #[expect(clippy::cast_precision_loss, reason = "the number of coefficients is small")]
        let n = power as f64;
        let n = desk.constant(format_args!("n{power}"), n, "1", "power of the term after integration");
        let c = desk.stated("c", coefficient);
        p = desk.apply(HornerTerm, [&p, &c, &n, &x]);
    }
    p
}

fn polynomial<X: Figured, D: Desk<X>>(desk: &mut D, coefficients: &[X], t: &D::Value) -> D::Value {
    let x = in_kelvin(desk, t);
    let mut p = desk.constant(format_args!("p0"), 0.0, "1", "start of Horner's rule");
    for coefficient in coefficients.iter().rev() {
        let c = desk.stated("c", coefficient);
        p = desk.apply(HornerStep, [&p, &c, &x]);
    }
    p
}

/// Plain numbers: the same formulas in the same order as the calculation with uncertainty, so the same bits.
struct Plain;

impl Desk<f64> for Plain {
    type Value = f64;
    fn number(&self, value: &f64) -> f64 {
        *value
    }
    fn stated(&mut self, _: &str, stated: &f64) -> f64 {
        *stated
    }
    fn constant(&mut self, _: fmt::Arguments<'_>, value: f64, _: &'static str, _: &str) -> f64 {
        value
    }
    fn apply<F: Formula<N>, const N: usize>(&mut self, _: F, arguments: [&f64; N]) -> f64 {
        // minus zero is zero, as in the calculation
        F::evaluate(arguments.map(|a| *a)) + 0.0
    }
    fn uncertain(&mut self, coefficient: f64) -> f64 {
        coefficient
    }
    fn integrated(&mut self, eps: f64, _: &f64) -> f64 {
        eps
    }
}

/// Numbers with their derivatives by the temperature.
struct Derived;

impl Desk<f64> for Derived {
    type Value = Taylor;
    fn number(&self, value: &Taylor) -> f64 {
        value.value
    }
    fn stated(&mut self, _: &str, stated: &f64) -> Taylor {
        Taylor::constant(*stated)
    }
    fn constant(&mut self, _: fmt::Arguments<'_>, value: f64, _: &'static str, _: &str) -> Taylor {
        Taylor::constant(value)
    }
    fn apply<F: Formula<N>, const N: usize>(&mut self, _: F, arguments: [&Taylor; N]) -> Taylor {
        evaluated::<F, Taylor, N>(arguments.map(|a| *a))
    }
    fn uncertain(&mut self, coefficient: Taylor) -> Taylor {
        coefficient
    }
    fn integrated(&mut self, eps: Taylor, _: &Taylor) -> Taylor {
        eps
    }
}

fn evaluated<F: Formula<N>, T: Number, const N: usize>(arguments: [T; N]) -> T
where
    f64: Add<T, Output = T> + Sub<T, Output = T> + Mul<T, Output = T> + Div<T, Output = T>,
{
    F::evaluate(arguments)
}

/// The coefficients of a polynomial have no range of their own; what the polynomial gives is checked instead.
pub(crate) const POLYNOMIAL_COEFFICIENT: Bound = Bound {
    label: "coefficient of a polynomial",
    unit: "1",
    possible: (-1.0, 1.0),
    usual: (-1.0, 1.0),
    reason: "the coefficient of expansion it gives is checked over the whole range",
};

/// Most rows of a table, most coefficients of a polynomial.
const MOST_ROWS: usize = crate::job::MOST_ENTRIES;

/// A number given in code, held against its bound.
fn given(bound: &Bound, value: f64, field: String) -> Result<Given, Error> {
    bound.check(&field, value)?;
    Ok(Given { value: value + 0.0, unit: bound.unit, text: value.to_string(), path: field })
}

fn range_given(from: Temperature, to: Temperature) -> Result<[Given; 2], Error> {
    let end = |t: Temperature, field: &str| given(&bounds::LAW_TEMPERATURE, t.celsius(), field.to_owned());
    Ok([end(from, "from_c")?, end(to, "to_c")?])
}

fn rows_given(
    values: &'static str,
    rows: impl ExactSizeIterator<Item = (Temperature, f64)>,
) -> Result<Vec<Row<Given>>, Error> {
    check_count("temperatures_c", rows.len())?;
    let row = |(k, (t, a)): (usize, (Temperature, f64))| {
        Ok(Row {
            temperature: given(&bounds::LAW_TEMPERATURE, t.celsius(), format!("temperatures_c/{k}"))?,
            value: given(&bounds::EXPANSION, a, format!("{values}/{k}"))?,
        })
    };
    rows.enumerate().map(row).collect()
}

fn check_count(field: &str, count: usize) -> Result<(), Error> {
    match count {
        0 => Err(Error::new(ErrorKind::MissingField, field, "there are none").at(field)),
        1..=MOST_ROWS => Ok(()),
        _ => {
            let reason = format!("a list has at most {MOST_ROWS} entries");
            Err(Error::new(ErrorKind::TooLarge, count.to_string(), reason).at(field))
        }
    }
}

fn polynomial_given(coefficients: &[f64]) -> Result<Vec<Given>, Error> {
    const FIELD: &str = "kelvin_coefficients";
    check_count(FIELD, coefficients.len())?;
    let coefficient = |(k, c): (usize, &f64)| given(&POLYNOMIAL_COEFFICIENT, *c, format!("{FIELD}/{k}"));
    coefficients.iter().enumerate().map(coefficient).collect()
}

impl Law {
    /// One mean coefficient from `base`, which holds between `from` and `to`.
    ///
    /// # Errors
    /// When a number is impossible (temperatures -270 C to 1200 C, coefficients 1e-7 to 1e-4 per kelvin), or the range is not rising or
    /// does not reach 20 C.
    pub fn mean_coefficient(
        base: Temperature,
        value: MeanCoefficient,
        from: Temperature,
        to: Temperature,
    ) -> Result<Self, Error> {
        Form::MeanCoefficient {
            base: given(&bounds::LAW_TEMPERATURE, base.celsius(), "base_c".to_owned())?,
            value: given(&bounds::EXPANSION, value.per_kelvin(), "mean_per_k".to_owned())?,
            range: range_given(from, to)?,
        }
        .checked("from_c", "from_c", "")
    }

    /// Mean coefficients from `base` to each temperature, straight between them. The rows span the range.
    ///
    /// # Errors
    /// As [`Law::mean_coefficient`]; the rows rise in temperature, at most 1000 of them.
    pub fn mean_table(base: Temperature, rows: &[(Temperature, MeanCoefficient)]) -> Result<Self, Error> {
        Form::MeanTable {
            base: given(&bounds::LAW_TEMPERATURE, base.celsius(), "base_c".to_owned())?,
            rows: rows_given("means_per_k", rows.iter().map(|(t, a)| (*t, a.per_kelvin())))?,
        }
        .checked("temperatures_c", "temperatures_c", "")
    }

    /// Instantaneous coefficients at each temperature, straight between them, integrated from 20 C. The rows span the range.
    ///
    /// # Errors
    /// As [`Law::mean_table`].
    pub fn instantaneous_table(rows: &[(Temperature, InstantaneousCoefficient)]) -> Result<Self, Error> {
        let rows = rows.iter().map(|(t, a)| (*t, a.per_kelvin()));
        Form::InstantaneousTable { rows: rows_given("instantaneous_per_k", rows)? }.checked(
            "temperatures_c",
            "temperatures_c",
            "",
        )
    }

    /// An instantaneous coefficient `c0 + c1 T + c2 T^2 + ...` per kelvin, `T` in kelvin, integrated from 20 C.
    ///
    /// # Errors
    /// When the range is not rising or does not reach 20 C, or the polynomial gives a coefficient within it that is impossible.
    pub fn instantaneous_polynomial(
        kelvin_coefficients: &[f64],
        from: Temperature,
        to: Temperature,
    ) -> Result<Self, Error> {
        let coefficients = polynomial_given(kelvin_coefficients)?;
        Form::InstantaneousPolynomial { coefficients, range: range_given(from, to)? }.checked(
            "from_c",
            "kelvin_coefficients",
            "",
        )
    }

    /// A strain `p(T) = c0 + c1 T + c2 T^2 + ...`, `T` in kelvin, from any length that the source refers to; it is brought to the length at 20 C.
    ///
    /// # Errors
    /// As [`Law::instantaneous_polynomial`].
    pub fn strain_polynomial(
        kelvin_coefficients: &[f64],
        from: Temperature,
        to: Temperature,
    ) -> Result<Self, Error> {
        let coefficients = polynomial_given(kelvin_coefficients)?;
        Form::StrainPolynomial { coefficients, range: range_given(from, to)? }.checked(
            "from_c",
            "kelvin_coefficients",
            "",
        )
    }

    /// Compacted or spheroidal graphite iron from its structure, by a published regression: nodularity in %, area fraction of graphite in %, ratio
    /// of pearlite to ferrite in the matrix. 20 C to 500 C.
    ///
    /// The regression (Matsushita et al., Metals 2015, 5, 1000-1019) is known here from its abstract and the table of its samples only; its coefficient is taken as
    /// instantaneous. For pearlitic spheroidal iron it gives 5e-6 to 10e-6 per kelvin, below what handbooks print: unverified. It was made
    /// over 25 C to 500 C and is continued to 20 C.
    ///
    /// # Errors
    /// When a number is outside the samples of the regression: 3.9 to 82.6 %, 1.9 to 9.1 %, 0 to 1.85.
    pub fn graphite_iron(
        nodularity_percent: f64,
        graphite_percent: f64,
        pearlite_to_ferrite: f64,
    ) -> Result<Self, Error> {
        let number = |bound, value, field: &str| given(bound, value, field.to_owned());
        Form::GraphiteIron {
            nodularity: number(&bounds::NODULARITY, nodularity_percent, "nodularity_percent")?,
            graphite: number(&bounds::GRAPHITE, graphite_percent, "graphite_percent")?,
            pearlite_to_ferrite: number(
                &bounds::PEARLITE_TO_FERRITE,
                pearlite_to_ferrite,
                "pearlite_to_ferrite",
            )?,
        }
        .checked("nodularity_percent", "nodularity_percent", "")
    }

    /// Lowest and highest temperature it holds at.
    #[must_use]
    pub fn range(&self) -> (Temperature, Temperature) {
        let (lower, upper) = self.0.range();
        (Temperature::from_celsius(lower), Temperature::from_celsius(upper))
    }

    /// Strain `(L(T) - L20) / L20`.
    ///
    /// # Errors
    /// [`ErrorKind::OutsideLaw`] outside the range.
    pub fn strain(&self, temperature: Temperature) -> Result<f64, Error> {
        self.within(temperature, "temperature_c").map(|t| self.strain_at(t))
    }

    /// Strains at temperatures in any order.
    ///
    /// # Errors
    /// [`ErrorKind::OutsideLaw`] outside the range, with the place of the temperature, from 0: `temperatures_c/3`.
    pub fn strains(&self, temperatures: &[Temperature]) -> Result<Vec<f64>, Error> {
        let strain = |(k, t): (usize, &Temperature)| {
            self.within(*t, &format!("temperatures_c/{k}")).map(|t| self.strain_at(t))
        };
        temperatures.iter().enumerate().map(strain).collect()
    }

    /// Instantaneous coefficient `(1 / L20) dL/dT`, the slope of the strain; where it jumps, at a row of a table of means, that of the piece
    /// toward 20 C.
    ///
    /// # Errors
    /// [`ErrorKind::OutsideLaw`] outside the range.
    pub fn instantaneous(&self, temperature: Temperature) -> Result<InstantaneousCoefficient, Error> {
        let t = self.within(temperature, "temperature_c")?;
        Ok(InstantaneousCoefficient::from_per_kelvin(self.slope_at(t)))
    }

    /// Strain, instantaneous coefficient, and mean coefficient from 20 C, together.
    ///
    /// # Errors
    /// [`ErrorKind::OutsideLaw`] outside the range.
    pub fn at(&self, temperature: Temperature) -> Result<Growth, Error> {
        let strain = self.strain(temperature)?;
        let instantaneous = self.instantaneous(temperature)?;
        let reference = Temperature::from_celsius(REFERENCE_TEMPERATURE_C);
        let mean = (temperature != reference).then(|| self.mean(reference, temperature)).transpose()?;
        Ok(Growth { strain, instantaneous, mean_from_20: mean })
    }

    /// Mean coefficient `(L1 - L0) / (L0 (T1 - T0))` from one temperature to another.
    ///
    /// # Errors
    /// [`ErrorKind::OutsideLaw`] outside the range; [`ErrorKind::Contradiction`] when the two are the same: a mean over nothing.
    pub fn mean(&self, from: Temperature, to: Temperature) -> Result<MeanCoefficient, Error> {
        let (t0, t1) = (self.within(from, "from_c")?, self.within(to, "to_c")?);
        #[expect(clippy::float_cmp, reason = "a difference of exactly zero must not divide")]
        if t0 == t1 {
            let reason = "a mean needs two temperatures";
            return Err(Error::new(ErrorKind::Contradiction, t1.to_string(), reason).value(t1).at("to_c"));
        }
        let [eps0, eps1] = [self.strain_at(t0), self.strain_at(t1)];
        Ok(MeanCoefficient::from_per_kelvin(MeanBetween::evaluate([eps0, eps1, t0, t1])))
    }

    fn within(&self, temperature: Temperature, field: &str) -> Result<f64, Error> {
        let t = temperature.celsius();
        self.0.check_at(t, &format!("{t} C"), "").map_err(|e| e.at(field))?;
        Ok(t)
    }

    /// The strain at `t_c` in C as a plain number, for loops that checked the [range](Law::range) beforehand; NaN outside it.
    #[must_use]
    pub fn strain_at(&self, t_c: f64) -> f64 {
        if self.0.holds_at(t_c) { self.0.growth(&mut Plain, &t_c) } else { f64::NAN }
    }

    /// The mean coefficient that a table of means gives from its base to 20 C; 0 of another law.
    pub(super) fn mean_at_20(&self) -> f64 {
        match &self.0 {
            Form::MeanTable { rows, .. } => between_rows(&mut Plain, rows, &REFERENCE_TEMPERATURE_C),
            _ => 0.0,
        }
    }

    /// Slope of the strain by the temperature, per kelvin; at a [kink](Law::kinks) that of the piece toward 20 C. NaN outside the range.
    #[must_use]
    pub fn slope_at(&self, t_c: f64) -> f64 {
        self.derived(t_c).slope
    }

    /// Second derivative of the strain by the temperature, per kelvin squared; at a [kink](Law::kinks) that of the piece toward 20 C.
    /// NaN outside the range.
    #[must_use]
    pub fn curvature_at(&self, t_c: f64) -> f64 {
        self.derived(t_c).curvature
    }

    fn derived(&self, t_c: f64) -> Taylor {
        match self.0.holds_at(t_c) {
            true => self.0.growth(&mut Derived, &Taylor::variable(t_c)),
            false => Taylor { value: f64::NAN, slope: f64::NAN, curvature: f64::NAN },
        }
    }

    /// Temperatures in C within the range where the law bends, in rising order: the inner rows of a table. Of a table of means the slope of the strain
    /// jumps there, of an instantaneous one its second derivative. Between two of them the strain of a table is a parabola, and of the other
    /// laws, which have none, a polynomial.
    pub fn kinks(&self) -> impl Iterator<Item = f64> + '_ {
        let rows = match &self.0 {
            Form::MeanTable { rows, .. } | Form::InstantaneousTable { rows } => rows.as_slice(),
            _ => &[],
        };
        let inner = rows.len().checked_sub(1).and_then(|end| rows.get(1..end)).unwrap_or_default();
        inner.iter().map(|row| row.temperature)
    }

    /// Every coefficient that is computed must be possible over the whole range; those of a table were checked as they stand.
    fn check_coefficients(&self, field: &str) -> Result<(), Error> {
        const PLACES: u32 = 64;
        if let Form::MeanCoefficient { .. } | Form::MeanTable { .. } | Form::InstantaneousTable { .. } =
            self.0
        {
            return Ok(());
        }
        let (lower, upper) = self.0.range();
        for k in 0..=PLACES {
            // the sum may round beyond the end
            let t = Number::min(lower + (upper - lower) * f64::from(k) / f64::from(PLACES), upper);
            let a = self.slope_at(t);
            if bounds::EXPANSION.judge(a) == Verdict::Impossible {
                return Err(bounds::EXPANSION.refuse(a, &a.to_string()).suggest(None).at(field));
            }
        }
        Ok(())
    }
}
