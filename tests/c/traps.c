/* traps JOB: a host that unmasks floating-point exceptions (some spreadsheets and Fortran programs do) is not killed by any number; one that rounds
   otherwise or flushes small numbers to zero gets the same bits; each finds its state as it was, flags of exceptions included. */
#define _GNU_SOURCE
#include "check.h"

#include <fenv.h>
#ifdef __SSE2__
#include <xmmintrin.h>
#endif

#define TRAPS (FE_INVALID | FE_DIVBYZERO | FE_OVERFLOW)

/* 5e-324 is the smallest number there is; 86 and 1e-5 are good ones */
static const double odd[] = {NAN, -NAN, INFINITY, -INFINITY, 0.0, -0.0, 5e-324, -5e-324, DBL_MIN, 1e-200, 1e-12, 1e-9,
                             1e-5, 0.95, 20.0, 86.0, 1100.0, 1e9, 1e200, 1e308, -1e308, DBL_MAX, -DBL_MAX};
enum { ODD = sizeof odd / sizeof odd[0] };

static int calls = 0, accepted = 0;

static void outcome(int32_t status, double out) {
  calls++;
  accepted += status == GAUGEPOINT_STATUS_OK;
  CHECK(status == GAUGEPOINT_STATUS_OK ? isfinite(out) : isnan(out));
}

static void six(int32_t (*call)(double, double, double, double, double, double, double *, GaugepointError *),
                const double *good) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  for (int i = 0; i < 6; i++) {
    for (int j = i; j < 6; j++) {
      for (int k = 0; k < ODD * ODD; k++) {
        double x[6], out = 0.0;
        memcpy(x, good, sizeof x);
        x[i] = odd[k % ODD];
        x[j] = odd[k / ODD];
        int32_t status = call(x[0], x[1], x[2], x[3], x[4], x[5], &out, &e);
        outcome(status, out);
      }
    }
  }
}

static void two(void) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  for (int k = 0; k < ODD * ODD; k++) {
    double out = 0.0;
    int32_t status = gaugepoint_bench_clearance_mm(odd[k % ODD], odd[k / ODD], &out, &e);
    outcome(status, out);
  }
}

static void decide(double value, double u, double lower, double upper, double at_least) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  for (int32_t rule = 1; rule <= 5; rule++) {
    for (int32_t limits = 0; limits < 4; limits++) {
      int32_t result = 0;
      double p = 0.0;
      int32_t status = gaugepoint_decide_mm(value, u, limits & 1, lower, limits >> 1, upper, rule, at_least, &result, &p, &e);
      outcome(status, p);
      CHECK(status == GAUGEPOINT_STATUS_OK ? result >= 1 && result <= 3 : result == GAUGEPOINT_CONFORMITY_NOT_JUDGED);
      CHECK(status != GAUGEPOINT_STATUS_OK || (p >= 0.0 && p <= 1.0));
    }
  }
}

static void decisions(void) {
  for (int k = 0; k < ODD * ODD; k++) {
    double a = odd[k % ODD], b = odd[k / ODD];
    decide(a, b, 86.0, 86.1, 0.95);
    decide(86.0, a, b, 86.1, 0.95);
    decide(86.0, a, 85.9, b, 0.95);
    decide(a, b, a, a, 0.95);
    decide(a, 0.001, b, 86.1, 0.95);
    decide(a, 0.001, 86.0, b, 0.95);
    decide(86.0, 0.001, a, b, 0.95);
    decide(86.05, a, 86.0, 86.1, b);
  }
}

/* Arrays of odd numbers: each pair of them among good ones. */
static void arrays(void) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  const size_t sizes[] = {4, 4};
  for (int k = 0; k < ODD * ODD * 28; k++) {
    double v[] = {10, 20, 12, 22.5, 14, 24, 16, 26};
    GaugepointSample sample = {sizeof sample, 0, 0, 0, 0, 0};
    GaugepointOneWay groups;
    GaugepointStudy study;
    int pair = k / (ODD * ODD), i = pair % 7, j = i + 1 + pair / 7 % (7 - i);
    groups.struct_size = sizeof groups;
    study.struct_size = sizeof study;
    v[i] = odd[k % ODD];
    v[j] = odd[k / ODD % ODD];
    int32_t status = gaugepoint_sample(v, 8, &sample, &e);
    outcome(status, status ? NAN : sample.standard_deviation);
    status = gaugepoint_one_way(v, 8, sizes, 2, &groups, &e);
    outcome(status, status ? NAN : groups.pooled_deviation);
    CHECK(status != 0 || (groups.has_f ? isfinite(groups.f) : isnan(groups.f)));
    status = gaugepoint_study_by_ranges(v, 2, 2, 2, &study, &e);
    outcome(status, status ? NAN : study.gauge.deviation);
    status = gaugepoint_study_by_variance(v, 2, 2, 2, 1 + k % 3, k % 3 == 2, 0.25, &study, &e);
    outcome(status, status ? NAN : study.gauge.deviation);
    CHECK(status != 0 || (study.has_categories ? isfinite(study.categories) : isnan(study.categories)));
    CHECK(status != 0 || (study.has_gauge_interval ? isfinite(study.gauge.upper) : isnan(study.gauge.upper)));
    CHECK(status != 0 || (study.has_ratios ? isfinite(study.interaction.p) : isnan(study.interaction.p)));
  }
}

/* Batches whose first block is good, and whose second has an odd number in every column. */
static void batches(void) {
  enum { ROWS = 400 };
  static double x[5][ROWS], bench[ROWS], running[ROWS];
  static int32_t status[ROWS];
  const double good[] = {86.0, 85.9, 22.0, 110.0, 130.0};
  const GaugepointStrainLaw law = {1e-5, 1e-9, 1e-12, -40.0, 450.0};
  for (int c = 0; c < 5; c++) {
    for (int k = 0; k < ROWS; k++) x[c][k] = good[c];
    for (int k = 0; k < ODD; k++) x[c][(150 + 31 * c + k) % ROWS] = odd[k];
  }
  size_t refused = 0;
  int32_t called = gaugepoint_clearances(&law, &law, x[0], x[1], x[2], x[3], x[4], ROWS, bench, running, status, &refused, NULL);
  CHECK(called == GAUGEPOINT_STATUS_OK && refused > 50);
  for (int k = 0; k < ROWS; k++) outcome(status[k], running[k]);
  called = gaugepoint_clearances(&law, &law, x[0], x[1], x[2], x[3], x[4], ROWS, bench, running, NULL, &refused, NULL);
  CHECK(called != GAUGEPOINT_STATUS_OK);
}

/* Laws of odd numbers. */
static void laws(void) {
  const double x[] = {86.0, 85.9, 22.0, 110.0, 130.0};
  for (int k = 0; k < ODD * ODD * 10; k++) {
    double c[] = {1e-5, 1e-9, 1e-12, -40.0, 450.0}, bench = 0.0, running = NAN;
    int pair = k / (ODD * ODD), i = pair % 5, j = (i + 1 + pair / 5) % 5;
    size_t refused = 0;
    GaugepointStrainLaw law;
    c[i] = odd[k % ODD];
    c[j] = odd[k / ODD % ODD];
    memcpy(&law, c, sizeof law);
    int32_t status = gaugepoint_clearances(&law, &law, x, x + 1, x + 2, x + 3, x + 4, 1, &bench, &running, NULL, &refused, NULL);
    outcome(status, running);
  }
}

/* The same with the functions that have numbers beside their array. */
static void biases(void) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  const size_t sizes[] = {2, 2, 4};
  /* the coverage factors take their time: a few of the pairs */
  for (int k = 0; k < ODD * ODD * 4; k++) {
    double v[] = {10, 20, 12, 22.5, 14, 24, 16, 26}, x[] = {10, 20, 12};
    int pair = 9 * (k / (ODD * ODD)), i = pair % 7, j = i + 1 + pair / 7 % (7 - i);
    double a = odd[k % ODD], b = odd[k / ODD % ODD];
    GaugepointBias bias;
    GaugepointLinearity line;
    GaugepointBand band;
    GaugepointChart chart;
    GaugepointPoint points[8];
    bias.struct_size = sizeof bias;
    line.struct_size = sizeof line;
    band.struct_size = sizeof band;
    chart.struct_size = sizeof chart;
    int32_t status = gaugepoint_bias(v, 8, a, b, 0.95, &bias, &e);
    outcome(status, status ? NAN : bias.upper);
    status = gaugepoint_bias(v, 8, 10, a, b, &bias, &e);
    outcome(status, status ? NAN : bias.upper);
    v[i] = a;
    v[j] = b;
    status = gaugepoint_bias(v, 8, 10, i == 0 ? 0.001 : 0.0, 0.95, &bias, &e);
    outcome(status, status ? NAN : bias.upper);
    CHECK(status != 0 || (bias.has_t ? isfinite(bias.t) && bias.p >= 0.0 && bias.p <= 1.0 : isnan(bias.t)));
    status = gaugepoint_linearity(x, sizes, 3, v, 8, 0.95, &line, &e);
    outcome(status, status ? NAN : line.slope);
    CHECK(status != 0 || (line.has_slope_t ? isfinite(line.slope_t) : isnan(line.slope_t)));
    CHECK(status != 0 || (line.has_r_squared ? isfinite(line.r_squared) : isnan(line.r_squared)));
    x[i % 3] = a;
    x[j % 3] = b;
    status = gaugepoint_linearity_band(x, sizes, 3, v, 8, a, 0.95, &band, &e);
    outcome(status, status ? NAN : band.upper);
    status = gaugepoint_control_chart(v, 4, 2, 1 + k % 4, &chart, points, &e);
    outcome(status, status ? NAN : chart.upper);
    status = gaugepoint_control_chart(v, 8, 1, 5 + k % 2, &chart, points, &e);
    outcome(status, status ? NAN : chart.upper);
  }
}

/* Traces of odd numbers: each pair of them among good ones. */
static void traces(void) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  for (int k = 0; k < ODD * ODD * 24; k += 7) {
    double x[] = {43, 0, -43, 0, 30.4, -30.4, 43, 0}, y[] = {0, 43, 0, -43, 30.4, -30.4, 0, 43};
    double z[] = {0, 1, 2, 3, 4, 5, 60, 70}, *of[] = {x, y, z}, out = 0.0;
    GaugepointCircle circle;
    GaugepointCylinder cylinder;
    GaugepointPlane plane;
    GaugepointBoreAxis axis;
    GaugepointSection section;
    GaugepointHarmonic harmonics[8];
    int place = k / (ODD * ODD);
    circle.struct_size = sizeof circle;
    cylinder.struct_size = sizeof cylinder;
    plane.struct_size = sizeof plane;
    axis.struct_size = sizeof axis;
    section.struct_size = sizeof section;
    of[place % 3][place / 3] = odd[k % ODD];
    of[(place + 1) % 3][place % 8] = odd[k / ODD % ODD];
    int32_t choice = 1 + k % 4;
    int32_t status = gaugepoint_fit_circle(x, y, 8, choice, &circle, &e);
    outcome(status, status ? NAN : circle.form.total_mm);
    status = gaugepoint_fit_circle_algebraic(x, y, 8, choice, &circle, &e);
    outcome(status, status ? NAN : circle.form.total_mm);
    status = gaugepoint_fit_cylinder(x, y, z, 8, choice, &cylinder, &e);
    outcome(status, status ? NAN : cylinder.form.total_mm);
    status = gaugepoint_fit_plane(x, y, z, 8, 1 + k % 2, &plane, &e);
    outcome(status, status ? NAN : plane.form.total_mm);
    status = gaugepoint_bore_to_main_line(x, 2, z, 2, &axis, &e);
    outcome(status, status ? NAN : axis.offset_mm);
    status = gaugepoint_section_from_radii(z, x, 8, (size_t)choice, harmonics, 8, &section, &e);
    outcome(status, status ? NAN : section.mean_radius_mm);
    GaugepointHarmonic h = {2, 1, 1, odd[k % ODD], odd[k / ODD % ODD]};
    status = gaugepoint_three_leg_mm(x[0], &h, 1, 30, odd[k % ODD], 120, 240, &out, &e);
    outcome(status, out);
    status = gaugepoint_v_block_factor((size_t)place, odd[k % ODD], odd[k / ODD % ODD], &out, &e);
    outcome(status, out);
  }
}

static void risk(GaugepointItems items, double u, GaugepointInterval tolerance, double wanted) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  GaugepointRisks risks = {sizeof risks, 0, 0, 0};
  GaugepointCapability process = {sizeof process, 0, 0};
  GaugepointInterval accepted;
  int32_t status = gaugepoint_global_risks(&items, u, &tolerance, &tolerance, &risks, &e);
  outcome(status, status ? NAN : risks.consumer + risks.producer);
  CHECK(status != 0 || (risks.conforming > -1e-9 && risks.conforming < 1 + 1e-9));
  status = gaugepoint_acceptance_for_risk(&items, u, &tolerance, wanted, &accepted, &e);
  outcome(status, status ? NAN : accepted.upper);
  status = gaugepoint_acceptance(&tolerance, u, 2, 1, wanted, &accepted, &e);
  outcome(status, status ? NAN : accepted.upper);
  status = gaugepoint_capability(items.first, items.second, &tolerance, &process, &e);
  outcome(status, status ? NAN : process.cpk);
}

static void risks(void) {
  const GaugepointItems good[] = {{1, 0, 86, 0.01, 0}, {2, 0, 85, 87, 0}, {3, 1, 85, 86, 87}, {4, 0, 4, 20, 0}};
  const GaugepointInterval tolerance = {1, 1, 85.5, 86.02};
  for (int k = 0; k < ODD * ODD; k++) {
    double a = odd[k % ODD], b = odd[k / ODD];
    for (int kind = 0; kind < 4; kind++) {
      GaugepointItems items = good[kind];
      GaugepointInterval limits = {kind % 2, 1, a, b};
      items.first = a;
      items.second = b;
      risk(items, 0.005, tolerance, 0.001);
      risk(good[kind], a, tolerance, b);
      risk(good[kind], 0.005, limits, 0.001);
      items = good[kind];
      items.second = a;
      risk(items, b, tolerance, 0.001);
    }
  }
}

/* A job with every number of it replaced in turn by what does not fit. */
static void stacks(void) {
  const double unit[] = {0, 0.01}, bent[] = {0.00135, -0.01, 0.5, 0, 0.99865, 0.02}, shape[] = {0.5, 2, -0.01, 0.02};
  GaugepointContributor all[] = {
      {"a", 1, 0, -0.01, 0.01, 1, 1, GAUGEPOINT_VARIATION_RECTANGULAR, 0, unit, 2},
      {"b", 1, 0, -0.01, 0.01, -1, 1, GAUGEPOINT_VARIATION_BETA, 0, shape, 4},
      {"c", 1, 0, -0.01, 0.01, 1, 1, GAUGEPOINT_VARIATION_NORMAL, 0, unit, 2},
      {"d", 1, 0, -0.01, 0.01, 1, 1, GAUGEPOINT_VARIATION_SKEWED, 0, bent, 6},
  };
  for (size_t first = 0; first < 4; first++) {
    for (size_t count = 1; first + count <= 4; count++) {
      GaugepointStack *stack = NULL;
      CHECK(gaugepoint_stack_new(all + first, count, &stack, NULL) == GAUGEPOINT_STATUS_OK);
      for (int k = 0; k < ODD; k++) {
        double out = 0, below[4], above[4];
        GaugepointTail tail;
        memset(&tail, 0, sizeof tail);
        tail.struct_size = sizeof tail;
        int32_t status = gaugepoint_stack_quantile_above(stack, odd[k], &out, NULL);
        outcome(status, out);
        status = gaugepoint_stack_outside(stack, -INFINITY, odd[k], &tail, NULL);
        outcome(status, status == GAUGEPOINT_STATUS_OK ? tail.above : NAN);
        out = NAN;
        status = gaugepoint_stack_densities(stack, &odd[k], 1, &out, NULL);
        outcome(status, out);
        status = gaugepoint_stack_sensitivities(stack, odd[k], INFINITY, below, above, 4, NULL);
        outcome(status, status == GAUGEPOINT_STATUS_OK ? below[0] : NAN);
        unsigned place = (unsigned)(k % (int)count);
        (void)gaugepoint_stack_set_tolerance(stack, place, odd[k], NULL);
        (void)gaugepoint_stack_set_tolerance(stack, place, 0.01, NULL);
      }
      gaugepoint_stack_free(stack);
    }
  }
}

static void jobs(const char *job, size_t length) {
  const char *numbers[] = {"1e308", "-1e308", "1e400", "5e-324", "1e-30", "0", "999999999999999", "1e30"};
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  char *text = need(length + 64), *report = NULL;
  size_t report_length = 0;
  for (size_t from = 0; from < length; from++) {
    if (strchr("0123456789", job[from]) == NULL || (from > 0 && strchr("0123456789.", job[from - 1]) != NULL)) {
      continue;
    }
    size_t end = from + strspn(job + from, "0123456789.e-");
    for (size_t k = 0; k < sizeof numbers / sizeof numbers[0]; k++) {
      size_t word = strlen(numbers[k]);
      memcpy(text, job, from);
      memcpy(text + from, numbers[k], word);
      memcpy(text + from + word, job + end, length - end);
      int32_t status = gaugepoint_job_assess(text, length - (end - from) + word, 0, &report, &report_length, &e);
      calls++;
      accepted += status == GAUGEPOINT_STATUS_OK;
      if (status == GAUGEPOINT_STATUS_OK) {
        CHECK(strlen(report) == report_length && strstr(report, "null") == NULL);
        gaugepoint_text_free(report);
      }
    }
  }
  free(text);
}

/* one of each shape: with a status, as a value, of arrays, of a record, as a text */
static void some(const char *job, size_t length, double numbers[4], char **report) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  const double bores[3] = {86.035, 86.041, 86.0}, pistons[3] = {86.0, 85.987, 85.9};
  double out[3];
  size_t report_length;
  CHECK(gaugepoint_size_at_20_mm(86.013, 0.001, 21.3, 11.5e-6, 27.7, 20.5e-6, &numbers[0], &e) == GAUGEPOINT_STATUS_OK);
  numbers[1] = gaugepoint_running_clearance_mm_v(86.035, 110.0, 11.4e-6, 86.0, 120.0, 20.5e-6);
  CHECK(gaugepoint_bench_clearance_mm_array(bores, pistons, 3, out, NULL, &e) == GAUGEPOINT_STATUS_OK);
  numbers[2] = out[1];
  CHECK(gaugepoint_coverage_factor(0.95, 7.0, &numbers[3], &e) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_job_assess(job, length, 0, report, &report_length, &e) == GAUGEPOINT_STATUS_OK);
}

static void as_ever(const char *job, size_t length, const double *numbers, const char *report) {
  double here[4];
  char *again;
  some(job, length, here, &again);
  CHECK(memcmp(here, numbers, sizeof here) == 0);
  CHECK(strcmp(again, report) == 0);
  gaugepoint_text_free(again);
}

static void states(const char *job, size_t length) {
  const int modes[] = {FE_UPWARD, FE_DOWNWARD, FE_TOWARDZERO};
  double numbers[4];
  char *report;
  some(job, length, numbers, &report);
  for (size_t k = 0; k < 3; k++) {
    CHECK(fesetround(modes[k]) == 0);
    as_ever(job, length, numbers, report);
    CHECK(fegetround() == modes[k]);
  }
  fesetround(FE_TONEAREST);
#ifdef __SSE2__
  const unsigned own = _mm_getcsr();
  _mm_setcsr(own | 0x8040); /* flushes to zero, and takes what is that small for zero */
  as_ever(job, length, numbers, report);
  CHECK((_mm_getcsr() & 0x8040) == 0x8040);
  _mm_setcsr(own);
#endif
  gaugepoint_text_free(report);
}

int main(int count, char **words) {
  const double size[6] = {86.0, 0.001, 20.0, 11.5e-6, 27.0, 20.5e-6};
  const double running[6] = {86.035, 110.0, 11.4e-6, 86.0, 120.0, 20.5e-6};
  if (count != 2) {
    return 2;
  }
  size_t length;
  char *job = file_text("", words[1], &length);
  feclearexcept(FE_ALL_EXCEPT);
  feenableexcept(TRAPS);
  row = "size";
  six(gaugepoint_size_at_20_mm, size);
  row = "bench";
  two();
  row = "running";
  six(gaugepoint_running_clearance_mm, running);
  row = "decide";
  decisions();
  row = "arrays";
  arrays();
  batches();
  laws();
  row = "biases";
  biases();
  row = "traces";
  traces();
  row = "risks";
  risks();
  row = "stacks";
  stacks();
  row = "jobs";
  jobs(job, length);
  CHECK(fegetexcept() == TRAPS);
  CHECK(fetestexcept(TRAPS) == 0);
  fedisableexcept(TRAPS);
  row = "flags";
  six(gaugepoint_size_at_20_mm, size);
  two();
  risks();
  CHECK(fetestexcept(TRAPS) == 0);
  row = "states";
  states(job, length);
  /* neither side of the boundary was left out */
  CHECK(accepted > 100 && calls - accepted > 1000);
  free(job);
  return finish();
}
