//! Formulas as text: precedence by hand, functions against mpmath, hostile texts.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::calc::Model;
use gaugepoint::measurement::distribution::Distribution;
use gaugepoint::measurement::jet::Jet;
use gaugepoint::measurement::uncertainty::Inputs;
use gaugepoint::{Error, ErrorKind};
use proptest::prelude::*;

fn value(text: &str) -> f64 {
    Model::from_text(text, &[]).unwrap_or_else(|e| panic!("{text}: {e}")).value(&[])
}

fn refused(text: &str, names: &[&str]) -> Error {
    Model::from_text(text, names).expect_err(text)
}

/// By hand, with the rules of ordinary algebra; every number is exact.
#[test]
fn precedence() {
    let rows = [
        ("1 + 2 * 3", 7.0),
        ("(1 + 2) * 3", 9.0),
        ("10 - 4 - 3", 3.0),
        ("10 - (4 - 3)", 9.0),
        ("64 / 4 / 2", 8.0),
        ("64 / 4 * 2", 32.0),
        ("64 / (4 * 2)", 8.0),
        ("2 ^ 3 ^ 2", 512.0),
        ("(2 ^ 3) ^ 2", 64.0),
        ("-2 ^ 2", -4.0),
        ("(-2) ^ 2", 4.0),
        ("2 ^ -2", 0.25),
        ("2 ^ -2 ^ 2", 0.0625),
        ("-2 ^ -2", -0.25),
        ("2 * -3", -6.0),
        ("2 - -3", 5.0),
        ("--3", 3.0),
        ("-+-3", 3.0),
        ("+3", 3.0),
        ("-3 * 2 + 1", -5.0),
        ("6 / -3 ^ 2 * 2", 6.0 / -9.0 * 2.0),
        ("3 * 2 ^ 2", 12.0),
        ("2 ^ (1 + 1) * 3", 12.0),
        ("0.25 ^ 0.5", 0.5),
        ("16 ^ (1 / 4)", 2.0),
        ("2 ^ 0", 1.0),
        ("(-2) ^ 3", -8.0),
        ("1.5e2 + 2E-1", 150.2),
        ("1e3", 1000.0),
        ("max(1, 3, 2)", 3.0),
        ("min(4, 1 + 1, 3)", 2.0),
        ("max(min(5, 2), 1)", 2.0),
        ("abs(-7) + sqrt(9)", 10.0),
        (" ( ( 3 ) ) ", 3.0),
        ("1+2*3-4/2^1", 5.0),
        ("1\t+\n1", 2.0),
    ];
    for (text, expected) in rows {
        assert_eq!(value(text).to_bits(), f64::to_bits(expected), "{text} is {}", value(text));
    }
}

/// mpmath, 40 digits, rounded to 17.
#[test]
fn functions() {
    let rows = [
        ("exp(0.7)", 2.0137527074704766),
        ("ln(0.7)", -0.356_674_943_938_732_4),
        ("sin(0.7)", 0.644_217_687_237_691),
        ("cos(0.7)", 0.764_842_187_284_488_5),
        ("tan(0.7)", 0.842_288_380_463_079_4),
        ("asin(0.7)", 0.775_397_496_610_753),
        ("acos(0.7)", 0.795_398_830_184_143_6),
        ("atan(0.7)", 0.610_725_964_389_208_6),
        ("erfc(0.7)", 0.322_198_806_162_581_5),
        ("0.7 ^ 2.5", 0.409_963_413_001_697_02),
        ("sin(pi / 6)", 0.5),
        ("4 * atan(1) - pi", 0.0),
    ];
    for (text, expected) in rows {
        assert!((value(text) - expected).abs() < 3e-16, "{text} is {}", value(text));
    }
}

#[test]
fn inputs_are_found_by_name() {
    let names = ["s", "d", "alpha", "t"];
    let model = Model::from_text("(s + d) / (1 + alpha * (t - 20))", &names).unwrap();
    assert_eq!(model.inputs(), [0, 1, 2, 3]);
    // 87 / (1 + 0.25 * 4) = 43.5
    assert!((model.value(&[86.0, 1.0, 0.25, 24.0]) - 43.5).abs() < 1e-15);
    let of = |text: &str, names: &[&str], x: &[f64]| Model::from_text(text, names).unwrap().value(x);
    assert!((of("A - a", &["a", "A"], &[1.0, 3.0]) - 2.0).abs() < 1e-15, "capitals are other letters");
    assert!((of("δα * θ_1", &["δα", "θ_1"], &[2.0, 3.0]) - 6.0).abs() < 1e-15);
    assert!((of("e2 + x1e3 + 2e1", &["e2", "x1e3"], &[1.0, 2.0]) - 23.0).abs() < 1e-15);
    assert_eq!(Model::from_text("b", &["a", "b"]).unwrap().inputs(), [1]);
}

/// d/dx of x^3 is 3 x^2, of x^-2 is -2 x^-3, of x^(1/2) is 1/2 x^(-1/2); at 4: 48, -1/32, 1/4; and of the others by their rules.
#[test]
fn derivatives() {
    let rows = [
        ("x^3", 48.0),
        ("x^-2", -1.0 / 32.0),
        ("x^(1/2)", 0.25),
        ("1/x", -1.0 / 16.0),
        ("-x^2", -8.0),
        ("ln(x)", 0.25),
        ("exp(x - 4)", 1.0),
        ("max(x, 3) + min(x, 3)", 1.0),
        ("abs(-x)", 1.0),
        ("atan(x)", 1.0 / 17.0),
        ("x * x - x", 7.0),
    ];
    for (text, expected) in rows {
        let mut inputs = Inputs::new();
        inputs.quantity("x", 4.0, Distribution::normal(1.0).unwrap()).unwrap();
        let model = Model::from_text(text, &["x"]).unwrap();
        let slope = inputs.evaluate(|x| model.jet(x)).unwrap().contributions[0].sensitivity;
        assert!((slope - expected).abs() < 1e-13, "{text}: {slope} and not {expected}");
    }
}

#[test]
fn refusals_say_what_and_where() {
    use ErrorKind::{NotAnExpression, NotFinite, Repeated, TooDeep, TooLarge, UnknownName};
    let rows: &[(&str, ErrorKind, &str, &str, Option<&str>)] = &[
        ("", NotAnExpression, "", "a number, a name or ( is needed, at the end", None),
        ("a +", NotAnExpression, "", "a number, a name or ( is needed, at the end", None),
        ("a * / 2", NotAnExpression, "/", "a number, a name or ( is needed, at character 5", None),
        ("a 2", NotAnExpression, "2", "an operator is needed, at character 3", None),
        ("2 a", NotAnExpression, "a", "an operator is needed, at character 3", None),
        ("2(a)", NotAnExpression, "(", "an operator is needed, at character 2", None),
        ("a(2)", NotAnExpression, "(", "an operator is needed, at character 2", None),
        ("(a", NotAnExpression, "", ") is needed, at the end", None),
        ("(a 2)", NotAnExpression, "2", "an operator or ) is needed, at character 4", None),
        ("a)", NotAnExpression, ")", "no ( stands before it, at character 2", None),
        ("()", NotAnExpression, ")", "a number, a name or ( is needed, at character 2", None),
        ("sqrt()", NotAnExpression, ")", "a number, a name or ( is needed, at character 6", None),
        ("sqrt a", NotAnExpression, "sqrt", "the argument of the function is missing, at character 1", None),
        ("max(a)", NotAnExpression, "max", "at least two arguments are needed, at character 1", None),
        (
            "sqrt(a, 2)",
            NotAnExpression,
            ",",
            "a comma stands between the arguments of min and max; a number has a point, at character 7",
            None,
        ),
        (
            "a + 1,5",
            NotAnExpression,
            ",",
            "a comma stands between the arguments of min and max; a number has a point, at character 6",
            None,
        ),
        ("a + .5", NotAnExpression, ".", "a point stands between digits, at character 5", None),
        ("5. + a", NotAnExpression, ".", "a point stands between digits, at character 2", None),
        ("a ** 2", NotAnExpression, "**", "another sign, at character 3", Some("^")),
        ("a \u{2212} 2", NotAnExpression, "\u{2212}", "another sign, at character 3", Some("-")),
        ("a\u{b2}", NotAnExpression, "\u{b2}", "another sign, at character 2", Some("^2")),
        ("a = 2", NotAnExpression, "=", "this has no meaning in a formula, at character 3", None),
        ("a; b", NotAnExpression, ";", "this has no meaning in a formula, at character 2", None),
        ("a + \u{7}", NotAnExpression, "\u{7}", "this has no meaning in a formula, at character 5", None),
        (
            "2^alpha",
            NotAnExpression,
            "alpha",
            "an exponent is a finite number without inputs, at character 3",
            None,
        ),
        (
            "2^(1 / 0) + a",
            NotAnExpression,
            "(1 / 0)",
            "an exponent is a finite number without inputs, at character 3",
            None,
        ),
        ("1e999", NotFinite, "1e999", "a finite number is needed, at character 1", None),
        ("alhpa + 1", UnknownName, "alhpa", "no such name, at character 1", Some("alpha")),
        ("δ + Alpha", UnknownName, "δ", "no such name, at character 1", None),
        ("1 + Alpha", UnknownName, "Alpha", "no such name, at character 5", Some("alpha")),
    ];
    for (text, kind, piece, reason, meant) in rows {
        let error = refused(text, &["a", "alpha"]);
        assert_eq!((error.kind(), error.refused(), error.reason()), (*kind, *piece, *reason), "{text}");
        assert_eq!(error.did_you_mean(), *meant, "{text}");
    }
    let error = refused("sqr(a)", &["a"]);
    assert_eq!((error.kind(), error.did_you_mean()), (UnknownName, Some("sqrt")));
    assert!(error.reason().starts_with("no such function; accepted: sqrt, abs, "));
    // ln or to base 10: nobody knows
    assert_eq!(refused("log(a)", &["a"]).did_you_mean(), None);
    for name in ["", "1a", "a b", "a-b", "a.b", "sqrt", "pi", "x\u{b2}"] {
        assert_eq!(refused("1", &[name]).kind(), NotAnExpression, "{name}");
    }
    assert_eq!(refused("1", &["a", "b", "a"]).kind(), Repeated);
    assert_eq!(refused(&"1+".repeat(2000), &[]).kind(), NotAnExpression);
    assert_eq!(refused(&"1+".repeat(2001), &[]).kind(), TooLarge);
    let error = refused(&format!("{}1{}", "(".repeat(150), ")".repeat(150)), &[]);
    assert_eq!((error.kind(), error.reason()), (TooDeep, "more than 100 levels, at character 101"));
}

/// Whatever nests ends in an answer, within a stack of 256 kB: a tenth of what a thread has.
#[test]
fn nesting_never_ends_the_stack() {
    let nested = |depth: usize| {
        [
            "(".repeat(depth) + "x" + &")".repeat(depth),
            "-".repeat(depth) + "x",
            "+".repeat(depth) + "x",
            "x^".repeat(depth) + "x",
            "2^".repeat(depth) + "1",
            "1+(".repeat(depth) + "x" + &")".repeat(depth),
            "sqrt(".repeat(depth) + "x" + &")".repeat(depth),
            "max(1,".repeat(depth) + "x" + &")".repeat(depth),
            "abs(-(".repeat(depth) + "x" + &"))".repeat(depth),
            "(".repeat(depth),
            "1-".repeat(depth) + "x",
        ]
    };
    let run = move || {
        for depth in (0..120).chain([500, 3999, 100_000]) {
            for text in nested(depth) {
                if let Ok(model) = Model::from_text(&text, &["x"]) {
                    assert!(model.inputs().len() <= 1, "{}", model.value(&[0.5]));
                }
            }
        }
    };
    std::thread::Builder::new().stack_size(256 * 1024).spawn(run).unwrap().join().unwrap();
    let deep = |depth: usize| Model::from_text(&("(".repeat(depth) + "x" + &")".repeat(depth)), &["x"]);
    assert!(deep(99).is_ok() && deep(100).is_err());
    // a long sum is not deep
    assert!((value(&("1+".repeat(1500) + "1")) - 1501.0).abs() < 1e-12);
}

/// A formula, made at random with the value that hand-made evaluation gives it.
fn formula() -> impl Strategy<Value = (String, f64)> {
    let leaf = prop_oneof![
        (1_u32..100).prop_map(|n| (n.to_string(), f64::from(n))),
        (1_u32..100).prop_map(|n| (format!("{n}.5"), f64::from(n) + 0.5)),
        Just(("x".to_owned(), 0.75)),
    ];
    leaf.prop_recursive(5, 40, 2, |inner| {
        let two = || (inner.clone(), inner.clone());
        prop_oneof![
            two().prop_map(|((a, x), (b, y))| (format!("({a} + {b})"), x + y)),
            two().prop_map(|((a, x), (b, y))| (format!("({a}-{b})"), x - y)),
            two().prop_map(|((a, x), (b, y))| (format!("{a}*({b})"), x * y)),
            two().prop_map(|((a, x), (b, y))| (format!("({a}/({b}))"), x / y)),
            two().prop_map(|((a, x), (b, y))| (format!("max({a},{b})"), if y > x { y } else { x })),
            inner.clone().prop_map(|(a, x)| (format!("(-({a}))"), -x)),
            inner.prop_map(|(a, x)| (format!("({a})^2"), x * x)),
        ]
    })
}

proptest! {
    /// What is written with its parentheses has the bits of the arithmetic that wrote it. (`a*(b)` binds as it should: `a` is a whole operand or
    /// begins with a product.)
    #[test]
    fn formulas_have_the_bits_of_their_arithmetic((text, expected) in formula()) {
        let model = Model::from_text(&text, &["x"]).unwrap();
        let ours = model.value(&[0.75]);
        prop_assert!(ours.to_bits() == expected.to_bits() || (ours.is_nan() && expected.is_nan()), "{text}: {ours} {expected}");
        let jet = model.jet(&[Jet::constant(0.75)]).value();
        prop_assert!(jet.to_bits() == ours.to_bits() || (ours.is_nan() && jet.is_nan()));
    }

    #[test]
    fn values_and_jets_have_the_same_bits(x in -3.0_f64..3.0, function in 0_usize..12) {
        let text = ["sqrt(x)", "exp(x)", "ln(x)", "sin(x)", "cos(x)", "tan(x)", "asin(x)", "acos(x)", "atan(x)",
            "erfc(x)", "x^-5", "x^1.7"][function];
        let model = Model::from_text(text, &["x"]).unwrap();
        let (plain, jet) = (model.value(&[x]), model.jet(&[Jet::constant(x)]).value());
        prop_assert!(plain.to_bits() == jet.to_bits() || (plain.is_nan() && jet.is_nan()));
    }

    /// Any text gives a model or a refusal that says something.
    #[test]
    fn any_text_has_an_answer(text in "\\PC{0,60}") {
        if let Err(error) = Model::from_text(&text, &["x"]) {
            prop_assert!(!error.reason().is_empty());
        }
    }

    #[test]
    fn any_text_of_the_alphabet_has_an_answer(text in "[-+*/^(),.0-9xeE pisqrtmax]{0,80}") {
        if let Ok(model) = Model::from_text(&text, &["x"]) {
            let (plain, jet) = (model.value(&[0.5]), model.jet(&[Jet::constant(0.5)]).value());
            prop_assert!(plain.to_bits() == jet.to_bits() || (plain.is_nan() && jet.is_nan()));
        }
    }
}
