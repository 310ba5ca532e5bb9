/* planted FAULT: a mistake of a host that a tool must see. read: the library is told of one value more than the array has; freed: a handle is asked after it
 * was freed; leak: a handle is never freed. */
#include <gaugepoint.h>
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

static GaugepointStack *stack(void) {
  const double wide[] = {0, 0.02};
  const GaugepointContributor one = {"block", 5, 220, -0.05, 0.05, 1, 1, GAUGEPOINT_VARIATION_NORMAL, 0, wide, 2};
  GaugepointStack *made = NULL;
  gaugepoint_stack_new(&one, 1, &made, NULL);
  return made;
}

int main(int count, char **words) {
  if (count != 2) {
    return 2;
  }
  if (strcmp(words[1], "read") == 0) {
    return read_beyond();
  }
  GaugepointStack *made = stack();
  if (strcmp(words[1], "freed") == 0) {
    double half = 0;
    gaugepoint_stack_free(made);
    return (int)gaugepoint_stack_quantile(made, 0.5, &half, NULL);
  }
  return made == NULL;
}
