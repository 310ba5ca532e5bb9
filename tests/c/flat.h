/* Every flat function in its three shapes, by name. Generated from the table of the core; the test that compares it also writes it. */
#ifndef FLAT_H
#define FLAT_H

#include <gaugepoint.h>

typedef struct {
  const char *name;
  int parameters;
  int32_t (*call)(const double *x, double *out, GaugepointError *error);
  double (*value)(const double *x);
  int32_t (*array)(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error);
} Flat;

static int32_t call_size_at_20_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_size_at_20_mm(x[0], x[1], x[2], x[3], x[4], x[5], out, error);
}

static double value_size_at_20_mm(const double *x) { return gaugepoint_size_at_20_mm_v(x[0], x[1], x[2], x[3], x[4], x[5]); }

static int32_t array_size_at_20_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_size_at_20_mm_array(x[0], x[1], x[2], x[3], x[4], x[5], count, out, row_status, error);
}

static int32_t call_bench_clearance_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_bench_clearance_mm(x[0], x[1], out, error);
}

static double value_bench_clearance_mm(const double *x) { return gaugepoint_bench_clearance_mm_v(x[0], x[1]); }

static int32_t array_bench_clearance_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_bench_clearance_mm_array(x[0], x[1], count, out, row_status, error);
}

static int32_t call_running_clearance_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_running_clearance_mm(x[0], x[1], x[2], x[3], x[4], x[5], out, error);
}

static double value_running_clearance_mm(const double *x) { return gaugepoint_running_clearance_mm_v(x[0], x[1], x[2], x[3], x[4], x[5]); }

static int32_t array_running_clearance_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_running_clearance_mm_array(x[0], x[1], x[2], x[3], x[4], x[5], count, out, row_status, error);
}

static int32_t call_ring_gap_in_bore_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_ring_gap_in_bore_mm(x[0], x[1], x[2], out, error);
}

static double value_ring_gap_in_bore_mm(const double *x) { return gaugepoint_ring_gap_in_bore_mm_v(x[0], x[1], x[2]); }

static int32_t array_ring_gap_in_bore_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_ring_gap_in_bore_mm_array(x[0], x[1], x[2], count, out, row_status, error);
}

static int32_t call_ring_least_cold_gap_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_ring_least_cold_gap_mm(x[0], x[1], x[2], x[3], x[4], x[5], out, error);
}

static double value_ring_least_cold_gap_mm(const double *x) { return gaugepoint_ring_least_cold_gap_mm_v(x[0], x[1], x[2], x[3], x[4], x[5]); }

static int32_t array_ring_least_cold_gap_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_ring_least_cold_gap_mm_array(x[0], x[1], x[2], x[3], x[4], x[5], count, out, row_status, error);
}

static int32_t call_ring_side_clearance_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_ring_side_clearance_mm(x[0], x[1], out, error);
}

static double value_ring_side_clearance_mm(const double *x) { return gaugepoint_ring_side_clearance_mm_v(x[0], x[1]); }

static int32_t array_ring_side_clearance_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_ring_side_clearance_mm_array(x[0], x[1], count, out, row_status, error);
}

static int32_t call_ring_back_clearance_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_ring_back_clearance_mm(x[0], x[1], x[2], out, error);
}

static double value_ring_back_clearance_mm(const double *x) { return gaugepoint_ring_back_clearance_mm_v(x[0], x[1], x[2]); }

static int32_t array_ring_back_clearance_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_ring_back_clearance_mm_array(x[0], x[1], x[2], count, out, row_status, error);
}

static int32_t call_ring_groove_wear_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_ring_groove_wear_mm(x[0], x[1], out, error);
}

static double value_ring_groove_wear_mm(const double *x) { return gaugepoint_ring_groove_wear_mm_v(x[0], x[1]); }

static int32_t array_ring_groove_wear_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_ring_groove_wear_mm_array(x[0], x[1], count, out, row_status, error);
}

static int32_t call_keystone_groove_width_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_keystone_groove_width_mm(x[0], x[1], x[2], x[3], out, error);
}

static double value_keystone_groove_width_mm(const double *x) { return gaugepoint_keystone_groove_width_mm_v(x[0], x[1], x[2], x[3]); }

static int32_t array_keystone_groove_width_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_keystone_groove_width_mm_array(x[0], x[1], x[2], x[3], count, out, row_status, error);
}

static int32_t call_ring_gap_by_factor_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_ring_gap_by_factor_mm(x[0], x[1], out, error);
}

static double value_ring_gap_by_factor_mm(const double *x) { return gaugepoint_ring_gap_by_factor_mm_v(x[0], x[1]); }

static int32_t array_ring_gap_by_factor_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_ring_gap_by_factor_mm_array(x[0], x[1], count, out, row_status, error);
}

static int32_t call_rod_angle_mrad(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_rod_angle_mrad(x[0], x[1], out, error);
}

static double value_rod_angle_mrad(const double *x) { return gaugepoint_rod_angle_mrad_v(x[0], x[1]); }

static int32_t array_rod_angle_mrad(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_rod_angle_mrad_array(x[0], x[1], count, out, row_status, error);
}

static int32_t call_rod_skew_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_rod_skew_mm(x[0], x[1], out, error);
}

static double value_rod_skew_mm(const double *x) { return gaugepoint_rod_skew_mm_v(x[0], x[1]); }

static int32_t array_rod_skew_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_rod_skew_mm_array(x[0], x[1], count, out, row_status, error);
}

static int32_t call_top_land_crevice_cm3(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_top_land_crevice_cm3(x[0], x[1], x[2], out, error);
}

static double value_top_land_crevice_cm3(const double *x) { return gaugepoint_top_land_crevice_cm3_v(x[0], x[1], x[2]); }

static int32_t array_top_land_crevice_cm3(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_top_land_crevice_cm3_array(x[0], x[1], x[2], count, out, row_status, error);
}

static int32_t call_depth_in_bore_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_depth_in_bore_mm(x[0], x[1], x[2], x[3], out, error);
}

static double value_depth_in_bore_mm(const double *x) { return gaugepoint_depth_in_bore_mm_v(x[0], x[1], x[2], x[3]); }

static int32_t array_depth_in_bore_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_depth_in_bore_mm_array(x[0], x[1], x[2], x[3], count, out, row_status, error);
}

static int32_t call_inch_to_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_inch_to_mm(x[0], out, error);
}

static double value_inch_to_mm(const double *x) { return gaugepoint_inch_to_mm_v(x[0]); }

static int32_t array_inch_to_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_inch_to_mm_array(x[0], count, out, row_status, error);
}

static int32_t call_mm_to_inch(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_mm_to_inch(x[0], out, error);
}

static double value_mm_to_inch(const double *x) { return gaugepoint_mm_to_inch_v(x[0]); }

static int32_t array_mm_to_inch(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_mm_to_inch_array(x[0], count, out, row_status, error);
}

static int32_t call_thou_to_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_thou_to_mm(x[0], out, error);
}

static double value_thou_to_mm(const double *x) { return gaugepoint_thou_to_mm_v(x[0]); }

static int32_t array_thou_to_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_thou_to_mm_array(x[0], count, out, row_status, error);
}

static int32_t call_fahrenheit_to_c(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_fahrenheit_to_c(x[0], out, error);
}

static double value_fahrenheit_to_c(const double *x) { return gaugepoint_fahrenheit_to_c_v(x[0]); }

static int32_t array_fahrenheit_to_c(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_fahrenheit_to_c_array(x[0], count, out, row_status, error);
}

static int32_t call_c_to_fahrenheit(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_c_to_fahrenheit(x[0], out, error);
}

static double value_c_to_fahrenheit(const double *x) { return gaugepoint_c_to_fahrenheit_v(x[0]); }

static int32_t array_c_to_fahrenheit(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_c_to_fahrenheit_array(x[0], count, out, row_status, error);
}

static int32_t call_per_fahrenheit_to_per_k(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_per_fahrenheit_to_per_k(x[0], out, error);
}

static double value_per_fahrenheit_to_per_k(const double *x) { return gaugepoint_per_fahrenheit_to_per_k_v(x[0]); }

static int32_t array_per_fahrenheit_to_per_k(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_per_fahrenheit_to_per_k_array(x[0], count, out, row_status, error);
}

static int32_t call_ring_hot_gap_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_ring_hot_gap_mm(x[0], x[1], x[2], x[3], x[4], x[5], out, error);
}

static double value_ring_hot_gap_mm(const double *x) { return gaugepoint_ring_hot_gap_mm_v(x[0], x[1], x[2], x[3], x[4], x[5]); }

static int32_t array_ring_hot_gap_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_ring_hot_gap_mm_array(x[0], x[1], x[2], x[3], x[4], x[5], count, out, row_status, error);
}

static int32_t call_pin_cold_clearance_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_pin_cold_clearance_mm(x[0], x[1], out, error);
}

static double value_pin_cold_clearance_mm(const double *x) { return gaugepoint_pin_cold_clearance_mm_v(x[0], x[1]); }

static int32_t array_pin_cold_clearance_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_pin_cold_clearance_mm_array(x[0], x[1], count, out, row_status, error);
}

static int32_t call_pin_hot_clearance_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_pin_hot_clearance_mm(x[0], x[1], x[2], x[3], x[4], x[5], out, error);
}

static double value_pin_hot_clearance_mm(const double *x) { return gaugepoint_pin_hot_clearance_mm_v(x[0], x[1], x[2], x[3], x[4], x[5]); }

static int32_t array_pin_hot_clearance_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_pin_hot_clearance_mm_array(x[0], x[1], x[2], x[3], x[4], x[5], count, out, row_status, error);
}

static int32_t call_press_fit_pressure_mpa(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_press_fit_pressure_mpa(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], out, error);
}

static double value_press_fit_pressure_mpa(const double *x) { return gaugepoint_press_fit_pressure_mpa_v(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8]); }

static int32_t array_press_fit_pressure_mpa(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_press_fit_pressure_mpa_array(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], count, out, row_status, error);
}

static int32_t call_press_fit_force_n(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_press_fit_force_n(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], x[9], x[10], out, error);
}

static double value_press_fit_force_n(const double *x) { return gaugepoint_press_fit_force_n_v(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], x[9], x[10]); }

static int32_t array_press_fit_force_n(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_press_fit_force_n_array(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], x[9], x[10], count, out, row_status, error);
}

static int32_t call_press_fit_torque_nm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_press_fit_torque_nm(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], x[9], x[10], out, error);
}

static double value_press_fit_torque_nm(const double *x) { return gaugepoint_press_fit_torque_nm_v(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], x[9], x[10]); }

static int32_t array_press_fit_torque_nm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_press_fit_torque_nm_array(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], x[9], x[10], count, out, row_status, error);
}

static int32_t call_assembly_temperature_c(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_assembly_temperature_c(x[0], x[1], x[2], x[3], out, error);
}

static double value_assembly_temperature_c(const double *x) { return gaugepoint_assembly_temperature_c_v(x[0], x[1], x[2], x[3]); }

static int32_t array_assembly_temperature_c(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_assembly_temperature_c_array(x[0], x[1], x[2], x[3], count, out, row_status, error);
}

static int32_t call_piston_deck_clearance_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_piston_deck_clearance_mm(x[0], x[1], x[2], x[3], out, error);
}

static double value_piston_deck_clearance_mm(const double *x) { return gaugepoint_piston_deck_clearance_mm_v(x[0], x[1], x[2], x[3]); }

static int32_t array_piston_deck_clearance_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_piston_deck_clearance_mm_array(x[0], x[1], x[2], x[3], count, out, row_status, error);
}

static int32_t call_swept_volume_cm3(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_swept_volume_cm3(x[0], x[1], out, error);
}

static double value_swept_volume_cm3(const double *x) { return gaugepoint_swept_volume_cm3_v(x[0], x[1]); }

static int32_t array_swept_volume_cm3(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_swept_volume_cm3_array(x[0], x[1], count, out, row_status, error);
}

static int32_t call_static_compression_ratio(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_static_compression_ratio(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], out, error);
}

static double value_static_compression_ratio(const double *x) { return gaugepoint_static_compression_ratio_v(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7]); }

static int32_t array_static_compression_ratio(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_static_compression_ratio_array(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], count, out, row_status, error);
}

static int32_t call_piston_travel_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_piston_travel_mm(x[0], x[1], x[2], x[3], out, error);
}

static double value_piston_travel_mm(const double *x) { return gaugepoint_piston_travel_mm_v(x[0], x[1], x[2], x[3]); }

static int32_t array_piston_travel_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_piston_travel_mm_array(x[0], x[1], x[2], x[3], count, out, row_status, error);
}

static int32_t call_finish_size_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_finish_size_mm(x[0], x[1], out, error);
}

static double value_finish_size_mm(const double *x) { return gaugepoint_finish_size_mm_v(x[0], x[1]); }

static int32_t array_finish_size_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_finish_size_mm_array(x[0], x[1], count, out, row_status, error);
}

static int32_t call_boring_size_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_boring_size_mm(x[0], x[1], x[2], out, error);
}

static double value_boring_size_mm(const double *x) { return gaugepoint_boring_size_mm_v(x[0], x[1], x[2]); }

static int32_t array_boring_size_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_boring_size_mm_array(x[0], x[1], x[2], count, out, row_status, error);
}

static int32_t call_bore_size_at_20_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_bore_size_at_20_mm(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], x[9], out, error);
}

static double value_bore_size_at_20_mm(const double *x) { return gaugepoint_bore_size_at_20_mm_v(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], x[9]); }

static int32_t array_bore_size_at_20_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_bore_size_at_20_mm_array(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], x[9], count, out, row_status, error);
}

static int32_t call_size_at_temperature_mm(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_size_at_temperature_mm(x[0], x[1], x[2], out, error);
}

static double value_size_at_temperature_mm(const double *x) { return gaugepoint_size_at_temperature_mm_v(x[0], x[1], x[2]); }

static int32_t array_size_at_temperature_mm(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_size_at_temperature_mm_array(x[0], x[1], x[2], count, out, row_status, error);
}

static int32_t call_probability_of_conformity(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_probability_of_conformity(x[0], x[1], x[2], x[3], out, error);
}

static double value_probability_of_conformity(const double *x) { return gaugepoint_probability_of_conformity_v(x[0], x[1], x[2], x[3]); }

static int32_t array_probability_of_conformity(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_probability_of_conformity_array(x[0], x[1], x[2], x[3], count, out, row_status, error);
}

static int32_t call_coverage_factor(const double *x, double *out, GaugepointError *error) {
  return gaugepoint_coverage_factor(x[0], x[1], out, error);
}

static double value_coverage_factor(const double *x) { return gaugepoint_coverage_factor_v(x[0], x[1]); }

static int32_t array_coverage_factor(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {
  return gaugepoint_coverage_factor_array(x[0], x[1], count, out, row_status, error);
}

static const Flat flat_functions[] = {
  {"size_at_20_mm", 6, call_size_at_20_mm, value_size_at_20_mm, array_size_at_20_mm},
  {"bench_clearance_mm", 2, call_bench_clearance_mm, value_bench_clearance_mm, array_bench_clearance_mm},
  {"running_clearance_mm", 6, call_running_clearance_mm, value_running_clearance_mm, array_running_clearance_mm},
  {"ring_gap_in_bore_mm", 3, call_ring_gap_in_bore_mm, value_ring_gap_in_bore_mm, array_ring_gap_in_bore_mm},
  {"ring_least_cold_gap_mm", 6, call_ring_least_cold_gap_mm, value_ring_least_cold_gap_mm, array_ring_least_cold_gap_mm},
  {"ring_side_clearance_mm", 2, call_ring_side_clearance_mm, value_ring_side_clearance_mm, array_ring_side_clearance_mm},
  {"ring_back_clearance_mm", 3, call_ring_back_clearance_mm, value_ring_back_clearance_mm, array_ring_back_clearance_mm},
  {"ring_groove_wear_mm", 2, call_ring_groove_wear_mm, value_ring_groove_wear_mm, array_ring_groove_wear_mm},
  {"keystone_groove_width_mm", 4, call_keystone_groove_width_mm, value_keystone_groove_width_mm, array_keystone_groove_width_mm},
  {"ring_gap_by_factor_mm", 2, call_ring_gap_by_factor_mm, value_ring_gap_by_factor_mm, array_ring_gap_by_factor_mm},
  {"rod_angle_mrad", 2, call_rod_angle_mrad, value_rod_angle_mrad, array_rod_angle_mrad},
  {"rod_skew_mm", 2, call_rod_skew_mm, value_rod_skew_mm, array_rod_skew_mm},
  {"top_land_crevice_cm3", 3, call_top_land_crevice_cm3, value_top_land_crevice_cm3, array_top_land_crevice_cm3},
  {"depth_in_bore_mm", 4, call_depth_in_bore_mm, value_depth_in_bore_mm, array_depth_in_bore_mm},
  {"inch_to_mm", 1, call_inch_to_mm, value_inch_to_mm, array_inch_to_mm},
  {"mm_to_inch", 1, call_mm_to_inch, value_mm_to_inch, array_mm_to_inch},
  {"thou_to_mm", 1, call_thou_to_mm, value_thou_to_mm, array_thou_to_mm},
  {"fahrenheit_to_c", 1, call_fahrenheit_to_c, value_fahrenheit_to_c, array_fahrenheit_to_c},
  {"c_to_fahrenheit", 1, call_c_to_fahrenheit, value_c_to_fahrenheit, array_c_to_fahrenheit},
  {"per_fahrenheit_to_per_k", 1, call_per_fahrenheit_to_per_k, value_per_fahrenheit_to_per_k, array_per_fahrenheit_to_per_k},
  {"ring_hot_gap_mm", 6, call_ring_hot_gap_mm, value_ring_hot_gap_mm, array_ring_hot_gap_mm},
  {"pin_cold_clearance_mm", 2, call_pin_cold_clearance_mm, value_pin_cold_clearance_mm, array_pin_cold_clearance_mm},
  {"pin_hot_clearance_mm", 6, call_pin_hot_clearance_mm, value_pin_hot_clearance_mm, array_pin_hot_clearance_mm},
  {"press_fit_pressure_mpa", 9, call_press_fit_pressure_mpa, value_press_fit_pressure_mpa, array_press_fit_pressure_mpa},
  {"press_fit_force_n", 11, call_press_fit_force_n, value_press_fit_force_n, array_press_fit_force_n},
  {"press_fit_torque_nm", 11, call_press_fit_torque_nm, value_press_fit_torque_nm, array_press_fit_torque_nm},
  {"assembly_temperature_c", 4, call_assembly_temperature_c, value_assembly_temperature_c, array_assembly_temperature_c},
  {"piston_deck_clearance_mm", 4, call_piston_deck_clearance_mm, value_piston_deck_clearance_mm, array_piston_deck_clearance_mm},
  {"swept_volume_cm3", 2, call_swept_volume_cm3, value_swept_volume_cm3, array_swept_volume_cm3},
  {"static_compression_ratio", 8, call_static_compression_ratio, value_static_compression_ratio, array_static_compression_ratio},
  {"piston_travel_mm", 4, call_piston_travel_mm, value_piston_travel_mm, array_piston_travel_mm},
  {"finish_size_mm", 2, call_finish_size_mm, value_finish_size_mm, array_finish_size_mm},
  {"boring_size_mm", 3, call_boring_size_mm, value_boring_size_mm, array_boring_size_mm},
  {"bore_size_at_20_mm", 10, call_bore_size_at_20_mm, value_bore_size_at_20_mm, array_bore_size_at_20_mm},
  {"size_at_temperature_mm", 3, call_size_at_temperature_mm, value_size_at_temperature_mm, array_size_at_temperature_mm},
  {"probability_of_conformity", 4, call_probability_of_conformity, value_probability_of_conformity, array_probability_of_conformity},
  {"coverage_factor", 2, call_coverage_factor, value_coverage_factor, array_coverage_factor},
};

#endif
