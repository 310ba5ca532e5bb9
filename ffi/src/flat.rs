//! The flat functions, each in three shapes. Generated from the table of the core; the test that compares it also writes it.

use crate::columns::each;
use crate::error::GaugepointError;
use crate::guard::{cleared, plain, status};
use core::ffi::CStr;
use gaugepoint::flat::{self, row};

/// What a host can list of a function.
pub(crate) struct Texts {
    pub(crate) name: &'static CStr,
    pub(crate) meaning: &'static CStr,
    pub(crate) parameters: &'static [&'static CStr],
}

/// Texts of the table, in its order.
pub(crate) static TEXTS: &[Texts] = &[
    Texts {
        name: c"size_at_20_mm",
        meaning: c"Size at 20 C from the reading of a micrometer or caliper, in mm.\n\n(reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20)). Temperatures from -5 C to 60 C, mean\ncoefficients from 20 C between 1e-7 and 1e-4 per kelvin. Source: ISO 1:2022 and the definition of strain.",
        parameters: &[c"reading_mm", c"zero_error_mm", c"gauge_temperature_c", c"gauge_expansion_per_k", c"part_temperature_c", c"part_expansion_per_k"],
    },
    Texts {
        name: c"bench_clearance_mm",
        meaning: c"Clearance at 20 C in mm, over the diameter: bore - piston; negative is interference.",
        parameters: &[c"bore_mm", c"piston_mm"],
    },
    Texts {
        name: c"running_clearance_mm",
        meaning: c"Clearance in mm of freely growing parts, over the diameter, from sizes at 20 C.\n\nbore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20)). Temperatures from -40 C to 450 C. It is not a\nverdict: skirts are elastic, and engines run for years with a free clearance below zero. Source: definition of strain.",
        parameters: &[c"bore_mm", c"bore_temperature_c", c"bore_expansion_per_k", c"piston_mm", c"piston_temperature_c", c"piston_expansion_per_k"],
    },
    Texts {
        name: c"ring_gap_in_bore_mm",
        meaning: c"End gap in a bore, in mm, of a ring whose gap was measured in a gauge or in another bore: gap + pi (bore - gauge).\n\nRefused when gauge and bore are more than 2 % apart.",
        parameters: &[c"gap_mm", c"gauge_mm", c"bore_mm"],
    },
    Texts {
        name: c"ring_least_cold_gap_mm",
        meaning: c"Least cold gap, in mm, that leaves `least_hot_gap_mm` with bore and ring at their temperatures.\n\nBelow zero the bore opens by more than the ring grows, and heat asks for no gap at all.",
        parameters: &[c"least_hot_gap_mm", c"bore_mm", c"bore_temperature_c", c"bore_expansion_per_k", c"ring_temperature_c", c"ring_expansion_per_k"],
    },
    Texts {
        name: c"ring_side_clearance_mm",
        meaning: c"Side clearance of a ring in its groove, in mm; negative is a ring that does not enter. Beyond 0.5 mm it is another ring.",
        parameters: &[c"groove_width_mm", c"ring_width_mm"],
    },
    Texts {
        name: c"ring_back_clearance_mm",
        meaning: c"Room behind a ring that stands at the bore, in mm, on one side: (bore - root) / 2 - thickness.\n\nWith the diameter of the land in place of the bore it is how far the ring, pushed in, lies below the land.",
        parameters: &[c"bore_mm", c"groove_root_mm", c"ring_thickness_mm"],
    },
    Texts {
        name: c"ring_groove_wear_mm",
        meaning: c"Wear of a groove, in mm: its width where it is widest less its width when new.",
        parameters: &[c"groove_width_mm", c"new_groove_width_mm"],
    },
    Texts {
        name: c"keystone_groove_width_mm",
        meaning: c"Width in mm, at a diameter, of a keystone groove whose flanks slope alike, from the size over two pins that lie in it\nopposite each other.",
        parameters: &[c"over_pins_mm", c"pin_mm", c"included_angle_deg", c"at_diameter_mm"],
    },
    Texts {
        name: c"ring_gap_by_factor_mm",
        meaning: c"End gap in mm from a factor in per mille of the bore (never \"per inch\"), 0.5 to 14.",
        parameters: &[c"bore_mm", c"per_mille"],
    },
    Texts {
        name: c"rod_angle_mrad",
        meaning: c"Bend or twist of a rod as an angle in mrad, from its deviation over any base; the sign is kept.",
        parameters: &[c"deviation_mm", c"base_mm"],
    },
    Texts {
        name: c"rod_skew_mm",
        meaning: c"What an angle of a rod makes over a length, in mm: a piston's skew over its height, for example.",
        parameters: &[c"angle_mrad", c"length_mm"],
    },
    Texts {
        name: c"top_land_crevice_cm3",
        meaning: c"Volume in cm3 between top land and bore, down to the first ring.",
        parameters: &[c"bore_mm", c"land_mm", c"land_height_mm"],
    },
    Texts {
        name: c"depth_in_bore_mm",
        meaning: c"How deep below the deck a place of the piston is, in mm: deck clearance + (crown - place) + travel; heights up from the bottom edge of\nthe skirt.",
        parameters: &[c"deck_clearance_mm", c"crown_height_mm", c"height_mm", c"travel_mm"],
    },
];

/// Size at 20 C from the reading of a micrometer or caliper, in mm.
///
/// (reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20)). Temperatures from -5 C to 60 C, mean
/// coefficients from 20 C between 1e-7 and 1e-4 per kelvin. Source: ISO 1:2022 and the definition of strain.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_size_at_20_mm(reading_mm: f64, zero_error_mm: f64, gauge_temperature_c: f64, gauge_expansion_per_k: f64, part_temperature_c: f64, part_expansion_per_k: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::size_at_20_mm(reading_mm, zero_error_mm, gauge_temperature_c, gauge_expansion_per_k, part_temperature_c, part_expansion_per_k)?)) }
}

/// gaugepoint_size_at_20_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_size_at_20_mm_v(reading_mm: f64, zero_error_mm: f64, gauge_temperature_c: f64, gauge_expansion_per_k: f64, part_temperature_c: f64, part_expansion_per_k: f64) -> f64 {
    plain(f64::NAN, || flat::size_at_20_mm(reading_mm, zero_error_mm, gauge_temperature_c, gauge_expansion_per_k, part_temperature_c, part_expansion_per_k).unwrap_or(f64::NAN))
}

/// gaugepoint_size_at_20_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_size_at_20_mm_array(reading_mm: *const f64, zero_error_mm: *const f64, gauge_temperature_c: *const f64, gauge_expansion_per_k: *const f64, part_temperature_c: *const f64, part_expansion_per_k: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::size_at_20_mm, [reading_mm, zero_error_mm, gauge_temperature_c, gauge_expansion_per_k, part_temperature_c, part_expansion_per_k], count, out, row_status)) }
}

/// Clearance at 20 C in mm, over the diameter: bore - piston; negative is interference.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_bench_clearance_mm(bore_mm: f64, piston_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::bench_clearance_mm(bore_mm, piston_mm)?)) }
}

/// gaugepoint_bench_clearance_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_bench_clearance_mm_v(bore_mm: f64, piston_mm: f64) -> f64 {
    plain(f64::NAN, || flat::bench_clearance_mm(bore_mm, piston_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_bench_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_bench_clearance_mm_array(bore_mm: *const f64, piston_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::bench_clearance_mm, [bore_mm, piston_mm], count, out, row_status)) }
}

/// Clearance in mm of freely growing parts, over the diameter, from sizes at 20 C.
///
/// bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20)). Temperatures from -40 C to 450 C. It is not a
/// verdict: skirts are elastic, and engines run for years with a free clearance below zero. Source: definition of strain.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_running_clearance_mm(bore_mm: f64, bore_temperature_c: f64, bore_expansion_per_k: f64, piston_mm: f64, piston_temperature_c: f64, piston_expansion_per_k: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::running_clearance_mm(bore_mm, bore_temperature_c, bore_expansion_per_k, piston_mm, piston_temperature_c, piston_expansion_per_k)?)) }
}

/// gaugepoint_running_clearance_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_running_clearance_mm_v(bore_mm: f64, bore_temperature_c: f64, bore_expansion_per_k: f64, piston_mm: f64, piston_temperature_c: f64, piston_expansion_per_k: f64) -> f64 {
    plain(f64::NAN, || flat::running_clearance_mm(bore_mm, bore_temperature_c, bore_expansion_per_k, piston_mm, piston_temperature_c, piston_expansion_per_k).unwrap_or(f64::NAN))
}

/// gaugepoint_running_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_running_clearance_mm_array(bore_mm: *const f64, bore_temperature_c: *const f64, bore_expansion_per_k: *const f64, piston_mm: *const f64, piston_temperature_c: *const f64, piston_expansion_per_k: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::running_clearance_mm, [bore_mm, bore_temperature_c, bore_expansion_per_k, piston_mm, piston_temperature_c, piston_expansion_per_k], count, out, row_status)) }
}

/// End gap in a bore, in mm, of a ring whose gap was measured in a gauge or in another bore: gap + pi (bore - gauge).
///
/// Refused when gauge and bore are more than 2 % apart.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_gap_in_bore_mm(gap_mm: f64, gauge_mm: f64, bore_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::ring_gap_in_bore_mm(gap_mm, gauge_mm, bore_mm)?)) }
}

/// gaugepoint_ring_gap_in_bore_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_ring_gap_in_bore_mm_v(gap_mm: f64, gauge_mm: f64, bore_mm: f64) -> f64 {
    plain(f64::NAN, || flat::ring_gap_in_bore_mm(gap_mm, gauge_mm, bore_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_ring_gap_in_bore_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_gap_in_bore_mm_array(gap_mm: *const f64, gauge_mm: *const f64, bore_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::ring_gap_in_bore_mm, [gap_mm, gauge_mm, bore_mm], count, out, row_status)) }
}

/// Least cold gap, in mm, that leaves `least_hot_gap_mm` with bore and ring at their temperatures.
///
/// Below zero the bore opens by more than the ring grows, and heat asks for no gap at all.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_least_cold_gap_mm(least_hot_gap_mm: f64, bore_mm: f64, bore_temperature_c: f64, bore_expansion_per_k: f64, ring_temperature_c: f64, ring_expansion_per_k: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::ring_least_cold_gap_mm(least_hot_gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k)?)) }
}

/// gaugepoint_ring_least_cold_gap_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_ring_least_cold_gap_mm_v(least_hot_gap_mm: f64, bore_mm: f64, bore_temperature_c: f64, bore_expansion_per_k: f64, ring_temperature_c: f64, ring_expansion_per_k: f64) -> f64 {
    plain(f64::NAN, || flat::ring_least_cold_gap_mm(least_hot_gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k).unwrap_or(f64::NAN))
}

/// gaugepoint_ring_least_cold_gap_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_least_cold_gap_mm_array(least_hot_gap_mm: *const f64, bore_mm: *const f64, bore_temperature_c: *const f64, bore_expansion_per_k: *const f64, ring_temperature_c: *const f64, ring_expansion_per_k: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::ring_least_cold_gap_mm, [least_hot_gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k], count, out, row_status)) }
}

/// Side clearance of a ring in its groove, in mm; negative is a ring that does not enter. Beyond 0.5 mm it is another ring.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_side_clearance_mm(groove_width_mm: f64, ring_width_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::ring_side_clearance_mm(groove_width_mm, ring_width_mm)?)) }
}

/// gaugepoint_ring_side_clearance_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_ring_side_clearance_mm_v(groove_width_mm: f64, ring_width_mm: f64) -> f64 {
    plain(f64::NAN, || flat::ring_side_clearance_mm(groove_width_mm, ring_width_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_ring_side_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_side_clearance_mm_array(groove_width_mm: *const f64, ring_width_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::ring_side_clearance_mm, [groove_width_mm, ring_width_mm], count, out, row_status)) }
}

/// Room behind a ring that stands at the bore, in mm, on one side: (bore - root) / 2 - thickness.
///
/// With the diameter of the land in place of the bore it is how far the ring, pushed in, lies below the land.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_back_clearance_mm(bore_mm: f64, groove_root_mm: f64, ring_thickness_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::ring_back_clearance_mm(bore_mm, groove_root_mm, ring_thickness_mm)?)) }
}

/// gaugepoint_ring_back_clearance_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_ring_back_clearance_mm_v(bore_mm: f64, groove_root_mm: f64, ring_thickness_mm: f64) -> f64 {
    plain(f64::NAN, || flat::ring_back_clearance_mm(bore_mm, groove_root_mm, ring_thickness_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_ring_back_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_back_clearance_mm_array(bore_mm: *const f64, groove_root_mm: *const f64, ring_thickness_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::ring_back_clearance_mm, [bore_mm, groove_root_mm, ring_thickness_mm], count, out, row_status)) }
}

/// Wear of a groove, in mm: its width where it is widest less its width when new.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_groove_wear_mm(groove_width_mm: f64, new_groove_width_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::ring_groove_wear_mm(groove_width_mm, new_groove_width_mm)?)) }
}

/// gaugepoint_ring_groove_wear_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_ring_groove_wear_mm_v(groove_width_mm: f64, new_groove_width_mm: f64) -> f64 {
    plain(f64::NAN, || flat::ring_groove_wear_mm(groove_width_mm, new_groove_width_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_ring_groove_wear_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_groove_wear_mm_array(groove_width_mm: *const f64, new_groove_width_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::ring_groove_wear_mm, [groove_width_mm, new_groove_width_mm], count, out, row_status)) }
}

/// Width in mm, at a diameter, of a keystone groove whose flanks slope alike, from the size over two pins that lie in it
/// opposite each other.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_keystone_groove_width_mm(over_pins_mm: f64, pin_mm: f64, included_angle_deg: f64, at_diameter_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::keystone_groove_width_mm(over_pins_mm, pin_mm, included_angle_deg, at_diameter_mm)?)) }
}

/// gaugepoint_keystone_groove_width_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_keystone_groove_width_mm_v(over_pins_mm: f64, pin_mm: f64, included_angle_deg: f64, at_diameter_mm: f64) -> f64 {
    plain(f64::NAN, || flat::keystone_groove_width_mm(over_pins_mm, pin_mm, included_angle_deg, at_diameter_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_keystone_groove_width_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_keystone_groove_width_mm_array(over_pins_mm: *const f64, pin_mm: *const f64, included_angle_deg: *const f64, at_diameter_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::keystone_groove_width_mm, [over_pins_mm, pin_mm, included_angle_deg, at_diameter_mm], count, out, row_status)) }
}

/// End gap in mm from a factor in per mille of the bore (never "per inch"), 0.5 to 14.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_gap_by_factor_mm(bore_mm: f64, per_mille: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::ring_gap_by_factor_mm(bore_mm, per_mille)?)) }
}

/// gaugepoint_ring_gap_by_factor_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_ring_gap_by_factor_mm_v(bore_mm: f64, per_mille: f64) -> f64 {
    plain(f64::NAN, || flat::ring_gap_by_factor_mm(bore_mm, per_mille).unwrap_or(f64::NAN))
}

/// gaugepoint_ring_gap_by_factor_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_gap_by_factor_mm_array(bore_mm: *const f64, per_mille: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::ring_gap_by_factor_mm, [bore_mm, per_mille], count, out, row_status)) }
}

/// Bend or twist of a rod as an angle in mrad, from its deviation over any base; the sign is kept.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_rod_angle_mrad(deviation_mm: f64, base_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::rod_angle_mrad(deviation_mm, base_mm)?)) }
}

/// gaugepoint_rod_angle_mrad as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_rod_angle_mrad_v(deviation_mm: f64, base_mm: f64) -> f64 {
    plain(f64::NAN, || flat::rod_angle_mrad(deviation_mm, base_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_rod_angle_mrad of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_rod_angle_mrad_array(deviation_mm: *const f64, base_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::rod_angle_mrad, [deviation_mm, base_mm], count, out, row_status)) }
}

/// What an angle of a rod makes over a length, in mm: a piston's skew over its height, for example.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_rod_skew_mm(angle_mrad: f64, length_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::rod_skew_mm(angle_mrad, length_mm)?)) }
}

/// gaugepoint_rod_skew_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_rod_skew_mm_v(angle_mrad: f64, length_mm: f64) -> f64 {
    plain(f64::NAN, || flat::rod_skew_mm(angle_mrad, length_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_rod_skew_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_rod_skew_mm_array(angle_mrad: *const f64, length_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::rod_skew_mm, [angle_mrad, length_mm], count, out, row_status)) }
}

/// Volume in cm3 between top land and bore, down to the first ring.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_top_land_crevice_cm3(bore_mm: f64, land_mm: f64, land_height_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::top_land_crevice_cm3(bore_mm, land_mm, land_height_mm)?)) }
}

/// gaugepoint_top_land_crevice_cm3 as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_top_land_crevice_cm3_v(bore_mm: f64, land_mm: f64, land_height_mm: f64) -> f64 {
    plain(f64::NAN, || flat::top_land_crevice_cm3(bore_mm, land_mm, land_height_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_top_land_crevice_cm3 of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_top_land_crevice_cm3_array(bore_mm: *const f64, land_mm: *const f64, land_height_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::top_land_crevice_cm3, [bore_mm, land_mm, land_height_mm], count, out, row_status)) }
}

/// How deep below the deck a place of the piston is, in mm: deck clearance + (crown - place) + travel; heights up from the bottom edge of
/// the skirt.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_depth_in_bore_mm(deck_clearance_mm: f64, crown_height_mm: f64, height_mm: f64, travel_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, cleared("out", out, f64::NAN), || Ok(flat::depth_in_bore_mm(deck_clearance_mm, crown_height_mm, height_mm, travel_mm)?)) }
}

/// gaugepoint_depth_in_bore_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_depth_in_bore_mm_v(deck_clearance_mm: f64, crown_height_mm: f64, height_mm: f64, travel_mm: f64) -> f64 {
    plain(f64::NAN, || flat::depth_in_bore_mm(deck_clearance_mm, crown_height_mm, height_mm, travel_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_depth_in_bore_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_depth_in_bore_mm_array(deck_clearance_mm: *const f64, crown_height_mm: *const f64, height_mm: *const f64, travel_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::depth_in_bore_mm, [deck_clearance_mm, crown_height_mm, height_mm, travel_mm], count, out, row_status)) }
}
