//! Built-in materials: published laws of expansion, for a part whose own data sheet is not at hand.
//!
#![doc = include_str!("../../docs/materials.md")]

use super::law::{Form, Law, Row as Line};
use crate::choice::choices;
use crate::error::{Error, ErrorKind};
use crate::job::document::Confidence;
use crate::job::nearest;
use crate::size::REFERENCE_TEMPERATURE_C;
use schemars::JsonSchema;
use serde::Serialize;

choices! {
    /// What the coefficients of a row are.
    Coefficients {
        /// Means from 20 C to each temperature.
        Mean = "mean",
        /// Instantaneous at each temperature.
        Instantaneous = "instantaneous",
    }
}

/// A coefficient at, or up to, a temperature.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Cell {
    /// Temperature in C.
    pub temperature_c: f64,
    /// Coefficient per kelvin.
    pub coefficient_per_k: f64,
}

/// A built-in material.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Row {
    /// Name, as a document refers to it.
    pub name: &'static str,
    /// What the coefficients are.
    pub coefficients: Coefficients,
    /// Lowest temperature the law holds at, in C.
    pub from_c: f64,
    /// Highest temperature the law holds at, in C.
    pub to_c: f64,
    /// The cells, in rising order of temperature; the first is continued down to `from_c`.
    pub cells: &'static [Cell],
    /// Half-width of the error of the coefficient, per kelvin.
    pub permissible_error_per_k: f64,
    /// Where the row comes from.
    pub source: &'static str,
    /// How far it can be trusted.
    pub confidence: Confidence,
}

const ALUMINIUM: f64 = 1.5e-6;
const IRON: f64 = 1e-6;

/// Rows, one a line: name, half-width, confidence, cells of `[up to C, 1e-6 /K]`, source.
macro_rules! rows {
    ($($name:literal, $kind:ident, $from:literal to $to:literal, $error:expr, $confidence:ident,
        [$($t:literal: $a:literal),+], $source:literal;)+) => {
        /// Every built-in material: aluminium, iron, steel, bronze.
        pub const ALL: &[Row] = &[$(Row {
            name: $name,
            coefficients: Coefficients::$kind,
            from_c: $from,
            to_c: $to,
            cells: &[$(Cell { temperature_c: $t, coefficient_per_k: $a }),+],
            permissible_error_per_k: $error,
            source: $source,
            confidence: Confidence::$confidence,
        },)+];
    };
}

rows! {
    "gravity-cast AlSi12CuMgNi", Mean, 0.0 to 300.0, ALUMINIUM, Maker, [100.0: 20.0e-6, 200.0: 21.0e-6, 300.0: 22.0e-6],
        "material page of a maker of pistons, AlSi12CuMgNi: 19.5 to 20.5, 20.5 to 21.5, 21.5 to 22.5 for 20 C to 100 C, 200 C, 300 C; the middles";
    "wrought aluminium 4032", Mean, 0.0 to 300.0, ALUMINIUM, Unverified, [100.0: 19.4e-6, 200.0: 20.2e-6, 300.0: 21.0e-6],
        "to 100 C: table of expansion coefficients in the manual of a laser interferometer; to 200 C and 300 C: ASM Handbook 2, from memory";
    "wrought aluminium 2618", Mean, 0.0 to 300.0, ALUMINIUM, Unverified, [100.0: 22.3e-6, 200.0: 23.3e-6, 300.0: 24.2e-6],
        "ASM Handbook 2, from memory; low confidence beyond 100 C";
    "wrought aluminium 2218", Mean, 0.0 to 100.0, ALUMINIUM, Published, [100.0: 22.3e-6],
        "table of expansion coefficients in the manual of a laser interferometer, to 100 C";
    "cast aluminium-silicon 390", Mean, 0.0 to 100.0, ALUMINIUM, Unverified, [100.0: 19.0e-6],
        "390.0 and A390.0 to 100 C: sources disagree, 18 and 20, from memory 18.0 to 18.5; the middle, and the half-width covers them all";
    "cast aluminium 332", Mean, 0.0 to 300.0, ALUMINIUM, Unverified, [100.0: 20.6e-6, 300.0: 22.3e-6],
        "to 100 C: table of expansion coefficients in the manual of a laser interferometer, D132 20.5 and F132 20.7; to 300 C: from memory";
    "cast aluminium-silicon 336", Mean, 0.0 to 300.0, ALUMINIUM, Unverified, [100.0: 19.0e-6, 300.0: 20.9e-6],
        "to 100 C: table of expansion coefficients in the manual of a laser interferometer, A132; to 300 C: from memory";
    "cast aluminium 319", Mean, 0.0 to 300.0, ALUMINIUM, Unverified, [100.0: 21.5e-6, 300.0: 24.1e-6],
        "to 100 C: table of expansion coefficients in the manual of a laser interferometer; to 300 C: from memory";
    "cast aluminium 356", Mean, 0.0 to 300.0, ALUMINIUM, Unverified, [100.0: 21.5e-6, 300.0: 23.4e-6],
        "to 100 C: table of expansion coefficients in the manual of a laser interferometer, and Callister, Appendix B; to 300 C: from memory";
    "cast aluminium 242", Mean, 0.0 to 300.0, ALUMINIUM, Unverified, [100.0: 22.5e-6, 300.0: 24.5e-6],
        "to 100 C: table of expansion coefficients in the manual of a laser interferometer, 142; to 300 C: from memory";
    "aluminium alloys ASME TE-2 mean", Mean, 0.0 to 325.0, ALUMINIUM, Published,
        [20.0: 21.7e-6, 50.0: 22.6e-6, 75.0: 23.1e-6, 100.0: 23.4e-6, 125.0: 23.7e-6, 150.0: 23.9e-6, 175.0: 24.2e-6, 200.0: 24.4e-6,
            225.0: 24.7e-6, 250.0: 25.0e-6, 275.0: 25.2e-6, 300.0: 25.5e-6, 325.0: 25.6e-6],
        "ASME BPVC II-D, Table TE-2, aluminium alloys, column B, 20 C to 325 C; from a transcription";
    "aluminium alloys ASME TE-2 instantaneous", Instantaneous, 0.0 to 325.0, ALUMINIUM, Published,
        [20.0: 21.7e-6, 50.0: 23.3e-6, 75.0: 23.9e-6, 100.0: 24.3e-6, 125.0: 24.7e-6, 150.0: 25.2e-6, 175.0: 25.7e-6, 200.0: 26.4e-6,
            225.0: 27.0e-6, 250.0: 27.5e-6, 275.0: 27.7e-6, 300.0: 27.6e-6, 325.0: 27.1e-6],
        "ASME BPVC II-D, Table TE-2, aluminium alloys, column A, 20 C to 325 C; from a transcription";
    "grey cast iron", Mean, 0.0 to 400.0, IRON, Unverified, [100.0: 11.4e-6, 200.0: 11.7e-6, 400.0: 13.0e-6],
        "near room temperature: Callister, Table B.6, G1800 to G4000 (another table: 10.5); to 200 C: EN 1561, annex, from memory; to 400 C: from memory";
    "ductile iron 60-40-18", Mean, 0.0 to 400.0, IRON, Unverified, [100.0: 11.2e-6, 400.0: 12.5e-6],
        "near room temperature: Callister, Table B.6; to 400 C: from memory";
    "ductile iron 80-55-06", Mean, 0.0 to 100.0, IRON, Published, [100.0: 10.6e-6],
        "Callister, Table B.6, near room temperature";
    "austenitic cast iron type 1", Mean, 0.0 to 200.0, 1.5e-6, Unverified, [200.0: 18.4e-6],
        "ring carriers, to 200 C: from memory, 17.5 to 19.3; the middle; low confidence";
    "austenitic cast iron type D-2", Mean, 0.0 to 200.0, 1.5e-6, Unverified, [200.0: 18.7e-6],
        "to 200 C: from memory; low confidence";
    "steel 4140", Mean, 0.0 to 200.0, IRON, Unverified, [100.0: 12.3e-6, 200.0: 12.7e-6],
        "to 100 C: Callister, Table B.6; to 200 C: from memory";
    "steel 52100", Mean, 0.0 to 280.0, IRON, Unverified, [100.0: 11.9e-6, 280.0: 12.6e-6],
        "from memory; low confidence";
    "bearing bronze C93200", Mean, 0.0 to 100.0, IRON, Published, [100.0: 18.0e-6],
        "Callister, Table B.6, near room temperature";
    "phosphor bronze C51000", Mean, 0.0 to 100.0, IRON, Unverified, [100.0: 17.8e-6],
        "from memory";
    "phosphor bronze C54400", Mean, 0.0 to 300.0, 1.5e-6, Unverified, [300.0: 17.3e-6],
        "to 300 C: from memory";
}

/// The row of a name.
///
/// # Errors
/// [`ErrorKind::UnknownName`], with the nearest name where one is near; the field is `name`.
///
/// ```
/// use gaugepoint::growth::library;
/// use gaugepoint::quantity::Temperature;
///
/// let row = library::named("gravity-cast AlSi12CuMgNi")?;
/// // 86 mm from 20 C to 150 C by the mean 20.5e-6: 0.229 mm
/// assert!((86.0 * row.law().strain(Temperature::from_celsius(150.0))? - 0.2292).abs() < 1e-4);
/// assert_eq!(library::named("wrought aluminum 4032").unwrap_err().did_you_mean(), Some("wrought aluminium 4032"));
/// # Ok::<(), gaugepoint::Error>(())
/// ```
pub fn named(name: &str) -> Result<&'static Row, Error> {
    ALL.iter().find(|row| row.name == name).ok_or_else(|| {
        let known: Vec<&str> = ALL.iter().map(|row| row.name).collect();
        let reason = format!("no built-in material has this name; known: {}", known.join("; "));
        Error::new(ErrorKind::UnknownName, name, reason).suggest(nearest(name, &known)).at("name")
    })
}

/// The table as JSON: a list of its rows.
#[must_use]
pub fn to_json() -> String {
    // numbers and texts: nothing in it can fail to be written
    serde_json::to_string(ALL).unwrap_or_default()
}

impl Row {
    /// Its law of expansion.
    #[must_use]
    pub fn law(&self) -> Law {
        Law(self.stated(|value, _| value))
    }

    /// Its law over numbers of another kind, made from each value and its unit.
    pub(super) fn stated<X>(&self, number: impl Fn(f64, &'static str) -> X) -> Form<X> {
        let line = |t, a| Line { temperature: number(t, "C"), value: number(a, "1/K") };
        let first = self.cells.first();
        // continued down to where it holds from
        let start =
            first.filter(|c| c.temperature_c > self.from_c).map(|c| line(self.from_c, c.coefficient_per_k));
        let cells = self.cells.iter().map(|c| line(c.temperature_c, c.coefficient_per_k));
        let rows = start.into_iter().chain(cells).collect();
        match self.coefficients {
            Coefficients::Mean => Form::MeanTable { base: number(REFERENCE_TEMPERATURE_C, "C"), rows },
            Coefficients::Instantaneous => Form::InstantaneousTable { rows },
        }
    }

    /// The row in words, as a report tells it.
    pub(crate) fn words(&self) -> String {
        format!(
            "built-in \"{}\", {} coefficients within {:e} /K, {} C to {} C; {}; {}",
            self.name,
            self.coefficients.word(),
            self.permissible_error_per_k,
            self.from_c,
            self.to_c,
            self.source,
            self.confidence.word()
        )
    }
}
