/** A case drawn from the model: grades, then causes, then signs; told as the story of the model, not by its sums. */

import type { RandomStream } from "../../src/numerics/index.ts";
import type { CaseModel } from "../../src/reasoning/differential/case-model.ts";
import { statedCase } from "../../src/reasoning/differential/case-model.ts";
import { drawn, drawPlan } from "../../src/reasoning/differential/judged-draws.ts";
import type { Network } from "../../src/reasoning/differential/network.ts";
import { signIds } from "../../src/reasoning/differential/network-for.ts";
import type { Judged, Parameters } from "../../src/reasoning/differential/parameters.ts";

/** Every judged number of a network drawn as the ranges draw them, not only those that were looked for. */
export function drawnNumbers(model: CaseModel, { seed, draw }: { seed: number; draw: number }): Judged {
  const everything = { ...model, read: { ...model.read, seed }, present: [...signIds.keys()], absent: [] };
  return drawn(drawPlan(everything, statedCase(model), [...model.network.findings.keys()]), draw);
}

/** A set of conditions, drawn from the priors; the empty set with its stated probability. */
export function drawnCauses(
  nothingWrong: number | null,
  parameters: Parameters,
  stream: RandomStream,
): readonly number[] {
  if (nothingWrong !== null && stream.next() < nothingWrong) return [];
  for (;;) {
    const causes = [...parameters.singles].filter((condition) => isDrawn(parameters.odds[condition] ?? 0, stream));
    for (const { members, weight } of parameters.blocks) {
      const states = weight.map((each, state) =>
        members.reduce(
          (product, member, at) => (((state >> at) & 1) === 1 ? product * (parameters.odds[member] ?? 0) : product),
          each,
        ),
      );
      const state = drawnIndex(states, stream);
      causes.push(...[...members].filter((_, at) => ((state >> at) & 1) === 1));
    }
    if (causes.length > 0 || nothingWrong === null) return causes;
  }
}

/** Which findings are there, given the causes: the leak and each cause touch each group or not, and then bring findings. */
export function drawnFindings(
  { conditions, findings, groups, groupOf, gate, healthyGate, link, keep, healthy }: Parameters,
  causes: readonly number[],
  stream: RandomStream,
): readonly boolean[] {
  const isTouched = (chance: number) => stream.next() < chance;
  const leak = Array.from({ length: groups }, (_, group) => isTouched(healthyGate[group] ?? 1));
  const touched = causes.map((cause) =>
    Array.from({ length: groups }, (_, group) => isTouched(gate[group * conditions + cause] ?? 1)),
  );
  return Array.from({ length: findings }, (_, finding) => {
    const group = groupOf[finding] ?? 0;
    let missed = leak[group] ? 1 - (healthy[finding] ?? 0) / (healthyGate[group] ?? 1) : 1;
    let kept = 1;
    for (const [index, cause] of causes.entries()) {
      const at = finding * conditions + cause;
      if (touched[index]?.[group]) missed *= 1 - (link[at] ?? 0) / (gate[group * conditions + cause] ?? 1);
      kept *= keep[at] ?? 1;
    }
    return stream.next() < kept * (1 - missed);
  });
}

const isDrawn = (odds: number, stream: RandomStream): boolean => stream.next() < odds / (1 + odds);

function drawnIndex(weights: Float64Array, stream: RandomStream): number {
  let left = stream.next() * weights.reduce((sum, each) => sum + each, 0);
  for (const [index, weight] of weights.entries()) {
    left -= weight;
    if (left < 0) return index;
  }
  return weights.length - 1;
}

/** The network with its groups tied otherwise. */
export const tied = (network: Network, dependence: number): Network => ({ ...network, dependence });
