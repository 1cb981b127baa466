/**
 * Results that were not read bee by bee here: as sentences with their intervals, and as typed into a form.
 *
 * @module views/model
 */
import { type Candidate, type Casebook, type CaseState, settled } from "../../../casebook/index.ts";
import type { BodyOf, EntryDraft } from "../../../journal/index.ts";
import {
  type ConditionId,
  conditions,
  isConditionId,
  isTestId,
  type ResultKind,
  type TestId,
  tellsApart,
  testIds,
  tests,
  thresholds,
} from "../../../knowledge/index.ts";
import { bench } from "../../../reasoning/index.ts";
import type { Day } from "../../../units/index.ts";
import type { Words } from "../../words/index.ts";
import { colonyCode } from "../bench/worklist.ts";

export interface OtherTest {
  readonly entry: string;
  readonly test: string;
  readonly colony: string;
  readonly on: Day;
  readonly says: string;
  /** Published lines about it, in the words of the knowledge. */
  readonly lines: readonly string[];
  readonly laboratory: string | null;
  readonly author: string;
  readonly note: string | null;
}

/** Results of a case, newest first. */
export function otherTests(casebook: Casebook, state: CaseState, words: Words): readonly OtherTest[] {
  return Object.values(state.tests)
    .map((candidate) => otherTest(casebook, state, { candidate, words }))
    .sort((one, other) => other.on.localeCompare(one.on));
}

function otherTest(
  casebook: Casebook,
  state: CaseState,
  { candidate, words }: { readonly candidate: Candidate<BodyOf<"test-result-recorded">>; readonly words: Words },
): OtherTest {
  const { value } = candidate;
  const fact = isTestId(value.test) ? tests[value.test] : null;
  return {
    entry: candidate.entry,
    test: fact?.term ?? value.test,
    colony: value.colony === null ? words.found.wholeApiary : colonyCode(casebook, state.id, value.colony),
    on: value.on,
    says: resultSays(value, words),
    lines: value.mites !== undefined && value.test === "varroa-wash" ? varroaLines : [],
    laboratory: value.laboratory ?? null,
    author: candidate.author,
    note: value.note ?? null,
  };
}

const varroaLines: readonly string[] = (
  ["varroa-action-usda", "varroa-august-british-columbia", "varroa-field-experience"] as const
).map((key) => thresholds[key].words);

/** A result in words, with the interval where it is a count. */
export function resultSays(value: BodyOf<"test-result-recorded">, words: Words): string {
  const say = words.found;
  const parts: string[] = [];
  if (value.mites !== undefined && value.bees !== undefined) {
    const wash = bench.washEstimate({ mites: value.mites, bees: value.bees });
    if (wash.ok) parts.push(say.wash({ mites: value.mites, bees: value.bees, ...wash.value }));
  }
  if (value.positive !== undefined && value.examined !== undefined) {
    const share = bench.prevalence({ positive: value.positive, examined: value.examined });
    if (share.ok) parts.push(say.share({ positive: value.positive, examined: value.examined, ...share.value }));
  }
  if (value.sporesMillionsPerBee !== undefined) parts.push(say.sporesSay({ millions: value.sporesMillionsPerBee }));
  const which = (value.which ?? []).filter(isConditionId).map((id) => conditions[id].term);
  if (value.result) parts.push(say.resultOf({ result: value.result, which }));
  if (value.sequenced !== undefined) parts.push(say.sequencedSays({ sequenced: value.sequenced }));
  if (value.harmfulDose !== undefined) parts.push(say.doseSays({ harmful: value.harmfulDose }));
  return parts.join("; ");
}

/** Which fields a test's result has. */
export type ResultShape = "share" | "mites" | "spores" | "found-or-not";

const shapes: Readonly<Partial<Record<ResultKind, ResultShape>>> = {
  "positive-of-examined": "share",
  "mites-per-bees": "mites",
  "spores-per-bee": "spores",
};

/** Shape of the result of a test. */
export const resultShape = (test: string): ResultShape =>
  (isTestId(test) ? shapes[tests[test].result] : undefined) ?? "found-or-not";

/** What else a result can say, by its test. */
export interface MoreOfResult {
  /** The conditions among which it can say what was found. */
  readonly which: readonly ConditionId[];
  readonly asksSequenced: boolean;
  readonly asksDose: boolean;
}

/** What else the result of a test can say. */
export const moreOf = (test: string): MoreOfResult => ({
  which: isTestId(test) ? tellsApart(test) : [],
  asksSequenced: test === "pooled-pcr",
  asksDose: test === "residue-screen",
});

/** How bees are kept until they are read, the commonest first. */
export const keepings = ["ethanol-70", "frozen", "fresh", "dry"] as const;

/** Name of the tick that says that this was found. */
export const tickOf = (id: ConditionId): string => `which ${id}`;

/** Tests in the order of the form: the commonest first. */
export const testsInForm: readonly TestId[] = [
  "varroa-wash",
  "tracheal-dissection",
  "spore-count",
  ...testIds.filter((id) => !["varroa-wash", "tracheal-dissection", "spore-count"].includes(id)),
];

/** A result is written down. */
export const testResultDraft = (state: CaseState, data: BodyOf<"test-result-recorded">, today: Day): EntryDraft => ({
  kind: "test-result-recorded",
  at: today,
  about: data.colony === null ? [state.id] : [state.id, data.colony],
  data,
});

/** A result is taken back; its entry stays in the journal. */
export const withdrawTestDraft = (
  state: CaseState,
  entry: string,
  { reason, today }: { readonly reason: string; readonly today: Day },
): EntryDraft => ({
  kind: "entry-withdrawn",
  at: today,
  about: [state.id],
  replaces: [entry],
  data: { reason },
});

/** The name of the place and district of a case's apiary, where they are settled. */
export const apiaryOf = (casebook: Casebook, state: CaseState): BodyOf<"apiary-registered"> | null =>
  state.apiary === null ? null : settled(casebook.apiaries[state.apiary]?.record);
