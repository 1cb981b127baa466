/**
 * The forecasts of a night as they are told: beside each counted colony, and on its own page.
 *
 * @module views/model
 */
import type { Day } from "../../../units/index.ts";
import { seasonWords } from "../../words/index.ts";
import type { NightForecast } from "./nightly.ts";

/** A forecast that the service keeps, with the night it is of and the instant its records stood at. */
export interface KeptNight extends NightForecast {
  readonly night: Day;
  readonly stoodAt: string;
}

/** What the service answered, read with care: what does not fit is left out. */
export function keptNights(answer: unknown): readonly KeptNight[] {
  const { forecasts } = (answer ?? {}) as { readonly forecasts?: unknown };
  if (!Array.isArray(forecasts)) return [];
  return (forecasts as readonly KeptNight[]).filter(
    (each) => typeof each?.stoodAt === "string" && typeof each.night === "string" && Array.isArray(each.days),
  );
}

/** Which night they are of, when all are of one; null else, and each then tells its own. */
export function oneNight(nights: readonly KeptNight[], today: Day): string | null {
  const [first] = nights;
  if (first === undefined || nights.some(({ stoodAt }) => stoodAt !== first.stoodAt)) return null;
  return seasonWords.nightOf({ night: first.night, stoodAt: first.stoodAt, today });
}

/** What the night found for a colony of a case; null where it found nothing. */
export function lastNight(
  nights: readonly KeptNight[],
  of: { readonly caseId: string; readonly colony: string; readonly today: Day },
): { readonly short: string; readonly says: string } | null {
  const found = nights.find(({ caseId, colony }) => caseId === of.caseId && colony === of.colony);
  const end = found?.days.at(-1)?.infestedShare;
  if (found === undefined || end === undefined) return null;
  const slots = {
    ...{ middle: { low: end.q25, high: end.q75 }, wide: { low: end.q05, high: end.q95 } },
    ...{ on: found.until, afterDone: found.afterDone, night: found.night, stoodAt: found.stoodAt, today: of.today },
  };
  return { short: seasonWords.lastNightShort(slots), says: seasonWords.lastNight(slots) };
}
