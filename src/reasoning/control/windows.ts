/** On which days a treatment may lie in the hives, and why not on the others. */
import {
  addDays,
  answered,
  blocked,
  type Day,
  daysBetween,
  isDay,
  type Problem,
  type Result,
} from "../../units/index.ts";
import { type HighMethod, type SiteTemperatures, type Span, type Supers, temperaturesBetween } from "../site/index.ts";
import { controlProblem } from "./control-problem.ts";
import { type Against, type DayReason, type EarlierTreatment, reasonsAgainst } from "./day-rules.ts";
import { type LabelLimits, limitProblems, treatmentDays } from "./label-record.ts";
import { runsOf } from "./runs.ts";

export interface WindowsInput {
  readonly site: SiteTemperatures;
  /** Null when none is loaded: then nothing is allowed. */
  readonly labelRecord: LabelLimits | null;
  readonly flows?: readonly Span[];
  /** Leave out when nobody recorded them; an empty list says that none are on. */
  readonly supers?: readonly Supers[];
  readonly treatments?: readonly EarlierTreatment[];
  /** Both included. */
  readonly from: Day;
  readonly to: Day;
}

/** A run of days on each of which the treatment may lie in the hive, long enough for the whole of it. */
export interface Window {
  readonly from: Day;
  readonly to: Day;
  /** Days of the run whose high is known to lie within the label's limits: all of them. */
  readonly daysInRange: number;
  /** Last day on which a start still leaves room for the whole treatment. */
  readonly latestStart: Day;
  /** every-day-in-range, or means-in-range when an ordinary year's means stood in place of highs. */
  readonly why: "every-day-in-range" | "means-in-range";
  readonly rule: string;
}

/** A span of days refused for one reason. Days may be refused for several: each has its own span. */
export interface RefusedSpan {
  /** First day. */
  readonly date: Day;
  /** Last day. */
  readonly until: Day;
  readonly days: number;
  readonly rule: string;
  readonly reason: DayReason;
  readonly slots: Readonly<Record<string, string | number>>;
}

export interface WindowsAnswer {
  readonly windows: readonly Window[];
  readonly refused: readonly RefusedSpan[];
  /** Days the treatment takes under the label; null without a label record. */
  readonly daysNeeded: number | null;
  readonly highs: HighMethod | null;
}

/**
 * The days on which a treatment may lie in the hives under a label record, checked one by one.
 *
 * A window is a run of days that all pass every rule and that is as long as the whole treatment or longer; a
 * shorter run is refused as too short. So each day asked about is in a window or refused. Temperatures are
 * compared unrounded and both limits are included. Strict on purpose: one day out of range ends a run, though
 * a label may mean something milder; read the label.
 *
 * Answered, not blocked, without a label record: then every day is refused with `no-label-record`.
 *
 * @throws DomainError never for the user's data
 */
export function windows(input: WindowsInput): Result<WindowsAnswer> {
  const { labelRecord: label, from, to } = input;
  const spanProblem = spanTrouble(from, to);
  if (spanProblem) return blocked(spanProblem);
  if (label === null) return answered(withoutLabel(from, to));
  const labelTrouble = limitProblems(label);
  const datesTrouble = dateProblems(input);
  if (labelTrouble.length + datesTrouble.length > 0) return blocked(...labelTrouble, ...datesTrouble);
  const weather = temperaturesBetween(input.site, { from, to });
  if (!weather.ok) return weather;

  const highs = new Map(weather.value.days.map(({ date, highCelsius }) => [date, highCelsius]));
  const days = eachDay(from, to);
  const needed = treatmentDays(label);
  const verdicts = days.map((day) => ({
    day,
    highCelsius: highs.get(day),
    against: reasonsAgainst({
      day,
      highCelsius: highs.get(day),
      label,
      flows: input.flows ?? [],
      supers: input.supers,
      treatments: input.treatments ?? [],
    }),
  }));

  const runs = runsOf(verdicts.map(({ against }) => against.length === 0));
  const found: Window[] = [];
  const tooShort: RefusedSpan[] = [];
  for (const { first, last } of runs) {
    const [start, end] = [days[first] as Day, days[last] as Day];
    const length = last - first + 1;
    if (length >= needed)
      found.push({
        from: start,
        to: end,
        daysInRange: length,
        latestStart: days[last - needed + 1] as Day,
        why: weather.value.method === "mean-in-place-of-high" ? "means-in-range" : "every-day-in-range",
        rule: "CO9",
      });
    else
      tooShort.push({
        date: start,
        until: end,
        days: length,
        rule: "CO9",
        reason: last === days.length - 1 ? "too-few-days-before-end" : "too-few-days",
        slots: { days: length, needed },
      });
  }
  const refused = [...refusedSpans(verdicts), ...tooShort].sort(
    (a, b) => compare(a.date, b.date) || compare(a.rule, b.rule) || compare(a.reason, b.reason),
  );
  const answer = { windows: found, refused, daysNeeded: needed, highs: weather.value.method };
  return answered(answer, [...weather.problems, ...doubts(input, answer)]);
}

/** What weakens the answer: a hot side that means cannot judge, a flow inside a window. */
function doubts({ flows = [] }: WindowsInput, { windows: found, highs }: WindowsAnswer): readonly Problem[] {
  const problems: Problem[] = [];
  if (highs === "mean-in-place-of-high" && found.length > 0)
    problems.push(controlProblem("upper-limit-not-judged", "warned", "site.monthlyMeanCelsius"));
  for (const { from, to } of found)
    for (const flow of flows)
      if (flow.from <= to && flow.to >= from)
        problems.push(
          controlProblem("flow-in-window", "warned", "flows", {
            slots: { from: flow.from, to: flow.to, window: from },
          }),
        );
  return problems;
}

interface Verdict {
  readonly day: Day;
  readonly highCelsius: number | undefined;
  readonly against: readonly Against[];
}

/** Neighbouring days refused for one reason with equal slots become one span, which tells its coolest or warmest day. */
function refusedSpans(verdicts: readonly Verdict[]): readonly RefusedSpan[] {
  const reasons = new Map(verdicts.flatMap(({ against }) => against.map((each) => [keyOf(each), each])));
  return [...reasons].flatMap(([key, { reason, rule, slots }]) =>
    runsOf(verdicts.map(({ against }) => against.some((each) => keyOf(each) === key))).map(({ first, last }) => {
      const span = verdicts.slice(first, last + 1);
      const temperatures = span.flatMap(({ highCelsius }) => (highCelsius === undefined ? [] : [highCelsius]));
      return {
        date: (verdicts[first] as Verdict).day,
        until: (verdicts[last] as Verdict).day,
        days: span.length,
        rule,
        reason,
        slots: { ...slots, ...extreme(reason, temperatures) },
      };
    }),
  );
}

const keyOf = ({ reason, rule, slots }: Against): string => JSON.stringify([reason, rule, slots]);

/** The day nearest to the limit, so that the reader sees how far the span is out. */
function extreme(reason: DayReason, temperatures: readonly number[]): Readonly<Record<string, number>> {
  if (reason === "too-cool" || reason === "vapour-too-weak") return { warmestCelsius: Math.max(...temperatures) };
  if (reason === "too-warm") return { coolestCelsius: Math.min(...temperatures) };
  return {};
}

/** Days asked about in one go; a longer span is a slip of the pen. */
const longestSpanDays = 1100;

function spanTrouble(from: Day, to: Day): Problem | null {
  for (const [field, day] of [
    ["from", from],
    ["to", to],
  ] as const)
    if (!isDay(day))
      return controlProblem("date-unknown", "blocked", field, { given: day, slots: { date: String(day) } });
  if (from > to)
    return controlProblem("span-ends-before-it-begins", "blocked", "to", { given: to, slots: { from, to } });
  const days = daysBetween(from, to) + 1;
  return days > longestSpanDays
    ? controlProblem("span-too-long", "blocked", "to", { given: to, slots: { days, longest: longestSpanDays } })
    : null;
}

/** Spans whose days do not exist or run backwards. */
function dateProblems({ flows = [], supers = [], treatments = [] }: WindowsInput): readonly Problem[] {
  const ends = (field: string, first: Day, last: Day | null): readonly Problem[] => {
    const unknown = [first, last].find((day) => day !== null && !isDay(day));
    if (unknown !== undefined)
      return [controlProblem("date-unknown", "blocked", field, { given: unknown, slots: { date: String(unknown) } })];
    return last !== null && last < first
      ? [
          controlProblem("span-ends-before-it-begins", "blocked", field, {
            given: last,
            slots: { from: first, to: last },
          }),
        ]
      : [];
  };
  return [
    ...flows.flatMap(({ from, to }, index) => ends(`flows[${index}]`, from, to)),
    ...supers.flatMap(({ on, off }, index) => ends(`supers[${index}]`, on, off)),
    ...treatments.flatMap(({ on, off }, index) => ends(`treatments[${index}]`, on, off)),
  ];
}

const withoutLabel = (from: Day, to: Day): WindowsAnswer => ({
  windows: [],
  refused: [
    { date: from, until: to, days: daysBetween(from, to) + 1, rule: "CO1", reason: "no-label-record", slots: {} },
  ],
  daysNeeded: null,
  highs: null,
});

const eachDay = (from: Day, to: Day): readonly Day[] =>
  Array.from({ length: daysBetween(from, to) + 1 }, (_, index) => addDays(from, index));

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
