/**
 * A season reckoned, as it is told: the sentence first, the fan with its counts and flags, the year beneath, the choices
 * beside each other, what would settle them.
 *
 * @module views/model
 */
import { bench, dynamics } from "../../../reasoning/index.ts";
import { type Day, daysBetween, type Problem } from "../../../units/index.ts";
import { seasonWords } from "../../words/index.ts";
import type { SeasonAsk } from "./season-form.ts";

/** What is there so far: a stopped run has the past and some of the choices. */
export interface SeasonSeen {
  readonly past: readonly dynamics.ForecastDay[];
  /** Doing nothing first. */
  readonly outcomes: readonly dynamics.ChoiceOutcome[];
  readonly settling: dynamics.Settling | null;
  /** What the counts taught of the contact rate; null of a stopped run. */
  readonly learnt: dynamics.Learnt | null;
  readonly problems: readonly Problem[];
}

/** A band of a picture: each morning's ranges of the infested share. */
export interface FanLine {
  readonly name: string;
  readonly days: readonly { readonly date: Day; readonly range: dynamics.Range }[];
}

export interface CountDot {
  readonly date: Day;
  readonly share: number;
  readonly low: number;
  readonly high: number;
  readonly says: string;
}

export interface SeasonFlag {
  readonly kind: dynamics.Action["kind"];
  readonly date: Day;
  readonly isLast: boolean;
}

export interface ChoiceRow {
  readonly name: string;
  readonly infested: string;
  readonly difference: string;
  readonly better: string;
  readonly bees: string;
  readonly alive: string;
}

export interface SeasonView {
  readonly from: Day;
  readonly to: Day;
  readonly decideOn: Day;
  readonly says: string;
  readonly survival: string;
  readonly label: string;
  readonly without: FanLine;
  /** The choice that is shown beside doing nothing; null for none, or none reckoned. */
  readonly chosen: FanLine | null;
  readonly counts: readonly CountDot[];
  /** Done already, and those of the choice shown, are told apart by the page. */
  readonly done: readonly SeasonFlag[];
  readonly rows: readonly ChoiceRow[];
  readonly tells: readonly string[];
  readonly best: readonly { readonly name: string; readonly chance: number }[];
  readonly table: { readonly columns: readonly string[]; readonly rows: readonly (readonly (string | number)[])[] };
}

/** The table has the first morning told of each so many days, and the last of all. */
const tableStep = 7;

/** The choice that is shown: its place in the list, from 0, and what it does. */
export interface ShownChoice {
  readonly place: number;
  readonly kinds: readonly dynamics.Action["kind"][];
}

/** The view of what was reckoned; null before doing nothing is. */
export function seasonView(ask: SeasonAsk, seen: SeasonSeen, shown: ShownChoice | null): SeasonView | null {
  const nothing = seen.outcomes[0];
  const end = nothing?.at.at(-1);
  if (!nothing || !end) return null;
  const say = seasonWords;
  const other = shown === null ? undefined : seen.outcomes[shown.place + 1];
  const otherEnd = other?.at.at(-1);
  const afterDone = ask.actions.length > 0;
  const says = [
    say.answer({ ...endsOf(end.infestedShare), on: ask.until, afterDone }),
    other && otherEnd ? say.answerWith({ name: other.name, ...endsOf(otherEnd.infestedShare) }) : "",
  ].join("");
  const counts = ask.counts.map((count) => dotOf(count));
  const lines = seen.outcomes.map((outcome, place) => ({
    name: place === 0 ? say.without(afterDone) : outcome.name,
    days: outcome.days,
  }));
  const rows = seen.outcomes.map((outcome, place) => choiceRow(outcome, lines[place]?.name ?? ""));
  return {
    from: ask.start.date,
    to: ask.until,
    decideOn: ask.decideOn,
    says,
    survival: say.survival({
      on: ask.until,
      without: wideOf(end.survival),
      choice: other && otherEnd ? { name: other.name, range: wideOf(otherEnd.survival) } : null,
    }),
    label: say.pictureLabel({
      from: ask.start.date,
      to: ask.until,
      says: says.replaceAll("**", ""),
      counts: ask.counts.map((count) => say.countOn(count)),
    }),
    without: fanOf(say.without(afterDone), [...seen.past, ...nothing.days.slice(1)]),
    chosen: other ? fanOf(say.with({ kinds: shown?.kinds ?? [] }), other.days) : null,
    counts,
    done: ask.actions.flatMap(flagsOf),
    rows,
    tells: tellsOf(ask, seen, nothing, rows),
    best: (seen.settling?.best ?? []).map(({ chance }, place) => ({ name: lines[place]?.name ?? "", chance })),
    table: tableOf(ask, seen.past, lines),
  };
}

/** The ends of a range as sentences take them. */
export const endsOf = ({ q05, q25, q75, q95 }: dynamics.Range) => ({
  middle: { low: q25, high: q75 },
  wide: { low: q05, high: q95 },
});

/** The ends of the wide range alone. */
export const wideOf = ({ q05, q95 }: dynamics.Range) => ({ low: q05, high: q95 });

const fanOf = (name: string, days: readonly dynamics.ForecastDay[]): FanLine => ({
  name,
  days: days.map(({ date, infestedShare }) => ({ date, range: infestedShare })),
});

/** Where an action's flags stand: its first day, and its last where that can be chosen. */
export function flagsOf(action: dynamics.Action): readonly SeasonFlag[] {
  const { kind, from } = action;
  const first = { kind, date: from, isLast: false };
  return "to" in action ? [first, { kind, date: action.to, isLast: true }] : [first];
}

function dotOf(count: dynamics.DatedCount): CountDot {
  // Where no bee could be read on both sides, the dot is that of the one that could.
  const { infested, examined } = count.examined > 0 ? count : (count.oneSided ?? count);
  const estimate = bench.prevalence({ positive: infested, examined, stoppedEarly: false });
  const share = infested / examined;
  const { low, high } = estimate.ok ? estimate.value : { low: share, high: share };
  return { date: count.date, share, low, high, says: seasonWords.countSays({ infested, examined }) };
}

/** What a choice comes to at the end, in words. */
export function choiceRow(
  { at, difference }: Pick<dynamics.ChoiceOutcome, "at" | "difference">,
  name: string,
): ChoiceRow {
  const say = seasonWords;
  const end = at.at(-1);
  const less = difference?.at(-1)?.infestedShare;
  if (!end) return { name, infested: "", difference: "", better: "", bees: "", alive: "" };
  const ends = ({ q05, q50, q95 }: dynamics.Range) => ({ low: q05, middle: q50, high: q95 });
  return {
    name,
    infested: say.middleAndRange(ends(end.infestedShare)),
    // Told as what is saved: the smallest saving first.
    difference: less
      ? isSmall(less)
        ? say.hardly
        : say.lessBy({ low: -less.q95, middle: -less.q50, high: -less.q05 })
      : "",
    better: less && !isSmall(less) ? say.betterIn({ share: less.better }) : "",
    bees: say.beesRange(ends(end.bees)),
    alive: say.aliveRange(wideOf(end.survival)),
  };
}

/** Less than half a bee in 100 either way in nine runs of ten. */
const isSmall = ({ q05, q95 }: dynamics.Range): boolean => Math.max(Math.abs(q05), Math.abs(q95)) < dynamics.noticeable;

function tellsOf(
  ask: SeasonAsk,
  { settling, outcomes }: SeasonSeen,
  nothing: dynamics.ChoiceOutcome,
  rows: readonly ChoiceRow[],
): readonly string[] {
  const say = seasonWords;
  const narrows = say.narrows({
    bees: ask.moreBees,
    before: nothing.moreBees.widthNow,
    after: nothing.moreBees.widthAfter,
  });
  if (settling === null) return [narrows];
  return [outcomes.length > 1 ? settledSays(settling, rows) : say.nothingToSettle, narrows];
}

/** What a further count would settle. */
export function settledSays(settling: dynamics.Settling, rows: readonly ChoiceRow[]): string {
  const say = seasonWords;
  const { line, sure, bees, best, alike, days, earliest } = settling;
  const likeliest = best.reduce((one, other) => (other.chance > one.chance ? other : one));
  if (settling.isSettled) {
    const place = best.indexOf(likeliest);
    const own = rows[place];
    // What is told in the same words cannot be told apart either, whatever the draws say.
    const others = rows.filter(
      ({ infested }, at) => at !== place && (infested === own?.infested || alike.includes(best[at]?.name ?? "")),
    );
    const name = own?.name ?? likeliest.name;
    if (others.length === 0) return say.settledNow({ name, chance: likeliest.chance, line });
    return say.settledAlike({ name, alike: others.map((each) => each.name), chance: likeliest.chance, line });
  }
  if (earliest === null) return say.neverSettles({ bees, sure, line, held: Math.max(...days.map(({ held }) => held)) });
  const late = days.find(({ isInTime }) => !isInTime)?.date;
  return say.settles({ date: earliest, bees, sure, line, inTime: late === undefined || earliest < late });
}

/** A row a week and one for the last day: day, the infested in 100, the bees, from how many to how many of 100 live. */
export function weekly(
  days: readonly dynamics.ForecastDay[],
  from: Day = days[0]?.date ?? "",
): readonly (readonly (string | number)[])[] {
  const per100 = (share: number) => Number((100 * share).toFixed(1));
  const weekOf = (date: Day) => Math.floor(daysBetween(from, date) / tableStep);
  return days
    .filter(({ date }, place) => {
      const before = days[place - 1];
      return before === undefined || place === days.length - 1 || weekOf(date) !== weekOf(before.date);
    })
    .map(({ date, infestedShare: { q05, q25, q50, q75, q95 }, bees, survival }) => [
      ...[date, ...[q05, q25, q50, q75, q95].map(per100)],
      // Rounded outwards, as in words: the curve behind survival bears no tenths.
      ...[Math.round(bees.q50), Math.floor(100 * survival.q05 + 1e-9), Math.ceil(100 * survival.q95 - 1e-9)],
    ]);
}

function tableOf(
  ask: SeasonAsk,
  past: readonly dynamics.ForecastDay[],
  lines: readonly { readonly name: string; readonly days: readonly dynamics.ForecastDay[] }[],
): SeasonView["table"] {
  const say = seasonWords.columns;
  return {
    columns: [say.date, say.choice, say.q05, say.q25, say.q50, say.q75, say.q95, say.bees, say.aliveFrom, say.aliveTo],
    rows: lines.flatMap(({ name, days }, place) =>
      weekly(place === 0 ? [...past, ...days.slice(1)] : days, ask.start.date).map(([date = "", ...numbers]) => [
        ...[date, name],
        ...numbers,
      ]),
    ),
  };
}
