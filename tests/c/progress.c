/* progress FOLDER: long work with a watcher; what it is told, what a stop leaves, and that the bits are those of the work without one. */
#include "check.h"

enum { TRIALS = 20000, MOST = 300000, BORES = 60, PISTONS = 80 };

/* What a watcher was told, and when it stops: at its call number `stop`, counted from 1; 0 for never. */
typedef struct {
  size_t calls, stop, done, total, falls, beyond, first_done;
} Seen;

static int32_t watch(void *user, size_t done, size_t total) {
  Seen *seen = user;
  if (seen->calls++ == 0) {
    seen->first_done = done;
  }
  seen->falls += done < seen->done;
  seen->beyond += done > total;
  seen->done = done;
  seen->total = total;
  return seen->calls == seen->stop ? 7 : 0;
}

static const Seen unseen;

/* Was the whole told, from nothing on and never back? */
static void whole(const Seen *seen, size_t least_calls) {
  CHECK(seen->calls >= least_calls && seen->first_done == 0);
  CHECK(seen->falls == 0 && seen->beyond == 0);
  CHECK(seen->done == seen->total && seen->total > 0);
}

/* A stop at the first, at a middle and at the last of the calls; `left` is what must be as it was. */
#define STOPPED(calls_of, call, left) \
  do { \
    const size_t at[] = {1, (calls_of) / 2 + 1, (calls_of)}; \
    for (int k_ = 0; k_ < 3; k_++) { \
      Seen seen = unseen; \
      seen.stop = at[k_]; \
      TOLD(call, GAUGEPOINT_STATUS_STOPPED, ""); \
      CHECK(seen.calls == at[k_]); \
      CHECK(left); \
    } \
  } while (0)

static double numbers[2] = {0, 0.03};
static GaugepointContributor sides[] = {
    {"a", 1, 10, -0.1, 0.1, 1, 1, GAUGEPOINT_VARIATION_NORMAL, 0, numbers, 2},
    {"b", 1, 20, -0.1, 0.1, 1, 1, GAUGEPOINT_VARIATION_NORMAL, 0, numbers, 2},
};

static int32_t product(void *user, const double *x, size_t contributors, size_t trials, double *values) {
  (void)user;
  CHECK(contributors == 2);
  for (size_t i = 0; i < trials; i++) {
    values[i] = x[i] * x[trials + i];
  }
  return 0;
}

static int32_t failing(void *user, const double *x, size_t contributors, size_t trials, double *values) {
  (void)user, (void)x, (void)contributors, (void)trials, (void)values;
  return 3;
}

static double plain[TRIALS], watched[TRIALS], kept[TRIALS];

static int untouched(void) { return memcmp(watched, kept, sizeof kept) == 0; }

static void of_stack(void) {
  GaugepointStack *stack = NULL;
  const GaugepointRun run = {7, 100, 0, GAUGEPOINT_POINTS_RANDOM, 0};
  const GaugepointGoal goal = {7, MOST, 0.95, GAUGEPOINT_COVERAGE_SYMMETRIC, 1};
  row = "stack";
  CHECK(gaugepoint_stack_new(sides, 2, &stack, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_stack_trials(stack, &run, plain, TRIALS, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_stack_trials_watched(stack, &run, NULL, NULL, watched, TRIALS, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(memcmp(plain, watched, sizeof plain) == 0);
  memset(watched, 0, sizeof watched);
  Seen seen = unseen;
  CHECK(gaugepoint_stack_trials_watched(stack, &run, watch, &seen, watched, TRIALS, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(memcmp(plain, watched, sizeof plain) == 0);
  /* a unit is a block of 256 trials */
  whole(&seen, TRIALS / 256 + 1);
  CHECK(seen.total == TRIALS);
  memcpy(watched, kept, sizeof kept);
  const size_t calls = seen.calls;
  STOPPED(calls, gaugepoint_stack_trials_watched(stack, &run, watch, &seen, watched, TRIALS, &e), untouched());

  row = "stack, adaptive";
  RECORD(GaugepointAdaptive, alone);
  RECORD(GaugepointAdaptive, out);
  seen = unseen;
  CHECK(gaugepoint_stack_adaptive(stack, &goal, &alone, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_stack_adaptive_watched(stack, &goal, watch, &seen, &out, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(memcmp(&alone, &out, sizeof out) == 0);
  whole(&seen, 10);
  CHECK(seen.total == out.trials);
  const GaugepointAdaptive was = out;
  STOPPED(seen.calls, gaugepoint_stack_adaptive_watched(stack, &goal, watch, &seen, &out, &e), memcmp(&was, &out, sizeof out) == 0);

  row = "stack, importance";
  seen = unseen;
  CHECK(gaugepoint_stack_importance(stack, GAUGEPOINT_TOWARD_UPPER, 30.3, &run, plain, TRIALS, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_stack_importance_watched(stack, GAUGEPOINT_TOWARD_UPPER, 30.3, &run, watch, &seen, watched, TRIALS, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(memcmp(plain, watched, sizeof plain) == 0);
  whole(&seen, TRIALS / 256 + 1);
  memcpy(watched, kept, sizeof kept);
  STOPPED(calls, gaugepoint_stack_importance_watched(stack, GAUGEPOINT_TOWARD_UPPER, 30.3, &run, watch, &seen, watched, TRIALS, &e), untouched());

  /* what is refused is refused before anybody is asked */
  seen = unseen;
  TOLD(gaugepoint_stack_trials_watched(NULL, &run, watch, &seen, watched, TRIALS, &e), GAUGEPOINT_STATUS_NULL_POINTER, "stack");
  TOLD(gaugepoint_stack_trials_watched(stack, &run, watch, &seen, watched, 0, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "trials");
  CHECK(seen.calls == 0 && untouched());
  gaugepoint_stack_free(stack);
}

static void of_function(GaugepointFunction *function, const char *name, size_t least_calls) {
  const GaugepointRun run = {7, 100, 0, GAUGEPOINT_POINTS_RANDOM, 0};
  const GaugepointGoal goal = {7, MOST, 0.95, GAUGEPOINT_COVERAGE_SYMMETRIC, 1};
  row = name;
  Seen seen = unseen;
  CHECK(gaugepoint_function_trials(function, &run, plain, TRIALS, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_function_trials_watched(function, &run, watch, &seen, watched, TRIALS, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(memcmp(plain, watched, sizeof plain) == 0);
  whole(&seen, least_calls);
  memcpy(watched, kept, sizeof kept);
  STOPPED(seen.calls, gaugepoint_function_trials_watched(function, &run, watch, &seen, watched, TRIALS, &e), untouched());

  RECORD(GaugepointAdaptive, alone);
  RECORD(GaugepointAdaptive, out);
  seen = unseen;
  CHECK(gaugepoint_function_adaptive(function, &goal, &alone, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_function_adaptive_watched(function, &goal, watch, &seen, &out, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(memcmp(&alone, &out, sizeof out) == 0);
  whole(&seen, 2);
  const GaugepointAdaptive was = out;
  STOPPED(seen.calls, gaugepoint_function_adaptive_watched(function, &goal, watch, &seen, &out, &e), memcmp(&was, &out, sizeof out) == 0);

  seen = unseen;
  CHECK(gaugepoint_function_importance(function, GAUGEPOINT_TOWARD_UPPER, 204, &run, plain, TRIALS, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_function_importance_watched(function, GAUGEPOINT_TOWARD_UPPER, 204, &run, watch, &seen, watched, TRIALS, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(memcmp(plain, watched, sizeof plain) == 0);
  whole(&seen, least_calls);
  memcpy(watched, kept, sizeof kept);
  STOPPED(seen.calls, gaugepoint_function_importance_watched(function, GAUGEPOINT_TOWARD_UPPER, 204, &run, watch, &seen, watched, TRIALS, &e), untouched());
  gaugepoint_function_free(function);
}

static void of_functions(void) {
  GaugepointFunction *formula = NULL, *called = NULL, *broken = NULL;
  CHECK(gaugepoint_function_from_formula(sides, 2, "a * b", 5, NULL, NULL, &formula, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_function_of_callback(sides, 2, product, NULL, &called, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_function_of_callback(sides, 2, failing, NULL, &broken, NULL) == GAUGEPOINT_STATUS_OK);
  of_function(formula, "formula", TRIALS / 256 + 1);
  of_function(called, "callback", 2);

  /* what the callback says stands before what became of it, and nobody is asked any more */
  row = "callback that fails";
  const GaugepointRun run = {7, 0, 0, GAUGEPOINT_POINTS_RANDOM, 0};
  Seen seen = unseen;
  TOLD(gaugepoint_function_trials_watched(broken, &run, watch, &seen, watched, TRIALS, &e), GAUGEPOINT_STATUS_CALLBACK_FAILED, "callback");
  CHECK(seen.calls == 1 && untouched());
  gaugepoint_function_free(broken);
}

static void of_matching(void) {
  static GaugepointMeasuredBore bores[BORES];
  static GaugepointMeasuredPiston pistons[PISTONS];
  static GaugepointMatched alone[BORES], pairs[BORES], as_they_were[BORES];
  GaugepointMatchingConditions conditions;
  row = "matching";
  memset(&conditions, 0, sizeof conditions);
  conditions.has_wanted = 1;
  conditions.wanted.has_lower = conditions.wanted.has_upper = 1;
  conditions.wanted.lower_mm = 0.03;
  conditions.wanted.upper_mm = 0.07;
  /* invented sizes */
  for (int k = 0; k < PISTONS; k++) {
    pistons[k].size_mm = 85.95 + 0.001 * (k * 57 % 97);
    pistons[k].standard_uncertainty_mm = 0.001;
  }
  for (int k = 0; k < BORES; k++) {
    bores[k].size_mm = 86 + 0.001 * (k * 31 % 97);
    bores[k].standard_uncertainty_mm = 0.001 + 1e-5 * (k % 7);
  }
  RECORD(GaugepointMatching, one);
  RECORD(GaugepointMatching, out);
  Seen seen = unseen;
#define MATCHED(told_to, user, to, record, error) \
  gaugepoint_match_pistons_watched(bores, BORES, pistons, PISTONS, &conditions, told_to, user, to, BORES, record, error)
  CHECK(gaugepoint_match_pistons(bores, BORES, pistons, PISTONS, &conditions, alone, BORES, &one, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(MATCHED(watch, &seen, pairs, &out, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(out.data_case == GAUGEPOINT_MATCHING_CASE_PAIR_DEPENDENT);
  CHECK(memcmp(alone, pairs, sizeof pairs) == 0 && memcmp(&one, &out, sizeof out) == 0);
  whole(&seen, BORES + 1);
  memcpy(pairs, as_they_were, sizeof pairs);
  STOPPED(seen.calls, MATCHED(watch, &seen, pairs, &out, &e),
          memcmp(pairs, as_they_were, sizeof pairs) == 0 && memcmp(&one, &out, sizeof out) == 0);
}

static char document[1 << 20];

static size_t read_file(const char *folder, const char *name) {
  char path[1024];
  snprintf(path, sizeof path, "%s/%s", folder, name);
  FILE *file = fopen(path, "rb");
  CHECK(file != NULL);
  if (file == NULL) {
    return 0;
  }
  const size_t length = fread(document, 1, sizeof document, file);
  CHECK(length > 0 && length < sizeof document);
  fclose(file);
  return length;
}

static char *json_of(const GaugepointReport *report) {
  char *text = NULL;
  size_t length = 0;
  CHECK(gaugepoint_report_text(report, GAUGEPOINT_FORMAT_JSON, &text, &length, NULL) == GAUGEPOINT_STATUS_OK);
  return text;
}

static void of_documents(const char *folder) {
  static const struct {
    int32_t kind;
    const char *name;
  } documents[] = {
      {GAUGEPOINT_DOCUMENT_JOB, "../../core/examples/pump_six.json"},
      {GAUGEPOINT_DOCUMENT_MEASUREMENT, "../../core/examples/three_ways.json"},
      {GAUGEPOINT_DOCUMENT_STACK, "../../core/examples/deck_stack.json"},
      {GAUGEPOINT_DOCUMENT_BUDGET, "budgets/gauge_block.json"},
      {GAUGEPOINT_DOCUMENT_WHAT_IF, "../../core/examples/pump_what_if.json"},
  };
  for (size_t k = 0; k < sizeof documents / sizeof documents[0]; k++) {
    const int32_t kind = documents[k].kind;
    const size_t length = read_file(folder, documents[k].name);
    GaugepointReport *alone = NULL, *report = NULL, *none = NULL;
    Seen seen = unseen;
    row = documents[k].name;
    CHECK(gaugepoint_report_new(kind, document, length, 0, &alone, NULL) == GAUGEPOINT_STATUS_OK);
    CHECK(gaugepoint_report_new_watched(kind, document, length, 0, watch, &seen, &report, NULL) == GAUGEPOINT_STATUS_OK);
    char *expected = json_of(alone), *found = json_of(report);
    CHECK(same(expected, found));
    whole(&seen, 3);
    STOPPED(seen.calls, gaugepoint_report_new_watched(kind, document, length, 0, watch, &seen, &none, &e), none == NULL);
    gaugepoint_text_free(expected);
    gaugepoint_text_free(found);
    gaugepoint_report_free(alone);
    gaugepoint_report_free(report);
  }
}

int main(int argc, char **argv) {
  if (argc != 2) {
    return 2;
  }
  for (int i = 0; i < TRIALS; i++) {
    kept[i] = i;
  }
  of_stack();
  of_functions();
  of_matching();
  of_documents(argv[1]);
  return finish();
}
