/** The default losses behind `decisionGain`: what it costs to leave a cause alone, or to act for nothing. Judgement. */
import { type ConditionId, type Evidence, publishedEvidence, type Role, type Urgency } from "../../knowledge/index.ts";
import { ensure } from "../../units/index.ts";

/** In shares of one colony's value: 1 is the colony lost. All judgement; a person's own figures belong in the decision. */
export const lossTable: {
  readonly leftAlone: Readonly<Record<Urgency, number>>;
  readonly roleShare: Readonly<Record<Role, number>>;
  readonly spread: { readonly conditions: readonly ConditionId[]; readonly times: number };
  readonly act: number;
  readonly residual: number;
} = {
  /** Lost when the cause is there and nothing is done, by how soon it asks for something. */
  leftAlone: { "same-day": 0.6, "within-a-week": 0.5, "within-a-month": 0.3, "next-season": 0.1 },
  /** Share of that by role: a secondary one follows another cause; a normal state loses nothing. */
  roleShare: { cause: 1, secondary: 0.5, syndrome: 0.5, normal: 0 },
  /** What the law may want to hear of because it goes from hive to hive: left alone it takes other colonies as well. */
  spread: { conditions: ["american_foulbrood", "european_foulbrood", "tropilaelaps", "small_hive_beetle"], times: 3 },
  /** Lost by acting against a cause, there or not: work, disturbance, material. */
  act: 0.1,
  /** Share of the loss that is left when one acts and the cause is there. */
  residual: 0.4,
};

/** Loss when the condition is there and nothing is done, in shares of one colony's value. */
export function lossLeftAlone(id: string, { conditions }: Evidence = publishedEvidence): number {
  const fact = conditions[id];
  ensure(fact !== undefined, "id", id, "a condition of the evidence");
  const { conditions: spreading, times } = lossTable.spread;
  const own = lossTable.leftAlone[fact.urgency] * lossTable.roleShare[fact.role];
  return (spreading as readonly string[]).includes(id) ? times * own : own;
}

/**
 * Expected loss of the better choice for each condition by itself, act or leave it, summed over conditions.
 * `probability` in the order of `ids`.
 */
export function expectedLoss(
  ids: readonly string[],
  probability: Float64Array,
  evidence: Evidence = publishedEvidence,
): number {
  let loss = 0;
  for (let index = 0; index < ids.length; index++) {
    const left = lossLeftAlone(ids[index] as string, evidence) * (probability[index] as number);
    loss += Math.min(left, lossTable.act + lossTable.residual * left);
  }
  return loss;
}
