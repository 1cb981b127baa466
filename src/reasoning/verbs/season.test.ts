/** The verbs of a season: what is warned of, what is refused at which field, and answers that fit their own schema. */
import { describe, expect, it } from "vitest";
import type { Reply } from "./index.ts";
import { season } from "./season.ts";
import { seasonChoices } from "./season-choices.ts";
import type { AnswerOf, Verb } from "./verb.ts";

const question = {
  start: { date: "2026-11-01", bees: 6000, infestedShare: 0.08, brood: "none" },
  until: "2027-03-15",
  draws: 100,
};
const told = (reply: Reply) => reply.problems.map(({ code, field }) => `${code} ${field}`);

/** The answer, once it went through JSON and fits the verb's own schema. */
function answerOf<V extends Verb<object>>(verb: V, asked: object): AnswerOf<V> {
  const reply = verb.ask(asked);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  const through: unknown = JSON.parse(JSON.stringify(reply.value));
  expect(verb.output.safeParse(through).error).toBeUndefined();
  expect(through).toEqual(reply.value);
  return reply.value as AnswerOf<V>;
}

describe("season", () => {
  it("[SE53] a colony likely lost is warned of", () => {
    const weak = { ...question, start: { ...question.start, bees: 500 } };
    expect(answerOf(season, weak).days.at(-1)?.survival.mean).toBeLessThan(0.1);
    expect(told(season.ask(weak))).toContain("season-colony-lost-at-once start.bees");
    expect(told(season.ask(question)).filter((code) => /lost/.test(code))).toHaveLength(1);
    const large = { ...question, start: { ...question.start, bees: 20_000 } };
    expect(told(season.ask(large)).filter((code) => /lost/.test(code))).toEqual([]);
  });

  it("[SE150] survival is told wide, in season and in season-choices", () => {
    const large = { ...question, start: { ...question.start, bees: 20_000 } };
    const width = ({ q05, q95 }: { readonly q05: number; readonly q95: number }) => q95 - q05;
    const end = answerOf(season, large).days.at(-1)?.survival ?? expect.fail("no day");
    expect(width(end)).toBeGreaterThan(0.15);
    const choices = [{ name: "patty", actions: [{ kind: "oil-patty", from: "2027-02-20", to: "2027-03-10" }] }];
    const [nothing] = answerOf(seasonChoices, { ...large, choices }).choices;
    expect(nothing?.at.at(-1)?.survival).toEqual(end);
  });

  it("[SE140] a colony counted alive in March is not told as lost in January", () => {
    const counted = { ...question, until: "2027-03-29", counts: [{ date: "2027-03-15", infested: 2, examined: 50 }] };
    const { days } = answerOf(season, counted);
    expect(days.find(({ date }) => date === "2027-03-14")?.survival.mean).toBe(1);
    expect(days.at(-1)?.survival.mean).toBeGreaterThan(0.7);
    expect(told(season.ask(counted)).filter((code) => /lost/.test(code))).toEqual([]);
    const choices = [{ name: "patty", actions: [{ kind: "oil-patty", from: "2027-03-20", to: "2027-03-28" }] }];
    expect(told(seasonChoices.ask({ ...counted, choices })).filter((code) => /lost/.test(code))).toEqual([]);
  });

  it("[SE141] what is left out as impossible has no number, and the answer fits its schema", () => {
    const counts = [{ date: "2027-02-01", infested: 6, examined: 50 }];
    const blind = { sensitivity: 0, specificity: 1, overdispersion: 0.02 };
    const left = answerOf(season, { ...question, counts, countError: blind });
    expect([left.logLikelihood, left.counts[0]?.logLikelihood, left.counts[0]?.surprise]).toEqual([null, null, null]);
    expect(told(season.ask({ ...question, counts, countError: blind }))).toContain("season-count-left-out counts");
    const sure = { start: { ...question.start, infestedShare: 0 }, countError: { ...blind, sensitivity: 1 } };
    expect(told(season.ask({ ...question, ...sure, counts }))).toEqual([
      "season-share-none-counted start.infestedShare",
    ]);
  });

  it("[SE141] errors and scatters too small to reckon with are refused at their field, and the least are not", () => {
    const counts = [{ date: "2027-02-01", infested: 6, examined: 50 }];
    const asked = (overdispersion: number, scatter: number) => ({
      ...question,
      ...{ counts, countError: { sensitivity: 1, specificity: 1, overdispersion } },
      sizes: [{ date: "2027-02-02", what: "bees", frames: 2, scatter }],
    });
    const fields = (reply: Reply) => (reply.kind === "unfit" ? reply.problems.map(({ field }) => field) : []);
    expect(fields(season.ask(asked(1e-200, 0.3)))).toEqual(["countError.overdispersion"]);
    expect(fields(season.ask(asked(0.02, 1e-200)))).toEqual(["sizes[0].scatter"]);
    answerOf(season, asked(1e-9, 0.01));
  });

  it("[SE52] eleven months are told as what they are", () => {
    const eleven = { ...question, site: { monthlyMeanCelsius: [-3, -2, 3, 9, 15, 19, 22, 21, 17, 10, 4] } };
    expect(told(season.ask(eleven))).toEqual(["monthly-means-not-twelve site.monthlyMeanCelsius"]);
  });
});

describe("an action that does not fit", () => {
  const refused = (action: object) => {
    const reply = season.ask({ ...question, actions: [action] });
    return reply.problems.map(({ code, field, expected }) => `${code} ${field}: ${expected}`);
  };
  it("is told by the fields of its own kind", () => {
    const [from, to] = ["2026-12-01", "2027-02-01"];
    const day = "a calendar day as YYYY-MM-DD";
    expect(refused({ kind: "menthol", to })).toEqual([
      `field-missing actions[0].from: ${day}`,
      "field-unknown actions[0].to: one of kind, from",
    ]);
    const kinds = "menthol, formic, oil-patty, brood-break, requeen, unite";
    expect(refused({ kind: "moonlight", from })).toEqual([`field-unfit actions[0].kind: one of ${kinds}`]);
    expect(refused({ from })).toEqual([`field-missing actions[0].kind: one of ${kinds}`]);
    expect(refused({ kind: "oil-patty", from, to, reduction: 2 })).toEqual([
      "field-unfit actions[0].reduction: a number from 0 to 1",
    ]);
    const donor = { start: { date: "2026-11-20", bees: 8000, infestedShare: 0.1 }, actions: [{ kind: "requeen" }] };
    expect(refused({ kind: "unite", from, donor })).toEqual([
      "field-unfit actions[0].donor.actions[0].kind: one of menthol, formic, oil-patty, brood-break",
    ]);
  });
});

describe("places and colonies that the model cannot speak of", () => {
  const start = { date: "2026-08-01", bees: 30_000, infestedShare: 0.08 };
  const hot = [20, 22, 25, 29, 33, 35, 36, 36, 34, 30, 25, 21];
  const warned = (reply: Reply) =>
    reply.problems.flatMap(({ code, severity }) => (severity === "warned" ? [code] : [])).sort();

  it("[SE149] frost all year is no place of the model, for a forecast and for choices", () => {
    const frost = { monthlyMeanCelsius: new Array(12).fill(-80), latitude: 45 };
    const asked = { site: frost, start, until: "2027-03-31", draws: 100 };
    expect(warned(season.ask(asked))).toContain("season-months-outside");
    const choices = [{ name: "patty", actions: [{ kind: "oil-patty", from: "2026-09-01", to: "2026-10-01" }] }];
    expect(warned(seasonChoices.ask({ ...asked, choices })).filter((code) => /months/.test(code))).toHaveLength(1);
  });

  it("[SE149] a colony that dwindles in the heat is told of, though none is lost to cold", () => {
    const asked = { site: { monthlyMeanCelsius: hot, latitude: 25 }, start, until: "2027-03-31", draws: 100 };
    expect(answerOf(season, asked).days.at(-1)?.survival.mean).toBeGreaterThan(0.99);
    const told = ["season-colony-dwindles", "season-months-outside"];
    expect(warned(season.ask(asked))).toEqual(told);
    const choices = [{ name: "patty", actions: [{ kind: "oil-patty", from: "2027-03-20", to: "2027-03-28" }] }];
    for (const decideOn of ["2026-08-10", "2027-03-19"])
      expect(warned(seasonChoices.ask({ ...asked, choices, decideOn }))).toEqual(expect.arrayContaining(told));
  });
});

describe("season-choices", () => {
  it("[SE146] formic acid in the cold does nothing, is told at its choice, and is not called best", () => {
    const asked = {
      site: { monthlyMeanCelsius: [-4, -3, 2, 8, 14, 19, 22, 21, 16, 10, 4, -1], latitude: 45 },
      start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.2 },
      decideOn: "2026-12-15",
      choices: [
        { name: "formic", actions: [{ kind: "formic", from: "2026-12-20" }] },
        { name: "queen", actions: [{ kind: "requeen", from: "2026-12-20", susceptibility: 0.7 }] },
      ],
      ...{ line: 0.15, until: "2027-03-31", draws: 100 },
    };
    const [nothing, formic] = answerOf(seasonChoices, asked).choices;
    expect(formic?.at.at(-1)?.infestedShare).toEqual(nothing?.at.at(-1)?.infestedShare);
    const warned = seasonChoices.ask(asked).problems.filter(({ severity }) => severity === "warned");
    expect(warned.map(({ code, field }) => `${code} ${field}`)).toEqual([
      "season-formic-cold choices[0].actions[0].from",
      "season-opened-in-cold choices[1].actions[0].from",
      "season-draws-thin draws",
    ]);
    expect(told(seasonChoices.ask(asked)).filter((each) => /assumed/.test(each))).toHaveLength(1);
    // Another colony treated in the cold is told of at the uniting.
    const donor = {
      start: { date: "2026-11-01", bees: 9000, infestedShare: 0.2, brood: "none" },
      actions: [{ kind: "formic", from: "2026-11-20" }],
    };
    const uniting = { name: "uniting", actions: [{ kind: "unite", from: "2026-12-20", donor }] };
    expect(told(seasonChoices.ask({ ...asked, choices: [uniting] }))).toEqual(
      expect.arrayContaining([
        "season-opened-in-cold choices[0].actions[0].from",
        "season-formic-cold choices[0].actions[0].donor.actions[0].from",
      ]),
    );
  });

  it("[SE74] left out, the day of the choice is that of the last count or size; a size after it is called a size", () => {
    const asked = {
      start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08 },
      counts: [{ date: "2026-08-20", infested: 3, examined: 50 }],
      sizes: [{ date: "2026-08-25", what: "bees", frames: 14 }],
      choices: [{ name: "menthol", actions: [{ kind: "menthol", from: "2026-09-01" }] }],
      until: "2026-12-01",
      draws: 100,
    };
    expect(answerOf(seasonChoices, asked).decideOn).toBe("2026-08-25");
    expect(told(seasonChoices.ask({ ...asked, decideOn: "2026-08-22" }))).toContain(
      "season-size-outside sizes[0].date",
    );
  });
});
