/** What would put another cause first, against the ranking with the result in. */
import { describe, expect, it } from "vitest";
import { findingIds, findings } from "../../knowledge/index.ts";
import { philox } from "../../numerics/index.ts";
import { type DifferentialInput, differential, type MadeTest } from "../differential/index.ts";
import { nextSteps } from "./index.ts";

describe("what would put another cause first", () => {
  const input = {
    season: "summer",
    findings: { no_brood_in_season: "present", queen_not_found_no_eggs: "present" },
  } as const;

  it("[NX52] each change is what the whole ranking says once the result is in, on looks drawn by chance", () => {
    let drawnSoFar = 0;
    const chance = () => philox([drawnSoFar++, 0, 0, 0], [52, 0])[0] / 2 ** 32;
    const signs = findingIds.filter((id) => findings[id].kind === "sign" && findings[id].exclusiveWith === undefined);
    const drawn = Array.from({ length: 4 }, () => ({
      season: (["winter", "spring", "summer", "autumn"] as const)[Math.floor(4 * chance())] ?? "winter",
      findings: Object.fromEntries(
        Array.from({ length: 5 }, () => [
          signs[Math.floor(signs.length * chance())] ?? "crawlers",
          chance() < 0.6 ? ("present" as const) : ("absent" as const),
        ]),
      ),
    }));
    let told = 0;
    for (const asked of [input, { season: "spring", findings: { stores_ample: "absent" } } as const, ...drawn]) {
      const result = nextSteps(asked);
      if (!result.ok) continue;
      for (const { step, made, result: seen, condition, posterior, instead, left } of result.value.changes) {
        const then =
          made === null ? { ...asked, findings: { ...asked.findings, [step]: seen } } : { ...asked, tests: [made] };
        const answer = differential({ ...then, draws: 40 });
        if (!answer.ok) throw new Error("an answer was expected");
        const of = (id: string) => answer.value.conditions.find((each) => each.id === id)?.posterior ?? 0;
        expect(answer.value.conditions[0]?.id).toBe(condition);
        expect(of(condition)).toBeCloseTo(posterior, 9);
        expect(of(instead)).toBeCloseTo(left, 9);
        told += 1;
      }
    }
    expect(told).toBeGreaterThan(4);
  });

  it("[NX52] each step is told once, and never one that leaves the first place as it is", () => {
    for (const findings of [{}, { crawlers: "present" }, { ropy_thread: "present" }] as const) {
      const result = nextSteps({ season: "spring", findings });
      if (!result.ok) throw new Error("an answer was expected");
      const { changes } = result.value;
      expect(new Set(changes.map(({ step }) => step)).size).toBe(changes.length);
      for (const { condition, instead, posterior, left, chance } of changes) {
        expect(condition).not.toBe(instead);
        expect(posterior).toBeGreaterThan(left);
        expect(chance).toBeGreaterThan(0);
      }
    }
  });

  const autumn = { season: "autumn", findings: { deformed_wings: "present" } } as const;
  const nosema = { season: "spring", findings: { crawlers: "present", faecal_streaks_front: "present" } } as const;
  const paralysis = { season: "spring", findings: { crawlers: "present", k_wing: "present" } } as const;

  it("[NX53] of a count the nearest number is told that puts another cause first, and every number beyond does so too", () => {
    const told = [autumn, nosema, paralysis].flatMap((asked) => {
      const result = nextSteps(asked);
      if (!result.ok) throw new Error("an answer was expected");
      const counts = result.value.changes.filter(({ result: each }) => each === "at-least" || each === "at-most");
      for (const { made, result: each, condition, instead, chance } of counts) {
        if (made === null) throw new Error("a count was expected");
        const outwards = each === "at-least" ? 1 : -1;
        expect(leads(asked, made, instead)).toBe(condition);
        for (const beyond of [1, 3, 10].flatMap((far) => moved(made, outwards * far) ?? []))
          expect(leads(asked, beyond, instead)).toBe(condition);
        const nearer = moved(made, -outwards);
        if (nearer !== null) expect(leads(asked, nearer, instead)).toBe(null);
        expect(chance).toBeGreaterThanOrEqual(0.02);
      }
      return counts.map(({ result: each }) => each);
    });
    expect(new Set(told)).toEqual(new Set(["at-least", "at-most"]));
  });

  it("[NX53] a wash and a sugar roll ask the same agent: one of them is told", () => {
    const result = nextSteps(autumn);
    if (!result.ok) throw new Error("an answer was expected");
    const washes = result.value.changes.filter(({ made }) => made?.mites !== undefined);
    expect(washes).toHaveLength(1);
  });
});

/** The cause that comes first by five in a hundred or more once the test is in; null where the old one keeps its place. */
function leads(asked: DifferentialInput, test: MadeTest, instead: string): string | null {
  const answer = differential({ ...asked, tests: [test], draws: 40 });
  if (!answer.ok) throw new Error("an answer was expected");
  const [first] = answer.value.conditions;
  const left = answer.value.conditions.find(({ id }) => id === instead)?.posterior ?? 0;
  return first === undefined || first.posterior < 0.15 || first.posterior - left < 0.05 ? null : first.id;
}

/** The same test with so many more; null where there is no such count, and for spores, of which three results are told apart. */
function moved(test: MadeTest, by: number): MadeTest | null {
  const [mites = 0, positive = 0] = [test.mites, test.positive].map((count) =>
    count === undefined ? count : count + by,
  );
  if (test.mites !== undefined) return mites < 0 || mites > 120 ? null : { ...test, mites };
  return test.positive === undefined || positive < 0 || positive > 50 ? null : { ...test, positive };
}
