/** What the casebook holds of an apiary, as the days of a plan are checked against it. */
import { type ApiaryState, isInConflict, type Kept, settled } from "../../casebook/index.ts";
import { answered, blocked, type Day, type Problem, type Result, yearOf } from "../../units/index.ts";
import { inYear, type SiteTemperatures, type Span, type Supers } from "../site/index.ts";
import { controlProblem } from "./control-problem.ts";
import type { EarlierTreatment } from "./day-rules.ts";

export interface RecordedSite {
  readonly site: SiteTemperatures;
  readonly flows: readonly Span[];
  /** Left out when nobody recorded supers. */
  readonly supers?: readonly Supers[];
  readonly treatments: readonly EarlierTreatment[];
}

export interface SiteQuestion {
  readonly apiary: ApiaryState;
  /** Ids of the colonies meant; supers and treatments of other colonies do not count. */
  readonly colonies: readonly string[];
  /** Both included. Flows of an ordinary year are moved into the years they touch. */
  readonly from: Day;
  readonly to: Day;
}

/**
 * Temperatures, flows, supers and earlier treatments of an apiary on record.
 *
 * Where people disagree about flows, supers or treatments, every value counts, since each may bar days; a weather
 * year in conflict blocks. Nothing is taken for granted: no supers on record means not known, not none.
 */
export function recordedSite({ apiary, colonies, from, to }: SiteQuestion): Result<RecordedSite> {
  if (isInConflict(apiary.weather)) return blocked(controlProblem("weather-in-conflict", "blocked", "site"));
  const weather = settled(apiary.weather);
  const latitude = settled(apiary.record)?.latitude;
  const years = Array.from({ length: yearOf(to) - yearOf(from) + 2 }, (_, index) => yearOf(from) - 1 + index);
  const concerns = (whose: readonly string[]) => whose.length === 0 || whose.some((each) => colonies.includes(each));
  const supers = every(apiary.supers).filter((each) => concerns(each.colonies));
  const treatments = every(apiary.treatments).filter((each) => concerns(each.colonies));
  const value: RecordedSite = {
    site: {
      ...(weather?.monthlyMeanCelsius ? { monthlyMeanCelsius: weather.monthlyMeanCelsius } : {}),
      ...(weather?.dailyMaxCelsius ? { dailyMaxCelsius: weather.dailyMaxCelsius } : {}),
      ...(latitude === undefined ? {} : { latitude }),
    },
    flows: every(apiary.flows)
      .flatMap((flow) => years.map((year) => inYear(flow, year)))
      .filter((flow) => flow.from <= to && flow.to >= from),
    ...(Object.keys(apiary.supers).length === 0 ? {} : { supers: supers.map(({ on, off }) => ({ on, off })) }),
    treatments: treatments.map(({ activeIngredient, on, off }) => ({ activeIngredient, on, off })),
  };
  return answered(value, conflictProblems(apiary));
}

/** Every value held, whether people agree or not. */
const every = <T>(slots: Readonly<Record<string, Kept<T>>>): readonly T[] =>
  Object.values(slots).flatMap(({ candidates }) => candidates.map(({ value }) => value));

function conflictProblems({ flows, supers, treatments }: ApiaryState): readonly Problem[] {
  return Object.entries({ flows, supers, treatments }).flatMap(([field, slots]) => {
    const disputed = Object.values<Kept<unknown>>(slots).filter(isInConflict).length;
    return disputed === 0
      ? []
      : [controlProblem("records-in-conflict", "warned", field, { slots: { field, disputed } })];
  });
}
