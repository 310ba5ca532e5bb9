/* sheets FOLDER: every row of sheets/refused.csv gives its status with its data, and nothing else is written. */
#include "check.h"

enum { ID, KIND, PATH, REFUSED, MEANT, DOCUMENT, COLUMNS };

static void check_row(char *const *cells) {
  char place = 'x', *report = &place;
  size_t length = strlen(cells[DOCUMENT]), report_length = 12345;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  int32_t status = gaugepoint_sheet_check(cells[DOCUMENT], length, &report, &report_length, &e);
  CHECK(same(gaugepoint_status_name(status), cells[KIND]));
  CHECK(e.status == status && same(e.field, cells[PATH]));
  CHECK(same(cells[REFUSED], "*") || same(e.refused, cells[REFUSED]));
  CHECK(cells[MEANT][0] == '\0' ? e.did_you_mean[0] == '\0' : strstr(e.did_you_mean, cells[MEANT]) != NULL);
  CHECK(e.reason[0] != '\0' && strstr(e.message, e.reason) != NULL);
  CHECK(report == &place && place == 'x' && report_length == 12345);
  CHECK(gaugepoint_sheet_check(cells[DOCUMENT], length, &report, &report_length, NULL) == status);
}

static void misuse(void) {
  char *report = NULL;
  size_t length = 0;
  GaugepointError e = GAUGEPOINT_ERROR_INIT;
  row = "misuse";
  CHECK(gaugepoint_sheet_check(NULL, 2, &report, &length, &e) == GAUGEPOINT_STATUS_NULL_POINTER && same(e.field, "sheet"));
  CHECK(gaugepoint_sheet_check("{}", 2, NULL, &length, &e) == GAUGEPOINT_STATUS_NULL_POINTER && same(e.field, "report"));
  CHECK(gaugepoint_sheet_check("{}", 2, &report, NULL, &e) == GAUGEPOINT_STATUS_NULL_POINTER);
  CHECK(same(e.field, "report_length"));
  CHECK(gaugepoint_sheet_check("{}", SIZE_MAX, &report, &length, &e) == GAUGEPOINT_STATUS_TOO_LARGE);
  CHECK(gaugepoint_sheet_check("\xff{}", 3, &report, &length, &e) == GAUGEPOINT_STATUS_NOT_UTF8);
  CHECK(report == NULL && length == 0);
}

int main(int count, char **words) {
  size_t length;
  char *cells[COLUMNS], *line;
  int rows = 0;
  if (count != 2) {
    return 2;
  }
  misuse();
  char *text = file_text(words[1], "sheets/refused.csv", &length), *rest = text;
  next_line(&rest); /* the names of the columns */
  while ((line = next_line(&rest)) != NULL) {
    int found = columns(line, cells, COLUMNS);
    row = cells[ID];
    CHECK(found == COLUMNS);
    if (found == COLUMNS) {
      check_row(cells);
      rows++;
    }
  }
  free(text);
  printf("rows %d\n", rows);
  return finish();
}
