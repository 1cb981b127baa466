/** A season as it is told: from the casebook to the question, and from the answer to sentence, picture and table. */
import { describe, expect, it } from "vitest";
import { demonstrationCasebook } from "../../../../tests/casebook-of.ts";
import { dynamics, site } from "../../../reasoning/index.ts";
import { addDays, type Problem, problem } from "../../../units/index.ts";
import { seasonWords, sentenceOf, wholeWordsOf } from "../../words/index.ts";
import { siteOf } from "../done/plan-request.ts";
import {
  asCount,
  colonySeason,
  countedInOpenCases,
  countedSeasons,
  countsAfterDone,
  usedCounts,
} from "./colony-season.ts";
import { keptNights, lastNight, oneNight } from "./last-night.ts";
import { isForecast, nightChunks, reckonNightChunk } from "./nightly.ts";
import {
  choiceNames,
  choicesAsked,
  choicesText,
  donorChosen,
  donorsOf,
  intended,
  keptChoices,
  movedTo,
  newAction,
  seasonAddress,
  wholeChoices,
} from "./season-choices.ts";
import { doneFrom } from "./season-done.ts";
import { endOfWinter, readSeason, type SeasonAsk, seasonFields } from "./season-form.ts";
import { countLine } from "./season-lines.ts";
import { noteHere } from "./season-troubles.ts";
import { trustView } from "./season-trust.ts";
import { flagsOf, type SeasonSeen, seasonView } from "./season-view.ts";
import { seasonYear, warmthNote } from "./season-year.ts";

const casebook = demonstrationCasebook();
const [caseId, treated, untreated] = ["demonstration-case-tv-26-014", "demonstration-wb-07", "demonstration-wb-03"];
const sentence = (problem: Problem) => sentenceOf(problem, wholeWordsOf("en"));
const today = "2026-11-19";
const of = (colony: string, on = today) =>
  colonySeason(casebook, { caseId, colony, today: on }) ?? expect.fail("no colony");

it("a dissection that was told is a count like one read here, and one of dead bees is left out", () => {
  const state = casebook.cases[caseId] ?? expect.fail("no case");
  const told = (aliveWhenTaken: boolean) => {
    const value = {
      test: "tracheal-dissection",
      colony: "demonstration-wb-12",
      on: "2026-10-02",
      positive: 4,
      examined: 50,
    };
    const result = {
      value: { ...value, aliveWhenTaken },
      entry: "told",
      at: "2026-10-02",
      recordedAt: "",
      author: "",
      device: "",
    };
    const book = { ...casebook, cases: { ...casebook.cases, [caseId]: { ...state, tests: { told: result } } } };
    const found = colonySeason(book, { caseId, colony: "demonstration-wb-12", today }) ?? expect.fail("no colony");
    expect(countedSeasons(book, caseId).map(({ id }) => id)).toContain("demonstration-wb-12");
    return found.counts.map(({ date, infested, examined, isLimited }) => [date, infested, examined, isLimited]);
  };
  expect(told(true)).toEqual([["2026-10-02", 4, 50, false]]);
  expect(told(false)).toEqual([["2026-10-02", 4, 50, true]]);
});

function asked(fields: Record<string, string> = {}, colony = of(untreated)): SeasonAsk {
  const read = readSeason({ ...seasonFields(colony, today), ...fields }, colony);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { ...read.value, draws: 150 };
}

function seenOf(ask: SeasonAsk, choices: readonly (readonly dynamics.Action[])[]): SeasonSeen {
  const answer = dynamics.compareChoices({ ...ask, choices: choicesAsked(choices) }, { every: 3 });
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  const { past, choices: outcomes, settling, learnt } = answer.value;
  return { past, outcomes, settling, learnt, problems: answer.problems };
}

it("[SE110] a reading that ended before its target is taken as it stands, and it is told", () => {
  const ended = JSON.stringify(casebook).replaceAll('"stop":"target-reached"', '"stop":"stopped-early"');
  const season = colonySeason(JSON.parse(ended), { caseId, colony: treated, today }) ?? expect.fail("no colony");
  const whole = of(treated);
  expect(season.counts.map(({ endedEarly }) => endedEarly)).toContain(true);
  expect(whole.counts.map(({ endedEarly }) => endedEarly)).not.toContain(true);
  expect(usedCounts(season).map(asCount)).toEqual(usedCounts(whole).map(asCount));
});

describe("from the casebook", () => {
  it("a colony brings its counts, its place, what was put in, and what stands in the way", () => {
    const season = of(treated);
    expect(season.counts.map(({ date, infested, examined }) => [date, infested, examined])).toEqual([
      ["2026-03-03", 17, 50],
      ["2026-08-04", 20, 50],
      ["2026-10-12", 5, 50],
    ]);
    expect(season.site.monthlyMeanCelsius).toHaveLength(12);
    expect(season.site.latitude).toBe(45.2);
    expect(season.site.flows).toHaveLength(2);
    expect(season.done).toEqual([{ kind: "menthol", from: "2026-08-08" }]);
    expect(season.planned).toEqual([]);
    expect(of(treated, "2026-08-07").planned).toEqual([{ kind: "menthol", from: "2026-08-08" }]);
    expect(of(treated, "2026-08-07").done).toEqual([]);
    expect(countsAfterDone(season).map(({ days }) => days)).toEqual([65]);
    expect(of("demonstration-wb-05").counts.map(({ isLimited }) => isLimited)).toEqual([true]);
  });

  it("counts of later days and of long ago are not its own", () => {
    expect(of(treated, "2026-08-05").counts).toHaveLength(2);
    expect(of(treated, "2027-11-01").counts.map(({ date }) => date)).toEqual(["2026-10-12"]);
    expect(colonySeason(casebook, { caseId, colony: "nobody", today })).toBeNull();
    expect(colonySeason(casebook, { caseId: "none", colony: treated, today })).toBeNull();
    expect(
      countedSeasons(casebook, caseId)
        .map(({ code }) => code)
        .slice(0, 2)
        .sort(),
    ).toEqual(["WB-03", "WB-07"]);
    expect(countedSeasons(casebook, "none")).toEqual([]);
  });

  it("counted colonies of open cases can be chosen from", () => {
    expect(countedInOpenCases(casebook, 30).map(({ caseCode, colonies }) => [caseCode, colonies.length])).toEqual([
      ["TV-26-014", 4],
    ]);
    expect(countedInOpenCases(casebook, 0)).toEqual([]);
  });

  it("what is intended is the plan, else the control decided on, else nothing", () => {
    expect(intended(of(treated, "2026-08-07"), { control: "menthol", today })).toHaveLength(1);
    expect(intended(of(treated), { control: "menthol", today })).toEqual([]);
    expect(intended(of(untreated), { control: "formic-acid", today })).toEqual([newAction("formic", today)]);
    expect(intended(of(untreated), { control: "amitraz", today })).toEqual([]);
    expect(seasonAddress("a b", "c")).toBe("/season?case=a%20b&colony=c");
  });
});

describe("the form", () => {
  it("holds the colony's own at first, and reads it back", () => {
    const ask = asked();
    expect(ask.start).toMatchObject({ date: "2026-03-02", infestedShare: 0.08, brood: "usual" });
    expect(ask.start.bees).toBeGreaterThan(8_000);
    expect(ask.start.bees).toBeLessThan(16_000);
    expect(ask.counts).toEqual(
      of(untreated).counts.map(({ date, infested, examined }) => ({ date, infested, examined })),
    );
    expect([ask.decideOn, ask.until, ask.line, ask.moreBees]).toEqual([today, "2027-03-31", 0.3, 50]);
  });

  it("ends with the winter to come, north and south, at least four months on", () => {
    expect(endOfWinter("2026-08-04", false)).toBe("2027-03-31");
    expect(endOfWinter("2026-02-01", false)).toBe("2027-03-31");
    expect(endOfWinter("2026-02-01", true)).toBe("2026-09-30");
  });

  it("says in words which line or month is missing", () => {
    const codes = (fields: Record<string, string>) =>
      readSeason({ ...seasonFields(null, today), ...fields }, null).problems.map(
        ({ code, field }) => `${code} ${field}`,
      );
    expect(codes({})).toEqual([]);
    expect(codes({ counts: "2026-11-01 3 50\n2026-11-31 3 50" })).toEqual(["season-count-line-unread counts"]);
    expect(codes({ counts: "2026-11-01: 3 of 50" })).toEqual([]);
    expect(codes({ counts: "2026-11-01 3" })).toEqual(["season-count-line-unread counts"]);
    expect(codes({ means: "-3 -2 2 8 14 18 21 20 16 10 4" })).toEqual(["season-means-incomplete means"]);
    expect(codes({ means: "-3, -2, 2, 8, 14, 18, 21, 20, 16, 10, 4, -1" })).toEqual([]);
    expect(codes({ bees: "20", share: "120", line: "x", moreBees: "1.5" })).toEqual([
      "field-out-of-range bees",
      "field-out-of-range share",
      "field-not-number line",
      "field-not-whole moreBees",
    ]);
  });
});

describe("the answer", () => {
  const ask = asked();
  const patty = [newAction("oil-patty", today)];
  const menthol = [newAction("menthol", today)];
  const seen = seenOf(ask, [patty, menthol]);
  const view = seasonView(ask, seen, { place: 0, kinds: ["oil-patty"] }) ?? expect.fail("no view");

  it("is a sentence of the share at the end, without and with the choice shown", () => {
    expect(view.says).toMatch(
      /^\*\*Without action about \d to \d of 10 bees infested on 31 March 2027;\*\* it could be \d to \d of 10 bees\. With patty 26 November to 9 February about \*\*\d to \d of 10 bees\*\*, could be \d to \d of 10 bees\.$/,
    );
    expect(seasonView(ask, seen, null)?.says).not.toContain("With patty");
    expect(seasonView(asked({}, of(treated)), seenOf(asked({}, of(treated)), []), null)?.says).toMatch(
      /^\*\*Without further action/,
    );
  });

  it("draws the course from the first day to the last, the choice from its day, each count with its interval", () => {
    expect(view.without.days.map(({ date }) => date)).toEqual([...new Set(view.without.days.map(({ date }) => date))]);
    expect([view.without.days[0]?.date, view.without.days.at(-1)?.date]).toEqual(["2026-03-02", "2027-03-31"]);
    expect(view.chosen?.days[0]?.date).toBe(today);
    // Clopper and Pearson, 6 of 50: 0.0453 to 0.2431, by halving on sums of binomial chances in another program.
    expect(view.counts[0]?.low).toBeCloseTo(0.0453, 4);
    expect(view.counts[0]?.high).toBeCloseTo(0.2431, 4);
    expect(view.label).toContain("6 of 50 on 3 March 2026");
  });

  it("sets choices beside each other in the order asked; what changes nothing is told so", () => {
    expect(view.rows.map(({ name }) => name)).toEqual([
      "without action",
      "patty 26 November to 9 February",
      "menthol from 26 November",
    ]);
    expect(view.rows[2]?.difference).toBe("hardly any difference");
    expect(view.rows[1]?.better).toBe("100 of 100 runs");
    expect(view.rows[0]?.difference).toBe("");
  });

  it("shows survival wide, and never beyond 0 and 10", () => {
    const ranges = view.rows.map(({ alive }) => alive.split(" to ").map(Number));
    for (const [low = -1, high = 11] of ranges) {
      expect(low).toBeGreaterThanOrEqual(0);
      expect(high).toBeLessThanOrEqual(10);
      expect(high - low).toBeGreaterThanOrEqual(2);
    }
    expect(view.survival).toContain("Weakly supported");
  });

  it("tells what would settle it and what more bees narrow; a stopped run tells what it has", () => {
    expect(view.tells).toHaveLength(2);
    expect(view.tells[1]).toMatch(/^Another 50 bees now would narrow .* from \d+ to \d+ of 100 bees/);
    const partial = seasonView(
      ask,
      { ...seen, outcomes: seen.outcomes.slice(0, 2), settling: null },
      { place: 1, kinds: ["menthol"] },
    );
    expect(partial?.rows).toHaveLength(2);
    expect(partial?.chosen).toBeNull();
    expect(seasonView(ask, { ...seen, outcomes: [] }, null)).toBeNull();
  });

  it("calls none the best of choices that end alike, or are told in the same words", () => {
    const one = newAction("oil-patty", "2026-12-01");
    const late = { ...ask, line: 0.1 };
    const twin = seenOf(late, [[one], [movedTo(one, addDays(one.from, 1))]]);
    const says = seasonView(late, twin, null)?.tells[0] ?? "";
    expect(says).toMatch(/^\*\*Not to be told apart:\*\* patty .* and patty .* end alike/);
    expect(says).toContain("only because it stands first in the list");
    const apart = seasonView(late, seenOf(late, [[one]]), null)?.tells[0] ?? "";
    expect(apart).toMatch(/^\*\*Settled:\*\* patty .* is best in \d+ of 100 runs/);
  });

  it("says when another count would narrow nothing that can be seen", () => {
    const nothing = seen.outcomes[0] ?? expect.fail("nothing");
    const narrowing = (widthAfter: number) => {
      const outcome = { ...nothing, moreBees: { ...nothing.moreBees, widthNow: 0.784, widthAfter } };
      return seasonView(ask, { ...seen, outcomes: [outcome] }, null)?.tells.at(-1);
    };
    expect(narrowing(0.781)).toBe(
      "Another 50 bees now would not narrow the forecast: in the mean over what the count could find, the 90 % range without action stays 78 of 100 bees wide.",
    );
    expect(narrowing(0.774)).toContain("from 78 to 77 of 100 bees");
  });

  it("has a table of every choice, week by week, to the last day", () => {
    const { columns, rows } = view.table;
    expect(rows.every((row) => row.length === columns.length)).toBe(true);
    expect(new Set(rows.map((row) => row.slice(0, 2).join())).size).toBe(rows.length);
    expect(rows.filter(([date]) => date === "2027-03-31")).toHaveLength(3);
    expect(rows.flat().every((cell) => typeof cell !== "number" || Number.isFinite(cell))).toBe(true);
    // Survival as wide as in words, and to no tenth of a per cent.
    const ends = rows.filter(([date]) => date === "2027-03-31").map((row) => row.slice(-2).map(Number));
    for (const [place, [low = -1, high = -1]] of ends.entries()) {
      expect([low, high].every(Number.isInteger)).toBe(true);
      expect(high - low).toBeGreaterThanOrEqual(10);
      const { q05, q95 } = seen.outcomes[place]?.at.at(-1)?.survival ?? expect.fail("no end");
      expect([low, high]).toEqual([Math.floor(100 * q05), Math.ceil(100 * q95)]);
    }
  });

  it("takes the weather year that the planner takes for the same place, with an assumed height where only means are known", () => {
    const state = casebook.cases[caseId] ?? expect.fail("no case");
    const place = siteOf(casebook, state) ?? expect.fail("no place");
    const year = seasonYear(ask) ?? expect.fail("no year");
    const noteOf = (action: dynamics.Action) => warmthNote(action, year, sentence);
    const weather = site.temperaturesBetween(place, { from: ask.start.date, to: ask.until });
    const means = new Map(weather.ok ? weather.value.days.map((each) => [each.date, each.meanCelsius] as const) : []);
    for (const { date, high } of year.days) expect(high).toBeCloseTo((means.get(date) ?? Number.NaN) + 6, 9);
    expect(year.isAssumed).toBe(true);
    expect(noteOf({ kind: "menthol", from: "2026-10-10" })).toContain("as assumed from the means");
  });

  it("lays warmth and nectar beneath, and says what the warmth means for an action", () => {
    const year = seasonYear(ask) ?? expect.fail("no year");
    const noteOf = (action: dynamics.Action) => warmthNote(action, year, sentence);
    expect(year.days.find(({ date }) => date >= "2026-07-15")?.isCool).toBe(false);
    expect(year.days.find(({ date }) => date >= "2027-01-15")?.isCool).toBe(true);
    expect(Math.max(...year.days.map(({ flow }) => flow))).toBeGreaterThan(0.9);
    expect(noteOf(menthol[0] as dynamics.Action)).toContain("menthol hardly leaves its crystals");
    expect(noteOf({ kind: "menthol", from: "2026-07-20" })).toBeNull();
    expect(noteOf(newAction("formic", today))).toMatch(/^Formic acid: 15 of 15 days with vapour, .* do nothing/);
    expect(noteOf({ kind: "formic", from: "2026-07-20" })).toBeNull();
    expect(seasonYear({ ...ask, until: "x" })).toBeNull();
  });
});

describe("choices", () => {
  it("are named by what they do, and moved whole", () => {
    const patty = newAction("oil-patty", today);
    const moved = movedTo(patty, "2027-01-01");
    expect(moved).toEqual({ kind: "oil-patty", from: "2027-01-01", to: "2027-03-17" });
    const apart = movedTo(newAction("brood-break", today), "2027-05-01");
    expect(apart).toEqual({ kind: "brood-break", from: "2027-05-01", to: "2027-05-21" });
    expect(keptChoices(choicesText([[apart]]))).toEqual([[apart]]);
    expect(choicesAsked([[apart]])[0]?.name).toBe("brood break 1 May to 21 May");
    expect(flagsOf(apart).map(({ date, isLast }) => [date, isLast])).toEqual([
      ["2027-05-01", false],
      ["2027-05-21", true],
    ]);
    const queen = newAction("requeen", today);
    expect(choicesAsked([[patty, queen]])[0]?.name).toBe(
      "patty 26 November to 9 February and new queen from 26 November",
    );
  });
});

describe("every kind of sight", () => {
  it("bees of which one trachea could be read come along by themselves, from the vial to the question", () => {
    const vial = Object.values(casebook.specimens).find(
      ({ label, readings }) =>
        label?.candidates[0].value.colony === untreated && Object.values(readings).some(({ finished }) => finished),
    );
    const [reading] = Object.values(vial?.readings ?? {});
    if (!vial || !reading) throw new Error("no reading");
    // Two infested bees and three clear ones of this vial had one trachea that could not be read.
    let [infested, clear] = [2, 3];
    const bees = Object.fromEntries(
      Object.entries(reading.bees).map(([bee, kept]) => {
        const { value } = kept.candidates[0];
        const hasMites = [value.left, value.right].some((side) => side?.startsWith("mites"));
        if (hasMites ? infested-- <= 0 : clear-- <= 0) return [bee, kept];
        const sides = value.left?.startsWith("mites") ? { right: "unreadable" } : { left: "unreadable" };
        return [bee, { ...kept, candidates: [{ ...kept.candidates[0], value: { ...value, ...sides } }] }];
      }),
    );
    const specimens = {
      ...casebook.specimens,
      [vial.id]: { ...vial, readings: { [reading.id]: { ...reading, bees } } },
    };
    const book = { ...casebook, specimens } as typeof casebook;
    const on = { caseId, colony: untreated, today };
    const [before, after] = [casebook, book].map((each) => colonySeason(each, on)?.counts ?? []);
    const changed = after?.find(({ oneSided }) => oneSided !== undefined) ?? expect.fail("none read on one side");
    const same = before?.find(({ date }) => date === changed.date) ?? expect.fail("no such count");
    expect(changed).toMatchObject({
      ...{ infested: same.infested - 2, examined: same.examined - 5 },
      oneSided: { infested: 2, examined: 5 },
    });
    const colony = colonySeason(book, on) ?? expect.fail("no colony");
    const read = readSeason(seasonFields(colony, today), colony);
    expect(read.ok && read.value.counts.find(({ date }) => date === changed.date)).toEqual(asCount(changed));
    const [night] = nightChunks(book, today).flatMap(({ colonies }) =>
      colonies.filter((each) => each.colony === untreated),
    );
    expect(night?.question?.counts).toContainEqual(asCount(changed));
    expect(seasonWords.countOn(changed)).toMatch(/^\d+ of \d+ and 2 of 5 with one trachea read on /);
  });

  it("a stop and frames are typed, a line each; what cannot be read is told at its line", () => {
    const counts = "2026-10-12 3 31 stop 3 50\n2026-10-14 4 of 40, one side 1 3";
    const sizes = "2026-10-12 8 bees\n2026-10-12 4.5 brood 4800";
    const ask = asked({ counts, sizes });
    expect(ask.counts).toEqual([
      { date: "2026-10-12", infested: 3, examined: 31, stop: { infested: 3, examined: 50 } },
      { date: "2026-10-14", infested: 4, examined: 40, oneSided: { infested: 1, examined: 3 } },
    ]);
    expect(ask.sizes).toEqual([
      { date: "2026-10-12", what: "bees", frames: 8 },
      { date: "2026-10-12", what: "brood", frames: 4.5, perFrame: 4800 },
    ]);
    expect(ask.counts.map(countLine).join("\n")).toBe(counts.replace("of ", "").replace(",", ""));
    // They reach the filter: the sizes draw the colony, and the note on common practice is the reasoning's own.
    const seen = seenOf(ask, []);
    expect(seen.problems.map(({ code }) => code)).toContain("season-frames-by-common-practice");
    expect(seenOf({ ...ask, sizes: [] }, []).outcomes[0]?.at).not.toEqual(seen.outcomes[0]?.at);
    for (const [field, typed] of [
      ["counts", "2026-10-12 3 31 stop 3"],
      ["counts", "2026-10-12 3 31 one side 1 3 one side 1 3"],
      ["counts", "2026-10-12 3 31 until 3 50"],
      ["sizes", "2026-10-12 8"],
      ["sizes", "2026-10-12 8 frames"],
      ["sizes", "2026-10-12 8 bees many"],
    ] as const) {
      const read = readSeason({ ...seasonFields(of(untreated), today), [field]: typed }, of(untreated));
      expect(read.ok ? typed : read.problems.map((each) => each.field)).toEqual([field]);
    }
  });
});

describe("what was put in before the first day", () => {
  const season = of(untreated);
  const asked = (done: readonly dynamics.Action[], start?: string) => {
    const colony = { ...season, done };
    const fields = seasonFields(colony, today);
    const read = readSeason(start === undefined ? fields : { ...fields, start }, colony);
    return read.ok ? read.value : expect.fail("unfit");
  };

  it("of a patty the days from the first on are in the course, in Season and at night", () => {
    const patty = { kind: "oil-patty", from: "2026-02-20", to: "2026-11-10" } as const;
    const { start, actions } = asked([patty]);
    expect([start.date, actions]).toEqual(["2026-03-02", [{ ...patty, from: "2026-03-02" }]]);
    expect(dynamics.readyRun(asked([patty])).ok).toBe(true);
    expect(doneFrom([patty], "2026-03-02")).toMatchObject({ leftOut: [], over: [] });
    expect(asked([{ ...patty, to: "2026-03-01" }]).actions).toEqual([]);
  });

  it("a vapour that still acts then begins the course; cut by a later first day it is left out, and told", () => {
    const menthol = { kind: "menthol", from: "2026-02-20" } as const;
    expect(asked([menthol])).toMatchObject({ start: { date: "2026-02-20" }, actions: [menthol] });
    expect(asked([menthol], "2026-02-21").actions).toEqual([]);
    expect(doneFrom([menthol], "2026-02-21")).toEqual({ actions: [], leftOut: [menthol], over: [] });
    // On its own first day it is whole, and after its last it is over.
    expect(doneFrom([menthol], "2026-02-20")).toEqual({ actions: [menthol], leftOut: [], over: [] });
    expect(doneFrom([menthol], "2026-03-20")).toEqual({ actions: [], leftOut: [], over: [menthol] });
    expect(doneFrom([menthol], "2026-08-01")).toEqual({ actions: [], leftOut: [], over: [] });
  });
});

describe("the forecast of a night", () => {
  const on = nightChunks(casebook, today, 1).find(({ colonies }) => colonies[0]?.colony === untreated);
  const chunk = on ?? expect.fail("not planned");

  it("is that of Season without a choice, told with the records' instant; nothing else is told as last night's", async () => {
    const [found] = (await reckonNightChunk(chunk, today, (question) => dynamics.colonyForecast(question))) ?? [];
    const night = found && isForecast(found) ? found : expect.fail("not reckoned");
    const sentence = () => "Two patties meet.";
    const kept = keptNights({
      forecasts: [{ ...night, night: today, stoodAt: "2026-11-19T02:03:00.000Z", position: 9 }],
    });
    const told = lastNight(kept, { caseId, colony: untreated, today }, sentence);
    expect(told?.says).toMatch(
      /^Forecast of last night, as the records stood on 19 November 2026 at 02:03 UTC: without action about \d to \d of 10 bees infested on 31 March 2027, could be \d to \d of 10 bees\.$/,
    );
    expect(lastNight(kept, { caseId, colony: untreated, today: "2026-11-25" }, sentence)?.says).toContain(
      "Forecast of the night of 19 November 2026, as the records",
    );
    expect(told?.short).toMatch(/^About \d to \d of 10 bees infested on 31 March 2027, could be/);
    expect(oneNight(kept, today)).toBe(
      "Forecast of last night, as the records stood on 19 November 2026 at 02:03 UTC.",
    );
    const [one = expect.fail("none")] = kept;
    expect(oneNight([one, { ...one, stoodAt: "2026-11-18T02:03:00.000Z" }], today)).toBeNull();
    expect(oneNight([], today)).toBeNull();
    expect(lastNight(kept, { caseId, colony: treated, today }, sentence)).toBeNull();
    const problems = [problem("season-actions-overlap", "blocked", "actions")];
    const { caseId: own, colony, night: on, stoodAt } = one;
    const missed = keptNights({ forecasts: [{ ...{ caseId: own, colony, night: on, stoodAt }, problems }] });
    expect(lastNight(missed, { caseId, colony: untreated, today }, sentence)).toEqual({
      short: "Could not be reckoned. Two patties meet.",
      says: "Forecast of last night, as the records stood on 19 November 2026 at 02:03 UTC: it could not be reckoned. Two patties meet.",
    });
    expect(keptNights(null)).toEqual([]);
    expect(keptNights({ forecasts: [{ night: 3 }, null] })).toEqual([]);
    // The page asks with another seed: the same middle to a few of its own Monte Carlo errors.
    const page = seenOf({ ...asked(), draws: 1000 }, []).outcomes[0]?.at.at(-1)?.infestedShare.q50 ?? 0;
    expect(Math.abs((night.days.at(-1)?.infestedShare.q50 ?? 1) - page)).toBeLessThan(0.04);
  });
});

describe("uniting", () => {
  const other = { caseId, colony: untreated, today };
  const drawn = newAction("unite", today) as dynamics.Uniting;
  const typed: dynamics.Uniting = {
    ...drawn,
    donor: { ...drawn.donor, start: { ...drawn.donor.start, bees: 9000, infestedShare: 0.1 } },
  };

  it("has nothing in it until bees and mites are typed, and is not reckoned before", () => {
    expect(drawn.donor.start).toMatchObject({ date: "2026-11-25", bees: Number.NaN, infestedShare: Number.NaN });
    const formic = [newAction("formic", today)];
    expect(wholeChoices([[drawn], formic], 1)).toEqual({ asked: [formic], shown: 0 });
    expect(wholeChoices([[drawn], formic], 0)).toEqual({ asked: [formic], shown: null });
    expect(wholeChoices([[typed], formic], 0)).toEqual({ asked: [[typed], formic], shown: 0 });
    expect(keptChoices(choicesText([[drawn], [typed]]))).toEqual([[drawn], [typed]]);
    expect(keptChoices('[[{"kind":"unite","from":"2026-11-26"}]]')).toBeNull();
  });

  it("is told with its bees, moved with the day on which it is told of, and reckoned", () => {
    expect(choicesAsked([[typed], [drawn]]).map(({ name }) => name)).toEqual([
      "a colony of 9,000 bees united on 26 November",
      "another colony united on 26 November",
    ]);
    const moved = movedTo(typed, "2026-12-10") as dynamics.Uniting;
    expect(moved.donor.start.date).toBe("2026-12-09");
    const ask = asked();
    const view = seasonView(ask, seenOf(ask, [[typed]]), { place: 0, kinds: ["unite"] });
    expect(view?.says).toMatch(/ With a colony of 9,000 bees united on 26 November about \*\*/);
    expect(view?.rows).toHaveLength(2);
    const year = seasonYear(ask) ?? expect.fail("no year");
    const noteOf = (action: dynamics.Action) => warmthNote(action, year, sentence);
    expect(noteOf({ ...typed, from: "2027-01-15" })).toContain("a cluster is not opened");
    expect(noteOf({ ...typed, from: "2026-08-15" })).toBeNull();
  });

  it("offers the other counted colonies of the case with their counts and what was put in; their bees are to be typed", () => {
    const offered = donorsOf(casebook, other);
    const found = offered.find(({ id }) => id === treated) ?? expect.fail("not offered");
    expect(offered.map(({ id }) => id)).not.toContain(untreated);
    expect(found.donor.counts).toEqual([{ date: "2026-10-12", infested: 5, examined: 50 }]);
    expect(found.donor.start.date).toBe("2026-10-11");
    expect(found.donor.actions).toEqual([]);
    expect(found.donor.start.bees).toBeNaN();
    const chosen = { ...drawn, donor: found.donor };
    expect(donorChosen(chosen, offered)?.code).toBe("WB-07");
    expect(donorChosen(typed, offered)).toBeNull();
    // A counted colony keeps its days when the uniting is moved.
    expect((movedTo(chosen, "2026-12-10") as dynamics.Uniting).donor).toEqual(found.donor);
    const whole = { ...found.donor, start: { ...found.donor.start, bees: 12_000 } };
    const united = { ...chosen, donor: whole };
    expect(choicesAsked([[united]])[0]?.name).toBe("a colony of 12,000 bees on 11 October united on 26 November");
    expect(seenOf(asked(), [[united]]).outcomes).toHaveLength(2);
    // What was put in after that count is in its course.
    const early = donorsOf(casebook, { ...other, today: "2026-08-20" }).find(({ id }) => id === treated);
    expect(early?.donor.actions).toEqual([{ kind: "menthol", from: "2026-08-08" }]);
  });
});

describe("choices that would read alike", () => {
  const donor = (infestedShare: number, more: Partial<dynamics.Donor> = {}): dynamics.Action => ({
    ...{ kind: "unite", from: "2026-11-26" },
    donor: { start: { date: "2026-11-25", bees: 12_000, infestedShare, brood: "usual" }, ...more },
  });
  const queen = (susceptibility: number): dynamics.Action => ({ kind: "requeen", from: "2026-11-26", susceptibility });

  it("are told with what tells them apart: stock, year, the other colony's mites; else numbered", () => {
    expect(choiceNames([[queen(0.7)], [queen(1.25)]])).toEqual([
      "new queen of susceptibility 0.7 from 26 November 2026",
      "new queen of susceptibility 1.25 from 26 November 2026",
    ]);
    const years = (["2026-09-01", "2027-09-01"] as const).map((from) => [{ kind: "menthol", from } as const]);
    expect(choiceNames(years)).toEqual(["menthol from 1 September 2026", "menthol from 1 September 2027"]);
    expect(choiceNames([[donor(0.02)], [donor(0.3)]])).toEqual([
      "a colony of 12,000 bees, 2 of 100 infested, united on 26 November 2026",
      "a colony of 12,000 bees, 30 of 100 infested, united on 26 November 2026",
    ]);
    const counts = [{ date: "2026-11-25", infested: 5, examined: 50 }];
    expect(new Set(choiceNames([[donor(0.08)], [donor(0.08, { counts })]])).size).toBe(2);
    expect(choiceNames([[queen(1)], [queen(1)], [donor(0.1)]])).toEqual([
      "new queen of susceptibility 1 from 26 November 2026",
      "new queen of susceptibility 1 from 26 November 2026 (2)",
      "a colony of 12,000 bees united on 26 November",
    ]);
  });

  it("can be asked", () => {
    const seen = seenOf(asked(), [[queen(0.7)], [queen(1.25)], [queen(1.25)]]);
    expect(seen.outcomes).toHaveLength(4);
  });
});

describe("what cannot be reckoned here", () => {
  it("asks nobody for more draws", () => {
    const few = problem("season-particles-few", "warned", "draws", { slots: { date: "2026-10-12", worth: 31 } });
    const thin = problem("season-draws-thin", "warned", "draws", { slots: { bees: 500, worth: 40 } });
    for (const each of [few, thin]) expect(noteHere(each)).toMatch(/rough\.$/);
    expect(noteHere(problem("season-site-invented", "noted", null))).toBeNull();
  });
});

describe("a second choice of one kind", () => {
  it("begins two weeks after the last, so that no two are the same", () => {
    const first = newAction("menthol", today);
    const other = newAction("formic", today, [[first]]);
    const second = newAction("menthol", today, [[first], [other]]);
    expect([first.from, other.from, second.from]).toEqual(["2026-11-26", "2026-11-26", "2026-12-10"]);
  });
});

describe("choices kept while one is away", () => {
  it("come back as they were; what cannot be read is not there", () => {
    const choices = [[newAction("menthol", today)], [newAction("oil-patty", today), newAction("requeen", today)]];
    expect(keptChoices(choicesText(choices))).toEqual(choices);
    expect(keptChoices("[]")).toEqual([]);
    for (const text of [
      undefined,
      "",
      "{}",
      "[[]]",
      '[[{"kind":"menthol","from":"soon"}]]',
      '[[{"kind":"x","from":"2026-01-01"}]]',
    ])
      expect(keptChoices(text)).toBeNull();
  });
});

describe("how far to trust it", () => {
  it("tells every published figure with how it was met, and the measured ranges", () => {
    const { checks, ranges } = trustView();
    expect(checks.rows).toHaveLength(dynamics.checkIds.length);
    for (const row of [...checks.rows, ...ranges.rows]) expect(row.every((cell) => cell !== "")).toBe(true);
    expect(checks.rows.filter((row) => row[3] === "predicted").map(([what]) => what)).toEqual([
      "Fewer infested of 100, about two months after",
    ]);
    expect(ranges.rows.map(([bees]) => bees)).toEqual([
      "none; in the last column the start’s guess, 8 of 100",
      ...["50", "200"],
    ]);
  });
});
