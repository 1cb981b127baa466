/**
 * The ranked causes as a table.
 *
 * @module views/model
 */
import type { Words } from "../words/index.ts";
import type { CouldView, ReasonView } from "./could.ts";

/** The table twin, shares unrounded. */
export function causesTable(
  view: CouldView,
  words: Words,
): { readonly columns: readonly string[]; readonly rows: readonly (readonly (string | number)[])[] } {
  const say = words.could.columns;
  const reasons = (all: readonly ReasonView[]) =>
    all.map((reason) => `${reason.term} ${reason.bits.toFixed(2)}`).join("; ");
  return {
    columns: ["id", say.condition, say.share, say.low, say.high, say.word, say.for, say.against],
    rows: view.causes.map((cause) => [
      cause.id,
      cause.term,
      100 * cause.posterior,
      100 * cause.low,
      100 * cause.high,
      cause.word,
      reasons(cause.for),
      reasons(cause.against),
    ]),
  };
}
