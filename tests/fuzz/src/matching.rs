use crate::feed::{Feed, answered, bytes_of, error, record, zeroed};
use crate::watched::watched;
use core::ptr::null;
use gaugepoint_c::matching::{
    GaugepointMatched, GaugepointMatching, GaugepointMatchingConditions, GaugepointMeasuredBore,
    GaugepointMeasuredPiston, GaugepointPair, GaugepointWantedClearance, gaugepoint_match_pistons_watched,
    gaugepoint_match_sizes,
};

/// Most bores and pistons.
const MOST: usize = 7;
const GRADES: &[u8] = b"AB\xff";

type Pairs = [GaugepointMatched; MOST];

/// Measured pistons matched to bores, as structures and, where they have sizes alone, as arrays of them.
pub(crate) fn matching(feed: &mut Feed<'_>) {
    let only_sizes = feed.byte() < 128;
    let bore_count = 1 + feed.few(4);
    let (piston_count, room) = (bore_count - 1 + feed.few(3), if feed.byte() < 240 { MOST } else { 2 });
    let bores: Vec<_> = (0..bore_count).map(|_| bore(feed, only_sizes)).collect();
    let pistons: Vec<_> = (0..piston_count).map(|_| piston(feed, only_sizes)).collect();
    let (forbidden, fixed) = (pairs(feed), pairs(feed));
    let conditions = GaugepointMatchingConditions {
        has_wanted: i32::from(feed.byte() < 240),
        has_weight_band: if only_sizes { 0 } else { feed.flag() },
        wanted: wanted(feed),
        shared_uncertainty_mm: feed.near(0.0),
        common_uncertainty_mm: feed.near(0.0005),
        weight_band_g: feed.near(5.0),
        forbidden: forbidden.as_ptr(),
        forbidden_count: forbidden.len(),
        fixed: fixed.as_ptr(),
        fixed_count: fixed.len(),
    };
    // a status, and what stands in the places of the results
    let done = |call: &dyn Fn(&mut Pairs, &mut GaugepointMatching, &mut _) -> i32| {
        let (mut pairs, mut out, mut e): (Pairs, _, _) = (zeroed(), record!(GaugepointMatching), error());
        let status = call(&mut pairs, &mut out, &mut e);
        answered(status, &e);
        (status, (bytes_of(&pairs), bytes_of(&out)))
    };
    let untouched = (bytes_of(&zeroed::<Pairs>()), bytes_of(&record!(GaugepointMatching)));
    let of_parts = watched(feed.few(9), &untouched, |watcher, user| {
        done(&|pairs, out, e| {
            // SAFETY: the contract of the header
            let status = unsafe {
                gaugepoint_match_pistons_watched(
                    bores.as_ptr(),
                    bores.len(),
                    pistons.as_ptr(),
                    pistons.len(),
                    &raw const conditions,
                    watcher,
                    user,
                    pairs.as_mut_ptr(),
                    room,
                    out,
                    e,
                )
            };
            if status == 0 {
                paired(&pairs[..bores.len()], pistons.len(), out);
            }
            status
        })
    });
    if only_sizes {
        let (bore_sizes, bore_uncertainties): (Vec<f64>, Vec<f64>) =
            bores.iter().map(|b| (b.size_mm, b.standard_uncertainty_mm)).unzip();
        let (piston_sizes, piston_uncertainties): (Vec<f64>, Vec<f64>) =
            pistons.iter().map(|p| (p.size_mm, p.standard_uncertainty_mm)).unzip();
        let of_sizes = done(&|pairs, out, e| {
            // SAFETY: the contract of the header
            unsafe {
                gaugepoint_match_sizes(
                    bore_sizes.as_ptr(),
                    bore_uncertainties.as_ptr(),
                    bore_sizes.len(),
                    piston_sizes.as_ptr(),
                    piston_uncertainties.as_ptr(),
                    piston_sizes.len(),
                    &raw const conditions,
                    pairs.as_mut_ptr(),
                    room,
                    out,
                    e,
                )
            }
        });
        assert!(of_sizes == of_parts, "sizes are matched as parts are");
    }
}

/// Every bore has a piston of its own, in the order of the bores, and what is told of them are numbers.
fn paired(pairs: &[GaugepointMatched], pistons: usize, out: &GaugepointMatching) {
    for (k, pair) in pairs.iter().enumerate() {
        assert!(pair.bore == k && pair.piston < pistons, "{pair:?}");
        assert!(pairs[..k].iter().all(|other| other.piston != pair.piston), "{pairs:?}");
        assert!(pair.clearance_mm.is_finite() && pair.deviation_mm.is_finite(), "{pair:?}");
        assert!((0.0..=1.0).contains(&pair.probability_of_conformity), "{pair:?}");
        assert!((0.0..=1.0).contains(&pair.probability_outside), "{pair:?}");
    }
    assert!(out.merit.is_allowed == 1 && out.merit.sum_of_squares_mm2 >= 0.0, "{out:?}");
    assert!(out.merit.worst_outside <= out.as_given.worst_outside || out.as_given.is_allowed == 0, "{out:?}");
    assert_eq!(out.weight_spread_g.is_nan(), out.has_weight_spread == 0);
    assert_eq!(out.by_grade.worst_probability.is_nan(), out.has_by_grade == 0);
}

fn wanted(feed: &mut Feed<'_>) -> GaugepointWantedClearance {
    GaugepointWantedClearance {
        has_lower: i32::from(feed.byte() < 200),
        has_upper: i32::from(feed.byte() < 200),
        has_target: feed.flag(),
        reserved: 0,
        lower_mm: feed.near(0.03),
        upper_mm: feed.near(0.07),
        target_mm: feed.near(0.05),
    }
}

fn grade(feed: &mut Feed<'_>, none: bool) -> (*const core::ffi::c_char, usize) {
    match feed.few(3) {
        place if !none && place < GRADES.len() => (GRADES[place..].as_ptr().cast(), 1),
        _ => (null(), 0),
    }
}

fn bore(feed: &mut Feed<'_>, only_size: bool) -> GaugepointMeasuredBore {
    let (grade, grade_length) = grade(feed, only_size);
    GaugepointMeasuredBore {
        size_mm: feed.near(86.0) + f64::from(feed.byte()) / 4096.0,
        standard_uncertainty_mm: feed.near(0.001),
        has_wanted: if only_size { 0 } else { feed.flag() },
        reserved: 0,
        wanted: wanted(feed),
        grade,
        grade_length,
    }
}

fn piston(feed: &mut Feed<'_>, only_size: bool) -> GaugepointMeasuredPiston {
    let (grade, grade_length) = grade(feed, only_size);
    GaugepointMeasuredPiston {
        size_mm: feed.near(85.95) + f64::from(feed.byte()) / 4096.0,
        standard_uncertainty_mm: feed.near(0.001),
        has_weight: if only_size { 0 } else { feed.flag() },
        reserved: 0,
        weight_g: feed.near(450.0),
        grade,
        grade_length,
    }
}

fn pairs(feed: &mut Feed<'_>) -> Vec<GaugepointPair> {
    (0..feed.few(2)).map(|_| GaugepointPair { bore: feed.few(4), piston: feed.few(5) }).collect()
}
