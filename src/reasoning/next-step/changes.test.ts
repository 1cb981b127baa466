/** What would put another cause first, against the ranking with the result in. */
import { describe, expect, it } from "vitest";
import { findingIds, findings } from "../../knowledge/index.ts";
import { philox } from "../../numerics/index.ts";
import { differential } from "../differential/index.ts";
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
      for (const { step, kind, result: seen, condition, posterior, instead, left } of result.value.changes) {
        const then =
          kind === "look"
            ? { ...asked, findings: { ...asked.findings, [step]: seen } }
            : { ...asked, tests: [{ test: step, result: seen as "found" | "none-found" }] };
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
});
