/** Which two causes a full look can tell apart, and which it cannot: by simulation from the stated grades. */
import { type ConditionId, conditionIds, conditions, priors } from "../../src/knowledge/index.ts";
import { randomStream } from "../../src/numerics/index.ts";
import { caseModel } from "../../src/reasoning/differential/case-model.ts";
import { signIds } from "../../src/reasoning/differential/network-for.ts";
import { parametersOf } from "../../src/reasoning/differential/parameters.ts";
import { readInput } from "../../src/reasoning/differential/read-input.ts";
import type { Season } from "../../src/units/index.ts";
import { drawnFindings } from "./drawn-case.ts";
import { drawnLook } from "./looks.ts";
import { givenSets, smallSets } from "./pair-sets.ts";

/** Chance that of two causes the one that holds is the likelier after the look; both as likely before it. */
export interface Separation {
  readonly causes: readonly ConditionId[];
  /** Entry `[a][b]`, the same both ways; 1 on the diagonal. */
  readonly right: readonly (readonly number[])[];
}

/** Primary causes, in the order of the knowledge. */
export const primaryCauses: readonly ConditionId[] = conditionIds.filter((id) => conditions[id].role === "cause");

const seasons: readonly Season[] = ["winter", "spring", "summer", "autumn"];
/** All signs, but of an exclusive pair one. */
const fullLook = 69;

/**
 * Colonies with one cause alone are drawn in each season and looked at in full; no tests. Of each pair it is counted how
 * often the drawn cause explains what was seen better than the other, a tie as half. Seasons count by how often both
 * causes occur in them.
 */
export function separation({ looks, seed }: { readonly looks: number; readonly seed: number }): Separation {
  const bySeason = seasons.map((season, at) => rightInSeason(season, { looks, seed: seed + at }));
  const right = primaryCauses.map((one, a) =>
    primaryCauses.map((other, b) => {
      const weight = seasons.map((season) => priors[one][season] * priors[other][season]);
      const all = weight.reduce((sum, each) => sum + each, 0);
      return weight.reduce((sum, each, at) => sum + (each / all) * (bySeason[at]?.[a]?.[b] ?? 0), 0);
    }),
  );
  return { causes: primaryCauses, right };
}

function rightInSeason(
  season: Season,
  { looks, seed }: { looks: number; seed: number },
): readonly (readonly number[])[] {
  const read = readInput({ season, findings: {} });
  if (!read.ok) throw new Error("the empty case does not fit");
  const { network } = caseModel(read.value);
  const parameters = parametersOf(network);
  const sets = smallSets(conditionIds.length, 1);
  const places = primaryCauses.map((id) => conditionIds.indexOf(id));
  const wins = places.map(() => new Float64Array(places.length));
  for (const [a, cause] of places.entries()) {
    const stream = randomStream({ seed, stream: cause });
    for (let look = 0; look < looks; look++) {
      const isPresent = drawnFindings(parameters, [cause], stream);
      const looked = drawnLook(fullLook, stream).map((id) => signIds.indexOf(id));
      const given = givenSets(network, parameters, sets, {
        present: looked.filter((sign) => isPresent[sign]),
        absent: looked.filter((sign) => !isPresent[sign]),
      });
      // Set 0 is the empty one; set i + 1 holds condition i alone.
      const own = given[cause + 1] as number;
      for (const [b, other] of places.entries()) {
        const theirs = given[other + 1] as number;
        (wins[a] as Float64Array)[b] =
          ((wins[a] as Float64Array)[b] as number) + (own > theirs ? 1 : own === theirs ? 0.5 : 0);
      }
    }
  }
  return places.map((_cause, a) =>
    places.map((_other, b) => (a === b ? 1 : ((wins[a]?.[b] ?? 0) + (wins[b]?.[a] ?? 0)) / (2 * looks))),
  );
}

/** The pairs that are told apart least often, worst first. */
export function hardestPairs({ causes, right }: Separation, count: number) {
  return causes
    .flatMap((one, a) => causes.slice(0, a).map((other, b) => ({ one, other, right: right[a]?.[b] ?? 1 })))
    .sort((x, y) => x.right - y.right)
    .slice(0, count);
}

/** Causes in an order in which those that are hard to tell apart stand side by side: each next to the last one's nearest. */
export function inOrder({ causes, right }: Separation): readonly number[] {
  const left = new Set(causes.keys());
  const nearness = (a: number) => Math.min(...(right[a] ?? []).filter((_, b) => b !== a));
  const order: number[] = [];
  let last = [...left].reduce((best, each) => (nearness(each) < nearness(best) ? each : best));
  for (;;) {
    order.push(last);
    left.delete(last);
    if (left.size === 0) return order;
    const from = right[last] ?? [];
    last = [...left].reduce((best, each) => ((from[each] ?? 1) < (from[best] ?? 1) ? each : best));
  }
}
