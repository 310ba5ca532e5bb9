/* vectors FOLDER: the flat functions against flat.csv, and decisions against the normal distribution. */
#include "check.h"
#include "flat.h"

#define ROWS 3
/* most parameters of a function */
#define MOST 11

/* A function of the library, and its number. */
static const Flat *found(const char *name, int32_t *number) {
  for (size_t k = 0; k < sizeof flat_functions / sizeof flat_functions[0]; k++) {
    *number = (int32_t)k + 1;
    if (same(flat_functions[k].name, name)) {
      return &flat_functions[k];
    }
  }
  fprintf(stderr, "%s: no function %s\n", row, name);
  exit(2);
}

/* Does every row have these bits? */
static int all_are(const double *out, double value) {
  return memcmp(&out[0], &value, sizeof value) == 0 && memcmp(&out[1], &value, sizeof value) == 0 && memcmp(&out[2], &value, sizeof value) == 0;
}

/* Arrays: the bits and statuses of one row; in the place of a parameter; without statuses nothing is written when a row is refused. */
static void arrays(const Flat *f, const double *x, int32_t status, double one) {
  double column[MOST][ROWS], out[ROWS];
  const double *columns[MOST];
  int32_t statuses[ROWS] = {7, 7, 7};
  for (int p = 0; p < f->parameters; p++) {
    columns[p] = column[p];
    column[p][0] = column[p][1] = column[p][2] = x[p];
  }
  CHECK(f->array(columns, ROWS, out, statuses, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(all_are(out, one) && statuses[0] == status && statuses[1] == status && statuses[2] == status);
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  out[0] = out[1] = out[2] = 7.0;
  CHECK(f->array(columns, ROWS, out, NULL, &e) == status && e.status == status);
  CHECK(all_are(out, status == GAUGEPOINT_STATUS_OK ? one : 7.0));
  CHECK(status == GAUGEPOINT_STATUS_OK || same(e.field + strlen(e.field) - 2, "/0"));
  for (int p = 0; p < f->parameters; p++) {
    double before = x[p];
    CHECK(f->array(columns, ROWS, column[p], NULL, NULL) == status);
    CHECK(all_are(column[p], status == GAUGEPOINT_STATUS_OK ? one : before));
    column[p][0] = column[p][1] = column[p][2] = before;
    CHECK(f->array(columns, ROWS, column[p], statuses, NULL) == GAUGEPOINT_STATUS_OK && all_are(column[p], one));
    column[p][0] = column[p][1] = column[p][2] = before;
  }
}

/* The fields of structures from the last to the first, one number for all rows, and a result beside the fields; nothing aligned. */
static void strided(int32_t number, const Flat *f, const double *x, int32_t status, double one) {
  enum { STEP = (MOST + 1) * sizeof(double) };
  char memory[1 + ROWS * STEP + ROWS * 5];
  GaugepointColumn columns[MOST];
  for (int p = 0; p < f->parameters; p++) {
    for (int k = 0; k < ROWS; k++) {
      memcpy(memory + 1 + k * STEP + p * sizeof(double), &x[p], sizeof(double));
    }
    columns[p].values = (const double *)(const void *)(memory + 1 + (ROWS - 1) * STEP + p * sizeof(double));
    columns[p].stride = -STEP;
  }
  columns[0].values = x;
  columns[0].stride = 0;
  double *out = (double *)(void *)(memory + 1 + (ROWS - 1) * STEP + MOST * sizeof(double));
  int32_t *statuses = (int32_t *)(void *)(memory + 1 + ROWS * STEP);
  size_t count = (size_t)f->parameters;
  CHECK(gaugepoint_flat_strided(number, columns, count, ROWS, out, -STEP, statuses, 5, NULL) == GAUGEPOINT_STATUS_OK);
  for (int k = 0; k < ROWS; k++) {
    int32_t told;
    memcpy(&told, memory + 1 + ROWS * STEP + k * 5, sizeof told);
    CHECK(told == status);
    CHECK(memcmp(memory + 1 + k * STEP + MOST * sizeof(double), &one, sizeof one) == 0);
  }
  CHECK(gaugepoint_flat_strided(number, columns, count, ROWS, out, -STEP, NULL, 0, NULL) == status);
}

/* What is asked wrongly is told, and nothing is written. */
static void misused(void) {
  const double bores[4] = {86.1, 86.2, 86.3, 86.4}, pistons[4] = {86.0, 86.0, 0.0, 86.0};
  double out[5] = {7, 7, 7, 7, 7};
  int32_t statuses[4] = {7, 7, 7, 7};
  row = "misused";
  TOLD(gaugepoint_bench_clearance_mm_array(NULL, pistons, 4, out, NULL, &e), GAUGEPOINT_STATUS_NULL_POINTER, "bore_mm");
  TOLD(gaugepoint_bench_clearance_mm_array(bores, NULL, 4, out, NULL, &e), GAUGEPOINT_STATUS_NULL_POINTER, "piston_mm");
  TOLD(gaugepoint_bench_clearance_mm_array(bores, pistons, 4, NULL, NULL, &e), GAUGEPOINT_STATUS_NULL_POINTER, "out");
  TOLD(gaugepoint_bench_clearance_mm_array(bores, pistons, SIZE_MAX, out, NULL, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "count");
  TOLD(gaugepoint_bench_clearance_mm_array(bores, pistons, GAUGEPOINT_MOST_VALUES + 1, out, NULL, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "count");
  /* a blank of a sheet is 0 */
  TOLD(gaugepoint_bench_clearance_mm_array(bores, pistons, 4, out, NULL, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "piston_mm/2");
  TOLD(gaugepoint_bench_clearance_mm_array(out, pistons, 4, out + 1, NULL, &e), GAUGEPOINT_STATUS_CONTRADICTION, "out");
  TOLD(gaugepoint_bench_clearance_mm_array(bores, pistons, 2, out, (int32_t *)(void *)out, &e), GAUGEPOINT_STATUS_CONTRADICTION, "row_status");
  CHECK(gaugepoint_bench_clearance_mm_array(bores, pistons, 0, out, NULL, NULL) == GAUGEPOINT_STATUS_OK);
  /* empty arrays may all have one address */
  CHECK(gaugepoint_bench_clearance_mm_array(out, out, 0, out, (int32_t *)(void *)out, NULL) == GAUGEPOINT_STATUS_OK);
  GaugepointColumn columns[2] = {{bores, sizeof(double)}, {pistons, 0}};
  int32_t bench;
  found("bench_clearance_mm", &bench);
  TOLD(gaugepoint_flat_strided(0, columns, 2, 4, out, 8, NULL, 0, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "function");
  TOLD(gaugepoint_flat_strided(-1, columns, 2, 4, out, 8, NULL, 0, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "function");
  TOLD(gaugepoint_flat_strided(gaugepoint_flat_count() + 1, columns, 2, 4, out, 8, NULL, 0, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "function");
  TOLD(gaugepoint_flat_strided(bench, NULL, 2, 4, out, 8, NULL, 0, &e), GAUGEPOINT_STATUS_NULL_POINTER, "columns");
  TOLD(gaugepoint_flat_strided(bench, columns, 1, 4, out, 8, NULL, 0, &e), GAUGEPOINT_STATUS_CONTRADICTION, "column_count");
  TOLD(gaugepoint_flat_strided(bench, columns, 2, 4, out, 0, NULL, 0, &e), GAUGEPOINT_STATUS_CONTRADICTION, "out");
  TOLD(gaugepoint_flat_strided(bench, columns, 2, 4, out, PTRDIFF_MAX, NULL, 0, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "out");
  TOLD(gaugepoint_flat_strided(bench, columns, 2, 4, out, 8, statuses, 2, &e), GAUGEPOINT_STATUS_CONTRADICTION, "row_status");
  for (int k = 0; k < 5; k++) {
    CHECK(out[k] == 7.0);
  }
  CHECK(statuses[0] == 7 && statuses[3] == 7);
  /* the others are computed */
  CHECK(gaugepoint_bench_clearance_mm_array(bores, pistons, 4, out, statuses, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(statuses[1] == GAUGEPOINT_STATUS_OK && statuses[2] == GAUGEPOINT_STATUS_OUT_OF_RANGE && statuses[3] == GAUGEPOINT_STATUS_OK);
  CHECK(out[3] == gaugepoint_bench_clearance_mm_v(86.4, 86.0) && isnan(out[2]) && out[4] == 7.0);
}

/* Names of the list are those of the functions here. */
static void listed(void) {
  size_t all = sizeof flat_functions / sizeof flat_functions[0];
  CHECK((size_t)gaugepoint_flat_count() == all);
  for (int32_t k = 1; k <= (int32_t)all; k++) {
    const Flat *f = &flat_functions[k - 1];
    row = f->name;
    CHECK(same(gaugepoint_flat_name(k), f->name) && strlen(gaugepoint_flat_meaning(k)) > 20);
    for (int32_t p = 0; p < f->parameters; p++) {
      CHECK(strlen(gaugepoint_flat_parameter(k, p)) > 2);
    }
    CHECK(gaugepoint_flat_parameter(k, f->parameters) == NULL && gaugepoint_flat_parameter(k, -1) == NULL);
  }
  const int32_t none[] = {0, -1, INT32_MIN, INT32_MAX, (int32_t)all + 1};
  for (int k = 0; k < 5; k++) {
    CHECK(gaugepoint_flat_name(none[k]) == NULL && gaugepoint_flat_meaning(none[k]) == NULL && gaugepoint_flat_parameter(none[k], 0) == NULL);
  }
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
  double x[MOST], out = 0.0, again = 0.0;
  GaugepointError error = GAUGEPOINT_ERROR_INIT, untouched = GAUGEPOINT_ERROR_INIT;
  int count = numbers(arguments, x, MOST);
  int32_t number;
  const Flat *f = found(function, &number);
  CHECK(count == f->parameters);
  int32_t status = f->call(x, &out, &error);
  CHECK(f->call(x, &again, NULL) == status);
  arrays(f, x, status, out);
  strided(number, f, x, status, out);
  double value = f->value(x);
  CHECK(memcmp(&value, &out, sizeof out) == 0);
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
  listed();
  misused();
  decisions();
  return finish();
}
