/* records: what a mistaken caller passes to the functions with arrays and records gives a status and leaves the record. */
#define _GNU_SOURCE
#include "check.h"

#include <sys/mman.h>
#include <unistd.h>

static const double study_values[] = {10, 20, 12, 22, 14, 24, 16, 26};
static const GaugepointItems normal = {GAUGEPOINT_DISTRIBUTION_NORMAL, 0, 0.0, 1.0, NAN};
static const GaugepointInterval tolerance = {1, 1, -2.0, 2.0};

static int32_t sample(const double *v, size_t n, GaugepointSample *out, GaugepointError *e) {
  return gaugepoint_sample(v, n, out, e);
}

static const size_t huge[] = {GAUGEPOINT_MOST_VALUES + 1, SIZE_MAX / 16, SIZE_MAX / 8, SIZE_MAX / 2 + 1, SIZE_MAX};
enum { COUNTS = sizeof huge / sizeof huge[0] };

static void samples(void) {
  GaugepointSample out, before;
  const double values[] = {1, 2, NAN, 4};
  row = "samples";
  KEPT(sample(NULL, 4, &out, &e), GAUGEPOINT_STATUS_NULL_POINTER, "values");
  KEPT(sample(NULL, SIZE_MAX, &out, &e), GAUGEPOINT_STATUS_NULL_POINTER, "values");
  KEPT(sample(values, 0, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "values");
  KEPT(sample(values, 1, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "values");
  KEPT(sample(values, 4, &out, &e), GAUGEPOINT_STATUS_NOT_FINITE, "values/2");
  for (int k = 0; k < COUNTS; k++) {
    KEPT(sample(values, huge[k], &out, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "values");
  }
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  CHECK(sample(values, 2, NULL, &e) == GAUGEPOINT_STATUS_NULL_POINTER && same(e.field, "out"));
  CHECK(sample(values, 2, NULL, NULL) == GAUGEPOINT_STATUS_NULL_POINTER);
  CHECK(sample(values, 2, &out, NULL) == GAUGEPOINT_STATUS_OK && out.mean == 1.5 && out.struct_size == sizeof out);
}

static void groups(void) {
  GaugepointOneWay out, before;
  const double values[] = {1, 2, 3, 4, 5};
  const size_t two[] = {2, 3}, few[] = {2, 2}, many[] = {2, 4}, empty[] = {5, 0}, wrap[] = {SIZE_MAX, 6};
  const int32_t contradiction = GAUGEPOINT_STATUS_CONTRADICTION;
  row = "groups";
  KEPT(gaugepoint_one_way(NULL, 5, two, 2, &out, &e), GAUGEPOINT_STATUS_NULL_POINTER, "values");
  KEPT(gaugepoint_one_way(values, 5, NULL, 2, &out, &e), GAUGEPOINT_STATUS_NULL_POINTER, "group_sizes");
  KEPT(gaugepoint_one_way(values, 5, few, 2, &out, &e), contradiction, "group_sizes");
  KEPT(gaugepoint_one_way(values, 5, many, 2, &out, &e), contradiction, "group_sizes");
  KEPT(gaugepoint_one_way(values, 5, wrap, 2, &out, &e), contradiction, "group_sizes");
  KEPT(gaugepoint_one_way(values, 5, two, 0, &out, &e), contradiction, "group_sizes");
  KEPT(gaugepoint_one_way(values, 0, two, 0, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "groups");
  KEPT(gaugepoint_one_way(values, 5, empty, 2, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "groups");
  for (int k = 0; k < COUNTS; k++) {
    KEPT(gaugepoint_one_way(values, huge[k], two, 2, &out, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "values");
    KEPT(gaugepoint_one_way(values, 5, two, huge[k], &out, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "group_sizes");
  }
}

static void studies(void) {
  GaugepointStudy out, before;
  const double *v = study_values;
  const int32_t unknown = GAUGEPOINT_STATUS_UNKNOWN_CHOICE, range = GAUGEPOINT_STATUS_OUT_OF_RANGE;
  const size_t odd[] = {0, 1};
  row = "studies";
  KEPT(gaugepoint_study_by_ranges(NULL, 2, 2, 2, &out, &e), GAUGEPOINT_STATUS_NULL_POINTER, "values");
  for (int k = 0; k < 2; k++) {
    size_t n = odd[k];
    const int32_t missing = GAUGEPOINT_STATUS_MISSING_FIELD;
    KEPT(gaugepoint_study_by_ranges(v, n, 2, 2, &out, &e), missing, "values");
    KEPT(gaugepoint_study_by_ranges(v, 2, n, 2, &out, &e), missing, "values");
    KEPT(gaugepoint_study_by_variance(v, 2, 2, n, 1, 0, 0, &out, &e), missing, "values");
    KEPT(gaugepoint_study_by_variance(v, n, n, n, 1, 0, 0, &out, &e), missing, "values");
  }
  for (int k = 0; k < COUNTS; k++) {
    KEPT(gaugepoint_study_by_ranges(v, huge[k], 2, 2, &out, &e), range, "values");
    KEPT(gaugepoint_study_by_ranges(v, 2, huge[k], 2, &out, &e), range, "values");
    KEPT(gaugepoint_study_by_variance(v, 2, 2, huge[k], 1, 0, 0, &out, &e), range, "values");
  }
  /* products that come round to a small number */
  KEPT(gaugepoint_study_by_ranges(v, SIZE_MAX / 2 + 1, 2, 2, &out, &e), range, "values");
  KEPT(gaugepoint_study_by_ranges(v, (size_t)1 << 32, (size_t)1 << 32, 2, &out, &e), range, "values");
  KEPT(gaugepoint_study_by_ranges(v, 3, SIZE_MAX / 3 + 1, 2, &out, &e), range, "values");
  const int32_t wrong[] = {-1, 0, 4, INT32_MIN, INT32_MAX};
  for (int k = 0; k < 5; k++) {
    KEPT(gaugepoint_study_by_variance(v, 2, 2, 2, wrong[k], 1, 0.25, &out, &e), unknown, "pooling");
  }
  KEPT(gaugepoint_study_by_variance(v, 2, 2, 2, 3, 2, 0.25, &out, &e), unknown, "has_probability");
  KEPT(gaugepoint_study_by_variance(v, 2, 2, 2, 3, 0, 0.25, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "has_probability");
  KEPT(gaugepoint_study_by_variance(v, 2, 2, 2, 1, 1, 0.25, &out, &e), GAUGEPOINT_STATUS_CONTRADICTION, "has_probability");
  KEPT(gaugepoint_study_by_variance(v, 2, 2, 2, 3, 1, NAN, &out, &e), range, "pooling");
  CHECK(gaugepoint_study_by_variance(v, 2, 2, 2, 1, 0, NAN, &out, NULL) == GAUGEPOINT_STATUS_OK);
}

static void biases(void) {
  const double v[] = {1, 2, 1, 3};
  const size_t two[] = {2, 2}, few[] = {2, 1}, wrap[] = {SIZE_MAX, 5};
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER, range = GAUGEPOINT_STATUS_OUT_OF_RANGE;
  row = "biases";
  {
    GaugepointBias out, before;
    KEPT(gaugepoint_bias(NULL, 4, 1, 0, 0.95, &out, &e), null, "values");
    KEPT(gaugepoint_bias(v, 0, 1, 0, 0.95, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "values");
    KEPT(gaugepoint_bias(v, huge[0], 1, 0, 0.95, &out, &e), range, "values");
    KEPT(gaugepoint_bias(v, 4, 1, NAN, 0.95, &out, &e), GAUGEPOINT_STATUS_NOT_FINITE, "reference_uncertainty");
    KEPT(gaugepoint_bias(v, 4, 1, 0, 1, &out, &e), range, "coverage");
    CHECK(gaugepoint_bias(v, 4, 1, 0, 0.95, NULL, NULL) == null);
  }
  {
    GaugepointLinearity out, before;
    KEPT(gaugepoint_linearity(NULL, two, 2, v, 4, 0.95, &out, &e), null, "references");
    KEPT(gaugepoint_linearity(v, NULL, 2, v, 4, 0.95, &out, &e), null, "group_sizes");
    KEPT(gaugepoint_linearity(v, two, 2, NULL, 4, 0.95, &out, &e), null, "readings");
    KEPT(gaugepoint_linearity(v, few, 2, v, 4, 0.95, &out, &e), GAUGEPOINT_STATUS_CONTRADICTION, "group_sizes");
    KEPT(gaugepoint_linearity(v, wrap, 2, v, 4, 0.95, &out, &e), GAUGEPOINT_STATUS_CONTRADICTION, "group_sizes");
    KEPT(gaugepoint_linearity(v, two, 0, v, 0, 0.95, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "readings");
    for (int k = 0; k < COUNTS; k++) {
      KEPT(gaugepoint_linearity(v, two, huge[k], v, 4, 0.95, &out, &e), range, "references");
      KEPT(gaugepoint_linearity(v, two, 2, v, huge[k], 0.95, &out, &e), range, "readings");
    }
  }
  {
    GaugepointBand out, before;
    KEPT(gaugepoint_linearity_band(v, two, 2, v, 4, INFINITY, 0.95, &out, &e), GAUGEPOINT_STATUS_NOT_FINITE, "x");
    KEPT(gaugepoint_linearity_band(v, two, 2, v, 4, 1e200, 0.95, &out, &e), range, "x");
  }
}

static void charts(void) {
  GaugepointChart out, before;
  GaugepointPoint points[4], untouched[4];
  const double v[] = {1, 2, 3, 4, 5, 6, 7, NAN};
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER, range = GAUGEPOINT_STATUS_OUT_OF_RANGE;
  const int32_t wrong[] = {-1, 0, 7, INT32_MIN, INT32_MAX};
  row = "charts";
  memset(points, 0x5A, sizeof points);
  memcpy(untouched, points, sizeof points);
  KEPT(gaugepoint_control_chart(NULL, 3, 2, 1, &out, points, &e), null, "values");
  KEPT(gaugepoint_control_chart(v, 3, 2, 1, &out, NULL, &e), null, "points");
  KEPT(gaugepoint_control_chart(v, 0, 2, 1, &out, points, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "values");
  KEPT(gaugepoint_control_chart(v, 3, 0, 1, &out, points, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "values");
  KEPT(gaugepoint_control_chart(v, 4, 2, 1, &out, points, &e), GAUGEPOINT_STATUS_NOT_FINITE, "values/3/1");
  KEPT(gaugepoint_control_chart(v, 4, 1, 1, &out, points, &e), range, "values");
  KEPT(gaugepoint_control_chart(v, 3, 2, 5, &out, points, &e), range, "values");
  for (int k = 0; k < 5; k++) {
    KEPT(gaugepoint_control_chart(v, 3, 2, wrong[k], &out, points, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "kind");
  }
  for (int k = 0; k < COUNTS; k++) {
    KEPT(gaugepoint_control_chart(v, huge[k], 2, 1, &out, points, &e), range, "values");
    KEPT(gaugepoint_control_chart(v, 2, huge[k], 1, &out, points, &e), range, "values");
  }
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  CHECK(gaugepoint_control_chart(v, 3, 2, 1, NULL, points, &e) == null && same(e.field, "out"));
  CHECK(memcmp(points, untouched, sizeof points) == 0);
  CHECK(gaugepoint_control_chart(v, 4, 1, 6, &out, points, NULL) == GAUGEPOINT_STATUS_OK && out.count == 3);
  CHECK(points[2].value == 1.0 && memcmp(points + 3, untouched + 3, sizeof points[3]) == 0);
}

static void risks(void) {
  GaugepointRisks out, before;
  GaugepointItems items = normal;
  GaugepointInterval odd = tolerance;
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER, unknown = GAUGEPOINT_STATUS_UNKNOWN_CHOICE;
  row = "risks";
  KEPT(gaugepoint_global_risks(NULL, 0.1, &tolerance, &tolerance, &out, &e), null, "items");
  KEPT(gaugepoint_global_risks(&normal, 0.1, NULL, &tolerance, &out, &e), null, "tolerance");
  KEPT(gaugepoint_global_risks(&normal, 0.1, &tolerance, NULL, &out, &e), null, "accepted");
  const int32_t wrong[] = {-1, 0, 5, INT32_MIN, INT32_MAX};
  for (int k = 0; k < 5; k++) {
    items.distribution = wrong[k];
    KEPT(gaugepoint_global_risks(&items, 0.1, &tolerance, &tolerance, &out, &e), unknown, "items");
  }
  items.distribution = GAUGEPOINT_DISTRIBUTION_TRIANGULAR;
  KEPT(gaugepoint_global_risks(&items, 0.1, &tolerance, &tolerance, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "has_third");
  items.distribution = GAUGEPOINT_DISTRIBUTION_UNIFORM;
  items.has_third = 1;
  KEPT(gaugepoint_global_risks(&items, 0.1, &tolerance, &tolerance, &out, &e), GAUGEPOINT_STATUS_CONTRADICTION, "has_third");
  items.has_third = 2;
  KEPT(gaugepoint_global_risks(&items, 0.1, &tolerance, &tolerance, &out, &e), unknown, "has_third");
  odd.has_lower = 2;
  KEPT(gaugepoint_global_risks(&normal, 0.1, &odd, &tolerance, &out, &e), unknown, "has_lower");
  odd.has_lower = 1;
  odd.has_upper = -1;
  KEPT(gaugepoint_global_risks(&normal, 0.1, &tolerance, &odd, &out, &e), unknown, "has_upper");
  odd.has_upper = 1;
  odd.upper = NAN;
  KEPT(gaugepoint_global_risks(&normal, 0.1, &odd, &tolerance, &out, &e), GAUGEPOINT_STATUS_NOT_FINITE, "tolerance");
}

static void acceptances(void) {
  GaugepointInterval out = {7, 7, 7, 7}, before = out;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER, unknown = GAUGEPOINT_STATUS_UNKNOWN_CHOICE;
  row = "acceptances";
  CHECK(gaugepoint_acceptance(NULL, 0.1, 1, 0, 0, &out, &e) == null && same(e.field, "tolerance"));
  CHECK(gaugepoint_acceptance(&tolerance, 0.1, 1, 0, 0, NULL, &e) == null && same(e.field, "accepted"));
  CHECK(gaugepoint_acceptance(&tolerance, 0.1, 0, 0, 0, &out, &e) == unknown && same(e.field, "guard"));
  CHECK(gaugepoint_acceptance(&tolerance, 0.1, 5, 1, 1, &out, &e) == unknown && same(e.refused, "5"));
  CHECK(gaugepoint_acceptance(&tolerance, 0.1, 1, 1, 1, &out, &e) == GAUGEPOINT_STATUS_CONTRADICTION);
  for (int32_t guard = 2; guard <= 4; guard++) {
    CHECK(gaugepoint_acceptance(&tolerance, 0.1, guard, 0, 1, &out, &e) == GAUGEPOINT_STATUS_MISSING_FIELD);
    CHECK(same(e.field, "has_amount"));
  }
  CHECK(gaugepoint_acceptance_for_risk(NULL, 0.1, &tolerance, 0.001, &out, &e) == null && same(e.field, "items"));
  CHECK(gaugepoint_acceptance_for_risk(&normal, 0.1, NULL, 0.001, &out, &e) == null && same(e.field, "tolerance"));
  CHECK(gaugepoint_acceptance_for_risk(&normal, 0.1, &tolerance, 0.5, &out, &e) == GAUGEPOINT_STATUS_OUT_OF_RANGE);
  CHECK(same(e.field, "wanted") && e.has_value && e.value == 0.5 && e.has_upper && e.upper < 0.05);
  CHECK(memcmp(&out, &before, sizeof out) == 0);
  CHECK(gaugepoint_acceptance(&tolerance, 0.5, 2, 1, 1, &out, &e) == GAUGEPOINT_STATUS_OK);
  CHECK(out.has_lower == 1 && out.has_upper == 1 && out.lower == -1.0 && out.upper == 1.0);
  GaugepointCapability c = {sizeof c, 7, 7};
  CHECK(gaugepoint_capability(0, 1, NULL, &c, &e) == null && same(e.field, "tolerance") && c.cpk == 7);
  CHECK(gaugepoint_capability(0, 1, &tolerance, NULL, &e) == null && same(e.field, "out"));
}

static void before_measuring(void) {
  GaugepointOutliers out, before;
  const double points[] = {0, 0, 1, 0, 0, 2, 0, 0, 3, 0, 0, 4};
  int32_t flags[4] = {7, 7, 7, 7}, verdict = 7;
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER, unknown = GAUGEPOINT_STATUS_UNKNOWN_CHOICE;
  const int32_t wrong[] = {-1, 0, 4, INT32_MIN, INT32_MAX};
  row = "before_measuring";
  KEPT(gaugepoint_outliers(NULL, 4, 1, 0.05, flags, &out, &e), null, "points");
  KEPT(gaugepoint_outliers(points, 4, 1, 0.05, NULL, &out, &e), null, "flags");
  KEPT(gaugepoint_outliers(points, 0, 1, 0.05, flags, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "points");
  for (int k = 0; k < 5; k++) {
    KEPT(gaugepoint_outliers(points, 4, wrong[k], 0.05, flags, &out, &e), unknown, "pattern");
  }
  for (int k = 0; k < COUNTS; k++) {
    KEPT(gaugepoint_outliers(points, huge[k], 1, 0.05, flags, &out, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "points");
  }
  CHECK(flags[0] == 7 && flags[3] == 7);
  CHECK(gaugepoint_outliers(points, 4, 1, 0.05, flags, &out, NULL) == GAUGEPOINT_STATUS_OK && flags[0] == 0 && flags[3] == 0);
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  GaugepointAgreement a = {sizeof a, 7, 7, 7, 7, 7, 7};
  CHECK(gaugepoint_readers(NULL, 2, points, 2, 0.1, &a, &e) == null && same(e.field, "first"));
  CHECK(gaugepoint_readers(points, 2, NULL, 2, 0.1, &a, &e) == null && same(e.field, "second") && a.agree == 7);
  GaugepointAdequacy q = {sizeof q, 7, 7, 7, 7, 7};
  CHECK(gaugepoint_adequacy(NULL, 0.1, 1, 0, 0, 0, &q, &e) == null && same(e.field, "tolerance"));
  CHECK(gaugepoint_adequacy(&tolerance, 0.1, 4, 0, 0, 0, &q, &e) == GAUGEPOINT_STATUS_MISSING_FIELD && q.adequate == 7);
  CHECK(gaugepoint_judge(NULL, 4, 86, 0, 0, &verdict, &e) == null && same(e.field, "name"));
  CHECK(gaugepoint_judge("bore", 4, 86, 2, 0, &verdict, &e) == unknown && same(e.field, "has_diameter"));
  CHECK(gaugepoint_judge("b\xff", 2, 86, 0, 0, &verdict, &e) == GAUGEPOINT_STATUS_NOT_UTF8 && verdict == 7);
  CHECK(gaugepoint_judge("bore", 4, 86, 0, NAN, &verdict, &e) == GAUGEPOINT_STATUS_OK && verdict == 1);
  CHECK(gaugepoint_plausibility_row(0, NULL, &e) == null && same(e.field, "out"));
}

/* A size that was not set is refused; a shorter one than the first version, too; a longer one is written as far as is known. */
static void sizes(void) {
  const size_t wrong[] = {0, 1, 8, sizeof(GaugepointRisks) - 1, 65537, SIZE_MAX / 2, SIZE_MAX};
  struct {
    GaugepointRisks known;
    unsigned char later[40], beyond[8];
  } r;
  row = "sizes";
  for (size_t k = 0; k < sizeof wrong / sizeof wrong[0]; k++) {
    GaugepointError e = GAUGEPOINT_ERROR_INIT;
    memset(&r, 0x5A, sizeof r);
    r.known.struct_size = wrong[k];
    CHECK(gaugepoint_global_risks(&normal, 0.1, &tolerance, &tolerance, &r.known, &e) == GAUGEPOINT_STATUS_STRUCT_SIZE);
    CHECK(same(e.field, "out") && r.known.struct_size == wrong[k]);
    for (size_t i = sizeof(size_t); i < sizeof r; i++) {
      CHECK(((unsigned char *)&r)[i] == 0x5A);
    }
  }
  r.known.struct_size = sizeof r.known + sizeof r.later;
  CHECK(gaugepoint_global_risks(&normal, 0.1, &tolerance, &tolerance, &r.known, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(r.known.conforming > 0.95 && r.known.conforming < 0.96);
  CHECK(r.known.struct_size == sizeof r.known + sizeof r.later);
  for (size_t i = sizeof r.known; i < sizeof r; i++) {
    CHECK(((unsigned char *)&r)[i] == 0x5A);
  }
}

static const double corner_x[] = {43, 0, -43, 0, 43}, corner_y[] = {0, 43, 0, -43, 0}, corner_z[] = {0, 0, 0, 0, 90};

static void fits(void) {
  GaugepointCircle out, before;
  const double *x = corner_x, *y = corner_y;
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER, unknown = GAUGEPOINT_STATUS_UNKNOWN_CHOICE;
  const int32_t wrong[] = {-1, 0, 5, INT32_MIN, INT32_MAX};
  row = "fits";
  KEPT(gaugepoint_fit_circle(NULL, y, 4, 1, &out, &e), null, "x_mm");
  KEPT(gaugepoint_fit_circle(x, NULL, 4, 1, &out, &e), null, "y_mm");
  KEPT(gaugepoint_fit_circle(x, y, 0, 1, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "x_mm");
  KEPT(gaugepoint_fit_circle(x, y, 2, 1, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "x_mm");
  for (int k = 0; k < 5; k++) {
    KEPT(gaugepoint_fit_circle(x, y, 4, wrong[k], &out, &e), unknown, "reference");
    KEPT(gaugepoint_fit_circle_algebraic(x, y, 4, wrong[k], &out, &e), unknown, "method");
  }
  for (int k = 0; k < COUNTS; k++) {
    KEPT(gaugepoint_fit_circle(x, y, huge[k], 1, &out, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "x_mm");
  }
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  CHECK(gaugepoint_fit_circle(x, y, 4, 1, NULL, &e) == null && same(e.field, "out"));
  CHECK(gaugepoint_fit_circle(x, y, 4, 1, &out, NULL) == GAUGEPOINT_STATUS_OK && fabs(out.radius_mm - 43) < 1e-12);
  CHECK(gaugepoint_fit_cylinder(x, y, NULL, 5, 1, NULL, &e) == null && same(e.field, "out"));
  GaugepointCylinder bore;
  GaugepointPlane deck;
  bore.struct_size = sizeof bore;
  deck.struct_size = sizeof deck;
  CHECK(gaugepoint_fit_cylinder(x, y, NULL, 5, 1, &bore, &e) == null && same(e.field, "z_mm"));
  CHECK(gaugepoint_fit_cylinder(x, y, corner_z, 5, 9, &bore, &e) == unknown && same(e.field, "reference"));
  CHECK(gaugepoint_fit_plane(x, y, corner_z, 5, 3, &deck, &e) == unknown && same(e.field, "reference"));
  CHECK(gaugepoint_fit_plane(x, y, corner_z, 4, 1, &deck, &e) == GAUGEPOINT_STATUS_OK && deck.has_direction == 0);
  GaugepointBoreAxis axis;
  axis.struct_size = sizeof axis;
  CHECK(gaugepoint_bore_to_main_line(x, SIZE_MAX / 3 + 1, y, 1, &axis, &e) == GAUGEPOINT_STATUS_OUT_OF_RANGE);
  CHECK(same(e.field, "bore_mm"));
  CHECK(gaugepoint_bore_to_main_line(x, 1, NULL, 1, &axis, &e) == null && same(e.field, "main_mm"));
}

/* Harmonics are written as far as there are any, and not at all on failure. */
static void sections(void) {
  GaugepointSection out, before;
  GaugepointHarmonic h[4];
  unsigned char untouched[sizeof h];
  const double angles[] = {0, 45, 90, 135}, diameters[] = {86.03, 86, 85.99, 85.98};
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER, contradiction = GAUGEPOINT_STATUS_CONTRADICTION;
  row = "sections";
  memset(h, 0x5A, sizeof h);
  memset(untouched, 0x5A, sizeof untouched);
  KEPT(gaugepoint_section_from_diameters(NULL, diameters, 4, 4, h, 4, &out, &e), null, "angles_deg");
  KEPT(gaugepoint_section_from_radii(angles, NULL, 4, 1, h, 4, &out, &e), null, "radii_mm");
  KEPT(gaugepoint_section_from_diameters(angles, diameters, 4, 4, NULL, 4, &out, &e), null, "harmonics");
  KEPT(gaugepoint_section_from_diameters(angles, diameters, 4, 4, h, 1, &out, &e), contradiction, "room");
  KEPT(gaugepoint_section_from_diameters(angles, diameters, 4, SIZE_MAX, h, 4, &out, &e), contradiction, "order");
  KEPT(gaugepoint_section_from_radii(angles, diameters, 4, SIZE_MAX, h, 4, &out, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "order");
  CHECK(memcmp(h, untouched, sizeof h) == 0);
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  CHECK(gaugepoint_section_from_diameters(angles, diameters, 4, 6, h, 4, &out, &e) == GAUGEPOINT_STATUS_OUT_OF_RANGE);
  CHECK(e.has_upper == 1 && e.upper == 4.0);
  CHECK(gaugepoint_section_from_diameters(angles, diameters, 4, 4, h, 4, &out, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(out.harmonics == 2 && h[0].order == 2 && h[1].order == 4 && h[1].has_sin == 0 && isnan(h[1].sin_mm));
  CHECK(memcmp(h + 2, untouched, 2 * sizeof h[0]) == 0);
  double d = 0;
  CHECK(gaugepoint_two_point_mm(43, NULL, 1, 0, &d, &e) == null && same(e.field, "harmonics") && isnan(d));
  CHECK(gaugepoint_two_point_mm(43, h, 2, 90, &d, &e) == GAUGEPOINT_STATUS_OK && fabs(d - 85.99) < 1e-12);
  CHECK(gaugepoint_two_point_mm(43, h, 0, 90, &d, &e) == GAUGEPOINT_STATUS_OK && d == 86.0);
  h[0].has_cos = 2;
  CHECK(gaugepoint_two_point_mm(43, h, 2, 90, &d, &e) == GAUGEPOINT_STATUS_UNKNOWN_CHOICE && same(e.field, "has_cos"));
  CHECK(isnan(d));
}

/* A piston is refused before anything that it points to is missed, and nothing is written on failure. */
static void pistons(void) {
  GaugepointLargest out, before;
  const GaugepointTableRow flat[] = {{0, 0}}, oval[] = {{0, 0.25}};
  const GaugepointWindow window = {1, 0, 350, 10, 5, 9};
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER, unknown = GAUGEPOINT_STATUS_UNKNOWN_CHOICE;
  GaugepointPistonSurface skirt;
  GaugepointPiston piston = {5, &skirt, 1}, none = {5, NULL, 1};
  row = "pistons";
  memset(&skirt, 0, sizeof skirt);
  skirt.form = GAUGEPOINT_PISTON_FORM_SYMMETRIC;
  skirt.counted = GAUGEPOINT_COUNTED_ABOVE;
  skirt.to_mm = 40;
  skirt.barrel.rows = flat;
  skirt.ovality.rows = oval;
  skirt.barrel.count = skirt.ovality.count = 1;
  GaugepointPistonSurface good = skirt;
  KEPT(gaugepoint_piston_largest(NULL, 86, 12, &out, &e), null, "piston");
  KEPT(gaugepoint_piston_largest(&none, 86, 12, &out, &e), null, "surfaces");
  skirt.form = 0;
  KEPT(gaugepoint_piston_largest(&piston, 86, 12, &out, &e), unknown, "form");
  skirt = good;
  skirt.counted = 3;
  KEPT(gaugepoint_piston_largest(&piston, 86, 12, &out, &e), unknown, "counted");
  skirt = good;
  skirt.has_coating = 2;
  KEPT(gaugepoint_piston_largest(&piston, 86, 12, &out, &e), unknown, "has_coating");
  skirt = good;
  skirt.ovality.rows = NULL;
  KEPT(gaugepoint_piston_largest(&piston, 86, 12, &out, &e), null, "ovality");
  skirt = good;
  skirt.ovality.count = SIZE_MAX;
  KEPT(gaugepoint_piston_largest(&piston, 86, 12, &out, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "ovality");
  skirt = good;
  skirt.window_count = 1;
  KEPT(gaugepoint_piston_largest(&piston, 86, 12, &out, &e), null, "windows");
  skirt.windows = &window;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  double d = 7;
  CHECK(gaugepoint_piston_diameter_mm(&piston, 86, 7, 0, &d, &e) == GAUGEPOINT_STATUS_CONTRADICTION && isnan(d));
  CHECK(gaugepoint_piston_diameter_mm(&piston, 86, 12, 0, &d, &e) == GAUGEPOINT_STATUS_OK && d == 86.0);
  CHECK(gaugepoint_piston_diameter_mm(&piston, 86, 12, 90, NULL, &e) == null && same(e.field, "out"));
  GaugepointFormWarning warnings[1];
  size_t count = 7;
  CHECK(gaugepoint_piston_warnings(&piston, warnings, 1, NULL, &e) == null && same(e.field, "count"));
  CHECK(gaugepoint_piston_warnings(&piston, NULL, 1, &count, &e) == null && same(e.field, "warnings") && count == 7);
  CHECK(gaugepoint_piston_warnings(&piston, warnings, 1, &count, NULL) == GAUGEPOINT_STATUS_OK && count == 0);
  const double heights[] = {12, 12}, angles[] = {0, 90}, values[] = {86, 85.75};
  GaugepointPistonPoints points = {heights, angles, values, 2, GAUGEPOINT_PISTON_READING_DIAMETERS, 0, NAN};
  GaugepointPistonStation station;
  GaugepointPistonFit fit;
  double residuals[2] = {7, 7};
  fit.struct_size = sizeof fit;
  CHECK(gaugepoint_fit_piston_surface(&points, 0, &station, 0, residuals, &fit, &e) == GAUGEPOINT_STATUS_CONTRADICTION);
  CHECK(same(e.field, "room") && residuals[0] == 7);
  CHECK(gaugepoint_fit_piston_surface(&points, 2, &station, 1, residuals, &fit, &e) == unknown);
  CHECK(gaugepoint_fit_piston_surface(&points, 0, &station, 1, NULL, &fit, &e) == null && same(e.field, "residuals_mm"));
  CHECK(gaugepoint_fit_piston_surface(NULL, 0, &station, 1, residuals, &fit, &e) == null && same(e.field, "points"));
  CHECK(gaugepoint_fit_piston_surface(&points, 0, &station, 1, residuals, &fit, &e) == GAUGEPOINT_STATUS_OK);
  CHECK(fit.stations == 1 && fit.has_deviation == 0 && station.has_uncertainty == 0);
  CHECK(fabs(station.ovality_mm - 0.25) < 1e-12);
  points.reading = 3;
  CHECK(gaugepoint_fit_piston_surface(&points, 0, &station, 1, residuals, &fit, &e) == unknown && same(e.field, "reading"));
}

/* The values end where the readable memory ends: one byte further is a fault. */
static int32_t cleaned(const double *angles, size_t n, int32_t axis, double shift, double tilt, GaugepointHeld *held, size_t room,
                       GaugepointCleanUp *out, GaugepointError *e) {
  static const double depths[] = {30, 30, 30}, radii[] = {43, 43.1, 43};
  return gaugepoint_clean_up(angles, depths, radii, n, axis, shift, tilt, 0, 0, 0, 0, held, room, out, e);
}

static void clean_ups(void) {
  const double angles[] = {0, 120, 240};
  const int32_t contradiction = GAUGEPOINT_STATUS_CONTRADICTION, null = GAUGEPOINT_STATUS_NULL_POINTER;
  const int32_t wrong[] = {0, 4, -1, INT32_MIN}, original = GAUGEPOINT_BAR_AXIS_ORIGINAL, worn = GAUGEPOINT_BAR_AXIS_WORN;
  GaugepointHeld h[3] = {{7, 7}, {7, 7}, {7, 7}};
  row = "clean_ups";
  SIZED(GaugepointCleanUp, cleaned(angles, 3, original, 0, 0, h, 3, &out, &e));
  GaugepointCleanUp out, before;
  KEPT(cleaned(NULL, 3, original, 0, 0, h, 3, &out, &e), null, "angles_deg");
  KEPT(cleaned(angles, 3, original, 0, 0, NULL, 3, &out, &e), null, "held");
  KEPT(cleaned(angles, 3, original, 0, 0, h, 0, &out, &e), contradiction, "room");
  KEPT(cleaned(angles, 3, original, 0.1, 0, h, 3, &out, &e), contradiction, "shift_mm");
  KEPT(cleaned(angles, 3, worn, 0, NAN, h, 3, &out, &e), contradiction, "tilt");
  KEPT(cleaned(angles, 0, original, 0, 0, h, 3, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "angles_deg");
  for (int k = 0; k < 4; k++) {
    KEPT(cleaned(angles, 3, wrong[k], 0, 0, h, 3, &out, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "axis");
  }
  for (int k = 0; k < COUNTS; k++) {
    KEPT(cleaned(angles, huge[k], original, 0, 0, h, 3, &out, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "angles_deg");
  }
  CHECK(h[0].place == 7);
  CHECK(cleaned(angles, 3, original, 0, 0, h, 1, &out, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(out.held == 1 && h[0].place == 1 && h[0].share == 1 && h[1].place == 7);
  SIZED(GaugepointCleanUpRange, gaugepoint_clean_up_from_diameters(86, 86.1, 0, &out, &e));
}

static void walls(void) {
  const GaugepointBar bar = {0, 0, 50, 0, 0};
  const GaugepointWallPoint wall = {0, 50, 43, 5};
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER;
  double out = 7;
  row = "walls";
  TOLD(gaugepoint_walls_left(NULL, 86, &wall, 1, &out, &e), null, "bar");
  TOLD(gaugepoint_walls_left(&bar, 86, NULL, 1, &out, &e), null, "walls");
  TOLD(gaugepoint_walls_left(&bar, 86, &wall, 1, NULL, &e), null, "left_mm");
  TOLD(gaugepoint_walls_left(&bar, 86, &wall, SIZE_MAX, &out, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "walls");
  CHECK(out == 7 && gaugepoint_walls_left(&bar, 86, &wall, 0, &out, NULL) == GAUGEPOINT_STATUS_OK && out == 7);
  TOLD(gaugepoint_largest_bore_by_walls_mm(&bar, 4, &wall, 1, NULL, &e), null, "out");
  TOLD(gaugepoint_largest_bore_by_walls_mm(NULL, 4, &wall, 1, &out, &e), null, "bar");
  CHECK(isnan(out));
  TOLD(gaugepoint_largest_bore_by_walls_mm(&bar, 4, &wall, 0, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "walls");
}

static void machined(void) {
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER;
  double dial = 7;
  row = "machined";
  SIZED(GaugepointBoreSizes, gaugepoint_bore_sizes(85.96, 0.03, 0.02, &out, &e));
  SIZED(GaugepointFinishCheck, gaugepoint_finish_check(86, 86, 0.005, &out, &e));
  TOLD(gaugepoint_dial_reading_mm(86, NULL, &dial, &e), null, "gauging");
  CHECK(isnan(dial));
  TOLD(gaugepoint_boring_order(4, NULL, &e), null, "order");
  size_t order = 7;
  TOLD(gaugepoint_boring_order(SIZE_MAX, &order, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "cylinders");
  CHECK(order == 7);
}

static void assembled(void) {
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER;
  const GaugepointGapReading reading = {0, 0, 0.3, 0, 0, 0, 0};
  const GaugepointWantedGap wanted = {1, 0, 0, 0, 0.4, 0, 0, 0, 0, 0, 0, 0};
  const GaugepointGasketBand band = {0.5, 0.7, 1.3};
  const GaugepointGasketConditions conditions = {0, 0, 0.001, 0, 0};
  const double readings[2] = {0.6, 0.6};
  const GaugepointPart part = {400, 3};
  const GaugepointFinishValue values[6] = {{0, 0, 0, 0, 0, 0, 0, 0}};
  const GaugepointLiner liner = {8, {8, 8, 8, 8}, 0, 0, 0};
  const GaugepointShim shim = {0.1, 0, 0, 0};
  const GaugepointWantedProtrusion protrusion = {0, 0, 1, 0.05, 0.12, 0.02, 0, 0};
  const GaugepointBlock block = {0, 0, 0, 0, 86, 0, 0, 40, 2, 0, {0, 0, 0, 0, 0, 0, 0, 0}};
  const GaugepointWornBore bore = {86.2, 0.004, 0, 0, 0, 0, 0};
  const GaugepointStep step = {0.25, 50, 0, 0, 0, 0};
  GaugepointCut cut;
  GaugepointShimmed shimmed;
  GaugepointShimRuledOut reason;
  GaugepointConsequence does;
  GaugepointOversizeChoice ways[3];
  GaugepointBoreAction actions[3];
  GaugepointOversizeRuledOut reasons[12];
  double first = 7, second = 7;
  row = "assembled";
  SIZED(GaugepointFiling, gaugepoint_filing(&reading, 86, &wanted, &out, &e));
  SIZED(GaugepointGasketGrade, gaugepoint_gasket_grade(readings, 1, &band, 1, &conditions, &first, &second, &out, &e));
  SIZED(GaugepointCutList, gaugepoint_cut_list(&part, 1, 1, 2, &first, &cut, &out, &e));
  SIZED(GaugepointFinishFound, gaugepoint_finish(values, GAUGEPOINT_RULE_PROVEN, 0, &out, &e));
  SIZED(GaugepointShimPlan, gaugepoint_shim_plan(&liner, 1, &shim, 1, &protrusion, &shimmed, &reason, 1, &out, &e));
  SIZED(GaugepointOversizes, gaugepoint_oversizes(&block, &bore, 1, &step, 1, &does, ways, 3, actions, reasons, 12, &out, &e));
  RECORD(GaugepointFiling, filed);
  TOLD(gaugepoint_filing(NULL, 86, &wanted, &filed, &e), null, "reading");
  TOLD(gaugepoint_filing(&reading, 86, NULL, &filed, &e), null, "wanted");
  GaugepointGapReading odd = reading;
  odd.has_gauge = 2;
  TOLD(gaugepoint_filing(&odd, 86, &wanted, &filed, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "has_gauge");
  RECORD(GaugepointGasketGrade, grade);
  first = 7;
  TOLD(gaugepoint_gasket_grade(NULL, 1, &band, 1, &conditions, &first, &second, &grade, &e), null, "projections_mm");
  TOLD(gaugepoint_gasket_grade(readings, SIZE_MAX, &band, 1, &conditions, &first, &second, &grade, &e),
       GAUGEPOINT_STATUS_OUT_OF_RANGE, "projections_mm");
  TOLD(gaugepoint_gasket_grade(readings, 1, &band, 1, NULL, &first, &second, &grade, &e), null, "conditions");
  RECORD(GaugepointCutList, list);
  TOLD(gaugepoint_cut_list(&part, 1, 0, 2, &first, &cut, &list, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "parts");
  TOLD(gaugepoint_cut_list(&part, SIZE_MAX, 2, 2, &first, &cut, &list, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "assemblies");
  TOLD(gaugepoint_bob_weight_g(NULL, &second, &e), null, "pin");
  CHECK(first == 7 && isnan(second));
  RECORD(GaugepointFinishFound, found);
  TOLD(gaugepoint_finish(NULL, GAUGEPOINT_RULE_PROVEN, 0, &found, &e), null, "values");
  TOLD(gaugepoint_finish(values, 9, 0, &found, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "rule");
  RECORD(GaugepointShimPlan, plan);
  GaugepointShim few = shim;
  few.has_available = 2;
  TOLD(gaugepoint_shim_plan(&liner, 1, &few, 1, &protrusion, &shimmed, &reason, 1, &plan, &e),
       GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "shims/0/has_available");
  few.has_available = 1;
  TOLD(gaugepoint_shim_plan(&liner, 1, &few, 1, &protrusion, &shimmed, &reason, 0, &plan, &e),
       GAUGEPOINT_STATUS_CONTRADICTION, "room");
  RECORD(GaugepointOversizes, ways_found);
  TOLD(gaugepoint_oversizes(&block, &bore, 1, &step, 1, &does, ways, 1, actions, reasons, 12, &ways_found, &e),
       GAUGEPOINT_STATUS_CONTRADICTION, "choice_room");
  TOLD(gaugepoint_oversizes(NULL, &bore, 1, &step, 1, &does, ways, 3, actions, reasons, 12, &ways_found, &e), null, "block");
}

static void exact_lengths(void) {
  size_t page = (size_t)sysconf(_SC_PAGESIZE);
  char *pages = mmap(NULL, 2 * page, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
  double *at = (double *)(void *)(pages + page - sizeof study_values);
  GaugepointStudy s;
  GaugepointSample sample_of;
  GaugepointOneWay a;
  const size_t two[] = {4, 4};
  row = "exact_lengths";
  CHECK(pages != MAP_FAILED && mprotect(pages + page, page, PROT_NONE) == 0);
  memcpy(at, study_values, sizeof study_values);
  s.struct_size = sizeof s;
  sample_of.struct_size = sizeof sample_of;
  a.struct_size = sizeof a;
  CHECK(gaugepoint_study_by_ranges(at, 2, 2, 2, &s, NULL) == GAUGEPOINT_STATUS_OK && s.has_table == 0);
  CHECK(gaugepoint_study_by_variance(at, 2, 2, 2, 2, 0, 0, &s, NULL) == GAUGEPOINT_STATUS_OK && s.pooled == 1);
  CHECK(gaugepoint_sample(at, 8, &sample_of, NULL) == GAUGEPOINT_STATUS_OK && sample_of.count == 8);
  CHECK(gaugepoint_one_way(at, 8, two, 2, &a, NULL) == GAUGEPOINT_STATUS_OK && a.has_f == 1);
  munmap(pages, 2 * page);
}

int main(void) {
  samples();
  groups();
  studies();
  biases();
  charts();
  risks();
  acceptances();
  before_measuring();
  sizes();
  fits();
  sections();
  pistons();
  clean_ups();
  walls();
  machined();
  assembled();
  exact_lengths();
  return finish();
}
