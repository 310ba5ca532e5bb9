//! Rows of the vectors with named results: the call of a row, and its results by the names that every host gives them.

use gaugepoint::Error;
use gaugepoint::bounds::{Verdict, judge};
use gaugepoint::clearance::crank;
use gaugepoint::clearance::least::Harmonics;
use gaugepoint::clearance::press_fit::{self, PressFitParts};
use gaugepoint::clearance::{pin, ring};
use gaugepoint::decision::risk::{
    Guard, Interval, Items, acceptance, acceptance_for_risk, capability, global_risks,
};
use gaugepoint::growth::liner::{self, LinerParts};
use gaugepoint::growth::{self, InstantaneousCoefficient, Law, MeanCoefficient, library};
use gaugepoint::measurement::before::{
    self, Adequacy, Advice, Agreement, Drift, Outliers, Point, Soak, Warm, adequacy, agreement, drift,
    outliers, readers, soak,
};
use gaugepoint::measurement::bias::{Band, Bias, Linearity, bias, linearity};
use gaugepoint::measurement::chart::{Chart, Kind, control_chart};
use gaugepoint::measurement::statistics::{OneWay, Sample, one_way, sample};
use gaugepoint::measurement::study::{Crossed, Pooling, Study};
use gaugepoint::plan::clean_up::{
    Allowance, Bar, BarAxis, CleanUp, RadiusUncertainty, WallPoint, WornWall, clean_up, from_diameters,
    largest_by_walls, walls_left,
};
use gaugepoint::plan::machining::{
    FinishCheck, WarmGauging, bore_sizes, boring_order, dial_reading_mm, finish_check,
};
use gaugepoint::quantity::{Expansion, Temperature};
use gaugepoint::shape::circle::{self, Algebraic, Circle, Form, Reference};
use gaugepoint::shape::cylinder::{self, Cylinder};
use gaugepoint::shape::deck::{self, Chamber, GasketBand};
use gaugepoint::shape::plane::{self, BoreAxis, Plane};
use gaugepoint::shape::section::{self, Harmonic, Section};
use gaugepoint::size::Condition;

/// Results by name, in the order of the record in C; none where nothing is given.
pub type Named = Vec<(&'static str, Option<f64>)>;

pub(crate) fn number(text: &str) -> f64 {
    text.parse().unwrap_or_else(|e| panic!("{text}: {e}"))
}

pub(crate) fn numbers(text: &str) -> Vec<f64> {
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
    let (given, values) = (row[2].as_str(), row[3].as_str());
    let crossed = || Crossed::new(values.split('|').map(groups).collect());
    match row[1].as_str() {
        "sample" => sample(&numbers(values)).map(of_sample),
        "one_way" => one_way(&groups(values)).map(of_one_way),
        "study_by_ranges" => crossed()?.by_ranges().map(of_study),
        "study_by_variance" => crossed()?.by_variance(pooled(given)).map(of_study),
        "bias" => {
            let [reference, u, coverage] = numbers(given)[..] else { panic!("{given}") };
            bias(&numbers(values), reference, u, coverage).map(of_bias)
        }
        "linearity" => linear(values, number(given)).map(of_linearity),
        "linearity_band" => {
            let [x, coverage] = numbers(given)[..] else { panic!("{given}") };
            linear(values, coverage)?.at(x).map(of_band)
        }
        kind => {
            let kind = Kind::from_word(kind).unwrap_or_else(|e| panic!("{e}"));
            control_chart(&groups(values), kind).map(of_chart)
        }
    }
}

/// Each group is the reference value and then its readings.
fn linear(values: &str, coverage: f64) -> Result<Linearity, Error> {
    let groups = groups(values);
    let references: Vec<f64> = groups.iter().map(|g| g[0]).collect();
    linearity(&references, &groups.iter().map(|g| g[1..].to_vec()).collect::<Vec<_>>(), coverage)
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

fn yes(is: bool) -> Option<f64> {
    Some(f64::from(u8::from(is)))
}

fn of_bias(b: Bias) -> Named {
    vec![
        ("bias", Some(b.bias)),
        ("standard_deviation", Some(b.standard_deviation)),
        ("standard_uncertainty", Some(b.standard_uncertainty)),
        ("dof", b.dof),
        ("test.t", b.test.map(|t| t.t)),
        ("test.p", b.test.map(|t| t.p)),
        ("lower", Some(b.interval.0)),
        ("upper", Some(b.interval.1)),
        ("zero_within", yes(b.zero_within)),
    ]
}

fn of_linearity(l: Linearity) -> Named {
    vec![
        ("intercept", Some(l.line.intercept)),
        ("intercept_uncertainty", Some(l.line.intercept_uncertainty)),
        ("intercept_test.t", l.intercept_test.map(|t| t.t)),
        ("intercept_test.p", l.intercept_test.map(|t| t.p)),
        ("slope", Some(l.line.slope)),
        ("slope_uncertainty", Some(l.line.slope_uncertainty)),
        ("slope_test.t", l.slope_test.map(|t| t.t)),
        ("slope_test.p", l.slope_test.map(|t| t.p)),
        ("residual_deviation", Some(l.line.residual_deviation)),
        ("dof", Some(l.line.dof)),
        ("r_squared", l.r_squared),
        ("zero_within", yes(l.zero_within)),
    ]
}

fn of_band(b: Band) -> Named {
    vec![
        ("bias", Some(b.bias)),
        ("standard_uncertainty", Some(b.standard_uncertainty)),
        ("lower", Some(b.interval.0)),
        ("upper", Some(b.interval.1)),
    ]
}

fn of_chart(c: Chart) -> Named {
    #[expect(clippy::cast_precision_loss, reason = "a vector is short")]
    let count = c.points.len() as f64;
    let mut out = vec![
        ("count", Some(count)),
        ("centre", Some(c.centre)),
        ("lower", Some(c.lower)),
        ("upper", Some(c.upper)),
        ("deviation", Some(c.deviation)),
    ];
    for (k, point) in c.points.iter().enumerate() {
        // the other names stand in the program; these few are left behind
        let name = |part: &str| -> &'static str { format!("points.{k}.{part}").leak() };
        out.push((name("value"), Some(point.value)));
        out.push((name("beyond"), yes(point.beyond)));
        out.push((name("run"), yes(point.run)));
    }
    out
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
    out.push(("pooled", yes(table.is_some_and(|t| t.pooled))));
    let [appraiser, part] = [table.and_then(|t| t.appraiser_residual), table.and_then(|t| t.part_residual)];
    out.push(("table.appraiser_residual.f", appraiser.map(|r| r.f)));
    out.push(("table.appraiser_residual.p", appraiser.map(|r| r.p)));
    out.push(("table.part_residual.f", part.map(|r| r.f)));
    out.push(("table.part_residual.p", part.map(|r| r.p)));
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

/// Calls what a row of `shape.csv` says.
///
/// # Errors
/// As the library.
pub fn shape_row(row: &[String]) -> Result<Named, Error> {
    let (choice, given) = (row[2].as_str(), columns(&row[3]));
    let reference = || Reference::from_word(choice).unwrap_or_else(|e| panic!("{e}"));
    let order = || choice.parse().unwrap_or_else(|e| panic!("{choice}: {e}"));
    let harmonics =
        || row[3].split_once('/').map_or(Vec::new(), |(_, h)| h.split('|').map(harmonic).collect());
    match (row[1].as_str(), given.as_slice()) {
        ("circle", [x, y]) => circle::fit(x, y, reference()).map(of_circle),
        ("circle_algebraic", [x, y]) => {
            let method = Algebraic::from_word(choice).unwrap_or_else(|e| panic!("{e}"));
            circle::fit_algebraic(x, y, method).map(of_circle)
        }
        ("cylinder", [x, y, z]) => cylinder::fit(x, y, z, reference()).map(of_cylinder),
        ("plane", [x, y, z]) => plane::fit(x, y, z, reference()).map(of_plane),
        ("bore_to_main_line", [bore, main]) => {
            plane::bore_to_main_line(&points(bore), &points(main)).map(of_bore)
        }
        ("section_from_radii", [angles, radii]) => {
            section::from_radii(angles, radii, order()).map(of_section)
        }
        ("section_from_diameters", [angles, diameters]) => {
            section::from_diameters(angles, diameters, order()).map(of_section)
        }
        ("two_point", [head, _]) => {
            section::two_point_mm(head[0], &harmonics(), head[1]).map(|d| vec![("diameter_mm", Some(d))])
        }
        ("three_leg", [head, _]) => {
            section::three_leg_mm(head[0], &harmonics(), head[1], [head[2], head[3], head[4]])
                .map(|d| vec![("diameter_mm", Some(d))])
        }
        ("v_block_factor", [head]) => {
            #[expect(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "an order of a vector"
            )]
            let order = head[0] as usize;
            section::v_block_factor(order, head[1], head[2]).map(|f| vec![("factor", Some(f))])
        }
        (other, _) => panic!("{other}"),
    }
}

/// Calls what a row of `clean_up.csv` says.
///
/// # Errors
/// As the library.
pub fn clean_up_row(row: &[String]) -> Result<Named, Error> {
    let given = columns(&row[3]);
    match (row[1].as_str(), given.as_slice()) {
        ("clean_up", [head, angles_deg, depths_mm, radii_mm]) => {
            let axis = match row[2].split(';').collect::<Vec<_>>()[..] {
                ["original"] => BarAxis::Original,
                ["worn"] => BarAxis::Worn,
                ["best", shift, tilt] => BarAxis::Best { shift_mm: number(shift), tilt: number(tilt) },
                _ => panic!("{}", row[2]),
            };
            let allowance = Allowance { centring_mm: head[0], stock_mm: head[1] };
            let uncertainty = RadiusUncertainty { each_mm: head[2], common_mm: head[3] };
            clean_up(&WornWall { angles_deg, depths_mm, radii_mm }, axis, &allowance, &uncertainty)
                .map(of_clean_up)
        }
        ("from_diameters", [numbers]) => from_diameters(numbers[0], numbers[1], numbers[2])
            .map(|range| vec![("lower_mm", Some(range.lower_mm)), ("upper_mm", Some(range.upper_mm))]),
        ("walls_left", [head, walls @ ..]) => {
            let left = walls_left(&bar(head), head[0], &wall_points(walls))?;
            let name = |k: usize| -> &'static str { k.to_string().leak() };
            Ok(left.into_iter().enumerate().map(|(k, w)| (name(k), Some(w))).collect())
        }
        ("largest_by_walls", [head, walls @ ..]) => {
            largest_by_walls(&bar(head), head[0], &wall_points(walls)).map(|d| vec![("diameter_mm", d)])
        }
        (other, _) => panic!("{other}"),
    }
}

/// A size, then the bar.
fn bar(head: &[f64]) -> Bar {
    Bar { x_mm: head[1], y_mm: head[2], middle_mm: head[3], slope_x: head[4], slope_y: head[5] }
}

fn wall_points(walls: &[Vec<f64>]) -> Vec<WallPoint> {
    let point = |w: &Vec<f64>| WallPoint { angle_deg: w[0], depth_mm: w[1], radius_mm: w[2], wall_mm: w[3] };
    walls.iter().map(point).collect()
}

fn of_clean_up(c: CleanUp) -> Named {
    let mut out = vec![
        ("diameter_mm", Some(c.diameter_mm)),
        ("standard_uncertainty_mm", Some(c.standard_uncertainty_mm)),
        ("least_mm", Some(c.least_mm)),
        ("x_mm", Some(c.bar.x_mm)),
        ("y_mm", Some(c.bar.y_mm)),
        ("middle_mm", Some(c.bar.middle_mm)),
        ("slope_x", Some(c.bar.slope_x)),
        ("slope_y", Some(c.bar.slope_y)),
    ];
    let name = |place: usize| -> &'static str { format!("held.{place}").leak() };
    out.extend(c.held_by.iter().map(|h| (name(h.place), Some(h.share))));
    out
}

/// Calls what a row of `machining.csv` says.
///
/// # Errors
/// As the library.
pub fn machining_row(row: &[String]) -> Result<Named, Error> {
    match (row[1].as_str(), numbers(&row[2]).as_slice()) {
        ("bore_sizes", &[piston, clearance, honing]) => bore_sizes(piston, clearance, honing)
            .map(|s| given([("finish_mm", s.finish_mm), ("boring_mm", s.boring_mm)])),
        ("dial_reading_mm", &[size, setting_mm, tr, ar, ts, as_, tu, au, tb, ab]) => {
            let at = |t, a| Condition { temperature: celsius(t), expansion: Expansion::from_per_kelvin(a) };
            let (ring, set, used, block) = (at(tr, ar), at(ts, as_), at(tu, au), at(tb, ab));
            dial_reading_mm(size, &WarmGauging { setting_mm, ring, set, used, block })
                .map(|dial| given([("dial_mm", dial)]))
        }
        ("finish_check", &[size, finish, tolerance]) => finish_check(size, finish, tolerance).map(of_check),
        ("boring_order", _) => boring_order(row[2].parse().unwrap_or_else(|e| panic!("{e}"))).map(of_order),
        other => panic!("{other:?}"),
    }
}

fn of_check(check: FinishCheck) -> Named {
    let (outcome, difference) = match check {
        FinishCheck::Met => (1.0, None),
        FinishCheck::HoneOn { stock_mm } => (2.0, Some(stock_mm)),
        FinishCheck::TooLarge { by_mm } => (3.0, Some(by_mm)),
    };
    vec![("outcome", Some(outcome)), ("difference_mm", difference)]
}

#[expect(clippy::cast_precision_loss, reason = "a block has few cylinders")]
fn of_order(order: Vec<usize>) -> Named {
    let name = |k: usize| -> &'static str { k.to_string().leak() };
    order.into_iter().enumerate().map(|(k, cylinder)| (name(k), Some(cylinder as f64))).collect()
}

/// Columns of numbers: in the cell, or in the trace it names. What is not there is NaN.
fn columns(cell: &str) -> Vec<Vec<f64>> {
    let known = |text: &str| if text == "none" { f64::NAN } else { number(text) };
    let Some(trace) = cell.strip_prefix('@') else {
        return cell.split('/').map(|c| c.split(';').map(known).collect()).collect();
    };
    let rows = crate::rows(&format!("tests/vectors/traces/{trace}.csv"));
    (0..rows[0].len()).map(|k| rows.iter().map(|r| number(&r[k])).collect()).collect()
}

fn points(flat: &[f64]) -> Vec<[f64; 3]> {
    flat.chunks(3).map(|p| [p[0], p[1], p[2]]).collect()
}

fn harmonic(text: &str) -> Harmonic {
    let part = |t: &str| (t != "none").then(|| number(t));
    let cells: Vec<&str> = text.split(';').collect();
    let order = cells[0].parse().unwrap_or_else(|e| panic!("{text}: {e}"));
    Harmonic { order, cos_mm: part(cells[1]), sin_mm: part(cells[2]) }
}

fn of_form(f: Form) -> Named {
    vec![
        ("form.total_mm", Some(f.total_mm)),
        ("form.outside_mm", Some(f.outside_mm)),
        ("form.inside_mm", Some(f.inside_mm)),
        ("form.rms_mm", Some(f.rms_mm)),
    ]
}

fn of_circle(c: Circle) -> Named {
    let mut out = vec![("x_mm", Some(c.x_mm)), ("y_mm", Some(c.y_mm)), ("radius_mm", Some(c.radius_mm))];
    out.extend(of_form(c.form));
    out
}

fn of_cylinder(c: Cylinder) -> Named {
    let mut out = vec![
        ("x_mm", Some(c.x_mm)),
        ("y_mm", Some(c.y_mm)),
        ("z_mm", Some(c.z_mm)),
        ("slope_x", Some(c.slope_x)),
        ("slope_y", Some(c.slope_y)),
        ("radius_mm", Some(c.radius_mm)),
    ];
    out.extend(of_form(c.form));
    out
}

fn of_plane(p: Plane) -> Named {
    let mut out = vec![
        ("x_mm", Some(p.x_mm)),
        ("y_mm", Some(p.y_mm)),
        ("z_mm", Some(p.z_mm)),
        ("slope_x", Some(p.slope_x)),
        ("slope_y", Some(p.slope_y)),
        ("slope", Some(p.slope)),
        ("direction_deg", p.direction_deg),
    ];
    out.extend(of_form(p.form));
    out
}

fn of_bore(b: BoreAxis) -> Named {
    vec![
        ("offset_mm", Some(b.offset_mm)),
        ("station_mm", Some(b.station_mm)),
        ("out_of_square_mrad", Some(b.out_of_square_mrad)),
        ("length_mm", Some(b.length_mm)),
        ("out_of_square_mm", Some(b.out_of_square_mm)),
        ("bore_straightness_mm", Some(b.bore_straightness_mm)),
        ("main_straightness_mm", Some(b.main_straightness_mm)),
    ]
}

/// Names of the orders that the vectors ask for.
const ORDERS: [(&str, &str); 9] = [
    ("", ""),
    ("", ""),
    ("harmonics.2.cos_mm", "harmonics.2.sin_mm"),
    ("harmonics.3.cos_mm", "harmonics.3.sin_mm"),
    ("harmonics.4.cos_mm", "harmonics.4.sin_mm"),
    ("harmonics.5.cos_mm", "harmonics.5.sin_mm"),
    ("harmonics.6.cos_mm", "harmonics.6.sin_mm"),
    ("harmonics.7.cos_mm", "harmonics.7.sin_mm"),
    ("harmonics.8.cos_mm", "harmonics.8.sin_mm"),
];

fn of_section(s: Section) -> Named {
    let mut out = vec![
        ("mean_radius_mm", Some(s.mean_radius_mm)),
        ("x_mm", s.position_mm.map(|p| p.0)),
        ("y_mm", s.position_mm.map(|p| p.1)),
        ("residual_mm", s.residual_mm),
        ("least_share", Some(s.least_share)),
    ];
    for h in s.harmonics {
        let (cosine, sine) = ORDERS[h.order];
        out.extend([(cosine, h.cos_mm), (sine, h.sin_mm)]);
    }
    out
}

/// Calls what a row of `before.csv` says.
///
/// # Errors
/// As the library.
pub fn before_row(row: &[String]) -> Result<Named, Error> {
    let (choice, lists) = (row[2].as_str(), groups(&row[3]));
    let first = lists.first().map_or(&[][..], Vec::as_slice);
    match (row[1].as_str(), first) {
        ("soak", _) => soak(warm(first)).map(of_soak),
        ("adequacy", &[lower, upper, u, least_zone]) => {
            let tolerance = Interval { lower: Some(lower), upper: Some(upper) };
            adequacy(tolerance, u, guard(choice), least_zone).map(of_adequacy)
        }
        ("drift", &[before, after, limit]) => drift(before, after, limit).map(of_drift),
        ("agreement", &[x1, u1, x2, u2]) => agreement(x1, u1, x2, u2).map(of_agreement),
        ("readers", _) => readers(first, &lists[1], lists[2][0]).map(of_agreement),
        ("outliers", &[alpha]) => {
            outliers(&stations(&lists[1..]), pattern(choice), alpha).map(|o| of_outliers(&o))
        }
        ("judge", &[value]) => judge(choice, value, None).map(of_verdict),
        ("judge", &[value, diameter]) => judge(choice, value, Some(diameter)).map(of_verdict),
        other => panic!("{other:?}"),
    }
}

fn warm(numbers: &[f64]) -> Warm {
    let &[
        excess_k,
        time_constant_min,
        size_mm,
        expansion_per_k,
        allowed_mm,
        excess_error_k,
        expansion_error_per_k,
    ] = numbers
    else {
        panic!("{numbers:?}")
    };
    Warm {
        excess_k,
        time_constant_min,
        size_mm,
        expansion_per_k,
        allowed_mm,
        excess_error_k,
        expansion_error_per_k,
    }
}

fn stations(lists: &[Vec<f64>]) -> Vec<Point> {
    let point = |p: &Vec<f64>| Point { depth_mm: p[0], angle_deg: p[1], value: p[2] };
    lists.iter().map(point).collect()
}

fn pattern(word: &str) -> before::Pattern {
    match word {
        "mean" => before::Pattern::Mean,
        "common_oval" => before::Pattern::CommonOval,
        "oval_by_depth" => before::Pattern::OvalByDepth,
        _ => panic!("{word}"),
    }
}

fn flag(yes: bool) -> Option<f64> {
    Some(f64::from(u8::from(yes)))
}

fn of_soak(s: Soak) -> Named {
    let advice = match s.advice {
        Advice::Measure => 1.0,
        Advice::WaitOrCorrect => 2.0,
        Advice::Wait => 3.0,
    };
    vec![
        ("advice", Some(advice)),
        ("error_mm", Some(s.error_mm)),
        ("wait_min", Some(s.wait_min)),
        ("correction_mm", Some(s.correction_mm)),
        ("correction_uncertainty_mm", Some(s.correction_uncertainty_mm)),
    ]
}

fn of_adequacy(a: Adequacy) -> Named {
    vec![
        ("adequate", flag(a.adequate)),
        ("largest_u", Some(a.largest_u)),
        ("ratio", Some(a.ratio)),
        ("zone", Some(a.zone)),
    ]
}

fn of_drift(d: Drift) -> Named {
    vec![
        ("drift_mm", Some(d.drift_mm)),
        ("uncertainty_mm", Some(d.uncertainty_mm)),
        ("shared_mm", Some(d.shared_mm)),
        ("own_mm", Some(d.own_mm)),
    ]
}

fn of_agreement(a: Agreement) -> Named {
    vec![
        ("e_n", Some(a.e_n)),
        ("difference", Some(a.difference)),
        ("first_expanded", Some(a.first_expanded)),
        ("second_expanded", Some(a.second_expanded)),
        ("agree", flag(a.agree)),
    ]
}

#[expect(clippy::cast_precision_loss, reason = "a vector is short")]
fn of_outliers(o: &Outliers) -> Named {
    vec![
        ("deviation", Some(o.deviation)),
        ("dof", Some(o.dof as f64)),
        ("farthest.index", o.farthest.map(|f| f.index as f64)),
        ("farthest.g", o.farthest.map(|f| f.g)),
        ("critical", Some(o.critical)),
        ("beyond", Some(o.beyond.len() as f64)),
    ]
}

fn of_verdict(verdict: Verdict) -> Named {
    vec![("verdict", Some(if verdict == Verdict::Usual { 1.0 } else { 2.0 }))]
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

/// Calls what a row of `growth.csv` says.
///
/// # Errors
/// As the library.
pub fn growth_row(row: &[String]) -> Result<Named, Error> {
    let lists: Vec<&str> = row[2].split('|').collect();
    let (law, at) = lists.split_at(lists.len() - 1);
    law_of(row[1].as_str(), law)?.at(celsius(number(at[0]))).map(of_growth)
}

fn celsius(c: f64) -> Temperature {
    Temperature::from_celsius(c)
}

fn law_of(form: &str, lists: &[&str]) -> Result<Law, Error> {
    if form == "built_in" {
        return library::named(lists[0]).map(library::Row::law);
    }
    let x: Vec<Vec<f64>> = lists.iter().map(|list| numbers(list)).collect();
    let rows = |t: &[f64], a: &[f64]| t.iter().copied().map(celsius).zip(a.to_vec()).collect::<Vec<_>>();
    match (form, x.as_slice()) {
        ("mean_coefficient", [n]) => {
            let mean = MeanCoefficient::from_per_kelvin(n[1]);
            Law::mean_coefficient(celsius(n[0]), mean, celsius(n[2]), celsius(n[3]))
        }
        ("mean_table", [base, t, a]) => {
            let rows = rows(t, a).into_iter().map(|(t, a)| (t, MeanCoefficient::from_per_kelvin(a)));
            Law::mean_table(celsius(base[0]), &rows.collect::<Vec<_>>())
        }
        ("instantaneous_table", [t, a]) => {
            let rows = rows(t, a).into_iter().map(|(t, a)| (t, InstantaneousCoefficient::from_per_kelvin(a)));
            Law::instantaneous_table(&rows.collect::<Vec<_>>())
        }
        ("instantaneous_polynomial", [c, ends]) => {
            Law::instantaneous_polynomial(c, celsius(ends[0]), celsius(ends[1]))
        }
        ("strain_polynomial", [c, ends]) => Law::strain_polynomial(c, celsius(ends[0]), celsius(ends[1])),
        ("graphite_iron", [n]) => Law::graphite_iron(n[0], n[1], n[2]),
        _ => panic!("{form} {lists:?}"),
    }
}

fn of_growth(g: growth::Growth) -> Named {
    vec![
        ("strain", Some(g.strain)),
        ("instantaneous_per_k", Some(g.instantaneous.per_kelvin())),
        ("mean_from_20_per_k", g.mean_from_20.map(MeanCoefficient::per_kelvin)),
    ]
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
    if function == "least_clearance_of_section" {
        return least(arguments);
    }
    let x = numbers(arguments);
    match function {
        "dead_centres" => {
            return crank::dead_centres(x[0], x[1], x[2]).map(|d| {
                given([("stroke_mm", d.stroke_mm), ("top_deg", d.top_deg), ("bottom_deg", d.bottom_deg)])
            });
        }
        "piston_travel" => {
            return crank::piston_travel(x[0], x[1], x[2], x[3])
                .map(|t| given([("travel_mm", t.travel_mm), ("per_degree_mm", t.per_degree_mm)]));
        }
        "crank_angles_at" => {
            return crank::crank_angles_at(x[0], x[1], x[2], x[3])
                .map(|a| given([("before_deg", a.before_deg), ("after_deg", a.after_deg)]));
        }
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
        ("depth_in_bore_mm", &[deck, crown, height, travel]) => {
            crank::depth_in_bore_mm(deck, crown, height, travel)
        }
        _ => panic!("{function} of {x:?}"),
    }
}

pub(crate) fn given<const N: usize>(named: [(&'static str, f64); N]) -> Named {
    named.into_iter().map(|(name, value)| (name, Some(value))).collect()
}

/// "mean|cosines|sines"
fn least(arguments: &str) -> Result<Named, Error> {
    let parts: Vec<&str> = arguments.split('|').collect();
    let section = Harmonics::new(number(parts[0]), &numbers(parts[1]), &numbers(parts[2]))?;
    let l = section.least();
    Ok(given([("least_mm", l.least_mm), ("angle_deg", l.angle_deg), ("within_mm", l.within_mm)]))
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
