//! Hot fits against values from outside: brute force (tests/reference/hot_fit.py) and closed forms.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]
#![allow(clippy::disallowed_methods, reason = "the tests' own arithmetic is compared with a tolerance")]
#![allow(clippy::float_cmp, reason = "no area and the whole turn are exact")]

use gaugepoint::clearance::hot::apart::{HotBore, HotPiston};
use gaugepoint::clearance::hot::inverse::Answer;
use gaugepoint::clearance::hot::onset::Onset;
use gaugepoint::clearance::hot::{HotFit, Parts, Position};
use gaugepoint::growth::Piecewise;
use gaugepoint::growth::field::{BoreField, PistonField, Rise, Scenario};
use gaugepoint::shape::bore::{BoreShape, Port};
use gaugepoint::shape::piston::{
    Asymmetric, Counted, PistonShape, Surface, Symmetric, Table, Window, WindowKind,
};
use gaugepoint_tests::hot::{apart, growth, hot_fit, hot_row, law, made, round};
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
                "placed" => {
                    let best = fit.best_placed(0, position).unwrap();
                    assert!(best.within_mm <= 2.1e-9, "{}: {best:?}", row[0]);
                    (best.clearance_mm, 1e-8)
                }
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

/// What a bore has more than a piston, each by itself, is the clearance of every row, to the bit; and the fit of both is that of their parts.
#[test]
fn a_fit_is_the_difference_of_its_parts() {
    let mut compared = 0;
    for row in rows("tests/vectors/hot_fit.csv") {
        let (fit, position) = hot_fit(&row[1]);
        let (piston, bore) = apart(fit.parts()).unwrap();
        let gauge = fit.parts().piston.gauge_height_mm;
        let depth = if let Position::GaugeDepth(depth) = position { depth } else { 0.0 };
        for angle in [0.0, 30.0, 77.5, 180.0, 300.0] {
            let there = piston.size_at(gauge, angle).and_then(|p| Ok((p, bore.size_at(depth, angle)?)));
            let Ok((p, b)) = there else { continue };
            let clearance = fit.at(angle, gauge, position).unwrap();
            assert_eq!(clearance.to_bits(), (b.hot_radius_mm - p.hot_radius_mm).to_bits(), "{}", row[0]);
            compared += 1;
        }
        assert_eq!(HotFit::of(piston, bore, None).unwrap(), fit, "{}", row[0]);
    }
    assert!(compared > 100, "{compared}");
}

/// An oval piston of controlled expansion and a bore with a wave, a taper and a wall that cools with depth, by hand from the definitions.
#[test]
fn sizes_of_a_piston_and_a_bore_by_hand() {
    let flat = |v: &'static [f64]| Table { heights_mm: &[0.0], values_mm: v };
    let (barrel, ovality) = (flat(&[0.0]), flat(&[0.32]));
    let drawing = Symmetric { barrel, counted: Counted::Above, ovality, double_ovality: None };
    let skirt = Surface::symmetric("skirt", 0.0, 60.0, &drawing).unwrap().with_panels(80.0, 30.0).unwrap();
    let shape = PistonShape::new(12.0, vec![skirt]).unwrap();
    let field = PistonField::uniform(120.0, 130.0).unwrap();
    let piston = HotPiston::new(86.0, shape, vec![growth(20.5e-6, 0.9, 1.1)], field).unwrap();
    let near = |a: f64, b: f64| assert!((a - b).abs() < 2e-14 * b, "{a} {b}");
    let gauge = piston.at_gauge_point().unwrap();
    near(gauge.cold_radius_mm, 43.0);
    near(gauge.hot_radius_mm, 43.0 * (1.0 + 0.9 * 20.5e-6 * 100.0));
    near(gauge.diameters_mm.unwrap().0, 86.0);
    near(gauge.diameters_mm.unwrap().1, 86.0 * (1.0 + 0.9 * 20.5e-6 * 100.0));
    // at 45 degrees half the ovality is gone, and both axes count by half; across there is no panel
    let aside = piston.size_at(30.0, 45.0).unwrap();
    near(aside.cold_radius_mm, 43.0 - 0.08);
    near(aside.hot_radius_mm, (43.0 - 0.08) * (1.0 + 20.5e-6 * (0.9 * 100.0 + 1.1 * 110.0) / 2.0));
    assert_eq!(aside.diameters_mm, None);
    assert_eq!(piston.size_at(30.0, 85.0).unwrap_err().field(), "angle_deg");
    assert_eq!(piston.size_at(61.0, 0.0).unwrap_err().field(), "height_mm");

    let port = Port { from_deg: 170.0, to_deg: 190.0, from_mm: 40.0, to_mm: 60.0 };
    let wall = || BoreShape::round(86.05).unwrap().with_deviation(&[0.0, 100.0], &[0.0, 0.02]).unwrap();
    let wall = || wall().with_harmonic(2, &[0.0], &[0.005], &[0.0]).unwrap().with_port(port).unwrap();
    let cooling = BoreField::through(&[0.0, 100.0], &[120.0, 100.0]).unwrap();
    let bore = HotBore::new(wall(), Piecewise::of(&law(11.4e-6)), cooling).unwrap();
    let middle = bore.size_at(50.0, 0.0).unwrap();
    near(middle.cold_radius_mm, 43.025 + 0.01 + 0.005);
    near(middle.hot_radius_mm, 43.04 * (1.0 + 11.4e-6 * 90.0));
    assert_eq!(middle.diameters_mm, None);
    let narrow = bore.size_at(50.0, 90.0).unwrap().diameters_mm.unwrap();
    near(narrow.0, 2.0 * (43.025 + 0.01 - 0.005));
    near(narrow.1, 2.0 * 43.03 * (1.0 + 11.4e-6 * 90.0));
    for (depth, angle, field) in
        [(50.0, 180.0, "angle_deg"), (100.5, 0.0, "depth_mm"), (-1.0, 0.0, "depth_mm")]
    {
        assert_eq!(bore.size_at(depth, angle).unwrap_err().field(), field);
    }
    // what does not fit together is refused when it is made
    let below = BoreField::through(&[95.0, 100.0], &[120.0, 100.0]).unwrap();
    let error =
        HotBore::new(wall().with_end(90.0).unwrap(), Piecewise::of(&law(11.4e-6)), below).unwrap_err();
    assert_eq!(error.field(), "bore");
    let short = PistonField::through(&[0.0, 40.0], &[120.0, 130.0], &[120.0, 130.0]).unwrap();
    let parts = round(86.05, 86.0, 11.4e-6, BoreShape::round(86.05).unwrap());
    let error = HotPiston::new(86.0, parts.piston.clone(), parts.growth.clone(), short).unwrap_err();
    assert_eq!(error.field(), "surfaces/0/piston_field/thrust_c");
    let error = HotPiston::new(86.0, parts.piston, Vec::new(), parts.piston_field).unwrap_err();
    assert_eq!(error.field(), "growth");
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

/// A round piston of 86 mm in a bore with three waves, the first of them narrowest at an angle; everything at 20 C.
fn lobed(gap: f64, wave: f64, narrowest_deg: f64) -> HotFit {
    let (sine, cosine) = (3.0 * narrowest_deg).to_radians().sin_cos();
    let bore = BoreShape::round(86.0 + 2.0 * gap).unwrap();
    let bore = bore.with_harmonic(3, &[0.0], &[-wave * cosine], &[-wave * sine]).unwrap();
    HotFit::new(round(86.0 + 2.0 * gap, 86.0, 11.4e-6, bore)).unwrap()
}

/// Closed form: `gap - wave cos 3 (t - t0)` is below zero within `acos(gap / wave) / 3` of its three narrowest angles. Here that is 0.1 degrees, so that the
/// overlap of 0.2 degrees lies between two whole ones.
#[test]
fn an_overlap_of_a_fifth_of_a_degree_is_seen() {
    let wave = 0.02;
    for narrowest in [40.5, 33.3, 119.95, 0.02] {
        let fit = lobed(wave * 0.3_f64.to_radians().cos(), wave, narrowest);
        let patch = fit.contact(0, Position::Anywhere, 0.0).unwrap();
        let area = 3.0 * 0.2_f64.to_radians() * 43.0 * 60.0;
        assert!((patch.area_mm2 - area).abs() < 1e-6 * area, "{} {area}", patch.area_mm2);
        for band in &patch.bands {
            assert!((band.to_deg - band.from_deg - 0.2).abs() < 1e-7, "{band:?}");
            let middle = f64::midpoint(band.from_deg, band.to_deg) - narrowest;
            assert!((middle / 120.0 - (middle / 120.0).round()).abs() < 1e-9, "{band:?}");
            assert!((0.0..360.0).contains(&band.from_deg), "{band:?}");
        }
        assert_eq!(patch.bands.len() % 3, 0);
        // no overlap of the whole, none of a part
        assert_eq!(fit.contact(0, Position::Anywhere, -1e-6).unwrap().area_mm2, 0.0);
    }
    // everywhere is one band
    let tight = lobed(-0.03, wave, 40.5).contact(0, Position::Anywhere, 0.0).unwrap();
    assert!(tight.bands.iter().all(|b| b.from_deg == 0.0 && b.to_deg == 360.0));
    let whole = core::f64::consts::TAU * 43.0 * 60.0;
    assert!((tight.area_mm2 - whole).abs() < 1e-9 * whole);
}

/// Closed form: on a taper the gap grows from 0 to two waves over the skirt; the half-width `acos(gap / wave) / 3` of three lobes, over the height at which it ends
/// with a root, is `2 R (h / 2)` times the integral of `acos` from 0 to 1, which is 1.
#[test]
fn area_of_overlap_on_a_taper() {
    let wave = 0.02;
    let zero = Table { heights_mm: &[0.0], values_mm: &[0.0] };
    let barrel = Table { heights_mm: &[0.0, 60.0], values_mm: &[0.0, -4.0 * wave] };
    let drawing = Symmetric { barrel, counted: Counted::Above, ovality: zero, double_ovality: None };
    let skirt = Surface::symmetric("skirt", 0.0, 60.0, &drawing).unwrap();
    let bore = BoreShape::round(86.0).unwrap().with_harmonic(3, &[0.0], &[wave], &[0.0]).unwrap();
    // the gauge diameter is that at 12 mm: the bottom of the skirt is 86 mm
    let parts = made(86.0 - 0.2 * 4.0 * wave, PistonShape::new(12.0, vec![skirt]).unwrap(), bore, 11.4e-6);
    let diameter = parts.piston_diameter_mm;
    let patch = HotFit::new(parts).unwrap().contact(0, Position::Anywhere, 0.0).unwrap();
    let area = 2.0 * (diameter / 2.0) * 30.0;
    assert!((patch.area_mm2 - area).abs() < 0.01, "{} {area}", patch.area_mm2);
}

/// Three lobes 120 degrees apart hold a piston in the middle: moving it takes room from one of them. The narrowest angles lie between whole degrees.
#[test]
fn most_room_between_three_lobes() {
    let best = lobed(0.05, 0.02, 40.5).best_placed(0, Position::Anywhere).unwrap();
    assert!((best.clearance_mm - 0.03).abs() < 2e-9, "{best:?}");
    assert!(best.within_mm <= 2.1e-9 && best.thrust_mm.abs() < 1e-6 && best.pin_mm.abs() < 1e-6, "{best:?}");
}

/// Two sides of which the major is 0.03 mm lower and the minor 0.01 mm: moved by half of the difference both have as much room. By hand.
#[test]
fn most_room_of_two_different_sides() {
    let at = |values_mm: &'static [f64]| Table { heights_mm: &[0.0], values_mm };
    let drawing = Asymmetric {
        thrust: at(&[0.03]),
        pin_axis: at(&[0.2]),
        minor_thrust: at(&[0.01]),
        counted: Counted::Below,
        thrust_fourth: None,
        minor_thrust_fourth: None,
    };
    let skirt = Surface::asymmetric("skirt", 0.0, 60.0, &drawing).unwrap();
    let shape = PistonShape::new(12.0, vec![skirt]).unwrap();
    // the gauge diameter is that of both sides: 0.04 mm below what the tables are counted from
    let parts = made(85.96, shape, BoreShape::round(86.05).unwrap(), 11.4e-6);
    let best = HotFit::new(parts).unwrap().best_placed(0, Position::Anywhere).unwrap();
    assert!((best.clearance_mm - (0.09 / 2.0)).abs() < 2e-9, "{best:?}");
    assert!((best.thrust_mm - 0.01).abs() < 1e-8 && best.pin_mm.abs() < 1e-4, "{best:?}");
}

/// One rule for what opens: from 0 to 360 degrees is the whole turn, of a bore as of a piston, and from 360 to 0 is nothing.
#[test]
fn an_opening_of_the_whole_turn() {
    let port = |from_deg, to_deg| Port { from_deg, to_deg, from_mm: 40.0, to_mm: 50.0 };
    let bore = || BoreShape::round(86.0).unwrap();
    let open = bore().with_port(port(0.0, 360.0)).unwrap();
    for angle in [0.0, 90.0, 200.0, 360.0] {
        assert!(!open.supports(45.0, angle) && open.supports(40.0, angle), "{angle}");
    }
    let over = bore().with_port(port(350.0, 10.0)).unwrap();
    assert!(!over.supports(45.0, 0.0) && over.supports(45.0, 10.0) && over.supports(45.0, 180.0));
    for (from, to) in [(360.0, 0.0), (30.0, 30.0), (359.9995, 0.0)] {
        assert_eq!(bore().with_port(port(from, to)).unwrap_err().field(), "to_deg");
        let cut = Window { kind: WindowKind::CutOut, from_deg: from, to_deg: to, from_mm: 20.0, to_mm: 40.0 };
        assert_eq!(skirt_of(0.1).with_window(cut).unwrap_err().field(), "to_deg");
    }
    // the narrowest place of the piston is cut away all round, or stands before a port that goes all round
    let cut = Window { kind: WindowKind::CutOut, from_deg: 0.0, to_deg: 360.0, from_mm: 20.0, to_mm: 40.0 };
    let shape = |skirt| PistonShape::new(5.0, vec![skirt]).unwrap();
    let fit = |skirt, bore| HotFit::new(made(86.0, shape(skirt), bore, 11.4e-6)).unwrap();
    let wide = || BoreShape::round(86.3).unwrap();
    let whole = fit(skirt_of(0.1), wide()).smallest(0).unwrap();
    assert!((whole.clearance_mm - 0.1).abs() < 1e-9, "{whole:?}");
    let windowed = fit(skirt_of(0.1).with_window(cut).unwrap(), wide()).smallest(0).unwrap();
    assert!((windowed.clearance_mm - 0.15).abs() < 1e-9, "{windowed:?}");
    let ported = wide().with_port(Port { from_mm: 60.0, to_mm: 80.0, from_deg: 0.0, to_deg: 360.0 }).unwrap();
    // the bottom of the skirt is 100 mm deep
    let ported = fit(skirt_of(0.1), ported).smallest_at(0, Position::GaugeDepth(95.0)).unwrap();
    assert!((ported.clearance_mm - 0.15).abs() < 1e-9, "{ported:?}");
}

/// A round skirt of 60 mm that is larger by `more` between 25 and 35 mm, and has its size from 20 mm down and from 40 mm up.
fn skirt_of(more: f64) -> Surface {
    let zero = Table { heights_mm: &[0.0], values_mm: &[0.0] };
    let values = [0.0, 0.0, more, more, 0.0, 0.0];
    let barrel = Table { heights_mm: &[0.0, 20.0, 25.0, 35.0, 40.0, 60.0], values_mm: &values };
    let drawing = Symmetric { barrel, counted: Counted::Above, ovality: zero, double_ovality: None };
    Surface::symmetric("skirt", 0.0, 60.0, &drawing).unwrap()
}
