/* stack_document FOLDER: refused stacks, and what a mistaken caller passes. */
#include "check.h"

static void refused_row(const char *folder, const char *name, const char *kind, const char *path) {
  char file[200];
  size_t length, report_length = 77;
  char *report = (char *)&length;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  snprintf(file, sizeof file, "stacks/refused/%s.json", name);
  char *text = file_text(folder, file, &length);
  int32_t status = gaugepoint_stack_evaluate(text, length, 0, &report, &report_length, &e);
  free(text);
  CHECK(same(gaugepoint_status_name(status), kind));
  CHECK(same(e.field, path) && e.reason[0] != '\0');
  CHECK(report == (char *)&length && report_length == 77);
}

static void refused(const char *folder) {
  size_t length;
  char *text = file_text(folder, "stacks/refused.csv", &length), *rest = text, *line, *cells[4];
  int rows = 0;
  next_line(&rest);
  while ((line = next_line(&rest)) != NULL) {
    CHECK(columns(line, cells, 4) == 4);
    row = cells[0];
    refused_row(folder, cells[0], cells[1], cells[2]);
    rows++;
  }
  free(text);
  printf("refused %d\n", rows);
}

static void misuse(void) {
  char *report = NULL;
  size_t length = 0;
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  row = "misuse";
  CHECK(gaugepoint_stack_evaluate(NULL, 3, 0, &report, &length, &e) == null && same(e.field, "document"));
  CHECK(gaugepoint_stack_evaluate("{}", SIZE_MAX, 0, &report, &length, &e) == GAUGEPOINT_STATUS_TOO_LARGE);
  CHECK(gaugepoint_stack_evaluate("{}", 2, 2, &report, &length, &e) == GAUGEPOINT_STATUS_UNKNOWN_CHOICE);
  CHECK(same(e.field, "with_working"));
  CHECK(gaugepoint_stack_evaluate("{}", 2, 0, NULL, &length, &e) == null && same(e.field, "report"));
  CHECK(gaugepoint_stack_evaluate("{}", 2, 0, &report, NULL, &e) == null && same(e.field, "report_length"));
  CHECK(gaugepoint_stack_evaluate("{\xff}", 3, 0, &report, &length, &e) == GAUGEPOINT_STATUS_NOT_UTF8);
  CHECK(gaugepoint_stack_evaluate("{}", 2, 1, &report, &length, NULL) == GAUGEPOINT_STATUS_MISSING_FIELD);
  CHECK(report == NULL && length == 0);
}

int main(int count, char **words) {
  if (count != 2) {
    return 2;
  }
  refused(words[1]);
  misuse();
  return finish();
}
