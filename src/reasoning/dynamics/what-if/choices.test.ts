/** Choices beside each other, beside the forecast of each alone, and beside counts simulated one by one. */
import { describe, expect, it } from "vitest";
import { randomStream } from "../../../numerics/index.ts";
import { addDays } from "../../../units/index.ts";
import type { Action } from "../actions.ts";
import { assumedError, colonyForecast, rangeOf } from "../filter/forecast.ts";
import { cutHere, reckonHere } from "../filter/steps.ts";
import { fullLayout, shortestLayout } from "../layout.ts";
import { logChanceOfCount } from "../observe.ts";
import { specified } from "../parameters.ts";
import { benchColony } from "../runs-for-tests.ts";
import { branchSteps, trunkSteps } from "./branch.ts";
import { type ChoiceOutcome, compareChoices } from "./choices.ts";
import { narrowingBy } from "./more-bees.ts";
import { type ChoicesQuestion, noAction } from "./question.ts";
import { alikeAtEnd, bestChoices, chancesOfBest, heldAfter } from "./settling.ts";
import { usualBees } from "./usual-bees.ts";
import { chancesOfCounts, orderOf, weighedRange } from "./weigh-counts.ts";
import { widened } from "./widen.ts";

/** A colony counted once in August; own numbers. */
const question: ChoicesQuestion = {
  site: {},
  start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08, brood: "usual" },
  actions: [],
  counts: [{ date: "2026-08-20", infested: 4, examined: 50 }],
  decideOn: "2026-08-25",
  until: "2027-01-15",
  draws: 150,
  seed: 3,
  choices: [],
};
const menthol = (from: string): readonly Action[] => [{ kind: "menthol", from }];
const nothing = { name: "nothing either", actions: [] };
const early = { name: "menthol early", actions: menthol("2026-09-01") };
const late = { name: "menthol late", actions: menthol("2026-09-20") };
const queen = { name: "new queen", actions: [{ kind: "requeen", from: "2026-09-01", susceptibility: 0.7 }] as const };

const united = {
  name: "uniting",
  actions: [
    {
      kind: "unite",
      from: "2026-09-05",
      donor: { start: { date: "2026-08-20", bees: 8000, infestedShare: 0.1, brood: "usual" } },
    },
  ] as const,
};

function answerOf(more: Partial<ChoicesQuestion> = {}, every: number | null = null) {
  const answer = compareChoices({ ...question, ...more }, { every });
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer;
}
const outcomes = (more: Partial<ChoicesQuestion> = {}, every: number | null = null) =>
  answerOf(more, every).value.choices;
const named = (all: readonly ChoiceOutcome[], name: string): ChoiceOutcome =>
  all.find((each) => each.name === name) ?? expect.fail(`no ${name}`);
const codes = (more: Partial<ChoicesQuestion>) =>
  compareChoices({ ...question, ...more }, { every: null }).problems.map(({ code, field }) => `${code} ${field}`);

describe("choices on the same draws", () => {
  it("[SE66] a choice without actions differs by exactly nothing, and so does one after the end, which is told", () => {
    const after = { name: "too late", actions: menthol("2027-02-01") };
    const { value, problems } = answerOf({ choices: [nothing, after], dates: ["2026-11-01"] });
    for (const { difference, at } of value.choices.slice(1)) {
      expect(at).toEqual(value.choices[0]?.at);
      for (const { infestedShare, bees, survival } of difference ?? expect.fail("no difference"))
        for (const each of [infestedShare, bees, survival])
          expect(each).toEqual({ q05: 0, q25: 0, q50: 0, q75: 0, q95: 0, mean: 0, better: 0, alike: 1 });
    }
    expect(value.choices[0]?.difference).toBeNull();
    expect(problems.map(({ code, field }) => `${code} ${field}`)).toContain(
      "season-action-after-end choices[1].actions[0].from",
    );
  });

  it("[SE67] the same question has the same bytes, and another list or order changes no other choice", () => {
    const alone = outcomes({ choices: [early] });
    expect(outcomes({ choices: [early] })).toEqual(alone);
    expect(outcomes({ choices: [early], seed: 4 })).not.toEqual(alone);
    const many = outcomes({ choices: [queen, late, early] });
    expect(named(many, early.name)).toEqual(named(alone, early.name));
    expect(many[0]).toEqual(alone[0]);
    expect(many.map(({ name }) => name)).toEqual([noAction, "new queen", "menthol late", "menthol early"]);
  });

  it("[SE67] what is recalled from an earlier comparison changes nothing but the time", () => {
    const kept = new Map<string, unknown>();
    const made: string[] = [];
    const noted = {
      get: (key: string) => kept.get(key),
      set: (key: string, value: unknown) => {
        made.push(key);
        kept.set(key, value);
      },
    };
    const ask = (more: Partial<ChoicesQuestion>) =>
      compareChoices({ ...question, line: 0.2, ...more }, { every: 7 }, { kept: noted });
    ask({ choices: [early] });
    expect(made).toHaveLength(3);
    const again = { choices: [late, early], moreBees: 20, line: 0.3 };
    expect(ask(again)).toEqual(compareChoices({ ...question, ...again }, { every: 7 }));
    expect(made).toHaveLength(4);
    expect(ask({ choices: [early], seed: 9 })).toEqual(
      compareChoices({ ...question, line: 0.2, choices: [early], seed: 9 }, { every: 7 }),
    );
    expect(made).toHaveLength(7);
  });

  it("[SE68] each choice is the forecast with its actions alone, to the byte", () => {
    const all = outcomes({ choices: [early, late], dates: ["2026-10-10"] });
    for (const { name, actions } of [{ name: noAction, actions: [] }, early, late]) {
      const alone = colonyForecast({ ...question, actions });
      if (!alone.ok) throw new Error("no forecast");
      const days = alone.value.days.filter(({ date }) => date === "2026-10-10" || date === "2027-01-15");
      expect(named(all, name).at).toEqual(days);
    }
  });

  it("[SE68] colonies in few ages go on in all 64 with the same numbers", () => {
    const of = { bees: 18_000, infestedShare: 0.2 };
    const few = benchColony({ ...of, layout: shortestLayout(specified) });
    const all = benchColony(of);
    few.step(200);
    all.step(200);
    const record = widened(few.state, few.model.layout, fullLayout);
    // Later ages hold no bees of their own in the wide record: bees by kind and what is counted must agree.
    const sum = (state: Float64Array, from: number, to: number) =>
      state.slice(from, to).reduce((total, each) => total + each, 0);
    for (const [from, to] of [
      [fullLayout.brood, fullLayout.susceptibility],
      [fullLayout.summer, fullLayout.winter],
      [fullLayout.winter, fullLayout.length],
    ] as const)
      expect(sum(record, from, to) / sum(all.state, from, to)).toBeCloseTo(1, 9);
    all.state.set(record);
    all.step(100, 505);
    few.step(100, 505);
    expect(all.see().infestedShare / few.see().infestedShare).toBeCloseTo(1, 9);
    expect(all.see().bees / few.see().bees).toBeCloseTo(1, 9);
  });

  it("[SE68] a new queen's course from the wide record is nearly that of all ages from the start", () => {
    const alone = colonyForecast({ ...question, actions: queen.actions });
    const share = named(outcomes({ choices: [queen] }), queen.name).at.at(-1)?.infestedShare.q50 ?? Number.NaN;
    // Starts are brought to their share age by age, and the ages differ: mostly a few millionths, and up to 8e-5 where
    // that puts another draw on the border of the comb: own, eight seeds.
    expect(share / (alone.ok ? (alone.value.days.at(-1)?.infestedShare.q50 ?? 0) : 0)).toBeCloseTo(1, 3);
  });

  it("[SE69] the past is that of the forecast", () => {
    const { past, counts } = answerOf({ choices: [early] }, 1).value;
    const alone = colonyForecast({ ...question, until: "2026-08-25" });
    expect(past).toEqual(alone.ok ? alone.value.days : null);
    expect(counts).toEqual(alone.ok ? alone.value.counts : null);
  });

  it("[SE69] some of the mornings may be told: the same ones, the first and the last among them", () => {
    const whole = answerOf({ choices: [early] }, 1).value;
    const some = answerOf({ choices: [early] }, 10).value;
    expect(some.past).toEqual(whole.past.filter((_, morning) => morning % 10 === 0 || morning === 24));
    for (const [place, { days, at }] of some.choices.entries()) {
      expect(days).toEqual(whole.choices[place]?.days.filter((_, morning) => morning % 10 === 0 || morning === 143));
      expect(at).toEqual(whole.choices[place]?.at);
    }
  });

  it("[SE73] what acts helps, the earlier the more; what is done anyway helps every choice", () => {
    const all = outcomes({ choices: [early, late] });
    const end = (of: readonly ChoiceOutcome[], name: string) =>
      named(of, name).at.at(-1)?.infestedShare.q50 ?? Number.NaN;
    expect(end(all, early.name)).toBeLessThan(end(all, late.name));
    expect(end(all, late.name)).toBeLessThan(end(all, noAction));
    expect(named(all, early.name).difference?.at(-1)?.infestedShare.better).toBe(1);
    const patty = { kind: "oil-patty", from: "2026-08-10", to: "2026-12-01" } as const;
    const besides = outcomes({ actions: [patty], choices: [early] });
    expect(end(besides, noAction)).toBeLessThan(end(all, noAction));
    expect(end(besides, early.name)).toBeLessThan(end(all, early.name));
  });

  it("[SE76] each choice is told as soon as it is reckoned, the past before them", () => {
    const told: string[] = [];
    let share = 0;
    const answer = compareChoices(
      { ...question, choices: [early] },
      { every: 1 },
      {
        past: (past) => told.push(`past ${past.length}`),
        choice: ({ name, days }) => told.push(`${name} ${days.length}`),
        progress: (now) => {
          expect(now).toBeGreaterThanOrEqual(share);
          share = now;
        },
      },
    );
    expect(answer.ok).toBe(true);
    expect(told).toEqual(["past 25", "no action 144", "menthol early 144"]);
    expect(share).toBe(1);
  });
});

describe("what else is known of the colony", () => {
  it("[SE68] sizes and varroa are in every choice as they are in the forecast", () => {
    for (const more of [
      { sizes: [{ date: "2026-08-10", what: "bees", frames: 9, perFrame: 2000, scatter: 0.1 }] as const },
      { varroa: { mitesPer100: 3 } },
    ]) {
      const last = (actions: readonly Action[]) => {
        const alone = colonyForecast({ ...question, ...more, actions });
        return alone.ok ? alone.value.days.at(-1) : expect.fail(JSON.stringify(alone.problems));
      };
      const [without, choice] = outcomes({ ...more, choices: [early] });
      expect(without?.at[0]).toEqual(last([]));
      expect(choice?.at[0]).toEqual(last(early.actions));
      expect(without?.at[0]).not.toEqual(outcomes({ choices: [early] })[0]?.at[0]);
    }
    const apart = {
      name: "brood break",
      actions: [{ kind: "brood-break", from: "2026-09-01", to: "2026-09-21" }],
    } as const;
    const [nothingDone, broken] = outcomes({ choices: [apart] });
    const forecast = colonyForecast({ ...question, actions: apart.actions });
    expect(broken?.at[0]).toEqual(forecast.ok ? forecast.value.days.at(-1) : null);
    expect(broken?.at[0]?.bees.q50).toBeLessThan(nothingDone?.at[0]?.bees.q50 ?? 0);
    const queens = { name: "new queen and uniting", actions: [...queen.actions, ...united.actions] };
    const lastOf = (actions: readonly Action[]) => {
      const alone = colonyForecast({ ...question, actions });
      return alone.ok ? alone.value.days.at(-1) : expect.fail(JSON.stringify(alone.problems));
    };
    expect(outcomes({ choices: [united] })[1]?.at[0]).toEqual(lastOf(united.actions));
    // From the wider record of a new queen: nearly, as above.
    const bees = outcomes({ choices: [queens] })[1]?.at[0]?.bees.q50 ?? Number.NaN;
    expect(bees / (lastOf(queens.actions)?.bees.q50 ?? Number.NaN)).toBeCloseTo(1, 3);
    const late = [{ date: "2026-09-10", what: "bees", frames: 9 }] as const;
    expect(codes({ sizes: late, choices: [early] })).toContain("season-size-outside sizes[0].date");
  });
});

describe("what counts teach of the contact rate", () => {
  it("[SE78] is its spread before and after; without counts nothing, with a few counts of shares little", () => {
    const learnt = (counts: ChoicesQuestion["counts"]) =>
      answerOf({ counts, draws: 600, until: "2026-11-01", decideOn: "2026-10-20" }).value.learnt;
    const none = learnt([]);
    expect(none.contactBefore).toBe(0.15);
    // Six hundred normal draws: their deviation is off by 0.15 / √1,200 in one of three.
    expect(Math.abs(none.contactAfter - 0.15)).toBeLessThan(4 * (0.15 / Math.sqrt(1200)));
    const some = learnt([
      { date: "2026-09-01", infested: 4, examined: 50 },
      { date: "2026-10-15", infested: 6, examined: 50 },
    ]);
    expect(some.contactAfter).toBeLessThan(none.contactAfter * 1.1);
    expect(some.contactAfter).toBeGreaterThan(none.contactAfter * 0.6);
  });
});

describe("a further count", () => {
  const shares = Float64Array.of(0, 1e-9, 0.004, 0.1, 0.5, 0.93, 1);

  it("[SE70] has the chance of each number that could be found, all together 1", () => {
    for (const error of [assumedError, { sensitivity: 1, specificity: 1, overdispersion: 1e-4 }])
      for (const examined of [0, 1, 50, 300]) {
        const chances = chancesOfCounts(shares, examined, error);
        shares.forEach((share, each) => {
          let all = 0;
          for (let infested = 0; infested <= examined; infested++) {
            const chance = chances[each * (examined + 1) + infested] as number;
            const other = Math.exp(logChanceOfCount({ infested, examined }, share, error));
            // Sums of some hundred logarithms of size up to 15: 300 · 15 · 2^−53, and room.
            expect(Math.abs(chance - other)).toBeLessThanOrEqual(1e-11 * Math.max(other, 1e-30) + 1e-14);
            all += chance;
          }
          expect(all).toBeCloseTo(1, 10);
        });
      }
  });

  it("[SE70] equal weights give the ranges of a forecast; a weight stands for so many alike", () => {
    const values = Float64Array.from({ length: 157 }, (_, each) => (each * 71) % 157);
    const order = orderOf(values);
    const { q05, q25, q50, q75, q95 } = rangeOf(values.slice().sort());
    const found = weighedRange(values, order, new Float64Array(157).fill(0.3));
    for (const [one, other] of Object.values(found).map((each, at) => [each, [q05, q25, q50, q75, q95][at]] as const))
      expect(one).toBeCloseTo(other ?? Number.NaN, 9);
    const weights = Float64Array.from(values, (value) => (value === 80 ? 1 : 0));
    expect(Object.values(weighedRange(values, order, weights))).toEqual([80, 80, 80, 80, 80]);
    expect(() => weighedRange(values, order, new Float64Array(157))).toThrow("weights");
  });

  it("[SE71] never widens the spread in the mean, more bees less; no bees and a blind eye change nothing", () => {
    const stream = randomStream({ seed: 8, stream: 0 });
    for (let round = 0; round < 6; round++) {
      const now = Float64Array.from({ length: 200 }, () => stream.next() ** (1 + round));
      const end = now.map((share) => Math.min(1, share * (0.5 + stream.next())));
      const none = narrowingBy(now, end, 0, assumedError);
      expect(none.widthAfter).toBeCloseTo(none.widthNow, 12);
      expect(none.deviationAfter).toBeCloseTo(none.deviationNow, 12);
      expect(none.effectiveShare).toBeCloseTo(1, 12);
      let before = none;
      for (const bees of [1, 10, 50, 200]) {
        const after = narrowingBy(now, end, bees, assumedError);
        expect(after.deviationAfter).toBeLessThanOrEqual(before.deviationAfter + 1e-12);
        expect(after.widthAfter).toBeLessThanOrEqual(before.widthAfter + 1e-12);
        before = after;
      }
      const blind = narrowingBy(now, end, 50, { ...assumedError, sensitivity: 0.4, specificity: 0.6 });
      expect(blind.deviationAfter).toBeCloseTo(blind.deviationNow, 9);
    }
  });

  it("[SE71] narrows the forecast of a colony, for every choice, and more bees never widen it", () => {
    const width = (moreBees: number) =>
      outcomes({ choices: [late], moreBees }).map(
        (each) => [each.moreBees.widthNow, each.moreBees.widthAfter] as const,
      );
    const rows = [10, 50, 200].map(width);
    for (const choice of [0, 1]) {
      const [ten, fifty, twoHundred] = rows.map((row) => row[choice]?.[1] ?? Number.NaN);
      expect(ten).toBeLessThan(rows[0]?.[choice]?.[0] ?? 0);
      expect(fifty).toBeLessThanOrEqual(ten ?? 0);
      expect(twoHundred).toBeLessThanOrEqual(fifty ?? 0);
    }
  });

  it("[SE72] the best choice is the first that is good enough, else the lowest", () => {
    const ends = [
      Float64Array.of(0.1, 0.4, 0.4, 0.4, 0.3),
      Float64Array.of(0.05, 0.2, 0.3, 0.4, 0.3),
      Float64Array.of(0, 0.1, 0.25, 0.4, 0.35),
    ];
    expect([...bestChoices(ends, 0.2)]).toEqual([0, 1, 2, 0, 0]);
    expect(chancesOfBest(bestChoices(ends, 0.2), 3)).toEqual([0.6, 0.2, 0.2]);
    // A third of a bee in 100 lower is no reason to do more.
    expect([...bestChoices([Float64Array.of(0.4, 0.4), Float64Array.of(0.397, 0.39)], 0.2)]).toEqual([0, 1]);
  });

  it("[SE72] choices that the draws cannot tell apart are named, those they can are not", () => {
    const stream = randomStream({ seed: 4, stream: 0 });
    const draw = () => Float64Array.from({ length: 400 }, () => 0.2 + 0.4 * stream.next());
    const one = draw();
    const other = draw();
    const hardly = one.map((share) => share + 0.004 * (stream.next() - 0.5));
    const lower = one.map((share) => share * 0.8);
    // Ends of their own with one distribution: their mean differs by less than chance alone makes.
    expect(alikeAtEnd([one, other, hardly, lower], 0)).toEqual([1, 2]);
    expect(alikeAtEnd([one, other, hardly, lower], 3)).toEqual([]);
  });

  it("[SE72] an action that comes too late is not called best beside doing nothing", () => {
    const cold = { name: "menthol in the cold", actions: menthol("2026-11-25") };
    const { settling } = answerOf({ choices: [cold, early], line: 0, until: "2026-12-20" }).value;
    expect(settling?.best[1]).toEqual({ name: cold.name, chance: 0 });
    expect(settling?.alike).toEqual([]);
    const alone = answerOf({ choices: [cold], line: 0, until: "2026-12-20" }).value.settling;
    expect(alone?.best[0]?.chance).toBe(1);
    expect(alone?.alike).toEqual([cold.name]);
  });

  it("[SE72] decisions that stand: as simulated count by count, never fewer for more bees, from the likeliest to all", () => {
    const stream = randomStream({ seed: 21, stream: 0 });
    const now = Float64Array.from({ length: 120 }, () => stream.next() ** 2);
    const best = bestChoices([now.map((share) => share * 1.5), now.map((share) => share * 0.3)], 0.3);
    const error = { sensitivity: 0.95, specificity: 0.99, overdispersion: 0.001 };
    const held = (bees: number) => heldAfter(now, best, { choices: 2, bees, error });
    expect(held(0)).toBeCloseTo(Math.max(...chancesOfBest(best, 2)), 12);
    const row = [0, 1, 5, 20, 60, 250].map(held);
    expect(row).toEqual([...row].sort((one, other) => one - other));
    expect(row.at(-1)).toBeLessThanOrEqual(1 + 1e-12);
    expect(row.at(-1)).toBeGreaterThan(0.95);
    // One by one: a draw is true, it is counted, the likeliest choice is taken, and the truth says whether it stands.
    const bees = 20;
    const chances = chancesOfCounts(now, bees, error);
    const rounds = 20_000;
    let stood = 0;
    for (let round = 0; round < rounds; round++) {
      const truth = Math.floor(stream.next() * 120);
      let left = stream.next();
      let found = 0;
      for (; found < bees; found++) {
        left -= chances[truth * (bees + 1) + found] as number;
        if (left < 0) break;
      }
      const weight = [0, 0];
      best.forEach((choice, each) => {
        weight[choice] = (weight[choice] as number) + (chances[each * (bees + 1) + found] as number);
      });
      const taken = (weight[1] as number) > (weight[0] as number) ? 1 : 0;
      if (taken === best[truth]) stood++;
    }
    const p = held(bees);
    expect(Math.abs(stood / rounds - p)).toBeLessThan(4 * Math.sqrt((p * (1 - p)) / rounds));
  });

  it("[SE72] the first day that settles does, and no day before it", () => {
    const asked = { ...question, choices: [early], line: 0.4, sure: 0.8, moreBees: 100, until: "2027-03-31" };
    const { settling } = answerOf(asked).value;
    const earliest = settling?.earliest ?? expect.fail("never settled");
    expect(settling?.isSettled).toBe(false);
    const all = new Set(Array.from({ length: 219 }, (_, each) => addDays("2026-08-25", each)));
    const decide = { decideOn: "2026-08-25", every: null };
    const trunk = reckonHere(trunkSteps(asked, { ...decide, span: [0, 1] }, cutHere(asked)));
    if (!trunk.ok) throw new Error("no trunk");
    const rowsOf = (actions: readonly Action[]) => {
      const how = { keep: all, every: null, span: [0, 1] } as const;
      const branch = reckonHere(branchSteps(trunk.value, actions, how, cutHere(asked)));
      return (day: string) => (branch.ok ? branch.value.kept.get(day)?.infestedShare : null) ?? expect.fail(day);
    };
    const [without, acting] = [rowsOf([]), rowsOf(early.actions)];
    const best = bestChoices([without("2027-03-31"), acting("2027-03-31")], 0.4);
    const settles = (day: string) =>
      heldAfter(without(day), best, { choices: 2, bees: 100, error: assumedError }) >= 0.8;
    expect(earliest > "2026-08-25").toBe(true);
    expect([...all].find(settles)).toBe(earliest);
    expect(settling?.days[0]?.isInTime).toBe(true);
    expect(settling?.days.at(-1)?.isInTime).toBe(false);
    expect(settling?.best.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 12);
  });
});

describe("what cannot be asked", () => {
  it("[SE74] is refused by name at its own field", () => {
    expect(codes({ choices: [early, early] })).toEqual(["season-choice-name-twice choices[1].name"]);
    expect(codes({ choices: [{ name: noAction, actions: [] }] })).toEqual(["season-choice-name-twice choices[0].name"]);
    expect(codes({ choices: [{ name: "past", actions: menthol("2026-08-24") }] })).toEqual([
      "season-choice-too-early choices[0].actions[0].from",
    ]);
    expect(codes({ decideOn: "2026-08-19" })).toEqual(["season-count-after-choice counts[0].date"]);
    expect(codes({ counts: [], decideOn: "2026-08-01" })).toEqual(["season-decide-outside decideOn"]);
    expect(codes({ decideOn: "2027-01-15" })).toEqual(["season-decide-outside decideOn"]);
    expect(codes({ decideOn: "soon" })).toEqual(["season-day-unknown decideOn"]);
    expect(codes({ dates: ["2026-08-02", "x"] })).toEqual([
      "season-date-outside dates[0]",
      "season-day-unknown dates[1]",
    ]);
    expect(codes({ line: 1.2 })).toEqual(["season-line-out-of-range line"]);
    expect(codes({ sure: 0.4 })).toEqual(["season-sure-out-of-range sure"]);
    expect(codes({ moreBees: 0 })).toEqual(["season-more-bees-out-of-range moreBees"]);
    expect(codes({ draws: 20_000 })).toEqual(["season-run-too-large until"]);
    expect(codes({ draws: 10_000, choices: [queen] })).toEqual(["season-run-too-large until"]);
    // Told once, whatever the number of choices, and of no uniting where nothing is united.
    const queens = Array.from({ length: 12 }, (_, place) => ({ ...queen, name: `queen ${place}` }));
    expect(codes({ draws: 10_000, choices: queens })).toEqual(["season-run-too-large until"]);
    const [large] = compareChoices({ ...question, draws: 10_000, choices: queens }, { every: null }).problems;
    expect(large?.slots).toMatchObject({ unitings: 0, draws: 10_000 });
    expect(codes({ draws: 200_000 })).toEqual(["season-draws-out-of-range draws"]);
    expect(codes({ counts: [{ date: "2026-13-01", infested: 1, examined: 5 }] })).toEqual([
      "season-day-unknown counts[0].date",
    ]);
    const both = { name: "both", actions: [...early.actions, { kind: "formic", from: "2026-09-05" } as const] };
    expect(codes({ choices: [late, both] })).toEqual(["season-actions-overlap choices[1].actions[1].from"]);
    const patty = { kind: "oil-patty", from: "2026-08-10", to: "2026-12-01" } as const;
    const again = { name: "patty again", actions: [{ ...patty, from: "2026-09-01" }] };
    expect(codes({ actions: [patty], choices: [again] })).toEqual([
      "season-actions-overlap choices[0].actions[0].from",
    ]);
    expect(codes({ start: { ...question.start, bees: 3 } })).toEqual(["season-bees-out-of-range start.bees"]);
  });

  it("[SE75] a colony likely lost whatever is done is told, and nothing is ever NaN", () => {
    const weak = answerOf(
      {
        start: { ...question.start, bees: 600 },
        counts: [],
        choices: [early, queen],
        line: 0.1,
        dates: ["2026-12-01"],
      },
      1,
    );
    const told = weak.problems.map(({ code }) => code);
    expect(told.some((code) => code === "season-colony-likely-lost" || code === "season-colony-lost-at-once")).toBe(
      true,
    );
    // Whatever is told on the way, the loss is told alike.
    const loss = ({ problems }: ReturnType<typeof answerOf>) => problems.filter(({ code }) => /lost/.test(code));
    const unseen = answerOf({ start: { ...question.start, bees: 600 }, counts: [], choices: [early], line: 0.1 });
    expect(loss(unseen)).toEqual(loss(weak));
    expect(JSON.stringify(weak.value)).not.toMatch(/null,"q|NaN|Infinity/);
    const clean = answerOf({ start: { ...question.start, infestedShare: 0 }, counts: [], choices: [early], line: 0 });
    expect(clean.value.choices.map(({ at }) => at.at(-1)?.infestedShare.q95)).toEqual([0, 0]);
    expect(clean.value.settling?.isSettled).toBe(true);
    const numbers: number[] = [];
    JSON.stringify([weak.value, clean.value], (_, value) => {
      if (typeof value === "number") numbers.push(value);
      return value;
    });
    expect(numbers.every(Number.isFinite)).toBe(true);
  });

  it("[SE75] a further count that leaves few draws is told", () => {
    expect(codes({ draws: 100, moreBees: 1000, counts: [] })).toContain("season-draws-thin draws");
    expect(codes({ moreBees: 10 })).not.toContain("season-draws-thin draws");
  });
});

describe("bees where nobody counted", () => {
  it("[SE77] are within the sizes the model was tuned to, north and south, and a day that is none is refused", () => {
    const bees = (date: string, latitude: number) => {
      const answer = usualBees({ latitude }, date);
      return answer.ok ? answer.value : Number.NaN;
    };
    for (const [summer, winter, latitude] of [
      ["2026-08-01", "2026-03-01", 45],
      ["2026-01-31", "2026-08-30", -45],
    ] as const) {
      expect(bees(summer, latitude)).toBeGreaterThan(30_000);
      expect(bees(summer, latitude)).toBeLessThan(60_000);
      expect(bees(winter, latitude)).toBeGreaterThan(8_000);
      expect(bees(winter, latitude)).toBeLessThan(15_000);
    }
    expect(usualBees({}, "2026-02-30").problems.map(({ code }) => code)).toContain("season-day-unknown");
    expect(usualBees({}, addDays("2026-02-28", 1)).ok).toBe(true);
  });
});
