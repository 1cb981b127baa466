/** How one colony lies in a flat array of numbers, and many colonies one after another. */
import { ensure } from "../../units/index.ts";
import type { DynamicsParameters } from "./parameters.ts";

/** Mite state of a bee: 0 clean, 1–7 latent (mites develop), 8 patent (gives mites off), 9 cleared (dead mites). */
export const classes = 10;
export const latentStages = 7;
export const patent = 8;
export const cleared = 9;
/** Days from laying to emergence: egg 3, open larva 6, sealed 12; common practice, no source. */
export const broodDays = 21;

/** Places of the single numbers at the head of a colony's record. */
export const at = {
  /** Adult bees. */
  bees: 0,
  /** Latent and patent bees. */
  infested: 1,
  /** Patent bees. */
  patent: 2,
  /** Sum of the daily hazards of loss; the colony survives with chance e^−hazard. */
  hazard: 3,
  /** ln of the day's factor on contact and on laying; 0 without noise. */
  contactNoise: 4,
  layingNoise: 5,
  /** Contact rate of this colony, per day. */
  contactRate: 6,
  /** Age of the youngest winter bees: none emerge from midwinter to midsummer, and ages without bees cost no time. */
  youngestWinter: 7,
  /** Youngest cohorts that are equally susceptible: as long as all are, none need be moved on. */
  alikeCohorts: 8,
} as const;
const head = 9;

/** Offsets inside one colony's record. */
export interface Layout {
  /** Daily ages of summer and of winter bees; the last one holds all older bees. */
  readonly summerAges: number;
  readonly winterAges: number;
  /** First brood day; `broodDays` numbers, youngest first. */
  readonly brood: number;
  /** Susceptibility of each cohort by age in days. */
  readonly susceptibility: number;
  readonly cohorts: number;
  /** First cell of summer and winter bees: age by age, `classes` numbers each. */
  readonly summer: number;
  readonly winter: number;
  /** Numbers of one colony. */
  readonly length: number;
}

/**
 * A layout with the given number of daily ages.
 *
 * Ages beyond which no rate changes may be held as one without changing any number: `shortestLayout`. After requeening
 * cohorts differ in susceptibility: use `fullLayout`.
 *
 * @throws DomainError unless both are whole and at least 2
 * @example
 * layoutOf({ summerAges: 24, winterAges: 24 }).length  // → 534
 */
export function layoutOf({ summerAges, winterAges }: Pick<Layout, "summerAges" | "winterAges">): Layout {
  ensure(Number.isInteger(summerAges) && summerAges >= 2, "summerAges", summerAges, "a whole number of 2 or more");
  ensure(Number.isInteger(winterAges) && winterAges >= 2, "winterAges", winterAges, "a whole number of 2 or more");
  const cohorts = Math.max(summerAges, winterAges);
  const susceptibility = head + broodDays;
  const summer = susceptibility + cohorts;
  const winter = summer + summerAges * classes;
  const length = winter + winterAges * classes;
  return { summerAges, winterAges, brood: head, susceptibility, cohorts, summer, winter, length };
}

/** 64 daily ages: right for every plan, requeening too. */
export const fullLayout: Layout = layoutOf({ summerAges: 64, winterAges: 64 });

/**
 * The fewest ages that change no number, as long as all cohorts are equally susceptible.
 *
 * @example
 * shortestLayout(specified).summerAges  // → 19
 */
export function shortestLayout({ foragingAge, youthDays, oldSusceptibility }: DynamicsParameters): Layout {
  let old = 1;
  while (Math.exp(-old / youthDays) > oldSusceptibility) old++;
  return layoutOf({ summerAges: Math.max(foragingAge, old) + 1, winterAges: old + 1 });
}
