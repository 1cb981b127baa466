/* How fast a colony's year can run: the daily model of src/reasoning/dynamics in C, for comparison only.
 * Own code, written for this comparison from the equations of docs/methods/season.md; it takes no part in any answer.
 * One colony at a time, doubles, all ages of a class side by side so that the compiler can take several at once.
 * Build: gcc -O3 -march=native -DAGES=24 colony_bench.c -o colony_bench -lm   (no -ffast-math)
 * Run:   ./colony_bench YEARS   prints bees and infested share after 730 days, then the best of five, microseconds a colony-year.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#ifndef AGES
#define AGES 24
#endif
enum { A = AGES, CLASSES = 10, PATENT = 8, BROOD = 21, PAD = 16, DISTINCT = 16 };
static double state[2][2][CLASSES][A + PAD] __attribute__((aligned(64))); /* morning or evening, caste, class, age */
static struct { double flight, laying, winter, cold, flow; } year[366];
static double survival[366][2][2][A] __attribute__((aligned(64))); /* day, caste, patent or not, age */

static void prepare(void) {
  const double flows[3][3] = {{125, 18, .8}, {185, 20, 1}, {250, 12, .5}};
  for (int d = 1; d <= 365; d++) {
    double celsius = 9 - 13 * cos(2 * M_PI * (d - 20) / 365.0);
    year[d].flight = 1 / (1 + exp(-(celsius - 8) / 2));
    year[d].laying = 1 / (1 + exp(-(d - 80) / 12.0)) / (1 + exp((d - 238) / 13.0));
    year[d].winter = d < 180 ? 0 : 1 / (1 + exp(-(d - 244) / 8.0));
    year[d].cold = 1 / (1 + exp((celsius - 5) / 2));
    year[d].flow = 0;
    for (int i = 0; i < 3; i++) year[d].flow += flows[i][2] * exp(-0.5 * pow((d - flows[i][0]) / flows[i][1], 2));
    if (year[d].flow > 1) year[d].flow = 1;
    double rest = 0.0045 + (d <= 212 ? 0.05 * year[d].flight : 0);
    for (int a = 0; a < A; a++) {
      double hive = 0.008 + (a >= 18 ? 0.085 * year[d].flight : 0);
      survival[d][0][0][a] = exp(-hive);
      survival[d][0][1][a] = exp(-hive * 1.05);
      survival[d][1][0][a] = exp(-rest);
      survival[d][1][1][a] = exp(-rest * 1.5);
    }
  }
}

/* 1 - e^-x of every distinct age: a series at x/4, then two exact doublings. */
static inline void chances(double force, const double *youth, double *infestation) {
  double few[DISTINCT];
  for (int i = 0; i < DISTINCT; i++) {
    double x = -0.25 * force * youth[i], r = 1;
    for (int k = 12; k >= 2; k--) r = 1 + x * r * (1.0 / k);
    r *= x;
    r *= 2 + r;
    r *= 2 + r;
    few[i] = -r;
  }
  for (int a = 0; a < DISTINCT; a++) infestation[a] = few[a];
  for (int a = DISTINCT; a < A; a++) infestation[a] = few[DISTINCT - 1];
}

static double run(int days, double bees0, double share0, double *share) {
  double brood[BROOD] = {0}, youth[DISTINCT], infestation[A] __attribute__((aligned(64)));
  memset(state, 0, sizeof state);
  for (int a = 0; a < DISTINCT; a++) youth[a] = fmax(0.008, exp(-a / 1.5));
  state[0][1][0][A - 1] = bees0 * (1 - share0);
  state[0][1][PATENT][A - 1] = bees0 * share0;
  double bees = bees0, infested = bees0 * share0, givers = infested, hazard = 0;
  int now = 0, d = 305, oldest = 0;
  for (int t = 0; t < days; t++) {
    if (year[d].cold > 1e-9) hazard += year[d].cold * (8e-4 + 0.03 / (1 + exp((bees - 0.7 * infested - 5500) / 1300)));
    chances(1.7 * (1 - 0.5 * year[d].flow) * (1 - 0.2 * year[d].flight) * givers / bees, youth, infestation);
    double sick = 0, patents = 0, others = 0;
    for (int c = 0; c < 2; c++) {
      const double *live = survival[d][c][0], *livePatent = survival[d][c][1];
      const double(*x)[A + PAD] = (const double(*)[A + PAD])state[now][c];
      double(*z)[A + PAD] = state[now ^ 1][c];
      double s = 0, p = 0, o = 0;
#pragma GCC ivdep
      for (int a = 0; a < A; a++) {
        double v = live[a], half = v * 0.5, clean = x[0][a] * v, caught = clean * infestation[a];
        double z0 = clean - caught, z1 = x[1][a] * half + caught, z2 = (x[2][a] + x[1][a]) * half;
        double z3 = (x[3][a] + x[2][a]) * half, z4 = (x[4][a] + x[3][a]) * half, z5 = (x[5][a] + x[4][a]) * half;
        double z6 = (x[6][a] + x[5][a]) * half, z7 = (x[7][a] + x[6][a]) * half;
        double z8 = x[8][a] * livePatent[a] + x[7][a] * half, z9 = x[9][a] * v;
        z[0][a + 1] = z0, z[1][a + 1] = z1, z[2][a + 1] = z2, z[3][a + 1] = z3, z[4][a + 1] = z4;
        z[5][a + 1] = z5, z[6][a + 1] = z6, z[7][a + 1] = z7, z[8][a + 1] = z8, z[9][a + 1] = z9;
        s += z1 + z2 + z3 + z4 + z5 + z6 + z7 + z8, p += z8, o += z0 + z9;
      }
      for (int j = 0; j < CLASSES; j++) z[j][A - 1] += z[j][A], z[j][0] = 0;
      sick += s, patents += p, others += o;
    }
    double emerging = brood[oldest];
    state[now ^ 1][0][0][0] = emerging * (1 - year[d].winter);
    state[now ^ 1][1][0][0] = emerging * year[d].winter;
    brood[oldest] = 2000 * year[d].laying * bees / (bees + 6000);
    int third = oldest + BROOD - 3, ninth = oldest + BROOD - 9;
    brood[third >= BROOD ? third - BROOD : third] *= 0.942;
    brood[ninth >= BROOD ? ninth - BROOD : ninth] *= 0.9034;
    if (++oldest == BROOD) oldest = 0;
    infested = sick, givers = patents, bees = sick + others + emerging;
    now ^= 1;
    d = d % 365 + 1;
  }
  *share = infested / bees;
  return bees + 1e-9 * hazard;
}

static double seconds(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return t.tv_sec + 1e-9 * t.tv_nsec;
}

int main(int argc, char **argv) {
  int years = argc > 1 ? atoi(argv[1]) : 1000;
  double share, best = 1e9, sum = 0;
  prepare();
  double bees = run(730, 22000, 0.16, &share);
  for (int round = 0; round < 5; round++) {
    double began = seconds();
    for (int i = 0; i < years; i++) sum += run(365, 22000 + i % 97, 0.16, &share);
    best = fmin(best, seconds() - began);
  }
  bees = run(730, 22000, 0.16, &share);
  printf("%.17g %.17g %.17g %.17g\n", bees, share, best / years * 1e6, sum);
  return 0;
}
