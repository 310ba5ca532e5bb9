//! Rows of `hot_fit.csv`: the fit of a row, and its results by the names that every host gives them.

use crate::named::Named;
use gaugepoint::Error;
use gaugepoint::clearance::hot::apart::{HotBore, HotPiston, SizeAt};
use gaugepoint::clearance::hot::inverse::Answer;
use gaugepoint::clearance::hot::onset::Onset;
use gaugepoint::clearance::hot::{HotFit, Parts, Position, SurfaceGrowth};
use gaugepoint::growth::field::{BoreField, PistonField, Scenario};
use gaugepoint::growth::{Law, MeanCoefficient, Piecewise};
use gaugepoint::quantity::Temperature;
use gaugepoint::shape::bore::BoreShape;
use gaugepoint::shape::piston::{Counted, PistonShape, Surface, Symmetric, Table, Window, WindowKind};
use std::collections::HashMap;

/// What is looked for at each row, by the names that every host gives it: results, or none where there is none.
///
/// # Errors
/// As the library.
pub fn hot_row(row: &[String]) -> Result<Named, Error> {
    let (fit, position) = hot_fit(&row[1]);
    let gauge = fit.parts().piston.gauge_height_mm;
    let top = fit.parts().piston.surfaces[0].to_mm;
    let smallest = fit.smallest_at(0, position)?;
    let placed = fit.best_placed(0, position)?;
    let contact = fit.contact(0, position, 0.0)?;
    let ovality = fit.ovality(0, gauge)?;
    let profile = fit.profile(0, 5)?;
    let section = fit.section_at(gauge, position, 9)?;
    let band = contact.bands.last();
    #[expect(clippy::cast_precision_loss, reason = "some hundreds")]
    let bands = contact.bands.len() as f64;
    let mut out: Named = vec![
        ("smallest.clearance_mm", Some(smallest.clearance_mm)),
        ("smallest.certified_within_mm", Some(smallest.within_mm)),
        ("smallest.angle_deg", Some(smallest.place.angle_deg)),
        ("smallest.height_mm", Some(smallest.place.height_mm)),
        ("smallest.depth_mm", smallest.place.depth_mm),
        ("clearance_mm", Some(fit.at(77.5, gauge, position)?)),
        ("diametral_mm", Some(fit.diametral(90.0, top, position)?)),
        ("running_mm", Some(fit.running_at_gauge_point(position)?)),
        ("placed.clearance_mm", Some(placed.clearance_mm)),
        ("placed.thrust_mm", Some(placed.thrust_mm)),
        ("placed.pin_mm", Some(placed.pin_mm)),
        ("placed.certified_within_mm", Some(placed.within_mm)),
        ("contact.area_mm2", Some(contact.area_mm2)),
        ("contact.bands", Some(bands)),
        ("contact.height_mm", band.map(|b| b.height_mm)),
        ("contact.from_deg", band.map(|b| b.from_deg)),
        ("contact.to_deg", band.map(|b| b.to_deg)),
        ("ovality.cold_mm", Some(ovality.cold_mm)),
        ("ovality.running_mm", Some(ovality.running_mm)),
        ("ovality.round_running_mm", Some(ovality.round_running_mm)),
        ("profile.height_mm", Some(profile.heights_mm[3])),
        ("profile.cold_thrust_mm", Some(profile.cold_thrust_mm[3])),
        ("profile.cold_pin_mm", Some(profile.cold_pin_mm[3])),
        ("profile.hot_thrust_mm", Some(profile.hot_thrust_mm[3])),
        ("profile.hot_pin_mm", Some(profile.hot_pin_mm[3])),
        ("section.angle_deg", Some(section.angles_deg[1])),
        ("section.piston_cold_mm", Some(section.piston_cold_mm[1])),
        ("section.piston_hot_mm", Some(section.piston_hot_mm[1])),
        ("section.bore_cold_mm", Some(section.bore_cold_mm[1])),
        ("section.bore_hot_mm", Some(section.bore_hot_mm[1])),
        ("bore_for_running_mm", found(fit.bore_for_running_clearance(0.03, position)?)),
    ];
    for clearance in fit.map(&[0.0, 77.5, 180.0], &[0.0, gauge, top], position)? {
        out.push(("map", Some(clearance).filter(|c| c.is_finite())));
    }
    if position == Position::Anywhere {
        out.push(("bore_for_smallest_mm", found(fit.bore_for_smallest_clearance(0.01)?)));
        for scenario in Scenario::ALL {
            let (factor, slope, angle) = match fit.onset(*scenario, -0.02)? {
                Onset::Touches(c) => (Some(c.factor), Some(c.slope_mm), Some(c.place.angle_deg)),
                Onset::TouchesCold => (None, None, None),
                Onset::NoContact { factor, .. } => (Some(factor), None, None),
            };
            out.push(("onset.factor", factor));
            out.push(("onset.thrust_c", factor.map(|k| fit.gauge_thrust_c(k))));
            out.push(("onset.slope_mm", slope));
            out.push(("onset.angle_deg", angle));
            let bench = fit.piston_temperature_for_bench_clearance(0.1, *scenario, 0.0)?;
            out.push(("temperature_for_bench_c", found(bench)));
        }
    }
    Ok(out)
}

/// The piston and the bore of a fit, each by itself.
///
/// # Errors
/// As the library.
pub fn apart(parts: &Parts) -> Result<(HotPiston, HotBore), Error> {
    let piston = HotPiston::new(
        parts.piston_diameter_mm,
        parts.piston.clone(),
        parts.growth.clone(),
        parts.piston_field.clone(),
    )?;
    Ok((piston, HotBore::new(parts.bore.clone(), parts.bore_law.clone(), parts.bore_field.clone())?))
}

/// What piston and bore of a row say by themselves, by the names that every host gives it.
///
/// # Errors
/// As the library.
pub fn apart_row(row: &[String]) -> Result<Named, Error> {
    let (fit, position) = hot_fit(&row[1]);
    let (piston, bore) = apart(fit.parts())?;
    let gauge = fit.parts().piston.gauge_height_mm;
    let depth = if let Position::GaugeDepth(depth) = position { depth } else { 0.0 };
    let mut out = Named::new();
    for angle in [0.0, 30.0, 77.5] {
        out.extend(sizes(PISTON_SIZES, piston.size_at(gauge, angle).ok()));
        out.extend(sizes(BORE_SIZES, bore.size_at(depth, angle).ok()));
    }
    out.extend(sizes(GAUGE_POINT_SIZES, piston.at_gauge_point().ok()));
    Ok(out)
}

const PISTON_SIZES: [&str; 4] =
    ["piston.cold_radius_mm", "piston.hot_radius_mm", "piston.cold_diameter_mm", "piston.hot_diameter_mm"];
const BORE_SIZES: [&str; 4] =
    ["bore.cold_radius_mm", "bore.hot_radius_mm", "bore.cold_diameter_mm", "bore.hot_diameter_mm"];
const GAUGE_POINT_SIZES: [&str; 4] = [
    "gauge_point.cold_radius_mm",
    "gauge_point.hot_radius_mm",
    "gauge_point.cold_diameter_mm",
    "gauge_point.hot_diameter_mm",
];

fn sizes(names: [&'static str; 4], at: Option<SizeAt>) -> Named {
    let diameters = at.and_then(|s| s.diameters_mm);
    let values = [
        at.map(|s| s.cold_radius_mm),
        at.map(|s| s.hot_radius_mm),
        diameters.map(|(cold, _)| cold),
        diameters.map(|(_, hot)| hot),
    ];
    names.into_iter().zip(values).collect()
}

fn found(answer: Answer) -> Option<f64> {
    match answer {
        Answer::Found(value) => Some(value),
        Answer::NoSolution(_) => None,
    }
}

/// One mean coefficient from 20 C, from -50 C to 400 C.
#[must_use]
pub fn law(per_k: f64) -> Law {
    let c = Temperature::from_celsius;
    Law::mean_coefficient(c(20.0), MeanCoefficient::from_per_kelvin(per_k), c(-50.0), c(400.0)).unwrap()
}

fn numbers(text: &str) -> Vec<f64> {
    text.split('/').map(|n| n.parse().unwrap()).collect()
}

/// The fit of a row, `key=numbers;...`, and where its piston stands.
#[must_use]
pub fn hot_fit(text: &str) -> (HotFit, Position) {
    let cells: HashMap<&str, &str> = text.split(';').map(|c| c.split_once('=').unwrap()).collect();
    let list = |key: &str| cells.get(key).map(|c| numbers(c)).unwrap_or_default();
    let one = |key: &str| list(key)[0];
    let table = |key: &str| {
        let (places, values) = cells[key].split_once('@').unwrap();
        (numbers(places), numbers(values))
    };
    let [barrel, ovality, double] = ["barrel", "ovality", "double"].map(table);
    fn rows(t: &(Vec<f64>, Vec<f64>)) -> Table<'_> {
        Table { heights_mm: &t.0, values_mm: &t.1 }
    }
    let drawing = Symmetric {
        barrel: rows(&barrel),
        counted: Counted::Above,
        ovality: rows(&ovality),
        double_ovality: Some(rows(&double)),
    };
    let mut skirt = Surface::symmetric("skirt", 0.0, one("top"), &drawing).unwrap();
    if one("coating") > 0.0 {
        skirt = skirt.with_coating(one("coating")).unwrap();
    }
    if let [thrust, minor] = list("panel")[..] {
        skirt = skirt.with_panels(thrust, minor).unwrap();
    }
    if let [from_deg, to_deg, from_mm, to_mm] = list("cut")[..] {
        let cut = Window { kind: WindowKind::CutOut, from_deg, to_deg, from_mm, to_mm };
        skirt = skirt.with_window(cut).unwrap();
    }
    let mut bore = BoreShape::round(one("bore")).unwrap();
    let (depths, deviation) = table("deviation");
    bore = bore.with_deviation(&depths, &deviation).unwrap();
    for wave in list("waves").chunks(3) {
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "an order from 2 to 6")]
        let order = wave[0] as usize;
        bore = bore.with_harmonic(order, &[0.0], &[wave[1]], &[wave[2]]).unwrap();
    }
    let (heights, thrust) = table("thrust");
    let (wall_depths, wall) = table("wall");
    let ratios = list("ratios");
    let parts = Parts {
        piston_diameter_mm: one("piston"),
        piston: PistonShape::new(one("gauge"), vec![skirt]).unwrap(),
        growth: vec![growth(20.5e-6, ratios[0], ratios[1])],
        piston_field: PistonField::through(&heights, &thrust, &table("pin").1).unwrap(),
        bore_field: BoreField::through(&wall_depths, &wall).unwrap(),
        ..round(one("bore"), one("piston"), 11.4e-6, bore)
    };
    let position = list("depth").first().map_or(Position::Anywhere, |depth| Position::GaugeDepth(*depth));
    (HotFit::new(parts).unwrap(), position)
}

/// A round straight piston, 60 mm high, in a bore, everything at 20 C.
#[must_use]
pub fn round(bore_mm: f64, piston_mm: f64, bore_per_k: f64, bore: BoreShape) -> Parts {
    let zero = Table { heights_mm: &[0.0], values_mm: &[0.0] };
    let drawing = Symmetric { barrel: zero, counted: Counted::Above, ovality: zero, double_ovality: None };
    let skirt = Surface::symmetric("skirt", 0.0, 60.0, &drawing).unwrap();
    assert!((bore.diameter_mm - bore_mm).abs() < 1e-12);
    made(piston_mm, PistonShape::new(12.0, vec![skirt]).unwrap(), bore, bore_per_k)
}

/// Growth of controlled expansion.
#[must_use]
pub fn growth(per_k: f64, ratio_thrust: f64, ratio_pin: f64) -> SurfaceGrowth {
    SurfaceGrowth::controlled(&law(per_k), ratio_thrust, ratio_pin).unwrap()
}

/// A piston of a shape in a bore, everything at 20 C.
#[must_use]
pub fn made(piston_diameter_mm: f64, piston: PistonShape, bore: BoreShape, bore_per_k: f64) -> Parts {
    Parts {
        piston_diameter_mm,
        piston,
        growth: vec![growth(20.5e-6, 1.0, 1.0)],
        piston_field: PistonField::uniform(20.0, 20.0).unwrap(),
        bore,
        bore_law: Piecewise::of(&law(bore_per_k)),
        bore_field: BoreField::uniform(20.0).unwrap(),
        motion: None,
    }
}
