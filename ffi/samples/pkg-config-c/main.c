/* From readings to a verdict. The engine, its limits and every reading are invented. */
#include <gaugepoint.h>
#include <stdio.h>
#include <stdlib.h>

static void need(int32_t status, const GaugepointError *error) {
  if (status != GAUGEPOINT_STATUS_OK) {
    fprintf(stderr, "%s: %s\n", gaugepoint_status_name(status), error->message);
    exit(1);
  }
}

static const char *verdict(int32_t result) {
  switch (result) {
    case GAUGEPOINT_CONFORMITY_CONFORMS: return "conforms";
    case GAUGEPOINT_CONFORMITY_DOES_NOT_CONFORM: return "does not conform";
    case GAUGEPOINT_CONFORMITY_NOT_PROVEN: return "not proven";
    default: return "not judged";
  }
}

int main(void) {
  GaugepointError error = GAUGEPOINT_ERROR_INIT;

  /* piston, read four times at 27 C with a micrometer of steel at 27 C that reads 2.3 um too much */
  const double readings[] = {95.9570, 95.9575, 95.9565, 95.9574};
  GaugepointSample sample = {.struct_size = sizeof sample};
  need(gaugepoint_sample(readings, 4, &sample, &error), &error);
  double piston;
  need(gaugepoint_size_at_20_mm(sample.mean, 0.0023, 27.0, 11.5e-6, 27.0, 19.4e-6, &piston, &error), &error);

  /* bore, known at 20 C; limits of the clearance 0.060 to 0.150 mm, standard uncertainty 4 um */
  double clearance;
  need(gaugepoint_bench_clearance_mm(96.0170, piston, &clearance, &error), &error);
  int32_t result;
  double probability;
  need(gaugepoint_decide_mm(clearance, 0.004, 1, 0.060, 1, 0.150, GAUGEPOINT_RULE_PROVEN, 0.95, &result, &probability, &error), &error);
  printf("piston %.4f mm, clearance %.4f mm: %s (probability %.4f)\n", piston, clearance, verdict(result), probability);

  /* the thermometer was read in Fahrenheit */
  int32_t status = gaugepoint_size_at_20_mm(sample.mean, 0.0023, 80.6, 11.5e-6, 27.0, 19.4e-6, &piston, &error);
  printf("%s: %s\n", gaugepoint_status_name(status), error.message);
  return status == GAUGEPOINT_STATUS_OUT_OF_RANGE ? 0 : 1;
}
