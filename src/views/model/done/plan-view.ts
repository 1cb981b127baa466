/**
 * A plan as a table: blockers first, each with what unlocks it, then the dated steps with what to heed.
 *
 * @module views/model
 */
import type { BodyOf } from "../../../journal/index.ts";
import { cautions, controls, knowledgeVersion } from "../../../knowledge/index.ts";
import type { control } from "../../../reasoning/index.ts";
import type { Day, Problem } from "../../../units/index.ts";
import { refusalReasons, sentenceOf, type Words } from "../../words/index.ts";

export interface PlanRow {
  readonly key: string;
  readonly tag: string | null;
  readonly when: string;
  readonly out: string | null;
  readonly what: string;
  readonly why: string;
  readonly trace: string;
  /** Where to go to unlock it. */
  readonly unlock: { readonly says: string; readonly to: "labels" | "apiary" | "reason" } | null;
}

export interface PlanView {
  readonly kind: "plan" | "refused";
  readonly control: string;
  readonly rows: readonly PlanRow[];
  readonly notes: readonly string[];
  readonly heed: readonly string[];
  /** The first lawful start of a refusal, in words; null of a plan. */
  readonly earliest: string | null;
  readonly options: string | null;
}

const unlocks: Readonly<Record<string, "label" | "supers" | "weather" | "reason">> = {
  "no-label-record": "label",
  "label-for-another-ingredient": "label",
  "label-for-another-jurisdiction": "label",
  "supers-on": "supers",
  "flow-and-supers-not-recorded": "supers",
  "too-close-to-supers": "supers",
  "no-temperature": "weather",
  "reason-needed-for-untested": "reason",
};

/** A plan or its refusal, with the problems that came with it. */
export function planView(plan: control.ControlPlan, problems: readonly Problem[], words: Words): PlanView {
  const notes = problems.map((each) => sentenceOf(each, words));
  const heed = plan.cautions.map((id) => cautions[id].words);
  return plan.kind === "plan"
    ? { ...made(plan, words), notes: [...madeNotes(plan, words), ...notes], heed }
    : { ...refused(plan, words), notes, heed };
}

type Rows = Pick<PlanView, "kind" | "control" | "rows" | "earliest" | "options">;

function made(plan: control.MadePlan, words: Words): Rows {
  const say = words.done;
  const colonies = plan.colonies.map(({ code }) => code);
  return {
    kind: "plan",
    control: controls[plan.control].term,
    rows: plan.steps.map((step) => ({
      key: step.step,
      tag: null,
      when: words.case.day({ day: step.on }),
      out: step.until === null ? null : say.out({ on: step.until }),
      what: say.stepWhat({
        what: stepName(plan.control, step.kind, words),
        grams: step.gramsPerColony,
        ounces: step.ouncesPerColony,
        colonies,
      }),
      why: say.steps[step.code]?.(step.slots) ?? step.code,
      trace: say.rule({ rule: step.rule, basis: say.restsOn[step.basis] }),
      unlock: null,
    })),
    earliest: null,
    options: null,
  };
}

/** What a step is called: the control where it goes in or comes out. */
const stepName = (id: control.ControlPlan["control"], kind: control.StepKind, words: Words): string =>
  kind === "apply" || kind === "feed" || kind === "requeen" ? controls[id].term : words.done.stepShort[kind];

function madeNotes(plan: control.MadePlan, words: Words): readonly string[] {
  const say = words.done;
  return [
    plan.gramsInAll === null || plan.ouncesInAll === null
      ? ""
      : say.gramsInAll({ grams: plan.gramsInAll, ounces: plan.ouncesInAll, colonies: plan.colonies.length }),
    plan.supersFrom === null ? "" : say.supersFrom({ on: plan.supersFrom }),
    plan.protectiveEquipment === null ? "" : say.wear({ what: plan.protectiveEquipment }),
    plan.vapour === null ? "" : say.vapour({ coolest: plan.vapour.atCoolest, warmest: plan.vapour.atWarmest }),
  ].filter(Boolean);
}

function refused(plan: control.RefusedPlan, words: Words): Rows {
  const say = words.done;
  return {
    kind: "refused",
    control: controls[plan.control].term,
    rows: plan.refused.map((refusal, index) => ({
      key: `${refusal.reason}-${index}`,
      tag: refusal.from === null ? say.refused : say.blocked,
      when:
        refusal.from === null || refusal.until === null
          ? say.noDate
          : say.span({ from: refusal.from, to: refusal.until }),
      out: null,
      what: `**${controls[plan.control].term}**`,
      why: refusalReasons[refusal.reason]?.(refusal.slots) ?? refusal.reason,
      trace: say.rule({ rule: refusal.rule, basis: "" }).trim(),
      unlock: unlockOf(refusal.reason, words),
    })),
    earliest:
      plan.earliestStart === null
        ? say.noEarliest
        : (plan.earliestStartRestsOn === "ordinary-year" ? say.earliestOrdinary : say.earliest)({
            on: plan.earliestStart,
          }),
    options: say.optionsSay({ options: plan.options.map(({ option }) => say.options[option]) }),
  };
}

function unlockOf(reason: string, words: Words): PlanRow["unlock"] {
  const say = words.done.unlock;
  switch (unlocks[reason]) {
    case "label":
      return { says: say["load-label-record"], to: "labels" };
    case "supers":
      return { says: say["supers-on"], to: "apiary" };
    case "weather":
      return { says: say.weather, to: "apiary" };
    case "reason":
      return { says: say["give-reason"], to: "reason" };
    default:
      return null;
  }
}

/** Body of `plan-made`; notes are the sentences as they were shown. */
export function planBody(input: {
  readonly plan: control.MadePlan;
  readonly caseId: string;
  readonly label: string | null;
  readonly version: number;
  readonly today: Day;
  readonly words: Words;
}): BodyOf<"plan-made"> {
  const { plan, caseId, label, version, today, words } = input;
  return {
    case: caseId,
    colonies: plan.colonies.map(({ id }) => id),
    control: plan.control,
    labelRecord: label,
    madeOn: today,
    steps: plan.steps.map((step) => ({
      step: step.step,
      kind: step.kind,
      on: step.on,
      until: step.until,
      gramsPerColony: step.gramsPerColony,
      gramsInAll: step.gramsInAll,
      note: words.done.steps[step.code]?.(step.slots) ?? step.code,
    })),
    version,
    knowledge: knowledgeVersion,
  };
}
