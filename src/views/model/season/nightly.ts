/**
 * The forecast of a night: every counted colony of the open cases, cut into chunks that can be reckoned anywhere, and
 * again, with the same bytes.
 *
 * @module views/model
 */
import type { Casebook } from "../../../casebook/index.ts";
import { dynamics } from "../../../reasoning/index.ts";
import { type Day, daysBetween, type Result } from "../../../units/index.ts";
import { colonySeason, countedInOpenCases } from "./colony-season.ts";
import { readSeason, seasonDraws, seasonFields } from "./season-form.ts";

/** A colony to be reckoned, with all that it is reckoned from: the records may go on meanwhile. */
export interface NightColony {
  readonly caseId: string;
  readonly colony: string;
  readonly question: dynamics.ForecastQuestion;
}

/** Some colonies of a night. */
export interface NightChunk {
  readonly number: number;
  readonly colonies: readonly NightColony[];
}

/** What a night found for a colony. */
export interface NightForecast {
  readonly caseId: string;
  readonly colony: string;
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

/** The chunks of a night: counted colonies of the open cases that can be reckoned, as Season does it at first. */
export function nightChunks(casebook: Casebook, today: Day, size = nightChunkSize): readonly NightChunk[] {
  const found = new Map<string, Omit<NightColony, "question"> & { readonly question: dynamics.ForecastQuestion }>();
  for (const { caseId, colonies } of countedInOpenCases(casebook, Number.POSITIVE_INFINITY))
    for (const { id: colony } of colonies) {
      const question = questionOf(casebook, { caseId, colony, today });
      if (question !== null) found.set(`${caseId} ${colony}`, { caseId, colony, question });
    }
  return dynamics.chunkPlan([...found.keys()], { size, seed }).map(({ number, colonies }) => ({
    number,
    colonies: colonies.flatMap((planned) => {
      const each = found.get(planned.colony);
      return each === undefined ? [] : [{ ...each, question: { ...each.question, seed: planned.seed } }];
    }),
  }));
}

function questionOf(
  casebook: Casebook,
  of: { readonly caseId: string; readonly colony: string; readonly today: Day },
): dynamics.ForecastQuestion | null {
  const season = colonySeason(casebook, of);
  if (season === null) return null;
  const read = readSeason(seasonFields(season, of.today), season);
  if (!read.ok || read.value.counts.length === 0) return null;
  const { site, start, actions, counts, until, stockSusceptibility } = read.value;
  const question = { site, start, actions, counts, until, stockSusceptibility, draws: seasonDraws, seed };
  return dynamics.readyRun(question).ok ? question : null;
}

/** What reckons a forecast: here, or over threads; null when it was stopped. */
export type Forecasting = (
  question: dynamics.ForecastQuestion,
) => Promise<Result<dynamics.Forecast> | null> | Result<dynamics.Forecast> | null;

/** Reckons a chunk, told from `today` on; null when it was stopped. A colony that cannot be reckoned is left out. */
export async function reckonNightChunk(
  { colonies }: NightChunk,
  today: Day,
  forecast: Forecasting = (question) => dynamics.colonyForecast(question),
): Promise<readonly NightForecast[] | null> {
  const found: NightForecast[] = [];
  for (const { caseId, colony, question } of colonies) {
    const answer = await forecast(question);
    if (answer === null) return null;
    if (!answer.ok) continue;
    const { until, actions } = question;
    const from = daysBetween(question.start.date, today);
    const days = answer.value.days.filter(
      ({ date }, day, all) => date === until || (day >= from && (day - from) % week === 0 && day < all.length),
    );
    found.push({ caseId, colony, from: today, until, afterDone: actions.length > 0, days });
  }
  return found;
}
