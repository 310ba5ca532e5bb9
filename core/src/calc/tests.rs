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
