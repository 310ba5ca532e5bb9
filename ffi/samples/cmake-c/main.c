/* verdicts JOB: the verdict on every cylinder of a job document. */
#include <gaugepoint.h>
#include <stdio.h>
#include <stdlib.h>

static const char *word(int32_t outcome) {
  switch (outcome) {
    case GAUGEPOINT_OUTCOME_REUSE: return "reuse";
    case GAUGEPOINT_OUTCOME_INCOMPLETE: return "incomplete";
    case GAUGEPOINT_OUTCOME_NOT_PROVEN: return "not proven";
    case GAUGEPOINT_OUTCOME_FIND_THE_CAUSE_FIRST: return "find the cause first";
    case GAUGEPOINT_OUTCOME_DO_NOT_REUSE: return "do not reuse";
    default: return "unknown";
  }
}

/* The whole file, or NULL. */
static char *file_text(const char *path, size_t *length) {
  FILE *file = fopen(path, "rb");
  char *text = NULL;
  if (file != NULL && fseek(file, 0, SEEK_END) == 0) {
    long size = ftell(file);
    rewind(file);
    text = size < 0 ? NULL : malloc((size_t)size + 1);
    if (text != NULL && fread(text, 1, (size_t)size, file) == (size_t)size) {
      *length = (size_t)size;
    } else {
      free(text);
      text = NULL;
    }
  }
  if (file != NULL) {
    fclose(file);
  }
  return text;
}

/* Sentences of the report, one a line; what to take care of is shown with every result. */
static void print_lines(const GaugepointReport *report, int32_t lines, size_t cylinder) {
  char *text;
  size_t length;
  for (size_t k = 0; gaugepoint_report_line(report, lines, cylinder, k, &text, &length, NULL) == GAUGEPOINT_STATUS_OK; k++) {
    printf("  %s\n", text);
    gaugepoint_text_free(text);
  }
}

static int print_verdicts(const GaugepointReport *report) {
  GaugepointJobVerdict job = {.struct_size = sizeof job};
  if (gaugepoint_report_job(report, &job, NULL) != GAUGEPOINT_STATUS_OK) {
    return 1;
  }
  printf("the engine: %s\n", word(job.outcome));
  for (size_t k = 0; k < job.cylinder_count; k++) {
    GaugepointCylinderVerdict cylinder = {.struct_size = sizeof cylinder};
    if (gaugepoint_report_cylinder(report, k, &cylinder, NULL) != GAUGEPOINT_STATUS_OK) {
      return 1;
    }
    printf("cylinder %d: %s\n", (int)cylinder.number, word(cylinder.outcome));
    print_lines(report, GAUGEPOINT_LINES_CYLINDER_REASONS, k);
  }
  printf("take care:\n");
  print_lines(report, GAUGEPOINT_LINES_CAUTIONS, 0);
  return 0;
}

int main(int count, char **words) {
  if (count != 2) {
    fprintf(stderr, "verdicts JOB\n");
    return 2;
  }
  size_t length = 0;
  char *job = file_text(words[1], &length);
  if (job == NULL) {
    fprintf(stderr, "%s cannot be read\n", words[1]);
    return 2;
  }
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  GaugepointReport *report;
  int32_t status = gaugepoint_report_new(GAUGEPOINT_DOCUMENT_JOB, job, length, 0, &report, &error);
  free(job);
  if (status != GAUGEPOINT_STATUS_OK) {
    /* the field, what was refused, what is accepted, and what was probably meant */
    fprintf(stderr, "%s\n", error.message);
    return 1;
  }
  int failed = print_verdicts(report);
  gaugepoint_report_free(report);
  return failed;
}
