/* Trials as plain C that is made for speed: eight lanes of xoshiro256+ (Blackman and Vigna, public domain), whose order is that of the run alone; normal
   numbers by a table of cubics, or by Box and Muller with the vectors of libmvec; triangle and trapezoid as sums of two uniform numbers; no value is
   kept but those beyond places that a pilot run has found. monte_carlo.py builds it as a library. */
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

enum { LANES = 8, BLOCK = 512, OCTAVES = 53, PIECES = 64, PILOT = 32768 };

static uint64_t state[4][LANES];
static double table[4][OCTAVES * PIECES];

static uint64_t splitmix(uint64_t *x) {
  uint64_t z = (*x += 0x9e3779b97f4a7c15u);
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
  return z ^ (z >> 31);
}

/* from 2^-53 to 1 - 2^-53 */
static void uniforms(double *restrict out) {
  uint64_t s[4][LANES];
  memcpy(s, state, sizeof s);
  for (size_t i = 0; i < BLOCK; i += LANES) {
    for (size_t k = 0; k < LANES; k++) {
      uint64_t word = ((s[0][k] + s[3][k]) >> 12) | 0x3ff0000000000000u, t = s[1][k] << 17;
      double x;
      memcpy(&x, &word, sizeof x);
      out[i + k] = x - (1.0 - 0x1p-53);
      s[2][k] ^= s[0][k];
      s[3][k] ^= s[1][k];
      s[1][k] ^= s[2][k];
      s[0][k] ^= s[3][k];
      s[2][k] ^= t;
      s[3][k] = (s[3][k] << 45) | (s[3][k] >> 19);
    }
  }
  memcpy(state, s, sizeof s);
}

/* quantiles of the numbers of `uniforms`: cubics over sixty-fourths of the octaves of the smaller tail */
static void by_table(double *restrict x) {
  for (size_t i = 0; i < BLOCK; i++) {
    double middle = x[i] - 0.5, tail = 0.5 - fabs(middle), rest;
    uint64_t bits, part;
    memcpy(&bits, &tail, sizeof bits);
    size_t k = (size_t)(bits >> 46) - ((size_t)(1023 - 54) << 6);
    part = ((bits << 6) & 0xfffffffffffffu) | 0x3ff0000000000000u;
    memcpy(&rest, &part, sizeof rest);
    rest -= 1.0;
    x[i] = copysign(((table[3][k] * rest + table[2][k]) * rest + table[1][k]) * rest + table[0][k], middle);
  }
}

/* two columns of uniform numbers to two of normal ones; sine and cosine apart, or the compiler takes one function that has no vectors */
static void by_box_muller(double *restrict a, double *restrict b) {
  static double radius[BLOCK];
  for (size_t i = 0; i < BLOCK; i++) radius[i] = sqrt(-2.0 * log(a[i]));
  for (size_t i = 0; i < BLOCK; i++) a[i] = radius[i] * cos(6.283185307179586 * b[i]);
  for (size_t i = 0; i < BLOCK; i++) b[i] = radius[i] * sin(6.283185307179586 * b[i]);
}

static void normals(int box_muller, double (*x)[BLOCK], size_t count) {
  for (size_t k = 0; k < count; k++) uniforms(x[k]);
  if (box_muller) {
    for (size_t k = 0; k < count; k += 2) by_box_muller(x[k], x[k + 1]);
  } else {
    for (size_t k = 0; k < count; k++) by_table(x[k]);
  }
}

static void linear_block(int box_muller, double *restrict y) {
  static double x[4][BLOCK];
  normals(box_muller, x, 4);
  for (size_t i = 0; i < BLOCK; i++) y[i] = 0.004 * x[0][i] + 0.003 * x[1][i] + 0.005 * x[2][i] + 0.002 * x[3][i];
  const double widths[] = {0.008, 0.006, 0.005, 0.005, 0.006, 0.003};
  for (size_t k = 0; k < 6; k++) {
    uniforms(x[0]);
    for (size_t i = 0; i < BLOCK; i++) y[i] += widths[k] * (2.0 * x[0][i] - 1.0);
  }
}

static void clutch_block(int box_muller, double *restrict y) {
  static double x[4][BLOCK];
  normals(box_muller, x, box_muller ? 4 : 3);
  for (size_t i = 0; i < BLOCK; i++) {
    double a = 55.29 + 0.04 * x[0][i], c = 22.86 + 0.004 * x[1][i], e = 101.69 + 0.04 * x[2][i];
    y[i] = acos((a + c) / (e - c));
  }
}

static int ascending(const void *a, const void *b) {
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

/* mean, deviation, 0.135 and 99.865 percentiles, share outside */
static void run(void (*block)(int, double *restrict), int box_muller, uint64_t seed, size_t trials, double lower, double upper, double out[5]) {
  static double pilot[PILOT], y[BLOCK];
  for (size_t k = 0; k < 4 * LANES; k++) state[k / LANES][k % LANES] = splitmix(&seed);
  for (size_t i = 0; i < PILOT; i += BLOCK) block(box_muller, pilot + i);
  qsort(pilot, PILOT, sizeof *pilot, ascending);
  double shift = pilot[PILOT / 2], low = pilot[PILOT / 250], high = pilot[PILOT - 1 - PILOT / 250];
  size_t room = trials / 50 + BLOCK, lows = 0, highs = 0, outside = 0;
  double *tails = malloc(2 * room * sizeof *tails), sum = 0.0, squares = 0.0;
  for (size_t i = 0; i < trials; i += BLOCK) {
    size_t count = trials - i < BLOCK ? trials - i : BLOCK;
    block(box_muller, y);
    double s = 0.0, q = 0.0;
    for (size_t k = 0; k < count; k++) s += y[k] - shift, q += (y[k] - shift) * (y[k] - shift);
    sum += s;
    squares += q;
    for (size_t k = 0; k < count; k++) outside += y[k] < lower || y[k] > upper;
    for (size_t k = 0; k < count; k += 16) {
      int any = 0;
      size_t end = k + 16 < count ? k + 16 : count;
      for (size_t j = k; j < end; j++) any |= y[j] < low || y[j] > high;
      for (size_t j = k; any && j < end; j++) {
        if (y[j] < low && lows < room) tails[lows++] = y[j];
        if (y[j] > high && highs < room) tails[room + highs++] = y[j];
      }
    }
  }
  qsort(tails, lows, sizeof *tails, ascending);
  qsort(tails + room, highs, sizeof *tails, ascending);
  size_t rank = (size_t)(0.00135 * (double)trials);
  double n = (double)trials;
  out[0] = shift + sum / n;
  out[1] = sqrt((squares - sum * sum / n) / (n - 1.0));
  out[2] = rank <= lows ? tails[rank - 1] : NAN;
  out[3] = rank <= highs ? tails[room + highs - rank] : NAN;
  out[4] = (double)outside / n;
  free(tails);
}

/* the quantile at the ends of the pieces is handed in, and its slope by the tail */
void make_table(const double *at, const double *slope, const double *tail) {
  for (size_t k = 0; k + 1 < OCTAVES * PIECES; k++) {
    double width = tail[k + 1] - tail[k], a = at[k], b = at[k + 1], da = width * slope[k], db = width * slope[k + 1];
    table[0][k] = a;
    table[1][k] = da;
    table[2][k] = 3.0 * (b - a) - 2.0 * da - db;
    table[3][k] = 2.0 * (a - b) + da + db;
  }
}

void linear(int box_muller, uint64_t seed, size_t trials, double lower, double upper, double out[5]) {
  run(linear_block, box_muller, seed, trials, lower, upper, out);
}

void clutch(int box_muller, uint64_t seed, size_t trials, double lower, double upper, double out[5]) {
  run(clutch_block, box_muller, seed, trials, lower, upper, out);
}
