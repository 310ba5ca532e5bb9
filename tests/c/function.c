/* function FOLDER: functions of contributors and trials against the rows of function.csv in FOLDER; callbacks, parts of runs, misuse. */
#include "check.h"

#include <inttypes.h>

enum { MOST = 16, TRIALS = 40000 };

/* Words of a variation and its kind. */
static const struct {
  const char *word;
  int32_t kind;
} kinds[] = {
    {"normal", GAUGEPOINT_VARIATION_NORMAL},   {"rectangular", GAUGEPOINT_VARIATION_RECTANGULAR},
    {"triangular", GAUGEPOINT_VARIATION_TRIANGULAR}, {"beta", GAUGEPOINT_VARIATION_BETA},
    {"truncated_normal", GAUGEPOINT_VARIATION_TRUNCATED_NORMAL},
};

/* Words of ready-made stacks, in the order of their numbers. */
static const char *const engines[] = {"deck_clearance", "squish", "compression_ratio", "bench_clearance", "ring_gap", "hot_ring_gap", "liner_protrusion"};

static GaugepointContributor parts[MOST];
static double numbers[MOST][8];

/* Cuts a text at a character; what is left of it. */
static char *cut(char *text, char at) {
  char *end = strchr(text, at);
  if (end == NULL) {
    return NULL;
  }
  *end = '\0';
  return end + 1;
}

/* The contributors of a row; their number. */
static size_t read_parts(char *cell) {
  size_t count = 0;
  for (char *next = cell; next != NULL && count < MOST; count++) {
    char *words[16], *rest = next;
    int n = 0;
    next = cut(next, ';');
    for (; rest != NULL && n < 16; n++) {
      words[n] = rest;
      rest = cut(rest, ' ');
    }
    CHECK(n > 5);
    GaugepointContributor c = {words[0], strlen(words[0]), atof(words[1]), atof(words[2]), atof(words[3]), 1, 1, 0, 0, numbers[count], (size_t)(n - 5)};
    for (size_t k = 0; k < sizeof kinds / sizeof kinds[0]; k++) {
      c.kind = same(kinds[k].word, words[4]) ? kinds[k].kind : c.kind;
    }
    for (int k = 5; k < n; k++) {
      numbers[count][k - 5] = strtod(words[k], NULL);
    }
    CHECK(c.kind != 0);
    parts[count] = c;
  }
  return count;
}

/* Only the first has the same bits in every language. */
static int32_t ratio(void *user, const double *x, size_t contributors, size_t trials, double *values) {
  (void)user;
  for (size_t i = 0; i < trials; i++) {
    values[i] = (x[i] + x[trials + i]) / (x[2 * trials + i] - x[trials + i]);
  }
  return contributors == 3 ? 0 : 1;
}

static int32_t clutch(void *user, const double *x, size_t contributors, size_t trials, double *values) {
  int32_t code = ratio(user, x, contributors, trials, values);
  for (size_t i = 0; i < trials; i++) {
    values[i] = acos(values[i]);
  }
  return code;
}

/* What a row is of: the one or the other. */
static GaugepointFunction *function;
static GaugepointStack *stack;

static int32_t make(char *law, size_t count, GaugepointError *e) {
  char *rest = cut(law, ' ');
  if (same(law, "ratio") || same(law, "clutch")) {
    return gaugepoint_function_of_callback(parts, count, same(law, "ratio") ? ratio : clutch, NULL, &function, e);
  }
  if (same(law, "engine")) {
    for (int32_t k = 0; k < 7; k++) {
      if (same(engines[k], rest)) {
        return gaugepoint_function_of_engine(k + 1, parts, count, &function, e);
      }
    }
  }
  if (same(law, "sum")) {
    for (size_t k = 0; k < count; k++) {
      parts[k].coefficient = strtod(rest, &rest);
    }
    return gaugepoint_stack_new(parts, count, &stack, e);
  }
  CHECK(same(law, "formula"));
  char *with = strstr(rest, " with ");
  const char *symbols[MOST];
  size_t lengths[MOST], n = 0;
  if (with == NULL) {
    return gaugepoint_function_from_formula(parts, count, rest, strlen(rest), NULL, NULL, &function, e);
  }
  *with = '\0';
  for (char *next = with + 6; next != NULL && n < MOST; n++) {
    symbols[n] = next;
    next = cut(next, ' ');
    lengths[n] = strlen(symbols[n]);
  }
  CHECK(n == count);
  return gaugepoint_function_from_formula(parts, count, rest, strlen(rest), symbols, lengths, &function, e);
}

/* Results by name, as they are found and printed. */
static struct {
  char name[32];
  double value;
} found[64];
static size_t results;

static void result(const char *name, double value) {
  if (results < sizeof found / sizeof found[0]) {
    snprintf(found[results].name, sizeof found[0].name, "%s", name);
    found[results++].value = value;
  }
}

static void numbered(size_t k, const char *name, double value) {
  char whole[32];
  snprintf(whole, sizeof whole, name[0] == '\0' ? "%u" : "%u.%s", (unsigned)k, name);
  result(whole, value);
}

static int32_t propagation(size_t count, GaugepointError *e) {
  GaugepointEffect effects[MOST];
  RECORD(GaugepointPropagation, p);
  int32_t status = gaugepoint_function_propagation(function, &p, effects, count, e);
  if (status != GAUGEPOINT_STATUS_OK) {
    return status;
  }
  CHECK(p.has_skewness == !isnan(p.skewness) && p.has_excess_kurtosis == !isnan(p.excess_kurtosis));
  result("derivation", p.derivation);
  result("nominal", p.nominal);
  result("mean", p.first_mean);
  result("standard_deviation", p.first_standard_deviation);
  result("second_mean", p.second_mean);
  result("shift", p.shift);
  result("second_standard_deviation", p.second_standard_deviation);
  result("skewness", p.skewness);
  result("excess_kurtosis", p.excess_kurtosis);
  for (size_t k = 0; k < count; k++) {
    size_t at = 0;
    while (at < count && effects[at].place != k) {
      at++;
    }
    CHECK(at < count && (at == 0 || effects[at - 1].share >= effects[at].share));
    numbered(k, "sensitivity", effects[at].sensitivity);
    numbered(k, "standard_deviation", effects[at].standard_deviation);
    numbered(k, "share", effects[at].share);
    numbered(k, "alone", effects[at].alone);
    numbered(k, "together", effects[at].together);
  }
  return status;
}

static int32_t worst_case(size_t count, GaugepointError *e) {
  double low[MOST], high[MOST];
  char name[32];
  RECORD(GaugepointWorstCase, w);
  int32_t status = gaugepoint_function_worst_case(function, &w, low, high, count, e);
  if (status != GAUGEPOINT_STATUS_OK) {
    return status;
  }
  CHECK(w.has_lowest_bound == !isnan(w.lowest_bound) && w.has_highest_bound == !isnan(w.highest_bound));
  CHECK(w.has_lowest_bound == (w.proof != GAUGEPOINT_PROOF_SEARCHED));
  result("proof", w.proof);
  result("lowest", w.lowest);
  result("lowest_bound", w.lowest_bound);
  for (size_t k = 0; k < count; k++) {
    snprintf(name, sizeof name, "lowest_at.%u", (unsigned)k);
    result(name, low[k]);
  }
  result("highest", w.highest);
  result("highest_bound", w.highest_bound);
  for (size_t k = 0; k < count; k++) {
    snprintf(name, sizeof name, "highest_at.%u", (unsigned)k);
    result(name, high[k]);
  }
  return status;
}

static double values[TRIALS];

static int32_t trials(const GaugepointRun *run, double *to, size_t count, GaugepointError *e) {
  return stack != NULL ? gaugepoint_stack_trials(stack, run, to, count, e) : gaugepoint_function_trials(function, run, to, count, e);
}

static void ends(double symmetric_lower, double symmetric_upper, double shortest_lower, double shortest_upper) {
  result("symmetric.lower", symmetric_lower);
  result("symmetric.upper", symmetric_upper);
  result("shortest.lower", shortest_lower);
  result("shortest.upper", shortest_upper);
}

static int32_t adaptive(char **cells, GaugepointError *e) {
  GaugepointGoal goal = {strtoull(cells[0], NULL, 10), strtoull(cells[4], NULL, 10), strtod(cells[1], NULL), atoi(cells[2]), atoi(cells[3])};
  RECORD(GaugepointAdaptive, a);
  int32_t status = stack != NULL ? gaugepoint_stack_adaptive(stack, &goal, &a, e) : gaugepoint_function_adaptive(function, &goal, &a, e);
  if (status == GAUGEPOINT_STATUS_OK) {
    result("settled", a.settled);
    result("sequences", (double)a.sequences);
    result("tolerance", a.tolerance);
    result("trials", (double)a.trials);
    result("mean", a.mean);
    result("standard_deviation", a.standard_deviation);
    ends(a.symmetric_lower, a.symmetric_upper, a.shortest_lower, a.shortest_upper);
  }
  return status;
}

static int32_t importance(char **cells, GaugepointError *e) {
  GaugepointRun run = {strtoull(cells[2], NULL, 10), 0, 0, GAUGEPOINT_POINTS_RANDOM, 0};
  int32_t toward = atoi(cells[0]);
  double limit = strtod(cells[1], NULL);
  size_t count = strtoul(cells[3], NULL, 10);
  RECORD(GaugepointRareTail, tail);
  int32_t status = stack != NULL ? gaugepoint_stack_importance(stack, toward, limit, &run, values, count, e)
                                 : gaugepoint_function_importance(function, toward, limit, &run, values, count, e);
  if (status == GAUGEPOINT_STATUS_OK) {
    status = gaugepoint_trials_rare_tail(values, count, strtod(cells[4], NULL), &tail, e);
  }
  if (status == GAUGEPOINT_STATUS_OK) {
    result("probability", tail.probability);
    result("standard_error", tail.standard_error);
    result("lower", tail.lower);
    result("upper", tail.upper);
    result("effective_trials", tail.effective_trials);
  }
  return status;
}

static int32_t of_trials(const char *asked, char **cells, int n, GaugepointError *e) {
  GaugepointRun run = {strtoull(cells[0], NULL, 10), 0, 0, GAUGEPOINT_POINTS_RANDOM, 0};
  size_t count = strtoul(cells[1], NULL, 10);
  int32_t status;
  if (same(asked, "trials")) {
    run.first = strtoull(cells[1], NULL, 10);
    count = strtoul(cells[2], NULL, 10);
  }
  if (same(asked, "trials") || same(asked, "summary")) {
    run.points = atoi(cells[n - (same(asked, "trials") ? 2 : 3)]);
    run.hypercube_trials = strtoull(cells[n - (same(asked, "trials") ? 1 : 2)], NULL, 10);
  }
  status = trials(&run, values, count, e);
  if (status != GAUGEPOINT_STATUS_OK) {
    return status;
  }
  if (same(asked, "trials")) {
    for (size_t k = 0; k < count; k++) {
      numbered(k, "", values[k]);
    }
  } else if (same(asked, "summary")) {
    RECORD(GaugepointTrialsSummary, s);
    status = gaugepoint_trials_summary(values, count, strtod(cells[4], NULL), &s, e);
    if (status == GAUGEPOINT_STATUS_OK) {
      result("trials", (double)s.trials);
      result("mean", s.mean);
      result("standard_deviation", s.standard_deviation);
      ends(s.symmetric_lower, s.symmetric_upper, s.shortest_lower, s.shortest_upper);
    }
  } else if (same(asked, "outside")) {
    RECORD(GaugepointTrialsOutside, o);
    status = gaugepoint_trials_outside(values, count, run.points, strtod(cells[2], NULL), strtod(cells[3], NULL), strtod(cells[4], NULL), &o, e);
    if (status == GAUGEPOINT_STATUS_OK) {
      result("below.count", (double)o.below_count);
      result("below.probability", o.below);
      result("below.lower", o.below_lower);
      result("below.upper", o.below_upper);
      result("above.count", (double)o.above_count);
      result("above.probability", o.above);
      result("above.lower", o.above_lower);
      result("above.upper", o.above_upper);
    }
  } else {
    double edges[MOST];
    size_t counts[MOST], edge = 0;
    CHECK(same(asked, "histogram"));
    for (char *next = cells[2]; next != NULL && edge < MOST; edge++) {
      char *text = next;
      next = cut(next, '/');
      edges[edge] = strtod(text, NULL);
    }
    status = gaugepoint_trials_histogram(values, count, edges, edge, counts, e);
    for (size_t k = 0; status == GAUGEPOINT_STATUS_OK && k + 1 < edge; k++) {
      numbered(k, "", (double)counts[k]);
    }
  }
  return status;
}

static int32_t asked(const char *what, size_t count, char *given, GaugepointError *e) {
  char *cells[8];
  int n = 0;
  for (char *next = given; next != NULL && n < 8; n++) {
    cells[n] = next;
    next = cut(next, ';');
  }
  if (same(what, "nominal")) {
    double value;
    int32_t status = gaugepoint_function_nominal(function, &value, e);
    result("result", value);
    CHECK((status == GAUGEPOINT_STATUS_OK) == isfinite(value));
    return status;
  }
  if (same(what, "propagation")) {
    return propagation(count, e);
  }
  if (same(what, "worst_case")) {
    return worst_case(count, e);
  }
  if (same(what, "adaptive")) {
    return adaptive(cells, e);
  }
  return same(what, "importance") ? importance(cells, e) : of_trials(what, cells, n, e);
}

/* Every result that is expected is there, within its tolerance. */
static void held(char *expected) {
  for (char *next = expected; next != NULL;) {
    char *name = next, *value, *tolerance;
    size_t at = 0;
    next = cut(next, ';');
    value = cut(name, '=');
    tolerance = cut(value, '~');
    while (at < results && !same(found[at].name, name)) {
      at++;
    }
    CHECK(at < results);
    CHECK(tolerance == NULL ? isnan(found[at].value) : fabs(found[at].value - strtod(value, NULL)) <= strtod(tolerance, NULL));
  }
}

static void vectors(const char *folder) {
  size_t length;
  int count = 0;
  char *text = file_text(folder, "function.csv", &length), *rest = text, *line, *cells[7];
  next_line(&rest);
  while ((line = next_line(&rest)) != NULL) {
    GaugepointError e = GAUGEPOINT_ERROR_INIT;
    CHECK(columns(line, cells, 7) == 7);
    row = cells[0];
    int bits = !same(cells[3], "clutch");
    function = NULL;
    stack = NULL;
    results = 0;
    size_t contributors = read_parts(cells[2]);
    int32_t status = make(cells[3], contributors, &e);
    if (status == GAUGEPOINT_STATUS_OK) {
      status = asked(cells[1], contributors, cells[4], &e);
    }
    if (strncmp(cells[5], "error:", 6) == 0) {
      char *field = cut(cells[5] + 6, ' ');
      /* the numbers of a run stand in its structure */
      const char *own = strncmp(e.field, "run/", 4) == 0 ? e.field + 4 : e.field;
      CHECK(status != GAUGEPOINT_STATUS_OK && same(gaugepoint_status_name(status), cells[5] + 6) && same(own, field));
    } else {
      CHECK(status == GAUGEPOINT_STATUS_OK);
      held(cells[5]);
      for (size_t k = 0; bits && k < results; k++) {
        isnan(found[k].value) ? printf("%s %s none\n", row, found[k].name) : printf("%s %s %.17g\n", row, found[k].name, found[k].value);
      }
    }
    gaugepoint_function_free(function);
    gaugepoint_stack_free(stack);
    count++;
  }
  free(text);
  function = NULL;
  stack = NULL;
  printf("rows %d\n", count);
}

/* The one-way clutch: published sizes, invented limits and deviations. */
static const double n_hub[] = {0, 0.0125}, n_roller[] = {0, 0.0025};
static const GaugepointContributor of_clutch[] = {
    {"hub", 3, 27.645, -0.05, 0.05, 1, 1, GAUGEPOINT_VARIATION_NORMAL, 0, n_hub, 2},
    {"roller", 6, 11.43, -0.01, 0.01, 1, 1, GAUGEPOINT_VARIATION_NORMAL, 0, n_roller, 2},
    {"cage", 4, 50.8, -0.05, 0.05, 1, 1, GAUGEPOINT_VARIATION_NORMAL, 0, n_hub, 2},
};
static const char formula[] = "acos((a + c) / (e - c)) * 180 / pi";
static const char *const symbols[] = {"a", "c", "e"};
static const size_t lengths[] = {1, 1, 1};

/* A callback with what it was called for, which fails at a call. */
typedef struct {
  unsigned calls, failing;
  size_t trials;
  int32_t code;
} Seen;

static int32_t degrees(void *user, const double *x, size_t contributors, size_t trials_of, double *out) {
  Seen *seen = user;
  seen->trials += trials_of;
  clutch(NULL, x, contributors, trials_of, out);
  for (size_t i = 0; i < trials_of; i++) {
    out[i] = out[i] * 180 / 3.14159265358979323846;
  }
  return ++seen->calls == seen->failing ? seen->code : 0;
}

static GaugepointFunction *called(Seen *seen) {
  GaugepointFunction *made = NULL;
  CHECK(gaugepoint_function_of_callback(of_clutch, 3, degrees, seen, &made, NULL) == GAUGEPOINT_STATUS_OK);
  return made;
}

/* The callback against the formula, the published angle, and the derivatives of tests/reference/function.py in degrees. */
static void callbacks(void) {
  const double degree = 180 / 3.14159265358979323846, slopes[] = {-0.20787696061302077, -0.4141962960449179, 0.20631933543189705};
  Seen seen = {0, 0, 0, 0};
  GaugepointFunction *made = called(&seen), *proved = NULL;
  GaugepointEffect effects[3];
  GaugepointRun run = {7, 5, 0, GAUGEPOINT_POINTS_RANDOM, 0};
  static double a[TRIALS], b[TRIALS];
  double nominal = 0;
  row = "callbacks";
  CHECK(gaugepoint_function_nominal(made, &nominal, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(fabs(nominal - 7.018) < 5e-4 && seen.calls == 1 && seen.trials == 1);
  RECORD(GaugepointPropagation, p);
  CHECK(gaugepoint_function_propagation(made, &p, effects, 3, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(p.derivation == GAUGEPOINT_DERIVATION_NUMERIC && p.has_skewness == 1);
  for (int k = 0; k < 3; k++) {
    CHECK(fabs(effects[k].sensitivity - degree * slopes[effects[k].place]) < 1e-7);
  }
  CHECK(gaugepoint_function_from_formula(of_clutch, 3, formula, strlen(formula), symbols, lengths, &proved, NULL) == GAUGEPOINT_STATUS_OK);
  RECORD(GaugepointWorstCase, w);
  RECORD(GaugepointWorstCase, s);
  double low[3], high[3];
  CHECK(gaugepoint_function_worst_case(proved, &w, low, high, 3, NULL) == GAUGEPOINT_STATUS_OK && w.proof == GAUGEPOINT_PROOF_MONOTONE);
  CHECK(gaugepoint_function_worst_case(made, &s, low, high, 3, NULL) == GAUGEPOINT_STATUS_OK && s.proof == GAUGEPOINT_PROOF_SEARCHED);
  CHECK(fabs(w.lowest - s.lowest) < 1e-11 && fabs(w.highest - s.highest) < 1e-11 && isnan(s.lowest_bound));
  seen.calls = 0;
  seen.trials = 0;
  CHECK(gaugepoint_function_trials(made, &run, a, TRIALS, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(seen.trials == TRIALS && seen.calls <= TRIALS / 4096);
  CHECK(gaugepoint_function_trials(proved, &run, b, TRIALS, NULL) == GAUGEPOINT_STATUS_OK);
  for (size_t k = 0; k < TRIALS; k++) {
    if (!(fabs(a[k] - b[k]) < 1e-11)) {
      CHECK(fabs(a[k] - b[k]) < 1e-11);
    }
  }
  /* a failure ends what was asked: nothing is written, and its number is in the reason */
  GaugepointGoal goal = {1, 1000000, 0.95, GAUGEPOINT_COVERAGE_SYMMETRIC, 2};
  RECORD(GaugepointAdaptive, adaptive);
  for (unsigned failing = 1; failing <= 3; failing++) {
    const int32_t failed = GAUGEPOINT_STATUS_CALLBACK_FAILED;
    Seen broken = {0, failing, 0, -77 - (int32_t)failing};
    GaugepointFunction *breaks = called(&broken);
    GaugepointError e = GAUGEPOINT_ERROR_INIT;
    char code[8];
    snprintf(code, sizeof code, "-%u", 77 + failing);
    memset(a, 0x5A, sizeof a);
    memcpy(b, a, sizeof a);
    CHECK(gaugepoint_function_trials(breaks, &run, a, TRIALS, &e) == failed);
    CHECK(broken.calls == failing && memcmp(a, b, sizeof a) == 0);
    CHECK(e.status == failed && same(e.field, "callback") && same(e.refused, code) && strstr(e.reason, code) != NULL);
    broken.calls = 0;
    TOLD(gaugepoint_function_propagation(breaks, &p, effects, 3, &e), failed, "callback");
    broken.calls = 0;
    TOLD(gaugepoint_function_worst_case(breaks, &w, low, high, 3, &e), failed, "callback");
    broken.calls = 0;
    TOLD(gaugepoint_function_adaptive(breaks, &goal, &adaptive, &e), failed, "callback");
    broken.calls = 0;
    TOLD(gaugepoint_function_importance(breaks, GAUGEPOINT_TOWARD_UPPER, 8.5, &run, a, TRIALS, &e), failed, "callback");
    CHECK(broken.calls == failing && adaptive.trials == 0);
    broken.calls = failing - 1;
    nominal = 0;
    TOLD(gaugepoint_function_nominal(breaks, &nominal, &e), failed, "callback");
    CHECK(isnan(nominal));
    /* and it is as good as before */
    CHECK(gaugepoint_function_nominal(breaks, &nominal, NULL) == GAUGEPOINT_STATUS_OK);
    gaugepoint_function_free(breaks);
  }
  gaugepoint_function_free(made);
  gaugepoint_function_free(proved);
}

/* A run in seven uneven parts, made in another order, is the whole to the bit, and so is what is said of it. */
static void split(void) {
  static double whole[TRIALS], made[TRIALS];
  const size_t cuts[] = {0, 1, 300, 1023, 4096, 16384, 33333, TRIALS};
  const int order[] = {3, 6, 0, 5, 1, 4, 2};
  GaugepointContributor three[] = {of_clutch[0], of_clutch[1], of_clutch[2]};
  GaugepointFunction *functions[2] = {NULL, NULL};
  row = "split";
  CHECK(gaugepoint_function_of_callback(three, 3, clutch, NULL, &functions[0], NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_function_from_formula(three, 3, formula, strlen(formula), symbols, lengths, &functions[1], NULL) == GAUGEPOINT_STATUS_OK);
  three[1].coefficient = -2;
  CHECK(gaugepoint_stack_new(three, 3, &stack, NULL) == GAUGEPOINT_STATUS_OK);
  for (int of = 0; of < 3; of++) {
    function = of < 2 ? functions[of] : NULL;
    GaugepointStack *kept = stack;
    stack = of < 2 ? NULL : stack;
    for (int32_t points = GAUGEPOINT_POINTS_RANDOM; points <= GAUGEPOINT_POINTS_SOBOL; points++) {
      GaugepointRun run = {11, 0, points == GAUGEPOINT_POINTS_LATIN_HYPERCUBE ? TRIALS : 0, points, 0};
      RECORD(GaugepointTrialsSummary, a);
      RECORD(GaugepointTrialsSummary, b);
      CHECK(trials(&run, whole, TRIALS, NULL) == GAUGEPOINT_STATUS_OK);
      memset(made, 0, sizeof made);
      for (int k = 0; k < 7; k++) {
        size_t from = cuts[order[k]], to = cuts[order[k] + 1];
        run.first = from;
        CHECK(trials(&run, made + from, to - from, NULL) == GAUGEPOINT_STATUS_OK);
      }
      CHECK(memcmp(whole, made, sizeof whole) == 0);
      CHECK(gaugepoint_trials_summary(whole, TRIALS, 0.9973, &a, NULL) == GAUGEPOINT_STATUS_OK);
      CHECK(gaugepoint_trials_summary(made, TRIALS, 0.9973, &b, NULL) == GAUGEPOINT_STATUS_OK);
      CHECK(memcmp(&a, &b, sizeof a) == 0 && a.symmetric_lower < a.mean && a.mean < a.shortest_upper);
    }
    stack = kept;
  }
  gaugepoint_function_free(functions[0]);
  gaugepoint_function_free(functions[1]);
  gaugepoint_stack_free(stack);
}

static void engine_names(void) {
  size_t all = 0;
  row = "engine";
  for (int32_t engine = 0; engine <= 8; engine++) {
    int is = engine >= 1 && engine <= 7;
    size_t count = 0;
    while (gaugepoint_engine_contributor(engine, count)[0] != '\0') {
      count++;
    }
    all += count;
    CHECK((count > 0) == is && (gaugepoint_engine_unit(engine)[0] != '\0') == is);
  }
  CHECK(all == 4 + 5 + 10 + 2 + 3 + 6 + 3);
  CHECK(same(gaugepoint_engine_contributor(GAUGEPOINT_ENGINE_STACK_BENCH_CLEARANCE, 1), "piston"));
  CHECK(same(gaugepoint_engine_contributor(GAUGEPOINT_ENGINE_STACK_RING_GAP, SIZE_MAX), ""));
  CHECK(same(gaugepoint_engine_unit(GAUGEPOINT_ENGINE_STACK_COMPRESSION_RATIO), "1") && same(gaugepoint_engine_unit(1), "mm"));
}

static int32_t silent(void *user, const double *x, size_t contributors, size_t trials_of, double *out) {
  (void)user, (void)x, (void)contributors, (void)trials_of, (void)out;
  return 0;
}

static void misuse(void) {
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER, range = GAUGEPOINT_STATUS_OUT_OF_RANGE, odd = GAUGEPOINT_STATUS_NOT_FINITE;
  const int32_t unknown = GAUGEPOINT_STATUS_UNKNOWN_CHOICE, contradiction = GAUGEPOINT_STATUS_CONTRADICTION;
  GaugepointFunction *good = NULL, *none = (GaugepointFunction *)numbers, *kept = none;
  GaugepointStack *linear = NULL;
  double x[4] = {1, 2, 3, 4}, edges[] = {0, 2, 5}, nan[] = {1, NAN};
  size_t counts[4] = {9, 9, 9, 9};
  row = "misuse";
  gaugepoint_function_free(NULL);
  CHECK(gaugepoint_stack_new(of_clutch, 3, &linear, NULL) == GAUGEPOINT_STATUS_OK);

#define FORMULA(parts, n, text, length, s, l, to) gaugepoint_function_from_formula(parts, n, text, length, s, l, to, &e)
  TOLD(FORMULA(NULL, 3, formula, strlen(formula), symbols, lengths, &kept), null, "contributors");
  TOLD(FORMULA(of_clutch, SIZE_MAX, formula, strlen(formula), symbols, lengths, &kept), range, "contributors");
  TOLD(FORMULA(of_clutch, 0, "1", 1, NULL, NULL, &kept), GAUGEPOINT_STATUS_MISSING_FIELD, "contributors");
  TOLD(FORMULA(of_clutch, 3, NULL, 3, symbols, lengths, &kept), null, "formula");
  TOLD(FORMULA(of_clutch, 3, "\xff", 1, symbols, lengths, &kept), GAUGEPOINT_STATUS_NOT_UTF8, "formula");
  TOLD(FORMULA(of_clutch, 3, "a +", 3, symbols, lengths, &kept), GAUGEPOINT_STATUS_NOT_AN_EXPRESSION, "model");
  TOLD(FORMULA(of_clutch, 3, formula, strlen(formula), NULL, lengths, &kept), null, "symbols");
  TOLD(FORMULA(of_clutch, 3, formula, strlen(formula), symbols, NULL, &kept), null, "symbol_lengths");
  TOLD(FORMULA(of_clutch, 3, formula, strlen(formula), symbols, lengths, NULL), null, "function");
  const char *const wrong_symbols[] = {"a", "\xff", "e"}, *const no_symbol[] = {"a", "c", NULL};
  TOLD(FORMULA(of_clutch, 3, formula, strlen(formula), wrong_symbols, lengths, &kept), GAUGEPOINT_STATUS_NOT_UTF8, "symbols/1");
  TOLD(FORMULA(of_clutch, 3, formula, strlen(formula), no_symbol, lengths, &kept), null, "symbols/2");
  GaugepointContributor wrong[] = {of_clutch[0], of_clutch[1], of_clutch[2]};
  wrong[1].count = 2;
  TOLD(FORMULA(wrong, 3, formula, strlen(formula), symbols, lengths, &kept), contradiction, "contributors/1/count");
  TOLD(gaugepoint_function_of_callback(wrong, 3, clutch, NULL, &kept, &e), contradiction, "contributors/1/count");
  wrong[1].count = 1;
  wrong[2].upper = NAN;
  TOLD(gaugepoint_function_of_callback(wrong, 3, clutch, NULL, &kept, &e), odd, "contributors/2/upper");
  TOLD(gaugepoint_function_of_callback(of_clutch, 3, NULL, NULL, &kept, &e), null, "callback");
  TOLD(gaugepoint_function_of_callback(NULL, 3, clutch, NULL, &kept, &e), null, "contributors");
  TOLD(gaugepoint_function_of_callback(of_clutch, 3, clutch, NULL, NULL, &e), null, "function");
  const int32_t no_engine[] = {0, -1, 8, INT32_MIN, INT32_MAX};
  for (int k = 0; k < 5; k++) {
    TOLD(gaugepoint_function_of_engine(no_engine[k], of_clutch, 3, &kept, &e), unknown, "engine");
  }
  TOLD(gaugepoint_function_of_engine(1, of_clutch, 3, &kept, &e), GAUGEPOINT_STATUS_UNKNOWN_NAME, "contributors/0/name");
  TOLD(gaugepoint_function_of_engine(1, NULL, 3, &kept, &e), null, "contributors");
  TOLD(gaugepoint_function_of_engine(1, of_clutch, 3, NULL, &e), null, "function");
  CHECK(kept == none);

  CHECK(gaugepoint_function_from_formula(of_clutch, 3, formula, strlen(formula), symbols, lengths, &good, NULL) == GAUGEPOINT_STATUS_OK);
  double value = 1;
  TOLD(gaugepoint_function_nominal(NULL, &value, &e), null, "function");
  CHECK(isnan(value));
  TOLD(gaugepoint_function_nominal(good, NULL, &e), null, "out");
  GaugepointEffect effects[3];
  REFUSED(GaugepointPropagation, gaugepoint_function_propagation(NULL, &out, effects, 3, &e), null, "function");
  REFUSED(GaugepointPropagation, gaugepoint_function_propagation(good, &out, effects, 2, &e), contradiction, "room");
  REFUSED(GaugepointPropagation, gaugepoint_function_propagation(good, &out, NULL, 3, &e), null, "effects");
  TOLD(gaugepoint_function_propagation(good, NULL, effects, 3, &e), null, "out");
  SIZED(GaugepointPropagation, gaugepoint_function_propagation(good, &out, effects, 3, &e));
  REFUSED(GaugepointWorstCase, gaugepoint_function_worst_case(NULL, &out, x, x, 4, &e), null, "function");
  REFUSED(GaugepointWorstCase, gaugepoint_function_worst_case(good, &out, x, x, 2, &e), contradiction, "room");
  REFUSED(GaugepointWorstCase, gaugepoint_function_worst_case(good, &out, NULL, x, 3, &e), null, "lowest_at");
  REFUSED(GaugepointWorstCase, gaugepoint_function_worst_case(good, &out, x, NULL, 3, &e), null, "highest_at");
  SIZED(GaugepointWorstCase, gaugepoint_function_worst_case(good, &out, x, x, 4, &e));

  /* the same mistakes with a function and with a stack */
  for (int of = 0; of < 2; of++) {
    function = of ? NULL : good;
    stack = of ? linear : NULL;
    GaugepointRun run = {1, 0, 0, GAUGEPOINT_POINTS_RANDOM, 0}, bad;
    TOLD(trials(NULL, x, 4, &e), null, "run");
    TOLD(trials(&run, NULL, 4, &e), null, "values");
    TOLD(trials(&run, x, 0, &e), range, "trials");
    TOLD(trials(&run, x, SIZE_MAX, &e), range, "count");
    TOLD(trials(&run, x, GAUGEPOINT_MOST_VALUES + 1, &e), range, "count");
    for (int k = 0; k < 5; k++) {
      bad = run;
      bad.points = no_engine[k];
      bad.points = bad.points == 8 ? 4 : bad.points;
      TOLD(trials(&bad, x, 4, &e), unknown, "points");
    }
    bad = run;
    bad.first = UINT64_MAX - 2;
    TOLD(trials(&bad, x, 4, &e), range, "run/first");
    bad = run;
    bad.hypercube_trials = 4;
    TOLD(trials(&bad, x, 4, &e), contradiction, "run/hypercube_trials");
    bad.points = GAUGEPOINT_POINTS_LATIN_HYPERCUBE;
    bad.first = 1;
    TOLD(trials(&bad, x, 4, &e), range, "trials");
    CHECK(x[0] == 1 && x[3] == 4);
    GaugepointGoal goal = {1, 1000000, 0.95, GAUGEPOINT_COVERAGE_SYMMETRIC, 2}, lost = goal;
#define ADAPTIVE(g) (of ? gaugepoint_stack_adaptive(stack, g, &out, &e) : gaugepoint_function_adaptive(function, g, &out, &e))
    REFUSED(GaugepointAdaptive, ADAPTIVE(NULL), null, "goal");
    lost.coverage = 3;
    REFUSED(GaugepointAdaptive, ADAPTIVE(&lost), unknown, "coverage");
    lost = goal;
    lost.digits = 0;
    REFUSED(GaugepointAdaptive, ADAPTIVE(&lost), range, "digits");
    lost.digits = -1;
    REFUSED(GaugepointAdaptive, ADAPTIVE(&lost), range, "digits");
    lost = goal;
    lost.probability = NAN;
    REFUSED(GaugepointAdaptive, ADAPTIVE(&lost), odd, "probability");
    lost = goal;
    lost.most_trials = UINT64_MAX;
    REFUSED(GaugepointAdaptive, ADAPTIVE(&lost), GAUGEPOINT_STATUS_TOO_LARGE, "trials");
    SIZED(GaugepointAdaptive, ADAPTIVE(&goal));
#define RARE(t, l, r, to, n) \
  (of ? gaugepoint_stack_importance(stack, t, l, r, to, n, &e) : gaugepoint_function_importance(function, t, l, r, to, n, &e))
    TOLD(RARE(0, 100, &run, x, 4), unknown, "toward");
    TOLD(RARE(3, 100, &run, x, 4), unknown, "toward");
    TOLD(RARE(GAUGEPOINT_TOWARD_UPPER, NAN, &run, x, 4), odd, "limit");
    TOLD(RARE(GAUGEPOINT_TOWARD_UPPER, -100, &run, x, 4), contradiction, "limit");
    TOLD(RARE(GAUGEPOINT_TOWARD_LOWER, -100, &run, x, 4), contradiction, "limit");
    TOLD(RARE(GAUGEPOINT_TOWARD_UPPER, 100, NULL, x, 4), null, "run");
    TOLD(RARE(GAUGEPOINT_TOWARD_UPPER, 100, &run, NULL, 4), null, "weights");
  }
  TOLD(gaugepoint_function_trials(NULL, &(GaugepointRun){1, 0, 0, 1, 0}, x, 4, &e), null, "function");
  TOLD(gaugepoint_stack_trials(NULL, &(GaugepointRun){1, 0, 0, 1, 0}, x, 4, &e), null, "stack");

  REFUSED(GaugepointTrialsSummary, gaugepoint_trials_summary(NULL, 4, 0.95, &out, &e), null, "values");
  REFUSED(GaugepointTrialsSummary, gaugepoint_trials_summary(x, SIZE_MAX, 0.95, &out, &e), range, "values");
  REFUSED(GaugepointTrialsSummary, gaugepoint_trials_summary(x, 0, 0.5, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "values");
  REFUSED(GaugepointTrialsSummary, gaugepoint_trials_summary(x, 1, 0.5, &out, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "values");
  REFUSED(GaugepointTrialsSummary, gaugepoint_trials_summary(nan, 2, 0.5, &out, &e), odd, "values/1");
  REFUSED(GaugepointTrialsSummary, gaugepoint_trials_summary(x, 4, 1, &out, &e), range, "probability");
  REFUSED(GaugepointTrialsSummary, gaugepoint_trials_summary(x, 4, NAN, &out, &e), odd, "probability");
  SIZED(GaugepointTrialsSummary, gaugepoint_trials_summary(x, 4, 0.5, &out, &e));
#define OUTSIDE(points, low, high, c) gaugepoint_trials_outside(x, 4, points, low, high, c, &out, &e)
  REFUSED(GaugepointTrialsOutside, OUTSIDE(1, NAN, 3, 0.95), odd, "lower");
  REFUSED(GaugepointTrialsOutside, OUTSIDE(1, 1, NAN, 0.95), odd, "upper");
  REFUSED(GaugepointTrialsOutside, OUTSIDE(1, 3, 1, 0.95), GAUGEPOINT_STATUS_OUT_OF_ORDER, "upper");
  REFUSED(GaugepointTrialsOutside, OUTSIDE(1, 1, 3, 1), range, "confidence");
  REFUSED(GaugepointTrialsOutside, OUTSIDE(0, 1, 3, 0.95), unknown, "points");
  REFUSED(GaugepointTrialsOutside, OUTSIDE(2, 1, 3, 0.95), contradiction, "points");
  REFUSED(GaugepointTrialsOutside, OUTSIDE(3, 1, 3, 0.95), contradiction, "points");
  SIZED(GaugepointTrialsOutside, OUTSIDE(1, 1, 3, 0.95));
  TOLD(gaugepoint_trials_histogram(x, 4, NULL, 3, counts, &e), null, "edges");
  TOLD(gaugepoint_trials_histogram(x, 4, edges, 1, counts, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "edges");
  TOLD(gaugepoint_trials_histogram(x, 4, edges, 0, counts, &e), GAUGEPOINT_STATUS_MISSING_FIELD, "edges");
  TOLD(gaugepoint_trials_histogram(x, 4, nan, 2, counts, &e), odd, "edges/1");
  TOLD(gaugepoint_trials_histogram(x, 4, edges, 3, NULL, &e), null, "counts");
  CHECK(counts[0] == 9);
  CHECK(gaugepoint_trials_histogram(x, 4, edges, 3, counts, NULL) == GAUGEPOINT_STATUS_OK && counts[0] == 2 && counts[1] == 2 && counts[2] == 9);
  REFUSED(GaugepointRareTail, gaugepoint_trials_rare_tail(x, 4, 0.95, &out, &e), contradiction, "trials");
  REFUSED(GaugepointRareTail, gaugepoint_trials_rare_tail(NULL, 4, 0.95, &out, &e), null, "values");
  REFUSED(GaugepointRareTail, gaugepoint_trials_rare_tail(x, 4, 2, &out, &e), range, "confidence");

  /* values that a callback does not write are not finite */
  GaugepointFunction *lazy = NULL;
  CHECK(gaugepoint_function_of_callback(of_clutch, 3, silent, NULL, &lazy, NULL) == GAUGEPOINT_STATUS_OK);
  TOLD(gaugepoint_function_nominal(lazy, &value, &e), odd, "model");
  TOLD(gaugepoint_function_trials(lazy, &(GaugepointRun){1, 0, 0, 1, 0}, x, 4, &e), odd, "model");
  gaugepoint_function_free(lazy);
  gaugepoint_function_free(good);
  gaugepoint_stack_free(linear);
}

int main(int argc, char **argv) {
  if (argc != 2) {
    fprintf(stderr, "usage: function FOLDER\n");
    return 2;
  }
  vectors(argv[1]);
  callbacks();
  split();
  engine_names();
  misuse();
  return finish();
}
