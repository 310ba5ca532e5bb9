//! What is done before assembly: rings, shims, gaskets, masses and finishes beside enumerations, mechanics and quadrature of their own.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::ErrorKind;
use gaugepoint::plan::filing::{GapReading, Outcome, WantedGap, filing};
use gaugepoint::plan::gasket::gasket_grade;
use gaugepoint::plan::shims::{Liner, RuledOut, Shim, Wanted, shim_plan};
use gaugepoint::plan::weights::{BobWeight, Part, bob_weight_g, cut_list};
use gaugepoint::shape::deck::GasketBand;
use gaugepoint_tests::assemblies::assembly_row;
use gaugepoint_tests::named::hold;
use gaugepoint_tests::rows;
use proptest::prelude::*;

/// By hand, by exact fractions, by mpmath and by enumeration, refusals: what every host must say.
#[test]
fn vectors_hold() {
    let rows = rows("tests/vectors/assembly.csv");
    let held: usize = rows.iter().map(|r| hold(&r[0], &r[3], assembly_row(r))).sum();
    assert!(rows.len() > 100 && held > 600, "{held} comparisons in {} rows", rows.len());
}

fn near(ours: f64, value: f64, within: f64) {
    assert!((ours - value).abs() <= within, "{ours}, not {value}");
}

const WANTED: WantedGap =
    WantedGap { least_mm: Some(0.40), most_mm: Some(0.55), allowance_mm: 0.02, hot: None };

/// Published as 0.0031 in of gap for 0.001 in of bore: pi, printed to two digits.
#[test]
fn a_gap_follows_the_bore_by_pi() {
    let gap = |bore| {
        let reading = GapReading { gauge_mm: Some(86.0), ..GapReading::in_its_bore(0.4) };
        filing(&reading, bore, &WANTED).unwrap().gap_mm
    };
    near((gap(86.0254) - gap(86.0)) / 0.0254, 3.1, 0.05);
}

proptest! {
    /// A ring is filed where it is short and nowhere else, to the target and not beyond; in another gauge it is filed by the same.
    #[test]
    fn a_ring_is_filed_no_more_than_it_needs(gap in 0.2..0.7, off in -0.1..0.1) {
        let found = filing(&GapReading::in_its_bore(gap), 86.0, &WANTED).unwrap();
        prop_assert_eq!(found.file_off_mm > 0.0, gap < 0.40 - 1e-9);
        prop_assert_eq!(found.outcome == Outcome::TooWide, gap > 0.55 + 1e-9);
        if found.outcome == Outcome::File {
            prop_assert!((gap + 2.0 * found.each_end_mm - 0.42).abs() < 1e-12);
        }
        let in_gauge = gap + core::f64::consts::PI * off;
        prop_assume!(in_gauge > 0.02);
        let reading = GapReading { gauge_mm: Some(86.0 + off), ..GapReading::in_its_bore(in_gauge) };
        let again = filing(&reading, 86.0, &WANTED).unwrap();
        prop_assert!((again.gap_mm - gap).abs() < 1e-12);
    }
}

fn level(depth: f64) -> Liner {
    Liner { flange_mm: 8.0, depths_mm: [depth; 4], cupping_mm: None }
}

/// Every stack of so many shims at most, by counting in the base of the number of shims.
fn stacks(shims: usize, most: usize) -> Vec<Vec<usize>> {
    let mut all = vec![vec![]];
    for n in 1..=most {
        let power = |d: usize| shims.pow(u32::try_from(d).unwrap());
        let digits = |code: usize| (0..n).map(|d| code / power(d) % shims).collect::<Vec<_>>();
        all.extend((0..power(n)).map(digits).filter(|stack| stack.is_sorted()));
    }
    all
}

/// A search of every way along a row.
struct Every<'a> {
    /// for each liner its stacks with the heights at the four places
    row: Vec<Vec<(Vec<usize>, [f64; 4])>>,
    shims: &'a [Shim],
    wanted: &'a Wanted,
    used: Vec<usize>,
    best: Option<(f64, usize)>,
}

impl Every<'_> {
    fn walk(&mut self, at: usize, before: Option<f64>, so_far: (f64, usize)) {
        let Some(choices) = self.row.get(at).cloned() else {
            if self.best.is_none_or(|best| so_far < best) {
                self.best = Some(so_far);
            }
            return;
        };
        for (stack, h) in choices {
            let step = before.map_or(0.0, |rear| (rear - h[0]).abs());
            stack.iter().for_each(|s| self.used[*s] += 1);
            let in_stock = self.used.iter().zip(self.shims).all(|(n, s)| s.available.is_none_or(|a| *n <= a));
            if in_stock && self.wanted.neighbours_mm.is_none_or(|limit| step <= limit) {
                let middle = (self.wanted.least_mm + self.wanted.most_mm) / 2.0;
                let deviation = h.iter().map(|p| (p - middle).abs()).fold(so_far.0, f64::max);
                self.walk(at + 1, Some(h[2]), (deviation, so_far.1 + stack.len()));
            }
            stack.iter().for_each(|s| self.used[*s] -= 1);
        }
    }
}

/// The least deviation and then the least number of shims of all ways; none where nothing serves.
fn enumerated(liners: &[Liner], shims: &[Shim], wanted: &Wanted) -> Option<(f64, usize)> {
    let heights = |liner: &Liner, stack: &[usize]| {
        let thickness: f64 = stack.iter().map(|s| shims[*s].thickness_mm).sum();
        liner.depths_mm.map(|depth| liner.flange_mm + thickness - depth)
    };
    let served = |liner: &Liner| {
        let all = stacks(shims.len(), wanted.most_on_one);
        let with = all.into_iter().map(|stack| (heights(liner, &stack), stack));
        let inside = |h: &[f64; 4]| h.iter().all(|p| (wanted.least_mm..=wanted.most_mm).contains(p));
        with.filter(|(h, _)| inside(h)).map(|(h, stack)| (stack, h)).collect()
    };
    let row = liners.iter().map(served).collect();
    let mut every = Every { row, shims, wanted, used: vec![0; shims.len()], best: None };
    every.walk(0, None, (0.0, 0));
    every.best
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// The plan is the best of all ways. In steps of 1/128 mm, which are exact: deviations are equal or differ by metal.
    #[test]
    fn shims_are_the_best_of_all_ways(
        depths in prop::collection::vec((-6..12_i32, prop::array::uniform4(0..2_i32)), 1..=5),
        stock in prop::collection::vec((2..16_u32, prop::option::weighted(0.7, 0..4_usize)), 1..=3),
        neighbours in prop::option::of(2..8_i32),
        most_on_one in 1..=2_usize,
    ) {
        let step = |n: i32| f64::from(n) / 128.0;
        let liners: Vec<Liner> = depths.iter().map(|(depth, off)| Liner {
            flange_mm: 8.0, depths_mm: off.map(|o| 8.0 + step(depth + o)), cupping_mm: None,
        }).collect();
        let shims: Vec<Shim> = stock.iter().map(|(t, available)| Shim { thickness_mm: f64::from(*t) / 128.0, available: *available }).collect();
        let wanted = Wanted {
            least_mm: step(3), most_mm: step(17), unevenness_mm: step(1), cupping_mm: None, neighbours_mm: neighbours.map(step), most_on_one,
        };
        let plan = shim_plan(&liners, &shims, &wanted).unwrap();
        let found = plan.largest_deviation_mm.zip(plan.shims_used);
        prop_assert_eq!(found, enumerated(&liners, &shims, &wanted));
        prop_assert_eq!(found.is_none(), !plan.ruled_out.is_empty());
        // what is told is what the stacks do
        let mut used = vec![0; shims.len()];
        for (liner, given) in plan.liners.iter().zip(&liners) {
            let Some(stack) = &liner.stack else { continue };
            stack.iter().for_each(|s| used[*s] += 1);
            let thickness: f64 = stack.iter().map(|s| shims[*s].thickness_mm).sum();
            let deepest = given.depths_mm.iter().copied().fold(0.0, f64::max);
            prop_assert_eq!(liner.lowest_mm, Some(8.0 + thickness - deepest));
        }
        prop_assert!(used.iter().zip(&shims).all(|(n, s)| s.available.is_none_or(|a| *n <= a)));
    }
}

/// A row in which the least deviation of a part of it wastes a shim: the number of shims must be counted after the deviation of all is known.
#[test]
fn a_liner_that_is_off_anyway_frees_the_others() {
    let shims = [Shim { thickness_mm: 0.0625, available: None }];
    let wanted = Wanted {
        least_mm: 0.0,
        most_mm: 0.125,
        unevenness_mm: 0.0,
        cupping_mm: None,
        neighbours_mm: None,
        most_on_one: 1,
    };
    // alone the first takes a shim to stand in the middle; the second is off by 0.0625 whatever is done
    let alone = shim_plan(&[level(8.0)], &shims, &wanted).unwrap();
    assert_eq!((alone.largest_deviation_mm, alone.shims_used), (Some(0.0), Some(1)));
    let both = shim_plan(&[level(8.0), level(7.875)], &shims, &wanted).unwrap();
    assert_eq!((both.largest_deviation_mm, both.shims_used), (Some(0.0625), Some(0)));
}

/// More ways than are searched are refused and not searched for hours.
#[test]
fn a_stock_that_leaves_too_many_ways_is_refused() {
    let shims: Vec<Shim> =
        (1..=12).map(|k| Shim { thickness_mm: 0.02 * f64::from(k), available: Some(30) }).collect();
    let wanted = Wanted {
        least_mm: 0.0,
        most_mm: 0.9,
        unevenness_mm: 0.1,
        cupping_mm: None,
        neighbours_mm: None,
        most_on_one: 3,
    };
    let refused = shim_plan(&[level(8.0); 24], &shims, &wanted).unwrap_err();
    assert_eq!((refused.kind(), refused.field()), (ErrorKind::OutOfRange, "shims"));
    let unlimited: Vec<Shim> = shims.iter().map(|s| Shim { available: None, ..*s }).collect();
    assert!(shim_plan(&[level(8.0); 24], &unlimited, &wanted).unwrap().ruled_out.is_empty());
    let none: [RuledOut; 0] = [];
    assert_eq!(shim_plan(&[level(7.9)], &[], &wanted).unwrap().ruled_out, none);
}

/// The probability that the largest lies in its band, by trials of a small generator that is not the library's (Lehmer's, 16807 modulo 2^31 - 1) and sums
/// of twelve uniform numbers for a normal one: within four deviations of a share of 40 000 trials.
#[test]
fn the_largest_protrusion_near_an_edge_by_trials() {
    let bands = [(0.5, 0.6, 1.3), (0.6, 0.7, 1.4), (0.7, 0.8, 1.5)];
    let bands = bands.map(|(from_mm, to_mm, thickness_mm)| GasketBand { from_mm, to_mm, thickness_mm });
    let protrusions = [0.66, 0.69, 0.685, 0.6];
    let u = 0.01;
    let grade = gasket_grade(&protrusions.map(|p| [p, p]), &bands, 0.001, None, Some(u)).unwrap();
    let mut state: u64 = 12345;
    let mut uniform = || {
        state = state * 16807 % 2_147_483_647;
        f64::from(u32::try_from(state).unwrap()) / 2_147_483_647.0
    };
    let trials = 40_000;
    let mut above = 0;
    for _ in 0..trials {
        let normal = |u01: &mut dyn FnMut() -> f64| (0..12).map(|_| u01()).sum::<f64>() - 6.0;
        let largest = protrusions.iter().map(|p| p + u * normal(&mut uniform)).fold(0.0, f64::max);
        above += u32::from(largest > 0.7);
    }
    let share = f64::from(above) / f64::from(trials);
    near(grade.probability_above.unwrap(), share, 4.0 * (share * (1.0 - share) / f64::from(trials)).sqrt());
    assert_eq!((grade.band, grade.largest_piston), (1, 1));
}

/// Two pistons of mass m in a right-angled V on one pin pull like one mass m that turns with the pin: the sum of the primary forces along both
/// axes, by mechanics. The bob weight at half the reciprocating mass of both is that one mass.
#[test]
fn half_of_the_reciprocating_mass_balances_a_right_angled_v() {
    let m = 620.0;
    let radians = |degrees: f64| degrees * core::f64::consts::PI / 180.0;
    for k in 0..360 {
        // each piston pulls along its axis by the part of the pin's motion along it
        let pull = |axis: f64| {
            let along = m * libm::cos(radians(f64::from(k) - axis));
            (along * libm::cos(radians(axis)), along * libm::sin(radians(axis)))
        };
        let ((ax, ay), (bx, by)) = (pull(45.0), pull(-45.0));
        near(libm::hypot(ax + bx, ay + by), m, 1e-9);
    }
    let pin = BobWeight {
        rods: 2,
        big_end_g: 0.0,
        bearing_g: 0.0,
        small_end_g: 0.0,
        piston_g: m,
        share: 0.5,
        oil_g: 0.0,
    };
    near(bob_weight_g(&pin).unwrap(), m, 1e-12);
}

proptest! {
    /// No smaller cut brings all within the band, and what can be within is.
    #[test]
    fn cuts_are_the_smallest(
        masses in prop::collection::vec((400.0..450.0, 0.0..20.0, 100.0..110.0, 0.0..5.0), 1..8), band in 0.0..10.0,
    ) {
        let assemblies: Vec<Vec<Part>> = masses.iter().map(|(a, b, c, d)| {
            vec![Part { mass_g: *a, removable_g: *b }, Part { mass_g: *c, removable_g: *d }]
        }).collect();
        let list = cut_list(&assemblies, band).unwrap();
        let lightest = masses.iter().map(|(a, _, c, _)| a + c).fold(f64::INFINITY, f64::min);
        for (cut, (a, b, c, d)) in list.assemblies.iter().zip(&masses) {
            let needed = (a + c - lightest - band).max(0.0);
            let taken: f64 = cut.cut_g.iter().sum();
            prop_assert!((taken - needed.min(b + d)).abs() < 1e-9);
            prop_assert!(cut.cut_g[0] <= *b && cut.cut_g[1] <= *d);
            prop_assert_eq!(cut.over_g > 0.0, needed > b + d + 1e-9);
        }
        prop_assert_eq!(list.is_met, list.assemblies.iter().all(|c| c.left_g <= lightest + band + 1e-9));
    }
}
