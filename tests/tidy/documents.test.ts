/** Runs the examples of the documents: TypeScript that shows values, and command lines that show what they print. */
import { describe, expect, it } from "vitest";
import { blocksOf, fits, isConsole, isRun, misprinted, untrue } from "./documents.ts";
import { files, read } from "./tree.ts";

const documents = files.filter((file) => /^(README\.md|docs\/.*\.md|examples\/[^/]+\/README\.md)$/.test(file));
const withExamples = documents.filter((file) => blocksOf(read(file)).some((block) => isRun(block) || isConsole(block)));

describe("examples in documents", () => {
  it("there are some", () => {
    expect(withExamples.length).toBeGreaterThan(0);
  });

  it.each(withExamples)("those of %s are true", async (file) => {
    const wrong = [];
    for (const block of blocksOf(read(file))) {
      if (isRun(block)) wrong.push(...(await untrue(block)));
      if (isConsole(block)) wrong.push(...(await misprinted(block)));
    }
    expect(wrong).toEqual([]);
  });

  it("each page of docs/methods has an example that runs", () => {
    const pages = files.filter((file) => /^docs\/methods\/.*\.md$/.test(file));
    expect(pages.length).toBeGreaterThan(0);
    expect(pages.filter((file) => !withExamples.includes(file))).toEqual([]);
  });
});

const block = (tag: string, ...lines: readonly string[]) => ({ tag, line: 1, lines });
const importing = 'import { sampling } from "src/reasoning/index.ts";';
const asked = "sampling.detectionSampleSize({ designPrevalence: 0.05, confidence: 0.95, sensitivity: 1 })";

describe("the runner of examples", () => {
  it("finds a value that is not true, with its line", async () => {
    expect(await untrue(block("ts run", importing, `${asked}  // → 59`))).toEqual([]);
    expect(await untrue(block("ts run", importing, `${asked}  // → 60`))).toMatchObject([
      { line: 3, shown: 60, got: 59 },
    ]);
  });

  it("runs statements in order and reads an expression of several lines", async () => {
    const lines = ["const twice = 2 *", "  30;", "[", "  twice,", "]  // → [60]"];
    expect(await untrue(block("ts run", ...lines))).toEqual([]);
  });

  it("refuses a block that shows nothing, an unknown name and a path that is no entrance", async () => {
    await expect(untrue(block("ts run", "const one = 1;"))).rejects.toThrow(/shows no value/);
    await expect(untrue(block("ts run", 'import { none } from "src/units/index.ts";', "1 // → 1"))).rejects.toThrow(
      /has no none/,
    );
    await expect(untrue(block("ts run", 'import { day } from "src/units/day.ts";', "1 // → 1"))).rejects.toThrow(
      /no entrance/,
    );
  });

  it("finds a command line that prints something else", async () => {
    const size = "$ skepsis sample-size --design-prevalence 0.05 --sensitivity 1 --json";
    expect(await misprinted(block("console", size, "…"))).toEqual([]);
    expect(await misprinted(block("console", size, '{"bees":60}'))).toHaveLength(1);
    expect(await misprinted(block("console", size))).toHaveLength(1);
    const unfit = "$ echo '{\"designPrevalence\":5}' | skepsis sample-size --input - --sensitivity 1";
    expect(await misprinted(block("console", unfit, "…", "[exit status 2]"))).toEqual([]);
    expect(await misprinted(block("console", unfit, "…", "[exit status 1]"))).toHaveLength(1);
  });

  it("takes … alone for any number of lines, and nothing else", () => {
    expect(fits(["a", "b", "c"], ["a", "…", "c"])).toBe(true);
    expect(fits(["a", "c"], ["a", "…", "c"])).toBe(true);
    expect(fits(["a", "b", "d"], ["a", "…", "c"])).toBe(false);
    expect(fits(["a", "b"], ["a"])).toBe(false);
  });
});
