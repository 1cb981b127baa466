/**
 * The forecasts of a night as they are told: beside each counted colony, and on its own page.
 *
 * @module views/model
 */
import type { Day, Problem } from "../../../units/index.ts";
import { seasonWords } from "../../words/index.ts";
import { isForecast, type NightFound } from "./nightly.ts";

/** What the service keeps of a night for a colony, with the night and the instant its records stood at. */
export type KeptNight = NightFound & { readonly night: Day; readonly stoodAt: string };

/** What the service answered, read with care: what does not fit is left out. */
export function keptNights(answer: unknown): readonly KeptNight[] {
  const { forecasts } = (answer ?? {}) as { readonly forecasts?: unknown };
  if (!Array.isArray(forecasts)) return [];
  return (forecasts as readonly (Partial<Record<"stoodAt" | "night" | "days" | "problems", unknown>> | null)[]).filter(
    (each): each is KeptNight =>
      typeof each?.stoodAt === "string" &&
      typeof each.night === "string" &&
      (Array.isArray(each.days) || Array.isArray(each.problems)),
  );
}

/** Which night they are of, when all are of one; null else, and each then tells its own. */
export function oneNight(nights: readonly KeptNight[], today: Day): string | null {
  const [first] = nights;
  if (first === undefined || nights.some(({ stoodAt }) => stoodAt !== first.stoodAt)) return null;
  return seasonWords.nightOf({ night: first.night, stoodAt: first.stoodAt, today });
}

/** What the night found for a colony of a case, or why it found nothing; null where it was not asked. */
export function lastNight(
  nights: readonly KeptNight[],
  of: { readonly caseId: string; readonly colony: string; readonly today: Day },
  sentence: (problem: Problem) => string,
): { readonly short: string; readonly says: string } | null {
  const found = nights.find(({ caseId, colony }) => caseId === of.caseId && colony === of.colony);
  if (found === undefined) return null;
  const standing = { night: found.night, stoodAt: found.stoodAt, today: of.today };
  if (!isForecast(found)) {
    const why = found.problems.map(sentence).join(" ");
    return { short: seasonWords.nightMissedShort({ why }), says: seasonWords.nightMissed({ ...standing, why }) };
  }
  const end = found.days.at(-1)?.infestedShare;
  if (end === undefined) return null;
  const slots = {
    ...{ middle: { low: end.q25, high: end.q75 }, wide: { low: end.q05, high: end.q95 } },
    ...{ on: found.until, afterDone: found.afterDone, ...standing },
  };
  return { short: seasonWords.lastNightShort(slots), says: seasonWords.lastNight(slots) };
}
