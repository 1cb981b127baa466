/** How fast a colony's year runs, beside the same days in C where gcc is there. Best of five times five, turn about. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { dynamics } from "../../src/reasoning/index.ts";
import type { Figure } from "../figure.ts";

const { engine, fullLayout, layoutOf, noMeasures, oneDay, oneDayForAll, placeWinterColony, rateYear } = dynamics;
const { seeColony, shortestLayout, specified } = dynamics;
const source = path.join(import.meta.dirname, "colony_bench.c");
const rates = rateYear(specified);
const firstDay = 305;
const years = 100;
const rounds = 5;
/** Most times as long as C that the same ages may take. */
const goal = 4;

/** Bees and infested share after 730 days, and microseconds a colony-year. */
interface Timed {
  readonly bees: number;
  readonly share: number;
  readonly microseconds: number;
}

function bench(layout: dynamics.Layout) {
  const model = engine({ parameters: specified, layout, rates, measures: noMeasures(730) });
  const state = new Float64Array(layout.length);
  const run = (days: number, bees: number): void => {
    placeWinterColony(state, 0, layout, { bees, infestedShare: 0.16, contactRate: specified.contactRate });
    for (let elapsed = 0; elapsed < days; elapsed++)
      oneDay(state, 0, model, { dayOfYear: ((firstDay - 1 + elapsed) % 365) + 1, elapsed });
  };
  // Best of five, as the program in C tells it.
  const time = (): number => {
    let best = Infinity;
    for (let round = 0; round < rounds; round++) {
      const began = performance.now();
      for (let year = 0; year < years; year++) run(365, 22000 + (year % 97));
      best = Math.min(best, ((performance.now() - began) / years) * 1000);
    }
    return best;
  };
  const check = (): Omit<Timed, "microseconds"> => {
    run(730, 22000);
    const { bees, infestedShare } = seeColony(state, 0, layout);
    return { bees, share: infestedShare };
  };
  return { time, check };
}

/** Builds the C program for a number of ages; null when there is no gcc. */
function built(folder: string, ages: number): string | null {
  const program = path.join(folder, `colony_bench_${ages}`);
  const flags = ["-O3", "-march=native", `-DAGES=${ages}`, source, "-o", program, "-lm"];
  const { status, error } = spawnSync("gcc", flags, { encoding: "utf8" });
  if (error) return null;
  if (status !== 0) throw new Error("gcc could not build the comparison");
  return program;
}

function ranInC(program: string): Timed {
  const { stdout, status } = spawnSync(program, [String(years)], { encoding: "utf8" });
  if (status !== 0) throw new Error("the comparison in C failed");
  const [bees = Number.NaN, share = Number.NaN, microseconds = Number.NaN] = stdout.trim().split(" ").map(Number);
  return { bees, share, microseconds };
}

const near = (a: number, b: number): boolean => Math.abs(a / b - 1) < 1e-9;

/** Microseconds a colony-year and their ratio to C. Throws when the two do not agree to 1e-9, for then times mean nothing. */
export async function seasonSpeed(): Promise<readonly Figure[]> {
  const folder = mkdtempSync(path.join(tmpdir(), "skepsis-season-"));
  try {
    const layouts = [24, 64].map((ages) => ({
      ages,
      layout: ages === 64 ? fullLayout : layoutOf({ summerAges: ages, winterAges: ages }),
    }));
    const rows = layouts.flatMap(({ ages, layout }) =>
      rowsFor(`colony-year, ${ages} ages`, bench(layout), built(folder, ages), goal),
    );
    const shortest = bench(shortestLayout(specified));
    return [
      ...rows,
      ...rowsFor("colony-year, fewest ages that change nothing", shortest, built(folder, 24), null),
      wholeBeesRow(),
      forecastRow(2000, 300),
      forecastRow(10_000, null),
      ...choicesRows(),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function rowsFor(
  what: string,
  ours: ReturnType<typeof bench>,
  program: string | null,
  most: number | null,
): readonly Figure[] {
  ours.time();
  let [best, bestInC] = [Infinity, Infinity];
  for (let round = 0; round < rounds; round++) {
    best = Math.min(best, ours.time());
    if (program === null) continue;
    const { bees, share, microseconds } = ranInC(program);
    const found = ours.check();
    if (!near(found.bees, bees) || !near(found.share, share)) throw new Error(`${what}: C disagrees`);
    bestInC = Math.min(bestInC, microseconds);
  }
  const time: Figure = { what, value: best, unit: "µs", goal: null };
  if (program === null) return [{ ...time, what: `${what} (C not compared: no gcc)` }];
  return [
    time,
    { what: `  the same days in C`, value: bestInC, unit: "µs", goal: null },
    { what: "  times as long as C", value: best / bestInC, unit: "x", goal: most },
  ];
}

/** Thirty colonies in whole bees through a year. */
function wholeBeesRow(): Figure {
  const layout = shortestLayout(specified);
  const model = engine({ parameters: specified, layout, rates, measures: noMeasures(365) });
  const count = 30;
  const states = new Float64Array(count * layout.length);
  for (let each = 0; each < count; each++)
    placeWinterColony(states, each * layout.length, layout, { bees: 22000, infestedShare: 0.16, contactRate: 1.7 });
  const began = performance.now();
  for (let elapsed = 0; elapsed < 365; elapsed++) {
    const day = { dayOfYear: ((firstDay - 1 + elapsed) % 365) + 1, elapsed };
    oneDayForAll(states, { first: 0, count }, model, day, { seed: 1, wholeBees: true, noise: null });
  }
  return { what: "colony-year in whole bees", value: (performance.now() - began) / count, unit: "ms", goal: null };
}

/** A forecast over 212 days with two counts. */
function forecastRow(draws: number, goal: number | null): Figure {
  const question = {
    ...{ site: {}, start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08, brood: "usual" as const } },
    ...{ actions: [], until: "2027-03-01", draws, seed: 1 },
    counts: [
      { date: "2026-09-01", infested: 3, examined: 50 },
      { date: "2026-10-15", infested: 6, examined: 50 },
    ],
  };
  let best = Infinity;
  for (let round = 0; round < 3; round++) {
    const began = performance.now();
    if (!dynamics.colonyForecast(question).ok) throw new Error("no forecast");
    best = Math.min(best, performance.now() - began);
  }
  return { what: `forecast, ${draws} particles, 212 days, two counts`, value: best, unit: "ms", goal };
}

/** Doing nothing and four actions beside each other, 1,000 draws from August to March, counted once; and its memory. */
function choicesRows(): readonly Figure[] {
  const question: dynamics.ChoicesQuestion = {
    ...{ site: {}, start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08, brood: "usual" } },
    ...{ actions: [], until: "2027-03-01", draws: 1000, seed: 1, decideOn: "2026-09-05", line: 0.15 },
    counts: [{ date: "2026-09-01", infested: 3, examined: 50 }],
    choices: [
      { name: "menthol", actions: [{ kind: "menthol", from: "2026-09-10" }] },
      { name: "formic acid", actions: [{ kind: "formic", from: "2026-09-20" }] },
      { name: "patty", actions: [{ kind: "oil-patty", from: "2026-09-10", to: "2026-11-10" }] },
      { name: "new queen", actions: [{ kind: "requeen", from: "2026-09-10", susceptibility: 0.7 }] },
    ],
  };
  const before = process.memoryUsage();
  let best = Infinity;
  let most = 0;
  for (let round = 0; round < 5; round++) {
    const began = performance.now();
    if (!dynamics.compareChoices(question, { every: 3 }).ok) throw new Error("no comparison");
    best = Math.min(best, performance.now() - began);
  }
  // Looked at while everything is held: after each choice.
  const look = () => {
    const { heapUsed, arrayBuffers } = process.memoryUsage();
    most = Math.max(most, heapUsed + arrayBuffers - before.heapUsed - before.arrayBuffers);
  };
  dynamics.compareChoices(question, { every: 3 }, { choice: look });
  return [
    { what: "four actions beside none, 1000 draws, 212 days", value: best, unit: "ms", goal: 500 },
    { what: "  memory taken at the most", value: most / 2 ** 20, unit: "MiB", goal: 200 },
  ];
}
