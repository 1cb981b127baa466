/** Priors of the viruses that varroa carries: whatever a programme sets can be reckoned with. */
import { describe, expect, it } from "vitest";
import { changedEvidence, publishedEvidence } from "../../knowledge/index.ts";
import { differential } from "./index.ts";
import { followerChances } from "./parameters.ts";

describe("viruses beside varroa disease", () => {
  it("[DX8] any prior of a virus can be reckoned with, and stays what it is", () => {
    for (const prior of [1e-9, 0.02, 0.1, 0.3, 0.5, 0.9, 1 - 1e-6]) {
      for (const lead of [0.01, 0.356, 0.99]) {
        const { beside, without } = followerChances({ prior, lead, ratio: 4 });
        expect(lead * beside + (1 - lead) * without).toBeCloseTo(prior, 12);
        expect(beside).toBeLessThan(1);
        expect(without).toBeGreaterThan(0);
        expect(beside).toBeGreaterThan(without);
        // In the ratio one way or the other.
        expect(Math.min(Math.abs(beside / without - 4), Math.abs((1 - without) / (1 - beside) - 4))).toBeLessThan(1e-6);
      }
    }
    const { evidence } = changedEvidence(publishedEvidence, [
      {
        change: { what: "prior", condition: "dwv_overt", season: "autumn", rate: 0.6 },
        citation: { source: null, at: "own numbers", read: "judgement" },
        ...{ entry: "e", author: "a", on: "2026-01-01" },
      },
    ]);
    const high = differential({ season: "autumn", findings: { crawlers: "present" }, draws: 400 }, evidence);
    expect(high.ok && high.value.conditions[0]?.id).toBe("dwv_overt");
  });
});
