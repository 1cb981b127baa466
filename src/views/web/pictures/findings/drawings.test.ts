/** Twenty findings are drawn, each first as itself, beside what it is taken for, and with a sentence that tells them apart. */
import { expect, it } from "vitest";
import { type FindingId, findings } from "../../../../knowledge/index.ts";
import { drawings, figures } from "./drawings.ts";

const drawn = Object.entries(drawings) as [FindingId, readonly string[]][];

it("twenty findings are drawn, each beside another, every drawing is used, and none stands twice in a strip", () => {
  expect(drawn).toHaveLength(20);
  for (const [, strip] of drawn) {
    expect(strip.length).toBeGreaterThan(1);
    expect(new Set(strip).size).toBe(strip.length);
  }
  expect([...new Set(drawn.flatMap(([, strip]) => strip))].toSorted()).toEqual(Object.keys(figures).toSorted());
});

it("each drawn finding says in words how it is told from what looks like it", () => {
  const unsaid = drawn.filter(([id]) => findings[id].tellApart === undefined).map(([id]) => id);
  expect(unsaid).toEqual([]);
});
