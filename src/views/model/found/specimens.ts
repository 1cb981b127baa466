/**
 * What each specimen of a case amounts to: the count, the share with its interval, and what it reads as by the handbooks.
 *
 * @module views/model
 */
import { type Casebook, type ReadingState, type SpecimenState, settled, specimensOf } from "../../../casebook/index.ts";
import type { BodyOf } from "../../../journal/index.ts";
import { bench } from "../../../reasoning/index.ts";
import { type Day, daysBetween, type Estimate, type Problem, type Season, seasonOf } from "../../../units/index.ts";
import { beesOf } from "../bench/reading.ts";
import { colonyCode, doubledCodes, labelOf, receiptOf, type VialState, vialState } from "../bench/worklist.ts";

/** A locked reading and its counts. */
export interface LockedReading {
  readonly id: string;
  readonly started: BodyOf<"reading-started">;
  readonly finished: BodyOf<"reading-finished">;
  readonly tally: bench.Tally;
  /** Bees on which two entries disagree: outside until settled. */
  readonly inConflict: number;
}

/** One specimen of a case, reckoned. */
export interface SpecimenFound {
  readonly id: string;
  readonly label: BodyOf<"specimen-labelled">;
  readonly received: BodyOf<"specimen-received"> | null;
  readonly colony: string;
  readonly state: VialState;
  /** When the bees were taken; null while nobody said. */
  readonly takenOn: Day | null;
  readonly season: Season | null;
  /** Days since a treatment of this colony ended, 0 while one was on; null when none is on record for a year. */
  readonly treatmentDaysAgo: number | null;
  /** Locked readings, first to last; the first one stands, a later one checks it. */
  readonly readings: readonly LockedReading[];
  /** Share of bees infested; null when no bee counts. */
  readonly estimate: Estimate | null;
  readonly problems: readonly Problem[];
  /** Accepted with limits, or bees found dead: no choice is made from it by default. */
  readonly isLimited: boolean;
  readonly meaning: bench.Reading | null;
  /** Bees read so far in a reading that is not locked. */
  readonly beesSoFar: number;
}

/** Days for which an earlier treatment is held to weaken a zero. Judgement, no source. */
export const treatmentMemoryDays = 365;

/** Every specimen of a case, in order of code. */
export const specimensFound = (casebook: Casebook, caseId: string): readonly SpecimenFound[] => {
  const doubled = doubledCodes(casebook);
  return specimensOf(casebook, caseId).flatMap((specimen) => found(casebook, specimen, doubled) ?? []);
};

function found(casebook: Casebook, specimen: SpecimenState, doubled: ReadonlySet<string>): SpecimenFound | null {
  const label = labelOf(specimen);
  if (!label) return null;
  const received = receiptOf(specimen);
  const takenOn = received?.takenOn ?? label.takenOn;
  const season = seasonAt(casebook, label.case, takenOn);
  const readings = Object.values(specimen.readings)
    .flatMap((reading) => locked(reading) ?? [])
    .sort((one, other) => one.started.on.localeCompare(other.started.on));
  const first = readings[0];
  const counted =
    first && first.tally.read > 0
      ? bench.prevalence({
          positive: first.tally.positive,
          examined: first.tally.read,
          stoppedEarly: first.finished.stop === "stopped-early",
        })
      : null;
  const estimate = counted?.ok ? counted.value : null;
  const meaning = estimate && season ? bench.reading(estimate, season) : null;
  const underWay = Object.values(specimen.readings).find((reading) => reading.finished === null);
  return {
    id: specimen.id,
    label,
    received,
    colony: colonyCode(casebook, label.case, label.colony),
    state: vialState(specimen, doubled),
    takenOn,
    season,
    treatmentDaysAgo: takenOn === null ? null : treatmentBefore(casebook, label, takenOn),
    readings,
    estimate,
    problems: [...(counted?.problems ?? []), ...(meaning?.problems ?? [])],
    isLimited: received?.acceptance === "accepted-with-limits",
    meaning: meaning?.ok ? meaning.value : null,
    beesSoFar: underWay ? Object.keys(underWay.bees).length : 0,
  };
}

function locked(reading: ReadingState): LockedReading | null {
  const started = reading.started?.candidates[0].value;
  const finished = reading.finished?.candidates[0].value;
  if (!started || !finished) return null;
  const counted = beesOf(reading);
  return {
    id: reading.id,
    started,
    finished,
    tally: bench.tally(counted),
    inConflict: Object.keys(reading.bees).length - counted.length,
  };
}

/** The season at the place of a case; null when day or latitude is not on record. */
export function seasonAt(casebook: Casebook, caseId: string | null, on: Day | null): Season | null {
  const apiary = caseId === null ? null : casebook.cases[caseId]?.apiary;
  const latitude = apiary ? settled(casebook.apiaries[apiary]?.record)?.latitude : undefined;
  return on === null || latitude === undefined ? null : seasonOf(on, latitude);
}

/** Days since a treatment of the colony ended, 0 while one was on; null when none is on record for a year. */
export function treatmentBefore(
  casebook: Casebook,
  { case: caseId, colony }: Pick<BodyOf<"specimen-labelled">, "case" | "colony">,
  takenOn: Day,
): number | null {
  const apiary = casebook.cases[caseId]?.apiary;
  const treatments = Object.values((apiary && casebook.apiaries[apiary]?.treatments) || {}).flatMap((kept) =>
    kept.candidates.map((candidate) => candidate.value),
  );
  const days = treatments
    .filter((each) => each.on <= takenOn && (each.colonies.length === 0 || each.colonies.includes(colony)))
    .map((each) => (each.off === null || each.off >= takenOn ? 0 : daysBetween(each.off, takenOn)))
    .filter((each) => each <= treatmentMemoryDays);
  return days.length === 0 ? null : Math.min(...days);
}
