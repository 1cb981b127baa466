/** One day of a colony, in expected numbers of bees: loss, contact, survival, infestation, mites, age, brood. */
import { ensure } from "../../units/index.ts";
import { ageBees, type Passage, type Stretch } from "./age-bees.ts";
import { at, broodDays, classes, cleared, type Layout, patent } from "./layout.ts";
import type { Measures } from "./measures.ts";
import type { DynamicsParameters } from "./parameters.ts";
import type { DayRates, RateYear } from "./rates.ts";

/** What all colonies of a run share. Make it once with `engine`; it holds room to work in and is not for two threads. */
export interface Engine {
  readonly parameters: DynamicsParameters;
  readonly layout: Layout;
  readonly rates: RateYear;
  readonly measures: Measures;
  /** Susceptibility by age of the bee, before the stock: 1 when newly emerged. */
  readonly youth: Float64Array;
  /** Room for the chance of infestation by age. */
  readonly infestation: Float64Array;
  readonly passage: Passage;
}

/**
 * Readies a model for its days.
 *
 * @throws DomainError unless foraging begins on a whole day
 * @example
 * engine({ parameters: specified, layout: fullLayout, rates: rateYear(specified), measures: noMeasures(1) }).youth[0]  // → 1
 */
export function engine(shared: Pick<Engine, "parameters" | "layout" | "rates" | "measures">): Engine {
  const { oldSusceptibility, youthDays, foragingAge } = shared.parameters;
  ensure(Number.isInteger(foragingAge) && foragingAge >= 0, "foragingAge", foragingAge, "a whole number of 0 or more");
  const { cohorts } = shared.layout;
  return {
    ...shared,
    youth: Float64Array.from({ length: cohorts }, (_, age) => Math.max(oldSusceptibility, Math.exp(-age / youthDays))),
    infestation: new Float64Array(cohorts),
    passage: { moving: new Float64Array(classes), infested: 0, patent: 0, others: 0 },
  };
}

/** Which day: of the year for the season, of the run for what people do. */
export interface DayInRun {
  /** 1–365. */
  readonly dayOfYear: number;
  /** 0 on the first day of the run. */
  readonly elapsed: number;
}

/**
 * Takes the colony whose record begins at `start` through one day. Every right side uses the numbers of the morning.
 *
 * Model: daily ages of summer and winter bees, each clean, in one of seven latent stages, patent or cleared of living
 * mites. Bees of one age mix; a bee is infested by patent bees the more easily the younger it is. Drifting, robbing,
 * food, swarming and varroa are left out. Not validated in the field: the contact rate and its like are tuned by hand.
 *
 * @source own model; sources of each figure in `parameterFacts`
 */
export function oneDay(state: Float64Array, start: number, model: Engine, { dayOfYear, elapsed }: DayInRun): void {
  const { parameters, layout, rates, measures, passage } = model;
  const today = rates[dayOfYear] as DayRates;
  const bees = state[start + at.bees] as number;
  addLoss(state, start, parameters, today);
  setInfestation(state, start, model, today.contact * (measures.contact[elapsed] as number));

  passage.infested = 0;
  passage.patent = 0;
  passage.others = 0;
  const { summerAges, winterAges } = layout;
  const summer = start + layout.summer;
  const winter = start + layout.winter;
  const foraging = Math.min(parameters.foragingAge, summerAges);
  pass(state, model, summer, 0, foraging, today.hiveSurvival, today.hiveSurvivalPatent);
  pass(state, model, summer, foraging, summerAges, today.foragerSurvival, today.foragerSurvivalPatent);
  joinOldest(state, summer + (summerAges - 1) * classes, passage);
  const youngest = state[start + at.youngestWinter] as number;
  pass(state, model, winter, youngest, winterAges, today.winterSurvival, today.winterSurvivalPatent);
  joinOldest(state, winter + (winterAges - 1) * classes, passage);

  const clearing = measures.clearing[elapsed] as number;
  if (clearing > 0) clearMites(state, start, layout, passage, -Math.expm1(-clearing));

  const emerging = state[start + layout.brood + broodDays - 1] as number;
  state[summer] = emerging * (1 - today.drivers.winterShare);
  const winterBees = emerging * today.drivers.winterShare;
  state[winter] = winterBees;
  state[start + at.youngestWinter] = winterBees > 0 ? 0 : Math.min(youngest + 1, winterAges - 1);
  ageCohorts(state, start, layout, measures.emerging[elapsed] as number);
  const eggs =
    parameters.layingMaximum *
    (measures.laying[elapsed] as number) *
    factorOf(state[start + at.layingNoise] as number) *
    today.drivers.laying *
    (bees / (bees + parameters.careHalf));
  ageBrood(state, start + layout.brood, parameters, eggs);

  state[start + at.infested] = passage.infested;
  state[start + at.patent] = passage.patent;
  state[start + at.bees] = passage.infested + passage.others + emerging;
}

/** The hazard of losing the colony in the cold: a small cluster cannot keep warm, and infested bees help less. */
export function addLoss(state: Float64Array, start: number, p: DynamicsParameters, { drivers }: DayRates): void {
  const bees = state[start + at.bees] as number;
  const effective = bees - p.lossInfested * (state[start + at.infested] as number);
  const small = 1 / (1 + Math.exp((effective - p.lossBees) / p.lossSpread));
  state[start + at.hazard] = (state[start + at.hazard] as number) + drivers.cold * (p.lossBase + p.lossSmall * small);
}

/** Writes each age's chance of infestation today into the engine's room. A colony without bees infests nobody. */
export function setInfestation(state: Float64Array, start: number, model: Engine, contact: number): void {
  const { infestation, youth, layout } = model;
  const bees = state[start + at.bees] as number;
  const share = bees > 0 ? (state[start + at.patent] as number) / bees : 0;
  const force =
    (state[start + at.contactRate] as number) * factorOf(state[start + at.contactNoise] as number) * contact * share;
  const cohort = start + layout.susceptibility;
  let before = Number.NaN;
  for (let age = 0; age < layout.cohorts; age++) {
    const susceptible = (youth[age] as number) * (state[cohort + age] as number);
    infestation[age] = susceptible === before ? (infestation[age - 1] as number) : -Math.expm1(-force * susceptible);
    before = susceptible;
  }
}

function pass(
  state: Float64Array,
  { infestation, parameters, passage }: Engine,
  first: number,
  fromAge: number,
  toAge: number,
  survival: number,
  survivalPatent: number,
): void {
  const stretch: Stretch = { cell: first + fromAge * classes, fromAge, toAge, survival, survivalPatent };
  ageBees(state, infestation, parameters.latentAdvance, stretch, passage);
}

/** Bees that leave the oldest age stay in it; nobody is left on the way. */
function joinOldest(state: Float64Array, cell: number, { moving }: Passage): void {
  for (let each = 0; each < classes; each++) {
    state[cell + each] = (state[cell + each] as number) + (moving[each] as number);
    moving[each] = 0;
  }
}

/** A share of the infested bees loses its living mites. */
function clearMites(state: Float64Array, start: number, layout: Layout, passage: Passage, share: number): void {
  for (let cell = start + layout.summer; cell < start + layout.length; cell += classes) {
    let out = 0;
    for (let stage = 1; stage <= patent; stage++) {
      const freed = (state[cell + stage] as number) * share;
      state[cell + stage] = (state[cell + stage] as number) - freed;
      out += freed;
    }
    state[cell + cleared] = (state[cell + cleared] as number) + out;
  }
  passage.others += passage.infested * share;
  passage.infested -= passage.infested * share;
  passage.patent -= passage.patent * share;
}

/** Each cohort keeps its susceptibility as it grows older; the youngest has that of today's emerging bees. */
export function ageCohorts(state: Float64Array, start: number, layout: Layout, emerging: number): void {
  const first = start + layout.susceptibility;
  makeRoom(state, first, layout.cohorts);
  state[first] = emerging;
}

function ageBrood(state: Float64Array, brood: number, p: DynamicsParameters, eggs: number): void {
  makeRoom(state, brood, broodDays);
  state[brood] = eggs;
  state[brood + 3] = (state[brood + 3] as number) * p.eggSurvival;
  state[brood + 9] = (state[brood + 9] as number) * p.broodSurvival;
}

/** Moves each of `count` numbers one place on; the last is lost. For so few a loop is faster than `copyWithin`. */
function makeRoom(state: Float64Array, first: number, count: number): void {
  for (let place = first + count - 1; place > first; place--) state[place] = state[place - 1] as number;
}

/** e^noise; most runs have none, and need no call. */
export const factorOf = (noise: number): number => (noise === 0 ? 1 : Math.exp(noise));
