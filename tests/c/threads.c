/* threads JOB [CALLS]: sixteen threads at once, with so many calls in all, get the bits of the same calls alone: numbers, arrays, decisions, refusals, a
 * hot fit and a law that all of them ask, stacks of their own, and a document now and then. */
#include "check.h"

#include <pthread.h>
#include <stdint.h>

enum { THREADS = 16, VARIANTS = 32, ROWS = 8, CALLS = 40000, CALLS_A_DOCUMENT = 20000 };

/* What one call gives; compared as bytes. */
typedef struct {
  int32_t status, number;
  double value[2 * ROWS];
  char field[32]; /* its beginning */
} Answer;

static char *job, *report;
static size_t job_length, report_length;
static GaugepointHotFit *fit;
static GaugepointExpansion *law;
static long calls_of_each;

static void running(double v, Answer *a, GaugepointError *e) {
  a->status = gaugepoint_running_clearance_mm(86.035, 110 - v, 11.4e-6, 86, 120 + v, 20.5e-6, &a->value[0], e);
}

static void at_20(double v, Answer *a, GaugepointError *e) {
  a->status = gaugepoint_size_at_20_mm(86 + v / 1000, 0.002, 24, 11.5e-6, 20 + v, 20.5e-6, &a->value[0], e);
}

static void refused(double v, Answer *a, GaugepointError *e) {
  a->status = gaugepoint_bench_clearance_mm(3.4 + v / 100, 86, &a->value[0], e);
}

static void refused_law(double v, Answer *a, GaugepointError *e) {
  const double places[] = {100, 5000 + v};
  a->status = gaugepoint_expansion_strains(law, places, 2, a->value, e);
}

static void rows(double v, Answer *a, GaugepointError *e) {
  const GaugepointStrainLaw iron = {11.4e-6, 0, 0, -40, 450}, aluminium = {20.5e-6, 0, 0, -40, 450};
  double bore[ROWS], piston[ROWS], parts[ROWS], hot[ROWS], hotter[ROWS];
  int32_t told[ROWS];
  size_t wrong = 0;
  for (int k = 0; k < ROWS; k++) {
    bore[k] = 86.03 + v / 1000;
    piston[k] = 86 + k / 1000.0;
    parts[k] = 20 + v / 10;
    hot[k] = 100;
    hotter[k] = k == 3 ? 1000 : 120 + k;
  }
  a->status = gaugepoint_clearances(&iron, &aluminium, bore, piston, parts, hot, hotter, ROWS, a->value, a->value + ROWS, told, &wrong, e);
  a->number = (int32_t)wrong + told[3];
}

static void statistics(double v, Answer *a, GaugepointError *e) {
  const double values[] = {86.001, 86.003 + v / 1000, 86.002, 86.004, 86.002};
  RECORD(GaugepointSample, out);
  a->status = gaugepoint_sample(values, 5, &out, e);
  a->value[0] = out.mean;
  a->value[1] = out.standard_deviation;
}

static void decided(double v, Answer *a, GaugepointError *e) {
  a->status = gaugepoint_decide_mm(86 + v / 1000, 0.002, 1, 85.99, 1, 86.02, GAUGEPOINT_RULE_PROVEN, 0.95, &a->number, &a->value[0], e);
}

static void at_place(double v, Answer *a, GaugepointError *e) {
  a->status = gaugepoint_hot_fit_clearance_mm(fit, 10 * v, 1 + v, GAUGEPOINT_POSITION_ANYWHERE, NAN, &a->value[0], e);
}

static void smallest(double v, Answer *a, GaugepointError *e) {
  RECORD(GaugepointHotSmallest, out);
  a->status = gaugepoint_hot_fit_smallest(fit, v < VARIANTS - 1 ? 0 : 7, &out, e);
  a->value[0] = out.clearance_mm;
  a->value[1] = out.place.height_mm;
}

static void strains(double v, Answer *a, GaugepointError *e) {
  const double places[] = {20 + v, 100 + v, 200 + v};
  a->status = gaugepoint_expansion_strains(law, places, 3, a->value, e);
}

static void own_stack(double v, Answer *a, GaugepointError *e) {
  const double wide[] = {0, 0.02};
  const GaugepointContributor block = {"block", 5, 220 + v, -0.05, 0.05, 1, 1, GAUGEPOINT_VARIATION_NORMAL, 0, wide, 2};
  const GaugepointContributor rod = {"rod", 3, 140, -0.03, 0.03, -1, 1, GAUGEPOINT_VARIATION_NORMAL, 0, wide, 2};
  GaugepointStack *stack = NULL;
  RECORD(GaugepointStackForms, forms);
  a->status = gaugepoint_stack_new(&block, 1, &stack, e);
  a->number = gaugepoint_stack_add(stack, &rod, e);
  a->number += gaugepoint_stack_forms(stack, &forms, e);
  a->number += gaugepoint_stack_quantile(stack, 0.5 + v / 100, &a->value[0], e);
  a->value[1] = forms.root_sum_square_upper;
  gaugepoint_stack_free(stack);
}

static void (*const kinds[])(double, Answer *, GaugepointError *) = {
    running, at_20, refused, refused_law, rows, statistics, decided, at_place, smallest, strains, own_stack,
};
enum { KINDS = sizeof kinds / sizeof kinds[0] };

static Answer alone[KINDS][VARIANTS];

static void call(size_t kind, size_t variant, Answer *a) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  memset(a, 0, sizeof *a);
  kinds[kind]((double)variant, a, &e);
  memcpy(a->field, e.field, sizeof a->field);
}

static size_t document(void) {
  char *text = NULL;
  size_t length = 0;
  if (gaugepoint_job_assess(job, job_length, 1, &text, &length, NULL) != GAUGEPOINT_STATUS_OK) {
    return 1;
  }
  size_t different = length != report_length || memcmp(text, report, length + 1) != 0;
  gaugepoint_text_free(text);
  return different;
}

/* Number of differences. */
static void *work(void *thread) {
  size_t different = 0;
  /* the calls in an order that each thread has for itself: the generator of Knuth's MMIX, from memory */
  uint64_t state = (uint64_t)(size_t)thread;
  for (long k = 0; k < calls_of_each; k++) {
    if (k % CALLS_A_DOCUMENT == 0) {
      different += document();
      continue;
    }
    state = state * 6364136223846793005U + 1442695040888963407U;
    size_t kind = (size_t)(state >> 40) % KINDS, variant = (size_t)(state >> 33) % VARIANTS;
    Answer a;
    call(kind, variant, &a);
    different += memcmp(&a, &alone[kind][variant], sizeof a) != 0;
  }
  return (void *)different;
}

/* An invented skirt in a bore with three waves. */
static void make_fit(void) {
  static const GaugepointTableRow below[] = {{0, 0.02}, {12, 0}, {50, 0.06}}, ovality[] = {{0, 0.3}};
  static const double top = 0, amplitude = 0.004, heights[] = {0, 50}, thrust[] = {110, 150}, pin[] = {115, 170};
  const GaugepointBoreHarmonic waves = {3, &top, &amplitude, &amplitude, 1};
  GaugepointPistonSurface skirt;
  GaugepointBore bore;
  GaugepointHotFitParts parts;
  memset(&skirt, 0, sizeof skirt);
  memset(&bore, 0, sizeof bore);
  memset(&parts, 0, sizeof parts);
  skirt.form = GAUGEPOINT_PISTON_FORM_SYMMETRIC;
  skirt.counted = GAUGEPOINT_COUNTED_BELOW;
  skirt.to_mm = 50;
  skirt.barrel.rows = below;
  skirt.barrel.count = 3;
  skirt.ovality.rows = ovality;
  skirt.ovality.count = 1;
  const GaugepointPiston piston = {12, &skirt, 1};
  const GaugepointSurfaceGrowth growth = {mean(20.5e-6), 1, 1};
  bore.diameter_mm = 86.1;
  bore.harmonics = &waves;
  bore.harmonic_count = 1;
  parts.piston_diameter_mm = 86;
  parts.piston = &piston;
  parts.growth = &growth;
  parts.growth_count = 1;
  const GaugepointPistonField field = {heights, thrust, pin, 2};
  parts.piston_field = field;
  parts.bore = &bore;
  parts.bore_law = mean(11.4e-6);
  static const double wall = 110;
  parts.bore_field.depths_mm = &top;
  parts.bore_field.wall_c = &wall;
  parts.bore_field.count = 1;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  row = "the fit";
  CHECK(gaugepoint_hot_fit_new(&parts, &fit, &e) == GAUGEPOINT_STATUS_OK);
  if (fit == NULL) {
    fprintf(stderr, "%s: %s\n", e.field, e.message);
    exit(1);
  }
}

/* Both successes and refusals are among the answers, and no two of a kind are all alike. */
static void check_alone(void) {
  for (size_t kind = 0; kind < KINDS; kind++) {
    int different = 0;
    for (size_t variant = 0; variant < VARIANTS; variant++) {
      call(kind, variant, &alone[kind][variant]);
      different += memcmp(&alone[kind][variant], &alone[kind][0], sizeof(Answer)) != 0;
    }
    const int refuses = kinds[kind] == refused || kinds[kind] == refused_law;
    const Answer *first = &alone[kind][0];
    CHECK((first->status != GAUGEPOINT_STATUS_OK) == refuses && (first->field[0] != '\0') == refuses);
    CHECK(refuses || (different > 0 && isfinite(first->value[0])));
  }
}

int main(int count, char **words) {
  pthread_t threads[THREADS];
  if (count < 2) {
    return 2;
  }
  calls_of_each = (count > 2 ? strtol(words[2], NULL, 10) : CALLS) / THREADS;
  job = file_text("", words[1], &job_length);
  CHECK(gaugepoint_job_assess(job, job_length, 1, &report, &report_length, NULL) == GAUGEPOINT_STATUS_OK);
  const GaugepointLaw iron = mean(11.4e-6);
  CHECK(gaugepoint_expansion_new(&iron, &law, NULL) == GAUGEPOINT_STATUS_OK);
  make_fit();
  check_alone();
  row = "threads";
  for (size_t k = 0; k < THREADS; k++) {
    CHECK(pthread_create(&threads[k], NULL, work, (void *)k) == 0);
  }
  for (size_t k = 0; k < THREADS; k++) {
    void *different = &threads;
    CHECK(pthread_join(threads[k], &different) == 0);
    CHECK(different == NULL);
  }
  gaugepoint_hot_fit_free(fit);
  gaugepoint_expansion_free(law);
  gaugepoint_text_free(report);
  free(job);
  printf("calls %ld\n", calls_of_each * THREADS);
  return finish();
}
