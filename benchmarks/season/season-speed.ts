/** How fast a colony's year and a forecast run, beside the same days in C where gcc is there. Turn about, the best of many short runs. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { dynamics } from "../../src/reasoning/index.ts";
import { openSeasonThreads } from "../../src/views/service/index.ts";
import type { Figure } from "../figure.ts";

const { assembledKernel, engine, fullLayout, layoutOf, noMeasures, oneDay, oneDayForAll, placeWinterColony } = dynamics;
const { rateYear, seeColony, shortestLayout, specified } = dynamics;
const source = path.join(import.meta.dirname, "colony_bench.c");
const rates = rateYear(specified);
const firstDay = 305;
const daysOfRun = Array.from({ length: 730 }, (_, elapsed) => ({
  dayOfYear: ((firstDay - 1 + elapsed) % 365) + 1,
  elapsed,
}));
/** Short, so that some run undisturbed on a machine that has other work. */
const years = 20;
const rounds = 30;
/** Most times as long as C that the same ages may take: plain TypeScript, and the program in WebAssembly. */
const goals = { plain: 4, assembled: 2 } as const;

/** Bees and infested share after 730 days, and microseconds a colony-year. */
interface Timed {
  readonly bees: number;
  readonly share: number;
  readonly microseconds: number;
}

type Kind = keyof typeof goals;

function bench(layout: dynamics.Layout, kind: Kind) {
  const model = engine({ parameters: specified, layout, rates, measures: noMeasures(730) });
  const state = new Float64Array(layout.length);
  const assembled = kind === "plain" ? null : assembledKernel({ model, days: daysOfRun, seed: 1, noise: null });
  if (kind === "assembled" && assembled === null) throw new Error("no WebAssembly here");
  const run = (days: number, bees: number): void => {
    placeWinterColony(state, 0, layout, { bees, infestedShare: 0.16, contactRate: specified.contactRate });
    if (assembled !== null) assembled.run(state, 0, { from: 0, to: days, particle: 0 });
    else for (let day = 0; day < days; day++) oneDay(state, 0, model, daysOfRun[day] as (typeof daysOfRun)[number]);
  };
  // Best of five, as the program in C tells it.
  const time = (): number => {
    let best = Infinity;
    for (let round = 0; round < 5; round++) {
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
      program: built(folder, ages),
    }));
    const rows = layouts.flatMap(({ ages, layout, program }) => rowsFor(`colony-year, ${ages} ages`, layout, program));
    const fewest = rowsFor(
      "colony-year, fewest ages that change nothing",
      shortestLayout(specified),
      layouts[0]?.program ?? null,
    );
    return [
      ...rows,
      ...fewest.map((row) => ({ ...row, goal: null })),
      wholeBeesRow(),
      ...(await forecastRows()),
      ...(await choicesRows()),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function rowsFor(what: string, layout: dynamics.Layout, program: string | null): readonly Figure[] {
  const kinds = ["plain", "assembled"] as const;
  const ours = kinds.map((kind) => ({ kind, bench: bench(layout, kind), best: Infinity }));
  for (const { bench } of ours) bench.time();
  let bestInC = Infinity;
  for (let round = 0; round < rounds; round++) {
    for (const each of ours) each.best = Math.min(each.best, each.bench.time());
    if (program === null) continue;
    const { bees, share, microseconds } = ranInC(program);
    bestInC = Math.min(bestInC, microseconds);
    for (const { bench } of ours) {
      const found = bench.check();
      if (!near(found.bees, bees) || !near(found.share, share)) throw new Error(`${what}: C disagrees`);
    }
  }
  const named = { plain: "in plain TypeScript", assembled: "in WebAssembly" };
  const times = ours.map(
    ({ kind, best }): Figure => ({
      what: `${what}, ${named[kind]}`,
      ...{ value: best, unit: "µs", goal: null },
    }),
  );
  if (program === null) return [...times, { what: "  C not compared: no gcc", value: 0, unit: "", goal: null }];
  return [
    ...times,
    { what: "  the same days in C", value: bestInC, unit: "µs", goal: null },
    ...ours.map(({ kind, best }) => ({
      what: `  times as long as C, ${named[kind]}`,
      ...{ value: best / bestInC, unit: "x", goal: goals[kind] },
    })),
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

const question = (draws: number): dynamics.ForecastQuestion => ({
  ...{ site: {}, start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08, brood: "usual" as const } },
  ...{ actions: [], until: "2027-03-01", draws, seed: 1 },
  counts: [
    { date: "2026-09-01", infested: 3, examined: 50 },
    { date: "2026-10-15", infested: 6, examined: 50 },
  ],
});

interface Best {
  /** Milliseconds by the clock. */
  readonly clock: number;
  /** Milliseconds of this machine's cores: what the clock would tell if nothing else ran. */
  readonly cores: number;
}

/** The best of some runs. */
async function best(times: number, run: () => unknown): Promise<Best> {
  let [clock, cores] = [Infinity, Infinity];
  for (let each = 0; each < times; each++) {
    const [began, before] = [performance.now(), process.cpuUsage()];
    await run();
    clock = Math.min(clock, performance.now() - began);
    const { user, system } = process.cpuUsage(before);
    cores = Math.min(cores, (user + system) / 1000);
  }
  return { clock, cores };
}

const rowsOf = (what: string, { clock, cores }: Best, goal: number | null): readonly Figure[] => [
  { what, value: clock, unit: "ms", goal },
  { what: "  of which the cores were at work", value: cores, unit: "ms", goal: null },
];

/** Forecasts over 212 days with two counts, in this thread and in two others. */
async function forecastRows(): Promise<readonly Figure[]> {
  const alone = (draws: number) => () => {
    if (!dynamics.colonyForecast(question(draws)).ok) throw new Error("no forecast");
  };
  const [one, two] = [openSeasonThreads(1), openSeasonThreads(2)];
  const inThreads = (threads: typeof one) => () => threads.forecast(question(10_000));
  try {
    const small = await best(15, alone(2000));
    const choices = await best(5, () => {
      for (let choice = 0; choice < 4; choice++) alone(1000)();
    });
    const large = await best(5, alone(10_000));
    let [inOne, inTwo] = [Infinity, Infinity];
    for (let round = 0; round < 6; round++) {
      inOne = Math.min(inOne, (await best(1, inThreads(one))).clock);
      inTwo = Math.min(inTwo, (await best(1, inThreads(two))).clock);
    }
    return [
      ...rowsOf("forecast, 2,000 particles, 212 days, two counts", small, 300),
      ...rowsOf("four forecasts of 1,000 particles", choices, 500),
      ...rowsOf("forecast, 10,000 particles, this thread", large, null),
      { what: "forecast, 10,000 particles, one thread beside this", value: inOne, unit: "ms", goal: null },
      { what: "forecast, 10,000 particles, two threads", value: inTwo, unit: "ms", goal: 1000 },
      { what: "  time with two threads, of that with one", value: inTwo / inOne, unit: "x", goal: 1 / 1.8 },
      ...memoryRows(),
    ];
  } finally {
    await Promise.all([one.close(), two.close()]);
  }
}

/** What a program takes at most beyond what it took before, MiB, and what it took before; null where no system tells it. */
function memoryOf(call: string): { readonly added: number; readonly before: number } | null {
  if (process.platform !== "linux") return null;
  const program = `
    import { readFileSync } from "node:fs";
    import { dynamics } from ${JSON.stringify(new URL("../../src/reasoning/index.ts", import.meta.url).href)};
    const most = () => Number(/VmHWM:\\s+(\\d+)/.exec(readFileSync("/proc/self/status", "utf8"))[1]) / 1024;
    const before = most();
    ${call};
    console.log(before, most());`;
  const { stdout } = spawnSync(process.execPath, ["--input-type=module", "-e", program], { encoding: "utf8" });
  const [before = Number.NaN, most = Number.NaN] = stdout.trim().split(" ").map(Number);
  return { added: most - before, before };
}

function memoryRows(): readonly Figure[] {
  const memory = memoryOf(`dynamics.colonyForecast(${JSON.stringify(question(10_000))})`);
  if (memory === null) return [];
  return [
    { what: "memory a forecast of 10,000 particles adds", value: memory.added, unit: "MiB", goal: 200 },
    { what: "  and the program before it", value: memory.before, unit: "MiB", goal: null },
  ];
}

/** Doing nothing and four actions beside each other, 1,000 draws from August to March, counted once; and its memory. */
async function choicesRows(): Promise<readonly Figure[]> {
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
  let [alone, inTwo] = [Infinity, Infinity];
  const two = openSeasonThreads(2);
  for (let round = 0; round < 6; round++) {
    let began = performance.now();
    if (!dynamics.compareChoices(question, { every: 3 }).ok) throw new Error("no comparison");
    alone = Math.min(alone, performance.now() - began);
    began = performance.now();
    if (!(await two.compare(question, { every: 3 }))?.ok) throw new Error("no comparison");
    inTwo = Math.min(inTwo, performance.now() - began);
  }
  await two.close();
  const memory = memoryOf(`dynamics.compareChoices(${JSON.stringify(question)}, { every: 3 })`);
  return [
    { what: "four actions beside none, 1000 draws, 212 days", value: alone, unit: "ms", goal: 500 },
    { what: "  the same over two threads", value: inTwo, unit: "ms", goal: null },
    { what: "  time with two threads, of that in this one", value: inTwo / alone, unit: "x", goal: null },
    ...(memory === null ? [] : [{ what: "  memory it adds", value: memory.added, unit: "MiB", goal: 200 }]),
  ];
}
