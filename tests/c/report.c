/* report FILE [working|sheet|fit|fit-working|stack|stack-working|revisit|what-if]: the report of a job or another document, as the library gives it, to standard output. */
#include "check.h"

int main(int count, char **words) {
  if (count < 2) {
    return 2;
  }
  size_t length, report_length = 0;
  char *report = NULL, *job = file_text("", words[1], &length);
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  int32_t working = count > 2 && same(words[2], "working");
  int32_t status;
  if (count > 2 && same(words[2], "sheet")) {
    status = gaugepoint_sheet_check(job, length, &report, &report_length, &error);
  } else if (count > 2 && (same(words[2], "fit") || same(words[2], "fit-working"))) {
    status = gaugepoint_fit(job, length, same(words[2], "fit-working"), &report, &report_length, &error);
  } else if (count > 2 && (same(words[2], "stack") || same(words[2], "stack-working"))) {
    status = gaugepoint_stack_evaluate(job, length, same(words[2], "stack-working"), &report, &report_length, &error);
  } else if (count > 2 && same(words[2], "revisit")) {
    status = gaugepoint_revisit(job, length, &report, &report_length, &error);
  } else if (count > 2 && same(words[2], "what-if")) {
    status = gaugepoint_what_if(job, length, &report, &report_length, &error);
  } else {
    status = gaugepoint_job_assess(job, length, working, &report, &report_length, &error);
  }
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
