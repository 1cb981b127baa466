/**
 * What a plan is asked with: the colonies, the label record, the weather, forage, supers and treatments on record.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, coloniesOf, settled } from "../../../casebook/index.ts";
import type { BodyOf } from "../../../journal/index.ts";
import { type ControlId, controlIds, controls } from "../../../knowledge/index.ts";
import { type control, site } from "../../../reasoning/index.ts";
import { addDays, blocked, type Day, problem, type Result, yearOf } from "../../../units/index.ts";
import { type Fields, readForm } from "../form.ts";
import type { CountedColony } from "./choice.ts";

/** What the reader chose in the form. */
export interface PlanWish {
  readonly control: ControlId;
  readonly colonies: readonly string[];
  /** Id of a label record; null without one. */
  readonly label: string | null;
  readonly isValidHere: boolean;
  readonly startOn: Day | null;
  readonly untestedReason: string;
  readonly beetle: "unknown" | "absent" | "present" | "endemic";
}

/** The wish from the form; ticked colonies are fields named `colony:` and the id. */
export function readPlanWish(fields: Fields): Result<PlanWish> {
  const form = readForm(fields);
  const colonies = tickedColonies(fields);
  const wish = form.result({
    control: form.oneOf("control", controlIds),
    colonies,
    label: fields.label || null,
    isValidHere: fields.isValidHere !== undefined,
    startOn: form.maybeDay("startOn") ?? null,
    untestedReason: form.maybeText("untestedReason") ?? "",
    beetle: fields.beetle ? form.oneOf("beetle", ["unknown", "absent", "present", "endemic"]) : ("unknown" as const),
  });
  if (wish.ok && colonies.length === 0) return blocked(problem("no-colonies-in-plan", "blocked", "colonies"));
  return wish;
}

/** Ids of the colonies ticked in a form. */
export const tickedColonies = (fields: Fields): readonly string[] =>
  Object.keys(fields).flatMap((name) => (name.startsWith("colony:") ? [name.slice("colony:".length)] : []));

/** Label records on record, those for the control first. */
export function labelRecordsFor(
  casebook: Casebook,
  chosen: ControlId,
): readonly { readonly id: string; readonly record: BodyOf<"label-record-loaded">; readonly fits: boolean }[] {
  const wanted = new Set(controls[chosen].activeIngredients.map((each) => each.toLowerCase()));
  return Object.values(casebook.labelRecords)
    .flatMap((state) => {
      const record = settled(state.record);
      return record ? [{ id: state.id, record, fits: wanted.has(record.activeIngredient.trim().toLowerCase()) }] : [];
    })
    .sort((one, other) => Number(other.fits) - Number(one.fits));
}

/** The temperatures of the place; null when none is on record. */
export function siteOf(casebook: Casebook, state: CaseState): site.SiteTemperatures | null {
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const weather = settled(apiary?.weather);
  const latitude = settled(apiary?.record)?.latitude;
  const where = latitude === undefined ? {} : { latitude };
  if (weather?.monthlyMeanCelsius) return { monthlyMeanCelsius: weather.monthlyMeanCelsius, ...where };
  if (weather?.dailyMaxCelsius) return { dailyMaxCelsius: weather.dailyMaxCelsius, ...where };
  return null;
}

export interface Calendar {
  readonly from: Day;
  /** Last day that may be planned. */
  readonly to: Day;
  /** Last day that is shown: a year from the first. */
  readonly until: Day;
  readonly flows: readonly (site.Span & { readonly name: string })[];
  /** Undefined when nobody recorded supers for these days. */
  readonly supers: readonly site.Supers[] | undefined;
  readonly treatments: readonly control.EarlierTreatment[];
}

/**
 * Flows, supers and treatments from today on. Flows of an ordinary year come back each year. Supers are known only for
 * the years someone wrote them down for: the days asked about end with the last such year, so that a year without a
 * record is never taken as one without supers.
 */
export function calendarOf(
  casebook: Casebook,
  state: CaseState,
  { today, colonies }: { readonly today: Day; readonly colonies: readonly string[] },
): Calendar {
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const concerns = (each: { readonly colonies: readonly string[] }) =>
    each.colonies.length === 0 || colonies.length === 0 || each.colonies.some((id) => colonies.includes(id));
  const supers = Object.values(apiary?.supers ?? {})
    .flatMap((kept) => kept.candidates.map((candidate) => candidate.value))
    .filter(concerns);
  const lastYear = Math.max(0, ...supers.map((each) => yearOf(each.off ?? each.on)));
  const stillOn = supers.some((each) => each.off === null);
  const isKnown = supers.length > 0 && (stillOn || lastYear >= yearOf(today));
  const until = addDays(today, 364);
  const to = isKnown && !stillOn && `${lastYear}-12-31` < until ? `${lastYear}-12-31` : until;
  const years = [yearOf(today) - 1, yearOf(today), yearOf(today) + 1];
  const flows = Object.values(apiary?.flows ?? {})
    .flatMap((kept) => kept.candidates.map((candidate) => candidate.value))
    .flatMap((flow) => years.map((year) => ({ name: flow.name, ...site.inYear(flow, year) })))
    .filter((flow) => flow.to >= today && flow.from <= until)
    .sort((one, other) => one.from.localeCompare(other.from));
  const treatments = Object.values(apiary?.treatments ?? {})
    .flatMap((kept) => kept.candidates.map((candidate) => candidate.value))
    .filter(concerns)
    .map(({ activeIngredient, on, off }) => ({ activeIngredient, on, off }));
  return {
    from: today,
    to,
    until,
    flows,
    supers: isKnown ? supers.map(({ on, off }) => ({ on, off })) : undefined,
    treatments,
  };
}

/** The request for `makePlan`; null when no weather is on record and the control needs it. */
export function planRequest(
  casebook: Casebook,
  state: CaseState,
  {
    wish,
    counted,
    today,
  }: { readonly wish: PlanWish; readonly counted: readonly CountedColony[]; readonly today: Day },
): control.PlanRequest {
  const all = coloniesOf(casebook, state.id);
  const colonies = all
    .filter((colony) => wish.colonies.includes(colony.id))
    .map((colony) => ({ id: colony.id, code: colony.code ?? colony.id }));
  const record = wish.label === null ? null : settled(casebook.labelRecords[wish.label]?.record);
  const stand = settled(state.record)?.coloniesInApiary ?? all.length;
  const calendar = calendarOf(casebook, state, { today, colonies: wish.colonies });
  return {
    control: wish.control,
    colonies,
    coloniesInApiary: Math.max(stand, colonies.length),
    coloniesTested: counted.filter((each) => wish.colonies.includes(each.id)).length,
    untestedReason: wish.untestedReason,
    jurisdiction: record && wish.isValidHere ? record.jurisdiction : null,
    labelRecord: record,
    site: siteOf(casebook, state) ?? {},
    flows: calendar.flows,
    ...(calendar.supers === undefined ? {} : { supers: calendar.supers }),
    treatments: calendar.treatments,
    startOn: wish.startOn,
    from: calendar.from,
    to: calendar.to,
    madeOn: today,
    smallHiveBeetle: wish.beetle,
  };
}
