/* said WORK OUT: what the C library says to what every binding is asked. A binding must say the same, line by line and bit by bit.
   WORK has flat.csv, refused.txt with the names of the files of refused/, and documents.txt with kind, name and path; reports go to OUT. */
#include "check.h"
#include "flat.h"

static unsigned long long bits(double x) {
  unsigned long long all;
  memcpy(&all, &x, sizeof all);
  return all;
}

static void hex(const char *text) {
  for (; *text != '\0'; text++) {
    printf("%02x", (unsigned char)*text);
  }
}

static void refusal(const GaugepointError *e) {
  printf("%s ", gaugepoint_status_name(e->status));
  hex(e->field);
  printf(" ");
  hex(e->refused);
  printf(" ");
  hex(e->did_you_mean);
  printf(" %016llx %016llx %016llx\n", bits(e->has_value ? e->value : 0), bits(e->has_lower ? e->lower : 0), bits(e->has_upper ? e->upper : 0));
}

static void sizes(void) {
  printf("size Error %u\nsize JobVerdict %u\nsize CylinderVerdict %u\nsize JobDecision %u\n", (unsigned)sizeof(GaugepointError),
         (unsigned)sizeof(GaugepointJobVerdict), (unsigned)sizeof(GaugepointCylinderVerdict), (unsigned)sizeof(GaugepointJobDecision));
  printf("size Contributor %u\nsize Tail %u\nsize Law %u\nsize Growth %u\n", (unsigned)sizeof(GaugepointContributor),
         (unsigned)sizeof(GaugepointTail), (unsigned)sizeof(GaugepointLaw), (unsigned)sizeof(GaugepointGrowth));
  printf("version %s abi %d\n", gaugepoint_version(), (int)gaugepoint_abi());
  for (int32_t k = 0; gaugepoint_status_at(k) >= 0; k++) {
    int32_t status = gaugepoint_status_at(k);
    printf("status %d %s %s\n", (int)status, gaugepoint_status_name(status), gaugepoint_status_text(status));
  }
}

static void flat_row(char **cells) {
  double x[11], out;
  int count = 0;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  for (char *next = cells[2]; count < 11; next++) {
    x[count++] = strtod(next, &next);
    if (*next != ';') {
      break;
    }
  }
  for (size_t k = 0; k < sizeof flat_functions / sizeof flat_functions[0]; k++) {
    if (same(flat_functions[k].name, cells[1])) {
      printf("flat %s ", cells[0]);
      if (flat_functions[k].call(x, &out, &e) == GAUGEPOINT_STATUS_OK) {
        printf("%016llx\n", bits(out));
      } else {
        refusal(&e);
      }
      return;
    }
  }
  exit(2);
}

static void flat(const char *work) {
  size_t length;
  char *text = file_text(work, "flat.csv", &length), *rest = text, *line, *cells[6];
  next_line(&rest);
  while ((line = next_line(&rest)) != NULL) {
    columns(line, cells, 6);
    flat_row(cells);
  }
  free(text);
}

/* A value of 10 with limits on one side, on both, and with an uncertainty that is refused. */
static void decisions(void) {
  static const struct {
    int32_t rule, has_lower, has_upper;
    double u, at_least;
  } all[] = {
      {GAUGEPOINT_RULE_PROVEN, 0, 1, 0.25, 0.95},
      {GAUGEPOINT_RULE_SIMPLE_ACCEPTANCE, 1, 1, 0.25, 0.95},
      {GAUGEPOINT_RULE_CONFORMANCE_PROBABILITY, 1, 0, 0.25, 0.9},
      {GAUGEPOINT_RULE_PROVEN, 1, 1, -1, 0.95},
      {GAUGEPOINT_RULE_PROVEN, 0, 0, 0.25, 0.95},
  };
  for (size_t k = 0; k < sizeof all / sizeof all[0]; k++) {
    int32_t result;
    double probability;
    GaugepointError e = GAUGEPOINT_ERROR_INIT;
    printf("decide ");
    if (gaugepoint_decide_mm(10, all[k].u, all[k].has_lower, 9.5, all[k].has_upper, 10.5, all[k].rule, all[k].at_least, &result, &probability,
                             &e) == GAUGEPOINT_STATUS_OK) {
      printf("%d %016llx\n", (int)result, bits(probability));
    } else {
      refusal(&e);
    }
  }
}

/* Three contributors, a name that stands twice, and what the stack says then. */
static void stack(void) {
  const double normal[] = {0.01, 0.02}, even[] = {0, 0.05};
  const char *name[] = {"Deckh\xc3\xb6he \xf0\x9f\x98\x80", "pin", "rod", "pin"};
  const GaugepointContributor contributors[] = {
      {name[0], strlen(name[0]), 220, -0.05, 0.05, 1, 1, GAUGEPOINT_VARIATION_NORMAL, 0, normal, 2},
      {name[1], strlen(name[1]), 30, -0.05, 0.05, -1, 1, GAUGEPOINT_VARIATION_RECTANGULAR, 0, even, 2},
      {name[2], strlen(name[2]), 150, -0.1, 0.1, -1, 2, GAUGEPOINT_VARIATION_RECTANGULAR, 0, even, 2},
      {name[3], strlen(name[3]), 30, -0.05, 0.05, -1, 1, GAUGEPOINT_VARIATION_RECTANGULAR, 0, even, 2},
  };
  GaugepointStack *made = NULL;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  double quantile;
  RECORD(GaugepointTail, tail);
  gaugepoint_stack_new(NULL, 0, &made, NULL);
  for (int k = 0; k < 4; k++) {
    if (gaugepoint_stack_add(made, &contributors[k], &e) != GAUGEPOINT_STATUS_OK) {
      printf("stack ");
      refusal(&e);
    }
  }
  gaugepoint_stack_quantile(made, 0.025, &quantile, NULL);
  gaugepoint_stack_outside(made, -110.1, -109.9, &tail, NULL);
  printf("stack %016llx %016llx %016llx %016llx %016llx\n", bits(quantile), bits(tail.below), bits(tail.above), bits(tail.error),
         bits(tail.ppm));
  e.struct_size = sizeof e;
  if (gaugepoint_stack_quantile(made, 1.5, &quantile, &e) != GAUGEPOINT_STATUS_OK) {
    printf("stack ");
    refusal(&e);
  }
  gaugepoint_stack_free(made);
}

static void law(const GaugepointLaw *law, double temperature_c) {
  GaugepointExpansion *made = NULL;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  double from_c, to_c, strains[2], mean, temperatures_c[2] = {temperature_c, 20};
  RECORD(GaugepointGrowth, growth);
  printf("law ");
  if (gaugepoint_expansion_new(law, &made, &e) != GAUGEPOINT_STATUS_OK ||
      gaugepoint_expansion_at(made, temperature_c, &growth, &e) != GAUGEPOINT_STATUS_OK) {
    refusal(&e);
  } else {
    gaugepoint_expansion_range(made, &from_c, &to_c, NULL);
    gaugepoint_expansion_strains(made, temperatures_c, 2, strains, NULL);
    gaugepoint_expansion_mean_per_k(made, 30, temperature_c, &mean, NULL);
    printf("%016llx %016llx ", bits(from_c), bits(to_c));
    printf("%016llx %016llx %016llx %016llx %016llx %016llx\n", bits(growth.strain), bits(growth.instantaneous_per_k),
           bits(growth.mean_from_20_per_k), bits(strains[0]), bits(strains[1]), bits(mean));
  }
  gaugepoint_expansion_free(made);
}

static void laws(void) {
  const double temperatures_c[] = {0, 100, 200, 300}, coefficients[] = {20e-6, 20.5e-6, 21e-6, 22e-6};
  const double line[] = {18e-6, 5e-9}, strain[] = {-5e-3, 15e-6, 5e-9};
  GaugepointLaw mean = {.form = GAUGEPOINT_LAW_FORM_MEAN_COEFFICIENT, .base_c = 20, .mean_per_k = 20e-6, .from_c = -40, .to_c = 300};
  GaugepointLaw table = {.form = GAUGEPOINT_LAW_FORM_MEAN_TABLE, .base_c = 20, .count = 4, .temperatures_c = temperatures_c};
  GaugepointLaw named = {.form = GAUGEPOINT_LAW_FORM_BUILT_IN, .name = "gravity-cast AlSi12CuMgNi", .name_length = 25};
  table.coefficients = coefficients;
  GaugepointLaw polynomial = {.form = GAUGEPOINT_LAW_FORM_INSTANTANEOUS_POLYNOMIAL, .coefficients = line, .count = 2, .from_c = 0, .to_c = 300};
  GaugepointLaw graphite = {.form = GAUGEPOINT_LAW_FORM_GRAPHITE_IRON, .nodularity_percent = 66.4, .graphite_percent = 9.05};
  graphite.pearlite_to_ferrite = 0.5;
  law(&mean, 120);
  law(&table, 120);
  table.form = GAUGEPOINT_LAW_FORM_INSTANTANEOUS_TABLE;
  law(&table, 120);
  law(&polynomial, 120);
  polynomial.form = GAUGEPOINT_LAW_FORM_STRAIN_POLYNOMIAL;
  polynomial.coefficients = strain;
  polynomial.count = 3;
  law(&polynomial, 120);
  law(&graphite, 120);
  law(&named, 120);
  law(&mean, 301);
  named.name_length = 7;
  law(&named, 120);
}

static void refused(const char *work) {
  size_t length, report_length;
  char folder[1000], *names = file_text(work, "refused.txt", &length), *rest = names, *name, *report = NULL;
  snprintf(folder, sizeof folder, "%s/refused", work);
  while ((name = next_line(&rest)) != NULL) {
    GaugepointError e = GAUGEPOINT_ERROR_INIT;
    char *document = file_text(folder, name, &length);
    if (gaugepoint_job_assess(document, length, 0, &report, &report_length, &e) == GAUGEPOINT_STATUS_OK) {
      exit(2);
    }
    printf("refused %s ", name);
    refusal(&e);
    free(document);
  }
  free(names);
}

static void cylinder(const GaugepointReport *report, size_t place) {
  RECORD(GaugepointCylinderVerdict, c);
  gaugepoint_report_cylinder(report, place, &c, NULL);
  printf("cylinder %d %d %d %d %d\n", (int)c.number, (int)c.outcome, (int)c.piston_outcome, (int)c.bore_outcome, (int)c.decided_by);
  for (size_t k = 0; k < c.decision_count; k++) {
    RECORD(GaugepointJobDecision, d);
    gaugepoint_report_decision(report, place, k, &d, NULL);
    printf("decision %d %d %016llx %016llx %016llx\n", (int)d.judged, (int)d.result, bits(d.has_value ? d.value_mm : 0),
           bits(d.has_lower ? d.lower_mm : 0), bits(d.has_probability ? d.probability_of_conformity : 0));
  }
}

static void job(const GaugepointReport *report) {
  RECORD(GaugepointJobVerdict, verdict);
  gaugepoint_report_job(report, &verdict, NULL);
  printf("job %d %u %u %u\n", (int)verdict.outcome, (unsigned)verdict.cylinder_count, (unsigned)verdict.reuse_count,
         (unsigned)verdict.do_not_reuse_count);
  for (size_t k = 0; k < verdict.cylinder_count; k++) {
    cylinder(report, k);
  }
  for (int32_t lines = GAUGEPOINT_LINES_CAUTIONS; lines <= GAUGEPOINT_LINES_CYLINDER_DECISIONS; lines++) {
    char *text;
    size_t length;
    for (size_t k = 0; gaugepoint_report_line(report, lines, 0, k, &text, &length, NULL) == GAUGEPOINT_STATUS_OK; k++) {
      printf("line %d %s\n", (int)lines, text);
      gaugepoint_text_free(text);
    }
  }
}

/* Kind, name and path of a document; of a job also its verdicts and its text. */
static void document(char *line, const char *out) {
  char *end, *name, *path;
  int32_t kind = (int32_t)strtol(line, &end, 10);
  name = end + 1;
  path = strchr(name, ' ');
  *path++ = '\0';
  size_t length, text_length;
  char *given = file_text("", path, &length), *text = NULL;
  GaugepointReport *report = NULL;
  if (gaugepoint_report_new(kind, given, length, 0, &report, NULL) != GAUGEPOINT_STATUS_OK ||
      gaugepoint_report_text(report, GAUGEPOINT_FORMAT_JSON, &text, &text_length, NULL) != GAUGEPOINT_STATUS_OK) {
    fprintf(stderr, "%s is refused\n", path);
    exit(2);
  }
  char file[1000];
  snprintf(file, sizeof file, "%s/%s", out, name);
  FILE *to = fopen(file, "wb");
  if (to == NULL || fwrite(text, 1, text_length, to) != text_length || fclose(to) != 0) {
    exit(2);
  }
  gaugepoint_text_free(text);
  printf("document %d %s\n", (int)kind, name);
  if (kind == GAUGEPOINT_DOCUMENT_JOB) {
    job(report);
  }
  gaugepoint_report_free(report);
  free(given);
}

int main(int count, char **words) {
  if (count != 3) {
    return 2;
  }
  sizes();
  flat(words[1]);
  decisions();
  stack();
  laws();
  refused(words[1]);
  size_t length;
  char *list = file_text(words[1], "documents.txt", &length), *rest = list, *line;
  while ((line = next_line(&rest)) != NULL) {
    document(line, words[2]);
  }
  free(list);
  return 0;
}
