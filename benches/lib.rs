//! Benches of gaugepoint; see README.md beside this file. What the benches and the worker of the scripts share: their models.

#![expect(clippy::indexing_slicing, reason = "the models of benches name their own inputs")]

use gaugepoint::Error;
use gaugepoint::batch::{Batch, Columns, Results};
use gaugepoint::calc::Model;
use gaugepoint::clearance::hot::{HotFit, Parts, SurfaceGrowth};
use gaugepoint::growth::field::{BoreField, PistonField};
use gaugepoint::growth::{Law, MeanCoefficient, Piecewise, StrainLaw};
use gaugepoint::measurement::distribution::Distribution;
use gaugepoint::measurement::jet::Jet;
use gaugepoint::measurement::uncertainty::Inputs;
use gaugepoint::plan::matching::{Bore, Conditions, Piston, WantedClearance};
use gaugepoint::quantity::Temperature;
use gaugepoint::shape::bore::BoreShape;
use gaugepoint::shape::piston::{Counted, PistonShape, Surface, Symmetric, Table};
use gaugepoint::stack::{Contributor, Function, Stack, Variation};

/// Eight contributors of a linear stack, mm (invented): four normal, two rectangular, a triangular and a trapezoidal.
///
/// # Errors
/// None with these numbers.
pub fn stack() -> Result<(Inputs, Model), Error> {
    let mut inputs = Inputs::new();
    let contributors = [
        (86.0, Distribution::normal(0.004)?),
        (-42.0, Distribution::normal(0.003)?),
        (30.0, Distribution::normal(0.005)?),
        (-12.0, Distribution::normal(0.002)?),
        (10.0, Distribution::rectangular(0.008)?),
        (-5.0, Distribution::rectangular(0.006)?),
        (3.0, Distribution::triangular(0.010)?),
        (-1.0, Distribution::trapezoidal(0.009, 1.0 / 3.0)?),
    ];
    for (number, (nominal, distribution)) in contributors.into_iter().enumerate() {
        inputs.quantity(&format!("x{number}"), nominal, distribution)?;
    }
    let model = Model::of(8, |x| x.iter().copied().reduce(|sum, next| sum + next).unwrap_or_else(|| x[0]));
    Ok((inputs, model))
}

/// Deviations of the same eight contributors as a stack with an exact distribution; or without the normal ones; or with a skewed beta and a
/// lopsided triangle in place of those.
///
/// # Errors
/// None with these numbers.
pub fn linear_stack(kind: &str) -> Result<Stack, Error> {
    let about = |d: Distribution| Variation::about(0.0, d);
    let mut all = vec![
        about(Distribution::rectangular(0.008)?)?,
        about(Distribution::rectangular(0.006)?)?,
        about(Distribution::triangular(0.010)?)?,
        about(Distribution::trapezoidal(0.009, 1.0 / 3.0)?)?,
    ];
    match kind {
        "normal" => {
            for sigma in [0.004, 0.003, 0.005, 0.002] {
                all.push(about(Distribution::normal(sigma)?)?);
            }
        }
        "curved" => {
            all.push(Variation::beta(2.0, 5.0, (-0.01, 0.02))?);
            all.push(Variation::triangular((-0.01, 0.02), -0.004)?);
        }
        _ => {}
    }
    let contributor = |(k, variation)| Contributor::new(&format!("x{k}"), 0.0, (-0.02, 0.02), variation);
    Stack::new(all.into_iter().enumerate().map(contributor).collect::<Result<Vec<_>, _>>()?)
}

/// The angle of contact of an overrunning clutch from hub, roller and cage, mm (invented): three normal contributors.
///
/// # Errors
/// None with these numbers.
pub fn clutch() -> Result<Function<Model>, Error> {
    let sizes = [("a", 55.29, 0.04), ("c", 22.86, 0.004), ("e", 101.69, 0.04)];
    let contributor = |(name, nominal, sigma): (&str, f64, f64)| {
        let variation = Variation::about(0.0, Distribution::normal(sigma)?)?;
        Contributor::new(name, nominal, (-4.0 * sigma, 4.0 * sigma), variation)
    };
    let contributors = sizes.into_iter().map(contributor).collect::<Result<Vec<_>, _>>()?;
    Function::from_text(contributors, &["a", "c", "e"], "acos((a + c) / (e - c))")
}

/// A bore and a piston on the bench, with the fifteen sources of their clearance, mm and C (invented): the bore gauge is set between the
/// micrometer's faces and used warmer, the micrometer reads the piston.
///
/// # Errors
/// None with these numbers.
pub fn clearance() -> Result<Inputs, Error> {
    let mut inputs = Inputs::new();
    let quantities = [
        ("setting", 86.0, Distribution::rectangular(0.0005)?),
        ("zero", 0.001, Distribution::normal(0.0010)?),
        ("expansion of the micrometer", 11.5e-6, Distribution::rectangular(1e-6)?),
        ("micrometer when set, C", 22.0, Distribution::rectangular(0.5)?),
        ("expansion of the bore gauge", 11.0e-6, Distribution::rectangular(1e-6)?),
        ("bore gauge when set, C", 22.0, Distribution::rectangular(0.5)?),
        ("bore gauge when used, C", 23.0, Distribution::rectangular(0.5)?),
        ("deviation", 0.031, Distribution::student_t(0.0008, 9.0)?),
        ("expansion of the block", 10.5e-6, Distribution::rectangular(1e-6)?),
        ("block, C", 24.0, Distribution::rectangular(1.0)?),
        ("reading of the piston", 85.952, Distribution::student_t(0.0006, 9.0)?),
        ("micrometer when used, C", 22.5, Distribution::rectangular(0.5)?),
        ("expansion of the piston", 20.5e-6, Distribution::rectangular(1e-6)?),
        ("piston, C", 23.5, Distribution::rectangular(1.0)?),
        ("force on the skirt", 0.0, Distribution::rectangular(0.0010)?),
    ];
    for (name, estimate, distribution) in quantities {
        inputs.quantity(name, estimate, distribution)?;
    }
    Ok(inputs)
}

/// The clearance at 20 C of the inputs of [`clearance`], as a closure has it.
#[must_use]
pub fn clearance_of_jets(x: &[Jet]) -> Jet {
    let [setting, zero, micrometer, set, gauge, gauge_set, gauge_used, deviation, block, bore, rest @ ..] = x
    else {
        return Jet::constant(f64::NAN);
    };
    let [reading, used, piston, piston_c, force] = rest else { return Jet::constant(f64::NAN) };
    let grown = |expansion: &Jet, c: &Jet| 1.0 + expansion * (c - 20.0);
    let between_faces = (setting - zero) * grown(micrometer, set);
    let at_gauge = between_faces * grown(gauge, gauge_used) / grown(gauge, gauge_set) + deviation;
    let bore = at_gauge / grown(block, bore);
    let piston = (reading - zero + force) * grown(micrometer, used) / grown(piston, piston_c);
    bore - piston
}

/// The same as a list of operations.
#[must_use]
pub fn clearance_model() -> Model {
    Model::of(15, |x| {
        let grown = |expansion: usize, c: usize| 1.0 + x[expansion] * (x[c] - 20.0);
        let between_faces = (x[0] - x[1]) * grown(2, 3);
        let bore = (between_faces * grown(4, 6) / grown(4, 5) + x[7]) / grown(8, 9);
        let piston = (x[10] - x[1] + x[14]) * grown(2, 11) / grown(12, 13);
        bore - piston
    })
}

/// Rows of a batch with room for their results.
#[derive(Debug)]
pub struct Rows {
    columns: [Vec<f64>; 5],
    /// Clearance at 20 C.
    pub bench_mm: Vec<f64>,
    /// Clearance of the running parts.
    pub running_mm: Vec<f64>,
    /// 0, or why a row is refused.
    pub status: Vec<i32>,
}

impl Rows {
    /// Bores about 86.03 mm, pistons about 85.98 mm, a shop of 18 C to 28 C (invented): a number of each row spread by the golden section.
    #[must_use]
    pub fn invented(rows: usize) -> Self {
        let spread = |from: f64, width: f64, step: u32| {
            (0..rows as u32).map(move |k| from + width * f64::from(k.wrapping_mul(step)) / 4_294_967_296.0)
        };
        // multiples of 2^32 less the golden section, far apart
        let steps: [u32; 5] = [2_654_435_769, 1_013_904_243, 3_668_339_990, 2_027_808_486, 387_276_957];
        let ranges = [(86.02, 0.02), (85.97, 0.02), (18.0, 10.0), (90.0, 30.0), (100.0, 60.0)];
        let mut ranges =
            ranges.into_iter().zip(steps).map(|((from, width), step)| spread(from, width, step).collect());
        let columns = std::array::from_fn(|_| ranges.next().unwrap_or_default());
        Rows { columns, bench_mm: vec![0.5; rows], running_mm: vec![0.5; rows], status: vec![1; rows] }
    }

    /// The columns.
    #[must_use]
    pub fn columns(&self) -> Columns<'_> {
        columns_of(&self.columns)
    }

    /// The columns, with room for results and statuses.
    pub fn with_status(&mut self) -> (Columns<'_>, Results<'_>) {
        let Rows { columns, bench_mm, running_mm, status } = self;
        (columns_of(columns), Results { bench_mm, running_mm, status: Some(status) })
    }

    /// One row of the columns.
    #[must_use]
    pub fn row(&self, row: usize) -> [f64; 5] {
        self.columns.each_ref().map(|column| column[row])
    }

    /// Where the clearances on the bench go.
    #[must_use]
    pub fn bench_mm(&self) -> &[f64] {
        &self.bench_mm
    }

    /// Both clearances of the last row.
    #[must_use]
    pub fn last(&self) -> Vec<f64> {
        [&self.bench_mm, &self.running_mm].iter().filter_map(|results| results.last().copied()).collect()
    }
}

fn columns_of(columns: &[Vec<f64>; 5]) -> Columns<'_> {
    let [bore_mm, piston_mm, parts_temperature_c, bore_temperature_c, piston_temperature_c] = columns;
    Columns { bore_mm, piston_mm, parts_temperature_c, bore_temperature_c, piston_temperature_c }
}

/// Cast iron and an aluminium alloy (invented), by mean coefficients or by cubics.
///
/// # Errors
/// None with these numbers.
pub fn invented_laws(cubic: bool) -> Result<Batch, Error> {
    let [bore, piston] = match cubic {
        false => [StrainLaw::mean(11.4e-6)?, StrainLaw::mean(20.5e-6)?],
        true => [
            StrainLaw::cubic(10.4e-6, 6e-9, -3e-12, -40.0, 400.0)?,
            StrainLaw::cubic(19.8e-6, 8e-9, 2e-12, -40.0, 400.0)?,
        ],
    };
    Ok(Batch::new(bore, piston))
}

/// The bores of [`hot_fit`]: which orders they have.
pub const BORES: &[&str] = &["round", "even", "general"];
/// Angles of a map.
pub const ANGLES: usize = 181;
/// Heights of a map.
pub const HEIGHTS: usize = 101;

/// So many numbers from 0 on.
#[must_use]
pub fn evenly(to: f64, count: usize) -> Vec<f64> {
    (0..count).map(|k| to * k as f64 / (count - 1) as f64).collect()
}

fn law(per_k: f64) -> Result<Law, Error> {
    let c = Temperature::from_celsius;
    Law::mean_coefficient(c(20.0), MeanCoefficient::from_per_kelvin(per_k), c(-40.0), c(400.0))
}

/// A barrelled oval skirt with four rows, hotter upward, in a straight bore (invented).
///
/// # Errors
/// None with these numbers.
pub fn hot_fit(kind: &str) -> Result<HotFit, Error> {
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

/// Invented bores and pistons, and what is wanted of them; `peers/matching.py` makes the same. With `uncertain` each size has an
/// uncertainty of its own.
#[must_use]
pub fn invented_parts(bores: usize, pistons: usize, uncertain: bool) -> (Vec<Bore>, Vec<Piston>, Conditions) {
    let mut state = 1_u64;
    let mut between = |low: f64, high: f64| {
        // Knuth's MMIX generator
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        low + (high - low) * ((state >> 11) as f64 / 9_007_199_254_740_992.0)
    };
    let mut part = |low: f64, high: f64| {
        let (size, u) = (between(low, high), between(0.0005, 0.003));
        (size, if uncertain { u } else { 0.0015 })
    };
    let bores = (0..bores).map(|_| part(86.0, 86.02)).map(|(size, u)| Bore::new(size, u)).collect();
    let pistons = (0..pistons).map(|_| part(85.947, 85.967)).map(|(size, u)| Piston::new(size, u)).collect();
    let wanted = WantedClearance::between(0.04, 0.07).with_target(0.053);
    (bores, pistons, Conditions::wanting(wanted))
}
