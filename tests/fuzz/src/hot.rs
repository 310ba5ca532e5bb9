use crate::feed::{Feed, answered, bytes_of, error, number_or_nan, record, zeroed};
use core::ptr::{null, null_mut};
use gaugepoint_c::error::GaugepointError;
use gaugepoint_c::growth::GaugepointLaw;
use gaugepoint_c::hot::{
    GaugepointBore, GaugepointBoreField, GaugepointBoreHarmonic, GaugepointHotAnswer, GaugepointHotBand,
    GaugepointHotBestPlaced, GaugepointHotContact, GaugepointHotFit, GaugepointHotFitParts,
    GaugepointHotOnset, GaugepointHotOvality, GaugepointHotSmallest, GaugepointMotion, GaugepointPistonField,
    GaugepointPort, GaugepointProfileRow, GaugepointSectionRow, GaugepointSurfaceGrowth,
    gaugepoint_hot_fit_bands, gaugepoint_hot_fit_best_placed, gaugepoint_hot_fit_bore_for_running_mm,
    gaugepoint_hot_fit_bore_for_smallest_mm, gaugepoint_hot_fit_clearance_mm, gaugepoint_hot_fit_contact,
    gaugepoint_hot_fit_diametral_mm, gaugepoint_hot_fit_free, gaugepoint_hot_fit_map, gaugepoint_hot_fit_new,
    gaugepoint_hot_fit_of, gaugepoint_hot_fit_onset, gaugepoint_hot_fit_ovality, gaugepoint_hot_fit_profile,
    gaugepoint_hot_fit_running_mm, gaugepoint_hot_fit_section, gaugepoint_hot_fit_smallest,
    gaugepoint_hot_fit_smallest_at, gaugepoint_hot_fit_temperature_for_bench_c,
};
use gaugepoint_c::hot_part::{
    GaugepointHotBore, GaugepointHotPiston, GaugepointHotSize, gaugepoint_hot_bore_at,
    gaugepoint_hot_bore_free, gaugepoint_hot_bore_new, gaugepoint_hot_piston_at,
    gaugepoint_hot_piston_at_gauge_point, gaugepoint_hot_piston_free, gaugepoint_hot_piston_new,
};
use gaugepoint_c::piston::{
    GaugepointPiston, GaugepointPistonSurface, GaugepointTable, GaugepointTableRow, GaugepointWindow,
};

/// Of the form on each of three axes, of the ovality, and of the form between the axes.
type Tables = [Vec<GaugepointTableRow>; 5];

/// What is asked of a fit; the first question also of piston and bore alone.
struct Question {
    which: u8,
    surface: usize,
    position: i32,
    at: f64,
    angle: f64,
    height: f64,
    wanted: f64,
    scenario: i32,
    count: usize,
}

impl Question {
    fn new(feed: &mut Feed<'_>) -> Self {
        Question {
            which: feed.byte() % 16,
            surface: feed.few(2),
            position: [4, 1, 2, 3, 4, 1, 0, i32::MAX][feed.few(7)],
            at: feed.near(90.0),
            angle: feed.near(77.0),
            height: feed.near(15.0),
            wanted: feed.near(0.02),
            scenario: feed.choice(4),
            count: [2, 3, 5, 9, 1, 0, 65_537, usize::MAX][feed.few(7)],
        }
    }
}

/// A piston and a bore, asked by themselves, and asked in a fit that is made of them and in one that is made at once: with the same bits.
/// Tables and orders are few, or one input takes the time of thousands.
pub(crate) fn hot(feed: &mut Feed<'_>) {
    let questions: Vec<_> = (0..=feed.few(2)).map(|_| Question::new(feed)).collect();
    let surfaces = 1 + feed.few(1);
    let tables: Vec<Tables> =
        (0..surfaces).map(|k| [-0.02, -0.02, -0.2, 0.2, 0.002].map(|value| table(feed, k, value))).collect();
    let windows: Vec<_> = (0..feed.few(1)).map(|_| window(feed)).collect();
    let drawn: Vec<_> = tables.iter().enumerate().map(|(k, t)| surface(feed, k, t, &windows)).collect();
    let piston = GaugepointPiston {
        gauge_height_mm: feed.near(15.0),
        surfaces: drawn.as_ptr(),
        surface_count: drawn.len(),
    };
    let coefficients = feed.numbers();
    let growth: Vec<_> = (0..surfaces + usize::from(feed.byte() == 255))
        .map(|_| GaugepointSurfaceGrowth {
            law: law(feed, 20.5e-6, &coefficients),
            ratio_thrust: feed.near(1.0),
            ratio_pin: feed.near(1.0),
        })
        .collect();
    let heights = rising(feed, 80.0);
    let [thrust, pin] = [190.0, 160.0].map(|t| near(feed, heights.len(), t));
    let depths = rising(feed, 180.0);
    let wall = near(feed, depths.len(), 110.0);
    let deviation = near(feed, depths.len(), 0.004);
    let waves: [Vec<f64>; 4] = [0.01, 0.004, -0.003, 0.002].map(|wave| near(feed, depths.len(), wave));
    let harmonics: Vec<_> =
        waves.chunks(2).take(feed.few(2)).map(|wave| harmonic(feed, &depths, wave)).collect();
    let ports: Vec<_> = (0..feed.few(1)).map(|_| port(feed)).collect();
    let bore = GaugepointBore {
        diameter_mm: feed.near(86.0),
        depths_mm: depths.as_ptr(),
        deviation_mm: deviation.as_ptr(),
        depth_count: if feed.byte() < 128 { 0 } else { depths.len() },
        harmonics: harmonics.as_ptr(),
        harmonic_count: harmonics.len(),
        ports: ports.as_ptr(),
        port_count: ports.len(),
        has_end: feed.flag(),
        reserved: 0,
        end_mm: feed.near(170.0),
    };
    let motion = GaugepointMotion {
        crank_radius_mm: feed.near(46.0),
        rod_mm: feed.near(148.0),
        pin_offset_mm: feed.near(0.6),
        deck_clearance_mm: feed.near(0.2),
        crown_height_mm: feed.near(80.0),
    };
    let parts = GaugepointHotFitParts {
        piston_diameter_mm: feed.near(85.95),
        piston: &raw const piston,
        growth: growth.as_ptr(),
        growth_count: growth.len(),
        piston_field: GaugepointPistonField {
            heights_mm: heights.as_ptr(),
            thrust_c: thrust.as_ptr(),
            pin_c: pin.as_ptr(),
            count: heights.len(),
        },
        bore: &raw const bore,
        bore_law: law(feed, 11.4e-6, &coefficients),
        bore_field: GaugepointBoreField {
            depths_mm: depths.as_ptr(),
            wall_c: wall.as_ptr(),
            count: depths.len(),
        },
        motion: if feed.byte() < 128 { null() } else { &raw const motion },
    };
    // SAFETY: everything that the parts point to is there
    unsafe { made_twice(&questions, &parts) };
}

/// # Safety
/// The parts are what the header says.
unsafe fn made_twice(questions: &[Question], parts: &GaugepointHotFitParts) {
    let (mut fit, mut e): (*mut GaugepointHotFit, _) = (null_mut(), error());
    // SAFETY: the contract of the header; each handle is freed once
    unsafe {
        let made = answered(gaugepoint_hot_fit_new(&raw const *parts, &raw mut fit, &raw mut e), &e);
        assert_eq!(made, !fit.is_null());
        let put_together = of_parts(&questions[0], parts);
        assert_eq!(made, !put_together.is_null(), "a fit depends on how it is made");
        if made {
            questions.iter().for_each(|q| asked(q, [fit, put_together]));
        }
        gaugepoint_hot_fit_free(fit);
        gaugepoint_hot_fit_free(put_together);
    }
}

/// The fit of a piston and a bore, which are made, asked and freed here; NULL when anything is refused.
///
/// # Safety
/// The parts are what the header says.
unsafe fn of_parts(q: &Question, p: &GaugepointHotFitParts) -> *mut GaugepointHotFit {
    let mut piston: *mut GaugepointHotPiston = null_mut();
    let mut bore: *mut GaugepointHotBore = null_mut();
    let mut fit: *mut GaugepointHotFit = null_mut();
    let [mut of_piston, mut of_bore, mut of_fit] = [error(); 3];
    // SAFETY: the caller's promise; NULL is refused where a handle is missing
    unsafe {
        let status = gaugepoint_hot_piston_new(
            p.piston_diameter_mm,
            p.piston,
            p.growth,
            p.growth_count,
            &raw const p.piston_field,
            &raw mut piston,
            &raw mut of_piston,
        );
        assert_eq!(answered(status, &of_piston), !piston.is_null());
        let status = gaugepoint_hot_bore_new(
            p.bore,
            &raw const p.bore_law,
            &raw const p.bore_field,
            &raw mut bore,
            &raw mut of_bore,
        );
        assert_eq!(answered(status, &of_bore), !bore.is_null());
        let status = gaugepoint_hot_fit_of(piston, bore, p.motion, &raw mut fit, &raw mut of_fit);
        assert_eq!(answered(status, &of_fit), !fit.is_null());
        let is_size = |s: &GaugepointHotSize| {
            let given = s.has_diameter == 1;
            s.cold_radius_mm.is_finite()
                && s.hot_radius_mm.is_finite()
                && given == s.cold_diameter_mm.is_finite()
                && given == s.hot_diameter_mm.is_finite()
        };
        let out = record!(GaugepointHotSize);
        answer(out, |out, e| gaugepoint_hot_piston_at(piston, q.height, q.angle, out, e), is_size);
        answer(out, |out, e| gaugepoint_hot_piston_at_gauge_point(piston, out, e), is_size);
        answer(out, |out, e| gaugepoint_hot_bore_at(bore, q.at, q.angle, out, e), is_size);
        gaugepoint_hot_piston_free(piston);
        gaugepoint_hot_bore_free(bore);
    }
    fit
}

/// What a call says, and whether it may: a record that is left as it was by a failure.
fn answer<R: Copy>(
    mut out: R,
    call: impl FnOnce(*mut R, *mut GaugepointError) -> i32,
    may: impl Fn(&R) -> bool,
) -> (i32, Vec<u8>) {
    let (untouched, mut e) = (bytes_of(&out), error());
    let status = call(&raw mut out, &raw mut e);
    let told = bytes_of(&out);
    assert!(if answered(status, &e) { may(&out) } else { told == untouched }, "status {status}: {told:?}");
    (status, told)
}

/// One question to both fits.
///
/// # Safety
/// The fits are there.
unsafe fn asked(q: &Question, fits: [*const GaugepointHotFit; 2]) {
    let Question { which, surface, position, at, angle, height, wanted, scenario, count } = *q;
    // SAFETY: the caller's promise, the contract of the header
    let [one, other] = fits.map(|fit| unsafe {
        match which {
            0 => number(|out, e| gaugepoint_hot_fit_clearance_mm(fit, angle, height, position, at, out, e)),
            1 => number(|out, e| gaugepoint_hot_fit_diametral_mm(fit, angle, height, position, at, out, e)),
            2 => number(|out, e| gaugepoint_hot_fit_running_mm(fit, position, at, out, e)),
            3 => answer(
                [5.0; 4],
                |out: *mut [f64; 4], e| {
                    let (angles, heights) = ([angle, 180.0], [height, 0.0]);
                    gaugepoint_hot_fit_map(
                        fit,
                        angles.as_ptr(),
                        2,
                        heights.as_ptr(),
                        2,
                        position,
                        at,
                        out.cast(),
                        e,
                    )
                },
                |map| map.iter().all(|clearance| !clearance.is_infinite()),
            ),
            4 => answer(
                record!(GaugepointHotSmallest),
                |out, e| gaugepoint_hot_fit_smallest(fit, surface, out, e),
                is_smallest,
            ),
            5 => answer(
                record!(GaugepointHotSmallest),
                |out, e| gaugepoint_hot_fit_smallest_at(fit, surface, position, at, out, e),
                is_smallest,
            ),
            6 => contact(fit, surface, position, at, wanted),
            7 => answer(
                record!(GaugepointHotBestPlaced),
                |out, e| gaugepoint_hot_fit_best_placed(fit, surface, position, at, out, e),
                |b| b.clearance_mm.is_finite() && b.thrust_mm.is_finite() && b.pin_mm.is_finite(),
            ),
            8 => answer(
                record!(GaugepointHotOnset),
                |out, e| gaugepoint_hot_fit_onset(fit, scenario, -wanted, out, e),
                |o| {
                    (1..=3).contains(&o.outcome)
                        && o.factor.is_finite() == (o.has_factor == 1)
                        && o.slope_mm.is_finite() == (o.has_place == 1)
                },
            ),
            9 => answer(
                record!(GaugepointHotAnswer),
                |out, e| gaugepoint_hot_fit_bore_for_running_mm(fit, wanted, position, at, out, e),
                is_answer,
            ),
            10 => answer(
                record!(GaugepointHotAnswer),
                |out, e| gaugepoint_hot_fit_bore_for_smallest_mm(fit, wanted, out, e),
                is_answer,
            ),
            11 => answer(
                record!(GaugepointHotAnswer),
                |out, e| gaugepoint_hot_fit_temperature_for_bench_c(fit, wanted, scenario, 0.0, out, e),
                is_answer,
            ),
            12 => answer(
                record!(GaugepointHotOvality),
                |out, e| gaugepoint_hot_fit_ovality(fit, surface, height, out, e),
                |o| o.cold_mm.is_finite() && o.running_mm.is_finite() && o.round_running_mm.is_finite(),
            ),
            13 => answer(
                [zeroed::<GaugepointProfileRow>(); 10],
                |out, e| gaugepoint_hot_fit_profile(fit, surface, count, out.cast(), e),
                |rows| rows[9].height_mm == 0.0 && rows[..count].iter().all(|r| r.hot_thrust_mm.is_finite()),
            ),
            14 => answer(
                [zeroed::<GaugepointSectionRow>(); 10],
                |out, e| gaugepoint_hot_fit_section(fit, height, position, at, count, out.cast(), e),
                |rows| rows[9].bore_hot_mm == 0.0 && rows[..count].iter().all(|r| r.angle_deg.is_finite()),
            ),
            _ => number(|out, e| gaugepoint_hot_fit_running_mm(null(), position, at, out, e)),
        }
    });
    assert!(one == other, "the answer {which} depends on how a fit was made");
}

/// A number, which is NaN after a failure.
fn number(call: impl FnOnce(*mut f64, *mut GaugepointError) -> i32) -> (i32, Vec<u8>) {
    let (mut out, mut e) = (0.0, error());
    let status = call(&raw mut out, &raw mut e);
    number_or_nan(answered(status, &e), out);
    (status, bytes_of(&out))
}

fn is_smallest(s: &GaugepointHotSmallest) -> bool {
    s.clearance_mm.is_finite()
        && s.certified_within_mm >= 0.0
        && s.place.height_mm.is_finite()
        && s.place.depth_mm.is_finite() == (s.place.has_depth == 1)
        && s.place.crank_deg.is_finite() == (s.place.has_crank == 1)
}

fn is_answer(a: &GaugepointHotAnswer) -> bool {
    a.value.is_finite() == (a.has_value == 1) && (a.no_solution[0] == 0) == (a.has_value == 1)
}

/// Bands need the room that their number says; in less nothing is written.
///
/// # Safety
/// The fit is there.
unsafe fn contact(
    fit: *const GaugepointHotFit,
    surface: usize,
    position: i32,
    at: f64,
    below_mm: f64,
) -> (i32, Vec<u8>) {
    let mut found = record!(GaugepointHotContact);
    let told = answer(
        found,
        |out, e| {
            // SAFETY: the caller's promise
            unsafe {
                let status = gaugepoint_hot_fit_contact(fit, surface, position, at, below_mm, out, e);
                found = *out;
                status
            }
        },
        |c| c.area_mm2 >= 0.0,
    );
    if told.0 != 0 {
        return told;
    }
    let mut bands: Vec<GaugepointHotBand> = vec![zeroed(); found.bands];
    for less in [1, 0] {
        let Some(room) = bands.len().checked_sub(less) else { continue };
        let (mut count, mut e) = (usize::MAX, error());
        // SAFETY: the caller's promise
        let status = unsafe {
            gaugepoint_hot_fit_bands(
                fit,
                surface,
                position,
                at,
                below_mm,
                bands.as_mut_ptr(),
                room,
                &raw mut count,
                &raw mut e,
            )
        };
        assert_eq!(answered(status, &e), less == 0);
        assert_eq!(count, if less == 0 { room } else { usize::MAX });
        let bad = |b: &GaugepointHotBand| if less == 0 { b.from_deg > b.to_deg } else { b.to_deg != 0.0 };
        assert!(!bands.iter().any(bad), "{bands:?}");
    }
    told
}

/// A few rising places.
fn rising(feed: &mut Feed<'_>, last: f64) -> Vec<f64> {
    const PLACES: [&[f64]; 3] = [&[0.0], &[0.0, 1.0], &[0.0, 0.5, 1.0]];
    PLACES[feed.few(2)].iter().map(|place| feed.near(last * place)).collect()
}

fn near(feed: &mut Feed<'_>, count: usize, usual: f64) -> Vec<f64> {
    (0..count).map(|_| feed.near(usual)).collect()
}

/// Heights at which a surface begins and ends.
fn span(surface: usize) -> [f64; 2] {
    if surface == 0 { [0.0, 60.0] } else { [65.0, 70.0] }
}

fn table(feed: &mut Feed<'_>, surface: usize, value: f64) -> Vec<GaugepointTableRow> {
    let [from, to] = span(surface);
    let places = [from, to, f64::midpoint(from, to)];
    let mut places = places[..[1, 2, 3, 1, 2, 3, 2, 0][feed.few(7)]].to_vec();
    places.sort_by(f64::total_cmp);
    places
        .into_iter()
        .map(|height| GaugepointTableRow { height_mm: feed.near(height), value_mm: feed.near(value) })
        .collect()
}

fn surface(
    feed: &mut Feed<'_>,
    place: usize,
    tables: &Tables,
    windows: &[GaugepointWindow],
) -> GaugepointPistonSurface {
    let [from_mm, to_mm] = span(place).map(|height| feed.near(height));
    let tables = tables.each_ref().map(|rows| GaugepointTable { rows: rows.as_ptr(), count: rows.len() });
    let mut surface = GaugepointPistonSurface {
        form: one_or_two(feed),
        counted: one_or_two(feed),
        has_panels: feed.flag(),
        has_coating: feed.flag(),
        from_mm,
        to_mm,
        thrust_panel_deg: feed.near(40.0),
        minor_thrust_panel_deg: feed.near(35.0),
        coating_mm: feed.near(0.01),
        windows: windows.as_ptr(),
        window_count: if place == 0 { windows.len() } else { 0 },
        ..zeroed()
    };
    match surface.form {
        1 => [surface.barrel, _, _, surface.ovality, surface.double_ovality] = tables,
        _ => [surface.thrust, surface.minor_thrust, surface.pin_axis, _, surface.thrust_fourth] = tables,
    }
    surface
}

/// A number of an enumeration of two.
fn one_or_two(feed: &mut Feed<'_>) -> i32 {
    match feed.byte() {
        0..128 => 1,
        128..240 => 2,
        other => i32::from(other),
    }
}

fn window(feed: &mut Feed<'_>) -> GaugepointWindow {
    GaugepointWindow {
        kind: one_or_two(feed),
        reserved: 0,
        from_deg: feed.near(70.0),
        to_deg: feed.near(110.0),
        from_mm: feed.near(20.0),
        to_mm: feed.near(40.0),
    }
}

fn port(feed: &mut Feed<'_>) -> GaugepointPort {
    GaugepointPort {
        from_deg: feed.near(350.0),
        to_deg: feed.near(10.0),
        from_mm: feed.near(90.0),
        to_mm: feed.near(120.0),
    }
}

fn harmonic(feed: &mut Feed<'_>, depths: &[f64], wave: &[Vec<f64>]) -> GaugepointBoreHarmonic {
    GaugepointBoreHarmonic {
        order: [2, 3, 4, 6, 32, 1, 33, usize::MAX][feed.few(7)],
        depths_mm: depths.as_ptr(),
        cos_mm: wave[0].as_ptr(),
        sin_mm: wave[1].as_ptr(),
        count: if feed.byte() < 200 { depths.len() } else { 1 },
    }
}

/// A mean coefficient, or a law of another form.
fn law(feed: &mut Feed<'_>, mean_per_k: f64, coefficients: &[f64; 3]) -> GaugepointLaw {
    const TEMPERATURES_C: [f64; 3] = [-40.0, 20.0, 450.0];
    let other = feed.byte() >= 200;
    GaugepointLaw {
        form: if other { feed.choice(8) } else { 1 },
        base_c: 20.0,
        mean_per_k: feed.near(mean_per_k),
        from_c: feed.near(-40.0),
        to_c: feed.near(450.0),
        temperatures_c: TEMPERATURES_C.as_ptr(),
        coefficients: coefficients.as_ptr(),
        count: feed.few(3),
        ..zeroed()
    }
}
