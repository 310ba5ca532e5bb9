/* signs FILE: what may be behind findings. FILE has one call a line, numbers apart by blanks: place, what, number of answers, question and answer of
   each. Prints for each its candidates (cause, confirmed, sign), then `ask` with the questions, then `cause` with its number or 0. */
#include "check.h"

enum { MOST = 64 };

static GaugepointCandidate candidates[GAUGEPOINT_MOST_CANDIDATES];
static int32_t ask[GAUGEPOINT_MOST_QUESTIONS];

static int ends(const char *text, char with) {
  size_t length = strlen(text);
  return length > 5 && text[length - 1] == with;
}

static void call(int32_t place, int32_t what, const int32_t *questions, const int32_t *answers, size_t count) {
  RECORD(GaugepointExplanation, out);
  GaugepointError error = GAUGEPOINT_ERROR_INIT;
  CHECK(gaugepoint_explain(place, what, questions, answers, count, candidates, GAUGEPOINT_MOST_CANDIDATES, ask, GAUGEPOINT_MOST_QUESTIONS, &out, &error) ==
        GAUGEPOINT_STATUS_OK);
  for (size_t k = 0; k < out.candidate_count; k++) {
    const GaugepointCandidate *c = &candidates[k];
    CHECK(c->group >= GAUGEPOINT_GROUP_NORMAL && c->group <= GAUGEPOINT_GROUP_CORROSION && c->reserved == 0);
    CHECK(ends(c->text, '.') && strlen(c->check_next) > 5);
    printf("%d/%s/%s;", (int)c->cause, c->sign, c->confirmed ? "yes" : "no");
  }
  printf(" ask");
  for (size_t k = 0; k < out.ask_count; k++) {
    CHECK(ends(gaugepoint_question_text(ask[k]), '?') || ends(gaugepoint_question_text(ask[k]), ')'));
    printf(" %d", (int)ask[k]);
  }
  CHECK(out.has_cause == (out.cause != 0));
  printf(" cause %d\n", (int)out.cause);
}

static void rows_of(const char *file) {
  FILE *in = fopen(file, "r");
  int place, what, count, rows = 0;
  CHECK(in != NULL);
  while (in != NULL && fscanf(in, "%d %d %d", &place, &what, &count) == 3) {
    int32_t questions[MOST], answers[MOST];
    CHECK(count < MOST);
    for (int k = 0; k < count && k < MOST; k++) {
      int question, answer;
      CHECK(fscanf(in, "%d %d", &question, &answer) == 2);
      questions[k] = question;
      answers[k] = answer;
    }
    call(place, what, count ? questions : NULL, count ? answers : NULL, (size_t)count);
    rows++;
  }
  CHECK(in == NULL || fclose(in) == 0);
  printf("rows %d\n", rows);
}

/* Everything that is refused leaves every output as it was. */
static void misuse(void) {
  const int32_t place = GAUGEPOINT_PLACE_SKIRT, what = GAUGEPOINT_WHAT_SCUFFING;
  const int32_t bent[] = {GAUGEPOINT_QUESTION_ROD_BENT, GAUGEPOINT_QUESTION_ROD_BENT}, both[] = {1, 0}, yes[] = {1, 1};
  const int32_t none[] = {0, 30}, odd[] = {1, 2};
  const size_t room = GAUGEPOINT_MOST_CANDIDATES, questions = GAUGEPOINT_MOST_QUESTIONS;
  memset(candidates, 0x5A, sizeof candidates);
  memset(ask, 0x5A, sizeof ask);
  row = "misuse";
  SIZED(GaugepointExplanation, gaugepoint_explain(place, what, NULL, NULL, 0, candidates, room, ask, questions, &out, &e));
#define TRY(call, expected, name) REFUSED(GaugepointExplanation, call, GAUGEPOINT_STATUS_##expected, name)
  TRY(gaugepoint_explain(0, what, NULL, NULL, 0, candidates, room, ask, questions, &out, &e), UNKNOWN_CHOICE, "place");
  TRY(gaugepoint_explain(16, what, NULL, NULL, 0, candidates, room, ask, questions, &out, &e), UNKNOWN_CHOICE, "place");
  TRY(gaugepoint_explain(place, -1, NULL, NULL, 0, candidates, room, ask, questions, &out, &e), UNKNOWN_CHOICE, "what");
  TRY(gaugepoint_explain(place, 21, NULL, NULL, 0, candidates, room, ask, questions, &out, &e), UNKNOWN_CHOICE, "what");
  TRY(gaugepoint_explain(place, what, none, yes, 1, candidates, room, ask, questions, &out, &e), UNKNOWN_CHOICE, "questions/0");
  TRY(gaugepoint_explain(place, what, &none[1], yes, 1, candidates, room, ask, questions, &out, &e), UNKNOWN_CHOICE, "questions/0");
  TRY(gaugepoint_explain(place, what, bent, odd, 2, candidates, room, ask, questions, &out, &e), UNKNOWN_CHOICE, "answers/1");
  TRY(gaugepoint_explain(place, what, bent, both, 2, candidates, room, ask, questions, &out, &e), CONTRADICTION, "answers/1");
  TRY(gaugepoint_explain(place, what, NULL, yes, 2, candidates, room, ask, questions, &out, &e), NULL_POINTER, "questions");
  TRY(gaugepoint_explain(place, what, bent, NULL, 2, candidates, room, ask, questions, &out, &e), NULL_POINTER, "answers");
  TRY(gaugepoint_explain(place, what, bent, yes, SIZE_MAX, candidates, room, ask, questions, &out, &e), OUT_OF_RANGE, "questions");
  TRY(gaugepoint_explain(place, what, NULL, NULL, 0, NULL, room, ask, questions, &out, &e), NULL_POINTER, "candidates");
  TRY(gaugepoint_explain(place, what, NULL, NULL, 0, candidates, room, NULL, questions, &out, &e), NULL_POINTER, "ask");
  TRY(gaugepoint_explain(place, what, NULL, NULL, 0, candidates, 3, ask, questions, &out, &e), CONTRADICTION, "room");
  TRY(gaugepoint_explain(place, what, NULL, NULL, 0, candidates, room, ask, 3, &out, &e), CONTRADICTION, "ask_room");
  TOLD(gaugepoint_explain(place, what, NULL, NULL, 0, candidates, room, ask, questions, NULL, &e), GAUGEPOINT_STATUS_NULL_POINTER, "out");
  CHECK(candidates[0].cause == 0x5A5A5A5A && ask[0] == 0x5A5A5A5A);
  CHECK(gaugepoint_question_text(0)[0] == '\0' && gaugepoint_question_text(30)[0] == '\0' && gaugepoint_question_text(INT32_MIN)[0] == '\0');
}

int main(int count, char **arguments) {
  if (count != 2) {
    return 2;
  }
  misuse();
  rows_of(arguments[1]);
  return finish();
}
