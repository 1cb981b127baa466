/** Two causes side by side for people: how they stand, what was seen that parts them, and what would. */
import type { Evidence } from "../../knowledge/index.ts";
import type { differential } from "../../reasoning/index.ts";
import { comparisonView } from "../model/index.ts";
import { wordsOf } from "../words/index.ts";
import { table } from "./table.ts";

export function comparisonForPeople(
  compared: differential.CauseComparison<string, string>,
  evidence: Evidence,
  isStopped: boolean,
): string {
  const words = wordsOf("en");
  const say = words.could;
  const { says, terms, seen, unseen } = comparisonView(compared, words, evidence);
  const columns = say.compareColumns;
  return [
    ...(isStopped ? ["Report first.\n"] : []),
    `${says.replaceAll("**", "")} ${say.compareUnder}\n`,
    `${say.compareSeen}\n${
      seen.length === 0
        ? `${say.compareNothing}\n`
        : table(
            [columns.what, columns.towards, columns.bits].map(lower),
            seen.map(({ term, towards, bits }) => [term, terms[towards], bits]),
          )
    }`,
    isStopped
      ? say.stepsWait
      : `${say.compareUnseen}\n${table(
          [columns.what, columns.found, columns.not, columns.minutes].map(lower),
          unseen.map(({ term, ifFound, ifNot, minutes }) => [term, ifFound, ifNot, minutes]),
        )}`,
  ].join("\n");
}

const lower = (text: string): string => text.toLowerCase();
