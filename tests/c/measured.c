/* measured FOLDER: statistics, gauge studies and risks against study.csv and risk.csv. */
#include "check.h"

enum { MOST = 512, NAMES = 64 };

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
    put("table.appraiser_residual.f", s.has_appraiser_residual, s.appraiser_residual_f);
    put("table.appraiser_residual.p", s.has_appraiser_residual, s.appraiser_residual_p);
    put("table.part_residual.f", s.has_part_residual, s.part_residual_f);
    put("table.part_residual.p", s.has_part_residual, s.part_residual_p);
  }
  return status;
}

static int32_t of_bias(const Numbers *given, const Numbers *n, GaugepointError *error) {
  GaugepointBias b;
  const double *g = given->value;
  memset(&b, 0, sizeof b);
  b.struct_size = sizeof b;
  CHECK(given->count == 3);
  int32_t status = gaugepoint_bias(n->value, n->count, g[0], g[1], g[2], &b, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("bias", 1, b.bias);
    put("standard_deviation", 1, b.standard_deviation);
    put("standard_uncertainty", 1, b.standard_uncertainty);
    put("dof", b.has_dof, b.dof);
    put("test.t", b.has_t, b.t);
    put("test.p", b.has_t, b.p);
    put("lower", 1, b.lower);
    put("upper", 1, b.upper);
    put("zero_within", 1, b.zero_within);
  }
  return status;
}

/* Each group is the reference value and then its readings. */
static int32_t of_linearity(int band, const Numbers *given, const Numbers *n, GaugepointError *error) {
  static double references[MOST], readings[MOST];
  size_t sizes[MOST], count = 0, from = 0;
  const double coverage = given->value[given->count - 1];
  int32_t status;
  for (size_t k = 0; k < n->groups; k++) {
    references[k] = n->value[from];
    sizes[k] = n->size[k] - 1;
    memcpy(readings + count, n->value + from + 1, sizes[k] * sizeof readings[0]);
    count += sizes[k];
    from += n->size[k];
  }
  if (band) {
    GaugepointBand b;
    memset(&b, 0, sizeof b);
    b.struct_size = sizeof b;
    CHECK(given->count == 2);
    status = gaugepoint_linearity_band(references, sizes, n->groups, readings, count, given->value[0], coverage, &b, error);
    if (status == GAUGEPOINT_STATUS_OK) {
      put("bias", 1, b.bias);
      put("standard_uncertainty", 1, b.standard_uncertainty);
      put("lower", 1, b.lower);
      put("upper", 1, b.upper);
    }
    return status;
  }
  GaugepointLinearity l;
  memset(&l, 0, sizeof l);
  l.struct_size = sizeof l;
  CHECK(given->count == 1);
  status = gaugepoint_linearity(references, sizes, n->groups, readings, count, coverage, &l, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("intercept", 1, l.intercept);
    put("intercept_uncertainty", 1, l.intercept_uncertainty);
    put("intercept_test.t", l.has_intercept_t, l.intercept_t);
    put("intercept_test.p", l.has_intercept_t, l.intercept_p);
    put("slope", 1, l.slope);
    put("slope_uncertainty", 1, l.slope_uncertainty);
    put("slope_test.t", l.has_slope_t, l.slope_t);
    put("slope_test.p", l.has_slope_t, l.slope_p);
    put("residual_deviation", 1, l.residual_deviation);
    put("dof", 1, l.dof);
    put("r_squared", l.has_r_squared, l.r_squared);
    put("zero_within", 1, l.zero_within);
  }
  return status;
}

static int32_t of_chart(const char *kind, const Numbers *n, GaugepointError *error) {
  static const char *const words[] = {"means_by_ranges", "ranges", "means_by_deviations", "deviations", "individuals", "moving_ranges"};
  static GaugepointPoint points[MOST];
  static char point_names[MOST][3][40];
  GaugepointChart c;
  int32_t number = 1;
  memset(&c, 0, sizeof c);
  c.struct_size = sizeof c;
  while (number < 6 && !same(words[number - 1], kind)) {
    number++;
  }
  CHECK(same(words[number - 1], kind) && n->groups * n->size[0] == n->count);
  points[n->groups].run = 77; /* just behind the room that there is */
  int32_t status = gaugepoint_control_chart(n->value, n->groups, n->size[0], number, &c, points, error);
  CHECK(points[n->groups].run == 77);
  if (status == GAUGEPOINT_STATUS_OK) {
    CHECK(c.count <= n->groups);
    put("count", 1, (double)c.count);
    put("centre", 1, c.centre);
    put("lower", 1, c.lower);
    put("upper", 1, c.upper);
    put("deviation", 1, c.deviation);
    for (size_t k = 0; k < c.count; k++) {
      snprintf(point_names[k][0], 40, "points.%zu.value", k);
      snprintf(point_names[k][1], 40, "points.%zu.beyond", k);
      snprintf(point_names[k][2], 40, "points.%zu.run", k);
      put(point_names[k][0], 1, points[k].value);
      put(point_names[k][1], 1, points[k].beyond);
      put(point_names[k][2], 1, points[k].run);
    }
  }
  return status;
}

static int32_t study(char **cells, GaugepointError *error) {
  static Numbers given;
  static Numbers n;
  numbers(cells[3], &n);
  if (same(cells[1], "sample")) {
    return of_sample(&n, error);
  }
  if (same(cells[1], "one_way")) {
    return of_one_way(&n, error);
  }
  if (strncmp(cells[1], "study_by_", 9) == 0) {
    return of_study(same(cells[1], "study_by_variance"), cells[2], &n, error);
  }
  numbers(cells[2], &given);
  if (same(cells[1], "bias")) {
    return of_bias(&given, &n, error);
  }
  if (strncmp(cells[1], "linearity", 9) == 0) {
    return of_linearity(same(cells[1], "linearity_band"), &given, &n, error);
  }
  return of_chart(cells[1], &n, error);
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
  return finish();
}
