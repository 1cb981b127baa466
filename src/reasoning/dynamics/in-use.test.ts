/** The variant in use against the field: what small colonies lose, and what it leaves as it was. */
import { describe, expect, it } from "vitest";
import ontario from "../../../tests/golden/season/ontario-losses.json" with { type: "json" };
import { usualSizes } from "./filter/sizes.ts";
import { inUse, specified } from "./index.ts";
import { courseOf, november } from "./runs-for-tests.ts";

/** Loss from 1 November to 1 May, clean, in the mean over colonies of so many frames. */
function lossOf(frames: readonly number[], parameters = inUse): number {
  const losses = frames.map((each) => {
    const start = { ...november.start, bees: each * usualSizes.perFrame.bees, infestedShare: 0 };
    return 1 - (courseOf({ ...november, start, until: "2026-05-01", parameters }).at(-1)?.survival ?? 0);
  });
  return losses.reduce((sum, each) => sum + each, 0) / frames.length;
}

describe("the variant in use", () => {
  const [few, many] = [ontario.rows[0], ontario.rows[1]].map((row) => {
    if (row === undefined) throw new Error("no row");
    const share = row.died / row.colonies;
    return { share, error: Math.sqrt((share * (1 - share)) / row.colonies) };
  }) as [{ share: number; error: number }, { share: number; error: number }];

  it("[SE120] clean colonies of 3 to 7 frames lose what such colonies lost in Ontario; specified ones lose far more", () => {
    const frames = [3, 4, 5, 6, 7];
    expect(Math.abs(lossOf(frames) - few.share)).toBeLessThan(few.error);
    expect(lossOf(frames, specified)).toBeGreaterThan(few.share + 4 * few.error);
  });

  it("[SE120] large clean colonies lose no more than large ones of all causes, and about the 11 in 100 of before", () => {
    const frames = [8, 9, 10, 11, 12, 13, 14];
    expect(lossOf(frames)).toBeLessThan(many.share + 2 * many.error);
    expect(Math.abs(lossOf([12]) - 0.11)).toBeLessThan(0.01);
  });

  it("[SE120] without formic acid it changes survival alone: bees and shares are those of the specified variant", () => {
    const ours = courseOf({ ...november, parameters: inUse });
    for (const [day, { survival, ...rest }] of courseOf(november).entries()) {
      const { survival: other, ...same } = ours[day] ?? expect.fail("no day");
      expect(same).toEqual(rest);
      expect(other).toBeGreaterThanOrEqual(survival);
    }
  });
});
