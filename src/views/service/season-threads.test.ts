/** Forecasts over threads: the same bytes as in one, told on the way, ended on demand. */
import { afterAll, describe, expect, it } from "vitest";
import { dynamics, verbNamed } from "../../reasoning/index.ts";
import { openSeasonThreads } from "./season-threads.ts";

const question: dynamics.ForecastQuestion = {
  site: {},
  start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08, brood: "usual" },
  actions: [{ kind: "formic", from: "2026-11-01" }],
  until: "2027-03-01",
  counts: [
    { date: "2026-08-01", infested: 2, examined: 30 },
    { date: "2026-10-15", infested: 6, examined: 50 },
    { date: "2026-10-15", infested: 3, examined: 20 },
    { date: "2027-03-01", infested: 9, examined: 50 },
  ],
  draws: 301,
  seed: 5,
};

const choosing: dynamics.ChoicesQuestion = {
  ...question,
  counts: question.counts.slice(0, 3),
  choices: [
    { name: "patty", actions: [{ kind: "oil-patty", from: "2026-10-16", to: "2026-12-01" }] },
    // A new queen wants more daily ages than the rest.
    { name: "new queen", actions: [{ kind: "requeen", from: "2026-10-20", susceptibility: 0.7 }] },
    {
      name: "uniting",
      actions: [
        {
          kind: "unite",
          from: "2026-11-20",
          donor: {
            start: { date: "2026-09-01", bees: 9000, infestedShare: 0.1, brood: "usual" },
            counts: [{ date: "2026-09-20", infested: 3, examined: 30 }],
          },
        },
      ],
    },
  ],
  line: 0.2,
};

const pools = [1, 2, 3].map((count) => ({ count, threads: openSeasonThreads(count) }));
afterAll(() => Promise.all(pools.map(({ threads }) => threads.close())));

describe("a forecast over threads", () => {
  it.each(pools)("[SE104] $count threads give the bytes of none", async ({ threads }) => {
    expect(await threads.forecast(question)).toEqual(dynamics.colonyForecast(question));
    // Kept for the next question, which is another.
    expect(await threads.forecast({ ...question, seed: 6 })).toEqual(dynamics.colonyForecast({ ...question, seed: 6 }));
  });

  it("[SE105] tells how far it is, and the days that stand so far", async () => {
    const shares: number[] = [];
    const lengths: number[] = [];
    const answer = await pools[1]?.threads.forecast(question, {
      tell: (share) => shares.push(share),
      tellDays: (days) => {
        lengths.push(days.length);
        // Until a later count, days stand as in a forecast that ends there.
        if (days.length === 76) {
          const until = { until: "2026-10-15", counts: question.counts.slice(0, 3) };
          const alone = dynamics.colonyForecast({ ...question, ...until });
          expect(days).toEqual(alone.ok ? alone.value.days : null);
        }
      },
    });
    expect(answer?.ok).toBe(true);
    expect(shares).toEqual(shares.toSorted((one, other) => one - other));
    expect(shares.at(-1)).toBe(1);
    expect(lengths).toEqual([1, 76]);
  });

  it("[SE105] ends when it is told to, answers nothing, and takes the next question", async () => {
    let isStopped = false;
    const threads = pools[0]?.threads ?? expect.fail("no threads");
    const first = threads.forecast(question, {
      tell: () => {
        isStopped = true;
      },
      isStopped: () => isStopped,
    });
    const second = threads.forecast(question);
    expect(await first).toBeNull();
    expect((await second)?.ok).toBe(true);
  });

  it.each(pools)(
    "[SE104] choices beside each other over $count threads have the bytes of none",
    async ({ threads }) => {
      const alone = dynamics.compareChoices(choosing, { every: 5 });
      expect(alone.ok).toBe(true);
      expect(await threads.compare(choosing, { every: 5 })).toEqual(alone);
    },
  );

  it("[SE105] choices are told one by one, and a stopped comparison keeps what it had", async () => {
    const threads = pools[1]?.threads ?? expect.fail("no threads");
    const shares: number[] = [];
    await threads.compare(choosing, { every: null }, { tell: (share) => shares.push(share) });
    expect(shares).toEqual(shares.toSorted((one, other) => one - other));
    expect(shares.at(-1)).toBe(1);
    const told: string[] = [];
    const choice = ({ name }: dynamics.ChoiceOutcome) => told.push(name);
    const stopped = await threads.compare(choosing, { every: null }, { choice, isStopped: () => told.length === 2 });
    expect(stopped).toBeNull();
    expect(told).toEqual([dynamics.noAction, "patty"]);
    expect((await threads.compare(choosing, { every: null }))?.ok).toBe(true);
  });

  it("[SE104] verbs over threads reply as they do alone", async () => {
    const threads = pools[1]?.threads ?? expect.fail("no threads");
    for (const name of ["season", "season-choices"]) {
      const verb = verbNamed(name) ?? expect.fail("no verb");
      expect(await threads.ask(name, verb.example)).toEqual(verb.ask(verb.example));
      expect(await threads.ask(name, { draws: 0 })).toEqual(verb.ask({ draws: 0 }));
    }
    expect(threads.ask("decide", {})).toBeNull();
  });

  it("[SE105] a question that is refused is refused as ever", async () => {
    const refused = await pools[0]?.threads.forecast({ ...question, draws: 3 });
    expect(refused).toEqual(dynamics.colonyForecast({ ...question, draws: 3 }));
  });
});
