/* threads JOB: calls from eight threads at once give the bytes of a call alone. */
#include "check.h"

#include <pthread.h>

enum { THREADS = 8, ROUNDS = 4 };

static char *job, *alone;
static size_t job_length, alone_length;
static double clearance;

/* Number of differences. */
static void *work(void *unused) {
  size_t different = 0;
  (void)unused;
  for (int k = 0; k < ROUNDS; k++) {
    char *report = NULL;
    size_t length = 0;
    double out = 0.0, refused = 0.0;
    GaugepointError e = GAUGEPOINT_ERROR_INIT;
    different += gaugepoint_job_assess(job, job_length, 1, &report, &length, &e) != GAUGEPOINT_STATUS_OK;
    different += length != alone_length || memcmp(report, alone, length + 1) != 0;
    gaugepoint_text_free(report);
    different += gaugepoint_running_clearance_mm(86.035, 110, 11.4e-6, 86, 120, 20.5e-6, &out, &e) != 0;
    different += memcmp(&out, &clearance, sizeof out) != 0;
    different += gaugepoint_bench_clearance_mm(3.4, 86, &refused, &e) != GAUGEPOINT_STATUS_OUT_OF_RANGE;
    different += !same(e.field, "bore_mm") || !isnan(refused);
  }
  return (void *)different;
}

int main(int count, char **words) {
  pthread_t threads[THREADS];
  if (count != 2) {
    return 2;
  }
  job = file_text("", words[1], &job_length);
  CHECK(gaugepoint_job_assess(job, job_length, 1, &alone, &alone_length, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(gaugepoint_running_clearance_mm(86.035, 110, 11.4e-6, 86, 120, 20.5e-6, &clearance, NULL) == 0);
  for (int k = 0; k < THREADS; k++) {
    CHECK(pthread_create(&threads[k], NULL, work, NULL) == 0);
  }
  for (int k = 0; k < THREADS; k++) {
    void *different = &threads;
    CHECK(pthread_join(threads[k], &different) == 0);
    CHECK(different == NULL);
  }
  gaugepoint_text_free(alone);
  free(job);
  return finish();
}
