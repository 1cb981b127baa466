/**
 * The forecast of a night: every counted colony of the open cases, cut into chunks that can be reckoned anywhere, and
 * again, with the same bytes.
 *
 * @module views/model
 */
import type { Casebook } from "../../../casebook/index.ts";
import { dynamics } from "../../../reasoning/index.ts";
import { blocked, type Day, daysBetween, type Problem, type Result } from "../../../units/index.ts";
import { type ColonySeason, colonySeason, countedInOpenCases, usedCounts } from "./colony-season.ts";
import { readSeason, seasonDraws, seasonFields } from "./season-form.ts";

export interface ColonyOfCase {
  readonly caseId: string;
  readonly colony: string;
}

/** A colony to be reckoned, with all that it is reckoned from: the records may go on meanwhile. */
export interface NightColony extends ColonyOfCase {
  /** Null for what is on record that cannot be asked; `problems` says why. */
  readonly question: dynamics.ForecastQuestion | null;
  readonly problems: readonly Problem[];
}

/** Some colonies of a night. */
export interface NightChunk {
  readonly number: number;
  readonly colonies: readonly NightColony[];
}

/** A colony that could not be reckoned, and why. */
export interface NightMissed extends ColonyOfCase {
  readonly problems: readonly Problem[];
}

/** What a night found for a colony: where it goes, or why that cannot be told. */
export type NightFound = NightForecast | NightMissed;

export const isForecast = (found: NightFound): found is NightForecast => "days" in found;

export interface NightForecast extends ColonyOfCase {
  /** Day from which on it is told. */
  readonly from: Day;
  readonly until: Day;
  /** Actions on record are in its course. */
  readonly afterDone: boolean;
  /** A week apart, the last day of all at the end. */
  readonly days: readonly dynamics.ForecastDay[];
}

/** Colonies to a chunk: some seconds of work. Judgement. */
export const nightChunkSize = 20;
/** The seed of every night: the same records on the same day give the same forecast. */
const seed = 1;
const week = 7;

/** The chunks of a night: colonies of the open cases with a count that a season can be held to, asked as Season does it at first. */
export function nightChunks(casebook: Casebook, today: Day, size = nightChunkSize): readonly NightChunk[] {
  const found = new Map<string, NightColony>();
  for (const { caseId, colonies } of countedInOpenCases(casebook, Number.POSITIVE_INFINITY))
    for (const { id: colony } of colonies) {
      const season = colonySeason(casebook, { caseId, colony, today });
      if (season !== null && usedCounts(season).length > 0)
        found.set(`${caseId} ${colony}`, { caseId, colony, ...questionOf(season, today) });
    }
  return dynamics.chunkPlan([...found.keys()], { size, seed }).map(({ number, colonies }) => ({
    number,
    colonies: colonies.flatMap((planned) => {
      const each = found.get(planned.colony);
      if (each === undefined) return [];
      return [{ ...each, question: each.question === null ? null : { ...each.question, seed: planned.seed } }];
    }),
  }));
}

function questionOf(season: ColonySeason, today: Day): Pick<NightColony, "question" | "problems"> {
  const read = readSeason(seasonFields(season, today), season);
  if (!read.ok) return { question: null, problems: read.problems };
  const { site, start, actions, counts, until, stockSusceptibility } = read.value;
  const question = { site, start, actions, counts, until, stockSusceptibility, draws: seasonDraws, seed };
  return { question, problems: [] };
}

/** What reckons a forecast: here, or over threads; null when it was stopped. */
export type Forecasting = (
  question: dynamics.ForecastQuestion,
) => Promise<Result<dynamics.Forecast> | null> | Result<dynamics.Forecast> | null;

/** Reckons a chunk, told from `today` on; null when it was stopped. */
export async function reckonNightChunk(
  { colonies }: NightChunk,
  today: Day,
  forecast: Forecasting = (question) => dynamics.colonyForecast(question),
): Promise<readonly NightFound[] | null> {
  const found: NightFound[] = [];
  for (const { caseId, colony, question, problems } of colonies) {
    const answer = question === null ? blocked(...problems) : await forecast(question);
    if (answer === null) return null;
    found.push({
      caseId,
      colony,
      ...(answer.ok && question ? told(question, answer.value, today) : { problems: answer.problems }),
    });
  }
  return found;
}

function told(
  { start, until, actions }: dynamics.ForecastQuestion,
  { days }: dynamics.Forecast,
  today: Day,
): Omit<NightForecast, keyof ColonyOfCase> {
  const from = daysBetween(start.date, today);
  const weekly = days.filter(({ date }, day) => date === until || (day >= from && (day - from) % week === 0));
  return { from: today, until, afterDone: actions.length > 0, days: weekly };
}
