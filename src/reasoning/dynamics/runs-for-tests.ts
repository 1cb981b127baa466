/** Runs that the tests of this folder share. */
import { placeWinterColony } from "./colony.ts";
import { type CourseQuestion, colonyCourse } from "./course.ts";
import { type Engine, engine, oneDay } from "./day.ts";
import type { Drivers } from "./drivers.ts";
import { fullLayout, type Layout } from "./layout.ts";
import { type Measures, noMeasures } from "./measures.ts";
import { type ColonySeen, seeColony } from "./observe.ts";
import { type DynamicsParameters, specified } from "./parameters.ts";
import { rateYear, steadyYear } from "./rates.ts";

/** A November cluster of the golden tables, in the specified variant: own numbers. */
export const november: CourseQuestion = {
  site: {},
  start: { date: "2025-11-01", bees: 22000, infestedShare: 0.16, brood: "none" },
  actions: [],
  until: "2027-11-01",
  parameters: specified,
};

/** The course of a question that must have an answer. */
export function courseOf(question: CourseQuestion) {
  const answer = colonyCourse(question);
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.value;
}

/** A colony alone under drivers that never change, or in the specified year. */
export interface Bench {
  readonly drivers?: Drivers;
  readonly parameters?: Partial<DynamicsParameters>;
  readonly layout?: Layout;
  readonly measures?: Measures;
  readonly bees: number;
  readonly infestedShare: number;
}

/** A colony on the bench with a way to step it. */
export function benchColony({ drivers, layout = fullLayout, bees, infestedShare, measures, ...rest }: Bench) {
  const parameters = { ...specified, ...rest.parameters };
  const rates = drivers ? steadyYear(parameters, drivers) : rateYear(parameters);
  const model: Engine = engine({ parameters, layout, rates, measures: measures ?? noMeasures(5000) });
  const state = new Float64Array(layout.length);
  placeWinterColony(state, 0, layout, { bees, infestedShare, contactRate: parameters.contactRate });
  let elapsed = 0;
  return {
    state,
    model,
    see: (): ColonySeen => seeColony(state, 0, layout),
    step: (days: number, firstDayOfYear = 305) => {
      for (let day = 0; day < days; day++, elapsed++)
        oneDay(state, 0, model, { dayOfYear: ((firstDayOfYear - 1 + elapsed) % 365) + 1, elapsed });
    },
  };
}

/** Full summer that never ends; own numbers. */
export const endlessSummer: Drivers = {
  celsius: 20,
  flight: 1,
  laying: 1,
  winterShare: 0,
  winterMortality: 0.05,
  cold: 0,
  flow: 1,
};

/** Winter that never ends; own numbers. */
export const endlessWinter: Drivers = {
  celsius: -5,
  flight: 0,
  laying: 0,
  winterShare: 1,
  winterMortality: 0.0045,
  cold: 0,
  flow: 0,
};
