/**
 * What the casebook holds of a colony's season: its counts, its place, what was put into it, what is planned.
 *
 * @module views/model
 */
import { type Casebook, coloniesOf, plansOf, settled } from "../../../casebook/index.ts";
import { controls } from "../../../knowledge/index.ts";
import { bench, control, dynamics, site } from "../../../reasoning/index.ts";
import { addDays, type Day, daysBetween, yearOf } from "../../../units/index.ts";
import { siteOf } from "../done/plan-request.ts";
import { specimensFound } from "../found/specimens.ts";
import { toldDissections } from "../found/told-dissections.ts";

/** A count of the colony that a forecast can be held to. */
export interface SeasonCount extends dynamics.DatedCount {
  readonly code: string;
  /** Accepted with limits, or of bees that were dead: left out. */
  readonly isLimited: boolean;
  /** Ended before its target. By what rule says nothing of the share: no forecast differs by it. */
  readonly endedEarly: boolean;
}

export interface ColonySeason {
  readonly caseId: string;
  readonly caseCode: string;
  readonly colony: string;
  readonly code: string;
  readonly apiary: string | null;
  readonly place: string;
  readonly counts: readonly SeasonCount[];
  readonly site: dynamics.CourseSite;
  readonly hasFlows: boolean;
  readonly supers: readonly site.Span[];
  /** What was put into the colony, as far as the model knows it; and the ingredients it does not know. */
  readonly done: readonly dynamics.Action[];
  readonly unknown: readonly string[];
  /** What plans on record still intend for it. */
  readonly planned: readonly dynamics.Action[];
}

/** A count as a question holds it. */
export const asCount = ({ date, infested, examined, oneSided, stop }: dynamics.DatedCount): dynamics.DatedCount => ({
  ...{ date, infested, examined },
  ...(oneSided === undefined ? {} : { oneSided }),
  ...(stop === undefined ? {} : { stop }),
});

/** The counts that a forecast is held to. */
export const usedCounts = ({ counts }: ColonySeason): readonly SeasonCount[] =>
  counts.filter(({ isLimited }) => !isLimited);

/** Colonies of a case that were counted, newest count first. */
export function countedSeasons(casebook: Casebook, caseId: string): readonly { id: string; code: string }[] {
  const newest = new Map<string, Day>();
  for (const { label, takenOn, readings } of specimensFound(casebook, caseId))
    if (takenOn !== null && readings.length > 0 && takenOn > (newest.get(label.colony) ?? ""))
      newest.set(label.colony, takenOn);
  for (const { colony, date } of countsTold(casebook, caseId))
    if (date > (newest.get(colony) ?? "")) newest.set(colony, date);
  const code = new Map(coloniesOf(casebook, caseId).map((each) => [each.id, each.code ?? each.id]));
  return [...newest]
    .sort(([one, on], [other, then]) => then.localeCompare(on) || one.localeCompare(other))
    .map(([id]) => ({ id, code: code.get(id) ?? id }));
}

/** Counted colonies of the open cases, by case; the newest cases first, at most so many of them. */
export function countedInOpenCases(
  casebook: Casebook,
  most: number,
): readonly {
  readonly caseId: string;
  readonly caseCode: string;
  readonly colonies: readonly { id: string; code: string }[];
}[] {
  return Object.values(casebook.cases)
    .filter(({ closed }) => closed === null)
    .map((state) => ({
      caseId: state.id,
      caseCode: settled(state.record)?.code ?? state.id,
      openedOn: settled(state.record)?.openedOn ?? "",
    }))
    .sort((one, other) => other.openedOn.localeCompare(one.openedOn))
    .slice(0, most)
    .map(({ caseId, caseCode }) => ({ caseId, caseCode, colonies: countedSeasons(casebook, caseId) }))
    .filter(({ colonies }) => colonies.length > 0);
}

/** The season of one colony of a case; null where the case or the colony is not there. */
export function colonySeason(
  casebook: Casebook,
  of: { readonly caseId: string; readonly colony: string; readonly today: Day },
): ColonySeason | null {
  const state = casebook.cases[of.caseId];
  const found = state ? coloniesOf(casebook, of.caseId).find(({ id }) => id === of.colony) : undefined;
  if (!state || !found) return null;
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const record = settled(apiary?.record);
  // The planner's own reading of the place, so that both take the same highs.
  const weather = siteOf(casebook, state) ?? {};
  const concerns = (each: { readonly colonies: readonly string[] }) =>
    each.colonies.length === 0 || each.colonies.includes(of.colony);
  const all = <Body>(
    kept: Readonly<Record<string, { readonly candidates: readonly { readonly value: Body }[] }>> = {},
  ) => Object.values(kept).flatMap(({ candidates }) => candidates.map(({ value }) => value));
  const flows = all(apiary?.flows);
  const treated = all(apiary?.treatments)
    .filter((each) => concerns(each) && each.on <= of.today)
    .map((each) => ({ ...each, kind: kindOf[each.activeIngredient.trim().toLowerCase()] }));
  return {
    caseId: of.caseId,
    caseCode: settled(state.record)?.code ?? of.caseId,
    colony: of.colony,
    code: found.code ?? of.colony,
    apiary: state.apiary,
    place: record?.name ?? "",
    counts: countsOf(casebook, of),
    site: {
      ...weather,
      ...(record?.latitude === undefined ? {} : { latitude: record.latitude }),
      ...(flows.length === 0 ? {} : { flows: flows.map((flow) => bellOf(site.inYear(flow, yearOf(of.today)))) }),
    },
    hasFlows: flows.length > 0,
    supers: all(apiary?.supers)
      .filter(concerns)
      .map(({ on, off }) => ({ from: on, to: off ?? of.today })),
    done: treated.flatMap(({ kind, on, off }) => (kind === undefined ? [] : [actionOf(kind, on, off)])),
    unknown: [
      ...new Set(treated.flatMap(({ kind, activeIngredient }) => (kind === undefined ? [activeIngredient] : []))),
    ],
    planned: plannedFor(casebook, of),
  };
}

/** Actions of the model by active ingredient, as treatments are written down. */
const kindOf: Readonly<Record<string, "menthol" | "formic" | "oil-patty" | undefined>> = Object.fromEntries(
  (
    [
      ["menthol", "menthol"],
      ["formic-acid", "formic"],
      ["oil-patty", "oil-patty"],
    ] as const
  ).flatMap(([id, kind]) => controls[id].activeIngredients.map((each) => [each.toLowerCase(), kind])),
);

const actionOf = (kind: "menthol" | "formic" | "oil-patty", on: Day, off: Day | null): dynamics.Action =>
  kind === "oil-patty" ? { kind, from: on, to: off ?? addDays(on, control.pattyDays) } : { kind, from: on };

/** Controls whose course the model knows, and as what. */
export const modelledControls: Readonly<Record<string, "menthol" | "formic" | "oil-patty" | "requeen" | undefined>> = {
  menthol: "menthol",
  "formic-acid": "formic",
  "oil-patty": "oil-patty",
  requeen: "requeen",
};

/** What the newest plan of each control still has before it. */
function plannedFor(
  casebook: Casebook,
  { caseId, colony, today }: { readonly caseId: string; readonly colony: string; readonly today: Day },
): readonly dynamics.Action[] {
  const plans = plansOf(casebook, caseId).flatMap((plan) => settled(plan.record) ?? []);
  const newest = new Map(
    plans.filter(({ colonies }) => colonies.includes(colony)).map((plan) => [plan.control, plan] as const),
  );
  return [...newest.values()].flatMap((plan): readonly dynamics.Action[] => {
    const { steps } = plan;
    const kind = modelledControls[plan.control];
    const begins = steps.filter((step) => ["apply", "feed", "requeen"].includes(step.kind) && step.on >= today);
    const [first, last] = [begins[0], begins.at(-1)];
    if (kind === undefined || !first || !last) return [];
    if (kind === "requeen") return [{ kind, from: first.on, susceptibility: usualNewStock }];
    return [actionOf(kind, first.on, last.until ?? addDays(last.on, control.pattyDays))];
  });
}

/** Susceptibility of a new queen's stock where none is known: the model's “resistant”; a label, not measured. */
export const usualNewStock = 0.7;

/** A recorded flow as a bell: nine tenths of it within its days. Its strength is not on record: a full flow. */
function bellOf({ from, to }: site.Span): dynamics.Flow {
  const length = daysBetween(from, to) + 1;
  return {
    day: dynamics.dayOfYear(addDays(from, Math.floor(length / 2))),
    spreadDays: Math.max(2, length / (2 * 1.645)),
    strength: 1,
  };
}

/** Counts older than this are of another colony, as far as bees go. Judgement. */
const longestDays = 400;

/** Dissections that came from elsewhere, as counts. */
const countsTold = (casebook: Casebook, caseId: string): readonly (SeasonCount & { readonly colony: string })[] =>
  toldDissections(casebook.cases[caseId]).map(({ positive, on, aliveWhenTaken, laboratory, ...told }) => ({
    ...{ colony: told.colony, date: on, infested: positive, examined: told.examined, code: laboratory ?? "" },
    ...{ isLimited: aliveWhenTaken === false, endedEarly: false },
  }));

function countsOf(
  casebook: Casebook,
  { caseId, colony, today }: { readonly caseId: string; readonly colony: string; readonly today: Day },
): readonly SeasonCount[] {
  const read = specimensFound(casebook, caseId).flatMap((each): readonly SeasonCount[] => {
    const reading = each.readings[0];
    if (each.label.colony !== colony || each.takenOn === null || !reading) return [];
    const { whole, oneSided } = bench.bySidesRead(reading.tally);
    if (whole.examined + oneSided.examined === 0) return [];
    const sides = oneSided.examined === 0 ? {} : { oneSided };
    const { isLimited, takenOn: date, label } = each;
    const endedEarly = reading.finished.stop === "stopped-early";
    return [{ date, ...whole, ...sides, code: label.code, isLimited, endedEarly }];
  });
  return [...read, ...countsTold(casebook, caseId).filter((each) => each.colony === colony)]
    .filter(({ date }) => date <= today && daysBetween(date, today) <= longestDays)
    .sort((one, other) => one.date.localeCompare(other.date) || one.code.localeCompare(other.code));
}

export interface CountAfter {
  readonly count: SeasonCount;
  readonly action: dynamics.Action;
  readonly days: number;
}

/** Days after a vapour began within which bees with dead mites alone are still alive. Judgement: a winter bee's months. */
const deadMitesDays = 120;

/** Counts that may have met dead mites: taken within months after a vapour began. */
export const countsAfterDone = (colony: ColonySeason): readonly CountAfter[] =>
  usedCounts(colony).flatMap((count) =>
    colony.done
      .filter(({ kind }) => kind === "menthol" || kind === "formic")
      .map((action) => ({ count, action, days: daysBetween(action.from, count.date) }))
      .filter(({ days }) => days > 0 && days <= deadMitesDays)
      .slice(-1),
  );
