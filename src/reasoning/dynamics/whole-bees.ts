/** One day of a colony in whole bees: the same chances as the expected day, drawn bee by bee. */
import { drawPoisson, type RandomStream } from "../../numerics/index.ts";
import { drawBees } from "./binomial-draw.ts";
import { countAgain } from "./colony.ts";
import { addLoss, ageCohorts, type DayInRun, type Engine, factorOf, setInfestation } from "./day.ts";
import { at, broodDays, classes, cleared, latentStages, patent } from "./layout.ts";
import type { DayRates } from "./rates.ts";

/**
 * Takes a colony of whole bees through one day: survival, infestation, latent stages, clearing, the kind of bee that
 * emerges and the deaths of brood are binomial counts, eggs a Poisson count. The hazard of losing the colony is added
 * up, not drawn. With chances for each bee in place of shares the mean course is nearly, not exactly, that of `oneDay`:
 * contact depends on the share of patent bees, which now varies.
 *
 * Draws come in a fixed order from the one stream, so a stream of its own for each particle and day makes a path
 * depend on nothing else. Record must hold whole numbers of bees (`roundColony`).
 */
export function oneDayOfWholeBees(
  state: Float64Array,
  start: number,
  model: Engine,
  { dayOfYear, elapsed }: DayInRun,
  stream: RandomStream,
): void {
  const { parameters, layout, rates, measures, infestation } = model;
  const today = rates[dayOfYear] as DayRates;
  const bees = state[start + at.bees] as number;
  addLoss(state, start, parameters, today);
  setInfestation(state, start, model, today.contact * (measures.contact[elapsed] as number));

  const freed = -Math.expm1(-(measures.clearing[elapsed] as number));
  const advance = parameters.latentAdvance;
  const foraging = parameters.foragingAge;
  growOlder(state, start + layout.summer, layout.summerAges, (cell, age) => {
    const young = age < foraging;
    const survival = young ? today.hiveSurvival : today.foragerSurvival;
    const survivalPatent = young ? today.hiveSurvivalPatent : today.foragerSurvivalPatent;
    oneAge(state, cell, { survival, survivalPatent, caught: infestation[age] as number, advance, freed }, stream);
  });
  growOlder(state, start + layout.winter, layout.winterAges, (cell, age) => {
    const { winterSurvival: survival, winterSurvivalPatent: survivalPatent } = today;
    oneAge(state, cell, { survival, survivalPatent, caught: infestation[age] as number, advance, freed }, stream);
  });

  const brood = start + layout.brood;
  const emerging = state[brood + broodDays - 1] as number;
  const winterBees = drawBees(stream, emerging, today.drivers.winterShare);
  state[start + layout.summer] = emerging - winterBees;
  state[start + layout.winter] = winterBees;
  ageCohorts(state, start, layout, measures.emerging[elapsed] as number);
  const laid =
    parameters.layingMaximum *
    (measures.laying[elapsed] as number) *
    factorOf(state[start + at.layingNoise] as number) *
    today.drivers.laying *
    (bees / (bees + parameters.careHalf));
  state.copyWithin(brood + 1, brood, brood + broodDays - 1);
  state[brood] = drawPoisson(stream, laid);
  state[brood + 3] = drawBees(stream, state[brood + 3] as number, parameters.eggSurvival);
  state[brood + 9] = drawBees(stream, state[brood + 9] as number, parameters.broodSurvival);
  countAgain(state, start, layout);
}

/** Rounds each cell and brood day of a record to whole bees and counts again. */
export function roundColony(state: Float64Array, start: number, { layout }: Pick<Engine, "layout">): void {
  const round = (from: number, to: number) => {
    for (let place = from; place < to; place++) state[place] = Math.round(state[place] as number);
  };
  round(start + layout.brood, start + layout.brood + broodDays);
  round(start + layout.summer, start + layout.length);
  countAgain(state, start, layout);
}

/** Draws the fate of each age, oldest first, then moves all on by one day; the oldest are joined. */
function growOlder(state: Float64Array, first: number, ages: number, fate: (cell: number, age: number) => void): void {
  const oldest = first + (ages - 1) * classes;
  for (let age = ages - 1; age >= 0; age--) fate(first + age * classes, age);
  for (let each = 0; each < classes; each++)
    state[oldest + each] = (state[oldest + each] as number) + (state[oldest - classes + each] as number);
  state.copyWithin(first + classes, first, oldest - classes);
  state.fill(0, first, first + classes);
}

interface Fate {
  readonly survival: number;
  readonly survivalPatent: number;
  readonly caught: number;
  readonly advance: number;
  /** Chance that a bee's living mites are killed today. */
  readonly freed: number;
}

/** Draws what becomes of the bees of one age and kind today. Empty classes draw nothing. */
function oneAge(state: Float64Array, cell: number, fate: Fate, stream: RandomStream): void {
  const clean = drawBees(stream, state[cell] as number, fate.survival);
  const caught = drawBees(stream, clean, fate.caught);
  state[cell] = clean - caught;
  let arriving = caught;
  for (let stage = 1; stage <= latentStages; stage++) {
    const alive = drawBees(stream, state[cell + stage] as number, fate.survival);
    const leaving = drawBees(stream, alive, fate.advance);
    state[cell + stage] = alive - leaving + arriving;
    arriving = leaving;
  }
  state[cell + patent] = drawBees(stream, state[cell + patent] as number, fate.survivalPatent) + arriving;
  let rid = drawBees(stream, state[cell + cleared] as number, fate.survival);
  if (fate.freed > 0)
    for (let stage = 1; stage <= patent; stage++) {
      const out = drawBees(stream, state[cell + stage] as number, fate.freed);
      state[cell + stage] = (state[cell + stage] as number) - out;
      rid += out;
    }
  state[cell + cleared] = rid;
}
