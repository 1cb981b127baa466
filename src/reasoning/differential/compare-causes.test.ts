/** Two causes side by side, against the reckoning by hand from the grades. */
import { describe, expect, it } from "vitest";
import { conditions, gradeProbability, healthyRates } from "../../knowledge/index.ts";
import { type CauseComparison, compareCauses, type DifferentialInput } from "./index.ts";

const compared = (input: DifferentialInput): CauseComparison => {
  const result = compareCauses(input, "tracheal_mites", "chronic_paralysis");
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};
const rate = (id: "tracheal_mites" | "chronic_paralysis", finding: "k_wing" | "trembling") => {
  const grade = conditions[id].frequencies[finding]?.grade;
  const healthy = gradeProbability[healthyRates.spring[finding]];
  return Math.max(healthy, grade === undefined ? healthy : gradeProbability[grade]);
};

describe("two causes side by side", () => {
  const input = { season: "spring", findings: { k_wing: "present", trembling: "absent" } } as const;

  it("[DX100] what was seen moves the odds by the ratio of the two rates, and all of it from before to now", () => {
    const { seen, before, now } = compared(input);
    const bits = (id: string) => seen.find((each) => each.id === id)?.bits ?? 0;
    const wing = Math.log2(rate("tracheal_mites", "k_wing") / rate("chronic_paralysis", "k_wing"));
    const still = Math.log2((1 - rate("tracheal_mites", "trembling")) / (1 - rate("chronic_paralysis", "trembling")));
    expect(bits("k_wing")).toBeCloseTo(wing, 9);
    expect(bits("trembling")).toBeCloseTo(still, 9);
    expect(now - before).toBeCloseTo(wing + still, 9);
  });

  it("[DX100] the other way round everything changes its sign", () => {
    const [one, other] = [compared(input), compareCauses(input, "chronic_paralysis", "tracheal_mites")];
    if (!other.ok) throw new Error("a comparison was expected");
    expect(other.value.now).toBeCloseTo(-one.now, 12);
    expect(other.value.seen.map(({ bits }) => bits)).toEqual(one.seen.map(({ bits }) => expect.closeTo(-bits, 12)));
    const parts = (rows: CauseComparison["unseen"]) => new Map(rows.map(({ id, parts }) => [id, parts]));
    for (const [id, each] of parts(one.unseen)) expect(parts(other.value.unseen).get(id)).toBeCloseTo(each, 12);
  });

  it("[DX100] before is before all of it, however many tests there were, and the region is as it was found", () => {
    const bare = compared({ season: "winter", findings: {} });
    const tests = [
      { test: "tracheal-dissection", positive: 17, examined: 50 },
      { test: "varroa-wash", mites: 2, bees: 300 },
    ];
    expect(compared({ season: "winter", findings: {}, tests }).before).toBeCloseTo(bare.now, 9);
    const wash = [{ test: "varroa-wash", mites: 6, bees: 300 }];
    const against = (varroa: "present" | "absent") => {
      const result = compareCauses(
        { season: "autumn", region: { varroa }, findings: {}, tests: wash },
        "varroa_pms",
        "queenless",
      );
      if (!result.ok) throw new Error("a comparison was expected");
      return result.value.now;
    };
    expect(against("absent")).toBeCloseTo(against("present"), 9);
  });

  it("[DX101] what was not looked at is told both ways, and never parts them by more than a bit", () => {
    const { unseen } = compared({ season: "spring", findings: { k_wing: "present" } });
    const look = unseen.find(({ id }) => id === "trembling");
    const [mites, palsy] = [rate("tracheal_mites", "trembling"), rate("chronic_paralysis", "trembling")];
    expect(look?.isCount).toBe(false);
    expect(look?.bitsIfFound).toBeCloseTo(Math.log2(mites / palsy), 9);
    expect(look?.bitsIfNot).toBeCloseTo(Math.log2((1 - mites) / (1 - palsy)), 9);
    const half = (p: number, q: number) => (p / 2) * Math.log2((2 * p) / (p + q));
    const expected = half(mites, palsy) + half(palsy, mites) + half(1 - mites, 1 - palsy) + half(1 - palsy, 1 - mites);
    expect(look?.parts).toBeCloseTo(expected, 9);
    for (const { id, parts } of unseen) {
      expect(parts).toBeLessThanOrEqual(1);
      expect(id).not.toBe("k_wing");
    }
    const dissection = unseen.find(({ id }) => id === "tracheal-dissection");
    expect(dissection?.isCount).toBe(true);
    expect(dissection?.bitsIfFound).toBeGreaterThan(5);
    expect(dissection?.bitsIfNot).toBeLessThan(-3);
  });

  it("[DX101] a cause beside itself is no question", () => {
    expect(() => compareCauses(input, "starvation", "starvation")).toThrow("another cause");
  });
});
