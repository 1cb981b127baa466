/** The kept reference values, case by case, and the runner's own rules: what must fail does fail. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { disagreements, type Method, type ReferenceCase } from "./compare.ts";
import { loadMethods } from "./methods.ts";

const folder = new URL("./values/", import.meta.url);
const methods = await loadMethods();

describe.each(readdirSync(folder))("reference values: %s", (file) => {
  const { cases } = JSON.parse(readFileSync(new URL(file, folder), "utf8")) as { cases: readonly ReferenceCase[] };

  it("there are some, no id twice", () => {
    expect(cases.length).toBeGreaterThan(0);
    expect(new Set(cases.map(({ id }) => id)).size).toBe(cases.length);
  });

  it.each(cases)("$id", (each) => {
    expect(disagreements(methods, each)).toEqual([]);
  });
});

describe("the comparison of reference values", () => {
  const fields = (tol: string, expected: unknown, got: unknown) => {
    const same: Record<string, Method> = { same: ({ value }: { readonly value: unknown }) => value };
    return disagreements(same, { id: "a", method: "same", input: { value: got }, expected, tol }).map(
      (each) => each.field,
    );
  };

  it("fails on an unknown method, an unknown tolerance, an input that is not used, and an error", () => {
    const one: Record<string, Method> = {
      one: () => ({ n: 1 }),
      falls: () => {
        throw new Error("no answer");
      },
    };
    const good = { id: "a", method: "one", input: {}, expected: { n: 1 }, tol: "integer, exact" };
    expect(disagreements(one, good)).toEqual([]);
    expect(disagreements(one, { ...good, method: "two" })).toHaveLength(1);
    expect(disagreements(one, { ...good, method: "toString" })).toHaveLength(1);
    expect(disagreements(one, { ...good, tol: "about" })).toHaveLength(1);
    expect(disagreements(one, { ...good, input: { conf: 0.95 } })).toHaveLength(1);
    expect(disagreements(one, { ...good, method: "falls" })[0]?.got).toContain("no answer");
  });

  it("compares whole numbers exactly, up to the rounding of a sum", () => {
    expect(fields("integer, exact", { n: 59 }, { n: 59 })).toEqual([]);
    expect(fields("integer, exact", { n: 59 }, { n: 60 })).toEqual(["n"]);
    expect(fields("integer, exact", { cost: 7262.4 }, { cost: 7262.400000000001 })).toEqual([]);
    expect(fields("integer, exact", { p: 0.05 }, { p: 0.050000002 })).toEqual(["p"]);
  });

  it("compares by size or by share, and by size where the expected is as good as 0", () => {
    expect(fields("abs 1e-8 (root finding / quantile)", { a: 1, b: 1 }, { a: 1 + 5e-9, b: 1 + 2e-8 })).toEqual(["b"]);
    expect(fields("rel 1e-10 (closed form)", { a: 1e6, b: 1e6 }, { a: 1e6 + 5e-5, b: 1e6 + 2e-4 })).toEqual(["b"]);
    expect(fields("rel 1e-10", { a: 0, b: 0, c: 1e-301 }, { a: 5e-13, b: 2e-12, c: 0 })).toEqual(["b"]);
    expect(fields("rel 1e-10", { a: 1e-30 }, { a: 2e-30 })).toEqual(["a"]);
  });

  it("gives log-likelihoods their own tolerance", () => {
    const tol = "rel 1e-4, loglik abs 1e-6 (iterative fit)";
    expect(fields(tol, { k: 1, logLik: -222 }, { k: 1.00005, logLik: -222.0000005 })).toEqual([]);
    expect(fields(tol, { k: 1, loglik_poisson: -222 }, { k: 1.0002, loglik_poisson: -222.00001 })).toEqual([
      "k",
      "loglik_poisson",
    ]);
  });

  it("takes neither NaN nor null for what is undefined, only a problem that is said", () => {
    const problem = { code: "all-pools-positive", severity: "blocked", field: null, slots: {} };
    for (const said of [problem, { ok: false, problems: [problem] }]) {
      expect(fields("abs 1e-8", { high: null }, { high: said })).toEqual([]);
      expect(fields("abs 1e-8", { high: 1 }, { high: said })).toEqual(["high"]);
    }
    for (const silent of [
      Number.NaN,
      null,
      undefined,
      0,
      "",
      { ok: false, problems: [] },
      { ok: true, value: 1, problems: [] },
    ]) {
      expect(fields("abs 1e-8", { high: null }, { high: silent })).toEqual(["high"]);
    }
    expect(fields("abs 1e-8", { high: 1 }, { high: Number.NaN })).toEqual(["high"]);
    expect(fields("abs 1e-8", { high: 1 }, {})).toEqual(["high"]);
  });

  it("compares text, lists and objects member by member", () => {
    expect(
      fields(
        "abs 1e-9",
        {
          rows: [
            [1, 2],
            [3, 4],
          ],
        },
        {
          rows: [
            [1, 2],
            [3, 5],
          ],
        },
      ),
    ).toEqual(["rows.1.1"]);
    expect(fields("abs 1e-9", { rows: [1, 2] }, { rows: [1, 2, 3] })).toEqual(["rows"]);
    expect(fields("abs 1e-9", { a: { b: "no", c: true } }, { a: { b: "yes", c: true } })).toEqual(["a.b"]);
    expect(fields("abs 1e-9", { a: [1] }, { a: { 0: 1 } })).toEqual(["a"]);
  });
});
