/* planted FAULT: a mistake of a host that a tool must see. read: the library is told of one value more than the array has; freed: a handle is asked after it
 * was freed; leak: a handle is never freed; race: two threads add to one stack. */
#include <gaugepoint.h>
#include <pthread.h>
#include <stdlib.h>
#include <string.h>

static int read_beyond(void) {
  double *values = malloc(4 * sizeof *values);
  GaugepointSample sample;
  for (int k = 0; values != NULL && k < 4; k++) {
    values[k] = k;
  }
  memset(&sample, 0, sizeof sample);
  sample.struct_size = sizeof sample;
  int32_t status = gaugepoint_sample(values, 5, &sample, NULL);
  free(values);
  return (int)status;
}

static GaugepointStack *made;

static void *add(void *name) {
  const double wide[] = {0, 0.02};
  const GaugepointContributor one = {name, strlen(name), 220, -0.05, 0.05, 1, 1, GAUGEPOINT_VARIATION_NORMAL, 0, wide, 2};
  gaugepoint_stack_add(made, &one, NULL);
  return NULL;
}

static void race(void) {
  pthread_t threads[2];
  static char names[2][6] = {"plate", "gauge"};
  for (int k = 0; k < 2; k++) {
    pthread_create(&threads[k], NULL, add, names[k]);
  }
  for (int k = 0; k < 2; k++) {
    pthread_join(threads[k], NULL);
  }
}

int main(int count, char **words) {
  if (count != 2) {
    return 2;
  }
  if (strcmp(words[1], "read") == 0) {
    return read_beyond();
  }
  gaugepoint_stack_new(NULL, 0, &made, NULL);
  static char block[] = "block";
  add(block);
  if (strcmp(words[1], "leak") == 0) {
    made = NULL;
    return 0;
  }
  if (strcmp(words[1], "race") == 0) {
    race();
  }
  gaugepoint_stack_free(made);
  if (strcmp(words[1], "freed") == 0) {
    double half = 0;
    return (int)gaugepoint_stack_quantile(made, 0.5, &half, NULL);
  }
  return 0;
}
