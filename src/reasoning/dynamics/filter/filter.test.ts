/** The filter beside what is known exactly, and beside the colonies it is to find again. */
import { describe, expect, it } from "vitest";
import nile from "../../../../tests/golden/season/nile.json" with { type: "json" };
import { drawNormal, randomStream } from "../../../numerics/index.ts";
import { addDays } from "../../../units/index.ts";
import { readyRun } from "../course.ts";
import { assimilate } from "./bootstrap-filter.ts";
import {
  assumedError,
  colonyForecast,
  type ForecastQuestion,
  filteredCloud,
  rangeOf,
  survivalDoubt,
  survivalOf,
} from "./forecast.ts";
import { keptOf, tooLarge } from "./memory-kept.ts";
import { effectiveParticles, systematic } from "./resample.ts";

describe("resampling", () => {
  it("[SE60] each particle goes on as often as its weight says, to within one, in order", () => {
    const stream = randomStream({ seed: 4, stream: 0 });
    for (let round = 0; round < 50; round++) {
      const weights = Float64Array.from({ length: 97 }, () => (stream.next() < 0.3 ? 0 : stream.next()));
      const total = weights.reduce((sum, each) => sum + each, 0);
      const ancestors = systematic(weights, stream.next());
      const times = new Int32Array(97);
      for (const each of ancestors) times[each] = (times[each] as number) + 1;
      for (const [each, weight] of weights.entries())
        expect(Math.abs((times[each] as number) - (97 * weight) / total)).toBeLessThan(1);
      expect([...ancestors]).toEqual([...ancestors].sort((one, other) => one - other));
    }
  });

  it("[SE60] equal weights leave every particle, one weight leaves one, and the worth of weights is told", () => {
    expect([...systematic(new Float64Array(5).fill(0.2), 0.99)]).toEqual([0, 1, 2, 3, 4]);
    expect([...systematic(Float64Array.of(0, 0, 1e-300), 0)]).toEqual([2, 2, 2]);
    expect(effectiveParticles(new Float64Array(8).fill(3))).toBeCloseTo(8, 12);
    expect(() => systematic(new Float64Array(3), 0)).toThrow("weights");
  });
});

const [irregular, level] = [15099, 1469.1];

/** The local level model by Kalman's filter, exactly; the first observation begins it. */
function kalman(values: readonly number[]) {
  let [mean, variance, logLikelihood] = [values[0] as number, irregular, 0];
  for (const value of values.slice(1)) {
    variance += level;
    const [surprise, spread] = [value - mean, variance + irregular];
    logLikelihood -= (Math.log(2 * Math.PI * spread) + (surprise * surprise) / spread) / 2;
    mean += (variance / spread) * surprise;
    variance *= irregular / spread;
  }
  return { mean, variance, logLikelihood };
}

/** The same by particles. */
function byParticles(values: readonly number[], particles: number, seed: number) {
  const stream = randomStream({ seed, stream: 0 });
  const [first = 0, ...rest] = values;
  let states = Float64Array.from({ length: particles }, () => first + Math.sqrt(irregular) * drawNormal(stream));
  let logLikelihood = 0;
  for (const value of rest) {
    const taken = assimilate({
      particles,
      propagate: () => {
        states = states.map((state) => state + Math.sqrt(level) * drawNormal(stream));
      },
      logChances: () =>
        states.map((state) => -(Math.log(2 * Math.PI * irregular) + (value - state) ** 2 / irregular) / 2),
      take: (ancestors) => {
        states = Float64Array.from(ancestors, (each) => states[each] as number);
      },
      uniform: () => stream.next(),
    });
    logLikelihood += taken?.logLikelihood ?? -Infinity;
  }
  return { logLikelihood, mean: states.reduce((sum, each) => sum + each, 0) / particles };
}

describe("the filter on a model that is solved exactly", () => {
  it("[SE61] Kalman's filter on the flow of the Nile agrees with print to its last digit", () => {
    const { logLikelihood, mean, variance } = kalman(nile.values);
    expect(nile.values).toHaveLength(100);
    expect(logLikelihood).toBeCloseTo(-632.5456251157, 9);
    expect(mean).toBeCloseTo(798.3702926, 6);
    expect(variance).toBeCloseTo(4032.1579418, 6);
  });

  it("[SE61] particles agree with it within their chance: 20 runs of 2,000", () => {
    const runs = Array.from({ length: 20 }, (_, seed) => byParticles(nile.values, 2000, seed));
    const average = (of: (run: (typeof runs)[number]) => number) => runs.reduce((sum, run) => sum + of(run), 0) / 20;
    const exact = kalman(nile.values);
    // One run scatters by 0.21 about a mean 0.03 too low (own, 50 runs): four standard errors of 20 runs beside that.
    expect(Math.abs(average(({ logLikelihood }) => logLikelihood) - exact.logLikelihood)).toBeLessThan(
      0.03 + 4 * (0.21 / Math.sqrt(20)),
    );
    expect(Math.abs(average(({ mean }) => mean) - exact.mean)).toBeLessThan(3);
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
const forecastOf = (more: Partial<ForecastQuestion> = {}) => {
  const forecast = colonyForecast({ ...question, ...more });
  if (!forecast.ok) throw new Error(JSON.stringify(forecast.problems));
  return forecast;
};
const march = (more: Partial<ForecastQuestion> = {}) =>
  forecastOf(more).value.days.at(-1)?.infestedShare ?? expect.fail("no day");

describe("a forecast", () => {
  it("[SE62] has a morning for each day, ranges in order, and shares that are shares", () => {
    const { days } = forecastOf({ counts: [{ date: "2026-10-15", infested: 4, examined: 50 }] }).value;
    expect(days).toHaveLength(213);
    expect([days[0]?.date, days.at(-1)?.date]).toEqual(["2026-08-01", "2027-03-01"]);
    for (const { bees, infestedShare, survival } of days)
      for (const { q05, q25, q50, q75, q95 } of [bees, infestedShare, survival]) {
        expect([q05, q25, q50, q75, q95]).toEqual([q05, q25, q50, q75, q95].sort((one, other) => one - other));
        expect(q05).toBeGreaterThanOrEqual(0);
      }
    for (const { infestedShare, survival } of days)
      expect(Math.max(infestedShare.q95, survival.q95)).toBeLessThanOrEqual(1);
  });

  it("[SE150] survival is told wide in every range, alike in forecasts and choices; seen alive is alive", () => {
    const start = { date: "2026-11-01", bees: 6000, infestedShare: 0.08, brood: "none" } as const;
    const asked = { ...question, start, until: "2027-03-01" };
    const raw = filteredCloud(asked);
    if (!raw.ok) expect.fail("no cloud");
    const { paths, particles } = raw.value.cloud;
    const last = paths.survival.slice(-particles).sort();
    const draws = rangeOf(last);
    const { value } = forecastOf(asked);
    const told = value.days.at(-1)?.survival ?? expect.fail("no day");
    expect(told.q05).toBeCloseTo(Math.max(0, draws.q05 - survivalDoubt), 12);
    expect(told.q25).toBeCloseTo(Math.max(0, draws.q25 - survivalDoubt), 12);
    expect(told.q50).toBe(draws.q50);
    expect(told.q75).toBeCloseTo(Math.min(1, draws.q75 + survivalDoubt), 12);
    expect(told.q95).toBeCloseTo(Math.min(1, draws.q95 + survivalDoubt), 12);
    expect(told.q95 - told.q05).toBeGreaterThanOrEqual(survivalDoubt);
    expect(value.days[0]?.survival).toEqual({ q05: 1, q25: 1, q50: 1, q75: 1, q95: 1, mean: 1 });
    expect(survivalOf(Float64Array.of(0.01, 0.02)).q05).toBe(0);
    expect(survivalOf(Float64Array.of(0.01, 0.02)).q95).toBeCloseTo(0.12, 12);
    expect(survivalOf(Float64Array.of(0.99, 1)).q95).toBe(1);
    expect(survivalOf(Float64Array.of(1, 1)).q05).toBe(1);
  });

  it("[SE140] a colony whose bees were seen alive lived until then; from there on survival never rises", () => {
    const small: Partial<ForecastQuestion> = {
      start: { date: "2026-11-01", bees: 6000, infestedShare: 0.08, brood: "none" },
      until: "2027-04-15",
    };
    const seen = { date: "2027-03-15" } as const;
    const survivals = (more: Partial<ForecastQuestion>) =>
      forecastOf({ ...small, ...more }).value.days.map(({ date, survival }) => ({ date, ...survival }));
    for (const more of [
      { counts: [{ ...seen, infested: 2, examined: 50 }] },
      { sizes: [{ ...seen, what: "bees", frames: 2, perFrame: 1500 }] as const },
      // Bees that could not be read say nothing of mites, and yet of life.
      { counts: [{ ...seen, infested: 0, examined: 0, oneSided: { infested: 0, examined: 1 } }] },
    ]) {
      const told = survivals(more);
      for (const { date, q05, mean } of told.filter((each) => each.date <= seen.date))
        expect([date, q05, mean]).toEqual([date, 1, 1]);
      const after = told.filter(({ date }) => date >= seen.date).map(({ mean }) => mean);
      expect(after).toEqual([...after].sort((one, other) => other - one));
      expect(after.at(-1)).toBeLessThan(1);
      expect(after.at(-1)).toBeGreaterThan(0.5);
    }
    // Without it the same colony is more likely lost than not, and that is told.
    expect(survivals({}).at(-1)?.mean).toBeLessThan(0.5);
  });

  it("[SE140] of colonies about a start those that were likelier to live weigh more, as their chance to live says", () => {
    const asked: ForecastQuestion = {
      ...question,
      start: { date: "2026-11-01", bees: 6000, infestedShare: 0.08, brood: "none" },
      until: "2027-03-15",
      draws: 2000,
    };
    const blind = filteredCloud(asked);
    // Read by an eye that sees nothing: the count says that the colony lives, and no more.
    const seen = filteredCloud({
      ...asked,
      counts: [{ date: "2027-03-15", infested: 0, examined: 1 }],
      error: { ...assumedError, sensitivity: 0.5, specificity: 0.5 },
    });
    if (!blind.ok || !seen.ok) throw new Error("no cloud");
    const row = (path: Float64Array) => path.slice(-asked.draws);
    const [bees, alive] = [row(blind.value.cloud.paths.bees), row(blind.value.cloud.paths.survival)];
    const total = alive.reduce((sum, each) => sum + each, 0);
    const expected = bees.reduce((sum, each, at) => sum + each * (alive[at] as number), 0) / total;
    const plain = bees.reduce((sum, each) => sum + each, 0) / asked.draws;
    const found = row(seen.value.cloud.paths.bees).reduce((sum, each) => sum + each, 0) / asked.draws;
    // A systematic comb moves a mean of 2,000 by less than a few of its thousandths.
    expect(Math.abs(found / expected - 1)).toBeLessThan(0.005);
    expect(expected / plain).toBeGreaterThan(1.03);
    // ln of the mean chance to live, and one half for what the eye said.
    const [count] = seen.value.counts;
    expect(count?.logLikelihood).toBeCloseTo(Math.log((0.5 * total) / asked.draws), 9);
  });

  it("[SE53] a colony likely lost is told, as of the day on which the mean of survival says so", () => {
    const weak: Partial<ForecastQuestion> = {
      start: { date: "2026-11-01", bees: 500, infestedShare: 0.08, brood: "none" },
    };
    const { problems, value } = forecastOf(weak);
    expect(value.days.at(-1)?.survival.mean).toBeLessThan(0.1);
    const lost = value.days.find(({ survival }) => survival.mean < 0.5)?.date;
    const told = problems.find(({ code }) => /lost/.test(code));
    expect(told).toMatchObject({ severity: "warned", slots: { date: lost } });
    expect(forecastOf().problems.some(({ code }) => /lost/.test(code))).toBe(false);
    // Seen alive late in winter it is not likely lost before.
    const counts = [{ date: "2027-02-25", infested: 2, examined: 50 }];
    expect(forecastOf({ ...weak, counts }).problems.some(({ code }) => /lost/.test(code))).toBe(false);
  });

  it("[SE62] counts narrow it and draw it to where they are; the more bees, the narrower", () => {
    const width = ({ q05, q95 }: ReturnType<typeof march>) => q95 - q05;
    const counted = (infested: number, examined: number) =>
      march({ counts: [{ date: "2026-10-15", infested, examined }] });
    const none = march();
    expect(width(counted(5, 50))).toBeLessThan(width(none));
    expect(width(counted(20, 200))).toBeLessThan(width(counted(5, 50)));
    expect(counted(0, 50).q50).toBeLessThan(none.q50);
    expect(counted(20, 50).q50).toBeGreaterThan(none.q50);
  });

  it("[SE63] the same question has the same bytes, another seed other ones", () => {
    const counts = [{ date: "2026-10-15", infested: 5, examined: 50 }];
    expect(forecastOf({ counts })).toEqual(forecastOf({ counts }));
    expect(forecastOf({ counts, seed: 2 })).not.toEqual(forecastOf({ counts }));
  });

  it("[SE64] a count that no such colony would give is told", () => {
    const { problems, value } = forecastOf({
      start: { ...question.start, infestedShare: 0.001 },
      counts: [{ date: "2026-08-03", infested: 45, examined: 50 }],
    });
    expect(problems.map(({ code }) => code)).toContain("season-count-contradicts");
    expect(value.counts[0]?.surprise).toBeGreaterThan(20);
    expect(
      forecastOf({ counts: [{ date: "2026-08-03", infested: 4, examined: 50 }] }).problems.map(({ code }) => code),
    ).not.toContain("season-count-contradicts");
  });

  it("[SE64] impossible counts, counts outside the days and numbers of draws that cannot be are refused by name", () => {
    const codes = (more: Partial<ForecastQuestion>) =>
      colonyForecast({ ...question, ...more }).problems.map(({ code, field }) => `${code} ${field}`);
    const count = (more: object) => ({ counts: [{ date: "2026-10-15", infested: 5, examined: 50, ...more }] });
    expect(codes(count({ infested: 51 }))).toEqual(["season-count-impossible counts[0].infested"]);
    expect(codes(count({ examined: 0, infested: 0 }))).toEqual(["season-count-impossible counts[0].infested"]);
    expect(codes(count({ infested: 2.5 }))).toEqual(["season-count-impossible counts[0].infested"]);
    expect(codes(count({ date: "2027-04-01" }))).toEqual(["season-count-outside counts[0].date"]);
    expect(codes(count({ date: "2026-13-01" }))).toEqual(["season-day-unknown counts[0].date"]);
    expect(codes({ draws: 3 })).toEqual(["season-draws-out-of-range draws"]);
  });

  it("[SE143] more than can be kept is refused with what could be; other colonies and more ages count too", () => {
    const refused = (more: Partial<ForecastQuestion>) =>
      colonyForecast({ ...question, ...more }).problems.find(({ code }) => code === "season-run-too-large");
    const asked: Partial<ForecastQuestion> = { draws: 20_000, until: "2030-08-01" };
    const problem = refused(asked) ?? expect.fail("not refused");
    expect([problem.severity, problem.field]).toEqual(["blocked", "until"]);
    // What is told as the longest run and as the most draws is the longest and the most.
    const [most, longest] = [Number(problem.slots?.most), Number(problem.slots?.longest)];
    const isLarge = (draws: number, days: number) => {
      const ready = readyRun({ ...question, until: addDays(question.start.date, days) });
      return ready.ok ? tooLarge(draws, keptOf(ready.value)).length > 0 : expect.fail("not ready");
    };
    expect(longest).toBeGreaterThan(365);
    expect([isLarge(20_000, longest), isLarge(20_000, longest + 1)]).toEqual([false, true]);
    expect([isLarge(most, 1461), isLarge(most + 1, 1461)]).toEqual([false, true]);
    const donor = { start: { date: "2026-08-20", bees: 8000, infestedShare: 0.1, brood: "usual" } } as const;
    const unitings = ["01", "03", "05", "07", "09", "11"].map(
      (day) => ({ kind: "unite", from: `2026-09-${day}`, donor }) as const,
    );
    const queen = { kind: "requeen", from: "2026-09-20", susceptibility: 0.7 } as const;
    expect(refused({ draws: 20_000, actions: [...unitings, queen] })?.slots).toMatchObject({ longest: 0 });
  });

  it("[SE141] a count that no such colony could give is left out and told, but that the colony lived", () => {
    const blind = { ...assumedError, sensitivity: 0, specificity: 1 };
    const counts = [{ date: "2026-10-15", infested: 6, examined: 50 }];
    const { problems, value } = forecastOf({ counts, error: blind });
    expect(problems.map(({ code }) => code)).toContain("season-count-left-out");
    expect(problems.map(({ code }) => code)).not.toContain("season-count-contradicts");
    expect(value.counts[0]).toMatchObject({ logLikelihood: null, effectiveShare: 0, surprise: null });
    expect(value.logLikelihood).toBeNull();
    expect(value.days.find(({ date }) => date === "2026-10-15")?.survival.mean).toBe(1);
    const eggs = { date: "2026-12-01", what: "brood", frames: 3 } as const;
    const winter = { start: { date: "2026-12-01", bees: 12_000, infestedShare: 0.08, brood: "none" } } as const;
    const sized = forecastOf({ ...winter, sizes: [eggs] });
    expect(sized.problems.map(({ code, field }) => `${code} ${field}`)).toContain("season-size-left-out sizes");
    expect(sized.value.sizes[0]).toMatchObject({ logLikelihood: null, surprise: null });
    for (const { infestedShare } of [...value.days, ...sized.value.days])
      expect(Object.values(infestedShare).every(Number.isFinite)).toBe(true);
  });

  it("[SE141] a start without a mite and a count that found some are refused; another colony may have brought them", () => {
    const clean = { start: { ...question.start, infestedShare: 0 } };
    const counts = [{ date: "2026-10-15", infested: 1, examined: 50 }];
    const refused = (more: Partial<ForecastQuestion>) =>
      colonyForecast({ ...question, ...clean, ...more }).problems.flatMap(({ code, field, severity }) =>
        severity === "blocked" ? [`${code} ${field}`] : [],
      );
    const told = ["season-share-none-counted start.infestedShare"];
    expect(refused({ counts })).toEqual(told);
    const oneSided = { infested: 1, examined: 5 };
    expect(refused({ counts: [{ date: "2026-10-15", infested: 0, examined: 50, oneSided }] })).toEqual(told);
    const donor = { start: { date: "2026-08-20", bees: 8000, infestedShare: 0.1, brood: "usual" } } as const;
    const unite = (from: string) => ({ counts, actions: [{ kind: "unite", from, donor }] as const });
    expect(refused(unite("2026-09-05"))).toEqual([]);
    expect(refused(unite("2026-10-15"))).toEqual(told);
    expect(
      refused({
        ...unite("2026-09-05"),
        actions: [
          {
            kind: "unite",
            from: "2026-09-05",
            donor: {
              ...donor,
              ...clean,
              start: { ...donor.start, infestedShare: 0 },
              counts: [{ date: "2026-09-01", infested: 2, examined: 9 }],
            },
          },
        ],
      }),
    ).toEqual(["season-share-none-counted actions[0].donor.start.infestedShare"]);
  });

  it("[SE65] a clean colony that was counted clean stays clean, whatever is drawn", () => {
    const { days } = forecastOf({
      start: { ...question.start, infestedShare: 0 },
      counts: [{ date: "2026-10-15", infested: 0, examined: 50 }],
    }).value;
    for (const { infestedShare } of days) expect(infestedShare.q95).toBe(0);
  });

  it("[SE65] error of counts is what is told: read without error a single infested bee rules a nearly clean colony out", () => {
    const nearlyClean = {
      start: { ...question.start, infestedShare: 1e-9 },
      counts: [{ date: "2026-10-15", infested: 1, examined: 50 }],
    };
    const exact = forecastOf({ ...nearlyClean, error: { ...assumedError, specificity: 1 } });
    expect(exact.problems.map(({ code }) => code)).toContain("season-count-contradicts");
    const usual = forecastOf(nearlyClean);
    expect(usual.problems.map(({ code }) => code)).not.toContain("season-count-contradicts");
    expect(usual.value.logLikelihood).toBeGreaterThan(-10);
  });
});
