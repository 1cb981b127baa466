/** Counts that were stopped, bees read on one side, frames of bees and brood: each against what is known exactly. */
import { describe, expect, it } from "vitest";
import { type BenchCount, logChanceOfCount, oneSidedShare, onOneSide } from "../observe.ts";
import { assumedError, colonyForecast, type ForecastQuestion } from "./forecast.ts";
import { logChancesOfSize, surpriseOfSize, usualSizes } from "./sizes.ts";

const chance = (count: BenchCount, share: number, error = assumedError) =>
  Math.exp(logChanceOfCount(count, share, error));
const perfect = { sensitivity: 1, specificity: 1, overdispersion: 1e-9 };
const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n - 1, k - 1) * n) / k);

describe("counts that were stopped", () => {
  it("[SE110] all ways to end together make 1", () => {
    for (const [waited, most] of [
      [1, 20],
      [3, 50],
      [10, 30],
    ] as const) {
      const stop = { infested: waited, examined: most };
      let total = 0;
      for (let read = waited; read <= most; read++) total += chance({ infested: waited, examined: read, stop }, 0.17);
      for (let found = 0; found < waited; found++) total += chance({ infested: found, examined: most, stop }, 0.17);
      expect(Math.abs(total - 1)).toBeLessThan(1e-11); // Sums of logs of up to fifty terms.
    }
  });

  it("[SE110] with bees all independent it is the negative binomial chance", () => {
    const [waited, read, share] = [3, 17, 0.13];
    const known = choose(read - 1, waited - 1) * share ** waited * (1 - share) ** (read - waited);
    const stop = { infested: waited, examined: 40 };
    // A correlation of 1e-9 is not quite none: some hundred pairs of bees.
    expect(chance({ infested: waited, examined: read, stop }, share, perfect) / known).toBeCloseTo(1, 6);
  });

  it("[SE110] the rule of stopping does not depend on the share: forecasts are those of a planned count", () => {
    const planned = forecastOf({ counts: [{ ...counted, infested: 3, examined: 17 }] });
    const stop = { infested: 3, examined: 40 };
    const stopped = forecastOf({ counts: [{ ...counted, infested: 3, examined: 17, stop }] });
    // Weights differ by one factor, which rounds: a particle or two may change.
    expect(march(stopped).q50).toBeCloseTo(march(planned).q50, 6);
    expect((stopped.logLikelihood ?? 0) - (planned.logLikelihood ?? 0)).toBeCloseTo(Math.log(3 / 17), 9);
  });

  it("[SE110] a count that fits neither end of its rule is refused by name", () => {
    const codes = (infested: number, examined: number) =>
      colonyForecast({
        ...question,
        counts: [{ ...counted, infested, examined, stop: { infested: 3, examined: 40 } }],
      }).problems.flatMap(({ code, severity }) => (severity === "blocked" ? [code] : []));
    expect(codes(4, 20)).toEqual(["season-count-unlike-its-stop"]);
    expect(codes(2, 39)).toEqual(["season-count-unlike-its-stop"]);
    expect(codes(3, 41)).toEqual(["season-count-unlike-its-stop"]);
    for (const [infested, examined] of [
      [3, 3],
      [3, 40],
      [0, 40],
    ] as const)
      expect(codes(infested, examined)).toEqual([]);
  });
});

describe("bees read on one side", () => {
  it("[SE111] one side shows 0.79 of what both show, with 58 in 100 infested on both", () => {
    expect(oneSidedShare).toBeCloseTo(0.58 + 0.42 / 2, 12);
    expect(onOneSide(assumedError).sensitivity).toBeCloseTo(0.97 * 0.79, 12);
    expect(onOneSide({ ...assumedError, oneSided: 0.6 }).sensitivity).toBeCloseTo(0.97 * 0.6, 12);
  });

  it("[SE111] they count as a sample of their own, and say less than bees read in full", () => {
    const oneSided = { infested: 2, examined: 20 };
    const both = chance({ infested: 3, examined: 30, oneSided }, 0.1);
    expect(both).toBeCloseTo(
      chance({ infested: 3, examined: 30 }, 0.1) * chance(oneSided, 0.1, onOneSide(assumedError)),
      12,
    );
    const asFull = forecastOf({ counts: [{ ...counted, infested: 5, examined: 50 }] });
    const asHalf = forecastOf({ counts: [{ ...counted, infested: 3, examined: 30, oneSided }] });
    // The same positives with a smaller chance to be seen: more bees must have mites.
    expect(march(asHalf).q50).toBeGreaterThan(march(asFull).q50);
  });

  it("[SE111] a count of one-sided bees alone is one; an impossible part is refused by name", () => {
    const oneSided = { infested: 2, examined: 20 };
    expect(colonyForecast({ ...question, counts: [{ ...counted, infested: 0, examined: 0, oneSided }] }).ok).toBe(true);
    const refused = colonyForecast({
      ...question,
      counts: [{ ...counted, infested: 0, examined: 9, oneSided: { infested: 3, examined: 2 } }],
    });
    expect(refused.problems.map(({ code, field }) => `${code} ${field}`)).toEqual([
      "season-count-impossible counts[0].oneSided.infested",
    ]);
  });
});

const question: ForecastQuestion = {
  site: {},
  start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08, brood: "usual" },
  actions: [],
  until: "2027-03-01",
  counts: [],
  draws: 400,
  seed: 1,
};
const counted = { date: "2026-10-15" } as const;
const answerOf = (more: Partial<ForecastQuestion>) => {
  const forecast = colonyForecast({ ...question, ...more });
  if (!forecast.ok) throw new Error(JSON.stringify(forecast.problems));
  return forecast;
};
const forecastOf = (more: Partial<ForecastQuestion>) => answerOf(more).value;
const march = ({ days }: ReturnType<typeof forecastOf>) => days.at(-1)?.infestedShare ?? expect.fail("no day");
const codesOf = (more: Partial<ForecastQuestion>) =>
  colonyForecast({ ...question, ...more }).problems.map(({ code, field }) => `${code} ${field}`);

describe("sizes that were seen", () => {
  const size = { date: "2026-08-01", what: "bees", frames: 20, perFrame: 2000, scatter: 0.15 } as const;

  it("[SE112] bees on the first day: the exact posterior of two normal curves in logs", () => {
    const { days, sizes } = forecastOf({ sizes: [size], draws: 4000 });
    // Start 30,000 with 0.15 and 40,000 seen with 0.15: the middle of the logs, with 0.15 / √2.
    const bees = days[0]?.bees ?? expect.fail("no day");
    const middle = Math.sqrt(30_000 * 40_000);
    const spread = 0.15 / Math.SQRT2;
    // 4,000 draws, of which some two thousand are worth: a median to 0.106 · 1.25 / √2000 = 0.3 %, four of them.
    expect(Math.abs(Math.log(bees.q50 / middle))).toBeLessThan(0.012);
    expect(Math.abs(Math.log(bees.q95 / bees.q05) / (2 * 1.645 * spread) - 1)).toBeLessThan(0.1);
    // ln of the normal density of the difference, with both variances; a mean of weights to a few hundredths.
    const variance = 2 * 0.15 ** 2;
    const exact = -0.5 * (Math.log(4 / 3) ** 2 / variance + Math.log(2 * Math.PI * variance));
    expect(Math.abs((sizes[0]?.logLikelihood ?? 0) - exact)).toBeLessThan(0.1);
    expect(sizes[0]?.surprise).toBeCloseTo(Math.log(4 / 3) / Math.sqrt(variance), 1);
  });

  it("[SE112] brood draws the brood, and what is not seen of it stays as it was", () => {
    const more = forecastOf({ sizes: [{ date: "2026-08-20", what: "brood", frames: 7, scatter: 0.1 }] });
    const less = forecastOf({ sizes: [{ date: "2026-08-20", what: "brood", frames: 4, scatter: 0.1 }] });
    const bees = ({ days }: typeof more) => days[50]?.bees.q50 ?? Number.NaN;
    expect(bees(more)).toBeGreaterThan(bees(less));
    expect(more.sizes[0]).toMatchObject({ perFrame: usualSizes.perFrame.brood, scatter: 0.1 });
  });

  it("[SE112] the density of an estimate is the normal curve in logs", () => {
    const logs = Float64Array.of(Math.log(20_000), -Infinity);
    const [half, none] = logChancesOfSize(logs, { ...size, scatter: 0.25 });
    expect(half).toBeCloseTo(-0.5 * (Math.LN2 / 0.25) ** 2 - Math.log(0.25 * Math.sqrt(2 * Math.PI)), 12);
    expect(none).toBe(-Infinity);
    expect(surpriseOfSize(Float64Array.of(-Infinity, -Infinity), size)).toBeNull();
  });

  it("[SE112] what is taken from common practice is told, and what cannot be is refused by name", () => {
    const frames = { date: "2026-08-20", what: "bees", frames: 15 } as const;
    expect(codesOf({ sizes: [frames] })).toContain("season-frames-by-common-practice sizes");
    expect(codesOf({ sizes: [{ ...frames, perFrame: 1800 }] })).not.toContain("season-frames-by-common-practice sizes");
    expect(codesOf({ sizes: [{ ...frames, frames: 0 }] })).toEqual(["season-size-impossible sizes[0].frames"]);
    expect(codesOf({ sizes: [{ ...frames, scatter: 3 }] })).toEqual(["season-size-impossible sizes[0].scatter"]);
    expect(codesOf({ sizes: [{ ...frames, scatter: 1e-200 }] })).toEqual(["season-size-impossible sizes[0].scatter"]);
    expect(codesOf({ sizes: [{ ...frames, date: "2026-07-01" }] })).toEqual(["season-size-outside sizes[0].date"]);
  });

  it("[SE113] a size that contradicts is told, and so are draws too few for what was seen", () => {
    const huge = { date: "2026-08-20", what: "bees", frames: 60, perFrame: 2000, scatter: 0.1 } as const;
    expect(codesOf({ sizes: [huge] })).toContain("season-size-contradicts sizes");
    const sharp = {
      counts: [{ ...counted, infested: 30, examined: 300 }],
      error: { ...assumedError, overdispersion: 0.001 },
    };
    expect(codesOf({ ...sharp, draws: 150 })).toContain("season-particles-few draws");
    expect(codesOf({ ...sharp, draws: 4000 })).not.toContain("season-particles-few draws");
  });
});
