/* refusals FOLDER: every row of refused.csv gives its status with its data, and nothing else is written. */
#include "check.h"

enum { ID, FILE_NAME, PREFIX, UNIT, COUNT, SUFFIX, KIND, PATH, REFUSED, VALUE, LOWER, UPPER, LIMITS_UNIT, MEANT, COLUMNS };

static int digit(char c) { return c <= '9' ? c - '0' : (c | 32) - 'a' + 10; }

/* Turns each % and its two hexadecimal digits into that byte. */
static void decode(char *cell) {
  char *to = cell;
  for (; *cell != '\0'; cell++, to++) {
    if (*cell == '%') {
      *to = (char)(digit(cell[1]) * 16 + digit(cell[2]));
      cell += 2;
    } else {
      *to = *cell;
    }
  }
  *to = '\0';
}

static char *repeated(char *const *cells, size_t *length) {
  size_t prefix = strlen(cells[PREFIX]), unit = strlen(cells[UNIT]), suffix = strlen(cells[SUFFIX]);
  size_t count = (size_t)strtoul(cells[COUNT], NULL, 10);
  char *text = need(prefix + unit * count + suffix + 1), *to = text;
  memcpy(to, cells[PREFIX], prefix);
  to += prefix;
  for (size_t k = 0; k < count; k++, to += unit) {
    memcpy(to, cells[UNIT], unit);
  }
  memcpy(to, cells[SUFFIX], suffix + 1);
  *length = prefix + unit * count + suffix;
  return text;
}

/* Within 1e-9 of its size, or absent. */
static int number_is(int32_t has, double number, const char *expected) {
  double wanted = strtod(expected, NULL);
  if (expected[0] == '\0') {
    return has == 0 && isnan(number);
  }
  return has == 1 && fabs(number - wanted) <= 1e-9 * fabs(wanted);
}

/* A text of the error, or as much of it as has room. */
static int text_is(const char *text, size_t room, const char *expected) {
  size_t length = strlen(text);
  if (length + 4 < room) {
    return same(text, expected);
  }
  return strncmp(text, expected, length) == 0;
}

static void check_error(const GaugepointError *e, char *const *cells) {
  CHECK(text_is(e->field, sizeof e->field, cells[PATH]));
  CHECK(text_is(e->refused, sizeof e->refused, cells[REFUSED]));
  CHECK(number_is(e->has_value, e->value, cells[VALUE]));
  CHECK(number_is(e->has_lower, e->lower, cells[LOWER]));
  CHECK(number_is(e->has_upper, e->upper, cells[UPPER]));
  CHECK(same(e->unit, cells[LIMITS_UNIT]));
  CHECK(cells[MEANT][0] == '\0' ? e->did_you_mean[0] == '\0' : strstr(e->did_you_mean, cells[MEANT]) != NULL);
  CHECK(e->reason[0] != '\0' && strstr(e->message, e->reason) != NULL);
}

static void check_row(const char *folder, char *const *cells) {
  char place = 'x', *report = &place;
  size_t length, report_length = 12345;
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  char *job = cells[FILE_NAME][0] ? file_text(folder, cells[FILE_NAME], &length) : repeated(cells, &length);
  for (int32_t working = 0; working < 2; working++) {
    int32_t status = gaugepoint_job_assess(job, length, working, &report, &report_length, &error);
    CHECK(same(gaugepoint_status_name(status), cells[KIND]));
    CHECK(error.status == status && error.struct_size == sizeof error);
    CHECK(report == &place && place == 'x' && report_length == 12345);
    check_error(&error, cells);
    CHECK(gaugepoint_job_assess(job, length, working, &report, &report_length, NULL) == status);
  }
  free(job);
}

static void check_base(const char *folder) {
  char *report = NULL;
  size_t length, report_length = 0;
  char *job = file_text(folder, "base.json", &length);
  row = "base.json";
  CHECK(gaugepoint_job_assess(job, length, 0, &report, &report_length, NULL) == GAUGEPOINT_STATUS_OK);
  CHECK(report != NULL && strlen(report) == report_length);
  gaugepoint_text_free(report);
  free(job);
}

int main(int count, char **words) {
  size_t length;
  char folder[1024], *cells[COLUMNS], *line;
  int rows = 0;
  if (count != 2) {
    return 2;
  }
  snprintf(folder, sizeof folder, "%s/refused", words[1]);
  check_base(folder);
  char *text = file_text(words[1], "refused.csv", &length), *rest = text;
  next_line(&rest); /* the names of the columns */
  while ((line = next_line(&rest)) != NULL) {
    int found = columns(line, cells, COLUMNS);
    row = cells[ID];
    CHECK(found == COLUMNS);
    if (found == COLUMNS) {
      for (int k = 0; k < COLUMNS; k++) {
        decode(cells[k]);
      }
      check_row(folder, cells);
      rows++;
    }
  }
  free(text);
  printf("rows %d\n", rows);
  return finish();
}
