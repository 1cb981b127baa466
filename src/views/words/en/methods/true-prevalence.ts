/** Sentences of the true prevalence: its errors known, tried out, or believed. */
import type { Answers } from "../../../../reasoning/index.ts";
import { hundred, signed } from "./amounts.ts";
import { intervalNames } from "./intervals.ts";
import type { FieldWords, MethodWords } from "./method-words.ts";

const counts = {
  positive: { label: "Positive by the test" },
  examined: { label: "Tested in all" },
} as const satisfies Readonly<Record<string, FieldWords>>;

const level = { label: "Certainty of the range, of 100", per: 100 } as const;

/** What the corrected share says, and whether the formula had to be cut. */
function corrected(found: {
  readonly raw: number;
  readonly value: number;
  readonly apparent: number;
  readonly low: number;
  readonly high: number;
}): string {
  const { raw, value, apparent, low, high } = found;
  const cut = raw === value ? "" : ` The formula itself gives ${signed(raw)}, which no share can be; it was cut.`;
  if (low === high)
    return value === 0
      ? `**Fewer called positive than the test’s own errors would give:** ${hundred(apparent)} in 100. No range can be told; look again at how well the test clears.${cut}`
      : `**More called positive than a test with these errors could find:** ${hundred(apparent)} in 100. No range can be told; look again at how well the test finds.${cut}`;
  return `**${hundred(value)} in 100 truly infested,** and it could be ${hundred(low)} to ${hundred(high)}; the test called ${hundred(apparent)} positive.${cut}`;
}

const pictured = {
  names: intervalNames,
  ranges: "The share truly infested, by each method",
  method: "Method",
  share: "Infested, of 100",
  asFound: "Called positive",
  rangesLabel: (
    rows: readonly { readonly name: string; readonly low: number | null; readonly high: number | null }[],
  ) =>
    `Ranges in 100: ${rows.flatMap(({ name, low, high }) => (low === null || high === null ? [] : [`${name} ${hundred(low)} to ${hundred(high)}`])).join("; ")}`,
};

export const truePrevalence = {
  asks: "The test errs: how many are truly infested?",
  under:
    "How often it finds and how often it clears are known. Where they come from trials of the test, give the trials.",
  fields: {
    ...counts,
    sensitivity: { label: "Of 100 infested, found", per: 100 },
    specificity: { label: "Of 100 clean, cleared", per: 100 },
    level,
  },
  says: ({ raw, value, apparent, estimates: [exact] }) =>
    exact === undefined ? "" : corrected({ raw, value, apparent, low: exact.low, high: exact.high }),
  ...pictured,
} satisfies MethodWords<Answers["true-prevalence"]> & Record<string, unknown>;

export const truePrevalenceTrials = {
  asks: "The test was tried out: how many are truly infested?",
  under: "The trials of the test add their doubt to that of the sample.",
  fields: {
    ...counts,
    infestedFound: { label: "Trial: infested, and found" },
    infestedTried: { label: "Trial: infested in all" },
    cleanCleared: { label: "Trial: clean, and cleared" },
    cleanTried: { label: "Trial: clean in all" },
    level,
  },
  says: ({ raw, value, apparent, estimates: [first] }) =>
    first === undefined ? "" : corrected({ raw, value, apparent, low: first.low, high: first.high }),
  ...pictured,
} satisfies MethodWords<Answers["true-prevalence-trials"]> & Record<string, unknown>;

export const truePrevalenceBelief = {
  asks: "With what was believed before: how many are truly infested?",
  under:
    "Beliefs as beta priors: a and b are as if a − 1 had been positive and b − 1 negative. 1 and 1: any share alike.",
  fields: {
    ...counts,
    sensitivity: { label: "Of 100 infested, found", hint: "When it is known: then empty a and b below.", per: 100 },
    "sensitivityPrior.a": { label: "Belief about finding: a" },
    "sensitivityPrior.b": { label: "Belief about finding: b" },
    specificity: { label: "Of 100 clean, cleared", hint: "When it is known: then empty a and b below.", per: 100 },
    "specificityPrior.a": { label: "Belief about clearing: a" },
    "specificityPrior.b": { label: "Belief about clearing: b" },
    "prior.a": { label: "Belief about the share infested: a" },
    "prior.b": { label: "Belief about the share infested: b" },
    line: { label: "A line to read it against, of 100", hint: "Leave empty for none.", per: 100 },
    level: { label: "Content of the range, of 100", per: 100 },
  },
  says: ({ estimate: { value, low, high, level }, aboveLine }) => {
    const found = `**${hundred(value)} in 100 truly infested, on average,** and with ${hundred(level)} chances in 100 between ${hundred(low)} and ${hundred(high)}.`;
    if (aboveLine === null) return found;
    return `${found} Above ${hundred(aboveLine.line)} in 100: **${hundred(aboveLine.chance)} chances in 100.**`;
  },
  curve: "How likely the share lies above each line",
  curveUnder: "Read from a share upwards: the chance that more than so many are infested.",
  line: "Infested, of 100",
  chance: "Chance that it lies above, of 100",
  ends: (share: number) => `${hundred(share)} in 100`,
  mean: "mean",
  curveLabel: (points: readonly { readonly line: number; readonly chance: number }[]) =>
    points.map(({ line, chance }) => `above ${hundred(line)} in 100: ${hundred(chance)} chances in 100`).join("; "),
} satisfies MethodWords<Answers["true-prevalence-belief"]> & Record<string, unknown>;
