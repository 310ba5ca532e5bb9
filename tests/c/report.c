/* report FILE [working|sheet]: the report of a job or sheet document, as the library gives it, to standard output. */
#include "check.h"

int main(int count, char **words) {
  if (count < 2) {
    return 2;
  }
  size_t length, report_length = 0;
  char *report = NULL, *job = file_text("", words[1], &length);
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  int32_t working = count > 2 && same(words[2], "working");
  int32_t status = count > 2 && same(words[2], "sheet")
                       ? gaugepoint_sheet_check(job, length, &report, &report_length, &error)
                       : gaugepoint_job_assess(job, length, working, &report, &report_length, &error);
  free(job);
  if (status != GAUGEPOINT_STATUS_OK) {
    fprintf(stderr, "%s: %s (%s)\n", words[1], error.message, gaugepoint_status_text(status));
    return 1;
  }
  size_t written = fwrite(report, 1, report_length, stdout);
  int whole = written == report_length && report[report_length] == '\0' && strlen(report) == report_length;
  gaugepoint_text_free(report);
  return whole ? 0 : 1;
}
