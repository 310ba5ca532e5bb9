use crate::feed::{Feed, answered, error, number_or_nan, record, zeroed};
use gaugepoint_c::chart::{GaugepointChart, GaugepointPoint, gaugepoint_control_chart};
use gaugepoint_c::clean_up::{GaugepointCleanUpRange, gaugepoint_clean_up_from_diameters};
use gaugepoint_c::flat::gaugepoint_keystone_groove_width_mm;
use gaugepoint_c::pin::{GaugepointPressFit, GaugepointPressFitParts, gaugepoint_press_fit};
use gaugepoint_c::ring::{GaugepointRingHotGap, gaugepoint_ring_hot_gap};
use gaugepoint_c::shape::{
    GaugepointCircle, GaugepointCylinder, GaugepointHarmonic, GaugepointSection, gaugepoint_fit_circle,
    gaugepoint_fit_cylinder, gaugepoint_section_from_diameters, gaugepoint_section_from_radii,
};
use gaugepoint_c::statistics::{GaugepointSample, gaugepoint_sample};

/// The door of the records: fits of traces, statistics, rings, press fits, clean-up.
///
/// # Panics
/// When an answer breaks a rule.
pub fn records(data: &[u8]) {
    let mut feed = Feed(data);
    match feed.byte() % 8 {
        0 => circle(&mut feed),
        1 => cylinder(&mut feed),
        2 | 3 => section(&mut feed),
        4 => chart(&mut feed),
        5 => ring(&mut feed),
        6 => press(&mut feed),
        _ => clean_up(&mut feed),
    }
}

fn column(feed: &mut Feed<'_>, count: usize) -> Vec<f64> {
    (0..count).map(|_| feed.number()).collect()
}

fn circle(feed: &mut Feed<'_>) {
    let count = feed.few(12);
    let (x, y) = (column(feed, count), column(feed, count));
    let (mut out, mut e) = (record!(GaugepointCircle), error());
    // SAFETY: the contract of the header
    let status = unsafe {
        gaugepoint_fit_circle(x.as_ptr(), y.as_ptr(), count, feed.choice(4), &raw mut out, &raw mut e)
    };
    assert!(!answered(status, &e) || out.form.total_mm >= 0.0, "{out:?}");
}

fn cylinder(feed: &mut Feed<'_>) {
    let count = feed.few(12);
    let (x, y, z) = (column(feed, count), column(feed, count), column(feed, count));
    let (mut out, mut e) = (record!(GaugepointCylinder), error());
    // SAFETY: the contract of the header
    let status = unsafe {
        gaugepoint_fit_cylinder(
            x.as_ptr(),
            y.as_ptr(),
            z.as_ptr(),
            count,
            feed.choice(4),
            &raw mut out,
            &raw mut e,
        )
    };
    assert!(!answered(status, &e) || out.form.total_mm >= 0.0, "{out:?}");
}

fn section(feed: &mut Feed<'_>) {
    let (count, order, room) = (feed.few(16), feed.few(8), feed.few(8));
    let (angles, sizes) = (column(feed, count), column(feed, count));
    let (mut out, mut e) = (record!(GaugepointSection), error());
    // SAFETY: the contract of the header
    let status = unsafe {
        let mut harmonics: [GaugepointHarmonic; 8] = zeroed();
        let of =
            if feed.flag() == 1 { gaugepoint_section_from_radii } else { gaugepoint_section_from_diameters };
        of(
            angles.as_ptr(),
            sizes.as_ptr(),
            count,
            order,
            harmonics.as_mut_ptr(),
            room,
            &raw mut out,
            &raw mut e,
        )
    };
    assert!(!answered(status, &e) || out.mean_radius_mm.is_finite(), "{out:?}");
}

fn chart(feed: &mut Feed<'_>) {
    let (groups, size) = (feed.few(6), feed.few(5));
    let values = column(feed, groups * size);
    let (mut sample, mut e) = (record!(GaugepointSample), error());
    // SAFETY: the contract of the header
    unsafe {
        answered(gaugepoint_sample(values.as_ptr(), values.len(), &raw mut sample, &raw mut e), &e);
        let (mut chart, mut e) = (record!(GaugepointChart), error());
        let mut points: [GaugepointPoint; 30] = zeroed();
        let kind = feed.choice(6);
        let status = gaugepoint_control_chart(
            values.as_ptr(),
            groups,
            size,
            kind,
            &raw mut chart,
            points.as_mut_ptr(),
            &raw mut e,
        );
        assert!(!answered(status, &e) || chart.upper.is_finite(), "{chart:?}");
    }
}

fn ring(feed: &mut Feed<'_>) {
    let [a, b, c, d, f, g] = feed.numbers();
    let (mut out, mut e) = (record!(GaugepointRingHotGap), error());
    // SAFETY: the contract of the header
    unsafe {
        answered(gaugepoint_ring_hot_gap(a, b, c, d, f, g, &raw mut out, &raw mut e), &e);
        let (mut width, mut e) = (0.0, error());
        let status = gaugepoint_keystone_groove_width_mm(a, b, c, d, &raw mut width, &raw mut e);
        number_or_nan(answered(status, &e), width);
    }
}

fn press(feed: &mut Feed<'_>) {
    let [pin_mm, pin_hole_mm, eye_mm, width_mm, interference_least_mm, interference_most_mm, smoothing_mm] =
        feed.numbers();
    let [friction_least, friction_most, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson] =
        feed.numbers();
    let parts = GaugepointPressFitParts {
        pin_mm,
        pin_hole_mm,
        eye_mm,
        width_mm,
        interference_least_mm,
        interference_most_mm,
        smoothing_mm,
        friction_least,
        friction_most,
        pin_modulus_mpa,
        pin_poisson,
        eye_modulus_mpa,
        eye_poisson,
    };
    let (mut out, mut e) = (record!(GaugepointPressFit), error());
    // SAFETY: the contract of the header
    let status = unsafe { gaugepoint_press_fit(&raw const parts, &raw mut out, &raw mut e) };
    assert!(!answered(status, &e) || out.pressure_most_mpa >= out.pressure_least_mpa, "{out:?}");
}

fn clean_up(feed: &mut Feed<'_>) {
    let [unworn, largest, stock] = feed.numbers();
    let (mut out, mut e) = (record!(GaugepointCleanUpRange), error());
    // SAFETY: the contract of the header
    let status =
        unsafe { gaugepoint_clean_up_from_diameters(unworn, largest, stock, &raw mut out, &raw mut e) };
    answered(status, &e);
}
