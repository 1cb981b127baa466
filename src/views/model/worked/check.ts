/**
 * Before and after: the treated colonies, an untreated comparator, and what that lets one say.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, plansOf, settled } from "../../../casebook/index.ts";
import { efficacy } from "../../../reasoning/index.ts";
import { type Day, daysBetween, type Estimate, type Problem } from "../../../units/index.ts";
import { sentenceOf, type Words } from "../../words/index.ts";
import { type SpecimenFound, specimensFound } from "../found/specimens.ts";

/** Bees with mites of bees read, of one or several colonies, before and after. */
export interface BeforeAfter {
  readonly colonies: readonly string[];
  readonly before: efficacy.Share;
  readonly after: efficacy.Share;
  readonly beforeOn: Day;
  readonly afterOn: Day;
}

export interface CheckMethod {
  readonly key: "apparent" | "henderson-tilton" | "abbott";
  readonly name: string;
  readonly value: string;
  readonly range: string;
  readonly rule: string;
  readonly estimate: Estimate;
}

export interface CheckView {
  readonly treated: BeforeAfter;
  readonly control: BeforeAfter | null;
  readonly outcome: efficacy.TreatmentOutcome;
  readonly methods: readonly CheckMethod[];
  /** What would have been expected without treatment, in words; null without a comparator. */
  readonly expected: string | null;
  readonly notes: readonly string[];
  readonly daysAfter: number;
}

/** Days that two samples may lie apart and still count as taken together. Judgement, no source. */
export const sameLookDays = 14;

/** The span of a treatment: from the first thing put in to the last taken out, as done or else as planned. */
export interface TreatedSpan {
  readonly colonies: readonly string[];
  readonly from: Day;
  readonly to: Day;
}

/** The newest plan that puts something into hives or requeens; null when there is none. */
export function treatedSpan(casebook: Casebook, state: CaseState): TreatedSpan | null {
  const acts = plansOf(casebook, state.id).flatMap((plan) => {
    const body = settled(plan.record);
    if (!body) return [];
    const dayOf = (step: (typeof body.steps)[number]) => settled(plan.done[step.step])?.on ?? step.on;
    const isIn = (kind: string) => kind === "apply" || kind === "feed" || kind === "requeen";
    const days = body.steps
      .filter((step) => isIn(step.kind) || step.kind === "remove")
      .map(dayOf)
      .sort();
    const [first] = days;
    const last = days.at(-1);
    return first && last ? [{ colonies: body.colonies, from: first, to: last }] : [];
  });
  return acts.at(-1) ?? null;
}

/** Colonies outside the plan that were counted about when the treated ones were: those that can be compared with. */
export function comparators(
  casebook: Casebook,
  state: CaseState,
): readonly { readonly id: string; readonly code: string }[] {
  const span = treatedSpan(casebook, state);
  if (!span) return [];
  const specimens = specimensFound(casebook, state.id);
  const treated = looks(specimens, span.colonies, span);
  if (!treated) return [];
  const others = new Map(
    specimens
      .filter((each) => !span.colonies.includes(each.label.colony))
      .map((each) => [each.label.colony, each.colony]),
  );
  return [...others]
    .map(([id, code]) => ({ id, code }))
    .filter(({ id }) => looks(specimens, [id], span, treated) !== null)
    .sort((one, other) => one.code.localeCompare(other.code));
}

/** The check; null when no treated colony was counted before and after. */
export function checkView(
  casebook: Casebook,
  state: CaseState,
  asked: {
    /** Colony to compare with; null for none. */
    readonly control: string | null;
    readonly scored: "any-mite" | "living-mites";
    readonly words: Words;
  },
): CheckView | null {
  const { words } = asked;
  const span = treatedSpan(casebook, state);
  if (!span) return null;
  const specimens = specimensFound(casebook, state.id);
  const treated = looks(specimens, span.colonies, span);
  if (!treated) return null;
  const control = asked.control === null ? null : looks(specimens, [asked.control], span, treated);
  const daysAfter = Math.max(0, daysBetween(span.to, treated.afterOn));
  const result = efficacy.treatmentOutcome({ treated, control, scored: asked.scored, daysAfter });
  if (!result.ok) return null;
  const abbott = control ? efficacy.abbott({ treated: treated.after, control: control.after }) : null;
  const { apparentFall, efficacy: corrected, expectedWithout, fallNotByTreatment } = result.value;
  const methods = [
    method("apparent", apparentFall, words),
    ...(corrected ? [method("henderson-tilton", corrected, words)] : []),
    ...(abbott?.ok ? [method("abbott", abbott.value, words)] : []),
  ];
  return {
    treated,
    control,
    outcome: result.value,
    methods,
    expected:
      expectedWithout === null || fallNotByTreatment === null
        ? null
        : words.worked.expected({
            expected: expectedWithout,
            before: treated.before.infested / treated.before.examined,
            after: treated.after.infested / treated.after.examined,
            not: fallNotByTreatment,
          }),
    notes: sentences([...result.problems, ...(abbott?.problems ?? [])], words),
    daysAfter,
  };
}

const sentences = (problems: readonly Problem[], words: Words): readonly string[] => [
  ...new Set(problems.map((each) => sentenceOf(each, words))),
];

const method = (key: CheckMethod["key"], estimate: Estimate, words: Words): CheckMethod => ({
  key,
  name: words.worked.methods[key],
  value: words.worked.share({ share: estimate.value }),
  range: words.worked.range(estimate),
  rule: estimate.rule,
  estimate,
});

/**
 * The last look before the treatment began and the first one after it ended, summed over the colonies that have both;
 * for a comparator, only looks within `sameLookDays` of those of the treated. Samples with limits stay out.
 */
function looks(
  specimens: readonly SpecimenFound[],
  colonies: readonly string[],
  span: TreatedSpan,
  like?: BeforeAfter,
): BeforeAfter | null {
  const near = (day: Day, other: Day | undefined) =>
    other === undefined || Math.abs(daysBetween(day, other)) <= sameLookDays;
  const pairs = colonies.flatMap((colony) => {
    const own = specimens
      .filter((each) => each.label.colony === colony && each.estimate !== null && !each.isLimited && each.takenOn)
      .sort((one, other) => (one.takenOn ?? "").localeCompare(other.takenOn ?? ""));
    const before = own
      .filter((each) => (each.takenOn ?? "") <= span.from && near(each.takenOn ?? "", like?.beforeOn))
      .at(-1);
    const after = own.find((each) => (each.takenOn ?? "") > span.to && near(each.takenOn ?? "", like?.afterOn));
    return before && after ? [{ before, after }] : [];
  });
  const [first] = pairs;
  if (!first) return null;
  return {
    colonies: pairs.map((pair) => pair.before.colony),
    before: sum(pairs.map((pair) => pair.before)),
    after: sum(pairs.map((pair) => pair.after)),
    beforeOn: first.before.takenOn ?? "",
    afterOn: first.after.takenOn ?? "",
  };
}

const sum = (specimens: readonly SpecimenFound[]): efficacy.Share => ({
  infested: specimens.reduce((total, each) => total + (each.readings[0]?.tally.positive ?? 0), 0),
  examined: specimens.reduce((total, each) => total + (each.readings[0]?.tally.read ?? 0), 0),
});
