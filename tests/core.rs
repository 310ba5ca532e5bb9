//! Checks of the core against values from outside, each with its source beside it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]
#![allow(clippy::disallowed_methods, reason = "the tests' own arithmetic is compared with a tolerance")]

use gaugepoint::decision::{Conformity, Rule, decide_mm};
use gaugepoint::flat::Column;
use gaugepoint::growth::{Law, Material, MeanCoefficient};
use gaugepoint::job::document;
use gaugepoint::quantity::{Temperature, in_mm, parse_length};
use gaugepoint::{ErrorKind, flat};
use gaugepoint_tests::rows;

/// Bits are compared in the vectors of every host: a flat function called by name.
fn call(function: &str, x: &[f64]) -> Result<f64, gaugepoint::Error> {
    flat::TABLE.iter().find(|f| f.name == function).expect(function).call(x)
}

#[test]
fn every_flat_function_has_rows() {
    let rows = rows("tests/vectors/flat.csv");
    for function in flat::TABLE {
        let has = |refused: bool| {
            rows.iter().any(|row| row[1] == function.name && row[3].starts_with("error:") == refused)
        };
        assert!(has(false) && has(true), "{}", function.name);
    }
}

/// To the bit, NaN as well.
fn all(out: &[f64], value: f64) -> bool {
    out.iter().all(|x| x.to_bits() == value.to_bits())
}

/// Columns have the bits of one row; a refused row is NaN with its status, or refuses all and nothing is written.
#[test]
fn flat_columns() {
    for row in rows("tests/vectors/flat.csv") {
        let function = flat::TABLE.iter().find(|f| f.name == row[1]).expect("in the table");
        let x: Vec<f64> = row[2].split(';').map(|a| a.parse().expect("a number")).collect();
        let one = function.call(&x);
        let spread: Vec<[f64; 5]> = x.iter().map(|x| [*x; 5]).collect();
        let columns: Vec<Column<'_>> = spread
            .iter()
            .zip([2, 0, 1].into_iter().cycle())
            .map(|(values, stride)| Column { values, stride })
            .collect();
        let (mut out, mut status) = ([7.0; 3], [7; 3]);
        function.each(&columns, &mut out, Some(&mut status)).expect("with statuses");
        let expected = one.as_ref().map_or_else(|e| e.kind().code(), |_| 0);
        assert_eq!(status, [expected; 3], "{}", row[0]);
        let value = one.as_ref().map_or(f64::NAN, |value| *value);
        assert!(all(&out, value), "{}: {out:?}", row[0]);
        let mut out = [7.0; 3];
        match (function.each(&columns, &mut out, None), one) {
            (Ok(()), Ok(value)) => assert!(all(&out, value), "{}: {out:?}", row[0]),
            (Err(error), Err(one)) => {
                assert_eq!(
                    (error.kind(), error.field()),
                    (one.kind(), format!("{}/0", one.field()).as_str())
                );
                assert!(all(&out, 7.0), "{}: {out:?}", row[0]);
            }
            other => panic!("{}: {other:?}", row[0]),
        }
    }
}

#[test]
fn flat_columns_that_are_too_short_are_refused() {
    let function = &flat::row::bench_clearance_mm;
    let column = |values, stride| Column { values, stride };
    let (bores, piston) = ([86.1, 86.2, 3.4], [86.0]);
    let field = |columns: &[Column<'_>], status: Option<&mut [i32]>| {
        let mut out = [7.0; 3];
        let error = function.each(columns, &mut out, status).expect_err("refused");
        assert!(all(&out, 7.0), "{out:?}");
        error.field().to_owned()
    };
    assert_eq!(field(&[column(&bores, 1)], None), "columns");
    assert_eq!(field(&[column(&bores, 2), column(&piston, 0)], None), "bore_mm");
    assert_eq!(field(&[column(&bores, usize::MAX), column(&piston, 0)], None), "bore_mm");
    assert_eq!(field(&[column(&bores, 1), column(&[], 0)], None), "piston_mm");
    assert_eq!(field(&[column(&bores, 1), column(&piston, 0)], Some(&mut [0; 2])), "status");
    assert_eq!(field(&[column(&bores, 1), column(&piston, 0)], None), "bore_mm/2");
    assert_eq!(function.call(&[86.0]).expect_err("one of two").field(), "values");
    function.each(&[column(&[], 1), column(&[], 0)], &mut [], None).expect("no rows");
}

#[test]
fn flat_vectors() {
    let mut refused = 0;
    for row in rows("tests/vectors/flat.csv") {
        let [id, function, arguments, expected, tolerance, source] = row.as_slice() else {
            panic!("{row:?}")
        };
        assert!(!source.is_empty(), "{id} names no source");
        let x: Vec<f64> = arguments.split(';').map(|a| a.parse().expect("a number")).collect();
        let result = call(function, &x);
        if let Some(kind) = expected.strip_prefix("error:") {
            let error = result.expect_err(id);
            assert_eq!(error.kind().name(), kind, "{id}");
            assert!(!error.field().is_empty() && !error.reason().is_empty(), "{id}: {error}");
            refused += 1;
            continue;
        }
        let (value, expected) = (result.expect(id), expected.parse::<f64>().expect("a number"));
        assert!(
            (value - expected).abs() <= tolerance.parse().expect("a number"),
            "{id}: {value} against {expected}"
        );
    }
    assert!(refused > 5);
}

/// Special functions against mpmath at 40 digits.
#[test]
fn special_functions() {
    use gaugepoint::special as s;
    let mut wrong = Vec::new();
    for row in rows("tests/vectors/special.csv") {
        let [function, arguments, expected, tolerance] = row.as_slice() else { panic!("{row:?}") };
        let x: Vec<f64> = arguments.split(';').map(|a| a.parse().expect("a number")).collect();
        let ours = match (function.as_str(), x.as_slice()) {
            ("normal_cdf", &[x]) => s::normal_cdf(x),
            ("normal_quantile", &[p]) => s::normal_quantile(p),
            ("gamma_p", &[a, x]) => s::gamma_p(a, x),
            ("gamma_q", &[a, x]) => s::gamma_q(a, x),
            ("beta_i", &[a, b, x]) => s::beta_i(a, b, x),
            ("t_cdf", &[t, n]) => s::t_cdf(t, n),
            ("t_quantile", &[p, n]) => s::t_quantile(p, n),
            ("t_factor", &[k, n]) => s::t_factor(k, n),
            ("f_cdf", &[f, m, n]) => s::f_cdf(f, m, n),
            ("f_upper", &[f, m, n]) => s::f_upper(f, m, n),
            ("f_quantile", &[p, m, n]) => s::f_quantile(p, m, n),
            ("chi2_quantile", &[p, n]) => s::chi2_quantile(p, n),
            _ => panic!("{row:?}"),
        };
        let (expected, tolerance): (f64, f64) =
            (expected.parse().expect("a number"), tolerance.parse().expect("a number"));
        let error = ((ours - expected) / expected).abs();
        if error.is_nan() || error > tolerance {
            wrong.push(format!("{function}({arguments}) = {ours:e}, expected {expected:e}: {error:e}"));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    // JCGM 100:2008 Table G.2, 16 degrees of freedom
    for (coverage, k) in [(0.95, 2.12), (0.9545, 2.17), (0.99, 2.92)] {
        assert!((s::coverage_factor(coverage, 16.0) - k).abs() < 0.005, "{coverage}");
    }
    // the same table at 95.45 %: with infinite degrees of freedom exactly 2; 2.17 with 16, from memory 2.87 with 4 and 13.97 with 1
    assert_eq!(s::t_factor(2.0, f64::INFINITY).to_bits(), 2.0_f64.to_bits());
    for (dof, k) in [(1.0, 13.97), (4.0, 2.87), (16.0, 2.17)] {
        assert!((s::t_factor(2.0, dof) - k).abs() < 0.005, "{dof}: {}", s::t_factor(2.0, dof));
    }
    for wrong in [
        s::normal_quantile(0.0),
        s::t_quantile(0.5, -1.0),
        s::gamma_p(0.0, 1.0),
        s::beta_i(1.0, 1.0, 1.5),
        s::f_quantile(1.0, 2.0, 2.0),
    ] {
        assert!(wrong.is_nan());
    }
}

/// Expansion of NIST SRM 731 (borosilicate glass) from its certificate polynomial: an instantaneous coefficient in 1e-6/K,
/// 293 K to 640 K, integrated. Source: the certificate as tabulated in windover/SRM731 (coefficient and expansion columns).
#[test]
fn instantaneous_polynomial_against_nist_srm_731() {
    let glass = material(
        r#"{"instantaneous_polynomial": {"kelvin_coefficients": ["0.8651e-6", "2.3569e-8", "-4.2277e-11", "2.5408e-14"],
            "from": "19 C", "to": "390 C"}}"#,
    );
    let strain = |kelvin: f64| glass.strain(Temperature::from_celsius(kelvin - 273.15)).expect("in range");
    let coefficient = |kelvin: f64| (strain(kelvin + 0.05) - strain(kelvin - 0.05)) / 0.1;
    let table = [
        (300.0, 4.82, 34.0),
        (320.0, 4.91, 131.0),
        (340.0, 4.99, 230.0),
        (360.0, 5.06, 330.0),
        (380.0, 5.11, 432.0),
        (400.0, 5.15, 535.0),
        (420.0, 5.19, 638.0),
        (440.0, 5.21, 742.0),
        (460.0, 5.23, 847.0),
        (480.0, 5.25, 952.0),
        (500.0, 5.26, 1057.0),
        (520.0, 5.26, 1162.0),
        (540.0, 5.27, 1267.0),
        (560.0, 5.27, 1372.0),
        (580.0, 5.27, 1478.0),
        (600.0, 5.27, 1583.0),
        (620.0, 5.28, 1689.0),
        (640.0, 5.29, 1795.0),
    ];
    for (kelvin, alpha, expansion) in table {
        let ours = (strain(kelvin) - strain(293.0)) / (1.0 + strain(293.0)) * 1e6;
        assert!((ours - expansion).abs() <= 0.5, "{kelvin} K: {ours} against {expansion}");
        let ours = coefficient(kelvin) * 1e6;
        assert!((ours - alpha).abs() <= 0.0051, "{kelvin} K: {ours} against {alpha}");
    }
}

/// Aluminium alloys, ASME BPVC II-D Table TE-2, as in seamplex/feenox examples/asme-expansion-table.dat: temperature in C,
/// A instantaneous and B mean from 20 C in 1e-6/C, C linear expansion from 20 C in mm/m.
const TE_2: [(f64, f64, f64, f64); 13] = [
    (20.0, 21.7, 21.7, 0.0),
    (50.0, 23.3, 22.6, 0.7),
    (75.0, 23.9, 23.1, 1.3),
    (100.0, 24.3, 23.4, 1.9),
    (125.0, 24.7, 23.7, 2.5),
    (150.0, 25.2, 23.9, 3.1),
    (175.0, 25.7, 24.2, 3.7),
    (200.0, 26.4, 24.4, 4.4),
    (225.0, 27.0, 24.7, 5.1),
    (250.0, 27.5, 25.0, 5.7),
    (275.0, 27.7, 25.2, 6.4),
    (300.0, 27.6, 25.5, 7.1),
    (325.0, 27.1, 25.6, 7.8),
];

#[test]
fn mean_and_instantaneous_tables_against_asme_te_2() {
    let rows = |place: &str, column: fn(&(f64, f64, f64, f64)) -> f64| {
        let row = |r: &(f64, f64, f64, f64)| {
            format!(r#"{{"{place}": "{} C", "value": "{}e-6 /K"}}"#, r.0, column(r))
        };
        TE_2.iter().map(row).collect::<Vec<_>>().join(", ")
    };
    let instantaneous =
        material(&format!(r#"{{"instantaneous_table": {{"rows": [{}]}}}}"#, rows("at", |r| r.1)));
    let mean =
        material(&format!(r#"{{"mean_table": {{"base": "20 C", "rows": [{}]}}}}"#, rows("to", |r| r.2)));
    for (t, _, b, c) in TE_2 {
        let at = Temperature::from_celsius(t);
        let (from_a, from_b) =
            (instantaneous.strain(at).expect("in range"), mean.strain(at).expect("in range"));
        // C is printed to 0.1 mm/m and B to 0.1e-6
        assert!((from_b * 1000.0 - c).abs() <= 0.06, "{t} C: {from_b}");
        if t > 20.0 {
            // straight lines between the rows of A; at 50 C the mean of 21.7 and 23.3 is 0.1 from the table, exactly
            let mean_of_a = from_a / (t - 20.0) * 1e6;
            assert!((mean_of_a - b).abs() <= 0.1 + 1e-9, "{t} C: {mean_of_a} against {b}");
        }
    }
    // taking A for B at 200 C on an 86 mm part over 180 K is wrong by 0.031 mm
    let wrong = 86.0 * (26.4e-6 * 180.0 - mean.strain(Temperature::from_celsius(200.0)).expect("in range"));
    assert!((wrong - 0.031).abs() < 5e-5, "{wrong}");
}

/// Aluminium 6061-T6 by the cryogenic polynomial of NIST, `(L - L293) / L293` over kelvin, 18 K to 300 K: it is a strain, not a coefficient.
/// Coefficients as in the package opensolids 0.2.3; the closed form (p(T) - p(293.15)) / (1 + p(293.15)) at 40 digits is
/// `tests/reference/growth.py`.
#[test]
fn strain_polynomial_of_cryogenic_aluminium() {
    const COEFFICIENTS: [f64; 4] = [-4.1277e-3, -3.0389e-6, 8.7696e-8, -9.9821e-11];
    let kelvin = |k: f64| Temperature::from_celsius(k - 273.15);
    let law = Law::strain_polynomial(&COEFFICIENTS, kelvin(25.0), kelvin(300.0)).expect("a law");
    let in_document = material(
        r#"{"strain_polynomial": {"kelvin_coefficients": ["-4.1277e-3", "-3.0389e-6", "8.7696e-8", "-9.9821e-11"],
            "from": "-248.15 C", "to": "26.85 C"}}"#,
    );
    let p293 = -4.1277e-3 + 293.15 * (-3.0389e-6 + 293.15 * (8.7696e-8 - 293.15 * 9.9821e-11));
    // (L - L293) / L293 in 1e-5, from the coefficients as published
    for (k, published) in
        [(77.0, -388.73), (150.0, -294.73), (200.0, -202.62), (250.0, -96.61), (300.0, 15.81)]
    {
        let eps = law.strain(kelvin(k)).expect("in range");
        let ours = (eps * (1.0 + p293) + p293) * 1e5;
        assert!((ours - published).abs() < 0.005, "{k} K: {ours} against {published}");
        // 300 K are 26.850000000000023 C, and the document says 26.85 C
        if k < 300.0 {
            let other = in_document.strain(kelvin(k)).expect("in range");
            assert_eq!(eps.to_bits(), other.to_bits(), "{k} K");
        }
    }
    let alpha = law.instantaneous(kelvin(293.0)).expect("in range").per_kelvin() * (1.0 + p293);
    assert!((alpha - 22.642e-6).abs() < 5e-10, "{alpha}");
    // as a coefficient the same numbers are impossible
    assert!(Law::instantaneous_polynomial(&COEFFICIENTS, kelvin(25.0), kelvin(300.0)).is_err());
}

/// One steel, AISI 1050, in three handbooks (NIST, Engineering Metrology Toolbox, Temperature Tutorial): means that differ because their ranges do.
/// A law keeps the range, and is refused outside it.
#[test]
fn a_mean_coefficient_keeps_its_range() {
    let c = Temperature::from_celsius;
    let means = [
        (21.0, 650.0, 14.6e-6),
        (20.0, 100.0, 11.5e-6),
        (25.0, 200.0, 13.5e-6),
        (0.0, 100.0, 11.2e-6),
        (0.0, 200.0, 12.1e-6),
        (0.0, 400.0, 13.5e-6),
    ];
    for (from, to, a) in means {
        let law = Law::mean_coefficient(c(from), MeanCoefficient::from_per_kelvin(a), c(0.0), c(to))
            .expect("a law");
        assert_eq!(law.range(), (c(0.0), c(to)));
        let same = law.mean(c(from), c(to)).expect("in range").per_kelvin();
        assert!((same - a).abs() < 1e-19, "{same} against {a}");
        let error = law.strain(c(to + 1.0)).expect_err("beyond the book");
        assert_eq!((error.kind(), error.field()), (ErrorKind::OutsideLaw, "temperature_c"));
        assert_eq!(error.accepted().map(|l| (l.lower, l.upper)), Some((0.0, to)));
    }
    // the same 180 K, by two of the books, on a pin of 22 mm: 1.4e-6 apart, 5.5 um
    let growth = |law: Law| 22.0 * law.strain(c(200.0)).expect("in range");
    let a = Law::mean_coefficient(c(25.0), MeanCoefficient::from_per_kelvin(13.5e-6), c(0.0), c(200.0))
        .expect("a law");
    let b = Law::mean_coefficient(c(0.0), MeanCoefficient::from_per_kelvin(12.1e-6), c(0.0), c(200.0))
        .expect("a law");
    assert!((growth(a) - growth(b) - 0.0055).abs() < 0.0002);
}

/// A mean coefficient states its base: the same part described from 0 C and from 20 C grows by the same amount.
/// Closed form: L(T) = L0 (1 + a T) gives a20 = a / (1 + 20 a) from 20 C.
#[test]
fn a_mean_from_another_base_is_the_same_part() {
    let from_0 = material(
        r#"{"mean_coefficient": {"base": "0 C", "value": "20e-6 /K", "from": "0 C", "to": "300 C"}}"#,
    );
    for t in [0.0, 20.0, 27.0, 150.0, 300.0] {
        let strain = from_0.strain(Temperature::from_celsius(t)).expect("in range");
        let closed = 20e-6 / (1.0 + 20.0 * 20e-6) * (t - 20.0);
        assert!((strain - closed).abs() < 1e-17, "{t} C: {strain} against {closed}");
    }
}

#[test]
fn no_law_is_used_outside_its_range() {
    let iron = material(
        r#"{"mean_coefficient": {"base": "20 C", "value": "11.4e-6 /K", "from": "0 C", "to": "200 C"}}"#,
    );
    for t in [-0.001, 200.001, f64::NAN, f64::INFINITY] {
        let error = iron.strain(Temperature::from_celsius(t)).expect_err("outside");
        assert_eq!(error.kind(), ErrorKind::OutsideLaw, "{t}");
    }
}

fn material(law: &str) -> Law {
    let json = format!(
        r#"{{"name": "m", "law": {law}, "coefficient_permissible_error": "0 /K", "source": "see the test", "confidence": "published"}}"#
    );
    let entry: document::Material = serde_json::from_str(&json).expect("a material");
    Material::from_document(&entry, &mut Vec::new()).expect("accepted").law().clone()
}

/// Bench check of the trade (common practice, no source): a skirt read 3.6991 in across the thrust faces, 9 mm above the
/// skirt edge, against limits of 3.694 in to 3.700 in conforms by simple acceptance. What each rule says of it with a
/// micrometer of 0.0001 in and with a caliper of 0.001 in:
#[test]
fn a_skirt_inside_its_limits_and_two_gauges() {
    let inch = |text: &str| in_mm(parse_length(text).expect("inches").quantity());
    let (skirt, low, high) = (inch("3.6991 in"), inch("3.694 in"), inch("3.700 in"));
    // half-widths: the micrometer is permitted 0.0002 in, the caliper 0.001 in; rectangular, JCGM 100 4.3.7; resolution with them
    let u = |permitted: &str, step: &str| (inch(permitted).powi(2) / 3.0 + inch(step).powi(2) / 12.0).sqrt();
    let (micrometer, caliper) = (u("0.0002 in", "0.0001 in"), u("0.001 in", "0.001 in"));
    let decide =
        |u: f64, rule: Rule| decide_mm(skirt, u, Some(low), Some(high), rule, 0.95).expect("judged").result;

    // 0.0009 in inside: the guard band 1.65 u is 0.000196 in with the micrometer and 0.00106 in with the caliper
    assert_eq!(decide(micrometer, Rule::SimpleAcceptance), Conformity::Conforms);
    assert_eq!(decide(caliper, Rule::SimpleAcceptance), Conformity::Conforms);
    assert_eq!(decide(micrometer, Rule::Proven), Conformity::Conforms);
    assert_eq!(decide(caliper, Rule::Proven), Conformity::NotProven);
    assert_eq!(decide(micrometer, Rule::ConformanceProbability), Conformity::Conforms);
    // 1.396 u inside: the normal distribution gives 0.9187, less than the 0.95 asked for
    let by_caliper =
        decide_mm(skirt, caliper, Some(low), Some(high), Rule::ConformanceProbability, 0.95).expect("judged");
    assert_eq!(by_caliper.result, Conformity::NotProven);
    assert!((by_caliper.probability_of_conformity.expect("given") - 0.9187).abs() < 5e-4);

    // a thou over the limit: refuted by the micrometer, open with the caliper
    let over = inch("3.7010 in");
    let decide =
        |u: f64, rule: Rule| decide_mm(over, u, Some(low), Some(high), rule, 0.95).expect("judged").result;
    assert_eq!(decide(micrometer, Rule::Proven), Conformity::DoesNotConform);
    assert_eq!(decide(caliper, Rule::Proven), Conformity::NotProven);
    assert_eq!(decide(caliper, Rule::SimpleAcceptance), Conformity::DoesNotConform);
}

/// JCGM 106:2012 examples of the probability of conformity (from memory, recomputed): a lower limit (container burst
/// pressure 509.7 with u 8.6 against 490: about 0.989) and two limits (viscosity 13.6 with u 1.8, 12.5 to 16.3: about 0.66).
#[test]
fn probability_of_conformity_against_jcgm_106() {
    let p = |x, u, low, high| {
        let decision = decide_mm(x, u, low, high, Rule::ConformanceProbability, 0.95).expect("judged");
        decision.probability_of_conformity.expect("given")
    };
    // a probability has no unit: the numbers are taken as um
    assert!((p(0.5097, 0.0086, Some(0.490), None) - 0.98900955).abs() < 1e-8);
    assert!((p(0.0136, 0.0018, Some(0.0125), Some(0.0163)) - 0.66262979).abs() < 1e-8);
    // JCGM 106 Table: probability against distance in standard uncertainties (from memory)
    for (z, expected) in [(0.8416, 0.80), (1.2816, 0.90), (1.6449, 0.95), (2.3263, 0.99), (3.0902, 0.999)] {
        assert!((p(-z, 1.0, None, Some(0.0)) - expected).abs() < 2e-5, "{z}");
    }
}

/// One-sided risk at exactly the guard band of 1.65 u: 4.947 % (ISO 14253-1:2017, default 95 %; the figure by the normal
/// distribution).
#[test]
fn the_guard_band_of_iso_14253() {
    let at = |x: f64| decide_mm(x, 0.001, None, Some(86.02), Rule::Proven, 0.95).expect("judged");
    let edge = at(86.02 - 0.00165);
    assert_eq!(edge.result, Conformity::Conforms);
    assert!((1.0 - edge.probability_of_conformity.expect("given") - 0.04947).abs() < 5e-6);
    assert_eq!(at(86.02 - 0.00164).result, Conformity::NotProven);
    assert_eq!(at(86.02 + 0.00164).result, Conformity::NotProven);
    assert_eq!(at(86.02 + 0.00166).result, Conformity::DoesNotConform);
}

/// The guard band of the editions of 1998 and 2013, `g = U` with k = 2: the risk at it is 2.275 % (normal distribution; JCGM 106:2012, 8.3.2,
/// multiplier 1).
#[test]
fn the_guard_band_of_the_expanded_uncertainty() {
    let at = |x: f64| decide_mm(x, 0.001, None, Some(86.02), Rule::ExpandedGuardBand, 0.0).expect("judged");
    let edge = at(86.018);
    assert_eq!(edge.result, Conformity::Conforms);
    assert!((1.0 - edge.probability_of_conformity.expect("given") - 0.022_750_13).abs() < 1e-8);
    assert_eq!((edge.guard_band_mm, edge.rejection_guard_band_mm), (Some(0.002), Some(0.002)));
    assert_eq!(at(86.0181).result, Conformity::NotProven);
    assert_eq!(at(86.0219).result, Conformity::NotProven);
    assert_eq!(at(86.0221).result, Conformity::DoesNotConform);
}

/// The N to 1 rule of ASME B89.7.3.1-2001 (from memory): simple acceptance when the tolerance is at least N times the uncertainty interval,
/// which is 2 U wide. By hand: 0.020 mm over 2 * 2 * 0.00125 mm is 4, over 2 * 2 * 0.0013 mm it is 3.846.
#[test]
fn simple_acceptance_by_a_ratio() {
    let rule = Rule::SimpleAcceptanceByRatio;
    let decide = |x: f64, u: f64, low, n: f64| decide_mm(x, u, low, Some(86.02), rule, n).expect("judged");
    let low = Some(86.0);
    let enough = decide(86.0199, 0.00125, low, 4.0);
    assert_eq!(enough.result, Conformity::Conforms, "{}", enough.reason);
    assert!((enough.uncertainty_ratio.expect("given") - 4.0).abs() < 1e-9);
    assert_eq!(decide(86.0201, 0.00125, low, 4.0).result, Conformity::DoesNotConform);
    let short = decide(86.01, 0.0013, low, 4.0);
    assert_eq!(short.result, Conformity::NotProven);
    assert!(short.reason.contains("3.84 times") && short.reason.contains("4 times"), "{}", short.reason);
    // with one limit there is no width; without an uncertainty every width is enough
    assert_eq!(decide(86.01, 0.0001, None, 4.0).result, Conformity::NotProven);
    assert_eq!(decide(86.01, 0.0, low, 4.0).result, Conformity::Conforms);
    for (n, kind) in
        [(0.95, ErrorKind::OutOfRange), (101.0, ErrorKind::OutOfRange), (f64::NAN, ErrorKind::NotFinite)]
    {
        let error = decide_mm(86.01, 0.001, low, Some(86.02), rule, n).expect_err("refused");
        assert_eq!((error.kind(), error.field()), (kind, "at_least"));
    }
}

/// Free growth against ten everyday pairs: our own arithmetic, not an outside source. Bore (mm), clearance on the bench (um),
/// piston (1e-6/K, C), bore (1e-6/K, C); growth of each and the free clearance when hot, to the micrometre.
#[test]
fn ten_everyday_pairs() {
    #[rustfmt::skip]
    let table = [
        (86.0, 35.0, 20.5, 120.0, 11.4, 110.0, 176, 88, -53),
        (86.0, 35.0, 16.0, 120.0, 11.4, 110.0, 138, 88, -14),
        (86.0, 35.0, 14.0, 120.0, 11.4, 110.0, 120, 88, 3),
        (86.0, 30.0, 20.5, 120.0, 19.0, 110.0, 176, 147, 1),
        (86.0, 35.0, 20.5, 120.0, 16.0, 110.0, 176, 124, -17),
        (101.6, 76.0, 20.0, 130.0, 11.4, 115.0, 224, 110, -37),
        (101.6, 114.0, 22.8, 130.0, 11.4, 115.0, 255, 110, -31),
        (130.0, 140.0, 20.5, 130.0, 11.4, 105.0, 293, 126, -27),
        (130.0, 100.0, 12.0, 130.0, 11.4, 105.0, 172, 126, 54),
        (82.0, 45.0, 12.0, 130.0, 20.0, 110.0, 108, 148, 84),
    ];
    for (d, cold, a_p, t_p, a_b, t_b, piston, bore, hot) in table {
        let hot_mm = flat::running_clearance_mm(d + cold / 1000.0, t_b, a_b * 1e-6, d, t_p, a_p * 1e-6)
            .expect("computed");
        let grown = |a: f64, t: f64| d * a * 1e-3 * (t - 20.0);
        for (ours, printed) in [(hot_mm * 1000.0, hot), (grown(a_p, t_p), piston), (grown(a_b, t_b), bore)] {
            assert!(
                (ours - f64::from(printed)).abs() <= 1.0,
                "{d} mm, {a_p} in {a_b}: {ours} against {printed}"
            );
        }
    }
}

/// Figures per kelvin that a fitter keeps in mind (arithmetic): an aluminium piston of 86 mm 1.8 um, 100 mm 2.1, 130 mm 2.7;
/// an iron bore of 86 mm 1.0; a piston 10 K warm 17.6 um on 86 mm; a whole shop at 30 C closes 86 mm in iron by 7.8 um.
#[test]
fn figures_per_kelvin() {
    let read = |mm: f64, t: f64, a: f64| flat::size_at_20_mm(mm, 0.0, 20.0, 11.5e-6, t, a).expect("computed");
    let per_kelvin = |mm: f64, a: f64| (mm - read(mm, 21.0, a)) * 1000.0;
    for (mm, a, um) in
        [(86.0, 20.5e-6, 1.8), (100.0, 20.5e-6, 2.1), (130.0, 20.5e-6, 2.7), (86.0, 11.4e-6, 1.0)]
    {
        assert!((per_kelvin(mm, a) - um).abs() <= 0.051, "{mm} mm: {}", per_kelvin(mm, a));
    }
    assert!(((86.0 - read(86.0, 30.0, 20.5e-6)) * 1000.0 - 17.6).abs() < 0.05);
    // a gauge of the same temperature grows with both and does not matter to the difference
    let shop = |t: f64| {
        let gauge = |mm: f64, a: f64| flat::size_at_20_mm(mm, 0.0, t, 11.5e-6, t, a).expect("computed");
        gauge(86.035, 11.4e-6) - gauge(86.0, 20.5e-6)
    };
    assert!(((shop(30.0) - shop(20.0)) * 1000.0 - 7.8).abs() < 0.05, "{}", shop(30.0) - shop(20.0));
}
