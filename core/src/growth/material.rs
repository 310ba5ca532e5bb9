//! Laws of expansion: `eps(T) = (L(T) - L20) / L20`.
//!
//! A mean coefficient and an instantaneous one are different things, and a mean without its base temperature means
//! nothing; the laws keep them apart. No law is used outside its range.

use crate::bounds;
use crate::calc::{Calc, Figure, Measured, SourceId, formula};
use crate::error::{Error, ErrorKind};
use crate::job::document as doc;
use crate::job::{Entry, Given, Warning, check_length};
use crate::measurement::distribution::Distribution;
use crate::measurement::half_width;
use crate::quantity::Temperature;
use crate::size::REFERENCE_TEMPERATURE_C;

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
    /// What the error `a` of an instantaneous coefficient leaves uncertain in the strain.
    LawError: u ["1"] = (a, t) => a * (t - 20.0); source "integral of a constant error of the coefficient from 20 C";
    /// Strain as a cubic of the difference to 20 C, by Horner's rule.
    StrainPolynomial: eps ["1"] = (c1, c2, c3, t) => ((c3 * (t - 20.0) + c2) * (t - 20.0) + c1) * (t - 20.0);
        source "definition of the coefficients; with c2 and c3 zero the mean coefficient from 20 C";
    /// A length at another temperature.
    Grown: size_hot ["mm"] = (size, eps) => size * (1.0 + eps); source "definition of strain";
}

/// A material with its law of expansion.
#[derive(Debug, Clone)]
pub struct Material {
    name: String,
    law: Law,
    half_width: Given,
}

#[derive(Debug, Clone)]
enum Law {
    MeanCoefficient { base: Given, value: Given, range: (f64, f64) },
    MeanTable { base: Given, rows: Vec<Row> },
    InstantaneousTable { rows: Vec<Row> },
    InstantaneousPolynomial { coefficients: Vec<Given>, range: (f64, f64) },
}

/// A coefficient at, or up to, a temperature.
#[derive(Debug, Clone)]
struct Row {
    temperature: Given,
    value: Given,
}

impl Material {
    /// Reads a material from a document, with its ranges checked.
    ///
    /// # Errors
    /// When a number is refused, rows are not in rising order, or the law does not reach 20 C.
    pub fn from_document(material: &doc::Material, warnings: &mut Vec<Warning>) -> Result<Self, Error> {
        check_rows(material)?;
        let out = Material {
            name: material.name.words()?.to_owned(),
            law: Law::from_document(&material.law, warnings)?,
            half_width: material.coefficient_permissible_error.read(&bounds::EXPANSION_ERROR, warnings)?,
        };
        material.source.words()?;
        if !out.law.holds_at(REFERENCE_TEMPERATURE_C) {
            let (lower, upper) = out.law.range();
            let reason = format!("the law of expansion of {} does not reach 20 C", out.name);
            let error = Error::new(ErrorKind::OutsideLaw, "", reason);
            let field = format!("{}/law", material.name.parent());
            return Err(error.value(REFERENCE_TEMPERATURE_C).limits(lower, upper, "C").at(&field));
        }
        Ok(out)
    }

    /// Its name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Strain `(L(T) - L20) / L20` at a temperature.
    ///
    /// # Errors
    /// [`ErrorKind::OutsideLaw`] outside the range of the law.
    pub fn strain(&self, temperature: Temperature) -> Result<f64, Error> {
        let mut calc = Calc::new(false);
        let coefficient =
            calc.source(self.name.clone(), &self.half_width.path, Distribution::STANDARD_RECTANGULAR);
        let t = calc.input("t", temperature.celsius(), "C", "temperature", "");
        self.growth(&mut calc, coefficient, &t.into(), "temperature").map(|eps| eps.value())
    }

    /// Refuses a temperature at which the law does not hold.
    fn check(&self, celsius: f64, typed: &str, field: &str) -> Result<(), Error> {
        if self.law.holds_at(celsius) {
            return Ok(());
        }
        let (lower, upper) = self.law.range();
        let reason = format!("outside the range of the expansion law of {}", self.name);
        let error = Error::new(ErrorKind::OutsideLaw, typed, reason);
        Err(error.value(celsius).limits(lower, upper, "C").at(field))
    }

    /// Strain at a temperature, with the uncertainty of both.
    pub(crate) fn growth(
        &self,
        calc: &mut Calc,
        coefficient: SourceId,
        t: &Measured,
        field: &str,
    ) -> Result<Measured, Error> {
        self.check(t.value(), &format!("{} C", t.value()), field)?;
        let standard = half_width(calc, &self.half_width);
        let uncertain =
            |calc: &mut Calc, value: Figure| calc.add_source(&value.into(), coefficient, standard);
        Ok(match &self.law {
            Law::MeanCoefficient { base, value, .. } => {
                let a = calc.given("a", value);
                let a = uncertain(calc, a);
                let t0 = calc.given("t0", base).into();
                calc.apply(MeanGrowth, [&a, &a, t, &t0])
            }
            Law::MeanTable { base, rows } => {
                let a = between_rows(calc, rows, t);
                let a = calc.add_source(&a, coefficient, standard);
                let reference = reference_temperature(calc);
                let a20 = between_rows(calc, rows, &reference);
                let a20 = calc.add_source(&a20, coefficient, standard);
                let t0 = calc.given("t0", base).into();
                calc.apply(MeanGrowth, [&a, &a20, t, &t0])
            }
            Law::InstantaneousTable { rows } => {
                let eps = integrated_table(calc, rows, t);
                with_law_error(calc, &eps, coefficient, standard, t)
            }
            Law::InstantaneousPolynomial { coefficients, .. } => {
                let p = integrated_polynomial(calc, coefficients, t);
                let reference = reference_temperature(calc);
                let p20 = integrated_polynomial(calc, coefficients, &reference);
                let eps = calc.apply(FromBase, [&p, &p20]);
                with_law_error(calc, &eps, coefficient, standard, t)
            }
        })
    }
}

impl Law {
    fn from_document(law: &doc::Law, warnings: &mut Vec<Warning>) -> Result<Self, Error> {
        Ok(match law {
            doc::Law::MeanCoefficient(m) => Law::MeanCoefficient {
                base: m.base.read(&bounds::LAW_TEMPERATURE, warnings)?,
                value: m.value.read(&bounds::EXPANSION, warnings)?,
                range: range(&m.from, &m.to, warnings)?,
            },
            doc::Law::MeanTable(m) => Law::MeanTable {
                base: m.base.read(&bounds::LAW_TEMPERATURE, warnings)?,
                rows: rows(m.rows.iter().map(|r| (&r.to, &r.value)), warnings)?,
            },
            doc::Law::InstantaneousTable(m) => {
                Law::InstantaneousTable { rows: rows(m.rows.iter().map(|r| (&r.at, &r.value)), warnings)? }
            }
            doc::Law::InstantaneousPolynomial(m) => {
                let mut coefficients = Vec::with_capacity(m.kelvin_coefficients.len());
                for entry in &m.kelvin_coefficients {
                    coefficients.push(entry.read(&POLYNOMIAL_COEFFICIENT, warnings)?);
                }
                let law =
                    Law::InstantaneousPolynomial { coefficients, range: range(&m.from, &m.to, warnings)? };
                law.check_polynomial(&format!("{}/kelvin_coefficients", m.from.parent()))?;
                law
            }
        })
    }

    /// Every coefficient the polynomial gives within its range must be possible.
    fn check_polynomial(&self, field: &str) -> Result<(), Error> {
        const PLACES: u32 = 64;
        let Law::InstantaneousPolynomial { coefficients, range: (lower, upper) } = self else {
            return Ok(());
        };
        for k in 0..=PLACES {
            let kelvin = lower + (upper - lower) * f64::from(k) / f64::from(PLACES) + 273.15;
            let a = coefficients.iter().rev().fold(0.0, |sum, c| sum * kelvin + c.value);
            if bounds::EXPANSION.judge(a) == bounds::Verdict::Impossible {
                return Err(bounds::EXPANSION.refuse(a, &a.to_string()).suggest(None).at(field));
            }
        }
        Ok(())
    }

    fn range(&self) -> (f64, f64) {
        let ends = |rows: &[Row]| {
            let at = |row: Option<&Row>| row.map_or(f64::NAN, |r| r.temperature.value);
            (at(rows.first()), at(rows.last()))
        };
        match self {
            Law::MeanCoefficient { range, .. } | Law::InstantaneousPolynomial { range, .. } => *range,
            Law::MeanTable { rows, .. } | Law::InstantaneousTable { rows } => ends(rows),
        }
    }

    fn holds_at(&self, celsius: f64) -> bool {
        let (lower, upper) = self.range();
        celsius >= lower && celsius <= upper
    }
}

/// The coefficients of a polynomial have no range of their own; what the polynomial gives is checked instead.
const POLYNOMIAL_COEFFICIENT: bounds::Bound = bounds::Bound {
    label: "coefficient of a polynomial",
    unit: "1",
    possible: (-1.0, 1.0),
    usual: (-1.0, 1.0),
    reason: "the coefficient of expansion it gives is checked over the whole range",
};

fn range(
    from: &Entry<Temperature>,
    to: &Entry<Temperature>,
    warnings: &mut Vec<Warning>,
) -> Result<(f64, f64), Error> {
    let lower = from.read(&bounds::LAW_TEMPERATURE, warnings)?.value;
    let upper = to.read(&bounds::LAW_TEMPERATURE, warnings)?.value;
    if lower < upper {
        return Ok((lower, upper));
    }
    Err(to.refuse(ErrorKind::OutOfOrder, format!("it must be above {}", from.text())).value(upper))
}

/// A table has rows, but not without end; without any it has no range either.
fn check_rows(material: &doc::Material) -> Result<(), Error> {
    match &material.law {
        doc::Law::MeanTable(m) => check_length(&m.rows, |r| &r.to)?,
        doc::Law::InstantaneousTable(m) => check_length(&m.rows, |r| &r.at)?,
        doc::Law::InstantaneousPolynomial(m) => check_length(&m.kelvin_coefficients, |c| c)?,
        doc::Law::MeanCoefficient(_) => {}
    }
    let table = match &material.law {
        doc::Law::MeanTable(m) if m.rows.is_empty() => "mean_table",
        doc::Law::InstantaneousTable(m) if m.rows.is_empty() => "instantaneous_table",
        _ => return Ok(()),
    };
    let field = format!("{}/law/{table}/rows", material.name.parent());
    Err(Error::new(ErrorKind::MissingField, "rows", "the table has no rows").at(&field))
}

fn rows<'d>(
    entries: impl Iterator<Item = (&'d Entry<Temperature>, &'d Entry<crate::quantity::Expansion>)>,
    warnings: &mut Vec<Warning>,
) -> Result<Vec<Row>, Error> {
    let mut out: Vec<Row> = Vec::new();
    for (temperature, value) in entries {
        let row = Row {
            temperature: temperature.read(&bounds::LAW_TEMPERATURE, warnings)?,
            value: value.read(&bounds::EXPANSION, warnings)?,
        };
        if out.last().is_some_and(|last| row.temperature.value <= last.temperature.value) {
            return Err(temperature
                .refuse(ErrorKind::OutOfOrder, "rows must rise in temperature")
                .value(row.temperature.value));
        }
        out.push(row);
    }
    Ok(out)
}

fn reference_temperature(calc: &mut Calc) -> Measured {
    calc.constant("t20", REFERENCE_TEMPERATURE_C, "C", "ISO 1:2022").into()
}

/// The coefficient of a table at a temperature within its range.
fn between_rows(calc: &mut Calc, rows: &[Row], t: &Measured) -> Measured {
    for pair in rows.windows(2) {
        if let [low, high] = pair
            && t.value() <= high.temperature.value
        {
            let mut of = |symbol: &str, given: &Given| Measured::from(calc.given(symbol, given));
            let [a0, a1] = [of("a0", &low.value), of("a1", &high.value)];
            let [t0, t1] = [of("t0", &low.temperature), of("t1", &high.temperature)];
            return calc.apply(BetweenRows, [&a0, &a1, t, &t0, &t1]);
        }
    }
    // a table of one row holds at that one temperature
    let only = rows.first().map_or(f64::NAN, |r| r.value.value);
    rows.first().map_or(Figure::plain(only, "1/K"), |r| calc.given("a", &r.value)).into()
}

/// Integral of a table's coefficient from 20 C to `t`, piece by piece over the rows between.
fn integrated_table(calc: &mut Calc, rows: &[Row], t: &Measured) -> Measured {
    let reference = reference_temperature(calc);
    let rising = t.value() >= reference.value();
    let (low, high) = if rising { (reference.value(), t.value()) } else { (t.value(), reference.value()) };
    let mut between: Vec<&Row> =
        rows.iter().filter(|r| r.temperature.value > low && r.temperature.value < high).collect();
    if !rising {
        between.reverse();
    }
    let mut sum: Measured = calc.constant("i20", 0.0, "1", "strain at the reference temperature").into();
    let mut at = reference.clone();
    let mut a = between_rows(calc, rows, &reference);
    for row in between {
        let next_at = calc.given("t1", &row.temperature).into();
        let next_a = calc.given("a1", &row.value).into();
        sum = calc.apply(Trapezoid, [&sum, &a, &next_a, &at, &next_at]);
        (at, a) = (next_at, next_a);
    }
    let last = between_rows(calc, rows, t);
    calc.apply(Trapezoid, [&sum, &a, &last, &at, t])
}

fn integrated_polynomial(calc: &mut Calc, coefficients: &[Given], t: &Measured) -> Measured {
    let zero = calc.constant("zero", 273.15, "K", "SI: 0 C is 273.15 K").into();
    let x = calc.apply(InKelvin, [t, &zero]);
    let mut p: Measured = calc.constant("p0", 0.0, "1", "start of Horner's rule").into();
    for (power, coefficient) in coefficients.iter().enumerate().rev() {
        #[expect(clippy::cast_precision_loss, reason = "the number of coefficients is small")]
        let n = (power + 1) as f64;
        let n =
            calc.constant(&format!("n{}", power + 1), n, "1", "power of the term after integration").into();
        let c = calc.given("c", coefficient).into();
        p = calc.apply(HornerTerm, [&p, &c, &n, &x]);
    }
    p
}

/// A strain with the error of the coefficient it was integrated from.
fn with_law_error(
    calc: &mut Calc,
    eps: &Measured,
    coefficient: SourceId,
    standard: Figure,
    t: &Measured,
) -> Measured {
    let error = calc.figure(LawError, [standard, t.figure]);
    calc.add_source(eps, coefficient, error)
}

/// The materials of a document, by name, each with its source of uncertainty.
#[derive(Debug)]
pub(crate) struct Materials(Vec<(Material, SourceId)>);

impl Materials {
    pub(crate) fn from_document(
        calc: &mut Calc,
        materials: &[doc::Material],
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        check_length(materials, |m| &m.name)?;
        let mut out = Materials(Vec::with_capacity(materials.len()));
        for entry in materials {
            let material = Material::from_document(entry, warnings)?;
            if out.0.iter().any(|(m, _)| m.name == material.name) {
                return Err(entry.name.refuse(ErrorKind::Repeated, "this material stands twice"));
            }
            let name = format!("coefficient of expansion of {}", material.name);
            let source = calc.source(
                name,
                entry.coefficient_permissible_error.path(),
                Distribution::STANDARD_RECTANGULAR,
            );
            out.0.push((material, source));
        }
        Ok(out)
    }

    /// Index of a material by name.
    pub(crate) fn find(&self, name: &Entry<crate::job::Words>) -> Result<usize, Error> {
        let wanted = name.words()?;
        self.0.iter().position(|(m, _)| m.name == wanted).ok_or_else(|| {
            let known: Vec<&str> = self.0.iter().map(|(m, _)| m.name.as_str()).collect();
            name.refuse(ErrorKind::UnknownName, format!("no such material; known: {}", known.join(", ")))
                .suggest(crate::job::nearest(wanted, &known))
        })
    }

    /// Refuses a stated temperature at which the law of a material does not hold, though nothing may be read there yet.
    pub(crate) fn check(&self, index: usize, t: &Given) -> Result<(), Error> {
        match self.0.get(index) {
            Some((material, _)) => material.check(t.value, &t.text, &t.path),
            None => Ok(()),
        }
    }

    pub(crate) fn growth(
        &self,
        calc: &mut Calc,
        index: usize,
        t: &Measured,
        field: &str,
    ) -> Result<Measured, Error> {
        match self.0.get(index) {
            Some((material, source)) => material.growth(calc, *source, t, field),
            None => Err(Error::new(ErrorKind::UnknownName, "", "no such material").at(field)),
        }
    }
}
