/* measure FILE [working]: the report on a measurement, as the library gives it, to standard output; measure presets: the presets. */
#include "check.h"

int main(int count, char **words) {
  if (count < 2) {
    return 2;
  }
  size_t length, report_length = 0;
  char *report = NULL;
  int32_t status;
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  if (same(words[1], "presets")) {
    status = gaugepoint_presets(&report, &report_length, &error);
  } else {
    char *document = file_text("", words[1], &length);
    int32_t working = count > 2 && same(words[2], "working");
    status = gaugepoint_measure(document, length, working, &report, &report_length, &error);
    free(document);
  }
  if (status != GAUGEPOINT_STATUS_OK) {
    fprintf(stderr, "%s %s: %s\n", gaugepoint_status_name(status), error.field, error.message);
    return 1;
  }
  size_t written = fwrite(report, 1, report_length, stdout);
  int whole = written == report_length && report[report_length] == '\0' && strlen(report) == report_length;
  gaugepoint_text_free(report);
  return whole ? 0 : 1;
}
