/** Draws of a judged share are those of a beta with its mean. */
import { describe, expect, it } from "vitest";
import { betaQuantile, normalCdf } from "../../numerics/index.ts";
import { spread } from "./judgements.ts";
import { curvePoints, shareAt, shareCurve } from "./share-curve.ts";
import { startCounts } from "./start-counts.ts";

const grades = [0.005, 0.02, 0.1, 0.35, 0.65, 0.9];
const logit = (p: number) => Math.log(p / (1 - p));
/** Share of a standard normal in [-6, 6], by the middle rule. */
const cells = Array.from({ length: 1200 }, (_, index) => ({
  z: -6 + (index + 0.5) / 100,
  weight: Math.exp(-((-6 + (index + 0.5) / 100) ** 2) / 2) / 100 / Math.sqrt(2 * Math.PI),
}));

describe("a drawn share", () => {
  it("[DX127] has the stated share as its mean and the stated width on the scale of log odds", () => {
    for (const grade of grades) {
      const curve = shareCurve(grade, spread.grade);
      const draws = cells.map(({ z, weight }) => ({ weight, share: shareAt(curve, 0, z) }));
      const mean = draws.reduce((sum, { weight, share }) => sum + weight * share, 0);
      expect(Math.abs(mean / grade - 1)).toBeLessThan(1e-4);
      const centre = draws.reduce((sum, { weight, share }) => sum + weight * logit(share), 0);
      const variance = draws.reduce((sum, { weight, share }) => sum + weight * (logit(share) - centre) ** 2, 0);
      expect(Math.abs(Math.sqrt(variance) / spread.grade - 1)).toBeLessThan(1e-3);
    }
  });

  it("[DX127] lies where the beta has as much below it as the normal number, between the points too", () => {
    for (const grade of grades) {
      const { present: a, looked } = startCounts(grade, spread.grade);
      const curve = shareCurve(grade, spread.grade);
      expect(curve).toHaveLength(curvePoints);
      for (const z of [-4.8, -3.17, -1.26, -0.3, 0, 0.74, 1.91, 2.66, 4.4]) {
        const exact = betaQuantile({ p: normalCdf(z), a, b: looked - a });
        expect(Math.abs(logit(shareAt(curve, 0, z)) - logit(exact))).toBeLessThan(1e-3);
      }
    }
  });

  it("[DX127] rises, and stays a share for any number that can be drawn and any counts", () => {
    for (const [value, sd] of [
      [0.005, 0.5],
      [0.3, 2.5],
      [0.99, 4],
      [0.5, 0.01],
    ] as const) {
      const curve = shareCurve(value, sd);
      const shares = Array.from({ length: 271 }, (_, index) => shareAt(curve, 0, -6.75 + index / 20));
      expect(shares.every((share) => share >= 0 && share <= 1 && Number.isFinite(share))).toBe(true);
      expect(shares.every((share, index) => index === 0 || share >= (shares[index - 1] as number) - 1e-12)).toBe(true);
    }
  });
});
