/* What the test programs share. They use the header and the library only, as any program in C would. */
#ifndef CHECK_H
#define CHECK_H

#include <gaugepoint.h>

#include <float.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int checks = 0, failures = 0;
/* what is being checked, for the message; not every program says it */
static const char *row = "";

#define CHECK(condition) \
  do { \
    checks++; \
    if (!(condition) && failures++ < 20) { \
      fprintf(stderr, "%s:%d: %s: %s\n", __FILE__, __LINE__, row, #condition); \
    } \
  } while (0)

/* The last line of every program; the driver reads the count, so that a program that checks nothing fails. */
static inline int finish(void) {
  row = "";
  printf("checks %d failures %d\n", checks, failures);
  return failures == 0 ? 0 : 1;
}

static inline int same(const char *a, const char *b) { return strcmp(a, b) == 0; }

/* A law of one mean coefficient from 20 C. */
static inline GaugepointLaw mean(double per_k) {
  GaugepointLaw out;
  memset(&out, 0, sizeof out);
  out.form = GAUGEPOINT_LAW_FORM_MEAN_COEFFICIENT;
  out.base_c = 20;
  out.mean_per_k = per_k;
  out.from_c = -50;
  out.to_c = 400;
  return out;
}

/* A record of its own size, zeroed. */
#define RECORD(type, name) \
  type name; \
  memset(&name, 0, sizeof name); \
  name.struct_size = sizeof name

/* A refusal with its status, field and reason; the call has `&e`. */
#define TOLD(call, expected, name) \
  do { \
    GaugepointError e = GAUGEPOINT_ERROR_INIT; \
    CHECK((call) == (expected)); \
    CHECK(e.status == (expected) && same(e.field, name) && e.reason[0] != '\0'); \
  } while (0)

/* And a record `out` that is as it was. */
#define KEPT(call, expected, name) \
  do { \
    memset(&out, 0x5A, sizeof out); \
    out.struct_size = sizeof out; \
    before = out; \
    TOLD(call, expected, name); \
    CHECK(memcmp(&out, &before, sizeof out) == 0); \
  } while (0)

/* The same of a record made for the call. */
#define REFUSED(type, call, expected, name) \
  do { \
    type out, before; \
    KEPT(call, expected, name); \
  } while (0)

/* A size that was not set is refused. */
#define SIZED(type, call) \
  do { \
    const size_t wrong[] = {0, 1, 8, sizeof(type) - 1, 65537, SIZE_MAX}; \
    for (int k = 0; k < 6; k++) { \
      GaugepointError e = GAUGEPOINT_ERROR_INIT; \
      type out, before; \
      memset(&out, 0x5A, sizeof out); \
      out.struct_size = wrong[k]; \
      before = out; \
      CHECK((call) == GAUGEPOINT_STATUS_STRUCT_SIZE && same(e.field, "out")); \
      CHECK(memcmp(&out, &before, sizeof out) == 0); \
    } \
    CHECK(sizeof(type) % sizeof(double) == 0); \
  } while (0)

/* Memory of a test program that is not there is no finding. */
static inline void *need(size_t size) {
  void *memory = malloc(size);
  if (memory == NULL) {
    fprintf(stderr, "no memory\n");
    exit(2);
  }
  return memory;
}

/* A file as it is, with a NUL after it. */
static inline char *file_text(const char *folder, const char *name, size_t *length) {
  char path[1024];
  snprintf(path, sizeof path, "%s%s%s", folder, folder[0] ? "/" : "", name);
  FILE *file = fopen(path, "rb");
  if (file == NULL) {
    fprintf(stderr, "%s cannot be opened\n", path);
    exit(2);
  }
  size_t room = 1 << 16, used = 0, got;
  char *text = need(room);
  while ((got = fread(text + used, 1, room - used - 1, file)) > 0) {
    used += got;
    if (room - used < 2) {
      char *larger = need(room * 2);
      memcpy(larger, text, used);
      free(text);
      text = larger;
      room *= 2;
    }
  }
  fclose(file);
  text[used] = '\0';
  *length = used;
  return text;
}

/* Cuts `line` at its commas; the last of `count` columns takes the rest. */
static inline int columns(char *line, char **cells, int count) {
  int k = 0;
  for (cells[k++] = line; k < count; k++) {
    char *comma = strchr(cells[k - 1], ',');
    if (comma == NULL) {
      break;
    }
    *comma = '\0';
    cells[k] = comma + 1;
  }
  return k;
}

/* The next line that is not a comment, or NULL; `*rest` moves on. */
static inline char *next_line(char **rest) {
  while (**rest != '\0') {
    char *line = *rest, *end = strchr(line, '\n');
    *rest = end ? end + 1 : line + strlen(line);
    if (end) {
      *end = '\0';
    }
    if (line[0] != '#' && line[0] != '\0') {
      return line;
    }
  }
  return NULL;
}

#endif
