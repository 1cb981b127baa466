/**
 * The plan of a sample: what was asked, what it takes, what it could miss, and the vials it labels.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, coloniesOf, settled, specimensOf } from "../../casebook/index.ts";
import type { BodyOf } from "../../journal/index.ts";
import { cautions, isTestId, samplingFacts, type TestId } from "../../knowledge/index.ts";
import { sampling } from "../../reasoning/index.ts";
import { type Day, daysBetween, type Problem, seasonOf } from "../../units/index.ts";
import type { Words } from "../words/index.ts";
import { specimenCodes } from "./codes.ts";
import { type MissedView, missedView } from "./found/missed.ts";
import { troubleIn } from "./spread.ts";

export type BodyOfBees = BodyOf<"sampling-planned">["from"];

/** What the form of a plan holds; shares are 0–1. */
export interface SampleForm {
  readonly purpose: "detect" | "estimate" | "recheck";
  readonly colonies: readonly string[];
  readonly designPrevalence: number;
  readonly confidence: number;
  readonly sensitivity: number;
  /** Where the bees are taken; where the plan advises when it is not given. */
  readonly from?: BodyOfBees;
  readonly preservative: BodyOf<"sampling-planned">["preservative"];
  readonly laboratory: string;
}

export interface SamplePlanView {
  readonly takes: string;
  readonly couldMiss: string;
  readonly missed: MissedView;
  readonly reasons: readonly { readonly rule: string; readonly says: string; readonly source: string }[];
  readonly cautions: readonly string[];
  /** Where the plan advises to take the bees. */
  readonly advised: BodyOfBees;
  /** What it means to take them elsewhere; empty where the plan is followed. */
  readonly elsewhere: readonly string[];
  readonly problems: readonly Problem[];
  readonly body: BodyOf<"sampling-planned">;
  /** Proposed code of each vial, one a colony. */
  readonly codes: readonly string[];
}

/** The plan for a form, or the problems that stand in its way. */
export function samplePlanView(input: {
  readonly casebook: Casebook;
  readonly state: CaseState;
  readonly form: SampleForm;
  readonly today: Day;
  readonly words: Words;
}): { readonly plan: SamplePlanView | null; readonly problems: readonly Problem[] } {
  const { casebook, state, form, today, words } = input;
  const request = requestOf(casebook, state, form, today);
  const planned = sampling.planSample(request);
  if (!planned.ok) return { plan: null, problems: planned.problems };
  const { value } = planned;
  const say = words.tell.plan;
  const bees = value.beesPerColony;
  const from = form.from ?? value.from;
  const missed = missedView({ bees, at: form.designPrevalence, sensitivity: form.sensitivity }, words);
  const place = settled(state.apiary === null ? null : casebook.apiaries[state.apiary]?.record)?.place ?? "";
  const taken = Object.values(casebook.specimens).flatMap((specimen) => settled(specimen.label)?.code ?? []);
  const plan: SamplePlanView = {
    takes: say.takes({ bees, spare: value.spareBees, from: say.from[from], colonies: value.colonies.length }),
    couldMiss: say.couldMiss({ bees, prevalence: form.designPrevalence, missed: missed.main.missed }),
    missed,
    reasons: value.reasons.map((reason) => ({
      rule: reason.rule,
      says: reasonSays(reason, words),
      source: reason.source.at,
    })),
    cautions: [...new Set([...value.cautions, ...(from === "D" ? ["mask-for-dead-bees" as const] : [])])].map(
      (id) => cautions[id].words,
    ),
    advised: value.from,
    elsewhere:
      from === value.from
        ? []
        : [
            say.elsewhere({ advised: say.from[value.from], chosen: say.from[from] }),
            ...factsOf[from].map((fact) => samplingFacts[fact].words),
          ],
    problems: planned.problems,
    body: {
      purpose: form.purpose,
      colonies: [...value.colonies],
      beesPerColony: bees,
      from,
      preservative: form.preservative,
      ...(form.laboratory.trim() ? { laboratory: form.laboratory.trim() } : {}),
      designPrevalence: form.designPrevalence,
      confidence: form.confidence,
      sensitivity: form.sensitivity,
      on: today,
    },
    codes: specimenCodes(place, Number(today.slice(0, 4)), taken, value.colonies.length),
  };
  return { plan, problems: [] };
}

/** What is on record of bees from each place. */
const factsOf: Readonly<Record<BodyOfBees, readonly (keyof typeof samplingFacts)[]>> = {
  S: ["where-presence"],
  E: ["where-estimate"],
  B: ["where-estimate"],
  F: ["where-entrance", "random-bees"],
  D: ["random-bees", "keeping-at-once"],
};

/** The sentence of a reason: the code and its slots fit each other by their type. */
const reasonSays = (reason: sampling.PlanReason, words: Words): string =>
  (words.tell.reasons[reason.code] as (slots: sampling.PlanReason["slots"]) => string)(reason.slots);

/** Colonies a plan begins with: those with most signs of trouble, so many, the dead left out while one lives. Judgement. */
const proposedColonies = 4;

/** Ids of the colonies that a plan begins with, in order of code. */
export function coloniesToSample(casebook: Casebook, state: CaseState): readonly string[] {
  const all = coloniesOf(casebook, state.id);
  const living = all.filter((colony) => colony.state?.state !== "dead");
  const signs = (id: string) => troubleIn(state, id).filter((answer) => answer === "present").length;
  const chosen = (living.length > 0 ? living : all)
    .toSorted((one, other) => signs(other.id) - signs(one.id))
    .slice(0, proposedColonies)
    .map(({ id }) => id);
  return all.map(({ id }) => id).filter((id) => chosen.includes(id));
}

/** What the tests in the kit ask of bees taken otherwise than these. */
const questionOf: Readonly<Partial<Record<TestId, sampling.OtherQuestion>>> = {
  "varroa-wash": "varroa",
  "sugar-roll": "varroa",
  "co2-roll": "varroa",
  "spore-count": "nosema",
  "species-pcr": "nosema",
  "gut-pull": "nosema",
  "virus-panel": "virus",
  "residue-screen": "poisoning",
};

/** Questions of the tests that were put into the kit and are not done. */
const otherQuestions = (state: CaseState): readonly sampling.OtherQuestion[] => [
  ...new Set(
    Object.values(state.steps).flatMap((kept) => {
      const step = settled(kept);
      const question = step?.state === "planned" && isTestId(step.step) ? questionOf[step.step] : undefined;
      return question ?? [];
    }),
  ),
];

function requestOf(casebook: Casebook, state: CaseState, form: SampleForm, today: Day): sampling.SampleRequest {
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const place = settled(apiary?.record);
  const known = coloniesOf(casebook, state.id).map((colony) => ({ id: colony.id, code: colony.code ?? colony.id }));
  const told = settled(state.record)?.coloniesInApiary ?? 0;
  const supers = Object.values(apiary?.supers ?? {}).flatMap((each) => settled(each) ?? []);
  const earlier = specimensOf(casebook, state.id)
    .flatMap((specimen) => settled(specimen.label) ?? [])
    .at(-1);
  return {
    purpose: form.purpose,
    // Without a latitude the season is that of the north, as in question 2, where the page says so.
    season: seasonOf(today, place?.latitude ?? 45),
    colonies: known.filter((colony) => form.colonies.includes(colony.id)),
    deadColonies: coloniesOf(casebook, state.id)
      .filter((colony) => colony.state?.state === "dead")
      .map((colony) => colony.id),
    coloniesInApiary: Math.max(1, told, Object.keys(apiary?.colonies ?? {}).length, known.length),
    designPrevalence: form.designPrevalence,
    confidence: form.confidence,
    sensitivity: form.sensitivity,
    preservative: form.preservative,
    supersOn: supers.some((each) => each.on <= today && (each.off === null || each.off >= today)),
    alsoAsked: otherQuestions(state),
    oilPattiesOrTreatmentDaysAgo: daysSinceTreatment(casebook, state, today),
    ...(form.purpose === "recheck" && earlier ? { earlierFrom: earlier.from } : {}),
  };
}

/** Days since something was in the hives: 0 while it is, null when nothing is on record. */
function daysSinceTreatment(casebook: Casebook, state: CaseState, today: Day): number | null {
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const days = Object.values(apiary?.treatments ?? {})
    .flatMap((each) => settled(each) ?? [])
    .filter((each) => each.on <= today)
    .map((each) => (each.off === null || each.off >= today ? 0 : daysBetween(each.off, today)));
  return days.length === 0 ? null : Math.min(...days);
}
