/* measured FOLDER: statistics, gauge studies, risks and questions before measuring against study.csv, risk.csv and before.csv. */
#include "check.h"

enum { MOST = 512, NAMES = 48 };

/* Results by the names that every host gives them. */
typedef struct {
  const char *name;
  int given;
  double value;
} Named;

static Named named[NAMES];
static int names;

static void put(const char *name, int given, double value) {
  CHECK(given ? isfinite(value) : isnan(value));
  if (names == NAMES) {
    exit(2);
  }
  named[names].name = name;
  named[names].given = given;
  named[names++].value = value;
}

/* The numbers of a text whose groups, and groups of groups, are separated by '/' and '|'. */
typedef struct {
  double value[MOST];
  size_t count, size[MOST], groups, outer;
} Numbers;

static void numbers(const char *text, Numbers *out) {
  memset(out, 0, sizeof *out);
  out->groups = out->outer = 1;
  while (*text != '\0') {
    char *end;
    if (*text == ';') {
      text++;
    } else if (*text == '/' || *text == '|') {
      out->groups++;
      out->outer += *text++ == '|';
    } else {
      out->value[out->count++] = strtod(text, &end);
      out->size[out->groups - 1]++;
      CHECK(end != text && out->count < MOST && out->groups < MOST);
      text = end;
    }
  }
}

static int32_t of_sample(const Numbers *n, GaugepointError *error) {
  GaugepointSample s;
  memset(&s, 0, sizeof s);
  s.struct_size = sizeof s;
  int32_t status = gaugepoint_sample(n->value, n->count, &s, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("count", 1, (double)s.count);
    put("mean", 1, s.mean);
    put("standard_deviation", 1, s.standard_deviation);
    put("deviation_of_mean", 1, s.deviation_of_mean);
    put("lag_1_correlation", 1, s.lag_1_correlation);
  }
  return status;
}

static int32_t of_one_way(const Numbers *n, GaugepointError *error) {
  GaugepointOneWay a;
  memset(&a, 0, sizeof a);
  a.struct_size = sizeof a;
  int32_t status = gaugepoint_one_way(n->value, n->count, n->size, n->groups, &a, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("between", 1, a.between);
    put("between_dof", 1, a.between_dof);
    put("within", 1, a.within);
    put("within_dof", 1, a.within_dof);
    put("f", a.has_f, a.f);
    put("r_squared", a.has_r_squared, a.r_squared);
    put("pooled_deviation", 1, a.pooled_deviation);
  }
  return status;
}

#define COMPONENT(name, given) \
  put(#name ".deviation", 1, s.name.deviation); \
  put(#name ".of_total", 1, s.name.of_total); \
  put(#name ".lower", given, s.name.lower); \
  put(#name ".upper", given, s.name.upper)
#define LINE(name, field, ratios) \
  put("table." name ".squares", s.has_table, s.field.squares); \
  put("table." name ".dof", s.has_table, s.field.dof); \
  put("table." name ".mean", s.has_table, s.field.mean); \
  put("table." name ".f", ratios, s.field.f); \
  put("table." name ".p", ratios, s.field.p)

static int32_t of_study(int by_variance, const char *pooling, const Numbers *n, GaugepointError *error) {
  GaugepointStudy s;
  size_t trials = n->groups / n->outer, parts = n->size[0];
  int32_t status;
  memset(&s, 0, sizeof s);
  s.struct_size = sizeof s;
  CHECK(n->outer * trials * parts == n->count);
  if (!by_variance) {
    status = gaugepoint_study_by_ranges(n->value, n->outer, trials, parts, &s, error);
  } else {
    int32_t choice = same(pooling, "never")    ? GAUGEPOINT_POOLING_NEVER
                     : same(pooling, "always") ? GAUGEPOINT_POOLING_ALWAYS
                                               : GAUGEPOINT_POOLING_ABOVE;
    status = gaugepoint_study_by_variance(n->value, n->outer, trials, parts, choice, choice == GAUGEPOINT_POOLING_ABOVE,
                                          strtod(pooling, NULL), &s, error);
  }
  if (status == GAUGEPOINT_STATUS_OK) {
    COMPONENT(repeatability, s.has_repeatability_interval);
    COMPONENT(reproducibility, s.has_reproducibility_interval);
    COMPONENT(gauge, s.has_gauge_interval);
    COMPONENT(part, s.has_part_interval);
    put("total", 1, s.total);
    put("categories", s.has_categories, s.categories);
    LINE("appraiser", appraiser, s.has_ratios);
    LINE("part", parts, s.has_ratios);
    LINE("interaction", interaction, s.has_ratios);
    LINE("equipment", equipment, 0);
    put("table.total_squares", s.has_table, s.total_squares);
    put("pooled", 1, s.pooled);
  }
  return status;
}

static int32_t study(char **cells, GaugepointError *error) {
  static Numbers n;
  numbers(cells[3], &n);
  if (same(cells[1], "sample")) {
    return of_sample(&n, error);
  }
  if (same(cells[1], "one_way")) {
    return of_one_way(&n, error);
  }
  return of_study(same(cells[1], "study_by_variance"), cells[2], &n, error);
}

/* "lower;upper", either of them empty; the number that is not there is one that must not be read. */
static GaugepointInterval interval(const char *text) {
  const char *semicolon = strchr(text, ';');
  GaugepointInterval i = {0, 0, NAN, NAN};
  CHECK(semicolon != NULL);
  if (semicolon != text) {
    i.has_lower = 1;
    i.lower = strtod(text, NULL);
  }
  if (semicolon[1] != '\0') {
    i.has_upper = 1;
    i.upper = strtod(semicolon + 1, NULL);
  }
  return i;
}

/* "name;number;..." */
static int32_t choice(const char *text, const char *const *words, Numbers *n) {
  size_t length = strcspn(text, ";");
  numbers(text + length, n);
  for (int32_t k = 0; words[k] != NULL; k++) {
    if (strlen(words[k]) == length && strncmp(text, words[k], length) == 0) {
      return k + 1;
    }
  }
  return 0;
}

static GaugepointItems items(const char *text) {
  static const char *const words[] = {"normal", "uniform", "triangular", "gamma", NULL};
  static Numbers n;
  GaugepointItems out = {0, 0, 0, 0, NAN};
  out.distribution = choice(text, words, &n);
  out.has_third = n.count == 3;
  out.first = n.value[0];
  out.second = n.value[1];
  if (out.has_third) {
    out.third = n.value[2];
  }
  return out;
}

static int32_t accepted(char **cells, double u, const GaugepointInterval *tolerance, GaugepointError *error) {
  static const char *const words[] = {"proven", "stringent", "relaxed", "ratio_at_least", NULL};
  static Numbers n;
  GaugepointInterval out = {7, 7, 7, 7}, before = out;
  int32_t status;
  if (same(cells[1], "acceptance")) {
    int32_t guard = choice(cells[5], words, &n);
    status = gaugepoint_acceptance(tolerance, u, guard, n.count == 1, n.value[0], &out, error);
  } else {
    GaugepointItems of = items(cells[2]);
    status = gaugepoint_acceptance_for_risk(&of, u, tolerance, strtod(cells[5], NULL), &out, error);
  }
  if (status == GAUGEPOINT_STATUS_OK) {
    put("lower", out.has_lower, out.lower);
    put("upper", out.has_upper, out.upper);
  } else {
    CHECK(memcmp(&out, &before, sizeof out) == 0);
  }
  return status;
}

static int32_t risk(char **cells, GaugepointError *error) {
  double u = strtod(cells[3], NULL);
  GaugepointInterval tolerance = interval(cells[4]);
  int32_t status;
  if (same(cells[1], "global_risks")) {
    GaugepointItems of = items(cells[2]);
    GaugepointInterval by = interval(cells[5]);
    GaugepointRisks r;
    memset(&r, 0, sizeof r);
    r.struct_size = sizeof r;
    status = gaugepoint_global_risks(&of, u, &tolerance, &by, &r, error);
    if (status == GAUGEPOINT_STATUS_OK) {
      put("conforming", 1, r.conforming);
      put("consumer", 1, r.consumer);
      put("producer", 1, r.producer);
    }
    return status;
  }
  if (same(cells[1], "capability")) {
    GaugepointItems of = items(cells[2]);
    GaugepointCapability c;
    memset(&c, 0, sizeof c);
    c.struct_size = sizeof c;
    status = gaugepoint_capability(of.first, of.second, &tolerance, &c, error);
    if (status == GAUGEPOINT_STATUS_OK) {
      put("cpk", 1, c.cpk);
      put("outside", 1, c.outside);
    }
    return status;
  }
  return accepted(cells, u, &tolerance, error);
}

#define RECORD(type, name) \
  type name; \
  memset(&name, 0, sizeof name); \
  name.struct_size = sizeof name

static int32_t of_soak(const double *v, GaugepointError *error) {
  RECORD(GaugepointSoak, s);
  int32_t status = gaugepoint_soak(v[0], v[1], v[2], v[3], v[4], v[5], v[6], &s, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("advice", 1, s.advice);
    put("error_mm", 1, s.error_mm);
    put("wait_min", 1, s.wait_min);
    put("correction_mm", 1, s.correction_mm);
    put("correction_uncertainty_mm", 1, s.correction_uncertainty_mm);
  }
  return status;
}

static int32_t of_adequacy(const char *rule, const double *v, GaugepointError *error) {
  static const char *const words[] = {"proven", "stringent", "relaxed", "ratio_at_least", NULL};
  static Numbers n;
  GaugepointInterval tolerance = {1, 1, v[0], v[1]};
  RECORD(GaugepointAdequacy, a);
  int32_t guard = choice(rule, words, &n);
  int32_t status = gaugepoint_adequacy(&tolerance, v[2], guard, n.count == 1, n.value[0], v[3], &a, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("adequate", 1, a.adequate);
    put("largest_u", 1, a.largest_u);
    put("ratio", 1, a.ratio);
    put("zone", 1, a.zone);
  }
  return status;
}

static int32_t of_drift(const double *v, GaugepointError *error) {
  RECORD(GaugepointDrift, d);
  int32_t status = gaugepoint_drift(v[0], v[1], v[2], &d, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("drift_mm", 1, d.drift_mm);
    put("uncertainty_mm", 1, d.uncertainty_mm);
    put("shared_mm", 1, d.shared_mm);
    put("own_mm", 1, d.own_mm);
  }
  return status;
}

static int32_t of_agreement(int lists, const Numbers *n, GaugepointError *error) {
  const double *v = n->value;
  RECORD(GaugepointAgreement, a);
  int32_t status = lists ? gaugepoint_readers(v, n->size[0], v + n->size[0], n->size[1], v[n->count - 1], &a, error)
                         : gaugepoint_agreement(v[0], v[1], v[2], v[3], &a, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("e_n", 1, a.e_n);
    put("difference", 1, a.difference);
    put("first_expanded", 1, a.first_expanded);
    put("second_expanded", 1, a.second_expanded);
    put("agree", 1, a.agree);
  }
  return status;
}

static int32_t of_outliers(const char *word, const Numbers *n, GaugepointError *error) {
  static const char *const words[] = {"mean", "common_oval", "oval_by_depth", NULL};
  static Numbers none;
  int32_t flags[MOST];
  size_t flagged = 0, count = n->groups - 1;
  RECORD(GaugepointOutliers, o);
  memset(flags, 7, sizeof flags);
  int32_t form = choice(word, words, &none);
  int32_t status = gaugepoint_outliers(n->value + 1, count, form, n->value[0], flags, &o, error);
  CHECK(flags[count] == 0x07070707);
  if (status == GAUGEPOINT_STATUS_OK) {
    for (size_t k = 0; k < count; k++) {
      CHECK(flags[k] == 0 || flags[k] == 1);
      flagged += flags[k] == 1;
    }
    CHECK(flagged == o.beyond && (flagged == 0 || flags[o.farthest] == 1));
    put("deviation", 1, o.deviation);
    put("dof", 1, (double)o.dof);
    put("farthest.index", o.has_farthest, o.has_farthest ? (double)o.farthest : NAN);
    put("farthest.g", o.has_farthest, o.farthest_g);
    put("critical", 1, o.critical);
    put("beyond", 1, (double)o.beyond);
  } else {
    CHECK(count == 0 || flags[0] == 0x07070707);
  }
  return status;
}

static int32_t of_judge(const char *name, const Numbers *n, GaugepointError *error) {
  int32_t verdict = 7;
  int32_t status = gaugepoint_judge(name, strlen(name), n->value[0], n->count == 2, n->value[1], &verdict, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("verdict", 1, verdict);
  } else {
    CHECK(verdict == 7);
  }
  return status;
}

static int32_t before(char **cells, GaugepointError *error) {
  static Numbers n;
  numbers(cells[3], &n);
  if (same(cells[1], "soak")) {
    return of_soak(n.value, error);
  }
  if (same(cells[1], "adequacy")) {
    return of_adequacy(cells[2], n.value, error);
  }
  if (same(cells[1], "drift")) {
    return of_drift(n.value, error);
  }
  if (same(cells[1], "outliers")) {
    return of_outliers(cells[2], &n, error);
  }
  if (same(cells[1], "judge")) {
    return of_judge(cells[2], &n, error);
  }
  return of_agreement(same(cells[1], "readers"), &n, error);
}

/* Every row of the table has its texts, and its ranges are in order. */
static void table(void) {
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  size_t rows = 0;
  row = "table";
  for (;; rows++) {
    RECORD(GaugepointRow, r);
    int32_t status = gaugepoint_plausibility_row(rows, &r, &error);
    if (status != GAUGEPOINT_STATUS_OK) {
      CHECK(status == GAUGEPOINT_STATUS_OUT_OF_RANGE && same(error.field, "index") && r.name == NULL);
      break;
    }
    CHECK(r.name[0] != '\0' && r.label[0] != '\0' && r.unit[0] != '\0' && r.reason[0] != '\0' && r.slips[0] != '\0');
    CHECK(r.of == NULL || same(r.of, "bore") || same(r.of, "pin"));
    CHECK(r.possible_lower <= r.usual_lower && r.usual_lower <= r.usual_upper && r.usual_upper <= r.possible_upper);
  }
  CHECK(rows >= 40);
  printf("table %zu\n", rows);
}

static const Named *find(const char *name) {
  for (int k = 0; k < names; k++) {
    if (same(named[k].name, name)) {
      return &named[k];
    }
  }
  fprintf(stderr, "%s: no result %s\n", row, name);
  exit(2);
}

/* "name=value~tolerance;name=none;..." or "error:kind field" */
static void hold(int32_t status, const GaugepointError *error, char *expected) {
  char refusal[512];
  if (strncmp(expected, "error:", 6) == 0) {
    snprintf(refusal, sizeof refusal, "%s %s", gaugepoint_status_name(status), error->field);
    CHECK(same(refusal, expected + 6));
    CHECK(error->status == status && strstr(error->message, error->reason) != NULL && error->reason[0] != '\0');
    CHECK(names == 0);
    return;
  }
  CHECK(status == GAUGEPOINT_STATUS_OK);
  for (char *part = strtok(expected, ";"); part != NULL && names > 0; part = strtok(NULL, ";")) {
    char *value = strchr(part, '='), *tolerance;
    CHECK(value != NULL);
    *value++ = '\0';
    const Named *found = find(part);
    if (same(value, "none")) {
      CHECK(!found->given);
      continue;
    }
    CHECK(found->given && fabs(found->value - strtod(value, &tolerance)) <= strtod(tolerance + 1, NULL));
    CHECK(*tolerance == '~');
  }
  /* the bits, for the comparison with the other hosts */
  for (int k = 0; k < names; k++) {
    if (named[k].given) {
      printf("%s %s %.17g\n", row, named[k].name, named[k].value);
    } else {
      printf("%s %s none\n", row, named[k].name);
    }
  }
}

static void file(const char *folder, const char *name, int count, int32_t (*call)(char **, GaugepointError *)) {
  size_t length;
  char *text = file_text(folder, name, &length), *rest = text, *line, *cells[8];
  int rows = 0;
  next_line(&rest); /* the names of the columns */
  while ((line = next_line(&rest)) != NULL) {
    GaugepointError error = GAUGEPOINT_ERROR_INIT;
    int found = columns(line, cells, count);
    row = cells[0];
    names = 0;
    CHECK(found == count && cells[count - 1][0] != '\0');
    if (found == count) {
      int32_t status = call(cells, &error);
      hold(status, &error, cells[count - 2]);
      rows++;
    }
  }
  free(text);
  printf("rows %d\n", rows);
}

int main(int count, char **words) {
  if (count != 2) {
    return 2;
  }
  file(words[1], "study.csv", 6, study);
  file(words[1], "risk.csv", 8, risk);
  file(words[1], "before.csv", 6, before);
  table();
  return finish();
}
