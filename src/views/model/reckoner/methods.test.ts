/** Every method of the reckoner: its form asks what its verb takes, and its answer is a sentence, pictures and figures. */
import { describe, expect, it } from "vitest";
import { verbNamed, verbs } from "../../../reasoning/index.ts";
import {
  answerFigures,
  fieldOfProblem,
  methodFields,
  methodsByFamily,
  methodViewOf,
  methodViews,
  type PictureView,
  pictureTable,
  placesOf,
  questionOf,
} from "../index.ts";

const columns = { value: "value", low: "from", high: "to" };

/** Numbers of a picture and of its scales. */
function numbersOf(picture: PictureView): readonly number[] {
  const axes =
    picture.kind === "ranges" ? [picture.axis] : picture.kind === "bars" ? [picture.y] : [picture.x, picture.y];
  const table = pictureTable(picture, columns).rows.flat();
  return [...axes.flatMap(({ from, to }) => [from, to]), ...table.filter((each) => typeof each === "number")];
}

it("every verb that needs no case is a method of the page, under what it is about", () => {
  const listed = methodsByFamily.flatMap(([family, names]) => names.map((name): [string, string] => [name, family]));
  const asked = verbs
    .filter(({ family }) => family !== "case")
    .map(({ name, family }): [string, string] => [name, family]);
  expect(new Map(listed)).toEqual(new Map(asked));
  expect(listed).toHaveLength(asked.length);
});

describe.each(Object.entries(methodViews))("%s", (name, view) => {
  const verb = verbNamed(name);
  if (!verb) throw new Error(`no verb ${name}`);
  const fields = methodFields(verb.inputShape, view.fields, verb.example);
  const typed = Object.fromEntries(fields.flatMap((field) => (field.typed === "" ? [] : [[field.name, field.typed]])));
  const question = questionOf(typed, verb.inputShape, view.fields);

  it("has fields that its question knows, and every needed one", () => {
    expect(fields.map((field) => field.name)).toEqual(Object.keys(view.fields));
    const needed = placesOf(verb.inputShape).filter((place) => place.needed);
    for (const place of needed) expect(Object.keys(view.fields)).toContain(place.name);
  });

  it("its form holds the example, which it answers in words, pictures and figures", () => {
    if (!question.ok) return expect.fail(JSON.stringify(question.problems));
    const reply = verb.ask({ ...question.value, ...view.more(question.value) });
    if (reply.kind !== "answered") return expect.fail(JSON.stringify(reply.problems));
    const says = view.says(reply.value);
    expect(says.length).toBeGreaterThan(10);
    expect(says).not.toMatch(/NaN|undefined|null|Infinity|object/);
    for (const picture of view.pictures(reply.value)) {
      expect(numbersOf(picture).every(Number.isFinite), picture.name).toBe(true);
      expect(`${picture.title} ${picture.label}`).not.toMatch(/NaN|undefined|null|Infinity/);
    }
    const figures = answerFigures(reply.value as Readonly<Record<string, unknown>>, 8);
    expect(JSON.stringify(figures)).toContain("rule");
    expect(JSON.stringify(figures)).not.toMatch(/NaN|Infinity/);
  });

  it("what the form says and what the example says are the same question", () => {
    if (!question.ok) return expect.fail("not read");
    const own = verb.ask(verb.example);
    const byForm = verb.ask({ ...verb.example, ...question.value });
    expect(byForm).toEqual(own);
  });

  it("whatever is missing is asked for at a field of its form", () => {
    const reply = verb.ask({});
    const troubles = reply.kind === "unfit" ? reply.problems : [];
    const needed = placesOf(verb.inputShape).some((place) => place.needed);
    expect(troubles.length > 0).toBe(needed || reply.kind === "unfit");
    for (const each of troubles.filter(({ code }) => code === "field-missing")) {
      const inside = fields.some(({ name }) => name.startsWith(`${each.field}.`));
      expect(fieldOfProblem(each, fields) !== null || inside, `${each.field}`).toBe(true);
    }
  });
});

/** What the form of a method answers to these words, typed over its example. */
function saidOf(name: string, over: Readonly<Record<string, string>>): string {
  const [verb, view] = [verbNamed(name), methodViewOf(name)];
  if (!verb || !view) throw new Error(name);
  const fields = methodFields(verb.inputShape, view.fields, verb.example);
  const typed = { ...Object.fromEntries(fields.map((field) => [field.name, field.typed])), ...over };
  const question = questionOf(typed, verb.inputShape, view.fields);
  if (!question.ok) return question.problems.map(({ code, field }) => `${field}: ${code}`).join(", ");
  const reply = verb.ask(question.value);
  return reply.kind === "answered" ? view.says(reply.value) : reply.problems.map(({ code }) => code).join(", ");
}

describe("what they say", () => {
  it("59 bees find 5 in 100 infested 95 times in 100 (Pirk and others 2013)", () => {
    expect(saidOf("sample-size", { sensitivity: "100" })).toMatch(
      /^\*\*59 bees\*\* find 5 in 100 infested 95\.\d+ times/,
    );
  });

  it("of 100 colonies with one infested 95 must be looked at", () => {
    expect(saidOf("sample-size", { designPrevalence: "1", sensitivity: "100", population: "100" })).toContain(
      "95 of 100",
    );
  });

  it("says when even all do not suffice", () => {
    expect(saidOf("sample-size", { designPrevalence: "3", sensitivity: "80", population: "30" })).toBe(
      "confidence-out-of-reach",
    );
  });

  it("names the field that holds no number", () => {
    expect(saidOf("sample-size", { designPrevalence: "a lot" })).toBe("designPrevalence: field-not-number");
  });

  it("takes several numbers with commas, blanks or both between them, and a comma in a number as its decimal sign", () => {
    const weighed = (sizes: string) => saidOf("value-of-sampling", { sizes });
    expect(weighed("10,30,50")).toContain("look at 30 bees");
    expect(weighed("10, 30 50")).toBe(weighed("10,30,50"));
    expect(weighed("10,30")).toBe(weighed("10 30"));
    expect(weighed("1,000,000 5")).toBe("sizes: number-in-two-ways");
    expect(saidOf("value-of-sampling", { sizes: "10 30", fixedCost: "0,2" })).toBe(weighed("10 30"));
  });

  it.each([
    ["intervals", { positive: "1,000", examined: "2,000" }, "positive"],
    ["sample-size", { population: "1,000" }, "population"],
    ["colonies", { colonies: "1,000 2,000" }, "colonies"],
    ["value-of-sampling", { sizes: "1,000" }, "sizes"],
    ["freedom", { sensitivities: "50,60" }, "sensitivities"],
    ["network", { priors: "15,30" }, "priors"],
  ])("%s refuses what can be read in two ways: %j", (name, typed, field) => {
    expect(saidOf(name, typed)).toContain(`${field}: number-in-two-ways`);
  });

  it("a comma without a blank parts whole numbers of a row", () => {
    expect(saidOf("colonies", { colonies: "1,20\n9,25" })).toBe(saidOf("colonies", { colonies: "1 of 20\n9 of 25" }));
  });

  it("a trouble inside a row or an object stands at the field that holds it", () => {
    const fields = [{ name: "colonies" }, { name: "prior.a" }].map((each) => ({
      ...each,
      kind: "number" as const,
      label: "",
      hint: undefined,
      needed: false,
      typed: "",
      usual: "",
      choices: [],
    }));
    const at = (field: string) => fieldOfProblem({ field }, fields);
    expect([at("colonies[3].positive"), at("colonies"), at("prior.a"), at("prior"), at("colony")]).toEqual([
      "colonies",
      "colonies",
      "prior.a",
      null,
      null,
    ]);
  });

  it("says no certainty where there is none", () => {
    const treated = {
      "treatedBefore.found": "",
      "treatedBefore.of": "",
      "controlBefore.found": "",
      "controlBefore.of": "",
    };
    const few = {
      ...treated,
      "treatedAfter.found": "0",
      "treatedAfter.of": "5",
      "controlAfter.found": "1",
      "controlAfter.of": "6",
    };
    expect(saidOf("reduction", few)).toMatch(/None found after.*cannot say that it worked/);
    expect(saidOf("true-prevalence", { positive: "5", examined: "150" })).toMatch(/No range can be told/);
    expect(saidOf("agreement", { table: "25 0\n0 30" })).toMatch(/no range/);
    expect(saidOf("colonies", { colonies: "3 20\n7 20\n4 20\n2 20" })).toContain("it may be chance");
    expect(saidOf("trend", { groups: "5 50\n6 50\n5 50" })).toMatch(/may be chance|neither/);
  });

  it("17 of 50 lies above 20, below 60, and cannot say of 30", () => {
    const against = (line: string) => saidOf("intervals", { positive: "17", examined: "50", line });
    expect(against("20")).toBe(
      "**34 in 100,** and it could be 21.2 to 48.8, by the exact method. All of the range lies above 20.",
    );
    expect(against("60")).toContain("All of the range lies below 60.");
    expect(against("30")).toContain("cannot say");
  });

  it("none found in 50 is never a zero alone", () => {
    expect(saidOf("intervals", { positive: "0" })).toBe(
      "**None found in 50.** It could still be up to 7.11 in 100, by the exact two-sided method; a one-sided limit is lower (“None found”).",
    );
  });

  it("1.000 whole bees can be read in two ways, 3/24 in one, and shares in lines are typed of 100", () => {
    expect(saidOf("none-found", { examined: "1.000" })).toBe("examined: number-in-two-ways");
    expect(saidOf("colonies", { colonies: "3/24\n5/24" })).toBe(saidOf("colonies", { colonies: "3 24\n5 24" }));
    expect(saidOf("freedom", { sensitivities: "1/3 1/2" })).toContain("field-not-number");
    const round = verbNamed("freedom-finite");
    const view = methodViewOf("freedom-finite");
    if (!round || !view) throw new Error("no such method");
    const read = questionOf({ clusters: "40", infested: "2", tested: "20 90" }, round.inputShape, view.fields);
    expect(read).toMatchObject({ ok: true, value: { tested: [{ sensitivity: 0.9 }] } });
  });

  it("more bees with mites than bees read are refused", () => {
    expect(saidOf("intervals", { positive: "51" })).toBe("positives-exceed-examined");
  });
});
