//! The model that a calculation keeps is the same function as its first order.
#![allow(clippy::unwrap_used, reason = "a panic is how a test fails")]

use super::{Calc, Figure, Fold, Measured, SourceId, formula};
use crate::measurement::distribution::Distribution;
use crate::measurement::monte_carlo::MonteCarlo;

formula! {
    /// A size from what was read and a strain.
    Size: size ["mm"] = (read, strain) => read / (1.0 + strain);
        source "definition";
    /// Difference of two sizes.
    Difference: difference ["mm"] = (a, b) => a - b;
        source "definition";
}

/// Two readings that share a source `c`: `mean(x1 + c, x2 + c) / (1 + e) - max(y1 + c, y2)`.
fn calculation(calc: &mut Calc) -> Measured {
    let of = |calc: &mut Calc, name: &str, normal: bool| {
        let shape = if normal { Distribution::STANDARD_NORMAL } else { Distribution::STANDARD_RECTANGULAR };
        calc.source(name.to_owned(), "", shape)
    };
    let common = of(calc, "common", true);
    let [x1, x2, y1] = ["x1", "x2", "y1"].map(|name| of(calc, name, false));
    let e = of(calc, "e", true);
    let mut with = |value: f64, sources: &[(SourceId, f64)]| {
        let add = |value: Measured, (source, u): &(SourceId, f64)| {
            calc.add_source(&value, *source, Figure::plain(*u, "mm"))
        };
        sources.iter().fold(Figure::plain(value, "mm").into(), add)
    };
    let first = with(10.0, &[(x1, 0.002), (common, 0.003)]);
    let second = with(10.004, &[(x2, 0.002), (common, 0.003)]);
    let strain = with(0.001, &[(e, 0.0002)]);
    let larger = with(9.9, &[(y1, 0.001), (common, 0.003)]);
    let smaller = with(9.8, &[]);
    let mean = calc.fold(Fold::Mean, "x", &[&first, &second]).unwrap();
    let largest = calc.fold(Fold::Largest, "y", &[&larger, &smaller]).unwrap();
    let size = calc.apply(Size, [&mean, &strain]);
    calc.apply(Difference, [&size, &largest])
}

#[test]
fn the_model_gives_the_same_value_and_the_same_contributions() {
    let mut calc = Calc::with_model(false);
    let value = calculation(&mut calc);
    let (inputs, model) = calc.model(&value).unwrap().unwrap();
    let evaluation = inputs.evaluate(|x| model.jet(x)).unwrap();
    assert_eq!(evaluation.estimate.to_bits(), value.value().to_bits());
    assert_eq!(model.value(&[0.0; 5]).to_bits(), value.value().to_bits());
    // by hand: the mean 10.002 / 1.001, and the derivatives of it
    let derivative: f64 = 1.0 / 1.001;
    let by_hand = [
        ("common", 0.003 * (derivative - 1.0)),
        ("x1", 0.002 * derivative / 2.0),
        ("x2", 0.002 * derivative / 2.0),
        ("y1", -0.001),
        ("e", -0.0002 * 10.002 * derivative * derivative),
    ];
    for (name, expected) in by_hand {
        let line = evaluation.contributions.iter().find(|c| c.source == name).unwrap();
        assert!((line.contribution - expected).abs() < 1e-15, "{name}: {line:?}");
    }
    let budget = calc.budget(&value);
    assert!((budget.standard.value / evaluation.standard_uncertainty - 1.0).abs() < 1e-14);
}

/// JCGM 100:2008, H.1, from the raw inputs in nm and their degrees of freedom: printed u(d) 9.7 with 25.6, u_c 32 with 16.7; recomputed at 40
/// digits 9.66322, 25.62131, 31.658160, 16.741149. Two digits of k at 95.45 %: 2.17 (Table G.2 with 16).
#[test]
fn degrees_of_freedom_of_the_end_gauge() {
    let mut calc = Calc::new(false);
    let with = |calc: &mut Calc, value: Measured, name: &str, u: f64, dof: f64| {
        let source = calc.source(name.to_owned(), "", Distribution::STANDARD_NORMAL);
        let estimate = calc.estimate(Figure::plain(dof, "1"));
        calc.rests_on(source, Some(estimate));
        calc.add_source(&value, source, Figure::plain(u, "nm"))
    };
    let t_5 = crate::special::coverage_factor(0.95, 5.0);
    let mut d = Figure::plain(215.0, "nm").into();
    for (name, u, dof) in [
        ("repeats", 13.0 / 5.0_f64.sqrt(), 24.0),
        ("random", 10.0 / t_5, 5.0),
        ("systematic", 20.0 / 3.0, 8.0),
    ] {
        d = with(&mut calc, d, name, u, dof);
    }
    let budget = calc.budget(&d);
    assert!((budget.standard.value - 9.663_223).abs() < 1e-6, "{}", budget.standard.value);
    assert!((budget.dof.unwrap().value - 25.621_31).abs() < 1e-5, "{}", budget.dof.unwrap().value);
    let length = 50_000_623.0;
    let expansion = length * 0.1 * 1e-6 / 3.0_f64.sqrt();
    let temperature = length * 11.5e-6 * 0.05 / 3.0_f64.sqrt();
    let mut all = d;
    for (name, u, dof) in
        [("standard", 25.0, 18.0), ("expansion", expansion, 50.0), ("temperature", temperature, 2.0)]
    {
        all = with(&mut calc, all, name, u, dof);
    }
    let budget = calc.budget(&all);
    assert!((budget.standard.value - 31.658_160).abs() < 1e-5, "{}", budget.standard.value);
    assert!((budget.dof.unwrap().value - 16.741_149).abs() < 1e-5, "{}", budget.dof.unwrap().value);
    let k = calc.coverage(&budget).factor.value;
    assert!((k - 2.17).abs() < 0.01, "{k}");
}

/// One estimate of variance that two sources rest on is still one estimate. By hand: equal parts of one estimate of 6 degrees of freedom
/// have 6 together, of two estimates 12.
#[test]
fn an_estimate_that_is_used_twice_counts_once() {
    let dof = |shared: bool| {
        let mut calc = Calc::new(false);
        let first = calc.estimate(Figure::plain(6.0, "1"));
        let second = if shared { first } else { calc.estimate(Figure::plain(6.0, "1")) };
        let mut value: Measured = Figure::plain(1.0, "mm").into();
        for estimate in [first, second] {
            let source = calc.source(String::new(), "", Distribution::STANDARD_NORMAL);
            calc.rests_on(source, Some(estimate));
            value = calc.add_source(&value, source, Figure::plain(0.002, "mm"));
        }
        calc.budget(&value).dof.unwrap().value
    };
    assert!((dof(true) - 6.0).abs() < 1e-12 && (dof(false) - 12.0).abs() < 1e-12);
}

/// By hand: 1, 2, 3 about 2 and 5, 7 about 6 have squares of 2 and 2, three degrees of freedom, and s = sqrt(4 / 3).
#[test]
fn a_pooled_deviation() {
    let mut calc = Calc::new(false);
    let plain = |x: f64| Figure::plain(x, "mm");
    let first = calc.squares_about(plain(2.0), &[1.0, 2.0, 3.0].map(plain));
    let second = calc.squares_about(plain(6.0), &[5.0, 7.0].map(plain));
    let s = calc.pooled_deviation(&[first, second], Figure::plain(3.0, "1"));
    assert!((s.value - (4.0_f64 / 3.0).sqrt()).abs() < 1e-15);
}

#[test]
fn the_model_makes_trials() {
    let mut calc = Calc::with_model(false);
    let value = calculation(&mut calc);
    let u = calc.budget(&value).standard.value;
    let (inputs, model) = calc.model(&value).unwrap().unwrap();
    let run = MonteCarlo::of_model(&inputs, &model, 1).run(100_000, 0.95).unwrap();
    // nearly linear: the deviation of 1e5 trials is within 0.3 % of it
    assert!((run.standard_deviation / u - 1.0).abs() < 0.01, "{} against {u}", run.standard_deviation);
}

#[test]
fn no_model_is_kept_unless_asked_for() {
    let mut calc = Calc::new(false);
    let value = calculation(&mut calc);
    assert!(calc.model(&value).unwrap().is_none());
}
