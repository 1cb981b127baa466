/**
 * The steps of the plans of a case: which were done, which not, which are overdue; and what marking one writes down.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, type PlanState, plansOf, settled } from "../../../casebook/index.ts";
import type { BodyOf, EntryDraft } from "../../../journal/index.ts";
import { type ControlId, controls } from "../../../knowledge/index.ts";
import { type Day, problem, type Result } from "../../../units/index.ts";
import type { Words } from "../../words/index.ts";
import { type Fields, type FormReader, present, readForm } from "../form.ts";
import { happenedOn } from "../happened.ts";
import { stepHeed } from "./step-heed.ts";
import { type StepState, stepState } from "./step-state.ts";

type Plan = BodyOf<"plan-made">;
type Step = Plan["steps"][number];

export interface StepRow {
  readonly plan: PlanState;
  readonly body: Plan;
  readonly step: Step;
  readonly what: string;
  readonly state: StepState;
  readonly says: string;
  readonly deviation: string | null;
  /** What a done step lies outside of: its planned day, the temperatures of the label. */
  readonly heed: readonly string[];
}

/** Every step of every plan of a case, by day. */
export function stepRows(
  casebook: Casebook,
  state: CaseState,
  { today, words }: { readonly today: Day; readonly words: Words },
): readonly StepRow[] {
  return plansOf(casebook, state.id)
    .flatMap((plan) => {
      const body = settled(plan.record);
      const heedOf = body ? stepHeed(casebook, state, { plan, body, words }) : () => [];
      return (body?.steps ?? []).map((step) => ({
        ...stepRow(plan, { body: body as Plan, step, today, words }),
        heed: heedOf(step),
      }));
    })
    .sort((one, other) => one.step.on.localeCompare(other.step.on));
}

function stepRow(
  plan: PlanState,
  asked: { readonly body: Plan; readonly step: StepRow["step"]; readonly today: Day; readonly words: Words },
): Omit<StepRow, "heed"> {
  const { body, step, today, words } = asked;
  const say = words.worked;
  const kept = plan.done[step.step];
  const marked = settled(kept);
  const term = controls[body.control as ControlId]?.term ?? body.control;
  const common = {
    plan,
    body,
    step,
    what: `${words.done.stepShort[step.kind]}, ${term}`,
    deviation: marked?.deviation ?? null,
  };
  const stands = stepState(kept, { on: step.on, today });
  if (marked)
    return {
      ...common,
      state: stands,
      says: marked.state === "done" ? say.done({ on: marked.on }) : say.notDone({ on: marked.on }),
    };
  const says = stands === "conflict" ? say.conflict : stands === "overdue" ? say.late : say.waits;
  return { ...common, state: stands, says };
}

/**
 * Body of `plan-step-done` from the form. Refused: a day to come or before the plan, and a step done out of the order
 * of its plan. A day beside the planned one is taken, and the row then says so.
 */
export function readStepDone(
  fields: Fields,
  { row, today, words }: { readonly row: StepRow; readonly today: Day; readonly words: Words },
): Result<BodyOf<"plan-step-done">> {
  const form = readForm(fields);
  const state = form.oneOf("state", ["done", "not-done"]);
  const on = happenedOn(form, "on", today);
  if (on < row.body.madeOn)
    form.complain(problem("step-before-plan", "blocked", "on", { given: on, slots: { made: row.body.madeOn } }));
  else if (state === "done" && on <= today) heedOrder(form, row, { on, words });
  return form.result(
    present({
      step: row.step.step,
      state,
      on,
      gramsInAll: form.maybeNumber("grams", { min: 0.001, max: 1e6, unit: "g" }),
      deviation: form.maybeText("deviation"),
    }),
  );
}

/** Steps that need something to be in the hive, or taken out of it, before they can be done. */
const needs: Readonly<Partial<Record<Step["kind"], readonly Step["kind"][]>>> = {
  check: ["apply", "feed", "requeen"],
  remove: ["apply", "feed"],
  recheck: ["apply", "feed", "requeen", "remove"],
};

/** A step lies after those planned for earlier days and before those planned for later ones; what it needs is done. */
function heedOrder(
  form: FormReader,
  { plan, body, step }: StepRow,
  { on, words }: { readonly on: Day; readonly words: Words },
): void {
  const others = body.steps
    .filter((other) => other.step !== step.step)
    .map((other) => {
      const marked = settled(plan.done[other.step]);
      const name = `${words.done.stepShort[other.kind]} (${words.case.day({ day: other.on })})`;
      return { other, name, state: marked?.state ?? null, doneOn: marked?.state === "done" ? marked.on : null };
    });
  const missing = others.find(
    ({ other, state }) => state === null && other.on < step.on && needs[step.kind]?.includes(other.kind),
  );
  if (missing) {
    form.complain(problem("step-needs-earlier", "blocked", "on", { slots: { other: missing.name } }));
    return;
  }
  const wrong = others.find(
    ({ other, doneOn }) =>
      doneOn !== null && ((other.on < step.on && doneOn > on) || (other.on > step.on && doneOn < on)),
  );
  if (wrong?.doneOn)
    form.complain(
      problem("step-out-of-order", "blocked", "on", {
        given: on,
        slots: { other: wrong.name, on: wrong.doneOn, before: wrong.other.on < step.on ? 1 : 0 },
      }),
    );
}

/**
 * Marking a step. Something put into hives or taken out is written down for the apiary too, so that a later count
 * knows of it: a zero after a treatment is weak.
 */
export function stepDoneDrafts(
  casebook: Casebook,
  state: CaseState,
  { row, data, today }: { readonly row: StepRow; readonly data: BodyOf<"plan-step-done">; readonly today: Day },
): readonly EntryDraft[] {
  const marked: EntryDraft = {
    kind: "plan-step-done",
    at: data.on,
    about: [row.plan.id],
    replaces: row.plan.done[row.step.step]?.candidates.map((each) => each.entry) ?? [],
    data,
  };
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const ingredient = ingredientOf(casebook, row.body);
  if (!apiary || ingredient === null || data.state !== "done") return [marked];
  const number = /\d+$/.exec(row.step.step)?.[0] ?? "1";
  const slot = `${row.plan.id}-${number}`;
  const kept = apiary.treatments[slot];
  const before = settled(kept);
  const write = (treatment: BodyOf<"treatment-recorded">): EntryDraft => ({
    kind: "treatment-recorded",
    at: today,
    about: [apiary.id, slot],
    replaces: kept?.candidates.map((each) => each.entry) ?? [],
    data: treatment,
  });
  if (row.step.kind === "apply" || row.step.kind === "feed")
    return [
      marked,
      write(
        present({
          activeIngredient: ingredient,
          on: data.on,
          off: null,
          grams: gramsPerColony(data.gramsInAll ?? row.step.gramsInAll ?? null, row.body.colonies.length),
          colonies: row.body.colonies,
        }),
      ),
    ];
  return row.step.kind === "remove" && before ? [marked, write({ ...before, off: data.on })] : [marked];
}

/** A treatment on record says the amount for one colony, a step the amount in all. */
const gramsPerColony = (inAll: number | null, colonies: number): number | undefined =>
  inAll === null || colonies === 0 ? undefined : inAll / colonies;

/** What goes into the hives: from the label record, or the only ingredient of the control; null when nothing does. */
function ingredientOf(casebook: Casebook, body: Plan): string | null {
  const label = body.labelRecord === null ? null : settled(casebook.labelRecords[body.labelRecord]?.record);
  const known = controls[body.control as ControlId]?.activeIngredients ?? [];
  return label?.activeIngredient ?? known[0] ?? null;
}
