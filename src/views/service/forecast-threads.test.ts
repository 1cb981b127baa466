/** Forecasts over threads: the same bytes as in one, told on the way, ended on demand. */
import { afterAll, describe, expect, it } from "vitest";
import { dynamics } from "../../reasoning/index.ts";
import { openForecastThreads } from "./forecast-threads.ts";

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

const pools = [1, 2, 3].map((count) => ({ count, threads: openForecastThreads(count) }));
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

  it("[SE105] a question that is refused is refused as ever", async () => {
    const refused = await pools[0]?.threads.forecast({ ...question, draws: 3 });
    expect(refused).toEqual(dynamics.colonyForecast({ ...question, draws: 3 }));
  });
});
