/**
 * The verdict of question 2 as a sentence: what is proven before what is judged, and what must be reported before both.
 *
 * @module views/model
 */
import type { ConditionId, Evidence } from "../../knowledge/index.ts";
import type { differential } from "../../reasoning/index.ts";
import type { Words } from "../words/index.ts";
import { conditionTerm } from "./terms.ts";

type Answer = differential.AnyAnswer;
type Ranked = differential.RankedCondition<string, string>;
type Input = differential.AnyInput;

/** Causes below this are not named as what it could be. */
export const worthShowing = 0.1;

/** What a dissection has seen: bees with mites, of bees that could be read. */
export interface MitesSeen {
  readonly positive: number;
  readonly examined: number;
}

/** The condition that a dissection proves: a mite seen in a breathing tube is the mite itself, not a sign of it. */
export const provenByDissection: ConditionId = "tracheal_mites";

/**
 * The answer where something must be reported first: no normal state is named, and what signs cannot tell waits for
 * whom it is reported to.
 */
export const reportFirst = (answer: Answer): Answer => {
  const { kind, condition, group, because } = answer.verdict;
  const role = answer.conditions.find(({ id }) => id === condition)?.role;
  const isNormal = kind === "leading" && (condition === undefined ? group === "normal" : role === "normal");
  const isOpen = kind === "cannot-tell" && because !== "no-sign-or-test";
  return isNormal || isOpen ? { ...answer, verdict: { kind: "cannot-tell", because: "report-first" } } : answer;
};

/** The dissection with most bees with mites; null when none has found any. */
export function mitesSeen(input: Input): MitesSeen | null {
  const [best] = (input.tests ?? [])
    .filter((each) => each.test === "tracheal-dissection")
    .map(({ positive = 0, examined = 0 }) => ({ positive, examined }))
    .filter(({ positive }) => positive > 0)
    .sort((one, other) => other.positive - one.positive);
  return best ?? null;
}

/** The verdict, in the largest type of the page; what is proven comes before what is judged. */
export function verdictSentence(answer: Answer, said: Said): string {
  const { words, mites, evidence } = said;
  if (!mites) return judgedSentence(answer, said);
  const proven = words.could.proven({ term: conditionTerm(evidence, provenByDissection), ...mites });
  return isAboutOthers(answer) ? `${proven} ${judgedSentence(answer, said)}` : proven;
}

/** What a verdict is said with. */
interface Said {
  readonly words: Words;
  readonly mites: MitesSeen | null;
  readonly evidence: Evidence;
}

/** Whether the ranking names something else than what is proven. */
export const isAboutOthers = ({ verdict }: Answer): boolean =>
  verdict.kind === "leading" && verdict.condition !== provenByDissection;

function judgedSentence(answer: Answer, { words, evidence }: Said): string {
  const { verdict, conditions: ranked, groups } = answer;
  if (verdict.kind === "leading") {
    const lead = verdict.condition
      ? ranked.find((each) => each.id === verdict.condition)
      : groups.find((group) => group.id === verdict.group);
    const term = verdict.condition
      ? conditionTerm(evidence, verdict.condition)
      : words.could.groups[verdict.group ?? "normal"];
    if (lead) return words.could.leads({ term, share: lead.posterior, low: lead.low, high: lead.high });
  }
  const [first, second] = ranked.filter((each) => each.posterior >= worthShowing);
  if (verdict.because === "no-sign-or-test") return words.could.noSign({ share: answer.nothingWrong });
  const named = (each: Ranked) => ({ term: conditionTerm(evidence, each.id), share: each.posterior });
  const next = second ? named(second) : null;
  if (verdict.because === "report-first")
    return words.could.reportFirst({ first: first ? named(first) : null, second: next });
  return first ? words.could.cannotTell({ first: named(first), second: next }) : words.could.nothingStandsOut;
}
