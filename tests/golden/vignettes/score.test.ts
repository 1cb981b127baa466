/** The differential on the vignettes: every answer is the one that is kept, and the table is printed. */
import { createHash } from "node:crypto";
import { expect, it } from "vitest";
import { kept, scoreAll, summaryOf, tableOf } from "./score.ts";
import { vignettes } from "./vignettes.ts";

const { first, now } = kept();
const scores = scoreAll();

it("answers as the kept table says: whoever changes an answer writes the table anew and says why", () => {
  console.info(`${tableOf(first, scores)}\nat first: ${summaryOf(first)}\nnow: ${summaryOf(scores)}`);
  expect(scores).toEqual(now);
});

it("keeps the first answer to every vignette, as it was", () => {
  expect(Object.keys(first).sort()).toEqual(vignettes.map(({ id }) => id).sort());
  // Of the answers when the vignettes were first scored: a vignette that is added brings its own first answer and a new sum.
  expect(createHash("sha256").update(JSON.stringify(first)).digest("hex")).toBe(
    "a9af7f5532e8947f0f49b7abbeceef9f8a2d89bf11a6b22140685700f1471dbb",
  );
});

it("never names tracheal mites where no trachea was opened", () => {
  const opened = vignettes.filter(({ input }) => input.tests?.some(({ test }) => test === "tracheal-dissection"));
  const named = vignettes.filter(({ id }) => scores[id]?.verdict.includes("tracheal_mites"));
  expect(named.filter((each) => !opened.includes(each))).toEqual([]);
});
