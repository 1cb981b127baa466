/** A colony as it usually is on a day of the year, brought to the bees and the infested share that were seen. */
import { countAgain, placeWinterColony } from "./colony.ts";
import { type Engine, engine, oneDay } from "./day.ts";
import { dayOfBeeYear } from "./drivers.ts";
import { at, broodDays, classes, type Layout, patent } from "./layout.ts";
import { noMeasures } from "./measures.ts";

/** Day of the bees' year on which the colony behind the usual shape begins: 1 November. */
const autumnDay = 305;
/** That colony, invented: after more than a year its shape no longer remembers it. */
const usualAutumn = { bees: 22000, infestedShare: 0.16 };

export interface UsualColony {
  /** 1–365, of the site's calendar. */
  readonly dayOfYear: number;
  readonly southern: boolean;
  readonly contactRate: number;
  readonly stockSusceptibility: number;
}

/** Record of a colony on a day, after a run of more than a year from an invented autumn. Its size is not that of any colony seen. */
export function usualColony(
  shared: Pick<Engine, "parameters" | "layout" | "rates">,
  { dayOfYear, southern, contactRate, stockSusceptibility }: UsualColony,
): Float64Array {
  const { layout } = shared;
  const calendarDay = (beeDay: number) => {
    for (let day = 1; day <= 365; day++) if (dayOfBeeYear(day, southern) === beeDay) return day;
    return beeDay;
  };
  const begin = calendarDay(autumnDay);
  const days = ((dayOfYear - begin + 365) % 365) + 365;
  const model = engine({ ...shared, measures: noMeasures(days, stockSusceptibility) });
  const state = new Float64Array(layout.length);
  placeWinterColony(state, 0, layout, { ...usualAutumn, contactRate, stockSusceptibility });
  for (let elapsed = 0; elapsed < days; elapsed++)
    oneDay(state, 0, model, { dayOfYear: ((begin - 1 + elapsed) % 365) + 1, elapsed });
  state[at.hazard] = 0;
  return state;
}

/** Largest share of infested bees that the record can be brought to: bees newly emerged have no mites yet. */
export function mostInfestedShare(state: Float64Array, start: number, layout: Layout): number {
  const { infested, live } = patternOf(state, start, layout);
  const open = live.reduce((sum, each, cell) => ((infested[cell] as number) > 0 ? sum + each : sum), 0);
  const bees = state[start + at.bees] as number;
  return bees > 0 ? open / bees : 0;
}

/**
 * Brings a record to so many bees, brood in proportion, and to an infested share: the odds of being infested change by
 * the same factor at every age, so the pattern by age and the mix of stages stay as they were.
 *
 * @returns false, with the record's share unchanged, when the share lies at or above `mostInfestedShare`
 */
export function bringTo(
  state: Float64Array,
  start: number,
  layout: Layout,
  { bees, infestedShare }: { readonly bees: number; readonly infestedShare: number },
): boolean {
  const scale = bees / (state[start + at.bees] as number);
  for (let place = start + layout.summer; place < start + layout.length; place++)
    state[place] = (state[place] as number) * scale;
  for (let place = start + layout.brood; place < start + layout.brood + broodDays; place++)
    state[place] = (state[place] as number) * scale;
  countAgain(state, start, layout);
  if (infestedShare > 0 && infestedShare >= mostInfestedShare(state, start, layout)) return false;
  const pattern = patternOf(state, start, layout);
  const wanted = infestedShare * (state[start + at.bees] as number);
  changeOdds(state, start, layout, pattern, infestedShare === 0 ? 0 : Math.exp(logOddsFactor(pattern, wanted)));
  countAgain(state, start, layout);
  return true;
}

/** Bees of each cell, cell by cell: those with living mites, and those with clean tracheae or living mites. */
interface Pattern {
  readonly infested: Float64Array;
  readonly live: Float64Array;
}

function patternOf(state: Float64Array, start: number, layout: Layout): Pattern {
  const cells = (layout.length - layout.summer) / classes;
  const [infested, live] = [new Float64Array(cells), new Float64Array(cells)];
  for (let each = 0; each < cells; each++) {
    const cell = start + layout.summer + each * classes;
    let total = 0;
    for (let stage = 1; stage <= patent; stage++) total += state[cell + stage] as number;
    infested[each] = total;
    live[each] = (state[cell] as number) + total;
  }
  return { infested, live };
}

/** Farthest that the logarithm of the factor is looked for. */
const farthest = 80;
/** Enough for halving alone to reach the last digit. */
const mostSteps = 80;

/**
 * ln of the factor on the odds that makes so many bees infested: by Newton's steps on the logarithm of their number,
 * which is nearly straight, halved where a step leaves what is known to hold the root.
 */
function logOddsFactor({ infested, live }: Pattern, wanted: number): number {
  let [low, high, log] = [-farthest, farthest, 0];
  for (let step = 0; step < mostSteps; step++) {
    const factor = Math.exp(log);
    let [total, slope] = [0, 0];
    for (let cell = 0; cell < live.length; cell++) {
      const before = infested[cell] as number;
      if (before === 0) continue;
      const after = shifted(before, live[cell] as number, factor);
      total += after;
      slope += after * (1 - after / (live[cell] as number));
    }
    if (total < wanted) low = log;
    else high = log;
    const aim = log + (Math.log(wanted / total) * total) / slope;
    const next = aim > low && aim < high ? aim : (low + high) / 2;
    if (Math.abs(next - log) <= 1e-15 * Math.max(1, Math.abs(log))) return next;
    log = next;
  }
  return log;
}

function changeOdds(
  state: Float64Array,
  start: number,
  layout: Layout,
  { infested, live }: Pattern,
  factor: number,
): void {
  for (let each = 0; each < live.length; each++) {
    const before = infested[each] as number;
    if (before === 0) continue;
    const cell = start + layout.summer + each * classes;
    const after = shifted(before, live[each] as number, factor);
    for (let stage = 1; stage <= patent; stage++)
      state[cell + stage] = (state[cell + stage] as number) * (after / before);
    state[cell] = (live[each] as number) - after;
  }
}

/** Infested among `all` when their odds change by a factor. */
const shifted = (infested: number, all: number, factor: number): number =>
  infested === 0 ? 0 : (all * factor * infested) / (factor * infested + (all - infested));
