//! Rows of `vectors/study.csv`, `vectors/risk.csv` and `vectors/before.csv`: the call of a row, and its results by the names that every host gives them.

use gaugepoint::Error;
use gaugepoint::bounds::{Verdict, judge};
use gaugepoint::decision::risk::{
    Guard, Interval, Items, acceptance, acceptance_for_risk, capability, global_risks,
};
use gaugepoint::measurement::before::{
    Adequacy, Advice, Agreement, Drift, Form, Outliers, Point, Soak, Warm, adequacy, agreement, drift,
    outliers, readers, soak,
};
use gaugepoint::measurement::statistics::{OneWay, Sample, one_way, sample};
use gaugepoint::measurement::study::{Crossed, Pooling, Study};

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
            outliers(&points(&lists[1..]), form(choice), alpha).map(|o| of_outliers(&o))
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

fn points(lists: &[Vec<f64>]) -> Vec<Point> {
    let point = |p: &Vec<f64>| Point { depth_mm: p[0], angle_deg: p[1], value: p[2] };
    lists.iter().map(point).collect()
}

fn form(word: &str) -> Form {
    match word {
        "mean" => Form::Mean,
        "common_oval" => Form::CommonOval,
        "oval_by_depth" => Form::OvalByDepth,
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
