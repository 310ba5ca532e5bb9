/* measured FOLDER: what gives records, against the rows of the vectors named in main. */
#include "check.h"

enum { MOST = 512, NAMES = 256 };

/* Results by the names that every host gives them. */
typedef struct {
  const char *name;
  int given;
  double value;
} Named;

static const char *vectors;
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

/* The numbers of a text whose groups, and groups of groups, are separated by '/' and '|'; "none" is absent. */
typedef struct {
  double value[MOST];
  int32_t given[MOST];
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
    } else if (strncmp(text, "none", 4) == 0) {
      out->value[out->count++] = 0;
      out->size[out->groups - 1]++;
      text += 4;
    } else {
      out->given[out->count] = 1;
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

/* Columns of numbers: in the cell, or in the trace it names. */
typedef struct {
  double *value[3];
  size_t count, columns;
} Columns;

static void free_columns(Columns *c) {
  for (int k = 0; k < 3; k++) {
    free(c->value[k]);
  }
}

static Columns read_trace(const char *name) {
  char file[256], *cells[3];
  size_t length;
  snprintf(file, sizeof file, "traces/%s.csv", name);
  char *text = file_text(vectors, file, &length), *rest = text, *line = next_line(&rest);
  Columns c = {{NULL, NULL, NULL}, 0, 0};
  CHECK(line != NULL);
  c.columns = (size_t)columns(line, cells, 3);
  for (int k = 0; k < 3; k++) {
    c.value[k] = need(length * sizeof(double));
  }
  while ((line = next_line(&rest)) != NULL) {
    CHECK(columns(line, cells, 3) == (int)c.columns);
    for (size_t k = 0; k < c.columns; k++) {
      c.value[k][c.count] = strtod(cells[k], NULL);
    }
    c.count++;
  }
  free(text);
  return c;
}

static Columns read_columns(const char *cell) {
  static Numbers n;
  if (cell[0] == '@') {
    return read_trace(cell + 1);
  }
  numbers(cell, &n);
  Columns c = {{NULL, NULL, NULL}, n.size[0], n.groups};
  CHECK(n.groups <= 3);
  for (size_t k = 0, from = 0; k < 3; from += n.size[k++]) {
    c.value[k] = need((MOST + 1) * sizeof(double));
    memcpy(c.value[k], n.value + from, n.size[k] * sizeof(double));
  }
  return c;
}

static int32_t word(const char *text, const char *const *words) {
  static Numbers none;
  return choice(text, words, &none);
}

static int32_t reference(const char *text) {
  static const char *const words[] = {"least_squares", "minimum_zone", "minimum_circumscribed", "maximum_inscribed",
                                      NULL};
  return word(text, words);
}

static void put_form(GaugepointForm form) {
  put("form.total_mm", 1, form.total_mm);
  put("form.outside_mm", 1, form.outside_mm);
  put("form.inside_mm", 1, form.inside_mm);
  put("form.rms_mm", 1, form.rms_mm);
}

static int32_t of_circle(char **cells, const Columns *c, GaugepointError *error) {
  static const char *const words[] = {"unit_norm", "pratt", "taubin", "hyperaccurate", NULL};
  GaugepointCircle out;
  int32_t status;
  memset(&out, 0, sizeof out);
  out.struct_size = sizeof out;
  if (same(cells[1], "circle")) {
    status = gaugepoint_fit_circle(c->value[0], c->value[1], c->count, reference(cells[2]), &out, error);
  } else {
    status = gaugepoint_fit_circle_algebraic(c->value[0], c->value[1], c->count, word(cells[2], words), &out, error);
  }
  if (status == GAUGEPOINT_STATUS_OK) {
    put("x_mm", 1, out.x_mm);
    put("y_mm", 1, out.y_mm);
    put("radius_mm", 1, out.radius_mm);
    put_form(out.form);
  }
  return status;
}

static int32_t of_cylinder(char **cells, const Columns *c, GaugepointError *error) {
  GaugepointCylinder out;
  memset(&out, 0, sizeof out);
  out.struct_size = sizeof out;
  int32_t status = gaugepoint_fit_cylinder(c->value[0], c->value[1], c->value[2], c->count, reference(cells[2]), &out,
                                           error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("x_mm", 1, out.x_mm);
    put("y_mm", 1, out.y_mm);
    put("z_mm", 1, out.z_mm);
    put("slope_x", 1, out.slope_x);
    put("slope_y", 1, out.slope_y);
    put("radius_mm", 1, out.radius_mm);
    put_form(out.form);
  }
  return status;
}

static int32_t of_plane(char **cells, const Columns *c, GaugepointError *error) {
  GaugepointPlane out;
  memset(&out, 0, sizeof out);
  out.struct_size = sizeof out;
  int32_t status = gaugepoint_fit_plane(c->value[0], c->value[1], c->value[2], c->count, reference(cells[2]), &out,
                                        error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("x_mm", 1, out.x_mm);
    put("y_mm", 1, out.y_mm);
    put("z_mm", 1, out.z_mm);
    put("slope_x", 1, out.slope_x);
    put("slope_y", 1, out.slope_y);
    put("slope", 1, out.slope);
    put("direction_deg", out.has_direction, out.direction_deg);
    put_form(out.form);
    CHECK(out.reserved == 0);
  }
  return status;
}

static int32_t of_bore(const char *cell, GaugepointError *error) {
  static Numbers n;
  GaugepointBoreAxis out;
  memset(&out, 0, sizeof out);
  out.struct_size = sizeof out;
  numbers(cell, &n);
  int32_t status =
      gaugepoint_bore_to_main_line(n.value, n.size[0] / 3, n.value + n.size[0], n.size[1] / 3, &out, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("offset_mm", 1, out.offset_mm);
    put("station_mm", 1, out.station_mm);
    put("out_of_square_mrad", 1, out.out_of_square_mrad);
    put("length_mm", 1, out.length_mm);
    put("out_of_square_mm", 1, out.out_of_square_mm);
    put("bore_straightness_mm", 1, out.bore_straightness_mm);
    put("main_straightness_mm", 1, out.main_straightness_mm);
  }
  return status;
}

static int32_t of_section(char **cells, const Columns *c, GaugepointError *error) {
  static char names_of[16][2][32];
  GaugepointHarmonic harmonics[16];
  GaugepointSection out;
  size_t order = strtoul(cells[2], NULL, 10);
  int32_t status;
  memset(&out, 0, sizeof out);
  out.struct_size = sizeof out;
  if (same(cells[1], "section_from_radii")) {
    status = gaugepoint_section_from_radii(c->value[0], c->value[1], c->count, order, harmonics, 16, &out, error);
  } else {
    status = gaugepoint_section_from_diameters(c->value[0], c->value[1], c->count, order, harmonics, 16, &out, error);
  }
  if (status == GAUGEPOINT_STATUS_OK) {
    put("mean_radius_mm", 1, out.mean_radius_mm);
    put("x_mm", out.has_position, out.x_mm);
    put("y_mm", out.has_position, out.y_mm);
    put("residual_mm", out.has_residual, out.residual_mm);
    put("least_share", 1, out.least_share);
    for (size_t k = 0; k < out.harmonics; k++) {
      snprintf(names_of[k][0], 32, "harmonics.%d.cos_mm", (int)harmonics[k].order);
      snprintf(names_of[k][1], 32, "harmonics.%d.sin_mm", (int)harmonics[k].order);
      put(names_of[k][0], harmonics[k].has_cos, harmonics[k].cos_mm);
      put(names_of[k][1], harmonics[k].has_sin, harmonics[k].sin_mm);
    }
  }
  return status;
}

/* "order;cos;sin"; a part that is not there is one that must not be read. */
static GaugepointHarmonic harmonic(const char *text) {
  char *end;
  GaugepointHarmonic h = {0, 0, 0, NAN, NAN};
  h.order = strtoul(text, &end, 10);
  if (strncmp(end, ";none", 5) != 0) {
    h.has_cos = 1;
    h.cos_mm = strtod(end + 1, &end);
  } else {
    end += 5;
  }
  if (strncmp(end, ";none", 5) != 0) {
    h.has_sin = 1;
    h.sin_mm = strtod(end + 1, NULL);
  }
  return h;
}

static int32_t of_reading(char **cells, GaugepointError *error) {
  static Numbers n;
  double out = 7;
  int32_t status;
  char *slash = strchr(cells[3], '/');
  GaugepointHarmonic h = {0, 0, 0, NAN, NAN};
  if (slash != NULL) {
    h = harmonic(slash + 1);
    *slash = '\0';
  }
  numbers(cells[3], &n);
  if (same(cells[1], "two_point")) {
    status = gaugepoint_two_point_mm(n.value[0], &h, 1, n.value[1], &out, error);
  } else if (same(cells[1], "three_leg")) {
    status = gaugepoint_three_leg_mm(n.value[0], &h, 1, n.value[1], n.value[2], n.value[3], n.value[4], &out, error);
  } else {
    status = gaugepoint_v_block_factor((size_t)n.value[0], n.value[1], n.value[2], &out, error);
  }
  if (status == GAUGEPOINT_STATUS_OK) {
    put(same(cells[1], "v_block_factor") ? "factor" : "diameter_mm", 1, out);
  } else {
    CHECK(isnan(out));
  }
  return status;
}

static int32_t shape(char **cells, GaugepointError *error) {
  const char *function = cells[1];
  if (same(function, "bore_to_main_line")) {
    return of_bore(cells[3], error);
  }
  if (same(function, "two_point") || same(function, "three_leg") || same(function, "v_block_factor")) {
    return of_reading(cells, error);
  }
  Columns c = read_columns(cells[3]);
  int32_t status = same(function, "cylinder") ? of_cylinder(cells, &c, error)
                   : same(function, "plane")  ? of_plane(cells, &c, error)
                   : function[0] == 's'       ? of_section(cells, &c, error)
                                              : of_circle(cells, &c, error);
  free_columns(&c);
  return status;
}

static int32_t of_gap(const double *x, GaugepointError *error) {
  RECORD(GaugepointRingHotGap, g);
  int32_t status = gaugepoint_ring_hot_gap(x[0], x[1], x[2], x[3], x[4], x[5], &g, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("gap_mm", 1, g.gap_mm);
    put("first_order_mm", 1, g.first_order_mm);
    put("butts", 1, g.butts);
  }
  return status;
}

static int32_t of_pin(const double *x, GaugepointError *error) {
  RECORD(GaugepointPinClearance, c);
  int32_t status = gaugepoint_pin_clearance(x[0], x[1], x[2], x[3], x[4], x[5], &c, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("cold_mm", 1, c.cold_mm);
    put("hot_mm", 1, c.hot_mm);
  }
  return status;
}

static int32_t of_press_fit(const double *x, GaugepointError *error) {
  GaugepointPressFitParts parts = {x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8], x[9], x[10], x[11], x[12]};
  RECORD(GaugepointPressFit, f);
  int32_t status = gaugepoint_press_fit(&parts, &f, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    CHECK(strstr(f.caution, "Press work") != NULL);
    put("pressure_least_mpa", 1, f.pressure_least_mpa);
    put("pressure_most_mpa", 1, f.pressure_most_mpa);
    put("eye_hoop_inside_mpa", 1, f.eye_hoop_inside_mpa);
    put("eye_hoop_outside_mpa", 1, f.eye_hoop_outside_mpa);
    put("pin_hoop_outside_mpa", 1, f.pin_hoop_outside_mpa);
    put("pin_hoop_inside_mpa", 1, f.pin_hoop_inside_mpa);
    put("force_least_n", 1, f.force_least_n);
    put("force_most_n", 1, f.force_most_n);
    put("torque_least_nm", 1, f.torque_least_nm);
    put("torque_most_nm", 1, f.torque_most_nm);
  }
  return status;
}

static int32_t of_assembly(const double *x, GaugepointError *error) {
  RECORD(GaugepointAssembly, a);
  int32_t status = gaugepoint_assembly_temperature(x[0], x[1], x[2], x[3], &a, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    int overheated = strstr(a.caution, "overheated") != NULL;
    CHECK(strstr(a.caution, "tongs") != NULL && overheated == (a.temper_colour != GAUGEPOINT_TEMPER_COLOUR_NONE));
    put("rise_k", 1, a.rise_k);
    put("temperature_c", 1, a.temperature_c);
    put("temper_colour", 1, a.temper_colour);
  }
  return status;
}

static int32_t of_liner(const double *x, GaugepointError *error) {
  GaugepointLinerParts parts = {x[0], x[2], x[3], x[4], x[5], x[6], x[7], x[8], x[9], x[10], x[11], x[12], x[13]};
  RECORD(GaugepointLinerFit, f);
  int32_t status = gaugepoint_liner_in_block(&parts, (int32_t)x[1], &f, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    CHECK(strstr(f.caution, "ventilate") != NULL);
    put("pressure_20_mpa", 1, f.pressure_20_mpa);
    put("pressure_mpa", 1, f.pressure_mpa);
    put("interference_mm", 1, f.interference_mm);
    put("bore_20_mm", 1, f.bore_20_mm);
    put("bore_mm", 1, f.bore_mm);
    put("contact_lost_at_c", f.has_contact_lost, f.contact_lost_at_c);
  }
  return status;
}

static int32_t of_deck(const double *x, GaugepointError *error) {
  RECORD(GaugepointDeck, d);
  int32_t status = gaugepoint_deck(x[0], x[1], x[2], x[3], x[4], &d, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("deck_clearance_mm", 1, d.deck_clearance_mm);
    put("protrusion_mm", 1, d.protrusion_mm);
    put("squish_mm", 1, d.squish_mm);
  }
  return status;
}

static int32_t of_chamber(const double *x, GaugepointError *error) {
  GaugepointChamber chamber = {x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7]};
  RECORD(GaugepointCompression, c);
  int32_t status = gaugepoint_compression_ratio(&chamber, &c, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("swept_cm3", 1, c.swept_cm3);
    put("gasket_cm3", 1, c.gasket_cm3);
    put("deck_cm3", 1, c.deck_cm3);
    put("clearance_cm3", 1, c.clearance_cm3);
    put("ratio", 1, c.ratio);
  }
  return status;
}

static int32_t of_dead_centres(const double *x, GaugepointError *error) {
  RECORD(GaugepointDeadCentres, d);
  int32_t status = gaugepoint_dead_centres(x[0], x[1], x[2], &d, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("stroke_mm", 1, d.stroke_mm);
    put("top_deg", 1, d.top_deg);
    put("bottom_deg", 1, d.bottom_deg);
  }
  return status;
}

static int32_t of_travel(const double *x, GaugepointError *error) {
  RECORD(GaugepointPistonTravel, t);
  int32_t status = gaugepoint_piston_travel(x[0], x[1], x[2], x[3], &t, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("travel_mm", 1, t.travel_mm);
    put("per_degree_mm", 1, t.per_degree_mm);
  }
  return status;
}

static int32_t of_crank_angles(const double *x, GaugepointError *error) {
  RECORD(GaugepointCrankAngles, a);
  int32_t status = gaugepoint_crank_angles_at(x[0], x[1], x[2], x[3], &a, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("before_deg", 1, a.before_deg);
    put("after_deg", 1, a.after_deg);
  }
  return status;
}

/* "mean|cosines|sines" */
static int32_t of_least(char *text, GaugepointError *error) {
  static Numbers cosines, sines;
  char *bar = strchr(text, '|'), *last = strrchr(text, '|');
  RECORD(GaugepointLeastClearance, l);
  CHECK(bar != NULL && bar != last);
  *bar = *last = '\0';
  numbers(bar + 1, &cosines);
  numbers(last + 1, &sines);
  CHECK(cosines.count == sines.count);
  int32_t status =
      gaugepoint_least_clearance_of_section(strtod(text, NULL), cosines.value, sines.value, cosines.count, &l, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("least_mm", 1, l.least_mm);
    put("angle_deg", 1, l.angle_deg);
    put("within_mm", 1, l.within_mm);
  }
  return status;
}

/* "projections|from;to;thickness/from;to;thickness|step" */
static int32_t of_gaskets(char *text, GaugepointError *error) {
  static Numbers projections, table;
  GaugepointGasketBand bands[MOST / 3];
  char *bar = strchr(text, '|'), *last = strrchr(text, '|');
  RECORD(GaugepointGasketChoice, c);
  CHECK(bar != NULL && bar != last);
  *bar = *last = '\0';
  numbers(text, &projections);
  numbers(bar + 1, &table);
  CHECK(table.count % 3 == 0);
  for (size_t k = 0; k < table.count / 3; k++) {
    memcpy(&bands[k], &table.value[3 * k], sizeof bands[k]);
  }
  int32_t status = gaugepoint_gasket_band(projections.value, projections.count, bands, table.count / 3,
                                          strtod(last + 1, NULL), &c, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("band", 1, (double)c.band);
    put("largest_mm", 1, c.largest_mm);
    put("thickness_mm", 1, c.thickness_mm);
    put("squish_mm", 1, c.squish_mm);
  }
  return status;
}

static int32_t of_one_number(const char *name, const double *x, GaugepointError *error) {
  double out = 7;
  int32_t status = same(name, "ring_gap_in_bore_mm") ? gaugepoint_ring_gap_in_bore_mm(x[0], x[1], x[2], &out, error)
                   : same(name, "ring_least_cold_gap_mm")
                       ? gaugepoint_ring_least_cold_gap_mm(x[0], x[1], x[2], x[3], x[4], x[5], &out, error)
                   : same(name, "ring_side_clearance_mm") ? gaugepoint_ring_side_clearance_mm(x[0], x[1], &out, error)
                   : same(name, "ring_back_clearance_mm")
                       ? gaugepoint_ring_back_clearance_mm(x[0], x[1], x[2], &out, error)
                   : same(name, "ring_groove_wear_mm") ? gaugepoint_ring_groove_wear_mm(x[0], x[1], &out, error)
                   : same(name, "keystone_groove_width_mm")
                       ? gaugepoint_keystone_groove_width_mm(x[0], x[1], x[2], x[3], &out, error)
                   : same(name, "ring_gap_by_factor_mm") ? gaugepoint_ring_gap_by_factor_mm(x[0], x[1], &out, error)
                   : same(name, "ring_conformable_amplitude_mm")
                       ? gaugepoint_ring_conformable_amplitude_mm((int32_t)x[0], x[1], x[2], x[3], x[4], x[5], &out, error)
                   : same(name, "rod_angle_mrad") ? gaugepoint_rod_angle_mrad(x[0], x[1], &out, error)
                   : same(name, "rod_skew_mm")    ? gaugepoint_rod_skew_mm(x[0], x[1], &out, error)
                   : same(name, "top_land_crevice_cm3")
                       ? gaugepoint_top_land_crevice_cm3(x[0], x[1], x[2], &out, error)
                   : same(name, "depth_in_bore_mm") ? gaugepoint_depth_in_bore_mm(x[0], x[1], x[2], x[3], &out, error)
                       : -1;
  if (status == GAUGEPOINT_STATUS_OK) {
    put("result", 1, out);
  } else {
    CHECK(isnan(out));
  }
  return status;
}

static int32_t part(char **cells, GaugepointError *error) {
  static const struct {
    const char *name;
    int32_t (*call)(const double *, GaugepointError *);
  } calls[] = {{"ring_hot_gap", of_gap},          {"pin_clearance", of_pin},   {"press_fit", of_press_fit},
               {"assembly_temperature", of_assembly}, {"liner_in_block", of_liner}, {"deck", of_deck},
               {"compression_ratio", of_chamber},     {"dead_centres", of_dead_centres}, {"piston_travel", of_travel},
               {"crank_angles_at", of_crank_angles}};
  static Numbers n;
  if (same(cells[1], "gasket_band")) {
    return of_gaskets(cells[2], error);
  }
  if (same(cells[1], "least_clearance_of_section")) {
    return of_least(cells[2], error);
  }
  numbers(cells[2], &n);
  for (size_t k = 0; k < sizeof calls / sizeof calls[0]; k++) {
    if (same(cells[1], calls[k].name)) {
      return calls[k].call(n.value, error);
    }
  }
  return of_one_number(cells[1], n.value, error);
}

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

/* The built-in materials, each of which has a strain at both ends of its range and none beyond. */
static void materials(void) {
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  size_t rows = 0;
  row = "materials";
  for (;; rows++) {
    RECORD(GaugepointMaterial, m);
    RECORD(GaugepointGrowth, g);
    int32_t status = gaugepoint_material(rows, &m, &error);
    if (status != GAUGEPOINT_STATUS_OK) {
      CHECK(status == GAUGEPOINT_STATUS_OUT_OF_RANGE && same(error.field, "index") && m.name == NULL);
      break;
    }
    CHECK(m.name[0] != '\0' && m.source[0] != '\0' && m.permissible_error_per_k > 0 && m.from_c < m.to_c);
    CHECK(m.confidence == GAUGEPOINT_CONFIDENCE_PUBLISHED || m.confidence == GAUGEPOINT_CONFIDENCE_MAKER ||
          m.confidence == GAUGEPOINT_CONFIDENCE_UNVERIFIED);
    CHECK(m.coefficients == GAUGEPOINT_COEFFICIENTS_MEAN || m.coefficients == GAUGEPOINT_COEFFICIENTS_INSTANTANEOUS);
    size_t length = strlen(m.name);
    CHECK(gaugepoint_growth_built_in(m.name, length, m.from_c, &g, &error) == GAUGEPOINT_STATUS_OK && g.strain < 0);
    CHECK(gaugepoint_growth_built_in(m.name, length, m.to_c, &g, &error) == GAUGEPOINT_STATUS_OK && g.strain > 0);
    CHECK(gaugepoint_growth_built_in(m.name, length, m.to_c + 1, &g, &error) == GAUGEPOINT_STATUS_OUTSIDE_LAW);
    CHECK(gaugepoint_growth_built_in("\xff", 1, 20, &g, &error) == GAUGEPOINT_STATUS_NOT_UTF8);
    GaugepointMaterialCell cells[32];
    size_t count = 77;
    CHECK(gaugepoint_material_cells(rows, cells, 0, &count, &error) == GAUGEPOINT_STATUS_CONTRADICTION && same(error.field, "room") && count == 77);
    CHECK(gaugepoint_material_cells(rows, cells, 32, &count, &error) == GAUGEPOINT_STATUS_OK && count > 0 && count <= 32);
    for (size_t k = 0; k < count; k++) {
      printf("%s/%zu %.17g\n", m.name, k, cells[k].temperature_c);
      printf("%s/%zu %.17g\n", m.name, k, cells[k].coefficient_per_k);
    }
  }
  size_t none = 77;
  CHECK(gaugepoint_material_cells(rows, NULL, 32, &none, &error) == GAUGEPOINT_STATUS_NULL_POINTER && same(error.field, "cells"));
  GaugepointMaterialCell cell;
  CHECK(gaugepoint_material_cells(rows, &cell, 1, &none, &error) == GAUGEPOINT_STATUS_OUT_OF_RANGE && same(error.field, "index") && none == 77);
  printf("materials %zu\n", rows);
}

/* The duties with illustrative temperatures: a fit document takes each by its name. */
static void duties(void) {
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  size_t rows = 0;
  row = "duties";
  for (;; rows++) {
    RECORD(GaugepointDuty, d);
    int32_t status = gaugepoint_duty(rows, &d, &error);
    if (status != GAUGEPOINT_STATUS_OK) {
      CHECK(status == GAUGEPOINT_STATUS_OUT_OF_RANGE && same(error.field, "index") && d.name == NULL);
      break;
    }
    CHECK(d.name[0] != '\0' && strstr(d.source, "illustrative") != NULL && d.permissible_error_k == 25);
    CHECK(d.confidence == GAUGEPOINT_CONFIDENCE_UNVERIFIED && d.reserved == 0);
    GaugepointDutyPistonRow piston[32];
    GaugepointDutyBoreRow bore[32];
    size_t count = 77;
    CHECK(gaugepoint_duty_piston(rows, piston, 1, &count, &error) == GAUGEPOINT_STATUS_CONTRADICTION && same(error.field, "room") && count == 77);
    CHECK(gaugepoint_duty_bore(rows, bore, 1, &count, &error) == GAUGEPOINT_STATUS_CONTRADICTION && same(error.field, "room") && count == 77);
    CHECK(gaugepoint_duty_piston(rows, piston, 32, &count, &error) == GAUGEPOINT_STATUS_OK && count <= 32);
    for (size_t k = 0; k < count; k++) {
      printf("%s/piston %.17g\n", d.name, piston[k].at);
      printf("%s/piston %.17g\n", d.name, piston[k].thrust_c);
      printf("%s/piston %.17g\n", d.name, piston[k].pin_c);
    }
    CHECK(gaugepoint_duty_bore(rows, bore, 32, &count, &error) == GAUGEPOINT_STATUS_OK && count <= 32);
    for (size_t k = 0; k < count; k++) {
      printf("%s/bore %.17g\n", d.name, bore[k].at);
      printf("%s/bore %.17g\n", d.name, bore[k].wall_c);
    }
  }
  GaugepointDutyPistonRow piston;
  GaugepointDutyBoreRow bore;
  size_t none = 77;
  CHECK(gaugepoint_duty_piston(rows, &piston, 1, &none, &error) == GAUGEPOINT_STATUS_OUT_OF_RANGE && same(error.field, "index") && none == 77);
  CHECK(gaugepoint_duty_bore(rows, &bore, 1, &none, &error) == GAUGEPOINT_STATUS_OUT_OF_RANGE && same(error.field, "index") && none == 77);
  CHECK(gaugepoint_duty_piston(0, NULL, 32, &none, &error) == GAUGEPOINT_STATUS_NULL_POINTER && same(error.field, "rows"));
  CHECK(gaugepoint_duty_bore(0, NULL, 32, &none, &error) == GAUGEPOINT_STATUS_NULL_POINTER && same(error.field, "rows"));
  printf("duties %zu\n", rows);
}

/* The same law as a handle says the same, bit by bit. */
static void expansion(const GaugepointLaw *law, double t, int32_t expected, const GaugepointGrowth *g) {
  GaugepointExpansion *made = NULL;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  if (gaugepoint_expansion_new(law, &made, &e) != GAUGEPOINT_STATUS_OK) {
    CHECK(e.status == expected && made == NULL);
    return;
  }
  RECORD(GaugepointGrowth, out);
  CHECK(gaugepoint_expansion_at(made, t, &out, NULL) == expected);
  CHECK(expected != GAUGEPOINT_STATUS_OK || memcmp(&out, g, sizeof out) == 0);
  double from_c = 0, to_c = 0, mean = 0, strains[3] = {5, 5, 5};
  CHECK(gaugepoint_expansion_range(made, &from_c, &to_c, NULL) == GAUGEPOINT_STATUS_OK && from_c < to_c && from_c <= 20 && to_c >= 20);
  const double temperatures_c[3] = {to_c, 20, t}, beyond_c[3] = {20, to_c + 1, from_c};
  CHECK(gaugepoint_expansion_strains(made, temperatures_c, 3, strains, NULL) == expected);
  CHECK(expected != GAUGEPOINT_STATUS_OK || (strains[0] >= strains[1] && strains[1] == 0 && strains[2] == g->strain));
  strains[0] = 5;
  TOLD(gaugepoint_expansion_strains(made, beyond_c, 3, strains, &e), GAUGEPOINT_STATUS_OUTSIDE_LAW, "temperatures_c/1");
  TOLD(gaugepoint_expansion_strains(made, NULL, 3, strains, &e), GAUGEPOINT_STATUS_NULL_POINTER, "temperatures_c");
  TOLD(gaugepoint_expansion_strains(made, beyond_c, SIZE_MAX, strains, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "temperatures_c");
  TOLD(gaugepoint_expansion_strains(made, beyond_c, 3, NULL, &e), GAUGEPOINT_STATUS_NULL_POINTER, "strains");
  CHECK(strains[0] == 5);
  TOLD(gaugepoint_expansion_mean_per_k(made, t, t, &mean, &e), expected == GAUGEPOINT_STATUS_OK ? GAUGEPOINT_STATUS_CONTRADICTION : expected,
       expected == GAUGEPOINT_STATUS_OK ? "to_c" : "from_c");
  CHECK(isnan(mean));
  if (expected == GAUGEPOINT_STATUS_OK && g->has_mean) {
    CHECK(gaugepoint_expansion_mean_per_k(made, 20, t, &mean, NULL) == GAUGEPOINT_STATUS_OK && mean == g->mean_from_20_per_k);
  }
  TOLD(gaugepoint_expansion_range(made, NULL, &to_c, &e), GAUGEPOINT_STATUS_NULL_POINTER, "from_c");
  TOLD(gaugepoint_expansion_range(NULL, &from_c, &to_c, &e), GAUGEPOINT_STATUS_NULL_POINTER, "expansion");
  CHECK(isnan(from_c) && isnan(to_c));
  TOLD(gaugepoint_expansion_at(NULL, t, &out, &e), GAUGEPOINT_STATUS_NULL_POINTER, "expansion");
  TOLD(gaugepoint_expansion_mean_per_k(NULL, 20, t, &mean, &e), GAUGEPOINT_STATUS_NULL_POINTER, "expansion");
  TOLD(gaugepoint_expansion_strains(NULL, beyond_c, 3, strains, &e), GAUGEPOINT_STATUS_NULL_POINTER, "expansion");
  TOLD(gaugepoint_expansion_new(NULL, &made, &e), GAUGEPOINT_STATUS_NULL_POINTER, "law");
  TOLD(gaugepoint_expansion_new(law, NULL, &e), GAUGEPOINT_STATUS_NULL_POINTER, "expansion");
  gaugepoint_expansion_free(made);
  gaugepoint_expansion_free(NULL);
}

/* A law as lists separated by '|', the temperature last. */
static int32_t growth(char **cells, GaugepointError *error) {
  char *list[4] = {0};
  double x[4][32];
  size_t count[4] = {0};
  int lists = 0;
  for (char *at = cells[2]; at != NULL && lists < 4;) {
    list[lists++] = at;
    at = strchr(at, '|');
    if (at != NULL) {
      *at++ = '\0';
    }
  }
  for (int k = 0; k < lists; k++) {
    for (char *at = list[k], *end; *at != '\0' && count[k] < 32; at = *end == ';' ? end + 1 : end) {
      double value = strtod(at, &end);
      if (end == at) {
        break; /* a name */
      }
      x[k][count[k]++] = value;
    }
  }
  RECORD(GaugepointGrowth, g);
  GaugepointLaw law;
  memset(&law, 0, sizeof law);
  int32_t status = -1;
  double t = x[lists - 1][0];
  if (same(cells[1], "mean_coefficient")) {
    law.form = GAUGEPOINT_LAW_FORM_MEAN_COEFFICIENT;
    law.base_c = x[0][0];
    law.mean_per_k = x[0][1];
    law.from_c = x[0][2];
    law.to_c = x[0][3];
    status = gaugepoint_growth_mean_coefficient(x[0][0], x[0][1], x[0][2], x[0][3], t, &g, error);
  } else if (same(cells[1], "mean_table")) {
    law.form = GAUGEPOINT_LAW_FORM_MEAN_TABLE;
    law.base_c = x[0][0];
    law.temperatures_c = x[1];
    law.coefficients = x[2];
    law.count = count[1];
    status = gaugepoint_growth_mean_table(x[0][0], x[1], x[2], count[1], t, &g, error);
  } else if (same(cells[1], "instantaneous_table")) {
    law.form = GAUGEPOINT_LAW_FORM_INSTANTANEOUS_TABLE;
    law.temperatures_c = x[0];
    law.coefficients = x[1];
    law.count = count[0];
    status = gaugepoint_growth_instantaneous_table(x[0], x[1], count[0], t, &g, error);
  } else if (same(cells[1], "instantaneous_polynomial")) {
    law.form = GAUGEPOINT_LAW_FORM_INSTANTANEOUS_POLYNOMIAL;
    law.coefficients = x[0];
    law.count = count[0];
    law.from_c = x[1][0];
    law.to_c = x[1][1];
    status = gaugepoint_growth_instantaneous_polynomial(x[0], count[0], x[1][0], x[1][1], t, &g, error);
  } else if (same(cells[1], "strain_polynomial")) {
    law.form = GAUGEPOINT_LAW_FORM_STRAIN_POLYNOMIAL;
    law.coefficients = x[0];
    law.count = count[0];
    law.from_c = x[1][0];
    law.to_c = x[1][1];
    status = gaugepoint_growth_strain_polynomial(x[0], count[0], x[1][0], x[1][1], t, &g, error);
  } else if (same(cells[1], "graphite_iron")) {
    law.form = GAUGEPOINT_LAW_FORM_GRAPHITE_IRON;
    law.nodularity_percent = x[0][0];
    law.graphite_percent = x[0][1];
    law.pearlite_to_ferrite = x[0][2];
    status = gaugepoint_growth_graphite_iron(x[0][0], x[0][1], x[0][2], t, &g, error);
  } else if (same(cells[1], "built_in")) {
    law.form = GAUGEPOINT_LAW_FORM_BUILT_IN;
    law.name = list[0];
    law.name_length = strlen(list[0]);
    status = gaugepoint_growth_built_in(list[0], strlen(list[0]), t, &g, error);
  }
  expansion(&law, t, status, &g);
  if (status == GAUGEPOINT_STATUS_OK) {
    CHECK(g.has_mean || isnan(g.mean_from_20_per_k));
    put("strain", 1, g.strain);
    put("instantaneous_per_k", 1, g.instantaneous_per_k);
    put("mean_from_20_per_k", g.has_mean, g.mean_from_20_per_k);
  }
  return status;
}

enum { SURFACES = 4, TABLES = 8, ROWS = 16 };

/* A piston as a row of piston.csv gives it; what it points to stands beside it. */
typedef struct {
  GaugepointPiston piston;
  GaugepointPistonSurface surfaces[SURFACES];
  GaugepointTableRow rows[SURFACES][TABLES][ROWS];
  GaugepointWindow windows[SURFACES][ROWS];
} Drawn;

static void surface_of(const char *text, size_t k, Drawn *d) {
  static Numbers n;
  GaugepointPistonSurface *s = &d->surfaces[k];
  numbers(text, &n);
  const double *v = n.value;
  int32_t form = (int32_t)v[0];
  GaugepointTable *symmetric[] = {&s->barrel, &s->ovality, &s->double_ovality, NULL, NULL};
  GaugepointTable *asymmetric[] = {&s->thrust, &s->pin_axis, &s->minor_thrust, &s->thrust_fourth, &s->minor_thrust_fourth};
  CHECK(n.groups == 7 && n.size[0] == 7);
  s->form = form;
  s->counted = (int32_t)v[1];
  s->from_mm = v[2];
  s->to_mm = v[3];
  s->has_coating = v[4] > 0;
  s->coating_mm = v[4];
  s->has_panels = v[5] > 0;
  s->thrust_panel_deg = v[5];
  s->minor_thrust_panel_deg = v[6];
  v += 7;
  for (size_t t = 0; t < 5; t++) {
    GaugepointTable *table = (form == 1 ? symmetric : asymmetric)[t];
    size_t count = n.size[t + 1] / 2;
    CHECK(count <= ROWS && (table != NULL || count == 0));
    if (table != NULL) {
      memcpy(d->rows[k][t], v, count * sizeof d->rows[k][t][0]);
      table->rows = d->rows[k][t];
      table->count = count;
    }
    v += 2 * count;
  }
  s->windows = d->windows[k];
  s->window_count = n.size[6] / 5;
  for (size_t w = 0; w < s->window_count; w++, v += 5) {
    GaugepointWindow window = {(int32_t)v[0], 0, v[1], v[2], v[3], v[4]};
    d->windows[k][w] = window;
  }
}

/* "gauge height|surface|surface"; the text is cut into pieces. */
static Drawn *drawn(char *text) {
  static Drawn d;
  char *bar = strchr(text, '|');
  memset(&d, 0, sizeof d);
  d.piston.gauge_height_mm = strtod(text, NULL);
  d.piston.surfaces = d.surfaces;
  while (bar != NULL) {
    char *next = strchr(++bar, '|');
    if (next != NULL) {
      *next = '\0';
    }
    CHECK(d.piston.surface_count < SURFACES);
    surface_of(bar, d.piston.surface_count++, &d);
    bar = next;
  }
  return &d;
}

/* "uncertainty/heights/angles/values" */
static GaugepointPistonPoints points_of(const char *reading, const char *text, Numbers *n) {
  GaugepointPistonPoints p;
  numbers(text, n);
  CHECK(n->groups == 4);
  p.has_uncertainty = n->size[0] == 1;
  p.uncertainty_mm = p.has_uncertainty ? n->value[0] : NAN;
  p.heights_mm = n->value + n->size[0];
  p.angles_deg = p.heights_mm + n->size[1];
  p.values_mm = p.angles_deg + n->size[2];
  p.count = n->size[1];
  p.reading = same(reading, "radii") ? GAUGEPOINT_PISTON_READING_RADII : GAUGEPOINT_PISTON_READING_DIAMETERS;
  return p;
}

/* A name that depends on a place; it lasts to the end of the row. */
static const char *placed(const char *form, size_t place) {
  static char texts[NAMES][48];
  char *text = texts[names];
  snprintf(text, sizeof texts[0], form, (int)place);
  return text;
}

static int32_t of_warnings(char *text, GaugepointError *error) {
  GaugepointFormWarning w[6 * SURFACES];
  size_t count = 77;
  int32_t status = gaugepoint_piston_warnings(&drawn(text)->piston, w, 6 * SURFACES, &count, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("count", 1, (double)count);
    for (size_t k = 0; k < count; k++) {
      put(placed("%d.kind", k), 1, w[k].kind);
      put(placed("%d.surface", k), 1, (double)w[k].surface);
      put(placed("%d.height_mm", k), 1, w[k].height_mm);
      put(placed("%d.angle_deg", k), w[k].has_angle, w[k].angle_deg);
      put(placed("%d.value", k), 1, w[k].value);
    }
  } else {
    CHECK(count == 77);
  }
  return status;
}

static int32_t of_piston_surface(const char *reading, const char *text, GaugepointError *error) {
  static Numbers n;
  static double residuals[MOST];
  GaugepointPistonStation s[16];
  RECORD(GaugepointPistonFit, f);
  GaugepointPistonPoints points = points_of(reading, strchr(text, ';') + 1, &n);
  int32_t status = gaugepoint_fit_piston_surface(&points, text[0] == '1', s, 16, residuals, &f, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("stations", 1, (double)f.stations);
    put("dof", 1, (double)f.dof);
    put("deviation_mm", f.has_deviation, f.deviation_mm);
    for (size_t k = 0; k < f.stations; k++) {
      int u = s[k].has_uncertainty, more = s[k].has_double_ovality;
      put(placed("%d.height_mm", k), 1, s[k].height_mm);
      put(placed("%d.points", k), 1, (double)s[k].points);
      put(placed("%d.diameter_mm", k), 1, s[k].diameter_mm);
      put(placed("%d.diameter_uncertainty_mm", k), u, s[k].diameter_uncertainty_mm);
      put(placed("%d.ovality_mm", k), 1, s[k].ovality_mm);
      put(placed("%d.ovality_uncertainty_mm", k), u, s[k].ovality_uncertainty_mm);
      put(placed("%d.double_ovality_mm", k), more, s[k].double_ovality_mm);
      put(placed("%d.double_ovality_uncertainty_mm", k), u && more, s[k].double_ovality_uncertainty_mm);
    }
    put(placed("residuals.%d", 0), 1, residuals[0]);
    put(placed("residuals.%d", points.count - 1), 1, residuals[points.count - 1]);
  }
  return status;
}

static int32_t of_piston_trace(const char *reading, char *text, GaugepointError *error) {
  static Numbers n;
  static double residuals[MOST];
  RECORD(GaugepointPistonTrace, f);
  char *bar = strchr(text, '|'), *rest;
  CHECK(bar != NULL);
  *bar = '\0';
  double gauge = strtod(text, &rest);
  GaugepointPistonPoints points = points_of(reading, rest + 1, &n);
  int32_t status = gaugepoint_fit_piston_trace(&drawn(bar + 1)->piston, gauge, &points, residuals, &f, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    int u = f.has_uncertainty;
    put("size_mm", 1, f.size_mm);
    put("size_mm_uncertainty", u, f.size_uncertainty_mm);
    put("x_mm", f.has_x, f.x_mm);
    put("x_mm_uncertainty", u && f.has_x, f.x_uncertainty_mm);
    put("y_mm", f.has_y, f.y_mm);
    put("y_mm_uncertainty", u && f.has_y, f.y_uncertainty_mm);
    put("slope_x", f.has_slope_x, f.slope_x);
    put("slope_x_uncertainty", u && f.has_slope_x, f.slope_x_uncertainty);
    put("slope_y", f.has_slope_y, f.slope_y);
    put("slope_y_uncertainty", u && f.has_slope_y, f.slope_y_uncertainty);
    put("height_mm", 1, f.height_mm);
    put("rms_mm", 1, f.rms_mm);
    put("largest", 1, (double)f.largest);
    put("dof", 1, (double)f.dof);
    put("deviation_mm", f.has_deviation, f.deviation_mm);
    put("least_share", 1, f.least_share);
    put(placed("residuals.%d", f.largest), 1, residuals[f.largest]);
    put("residuals.0", 1, residuals[0]);
  }
  return status;
}

static int32_t piston(char **cells, GaugepointError *error) {
  static Numbers n;
  char *text = cells[3], *bar;
  if (same(cells[1], "piston_warnings")) {
    return of_warnings(text, error);
  }
  if (same(cells[1], "fit_piston_surface")) {
    return of_piston_surface(cells[2], text, error);
  }
  if (same(cells[1], "fit_piston_trace")) {
    return of_piston_trace(cells[2], text, error);
  }
  bar = strchr(text, '|');
  CHECK(bar != NULL);
  *bar = '\0';
  numbers(text, &n);
  const double *x = n.value;
  const GaugepointPiston *of = &drawn(bar + 1)->piston;
  if (same(cells[1], "piston_largest")) {
    RECORD(GaugepointLargest, l);
    int32_t status = gaugepoint_piston_largest(of, x[0], x[1], &l, error);
    if (status == GAUGEPOINT_STATUS_OK) {
      put("angle_deg", 1, l.angle_deg);
      put("diameter_mm", 1, l.diameter_mm);
    }
    return status;
  }
  double out = 7;
  int32_t status = same(cells[1], "piston_radius_mm")     ? gaugepoint_piston_radius_mm(of, x[0], x[1], x[2], &out, error)
                   : same(cells[1], "piston_diameter_mm") ? gaugepoint_piston_diameter_mm(of, x[0], x[1], x[2], &out, error)
                                                          : gaugepoint_piston_ovality_mm(of, x[0], &out, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("result", 1, out);
  } else {
    CHECK(isnan(out));
  }
  return status;
}

static int32_t of_clean_up(const char *axis, const Numbers *n, GaugepointError *error) {
  static const char *const words[] = {"original", "worn", "best", NULL};
  static Numbers reach;
  static GaugepointHeld held[MOST];
  RECORD(GaugepointCleanUp, c);
  int32_t of = choice(axis, words, &reach);
  size_t count = n->size[1];
  const double *v = n->value, *angles = v + 4, *depths = angles + count, *radii = depths + count;
  CHECK(n->groups == 4 && n->size[0] == 4 && n->size[2] == count && n->size[3] == count);
  int32_t status = gaugepoint_clean_up(angles, depths, radii, count, of, reach.value[0], reach.value[1], v[0], v[1], v[2],
                                       v[3], held, MOST, &c, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("diameter_mm", 1, c.diameter_mm);
    put("standard_uncertainty_mm", 1, c.standard_uncertainty_mm);
    put("least_mm", 1, c.least_mm);
    put("x_mm", 1, c.bar.x_mm);
    put("y_mm", 1, c.bar.y_mm);
    put("middle_mm", 1, c.bar.middle_mm);
    put("slope_x", 1, c.bar.slope_x);
    put("slope_y", 1, c.bar.slope_y);
    for (size_t k = 0; k < c.held; k++) {
      put(placed("held.%d", held[k].place), 1, held[k].share);
    }
  }
  return status;
}

/* A size and the bar, then the walls. */
static int32_t of_walls(int left, const Numbers *n, GaugepointError *error) {
  GaugepointWallPoint walls[16];
  double out[16] = {7};
  const double *v = n->value;
  const GaugepointBar bar = {v[1], v[2], v[3], v[4], v[5]};
  size_t count = n->groups - 1;
  CHECK(count > 0 && count < 16 && n->count == 6 + 4 * count);
  memcpy(walls, v + 6, 4 * count * sizeof v[0]);
  int32_t status = left ? gaugepoint_walls_left(&bar, v[0], walls, count, out, error)
                        : gaugepoint_largest_bore_by_walls_mm(&bar, v[0], walls, count, out, error);
  for (size_t k = 0; status == GAUGEPOINT_STATUS_OK && k < (left ? count : 1); k++) {
    put(left ? placed("%d", k) : "diameter_mm", 1, out[k]);
  }
  CHECK(status == GAUGEPOINT_STATUS_OK || (left ? out[0] == 7 : isnan(out[0])));
  return status;
}

static int32_t clean_up(char **cells, GaugepointError *error) {
  static Numbers n;
  numbers(cells[3], &n);
  if (same(cells[1], "clean_up")) {
    return of_clean_up(cells[2], &n, error);
  }
  if (!same(cells[1], "from_diameters")) {
    return of_walls(same(cells[1], "walls_left"), &n, error);
  }
  RECORD(GaugepointCleanUpRange, range);
  int32_t status = gaugepoint_clean_up_from_diameters(n.value[0], n.value[1], n.value[2], &range, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("lower_mm", 1, range.lower_mm);
    put("upper_mm", 1, range.upper_mm);
  }
  return status;
}

static int32_t of_order(size_t cylinders, GaugepointError *error) {
  size_t order[25];
  memset(order, 0x5A, sizeof order);
  int32_t status = gaugepoint_boring_order(cylinders, order, error);
  for (size_t k = 0; status == GAUGEPOINT_STATUS_OK && k < cylinders; k++) {
    put(placed("%d", k), 1, (double)order[k]);
  }
  CHECK(order[status == GAUGEPOINT_STATUS_OK ? cylinders : 0] == (size_t)0x5A5A5A5A5A5A5A5A);
  return status;
}

static int32_t machining(char **cells, GaugepointError *error) {
  static Numbers n;
  int32_t status;
  numbers(cells[2], &n);
  const double *v = n.value;
  if (same(cells[1], "bore_sizes")) {
    RECORD(GaugepointBoreSizes, sizes);
    status = gaugepoint_bore_sizes(v[0], v[1], v[2], &sizes, error);
    if (status == GAUGEPOINT_STATUS_OK) {
      put("finish_mm", 1, sizes.finish_mm);
      put("boring_mm", 1, sizes.boring_mm);
    }
  } else if (same(cells[1], "dial_reading_mm")) {
    const GaugepointWarmGauging gauging = {v[1], v[2], v[3], v[4], v[5], v[6], v[7], v[8], v[9]};
    double dial = 7;
    status = gaugepoint_dial_reading_mm(v[0], &gauging, &dial, error);
    if (status == GAUGEPOINT_STATUS_OK) {
      put("dial_mm", 1, dial);
    } else {
      CHECK(isnan(dial));
    }
  } else if (same(cells[1], "finish_check")) {
    RECORD(GaugepointFinishCheck, check);
    status = gaugepoint_finish_check(v[0], v[1], v[2], &check, error);
    if (status == GAUGEPOINT_STATUS_OK) {
      put("outcome", 1, check.outcome);
      put("difference_mm", check.has_difference, check.difference_mm);
    }
  } else {
    CHECK(same(cells[1], "boring_order"));
    status = of_order((size_t)v[0], error);
  }
  return status;
}

static const char *placed_twice(const char *form, size_t first, size_t second) {
  char with[48];
  snprintf(with, sizeof with, form, (int)first, (int)second);
  return placed(with, 0);
}

static int32_t of_filing(const Numbers *n, GaugepointError *error) {
  const double *v = n->value;
  const int32_t *g = n->given;
  const GaugepointGapReading reading = {g[1], 0, v[0], v[1], v[2], v[3], v[4]};
  const GaugepointWantedGap wanted = {g[6], g[7], n->groups == 2, 0, v[6], v[7], v[8], v[9], v[10], v[11], v[12], v[13]};
  RECORD(GaugepointFiling, f);
  int32_t status = gaugepoint_filing(&reading, v[5], &wanted, &f, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("outcome", 1, f.outcome);
    put("gap_mm", 1, f.gap_mm);
    put("standard_uncertainty_mm", 1, f.standard_uncertainty_mm);
    put("least_mm", 1, f.least_mm);
    put("target_mm", 1, f.target_mm);
    put("file_off_mm", 1, f.file_off_mm);
    put("each_end_mm", 1, f.each_end_mm);
    put("hot_gap_mm", f.has_hot_gap, f.hot_gap_mm);
    CHECK(strstr(f.caution, "cover your eyes") != NULL);
  }
  return status;
}

/* What is wanted, liners and shims; how many liners there are is where the second bar stands. */
static int32_t of_shims(const char *text, const Numbers *n, GaugepointError *error) {
  GaugepointLiner liners[32];
  GaugepointShim shims[16];
  GaugepointShimmed shimmed[32];
  GaugepointShimRuledOut reasons[64];
  size_t count = 1, thicknesses;
  const double *v = n->value;
  const int32_t *g = n->given;
  const GaugepointWantedProtrusion wanted = {g[3], g[4], (size_t)v[5], v[0], v[1], v[2], v[3], v[4]};
  for (const char *at = strchr(text, '|') + 1; *at != '|'; at++) {
    count += *at == '/';
  }
  thicknesses = n->groups - 1 - count - (n->size[n->groups - 1] == 0);
  CHECK(count < 32 && thicknesses < 16 && n->count == 6 + 6 * count + 2 * thicknesses);
  for (size_t k = 0, at = 6; k < count; k++, at += 6) {
    const GaugepointLiner liner = {v[at], {v[at + 1], v[at + 2], v[at + 3], v[at + 4]}, g[at + 5], 0, v[at + 5]};
    liners[k] = liner;
  }
  for (size_t k = 0, at = 6 + 6 * count; k < thicknesses; k++, at += 2) {
    const GaugepointShim shim = {v[at], g[at + 1], 0, (size_t)v[at + 1]};
    shims[k] = shim;
  }
  RECORD(GaugepointShimPlan, p);
  int32_t status = gaugepoint_shim_plan(liners, count, shims, thicknesses, &wanted, shimmed, reasons, 64, &p, error);
  if (status != GAUGEPOINT_STATUS_OK) {
    return status;
  }
  CHECK(strstr(p.caution, "lift them with a puller") != NULL);
  put("largest_deviation_mm", p.is_done, p.largest_deviation_mm);
  put("largest_step_mm", p.has_step, p.largest_step_mm);
  put("shims_used", p.is_done, p.is_done ? (double)p.shims_used : NAN);
  put("ruled_out", 1, (double)p.ruled_out);
  for (size_t k = 0; k < count; k++) {
    const GaugepointShimmed *s = &shimmed[k];
    put(placed("%d.mean_depth_mm", k), 1, s->mean_depth_mm);
    put(placed("%d.unevenness_mm", k), 1, s->unevenness_mm);
    put(placed("%d.least_shims_mm", k), 1, s->least_shims_mm);
    put(placed("%d.most_shims_mm", k), 1, s->most_shims_mm);
    put(placed("%d.lowest_mm", k), s->has_stack, s->lowest_mm);
    put(placed("%d.highest_mm", k), s->has_stack, s->highest_mm);
    put(placed("%d.shims", k), s->has_stack, s->has_stack ? (double)s->shims : NAN);
    for (size_t j = 0; j < s->shims; j++) {
      put(placed_twice("%d.shim.%d", k, j), 1, (double)s->stack[j]);
    }
  }
  for (size_t k = 0; k < p.ruled_out; k++) {
    put(placed("ruled_out.%d.reason", k), 1, reasons[k].reason);
    put(placed("ruled_out.%d.liner", k), 1, (double)reasons[k].liner);
  }
  return status;
}

static int32_t of_gasket(const char *text, const Numbers *n, GaugepointError *error) {
  GaugepointGasketBand bands[16];
  double protrusions[16], squish[16];
  size_t count = 1, lines;
  const double *v = n->value;
  const GaugepointGasketConditions conditions = {n->given[1], n->given[2], v[0], v[1], v[2]};
  for (const char *at = strchr(text, '|') + 1; *at != '|'; at++) {
    count += *at == '/';
  }
  lines = n->groups - 1 - count;
  CHECK(count < 16 && lines < 16 && n->count == 3 + 2 * count + 3 * lines);
  memcpy(bands, v + 3 + 2 * count, 3 * lines * sizeof v[0]);
  RECORD(GaugepointGasketGrade, g);
  int32_t status = gaugepoint_gasket_grade(v + 3, count, bands, lines, &conditions, protrusions, squish, &g, error);
  if (status != GAUGEPOINT_STATUS_OK) {
    return status;
  }
  put("largest_piston", 1, (double)g.largest_piston);
  put("band", 1, (double)g.band);
  put("largest_mm", 1, g.largest_mm);
  put("spread_mm", 1, g.spread_mm);
  put("thickness_mm", 1, g.thickness_mm);
  put("spread_is_met", g.has_spread_is_met, g.has_spread_is_met ? g.spread_is_met : NAN);
  put("probability_below", g.has_probabilities, g.probability_below);
  put("probability_above", g.has_probabilities, g.probability_above);
  for (size_t k = 0; k < count; k++) {
    put(placed("%d.protrusion_mm", k), 1, protrusions[k]);
    put(placed("%d.squish_mm", k), 1, squish[k]);
  }
  return status;
}

static int32_t of_cuts(const Numbers *n, GaugepointError *error) {
  GaugepointPart parts[32];
  GaugepointCut cuts[16];
  double cut[32];
  size_t count = n->groups - 1, each = n->size[1] / 2;
  CHECK(count <= 16 && count * each <= 32 && n->count == 1 + 2 * count * each);
  memcpy(parts, n->value + 1, 2 * count * each * sizeof n->value[0]);
  RECORD(GaugepointCutList, l);
  int32_t status = gaugepoint_cut_list(parts, count, each, n->value[0], cut, cuts, &l, error);
  if (status != GAUGEPOINT_STATUS_OK) {
    return status;
  }
  put("lightest", 1, (double)l.lightest);
  put("most_g", 1, l.most_g);
  put("is_met", 1, l.is_met);
  for (size_t k = 0; k < count; k++) {
    put(placed("%d.mass_g", k), 1, cuts[k].mass_g);
    put(placed("%d.left_g", k), 1, cuts[k].left_g);
    put(placed("%d.over_g", k), 1, cuts[k].over_g);
    for (size_t j = 0; j < each; j++) {
      put(placed_twice("%d.%d.cut_g", k, j), 1, cut[k * each + j]);
    }
  }
  return status;
}

static int32_t of_bob(const double *v, GaugepointError *error) {
  const GaugepointBobWeight pin = {(size_t)v[0], v[1], v[2], v[3], v[4], v[5], v[6]};
  double bob = 7;
  int32_t status = gaugepoint_bob_weight_g(&pin, &bob, error);
  if (status == GAUGEPOINT_STATUS_OK) {
    put("bob_g", 1, bob);
  } else {
    CHECK(isnan(bob));
  }
  return status;
}

static int32_t of_finish(const char *text, GaugepointError *error) {
  static const char *const rules[] = {"simple_acceptance",    "proven", "conformance_probability", "expanded_guard_band",
                                      "simple_acceptance_by_ratio", NULL};
  static const char *const parameters[] = {"rpk", "rk", "rvk", "mr1", "mr2", "crosshatch"};
  static Numbers n;
  GaugepointFinishValue values[6];
  int32_t rule = choice(text, rules, &n);
  CHECK(n.count == 25 && n.groups == 7);
  for (size_t k = 0; k < 6; k++) {
    const double *v = n.value + 1 + 4 * k;
    const int32_t *g = n.given + 1 + 4 * k;
    const GaugepointFinishValue value = {g[0], g[1], g[2], g[3], v[0], v[1], v[2], v[3]};
    values[k] = value;
  }
  RECORD(GaugepointFinishFound, f);
  int32_t status = gaugepoint_finish(values, rule, n.value[0], &f, error);
  if (status != GAUGEPOINT_STATUS_OK) {
    return status;
  }
  put("is_met", 1, f.is_met);
  for (size_t k = 0; k < 6; k++) {
    char *name = (char *)placed("%d", k);
    snprintf(name, 48, "%s.finding", parameters[k]);
    put(name, 1, f.parameters[k].finding);
    name = (char *)placed("%d", k);
    snprintf(name, 48, "%s.probability_of_conformity", parameters[k]);
    put(name, f.parameters[k].has_probability, f.parameters[k].probability_of_conformity);
  }
  return status;
}

static int32_t of_oversizes(const char *text, const Numbers *n, GaugepointError *error) {
  enum { BORES = 8, STEPS = 4, WAYS = 2 * STEPS + 2, REASONS = WAYS * (2 * BORES + STEPS + 1) };
  static GaugepointOversizeRuledOut reasons[REASONS];
  GaugepointWornBore bores[BORES];
  GaugepointStep steps[STEPS];
  GaugepointConsequence does[STEPS];
  GaugepointOversizeChoice ways[WAYS];
  GaugepointBoreAction actions[WAYS * BORES];
  size_t count = 1, sizes, reason = 0;
  const double *v = n->value;
  const int32_t *g = n->given;
  GaugepointBlock block = {g[1], g[2], g[5], n->size[0] > 6, v[0], v[1], v[2], v[3], v[4], v[5], {0, 0, 0, 0, 0, 0, 0, 0}};
  if (block.has_chamber) {
    memcpy(&block.chamber, v + 6, sizeof block.chamber);
  }
  for (const char *at = strchr(text, '|') + 1; *at != '|'; at++) {
    count += *at == '/';
  }
  sizes = n->groups - 1 - count;
  CHECK(count <= BORES && sizes <= STEPS && n->count == n->size[0] + 5 * count + 4 * sizes);
  for (size_t k = 0, at = n->size[0]; k < count; k++, at += 5) {
    const GaugepointWornBore bore = {v[at], v[at + 1], g[at + 2], v[at + 3] > 0, v[at + 2], v[at + 4] > 0, 0};
    bores[k] = bore;
  }
  for (size_t k = 0, at = n->size[0] + 5 * count; k < sizes; k++, at += 4) {
    const GaugepointStep step = {v[at], v[at + 1], g[at + 2], g[at + 3], (size_t)v[at + 2], v[at + 3]};
    steps[k] = step;
  }
  RECORD(GaugepointOversizes, o);
  int32_t status = gaugepoint_oversizes(&block, bores, count, steps, sizes, does, ways, WAYS, actions, reasons, REASONS, &o, error);
  if (status != GAUGEPOINT_STATUS_OK) {
    return status;
  }
  put("choices", 1, (double)o.choices);
  for (size_t k = 0; k < o.choices; k++) {
    put(placed("%d.way", k), 1, ways[k].way);
    put(placed("%d.price", k), 1, ways[k].price);
    put(placed("%d.is_ruled_out", k), 1, ways[k].ruled_out > 0);
    for (size_t j = 0; j < count; j++) {
      put(placed_twice("%d.%d.action", k, j), 1, actions[k * count + j].kind);
      put(placed_twice("%d.%d.step", k, j), 1, (double)actions[k * count + j].step);
    }
    for (size_t j = 0; j < ways[k].ruled_out; j++, reason++) {
      const GaugepointOversizeRuledOut *r = &reasons[reason];
      put(placed_twice("%d.ruled_out.%d.reason", k, j), 1, r->reason);
      put(placed_twice("%d.ruled_out.%d.place", k, j), r->has_place, r->has_place ? (double)r->place : NAN);
      put(placed_twice("%d.ruled_out.%d.value_mm", k, j), r->has_value, r->value_mm);
      put(placed_twice("%d.ruled_out.%d.needed", k, j), r->has_counts, r->has_counts ? (double)r->needed : NAN);
      put(placed_twice("%d.ruled_out.%d.available", k, j), r->has_counts, r->has_counts ? (double)r->available : NAN);
    }
  }
  CHECK(reason == o.ruled_out);
  for (size_t k = 0; k < sizes; k++) {
    put(placed("step.%d.bore_mm", k), 1, does[k].bore_mm);
    put(placed("step.%d.compression_ratio", k), does[k].has_compression_ratio, does[k].compression_ratio);
    put(placed("step.%d.ring_gap_mm", k), does[k].has_ring_gap, does[k].ring_gap_mm);
    put(placed("step.%d.more_mass_g", k), does[k].has_more_mass, does[k].more_mass_g);
  }
  return status;
}

static int32_t assembly(char **cells, GaugepointError *error) {
  static Numbers n;
  if (same(cells[1], "finish")) {
    return of_finish(cells[2], error);
  }
  numbers(cells[2], &n);
  if (same(cells[1], "filing")) {
    return of_filing(&n, error);
  }
  if (same(cells[1], "shim_plan")) {
    return of_shims(cells[2], &n, error);
  }
  if (same(cells[1], "gasket_grade")) {
    return of_gasket(cells[2], &n, error);
  }
  if (same(cells[1], "cut_list")) {
    return of_cuts(&n, error);
  }
  if (same(cells[1], "bob_weight_g")) {
    return of_bob(n.value, error);
  }
  CHECK(same(cells[1], "oversizes"));
  return of_oversizes(cells[2], &n, error);
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
  vectors = words[1];
  file(words[1], "study.csv", 6, study);
  file(words[1], "risk.csv", 8, risk);
  file(words[1], "before.csv", 6, before);
  file(words[1], "shape.csv", 6, shape);
  file(words[1], "piston.csv", 6, piston);
  file(words[1], "parts.csv", 5, part);
  file(words[1], "growth.csv", 5, growth);
  file(words[1], "clean_up.csv", 6, clean_up);
  file(words[1], "machining.csv", 5, machining);
  file(words[1], "assembly.csv", 5, assembly);
  table();
  materials();
  duties();
  return finish();
}
