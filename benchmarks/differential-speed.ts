/** How fast the differential answers, and how much that saves against taking every set one by one. */
import type { FindingId } from "../src/knowledge/index.ts";
import { type CaseModel, caseModel } from "../src/reasoning/differential/case-model.ts";
import { rangesOf } from "../src/reasoning/differential/draws.ts";
import { type DifferentialInput, differential } from "../src/reasoning/differential/index.ts";
import { findingsOnly, type Network } from "../src/reasoning/differential/network.ts";
import { parametersOf } from "../src/reasoning/differential/parameters.ts";
import { acceptedError, type Posterior, posteriorOf } from "../src/reasoning/differential/posterior.ts";
import { readInput } from "../src/reasoning/differential/read-input.ts";
import { reasonsOf, statedPosterior } from "../src/reasoning/differential/reasons.ts";
import { nextSteps } from "../src/reasoning/next-step/index.ts";
import type { Figure } from "./figure.ts";
import { medianTime } from "./median-time.ts";

const present = [
  "crawlers",
  "dead_heap",
  "faecal_streaks_front",
  "k_wing",
  "bloated_abdomen",
  "small_cluster",
  "weak_for_season",
  "spotty_brood",
  "queen_not_found_no_eggs",
  "stores_ample",
] as const;
const absent = [
  "trembling",
  "hairless_black",
  "deformed_wings",
  "varroa_on_adults",
  "tongue_out",
  "heads_in_cells",
  "ropy_thread",
  "chalk_mummies",
  "webbing_tunnels",
  "hornets_hawking",
  "normal_eggs_and_queen",
  "wet_mould",
  "hard_flat_scale",
  "sac_larva",
  "robbing_signs",
] as const;
/** What makes the evidence too much for the signed sum. */
const furtherPresent = ["loose_cluster", "foul_odour", "dead_emerging", "worn_wings"] as const;

const callWith = (seen: readonly FindingId[]): DifferentialInput => ({
  season: "winter",
  findings: Object.fromEntries([
    ...seen.map((finding) => [finding, "present" as const]),
    ...absent.map((finding) => [finding, "absent" as const]),
  ]),
});
/** A late winter call in which twenty-five findings were looked for, and one in which more of them were seen. */
const call = callWith(present);
const busyCall = callWith([...present, ...furtherPresent]);

/** A made-up network: the first condition brings the ten findings seen, each other one every third finding. */
const network: Network = {
  conditions: Array.from({ length: 15 }, (_, at) => ({ id: `c${at}`, odds: 0.02 + 0.01 * at, rollUp: null })),
  findings: Array.from({ length: 20 }, (_, at) => ({ id: `f${at}`, healthy: 0.02 + 0.002 * at, group: null })),
  pairs: Array.from({ length: 15 * 20 }, (_, at) => ({
    condition: Math.floor(at / 20),
    finding: at % 20,
    rate: 0.1 + 0.04 * ((7 * at) % 20),
    suppresses: false,
  })).filter(({ condition, finding }) => (condition === 0 ? finding < 10 : (condition + finding) % 3 === 0)),
  blocks: [],
  nothingWrong: null,
  dependence: 0,
};
const firstTen = Array.from({ length: 10 }, (_, at) => at);
const evidence = findingsOnly(
  network,
  firstTen,
  firstTen.map((at) => at + 10),
);

function modelOf(input: DifferentialInput): CaseModel {
  const read = readInput(input);
  if (!read.ok) throw new Error("the case of the bench does not fit");
  return caseModel(read.value);
}

function posteriorIn(model: CaseModel): Posterior {
  const posterior = statedPosterior(model);
  if (posterior === null) throw new Error("the case of the bench has no posterior");
  return posterior;
}

const byEngine = () => posteriorOf(parametersOf(network), evidence, []);

/** Posterior of the first condition, every set of conditions taken one by one: a plain sum that wastes nothing. */
function oneByOne(): number {
  const { conditions, healthy, link, odds } = parametersOf(network);
  const missed = new Float64Array(20);
  let [total, withFirst] = [0, 0];
  for (let set = 0; set < 2 ** conditions; set++) {
    let weight = 1;
    for (let finding = 0; finding < missed.length; finding++) missed[finding] = 1 - (healthy[finding] ?? 0);
    for (let condition = 0; condition < conditions; condition++) {
      if (((set >> condition) & 1) === 0) continue;
      weight *= odds[condition] ?? 0;
      for (let finding = 0; finding < missed.length; finding++) {
        missed[finding] = (missed[finding] ?? 0) * (1 - (link[finding * conditions + condition] ?? 0));
      }
    }
    for (const finding of evidence.present) weight *= 1 - (missed[finding] ?? 0);
    for (const finding of evidence.absent) weight *= missed[finding] ?? 0;
    total += weight;
    if ((set & 1) === 1) withFirst += weight;
  }
  return withFirst / total;
}

/** Times of the differential. Throws when the two ways of summing do not agree, for then their times mean nothing. */
export async function differentialSpeed(): Promise<readonly Figure[]> {
  const found = byEngine();
  // The engine accepts a total that rounding may have moved by this share; a posterior is a ratio of two such sums.
  if (!(Math.abs((found?.condition[0] ?? Number.NaN) - oneByOne()) < 4 * acceptedError))
    throw new Error("the engine and the sum over all sets disagree");
  const brute = medianTime({ work: oneByOne, warm: 2, runs: 11 });
  const engine = medianTime({ work: byEngine, warm: 30, runs: 101 });
  const model = modelOf(call);
  const posterior = posteriorIn(model);
  const time = (work: () => unknown) => medianTime({ work, warm: 5, runs: 21 });
  const rows: readonly (readonly [string, number, number | null])[] = [
    ["differential, 45 conditions, 25 findings, 10 present: posterior", time(() => posteriorIn(modelOf(call))), 10],
    ["  reasons in bits", time(() => reasonsOf(model, posterior)), 20],
    ["  ranges from 400 draws", time(() => rangesOf(model, posterior)), 500],
    ["  all looks and tests ranked", time(() => nextSteps(call)), 100],
    ["  whole answer", time(() => differential(call)), null],
    ["  14 present: posterior", time(() => posteriorIn(modelOf(busyCall))), null],
    ["  14 present: whole answer", time(() => differential(busyCall)), null],
  ];
  return [
    ...rows.map(([what, value, goal]): Figure => ({ what, value, unit: "ms", goal })),
    {
      what: `all sets of 15 conditions one by one, against the ${found?.method}`,
      value: brute / engine,
      unit: "x",
      goal: null,
    },
    {
      // Every further condition doubles the sets: what all of them one by one would take, against the exact sums.
      what: "all sets of 45 conditions one by one, against the posterior",
      value: (brute * 2 ** 30) / (rows[0]?.[1] ?? Number.NaN),
      unit: "x",
      goal: null,
    },
  ];
}
