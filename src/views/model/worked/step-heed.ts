/**
 * What a done step lies outside of: the day it was planned for, and the temperatures its label record allows.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, type PlanState, settled } from "../../../casebook/index.ts";
import type { BodyOf } from "../../../journal/index.ts";
import { site } from "../../../reasoning/index.ts";
import { addDays, type Day, daysBetween } from "../../../units/index.ts";
import type { Words } from "../../words/index.ts";
import { siteOf } from "../done/plan-request.ts";

type Plan = BodyOf<"plan-made">;
type Step = Plan["steps"][number];

/** The sentences for a step of a plan; none while it is not done, or where it lies as planned. */
export function stepHeed(
  casebook: Casebook,
  state: CaseState,
  { plan, body, words }: { readonly plan: PlanState; readonly body: Plan; readonly words: Words },
): (step: Step) => readonly string[] {
  const doneOn = (step: string): Day | null => {
    const marked = settled(plan.done[step]);
    return marked?.state === "done" ? marked.on : null;
  };
  const record = body.labelRecord === null ? null : settled(casebook.labelRecords[body.labelRecord]?.record);
  const place = siteOf(casebook, state);
  return (step) => {
    const on = doneOn(step.step);
    if (on === null) return [];
    const days = daysBetween(step.on, on);
    const beside = days === 0 ? [] : [words.worked.beside({ on: step.on, days })];
    if (step.kind !== "apply" || !record || !place) return beside;
    const out = body.steps.find((other) => other.kind === "remove" && other.on > step.on)?.step;
    const planned = addDays(on, Math.max(0, record.durationDays - 1));
    const to = (out ? doneOn(out) : null) ?? planned;
    const weather = site.temperaturesBetween(place, { from: on, to });
    const highs = weather.ok ? weather.value.days.map((each) => each.highCelsius) : [];
    const [from, most] = [Math.min(...highs), Math.max(...highs)];
    const [low, high] = [record.minDailyHighCelsius, record.maxDailyHighCelsius];
    if (!weather.ok || highs.length === 0 || (from >= low && most <= high)) return beside;
    const measured = weather.value.method === "measured";
    return [...beside, words.worked.outsideLabel({ low, high, from, to: most, measured })];
  };
}
