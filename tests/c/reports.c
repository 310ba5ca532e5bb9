/* reports FILE: what a mistaken caller passes. reports FILE KIND WORKING FORMAT: the report, to standard output. reports FILE verdicts: what a
   job comes to, a line for each number and sentence. */
#include "check.h"

static char *document;
static size_t length;

static GaugepointReport *made(int32_t kind, int32_t working) {
  GaugepointReport *report = NULL;
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  if (gaugepoint_report_new(kind, document, length, working, &report, &error) != GAUGEPOINT_STATUS_OK) {
    fprintf(stderr, "%s\n", error.message);
    exit(2);
  }
  return report;
}

static int written(int32_t kind, int32_t working, int32_t format) {
  GaugepointReport *report = made(kind, working);
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  char *text = NULL;
  size_t text_length = 0;
  if (gaugepoint_report_text(report, format, &text, &text_length, &error) != GAUGEPOINT_STATUS_OK) {
    gaugepoint_report_free(report);
    fprintf(stderr, "%s %s\n", gaugepoint_status_name(error.status), error.field);
    return 1;
  }
  /* the text stands without its report */
  gaugepoint_report_free(report);
  int whole = fwrite(text, 1, text_length, stdout) == text_length && strlen(text) == text_length;
  gaugepoint_text_free(text);
  return whole ? 0 : 1;
}

static void sentences(const GaugepointReport *report, int32_t lines, size_t cylinder) {
  for (size_t k = 0;; k++) {
    char *text = NULL;
    size_t text_length = 0;
    GaugepointError e = GAUGEPOINT_ERROR_INIT;
    if (gaugepoint_report_line(report, lines, cylinder, k, &text, &text_length, &e) != GAUGEPOINT_STATUS_OK) {
      CHECK(e.status == GAUGEPOINT_STATUS_OUT_OF_RANGE && same(e.field, "index") && text == NULL);
      return;
    }
    CHECK(strlen(text) == text_length);
    printf("%s\n", text);
    gaugepoint_text_free(text);
  }
}

static void value(const char *name, int32_t has, double number) {
  CHECK(has == !isnan(number));
  if (has) {
    printf("%s %.17g\n", name, number);
  }
}

static void decision(const GaugepointReport *report, size_t cylinder, size_t k) {
  RECORD(GaugepointJobDecision, d);
  CHECK(gaugepoint_report_decision(report, cylinder, k, &d, NULL) == GAUGEPOINT_STATUS_OK);
  printf("judged %d result %d\n", (int)d.judged, (int)d.result);
  value("value_mm", d.has_value, d.value_mm);
  value("standard_uncertainty_mm", d.has_value, d.standard_uncertainty_mm);
  CHECK(d.has_value == !isnan(d.dof));
  value("dof", d.has_value && !isinf(d.dof), isinf(d.dof) ? NAN : d.dof);
  value("reference_temperature_c", d.has_reference_temperature, d.reference_temperature_c);
  value("lower_mm", d.has_lower, d.lower_mm);
  value("upper_mm", d.has_upper, d.upper_mm);
  value("guard_band_mm", d.has_guard_band, d.guard_band_mm);
  value("rejection_guard_band_mm", d.has_rejection_guard_band, d.rejection_guard_band_mm);
  value("uncertainty_ratio", d.has_uncertainty_ratio, d.uncertainty_ratio);
  value("probability_of_conformity", d.has_probability, d.probability_of_conformity);
}

static int verdicts(void) {
  GaugepointReport *report = made(GAUGEPOINT_DOCUMENT_JOB, 0);
  RECORD(GaugepointJobVerdict, job);
  CHECK(gaugepoint_report_job(report, &job, NULL) == GAUGEPOINT_STATUS_OK);
  printf("outcome %d cylinders %d: %d %d %d %d %d\n", (int)job.outcome, (int)job.cylinder_count, (int)job.reuse_count, (int)job.incomplete_count,
         (int)job.not_proven_count, (int)job.find_the_cause_first_count, (int)job.do_not_reuse_count);
  sentences(report, GAUGEPOINT_LINES_CAUTIONS, 0);
  sentences(report, GAUGEPOINT_LINES_WARNINGS, 0);
  sentences(report, GAUGEPOINT_LINES_REASONS, 0);
  for (size_t k = 0; k < job.cylinder_count; k++) {
    RECORD(GaugepointCylinderVerdict, c);
    CHECK(gaugepoint_report_cylinder(report, k, &c, NULL) == GAUGEPOINT_STATUS_OK);
    CHECK(c.has_piston == (c.piston_outcome != 0) && c.has_bore == (c.bore_outcome != 0) && c.has_decided_by == (c.decided_by != 0));
    printf("cylinder %d outcome %d piston %d bore %d by %d decisions %d missing %d\n", (int)c.number, (int)c.outcome, (int)c.piston_outcome,
           (int)c.bore_outcome, (int)c.decided_by, (int)c.decision_count, (int)c.missing_count);
    sentences(report, GAUGEPOINT_LINES_CYLINDER_REASONS, k);
    sentences(report, GAUGEPOINT_LINES_CYLINDER_MISSING, k);
    sentences(report, GAUGEPOINT_LINES_CYLINDER_DECISIONS, k);
    for (size_t n = 0; n < c.decision_count; n++) {
      decision(report, k, n);
    }
  }
  gaugepoint_report_free(report);
  return failures == 0 ? 0 : 1;
}

static void making(void) {
  char untouched;
  GaugepointReport *report = (GaugepointReport *)&untouched;
  const int32_t kinds[] = {0, 9, -1, INT32_MAX};
  row = "making";
  for (int k = 0; k < 4; k++) {
    TOLD(gaugepoint_report_new(kinds[k], document, length, 0, &report, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "kind");
  }
  TOLD(gaugepoint_report_new(1, NULL, length, 0, &report, &e), GAUGEPOINT_STATUS_NULL_POINTER, "document");
  TOLD(gaugepoint_report_new(1, document, SIZE_MAX, 0, &report, &e), GAUGEPOINT_STATUS_TOO_LARGE, "");
  TOLD(gaugepoint_report_new(1, "{\xff}", 3, 0, &report, &e), GAUGEPOINT_STATUS_NOT_UTF8, "");
  TOLD(gaugepoint_report_new(1, document, length, 2, &report, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "with_working");
  TOLD(gaugepoint_report_new(1, document, length, 0, NULL, &e), GAUGEPOINT_STATUS_NULL_POINTER, "report");
  for (int32_t kind = 1; kind <= 8; kind++) {
    int32_t has_working = kind == 1 || kind == 3 || kind == 4 || kind == 5;
    int32_t expected = has_working ? GAUGEPOINT_STATUS_UNKNOWN_FORMAT : GAUGEPOINT_STATUS_CONTRADICTION;
    TOLD(gaugepoint_report_new(kind, "{\"format\": \"another\"}", 21, 1, &report, &e), expected, has_working ? "/format" : "with_working");
    TOLD(gaugepoint_report_new(kind, "{\"format\": \"another\"}", 21, 0, &report, &e), GAUGEPOINT_STATUS_UNKNOWN_FORMAT, "/format");
  }
  CHECK(report == (GaugepointReport *)&untouched);
  gaugepoint_report_free(NULL);
}

static void asking(void) {
  GaugepointReport *report = made(GAUGEPOINT_DOCUMENT_JOB, 0);
  char untouched, *text = &untouched;
  size_t text_length = 77;
  row = "asking";
  for (int32_t format = -1; format < 6; format += format == 0 ? 4 : 1) {
    TOLD(gaugepoint_report_text(report, format, &text, &text_length, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "format");
  }
  TOLD(gaugepoint_report_text(NULL, 1, &text, &text_length, &e), GAUGEPOINT_STATUS_NULL_POINTER, "report");
  TOLD(gaugepoint_report_text(report, 1, NULL, &text_length, &e), GAUGEPOINT_STATUS_NULL_POINTER, "text");
  TOLD(gaugepoint_report_text(report, 1, &text, NULL, &e), GAUGEPOINT_STATUS_NULL_POINTER, "text_length");
  TOLD(gaugepoint_report_line(NULL, 1, 0, 0, &text, &text_length, &e), GAUGEPOINT_STATUS_NULL_POINTER, "report");
  TOLD(gaugepoint_report_line(report, 1, 0, 0, NULL, &text_length, &e), GAUGEPOINT_STATUS_NULL_POINTER, "text");
  TOLD(gaugepoint_report_line(report, 1, 0, 0, &text, NULL, &e), GAUGEPOINT_STATUS_NULL_POINTER, "text_length");
  TOLD(gaugepoint_report_line(report, 0, 0, 0, &text, &text_length, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "lines");
  TOLD(gaugepoint_report_line(report, 7, 0, 0, &text, &text_length, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "lines");
  for (int32_t lines = 1; lines < 7; lines++) {
    TOLD(gaugepoint_report_line(report, lines, SIZE_MAX, 0, &text, &text_length, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "cylinder");
    TOLD(gaugepoint_report_line(report, lines, 0, SIZE_MAX, &text, &text_length, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "index");
  }
  CHECK(text == &untouched && text_length == 77);
  REFUSED(GaugepointJobVerdict, gaugepoint_report_job(NULL, &out, &e), GAUGEPOINT_STATUS_NULL_POINTER, "report");
  REFUSED(GaugepointCylinderVerdict, gaugepoint_report_cylinder(NULL, 0, &out, &e), GAUGEPOINT_STATUS_NULL_POINTER, "report");
  REFUSED(GaugepointCylinderVerdict, gaugepoint_report_cylinder(report, 1000, &out, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "cylinder");
  REFUSED(GaugepointJobDecision, gaugepoint_report_decision(NULL, 0, 0, &out, &e), GAUGEPOINT_STATUS_NULL_POINTER, "report");
  REFUSED(GaugepointJobDecision, gaugepoint_report_decision(report, 1000, 0, &out, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "cylinder");
  REFUSED(GaugepointJobDecision, gaugepoint_report_decision(report, 0, 1000, &out, &e), GAUGEPOINT_STATUS_OUT_OF_RANGE, "decision");
  SIZED(GaugepointJobVerdict, gaugepoint_report_job(report, &out, &e));
  SIZED(GaugepointCylinderVerdict, gaugepoint_report_cylinder(report, 0, &out, &e));
  SIZED(GaugepointJobDecision, gaugepoint_report_decision(report, 0, 0, &out, &e));
  gaugepoint_report_free(report);
}

/* The report on a sheet is no job and is written as JSON only. */
static void another(void) {
  const char *sheet = "{\"format\": \"gaugepoint-sheet\", \"version\": 1, \"sheet\": {\"id\": \"invented\"}, \"entries\": []}";
  GaugepointReport *report = NULL;
  char *text = NULL;
  size_t text_length = 0;
  row = "another";
  CHECK(gaugepoint_report_new(GAUGEPOINT_DOCUMENT_SHEET, sheet, strlen(sheet), 0, &report, NULL) == GAUGEPOINT_STATUS_OK);
  TOLD(gaugepoint_report_text(report, GAUGEPOINT_FORMAT_TEXT, &text, &text_length, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, "format");
  REFUSED(GaugepointJobVerdict, gaugepoint_report_job(report, &out, &e), GAUGEPOINT_STATUS_UNKNOWN_FORMAT, "report");
  REFUSED(GaugepointCylinderVerdict, gaugepoint_report_cylinder(report, 0, &out, &e), GAUGEPOINT_STATUS_UNKNOWN_FORMAT, "report");
  REFUSED(GaugepointJobDecision, gaugepoint_report_decision(report, 0, 0, &out, &e), GAUGEPOINT_STATUS_UNKNOWN_FORMAT, "report");
  TOLD(gaugepoint_report_line(report, 1, 0, 0, &text, &text_length, &e), GAUGEPOINT_STATUS_UNKNOWN_FORMAT, "report");
  CHECK(text == NULL && text_length == 0);
  gaugepoint_report_free(report);
}

int main(int count, char **words) {
  if (count < 2) {
    return 2;
  }
  document = file_text("", words[1], &length);
  int result;
  if (count == 5) {
    result = written(atoi(words[2]), atoi(words[3]), atoi(words[4]));
  } else if (count == 3) {
    result = verdicts();
  } else {
    making();
    asking();
    another();
    result = finish();
  }
  free(document);
  return result;
}
