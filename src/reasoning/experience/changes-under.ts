/** Which past answers another evidence would change, before anyone accepts it. */
import { answered, blocked, type Problem, type Result } from "../../units/index.ts";
import { type AnyAnswer, type AnyInput, differential } from "../differential/index.ts";
import { askedUnder, type Reckoning } from "./in-use.ts";
import { experienceProblem } from "./problems.ts";

/** A past case as it was asked. */
export interface PastCase {
  readonly id: string;
  /** The colony that was asked about; null for the whole apiary. */
  readonly colony: string | null;
  readonly input: AnyInput;
  /** As it could be asked under the other evidence, findings of its own included; left out: the same. */
  readonly inputAfter?: AnyInput;
}

/** What was answered: the verdict, and the likeliest condition with its probability. */
export interface AnswerInShort {
  readonly verdict: AnyAnswer["verdict"];
  readonly likeliest: string;
  readonly posterior: number;
}

/** A case whose answer would change. */
export interface ChangedAnswer {
  readonly case: string;
  readonly colony: string | null;
  readonly before: AnswerInShort;
  readonly after: AnswerInShort;
}

/** What would change, of how many. */
export interface ChangedAnswers {
  readonly compared: number;
  readonly changed: readonly ChangedAnswer[];
  /** One for each case that one of the two cannot answer; they are not compared. */
  readonly problems: readonly Problem[];
}

/**
 * The cases whose verdict or likeliest condition would differ between two ways to reckon, in the order given.
 *
 * `tell` hears which share is done. Both answers use the same draws, so that a difference comes of the evidence and not of chance.
 */
export function changesUnder(
  before: Reckoning,
  after: Reckoning,
  cases: readonly PastCase[],
  tell: (share: number) => void = () => undefined,
): ChangedAnswers {
  const problems: Problem[] = [];
  const changed: ChangedAnswer[] = [];
  let compared = 0;
  for (const [at, { id, colony, input, inputAfter = input }] of cases.entries()) {
    tell(at / cases.length);
    const [old, now] = [shortAnswer(input, before), shortAnswer(inputAfter, after)];
    if (!old.ok || !now.ok) {
      const codes = [old, now].flatMap((each) => (each.ok ? [] : each.problems.map(({ code }) => code)));
      const why = [...new Set(codes)].join(", ");
      // Said once of a case, however many of its colonies cannot be answered.
      if (!problems.some(({ slots }) => slots.case === id && slots.why === why))
        problems.push(experienceProblem("case-unreadable", "warned", id, { case: id, why }));
      continue;
    }
    compared += 1;
    if (isSame(old.value, now.value)) continue;
    changed.push({ case: id, colony, before: old.value, after: now.value });
  }
  return { compared, changed, problems };
}

function shortAnswer(input: AnyInput, reckoning: Reckoning): Result<AnswerInShort> {
  const answer = differential(askedUnder(input, reckoning), reckoning.evidence);
  if (!answer.ok) return answer;
  const { verdict, conditions } = answer.value;
  const [first] = conditions;
  return first === undefined ? blocked() : answered({ verdict, likeliest: first.id, posterior: first.posterior });
}

const isSame = (one: AnswerInShort, other: AnswerInShort): boolean =>
  one.likeliest === other.likeliest &&
  one.verdict.kind === other.verdict.kind &&
  one.verdict.condition === other.verdict.condition &&
  one.verdict.group === other.verdict.group;
