/* allocation SHEET: whichever allocation of the check of a sheet fails, the process ends by SIGABRT and says why, or the status is
 * GAUGEPOINT_STATUS_OUT_OF_MEMORY. allocation DOCUMENT KIND WORKING: what a report takes at most, the document left out.
 *
 * The library is linked statically with malloc and its kin wrapped by those below. */
#define _GNU_SOURCE
#include "check.h"

#include <malloc.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

static long calls, failing; /* the allocation with this number fails; none is 0 */
static size_t held, most;

static void *counted(void *memory) {
  held += malloc_usable_size(memory);
  most = held > most ? held : most;
  return memory;
}

static int fails(void) { return ++calls == failing; }

void *__real_malloc(size_t size);
void *__real_calloc(size_t count, size_t size);
void *__real_realloc(void *memory, size_t size);
void *__real_aligned_alloc(size_t alignment, size_t size);
int __real_posix_memalign(void **out, size_t alignment, size_t size);
void __real_free(void *memory);

void *__wrap_malloc(size_t size) { return fails() ? NULL : counted(__real_malloc(size)); }

void *__wrap_calloc(size_t count, size_t size) { return fails() ? NULL : counted(__real_calloc(count, size)); }

void *__wrap_aligned_alloc(size_t alignment, size_t size) { return fails() ? NULL : counted(__real_aligned_alloc(alignment, size)); }

void *__wrap_realloc(void *memory, size_t size) {
  if (fails()) {
    return NULL;
  }
  size_t before = malloc_usable_size(memory);
  void *moved = __real_realloc(memory, size);
  held -= moved == NULL ? 0 : before;
  return counted(moved);
}

int __wrap_posix_memalign(void **out, size_t alignment, size_t size) {
  int status = fails() ? 12 : __real_posix_memalign(out, alignment, size);
  if (status == 0) {
    counted(*out);
  }
  return status;
}

void __wrap_free(void *memory) {
  held -= malloc_usable_size(memory);
  __real_free(memory);
}

static char *document;
static size_t document_length;

enum { PIPE_ROOM = 4096, SECONDS = 60, SAME = 0, DIFFERENT = 7, TOLD = 8 };

/* The document's report where the allocation of a number fails; how the process ends otherwise. */
static int asked(long number, const char *expected, size_t expected_length) {
  char place = 'x', *report = &place;
  size_t length = 12345;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  calls = 0;
  failing = number;
  int32_t status = gaugepoint_sheet_check(document, document_length, &report, &length, &e);
  failing = 0;
  if (status == GAUGEPOINT_STATUS_OUT_OF_MEMORY) {
    return report == &place && place == 'x' && length == 12345 && e.status == status && e.message[0] != '\0' ? TOLD : DIFFERENT;
  }
  return status == GAUGEPOINT_STATUS_OK && length == expected_length && memcmp(report, expected, length + 1) == 0 ? SAME : DIFFERENT;
}

/* Runs the call in a process of its own; `said` gets what it writes to standard error. */
static int in_child(long number, const char *expected, size_t expected_length, char *said) {
  int ends[2], status = -1;
  size_t used = 0;
  ssize_t got;
  CHECK(pipe(ends) == 0);
  fflush(NULL);
  pid_t child = fork();
  if (child == 0) {
    const struct rlimit no_core = {0, 0};
    setrlimit(RLIMIT_CORE, &no_core);
    dup2(ends[1], STDERR_FILENO);
    close(ends[0]);
    close(ends[1]);
    alarm(SECONDS);
    _exit(asked(number, expected, expected_length));
  }
  close(ends[1]);
  while ((got = read(ends[0], said + used, PIPE_ROOM - 1 - used)) > 0) {
    used += (size_t)got;
  }
  said[used] = '\0';
  close(ends[0]);
  CHECK(child > 0 && waitpid(child, &status, 0) == child);
  return status;
}

static void failures_end(void) {
  char *report = NULL, said[PIPE_ROOM];
  size_t length = 0;
  row = "failing";
  CHECK(gaugepoint_sheet_check(document, document_length, &report, &length, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(asked(0, report, length) == SAME);
  const long all = calls;
  long aborted = 0, told = 0, other = 0;
  for (long k = 1; k <= all; k++) {
    int status = in_child(k, report, length, said);
    if (WIFSIGNALED(status) && WTERMSIG(status) == SIGABRT && strstr(said, "memory allocation of ") != NULL) {
      aborted++;
    } else if (WIFEXITED(status) && WEXITSTATUS(status) == TOLD) {
      told++;
    } else {
      other++;
      fprintf(stderr, "allocation %ld: %d %s\n", k, status, said);
    }
  }
  CHECK(other == 0 && aborted > 0 && told == 1);
  printf("allocations %ld, ended %ld, told %ld\n", all, aborted, told);
  gaugepoint_text_free(report);
}

static int measured(int32_t kind, int32_t working) {
  GaugepointReport *report = NULL;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  char *text = NULL;
  size_t length = 0;
  held = most = 0;
  int32_t status = gaugepoint_report_new(kind, document, document_length, working, &report, &e);
  if (status == GAUGEPOINT_STATUS_OK) {
    status = gaugepoint_report_text(report, GAUGEPOINT_FORMAT_JSON, &text, &length, &e);
  }
  gaugepoint_text_free(text);
  gaugepoint_report_free(report);
  printf("document %zu status %s report %zu most %zu\n", document_length, gaugepoint_status_name(status), length, most);
  return 0;
}

int main(int count, char **words) {
  if (count != 2 && count != 4) {
    return 2;
  }
  document = file_text("", words[1], &document_length);
  if (count == 4) {
    return measured(atoi(words[2]), atoi(words[3]));
  }
  failures_end();
  free(document);
  return finish();
}
