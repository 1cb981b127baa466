/** Gauss rules for any weight whose orthogonal polynomials are known, and the one for a beta distribution. */
import { ensure } from "../units/index.ts";
import type { BetaShape } from "./beta.ts";
import type { QuadratureRule } from "./quadrature.ts";

/** Three-term recurrence of the orthonormal polynomials: x·p_k = off_k·p_(k−1) + middle_k·p_k + off_(k+1)·p_(k+1). */
export interface Recurrence {
  /** As many as points. */
  readonly middle: readonly number[];
  /** One fewer than points, all above 0. */
  readonly off: readonly number[];
}

/**
 * The Gauss rule of a recurrence: as many nodes as `middle` has members, rising; weights that sum to 1.
 *
 * @throws DomainError unless `middle` has a member and `off` one fewer
 * @source Golub & Welsch 1969, Mathematics of Computation 23:221–230; implicit QL of Dubrulle, Martin & Wilkinson 1968
 * @example
 * gaussRule({ middle: [0, 0], off: [1] }).nodes  // → [-1,1]
 */
export function gaussRule({ middle, off }: Recurrence): QuadratureRule {
  const n = middle.length;
  ensure(n >= 1 && off.length === n - 1, "off", off.length, "one fewer than middle");
  const d = Float64Array.from(middle);
  const e = Float64Array.from([...off, 0]);
  const first = new Float64Array(n);
  first[0] = 1;
  const at = (list: Float64Array, i: number): number => list[i] as number;
  for (let l = 0; l < n; l += 1) {
    for (let round = 0; ; round += 1) {
      let m = l;
      while (m < n - 1 && Math.abs(at(e, m)) > Number.EPSILON * (Math.abs(at(d, m)) + Math.abs(at(d, m + 1)))) m += 1;
      if (m === l) break;
      if (round === 100) throw new Error(`a Gauss rule of ${n} points did not settle`);
      rotateUp({ d, e, first, l, m });
    }
  }
  const order = [...d.keys()].sort((i, j) => at(d, i) - at(d, j));
  return { nodes: order.map((i) => at(d, i)), weights: order.map((i) => at(first, i) ** 2) };
}

/** One implicit QL step on rows l to m; `first` follows the first component of every eigenvector. */
function rotateUp(matrix: {
  readonly d: Float64Array;
  readonly e: Float64Array;
  readonly first: Float64Array;
  readonly l: number;
  readonly m: number;
}): void {
  const { d, e, first, l, m } = matrix;
  const at = (list: Float64Array, i: number): number => list[i] as number;
  const lead = (at(d, l + 1) - at(d, l)) / (2 * at(e, l));
  let g = at(d, m) - at(d, l) + at(e, l) / (lead + (lead < 0 ? -1 : 1) * Math.hypot(lead, 1));
  let [sine, cosine, carried] = [1, 1, 0];
  for (let i = m - 1; i >= l; i -= 1) {
    const f = sine * at(e, i);
    const b = cosine * at(e, i);
    const r = Math.hypot(f, g);
    e[i + 1] = r;
    if (r === 0) {
      d[i + 1] = at(d, i + 1) - carried;
      e[m] = 0;
      return;
    }
    sine = f / r;
    cosine = g / r;
    g = at(d, i + 1) - carried;
    const turn = (at(d, i) - g) * sine + 2 * cosine * b;
    carried = sine * turn;
    d[i + 1] = g + carried;
    g = cosine * turn - b;
    const above = at(first, i + 1);
    first[i + 1] = sine * at(first, i) + cosine * above;
    first[i] = cosine * at(first, i) - sine * above;
  }
  d[l] = at(d, l) - carried;
  e[l] = g;
  e[m] = 0;
}

/**
 * The Gauss rule of a beta distribution: nodes in (0, 1), weights that sum to 1. The weighted sum of f at the nodes is
 * the mean of f, exact for polynomials to degree 2·points − 1.
 *
 * @throws DomainError unless both shapes are finite and above 0 and points is a whole number from 1 to 1000
 * @source Jacobi polynomials, Abramowitz & Stegun 22.7.1; Golub & Welsch 1969
 * @example
 * betaRule({ a: 2, b: 3, points: 1 }).nodes  // → [0.4]
 */
export function betaRule({ a, b, points }: BetaShape & { readonly points: number }): QuadratureRule {
  ensure(a > 0 && a < Infinity, "a", a, "a finite number above 0");
  ensure(b > 0 && b < Infinity, "b", b, "a finite number above 0");
  ensure(Number.isInteger(points) && points >= 1 && points <= 1000, "points", points, "a whole number from 1 to 1000");
  const total = a + b;
  const middle = (k: number) => {
    const twice = 2 * k + total;
    return k === 0 ? a / total : (1 + ((a - b) * (total - 2)) / ((twice - 2) * twice)) / 2;
  };
  const off = (k: number) => {
    const twice = 2 * k + total;
    if (k === 1) return Math.sqrt((a * b) / (total + 1)) / total;
    return Math.sqrt((k * (k + a - 1) * (k + b - 1) * (k + total - 2)) / ((twice - 1) * (twice - 3))) / (twice - 2);
  };
  return gaussRule({
    middle: Array.from({ length: points }, (_, k) => middle(k)),
    off: Array.from({ length: points - 1 }, (_, k) => off(k + 1)),
  });
}
