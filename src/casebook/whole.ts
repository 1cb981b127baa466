/** A case with all that belongs to it, brought together once, so that a long list of cases stays quick. */
import { compareCodes } from "./order.ts";
import type { Casebook, CaseState, PlanState, SpecimenState } from "./state.ts";

/** What the caller knows and the casebook does not. */
export interface Asked {
  /** Ids of the red flags that must be asked. Left out: those that were recorded are all. */
  readonly redFlags?: readonly string[];
}

/** A case, its specimens and plans. */
export interface Whole {
  readonly state: CaseState;
  /** In order of code. */
  readonly specimens: readonly SpecimenState[];
  /** Oldest first. */
  readonly plans: readonly PlanState[];
  /** Ids of the red flags to be asked. */
  readonly redFlags: readonly string[];
}

/** The specimens that were labelled for a case, in order of code. */
export const specimensOf = ({ specimens }: Casebook, caseId: string): readonly SpecimenState[] =>
  (byCase(specimens).get(caseId) ?? []).toSorted(bySpecimenCode);

/** Specimens by case; kept for as long as the specimens are the same object. */
function byCase(specimens: Casebook["specimens"]): ReadonlyMap<string | null, readonly SpecimenState[]> {
  const known = specimensByCase.get(specimens);
  const index = known ?? Map.groupBy(Object.values(specimens), (specimen) => specimen.case);
  if (known === undefined) specimensByCase.set(specimens, index);
  return index;
}

const specimensByCase = new WeakMap<Casebook["specimens"], ReadonlyMap<string | null, readonly SpecimenState[]>>();

/** The plans made for a case, oldest first. */
export const plansOf = (casebook: Casebook, caseId: string): readonly PlanState[] =>
  Object.values(casebook.plans)
    .filter((plan) => plan.case === caseId)
    .sort(byAge);

/** The case with its specimens and plans. */
export const wholeOf = (casebook: Casebook, state: CaseState, { redFlags }: Asked = {}): Whole => ({
  state,
  specimens: specimensOf(casebook, state.id),
  plans: plansOf(casebook, state.id),
  redFlags: redFlags ?? Object.keys(state.redFlags),
});

/** Every case with its specimens and plans, each looked at once. */
export function wholesOf(casebook: Casebook, { redFlags }: Asked = {}): readonly Whole[] {
  const specimens = byCase(casebook.specimens);
  const plans = Map.groupBy(Object.values(casebook.plans), (plan) => plan.case);
  return Object.values(casebook.cases).map((state) => ({
    state,
    specimens: (specimens.get(state.id) ?? []).toSorted(bySpecimenCode),
    plans: (plans.get(state.id) ?? []).toSorted(byAge),
    redFlags: redFlags ?? Object.keys(state.redFlags),
  }));
}

const bySpecimenCode = (one: SpecimenState, other: SpecimenState): number => compareCodes(codeOf(one), codeOf(other));
const codeOf = (specimen: SpecimenState): string => specimen.label?.candidates[0].value.code ?? specimen.id;

const byAge = (one: PlanState, other: PlanState): number => (madeAt(one) < madeAt(other) ? -1 : 1);
const madeAt = (plan: PlanState): string => `${plan.record?.candidates[0].recordedAt ?? ""} ${plan.id}`;
