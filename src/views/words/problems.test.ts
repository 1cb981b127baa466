/** Every code of trouble has a sentence in every language, and no sentence shows a hole. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { languages, wholeWordsOf } from "./index.ts";

const source = path.join(import.meta.dirname, "..", "..");

/** Codes that the steps declare: the members of the interfaces in their `problems.ts`. */
const declared = readdirSync(source, { recursive: true, encoding: "utf8" })
  .filter((file) => path.basename(file) === "problems.ts" && !file.includes("views"))
  .flatMap((file) => {
    const text = readFileSync(path.join(source, file), "utf8");
    const bodies = [...text.matchAll(/export interface \w+Problems[^{]*\{([\s\S]*?)\n\}/g)].map(
      (match) => match[1] ?? "",
    );
    return bodies.flatMap((body) =>
      [...body.matchAll(/^ {2}readonly "?([a-z0-9-]+)"?:\s*(\{[\s\S]*?\}|[^;{]*)/gm)].map((match) => ({
        code: match[1] ?? "",
        slots: [...(match[2] ?? "").matchAll(/readonly (\w+): (\w+)/g)].map(
          (slot) => [slot[1] ?? "", slot[2] ?? ""] as const,
        ),
        file,
      })),
    );
  });

/** Codes that folders without a list of their own return, as they stand in the text. */
const returned = ["storage", "journal", "reasoning/differential"].flatMap((folder) =>
  readdirSync(path.join(source, folder), { encoding: "utf8" })
    .filter((file) => file.endsWith(".ts") && !file.endsWith(".test.ts"))
    .flatMap((file) =>
      [...readFileSync(path.join(source, folder, file), "utf8").matchAll(/problem\(\s*"([a-z0-9-]+)"/g)].map(
        (match) => match[1] ?? "",
      ),
    ),
);

it("the lists are found: a change of their form must not empty this test", () => {
  expect(declared.length).toBeGreaterThan(90);
  expect(new Set(declared.map(({ file }) => file)).size).toBeGreaterThanOrEqual(7);
  expect(returned.length).toBeGreaterThan(20);
});

it.each(languages)("%s: every declared code has a sentence that fills its slots", (language) => {
  const { problems } = wholeWordsOf(language);
  const missing = declared.filter(({ code }) => !problems[code]).map(({ code, file }) => `${file}: ${code}`);
  expect(missing).toEqual([]);
  for (const { code, slots } of declared) {
    const filled = Object.fromEntries(slots.map(([name, type]) => [name, type === "number" ? 7 : "2026-03-09"]));
    const sentence = problems[code]?.(filled) ?? "";
    expect(sentence, code).not.toMatch(/undefined|NaN|\[object|^$/);
    expect(sentence, code).toMatch(/^[A-Z“0-9(].*[.!?]$/s);
  }
});

it.each(languages)("%s: every code returned by records, exchange and differential has a sentence", (language) => {
  const { problems } = wholeWordsOf(language);
  expect([...new Set(returned)].filter((code) => !problems[code])).toEqual([]);
});

it.each(languages)("%s: no sentence blames, shouts or begs", (language) => {
  const { problems } = wholeWordsOf(language);
  for (const [code, sentence] of Object.entries(problems))
    expect(sentence({}), code).not.toMatch(/\b(invalid|illegal|oops|please)\b|!/i);
});
