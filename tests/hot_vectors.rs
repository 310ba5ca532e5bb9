//! Hot fits against values from outside: brute force (tests/reference/hot_fit.py) and closed forms.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]
#![allow(clippy::disallowed_methods, reason = "the tests' own arithmetic is compared with a tolerance")]

use gaugepoint::clearance::hot::inverse::Answer;
use gaugepoint::clearance::hot::onset::Onset;
use gaugepoint::clearance::hot::{HotFit, Parts, Position};
use gaugepoint::growth::field::{BoreField, PistonField, Rise, Scenario};
use gaugepoint::shape::bore::BoreShape;
use gaugepoint_tests::hot::{growth, hot_fit, hot_row, round};
use gaugepoint_tests::rows;
use std::collections::HashMap;
use std::fmt::Write as _;

/// A fit of round parts with their coefficients and temperatures.
fn plain((bore, bore_per_k, bore_c): (f64, f64, f64), (piston, per_k, c): (f64, f64, f64)) -> HotFit {
    let parts = Parts {
        growth: vec![growth(per_k, 1.0, 1.0)],
        piston_field: PistonField::uniform(c, c).unwrap(),
        bore_field: BoreField::uniform(bore_c).unwrap(),
        ..round(bore, piston, bore_per_k, BoreShape::round(bore).unwrap())
    };
    HotFit::new(parts).unwrap()
}

/// Smallest clearance, first contact in three scenarios, the bore for a smallest clearance, most room, area of overlap: brute force on dense grids
/// with local refinement, SciPy's curves and linear programme.
#[test]
fn brute_force_agrees() {
    let mut wrong = Vec::new();
    let mut held = HashMap::<&str, usize>::new();
    let all = rows("tests/vectors/hot_fit.csv");
    for row in &all {
        let (fit, position) = hot_fit(&row[1]);
        for cell in row[2].split(';') {
            let (what, expected) = cell.split_once('=').unwrap();
            let expected: f64 = expected.parse().unwrap();
            let (value, tolerance) = match what {
                "smallest" => {
                    let found = fit.smallest_at(0, position).unwrap();
                    assert!(found.within_mm <= 1.1e-9, "{}: {found:?}", row[0]);
                    // the value is that of its place, by the formulas in turn
                    let place = &found.place;
                    let there = fit.at(place.angle_deg, place.height_mm, position).unwrap();
                    assert!((there - found.clearance_mm).abs() < 1e-11, "{}: {there} {found:?}", row[0]);
                    (found.clearance_mm, 1e-8)
                }
                // degrees and stations of the search leave a tenth of a micrometre, as it says
                "placed" => (fit.best_placed(0, position).unwrap().clearance_mm, 2e-4),
                // grids of the two areas differ: a strip of the rim, and one of a station
                "area" => (fit.contact(0, position, 0.0).unwrap().area_mm2, 3.0 + 0.01 * expected),
                "bore_for_smallest_0.01" => match fit.bore_for_smallest_clearance(0.01).unwrap() {
                    Answer::Found(bore) => (bore, 2e-8),
                    Answer::NoSolution(why) => panic!("{}: {why}", row[0]),
                },
                _ => {
                    let (scenario, touching) = what.rsplit_once('_').unwrap();
                    let scenario = Scenario::from_word(scenario).unwrap();
                    let k = match fit.onset(scenario, touching.parse().unwrap()).unwrap() {
                        Onset::Touches(contact) => {
                            assert!(contact.slope_mm < 0.0, "{} {what}: {contact:?}", row[0]);
                            contact.factor
                        }
                        Onset::TouchesCold => -1.0,
                        Onset::NoContact { .. } => 9.0,
                    };
                    // a nanometre and a half over the slope, which is above 0.05 mm in these rows
                    (k, 3e-8)
                }
            };
            *held.entry(what).or_default() += 1;
            if (value - expected).abs().total_cmp(&tolerance).is_gt() {
                wrong.push(format!("{} {what}: {value} against {expected}", row[0]));
            }
        }
    }
    assert!(wrong.is_empty(), "{} wrong\n{}", wrong.len(), wrong.join("\n"));
    assert!(held["smallest"] >= 28 && held["piston_alone_0"] >= 20, "{held:?}");
}

/// At 20 C nothing has grown: a round pair keeps half its bench clearance on each side, everywhere.
#[test]
fn at_20_c_nothing_grows() {
    let hot = plain((86.035, 11.4e-6, 110.0), (86.0, 20.5e-6, 120.0));
    let cold = HotFit::at_rise(hot.parts().clone(), Rise::COLD).unwrap();
    assert!((cold.smallest(0).unwrap().clearance_mm - 0.0175).abs() < 1e-12);
    assert!((cold.running_at_gauge_point(Position::Anywhere).unwrap() - 0.035).abs() < 1e-12);
}

/// The alloy with 22.8e-6 in place of 20.5e-6 at the same bench clearance: 86 mm times 2.3e-6 times 110 K is 21.8 um less, by hand.
#[test]
fn another_alloy_at_the_same_clearance() {
    let bore = (86.035, 11.4e-6, 110.0);
    let at = |a: f64| plain(bore, (86.0, a, 130.0)).running_at_gauge_point(Position::Anywhere).unwrap();
    assert!((at(20.5e-6) - at(22.8e-6) - 86.0 * 2.3e-6 * 110.0).abs() < 1e-12);
}

/// First contact of a round pair in closed form: bench clearance over what the piston grows beyond the bore.
#[test]
fn first_contact_in_closed_form() {
    let fit = plain((86.1, 11.4e-6, 100.0), (86.0, 20.5e-6, 120.0));
    let (piston, bore) = (86.0 * 20.5e-6 * 100.0, 86.1 * 11.4e-6 * 80.0);
    for (scenario, expected) in [
        (Scenario::PistonAlone, (0.1 + bore) / piston),
        (Scenario::PistonAndBore, 0.1 / (piston - bore)),
        (Scenario::PistonWithColdBore, 0.1 / piston),
    ] {
        let Onset::Touches(contact) = fit.onset(scenario, 0.0).unwrap() else { panic!("{scenario:?}") };
        assert!((contact.factor - expected).abs() < 1e-9, "{scenario:?}: {} {expected}", contact.factor);
    }
}

/// Every number of every row, for the comparison bit by bit with hosts that this program cannot call.
#[test]
fn rows_for_other_hosts() {
    let mut lines = String::new();
    for row in rows("tests/vectors/hot_fit.csv") {
        for (name, value) in hot_row(&row).unwrap() {
            let value = value.map_or("none".to_owned(), |v| v.to_string());
            writeln!(lines, "{} {name} {value}", row[0]).unwrap();
        }
    }
    assert!(lines.lines().count() > 28 * 39);
    if let Some(file) = std::env::var_os("GAUGEPOINT_HOT_ROWS") {
        std::fs::write(file, lines).unwrap();
    }
}
