/** A plan under a loaded label record, or the reasons why there is none. */
import { controls } from "../../knowledge/index.ts";
import { addDays, answered, blocked, type Day, ounces, type Problem, type Result } from "../../units/index.ts";
import {
  laterOf,
  referenceCelsius,
  type SiteTemperatures,
  temperaturesBetween,
  type VapourSubstance,
  vapourRatio,
} from "../site/index.ts";
import { cautionsOf } from "./cautions-of.ts";
import { controlProblem } from "./control-problem.ts";
import { vapourLimits } from "./evidence-limits.ts";
import { type LabelRecord, limitProblems, recordDoubts, treatmentDays } from "./label-record.ts";
import type { ControlPlan, MadePlan, Option, PlanRequest, PlanStep, Refusal } from "./plan.ts";
import { recheckDoubts, recheckStep } from "./recheck.ts";
import { type Window, type WindowsAnswer, windows } from "./windows.ts";

/** Days after applying at which the hive is looked at, or half the time when that is shorter. Judgement, no source. */
const checkAfterDays = 3;

/** As `makePlan`, for a control that needs a label record. */
export function chemicalPlan(request: PlanRequest): Result<ControlPlan> {
  const { labelRecord: label, madeOn } = request;
  if (label === null) return answered(refuse(request, [always("CO1", "no-label-record")], nothingLater));
  const doubts = [...limitProblems(label), ...recordDoubts(label, madeOn)];
  const stops = doubts.filter(({ severity }) => severity === "blocked");
  if (stops.length > 0) return blocked(...stops);

  const from = laterOf(request.from, madeOn);
  if (from > request.to)
    return answered(refuse(request, [{ ...always("CO12", "season-over"), until: request.to }], nothingLater), doubts);
  const days = windows({ ...request, labelRecord: label, from });
  if (!days.ok) return days;

  const chosen = choose(days.value, request.startOn);
  const refusals = [
    ...mismatches(request, label),
    ...untested(request),
    ...(chosen ? [] : dayRefusals(days.value, request.startOn, label)),
  ];
  const problems = [...doubts, ...days.problems, ...jurisdictionDoubt(request)];
  if (!chosen || refusals.length > 0)
    return answered(refuse(request, refusals, earliest(request, label, days.value)), problems);

  const removed = addDays(chosen.start, treatmentDays(label));
  return answered(planFrom({ request, label, ...chosen }), [
    ...problems,
    ...heatDoubts(request.site, label, chosen.start, removed),
    ...queenDoubts(request),
    ...recheckDoubts(removed, request.site.latitude, request.colonies),
  ]);
}

interface Earliest {
  readonly earliestStart: Day | null;
  readonly earliestStartRestsOn: "site" | "ordinary-year" | null;
}
const nothingLater: Earliest = { earliestStart: null, earliestStartRestsOn: null };

/** First start the rules allow, on the day wanted or after it; an ordinary year is asked when the temperatures given allow none. */
function earliest(request: PlanRequest, label: LabelRecord, answer: WindowsAnswer): Earliest {
  const wanted = request.startOn ?? request.from;
  const start = (found: readonly Window[]): Day | null => {
    const open = found.find(({ latestStart }) => latestStart >= wanted);
    return open ? laterOf(open.from, wanted) : null;
  };
  const here = start(answer.windows);
  if (here !== null) return { earliestStart: here, earliestStartRestsOn: "site" };
  if (!request.ordinaryYear) return nothingLater;
  const ordinary = windows({
    ...request,
    site: request.ordinaryYear,
    labelRecord: label,
    from: laterOf(request.from, request.madeOn),
  });
  const there = ordinary.ok ? start(ordinary.value.windows) : null;
  return there === null ? nothingLater : { earliestStart: there, earliestStartRestsOn: "ordinary-year" };
}

/** Steps and masses once label, window and first day are settled. */
function planFrom(settled: {
  readonly request: PlanRequest;
  readonly label: LabelRecord;
  readonly window: Window;
  readonly start: Day;
}): MadePlan {
  const { request, label, window, start } = settled;
  const gramsPerColony = label.doseGramsPerColony;
  const gramsEachTime = gramsPerColony * request.colonies.length;
  const weighed = {
    gramsPerColony,
    gramsInAll: gramsEachTime,
    ouncesPerColony: ounces(gramsPerColony),
    ouncesInAll: ounces(gramsEachTime),
  };
  const unweighed = { gramsPerColony: null, gramsInAll: null, ouncesPerColony: null, ouncesInAll: null };
  const of = label.applications;
  const steps: PlanStep[] = [];
  for (let number = 1; number <= of; number++) {
    const on = addDays(start, (number - 1) * label.daysBetweenApplications);
    const off = addDays(on, label.durationDays);
    const common = { rule: "CO13", basis: "label-record" } as const;
    steps.push({
      ...weighed,
      ...common,
      step: `apply-${number}`,
      kind: "apply",
      on,
      until: off,
      code: "apply-by-label",
      slots: { number, of, placement: label.placement },
    });
    const wait = Math.min(checkAfterDays, Math.floor(label.durationDays / 2));
    const harmful = vapourLimits(label.activeIngredient)?.harmfulAboveCelsius;
    if (wait >= 1)
      steps.push({
        ...unweighed,
        step: `check-${number}`,
        kind: "check",
        on: addDays(on, wait),
        until: null,
        code: "check-bees-and-heat",
        slots: harmful === undefined ? {} : { harmfulAboveCelsius: harmful },
        rule: "CO13",
        basis: "judgement",
      });
    steps.push({
      ...unweighed,
      ...common,
      step: `remove-${number}`,
      kind: "remove",
      on: off,
      until: null,
      code: "remove-by-label",
      slots: { number, of },
    });
  }
  const removed = addDays(start, treatmentDays(label));
  steps.push(recheckStep(removed));
  steps.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  const gramsInAll = gramsEachTime * of;
  return {
    kind: "plan",
    control: request.control,
    colonies: request.colonies.map(({ id, code }) => ({ id, code })),
    coloniesInApiary: request.coloniesInApiary,
    coloniesTested: request.coloniesTested,
    untestedReason: request.untestedReason?.trim() || null,
    madeOn: request.madeOn,
    window,
    steps,
    gramsInAll,
    ouncesInAll: ounces(gramsInAll),
    placement: label.placement,
    protectiveEquipment: label.protectiveEquipment ?? null,
    supersFrom: label.supersAllowed ? null : addDays(removed, label.daysBeforeSupers),
    vapour: vapourOver(request.site, label, start, addDays(removed, -1)),
    cautions: cautionsOf(request.control),
  };
}

/** The window and first day: the day wanted when it leaves room, else none; without a wish the first lawful day. */
function choose(
  { windows: found }: WindowsAnswer,
  wanted: Day | null,
): { readonly window: Window; readonly start: Day } | null {
  const open =
    wanted === null ? found[0] : found.find(({ from, latestStart }) => wanted >= from && wanted <= latestStart);
  return open ? { window: open, start: wanted ?? open.from } : null;
}

/** Every span that stands in the way: of the wanted days when a day was named, of all days asked about otherwise. */
function dayRefusals({ refused }: WindowsAnswer, wanted: Day | null, label: LabelRecord): readonly Refusal[] {
  const last = wanted === null ? null : addDays(wanted, treatmentDays(label) - 1);
  const inTheWay = refused.filter(
    ({ date, until }) => wanted === null || last === null || (date <= last && until >= wanted),
  );
  const spans = inTheWay.map(({ rule, reason, date, until, slots }) => ({ rule, reason, from: date, until, slots }));
  if (spans.length > 0) return spans;
  return [{ ...always("CO12", "start-outside-days-asked"), from: wanted, until: last }];
}

/** A label of another place or another active ingredient does not cover this act. */
function mismatches({ control, jurisdiction }: PlanRequest, label: LabelRecord): readonly Refusal[] {
  const spelt = (words: string) => words.trim().toLowerCase();
  const wanted = controls[control].activeIngredients;
  const refusals: Refusal[] = [];
  if (!wanted.map(spelt).includes(spelt(label.activeIngredient)))
    refusals.push(
      always("CO16", "label-for-another-ingredient", { wanted: wanted.join(", "), label: label.activeIngredient }),
    );
  if (jurisdiction !== null && spelt(label.jurisdiction) !== spelt(jurisdiction))
    refusals.push(
      always("CO16", "label-for-another-jurisdiction", { wanted: jurisdiction, label: label.jurisdiction }),
    );
  return refusals;
}

/** Colonies nobody tested need a reason that is written down. */
export function untested({ colonies, coloniesTested, untestedReason }: PlanRequest): readonly Refusal[] {
  if (colonies.length <= coloniesTested || untestedReason?.trim()) return [];
  return [always("CO14", "reason-needed-for-untested", { planned: colonies.length, tested: coloniesTested })];
}

const jurisdictionDoubt = ({ jurisdiction }: PlanRequest): readonly Problem[] =>
  jurisdiction === null ? [controlProblem("jurisdiction-unknown", "warned", "jurisdiction")] : [];

/** A new queen or none in a colony about to be treated: common practice, no source. */
const queenDoubts = ({ colonies }: PlanRequest): readonly Problem[] => {
  const unsettled = colonies.filter(({ queen }) => queen === "new" || queen === "none");
  return unsettled.length === 0
    ? []
    : [
        controlProblem("queen-not-settled", "warned", "colonies", {
          slots: { colonies: unsettled.map(({ code }) => code).join(", ") },
        }),
      ];
};

/** Highs that the label allows but trials doubt. */
function heatDoubts(site: SiteTemperatures, label: LabelRecord, start: Day, removed: Day): readonly Problem[] {
  const known = vapourLimits(label.activeIngredient);
  const weather = temperaturesBetween(site, { from: start, to: addDays(removed, -1) });
  if (!known || !weather.ok) return [];
  const { doubtfulBelowCelsius: doubtful, harmfulAboveCelsius: harmful } = known;
  const cool = weather.value.days.filter(({ highCelsius }) => doubtful !== undefined && highCelsius < doubtful);
  const hot = weather.value.days.filter(({ highCelsius }) => harmful !== undefined && highCelsius > harmful);
  const problems: Problem[] = [];
  if (doubtful !== undefined && cool.length > 0)
    problems.push(
      controlProblem("vapour-doubtful", "warned", "site", { slots: { days: cool.length, limitCelsius: doubtful } }),
    );
  if (harmful !== undefined && hot.length > 0)
    problems.push(
      controlProblem("heat-harms-bees", "warned", "site", { slots: { days: hot.length, limitCelsius: harmful } }),
    );
  return problems;
}

const vapourNames: Readonly<Record<string, VapourSubstance>> = {
  menthol: "menthol",
  "formic acid": "formic",
  thymol: "thymol",
};

/** Vapour at the coolest and warmest high of the days, against 21.1 °C; null where no fit covers them. */
function vapourOver(site: SiteTemperatures, label: LabelRecord, from: Day, to: Day): MadePlan["vapour"] {
  const substance = vapourNames[label.activeIngredient.trim().toLowerCase()];
  const weather = temperaturesBetween(site, { from, to });
  if (!substance || !weather.ok || weather.value.days.length === 0) return null;
  const highs = weather.value.days.map(({ highCelsius }) => highCelsius);
  const ratio = (celsius: number) => vapourRatio({ substance, celsius, againstCelsius: referenceCelsius });
  const [coolest, warmest] = [ratio(Math.min(...highs)), ratio(Math.max(...highs))];
  return coolest.ok && warmest.ok ? { atCoolest: coolest.value, atWarmest: warmest.value } : null;
}

/** The refusal with what can be done instead. */
function refuse(request: PlanRequest, refused: readonly Refusal[], first: Earliest): ControlPlan {
  const has = (reason: Refusal["reason"]) => refused.some((each) => each.reason === reason);
  const options: Option[] = [];
  if (has("no-label-record") || has("label-for-another-ingredient") || has("label-for-another-jurisdiction"))
    options.push({ option: "load-label-record", from: null });
  if (has("reason-needed-for-untested")) options.push({ option: "give-reason", from: null });
  if (first.earliestStart !== null) options.push({ option: "wait", from: first.earliestStart });
  options.push({ option: "oil-patty", from: null }, { option: "requeen", from: null });
  return {
    kind: "refused",
    control: request.control,
    refused,
    ...first,
    options,
    cautions: cautionsOf(request.control),
  };
}

const always = (rule: string, reason: Refusal["reason"], slots: Refusal["slots"] = {}): Refusal => ({
  rule,
  reason,
  from: null,
  until: null,
  slots,
});
