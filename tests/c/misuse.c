/* misuse JOB: what a mistaken caller passes gives a status; nothing beyond what is the caller's is read or written. */
#define _GNU_SOURCE
#include "check.h"

#include <sys/mman.h>
#include <unistd.h>

static char *job;
static size_t job_length;

static void versions(void) {
  char version[64];
  row = "versions";
  snprintf(version, sizeof version, "%d.%d.%d", GAUGEPOINT_VERSION_MAJOR, GAUGEPOINT_VERSION_MINOR,
           GAUGEPOINT_VERSION_PATCH);
  CHECK(same(gaugepoint_version(), version));
  CHECK(gaugepoint_abi() == GAUGEPOINT_ABI);
}

/* One line for each status; the driver compares them with the list of the core. */
static void statuses(void) {
  int32_t index = 0, before = -1, status;
  row = "statuses";
  while ((status = gaugepoint_status_at(index)) >= 0) {
    CHECK(status > before);
    printf("status %d %s %s\n", (int)status, gaugepoint_status_name(status), gaugepoint_status_text(status));
    before = status;
    index++;
  }
  CHECK(status == -1 && gaugepoint_status_at(index + 1) == -1);
  CHECK(gaugepoint_status_at(-1) == -1 && gaugepoint_status_at(INT32_MIN) == -1);
  CHECK(gaugepoint_status_at(INT32_MAX) == -1);
  int32_t odd[] = {-1, 1, 100, 999, INT32_MIN, INT32_MAX};
  for (size_t k = 0; k < sizeof odd / sizeof odd[0]; k++) {
    CHECK(same(gaugepoint_status_name(odd[k]), "unknown"));
    CHECK(strstr(gaugepoint_status_text(odd[k]), "failure") != NULL);
  }
}

static void refused(int32_t status, int32_t expected, const GaugepointError *error, const char *field) {
  CHECK(status == expected && error->status == expected);
  CHECK(same(error->field, field));
  CHECK(strstr(error->message, error->reason) != NULL && error->reason[0] != '\0');
  CHECK(error->has_value == 0 && isnan(error->value) && error->has_lower == 0 && error->has_upper == 0);
}

static void null_pointers(void) {
  const int32_t null = GAUGEPOINT_STATUS_NULL_POINTER;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  char place = 'x', *report = &place;
  size_t length = 7;
  int32_t result = 0;
  double p = 0.5;
  row = "null_pointers";
  refused(gaugepoint_job_assess(NULL, 0, 0, &report, &length, &e), null, &e, "job");
  refused(gaugepoint_job_assess(NULL, SIZE_MAX, 0, &report, &length, &e), null, &e, "job");
  refused(gaugepoint_job_assess(job, job_length, 0, NULL, &length, &e), null, &e, "report");
  refused(gaugepoint_job_assess(job, job_length, 0, &report, NULL, &e), null, &e, "report_length");
  CHECK(gaugepoint_job_assess(NULL, 1, 9, NULL, NULL, NULL) == null);
  refused(gaugepoint_measure(NULL, 0, 0, &report, &length, &e), null, &e, "document");
  refused(gaugepoint_measure(job, job_length, 0, NULL, &length, &e), null, &e, "report");
  refused(gaugepoint_measure(job, job_length, 0, &report, NULL, &e), null, &e, "report_length");
  refused(gaugepoint_measure(job, job_length, 2, &report, &length, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, &e, "with_working");
  refused(gaugepoint_measure(job, job_length, 0, &report, &length, &e), GAUGEPOINT_STATUS_UNKNOWN_FORMAT, &e, "/format");
  refused(gaugepoint_fit(NULL, 0, 0, &report, &length, &e), null, &e, "document");
  refused(gaugepoint_fit(job, job_length, 0, NULL, &length, &e), null, &e, "report");
  refused(gaugepoint_fit(job, job_length, 0, &report, NULL, &e), null, &e, "report_length");
  refused(gaugepoint_fit(job, job_length, 2, &report, &length, &e), GAUGEPOINT_STATUS_UNKNOWN_CHOICE, &e, "with_working");
  refused(gaugepoint_fit(job, job_length, 0, &report, &length, &e), GAUGEPOINT_STATUS_UNKNOWN_FORMAT, &e, "/format");
  refused(gaugepoint_presets(NULL, &length, &e), null, &e, "table");
  refused(gaugepoint_presets(&report, NULL, &e), null, &e, "table_length");
  CHECK(report == &place && length == 7);
  refused(gaugepoint_size_at_20_mm(86, 0, 20, 1e-5, 20, 1e-5, NULL, &e), null, &e, "out");
  refused(gaugepoint_bench_clearance_mm(86.1, 86, NULL, &e), null, &e, "out");
  refused(gaugepoint_running_clearance_mm(86.1, 20, 1e-5, 86, 20, 1e-5, NULL, &e), null, &e, "out");
  CHECK(gaugepoint_bench_clearance_mm(86.1, 86, NULL, NULL) == null);
  refused(gaugepoint_decide_mm(86, 0.001, 0, 0, 1, 86.1, 2, 0.95, NULL, &p, &e), null, &e, "result");
  CHECK(isnan(p));
  refused(gaugepoint_decide_mm(86, 0.001, 0, 0, 1, 86.1, 2, 0.95, &result, NULL, &e), null, &e, "probability");
  CHECK(result == GAUGEPOINT_CONFORMITY_NOT_JUDGED);
  gaugepoint_text_free(NULL);
}

static void struct_sizes(void) {
  const size_t wrong[] = {0, 1, 8, sizeof(GaugepointError) - 1, sizeof(GaugepointError) / 2, 65537, SIZE_MAX / 2, SIZE_MAX};
  char place = 'x', *report = &place;
  size_t length = 7;
  row = "struct_sizes";
  for (size_t k = 0; k < sizeof wrong / sizeof wrong[0]; k++) {
    GaugepointError e, before;
    double out = 1.0;
    memset(&e, 0x5A, sizeof e);
    e.struct_size = wrong[k];
    before = e;
    CHECK(gaugepoint_bench_clearance_mm(86.1, 86, &out, &e) == GAUGEPOINT_STATUS_STRUCT_SIZE);
    CHECK(isnan(out));
    CHECK(gaugepoint_job_assess(job, job_length, 0, &report, &length, &e) == GAUGEPOINT_STATUS_STRUCT_SIZE);
    CHECK(report == &place && length == 7);
    CHECK(memcmp(&e, &before, sizeof e) == 0);
  }
}

/* A program built with a later header has a longer structure: what this library does not know stays as it was. */
static void longer_struct(void) {
  struct {
    GaugepointError known;
    unsigned char later[40], beyond[8];
  } e;
  double out;
  row = "longer_struct";
  memset(&e, 0x5A, sizeof e);
  e.known.struct_size = sizeof e.known + sizeof e.later;
  CHECK(gaugepoint_bench_clearance_mm(3.4, 86, &out, &e.known) == GAUGEPOINT_STATUS_OUT_OF_RANGE);
  CHECK(e.known.status == GAUGEPOINT_STATUS_OUT_OF_RANGE && same(e.known.field, "bore_mm"));
  CHECK(e.known.struct_size == sizeof e.known + sizeof e.later);
  for (size_t k = 0; k < sizeof e.later; k++) {
    CHECK(e.later[k] == 0x5A);
  }
  for (size_t k = 0; k < sizeof e.beyond; k++) {
    CHECK(e.beyond[k] == 0x5A);
  }
}

static void choices(void) {
  const int32_t odd[] = {-1, 0, 6, 7, 256 + 2, INT32_MIN, INT32_MAX};
  const int32_t unknown = GAUGEPOINT_STATUS_UNKNOWN_CHOICE;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  char place = 'x', *report = &place, text[16];
  size_t length = 7;
  row = "choices";
  for (size_t k = 0; k < sizeof odd / sizeof odd[0]; k++) {
    int32_t n = odd[k], result = 0;
    double p = 0.5;
    snprintf(text, sizeof text, "%d", (int)n);
    refused(gaugepoint_decide_mm(86, 0.001, 0, 0, 1, 86.1, n, 0.95, &result, &p, &e), unknown, &e, "rule");
    CHECK(same(e.refused, text) && isnan(p) && result == GAUGEPOINT_CONFORMITY_NOT_JUDGED);
    if (n == 0) {
      continue; /* a flag may be 0 */
    }
    refused(gaugepoint_decide_mm(86, 0.001, n, 85, 1, 86.1, 2, 0.95, &result, &p, &e), unknown, &e, "has_lower");
    refused(gaugepoint_decide_mm(86, 0.001, 1, 85, n, 86.1, 2, 0.95, &result, &p, &e), unknown, &e, "has_upper");
    refused(gaugepoint_job_assess(job, job_length, n, &report, &length, &e), unknown, &e, "with_working");
  }
  CHECK(report == &place && length == 7);
}

static void decisions(void) {
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  int32_t result = 0;
  double p = 0.5;
  row = "decisions";
  /* no limit at all, a NaN for a limit that is said to be there, limits the wrong way round */
  CHECK(gaugepoint_decide_mm(86, 0.001, 0, 1, 0, 1, 2, 0.95, &result, &p, &e) == GAUGEPOINT_STATUS_MISSING_FIELD);
  CHECK(isnan(p) && result == GAUGEPOINT_CONFORMITY_NOT_JUDGED);
  CHECK(gaugepoint_decide_mm(86, 0.001, 1, NAN, 1, 87, 2, 0.95, &result, &p, &e) == GAUGEPOINT_STATUS_NOT_FINITE);
  CHECK(same(e.field, "lower_mm"));
  CHECK(gaugepoint_decide_mm(86, 0.001, 1, 87, 1, 86, 2, 0.95, &result, &p, &e) == GAUGEPOINT_STATUS_OUT_OF_ORDER);
  CHECK(gaugepoint_decide_mm(86, -0.001, 0, 0, 1, 87, 2, 0.95, &result, &p, &e) == GAUGEPOINT_STATUS_OUT_OF_RANGE);
  CHECK(same(e.field, "standard_uncertainty_mm"));
  CHECK(gaugepoint_decide_mm(86, 0.001, 0, 0, 1, 87, 3, 95, &result, &p, &e) == GAUGEPOINT_STATUS_OUT_OF_RANGE);
  CHECK(same(e.field, "at_least") && e.has_value == 1 && e.value == 95.0);
}

/* The job ends where the readable memory ends: one byte further is a fault. */
static void exact_lengths(void) {
  size_t page = (size_t)sysconf(_SC_PAGESIZE), room = (job_length / page + 1) * page;
  char *pages = mmap(NULL, room + page, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
  char *at, *report = NULL, place = 'x';
  size_t length = 0;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  row = "exact_lengths";
  CHECK(pages != MAP_FAILED && mprotect(pages + room, page, PROT_NONE) == 0);
  at = pages + room - job_length;
  memcpy(at, job, job_length);
  CHECK(gaugepoint_job_assess(at, job_length, 1, &report, &length, &e) == GAUGEPOINT_STATUS_OK);
  CHECK(strlen(report) == length);
  /* what the caller does to its text does not matter when it is freed */
  memset(report, 0, length);
  gaugepoint_text_free(report);
  report = &place;
  length = 7;
  /* of nothing, not a byte is read */
  CHECK(gaugepoint_job_assess(pages + room, 0, 0, &report, &length, &e) == GAUGEPOINT_STATUS_SYNTAX);
  CHECK(gaugepoint_job_assess("", 0, 0, &report, &length, &e) == GAUGEPOINT_STATUS_SYNTAX);
  /* a NUL is part of the text, not its end */
  CHECK(gaugepoint_job_assess("{}\0", 3, 0, &report, &length, &e) == GAUGEPOINT_STATUS_SYNTAX);
  CHECK(gaugepoint_job_assess("\xff", 1, 0, &report, &length, &e) == GAUGEPOINT_STATUS_NOT_UTF8);
  /* too large is said before anything is read */
  const size_t huge[] = {(size_t)16 * 1024 * 1024 + 1, SIZE_MAX / 2, SIZE_MAX / 2 + 1, SIZE_MAX - 1, SIZE_MAX};
  for (size_t k = 0; k < sizeof huge / sizeof huge[0]; k++) {
    CHECK(gaugepoint_job_assess(at, huge[k], 0, &report, &length, &e) == GAUGEPOINT_STATUS_TOO_LARGE);
    CHECK(e.field[0] == '\0');
  }
  CHECK(report == &place && length == 7);
  munmap(pages, room + page);
}

/* Texts of any length in the job: cut between characters, always ended. */
static void long_texts(void) {
  char text[6000], *report = NULL;
  size_t length = 0;
  row = "long_texts";
  for (size_t name = 1; name < 1500; name += 7) {
    GaugepointError e = GAUGEPOINT_ERROR_INIT;
    size_t used = (size_t)snprintf(text, sizeof text, "{\"");
    for (size_t k = 0; k < name; k++) {
      memcpy(text + used, "\xE2\x82\xAC", 3); /* three bytes each */
      used += 3;
    }
    memcpy(text + used, "\":1}", 4);
    used += 4;
    CHECK(gaugepoint_job_assess(text, used, 0, &report, &length, &e) == GAUGEPOINT_STATUS_UNKNOWN_FIELD);
    CHECK(memchr(e.field, 0, sizeof e.field) && memchr(e.message, 0, sizeof e.message));
    CHECK(memchr(e.refused, 0, sizeof e.refused) && memchr(e.reason, 0, sizeof e.reason));
    /* "/" and whole characters */
    CHECK(e.field[0] == '/' && (strlen(e.field) - 1) % 3 == 0);
    CHECK(strlen(e.field) == (name * 3 + 1 < sizeof e.field ? name * 3 + 1 : 253));
  }
  CHECK(report == NULL);
}

int main(int count, char **words) {
  if (count != 2) {
    return 2;
  }
  job = file_text("", words[1], &job_length);
  versions();
  statuses();
  null_pointers();
  struct_sizes();
  longer_struct();
  choices();
  decisions();
  exact_lengths();
  long_texts();
  free(job);
  return finish();
}
