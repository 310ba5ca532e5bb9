/* batch FOLDER: rows of batch.csv, each alone, then all together in every arrangement of memory; and calls that are wrong. */
#include "check.h"

enum { MOST = 600, NULL_POINTER = 901 };

static const GaugepointStrainLaw iron = {11.4e-6, 0.0, 0.0, -40.0, 450.0}, aluminium = {20.5e-6, 0.0, 0.0, -40.0, 450.0};

static void five(char *text, double *x) {
  int count = 0;
  for (char *cell = strtok(text, ";"); cell != NULL && count < 5; cell = strtok(NULL, ";")) x[count++] = strtod(cell, NULL);
  CHECK(count == 5);
}

static void vector_row(char **cells) {
  double a[5], b[5], x[5], bench = 7.0, running = 7.0;
  int32_t status = 7;
  size_t refused = 7;
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  five(cells[1], a);
  five(cells[2], b);
  five(cells[3], x);
  GaugepointStrainLaw bore, piston;
  memcpy(&bore, a, sizeof bore);
  memcpy(&piston, b, sizeof piston);
  int32_t whole = gaugepoint_clearances(&bore, &piston, x, x + 1, x + 2, x + 3, x + 4, 1, &bench, &running, NULL, &refused, &error);
  if (strncmp(cells[4], "error:", 6) == 0) {
    CHECK(same(gaugepoint_status_name(whole), cells[4] + 6) && error.status == whole && error.field[0] != '\0');
    CHECK(refused == 7);
    /* a law that is refused is refused before any row is looked at */
    CHECK((isnan(bench) && isnan(running)) || (bench == 7.0 && running == 7.0 && strchr(error.field, '/') && strstr(error.field, "law")));
    bench = running = 7.0;
    int32_t rows = gaugepoint_clearances(&bore, &piston, x, x + 1, x + 2, x + 3, x + 4, 1, &bench, &running, &status, &refused, NULL);
    if (rows == GAUGEPOINT_STATUS_OK) CHECK(refused == 1 && status == whole && isnan(bench) && isnan(running));
    else CHECK(rows == whole && refused == 7 && status == 7 && bench == 7.0);
    return;
  }
  CHECK(whole == GAUGEPOINT_STATUS_OK && refused == 0);
  double tolerance = strtod(cells[5], NULL);
  CHECK(fabs(bench - strtod(cells[4], NULL)) <= tolerance);
  CHECK(fabs(running - strtod(strchr(cells[4], ';') + 1, NULL)) <= tolerance);
  printf("%s bench %.17g\n%s running %.17g\n", row, bench, row, running);
}

static void vectors(const char *folder) {
  size_t length;
  char *text = file_text(folder, "batch.csv", &length), *rest = text, *line, *cells[7];
  int count = 0;
  next_line(&rest); /* the names of the columns */
  while ((line = next_line(&rest)) != NULL) {
    int found = columns(line, cells, 7);
    row = cells[0];
    CHECK(found == 7);
    if (found == 7) {
      vector_row(cells);
      count++;
    }
  }
  free(text);
  printf("rows %d\n", count);
}

typedef struct {
  char name[3];
  double bore, piston, parts;
  float note;
  double bore_c, piston_c, bench;
  int32_t status;
  double running;
} Record;

static double x[5][MOST], bench[MOST], running[MOST];
static int32_t statuses[MOST];

static void fill(void) {
  const double from[] = {86.02, 85.96, 18.0, 90.0, 100.0}, step[] = {1e-4, 1.5e-4, 0.02, 0.1, 0.15};
  for (int c = 0; c < 5; c++)
    for (int k = 0; k < MOST; k++) x[c][k] = from[c] + step[c] * k;
  x[0][5] = NAN;
  x[1][300] = 3.385;
  x[3][599] = 1e308;
}

static GaugepointColumn column(const void *values, ptrdiff_t stride) {
  GaugepointColumn out = {values, stride};
  return out;
}

static GaugepointClearanceColumns straight(void) {
  GaugepointClearanceColumns out = {column(x[0], 8), column(x[1], 8), column(x[2], 8), column(x[3], 8), column(x[4], 8)};
  return out;
}

static int same_bits(double a, double b) { return memcmp(&a, &b, sizeof a) == 0; }

/* Fields of structures, backwards, unaligned, in place: the same bits. */
static void arrangements(void) {
  static Record records[MOST];
  static char packed[8 * MOST + 1];
  static double a[MOST], b[MOST], c[MOST];
  static int32_t s[MOST];
  size_t refused = 0;
  row = "straight";
  fill();
  CHECK(gaugepoint_clearances(&iron, &aluminium, x[0], x[1], x[2], x[3], x[4], MOST, bench, running, statuses, &refused, NULL) == 0);
  CHECK(refused == 3 && statuses[5] == GAUGEPOINT_STATUS_NOT_FINITE && statuses[300] == GAUGEPOINT_STATUS_OUT_OF_RANGE);
  CHECK(isnan(bench[5]) && isnan(running[599]) && statuses[6] == 0 && isfinite(running[6]));
  row = "records";
  for (int k = 0; k < MOST; k++) {
    Record r = {"ab", x[0][k], x[1][k], x[2][k], 1.0f, x[3][k], x[4][k], 7.0, 7, 7.0};
    records[k] = r;
  }
  const ptrdiff_t step = sizeof(Record);
  GaugepointClearanceColumns in = {column(&records->bore, step), column(&records->piston, step), column(&records->parts, step),
                                   column(&records->bore_c, step), column(&records->piston_c, step)};
  GaugepointClearancePlaces out = {&records->bench, step, &records->running, step, &records->status, step};
  CHECK(gaugepoint_clearances_strided(&iron, &aluminium, &in, MOST, &out, &refused, NULL) == 0 && refused == 3);
  for (int k = 0; k < MOST; k++) {
    CHECK(same_bits(records[k].bench, bench[k]) && same_bits(records[k].running, running[k]) && records[k].status == statuses[k]);
    CHECK(records[k].note == 1.0f && same(records[k].name, "ab"));
  }
  row = "backwards";
  for (int j = 0; j < 5; j++) (&in.bore_mm)[j] = column(x[j] + MOST - 1, -8);
  GaugepointClearancePlaces back = {a + MOST - 1, -8, b, 8, s, 4};
  CHECK(gaugepoint_clearances_strided(&iron, &aluminium, &in, MOST, &back, &refused, NULL) == 0 && refused == 3);
  for (int k = 0; k < MOST; k++) CHECK(same_bits(a[k], bench[k]) && same_bits(b[MOST - 1 - k], running[k]) && s[MOST - 1 - k] == statuses[k]);
  row = "unaligned";
  in = straight();
  memcpy(packed + 1, x[0], 8 * MOST);
  in.bore_mm = column(packed + 1, 8);
  GaugepointClearancePlaces plain = {a, 8, b, 8, s, 4};
  CHECK(gaugepoint_clearances_strided(&iron, &aluminium, &in, MOST, &plain, &refused, NULL) == 0 && refused == 3);
  for (int k = 0; k < MOST; k++) CHECK(same_bits(a[k], bench[k]) && same_bits(b[k], running[k]));
  row = "in place";
  memcpy(a, x[0], sizeof a);
  memcpy(b, x[4], sizeof b);
  CHECK(gaugepoint_clearances(&iron, &aluminium, a, x[1], x[2], x[3], b, MOST, a, b, s, &refused, NULL) == 0 && refused == 3);
  for (int k = 0; k < MOST; k++) CHECK(same_bits(a[k], bench[k]) && same_bits(b[k], running[k]));
  row = "one temperature";
  const double shop = 21.5;
  for (int k = 0; k < MOST; k++) x[2][k] = c[k] = shop;
  in = straight();
  in.parts_temperature_c = column(&shop, 0);
  CHECK(gaugepoint_clearances(&iron, &aluminium, x[0], x[1], c, x[3], x[4], MOST, bench, running, NULL, &refused, NULL) == GAUGEPOINT_STATUS_NOT_FINITE);
  CHECK(gaugepoint_clearances(&iron, &aluminium, x[0], x[1], c, x[3], x[4], MOST, bench, running, statuses, &refused, NULL) == 0);
  CHECK(gaugepoint_clearances_strided(&iron, &aluminium, &in, MOST, &plain, &refused, NULL) == 0 && refused == 3);
  for (int k = 0; k < MOST; k++) CHECK(same_bits(a[k], bench[k]) && same_bits(b[k], running[k]));
}

/* Without statuses the first refused row refuses all: every result is NaN, and a column that results would replace is kept. */
static void refused_as_a_whole(void) {
  static double a[MOST], b[MOST];
  size_t refused = 7;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  fill();
  x[0][5] = x[0][4];
  for (int k = 0; k < MOST; k++) a[k] = b[k] = 7.0;
  GaugepointClearanceColumns in = straight();
  for (int strided = 0; strided < 2; strided++) {
    /* a stride of two leaves room between */
    GaugepointClearancePlaces out = {a, 8, b, 8, NULL, 0};
    in.bore_mm = column(x[0] + MOST - 1, -8);
    in.piston_mm = column(x[1] + MOST - 1, -8);
    row = strided ? "strided" : "whole";
    int32_t status = strided ? gaugepoint_clearances_strided(&iron, &aluminium, &in, MOST, &out, &refused, &e)
                             : gaugepoint_clearances(&iron, &aluminium, x[0], x[1], x[2], x[3], x[4], MOST, a, b, NULL, &refused, &e);
    CHECK(status == GAUGEPOINT_STATUS_OUT_OF_RANGE && same(e.field, strided ? "piston_mm/299" : "piston_mm/300"));
    CHECK(e.has_value && e.value == 3.385 && strstr(e.did_you_mean, "inches") != NULL && refused == 7);
    for (int k = 0; k < MOST; k++) CHECK(isnan(a[k]) && isnan(b[k]));
    for (int k = 0; k < MOST; k++) a[k] = b[k] = 7.0;
  }
  row = "between";
  /* the places between those of the results are not touched */
  static double apart[2 * MOST], other[2 * MOST];
  for (int k = 0; k < 2 * MOST; k++) apart[k] = other[k] = 7.0;
  GaugepointClearancePlaces every_second = {apart, 16, other, 16, NULL, 0};
  CHECK(gaugepoint_clearances_strided(&iron, &aluminium, &in, MOST, &every_second, &refused, &e) == GAUGEPOINT_STATUS_OUT_OF_RANGE);
  for (int k = 0; k < MOST; k++) CHECK(isnan(apart[2 * k]) && isnan(other[2 * k]) && apart[2 * k + 1] == 7.0 && other[2 * k + 1] == 7.0);
  row = "in place";
  memcpy(a, x[0], sizeof a);
  for (int k = 0; k < MOST; k++) b[k] = 7.0;
  CHECK(gaugepoint_clearances(&iron, &aluminium, a, x[1], x[2], x[3], x[4], MOST, a, b, NULL, &refused, &e) == GAUGEPOINT_STATUS_OUT_OF_RANGE);
  CHECK(memcmp(a, x[0], sizeof a) == 0 && refused == 7);
  for (int k = 0; k < MOST; k++) CHECK(b[k] == 7.0);
}

static void wrong(int32_t status, int32_t expected, const GaugepointError *e, const char *field) {
  CHECK(status == expected && e->status == expected);
  CHECK(same(e->field, field));
}

static void misuse(void) {
  double a[4] = {7, 7, 7, 7}, b[4] = {7, 7, 7, 7};
  int32_t s[4] = {7, 7, 7, 7};
  size_t refused = 7, n = 4;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  const int32_t contradiction = GAUGEPOINT_STATUS_CONTRADICTION, range = GAUGEPOINT_STATUS_OUT_OF_RANGE;
  fill();
  row = "misuse";
#define CALL(l, m, c0, c4, n, a, b, s, r) gaugepoint_clearances(l, m, c0, x[1], x[2], x[3], c4, n, a, b, s, r, &e)
  wrong(CALL(NULL, &iron, x[0], x[4], n, a, b, s, &refused), NULL_POINTER, &e, "bore_law");
  wrong(CALL(&iron, NULL, x[0], x[4], n, a, b, s, &refused), NULL_POINTER, &e, "piston_law");
  wrong(CALL(&iron, &iron, NULL, x[4], n, a, b, s, &refused), NULL_POINTER, &e, "bore_mm");
  wrong(CALL(&iron, &iron, x[0], NULL, n, a, b, s, &refused), NULL_POINTER, &e, "piston_temperature_c");
  wrong(CALL(&iron, &iron, x[0], x[4], n, NULL, b, s, &refused), NULL_POINTER, &e, "bench_mm");
  wrong(CALL(&iron, &iron, x[0], x[4], n, a, NULL, s, &refused), NULL_POINTER, &e, "running_mm");
  wrong(CALL(&iron, &iron, x[0], x[4], n, a, b, s, NULL), NULL_POINTER, &e, "refused");
  wrong(CALL(&iron, &iron, x[0], x[4], GAUGEPOINT_MOST_VALUES + 1, a, b, s, &refused), range, &e, "count");
  wrong(CALL(&iron, &iron, x[0], x[4], SIZE_MAX, a, b, s, &refused), range, &e, "count");
  wrong(CALL(&iron, &iron, x[0], x[4], n, a, a, s, &refused), contradiction, &e, "running_mm");
  wrong(CALL(&iron, &iron, x[0], x[4], 2, a, a + 1, s, &refused), contradiction, &e, "running_mm");
  wrong(CALL(&iron, &iron, x[0], x[4], n, x[0] + 1, b, s, &refused), contradiction, &e, "bench_mm");
  wrong(CALL(&iron, &iron, x[0], x[4], n, a, b, (int32_t *)(void *)a, &refused), contradiction, &e, "row_status");
  CHECK(CALL(&iron, &iron, x[0], x[4], 0, a, b, s, &refused) == 0 && refused == 0);
  GaugepointClearanceColumns in = straight();
  GaugepointClearancePlaces out = {a, 8, b, 8, s, 4};
#define STRIDED(in, n, out) gaugepoint_clearances_strided(&iron, &iron, in, n, out, &refused, &e)
  wrong(STRIDED(NULL, n, &out), NULL_POINTER, &e, "columns");
  wrong(STRIDED(&in, n, NULL), NULL_POINTER, &e, "places");
  out.bench_stride = 0;
  wrong(STRIDED(&in, n, &out), contradiction, &e, "bench_mm");
  out.bench_stride = 4;
  wrong(STRIDED(&in, n, &out), contradiction, &e, "bench_mm");
  out.bench_stride = 8;
  out.row_status_stride = -3;
  wrong(STRIDED(&in, n, &out), contradiction, &e, "row_status");
  out.row_status_stride = 4;
  in.piston_mm.stride = PTRDIFF_MAX;
  wrong(STRIDED(&in, n, &out), range, &e, "piston_mm");
  in.piston_mm.stride = PTRDIFF_MIN;
  wrong(STRIDED(&in, n, &out), range, &e, "piston_mm");
  for (int k = 0; k < 4; k++) CHECK(a[k] == 7 && b[k] == 7 && s[k] == 7);
  in = straight();
  in.piston_mm.stride = 0;
  CHECK(STRIDED(&in, n, &out) == 0);
}

int main(int count, char **words) {
  if (count != 2) return 2;
  vectors(words[1]);
  arrangements();
  refused_as_a_whole();
  misuse();
  return finish();
}
