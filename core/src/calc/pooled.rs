//! A standard deviation from repeats at several places.

use super::{Calc, Figure, total};

const SOURCE: &str = "JCGM 100:2008, 4.2.2 and 4.2.4: pooled over the places, each about its own mean";

impl Calc {
    /// Sum of the squared distances of several numbers from their mean.
    pub(crate) fn squares_about(&mut self, mean: Figure, figures: &[Figure]) -> Figure {
        let value = total(figures.iter().map(|x| (x.value - mean.value) * (x.value - mean.value)));
        let names: Vec<String> = (1..=figures.len()).map(|k| format!("x{k}")).collect();
        let terms: Vec<String> = names.iter().map(|x| format!("({x} - m) * ({x} - m)")).collect();
        let mut arguments: Vec<(&str, Figure)> =
            names.iter().map(String::as_str).zip(figures.iter().copied()).collect();
        arguments.push(("m", mean));
        self.step("q", &terms.join(" + "), &arguments, value, "mm2", SOURCE)
    }

    /// Standard deviation from the sums of squares of several places and their degrees of freedom together.
    pub(crate) fn pooled_deviation(&mut self, squares: &[Figure], dof: Figure) -> Figure {
        let value = (total(squares.iter().map(|q| q.value)) / dof.value).sqrt();
        let names: Vec<String> = (1..=squares.len()).map(|k| format!("q{k}")).collect();
        let mut arguments: Vec<(&str, Figure)> =
            names.iter().map(String::as_str).zip(squares.iter().copied()).collect();
        arguments.push(("dof", dof));
        self.step("s", &format!("sqrt(({}) / dof)", names.join(" + ")), &arguments, value, "mm", SOURCE)
    }
}
