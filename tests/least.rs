//! The least clearance of a section against an independent search: a fine grid and golden sections, with the standard library's sines.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]
#![allow(clippy::disallowed_methods, reason = "the tests' own arithmetic is compared with a tolerance")]

use gaugepoint::ErrorKind;
use gaugepoint::clearance::least::{Arc, EvenHarmonics, Harmonics, MOST_ORDER};
use std::f64::consts::TAU;

/// Numbers in a stated order (SplitMix64).
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    fn within_one(&mut self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "53 bits")]
        let share = (self.next() >> 11) as f64 / (1_u64 << 53) as f64;
        2.0 * share - 1.0
    }
}

const ANGLES: usize = 96;

/// Sines of every order at the angles of the grid.
struct Table(Vec<(f64, f64)>);

impl Table {
    fn new() -> Self {
        let at = |k: usize| (TAU * f64::from(u32::try_from(k).unwrap()) / 96.0).sin_cos();
        Table((0..ANGLES).map(at).collect())
    }

    fn value(&self, cos: &[f64], sin: &[f64], k: usize) -> f64 {
        let waves = cos.iter().zip(sin).enumerate();
        waves.fold(0.0, |sum, (n, (a, b))| {
            let (s, c) = self.0[(n + 1) * k % ANGLES];
            sum + a * c + b * s
        })
    }
}

fn at(cos: &[f64], sin: &[f64], t: f64) -> f64 {
    let waves = (1_u32..).zip(cos.iter().zip(sin));
    waves.fold(0.0, |sum, (n, (a, b))| {
        let (s, c) = (f64::from(n) * t).sin_cos();
        sum + a * c + b * s
    })
}

/// By golden sections between two angles.
fn golden(f: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    let share = (5.0_f64.sqrt() - 1.0) / 2.0;
    let (mut x, mut y) = (high - share * (high - low), low + share * (high - low));
    let (mut fx, mut fy) = (f(x), f(y));
    // 0.62^34 of the cell is a hair of 1e-8: its value is off by 1e-16
    for _ in 0..34 {
        if fx < fy {
            (high, y, fy) = (y, x, fx);
            x = high - share * (high - low);
            fx = f(x);
        } else {
            (low, x, fx) = (x, y, fy);
            y = low + share * (high - low);
            fy = f(y);
        }
    }
    fx.min(fy)
}

/// The least value on the whole turn, the mean left out.
fn least(table: &Table, cos: &[f64], sin: &[f64]) -> f64 {
    let values: Vec<f64> = (0..ANGLES).map(|k| table.value(cos, sin, k)).collect();
    let lowest = values.iter().copied().fold(f64::INFINITY, f64::min);
    let step = TAU / 96.0;
    let bend: f64 = (1_u32..)
        .zip(cos.iter().zip(sin))
        .map(|(n, (a, b))| f64::from(n) * f64::from(n) * (a.abs() + b.abs()))
        .sum();
    let valley = |k: &usize| {
        let (before, after) = (values[(k + ANGLES - 1) % ANGLES], values[(k + 1) % ANGLES]);
        values[*k] <= before && values[*k] <= after && values[*k] <= lowest + bend * step * step / 2.0
    };
    (0..ANGLES)
        .filter(valley)
        .map(|k| {
            let middle = f64::from(u32::try_from(k).unwrap()) * step;
            golden(|t| at(cos, sin, t), middle - step, middle + step)
        })
        .fold(lowest, f64::min)
}

/// A section, its coefficients, and the sum of their sizes.
fn drawn(numbers: &mut Numbers, number: u64) -> (f64, Vec<f64>, Vec<f64>) {
    let order = 1 + number % 6;
    let steep = i32::try_from(number / 6 % 3).unwrap();
    let mut wave = || -> Vec<f64> {
        (1..=order).map(|n| numbers.within_one() / f64::from(u32::try_from(n).unwrap()).powi(steep)).collect()
    };
    let (mut cos, mut sin) = (wave(), wave());
    match number % 4 {
        // an oval piston
        1 if order > 1 => cos[1] -= 6.0,
        // even and mirrored: two valleys or four of the same depth, disturbed by less and less
        2 => {
            for k in 0..cos.len() {
                (cos[k], sin[k]) = (if k % 2 == 1 { cos[k] } else { 0.0 }, 0.0);
            }
            let tiny = 10.0_f64.powi(-9 - i32::try_from(number / 4 % 5).unwrap());
            cos[0] = tiny;
            sin[0] = -tiny / 2.0;
        }
        _ => {}
    }
    (numbers.within_one(), cos, sin)
}

#[test]
fn nothing_is_missed_in_a_hundred_thousand_sections() {
    let (table, mut numbers, mut worst) = (Table::new(), Numbers(1), 0.0_f64);
    for number in 0..100_000 {
        let (mean, cos, sin) = drawn(&mut numbers, number);
        let size: f64 = mean.abs() + cos.iter().chain(&sin).map(|x| x.abs()).sum::<f64>();
        let section = Harmonics::new(mean, &cos, &sin).unwrap();
        let found = section.least();
        let off = (found.least_mm - (mean + least(&table, &cos, &sin))) / size;
        worst = worst.max(off.abs());
        assert!(off.abs() < 2e-15 * 10.0, "{number}: {found:?} is off by {off:e} of {cos:?} {sin:?}");
        // the bound that comes with the value is no wider than asked for, and holds
        assert!(found.within_mm >= 0.0 && found.within_mm < 1e-13 * size, "{number}: {found:?}");
        assert!(off * size <= found.within_mm + 4e-15 * size, "{number}");
        // the value is that of its angle
        let there = mean + at(&cos, &sin, found.angle_deg.to_radians());
        assert!((there - found.least_mm).abs() < 1e-14 * size, "{number}: {there} {found:?}");
        assert!((0.0..360.0).contains(&found.angle_deg));
        assert!(section.lower_bound() <= found.least_mm);
    }
    assert!(worst > 0.0, "compared with itself");
}

/// Many random angles: none is below, and the ends of arcs count.
#[test]
fn nothing_is_below_on_arcs() {
    let mut numbers = Numbers(2);
    for number in 0..3000 {
        let order = 1 + usize::try_from(numbers.next() % 32).unwrap();
        let mut wave = || (0..order).map(|_| numbers.within_one()).collect::<Vec<f64>>();
        let (cos, sin) = (wave(), wave());
        let section = Harmonics::new(0.5, &cos, &sin).unwrap();
        let mut arcs = Vec::new();
        for _ in 0..=number % 3 {
            let from = 180.0 + 180.0 * numbers.within_one();
            let width = match numbers.next() % 4 {
                0 => 0.0,
                1 => 1.0 + numbers.within_one(),
                _ => 180.0 + 180.0 * numbers.within_one(),
            };
            arcs.push(Arc::new(from, from + width).unwrap());
            if numbers.next().is_multiple_of(8) {
                arcs.push(Arc::new(from.round(), from.round() + 90.0).unwrap());
            }
        }
        let found = section.least_over(&arcs).unwrap();
        let bound = section.lower_bound_over(&arcs).unwrap();
        assert!(bound <= found.least_mm);
        let mut lowest = f64::INFINITY;
        for arc in &arcs {
            for k in 0..=400 {
                let degrees = arc.from_deg() + (arc.to_deg() - arc.from_deg()) * f64::from(k) / 400.0;
                lowest = lowest.min(0.5 + at(&cos, &sin, degrees.to_radians()));
            }
        }
        assert!(found.least_mm <= lowest + 1e-12, "{number}: {found:?} is above {lowest} of {arcs:?}");
        let inside = |arc: &Arc| {
            let along = (found.angle_deg - arc.from_deg()).rem_euclid(360.0);
            let width = arc.to_deg() - arc.from_deg();
            along <= width + 1e-9 || along >= 360.0 - 1e-9
        };
        assert!(arcs.iter().any(inside), "{number}: {found:?} lies on none of {arcs:?}");
        let there = 0.5 + at(&cos, &sin, found.angle_deg.to_radians());
        assert!((there - found.least_mm).abs() < 1e-11, "{number}");
    }
}

/// The closed form is the general search.
#[test]
fn even_sections_have_a_closed_form() {
    let mut numbers = Numbers(3);
    for number in 0..20_000 {
        let [mean, c2, c4, c6] = [(); 4].map(|()| numbers.within_one());
        let c6 = if number % 3 == 0 { 0.0 } else { c6 };
        let c4 = if number % 5 == 0 { 0.0 } else { c4 };
        let even = EvenHarmonics::new(mean, c2, c4, c6).unwrap().least();
        let general = Harmonics::new(mean, &[0.0, c2, 0.0, c4, 0.0, c6], &[]).unwrap().least();
        assert!((even.least_mm - general.least_mm).abs() < 1e-14, "{number}: {even:?} {general:?}");
        assert!(even.within_mm < 1e-13);
        let there = mean + at(&[0.0, c2, 0.0, c4, 0.0, c6], &[0.0; 6], even.angle_deg().to_radians());
        assert!((there - even.least_mm).abs() < 1e-13, "{number}");
    }
}

/// Quartic valleys, where the second derivative is zero too: 3/8 - cos(2t)/2 + cos(4t)/8 is sin^4 t.
#[test]
fn flat_valleys() {
    let found = Harmonics::new(0.375, &[0.0, -0.5, 0.0, 0.125], &[]).unwrap().least();
    assert!(found.least_mm.abs() < 1e-15 && found.within_mm < 1e-14, "{found:?}");
    assert!(found.angle_deg < 0.05, "{found:?}");
    // sin^8 t
    let found = Harmonics::new(
        35.0 / 128.0,
        &[0.0, -56.0 / 128.0, 0.0, 28.0 / 128.0, 0.0, -8.0 / 128.0, 0.0, 1.0 / 128.0],
        &[],
    );
    let found = found.unwrap().least();
    assert!(found.least_mm.abs() < 1e-15 && found.within_mm < 1e-14, "{found:?}");
}

#[test]
fn ties_go_to_the_smallest_angle() {
    let angle = |cos: &[f64], sin: &[f64]| Harmonics::new(0.1, cos, sin).unwrap().least().angle_deg;
    assert!(angle(&[0.0, -1.0], &[]) < 1e-9);
    assert!((angle(&[0.0, 1.0], &[]) - 90.0).abs() < 1e-9);
    assert!((angle(&[], &[0.0, 0.0, 1.0]) - 90.0).abs() < 1e-9);
    assert!((angle(&[], &[0.0, 0.0, 0.0, 1.0]) - 67.5).abs() < 1e-9);
    assert!(angle(&[], &[]).abs() < 1e-9);
    let none = Harmonics::new(0.1, &[0.0; 6], &[0.0; 6]).unwrap().least();
    assert!((none.least_mm - 0.1).abs() < 1e-15 && none.angle_deg.abs() < 1e-9);
}

#[test]
fn refusals() {
    let error = |r: Result<Harmonics, gaugepoint::Error>| {
        r.map_err(|e| (e.kind(), e.field().to_owned())).unwrap_err()
    };
    let orders = [0.001; MOST_ORDER + 1];
    assert_eq!(error(Harmonics::new(0.0, &orders, &[])), (ErrorKind::OutOfRange, "cos_mm".to_owned()));
    assert_eq!(error(Harmonics::new(f64::NAN, &[], &[])), (ErrorKind::NotFinite, "mean_mm".to_owned()));
    assert_eq!(
        error(Harmonics::new(0.0, &[], &[0.0, f64::INFINITY])),
        (ErrorKind::NotFinite, "sin_mm/1".to_owned())
    );
    for (from, to) in [(-1.0, 5.0), (10.0, 9.0), (0.0, 361.0), (0.0, f64::NAN)] {
        assert!(Arc::new(from, to).is_err());
    }
    assert!(Harmonics::new(0.0, &[1.0], &[]).unwrap().least_over(&[]).is_none());
    assert!(EvenHarmonics::new(0.0, f64::NAN, 0.0, 0.0).is_err());
    assert!(EvenHarmonics::in_cos2([0.0, 0.0, 1e300, 0.0]).is_err());
}
