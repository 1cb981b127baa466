/**
 * The year under a plan: daily highs, flows, what bars the control, its windows, the dated steps.
 *
 * @module views/model
 */
import { type control as Control, control, site } from "../../../reasoning/index.ts";
import { addDays, type Day, daysBetween } from "../../../units/index.ts";
import { refusalShort, type Words } from "../../words/index.ts";
import type { Calendar } from "./plan-request.ts";

export interface YearSpan {
  readonly from: Day;
  readonly to: Day;
  readonly says: string;
}

export interface YearView {
  readonly from: Day;
  readonly to: Day;
  readonly isMeasured: boolean;
  /** The line of highs (or of means, where only means are known), Celsius; one point in `step` days. */
  readonly line: readonly { readonly date: Day; readonly celsius: number }[];
  readonly isHigh: boolean;
  readonly limits: { readonly least: number; readonly greatest: number } | null;
  readonly flows: readonly YearSpan[];
  readonly bars: readonly YearSpan[];
  readonly windows: readonly YearSpan[];
  readonly steps: readonly { readonly on: Day; readonly until: Day | null; readonly says: string }[];
  readonly label: string;
  readonly table: {
    readonly columns: readonly string[];
    readonly rows: readonly (readonly string[])[];
  };
}

/** The year of a place from today on; null when its weather is not on record or cannot be read. */
export function yearView(input: {
  readonly site: site.SiteTemperatures | null;
  readonly calendar: Calendar;
  readonly label: Control.LabelRecord | null;
  readonly needsLabel: boolean;
  readonly plan: Control.ControlPlan | null;
  readonly words: Words;
}): YearView | null {
  const { site: place, calendar, label, needsLabel, plan, words } = input;
  if (!place) return null;
  const { from, to, until, flows, supers, treatments } = calendar;
  const weather = site.temperaturesBetween(place, { from, to: until });
  if (!weather.ok || weather.value.days.length === 0) return null;
  const say = words.done;
  const answer = needsLabel
    ? control.windows({
        site: place,
        labelRecord: label,
        flows,
        ...(supers === undefined ? {} : { supers }),
        treatments,
        from,
        to,
      })
    : null;
  const unknown =
    answer && to < until
      ? [
          {
            from: addDays(to, 1),
            to: until,
            says: say.barSays({ reason: say.supersUnknown, from: addDays(to, 1), to: until }),
          },
        ]
      : [];
  const barred = answer?.ok
    ? answer.value.refused.map((span) => ({
        from: span.date,
        to: span.until,
        says: say.barSays({ reason: refusalShort[span.reason] ?? span.reason, from: span.date, to: span.until }),
      }))
    : [];
  const bars = [...barred, ...unknown];
  const windows = answer?.ok
    ? answer.value.windows.map((window) => ({
        from: window.from,
        to: window.to,
        says: say.windowSays({
          days: answer.value.daysNeeded ?? window.daysInRange,
          from: window.from,
          latest: window.latestStart,
        }),
      }))
    : [];
  const steps =
    plan?.kind === "plan"
      ? plan.steps.map((step) => ({ on: step.on, until: step.until, says: say.stepShort[step.kind] }))
      : [];
  const named = flows.map((flow) => ({ from: flow.from, to: flow.to, says: flow.name }));
  const every = Math.max(1, Math.round(daysBetween(from, until) / 120));
  const row = (kind: keyof typeof say.yearKinds) => (span: YearSpan) => [
    say.yearKinds[kind],
    span.from,
    span.to,
    span.says,
  ];
  return {
    from,
    to: until,
    isMeasured: weather.value.method === "measured",
    line: weather.value.days
      .filter((_, index) => index % every === 0)
      .map(({ date, highCelsius }) => ({ date, celsius: highCelsius })),
    isHigh: weather.value.method !== "mean-in-place-of-high",
    limits: label ? { least: label.minDailyHighCelsius, greatest: label.maxDailyHighCelsius } : null,
    flows: named,
    bars,
    windows,
    steps,
    label: say.yearLabel({
      from,
      to: until,
      windows:
        windows.length > 0 ? `${windows.map((window) => window.says).join("; ")}.` : needsLabel ? say.noWindow : "",
      bars: bars.map((bar) => bar.says).join("; "),
    }),
    table: {
      columns: [say.yearColumns.kind, say.yearColumns.from, say.yearColumns.to, say.yearColumns.says],
      rows: [
        ...named.map(row("flow")),
        ...bars.map(row("bar")),
        ...windows.map(row("window")),
        ...steps.map((step) => [say.yearKinds.step, step.on, step.until ?? "", step.says]),
      ],
    },
  };
}
