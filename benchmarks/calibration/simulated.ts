/** Cases drawn from the model and given to the differential: what it said of each condition beside what held. */
import { type ConditionId, conditionIds, gradeProbability } from "../../src/knowledge/index.ts";
import { drawIndex, type RandomStream, randomStream } from "../../src/numerics/index.ts";
import { type CaseModel, caseModel } from "../../src/reasoning/differential/case-model.ts";
import { rangesFrom, sharesDrawn } from "../../src/reasoning/differential/draws.ts";
import type { DifferentialInput } from "../../src/reasoning/differential/index.ts";
import { findingsOnly, type Network } from "../../src/reasoning/differential/network.ts";
import { signIds } from "../../src/reasoning/differential/network-for.ts";
import { parametersOf } from "../../src/reasoning/differential/parameters.ts";
import { posteriorOf } from "../../src/reasoning/differential/posterior.ts";
import { readInput } from "../../src/reasoning/differential/read-input.ts";
import { statedPosterior } from "../../src/reasoning/differential/reasons.ts";
import type { Season } from "../../src/units/index.ts";
import { drawnCauses, drawnFindings, drawnNumbers } from "./drawn-case.ts";
import { drawnLook } from "./looks.ts";

/** How the cases are drawn, beside what the differential supposes. */
export interface Drawing {
  readonly cases: number;
  readonly seed: number;
  /** Signs looked at in each case. */
  readonly signs: number;
  /** Draws behind each range. */
  readonly draws: number;
  /** How strongly groups go together in the drawn cases; null: as the differential supposes. */
  readonly dependence: number | null;
  /** Share of the grades that are replaced by another grade before the case is drawn. */
  readonly wrongGrades: number;
}

/** One condition, or one roll-up group, in one case. */
export interface Saying {
  readonly isGroup: boolean;
  /** At the stated grades: what the answer says. */
  readonly stated: number;
  /** Mean over the draws of the grades, each by its weight. */
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  /** Posterior under the drawn grades: the probability that it holds, given what was seen. */
  readonly underDrawn: number;
  readonly held: boolean;
}

const seasons: readonly Season[] = ["winter", "spring", "summer", "autumn"];

/** What the differential says of each condition and group, one list a case. */
export function simulated(drawing: Drawing): readonly (readonly Saying[])[] {
  return Array.from({ length: drawing.cases }, (_, number) => sayingsOf(drawing, number));
}

function sayingsOf(drawing: Drawing, number: number): readonly Saying[] {
  const stream = randomStream({ seed: drawing.seed, stream: number });
  const season = seasons[number % seasons.length] as Season;
  const supposed = modelOf({ season, findings: {} });
  const network = drawnNetwork(supposed.network, drawing, stream);
  // The seed of the ranges is 1: the drawn grades come from another one.
  const numbers = drawnNumbers({ ...supposed, network }, { seed: drawing.seed, draw: number });
  const parameters = parametersOf(network, numbers);
  const causes = drawnCauses(network.nothingWrong, parameters, stream);
  const present = drawnFindings(parameters, causes, stream);
  const looked = drawnLook(drawing.signs, stream);
  const states = looked.map((id) => [id, present[signIds.indexOf(id)] === true ? "present" : "absent"]);
  const model = modelOf({ season, findings: Object.fromEntries(states), draws: drawing.draws });
  const stated = statedPosterior(model);
  const drawn = posteriorOf(parameters, findingsOnly(network, model.present, model.absent), model.groups);
  if (stated === null || drawn === null) throw new Error(`case ${number} of seed ${drawing.seed} has no posterior`);
  const shares = sharesDrawn(model, stated);
  const ranges = rangesFrom(shares);
  const all = shares.weight.reduce((sum, each) => sum + each, 0);
  const meanOf = (draws: Float64Array | undefined) =>
    (draws ?? new Float64Array()).reduce((sum, each, at) => sum + (each * (shares.weight[at] as number)) / all, 0);
  return [
    ...conditionIds.map((_id: ConditionId, at): Saying => {
      const { low, high } = ranges.condition[at] as { low: number; high: number };
      const given = { stated: stated.condition[at] ?? 0, underDrawn: drawn.condition[at] ?? 0 };
      const mean = meanOf(shares.byCondition[at]);
      return { isGroup: false, ...given, mean, low, high, held: causes.includes(at) };
    }),
    ...model.groups.map((members, at): Saying => {
      const { low, high } = ranges.group[at] as { low: number; high: number };
      const given = { stated: stated.group[at] ?? 0, underDrawn: drawn.group[at] ?? 0 };
      const mean = meanOf(shares.byGroup[at]);
      return { isGroup: true, ...given, mean, low, high, held: causes.some((cause) => members.includes(cause)) };
    }),
  ];
}

function modelOf(input: DifferentialInput): CaseModel {
  const read = readInput(input);
  if (!read.ok) throw new Error(read.problems.map(({ code, field }) => `${field}: ${code}`).join(", "));
  return caseModel(read.value);
}

const grades = Object.values(gradeProbability);

function drawnNetwork(network: Network, { dependence, wrongGrades }: Drawing, stream: RandomStream): Network {
  const pairs = network.pairs.map((pair) => {
    if (stream.next() >= wrongGrades) return pair;
    const others = grades.filter((grade) => grade !== pair.rate);
    return { ...pair, rate: others[drawIndex(stream, others.length)] as number };
  });
  return { ...network, pairs, dependence: dependence ?? network.dependence };
}
