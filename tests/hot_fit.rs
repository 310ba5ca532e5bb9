//! The clearance of a running piston against closed forms, a published table of worked cases, and a dense grid of its own.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::float_cmp,
    reason = "a test that panics has failed"
)]

use gaugepoint::ErrorKind;
use gaugepoint::clearance::hot::inverse::Answer;
use gaugepoint::clearance::hot::onset::Onset;
use gaugepoint::clearance::hot::smallest::Smallest;
use gaugepoint::clearance::hot::{HotFit, Motion, Parts, Position, SurfaceGrowth};
use gaugepoint::growth::field::{BoreField, PistonField, Rise, Scenario};
use gaugepoint::growth::{Law, MeanCoefficient, Piecewise};
use gaugepoint::quantity::Temperature;
use gaugepoint::shape::bore::{BoreDrawing, BoreShape, HarmonicDrawing, Port};
use gaugepoint::shape::piston::{
    Asymmetric, Counted, PistonShape, Surface, Symmetric, Table, Window, WindowKind,
};

fn law(per_k: f64) -> Law {
    let c = Temperature::from_celsius;
    Law::mean_coefficient(c(20.0), MeanCoefficient::from_per_kelvin(per_k), c(-40.0), c(400.0)).unwrap()
}

/// A skirt from 0 to 50 mm with its gauge point at 12 mm; all tables diametral.
fn piston(
    barrel: (&[f64], &[f64]),
    ovality: (&[f64], &[f64]),
    double: Option<(&[f64], &[f64])>,
) -> PistonShape {
    let table = |(heights_mm, values_mm)| Table { heights_mm, values_mm };
    let drawing = Symmetric {
        barrel: table(barrel),
        counted: Counted::Below,
        ovality: table(ovality),
        double_ovality: double.map(table),
    };
    PistonShape::new(12.0, vec![Surface::symmetric("skirt", 0.0, 50.0, &drawing).unwrap()]).unwrap()
}

fn straight(bore_mm: f64, piston_mm: f64, shape: PistonShape, piston_law: &Law, bore_law: &Law) -> Parts {
    Parts {
        piston_diameter_mm: piston_mm,
        piston: shape,
        growth: vec![SurfaceGrowth::free(piston_law)],
        piston_field: PistonField::uniform(120.0, 120.0).unwrap(),
        bore: BoreShape::round(bore_mm).unwrap(),
        bore_law: Piecewise::of(bore_law),
        bore_field: BoreField::uniform(110.0).unwrap(),
        motion: None,
    }
}

fn round_skirt() -> PistonShape {
    piston((&[0.0], &[0.0]), (&[0.0], &[0.0]), None)
}

fn near(what: &str, got: f64, expected: f64, within: f64) {
    assert!((got - expected).abs() <= within, "{what}: {got} is not {expected} to {within}");
}

/// Ten worked cases of free growth: diameter, cold clearance in um, coefficient and temperature of piston and bore, free hot clearance in um as
/// printed. By hand from `D a dT`; where they come from: a table of typical values, computed there to the um with the bore's diameter for both parts.
#[test]
fn worked_cases_of_free_growth() {
    let cases = [
        (86.0, 35.0, 20.5e-6, 120.0, 11.4e-6, 110.0, -53.0),
        (86.0, 35.0, 16.0e-6, 120.0, 11.4e-6, 110.0, -14.0),
        (86.0, 35.0, 14.0e-6, 120.0, 11.4e-6, 110.0, 3.0),
        (86.0, 30.0, 20.5e-6, 120.0, 19.0e-6, 110.0, 1.0),
        (101.6, 76.0, 20.0e-6, 130.0, 11.4e-6, 115.0, -37.0),
        (101.6, 114.0, 22.8e-6, 130.0, 11.4e-6, 115.0, -31.0),
        (130.0, 140.0, 20.5e-6, 130.0, 11.4e-6, 105.0, -27.0),
        (130.0, 100.0, 12.0e-6, 130.0, 11.4e-6, 105.0, 54.0),
        (82.0, 45.0, 12.0e-6, 130.0, 20.0e-6, 110.0, 84.0),
    ];
    for (bore, cold_um, a, t, a_bore, t_bore, hot_um) in cases {
        let mut parts = straight(bore, bore - cold_um / 1000.0, round_skirt(), &law(a), &law(a_bore));
        parts.piston_field = PistonField::uniform(t, t).unwrap();
        parts.bore_field = BoreField::uniform(t_bore).unwrap();
        let fit = HotFit::new(parts).unwrap();
        let running = fit.running_at_gauge_point(Position::Anywhere).unwrap();
        // printed to the um, each of its terms rounded
        near("free hot clearance", running * 1000.0, hot_um, 1.5);
        // definition of strain
        let exact =
            bore * (1.0 + a_bore * (t_bore - 20.0)) - (bore - cold_um / 1000.0) * (1.0 + a * (t - 20.0));
        near("running clearance", running, exact, 1e-12);
        // one side of a round piston is half of it, everywhere
        let smallest = fit.smallest(0).unwrap();
        near("smallest", smallest.clearance_mm, exact / 2.0, 1e-12);
        assert!(smallest.within_mm <= 1e-9 && smallest.place.depth_mm.is_none());
    }
}

/// At 20 C the smallest clearance of a barrelled oval skirt is half the bench clearance, at the gauge point; hotter on the pin axis it goes there.
#[test]
fn closed_forms_of_a_barrelled_oval_skirt() {
    let shape = || piston((&[0.0, 12.0, 50.0], &[0.02, 0.0, 0.06]), (&[0.0], &[0.2]), None);
    let cold =
        HotFit::at_rise(straight(86.035, 86.0, shape(), &law(20e-6), &law(11e-6)), Rise::COLD).unwrap();
    let smallest = cold.smallest(0).unwrap();
    near("cold", smallest.clearance_mm, 0.0175, 1e-12);
    near("its height", smallest.place.height_mm, 12.0, 1e-9);
    assert!(smallest.place.angle_deg == 0.0 || smallest.place.angle_deg == 180.0);
    near("pin axis", cold.at(90.0, 12.0, Position::Anywhere).unwrap(), 0.1175, 1e-12);
    near("45 degrees", cold.at(45.0, 12.0, Position::Anywhere).unwrap(), 0.0675, 1e-12);
    near("both sides", cold.diametral(0.0, 12.0, Position::Anywhere).unwrap(), 0.035, 1e-12);

    let mut parts = straight(86.035, 86.0, shape(), &law(20e-6), &law(11e-6));
    parts.piston_field = PistonField::uniform(100.0, 250.0).unwrap();
    let hot = HotFit::new(parts).unwrap();
    // r (1 + eps) by hand on both axes
    let bore = 43.0175 * (1.0 + 11e-6 * 90.0);
    let thrust = bore - 43.0 * (1.0 + 20e-6 * 80.0);
    let pin = bore - 42.9 * (1.0 + 20e-6 * 230.0);
    near("thrust axis", hot.at(0.0, 12.0, Position::Anywhere).unwrap(), thrust, 1e-12);
    near("pin axis", hot.at(270.0, 12.0, Position::Anywhere).unwrap(), pin, 1e-12);
    let smallest = hot.smallest(0).unwrap();
    near("smallest", smallest.clearance_mm, pin, 1e-10);
    near("its angle", smallest.place.angle_deg % 180.0, 90.0, 1e-4);
    let ovality = hot.ovality(0, 12.0).unwrap();
    near("cold ovality", ovality.cold_mm, 0.2, 1e-12);
    near("running ovality", ovality.running_mm, 2.0 * (pin - thrust), 1e-12);
    // equal running diameters on both axes
    let round = 86.0 - 86.0 * (1.0 + 20e-6 * 80.0) / (1.0 + 20e-6 * 230.0);
    near("ovality that runs round", ovality.round_running_mm, round, 1e-12);
}

/// A taper and a temperature that rises in a straight line: the clearance over height is a parabola, `(r0 - b z)(1 + a (T0 + g z - 20))` from the radius.
#[test]
fn a_straight_temperature_on_a_taper_is_a_parabola() {
    let (a, g, t0) = (20e-6, 2.0, 90.0);
    let b = 0.001_715;
    let rows: [f64; 2] = [0.0, 50.0];
    let shape = piston((&rows, &[0.0, 2.0 * b * 50.0]), (&[0.0], &[0.0]), None);
    let mut parts = straight(86.2, 86.0, shape, &law(a), &law(11e-6));
    let temperatures = [t0, t0 + g * 50.0];
    parts.piston_field = PistonField::through(&rows, &temperatures, &temperatures).unwrap();
    let fit = HotFit::new(parts).unwrap();
    // the table is counted from the gauge point at 12 mm
    let r0 = 43.0 + b * 12.0;
    let c = |z: f64| 43.1 * (1.0 + 11e-6 * 90.0) - (r0 - b * z) * (1.0 + a * (t0 - 20.0 + g * z));
    // where its derivative is zero
    let z = (r0 * a * g - b * (1.0 + a * (t0 - 20.0))) / (2.0 * a * b * g);
    assert!(z > 5.0 && z < 45.0, "the vertex is on the skirt: {z}");
    let smallest = fit.smallest(0).unwrap();
    near("smallest", smallest.clearance_mm, c(z), 1e-9);
    assert!(smallest.clearance_mm >= c(z) - 1e-12, "never below the true one");
    near("its height", smallest.place.height_mm, z, 0.2);
}

/// A skirt that widens downward and grows less steeply from a kink on is widest at the kink. With the bore kept at 20 C that is so at every depth, and the
/// proof does not look at one depth after the other. The clearance by hand: `R - (r0 - b z)(1 + a (100 - 20))` where the temperature is 100 C.
#[test]
fn a_kink_at_every_depth_of_a_moving_piston() {
    let (a, b, g) = (20e-6, 0.001_58, 2.0);
    let rows: [f64; 2] = [0.0, 50.0];
    let c = Temperature::from_celsius;
    let mean = |a: f64| MeanCoefficient::from_per_kelvin(a);
    // the slope of the strain falls from 20e-6 to 16.8e-6 per kelvin at 100 C: r a g is above b below it, and below b above it
    let table = [(c(20.0), mean(a)), (c(100.0), mean(a)), (c(300.0), mean(12e-6))];
    let piston_law = Law::mean_table(c(20.0), &table).unwrap();
    let shape = piston((&rows, &[0.0, 2.0 * b * 50.0]), (&[0.0], &[0.0]), None);
    let mut parts = straight(86.2, 86.0, shape, &piston_law, &law(11e-6));
    let temperatures = [65.0, 65.0 + g * 50.0];
    parts.piston_field = PistonField::through(&rows, &temperatures, &temperatures).unwrap();
    parts.bore_field = BoreField::through(&[0.0, 70.0, 200.0], &[140.0, 115.0, 95.0]).unwrap();
    parts.motion = Some(Motion::new(43.0, 140.0, 0.0, 0.2, 60.0).unwrap());
    let smallest = HotFit::at_rise(parts, Rise { piston: 1.0, bore: 0.0 }).unwrap().smallest(0).unwrap();
    let z = (100.0 - 65.0) / g;
    // the table is counted from the gauge point at 12 mm
    let by_hand = 43.1 - (43.0 + b * 12.0 - b * z) * (1.0 + a * 80.0);
    near("smallest", smallest.clearance_mm, by_hand, 1e-9);
    near("its height", smallest.place.height_mm, z, 1e-4);
    assert!(smallest.within_mm <= 1e-9 && smallest.sections < 2000, "{smallest:?}");
}

/// Round parts: `D = d (1 + k a dT)`, solved for k.
#[test]
fn onset_of_round_parts() {
    let fit = HotFit::new(straight(86.1, 86.0, round_skirt(), &law(20e-6), &law(11e-6))).unwrap();
    let found = |scenario, touching: f64| match fit.onset(scenario, touching).unwrap() {
        Onset::Touches(contact) => {
            assert!(contact.proven);
            contact.factor
        }
        other => panic!("{other:?}"),
    };
    let (a, b) = (20e-6 * 100.0, 11e-6 * 90.0);
    near("cold bore", found(Scenario::PistonWithColdBore, 0.0), (86.1 / 86.0 - 1.0) / a, 1e-7);
    near("piston alone", found(Scenario::PistonAlone, 0.0), (86.1 * (1.0 + b) / 86.0 - 1.0) / a, 1e-7);
    near("both", found(Scenario::PistonAndBore, 0.0), 0.1 / (86.0 * a - 86.1 * b), 1e-7);
    // 10 um of overlap on one side
    near("overlap", found(Scenario::PistonWithColdBore, -0.01), (86.12 / 86.0 - 1.0) / a, 1e-7);
    near("temperature there", fit.gauge_thrust_c(0.5), 70.0, 1e-12);

    let tight = HotFit::new(straight(85.99, 86.0, round_skirt(), &law(20e-6), &law(11e-6))).unwrap();
    assert_eq!(tight.onset(Scenario::PistonWithColdBore, 0.0).unwrap(), Onset::TouchesCold);
    let wide = HotFit::new(straight(90.0, 86.0, round_skirt(), &law(20e-6), &law(11e-6))).unwrap();
    match wide.onset(Scenario::PistonAndBore, 0.0).unwrap() {
        // the law ends at 400 C: (400 - 20) / (120 - 20)
        Onset::NoContact { factor, proven, .. } => {
            near("end of the law", factor, 3.8, 1e-12);
            assert!(proven);
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn inverses_by_evaluating_them_again() {
    let shape = piston(
        (&[0.0, 12.0, 50.0], &[0.02, 0.0, 0.06]),
        (&[0.0, 50.0], &[0.2, 0.3]),
        Some((&[0.0], &[0.02])),
    );
    let parts = straight(86.1, 86.0, shape, &law(20e-6), &law(11e-6));
    let fit = HotFit::new(parts.clone()).unwrap();
    let with_bore =
        |bore: f64| HotFit::new(Parts { bore: BoreShape::round(bore).unwrap(), ..parts.clone() }).unwrap();
    match fit.bore_for_running_clearance(0.04, Position::Anywhere).unwrap() {
        Answer::Found(bore) => {
            near("by hand", bore, (0.04 + 86.0 * 1.002) / (1.0 + 11e-6 * 90.0), 1e-9);
            near("again", with_bore(bore).running_at_gauge_point(Position::Anywhere).unwrap(), 0.04, 1e-9);
        }
        Answer::NoSolution(why) => panic!("{why}"),
    }
    match fit.bore_for_smallest_clearance(0.01).unwrap() {
        Answer::Found(bore) => near("again", with_bore(bore).smallest(0).unwrap().clearance_mm, 0.01, 2e-9),
        Answer::NoSolution(why) => panic!("{why}"),
    }
    match fit.piston_temperature_for_bench_clearance(3.0, Scenario::PistonAlone, 0.0).unwrap() {
        Answer::NoSolution(why) => assert!(why.contains("400"), "{why}"),
        Answer::Found(c) => panic!("{c}"),
    }
}

/// A map leaves out what has no bore around it, and refuses what is not on the piston or beyond the tables of the bore; then it writes nothing.
#[test]
fn a_map_is_nan_where_there_is_no_bore() {
    let mut parts = straight(86.1, 86.0, round_skirt(), &law(20e-6), &law(11e-6));
    let level =
        |from: f64| BoreShape::round(86.1).unwrap().with_deviation(&[from, 200.0], &[0.0, 0.0]).unwrap();
    parts.bore = level(0.0).with_end(150.0).unwrap();
    let fit = HotFit::new(parts.clone()).unwrap();
    let map = |depth: f64, heights: &[f64]| fit.map(&[0.0, 90.0], heights, Position::GaugeDepth(depth));
    let missing = |map: &[f64]| map.iter().map(|c| c.is_nan()).collect::<Vec<_>>();
    // the gauge point is at 12 mm: 20 mm deep, what is above 32 mm stands out of the bore
    let high = map(20.0, &[0.0, 32.0, 32.5, 50.0]).unwrap();
    assert_eq!(missing(&high), [false, false, false, false, true, true, true, true]);
    // 140 mm deep, what is below 2 mm
    let low = map(140.0, &[1.5, 2.0]).unwrap();
    assert_eq!(missing(&low), [true, true, false, false]);
    near("by hand", low[2], 43.05 * (1.0 + 11e-6 * 90.0) - 43.0 * (1.0 + 20e-6 * 100.0), 1e-12);
    let picture = fit.map_of(0, Position::GaugeDepth(20.0), 5, 3).unwrap();
    assert_eq!(
        picture.clearance_mm.iter().map(|row| row[0].is_some()).collect::<Vec<_>>(),
        [true, true, false]
    );
    assert_eq!(map(140.0, &[51.0]).unwrap_err().field(), "heights_mm/0");
    parts.bore = level(30.0);
    let short = HotFit::new(parts).unwrap();
    let mut out = [7.0; 2];
    let refused = short.map_into(&[0.0], &[2.0, 12.0], Position::GaugeDepth(20.0), &mut out).unwrap_err();
    assert!(refused.field() == "heights_mm/1" && refused.reason().contains("do not reach"), "{refused}");
    assert_eq!(out, [7.0; 2]);
}

/// Orders stand once, the position of the axis too; the place in the drawing is named.
#[test]
fn a_bore_from_its_drawing() {
    let once = |order| HarmonicDrawing { order, depths_mm: &[0.0], cos_mm: &[0.01], sin_mm: &[0.0] };
    let drawing = |harmonics: Vec<HarmonicDrawing<'static>>| BoreDrawing {
        diameter_mm: 86.0,
        deviation: Some((&[0.0, 100.0], &[0.0, 0.02])),
        harmonics,
        ports: vec![Port { from_deg: 80.0, to_deg: 100.0, from_mm: 40.0, to_mm: 60.0 }],
        end_mm: Some(120.0),
    };
    let bore = BoreShape::from_drawing(&drawing(vec![once(3), once(2), once(1)])).unwrap();
    near("definition", bore.radius_mm(50.0, 60.0), 43.0 + 0.01 - 0.01 - 0.01 * 0.5, 1e-12);
    assert!(bore.supports(50.0, 80.0) && !bore.supports(50.0, 90.0) && bore.end_mm == Some(120.0));
    for order in [1, 2] {
        let refused = BoreShape::from_drawing(&drawing(vec![once(order), once(order)])).unwrap_err();
        assert_eq!((refused.kind(), refused.field()), (ErrorKind::Repeated, "harmonics/1/order"));
    }
}

/// A generator of random fits.
struct Random(u64);

impl Random {
    /// Evenly between two numbers.
    fn between(&mut self, low: f64, high: f64) -> f64 {
        // xorshift64*, Vigna 2016, from memory
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        let bits = self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 11;
        #[expect(clippy::cast_precision_loss, reason = "53 bits")]
        let share = bits as f64 / (1u64 << 53) as f64;
        low + (high - low) * share
    }

    fn many(&mut self, count: usize, low: f64, high: f64) -> Vec<f64> {
        (0..count).map(|_| self.between(low, high)).collect()
    }
}

/// How the bore is made.
#[derive(Clone, Copy, PartialEq)]
enum Kind {
    Straight,
    Even,
    General,
}

fn random(seed: u64, kind: Kind) -> Parts {
    let mut r = Random(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1);
    let heights = [0.0, r.between(5.0, 7.0), 12.0, r.between(17.0, 30.0), 50.0];
    let ovality = r.many(5, 0.0, 0.4);
    // no steeper than a skirt may be
    let barrel = r.many(5, -0.01, 0.06);
    let double = r.many(5, -0.05, 0.05);
    let shape = piston((&heights, &barrel), (&heights, &ovality), Some((&heights, &double)));
    let rows = [0.0, r.between(10.0, 25.0), r.between(30.0, 45.0), 50.0];
    let (thrust, pin) = (r.many(4, 90.0, 180.0), r.many(4, 100.0, 220.0));
    let c = Temperature::from_celsius;
    let mean = |a: f64| MeanCoefficient::from_per_kelvin(a);
    // a table of means, whose strain has kinks between the temperatures of the skirt, one of them downward
    let table = [
        (c(20.0), mean(19.5e-6)),
        (c(110.0), mean(21.5e-6)),
        (c(150.0), mean(20.5e-6)),
        (c(400.0), mean(22e-6)),
    ];
    let piston_law = Law::mean_table(c(20.0), &table).unwrap();
    let bore_table = [(c(20.0), mean(10.5e-6)), (c(105.0), mean(12.0e-6)), (c(400.0), mean(12.5e-6))];
    let bore_law = Law::mean_table(c(20.0), &bore_table).unwrap();
    let mut parts = straight(86.0 + r.between(0.0, 0.1), 86.0, shape, &piston_law, &bore_law);
    parts.growth =
        vec![SurfaceGrowth::controlled(&piston_law, r.between(0.6, 1.0), r.between(0.9, 1.1)).unwrap()];
    parts.piston_field = PistonField::through(&rows, &thrust, &pin).unwrap();
    parts.motion = Some(Motion::new(43.0, 140.0, r.between(-1.0, 1.0), 0.2, 60.0).unwrap());
    if kind == Kind::Straight {
        return parts;
    }
    // the top of the skirt stands 10.2 deep at top dead centre, where the first row is: a line of one travel through a corner
    let depths = [10.2, 30.0, r.between(50.0, 70.0), 100.0, 147.0];
    let deviation = r.many(5, -0.02, 0.03);
    let mut bore =
        BoreShape::round(parts.bore.diameter_mm).unwrap().with_deviation(&depths, &deviation).unwrap();
    let (quiet, orders) = match kind {
        Kind::General => (0.008, vec![2, 3, 4, 5]),
        _ => (0.0, vec![2, 4]),
    };
    for order in orders {
        let (cosine, sine) = (r.many(5, -0.01, 0.01), r.many(5, -quiet, quiet));
        bore = bore.with_harmonic(order, &depths, &cosine, &sine).unwrap();
    }
    let walls = r.many(5, 85.0, 160.0);
    parts.bore = bore;
    parts.bore_field = BoreField::through(&depths, &walls).unwrap();
    parts
}

/// Strain by a table of mean coefficients from 20 C: the straight line between its rows, times the rise.
fn strain(rows: &[(f64, f64)], t: f64) -> f64 {
    let (low, high) = rows.iter().zip(&rows[1..]).find(|(_, high)| t <= high.0).expect("within the table");
    (low.1 + (high.1 - low.1) * (t - low.0) / (high.0 - low.0)) * (t - 20.0)
}

/// Hot radii written out anew from the definitions, angles in degrees.
fn piston_hot(parts: &Parts, angle: f64, z: f64) -> f64 {
    let t = angle.to_radians();
    let side = parts.piston.surfaces[0].side(angle);
    // the tables of a side are radial: half the diametral ones
    let r = parts.piston_diameter_mm / 2.0 + side.barrel.value(z)
        - side.ovality.value(z) / 2.0 * (1.0 - libm::cos(2.0 * t))
        + side.fourth.value(z) / 2.0 * (1.0 - libm::cos(4.0 * t));
    let table = [(20.0, 19.5e-6), (110.0, 21.5e-6), (150.0, 20.5e-6), (400.0, 22e-6)];
    let (cosine, sine) = (libm::cos(t), libm::sin(t));
    let thrust = parts.growth[0].ratio_thrust * strain(&table, parts.piston_field.thrust_c.value(z));
    let pin = parts.growth[0].ratio_pin * strain(&table, parts.piston_field.pin_c.value(z));
    r * (1.0 + thrust * cosine * cosine + pin * sine * sine)
}

fn bore_hot(parts: &Parts, angle: f64, y: f64) -> f64 {
    let t = angle.to_radians();
    let bore = &parts.bore;
    let mut radius = bore.diameter_mm / 2.0 + bore.deviation_mm.value(y);
    for h in &bore.harmonics {
        let n = f64::from(u32::try_from(h.order).unwrap());
        radius += h.cos_mm.value(y) * libm::cos(n * t) + h.sin_mm.value(y) * libm::sin(n * t);
    }
    let table = [(20.0, 10.5e-6), (105.0, 12.0e-6), (400.0, 12.5e-6)];
    radius * (1.0 + strain(&table, parts.bore_field.wall_c.value(y)))
}

/// Depth of the bottom edge of the skirt at both dead centres, from the triangle of crank and rod: the offset is at most 1 mm.
fn bases(parts: &Parts) -> (f64, f64) {
    let motion = parts.motion.expect("it moves");
    (60.2, 60.2 + motion.stroke_mm())
}

/// The smallest clearance on a grid, and from its best places downhill.
fn by_grid(parts: &Parts) -> f64 {
    let (top, bottom) = bases(parts);
    let steps = |from: f64, to: f64, count: u32| -> Vec<f64> {
        (0..=count).map(|k| from + (to - from) * f64::from(k) / f64::from(count)).collect()
    };
    let (angles, heights, stands) = (steps(0.0, 360.0, 72), steps(0.0, 50.0, 50), steps(top, bottom, 30));
    let mut best: Vec<(f64, [f64; 3])> = Vec::new();
    for angle in &angles {
        for z in &heights {
            let r = piston_hot(parts, *angle, *z);
            for base in &stands {
                let place = [*angle, *z, *base];
                best.push((bore_hot(parts, *angle, base - z) - r, place));
            }
        }
    }
    best.sort_by(|a, b| a.0.total_cmp(&b.0));
    best.truncate(12);
    let c = |[angle, z, base]: [f64; 3]| bore_hot(parts, angle, base - z) - piston_hot(parts, angle, z);
    let limits = [(f64::NEG_INFINITY, f64::INFINITY), (0.0, 50.0), (top, bottom)];
    best.into_iter()
        .map(|(mut least, mut at)| {
            let mut step = [5.0, 1.0, 3.0];
            while step[1] > 1e-7 {
                let mut moved = false;
                for (k, (low, high)) in limits.into_iter().enumerate() {
                    for way in [-1.0, 1.0] {
                        let mut next = at;
                        next[k] = (next[k] + way * step[k]).clamp(low, high);
                        if c(next) < least {
                            (least, at, moved) = (c(next), next, true);
                        }
                    }
                }
                if !moved {
                    step = step.map(|s| s / 2.0);
                }
            }
            least
        })
        .fold(f64::INFINITY, f64::min)
}

fn against_grid(kind: Kind, seeds: core::ops::Range<u64>) {
    for seed in seeds {
        agrees_with_grid(seed, random(seed, kind));
    }
}

fn agrees_with_grid(seed: u64, parts: Parts) {
    let fit = HotFit::new(parts.clone()).unwrap();
    let Smallest { clearance_mm, place, within_mm, .. } = fit.smallest(0).unwrap();
    assert!((0.0..=1.1e-9).contains(&within_mm), "{seed}: {within_mm}");
    let (top, bottom) = bases(&parts);
    let depth = place.depth_mm.unwrap_or(60.2);
    assert!(place.depth_mm.is_none() || (top - 1e-9..=bottom + 1e-9).contains(&(depth + place.height_mm)));
    let there =
        bore_hot(&parts, place.angle_deg, depth) - piston_hot(&parts, place.angle_deg, place.height_mm);
    near("the value at its place", clearance_mm, there, 2e-10);
    // nothing on the grid or downhill from it is below what is certified
    let grid = by_grid(&parts);
    assert!(
        grid >= clearance_mm - within_mm - 1e-12,
        "{seed}: {grid} is below {clearance_mm} by more than {within_mm}"
    );
    assert!(clearance_mm <= grid + 1e-9 + 1e-12, "{seed}: {clearance_mm} is above {grid}");
    if let Some(crank) = place.crank_deg {
        let again = fit.smallest_at(0, Position::Crank(crank)).unwrap();
        near("at its crank angle", again.clearance_mm, clearance_mm, 2e-9);
    }
}

#[test]
fn smallest_in_a_straight_bore_against_a_grid() {
    against_grid(Kind::Straight, 0..60);
}

#[test]
fn smallest_in_an_even_bore_against_a_grid() {
    against_grid(Kind::Even, 100..130);
}

#[test]
fn smallest_in_a_general_bore_against_a_grid() {
    against_grid(Kind::General, 200..208);
}

/// A straight bore with odd and even waves; `lopsided` is a piston whose sides differ.
fn wavy(seed: u64, lopsided: bool) -> Parts {
    let mut parts = random(seed, Kind::Straight);
    let mut r = Random(seed.wrapping_mul(0xD134_2543_DE82_EF95) | 1);
    for order in [2, 3, 4, 5] {
        let (cosine, sine) = (r.many(1, -0.01, 0.01), r.many(1, -0.008, 0.008));
        parts.bore = parts.bore.with_harmonic(order, &[0.0], &cosine, &sine).unwrap();
    }
    if lopsided {
        let heights = [0.0, r.between(4.0, 8.0), 12.0, r.between(17.0, 30.0), 50.0];
        let (major, minor, pin) = (r.many(5, -0.005, 0.03), r.many(5, -0.005, 0.03), r.many(5, 0.05, 0.2));
        let fourth = r.many(5, -0.02, 0.02);
        let table = |values_mm| Table { heights_mm: &heights, values_mm };
        let drawing = Asymmetric {
            thrust: table(&major),
            pin_axis: table(&pin),
            minor_thrust: table(&minor),
            counted: Counted::Below,
            thrust_fourth: Some(table(&fourth)),
            minor_thrust_fourth: None,
        };
        let skirt = Surface::asymmetric("skirt", 0.0, 50.0, &drawing).unwrap();
        parts.piston = PistonShape::new(12.0, vec![skirt]).unwrap();
    }
    parts
}

#[test]
fn smallest_in_a_straight_bore_with_waves_against_a_grid() {
    for seed in 400..430 {
        agrees_with_grid(seed, wavy(seed, false));
    }
}

#[test]
fn smallest_of_a_piston_with_unequal_sides_against_a_grid() {
    for seed in 500..530 {
        let mut parts = wavy(seed, true);
        agrees_with_grid(seed, parts.clone());
        parts.bore = BoreShape::round(parts.bore.diameter_mm).unwrap();
        agrees_with_grid(seed, parts);
    }
}

/// A map has the bits of each place alone, by the formulas in turn; nothing where a window or a port is, by hand.
#[test]
fn a_map_has_the_bits_of_its_places() {
    let angles: Vec<f64> =
        (0..=97).map(|k| f64::from(k) * 360.0 / 97.0).chain([90.0, 270.0, 180.0]).collect();
    let heights: Vec<f64> = (0..=23).map(|k| f64::from(k) * 50.0 / 23.0).collect();
    let window = |kind, from_deg, to_deg| Window { kind, from_deg, to_deg, from_mm: 10.0, to_mm: 20.0 };
    for seed in 600..606 {
        for (mut parts, position, moved) in [
            (random(seed, Kind::Straight), Position::Anywhere, None),
            (wavy(seed, true), Position::Anywhere, None),
            (random(seed, Kind::General), Position::GaugeDepth(60.0), Some(60.0 + 12.0)),
        ] {
            let skirt = &mut parts.piston.surfaces[0];
            *skirt = skirt.clone().with_coating(0.011).unwrap();
            *skirt = skirt.clone().with_window(window(WindowKind::CutOut, 100.0, 140.0)).unwrap();
            *skirt = skirt.clone().with_window(window(WindowKind::Bare, 200.0, 240.0)).unwrap();
            if moved.is_some() {
                let port = Port { from_deg: 300.0, to_deg: 330.0, from_mm: 40.0, to_mm: 50.0 };
                parts.bore = parts.bore.with_port(port).unwrap();
            }
            let fit = HotFit::new(parts).unwrap();
            let map = fit.map(&angles, &heights, position).unwrap();
            for (row, z) in map.chunks(angles.len()).zip(&heights) {
                for (found, angle) in row.iter().zip(&angles) {
                    let in_window = *angle > 100.0 && *angle < 140.0 && *z > 10.0 && *z < 20.0;
                    let over_port = moved.is_some_and(|base| {
                        *angle > 300.0 && *angle < 330.0 && base - z > 40.0 && base - z < 50.0
                    });
                    match in_window || over_port {
                        true => assert!(found.is_nan()),
                        false => {
                            let alone = fit.at(*angle, *z, position).unwrap();
                            assert_eq!(found.to_bits(), alone.to_bits(), "{seed} {angle} {z}");
                        }
                    }
                }
            }
        }
    }
}

/// Of random fits: below the factor found nothing touches, at it something does.
#[test]
fn onset_against_the_smallest_clearance() {
    for seed in 300..330 {
        let mut parts = random(seed, Kind::Straight);
        parts.bore = BoreShape::round(86.15).unwrap();
        let fit = HotFit::new(parts.clone()).unwrap();
        for scenario in [Scenario::PistonAlone, Scenario::PistonAndBore, Scenario::PistonWithColdBore] {
            let least = |k: f64| {
                HotFit::at_rise(parts.clone(), scenario.rise(k)).unwrap().smallest(0).unwrap().clearance_mm
            };
            let (end, touches) = match fit.onset(scenario, 0.0).unwrap() {
                Onset::Touches(contact) => (contact.factor, true),
                Onset::NoContact { factor, .. } => (factor, false),
                Onset::TouchesCold => (0.0, true),
            };
            if touches {
                near("touching", least(end), 0.0, 5e-9);
            }
            for k in 0..20 {
                let k = (end - 1e-6) * f64::from(k) / 19.0;
                assert!(k < 0.0 || least(k) > 0.0, "{seed}: touches at {k}, before {end}");
            }
        }
    }
}

/// Every clearance of a centred piston on a grid, with the place in the turn, at one depth of its bottom edge.
fn gaps(parts: &Parts, base: f64) -> Vec<(f64, f64, f64)> {
    let angles = (0..720_u16).map(|k| f64::from(k) / 2.0);
    let heights: Vec<f64> = (0..=1000_u16).map(|j| f64::from(j) / 20.0).collect();
    let at = |angle: f64| {
        let c = heights.iter().map(|z| bore_hot(parts, angle, base - z) - piston_hot(parts, angle, *z));
        let t = angle.to_radians();
        (c.fold(f64::INFINITY, f64::min), libm::cos(t), libm::sin(t))
    };
    angles.map(at).collect()
}

/// No other place sideways has more room than what is certified, and the place found has what is said.
#[test]
fn most_room_against_other_places() {
    for seed in 400..406 {
        let parts = random(seed, if seed % 2 == 0 { Kind::General } else { Kind::Even });
        let fit = HotFit::new(parts.clone()).unwrap();
        let position = Position::TopDeadCentre;
        let best = fit.best_placed(0, position).unwrap();
        assert!((0.0..=2.1e-9).contains(&best.within_mm), "{seed}: {best:?}");
        let gaps = gaps(&parts, bases(&parts).0);
        let moved =
            |x: f64, y: f64| gaps.iter().map(|(c, u, v)| c - x * u - y * v).fold(f64::INFINITY, f64::min);
        let here = moved(best.thrust_mm, best.pin_mm);
        // the smallest place stands beside the grid
        let beside = 1e-5;
        assert!(
            here >= best.clearance_mm - best.within_mm && here <= best.clearance_mm + beside,
            "{seed}: {here} {best:?}"
        );
        let mut r = Random(seed);
        for reach in [1e-4, 1e-3, 1e-2, 1e-1] {
            for _ in 0..50 {
                let (x, y) =
                    (best.thrust_mm + r.between(-reach, reach), best.pin_mm + r.between(-reach, reach));
                let there = moved(x, y);
                assert!(there <= best.clearance_mm + beside, "{seed}: {there} at {x}, {y}, {best:?}");
            }
        }
        let centred = fit.smallest_at(0, position).unwrap().clearance_mm;
        assert!(best.clearance_mm >= centred - 1e-9, "{seed}: {centred} {best:?}");
    }
}
