use crate::feed::{Feed, answered, error, number_or_nan};
use crate::places::placed;
use gaugepoint_c::batch::GaugepointColumn;
use gaugepoint_c::columns::{gaugepoint_flat_count, gaugepoint_flat_parameter, gaugepoint_flat_strided};
use gaugepoint_c::decision::gaugepoint_decide_mm;
use gaugepoint_c::flat::gaugepoint_coverage_factor;
use gaugepoint_c::uncertainty::gaugepoint_standard_uncertainty;

/// The door of the numbers: flat functions and the decision, of any doubles, in memory that lies anyhow.
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
    let numbers = feed.numbers();
    let [a, b, c, d, f, _] = numbers;
    // SAFETY: the contract of the header
    let status = unsafe {
        match feed.byte() {
            200.. => return placed(feed),
            n if n % 6 < 3 => return flat(feed, numbers),
            n if n % 6 == 3 => gaugepoint_coverage_factor(a, b, &raw mut out, &raw mut e),
            n if n % 6 == 4 => {
                let (form, has_factor) = (feed.choice(8), feed.flag());
                gaugepoint_standard_uncertainty(form, a, has_factor, b, &raw mut out, &raw mut e)
            }
            _ => return decided(feed, [a, b, c, d, f]),
        }
    };
    number_or_nan(answered(status, &e), out);
}

/// Most parameters of a flat function.
const MOST: usize = 11;

/// A flat function of one row, then of three with the strides of any caller: the first row has the same bits.
fn flat(feed: &mut Feed<'_>, first: [f64; 6]) {
    let function = feed.choice(gaugepoint_flat_count());
    let parameters = (0..).take_while(|k| !gaugepoint_flat_parameter(function, *k).is_null()).count();
    let mut first = first.into_iter().chain(feed.numbers::<{ MOST - 6 }>());
    let first = std::array::from_fn(|_| first.next().unwrap_or_default());
    let rows: [[f64; MOST]; 3] = [first, feed.numbers(), feed.numbers()];
    let (mut one, mut three, mut states) = ([7.0], [7.0; 3], [7; 3]);
    let stride = if feed.flag() == 0 { 0 } else { size_of::<[f64; MOST]>().cast_signed() };
    let first_row: [*const f64; MOST] = std::array::from_fn(|k| rows.as_ptr().cast::<f64>().wrapping_add(k));
    let columns = |stride| first_row.map(|values| GaugepointColumn { values, stride });
    let (alone, together) = (columns(0), columns(stride));
    let call = |columns: &[GaugepointColumn; MOST], out: &mut [f64], status: *mut i32| {
        let mut e = error();
        // SAFETY: the contract of the header: three rows are there, and as many results
        let given = unsafe {
            gaugepoint_flat_strided(
                function,
                columns.as_ptr(),
                parameters,
                out.len(),
                out.as_mut_ptr(),
                8,
                status,
                4,
                &raw mut e,
            )
        };
        answered(given, &e)
    };
    if call(&alone, &mut one, std::ptr::null_mut()) {
        assert!(one[0].is_finite(), "{one:?}");
    } else {
        assert!(one[0] == 7.0, "an array is left as it was");
    }
    if call(&together, &mut three, states.as_mut_ptr()) {
        assert!(
            three.iter().zip(states).all(|(x, status)| if status == 0 { x.is_finite() } else { x.is_nan() }),
            "{three:?}"
        );
        assert!(states[0] != 0 || three[0].to_bits() == one[0].to_bits(), "{three:?} {one:?}");
    }
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
