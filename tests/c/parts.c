/* parts JOB: what a mistaken caller passes to the functions of rings, pins, liners and the deck gives a status and leaves the records;
 * no number kills a host that unmasks floating-point exceptions. */
#define _GNU_SOURCE
#include "check.h"

#include <fenv.h>

static const GaugepointPressFitParts pressed = {22, 12, 30, 24, 0.03, 0.03, 0, 0.12, 0.12, 205e3, 0.29, 205e3, 0.29};
static const GaugepointLinerParts lined = {86, 91, 104, 0.05, 0.005, 110e3, 0.26, 11.4e-6, 110, 72e3, 0.33, 20.5e-6, 110};
static const GaugepointChamber chamber = {86, 86, 50, 87, 1, 0, 0, 0};
static const GaugepointGasketBand table[] = {{0.470, 0.604, 1.30}, {0.605, 0.654, 1.35}};
static const double projections[] = {0.5, 0.61};

static const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER, unknown = GAUGEPOINT_STATUS_UNKNOWN_CHOICE;
static const int32_t range = GAUGEPOINT_STATUS_OUT_OF_RANGE, missing = GAUGEPOINT_STATUS_MISSING_FIELD;

static const double wave[] = {0.001, -0.05}, odd_wave[] = {0.001, NAN};

static void null_pointers(void) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  row = "null_pointers";
  CHECK(gaugepoint_ring_gap_in_bore_mm(0.3, 86, 86, NULL, &e) == null && same(e.field, "out"));
  CHECK(gaugepoint_ring_least_cold_gap_mm(0.1, 86, 90, 11e-6, 200, 11e-6, NULL, &e) == null);
  CHECK(gaugepoint_ring_side_clearance_mm(1.5, 1.45, NULL, &e) == null);
  CHECK(gaugepoint_ring_back_clearance_mm(86, 78, 3, NULL, &e) == null);
  CHECK(gaugepoint_ring_groove_wear_mm(1.5, 1.5, NULL, &e) == null);
  CHECK(gaugepoint_keystone_groove_width_mm(104, 2.5, 15, 102, NULL, &e) == null);
  CHECK(gaugepoint_ring_gap_by_factor_mm(86, 4.5, NULL, &e) == null);
  CHECK(gaugepoint_ring_conformable_amplitude_mm(2, 20, 86, 3.3, 1.5, 16e4, NULL, &e) == null);
  CHECK(gaugepoint_rod_angle_mrad(0.05, 100, NULL, &e) == null && gaugepoint_rod_skew_mm(0.5, 60, NULL, NULL) == null);
  CHECK(gaugepoint_top_land_crevice_cm3(86, 85, 7, NULL, &e) == null);
  CHECK(gaugepoint_ring_hot_gap(0.3, 86, 90, 11e-6, 200, 11e-6, NULL, &e) == null && same(e.field, "out"));
  CHECK(gaugepoint_pin_clearance(22, 20, 20e-6, 22, 20, 11e-6, NULL, &e) == null);
  CHECK(gaugepoint_press_fit(&pressed, NULL, &e) == null && gaugepoint_press_fit(NULL, NULL, &e) == null);
  CHECK(gaugepoint_assembly_temperature(22, 0.03, 0.02, 12e-6, NULL, &e) == null);
  CHECK(gaugepoint_liner_in_block(&lined, 0, NULL, &e) == null && gaugepoint_deck(217, 86, 143, 31, 1, NULL, &e) == null);
  CHECK(gaugepoint_compression_ratio(&chamber, NULL, &e) == null);
  CHECK(gaugepoint_gasket_band(projections, 2, table, 2, 0.001, NULL, &e) == null);
  REFUSED(GaugepointPressFit, gaugepoint_press_fit(NULL, &out, &e), null, "parts");
  REFUSED(GaugepointLinerFit, gaugepoint_liner_in_block(NULL, 0, &out, &e), null, "parts");
  REFUSED(GaugepointCompression, gaugepoint_compression_ratio(NULL, &out, &e), null, "chamber");
  REFUSED(GaugepointGasketChoice, gaugepoint_gasket_band(NULL, 2, table, 2, 0.001, &out, &e), null, "projections_mm");
  REFUSED(GaugepointGasketChoice, gaugepoint_gasket_band(projections, 2, NULL, 2, 0.001, &out, &e), null, "bands");
}

static void records(void) {
  GaugepointPressFitParts parts = pressed;
  GaugepointChamber full = chamber;
  row = "records";
  REFUSED(GaugepointRingHotGap, gaugepoint_ring_hot_gap(NAN, 86, 90, 11e-6, 200, 11e-6, &out, &e), GAUGEPOINT_STATUS_NOT_FINITE, "gap_mm");
  REFUSED(GaugepointPinClearance, gaugepoint_pin_clearance(0, 20, 20e-6, 22, 20, 11e-6, &out, &e), range, "hole_mm");
  REFUSED(GaugepointAssembly, gaugepoint_assembly_temperature(22, 0, 0.02, 12e-6, &out, &e), range, "interference_mm");
  REFUSED(GaugepointDeadCentres, gaugepoint_dead_centres(NAN, 143, 1, &out, &e), GAUGEPOINT_STATUS_NOT_FINITE, "crank_radius_mm");
  REFUSED(GaugepointPistonTravel, gaugepoint_piston_travel(43, 143, 1, 1e4, &out, &e), range, "crank_angle_deg");
  REFUSED(GaugepointCrankAngles, gaugepoint_crank_angles_at(43, 143, 1, 87, &out, &e), range, "travel_mm");
  REFUSED(GaugepointLeastClearance, gaugepoint_least_clearance_of_section(0.1, wave, odd_wave, 2, &out, &e), GAUGEPOINT_STATUS_NOT_FINITE, "sin_mm/1");
  REFUSED(GaugepointLeastClearance, gaugepoint_least_clearance_of_section(0.1, wave, NULL, 2, &out, &e), null, "sin_mm");
  REFUSED(GaugepointDeck, gaugepoint_deck(217, 86, -INFINITY, 31, 1, &out, &e), GAUGEPOINT_STATUS_NOT_FINITE, "rod_mm");
  parts.eye_mm = 22;
  REFUSED(GaugepointPressFit, gaugepoint_press_fit(&parts, &out, &e), GAUGEPOINT_STATUS_OUT_OF_ORDER, "eye_mm");
  full.crown_cm3 = -60;
  REFUSED(GaugepointCompression, gaugepoint_compression_ratio(&full, &out, &e), GAUGEPOINT_STATUS_CONTRADICTION, "crown_cm3");
  const int32_t wrong[] = {-1, 2, INT32_MIN, INT32_MAX};
  for (int k = 0; k < 4; k++) {
    REFUSED(GaugepointLinerFit, gaugepoint_liner_in_block(&lined, wrong[k], &out, &e), unknown, "measured_in_block");
  }
  const int32_t orders[] = {INT32_MIN, -2, 0, 1, 51, INT32_MAX};
  for (int k = 0; k < 6; k++) {
    GaugepointError e = GAUGEPOINT_ERROR_INIT;
    double out = 7;
    CHECK(gaugepoint_ring_conformable_amplitude_mm(orders[k], 20, 86, 3.3, 1.5, 16e4, &out, &e) == range);
    CHECK(isnan(out) && same(e.field, "order"));
  }
}

static void arrays(void) {
  row = "arrays";
  REFUSED(GaugepointGasketChoice, gaugepoint_gasket_band(projections, 0, table, 2, 0.001, &out, &e), missing, "projections_mm");
  REFUSED(GaugepointGasketChoice, gaugepoint_gasket_band(projections, 2, table, 0, 0.001, &out, &e), missing, "bands");
  const size_t huge[] = {GAUGEPOINT_MOST_VALUES + 1, SIZE_MAX / 24, SIZE_MAX / 8, SIZE_MAX};
  for (int k = 0; k < 4; k++) {
    REFUSED(GaugepointGasketChoice, gaugepoint_gasket_band(projections, huge[k], table, 2, 0.001, &out, &e), range, "projections_mm");
    REFUSED(GaugepointGasketChoice, gaugepoint_gasket_band(projections, 2, table, huge[k], 0.001, &out, &e), range, "bands");
  }
  GaugepointGasketChoice c = {sizeof c, 9, 9, 9, 9};
  CHECK(gaugepoint_gasket_band(projections, 2, table, 2, 0.001, &c, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(c.band == 1 && c.thickness_mm == 1.35 && c.largest_mm == 0.61 && c.struct_size == sizeof c);
}

static void sizes(void) {
  row = "sizes";
  SIZED(GaugepointRingHotGap, gaugepoint_ring_hot_gap(0.3, 86, 90, 11e-6, 200, 11e-6, &out, &e));
  SIZED(GaugepointPinClearance, gaugepoint_pin_clearance(22, 20, 20e-6, 22, 20, 11e-6, &out, &e));
  SIZED(GaugepointPressFit, gaugepoint_press_fit(&pressed, &out, &e));
  SIZED(GaugepointAssembly, gaugepoint_assembly_temperature(22, 0.03, 0.02, 12e-6, &out, &e));
  SIZED(GaugepointLinerFit, gaugepoint_liner_in_block(&lined, 1, &out, &e));
  SIZED(GaugepointDeck, gaugepoint_deck(217, 86, 143, 31, 1, &out, &e));
  SIZED(GaugepointDeadCentres, gaugepoint_dead_centres(43, 143, 1, &out, &e));
  SIZED(GaugepointPistonTravel, gaugepoint_piston_travel(43, 143, 1, 90, &out, &e));
  SIZED(GaugepointCrankAngles, gaugepoint_crank_angles_at(43, 143, 1, 40, &out, &e));
  SIZED(GaugepointLeastClearance, gaugepoint_least_clearance_of_section(0.1, wave, wave, 2, &out, &e));
  SIZED(GaugepointCompression, gaugepoint_compression_ratio(&chamber, &out, &e));
  SIZED(GaugepointGasketChoice, gaugepoint_gasket_band(projections, 2, table, 2, 0.001, &out, &e));
}

static void factors(void) {
  GaugepointRingGapFactor f = {7, NULL, NULL};
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  const int32_t wrong[] = {-1, INT32_MIN, INT32_MAX};
  int32_t count = 0;
  row = "factors";
  while (gaugepoint_ring_gap_factor_at(count, &f, NULL) == GAUGEPOINT_STATUS_OK) {
    /* 3 to 6.5 per mille are printed; never per inch */
    CHECK(f.per_mille >= 3 && f.per_mille <= 6.5 && f.duty[0] != '\0' && strstr(f.source, "common practice") != NULL);
    count++;
  }
  CHECK(count == 15);
  for (int k = 0; k < 3; k++) {
    GaugepointRingGapFactor before = f;
    CHECK(gaugepoint_ring_gap_factor_at(wrong[k], &f, &e) == range && same(e.field, "index"));
    CHECK(memcmp(&f, &before, sizeof f) == 0);
  }
  CHECK(gaugepoint_ring_gap_factor_at(0, NULL, &e) == null && same(e.field, "out"));
}

static const double odd[] = {NAN, INFINITY, -INFINITY, 0.0, -0.0, 5e-324, 1e-200, 1e-5, 0.3, 20.0, 86.0, 1e9, 1e200, DBL_MAX, -DBL_MAX};
enum { ODD = sizeof odd / sizeof odd[0] };

/* Every number in every place of a structure of doubles. */
#define EACH(type, good, call, result) \
  for (size_t place = 0; place < sizeof(good) / sizeof(double); place++) { \
    for (int k = 0; k < ODD; k++) { \
      type in = good; \
      memcpy((char *)&in + place * sizeof(double), &odd[k], sizeof odd[k]); \
      CHECK((call) != GAUGEPOINT_STATUS_OK || isfinite(result)); \
    } \
  }

typedef struct {
  double x[6];
} Six;

static void unmasked(void) {
  const Six hot = {{0.35, 86, 150, 11e-6, 250, 11.5e-6}}, pins = {{22.005, 160, 20e-6, 22, 140, 11e-6}};
  const Six ring = {{20, 86, 3.3, 1.5, 16e4, 0}}, groove = {{104.2, 2.5, 15, 102, 0, 0}}, heights = {{217, 86, 143, 31, 1.2, 0}};
  GaugepointRingHotGap gap = {.struct_size = sizeof gap};
  GaugepointPinClearance pin = {.struct_size = sizeof pin};
  GaugepointPressFit fit = {.struct_size = sizeof fit};
  GaugepointAssembly heat = {.struct_size = sizeof heat};
  GaugepointLinerFit liner = {.struct_size = sizeof liner};
  GaugepointDeck deck = {.struct_size = sizeof deck};
  GaugepointDeadCentres dead = {.struct_size = sizeof dead};
  GaugepointPistonTravel travel = {.struct_size = sizeof travel};
  GaugepointCrankAngles angles = {.struct_size = sizeof angles};
  GaugepointLeastClearance least = {.struct_size = sizeof least};
  const Six crank = {{43, 143, 1, 40, 0, 0}}, waves = {{0.01, -0.05, 0.002, 0.001, 0.0005, -0.0003}};
  const Six places = {{0.4, 60, 12, 10, 0, 0}};
  GaugepointCompression ratio = {.struct_size = sizeof ratio};
  GaugepointGasketChoice choice = {.struct_size = sizeof choice};
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  double out;
  row = "unmasked";
  feenableexcept(FE_INVALID | FE_DIVBYZERO | FE_OVERFLOW);
  EACH(GaugepointPressFitParts, pressed, gaugepoint_press_fit(&in, &fit, &e), fit.force_most_n)
  EACH(GaugepointLinerParts, lined, gaugepoint_liner_in_block(&in, 0, &liner, &e), liner.bore_mm)
  EACH(GaugepointLinerParts, lined, gaugepoint_liner_in_block(&in, 1, &liner, &e), liner.bore_mm)
  EACH(GaugepointChamber, chamber, gaugepoint_compression_ratio(&in, &ratio, &e), ratio.ratio)
  EACH(GaugepointGasketBand, table[0], gaugepoint_gasket_band(projections, 1, &in, 1, 0.001, &choice, &e), choice.squish_mm)
#define IN in.x[0], in.x[1], in.x[2], in.x[3]
  EACH(Six, hot, gaugepoint_ring_hot_gap(IN, in.x[4], in.x[5], &gap, &e), gap.gap_mm)
  EACH(Six, hot, gaugepoint_ring_least_cold_gap_mm(IN, in.x[4], in.x[5], &out, &e), out)
  EACH(Six, pins, gaugepoint_pin_clearance(IN, in.x[4], in.x[5], &pin, &e), pin.hot_mm)
  EACH(Six, ring, gaugepoint_ring_conformable_amplitude_mm(50, IN, in.x[4], &out, &e), out)
  EACH(Six, groove, gaugepoint_keystone_groove_width_mm(IN, &out, &e), out)
  EACH(Six, heights, gaugepoint_deck(IN, in.x[4], &deck, &e), deck.squish_mm)
  EACH(Six, crank, gaugepoint_dead_centres(in.x[0], in.x[1], in.x[2], &dead, &e), dead.stroke_mm)
  EACH(Six, crank, gaugepoint_piston_travel(IN, &travel, &e), travel.travel_mm)
  EACH(Six, crank, gaugepoint_crank_angles_at(IN, &angles, &e), angles.after_deg)
  EACH(Six, places, gaugepoint_depth_in_bore_mm(IN, &out, &e), out)
  EACH(Six, waves, gaugepoint_least_clearance_of_section(in.x[0], in.x, in.x, 6, &least, &e), least.least_mm)
  for (int k = 0; k < ODD * ODD; k++) {
    double a = odd[k % ODD], b = odd[k / ODD];
    CHECK(gaugepoint_rod_angle_mrad(a, b, &out, &e) != GAUGEPOINT_STATUS_OK || isfinite(out));
    CHECK(gaugepoint_rod_skew_mm(a, b, &out, &e) != GAUGEPOINT_STATUS_OK || isfinite(out));
    CHECK(gaugepoint_ring_side_clearance_mm(a, b, &out, &e) != GAUGEPOINT_STATUS_OK || isfinite(out));
    CHECK(gaugepoint_ring_groove_wear_mm(a, b, &out, &e) != GAUGEPOINT_STATUS_OK || isfinite(out));
    CHECK(gaugepoint_ring_gap_by_factor_mm(a, b, &out, &e) != GAUGEPOINT_STATUS_OK || isfinite(out));
    CHECK(gaugepoint_ring_gap_in_bore_mm(0.3, a, b, &out, &e) != GAUGEPOINT_STATUS_OK || isfinite(out));
    CHECK(gaugepoint_ring_back_clearance_mm(a, b, 3, &out, &e) != GAUGEPOINT_STATUS_OK || isfinite(out));
    CHECK(gaugepoint_top_land_crevice_cm3(a, b, 7, &out, &e) != GAUGEPOINT_STATUS_OK || isfinite(out));
    CHECK(gaugepoint_assembly_temperature(22, a, b, 12e-6, &heat, &e) != GAUGEPOINT_STATUS_OK || isfinite(heat.rise_k));
    CHECK(gaugepoint_assembly_temperature(a, 0.03, 0.02, b, &heat, &e) != GAUGEPOINT_STATUS_OK || isfinite(heat.rise_k));
  }
  fedisableexcept(FE_ALL_EXCEPT);
}

int main(void) {
  null_pointers();
  records();
  arrays();
  sizes();
  factors();
  unmasked();
  return finish();
}
