//! Rows of `matching.csv`: the parts of a row, and what is asked of them.

use gaugepoint::Error;
use gaugepoint::plan::matching::{Bore, Conditions, Matching, Piston, WantedClearance, match_pistons};

fn given(text: &str) -> Option<f64> {
    (!text.is_empty()).then(|| crate::named::number(text))
}

fn wanted(cells: &[&str]) -> Option<WantedClearance> {
    let [lower_mm, upper_mm, target_mm] = [0, 1, 2].map(|k| given(cells[k]));
    let is_given = lower_mm.or(upper_mm).or(target_mm).is_some();
    is_given.then_some(WantedClearance { lower_mm, upper_mm, target_mm })
}

fn grade(text: &str) -> Option<String> {
    (!text.is_empty()).then(|| text.to_owned())
}

fn pairs(text: &str) -> Vec<(usize, usize)> {
    let pair = |pair: &str| {
        let (bore, piston) = pair.split_once('-').expect("a pair");
        (bore.parse().expect("a bore"), piston.parse().expect("a piston"))
    };
    text.split_whitespace().map(pair).collect()
}

/// The bores, pistons and conditions of a row.
///
/// # Panics
/// When the row is not as the file describes it.
#[must_use]
pub fn parts_of(row: &[String]) -> (Vec<Bore>, Vec<Piston>, Conditions) {
    let bores = row[1].split(';').map(|bore| {
        let c: Vec<&str> = bore.split('/').collect();
        let one = Bore::new(crate::named::number(c[0]), crate::named::number(c[1]));
        Bore { wanted: wanted(&c[2..5]), grade: grade(c[5]), ..one }
    });
    let pistons = row[2].split(';').map(|piston| {
        let c: Vec<&str> = piston.split('/').collect();
        let one = Piston::new(crate::named::number(c[0]), crate::named::number(c[1]));
        Piston { weight_g: given(c[2]), grade: grade(c[3]), ..one }
    });
    let c: Vec<&str> = row[3].split('|').collect();
    let conditions = Conditions {
        wanted: wanted(&c[0].split('/').collect::<Vec<_>>()),
        shared_uncertainty_mm: crate::named::number(c[1]),
        common_uncertainty_mm: crate::named::number(c[2]),
        weight_band_g: given(c[3]),
        forbidden: pairs(c[4]),
        fixed: pairs(c[5]),
    };
    (bores.collect(), pistons.collect(), conditions)
}

/// The matching of a row.
///
/// # Errors
/// As the library.
pub fn matching_row(row: &[String]) -> Result<Matching, Error> {
    let (bores, pistons, conditions) = parts_of(row);
    match_pistons(&bores, &pistons, &conditions)
}

/// Every number of a matching, in the order in which every host gives them: of each pair, then of the three merits.
#[must_use]
pub fn numbers_of(matching: &Matching) -> Vec<f64> {
    let pairs = matching.pairs.iter().flat_map(|p| {
        [
            p.clearance_mm,
            p.standard_uncertainty_mm,
            p.deviation_mm,
            p.probability_of_conformity,
            p.probability_outside,
        ]
    });
    let merits = [Some(&matching.merit), Some(&matching.as_given), matching.by_grade.as_ref()];
    let merits = merits
        .into_iter()
        .flatten()
        .flat_map(|m| [m.worst_probability, m.worst_outside, m.sum_of_squares_mm2]);
    pairs.chain(merits).chain(matching.weight_spread_g).collect()
}
