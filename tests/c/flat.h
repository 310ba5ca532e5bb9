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
};

#endif
