//! Rows of `vectors/study.csv`, `vectors/risk.csv` and `vectors/parts.csv`: the call of a row, and its results by the names that every host gives them.

use gaugepoint::Error;
use gaugepoint::clearance::press_fit::{self, PressFitParts};
use gaugepoint::clearance::{pin, ring};
use gaugepoint::decision::risk::{
    Guard, Interval, Items, acceptance, acceptance_for_risk, capability, global_risks,
};
use gaugepoint::growth::liner::{self, LinerParts};
use gaugepoint::measurement::statistics::{OneWay, Sample, one_way, sample};
use gaugepoint::measurement::study::{Crossed, Pooling, Study};
use gaugepoint::shape::deck::{self, Chamber, GasketBand};

/// Results by name, in the order of the record in C; none where nothing is given.
pub type Named = Vec<(&'static str, Option<f64>)>;

fn number(text: &str) -> f64 {
    text.parse().unwrap_or_else(|e| panic!("{text}: {e}"))
}

fn numbers(text: &str) -> Vec<f64> {
    text.split(';').filter(|n| !n.is_empty()).map(number).collect()
}

fn groups(text: &str) -> Vec<Vec<f64>> {
    text.split('/').map(numbers).collect()
}

/// Calls what a row of `study.csv` says.
///
/// # Errors
/// As the library.
pub fn study_row(row: &[String]) -> Result<Named, Error> {
    let (pooling, values) = (row[2].as_str(), row[3].as_str());
    let crossed = || Crossed::new(values.split('|').map(groups).collect());
    match row[1].as_str() {
        "sample" => sample(&numbers(values)).map(of_sample),
        "one_way" => one_way(&groups(values)).map(of_one_way),
        "study_by_ranges" => crossed()?.by_ranges().map(of_study),
        "study_by_variance" => crossed()?.by_variance(pooled(pooling)).map(of_study),
        other => panic!("{other}"),
    }
}

fn pooled(text: &str) -> Pooling {
    match text {
        "never" => Pooling::Never,
        "always" => Pooling::Always,
        above => Pooling::Above(number(above)),
    }
}

fn of_sample(s: Sample) -> Named {
    #[expect(clippy::cast_precision_loss, reason = "a vector is short")]
    let count = s.count as f64;
    vec![
        ("count", Some(count)),
        ("mean", Some(s.mean)),
        ("standard_deviation", Some(s.standard_deviation)),
        ("deviation_of_mean", Some(s.deviation_of_mean)),
        ("lag_1_correlation", Some(s.lag_1_correlation)),
    ]
}

fn of_one_way(a: OneWay) -> Named {
    vec![
        ("between", Some(a.between)),
        ("between_dof", Some(a.between_dof)),
        ("within", Some(a.within)),
        ("within_dof", Some(a.within_dof)),
        ("f", a.f),
        ("r_squared", a.r_squared),
        ("pooled_deviation", Some(a.pooled_deviation)),
    ]
}

macro_rules! components {
    ($study:ident, $($name:ident)+) => {
        vec![$(
            (concat!(stringify!($name), ".deviation"), Some($study.$name.deviation)),
            (concat!(stringify!($name), ".of_total"), Some($study.$name.of_total)),
            (concat!(stringify!($name), ".lower"), $study.$name.interval.map(|i| i.0)),
            (concat!(stringify!($name), ".upper"), $study.$name.interval.map(|i| i.1)),
        )+]
    };
}

macro_rules! lines {
    ($table:ident, $($name:ident)+) => {
        [$(
            (concat!("table.", stringify!($name), ".squares"), $table.map(|t| t.$name.squares)),
            (concat!("table.", stringify!($name), ".dof"), $table.map(|t| t.$name.dof)),
            (concat!("table.", stringify!($name), ".mean"), $table.map(|t| t.$name.mean)),
            (concat!("table.", stringify!($name), ".f"), $table.and_then(|t| t.$name.f)),
            (concat!("table.", stringify!($name), ".p"), $table.and_then(|t| t.$name.p)),
        )+]
    };
}

fn of_study(s: Study) -> Named {
    let table = s.table;
    let mut out = components!(s, repeatability reproducibility gauge part);
    out.extend([("total", Some(s.total)), ("categories", s.categories)]);
    out.extend(lines!(table, appraiser part interaction equipment));
    out.push(("table.total_squares", table.map(|t| t.total_squares)));
    out.push(("pooled", Some(f64::from(u8::from(table.is_some_and(|t| t.pooled))))));
    out
}

/// Calls what a row of `risk.csv` says.
///
/// # Errors
/// As the library.
pub fn risk_row(row: &[String]) -> Result<Named, Error> {
    let [function, items, u, tolerance, given] =
        [1, 2, 3, 4, 5].map(|k: usize| row.get(k).map_or("", String::as_str));
    let tolerance = interval(tolerance);
    match function {
        "global_risks" => global_risks(distribution(items), number(u), tolerance, interval(given)).map(|r| {
            let shares = [r.conforming, r.consumer, r.producer];
            ["conforming", "consumer", "producer"].into_iter().zip(shares.map(Some)).collect()
        }),
        "acceptance" => acceptance(tolerance, number(u), guard(given)).map(of_interval),
        "acceptance_for_risk" => {
            acceptance_for_risk(distribution(items), number(u), tolerance, number(given)).map(of_interval)
        }
        "capability" => {
            let Items::Normal { mean, deviation } = distribution(items) else { panic!("{items}") };
            capability(mean, deviation, tolerance)
                .map(|c| vec![("cpk", Some(c.cpk)), ("outside", Some(c.outside))])
        }
        other => panic!("{other}"),
    }
}

fn of_interval(i: Interval) -> Named {
    vec![("lower", i.lower), ("upper", i.upper)]
}

fn interval(text: &str) -> Interval {
    let (lower, upper) = text.split_once(';').unwrap_or_else(|| panic!("{text}"));
    let limit = |t: &str| (!t.is_empty()).then(|| number(t));
    Interval { lower: limit(lower), upper: limit(upper) }
}

fn distribution(text: &str) -> Items {
    let (name, rest) = text.split_once(';').unwrap_or_else(|| panic!("{text}"));
    match (name, numbers(rest).as_slice()) {
        ("normal", &[mean, deviation]) => Items::Normal { mean, deviation },
        ("uniform", &[low, high]) => Items::Uniform { low, high },
        ("triangular", &[low, mode, high]) => Items::Triangular { low, mode, high },
        ("gamma", &[shape, scale]) => Items::Gamma { shape, scale },
        _ => panic!("{text}"),
    }
}

fn guard(text: &str) -> Guard {
    match text.split_once(';') {
        None if text == "proven" => Guard::Proven,
        Some(("stringent", share)) => Guard::Stringent(number(share)),
        Some(("relaxed", share)) => Guard::Relaxed(number(share)),
        Some(("ratio_at_least", least)) => Guard::RatioAtLeast(number(least)),
        _ => panic!("{text}"),
    }
}

/// Holds the outcome of a row against its expected column; gives the number of comparisons.
///
/// # Panics
/// When they differ.
pub fn hold(id: &str, expected: &str, outcome: Result<Named, Error>) -> usize {
    if let Some(refusal) = expected.strip_prefix("error:") {
        let error = outcome.err().unwrap_or_else(|| panic!("{id} is accepted"));
        assert_eq!(format!("{} {}", error.kind().name(), error.field()), refusal, "{id}");
        return 1;
    }
    let named = outcome.unwrap_or_else(|e| panic!("{id}: {e}"));
    for part in expected.split(';') {
        let (name, value) = part.split_once('=').unwrap_or_else(|| panic!("{id}: {part}"));
        let found = named.iter().find(|(n, _)| *n == name).unwrap_or_else(|| panic!("{id}: {name}")).1;
        match value.split_once('~') {
            None => assert!(value == "none" && found.is_none(), "{id}: {name} is {found:?}"),
            Some((value, tolerance)) => {
                let ours = found.unwrap_or_else(|| panic!("{id}: {name} is not given"));
                let off = (ours - number(value)).abs();
                assert!(off <= number(tolerance), "{id}: {name} is {ours}, not {value}");
            }
        }
    }
    expected.split(';').count()
}

/// Calls what a row of `parts.csv` says.
///
/// # Errors
/// As the library.
pub fn parts_row(row: &[String]) -> Result<Named, Error> {
    let (function, arguments) = (row[1].as_str(), row[2].as_str());
    if function == "gasket_band" {
        return gasket(arguments);
    }
    let x = numbers(arguments);
    match function {
        "press_fit" => return pressed(&x),
        "liner_in_block" => return lined(&x),
        "compression_ratio" => return compressed(&x),
        "ring_hot_gap" => {
            return ring::hot_gap(x[0], x[1], x[2], x[3], x[4], x[5]).map(|g| {
                let butts = f64::from(u8::from(g.butts));
                given([("gap_mm", g.gap_mm), ("first_order_mm", g.first_order_mm), ("butts", butts)])
            });
        }
        "pin_clearance" => {
            return pin::pin_clearance(x[0], x[1], x[2], x[3], x[4], x[5])
                .map(|c| given([("cold_mm", c.cold_mm), ("hot_mm", c.hot_mm)]));
        }
        "assembly_temperature" => {
            return press_fit::assembly_temperature(x[0], x[1], x[2], x[3]).map(|a| {
                let colour = f64::from(1 + a.temper_colour as u8);
                given([("rise_k", a.rise_k), ("temperature_c", a.temperature_c), ("temper_colour", colour)])
            });
        }
        "deck" => {
            return deck::deck(x[0], x[1], x[2], x[3], x[4]).map(|d| {
                given([
                    ("deck_clearance_mm", d.deck_clearance_mm),
                    ("protrusion_mm", d.protrusion_mm),
                    ("squish_mm", d.squish_mm),
                ])
            });
        }
        _ => {}
    }
    scalar(function, &x).map(|result| given([("result", result)]))
}

fn scalar(function: &str, x: &[f64]) -> Result<f64, Error> {
    match (function, x) {
        ("ring_gap_in_bore_mm", &[gap, gauge, bore]) => ring::gap_in_bore_mm(gap, gauge, bore),
        ("ring_least_cold_gap_mm", &[hot, bore, tb, ab, tr, ar]) => {
            ring::least_cold_gap_mm(hot, bore, tb, ab, tr, ar)
        }
        ("ring_side_clearance_mm", &[groove, width]) => ring::side_clearance_mm(groove, width),
        ("ring_back_clearance_mm", &[bore, root, thickness]) => {
            ring::back_clearance_mm(bore, root, thickness)
        }
        ("ring_groove_wear_mm", &[groove, new]) => ring::groove_wear_mm(groove, new),
        ("keystone_groove_width_mm", &[over, pin, angle, at]) => {
            ring::keystone_groove_width_mm(over, pin, angle, at)
        }
        ("ring_gap_by_factor_mm", &[bore, per_mille]) => ring::gap_by_factor_mm(bore, per_mille),
        ("ring_conformable_amplitude_mm", &[n, force, bore, thickness, width, modulus]) => {
            #[expect(
                clippy::cast_possible_truncation,
                reason = "an order in a vector is a small whole number"
            )]
            let order = n as i32;
            ring::conformable_amplitude_mm(order, force, bore, thickness, width, modulus)
        }
        ("rod_angle_mrad", &[deviation, base]) => pin::rod_angle_mrad(deviation, base),
        ("rod_skew_mm", &[angle, length]) => pin::rod_skew_mm(angle, length),
        ("top_land_crevice_cm3", &[bore, land, height]) => deck::top_land_crevice_cm3(bore, land, height),
        _ => panic!("{function} of {x:?}"),
    }
}

fn given<const N: usize>(named: [(&'static str, f64); N]) -> Named {
    named.into_iter().map(|(name, value)| (name, Some(value))).collect()
}

fn pressed(x: &[f64]) -> Result<Named, Error> {
    let f = press_fit::press_fit(&PressFitParts {
        pin_mm: x[0],
        pin_hole_mm: x[1],
        eye_mm: x[2],
        width_mm: x[3],
        interference_least_mm: x[4],
        interference_most_mm: x[5],
        smoothing_mm: x[6],
        friction_least: x[7],
        friction_most: x[8],
        pin_modulus_mpa: x[9],
        pin_poisson: x[10],
        eye_modulus_mpa: x[11],
        eye_poisson: x[12],
    })?;
    Ok(given([
        ("pressure_least_mpa", f.pressure_least_mpa),
        ("pressure_most_mpa", f.pressure_most_mpa),
        ("eye_hoop_inside_mpa", f.eye_hoop_inside_mpa),
        ("eye_hoop_outside_mpa", f.eye_hoop_outside_mpa),
        ("pin_hoop_outside_mpa", f.pin_hoop_outside_mpa),
        ("pin_hoop_inside_mpa", f.pin_hoop_inside_mpa),
        ("force_least_n", f.force_least_n),
        ("force_most_n", f.force_most_n),
        ("torque_least_nm", f.torque_least_nm),
        ("torque_most_nm", f.torque_most_nm),
    ]))
}

fn lined(x: &[f64]) -> Result<Named, Error> {
    let f = liner::liner_in_block(&LinerParts {
        bore_mm: x[0],
        measured_in_block: x[1] > 0.0,
        seat_mm: x[2],
        block_mm: x[3],
        interference_mm: x[4],
        smoothing_mm: x[5],
        liner_modulus_mpa: x[6],
        liner_poisson: x[7],
        liner_expansion_per_k: x[8],
        liner_temperature_c: x[9],
        block_modulus_mpa: x[10],
        block_poisson: x[11],
        block_expansion_per_k: x[12],
        block_temperature_c: x[13],
    })?;
    let mut out = given([
        ("pressure_20_mpa", f.pressure_20_mpa),
        ("pressure_mpa", f.pressure_mpa),
        ("interference_mm", f.interference_mm),
        ("bore_20_mm", f.bore_20_mm),
        ("bore_mm", f.bore_mm),
    ]);
    out.push(("contact_lost_at_c", f.contact_lost_at_c));
    Ok(out)
}

fn compressed(x: &[f64]) -> Result<Named, Error> {
    let c = deck::compression_ratio(&Chamber {
        bore_mm: x[0],
        stroke_mm: x[1],
        head_cm3: x[2],
        gasket_bore_mm: x[3],
        gasket_mm: x[4],
        deck_clearance_mm: x[5],
        crown_cm3: x[6],
        crevice_cm3: x[7],
    })?;
    Ok(given([
        ("swept_cm3", c.swept_cm3),
        ("gasket_cm3", c.gasket_cm3),
        ("deck_cm3", c.deck_cm3),
        ("clearance_cm3", c.clearance_cm3),
        ("ratio", c.ratio),
    ]))
}

fn gasket(arguments: &str) -> Result<Named, Error> {
    let [projections, bands, step] = arguments.split('|').collect::<Vec<_>>()[..] else {
        panic!("{arguments}")
    };
    let band = |x: Vec<f64>| GasketBand { from_mm: x[0], to_mm: x[1], thickness_mm: x[2] };
    let bands: Vec<GasketBand> = groups(bands).into_iter().filter(|g| !g.is_empty()).map(band).collect();
    deck::gasket_band(&numbers(projections), &bands, number(step)).map(|c| {
        #[expect(clippy::cast_precision_loss, reason = "a table is short")]
        let band = c.band as f64;
        given([
            ("band", band),
            ("largest_mm", c.largest_mm),
            ("thickness_mm", c.thickness_mm),
            ("squish_mm", c.squish_mm),
        ])
    })
}
