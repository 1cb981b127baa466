/**
 * The entries of question 5: the decision with its reason, the plan and its later versions.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, type PlanState, plansOf, settled } from "../../../casebook/index.ts";
import type { BodyOf, EntryDraft } from "../../../journal/index.ts";
import { controlIds, knowledgeVersion } from "../../../knowledge/index.ts";
import { type Day, problem, type Result } from "../../../units/index.ts";
import { type Fields, present, readForm } from "../form.ts";
import type { Weighing } from "./choice.ts";
import { tickedColonies } from "./plan-request.ts";

/** Body of `decision-recorded` from the form; what it was reckoned from rides along. */
export function readDecision(
  fields: Fields,
  { today, weighing }: { readonly today: Day; readonly weighing: Weighing | null },
): Result<BodyOf<"decision-recorded">> {
  const form = readForm(fields);
  const reviewOn = form.day("reviewOn");
  if (reviewOn < today && fields.reviewOn)
    form.complain(
      problem("field-days-reversed", "blocked", "reviewOn", { given: reviewOn, slots: { from: today, to: reviewOn } }),
    );
  return form.result(
    present({
      choice: form.oneOf("choice", ["wait", "test-first", "act-now"]),
      control: fields.control ? form.oneOf("control", controlIds) : undefined,
      colonies: [...tickedColonies(fields)],
      on: today,
      reason: form.text("reason"),
      reviewOn,
      reckonedFrom: weighing ? { ...weighing.prices, currency: weighing.currency } : undefined,
      knowledge: knowledgeVersion,
    }),
  );
}

/** The decision; it replaces every one that stands. */
export const decisionDraft = (state: CaseState, data: BodyOf<"decision-recorded">, today: Day): EntryDraft => ({
  kind: "decision-recorded",
  at: today,
  about: [state.id],
  replaces: state.decision?.candidates.map((each) => each.entry) ?? [],
  data,
});

/** The plan of a case that a new one for the same control would follow; null when there is none. */
export const earlierPlan = (casebook: Casebook, caseId: string, control: string): PlanState | null =>
  plansOf(casebook, caseId)
    .filter((plan) => settled(plan.record)?.control === control)
    .at(-1) ?? null;

/** A plan is written down: a new one, or the next version of an earlier one, which it replaces. */
export function planDraft(input: {
  readonly body: BodyOf<"plan-made">;
  readonly earlier: PlanState | null;
  readonly planId: string;
  readonly today: Day;
}): EntryDraft {
  const { body, earlier, planId, today } = input;
  return {
    kind: "plan-made",
    at: today,
    about: [earlier?.id ?? planId, body.case],
    replaces: earlier?.record?.candidates.map((each) => each.entry) ?? [],
    data: body,
  };
}

/** Number of the next version. */
export const nextVersion = (earlier: PlanState | null): number =>
  1 + Math.max(0, ...(earlier?.record?.candidates.map((each) => each.value.version) ?? []));
