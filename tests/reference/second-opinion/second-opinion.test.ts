/** The library against what R and its packages gave for the kept cases; R itself is not needed. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { efficacy } from "../../../src/reasoning/index.ts";
import { answerOf, disagreements, type ReferenceCase } from "../compare.ts";
import { loadMethods } from "../methods.ts";
import { differing, notAsked } from "./differing.ts";

interface Opinion {
  readonly id: string;
  /** Path inside the answer, places in a list counted from 0. */
  readonly field: string;
  readonly value: unknown;
  /** The routines of R that gave it. */
  readonly by: string;
}

interface Table {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly alternative: efficacy.Alternative;
}

const read = (folder: string, file: string): unknown =>
  JSON.parse(readFileSync(new URL(`${folder}/${file}`, import.meta.url), "utf8"));
const files = readdirSync(new URL("./values/", import.meta.url));
const cases = new Map(
  readdirSync(new URL("../values/", import.meta.url))
    .flatMap((file) => (read("../values", file) as { cases: readonly ReferenceCase[] }).cases)
    .map((each) => [each.id, each]),
);
const opinions = files.flatMap((file) => read("./values", file) as readonly Opinion[]);
const methods = await loadMethods();
const answers = new Map<string, unknown>();

function caseOf({ id }: Opinion): ReferenceCase {
  const found = cases.get(id);
  if (!found) throw new Error(`${id} is not a kept case`);
  return found;
}

/** What the library says in one field. A name may hold a dot, so the longest name that fits is taken. */
function at(answer: unknown, path: string): unknown {
  if (path === "") return answer;
  if (typeof answer !== "object" || answer === null) return undefined;
  const name = Object.keys(answer)
    .filter((each) => path === each || path.startsWith(`${each}.`))
    .sort((a, b) => b.length - a.length)[0];
  if (name === undefined) return undefined;
  return at((answer as Record<string, unknown>)[name], path.slice(name.length + 1));
}

/** Whether the library gives the value of R, at the tolerance of the case's class. */
function agrees(opinion: Opinion): readonly { readonly got: string }[] {
  const { id, method, input, tol } = caseOf(opinion);
  if (!answers.has(id)) {
    const answer = answerOf(methods, { method, input });
    if ("trouble" in answer) throw new Error(`${id}: ${answer.trouble}`);
    answers.set(id, answer.got);
  }
  const got = { [opinion.field]: at(answers.get(id), opinion.field) };
  const expected = { [opinion.field]: opinion.value };
  return disagreements({ ours: () => got }, { id, method: "ours", input: {}, expected, tol });
}

const isListed = ({ id, field }: Opinion) => differing.some((each) => each.id === id && each.field === field);

describe.each(files)("the second opinion of R: %s", (file) => {
  const asked = (read("./values", file) as readonly Opinion[]).filter((each) => !isListed(each));

  it.each([...new Set(asked.map(({ id }) => id))])("%s", (id) => {
    expect(asked.filter((each) => each.id === id).flatMap(agrees)).toEqual([]);
  });
});

describe("the second opinion as a whole", () => {
  it("asks each field of a case once", () => {
    const places = opinions.map(({ id, field }) => `${id} ${field}`);
    expect(new Set(places).size).toBe(places.length);
  });

  it.each(differing)("$id $field is listed because it does differ", ({ id, field }) => {
    const found = opinions.filter((each) => each.id === id && each.field === field);
    expect(found).toHaveLength(1);
    expect(found.flatMap(agrees)).toHaveLength(1);
  });

  it("gives Barnard's p-value with the tie counted, as the library does by itself", () => {
    const opinion = opinions.find(({ id, field }) => id === "uncond_vacc" && field === "barnard_p");
    if (!opinion) throw new Error("R was not asked");
    const { a, b, c, d, alternative } = caseOf(opinion).input as unknown as Table;
    const ours = efficacy.barnardTest({ ...efficacy.sharesOfTable({ a, b, c, d }), alternative });
    // The largest chance over the common share: 1e-5, as for every two-sided search of that kind.
    expect(Math.abs((ours.ok ? ours.value.pValue : Number.NaN) - (opinion.value as number))).toBeLessThan(1e-5);
  });

  it("leaves no method out but those that say why", () => {
    const all = new Set([...cases.values()].map(({ method }) => method));
    const asked = new Set(opinions.map((opinion) => caseOf(opinion).method));
    expect([...all].filter((method) => !asked.has(method)).sort()).toEqual(Object.keys(notAsked).sort());
  });
});
