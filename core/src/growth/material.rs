//! The materials of a document: each a [law](Law) with the error of its coefficient as a source of uncertainty.

use super::law::{Desk, Form, Law, POLYNOMIAL_COEFFICIENT, Row};
use super::library;
use crate::bounds::{self, Verdict};
use crate::calc::{Calc, Figure, Formula, Measured, SourceId, formula};
use crate::error::{Error, ErrorKind};
use crate::job::document::{self as doc, Confidence};
use crate::job::{Entry, Given, Pure, Warning, Words, check_length};
use crate::measurement::Stated;
use crate::measurement::distribution::Distribution;
use crate::quantity::{Expansion, Temperature};
use crate::size::REFERENCE_TEMPERATURE_C;
use core::fmt;

formula! {
    /// What the error `a` of an instantaneous coefficient leaves uncertain in the strain.
    LawError: u ["1"] = (a, t) => a * (t - 20.0); source "integral of a constant error of the coefficient from 20 C";
    /// A length at another temperature.
    Grown: size_hot ["mm"] = (size, eps) => size * (1.0 + eps); source "definition of strain";
}

/// A material with its law of expansion.
#[derive(Debug, Clone)]
pub struct Material {
    name: String,
    form: Form<Stated>,
    law: Law,
    half_width: Stated,
}

impl Material {
    /// Reads a material from a document, with its ranges checked.
    ///
    /// # Errors
    /// When a number is refused, rows are not in rising order, the law does not reach 20 C, or a built-in one is not known.
    pub fn from_document(material: &doc::Material, warnings: &mut Vec<Warning>) -> Result<Self, Error> {
        let name = material.name.words()?.to_owned();
        if let doc::Law::BuiltIn(built_in) = &material.law {
            return Self::built_in(name, material, built_in, warnings);
        }
        let (form, list) = read(&material.law, warnings)?;
        let field = format!("{}/law", material.name.parent());
        let law = form.checked(&field, &format!("{field}/{list}"), &format!(" of {name}"))?;
        warn_of_odd_iron(&law, &format!("{field}/{list}"), warnings);
        let missing = |field: &str| missing(material, field);
        let error = material.coefficient_permissible_error.as_ref();
        let error = error.ok_or_else(|| missing("coefficient_permissible_error"))?;
        let half_width = Stated::Typed(error.read(&bounds::EXPANSION_ERROR, warnings)?);
        material.source.as_ref().ok_or_else(|| missing("source"))?.words()?;
        material.confidence.ok_or_else(|| missing("confidence"))?;
        Ok(Material { name, form: form.map(|given| Stated::Typed(given.clone())), law, half_width })
    }

    /// A material whose law, error, source and confidence stand in the built-in table. The report names the row in a warning.
    fn built_in(
        name: String,
        material: &doc::Material,
        built_in: &Entry<Words>,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        let reason = "the built-in material says it already";
        if let Some(typed) = &material.coefficient_permissible_error {
            return Err(typed.refuse(ErrorKind::Contradiction, reason));
        }
        if let Some(typed) = &material.source {
            return Err(typed.refuse(ErrorKind::Contradiction, reason));
        }
        if let Some(typed) = material.confidence {
            let field = format!("{}/confidence", material.name.parent());
            return Err(Error::new(ErrorKind::Contradiction, typed.word(), reason).at(&field));
        }
        let row = library::named(built_in.words()?).map_err(|e| e.moved(built_in.path().to_owned()))?;
        let path = built_in.path();
        warnings.push(Warning {
            kind: if row.confidence == Confidence::Unverified {
                "unverified_material"
            } else {
                "built_in_material"
            }
            .to_owned(),
            path: path.to_owned(),
            text: format!("{name}: {}", row.words()),
        });
        let cited = |value, unit| Stated::Cited { value, unit, source: row.source, path: path.to_owned() };
        Ok(Material {
            name,
            form: row.stated(cited),
            law: row.law(),
            half_width: cited(row.permissible_error_per_k, "1/K"),
        })
    }

    /// Its name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its law of expansion.
    #[must_use]
    pub fn law(&self) -> &Law {
        &self.law
    }

    /// Refuses a temperature at which the law does not hold.
    fn check(&self, celsius: f64, typed: &str, field: &str) -> Result<(), Error> {
        self.form.check_at(celsius, typed, &format!(" of {}", self.name)).map_err(|e| e.at(field))
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
        let standard = self.half_width.half_width(calc);
        Ok(self.form.growth(&mut Uncertain { calc, coefficient, standard }, t))
    }
}

fn missing(material: &doc::Material, field: &str) -> Error {
    let reason = "this field is required, or a built-in law in its place";
    Error::new(ErrorKind::MissingField, field, reason).at(&format!("{}/{field}", material.name.parent()))
}

/// The regression gives some irons less than handbooks print for any.
fn warn_of_odd_iron(law: &Law, field: &str, warnings: &mut Vec<Warning>) {
    if !matches!(law.0, Form::GraphiteIron { .. }) {
        return;
    }
    let a = law.slope_at(REFERENCE_TEMPERATURE_C);
    if bounds::EXPANSION.judge(a) == Verdict::Odd {
        let usual = bounds::EXPANSION.usual_text();
        warnings.push(Warning {
            kind: "odd_value".to_owned(),
            path: field.to_owned(),
            text: format!(
                "the regression gives {a:.2e} /K at 20 C, which is odd for the {}: usual is {usual}",
                bounds::EXPANSION.label
            ),
        });
    }
}

/// The law as it is typed, and where its list stands below it.
fn read(law: &doc::Law, warnings: &mut Vec<Warning>) -> Result<(Form<Given>, &'static str), Error> {
    Ok(match law {
        doc::Law::MeanCoefficient(m) => {
            let form = Form::MeanCoefficient {
                base: m.base.read(&bounds::LAW_TEMPERATURE, warnings)?,
                value: m.value.read(&bounds::EXPANSION, warnings)?,
                range: range(&m.from, &m.to, warnings)?,
            };
            (form, "mean_coefficient")
        }
        doc::Law::MeanTable(m) => {
            check_length(&m.rows, |r| &r.to)?;
            let form = Form::MeanTable {
                base: m.base.read(&bounds::LAW_TEMPERATURE, warnings)?,
                rows: rows(m.rows.iter().map(|r| (&r.to, &r.value)), warnings)?,
            };
            (form, "mean_table/rows")
        }
        doc::Law::InstantaneousTable(m) => {
            check_length(&m.rows, |r| &r.at)?;
            let rows = rows(m.rows.iter().map(|r| (&r.at, &r.value)), warnings)?;
            (Form::InstantaneousTable { rows }, "instantaneous_table/rows")
        }
        doc::Law::InstantaneousPolynomial(m) => {
            let form = Form::InstantaneousPolynomial {
                coefficients: coefficients(&m.kelvin_coefficients, warnings)?,
                range: range(&m.from, &m.to, warnings)?,
            };
            (form, "instantaneous_polynomial/kelvin_coefficients")
        }
        doc::Law::StrainPolynomial(m) => {
            let form = Form::StrainPolynomial {
                coefficients: coefficients(&m.kelvin_coefficients, warnings)?,
                range: range(&m.from, &m.to, warnings)?,
            };
            (form, "strain_polynomial/kelvin_coefficients")
        }
        doc::Law::GraphiteIron(iron) => {
            let form = Form::GraphiteIron {
                nodularity: iron.nodularity_percent.read(&bounds::NODULARITY, warnings)?,
                graphite: iron.graphite_percent.read(&bounds::GRAPHITE, warnings)?,
                pearlite_to_ferrite: iron.pearlite_to_ferrite.read(&bounds::PEARLITE_TO_FERRITE, warnings)?,
            };
            (form, "graphite_iron")
        }
        // it was taken from the table before
        doc::Law::BuiltIn(name) => return Err(name.refuse(ErrorKind::UnknownName, "no typed law")),
    })
}

fn range(
    from: &Entry<Temperature>,
    to: &Entry<Temperature>,
    warnings: &mut Vec<Warning>,
) -> Result<[Given; 2], Error> {
    Ok([from.read(&bounds::LAW_TEMPERATURE, warnings)?, to.read(&bounds::LAW_TEMPERATURE, warnings)?])
}

fn rows<'d>(
    entries: impl Iterator<Item = (&'d Entry<Temperature>, &'d Entry<Expansion>)>,
    warnings: &mut Vec<Warning>,
) -> Result<Vec<Row<Given>>, Error> {
    let mut out = Vec::new();
    for (temperature, value) in entries {
        out.push(Row {
            temperature: temperature.read(&bounds::LAW_TEMPERATURE, warnings)?,
            value: value.read(&bounds::EXPANSION, warnings)?,
        });
    }
    Ok(out)
}

fn coefficients(entries: &[Entry<Pure>], warnings: &mut Vec<Warning>) -> Result<Vec<Given>, Error> {
    check_length(entries, |c| c)?;
    entries.iter().map(|c| c.read(&POLYNOMIAL_COEFFICIENT, warnings)).collect()
}

/// The laws with the error of the coefficient, and in the working.
struct Uncertain<'c> {
    calc: &'c mut Calc,
    coefficient: SourceId,
    standard: Figure,
}

impl Desk<Stated> for Uncertain<'_> {
    type Value = Measured;
    fn number(&self, value: &Measured) -> f64 {
        value.value()
    }
    fn stated(&mut self, symbol: &str, stated: &Stated) -> Measured {
        stated.figure(self.calc, symbol).into()
    }
    fn constant(
        &mut self,
        symbol: fmt::Arguments<'_>,
        value: f64,
        unit: &'static str,
        source: &str,
    ) -> Measured {
        self.calc.constant(&symbol.to_string(), value, unit, source).into()
    }
    fn apply<F: Formula<N>, const N: usize>(&mut self, formula: F, arguments: [&Measured; N]) -> Measured {
        self.calc.apply(formula, arguments)
    }
    fn uncertain(&mut self, coefficient: Measured) -> Measured {
        self.calc.add_source(&coefficient, self.coefficient, self.standard)
    }
    fn integrated(&mut self, eps: Measured, t: &Measured) -> Measured {
        let error = self.calc.figure(LawError, [self.standard, t.figure]);
        self.calc.add_source(&eps, self.coefficient, error)
    }
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
            let source = calc.source(name, material.half_width.path(), Distribution::STANDARD_RECTANGULAR);
            out.0.push((material, source));
        }
        Ok(out)
    }

    /// Index of a material by name.
    pub(crate) fn find(&self, name: &Entry<Words>) -> Result<usize, Error> {
        let wanted = name.words()?;
        self.0.iter().position(|(m, _)| m.name == wanted).ok_or_else(|| {
            let known: Vec<&str> = self.0.iter().map(|(m, _)| m.name.as_str()).collect();
            name.refuse(ErrorKind::UnknownName, format!("no such material; known: {}", known.join(", ")))
                .suggest(crate::job::nearest(wanted, &known))
        })
    }

    /// The law of a material, without its uncertainty.
    pub(crate) fn law(&self, index: usize) -> Result<&Law, Error> {
        let unknown = || Error::new(ErrorKind::UnknownName, "", "no such material");
        self.0.get(index).map(|(material, _)| material.law()).ok_or_else(unknown)
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
