/* traps JOB: a host that unmasks floating-point exceptions (some spreadsheets and Fortran programs do) is not killed by any number. */
#define _GNU_SOURCE
#include "check.h"

#include <fenv.h>

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
  for (int32_t rule = 1; rule <= 3; rule++) {
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

/* A job with every number of it replaced in turn by what does not fit. */
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
  row = "jobs";
  jobs(job, length);
  CHECK(fegetexcept() == TRAPS);
  CHECK(fetestexcept(TRAPS) == 0);
  fedisableexcept(TRAPS);
  /* neither side of the boundary was left out */
  CHECK(accepted > 100 && calls - accepted > 1000);
  free(job);
  return finish();
}
