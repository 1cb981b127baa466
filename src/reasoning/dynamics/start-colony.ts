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
  let open = 0;
  for (let cell = start + layout.summer; cell < start + layout.length; cell += classes)
    if (infestedIn(state, cell) > 0) open += liveIn(state, cell);
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
  changeOdds(state, start, layout, infestedShare === 0 ? 0 : oddsFactor(state, start, layout, infestedShare));
  countAgain(state, start, layout);
  return true;
}

/** By halving the logarithm: infested bees rise with the factor, from none to the most there can be. */
function oddsFactor(state: Float64Array, start: number, layout: Layout, share: number): number {
  const wanted = share * (state[start + at.bees] as number);
  let [low, high] = [-80, 80];
  while (high - low > 1e-13) {
    const middle = (low + high) / 2;
    if (infestedUnder(state, start, layout, Math.exp(middle)) < wanted) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}

function infestedUnder(state: Float64Array, start: number, layout: Layout, factor: number): number {
  let total = 0;
  for (let cell = start + layout.summer; cell < start + layout.length; cell += classes)
    total += shifted(infestedIn(state, cell), liveIn(state, cell), factor);
  return total;
}

function changeOdds(state: Float64Array, start: number, layout: Layout, factor: number): void {
  for (let cell = start + layout.summer; cell < start + layout.length; cell += classes) {
    const before = infestedIn(state, cell);
    const all = liveIn(state, cell);
    if (before === 0) continue;
    const after = shifted(before, all, factor);
    for (let stage = 1; stage <= patent; stage++)
      state[cell + stage] = (state[cell + stage] as number) * (after / before);
    state[cell] = all - after;
  }
}

/** Infested among `all` when their odds change by a factor. */
const shifted = (infested: number, all: number, factor: number): number =>
  infested === 0 ? 0 : (all * factor * infested) / (factor * infested + (all - infested));

function infestedIn(state: Float64Array, cell: number): number {
  let total = 0;
  for (let stage = 1; stage <= patent; stage++) total += state[cell + stage] as number;
  return total;
}

/** Clean and infested bees; those with only dead mites keep out of it. */
const liveIn = (state: Float64Array, cell: number): number => (state[cell] as number) + infestedIn(state, cell);
