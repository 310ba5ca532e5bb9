/* The same calls through the C ABI as the worker makes in Rust, asked for in the same way: "kernel count" in, the last results out. */
#include <gaugepoint.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { FEW = 1024, ROWS = 1000000 };

static double *column(double from, double width, uint32_t step) {
  double *out = malloc(sizeof *out * ROWS);
  for (uint32_t k = 0; out && k < ROWS; k++) out[k] = from + width * (double)(k * step) / 4294967296.0;
  return out;
}

int main(void) {
  /* the invented rows and laws of lib.rs */
  double *bore = column(86.02, 0.02, 2654435769u), *piston = column(85.97, 0.02, 1013904243u), *parts_c = column(18.0, 10.0, 3668339990u),
         *bore_c = column(90.0, 30.0, 2027808486u), *piston_c = column(100.0, 60.0, 387276957u), *bench = column(0.5, 0.0, 1u),
         *running = column(0.5, 0.0, 1u);
  if (!bore || !piston || !parts_c || !bore_c || !piston_c || !bench || !running) return 1;
  const GaugepointStrainLaw iron = {11.4e-6, 0.0, 0.0, -40.0, 450.0}, aluminium = {20.5e-6, 0.0, 0.0, -40.0, 450.0};
  char line[100], kernel[100];
  size_t count;
  while (fgets(line, sizeof line, stdin) && sscanf(line, "%99s %zu", kernel, &count) == 2) {
    double out = 0.0, other = 0.0;
    int32_t refused = 0;
    GaugepointError error = GAUGEPOINT_ERROR_INIT;
    if (strcmp(kernel, "call-bench") == 0) {
      for (size_t k = 0; k < count; k++) refused |= gaugepoint_bench_clearance_mm(bore[k % FEW], piston[k % FEW], &out, &error);
    } else if (strcmp(kernel, "call-running") == 0) {
      for (size_t k = 0; k < count; k++)
        refused |= gaugepoint_running_clearance_mm(bore[k % FEW], bore_c[k % FEW], 11.4e-6, piston[k % FEW], piston_c[k % FEW], 20.5e-6, &out, &error);
    } else if (strcmp(kernel, "array-bench") == 0) {
      for (size_t done = 0; done < count; done += FEW) refused |= gaugepoint_bench_clearance_mm_array(bore, piston, FEW, bench, NULL, &error);
      out = bench[FEW - 1];
    } else {
      size_t rows_refused;
      for (size_t done = 0; done < count; done += ROWS)
        refused |= gaugepoint_clearances(&iron, &aluminium, bore, piston, parts_c, bore_c, piston_c, ROWS, bench, running, NULL, &rows_refused, &error);
      out = bench[ROWS - 1], other = running[ROWS - 1];
    }
    printf("%.17g %.17g\n", refused ? 0.0 : out, other);
    fflush(stdout);
  }
  return 0;
}
