/** The differential on the vignettes: every answer is the one that is kept, and the table is printed. */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { differential } from "../../../src/reasoning/index.ts";
import { kept, pageTableOf, scoreAll, summaryOf, tableOf } from "./score.ts";
import { vignettes } from "./vignettes.ts";

const { first, now } = kept();
const scores = scoreAll();

it("answers as the kept table says: whoever changes an answer writes the table anew and says why", () => {
  console.info(`${tableOf(first, scores)}\nat first: ${summaryOf(first)}\nnow: ${summaryOf(scores)}`);
  expect(scores).toEqual(now);
});

it("stands on the page of the method, as it is", () => {
  const page = readFileSync(new URL("../../../docs/methods/differential.md", import.meta.url), "utf8");
  const table = pageTableOf({ first, now: scores });
  expect(page.includes(table), `docs/methods/differential.md should hold\n${table}`).toBe(true);
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

type Input = Parameters<typeof differential.differential>[0];
const answerTo = (id: string, tests: Input["tests"] = []) => {
  const vignette = vignettes.find((each) => each.id === id) ?? expect.fail(id);
  const reply = differential.differential({ ...(vignette.input as Input), tests });
  if (!reply.ok) throw new Error(id);
  const { conditions, verdict } = reply.value;
  return { verdict, posterior: (of: string) => conditions.find((each) => each.id === of)?.posterior ?? 0 };
};

it("cannot tell a queenless colony from one with a virgin for the reason of the text: only the test comb parts them", () => {
  const [open, cells, none] = [undefined, "found" as const, "none-found" as const].map((result) =>
    answerTo("no-queen-no-eggs-no-brood", result && [{ test: "test-frame", result }]),
  );
  if (!open || !cells || !none) return expect.fail("no answer");
  expect(Math.abs(open.posterior("queenless") - open.posterior("brood_break_swarm"))).toBeLessThan(0.05);
  expect(cells.posterior("queenless")).toBeGreaterThan(4 * cells.posterior("brood_break_swarm"));
  expect(none.posterior("brood_break_swarm")).toBeGreaterThan(4 * none.posterior("queenless"));
});

it("cannot tell by K-wings and crawlers for the reason of the text: opened bees decide", () => {
  const id = "k-wings-and-crawlers-not-opened";
  const opened = (positive: number) => answerTo(id, [{ test: "tracheal-dissection", positive, examined: 50 }]);
  expect(answerTo(id).verdict.kind).toBe("cannot-tell");
  expect(opened(30).verdict).toMatchObject({ kind: "leading", condition: "tracheal_mites" });
  expect(opened(0).posterior("tracheal_mites")).toBeLessThan(0.01);
});
