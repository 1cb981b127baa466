/** SECURITY.md names only rules and tests that there are, each requirement once, and leaves none of the levels out. */
import { describe, expect, it } from "vitest";
import { files, read } from "./tree.ts";

const text = read("SECURITY.md");
const rows = text
  .slice(text.indexOf("## OWASP ASVS"))
  .split("\n")
  .filter((line) => /^\| \d/.test(line))
  .map((line) => line.split("|").map((cell) => cell.trim()));

/** "1.3.8 to 1.3.11" and "6.2.1, 6.2.5" as numbers one by one. */
const numbers = rows.flatMap(([, cell = ""]) =>
  cell.split(", ").flatMap((part) => {
    const [first = "", last] = part.split(" to ");
    if (last === undefined) return [first];
    const [section, from] = [first.slice(0, first.lastIndexOf(".")), Number(first.slice(first.lastIndexOf(".") + 1))];
    const to = Number(last.slice(last.lastIndexOf(".") + 1));
    return Array.from({ length: to - from + 1 }, (_, index) => `${section}.${from + index}`);
  }),
);

/** Requirements of levels 1 and 2 in each section, counted in the standard; sections left out as a whole are not here. */
const inSection: Readonly<Record<string, number>> = {
  ...{ "1.1": 2, "1.2": 9, "1.3": 11, "1.4": 3, "1.5": 2, "2.1": 3, "2.2": 3, "2.3": 4, "2.4": 1 },
  ...{ "3.2": 2, "3.3": 4, "3.4": 6, "3.5": 5, "3.7": 2, "4.1": 3, "4.2": 1, "5.1": 1, "5.2": 3, "5.3": 2, "5.4": 3 },
  ...{ "6.1": 3, "6.2": 12, "6.3": 4, "6.4": 4, "7.1": 3, "7.2": 4, "7.3": 2, "7.4": 5, "7.5": 2, "8.1": 2, "8.2": 3 },
  ...{ "8.3": 1, "8.4": 1, "11.1": 2, "11.2": 3, "11.3": 3, "11.4": 4, "11.5": 1, "11.6": 1, "12.1": 3, "12.2": 2 },
  ...{ "12.3": 4, "13.1": 1, "13.2": 5, "13.3": 2, "13.4": 5, "14.1": 2, "14.2": 4, "14.3": 3, "15.1": 3, "15.2": 3 },
  ...{ "15.3": 7, "16.1": 1, "16.2": 5, "16.3": 4, "16.4": 3, "16.5": 3 },
};

describe("SECURITY.md", () => {
  it("has every requirement once, with a state and a reason", () => {
    expect(new Set(numbers).size).toBe(numbers.length);
    const counted = Object.fromEntries(
      [...Map.groupBy(numbers, (each) => each.slice(0, each.lastIndexOf(".")))].map(([section, own]) => [
        section,
        own.length,
      ]),
    );
    expect(counted).toEqual(inSection);
    for (const [, number, state, reason] of rows) {
      expect(["met", "open", "not applicable"], number).toContain(state);
      expect(reason, number).not.toBe("");
    }
  });

  it("names rules that stand in a SPEC, and tests that are there", () => {
    const written = new Set(
      files
        .filter((file) => file.endsWith("SPEC.md"))
        .flatMap((file) => [...read(file).matchAll(/^- \*\*([A-Z]{2,3}\d+)\*\*/gm)].map((match) => match[1])),
    );
    const rules = [...text.matchAll(/\b(?:AC|SG|JN)\d+\b/g)].map(([rule]) => rule);
    expect(rules.length).toBeGreaterThan(50);
    expect(rules.filter((rule) => !written.has(rule))).toEqual([]);
    const tests = [...text.matchAll(/\b(\w+\.test)\b/g)].map(([, name]) => name);
    expect(tests.filter((name) => !files.some((file) => file.endsWith(`/${name}.ts`)))).toEqual([]);
  });
});
