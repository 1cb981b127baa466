/**
 * Question 2, further: what would put another cause first, and two causes side by side.
 *
 * @module views/model
 */
import { type Evidence, publishedEvidence } from "../../knowledge/index.ts";
import type { differential, nextStep } from "../../reasoning/index.ts";
import type { Words } from "../words/index.ts";
import { conditionTerm, stepTerm } from "./terms.ts";

/** "If you had also seen …", each a sentence. */
export const changesView = (
  changes: readonly nextStep.Change<string, string>[],
  words: Words,
  evidence: Evidence = publishedEvidence,
): readonly string[] =>
  changes.map((change) =>
    words.could.change({
      term: stepTerm(evidence, change.step),
      result: change.result,
      counted: countedIn(change.made),
      chance: change.chance,
      cause: conditionTerm(evidence, change.condition),
      share: change.posterior,
      instead: conditionTerm(evidence, change.instead),
      left: change.left,
    }),
  );

/** What a count would be of; null for a result that is found or not. */
function countedIn(made: nextStep.Change["made"]): Parameters<Words["could"]["change"]>[0]["counted"] {
  const { positive, examined = 0, mites, bees = 0, sporesMillionsPerBee } = made ?? {};
  if (positive !== undefined) return { what: "bees", count: positive, of: examined };
  if (mites !== undefined) return { what: "mites", count: mites, of: bees };
  return sporesMillionsPerBee === undefined ? null : { what: "spores", count: sporesMillionsPerBee, of: 1 };
}

export interface ComparisonView {
  readonly first: string;
  readonly second: string;
  readonly terms: { readonly first: string; readonly second: string };
  readonly says: string;
  readonly seen: readonly {
    readonly id: string;
    readonly term: string;
    readonly towards: "first" | "second";
    readonly bits: string;
  }[];
  readonly unseen: readonly {
    readonly id: string;
    readonly term: string;
    readonly ifFound: string;
    readonly ifNot: string;
    readonly minutes: string;
  }[];
}

/** Rows of what would part two causes. */
const mostUnseen = 6;

/** The best a minute, and among them the one that parts the two most of all, however long it takes. */
function decisiveAmong<Step extends { readonly parts: number }>(unseen: readonly Step[]): readonly Step[] {
  const [surest] = unseen.toSorted((one, other) => other.parts - one.parts);
  const first = unseen.slice(0, mostUnseen);
  return surest === undefined || first.includes(surest) ? first : [...first.slice(0, -1), surest];
}

/** Two causes side by side. */
export function comparisonView(
  compared: differential.CauseComparison<string, string>,
  words: Words,
  evidence: Evidence = publishedEvidence,
): ComparisonView {
  const say = words.could;
  const termOf = (id: string) => stepTerm(evidence, id);
  const terms = { first: conditionTerm(evidence, compared.first), second: conditionTerm(evidence, compared.second) };
  return {
    first: compared.first,
    second: compared.second,
    terms,
    says: say.compared({ ...terms, bits: compared.now, before: compared.before }),
    seen: compared.seen.map(({ id, kind, isPositive, bits }) => ({
      id,
      term:
        kind === "test"
          ? say.testReason({ term: termOf(id), isPositive })
          : isPositive
            ? say.reason({ term: termOf(id) })
            : say.absentReason({ term: termOf(id) }),
      towards: bits > 0 ? "first" : "second",
      bits: say.bits({ bits }),
    })),
    unseen: decisiveAmong(compared.unseen).map(({ id, isCount, bitsIfFound, bitsIfNot, minutes }) => ({
      id,
      term: termOf(id),
      ifFound: say.towards({ ...terms, bits: bitsIfFound, countOf: isCount ? terms.first : null }),
      ifNot: say.towards({ ...terms, bits: bitsIfNot, countOf: isCount ? terms.second : null }),
      minutes: words.tell.minutes({ minutes }),
    })),
  };
}
