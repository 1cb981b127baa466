/** Varroa beside the colony's brood, and what it does to tracheal mites: bees parasitised in their cells take them up more easily. */
import type { DayInRun, Engine } from "../day.ts";
import { oneDay } from "../day.ts";
import { at, broodDays } from "../layout.ts";
import type { Measures } from "../measures.ts";

/** Varroa of a colony on the first morning. */
export interface VarroaStart {
  /** Mites on 100 adult bees, as a wash counts them. */
  readonly mitesPer100: number;
  /** Mites that leave a cell for each that entered, its mother among them; `varroaFigures.gain` when left out. */
  readonly gain?: number;
}

/**
 * A mite on bees enters brood with 1/7 a day while there is brood being sealed, and lives through a day with 0.994: the
 * values of the growth table, from memory. It leaves after 12 days, 1.5 for each that entered: 1.3 to 1.5 daughters a
 * cycle in DeGrandi-Hoffman and others 2016, with the mother and those that do not live. Brood counts as there from 100
 * sealed cells on: assumed. Bees parasitised in development are 1.8 times as easily infested by tracheal mites: 63.9 of
 * 100 against 35.5, one study (Insectes Sociaux 47:171–176, 2000).
 */
export const varroaFigures = {
  invasion: 1 / 7,
  survival: 0.994,
  sealedDays: 12,
  gain: 1.5,
  leastSealed: 100,
  susceptibility: 63.9 / 35.5,
} as const;

/** Varroa on a day: on bees, and in cells by the day they were entered, newest first. */
export interface VarroaDay {
  readonly onBees: number;
  readonly inCells: readonly number[];
}

/** One day on: `sealed` tells how many cells are sealed. Mites that leave cells and those that stay out are on bees tomorrow. */
export function varroaDay({ onBees, inCells }: VarroaDay, sealed: number, gain: number): VarroaDay {
  const { invasion, survival, leastSealed } = varroaFigures;
  const alive = survival * onBees;
  const entering = sealed >= leastSealed ? invasion * alive : 0;
  const leaving = gain * (inCells.at(-1) ?? 0);
  return { onBees: alive - entering + leaving, inCells: [entering, ...inCells.slice(0, -1)] };
}

/** Age of brood when it is sealed: egg 3 and open larva 6 days. */
const sealedFrom = broodDays - varroaFigures.sealedDays;

/**
 * Makes the bees that emerge more susceptible by the share of them that were parasitised in their cells: mites entered
 * 12 days ago fall on the cells that emerge today by chance, and `1 − e^(−mites/cells)` of these have at least one.
 *
 * The brood is that of the expected course without varroa. Varroa's own harm to bees and brood, viruses, drone brood
 * and treatment of varroa are left out: not for what varroa does to the colony.
 *
 * @source 63.9 against 35.5 of 100 infested: Insectes Sociaux 47:171–176 (2000); the rest own, see `varroaFigures`
 */
export function coupleVarroa(
  measures: Measures,
  model: Engine,
  colony: Float64Array,
  days: readonly DayInRun[],
  { mitesPer100, gain = varroaFigures.gain }: VarroaStart,
): void {
  const state = colony.slice();
  const { brood } = model.layout;
  let varroa: VarroaDay = {
    onBees: (mitesPer100 / 100) * (state[at.bees] as number),
    inCells: new Array<number>(varroaFigures.sealedDays).fill(0),
  };
  const more = new Float64Array(days.length);
  for (const [index, day] of days.entries()) {
    const emerging = state[brood + broodDays - 1] as number;
    const inThem = varroa.inCells.at(-1) ?? 0;
    const parasitised = emerging > 0 ? -Math.expm1(-inThem / emerging) : 0;
    more[index] = 1 + (varroaFigures.susceptibility - 1) * parasitised;
    const sealed = state.subarray(brood + sealedFrom, brood + broodDays).reduce((sum, each) => sum + each, 0);
    varroa = varroaDay(varroa, sealed, gain);
    oneDay(state, 0, model, day);
  }
  for (const [index, { elapsed }] of days.entries())
    measures.emerging[elapsed] = (measures.emerging[elapsed] as number) * (more[index] as number);
}
