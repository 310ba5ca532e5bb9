//! Timings of hot fits: the smallest clearance of a skirt and first contact. Invented sizes.

use divan::{Bencher, black_box};
use gaugepoint::clearance::hot::{HotFit, Parts, Position, SurfaceGrowth};
use gaugepoint::growth::field::{BoreField, PistonField, Scenario};
use gaugepoint::growth::{Law, MeanCoefficient, Piecewise};
use gaugepoint::quantity::Temperature;
use gaugepoint::shape::bore::BoreShape;
use gaugepoint::shape::piston::{Counted, PistonShape, Surface, Symmetric, Table};
use gaugepoint::{Error, growth};

fn main() {
    divan::main();
}

/// The bores: which orders they have.
const BORES: &[&str] = &["round", "even", "general"];

fn law(per_k: f64) -> Result<growth::Law, Error> {
    let c = Temperature::from_celsius;
    Law::mean_coefficient(c(20.0), MeanCoefficient::from_per_kelvin(per_k), c(-40.0), c(400.0))
}

/// A barrelled oval skirt with four rows, hotter upward, in a straight bore.
fn fit(kind: &str) -> Result<HotFit, Error> {
    let rows = [0.0, 12.0, 30.0, 50.0];
    let table = |values_mm| Table { heights_mm: &rows, values_mm };
    let drawing = Symmetric {
        barrel: table(&[0.02, 0.0, 0.03, 0.08]),
        counted: Counted::Below,
        ovality: table(&[0.25, 0.3, 0.35, 0.4]),
        double_ovality: None,
    };
    let mut bore = BoreShape::round(86.06)?;
    let orders = match kind {
        "even" => [2, 4, 6].as_slice(),
        "general" => [2, 3, 4, 5, 6].as_slice(),
        _ => &[],
    };
    for order in orders {
        let sine = if kind == "general" { 0.002 } else { 0.0 };
        bore = bore.with_harmonic(*order, &[0.0], &[0.003], &[sine])?;
    }
    HotFit::new(Parts {
        piston_diameter_mm: 86.0,
        piston: PistonShape::new(12.0, vec![Surface::symmetric("skirt", 0.0, 50.0, &drawing)?])?,
        growth: vec![SurfaceGrowth::free(&law(20.5e-6)?)],
        piston_field: PistonField::through(
            &rows,
            &[110.0, 115.0, 130.0, 160.0],
            &[115.0, 120.0, 135.0, 170.0],
        )?,
        bore,
        bore_law: Piecewise::of(&law(11.4e-6)?),
        bore_field: BoreField::uniform(105.0)?,
        motion: None,
    })
}

#[divan::bench(args = BORES)]
fn smallest(bencher: Bencher<'_, '_>, kind: &str) {
    let Ok(fit) = fit(kind) else { return };
    bencher.bench(|| black_box(&fit).smallest_at(0, Position::Anywhere));
}

#[divan::bench(args = BORES)]
fn onset(bencher: Bencher<'_, '_>, kind: &str) {
    let Ok(fit) = fit(kind) else { return };
    bencher.bench(|| black_box(&fit).onset(Scenario::PistonAlone, 0.0));
}
