use crate::feed::{Feed, answered, bytes_of, error, number_or_nan, record};
use crate::watched::watched;
use core::ptr::{null, null_mut};
use gaugepoint_c::expansion::{
    GaugepointExpansion, gaugepoint_expansion_at, gaugepoint_expansion_free, gaugepoint_expansion_new,
    gaugepoint_expansion_range, gaugepoint_expansion_strains,
};
use gaugepoint_c::growth::{GaugepointGrowth, GaugepointLaw};
use gaugepoint_c::stack::{
    GaugepointContributor, GaugepointStack, GaugepointStackForms, GaugepointTail, gaugepoint_stack_add,
    gaugepoint_stack_add_cause, gaugepoint_stack_densities, gaugepoint_stack_forms, gaugepoint_stack_free,
    gaugepoint_stack_new, gaugepoint_stack_outside, gaugepoint_stack_quantile,
    gaugepoint_stack_quantile_above, gaugepoint_stack_root_sum_square,
};
use gaugepoint_c::trials::{GaugepointAdaptive, GaugepointGoal, gaugepoint_stack_adaptive_watched};

/// The door of the handles: made, asked, changed, asked again and freed.
///
/// # Panics
/// When an answer breaks a rule.
pub fn handles(data: &[u8]) {
    let mut feed = Feed(data);
    match feed.byte() % 2 {
        0 => stack(&mut feed),
        _ => expansion(&mut feed),
    }
}

/// A contributor, whose numbers are the caller's.
pub(crate) fn contributor(feed: &mut Feed<'_>, name: &[u8], numbers: &[f64]) -> GaugepointContributor {
    let [nominal, lower, upper, coefficient] = feed.numbers();
    GaugepointContributor {
        name: name.as_ptr().cast(),
        name_length: name.len(),
        nominal,
        lower,
        upper,
        coefficient,
        count: if feed.byte() < 200 { 1 } else { feed.few(255) },
        kind: feed.choice(11),
        reserved: 0,
        numbers: numbers.as_ptr(),
        number_count: numbers.len(),
    }
}

/// What contributors point to.
pub(crate) struct Written {
    pub(crate) names: Vec<Vec<u8>>,
    pub(crate) numbers: Vec<Vec<f64>>,
}

impl Written {
    pub(crate) fn new(feed: &mut Feed<'_>, count: usize) -> Self {
        let names = (0..count).map(|k| match feed.byte() {
            255 => feed.text(20),
            _ => vec![b'a' + u8::try_from(k % 26).unwrap_or(0)],
        });
        let names = names.collect();
        let numbers = (0..count).map(|_| (0..feed.few(8)).map(|_| feed.number()).collect()).collect();
        Written { names, numbers }
    }

    pub(crate) fn contributors(&self, feed: &mut Feed<'_>) -> Vec<GaugepointContributor> {
        self.names.iter().zip(&self.numbers).map(|(name, numbers)| contributor(feed, name, numbers)).collect()
    }
}

fn stack(feed: &mut Feed<'_>) {
    let count = 1 + feed.few(5);
    let written = Written::new(feed, count);
    let contributors = written.contributors(feed);
    let (mut stack, mut e): (*mut GaugepointStack, _) = (null_mut(), error());
    // SAFETY: the contract of the header; the stack is freed once below
    let status = unsafe {
        gaugepoint_stack_new(contributors.as_ptr(), contributors.len(), &raw mut stack, &raw mut e)
    };
    if !answered(status, &e) {
        assert!(stack.is_null());
        return;
    }
    asked(feed, stack);
    changed(feed, stack);
    asked(feed, stack);
    adapted(feed, stack);
    // SAFETY: as above
    unsafe { gaugepoint_stack_free(stack) };
}

/// Trials until an interval settles, watched; seldom, because they are thousands.
fn adapted(feed: &mut Feed<'_>, stack: *const GaugepointStack) {
    if feed.byte() < 224 {
        return;
    }
    let goal = GaugepointGoal {
        seed: u64::from(feed.byte()),
        most_trials: 20_000,
        probability: feed.near(0.95),
        coverage: feed.flag() + 1,
        digits: feed.flag() + 1,
    };
    let untouched = bytes_of(&record!(GaugepointAdaptive));
    watched(feed.few(60), &untouched, |watcher, user| {
        let (mut out, mut e) = (record!(GaugepointAdaptive), error());
        // SAFETY: the contract of the header
        let status = unsafe {
            gaugepoint_stack_adaptive_watched(stack, &raw const goal, watcher, user, &raw mut out, &raw mut e)
        };
        assert!(!answered(status, &e) || out.mean.is_finite(), "{out:?}");
        (status, bytes_of(&out))
    });
}

fn changed(feed: &mut Feed<'_>, stack: *mut GaugepointStack) {
    let written = Written::new(feed, 1);
    let more = written.contributors(feed);
    let name = feed.text(8);
    let numbers: [f64; 2] = feed.numbers();
    let places: [usize; 2] = [feed.few(8), feed.few(8)];
    let factors: [f64; 2] = feed.numbers();
    let mut e = error();
    // SAFETY: the contract of the header
    unsafe {
        answered(gaugepoint_stack_add(stack, more.as_ptr(), &raw mut e), &e);
        let mut e = error();
        let status = gaugepoint_stack_add_cause(
            stack,
            name.as_ptr().cast(),
            name.len(),
            feed.choice(11),
            numbers.as_ptr(),
            feed.few(2),
            places.as_ptr(),
            factors.as_ptr(),
            feed.few(2),
            &raw mut e,
        );
        answered(status, &e);
    }
}

fn asked(feed: &mut Feed<'_>, stack: *const GaugepointStack) {
    let [a, b, c, d, factor] = feed.numbers();
    let (mut out, mut other) = (0.0, 0.0);
    // SAFETY: the contract of the header
    unsafe {
        let mut e = error();
        let status = gaugepoint_stack_quantile(stack, a, &raw mut out, &raw mut e);
        number_or_nan(answered(status, &e), out);
        let mut e = error();
        let status = gaugepoint_stack_quantile_above(stack, b, &raw mut out, &raw mut e);
        number_or_nan(answered(status, &e), out);
        let (mut tail, mut e) = (record!(GaugepointTail), error());
        let status = gaugepoint_stack_outside(stack, c, d, &raw mut tail, &raw mut e);
        if answered(status, &e) {
            assert!((0.0..=1.0).contains(&tail.below) && (0.0..=1.0).contains(&tail.above), "{tail:?}");
        }
        let (mut forms, mut e) = (record!(GaugepointStackForms), error());
        answered(gaugepoint_stack_forms(stack, &raw mut forms, &raw mut e), &e);
        let mut e = error();
        let status =
            gaugepoint_stack_root_sum_square(stack, factor, &raw mut out, &raw mut other, &raw mut e);
        let succeeded = answered(status, &e);
        number_or_nan(succeeded, out);
        number_or_nan(succeeded, other);
        let (mut density, mut e) = (5.0, error());
        let status = gaugepoint_stack_densities(stack, &raw const a, 1, &raw mut density, &raw mut e);
        if answered(status, &e) {
            assert!(density >= 0.0, "{density}");
        } else {
            assert_eq!(density, 5.0, "an array is left as it was");
        }
    }
}

fn expansion(feed: &mut Feed<'_>) {
    let count = feed.few(8);
    let temperatures: Vec<f64> = (0..count).map(|_| feed.number()).collect();
    let coefficients: Vec<f64> = (0..count).map(|_| feed.number()).collect();
    let name = feed.text(24);
    let [base_c, mean_per_k, from_c, to_c, nodularity_percent, graphite_percent, pearlite_to_ferrite] =
        feed.numbers();
    let law = GaugepointLaw {
        form: feed.choice(7),
        reserved: 0,
        base_c,
        mean_per_k,
        from_c,
        to_c,
        temperatures_c: if count == 0 { null() } else { temperatures.as_ptr() },
        coefficients: if count == 0 { null() } else { coefficients.as_ptr() },
        count,
        nodularity_percent,
        graphite_percent,
        pearlite_to_ferrite,
        name: name.as_ptr().cast(),
        name_length: name.len(),
    };
    let (mut expansion, mut e): (*mut GaugepointExpansion, _) = (null_mut(), error());
    // SAFETY: the contract of the header; the handle is freed once below
    unsafe {
        if !answered(gaugepoint_expansion_new(&raw const law, &raw mut expansion, &raw mut e), &e) {
            return;
        }
        let (mut from, mut to, mut e) = (0.0, 0.0, error());
        assert!(answered(gaugepoint_expansion_range(expansion, &raw mut from, &raw mut to, &raw mut e), &e));
        assert!(from < to, "{from} {to}");
        for t in [feed.number(), from, to, 20.0, f64::midpoint(from, to)] {
            let (mut growth, mut e) = (record!(GaugepointGrowth), error());
            let succeeded = answered(gaugepoint_expansion_at(expansion, t, &raw mut growth, &raw mut e), &e);
            assert_eq!(succeeded, (from..=to).contains(&t), "{t} of {from} to {to}");
            assert!(!succeeded || growth.strain.is_finite());
            let (mut strain, mut e) = (5.0, error());
            let status =
                gaugepoint_expansion_strains(expansion, &raw const t, 1, &raw mut strain, &raw mut e);
            assert_eq!(answered(status, &e), succeeded);
            assert_eq!(strain.to_bits(), if succeeded { growth.strain } else { 5.0 }.to_bits());
        }
        gaugepoint_expansion_free(expansion);
    }
}
