/** Sentences of `reduction`, and the names of its forms. */
import type { Answers } from "../../../../reasoning/index.ts";
import { hundred, signed } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

const names: Readonly<Record<string, string>> = {
  "henderson-tilton-poisson": "Henderson and Tilton",
  "henderson-tilton-poisson-half": "Henderson and Tilton",
  "henderson-tilton-shares": "Henderson and Tilton",
  "henderson-tilton-shares-half": "Henderson and Tilton",
  "henderson-tilton-shares-score": "Henderson and Tilton",
  "abbott-katz": "Abbott, Katz’s range",
  "abbott-katz-half": "Abbott, Katz’s range",
  "abbott-koopman": "Abbott, Koopman’s range",
  "schneider-orelli": "Schneider-Orelli",
  "sun-shepard": "Sun and Shepard",
};

export const reduction = {
  asks: "Did it work? Treated against untreated colonies",
  under:
    "Counts of both groups, looked at on the same days. Without a look before, both are taken to have started alike.",
  fields: {
    measure: { label: "Counted", choices: { infested: "bees or colonies with mites", mites: "mites" } },
    "treatedBefore.found": {
      label: "Treated, before: with mites",
      hint: "When nobody looked before, leave this and the three other fields before empty.",
    },
    "treatedBefore.of": { label: "Treated, before: looked at" },
    "treatedAfter.found": { label: "Treated, after: with mites" },
    "treatedAfter.of": { label: "Treated, after: looked at" },
    "controlBefore.found": { label: "Untreated, before: with mites" },
    "controlBefore.of": { label: "Untreated, before: looked at" },
    "controlAfter.found": { label: "Untreated, after: with mites" },
    "controlAfter.of": { label: "Untreated, after: looked at" },
    designEffect: {
      label: "Design effect",
      hint: "1 when bees fall alone. Bees of one colony are alike: more than 1.",
    },
    level: { label: "Certainty of the range, of 100", per: 100 },
  },
  says: ({ reduction: found, measure, whyNone }) => {
    if (found === null)
      return whyNone === "no-mites-before"
        ? "**No reduction can be told.** One group had no mites before, so that the two did not start alike and no fall can be set beside a fall."
        : "Without untreated colonies nothing can be said of the treatment.";
    const { value, low, high } = found;
    const what = measure === "mites" ? "mites" : "infested bees";
    const range = `and it could be ${signed(low)} to ${signed(high)}`;
    if (value < 0)
      return `**The treated did worse: ${hundred(-value)} in 100 more ${what}** than without treatment, a reduction of ${signed(value)}, ${range}.`;
    const open = low <= 0 ? " The range reaches 0: this trial cannot say that it worked." : "";
    if (value === 1 && low > 0)
      return `**None found after.** Of 100 ${what} that there would have been, at least ${signed(low)} are gone.`;
    return value === 1
      ? `**None found after,** of too few to tell.${open}`
      : `**Of 100 ${what} that there would have been, ${hundred(value)} are gone,** ${range}.${open}`;
  },
  nameOf: (method: string) => names[method] ?? method,
  forms: "The reduction by each form",
  formsUnder: "The last rows are older forms without a range, and the fall in the treated alone, which is no efficacy.",
  form: "Form",
  axis: "Reduction, in 100",
  alone: "Fall in treated alone",
  noEffect: "no effect",
  label: (rows: readonly { readonly name: string; readonly value: number }[]) =>
    `Reduction in 100: ${rows.map(({ name, value }) => `${name} ${signed(value)}`).join("; ")}`,
} satisfies MethodWords<Answers["reduction"]> & Record<string, unknown>;
