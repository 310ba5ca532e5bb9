/* stack FOLDER: linear stacks against the rows of stack.csv in FOLDER; misuse gives a status and leaves the stack as it was. */
#include "check.h"

enum { MOST = 64 };

/* Words of the column `stack`, the kind in C, and whether a centre of 0 stands before its numbers. */
static const struct {
  const char *word;
  int32_t kind;
  int centre;
} kinds[] = {
    {"normal", GAUGEPOINT_VARIATION_NORMAL, 1},           {"rectangular", GAUGEPOINT_VARIATION_RECTANGULAR, 1},
    {"triangular", GAUGEPOINT_VARIATION_TRIANGULAR, 0},   {"trapezoidal", GAUGEPOINT_VARIATION_TRAPEZOIDAL, 1},
    {"arcsine", GAUGEPOINT_VARIATION_ARCSINE, 1},         {"beta", GAUGEPOINT_VARIATION_BETA, 0},
    {"truncated", GAUGEPOINT_VARIATION_TRUNCATED_NORMAL, 0}, {"skewed", GAUGEPOINT_VARIATION_SKEWED, 0},
    {"sample", GAUGEPOINT_VARIATION_SAMPLE, 0},
};

static double numbers[MOST][MOST];
static char names[MOST][8];

/* A contributor about zero with limits of -1 and 1, from the words of its term. */
static GaugepointContributor contributor(char *words, int place) {
  GaugepointContributor c = {names[place], 0, 0, -1, 1, 1, 1, 0, 0, numbers[place], 0};
  char *rest = strchr(words, ' ');
  size_t length = (size_t)(rest - words);
  c.name_length = (size_t)snprintf(names[place], sizeof names[place], "x%d", place);
  for (size_t k = 0; k < sizeof kinds / sizeof kinds[0]; k++) {
    if (strlen(kinds[k].word) == length && strncmp(kinds[k].word, words, length) == 0) {
      c.kind = kinds[k].kind;
      c.number_count = (size_t)kinds[k].centre;
      numbers[place][0] = 0;
    }
  }
  CHECK(c.kind != 0);
  while (*rest != '\0' && c.number_count < MOST) {
    char *end;
    numbers[place][c.number_count++] = strtod(rest, &end);
    CHECK(end != rest);
    rest = end;
  }
  return c;
}

/* The stack of a row: half of the rows from records, the others term by term. */
static GaugepointStack *stack_of(char *terms, int one_by_one) {
  static GaugepointContributor all[MOST];
  GaugepointStack *stack = NULL;
  size_t count = 0;
  for (char *next = terms; next != NULL && count < MOST; count++) {
    char *words = next;
    next = strchr(words, ';');
    if (next != NULL) {
      *next++ = '\0';
    }
    all[count] = contributor(words, (int)count);
  }
  CHECK(gaugepoint_stack_new(all, one_by_one ? 0 : count, &stack, NULL) == GAUGEPOINT_STATUS_OK);
  for (size_t k = 0; one_by_one && k < count; k++) {
    CHECK(gaugepoint_stack_add(stack, &all[k], NULL) == GAUGEPOINT_STATUS_OK);
  }
  return stack;
}

static void asked(const GaugepointStack *stack, char **cells) {
  GaugepointTail tail;
  double x = strtod(cells[3], NULL), value = NAN, expected = strtod(cells[4], NULL);
  memset(&tail, 0, sizeof tail);
  tail.struct_size = sizeof tail;
  if (same(cells[2], "above")) {
    CHECK(gaugepoint_stack_outside(stack, -INFINITY, x, &tail, NULL) == GAUGEPOINT_STATUS_OK);
    CHECK(tail.below == 0 && tail.ppm == 1e6 * tail.above);
    value = tail.above;
  } else if (same(cells[2], "below")) {
    CHECK(gaugepoint_stack_outside(stack, x, INFINITY, &tail, NULL) == GAUGEPOINT_STATUS_OK);
    CHECK(tail.above == 0 && tail.ppm == 1e6 * tail.below);
    value = tail.below;
  } else if (same(cells[2], "density")) {
    CHECK(gaugepoint_stack_densities(stack, &x, 1, &value, NULL) == GAUGEPOINT_STATUS_OK);
  } else if (strncmp(cells[2], "slope_above_", 12) == 0) {
    static double below[MOST], above[MOST];
    CHECK(gaugepoint_stack_sensitivities(stack, -INFINITY, x, below, above, MOST, NULL) == GAUGEPOINT_STATUS_OK);
    value = above[strtoul(cells[2] + 12, NULL, 10)];
    CHECK(below[0] == 0);
  } else {
    CHECK(same(cells[2], "quantile_above"));
    CHECK(gaugepoint_stack_quantile_above(stack, x, &value, NULL) == GAUGEPOINT_STATUS_OK);
  }
  CHECK(fabs(value - expected) <= strtod(cells[5], NULL) * fabs(expected));
  printf("%s value %.17g\n%s error %.17g\n", cells[0], value, cells[0], tail.error);
}

static void vectors(const char *folder) {
  size_t length;
  int count = 0;
  char *text = file_text(folder, "stack.csv", &length), *rest = text, *line, *cells[7];
  next_line(&rest);
  while ((line = next_line(&rest)) != NULL) {
    CHECK(columns(line, cells, 7) == 7);
    row = cells[0];
    GaugepointStack *stack = stack_of(cells[1], count++ % 2);
    asked(stack, cells);
    gaugepoint_stack_free(stack);
  }
  free(text);
  printf("rows %d\n", count);
}

/* Deck clearance, invented: what gives several numbers, printed for the comparison with the core. */
static const double n_block[] = {0, 0.015}, n_rod[] = {-0.03, 0.03, 1.2, 1.0}, n_stroke[] = {0, 0.01}, n_scale[] = {0.004};
static const GaugepointContributor deck[] = {
    {"block", 5, 227, -0.05, 0.05, 1, 1, GAUGEPOINT_VARIATION_NORMAL, 0, n_block, 2},
    {"rod", 3, 174, -0.03, 0.03, -1, 1, GAUGEPOINT_VARIATION_CAPABILITY_TOWARD_UPPER, 0, n_rod, 4},
    {"shims", 5, 21.5, -0.0125, 0.0125, -1, 2, GAUGEPOINT_VARIATION_RECTANGULAR, 0, n_stroke, 2},
};
static const size_t places[] = {0, 1};
static const double factors[] = {1, 1}, edges[] = {9.9, 9.95, 10, 10.05, 10.1};

static const GaugepointToleranceCost costs[] = {{0, 1, 0.02, 1, 0.01, 0.2}, {2, 0.5, 1e-4, 2, 0.002, 0.05}};

static GaugepointStack *deck_stack(void) {
  GaugepointStack *stack = NULL;
  CHECK(gaugepoint_stack_new(deck, 3, &stack, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_stack_add_cause(stack, "scale", 5, GAUGEPOINT_VARIATION_RECTANGULAR, n_scale, 1, places, factors, 2, NULL) ==
        GAUGEPOINT_STATUS_OK);
  return stack;
}

static void results(void) {
  GaugepointStack *stack = deck_stack();
  GaugepointStackForms f;
  GaugepointStackCapability c;
  GaugepointShare shares[4];
  double low, high, sizes[5], densities[5], bins[4], q;
  size_t count, causes;
  row = "results";
  memset(&f, 0, sizeof f);
  memset(&c, 0, sizeof c);
  f.struct_size = sizeof f;
  c.struct_size = sizeof c;
  CHECK(gaugepoint_stack_count(stack, &count, &causes, NULL) == GAUGEPOINT_STATUS_OK && count == 3 && causes == 1);
  CHECK(gaugepoint_stack_forms(stack, &f, NULL) == GAUGEPOINT_STATUS_OK && f.has_modified_factor == 1);
  const double forms[] = {f.nominal, f.mean, f.standard_deviation, f.worst_case_lower, f.worst_case_upper, f.root_sum_square_lower, f.root_sum_square_upper,
                          f.bender_lower, f.bender_upper, f.modified_lower, f.modified_upper, f.modified_factor};
  for (int k = 0; k < 12; k++) {
    printf("forms.%d %.17g\n", k, forms[k]);
  }
  CHECK(gaugepoint_stack_root_sum_square(stack, 1.5, &low, &high, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(low == f.bender_lower && high == f.bender_upper);
  CHECK(gaugepoint_stack_shares(stack, shares, 4, &count, NULL) == GAUGEPOINT_STATUS_OK && count == 4);
  for (size_t k = 0; k < count; k++) {
    printf("shares.%d %.17g\n", (int)(10 * shares[k].is_shared) + (int)shares[k].place, shares[k].share);
  }
  CHECK(gaugepoint_stack_capability(stack, 9.9, 10.1, &c, NULL) == GAUGEPOINT_STATUS_OK);
  printf("cp %.17g\ncpk %.17g\nbelow %.17g\nabove %.17g\nppm %.17g\n", c.cp, c.cpk, c.below, c.above, c.ppm);
  CHECK(gaugepoint_stack_quantile(stack, 0.001, &q, NULL) == GAUGEPOINT_STATUS_OK);
  printf("quantile %.17g\n", q);
  CHECK(gaugepoint_stack_curve(stack, 5, sizes, densities, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_stack_histogram(stack, edges, 5, bins, NULL) == GAUGEPOINT_STATUS_OK);
  for (int k = 0; k < 5; k++) {
    printf("sizes.%d %.17g\ndensities.%d %.17g\n", k, sizes[k], k, densities[k]);
  }
  for (int k = 0; k < 4; k++) {
    printf("bins.%d %.17g\n", k, bins[k]);
  }
  double below[3], above[3], tolerances[2];
  GaugepointAllocation a;
  GaugepointTail t;
  memset(&a, 0, sizeof a);
  memset(&t, 0, sizeof t);
  a.struct_size = sizeof a;
  t.struct_size = sizeof t;
  CHECK(gaugepoint_stack_sensitivities(stack, 9.9, 10.1, below, above, 3, NULL) == GAUGEPOINT_STATUS_OK);
  for (int k = 0; k < 3; k++) {
    printf("slopes.%d %.17g\nslopes.%d %.17g\n", 10 + k, below[k], k, above[k]);
  }
  for (int32_t wanted = GAUGEPOINT_WANTED_OUTSIDE; wanted <= GAUGEPOINT_WANTED_CPK; wanted++) {
    double value = wanted == GAUGEPOINT_WANTED_CPK ? 1.5 : 1e-6;
    CHECK(gaugepoint_stack_allocate(stack, 9.9, 10.1, wanted, value, costs, 2, tolerances, &a, NULL) == GAUGEPOINT_STATUS_OK);
    printf("tolerances.0 %.17g\ntolerances.1 %.17g\ncost %.17g\nprice %.17g\nppm %.17g\n", tolerances[0], tolerances[1], a.cost, a.price, a.ppm);
  }
  /* with these tolerances the stack is what the record says */
  CHECK(gaugepoint_stack_set_tolerance(stack, 0, tolerances[0], NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_stack_set_tolerance(stack, 2, tolerances[1], NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_stack_outside(stack, 9.9, 10.1, &t, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(t.below == a.below && t.above == a.above && t.error == a.error && t.ppm == a.ppm);
  gaugepoint_stack_free(stack);
}

static void misuse(void) {
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER, range = GAUGEPOINT_STATUS_OUT_OF_RANGE;
  const int32_t missing = GAUGEPOINT_STATUS_MISSING_FIELD, unknown = GAUGEPOINT_STATUS_UNKNOWN_CHOICE;
  const int32_t repeated = GAUGEPOINT_STATUS_REPEATED, contradiction = GAUGEPOINT_STATUS_CONTRADICTION;
  GaugepointStack *stack = deck_stack(), *empty = NULL, *none = (GaugepointStack *)names, *kept = none;
  GaugepointStackForms f;
  GaugepointTail t;
  GaugepointStackCapability c;
  GaugepointShare shares[4];
  size_t count = 7, causes = 7, far[] = {0, 3};
  double x = 1, y = 1, nan = NAN, bins[5] = {1, 1, 1, 1, 1};
  row = "misuse";
  gaugepoint_stack_free(NULL);
  memset(&f, 0, sizeof f);
  memset(&t, 0, sizeof t);
  memset(&c, 0, sizeof c);
  f.struct_size = sizeof f;
  t.struct_size = sizeof t;
  c.struct_size = sizeof c;

  TOLD(gaugepoint_stack_new(NULL, 1, &kept, &e), null, "contributors");
  TOLD(gaugepoint_stack_new(deck, 3, NULL, &e), null, "stack");
  TOLD(gaugepoint_stack_new(deck, SIZE_MAX, &kept, &e), range, "contributors");
  CHECK(kept == none);
  CHECK(gaugepoint_stack_new(NULL, 0, &empty, NULL) == GAUGEPOINT_STATUS_OK && empty != NULL);

  TOLD(gaugepoint_stack_add(NULL, deck, &e), null, "stack");
  TOLD(gaugepoint_stack_add(empty, NULL, &e), null, "contributor");
  TOLD(gaugepoint_stack_add(stack, deck, &e), repeated, "contributors/3/name");
  GaugepointContributor wrong = deck[0];
  wrong.name = "scale";
  TOLD(gaugepoint_stack_add(stack, &wrong, &e), repeated, "name");
  wrong = deck[0];
  wrong.name = NULL;
  TOLD(gaugepoint_stack_add(empty, &wrong, &e), null, "name");
  wrong.name = "\xff";
  wrong.name_length = 1;
  TOLD(gaugepoint_stack_add(empty, &wrong, &e), GAUGEPOINT_STATUS_NOT_UTF8, "name");
  wrong.name = " ";
  TOLD(gaugepoint_stack_add(empty, &wrong, &e), missing, "name");
  wrong = deck[0];
  wrong.numbers = NULL;
  TOLD(gaugepoint_stack_add(empty, &wrong, &e), null, "numbers");
  wrong = deck[0];
  wrong.number_count = 1;
  TOLD(gaugepoint_stack_add(empty, &wrong, &e), contradiction, "numbers");
  wrong.number_count = 0;
  TOLD(gaugepoint_stack_add(empty, &wrong, &e), missing, "numbers");
  wrong = deck[0];
  const int32_t numbers_of_no_kind[] = {0, -1, 12, INT32_MIN, INT32_MAX};
  for (int k = 0; k < 5; k++) {
    wrong.kind = numbers_of_no_kind[k];
    TOLD(gaugepoint_stack_add(empty, &wrong, &e), unknown, "kind");
  }
  wrong = deck[0];
  wrong.upper = -1;
  TOLD(gaugepoint_stack_add(empty, &wrong, &e), GAUGEPOINT_STATUS_OUT_OF_ORDER, "upper");
  wrong = deck[0];
  wrong.nominal = NAN;
  TOLD(gaugepoint_stack_add(empty, &wrong, &e), GAUGEPOINT_STATUS_NOT_FINITE, "nominal");
  wrong = deck[0];
  wrong.coefficient = 0;
  TOLD(gaugepoint_stack_add(empty, &wrong, &e), range, "coefficient");
  const size_t odd_counts[] = {0, 1001, SIZE_MAX};
  for (int k = 0; k < 3; k++) {
    wrong = deck[0];
    wrong.count = odd_counts[k];
    TOLD(gaugepoint_stack_add(empty, &wrong, &e), range, "count");
  }
  GaugepointContributor two[] = {deck[0], deck[1]};
  two[1].lower = NAN;
  TOLD(gaugepoint_stack_new(two, 2, &kept, &e), GAUGEPOINT_STATUS_NOT_FINITE, "contributors/1/lower");
  CHECK(kept == none);

#define CAUSE(s, name, kind, n, p, f, count) gaugepoint_stack_add_cause(s, name, 4, kind, n, 1, p, f, count, &e)
  const int32_t normal = GAUGEPOINT_VARIATION_NORMAL;
  TOLD(CAUSE(NULL, "oven", normal, n_scale, places, factors, 2), null, "stack");
  TOLD(CAUSE(stack, NULL, normal, n_scale, places, factors, 2), null, "name");
  TOLD(CAUSE(stack, "oven", normal, NULL, places, factors, 2), null, "numbers");
  TOLD(CAUSE(stack, "oven", normal, n_scale, NULL, factors, 2), null, "places");
  TOLD(CAUSE(stack, "oven", normal, n_scale, places, NULL, 2), null, "factors");
  TOLD(CAUSE(stack, "oven", normal, n_scale, far, factors, 2), range, "places");
  TOLD(CAUSE(stack, "oven", normal, n_scale, places, factors, 0), missing, "factors");
  TOLD(CAUSE(stack, "oven", normal, n_scale, places, &nan, 1), GAUGEPOINT_STATUS_NOT_FINITE, "factors/0");
  TOLD(CAUSE(stack, "oven", GAUGEPOINT_VARIATION_BETA, n_scale, places, factors, 2), unknown, "kind");
  TOLD(CAUSE(stack, "oven", 99, n_scale, places, factors, 2), unknown, "kind");
  TOLD(CAUSE(stack, "oven", GAUGEPOINT_VARIATION_TRAPEZOIDAL, n_scale, places, factors, 2), contradiction, "numbers");
  TOLD(CAUSE(empty, "oven", normal, n_scale, places, factors, 2), missing, "contributors");
  CHECK(gaugepoint_stack_count(stack, &count, &causes, NULL) == GAUGEPOINT_STATUS_OK && count == 3 && causes == 1);

  TOLD(gaugepoint_stack_forms(empty, &f, &e), missing, "contributors");
  TOLD(gaugepoint_stack_forms(NULL, &f, &e), null, "stack");
  TOLD(gaugepoint_stack_forms(stack, NULL, &e), null, "out");
  f.struct_size = 0;
  TOLD(gaugepoint_stack_forms(stack, &f, &e), GAUGEPOINT_STATUS_STRUCT_SIZE, "out");
  TOLD(gaugepoint_stack_root_sum_square(stack, -1, &x, &y, &e), range, "factor");
  CHECK(isnan(x) && isnan(y));
  TOLD(gaugepoint_stack_root_sum_square(stack, 1, NULL, &y, &e), null, "lower");
  TOLD(gaugepoint_stack_root_sum_square(stack, 1, &x, NULL, &e), null, "upper");
  TOLD(gaugepoint_stack_shares(stack, NULL, 4, &count, &e), null, "shares");
  TOLD(gaugepoint_stack_shares(stack, shares, 4, NULL, &e), null, "count");
  count = 9;
  TOLD(gaugepoint_stack_shares(stack, shares, 3, &count, &e), contradiction, "room");
  CHECK(count == 9);
  TOLD(gaugepoint_stack_outside(stack, NAN, 10, &t, &e), GAUGEPOINT_STATUS_NOT_FINITE, "lower");
  TOLD(gaugepoint_stack_outside(stack, 11, 10, &t, &e), GAUGEPOINT_STATUS_OUT_OF_ORDER, "upper");
  TOLD(gaugepoint_stack_outside(stack, 9, 10, NULL, &e), null, "out");
  t.struct_size = 39;
  TOLD(gaugepoint_stack_outside(stack, 9, 10, &t, &e), GAUGEPOINT_STATUS_STRUCT_SIZE, "out");
  TOLD(gaugepoint_stack_capability(stack, -INFINITY, 10, &c, &e), GAUGEPOINT_STATUS_NOT_FINITE, "lower");
  CHECK(c.cp == 0 && t.below == 0);
  x = 1;
  TOLD(gaugepoint_stack_quantile(stack, 1, &x, &e), range, "probability");
  CHECK(isnan(x));
  x = 1;
  TOLD(gaugepoint_stack_quantile_above(NULL, 0.5, &x, &e), null, "stack");
  CHECK(isnan(x));
  TOLD(gaugepoint_stack_densities(stack, NULL, 1, bins, &e), null, "sizes");
  TOLD(gaugepoint_stack_densities(stack, &nan, 1, bins, &e), GAUGEPOINT_STATUS_NOT_FINITE, "sizes/0");
  TOLD(gaugepoint_stack_densities(stack, edges, 1, NULL, &e), null, "densities");
  TOLD(gaugepoint_stack_curve(stack, 1, bins, bins + 1, &e), range, "count");
  TOLD(gaugepoint_stack_curve(stack, SIZE_MAX, bins, bins + 1, &e), range, "count");
  TOLD(gaugepoint_stack_histogram(stack, edges, 1, bins, &e), missing, "edges");
  TOLD(gaugepoint_stack_histogram(stack, edges, 0, bins, &e), missing, "edges");
  TOLD(gaugepoint_stack_histogram(stack, factors, 2, bins, &e), GAUGEPOINT_STATUS_OUT_OF_ORDER, "edges/1");
  TOLD(gaugepoint_stack_sensitivities(stack, 9.9, 10.1, bins, bins + 3, 2, &e), contradiction, "room");
  TOLD(gaugepoint_stack_sensitivities(stack, 9.9, 10.1, NULL, bins, 3, &e), null, "below");
  TOLD(gaugepoint_stack_sensitivities(stack, 9.9, 10.1, bins, NULL, 3, &e), null, "above");
  TOLD(gaugepoint_stack_sensitivities(stack, NAN, 10.1, bins, bins, 3, &e), GAUGEPOINT_STATUS_NOT_FINITE, "lower");
  TOLD(gaugepoint_stack_set_tolerance(NULL, 0, 0.1, &e), null, "stack");
  TOLD(gaugepoint_stack_set_tolerance(empty, 0, 0.1, &e), missing, "contributors");
  TOLD(gaugepoint_stack_set_tolerance(stack, 3, 0.1, &e), range, "tolerances/0");
  TOLD(gaugepoint_stack_set_tolerance(stack, 0, 0, &e), range, "tolerances/0");
  TOLD(gaugepoint_stack_set_tolerance(stack, 0, NAN, &e), GAUGEPOINT_STATUS_NOT_FINITE, "tolerances/0");
  GaugepointAllocation a;
  GaugepointToleranceCost bad[] = {costs[0], costs[1]};
  memset(&a, 0, sizeof a);
  a.struct_size = sizeof a;
#define ALLOCATE(s, w, v, c, n) gaugepoint_stack_allocate(s, 9.9, 10.1, w, v, c, n, bins, &a, &e)
  TOLD(ALLOCATE(NULL, 1, 1e-6, costs, 2), null, "stack");
  TOLD(ALLOCATE(empty, 1, 1e-6, costs, 2), missing, "contributors");
  TOLD(ALLOCATE(stack, 1, 1e-6, NULL, 2), null, "costs");
  TOLD(ALLOCATE(stack, 1, 1e-6, costs, 0), missing, "costs");
  TOLD(ALLOCATE(stack, 0, 1e-6, costs, 2), unknown, "wanted");
  TOLD(ALLOCATE(stack, 3, 1e-6, costs, 2), unknown, "wanted");
  TOLD(ALLOCATE(stack, 1, 0, costs, 2), range, "outside");
  TOLD(ALLOCATE(stack, 2, 5, costs, 2), range, "cpk");
  bad[1].place = 0;
  TOLD(ALLOCATE(stack, 1, 1e-6, bad, 2), repeated, "costs/1/place");
  bad[1].place = 3;
  TOLD(ALLOCATE(stack, 1, 1e-6, bad, 2), range, "costs/1/place");
  bad[1] = costs[1];
  bad[1].most = 0.001;
  TOLD(ALLOCATE(stack, 1, 1e-6, bad, 2), GAUGEPOINT_STATUS_OUT_OF_ORDER, "costs/1/most");
  bad[1] = costs[1];
  bad[1].factor = 0;
  TOLD(ALLOCATE(stack, 1, 1e-6, bad, 2), range, "costs/1/factor");
  TOLD(gaugepoint_stack_allocate(stack, 9.9, 10.1, 1, 1e-6, costs, 2, NULL, &a, &e), null, "tolerances");
  TOLD(gaugepoint_stack_allocate(stack, 9.9, 10.1, 1, 1e-6, costs, 2, bins, NULL, &e), null, "out");
  CHECK(bins[0] == 1 && bins[4] == 1 && a.cost == 0);
  gaugepoint_stack_free(stack);
  gaugepoint_stack_free(empty);
}

int main(int argc, char **argv) {
  if (argc != 2) {
    fprintf(stderr, "usage: stack FOLDER\n");
    return 2;
  }
  vectors(argv[1]);
  results();
  misuse();
  return finish();
}
