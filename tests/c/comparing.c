/* comparing: refused revisits and what-ifs, and what a mistaken caller passes. */
#include "check.h"

typedef int32_t (*Compare)(const char *, size_t, char **, size_t *, GaugepointError *);

static void refused(Compare compare, const char *document, const char *kind, const char *field) {
  char untouched, *report = &untouched;
  size_t length = 77;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  int32_t status = compare(document, strlen(document), &report, &length, &e);
  row = document;
  CHECK(same(gaugepoint_status_name(status), kind));
  CHECK(same(e.field, field) && e.reason[0] != '\0');
  CHECK(report == &untouched && length == 77);
}

static void misuse(Compare compare) {
  char *report = NULL;
  size_t length = 0;
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  row = "misuse";
  CHECK(compare(NULL, 3, &report, &length, &e) == null && same(e.field, "document"));
  CHECK(compare("{}", SIZE_MAX, &report, &length, &e) == GAUGEPOINT_STATUS_TOO_LARGE);
  CHECK(compare("{}", 2, NULL, &length, &e) == null && same(e.field, "report"));
  CHECK(compare("{}", 2, &report, NULL, &e) == null && same(e.field, "report_length"));
  CHECK(compare("{\xff}", 3, &report, &length, &e) == GAUGEPOINT_STATUS_NOT_UTF8);
  CHECK(compare("{}", 2, &report, &length, NULL) == GAUGEPOINT_STATUS_MISSING_FIELD);
  CHECK(report == NULL && length == 0);
}

int main(void) {
  refused(gaugepoint_revisit, "{\"format\": \"gaugepoint-what-if\"}", "unknown_format", "/format");
  refused(gaugepoint_revisit, "{\"format\": \"gaugepoint-revisit\", \"version\": 1, \"previous\": {\"shop\": 20}}", "wrong_type", "/previous/shop");
  refused(gaugepoint_revisit, "{\"format\": \"gaugepoint-revisit\", \"version\": 1, \"now\": {\"format\": \"gaugepoint-fit\"}}", "unknown_format", "/now/format");
  refused(gaugepoint_what_if, "{\"format\": \"gaugepoint-revisit\"}", "unknown_format", "/format");
  refused(gaugepoint_what_if, "{\"format\": \"gaugepoint-what-if\", \"version\": 1, \"job\": {\"version\": 2}, \"vary\": []}", "unknown_format", "/job/version");
  refused(gaugepoint_what_if, "{\"format\": \"gaugepoint-what-if\", \"version\": 1, \"job\": {}}", "missing_field", "/vary");
  misuse(gaugepoint_revisit);
  misuse(gaugepoint_what_if);
  return finish();
}
