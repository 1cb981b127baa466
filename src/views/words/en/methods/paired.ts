/** Sentences of `paired`, and the names of its tests. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some } from "../numbers.ts";
import { figure, hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

const tests = {
  sign: "signs alone",
  wilcoxon: "Wilcoxon’s ranks",
  "sign-flip": "flips of signs",
};

export const paired = {
  asks: "The same colonies before and after: a change?",
  under:
    "One number a colony before and one after, such as mites on the board. Without untreated colonies a change is no proof of the treatment.",
  fields: {
    pairs: { label: "Before and after, one colony a line", hint: "For example 12 3." },
  },
  says: ({ colonies, fell, rose, tests: all }) => {
    const usable = all.filter((each) => each.pValue !== null);
    const best = usable.at(-1);
    if (best === undefined || best.pValue === null) return "";
    const went =
      fell >= rose ? `${figure(fell)} fell and ${figure(rose)} rose` : `${figure(rose)} rose and ${figure(fell)} fell`;
    return `**Of ${some(colonies, "colony", "colonies")} ${went}.** If nothing but chance were at work, a change as clear would come ${hundred(best.pValue)} times in 100 (by ${tests[best.test]}).`;
  },
  picture: "Each colony before and after",
  pictureUnder: "Below the line a colony fell, above it rose.",
  before: "Before",
  after: "After",
  colony: "colony",
  same: "no change",
  label: (pairs: readonly { readonly before: number; readonly after: number }[]) =>
    `Before and after: ${pairs
      .slice(0, 40)
      .map(({ before, after }) => `${figure(before)} and ${figure(after)}`)
      .join("; ")}`,
} satisfies MethodWords<Answers["paired"]> & Record<string, unknown>;
