use super::*;
use crate::calc::{Calc, Measured};
use crate::job::document as doc;
use crate::measurement::distribution::Distribution;
use crate::quantity::Temperature;

const LAWS: &[&str] = &[
    r#"{"mean_coefficient": {"base": "0 C", "value": "20e-6 /K", "from": "-20 C", "to": "300 C"}}"#,
    r#"{"mean_table": {"base": "25 C", "rows": [{"to": "-40 C", "value": "18e-6 /K"}, {"to": "0 C", "value": "19e-6 /K"},
        {"to": "100 C", "value": "20.5e-6 /K"}, {"to": "300 C", "value": "22e-6 /K"}]}}"#,
    r#"{"mean_table": {"base": "20 C", "rows": [{"to": "20 C", "value": "20e-6 /K"}]}}"#,
    r#"{"instantaneous_table": {"rows": [{"at": "-40 C", "value": "19e-6 /K"}, {"at": "0 C", "value": "20e-6 /K"},
        {"at": "50 C", "value": "23e-6 /K"}, {"at": "200 C", "value": "26.4e-6 /K"}]}}"#,
    r#"{"instantaneous_polynomial": {"kelvin_coefficients": ["0.8651e-6", "2.3569e-8", "-4.2277e-11", "2.5408e-14"],
        "from": "19 C", "to": "390 C"}}"#,
    r#"{"strain_polynomial": {"kelvin_coefficients": ["-4.1277e-3", "-3.0389e-6", "8.7696e-8", "-9.9821e-11"],
        "from": "-253 C", "to": "26 C"}}"#,
    r#"{"graphite_iron": {"nodularity_percent": "42.5", "graphite_percent": "6.5", "pearlite_to_ferrite": "0.9"}}"#,
];

fn material(law: &str) -> Material {
    let json = format!(
        r#"{{"name": "m", "law": {law}, "coefficient_permissible_error": "0.5e-6 /K", "source": "invented", "confidence": "unverified"}}"#
    );
    let entry: doc::Material = serde_json::from_str(&json).unwrap();
    Material::from_document(&entry, &mut Vec::new()).unwrap()
}

/// Temperatures over the range of a law: its ends, its kinks, and between.
fn places(law: &Law) -> Vec<f64> {
    let (low, high) = law.range();
    let (low, high) = (low.celsius(), high.celsius());
    let mut out: Vec<f64> = (0..=40).map(|k| low + (high - low) * f64::from(k) / 40.0).collect();
    out.extend(law.kinks());
    out.push(20.0);
    out
}

/// The same text computes both; the calculation has the uncertainty, and the working, besides.
#[test]
fn the_plain_path_gives_the_bits_of_the_calculation() {
    for text in LAWS {
        let material = material(text);
        for t in places(material.law()) {
            for working in [false, true] {
                let mut calc = Calc::new(working);
                let coefficient =
                    calc.source("a".to_owned(), "/half_width", Distribution::STANDARD_RECTANGULAR);
                let at: Measured = calc.input("t", t, "C", "/t", "").into();
                let eps = material.growth(&mut calc, coefficient, &at, "/t").unwrap().value();
                let plain = material.law().strain_at(t);
                assert_eq!(plain.to_bits(), eps.to_bits(), "{text} at {t} C: {plain} against {eps}");
            }
        }
    }
}

/// The derivatives against differences of the strain within a piece, which for a parabola have no error but that of rounding.
#[test]
fn slope_and_curvature_against_differences() {
    for text in &LAWS[..2] {
        let law = material(text).law().clone();
        let kinks: Vec<f64> = law.kinks().collect();
        for t in places(&law) {
            let near = |k: f64| (k - t).abs() < 0.5;
            let ends = [law.range().0.celsius(), law.range().1.celsius()];
            if kinks.iter().chain(&ends).any(|k| near(*k)) {
                continue;
            }
            let h = 0.25;
            let (low, here, high) = (law.strain_at(t - h), law.strain_at(t), law.strain_at(t + h));
            assert!((law.slope_at(t) - (high - low) / (2.0 * h)).abs() < 1e-16, "{text} at {t}");
            assert!(
                (law.curvature_at(t) - (high - 2.0 * here + low) / (h * h)).abs() < 1e-16,
                "{text} at {t}"
            );
        }
    }
}

/// The slope of an integral is what was integrated, at every row too.
#[test]
fn the_slope_of_an_integrated_table_is_the_table() {
    let law = material(LAWS[3]).law().clone();
    let rows =
        [(-40.0, 19e-6), (-20.0, 19.5e-6), (0.0, 20e-6), (20.0, 21.2e-6), (50.0, 23e-6), (200.0, 26.4e-6)];
    for (t, a) in rows {
        let at = Temperature::from_celsius(t);
        let ours = law.instantaneous(at).unwrap().per_kelvin();
        assert!((ours - a).abs() < 1e-20, "{t} C: {ours} against {a}");
    }
    assert_eq!(law.kinks().collect::<Vec<_>>(), [0.0, 50.0]);
    // second differences of the table, of the piece toward 20 C
    for (t, bend) in [(-40.0, 2.5e-8), (0.0, 6e-8), (20.0, 6e-8), (50.0, 6e-8), (200.0, 3.4e-6 / 150.0)] {
        assert!((law.curvature_at(t) - bend).abs() < 1e-22, "{t} C: {}", law.curvature_at(t));
    }
}

#[test]
fn the_plain_path_has_nothing_outside_the_range() {
    let law = material(LAWS[0]).law().clone();
    for t in [-20.1, 300.1, f64::NAN, f64::INFINITY] {
        assert!(law.strain_at(t).is_nan() && law.slope_at(t).is_nan() && law.curvature_at(t).is_nan(), "{t}");
    }
}
