use crate::feed::{Feed, answered, error, number_or_nan};
use gaugepoint_c::decision::gaugepoint_decide_mm;
use gaugepoint_c::flat::{gaugepoint_bench_clearance_mm, gaugepoint_running_clearance_mm, gaugepoint_size_at_20_mm};
use gaugepoint_c::uncertainty::{gaugepoint_coverage_factor, gaugepoint_standard_uncertainty};

/// The door of the numbers: flat functions and the decision, of any doubles.
///
/// # Panics
/// When an answer breaks a rule.
pub fn numbers(data: &[u8]) {
    let mut feed = Feed(data);
    while !feed.done() {
        one(&mut feed);
    }
}

fn one(feed: &mut Feed<'_>) {
    let (mut out, mut e) = (f64::NAN, error());
    let [a, b, c, d, f, g] = feed.numbers();
    // SAFETY: the contract of the header
    let status = unsafe {
        match feed.byte() % 6 {
            0 => gaugepoint_size_at_20_mm(a, b, c, d, f, g, &raw mut out, &raw mut e),
            1 => gaugepoint_bench_clearance_mm(a, b, &raw mut out, &raw mut e),
            2 => gaugepoint_running_clearance_mm(a, b, c, d, f, g, &raw mut out, &raw mut e),
            3 => gaugepoint_coverage_factor(a, b, &raw mut out, &raw mut e),
            4 => gaugepoint_standard_uncertainty(feed.choice(8), a, feed.flag(), b, &raw mut out, &raw mut e),
            _ => return decided(feed, [a, b, c, d, f]),
        }
    };
    number_or_nan(answered(status, &e), out);
}

fn decided(feed: &mut Feed<'_>, [value, uncertainty, lower, upper, at_least]: [f64; 5]) {
    let (mut result, mut probability, mut e) = (0, 0.0, error());
    // SAFETY: the contract of the header
    let status = unsafe {
        gaugepoint_decide_mm(
            value,
            uncertainty,
            feed.flag(),
            lower,
            feed.flag(),
            upper,
            feed.choice(5),
            at_least,
            &raw mut result,
            &raw mut probability,
            &raw mut e,
        )
    };
    let succeeded = answered(status, &e);
    number_or_nan(succeeded, probability);
    assert!(if succeeded { (1..=3).contains(&result) } else { result == 4 }, "{result}");
    assert!(!succeeded || (0.0..=1.0).contains(&probability), "{probability}");
}
