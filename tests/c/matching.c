/* matching FOLDER: pistons matched to bores against the rows of matching.csv in FOLDER; misuse gives a status and writes nothing. */
#include "check.h"

enum { MOST = 64 };

static GaugepointMeasuredBore bores[MOST];
static GaugepointMeasuredPiston pistons[MOST];
static GaugepointPair forbidden[MOST], fixed[MOST];
static GaugepointMatched pairs[MOST];
static int of_sizes = 0;

/* Cuts a text at a mark; the pieces may be empty. */
static size_t pieces(char *text, char mark, char **out) {
  size_t count = 0;
  for (char *next = text; next != NULL && count < MOST;) {
    out[count++] = next;
    next = strchr(next, mark);
    if (next != NULL) {
      *next++ = '\0';
    }
  }
  return count;
}

static int32_t number(const char *text, double *out) {
  *out = text[0] == '\0' ? NAN : strtod(text, NULL);
  return text[0] != '\0';
}

static int32_t wanted(char **cells, GaugepointWantedClearance *out) {
  memset(out, 0, sizeof *out);
  out->has_lower = number(cells[0], &out->lower_mm);
  out->has_upper = number(cells[1], &out->upper_mm);
  out->has_target = number(cells[2], &out->target_mm);
  return out->has_lower || out->has_upper || out->has_target;
}

static const char *grade(const char *text, size_t *length) {
  *length = strlen(text);
  return *length == 0 ? NULL : text;
}

static size_t places(char *text, GaugepointPair *out) {
  size_t count = 0;
  for (char *next = text; *next != '\0' && count < MOST; count++) {
    out[count].bore = strtoul(next, &next, 10);
    CHECK(*next == '-');
    out[count].piston = strtoul(next + 1, &next, 10);
    next += *next == ' ';
  }
  return count;
}

static void printed(const char *name, double value) {
  printf("%s %.17g\n", name, value);
}

static void merit(const GaugepointMerit *m) {
  printed("worst", m->worst_probability);
  printed("outside", m->worst_outside);
  printed("sum", m->sum_of_squares_mm2);
}

static void results(const GaugepointMatching *out, size_t count, char *expected) {
  for (size_t k = 0; k < count; k++) {
    CHECK(pairs[k].bore == k && pairs[k].piston == strtoul(expected, &expected, 10));
    printed("clearance", pairs[k].clearance_mm);
    printed("u", pairs[k].standard_uncertainty_mm);
    printed("deviation", pairs[k].deviation_mm);
    printed("in", pairs[k].probability_of_conformity);
    printed("out", pairs[k].probability_outside);
  }
  merit(&out->merit);
  merit(&out->as_given);
  if (out->has_by_grade) {
    merit(&out->by_grade);
  } else {
    CHECK(isnan(out->by_grade.worst_outside));
  }
  if (out->has_weight_spread) {
    printed("spread", out->weight_spread_g);
  } else {
    CHECK(isnan(out->weight_spread_g));
  }
  CHECK(out->because[0] != '\0' && out->because[255] == '\0' && out->merit.is_allowed == 1);
}

/* Parts that are sizes alone give the same from arrays, to the bit, or the same refusal. */
static void from_arrays(size_t bore_count, size_t piston_count, const GaugepointMatchingConditions *conditions, int32_t expected,
                        const GaugepointMatching *of_parts, const char *field) {
  static double sizes[2][MOST], uncertainties[2][MOST];
  static GaugepointMatched found[MOST];
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  RECORD(GaugepointMatching, out);
  for (size_t k = 0; k < bore_count; k++) {
    sizes[0][k] = bores[k].size_mm;
    uncertainties[0][k] = bores[k].standard_uncertainty_mm;
    if (bores[k].has_wanted || bores[k].grade != NULL) return;
  }
  for (size_t k = 0; k < piston_count; k++) {
    sizes[1][k] = pistons[k].size_mm;
    uncertainties[1][k] = pistons[k].standard_uncertainty_mm;
    if (pistons[k].has_weight || pistons[k].grade != NULL) return;
  }
  int32_t status = gaugepoint_match_sizes(sizes[0], uncertainties[0], bore_count, sizes[1], uncertainties[1], piston_count, conditions, found, MOST, &out, &error);
  CHECK(status == expected && same(error.field, field));
  if (status == 0) {
    CHECK(memcmp(&out, of_parts, sizeof out) == 0 && memcmp(found, pairs, bore_count * sizeof found[0]) == 0);
    of_sizes++;
  }
}

static void matched(char **cells) {
  static const char *const cases[] = {"", "sorted", "order_preserving", "pair_dependent"};
  char *parts[MOST], *c[MOST];
  GaugepointMatchingConditions conditions;
  RECORD(GaugepointMatching, out);
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  size_t bore_count = pieces(cells[1], ';', parts), piston_count;
  memset(&conditions, 0, sizeof conditions);
  for (size_t k = 0; k < bore_count; k++) {
    CHECK(pieces(parts[k], '/', c) == 6);
    memset(&bores[k], 0, sizeof bores[k]);
    number(c[0], &bores[k].size_mm);
    number(c[1], &bores[k].standard_uncertainty_mm);
    bores[k].has_wanted = wanted(c + 2, &bores[k].wanted);
    bores[k].grade = grade(c[5], &bores[k].grade_length);
  }
  piston_count = pieces(cells[2], ';', parts);
  for (size_t k = 0; k < piston_count; k++) {
    CHECK(pieces(parts[k], '/', c) == 4);
    memset(&pistons[k], 0, sizeof pistons[k]);
    number(c[0], &pistons[k].size_mm);
    number(c[1], &pistons[k].standard_uncertainty_mm);
    pistons[k].has_weight = number(c[2], &pistons[k].weight_g);
    pistons[k].grade = grade(c[3], &pistons[k].grade_length);
  }
  CHECK(pieces(cells[3], '|', parts) == 6);
  CHECK(pieces(parts[0], '/', c) == 3);
  conditions.has_wanted = wanted(c, &conditions.wanted);
  number(parts[1], &conditions.shared_uncertainty_mm);
  number(parts[2], &conditions.common_uncertainty_mm);
  conditions.has_weight_band = number(parts[3], &conditions.weight_band_g);
  conditions.forbidden_count = places(parts[4], forbidden);
  conditions.forbidden = conditions.forbidden_count == 0 ? NULL : forbidden;
  conditions.fixed_count = places(parts[5], fixed);
  conditions.fixed = conditions.fixed_count == 0 ? NULL : fixed;
  int32_t status = gaugepoint_match_pistons(bores, bore_count, pistons, piston_count, &conditions, pairs, MOST, &out, &error);
  from_arrays(bore_count, piston_count, &conditions, status, &out, error.field);
  if (same(cells[4], "error")) {
    char told[400];
    snprintf(told, sizeof told, "%s %s", gaugepoint_status_name(status), error.field);
    CHECK(status != GAUGEPOINT_STATUS_OK && same(told, cells[5]));
    return;
  }
  CHECK(status == GAUGEPOINT_STATUS_OK && out.data_case > 0 && out.data_case < 4 && same(cases[out.data_case], cells[4]));
  results(&out, bore_count, cells[5]);
}

static void vectors(const char *folder) {
  size_t length;
  int count = 0;
  char *text = file_text(folder, "matching.csv", &length), *rest = text, *line, *cells[11];
  next_line(&rest);
  while ((line = next_line(&rest)) != NULL) {
    CHECK(columns(line, cells, 11) == 11);
    row = cells[0];
    count++;
    matched(cells);
  }
  free(text);
  CHECK(of_sizes > 10);
  printf("rows %d\n", count);
}

static void misuse(void) {
  const GaugepointMeasuredBore one = {86, 0.001, 0, 0, {0, 0, 0, 0, 0, 0, 0}, NULL, 0};
  const GaugepointMeasuredPiston piston = {85.95, 0.001, 0, 0, 0, NULL, 0};
  GaugepointMeasuredBore other = one;
  GaugepointMatchingConditions c, d;
  GaugepointMatched pair;
  row = "misuse";
  memset(&c, 0, sizeof c);
  c.has_wanted = 1;
  c.wanted.has_lower = c.wanted.has_upper = 1;
  c.wanted.lower_mm = 0.03;
  c.wanted.upper_mm = 0.07;
  SIZED(GaugepointMatching, gaugepoint_match_pistons(&one, 1, &piston, 1, &c, &pair, 1, &out, &e));
#define CALL(b, n, p, m, of, to, room) gaugepoint_match_pistons(b, n, p, m, of, to, room, &out, &e)
  REFUSED(GaugepointMatching, CALL(NULL, 1, &piston, 1, &c, &pair, 1), GAUGEPOINT_STATUS_NULL_POINTER, "bores");
  REFUSED(GaugepointMatching, CALL(&one, 1, NULL, 1, &c, &pair, 1), GAUGEPOINT_STATUS_NULL_POINTER, "pistons");
  REFUSED(GaugepointMatching, CALL(&one, 1, &piston, 1, NULL, &pair, 1), GAUGEPOINT_STATUS_NULL_POINTER, "conditions");
  REFUSED(GaugepointMatching, CALL(&one, 1, &piston, 1, &c, NULL, 1), GAUGEPOINT_STATUS_NULL_POINTER, "pairs");
  REFUSED(GaugepointMatching, CALL(&one, SIZE_MAX, &piston, 1, &c, &pair, 1), GAUGEPOINT_STATUS_OUT_OF_RANGE, "bores");
  REFUSED(GaugepointMatching, CALL(&one, 1, &piston, 1, &c, &pair, 0), GAUGEPOINT_STATUS_CONTRADICTION, "room");
  d = c;
  d.forbidden_count = 1;
  REFUSED(GaugepointMatching, CALL(&one, 1, &piston, 1, &d, &pair, 1), GAUGEPOINT_STATUS_NULL_POINTER, "conditions/forbidden");
  d = c;
  d.has_weight_band = 2;
  REFUSED(GaugepointMatching, CALL(&one, 1, &piston, 1, &d, &pair, 1), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "conditions/has_weight_band");
  other.has_wanted = 7;
  REFUSED(GaugepointMatching, CALL(&other, 1, &piston, 1, &c, &pair, 1), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "bores/0/has_wanted");
  other = one;
  other.grade = "\xff";
  other.grade_length = 1;
  REFUSED(GaugepointMatching, CALL(&other, 1, &piston, 1, &c, &pair, 1), GAUGEPOINT_STATUS_NOT_UTF8, "bores/0/grade");
}

static void misuse_of_arrays(void) {
  const double bore[] = {86, 86.01}, piston[] = {85.95, 85.96}, u[] = {0.001, 0.001}, bad[] = {0.001, NAN};
  GaugepointMatchingConditions c;
  GaugepointMatched pair[2];
  row = "misuse_of_arrays";
  memset(&c, 0, sizeof c);
  c.has_wanted = 1;
  c.wanted.has_lower = c.wanted.has_upper = 1;
  c.wanted.lower_mm = 0.03;
  c.wanted.upper_mm = 0.07;
  SIZED(GaugepointMatching, gaugepoint_match_sizes(bore, u, 2, piston, u, 2, &c, pair, 2, &out, &e));
#define SIZES(b, bu, n, p, pu, m, of, to, room) gaugepoint_match_sizes(b, bu, n, p, pu, m, of, to, room, &out, &e)
  REFUSED(GaugepointMatching, SIZES(NULL, u, 2, piston, u, 2, &c, pair, 2), GAUGEPOINT_STATUS_NULL_POINTER, "bores_mm");
  REFUSED(GaugepointMatching, SIZES(bore, NULL, 2, piston, u, 2, &c, pair, 2), GAUGEPOINT_STATUS_NULL_POINTER, "bore_uncertainties_mm");
  REFUSED(GaugepointMatching, SIZES(bore, u, 2, NULL, u, 2, &c, pair, 2), GAUGEPOINT_STATUS_NULL_POINTER, "pistons_mm");
  REFUSED(GaugepointMatching, SIZES(bore, u, 2, piston, NULL, 2, &c, pair, 2), GAUGEPOINT_STATUS_NULL_POINTER, "piston_uncertainties_mm");
  REFUSED(GaugepointMatching, SIZES(bore, u, 2, piston, u, 2, NULL, pair, 2), GAUGEPOINT_STATUS_NULL_POINTER, "conditions");
  REFUSED(GaugepointMatching, SIZES(bore, u, 2, piston, u, 2, &c, NULL, 2), GAUGEPOINT_STATUS_NULL_POINTER, "pairs");
  REFUSED(GaugepointMatching, SIZES(bore, u, SIZE_MAX, piston, u, 2, &c, pair, 2), GAUGEPOINT_STATUS_OUT_OF_RANGE, "bores_mm");
  REFUSED(GaugepointMatching, SIZES(bore, u, 2, piston, u, SIZE_MAX, &c, pair, 2), GAUGEPOINT_STATUS_OUT_OF_RANGE, "pistons_mm");
  REFUSED(GaugepointMatching, SIZES(bore, u, 2, piston, u, 2, &c, pair, 1), GAUGEPOINT_STATUS_CONTRADICTION, "room");
  REFUSED(GaugepointMatching, SIZES(bore, bad, 2, piston, u, 2, &c, pair, 2), GAUGEPOINT_STATUS_NOT_FINITE, "bores/1/standard_uncertainty_mm");
}

int main(int count, char **words) {
  CHECK(count == 2);
  vectors(words[1]);
  misuse();
  misuse_of_arrays();
  return finish();
}
