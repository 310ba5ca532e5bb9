//! No flat function needs memory, in any of its shapes; only the text of a refusal does.

#![expect(unsafe_code, reason = "an allocator that counts, and calls of the C ABI")]

use core::cell::Cell;
use core::ptr::null_mut;
use gaugepoint::flat::{Column, TABLE};
use gaugepoint_c::flat::{
    gaugepoint_bench_clearance_mm, gaugepoint_bench_clearance_mm_array, gaugepoint_bench_clearance_mm_v,
};
use std::alloc::{GlobalAlloc, Layout, System};

thread_local! {
    static ALLOCATIONS: Cell<usize> = const { Cell::new(0) };
}

struct Counting;

// SAFETY: the system's, counted
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        ALLOCATIONS.with(|count| count.set(count.get() + 1));
        // SAFETY: the caller's promise
        unsafe { System.alloc(layout) }
    }

    unsafe fn dealloc(&self, place: *mut u8, layout: Layout) {
        // SAFETY: the caller's promise
        unsafe { System.dealloc(place, layout) }
    }
}

#[global_allocator]
static COUNTING: Counting = Counting;

fn allocations(of: impl FnOnce()) -> usize {
    let before = ALLOCATIONS.with(Cell::get);
    of();
    ALLOCATIONS.with(Cell::get) - before
}

/// Arguments that the function of this name accepts.
fn accepted(name: &str) -> &'static [f64] {
    match name {
        "size_at_20_mm" => &[86.0, 0.0, 20.0, 11.5e-6, 30.0, 21e-6],
        "bench_clearance_mm" => &[86.1, 86.0],
        "running_clearance_mm" => &[86.1, 110.0, 11.4e-6, 86.0, 120.0, 20.5e-6],
        "ring_gap_in_bore_mm" => &[0.3, 86.0, 86.1],
        "ring_least_cold_gap_mm" => &[0.1, 100.0, 160.0, 11.4e-6, 200.0, 11.4e-6],
        "ring_side_clearance_mm" => &[1.55, 1.5],
        "ring_back_clearance_mm" => &[86.0, 78.0, 3.5],
        "ring_groove_wear_mm" => &[1.6, 1.55],
        "keystone_groove_width_mm" => &[130.0, 3.5, 15.0, 125.0],
        "ring_gap_by_factor_mm" => &[86.0, 4.0],
        "rod_angle_mrad" => &[0.05, 100.0],
        "rod_skew_mm" => &[0.5, 60.0],
        "top_land_crevice_cm3" => &[86.0, 85.4, 7.0],
        "depth_in_bore_mm" => &[0.1, 60.0, 10.0, 20.0],
        "inch_to_mm" => &[2.4126],
        "mm_to_inch" => &[61.28004],
        "thou_to_mm" => &[1.7],
        "fahrenheit_to_c" => &[80.6],
        "c_to_fahrenheit" => &[22.7],
        "per_fahrenheit_to_per_k" => &[6.4e-6],
        "ring_hot_gap_mm" => &[0.4, 100.0, 160.0, 11.4e-6, 200.0, 11.4e-6],
        "pin_cold_clearance_mm" => &[22.01, 22.0],
        "pin_hot_clearance_mm" => &[22.0, 80.0, 20.5e-6, 22.0, 20.0, 11.7e-6],
        "press_fit_pressure_mpa" => &[22.0, 12.0, 30.0, 0.03, 0.005, 205e3, 0.29, 205e3, 0.29],
        "press_fit_force_n" | "press_fit_torque_nm" => {
            &[22.0, 12.0, 30.0, 24.0, 0.03, 0.005, 0.12, 205e3, 0.29, 205e3, 0.29]
        }
        "assembly_temperature_c" => &[22.0, 0.03, 0.02, 11.7e-6],
        "piston_deck_clearance_mm" => &[217.0, 86.0, 143.0, 31.0],
        "swept_volume_cm3" => &[86.0, 86.0],
        "static_compression_ratio" => &[86.0, 86.0, 50.0, 88.0, 1.0, 0.0, 0.0, 0.0],
        "piston_travel_mm" => &[43.0, 143.0, 1.0, 30.0],
        "finish_size_mm" => &[85.96, 0.03],
        "boring_size_mm" => &[85.96, 0.03, 0.02],
        "bore_size_at_20_mm" => &[0.01, 86.0, 22.0, 1.15e-5, 22.0, 1.15e-5, 22.0, 1.15e-5, 32.0, 1.1e-5],
        "size_at_temperature_mm" => &[86.0, 120.0, 20e-6],
        "probability_of_conformity" => &[86.01, 0.005, 86.0, 86.02],
        "coverage_factor" => &[0.95, 20.0],
        _ => &[],
    }
}

#[test]
fn nothing_is_allocated() {
    assert_eq!(allocations(|| drop(std::hint::black_box(Box::new(1)))), 1, "the allocator counts");
    let mut values = [0.0; 3];
    for function in TABLE {
        let x = accepted(function.name);
        let mut columns = [Column { values: &[], stride: 0 }; 11];
        for (column, x) in columns.iter_mut().zip(x) {
            column.values = core::slice::from_ref(x);
        }
        let columns = columns.get(..x.len()).unwrap_or_default();
        assert_eq!(
            allocations(|| assert!(function.call(x).is_ok(), "{}", function.name)),
            0,
            "{}",
            function.name
        );
        let count = allocations(|| assert!(function.each(columns, &mut values, None).is_ok()));
        assert_eq!(count, 0, "{}", function.name);
        let mut status = [0; 3];
        let count = allocations(|| assert!(function.each(columns, &mut values, Some(&mut status)).is_ok()));
        assert_eq!(count, 0, "{}", function.name);
    }
}

#[test]
fn nothing_is_allocated_for_c() {
    let (bores, pistons, mut out, mut statuses) = ([86.1; 300], [86.0; 300], [0.0; 300], [0; 300]);
    let one = || {
        // SAFETY: a double, and no error
        let status = unsafe { gaugepoint_bench_clearance_mm(86.1, 86.0, out.as_mut_ptr(), null_mut()) };
        assert_eq!(status, 0);
        assert!(!gaugepoint_bench_clearance_mm_v(86.1, 86.0).is_nan());
    };
    assert_eq!(allocations(one), 0);
    let mut places = bores;
    for statuses in [null_mut(), statuses.as_mut_ptr()] {
        // beside the columns, and in the place of one
        for (first, place) in [(bores.as_ptr(), out.as_mut_ptr()), (places.as_ptr(), places.as_mut_ptr())] {
            let many = || {
                // SAFETY: arrays of 300
                let status = unsafe {
                    gaugepoint_bench_clearance_mm_array(
                        first,
                        pistons.as_ptr(),
                        300,
                        place,
                        statuses,
                        null_mut(),
                    )
                };
                assert_eq!(status, 0);
            };
            assert_eq!(allocations(many), 0);
        }
        places = bores;
    }
}
