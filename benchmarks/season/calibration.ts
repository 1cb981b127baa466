/** Whether forecasts can be taken at their word: colonies drawn from the model, counted, forecast, and held against what became of them. */
import { chiSquare, drawLogGamma, randomStream } from "../../src/numerics/index.ts";
import { dynamics } from "../../src/reasoning/index.ts";

const { assumedError, calibrationGuess, drawBees, filteredCloud } = dynamics;

const base = {
  site: {},
  start: { date: "2026-08-01", bees: 30_000, infestedShare: calibrationGuess, brood: "usual" as const },
  actions: [],
  until: "2027-03-01",
};
const countDays = ["2026-09-01", "2026-10-15"] as const;
/** Particles that the truth is ranked among, and bins of ranks. */
const [ranked, bins] = [19, 20] as const;
const usualParticles = 800;

/** A colony drawn from the start's doubt with its noise, that lived until a morning: shares on each morning. */
function truth(seed: number, livesTo: number): Float64Array {
  // Particles without counts are draws from what the forecast supposes, each of its own chance; a hundred are the
  // fewest that it takes. The first of them that lives by its own chance is the truth.
  const drawn = filteredCloud({ ...base, counts: [], draws: 100, seed });
  if (!drawn.ok) throw new Error("no truth");
  const { particles, paths } = drawn.value.cloud;
  const chance = randomStream({ seed, stream: 0 });
  for (let each = 0; each < particles; each++)
    if (chance.next() < (paths.survival[livesTo * particles + each] as number))
      return Float64Array.from(
        { length: paths.infestedShare.length / particles },
        (_, morning) => paths.infestedShare[morning * particles + each] as number,
      );
  throw new Error("no truth lived");
}

/** Bees with mites of those examined, as the error of counts has it. */
function counted(share: number, examined: number, seed: number, stream: number): number {
  const { sensitivity, specificity, overdispersion } = assumedError;
  const mean = sensitivity * share + (1 - specificity) * (1 - share);
  const size = (1 - overdispersion) / overdispersion;
  const chance = randomStream({ seed, stream });
  const [a, b] = [drawLogGamma(chance, mean * size), drawLogGamma(chance, (1 - mean) * size)];
  return drawBees(chance, examined, 1 / (1 + Math.exp(b - a)));
}

const morningOf = (day: string): number => (Date.parse(day) - Date.parse(base.start.date)) / 86_400_000;

export interface Told {
  /** How many truths had so many of the particles below them, 0 to 19. */
  readonly ranks: Int32Array;
  readonly within90: number;
  readonly within50: number;
  readonly crps: number;
  readonly error: number;
  readonly width: number;
  readonly persistence: number;
}

/** E|X − y| − ½E|X − X′| over sorted values. */
function crps(sorted: Float64Array, y: number): number {
  const n = sorted.length;
  let [distance, spread] = [0, 0];
  for (const [at, x] of sorted.entries()) {
    distance += Math.abs(x - y);
    spread += x * (2 * at - n + 1);
  }
  return distance / n - spread / (n * n);
}

/** What so many colonies tell of the filter; `error` is what it is told of the counts, which scatter as assumed. */
export function drawnColonies({
  cases,
  examined,
  particles = usualParticles,
  error: toldError = assumedError,
}: {
  readonly cases: number;
  readonly examined: number;
  readonly particles?: number;
  readonly error?: dynamics.CountError;
}): Told {
  const ranks = new Int32Array(bins);
  let [within90, within50, score, error, width, persistence] = [0, 0, 0, 0, 0, 0];
  for (let each = 0; each < cases; each++) {
    const path = truth(1_000_000 + each, examined === 0 ? 0 : morningOf(countDays[1]));
    const counts =
      examined === 0
        ? []
        : countDays.map((date, at) => ({
            date,
            infested: counted(path[morningOf(date)] as number, examined, 2_000_000 + each, at),
            examined,
          }));
    const forecast = filteredCloud({ ...base, counts, error: toldError, draws: particles, seed: each });
    if (!forecast.ok) throw new Error("no forecast");
    const last = forecast.value.cloud.paths.infestedShare.slice(-particles);
    const y = path.at(-1) as number;
    // Particles of one ancestor lie side by side: those that are ranked stand far apart.
    let rank = 0;
    for (let at = 0; at < ranked; at++)
      if ((last[Math.floor(((at + 0.5) * particles) / ranked)] as number) < y) rank += 1;
    ranks[rank] = (ranks[rank] as number) + 1;
    const sorted = last.slice().sort();
    const point = (share: number) => sorted[Math.round(share * (particles - 1))] as number;
    if (y >= point(0.05) && y <= point(0.95)) within90 += 1;
    if (y >= point(0.25) && y <= point(0.75)) within50 += 1;
    score += crps(sorted, y);
    error += Math.abs(point(0.5) - y);
    width += point(0.95) - point(0.05);
    const newest = counts.at(-1);
    persistence += Math.abs((newest ? newest.infested / newest.examined : base.start.infestedShare) - y);
  }
  const mean = (sum: number) => sum / cases;
  return {
    ranks,
    ...{ within90: mean(within90), within50: mean(within50), crps: mean(score), error: mean(error) },
    ...{ width: mean(width), persistence: mean(persistence) },
  };
}

/** Prints ranks, coverage and scores; true when ranks are even and both ranges hold what they say, within chance. */
export function seasonCalibration(cases: number): boolean {
  let isKept = true;
  for (const examined of [50, 0, 200]) {
    const { ranks, within90, within50, ...rest } = drawnColonies({ cases, examined });
    const even = cases / bins;
    const chi = ranks.reduce((sum, each) => sum + (each - even) ** 2 / even, 0);
    const p = chiSquare({ df: bins - 1 }).sf(chi);
    const off = (share: number, level: number) => Math.abs(share - level) / Math.sqrt((level * (1 - level)) / cases);
    const isFit = p > 0.001 && off(within90, 0.9) < 3.3 && off(within50, 0.5) < 3.3;
    isKept &&= isFit;
    console.log(
      `\ntwo counts of ${examined} bees, ${cases} colonies, ${usualParticles} particles: share of infested bees on 1 March`,
    );
    console.log(`  ranks ${[...ranks].join(" ")}; chi-squared ${chi.toFixed(1)} on ${bins - 1}, p ${p.toFixed(3)}`);
    console.log(
      `  90 % range holds ${(100 * within90).toFixed(1)}, 50 % range ${(100 * within50).toFixed(1)} of 100; width of the 90 % range ${rest.width.toFixed(3)}`,
    );
    console.log(
      `  CRPS ${rest.crps.toFixed(4)}, middle off by ${rest.error.toFixed(4)}, the last count itself by ${rest.persistence.toFixed(4)}`,
    );
    console.log(`  ${isFit ? "kept" : "MISSED"}`);
  }
  return isKept;
}
