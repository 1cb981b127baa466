/** A colony at the start of a run, as a record in a flat array. */
import { ensure } from "../../units/index.ts";
import { at, classes, type Layout, patent } from "./layout.ts";

/** A broodless colony of winter bees, all of the oldest age; its infested bees are patent. */
export interface WinterColony {
  readonly bees: number;
  /** Share of infested bees, 0–1. */
  readonly infestedShare: number;
  /** Per day; 1.7 as specified. */
  readonly contactRate: number;
  readonly stockSusceptibility?: number;
}

/**
 * Writes a broodless winter colony at `start` of the array. For a start in the season let it run there from the
 * November before: only the shape of such a run has the right brood and ages.
 *
 * @throws DomainError for a number outside its range
 */
export function placeWinterColony(state: Float64Array, start: number, layout: Layout, colony: WinterColony): void {
  const { bees, infestedShare, contactRate, stockSusceptibility = 1 } = colony;
  ensure(bees >= 0 && bees < Infinity, "bees", bees, "a finite number of 0 or more");
  ensure(infestedShare >= 0 && infestedShare <= 1, "infestedShare", infestedShare, "from 0 to 1");
  ensure(contactRate >= 0 && contactRate < Infinity, "contactRate", contactRate, "a finite number of 0 or more");
  state.fill(0, start, start + layout.length);
  state.fill(stockSusceptibility, start + layout.susceptibility, start + layout.susceptibility + layout.cohorts);
  const oldest = start + layout.winter + (layout.winterAges - 1) * classes;
  state[oldest] = bees * (1 - infestedShare);
  state[oldest + patent] = bees * infestedShare;
  state[start + at.contactRate] = contactRate;
  countAgain(state, start, layout);
}

/**
 * Counts a colony's bees, infested and patent bees and alike cohorts anew from its record. Needed after a change of the cells by other
 * hands than the model's.
 */
export function countAgain(state: Float64Array, start: number, layout: Layout): void {
  let bees = 0;
  let infested = 0;
  let patents = 0;
  for (let cell = start + layout.summer; cell < start + layout.length; cell += classes) {
    for (let each = 0; each < classes; each++) bees += state[cell + each] as number;
    for (let stage = 1; stage <= patent; stage++) infested += state[cell + stage] as number;
    patents += state[cell + patent] as number;
  }
  state[start + at.bees] = bees;
  state[start + at.youngestWinter] = youngestWinter(state, start, layout);
  state[start + at.alikeCohorts] = alikeCohorts(state, start, layout);
  state[start + at.infested] = infested;
  state[start + at.patent] = patents;
}

function youngestWinter(state: Float64Array, start: number, layout: Layout): number {
  const first = start + layout.winter;
  for (let place = 0; place < (layout.winterAges - 1) * classes; place++)
    if (state[first + place] !== 0) return Math.floor(place / classes);
  return layout.winterAges - 1;
}

function alikeCohorts(state: Float64Array, start: number, { susceptibility, cohorts }: Layout): number {
  const first = start + susceptibility;
  for (let age = 1; age < cohorts; age++) if (state[first + age] !== state[first]) return age;
  return cohorts;
}
