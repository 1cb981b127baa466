/** Draws of a judged share are those of a beta with its mean. */
import { describe, expect, it } from "vitest";
import { publishedEvidence } from "../../knowledge/index.ts";
import { betaQuantile, normalCdf } from "../../numerics/index.ts";
import { spread } from "./judgements.ts";
import { curvePoints, shareAt, shareCurve } from "./share-curve.ts";
import { spreadOf, startCounts, startOf } from "./start-counts.ts";

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

describe("the width of a stated grade", () => {
  it("[DX128] is smaller where its belonging is cited, and where a change names a work that was read", () => {
    const cited = publishedEvidence.frequencies.queenless?.queen_not_found_no_eggs;
    const judged = publishedEvidence.frequencies.queenless?.onset_sudden;
    if (!cited || !judged) throw new Error("not in the evidence");
    expect([cited.source, judged.source]).toEqual(["queen-state-handbook", "judgement"]);
    expect([spreadOf(cited, "grade"), spreadOf(judged, "grade")]).toEqual([{ spread: spread.citedGrade }, {}]);
    expect(startOf(cited, "grade").looked).toBeCloseTo(startCounts(cited.value, spread.citedGrade).looked, 9);
    const change = (source: string | null, read: "seen" | "memory" | "judgement") => ({
      ...judged,
      change: {
        value: 0.3,
        outOf: null,
        entry: "e",
        author: "a",
        on: "2026-04-02",
        citation: { source, at: "table 2", read },
      },
    });
    expect(spreadOf(change("own-survey", "seen"), "grade")).toEqual({ spread: spread.citedGrade });
    expect(spreadOf(change("own-survey", "memory"), "grade")).toEqual({});
    expect(spreadOf(change(null, "judgement"), "grade")).toEqual({});
  });

  it("[DX128] keeps a cited grade in its own band in 95 of 100 draws and a judged one in 84", () => {
    // Common, 0.35, between occasional, 0.1, and usual, 0.65: the bands meet half-way on the scale of log odds.
    const [low, high] = [(logit(0.1) + logit(0.35)) / 2, (logit(0.35) + logit(0.65)) / 2];
    const inBand = (sd: number) =>
      cells.reduce((sum, { z, weight }) => {
        const at = logit(shareAt(shareCurve(0.35, sd), 0, z));
        return sum + (at > low && at < high ? weight : 0);
      }, 0);
    expect(inBand(spread.citedGrade)).toBeGreaterThan(0.93);
    expect(inBand(spread.grade)).toBeGreaterThan(0.8);
    expect(inBand(spread.grade)).toBeLessThan(0.88);
  });
});
