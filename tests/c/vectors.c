/* vectors FOLDER: the flat functions against flat.csv, and decisions against the normal distribution. */
#include "check.h"

static int32_t call(const char *function, const double *x, int count, double *out, GaugepointError *error) {
  if (same(function, "size_at_20_mm") && count == 6) {
    return gaugepoint_size_at_20_mm(x[0], x[1], x[2], x[3], x[4], x[5], out, error);
  }
  if (same(function, "bench_clearance_mm") && count == 2) {
    return gaugepoint_bench_clearance_mm(x[0], x[1], out, error);
  }
  if (same(function, "running_clearance_mm") && count == 6) {
    return gaugepoint_running_clearance_mm(x[0], x[1], x[2], x[3], x[4], x[5], out, error);
  }
  fprintf(stderr, "%s: no function %s of %d\n", row, function, count);
  exit(2);
}

static int numbers(char *text, double *x, int most) {
  int count = 0;
  for (char *cell = strtok(text, ";"); cell != NULL && count < most; cell = strtok(NULL, ";")) {
    char *end;
    x[count++] = strtod(cell, &end);
    CHECK(*end == '\0');
  }
  return count;
}

static void refused(int32_t status, double out, const GaugepointError *error, const char *kind) {
  CHECK(same(gaugepoint_status_name(status), kind));
  CHECK(isnan(out));
  CHECK(error->status == status);
  CHECK(error->field[0] != '\0' && error->reason[0] != '\0');
  CHECK(strstr(error->message, error->field) == error->message);
  CHECK(strstr(error->message, error->reason) != NULL);
}

static void flat_row(char *function, char *arguments, const char *expected, const char *tolerance) {
  double x[8], out = 0.0, again = 0.0;
  GaugepointError error = GAUGEPOINT_ERROR_INIT, untouched = GAUGEPOINT_ERROR_INIT;
  int count = numbers(arguments, x, 8);
  int32_t status = call(function, x, count, &out, &error);
  CHECK(call(function, x, count, &again, NULL) == status);
  if (strncmp(expected, "error:", 6) == 0) {
    refused(status, out, &error, expected + 6);
    CHECK(isnan(again));
    return;
  }
  CHECK(status == GAUGEPOINT_STATUS_OK);
  CHECK(fabs(out - strtod(expected, NULL)) <= strtod(tolerance, NULL));
  CHECK(memcmp(&out, &again, sizeof out) == 0);
  CHECK(memcmp(&error, &untouched, sizeof error) == 0);
  /* the bits, for the comparison with the other hosts */
  printf("%s %.17g\n", row, out);
}

static void flat(const char *folder) {
  size_t length;
  char *text = file_text(folder, "flat.csv", &length), *rest = text, *line, *cells[6];
  int rows = 0;
  next_line(&rest); /* the names of the columns */
  while ((line = next_line(&rest)) != NULL) {
    int found = columns(line, cells, 6);
    row = cells[0];
    CHECK(found == 6 && cells[5][0] != '\0');
    if (found == 6) {
      flat_row(cells[1], cells[2], cells[3], cells[4]);
      rows++;
    }
  }
  free(text);
  printf("rows %d\n", rows);
}

/* P(Z < 1) and P(Z < 2) of the standard normal distribution, as tabulated to 15 places by Abramowitz and Stegun, table 26.1. */
#define BELOW_1 0.841344746068543
#define BELOW_2 0.977249868051821

typedef struct {
  const char *id;
  double value, u;
  int32_t has_lower;
  double lower;
  int32_t has_upper;
  double upper;
  int32_t rule;
  double at_least;
  int32_t result;
  double probability;
} Decided;

/* Values 1 um from a limit, u = 1 um or 0.5 um. Guard band of 1.65 u: ISO 14253-1, of U = 2 u: its edition of 1998; simple
   acceptance has none. A tolerance of 10 um is 5 times the interval 2 U = 2 um (ASME B89.7.3.1, by hand). */
static const Decided decided[] = {
  {"upper_2u", 86.019, 0.0005, 0, NAN, 1, 86.020, GAUGEPOINT_RULE_PROVEN, 0.95, GAUGEPOINT_CONFORMITY_CONFORMS, BELOW_2},
  {"upper_1u", 86.019, 0.001, 0, NAN, 1, 86.020, GAUGEPOINT_RULE_PROVEN, 0.95, GAUGEPOINT_CONFORMITY_NOT_PROVEN, BELOW_1},
  {"upper_1u_simple", 86.019, 0.001, 0, NAN, 1, 86.020, GAUGEPOINT_RULE_SIMPLE_ACCEPTANCE, 0.95,
   GAUGEPOINT_CONFORMITY_CONFORMS, BELOW_1},
  {"upper_2u_expanded", 86.019, 0.0005, 0, NAN, 1, 86.020, GAUGEPOINT_RULE_EXPANDED_GUARD_BAND, 0.95,
   GAUGEPOINT_CONFORMITY_CONFORMS, BELOW_2},
  {"upper_1u_expanded", 86.019, 0.001, 0, NAN, 1, 86.020, GAUGEPOINT_RULE_EXPANDED_GUARD_BAND, 0.95,
   GAUGEPOINT_CONFORMITY_NOT_PROVEN, BELOW_1},
  {"both_2u_ratio_5", 86.019, 0.0005, 1, 86.010, 1, 86.020, GAUGEPOINT_RULE_SIMPLE_ACCEPTANCE_BY_RATIO, 5.0,
   GAUGEPOINT_CONFORMITY_CONFORMS, BELOW_2},
  {"both_2u_ratio_6", 86.019, 0.0005, 1, 86.010, 1, 86.020, GAUGEPOINT_RULE_SIMPLE_ACCEPTANCE_BY_RATIO, 6.0,
   GAUGEPOINT_CONFORMITY_NOT_PROVEN, BELOW_2},
  {"upper_1u_80", 86.019, 0.001, 0, NAN, 1, 86.020, GAUGEPOINT_RULE_CONFORMANCE_PROBABILITY, 0.8,
   GAUGEPOINT_CONFORMITY_CONFORMS, BELOW_1},
  {"upper_1u_90", 86.019, 0.001, 0, NAN, 1, 86.020, GAUGEPOINT_RULE_CONFORMANCE_PROBABILITY, 0.9,
   GAUGEPOINT_CONFORMITY_NOT_PROVEN, BELOW_1},
  {"lower_2u", 86.001, 0.0005, 1, 86.0, 0, NAN, GAUGEPOINT_RULE_PROVEN, 0.95, GAUGEPOINT_CONFORMITY_CONFORMS, BELOW_2},
  {"lower_outside", 85.999, 0.0005, 1, 86.0, 0, NAN, GAUGEPOINT_RULE_PROVEN, 0.95,
   GAUGEPOINT_CONFORMITY_DOES_NOT_CONFORM, 1.0 - BELOW_2},
  {"both_2u", 86.001, 0.0005, 1, 86.0, 1, 86.002, GAUGEPOINT_RULE_PROVEN, 0.95, GAUGEPOINT_CONFORMITY_CONFORMS,
   2.0 * BELOW_2 - 1.0},
};

static void decisions(void) {
  for (size_t k = 0; k < sizeof decided / sizeof decided[0]; k++) {
    const Decided *d = &decided[k];
    int32_t result = 0;
    double probability = 0.0;
    row = d->id;
    CHECK(gaugepoint_decide_mm(d->value, d->u, d->has_lower, d->lower, d->has_upper, d->upper, d->rule, d->at_least,
                               &result, &probability, NULL) == GAUGEPOINT_STATUS_OK);
    CHECK(result == d->result);
    /* the difference of two sizes in mm has 1e-14 of rounding, which is 1e-11 of an uncertainty */
    CHECK(fabs(probability - d->probability) <= 2e-11);
  }
}

int main(int count, char **words) {
  if (count != 2) {
    return 2;
  }
  flat(words[1]);
  decisions();
  return finish();
}
