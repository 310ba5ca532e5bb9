/* budget FOLDER: uncertain quantities against uncertainty.csv, refused budgets, and what a mistaken caller passes.
 * budget FOLDER FILE: the report on a budget, as the library gives it, to standard output. */
#include "check.h"

static double values[3][8];
static int counts[3];

static int numbers(char *text, double *x) {
  int count = 0;
  for (char *next = text; count < 8; next++, count++) {
    x[count] = strtod(next, &next);
    if (*next != '/') {
      CHECK(*next == '\0');
      return count + 1;
    }
  }
  return count;
}

static int32_t shape_of(const char *word) {
  const char *words[] = {"rectangular", "triangular", "trapezoidal", "curvilinear_trapezoid", "arcsine"};
  for (int k = 0; k < 5; k++) {
    if (same(word, words[k])) {
      return k + 1;
    }
  }
  return 0;
}

static int32_t call(const char *function, const char *first, int parts, double *out, GaugepointError *e) {
  double a = values[0][0], b = values[1][0], c = values[2][0];
  if (same(function, "coverage_factor")) {
    return gaugepoint_coverage_factor(a, b, out, e);
  }
  if (same(function, "effective_dof")) {
    CHECK(counts[0] == counts[1]);
    return gaugepoint_effective_dof(values[0], values[1], (size_t)counts[0], out, e);
  }
  if (same(function, "numerical_tolerance")) {
    return gaugepoint_numerical_tolerance(a, (int32_t)b, out, e);
  }
  CHECK(same(function, "standard_uncertainty"));
  return gaugepoint_standard_uncertainty(shape_of(first), b, parts == 3, c, out, e);
}

static void flat_row(char *function, char *arguments, const char *expected, const char *tolerance) {
  char *cells[3] = {arguments, NULL, NULL};
  int parts = 0;
  double out = 0.0;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  for (char *cell = strtok(arguments, ";"); cell != NULL && parts < 3; cell = strtok(NULL, ";")) {
    cells[parts] = cell;
    counts[parts] = parts == 0 && shape_of(cell) ? 0 : numbers(cell, values[parts]);
    parts++;
  }
  int32_t status = call(function, cells[0], parts, &out, &e);
  if (strncmp(expected, "error:", 6) == 0) {
    char said[400];
    snprintf(said, sizeof said, "error:%s %s", gaugepoint_status_name(status), e.field);
    CHECK(same(said, expected));
    CHECK(isnan(out));
    return;
  }
  CHECK(status == GAUGEPOINT_STATUS_OK);
  CHECK(same(expected, "inf") ? isinf(out) : fabs(out - strtod(expected, NULL)) <= strtod(tolerance, NULL));
  printf("%s %.17g\n", row, out);
}

static void flat(const char *folder) {
  size_t length;
  char *text = file_text(folder, "uncertainty.csv", &length), *rest = text, *line, *cells[6];
  int rows = 0;
  next_line(&rest);
  while ((line = next_line(&rest)) != NULL) {
    int found = columns(line, cells, 6);
    row = cells[0];
    CHECK(found == 6 && cells[5][0] != '\0');
    flat_row(cells[1], cells[2], cells[3], cells[4]);
    rows++;
  }
  free(text);
  printf("rows %d\n", rows);
}

static void refused_row(const char *folder, const char *name, const char *kind, const char *path) {
  char file[200];
  size_t length, report_length = 77;
  char *report = (char *)&length;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  snprintf(file, sizeof file, "budgets/refused/%s.json", name);
  char *text = file_text(folder, file, &length);
  int32_t status = gaugepoint_budget_evaluate(text, length, &report, &report_length, &e);
  free(text);
  CHECK(same(gaugepoint_status_name(status), kind));
  CHECK(same(e.field, path) && e.reason[0] != '\0');
  CHECK(report == (char *)&length && report_length == 77);
}

static void refused(const char *folder) {
  size_t length;
  char *text = file_text(folder, "budgets/refused.csv", &length), *rest = text, *line, *cells[4];
  int rows = 0;
  next_line(&rest);
  while ((line = next_line(&rest)) != NULL) {
    CHECK(columns(line, cells, 4) == 4);
    row = cells[0];
    refused_row(folder, cells[0], cells[1], cells[2]);
    rows++;
  }
  free(text);
  printf("refused %d\n", rows);
}

#define WRONG(call, expected, name) \
  do { \
    GaugepointError e = GAUGEPOINT_ERROR_INIT; \
    out = 0.0; \
    CHECK((call) == (expected)); \
    CHECK(e.status == (expected) && same(e.field, name) && e.reason[0] != '\0'); \
    CHECK(isnan(out)); \
  } while (0)

static void misuse(void) {
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER, choice = GAUGEPOINT_STATUS_UNKNOWN_CHOICE;
  const int32_t range = GAUGEPOINT_STATUS_OUT_OF_RANGE, rectangular = GAUGEPOINT_BOUNDED_RECTANGULAR;
  const double two[] = {1.0, 2.0};
  double out;
  row = "misuse";
  WRONG(gaugepoint_standard_uncertainty(0, 1.0, 0, NAN, &out, &e), choice, "shape");
  WRONG(gaugepoint_standard_uncertainty(6, 1.0, 0, NAN, &out, &e), choice, "shape");
  WRONG(gaugepoint_standard_uncertainty(rectangular, 1.0, 2, NAN, &out, &e), choice, "has_parameter");
  WRONG(gaugepoint_standard_uncertainty(rectangular, 1.0, 1, 0.5, &out, &e), GAUGEPOINT_STATUS_CONTRADICTION,
        "has_parameter");
  WRONG(gaugepoint_standard_uncertainty(GAUGEPOINT_BOUNDED_TRAPEZOIDAL, 1.0, 0, 0.5, &out, &e),
        GAUGEPOINT_STATUS_MISSING_FIELD, "has_parameter");
  WRONG(gaugepoint_effective_dof(NULL, two, 2, &out, &e), null, "contributions");
  WRONG(gaugepoint_effective_dof(two, NULL, 2, &out, &e), null, "dofs");
  WRONG(gaugepoint_effective_dof(two, two, 0, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "contributions");
  WRONG(gaugepoint_effective_dof(two, two, SIZE_MAX, &out, &e), range, "contributions");
  WRONG(gaugepoint_numerical_tolerance(1.0, -1, &out, &e), range, "digits");
  WRONG(gaugepoint_numerical_tolerance(1.0, 258, &out, &e), range, "digits");
  CHECK(gaugepoint_coverage_factor(0.95, 5.0, NULL, NULL) == null);

  char *report = NULL;
  size_t length = 0;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  CHECK(gaugepoint_budget_evaluate(NULL, 3, &report, &length, &e) == null && same(e.field, "budget"));
  CHECK(gaugepoint_budget_evaluate("{}", SIZE_MAX, &report, &length, &e) == GAUGEPOINT_STATUS_TOO_LARGE);
  CHECK(gaugepoint_budget_evaluate("{}", 2, NULL, &length, &e) == null && same(e.field, "report"));
  CHECK(gaugepoint_budget_evaluate("{}", 2, &report, NULL, &e) == null && same(e.field, "report_length"));
  CHECK(gaugepoint_budget_evaluate("{\xff}", 3, &report, &length, &e) == GAUGEPOINT_STATUS_NOT_UTF8);
  CHECK(gaugepoint_budget_evaluate("{}", 2, &report, &length, NULL) == GAUGEPOINT_STATUS_MISSING_FIELD);
  CHECK(report == NULL && length == 0);
}

static int written(const char *file) {
  size_t length, report_length = 0;
  char *report = NULL, *text = file_text("", file, &length);
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  int32_t status = gaugepoint_budget_evaluate(text, length, &report, &report_length, &e);
  free(text);
  if (status != GAUGEPOINT_STATUS_OK) {
    fprintf(stderr, "%s: %s\n", file, e.message);
    return 1;
  }
  int whole = fwrite(report, 1, report_length, stdout) == report_length && strlen(report) == report_length;
  gaugepoint_text_free(report);
  return whole ? 0 : 1;
}

int main(int count, char **words) {
  if (count == 3) {
    return written(words[2]);
  }
  if (count != 2) {
    return 2;
  }
  flat(words[1]);
  refused(words[1]);
  misuse();
  return finish();
}
