/* The batch as plain C, without any check: rows of bore, piston and three temperatures to bench and running clearance. batch.py builds it as a
   library for its own arrays and as a program with arrays of its own, which answers as the worker does. */
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* c: the coefficients of the bore's strain and of the piston's */
void mean(size_t n, const double *restrict bore, const double *restrict piston, const double *restrict parts, const double *restrict bore_c,
          const double *restrict piston_c, const double *restrict c, double *restrict bench, double *restrict running) {
  const double a = c[0], b = c[3];
  for (size_t i = 0; i < n; i++) {
    double t = parts[i] - 20.0, u = bore_c[i] - 20.0, v = piston_c[i] - 20.0;
    double d = bore[i] / (1.0 + a * t), p = piston[i] / (1.0 + b * t);
    bench[i] = d - p;
    running[i] = d * (1.0 + a * u) - p * (1.0 + b * v);
  }
}

void cubic(size_t n, const double *restrict bore, const double *restrict piston, const double *restrict parts, const double *restrict bore_c,
           const double *restrict piston_c, const double *restrict c, double *restrict bench, double *restrict running) {
  const double a1 = c[0], a2 = c[1], a3 = c[2], b1 = c[3], b2 = c[4], b3 = c[5];
  for (size_t i = 0; i < n; i++) {
    double t = parts[i] - 20.0, u = bore_c[i] - 20.0, v = piston_c[i] - 20.0;
    double d = bore[i] / (1.0 + ((a3 * t + a2) * t + a1) * t), p = piston[i] / (1.0 + ((b3 * t + b2) * t + b1) * t);
    bench[i] = d - p;
    running[i] = d * (1.0 + ((a3 * u + a2) * u + a1) * u) - p * (1.0 + ((b3 * v + b2) * v + b1) * v);
  }
}

enum { ROWS = 1000000 };

static double *column(double from, double width, uint32_t step) {
  double *out = malloc(sizeof *out * ROWS);
  for (uint32_t k = 0; out && k < ROWS; k++) out[k] = from + width * (double)(k * step) / 4294967296.0;
  return out;
}

/* the invented rows and laws of lib.rs */
int main(void) {
  const double means[6] = {11.4e-6, 0.0, 0.0, 20.5e-6, 0.0, 0.0}, cubics[6] = {10.4e-6, 6e-9, -3e-12, 19.8e-6, 8e-9, 2e-12};
  double *x[] = {column(86.02, 0.02, 2654435769u), column(85.97, 0.02, 1013904243u), column(18.0, 10.0, 3668339990u),
                 column(90.0, 30.0, 2027808486u), column(100.0, 60.0, 387276957u), column(0.5, 0.0, 1u), column(0.5, 0.0, 1u)};
  for (int j = 0; j < 7; j++)
    if (!x[j]) return 1;
  char line[100], kernel[100];
  size_t count;
  while (fgets(line, sizeof line, stdin) && sscanf(line, "%99s %zu", kernel, &count) == 2) {
    for (size_t done = 0; done < count; done += ROWS) {
      if (strcmp(kernel, "mean") == 0) mean(ROWS, x[0], x[1], x[2], x[3], x[4], means, x[5], x[6]);
      else cubic(ROWS, x[0], x[1], x[2], x[3], x[4], cubics, x[5], x[6]);
    }
    printf("%.17g %.17g\n", x[5][ROWS - 1], x[6][ROWS - 1]);
    fflush(stdout);
  }
  return 0;
}
