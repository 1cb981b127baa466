/** Whole cases over the whole knowledge, against a reckoning made apart from the program. */
import { describe, expect, it } from "vitest";
import file from "../../../examples/differential-cases/cases.json" with { type: "json" };
import expected from "../../../examples/differential-cases/expected.json" with { type: "json" };
import { knowledgeVersion } from "../../knowledge/index.ts";
import { type DifferentialInput, differential } from "./index.ts";

const verdicts: Readonly<Record<string, { kind: string; name?: string }>> = {
  "cold-morning-crawlers": { kind: "cannot-tell" },
  "softball-cluster": { kind: "leading", name: "varroa_pms" },
  "gap-after-a-swarm": { kind: "cannot-tell" },
  "the-day-after-spraying": { kind: "leading", name: "acute_poisoning" },
  "empty-hives-elsewhere": { kind: "cannot-tell" },
  "thread-on-a-match": { kind: "leading", name: "american_foulbrood" },
};

describe("cases of the example", () => {
  it("[DX2] the reckoning is of this knowledge", () => {
    expect(expected.knowledge).toBe(knowledgeVersion);
  });

  it.each(file.cases)("[DX2] posteriors of $id equal those reckoned apart in 40 digits, to 1e-9", ({ id, input }) => {
    const result = differential(input as DifferentialInput);
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    const { conditions, nothingWrong, neglectedMass } = result.value;
    const reckoned = expected.cases[id as keyof typeof expected.cases];
    for (const { id: condition, posterior } of conditions) {
      expect(Math.abs(posterior - reckoned.posterior[condition])).toBeLessThan(1e-9);
    }
    expect(Math.abs(nothingWrong - reckoned.nothingWrong)).toBeLessThan(1e-9);
    expect(neglectedMass).toBe(0);
  });

  it.each(file.cases)("[DX20] verdict of $id as its page says", ({ id, input }) => {
    const result = differential(input as DifferentialInput);
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    const { kind, condition, group } = result.value.verdict;
    expect(kind).toBe(verdicts[id]?.kind);
    expect(condition ?? group).toBe(verdicts[id]?.name);
  });
});
