/** The comparison of speed cannot rot: every piece of work still runs here and is known to the scripts of the others. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { works } from "../../benchmarks/versus/work.ts";

const root = path.dirname(path.dirname(import.meta.dirname));
const script = (name: string) => readFileSync(path.join(root, "benchmarks", "versus", name), "utf8");

describe("the comparison of speed", () => {
  it.each(works)("$name gives finite numbers and is in both scripts", ({ name, ours, input }) => {
    const answer = ours(input);
    expect(answer.length).toBeGreaterThan(0);
    expect(answer.every(Number.isFinite)).toBe(true);
    for (const each of ["work.R", "work.py"]) expect(script(each)).toMatch(new RegExp(`["\\s]${name}"? ?[=:]`));
  });

  it("has each name once", () => {
    expect(new Set(works.map(({ name }) => name)).size).toBe(works.length);
  });
});
