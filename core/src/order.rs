//! The order of short lists, by code that is compiled once for lists of every type.

use core::cmp::Ordering;
use core::mem;

/// As the sorting of a slice: equal ones stay in the order they stand in.
pub(crate) fn sort_by<T>(items: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let of_places = |a: usize, b: usize| match (items.get(a), items.get(b)) {
        (Some(a), Some(b)) => compare(a, b),
        _ => Ordering::Equal,
    };
    for (a, b) in swaps(items.len(), &of_places) {
        items.swap(a, b);
    }
}

/// The exchanges that bring a list into order, one after another.
fn swaps(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<(usize, usize)> {
    let mut from: Vec<usize> = (0..count).collect();
    from.sort_by(|a, b| compare(*a, *b));
    let mut out = Vec::with_capacity(count);
    for start in 0..count {
        // round a cycle: each exchange brings one to its place, the last two at once
        let mut at = start;
        while let Some(place) = from.get_mut(at) {
            let next = mem::replace(place, at);
            if next == start || next == at {
                break;
            }
            out.push((at, next));
            at = next;
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    proptest! {
        /// The standard library's sort is the origin; the second number shows whether equal ones stay in order.
        #[test]
        fn as_the_standard_library_sorts(keys in proptest::collection::vec(0_u8..20, 0..60)) {
            let mut ours: Vec<(u8, usize)> = keys.into_iter().enumerate().map(|(k, key)| (key, k)).collect();
            let mut theirs = ours.clone();
            super::sort_by(&mut ours, |a, b| b.0.cmp(&a.0));
            theirs.sort_by_key(|of| std::cmp::Reverse(of.0));
            prop_assert_eq!(ours, theirs);
        }
    }
}
