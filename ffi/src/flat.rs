//! The flat functions, each in three shapes. Generated from the table of the core; the test that compares it also writes it.

use crate::columns::each;
use crate::error::GaugepointError;
use crate::guard::{number, plain, status};
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
    Texts {
        name: c"inch_to_mm",
        meaning: c"Length in mm from inches, -400 in to 400 in.\n\nA number of up to 15 digits and 12 decimals is converted exactly and rounded once: 2.4126 in is 61.28004 mm. Source:\nNIST SP 811 (2008), appendix B.",
        parameters: &[c"length_inch"],
    },
    Texts {
        name: c"mm_to_inch",
        meaning: c"Length in inches from mm, -10160 mm to 10160 mm.\n\nA number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.",
        parameters: &[c"length_mm"],
    },
    Texts {
        name: c"thou_to_mm",
        meaning: c"Length in mm from thousandths of an inch, -400000 thou to 400000 thou.\n\nA number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.",
        parameters: &[c"length_thou"],
    },
    Texts {
        name: c"fahrenheit_to_c",
        meaning: c"Temperature in degrees Celsius from degrees Fahrenheit, -454 F to 2192 F; a difference of temperatures is another thing.\n\nA number of up to 15 digits and 12 decimals is converted exactly and rounded once: 80.6 F is 27 C. Source:\nNIST SP 811 (2008), appendix B.",
        parameters: &[c"temperature_fahrenheit"],
    },
    Texts {
        name: c"c_to_fahrenheit",
        meaning: c"Temperature in degrees Fahrenheit from degrees Celsius, -270 C to 1200 C; a difference of temperatures is another thing.\n\nA number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.",
        parameters: &[c"temperature_c"],
    },
    Texts {
        name: c"per_fahrenheit_to_per_k",
        meaning: c"Coefficient of expansion per kelvin from one per degree Fahrenheit, 1e-7 to 5e-5 per degree Fahrenheit: 1.8 times as much.\n\nA number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.",
        parameters: &[c"expansion_per_fahrenheit"],
    },
    Texts {
        name: c"ring_hot_gap_mm",
        meaning: c"End gap in mm with bore and ring at their temperatures, -40 C to 450 C, from the gap at 20 C; below zero the ends butt.\n\ngap (1 + a_ring (t_ring - 20)) + pi bore (a_bore (t_bore - 20) - a_ring (t_ring - 20)). Source: hot circumference of the bore less\nthe hot length of the ring.",
        parameters: &[c"gap_mm", c"bore_mm", c"bore_temperature_c", c"bore_expansion_per_k", c"ring_temperature_c", c"ring_expansion_per_k"],
    },
    Texts {
        name: c"pin_cold_clearance_mm",
        meaning: c"Clearance of a pin in a boss or in a bush at 20 C, in mm, over the diameter: hole - pin; negative is interference.\n\nRefused when it is not between -0.15 mm and 0.2 mm: another pin.",
        parameters: &[c"hole_mm", c"pin_mm"],
    },
    Texts {
        name: c"pin_hot_clearance_mm",
        meaning: c"Clearance in mm of a freely growing pin in a boss or in a bush, over the diameter, from sizes at 20 C.\n\nhole (1 + a_hole (t_hole - 20)) - pin (1 + a_pin (t_pin - 20)). Temperatures from -40 C to 450 C. A pressed bush grows by the\ncoefficient of what holds it. Source: definition of strain.",
        parameters: &[c"hole_mm", c"hole_temperature_c", c"hole_expansion_per_k", c"pin_mm", c"pin_temperature_c", c"pin_expansion_per_k"],
    },
    Texts {
        name: c"press_fit_pressure_mpa",
        meaning: c"Pressure in MPa in the joint of a pin pressed into an eye; 0 when the smoothing takes all of the interference.\n\nSizes are diameters at 20 C; a hole of 0 is a solid pin. Source: Lame, thick elastic tubes with free ends.",
        parameters: &[c"pin_mm", c"pin_hole_mm", c"eye_mm", c"interference_mm", c"smoothing_mm", c"pin_modulus_mpa", c"pin_poisson", c"eye_modulus_mpa", c"eye_poisson"],
    },
    Texts {
        name: c"press_fit_force_n",
        meaning: c"Axial force in N at which a pin pressed into an eye slips: pi pin width pressure friction.\n\nThe pressure is that of press_fit_pressure_mpa. Source: Coulomb friction over the joint.",
        parameters: &[c"pin_mm", c"pin_hole_mm", c"eye_mm", c"width_mm", c"interference_mm", c"smoothing_mm", c"friction", c"pin_modulus_mpa", c"pin_poisson", c"eye_modulus_mpa", c"eye_poisson"],
    },
    Texts {
        name: c"press_fit_torque_nm",
        meaning: c"Torque in N m at which a pin pressed into an eye slips: force pin / 2.\n\nThe force is that of press_fit_force_n. Source: Coulomb friction at the radius of the joint.",
        parameters: &[c"pin_mm", c"pin_hole_mm", c"eye_mm", c"width_mm", c"interference_mm", c"smoothing_mm", c"friction", c"pin_modulus_mpa", c"pin_poisson", c"eye_modulus_mpa", c"eye_poisson"],
    },
    Texts {
        name: c"assembly_temperature_c",
        meaning: c"Temperature in degrees Celsius to which the outer part is heated, the pin at 20 C, so that its hole opens by the interference and a\nclearance: 20 + (interference + clearance) / (a diameter).\n\nClean steel colours from 249 C: too much heat. Source: free growth.",
        parameters: &[c"diameter_mm", c"interference_mm", c"clearance_mm", c"expansion_per_k"],
    },
    Texts {
        name: c"piston_deck_clearance_mm",
        meaning: c"From the deck down to the crown at top dead centre, in mm: block - (stroke / 2 + rod + compression height); negative when the crown\nstands above the deck.",
        parameters: &[c"block_height_mm", c"stroke_mm", c"rod_mm", c"compression_height_mm"],
    },
    Texts {
        name: c"swept_volume_cm3",
        meaning: c"Swept volume in cm3 of one cylinder: pi bore^2 stroke / 4.",
        parameters: &[c"bore_mm", c"stroke_mm"],
    },
    Texts {
        name: c"static_compression_ratio",
        meaning: c"Compression ratio, a pure number: (swept + clearance volume) / clearance volume.\n\nA dome of the crown is a negative volume, a protrusion a negative deck clearance; 0 leaves the crevice at the top land out, as is usual.\nRefused when nothing is left above the piston.",
        parameters: &[c"bore_mm", c"stroke_mm", c"head_cm3", c"gasket_bore_mm", c"gasket_mm", c"deck_clearance_mm", c"crown_cm3", c"crevice_cm3"],
    },
    Texts {
        name: c"piston_travel_mm",
        meaning: c"Travel of the piston in mm from top dead centre down, at a crank angle from -720 deg to 720 deg.\n\nThe angle is 0 with the throw in line with the cylinder; an offset of the pin toward the major thrust side is positive. Source: slider-crank\nwith an offset pin.",
        parameters: &[c"crank_radius_mm", c"rod_mm", c"pin_offset_mm", c"crank_angle_deg"],
    },
    Texts {
        name: c"finish_size_mm",
        meaning: c"Size in mm, at 20 C, to which the bore for a piston is finished: piston + clearance wanted on the bench.",
        parameters: &[c"piston_mm", c"clearance_mm"],
    },
    Texts {
        name: c"boring_size_mm",
        meaning: c"Size in mm, at 20 C, to which the bore for a piston is bored: piston + clearance wanted on the bench - what is left for the hone.",
        parameters: &[c"piston_mm", c"clearance_mm", c"honing_mm"],
    },
    Texts {
        name: c"bore_size_at_20_mm",
        meaning: c"Size of a bore at 20 C, in mm, from the deviation that a bore gauge set on a ring shows, positive when the bore is larger.\n\n(setting (1 + a_ring (t_ring - 20)) (1 + a_used (t_used - 20)) / (1 + a_set (t_set - 20)) + deviation) / (1 + a_block (t_block - 20)): the\ngauge when it was set, and when it is used. Temperatures from -5 C to 60 C. Source: ISO 1:2022 and the definition of strain.",
        parameters: &[c"deviation_mm", c"setting_mm", c"ring_temperature_c", c"ring_expansion_per_k", c"set_temperature_c", c"set_expansion_per_k", c"used_temperature_c", c"used_expansion_per_k", c"block_temperature_c", c"block_expansion_per_k"],
    },
    Texts {
        name: c"size_at_temperature_mm",
        meaning: c"Size in mm of a freely growing part at a temperature, from its size at 20 C: size (1 + a (t - 20)).\n\nTemperatures from -40 C to 450 C. Source: definition of strain.",
        parameters: &[c"size_mm", c"temperature_c", c"expansion_per_k"],
    },
    Texts {
        name: c"probability_of_conformity",
        meaning: c"Probability that the true value lies within two limits, for a value with a normal error of a standard uncertainty.\n\nA value without uncertainty gives 1 or 0. Source: JCGM 106:2012, 7.2.2.",
        parameters: &[c"value_mm", c"standard_uncertainty_mm", c"lower_mm", c"upper_mm"],
    },
    Texts {
        name: c"coverage_factor",
        meaning: c"Coverage factor of Student's t for a coverage probability between 0 and 1. JCGM 100:2008, G.3.2.\n\n`dof` from 0.5; INFINITY gives that of the normal.",
        parameters: &[c"probability", c"dof"],
    },
];

/// Size at 20 C from the reading of a micrometer or caliper, in mm.
///
/// (reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20)). Temperatures from -5 C to 60 C, mean
/// coefficients from 20 C between 1e-7 and 1e-4 per kelvin. Source: ISO 1:2022 and the definition of strain.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_size_at_20_mm(reading_mm: f64, zero_error_mm: f64, gauge_temperature_c: f64, gauge_expansion_per_k: f64, part_temperature_c: f64, part_expansion_per_k: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::size_at_20_mm(reading_mm, zero_error_mm, gauge_temperature_c, gauge_expansion_per_k, part_temperature_c, part_expansion_per_k)) }
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
    unsafe { number(error, out, || flat::bench_clearance_mm(bore_mm, piston_mm)) }
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
    unsafe { number(error, out, || flat::running_clearance_mm(bore_mm, bore_temperature_c, bore_expansion_per_k, piston_mm, piston_temperature_c, piston_expansion_per_k)) }
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
    unsafe { number(error, out, || flat::ring_gap_in_bore_mm(gap_mm, gauge_mm, bore_mm)) }
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
    unsafe { number(error, out, || flat::ring_least_cold_gap_mm(least_hot_gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k)) }
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
    unsafe { number(error, out, || flat::ring_side_clearance_mm(groove_width_mm, ring_width_mm)) }
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
    unsafe { number(error, out, || flat::ring_back_clearance_mm(bore_mm, groove_root_mm, ring_thickness_mm)) }
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
    unsafe { number(error, out, || flat::ring_groove_wear_mm(groove_width_mm, new_groove_width_mm)) }
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
    unsafe { number(error, out, || flat::keystone_groove_width_mm(over_pins_mm, pin_mm, included_angle_deg, at_diameter_mm)) }
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
    unsafe { number(error, out, || flat::ring_gap_by_factor_mm(bore_mm, per_mille)) }
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
    unsafe { number(error, out, || flat::rod_angle_mrad(deviation_mm, base_mm)) }
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
    unsafe { number(error, out, || flat::rod_skew_mm(angle_mrad, length_mm)) }
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
    unsafe { number(error, out, || flat::top_land_crevice_cm3(bore_mm, land_mm, land_height_mm)) }
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
    unsafe { number(error, out, || flat::depth_in_bore_mm(deck_clearance_mm, crown_height_mm, height_mm, travel_mm)) }
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

/// Length in mm from inches, -400 in to 400 in.
///
/// A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 2.4126 in is 61.28004 mm. Source:
/// NIST SP 811 (2008), appendix B.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_inch_to_mm(length_inch: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::inch_to_mm(length_inch)) }
}

/// gaugepoint_inch_to_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_inch_to_mm_v(length_inch: f64) -> f64 {
    plain(f64::NAN, || flat::inch_to_mm(length_inch).unwrap_or(f64::NAN))
}

/// gaugepoint_inch_to_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_inch_to_mm_array(length_inch: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::inch_to_mm, [length_inch], count, out, row_status)) }
}

/// Length in inches from mm, -10160 mm to 10160 mm.
///
/// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_mm_to_inch(length_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::mm_to_inch(length_mm)) }
}

/// gaugepoint_mm_to_inch as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_mm_to_inch_v(length_mm: f64) -> f64 {
    plain(f64::NAN, || flat::mm_to_inch(length_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_mm_to_inch of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_mm_to_inch_array(length_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::mm_to_inch, [length_mm], count, out, row_status)) }
}

/// Length in mm from thousandths of an inch, -400000 thou to 400000 thou.
///
/// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_thou_to_mm(length_thou: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::thou_to_mm(length_thou)) }
}

/// gaugepoint_thou_to_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_thou_to_mm_v(length_thou: f64) -> f64 {
    plain(f64::NAN, || flat::thou_to_mm(length_thou).unwrap_or(f64::NAN))
}

/// gaugepoint_thou_to_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_thou_to_mm_array(length_thou: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::thou_to_mm, [length_thou], count, out, row_status)) }
}

/// Temperature in degrees Celsius from degrees Fahrenheit, -454 F to 2192 F; a difference of temperatures is another thing.
///
/// A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 80.6 F is 27 C. Source:
/// NIST SP 811 (2008), appendix B.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_fahrenheit_to_c(temperature_fahrenheit: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::fahrenheit_to_c(temperature_fahrenheit)) }
}

/// gaugepoint_fahrenheit_to_c as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_fahrenheit_to_c_v(temperature_fahrenheit: f64) -> f64 {
    plain(f64::NAN, || flat::fahrenheit_to_c(temperature_fahrenheit).unwrap_or(f64::NAN))
}

/// gaugepoint_fahrenheit_to_c of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_fahrenheit_to_c_array(temperature_fahrenheit: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::fahrenheit_to_c, [temperature_fahrenheit], count, out, row_status)) }
}

/// Temperature in degrees Fahrenheit from degrees Celsius, -270 C to 1200 C; a difference of temperatures is another thing.
///
/// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_c_to_fahrenheit(temperature_c: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::c_to_fahrenheit(temperature_c)) }
}

/// gaugepoint_c_to_fahrenheit as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_c_to_fahrenheit_v(temperature_c: f64) -> f64 {
    plain(f64::NAN, || flat::c_to_fahrenheit(temperature_c).unwrap_or(f64::NAN))
}

/// gaugepoint_c_to_fahrenheit of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_c_to_fahrenheit_array(temperature_c: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::c_to_fahrenheit, [temperature_c], count, out, row_status)) }
}

/// Coefficient of expansion per kelvin from one per degree Fahrenheit, 1e-7 to 5e-5 per degree Fahrenheit: 1.8 times as much.
///
/// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_per_fahrenheit_to_per_k(expansion_per_fahrenheit: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::per_fahrenheit_to_per_k(expansion_per_fahrenheit)) }
}

/// gaugepoint_per_fahrenheit_to_per_k as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_per_fahrenheit_to_per_k_v(expansion_per_fahrenheit: f64) -> f64 {
    plain(f64::NAN, || flat::per_fahrenheit_to_per_k(expansion_per_fahrenheit).unwrap_or(f64::NAN))
}

/// gaugepoint_per_fahrenheit_to_per_k of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_per_fahrenheit_to_per_k_array(expansion_per_fahrenheit: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::per_fahrenheit_to_per_k, [expansion_per_fahrenheit], count, out, row_status)) }
}

/// End gap in mm with bore and ring at their temperatures, -40 C to 450 C, from the gap at 20 C; below zero the ends butt.
///
/// gap (1 + a_ring (t_ring - 20)) + pi bore (a_bore (t_bore - 20) - a_ring (t_ring - 20)). Source: hot circumference of the bore less
/// the hot length of the ring.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_hot_gap_mm(gap_mm: f64, bore_mm: f64, bore_temperature_c: f64, bore_expansion_per_k: f64, ring_temperature_c: f64, ring_expansion_per_k: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::ring_hot_gap_mm(gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k)) }
}

/// gaugepoint_ring_hot_gap_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_ring_hot_gap_mm_v(gap_mm: f64, bore_mm: f64, bore_temperature_c: f64, bore_expansion_per_k: f64, ring_temperature_c: f64, ring_expansion_per_k: f64) -> f64 {
    plain(f64::NAN, || flat::ring_hot_gap_mm(gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k).unwrap_or(f64::NAN))
}

/// gaugepoint_ring_hot_gap_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_ring_hot_gap_mm_array(gap_mm: *const f64, bore_mm: *const f64, bore_temperature_c: *const f64, bore_expansion_per_k: *const f64, ring_temperature_c: *const f64, ring_expansion_per_k: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::ring_hot_gap_mm, [gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k], count, out, row_status)) }
}

/// Clearance of a pin in a boss or in a bush at 20 C, in mm, over the diameter: hole - pin; negative is interference.
///
/// Refused when it is not between -0.15 mm and 0.2 mm: another pin.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_pin_cold_clearance_mm(hole_mm: f64, pin_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::pin_cold_clearance_mm(hole_mm, pin_mm)) }
}

/// gaugepoint_pin_cold_clearance_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_pin_cold_clearance_mm_v(hole_mm: f64, pin_mm: f64) -> f64 {
    plain(f64::NAN, || flat::pin_cold_clearance_mm(hole_mm, pin_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_pin_cold_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_pin_cold_clearance_mm_array(hole_mm: *const f64, pin_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::pin_cold_clearance_mm, [hole_mm, pin_mm], count, out, row_status)) }
}

/// Clearance in mm of a freely growing pin in a boss or in a bush, over the diameter, from sizes at 20 C.
///
/// hole (1 + a_hole (t_hole - 20)) - pin (1 + a_pin (t_pin - 20)). Temperatures from -40 C to 450 C. A pressed bush grows by the
/// coefficient of what holds it. Source: definition of strain.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_pin_hot_clearance_mm(hole_mm: f64, hole_temperature_c: f64, hole_expansion_per_k: f64, pin_mm: f64, pin_temperature_c: f64, pin_expansion_per_k: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::pin_hot_clearance_mm(hole_mm, hole_temperature_c, hole_expansion_per_k, pin_mm, pin_temperature_c, pin_expansion_per_k)) }
}

/// gaugepoint_pin_hot_clearance_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_pin_hot_clearance_mm_v(hole_mm: f64, hole_temperature_c: f64, hole_expansion_per_k: f64, pin_mm: f64, pin_temperature_c: f64, pin_expansion_per_k: f64) -> f64 {
    plain(f64::NAN, || flat::pin_hot_clearance_mm(hole_mm, hole_temperature_c, hole_expansion_per_k, pin_mm, pin_temperature_c, pin_expansion_per_k).unwrap_or(f64::NAN))
}

/// gaugepoint_pin_hot_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_pin_hot_clearance_mm_array(hole_mm: *const f64, hole_temperature_c: *const f64, hole_expansion_per_k: *const f64, pin_mm: *const f64, pin_temperature_c: *const f64, pin_expansion_per_k: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::pin_hot_clearance_mm, [hole_mm, hole_temperature_c, hole_expansion_per_k, pin_mm, pin_temperature_c, pin_expansion_per_k], count, out, row_status)) }
}

/// Pressure in MPa in the joint of a pin pressed into an eye; 0 when the smoothing takes all of the interference.
///
/// Sizes are diameters at 20 C; a hole of 0 is a solid pin. Source: Lame, thick elastic tubes with free ends.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_press_fit_pressure_mpa(pin_mm: f64, pin_hole_mm: f64, eye_mm: f64, interference_mm: f64, smoothing_mm: f64, pin_modulus_mpa: f64, pin_poisson: f64, eye_modulus_mpa: f64, eye_poisson: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::press_fit_pressure_mpa(pin_mm, pin_hole_mm, eye_mm, interference_mm, smoothing_mm, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)) }
}

/// gaugepoint_press_fit_pressure_mpa as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_press_fit_pressure_mpa_v(pin_mm: f64, pin_hole_mm: f64, eye_mm: f64, interference_mm: f64, smoothing_mm: f64, pin_modulus_mpa: f64, pin_poisson: f64, eye_modulus_mpa: f64, eye_poisson: f64) -> f64 {
    plain(f64::NAN, || flat::press_fit_pressure_mpa(pin_mm, pin_hole_mm, eye_mm, interference_mm, smoothing_mm, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson).unwrap_or(f64::NAN))
}

/// gaugepoint_press_fit_pressure_mpa of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_press_fit_pressure_mpa_array(pin_mm: *const f64, pin_hole_mm: *const f64, eye_mm: *const f64, interference_mm: *const f64, smoothing_mm: *const f64, pin_modulus_mpa: *const f64, pin_poisson: *const f64, eye_modulus_mpa: *const f64, eye_poisson: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::press_fit_pressure_mpa, [pin_mm, pin_hole_mm, eye_mm, interference_mm, smoothing_mm, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson], count, out, row_status)) }
}

/// Axial force in N at which a pin pressed into an eye slips: pi pin width pressure friction.
///
/// The pressure is that of press_fit_pressure_mpa. Source: Coulomb friction over the joint.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_press_fit_force_n(pin_mm: f64, pin_hole_mm: f64, eye_mm: f64, width_mm: f64, interference_mm: f64, smoothing_mm: f64, friction: f64, pin_modulus_mpa: f64, pin_poisson: f64, eye_modulus_mpa: f64, eye_poisson: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::press_fit_force_n(pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)) }
}

/// gaugepoint_press_fit_force_n as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_press_fit_force_n_v(pin_mm: f64, pin_hole_mm: f64, eye_mm: f64, width_mm: f64, interference_mm: f64, smoothing_mm: f64, friction: f64, pin_modulus_mpa: f64, pin_poisson: f64, eye_modulus_mpa: f64, eye_poisson: f64) -> f64 {
    plain(f64::NAN, || flat::press_fit_force_n(pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson).unwrap_or(f64::NAN))
}

/// gaugepoint_press_fit_force_n of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_press_fit_force_n_array(pin_mm: *const f64, pin_hole_mm: *const f64, eye_mm: *const f64, width_mm: *const f64, interference_mm: *const f64, smoothing_mm: *const f64, friction: *const f64, pin_modulus_mpa: *const f64, pin_poisson: *const f64, eye_modulus_mpa: *const f64, eye_poisson: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::press_fit_force_n, [pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson], count, out, row_status)) }
}

/// Torque in N m at which a pin pressed into an eye slips: force pin / 2.
///
/// The force is that of press_fit_force_n. Source: Coulomb friction at the radius of the joint.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_press_fit_torque_nm(pin_mm: f64, pin_hole_mm: f64, eye_mm: f64, width_mm: f64, interference_mm: f64, smoothing_mm: f64, friction: f64, pin_modulus_mpa: f64, pin_poisson: f64, eye_modulus_mpa: f64, eye_poisson: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::press_fit_torque_nm(pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)) }
}

/// gaugepoint_press_fit_torque_nm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_press_fit_torque_nm_v(pin_mm: f64, pin_hole_mm: f64, eye_mm: f64, width_mm: f64, interference_mm: f64, smoothing_mm: f64, friction: f64, pin_modulus_mpa: f64, pin_poisson: f64, eye_modulus_mpa: f64, eye_poisson: f64) -> f64 {
    plain(f64::NAN, || flat::press_fit_torque_nm(pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson).unwrap_or(f64::NAN))
}

/// gaugepoint_press_fit_torque_nm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_press_fit_torque_nm_array(pin_mm: *const f64, pin_hole_mm: *const f64, eye_mm: *const f64, width_mm: *const f64, interference_mm: *const f64, smoothing_mm: *const f64, friction: *const f64, pin_modulus_mpa: *const f64, pin_poisson: *const f64, eye_modulus_mpa: *const f64, eye_poisson: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::press_fit_torque_nm, [pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson], count, out, row_status)) }
}

/// Temperature in degrees Celsius to which the outer part is heated, the pin at 20 C, so that its hole opens by the interference and a
/// clearance: 20 + (interference + clearance) / (a diameter).
///
/// Clean steel colours from 249 C: too much heat. Source: free growth.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_assembly_temperature_c(diameter_mm: f64, interference_mm: f64, clearance_mm: f64, expansion_per_k: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::assembly_temperature_c(diameter_mm, interference_mm, clearance_mm, expansion_per_k)) }
}

/// gaugepoint_assembly_temperature_c as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_assembly_temperature_c_v(diameter_mm: f64, interference_mm: f64, clearance_mm: f64, expansion_per_k: f64) -> f64 {
    plain(f64::NAN, || flat::assembly_temperature_c(diameter_mm, interference_mm, clearance_mm, expansion_per_k).unwrap_or(f64::NAN))
}

/// gaugepoint_assembly_temperature_c of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_assembly_temperature_c_array(diameter_mm: *const f64, interference_mm: *const f64, clearance_mm: *const f64, expansion_per_k: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::assembly_temperature_c, [diameter_mm, interference_mm, clearance_mm, expansion_per_k], count, out, row_status)) }
}

/// From the deck down to the crown at top dead centre, in mm: block - (stroke / 2 + rod + compression height); negative when the crown
/// stands above the deck.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_piston_deck_clearance_mm(block_height_mm: f64, stroke_mm: f64, rod_mm: f64, compression_height_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::piston_deck_clearance_mm(block_height_mm, stroke_mm, rod_mm, compression_height_mm)) }
}

/// gaugepoint_piston_deck_clearance_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_piston_deck_clearance_mm_v(block_height_mm: f64, stroke_mm: f64, rod_mm: f64, compression_height_mm: f64) -> f64 {
    plain(f64::NAN, || flat::piston_deck_clearance_mm(block_height_mm, stroke_mm, rod_mm, compression_height_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_piston_deck_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_piston_deck_clearance_mm_array(block_height_mm: *const f64, stroke_mm: *const f64, rod_mm: *const f64, compression_height_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::piston_deck_clearance_mm, [block_height_mm, stroke_mm, rod_mm, compression_height_mm], count, out, row_status)) }
}

/// Swept volume in cm3 of one cylinder: pi bore^2 stroke / 4.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_swept_volume_cm3(bore_mm: f64, stroke_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::swept_volume_cm3(bore_mm, stroke_mm)) }
}

/// gaugepoint_swept_volume_cm3 as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_swept_volume_cm3_v(bore_mm: f64, stroke_mm: f64) -> f64 {
    plain(f64::NAN, || flat::swept_volume_cm3(bore_mm, stroke_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_swept_volume_cm3 of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_swept_volume_cm3_array(bore_mm: *const f64, stroke_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::swept_volume_cm3, [bore_mm, stroke_mm], count, out, row_status)) }
}

/// Compression ratio, a pure number: (swept + clearance volume) / clearance volume.
///
/// A dome of the crown is a negative volume, a protrusion a negative deck clearance; 0 leaves the crevice at the top land out, as is usual.
/// Refused when nothing is left above the piston.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_static_compression_ratio(bore_mm: f64, stroke_mm: f64, head_cm3: f64, gasket_bore_mm: f64, gasket_mm: f64, deck_clearance_mm: f64, crown_cm3: f64, crevice_cm3: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::static_compression_ratio(bore_mm, stroke_mm, head_cm3, gasket_bore_mm, gasket_mm, deck_clearance_mm, crown_cm3, crevice_cm3)) }
}

/// gaugepoint_static_compression_ratio as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_static_compression_ratio_v(bore_mm: f64, stroke_mm: f64, head_cm3: f64, gasket_bore_mm: f64, gasket_mm: f64, deck_clearance_mm: f64, crown_cm3: f64, crevice_cm3: f64) -> f64 {
    plain(f64::NAN, || flat::static_compression_ratio(bore_mm, stroke_mm, head_cm3, gasket_bore_mm, gasket_mm, deck_clearance_mm, crown_cm3, crevice_cm3).unwrap_or(f64::NAN))
}

/// gaugepoint_static_compression_ratio of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_static_compression_ratio_array(bore_mm: *const f64, stroke_mm: *const f64, head_cm3: *const f64, gasket_bore_mm: *const f64, gasket_mm: *const f64, deck_clearance_mm: *const f64, crown_cm3: *const f64, crevice_cm3: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::static_compression_ratio, [bore_mm, stroke_mm, head_cm3, gasket_bore_mm, gasket_mm, deck_clearance_mm, crown_cm3, crevice_cm3], count, out, row_status)) }
}

/// Travel of the piston in mm from top dead centre down, at a crank angle from -720 deg to 720 deg.
///
/// The angle is 0 with the throw in line with the cylinder; an offset of the pin toward the major thrust side is positive. Source: slider-crank
/// with an offset pin.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_piston_travel_mm(crank_radius_mm: f64, rod_mm: f64, pin_offset_mm: f64, crank_angle_deg: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::piston_travel_mm(crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg)) }
}

/// gaugepoint_piston_travel_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_piston_travel_mm_v(crank_radius_mm: f64, rod_mm: f64, pin_offset_mm: f64, crank_angle_deg: f64) -> f64 {
    plain(f64::NAN, || flat::piston_travel_mm(crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg).unwrap_or(f64::NAN))
}

/// gaugepoint_piston_travel_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_piston_travel_mm_array(crank_radius_mm: *const f64, rod_mm: *const f64, pin_offset_mm: *const f64, crank_angle_deg: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::piston_travel_mm, [crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg], count, out, row_status)) }
}

/// Size in mm, at 20 C, to which the bore for a piston is finished: piston + clearance wanted on the bench.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_finish_size_mm(piston_mm: f64, clearance_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::finish_size_mm(piston_mm, clearance_mm)) }
}

/// gaugepoint_finish_size_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_finish_size_mm_v(piston_mm: f64, clearance_mm: f64) -> f64 {
    plain(f64::NAN, || flat::finish_size_mm(piston_mm, clearance_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_finish_size_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_finish_size_mm_array(piston_mm: *const f64, clearance_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::finish_size_mm, [piston_mm, clearance_mm], count, out, row_status)) }
}

/// Size in mm, at 20 C, to which the bore for a piston is bored: piston + clearance wanted on the bench - what is left for the hone.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_boring_size_mm(piston_mm: f64, clearance_mm: f64, honing_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::boring_size_mm(piston_mm, clearance_mm, honing_mm)) }
}

/// gaugepoint_boring_size_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_boring_size_mm_v(piston_mm: f64, clearance_mm: f64, honing_mm: f64) -> f64 {
    plain(f64::NAN, || flat::boring_size_mm(piston_mm, clearance_mm, honing_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_boring_size_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_boring_size_mm_array(piston_mm: *const f64, clearance_mm: *const f64, honing_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::boring_size_mm, [piston_mm, clearance_mm, honing_mm], count, out, row_status)) }
}

/// Size of a bore at 20 C, in mm, from the deviation that a bore gauge set on a ring shows, positive when the bore is larger.
///
/// (setting (1 + a_ring (t_ring - 20)) (1 + a_used (t_used - 20)) / (1 + a_set (t_set - 20)) + deviation) / (1 + a_block (t_block - 20)): the
/// gauge when it was set, and when it is used. Temperatures from -5 C to 60 C. Source: ISO 1:2022 and the definition of strain.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_bore_size_at_20_mm(deviation_mm: f64, setting_mm: f64, ring_temperature_c: f64, ring_expansion_per_k: f64, set_temperature_c: f64, set_expansion_per_k: f64, used_temperature_c: f64, used_expansion_per_k: f64, block_temperature_c: f64, block_expansion_per_k: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::bore_size_at_20_mm(deviation_mm, setting_mm, ring_temperature_c, ring_expansion_per_k, set_temperature_c, set_expansion_per_k, used_temperature_c, used_expansion_per_k, block_temperature_c, block_expansion_per_k)) }
}

/// gaugepoint_bore_size_at_20_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_bore_size_at_20_mm_v(deviation_mm: f64, setting_mm: f64, ring_temperature_c: f64, ring_expansion_per_k: f64, set_temperature_c: f64, set_expansion_per_k: f64, used_temperature_c: f64, used_expansion_per_k: f64, block_temperature_c: f64, block_expansion_per_k: f64) -> f64 {
    plain(f64::NAN, || flat::bore_size_at_20_mm(deviation_mm, setting_mm, ring_temperature_c, ring_expansion_per_k, set_temperature_c, set_expansion_per_k, used_temperature_c, used_expansion_per_k, block_temperature_c, block_expansion_per_k).unwrap_or(f64::NAN))
}

/// gaugepoint_bore_size_at_20_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_bore_size_at_20_mm_array(deviation_mm: *const f64, setting_mm: *const f64, ring_temperature_c: *const f64, ring_expansion_per_k: *const f64, set_temperature_c: *const f64, set_expansion_per_k: *const f64, used_temperature_c: *const f64, used_expansion_per_k: *const f64, block_temperature_c: *const f64, block_expansion_per_k: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::bore_size_at_20_mm, [deviation_mm, setting_mm, ring_temperature_c, ring_expansion_per_k, set_temperature_c, set_expansion_per_k, used_temperature_c, used_expansion_per_k, block_temperature_c, block_expansion_per_k], count, out, row_status)) }
}

/// Size in mm of a freely growing part at a temperature, from its size at 20 C: size (1 + a (t - 20)).
///
/// Temperatures from -40 C to 450 C. Source: definition of strain.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_size_at_temperature_mm(size_mm: f64, temperature_c: f64, expansion_per_k: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::size_at_temperature_mm(size_mm, temperature_c, expansion_per_k)) }
}

/// gaugepoint_size_at_temperature_mm as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_size_at_temperature_mm_v(size_mm: f64, temperature_c: f64, expansion_per_k: f64) -> f64 {
    plain(f64::NAN, || flat::size_at_temperature_mm(size_mm, temperature_c, expansion_per_k).unwrap_or(f64::NAN))
}

/// gaugepoint_size_at_temperature_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_size_at_temperature_mm_array(size_mm: *const f64, temperature_c: *const f64, expansion_per_k: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::size_at_temperature_mm, [size_mm, temperature_c, expansion_per_k], count, out, row_status)) }
}

/// Probability that the true value lies within two limits, for a value with a normal error of a standard uncertainty.
///
/// A value without uncertainty gives 1 or 0. Source: JCGM 106:2012, 7.2.2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_probability_of_conformity(value_mm: f64, standard_uncertainty_mm: f64, lower_mm: f64, upper_mm: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::probability_of_conformity(value_mm, standard_uncertainty_mm, lower_mm, upper_mm)) }
}

/// gaugepoint_probability_of_conformity as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_probability_of_conformity_v(value_mm: f64, standard_uncertainty_mm: f64, lower_mm: f64, upper_mm: f64) -> f64 {
    plain(f64::NAN, || flat::probability_of_conformity(value_mm, standard_uncertainty_mm, lower_mm, upper_mm).unwrap_or(f64::NAN))
}

/// gaugepoint_probability_of_conformity of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_probability_of_conformity_array(value_mm: *const f64, standard_uncertainty_mm: *const f64, lower_mm: *const f64, upper_mm: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::probability_of_conformity, [value_mm, standard_uncertainty_mm, lower_mm, upper_mm], count, out, row_status)) }
}

/// Coverage factor of Student's t for a coverage probability between 0 and 1. JCGM 100:2008, G.3.2.
///
/// `dof` from 0.5; INFINITY gives that of the normal.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_coverage_factor(probability: f64, dof: f64, out: *mut f64, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { number(error, out, || flat::coverage_factor(probability, dof)) }
}

/// gaugepoint_coverage_factor as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern "C" fn gaugepoint_coverage_factor_v(probability: f64, dof: f64) -> f64 {
    plain(f64::NAN, || flat::coverage_factor(probability, dof).unwrap_or(f64::NAN))
}

/// gaugepoint_coverage_factor of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_coverage_factor_array(probability: *const f64, dof: *const f64, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {
    // SAFETY: the contract of the header
    unsafe { status(error, (), || each(&row::coverage_factor, [probability, dof], count, out, row_status)) }
}
