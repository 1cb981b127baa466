/** Addresses into the reckoner: what they bring is read there as the numbers of the case. */
import { describe, expect, it } from "vitest";
import { verbNamed } from "../../reasoning/index.ts";
import { methodViewOf, moreBeesAddress, questionOf, rangeAddress, reductionAddress } from "./index.ts";

/** The question that the page would read from an address. */
function readBack(address: string) {
  const { pathname, searchParams } = new URL(address, "http://localhost");
  const name = pathname.split("/").at(-1) ?? "";
  const verb = verbNamed(name);
  const view = methodViewOf(name);
  if (!verb || !view) throw new Error(`no method ${name}`);
  return { verb, question: questionOf(Object.fromEntries(searchParams), verb.inputShape, view.fields) };
}

describe("addresses into the reckoner", () => {
  it("a counted share brings its bees", () => {
    expect(readBack(rangeAddress({ value: 17 / 50, n: 50 })).question).toMatchObject({
      ok: true,
      value: { positive: 17, examined: 50 },
    });
  });

  it("a choice brings belief, prices and bench, and leaves open what it does not know", () => {
    const { question, verb } = readBack(
      moreBeesAddress({
        belief: { a: 17.5, b: 33.5 },
        prices: { colonyValue: 200, actCost: 12.5, testCost: 9, residualShare: 0.3 },
        test: { bees: 50, sensitivity: 0.95, specificity: 1 },
        currency: "EUR",
        about: "own",
      }),
    );
    const known = { a: 17.5, b: 33.5, actCost: 12.5, fixedCost: 9, sensitivity: 0.95, specificity: 1 };
    expect(question).toMatchObject({ ok: true, value: known });
    expect(verb.ask(question.ok ? question.value : {}).problems.map(({ field }) => field)).toEqual([
      "lossAtFull",
      "costPerBee",
    ]);
    expect(verb.ask({ ...known, lossAtFull: 140, costPerBee: 0.4 })).toMatchObject({ kind: "answered" });
  });

  it("a check brings its four counts, and nothing without untreated colonies", () => {
    const look = (before: number, after: number) => ({
      colonies: ["3"],
      before: { infested: before, examined: 100 },
      after: { infested: after, examined: 50 },
      beforeOn: "2026-09-01",
      afterOn: "2026-10-20",
    });
    const view = { treated: look(30, 4), control: look(28, 17) };
    const { question, verb } = readBack(reductionAddress(view) ?? "");
    expect(question).toMatchObject({
      ok: true,
      value: {
        treatedBefore: { found: 30, of: 100 },
        treatedAfter: { found: 4, of: 50 },
        controlBefore: { found: 28, of: 100 },
        controlAfter: { found: 17, of: 50 },
      },
    });
    expect(verb.ask(question.ok ? question.value : {})).toMatchObject({ kind: "answered" });
    expect(reductionAddress({ ...view, control: null })).toBeNull();
  });
});
