/* hot FOLDER: hot fits that are made once and asked often, against the rows of hot_fit.csv; what a mistaken caller passes to them, and to the laws of
 * expansion, gives a status; no number kills a host that unmasks floating-point exceptions. */
#define _GNU_SOURCE
#include "check.h"

#include <fenv.h>

enum { MOST = 64, ROWS = 4 };

/* The cells of a row: lists by '/'. */
typedef struct {
  double value[MOST];
  size_t count;
} List;

static const char *find(const char *fit, const char *key) {
  size_t length = strlen(key);
  for (const char *at = fit; at != NULL; at = strchr(at, ';') ? strchr(at, ';') + 1 : NULL) {
    if (strncmp(at, key, length) == 0 && at[length] == '=') {
      return at + length + 1;
    }
  }
  return NULL;
}

/* Numbers up to the end of the cell, or up to '@'; of a cell that is not there, none. */
static List list(const char *text) {
  List out = {{0}, 0};
  while (text != NULL && *text != '\0' && *text != ';' && *text != '@' && *text != ',') {
    char *end;
    out.value[out.count++] = strtod(text, &end);
    CHECK(end != text && out.count < MOST);
    text = end + (*end == '/');
  }
  return out;
}

static double one(const char *fit, const char *key) {
  List l = list(find(fit, key));
  CHECK(l.count == 1);
  return l.value[0];
}

/* Places and values of a table. */
typedef struct {
  List at, value;
  GaugepointTableRow rows[MOST];
} Columns;

static Columns table(const char *fit, const char *key) {
  Columns out;
  const char *text = find(fit, key);
  memset(&out, 0, sizeof out);
  CHECK(text != NULL && strchr(text, '@') != NULL);
  out.at = list(text);
  out.value = list(strchr(text, '@') + 1);
  for (size_t k = 0; k < out.at.count; k++) {
    out.rows[k].height_mm = out.at.value[k];
    out.rows[k].value_mm = out.value.value[k];
  }
  return out;
}

static GaugepointTable rows_of(const Columns *c) {
  GaugepointTable out = {c->rows, c->at.count};
  return out;
}

/* Everything that a row is made of, with its memory. */
typedef struct {
  Columns barrel, ovality, fourth, thrust, pin, deviation, wall;
  List waves;
  double zero;
  GaugepointWindow window;
  GaugepointPistonSurface surface;
  GaugepointPiston piston;
  GaugepointSurfaceGrowth growth;
  GaugepointBoreHarmonic harmonics[8];
  GaugepointBore bore;
  GaugepointHotFitParts parts;
  int32_t position;
  double at;
} Row;

static void read_row(const char *fit, Row *r) {
  List list_of;
  memset(r, 0, sizeof *r);
  r->barrel = table(fit, "barrel");
  r->ovality = table(fit, "ovality");
  r->fourth = table(fit, "double");
  r->thrust = table(fit, "thrust");
  r->pin = table(fit, "pin");
  r->deviation = table(fit, "deviation");
  r->wall = table(fit, "wall");
  r->surface.form = GAUGEPOINT_PISTON_FORM_SYMMETRIC;
  r->surface.counted = GAUGEPOINT_COUNTED_ABOVE;
  r->surface.to_mm = one(fit, "top");
  r->surface.barrel = rows_of(&r->barrel);
  r->surface.ovality = rows_of(&r->ovality);
  r->surface.double_ovality = rows_of(&r->fourth);
  r->surface.coating_mm = one(fit, "coating");
  r->surface.has_coating = r->surface.coating_mm > 0;
  list_of = list(find(fit, "panel"));
  if (list_of.count == 2) {
    r->surface.has_panels = 1;
    r->surface.thrust_panel_deg = list_of.value[0];
    r->surface.minor_thrust_panel_deg = list_of.value[1];
  }
  list_of = list(find(fit, "cut"));
  if (list_of.count == 4) {
    GaugepointWindow cut = {GAUGEPOINT_WINDOW_KIND_CUT_OUT, 0, list_of.value[0], list_of.value[1], list_of.value[2], list_of.value[3]};
    r->window = cut;
    r->surface.windows = &r->window;
    r->surface.window_count = 1;
  }
  r->piston.gauge_height_mm = one(fit, "gauge");
  r->piston.surfaces = &r->surface;
  r->piston.surface_count = 1;
  list_of = list(find(fit, "ratios"));
  CHECK(list_of.count == 2);
  r->growth.law = mean(20.5e-6);
  r->growth.ratio_thrust = list_of.value[0];
  r->growth.ratio_pin = list_of.value[1];
  r->bore.diameter_mm = one(fit, "bore");
  r->bore.depths_mm = r->deviation.at.value;
  r->bore.deviation_mm = r->deviation.value.value;
  r->bore.depth_count = r->deviation.at.count;
  r->waves = list(find(fit, "waves"));
  r->bore.harmonics = r->harmonics;
  r->bore.harmonic_count = r->waves.count / 3;
  for (size_t k = 0; k < r->bore.harmonic_count; k++) {
    const double *wave = r->waves.value + 3 * k;
    GaugepointBoreHarmonic h = {(size_t)wave[0], &r->zero, wave + 1, wave + 2, 1};
    r->harmonics[k] = h;
  }
  r->parts.piston_diameter_mm = one(fit, "piston");
  r->parts.piston = &r->piston;
  r->parts.growth = &r->growth;
  r->parts.growth_count = 1;
  GaugepointPistonField field = {r->thrust.at.value, r->thrust.value.value, r->pin.value.value, r->thrust.at.count};
  r->parts.piston_field = field;
  r->parts.bore = &r->bore;
  r->parts.bore_law = mean(11.4e-6);
  GaugepointBoreField wall = {r->wall.at.value, r->wall.value.value, r->wall.at.count};
  r->parts.bore_field = wall;
  list_of = list(find(fit, "depth"));
  r->position = list_of.count ? GAUGEPOINT_POSITION_GAUGE_DEPTH : GAUGEPOINT_POSITION_ANYWHERE;
  /* a number that is not looked at may be anything */
  r->at = list_of.count ? list_of.value[0] : NAN;
}

/* A line for every number, for the comparison with the bits of the core. */
static void put(const char *name, int given, double value) {
  CHECK(given ? isfinite(value) : isnan(value));
  if (given) {
    printf("%s %s %.17g\n", row, name, value);
  } else {
    printf("%s %s none\n", row, name);
  }
}

static void scenarios(const GaugepointHotFit *fit, GaugepointError *e) {
  RECORD(GaugepointHotAnswer, bore);
  CHECK(gaugepoint_hot_fit_bore_for_smallest_mm(fit, 0.01, &bore, e) == 0);
  put("bore_for_smallest_mm", bore.has_value, bore.value);
  for (int32_t scenario = 1; scenario <= 3; scenario++) {
    RECORD(GaugepointHotOnset, o);
    RECORD(GaugepointHotAnswer, bench);
    CHECK(gaugepoint_hot_fit_onset(fit, scenario, -0.02, &o, e) == 0);
    CHECK(o.has_factor == (o.outcome != GAUGEPOINT_ONSET_OUTCOME_TOUCHES_COLD));
    CHECK(o.has_place == (o.outcome == GAUGEPOINT_ONSET_OUTCOME_TOUCHES) && o.proven == 1);
    CHECK((o.stopped_by[0] != '\0') == (o.outcome == GAUGEPOINT_ONSET_OUTCOME_NO_CONTACT));
    put("onset.factor", o.has_factor, o.factor);
    put("onset.thrust_c", o.has_factor, o.thrust_c);
    put("onset.slope_mm", o.has_place, o.slope_mm);
    put("onset.angle_deg", o.has_place, o.place.angle_deg);
    CHECK(gaugepoint_hot_fit_temperature_for_bench_c(fit, 0.1, scenario, 0, &bench, e) == 0);
    CHECK((bench.no_solution[0] == '\0') == bench.has_value);
    put("temperature_for_bench_c", bench.has_value, bench.value);
  }
}

/* Piston and bore by themselves; the first that is refused ends it. */
static int32_t apart(const GaugepointHotFitParts *p, GaugepointHotPiston **piston, GaugepointHotBore **bore, GaugepointError *e) {
  int32_t status = gaugepoint_hot_piston_new(p->piston_diameter_mm, p->piston, p->growth, p->growth_count, &p->piston_field, piston, e);
  return status ? status : gaugepoint_hot_bore_new(p->bore, &p->bore_law, &p->bore_field, bore, e);
}

static void put_size(const char *of, int32_t status, const GaugepointHotSize *s) {
  const char *const names[] = {"cold_radius_mm", "hot_radius_mm", "cold_diameter_mm", "hot_diameter_mm"};
  const double values[] = {s->cold_radius_mm, s->hot_radius_mm, s->cold_diameter_mm, s->hot_diameter_mm};
  for (int k = 0; k < 4; k++) {
    char name[64];
    snprintf(name, sizeof name, "%s.%s", of, names[k]);
    put(name, status == 0 && (k < 2 || s->has_diameter), status == 0 ? values[k] : NAN);
  }
}

/* Where neither surface nor wall is missing, the clearance is what the bore has more than the piston. */
static void differ(const GaugepointHotFit *fit, const Row *r, double angle, double apart_mm) {
  double clearance = 7;
  CHECK(gaugepoint_hot_fit_clearance_mm(fit, angle, r->piston.gauge_height_mm, r->position, r->at, &clearance, NULL) == 0);
  CHECK(memcmp(&clearance, &apart_mm, sizeof clearance) == 0);
}

/* A piston and a bore are asked alone, and are freed before the fit that is made of them. */
static void apart_row(const Row *r, const GaugepointHotFit *fit) {
  const double angles[] = {0, 30, 77.5}, gauge = r->piston.gauge_height_mm;
  const double depth = r->position == GAUGEPOINT_POSITION_GAUGE_DEPTH ? r->at : 0;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  GaugepointHotPiston *piston = NULL;
  GaugepointHotBore *bore = NULL;
  GaugepointHotFit *made = NULL;
  CHECK(apart(&r->parts, &piston, &bore, &e) == 0);
  for (int k = 0; k < 3; k++) {
    RECORD(GaugepointHotSize, p);
    RECORD(GaugepointHotSize, b);
    double radius = 7, diameter = 7;
    int32_t on_piston = gaugepoint_hot_piston_at(piston, gauge, angles[k], &p, &e);
    int32_t in_bore = gaugepoint_hot_bore_at(bore, depth, angles[k], &b, &e);
    put_size("piston", on_piston, &p);
    put_size("bore", in_bore, &b);
    CHECK(gaugepoint_piston_radius_mm(&r->piston, r->parts.piston_diameter_mm, gauge, angles[k], &radius, NULL) == on_piston);
    CHECK(on_piston != 0 || memcmp(&radius, &p.cold_radius_mm, sizeof radius) == 0);
    (void)gaugepoint_piston_diameter_mm(&r->piston, r->parts.piston_diameter_mm, gauge, angles[k], &diameter, NULL);
    CHECK(on_piston != 0 || (isnan(diameter) ? !p.has_diameter : memcmp(&diameter, &p.cold_diameter_mm, sizeof diameter) == 0));
    if (on_piston == 0 && in_bore == 0) {
      differ(fit, r, angles[k], b.hot_radius_mm - p.hot_radius_mm);
    }
  }
  RECORD(GaugepointHotSize, at_gauge_point);
  int32_t status = gaugepoint_hot_piston_at_gauge_point(piston, &at_gauge_point, &e);
  put_size("gauge_point", status, &at_gauge_point);
  CHECK(gaugepoint_hot_fit_of(piston, bore, NULL, &made, &e) == 0 && made != NULL);
  gaugepoint_hot_piston_free(piston);
  gaugepoint_hot_bore_free(bore);
  RECORD(GaugepointHotSmallest, one);
  RECORD(GaugepointHotSmallest, other);
  CHECK(gaugepoint_hot_fit_smallest_at(fit, 0, r->position, r->at, &one, &e) == 0);
  CHECK(gaugepoint_hot_fit_smallest_at(made, 0, r->position, r->at, &other, &e) == 0);
  CHECK(memcmp(&one, &other, sizeof one) == 0);
  gaugepoint_hot_fit_free(made);
}

static void hot_row(const Row *r) {
  static GaugepointHotBand bands[4096];
  GaugepointError e = GAUGEPOINT_ERROR_INIT, untouched = GAUGEPOINT_ERROR_INIT;
  GaugepointHotFit *fit = NULL;
  GaugepointProfileRow profile[6];
  GaugepointSectionRow section[10];
  const double gauge = r->piston.gauge_height_mm, top = r->surface.to_mm;
  const double angles[] = {0, 77.5, 180}, heights[] = {0, gauge, top};
  double number = 7, map[10];
  size_t count = 7;
  CHECK(gaugepoint_hot_fit_new(&r->parts, &fit, &e) == 0 && fit != NULL);
  RECORD(GaugepointHotSmallest, smallest);
  RECORD(GaugepointHotBestPlaced, placed);
  RECORD(GaugepointHotContact, contact);
  RECORD(GaugepointHotOvality, ovality);
  RECORD(GaugepointHotAnswer, bore);
  CHECK(gaugepoint_hot_fit_smallest_at(fit, 0, r->position, r->at, &smallest, &e) == 0);
  CHECK(smallest.place.surface == 0 && smallest.place.has_crank == 0 && isnan(smallest.place.crank_deg));
  put("smallest.clearance_mm", 1, smallest.clearance_mm);
  put("smallest.certified_within_mm", 1, smallest.certified_within_mm);
  put("smallest.angle_deg", 1, smallest.place.angle_deg);
  put("smallest.height_mm", 1, smallest.place.height_mm);
  put("smallest.depth_mm", smallest.place.has_depth, smallest.place.depth_mm);
  CHECK(gaugepoint_hot_fit_clearance_mm(fit, 77.5, gauge, r->position, r->at, &number, &e) == 0);
  put("clearance_mm", 1, number);
  CHECK(gaugepoint_hot_fit_diametral_mm(fit, 90, top, r->position, r->at, &number, &e) == 0);
  put("diametral_mm", 1, number);
  CHECK(gaugepoint_hot_fit_running_mm(fit, r->position, r->at, &number, &e) == 0);
  put("running_mm", 1, number);
  CHECK(gaugepoint_hot_fit_best_placed(fit, 0, r->position, r->at, &placed, &e) == 0);
  put("placed.clearance_mm", 1, placed.clearance_mm);
  put("placed.thrust_mm", 1, placed.thrust_mm);
  put("placed.pin_mm", 1, placed.pin_mm);
  put("placed.certified_within_mm", 1, placed.certified_within_mm);
  CHECK(gaugepoint_hot_fit_contact(fit, 0, r->position, r->at, 0, &contact, &e) == 0 && contact.bands < 4096);
  CHECK(gaugepoint_hot_fit_bands(fit, 0, r->position, r->at, 0, bands, contact.bands, &count, &e) == 0 && count == contact.bands);
  put("contact.area_mm2", 1, contact.area_mm2);
  put("contact.bands", 1, (double)contact.bands);
  put("contact.height_mm", count > 0, count ? bands[count - 1].height_mm : NAN);
  put("contact.from_deg", count > 0, count ? bands[count - 1].from_deg : NAN);
  put("contact.to_deg", count > 0, count ? bands[count - 1].to_deg : NAN);
  if (count > 0) {
    bands[0].height_mm = 77;
    CHECK(gaugepoint_hot_fit_bands(fit, 0, r->position, r->at, 0, bands, count - 1, &count, NULL) == GAUGEPOINT_STATUS_CONTRADICTION);
    CHECK(bands[0].height_mm == 77 && count == contact.bands);
  }
  CHECK(gaugepoint_hot_fit_ovality(fit, 0, gauge, &ovality, &e) == 0);
  put("ovality.cold_mm", 1, ovality.cold_mm);
  put("ovality.running_mm", 1, ovality.running_mm);
  put("ovality.round_running_mm", 1, ovality.round_running_mm);
  profile[5].height_mm = section[9].angle_deg = map[9] = 77; /* just behind the room that there is */
  CHECK(gaugepoint_hot_fit_profile(fit, 0, 5, profile, &e) == 0 && profile[5].height_mm == 77);
  put("profile.height_mm", 1, profile[3].height_mm);
  put("profile.cold_thrust_mm", 1, profile[3].cold_thrust_mm);
  put("profile.cold_pin_mm", 1, profile[3].cold_pin_mm);
  put("profile.hot_thrust_mm", 1, profile[3].hot_thrust_mm);
  put("profile.hot_pin_mm", 1, profile[3].hot_pin_mm);
  CHECK(gaugepoint_hot_fit_section(fit, gauge, r->position, r->at, 9, section, &e) == 0 && section[9].angle_deg == 77);
  put("section.angle_deg", 1, section[1].angle_deg);
  put("section.piston_cold_mm", 1, section[1].piston_cold_mm);
  put("section.piston_hot_mm", 1, section[1].piston_hot_mm);
  put("section.bore_cold_mm", 1, section[1].bore_cold_mm);
  put("section.bore_hot_mm", 1, section[1].bore_hot_mm);
  CHECK(gaugepoint_hot_fit_bore_for_running_mm(fit, 0.03, r->position, r->at, &bore, &e) == 0);
  put("bore_for_running_mm", bore.has_value, bore.value);
  CHECK(gaugepoint_hot_fit_map(fit, angles, 3, heights, 3, r->position, r->at, map, &e) == 0 && map[9] == 77);
  for (int k = 0; k < 9; k++) {
    put("map", !isnan(map[k]), map[k]);
  }
  if (r->position == GAUGEPOINT_POSITION_ANYWHERE) {
    scenarios(fit, &e);
  } else {
    /* where the piston stands matters, and crank, rod and deck are not known */
    CHECK(gaugepoint_hot_fit_smallest(fit, 0, &smallest, NULL) == GAUGEPOINT_STATUS_MISSING_FIELD);
  }
  CHECK(memcmp(&e, &untouched, sizeof e) == 0);
  apart_row(r, fit);
  gaugepoint_hot_fit_free(fit);
}

static Row first;

static void vectors(const char *folder) {
  static Row read;
  size_t length;
  char *text = file_text(folder, "hot_fit.csv", &length), *rest = text, *line, *cells[4];
  int count = 0;
  next_line(&rest); /* the names of the columns */
  while ((line = next_line(&rest)) != NULL) {
    CHECK(columns(line, cells, 4) == 4);
    row = cells[0];
    read_row(cells[1], &read);
    hot_row(&read);
    if (count++ == 0) {
      read_row(cells[1], &first);
    }
  }
  free(text);
  printf("rows %d\n", count);
}

static const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER, unknown = GAUGEPOINT_STATUS_UNKNOWN_CHOICE;
static const int32_t range = GAUGEPOINT_STATUS_OUT_OF_RANGE, not_finite = GAUGEPOINT_STATUS_NOT_FINITE;
static const int32_t contradiction = GAUGEPOINT_STATUS_CONTRADICTION, missing = GAUGEPOINT_STATUS_MISSING_FIELD;

/* Of parts that are refused, piston, bore or the fit of both is refused alike. */
static void refused_apart(const GaugepointHotFitParts *parts, int32_t expected, const char *field) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  GaugepointHotPiston *piston = NULL;
  GaugepointHotBore *bore = NULL;
  GaugepointHotFit *fit = NULL;
  int32_t status = apart(parts, &piston, &bore, &e);
  if (status == 0) {
    status = gaugepoint_hot_fit_of(piston, bore, parts->motion, &fit, &e);
  }
  CHECK(status == expected && e.status == expected && same(e.field, field));
  CHECK(fit == NULL && (piston == NULL || bore == NULL || parts->motion != NULL));
  gaugepoint_hot_piston_free(piston);
  gaugepoint_hot_bore_free(bore);
}

/* Parts that are refused make no fit, and leave the pointer as it was. */
static void no_fit(const GaugepointHotFitParts *parts, int32_t expected, const char *field) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  GaugepointHotFit *fit = (GaugepointHotFit *)&e;
  int32_t status = gaugepoint_hot_fit_new(parts, &fit, &e);
  CHECK(status == expected && e.status == expected && fit == (GaugepointHotFit *)&e);
  CHECK(same(e.field, field) && e.reason[0] != '\0');
  if (status != expected || !same(e.field, field)) {
    fprintf(stderr, "%s: status %d, %s\n", field, status, e.message);
  }
  if (parts != NULL) {
    refused_apart(parts, expected, field);
  }
}

#define SPOILT(change, expected, field) \
  do { \
    Row r = first; \
    r.piston.surfaces = &r.surface; \
    r.bore.harmonics = r.harmonics; \
    r.parts.piston = &r.piston; \
    r.parts.growth = &r.growth; \
    r.parts.bore = &r.bore; \
    change; \
    no_fit(&r.parts, expected, field); \
  } while (0)

static void refused_parts(void) {
  static const double two[] = {0, 50}, nan_second[] = {0.01, NAN}, back[] = {50, 0};
  const size_t huge[] = {GAUGEPOINT_MOST_VALUES + 1, SIZE_MAX / 8, SIZE_MAX};
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  row = "refused_parts";
  no_fit(NULL, null, "parts");
  CHECK(gaugepoint_hot_fit_new(&first.parts, NULL, &e) == null && same(e.field, "fit"));
  SPOILT(r.parts.piston = NULL, null, "piston");
  SPOILT(r.parts.growth = NULL, null, "growth");
  SPOILT(r.parts.bore = NULL, null, "bore");
  SPOILT(r.parts.piston_field.heights_mm = NULL, null, "piston_field/heights_mm");
  SPOILT(r.parts.piston_field.thrust_c = NULL, null, "piston_field/thrust_c");
  SPOILT(r.parts.piston_field.pin_c = NULL, null, "piston_field/pin_c");
  SPOILT(r.parts.bore_field.depths_mm = NULL, null, "bore_field/depths_mm");
  SPOILT(r.parts.bore_field.wall_c = NULL, null, "bore_field/wall_c");
  SPOILT(r.bore.depths_mm = NULL, null, "bore/depths_mm");
  SPOILT(r.bore.deviation_mm = NULL, null, "bore/deviation_mm");
  SPOILT((r.bore.harmonics = NULL, r.bore.harmonic_count = 1), null, "bore/harmonics");
  SPOILT((r.bore.harmonic_count = 1, r.harmonics[0].order = 2), null, "bore/harmonics/0/depths_mm");
  SPOILT(r.bore.port_count = 1, null, "bore/ports");
  for (int k = 0; k < 3; k++) {
    SPOILT(r.parts.growth_count = huge[k], range, "growth");
    SPOILT(r.parts.piston_field.count = huge[k], range, "piston_field/heights_mm");
    SPOILT(r.parts.bore_field.count = huge[k], range, "bore_field/depths_mm");
    SPOILT(r.bore.depth_count = huge[k], range, "bore/depths_mm");
    SPOILT(r.bore.port_count = huge[k]; r.bore.ports = (const GaugepointPort *)two, range, "bore/ports");
  }
  SPOILT(r.parts.growth_count = 0, contradiction, "growth");
  SPOILT(r.parts.piston_field.count = 0, missing, "piston_field/heights_mm");
  SPOILT(r.parts.bore_field.count = 0, missing, "bore_field/depths_mm");
  SPOILT(r.parts.piston_diameter_mm = NAN, not_finite, "piston_diameter_mm");
  SPOILT(r.parts.piston_diameter_mm = 0, range, "piston_diameter_mm");
  SPOILT(r.bore.diameter_mm = 0, range, "bore/diameter_mm");
  SPOILT(r.growth.ratio_pin = 0, range, "growth/0/ratio_pin");
  SPOILT(r.growth.ratio_thrust = NAN, not_finite, "growth/0/ratio_thrust");
  SPOILT(r.growth.law.mean_per_k = 1, range, "growth/0/law/mean_per_k");
  SPOILT(r.parts.bore_law.to_c = NAN, not_finite, "bore_law/to_c");
  SPOILT(r.parts.bore_law.to_c = 60, GAUGEPOINT_STATUS_OUTSIDE_LAW, "bore_field/wall_c");
  SPOILT(r.bore.has_end = 2, unknown, "bore/has_end");
  SPOILT((r.bore.has_end = 1, r.bore.end_mm = NAN), not_finite, "bore/end_mm");
  SPOILT((r.bore.depths_mm = two, r.bore.deviation_mm = nan_second, r.bore.depth_count = 2), not_finite, "bore/deviation_mm/1");
  const GaugepointBoreHarmonic high = {33, two, two, two, 1}, twice[] = {{2, two, two, two, 1}, {2, two, two, two, 1}};
  SPOILT((r.bore.harmonics = &high, r.bore.harmonic_count = 1), range, "bore/harmonics/0/order");
  SPOILT((r.bore.harmonics = twice, r.bore.harmonic_count = 2), GAUGEPOINT_STATUS_REPEATED, "bore/harmonics/1/order");
  SPOILT((r.bore.depths_mm = back, r.bore.deviation_mm = two, r.bore.depth_count = 2), range, "bore/deviation_mm/1");
  const int32_t forms[] = {INT32_MIN, -1, 0, 8, INT32_MAX};
  for (int k = 0; k < 5; k++) {
    SPOILT(r.growth.law.form = forms[k], unknown, "growth/0/law/form");
    SPOILT(r.parts.bore_law.form = forms[k], unknown, "bore_law/form");
  }
  SPOILT(r.parts.bore_law.form = GAUGEPOINT_LAW_FORM_MEAN_TABLE, null, "bore_law/temperatures_c");
  SPOILT(r.parts.bore_law.form = GAUGEPOINT_LAW_FORM_STRAIN_POLYNOMIAL, null, "bore_law/coefficients");
  SPOILT(r.parts.bore_law.form = GAUGEPOINT_LAW_FORM_BUILT_IN, null, "bore_law/name");
  GaugepointMotion motion = {43, 20, 0, 0, 60};
  SPOILT(r.parts.motion = &motion, GAUGEPOINT_STATUS_OUT_OF_ORDER, "motion/rod_mm");
}

/* Every form of a law, in a fit that is then asked. */
static void laws(void) {
  static const double temperatures[] = {20, 450}, means[] = {11e-6, 12e-6};
  static const double instantaneous[] = {10e-6, 2e-9}, strain[] = {-4.1277e-3, 11e-6};
  row = "laws";
  for (int32_t form = 1; form <= 7; form++) {
    GaugepointError e = GAUGEPOINT_ERROR_INIT;
    GaugepointHotFit *fit = NULL;
    GaugepointHotFitParts parts = first.parts;
    double running = 7;
    parts.bore_law = mean(11.4e-6);
    parts.bore_law.form = form;
    parts.bore_law.temperatures_c = temperatures;
    parts.bore_law.coefficients = form == 4 ? instantaneous : form == 5 ? strain : means;
    parts.bore_law.count = 2;
    parts.bore_law.nodularity_percent = 42.5;
    parts.bore_law.graphite_percent = 6.5;
    parts.bore_law.pearlite_to_ferrite = 0.9;
    parts.bore_law.name = "steel 4140";
    parts.bore_law.name_length = 10;
    CHECK(gaugepoint_hot_fit_new(&parts, &fit, &e) == 0);
    CHECK(gaugepoint_hot_fit_running_mm(fit, GAUGEPOINT_POSITION_ANYWHERE, 0, &running, &e) == 0 && fabs(running) < 0.3);
    if (e.status) fprintf(stderr, "form %d: %s\n", form, e.message);
    gaugepoint_hot_fit_free(fit);
  }
}

static void number(int32_t status, double out, const GaugepointError *e, int32_t expected, const char *field) {
  CHECK(status == expected && e->status == expected && isnan(out));
  CHECK(same(e->field, field));
}

static void refused_questions(const GaugepointHotFit *fit) {
  enum { ANYWHERE = GAUGEPOINT_POSITION_ANYWHERE };
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  double out = 7;
  row = "refused_questions";
#define NUMBER(call, expected, field) \
  do { \
    out = 7; \
    int32_t status = call; \
    number(status, out, &e, expected, field); \
  } while (0)
  NUMBER(gaugepoint_hot_fit_clearance_mm(NULL, 0, 10, ANYWHERE, 0, &out, &e), null, "fit");
  NUMBER(gaugepoint_hot_fit_clearance_mm(fit, NAN, 10, ANYWHERE, 0, &out, &e), not_finite, "angle_deg");
  NUMBER(gaugepoint_hot_fit_clearance_mm(fit, 361, 10, ANYWHERE, 0, &out, &e), range, "angle_deg");
  NUMBER(gaugepoint_hot_fit_clearance_mm(fit, 0, 900, ANYWHERE, 0, &out, &e), range, "height_mm");
  NUMBER(gaugepoint_hot_fit_clearance_mm(fit, 0, INFINITY, ANYWHERE, 0, &out, &e), not_finite, "height_mm");
  NUMBER(gaugepoint_hot_fit_clearance_mm(fit, 0, 10, GAUGEPOINT_POSITION_CRANK, 20, &out, &e), missing, "motion");
  NUMBER(gaugepoint_hot_fit_diametral_mm(NULL, 0, 10, ANYWHERE, 0, &out, &e), null, "fit");
  NUMBER(gaugepoint_hot_fit_diametral_mm(fit, 0, NAN, ANYWHERE, 0, &out, &e), not_finite, "height_mm");
  NUMBER(gaugepoint_hot_fit_running_mm(NULL, ANYWHERE, 0, &out, &e), null, "fit");
  NUMBER(gaugepoint_hot_fit_running_mm(fit, GAUGEPOINT_POSITION_TOP_DEAD_CENTRE, 0, &out, &e), missing, "motion");
  NUMBER(gaugepoint_hot_fit_running_mm(fit, GAUGEPOINT_POSITION_GAUGE_DEPTH, NAN, &out, &e), not_finite, "gauge_depth_mm");
  CHECK(gaugepoint_hot_fit_clearance_mm(fit, 0, 10, ANYWHERE, 0, NULL, &e) == null && same(e.field, "out"));
  CHECK(gaugepoint_hot_fit_diametral_mm(fit, 0, 10, ANYWHERE, 0, NULL, &e) == null);
  CHECK(gaugepoint_hot_fit_running_mm(fit, ANYWHERE, 0, NULL, NULL) == null);
  const int32_t wrong[] = {INT32_MIN, -1, 0, 5, INT32_MAX};
  for (int k = 0; k < 5; k++) {
    NUMBER(gaugepoint_hot_fit_clearance_mm(fit, 0, 10, wrong[k], 0, &out, &e), unknown, "position");
    NUMBER(gaugepoint_hot_fit_running_mm(fit, wrong[k], 0, &out, &e), unknown, "position");
    REFUSED(GaugepointHotSmallest, gaugepoint_hot_fit_smallest_at(fit, 0, wrong[k], 0, &out, &e), unknown, "position");
    REFUSED(GaugepointHotOnset, gaugepoint_hot_fit_onset(fit, wrong[k] == 5 ? 4 : wrong[k], 0, &out, &e), unknown, "scenario");
    REFUSED(GaugepointHotAnswer, gaugepoint_hot_fit_temperature_for_bench_c(fit, 0.1, wrong[k], 0, &out, &e), unknown, "scenario");
  }
  REFUSED(GaugepointHotSmallest, gaugepoint_hot_fit_smallest(NULL, 0, &out, &e), null, "fit");
  REFUSED(GaugepointHotSmallest, gaugepoint_hot_fit_smallest(fit, 1, &out, &e), range, "surface");
  REFUSED(GaugepointHotSmallest, gaugepoint_hot_fit_smallest(fit, SIZE_MAX, &out, &e), range, "surface");
  REFUSED(GaugepointHotSmallest, gaugepoint_hot_fit_smallest_at(NULL, 0, ANYWHERE, 0, &out, &e), null, "fit");
  REFUSED(GaugepointHotContact, gaugepoint_hot_fit_contact(NULL, 0, ANYWHERE, 0, 0, &out, &e), null, "fit");
  REFUSED(GaugepointHotContact, gaugepoint_hot_fit_contact(fit, 7, ANYWHERE, 0, 0, &out, &e), range, "surface");
  REFUSED(GaugepointHotContact, gaugepoint_hot_fit_contact(fit, 0, ANYWHERE, 0, NAN, &out, &e), not_finite, "below_mm");
  REFUSED(GaugepointHotBestPlaced, gaugepoint_hot_fit_best_placed(NULL, 0, ANYWHERE, 0, &out, &e), null, "fit");
  REFUSED(GaugepointHotBestPlaced, gaugepoint_hot_fit_best_placed(fit, 7, ANYWHERE, 0, &out, &e), range, "surface");
  REFUSED(GaugepointHotOnset, gaugepoint_hot_fit_onset(NULL, 1, 0, &out, &e), null, "fit");
  REFUSED(GaugepointHotOnset, gaugepoint_hot_fit_onset(fit, 1, NAN, &out, &e), not_finite, "touching_mm");
  REFUSED(GaugepointHotOnset, gaugepoint_hot_fit_onset(fit, 1, 1e308, &out, &e), range, "touching_mm");
  REFUSED(GaugepointHotAnswer, gaugepoint_hot_fit_bore_for_running_mm(NULL, 0.03, ANYWHERE, 0, &out, &e), null, "fit");
  REFUSED(GaugepointHotAnswer, gaugepoint_hot_fit_bore_for_running_mm(fit, NAN, ANYWHERE, 0, &out, &e), not_finite, "wanted_mm");
  REFUSED(GaugepointHotAnswer, gaugepoint_hot_fit_bore_for_smallest_mm(NULL, 0.03, &out, &e), null, "fit");
  REFUSED(GaugepointHotAnswer, gaugepoint_hot_fit_bore_for_smallest_mm(fit, 5, &out, &e), range, "wanted_mm");
  REFUSED(GaugepointHotAnswer, gaugepoint_hot_fit_temperature_for_bench_c(NULL, 0.1, 1, 0, &out, &e), null, "fit");
  REFUSED(GaugepointHotAnswer, gaugepoint_hot_fit_temperature_for_bench_c(fit, INFINITY, 1, 0, &out, &e), not_finite, "bench_mm");
  REFUSED(GaugepointHotOvality, gaugepoint_hot_fit_ovality(NULL, 0, 10, &out, &e), null, "fit");
  REFUSED(GaugepointHotOvality, gaugepoint_hot_fit_ovality(fit, 0, NAN, &out, &e), not_finite, "height_mm");
}

static void sizes(const GaugepointHotFit *fit) {
  row = "sizes";
  SIZED(GaugepointHotSmallest, gaugepoint_hot_fit_smallest(fit, 0, &out, &e));
  SIZED(GaugepointHotSmallest, gaugepoint_hot_fit_smallest_at(fit, 0, 4, 0, &out, &e));
  SIZED(GaugepointHotContact, gaugepoint_hot_fit_contact(fit, 0, 4, 0, 0, &out, &e));
  SIZED(GaugepointHotBestPlaced, gaugepoint_hot_fit_best_placed(fit, 0, 4, 0, &out, &e));
  SIZED(GaugepointHotOnset, gaugepoint_hot_fit_onset(fit, 1, 0, &out, &e));
  SIZED(GaugepointHotAnswer, gaugepoint_hot_fit_bore_for_running_mm(fit, 0.03, 4, 0, &out, &e));
  SIZED(GaugepointHotAnswer, gaugepoint_hot_fit_bore_for_smallest_mm(fit, 0.03, &out, &e));
  SIZED(GaugepointHotAnswer, gaugepoint_hot_fit_temperature_for_bench_c(fit, 0.1, 1, 0, &out, &e));
  SIZED(GaugepointHotOvality, gaugepoint_hot_fit_ovality(fit, 0, 10, &out, &e));
  CHECK(gaugepoint_hot_fit_smallest(fit, 0, NULL, NULL) == null && gaugepoint_hot_fit_onset(fit, 1, 0, NULL, NULL) == null);
  CHECK(gaugepoint_hot_fit_ovality(fit, 0, 10, NULL, NULL) == null && gaugepoint_hot_fit_best_placed(fit, 0, 4, 0, NULL, NULL) == null);
}

static void refused_arrays(const GaugepointHotFit *fit) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  const double angles[] = {0, 90, 400}, heights[] = {0, 10, 900};
  double map[9];
  GaugepointHotBand bands[1];
  GaugepointProfileRow profile[1];
  GaugepointSectionRow section[1];
  size_t count = 7;
  row = "refused_arrays";
  map[0] = bands[0].height_mm = profile[0].height_mm = section[0].angle_deg = 77;
#define MAP(fit, a, n, h, m, out) gaugepoint_hot_fit_map(fit, a, n, h, m, GAUGEPOINT_POSITION_ANYWHERE, 0, out, &e)
  CHECK(MAP(NULL, angles, 2, heights, 2, map) == null && same(e.field, "fit"));
  CHECK(MAP(fit, NULL, 2, heights, 2, map) == null && same(e.field, "angles_deg"));
  CHECK(MAP(fit, angles, 2, NULL, 2, map) == null && same(e.field, "heights_mm"));
  CHECK(MAP(fit, angles, 2, heights, 2, NULL) == null && same(e.field, "clearances_mm"));
  CHECK(MAP(fit, angles, 3, heights, 2, map) == range && same(e.field, "angles_deg/2"));
  CHECK(MAP(fit, angles, 2, heights, 3, map) == range && same(e.field, "heights_mm/2"));
  CHECK(MAP(fit, angles, SIZE_MAX, heights, 2, map) == range && same(e.field, "angles_deg"));
  CHECK(MAP(fit, angles, 2, heights, GAUGEPOINT_MOST_VALUES + 1, map) == range && same(e.field, "heights_mm"));
  CHECK(gaugepoint_hot_fit_map(fit, angles, 2, heights, 2, 9, 0, map, &e) == unknown && same(e.field, "position"));
  CHECK(gaugepoint_hot_fit_bands(NULL, 0, 4, 0, 0, bands, 1, &count, &e) == null && same(e.field, "fit"));
  CHECK(gaugepoint_hot_fit_bands(fit, 0, 4, 0, 0, NULL, 1, &count, &e) == null && same(e.field, "bands"));
  CHECK(gaugepoint_hot_fit_bands(fit, 0, 4, 0, 0, bands, 1, NULL, &e) == null && same(e.field, "count"));
  CHECK(gaugepoint_hot_fit_bands(fit, 0, 4, 0, INFINITY, bands, 1, &count, &e) == not_finite && same(e.field, "below_mm"));
  CHECK(gaugepoint_hot_fit_bands(fit, 0, 4, 0, 3, bands, 1, &count, &e) == contradiction && same(e.field, "room"));
  const size_t counts[] = {0, 1, 65537, SIZE_MAX};
  for (int k = 0; k < 4; k++) {
    CHECK(gaugepoint_hot_fit_profile(fit, 0, counts[k], profile, &e) == range && same(e.field, "count"));
    CHECK(gaugepoint_hot_fit_section(fit, 10, 4, 0, counts[k], section, &e) == range && same(e.field, "count"));
  }
  CHECK(gaugepoint_hot_fit_profile(NULL, 0, 5, profile, &e) == null && gaugepoint_hot_fit_profile(fit, 0, 5, NULL, &e) == null);
  CHECK(gaugepoint_hot_fit_profile(fit, 3, 5, profile, &e) == range && same(e.field, "surface"));
  CHECK(gaugepoint_hot_fit_section(NULL, 10, 4, 0, 5, section, &e) == null && gaugepoint_hot_fit_section(fit, 10, 4, 0, 5, NULL, &e) == null);
  CHECK(gaugepoint_hot_fit_section(fit, NAN, 4, 0, 5, section, &e) == not_finite && same(e.field, "height_mm"));
  CHECK(map[0] == 77 && bands[0].height_mm == 77 && profile[0].height_mm == 77 && section[0].angle_deg == 77 && count == 7);
  /* nothing to write is no mistake */
  CHECK(MAP(fit, angles, 0, heights, 2, map) == 0 && MAP(fit, angles, 2, heights, 0, map) == 0 && map[0] == 77);
}

/* A piston that moves in a bore that ends: what stands out has no clearance in a map, and is refused where it is asked for alone. */
static void motion(void) {
  const GaugepointMotion moves = {43, 143, 0.5, 0.2, first.surface.to_mm + 10};
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  Row r = first;
  GaugepointHotFit *fit = NULL;
  const double angles[] = {0, 90}, heights[] = {0, 20, first.surface.to_mm};
  double map[6], out = 7;
  row = "motion";
  r.parts.motion = &moves;
  r.bore.has_end = 1;
  r.bore.end_mm = 110; /* at bottom dead centre the skirt reaches deeper */
  r.bore.depths_mm = heights;
  r.parts.bore = &r.bore;
  const double depths[] = {0, 200}, form[] = {0, 0.01}, wall[] = {120, 100};
  r.bore.depths_mm = depths;
  r.bore.deviation_mm = form;
  r.bore.depth_count = 2;
  GaugepointBoreField field = {depths, wall, 2};
  r.parts.bore_field = field;
  CHECK(gaugepoint_hot_fit_new(&r.parts, &fit, &e) == 0);
  CHECK(gaugepoint_hot_fit_map(fit, angles, 2, heights, 3, GAUGEPOINT_POSITION_CRANK, 180, map, &e) == 0);
  CHECK(isnan(map[0]) && isnan(map[1]) && isfinite(map[4]) && isfinite(map[5]));
  CHECK(gaugepoint_hot_fit_clearance_mm(fit, 90, first.surface.to_mm, GAUGEPOINT_POSITION_CRANK, 180, &out, &e) == 0);
  CHECK(memcmp(&out, map + 5, sizeof out) == 0);
  NUMBER(gaugepoint_hot_fit_clearance_mm(fit, 0, 0, GAUGEPOINT_POSITION_CRANK, 180, &out, &e), range, "depth_mm");
  CHECK(gaugepoint_hot_fit_map(fit, angles, 2, heights, 3, GAUGEPOINT_POSITION_TOP_DEAD_CENTRE, NAN, map, &e) == 0);
  for (int k = 0; k < 6; k++) CHECK(isfinite(map[k]));
  NUMBER(gaugepoint_hot_fit_clearance_mm(fit, 0, 10, GAUGEPOINT_POSITION_CRANK, NAN, &out, &e), not_finite, "crank_deg");
  NUMBER(gaugepoint_hot_fit_running_mm(fit, GAUGEPOINT_POSITION_ANYWHERE, 0, &out, &e), missing, "position");
  RECORD(GaugepointHotSmallest, smallest);
  CHECK(gaugepoint_hot_fit_smallest(fit, 0, &smallest, &e) == 0 && smallest.place.has_depth == 1 && smallest.place.has_crank == 1);
  CHECK(smallest.certified_within_mm >= 0 && smallest.certified_within_mm <= 1.1e-9);
  gaugepoint_hot_fit_free(fit);
  gaugepoint_hot_fit_free(NULL);
}

/* What a mistaken caller passes to a piston and a bore. */
static void refused_places(void) {
  static const double two[] = {0, 50}, form[] = {0, 0.01};
  const GaugepointPort port = {80, 100, 10, 20};
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  GaugepointHotPiston *piston = NULL;
  GaugepointHotBore *bore = NULL;
  GaugepointHotFit *fit = (GaugepointHotFit *)&e;
  Row r = first;
  row = "refused_places";
  r.bore.depths_mm = two;
  r.bore.deviation_mm = form;
  r.bore.depth_count = 2;
  r.bore.ports = &port;
  r.bore.port_count = 1;
  r.parts.bore = &r.bore;
  CHECK(apart(&r.parts, &piston, &bore, &e) == 0);
  REFUSED(GaugepointHotSize, gaugepoint_hot_piston_at(NULL, 10, 0, &out, &e), null, "piston");
  REFUSED(GaugepointHotSize, gaugepoint_hot_piston_at(piston, NAN, 0, &out, &e), not_finite, "height_mm");
  REFUSED(GaugepointHotSize, gaugepoint_hot_piston_at(piston, 400, 0, &out, &e), range, "height_mm");
  REFUSED(GaugepointHotSize, gaugepoint_hot_piston_at(piston, 10, 361, &out, &e), range, "angle_deg");
  REFUSED(GaugepointHotSize, gaugepoint_hot_piston_at_gauge_point(NULL, &out, &e), null, "piston");
  REFUSED(GaugepointHotSize, gaugepoint_hot_bore_at(NULL, 10, 0, &out, &e), null, "bore");
  REFUSED(GaugepointHotSize, gaugepoint_hot_bore_at(bore, INFINITY, 0, &out, &e), not_finite, "depth_mm");
  REFUSED(GaugepointHotSize, gaugepoint_hot_bore_at(bore, -1, 0, &out, &e), range, "depth_mm");
  REFUSED(GaugepointHotSize, gaugepoint_hot_bore_at(bore, 50.5, 0, &out, &e), range, "depth_mm");
  REFUSED(GaugepointHotSize, gaugepoint_hot_bore_at(bore, 10, NAN, &out, &e), not_finite, "angle_deg");
  REFUSED(GaugepointHotSize, gaugepoint_hot_bore_at(bore, 15, 90, &out, &e), contradiction, "angle_deg");
  SIZED(GaugepointHotSize, gaugepoint_hot_piston_at(piston, 10, 0, &out, &e));
  SIZED(GaugepointHotSize, gaugepoint_hot_piston_at_gauge_point(piston, &out, &e));
  SIZED(GaugepointHotSize, gaugepoint_hot_bore_at(bore, 10, 0, &out, &e));
  CHECK(gaugepoint_hot_piston_at(piston, 10, 0, NULL, NULL) == null && gaugepoint_hot_bore_at(bore, 10, 0, NULL, NULL) == null);
  RECORD(GaugepointHotSize, across);
  CHECK(gaugepoint_hot_bore_at(bore, 15, 270, &across, &e) == 0 && across.has_diameter == 0 && isnan(across.hot_diameter_mm));
  CHECK(gaugepoint_hot_bore_at(bore, 15, 0, &across, &e) == 0 && across.has_diameter == 1);
  TOLD(gaugepoint_hot_fit_of(NULL, bore, NULL, &fit, &e), null, "piston");
  TOLD(gaugepoint_hot_fit_of(piston, NULL, NULL, &fit, &e), null, "bore");
  TOLD(gaugepoint_hot_fit_of(piston, bore, NULL, NULL, &e), null, "fit");
  CHECK(fit == (GaugepointHotFit *)&e);
  const GaugepointHotFitParts *p = &r.parts;
  TOLD(gaugepoint_hot_piston_new(86, p->piston, p->growth, 1, NULL, &piston, &e), null, "piston_field");
  TOLD(gaugepoint_hot_piston_new(86, p->piston, p->growth, 1, &p->piston_field, NULL, &e), null, "made");
  TOLD(gaugepoint_hot_bore_new(p->bore, NULL, &p->bore_field, &bore, &e), null, "bore_law");
  TOLD(gaugepoint_hot_bore_new(p->bore, &p->bore_law, NULL, &bore, &e), null, "bore_field");
  TOLD(gaugepoint_hot_bore_new(p->bore, &p->bore_law, &p->bore_field, NULL, &e), null, "made");
  gaugepoint_hot_piston_free(piston);
  gaugepoint_hot_bore_free(bore);
  gaugepoint_hot_piston_free(NULL);
  gaugepoint_hot_bore_free(NULL);
}

/* The laws of expansion, each asked by itself. */
static void refused_laws(void) {
  static const double t[] = {20, 100}, a[] = {11e-6, NAN}, back[] = {100, 20}, good[] = {11e-6, 12e-6};
  const char *name = "steel 4140";
  row = "refused_laws";
  REFUSED(GaugepointGrowth, gaugepoint_growth_mean_coefficient(NAN, 11e-6, 0, 100, 20, &out, &e), not_finite, "base_c");
  REFUSED(GaugepointGrowth, gaugepoint_growth_mean_coefficient(20, 11, 0, 100, 20, &out, &e), range, "mean_per_k");
  REFUSED(GaugepointGrowth, gaugepoint_growth_mean_coefficient(20, 11e-6, 0, 100, 101, &out, &e), GAUGEPOINT_STATUS_OUTSIDE_LAW, "temperature_c");
  REFUSED(GaugepointGrowth, gaugepoint_growth_mean_table(20, NULL, good, 2, 50, &out, &e), null, "temperatures_c");
  REFUSED(GaugepointGrowth, gaugepoint_growth_mean_table(20, t, NULL, 2, 50, &out, &e), null, "means_per_k");
  REFUSED(GaugepointGrowth, gaugepoint_growth_mean_table(20, t, good, SIZE_MAX, 50, &out, &e), range, "temperatures_c");
  REFUSED(GaugepointGrowth, gaugepoint_growth_instantaneous_table(NULL, good, 2, 50, &out, &e), null, "temperatures_c");
  REFUSED(GaugepointGrowth, gaugepoint_growth_instantaneous_table(t, NULL, 2, 50, &out, &e), null, "instantaneous_per_k");
  REFUSED(GaugepointGrowth, gaugepoint_growth_instantaneous_polynomial(NULL, 2, 0, 100, 50, &out, &e), null, "kelvin_coefficients");
  REFUSED(GaugepointGrowth, gaugepoint_growth_strain_polynomial(NULL, 2, 0, 100, 50, &out, &e), null, "kelvin_coefficients");
  REFUSED(GaugepointGrowth, gaugepoint_growth_strain_polynomial(good, GAUGEPOINT_MOST_VALUES + 1, 0, 100, 50, &out, &e), range, "kelvin_coefficients");
  REFUSED(GaugepointGrowth, gaugepoint_growth_graphite_iron(NAN, 6.5, 0.9, 50, &out, &e), not_finite, "nodularity_percent");
  REFUSED(GaugepointGrowth, gaugepoint_growth_built_in(NULL, 3, 50, &out, &e), null, "name");
  REFUSED(GaugepointGrowth, gaugepoint_growth_built_in("\xff", 1, 50, &out, &e), GAUGEPOINT_STATUS_NOT_UTF8, "name");
  REFUSED(GaugepointGrowth, gaugepoint_growth_built_in(name, 4, 50, &out, &e), GAUGEPOINT_STATUS_UNKNOWN_NAME, "name");
  /* what is wrong within a table is named with its place, and refused before anything is computed */
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  RECORD(GaugepointGrowth, out);
  CHECK(gaugepoint_growth_mean_table(20, t, a, 2, 50, &out, &e) == not_finite && strstr(e.field, "1") != NULL);
  CHECK(gaugepoint_growth_mean_table(20, back, good, 2, 50, &out, &e) == GAUGEPOINT_STATUS_OUT_OF_ORDER);
  CHECK(gaugepoint_growth_mean_table(20, t, good, 0, 50, &out, &e) != 0 && gaugepoint_growth_strain_polynomial(good, 0, 0, 100, 50, &out, &e) != 0);
  CHECK(gaugepoint_growth_instantaneous_polynomial(a, 2, 0, 100, 50, &out, &e) == not_finite);
  CHECK(out.strain == 0 && gaugepoint_growth_built_in(name, 10, 50, NULL, &e) == null && same(e.field, "out"));
  SIZED(GaugepointGrowth, gaugepoint_growth_mean_coefficient(20, 11e-6, 0, 100, 20, &out, &e));
  SIZED(GaugepointGrowth, gaugepoint_growth_mean_table(20, t, good, 2, 50, &out, &e));
  SIZED(GaugepointGrowth, gaugepoint_growth_instantaneous_table(t, good, 2, 50, &out, &e));
  SIZED(GaugepointGrowth, gaugepoint_growth_instantaneous_polynomial(good, 2, 0, 100, 50, &out, &e));
  SIZED(GaugepointGrowth, gaugepoint_growth_strain_polynomial(good, 2, 0, 100, 50, &out, &e));
  SIZED(GaugepointGrowth, gaugepoint_growth_graphite_iron(42.5, 6.5, 0.9, 50, &out, &e));
  SIZED(GaugepointGrowth, gaugepoint_growth_built_in(name, 10, 50, &out, &e));
  SIZED(GaugepointMaterial, gaugepoint_material(0, &out, &e));
  REFUSED(GaugepointMaterial, gaugepoint_material(SIZE_MAX, &out, &e), range, "index");
}

/* Odd numbers in every place, with the exceptions unmasked. */
static void traps(void) {
  const double odd[] = {NAN, INFINITY, -INFINITY, 0, -0.0, 5e-324, 1e-300, 1e300, -1e308, 20, 86};
  GaugepointHotPiston *piston = NULL;
  GaugepointHotBore *bore = NULL;
  GaugepointHotFit *fit = NULL;
  double out, map[4];
  row = "traps";
  CHECK(gaugepoint_hot_fit_new(&first.parts, &fit, NULL) == 0 && apart(&first.parts, &piston, &bore, NULL) == 0);
  feenableexcept(FE_INVALID | FE_DIVBYZERO | FE_OVERFLOW);
  for (int k = 0; k < 11; k++) {
    const double x = odd[k], pair[] = {x, 10};
    for (int32_t position = 1; position <= 4; position++) {
      (void)gaugepoint_hot_fit_clearance_mm(fit, x, 10, position, 20, &out, NULL);
      (void)gaugepoint_hot_fit_clearance_mm(fit, 0, x, position, 20, &out, NULL);
      (void)gaugepoint_hot_fit_diametral_mm(fit, 0, 10, position, x, &out, NULL);
      (void)gaugepoint_hot_fit_running_mm(fit, position, x, &out, NULL);
      (void)gaugepoint_hot_fit_map(fit, pair, 2, pair, 2, position, x, map, NULL);
    }
    RECORD(GaugepointHotSize, size);
    (void)gaugepoint_hot_piston_at(piston, x, 0, &size, NULL);
    (void)gaugepoint_hot_piston_at(piston, 10, x, &size, NULL);
    (void)gaugepoint_hot_bore_at(bore, x, 0, &size, NULL);
    (void)gaugepoint_hot_bore_at(bore, 10, x, &size, NULL);
    RECORD(GaugepointHotContact, contact);
    RECORD(GaugepointHotOnset, onset);
    RECORD(GaugepointHotAnswer, answer);
    RECORD(GaugepointHotOvality, ovality);
    (void)gaugepoint_hot_fit_contact(fit, 0, 4, x, x, &contact, NULL);
    (void)gaugepoint_hot_fit_onset(fit, 2, x, &onset, NULL);
    (void)gaugepoint_hot_fit_bore_for_running_mm(fit, x, 4, 0, &answer, NULL);
    (void)gaugepoint_hot_fit_bore_for_smallest_mm(fit, x, &answer, NULL);
    (void)gaugepoint_hot_fit_temperature_for_bench_c(fit, x, 1, 0, &answer, NULL);
    (void)gaugepoint_hot_fit_ovality(fit, 0, x, &ovality, NULL);
    Row r = first;
    double *numbers[] = {&r.parts.piston_diameter_mm, &r.bore.diameter_mm, &r.growth.ratio_thrust, &r.growth.law.mean_per_k,
                         &r.growth.law.base_c, &r.growth.law.to_c, &r.thrust.value.value[1], &r.thrust.at.value[1], &r.wall.value.value[0],
                         &r.deviation.value.value[0], &r.piston.gauge_height_mm};
    r.piston.surfaces = &r.surface;
    r.parts.piston = &r.piston;
    r.parts.growth = &r.growth;
    r.parts.bore = &r.bore;
    r.bore.deviation_mm = r.deviation.value.value;
    r.parts.piston_field.heights_mm = r.thrust.at.value;
    r.parts.piston_field.thrust_c = r.thrust.value.value;
    r.parts.bore_field.wall_c = r.wall.value.value;
    for (size_t n = 0; n < sizeof numbers / sizeof numbers[0]; n++) {
      double kept = *numbers[n];
      GaugepointHotFit *made = NULL;
      *numbers[n] = x;
      if (gaugepoint_hot_fit_new(&r.parts, &made, NULL) == 0) {
        (void)gaugepoint_hot_fit_running_mm(made, 4, 0, &out, NULL);
      }
      gaugepoint_hot_fit_free(made);
      *numbers[n] = kept;
      checks++;
    }
  }
  fedisableexcept(FE_ALL_EXCEPT);
  gaugepoint_hot_fit_free(fit);
  gaugepoint_hot_piston_free(piston);
  gaugepoint_hot_bore_free(bore);
}

int main(int count, char **words) {
  GaugepointHotFit *fit = NULL;
  if (count != 2) {
    return 2;
  }
  vectors(words[1]);
  refused_parts();
  laws();
  CHECK(gaugepoint_hot_fit_new(&first.parts, &fit, NULL) == 0);
  refused_questions(fit);
  sizes(fit);
  refused_arrays(fit);
  gaugepoint_hot_fit_free(fit);
  motion();
  refused_places();
  refused_laws();
  traps();
  return finish();
}
