/** One day of a colony, in expected numbers of bees: loss, contact, survival, infestation, mites, age, brood. */
import { ensure } from "../../units/index.ts";
import { ageBees } from "./age-bees.ts";
import { chanceOfHazard } from "./chance-of-hazard.ts";
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
  /** From this age on bees are no less susceptible than at it. */
  readonly matureAge: number;
  /** Room for the chance of infestation by age. */
  readonly infestation: Float64Array;
  /** Room for what is counted of the bees that grow older. */
  readonly sums: Float64Array;
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
  const youth = Float64Array.from({ length: cohorts }, (_, age) =>
    Math.max(oldSusceptibility, Math.exp(-age / youthDays)),
  );
  return {
    ...shared,
    youth,
    matureAge: youth.indexOf(youth[cohorts - 1] as number),
    infestation: new Float64Array(cohorts),
    sums: new Float64Array(6),
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
  const { parameters, layout, rates, measures, sums } = model;
  const today = rates[dayOfYear] as DayRates;
  const bees = state[start + at.bees] as number;
  addLoss(state, start, parameters, today);
  setInfestation(state, start, model, today.contact * (measures.contact[elapsed] as number));

  for (let each = 0; each < 6; each++) sums[each] = 0;
  const { summerAges, winterAges } = layout;
  const { infestation } = model;
  const { latentAdvance, foragingAge } = parameters;
  const summer = start + layout.summer;
  const foraging = Math.min(foragingAge, summerAges);
  ageBees(state, infestation, latentAdvance, summer, 0, foraging, summerAges, today.survivals, 0, sums);
  const winter = start + layout.winter;
  const youngest = state[start + at.youngestWinter] as number;
  const from = winter + youngest * classes;
  ageBees(state, infestation, latentAdvance, from, youngest, youngest, winterAges, today.survivals, 2, sums);

  const patents = sums[4] as number;
  const infested = (sums[2] as number) + (sums[3] as number) + (sums[1] as number) + patents;
  const others = (sums[0] as number) + (sums[5] as number);
  const freed = chanceOfHazard(measures.clearing[elapsed] as number);
  if (freed > 0) clearMites(state, start, layout, freed);

  const emerging = state[start + layout.brood + broodDays - 1] as number;
  state[summer] = emerging * (1 - today.drivers.winterShare);
  const winterBees = emerging * today.drivers.winterShare;
  state[winter] = winterBees;
  state[start + at.youngestWinter] = winterBees > 0 ? 0 : Math.min(youngest + 1, winterAges - 1);
  ageCohorts(state, start, layout, measures.emerging[elapsed] as number);
  const most = parameters.layingMaximum * (measures.laying[elapsed] as number) * today.drivers.laying;
  const eggs = most * factorOf(state[start + at.layingNoise] as number) * (bees / (bees + parameters.careHalf));
  ageBrood(state, start + layout.brood, parameters, eggs);

  state[start + at.infested] = infested - infested * freed;
  state[start + at.patent] = patents - patents * freed;
  state[start + at.bees] = infested + others + emerging;
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
  const { infestation, youth, layout, matureAge } = model;
  const bees = state[start + at.bees] as number;
  const share = bees > 0 ? (state[start + at.patent] as number) / bees : 0;
  const force =
    (state[start + at.contactRate] as number) * factorOf(state[start + at.contactNoise] as number) * contact * share;
  const cohort = start + layout.susceptibility;
  const areAlike = (state[start + at.alikeCohorts] as number) === layout.cohorts;
  const differing = areAlike ? matureAge + 1 : layout.cohorts;
  for (let age = 0; age < differing; age++)
    infestation[age] = chanceOfHazard(force * ((youth[age] as number) * (state[cohort + age] as number)));
  const rest = infestation[differing - 1] as number;
  for (let age = differing; age < layout.cohorts; age++) infestation[age] = rest;
}

/** A share of the infested bees loses its living mites. */
function clearMites(state: Float64Array, start: number, layout: Layout, share: number): void {
  for (let cell = start + layout.summer; cell < start + layout.length; cell += classes) {
    let out = 0;
    for (let stage = 1; stage <= patent; stage++) {
      const freed = (state[cell + stage] as number) * share;
      state[cell + stage] = (state[cell + stage] as number) - freed;
      out += freed;
    }
    state[cell + cleared] = (state[cell + cleared] as number) + out;
  }
}

/** Each cohort keeps its susceptibility as it grows older; the youngest has that of today's emerging bees. */
export function ageCohorts(state: Float64Array, start: number, layout: Layout, emerging: number): void {
  const first = start + layout.susceptibility;
  const alike = state[start + at.alikeCohorts] as number;
  const isAlike = emerging === state[first];
  if (isAlike && alike === layout.cohorts) return;
  for (let place = first + layout.cohorts - 1; place > first; place--) state[place] = state[place - 1] as number;
  state[first] = emerging;
  state[start + at.alikeCohorts] = isAlike ? alike + 1 : 1;
}

function ageBrood(state: Float64Array, brood: number, p: DynamicsParameters, eggs: number): void {
  // Four at a time: a call of `copyWithin` and a plain loop cost more.
  for (let day = brood + broodDays - 1; day > brood; day -= 4) {
    state[day] = state[day - 1] as number;
    state[day - 1] = state[day - 2] as number;
    state[day - 2] = state[day - 3] as number;
    state[day - 3] = state[day - 4] as number;
  }
  state[brood] = eggs;
  state[brood + 3] = (state[brood + 3] as number) * p.eggSurvival;
  state[brood + 9] = (state[brood + 9] as number) * p.broodSurvival;
}

/** e^noise; most runs have none, and need no call. */
export const factorOf = (noise: number): number => (noise === 0 ? 1 : Math.exp(noise));
