//! Machining and the choice of an oversize: printed forms, closed forms, and every way beside an enumeration of its own.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::ErrorKind;
use gaugepoint::plan::machining::{
    FinishCheck, WarmGauging, bore_sizes, boring_order, dial_reading_mm, finish_check,
};
use gaugepoint::plan::oversize::{
    Action, Block, Choice, Oversizes, RuledOut, Step, Way, WornBore, oversizes,
};
use gaugepoint::quantity::{Expansion, Temperature};
use gaugepoint::shape::deck::Chamber;
use gaugepoint::size::Condition;
use gaugepoint_tests::named::{hold, machining_row};
use gaugepoint_tests::rows;
use proptest::prelude::*;

/// By hand and by exact fractions, refusals: what every host must say.
#[test]
fn vectors_hold() {
    let rows = rows("tests/vectors/machining.csv");
    let held: usize = rows.iter().map(|r| hold(&r[0], &r[3], machining_row(r))).sum();
    assert!(rows.len() > 25 && held > 45, "{held} comparisons in {} rows", rows.len());
}

fn near(ours: f64, value: f64, within: f64) {
    assert!((ours - value).abs() <= within, "{ours}, not {value}");
}

fn at(celsius: f64, per_kelvin: f64) -> Condition {
    Condition {
        temperature: Temperature::from_celsius(celsius),
        expansion: Expansion::from_per_kelvin(per_kelvin),
    }
}

/// Makers print `D = A + B - C`: piston as measured, clearance 0.02 mm to 0.04 mm, honing allowance 0.02 mm.
#[test]
fn boring_size_is_the_printed_form() {
    let sizes = bore_sizes(85.96, 0.03, 0.02).unwrap();
    near(sizes.finish_mm, 85.99, 1e-12);
    near(sizes.boring_mm, 85.97, 1e-12);
    let refused = bore_sizes(85.96, 0.03, 0.6).unwrap_err();
    assert_eq!((refused.kind(), refused.field()), (ErrorKind::OutOfRange, "honing_mm"));
}

/// A bore of 100 mm in iron that is 15 K warm is 17 um larger: by hand, 100 x 11.3e-6 x 15 = 0.01695.
#[test]
fn a_warm_block_reads_large() {
    let exact = at(20.0, 11.5e-6);
    let gauging = |block| WarmGauging { setting_mm: 100.0, ring: exact, set: exact, used: exact, block };
    near(dial_reading_mm(100.0, &gauging(at(35.0, 11.3e-6))).unwrap(), 0.01695, 1e-12);
    near(dial_reading_mm(100.02, &gauging(at(20.0, 11.3e-6))).unwrap(), 0.02, 1e-12);
    let refused = dial_reading_mm(110.0, &gauging(exact)).unwrap_err();
    assert_eq!((refused.kind(), refused.field()), (ErrorKind::OutOfRange, "setting_mm"));
}

proptest! {
    /// What the dial must read, read on the dial, gives the size again.
    #[test]
    fn the_dial_gives_the_size_again(
        size in 80.0..90.0, off in -0.5..0.5, t in prop::array::uniform4(5.0..45.0), a in prop::array::uniform3(9e-6..24e-6),
    ) {
        let setting = size + off;
        let (ring, set, used, block) = (at(t[0], a[0]), at(t[1], a[1]), at(t[2], a[1]), at(t[3], a[2]));
        let dial = dial_reading_mm(size, &WarmGauging { setting_mm: setting, ring, set, used, block }).unwrap();
        // by the definition of the comparison
        let strain = |c: Condition| (c.temperature.celsius() - 20.0) * c.expansion.per_kelvin();
        let found = (setting * (1.0 + strain(ring)) * (1.0 + strain(used)) / (1.0 + strain(set)) + dial) / (1.0 + strain(block));
        prop_assert!((found - size).abs() < 1e-12);
    }
}

#[test]
fn a_finish_is_met_or_says_by_how_much_not() {
    let check = |size| finish_check(size, 86.25, 0.005).unwrap();
    assert_eq!(check(86.252), FinishCheck::Met);
    assert!(matches!(check(86.23), FinishCheck::HoneOn { stock_mm } if (stock_mm - 0.02).abs() < 1e-12));
    assert!(matches!(check(86.26), FinishCheck::TooLarge { by_mm } if (by_mm - 0.01).abs() < 1e-12));
}

#[test]
fn no_neighbours_are_bored_one_after_the_other() {
    for cylinders in 1..=24 {
        let order = boring_order(cylinders).unwrap();
        let mut sorted = order.clone();
        sorted.sort_unstable();
        assert_eq!(sorted, (1..=cylinders).collect::<Vec<_>>());
        let apart = order.windows(2).all(|w| w[0].abs_diff(w[1]) > 1);
        assert_eq!(apart, cylinders > 3 || cylinders == 1, "{order:?}");
    }
    assert_eq!(boring_order(0).unwrap_err().kind(), ErrorKind::OutOfRange);
}

fn bore(clean_up_mm: f64, largest_by_walls_mm: Option<f64>, may_be_sleeved: bool) -> WornBore {
    WornBore {
        clean_up_mm,
        standard_uncertainty_mm: 0.004,
        largest_by_walls_mm,
        may_be_sleeved,
        goes_back: false,
    }
}

fn step(oversize_mm: f64, price: f64, available: Option<usize>) -> Step {
    Step { oversize_mm, price, available, more_mass_g: Some(oversize_mm * 20.0) }
}

const BLOCK: Block = Block {
    nominal_mm: 86.0,
    largest_by_gasket_mm: Some(86.9),
    sleeve_price: Some(150.0),
    boring_price: 40.0,
    guard: 2.0,
    chamber: None,
    ring_gap_mm: Some(0.3),
};

fn of(found: &Oversizes, way: Way, action: Action) -> &Choice {
    found.choices.iter().find(|c| c.way == way && c.actions.contains(&action)).unwrap()
}

#[test]
fn what_is_ruled_out_stays_with_its_reasons() {
    let bores = [bore(86.20, None, false), bore(86.245, None, true), bore(86.40, Some(86.45), true)];
    let steps = [step(0.25, 50.0, None), step(0.5, 55.0, Some(2)), step(1.0, 70.0, None)];
    let found = oversizes(&BLOCK, &bores, &steps).unwrap();
    // 86.245 + 2 x 0.004 is above 86.25; 86.40 too
    let quarter = of(&found, Way::OneStep, Action::Bore(0));
    let needed = |bore, needed_mm| RuledOut::NotClean { bore, needed_mm };
    assert_eq!(quarter.ruled_out, [needed(1, 86.245 + 2.0 * 0.004), needed(2, 86.40 + 2.0 * 0.004)]);
    assert_eq!(
        of(&found, Way::OneStep, Action::Bore(1)).ruled_out,
        [
            RuledOut::WallTooThin { bore: 2, largest_mm: 86.45 },
            RuledOut::TooFewPistons { step: 1, needed: 3, available: 2 },
        ]
    );
    let whole = of(&found, Way::OneStep, Action::Bore(2));
    assert_eq!(whole.ruled_out[0], RuledOut::GasketTooSmall { largest_mm: 86.9 });
    // two sleeves at the first step are the one way that is left: 3 (50 + 40) + 2 x 150
    let best = &found.choices[0];
    assert_eq!(
        (best.way, best.price, best.actions.as_slice()),
        (Way::StepAndSleeves, 570.0, [Action::Bore(0), Action::Sleeve(0), Action::Sleeve(0)].as_slice())
    );
    assert!(best.ruled_out.is_empty() && found.choices[1..].iter().all(|c| !c.ruled_out.is_empty()));
    // a bore that may take no sleeve rules that out
    let none = [bores[0].clone(), bore(86.245, None, false), bores[2].clone()];
    let found = oversizes(&BLOCK, &none, &steps).unwrap();
    assert_eq!(
        of(&found, Way::StepAndSleeves, Action::Sleeve(0)).ruled_out,
        [RuledOut::NoSleeve { bore: 1 }]
    );
}

/// 86 x 86 mm at 10 to 1, bored by 0.5 mm with the chamber as it is: 10.10, by hand from the volumes.
#[test]
fn consequences_of_a_step() {
    let swept = core::f64::consts::PI * 8.6 * 8.6 * 8.6 / 4.0;
    let chamber = Chamber {
        bore_mm: 86.0,
        stroke_mm: 86.0,
        head_cm3: swept / 9.0 - core::f64::consts::PI * 8.8 * 8.8 * 0.1 / 4.0,
        gasket_bore_mm: 88.0,
        gasket_mm: 1.0,
        deck_clearance_mm: 0.0,
        crown_cm3: 0.0,
        crevice_cm3: 0.0,
    };
    let block = Block { chamber: Some(chamber), ..BLOCK };
    let steps = [step(0.0, 50.0, None), step(0.5, 50.0, None)];
    let found = oversizes(&block, &[bore(86.1, None, true)], &steps).unwrap();
    let [standard, half] = &found.consequences[..] else { panic!() };
    near(standard.compression_ratio.unwrap(), 10.0, 1e-9);
    // 1 + 9 (86.5 / 86)^2
    near(half.compression_ratio.unwrap(), 1.0 + 9.0 * (86.5 / 86.0) * (86.5 / 86.0), 1e-9);
    near(half.compression_ratio.unwrap(), 10.10, 0.006);
    // half of pi more
    near(half.ring_gap_mm.unwrap(), 0.3 + core::f64::consts::FRAC_PI_2, 1e-12);
    assert_eq!((half.bore_mm, half.more_mass_g), (86.5, Some(10.0)));
}

#[test]
fn refusals_name_the_field() {
    let refused = |block: &Block, bores: &[WornBore], steps: &[Step]| {
        let error = oversizes(block, bores, steps).unwrap_err();
        (error.kind(), error.field().to_owned())
    };
    let (bores, steps) = ([bore(86.2, None, true)], [step(0.25, 50.0, None)]);
    let at = |field: &str| field.to_owned();
    assert_eq!(refused(&BLOCK, &[], &steps), (ErrorKind::MissingField, at("bores")));
    assert_eq!(refused(&BLOCK, &bores, &[]), (ErrorKind::MissingField, at("steps")));
    let falling = [step(0.5, 50.0, None), step(0.25, 50.0, None)];
    assert_eq!(refused(&BLOCK, &bores, &falling), (ErrorKind::OutOfOrder, at("steps/1/oversize_mm")));
    let bad = [bore(f64::NAN, None, true)];
    assert_eq!(refused(&BLOCK, &bad, &steps), (ErrorKind::NotFinite, at("bores/0/clean_up_mm")));
    let free = [step(0.25, -1.0, None)];
    assert_eq!(refused(&BLOCK, &bores, &free), (ErrorKind::OutOfRange, at("steps/0/price")));
}

/// The price of the cheapest plan by enumeration of all actions, among plans of one step, of the smallest step for every bore, and of one step with sleeves
/// where it does not serve.
fn cheapest(block: &Block, bores: &[WornBore], steps: &[Step]) -> Option<f64> {
    let serves = |b: &WornBore, s: &Step| {
        let size = block.nominal_mm + s.oversize_mm;
        b.clean_up_mm + block.guard * b.standard_uncertainty_mm <= size
            && b.largest_by_walls_mm.is_none_or(|d| size <= d)
    };
    let in_gasket =
        |s: &Step| block.largest_by_gasket_mm.is_none_or(|d| block.nominal_mm + s.oversize_mm <= d);
    let enough = |plan: &[&Step]| {
        steps.iter().all(|s| s.available.is_none_or(|a| plan.iter().filter(|p| **p == s).count() <= a))
    };
    let cost = |plan: &[&Step], sleeves: usize| {
        plan.iter().map(|s| s.price + block.boring_price).sum::<f64>()
            + sleeves as f64 * block.sleeve_price.unwrap_or(0.0)
    };
    let mut best: Option<f64> = None;
    let mut take = |price: f64| best = Some(best.map_or(price, |b: f64| b.min(price)));
    for s in steps.iter().filter(|s| in_gasket(s)) {
        let plan = vec![s; bores.len()];
        let unserved: Vec<&WornBore> = bores.iter().filter(|b| !serves(b, s)).collect();
        let sleeved = block.sleeve_price.is_some() && unserved.iter().all(|b| b.may_be_sleeved);
        if enough(&plan) && (unserved.is_empty() || sleeved) {
            take(cost(&plan, unserved.len()));
        }
    }
    let each: Option<Vec<&Step>> =
        bores.iter().map(|b| steps.iter().find(|s| in_gasket(s) && serves(b, s))).collect();
    if let Some(plan) = each.filter(|plan| enough(plan)) {
        take(cost(&plan, 0));
    }
    best
}

proptest! {
    #[test]
    fn the_first_choice_is_the_cheapest_that_can_be_done(
        bores in prop::collection::vec((86.0..86.8, prop::option::of(86.2..87.0), any::<bool>()), 1..6),
        prices in prop::collection::vec((10u32..90, prop::option::of(0usize..6)), 1..5),
        sleeve in prop::option::of(50u32..200),
        gasket in prop::option::of(86.3..87.0),
    ) {
        let bores: Vec<WornBore> = bores.into_iter().map(|(c, w, s)| bore(c, w, s)).collect();
        let steps: Vec<Step> = prices
            .into_iter()
            .enumerate()
            .map(|(k, (price, available))| step(0.25 * (k + 1) as f64, f64::from(price), available))
            .collect();
        let block = Block { sleeve_price: sleeve.map(f64::from), largest_by_gasket_mm: gasket, ..BLOCK };
        let found = oversizes(&block, &bores, &steps).unwrap();
        let first = &found.choices[0];
        let ours = first.ruled_out.is_empty().then_some(first.price);
        prop_assert_eq!(ours, cheapest(&block, &bores, &steps));
        prop_assert!(found.choices.iter().all(|c| c.actions.len() == bores.len() && c.price.is_finite()));
        prop_assert!(found.choices.windows(2).all(|w| w[0].ruled_out.is_empty() || !w[1].ruled_out.is_empty()));
    }
}
