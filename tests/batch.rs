//! Many rows at once against one row at a time, the ranges of `bounds.rs`, and the independent evaluation in `vectors/batch.csv`.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]
#![allow(clippy::float_cmp, reason = "equality of bits is meant where it stands")]

use gaugepoint::batch::{Batch, COLUMNS, Columns, Results, Stair};
use gaugepoint::bounds::{self, Verdict};
use gaugepoint::clearance::{bench, running};
use gaugepoint::growth::StrainLaw;
use gaugepoint::quantity::{Expansion, Temperature, from_mm, in_mm};
use gaugepoint::size::{Condition, micrometer_size_at_20};
use gaugepoint::wide::Width;
use gaugepoint::{Error, ErrorKind};
use gaugepoint_tests::{batch_row, rows};

type Row = [f64; 5];
type Table = [Vec<f64>; 5];

const BORE: f64 = 11.4e-6;
const PISTON: f64 = 20.5e-6;

fn mean() -> Batch {
    Batch::new(StrainLaw::mean(BORE).unwrap(), StrainLaw::mean(PISTON).unwrap())
}

fn cubic() -> Batch {
    let bore = StrainLaw::cubic(10.4e-6, 6e-9, -3e-12, -40.0, 400.0).unwrap();
    Batch::new(bore, StrainLaw::cubic(19.8e-6, 8e-9, 2e-12, 10.0, 300.0).unwrap())
}

/// Numbers from 0 to 1, of a linear congruential generator.
fn chance() -> impl FnMut() -> f64 {
    let mut state = 20_261_125_u64;
    move || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        f64::from(u32::try_from(state >> 32).unwrap()) / 4_294_967_296.0
    }
}

/// So many good rows.
fn table(rows: usize) -> Table {
    let mut chance = chance();
    let ranges = [(20.0, 900.0), (20.0, 900.0), (12.0, 45.0), (12.0, 280.0), (12.0, 280.0)];
    let mut out: Table = std::array::from_fn(|_| Vec::with_capacity(rows));
    for _ in 0..rows {
        for (column, (from, width)) in out.iter_mut().zip(ranges) {
            column.push(from + width * chance());
        }
    }
    out
}

fn columns(table: &Table) -> Columns<'_> {
    let [bore_mm, piston_mm, parts_temperature_c, bore_temperature_c, piston_temperature_c] = table;
    Columns { bore_mm, piston_mm, parts_temperature_c, bore_temperature_c, piston_temperature_c }
}

fn row(table: &Table, k: usize) -> Row {
    std::array::from_fn(|c| table[c][k])
}

/// Bits of both results, the statuses, and the number of refused rows.
fn computed(batch: &Batch, table: &Table) -> (Vec<[u64; 2]>, Vec<i32>, usize) {
    let n = table[0].len();
    let (mut a, mut b, mut status) = (vec![7.0; n], vec![7.0; n], vec![7; n]);
    let results = Results { bench_mm: &mut a, running_mm: &mut b, status: Some(&mut status) };
    let refused = batch.clearances(columns(table), results).unwrap();
    assert_eq!(batch.count_refused(columns(table)).unwrap(), refused);
    let bits = a.iter().zip(&b).map(|(a, b)| [a.to_bits(), b.to_bits()]).collect();
    (bits, status, refused)
}

/// One row by the functions for quantities.
fn one([b, p, t, tb, tp]: Row) -> Result<[f64; 2], Error> {
    let state = |temperature: f64, expansion: f64| Condition {
        temperature: Temperature::from_celsius(temperature),
        expansion: Expansion::from_per_kelvin(expansion),
    };
    let gauge = state(20.0, BORE);
    let bore = micrometer_size_at_20(from_mm(b), from_mm(0.0), gauge, state(t, BORE))?;
    let piston = micrometer_size_at_20(from_mm(p), from_mm(0.0), gauge, state(t, PISTON))?;
    let hot = running(bore, state(tb, BORE), piston, state(tp, PISTON))?;
    Ok([bench(bore, piston), hot].map(|clearance| in_mm(clearance.diametral())))
}

/// Limits, what lies just beyond them, and what is no number.
const ODD: [f64; 24] = [
    f64::NAN,
    -f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
    0.0,
    -0.0,
    5e-324,
    -5e-324,
    1e308,
    -1e308,
    10.0,
    9.999_999_999_999_998,
    1100.0,
    1_100.000_000_000_000_2,
    -5.0,
    -5.000_000_000_000_001,
    60.0,
    60.000_000_000_000_01,
    -40.0,
    -40.000_000_000_000_01,
    450.0,
    450.000_000_000_000_06,
    86.0,
    -86.0,
];

/// Every odd number in every column, among good rows.
fn odd_table() -> Table {
    let mut out = table(5 * ODD.len() * 3);
    for (k, (column, x)) in (0..5).flat_map(|c| ODD.map(|x| (c, x))).enumerate() {
        out[column][3 * k] = x;
    }
    out
}

#[test]
fn rows_have_the_bits_of_one_row() {
    // a block and its neighbours, and lengths of no block
    for n in [0, 1, 2, 127, 128, 129, 255, 256, 257, 1000] {
        let table = table(n);
        let (found, status, refused) = computed(&mean(), &table);
        assert_eq!((refused, status), (0, vec![0; n]));
        for (k, found) in found.iter().enumerate() {
            assert_eq!(*found, one(row(&table, k)).unwrap().map(f64::to_bits), "{n} {k}");
        }
    }
}

#[test]
fn odd_rows_are_refused_as_one_row_is() {
    let table = odd_table();
    let (found, status, refused) = computed(&mean(), &table);
    let named = mean().refused(columns(&table), 0, usize::MAX);
    assert_eq!(named.len(), refused);
    let mut named = named.into_iter();
    let mut both = [0, 0];
    for (k, (found, status)) in found.iter().zip(status).enumerate() {
        match one(row(&table, k)) {
            Ok(expected) => assert_eq!((*found, status), (expected.map(f64::to_bits), 0), "{k}"),
            Err(error) => {
                assert_eq!((*found, status), ([f64::NAN.to_bits(); 2], error.kind().code()), "{k}");
                let ours = named.next().unwrap();
                assert_eq!((ours.row, ours.error.kind()), (k, error.kind()));
                assert_eq!(ours.error.accepted(), error.accepted());
                let (column, place) = ours.error.field().split_once('/').unwrap();
                assert!(COLUMNS.contains(&column) && place.parse() == Ok(k), "{}", ours.error);
            }
        }
        both[usize::from(status != 0)] += 1;
    }
    assert!(both[0] > 250 && both[1] > 60, "{both:?}");
}

/// What each column of a row may be, by the bounds and by hand from the two laws of [`cubic`].
fn accepted([b, p, t, tb, tp]: Row) -> bool {
    let possible = |bound: bounds::Bound, x| bound.judge(x) != Verdict::Impossible;
    possible(bounds::BORE, b)
        && possible(bounds::PISTON, p)
        && (10.0..=60.0).contains(&t)
        && (-40.0..=400.0).contains(&tb)
        && (10.0..=300.0).contains(&tp)
}

#[test]
fn a_law_ends_where_its_range_does() {
    let table = odd_table();
    let (found, status, refused) = computed(&cubic(), &table);
    let good: Vec<bool> = (0..status.len()).map(|k| accepted(row(&table, k))).collect();
    assert_eq!(status.iter().map(|s| *s == 0).collect::<Vec<_>>(), good);
    assert_eq!(found.iter().map(|[a, _]| !f64::from_bits(*a).is_nan()).collect::<Vec<_>>(), good);
    assert_eq!(refused, good.iter().filter(|good| !**good).count());
    assert!(status.contains(&ErrorKind::OutsideLaw.code()));
}

/// The test is worth nothing where the machine has no wider vectors, and says so.
#[test]
#[cfg(target_arch = "x86_64")]
fn the_wide_path_gives_the_bits_of_the_baseline() {
    for batch in [mean(), cubic()] {
        let narrow = batch.with_width(Width::baseline());
        assert!(!narrow.width().is_wide());
        assert_eq!(
            batch.width().is_wide(),
            is_x86_feature_detected!("avx2") && is_x86_feature_detected!("fma")
        );
        assert!(batch.width().is_wide(), "this machine has no wider vectors: not tested");
        for table in [table(10_007), odd_table()] {
            assert_eq!(computed(&batch, &table), computed(&narrow, &table));
        }
    }
}

/// A row among others and alone; also cold ones, which are computed on another way.
#[test]
fn neighbours_do_not_matter() {
    let mut table = table(1024);
    for k in (0..1024).filter(|k| k % 7 == 0 || (256..384).contains(k)) {
        table[2][k] = -4.5;
        table[3][k] = -20.0;
    }
    let (found, ..) = computed(&mean(), &table);
    for k in (0..1024).step_by(5) {
        let alone: Table = row(&table, k).map(|x| vec![x]);
        assert_eq!(computed(&mean(), &alone).0[0], found[k], "{k}");
        assert_eq!(found[k], one(row(&table, k)).unwrap().map(f64::to_bits));
    }
}

/// A cubic whose higher coefficients are zero is the mean coefficient.
#[test]
fn a_mean_coefficient_is_a_cubic() {
    let law = |a| StrainLaw::cubic(a, 0.0, 0.0, -40.0, 450.0).unwrap();
    let table = odd_table();
    assert_eq!(computed(&Batch::new(law(BORE), law(PISTON)), &table), computed(&mean(), &table));
    let strain = law(BORE).strain(120.0).unwrap();
    assert_eq!(strain, BORE * 100.0);
    assert_eq!(law(BORE).strain(451.0).unwrap_err().kind(), ErrorKind::OutsideLaw);
}

#[test]
fn lengths_must_agree() {
    let good = table(4);
    for (k, name) in COLUMNS.iter().enumerate().skip(1) {
        let mut short = good.clone();
        short[k].pop();
        let error = mean().count_refused(columns(&short)).unwrap_err();
        assert_eq!((error.kind(), error.field()), (ErrorKind::Contradiction, *name));
    }
    for (lengths, name) in [([3, 4, 4], "bench_mm"), ([4, 5, 4], "running_mm"), ([4, 4, 0], "status")] {
        let (mut a, mut b, mut status) = (vec![7.0; lengths[0]], vec![7.0; lengths[1]], vec![7; lengths[2]]);
        let results = Results { bench_mm: &mut a, running_mm: &mut b, status: Some(&mut status) };
        let error = mean().clearances(columns(&good), results).unwrap_err();
        assert_eq!((error.kind(), error.field()), (ErrorKind::Contradiction, name));
        assert!(a.iter().chain(&b).all(|x| *x == 7.0) && status.iter().all(|s| *s == 7));
    }
}

/// Each value counted by itself; edges, their neighbours, zeros of both signs and lengths that fill no vector are among them.
#[test]
fn stairs_are_climbed_as_they_are_counted() {
    let (up, down): ([f64; 3], [f64; 2]) = ([-0.01, 0.0, 0.03], [0.031, 0.06]);
    let edges = up.iter().chain(&down).flat_map(|edge| [edge.next_down(), *edge, edge.next_up()]);
    let grid = (-500..500).map(|k| f64::from(k) / 5000.0);
    let values: Vec<f64> = grid.chain(edges).chain([-0.0, 1100.0, -1100.0]).collect();
    let reached = |edges: &[f64], value: f64| edges.iter().filter(|edge| value >= **edge).count();
    let counted = |value: &f64| 1 + reached(&up, *value) as i8 - reached(&down, *value) as i8;
    for length in [0, 1, 7, 128, 129, values.len()] {
        let values = &values[values.len() - length..];
        let expected: Vec<i8> = values.iter().map(counted).collect();
        for width in [Width::baseline(), Width::detected()] {
            let mut steps = vec![0; length];
            Stair { first: 1, up: &up, down: &down }.steps(values, &mut steps, width).unwrap();
            assert_eq!(steps, expected, "{length} values");
        }
    }
    let error =
        Stair { first: 0, up: &up, down: &down }.steps(&[0.0], &mut [], Width::detected()).unwrap_err();
    assert_eq!((error.kind(), error.field()), (ErrorKind::Contradiction, "steps"));
}

#[test]
fn vectors_hold() {
    let rows = rows("tests/vectors/batch.csv");
    assert!(rows.len() > 12);
    for cells in rows {
        let id = &cells[0];
        match (batch_row(&cells), cells[4].strip_prefix("error:")) {
            (Err(error), Some(kind)) => assert_eq!(error.kind().name(), kind, "{id}"),
            (Ok(found), None) => {
                let expected: Vec<f64> = cells[4].split(';').map(|x| x.parse().unwrap()).collect();
                let tolerance: f64 = cells[5].parse().unwrap();
                for (found, expected) in found.iter().zip(&expected) {
                    assert!((found - expected).abs() <= tolerance, "{id}: {found} against {expected}");
                }
            }
            (found, _) => panic!("{id}: {found:?}"),
        }
    }
}
