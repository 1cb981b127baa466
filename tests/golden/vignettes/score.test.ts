/** The differential on the vignettes: every answer is the one that is kept, and the table is printed. */
import { expect, it } from "vitest";
import { kept, scoreAll, summaryOf, tableOf } from "./score.ts";
import { vignettes } from "./vignettes.ts";

const { first, now } = kept();
const scores = scoreAll();

it("answers as the kept table says: whoever changes an answer writes the table anew and says why", () => {
  console.info(`${tableOf(first, scores)}\nat first: ${summaryOf(first)}\nnow: ${summaryOf(scores)}`);
  expect(scores).toEqual(now);
});

it("keeps the first answer to every vignette", () => {
  expect(Object.keys(first).sort()).toEqual(vignettes.map(({ id }) => id).sort());
});

it("never names tracheal mites where no trachea was opened", () => {
  const opened = vignettes.filter(({ input }) => input.tests?.some(({ test }) => test === "tracheal-dissection"));
  const named = vignettes.filter(({ id }) => scores[id]?.verdict.includes("tracheal_mites"));
  expect(named.filter((each) => !opened.includes(each))).toEqual([]);
});
