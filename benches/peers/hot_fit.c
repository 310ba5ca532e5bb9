/* A hot fit as plain C: the clearance cell by cell over angles and heights, its least value, and Brent's method over that. hot_fit.py builds it as a
   library for its own numbers. */
#include <math.h>
#include <stddef.h>

enum { ANGLES = 181, HEIGHTS = 101, PIECES = 3 };

/* rows of the tables, and the cubics between them */
struct fit {
  double rows[PIECES + 1], barrel[PIECES][4], ovality[PIECES][4], thrust_c[PIECES][4], pin_c[PIECES][4];
  double piston, piston_a, bore, bore_a, bore_c;
  size_t waves;
  double order[8], cosine[8], sine[8];
};

static double value(const struct fit *f, const double c[PIECES][4], double z) {
  size_t k = 0;
  while (k + 1 < PIECES && z > f->rows[k + 1]) k++;
  double x = z - f->rows[k];
  return ((c[k][3] * x + c[k][2]) * x + c[k][1]) * x + c[k][0];
}

void map(const struct fit *f, double rise, double *restrict out) {
  const double radian = 3.14159265358979323846 / 180.0;
  double c2[ANGLES], wall[ANGLES];
  for (size_t j = 0; j < ANGLES; j++) {
    double t = 360.0 * (double)j / (ANGLES - 1) * radian, r = f->bore / 2.0;
    c2[j] = cos(2.0 * t);
    for (size_t n = 0; n < f->waves; n++) r += f->cosine[n] * cos(f->order[n] * t) + f->sine[n] * sin(f->order[n] * t);
    wall[j] = r * (1.0 + f->bore_a * (f->bore_c - 20.0));
  }
  for (size_t i = 0; i < HEIGHTS; i++, out += ANGLES) {
    double z = 50.0 * (double)i / (HEIGHTS - 1);
    double barrel = value(f, f->barrel, z), ovality = value(f, f->ovality, z);
    double thrust = f->piston_a * rise * (value(f, f->thrust_c, z) - 20.0), pin = f->piston_a * rise * (value(f, f->pin_c, z) - 20.0);
    for (size_t j = 0; j < ANGLES; j++) {
      double cold = f->piston / 2.0 - barrel / 2.0 - ovality / 4.0 * (1.0 - c2[j]);
      double strain = thrust * ((1.0 + c2[j]) / 2.0) + pin * ((1.0 - c2[j]) / 2.0);
      out[j] = wall[j] - cold * (1.0 + strain);
    }
  }
}

double least(const struct fit *f, double rise, double *restrict out) {
  map(f, rise, out);
  /* as many lanes as the compiler likes: a chain of one would wait for itself */
  double low[8];
  for (size_t l = 0; l < 8; l++) low[l] = out[l];
  size_t k = 8;
  for (; k + 8 <= ANGLES * HEIGHTS; k += 8)
    for (size_t l = 0; l < 8; l++) low[l] = out[k + l] < low[l] ? out[k + l] : low[l];
  for (; k < ANGLES * HEIGHTS; k++) low[0] = out[k] < low[0] ? out[k] : low[0];
  for (size_t l = 1; l < 8; l++) low[0] = low[l] < low[0] ? low[l] : low[0];
  return low[0];
}

/* Brent's method as SciPy has it, to 1e-10 */
double onset(const struct fit *f, double upper, double *restrict out) {
  double xpre = 0.0, xcur = upper, xblk = 0.0, fblk = 0.0, spre = 0.0, scur = 0.0;
  double fpre = least(f, xpre, out), fcur = least(f, xcur, out);
  for (int n = 0; n < 100; n++) {
    if (fpre != 0.0 && fcur != 0.0 && signbit(fpre) != signbit(fcur)) {
      xblk = xpre;
      fblk = fpre;
      spre = scur = xcur - xpre;
    }
    if (fabs(fblk) < fabs(fcur)) {
      xpre = xcur, xcur = xblk, xblk = xpre;
      fpre = fcur, fcur = fblk, fblk = fpre;
    }
    double delta = (1e-10 + 8.9e-16 * fabs(xcur)) / 2.0, sbis = (xblk - xcur) / 2.0;
    if (fcur == 0.0 || fabs(sbis) < delta) return xcur;
    if (fabs(spre) > delta && fabs(fcur) < fabs(fpre)) {
      double stry;
      if (xpre == xblk) {
        stry = -fcur * (xcur - xpre) / (fcur - fpre);
      } else {
        double dpre = (fpre - fcur) / (xpre - xcur), dblk = (fblk - fcur) / (xblk - xcur);
        stry = -fcur * (fblk * dblk - fpre * dpre) / (dblk * dpre * (fblk - fpre));
      }
      if (2.0 * fabs(stry) < fmin(fabs(spre), 3.0 * fabs(sbis) - delta)) {
        spre = scur;
        scur = stry;
      } else {
        spre = scur = sbis;
      }
    } else {
      spre = scur = sbis;
    }
    xpre = xcur;
    fpre = fcur;
    xcur += fabs(scur) > delta ? scur : sbis > 0.0 ? delta : -delta;
    fcur = least(f, xcur, out);
  }
  return xcur;
}

/* so many of each; the last */
double maps(const struct fit *f, size_t count, double *restrict out) {
  for (size_t k = 0; k < count; k++) map(f, 1.0, out);
  return out[0];
}

double leasts(const struct fit *f, size_t count, double *restrict out) {
  double last = NAN;
  for (size_t k = 0; k < count; k++) last = least(f, 1.0, out);
  return last;
}

double onsets(const struct fit *f, size_t count, double upper, double *restrict out) {
  double last = NAN;
  for (size_t k = 0; k < count; k++) last = onset(f, upper, out);
  return last;
}
