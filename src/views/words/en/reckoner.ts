/** Sentences of the reckoner: any calculation without a case. */
import { inHundred, some, whole } from "./numbers.ts";

const times = (share: number): string => (share > 0.9999 ? "over 99.99" : String(Number((100 * share).toFixed(2))));

export const reckoner = {
  title: "Reckoner",
  answer: "**Reckon without a case.** Nothing here is kept.",
  sizeHead: "How many bees",
  sizeUnder: "So that an infestation is not missed.",
  prevalence: "Bees infested, of 100",
  prevalenceHint: "The smallest share that must not be missed.",
  confidence: "Found, times of 100",
  sensitivity: "Of 100 infested bees, found",
  sensitivityHint: "100: a perfect eye. Judged 90 to 95 for a trained one.",
  population: "Bees or colonies in all",
  populationHint: "Leave empty for a large colony.",
  reckon: "Reckon",
  size: (slots: {
    readonly bees: number;
    readonly prevalence: number;
    readonly reached: number;
    readonly population: number | null;
    readonly infested: number | null;
  }) =>
    slots.population === null || slots.infested === null
      ? `**${some(slots.bees, "bee", "bees")}** find ${inHundred(slots.prevalence)} in 100 infested ${times(slots.reached)} times in 100.`
      : `**${whole(slots.bees)} of ${whole(slots.population)}** find at least one of ${whole(slots.infested)} infested ${times(slots.reached)} times in 100.`,
  fewerHead: "What other numbers would find",
  fewerColumns: { examined: "Examined", found: "Found, times in 100", missed: "Missed, times in 100" },
  method: {
    infinite: "Binomial, a large colony; specificity taken as 1.",
    finite: "Hypergeometric, drawn without replacement; specificity taken as 1.",
    "clopper-pearson": "Clopper and Pearson, exact: at least the level, whatever the truth.",
    wilson: "Wilson’s score: close to the level on average.",
    jeffreys: "Jeffreys, a credible interval: close to the level on average.",
  },
  names: { "clopper-pearson": "exact", wilson: "score", jeffreys: "Jeffreys" },
  source: {
    size: "Pirk and others 2013, section 2.2",
    finite: "Cannon and Roe 1982; Cameron and Baldock 1998",
    "clopper-pearson": "Clopper and Pearson 1934",
    wilson: "Wilson 1927",
    jeffreys: "Brown, Cai and DasGupta 2001",
    zero: "Clopper and Pearson 1934",
  },
  trace: (slots: { readonly rule: string; readonly method: string; readonly source: string }) =>
    `${slots.method} Rule ${slots.rule}. Source: ${slots.source}.`,

  estimateHead: "From a count to a range",
  estimateUnder: "So many bees with mites, of so many read.",
  positive: "Bees with mites",
  examined: "Bees read",
  level: "Certainty of the range, of 100",
  line: "A line to read it against, of 100",
  lineHint: "Leave empty for none.",
  estimate: (slots: {
    readonly positive: number;
    readonly examined: number;
    readonly value: number;
    readonly low: number;
    readonly high: number;
  }) =>
    slots.positive === 0
      ? `**None found in ${some(slots.examined, "bee", "bees")}.** It could still be up to ${inHundred(slots.high)} in 100.`
      : `**${inHundred(slots.value)} in 100,** and it could be ${inHundred(slots.low)} to ${inHundred(slots.high)}.`,
  against: {
    over: (line: number) => `All of the range lies above ${line}.`,
    under: (line: number) => `All of the range lies below ${line}.`,
    either: (line: number) => `The range crosses ${line}: this count cannot say on which side it is.`,
  },
  chart: "The range by three methods",
  chartLabel: (slots: { readonly rows: string }) => `Ranges in 100: ${slots.rows}`,
  row: (slots: { readonly name: string; readonly low: number; readonly high: number }) =>
    `${slots.name} ${Number((100 * slots.low).toFixed(1))} to ${Number((100 * slots.high).toFixed(1))}`,
  columns: { method: "Method", value: "In 100", low: "From", high: "To", rule: "Rule" },
  oneSided: (slots: { readonly high: number; readonly level: number }) =>
    `One-sided: ${inHundred(slots.level)} in 100 certain that it is below ${Number((100 * slots.high).toFixed(1))} in 100 (rule SD8).`,
};
