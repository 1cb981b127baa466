/** The differential of one colony: what could explain it, several causes at once, with reasons, ranges and bars. */
import { type ConditionId, type Evidence, type FrequencyInUse, publishedEvidence } from "../../knowledge/index.ts";
import { answered, blocked, problem, type Result } from "../../units/index.ts";
import type { AgentLevel, AnyAnswer, DifferentialAnswer, RankedCondition } from "./answer.ts";
import { type CaseModel, carriedShare, caseModel, rollUps, statedCase } from "./case-model.ts";
import { checkedCase } from "./checked-case.ts";
import { type Ranges, rangesOf } from "./draws.ts";
import type { AnyInput, DifferentialInput, ReadCase } from "./input.ts";
import { noticesOf } from "./notices.ts";
import type { Posterior } from "./posterior.ts";
import { reasonsOf, speaksAgainst, speaksFor, statedPosterior } from "./reasons.ts";
import { verdictOf } from "./verdict.ts";

/**
 * Ranked conditions of one colony, with ranges, reasons in bits, a verdict and what must not be missed.
 *
 * Model: conditions are present together or not, with independent prior odds by season and region and a stated weight
 * for nothing wrong; signs by noisy-OR over the healthy rate of the season; counts bear on the level of an agent, and
 * only the clinical level explains signs. Exact over all sets of conditions. Grades are judgement: low and high are
 * the 5 and 95 % points of draws of all of them. Not looked for is not absent.
 *
 * Not a diagnosis: without a test of the tracheae, tracheal mites are never named.
 *
 * @returns the answer, or every problem of the input by field; warnings travel with the answer
 * @source design of the noisy-OR network: Pearl 1988; Shwe et al. 1991; quickscore: Heckerman 1989
 * @example
 * differential({ season: "autumn", findings: {} }).ok  // → true
 */
export function differential(input: DifferentialInput): Result<DifferentialAnswer>;
/** The same with the evidence that a programme uses; its own conditions and findings have ids beside the published. */
export function differential(input: AnyInput, evidence: Evidence): Result<AnyAnswer>;
export function differential(
  input: AnyInput,
  evidence: Evidence = publishedEvidence,
): Result<DifferentialAnswer | AnyAnswer> {
  const read = checkedCase(input, evidence);
  if (!read.ok) return read;
  const problems = [...read.problems];
  const { given, checked } = read.value;
  const model = caseModel(checked, problems, evidence);
  const posterior = statedPosterior(model);
  if (posterior === null) return blocked(problem("evidence-contradicts-model", "blocked", "findings"));
  const ranges = rangesOf(model, posterior);
  const conditions = ranked(model, posterior, ranges);
  const groups = rollUps
    .map((id, index) => ({
      id,
      posterior: posterior.group[index] ?? 0,
      ...(ranges.group[index] ?? { low: 0, high: 1 }),
    }))
    .sort((a, b) => b.posterior - a.posterior);
  const mustNotMiss = noticesOf(given);
  return answered(
    {
      conditions,
      groups,
      nothingWrong: posterior.nothingWrong,
      verdict: verdictOf({ model, mustBeReported: mustNotMiss.some(({ report }) => report) }, conditions, groups),
      mustNotMiss,
      neglectedMass: posterior.neglectedMass,
      knowledge: { version: evidence.version, judgedShare: judgedShare(checked, evidence) },
    },
    problems,
  );
}

function ranked(model: CaseModel, posterior: Posterior, ranges: Ranges): readonly RankedCondition[] {
  const reasons = reasonsOf(model, posterior);
  const { conditionIds, conditions } = model.evidence;
  return (conditionIds as readonly ConditionId[])
    .map((id, index): RankedCondition => {
      const level = levelOf(model, posterior, id, index);
      return {
        id,
        role: conditions[id]?.role ?? "cause",
        posterior: posterior.condition[index] ?? 0,
        ...(ranges.condition[index] ?? { low: 0, high: 1 }),
        ...(level === null ? {} : { level }),
        for: speaksFor(reasons[index] ?? []),
        against: speaksAgainst(reasons[index] ?? []),
      };
    })
    .sort((a, b) => b.posterior - a.posterior);
}

function levelOf(model: CaseModel, posterior: Posterior, id: ConditionId, index: number): AgentLevel | null {
  const at = model.levels.findIndex(({ condition }) => condition === id);
  if (at < 0) return null;
  const clinical = posterior.condition[index] ?? 0;
  const background = (1 - clinical) * carriedShare(model, statedCase(model), at);
  return { none: 1 - clinical - background, background, clinical };
}

/** Share of the pairs used that rest on judgement alone. Healthy rates, all judged, are not pairs and are not counted. */
function judgedShare({ present, absent }: ReadCase, { conditionIds, findingIds, frequencies }: Evidence): number {
  const seen: readonly string[] = [...present, ...absent];
  const looked = findingIds.filter((id) => seen.includes(id));
  const pairs = conditionIds.flatMap((id) => looked.flatMap((finding) => frequencies[id]?.[finding] ?? []));
  const judged = ({ source, change }: FrequencyInUse) =>
    change === null ? source === "judgement" : change.citation.source === null;
  return pairs.length === 0 ? 1 : pairs.filter(judged).length / pairs.length;
}
